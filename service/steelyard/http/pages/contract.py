"""The OpenAPI 3.1 document, built from the operations and the msgspec types that decode and encode.

The framework's own document loses limits and ``additionalProperties: false``, so the whole document is made here.
"""

import json
from collections.abc import Iterable, Mapping
from typing import Any

import msgspec

from ..gate.rate_limit import DEGRADED_HEADER, RATE_LIMIT_HEADER, RATE_LIMIT_POLICY_HEADER
from ..languages import LANGUAGES
from ..operation.operation import Operation
from ..operation.request_costs import PICTURE_UNITS, units
from ..schemas.problems import Problem
from ..wire.deprecation import DEPRECATION_HEADER, SUNSET_HEADER
from ..wire.headers import FINGERPRINT_HEADER
from ..wire.negotiation import Option
from ..wire.problems import (
    BAD_REQUEST,
    BATCH_IDLE,
    BATCH_TOO_LONG,
    BODY_TIMEOUT,
    BODY_TOO_LARGE,
    COMPUTATION_TIMEOUT,
    CONTRADICTION,
    GUARD_RAIL,
    INTERNAL_ERROR,
    KEY_REJECTED,
    KEY_REQUIRED,
    LINE_TOO_LONG,
    MEDIA_TYPE,
    NOT_ACCEPTABLE,
    NOT_JSON,
    OUT_OF_DOMAIN,
    OVERLOADED,
    QUERY_VIOLATION,
    SCHEMA_VIOLATION,
    SCOPE_MISSING,
    SERVICE_ENDING,
    TOO_MANY_REQUESTS,
    UNAVAILABLE,
    UNSUPPORTED_MEDIA_TYPE,
    ProblemKind,
)
from ..wire.request_id import CONTRACT_HEADER, CONTRACT_VERSION, PATTERN, REQUEST_ID_HEADER
from .answer_examples import Examples, kept_examples, shown_lines, without_nulls
from .contract_links import link_components, links_of
from .contract_schemas import SCHEMAS, compact, line_schemas, reference, schemas_of
from .problems_page import guard_rail_rules

_PURE_MARK = "x-steelyard-pure"
_UNITS_MARK = "x-steelyard-units"

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

_TAGS = {
    "batches": "Many single calls in one streamed request.",
    "body-composition": "Body fat from skinfolds, girths and readings taken together.",
    "decisions": "Which phase comes next, and why.",
    "forecasts": "The body under an intake, and the intake or the date for a target.",
    "maintenance": "The intake that keeps a body as it is, from a profile and a log.",
    "messages": "The texts of all codes, in every language.",
    "methods": "The equations, constants and rules that answers rest on, with their sources.",
    "plans": "One phase, week by week, and what follows it.",
    "reviews": "A phase under way or just over, against its plan.",
    "seasons": "Chains of phases up to a horizon, under one strategy, compared, and the best of them.",
    "trends": "What a log of weights and intakes says.",
}
_EXAMPLE_INSTANCE = "urn:uuid:6f1c1f3a-43f5-4d0c-9a52-0a3f1f0f6b1e"
_KEY_ERRORS = {"401": (KEY_REQUIRED, KEY_REJECTED), "403": (SCOPE_MISSING,), "406": (NOT_ACCEPTABLE,)}
_BODY_ERRORS = {
    "400": (NOT_JSON, SCHEMA_VIOLATION, BAD_REQUEST),
    "408": (BODY_TIMEOUT,),
    "413": (BODY_TOO_LARGE,),
    "415": (UNSUPPORTED_MEDIA_TYPE,),
    "422": (CONTRADICTION, OUT_OF_DOMAIN, GUARD_RAIL),
}
# What is wrong with a line is told on its line.
_STREAM_ERRORS = {"400": (BAD_REQUEST,), "415": (UNSUPPORTED_MEDIA_TYPE,)}
_LINE_ERRORS = (LINE_TOO_LONG, BATCH_TOO_LONG, BATCH_IDLE, SERVICE_ENDING)
_SERVICE_ERRORS = {"429": (TOO_MANY_REQUESTS,), "500": (INTERNAL_ERROR,), "503": (UNAVAILABLE, OVERLOADED)}
_ERROR_HEADERS = {
    "401": ("WWW-Authenticate", {"type": "string"}, "How to authenticate (RFC 6750)."),
    "429": ("Retry-After", {"type": "integer", "minimum": 0}, "Seconds to wait before the next try."),
    "503": ("Retry-After", {"type": "integer", "minimum": 0}, "Seconds to wait before the next try."),
}


_ACCEPT_LANGUAGE = {
    "name": "Accept-Language",
    "in": "header",
    "required": False,
    "description": "Languages in the order of preference (RFC 9110 12.5.4), for the formats that are words: one of "
    f"{', '.join(f'`{tag}`' for tag in LANGUAGES)}, else English. `Content-Language` says which it is. JSON is in "
    "English whatever is asked for.",
    "schema": {"type": "string", "examples": ["de-AT, en;q=0.8"]},
}


def openapi_document(operations: Iterable[Operation], examples: Examples | None = None) -> dict[str, Any]:
    """The contract of ``operations`` as plain JSON values, in a fixed order.

    ``examples`` are those of answers; the ones that are kept, where none are given.
    """
    operations = sorted(operations, key=lambda o: (o.path, o.method))
    examples = kept_examples() if examples is None else examples
    paths: dict[str, Any] = {}
    for operation in operations:
        shown = examples.get(operation.operation_id, {})
        document = _operation(operation, shown)
        if links := links_of(operation, operations):
            document["responses"]["200"]["links"] = links
        paths.setdefault(operation.path, {})[operation.method.lower()] = document
    return {
        "openapi": "3.1.0",
        "info": {
            "title": "Steelyard",
            "version": CONTRACT_VERSION,
            "summary": "Estimates, plans and log readings for people who lift",
            "description": _DESCRIPTION,
            "contact": {"name": "Whoever runs the service"},
            "license": {"name": "Apache-2.0", "identifier": "Apache-2.0"},
        },
        "servers": [{"url": "/", "description": "The service that this document came from."}],
        "tags": [{"name": tag, "description": _TAGS.get(tag, tag)} for tag in sorted({o.tag for o in operations})],
        "security": [{"ApiKey": []}],
        "paths": paths,
        "components": {
            "schemas": schemas_of(operations),
            "headers": _common_headers() | _limit_headers(),
            "links": link_components(operations),
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


def contract_text(operations: Iterable[Operation], examples: Examples | None = None) -> str:
    """The contract as it is committed and served: indented JSON with sorted keys and a final newline."""
    return json.dumps(openapi_document(operations, examples), indent=2, sort_keys=True, ensure_ascii=False) + "\n"


def _operation(operation: Operation, shown: Mapping[str, Mapping[str, Any]]) -> dict[str, Any]:
    body_errors = _STREAM_ERRORS if operation.stream else _BODY_ERRORS if operation.body_type else {}
    errors = _KEY_ERRORS | body_errors | _SERVICE_ERRORS
    if operation.in_thread or operation.is_slow_to_format:
        errors |= {"503": (UNAVAILABLE, OVERLOADED, COMPUTATION_TIMEOUT)}
    if operation.options:
        errors |= {"400": (*errors["400"], QUERY_VIOLATION)}
    headers = _references(_common_headers()) | _references(_limit_headers()) | _answer_headers(operation)
    document: dict[str, Any] = {
        "operationId": operation.operation_id,
        "tags": [operation.tag],
        "summary": operation.summary,
        "description": operation.description,
        _PURE_MARK: True,
        _UNITS_MARK: units(operation, operation.offered[0]),
        "security": [{"ApiKey": []}],
        "responses": {
            "200": {
                "description": "The answer.",
                "headers": headers,
                "content": {
                    media_type: _shown(_answer_schema(operation, media_type), shown.get(media_type, {}))
                    for media_type in operation.offered
                },
            },
            **{status: _error(status, kinds) for status, kinds in errors.items()},
        },
    }
    parameters = [_parameter(option) for option in operation.options]
    if operation.has_words:
        parameters.append(_ACCEPT_LANGUAGE)
    if parameters:
        document["parameters"] = parameters
    if operation.stream:
        _stream_lines(document, operation, shown)
    elif operation.body_type:
        document["requestBody"] = {
            "required": True,
            "content": {
                "application/json": {
                    "schema": reference(operation.body_type),
                    "examples": {
                        name: {"value": without_nulls(msgspec.to_builtins(example))}
                        for name, example in operation.request_examples.items()
                    },
                }
            },
        }
    else:
        document["responses"]["304"] = {
            "description": "The caller's copy, whose `ETag` came in `If-None-Match`, is still right.",
            "headers": headers,
        }
    if operation.deprecation:
        document |= operation.deprecation.marks()
        document["description"] += f"\n\nDeprecated: {operation.deprecation.instead}"
    return document


def _answer_schema(operation: Operation, media_type: str) -> dict[str, str]:
    format_ = operation.formats.get(media_type)
    return reference(operation.answer_type) if format_ is None else {"$ref": SCHEMAS.format(name=format_.name)}


def _shown(schema: Mapping[str, Any], examples: Mapping[str, Any]) -> dict[str, Any]:
    """What the contract says of one media type."""
    named = {name: {"value": value} for name, value in examples.items()}
    return {"schema": schema, **({"examples": named} if named else {})}


def _stream_lines(document: dict[str, Any], operation: Operation, shown: Mapping[str, Mapping[str, Any]]) -> None:
    """A body of lines: OpenAPI 3.1 has no word for it, so the schemas of the lines stand beside it."""
    asked, answered = ({"$ref": SCHEMAS.format(name=name)} for name in line_schemas(operation))
    lines = "".join(
        compact(without_nulls(json.loads(msgspec.json.encode(line)))) + "\n" for line in shown_lines(operation)
    )
    document["requestBody"] = {
        "required": True,
        "content": {operation.media_type: {"schema": asked, "examples": {"lines": {"value": lines}}}},
    }
    answer = _shown(answered, shown.get(operation.media_type, {}))
    document["responses"]["200"]["content"] = {operation.media_type: answer}
    document["responses"]["200"]["description"] = "\n".join(
        [
            "The answers, a line each. Beside the problems of the operations themselves a line may say:",
            "",
            *(f"- `{kind.type}` ({kind.status}): {kind.meaning}" for kind in _LINE_ERRORS),
        ]
    )
    document["x-steelyard-lines"] = {
        "request": reference(operation.body_type or object),
        "answers": [reference(operation.answer_type), *map(reference, operation.further_types)],
    }


def _answer_headers(operation: Operation) -> dict[str, Any]:
    found: dict[str, Any] = {}
    if "fingerprint" in getattr(operation.answer_type, "__struct_fields__", ()):
        found[FINGERPRINT_HEADER] = _header("The answer's `fingerprint`.", pattern="^[0-9a-f]{32}$")
    if operation.formats:
        found["Vary"] = _header("That the answer depends on `Accept` (RFC 9110 12.5.5).")
    if operation.body_type is None:
        found["ETag"] = _header("Changes with the answer (RFC 9110 8.8.3); send it back in `If-None-Match`.")
    if operation.deprecation:
        found[DEPRECATION_HEADER] = _header("Since when this is deprecated (RFC 9745).")
        if operation.deprecation.sunset:
            found[SUNSET_HEADER] = _header("When this may stop working (RFC 8594).")
    return found


def _header(description: str, **schema: Any) -> dict[str, Any]:
    return {"required": True, "description": description, "schema": {"type": "string", **schema}}


def _error(status: str, kinds: tuple[ProblemKind, ...]) -> dict[str, Any]:
    headers = _references(_common_headers())
    if status == "429":
        headers |= _references(_limit_headers())
    if status in _ERROR_HEADERS:
        name, schema, description = _ERROR_HEADERS[status]
        headers[name] = {"required": True, "description": description, "schema": schema}
    return {
        "description": "\n".join(f"- `{kind.type}`: {kind.meaning}" for kind in kinds),
        "headers": headers,
        "content": {
            MEDIA_TYPE: {
                "schema": reference(Problem),
                "examples": {kind.slug: {"value": msgspec.to_builtins(_example(kind))} for kind in kinds},
            }
        },
    }


def _example(kind: ProblemKind) -> Problem:
    suffix = f"/{guard_rail_rules()[0].id}" if kind is GUARD_RAIL else ""
    return Problem(
        type=kind.type + suffix,
        title=kind.title,
        status=kind.status,
        detail=f"{kind.meaning} {kind.remedy}",
        instance=_EXAMPLE_INSTANCE,
        code=kind.code,
    )


def _common_headers() -> dict[str, Any]:
    """What the contract says once, under its components, of the headers of every response."""
    return {
        CONTRACT_HEADER: _header("The version of this contract that the service speaks."),
        REQUEST_ID_HEADER: _header(
            "The request's id: the caller's `X-Request-Id` if that fits the pattern, else a new UUID.",
            pattern=f"^{PATTERN}$",
        ),
    }


def _limit_headers() -> dict[str, Any]:
    """What the contract says once, under its components, of the headers about limits."""
    return {
        RATE_LIMIT_POLICY_HEADER: _limit_header(
            'The limits on the key: `"burst";q=60000;w=60` allows 60000 units in 60 seconds. A request costs the '
            "`x-steelyard-units` of its operation, a batch those for each of its lines, and a picture asked for as its "
            f"specification {PICTURE_UNITS} less. Absent where nothing is limited.",
            '"burst";q=60000;w=60, "daily-key";q=100000;w=86400',
        ),
        RATE_LIMIT_HEADER: _limit_header(
            'What is left of each limit: `"burst";r=59990;t=12` is 59990 units, and 12 seconds until there are more.',
            '"burst";r=59990;t=12, "daily-key";r=99990;t=43200',
        ),
        DEGRADED_HEADER: _limit_header(
            "Present when a part of the service is at fault that the answer does not rest on: with `rate-limit` what "
            "is left was counted by one process alone. Extensible.",
            "rate-limit",
        ),
    }


def _references(headers: Iterable[str]) -> dict[str, Any]:
    return {name: {"$ref": f"#/components/headers/{name}"} for name in headers}


def _limit_header(description: str, example: str) -> dict[str, Any]:
    return {"required": False, "description": description, "schema": {"type": "string"}, "example": example}


def _parameter(option: Option) -> dict[str, Any]:
    return {
        "name": option.name,
        "in": "query",
        "required": False,
        "description": option.description,
        "schema": reference(option.values),
    }
