"""The schemas of the contract: msgspec's own, written as widely used generators of clients read them."""

import json
import re
from collections.abc import Iterable
from inspect import cleandoc
from typing import Any

import msgspec

from ..operation.operation import Operation
from ..schemas.problems import Problem
from .answer_examples import without_nulls

SCHEMAS = "#/components/schemas/{name}"
_REFERENCE = re.compile(r'"#/components/schemas/(\w+)"')
_DEFAULT_MARK = "x-steelyard-default"


def reference(type_: type) -> dict[str, str]:
    """How a schema is referred to."""
    return {"$ref": SCHEMAS.format(name=type_.__name__)}


def schemas_of(operations: list[Operation]) -> dict[str, Any]:
    roots: list[type] = [Problem, *(option.values for operation in operations for option in operation.options)]
    for operation in operations:
        roots += [type_ for type_ in (operation.body_type, operation.answer_type, *operation.further_types) if type_]
    _, components = msgspec.json.schema_components(list(dict.fromkeys(roots)), ref_template=SCHEMAS)
    _tidy(components)
    for name in reached(components, [o.body_type.__name__ for o in operations if o.body_type]):
        for field in components[name].get("properties", {}).values():
            _say_default(field)
    for operation in operations:
        components |= {format_.name: dict(format_.schema) for format_ in operation.formats.values()}
        if operation.stream:
            components |= line_schemas(operation)
    for component in components.values():
        if "description" in component:  # a docstring, whose indentation Python keeps up to 3.12
            component["description"] = cleandoc(component["description"])
    return components


def reached(components: dict[str, Any], names: Iterable[str], *, but: frozenset[str] = frozenset()) -> set[str]:
    """The components that those of ``names`` refer to, and these themselves; none of ``but``, nor by way of them."""
    found: set[str] = set()
    waiting = list(names)
    while waiting:
        name = waiting.pop()
        if name not in found | but:
            found.add(name)
            waiting += _REFERENCE.findall(json.dumps(components[name]))
    return found


def _say_default(field: dict[str, Any]) -> None:
    """Say in words, and under a mark of our own, what a request's field is taken as where it is absent.

    Not as ``default``: that keyword makes a field required to who sends it, as widely used generators read it.
    """
    if "default" not in field:
        return
    default = field[_DEFAULT_MARK] = without_nulls(field.pop("default"))
    taken = "Where absent, its own defaults hold." if isinstance(default, dict) else f"`{compact(default)}` if absent."
    field["description"] = f"{field['description']} {taken}" if "description" in field else taken


def compact(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def _tidy(node: Any) -> None:
    """Write what generators expect: types of enums, ``const``, ``oneOf`` of tagged unions, types that may be null."""
    if isinstance(node, dict):
        if "default" in node and node["default"] is None:  # as good as absent: a value would be filled in by clients
            del node["default"]
        _join_null(node)
        choices = node.get("enum")
        if isinstance(choices, list) and "type" not in node:
            if all(isinstance(choice, str) for choice in choices):
                node["type"] = "string"
            if len(choices) == 1:
                node["const"] = node.pop("enum")[0]
        if "discriminator" in node and "anyOf" in node:
            node["oneOf"] = node.pop("anyOf")
        for child in node.values():
            _tidy(child)
    elif isinstance(node, list):
        for child in node:
            _tidy(child)


def _join_null(node: dict[str, Any]) -> None:
    """``anyOf`` of a plain type and null as one schema, with the limits beside its types."""
    match node.get("anyOf"):
        case [{"type": str() as type_} as schema, {"type": "null"}] if not schema.keys() & {"enum", "const"}:
            del node["anyOf"]
            node |= {**schema, **node, "type": [type_, "null"]}


def line_schemas(operation: Operation) -> dict[str, dict[str, Any]]:
    """Bodies of lines as JSON Schema has them (2020-12, "contentSchema"): a text that holds a value a line."""

    def lines(description: str, *types: type) -> dict[str, Any]:
        items = [reference(type_) for type_ in types]
        return {
            "type": "string",
            "format": "binary",
            "description": description,
            "contentMediaType": operation.media_type,
            "contentSchema": {"type": "array", "items": items[0] if len(items) == 1 else {"anyOf": items}},
        }

    asked, answered = operation.body_type or object, operation.answer_type
    return {
        f"{asked.__name__}s": lines("A line for each request.", asked),
        f"{answered.__name__}s": lines("A line for each answer.", answered, *operation.further_types),
    }
