"""`POST /v1/rosters`: whom to look at first."""

from datetime import date

from steelyard import answers
from steelyard.science import review
from steelyard.science.phase import Verdict
from steelyard.science.register import Message, OutOfDomain

from ..languages import english, is_of_attention, parameters
from ..operation.operation import computation
from ..schemas.rosters import (
    Attention,
    RosterMember,
    RosterPlace,
    RosterRequest,
    RosterResponse,
    Said,
)
from . import mapping

_DAY = date(2026, 5, 11)
_OFF_PLAN = (Verdict.FASTER, Verdict.SLOWER)


def _said(code: str, text: str) -> Said:
    return Said(code=code, text=text)


def _example(level: int, code: str, text: str, since: date, last: date) -> Attention:
    return Attention(
        level=level,
        reason=_said(code, text),
        action=_said("ATTENTION_DO_LOOK", "Look at the log with them; change nothing yet."),
        verdict="within_interval",
        since_date=since,
        as_of_date=_DAY,
        last_entry_date=last,
    )


ROSTER_EXAMPLES = {
    "two_members": RosterRequest(
        as_of_date=_DAY,
        members=[
            RosterMember(
                reference="member-0041",
                attention=_example(0, "ATTENTION_NONE", "All goes as planned.", date(2026, 4, 27), date(2026, 5, 10)),
            ),
            RosterMember(
                reference="member-0042",
                attention=_example(
                    2, "ATTENTION_CONTRADICTED", "Scale and log do not agree.", date(2026, 5, 4), date(2026, 5, 9)
                ),
                before=_example(0, "ATTENTION_NONE", "All goes as planned.", date(2026, 4, 13), date(2026, 5, 3)),
            ),
        ],
    )
}


@computation(
    "/v1/rosters",
    operation_id="rank_roster",
    tag="reviews",
    summary="Put members in the order in which to look at them",
    request_examples=ROSTER_EXAMPLES,
)
def rank_roster(body: RosterRequest) -> RosterResponse:
    """Order up to 500 members by the `attention` that their reviews ask for, as those reviews gave it.

    The highest level comes first, then who has waited and been silent longest. Days of silence are counted up to the
    roster's day, so that somebody who stopped logging moves up by themselves. With last week's attention as `before`
    the answer says what changed. Whose review was refused has no `attention`, and comes before all of them: the refusal
    says whom they should see. Of thousands, review in batches, make rosters of 500 and merge them by `priority`.
    """
    asked = answers.RosterAsked(
        body.as_of_date,
        [
            review.MemberToRank(
                member.reference,
                told(member.attention, f"members[{i}].attention"),
                None if member.before is None else told(member.before, f"members[{i}].before"),
            )
            for i, member in enumerate(body.members)
        ],
    )
    answer = answers.rank_roster(asked)
    placed = answer.value
    levels = [each.attention.level for each in placed]
    return RosterResponse(
        **mapping.provenance("rank_roster", body),
        as_of_date=body.as_of_date,
        members=[
            RosterPlace(
                rank=each.rank,
                reference=each.reference,
                attention=shown(each.attention),
                days_silent=each.days_silent,
                change=each.change,
                priority=each.priority,
            )
            for each in placed
        ],
        by_level=[levels.count(level) for level in range(4)],
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def told(attention: Attention, name: str) -> review.AttentionNeeded:
    """An attention as a review gave it, told as ``name``. Raises ``OutOfDomain`` for one that none gave."""
    return review.AttentionNeeded(
        attention.level,
        _message(attention.reason, attention, name),
        _message(attention.action, attention, name),
        attention.since_date,
        attention.as_of_date,
        attention.last_entry_date,
        attention.verdict,
        attention.change_kcal,
    )


def _message(said: Said, attention: Attention, name: str) -> Message:
    """What was said, from its code: the text is made anew. Raises ``OutOfDomain`` for what no review says."""
    last = attention.last_entry_date
    known: dict[str, float | str] = {
        "verdict": attention.verdict,
        "step_kcal": abs(attention.change_kcal),
        "direction": "less" if attention.change_kcal < 0 else "more",
        # Whoever has logged since the review may have it told.
        "days": 0 if last is None else max(0, (attention.as_of_date - last).days),
    }
    named = parameters(said.code) if is_of_attention(said.code) else None
    if named is None or ("verdict" in named and attention.verdict not in _OFF_PLAN):
        detail = "No review says this: send the attention as it gave it."
        raise OutOfDomain("ATTENTION_NOT_READABLE", name, detail)
    return Message(said.code, {name: value for name, value in known.items() if name in named})


def shown(attention: review.AttentionNeeded) -> Attention:
    """An attention as an answer shows it."""
    reason, action = attention.reason, attention.action
    return Attention(
        level=attention.level,
        reason=Said(code=reason.code, text=english(reason)),
        action=Said(code=action.code, text=english(action)),
        verdict=attention.verdict,
        change_kcal=attention.change_kcal,
        since_date=attention.since,
        as_of_date=attention.as_of,
        last_entry_date=attention.last_entry,
    )
