"""The requests of the first release's contract, sent as they stand there: the answers still fit that contract.

Frozen: where one of these fails, the service is wrong, not the test.
"""

import json
from pathlib import Path
from typing import Any

import httpx
import pytest
from examples.local_service import LocalService
from jsonschema import Draft202012Validator

RELEASED = Path(__file__).resolve().parents[2] / "contracts" / "released" / "openapi-v1.0.0.json"
CONTRACT: dict[str, Any] = json.loads(RELEASED.read_text(encoding="utf-8"))
EXAMPLES = [
    pytest.param(path, media_type, call, example["value"], id=f"{call['operationId']}-{name}")
    for path, methods in CONTRACT["paths"].items()
    for call in methods.values()
    for media_type, media in call.get("requestBody", {}).get("content", {}).items()
    for name, example in media["examples"].items()
]


def faults(schema: dict[str, Any], value: Any) -> list[str]:
    whole = {"$schema": "https://json-schema.org/draft/2020-12/schema", "components": CONTRACT["components"], **schema}
    return [f"{error.json_path}: {error.message[:200]}" for error in Draft202012Validator(whole).iter_errors(value)]


@pytest.mark.parametrize(("path", "media_type", "call", "example"), EXAMPLES)
def test_answers_fit_the_first_contract(
    live: LocalService, path: str, media_type: str, call: dict[str, Any], example: Any
) -> None:
    content = example if isinstance(example, str) else json.dumps(example)
    (offered, *_) = call["responses"]["200"]["content"]
    headers = {"Authorization": f"Bearer {live.key}", "Content-Type": media_type, "Accept": offered}
    with httpx.Client(transport=httpx.HTTPTransport(), timeout=60.0) as http:
        answer = http.post(f"{live.url}{path}", content=content, headers=headers)
    assert answer.status_code == 200, answer.text
    assert answer.headers["content-type"].startswith(offered)
    if offered == "application/json":
        assert not faults(call["responses"]["200"]["content"][offered]["schema"], answer.json())
    elif "x-steelyard-lines" in call:
        for line in answer.text.splitlines():
            assert not faults({"anyOf": call["x-steelyard-lines"]["answers"]}, json.loads(line))


@pytest.mark.parametrize("path", [path for path, methods in CONTRACT["paths"].items() if "get" in methods])
def test_documents_fit_the_first_contract(live: LocalService, path: str) -> None:
    schema = CONTRACT["paths"][path]["get"]["responses"]["200"]["content"]["application/json"]["schema"]
    with httpx.Client(transport=httpx.HTTPTransport(), timeout=60.0) as http:
        answer = http.get(f"{live.url}{path}", headers={"Authorization": f"Bearer {live.key}"})
    assert answer.status_code == 200
    assert not faults(schema, answer.json())


def test_the_check_can_fail() -> None:
    assert faults({"$ref": "#/components/schemas/Problem"}, {"type": 7})
