"""Between the wire and the core: requests to core types, core results to wire objects. No decisions here."""

import math
from collections.abc import Sequence
from datetime import date
from functools import cache
from hashlib import sha256
from typing import TYPE_CHECKING, Any

import msgspec

from steelyard import answers
from steelyard.science.body import PathChange, PathPoint
from steelyard.science.log import IntakeDay, Log, LoggedEvent, LogMaintenance, Measured, StepsDay, Weighing
from steelyard.science.measures import (
    FAT_FRACTION_FROM,
    FAT_FRACTION_TO,
    Girths,
    HeightAndWeight,
    Measurement,
    Skinfolds,
)
from steelyard.science.member import Told
from steelyard.science.numbers import (
    Estimate,
    bounds_columns,
    bounds_of_each,
    rounded,
    rounded_column,
    rounded_where,
)
from steelyard.science.person import (
    ActivityWeek,
    BodyFatReading,
    CheckIn,
    Clearance,
    Person,
    Screening,
    Session,
    Training,
)
from steelyard.science.rails import RailAction
from steelyard.science.register import MODEL_VERSION, Contradiction, Message

from ..languages import as_told, english
from ..schemas import body_composition as composition_schema
from ..schemas import log as log_schema
from ..schemas import profile as profile_schema
from ..schemas.decisions import DecisionRequest
from ..schemas.explanation import GuardRail, Note
from ..schemas.forecasts import ForecastRequest
from ..schemas.phases import ForecastPoint, KnownMaintenance
from ..schemas.plans import PhaseTotals, PlanRequest
from ..schemas.seasons import SeasonQuestion
from ..schemas.shared_fields import Interval, IntervalColumns
from ..schemas.states import State
from ..wire.request_id import CONTRACT_VERSION
from . import states

if TYPE_CHECKING:
    from hashlib import _Hash as HASH

# Stated precision of the wire: whole kilocalories, grams of mass, a hundredth of a percent of body fat.
KCAL, KG, FRACTION, RATIO = 0, 3, 4, 3
NOT_MADE: Any = None  # in the place of a part of an answer that nobody keeps


def person(profile: profile_schema.Profile) -> Person:
    """The core's person."""
    activity = profile.activity
    return Person(
        sex=profile.sex,
        age_years=profile.age_years,
        height_cm=profile.height_cm,
        weight_kg=profile.weight_kg,
        activity=activity.level
        if isinstance(activity, profile_schema.ActivityByLevel)
        else ActivityWeek(
            steps_per_day=activity.steps_per_day,
            sessions=tuple(session(each) for each in activity.sessions),
        ),
        training=Training(
            status=profile.training.status,
            resistance_sessions_per_week=profile.training.resistance_sessions_per_week,
            is_new_programme=profile.training.is_new_programme,
        ),
        body_fat=BodyFatReading(fat_fraction=profile.body_fat.fat_fraction, method=profile.body_fat.method)
        if profile.body_fat
        else None,
    )


def session(training: profile_schema.TrainingSession) -> Session:
    """The core's training session."""
    return Session(met=training.met, minutes=training.minutes, times_per_week=training.times_per_week)


def screening(answers: profile_schema.Screening | None) -> Screening | None:
    """The core's screening answers."""
    if answers is None:
        return None
    clearance = answers.clinical_clearance
    return Screening(
        is_pregnant=answers.is_pregnant,
        is_breastfeeding=answers.is_breastfeeding,
        eating_disorder=answers.eating_disorder,
        conditions=tuple(answers.conditions),
        medicines=tuple(answers.medicines),
        clearance=Clearance(given_by=clearance.given_by, reason=clearance.reason) if clearance else None,
    )


def told(
    profile: profile_schema.Profile,
    *,
    screened: profile_schema.Screening | None = None,
    known: KnownMaintenance | None = None,
    entries: log_schema.Log | None = None,
    state: State | None = None,
    current_intake_kcal: float | None = None,
) -> Told:
    """What a request tells of a member; a state takes the place of what it knows."""
    return Told(
        person=person(profile),
        screening=screening(screened),
        maintenance=None if known is None else Estimate(known.kcal_per_day, known.standard_deviation_kcal),
        log=None if entries is None else _log_sent(entries),
        current_intake_kcal=current_intake_kcal,
        known=None if state is None else states.known(state, None if state.log is None else log(state.log)),
    )


def told_in(body: PlanRequest | ForecastRequest | DecisionRequest | SeasonQuestion) -> Told:
    """What a request that looks ahead tells of a member."""
    return told(
        body.profile,
        screened=body.screening,
        known=body.maintenance,
        entries=body.log,
        state=body.state,
        current_intake_kcal=body.current_intake_kcal,
    )


def state_on(now: answers.StateNow | None, before: State | None) -> State:
    """The state of an answer that leaves the phase under way, and those that are over, as they were."""
    assert now is not None
    if before is None:
        return states.state(now, None, None)
    return states.state(now, before.phase, before.phase_history, before.attention, before.question)


def _log_sent(entries: log_schema.Log) -> Log:
    """The log of a request. Raises ``Contradiction`` naming an event that ends before it begins."""
    for i, event in enumerate(entries.events):
        if event.until_date is not None and event.until_date < event.date:
            raise Contradiction("EVENT_ENDS_BEFORE", f"log.events[{i}].until_date", "The event ends before it begins.")
    return log(entries)


def log(entries: log_schema.Log) -> Log:
    """The core's log, days as proleptic ordinals."""
    return Log(
        [Weighing(w.date.toordinal(), w.weight_kg, w.order) for w in entries.weights],
        [IntakeDay(i.date.toordinal(), i.intake_kcal, i.carbohydrate_g, i.is_partial) for i in entries.intakes],
        [day.toordinal() for day in entries.cycle],
        [
            LoggedEvent(e.date.toordinal(), e.kind, None if e.until_date is None else e.until_date.toordinal())
            for e in entries.events
        ],
        [
            Measured(m.date.toordinal(), measurement(m.measurement), f"log.measurements[{i}]")
            for i, m in enumerate(entries.measurements)
        ],
        [CheckIn(c.date.toordinal(), c.hunger, c.sleep, c.mood, c.cycle, c.strength) for c in entries.check_ins],
        [StepsDay(s.date.toordinal(), float(s.steps)) for s in entries.steps],
    )


def measurement(wire: composition_schema.Measurement) -> Measurement:
    """The core's measurement."""
    match wire:
        case composition_schema.GirthMeasurement():
            return Girths(girths_cm=_given(wire, "_cm"))
        case composition_schema.SkinfoldMeasurement():
            folds = {name.removesuffix("_mm"): value for name, value in _given(wire, "_mm").items()}
            return Skinfolds(skinfolds_mm=folds, equation=wire.equation, conversion=wire.conversion)
        case composition_schema.ReadingMeasurement():
            return BodyFatReading(fat_fraction=wire.fat_fraction, method=wire.method)
        case _:
            return HeightAndWeight()


def _given(
    wire: composition_schema.GirthMeasurement | composition_schema.SkinfoldMeasurement, suffix: str
) -> dict[str, float]:
    """The measures that were sent, by name."""
    names = (name for name in wire.__struct_fields__ if name.endswith(suffix))
    return {name: value for name in names if (value := getattr(wire, name)) is not None}


# Powers of ten by number of digits.
_SCALES = (1.0, 10.0, 100.0, 1000.0, 10000.0)


def interval(estimate: Estimate, digits: int) -> Interval:
    """The 80 % interval of an estimate, rounded once. Holds for values below 2^51 / 10^digits."""
    scale = _SCALES[digits]
    return Interval(rounded(estimate.lower, scale), rounded(estimate.mean, scale), rounded(estimate.upper, scale))


def amount(estimate: Estimate, digits: int) -> Interval:
    """``interval`` of what cannot be less than nothing: a mass, an energy, a share. What is no number stays none."""
    scale = _SCALES[digits]
    lower, middle, upper = (rounded(each, scale) for each in (estimate.lower, estimate.mean, estimate.upper))
    if lower >= 0.0:
        return Interval(lower, middle, upper)
    return Interval(max(lower, 0.0), max(middle, 0.0), max(upper, 0.0))


def fat_share(estimate: Estimate) -> Interval:
    """``amount`` of a share of body fat, within what a living body can have, as every endpoint tells it."""
    return _fat_within(amount(estimate, FRACTION), 1.0, FRACTION)


def fat_mass(estimate: Estimate, weight_kg: float) -> Interval:
    """``amount`` of a mass of fat [kg], within what a living body of that weight can have."""
    return _fat_within(amount(estimate, KG), weight_kg, KG)


def _fat_within(told: Interval, whole: float, digits: int) -> Interval:
    least, most = round(FAT_FRACTION_FROM * whole, digits), round(FAT_FRACTION_TO * whole, digits)
    if least <= told.lower and told.upper <= most:
        return told
    return Interval(*(min(max(each, least), most) for each in (told.lower, told.mean, told.upper)))


def log_scale(learnt: LogMaintenance | None) -> dict[str, Any]:
    """What a log that was read says of the two scales, as fields of an answer."""
    return {
        "physical_maintenance_kcal": None if learnt is None else amount(learnt.physical, KCAL),
        "logging_ratio": None if learnt is None else amount(learnt.logging_ratio, RATIO),
    }


def rounded_if_any(value: float | None, digits: int) -> float | None:
    """A value at the wire's precision, where there is one."""
    return None if value is None else round(value, digits)


def interval_columns(means: Sequence[float], sds: Sequence[float], digits: int) -> IntervalColumns:
    """``interval`` of each mean and its standard deviation."""
    return IntervalColumns(*bounds_columns(means, sds, _SCALES[digits], -math.inf))


def amount_columns(means: Sequence[float], sds: Sequence[float], digits: int) -> IntervalColumns:
    """``amount`` of each mean and its standard deviation."""
    return IntervalColumns(*bounds_columns(means, sds, _SCALES[digits], 0.0))


def column(values: Sequence[float], digits: int) -> list[float]:
    """Values at the wire's precision, as in ``interval``."""
    return rounded_column(values, _SCALES[digits])


def column_with_gaps(values: Sequence[float], is_there: Sequence[float], digits: int) -> list[float | None]:
    """``column`` with None for values that are not there."""
    return rounded_where(values, is_there, _SCALES[digits])


# Of a point's weight, fat, lean, carried mass, fat fraction and maintenance; carried mass may be less than is usual.
_POINT_SCALES = tuple(_SCALES[digits] for digits in (KG, KG, KG, KG, FRACTION, KCAL))
_NOT_OFF = (0.0,) * len(_POINT_SCALES)
_POINT_LEASTS = (0.0, 0.0, 0.0, -math.inf, 0.0, 0.0)


def forecast_points(dated: Sequence[tuple[date, PathPoint]]) -> list[ForecastPoint]:
    """The bodies at points of a path with 80 % intervals, all of them rounded at once."""
    means: list[float] = []
    sds: list[float] = []
    offs: list[float] = []
    people_sds: list[float] = []
    for _, (weight, fat, lean, carried, maintenance, fraction, sd, weighing_sd, people) in dated:
        _, fat_sd, lean_sd, carried_sd, maintenance_sd, fraction_sd = sd
        means += (weight, fat, lean, carried, fraction, maintenance)
        told = (weighing_sd, fat_sd, lean_sd, carried_sd, fraction_sd, maintenance_sd)
        sds += told
        if people is None:
            offs += _NOT_OFF
            people_sds += told
        else:
            (weight, fat, lean, carried, maintenance, fraction), (_, *of_tissue, maintenance_sd, fraction_sd), noisy = (
                people
            )
            offs += (weight, fat, lean, carried, fraction, maintenance)
            people_sds += (noisy, *of_tissue, fraction_sd, maintenance_sd)
    count = len(dated)
    each = map(Interval, *bounds_of_each(means, sds, offs, people_sds, _POINT_SCALES * count, _POINT_LEASTS * count))
    return [
        ForecastPoint(
            date=day,
            weight_kg=weight_kg,
            fat_kg=fat_kg,
            lean_kg=lean_kg,
            carried_kg=carried_kg,
            fat_fraction=fat_fraction,
            maintenance_kcal=maintenance_kcal,
        )
        for (day, _), weight_kg, fat_kg, lean_kg, carried_kg, fat_fraction, maintenance_kcal in zip(
            dated, each, each, each, each, each, each, strict=True
        )
    ]


def phase_totals(change: PathChange) -> PhaseTotals:
    """What a phase is expected to do from its first to its last day."""
    return PhaseTotals(
        weight_kg=interval(change.weight_kg, KG),
        fat_kg=interval(change.fat_kg, KG),
        lean_kg=interval(change.lean_kg, KG),
        carried_kg=interval(change.carried_kg, KG),
    )


def note(message: Message) -> Note:
    """A message with its text."""
    if not message.params:
        return _always(message.code)
    told = as_told(message)
    return Note(code=told.code, text=english(told), params=told.params)


@cache
def _always(code: str) -> Note:
    """The note of a message that always reads the same."""
    return Note(code=code, text=english(Message(code, {})), params={})


def notes(messages: list[Message] | tuple[Message, ...]) -> list[Note]:
    """Messages with their texts, each once."""
    return [note(m) for i, m in enumerate(messages) if not i or m not in messages[:i]]


# Of a rail's figures, by their unit; a week's share of body mass is as fine as the limits on it.
_RAIL_DIGITS = {"kcal/d": KCAL, "kcal a week": KCAL, "g/d": 0}
_RAIL_DIGITS |= dict.fromkeys(("1", "of maintenance", "of energy"), FRACTION)
_RAIL_DIGITS |= dict.fromkeys(("of body mass", "of body mass a week", "of body mass in two weeks"), 6)


def guard_rails(actions: Sequence[RailAction]) -> list[GuardRail]:
    """What each rail did."""
    return [_guard_rail(action) for action in actions]


def _guard_rail(action: RailAction) -> GuardRail:
    """What a rail did. Its limit and what it saw get more digits where they would look alike and are not."""
    digits = _RAIL_DIGITS.get(action.unit, 2)
    limit, observed = (rounded_if_any(value, digits) for value in (action.limit, action.observed))
    while limit == observed and action.limit != action.observed:
        digits += 1
        limit, observed = (rounded_if_any(value, digits) for value in (action.limit, action.observed))
    told = as_told(action.message)
    return GuardRail(
        id=action.id,
        action=action.action,
        limit=limit,
        observed=observed,
        unit=action.unit,
        code=told.code,
        text=english(told),
        params=told.params,
    )


_canonical = msgspec.msgpack.Encoder()  # of equal bodies the same bytes, and faster than text


@cache
def _seed(operation_id: str) -> "HASH":
    return sha256(f"{operation_id}\n{CONTRACT_VERSION}\n{MODEL_VERSION}\n".encode())


def provenance(operation_id: str, body: msgspec.Struct) -> dict[str, Any]:
    """Versions and the fingerprint of a request: equal fingerprints mean equal answers."""
    digest = _seed(operation_id).copy()
    digest.update(_canonical.encode(body))
    return {
        "model_version": MODEL_VERSION,
        "contract_version": CONTRACT_VERSION,
        "fingerprint": digest.hexdigest()[:32],
    }
