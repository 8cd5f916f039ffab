"""`POST /v1/decisions`: which phase now, and why."""

from msgspec.structs import replace

from steelyard import answers
from steelyard.science.decision import Fragment, OngoingPhase, Pattern
from steelyard.science.phase import Band, History, PhaseKind
from steelyard.science.register import Message

from ..operation.operation import computation
from ..schemas import decisions as schema
from ..schemas.states import State
from . import mapping, phases, states
from .examples.decisions import DECISION_EXAMPLES
from .mapping import FRACTION, KCAL, KG, amount, interval


@computation(
    "/v1/decisions",
    operation_id="decide_phase",
    tag="decisions",
    summary="Decide which phase comes next",
    request_examples=DECISION_EXAMPLES,
    in_thread=True,
)
def decide_phase(body: schema.DecisionRequest) -> schema.DecisionResponse:
    """Say which phase comes next and why, what the alternatives cost, and what would change the answer.

    A cut is weighed against not cutting over 26 weeks: lean tissue gained, less a price for weeks of dieting and for
    body fat over the line of the person's motive. From it follows the body fat at which a cut becomes due; under it
    the answer is "not yet". Rules come first: a cut under way or just over, an event, the guard rails. No deficit is
    recommended where a rail refuses it: the answer then is 200 with another phase and the reason. Body fat computed
    from height and weight never starts a cut. To whom no body fat may be spoken of, none is: `leanness` and the fat
    of the alternatives are null.
    """
    answer = answers.decide_phase(_asked(body))
    found = answer.value
    return schema.DecisionResponse(
        **mapping.provenance("decide_phase", body),
        situation=found.situation.value,
        decided_by="trade" if found.by_trade else "rule",
        recommended=schema.NextPhase(
            kind=found.recommended.kind.value,
            weeks=found.recommended.weeks,
            plan=_plan(body, found, found.recommended.fragment),
        ),
        alternatives=[_alternative(body, found, way) for way in found.ways],
        horizon_weeks=found.horizon_weeks,
        leanness=None if found.leanness is None else _leanness(found.leanness),
        pattern=None if found.pattern is None else _pattern(found.pattern, found.pattern_notes),
        reasons=mapping.notes(answer.reasons),
        what_would_change=mapping.notes(found.what_would_change),
        maintenance_kcal=amount(found.maintenance, KCAL),
        **mapping.log_scale(found.learnt),
        guard_rails=mapping.guard_rails(answer.actions),
        state=_state(body, answer.state),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _asked(body: schema.DecisionRequest) -> answers.DecisionAsked:
    band, present, history = body.band, body.present_phase, body.phase_history
    known = states.phases_known(_before(body)).running(body.as_of_date)
    if present is None and known.under_way is not None:
        weeks = phases.weeks_done(known.under_way.start, body.as_of_date)
        present = None if weeks is None else schema.PresentPhase(kind=known.under_way.kind, weeks_done=weeks)
    return answers.DecisionAsked(
        mapping.told_in(body),
        as_of=body.as_of_date,
        goal=body.goal,
        feeling=body.feeling,
        band=None if band is None else Band(band.lower_fat_fraction, band.upper_fat_fraction),
        event=body.event_date,
        event_fat_fraction=body.event_fat_fraction,
        present=None if present is None else OngoingPhase(present.kind, present.weeks_done),
        history=known.over if history is None else phases.past_phases(history, "phase_history"),
    )


def _before(body: schema.DecisionRequest) -> State | None:
    """The state on the day of the decision. A phase that the caller says is under way is not over."""
    return body.state if body.present_phase is not None else states.on_day(body.state, body.as_of_date)


def _state(body: schema.DecisionRequest, now: answers.StateNow | None) -> State:
    """What is known, with the phases that are over as they were told."""
    found = mapping.state_on(now, _before(body))
    return found if body.phase_history is None else replace(found, phase_history=body.phase_history)


def _plan(body: schema.DecisionRequest, found: answers.PhaseDecided, fragment: Fragment | None) -> schema.PlanFragment:
    assert fragment is not None
    return schema.PlanFragment(
        start_date=body.as_of_date,
        phase=_phase(body, fragment),
        return_to_gain=schema.SuggestedReturn(
            maintenance_weeks=fragment.maintenance_weeks,
            gain_weeks=fragment.gain_weeks,
            surplus_kcal=fragment.surplus_kcal,
            fat_ceiling_fraction=fragment.fat_ceiling if fragment.gain_weeks else None,
        ),
        cut_history=None if found.cut_history is None else _known_cuts(found.cut_history),
        current_intake_kcal=body.current_intake_kcal,
    )


def _phase(
    body: schema.DecisionRequest, fragment: Fragment
) -> schema.SuggestedMiniCut | schema.SuggestedCut | schema.SuggestedGain | schema.SuggestedHold:
    if fragment.kind is PhaseKind.GAIN:
        return schema.SuggestedGain(
            weeks=fragment.weeks, surplus_kcal=fragment.surplus_kcal, fat_ceiling_fraction=fragment.fat_ceiling
        )
    if fragment.kind is PhaseKind.MAINTENANCE:
        assert fragment.weeks is not None
        return schema.SuggestedHold(weeks=fragment.weeks)
    make = schema.SuggestedMiniCut if fragment.kind is PhaseKind.MINI_CUT else schema.SuggestedCut
    return make(
        weeks=fragment.weeks,
        target_fat_fraction=fragment.target_fat_fraction,
        event_date=body.event_date if fragment.for_event else None,
        weeks_done=fragment.weeks_done,
    )


def _known_cuts(history: History) -> schema.KnownCuts:
    assert history.cuts_last_12_months is not None
    return schema.KnownCuts(
        cuts_last_12_months=history.cuts_last_12_months, weeks_since_last_cut=history.weeks_since_last_cut
    )


def _alternative(
    body: schema.DecisionRequest, found: answers.PhaseDecided, way: answers.WayOn
) -> schema.PhaseAlternative:
    score = way.score
    if score is None:
        return schema.PhaseAlternative(
            kind=way.kind.value, open=False, closed_because=None if way.closed is None else mapping.note(way.closed),
            weeks=None, plan_weeks=None, lean_kg=None, fat_kg=None, end_fat_fraction=None, days_dieting=None,
            weeks_above_band=None, score=None, plan=None,
        )  # fmt: skip
    return schema.PhaseAlternative(
        kind=way.kind.value,
        open=True,
        closed_because=None,
        weeks=way.weeks,
        plan_weeks=way.weeks_asked,
        lean_kg=None if way.lean_kg is None else interval(way.lean_kg, KG),
        fat_kg=None if way.fat_kg is None else interval(way.fat_kg, KG),
        end_fat_fraction=None if way.end_fat_fraction is None else amount(way.end_fat_fraction, FRACTION),
        days_dieting=7 * way.weeks_dieting,
        weeks_above_band=way.weeks_above_band,
        score=schema.ScoreParts(
            lean_kg=round(score.lean_kg, KG),
            dieting_price_kg=round(score.dieting_price_kg, KG),
            leanness_price_kg=round(score.leanness_price_kg, KG),
            total_kg=round(score.total_kg, KG),
        ),
        plan=_plan(body, found, way.fragment),
    )


def _leanness(found: answers.LeannessFound) -> schema.LeannessView:
    reading, healthy = found.reading, found.healthy
    return schema.LeannessView(
        fat_fraction=amount(found.fat, FRACTION),
        band_lower_fat_fraction=round(found.band.lower, FRACTION),
        band_upper_fat_fraction=round(found.band.upper, FRACTION),
        band_basis=found.band_basis,
        counts_from_fat_fraction=round(found.lines.counts_from, FRACTION),
        target_fat_fraction=round(found.lines.target, FRACTION),
        cut_due_fat_fraction=_rounded(found.due),
        cut_due_date=found.due_date,
        healthy_lower_fat_fraction=None if healthy is None else healthy.lower,
        healthy_upper_fat_fraction=None if healthy is None else healthy.upper,
        reading_is_good_enough=reading.is_good_enough,
        reading_sd=round(found.fat.sd, FRACTION),
        probability_over_line=round(reading.probability_over_line, FRACTION),
        margin_over_due=_rounded(reading.margin),
        probability_other_side=_rounded(reading.probability_other_side),
    )


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, FRACTION)


def _pattern(pattern: Pattern, notes: list[Message]) -> schema.CyclingPattern:
    return schema.CyclingPattern(
        cycles=pattern.cycles,
        weeks=pattern.weeks,
        weeks_dieting=pattern.weeks_dieting,
        lean_cost_kg=interval(pattern.lean_cost_kg, KG),
        fat_cost_kg=interval(pattern.fat_cost_kg, KG),
        weeks_lost=pattern.weeks_lost,
        slow_weeks_dieting=pattern.slow_weeks_dieting,
        phases_assumed=pattern.assumed,
        notes=mapping.notes(notes),
    )
