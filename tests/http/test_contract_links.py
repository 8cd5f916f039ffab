"""Links of the contract: each can be followed, from the contract's own examples."""

from typing import Any

import pytest
from in_process import Running
from steelyard.http.app import OPERATIONS
from steelyard.http.pages.contract import openapi_document

DOCUMENT = openapi_document(OPERATIONS)
CALLS = {call["operationId"]: (path, call) for path, calls in DOCUMENT["paths"].items() for call in calls.values()}
LINKED = {
    id_: call["responses"]["200"]["links"] for id_, (_, call) in CALLS.items() if "links" in call["responses"]["200"]
}


def link(name: str) -> dict[str, Any]:
    return DOCUMENT["components"]["links"][name]


def example(id_: str) -> Any:
    return next(iter(CALLS[id_][1]["requestBody"]["content"]["application/json"]["examples"].values()))["value"]


def value_of(expression: Any, asked: Any, answered: Any) -> Any:
    """What runtime expressions stand for (OpenAPI 3.1.0, 4.8.20.4): those that the contract uses."""
    if isinstance(expression, dict):
        return {name: value_of(inner, asked, answered) for name, inner in expression.items()}
    place, _, pointer = expression.partition("#/")
    whole = {"$request.body": asked, "$response.body": answered}[place]
    return whole[pointer] if pointer else whole


def test_links_are_those_that_the_fields_allow() -> None:
    """Read off the schemas, not off the code that makes them."""
    schemas = DOCUMENT["components"]["schemas"]

    def fields(content: dict[str, Any]) -> dict[str, Any]:
        name = content.get("application/json", {}).get("schema", {}).get("$ref", "").rpartition("/")[2]
        return schemas[name].get("properties", {}) if name else {}

    give = {id_ for id_, (_, call) in CALLS.items() if "state" in fields(call["responses"]["200"]["content"])}
    take = {
        id_
        for id_, (path, call) in CALLS.items()
        if "state" in fields(call.get("requestBody", {}).get("content", {}))
        and not path.endswith(("/picture", "/document"))
    }
    assert give
    for id_ in give:
        assert {link(name)["operationId"] for name in LINKED[id_] if name.startswith("state_to_")} == take
    for id_, (path, _) in CALLS.items():
        forms = {other for other, (at, _) in CALLS.items() if at in (f"{path}/picture", f"{path}/document")}
        linked = {link(name)["operationId"] for name in LINKED.get(id_, ()) if name.startswith("same_request_to_")}
        assert linked == forms
    used = {name for names in LINKED.values() for name in names}
    assert used == set(DOCUMENT["components"]["links"])


@pytest.mark.parametrize("id_", LINKED)
async def test_every_link_can_be_followed(service: Running, id_: str) -> None:
    asked = example(id_)
    answer = await service.client.post(CALLS[id_][0], json=asked)
    assert answer.status_code == 200, answer.text
    followed: dict[str, int] = {}
    for name in LINKED[id_]:
        target = link(name)["operationId"]
        body = value_of(link(name)["requestBody"], asked, answer.json())
        if isinstance(link(name)["requestBody"], dict):
            # What an example would say itself is in the state already, and dates of examples differ.
            body = {key: value for key, value in example(target).items() if key not in ("log", "phase_history")} | body
        reply = await service.client.post(CALLS[target][0], json=body)
        assert reply.status_code in (200, 422), f"{name}: {reply.text}"
        followed[name] = reply.status_code
    drawn = {status for name, status in followed.items() if name.startswith("same_request_to_")}
    assert drawn <= {200}, followed
    handed_on = [status for name, status in followed.items() if name.startswith("state_to_")]
    assert not handed_on or 200 in handed_on, followed
