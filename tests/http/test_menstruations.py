"""A menstruation told weeks after all else that was logged: the same log is taken wherever a log is."""

from datetime import date, timedelta
from typing import Any

import pytest
from in_process import Running
from request_people import CLEAR, LIFTER, Json

FIRST, START = date(2026, 1, 15), "2026-03-21"
TOLD_LATE = "2026-03-14"  # 19 days after the last weighing, a week before what is planned
PERSON = LIFTER | {"sex": "female", "height_cm": 168, "weight_kg": 64.2}
LOG: Json = {
    "weights": [
        {"date": (FIRST + timedelta(days=i)).isoformat(), "weight_kg": round(66.0 - 0.045 * i + 0.2 * (i % 3), 1)}
        for i in range(40)
    ],
    "intakes": [
        {"date": (FIRST + timedelta(days=i)).isoformat(), "intake_kcal": 1900 + 40 * (i % 5)} for i in range(39)
    ],
    "cycle": ["2026-01-20", "2026-02-17", TOLD_LATE],
}
ASKED: Json = {"profile": PERSON, "screening": CLEAR, "log": LOG}
STRATEGY = {"kind": "ready_made", "name": "fast_gain_repeated_mini_cuts"}
REQUESTS: dict[str, Json] = {
    "plans": {"start_date": START, "phase": {"kind": "mini_cut", "weeks": 4}},
    "forecasts": {
        "start_date": START,
        "question": {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 1900}]},
    },
    "decisions": {"as_of_date": START},
    "seasons": {"start_date": START, "horizon_weeks": 12, "strategy": STRATEGY},
    "maintenance": {},
    "trends": {},
}


async def answered(service: Running, path: str, more: Json, *, without: tuple[str, ...] = ()) -> Json:
    asked = {name: value for name, value in (ASKED | more).items() if name not in without}
    answer = await service.client.post(f"/v1/{path}", json=asked)
    assert answer.status_code == 200, answer.text
    found: Json = answer.json()
    return found


def screened(path: str) -> tuple[str, ...]:
    return ("screening",) if path == "trends" else ()


@pytest.mark.parametrize("path", REQUESTS)
async def test_it_is_taken_and_handed_on(service: Running, path: str) -> None:
    found = await answered(service, path, REQUESTS[path], without=screened(path))
    assert found["state"]["as_of_date"] == LOG["weights"][-1]["date"]
    assert TOLD_LATE in found["state"]["log"]["cycle"]


@pytest.mark.parametrize("path", ["maintenance", "trends"])
async def test_it_counts_from_the_day_that_is_asked_for(service: Running, path: str) -> None:
    handed = (await answered(service, "plans", REQUESTS["plans"]))["state"]
    later: dict[str, Any] = {"as_of_date": START}
    at_once = await answered(service, path, later, without=screened(path))
    in_turn = await answered(service, path, later | {"state": handed}, without=("log", *screened(path)))
    for found in (at_once, in_turn):
        assert found["state"]["as_of_date"] == START
    assert in_turn["state"]["log"]["cycle"][-1] == TOLD_LATE


@pytest.mark.parametrize("path", ["maintenance", "trends"])
async def test_after_the_day_that_is_asked_for_it_is_refused_by_name(service: Running, path: str) -> None:
    asked = {name: value for name, value in ASKED.items() if name not in screened(path)}
    answer = await service.client.post(f"/v1/{path}", json=asked | {"as_of_date": "2026-03-01"})
    assert answer.status_code == 422
    assert [(e["code"], e["pointer"]) for e in answer.json()["errors"]] == [("LOG_ENTRY_IN_FUTURE", "#/log/cycle/2")]
