"""Links of the contract: which answer leads to which request, so that a tool can walk from one to the next.

They follow from the operations. An answer's state can be handed to whatever takes one, and a request that was answered
can be asked for in another form.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from ..operation.operation import Operation

_LINKS = "#/components/links/{name}"
_STATE = "state"
# Runtime expressions (OpenAPI 3.1, "Link Object"); within an object each stands for its value.
_SAME_REQUEST = "$request.body"
_HANDED_ON = {"profile": "$request.body#/profile", _STATE: "$response.body#/state"}


def link_components(operations: Iterable[Operation]) -> dict[str, Any]:
    """The links that the answers refer to, by name."""
    found: dict[str, Any] = {}
    for operation in operations:
        if _has(operation.body_type, _STATE) and not operation.renders:
            found[_hands_on_to(operation)] = {
                "operationId": operation.operation_id,
                "description": "Go on from what this answer knew: the same profile, and the state as it came. A log "
                "then holds what was noted since. Expressions within the body stand for their values.",
                "requestBody": _HANDED_ON,
            }
        if operation.renders:
            found[_draws(operation)] = {
                "operationId": operation.operation_id,
                "description": "The same request, answered in another form.",
                "requestBody": _SAME_REQUEST,
            }
    return found


def links_of(operation: Operation, operations: Iterable[Operation]) -> Mapping[str, Any]:
    """The links of the answer to ``operation``, as references."""
    names: list[str] = []
    for target in operations:
        is_handed_on = _has(operation.answer_type, _STATE) and _has(target.body_type, _STATE)
        if is_handed_on and not operation.renders and not target.renders:
            names.append(_hands_on_to(target))
        if target.renders == operation.operation_id:
            names.append(_draws(target))
    return {name: {"$ref": _LINKS.format(name=name)} for name in names}


def _has(type_: type | None, field: str) -> bool:
    return field in getattr(type_, "__struct_fields__", ())


def _hands_on_to(target: Operation) -> str:
    return f"state_to_{target.operation_id}"


def _draws(target: Operation) -> str:
    return f"same_request_to_{target.operation_id}"
