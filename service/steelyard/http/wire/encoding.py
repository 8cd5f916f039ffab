"""Encoding answers: JSON once, never a NaN in disguise."""

import math
import re
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from itertools import chain
from typing import Any

import msgspec
from litestar.types import Receive, Scope, Send
from msgspec import inspect
from msgspec.structs import astuple

from .headers import CONTENT_LENGTH, CONTENT_TYPE, Header


@cache
def _writer() -> Callable[[Any], bytes | None]:
    """The compiled writer of columns; one that leaves them to the library where a build has none."""
    try:
        from steelyard.science._floats import json_array
    except ImportError:
        return lambda column: None
    return json_array


def _column(column: Any) -> Any:
    """What is encoded in place of a column of a compiled function, which the library does not know.

    The writer leaves what is no finite number; raises ``ArithmeticError`` where that is why.
    """
    text = _writer()(column)
    if text is not None:
        return msgspec.Raw(text)
    values = list(column)
    if not all(map(math.isfinite, values)):
        raise ArithmeticError
    return values


_json = msgspec.json.Encoder(enc_hook=_column)
_pack = msgspec.msgpack.Encoder(enc_hook=lambda _: None)  # columns were looked at when they were written
_NULL = re.compile(rb"null")  # ``findall`` takes half the time of ``bytes.count``
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

    Where the output has no ``null``, or as many as there are None in the answer, there is nothing to look for: the
    common and cheap case.
    """
    try:
        body = _json.encode(answer)
    except ArithmeticError:
        _require_all_finite(answer)
        raise
    if b"null" not in body:
        return body
    if len(_NULL.findall(body)) > _absent(answer) and _SUSPECT.search(_pack.encode(answer)):
        _require_all_finite(answer)
    return body


def _absent(value: Any) -> int:
    """How many None there are in an object or a list of an answer, as far as its types tell of any."""
    if isinstance(value, msgspec.Struct):
        return astuple(value).count(None) + sum([_absent(getattr(value, name)) for name in _lacking(type(value))])
    if not isinstance(value, list) or not value:
        return 0
    if not isinstance(value[0], msgspec.Struct):
        return value.count(None)
    if _lacking(type(value[0])):
        return sum(map(_absent, value))
    return [*chain.from_iterable(map(astuple, value))].count(None) if _may_hold_none(type(value[0])) else 0


@cache
def _lacking(kind: type[msgspec.Struct]) -> tuple[str, ...]:
    """The fields of a kind of object that may have a None in them, apart from those that are one."""
    fields = inspect.type_info(kind).fields  # type: ignore[attr-defined]
    return tuple(field.name for field in fields if any(map(_may_lack, _alternatives(field.type))))


@cache
def _may_hold_none(kind: type[msgspec.Struct]) -> bool:
    """Whether a kind of object may have a None in it."""
    return _may_lack(inspect.type_info(kind))


def _may_lack(told: inspect.Type) -> bool:
    """Whether a type tells of a None in it."""
    if isinstance(told, inspect.StructType):
        inner = [field.type for field in inspect.type_info(told.cls).fields]  # type: ignore[attr-defined]
    else:
        inner = [told.item_type] if isinstance(told, inspect.ListType) else []
    return any(isinstance(one, inspect.NoneType) or _may_lack(one) for each in inner for one in _alternatives(each))


def _alternatives(told: inspect.Type) -> Iterator[inspect.Type]:
    """The types that one may stand for."""
    if isinstance(told, inspect.Metadata):
        yield from _alternatives(told.type)
    elif isinstance(told, inspect.UnionType):
        for one in told.types:
            yield from _alternatives(one)
    else:
        yield told


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
