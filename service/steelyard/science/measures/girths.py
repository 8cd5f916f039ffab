"""Body density [kg/L] from girths and height [cm].

Every function takes one person's floats, or arrays with ``ops=arrays()``.
"""

from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number, every
from ..register import (
    HODGDON_1984_MEN,
    HODGDON_1984_WOMEN,
    SIRI_1961,
    OutOfDomain,
    equation,
    traced,
)
from .body_density import log10

# density = c - m log10(girths) + h log10(height)


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
                "GIRTHS_IMPOSSIBLE", "neck_cm", f"With these girths {self.girths} is not above 0: measure them again."
            )
        if not every(height_cm > 0.0):
            raise OutOfDomain("HEIGHT_IMPOSSIBLE", "height_cm", "The height must be more than nothing.")
        return self.c - self.m * log10(girth_cm, ops) + self.h * log10(height_cm, ops)


_GIRTHS_MEN = _Girths(1.0324, 0.19077, 0.15456, "abdomen − neck")
_GIRTHS_WOMEN = _Girths(1.29579, 0.35004, 0.22100, "waist + hip − neck")


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
