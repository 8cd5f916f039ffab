"""Prediction equations that are sums of a coefficient times a body measure, held as data.

The same coefficients give the number and the formula text of the catalogue entry, so the two cannot part.
Bands of age are half-open, [from, until): the papers write 18-30, 30-60 and leave the edge to the reader.
Below its first band and above its last an equation continues that band; whether it may be used there is
the matter of ``age_from_years`` and ``age_to_years``.
"""

import math
from collections.abc import Sequence
from enum import StrEnum

import msgspec

from ..body import KJ_PER_KCAL
from ..numbers import FLOATS, Elementwise, Number, compiled
from ..person import Sex
from ..register import (
    Basis,
    Entry,
    Kind,
    Source,
    register,
)


class EnergyUnit(StrEnum):
    """The unit in which a paper gives its equation."""

    KCAL_PER_DAY = "kcal/d"
    MJ_PER_DAY = "MJ/d"


_KCAL = {EnergyUnit.KCAL_PER_DAY: 1.0, EnergyUnit.MJ_PER_DAY: 1000.0 / KJ_PER_KCAL}


class Audience(StrEnum):
    """Whom an equation was made for."""

    GENERAL = "general"
    UNTRAINED = "untrained"  # measured on people who are not athletes
    TRAINED = "trained"  # measured on athletes, or favoured for them
    EXPERIENCED = "experienced"  # measured on muscular athletes


# constant, per kg, per cm, per year, per kg fat-free mass, per kg fat mass: in kcal/d
Coefficients = tuple[float, float, float, float, float, float]


class Terms(msgspec.Struct, frozen=True, kw_only=True):
    """The coefficients as printed: each multiplies the measure it is named for (``male`` is added for men)."""

    weight_kg: float = 0.0
    ffm_kg: float = 0.0
    fat_mass_kg: float = 0.0
    height_cm: float = 0.0
    height_m: float = 0.0
    age_years: float = 0.0
    male: float = 0.0
    constant: float = 0.0

    @property
    def formula(self) -> str:
        """The sum as text, in the unit of the equation."""
        return signed_sum(
            (self.weight_kg, "W"),
            (self.ffm_kg, "FFM"),
            (self.fat_mass_kg, "FM"),
            (self.height_cm, "H"),
            (self.height_m, "H(m)"),
            (self.age_years, "A"),
            (self.male, "s"),
            (self.constant, ""),
        )

    def coefficients(self, is_male: bool, unit: EnergyUnit) -> Coefficients:
        """The coefficients of this sum for one sex, in kcal/d and with height in cm."""
        k = _KCAL[unit]
        return (
            k * (self.constant + (self.male if is_male else 0.0)),
            k * self.weight_kg,
            k * (self.height_cm + self.height_m / 100.0),
            k * self.age_years,
            k * self.ffm_kg,
            k * self.fat_mass_kg,
        )


def signed_sum(*terms: tuple[float, str]) -> str:
    """``a X + b Y − c`` from pairs of coefficient and symbol; zero coefficients are left out.

    >>> signed_sum((10, "W"), (-5, "A"), (0, "H"), (5, ""))
    '10 W − 5 A + 5'
    """
    text = ""
    for value, symbol in terms:
        if value == 0.0:
            continue
        sign = "−" if value < 0 else "+"
        lead = f" {sign} " if text else ("−" if value < 0 else "")
        text += f"{lead}{plain(abs(value))} {symbol}".rstrip()
    return text or "0"


def plain(value: float) -> str:
    """A coefficient as the papers print it, without exponent.

    >>> plain(0.00000055)
    '0.00000055'
    """
    text = f"{value:.10f}".rstrip("0").rstrip(".")
    return text.replace("-", "−")


@compiled
def weighted_sums(
    table: Sequence[Coefficients],
    weight_kg: Number,
    height_cm: Number,
    age_years: Number,
    ffm_kg: Number,
    fat_mass_kg: Number,
    *,
    ops: Elementwise = FLOATS,
) -> list[Number]:
    """What equations give for the same measures [kcal/d], of one person or of many as arrays.

    Measures that an equation does not use have a zero coefficient: pass 0 if unknown.
    """
    found: list[Number] = []
    for c, w, h, a, lean, fat in table:
        found.append(c + w * weight_kg + h * height_cm + a * age_years + lean * ffm_kg + fat * fat_mass_kg)
    return found


class Cell(msgspec.Struct, frozen=True, kw_only=True):
    """One cell of a table of equations: a sex (``None``: both) and an age band [from, until) in years."""

    terms: Terms
    sex: Sex | None = None
    from_years: float = 0.0
    until_years: float = math.inf

    @property
    def label(self) -> str:
        """For whom, in words; empty for everyone."""
        sex = {Sex.MALE: "men", Sex.FEMALE: "women"}.get(self.sex, "") if self.sex else ""
        if self.from_years == 0.0 and math.isinf(self.until_years):
            return sex
        end = "+" if math.isinf(self.until_years) else f"-{self.until_years:g}"
        return f"{sex} {self.from_years:g}{end} y".strip()


class LinearEquation(msgspec.Struct, frozen=True, kw_only=True):
    """A published linear equation of energy expenditure.

    ``age_from_years`` and ``age_to_years`` are the ages studied, in completed years (19-78 holds until the
    79th birthday). ``cells`` are ordered by age within a sex.
    """

    id: str
    summary: str
    cells: tuple[Cell, ...]
    sources: tuple[Source, ...]
    age_from_years: float
    age_to_years: float
    population: str
    audience: Audience = Audience.GENERAL
    unit: EnergyUnit = EnergyUnit.KCAL_PER_DAY
    basis: Basis = Basis.PUBLISHED

    @property
    def formula(self) -> str:
        """The whole equation as text, one clause a cell, with its unit and symbols."""
        clauses = [f"{c.label}: {c.terms.formula}" if c.label else c.terms.formula for c in self.cells]
        uses_sex = any(c.terms.male for c in self.cells)
        return f"{'; '.join(clauses)} {self.unit}" + (" (s = 1 for men, 0 for women)" if uses_sex else "")

    @property
    def needs_body_fat(self) -> bool:
        """Whether fat-free or fat mass enters."""
        return any(c.terms.ffm_kg or c.terms.fat_mass_kg for c in self.cells)

    def holds_at(self, age_years: float) -> bool:
        """Whether the age was studied."""
        return self.age_from_years <= age_years < self.age_to_years + 1.0

    def coefficients(self, is_male: bool, age_years: float) -> Coefficients | None:
        """Coefficients in kcal/d of the cell that serves this person; ``None``: not made for this sex."""
        cells = self._cells(is_male)
        if not cells:
            return None
        chosen = cells[0]
        for cell in cells:
            if age_years >= cell.from_years:
                chosen = cell
        return chosen.terms.coefficients(is_male, self.unit)

    def _cells(self, is_male: bool) -> list[Cell]:
        sex = Sex.MALE if is_male else Sex.FEMALE
        return [cell for cell in self.cells if cell.sex is None or cell.sex is sex]


def define(equation: LinearEquation) -> LinearEquation:
    """Register an equation in the catalogue and return it."""
    register(
        Entry(
            id=equation.id,
            kind=Kind.EQUATION,
            summary=equation.summary,
            formula=equation.formula,
            basis=equation.basis,
            sources=equation.sources,
            valid_range=(
                f"{equation.age_from_years:g}-{equation.age_to_years:g} y; {equation.population}. "
                "W kg, H cm, H(m) m, A years, FFM and FM kg; age bands are half-open"
            ),
        )
    )
    return equation


def by_sex(men: Terms, women: Terms) -> tuple[Cell, ...]:
    """Cells of an equation with one sum for each sex."""
    return (Cell(sex=Sex.MALE, terms=men), Cell(sex=Sex.FEMALE, terms=women))


def by_sex_and_age(edges: tuple[float, ...], men: tuple[Terms, ...], women: tuple[Terms, ...]) -> tuple[Cell, ...]:
    """Cells of a table with one row for each age band, bands starting at ``edges``."""
    untils = (*edges[1:], math.inf)
    return tuple(
        Cell(sex=sex, from_years=start, until_years=end, terms=terms)
        for sex, column in ((Sex.MALE, men), (Sex.FEMALE, women))
        for start, end, terms in zip(edges, untils, column, strict=True)
    )
