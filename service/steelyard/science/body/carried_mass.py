"""Carried mass: glycogen with its water, extracellular water and gut content, and their path under a log.

These fast states of the body have closed forms while the diet is constant. ``energy_balance`` walks them with the
tissues; for reading logs they are walked alone.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from ..numbers import FLOATS, Column, Elementwise, Number, compiled, inlined
from ..register import TRANSIT_2011, Basis, Kind, equation
from .constants import (
    BASELINE_CARBOHYDRATE_SHARE,
    GLYCOGEN_ENERGY,
    GLYCOGEN_KG,
    GLYCOGEN_WATER,
    GUT_CONTENT_KG,
    GUT_DAYS,
    HALL,
    SALT_RECOVERY,
    SALT_RECOVERY_DAYS,
    SALT_WATER_KG,
    SALT_WATER_SCALE,
    SALT_WATER_SURPLUS,
    SODIUM_BY_CARBOHYDRATE,
    SODIUM_EXCRETION,
    SODIUM_PER_LITRE,
    TRAINING_WATER_KG,
)
from .state import BodyModel, Diet

_LEAST_CARBOHYDRATE = 1.0  # kcal/d: keeps a fast finite


class CarriedRest(NamedTuple):
    """Where a diet takes the carried mass of a model [kg], and how fast glycogen follows [1/d]."""

    glycogen: Number
    water: Number  # before anything of it is taken back
    gut: Number
    recovered: Number
    glycogen_rate: Number


@equation(
    "carried_mass_model",
    summary="Glycogen with its water, extracellular water and gut content after a change of diet",
    formula=(
        f"glycogen tends to {GLYCOGEN_KG:g} kg x sqrt(carbohydrate / usual carbohydrate); extracellular water to "
        f"(sodium change - {SODIUM_BY_CARBOHYDRATE:g} mg x (1 - carbohydrate / usual)) / {SODIUM_EXCRETION:g} mg/L + "
        f"salt water, which is -{SALT_WATER_KG:g} kg x (1 - exp(-x / {SALT_WATER_SCALE:g})) for a cut of intake by the "
        f"share x of maintenance, {SALT_WATER_SURPLUS:g} of it the other way for a rise; of what a cut takes "
        f"{SALT_RECOVERY:g} comes back within {SALT_RECOVERY_DAYS:g} d (time constant) while the cut lasts; gut "
        f"content to {GUT_CONTENT_KG:g} kg x (intake / maintenance - 1) within {GUT_DAYS:g} d; new training adds "
        f"{TRAINING_WATER_KG:g} kg of water"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(*HALL, TRANSIT_2011),
    valid_range="adults; glycogen, its water and the balance of sodium are published; salt water, what of it comes "
    "back, gut content and how much sodium follows carbohydrate are ours",
)
@inlined
def carried_rest(model: BodyModel, diet: Diet, ops: Elementwise) -> CarriedRest:
    carbohydrate = ops.maximum(diet.carbohydrate_kcal, _LEAST_CARBOHYDRATE)
    relative = carbohydrate / model.baseline_carbohydrate_kcal
    # At rest carbohydrate = k_G glycogen squared, hence the root.
    glycogen = GLYCOGEN_KG * ops.sqrt(relative)
    excess = (diet.intake_kcal - model.maintenance_kcal) / model.maintenance_kcal
    salt = model.salt_water_kg * salt_answer(excess, ops)
    return CarriedRest(
        glycogen,
        # Extracellular water where sodium eaten = sodium excreted, less of which is kept with less carbohydrate, and
        # salt water that follows energy.
        (diet.sodium_change_mg - model.sodium_by_carbohydrate_mg * (1.0 - relative)) / SODIUM_EXCRETION
        + salt
        + model.training_water_kg,
        # Gut content in proportion to intake; what is taken back, of a cut alone.
        model.gut_kg * excess,
        model.salt_recovery * ops.minimum(salt, 0.0),
        # k_G G_rest / rho_G with k_G = usual carbohydrate / baseline glycogen squared: rate of ``carried_after``.
        carbohydrate / (glycogen * GLYCOGEN_ENERGY),
    )


@inlined
def salt_answer(excess: Number, ops: Elementwise) -> Number:
    """Salt water that an intake of ``excess`` over maintenance (a fraction) moves at most, as a share of its bound."""
    gone = 1.0 - ops.exp(-ops.maximum(excess, -excess) / SALT_WATER_SCALE)
    return ops.where(excess > 0.0, SALT_WATER_SURPLUS * gone, -gone)


@inlined
def carried_after(
    glycogen: Number, water: Number, gut: Number, recovered: Number,
    glycogen_rest: Number, water_rest: Number, gut_rest: Number, recovered_rest: Number,
    grown: Number, water_left: Number, gut_left: Number, recovered_left: Number, ops: Elementwise,
) -> tuple[Number, Number, Number, Number]:  # fmt: skip
    """Glycogen, extracellular water, gut content and water taken back [kg] after a step in which their rests hold.

    ``grown`` = tanh(step x rate of glycogen); ``*_left`` is the share of a deviation from rest left after the step.
    """
    # What was taken back goes with what comes back, so that no more returns after a deficit than had left.
    left = ops.where(recovered_rest > recovered, water_left, recovered_left)
    taken_back = recovered_rest + (recovered - recovered_rest) * left
    return (
        # Closed form of rho dG/dt = CI - k G^2 from either side of the resting value.
        glycogen_rest * (glycogen + glycogen_rest * grown) / (glycogen_rest + glycogen * grown),
        water_rest + (water + recovered - water_rest) * water_left - taken_back,
        gut_rest + (gut - gut_rest) * gut_left,
        taken_back,
    )


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
