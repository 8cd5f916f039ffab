"""The dynamic energy-balance model: fat, lean tissue, glycogen, water, gut content, adaptation.

Structure after Hall et al. 2011 (ids ``hall_2011``, ``hall_2010``) with three additions for people who lift,
each registered in ``body_constants``: a training-and-protein factor on the lean share, a saturating lean share in a
surplus, and a training-driven lean term that exists in any energy state.

The fast states (glycogen, water, gut, adaptation) have closed forms while the diet is constant, so a step may
be a day or some weeks long; the slow tissues take one midpoint (Runge-Kutta 2) step. Energy is conserved
exactly in every step: stored energy = intake - expenditure.

Everything is elementwise: floats, or numpy arrays with people along the first axis.
"""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number, compiled, inlined
from ..register import (
    ALPERT_2005,
    BENITO_2020,
    BOUCHARD_1990,
    FORBES_1987,
    HALL_2007,
    METTLER_2010,
    MORTON_2018,
    MURPHY_2022,
    TRANSIT_2011,
    WEINHEIMER_2010,
    WYCHERLEY_2012,
    Basis,
    Kind,
    equation,
)
from .constants import (
    ADAPTATION_DAYS,
    ADAPTATION_SHARE,
    EXPERIENCE_HALVING_YEARS,
    FAT_ENERGY,
    FAT_SUPPLY_LIMIT,
    FAT_SYNTHESIS,
    FAT_UPKEEP,
    GLYCOGEN_ENERGY,
    GLYCOGEN_KG,
    GLYCOGEN_WATER,
    GUT_CONTENT_KG,
    GUT_DAYS,
    HALL,
    LEAN_CEILING_FLOOR,
    LEAN_ENERGY,
    LEAN_SYNTHESIS,
    LEAN_UPKEEP,
    PARTITION_KG,
    PROTEIN_ENOUGH_DEFICIT,
    PROTEIN_ENOUGH_GAIN,
    PROTEIN_GAIN_BOOST,
    PROTEIN_ORDINARY,
    PROTEIN_SPARING,
    SODIUM_BY_CARBOHYDRATE,
    SODIUM_EXCRETION,
    SODIUM_PER_LITRE,
    SURPLUS_LEAN_CEILING,
    SURPLUS_LEAN_FACTOR,
    THERMIC_SHARE,
    TRAINING_GAIN,
    TRAINING_SPARING,
    TRAINING_WATER_KG,
)
from .state import BodyModel, BodyState, Diet

_new_tuple = tuple.__new__


class _Rest(NamedTuple):
    """Where a diet takes the carried mass of a model [kg], and how fast glycogen follows [1/d]."""

    glycogen: Number
    water: Number
    gut: Number
    glycogen_rate: Number


class _Share(NamedTuple):
    """How tissues answer energy, constant over a stretch."""

    fat_slope: Number  # of expenditure on each tissue, activity included [kcal/kg/d]
    lean_slope: Number
    surplus_factor: Number  # on the lean share
    deficit_factor: Number
    fat_cost: Number  # of synthesis, of a kilocalorie stored as fat
    lean_extra_cost: Number  # the same of one stored as lean tissue, less that of fat
    growth_cost: Number  # what a kilogram of lean tissue costs more than the fat that its energy is taken from


class _Drive(NamedTuple):
    """What a diet does to the tissues of a model, constant over a stretch."""

    supply: Number  # intake less the constant and thermic parts of expenditure and the adaptation at rest [kcal/d]
    adaptation_rest: Number
    activity: Number
    growth: Number
    ceiling: Number
    experience_years: Number
    experience_per_day: Number  # years that training adds
    share: _Share


@inlined
def _responses(protein_g_per_kg: Number, ops: Elementwise) -> tuple[Number, Number]:
    """How much of what protein can do in a deficit, and in a gain, it does: 0 at the allowance .. 1."""
    # (protein - ordinary) / (enough - ordinary), within 0 .. 1
    above = protein_g_per_kg - PROTEIN_ORDINARY
    return (
        ops.minimum(ops.maximum(above / (PROTEIN_ENOUGH_DEFICIT - PROTEIN_ORDINARY), 0.0), 1.0),
        ops.minimum(ops.maximum(above / (PROTEIN_ENOUGH_GAIN - PROTEIN_ORDINARY), 0.0), 1.0),
    )


@equation(
    "lean_partition",
    summary="Share of the energy imbalance that goes to or comes from lean tissue",
    formula=(
        f"C / (C + fat mass) with C = {PARTITION_KG:.4f} kg; in a deficit times (1 - {TRAINING_SPARING:g} x "
        f"training dose) x (1 - protein sparing x protein response); in a surplus times "
        f"{SURPLUS_LEAN_FACTOR:g} and saturating at a ceiling set by training experience"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(
        FORBES_1987,
        HALL_2007,
        WEINHEIMER_2010,
        WYCHERLEY_2012,
        METTLER_2010,
        BOUCHARD_1990,
    ),
    valid_range="adults; factors for training and protein are ours, calibrated on pooled trials",
)
@inlined
def deficit_factor(model: BodyModel, protein_g_per_kg: Number, ops: Elementwise = FLOATS) -> Number:
    """Factor on the Forbes lean share in a deficit: 1 without training at ordinary protein, about 0.18 best."""
    response = _responses(protein_g_per_kg, ops)[0]
    dose = model.training_dose
    protein_sparing = PROTEIN_SPARING + (model.protein_sparing_trained - PROTEIN_SPARING) * dose
    return (1.0 - model.training_sparing * dose) * (1.0 - protein_sparing * response) * model.partition_scale


@equation(
    "training_lean_term",
    summary="Lean tissue gained through training in any energy state, its energy taken from fat",
    formula=(
        f"{TRAINING_GAIN:.3g} kg per kg fat-free mass a day x training dose / (1 + years of experience) x "
        f"(1 + {PROTEIN_GAIN_BOOST:g} x protein response) / {1 + PROTEIN_GAIN_BOOST:g} x "
        f"exp(-deficit / ({FAT_SUPPLY_LIMIT:.1f} kcal/kg x fat mass))"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(BENITO_2020, MORTON_2018, MURPHY_2022, ALPERT_2005),
    valid_range="adults; the fade with the deficit is ours: pooled trials put the balance point near 500 kcal/d",
)
@inlined
def _growth(model: BodyModel, protein_g_per_kg: Number, ops: Elementwise) -> tuple[Number, Number]:
    """Training-driven lean gain and ceiling of surplus-driven lean of a beginner, without any deficit [kg/d]."""
    response = _responses(protein_g_per_kg, ops)[1]
    protein = (1.0 + PROTEIN_GAIN_BOOST * response) / (1.0 + PROTEIN_GAIN_BOOST)
    return (
        model.training_gain * model.fat_free_kg * model.training_dose * protein,
        SURPLUS_LEAN_CEILING * model.fat_free_kg,
    )


@equation(
    "carried_mass_model",
    summary="Glycogen with its water, extracellular water and gut content after a change of diet",
    formula=(
        "glycogen tends to 0.5 kg x sqrt(carbohydrate / usual carbohydrate); extracellular water to (sodium "
        f"change - {SODIUM_BY_CARBOHYDRATE:g} mg x (1 - carbohydrate / usual)) / {SODIUM_EXCRETION:g} mg/L; gut "
        f"content to {GUT_CONTENT_KG:g} kg x (intake / maintenance - 1) within {GUT_DAYS:g} d; new training adds "
        f"{TRAINING_WATER_KG:g} kg of water"
    ),
    kind=Kind.MODEL,
    sources=(*HALL, TRANSIT_2011),
    valid_range="adults; the gut term is ours",
)
@inlined
def _rest(model: BodyModel, diet: Diet, ops: Elementwise) -> _Rest:
    carbohydrate = ops.maximum(diet.carbohydrate_kcal, 1.0)
    relative = carbohydrate / model.baseline_carbohydrate_kcal
    # At rest carbohydrate = k_G glycogen squared, hence the root.
    glycogen = GLYCOGEN_KG * ops.sqrt(relative)
    return _Rest(
        glycogen,
        # Extracellular water where sodium eaten = sodium excreted, less of which is kept with less carbohydrate.
        (diet.sodium_change_mg - SODIUM_BY_CARBOHYDRATE * (1.0 - relative)) / SODIUM_EXCRETION
        + model.training_water_kg,
        # Gut content in proportion to intake.
        model.gut_kg * (diet.intake_kcal - model.maintenance_kcal) / model.maintenance_kcal,
        # k_G G_rest / rho_G with k_G = usual carbohydrate / baseline glycogen squared: rate of ``carried_after``.
        carbohydrate / (glycogen * GLYCOGEN_ENERGY),
    )


@inlined
def _drive(model: BodyModel, diet: Diet, ops: Elementwise) -> _Drive:
    intake, _, protein, _, activity_change, thermic_shift = diet
    change = intake - model.maintenance_kcal
    adaptation_rest = model.adaptation_share * change
    growth, ceiling = _growth(model, protein, ops)
    activity = model.activity_kcal_per_kg + activity_change
    fat_cost = FAT_SYNTHESIS / FAT_ENERGY
    return _Drive(
        # Expenditure = offset + thermic share x change + adaptation + (upkeep + activity) x tissue + synthesis.
        intake - model.offset_kcal - (THERMIC_SHARE * change + thermic_shift) - adaptation_rest,
        adaptation_rest,
        activity,
        growth,
        ceiling,
        model.experience_years,
        model.training_dose / 365.25,
        _Share(
            FAT_UPKEEP + activity,
            LEAN_UPKEEP + activity,
            model.surplus_lean_factor * model.partition_scale,
            deficit_factor(model, protein, ops),
            fat_cost,
            LEAN_SYNTHESIS / LEAN_ENERGY - fat_cost,
            LEAN_SYNTHESIS - fat_cost * LEAN_ENERGY,
        ),
    )


def settle(model: BodyModel, state: BodyState, diet: Diet, ops: Elementwise = FLOATS) -> BodyState:
    """``state`` with its fast parts (glycogen, water, gut, adaptation) at rest on ``diet``; tissues unchanged."""
    rest = _rest(model, diet, ops)
    return state._replace(
        glycogen_kg=rest.glycogen,
        water_kg=rest.water,
        gut_kg=rest.gut,
        adaptation_kcal=model.adaptation_share * (diet.intake_kcal - model.maintenance_kcal),
    )


@inlined
def _tissue_rates(
    share_of: _Share,
    growth: Number,
    ceiling_kcal: Number,
    outside: Number,
    fat: Number,
    lean: Number,
    ops: Elementwise,
) -> tuple[Number, Number, Number]:
    """Rates of fat and lean tissue [kg/d] and energy stored in tissue [kcal/d].

    ``growth`` is the training-driven gain [kg/d] and ``ceiling_kcal`` the most energy a surplus puts into lean
    [kcal/d], both at the experience of the day. ``outside`` = intake - energy into glycogen - every part of
    expenditure that the tissues have no part in: constant, thermic, adaptive, and activity's for carried mass.
    """
    fat_slope, lean_slope, surplus_factor, deficit_factor, fat_cost, lean_extra_cost, growth_cost = share_of
    # What is left for tissue before the cost of making it: intake - expenditure.
    gap = outside - fat_slope * fat - lean_slope * lean
    # Forbes: of each kilocalorie C / (C + fat) is lean; in a surplus times a factor and under a ceiling:
    # share x surplus tends to ceiling_kcal as the surplus grows.
    base = PARTITION_KG / (PARTITION_KG + fat)
    surplus = ops.maximum(gap, 0.0)
    wanted = base * surplus_factor
    share = ops.where(gap > 0.0, wanted / (1.0 + wanted * surplus / ceiling_kcal), base * deficit_factor)
    # What training adds fades with the deficit (gap - surplus, under 0) over what fat can supply.
    growth = growth * ops.exp((gap - surplus) / (FAT_SUPPLY_LIMIT * fat))
    # stored + cost of making it = gap, solved for stored: a kilocalorie stored as fat costs fat_cost to make, as lean
    # tissue lean_extra_cost more, and a kilogram that training adds, its energy taken from fat, growth_cost.
    stored = (gap - growth * growth_cost) / (1.0 + (fat_cost + share * lean_extra_cost))
    # stored = fat energy x d(fat)/dt + lean energy x d(lean)/dt, of which `share` is lean, and growth on top.
    lean_rate = share * stored / LEAN_ENERGY + growth
    return (stored - LEAN_ENERGY * lean_rate) / FAT_ENERGY, lean_rate, stored


@inlined
def _experienced(drive: _Drive, day: Number, ops: Elementwise) -> tuple[Number, Number]:
    """Training-driven gain [kg/d] and ceiling of surplus energy into lean [kcal/d], at the experience of a day.

    Both follow the share of a beginner's rate that is left; experience grows only while training goes on.
    """
    _, _, _, growth, ceiling, years, years_per_day, _ = drive
    freshness = EXPERIENCE_HALVING_YEARS / (EXPERIENCE_HALVING_YEARS + years + years_per_day * day)
    return growth * freshness, LEAN_ENERGY * ceiling * ops.maximum(freshness, LEAN_CEILING_FLOOR)


# Below this the model means nothing (no one lives there); it only keeps absurd inputs finite.
_LEAST_FAT_KG = 0.25


def _left(days: float) -> tuple[float, float, float, float]:
    """Shares of a deviation of water, gut content and adaptation from rest that are left after ``days``.

    The last is the mean over those days of an adaptation that starts 1 off its rest.
    """
    return _left_of(days, SODIUM_EXCRETION / SODIUM_PER_LITRE, GUT_DAYS, ADAPTATION_DAYS)


@lru_cache(maxsize=64)  # steps have few lengths
def _left_of(
    days: float, water_rate: float, gut_days: float, adaptation_days: float
) -> tuple[float, float, float, float]:
    """What ``_left`` returns. It is kept by the constants too, so that a test may set one without stale results."""
    # d(deviation)/dt = -rate x deviation, so that exp(-rate t) of it is left. The mean of exp(-t / T) over 0..days is
    # (1 - exp(-days / T)) T / days.
    adaptation = math.exp(-days / adaptation_days)
    return (
        math.exp(-water_rate * days),
        math.exp(-days / gut_days),
        adaptation,
        (1.0 - adaptation) * adaptation_days / days,
    )


@inlined
def carried_after(
    glycogen: Number, water: Number, gut: Number, glycogen_rest: Number, water_rest: Number, gut_rest: Number,
    grown: Number, water_left: Number, gut_left: Number,
) -> tuple[Number, Number, Number]:  # fmt: skip
    """Glycogen, extracellular water and gut content [kg] after a step in which their resting values hold.

    ``grown`` = tanh(step x rate of glycogen); ``*_left`` is the share of a deviation from rest left after the step.
    """
    return (
        # Closed form of rho dG/dt = CI - k G^2 from either side of the resting value.
        glycogen_rest * (glycogen + glycogen_rest * grown) / (glycogen_rest + glycogen * grown),
        water_rest + (water - water_rest) * water_left,
        gut_rest + (gut - gut_rest) * gut_left,
    )


@inlined
def _step(
    drive: _Drive,
    days: float,
    adaptation_left: float,
    adaptation_mean: float,
    state: BodyState,
    carried_mass: tuple[Number, Number, Number],
    ops: Elementwise,
) -> BodyState:
    """The body after a step, at whose end glycogen, water and gut content are known (``carried_mass``)."""
    fat, lean, glycogen_before, water_before, gut_before, adaptation, day = state
    glycogen, water, gut = carried_mass
    supply, rest, activity, _, _, _, _, share_of = drive
    away = adaptation - rest
    # Mean mass of what is carried, for the energy of moving it: by the trapezoid over the step.
    carried = 0.5 * (
        (1.0 + GLYCOGEN_WATER) * (glycogen + glycogen_before) + (water + water_before) + (gut + gut_before)
    )
    # Intake less what tissues have no part in: energy into glycogen, adaptation's mean, activity for carried mass.
    outside = (
        supply - GLYCOGEN_ENERGY * (glycogen - glycogen_before) / days - away * adaptation_mean - activity * carried
    )
    # Midpoint rule (Runge-Kutta 2): the rates half a step on are those of the whole step.
    half = 0.5 * days
    growth, ceiling = _experienced(drive, day + half, ops)
    fat_rate, lean_rate, _ = _tissue_rates(share_of, growth, ceiling, outside, fat, lean, ops)
    middle = ops.maximum(fat + half * fat_rate, _LEAST_FAT_KG)
    fat_rate, lean_rate, _ = _tissue_rates(share_of, growth, ceiling, outside, middle, lean + half * lean_rate, ops)
    fat = ops.maximum(fat + days * fat_rate, _LEAST_FAT_KG)
    # Adaptation tends to its rest in closed form: rest + (adaptation - rest) exp(-days / T).
    # As ``BodyState(...)``, in half the time: steps are what a forecast is made of.
    return _new_tuple(
        BodyState, (fat, lean + days * lean_rate, glycogen, water, gut, rest + away * adaptation_left, day + days)
    )


@equation(
    "energy_balance_model",
    summary="Dynamic energy balance: daily change of fat, lean tissue and adaptation with intake",
    formula=(
        "stored energy = intake - expenditure; expenditure = constant "
        f"+ {FAT_UPKEEP:.3f} x fat mass + {LEAN_UPKEEP:.2f} x lean tissue + activity x body mass "
        f"+ {THERMIC_SHARE:g} x change of intake + adaptation (to {ADAPTATION_SHARE:g} x change of intake within "
        f"{ADAPTATION_DAYS:g} d) + {FAT_SYNTHESIS:.0f} x fat gain + {LEAN_SYNTHESIS:.0f} x lean gain"
    ),
    kind=Kind.MODEL,
    sources=HALL,
    valid_range="adults at population-mean physiology; spread between people enters as uncertainty",
)
def advance(
    model: BodyModel, state: BodyState, diet: Diet, days: float, *, step_days: float = 7.0,
    ops: Elementwise = FLOATS,
) -> BodyState:  # fmt: skip
    """The body after ``days`` on ``diet``, in equal steps of at most ``step_days``.

    A step of 7 days keeps weight within 3 g of the exact solution over half a year (tested against scipy).
    """
    steps = max(1, -int(-days // step_days))
    return walk(model, state, diet, (days / steps,) * steps, ops=ops)[-1]


@compiled
def walk(
    model: BodyModel,
    state: BodyState,
    diet: Diet,
    lengths: tuple[float, ...],
    *,
    carried_of: Sequence[BodyState] | None = None,
    ops: Elementwise = FLOATS,
) -> list[BodyState]:
    """The body after each of the consecutive steps ``lengths`` [d] on one diet.

    ``carried_of`` holds the states, after each of those steps, of a body whose carried mass goes the same way: one with
    the same maintenance and usual diet, on this diet. Its glycogen, water and gut content are then taken as they are.
    """
    # For each step: what depends on its length alone; carried mass after it, in closed form; then the tissues.
    drive = _drive(model, diet, ops)
    path = []
    days = 0.0
    if carried_of is None:
        rest_glycogen, rest_water, rest_gut, rate = _rest(model, diet, ops)
    for i, length in enumerate(lengths):
        if length != days:
            days = length
            water_left, gut_left, adaptation_left, adaptation_mean = _left(days)
            if carried_of is None:
                grown = ops.tanh(rate * days)
        if carried_of is None:
            _, _, glycogen, water, gut, _, _ = state
            carried = carried_after(
                glycogen, water, gut, rest_glycogen, rest_water, rest_gut, grown, water_left, gut_left
            )
        else:
            _, _, glycogen, water, gut, _, _ = carried_of[i]
            carried = glycogen, water, gut
        state = _step(drive, days, adaptation_left, adaptation_mean, state, carried, ops)
        path.append(state)
    return path


def expenditure_kcal(model: BodyModel, state: BodyState, diet: Diet, ops: Elementwise = FLOATS) -> Number:
    """Momentary expenditure [kcal/d] on ``diet``, synthesis of tissue included, glycogen taken as settled."""
    drive = _drive(model, diet, ops)
    carried = state.weight_kg - state.fat_kg - state.lean_kg
    outside = drive.supply + drive.adaptation_rest - state.adaptation_kcal - drive.activity * carried
    growth, ceiling = _experienced(drive, state.day, ops)
    stored = _tissue_rates(drive.share, growth, ceiling, outside, state.fat_kg, state.lean_kg, ops)[2]
    return diet.intake_kcal - stored
