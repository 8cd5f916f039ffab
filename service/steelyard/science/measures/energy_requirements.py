"""The reference equations: total expenditure by doubly labelled water, in four categories of activity.

Those under 19 years have equations of their own, with what growth stores.
"""

from bisect import bisect_right
from enum import StrEnum

from msgspec import structs

from ..person import Person, Sex
from ..register import HEALTH_CANADA_DRI, NASEM_2023, Basis, constant, say
from .linear_equations import Coefficients, LinearEquation, Terms, by_sex_and_age, define, weighted_sums


class EerCategory(StrEnum):
    """Physical activity categories of the estimated energy requirement, by PAL."""

    INACTIVE = "inactive"
    LOW_ACTIVE = "low_active"
    ACTIVE = "active"
    VERY_ACTIVE = "very_active"


_ADULT_YEARS = 19.0
_BANDS = (9.0, 14.0, _ADULT_YEARS)  # 9-13, 14-18, and 19 completed years or more
# Energy that growth stores a day [kcal/d], in the first two bands.
_GROWTH_BOYS, _GROWTH_GIRLS = (25.0, 20.0), (30.0, 20.0)


def _growing(terms: Terms, growth: tuple[float, float]) -> tuple[Terms, ...]:
    return tuple(structs.replace(terms, constant=terms.constant + stored) for stored in growth)


def _eer(category: EerCategory, men: Terms, women: Terms, boys: Terms, girls: Terms) -> LinearEquation:
    return define(
        LinearEquation(
            id=f"eer_{category}",
            summary=f"Estimated energy requirement, {category.replace('_', ' ')}",
            cells=by_sex_and_age(
                _BANDS, men=(*_growing(boys, _GROWTH_BOYS), men), women=(*_growing(girls, _GROWTH_GIRLS), women)
            ),
            sources=(NASEM_2023, HEALTH_CANADA_DRI),
            age_from_years=_BANDS[0],
            age_to_years=100,
            population="total expenditure by doubly labelled water; under 19 years what growth stores is in it (25 "
            "kcal/d in boys and 30 in girls of 9-13 years, then 20)",
        )
    )


# Adults: three transcriptions agree; boys and girls: two do. The report itself was not open.
EER_EQUATIONS: dict[EerCategory, LinearEquation] = {
    EerCategory.INACTIVE: _eer(
        EerCategory.INACTIVE,
        men=Terms(constant=753.07, age_years=-10.83, height_cm=6.50, weight_kg=14.10),
        women=Terms(constant=584.90, age_years=-7.01, height_cm=5.72, weight_kg=11.71),
        boys=Terms(constant=-447.51, age_years=3.68, height_cm=13.01, weight_kg=13.15),
        girls=Terms(constant=55.59, age_years=-22.25, height_cm=8.43, weight_kg=17.07),
    ),
    EerCategory.LOW_ACTIVE: _eer(
        EerCategory.LOW_ACTIVE,
        men=Terms(constant=581.47, age_years=-10.83, height_cm=8.30, weight_kg=14.94),
        women=Terms(constant=575.77, age_years=-7.01, height_cm=6.60, weight_kg=12.14),
        boys=Terms(constant=19.12, age_years=3.68, height_cm=8.62, weight_kg=20.28),
        girls=Terms(constant=-297.54, age_years=-22.25, height_cm=12.77, weight_kg=14.73),
    ),
    EerCategory.ACTIVE: _eer(
        EerCategory.ACTIVE,
        men=Terms(constant=1004.82, age_years=-10.83, height_cm=6.52, weight_kg=15.91),
        women=Terms(constant=710.25, age_years=-7.01, height_cm=6.54, weight_kg=12.34),
        boys=Terms(constant=-388.19, age_years=3.68, height_cm=12.66, weight_kg=20.46),
        girls=Terms(constant=-189.55, age_years=-22.25, height_cm=11.74, weight_kg=18.34),
    ),
    EerCategory.VERY_ACTIVE: _eer(
        EerCategory.VERY_ACTIVE,
        men=Terms(constant=-517.88, age_years=-10.83, height_cm=15.61, weight_kg=19.11),
        women=Terms(constant=511.83, age_years=-7.01, height_cm=9.07, weight_kg=12.56),
        boys=Terms(constant=-671.75, age_years=3.68, height_cm=15.38, weight_kg=23.25),
        girls=Terms(constant=-709.59, age_years=-22.25, height_cm=18.22, weight_kg=14.25),
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
# and 2.03 (NASEM 2023, 19-70 years). The categories of the young begin at other levels, which were not seen: those of
# adults are taken (our judgement).
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


def _eer_table(is_male: bool, age_years: float) -> tuple[Coefficients, ...]:
    found = (e.coefficients(is_male, age_years) for e in EER_EQUATIONS.values())
    return tuple(coefficients for coefficients in found if coefficients)


_EER_TABLES = {sex: tuple(_eer_table(sex, age) for age in _BANDS) for sex in (False, True)}
EER_IDS = tuple(e.id for e in EER_EQUATIONS.values())
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
    sex = person.sex
    if sex is not Sex.UNSPECIFIED:
        values = _values(person, sex is Sex.MALE)
        return values, _errors(person, values, sex is Sex.MALE), _EER_SPREAD[sex is Sex.MALE]
    women, men = _values(person, False), _values(person, True)
    values = [(woman + man) / 2.0 for woman, man in zip(women, men, strict=True)]
    of_either = zip(_errors(person, women, False), _errors(person, men, True), strict=True)
    errors = [
        (of_woman + of_man + abs(man - woman)) / 2.0
        for (of_woman, of_man), woman, man in zip(of_either, women, men, strict=True)
    ]
    apart = abs(men[1] - women[1]) / 2.0 / values[1]
    return values, errors, (_EER_SPREAD[True] + _EER_SPREAD[False]) / 2.0 + apart


def _values(person: Person, is_male: bool) -> list[float]:
    """The requirement of a sex in every category [kcal/d]."""
    age = person.age_years
    table = _EER_TABLES[is_male][max(0, bisect_right(_BANDS, age) - 1)]
    return weighted_sums(table, person.weight_kg, person.height_cm, age, 0.0, 0.0)


def _errors(person: Person, values: list[float], is_male: bool) -> list[float]:
    """Their standard errors [kcal/d]: of the young as large a part of each as of adults (our judgement)."""
    if person.age_years >= _ADULT_YEARS:
        return [EER_ERROR_MEN if is_male else EER_ERROR_WOMEN] * len(values)
    return [_EER_SPREAD[is_male] * value for value in values]
