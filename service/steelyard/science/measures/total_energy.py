"""Total energy expenditure from resting energy and activity, with a cross-check by an independent set.

Two ways in, never both: a physical activity level (PAL), which already holds training and the thermic effect
of food, or a composed week, in which a day of sitting, the steps and the sessions are added up. Nothing is
ever added on top of a PAL.
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
    WESTERTERP_2004,
    WESTERTERP_2013,
    Basis,
    Kind,
    Message,
    constant,
    equation,
    say,
    template,
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
_EER_FROM = (
    constant("eer_low_active_from", 1.53, unit="1", summary="PAL of low active", sources=(HEALTH_CANADA_DRI,)),
    constant("eer_active_from", 1.68, unit="1", summary="PAL of active", sources=(HEALTH_CANADA_DRI,)),
    constant("eer_very_active_from", 1.85, unit="1", summary="PAL of very active", sources=(HEALTH_CANADA_DRI,)),
)
EER_ERROR_MEN = constant(
    "eer_standard_error_men",
    340.0,
    unit="kcal/d",
    summary="Standard error of an individual's estimated energy requirement, men",
    basis=Basis.FROM_MEMORY,
    sources=(NASEM_2023,),
)
EER_ERROR_WOMEN = constant(
    "eer_standard_error_women",
    246.0,
    unit="kcal/d",
    summary="Standard error of an individual's estimated energy requirement, women",
    basis=Basis.FROM_MEMORY,
    sources=(NASEM_2023,),
)


def _eer_table(is_male: bool) -> tuple[Coefficients, ...]:
    # These equations have one cell a sex: any age picks it.
    found = (e.coefficients(is_male, e.age_from_years) for e in EER_EQUATIONS.values())
    return tuple(coefficients for coefficients in found if coefficients)


_EER_TABLES = {False: _eer_table(False), True: _eer_table(True)}
_EER_IDS = tuple(e.id for e in EER_EQUATIONS.values())
_CATEGORIES = tuple(EerCategory)
_EER_SAMPLE = EER_EQUATIONS[EerCategory.INACTIVE]

_EER_AGE = template("EER_FOR_ADULTS", "These requirements hold from {from_years} years.")
_EER_YOUNG = say(_EER_AGE, from_years=_EER_SAMPLE.age_from_years)
_PAL_HIGH = template(
    "PAL_ABOVE_SUSTAINABLE",
    "The activity described amounts to {pal:.2f} times resting energy; above {limit} it is hard to sustain. "
    "Check the entries.",
)
_PAL_LOW = template(
    "PAL_BELOW_PLAUSIBLE",
    "Total energy is only {pal:.2f} times resting energy; below {limit} is not plausible for a person who is up "
    "and about. Check the entries.",
)


class EerRow(msgspec.Struct, frozen=True, gc=False):
    """One category's estimated energy requirement; ``is_match``: the category of the implied PAL."""

    id: str
    kcal_per_day: float
    standard_error: float
    is_match: bool
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


def estimate(person: Person, resting: Estimate) -> TotalEnergy:
    """Total energy expenditure in kcal/d from resting energy (kcal/d) and the person's activity."""
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
def _from_level(activity: ActivityLevel, resting: Estimate, sessions_per_week: float) -> TotalEnergy:
    rest, level = resting.mean, _PAL[activity]
    variance = (level.mean * resting.sd) ** 2 + (rest * level.sd) ** 2
    lifting = session_kcal(RESISTANCE_SQUAT_DEADLIFT_MET, LIFTING_BOUT_MINUTES, sessions_per_week, rest)
    # What the level has over a day of walking and seated work is training, or work as hard.
    exercise = max(lifting, (1.0 - THERMIC_SHARE) * (level.mean - PAL_WITHOUT_EXERCISE) * rest)
    return _total(level.mean, rest, variance, exercise)


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
def _from_week(activity: ActivityWeek, resting: Estimate) -> TotalEnergy:
    rest = resting.mean
    week = week_energy(activity, rest)
    paid = 1.0 / (1.0 - THERMIC_SHARE)  # food for the movement has its own thermic effect
    pal = SITTING_PAL + paid * (week.steps_kcal + week.sessions_kcal) / rest
    error = ACTIVITY_ERROR * paid
    variance = (
        (pal * resting.sd) ** 2
        + (rest * SITTING_PAL_SD) ** 2
        + (error * week.steps_kcal) ** 2
        + (error * week.sessions_kcal) ** 2
    )
    return _total(pal, rest, variance, week.sessions_kcal)


def _total(pal: float, rest: float, variance: float, exercise_kcal: float) -> TotalEnergy:
    total = pal * rest
    thermic = THERMIC_SHARE * total
    return TotalEnergy(
        total,
        math.sqrt(variance),
        pal=pal,
        components=Components(rest, thermic, total - rest - thermic),
        exercise_kcal=exercise_kcal,
        notes=pal_notes(pal),
    )


def eer_category(pal: float) -> EerCategory:
    """The category of the estimated energy requirement that a PAL belongs to."""
    return _CATEGORIES[_eer_index(pal)]


def _eer_index(pal: float) -> int:
    return bisect_right(_EER_FROM, pal)


def cross_check(person: Person, pal: float) -> tuple[EerRow, ...]:
    """The estimated energy requirement in every category, with that of ``pal`` marked."""
    match = _eer_index(pal)
    applicable = _EER_SAMPLE.holds_at(person.age_years)
    why_not = None if applicable else _EER_YOUNG
    weight, height, age, sex = person.weight_kg, person.height_cm, person.age_years, person.sex
    if sex is Sex.UNSPECIFIED:
        women = weighted_sums(_EER_TABLES[False], weight, height, age, 0.0, 0.0)
        men = weighted_sums(_EER_TABLES[True], weight, height, age, 0.0, 0.0)
        values = [(woman + man) / 2.0 for woman, man in zip(women, men, strict=True)]
        both = (EER_ERROR_WOMEN + EER_ERROR_MEN) / 2.0
        errors = [both + abs(man - woman) / 2.0 for woman, man in zip(women, men, strict=True)]
    else:
        values = weighted_sums(_EER_TABLES[sex is Sex.MALE], weight, height, age, 0.0, 0.0)
        errors = [EER_ERROR_MEN if sex is Sex.MALE else EER_ERROR_WOMEN] * len(values)
    return tuple(
        [
            EerRow(id, value, error, i == match, applicable, why_not)
            for i, (id, value, error) in enumerate(zip(_EER_IDS, values, errors, strict=True))
        ]
    )


def pal_notes(pal: float) -> tuple[Message, ...]:
    """What to say of an implied PAL: nothing, or that it is hardly sustainable or hardly plausible."""
    if pal > PAL_SUSTAINABLE:
        return (say(_PAL_HIGH, pal=pal, limit=PAL_SUSTAINABLE),)
    if pal < PAL_PLAUSIBLE_FROM:
        return (say(_PAL_LOW, pal=pal, limit=PAL_PLAUSIBLE_FROM),)
    return ()
