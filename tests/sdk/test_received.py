"""What comes with an answer, and what is told of every try: request id, limits, the bytes, and nothing of a person."""

import logging
from typing import Any

import httpx
import pytest
from examples.local_service import LocalService
from sdk_caller import KEY, PROFILE, Caller, catalogue_answer
from steelyard_client import Exchange, InvalidRequest, Limit, Methods, ProblemError
from steelyard_client.received import limits_of


async def test_an_answer_has_what_came_with_it(caller: Caller, live: LocalService) -> None:
    answer = await caller("estimate_maintenance", profile=PROFILE)
    received = answer.received
    assert received.status == 200
    assert received.headers["x-request-id"] == received.request_id
    assert received.headers["steelyard-fingerprint"] == answer.fingerprint
    assert answer.fingerprint.encode() in received.content
    assert {limit.name for limit in received.limits} <= {"burst", "daily-key", "daily-organisation"}
    assert all(limit.units_left >= 0 for limit in received.limits)


async def test_an_answer_read_from_elsewhere_came_with_nothing(caller: Caller) -> None:
    methods = await caller("list_methods")
    assert methods.received is not None
    again = Methods.from_dict(methods.to_dict())
    assert again.received is None
    assert again == methods


@pytest.mark.parametrize(
    ("header", "limits"),
    [
        ('"burst";r=59990;t=12, "daily-key";r=7', (Limit("burst", 59990, 12), Limit("daily-key", 7, 0))),
        ("", ()),
        ("burst=5", ()),
        ('"other";q=5', ()),
    ],
)
def test_limits_are_read(header: str, limits: tuple[Limit, ...]) -> None:
    assert limits_of(header) == limits


async def test_every_try_is_told(answered_by: Any, waits: list[float], caplog: pytest.LogCaptureFixture) -> None:
    told: list[Exchange] = []
    outcomes = [httpx.ConnectError("refused"), httpx.Response(502), catalogue_answer()]

    def handler(request: httpx.Request) -> httpx.Response:
        outcome = outcomes.pop(0)
        if isinstance(outcome, Exception):
            raise outcome
        outcome.headers["RateLimit"] = '"burst";r=5;t=1'
        return outcome

    with caplog.at_level(logging.DEBUG, "steelyard_client"):
        answer = await answered_by(handler, on_exchange=told.append)("list_methods")
    assert [(one.attempt, one.status, one.failure is None) for one in told] == [
        (1, None, False),
        (2, 502, True),
        (3, 200, True),
    ]
    assert {one.request_id for one in told} == {answer.received.request_id}
    assert told[-1].limits == answer.received.limits == (Limit("burst", 5, 1),)
    levels = [record.levelname for record in caplog.records if record.name == "steelyard_client"]
    assert levels == ["INFO", "INFO", "DEBUG"]


async def test_what_is_told_holds_no_body_and_no_key(answered_by: Any, caplog: pytest.LogCaptureFixture) -> None:
    told: list[Exchange] = []
    caplog.set_level(logging.DEBUG)
    call = answered_by(lambda request: httpx.Response(418, text="31.4159"), on_exchange=told.append)
    with pytest.raises(ProblemError):
        await call("estimate_maintenance", profile={**PROFILE, "weight_kg": 31.4159})
    assert told
    assert "31.4159" not in f"{told} {caplog.text}"
    assert KEY not in f"{told} {caplog.text}"


@pytest.mark.parametrize("missing", ["reference", "operation"])
async def test_a_line_without_a_name_or_a_question_is_refused_by_type(answered_by: Any, missing: str) -> None:
    line = {"reference": "a", "operation": "estimate_maintenance", "body": {}}
    del line[missing]
    answers = answered_by(lambda request: httpx.Response(500)).client.run_batch([line])

    async def first() -> None:
        if hasattr(answers, "__anext__"):
            await anext(answers)
        else:
            next(answers)

    with pytest.raises(InvalidRequest, match=rf"Line 1: {missing} is missing") as caught:
        await first()
    assert caught.value.pointers == (f"#/{missing}",)
