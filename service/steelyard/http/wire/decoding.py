"""Strict decoding of request bodies: one typed pass, and every fault as a problem with its place.

Stricter than the framework's own path: no coercion (``"80"`` is not a number), no unknown fields. As JSON Schema
has it, ``4.0`` is an integer. Of a name that an object repeats, each value must fit and the last one counts (RFC 8259
leaves that open; finding repeats would cost more than the decoding).

It reads the texts of msgspec's errors, hence the pinned version; the table of hostile bodies covers each of them.
"""

import re
from typing import Any, Generic, TypeVar
from urllib.parse import quote

import msgspec

from . import body_schema
from .body_schema import Step
from .problems import NOT_JSON, SCHEMA_VIOLATION, ProblemError, fault

T = TypeVar("T")

_LOCATION = re.compile(r" - at `(\$[\w.\[\]]*)`\Z")
_STEP = re.compile(r"\.(\w+)|\[(\d+)\]|(\[\.\.\.\])")
_MISSING = re.compile(r"Object missing required field `(.*)`\Z", re.DOTALL)
_UNKNOWN = re.compile(r"Object contains unknown field `(.*)`\Z", re.DOTALL)
_CODES = (
    (re.compile(r"Expected `(?:int|float)[^`]*` [<>]"), "OUT_OF_RANGE"),
    (re.compile(r"Number out of range"), "OUT_OF_RANGE"),
    (re.compile(r"Expected `[^`]*` (?:of|with at) "), "WRONG_LENGTH"),
    (re.compile(r"Expected `[^`]*` matching"), "WRONG_FORM"),
    (re.compile(r"Invalid RFC3339|Invalid UUID"), "WRONG_FORM"),
    (re.compile(r"Invalid (?:enum )?value"), "NOT_A_CHOICE"),
    (re.compile(r"Expected `[^`]*`(?:, got `|\Z)"), "WRONG_TYPE"),
)
_GOT = re.compile(r", got `(\w+)`")
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}\Z")
_LARGEST_EXACT = 2.0**53  # beyond it a float is no longer every integer
_QUOTED_NAME_LENGTH = 64


class BodyDecoder(Generic[T]):
    """Decodes bytes to ``body_type``, or raises the 400 problem that says where and why not."""

    def __init__(self, body_type: type[T]) -> None:
        self.body_type = body_type
        self._decoder = msgspec.json.Decoder(body_type, strict=True)

    def decode(self, body: bytes) -> T:
        """The decoded body. Raises ``ProblemError`` (400) and nothing else."""
        try:
            try:
                return self._decode(body)
            except msgspec.ValidationError as error:  # a subclass of DecodeError, so it goes first
                message = str(error)
            # What is no JSON further on is none, whatever was found before: as in a line of a batch, which is read
            # whole before its body is looked at. So both are answered alike.
            body.decode()
            msgspec.json.decode(body, type=msgspec.Raw)
            raise self._violation(message, _plain(body))
        except UnicodeDecodeError:
            raise _not_json("it is not UTF-8") from None
        except RecursionError:
            raise _not_json("it is nested too deeply") from None
        except msgspec.DecodeError as error:
            raise _not_json(str(error) if body else "it is empty") from None

    def convert(self, body: Any) -> T:
        """The body, of plain values that came otherwise than as JSON. Raises ``ProblemError`` (400)."""
        try:
            return msgspec.convert(body, self.body_type, strict=True)
        except msgspec.ValidationError as error:
            raise self._violation(str(error), body) from None

    def _decode(self, body: bytes) -> T:
        try:
            return self._decoder.decode(body)
        except msgspec.ValidationError as error:
            if "got `float`" not in str(error):
                raise
            return msgspec.convert(_integral_to_int(msgspec.json.decode(body)), self.body_type, strict=True)

    def _violation(self, message: str, sent: Any) -> ProblemError:
        location = _LOCATION.search(message)
        path = _steps(location[1]) if location else []
        text = message[: location.start()] if location else message
        if match := _MISSING.match(text):
            return self._wrong([*path, match[1]], "MISSING_FIELD", "is required but missing", sent)
        if match := _UNKNOWN.match(text):
            return self._unknown(path, match[1], sent)
        code = next((code for pattern, code in _CODES if pattern.match(text)), "INVALID")
        got = _GOT.search(text)
        if code == "WRONG_TYPE" and got and got[1] in _RECEIVED:
            return self._wrong(path, code, f"is {_RECEIVED[got[1]]}", sent)
        if code == "WRONG_FORM" and _is_day_like(body_schema.value_at(path, sent)):
            return self._wrong(path, code, "is not a day of the calendar", sent)
        return self._wrong(path, code, _WORDS[code], sent)

    def _wrong(self, path: list[Step], code: str, words: str, sent: Any) -> ProblemError:
        fits = body_schema.describe(self.body_type, path, sent)
        params = {"accepted": fits} if fits else {}
        if words == f"is {_TEXT}" and "number" in fits:
            fits += ", without quotes and with a decimal point"
        detail = f"{_name(path)} {words}" + (f"; accepted is {fits}." if fits else ".")
        return ProblemError(SCHEMA_VIOLATION, detail, [fault(_pointer(path), code, detail, **params)])

    def _unknown(self, path: list[Step], name: str, sent: Any) -> ProblemError:
        names = body_schema.field_names(self.body_type, path, sent)
        if path and not names:  # no object there, so that the place was part of the caller's odd name
            return self._unknown([], name, sent)
        import difflib  # where a name is unknown, and not with the start

        close = difflib.get_close_matches(name[:_QUOTED_NAME_LENGTH], names, 1)
        hint = f"did you mean {close[0]}?" if close else f"accepted are {', '.join(names)}."
        where = f"in {_name(path)}" if path else "in the body"
        detail = f"{name[:_QUOTED_NAME_LENGTH]!r} is not a field {where}; {hint}"
        params = {"accepted": ", ".join(names)} | ({"did_you_mean": close[0]} if close else {})
        pointer = _pointer([*path, name[:_QUOTED_NAME_LENGTH]])
        return ProblemError(SCHEMA_VIOLATION, detail, [fault(pointer, "UNKNOWN_FIELD", detail, **params)])


_TEXT = "text"
# What was received, by the names that msgspec has for it.
_RECEIVED = {
    "str": _TEXT,
    "int": "a number",
    "float": "a number",
    "bool": "true or false",
    "null": "null",
    "array": "an array",
    "object": "an object",
}
_WORDS = {
    "OUT_OF_RANGE": "is out of range",
    "WRONG_LENGTH": "has the wrong length",
    "WRONG_FORM": "is not of the required form",
    "NOT_A_CHOICE": "is not one of the choices",
    "WRONG_TYPE": "has the wrong type",
    "INVALID": "is not valid",
}


def _is_day_like(value: Any) -> bool:
    return isinstance(value, str) and _DAY.match(value) is not None


def _plain(body: bytes) -> Any:
    """The body, which is JSON, as plain values; None where it holds a number that is out of every range."""
    try:
        return msgspec.json.decode(body)
    except msgspec.ValidationError:
        return None


def _not_json(reason: str) -> ProblemError:
    reason = reason.removeprefix("JSON is malformed: ").rstrip(".").replace("Input data was", "it is")
    return ProblemError(NOT_JSON, f"The body is not JSON: {reason}. {NOT_JSON.remedy}")


def _steps(location: str) -> list[Step]:
    """``$.days[0].weight_kg`` as steps. msgspec does not tell a mapping's key: the path ends at the mapping."""
    steps: list[Step] = []
    for name, index, key in _STEP.findall(location):
        if key:
            break
        steps.append(name or int(index))
    return steps


def _name(path: list[Step]) -> str:
    """The place in words of the caller: ``days[0].weight_kg``."""
    text = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in path)
    return text.lstrip(".") or "The body"


def _pointer(path: list[Step]) -> str:
    tokens = (str(step).replace("~", "~0").replace("/", "~1") for step in path)
    return "#" + "".join("/" + quote(token, safe="~!$&'()*+,;=:@") for token in tokens)


def _integral_to_int(value: Any) -> Any:
    """``value`` with every float that is exactly an integer turned into one."""
    if isinstance(value, float):
        return int(value) if value.is_integer() and abs(value) <= _LARGEST_EXACT else value
    if isinstance(value, list):
        return [_integral_to_int(item) for item in value]
    if isinstance(value, dict):
        return {key: _integral_to_int(item) for key, item in value.items()}
    return value
