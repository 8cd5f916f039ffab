"""`POST /v1/reviews`: a phase against its plan, and what to do about it."""

from datetime import date, timedelta

from msgspec.structs import replace

from steelyard import answers
from steelyard.science.phase import BodyThen, FollowedWeek, Verdict
from steelyard.science.register import OutOfDomain
from steelyard.science.review import Before, OpenQuestion, Review, Settled, attention_of

from ..operation.operation import computation
from ..schemas.phases import ForecastPoint, PhaseFollowed
from ..schemas.reviews import (
    ChangeSoFar,
    EatenAgainstPlan,
    FirstWeeksAfter,
    ReviewedWeek,
    ReviewRequest,
    ReviewResponse,
    SettlingQuestion,
    VerdictProbabilities,
)
from ..schemas.rosters import Attention
from ..schemas.states import State
from ..schemas.trends import ExplanationRow
from . import mapping, phases, rosters, states
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
    fortnight it is `too_early`. A phase is changed little and seldom: two readings a week apart must agree, its end
    moves before its intake does, and a step is at most 200 kcal a day. Called on the next day it says the same. Where
    scale and log do not agree `question` asks what settles it. `weeks` is the forecast from today's body, and
    `reasons` say why. Once it is over, `change` says what was lost, and `after` what the first weeks will
    look like. A deficit that is still running needs screening answers.
    """
    phase = body.phase
    if phase is None:
        if body.state is None or body.state.phase is None:
            raise OutOfDomain("PHASE_MISSING", "phase", "Send the phase, or a state with the one under way.")
        phase = body.state.phase
    plan = phases.followed(phase, "state.phase" if body.phase is None else "phase")
    answer = answers.review_phase(
        answers.ReviewAsked(
            mapping.told(body.profile, screened=body.screening, entries=body.log, state=body.state),
            plan,
            body.as_of_date,
            body.is_finished,
            None if body.settled is None else Settled(day=body.settled.date.toordinal(), found=body.settled.found),
            phases.starting_body(phase),
            _before(body.state),
            states.phases_known(body.state).cuts_before(phase.start_date).deficit_before,
        )
    )
    reviewed = answer.value
    found = reviewed.review
    maintenance = found.maintenance
    attention = _attention(body, answer)
    weeks, after = reviewed.weeks, reviewed.after
    ends = mapping.forecast_points([(week.last_day, week.at_end) for week in weeks])
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
        question=None if found.question is None else _question(found.question),
        eaten=_eaten(found),
        change=_change(found),
        body_fat_fraction=amount(found.fat_fraction, FRACTION),
        maintenance_kcal=amount(found.maintenance_told, KCAL),
        **mapping.log_scale(maintenance),
        maintenance_change_kcal=interval(found.maintenance_change, KCAL),
        correction_kcal=found.advice.correction_kcal,
        decision=found.advice.decision.value,
        end_date=reviewed.last_date,
        weeks=[
            _week(week, plan.planned_week_of(week.start.toordinal() - plan.start_day), at_end)
            for week, at_end in zip(weeks, ends, strict=True)
        ],
        protein_reference_kg=mapping.rounded_if_any(found.protein_reference_kg, KG),
        ends_early_when=mapping.notes(found.ends_early_when),
        after=None if after is None else _after(after),
        guard_rails=mapping.guard_rails(answer.actions),
        notes=mapping.notes(found.notes),
        attention=attention,
        state=_state(body, phase, plan.end_day, answer, attention),
        reasons=mapping.notes(answer.reasons),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _state(
    body: ReviewRequest,
    phase: PhaseFollowed,
    end_day: int,
    answer: answers.Answered[answers.PhaseReviewed],
    attention: Attention,
) -> State:
    """What is known, and the phase as it goes on; one that ends joins those that are over."""
    now, reviewed = answer.state, answer.value
    assert now is not None
    before, found = body.state, reviewed.review
    history = None if before is None else before.phase_history
    if phase.start_body is None:
        phase = replace(phase, start_body=phases.start_body(reviewed.start))
    if found.advice.days_ahead == 0:
        known = states.phases_known(before)._replace(
            under_way=phases.under_way(phase), body=BodyThen(reviewed.body.weight.mean, reviewed.body.fat_kg.mean)
        )
        over = phases.phases_over(known.ended(reviewed.last_date + timedelta(days=1)))
        return states.state(now, None, over, attention)
    due = date.fromordinal(end_day - 1)
    reason = found.verdict.value
    return states.state(
        now,
        phases.successor(phase, reviewed.as_of, found.advice.correction_kcal, reviewed.last_date, due, reason),
        history,
        attention,
        states.question_to_hand_on(found.asked),
    )


def _before(state: State | None) -> Before | None:
    """What the reviews before told, as the state carries it."""
    if state is None:
        return None
    last, asked = state.attention, states.question_asked(state.question)
    if last is None or last.verdict not in set(Verdict):
        return Before(asked=asked)
    return Before(day=last.as_of_date.toordinal(), verdict=Verdict(last.verdict), asked=asked)


def _attention(body: ReviewRequest, answer: answers.Answered[answers.PhaseReviewed]) -> Attention:
    state, reviewed = body.state, answer.value
    before = None if state is None or state.attention is None else rosters.told(state.attention, "state.attention")
    log = None if answer.state is None else answer.state.log
    last = None if log is None else date.fromordinal(log.last_told_day)
    return rosters.shown(attention_of(reviewed.review, reviewed.as_of, last, before))


def _question(question: OpenQuestion) -> SettlingQuestion:
    return SettlingQuestion(
        causes=[ExplanationRow(one.cause.value, round(one.probability, 3)) for one in question.causes],
        test=question.test.value,
        ask=mapping.notes([question.ask])[0],
        asked_date=date.fromordinal(question.asked.day),
        asked_count=question.asked.times,
        until_date=date.fromordinal(question.until_day),
        conclusions=mapping.notes(question.conclusions),
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


def _week(week: answers.WeekAhead, planned: FollowedWeek, at_end: ForecastPoint) -> ReviewedWeek:
    grams = week.diet.carbohydrate_g
    return ReviewedWeek(
        start_date=week.start,
        days=week.days,
        intake_kcal=round(week.diet.intake_kcal, KCAL),
        protein_g=round(week.diet.protein_g, KCAL),
        carbohydrate_g=None if grams is None else round(grams, KCAL),
        planned_intake_kcal=round(planned.intake_kcal, KCAL),
        at_end=at_end,
    )


def _after(after: answers.WeeksAfter) -> FirstWeeksAfter:
    return FirstWeeksAfter(
        intake_kcal=after.intake_kcal,
        rebound_kg=interval(after.rebound, KG),
        points=mapping.forecast_points(after.points),
    )
