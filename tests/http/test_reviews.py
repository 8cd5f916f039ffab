"""`POST /v1/reviews`: what goes in, what comes out, what is refused."""

from copy import deepcopy
from datetime import date, timedelta
from typing import Any

import pytest
from in_process import Running
from msgspec import to_builtins
from steelyard.http.endpoints.examples.reviews import REVIEW_EXAMPLES

PATH = "/v1/reviews"
EXAMPLES: dict[str, Any] = {name: to_builtins(example) for name, example in REVIEW_EXAMPLES.items()}


def example(name: str = "midway", **phase: Any) -> dict[str, Any]:
    body = deepcopy(EXAMPLES[name])
    body["phase"] |= phase
    return body


async def review(service: Running, body: Any) -> Any:
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == 200, answer.text
    return answer.json()


async def refused(service: Running, body: Any) -> tuple[str, str]:
    answer = await service.client.post(PATH, json=body)
    assert answer.status_code == 422, answer.text
    (fault,) = answer.json()["errors"]
    return fault["pointer"], fault["code"]


@pytest.mark.xfail(strict=True, reason="on day 20 the example's three weeks of log are too few for a verdict")
async def test_midway(service: Running) -> None:
    answer = await review(service, example())
    assert answer["verdict"] in ("within_interval", "faster", "slower")
    assert answer["days_into_phase"] == 20
    assert answer["eaten"]["days_logged"] <= answer["eaten"]["days"] == 20
    assert [week["days"] for week in answer["weeks"]] == [1, 2]  # the rest of the phase, shortened
    assert answer["weeks"][0]["start_date"] == answer["as_of_date"]
    assert answer["weeks"][-1]["at_end"]["date"] == answer["end_date"]
    change = answer["change"]
    # Tissue since the first weighing is fat and lean since the start, here the same day.
    assert change["fat_kg"]["mean"] + change["lean_kg"]["mean"] == pytest.approx(change["tissue_kg"]["mean"], abs=0.002)
    assert answer["after"] is None
    points = [week["at_end"]["weight_kg"] for week in answer["weeks"]]
    assert all(p["lower"] < p["mean"] < p["upper"] for p in points)


async def test_too_early_asks_for_more_days(service: Running) -> None:
    answer = await review(service, example("too_early"))
    assert (answer["verdict"], answer["decision"], answer["correction_kcal"]) == ("too_early", "continue", 0)
    assert answer["more_days_needed"] == 8
    assert "REVIEW_TOO_EARLY" in {reason["code"] for reason in answer["reasons"]}


async def test_afterwards_needs_no_screening_and_tells_of_the_rebound(service: Running) -> None:
    body = example("afterwards")
    assert body["screening"] is None
    answer = await review(service, body)
    assert (answer["is_finished"], answer["decision"], answer["weeks"]) == (True, "end", [])
    after = answer["after"]
    assert after["rebound_kg"]["mean"] > 0.2
    (returns,) = (caution for caution in answer["cautions"] if caution["code"] == "REVIEW_REBOUND")
    assert returns["params"]["carried_kg"] == pytest.approx(after["rebound_kg"]["mean"], abs=0.01)
    assert after["intake_kcal"] % 10 == 0
    first = date.fromisoformat(answer["as_of_date"])
    expected = [first + timedelta(days=days - 1) for days in (3, 7, 14)]
    assert [p["date"] for p in after["points"]] == [day.isoformat() for day in expected]


async def test_the_phase_may_be_declared_over(service: Running) -> None:
    answer = await review(service, example() | {"is_finished": True})
    assert answer["decision"] == "end"
    assert answer["end_date"] == (date.fromisoformat(answer["as_of_date"]) - timedelta(days=1)).isoformat()


async def test_the_order_of_the_log_does_not_matter(service: Running) -> None:
    body = example()
    turned = deepcopy(body)
    for name in ("weights", "intakes"):
        turned["log"][name].reverse()
    one, other = await review(service, body), await review(service, turned)
    for answer in (one, other):
        answer.pop("fingerprint")
        answer["notes"] = [note for note in answer["notes"] if note["code"] != "LOG_SORTED"]
    assert one == other


async def test_a_check_in_of_today_counts_though_the_last_weight_is_of_yesterday(service: Running) -> None:
    """The review is then of today. Read at the day of the last weight it took no notice of a missed period."""
    body = example("midway")
    body["profile"]["sex"] = "female"
    last = max(date.fromisoformat(entry["date"]) for entry in body["log"]["weights"])
    today = str(last + timedelta(days=2))
    body["log"]["check_ins"] = [{"date": today, "cycle": "missed"}]
    answer = await review(service, body)
    assert (answer["as_of_date"], answer["decision"]) == (today, "end")
    assert "CHECK_IN_MISSED_PERIOD" in {reason["code"] for reason in answer["reasons"]}
    pointer, code = await refused(service, body | {"as_of_date": str(last)})
    assert (pointer, code) == ("#/log/check_ins/0/date", "LOG_ENTRY_IN_FUTURE")
    body["log"]["check_ins"][0]["date"] = "2120-01-01"
    assert await refused(service, body) == ("#/log/check_ins/0/date", "DATE_OUT_OF_RANGE")


@pytest.mark.parametrize("is_logged", [False, True])
async def test_days_of_nothing_are_days_without_food(service: Running, is_logged: bool) -> None:
    """An app sends zeros of days without entries. They hid from a coach that nobody logs any more, and kept told days
    from standing in for days without a log. What is warned of stays: it may be a fast."""
    plain = example("midway", start_date="2026-04-06")
    plain["as_of_date"] = "2026-05-04"
    plain["log"]["intakes"] = plain["log"]["intakes"][:18] if is_logged else []
    zeros, logged = deepcopy(plain), {entry["date"] for entry in plain["log"]["intakes"]}
    days = [str(date(2026, 3, 24) + timedelta(days=day)) for day in range(41)]
    zeros["log"]["intakes"] += [{"date": day, "intake_kcal": 0.0} for day in days if day not in logged]
    told, same = await review(service, plain), await review(service, zeros)
    assert {"LOG_INTAKE_NOTHING"} == {note["code"] for note in same["notes"]} - {note["code"] for note in told["notes"]}
    for answer in (told, same):
        for name in ("fingerprint", "notes", "state", "methods", "cautions"):
            answer.pop(name)
    assert told == same


async def test_a_running_deficit_needs_screening(service: Running) -> None:
    answer = await service.client.post(PATH, json=example() | {"screening": None})
    assert (answer.status_code, answer.json()["type"]) == (422, "/problems/guard-rail/screening_unanswered")


async def test_a_deficit_that_became_unsafe_ends(service: Running) -> None:
    body = example()
    body["screening"]["is_pregnant"] = True
    answer = await review(service, body)
    assert answer["decision"] == "end"
    assert [(rail["id"], rail["action"]) for rail in answer["guard_rails"]] == [("pregnancy_lactation", "refused")]


@pytest.mark.parametrize(
    ("phase", "pointer", "code"),
    [
        ({"start_date": "2027-01-01"}, "#/phase/start_date", "REVIEW_BEFORE_START"),
        ({"start_date": "1999-12-31"}, "#/phase/start_date", "DATE_OUT_OF_RANGE"),
        ({"weeks": EXAMPLES["midway"]["phase"]["weeks"] * 2}, "#/phase/weeks", "MINI_CUT_TOO_LONG"),
        ({"kind": "gain"}, "#/phase/fat_loss_kg", "FAT_LOSS_WITHOUT_DEFICIT"),
        (
            {"weeks": [{"intake_kcal": 1600, "protein_g": 250, "carbohydrate_g": 300}]},
            "#/phase/weeks/0/intake_kcal",
            "NUTRIENTS_EXCEED_INTAKE",
        ),
    ],
)
async def test_contradictions_are_named(service: Running, phase: dict[str, Any], pointer: str, code: str) -> None:
    assert await refused(service, example(**phase)) == (pointer, code)


async def test_a_log_that_cannot_be_read_is_named(service: Running) -> None:
    body = example()
    body["log"]["weights"] = []
    assert (await refused(service, body))[1] == "LOG_WITHOUT_WEIGHT"
    body = example()
    body["as_of_date"] = "2026-04-20"
    assert (await refused(service, body))[1] == "LOG_ENTRY_IN_FUTURE"
    body = example()
    body["log"]["intakes"].append(body["log"]["intakes"][0])
    assert await review(service, body) == await review(service, example()) | {
        "fingerprint": (await review(service, body))["fingerprint"]
    }


async def test_a_body_of_the_log_that_nobody_has_is_looked_for_in_the_log(service: Running) -> None:
    """It was looked for in a state that nobody had sent."""
    body = example("midway", start_date="2026-04-06") | {"as_of_date": "2026-05-04", "screening": None}
    child = {"age_years": 13, "height_cm": 120, "weight_kg": 30, "sex": "male", "body_fat": None}
    lying = {"kind": "week", "steps_per_day": 0}
    idle = {"status": "intermediate", "resistance_sessions_per_week": 0}
    body["profile"] |= child | {"activity": lying, "training": idle}
    assert await refused(service, body) == ("#/log", "STATE_NOT_READABLE")


async def test_refusals_say_which_day_would_do(service: Running) -> None:
    ahead = (await service.client.post(PATH, json=example(start_date="2027-01-01"))).json()
    assert "as_of_date" in ahead["detail"]
    body = example(start_date="2026-04-06") | {"as_of_date": "2026-05-04"}
    body["settled"] = {"date": "2026-03-01", "found": "as_logged"}
    outside = (await service.client.post(PATH, json=body)).json()
    assert "from 2026-04-06, the first of the phase, to 2026-05-04" in outside["detail"]


def pause(start: str, days: int) -> dict[str, Any]:
    until = date.fromisoformat(start) + timedelta(days=days - 1)
    return {"kind": "pause", "date": start, "until_date": until.isoformat()}


@pytest.mark.parametrize(("weeks", "last"), [(3, "2026-06-21"), (40, "2027-03-07"), (52, "2027-05-30")])
async def test_a_pause_takes_all_of_its_weeks(service: Running, weeks: int, last: str) -> None:
    """One of more than half a year was taken for half a year, and nobody was told."""
    body = example("too_early", kind="cut", fat_loss_kg=None, changes=[pause("2026-04-13", 7 * weeks)])
    body["phase"]["weeks"] = body["phase"]["weeks"][:1] * 8
    answer = await review(service, body)
    assert answer["end_date"] == last


async def test_a_pause_beyond_a_year_is_refused_with_what_to_do(service: Running) -> None:
    body = example("too_early", changes=[pause("2026-04-13", 7 * 30), pause("2026-12-07", 7 * 23)])
    answer = await service.client.post(PATH, json=body)
    (fault,) = answer.json()["errors"]
    assert (fault["pointer"], fault["code"]) == ("#/phase/changes/1/until_date", "PAUSED_TOO_LONG")
    assert "53" in fault["detail"]
    assert "plan the next one" in fault["detail"]


async def test_days_of_a_pause_are_none_of_a_mini_cut(service: Running) -> None:
    """A mini-cut of five weeks that was paused for two was ended in its fifth, as one that had run for six."""
    body = example("midway", fat_loss_kg=None)
    start = date.fromisoformat(body["phase"]["start_date"])
    body["phase"]["weeks"] = body["phase"]["weeks"][:1] * 5
    body["phase"]["changes"] = [pause((start + timedelta(days=7)).isoformat(), 14)]
    weight = body["log"]["weights"][-1]["weight_kg"]
    days = [(start + timedelta(days=day)).isoformat() for day in range(43)]
    body["log"]["weights"] = [{"date": day, "weight_kg": round(weight - 0.05 * i, 1)} for i, day in enumerate(days)]
    kcal = body["phase"]["weeks"][0]["intake_kcal"]
    body["log"]["intakes"] = [{"date": day, "intake_kcal": kcal} for day in days[:-1]]
    body["as_of_date"] = days[-1]
    answer = await review(service, body)
    assert "REVIEW_LIMIT_REACHED" not in {reason["code"] for reason in answer["reasons"]}
    body["phase"]["changes"] = []
    body["phase"] |= {"changes": [{"kind": "end", "date": (start + timedelta(days=60)).isoformat()}]}
    answer = await review(service, body)
    (limit,) = (reason for reason in answer["reasons"] if reason["code"] == "REVIEW_LIMIT_REACHED")
    assert limit["params"]["days"] == 42
