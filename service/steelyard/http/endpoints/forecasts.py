"""`POST /v1/forecasts`: where an intake leads, and the intake or date for a target."""

from steelyard import answers
from steelyard.science.body import ALL_SOURCES, BodyTarget
from steelyard.science.phase import CutsBefore, History, ScheduledIntake

from ..operation.operation import computation
from ..schemas.forecasts import (
    DateQuestion,
    ForecastRequest,
    ForecastResponse,
    ForecastWeek,
    IntakeQuestion,
    IntakeStretch,
    NearestTarget,
    PathQuestion,
    SourceEffect,
    Target,
)
from . import mapping, states
from .examples.examples import FORECAST_EXAMPLES
from .mapping import FRACTION, KCAL, KG, amount, rounded_if_any

_DIGITS = {"weight_kg": KG, "fat_kg": KG, "fat_fraction": FRACTION}


@computation(
    "/v1/forecasts",
    operation_id="forecast_intake",
    tag="forecasts",
    summary="Forecast an intake, or find the intake or the date for a target",
    request_examples=FORECAST_EXAMPLES,
)
def forecast_intake(body: ForecastRequest) -> ForecastResponse:
    """Answer one question about an intake, inside every guard rail.

    `path`: where a schedule of intakes leads. `intake_for_target`: the constant intake that reaches a target by a
    date. `date_for_target`: the date on which a constant intake reaches it. A deficit needs screening answers, and
    an intake that a rail forbids is refused with a 422 that names the rule; a target that no safe intake reaches is
    answered with `feasible: false` and the nearest on each axis.
    """
    question = body.question
    answer = answers.forecast_intake(
        answers.ForecastAsked(
            told=mapping.told_in(body),
            start=body.start_date,
            question=_asked(question),
            sources=ALL_SOURCES if body.uncertainty_sources is None else frozenset(body.uncertainty_sources),
            before=_before(body),
        )
    )
    found = answer.value
    ends = mapping.forecast_points([(week.last_day, week.at_end) for week in found.weeks])
    digits = KG if isinstance(question, PathQuestion) else _DIGITS[question.target.quantity]
    return ForecastResponse(
        **mapping.provenance("forecast_intake", body),
        feasible=found.nearest is None,
        nearest=None
        if found.nearest is None
        else NearestTarget(
            value=rounded_if_any(found.nearest.value, digits),
            by_date=found.nearest.by,
            intake_kcal=rounded_if_any(found.nearest.intake_kcal, KCAL),
        ),
        intake_kcal=rounded_if_any(found.intake_kcal, KCAL),
        reached_on=found.reached_on,
        maintenance_kcal=amount(found.maintenance, KCAL),
        **mapping.log_scale(found.learnt),
        protein_reference_kg=round(found.protein_reference_kg, KG),
        weeks=[
            ForecastWeek(
                start_date=week.start,
                intake_kcal=round(week.intake_kcal, KCAL),
                energy_balance_kcal=round(week.energy_balance_kcal, KCAL),
                at_end=at_end,
            )
            for week, at_end in zip(found.weeks, ends, strict=True)
        ],
        uncertainty=[
            SourceEffect(source=source.value, fat_kg=round(abs(effect), KG)) for source, effect in found.effects
        ],
        guard_rails=mapping.guard_rails(answer.actions),
        state=mapping.state_on(answer.state, body.state),
        reasons=mapping.notes(answer.reasons),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _before(body: ForecastRequest) -> CutsBefore:
    """The cuts already done, as told, else as the state knows them; a deficit under way goes on whatever is told."""
    known, start, told = states.phases_known(body.state), body.start_date, body.cut_history
    if told is None:
        return CutsBefore(known.deficit_before(start), known.cuts_before(start, goes_on=True))
    history = History(told.cuts_last_12_months, told.weeks_since_last_cut)
    return CutsBefore(known.deficit_before(start) if known.in_deficit(start) else history.deficit_before, history)


def _asked(
    question: PathQuestion | IntakeQuestion | DateQuestion,
) -> answers.PathAsked | answers.IntakeAsked | answers.DateAsked:
    if isinstance(question, IntakeQuestion):
        return answers.IntakeAsked(_target(question.target), question.by_date, question.protein_g_per_kg)
    if isinstance(question, DateQuestion):
        return answers.DateAsked(_target(question.target), question.intake_kcal, question.protein_g_per_kg)
    return answers.PathAsked([_scheduled(stretch) for stretch in question.schedule])


def _target(target: Target) -> BodyTarget:
    return BodyTarget(target.quantity, target.value)


def _scheduled(stretch: IntakeStretch) -> ScheduledIntake:
    return ScheduledIntake(
        weeks=stretch.weeks,
        intake_kcal=stretch.intake_kcal,
        protein_g_per_kg=stretch.protein_g_per_kg,
        carbohydrate_g=stretch.carbohydrate_g,
        sodium_change_mg=stretch.sodium_change_mg,
        added_sessions=tuple(mapping.session(added) for added in stretch.added_sessions),
    )
