"""Body composition from all that was measured: fat and fat-free mass, their intervals, and where the person stands.

The measurements are read by the equations of each sex that applies and combined; an unspecified sex gets the range
over both. Body fat is a fraction 0-1, masses kg, indices kg/m².
"""

from collections.abc import Sequence

import msgspec

from ..numbers import Z80, Estimate
from ..person import BodyFatMethod, Sex
from ..rails import ADULT_YEARS, FAT_FRACTION_WARN, stricter, told_of_low_weight
from ..register import FAT_FROM_BMI, NOT_MEDICAL_ADVICE, TWO_SEXES, Message, OutOfDomain, say
from .body_composition import FatEstimate, FatRange, Standing, healthy_range, lowest_fat_fraction, males
from .body_density import FAT_FRACTION_FROM, FAT_FRACTION_TO
from .body_mass_index import bmi, ffmi, ffmi_normalised, ffmi_notes
from .fat_combination import Combined, combine
from .fat_measurements import MeasuredPerson, Measurement, Value, read, unused
from .plausible import check_fat_free_mass

_RANGE_FROM, _RANGE_TO = 20.0, 79.0  # ages of the published table of healthy ranges
_NO_WEIGHT = "MEASUREMENT_ADDS_NOTHING"
_MINIMUM = "BODY_FAT_AT_MINIMUM"
_LEAN = "BODY_FAT_LOW"
_ADULTS_ONLY = "UNDER_AGE_NO_TARGET"
_CONTINUED = "HEALTHY_RANGE_CONTINUED"


class MeasurementRead(msgspec.Struct, frozen=True, kw_only=True):
    """One measurement: its value with the error it has alone, its weight in the answer, the methods behind it."""

    fat: Estimate
    weight: float
    methods: tuple[str, ...]
    notes: tuple[Message, ...]


class Bounds(msgspec.Struct, frozen=True):
    """A mean and the ends of its 80 % interval, kept within what is possible."""

    lower: float
    mean: float
    upper: float

    def scaled(self, factor: float, offset: float = 0.0) -> "Bounds":
        """``offset + factor × self``, ends in order."""
        ends = sorted((offset + factor * self.lower, offset + factor * self.upper))
        return Bounds(ends[0], offset + factor * self.mean, ends[1])


class Position(msgspec.Struct, frozen=True, kw_only=True):
    """A healthy range, where the mean stands against it, and the probabilities of below, within and above."""

    range: FatRange
    standing: Standing
    probability: dict[Standing, float]


class Composition(msgspec.Struct, frozen=True, kw_only=True):
    """Body composition: fat and fat-free mass (kg), fat-free mass indices (kg/m²), and what stands behind them.

    ``position`` is None under 18 years, to whom the ranges of adults do not apply.
    """

    fat: FatEstimate
    fat_fraction: Bounds
    fat_kg: Bounds
    fat_free_kg: Bounds
    ffmi: Bounds
    ffmi_normalised: Bounds
    position: Position | None
    rows: tuple[MeasurementRead, ...]
    notes: tuple[Message, ...]
    cautions: tuple[Message, ...]


def estimate_composition(subject: MeasuredPerson, measurements: Sequence[Measurement]) -> Composition:
    """Body composition from at least one measurement.

    Raises ``OutOfDomain`` naming the measurement (``measurements[2].hip_cm``) for a missing girth or skinfold, for a
    sum of skinfolds above its cap, and where body fat comes out impossible or outside 0.03-0.60.
    """
    if not measurements:
        raise OutOfDomain("BODY_FAT_READING_MISSING", "measurements", "Send at least one measurement.")
    sexes = males(subject.sex)
    columns = [[_placed(subject, m, i, male) for i, m in enumerate(measurements)] for male in sexes]
    combined = [combine([read.value for read in column]) for column in columns]
    rows = tuple(
        _row(subject.sex, measurement, [column[i] for column in columns], [c.weights[i] for c in combined])
        for i, measurement in enumerate(measurements)
    )
    by_sex = [c.fat for c in combined]
    heaviest = max(range(len(rows)), key=lambda i: rows[i].weight)
    joined = _over_sexes(by_sex)
    fat = FatEstimate(
        joined.mean,
        joined.sd,
        method=columns[0][heaviest].value.method,
        is_measured=any(read.value.method is not BodyFatMethod.BMI_EQUATION for read in columns[0]),
    )
    fraction = _possible(min(e.lower for e in by_sex), joined.mean, max(e.upper for e in by_sex))
    weight, index = subject.weight_kg, ffmi(subject.weight_kg, subject.height_cm, 0.0)
    normalised = ffmi_normalised(weight, subject.height_cm, 0.0)
    if fat.is_measured:
        check_fat_free_mass(index * (1.0 - fraction.mean))
    is_adult = subject.age_years >= ADULT_YEARS
    bounds = fraction.scaled(-index, normalised)
    return Composition(
        fat=fat,
        fat_fraction=fraction,
        fat_kg=fraction.scaled(weight),
        fat_free_kg=fraction.scaled(-weight, weight),
        ffmi=fraction.scaled(-index, index),
        ffmi_normalised=bounds,
        position=_position(subject, joined.mean, by_sex) if is_adult else None,
        rows=rows,
        notes=_notes(subject, combined, index * (1.0 - fraction.mean)),
        cautions=_cautions(subject, fat),
    )


def _possible(lower: float, mean: float, upper: float) -> Bounds:
    """The bounds cut to what body fat can be."""
    return Bounds(*(min(max(x, FAT_FRACTION_FROM), FAT_FRACTION_TO) for x in (lower, mean, upper)))


def _placed(subject: MeasuredPerson, measurement: Measurement, i: int, male: float) -> Value:
    try:
        return read(subject, measurement, male)
    except OutOfDomain as error:
        field = f"{error.field}_mm" if error.code == "SKINFOLD_SITE_MISSING" else error.field
        place = f"measurements[{i}].{field}" if field not in ("", "skinfolds_mm") else f"measurements[{i}]"
        raise OutOfDomain(error.code, place, error.detail) from None


def _over_sexes(by_sex: Sequence[Estimate]) -> Estimate:
    """One estimate whose 80 % interval spans those of all sexes, about the mean of their means."""
    mean = sum(e.mean for e in by_sex) / len(by_sex)
    reach = max(max(e.upper for e in by_sex) - mean, mean - min(e.lower for e in by_sex))
    return Estimate(mean, reach / Z80)


def _row(sex: Sex, measurement: Measurement, reads: Sequence[Value], weights: Sequence[float]) -> MeasurementRead:
    fat = _over_sexes([Estimate(read.value.fat_fraction, read.value.error.sd) for read in reads])
    weight = sum(weights) / len(weights)
    notes = [note for read in reads for note in read.notes]
    notes += unused(measurement, sex)
    if weight == 0.0:
        notes.append(say(_NO_WEIGHT))
    methods = tuple(dict.fromkeys(id for read in reads for id in read.methods))
    return MeasurementRead(fat=fat, weight=weight, methods=methods, notes=tuple(notes))


def _position(subject: MeasuredPerson, mean: float, by_sex: Sequence[Estimate]) -> Position:
    healthy = healthy_range(subject.sex, subject.age_years)

    def below(limit: float) -> float:
        """Probability of less; for an unspecified sex both count the same."""
        return sum(e.probability_under(limit) for e in by_sex) / len(by_sex)

    lower, upper = below(healthy.lower), below(healthy.upper)
    return Position(
        range=healthy,
        standing=healthy.standing(mean),
        probability={Standing.BELOW: lower, Standing.WITHIN: upper - lower, Standing.ABOVE: 1.0 - upper},
    )


def _notes(subject: MeasuredPerson, combined: Sequence[Combined], fat_free_index: float) -> tuple[Message, ...]:
    notes = [note for c in combined for note in c.notes]
    notes += ffmi_notes(subject.sex, fat_free_index)
    if subject.age_years >= ADULT_YEARS and not _RANGE_FROM <= subject.age_years < _RANGE_TO + 1.0:
        notes.append(say(_CONTINUED, from_years=_RANGE_FROM, to_years=_RANGE_TO))
    return tuple(notes)


def _cautions(subject: MeasuredPerson, fat: FatEstimate) -> tuple[Message, ...]:
    cautions = [NOT_MEDICAL_ADVICE, *told_of_low_weight(bmi(subject.weight_kg, subject.height_cm), subject.age_years)]
    if not fat.is_measured:
        cautions.append(FAT_FROM_BMI)
    if subject.sex is Sex.UNSPECIFIED:
        cautions.append(TWO_SEXES)
    if subject.age_years < ADULT_YEARS:
        cautions.append(say(_ADULTS_ONLY, limit_years=ADULT_YEARS))
    lowest = lowest_fat_fraction(subject.sex)
    warn = stricter(FAT_FRACTION_WARN, subject.sex)
    if fat.mean <= lowest:
        cautions.append(say(_MINIMUM, fat_percent=round(100.0 * fat.mean, 2), limit_percent=round(100.0 * lowest, 1)))
    elif fat.mean < warn:
        cautions.append(say(_LEAN, fat_percent=round(100.0 * fat.mean, 2), limit_percent=round(100.0 * warn, 1)))
    return tuple(cautions)
