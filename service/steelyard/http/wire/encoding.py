"""Encoding answers: JSON once, never a NaN in disguise."""

import math
import re
from collections.abc import Callable, Sequence
from functools import cache
from typing import Any

import msgspec
from litestar.types import Receive, Scope, Send

from steelyard.science.register import Ids

from .headers import CONTENT_LENGTH, CONTENT_TYPE, Header


@cache
def _writer() -> Callable[[Any], bytes | None]:
    """The compiled writer of columns; one that leaves them to the library where a build has none."""
    try:
        from steelyard.science._floats import json_array
    except ImportError:
        return lambda column: None
    return json_array


def _written(column: Any) -> Any:
    """What is encoded in place of what the library does not know: a column of a compiled function, or ids of entries,
    which many answers share.

    The writer of columns leaves what is no finite number; raises ``ArithmeticError`` where that is why.
    """
    if isinstance(column, Ids):
        if column.written is None:
            column.written = msgspec.Raw(msgspec.json.encode([*column]))
        return column.written
    text = _writer()(column)
    if text is not None:
        return msgspec.Raw(text)
    values = list(column)
    if not all(map(math.isfinite, values)):
        raise ArithmeticError
    return values


_json = msgspec.json.Encoder(enc_hook=_written)
_pack = msgspec.msgpack.Encoder(enc_hook=lambda _: None)  # columns were looked at when they were written
# A MessagePack float64 (0xcb) whose eleven exponent bits are all ones: NaN or an infinity. Bytes of other values
# may look the same, so that a match is a suspicion; without a match there is none.
_SUSPECT = re.compile(rb"\xcb[\x7f\xff][\xf0-\xff]")


class NonFiniteAnswer(ArithmeticError):  # noqa: N818 - named for what it is about
    """A computation gave NaN or an infinity. ``place`` says where in the answer."""

    def __init__(self, place: str) -> None:
        super().__init__(f"not a finite number at {place}")
        self.place = place


def encode_finite(answer: Any) -> bytes:
    """``answer`` as JSON. Raises ``NonFiniteAnswer`` where msgspec would write ``null`` for NaN or an infinity.

    An output without ``null`` has neither. One with it is encoded a second time in a format that keeps None and NaN
    apart, which takes a third of the time of the first.
    """
    try:
        body = _json.encode(answer)
    except ArithmeticError:
        _require_all_finite(answer)
        raise
    if b"null" in body and _SUSPECT.search(_pack.encode(answer)):
        _require_all_finite(answer)
    return body


def _require_all_finite(answer: Any) -> None:
    _require_finite(msgspec.to_builtins(answer, enc_hook=list), "$")


def _require_finite(value: Any, place: str) -> None:
    if isinstance(value, float) and not math.isfinite(value):
        raise NonFiniteAnswer(place)
    if isinstance(value, dict):
        for key, item in value.items():
            _require_finite(item, f"{place}.{key}")
    elif isinstance(value, list | tuple):
        for index, item in enumerate(value):
            _require_finite(item, f"{place}[{index}]")


class EncodedAnswer:
    """A 200 with a body that is already encoded, as the smallest ASGI application that sends it."""

    __slots__ = ("_body", "_headers")

    def __init__(self, body: bytes, media_type: bytes = b"application/json", *, headers: Sequence[Header] = ()) -> None:
        self._body = body
        self._headers = [(CONTENT_TYPE, media_type), (CONTENT_LENGTH, b"%d" % len(body)), *headers]

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Send the answer; to HEAD, its headers only."""
        body = b"" if scope.get("method") == "HEAD" else self._body
        await send({"type": "http.response.start", "status": 200, "headers": self._headers})
        await send({"type": "http.response.body", "body": body, "more_body": False})
