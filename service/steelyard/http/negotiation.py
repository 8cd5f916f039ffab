"""Which media type of an operation's answers a caller gets (RFC 9110 12.5.1)."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

import msgspec

from .headers import quality

JSON = "application/json"


class Format(msgspec.Struct, frozen=True, kw_only=True):
    """Another media type for an answer: ``encode`` makes it of the request's body and the computed answer.

    ``schema`` is what the contract says of it.
    """

    content_type: str
    encode: Callable[[Any, Any], bytes]
    schema: Mapping[str, Any] = msgspec.field(default_factory=lambda: {"type": "string"})


def negotiate(accept: bytes, offered: Sequence[str]) -> str | None:
    """The media type of ``offered`` that an ``Accept`` header likes best; the first of several, None without any."""
    if accept in (b"", b"*/*") or accept == offered[0].encode("ascii"):  # the common cases first
        return offered[0]
    ranges: dict[str, float] = {}
    for part in accept.decode("latin-1").lower().split(","):
        range_, *parameters = (text.strip() for text in part.split(";"))
        ranges.setdefault(range_, quality(parameters))
    best, weight = None, 0.0
    for media_type in offered:
        main = media_type.partition("/")[0]
        # The most specific range wins.
        found = next((ranges[r] for r in (media_type, f"{main}/*", "*/*") if r in ranges), 0.0)
        if found > weight:
            best, weight = media_type, found
    return best
