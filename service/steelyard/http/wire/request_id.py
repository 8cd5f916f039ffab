"""The two headers that every response carries: the contract's version and the request's id."""

import re
from typing import Any
from uuid import uuid4

from litestar.types import Scope

CONTRACT_VERSION = "1.0.0"
CONTRACT_HEADER = "Steelyard-Contract"
REQUEST_ID_HEADER = "X-Request-Id"

# What callers' tools make: UUIDs, ULIDs, ids of traces and load balancers. Each character may stand as it is in a URI
# (RFC 3986 3.5), in a log and in a header; without dots and the sign of addresses it is no measurement and no mailbox.
PATTERN = "[A-Za-z0-9_:/+=-]{8,128}"
_SANE = re.compile(PATTERN.encode())
_UUID = re.compile("[0-9a-fA-F]{8}(?:-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")
_KEY = "steelyard_request_id"
_request_id = REQUEST_ID_HEADER.lower().encode()


def request_id(scope: Scope) -> str:
    """The request's id: the caller's ``X-Request-Id`` as it is, if it is sane, else a fresh UUID. Kept in the scope."""
    state: dict[str, Any] = scope["state"]
    known: str | None = state.get(_KEY)
    if known is None:
        known = next(
            (
                value.decode("ascii")
                for name, value in scope["headers"]
                if name == _request_id and _SANE.fullmatch(value)
            ),
            None,
        ) or str(uuid4())
        state[_KEY] = known
    return known


def instance(id_: str) -> str:
    """The request's id as a URI reference: a URN (RFC 9562), or a fragment where it is no UUID."""
    return f"urn:uuid:{id_.lower()}" if _UUID.fullmatch(id_) else f"#{id_}"
