"""Calls from web pages of other origins (the WHATWG's Fetch standard, "CORS protocol"), where the operator allows any.

Without an allowed origin this layer is not there at all, and browsers refuse such calls by themselves.
"""

from collections.abc import Iterable
from typing import Any

from litestar.types import ASGIApp, Message, Receive, Scope, Send

from ..wire.deprecation import DEPRECATION_HEADER, SUNSET_HEADER
from ..wire.headers import FINGERPRINT_HEADER, VARY, Header
from ..wire.request_id import CONTRACT_HEADER, REQUEST_ID_HEADER

_PREFLIGHT_SECONDS = 600
_VARY_BY_ORIGIN: Header = (VARY, b"origin")
_EXPOSED = (
    CONTRACT_HEADER,
    REQUEST_ID_HEADER,
    FINGERPRINT_HEADER,
    DEPRECATION_HEADER,
    SUNSET_HEADER,
    "ETag",
    "RateLimit",
    "RateLimit-Policy",
    "Retry-After",
)
_EXPOSE: Header = (b"access-control-expose-headers", ", ".join(_EXPOSED).encode())
_PREFLIGHT: tuple[Header, ...] = (
    (b"access-control-allow-methods", b"GET, HEAD, POST"),
    (
        b"access-control-allow-headers",
        b"authorization, content-encoding, content-type, if-none-match, traceparent, x-request-id",
    ),
    (b"access-control-max-age", b"%d" % _PREFLIGHT_SECONDS),
)


class Cors:
    """Wraps an ASGI application. Credentials other than the key's own header are never allowed."""

    def __init__(self, app: ASGIApp, origins: Iterable[str]) -> None:
        self._app = app
        self._origins = frozenset(origin.encode() for origin in origins)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a preflight, or let an answer be read by the page that called."""
        origin = asked = b""
        for name, value in scope["headers"]:
            if name == b"origin":
                origin = value
            elif name == b"access-control-request-method":
                asked = value
        is_allowed = origin in self._origins
        allowed: list[Header] = [_VARY_BY_ORIGIN]
        if is_allowed:
            allowed.append((b"access-control-allow-origin", origin))
        if is_allowed and asked and scope.get("method") == "OPTIONS":
            await send({"type": "http.response.start", "status": 204, "headers": [*allowed, *_PREFLIGHT]})
            await send({"type": "http.response.body", "body": b"", "more_body": False})
            return
        if is_allowed:
            allowed.append(_EXPOSE)

        async def readable(message: Message) -> None:
            start: Any = message
            if start["type"] == "http.response.start":
                start["headers"] = [*start["headers"], *allowed]
            await send(message)

        await self._app(scope, receive, readable)
