"""Carried mass after a change of diet, and over a year of phases: how much goes, when, what of it returns and when."""

from typing import NamedTuple

from steelyard.science.body.energy_balance import walk
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate
from steelyard.science.body.uncertainty import settle_at

# A man of 80 kg with 14 kg of fat who has lifted for some years.
MAINTENANCE = 2850.0
DEFICIT_WEEKS, BACK_DAYS = 6, 14
KEPT, CUT = 0.5, 0.36  # carbohydrate in the deficit, of its energy: in proportion, or most of what is left out


class Start(NamedTuple):
    """From which diet into a deficit of 500 kcal/d, and what becomes of carbohydrate."""

    title: str
    surplus_kcal: float
    carbohydrate_share: float


STARTS = (
    Start("from a surplus of 250, carbohydrate in proportion", 250.0, KEPT),
    Start("from a surplus of 250, carbohydrate cut", 250.0, CUT),
    Start("from maintenance, carbohydrate in proportion", 0.0, KEPT),
    Start("from maintenance, carbohydrate cut", 0.0, CUT),
)
# What goes at its deepest [kg], from a surplus and from maintenance.
FROM_SURPLUS, FROM_MAINTENANCE = (1.0, 1.8), (0.5, 1.2)


class FirstWeeks(NamedTuple):
    """Carried mass against the day before the deficit [kg]; ``returned`` is the part of the deepest that came back."""

    deepest: float
    day: int
    after_one_week: float
    after_six_weeks: float
    returned: float
    back_after_a_week: float
    back_after_two: float


def _body(surplus_kcal: float) -> tuple[BodyModel, BodyState]:
    model, state = calibrate(
        weight_kg=80.0, fat_kg=14.0, maintenance_kcal=MAINTENANCE, resting_kcal=1900.0, experience_years=2.5,
        training_dose=1.0,
    )  # fmt: skip
    return settle_at(model, state, MAINTENANCE + surplus_kcal)


def first_weeks(start: Start) -> FirstWeeks:
    """Six weeks at 500 kcal/d under maintenance, then two at the maintenance of the body as it then is."""
    model, state = _body(start.surplus_kcal)
    intake = MAINTENANCE - 500.0
    path = walk(model, state, Diet(intake, start.carbohydrate_share * intake, 2.0), (1.0,) * 7 * DEFICIT_WEEKS)
    moved = [float(after.carried_kg - state.carried_kg) for after in path]
    deepest = min(moved)
    held = MAINTENANCE - 150.0
    back = walk(model, path[-1], Diet(held, KEPT * held, 1.8), (1.0,) * BACK_DAYS)
    week, two = (float(back[day - 1].carried_kg - state.carried_kg) for day in (7, 14))
    return FirstWeeks(deepest, moved.index(deepest) + 1, moved[6], moved[-1], 1.0 - moved[-1] / deepest, week, two)


def year_of_phases() -> list[float]:
    """Carried mass against the start [kg] each week: a gain of 30 weeks, a cut of 8, and a hold to the year's end."""
    model, state = _body(0.0)
    moved = []
    for intake, weeks in ((MAINTENANCE + 250.0, 30), (MAINTENANCE - 450.0, 8), (MAINTENANCE, 14)):
        path = walk(model, state, Diet(intake, KEPT * intake, 1.8), (7.0,) * weeks)
        moved += [float(after.carried_kg) for after in path]
        state = path[-1]
    return moved
