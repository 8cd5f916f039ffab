"""The answer of a decision: its parts, the reasons beside that of the situation, and what would change it."""

from typing import NamedTuple

from .. import rails
from ..measures import FatRange, Standing, healthy_range
from ..phase import PhaseKind
from ..rails import RailAction, Refused
from ..register import Message, say
from . import reasons as decision_reasons  # noqa: F401 - registers the texts
from .alternatives import Alternative
from .pattern import Pattern
from .terms import HORIZON_WEEKS, TIE_KG, Feeling, Question, Situation
from .trade import Lines, motive


class Reading(NamedTuple):
    """What the body-fat reading can carry. ``margin`` is how far it is over the due line, where there is one."""

    is_good_enough: bool
    probability_over_line: float
    margin: float | None
    probability_other_side: float | None


class Leanness(NamedTuple):
    """Everything about body fat; absent where none may be spoken of."""

    lines: Lines
    due: float | None
    other_due: float | None  # for someone content; for those who are, for someone who would like to be leaner
    due_weeks: int | None
    healthy: FatRange
    reading: Reading


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


def explain(
    question: Question,
    chosen: Alternative,
    listed: list[Alternative],
    *,
    by_trade: bool,
    refused: Refused | None,
    pattern: Pattern | None,
) -> list[Message]:
    """The reasons that come after that of the situation."""
    q, fat = question, 100.0 * question.fat_fraction
    reasons: list[Message] = []
    others = [a for a in listed if a.kind.is_deficit is not chosen.kind.is_deficit and a.score is not None]
    if by_trade and others:
        other = max(others, key=lambda a: a.total_kg)
        reasons.append(
            say(
                "DECISION_TRADE",
                weeks=HORIZON_WEEKS,
                best=chosen.kind.value,
                best_kg=chosen.total_kg,
                other=other.kind.value,
                other_kg=other.total_kg,
            )
        )
        if abs(chosen.total_kg - other.total_kg) < TIE_KG:
            reasons.append(say("DECISION_CLOSE", tie_kg=TIE_KG))
    healthy = healthy_range(q.subject.sex, q.subject.age_years)
    standing = healthy.standing(q.fat_fraction)
    bounds = {"lower_percent": 100 * healthy.lower, "upper_percent": 100 * healthy.upper}
    if standing is Standing.WITHIN:
        reasons.append(say("DECISION_WITHIN_HEALTHY", fat_percent=fat, **bounds))
    elif standing is Standing.BELOW:
        reasons.append(say("DECISION_BELOW_HEALTHY", fat_percent=fat, lower_percent=bounds["lower_percent"]))
    else:
        reasons.append(say("DECISION_ABOVE_HEALTHY", fat_percent=fat, upper_percent=bounds["upper_percent"]))
    if q.history is None:
        reasons.append(say("DECISION_HISTORY_UNKNOWN"))
    if refused is not None:
        reasons.append(refused.action.message)
    if pattern is not None and chosen.kind is PhaseKind.GAIN:
        slow = None if chosen.fragment is None else chosen.fragment.surplus_kcal
        if slow is not None:
            reasons.append(say("DECISION_GAIN_SLOWLY", surplus_kcal=slow))
    return reasons


def changes(question: Question, leanness: Leanness, refused: Refused | None) -> list[Message]:
    """What would change the answer."""
    q, due, reading = question, leanness.due, leanness.reading
    found: list[Message] = []
    add = found.append
    if due is None:
        add(say("DECISION_NO_DUE"))
    elif q.fat_fraction >= due:
        add(say("CHANGE_DUE_BELOW", due_percent=100 * due))
    elif leanness.due_weeks is not None:
        add(say("CHANGE_DUE_DATE", due_percent=100 * due, date=q.day(leanness.due_weeks).isoformat()))
    else:
        add(say("CHANGE_DUE_BEYOND", due_percent=100 * due, weeks=HORIZON_WEEKS))
    if reading.margin is not None and reading.probability_other_side is not None:
        add(
            say(
                "CHANGE_READING",
                margin_points=100 * reading.margin,
                error_points=100 * q.fat.sd,
                probability_percent=100 * reading.probability_other_side,
            )
        )
    if not q.fat.is_measured:
        add(say("CHANGE_READING_NEEDED"))
    is_content = motive(q) is Feeling.CONTENT
    # A wish to be leaner moves the line down, so that it says nothing where a cut is due already.
    if leanness.other_due is not None and not (is_content and due is not None and q.fat_fraction >= due):
        add(say("CHANGE_MOTIVE" if is_content else "CHANGE_CONTENT", due_percent=100 * leanness.other_due))
    if refused is not None and refused.action.id == rails.UNANSWERED:
        add(say("CHANGE_SCREENING"))
    if refused is not None and refused.action.id in (rails.MEDICAL, rails.AGE):
        add(say("CHANGE_CLEARANCE"))
    return found
