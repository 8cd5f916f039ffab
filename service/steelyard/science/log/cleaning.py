"""Cleaning a log into one entry a day.

What is plainly a slip is repaired or set aside and said in a coded message; what cannot be meant is refused, naming the
entry.
"""

import math
from collections.abc import Sequence

from ..register import Basis, Message, constant, say, traced
from .cycle import cycle_rise
from .entries import DailyLog, EntriesRead, IntakeDay, Log, LogError, StepsDay, in_future, iso_date, one_a_day
from .events import expected_water
from .intake_slips import far_days, intakes_by_day, intakes_once, set_aside, wrong_intake
from .onset import gone_on_from
from .weight_slips import believed, weights_by_day

MOST_STEPS = constant(
    "most_logged_steps", 60000.0, unit="steps/d", basis=Basis.JUDGEMENT,
    summary="More steps than these in a day are set aside (ten hours of walking): a slip, or a week's sum",
)  # fmt: skip
LEAST_STEPS = constant(
    "least_logged_steps", 300.0, unit="steps/d", basis=Basis.JUDGEMENT,
    summary="Fewer steps than these in a day are set aside: the counter was not carried",
)  # fmt: skip

PARTIAL = "LOG_PARTIAL_INTAKE"
NOTHING = "LOG_INTAKE_NOTHING"
INTAKE_MISSING = "LOG_INTAKE_MISSING"
NO_INTAKE = "LOG_NO_INTAKE"
STEPS_TWICE = "LOG_STEPS_TWICE"
STEPS_SLIP = "LOG_STEPS_SET_ASIDE"


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
    read = gone_on_from(log.onset)
    first, count, intakes, days, kilograms = _taken(log, as_of_day, reference_weight_kg, notes)
    weight, noise_scale, is_weighed = weights_by_day(days, kilograms, first, count)
    intake, is_logged, carbohydrate, has_carbohydrate, partial, wrong = intakes_by_day(intakes, first, count)
    if wrong < len(intakes):
        raise wrong_intake(log.intakes, intakes[wrong], first + count)
    nothing = len(intakes) - partial - int(sum(is_logged))
    usual, far = far_days(log, intake, is_logged, usual_kcal)
    if far:
        intake, is_logged, has_carbohydrate = set_aside(
            list(intake), list(is_logged), list(has_carbohydrate), far, first, usual, notes
        )
    if partial:
        notes.append(say(PARTIAL, count=partial))
    if nothing:
        notes.append(say(NOTHING, count=nothing))
    # The as-of day is usually not over when it is sent, so it is not counted as missing.
    missing = int(count - 1 - (sum(is_logged) - is_logged[-1]))
    if not any(is_logged):
        notes.append(say(NO_INTAKE))
    elif missing > 0:
        notes.append(say(INTAKE_MISSING, count=missing, days=count - 1))
    rise = None
    # One of a later day, after weeks without other entries, belongs to the day that is asked for.
    begun = sorted({day for day in log.cycle_starts if day <= as_of_day})
    if begun:
        rise = cycle_rise(begun, first, count)
    for index, check_in in enumerate(log.check_ins):
        if check_in.day > as_of_day:
            raise LogError("LOG_ENTRY_IN_FUTURE", f"log.check_ins[{index}].date", "The day lies after the as-of day.")
    water, variance = expected_water(log.events, first, count, first if read is None else first - read.days)
    steps = _steps_counted(log.steps, first + count, notes) if log.steps else ()
    if read is not None:
        steps = [entry for entry in steps if entry.day >= first]
    return DailyLog(
        first, weight, is_weighed, noise_scale, intake, is_logged, carbohydrate, has_carbohydrate, tuple(notes), rise,
        water, variance, steps, _without_slips(days, kilograms, intakes, far, first),
    )  # fmt: skip


def entries_read(
    log: Log, until_day: int, reference_weight_kg: float | None = None, usual_kcal: float | None = None
) -> EntriesRead:
    """The entries as ``clean_log`` reads them. Args as for it.

    Raises ``LogError`` where no weighing goes with that weight.
    """
    last = max(until_day, log.last_day)
    first, count, intakes, days, kilograms = _taken(log, last, reference_weight_kg, [])
    intake, is_logged, *_ = intakes_by_day(intakes, first, count)
    return _without_slips(days, kilograms, intakes, far_days(log, intake, is_logged, usual_kcal)[1], first)


def _taken(
    log: Log, last_day: int, reference_weight_kg: float | None, notes: list[Message]
) -> tuple[int, int, Sequence[IntakeDay], list[int], list[float]]:
    """First day and number of days, the intakes that count, and days and kilograms of the weighings believed.

    What is left out is said in ``notes``.
    """
    read = gone_on_from(log.onset)
    first = log.first_day if read is None else read.day
    intakes = intakes_once(log.intakes, notes)
    return first, last_day - first + 1, intakes, *believed(log.weighings, last_day + 1, reference_weight_kg, notes)


def _without_slips(
    days: Sequence[int], kilograms: Sequence[float], intakes: Sequence[IntakeDay], far: Sequence[int], first: int
) -> EntriesRead:
    slips = {first + at for at in far}
    eaten = [(one.day, one.intake_kcal) for one in intakes if not one.is_partial and one.day not in slips]
    return EntriesRead(list(zip(days, kilograms, strict=True)), eaten)


@traced
def _steps_counted(entries: Sequence[StepsDay], end: int, notes: list[Message]) -> list[StepsDay]:
    """Steps in order of time, one entry a day: of two that differ neither counts, nor does what nobody walks.

    ``end``: the day after the last. Raises ``LogError`` on an entry after that, or one that is not a number.
    """
    walked: list[StepsDay] = []
    slips: set[int] = set()
    for index, entry in enumerate(entries):
        if entry.day >= end:
            raise in_future(f"log.steps[{index}].date")
        if not 0.0 <= entry.steps < math.inf:
            raise LogError("LOG_STEPS_NOT_A_NUMBER", f"log.steps[{index}].steps", "Send a number of at least 0.")
        if LEAST_STEPS <= entry.steps <= MOST_STEPS:
            walked.append(entry)
        else:
            slips.add(entry.day)
    kept, twice = one_a_day(walked)
    for code, days in ((STEPS_SLIP, sorted(slips)), (STEPS_TWICE, twice)):
        if days:
            notes.append(say(code, count=len(days), date=iso_date(min(days))))
    return sorted(kept, key=lambda entry: entry.day)
