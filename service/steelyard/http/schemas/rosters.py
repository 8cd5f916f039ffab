"""`POST /v1/rosters`, and the attention that a review asks for."""

from typing import Annotated

from msgspec import Meta

from .explanation import MethodIds, Note, Provenance
from .shared_fields import CivilDate, Request, Response


class Said(Request, frozen=True, kw_only=True):
    """A message: a stable code and its text."""

    code: Annotated[
        str,
        Meta(max_length=60, description="Stable code, as in `/v1/messages`.", examples=["ATTENTION_SILENT"]),
    ]
    text: Annotated[str, Meta(max_length=400, description="The message in English.")]


class Attention(Request, frozen=True, kw_only=True):
    """How much somebody needs to be looked at, why, what to do, and since when."""

    level: Annotated[
        int,
        Meta(
            ge=0,
            le=3,
            description="0 nothing to do, 1 look at the log, 2 something to agree on, 3 a sign or a guard rail: today.",
            examples=[2],
        ),
    ]
    reason: Said
    action: Said
    verdict: Annotated[str, Meta(max_length=40, description="The review's verdict.", examples=["slower"])]
    change_kcal: Annotated[
        float, Meta(ge=-15000, le=15000, description="What the review changes of the daily intake.", examples=[-100])
    ] = 0
    since_date: Annotated[CivilDate, Meta(description="The review from which on it has been for this reason.")]
    as_of_date: Annotated[CivilDate, Meta(description="The day of the review.")]
    last_entry_date: Annotated[CivilDate | None, Meta(description="The day of the last entry of the log.")] = None


class RosterMember(Request, frozen=True, kw_only=True):
    """Somebody on a roster: the `attention` of their last review, and of the one a week before."""

    reference: Annotated[
        str, Meta(min_length=1, max_length=200, description="Comes back with the answer.", examples=["member-0042"])
    ]
    attention: Attention
    before: Annotated[Attention | None, Meta(description="That of last week, where there is one.")] = None


class RosterRequest(Request, frozen=True, kw_only=True):
    """Up to 500 members; of more, make several rosters and merge them by `priority`."""

    as_of_date: CivilDate
    members: Annotated[list[RosterMember], Meta(max_length=500, description="Whom to put in order.")]


class RosterPlace(Response, frozen=True, kw_only=True):
    """A member and their place."""

    rank: Annotated[int, Meta(description="Place in the order, from 1: whom to look at first.", examples=[1])]
    reference: Annotated[str, Meta(description="The member's reference.", examples=["member-0042"])]
    attention: Annotated[Attention, Meta(description="As of that day: silence counts.")]
    days_silent: Annotated[
        int | None, Meta(description="Days since the last entry; null where there is none.", examples=[3])
    ]
    change: Annotated[
        str, Meta(description="Against last week: `new`, `worse`, `better` or `same`. Extensible.", examples=["worse"])
    ]
    priority: Annotated[
        float, Meta(description="The order goes by it, largest first; rosters are merged by it.", examples=[2014])
    ]


class RosterResponse(Provenance, frozen=True, kw_only=True):
    """The members in the order in which to look at them."""

    as_of_date: CivilDate
    members: Annotated[list[RosterPlace], Meta(description="The first needs it most.")]
    by_level: Annotated[
        list[int], Meta(description="How many there are of level 0, 1, 2 and 3.", examples=[[170, 18, 10, 2]])
    ]
    cautions: list[Note]
    methods: MethodIds
