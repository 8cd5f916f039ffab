"""What body mass and height tell: body mass index, fat-free mass index, and body fat where none was measured.

Every equation takes one person's floats, or arrays (``ops=arrays()`` where a logarithm is needed). Masses kg,
heights cm, body fat a fraction 0-1.
"""

from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number
from ..person import Sex
from ..register import (
    DEURENBERG_1991,
    GALLAGHER_2000,
    JACKSON_2002,
    KOURI_1995,
    Basis,
    Kind,
    Message,
    constant,
    equation,
    say,
    traced,
)
from .body_density import FAT_FRACTION_FROM, FAT_FRACTION_TO
from .linear_equations import plain, signed_sum

# --- body mass index, fat-free mass index ------------------------------------------------------------------


def bmi(weight_kg: Number, height_cm: Number) -> Number:
    """Body mass index in kg/m²."""
    return weight_kg / (height_cm / 100.0) ** 2


_FFMI_SLOPE = constant(
    "ffmi_height_slope",
    6.3,
    unit="kg/m³",
    summary="Rise of the fat-free mass index for each metre below the reference height",
    sources=(KOURI_1995,),
)
_FFMI_HEIGHT_M = constant(
    "ffmi_reference_height",
    1.8,
    unit="m",
    summary="Height to which the fat-free mass index is normalised",
    sources=(KOURI_1995,),
)
FFMI_UNUSUAL_MEN = constant(
    "ffmi_unusual_men",
    27.0,
    unit="kg/m²",
    summary="Fat-free mass index above which a man's figures are worth a second look",
    basis=Basis.JUDGEMENT,
    sources=(KOURI_1995,),
)
FFMI_UNUSUAL_WOMEN = constant(
    "ffmi_unusual_women",
    23.0,
    unit="kg/m²",
    summary="Fat-free mass index above which a woman's figures are worth a second look",
    basis=Basis.JUDGEMENT,
)
_FFMI_HIGH = "FAT_FREE_MASS_INDEX_UNUSUAL"


@equation("ffmi", summary="Fat-free mass index", formula="FFM / H(m)² kg/m²", sources=(KOURI_1995,))
def ffmi(weight_kg: Number, height_cm: Number, fat_fraction: Number) -> Number:
    """Fat-free mass index in kg/m²."""
    return bmi(weight_kg, height_cm) * (1.0 - fat_fraction)


@equation(
    "ffmi_normalised",
    summary="Fat-free mass index normalised to a height of 1.80 m",
    formula=f"FFMI + {_FFMI_SLOPE:g} ({_FFMI_HEIGHT_M:g} − H(m)) kg/m²",
    sources=(KOURI_1995,),
)
def ffmi_normalised(weight_kg: Number, height_cm: Number, fat_fraction: Number) -> Number:
    """Fat-free mass index in kg/m², normalised to 1.80 m."""
    return ffmi(weight_kg, height_cm, fat_fraction) + _FFMI_SLOPE * (_FFMI_HEIGHT_M - height_cm / 100.0)


@traced
def ffmi_notes(sex: Sex, value: float) -> tuple[Message, ...]:
    """A request to check the entries when the index is one that few reach; never more than that."""
    limit = FFMI_UNUSUAL_WOMEN if sex is Sex.FEMALE else FFMI_UNUSUAL_MEN
    return (say(_FFMI_HIGH, ffmi=value, limit=limit),) if value > limit else ()


# --- body fat from body mass index: the last resort --------------------------------------------------------


class _Deurenberg(NamedTuple):
    bmi: float = 1.20
    age: float = 0.23
    male: float = -10.8
    constant: float = -5.4


class _Gallagher(NamedTuple):
    constant: float = 64.5
    inverse: float = -848.0
    age: float = 0.079
    male: float = -16.4
    male_age: float = 0.05
    male_inverse: float = 39.0


class _Jackson(NamedTuple):
    age: float
    log_bmi: float
    constant: float

    @property
    def formula(self) -> str:
        return signed_sum((self.age, "A"), (self.log_bmi, "ln BMI"), (self.constant, ""))


_D, _G = _Deurenberg(), _Gallagher()
_JACKSON_MEN, _JACKSON_WOMEN = _Jackson(0.14, 37.31, -103.94), _Jackson(0.14, 39.96, -102.01)


@equation(
    "deurenberg_bmi",
    summary="Body fat of adults from BMI, age and sex (SEE 4.1 % fat); 8 points too high in athletes",
    formula=f"fat % = {signed_sum((_D.bmi, 'BMI'), (_D.age, 'A'), (_D.male, 's'), (_D.constant, ''))}",
    sources=(DEURENBERG_1991,),
    valid_range="adults",
)
def deurenberg_bmi(bmi_kg_m2: Number, age_years: Number, male: Number) -> Number:
    """Fat fraction from BMI; ``male`` 1 or 0. No check of the range."""
    return (_D.bmi * bmi_kg_m2 + _D.age * age_years + _D.male * male + _D.constant) / 100.0


@equation(
    "gallagher_bmi",
    summary="Body fat from BMI, age and sex (SEE 2.8-5.4 % fat across models)",
    formula="fat % = "
    + signed_sum(
        (_G.constant, ""),
        (_G.inverse, "/ BMI"),
        (_G.age, "A"),
        (_G.male, "s"),
        (_G.male_age, "s A"),
        (_G.male_inverse, "s / BMI"),
    ),
    sources=(GALLAGHER_2000,),
    valid_range="adults not of Asian descent, BMI up to 35",
)
def gallagher_bmi(bmi_kg_m2: Number, age_years: Number, male: Number) -> Number:
    """Fat fraction from BMI; ``male`` 1 or 0. No check of the range."""
    inverse = (_G.inverse + _G.male_inverse * male) / bmi_kg_m2
    return (_G.constant + inverse + (_G.age + _G.male_age * male) * age_years + _G.male * male) / 100.0


@equation(
    "jackson_bmi",
    summary="Body fat from BMI, age and sex; the starting fat of the dynamic model in its paper",
    formula=f"fat % = men {_JACKSON_MEN.formula}; women {_JACKSON_WOMEN.formula}",
    sources=(JACKSON_2002,),
    valid_range="adults",
)
def jackson_bmi(bmi_kg_m2: Number, age_years: Number, male: Number, ops: Elementwise = FLOATS) -> Number:
    """Fat fraction from BMI; ``male`` 1 or 0. No check of the range."""
    log_bmi = ops.log(bmi_kg_m2)
    men, women = (
        (p.age * age_years + p.log_bmi * log_bmi + p.constant) / 100.0 for p in (_JACKSON_MEN, _JACKSON_WOMEN)
    )
    return ops.where(male == 1.0, men, women)


@equation(
    "body_fat_from_bmi",
    summary="Body fat where none was measured: mean of three equations on BMI, age and sex",
    formula=(
        "mean of deurenberg_bmi, gallagher_bmi and jackson_bmi, kept within "
        f"{plain(FAT_FRACTION_FROM)}-{plain(FAT_FRACTION_TO)}"
    ),
    basis=Basis.JUDGEMENT,
    sources=(DEURENBERG_1991, GALLAGHER_2000, JACKSON_2002),
    kind=Kind.MODEL,
)
def fat_fraction_from_bmi(
    weight_kg: Number, height_cm: Number, age_years: Number, male: Number, ops: Elementwise = FLOATS
) -> Number:
    """Fat fraction from mass, height, age and sex (``male`` 1 or 0). Much too high for muscular people."""
    index = bmi(weight_kg, height_cm)
    mean = (
        deurenberg_bmi(index, age_years, male)
        + gallagher_bmi(index, age_years, male)
        + jackson_bmi(index, age_years, male, ops)
    ) / 3.0
    return ops.minimum(ops.maximum(mean, FAT_FRACTION_FROM), FAT_FRACTION_TO)
