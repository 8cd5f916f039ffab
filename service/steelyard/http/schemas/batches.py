"""`POST /v1/batches`: the lines that go out; those that come in stand with what they may ask for."""

from typing import Annotated

import msgspec
from msgspec import Meta

from .problems import Problem
from .shared_fields import Response


class BatchAnswer(Response, frozen=True, kw_only=True):
    """One line out: either `result` or `problem`, in the order of the lines in."""

    line: Annotated[int, Meta(description="Number of the line it answers, from 1.", examples=[42])]
    reference: Annotated[
        str | None, Meta(description="The line's reference; null where none could be read.", examples=["member-0042"])
    ]
    result: Annotated[
        msgspec.Raw | msgspec.UnsetType,
        Meta(description="The answer of the operation, the same bytes as when it is called by itself."),
    ] = msgspec.UNSET
    problem: Annotated[
        Problem | msgspec.UnsetType,
        Meta(
            description="The problem document that the operation called by itself would answer with. Pointers lead "
            "into the line's `body`, or into the line where the line itself is at fault."
        ),
    ] = msgspec.UNSET


class BatchCounts(Response, frozen=True, kw_only=True):
    """What became of the lines."""

    lines: Annotated[int, Meta(description="Lines answered; blank lines are passed over.", examples=[100000])]
    results: Annotated[int, Meta(description="Lines answered with a result.", examples=[99998])]
    problems: Annotated[int, Meta(description="Lines answered with a problem.", examples=[2])]
    problems_by_status: Annotated[
        dict[str, int], Meta(description="The problems by their status.", examples=[{"400": 1, "422": 1}])
    ]
    is_complete: Annotated[
        bool,
        Meta(description="Whether every line was read; false where a limit or the wait for a line ended the batch."),
    ]


class BatchSummary(Response, frozen=True, kw_only=True):
    """The last line out. An answer without it was cut off."""

    summary: BatchCounts
