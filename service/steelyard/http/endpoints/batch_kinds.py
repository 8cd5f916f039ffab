"""The kinds of line that a batch takes, and the line itself. Another kind is another operation in ``BATCHED``."""

from enum import StrEnum
from typing import Annotated

import msgspec
from msgspec import Meta

from ..operation.operation import Operation
from ..schemas.shared_fields import Request
from .body_composition import estimate_body_composition
from .decisions import decide_phase
from .forecasts import forecast_intake
from .maintenance import estimate_maintenance
from .plans import plan_phases
from .reviews import review_phase
from .trends import read_trend

MOST_REFERENCE_LENGTH = 200
BATCHED: tuple[Operation, ...] = (
    estimate_body_composition,
    estimate_maintenance,
    decide_phase,
    forecast_intake,
    plan_phases,
    read_trend,
    review_phase,
)

BatchOperation = StrEnum(  # type: ignore[misc]  # its members are known when it runs
    "BatchOperation", {operation.operation_id.upper(): operation.operation_id for operation in BATCHED}
)
BatchOperation.__doc__ = "The operations that a line may ask for: those that take one person."

_BODY_NAMES = [operation.body_type.__name__ for operation in BATCHED if operation.body_type]


class BatchLine(Request, frozen=True, kw_only=True):
    """One line in: an operation and its body, under a reference of the caller's choosing."""

    reference: Annotated[
        str,
        Meta(
            min_length=1,
            max_length=MOST_REFERENCE_LENGTH,
            description="Comes back with the answer.",
            examples=["member-0042"],
        ),
    ]
    operation: Annotated[BatchOperation, Meta(description="Id of the operation.", examples=["read_trend"])]
    body: Annotated[
        msgspec.Raw,
        Meta(
            description="The body that the operation takes when it is called by itself.",
            extra_json_schema={"anyOf": [{"$ref": f"#/components/schemas/{name}"} for name in _BODY_NAMES]},
        ),
    ]


def _example(number: int, operation: Operation) -> BatchLine:
    """The shortest example of an operation as a line."""
    bodies = [msgspec.json.encode(body) for body in operation.request_examples.values()]
    return BatchLine(
        reference=f"member-{number:04}",
        operation=BatchOperation(operation.operation_id),
        body=msgspec.Raw(min(bodies, key=len)),
    )


BATCH_EXAMPLES = {operation.operation_id: _example(number, operation) for number, operation in enumerate(BATCHED, 41)}
