"""Body fat with its error, from whatever was measured, and the healthy ranges.

The error of a method has two parts: a bias that a person's repeated readings share, and a day-to-day part
that averaging shrinks. Body fat is a fraction 0-1 throughout, masses kg, heights cm.
"""

import math
from enum import StrEnum
from typing import NamedTuple

import msgspec

from ..numbers import Estimate
from ..person import BodyFatMethod, Person, Sex, TrainingStatus
from ..register import (
    DAS_2003,
    FAGERBERG_2018,
    FRIEDL_1994,
    GALLAGHER_2000,
    GOMEZ_AMBROSI_2012,
    HEO_2012,
    JACKSON_1978,
    MOON_2007,
    MOON_2008,
    PETERSON_2011,
    ROBERTS_1998,
    VAN_DER_PLOEG_2003,
    Basis,
    Choice,
    Kind,
    Source,
    constant,
    equation,
    source,
    traced,
)
from .body_density import checked_fat_fraction
from .body_mass_index import bmi, fat_fraction_from_bmi

# --- the error of a method -----------------------------------------------------------------------------------


JOHNSON_1996 = source(
    "johnson_1996",
    "Johnson RW. Fitting percentage of body fat to simple body measurements. J Stat Educ 1996;4(1): 252 men with "
    "girths and underwater weighing",
    "10.1080/10691898.1996.11910505",
)


class MethodError(NamedTuple):
    """Errors of a body-fat method, one standard deviation as a fraction of body mass.

    ``sd`` is that of a single reading; ``day_to_day_sd`` the part of it that differs between repeats. The rest is a
    bias. ``shape_loading`` is the correlation, 0-1, of that bias with what all methods that judge a body by its shape
    or size get wrong together: the biases of two methods correlate by the product of their loadings.
    """

    sd: float
    day_to_day_sd: float
    shape_loading: float

    @property
    def bias_sd(self) -> float:
        """The part that the repeated readings of one person share."""
        return math.sqrt(self.sd * self.sd - self.day_to_day_sd * self.day_to_day_sd)

    def widened(self, factor: float) -> "MethodError":
        """An error with the bias ``factor`` times as large; what differs between repeats stays."""
        return self._replace(sd=math.hypot(factor * self.bias_sd, self.day_to_day_sd))


def _error(
    method: BodyFatMethod, sd: float, day_to_day_sd: float, shape_loading: float, spread: str, *sources: Source
) -> MethodError:
    name = method.replace("_", " ")
    whole = constant(
        f"body_fat_error_{method}",
        sd,
        unit="1",
        summary=f"Error of one body-fat reading, {name} (1 SD, {spread})",
        basis=Basis.PUBLISHED if sources else Basis.FROM_MEMORY,
        sources=sources,
    )
    by_day = constant(
        f"body_fat_repeatability_{method}",
        day_to_day_sd,
        unit="1",
        summary=f"Day-to-day part of that error, {name} (1 SD)",
        basis=Basis.FROM_MEMORY if method is BodyFatMethod.DXA else Basis.JUDGEMENT,
    )
    is_from_data = method in (BodyFatMethod.GIRTHS, BodyFatMethod.BMI_EQUATION)
    shared = constant(
        f"body_fat_shape_loading_{method}",
        shape_loading,
        unit="1",
        summary=f"Correlation of the bias of {name} with the error that methods going by shape and size share",
        basis=Basis.PUBLISHED if is_from_data else Basis.JUDGEMENT,
        sources=(JOHNSON_1996,) if is_from_data else (),
    )
    return MethodError(whole, by_day, shared)


# Girths: the root mean square error in the 249 sound men of the open data is 5.0 points, 4.2 once the error of
# underwater weighing itself is taken off. That of the mean of the BMI equations is 6.6, then 6.0; the errors of girths
# and of BMI correlate by 0.81 (about their means) to 0.87 (about zero): 0.9 each.
_OWN_ERROR_OFF = "in men with underwater weighing, whose own error is taken off"
METHOD_ERRORS: dict[BodyFatMethod, MethodError] = Choice(
    (method, _error(method, sd, day_to_day_sd, shape_loading, spread, *sources))
    for method, sd, day_to_day_sd, shape_loading, spread, *sources in (
        (BodyFatMethod.FOUR_COMPARTMENT, 0.0125, 0.008, 0.0, "1-1.5 points"),
        (BodyFatMethod.DXA, 0.025, 0.010, 0.0, "1.8 points too low with a spread of 1.6", VAN_DER_PLOEG_2003),
        (BodyFatMethod.AIR_DISPLACEMENT, 0.025, 0.012, 0.0, "2.3 and 2.7 points", MOON_2007, MOON_2008),
        (BodyFatMethod.HYDROSTATIC, 0.027, 0.010, 0.0, "2.5-3 points"),
        (BodyFatMethod.SKINFOLDS, 0.035, 0.010, 0.6, "0.0077 g/ml or 3.4 points in skilled hands", JACKSON_1978),
        (BodyFatMethod.GIRTHS, 0.042, 0.010, 0.9, _OWN_ERROR_OFF, JOHNSON_1996),
        (BodyFatMethod.BIOIMPEDANCE, 0.050, 0.015, 0.6, "5.1-5.4 points, some of it the reference's", PETERSON_2011),
        (BodyFatMethod.VISUAL, 0.050, 0.015, 0.6, "4-6 points"),
        (BodyFatMethod.BMI_EQUATION, 0.060, 0.002, 0.9, _OWN_ERROR_OFF, JOHNSON_1996),
    )
)
BMI_ERROR_TRAINED = constant(
    "body_fat_error_bmi_trained",
    0.08,
    unit="1",
    summary="Error of body fat from BMI in people who train (1 SD; about 8 points too high in athletes)",
    basis=Basis.JUDGEMENT,
)
_ERRORS_TRAINED = Choice(
    {BodyFatMethod.BMI_EQUATION: METHOD_ERRORS[BodyFatMethod.BMI_EQUATION]._replace(sd=BMI_ERROR_TRAINED)}
)


# --- outside the range in which an equation was published ---------------------------------------------------------

ADULTS = (18.0, math.inf)  # years of age, both ends included, as in the ``valid_range`` of each equation
BMI_TO = 35.0  # of the narrowest of the three
OUTSIDE_FACTOR = constant(
    "body_fat_outside_range_factor",
    1.5,
    unit="1",
    summary="How many times larger the bias of a body-fat equation is taken outside its published range. For the mean "
    "of the BMI equations 1.25 would do: it runs 2 points over scans at a BMI of 40 (Heo 2012) and 6 over three "
    "compartments at 49 (Das 2003), with a spread of 4.7 between people (Gómez-Ambrosi 2012)",
    basis=Basis.JUDGEMENT,
    sources=(HEO_2012, DAS_2003, GOMEZ_AMBROSI_2012),
)


@traced
@equation(
    "body_fat_outside_range",
    kind=Kind.RULE,
    summary="Body fat by an equation outside its published range: answered with a wider interval",
    formula=f"outside the range of ages, or BMI above {BMI_TO:g} for the BMI equations: bias × {OUTSIDE_FACTOR:g}",
    basis=Basis.JUDGEMENT,
)
def widened(error: MethodError) -> MethodError:
    """The error of an equation outside its range."""
    return error.widened(OUTSIDE_FACTOR)


def bmi_error(weight_kg: float, height_cm: float, age_years: float, status: TrainingStatus) -> MethodError:
    """The error of body fat from BMI in a person: larger under age, and above the BMI that it was published for."""
    error = method_error(BodyFatMethod.BMI_EQUATION, status)
    if not ADULTS[0] <= age_years <= ADULTS[1]:
        error = widened(error)
    return widened(error) if bmi(weight_kg, height_cm) > BMI_TO else error


class FatEstimate(Estimate, frozen=True, kw_only=True):
    """Body fat (fraction 0-1) as a mean and SD, the method that counts most, and whether a reading is behind it.

    ``is_measured`` is false only for body fat computed from BMI: never plan a loss of fat from that alone.
    """

    method: BodyFatMethod
    is_measured: bool


def method_error(method: BodyFatMethod, status: TrainingStatus) -> MethodError:
    """The error of a method in a person of this training status."""
    is_trained = status is not TrainingStatus.UNTRAINED
    return _ERRORS_TRAINED[method] if is_trained and method in _ERRORS_TRAINED else METHOD_ERRORS[method]


def fat_estimate(person: Person) -> FatEstimate:
    """Body fat of a person: their reading with its error, or the BMI-based value with a wide one.

    Raises OutOfDomain for a reading outside 0.03-0.60.
    """
    reading, status = person.body_fat, person.training.status
    if reading is not None:
        error = method_error(reading.method, status)
        value = checked_fat_fraction(reading.fat_fraction, "fat_fraction")
        is_measured = reading.method is not BodyFatMethod.BMI_EQUATION
        return FatEstimate(value, error.sd, method=reading.method, is_measured=is_measured)
    return fat_by_size(person)


@traced
def fat_by_size(person: Person) -> FatEstimate:
    """Body fat of a person by BMI, age and sex, whatever was measured."""
    sd = bmi_error(person.weight_kg, person.height_cm, person.age_years, person.training.status).sd
    values = [
        fat_fraction_from_bmi(person.weight_kg, person.height_cm, person.age_years, male) for male in males(person.sex)
    ]
    return _from_sexes(values, sd, BodyFatMethod.BMI_EQUATION, is_measured=False)


_MALES = {Sex.MALE: (1.0,), Sex.FEMALE: (0.0,), Sex.UNSPECIFIED: (0.0, 1.0)}


def males(sex: Sex) -> tuple[float, ...]:
    """The sexes whose equations apply, 1 for male and 0 for female: both for an unspecified one."""
    return _MALES[sex]


def _from_sexes(values: list[float], sd: float, method: BodyFatMethod, *, is_measured: bool) -> FatEstimate:
    """The value of one sex, or the mean of both with half their difference added to the SD."""
    half_difference = (max(values) - min(values)) / 2.0
    return FatEstimate(sum(values) / len(values), sd + half_difference, method=method, is_measured=is_measured)


# --- healthy ranges -------------------------------------------------------------------------------------------


class Standing(StrEnum):
    """Where a body fat lies against a range."""

    BELOW = "below"
    WITHIN = "within"
    ABOVE = "above"


class FatRange(msgspec.Struct, frozen=True):
    """A range of body fat, fractions 0-1."""

    lower: float
    upper: float

    def standing(self, fat_fraction: float) -> Standing:
        """Below, within (ends included) or above."""
        if fat_fraction < self.lower:
            return Standing.BELOW
        return Standing.ABOVE if fat_fraction > self.upper else Standing.WITHIN


# Read in three transcriptions of the table that agree; our BMI equation of the same paper gives them to a point.
_RANGE_AGES = (20.0, 40.0, 60.0)
_RANGES: dict[Sex, tuple[FatRange, ...]] = {
    Sex.MALE: (FatRange(0.08, 0.20), FatRange(0.11, 0.22), FatRange(0.13, 0.25)),
    Sex.FEMALE: (FatRange(0.21, 0.33), FatRange(0.23, 0.34), FatRange(0.24, 0.36)),
}


def _ranges_formula() -> str:
    return "; ".join(
        f"{'men' if sex is Sex.MALE else 'women'} from {age:g} y: {r.lower:.0%}-{r.upper:.0%}"
        for sex, ranges in _RANGES.items()
        for age, r in zip(_RANGE_AGES, ranges, strict=True)
    )


@traced
@equation(
    "healthy_body_fat",
    summary="Body fat that goes with a BMI of 18.5 to 25, by sex and age",
    formula=_ranges_formula(),
    sources=(GALLAGHER_2000,),
    valid_range="20-79 y, not of Asian descent; the youngest and oldest bands are continued",
    kind=Kind.RULE,
)
def healthy_range(sex: Sex, age_years: float) -> FatRange:
    """Healthy body fat by sex and age. For an unspecified sex the two ranges together."""
    band = (age_years >= _RANGE_AGES[1]) + (age_years >= _RANGE_AGES[2])
    if sex is Sex.UNSPECIFIED:
        return FatRange(_RANGES[Sex.MALE][band].lower, _RANGES[Sex.FEMALE][band].upper)
    return _RANGES[sex][band]


LOWEST_FAT_MEN = constant(
    "lowest_body_fat_men",
    0.05,
    unit="1",
    summary="Lowest body fat a man keeps without harm: 4-6 % is the least found in healthy men",
    sources=(FRIEDL_1994, ROBERTS_1998, FAGERBERG_2018),
)
LOWEST_FAT_WOMEN = constant(
    "lowest_body_fat_women",
    0.12,
    unit="1",
    summary="Lowest body fat a woman keeps without harm: 12-15 % is the least that physicians certify in sport",
    sources=(ROBERTS_1998,),
)


def lowest_fat_fraction(sex: Sex) -> float:
    """The lowest body fat kept without harm; the stricter one for an unspecified sex."""
    return LOWEST_FAT_MEN if sex is Sex.MALE else LOWEST_FAT_WOMEN
