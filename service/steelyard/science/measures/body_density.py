"""Body density from skinfolds and girths, and body fat from density.

Densities in kg/L, skinfolds in mm, girths and height in cm, fat as a fraction 0-1. Every function takes one
person's floats, or arrays with ``ops=arrays()``.
"""

import math
from collections.abc import Mapping
from enum import StrEnum
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number
from ..person import Sex
from ..register import (
    BROZEK_1963,
    DURNIN_1974,
    HODGDON_1984_MEN,
    HODGDON_1984_WOMEN,
    JACKSON_1978,
    JACKSON_1980,
    SIRI_1961,
    Basis,
    OutOfDomain,
    constant,
    equation,
    traced,
)
from .linear_equations import every, plain, signed_sum

FAT_FRACTION_FROM = constant(
    "body_fat_domain_from",
    0.03,
    unit="1",
    summary="Body fat below which a computed value is taken for an input error",
    basis=Basis.JUDGEMENT,
)
FAT_FRACTION_TO = constant(
    "body_fat_domain_to",
    0.60,
    unit="1",
    summary="Body fat above which a computed value is taken for an input error",
    basis=Basis.JUDGEMENT,
)

# --- density to fat: fat % = a / density - b ---------------------------------------------------------------


class _TwoComponent(NamedTuple):
    a: float
    b: float

    @property
    def formula(self) -> str:
        return f"fat % = {self.a:g} / Db − {self.b:g}, Db in kg/L"


_SIRI = _TwoComponent(495.0, 450.0)
_BROZEK = _TwoComponent(457.0, 414.2)


@traced
@equation("siri", summary="Body fat from density (Siri)", formula=_SIRI.formula, sources=(SIRI_1961,))
def siri(density: Number) -> Number:
    """Fat fraction from body density in kg/L (Siri 1961). No check of the range."""
    return (_SIRI.a / density - _SIRI.b) / 100.0


@traced
@equation("brozek", summary="Body fat from density (Brozek)", formula=_BROZEK.formula, sources=(BROZEK_1963,))
def brozek(density: Number) -> Number:
    """Fat fraction from body density in kg/L (Brozek 1963). Above Siri below 16.3 % fat. No check of the range."""
    return (_BROZEK.a / density - _BROZEK.b) / 100.0


def checked_fat_fraction(fat_fraction: Number, field: str = "body_fat") -> Number:
    """The fraction itself. Raises OutOfDomain outside 0.03-0.60."""
    if not every((fat_fraction >= FAT_FRACTION_FROM) & (fat_fraction <= FAT_FRACTION_TO)):
        raise OutOfDomain(
            "BODY_FAT_OUTSIDE_DOMAIN",
            field,
            f"The measures give a body fat outside {FAT_FRACTION_FROM:.0%} to {FAT_FRACTION_TO:.0%}: check them.",
        )
    return fat_fraction


# --- girths: density = c - m log10(girths) + h log10(height) ------------------------------------------------


class _Girths(NamedTuple):
    c: float
    m: float
    h: float
    girths: str

    @property
    def formula(self) -> str:
        return f"Db = {self.c:g} − {self.m:g} log10({self.girths}) + {self.h:g} log10(H), cm; then Siri"

    def density(self, girth_cm: Number, height_cm: Number, ops: Elementwise) -> Number:
        if not every(girth_cm > 0.0):
            raise OutOfDomain(
                "GIRTHS_IMPOSSIBLE", "neck_cm", f"{self.girths} must be more than nothing: check the girths."
            )
        if not every(height_cm > 0.0):
            raise OutOfDomain("HEIGHT_IMPOSSIBLE", "height_cm", "The height must be more than nothing.")
        return self.c - self.m * _log10(girth_cm, ops) + self.h * _log10(height_cm, ops)


_GIRTHS_MEN = _Girths(1.0324, 0.19077, 0.15456, "abdomen − neck")
_GIRTHS_WOMEN = _Girths(1.29579, 0.35004, 0.22100, "waist + hip − neck")


def _log10(x: Number, ops: Elementwise) -> Number:
    return ops.log(x) / math.log(10.0)


@traced
@equation(
    "hodgdon_beckett_men",
    summary="Body density of men from abdomen at the navel, neck and height (SEE 3.5 % fat)",
    formula=_GIRTHS_MEN.formula,
    sources=(HODGDON_1984_MEN, SIRI_1961),
    valid_range="men from 18 y; abdomen girth at the navel",
)
def hodgdon_beckett_men(abdomen_cm: Number, neck_cm: Number, height_cm: Number, ops: Elementwise = FLOATS) -> Number:
    """Body density in kg/L. Raises OutOfDomain where the neck is not thinner than the abdomen."""
    return _GIRTHS_MEN.density(abdomen_cm - neck_cm, height_cm, ops)


@traced
@equation(
    "hodgdon_beckett_women",
    summary="Body density of women from waist, hip, neck and height (SEE 3.7 % fat)",
    formula=_GIRTHS_WOMEN.formula,
    sources=(HODGDON_1984_WOMEN, SIRI_1961),
    valid_range="women from 18 y; waist at the narrowest point, hip at the widest",
)
def hodgdon_beckett_women(
    waist_cm: Number, hip_cm: Number, neck_cm: Number, height_cm: Number, ops: Elementwise = FLOATS
) -> Number:
    """Body density in kg/L. Raises OutOfDomain for girths that give no logarithm."""
    return _GIRTHS_WOMEN.density(waist_cm + hip_cm - neck_cm, height_cm, ops)


# --- skinfolds --------------------------------------------------------------------------------------------


class SkinfoldMethod(StrEnum):
    """Which equation, hence which sites."""

    JACKSON_POLLOCK_3 = "jackson_pollock_3"
    JACKSON_POLLOCK_7 = "jackson_pollock_7"
    DURNIN_WOMERSLEY_4 = "durnin_womersley_4"


class _Quadratic(NamedTuple):
    """Density = c − b S + q S² − a age; the parabola turns up at b / 2q, so the sum is capped well below."""

    c: float
    b: float
    q: float
    a: float
    sites: tuple[str, ...]
    cap_mm: float

    @property
    def formula(self) -> str:
        terms = signed_sum((self.c, ""), (-self.b, "S"), (self.q, "S²"), (-self.a, "A"))
        return f"Db = {terms}, S = {' + '.join(self.sites)} in mm, S ≤ {plain(self.cap_mm)}"

    def density(self, sum_mm: Number, age_years: Number) -> Number:
        _check_sum(sum_mm, self.cap_mm)
        return self.c - self.b * sum_mm + self.q * sum_mm * sum_mm - self.a * age_years


def _cap(sites: str, value: float) -> float:
    return constant(
        f"skinfold_cap_{sites}",
        value,
        unit="mm",
        summary=f"Largest sum of skinfolds accepted, {sites.replace('_', ' ')}",
        basis=Basis.JUDGEMENT,
    )


_CAP_3, _CAP_7, _CAP_4 = _cap("3_sites", 150.0), _cap("7_sites", 300.0), _cap("4_sites", 210.0)
_SEVEN = ("chest", "midaxillary", "triceps", "subscapular", "abdomen", "suprailiac", "thigh")
_JP3 = _Quadratic(1.10938, 0.0008267, 0.0000016, 0.0002574, ("chest", "abdomen", "thigh"), _CAP_3)
_JP7 = _Quadratic(1.112, 0.00043499, 0.00000055, 0.00028826, _SEVEN, _CAP_7)
_JPW3 = _Quadratic(1.0994921, 0.0009929, 0.0000023, 0.0001392, ("triceps", "suprailiac", "thigh"), _CAP_3)
_JPW7 = _Quadratic(1.097, 0.00046971, 0.00000056, 0.00012828, _SEVEN, _CAP_7)
_MEN_18_61, _WOMEN_18_55 = "men 18-61 y", "women 18-55 y"


def _check_sum(sum_mm: Number, cap_mm: float) -> None:
    if not every((sum_mm > 0.0) & (sum_mm <= cap_mm)):
        raise OutOfDomain(
            "SKINFOLD_SUM_OUTSIDE_DOMAIN",
            "skinfolds_mm",
            f"The sum of skinfolds must be above 0 and at most {cap_mm:g} mm for this equation.",
        )


@traced
@equation(
    "jackson_pollock_3_men",
    summary="Body density of men from three skinfolds",
    formula=_JP3.formula,
    sources=(JACKSON_1978,),
    valid_range=_MEN_18_61,
)
def jackson_pollock_3_men(sum_mm: Number, age_years: Number) -> Number:
    """Body density in kg/L from chest, abdomen and thigh. Raises OutOfDomain for a sum over the cap."""
    return _JP3.density(sum_mm, age_years)


@traced
@equation(
    "jackson_pollock_7_men",
    summary="Body density of men from seven skinfolds",
    formula=_JP7.formula,
    sources=(JACKSON_1978,),
    valid_range=_MEN_18_61,
)
def jackson_pollock_7_men(sum_mm: Number, age_years: Number) -> Number:
    """Body density in kg/L from seven sites. Raises OutOfDomain for a sum over the cap."""
    return _JP7.density(sum_mm, age_years)


@traced
@equation(
    "jackson_pollock_ward_3_women",
    summary="Body density of women from three skinfolds",
    formula=_JPW3.formula,
    sources=(JACKSON_1980,),
    valid_range=_WOMEN_18_55,
)
def jackson_pollock_ward_3_women(sum_mm: Number, age_years: Number) -> Number:
    """Body density in kg/L from triceps, suprailiac and thigh. Raises OutOfDomain for a sum over the cap."""
    return _JPW3.density(sum_mm, age_years)


@traced
@equation(
    "jackson_pollock_ward_7_women",
    summary="Body density of women from seven skinfolds",
    formula=_JPW7.formula,
    sources=(JACKSON_1980,),
    valid_range=_WOMEN_18_55,
)
def jackson_pollock_ward_7_women(sum_mm: Number, age_years: Number) -> Number:
    """Body density in kg/L from seven sites. Raises OutOfDomain for a sum over the cap."""
    return _JPW7.density(sum_mm, age_years)


class _Band(NamedTuple):
    from_years: float
    c: float
    m: float


_DURNIN_SITES = ("biceps", "triceps", "subscapular", "suprailiac")
_DURNIN_MEN = (
    _Band(17, 1.1620, 0.0630),
    _Band(20, 1.1631, 0.0632),
    _Band(30, 1.1422, 0.0544),
    _Band(40, 1.1620, 0.0700),
    _Band(50, 1.1715, 0.0779),
)
_DURNIN_WOMEN = (
    _Band(16, 1.1549, 0.0678),
    _Band(20, 1.1599, 0.0717),
    _Band(30, 1.1423, 0.0632),
    _Band(40, 1.1333, 0.0612),
    _Band(50, 1.1339, 0.0645),
)


def _durnin_formula(who: str, bands: tuple[_Band, ...]) -> str:
    rows = "; ".join(f"from {b.from_years:g} y: {b.c:.4f} − {b.m:.4f} log10(S)" for b in bands)
    return f"{who}: Db = {rows}"


@traced
@equation(
    "durnin_womersley",
    summary="Body density from four skinfolds by sex and age band",
    formula=(
        f"{_durnin_formula('men', _DURNIN_MEN)}. {_durnin_formula('women', _DURNIN_WOMEN)}. "
        f"S = {' + '.join(_DURNIN_SITES)} in mm, S ≤ {plain(_CAP_4)}"
    ),
    sources=(DURNIN_1974,),
    valid_range="men 17-72 y, women 16-68 y; the first and last band are continued beyond",
)
def durnin_womersley(sum_mm: Number, age_years: Number, male: Number, ops: Elementwise = FLOATS) -> Number:
    """Body density in kg/L from the sum of four skinfolds. Raises OutOfDomain for a sum over the cap."""
    _check_sum(sum_mm, _CAP_4)
    log_sum = _log10(sum_mm, ops)
    columns = []
    for bands in (_DURNIN_WOMEN, _DURNIN_MEN):
        density: Number = bands[0].c - bands[0].m * log_sum
        for band in bands[1:]:
            density = ops.where(age_years >= band.from_years, band.c - band.m * log_sum, density)
        columns.append(density)
    return ops.where(male == 1.0, columns[1], columns[0])


def skinfold_sites(method: SkinfoldMethod, sex: Sex) -> tuple[str, ...]:
    """The sites a method needs. ``UNSPECIFIED`` needs those of both sexes."""
    if method is SkinfoldMethod.DURNIN_WOMERSLEY_4:
        return _DURNIN_SITES
    if method is SkinfoldMethod.JACKSON_POLLOCK_7:
        return _SEVEN
    if sex is Sex.UNSPECIFIED:
        return tuple(dict.fromkeys((*_JP3.sites, *_JPW3.sites)))
    return (_JP3 if sex is Sex.MALE else _JPW3).sites


def density_from_skinfolds(
    method: SkinfoldMethod, is_male: bool, skinfolds_mm: Mapping[str, float], age_years: float
) -> float:
    """Body density in kg/L from named sites in mm. Raises OutOfDomain for a missing site or a sum over the cap."""
    sites = skinfold_sites(method, Sex.MALE if is_male else Sex.FEMALE)
    for site in sites:
        if site not in skinfolds_mm:
            raise OutOfDomain("SKINFOLD_SITE_MISSING", site, f"This equation needs {', '.join(sites)}.")
    total = sum(skinfolds_mm[site] for site in sites)
    if method is SkinfoldMethod.DURNIN_WOMERSLEY_4:
        density: float = durnin_womersley(total, age_years, 1.0 if is_male else 0.0)
    elif method is SkinfoldMethod.JACKSON_POLLOCK_7:
        density = (jackson_pollock_7_men if is_male else jackson_pollock_ward_7_women)(total, age_years)
    else:
        density = (jackson_pollock_3_men if is_male else jackson_pollock_ward_3_women)(total, age_years)
    return density
