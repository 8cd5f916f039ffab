"""Whom to look at first, and why: one level, one reason, one thing to do, since when; and all of them in that order."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ..phase import DAYS_PER_WEEK, Verdict
from ..register import Basis, Contradiction, Message, constant, say
from . import texts
from .check_in_signs import LOW_MOOD, MISSED, MUCH_WEAKER, WAITS
from .next_step import Advice, NextStep
from .review import Review

SILENT_DAYS = constant(
    "attention_silent_days", 7.0, unit="d", basis=Basis.JUDGEMENT, summary="Days without an entry that are looked at"
)
LONG_SILENT_DAYS = constant(
    "attention_long_silent_days", 14.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Days without an entry from which nobody knows how the phase goes",
)  # fmt: skip
SAFETY = "ATTENTION_SAFETY"
CONTRADICTED = "ATTENTION_CONTRADICTED"
OFF_PLAN = "ATTENTION_OFF_PLAN"
RAISED = "ATTENTION_RAISED"
LOWERED = "ATTENTION_LOWERED"
ENDING = "ATTENTION_ENDING"
WAITING = "ATTENTION_WAITING"
UNDER_RAIL = "ATTENTION_UNDER_RAIL"
NOT_WEIGHED = "ATTENTION_NOT_WEIGHED"
SILENT = "ATTENTION_SILENT"
ON_PLAN = "ATTENTION_NONE"
DO_SAFETY = "ATTENTION_DO_SAFETY"
DO_SETTLE = "ATTENTION_DO_SETTLE"
DO_SETTLE_AND_CHANGE = "ATTENTION_DO_SETTLE_AND_CHANGE"
DO_CHASE = "ATTENTION_DO_CHASE"
DO_CHANGE = "ATTENTION_DO_CHANGE"
DO_LOOK = "ATTENTION_DO_LOOK"
DO_NEXT = "ATTENTION_DO_NEXT"
DO_TELL_END = "ATTENTION_DO_TELL_END"
DO_ASK = "ATTENTION_DO_ASK"
DO_NOTHING = "ATTENTION_DO_NOTHING"
# What ends a phase, or sends the member to somebody.
_SIGNS = frozenset({MISSED, MUCH_WEAKER, LOW_MOOD, texts.UNEXPLAINED_LOSS})
_URGENT, _SOON, _LOOK, _NONE = 3, 2, 1, 0
_DAY, _LEVEL = 1.0, 1000.0


class AttentionNeeded(NamedTuple):
    """How much somebody needs to be looked at, 0 to 3; ``since`` the day from which it is for this reason.
    ``last_entry`` is the day of the last entry of their log."""

    level: int
    reason: Message
    action: Message
    since: date
    as_of: date
    last_entry: date | None
    verdict: str = ""
    change_kcal: float = 0.0


class Placed(NamedTuple):
    """A member of a roster: their place from 1 on, what to do, days of silence, and what changed since last week:
    ``new``, ``worse``, ``better`` or ``same``. Rosters are merged by ``priority``, the largest first."""

    rank: int
    reference: str
    attention: AttentionNeeded
    days_silent: int | None
    change: str
    priority: float


class MemberToRank(NamedTuple):
    """Somebody on a roster, with the attention of the last review and of the one a week before."""

    reference: str
    attention: AttentionNeeded
    before: AttentionNeeded | None = None


def attention_of(
    review: Review, as_of: date, last_entry: date | None, before: AttentionNeeded | None = None
) -> AttentionNeeded:
    """What a review asks of a coach. ``before``: what the one before asked, whose reason may go on."""
    codes = {reason.code: reason for reason in review.reasons}
    advice = review.advice
    refused = any(action.action == "refused" for action in advice.actions)
    silent = 0 if last_entry is None else (as_of - last_entry).days
    if refused or codes.keys() & _SIGNS:
        found = _URGENT, say(SAFETY), say(DO_SAFETY)
    elif advice.decision is not NextStep.CONTINUE:
        found = _SOON, say(ENDING), _at_end(advice)
    elif review.question is not None or review.is_unanswered or review.verdict is Verdict.CONTRADICTED:
        change, ask = advice.correction_kcal, DO_CHASE if review.is_unanswered else DO_SETTLE
        found = _SOON, say(CONTRADICTED), texts.step(DO_SETTLE_AND_CHANGE, change) if change else say(ask)
    elif review.verdict in (Verdict.FASTER, Verdict.SLOWER):
        change = advice.correction_kcal
        found = (
            _SOON if change else _LOOK,
            say(OFF_PLAN, verdict=review.verdict.value),
            texts.step(DO_CHANGE, change) if change else say(DO_LOOK),
        )
    elif advice.correction_kcal:
        # On plan or too early: a rail moves what is to be eaten, or what a hold was given is taken back.
        code = RAISED if advice.correction_kcal > 0 else LOWERED
        found = _SOON, say(code), texts.step(DO_CHANGE, advice.correction_kcal)
    elif WAITS in codes:
        found = _LOOK, say(WAITING), say(DO_LOOK)
    elif texts.NOT_WEIGHED in codes:
        found = _LOOK, say(NOT_WEIGHED, days=codes[texts.NOT_WEIGHED].params["days"]), say(DO_ASK)
    elif texts.EATEN_UNDER_RAIL in codes:
        found = _LOOK, say(UNDER_RAIL), say(DO_LOOK)
    else:
        found = _NONE, say(ON_PLAN), say(DO_NOTHING)
    since = _since(found[1], as_of, before)
    asked = AttentionNeeded(*found, since, as_of, last_entry, review.verdict.value, float(advice.correction_kcal))
    return _silent(asked, silent, before)


def _at_end(advice: Advice) -> Message:
    """What to do about an end that moves or has come: what is nearest."""
    if advice.days_ahead <= DAYS_PER_WEEK:
        return say(DO_NEXT)
    change = advice.correction_kcal
    return texts.step(DO_CHANGE, change) if change else say(DO_TELL_END)


def _since(reason: Message, as_of: date, before: AttentionNeeded | None) -> date:
    return before.since if before is not None and before.reason.code == reason.code else as_of


def _silent(found: AttentionNeeded, days: int, before: AttentionNeeded | None) -> AttentionNeeded:
    """What was found, or silence where that is worse; silence that goes on is told with the days it has lasted."""
    level = _SOON if days > LONG_SILENT_DAYS else _LOOK if days > SILENT_DAYS else _NONE
    goes_on = found.reason.code == SILENT
    if level < found.level or (level == found.level and not goes_on):
        return found
    reason = say(SILENT, days=days)
    since = found.since if goes_on else _since(reason, found.as_of, before)
    return found._replace(level=level, reason=reason, action=say(DO_ASK), since=since)


def _change(now: AttentionNeeded, before: AttentionNeeded | None) -> str:
    if before is None:
        return "new"
    if now.level == before.level:
        return "same"
    return "worse" if now.level > before.level else "better"


def ranked(members: Sequence[MemberToRank], as_of: date) -> list[Placed]:
    """Members in the order in which to look at them. Raises ``Contradiction`` for a reference that is there twice."""
    seen: set[str] = set()
    found = []
    for i, member in enumerate(members):
        if member.reference in seen:
            detail = f"{member.reference!r} is on the roster twice."
            raise Contradiction("REFERENCE_TWICE", f"members[{i}].reference", detail)
        seen.add(member.reference)
        now = member.attention
        silent = None if now.last_entry is None else max(0, (as_of - now.last_entry).days)
        now = _silent(now, silent or 0, member.before)
        # Silence has waited as long as it lasts, whenever a review was last made of it.
        waited = 0 if now.reason.code == SILENT else max(0, (as_of - now.since).days)
        priority = _LEVEL * now.level + min(waited, 400) * _DAY + min(silent or 0, 400) * _DAY
        found.append(Placed(0, member.reference, now, silent, _change(now, member.before), priority))
    found.sort(key=lambda placed: (-placed.priority, placed.reference))
    return [placed._replace(rank=i) for i, placed in enumerate(found, start=1)]
