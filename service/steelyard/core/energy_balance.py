"""The dynamic energy-balance model: fat, lean tissue, glycogen, water, gut content, adaptation.

Structure after Hall et al. 2011 (ids ``hall_2011``, ``hall_2010``) with three additions for people who lift,
each registered below: a training-and-protein factor on the lean share, a saturating lean share in a surplus,
and a training-driven lean term that exists in any energy state.

The fast states (glycogen, water, gut, adaptation) have closed forms while the diet is constant, so a step may
be a day or some weeks long; the slow tissues take one midpoint (Runge-Kutta 2) step. Energy is conserved
exactly in every step: stored energy = intake - expenditure.

Everything is elementwise: floats, or numpy arrays with people along the first axis.
"""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from . import bibliography  # noqa: F401 - registers the sources named below
from .elementwise import FLOATS, Elementwise, Number
from .evidence import Basis, Kind, constant, equation

KJ_PER_KCAL = constant(
    "kilojoules_per_kilocalorie", 4.184, unit="kJ/kcal", summary="Thermochemical calorie, exact by definition"
)
_HALL = ("hall_2011", "hall_2010")


def _from_kj(id: str, kj: float, unit: str, summary: str) -> float:
    """A constant printed in kJ, registered and returned in kcal."""
    return constant(id, kj / KJ_PER_KCAL, unit=unit, summary=f"{summary} ({kj:g} kJ in the source)", sources=_HALL)


FAT_ENERGY = constant(
    "energy_density_fat_mass", 9441.0, unit="kcal/kg", summary="Energy density of fat mass (39.5 MJ/kg)",
    sources=("hall_2008",),
)  # fmt: skip
LEAN_ENERGY = constant(
    "energy_density_lean_tissue", 1816.0, unit="kcal/kg", summary="Energy density of lean tissue (7.6 MJ/kg)",
    sources=("hall_2008",),
)  # fmt: skip
GLYCOGEN_ENERGY = constant(
    "energy_density_glycogen", 4206.0, unit="kcal/kg", summary="Energy density of glycogen (17.6 MJ/kg)",
    sources=("hall_2008",),
)  # fmt: skip
FORBES_KG = constant(
    "forbes_slope", 10.4, unit="kg", summary="Slope of fat-free mass on ln(fat mass)", basis=Basis.FROM_MEMORY,
    sources=("forbes_1987", "forbes_2000"),
)  # fmt: skip
# Share of ENERGY to lean is C / (C + fat mass) with C in kg.
PARTITION_KG = FORBES_KG * LEAN_ENERGY / FAT_ENERGY

FAT_UPKEEP = _from_kj("resting_cost_fat_mass", 13.0, "kcal/kg/d", "Resting cost of a kilogram of fat mass")
LEAN_UPKEEP = _from_kj("resting_cost_lean", 92.0, "kcal/kg/d", "Resting cost of a kilogram of lean tissue")
FAT_SYNTHESIS = _from_kj("synthesis_cost_fat_mass", 750.0, "kcal/kg", "Cost of building a kilogram of fat")
LEAN_SYNTHESIS = _from_kj("synthesis_cost_lean", 960.0, "kcal/kg", "Cost of building a kilogram of lean tissue")

THERMIC_SHARE = constant(
    "thermic_effect_of_feeding", 0.10, unit="kcal/kcal", summary="Thermic effect per change of intake",
    sources=_HALL,
)  # fmt: skip
ADAPTATION_SHARE = constant(
    "adaptive_thermogenesis_share", 0.14, unit="kcal/kcal", standard_deviation=0.10,
    summary="Adaptive change of expenditure per change of intake, spontaneous activity included; the spread "
    "between people under overfeeding is large (Levine 1999)",
    sources=(*_HALL, "levine_1999"),
)  # fmt: skip
ADAPTATION_DAYS = constant(
    "adaptive_thermogenesis_time", 14.0, unit="d", summary="Time constant of adaptation", sources=_HALL
)
GLYCOGEN_KG = constant("glycogen_baseline", 0.5, unit="kg", summary="Body glycogen at energy balance", sources=_HALL)
GLYCOGEN_WATER = constant(
    "glycogen_water", 2.7, unit="kg/kg", summary="Water stored with each kilogram of glycogen", sources=_HALL
)
SODIUM_PER_LITRE = constant(
    "sodium_extracellular", 3220.0, unit="mg/L", summary="Sodium in extracellular water", sources=_HALL
)
SODIUM_EXCRETION = constant(
    "sodium_excretion", 3000.0, unit="mg/L/d", summary="Sodium excretion per litre of excess extracellular water",
    sources=_HALL,
)  # fmt: skip
SODIUM_BY_CARBOHYDRATE = constant(
    "sodium_excretion_carbohydrate", 4000.0, unit="mg/d", summary="Sodium retained or lost with carbohydrate",
    sources=_HALL,
)  # fmt: skip
GUT_CONTENT_KG = constant(
    "gut_content", 0.5, unit="kg", standard_deviation=0.3, basis=Basis.JUDGEMENT,
    summary="Gut content of a fasting morning at the usual intake, taken as proportional to intake: half of what fills "
    "the gut through the day, since the fat-free mass of six pooled restriction arms fell less than the larger figure "
    "says",
)  # fmt: skip
GUT_DAYS = constant(
    "gut_transit_time", 1.5, unit="d", summary="Mean transit time through the colon (35 h)",
    basis=Basis.FROM_MEMORY, sources=("metcalf_1987",),
)  # fmt: skip
BASELINE_CARBOHYDRATE_SHARE = constant(
    "carbohydrate_share_baseline", 0.5, unit="kcal/kcal",
    summary="Share of intake from carbohydrate at the usual diet, where it was not given", sources=_HALL,
)  # fmt: skip

CARRIED_SPREAD = constant(
    "carried_mass_spread",
    0.4,
    unit="1",
    summary="Between-person SD of carried mass for a given change of diet, as a share of its mean: salt, gut content "
    "and how settled the diet was",
    basis=Basis.JUDGEMENT,
)

# --- what lifting and protein change -------------------------------------------------------------------------
PROTEIN_ORDINARY = constant(
    "protein_ordinary", 0.8, unit="g/kg/d", summary="Protein allowance at which the base partition applies",
    basis=Basis.FROM_MEMORY, sources=("iom_2005",),
)  # fmt: skip
PROTEIN_ENOUGH_GAIN = constant(
    "protein_breakpoint", 1.62, unit="g/kg/d", summary="Protein beyond which lean gain no longer rises",
    sources=("morton_2018",),
)  # fmt: skip
PROTEIN_GAIN_BOOST = constant(
    "protein_gain_boost", 0.27, unit="1", summary="Added lean gain with enough protein (27 %)",
    basis=Basis.FROM_MEMORY, sources=("morton_2018",),
)  # fmt: skip
PROTEIN_ENOUGH_DEFICIT = constant(
    "protein_enough_deficit", 2.0, unit="g/kg/d",
    summary="Protein at which sparing of lean tissue in a deficit is taken as complete (between the 1.6-2.2 of "
    "the trade and the 2.3 g/kg of Mettler 2010)",
    basis=Basis.JUDGEMENT, sources=("mettler_2010", "jager_2017"),
)  # fmt: skip
TRAINING_SPARING = constant(
    "training_sparing", 0.5, unit="1", standard_deviation=0.15,
    summary="Share of the lean loss of a deficit that training prevents (exercise halved the lean share of the "
    "loss in the pooled studies)",
    basis=Basis.FROM_MEMORY, sources=("weinheimer_2010",),
)  # fmt: skip
PROTEIN_SPARING = constant(
    "protein_sparing", 0.25, unit="1",
    summary="Share of the remaining lean loss that protein prevents without training (0.43 kg of about 1.7 kg)",
    basis=Basis.FROM_MEMORY, sources=("wycherley_2012",),
)  # fmt: skip
PROTEIN_SPARING_TRAINED = constant(
    "protein_sparing_trained", 0.65, unit="1", standard_deviation=0.2,
    summary="Share of the remaining lean loss that protein prevents in people who lift (low- against "
    "high-protein arms of trained people)",
    basis=Basis.JUDGEMENT, sources=("mettler_2010", "campbell_2020"),
)  # fmt: skip
SURPLUS_LEAN_FACTOR = constant(
    "surplus_lean_factor", 0.8, unit="1", standard_deviation=0.3,
    summary="Factor on the Forbes lean share in a surplus; overfed lean men stored less lean than it says",
    basis=Basis.JUDGEMENT, sources=("bouchard_1990",),
)  # fmt: skip
TRAINING_WATER_KG = constant(
    "training_water", 0.5, unit="kg", standard_deviation=0.3, basis=Basis.FROM_MEMORY, sources=("convertino_1991",),
    summary="Water that new or clearly increased training adds within days: plasma volume (about 0.4 L) and glycogen",
)  # fmt: skip
BEGINNER_GAIN_KG = constant(
    "beginner_lean_gain", 1.53, unit="kg", basis=Basis.FROM_MEMORY, sources=("benito_2020",),
    summary="Fat-free mass gained by untrained men in about 10.4 weeks of resistance training, water included",
)  # fmt: skip
# Per kilogram of fat-free mass: the men of those trials had about 64 kg; relative gain is equal in women.
TRAINING_GAIN = constant(
    "training_lean_gain", (BEGINNER_GAIN_KG - TRAINING_WATER_KG) / 64.0 / (10.4 * 7.0), unit="kg/kg/d",
    standard_deviation=0.5 * (BEGINNER_GAIN_KG - TRAINING_WATER_KG) / 64.0 / (10.4 * 7.0), basis=Basis.FROM_MEMORY,
    summary="Lean tissue that training adds a day in beginners, per kilogram of fat-free mass (about 64 kg in the "
    "trials); relative gain taken equal in women",
    sources=("benito_2020", "roberts_2020"),
)  # fmt: skip
SURPLUS_LEAN_CEILING = constant(
    "surplus_lean_ceiling", 0.30 / 64.0 / 7.0, unit="kg/kg/d", basis=Basis.FROM_MEMORY,
    summary="Ceiling of lean tissue that a surplus alone adds a day in people new to training, per kilogram of fat-"
    "free mass (0.30 kg a week at 64 kg): pooled overfeeding trials stored less lean than the Forbes share, the "
    "more so the larger the surplus",
    sources=("bouchard_1990", "bray_2012", "levine_1999", "diaz_1992"),
)  # fmt: skip
EXPERIENCE_HALVING_YEARS = constant(
    "training_gain_halving", 1.0, unit="y", basis=Basis.JUDGEMENT,
    summary="Years of training after which the beginner's rate of lean gain has halved: rate = 1 / (1 + years)",
)  # fmt: skip
LEAN_CEILING_FLOOR = constant(
    "lean_ceiling_floor", 0.33, unit="1", basis=Basis.JUDGEMENT,
    summary="Least share of the beginner's ceiling on surplus-driven lean, for supporting (non-muscle) tissue",
)  # fmt: skip
FULL_DOSE_SESSIONS = constant(
    "training_full_dose", 2.0, unit="sessions/week", basis=Basis.JUDGEMENT,
    summary="Resistance sessions a week from which the training effect counts in full",
)  # fmt: skip
FAT_SUPPLY_LIMIT = constant(
    "fat_supply_limit", 290.0 / KJ_PER_KCAL, unit="kcal/kg/d",
    summary="Most energy that fat mass can release (290 kJ/kg/d in the source)", sources=("alpert_2005",),
)  # fmt: skip

# Glycogen with its water at energy balance [kg].
BASELINE_GLYCOGEN_KG = GLYCOGEN_KG * (1.0 + GLYCOGEN_WATER)

MODEL_IDS = (
    "energy_balance_model", "lean_partition", "training_lean_term", "energy_density_fat_mass",
    "energy_density_lean_tissue", "forbes_slope", "adaptive_thermogenesis_share", "thermic_effect_of_feeding",
)  # fmt: skip
CARRIED_IDS = ("carried_mass_model", "glycogen_baseline", "glycogen_water", "sodium_excretion", "gut_content")


class BodyModel(NamedTuple):
    """One person's calibrated parameters (or many people's, as arrays). Energies in kcal/d."""

    maintenance_kcal: Number
    baseline_carbohydrate_kcal: Number
    offset_kcal: Number  # constant expenditure that makes intake = maintenance a balance
    activity_kcal_per_kg: Number
    fat_free_kg: Number  # at baseline; scales the training-driven gain
    experience_years: Number
    training_dose: Number  # 0 none .. 1 full
    training_sparing: Number = TRAINING_SPARING
    protein_sparing_trained: Number = PROTEIN_SPARING_TRAINED
    surplus_lean_factor: Number = SURPLUS_LEAN_FACTOR
    training_gain: Number = TRAINING_GAIN
    adaptation_share: Number = ADAPTATION_SHARE
    gut_kg: Number = GUT_CONTENT_KG
    partition_scale: Number = 1.0  # between-person factor on the lean share
    training_water_kg: Number = 0.0  # that new training adds


class BodyState(NamedTuple):
    """The body on a day. ``water_kg`` and ``gut_kg`` are deviations from the calibrated baseline."""

    fat_kg: Number
    lean_kg: Number
    glycogen_kg: Number
    water_kg: Number
    gut_kg: Number
    adaptation_kcal: Number
    day: Number = 0.0

    @property
    def tissue_kg(self) -> Number:
        """Fat mass and lean tissue [kg]."""
        return self.fat_kg + self.lean_kg

    @property
    def carried_kg(self) -> Number:
        """Glycogen with its water, extracellular water and gut content, as a deviation from baseline [kg]."""
        _, _, glycogen, water, gut, _, _ = self
        return (glycogen - GLYCOGEN_KG) * (1.0 + GLYCOGEN_WATER) + water + gut

    @property
    def weight_kg(self) -> Number:
        """Scale weight [kg]."""
        fat, lean, glycogen, water, gut, _, _ = self
        return fat + lean + glycogen * (1.0 + GLYCOGEN_WATER) + water + gut

    @property
    def fat_free_kg(self) -> Number:
        """Fat-free mass: lean tissue, glycogen and water, without gut content [kg]."""
        return self.lean_kg + self.glycogen_kg * (1.0 + GLYCOGEN_WATER) + self.water_kg


class Diet(NamedTuple):
    """What is eaten each day of a stretch. Sodium, activity and thermic shifts are against baseline."""

    intake_kcal: Number
    carbohydrate_kcal: Number
    protein_g_per_kg: Number
    sodium_change_mg: Number = 0.0
    activity_change_kcal_per_kg: Number = 0.0
    thermic_shift_kcal: Number = 0.0


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


def calibrate(
    *,
    weight_kg: Number,
    fat_kg: Number,
    maintenance_kcal: Number,
    resting_kcal: Number,
    experience_years: Number = 0.0,
    training_dose: Number = 0.0,
    new_training: Number = 0.0,
    carbohydrate_share: Number = BASELINE_CARBOHYDRATE_SHARE,
    ops: Elementwise = FLOATS,
) -> tuple[BodyModel, BodyState]:
    """The model and baseline state of a person for whom eating ``maintenance_kcal`` keeps tissue energy steady.

    Args: masses [kg]; ``maintenance_kcal`` and ``resting_kcal`` [kcal/d]; ``training_dose`` and ``new_training``
        0-1;        ``carbohydrate_share`` of the usual intake (0-1). Floats or arrays of one shape.
    Source: Hall 2011; activity coefficient delta = ((1 - thermic share) PAL - 1) RMR / weight.
    """
    lean = weight_kg - fat_kg - BASELINE_GLYCOGEN_KG
    activity = ops.maximum(((1.0 - THERMIC_SHARE) * maintenance_kcal - resting_kcal) / weight_kg, 0.0)
    model = BodyModel(
        maintenance_kcal=maintenance_kcal,
        baseline_carbohydrate_kcal=maintenance_kcal * carbohydrate_share,
        offset_kcal=0.0,
        activity_kcal_per_kg=activity,
        fat_free_kg=weight_kg - fat_kg,
        experience_years=experience_years,
        training_dose=training_dose,
        training_water_kg=TRAINING_WATER_KG * new_training,
    )
    state = BodyState(fat_kg, lean, GLYCOGEN_KG, 0.0, 0.0, 0.0)
    return balance(model, state), state


def balance(model: BodyModel, state: BodyState) -> BodyModel:
    """Set the constant term so that maintenance intake, ordinary training and ``state`` store no energy."""
    # The training-driven term is left out: what it costs (a few kcal/d) belongs to growth, not to upkeep.
    offset = (
        model.maintenance_kcal
        - FAT_UPKEEP * state.fat_kg
        - LEAN_UPKEEP * state.lean_kg
        - model.activity_kcal_per_kg * state.weight_kg
    )
    return model._replace(offset_kcal=offset)


def _responses(protein_g_per_kg: Number, ops: Elementwise) -> tuple[Number, Number]:
    """How much of what protein can do in a deficit, and in a gain, it does: 0 at the allowance .. 1."""
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
        "forbes_1987",
        "hall_2007",
        "weinheimer_2010",
        "wycherley_2012",
        "mettler_2010",
        "bouchard_1990",
    ),
    valid_range="adults; factors for training and protein are ours, calibrated on pooled trials",
)
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
    sources=("benito_2020", "morton_2018", "murphy_2022", "alpert_2005"),
    valid_range="adults; the fade with the deficit is ours: pooled trials put the balance point near 500 kcal/d",
)
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
    sources=(*_HALL, "metcalf_1987"),
    valid_range="adults; the gut term is ours",
)
def _rest(model: BodyModel, diet: Diet, ops: Elementwise) -> _Rest:
    carbohydrate = ops.maximum(diet.carbohydrate_kcal, 1.0)
    relative = carbohydrate / model.baseline_carbohydrate_kcal
    glycogen = GLYCOGEN_KG * ops.sqrt(relative)
    return _Rest(
        glycogen,
        (diet.sodium_change_mg - SODIUM_BY_CARBOHYDRATE * (1.0 - relative)) / SODIUM_EXCRETION
        + model.training_water_kg,
        model.gut_kg * (diet.intake_kcal - model.maintenance_kcal) / model.maintenance_kcal,
        # k_G G_rest / rho_G with k_G = usual carbohydrate / baseline glycogen squared
        carbohydrate / (glycogen * GLYCOGEN_ENERGY),
    )


def _drive(model: BodyModel, diet: Diet, ops: Elementwise) -> _Drive:
    intake, _, protein, _, activity_change, thermic_shift = diet
    change = intake - model.maintenance_kcal
    adaptation_rest = model.adaptation_share * change
    growth, ceiling = _growth(model, protein, ops)
    activity = model.activity_kcal_per_kg + activity_change
    fat_cost = FAT_SYNTHESIS / FAT_ENERGY
    return _Drive(
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
    gap = outside - fat_slope * fat - lean_slope * lean
    base = PARTITION_KG / (PARTITION_KG + fat)
    surplus = ops.maximum(gap, 0.0)
    wanted = base * surplus_factor
    share = ops.where(gap > 0.0, wanted / (1.0 + wanted * surplus / ceiling_kcal), base * deficit_factor)
    growth = growth * ops.exp((gap - surplus) / (FAT_SUPPLY_LIMIT * fat))
    stored = (gap - growth * growth_cost) / (1.0 + (fat_cost + share * lean_extra_cost))
    lean_rate = share * stored / LEAN_ENERGY + growth
    return (stored - LEAN_ENERGY * lean_rate) / FAT_ENERGY, lean_rate, stored


def _experienced(drive: _Drive, day: Number, ops: Elementwise) -> tuple[Number, Number]:
    """Training-driven gain [kg/d] and ceiling of surplus energy into lean [kcal/d], at the experience of a day.

    Both follow the share of a beginner's rate that is left; experience grows only while training goes on.
    """
    _, _, _, growth, ceiling, years, years_per_day, _ = drive
    freshness = EXPERIENCE_HALVING_YEARS / (EXPERIENCE_HALVING_YEARS + years + years_per_day * day)
    return growth * freshness, LEAN_ENERGY * ceiling * ops.maximum(freshness, LEAN_CEILING_FLOOR)


_new_tuple = tuple.__new__

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
    """``_left``, the constants being arguments, so that others give others."""
    adaptation = math.exp(-days / adaptation_days)
    return (
        math.exp(-water_rate * days),
        math.exp(-days / gut_days),
        adaptation,
        (1.0 - adaptation) * adaptation_days / days,
    )


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
    carried = 0.5 * (
        (1.0 + GLYCOGEN_WATER) * (glycogen + glycogen_before) + (water + water_before) + (gut + gut_before)
    )
    outside = (
        supply - GLYCOGEN_ENERGY * (glycogen - glycogen_before) / days - away * adaptation_mean - activity * carried
    )
    half = 0.5 * days
    growth, ceiling = _experienced(drive, day + half, ops)
    fat_rate, lean_rate, _ = _tissue_rates(share_of, growth, ceiling, outside, fat, lean, ops)
    middle = ops.maximum(fat + half * fat_rate, _LEAST_FAT_KG)
    fat_rate, lean_rate, _ = _tissue_rates(share_of, growth, ceiling, outside, middle, lean + half * lean_rate, ops)
    fat = ops.maximum(fat + days * fat_rate, _LEAST_FAT_KG)
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
    sources=_HALL,
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
    return walk(model, state, diet, (days / steps,) * steps, ops)[-1]


def walk(
    model: BodyModel,
    state: BodyState,
    diet: Diet,
    lengths: tuple[float, ...],
    ops: Elementwise = FLOATS,
    carried_of: Sequence[BodyState] | None = None,
) -> list[BodyState]:
    """The body after each of the consecutive steps ``lengths`` [d] on one diet.

    ``carried_of`` holds the states, after each of those steps, of a body whose carried mass goes the same way: one with
    the same maintenance and usual diet, on this diet. Its glycogen, water and gut content are then taken as they are.
    """
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


def current_maintenance_kcal(model: BodyModel, state: BodyState, ops: Elementwise = FLOATS) -> Number:
    """The intake at which tissue energy is steady at ``state`` today, with the adaptation present now [kcal/d].

    Solves expenditure(intake) = intake with the thermic share of the change. A log teaches another quantity, settled
    maintenance: the intake at which tissue holds once adaptation has followed intake there.
    """
    return maintenance_of(model, state.fat_kg, state.lean_kg, state.weight_kg, state.adaptation_kcal)


def maintenance_of(
    model: BodyModel, fat_kg: Number, lean_kg: Number, weight_kg: Number, adaptation_kcal: Number
) -> Number:
    """``current_maintenance_kcal`` from the parts of a state."""
    fixed = (
        model.offset_kcal
        + FAT_UPKEEP * fat_kg
        + LEAN_UPKEEP * lean_kg
        + model.activity_kcal_per_kg * weight_kg
        + adaptation_kcal
    )
    return (fixed - THERMIC_SHARE * model.maintenance_kcal) / (1.0 - THERMIC_SHARE)


class Linearised(NamedTuple):
    """``rho dW/dt = change of intake - epsilon (W - W0)`` around a state (tissue weight W)."""

    rho_kcal_per_kg: Number
    epsilon_kcal_per_kg_day: Number


@equation(
    "linearised_energy_balance",
    summary="Effective energy of a kilogram of body mass, and the fall of expenditure with mass",
    formula="rho dW/dt = change of intake - epsilon (W - W0), from the model's partition and costs",
    kind=Kind.MODEL,
    sources=("hall_chow_2011", "sanghvi_2015"),
)
def linearise(model: BodyModel, fat_kg: Number, protein_g_per_kg: Number, *, ops: Elementwise = FLOATS) -> Linearised:
    """The linear model in a deficit. Without training at ordinary protein it equals the published closed form."""
    share = PARTITION_KG / (PARTITION_KG + fat_kg) * deficit_factor(model, protein_g_per_kg, ops)
    synthesis = share * LEAN_SYNTHESIS / LEAN_ENERGY + (1.0 - share) * FAT_SYNTHESIS / FAT_ENERGY
    fat_part, lean_part = (1.0 - share) / FAT_ENERGY, share / LEAN_ENERGY
    mass_per_kcal = fat_part + lean_part
    upkeep = (FAT_UPKEEP * fat_part + LEAN_UPKEEP * lean_part) / mass_per_kcal
    responding = 1.0 - THERMIC_SHARE - model.adaptation_share
    return Linearised(
        (1.0 + synthesis) / mass_per_kcal / responding, (upkeep + model.activity_kcal_per_kg) / responding
    )
