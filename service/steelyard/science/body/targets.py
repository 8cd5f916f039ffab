"""Inverse questions: the intake for a target, and the date for an intake."""

from collections.abc import Callable
from enum import StrEnum
from itertools import pairwise
from typing import NamedTuple

from ..register import Basis, Kind, equation, traced
from .energy_balance import LEAST_FAT_KG, advance, walk
from .state import BodyModel, BodyState, Diet

# How far ahead a date is looked for.
MOST_DAYS = 3 * 365


class TargetQuantity(StrEnum):
    """What a target is set in."""

    WEIGHT_KG = "weight_kg"
    FAT_KG = "fat_kg"
    FAT_FRACTION = "fat_fraction"


class BodyTarget(NamedTuple):
    """A value to reach."""

    quantity: TargetQuantity
    value: float

    def of(self, state: BodyState) -> float:
        """The quantity of a state."""
        if self.quantity is TargetQuantity.WEIGHT_KG:
            return float(state.weight_kg)
        if self.quantity is TargetQuantity.FAT_KG:
            return float(state.fat_kg)
        # With no fat left to lose the model means nothing: the share would rise again as lean tissue goes.
        return float(state.fat_kg / state.weight_kg) if state.fat_kg > LEAST_FAT_KG else 0.0


def crossing(excess: Callable[[float], float], low: float, high: float, tolerance: float = 2.0) -> float:
    """Where a rising, nearly linear function crosses zero: the bound beyond it, within ``tolerance`` of it.

    ``low`` where even the lower end is beyond it, ``high`` where even the upper end is not.
    """
    below = excess(low)
    if below >= 0.0:
        return low
    above = excess(high)
    if above < 0.0:
        return high
    for _ in range(60):
        if high - low <= tolerance:
            break
        # The chord lands close; a little beyond it on either side brackets the crossing.
        guess = low + (high - low) * (-below / (above - below))
        for trial in (min(high, guess + 0.4 * tolerance), max(low, guess - 0.4 * tolerance), 0.5 * (low + high)):
            if low < trial < high:
                value = excess(trial)
                if value < 0.0:
                    low, below = trial, value
                else:
                    high, above = trial, value
            if high - low <= tolerance:
                break
    return high


@traced
@equation(
    "intake_for_target",
    summary="Constant daily intake that reaches a target by a date",
    formula="root of forecast(intake) - target in the intake, to 2 kcal/d: more intake never gives less mass or fat",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
)
def intake_for_target(
    model: BodyModel, state: BodyState, target: BodyTarget, days: float, diet: Callable[[float], Diet]
) -> float | None:
    """The intake [kcal/d] that reaches ``target`` after ``days``, or None where none from 0 to 3x maintenance does.

    ``diet`` makes the diet of an intake. Monotone in the intake for weight and fat.
    """
    highest = 3.0 * float(model.maintenance_kcal)

    def excess(intake_kcal: float) -> float:
        return target.of(advance(model, state, diet(intake_kcal), days, step_days=14.0)) - target.value

    if excess(1.0) > 0.0 or excess(highest) < 0.0:
        return None
    return crossing(excess, 1.0, highest)


@traced
@equation(
    "date_for_target",
    summary="First day on which a constant intake reaches a target",
    formula="first crossing of the forecast path, week by week and then to the day",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
)
def days_for_target(model: BodyModel, state: BodyState, target: BodyTarget, diet: Diet) -> int | None:
    """Days after which ``diet`` first reaches ``target`` from its present side; None if not within three years."""
    start = target.of(state) - target.value
    if start == 0.0:
        return 0
    before = state
    for week, after in enumerate(walk(model, state, diet, (7.0,) * (MOST_DAYS // 7))):
        if (target.of(after) - target.value) * start <= 0.0:
            return 7 * week + _day_within(model, before, target, diet)
        before = after
    return None


def _day_within(model: BodyModel, before: BodyState, target: BodyTarget, diet: Diet) -> int:
    """The day of a week by whose end ``target`` is crossed."""
    start = target.of(before) - target.value
    for day, now in enumerate(walk(model, before, diet, (1.0,) * 7)):
        if (target.of(now) - target.value) * start <= 0.0:
            return day + 1
    return 7


def nearest_day_for_target(
    model: BodyModel, state: BodyState, target: BodyTarget, diet: Diet, by_days: int, least_days: int
) -> int | None:
    """Days after which ``diet`` reaches ``target``, nearest to ``by_days``: later, or passed before it, though never in
    the first ``least_days``, when water hides all else. None where there is no such day within three years."""
    first = days_for_target(model, state, target, diet)
    if first is None or first >= by_days:
        return first
    days = [*range(0, by_days, 7), by_days]
    lengths = tuple([float(end - begin) for begin, end in pairwise(days)])
    path = [state, *walk(model, state, diet, lengths)]
    apart = [target.of(now) - target.value for now in path]
    before = [
        days[i] + _day_within(model, path[i], target, diet)
        for i in range(len(lengths))
        if apart[i] * apart[i + 1] <= 0.0 and apart[i] != 0.0
    ]
    before = [day for day in before if least_days <= day <= by_days]
    on = days_for_target(model, path[-1], target, diet)
    after = [] if on is None or by_days + on > MOST_DAYS // 7 * 7 else [by_days + on]
    return min([*before, *after], key=lambda day: abs(day - by_days), default=None)
