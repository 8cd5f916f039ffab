"""Body fat (a fraction 0-1) from body density [kg/L], and the range of body fat that is believed."""

import math
from typing import NamedTuple

from ..numbers import Elementwise, Number, every
from ..register import (
    BROZEK_1963,
    SIRI_1961,
    Basis,
    OutOfDomain,
    constant,
    equation,
    traced,
)

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


def log10(x: Number, ops: Elementwise) -> Number:
    """The common logarithm, in which densities are published."""
    return ops.log(x) / math.log(10.0)
