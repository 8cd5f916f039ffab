"""The workbench as it is served: only where it is enabled, closed to everything else, complete."""

import re
from collections.abc import AsyncIterator
from typing import Any

import httpx
import pytest
from in_process import BASE_URL, Running, running
from msgspec import to_builtins
from steelyard.http.app import OPERATIONS
from steelyard.http.operation.operation import Operation
from steelyard.http.pages.answer_examples import without_nulls
from steelyard.http.pages.contract import openapi_document
from steelyard.http.pages.workbench import PICTURE, offers

OFFERED = [operation for operation in OPERATIONS if operation.body_type and not (operation.stream or operation.renders)]
DRAWN = {operation.renders: operation.path for operation in OPERATIONS if PICTURE in operation.formats}


@pytest.fixture(scope="module")
async def enabled(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    async with running(tmp_path_factory.mktemp("workbench"), workbench=True) as started:
        yield started


@pytest.fixture
async def stranger(enabled: Running) -> AsyncIterator[httpx.AsyncClient]:
    async with httpx.AsyncClient(transport=httpx.ASGITransport(enabled.app), base_url=BASE_URL) as client:
        yield client


@pytest.mark.parametrize("path", ["/workbench", "/workbench/app.js", "/workbench/operations.json"])
async def test_it_is_off_by_default(service: Running, path: str) -> None:
    assert (await service.client.get(path)).status_code == 404


async def test_every_file_it_names_is_served(stranger: httpx.AsyncClient) -> None:
    kinds = {"html": "text/html", "css": "text/css", "js": "text/javascript", "json": "application/json"}
    waiting, seen = ["/workbench"], set()
    while waiting:
        path = waiting.pop()
        seen.add(path)
        answer = await stranger.get(path)
        assert answer.status_code == 200, path
        kind = kinds[path.rpartition(".")[2] if "." in path else "html"]
        assert answer.headers["content-type"].startswith(kind)
        found = re.findall(r'(?:href|src)="(workbench/[\w./]+)"', answer.text)
        found += [f"workbench/{name}" for name in re.findall(r'from "\./([\w.]+)"', answer.text)]
        waiting += [f"/{each}" for each in found if f"/{each}" not in seen]
    assert {"/workbench/app.js", "/workbench/form.js", "/workbench/summaries.js", "/workbench/workbench.css"} <= seen
    files = {route for route in seen if route != "/workbench"} | {"/workbench/operations.json"}
    assert files == {path for path in await _routes(stranger) if path.startswith("/workbench/")}


async def _routes(stranger: httpx.AsyncClient) -> set[str]:
    app: Any = stranger._transport.app  # type: ignore[attr-defined]
    return {route.path for route in app.routes}


async def test_it_runs_and_loads_only_its_own(stranger: httpx.AsyncClient) -> None:
    answer = await stranger.get("/workbench")
    directives = dict(part.strip().split(" ", 1) for part in answer.headers["content-security-policy"].split(";"))
    assert directives["default-src"] == directives["form-action"] == directives["base-uri"] == "'none'"
    assert directives["frame-ancestors"] == directives["trusted-types"] == "'none'"
    assert directives["script-src"] == directives["style-src"] == directives["connect-src"] == "'self'"
    assert directives["require-trusted-types-for"] == "'script'"
    assert "unsafe" not in answer.headers["content-security-policy"]
    assert not re.search(r"\son\w+=|javascript:|<style|\sstyle=|https?:", answer.text)
    assert all(re.search(r"\ssrc=", tag) for tag in re.findall(r"<script[^>]*>", answer.text))


async def test_what_it_offers_is_what_a_caller_can_send(stranger: httpx.AsyncClient) -> None:
    listed = (await stranger.get("/workbench/operations.json")).json()["operations"]
    assert [offer["operation_id"] for offer in listed] == [operation.operation_id for operation in OFFERED]
    assert [offer["picture_path"] for offer in listed] == [DRAWN.get(o.operation_id, "") for o in OFFERED]
    assert len(set(DRAWN.values())) == 6
    assert all(offer["examples"] and offer["summary"] and offer["description"] for offer in listed)


async def test_forms_are_made_of_the_contract(stranger: httpx.AsyncClient) -> None:
    """Every schema that a body leads to, as the contract has it; the state alone is handed on and not filled in."""
    offered = (await stranger.get("/workbench/operations.json")).json()
    schemas = openapi_document(OPERATIONS)["components"]["schemas"]
    assert {offer["schema"] for offer in offered["operations"]} <= offered["schemas"].keys()
    for name, schema in offered["schemas"].items():
        assert schema == schemas[name], name
        assert set(re.findall(r"schemas/(\w+)", str(schema))) <= {*offered["schemas"], "State"}, name
    assert "State" not in offered["schemas"]


@pytest.mark.parametrize("operation", OFFERED, ids=lambda o: o.operation_id)
async def test_an_example_without_its_nulls_is_the_same_request(enabled: Running, operation: Operation) -> None:
    """The fingerprint is of the decoded request, so that equal ones mean equal requests."""
    (offer,) = offers([operation])
    for example in offer.examples[:1]:
        whole = to_builtins(operation.request_examples[example.name])
        assert "None" not in str(example.body)
        full = await enabled.client.post(operation.path, json=whole)
        short = await enabled.client.post(operation.path, json=example.body)
        assert short.status_code == 200, short.text
        assert short.json() == full.json()


def test_only_nulls_go() -> None:
    kept = {"a": 0, "b": False, "c": "", "d": [], "e": [{"f": 1}]}
    assert without_nulls({**kept, "g": None, "e": [{"f": 1, "h": None}]}) == kept
