"""`POST /v1/forecasts`: where an intake leads, and the intake or date for a target."""

from datetime import date, timedelta

from steelyard.science.body import ALL_SOURCES, Body, Target, UncertaintySource
from steelyard.science.measures import assess, body_of, general_cautions
from steelyard.science.person import Session
from steelyard.science.phase import (
    PLAN_METHOD_IDS,
    QUESTION_METHOD_IDS,
    Answer,
    ScheduledIntake,
    answer_date,
    answer_intake,
    answer_path,
)
from steelyard.science.rails import Subject
from steelyard.science.register import OutOfDomain

from . import mapping
from .examples import FORECAST_EXAMPLES
from .logs import check_dates, maintenance_for
from .mapping import FRACTION, KCAL, KG, interval
from .operations import computation
from .pictures import FORECAST_PICTURES
from .points import forecast_point
from .schemas.forecasts import (
    DateQuestion,
    ForecastRequest,
    ForecastResponse,
    ForecastWeek,
    IntakeQuestion,
    NearestTarget,
    SourceEffect,
)
from .schemas.forecasts import Target as TargetField

_MOST_WEEKS = 156
_DIGITS = {"weight_kg": KG, "fat_kg": KG, "fat_fraction": FRACTION}


@computation(
    "/v1/forecasts",
    operation_id="forecast_intake",
    tag="forecasts",
    summary="Forecast an intake, or find the intake or the date for a target",
    request_examples=FORECAST_EXAMPLES,
    formats=FORECAST_PICTURES,
)
def forecast_intake(body: ForecastRequest) -> ForecastResponse:
    """Answer one question about an intake, inside every guard rail.

    `path`: where a schedule of intakes leads. `intake_for_target`: the constant intake that reaches a target by a
    date. `date_for_target`: the date on which a constant intake reaches it. A deficit needs screening answers, and
    an intake that a rail forbids is refused with a 422 that names the rule; a target that no safe intake reaches is
    answered with `feasible: false` and the nearest on each axis.

    `Accept` chooses among JSON and a picture (`image/svg+xml`, `image/png`, or its Vega-Lite specification).
    """
    check_dates(start_date=body.start_date)
    person = mapping.person(body.profile)
    assessed = assess(person)
    maintenance = maintenance_for(body.maintenance, body.log, person, assessed)
    subject = mapping.subject(person, assessed, maintenance, body.screening)
    answer = _answer(body, subject, body_of(person, assessed, maintenance, body.current_intake_kcal))
    path = answer.path
    noise = body.uncertainty_sources is None or UncertaintySource.DAILY_NOISE in body.uncertainty_sources
    spreads = path.spreads()
    end = len(path.states) - 1
    effects = sorted(path.fat_effects(end).items(), key=lambda item: -abs(item[1]))
    question = body.question
    digits = KG if not hasattr(question, "target") else _DIGITS[question.target.quantity]
    return ForecastResponse(
        **mapping.provenance("forecast_intake", body),
        feasible=answer.is_feasible,
        nearest=None
        if answer.is_feasible
        else NearestTarget(
            value=None if answer.nearest_value is None else round(answer.nearest_value, digits),
            by_date=_day(body.start_date, answer.nearest_day),
            intake_kcal=None if answer.nearest_intake_kcal is None else round(answer.nearest_intake_kcal, KCAL),
        ),
        intake_kcal=None if answer.found_intake_kcal is None else round(answer.found_intake_kcal, KCAL),
        reached_on=_day(body.start_date, answer.reached_day),
        maintenance_kcal=interval(maintenance, KCAL),
        weeks=[
            ForecastWeek(
                start_date=body.start_date + timedelta(days=int(path.states[i].day)),
                intake_kcal=round(intake, KCAL),
                energy_balance_kcal=round(path.energy_balance_kcal(i + 1), KCAL),
                at_end=forecast_point(
                    body.start_date + timedelta(days=int(path.states[i + 1].day) - 1),
                    path,
                    i + 1,
                    spreads[i + 1],
                    noise,
                ),
            )
            for i, intake in enumerate(answer.intakes)
        ],
        uncertainty=[SourceEffect(source=source.value, fat_kg=round(abs(effect), KG)) for source, effect in effects],
        guard_rails=[mapping.guard_rail(action) for action in answer.actions],
        reasons=mapping.notes([assessed.resting.reason, *answer.reasons]),
        cautions=mapping.notes(general_cautions(person, assessed)),
        methods=mapping.method_ids(assessed.resting.preferred, PLAN_METHOD_IDS, QUESTION_METHOD_IDS),
    )


def _answer(body: ForecastRequest, subject: Subject, of: Body) -> Answer:
    sources = ALL_SOURCES if body.uncertainty_sources is None else frozenset(body.uncertainty_sources)
    question = body.question
    if isinstance(question, IntakeQuestion):
        check_dates(**{"question/by_date": question.by_date})
        days = (question.by_date - body.start_date).days
        if not 14 <= days <= 7 * _MOST_WEEKS:
            detail = f"Set a date 14 days to {_MOST_WEEKS} weeks after the start; this is {days} days after it."
            raise OutOfDomain("DATE_OUT_OF_REACH", "/question/by_date", detail)
        target = _target(question.target)
        return answer_intake(subject, of, target, days, question.protein_g_per_kg, sources)
    if isinstance(question, DateQuestion):
        target = _target(question.target)
        return answer_date(subject, of, target, question.intake_kcal, question.protein_g_per_kg, sources)
    if sum(stretch.weeks for stretch in question.schedule) > _MOST_WEEKS:
        detail = f"The schedule is longer than {_MOST_WEEKS} weeks in all: shorten it."
        raise OutOfDomain("SCHEDULE_TOO_LONG", "/question/schedule", detail)
    schedule = [
        ScheduledIntake(
            weeks=s.weeks,
            intake_kcal=s.intake_kcal,
            protein_g_per_kg=s.protein_g_per_kg,
            carbohydrate_g=s.carbohydrate_g,
            sodium_change_mg=s.sodium_change_mg,
            added_sessions=tuple(
                Session(met=x.met, minutes=x.minutes, times_per_week=x.times_per_week) for x in s.added_sessions
            ),
        )
        for s in question.schedule
    ]
    for i, s in enumerate(question.schedule):
        if s.carbohydrate_g is not None and 4.0 * s.carbohydrate_g > s.intake_kcal:
            detail = f"{s.carbohydrate_g:g} g of carbohydrate is more energy than the {s.intake_kcal:g} kcal eaten."
            raise OutOfDomain("CARBOHYDRATE_EXCEEDS_INTAKE", f"/question/schedule/{i}/carbohydrate_g", detail)
    return answer_path(subject, of, schedule, sources)


def _target(field: TargetField) -> Target:
    least, most = {"weight_kg": (30, 300), "fat_kg": (1, 150), "fat_fraction": (0.03, 0.6)}[field.quantity]
    if not least <= field.value <= most:
        detail = f"Set a target of {least} to {most} for {field.quantity.value}; this is {field.value:g}."
        raise OutOfDomain("TARGET_OUT_OF_RANGE", "/question/target/value", detail)
    return Target(field.quantity, field.value)


def _day(start: date, days: int | None) -> date | None:
    return None if days is None else start + timedelta(days=days)
