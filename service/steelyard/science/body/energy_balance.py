"""The dynamic energy-balance model: fat, lean tissue, glycogen, water, gut content, adaptation.

Structure after Hall et al. 2011 (ids ``hall_2011``, ``hall_2010``) with three additions for people who lift,
each registered in ``constants``: a training-and-protein factor on the lean share, a saturating lean share in a
surplus, and a training-driven lean term that exists in any energy state.

The fast states (glycogen, water, gut, adaptation) have closed forms while the diet is constant, so a step may
be a day or some weeks long; the slow tissues take one midpoint (Runge-Kutta 2) step. Energy is conserved
exactly in every step: stored energy = intake - expenditure.

Everything is elementwise: floats, or numpy arrays with people along the first axis.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number, compiled, inlined, new_tuple
from ..register import (
    Kind,
    equation,
)
from .carried_mass import carried_after, carried_rest
from .constants import (
    ADAPTATION_DAYS,
    ADAPTATION_SHARE,
    EXPERIENCE_HALVING_YEARS,
    FAT_ENERGY,
    FAT_SUPPLY_LIMIT,
    FAT_SYNTHESIS,
    FAT_UPKEEP,
    GLYCOGEN_ENERGY,
    GLYCOGEN_WATER,
    GROWTH_KEPT_BY_PROTEIN,
    GUT_DAYS,
    HALL,
    LEAN_CEILING_FLOOR,
    LEAN_ENERGY,
    LEAN_SYNTHESIS,
    LEAN_UPKEEP,
    LEVEL_SHARE,
    PARTITION_KG,
    SALT_RECOVERY_DAYS,
    SODIUM_EXCRETION,
    SODIUM_PER_LITRE,
    SURPLUS_ACTIVITY_SHARE,
    THERMIC_SHARE,
)
from .lean_partition import (
    deficit_factor,
    protein_responses,
    saturated,
    surplus_factor,
    training_growth,
)
from .state import BodyModel, BodyState, Diet


class _Share(NamedTuple):
    """How tissues answer energy, constant over a stretch."""

    fat_slope: Number  # of expenditure on each tissue, activity included [kcal/kg/d]
    lean_slope: Number
    surplus_factor: Number  # on the lean share
    level: Number  # how far the lean share of a surplus is the same for every body
    deficit_factor: Number
    rate_effect: Number
    fat_cost: Number  # of synthesis, of a kilocalorie stored as fat
    lean_extra_cost: Number  # the same of one stored as lean tissue, less that of fat
    fade: Number  # how fast training-driven gain goes with the deficit
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
def adaptation_rest(model: BodyModel, change_kcal: Number, ops: Elementwise) -> Number:
    """Adaptive change of expenditure, spontaneous activity included, that a change of intake leads to [kcal/d]."""
    return model.adaptation_share * change_kcal + model.surplus_activity_share * ops.maximum(change_kcal, 0.0)


@inlined
def _drive(model: BodyModel, diet: Diet, ops: Elementwise) -> _Drive:
    intake, _, protein, _, activity_change, thermic_shift = diet
    change = intake - model.maintenance_kcal
    adapted = adaptation_rest(model, change, ops)
    growth, ceiling = training_growth(model, protein, ops)
    activity = model.activity_kcal_per_kg + activity_change
    fat_cost = FAT_SYNTHESIS / FAT_ENERGY
    return _Drive(
        # Expenditure = offset + thermic share x change + adaptation + (upkeep + activity) x tissue + synthesis.
        intake - model.offset_kcal - (THERMIC_SHARE * change + thermic_shift) - adapted,
        adapted,
        activity,
        growth,
        ceiling,
        model.experience_years,
        model.training_dose / 365.25,
        _Share(
            FAT_UPKEEP + activity,
            LEAN_UPKEEP + activity,
            surplus_factor(model, protein, ops),
            model.level_partition,
            deficit_factor(model, protein, ops),
            model.deficit_rate_effect,
            fat_cost,
            LEAN_SYNTHESIS / LEAN_ENERGY - fat_cost,
            1.0 - GROWTH_KEPT_BY_PROTEIN * protein_responses(protein, ops)[0],
            LEAN_SYNTHESIS - fat_cost * LEAN_ENERGY,
        ),
    )


@compiled
def settle(model: BodyModel, state: BodyState, diet: Diet, *, ops: Elementwise = FLOATS) -> BodyState:
    """``state`` with its fast parts (glycogen, water, gut, adaptation) at rest on ``diet``; tissues unchanged."""
    fat, lean, _, _, _, _, day, _ = state
    glycogen, water, gut, recovered, _ = carried_rest(model, diet, ops)
    adaptation = adaptation_rest(model, diet.intake_kcal - model.maintenance_kcal, ops)
    return new_tuple(BodyState, (fat, lean, glycogen, water - recovered, gut, adaptation, day, recovered))


@inlined
def _tissue_rates(
    share_of: _Share,
    growth: Number,
    ceiling_kcal: Number,
    outside: Number,
    fat: Number,
    lean: Number,
    ops: Elementwise,
) -> tuple[Number, Number]:
    """Rates of fat and lean tissue [kg/d].

    ``growth`` is the training-driven gain [kg/d] and ``ceiling_kcal`` the most energy a surplus puts into lean
    [kcal/d], both at the experience of the day. ``outside`` = intake - energy into glycogen - every part of
    expenditure that the tissues have no part in: constant, thermic, adaptive, and activity's for carried mass.
    """
    fat_slope, lean_slope, surplus, level, deficit, rate_effect, fat_cost, lean_extra_cost, fade, growth_cost = share_of
    # What is left for tissue before the cost of making it: intake - expenditure.
    gap = outside - fat_slope * fat - lean_slope * lean
    over = ops.maximum(gap, 0.0)
    supply = (over - gap) / (FAT_SUPPLY_LIMIT * fat)
    # Forbes: of each kilocalorie C / (C + fat) is lean. ``surplus_share``, ``saturated`` and ``deficit_share`` written
    # out, which spares dividing twice.
    base = PARTITION_KG / (PARTITION_KG + fat)
    share = ops.where(
        gap > 0.0,
        saturated((base + level * (LEVEL_SHARE - base)) * surplus, over, ceiling_kcal, ops),
        base * deficit * (1.0 + rate_effect * (supply / (1.0 + supply) - 0.5)),
    )
    # What training adds fades with the deficit over what fat can supply.
    growth = growth * ops.exp(-fade * supply)
    # stored + cost of making it = gap, solved for stored: a kilocalorie stored as fat costs fat_cost to make, as lean
    # tissue lean_extra_cost more, and a kilogram that training adds, its energy taken from fat, growth_cost.
    stored = (gap - growth * growth_cost) / (1.0 + (fat_cost + share * lean_extra_cost))
    # stored = fat energy x d(fat)/dt + lean energy x d(lean)/dt, of which `share` is lean, and growth on top.
    lean_rate = share * stored / LEAN_ENERGY + growth
    return (stored - LEAN_ENERGY * lean_rate) / FAT_ENERGY, lean_rate


@inlined
def _experienced(drive: _Drive, day: Number, ops: Elementwise) -> tuple[Number, Number]:
    """Training-driven gain [kg/d] and ceiling of surplus energy into lean [kcal/d], at the experience of a day.

    Both follow the share of a beginner's rate that is left; experience grows only while training goes on.
    """
    _, _, _, growth, ceiling, years, years_per_day, _ = drive
    freshness = EXPERIENCE_HALVING_YEARS / (EXPERIENCE_HALVING_YEARS + years + years_per_day * day)
    return growth * freshness, LEAN_ENERGY * ceiling * ops.maximum(freshness, LEAN_CEILING_FLOOR)


# Below this the model means nothing (no one lives there); it only keeps absurd inputs finite.
LEAST_FAT_KG = 0.25


@inlined
def _left(days: float) -> tuple[float, float, float, float, float]:
    """Shares of a deviation of water, gut content, what is taken back and adaptation left after ``days``.

    The last is the mean over those days of an adaptation that starts 1 off its rest.
    """
    # d(deviation)/dt = -rate x deviation, so that exp(-rate t) of it is left. The mean of exp(-t / T) over 0..days is
    # (1 - exp(-days / T)) T / days.
    adaptation = math.exp(-days / ADAPTATION_DAYS)
    return (
        math.exp(-(SODIUM_EXCRETION / SODIUM_PER_LITRE) * days),
        math.exp(-days / GUT_DAYS),
        math.exp(-days / SALT_RECOVERY_DAYS),
        adaptation,
        (1.0 - adaptation) * ADAPTATION_DAYS / days,
    )


@inlined
def _step(
    drive: _Drive, days: float, adaptation_left: float, adaptation_mean: float,
    fat: Number, lean: Number, adaptation: Number, day: Number,
    glycogen_before: Number, water_before: Number, gut_before: Number, glycogen: Number, water: Number, gut: Number,
    ops: Elementwise,
) -> tuple[Number, Number, Number]:  # fmt: skip
    """Fat, lean tissue [kg] and adaptation [kcal/d] after a step from ``day``, with carried mass before and after."""
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
    fat_rate, lean_rate = _tissue_rates(share_of, growth, ceiling, outside, fat, lean, ops)
    middle = ops.maximum(fat + half * fat_rate, LEAST_FAT_KG)
    fat_rate, lean_rate = _tissue_rates(share_of, growth, ceiling, outside, middle, lean + half * lean_rate, ops)
    return (
        ops.maximum(fat + days * fat_rate, LEAST_FAT_KG),
        lean + days * lean_rate,
        # Adaptation tends to its rest in closed form: rest + (adaptation - rest) exp(-days / T).
        rest + away * adaptation_left,
    )


@equation(
    "energy_balance_model",
    summary="Dynamic energy balance: daily change of fat, lean tissue and adaptation with intake",
    formula=(
        "stored energy = intake - expenditure; expenditure = constant "
        f"+ {FAT_UPKEEP:.3f} x fat mass + {LEAN_UPKEEP:.2f} x lean tissue + activity x body mass "
        f"+ {THERMIC_SHARE:g} x change of intake + adaptation (to {ADAPTATION_SHARE:g} x change of intake, in a "
        f"surplus {SURPLUS_ACTIVITY_SHARE:g} more, within {ADAPTATION_DAYS:g} d) + {FAT_SYNTHESIS:.0f} x fat gain + "
        f"{LEAN_SYNTHESIS:.0f} x lean gain"
    ),
    kind=Kind.MODEL,
    sources=HALL,
    valid_range="adults at population-mean physiology; spread between people enters as uncertainty; what a surplus "
    "adds to adaptation is ours",
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
    fat, lean, glycogen, water, gut, adaptation, day, recovered = state
    if carried_of is None:
        rest_glycogen, rest_water, rest_gut, rest_recovered, rate = carried_rest(model, diet, ops)
    for i, length in enumerate(lengths):
        if length != days:
            days = length
            water_left, gut_left, recovered_left, adaptation_left, adaptation_mean = _left(days)
            if carried_of is None:
                grown = ops.tanh(rate * days)
        glycogen_before, water_before, gut_before = glycogen, water, gut
        if carried_of is None:
            glycogen, water, gut, recovered = carried_after(
                glycogen, water, gut, recovered, rest_glycogen, rest_water, rest_gut, rest_recovered,
                grown, water_left, gut_left, recovered_left, ops,
            )  # fmt: skip
        else:
            _, _, glycogen, water, gut, _, _, recovered = carried_of[i]
        fat, lean, adaptation = _step(
            drive, days, adaptation_left, adaptation_mean, fat, lean, adaptation, day,
            glycogen_before, water_before, gut_before, glycogen, water, gut, ops,
        )  # fmt: skip
        day = day + days
        path.append(new_tuple(BodyState, (fat, lean, glycogen, water, gut, adaptation, day, recovered)))
    return path
