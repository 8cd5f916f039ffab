"""The guard rails of a season's phases, elementwise: the most deficit and the most surplus of a body as it is.

The limits are those of ``rail_table``; a test compares them with ``guard_rails`` on single people.
"""

from typing import NamedTuple

from .. import rails
from ..body import (
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
from ..rails import (
    LONG_PHASE_WEEKS,
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    Subject,
    least_intake_kcal,
    stricter,
)
from ..register import Basis, Kind, equation

# A cut takes two weeks at least; water and tissue take less than this share of body mass in them.
_BMI_MARGIN = 1.05


class PersonLimits(NamedTuple):
    """What the rails read of a person at the start of a season."""

    fat_floor: float
    intake_floor_kcal: float
    told_floor_kcal: float  # whatever a log says
    ratio: float  # logged over eaten, its mean
    most_ratio: float  # and the upper end of its interval
    fade: tuple[float, float]  # body fat from and to which limits on energy availability fade
    fat_below: float  # the lower half of the interval of measured body fat
    resting_kcal: float
    start_fat_kg: float
    start_lean_kg: float
    exercise_kcal: float
    least_weight_kg: float  # where the body mass index would be at its floor
    gain_limit: float  # of body mass a week
    growth_kg_per_day: float  # tissue that training adds at energy balance, at the start
    most_deficit_kcal: float  # where the history of cuts is unknown
    may_cut: bool
    cuts_last_year: int
    weeks_since_cut: int


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
    return PersonLimits(
        fat_floor=stricter(rails.FAT_FRACTION_FLOOR, subject.sex),
        intake_floor_kcal=stricter(rails.INTAKE_FLOOR, subject.sex),
        told_floor_kcal=rails.absolute_floor_kcal(subject),
        ratio=subject.scale.ratio,
        most_ratio=subject.scale.most,
        fade=subject.availability_fade,
        fat_below=subject.fat_below,
        resting_kcal=subject.resting_kcal,
        start_fat_kg=float(state.fat_kg),
        start_lean_kg=float(state.lean_kg),
        exercise_kcal=subject.exercise_kcal,
        least_weight_kg=rails.BMI_FLOOR * (subject.height_cm / 100.0) ** 2,
        gain_limit=rails.GAIN_RATE_LIMIT[subject.training_status],
        growth_kg_per_day=max(0.0, grown),
        most_deficit_kcal=1e9 if known else rails.DEFAULT_DEFICIT,
        may_cut=may_cut,
        cuts_last_year=cuts_last_12_months or 0,
        weeks_since_cut=52 if weeks_since_last_cut is None else weeks_since_last_cut,
    )


def least_start_weight_kg(limits: PersonLimits) -> float:
    """The least body mass at which a cut starts, so that its first weeks stay over the body-mass-index floor."""
    return _BMI_MARGIN * limits.least_weight_kg


def resting_now_kcal(limits: PersonLimits, fat_kg: Number, lean_kg: Number) -> Number:
    """Resting energy of the changed body: that of the start and the upkeep of what came or went [kcal/d]."""
    return (
        limits.resting_kcal
        + FAT_UPKEEP * (fat_kg - limits.start_fat_kg)
        + LEAN_UPKEEP * (lean_kg - limits.start_lean_kg)
    )


def _available_kcal(
    limits: PersonLimits, weight_kg: Number, fat_kg: Number, is_long: Number, ops: Elementwise
) -> Number:
    """The least intake told for energy availability [kcal/d]; nothing where measured body fat is high."""
    first, last = limits.fade
    left = (last - (fat_kg / weight_kg - limits.fat_below)) / (last - first)
    left = ops.minimum(1.0, ops.maximum(0.0, left))

    def told(limit: float, ratio: float) -> Number:
        return (left * limit * (weight_kg - fat_kg) + limits.exercise_kcal) * ratio

    short = told(rails.AVAILABILITY_LIMIT, limits.most_ratio)
    longer = ops.maximum(short, told(rails.AVAILABILITY_WARN, limits.ratio))
    return ops.where(left > 0.0, ops.where(is_long, longer, short), 0.0)


def most_deficit_kcal(
    limits: PersonLimits,
    model: BodyModel,
    state: BodyState,
    seen_fat_kg: Number,
    maintenance_kcal: Number,
    weeks: Number,
    ops: Elementwise = FLOATS,
) -> Number:
    """The largest deficit that every rail allows at the start of a cut of up to ``weeks`` [kcal/d]; may be negative.

    The rate of loss is held in the first days, when it is fastest: the phase's mean is then slower for any length. A
    body still adapted to eating less than it will is the exception: what its expenditure may rise again counts as well.
    """
    weight = state.weight_kg
    is_long = weeks > LONG_PHASE_WEEKS
    available = _available_kcal(limits, weight, seen_fat_kg, is_long, ops)
    resting = resting_now_kcal(limits, seen_fat_kg, state.lean_kg)
    floor = ops.where(is_long, ops.maximum(resting, limits.intake_floor_kcal), limits.intake_floor_kcal)
    floor = ops.maximum(floor * limits.most_ratio, limits.told_floor_kcal)
    most = ops.minimum(rails.DEFICIT_SHARE_LIMIT * maintenance_kcal, limits.ratio * FAT_SUPPLY_LIMIT * seen_fat_kg)
    most = ops.minimum(most, maintenance_kcal - available)
    most = ops.minimum(most, maintenance_kcal - ops.maximum(floor, least_intake_kcal(weight, ops)))
    linear = linearise(model, seen_fat_kg, PROTEIN_DEFAULT_DEFICIT, gap_kcal=-ops.maximum(most, 0.0), ops=ops)
    per_kg = linear.rho_kcal_per_kg * (1.0 - THERMIC_SHARE - model.adaptation_share) / (1.0 - THERMIC_SHARE)
    recovery = ops.maximum(0.0, -state.adaptation_kcal)
    most = ops.minimum(most, rails.LOSS_LIMIT * weight / 7.0 * per_kg - recovery)
    return ops.minimum(most, limits.most_deficit_kcal)


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
    share = surplus_share(seen_fat_kg, surplus_factor(model, PROTEIN_DEFAULT_GAIN, ops), model.level_partition)
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
