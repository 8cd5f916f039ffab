"""Example lines of a batch: the examples of the operations that a line may ask for."""

import msgspec

from .examples import BODY_COMPOSITION_EXAMPLES, MAINTENANCE_EXAMPLES, TREND_EXAMPLES
from .review_examples import REVIEW_EXAMPLES
from .schemas.batches import BatchLine, BatchOperation


def _line(reference: str, operation: BatchOperation, body: msgspec.Struct) -> BatchLine:
    return BatchLine(reference=reference, operation=operation, body=msgspec.Raw(msgspec.json.encode(body)))


BATCH_EXAMPLES = {
    "maintenance": _line("member-0041", BatchOperation.ESTIMATE_MAINTENANCE, MAINTENANCE_EXAMPLES["profile_only"]),
    "trend": _line("member-0042", BatchOperation.READ_TREND, TREND_EXAMPLES["three_weeks"]),
    "review": _line("member-0043", BatchOperation.REVIEW_PHASE, REVIEW_EXAMPLES["too_early"]),
    "body_composition": _line(
        "member-0044", BatchOperation.ESTIMATE_BODY_COMPOSITION, BODY_COMPOSITION_EXAMPLES["height_and_weight"]
    ),
}
