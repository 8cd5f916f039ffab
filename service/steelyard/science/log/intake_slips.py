"""Logged intakes, one a day: what cannot be meant in kilocalories is set aside, and what is sent twice counts once."""

import math
from collections.abc import Sequence

from ..body import KJ_PER_KCAL
from ..numbers import FLOATS, Column, Elementwise, Number, compiled
from ..rails import CARBOHYDRATE_KCAL_PER_G
from ..register import Basis, Message, constant, say
from .entries import KILOJOULES_FROM, IntakeDay, Log, LogError, in_future, iso_date, middle, one_a_day
from .onset import gone_on_from

FAR_INTAKE = constant(
    "far_intake", 2.8, unit="1", basis=Basis.JUDGEMENT,
    summary="An intake over so many times the habit is set aside: kilojoules, or a slip of the decimal point",
)  # fmt: skip

# Judgements: what a day moves of the habit; of how many first days the middle tells the unit, and the least that do.
_HABIT_SHARE = 0.1
_FIRST_INTAKES, _LEAST_FIRST = 7, 3
_STILL_KILOJOULES = 1.5  # a day over so many times the habit, after one in kilojoules (judgement)

INTAKE_TWICE = "LOG_INTAKE_TWICE"
KILOJOULES = "LOG_INTAKE_KILOJOULES"
INTAKE_SLIP = "LOG_INTAKE_SET_ASIDE"


@compiled
def intakes_by_day(
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
        elif eaten > 0.0:
            intake[at] = eaten
            is_logged[at] = 1.0
            if entry.carbohydrate_g is not None:
                carbohydrate[at] = CARBOHYDRATE_KCAL_PER_G * entry.carbohydrate_g
                has_carbohydrate[at] = 1.0
    return intake, is_logged, carbohydrate, has_carbohydrate, partial, len(entries)


def wrong_intake(entries: Sequence[IntakeDay], wrong: IntakeDay, end: int) -> LogError:
    """What is wrong with an entry."""
    index = next(i for i, entry in enumerate(entries) if entry is wrong)
    if wrong.day >= end:
        return in_future(f"log.intakes[{index}].date")
    return LogError("LOG_INTAKE_NOT_A_NUMBER", f"log.intakes[{index}].intake_kcal", "Send a number of at least 0.")


def intakes_once(entries: Sequence[IntakeDay], notes: list[Message]) -> Sequence[IntakeDay]:
    kept, twice = one_a_day(entries)
    notes += [say(INTAKE_TWICE, date=iso_date(day), others=0) for day in twice]
    return kept


def set_aside(
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
        # A day's food, were it kilojoules (judgement).
        if 0.3 * usual_kcal < given / KJ_PER_KCAL < 2.0 * usual_kcal:
            kilojoules.append(at)
        else:
            notes.append(say(INTAKE_SLIP, date=iso_date(first + at), given_kcal=given))
        intake[at] = is_logged[at] = has_carbohydrate[at] = 0.0
    if kilojoules:
        notes.append(say(KILOJOULES, count=len(kilojoules), date=iso_date(first + kilojoules[0])))
    return intake, is_logged, has_carbohydrate


def far_days(log: Log, intake: Column, is_logged: Column, usual_kcal: float | None) -> tuple[float, list[int]]:
    """What is usually logged [kcal/d], and the days whose intake cannot be meant in kilocalories.

    The days read before tell the habit, where there are any. A log that begins in kilojoules is told by the middle of
    its first days: in a deficit each for itself may pass.
    """
    onset = gone_on_from(log.onset)
    before = [] if onset is None else [kcal or 0.0 for kcal in onset.intakes]
    eaten, has = [*before, *intake], [*[float(kcal > 0.0) for kcal in before], *is_logged]
    first = [kcal for kcal, logged in zip(eaten, has, strict=True) if logged][:_FIRST_INTAKES]
    if not first:
        return 0.0, []
    usual = usual_kcal or middle(first)
    in_kilojoules = len(first) >= _LEAST_FIRST and middle(first) > KILOJOULES_FROM * usual
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
    """The days whose intake is far over the habit, or a tenth of it; a day of less is a fast.

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
                most = _STILL_KILOJOULES if in_kilojoules > 0.5 else KILOJOULES_FROM
            if eaten > most * habit:
                found.append(at)
                in_kilojoules = 1.0 if eaten < 2.0 * KJ_PER_KCAL * habit else 0.0
            elif 0.75 * habit < tenth < 1.25 * habit:  # judgement
                found.append(at)
            else:
                in_kilojoules = 0.5 if eaten > KILOJOULES_FROM * habit else 0.0
                habit = habit + _HABIT_SHARE * (eaten - habit)
    return found
