"""A member's log of weighings, intakes and steps, as it is sent and as one entry a day.

Days are proleptic Gregorian ordinals of civil dates, as ``datetime.date`` counts them.
"""

from collections.abc import Callable, Sequence
from datetime import date
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

import msgspec

from ..body import KJ_PER_KCAL
from ..measures import Measurement
from ..numbers import FLOATS, Elementwise, Number, compiled, facet
from ..person import CheckIn
from ..register import Message, OutOfDomain
from .cycle import CycleRise
from .events import LoggedEvent

if TYPE_CHECKING:
    from .onset import Onset


def iso_date(day: int) -> str:
    """The civil date of an ordinal, for messages."""
    return date.fromordinal(day).isoformat()


class Weighing(msgspec.Struct, frozen=True, gc=False):
    """Scale weight on a day; ``order`` sorts several on one day, as slips among them are told by those before."""

    day: int
    weight_kg: float
    order: int | None = None


class IntakeDay(msgspec.Struct, frozen=True, gc=False):
    """Energy eaten on a day. A partial day says that something was left out, a day of nothing that it was not kept: far
    more apps send a zero of a day without entries than people fast through one and say so."""

    day: int
    intake_kcal: float
    carbohydrate_g: float | None = None
    is_partial: bool = False

    @property
    def is_whole(self) -> bool:
        """Whether the day counts as logged."""
        return not self.is_partial and self.intake_kcal > 0.0


class StepsDay(msgspec.Struct, frozen=True, gc=False):
    """Steps counted on a day."""

    day: int
    steps: float


class Measured(NamedTuple):
    """A measurement of body fat on a day; ``field`` is its name, for refusals."""

    day: int
    measurement: Measurement
    field: str


# A menstruation told of this soon after all else is an entry like others; one that comes later moves no day on which a
# log is read, which may be weeks after the last weighing: it is kept for when a later day is asked for.
_SAID_AFTER_DAYS = 7

# A cycle's entry is the day on which a menstruation began.
Entry = Weighing | IntakeDay | StepsDay | Measured | LoggedEvent | CheckIn | int


def day_of(entry: Entry) -> int:
    """The day that an entry of a log is of."""
    return entry if isinstance(entry, int) else entry.day


def is_known_on(entry: Entry, morning: int) -> bool:
    """Whether an entry is there on a morning: of its day what is weighed or said, not what a whole day comes to."""
    return day_of(entry) < morning + (not isinstance(entry, IntakeDay | StepsDay))


KILOJOULES_FROM = KJ_PER_KCAL**0.5  # over the habit: from here on kilojoules are nearer to it than kilocalories
_LATELY_DAYS, _LATELY_LOGGED = 14, 5  # a mean of fewer days in a fortnight is no usual intake; judgement


class Log(msgspec.Struct, frozen=True, dict=True):
    """What a member sent. The first and last day of entries raise ``LogError`` for a log without weighings."""

    weighings: Sequence[Weighing]
    intakes: Sequence[IntakeDay] = ()
    cycle_starts: Sequence[int] = ()  # days on which a menstruation began, also from before the log
    events: Sequence[LoggedEvent] = ()
    readings: Sequence[Measured] = ()  # of body fat
    check_ins: Sequence[CheckIn] = ()
    steps: Sequence[StepsDay] = ()  # also from before the first weighing or intake
    onset: "Onset | None" = None  # what was read before it

    def only(self, is_kept: Callable[["Entry"], bool]) -> "Log":
        """The log with those of its entries, of every kind, that are kept."""
        kinds = {name: getattr(self, name) for name in self.__struct_fields__ if name != "onset"}
        return msgspec.structs.replace(
            self, **{name: [entry for entry in entries if is_kept(entry)] for name, entries in kinds.items()}
        )

    @property
    def entries(self) -> int:
        """How many entries it has, of all kinds."""
        return sum(len(getattr(self, name)) for name in self.__struct_fields__ if name != "onset")

    def intake_lately(self, day: int, maintenance_kcal: float) -> float | None:
        """Mean of what was logged over the fortnight before a day [kcal/d]; None where that is too few days.

        A day nearer to maintenance in kilojoules than in kilocalories is left out.
        """
        most, first = KILOJOULES_FROM * maintenance_kcal, day - _LATELY_DAYS
        lately = [row for row in self.intakes if first <= row.day < day and row.is_whole]
        found = [row.intake_kcal for row in lately if row.intake_kcal <= most]
        return sum(found) / len(found) if len(found) >= _LATELY_LOGGED else None

    def last_intake_lately(self, maintenance_kcal: float) -> float | None:
        """``intake_lately`` by the last day that was logged; None also where nothing was eaten."""
        if not self.intakes:
            return None
        return self.intake_lately(max(row.day for row in self.intakes) + 1, maintenance_kcal) or None

    @property
    def first_day(self) -> int:
        """The day of the first weighing or intake."""
        return self._span[0]

    @property
    def last_day(self) -> int:
        """The day of the last entry; an event may be one to come."""
        return self._span[1]

    @property
    def last_told_day(self) -> int:
        """The day of the last entry that somebody made: an intake of nothing is what an app sends by itself."""
        if all(entry.intake_kcal > 0.0 for entry in self.intakes):
            return self.last_day
        return msgspec.structs.replace(self, intakes=[each for each in self.intakes if each.intake_kcal > 0.0]).last_day

    @facet
    def _span(self) -> tuple[int, int]:
        if not self.weighings:
            raise LogError("LOG_WITHOUT_WEIGHT", "log.weights", "Send at least one weighing.")
        day = self.weighings[0].day
        first, last = _first_and_last(self.intakes, *_first_and_last(self.weighings, day, day))
        last = max([last, *(entry.day for entry in self.steps), *(entry.day for entry in self.check_ins)])
        last = max([last, *(day for day in self.cycle_starts if last < day <= last + _SAID_AFTER_DAYS)])
        return int(first), int(last)


@compiled
def _first_and_last(
    entries: Sequence[Weighing | IntakeDay], first: Number, last: Number, *, ops: Elementwise = FLOATS
) -> tuple[Number, Number]:
    """The first and the last day of entries, and of those given."""
    for entry in entries:
        day = entry.day
        if day < first:
            first = day
        if day > last:
            last = day
    return first, last


_DayEntry = TypeVar("_DayEntry", IntakeDay, StepsDay)


@compiled
def in_order(entries: Sequence[Weighing | IntakeDay | StepsDay], *, ops: Elementwise = FLOATS) -> bool:
    """Whether each entry is of a later day than the one before it."""
    before: Number = 0.0
    for entry in entries:
        day = entry.day
        if day <= before:
            return False
        before = day
    return True


class EntriesRead(NamedTuple):
    """Weighings [(day, kg)] and full days of intake [(day, kcal)], a day of nothing among them, slips left out."""

    weights: list[tuple[int, float]]
    intakes: list[tuple[int, float]]


class DailyLog(NamedTuple):
    """One entry a day from ``first_day`` on; floats for one person, or arrays over people.

    ``weight_kg`` and ``intake_kcal`` are 0 where ``is_weighed`` and ``is_logged`` are 0. ``noise_scale`` is the
    noise variance of the day's weight against that of a single weighing. ``carbohydrate_kcal`` is 0 where
    ``has_carbohydrate`` is 0. ``cycle_rise``: course of the rise around menstruation, or None. ``steps``:
    the days counted, in order of time, also those before ``first_day``. ``read``: the entries that it was made of.
    """

    first_day: int
    weight_kg: Sequence[Number]
    is_weighed: Sequence[Number]
    noise_scale: Sequence[Number]
    intake_kcal: Sequence[Number]
    is_logged: Sequence[Number]
    carbohydrate_kcal: Sequence[Number]
    has_carbohydrate: Sequence[Number]
    notes: tuple[Message, ...] = ()
    cycle_rise: CycleRise | None = None
    water_kg: Sequence[Number] | None = None
    water_variance: Sequence[Number] | None = None
    steps: Sequence[StepsDay] = ()
    read: EntriesRead | None = None


class LogError(OutOfDomain):
    """An entry of a log that cannot be meant. ``field`` is the entry's path, as in ``/log/weights/3/weight_kg``."""


def in_future(field: str) -> LogError:
    """That the entry at ``field`` is of a day after that on which the log is read."""
    return LogError(
        "LOG_ENTRY_IN_FUTURE",
        field,
        "The day lies after `as_of_date`, on which the log is read: mend the date, or leave the entry out.",
    )


def first_weight(log: DailyLog, ops: Elementwise) -> Number:
    """The first weighing [kg]; 0 where there is none."""
    weight: Number = 0.0
    for given, seen in zip(log.weight_kg, log.is_weighed, strict=True):
        if ops is FLOATS:
            if seen:
                return given
        else:
            weight = ops.where(weight > 0.0, weight, given * seen)
            known: Any = weight > 0.0
            if known.all():
                break
    return weight


def one_a_day(entries: Sequence[_DayEntry]) -> tuple[Sequence[_DayEntry], list[int]]:
    """Entries, one a day: what was sent twice counts once, and of two that differ neither counts. With the days of
    such."""
    if in_order(entries):
        return entries, []
    by_day: dict[int, _DayEntry | None] = {}
    twice: list[int] = []
    for entry in entries:
        if entry.day not in by_day:
            by_day[entry.day] = entry
        elif (first := by_day[entry.day]) is not None and first != entry:
            by_day[entry.day] = None
            twice.append(entry.day)
    return [entry for entry in by_day.values() if entry is not None], twice


def middle(values: Sequence[float]) -> float:
    """The median of values, of an even number the higher of the two in the middle."""
    return sorted(values)[len(values) // 2]
