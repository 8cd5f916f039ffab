"""A member's log of weighings and intakes, and its cleaning into one entry a day.

Days are proleptic Gregorian ordinals of civil dates, as ``datetime.date`` counts them. Cleaning repairs what is
plainly a slip, says so in a coded message, and refuses what cannot be meant, naming the entry.
"""

import math
from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

import msgspec

from .elementwise import FLOATS, Elementwise, Number
from .errors import OutOfDomain
from .evidence import Basis, constant
from .menstrual_cycle import cycle_rise
from .message import Message, say, template

POUNDS_PER_KG = constant(
    "pounds_per_kilogram", 1.0 / 0.45359237, unit="lb/kg",
    summary="International avoirdupois pound, 0.45359237 kg exactly (agreement of 1959)",
)  # fmt: skip
UNIT_TOLERANCE = constant(
    "unit_mix_up_tolerance", 0.06, unit="1", basis=Basis.JUDGEMENT,
    summary="A weight is read as pounds (or as kilograms divided twice) when the ratio to the weights before is "
    "within this fraction of the unit ratio",
)  # fmt: skip
ABSURD_JUMP = constant(
    "absurd_weight_jump", 0.20, unit="1", basis=Basis.JUDGEMENT,
    summary="Largest believable change between weighings a day apart, as a fraction of body mass",
)  # fmt: skip
ABSURD_JUMP_PER_DAY = constant(
    "absurd_weight_jump_growth", 0.003, unit="1/d", basis=Basis.JUDGEMENT,
    summary="What each further day between two weighings adds to the largest believable change (2 % a week)",
)  # fmt: skip
WITHIN_DAY_SHARE = constant(
    "within_day_noise_share", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the noise variance of a weighing that a second weighing of the day does not share",
)  # fmt: skip
GAP_DAYS = constant(
    "logging_gap", 7.0, unit="d", basis=Basis.JUDGEMENT, summary="Days without a weighing that are pointed out"
)

SORTED = template("LOG_SORTED", "The entries were out of order and have been sorted by day.")
UNIT_MIX_UP = template(
    "LOG_UNIT_MIX_UP",
    "The weight {given:.1f} of {date} fits the others only in another unit and was read as {read_kg:.1f} kg.",
)
GAP = template("LOG_GAP", "No weighing for {days} days after {date}.")
PARTIAL = template("LOG_PARTIAL_INTAKE", "{count} partly logged days were treated as days without intake.")
INTAKE_MISSING = template(
    "LOG_INTAKE_MISSING",
    "{count} of {days} days have no full intake; the running habit stands in, with a wider interval.",
)
NO_INTAKE = template(
    "LOG_NO_INTAKE",
    "No intake was logged: the trend of weight can be read, but maintenance rests on the equations.",
)


def iso_date(day: int) -> str:
    """The civil date of an ordinal, for messages."""
    return date.fromordinal(day).isoformat()


class Weighing(msgspec.Struct, frozen=True):
    """Scale weight on a day; ``order`` sorts several on one day (they are averaged, so it only documents)."""

    day: int
    weight_kg: float
    order: int | None = None


class IntakeDay(msgspec.Struct, frozen=True):
    """Energy eaten on a day. A partial day says that something was left out."""

    day: int
    intake_kcal: float
    carbohydrate_g: float | None = None
    is_partial: bool = False


class Log(msgspec.Struct, frozen=True):
    """What a member sent."""

    weighings: Sequence[Weighing]
    intakes: Sequence[IntakeDay] = ()
    cycle_starts: Sequence[int] = ()  # days on which a menstruation began, also from before the log


class DailyLog(NamedTuple):
    """One entry a day from ``first_day`` on; floats for one person, or arrays over people.

    ``weight_kg`` and ``intake_kcal`` are 0 where ``is_weighed`` and ``is_logged`` are 0. ``noise_scale`` is the
    noise variance of the day's weight against that of a single weighing. ``carbohydrate_kcal`` is 0 where
    ``has_carbohydrate`` is 0. ``cycle_rise``: share of the rise around menstruation on each day, or None.
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
    cycle_rise: Sequence[Number] | None = None


class LogError(OutOfDomain):
    """An entry of a log that cannot be meant. ``field`` is the entry's path, as in ``/log/weights/3/weight_kg``."""


def entry_days(log: Log) -> list[int]:
    """The days of all entries, as they came. Raises ``LogError`` for a log without weighings."""
    if not log.weighings:
        raise LogError("LOG_WITHOUT_WEIGHT", "/log/weights", "Send at least one weighing.")
    return [*[entry.day for entry in log.weighings], *[entry.day for entry in log.intakes]]


def clean_log(log: Log, as_of_day: int, reference_weight_kg: float | None = None, first: int | None = None) -> DailyLog:
    """Daily columns from the first entry to ``as_of_day``.

    Args: ``reference_weight_kg``: the member's stated weight, which settles the unit of the first weighing; ``first``:
        the day of the first entry, where it is known.
    Raises: ``LogError`` on an empty log, an entry after ``as_of_day``, two intakes for a day, a value that is not
        a positive finite number, or a jump that nobody can make.
    """
    notes: list[Message] = []
    first = min(entry_days(log)) if first is None else first
    count = as_of_day - first + 1
    weight, noise_scale, is_weighed = _daily_weights(log.weighings, first, count, reference_weight_kg, notes)

    intake, is_logged = [0.0] * max(count, 0), [0.0] * max(count, 0)
    carbohydrate, has_carbohydrate = list(intake), list(intake)
    taken: set[int] = set()
    partial = 0
    for index, entry in enumerate(log.intakes):
        at, eaten = entry.day - first, entry.intake_kcal
        if at >= count:
            raise LogError("LOG_ENTRY_IN_FUTURE", f"/log/intakes/{index}/date", "The day lies after the as-of day.")
        if at in taken:
            raise LogError(
                "LOG_DUPLICATE_INTAKE",
                f"/log/intakes/{index}/date",
                "Send one intake for a day: add its parts together.",
            )
        taken.add(at)
        if not 0.0 <= eaten < math.inf:
            raise LogError(
                "LOG_INTAKE_NOT_A_NUMBER", f"/log/intakes/{index}/intake_kcal", "Send a number of at least 0."
            )
        if entry.is_partial:
            partial += 1
            continue
        intake[at], is_logged[at] = eaten, 1.0
        if entry.carbohydrate_g is not None:
            carbohydrate[at], has_carbohydrate[at] = 4.0 * entry.carbohydrate_g, 1.0
    if partial:
        notes.append(say(PARTIAL, count=partial))
    # The as-of day is usually not over when it is sent, so it is not counted as missing.
    missing = int(count - 1 - sum(is_logged[:-1]))
    if not any(is_logged):
        notes.append(say(NO_INTAKE))
    elif missing > 0:
        notes.append(say(INTAKE_MISSING, count=missing, days=count - 1))
    rise = None
    if log.cycle_starts:
        if max(log.cycle_starts) > as_of_day:
            index = log.cycle_starts.index(max(log.cycle_starts))
            raise LogError("LOG_ENTRY_IN_FUTURE", f"/log/cycle/{index}", "The day lies after the as-of day.")
        rise = cycle_rise(sorted(set(log.cycle_starts)), first, count)
    return DailyLog(
        first, weight, is_weighed, noise_scale, intake, is_logged, carbohydrate, has_carbohydrate, tuple(notes), rise
    )


def _daily_weights(
    weighings: Sequence[Weighing], first: int, count: int, reference_kg: float | None, notes: list[Message]
) -> tuple[list[float], list[float], list[float]]:
    days = [entry.day for entry in weighings]
    order: Sequence[int] = range(len(weighings))
    if days != sorted(days):
        notes.append(say(SORTED))
        order = sorted(order, key=days.__getitem__)
    if days[order[-1]] - first >= count:
        raise LogError("LOG_ENTRY_IN_FUTURE", f"/log/weights/{order[-1]}/date", "The day lies after the as-of day.")
    weight, number = [0.0] * count, [0] * count
    accepted: list[float] = []
    last_day = days[order[0]]
    for position, index in enumerate(order):
        day, given = days[index], float(weighings[index].weight_kg)
        if not 0.0 < given < math.inf:
            raise LogError(
                "LOG_WEIGHT_NOT_A_NUMBER", f"/log/weights/{index}/weight_kg", "Send a positive weight in kilograms."
            )
        if accepted:
            expected = accepted[-1]
        elif reference_kg is not None:
            expected = reference_kg
        else:
            # Nothing before it: the weighings after it settle the unit of the first.
            expected = _middle([float(weighings[i].weight_kg) for i in order[position : position + 5]])
        if not 0.95 < given / expected < 1.05:
            # The last weight may itself be a slip that the filter will discount, so ask the last few.
            expected = _middle(accepted[-5:]) if accepted else expected
            since = day - last_day if accepted else None
            given = _believable(given, expected, day, since, index, notes)
        if day - last_day > GAP_DAYS:
            notes.append(say(GAP, date=iso_date(last_day), days=day - last_day - 1))
        accepted.append(given)
        last_day = day
        weight[day - first] += given
        number[day - first] += 1
    if first + count - 1 - last_day > GAP_DAYS:
        notes.append(say(GAP, date=iso_date(last_day), days=first + count - 1 - last_day))
    if len(weighings) > count or max(number) > 1:
        weight = [total / n if n > 1 else total for total, n in zip(weight, number, strict=True)]
        scale = [1.0 - WITHIN_DAY_SHARE + WITHIN_DAY_SHARE / n if n > 1 else 1.0 for n in number]
    else:
        scale = [1.0] * count
    return weight, scale, [1.0 if n else 0.0 for n in number]


def _middle(values: list[float]) -> float:
    return sorted(values)[len(values) // 2]


def _believable(
    given: float, expected: float, day: int, days_since: int | None, index: int, notes: list[Message]
) -> float:
    """``given`` in kilograms, repaired where another unit explains it."""
    for factor in (1.0 / POUNDS_PER_KG, POUNDS_PER_KG):
        if abs(given * factor / expected - 1.0) < UNIT_TOLERANCE:
            read = given * factor
            notes.append(say(UNIT_MIX_UP, date=iso_date(day), given=given, read_kg=read))
            return read
    # The first weighing may be years older than the stated weight, so only its unit is questioned.
    if days_since is not None and abs(given - expected) > expected * (
        ABSURD_JUMP + ABSURD_JUMP_PER_DAY * max(days_since - 1, 0)
    ):
        raise LogError(
            "LOG_ABSURD_JUMP",
            f"/log/weights/{index}/weight_kg",
            f"The weight {given:g} kg cannot follow {expected:g} kg after {days_since} days: correct or remove it.",
        )
    return given


def first_weight(log: DailyLog, ops: Elementwise) -> Number:
    """The first weighing [kg]; 0 where there is none."""
    weight: Number = 0.0
    for given, seen in zip(log.weight_kg, log.is_weighed, strict=True):
        if ops is FLOATS:
            if seen:
                return given
        else:
            weight = ops.where(weight > 0.0, weight, given * seen)
            if (weight > 0.0).all():
                break
    return weight
