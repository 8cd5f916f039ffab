"""Which phase now: a table of rules over the state of a person, and a trade where the rules leave a choice.

The first rule that applies decides:

1. An eating disorder, under 18, in pregnancy or while breastfeeding: no fat-loss phase, and nothing about leanness
   (``NO_DEFICIT``).
2. In a cut: refused by a rail, it ends; as long as one may be, it ends (``CUT_TOO_LONG``); at its target, it ends
   (``CUT_DONE``); else it goes on (``CUT_UNDER_WAY``). After it comes a bridge at maintenance.
3. A cut ended so lately that its bridge is not done: finish that (``CUT_JUST_ENDED``). One that got nowhere has the
   four weeks of its last review.
4. An event within a year: its cut starts as late as will do (``EVENT_*``). Where that is long ahead and a cut is due
   anyway, the next rule decides.
5. Body fat at or over the value at which a cut becomes due (``decision_due``): a cut (``CUT_DUE``, or
   ``CUT_FOR_LEANNESS``), unless the person wants to hold, a rail refuses, the reading cannot carry it
   (``MEASURE_FIRST``), the last cut is too recent (``CUT_TOO_RECENT``), or there were too many (``TOO_MANY_CUTS``).
6. Else no cut: the better scored of gain and hold (``LEAN_ENOUGH``, ``NOT_YET``). A gain is not begun within a month
   of a due line that only a measurement could tell (``MEASURE_FIRST``).

Every condition on body fat is a threshold that does not move with it, so that more fat never turns a cut into "not
yet". Where no cut is to be, an underweight body gains, and who does not train holds.
"""

from collections.abc import Callable
from datetime import date, timedelta

from .. import rails
from ..numbers import told_percent
from ..phase import DEFAULT_WEEKS, LONG_CUT_WEEKS, MOST_WEEKS, DeficitKind, PhaseKind, usual_band
from ..rails import Refused
from ..register import Message, say
from .alternatives import Alternative, Alternatives, bridge_weeks, refusal_of
from .answer import Decision, Ruling, answer
from .event import EventAhead, latest_start
from .facts import Facts, facts_of
from .terms import (
    GAIN_WEEKS_LEAST,
    HORIZON_WEEKS,
    MEASURE_WEEKS,
    TRIGGER_PROBABILITY,
    Feeling,
    Goal,
    Question,
    Situation,
)
from .trade import motive
from .would_change import ARRIVED

# An event nearer than this leaves no room for the shortest cut.
_LEAST_ROOM = 2
# Before the cut for an event a gain is no shorter: less of it is not worth taking off again.
_WORTH_TAKING_OFF = 2 * GAIN_WEEKS_LEAST


def decide(question: Question) -> Decision:
    """Decide which phase comes next. Deterministic; every deficit it recommends is inside the rails."""
    warnings, refused = refusal_of(question.subject)
    if refused is not None and not speaks_of_leanness(refused):
        return _without_leanness(question, refused)
    facts = facts_of(question, warnings, refused)
    for rule in RULES:
        ruling = rule(facts)
        if ruling is not None:
            return answer(facts, ruling)
    return answer(facts, _no_cut(facts))


def speaks_of_leanness(refused: Refused | None) -> bool:
    """Whether body fat may be spoken of: not with an eating disorder, under 18, in pregnancy or while breastfeeding."""
    if refused is None:
        return True
    return not any(
        action.id in (rails.EATING_DISORDER, rails.PREGNANCY)
        or (action.id == rails.AGE and action.limit == rails.ADULT_YEARS)
        for action in refused.actions
    )


# --- 1: no fat-loss phase, nothing about leanness -------------------------------------------------------------


def _without_leanness(q: Question, refused: Refused) -> Decision:
    why = _why_none(q, refused)
    make = Alternatives(q, None, why[0])
    hold = make.hold()
    holds_alone = rails.PREGNANCY in refused.ids and refused.ids.isdisjoint((rails.BMI, rails.BODY_FAT))
    gain = hold if holds_alone else make.as_told(make.gain(DEFAULT_WEEKS))
    # A gain that ends within its first weeks is none worth starting.
    is_gain = gain.closed is None and gain.weeks >= GAIN_WEEKS_LEAST
    return Decision(
        situation=Situation.NO_DEFICIT,
        recommended=gain if is_gain and q.may_grow and q.goal is Goal.MUSCLE else hold,
        alternatives=[hold] if holds_alone else [gain, hold],
        by_trade=False,
        leanness=None,
        pattern=None,
        reasons=why if q.trains or holds_alone else [*why, say("GAIN_NEEDS_TRAINING")],
        changes=[],
        actions=refused.actions,
    )


def _why_none(q: Question, refused: Refused) -> list[Message]:
    """Why there is no fat-loss phase, and whom to see."""
    if q.subject.age_years < rails.ADULT_YEARS:
        return [say("DECISION_UNDER_AGE", limit_years=rails.ADULT_YEARS)]
    if rails.EATING_DISORDER in refused.ids:
        return [say("DECISION_NO_DEFICIT")]
    return [action.message for action in refused.actions if action.id == rails.PREGNANCY]


# --- 2: in a cut ----------------------------------------------------------------------------------------------


def _in_a_cut(facts: Facts) -> Ruling | None:
    q, present = facts.question, facts.question.present
    if present is None or not present.kind.is_deficit:
        return None
    weeks = q.weeks_of_cut
    bridge = facts.make.hold(bridge_weeks(weeks), then_gain=True)
    if facts.refused is not None:
        # Who is too lean gains as after any cut; who is underweight, or would not gain otherwise, at once.
        gains_at_once = facts.is_underweight and (facts.is_refused_by(rails.BMI) or not q.may_grow)
        kept = facts.gain if gains_at_once else bridge
        return Ruling(Situation.CUT_REFUSED, kept, (_ended_by_a_rule(kept),))
    if facts.is_near_underweight:
        return Ruling(Situation.CUT_REFUSED, bridge, (_near_underweight(q),))
    is_mini = present.kind is PhaseKind.MINI_CUT
    if weeks >= (MOST_WEEKS if is_mini else LONG_CUT_WEEKS):
        why = say("DECISION_CUT_TOO_LONG", weeks=weeks, bridge_weeks=bridge.weeks)
        return Ruling(Situation.CUT_TOO_LONG, bridge, (why,))
    if not q.is_fat_read:
        return Ruling(Situation.MEASURE_FIRST, bridge, (say("DECISION_MEASURE_FIRST_BMI", kind=bridge.kind.value),))
    target = facts.leanness.lines.target if facts.event is None else facts.event.target
    to_target = {"fat_percent": 100.0 * q.fat_fraction, "target_percent": 100 * target}
    if q.fat_fraction <= target + ARRIVED:
        why = say("DECISION_CUT_DONE", **to_target, bridge_weeks=bridge.weeks)
        return Ruling(Situation.CUT_DONE, bridge, (why,))
    # A cut that its event ends within a mini-cut's weeks is one, and not too short to go on.
    ends_early = facts.event is not None and weeks + facts.event.room <= MOST_WEEKS
    going = facts.make.cut(
        DeficitKind.MINI_CUT if is_mini or ends_early else DeficitKind.CUT,
        weeks_done=weeks,
        until_event=None if facts.event is None else facts.event.room,
        target=target,
    )
    if going.closed is not None:
        return Ruling(Situation.CUT_REFUSED, bridge, (_ended_by_a_rule(bridge), going.closed))
    return Ruling(Situation.CUT_UNDER_WAY, going, (say("DECISION_CUT_UNDER_WAY", **to_target),))


def _ended_by_a_rule(kept: Alternative) -> Message:
    return say("DECISION_CUT_REFUSED_UNDER_WAY", kind=kept.kind.value)


# --- 3: just after one ----------------------------------------------------------------------------------------


def _after_a_cut(facts: Facts) -> Ruling | None:
    q = facts.question
    last, since = q.last_cut, q.weeks_since_cut
    if last is None or since is None or (q.present is not None and q.present.kind is PhaseKind.GAIN):
        return None
    owed = (int(rails.APART_WEEKS) if last.got_nowhere else bridge_weeks(last.weeks)) - since
    if owed <= 0:
        return None
    if last.got_nowhere:
        # As its review told: then the same again, smaller.
        return Ruling(Situation.CUT_JUST_ENDED, facts.make.hold(owed), (say("DECISION_CUT_AGAIN", bridge_weeks=owed),))
    why = say("DECISION_CUT_JUST_ENDED", weeks=since, bridge_weeks=owed)
    return Ruling(Situation.CUT_JUST_ENDED, facts.make.hold(owed, then_gain=True), (why,))


# --- 4: an event within a year --------------------------------------------------------------------------------


def _for_an_event(facts: Facts) -> Ruling | None:
    if facts.event is None:
        return None
    ruling = _by_the_event(facts, facts.event)
    alone = facts._replace(event=None)
    without = _over_the_due_line(alone) or _no_cut(alone)
    if without.chosen.kind is ruling.chosen.kind:
        return ruling
    return ruling._replace(changes=(*ruling.changes, say("CHANGE_NO_EVENT", kind=without.chosen.kind.value)))


def _by_the_event(facts: Facts, event: EventAhead) -> Ruling:
    q = facts.question
    start = latest_start(q, event)
    is_soon = start is None or start.week < _WORTH_TAKING_OFF or start.cut_weeks == 0
    if q.fat_fraction <= event.target + ARRIVED and is_soon:
        why = say("DECISION_EVENT_READY", fat_percent=100 * q.fat_fraction, target_percent=100 * event.target)
        if start is None or start.cut_weeks or motive(q) is not Feeling.CONTENT:
            # Who would like to be leaner than that puts nothing on before it.
            return Ruling(Situation.EVENT_READY, facts.hold.shortened(event.weeks), (why,))
        return _keep(facts, Situation.EVENT_READY, why, weeks=event.weeks)
    if facts.refused is not None:
        return _refused_cut(facts)
    if facts.is_near_underweight:
        return _hold_first(facts)
    if not q.is_fat_read:
        return _measure_first(facts, None)
    if event.room < _LEAST_ROOM:
        why = say("DECISION_EVENT_TOO_NEAR", weeks=event.weeks)
        return Ruling(Situation.EVENT_TOO_NEAR, facts.hold.shortened(event.weeks), (why,))
    blocked = _too_soon(facts)
    if blocked is not None:
        return blocked
    # One cut may be too short for its target: then there is time for another.
    is_far = (
        event.room >= LONG_CUT_WEEKS + rails.WEEKS_BETWEEN_CUTS if start is None else start.week >= _WORTH_TAKING_OFF
    )
    due = _due_before(facts, event) if is_far else None
    if due is not None:
        return due
    if start is not None and is_far:
        when = q.day(start.week).isoformat()
        return Ruling(
            Situation.EVENT_LATER,
            (facts.gain if q.may_grow and facts.gain.closed is None else facts.hold).shortened(start.week),
            (say("DECISION_EVENT_LATER", weeks=event.weeks, cut_weeks=start.cut_weeks, date=when),),
            (say("CHANGE_EVENT_START", date=when),),
        )
    return _event_now(facts, event)


def _due_before(facts: Facts, event: EventAhead) -> Ruling | None:
    """A cut that is due anyway, long before the one for an event would start: nobody waits over the line for a date."""
    ruling = _over_the_due_line(facts)
    if ruling is None or not ruling.chosen.kind.is_deficit:
        return None
    return ruling._replace(reasons=(*ruling.reasons, say("DECISION_EVENT_LEAVES_TIME", weeks=event.weeks)))


def _event_now(facts: Facts, event: EventAhead) -> Ruling:
    def until_event(kind: DeficitKind) -> Alternative:
        return facts.make.cut(kind, until_event=event.room, target=event.target)

    mini = until_event(DeficitKind.MINI_CUT)
    is_enough = not mini.closed and mini.reaches_target
    cuts = (mini,) if is_enough else (mini, until_event(DeficitKind.CUT))
    open_cuts = [a for a in cuts if a.closed is None]
    if not open_cuts:
        return _refused_cut(facts, mini)._replace(cuts=cuts)
    # As near as is safe: a longer cut may be a far smaller one.
    best = max(open_cuts, key=lambda a: (a.reaches_target, -_end_fat(a)))
    wait = event.room - best.weeks if best.fragment is not None and best.fragment.for_event else 0
    lengths = {"weeks": event.weeks, "cut_weeks": best.weeks}
    due = _due_before(facts, event) if wait >= _WORTH_TAKING_OFF else None
    if due is not None:
        return due
    if wait > 0:
        reasons = [say("DECISION_EVENT_HOLD_FIRST", **lengths, date=facts.question.day(wait).isoformat())]
    else:
        reasons = [say("DECISION_EVENT_NOW", **lengths)]
    if not best.reaches_target:
        end = 100.0 * _end_fat(best)
        reasons.append(say("DECISION_EVENT_OUT_OF_REACH", target_percent=100 * event.target, end_percent=end))
    return Ruling(Situation.EVENT_NOW, best, (*reasons, say("DECISION_EVENT_SETS_DATE")), cuts=cuts)


# --- 5: over the due line -------------------------------------------------------------------------------------


def _over_the_due_line(facts: Facts) -> Ruling | None:
    q, leanness = facts.question, facts.leanness
    if leanness.due is None or not facts.is_due:
        return None
    if _wants_hold(q):
        # Of a band that nobody chose nothing is said as if somebody had.
        is_chosen = q.band != usual_band(q.subject.sex)
        over = say("DECISION_WANTS_HOLD_OVER", due_percent=100 * leanness.due)
        return _keep(facts, Situation.WANTS_HOLD, over if is_chosen else say("DECISION_WANTS_HOLD"))
    if facts.refused is not None:
        return _refused_cut(facts)
    if facts.is_near_underweight:
        return _hold_first(facts)
    if not leanness.reading.is_good_enough:
        return _measure_first(facts, leanness.reading.probability_over_line)
    blocked = _too_soon(facts)
    if blocked is not None:
        return blocked
    open_cuts = [a for a in facts.cuts if a.closed is None]
    if not open_cuts:
        return _refused_cut(facts, facts.cuts[0])
    best = max(open_cuts, key=lambda a: a.total_kg)
    if best.total_kg < max(facts.gain.total_kg if q.grows else facts.hold.total_kg, facts.hold.total_kg):
        # To the target is too far to pay; the usual mini-cut, on which the due line rests, is not.
        best = max(best, facts.make.short_cut(), key=lambda a: a.total_kg)
    unmeasured = () if q.fat.is_measured else (say("DECISION_UNMEASURED"),)
    reasons = (*unmeasured, *_how_far(best, open_cuts, leanness.lines.target))
    figures = {"fat_percent": 100.0 * q.fat_fraction, "due_percent": 100 * leanness.due}
    is_due_if_content = leanness.other_due is not None and q.fat_fraction >= leanness.other_due
    if motive(q) is Feeling.CONTENT or is_due_if_content:
        situation, headline = Situation.CUT_DUE, say("DECISION_CUT_DUE", **figures)
    else:
        situation, headline = Situation.CUT_FOR_LEANNESS, say("DECISION_CUT_FOR_LEANNESS", **figures)
    return Ruling(situation, best, reasons, headline=headline, by_trade=True)


def _end_fat(cut: Alternative) -> float:
    """Body fat at the end of a cut, which begins at once or after its wait [fraction]."""
    state = cut.path.states[cut.waits + cut.weeks]
    return float(state.fat_kg / state.weight_kg)


def _how_far(best: Alternative, open_cuts: list[Alternative], target: float) -> tuple[Message, ...]:
    """Why the cut is as long as it is, and where it ends if that is not the target."""
    if best.reaches_target:
        return (say("DECISION_LONGER_CUT", weeks=best.weeks),) if best.kind is PhaseKind.CUT else ()
    figures = {"weeks": best.weeks, "end_percent": 100.0 * _end_fat(best)}
    if any(cut.reaches_target for cut in open_cuts):
        return (say("DECISION_SHORTER_PAYS", target_percent=100 * target, **figures),)
    return (say("DECISION_LONG_WAY", target_percent=100 * target, **figures),)


# --- 6: no cut ------------------------------------------------------------------------------------------------


def _no_cut(facts: Facts) -> Ruling:
    q, fat = facts.question, 100.0 * facts.question.fat_fraction
    kept, whys, would_change = _without_a_cut(facts)
    if kept.kind is PhaseKind.GAIN and _is_soon_over_an_unread_line(facts):
        why = say("DECISION_MEASURE_FIRST_BMI", kind=facts.hold.kind.value)
        return Ruling(Situation.MEASURE_FIRST, facts.hold.shortened(MEASURE_WEEKS), (*whys, why), would_change)
    advice = kept.kind.value
    closed: tuple[Message, ...] = ()
    if _wants_hold(q):
        situation, why = Situation.WANTS_HOLD, say("DECISION_WANTS_HOLD")
    elif q.fat_fraction <= facts.leanness.lines.target:
        situation, why = Situation.LEAN_ENOUGH, say("DECISION_LEAN_ENOUGH", fat_percent=fat, advice=advice)
    elif any(cut.closed is None for cut in facts.cuts):
        situation = Situation.NOT_YET
        why = say("DECISION_NOT_YET", fat_percent=fat, weeks=HORIZON_WEEKS, advice=advice)
    else:
        # No price was weighed where no cut is open. Why none is, a refusal says itself.
        situation, why = Situation.NOT_YET, say("DECISION_NONE_DUE", fat_percent=fat, advice=advice)
        closed = tuple(cut.closed for cut in facts.cuts[:1] if cut.closed is not None and facts.refused is None)
    if facts.is_refused_by(rails.BMI) and situation is not Situation.WANTS_HOLD:
        # No trade was weighed: the rule that refuses says why.
        return Ruling(situation, kept, whys, would_change)
    by_trade = q.may_grow and not facts.is_underweight
    return Ruling(situation, kept, (*whys, why, *closed), would_change, by_trade=by_trade)


def _is_soon_over_an_unread_line(facts: Facts) -> bool:
    """Whether a gain would be over at a due line before it is worth starting, and the cut there would wait for a
    measurement: gaining a month and holding a month would take turns."""
    weeks = facts.leanness.due_weeks
    return not facts.question.fat.is_measured and weeks is not None and weeks < GAIN_WEEKS_LEAST


RULES: tuple[Callable[[Facts], Ruling | None], ...] = (
    _in_a_cut,
    _after_a_cut,
    _for_an_event,
    _over_the_due_line,
)


# --- what several rules share ---------------------------------------------------------------------------------


def _near_underweight(q: Question) -> Message:
    return say("DECISION_NEAR_UNDERWEIGHT", bmi=q.subject.bmi, limit=rails.BMI_WARN)


def _hold_first(facts: Facts) -> Ruling:
    q = facts.question
    return _keep(facts, Situation.WANTS_HOLD if q.goal is Goal.HOLD else Situation.NOT_YET, _near_underweight(q))


def _wants_hold(q: Question) -> bool:
    return q.goal is Goal.HOLD and motive(q) is Feeling.CONTENT


def _without_a_cut(facts: Facts) -> tuple[Alternative, tuple[Message, ...], tuple[Message, ...]]:
    """What is best without a cut, what is to be said of it, and what would change it."""
    if facts.is_underweight:
        return facts.gain, (), ()
    q = facts.question
    kept = max(facts.gain, facts.hold, key=lambda a: a.total_kg) if q.may_grow else facts.hold
    if q.trains or not q.wants_to_grow:
        return kept, (), ()
    # Over the due line there is no gain, whoever trains, nor before the safety questions are answered.
    is_shut = facts.is_due or q.subject.screening is None
    return kept, (say("GAIN_NEEDS_TRAINING"),), () if is_shut else (say("CHANGE_TRAINING"),)


def _keep(
    facts: Facts, situation: Situation, why: Message, change: Message | None = None, weeks: int | None = None
) -> Ruling:
    """No cut, for the reason ``why``; at most ``weeks`` of what is best without."""
    kept, whys, would_change = _without_a_cut(facts)
    changes = would_change if change is None else (change, *would_change)
    return Ruling(situation, kept if weeks is None else kept.shortened(min(weeks, kept.weeks)), (why, *whys), changes)


def _keep_until(facts: Facts, situation: Situation, why: Message, when: date) -> Ruling:
    """No cut until a day, on which to ask again."""
    weeks = max(1, -(-(when - facts.question.as_of).days // 7))
    return _keep(facts, situation, why, say("CHANGE_TIME", date=when.isoformat()), weeks)


def _refused_cut(facts: Facts, cut: Alternative | None = None) -> Ruling:
    """No cut though one is due: ``cut`` is the one that is not open, where it is not the person who may have none."""
    kept, whys, would_change = _without_a_cut(facts)
    if cut is None or cut.closed is None:
        return Ruling(
            Situation.CUT_REFUSED, kept, (*whys, say("DECISION_CUT_REFUSED", kind=kept.kind.value)), would_change
        )
    ratio = [] if cut.rule is None else rails.ratio_decides(facts.question.subject, cut.rule)
    # Weighed food or more walking may soon tell otherwise, and so may a body that has moved a little.
    code, kept = "DECISION_CUT_REFUSED", kept.shortened(min(MEASURE_WEEKS, kept.weeks))
    if cut.is_too_small:
        code = "DECISION_CUT_TOO_SMALL"
        more = (say("CHANGE_MOVE_MORE"),) if cut.rule == rails.FLOOR else ()
        would_change = (*more, *would_change)
    reasons = (*whys, say(code, kind=kept.kind.value), cut.closed, *ratio)
    return Ruling(Situation.CUT_REFUSED, kept, reasons, would_change)


def _measure_first(facts: Facts, probability: float | None) -> Ruling:
    kept, whys, would_change = _without_a_cut(facts)
    fat = facts.question.fat
    if not fat.is_measured or probability is None:
        why = say("DECISION_MEASURE_FIRST_BMI", kind=kept.kind.value)
    else:
        why = say(
            "DECISION_MEASURE_FIRST_ERROR",
            fat_percent=100 * fat.mean,
            error_points=100 * fat.sd,
            line_percent=100 * facts.leanness.lines.counts_from,
            probability_percent=told_percent(probability),
            least_percent=100 * TRIGGER_PROBABILITY,
            kind=kept.kind.value,
        )
    return Ruling(Situation.MEASURE_FIRST, kept.shortened(min(MEASURE_WEEKS, kept.weeks)), (*whys, why), would_change)


def _too_soon(facts: Facts) -> Ruling | None:
    """Whether the cuts already made forbid another for now, by the rule that does so for longer."""
    q = facts.question
    when, since, last, cuts = q.free_from(), q.weeks_since_cut, q.last_cut, q.cuts_last_12_months
    if when is None or since is None or last is None or cuts is None or when <= q.as_of:
        return None
    if when <= last.end + timedelta(days=7 * int(rails.WEEKS_BETWEEN_CUTS)):
        why = say("DECISION_CUT_TOO_RECENT", weeks=since, limit_weeks=rails.WEEKS_BETWEEN_CUTS, date=when.isoformat())
        return _keep_until(facts, Situation.CUT_TOO_RECENT, why, when)
    why = say("DECISION_TOO_MANY_CUTS", cuts=cuts, date=when.isoformat())
    return _keep_until(facts, Situation.TOO_MANY_CUTS, why, when)
