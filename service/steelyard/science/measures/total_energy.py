"""Total energy expenditure: resting energy times activity, combined with what labelled water says of such people.

Two ways in, never both: a physical activity level (PAL), which already holds training and the thermic effect
of food, or a composed week, in which a day of sitting, the steps and the sessions are added up. Nothing is
ever added on top of a PAL. The reference equations, fitted to total expenditure by doubly labelled water, are read at
the same level. Both err alike where the person differs from others or their activity is misjudged, so they are weighed
with their covariance.
"""

import math
from bisect import bisect_right
from enum import StrEnum
from itertools import pairwise

import msgspec

from ..body import THERMIC_SHARE
from ..numbers import Estimate, Number
from ..person import ActivityLevel, ActivityWeek, Person, Sex
from ..register import (
    BYRNE_2005,
    FAO_2004,
    HEALTH_CANADA_DRI,
    NASEM_2023,
    THURBER_2019,
    WESTERTERP_2004,
    WESTERTERP_2013,
    Basis,
    Kind,
    Message,
    constant,
    equation,
    record,
    say,
    traced,
)
from .activity_energy import (
    ACTIVITY_ERROR,
    LIFTING_BOUT_MINUTES,
    RESISTANCE_SQUAT_DEADLIFT_MET,
    session_kcal,
    week_energy,
)
from .linear_equations import Coefficients, LinearEquation, Terms, by_sex, define, weighted_sums
from .resting_energy import INDIVIDUAL_ERROR

# --- physical activity levels ---------------------------------------------------------------------------


def _edge(name: str, value: float, what: str, basis: Basis = Basis.PUBLISHED) -> float:
    return constant(f"pal_{name}", value, unit="1", summary=what, basis=basis, sources=(FAO_2004,))


_PAL_EDGES = (
    _edge("sedentary_from", 1.40, "Lower end of a sedentary or light-activity lifestyle"),
    _edge("light_from", 1.55, "Middle of the sedentary-or-light band, where light begins", Basis.JUDGEMENT),
    _edge("moderate_from", 1.70, "Lower end of an active or moderately active lifestyle"),
    _edge("active_from", 1.85, "Middle of the moderately active band, where active begins", Basis.JUDGEMENT),
    _edge("very_active_from", 2.00, "Lower end of a vigorously active lifestyle"),
    _edge("sustainable_to", 2.40, "Upper end of a vigorous lifestyle: above it hard to sustain"),
)
PAL_SUSTAINABLE = _PAL_EDGES[-1]
PAL_WITHOUT_EXERCISE = constant(
    "pal_without_exercise",
    1.70,
    unit="1",
    summary="Upper end of a lifestyle without much training: what a level has above it counts as exercise",
    basis=Basis.JUDGEMENT,
    sources=(FAO_2004,),
)
PAL_SUPPLY_LIMIT = constant(
    "pal_supply_limit",
    2.5,
    unit="1",
    summary="Total over resting energy that nobody keeps up: the limit of what can be digested and absorbed for months",
    sources=(THURBER_2019,),
)
PAL_PLAUSIBLE_FROM = constant(
    "pal_plausible_from",
    1.2,
    unit="1",
    summary="Least level of a life that can be kept up (1.1-1.2): below it a person is bedridden or a figure is wrong",
    sources=(WESTERTERP_2013,),
)
SITTING_PAL_SD = 0.07
SITTING_PAL = constant(
    "pal_sitting",
    1.35,
    unit="1",
    summary=(
        "A day of sitting and standing without walking or training, thermic effect included: the lower end of "
        "the sedentary band (1.40) less the few thousand steps that such a day still holds"
    ),
    basis=Basis.JUDGEMENT,
    sources=(FAO_2004,),
    standard_deviation=SITTING_PAL_SD,
)

PAL_BANDS: dict[ActivityLevel, tuple[float, float]] = dict(
    zip(
        (
            ActivityLevel.SEDENTARY,
            ActivityLevel.LIGHT,
            ActivityLevel.MODERATE,
            ActivityLevel.ACTIVE,
            ActivityLevel.VERY_ACTIVE,
        ),
        pairwise(_PAL_EDGES),
        strict=True,
    )
)
_PAL = {level: Estimate((low + high) / 2.0, (high - low) / 2.0) for level, (low, high) in PAL_BANDS.items()}

# --- thermic effect of food -----------------------------------------------------------------------------


# The ranges were read where the paper is cited (three texts agree); its abstract gives their order, not the figures.
def _thermic(nutrient: str, share: float, sd: float, spread: str) -> float:
    return constant(
        f"thermic_effect_{nutrient}",
        share,
        unit="kcal/kcal",
        summary=f"Thermic effect of {nutrient}, share of its energy (middle of {spread})",
        sources=(WESTERTERP_2004,),
        standard_deviation=sd,
    )


THERMIC_PROTEIN = _thermic("protein", 0.25, 0.05, "20-30 %")
THERMIC_CARBOHYDRATE = _thermic("carbohydrate", 0.075, 0.025, "5-10 %")
THERMIC_FAT = _thermic("fat", 0.015, 0.015, "0-3 %")
THERMIC_ALCOHOL = _thermic("alcohol", 0.20, 0.10, "10-30 %")


@equation(
    "thermic_effect_by_nutrient",
    summary="Thermic effect of a day's food from the energy of its nutrients",
    formula=(
        f"{THERMIC_PROTEIN:g} P + {THERMIC_CARBOHYDRATE:g} C + {THERMIC_FAT:g} F + {THERMIC_ALCOHOL:g} Alc, "
        "each in kcal/d"
    ),
    sources=(WESTERTERP_2004,),
)
def thermic_effect_kcal(
    protein_kcal: Number, carbohydrate_kcal: Number, fat_kcal: Number, alcohol_kcal: Number = 0.0
) -> Number:
    """Thermic effect in kcal/d of nutrients given in kcal/d."""
    return (
        THERMIC_PROTEIN * protein_kcal
        + THERMIC_CARBOHYDRATE * carbohydrate_kcal
        + THERMIC_FAT * fat_kcal
        + THERMIC_ALCOHOL * alcohol_kcal
    )


# --- cross-check: estimated energy requirement -----------------------------------------------------------


class EerCategory(StrEnum):
    """Physical activity categories of the estimated energy requirement, by PAL."""

    INACTIVE = "inactive"
    LOW_ACTIVE = "low_active"
    ACTIVE = "active"
    VERY_ACTIVE = "very_active"


def _eer(category: EerCategory, men: Terms, women: Terms) -> LinearEquation:
    return define(
        LinearEquation(
            id=f"eer_{category}",
            summary=f"Estimated energy requirement of adults, {category.replace('_', ' ')}",
            cells=by_sex(men, women),
            sources=(NASEM_2023, HEALTH_CANADA_DRI),
            age_from_years=19,
            age_to_years=100,
            population="adults, total expenditure by doubly labelled water",
        )
    )


EER_EQUATIONS: dict[EerCategory, LinearEquation] = {
    EerCategory.INACTIVE: _eer(
        EerCategory.INACTIVE,
        men=Terms(constant=753.07, age_years=-10.83, height_cm=6.50, weight_kg=14.10),
        women=Terms(constant=584.90, age_years=-7.01, height_cm=5.72, weight_kg=11.71),
    ),
    EerCategory.LOW_ACTIVE: _eer(
        EerCategory.LOW_ACTIVE,
        men=Terms(constant=581.47, age_years=-10.83, height_cm=8.30, weight_kg=14.94),
        women=Terms(constant=575.77, age_years=-7.01, height_cm=6.60, weight_kg=12.14),
    ),
    EerCategory.ACTIVE: _eer(
        EerCategory.ACTIVE,
        men=Terms(constant=1004.82, age_years=-10.83, height_cm=6.52, weight_kg=15.91),
        women=Terms(constant=710.25, age_years=-7.01, height_cm=6.54, weight_kg=12.34),
    ),
    EerCategory.VERY_ACTIVE: _eer(
        EerCategory.VERY_ACTIVE,
        men=Terms(constant=-517.88, age_years=-10.83, height_cm=15.61, weight_kg=19.11),
        women=Terms(constant=511.83, age_years=-7.01, height_cm=9.07, weight_kg=12.56),
    ),
}
_PAL_QUARTILES = tuple(
    constant(f"eer_{name}_from", value, unit="1", summary=what, sources=(HEALTH_CANADA_DRI, NASEM_2023))
    for name, value, what in (
        ("low_active", 1.53, "PAL of low active: first quartile of adults by labelled water"),
        ("active", 1.68, "PAL of active: their median"),
        ("very_active", 1.85, "PAL of very active: their third quartile"),
    )
)
# Where in its quarter of adults each category is taken to lie. The outer ones from the 10th and 90th percentile, 1.39
# and 2.03 (NASEM 2023, 19-70 years).
_PAL_MIDDLES = (
    constant(
        "eer_inactive_middle", 1.41, unit="1", basis=Basis.JUDGEMENT, sources=(NASEM_2023,),
        summary="PAL that the inactive category stands for: the middle of the lowest quarter of adults",
    ),
    (_PAL_QUARTILES[0] + _PAL_QUARTILES[1]) / 2.0,
    (_PAL_QUARTILES[1] + _PAL_QUARTILES[2]) / 2.0,
    constant(
        "eer_very_active_middle", 2.00, unit="1", basis=Basis.JUDGEMENT, sources=(NASEM_2023,),
        summary="PAL that the very active category stands for: the middle of the highest quarter of adults",
    ),
)  # fmt: skip
EER_ERROR_MEN = constant(
    "eer_standard_error_men",
    342.0,
    unit="kcal/d",
    summary="Standard error of an individual's estimated energy requirement, men, at the mean person",
    sources=(NASEM_2023,),
)
EER_ERROR_WOMEN = constant(
    "eer_standard_error_women",
    241.0,
    unit="kcal/d",
    summary="Standard error of an individual's estimated energy requirement, women, at the mean person",
    sources=(NASEM_2023,),
)
_EER_SPREAD = {
    True: constant(
        "eer_relative_error_men",
        0.116,
        unit="1",
        summary="The same over the mean expenditure of the men it was fitted to",
        sources=(NASEM_2023,),
    ),
    False: constant(
        "eer_relative_error_women",
        0.108,
        unit="1",
        summary="The same over the mean expenditure of the women it was fitted to",
        sources=(NASEM_2023,),
    ),
}
PRODUCT_ERROR = constant(
    "resting_times_activity_error",
    0.06,
    unit="1",
    summary="Error of resting energy times activity for a whole group, beside that of its parts: equations of athletes "
    "and lifters ran 2 to 16 % over the reference equations of the same activity in 18 of 21 people tried",
    basis=Basis.JUDGEMENT,
)


def _eer_table(is_male: bool) -> tuple[Coefficients, ...]:
    # These equations have one cell a sex: any age picks it.
    found = (e.coefficients(is_male, e.age_from_years) for e in EER_EQUATIONS.values())
    return tuple(coefficients for coefficients in found if coefficients)


_EER_TABLES = {False: _eer_table(False), True: _eer_table(True)}
_EER_IDS = tuple(e.id for e in EER_EQUATIONS.values())
_CATEGORIES = tuple(EerCategory)
_EER_SAMPLE = EER_EQUATIONS[EerCategory.INACTIVE]

_EER_AGE = "EER_FOR_ADULTS"
_EER_YOUNG = say(_EER_AGE, from_years=_EER_SAMPLE.age_from_years)
_PAL_HIGH = "PAL_ABOVE_SUSTAINABLE"
_PAL_LOW = "PAL_BELOW_PLAUSIBLE"


class TotalRow(msgspec.Struct, frozen=True, gc=False):
    """One estimate of total energy and its share in the answer, 0 to 1.

    A category of the reference equations, or resting energy times activity.
    """

    id: str
    kcal_per_day: float
    standard_error: float
    weight: float
    is_applicable: bool
    why_not: Message | None = None


class Components(msgspec.Struct, frozen=True):
    """Where the energy goes, kcal/d; the three add up to the total.

    ``activity_kcal`` is all that is neither rest nor thermic effect: sitting up, standing, steps, sessions.
    """

    resting_kcal: float
    thermic_effect_kcal: float
    activity_kcal: float


class TotalEnergy(Estimate, frozen=True, kw_only=True):
    """Total energy expenditure in kcal/d, the implied PAL and the parts.

    ``exercise_kcal`` is the net energy of training sessions in kcal/d, as energy availability needs it. Of a person who
    told only a level it is part of that: what the level has over ``PAL_WITHOUT_EXERCISE``, and no less than
    their weekly resistance sessions.
    """

    pal: float
    components: Components
    exercise_kcal: float
    notes: tuple[Message, ...]
    rows: tuple[TotalRow, ...] = ()


class Product(Estimate, frozen=True, kw_only=True):
    """Resting energy times activity, kcal/d. ``pal_sd`` is the error of the level alone."""

    id: str
    pal: float
    pal_sd: float
    exercise_kcal: float


def resting_times_activity(person: Person, resting: Estimate) -> Product:
    """Total energy in kcal/d as resting energy (kcal/d) times the level of the person's activity."""
    activity = person.activity
    if isinstance(activity, ActivityLevel):
        return _from_level(activity, resting, person.training.resistance_sessions_per_week)
    return _from_week(activity, resting)


@traced
@equation(
    "total_energy_from_pal",
    kind=Kind.MODEL,
    summary="Total energy from an activity level that already holds training and the thermic effect",
    formula=(
        "TEE = PAL REE with the middle of the band; sd of PAL = half the width of the band "
        "(wider than uniform, since people misjudge their level)"
    ),
    basis=Basis.PUBLISHED,
    sources=(FAO_2004,),
)
def _from_level(activity: ActivityLevel, resting: Estimate, sessions_per_week: float) -> Product:
    level = _PAL[activity]
    lifting = session_kcal(RESISTANCE_SQUAT_DEADLIFT_MET, LIFTING_BOUT_MINUTES, sessions_per_week, resting.mean)
    # What the level has over a day of walking and seated work is training, or work as hard.
    exercise = max(lifting, (1.0 - THERMIC_SHARE) * (level.mean - PAL_WITHOUT_EXERCISE) * resting.mean)
    return _product("total_energy_from_pal", resting, level.mean, level.sd, exercise)


@traced
@equation(
    "total_energy_from_week",
    kind=Kind.MODEL,
    summary="Total energy from a composed week; the thermic effect of the food that pays for it counted once",
    formula=(
        f"TEE = {SITTING_PAL:g} REE + (net steps + net sessions) / (1 − {THERMIC_SHARE:g}); "
        f"sd² = (PAL sd(REE))² + ({SITTING_PAL_SD:g} REE)² "
        f"+ ({ACTIVITY_ERROR:g} / {1 - THERMIC_SHARE:g})² (steps² + sessions²)"
    ),
    basis=Basis.JUDGEMENT,
    sources=(FAO_2004, BYRNE_2005),
)
def _from_week(activity: ActivityWeek, resting: Estimate) -> Product:
    rest = resting.mean
    week = week_energy(activity, rest)
    paid = 1.0 / (1.0 - THERMIC_SHARE)  # food for the movement has its own thermic effect
    pal = SITTING_PAL + paid * (week.steps_kcal + week.sessions_kcal) / rest
    error = ACTIVITY_ERROR * paid / rest
    steps, sessions = error * week.steps_kcal, error * week.sessions_kcal
    pal_sd = math.sqrt(SITTING_PAL_SD**2 + steps * steps + sessions * sessions)
    return _product("total_energy_from_week", resting, pal, pal_sd, week.sessions_kcal)


def _product(id: str, resting: Estimate, pal: float, pal_sd: float, exercise_kcal: float) -> Product:
    sd = math.sqrt((pal * resting.sd) ** 2 + (resting.mean * pal_sd) ** 2)
    return Product(pal * resting.mean, sd, id=id, pal=pal, pal_sd=pal_sd, exercise_kcal=exercise_kcal)


@traced
@equation(
    "total_energy_combined",
    summary="Total energy: resting energy times activity and the reference equations, weighed with their covariance",
    formula=(
        "mean = w R + (1 - w) P, R the reference equations read at the activity level, P = PAL REE; "
        "w = (sP² - c) / (sR² + sP² - 2c); sR² = (relative error R)² + (slope sd(PAL))²; "
        f"sP² = sd(P)² + ({PRODUCT_ERROR:g} P)²; c = {INDIVIDUAL_ERROR:g}² R P + slope REE sd(PAL)²; "
        "sd² = (sR² sP² - c²) / (sR² + sP² - 2c); "
        f"never under {PAL_PLAUSIBLE_FROM:g} REE, nor over {PAL_SUPPLY_LIMIT:g} REE where P is not"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(NASEM_2023, HEALTH_CANADA_DRI, FAO_2004, THURBER_2019),
    valid_range="the reference equations from 19 years; before, resting energy times activity alone",
)
def estimate(person: Person, resting: Estimate) -> TotalEnergy:
    """Total energy expenditure in kcal/d from resting energy (kcal/d), the person's activity and the references."""
    product = resting_times_activity(person, resting)
    pal, pal_sd = product.pal, product.pal_sd
    values, errors, spread = _requirements(person)
    low, share, outside = _between(pal)
    reference = outside * ((1.0 - share) * values[low] + share * values[low + 1])
    applicable = _EER_SAMPLE.holds_at(person.age_years)
    slope = (values[-1] - values[0]) / (_PAL_MIDDLES[-1] - _PAL_MIDDLES[0])
    of_reference = (spread * reference) ** 2 + (slope * pal_sd) ** 2
    of_product = product.sd * product.sd + (PRODUCT_ERROR * product.mean) ** 2
    shared = INDIVIDUAL_ERROR**2 * reference * product.mean + slope * resting.mean * pal_sd * pal_sd
    apart = of_reference + of_product - 2.0 * shared
    weight = min(max((of_product - shared) / apart, 0.0), 1.0) if applicable and apart > 0.0 else 0.0
    rest_weight = 1.0 - weight
    mean = weight * reference + rest_weight * product.mean
    # A week told in full that comes to more than can be kept up for months is asked about, and not cut down.
    mean = min(max(mean, PAL_PLAUSIBLE_FROM * resting.mean), max(PAL_SUPPLY_LIMIT * resting.mean, product.mean))
    variance = (
        weight * weight * of_reference + rest_weight * rest_weight * of_product + 2.0 * weight * rest_weight * shared
    )
    record(*_EER_IDS)  # the outer two give the slope
    weights = [0.0] * len(values)
    weights[low], weights[low + 1] = weight * (1.0 - share), weight * share
    why_not = None if applicable else _EER_YOUNG
    rows = [
        TotalRow(id, value, error, of, applicable, why_not)
        for id, value, error, of in zip(_EER_IDS, values, errors, weights, strict=True)
    ]
    rows.append(TotalRow(product.id, product.mean, math.sqrt(of_product), rest_weight, True))
    rest, thermic = resting.mean, THERMIC_SHARE * mean
    return TotalEnergy(
        mean,
        math.sqrt(variance),
        pal=mean / rest,
        components=Components(rest, thermic, mean - rest - thermic),
        exercise_kcal=product.exercise_kcal,
        notes=pal_notes(pal),
        rows=tuple(rows),
    )


def _between(pal: float) -> tuple[int, float, float]:
    """The lower of the two categories that a PAL lies between, the share of the upper, and a factor outside them."""
    first, last = _PAL_MIDDLES[0], _PAL_MIDDLES[-1]
    if pal <= first:
        return 0, 0.0, pal / first
    if pal >= last:
        return len(_PAL_MIDDLES) - 2, 1.0, pal / last
    low = bisect_right(_PAL_MIDDLES, pal) - 1
    return low, (pal - _PAL_MIDDLES[low]) / (_PAL_MIDDLES[low + 1] - _PAL_MIDDLES[low]), 1.0


def _requirements(person: Person) -> tuple[list[float], list[float], float]:
    """The requirement in every category and its standard error [kcal/d], and the error as a fraction."""
    weight, height, age, sex = person.weight_kg, person.height_cm, person.age_years, person.sex
    if sex is not Sex.UNSPECIFIED:
        is_male = sex is Sex.MALE
        values = weighted_sums(_EER_TABLES[is_male], weight, height, age, 0.0, 0.0)
        return values, [EER_ERROR_MEN if is_male else EER_ERROR_WOMEN] * len(values), _EER_SPREAD[is_male]
    women = weighted_sums(_EER_TABLES[False], weight, height, age, 0.0, 0.0)
    men = weighted_sums(_EER_TABLES[True], weight, height, age, 0.0, 0.0)
    both = (EER_ERROR_WOMEN + EER_ERROR_MEN) / 2.0
    values = [(woman + man) / 2.0 for woman, man in zip(women, men, strict=True)]
    errors = [both + abs(man - woman) / 2.0 for woman, man in zip(women, men, strict=True)]
    apart = abs(men[1] - women[1]) / 2.0 / values[1]
    return values, errors, (_EER_SPREAD[True] + _EER_SPREAD[False]) / 2.0 + apart


def eer_category(pal: float) -> EerCategory:
    """The category of the estimated energy requirement that a PAL belongs to."""
    return _CATEGORIES[bisect_right(_PAL_QUARTILES, pal)]


def pal_notes(pal: float) -> tuple[Message, ...]:
    """What to say of an implied PAL: nothing, or that it is hardly sustainable or hardly plausible."""
    if pal > PAL_SUSTAINABLE:
        return (say(_PAL_HIGH, pal=pal, limit=PAL_SUSTAINABLE),)
    if pal < PAL_PLAUSIBLE_FROM:
        return (say(_PAL_LOW, pal=pal, limit=PAL_PLAUSIBLE_FROM),)
    return ()
