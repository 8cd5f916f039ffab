"""The two headers that every response carries: the contract's version and the request's id."""

import re
from typing import Any
from uuid import uuid4

from litestar.types import Scope

CONTRACT_VERSION = "1.0.0"
CONTRACT_HEADER = "Steelyard-Contract"
REQUEST_ID_HEADER = "X-Request-Id"

_UUID = re.compile(rb"[0-9a-fA-F]{8}(?:-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")
_KEY = "steelyard_request_id"
_request_id = REQUEST_ID_HEADER.lower().encode()


def request_id(scope: Scope) -> str:
    """The request's id: the caller's ``X-Request-Id`` if that is a UUID, else a fresh one. Kept in the scope."""
    state: dict[str, Any] = scope["state"]
    known: str | None = state.get(_KEY)
    if known is None:
        known = next(
            (
                value.decode("ascii").lower()
                for name, value in scope["headers"]
                if name == _request_id and _UUID.fullmatch(value)
            ),
            None,
        ) or str(uuid4())
        state[_KEY] = known
    return known
