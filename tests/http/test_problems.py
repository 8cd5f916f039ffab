"""Every error is a problem document, from whatever layer it comes, and gives nothing away."""

import logging
import re
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import msgspec
import pytest
from in_process import Running, running
from lifting_form import EXAMPLE, sum_lifts
from steelyard.http.languages import english
from steelyard.http.operation.operation import Operation
from steelyard.http.pages.contract_routes import problem_page
from steelyard.http.wire.problems import CONTRADICTION, KINDS, GuardRailRefusal, Unprocessable, fault
from steelyard.science.rails.subject import RailAction, Refused
from steelyard.science.register.message import say

ROOT = Path(__file__).resolve().parents[2]
SAID = say("WARNED_GAIN_RATE", percent=0.4)  # any message with a parameter


def raising(error: Exception, name: str) -> Operation:
    """An operation that fails with ``error``."""

    def fail(_body: object) -> None:
        raise error

    return msgspec.structs.replace(sum_lifts, compute=fail, path=f"/v1/{name}", operation_id=name)


ACTION = RailAction("some_rule", "refused", None, None, "", SAID)
FAILING = (
    raising(Unprocessable(CONTRADICTION, "Mend it.", [fault("#/sets", "END_BEFORE_START", "so", days=3)]), "both"),
    raising(GuardRailRefusal("some_rule", "See a clinician."), "rail"),
    raising(Refused(ACTION, "sets[0].load_kg"), "core_rail"),
    raising(ZeroDivisionError("height 178.25 of the person"), "crash"),
    raising(RecursionError("178.25"), "deep_crash"),
)


@pytest.fixture(scope="module")
async def failing(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    async with running(tmp_path_factory.mktemp("failing"), (sum_lifts, *FAILING)) as started:
        yield started


async def post(running: Running, name: str, **changes: Any) -> dict[str, Any]:
    body = msgspec.to_builtins(EXAMPLE) | changes
    answer = await running.client.post(f"/v1/{name}", json=body)
    assert answer.headers["content-type"] == "application/problem+json"
    problem: dict[str, Any] = answer.json()
    assert problem["status"] == answer.status_code
    return problem


async def test_contradiction(failing: Running) -> None:
    problem = await post(failing, "both")
    assert (problem["status"], problem["type"]) == (422, "/problems/contradiction")
    expected = {"pointer": "#/sets", "code": "END_BEFORE_START", "detail": "so", "params": {"days": 3}}
    assert problem["errors"] == [expected]


async def test_guard_rail_names_the_rule(failing: Running) -> None:
    problem = await post(failing, "rail")
    assert (problem["status"], problem["type"]) == (422, "/problems/guard-rail/some_rule")
    assert (problem["code"], problem["detail"]) == ("GUARD_RAIL", "See a clinician.")


async def test_refusal_of_the_core_names_the_rule_and_the_field(failing: Running) -> None:
    problem = await post(failing, "core_rail")
    assert (problem["status"], problem["type"]) == (422, "/problems/guard-rail/some_rule")
    (entry,) = problem["errors"]
    assert (entry["pointer"], entry["code"]) == ("#/sets/0/load_kg", "WARNED_GAIN_RATE")
    assert entry["params"] == {"percent": 0.4}
    assert problem["detail"] == entry["detail"] == english(SAID)


async def test_out_of_domain_finds_the_field(failing: Running) -> None:
    problem = await post(failing, "lifted-totals", note="domain")
    assert (problem["status"], problem["type"]) == (422, "/problems/out-of-domain")
    assert problem["errors"][0]["pointer"] == "#/equipment/stack_kg"
    assert problem["errors"][0]["code"] == "LOAD_IMPOSSIBLE"


@pytest.mark.parametrize("name", ["crash", "deep_crash"])
async def test_unexpected_exception_gives_nothing_away(
    failing: Running, caplog: pytest.LogCaptureFixture, name: str
) -> None:
    with caplog.at_level(logging.DEBUG):
        problem = await post(failing, name)
    assert (problem["status"], problem["type"], problem["errors"]) == (500, "/problems/internal-error", [])
    told = msgspec.json.encode(problem | {"instance": ""}).decode()  # an id may hold any digits
    assert not re.search(r"178|Error\b|Traceback|File|\.py", told)
    # The log says what and where, under the request's id; not the exception's text, which may quote a person.
    (record,) = [r for r in caplog.records if r.levelno >= logging.ERROR]
    line = record.getMessage()
    assert problem["instance"].removeprefix("urn:uuid:") in line
    assert "test_problems.py" in line
    assert "178.25" not in line  # whole, since an id or the number of a line may be 178


async def test_answer_that_is_not_finite_is_a_500(failing: Running) -> None:
    assert (await post(failing, "lifted-totals", note="nan"))["type"] == "/problems/internal-error"


@pytest.mark.parametrize("path", ["/v1", "/v1/nothing", "/v2/methods", "/v1/methods%00", "/v1/%ff", "/problems"])
async def test_unknown_path(service: Running, path: str) -> None:
    answer = await service.client.get(path)
    assert answer.status_code == 404
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.json()["type"] == "/problems/not-found"


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "TRACE", "BREW", "POST"])
async def test_wrong_method(service: Running, method: str) -> None:
    answer = await service.client.request(method, "/v1/methods")
    assert answer.status_code == 405
    assert answer.headers["allow"] == "GET, HEAD, OPTIONS"
    assert answer.json()["type"] == "/problems/method-not-allowed"


async def test_malformed_host(service: Running) -> None:
    answer = await service.client.get("/v1/methods", headers={"host": "a b/c"})
    assert (answer.status_code, answer.json()["type"]) == (400, "/problems/bad-request")


async def test_head_has_the_headers_alone(service: Running) -> None:
    plain = {"accept-encoding": "identity"}
    got = await service.client.get("/v1/methods", headers=plain)
    head = await service.client.head("/v1/methods", headers=plain)
    assert (head.status_code, head.content) == (200, b"")
    assert head.headers["content-length"] == got.headers["content-length"] == str(len(got.content))
    for path, headers, status in (("/v1/methods", {"authorization": ""}, 401), ("/nothing", {}, 404)):
        whole = await service.client.get(path, headers=headers)
        refused = await service.client.head(path, headers=headers)
        assert (refused.status_code, refused.content) == (status, b"")
        assert refused.headers["content-length"] == str(len(whole.content))


async def test_every_type_has_its_page(service: Running) -> None:
    for kind in KINDS.values():
        answer = await service.client.get(kind.type, headers={"authorization": ""})
        assert answer.status_code == 200, kind.type
        assert answer.json()["title"] == kind.title
        assert (answer.json()["type"], answer.json()["status"]) == (kind.type, kind.status)


async def test_guard_rail_pages_follow_the_catalogue(service: Running) -> None:
    entries = (await service.client.get("/v1/methods")).json()["entries"]
    rules = [entry for entry in entries if entry["kind"] == "rule"]
    assert rules
    for rule in rules:
        page = (await service.client.get(f"/problems/guard-rail/{rule['id']}")).json()
        assert page["type"] == f"/problems/guard-rail/{rule['id']}"
        assert rule["summary"] in page["meaning"]
    constant = next(entry["id"] for entry in entries if entry["kind"] == "constant")
    assert problem_page(f"guard-rail/{constant}") is None
    assert problem_page("not-json/anything") is None


def test_titles_and_slugs_are_unique() -> None:
    assert len({kind.title for kind in KINDS.values()}) == len(KINDS)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", slug) for slug in KINDS)
