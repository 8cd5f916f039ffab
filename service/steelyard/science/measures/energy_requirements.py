"""The reference equations: total expenditure by doubly labelled water, in four categories of activity."""

from bisect import bisect_right
from enum import StrEnum

from ..person import Person, Sex
from ..register import HEALTH_CANADA_DRI, NASEM_2023, Basis, constant, say
from .linear_equations import Coefficients, LinearEquation, Terms, by_sex, define, weighted_sums


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
PAL_MIDDLES = (
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
        summary="Root mean square error of men's equations over the mean expenditure of those they were fitted to",
        sources=(NASEM_2023,),
    ),
    False: constant(
        "eer_relative_error_women",
        0.108,
        unit="1",
        summary="Root mean square error of women's equations over the mean expenditure of those they were fitted to",
        sources=(NASEM_2023,),
    ),
}


def _eer_table(is_male: bool) -> tuple[Coefficients, ...]:
    # These equations have one cell a sex: any age picks it.
    found = (e.coefficients(is_male, e.age_from_years) for e in EER_EQUATIONS.values())
    return tuple(coefficients for coefficients in found if coefficients)


_EER_TABLES = {False: _eer_table(False), True: _eer_table(True)}
EER_IDS = tuple(e.id for e in EER_EQUATIONS.values())
_CATEGORIES = tuple(EerCategory)
EER_SAMPLE = EER_EQUATIONS[EerCategory.INACTIVE]

_EER_AGE = "EER_FOR_ADULTS"
EER_YOUNG = say(_EER_AGE, from_years=EER_SAMPLE.age_from_years)


def between_categories(pal: float) -> tuple[int, float, float]:
    """The lower of the two categories that a PAL lies between, the share of the upper, and a factor outside them."""
    first, last = PAL_MIDDLES[0], PAL_MIDDLES[-1]
    if pal <= first:
        return 0, 0.0, pal / first
    if pal >= last:
        return len(PAL_MIDDLES) - 2, 1.0, pal / last
    low = bisect_right(PAL_MIDDLES, pal) - 1
    return low, (pal - PAL_MIDDLES[low]) / (PAL_MIDDLES[low + 1] - PAL_MIDDLES[low]), 1.0


def requirements(person: Person) -> tuple[list[float], list[float], float]:
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
