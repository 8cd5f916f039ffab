"""The trace that a request belongs to, from the caller's ``traceparent`` header.

Source: W3C Recommendation "Trace Context" (2021), section 3.2. What does not fit it is ignored, as it asks.
"""

import re
from typing import NamedTuple

TRACEPARENT = b"traceparent"

# Version 00 has exactly four parts; a later version may have more, behind another dash.
_TRACEPARENT = re.compile(rb"([0-9a-f]{2})-([0-9a-f]{32})-([0-9a-f]{16})-([0-9a-f]{2})(-.*)?")
_INVALID_VERSION = b"ff"
_NO_TRACE = b"0" * 32
_NO_SPAN = b"0" * 16


class TraceContext(NamedTuple):
    """The caller's trace and span, in lower-case hexadecimal, and whether the caller records them."""

    trace_id: str
    parent_id: str
    is_sampled: bool


def read_traceparent(value: bytes) -> TraceContext | None:
    """The context that a ``traceparent`` names, or None where it is malformed."""
    match = _TRACEPARENT.fullmatch(value.strip())
    if match is None:
        return None
    version, trace_id, parent_id, flags, more = match.groups()
    if version == _INVALID_VERSION or trace_id == _NO_TRACE or parent_id == _NO_SPAN or (version == b"00" and more):
        return None
    return TraceContext(trace_id.decode(), parent_id.decode(), bool(int(flags, 16) & 1))
