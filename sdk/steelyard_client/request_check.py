"""Checks of a request before it is sent, by the contract's own schemas.

The generated models know no limits, so a height in metres would travel to the service and back. This reads the
schemas that are generated from the contract; ``regenerate.py`` refuses a keyword that is not understood here.
"""

import difflib
import math
import numbers
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime
from enum import Enum
from typing import Any, NamedTuple
from urllib.parse import quote

from .errors import InvalidRequest
from .generated.models import FieldProblem, FieldProblemParams
from .generated.request_schemas import REQUEST_SCHEMAS
from .generated.types import Unset

Path = tuple[str | int, ...]
Schema = Mapping[str, Any]

_QUOTED_LENGTH = 60
_LONG_BITS = 200  # of a whole number that is no longer quoted: about sixty digits
_WORDS = {
    "INVALID": "cannot be sent",
    "MISSING_FIELD": "is required but missing",
    "NOT_A_CHOICE": "is not one of the choices",
    "OUT_OF_RANGE": "is out of range",
    "WRONG_FORM": "is not of the required form",
    "WRONG_LENGTH": "has the wrong length",
    "WRONG_TYPE": "has the wrong type",
}


class _Fault(NamedTuple):
    path: Path
    code: str
    accepted: str
    given: Any = None
    did_you_mean: str | None = None


def check(body: Any, schema: str) -> None:
    """Raise ``InvalidRequest`` with every fault of ``body``, plain JSON values, against the schema of that name."""
    if faults := list(_faults(body, REQUEST_SCHEMAS[schema], ())):
        raise InvalidRequest([_field_problem(fault) for fault in faults])


def plain(value: Any) -> Any:
    """``value`` as plain JSON values: models, mappings, sequences, enums, dates and numbers of any kind.

    Raises ``InvalidRequest`` for what JSON cannot hold, NaN and infinities among it. Unset fields are left out.
    """
    faults: list[_Fault] = []
    converted = _plain(value, (), faults)
    if faults:
        raise InvalidRequest([_field_problem(fault) for fault in faults])
    return converted


def _plain(value: Any, path: Path, faults: list[_Fault]) -> Any:
    match value:
        case None | bool() | Unset():
            return value
        case Enum():
            return value.value
        case str():
            return value
        case numbers.Integral():
            return int(value)
        case numbers.Real():
            if math.isfinite(value):
                return float(value)
            faults.append(_Fault(path, "INVALID", "a finite number", value))
            return None
        case date():
            return value.isoformat()  # of a datetime more than a date, which the check then says
        case Mapping():
            items = {str(key): _plain(item, (*path, str(key)), faults) for key, item in value.items()}
            return {key: item for key, item in items.items() if not isinstance(item, Unset)}
        case Sequence() if not isinstance(value, bytes | bytearray | memoryview):
            return [_plain(item, (*path, index), faults) for index, item in enumerate(value)]
    if hasattr(type(value), "__attrs_attrs__"):
        return _plain(_model_fields(value), path, faults)
    faults.append(_Fault(path, "INVALID", "a model of this package, a dictionary, or a JSON value", value))
    return None


def _model_fields(model: Any) -> dict[str, Any]:
    """The fields of a generated model under their names on the wire.

    Not ``to_dict``: that fails half-way where a nested field holds a dictionary or a string instead of a model.
    """
    fields = {a.name: getattr(model, a.name) for a in type(model).__attrs_attrs__ if a.name != "additional_properties"}
    named = {name.removesuffix("_"): value for name, value in fields.items()}
    return {**getattr(model, "additional_properties", {}), **named}


def _faults(value: Any, schema: Schema, path: Path) -> Iterator[_Fault]:
    if "$ref" in schema:
        yield from _faults(value, REQUEST_SCHEMAS[schema["$ref"]], path)
    if "discriminator" in schema:
        yield from _tagged_faults(value, schema["discriminator"], path)
    elif branches := schema.get("anyOf") or schema.get("oneOf"):
        yield from _union_faults(value, branches, path)
    if "type" in schema:
        yield from _value_faults(value, schema, path)


def _tagged_faults(value: Any, discriminator: Schema, path: Path) -> Iterator[_Fault]:
    name, mapping = discriminator["propertyName"], discriminator["mapping"]
    if not isinstance(value, dict):
        yield _Fault(path, "WRONG_TYPE", _tagged(discriminator), value)
    elif name not in value:
        yield _Fault((*path, name), "MISSING_FIELD", _choices(mapping))
    elif not isinstance(value[name], str) or value[name] not in mapping:
        yield _Fault((*path, name), "NOT_A_CHOICE", _choices(mapping), value[name])
    else:
        yield from _faults(value, REQUEST_SCHEMAS[mapping[value[name]]], path)


def _union_faults(value: Any, branches: Sequence[Schema], path: Path) -> Iterator[_Fault]:
    """None where a branch fits; else the faults of the branch that came furthest, with what all accept."""
    tried = [list(_faults(value, branch, path)) for branch in branches]
    if not all(tried):
        return
    deepest = max(tried, key=lambda faults: (faults[0].code != "WRONG_TYPE", len(faults[0].path)))
    accepted = " or ".join(dict.fromkeys(_accepted(branch) for branch in branches))
    yield from (fault._replace(accepted=accepted) if fault.path == path else fault for fault in deepest)


def _value_faults(value: Any, schema: Schema, path: Path) -> Iterator[_Fault]:
    accepted = _accepted(schema)
    if not _TYPES[schema["type"]](value):
        yield _Fault(path, "WRONG_TYPE", accepted, value)
        return
    if "enum" in schema and value not in schema["enum"]:
        yield _Fault(path, "NOT_A_CHOICE", accepted, value)
    if "const" in schema and value != schema["const"]:
        yield _Fault(path, "NOT_A_CHOICE", accepted, value)
    match value:
        case str():
            if not _fits(len(value), schema, "minLength", "maxLength"):
                yield _Fault(path, "WRONG_LENGTH", accepted, value)
            if schema.get("format") == "date" and not _is_date(value):
                yield _Fault(path, "WRONG_FORM", accepted, value)
        case list():
            if not _fits(len(value), schema, "minItems", "maxItems"):
                yield _Fault(path, "WRONG_LENGTH", accepted, f"{len(value)} entries")
            for index, item in enumerate(value):
                yield from _faults(item, schema.get("items", {}), (*path, index))
        case dict():
            yield from _object_faults(value, schema, path)
        case bool() | None:
            pass
        case int() | float():
            above = value > schema.get("exclusiveMinimum", -math.inf)
            below = value < schema.get("exclusiveMaximum", math.inf)
            if not (above and below and _fits(value, schema, "minimum", "maximum")):
                yield _Fault(path, "OUT_OF_RANGE", accepted, value)


def _object_faults(value: dict[str, Any], schema: Schema, path: Path) -> Iterator[_Fault]:
    properties: Mapping[str, Schema] = schema.get("properties", {})
    for name in schema.get("required", ()):
        if name not in value:
            yield _Fault((*path, name), "MISSING_FIELD", _accepted(properties[name]))
    for name, item in value.items():
        if name in properties:
            yield from _faults(item, properties[name], (*path, name))
        else:
            close = difflib.get_close_matches(name[:_QUOTED_LENGTH], properties, 1)
            names = ", ".join(sorted(properties))
            yield _Fault((*path, name), "UNKNOWN_FIELD", names, did_you_mean=close[0] if close else None)


_TYPES = {
    "array": lambda value: isinstance(value, list),
    "boolean": lambda value: isinstance(value, bool),
    "integer": lambda value: isinstance(value, int | float) and not isinstance(value, bool) and value == value // 1,
    "null": lambda value: value is None,
    "number": lambda value: isinstance(value, int | float) and not isinstance(value, bool),
    "object": lambda value: isinstance(value, dict),
    "string": lambda value: isinstance(value, str),
}


def _fits(value: float, schema: Schema, low: str, high: str) -> bool:
    return bool(schema.get(low, -math.inf) <= value <= schema.get(high, math.inf))


def _is_date(text: str) -> bool:
    """Whether ``text`` is a full date; ``fromisoformat`` alone would take week dates and dates without hyphens."""
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _accepted(schema: Schema) -> str:
    """What fits ``schema``, in the service's own words: ``a number from 30 to 300``."""
    if "$ref" in schema:
        return _accepted(REQUEST_SCHEMAS[schema["$ref"]])
    if "discriminator" in schema:
        return _tagged(schema["discriminator"])
    if branches := schema.get("anyOf") or schema.get("oneOf"):
        return " or ".join(dict.fromkeys(_accepted(branch) for branch in branches))
    if "enum" in schema:
        return _choices(schema["enum"])
    if "const" in schema:
        return _choices([schema["const"]])
    match schema.get("type"):
        case "number" | "integer" as kind:
            return ("a whole number" if kind == "integer" else "a number") + _range(schema)
        case "string" if schema.get("format") == "date":
            return "a date such as 2025-01-31"
        case "string":
            return "a string" + _length(schema, "minLength", "maxLength", "characters")
        case "array":
            return "an array" + _length(schema, "minItems", "maxItems", "entries")
        case "boolean":
            return "true or false"
        case "object":
            return "an object"
        case kind:
            return str(kind)


def _tagged(discriminator: Schema) -> str:
    return f"an object whose {discriminator['propertyName']} is {_choices(discriminator['mapping'])}"


def _choices(values: Any) -> str:
    return f"one of {', '.join(map(str, values))}"


def _range(schema: Schema) -> str:
    if "minimum" in schema and "maximum" in schema:
        return f" from {schema['minimum']:g} to {schema['maximum']:g}"
    words = {"minimum": "{:g} or more", "exclusiveMinimum": "above {:g}"}
    words |= {"maximum": "at most {:g}", "exclusiveMaximum": "below {:g}"}
    ends = [form.format(schema[keyword]) for keyword, form in words.items() if keyword in schema]
    return f" {' and '.join(ends)}" if ends else ""


def _length(schema: Schema, low: str, high: str, what: str) -> str:
    if low in schema and high in schema:
        return f" of {schema[low]} to {schema[high]} {what}"
    return f" of at most {schema[high]} {what}" if high in schema else ""


def _field_problem(fault: _Fault) -> FieldProblem:
    """The fault in the form in which the service would tell it."""
    place = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in fault.path).lstrip(".")
    params = FieldProblemParams()
    params["accepted"] = fault.accepted
    if fault.code == "UNKNOWN_FIELD":
        hint = f"did you mean {fault.did_you_mean}?" if fault.did_you_mean else f"accepted are {fault.accepted}."
        detail = f"{place} is not a field; {hint}"
        if fault.did_you_mean:
            params["did_you_mean"] = fault.did_you_mean
    else:
        given = "" if fault.code == "MISSING_FIELD" else f" ({_quoted(fault.given)})"
        detail = f"{place or 'The request'}{given} {_WORDS[fault.code]}; accepted is {fault.accepted}."
    tokens = (str(step).replace("~", "~0").replace("/", "~1") for step in fault.path)
    pointer = "#" + "".join("/" + quote(token, safe="~!$&'()*+,;=:@") for token in tokens)
    return FieldProblem(pointer=pointer, code=fault.code, detail=detail, params=params)


def _quoted(value: Any) -> str:
    if isinstance(value, int) and value.bit_length() > _LONG_BITS:
        return "a very long number"  # which Python may not even write
    text = value.isoformat() if isinstance(value, datetime) else repr(value)
    return text if len(text) <= _QUOTED_LENGTH else text[:_QUOTED_LENGTH] + "..."
