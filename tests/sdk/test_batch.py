"""Batches through both clients: every line by itself, a few at a time, against a live server and stand-ins."""

import json
from collections.abc import Callable, Iterator
from typing import Any

import httpx
import pytest
from examples.local_service import LocalService
from sdk_caller import PROFILE, SCREENING, START, Caller, problem
from steelyard_client import (
    AsyncSteelyard,
    BadRequest,
    GuardRailRefusal,
    InvalidRequest,
    Maintenance,
    Plan,
    TooManyRequests,
    UnreadableAnswer,
    models,
)
from steelyard_client.batch import LineAnswer

WEEKS = {"kind": "mini_cut", "weeks": 4}
PLAN = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "phase": WEEKS}


def line(reference: str, operation: str, **body: Any) -> Any:
    return {"reference": reference, "operation": operation, "body": body}


def maintenance(reference: str) -> Any:
    return line(reference, "estimate_maintenance", profile=PROFILE)


async def run(caller: Caller, lines: Any) -> list[LineAnswer]:
    client = caller.client
    if isinstance(client, AsyncSteelyard):
        return [answer async for answer in client.run_batch(lines)]
    return list(client.run_batch(lines))


async def test_results_and_problems_of_lines(caller: Caller, live: LocalService) -> None:
    pregnant = PLAN | {"screening": {**SCREENING, "is_pregnant": True}}
    lines = [
        maintenance("a"),
        line("b", "plan_phases", **pregnant),
        line("c", "plan_phases", **PLAN),
        line("d", "read_trend"),
        line("e", "fly"),
    ]
    a, b, c, d, e = await run(caller, lines)
    assert [x.reference for x in (a, b, c, d, e)] == ["a", "b", "c", "d", "e"]
    assert isinstance(a.result, Maintenance)
    assert a.problem is None
    assert isinstance(b.problem, GuardRailRefusal)
    assert b.result is None
    assert isinstance(c.result, Plan)
    assert c.result.feasible
    assert isinstance(d.problem, BadRequest)
    assert isinstance(e.problem, BadRequest)
    single = await caller("estimate_maintenance", profile=PROFILE)
    assert a.result.to_dict() == single.to_dict()


async def test_models_serve_as_bodies(caller: Caller) -> None:
    body = models.MaintenanceRequest.from_dict({"profile": dict(PROFILE)})
    (answer,) = await run(caller, [{"reference": "a", "operation": "estimate_maintenance", "body": body}])
    assert isinstance(answer.result, Maintenance)


async def test_many_lines_go_in_small_bodies_and_are_read_as_answers_are_taken(
    answered_by: Callable[..., Caller],
) -> None:
    sizes: list[int] = []
    drawn: list[int] = []

    def handle(request: httpx.Request) -> httpx.Response:
        assert request.headers["content-type"] == request.headers["accept"].split(",")[0] == "application/x-ndjson"
        sent = [json.loads(text) for text in request.content.splitlines()]
        sizes.append(len(request.content))
        document = problem(422, "out-of-domain")
        return lines_answer(
            [{"line": i + 1, "reference": one["reference"], "problem": document} for i, one in enumerate(sent)]
        )

    def lines() -> Iterator[Any]:
        for i in range(1000):
            drawn.append(i)
            yield maintenance(str(i))

    caller = answered_by(handle)
    client = caller.client
    taken = 0
    if isinstance(client, AsyncSteelyard):
        async for answer in client.run_batch(lines()):
            assert answer.reference == str(taken)
            assert drawn[-1] <= taken + 201
            taken += 1
    else:
        for answer in client.run_batch(lines()):
            assert answer.reference == str(taken)
            assert drawn[-1] <= taken + 201
            taken += 1
    assert taken == 1000
    assert len(sizes) >= 5
    assert max(sizes) <= 65_536


def lines_answer(lines: list[Any], *, is_complete: bool = True) -> httpx.Response:
    summary = {"lines": 0, "results": 0, "problems": 0, "problems_by_status": {}, "is_complete": is_complete}
    text = "\n".join(json.dumps(one) for one in [*lines, {"summary": summary}])
    return httpx.Response(200, headers={"Content-Type": "application/x-ndjson"}, content=text + "\n")


async def test_a_cut_off_answer_is_noticed(answered_by: Callable[..., Caller]) -> None:
    one = {"line": 1, "reference": "a", "problem": problem(422, "out-of-domain")}
    texts = [json.dumps(one) + "\n", "", "{", lines_answer([]).text, lines_answer([one, one, one]).text]
    for text in texts:

        def handle(request: httpx.Request, text: str = text) -> httpx.Response:
            return httpx.Response(200, content=text)

        with pytest.raises(UnreadableAnswer):
            await run(answered_by(handle), [maintenance("a"), maintenance("b")])


async def test_a_batch_that_the_service_stops_gives_what_it_answered_and_then_raises(
    answered_by: Callable[..., Caller],
) -> None:
    answered = {"line": 1, "reference": "a", "problem": problem(422, "out-of-domain")}
    stopped = {"line": 2, "reference": None, "problem": problem(429, "too-many-requests")}
    client = answered_by(lambda request: lines_answer([answered, stopped], is_complete=False)).client
    taken: list[str] = []

    async def take() -> None:
        lines = [maintenance("a"), maintenance("b")]
        if isinstance(client, AsyncSteelyard):
            async for answer in client.run_batch(lines):
                taken.append(answer.reference)
        else:
            for answer in client.run_batch(lines):
                taken.append(answer.reference)

    with pytest.raises(TooManyRequests):
        await take()
    assert taken == ["a"]


async def test_nothing_to_send_sends_nothing(answered_by: Callable[..., Caller]) -> None:
    def never(request: httpx.Request) -> httpx.Response:
        raise AssertionError("sent")

    assert await run(answered_by(never), []) == []


async def test_what_json_cannot_hold_is_refused(answered_by: Callable[..., Caller]) -> None:
    caller = answered_by(lambda request: lines_answer([]))
    with pytest.raises(InvalidRequest):
        await run(caller, [line("a", "estimate_maintenance", profile={"weight_kg": float("nan")})])
