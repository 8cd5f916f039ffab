"""What a request costs: units by operation, in the rate limit, the quotas and the ledger.

A unit is what a plan takes of a processor, one to two milliseconds: measured, rounded, and at least one.
"""

from .operation import Operation

PICTURE_UNITS = 100  # a drawing, on top of the answer that it shows
_UNITS = {"decide_phase": 10, "plan_season": 10, "compare_strategies": 50, "optimise_season": 200}


def units(operation: Operation, answer_type: str | None = None) -> int:
    """The units of a request that is answered in ``answer_type``; of a batch, of each line."""
    format_ = operation.formats.get(answer_type or "")
    # A slow format is finished in a workshop, unless what was made is sent as it is.
    is_drawn = format_ is not None and format_.is_slow and bool(getattr(format_, "form", ""))
    return _UNITS.get(operation.renders or operation.operation_id, 1) + (PICTURE_UNITS if is_drawn else 0)
