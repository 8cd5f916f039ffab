"""Cleaning a log into one entry a day.

What is plainly a slip is repaired or set aside and said in a coded message; what cannot be meant is refused, naming the
entry.
"""

import math
from collections.abc import Sequence
from typing import TypeVar

from ..body import KJ_PER_KCAL
from ..numbers import FLOATS, Column, Elementwise, Number, compiled, inlined
from ..rails import CARBOHYDRATE_KCAL_PER_G
from ..register import Basis, Message, constant, say, traced
from .cycle import cycle_rise
from .entries import DailyLog, IntakeDay, Log, LogError, StepsDay, Weighing, in_order, iso_date
from .events import expected_water

POUNDS_PER_KG = constant(
    "pounds_per_kilogram", 1.0 / 0.45359237, unit="lb/kg",
    summary="International avoirdupois pound, 0.45359237 kg exactly (agreement of 1959)",
)  # fmt: skip
UNIT_TOLERANCE = constant(
    "unit_mix_up_tolerance", 0.06, unit="1", basis=Basis.JUDGEMENT,
    summary="A weight is read as pounds (or as kilograms divided twice) when the ratio to the weights before is "
    "within this fraction of the unit ratio",
)  # fmt: skip
FAR_WEIGHT = constant(
    "far_weight", 0.06, unit="1", basis=Basis.JUDGEMENT,
    summary="A weighing further than this fraction of body mass from those before is set aside (a typing slip, or "
    "another person's weight) unless it lasts",
)  # fmt: skip
ANOTHERS_MORNINGS = int(
    constant(
        "mornings_of_another", 5, unit="weighings", basis=Basis.JUDGEMENT,
        summary="So many weighings in a row that are this far off may be those of another (a guest's week), who stands "
        "on the same scale; nobody's own weight comes to lie there overnight. What goes on, or lasts a fortnight, is "
        "believed",
    )
)  # fmt: skip
FAR_INTAKE = constant(
    "far_intake", 2.8, unit="1", basis=Basis.JUDGEMENT,
    summary="An intake over so many times the habit is set aside: kilojoules, or a slip of the decimal point",
)  # fmt: skip
LEAST_WEIGHT_KG = constant(
    "least_logged_weight", 20.0, unit="kg", basis=Basis.JUDGEMENT,
    summary="A weight under this is nobody's who may send a log",
)  # fmt: skip
MOST_WEIGHT_KG = constant(
    "most_logged_weight", 500.0, unit="kg", basis=Basis.JUDGEMENT,
    summary="A weight over this is nobody's whom a scale weighs",
)  # fmt: skip
ABSURD_JUMP_PER_DAY = constant(
    "absurd_weight_jump_growth", 0.003, unit="1/d", basis=Basis.JUDGEMENT,
    summary="What each further day between two weighings adds to the largest believable change (2 % a week)",
)  # fmt: skip
WITHIN_DAY_SHARE = constant(
    "within_day_noise_share", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the noise variance of a weighing that a second weighing of the day does not share",
)  # fmt: skip
MOST_STEPS = constant(
    "most_logged_steps", 60000.0, unit="steps/d", basis=Basis.JUDGEMENT,
    summary="More steps than these in a day are set aside (ten hours of walking): a slip, or a week's sum",
)  # fmt: skip
LEAST_STEPS = constant(
    "least_logged_steps", 300.0, unit="steps/d", basis=Basis.JUDGEMENT,
    summary="Fewer steps than these in a day are set aside: the counter was not carried",
)  # fmt: skip
GAP_DAYS = constant(
    "logging_gap", 7.0, unit="d", basis=Basis.JUDGEMENT, summary="Days without a weighing that are pointed out"
)

_HABIT_SHARE = 0.1
_LEAST_FOLLOWING = 3
# So many tell whether the first weighing is of the same person: more than a few mornings of another.
_FOLLOWING_DAYS = 14
_FIRST_INTAKES = 7
_HALFWAY = KJ_PER_KCAL**0.5  # over the habit: from here on kilojoules are nearer to it than kilocalories
_STILL_KILOJOULES = 1.5  # a day over so many times the habit, after one in kilojoules (judgement)

SORTED = "LOG_SORTED"
UNIT_MIX_UP = "LOG_UNIT_MIX_UP"
SET_ASIDE = "LOG_WEIGHT_SET_ASIDE"
DECIMAL_SLIP = "LOG_WEIGHT_DECIMAL"
TWICE = "LOG_WEIGHT_TWICE"
INTAKE_TWICE = "LOG_INTAKE_TWICE"
KILOJOULES = "LOG_INTAKE_KILOJOULES"
INTAKE_SLIP = "LOG_INTAKE_SET_ASIDE"
GAP = "LOG_GAP"
PARTIAL = "LOG_PARTIAL_INTAKE"
INTAKE_MISSING = "LOG_INTAKE_MISSING"
NO_INTAKE = "LOG_NO_INTAKE"
STEPS_TWICE = "LOG_STEPS_TWICE"
STEPS_SLIP = "LOG_STEPS_SET_ASIDE"
_DayEntry = TypeVar("_DayEntry", IntakeDay, StepsDay)


def clean_log(
    log: Log, as_of_day: int, reference_weight_kg: float | None = None, usual_kcal: float | None = None
) -> DailyLog:
    """Daily columns from the first entry, or from where a reading goes on, to ``as_of_day``.

    Args: ``reference_weight_kg``: the member's stated weight, which settles the unit of the first weighing;
        ``usual_kcal``: what they are expected to log a day, which settles that of the first intakes; these where None.
    Raises: ``LogError`` on an empty log, an entry after ``as_of_day``, two intakes for a day, a value that is not
        a positive finite number, or a jump that nobody can make.
    """
    notes: list[Message] = []
    goes_on = log.onset is not None and log.onset.goes_on
    first = log.onset.day if log.onset is not None and goes_on else log.first_day
    count = as_of_day - first + 1
    intakes = _intakes_once(log.intakes, notes)
    days, kilograms = _believed(log.weighings, first + count, reference_weight_kg, notes)
    weight, noise_scale, is_weighed = _weights_by_day(days, kilograms, first, count)
    intake, is_logged, carbohydrate, has_carbohydrate, partial, wrong = _intakes_by_day(intakes, first, count)
    if wrong < len(intakes):
        raise _wrong_intake(log.intakes, intakes[wrong], first + count)
    usual, far = _far_days(log, intake, is_logged, usual_kcal)
    if far:
        intake, is_logged, has_carbohydrate = _set_aside(
            list(intake), list(is_logged), list(has_carbohydrate), far, first, usual, notes
        )
    if partial:
        notes.append(say(PARTIAL, count=partial))
    # The as-of day is usually not over when it is sent, so it is not counted as missing.
    missing = int(count - 1 - (sum(is_logged) - is_logged[-1]))
    if not any(is_logged):
        notes.append(say(NO_INTAKE))
    elif missing > 0:
        notes.append(say(INTAKE_MISSING, count=missing, days=count - 1))
    rise = None
    if log.cycle_starts:
        if max(log.cycle_starts) > as_of_day:
            index = log.cycle_starts.index(max(log.cycle_starts))
            raise LogError("LOG_ENTRY_IN_FUTURE", f"log.cycle[{index}]", "The day lies after the as-of day.")
        rise = cycle_rise(sorted(set(log.cycle_starts)), first, count)
    water, variance = expected_water(log.events, first, count)
    steps = _steps_counted(log.steps, first + count, notes) if log.steps else ()
    if goes_on:
        steps = [entry for entry in steps if entry.day >= first]
    return DailyLog(
        first, weight, is_weighed, noise_scale, intake, is_logged, carbohydrate, has_carbohydrate, tuple(notes), rise,
        water, variance, steps,
    )  # fmt: skip


@traced
def _steps_counted(entries: Sequence[StepsDay], end: int, notes: list[Message]) -> list[StepsDay]:
    """Steps in order of time, one entry a day: of two that differ neither counts, nor does what nobody walks.

    ``end``: the day after the last. Raises ``LogError`` on an entry after that, or one that is not a number.
    """
    walked: list[StepsDay] = []
    slips: list[int] = []
    for index, entry in enumerate(entries):
        if entry.day >= end:
            raise LogError("LOG_ENTRY_IN_FUTURE", f"log.steps[{index}].date", "The day lies after the as-of day.")
        if not 0.0 <= entry.steps < math.inf:
            raise LogError("LOG_STEPS_NOT_A_NUMBER", f"log.steps[{index}].steps", "Send a number of at least 0.")
        if LEAST_STEPS <= entry.steps <= MOST_STEPS:
            walked.append(entry)
        else:
            slips.append(entry.day)
    kept, twice = _one_a_day(walked)
    for code, days in ((STEPS_SLIP, slips), (STEPS_TWICE, twice)):
        if days:
            notes.append(say(code, count=len(days), date=iso_date(min(days))))
    return sorted(kept, key=lambda entry: entry.day)


@compiled
def _intakes_by_day(
    entries: Sequence[IntakeDay], first: int, count: int, *, ops: Elementwise = FLOATS
) -> tuple[Column, Column, Column, Column, int, int]:
    """The last four columns of a log, how many days are partial, and how many entries were taken before a wrong one."""
    intake: Column = [0.0] * count
    is_logged: Column = [0.0] * count
    carbohydrate: Column = [0.0] * count
    has_carbohydrate: Column = [0.0] * count
    is_taken: Column = [0.0] * count
    partial = 0
    for index in range(len(entries)):
        entry = entries[index]
        at = int(entry.day - first)
        eaten = entry.intake_kcal
        if at >= count or is_taken[at] > 0.0 or not 0.0 <= eaten < math.inf:
            return intake, is_logged, carbohydrate, has_carbohydrate, partial, index
        is_taken[at] = 1.0
        if entry.is_partial:
            partial += 1
        else:
            intake[at] = eaten
            is_logged[at] = 1.0
            if entry.carbohydrate_g is not None:
                carbohydrate[at] = CARBOHYDRATE_KCAL_PER_G * entry.carbohydrate_g
                has_carbohydrate[at] = 1.0
    return intake, is_logged, carbohydrate, has_carbohydrate, partial, len(entries)


def _wrong_intake(entries: Sequence[IntakeDay], wrong: IntakeDay, end: int) -> LogError:
    """What is wrong with an entry."""
    index = next(i for i, entry in enumerate(entries) if entry is wrong)
    if wrong.day >= end:
        return LogError("LOG_ENTRY_IN_FUTURE", f"log.intakes[{index}].date", "The day lies after the as-of day.")
    return LogError("LOG_INTAKE_NOT_A_NUMBER", f"log.intakes[{index}].intake_kcal", "Send a number of at least 0.")


def _one_a_day(entries: Sequence[_DayEntry]) -> tuple[Sequence[_DayEntry], list[int]]:
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


def _intakes_once(entries: Sequence[IntakeDay], notes: list[Message]) -> Sequence[IntakeDay]:
    kept, twice = _one_a_day(entries)
    notes += [say(INTAKE_TWICE, date=iso_date(day)) for day in twice]
    return kept


def _set_aside(
    intake: Column,
    is_logged: Column,
    has_carbohydrate: Column,
    far: list[int],
    first: int,
    usual_kcal: float,
    notes: list[Message],
) -> tuple[Column, Column, Column]:
    """Take intakes out of the columns that cannot be meant in kilocalories, and name them."""
    kilojoules = []
    for at in far:
        given = intake[at]
        if 0.3 * usual_kcal < given / KJ_PER_KCAL < 2.0 * usual_kcal:
            kilojoules.append(at)
        else:
            notes.append(say(INTAKE_SLIP, date=iso_date(first + at), given_kcal=given))
        intake[at] = is_logged[at] = has_carbohydrate[at] = 0.0
    if kilojoules:
        notes.append(say(KILOJOULES, count=len(kilojoules), date=iso_date(first + kilojoules[0])))
    return intake, is_logged, has_carbohydrate


def _far_days(log: Log, intake: Column, is_logged: Column, usual_kcal: float | None) -> tuple[float, list[int]]:
    """What is usually logged [kcal/d], and the days whose intake cannot be meant in kilocalories.

    The days read before tell the habit, where there are any. A log that begins in kilojoules is told by the middle of
    its first days: in a deficit each for itself may pass.
    """
    onset = log.onset
    before = [] if onset is None or not onset.goes_on else [kcal or 0.0 for kcal in onset.intakes]
    eaten, has = [*before, *intake], [*[float(kcal > 0.0) for kcal in before], *is_logged]
    first = [kcal for kcal, logged in zip(eaten, has, strict=True) if logged][:_FIRST_INTAKES]
    if not first:
        return 0.0, []
    usual = usual_kcal or _middle(first)
    in_kilojoules = len(first) >= _LEAST_FOLLOWING and _middle(first) > _HALFWAY * usual
    found = _far_intakes(eaten, has, usual, float(in_kilojoules))
    return usual, [int(at) - len(before) for at in found if at >= len(before)]


@compiled
def _far_intakes(
    intake: Sequence[Number],
    is_logged: Sequence[Number],
    usual_kcal: Number,
    in_kilojoules: Number,
    *,
    ops: Elementwise = FLOATS,
) -> Column:
    """The days whose intake is far over the habit, or a tenth of it; a day without food is a fast.

    Who logged the day before in kilojoules goes on in them (``in_kilojoules``: 1, a half where that day might have
    been, else 0; given for the first): no day of little food may pass, and drag the habit along.
    """
    habit = usual_kcal
    found: Column = []
    for at in range(len(intake)):
        eaten = intake[at]
        if is_logged[at] > 0.0:
            tenth = 10.0 * eaten
            most = FAR_INTAKE
            if in_kilojoules > 0.0:
                most = _STILL_KILOJOULES if in_kilojoules > 0.5 else _HALFWAY
            if eaten > most * habit:
                found.append(at)
                in_kilojoules = 1.0 if eaten < 2.0 * KJ_PER_KCAL * habit else 0.0
            elif 0.75 * habit < tenth < 1.25 * habit:
                found.append(at)
            else:
                in_kilojoules = 0.5 if eaten > _HALFWAY * habit else 0.0
                habit = habit + _HABIT_SHARE * (eaten - habit)
    return found


@compiled
def _weights_by_day(
    days: Sequence[int], kilograms: Sequence[Number], first: int, count: int, *, ops: Elementwise = FLOATS
) -> tuple[Column, Column, Column]:
    """The first three columns of a log: several weighings of a day become their mean, which is less noisy."""
    weight: Column = [0.0] * count
    number: Column = [0.0] * count
    for index in range(len(kilograms)):
        at = int(days[index] - first)
        weight[at] = weight[at] + kilograms[index]
        number[at] = number[at] + 1.0
    noise_scale: Column = []
    is_weighed: Column = []
    for at in range(count):
        several = number[at]
        if several > 1.0:
            weight[at] = weight[at] / several
            noise_scale.append(1.0 - WITHIN_DAY_SHARE + WITHIN_DAY_SHARE / several)
        else:
            noise_scale.append(1.0)
        is_weighed.append(1.0 if several > 0.0 else 0.0)
    return weight, noise_scale, is_weighed


def _believed(
    weighings: Sequence[Weighing], end: int, reference_kg: float | None, notes: list[Message]
) -> tuple[list[int], list[float]]:
    """The days of the weighings that are read, in order of time, and what each is read as [kg].

    Slips are set aside and named. ``end``: the day after the last.
    """
    days = [entry.day for entry in weighings]
    order: Sequence[int] = range(len(weighings))
    is_in_order = in_order(weighings)
    if not is_in_order and days != sorted(days):
        notes.append(say(SORTED))
        order = sorted(order, key=days.__getitem__)
        weighings, days = [weighings[i] for i in order], sorted(days)
    if days[-1] >= end:
        raise LogError("LOG_ENTRY_IN_FUTURE", f"log.weights[{order[-1]}].date", "The day lies after the as-of day.")
    if not is_in_order and len(set(days)) < len(days):
        weighings, days, order = _told_once(weighings, order, notes)
    accepted: list[float] = []
    kept: list[int] = []
    aside: list[tuple[int, float]] = []
    at = 0
    while True:
        before = accepted[-1] if accepted else reference_kg or 0.0
        found = _usual(weighings, at, before, kept[-1] if kept else days[0])
        accepted += found
        kept += days[at : at + len(found)]
        at += len(found)
        if at == len(weighings):
            break
        # One that is not like the one before, comes long after it, or has none before it.
        day, given, index = days[at], float(weighings[at].weight_kg), order[at]
        if not 0.0 < given < math.inf:
            raise LogError(
                "LOG_WEIGHT_NOT_A_NUMBER", f"log.weights[{index}].weight_kg", "Send a positive weight in kilograms."
            )
        read: float | None = given
        if not (accepted and _is_like(given, accepted[-1])):
            following = [] if accepted else _following(weighings, at)
            read = _believable(given, day, accepted, kept, reference_kg, following, aside, notes)
        if read is None:
            aside.append((day, given))
        else:
            if kept and day - kept[-1] > GAP_DAYS:
                notes.append(say(GAP, date=iso_date(kept[-1]), days=day - kept[-1] - 1))
            accepted.append(read)
            kept.append(day)
        at += 1
    if not kept:
        detail = "None of the weights goes with the stated weight: correct them, or that."
        raise LogError("LOG_WITHOUT_WEIGHT", "log.weights", detail)
    if end - 1 - kept[-1] > GAP_DAYS:
        notes.append(say(GAP, date=iso_date(kept[-1]), days=end - 1 - kept[-1]))
    return kept, accepted


def _following(weighings: Sequence[Weighing], at: int) -> list[float]:
    """The weights of the fortnight after a weighing, or else the next three, whenever they were."""
    until = weighings[at].day + _FOLLOWING_DAYS
    found: list[float] = []
    for entry in weighings[at + 1 :]:
        if entry.day > until and len(found) >= _LEAST_FOLLOWING:
            break
        found.append(float(entry.weight_kg))
    return found


def weights_read(log: Log, reference_kg: float) -> list[float]:
    """What the weighings of a log are read as [kg], in order of time, by someone of this weight; slips left out.

    Raises: ``LogError`` where none goes with that weight.
    """
    return _believed(log.weighings, log.last_day + 1, reference_kg, [])[1]


def _told_once(
    weighings: Sequence[Weighing], order: Sequence[int], notes: list[Message]
) -> tuple[list[Weighing], list[int], list[int]]:
    """Weighings without those that repeat one of the same day and order to the gram."""
    seen: set[tuple[int, float, int | None]] = set()
    found: list[tuple[Weighing, int]] = []
    for weighing, index in zip(weighings, order, strict=True):
        key = (weighing.day, weighing.weight_kg, weighing.order)
        if key not in seen:
            seen.add(key)
            found.append((weighing, index))
    if len(found) < len(weighings):
        notes.append(say(TWICE, count=len(weighings) - len(found)))
    return [w for w, _ in found], [w.day for w, _ in found], [i for _, i in found]


@inlined
def _is_like(weight_kg: Number, before_kg: Number) -> bool:
    """Whether a weight needs no second look after the one before."""
    return bool(0.95 * before_kg < weight_kg < 1.05 * before_kg)


@compiled
def _usual(
    weighings: Sequence[Weighing], first: int, before_kg: Number, before_day: Number, *, ops: Elementwise = FLOATS
) -> Column:
    """The weights from the ``first``-th on, up to one that needs a second look; before them the one given."""
    found: Column = []
    for index in range(first, len(weighings)):
        weighing = weighings[index]
        weight, day = weighing.weight_kg, weighing.day
        if day - before_day > GAP_DAYS or not _is_like(weight, before_kg):
            break
        found.append(weight)
        before_kg, before_day = weight, day
    return found


def _middle(values: list[float]) -> float:
    return sorted(values)[len(values) // 2]


def _believable(
    given: float,
    day: int,
    accepted: list[float],
    kept: list[int],
    reference_kg: float | None,
    following: list[float],
    aside: list[tuple[int, float]],
    notes: list[Message],
) -> float | None:
    """``given`` in kilograms, read in another unit where that explains it; None where it is set aside.

    Args: the weighings read so far and their days; the stated weight; those that follow, for a first one; what was set
        aside before.
    """
    if accepted:
        # The last weight may itself be a slip that the reader will discount, so ask the last few.
        expected, since = _middle(accepted[-5:]), day - kept[-1]
    else:
        # Nothing before it: the stated weight settles its unit, or those after it.
        near = _middle([given, *following[:_LEAST_FOLLOWING]])
        expected, since = near if reference_kg is None else reference_kg, 0
    if _is_like(given, expected):
        return given
    for factor in (1.0 / POUNDS_PER_KG, POUNDS_PER_KG):
        if abs(given * factor / expected - 1.0) < UNIT_TOLERANCE:
            read = given * factor
            notes.append(say(UNIT_MIX_UP, date=iso_date(day), given=given, read_kg=read))
            return read
    for factor in (0.1, 10.0):
        if abs(given * factor / expected - 1.0) < UNIT_TOLERANCE:
            notes.append(say(DECIMAL_SLIP, date=iso_date(day), given=given, expected_kg=expected))
            return None
    if not LEAST_WEIGHT_KG <= given <= MOST_WEIGHT_KG:
        notes.append(say(SET_ASIDE, date=iso_date(day), given=given, expected_kg=expected))
        return None
    if not accepted:
        # The first weighing may be years older than the stated weight, so that only those after it can tell.
        if len(following) < _LEAST_FOLLOWING:
            return given
        expected = _middle(following)
    elif _lasts(given, day, kept[-1], aside):
        return given
    if abs(given - expected) <= expected * (FAR_WEIGHT + ABSURD_JUMP_PER_DAY * max(since - 1, 0)):
        return given
    notes.append(say(SET_ASIDE, date=iso_date(day), given=given, expected_kg=expected))
    return None


def _lasts(given: float, day: int, believed_day: int, aside: list[tuple[int, float]]) -> bool:
    """Whether a weight goes on with those set aside since one was believed, longer than another's mornings do."""
    run = 0
    for before, weight in reversed(aside):
        if before <= believed_day or not _is_like(given, weight):
            break
        run += 1
        if day - before >= _FOLLOWING_DAYS:
            return True
    return run >= ANOTHERS_MORNINGS
