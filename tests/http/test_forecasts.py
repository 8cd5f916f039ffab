"""`POST /v1/forecasts`: each question answers the other, nothing passes a rail, and bad questions are told why."""

from datetime import date, timedelta
from typing import Any

import pytest
from in_process import Running
from request_people import CLEAR, LIFTER, Json

START = date(2026, 3, 2)
KNOWN: Json = {"kcal_per_day": 2800, "standard_deviation_kcal": 100}
# As the answer rounds them.
STEP = {"weight_kg": 0.01, "fat_kg": 0.01, "fat_fraction": 0.001}


def path(*stretches: tuple[int, float], **fields: Any) -> Json:
    schedule = [{"weeks": weeks, "intake_kcal": kcal} | fields for weeks, kcal in stretches]
    return {"kind": "path", "schedule": schedule}


def intake_for(quantity: str, value: float, weeks: int) -> Json:
    by_date = (START + timedelta(weeks=weeks)).isoformat()
    return {"kind": "intake_for_target", "target": {"quantity": quantity, "value": value}, "by_date": by_date}


def date_for(quantity: str, value: float, intake_kcal: float) -> Json:
    target = {"quantity": quantity, "value": value}
    return {"kind": "date_for_target", "target": target, "intake_kcal": intake_kcal}


async def send(service: Running, question: Json, **fields: Any) -> tuple[int, Json]:
    body = {"profile": LIFTER, "screening": CLEAR, "start_date": START.isoformat(), "maintenance": KNOWN}
    answer = await service.client.post("/v1/forecasts", json=body | {"question": question} | fields)
    return answer.status_code, answer.json()


def mean(point: Json, quantity: str) -> float:
    return float(point[quantity]["mean"])


# --- where an intake leads ----------------------------------------------------------------------------------------


async def test_a_path_has_a_point_a_week_and_intervals_that_widen(service: Running) -> None:
    status, found = await send(service, path((4, 2500), (6, 2800)))
    assert status == 200, found
    weeks = found["weeks"]
    assert [week["intake_kcal"] for week in weeks] == [2500] * 4 + [2800] * 6
    assert [week["start_date"] for week in weeks] == [(START + timedelta(weeks=i)).isoformat() for i in range(10)]
    widths = [week["at_end"]["fat_kg"]["upper"] - week["at_end"]["fat_kg"]["lower"] for week in weeks]
    assert widths == sorted(widths)
    assert mean(weeks[3]["at_end"], "fat_kg") < 82.0 * 0.18 - 0.5
    # Back at what held the old body, the lighter one gains a little.
    assert mean(weeks[9]["at_end"], "weight_kg") > mean(weeks[3]["at_end"], "weight_kg")
    assert found["uncertainty"] == sorted(found["uncertainty"], key=lambda effect: -effect["fat_kg"])
    assert found["cautions"]


async def test_at_maintenance_nothing_moves(service: Running) -> None:
    profile = LIFTER | {"training": {"status": "untrained", "resistance_sessions_per_week": 0}}
    status, found = await send(service, path((26, 2800)), profile=profile)
    assert status == 200, found
    for week in found["weeks"]:
        assert mean(week["at_end"], "weight_kg") == pytest.approx(82.0, abs=0.011)
        assert week["energy_balance_kcal"] == pytest.approx(0.0, abs=1.0)


async def test_more_eaten_is_never_less_mass(service: Running) -> None:
    ends = []
    for kcal in (2300, 2550, 2800, 2950):
        status, found = await send(service, path((8, kcal)))
        assert status == 200, found
        ends.append(mean(found["weeks"][-1]["at_end"], "weight_kg"))
    assert ends == sorted(ends)
    assert len(set(ends)) == 4


async def test_sources_left_out_narrow_the_interval(service: Running) -> None:
    question = path((8, 2400))
    whole = (await send(service, question))[1]["weeks"][-1]["at_end"]["fat_kg"]
    part = (await send(service, question, uncertainty_sources=["body_fat"]))[1]
    none = (await send(service, question, uncertainty_sources=[]))[1]["weeks"][-1]["at_end"]["fat_kg"]
    assert [effect["source"] for effect in part["uncertainty"]] == ["body_fat"]
    narrow = part["weeks"][-1]["at_end"]["fat_kg"]
    assert whole["upper"] - whole["lower"] > narrow["upper"] - narrow["lower"] > 0.0
    assert none["upper"] == none["lower"]


# --- the inverse questions ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("quantity", "value", "weeks"),
    [
        ("weight_kg", 79.5, 6),
        ("weight_kg", 83.0, 10),
        ("fat_kg", 12.5, 10),
        ("fat_fraction", 0.165, 8),
    ],
)
async def test_the_intake_found_reaches_its_target_on_the_day(
    service: Running, quantity: str, value: float, weeks: int
) -> None:
    status, found = await send(service, intake_for(quantity, value, weeks), cut_history={"cuts_last_12_months": 0})
    assert status == 200, found
    assert found["feasible"]
    assert found["nearest"] is None
    assert mean(found["weeks"][-1]["at_end"], quantity) == pytest.approx(value, abs=STEP[quantity])
    # Eaten as a schedule, the same intake goes the same way.
    again = (await send(service, path((weeks, found["intake_kcal"]))))[1]
    end = mean(again["weeks"][-1]["at_end"], quantity)
    assert end == pytest.approx(value, abs=0.05 if quantity != "fat_fraction" else 0.001)


@pytest.mark.parametrize(("quantity", "value", "intake_kcal"), [("fat_kg", 13.0, 2350), ("weight_kg", 83.2, 3000)])
async def test_the_date_found_is_that_on_which_the_path_crosses(
    service: Running, quantity: str, value: float, intake_kcal: float
) -> None:
    """On the way down and on the way up."""
    status, found = await send(service, date_for(quantity, value, intake_kcal))
    assert status == 200, found
    days = (date.fromisoformat(found["reached_on"]) - START).days
    assert days > 14
    weeks = -(-days // 7)
    path_there = (await send(service, path((26, intake_kcal), protein_g_per_kg=1.6)))[1]["weeks"]
    before, after = (mean(path_there[week]["at_end"], quantity) for week in (weeks - 2, weeks - 1))
    assert min(before, after) - 0.01 < value < max(before, after) + 0.01
    # And asked the other way round, the same intake is found.
    by_date = {"kind": "intake_for_target", "target": {"quantity": quantity, "value": value}}
    other = (await send(service, by_date | {"by_date": found["reached_on"]}))[1]
    assert other["intake_kcal"] == pytest.approx(intake_kcal, abs=15)


async def test_a_target_beyond_the_rails_is_answered_with_the_nearest_on_each_axis(service: Running) -> None:
    status, found = await send(service, intake_for("fat_kg", 9.0, 4))
    assert status == 200, found
    assert not found["feasible"]
    assert found["intake_kcal"] is None
    nearest = found["nearest"]
    codes = {note["code"] for note in found["reasons"]}
    assert "TARGET_BEYOND_RAIL" in codes
    assert "TARGET_NEEDS_INTAKE" not in codes  # nobody is told an intake that is not safe
    # Each axis is true of itself: that intake is allowed, leads to that value by the day, and later to the target.
    status, there = await send(service, path((4, nearest["intake_kcal"])))
    assert status == 200, there
    assert mean(there["weeks"][-1]["at_end"], "fat_kg") == pytest.approx(nearest["value"], abs=0.02)
    assert nearest["value"] > 9.0
    if nearest["by_date"] is not None:
        assert date.fromisoformat(nearest["by_date"]) > START + timedelta(weeks=4)


async def test_a_gain_too_fast_is_held_to_its_ceiling(service: Running) -> None:
    status, found = await send(service, intake_for("weight_kg", 88.0, 6))
    assert status == 200, found
    assert not found["feasible"]
    assert "TARGET_TOO_FAST_GAIN" in {note["code"] for note in found["reasons"]}
    assert 82.0 < found["nearest"]["value"] < 88.0


async def test_an_intake_that_leads_away_never_arrives(service: Running) -> None:
    status, found = await send(service, date_for("weight_kg", 78.0, 2950))
    assert status == 200, found
    assert (found["feasible"], found["reached_on"]) == (False, None)
    assert "TARGET_WRONG_SIDE" in {note["code"] for note in found["reasons"]}


# --- rails --------------------------------------------------------------------------------------------------------


RAILS: list[tuple[str, Json, Json, str, str]] = [
    ("a deficit, unanswered", path((4, 2400)), {"screening": None}, "screening_unanswered", "#/screening"),
    ("a surplus, unanswered", path((4, 3000)), {"screening": None}, "screening_unanswered", "#/screening"),
    ("a gain to find, unanswered", intake_for("weight_kg", 83.0, 10), {"screening": None}, "screening_unanswered",
     "#/screening"),
    ("a deficit at 16", path((4, 2400)), {"profile": LIFTER | {"age_years": 16}}, "age", "#/profile/age_years"),
    ("a deficit in a second stretch", path((2, 2800), (4, 1400)), {}, "deficit_share",
     "#/question/schedule/1/intake_kcal"),
    ("a deficit beyond its share", path((4, 1900)), {}, "deficit_share", "#/question/schedule/0/intake_kcal"),
    ("a gain beyond its ceiling", path((4, 3900)), {}, "gain_rate", "#/question/schedule/0/intake_kcal"),
    ("a date for a deep deficit", date_for("weight_kg", 78.0, 1600), {}, "deficit_share", "#/question/intake_kcal"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("question", "fields", "rule", "pointer"), [row[1:] for row in RAILS], ids=[r[0] for r in RAILS]
)
async def test_a_rail_refuses_and_names_itself(
    service: Running, question: Json, fields: Json, rule: str, pointer: str
) -> None:
    status, problem = await send(service, question, **fields)
    assert status == 422, problem
    assert problem["type"] == f"/problems/guard-rail/{rule}"
    assert problem["errors"][0]["pointer"] == pointer


async def test_the_usual_protein_is_enough_for_a_deficit_after_a_gain(service: Running) -> None:
    """Where nothing is said of protein, none is found wanting: a body that has grown gets as much for a kilogram."""
    status, found = await send(service, path((16, 3000), (4, 2400)))
    assert status == 200, found
    question = path((16, 3000), (4, 2400))
    question["schedule"][1]["protein_g_per_kg"] = 1.5
    status, problem = await send(service, question)
    assert status == 422, problem
    assert problem["type"] == "/problems/guard-rail/protein"


async def test_maintenance_needs_no_screening(service: Running) -> None:
    _, known = await send(service, path((4, 3400)), maintenance=None)
    told = round(known["maintenance_kcal"]["mean"], -1)
    status, found = await send(service, path((4, told)), screening=None, maintenance=None)
    assert status == 200, found


async def test_a_hold_that_a_plan_tells_is_one_in_a_forecast(service: Running) -> None:
    """Of who has eaten little: it begins a little under maintenance, and is raised as the body recovers."""
    person = {
        **LIFTER,
        "sex": "female",
        "age_years": 37,
        "height_cm": 155,
        "weight_kg": 62.5,
        "body_fat": {"fat_fraction": 0.27, "method": "girths"},
        "activity": {"kind": "level", "level": "light"},
    }
    known = {"profile": person, "start_date": "2026-03-30", "current_intake_kcal": 1900}
    answer = await service.client.post("/v1/plans", json=known | {"phase": {"kind": "maintenance", "weeks": 4}})
    plan = answer.json()
    weeks = plan["phases"][0]["weeks"]
    assert weeks[0]["intake_kcal"] < plan["maintenance_kcal"]["mean"] - 25
    schedule = [
        {"weeks": 1, "intake_kcal": week["intake_kcal"], "carbohydrate_g": week["carbohydrate_g"]} for week in weeks
    ]
    question = {"kind": "path", "schedule": schedule}
    answer = await service.client.post("/v1/forecasts", json=known | {"question": question})
    found = answer.json()
    assert answer.status_code == 200, found
    assert mean(found["weeks"][-1]["at_end"], "fat_kg") == pytest.approx(mean(weeks[-1]["at_end"], "fat_kg"), abs=0.05)


# --- questions that cannot be asked -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("question", "code", "pointer"),
    [
        pytest.param(intake_for("weight_kg", 80, 1), "DATE_OUT_OF_REACH", "#/question/by_date", id="too-near"),
        pytest.param(intake_for("weight_kg", 80, -4), "DATE_OUT_OF_REACH", "#/question/by_date", id="past"),
        pytest.param(intake_for("weight_kg", 80, 160), "DATE_OUT_OF_REACH", "#/question/by_date", id="too-far"),
        pytest.param(
            path(*[(52, 2800)] * 4), "SCHEDULE_TOO_LONG", "#/question/schedule", id="four-years",
        ),
        pytest.param(
            path((4, 2500), carbohydrate_g=900), "NUTRIENTS_EXCEED_INTAKE",
            "#/question/schedule/0/intake_kcal", id="more-carbohydrate-than-food",
        ),
    ],
)  # fmt: skip
async def test_what_cannot_be_asked(service: Running, question: Json, code: str, pointer: str) -> None:
    status, problem = await send(service, question)
    assert status == 422, problem
    assert problem["type"] == "/problems/out-of-domain"
    assert [(fault["code"], fault["pointer"]) for fault in problem["errors"]] == [(code, pointer)]


# --- the cuts already done ----------------------------------------------------------------------------------------

FREQUENT: Json = {"cuts_last_12_months": 3, "weeks_since_last_cut": 6}
DEFICITS = {
    "path": path((4, 2400)),
    "intake_for_target": intake_for("weight_kg", 80.0, 6),
    "date_for_target": date_for("weight_kg", 80.5, 2400),
}


def of_history(found: Json) -> dict[str, float | None]:
    return {rail["code"]: rail["observed"] for rail in found["guard_rails"] if rail["id"] == "cut_history"}


@pytest.mark.parametrize("question", DEFICITS.values(), ids=DEFICITS)
async def test_a_deficit_is_warned_of_as_a_plan_is_by_the_cuts_already_done(service: Running, question: Json) -> None:
    found = (await send(service, question, cut_history=FREQUENT))[1]
    assert of_history(found) == {"WARNED_CUTS_A_YEAR": 4, "WARNED_RECENT_CUT": 6}
    assert of_history((await send(service, question, cut_history={"cuts_last_12_months": 1}))[1]) == {}
    # Whoever chose the deficit hears that the default one is advised; one that is ours keeps to it.
    is_ours = question["kind"] == "intake_for_target"
    said = "WARNED_HISTORY_UNKNOWN" if is_ours else "WARNED_HISTORY_NOT_TOLD"
    assert list(of_history((await send(service, question))[1])) == [said]


async def test_no_intake_is_told_under_the_default_deficit_where_past_cuts_are_not_known(service: Running) -> None:
    """Planning 7: history unknown, say so and keep to the default deficit of 500 kcal a day (common practice)."""
    question = intake_for("weight_kg", 79.0, 6)
    known = (await send(service, question, cut_history={"cuts_last_12_months": 0}))[1]
    assert known["feasible"]
    assert known["intake_kcal"] < 2800 - 550
    unknown = (await send(service, question))[1]
    assert (unknown["feasible"], unknown["intake_kcal"]) == (False, None)
    assert unknown["nearest"]["intake_kcal"] == pytest.approx(2800 - 500, abs=1)
    (why,) = (said for said in unknown["reasons"] if said["code"] == "TARGET_BEYOND_RAIL")
    assert (why["params"]["rule"], why["params"]["why"]) == ("cut_history", "history_unknown")
    # What is told can be asked for, and says the same of the history.
    again = (await send(service, path((6, unknown["nearest"]["intake_kcal"]))))[1]
    assert list(of_history(again)) == ["WARNED_HISTORY_NOT_TOLD"]


async def test_no_deficit_is_not_warned_of_by_the_cuts_already_done(service: Running) -> None:
    for more in ({"cut_history": FREQUENT}, {}):
        assert of_history((await send(service, path((4, 2800)), **more))[1]) == {}


async def test_a_deficit_just_before_counts_as_one_with_it(service: Running) -> None:
    """As in plans: two short ones with two weeks between them have the limits of a long one."""
    question, lean = path((5, 2160)), LIFTER | {"body_fat": {"fat_fraction": 0.12, "method": "dxa"}}
    before = {"cuts_last_12_months": 1, "weeks_since_last_cut": 2}
    apart = before | {"weeks_since_last_cut": 30}
    assert (await send(service, question, profile=lean, cut_history=apart))[0] == 200
    status, found = await send(service, question, profile=lean, cut_history=before)
    assert (status, found["errors"][0]["pointer"]) == (422, "#/question/schedule/0/intake_kcal")


async def test_cuts_along_a_path_are_counted(service: Running) -> None:
    """Cuts of three weeks with nine between them: the fourth of a year, and none soon after another."""
    question = path(*[(3, 2400), (9, 2800)] * 3, (3, 2400), (9, 2800))
    assert of_history((await send(service, question, cut_history={"cuts_last_12_months": 0}))[1]) == {
        "WARNED_CUTS_A_YEAR": 4
    }
    closer = path((3, 2400), (6, 2800), (3, 2400))
    assert of_history((await send(service, closer, cut_history={"cuts_last_12_months": 0}))[1]) == {
        "WARNED_RECENT_CUT": 6
    }
    one = path((3, 2400), (2, 2800), (3, 2400))
    assert of_history((await send(service, one, cut_history={"cuts_last_12_months": 0}))[1]) == {}


async def test_a_deficit_under_way_goes_on_whatever_is_told(service: Running) -> None:
    lean = LIFTER | {"body_fat": {"fat_fraction": 0.12, "method": "dxa"}}
    told = {"profile": lean, "screening": CLEAR, "maintenance": KNOWN, "cut_history": {"cuts_last_12_months": 0}}
    phase = {"kind": "mini_cut", "weeks": 5, "deficit_kcal": 500}
    plan = await service.client.post("/v1/plans", json=told | {"start_date": START.isoformat(), "phase": phase})
    later = (START + timedelta(weeks=4)).isoformat()
    asked = {"profile": lean, "state": plan.json()["state"], "start_date": later}
    for more in ({}, {"cut_history": {"cuts_last_12_months": 0}}):
        status, found = await send(service, path((5, 2160)), **asked, **more)
        assert status == 422, found


# --- the nearest date ---------------------------------------------------------------------------------------------


async def nearest(service: Running, question: Json, profile: Json, **more: Any) -> Json:
    status, found = await send(service, question, profile=LIFTER | profile, **{"maintenance": None} | more)
    assert (status, found["feasible"]) == (200, False), found
    return dict(found["nearest"])


async def test_water_of_the_first_days_is_no_date_for_a_target(service: Running) -> None:
    """Who ate less until now weighs as much within a day of eating more: no date that can be asked for is that near."""
    profile = {
        "sex": "female",
        "age_years": 43,
        "height_cm": 165,
        "weight_kg": 102.4,
        "body_fat": {"fat_fraction": 0.204, "method": "dxa"},
        "activity": {"kind": "level", "level": "sedentary"},
        "training": {"status": "novice", "resistance_sessions_per_week": 3},
    }
    question = intake_for("weight_kg", 102.611, 6) | {"by_date": "2026-04-14"}
    found = await nearest(service, question, profile, current_intake_kcal=2089)
    assert found["value"] > 102.611
    assert found["by_date"] is None or found["by_date"] >= question["by_date"]


async def test_a_date_before_the_one_asked_for_is_the_last_one_and_can_be_asked_for(service: Running) -> None:
    """A share of fat that is met on the first morning, and passed again on the way down from what a gain adds."""
    profile = {
        "sex": "female",
        "age_years": 37,
        "height_cm": 171,
        "weight_kg": 81.4,
        "body_fat": {"fat_fraction": 0.225, "method": "dxa"},
        "activity": {"kind": "level", "level": "active"},
        "training": {"status": "advanced", "resistance_sessions_per_week": 2},
    }
    more = {"maintenance": {"kcal_per_day": 3278, "standard_deviation_kcal": 100}, "current_intake_kcal": 2417}
    question = intake_for("fat_fraction", 0.225, 150) | {"by_date": "2029-01-21"}
    found = await nearest(service, question, profile, **more)
    assert "2027-01-01" < found["by_date"] < question["by_date"]
    again = await send(service, question | {"by_date": found["by_date"]}, profile=LIFTER | profile, **more)
    assert (again[0], again[1]["feasible"]) == (200, True)
