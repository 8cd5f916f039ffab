"""Documents that stay the same for the life of the process: strong ETags, 304, and one compressed copy."""

import hashlib
import re
import zlib
from collections.abc import Sequence
from typing import Any

from litestar.types import Receive, Scope, Send

from .headers import (
    ACCEPT_ENCODING,
    CACHE_CONTROL,
    CONTENT_ENCODING,
    CONTENT_LENGTH,
    CONTENT_TYPE,
    ETAG,
    IF_NONE_MATCH,
    VARY,
    Header,
    accepts_gzip,
)

PUBLIC_DOCUMENT = b"public, max-age=300"
# Behind a key: kept by the caller alone, and asked for again each time, which a 304 makes cheap.
KEYED_DOCUMENT = b"private, no-cache"

_SMALLEST_COMPRESSED = 1024
_ENTITY_TAG = re.compile(rb'(?:W/)?("[\x21\x23-\x7e\x80-\xff]*")')


def compress(body: bytes, level: int) -> bytes:
    """``body`` as gzip, without a time stamp, so that the same bytes give the same bytes."""
    packing = compressor(level)
    return bytes(packing.compress(body)) + bytes(packing.flush())


def compressor(level: int) -> Any:
    """What compresses a stream as gzip (RFC 1952)."""
    return zlib.compressobj(level, zlib.DEFLATED, wbits=31)


def entity_tag(body: bytes) -> bytes:
    """A strong validator (RFC 9110 8.8.1): another body has another tag."""
    return b'"%s"' % hashlib.sha256(body).hexdigest()[:32].encode()


def matches(if_none_match: bytes, tag: bytes) -> bool:
    """Whether the condition is false, by the weak comparison that RFC 9110 13.1.2 asks for."""
    return if_none_match.strip() == b"*" or tag in _ENTITY_TAG.findall(if_none_match)


class Document:
    """A 200 or a 304 with a body that never changes, as an ASGI application."""

    def __init__(
        self,
        body: bytes,
        media_type: bytes = b"application/json",
        *,
        cache_control: bytes = PUBLIC_DOCUMENT,
        headers: Sequence[Header] = (),
    ) -> None:
        vary = ACCEPT_ENCODING if cache_control == PUBLIC_DOCUMENT else ACCEPT_ENCODING + b", authorization"
        always: list[Header] = [(CACHE_CONTROL, cache_control), (VARY, vary), *headers]
        self._plain = _Form(body, media_type, always)
        self._gzip = self._plain
        if len(body) >= _SMALLEST_COMPRESSED:
            # Another representation, so another tag (RFC 9110 8.8.3.3).
            self._gzip = _Form(compress(body, 9), media_type, [*always, (CONTENT_ENCODING, b"gzip")])

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Send the document; to HEAD its headers only, and to a caller that has it 304."""
        encodings = conditions = b""
        for name, value in scope["headers"]:
            if name == ACCEPT_ENCODING:
                encodings = b"%b,%b" % (encodings, value) if encodings else value
            elif name == IF_NONE_MATCH:
                conditions = b"%b,%b" % (conditions, value) if conditions else value
        form = self._gzip if accepts_gzip(encodings) else self._plain
        status, headers, body = 200, form.headers, form.body
        if conditions and matches(conditions, form.tag):
            status, headers, body = 304, form.kept_headers, b""
        elif scope.get("method") == "HEAD":
            body = b""
        await send({"type": "http.response.start", "status": status, "headers": headers})
        await send({"type": "http.response.body", "body": body, "more_body": False})


class _Form:
    """One representation of a document."""

    def __init__(self, body: bytes, media_type: bytes, headers: Sequence[Header]) -> None:
        self.body = body
        self.tag = entity_tag(body)
        # What a 304 repeats (RFC 9110 15.4.5); not what describes the body, since there is none.
        self.kept_headers = [*(header for header in headers if header[0] != CONTENT_ENCODING), (ETAG, self.tag)]
        self.headers = [*headers, (ETAG, self.tag), (CONTENT_TYPE, media_type), (CONTENT_LENGTH, b"%d" % len(body))]
