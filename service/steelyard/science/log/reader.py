"""Read a person's log: their equations as prior, their body model for tissue and carried mass, one filter."""

import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

import msgspec

from ..body import BASELINE_CARBOHYDRATE_SHARE, BodyModel, BodyState, start_body
from ..measures import (
    Assessment,
    FatValue,
    MeasuredPerson,
    Measurement,
    MethodError,
    body_of,
    fat_by_size,
    males,
    method_error,
    read,
)
from ..numbers import Estimate
from ..person import BodyFatMethod, Person
from ..register import Basis, OutOfDomain, constant, traced
from . import kernel as k
from .cleaning import clean_log, entries_read
from .entries import DailyLog, EntriesRead, Log, Measured
from .events import moved_by_all, paused_until
from .explanations import WATER_OFF_KG, Cause, Explained
from .fat_and_lean import CompositionChange, FatReading, composition_change, partition_of
from .implied_intake import ImpliedIntake, implied_intakes
from .logging_scale import fill_intake, prior_on_logging_scale
from .maintenance import LogMaintenance, as_believed, maintenance_from_fit
from .onset import BodyRead, Onset, gone_on_from, warmed
from .steps import kcal_of_step, steps_lately
from .tissue_model import TissueModel, tissue_model
from .trend_reading import LEAST_DAYS, Trend, trend_from_fit
from .witnesses import LogFit, fit_log

USUAL_PROTEIN = constant(
    "protein_usual",
    1.6,
    unit="g/kg/d",
    summary="Protein taken as eaten through a log that does not tell",
    basis=Basis.JUDGEMENT,
)
MOST_LOG_DAYS = int(
    constant(
        "log_days_most",
        1830,
        unit="d",
        summary="Longest stretch of a log that is read at once (five years)",
        basis=Basis.JUDGEMENT,
    )
)

# What a reading that goes on takes of the body that was read first, as ``BodyRead`` and ``TissueModel`` have it.
_OF_FIRST_BODY = (
    "rho_kcal_per_kg", "rho_sd", "expenditure_slope_kcal_per_kg_day", "growth_kg_per_day", "growth_sd",
    "adaptation_gain", "carried_per_kcal",
)  # fmt: skip
# What is known of body fat is one value: its error is a bias, as good as whole.
_REPEATED_SD = 0.004


Tail = Callable[[DailyLog, int], int]  # of a log read on a day, the day from its first on which its tail begins


class Reading(NamedTuple):
    """A cleaned log with what it takes to read it, and the bank of explanations run over it up to a day."""

    log: Log
    as_of_day: int
    daily: DailyLog
    tissue: TissueModel
    model: BodyModel
    state: BodyState
    prior: Estimate  # maintenance by the equations of the body that was read first
    body: BodyRead
    onset: Onset | None
    fit: LogFit
    tail: int | None  # the day, counted from the first, whose explanations are kept to be handed on


def read_log(
    person: Person,
    assessed: Assessment,
    log: Log,
    as_of_day: int,
    usual_intake_kcal: float | None = None,
    *,
    phase_days: Sequence[int] = (),
    tail: Tail | None = None,
    with_views: bool = False,
) -> Reading:
    """Clean a log, calibrate the body model to it, and run the bank of explanations over it.

    Args: ``usual_intake_kcal``: eaten a day before the log began, on the logging scale; maintenance when None;
        ``phase_days``: on which a phase is known to have begun; ``tail``: from which day on a log is handed on as it
        was sent, where it is to be handed on; ``with_views``: whether each day is to be told.
    Raises: ``OutOfDomain`` on entries that cannot be meant or a log over five years.
    """
    if as_of_day - log.first_day >= MOST_LOG_DAYS:
        detail = f"The log spans more than {MOST_LOG_DAYS} days: send the last {MOST_LOG_DAYS} at most."
        raise OutOfDomain("LOG_TOO_LONG", "log", detail)
    onset = log.onset
    physical = _prior_of(assessed, onset)
    prior = prior_on_logging_scale(physical)
    daily = clean_log(log, as_of_day, _weight_before(onset) or person.weight_kg, prior.mean)
    usual, is_usual_known = usual_intake_kcal, usual_intake_kcal is not None
    if onset is not None and (onset.goes_on or usual is None):
        usual, is_usual_known = onset.body.usual_kcal, onset.body.is_usual_known
    settled = prior.mean if usual is None else usual
    longer, _ = warmed(onset, daily)
    filled = fill_intake(longer, prior.mean)
    carbohydrate = None
    if any(longer.has_carbohydrate):
        carbohydrate = [
            logged if has else BASELINE_CARBOHYDRATE_SHARE * intake
            for logged, has, intake in zip(longer.carbohydrate_kcal, longer.has_carbohydrate, filled, strict=True)
        ]
    model, state = start_body(body_of(person, assessed, physical))
    tissue = tissue_model(
        model,
        state,
        USUAL_PROTEIN,
        intake_kcal=filled,
        usual_intake_kcal=settled,
        is_usual_known=is_usual_known,
        carbohydrate_kcal=carbohydrate,
    )
    if daily.steps:
        counted = None if onset is None else onset.steps
        per_step = kcal_of_step(assessed.resting.mean) if counted is None else counted.kcal_per_step
        tissue = tissue._replace(kcal_per_step=per_step)
    if onset is not None:
        tissue = tissue._replace(**{name: getattr(onset.body, name) for name in _OF_FIRST_BODY})
    begins = None if tail is None else tail(daily, as_of_day)
    fit = fit_log(
        daily,
        physical,
        tissue,
        phase_days=[day - daily.first_day for day in phase_days],
        with_views=with_views,
        onset=onset,
        keep_day=begins or None,
    )
    read = _body_read(physical, tissue, is_usual_known, fit.settings[k.SETTLED])
    return Reading(log, as_of_day, daily, tissue, model, state, physical, read, onset, fit, begins)


def _body_read(prior: Estimate, tissue: TissueModel, is_usual_known: bool, settled_kg: float) -> BodyRead:
    return BodyRead(
        prior_kcal=float(prior.mean),
        prior_sd_kcal=float(prior.sd),
        usual_kcal=float(tissue.usual_kcal),
        is_usual_known=is_usual_known,
        settled_kg=settled_kg,
        **{name: float(getattr(tissue, name)) for name in _OF_FIRST_BODY},
    )


def entries_as_read(person: Person, assessed: Assessment, log: Log, until_day: int) -> EntriesRead:
    """The entries as ``read_log`` takes them.

    As they were sent where no weighing goes with the stated weight, which a reading of that log refuses.
    """
    usual = prior_on_logging_scale(_prior_of(assessed, log.onset)).mean
    try:
        return entries_read(log, until_day, _weight_before(log.onset) or person.weight_kg, usual)
    except OutOfDomain:
        weights = [(row.day, row.weight_kg) for row in log.weighings]
        return EntriesRead(weights, [(row.day, row.intake_kcal) for row in log.intakes if not row.is_partial])


def _prior_of(assessed: Assessment, onset: Onset | None) -> Estimate:
    return Estimate(assessed.total.mean, assessed.total.sd) if onset is None else onset.body.prior


def _weight_before(onset: Onset | None) -> float | None:
    """What a log that goes on was read to weigh where it begins [kg], which may be months before the stated weight."""
    read_before = gone_on_from(onset)
    return None if read_before is None else read_before.accounts[0].mean[0]


def maintenance_of(reading: Reading, assessed: Assessment) -> LogMaintenance:
    """Maintenance on the day that a log was read on, from the equations and the log."""
    return as_believed(maintenance_from_fit(reading.fit), reading.prior, assessed.resting.mean)


def trend_of_log(
    person: Person,
    assessed: Assessment,
    log: Log,
    as_of_day: int,
    usual_intake_kcal: float | None = None,
    *,
    phase_days: Sequence[int] = (),
    tail: Tail | None = None,
    is_loss_meant: bool | None = None,
) -> tuple[Trend, Reading]:
    """The trend of a log as read on the as-of day, and the reading it rests on. Args as for ``read_log``.

    ``is_loss_meant``: see ``trend_from_fit``.
    """
    reading = read_log(
        person,
        assessed,
        log,
        as_of_day,
        usual_intake_kcal,
        phase_days=phase_days,
        tail=tail,
        with_views=True,
    )
    wait = _days_to_wait(log, as_of_day, phase_days)
    resting = assessed.resting.mean
    trend = trend_from_fit(reading.daily, reading.fit, is_loss_meant, wait, resting, reading.onset)
    lately = steps_lately(reading.daily, reading.tissue.kcal_per_step) if reading.daily.steps else None
    explained = _with_causes_told(trend.explained, log, as_of_day)
    return msgspec.structs.replace(trend, steps=lately, explained=explained), reading


def _with_causes_told(explained: Explained | None, log: Log, as_of_day: int) -> Explained | None:
    """An explanation of weight that is not waited for where its water is what the told events lead to expect.

    Of such water it is known why it came, and that of creatine stays.
    """
    if explained is None or explained.causes[0].cause is not Cause.WATER or not log.events:
        return explained
    held = moved_by_all(log.events, as_of_day - explained.days, as_of_day)
    if not held.mean or abs(explained.water_off.mean - held.mean) > WATER_OFF_KG:
        return explained
    return explained._replace(settles=None)


def _days_to_wait(log: Log, as_of_day: int, phase_days: Sequence[int]) -> int:
    """Days until a direction may be told, as a verdict on a phase waits: a fortnight into a phase that is known to have
    begun, and until an event that moves weight is over."""
    begun = [as_of_day - day for day in phase_days if day <= as_of_day]
    wait = max(0, LEAST_DAYS - min(begun, default=LEAST_DAYS))
    paused = paused_until(log.events, as_of_day)
    return wait if paused is None else max(wait, paused[0] - as_of_day + 1)


class KnownFat(NamedTuple):
    """Body fat as known on a day, whatever it rests on (fraction), the method that counts most, and the weight [kg]."""

    day: int
    fat: Estimate
    method: BodyFatMethod
    weight_kg: float

    def fat_at(self, weight_kg: float) -> Estimate:
        """Body fat at another weight (fraction), of which no log tells how it came: all that changed may be fat, or
        none, and each share between is as likely (a uniform distribution; judgement)."""
        change = weight_kg / self.weight_kg - 1.0
        mean = (self.fat.mean + 0.5 * change) / (1.0 + change)
        return Estimate(mean, math.hypot(self.fat.sd, change / (1.0 + change) / math.sqrt(12.0)))


def composition_of_log(
    person: Person,
    reading: Reading,
    trend: Trend,
    measured: Sequence[Measured],
    known: KnownFat | None = None,
) -> CompositionChange | None:
    """Fat and lean part of the change of tissue over a log; None for a single day.

    The person's own reading of body fat counts as one of the last day; what was ``known`` on a day of the log, or
    before it, is a reading of that day, or of its first, which shares its error with others of its method. Raises
    ``OutOfDomain`` on a measurement that lies outside the log or that no living body has.
    """
    if not trend.changes:
        return None
    daily, weights = reading.daily, trend.smoothed.weight_kg
    last = len(weights) - 1
    readings = []
    for measure in sorted(measured, key=lambda m: m.day):
        at = measure.day - daily.first_day
        if not 0 <= at <= last:
            detail = "Send measurements of days within the log: from its first entry to the day that it is read at."
            raise OutOfDomain("MEASUREMENT_OUTSIDE_LOG", f"{measure.field}.date", detail)
        try:
            readings.append(FatReading(at, _fat_value(person, weights[at], measure.measurement)))
        except OutOfDomain as error:
            raise OutOfDomain(error.code, f"{measure.field}.measurement", error.detail) from error
    # What height and weight said before the log they say of its first day as well.
    known_from = -math.inf if known is not None and known.method is not BodyFatMethod.BMI_EQUATION else 0
    if known is not None and known_from <= known.day - daily.first_day <= last:
        at = max(0, known.day - daily.first_day)
        fat = known.fat if known.day >= daily.first_day else known.fat_at(weights[0])
        readings.append(FatReading(at, FatValue(fat.mean, known.method, MethodError(fat.sd, _REPEATED_SD, 0.0))))
        readings.sort(key=lambda each: each.day)
    if person.body_fat is not None:
        told = person.body_fat
        spread = method_error(told.method, person.training.status)
        readings.append(FatReading(last, FatValue(told.fat_fraction, told.method, spread)))
    by_size = fat_by_size(person)
    weight = weights[last]
    tissue = trend.smoothed.tissue_kg
    return composition_change(
        Estimate(by_size.mean * weight, by_size.sd * weight),
        partition_of(reading.model, reading.state, USUAL_PROTEIN, is_gaining=tissue[-1] > tissue[0]),
        readings,
        weights,
        tissue,
        trend.changes[-1].tissue.sd,
    )


def _fat_value(person: Person, weight_kg: float, measurement: Measurement) -> FatValue:
    subject = MeasuredPerson(
        sex=person.sex,
        age_years=person.age_years,
        height_cm=person.height_cm,
        weight_kg=weight_kg,
        training=person.training.status,
    )
    values = [read(subject, measurement, male).value for male in males(person.sex)]
    return values[0]._replace(fat_fraction=sum(value.fat_fraction for value in values) / len(values))


@traced
def intake_from_weight(assessed: Assessment, reading: Reading, trend: Trend) -> dict[int, ImpliedIntake]:
    """Mean intake from the path of weight alone, by length of window in days, for the windows of ``trend``."""
    windows = [change.days for change in trend.changes]
    found = implied_intakes(reading.daily, Estimate(assessed.total.mean, assessed.total.sd), reading.tissue, windows)
    return {implied.days: implied for implied in found}
