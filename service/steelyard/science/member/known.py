"""What is known of a member from an earlier answer, and how it takes the place of what is told.

It comes from outside, and is no more believed than a profile: what is computed comes from the log and the onset that it
carries, which are checked, and its figures of the body stand under the same bounds and rails.
"""

import math
from contextlib import suppress
from datetime import date

from msgspec.structs import replace

from ..body import Adherence
from ..log import (
    LEAST_WEIGHT_KG,
    MOST_LOG_DAYS,
    MOST_WEIGHT_KG,
    KnownFat,
    Log,
    check_onset,
    composition_of_log,
    joined,
    since_birth,
    trend_of_log,
    weights_read,
)
from ..measures import (
    FAT_FRACTION_FROM,
    FAT_FRACTION_TO,
    FatEstimate,
    MeasuredPerson,
    assess,
    males,
    method_error,
    read,
)
from ..numbers import Estimate
from ..person import BodyFatMethod, BodyFatReading, Person
from ..register import Basis, Contradiction, Message, OutOfDomain, constant, say
from .told import FatRead, Known, StartingBody, Told

SAME_HEIGHT_CM = constant(
    "state_height_tolerance", 3.0, unit="cm", basis=Basis.JUDGEMENT,
    summary="A state whose height is further than this from the profile's is another person's",
)  # fmt: skip
SAME_WEIGHT = constant(
    "state_weight_tolerance", 0.08, unit="1", basis=Basis.JUDGEMENT,
    summary="A state whose weight is further than this fraction from every weighing that it carries is not read",
)  # fmt: skip
PROFILE_WEIGHT_APART = constant(
    "state_profile_weight_apart", 0.15, unit="1", basis=Basis.JUDGEMENT,
    summary="A state whose weight is further than this fraction from the profile's may be another person's",
)  # fmt: skip
READINGS_DISAGREE = constant(
    "fat_readings_disagree", 1.28, unit="SD", basis=Basis.JUDGEMENT,
    summary="Two methods disagree from this many SDs of their difference on, and four points of body fat",
)  # fmt: skip
READINGS_APART = constant(
    "fat_readings_apart", 0.04, unit="1", basis=Basis.JUDGEMENT, summary="Least difference of body fat that is named"
)
READINGS_DAYS = constant(
    "fat_readings_days", 60.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Readings further apart than this may differ since the body has changed",
)  # fmt: skip
LEAST_FAT_SD = constant(
    "fat_known_sd_least", 0.0125, unit="1", basis=Basis.JUDGEMENT,
    summary="Body fat is never known better than by four compartments, however many readings say so",
)  # fmt: skip
DISAGREE = "BODY_FAT_METHODS_DISAGREE"
_RECENT_WEIGHINGS = 5
_SURELY_SD = 3.0  # further than so many of its own SD is another weight (common practice, no published source)
# Of a share of fat: the masses that tell it are rounded, and at the edge of what a body can have one may lie beyond.
_ROUNDED = 1e-4


def settled(told: Told) -> Told:
    """What is told of a member, with what is ``known`` in place of it; ``told.log`` is then what was logged since.

    Raises: ``Contradiction`` for the state of another person or one that contradicts itself; ``OutOfDomain`` for one
        that no answer gave.
    """
    log, known = told.log, told.known
    if told.is_settled or (known is None and log is None):
        return told
    told = told._replace(is_settled=True)
    is_after_birth = told.screening is not None and told.screening.is_breastfeeding
    if known is None:
        assert log is not None
        log = since_birth(log) if is_after_birth else log
        told = told._replace(log=log)
        return _measured(told, log, None) if log.readings else told
    _check(told.person, known)
    notes = _weight_apart(told.person.weight_kg, known)
    if known.log is not None:
        log, about_log = joined(known.log, log)
        notes += about_log
    need = math.inf if known.told_before is None else known.told_before.physical_kcal
    lately = None if log is None else log.last_intake_lately(need)
    usual = _first(told.current_intake_kcal, _first(lately, known.usual_intake_kcal))
    if log is not None and is_after_birth:
        log = since_birth(log)
    person, fat = body_at(told.person, known.body)
    maintenance = told.maintenance
    if maintenance is None and (log is None or not log.intakes):
        maintenance = known.maintenance
    told = told._replace(
        person=person,
        fat=fat,
        log=log,
        maintenance=maintenance,
        current_intake_kcal=usual,
        notes=tuple(notes),
        carried_kg=known.carried_kg,
    )
    if log is None:
        return told
    if known.log is None and log.last_day <= known.day:
        # Its day is the start of something planned, which may lie ahead: any entry is newer.
        known = known._replace(day=log.last_day)
        return _measured(told._replace(known=known), log, known)
    if log.last_day > known.day or log.readings:
        return _measured(told, log, known)
    return told


def _weight_apart(profile_kg: float, known: Known) -> list[Message]:
    """A question where profile and state may be those of two people. A profile may well be older than the state: who
    weighed as it says in one of their phases has changed, and is not asked each week."""
    known_kg = known.body.weight.mean
    if any(abs(profile_kg / each - 1.0) <= PROFILE_WEIGHT_APART for each in (known_kg, *known.weighed_before)):
        return []
    return [say("STATE_WEIGHT_APART", profile_kg=profile_kg, known_kg=known_kg)]


def _first(told: float | None, known: float | None) -> float | None:
    return known if told is None else told


def _check(person: Person, known: Known) -> None:
    if person.sex is not known.sex or abs(person.height_cm - known.height_cm) > SAME_HEIGHT_CM:
        detail = "Sex and height of the state are not those of the profile: it is another person's."
        raise Contradiction("STATE_OF_ANOTHER", "state", detail)
    weight, log = known.body.weight, known.log
    if known.steered is not None and known.steered.day > known.day:
        detail = "What weight taught of maintenance is of a day after the state."
        raise Contradiction("STATE_CONTRADICTS_ITSELF", "state.steered", detail)
    _check_body(known.body, "state")
    if log is None:
        return
    onset = log.onset
    if onset is not None:
        check_onset(onset, "state.reading")
        if onset.goes_on and not 0 <= known.day - onset.day < MOST_LOG_DAYS:
            detail = "What was read before lies after the state, or years before it."
            raise Contradiction("STATE_CONTRADICTS_ITSELF", "state", detail)
    if not log.weighings:
        raise Contradiction("STATE_CONTRADICTS_ITSELF", "state", "The state has a log without a weighing.")
    if onset is not None and onset.goes_on and log.first_day < onset.day:
        detail = "Its log begins before the day up to which it was read."
        raise Contradiction("STATE_CONTRADICTS_ITSELF", "state.log", detail)
    if log.last_day > known.day:
        raise Contradiction("STATE_CONTRADICTS_ITSELF", "state", "Its log goes on after its date.")
    _check_weight(log, weight)


def _check_weight(log: Log, weight: Estimate) -> None:
    """The log is handed on as it was sent, slips and other units included: it is somebody else's only where it has no
    weighing near the weight, however it is read. Months after the last one the weight is known to some kilograms."""
    weight_kg, apart = weight.mean, max(SAME_WEIGHT, _SURELY_SD * weight.sd / weight.mean)
    latest = sorted(log.weighings, key=lambda entry: entry.day)[-_RECENT_WEIGHINGS:]
    recent = [entry.weight_kg for entry in latest]
    if any(abs(each / weight_kg - 1.0) <= apart for each in recent):
        return
    found = []
    # A log of pounds may begin so far from the weight at its end that only its last weighings tell the unit.
    for each in (log, replace(log, weighings=latest)):
        with suppress(OutOfDomain):
            found += weights_read(each, weight_kg)
    if all(abs(each / weight_kg - 1.0) > apart for each in found):
        middle = sorted(recent)[len(recent) // 2]
        detail = f"Its weight of {weight_kg:.1f} kg is not that of its log, {middle:.1f} kg."
        raise Contradiction("STATE_CONTRADICTS_ITSELF", "state", detail)


def _check_body(body: StartingBody, field: str) -> None:
    weight = body.weight.mean
    if (
        not LEAST_WEIGHT_KG <= weight <= MOST_WEIGHT_KG
        or not FAT_FRACTION_FROM - _ROUNDED <= body.fat_kg.mean / weight <= FAT_FRACTION_TO + _ROUNDED
    ):
        is_read = field == "log"
        mend = (
            "check the weights, and weight and height of the profile."
            if is_read
            else "send both as an answer gave them."
        )
        detail = f"No living body has this weight and share of fat: {mend}"
        raise OutOfDomain("STATE_NOT_READABLE", field, detail)


def body_at(person: Person, body: StartingBody, field: str = "state") -> tuple[Person, FatEstimate]:
    """The person, and what is known of their body fat, with a body that was known on some day.

    Raises ``OutOfDomain`` naming ``field`` for a body that nobody has.
    """
    _check_body(body, field)
    return _with_body(person, body.weight.mean, body.fat_kg, body.method, body.is_measured)


def _with_body(
    person: Person, weight_kg: float, fat_kg: Estimate, method: BodyFatMethod, is_measured: bool
) -> tuple[Person, FatEstimate]:
    fraction = min(max(fat_kg.mean / weight_kg, FAT_FRACTION_FROM), FAT_FRACTION_TO)
    reading = BodyFatReading(fat_fraction=fraction, method=method) if is_measured else None
    sd = max(LEAST_FAT_SD, fat_kg.sd / weight_kg)
    method = method if is_measured else BodyFatMethod.BMI_EQUATION
    fat = FatEstimate(fraction, sd, method=method, is_measured=is_measured)
    return replace(person, weight_kg=weight_kg, body_fat=reading), fat


def _measured(told: Told, log: Log, known: Known | None) -> Told:
    """The member as their log and its readings of body fat leave them on its last day."""
    person = told.person if known is None else replace(told.person, body_fat=None)
    assessed = assess(told.person)
    day = log.last_day
    trend, reading = trend_of_log(person, assessed, log, day)
    found = composition_of_log(person, reading, trend, log.readings, None if known is None else fat_known(known))
    notes = [*told.notes, *_disagreements(told, log, known)]
    if found is None:
        return told._replace(notes=tuple(notes))
    newest = readings_of(person, log)
    method = newest[-1].method if newest else (known.body.method if known is not None else BodyFatMethod.BMI_EQUATION)
    is_measured = bool(newest) or (known is not None and known.body.is_measured) or person.body_fat is not None
    weight, carried_kg = told.person.weight_kg, told.carried_kg
    if known is not None:
        weight, carried_kg = trend.smoothed.weight_kg[-1], trend.smoothed.carried_kg[-1]
    fraction = found.fat_fraction
    moved, fat = _with_body(
        told.person, weight, Estimate(fraction.mean * weight, fraction.sd * weight), method, is_measured
    )
    return told._replace(person=moved, fat=fat, notes=tuple(notes), carried_kg=carried_kg)


def fat_known(known: Known) -> KnownFat:
    """Body fat as a state knows it, as one reading of its day."""
    body = known.body
    weight = body.weight.mean
    fraction = Estimate(body.fat_kg.mean / weight, max(LEAST_FAT_SD, body.fat_kg.sd / weight))
    return KnownFat(known.day, fraction, body.method, weight)


def adherence_on(known: Known | None, day: int) -> Adherence | None:
    """How well deficits are kept to, as far as a state still tells that on a day."""
    return None if known is None or known.adherence is None else known.adherence.faded(day - known.day)


def readings_of(person: Person, log: Log) -> list[FatRead]:
    """The readings of body fat of a log with their errors, oldest first. Raises ``OutOfDomain``."""
    subject = MeasuredPerson(
        sex=person.sex,
        age_years=person.age_years,
        height_cm=person.height_cm,
        weight_kg=person.weight_kg,
        training=person.training.status,
    )
    found = []
    for measured in sorted(log.readings, key=lambda each: each.day):
        values = [read(subject, measured.measurement, male).value for male in males(person.sex)]
        fraction = sum(value.fat_fraction for value in values) / len(values)
        found.append(FatRead(measured.day, fraction, values[0].error.sd, values[0].method))
    return found


def _disagreements(told: Told, log: Log, known: Known | None) -> list[Message]:
    """Two methods that do not say the same of about the same days, the newest pair."""
    readings = [*(() if known is None else known.readings), *readings_of(told.person, log)]
    if known is None and told.person.body_fat is not None:
        own = told.person.body_fat
        error = method_error(own.method, told.person.training.status)
        readings.append(FatRead(log.last_day, own.fat_fraction, error.sd, own.method))
    pairs = [
        (one, other)
        for i, other in enumerate(readings)
        for one in readings[:i]
        if one.method is not other.method
        and abs(other.day - one.day) <= READINGS_DAYS
        and abs(other.fat_fraction - one.fat_fraction)
        >= max(READINGS_APART, READINGS_DISAGREE * (one.sd**2 + other.sd**2) ** 0.5)
    ]
    return [
        say(
            DISAGREE,
            first=one.method.value,
            first_percent=100.0 * one.fat_fraction,
            first_date=date.fromordinal(one.day).isoformat(),
            second=other.method.value,
            second_percent=100.0 * other.fat_fraction,
            second_date=date.fromordinal(other.day).isoformat(),
        )
        for one, other in pairs[-1:]
    ]
