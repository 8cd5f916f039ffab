"""The expected path of carried mass (glycogen with its water, extracellular water, gut content) under a log.

The fast states of ``energy_balance`` by its own closed forms, without its slow tissues, for reading logs.
"""

import math
from collections.abc import Sequence

from ..numbers import FLOATS, Column, Elementwise, Number, compiled
from .constants import (
    BASELINE_CARBOHYDRATE_SHARE,
    GLYCOGEN_ENERGY,
    GLYCOGEN_KG,
    GLYCOGEN_WATER,
    GUT_CONTENT_KG,
    GUT_DAYS,
    SALT_RECOVERY,
    SALT_RECOVERY_DAYS,
    SALT_WATER_KG,
    SODIUM_BY_CARBOHYDRATE,
    SODIUM_EXCRETION,
    SODIUM_PER_LITRE,
)
from .energy_balance import carried_after, salt_answer

_LEAST_CARBOHYDRATE = 1.0  # kcal/d, as in the model: keeps a fast finite


@compiled
def expected_carried_kg(
    intake_kcal: Sequence[Number],
    usual_intake_kcal: Number,
    *,
    carbohydrate_kcal: Sequence[Number] | None = None,
    usual_carbohydrate_kcal: Number | None = None,
    ops: Elementwise = FLOATS,
) -> Column:
    """Deviation of carried mass [kg] on the morning of each day, before that day's ``intake_kcal``.

    It starts settled at ``usual_intake_kcal``; intakes and usual intake must be on one scale (logged or
    physical): resting values follow their ratio, and the scale only touches the speed of glycogen (under 20 g).
    Without ``carbohydrate_kcal`` its share of energy is constant.
    """
    usual_carbohydrate = (
        usual_intake_kcal * BASELINE_CARBOHYDRATE_SHARE if usual_carbohydrate_kcal is None else usual_carbohydrate_kcal
    )
    water_left = math.exp(-SODIUM_EXCRETION / SODIUM_PER_LITRE)
    recovered_left = math.exp(-1.0 / SALT_RECOVERY_DAYS)
    gut_left = math.exp(-1.0 / GUT_DAYS)
    bound = 1.0 + GLYCOGEN_WATER
    sqrt, tanh = ops.sqrt, ops.tanh
    per_usual = 1.0 / usual_intake_kcal
    glycogen: Number = GLYCOGEN_KG
    water: Number = 0.0
    gut: Number = 0.0
    recovered: Number = 0.0
    path: Column = []
    for day, intake in enumerate(intake_kcal):
        path.append((glycogen - GLYCOGEN_KG) * bound + water + gut)
        excess = intake * per_usual - 1.0
        if carbohydrate_kcal is None:
            relative = ops.maximum(excess + 1.0, _LEAST_CARBOHYDRATE / usual_carbohydrate)
        else:
            relative = ops.maximum(carbohydrate_kcal[day], _LEAST_CARBOHYDRATE) / usual_carbohydrate
        rest = GLYCOGEN_KG * sqrt(relative)
        grown = tanh(relative * usual_carbohydrate / (rest * GLYCOGEN_ENERGY))
        salt = SALT_WATER_KG * salt_answer(excess, ops)
        water_rest = SODIUM_BY_CARBOHYDRATE / SODIUM_EXCRETION * (relative - 1.0) + salt
        glycogen, water, gut, recovered = carried_after(
            glycogen, water, gut, recovered,
            rest, water_rest, GUT_CONTENT_KG * excess, SALT_RECOVERY * ops.minimum(salt, 0.0),
            grown, water_left, gut_left, recovered_left, ops,
        )  # fmt: skip
    return path
