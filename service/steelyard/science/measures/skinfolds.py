"""Body density [kg/L] from sums of skinfolds [mm].

Every function takes one person's floats, or arrays with ``ops=arrays()``.
"""

from collections.abc import Mapping
from enum import StrEnum
from typing import NamedTuple, assert_never

from ..numbers import FLOATS, Elementwise, Number, every
from ..person import Sex
from ..register import (
    DURNIN_1974,
    JACKSON_1978,
    JACKSON_1980,
    Basis,
    Choice,
    OutOfDomain,
    constant,
    equation,
    traced,
)
from .body_density import log10
from .linear_equations import plain, signed_sum


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
_MEN_YEARS, _WOMEN_YEARS = (18.0, 61.0), (18.0, 55.0)
_MEN_18_61 = f"men {_MEN_YEARS[0]:g}-{_MEN_YEARS[1]:g} y"
_WOMEN_18_55 = f"women {_WOMEN_YEARS[0]:g}-{_WOMEN_YEARS[1]:g} y"


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
    log_sum = log10(sum_mm, ops)
    columns = []
    for bands in (_DURNIN_WOMEN, _DURNIN_MEN):
        density: Number = bands[0].c - bands[0].m * log_sum
        for band in bands[1:]:
            density = ops.where(age_years >= band.from_years, band.c - band.m * log_sum, density)
        columns.append(density)
    return ops.where(male == 1.0, columns[1], columns[0])


class SkinfoldEquation(NamedTuple):
    """An equation for one sex: its id in the catalogue, the years of age it was published for (both ends included),
    and its sites."""

    id: str
    ages: tuple[float, float]
    sites: tuple[str, ...]


_WOMEN: Choice[SkinfoldMethod, SkinfoldEquation] = Choice(
    {
        SkinfoldMethod.JACKSON_POLLOCK_3: SkinfoldEquation("jackson_pollock_ward_3_women", _WOMEN_YEARS, _JPW3.sites),
        SkinfoldMethod.JACKSON_POLLOCK_7: SkinfoldEquation("jackson_pollock_ward_7_women", _WOMEN_YEARS, _JPW7.sites),
        SkinfoldMethod.DURNIN_WOMERSLEY_4: SkinfoldEquation("durnin_womersley", (16.0, 68.0), _DURNIN_SITES),
    }
)
_MEN: Choice[SkinfoldMethod, SkinfoldEquation] = Choice(
    {
        SkinfoldMethod.JACKSON_POLLOCK_3: SkinfoldEquation("jackson_pollock_3_men", _MEN_YEARS, _JP3.sites),
        SkinfoldMethod.JACKSON_POLLOCK_7: SkinfoldEquation("jackson_pollock_7_men", _MEN_YEARS, _JP7.sites),
        SkinfoldMethod.DURNIN_WOMERSLEY_4: SkinfoldEquation("durnin_womersley", (17.0, 72.0), _DURNIN_SITES),
    }
)


def skinfold_equation(method: SkinfoldMethod, is_male: bool) -> SkinfoldEquation:
    """The equation that a method has for a sex."""
    return (_MEN if is_male else _WOMEN)[method]


def skinfold_sites(method: SkinfoldMethod, sex: Sex) -> tuple[str, ...]:
    """The sites a method needs. ``UNSPECIFIED`` needs those of both sexes."""
    if sex is Sex.UNSPECIFIED:
        return tuple(dict.fromkeys((*_MEN[method].sites, *_WOMEN[method].sites)))
    return skinfold_equation(method, sex is Sex.MALE).sites


def density_from_skinfolds(
    method: SkinfoldMethod, is_male: bool, skinfolds_mm: Mapping[str, float], age_years: float
) -> float:
    """Body density in kg/L from named sites in mm. Raises OutOfDomain for a missing site or a sum over the cap."""
    sites = skinfold_equation(method, is_male).sites
    for site in sites:
        if site not in skinfolds_mm:
            raise OutOfDomain(
                "SKINFOLD_SITE_MISSING",
                site,
                f"The {site} skinfold is missing: this equation needs {', '.join(sites)}.",
            )
    total = sum(skinfolds_mm[site] for site in sites)
    density: float
    match method:
        case SkinfoldMethod.DURNIN_WOMERSLEY_4:
            density = durnin_womersley(total, age_years, 1.0 if is_male else 0.0)
        case SkinfoldMethod.JACKSON_POLLOCK_7:
            density = (jackson_pollock_7_men if is_male else jackson_pollock_ward_7_women)(total, age_years)
        case SkinfoldMethod.JACKSON_POLLOCK_3:
            density = (jackson_pollock_3_men if is_male else jackson_pollock_ward_3_women)(total, age_years)
        case _:
            assert_never(method)
    return density
