"""Read a person's log: their equations as prior, their body model for tissue and carried mass, one filter."""

from typing import NamedTuple

from .assessment import Assessment, body_of
from .energy_balance import BASELINE_CARBOHYDRATE_SHARE
from .errors import OutOfDomain
from .evidence import Basis, constant
from .forecast import start_body
from .log import DailyLog, Log, clean_log
from .log_maintenance import LogMaintenance, fill_intake, maintenance_from_log, prior_on_logging_scale
from .person import Person
from .tissue_model import TissueModel, tissue_model
from .trend import Trend, read_trend

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


class Reading(NamedTuple):
    """A cleaned log with what it takes to read it."""

    daily: DailyLog
    tissue: TissueModel


def last_day(log: Log) -> int:
    """The last day that a log says anything of. Raises ``OutOfDomain`` for a log without weighings."""
    if not log.weighings:
        raise OutOfDomain("LOG_WITHOUT_WEIGHT", "/log/weights", "Send at least one weighing.")
    return max(max(w.day for w in log.weighings), max((i.day for i in log.intakes), default=0))


def prepare(
    person: Person, assessed: Assessment, log: Log, as_of_day: int, usual_intake_kcal: float | None = None
) -> Reading:
    """Clean a log and calibrate the body model to it.

    Args: ``usual_intake_kcal``: eaten a day before the log began, on the logging scale; maintenance when None.
    Raises: ``OutOfDomain`` on entries that cannot be meant or a log over five years.
    """
    days = [w.day for w in log.weighings] + [i.day for i in log.intakes]
    if days and as_of_day - min(days) >= MOST_LOG_DAYS:
        detail = f"The log spans more than {MOST_LOG_DAYS} days: send the last {MOST_LOG_DAYS} at most."
        raise OutOfDomain("LOG_TOO_LONG", "/log", detail)
    daily = clean_log(log, as_of_day, person.weight_kg)
    prior = prior_on_logging_scale(assessed.total)
    usual = usual_intake_kcal if usual_intake_kcal is not None else prior.mean
    filled = fill_intake(daily, prior.mean)
    carbohydrate = None
    if any(daily.has_carbohydrate):
        carbohydrate = [
            logged if has else BASELINE_CARBOHYDRATE_SHARE * intake
            for logged, has, intake in zip(
                daily.carbohydrate_kcal, daily.has_carbohydrate, filled.intake_kcal, strict=True
            )
        ]
    model, state = start_body(body_of(person, assessed, assessed.total))
    tissue = tissue_model(
        model,
        state,
        USUAL_PROTEIN,
        intake_kcal=filled.intake_kcal,
        usual_intake_kcal=usual,
        carbohydrate_kcal=carbohydrate,
    )
    return Reading(daily, tissue)


def log_maintenance(person: Person, assessed: Assessment, log: Log, as_of_day: int) -> LogMaintenance:
    """Maintenance on the as-of day, from the equations and the log."""
    reading = prepare(person, assessed, log, as_of_day)
    return maintenance_from_log(reading.daily, assessed.total, reading.tissue)


def trend(
    person: Person, assessed: Assessment, log: Log, as_of_day: int, usual_intake_kcal: float | None = None
) -> tuple[Trend, Reading]:
    """The trend of a log as read on the as-of day, and the reading it rests on."""
    reading = prepare(person, assessed, log, as_of_day, usual_intake_kcal)
    return read_trend(reading.daily, assessed.total, reading.tissue), reading
