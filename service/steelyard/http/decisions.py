"""`POST /v1/decisions`: which phase now, and why."""

from datetime import timedelta

from steelyard.science import rails
from steelyard.science.decision import (
    DECISION_METHOD_IDS,
    HORIZON_WEEKS,
    Alternative,
    Decision,
    Fragment,
    PastPhase,
    Pattern,
    PresentPhase,
    Question,
    decide,
    refusal_of,
    speaks_of_leanness,
)
from steelyard.science.measures import assess, general_cautions
from steelyard.science.member import Member
from steelyard.science.person import Sex
from steelyard.science.phase import Band, PhaseKind, usual_band
from steelyard.science.rails import ADULT_YEARS, Subject
from steelyard.science.register import FAT_FROM_BMI, Message, say

from . import mapping
from .decision_checks import check
from .decision_examples import DECISION_EXAMPLES
from .logs import maintenance_for
from .mapping import FRACTION, KCAL, KG, interval
from .operations import computation
from .schemas import decisions as schema
from .schemas.quantities import Interval


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
    check(body)
    person = mapping.person(body.profile)
    assessed = assess(person)
    maintenance = maintenance_for(body.maintenance, body.log, person, assessed)
    subject = mapping.subject(person, assessed, maintenance, body.screening)
    member = Member(
        mapping.told(
            body.profile,
            screened=body.screening,
            known=body.maintenance,
            entries=body.log,
            current_intake_kcal=body.current_intake_kcal,
        )
    )
    may_speak = speaks_of_leanness(refusal_of(subject)[1])
    if may_speak:
        _check_targets(body, subject)
    chosen = body.band if may_speak else None
    present = body.present_phase
    history = body.phase_history
    found = decide(
        Question(
            member=member,
            as_of=body.as_of_date,
            band=usual_band(person.sex)
            if chosen is None
            else Band(chosen.lower_fat_fraction, chosen.upper_fat_fraction),
            goal=body.goal,
            feeling=body.feeling,
            event=body.event_date,
            event_fat_fraction=body.event_fat_fraction,
            present=None if present is None else PresentPhase(present.kind, present.weeks_done),
            history=None if history is None else [_past(phase) for phase in history],
        )
    )
    reasons, cautions = list(found.reasons), general_cautions(person, assessed)
    if not may_speak:
        cautions = [caution for caution in cautions if caution != FAT_FROM_BMI]
        if body.band is not None or body.event_fat_fraction is not None:
            reasons.append(say("DECISION_CHOICES_LEFT_OUT"))
    return schema.DecisionResponse(
        **mapping.provenance("decide_phase", body),
        situation=found.situation.value,
        decided_by="trade" if found.by_trade else "rule",
        recommended=schema.NextPhase(
            kind=found.recommended.kind.value,
            weeks=found.recommended.weeks,
            plan=_fragment(body, found.recommended.fragment),
        ),
        alternatives=[_alternative(body, found, alternative) for alternative in found.alternatives],
        horizon_weeks=HORIZON_WEEKS,
        leanness=_leanness(body, found, assessed.fat.sd, interval(assessed.fat, FRACTION)),
        pattern=None if found.pattern is None else _pattern(found.pattern),
        reasons=mapping.notes(reasons),
        what_would_change=mapping.notes(found.changes),
        maintenance_kcal=interval(maintenance, KCAL),
        guard_rails=[mapping.guard_rail(action) for action in found.actions],
        cautions=mapping.notes(cautions),
        methods=sorted({*assessed.resting.preferred, *DECISION_METHOD_IDS}),
    )


def _past(phase: schema.PastPhase) -> PastPhase:
    return PastPhase(
        phase.kind,
        phase.start_date,
        phase.weeks,
        phase.start_weight_kg,
        phase.end_weight_kg,
        phase.start_fat_fraction,
        phase.end_fat_fraction,
    )


def _check_targets(body: schema.DecisionRequest, subject: Subject) -> None:
    """Refuse body-fat targets under the least that is planned."""
    if body.band is not None:
        rails.refuse_target(subject, body.band.lower_fat_fraction, "/band/lower_fat_fraction")
    if body.event_fat_fraction is not None:
        rails.refuse_target(subject, body.event_fat_fraction, "/event_fat_fraction")


def _fragment(body: schema.DecisionRequest, fragment: Fragment | None) -> schema.PlanFragment:
    assert fragment is not None
    return schema.PlanFragment(
        start_date=body.as_of_date,
        phase=_phase(body, fragment),
        return_to_gain=schema.SuggestedReturn(
            maintenance_weeks=min(4, fragment.maintenance_weeks),
            gain_weeks=min(26, fragment.gain_weeks),
            surplus_kcal=fragment.surplus_kcal,
        ),
        cut_history=_cut_history(body),
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
        return schema.SuggestedHold(weeks=fragment.weeks or 1)
    make = schema.SuggestedMiniCut if fragment.kind is PhaseKind.MINI_CUT else schema.SuggestedCut
    return make(
        weeks=fragment.weeks,
        target_fat_fraction=fragment.target_fat_fraction,
        event_date=body.event_date if fragment.for_event else None,
        weeks_done=fragment.weeks_done,
    )


def _cut_history(body: schema.DecisionRequest) -> schema.KnownCuts | None:
    if body.phase_history is None:
        return None
    past = [_past(phase) for phase in body.phase_history if phase.kind.is_deficit]
    since = (body.as_of_date - past[-1].end).days // 7 if past else None
    recent = sum((body.as_of_date - phase.end).days < 365 for phase in past)
    return schema.KnownCuts(
        cuts_last_12_months=min(12, recent), weeks_since_last_cut=None if since is None else min(520, since)
    )


def _alternative(body: schema.DecisionRequest, found: Decision, one: Alternative) -> schema.PhaseAlternative:
    if one.closed is not None or one.score is None:
        return schema.PhaseAlternative(
            kind=one.kind.value, open=False, closed_because=None if one.closed is None else mapping.note(one.closed),
            weeks=None, lean_kg=None, fat_kg=None, end_fat_fraction=None, days_dieting=None, weeks_above_band=None,
            score=None, plan=None,
        )  # fmt: skip
    speaks = found.leanness is not None
    upper = (usual_band(body.profile.sex) if body.band is None else Band(0.0, body.band.upper_fat_fraction)).upper
    parts = one.score
    return schema.PhaseAlternative(
        kind=one.kind.value,
        open=True,
        closed_because=None,
        weeks=one.weeks,
        lean_kg=interval(one.change("lean_kg"), KG),
        fat_kg=interval(one.change("fat_kg"), KG) if speaks else None,
        end_fat_fraction=interval(one.end_fat_fraction(), FRACTION) if speaks else None,
        days_dieting=7 * one.weeks_dieting,
        weeks_above_band=one.weeks_above(upper) if speaks else None,
        score=schema.ScoreParts(
            lean_kg=round(parts.lean_kg, KG),
            dieting_price_kg=round(parts.dieting_price_kg, KG),
            leanness_price_kg=round(parts.leanness_price_kg, KG),
            total_kg=round(parts.total_kg, KG),
        ),
        plan=_fragment(body, one.fragment),
    )


def _leanness(body: schema.DecisionRequest, found: Decision, sd: float, fat: Interval) -> schema.LeannessView | None:
    view = found.leanness
    if view is None:
        return None
    band, sex = body.band, body.profile.sex
    usual = usual_band(sex)
    is_adult = body.profile.age_years >= ADULT_YEARS
    reading = view.reading
    return schema.LeannessView(
        fat_fraction=fat,
        band_lower_fat_fraction=round(usual.lower if band is None else band.lower_fat_fraction, FRACTION),
        band_upper_fat_fraction=round(usual.upper if band is None else band.upper_fat_fraction, FRACTION),
        band_basis="chosen" if band is not None else "common practice" if sex is Sex.MALE else "judgement",
        counts_from_fat_fraction=round(view.lines.counts_from, FRACTION),
        target_fat_fraction=round(view.lines.target, FRACTION),
        cut_due_fat_fraction=_rounded(view.due),
        cut_due_date=None if view.due_weeks is None else body.as_of_date + timedelta(days=7 * view.due_weeks),
        healthy_lower_fat_fraction=view.healthy.lower if is_adult else None,
        healthy_upper_fat_fraction=view.healthy.upper if is_adult else None,
        reading_is_good_enough=reading.is_good_enough,
        reading_sd=round(sd, FRACTION),
        probability_over_line=round(reading.probability_over_line, FRACTION),
        margin_over_due=_rounded(reading.margin),
        probability_other_side=_rounded(reading.probability_other_side),
    )


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, FRACTION)


def _pattern(pattern: Pattern) -> schema.CyclingPattern:
    lean = pattern.lean_cost_kg
    figures = {"lean_kg": lean.mean, "lower_kg": lean.lower, "upper_kg": lean.upper}
    notes: list[Message] = [
        say("PATTERN_CYCLES", cycles=pattern.cycles, weeks=pattern.weeks, dieting_weeks=pattern.weeks_dieting),
        say("PATTERN_COST", weeks=pattern.weeks, **figures) if lean.mean > 0.05 else say("PATTERN_NO_LEAN", **figures),
    ]
    fat = pattern.fat_cost_kg.mean
    if fat < 0.0:
        dieting = {"slow_weeks": pattern.slow_weeks_dieting, "dieting_weeks": pattern.weeks_dieting}
        notes.append(say("PATTERN_FAT", fat_kg=-fat, **dieting))
    else:
        notes.append(say("PATTERN_NO_FAT", fat_kg=fat))
    if pattern.weeks_lost:
        notes.append(say("PATTERN_WEEKS", weeks=pattern.weeks_lost))
    if pattern.assumed:
        notes.append(say("PATTERN_ASSUMED", phases=pattern.assumed))
    return schema.CyclingPattern(
        cycles=pattern.cycles,
        weeks=pattern.weeks,
        weeks_dieting=pattern.weeks_dieting,
        lean_cost_kg=interval(lean, KG),
        fat_cost_kg=interval(pattern.fat_cost_kg, KG),
        weeks_lost=pattern.weeks_lost,
        slow_weeks_dieting=pattern.slow_weeks_dieting,
        phases_assumed=pattern.assumed,
        notes=mapping.notes(notes),
    )
