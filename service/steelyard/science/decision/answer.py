"""The answer of a decision: its parts, the reasons beside that of the situation, and what would change it."""

from typing import NamedTuple

from .. import rails
from ..measures import FatRange, Standing
from ..numbers import told_percent
from ..phase import CLEAR_PROBABILITY, PhaseKind
from ..rails import RailAction
from ..register import Message, say
from .alternatives import Alternative
from .facts import Facts, Leanness
from .odds import ahead_kg
from .pattern import Pattern
from .terms import EVENT_WEEKS_MOST, HORIZON_WEEKS, Feeling, Situation
from .trade import motive

# Less lean tissue than this is no cost to speak of.
_LEAST_LEAN_COST_KG = 0.05


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
    chosen = ruling.chosen
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
        reasons=[*first, *ruling.reasons, *explain(facts, ruling, listed)],
        changes=[*ruling.changes, *changes(facts)],
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
        if probability >= CLEAR_PROBABILITY:
            reasons.append(say("DECISION_TRADE", **told))
        elif probability > 1.0 - CLEAR_PROBABILITY:
            reasons.append(say("DECISION_CLOSE", **told))
    reasons.append(_health(q.fat_fraction, facts.leanness.healthy))
    if q.history is None:
        reasons.append(say("DECISION_HISTORY_UNKNOWN"))
    if facts.refused is not None:
        reasons.extend(action.message for action in facts.refused.actions)
    slow = None if chosen.fragment is None else chosen.fragment.surplus_kcal
    if facts.pattern is not None and chosen.kind is PhaseKind.GAIN and slow is not None:
        reasons.append(say("DECISION_GAIN_SLOWLY", surplus_kcal=slow))
    return reasons


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


def changes(facts: Facts) -> list[Message]:
    """What would change the answer, whatever rule gave it."""
    q, leanness, refused = facts.question, facts.leanness, facts.refused
    due, reading = leanness.due, leanness.reading
    found: list[Message] = []
    add = found.append
    if refused is not None and rails.BMI in refused.ids:
        return [say("CHANGE_UNDERWEIGHT", limit=rails.BMI_FLOOR)]  # no body fat makes a cut due
    if due is None:
        add(say("DECISION_NO_DUE"))
    elif q.fat_fraction >= due:
        add(say("CHANGE_DUE_BELOW", due_percent=100 * due))
    elif leanness.due_weeks is not None:
        add(say("CHANGE_DUE_DATE", due_percent=100 * due, date=q.day(leanness.due_weeks).isoformat()))
    else:
        add(say("CHANGE_DUE_BEYOND", due_percent=100 * due, weeks=HORIZON_WEEKS))
    other_side = reading.probability_other_side
    # What hardly can be changes nothing.
    if reading.margin is not None and other_side is not None and told_percent(other_side) > 1.0:
        add(
            say(
                "CHANGE_READING",
                margin_points=100 * reading.margin,
                error_points=100 * q.fat.sd,
                probability_percent=told_percent(other_side),
            )
        )
    if not q.fat.is_measured:
        add(say("CHANGE_READING_NEEDED"))
    is_content = motive(q) is Feeling.CONTENT
    # Where a cut is due by either line, how somebody feels changes nothing.
    if leanness.other_due is not None and not (facts.is_due and q.fat_fraction >= leanness.other_due):
        add(say("CHANGE_MOTIVE" if is_content else "CHANGE_CONTENT", due_percent=100 * leanness.other_due))
    if refused is not None and rails.UNANSWERED in refused.ids:
        add(say("CHANGE_SCREENING"))
    if refused is not None and refused.ids & {rails.MEDICAL, rails.AGE}:
        add(say("CHANGE_CLEARANCE"))
    return found


def pattern_notes(pattern: Pattern) -> list[Message]:
    """What is said of a pattern of fast gain and cut, and of what it cost."""
    lean, fat = pattern.lean_cost_kg, pattern.fat_cost_kg.mean
    figures = {"lean_kg": lean.mean, "lower_kg": lean.lower, "upper_kg": lean.upper}
    dieting = {"slow_weeks": pattern.slow_weeks_dieting, "dieting_weeks": pattern.weeks_dieting}
    has_cost = lean.mean > _LEAST_LEAN_COST_KG
    notes = [
        say("PATTERN_CYCLES", cycles=pattern.cycles, weeks=pattern.weeks, dieting_weeks=pattern.weeks_dieting),
        say("PATTERN_COST", weeks=pattern.weeks, **figures) if has_cost else say("PATTERN_NO_LEAN", **figures),
        say("PATTERN_FAT", fat_kg=-fat, **dieting) if fat < 0.0 else say("PATTERN_NO_FAT", fat_kg=fat),
    ]
    if pattern.weeks_lost:
        notes.append(say("PATTERN_WEEKS", weeks=pattern.weeks_lost))
    if pattern.assumed:
        notes.append(say("PATTERN_ASSUMED", phases=pattern.assumed))
    return notes
