"""The answer of a decision: its parts, the reasons beside that of the situation, and what would change it."""

from typing import NamedTuple

from .. import rails
from ..measures import FatRange, Standing
from ..numbers import Estimate, told_percent
from ..phase import CLEAR_PROBABILITY, PhaseKind
from ..rails import RailAction
from ..register import Message, say
from .alternatives import Alternative
from .facts import Facts, Leanness
from .odds import ahead_kg
from .pattern import Pattern
from .terms import EVENT_WEEKS_MOST, HORIZON_WEEKS, Situation
from .would_change import changes

# Less lean tissue than this is no cost to speak of.
_LEAST_LEAN_COST_KG = 0.05
# A lead of more than anybody builds in half a year is a price of fat, and no mass to speak of (judgement).
_MOST_LEAD_KG = 2.0
# So near to the line the answer may be the other one after the next reading (judgement; readings move by half a point).
_NEAR_DUE = 0.0075
_BY_THE_LINE = (Situation.NOT_YET, Situation.LEAN_ENOUGH, Situation.CUT_DUE, Situation.CUT_FOR_LEANNESS)


class Ruling(NamedTuple):
    """What a rule says: the situation, the alternative that follows from it, and why.

    ``headline`` is told before everything else. ``cuts`` are the cuts that were weighed, where not those of the facts.
    ``by_trade``: the score decided, not a rule.
    """

    situation: Situation
    chosen: Alternative
    reasons: tuple[Message, ...]
    changes: tuple[Message, ...] = ()
    headline: Message | None = None
    by_trade: bool = False
    cuts: tuple[Alternative, ...] | None = None


class Decision(NamedTuple):
    """The next phase, the alternatives, and why. ``by_trade``: the score decided, not a rule."""

    situation: Situation
    recommended: Alternative
    alternatives: list[Alternative]
    by_trade: bool
    leanness: Leanness | None
    pattern: Pattern | None
    reasons: list[Message]
    changes: list[Message]
    actions: list[RailAction]


def answer(facts: Facts, ruling: Ruling) -> Decision:
    """The decision that a ruling makes."""
    chosen = facts.make.as_told(ruling.chosen)
    if chosen.closed is not None:
        chosen = facts.hold.shortened(ruling.chosen.weeks)
    weighed = [facts.gain, facts.hold, *(facts.cuts if ruling.cuts is None else ruling.cuts)]
    # The recommended one stands for its kind.
    others = [a for a in weighed if a.kind is not chosen.kind]
    listed = sorted([chosen, *others], key=lambda a: -a.total_kg)
    first = [] if ruling.headline is None else [ruling.headline]
    if facts.is_event_far:
        first.append(say("DECISION_EVENT_FAR", weeks=EVENT_WEEKS_MOST))
    return Decision(
        situation=ruling.situation,
        recommended=chosen,
        alternatives=listed,
        by_trade=ruling.by_trade,
        leanness=facts.leanness,
        pattern=facts.pattern,
        reasons=[*first, *ruling.reasons, *explain(facts, ruling._replace(chosen=chosen), listed)],
        changes=[*ruling.changes, *changes(facts, ruling.situation)],
        actions=_actions(facts, chosen),
    )


def _actions(facts: Facts, chosen: Alternative) -> list[RailAction]:
    """What the rails did: to the member, and to the plan that is recommended."""
    actions = list(facts.warnings) if chosen.kind.is_deficit else []
    if facts.refused is not None:
        actions.extend(facts.refused.actions)
    if chosen.plan is not None:
        actions += [a for a in chosen.plan.actions if a not in actions]
    return actions


def explain(facts: Facts, ruling: Ruling, listed: list[Alternative]) -> list[Message]:
    """The reasons that come after those of the rule that decided."""
    q, chosen = facts.question, ruling.chosen
    reasons: list[Message] = []
    others = [a for a in listed if a.kind.is_deficit is not chosen.kind.is_deficit and a.score is not None]
    if not q.grows:
        # Of a gain nothing is wanted, so that its lean tissue is worth nothing either.
        others = [a for a in others if a.kind is not PhaseKind.GAIN]
    if ruling.by_trade and others:
        other = max(others, key=lambda a: a.total_kg)
        ahead = ahead_kg(chosen, other, facts.make.counts_from)
        probability = ahead.probability_over(0.0)
        told = {
            "weeks": HORIZON_WEEKS,
            "best": chosen.kind.value,
            "other": other.kind.value,
            "ahead_kg": ahead.mean,
            "probability_percent": told_percent(probability),
        }
        if probability >= CLEAR_PROBABILITY and ahead.mean > _MOST_LEAD_KG:
            reasons.append(say("DECISION_TRADE_CLEAR", **told))
        elif probability >= CLEAR_PROBABILITY:
            reasons.append(say("DECISION_TRADE", **told))
        elif probability > 1.0 - CLEAR_PROBABILITY:
            reasons.append(say("DECISION_CLOSE", **told))
        reasons += _of_two_cuts(facts, chosen, listed)
    due = facts.leanness.due
    if ruling.situation in _BY_THE_LINE and due is not None and abs(q.fat_fraction - due) <= _NEAR_DUE:
        reasons.append(say("DECISION_NEAR_DUE", due_percent=100 * due))
    if not facts.is_refused_by(rails.BMI):
        reasons.append(_health(q.fat_fraction, facts.leanness.healthy))
    if q.history is None:
        reasons.append(say("DECISION_HISTORY_UNKNOWN"))
    if facts.refused is not None:
        reasons.extend(action.message for action in facts.refused.actions)
    slow = None if chosen.fragment is None else chosen.fragment.surplus_kcal
    if facts.pattern is not None and chosen.kind is PhaseKind.GAIN and slow is not None:
        reasons.append(say("DECISION_GAIN_SLOWLY", surplus_kcal=slow))
    return reasons


def _of_two_cuts(facts: Facts, chosen: Alternative, listed: list[Alternative]) -> list[Message]:
    """That the shorter and the longer cut are worth about the same, where they are."""
    others = [a for a in listed if a.kind.is_deficit and a.kind is not chosen.kind and a.score is not None]
    if not chosen.kind.is_deficit or not others:
        return []
    probability = ahead_kg(chosen, others[0], facts.make.counts_from).probability_over(0.0)
    if not 1.0 - CLEAR_PROBABILITY < probability < CLEAR_PROBABILITY:
        return []
    return [say("DECISION_CUTS_CLOSE", weeks=HORIZON_WEEKS, best=chosen.kind.value, other=others[0].kind.value)]


def _health(fat_fraction: float, healthy: FatRange) -> Message:
    """How body fat stands to the healthy range."""
    fat, lower, upper = 100.0 * fat_fraction, 100 * healthy.lower, 100 * healthy.upper
    match healthy.standing(fat_fraction):
        case Standing.WITHIN:
            return say("DECISION_WITHIN_HEALTHY", fat_percent=fat, lower_percent=lower, upper_percent=upper)
        case Standing.BELOW:
            return say("DECISION_BELOW_HEALTHY", fat_percent=fat, lower_percent=lower)
        case Standing.ABOVE:
            return say("DECISION_ABOVE_HEALTHY", fat_percent=fat, upper_percent=upper)


def pattern_notes(pattern: Pattern) -> list[Message]:
    """What is said of a pattern of fast gain and cut, and of what it cost."""
    lean, fat = pattern.lean_cost_kg, pattern.fat_cost_kg.mean
    figures = {"lean_kg": lean.mean, "lower_kg": lean.lower, "upper_kg": lean.upper}
    dieting = {"slow_weeks": pattern.slow_weeks_dieting, "dieting_weeks": pattern.weeks_dieting}
    cost = _lean_cost(lean, pattern.weeks, figures)
    notes = [
        say("PATTERN_CYCLES", cycles=pattern.cycles, weeks=pattern.weeks, dieting_weeks=pattern.weeks_dieting),
        cost,
        say("PATTERN_FAT", fat_kg=-fat, **dieting) if fat < 0.0 else say("PATTERN_NO_FAT", fat_kg=fat),
    ]
    if pattern.weeks_lost and cost.code == "PATTERN_COST":
        notes.append(say("PATTERN_WEEKS", weeks=pattern.weeks_lost))
    if pattern.assumed:
        notes.append(say("PATTERN_ASSUMED", phases=pattern.assumed))
    return notes


def _lean_cost(lean: Estimate, weeks: int, figures: dict[str, float]) -> Message:
    if lean.mean <= _LEAST_LEAN_COST_KG:
        return say("PATTERN_NO_LEAN", **figures)
    if lean.probability_over(0.0) < CLEAR_PROBABILITY:
        return say("PATTERN_SAME_LEAN", **figures)
    return say("PATTERN_COST", weeks=weeks, **figures)
