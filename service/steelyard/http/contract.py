"""The OpenAPI 3.1 document, built from the operations and the msgspec types that decode and encode.

The framework's own document loses limits and ``additionalProperties: false``, so the whole document is made here.
"""

import json
from collections.abc import Iterable
from typing import Any

import msgspec

from steelyard.core import catalogue
from steelyard.core.evidence import Kind as EntryKind

from .operations import Operation
from .problems import (
    BAD_REQUEST,
    BODY_TOO_LARGE,
    CONTRADICTION,
    GUARD_RAIL,
    INTERNAL_ERROR,
    KEY_REJECTED,
    KEY_REQUIRED,
    KINDS,
    MEDIA_TYPE,
    NOT_ACCEPTABLE,
    NOT_JSON,
    OUT_OF_DOMAIN,
    SCHEMA_VIOLATION,
    SCOPE_MISSING,
    TOO_MANY_REQUESTS,
    UNAVAILABLE,
    UNSUPPORTED_MEDIA_TYPE,
    Kind,
)
from .request_id import CONTRACT_HEADER, CONTRACT_VERSION, REQUEST_ID_HEADER
from .schemas.problems import Problem

_SCHEMAS = "#/components/schemas/{name}"
_PURE_MARK = "x-steelyard-pure"

_DESCRIPTION = """\
Maintenance energy, training-diet phases and weight logs for people who lift.

Every request carries an API key: `Authorization: Bearer <prefix>.<secret>`. Nothing that a request says about a
person is stored. An operation marked `x-steelyard-pure: true` computes from its request alone, so that the same
request may safely be sent again.

Errors are problem documents (RFC 9457). 400 means that the body does not fit this contract; 422 that it fits, and
is refused by a rule: fields that contradict each other, or a guard rail. Requests reject unknown fields. Answers
may gain fields, so a client must ignore those it does not know, as well as unknown values where a description says
"Extensible". Of a name repeated within one JSON object, the last value counts.

Results are estimates for healthy adults and not medical advice. See a physician or a registered dietitian before
changing a diet; local rules prevail.
"""

_KEY_ERRORS = {"401": (KEY_REQUIRED, KEY_REJECTED), "403": (SCOPE_MISSING,), "406": (NOT_ACCEPTABLE,)}
_BODY_ERRORS = {
    "400": (NOT_JSON, SCHEMA_VIOLATION, BAD_REQUEST),
    "413": (BODY_TOO_LARGE,),
    "415": (UNSUPPORTED_MEDIA_TYPE,),
    "422": (CONTRADICTION, OUT_OF_DOMAIN, GUARD_RAIL),
}
_SERVICE_ERRORS = {"429": (TOO_MANY_REQUESTS,), "500": (INTERNAL_ERROR,), "503": (UNAVAILABLE,)}
_ERROR_HEADERS = {
    "401": ("WWW-Authenticate", {"type": "string"}, "How to authenticate (RFC 6750)."),
    "429": ("Retry-After", {"type": "integer", "minimum": 0}, "Seconds to wait before the next try."),
    "503": ("Retry-After", {"type": "integer", "minimum": 0}, "Seconds to wait before the next try."),
}


def openapi_document(operations: Iterable[Operation]) -> dict[str, Any]:
    """The contract of ``operations`` as plain JSON values, in a fixed order."""
    operations = sorted(operations, key=lambda o: (o.path, o.method))
    paths: dict[str, Any] = {}
    for operation in operations:
        paths.setdefault(operation.path, {})[operation.method.lower()] = _operation(operation)
    return {
        "openapi": "3.1.0",
        "info": {
            "title": "Steelyard",
            "version": CONTRACT_VERSION,
            "summary": "Estimates, plans and log readings for people who lift",
            "description": _DESCRIPTION,
            "license": {"name": "Apache-2.0", "identifier": "Apache-2.0"},
        },
        "tags": [{"name": tag} for tag in sorted({operation.tag for operation in operations})],
        "security": [{"ApiKey": []}],
        "paths": paths,
        "components": {
            "schemas": _schemas(operations),
            "securitySchemes": {
                "ApiKey": {
                    "type": "http",
                    "scheme": "bearer",
                    "bearerFormat": "<prefix>.<secret>",
                    "description": "An API key, which the operator makes with `steelyard keys create`.",
                }
            },
        },
    }


def contract_text(operations: Iterable[Operation]) -> str:
    """The contract as it is committed and served: indented JSON with sorted keys and a final newline."""
    return json.dumps(openapi_document(operations), indent=2, sort_keys=True, ensure_ascii=False) + "\n"


def _operation(operation: Operation) -> dict[str, Any]:
    errors = _KEY_ERRORS | (_BODY_ERRORS if operation.body_type else {}) | _SERVICE_ERRORS
    document: dict[str, Any] = {
        "operationId": operation.operation_id,
        "tags": [operation.tag],
        "summary": operation.summary,
        "description": operation.description,
        _PURE_MARK: True,
        "security": [{"ApiKey": []}],
        "responses": {
            "200": {
                "description": "The answer.",
                "headers": _common_headers(),
                "content": {"application/json": {"schema": _reference(operation.answer_type)}},
            },
            **{status: _error(status, kinds) for status, kinds in errors.items()},
        },
    }
    if operation.body_type:
        document["requestBody"] = {
            "required": True,
            "content": {
                "application/json": {
                    "schema": _reference(operation.body_type),
                    "examples": {
                        name: {"value": msgspec.to_builtins(example)}
                        for name, example in operation.request_examples.items()
                    },
                }
            },
        }
    return document


def _error(status: str, kinds: tuple[Kind, ...]) -> dict[str, Any]:
    headers = _common_headers()
    if status in _ERROR_HEADERS:
        name, schema, description = _ERROR_HEADERS[status]
        headers[name] = {"required": True, "description": description, "schema": schema}
    return {
        "description": "\n".join(f"- `{kind.type}`: {kind.meaning}" for kind in kinds),
        "headers": headers,
        "content": {MEDIA_TYPE: {"schema": _reference(Problem)}},
    }


def _common_headers() -> dict[str, Any]:
    return {
        CONTRACT_HEADER: {
            "required": True,
            "description": "The version of this contract that the service speaks.",
            "schema": {"type": "string"},
        },
        REQUEST_ID_HEADER: {
            "required": True,
            "description": "The request's id: the caller's `X-Request-Id` if that was a UUID, else a new one.",
            "schema": {"type": "string", "format": "uuid"},
        },
    }


def _reference(type_: type) -> dict[str, str]:
    return {"$ref": _SCHEMAS.format(name=type_.__name__)}


def _schemas(operations: list[Operation]) -> dict[str, Any]:
    roots: list[type] = [Problem]
    for operation in operations:
        roots += [type_ for type_ in (operation.body_type, operation.answer_type) if type_ is not None]
    _, components = msgspec.json.schema_components(list(dict.fromkeys(roots)), ref_template=_SCHEMAS)
    _tidy(components)
    return components


def _tidy(node: Any) -> None:
    """Give enums their type, single values ``const``, and tagged unions ``oneOf``, which generators expect."""
    if isinstance(node, dict):
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


def problems_text() -> str:
    """The documentation of every problem type, as it is committed."""
    lines = [
        "# Problems",
        "",
        "Generated by `steelyard contract`. Every error is an RFC 9457 problem document. Its `type` is one of",
        "these, and `GET` of the type answers with the same text.",
        "",
    ]
    for kind in sorted(KINDS.values(), key=lambda k: (k.status, k.slug)):
        suffix = "/<rule id>" if kind is GUARD_RAIL else ""
        lines += [f"## `{kind.type}{suffix}`", "", f"{kind.status}, `{kind.code}`: {kind.title}.", ""]
        lines += [kind.meaning, "", f"*What to do:* {kind.remedy}", ""]
        if kind is GUARD_RAIL:
            lines += ["| rule id | rule |", "| --- | --- |"]
            lines += [f"| `{rule.id}` | {_cell(rule.summary)} |" for rule in guard_rail_rules()]
            lines.append("")
    return "\n".join(lines)


def guard_rail_rules() -> list[Any]:
    """The rules of the catalogue, sorted by id."""
    return sorted((e for e in catalogue.entries().values() if e.kind is EntryKind.RULE), key=lambda e: e.id)


def _cell(text: str) -> str:
    return text.replace("|", "\\|").replace("\n", " ")
