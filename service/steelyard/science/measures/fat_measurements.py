"""What may be measured of body fat, and each measurement as a value with its error by the equations of a sex.

Girths, skinfolds, a reading, or height and weight alone. Body fat is a fraction 0-1, masses kg, heights and girths
cm, skinfolds mm.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from enum import StrEnum

import msgspec

from ..person import BodyFatMethod, BodyFatReading, Sex, TrainingStatus
from ..register import Message, OutOfDomain, recorded, say, traced
from .body_composition import (
    ADULTS,
    BMI_TO,
    METHOD_ERRORS,
    OUTSIDE_FACTOR,
    MethodError,
    bmi_error,
    method_error,
    widened,
)
from .body_density import brozek, checked_fat_fraction, siri
from .body_mass_index import bmi, fat_fraction_from_bmi
from .fat_combination import FatValue
from .girths import hodgdon_beckett_men, hodgdon_beckett_women
from .skinfolds import SkinfoldMethod, density_from_skinfolds, skinfold_equation, skinfold_sites

# --- what may be measured -------------------------------------------------------------------------------------


class DensityConversion(StrEnum):
    """How body density becomes body fat."""

    SIRI = "siri"
    BROZEK = "brozek"


class Girths(msgspec.Struct, frozen=True, kw_only=True):
    """Girths in cm by name: ``neck_cm`` and ``abdomen_cm`` (navel) for men; ``neck_cm``, ``waist_cm``, ``hip_cm``
    for women; all of them for an unspecified sex."""

    girths_cm: Mapping[str, float]


class Skinfolds(msgspec.Struct, frozen=True, kw_only=True):
    """Skinfolds in mm by site, the equation for them, and how its density becomes fat."""

    skinfolds_mm: Mapping[str, float]
    equation: SkinfoldMethod
    conversion: DensityConversion = DensityConversion.SIRI


class HeightAndWeight(msgspec.Struct, frozen=True):
    """No more than height and weight: the last resort."""


Measurement = Girths | Skinfolds | BodyFatReading | HeightAndWeight


class MeasuredPerson(msgspec.Struct, frozen=True, kw_only=True):
    """Whose body it is."""

    sex: Sex
    age_years: float
    height_cm: float
    weight_kg: float
    training: TrainingStatus


_OUTSIDE_AGE = "METHOD_OUTSIDE_AGE_RANGE"
_UNDER_AGE = "METHOD_UNDER_AGE_RANGE"
_OUTSIDE_BMI = "METHOD_OUTSIDE_BMI_RANGE"
_MUSCULAR = "BMI_OVERSTATES_WITH_MUSCLE"
_NOT_USED = "MEASURE_NOT_USED"
_BMI_POINTS = 8  # mean excess in the athletes of an open data set, see the tests

# --- one measurement ----------------------------------------------------------------------------------------------


class Value(msgspec.Struct, frozen=True, kw_only=True):
    """A measurement as read by the equations of one sex."""

    value: FatValue
    notes: tuple[Message, ...] = ()
    methods: Sequence[str] = ()  # what it was read with


_CONVERSIONS: dict[DensityConversion, Callable[[float], float]] = {
    DensityConversion.SIRI: siri,
    DensityConversion.BROZEK: brozek,
}


def read(subject: MeasuredPerson, measurement: Measurement, male: float) -> Value:
    """A measurement by the equations of one sex (``male`` 1 or 0).

    Raises ``OutOfDomain`` naming the measure (``hip_cm``, ``thigh``; empty for all together) where one is missing or
    the result is impossible.
    """
    value, methods = _recorded(subject, measurement, male)
    return Value(value=value.value, notes=value.notes, methods=methods)


def _read(subject: MeasuredPerson, measurement: Measurement, male: float) -> Value:
    match measurement:
        case Girths():
            return _read_girths(subject, measurement, male == 1.0)
        case Skinfolds():
            return _read_skinfolds(subject, measurement, male == 1.0)
        case BodyFatReading():
            return _read_reading(subject, measurement)
        case HeightAndWeight():
            return _read_bmi(subject, male)


_recorded = recorded(_read)


@traced
def _read_reading(subject: MeasuredPerson, measurement: BodyFatReading) -> Value:
    error = method_error(measurement.method, subject.training)
    fraction = checked_fat_fraction(measurement.fat_fraction, "fat_fraction")
    return Value(value=FatValue(fraction, measurement.method, error))


@traced
def _read_girths(subject: MeasuredPerson, measurement: Girths, is_male: bool) -> Value:
    girths = measurement.girths_cm
    needed = ("abdomen_cm", "neck_cm") if is_male else ("waist_cm", "hip_cm", "neck_cm")
    for name in needed:
        if name not in girths:
            who = "men" if is_male else "women"
            text = " and ".join(", ".join(needed).rsplit(", ", 1))
            raise OutOfDomain("GIRTH_MISSING", name, f"Send {name}: the equation for {who} needs {text}.")
    density: float
    if is_male:
        density = hodgdon_beckett_men(girths["abdomen_cm"], girths["neck_cm"], subject.height_cm)
    else:
        density = hodgdon_beckett_women(girths["waist_cm"], girths["hip_cm"], girths["neck_cm"], subject.height_cm)
    method = "hodgdon_beckett_men" if is_male else "hodgdon_beckett_women"
    error, notes = _within_age(METHOD_ERRORS[BodyFatMethod.GIRTHS], subject.age_years, method, ADULTS)
    fraction = checked_fat_fraction(siri(density), "")
    return Value(value=FatValue(fraction, BodyFatMethod.GIRTHS, error), notes=notes)


@traced
def _read_skinfolds(subject: MeasuredPerson, measurement: Skinfolds, is_male: bool) -> Value:
    equation = skinfold_equation(measurement.equation, is_male)
    density = density_from_skinfolds(measurement.equation, is_male, measurement.skinfolds_mm, subject.age_years)
    fraction = checked_fat_fraction(_CONVERSIONS[measurement.conversion](density), "")
    error, notes = _within_age(METHOD_ERRORS[BodyFatMethod.SKINFOLDS], subject.age_years, equation.id, equation.ages)
    return Value(value=FatValue(fraction, BodyFatMethod.SKINFOLDS, error), notes=notes)


@traced
def _read_bmi(subject: MeasuredPerson, male: float) -> Value:
    fraction: float = fat_fraction_from_bmi(subject.weight_kg, subject.height_cm, subject.age_years, male)
    error = bmi_error(subject.weight_kg, subject.height_cm, subject.age_years, subject.training)
    _, notes = _within_age(error, subject.age_years, "body_fat_from_bmi", ADULTS)
    index = bmi(subject.weight_kg, subject.height_cm)
    if index > BMI_TO:
        notes += (say(_OUTSIDE_BMI, bmi_kg_m2=round(index, 2), to_kg_m2=BMI_TO, factor=OUTSIDE_FACTOR),)
    is_trained = subject.training is not TrainingStatus.UNTRAINED
    if is_trained:
        notes += (say(_MUSCULAR, points=_BMI_POINTS),)
    return Value(value=FatValue(fraction, BodyFatMethod.BMI_EQUATION, error), notes=notes)


def _within_age(
    error: MethodError, age_years: float, method: str, ages: tuple[float, float]
) -> tuple[MethodError, tuple[Message, ...]]:
    """The error of an equation at this age, larger outside its published range, and what to say of it."""
    lower, upper = ages
    if lower <= age_years <= upper:
        return error, ()
    params: dict[str, float | str] = {
        "method": method,
        "age_years": age_years,
        "from_years": lower,
        "factor": OUTSIDE_FACTOR,
    }
    note = say(_UNDER_AGE, **params) if math.isinf(upper) else say(_OUTSIDE_AGE, **params, to_years=upper)
    return widened(error), (note,)


def unused(measurement: Measurement, sex: Sex) -> tuple[Message, ...]:
    """Measures sent that no equation for this sex reads."""
    if isinstance(measurement, Girths):
        reads = {"neck_cm"}
        reads |= {"abdomen_cm"} if sex is not Sex.FEMALE else set()
        reads |= {"waist_cm", "hip_cm"} if sex is not Sex.MALE else set()
        extra = [name for name in measurement.girths_cm if name not in reads]
    elif isinstance(measurement, Skinfolds):
        sites = skinfold_sites(measurement.equation, sex)
        extra = [f"{site}_mm" for site in measurement.skinfolds_mm if site not in sites]
    else:
        return ()
    return (say(_NOT_USED, fields=", ".join(extra)),) if extra else ()
