"""`POST /v1/reviews`: a phase against its plan, and what to do about it."""

from datetime import date

from steelyard import answers
from steelyard.science.numbers import Estimate
from steelyard.science.phase import FollowedPhase, FollowedWeek
from steelyard.science.review import Review

from ..operation.operation import computation
from ..schemas.reviews import (
    ChangeSoFar,
    EatenAgainstPlan,
    FirstWeeksAfter,
    PhaseFollowed,
    ReviewedWeek,
    ReviewRequest,
    ReviewResponse,
    VerdictProbabilities,
)
from . import mapping
from .examples.reviews import REVIEW_EXAMPLES
from .mapping import FRACTION, KCAL, KG, amount, interval


@computation(
    "/v1/reviews",
    operation_id="review_phase",
    tag="reviews",
    summary="Review a phase against its plan",
    request_examples=REVIEW_EXAMPLES,
)
def review_phase(body: ReviewRequest) -> ReviewResponse:
    """Compare a phase with its plan, and say what to do about it.

    The verdict is about tissue, so that water does not count, and comes with the probabilities behind it. Before a
    fortnight it is `too_early`. Off the plan, `correction_kcal` is the smallest change of intake that restores the
    target inside every guard rail, and `weeks` the forecast from today's body. The phase may end, be shortened or
    extended; `reasons` say why. Once it is over, `change` says what was lost, and `after` what the first weeks will
    look like. A deficit that is still running needs screening answers.
    """
    answer = answers.review_phase(
        answers.ReviewAsked(
            mapping.told(body.profile, screened=body.screening, entries=body.log),
            _phase(body.phase),
            body.as_of_date,
            body.is_finished,
        )
    )
    reviewed = answer.value
    found = reviewed.review
    maintenance = found.maintenance
    return ReviewResponse(
        **mapping.provenance("review_phase", body),
        as_of_date=reviewed.as_of,
        days_into_phase=found.days,
        is_finished=found.is_finished,
        verdict=found.verdict.value,
        probabilities=VerdictProbabilities(
            within_interval=round(found.probabilities.within_interval, 3),
            faster=round(found.probabilities.faster, 3),
            slower=round(found.probabilities.slower, 3),
        ),
        more_days_needed=found.more_days_needed or None,
        eaten=_eaten(found),
        change=_change(found),
        body_fat_fraction=amount(found.fat_fraction, FRACTION),
        maintenance_kcal=amount(maintenance.maintenance, KCAL),
        **mapping.log_scale(maintenance),
        maintenance_change_kcal=interval(found.maintenance_change, KCAL),
        correction_kcal=found.advice.correction_kcal,
        decision=found.advice.decision.value,
        end_date=reviewed.last_date,
        weeks=[_week(week) for week in reviewed.weeks],
        protein_reference_kg=mapping.rounded_if_any(found.protein_reference_kg, KG),
        ends_early_when=mapping.notes(found.ends_early_when),
        after=None if reviewed.after is None else _after(reviewed.after),
        guard_rails=[mapping.guard_rail(action) for action in answer.actions],
        notes=mapping.notes(found.notes),
        reasons=mapping.notes(answer.reasons),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _phase(phase: PhaseFollowed) -> FollowedPhase:
    return FollowedPhase(
        kind=phase.kind,
        start_day=phase.start_date.toordinal(),
        weeks=tuple(
            FollowedWeek(
                intake_kcal=week.intake_kcal,
                protein_g=week.protein_g,
                carbohydrate_g=week.carbohydrate_g,
                is_break=week.is_break,
            )
            for week in phase.weeks
        ),
        maintenance=Estimate(phase.maintenance.kcal_per_day, phase.maintenance.standard_deviation_kcal),
        usual_intake_kcal=phase.usual_intake_kcal,
        fat_loss_kg=phase.fat_loss_kg,
        fat_ceiling=phase.fat_ceiling_fraction,
    )


def _eaten(found: Review) -> EatenAgainstPlan:
    eaten, implied = found.eaten, found.implied_difference
    return EatenAgainstPlan(
        days=eaten.days,
        days_logged=eaten.days_logged,
        logged_kcal=None if eaten.logged_kcal is None else round(eaten.logged_kcal, KCAL),
        planned_kcal=round(eaten.planned_kcal, KCAL),
        difference_kcal=None if eaten.difference is None else interval(eaten.difference, KCAL),
        implied_difference_kcal=None if implied is None else interval(implied, KCAL),
    )


def _change(found: Review) -> ChangeSoFar:
    return ChangeSoFar(
        since_date=date.fromordinal(found.since_day),
        weight_kg=interval(found.changes.weight, KG),
        tissue_kg=interval(found.changes.tissue, KG),
        carried_kg=interval(found.changes.carried, KG),
        planned_tissue_kg=interval(found.planned_tissue, KG),
        fat_kg=interval(found.fat, KG),
        lean_kg=interval(found.lean, KG),
    )


def _week(week: answers.WeekAhead) -> ReviewedWeek:
    grams = week.diet.carbohydrate_g
    return ReviewedWeek(
        start_date=week.start,
        days=week.days,
        intake_kcal=round(week.diet.intake_kcal, KCAL),
        protein_g=round(week.diet.protein_g, KCAL),
        carbohydrate_g=None if grams is None else round(grams, KCAL),
        at_end=mapping.forecast_point(week.last_day, week.at_end),
    )


def _after(after: answers.WeeksAfter) -> FirstWeeksAfter:
    return FirstWeeksAfter(
        intake_kcal=after.intake_kcal,
        rebound_kg=interval(after.rebound, KG),
        points=[mapping.forecast_point(day, at) for day, at in after.points],
    )
