"""A log handed on: its last weeks as they were sent, and what was read before them as an onset."""

from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from itertools import islice
from operator import attrgetter
from typing import NamedTuple, TypeVar

from msgspec.structs import replace

from ..numbers import FLOATS, Elementwise, Estimate, Number, compiled
from ..person import CheckIn
from ..register import Basis, Message, constant, say
from . import kernel as k
from .entries import DailyLog, IntakeDay, Log, StepsDay, Weighing, in_order, iso_date
from .events import as_told_last
from .onset import WARM_DAYS, Onset, account_of, gone_on_from, is_of_a_body, warmed
from .reader import Reading
from .steps import StepsRead, nothing_counted, steps_until
from .witnesses import LogFit, mixed

TAIL_DAYS = int(
    constant(
        "handed_log_days", 56, unit="d", basis=Basis.JUDGEMENT,
        summary="Least days of a log that are handed on as they were sent: the longest window that is told in "
        "hindsight (28 days), twice",
    )
)  # fmt: skip
TAIL_WEIGHINGS = int(
    constant(
        "handed_log_weighings", 10, unit="weighings", basis=Basis.JUDGEMENT,
        summary="Least weighings that are handed on as they were sent",
    )
)  # fmt: skip
COUNTED = "LOG_COUNTED_BEFORE"

_Dated = TypeVar("_Dated", Weighing, IntakeDay, StepsDay)
_OfADay = TypeVar("_OfADay", Weighing, IntakeDay, StepsDay, CheckIn)
_DAY = attrgetter("day")


class HandedOn(NamedTuple):
    """A log to go on from, and what it says of its last day: weight without noise and carried mass against the usual
    [kg]."""

    log: Log
    weight: Estimate
    carried: Estimate


def tail_of(daily: DailyLog, as_of_day: int, since_day: int | None = None) -> int:
    """The day of a log, counted from its first, from which on entries are handed on as they were sent: from
    ``since_day`` on also where that is long ago."""
    seen = daily.is_weighed
    weighed = list(islice((day for day in range(len(seen) - 1, -1, -1) if seen[day]), TAIL_WEIGHINGS))
    begins = as_of_day - TAIL_DAYS
    if since_day is not None:
        begins = min(begins, since_day)
    few = daily.first_day + (weighed[-1] - 1 if len(weighed) == TAIL_WEIGHINGS else 0)
    return max(daily.first_day, min(begins, few)) - daily.first_day


def hand_on(reading: Reading) -> HandedOn:
    """A log as the next reading takes it; ``reading`` was told where its tail begins."""
    fit, tail = reading.fit, reading.tail
    assert tail is not None
    weight, carried = (_on_last_day(fit, tissue) for tissue in (1.0, 0.0))
    onset = (_cut(reading, fit, tail) or reading.onset) if tail else reading.onset
    if onset is None:
        # What a step is worth is that of the body that was read first, as all else is.
        counted = nothing_counted(reading.tissue.kcal_per_step) if reading.daily.steps else None
        onset = Onset(body=reading.body, steps=counted)
    return HandedOn(_from(replace(reading.log, onset=onset), reading.as_of_day), weight, carried)


def _cut(reading: Reading, fit: LogFit, at: int) -> Onset | None:
    """What was read up to the ``at``-th day of a log; None where no explanation of it is that of a body, so that the
    entries themselves are handed on."""
    daily, before = reading.daily, gone_on_from(reading.onset)
    accounts = [account_of(record, at, fit.kernel) for record in fit.kept_records]
    accounts = [each for each in accounts if is_of_a_body(each, reading.body)]
    if not accounts:
        return None
    longer, skipped = warmed(before, daily)
    until = skipped + at
    window = slice(max(0, until - WARM_DAYS), until)
    logged = int(sum(daily.is_logged[:at]))
    has_carbohydrate = longer.has_carbohydrate[window]
    return Onset(
        body=reading.body,
        day=daily.first_day + at,
        noise_variance=fit.settings[k.NOISE_VARIANCE],
        days=at + (0 if before is None else before.days),
        days_logged=logged + (0 if before is None else before.days_logged),
        intakes=_where(longer.is_logged[window], longer.intake_kcal[window]),
        carbohydrate_kcal=_where(has_carbohydrate, longer.carbohydrate_kcal[window]) if any(has_carbohydrate) else (),
        accounts=tuple(accounts),
        steps=_steps_before(reading, daily.first_day + at),
    )


def _where(is_there: Sequence[Number], kcal: Sequence[Number]) -> tuple[float | None, ...]:
    return tuple([float(each) if there else None for each, there in zip(kcal, is_there, strict=True)])


def _steps_before(reading: Reading, day: int) -> StepsRead | None:
    """What was counted before a day."""
    before = None if reading.onset is None else reading.onset.steps
    if not reading.daily.steps:
        return before
    return steps_until(reading.daily.steps, before or nothing_counted(reading.tissue.kcal_per_step), day)


def _counted_until(log: Log) -> int:
    """The last day of which a log's onset has counted the weighing; -1 where nothing was read before."""
    read = gone_on_from(log.onset)
    return -1 if read is None else read.day


def _from(log: Log, as_of_day: int) -> Log:
    """A log in order, each entry once, without what its onset has counted or what lies after the day it was read on."""
    first = _counted_until(log)
    return replace(
        log,
        weighings=_between(log.weighings, first + 1, as_of_day)
        if in_order(log.weighings)
        else sorted(
            (entry for entry in log.weighings if first < entry.day <= as_of_day),
            key=lambda entry: (entry.day, entry.order or 0),
        ),
        intakes=_once(log.intakes, first, as_of_day),
        steps=_once(log.steps, first, as_of_day),
        readings=(),
    )


def _once(entries: Sequence[_Dated], first: int, last: int) -> list[_Dated]:
    """The entries from one day to another in order of time, each once."""
    if in_order(entries):
        return _between(entries, first, last)
    # In the order in which they were sent: a set's differs from process to process.
    return sorted(dict.fromkeys(entry for entry in entries if first <= entry.day <= last), key=_DAY)


def _between(entries: Sequence[_Dated], first: int, last: int) -> list[_Dated]:
    """Of entries in order of time those from one day to another."""
    return list(entries[bisect_left(entries, first, key=_DAY) : bisect_right(entries, last, key=_DAY)])


def _on_last_day(fit: LogFit, tissue: float) -> Estimate:
    """Weight without noise (``tissue`` 1) or what is carried (0) on the last day, explanations mixed."""
    at = (fit.days - 1) * k.COLUMNS
    loads = array("d", bytes(8 * k.STATES))
    apart = k.load(fit.columns, fit.settings, at, tissue, loads, 0)
    seen = [(one.probability, *_loaded(loads, one.mean, one.spread)) for one in fit.told]
    off = apart - fit.shift
    return mixed([(probability, mean + off, max(variance, 0.0)) for probability, mean, variance in seen])


@compiled
def _loaded(
    loads: Sequence[Number], means: Sequence[Number], spread: Sequence[Number], *, ops: Elementwise = FLOATS
) -> tuple[Number, Number]:
    """Mean and variance of a sum of the hidden quantities, each times its load."""
    size = len(loads)
    mean = variance = 0.0
    for i in range(size):
        load = loads[i]
        mean = mean + load * means[i]
        for j in range(size):
            variance = variance + load * loads[j] * spread[i * size + j]
    return mean, variance


def joined(handed: Log, later: Log | None) -> tuple[Log, list[Message]]:
    """A log that was handed on with what was logged since. Of what both tell (a day, or an event that begins on it) the
    later word counts; what the onset has counted is left out and said."""
    first = _counted_until(handed)
    sent = handed.entries + (0 if later is None else later.entries)
    before, since = _uncounted(handed, first), _uncounted(later or Log(()), first)
    left_out = sent - before.entries - since.entries
    notes = [say(COUNTED, count=left_out, date=iso_date(first))] if left_out else []
    if later is None:
        return before if left_out else handed, notes
    return replace(
        before,
        weighings=_told_last(before.weighings, since.weighings),
        intakes=_told_last(before.intakes, since.intakes),
        steps=_told_last(before.steps, since.steps),
        cycle_starts=sorted({*before.cycle_starts, *since.cycle_starts}),
        events=sorted(as_told_last([*before.events, *since.events]), key=lambda event: (event.day, event.kind)),
        readings=[*before.readings, *since.readings],
        check_ins=sorted(_told_last(before.check_ins, since.check_ins), key=_DAY),
    ), notes


def _uncounted(log: Log, first: int) -> Log:
    """A log without what was counted before the entries of a day, whose weighing was counted with it."""
    return replace(
        log,
        weighings=[entry for entry in log.weighings if entry.day > first],
        intakes=[entry for entry in log.intakes if entry.day >= first],
        steps=[entry for entry in log.steps if entry.day >= first],
    )


def _told_last(before: Sequence[_OfADay], since: Sequence[_OfADay]) -> list[_OfADay]:
    """Entries of days that were not told again, and those that were told since."""
    again = {entry.day for entry in since}
    found = [entry for entry in before if entry.day not in again]
    found += since
    return found
