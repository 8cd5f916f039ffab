"""What makes a forecast uncertain, and a body as it is known at the start, or moved by one SD of one source."""

from enum import StrEnum
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Estimate, Number, compiled, new_tuple
from ..person import Training, TrainingStatus
from ..register import (
    CAMPBELL_2020,
    GARTHE_2013,
    HUOVINEN_2015,
    LEVINE_1999,
    LONGLAND_2016,
    SCHLOGL_2015,
    Basis,
    constant,
)
from .constants import ADAPTATION_SHARE, BASELINE_CARBOHYDRATE_SHARE, FULL_DOSE_SESSIONS, TRAINING_GAIN
from .energy_balance import settle
from .state import BodyModel, BodyState, Diet, calibrate, carried_mass, offset_kcal, otherwise


class UncertaintySource(StrEnum):
    """What makes a forecast uncertain."""

    MAINTENANCE = "maintenance"
    BODY_FAT = "body_fat"
    PARTITION = "partition"
    TRAINING_RESPONSE = "training_response"
    ADAPTATION = "adaptation"
    ADHERENCE = "adherence"
    CARRIED_MASS = "carried_mass"
    DAILY_NOISE = "daily_noise"


ALL_SOURCES = frozenset(UncertaintySource)

PARTITION_SPREAD = constant(
    "partition_spread",
    0.7,
    unit="1",
    summary="Between-person SD of the logarithm of the lean share (in-sample: set so that the share of participants of "
    "the validation page who lie inside the interval of fat-free mass is near 80 %: 73 % of 212 at 0.6)",
    basis=Basis.JUDGEMENT,
    sources=(CAMPBELL_2020,),
)
TRAINING_GAIN_SPREAD = constant(
    "training_gain_spread",
    0.5,
    unit="1",
    summary="Between-person SD of the training-driven lean gain, as a share of its mean",
    basis=Basis.JUDGEMENT,
)
SPARING_SPREAD = constant(
    "lean_sparing_spread",
    0.3,
    unit="1",
    summary="Between-person SD of what training takes off the factor on the lean share of a deficit, beside the spread "
    "of the share itself, which is near nothing where training and protein spare most. Whole arms of lifters miss the "
    "expected factor by 0.1 to 0.3 (Campbell 2020, Huovinen 2015; in-sample). From above: lean mass of novices changed "
    "with an SD of 1.0 kg in four weeks at 40 % less than their need (Longland 2016), some 0.7 kg of it beyond two "
    "readings by four compartments (their error from memory), which is 0.5, growth included",
    basis=Basis.JUDGEMENT,
    sources=(CAMPBELL_2020, HUOVINEN_2015, LONGLAND_2016),
)
ADAPTATION_SPREAD = constant(
    "adaptation_spread",
    0.10,
    unit="kcal/kcal",
    summary="Between-person SD of the adaptive share of a deficit, spontaneous activity included",
    basis=Basis.JUDGEMENT,
)
# The range of a normal sample of 16 spans 3.53 SD on average (Tippett 1925, the control-chart constant d2).
OVERFEEDING_SPREAD = constant(
    "adaptation_spread_overfeeding",
    round((692.0 + 98.0) / 1000.0 / 3.53, 2),
    unit="kcal/kcal",
    summary="Between-person SD of the adaptive share of a surplus: spontaneous activity moved by -98 to +692 kcal/d "
    "in 16 people overfed by 1000 kcal/d, and a normal sample of 16 spans 3.53 SD. Who saves much in a deficit burns "
    "little of a surplus (correlated in 37 people): taken as fully opposed, which errs to the wide side after a cut",
    basis=Basis.FROM_MEMORY,
    sources=(LEVINE_1999, SCHLOGL_2015),
)
ADHERENCE_SPREAD = constant(
    "adherence_spread",
    0.04,
    unit="1",
    summary="SD of mean eaten over planned intake through a phase, of somebody who eats the plan; also of people in "
    "general where it is no deficit: of a gain, whose +544 +- 143 kcal/d were 4 % of what was eaten (in-sample)",
    basis=Basis.JUDGEMENT,
    sources=(GARTHE_2013,),
)
_YEARS = {
    TrainingStatus.UNTRAINED: constant(
        "experience_untrained", 0.0, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
    TrainingStatus.NOVICE: constant(
        "experience_novice", 0.5, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
    TrainingStatus.INTERMEDIATE: constant(
        "experience_intermediate", 2.5, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
    TrainingStatus.ADVANCED: constant(
        "experience_advanced", 7.0, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
}
NEW_PROGRAMME_SHARE = constant(
    "new_programme_experience",
    0.5,
    unit="1",
    summary="Share of the years counted when a programme is new or clearly increased",
    basis=Basis.JUDGEMENT,
)


def experience_years(training: Training) -> float:
    """Years of training the lean terms count for this person."""
    years = _YEARS[training.status]
    return years * NEW_PROGRAMME_SHARE if training.is_new_programme else years


def training_dose(training: Training) -> float:
    """Share of the training effect that the weekly sessions earn, 0-1."""
    return min(1.0, training.resistance_sessions_per_week / FULL_DOSE_SESSIONS)


class Body(NamedTuple):
    """What is known of a body at the start. Estimates hold floats, or arrays for many people."""

    weight_kg: Number
    fat_kg: Estimate
    maintenance_kcal: Estimate
    resting_kcal: Number
    experience_years: Number = 0.0
    training_dose: Number = 0.0
    new_training: Number = 0.0  # 1 where training started or clearly increased within the last weeks
    carbohydrate_share: Number = BASELINE_CARBOHYDRATE_SHARE  # of the usual intake
    usual_intake_kcal: Number | None = None  # what was eaten until now; maintenance when None
    kept: Estimate | None = None  # share of deficits that is followed, where not all of it is counted on
    apart: Estimate | None = None  # by how much more of deficits is followed than by people in general, where known
    eaten_kcal: Number | None = None  # what a log shows to be eaten by now: so much is no longer to be kept to
    deficit_days: Number = 0.0  # of a deficit that goes on
    carries: float = 1.0  # carried mass that moves for each kilogram expected of people, as a log tells it


def start_body(
    body: Body, source: UncertaintySource | None = None, ops: Elementwise = FLOATS
) -> tuple[BodyModel, BodyState]:
    """The calibrated model and state of a body, moved by one SD of ``source``."""
    fat = body.fat_kg.mean
    maintenance = body.maintenance_kcal.mean
    if source is UncertaintySource.BODY_FAT:
        fat = fat + body.fat_kg.sd
    if source is UncertaintySource.MAINTENANCE:
        maintenance = maintenance + body.maintenance_kcal.sd
    model, state = calibrate(
        weight_kg=body.weight_kg,
        fat_kg=fat,
        maintenance_kcal=maintenance,
        resting_kcal=body.resting_kcal,
        experience_years=body.experience_years,
        training_dose=body.training_dose,
        new_training=body.new_training,
        carbohydrate_share=body.carbohydrate_share,
        ops=ops,
    )
    if body.carries != 1.0:
        model = carrying(model, body.carries)
    model = responding(model, source, ops)
    if body.usual_intake_kcal is not None:
        if source is UncertaintySource.ADAPTATION:
            model = adapting(model, body.usual_intake_kcal, 1.0, ops)
        model, state = settle_at(model, state, body.usual_intake_kcal, ops=ops)
    return model, state


def carrying(model: BodyModel, share: float) -> BodyModel:
    """The model of someone whose carried mass answers ``share`` times as far as people's; glycogen with its water
    answers as that of all."""
    return model._replace(
        salt_water_kg=share * model.salt_water_kg,
        gut_kg=share * model.gut_kg,
        sodium_by_carbohydrate_mg=share * model.sodium_by_carbohydrate_mg,
    )


def responding(model: BodyModel, source: UncertaintySource | None, ops: Elementwise) -> BodyModel:
    """The model of someone whose tissues respond one SD of ``source`` otherwise; its balance and rest stay."""
    if source is UncertaintySource.PARTITION:
        return otherwise(model, "partition_scale", ops.exp(PARTITION_SPREAD))
    if source is UncertaintySource.TRAINING_RESPONSE:
        # Who responds less: in the other direction the bound on what is spared would stand in the way.
        less = otherwise(model, "training_gain", TRAINING_GAIN * (1.0 - TRAINING_GAIN_SPREAD))
        return otherwise(less, "unspared", SPARING_SPREAD)
    return model


def adapting(model: BodyModel, intake_kcal: Number, score: Number, ops: Elementwise = FLOATS) -> BodyModel:
    """The model of someone whose adaptation is ``score`` SDs from the mean, while eating ``intake_kcal`` [kcal/d].

    A positive score saves more in a deficit and burns less of a surplus.
    """
    spread = ops.where(intake_kcal > model.maintenance_kcal, -OVERFEEDING_SPREAD, ADAPTATION_SPREAD)
    return otherwise(model, "adaptation_share", ADAPTATION_SHARE + spread * score)


@compiled
def settle_at(
    model: BodyModel, state: BodyState, usual_intake_kcal: Number, *, ops: Elementwise = FLOATS
) -> tuple[BodyModel, BodyState]:
    """Model and state of someone who has been eating ``usual_intake_kcal`` [kcal/d], at the same scale weight.

    Someone leaving a surplus is fuller of glycogen and water than at balance, so the scale holds less lean tissue.
    """
    maintenance, carbohydrate, _, activity, *others = model
    usual_carbohydrate = usual_intake_kcal * carbohydrate / maintenance
    usual = new_tuple(Diet, (usual_intake_kcal, usual_carbohydrate, 0.0, 0.0, 0.0, 0.0))
    settled = settle(model, state, usual, ops=ops)
    fat, lean, glycogen, water, gut, adaptation, day, recovered = settled
    _, _, glycogen_before, water_before, gut_before, _, _, _ = state
    more = carried_mass(glycogen, water, gut) - carried_mass(glycogen_before, water_before, gut_before)
    lean = lean - more
    # The constant holds for the adapted state: maintenance is what the tissues need unadapted.
    offset = offset_kcal(maintenance, activity, fat, lean, glycogen, water, gut)
    return (
        new_tuple(BodyModel, (maintenance, carbohydrate, offset, activity, *others)),
        new_tuple(BodyState, (fat, lean, glycogen, water, gut, adaptation, day, recovered)),
    )
