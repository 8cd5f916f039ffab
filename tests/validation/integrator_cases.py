"""Bodies and diets on which the service's integrator is compared with the continuous equations."""

from typing import NamedTuple

import numpy as np
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate

from .continuous_model import Eating, Subject

MAINTENANCE, RESTING = 2848.0, 1780.0
HALF_YEAR = 182
# A beginner's gain of lean tissue, kg per kg fat-free mass a day: 1.53 kg in 10.4 weeks in men with about 64 kg
# (Benito PJ et al. Int J Environ Res Public Health 2020;17:1285), 0.5 kg of it water.
BEGINNER = (1.53 - 0.5) / 64.0 / (10.4 * 7)
CEILING = 0.42 / 64.0 / 7  # of what a surplus alone adds


class Case(NamedTuple):
    subject: Subject
    protein: float
    meals: list[Eating]
    years: float = 0.0
    dose: float = 0.0


def eating(change: float, days: float = HALF_YEAR, carbohydrate: float | None = None, sodium: float = 0.0) -> Eating:
    intake = MAINTENANCE + change
    return Eating(days, intake, 0.5 * intake if carbohydrate is None else carbohydrate, sodium)


# Protein of 0.8 g/kg leaves the base partition in a deficit, and a surplus without any lean; the ceiling fades with
# experience to a quarter.
SITTER = Subject(80.0, 12.0, MAINTENANCE, RESTING, surplus_factor=0.0, ceiling=CEILING * 68.0)
# Lifts, 2 g/kg of protein: 1 - 0.5 of the lean loss is left by training, 1 - 0.8 of that by protein, and half of the
# fade of training-driven gain; a surplus stores 1.1 x 1.5 of the lean share.
LIFTER = Subject(
    80.0, 14.0, MAINTENANCE, RESTING,
    deficit_factor=0.5 * 0.2, surplus_factor=1.1 * 1.5, ceiling=CEILING * 66.0, beginner_gain=BEGINNER * 66.0,
    experience_years=2.5, is_training=True, fade=0.5,
)  # fmt: skip
# The published model alone.
PUBLISHED = Subject(
    80.0, 12.0, MAINTENANCE, RESTING, gut=0.0, salt=0.0, water_by_carbohydrate=4000.0, moving=0.0, rate_effect=0.0,
    level=0.0,
)  # fmt: skip
# Does not lift and eats enough protein for all that a surplus can do for lean tissue.
FED = SITTER._replace(surplus_factor=1.1, deficit_factor=0.75)
CASES = {
    "deficit": Case(SITTER, 0.8, [eating(-500)]),
    "low_carbohydrate": Case(FED, 2.0, [eating(-750, carbohydrate=712.0, sodium=-1500.0)]),
    "surplus": Case(FED, 2.0, [eating(500)]),
    "small_change": Case(SITTER, 0.8, [eating(-60)]),
    "lifter_deficit": Case(LIFTER, 2.0, [eating(-600, 42)], 2.5, 1.0),
    "lifter_cut_hold_gain": Case(
        LIFTER, 2.0, [eating(-600, 42), eating(-150, 14), eating(200, 28), eating(250, 28)], 2.5, 1.0
    ),
}


def serve(case: Case) -> tuple[BodyModel, BodyState]:
    s = case.subject
    return calibrate(
        weight_kg=s.weight,
        fat_kg=s.fat,
        maintenance_kcal=s.maintenance,
        resting_kcal=s.resting,
        experience_years=case.years,
        training_dose=case.dose,
    )


def _diet(case: Case, eaten: Eating) -> Diet:
    return Diet(eaten.intake, eaten.carbohydrate, case.protein, sodium_change_mg=eaten.sodium)


def served_ends(case: Case, step_days: float) -> list[np.ndarray]:
    model, state = serve(case)
    ends = []
    for eaten in case.meals:
        state = advance(model, state, _diet(case, eaten), eaten.days, step_days=step_days)
        ends.append(np.array(state[:6]))
    return ends
