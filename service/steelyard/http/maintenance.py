"""`POST /v1/maintenance`: the intake at which tissue energy is stable."""

from datetime import date
from functools import cache

from steelyard.science.log import LogMaintenance, log_maintenance
from steelyard.science.measures import Assessment, assess, cross_check, general_cautions
from steelyard.science.numbers import Estimate
from steelyard.science.person import Person
from steelyard.science.register import FROM_EQUATIONS, ON_LOGGING_SCALE

from . import mapping
from .examples import MAINTENANCE_EXAMPLES
from .logs import as_of_day, check_dates
from .mapping import FRACTION, KCAL, interval
from .operations import computation
from .schemas.maintenance import Contribution, EquationRow, MaintenanceRequest, MaintenanceResponse

_LOG_METHODS = ("log_maintenance", "weight_filter", "linearised_energy_balance", "carried_mass_model")


@computation(
    "/v1/maintenance",
    operation_id="estimate_maintenance",
    tag="maintenance",
    summary="Estimate maintenance energy",
    request_examples=MAINTENANCE_EXAMPLES,
)
def estimate_maintenance(body: MaintenanceRequest) -> MaintenanceResponse:
    """Estimate maintenance from prediction equations, activity and, where there is one, a log.

    The equations are the prior, the log of weights and intakes the likelihood; the answer is on the person's own
    logging scale and says how much each counted. Every equation is listed with whether it applies.
    """
    check_dates(as_of_date=body.as_of_date)
    person = mapping.person(body.profile)
    assessed = assess(person)
    learnt: LogMaintenance | None = None
    day: date | None = body.as_of_date
    if body.log is not None:
        log = mapping.log(body.log)
        ordinal = as_of_day(body.log, body.as_of_date, log)
        day = date.fromordinal(ordinal)
        learnt = log_maintenance(person, assessed, log, ordinal)
    return _response(body, person, assessed, learnt, day)


def _response(
    body: MaintenanceRequest, person: Person, assessed: Assessment, learnt: LogMaintenance | None, day: date | None
) -> MaintenanceResponse:
    prior = Estimate(assessed.total.mean, assessed.total.sd)
    estimate = prior if learnt is None else learnt.maintenance
    cautions = general_cautions(person, assessed)
    cautions.append(FROM_EQUATIONS if learnt is None else ON_LOGGING_SCALE)
    physical = None if learnt is None else interval(learnt.physical, KCAL)
    level = (assessed.total.mean if learnt is None else learnt.physical.mean) / assessed.resting.mean
    return MaintenanceResponse(
        **mapping.provenance("estimate_maintenance", body),
        as_of_date=day,
        maintenance_kcal=interval(estimate, KCAL),
        physical_maintenance_kcal=physical,
        resting_kcal=interval(assessed.resting, KCAL),
        activity_level=round(level, 2),
        body_fat_fraction=interval(assessed.fat, FRACTION),
        equations=_rows(person, assessed),
        contribution=Contribution(
            prior_kcal=interval(prior, KCAL),
            prior_share=round(1.0 if learnt is None else learnt.prior_share, 3),
            log_share=round(0.0 if learnt is None else learnt.log_share, 3),
        ),
        reasons=mapping.notes([assessed.resting.reason, *assessed.resting.notes, *assessed.total.notes]),
        cautions=mapping.notes(cautions),
        methods=_methods(assessed.resting.preferred, learnt is not None),
    )


@cache  # as many as there are sets of preferred equations
def _methods(preferred: tuple[str, ...], has_log: bool) -> list[str]:
    return sorted({*preferred, "forecast_interval", *(_LOG_METHODS if has_log else ())})


def _rows(person: Person, assessed: Assessment) -> list[EquationRow]:
    resting = assessed.resting
    rows = [
        EquationRow(id, round(value), is_applicable, weight > 0.0, notes)
        for (id, _, is_applicable, weight, _, notes), value in zip(resting.lines, resting.values, strict=True)
    ]
    rows += [
        EquationRow(
            row.id,
            round(row.kcal_per_day),
            is_applicable=row.is_applicable and row.is_match,
            is_used=False,
            notes=[row.why_not.text] if row.why_not else [],
        )
        for row in cross_check(person, assessed.total.pal)
    ]
    return rows
