"""The guard rails of a season's phases, elementwise: the most deficit and the most surplus of a body as it is.

The limits are those of ``rails``; a test compares the two on single people.
"""

import math
from typing import NamedTuple

from .. import rails
from ..body import (
    ADAPTATION_DAYS,
    EXPERIENCE_HALVING_YEARS,
    FAT_ENERGY,
    FAT_SUPPLY_LIMIT,
    FAT_UPKEEP,
    GLYCOGEN_ENERGY,
    GLYCOGEN_KG,
    LEAN_ENERGY,
    LEAN_UPKEEP,
    THERMIC_SHARE,
    BodyModel,
    BodyState,
    Diet,
    advance,
    ceiling_kcal,
    linearise,
    surplus_factor,
    surplus_share,
)
from ..numbers import FLOATS, Elementwise, Number
from ..person import Sex
from ..phase import LEAST_WEEKS, History
from ..rails import (
    LONG_PHASE_WEEKS,
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    DeficitFloors,
    HeldFloors,
    Subject,
    least_intake_kcal,
    stricter,
)
from ..register import Basis, Kind, equation

# A cut takes two weeks at least; water and tissue take less than this share of body mass in them (judgement).
_BMI_MARGIN = 1.05
LEAST_CUT_DAYS = 7.0 * LEAST_WEEKS
# What a kilocalorie of adaptation that is still to come takes off maintenance before the last of those weeks.
_ADAPTED = (1.0 - math.exp((7.0 - LEAST_CUT_DAYS) / ADAPTATION_DAYS)) / (1.0 - THERMIC_SHARE)
# Carried mass that may come in a cut all the same: of new training, and of more food than before (judgement, by some
# who train 25 to 28 h a week).
_WATER_KG, _WATER_BACK_KG = 0.2, 0.5
# Carried mass and lean tissue that may come in a week of it (judgement).
WEEK_KG = 0.1
# Tissue lost for the energy of a kilogram of fat, at most (judgement).
TISSUE_FOR_FAT = 1.5


class PersonLimits(NamedTuple):
    """What the rails read of a person at the start of a season."""

    sex: Sex
    height_cm: float
    fat_floor: float
    resting_kcal: float
    start_fat_kg: float
    start_lean_kg: float
    exercise_kcal: float
    short: DeficitFloors  # of a cut, and of one that counts as long
    long: DeficitFloors
    held: HeldFloors  # of a hold or a gain
    least_weight_kg: float  # where the body mass index would be at its floor, with the water known to be carried
    gain_limit: float  # of body mass a week
    growth_kg_per_day: float  # tissue that training adds at energy balance, at the start
    most_deficit_kcal: float  # where the history of cuts is unknown
    may_cut: bool
    cuts_last_year: int
    weeks_since_cut: int
    weeks_of_last_cut: float = 0.0  # that count as of one soon after it
    ratio: float = 1.0  # logged over eaten energy: its mean, and what the limits that protect are told by
    ratio_most: float = 1.0
    fade_first: float = 1.0  # body fat from which on energy availability fades to a warning, and where it has
    fade_last: float = 2.0
    fat_below: float = 0.0  # lower half of the interval of measured body fat, as a fraction


def person_limits(
    subject: Subject,
    model: BodyModel,
    state: BodyState,
    *,
    may_cut: bool,
    cuts_last_12_months: int | None,
    weeks_since_last_cut: int | None,
) -> PersonLimits:
    """The limits of one person. Unknown cut history keeps deficits to the default."""
    share = model.baseline_carbohydrate_kcal / model.maintenance_kcal
    level = Diet(model.maintenance_kcal, share * model.maintenance_kcal, PROTEIN_DEFAULT_GAIN)
    settled = state._replace(adaptation_kcal=0.0)
    grown = float(advance(model, settled, level, 1.0).tissue_kg - settled.tissue_kg)
    known = cuts_last_12_months is not None
    fade_first, fade_last = subject.availability_fade
    return PersonLimits(
        sex=subject.sex,
        height_cm=subject.height_cm,
        fat_floor=stricter(rails.FAT_FRACTION_FLOOR, subject.sex),
        resting_kcal=subject.resting_kcal,
        start_fat_kg=float(state.fat_kg),
        start_lean_kg=float(state.lean_kg),
        exercise_kcal=subject.exercise_kcal,
        short=rails.deficit_floors(subject, LONG_PHASE_WEEKS),
        long=rails.deficit_floors(subject, LONG_PHASE_WEEKS + 1),
        held=rails.held_floors(subject),
        least_weight_kg=rails.BMI_FLOOR * subject.height_squared
        + subject.rested_with(float(state.carried_kg)).water_kg,
        gain_limit=rails.GAIN_RATE_LIMIT[subject.training_status],
        growth_kg_per_day=max(0.0, grown),
        most_deficit_kcal=1e9 if known else rails.DEFAULT_DEFICIT,
        may_cut=may_cut,
        cuts_last_year=cuts_last_12_months or 0,
        weeks_since_cut=52 if weeks_since_last_cut is None else weeks_since_last_cut,
        weeks_of_last_cut=History(cuts_last_12_months, weeks_since_last_cut).deficit_before.weeks,
        ratio=subject.scale.ratio,
        ratio_most=subject.scale.most,
        fade_first=fade_first,
        fade_last=fade_last,
        fat_below=subject.fat_below,
    )


def least_start_weight_kg(limits: PersonLimits) -> float:
    """The least body mass at which a cut starts, so that its first weeks stay over the body-mass-index floor."""
    return _BMI_MARGIN * limits.least_weight_kg


def _resting_kcal(limits: PersonLimits, fat_kg: Number, lean_kg: Number, ops: Elementwise) -> Number:
    """Resting energy of the changed body [kcal/d]."""
    return rails.resting_now(limits.resting_kcal, fat_kg - limits.start_fat_kg, lean_kg - limits.start_lean_kg, ops)


def least_held_kcal(
    limits: PersonLimits,
    model: BodyModel,
    fat_kg: Number,
    lean_kg: Number,
    maintenance_kcal: Number,
    ops: Elementwise = FLOATS,
) -> Number:
    """The least told for a week of a hold or a gain that begins with this body [kcal/d], up to the next 10.

    What a week over maintenance or of training builds rests by its end as well.
    """
    least = limits.held.least_kcal(_resting_kcal(limits, fat_kg, lean_kg, ops), maintenance_kcal, ops=ops)
    over = ops.maximum(least - maintenance_kcal, 0.0)
    share = _surplus_share(model, fat_kg, ops)
    lean = limits.growth_kg_per_day + share * over / LEAN_ENERGY
    rests = LEAN_UPKEEP * lean + FAT_UPKEEP * (1.0 - share) * over / FAT_ENERGY
    return rails.up_to_step(least + 7.0 * rests)


def _surplus_share(model: BodyModel, fat_kg: Number, ops: Elementwise) -> Number:
    """Share of a small surplus that is stored as lean tissue."""
    return surplus_share(fat_kg, surplus_factor(model, PROTEIN_DEFAULT_GAIN, ops), model.level_partition)


def least_told_kcal(
    limits: PersonLimits, weight_kg: Number, seen_fat_kg: Number, lean_kg: Number, is_long: Number, ops: Elementwise
) -> Number:
    """The least intake told in a cut by its floors and by energy availability [kcal/d], for a body on a day."""
    share = ops.where(is_long, limits.long.resting_share, limits.short.resting_share)
    floor = ops.maximum(limits.short.anyhow_kcal, share * _resting_kcal(limits, seen_fat_kg, lean_kg, ops))
    # What is left of the limits where body fat is high, by the lower end of its reading.
    fraction = seen_fat_kg / weight_kg - limits.fat_below
    left = rails.availability_left(limits.fade_first, limits.fade_last, fraction, ops)
    fat_free = left * (weight_kg - seen_fat_kg)
    short = (rails.AVAILABILITY_LIMIT * fat_free + limits.exercise_kcal) * limits.ratio_most
    long = (rails.AVAILABILITY_WARN * fat_free + limits.exercise_kcal) * limits.ratio
    return ops.maximum(floor, ops.where(is_long, ops.maximum(short, long), short))


def most_deficit_kcal(
    limits: PersonLimits,
    model: BodyModel,
    state: BodyState,
    seen_fat_kg: Number,
    maintenance_kcal: Number,
    weeks: Number,
    ops: Elementwise = FLOATS,
    *,
    settled_kcal: Number = 0.0,
) -> Number:
    """The largest deficit that every rail allows at the start of a cut of up to ``weeks`` [kcal/d]; may be negative.

    ``settled_kcal`` is maintenance with nothing left of an earlier intake, where it is known, as before the first week.

    The rate of loss is held in the first days, when it is fastest: the phase's mean is then slower for any length. A
    body still adapted to eating less than it will is the exception: what its expenditure may rise again counts as well.
    """
    weight = state.weight_kg
    is_long = weeks > LONG_PHASE_WEEKS
    released = FAT_SUPPLY_LIMIT * limits.ratio
    supply = released * seen_fat_kg
    recovery = recovery_kcal(model, state, maintenance_kcal, settled_kcal, ops)
    most = ops.minimum(rails.DEFICIT_SHARE_LIMIT * (maintenance_kcal + recovery), supply) - recovery
    # In the last week of the shortest cut there is less fat to supply it, and adaptation has taken its part off.
    away = state.adaptation_kcal - model.adaptation_share * (maintenance_kcal - model.maintenance_kcal)
    less = 1.0 - _ADAPTED * model.adaptation_share + released * LEAST_CUT_DAYS / FAT_ENERGY
    most = ops.minimum(most, (supply + _ADAPTED * away) / less)
    # Water that comes, or back to whoever ate less before, is fat-free mass to availability.
    returned = ops.where(state.carried_kg < 0.0, _WATER_BACK_KG - state.carried_kg, _WATER_KG)
    floor = least_told_kcal(limits, weight + returned, seen_fat_kg, state.lean_kg, is_long, ops)
    most = ops.minimum(most, maintenance_kcal - ops.maximum(floor, least_intake_kcal(weight, ops)))

    def after(deficit: Number) -> Number:
        """What the body allows that the shortest cut of this deficit leaves."""
        lost = LEAST_CUT_DAYS / FAT_ENERGY * ops.maximum(deficit, 0.0)
        then = least_told_kcal(limits, weight + returned - lost, seen_fat_kg - lost, state.lean_kg, is_long, ops)
        return ops.minimum(most, maintenance_kcal - then)

    # The shortest cut is to end inside the rails as well. A larger deficit leaves less room: the crossing by Aitken's
    # extrapolation, once more from there since the fade has an end, and whatever that leaves open on the safe side.
    first = after(most)
    down, back = most - first, after(first) - first
    share = down / ops.maximum(down + back, 1e-9)
    met = first + back * share
    met = met - share * ops.maximum(met - after(met), 0.0)
    most = ops.minimum(met, after(met))
    loss = loss_limit_kcal(model, weight, seen_fat_kg, most + recovery, ops)
    most = ops.minimum(most, loss - recovery)
    return ops.minimum(most, limits.most_deficit_kcal - recovery)


def recovery_kcal(
    model: BodyModel, state: BodyState, maintenance_kcal: Number, settled_kcal: Number, ops: Elementwise = FLOATS
) -> Number:
    """What expenditure may rise again once a body has settled [kcal/d].

    A deficit is against settled maintenance: of a body adapted to eating less, part of it is there already.
    """
    recovery = ops.maximum(0.0, -state.adaptation_kcal)
    recovery = recovery + model.activity_kcal_per_kg * ops.maximum(0.0, -state.carried_kg)
    return ops.maximum(recovery, settled_kcal - maintenance_kcal)


def loss_limit_kcal(
    model: BodyModel, weight_kg: Number, seen_fat_kg: Number, deficit_kcal: Number, ops: Elementwise = FLOATS
) -> Number:
    """The deficit against settled maintenance that loses tissue at the limit [kcal/d], near ``deficit_kcal``."""
    gap = -ops.maximum(deficit_kcal, 0.0)
    linear = linearise(model, seen_fat_kg, PROTEIN_DEFAULT_DEFICIT, gap_kcal=gap, ops=ops)
    per_kg = linear.rho_kcal_per_kg * (1.0 - THERMIC_SHARE - model.adaptation_share) / (1.0 - THERMIC_SHARE)
    return rails.LOSS_LIMIT * weight_kg / 7.0 * per_kg


@equation(
    "surplus_for_gain_rate",
    summary="Surplus at which tissue is gained at a given rate",
    formula="root of surplus stored as fat and, saturating, as lean tissue (lean_partition) + training_lean_term = "
    "rate x body mass, synthesis left out: up to 3 % on the safe side",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
)
def surplus_for_gain_rate(
    limits: PersonLimits,
    model: BodyModel,
    state: BodyState,
    seen_fat_kg: Number,
    maintenance_kcal: Number,
    base_weight_kg: Number,
    rate: float,
    ops: Elementwise = FLOATS,
) -> Number:
    """The surplus [kcal/d] that gains ``rate`` of ``base_weight_kg`` a week as tissue, at least 0.

    With p = b / (1 + b g / K) the lean share of g kcal stored a day (``lean_partition``), the tissue gained is
    g (1 - p) / fat energy + g p / lean energy, which is a quadratic in g.
    """
    years = model.experience_years + model.training_dose * state.day / 365.25
    freshness = EXPERIENCE_HALVING_YEARS / (EXPERIENCE_HALVING_YEARS + years)
    at_start = EXPERIENCE_HALVING_YEARS / (EXPERIENCE_HALVING_YEARS + model.experience_years)
    wanted = ops.maximum(rate * base_weight_kg / 7.0 - limits.growth_kg_per_day * freshness / at_start, 0.0)
    share = _surplus_share(model, seen_fat_kg, ops)
    ceiling = ceiling_kcal(model, ops, state.day)
    a = share / (ceiling * FAT_ENERGY)
    b = 1.0 / FAT_ENERGY + share * (1.0 / LEAN_ENERGY - 1.0 / FAT_ENERGY) - wanted * share / ceiling
    stored = (ops.sqrt(b * b + 4.0 * a * wanted) - b) / (2.0 * a)
    # Adaptation left from a larger intake fades and would add to what is stored.
    resting_adaptation = model.adaptation_share * (maintenance_kcal - model.maintenance_kcal)
    fading = ops.maximum(state.adaptation_kcal - resting_adaptation, 0.0)
    return ops.maximum((stored - fading) / (1.0 - THERMIC_SHARE), 0.0)


def settling_kcal(model: BodyModel, state: BodyState, days: float, ops: Elementwise = FLOATS) -> Number:
    """Energy that a body leaving a larger intake has over for its tissues, mean of ``days`` [kcal/d].

    Glycogen over its usual amount is burnt, and what is carried no longer has to be moved about.
    """
    glycogen = GLYCOGEN_ENERGY * ops.maximum(state.glycogen_kg - GLYCOGEN_KG, 0.0) / days
    return glycogen + model.activity_kcal_per_kg * ops.maximum(state.carried_kg, 0.0)
