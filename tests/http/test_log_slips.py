"""What of a log did not count as it was sent is said by every answer that takes a log, once, and not entry by entry."""

import pytest
from in_process import Running
from request_people import CLEAR, LIFTER, Json

DAYS = [f"2026-02-{day:02}" for day in range(1, 29)]
IN_POUNDS: Json = {"weights": [{"date": day, "weight_kg": 181.0} for day in DAYS]}
BY_MEALS: Json = {
    "weights": [{"date": day, "weight_kg": 82.0} for day in DAYS],
    "intakes": [{"date": day, "intake_kcal": kcal} for day in DAYS for kcal in (600, 800, 1100)],
}
IN_KILOJOULES: Json = {
    "weights": BY_MEALS["weights"],
    "intakes": [{"date": day, "intake_kcal": 10500} for day in DAYS],
}
SEASON: Json = {"start_date": "2026-03-02", "horizon_weeks": 13}
ASKED: dict[str, Json] = {
    "maintenance": {},
    "trends": {},
    "plans": {"start_date": "2026-03-02", "phase": {"kind": "mini_cut", "weeks": 4}},
    "forecasts": {
        "start_date": "2026-03-02",
        "question": {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 2600}]},
    },
    "decisions": {"as_of_date": "2026-03-02"},
    "seasons": SEASON | {"strategy": {"kind": "ready_made", "name": "slow_gain_no_cut"}},
    "seasons/comparison": SEASON
    | {
        "strategies": [
            {"kind": "ready_made", "name": name} for name in ("slow_gain_no_cut", "slow_gain_rare_mini_cuts")
        ]
    },
    "seasons/optimum": SEASON | {"strategies_searched": 500},
}


@pytest.mark.parametrize("path", ASKED)
@pytest.mark.parametrize(
    ("log", "code"),
    [
        pytest.param(IN_POUNDS, "LOG_UNIT_MIX_UP", id="pounds"),
        pytest.param(BY_MEALS, "LOG_INTAKE_TWICE", id="meals"),
        pytest.param(IN_KILOJOULES, "LOG_INTAKE_KILOJOULES", id="kilojoules"),
    ],
)
async def test_what_did_not_count_as_sent_is_said_once(service: Running, path: str, log: Json, code: str) -> None:
    body = {"profile": LIFTER, "screening": CLEAR, "log": log} | ASKED[path]
    answer = (await service.client.post(f"/v1/{path}", json=body)).json()
    said = [note for note in [*answer["cautions"], *answer.get("notes", [])] if note["code"] == code]
    assert len(said) == 1, answer
    (note,) = said
    assert sum(note["params"].get(name, 0) for name in ("count", "others")) >= len(DAYS) - 1
    assert "1 February 2026" in note["text"]


async def test_a_few_slips_are_named_one_by_one(service: Running) -> None:
    weights = [dict(entry) for entry in BY_MEALS["weights"]]
    for at in (5, 9, 20):
        weights[at]["weight_kg"] = 181.0
    answer = await service.client.post("/v1/trends", json={"profile": LIFTER, "log": {"weights": weights}})
    named = [note["params"]["date"] for note in answer.json()["notes"] if note["code"] == "LOG_UNIT_MIX_UP"]
    assert named == [DAYS[at] for at in (5, 9, 20)]


@pytest.mark.parametrize("log", [None, IN_KILOJOULES], ids=["none", "kilojoules"])
async def test_nobody_who_sent_a_log_is_told_that_there_is_none(service: Running, log: Json | None) -> None:
    answer = (await service.client.post("/v1/maintenance", json={"profile": LIFTER, "log": log})).json()
    (text,) = [note["text"] for note in answer["cautions"] if note["code"] == "FROM_EQUATIONS"]
    assert text.startswith("This rests on equations alone, as no food log tells more yet.")


async def test_food_that_was_sent_and_left_out_is_not_called_unlogged(service: Running) -> None:
    answer = (await service.client.post("/v1/trends", json={"profile": LIFTER, "log": IN_KILOJOULES})).json()
    texts = {note["code"]: note["text"] for note in answer["notes"]}
    assert {"LOG_INTAKE_KILOJOULES", "LOG_NO_INTAKE"} <= texts.keys()
    assert texts["LOG_NO_INTAKE"].startswith("There is no food log to go by: ")


FROM_START = [path for path in ASKED if path not in ("maintenance", "trends")]


@pytest.mark.parametrize("path", FROM_START)
@pytest.mark.parametrize(("year", "is_said"), [(2027, True), (2026, False)], ids=["a wrong year", "as it was"])
async def test_a_log_that_goes_on_long_after_the_day_is_doubted(
    service: Running, path: str, year: int, is_said: bool
) -> None:
    log = {"weights": [*BY_MEALS["weights"], {"date": f"{year}-03-05", "weight_kg": 82.0}]}
    body = {"profile": LIFTER, "screening": CLEAR, "log": log} | ASKED[path]
    answer = (await service.client.post(f"/v1/{path}", json=body)).json()
    texts = [note["text"] for note in answer["cautions"] if note["code"] == "LOG_GOES_PAST"]
    expected = "Your log goes on to 5 March 2027, long after the 2 March 2026 asked about: is one of the dates wrong?"
    assert texts == ([expected] if is_said else [])
