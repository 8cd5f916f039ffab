"""`POST /v1/plans`: what is refused, with its problem and place, and the media types of the answer."""

import csv
import io
import re
from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from uuid import UUID

import httpx
import icalendar
import pytest
from in_process import Running
from request_people import CLEAR, LIFTER, Json
from steelyard.http.rendering.formats.plan_table import HEADER

PATH = "/v1/plans"
DOCUMENTS = ("text/calendar", "text/csv", "text/markdown")
FORMATS = ("application/json", *DOCUMENTS)


def asked(phase: Json, profile: Json | None = None, **fields: Any) -> Json:
    """A request for a plan from 2 March 2026."""
    return {
        "profile": LIFTER | (profile or {}),
        "screening": CLEAR,
        "start_date": "2026-03-02",
        "phase": phase,
        "cut_history": {"cuts_last_12_months": 0},
    } | fields


def mini(**fields: Any) -> Json:
    return {"kind": "mini_cut"} | fields


def cut(**fields: Any) -> Json:
    return {"kind": "cut"} | fields


async def post(service: Running, body: Json, accept: str = "application/json") -> httpx.Response:
    path = PATH if accept == "application/json" else f"{PATH}/document"
    return await service.client.post(path, json=body, headers={"accept": accept})


# --- requests that contradict themselves --------------------------------------------------------------------------

CONTRADICTIONS = [
    ("two goals", asked(mini(fat_loss_kg=1.5, target_weight_kg=80)), "#/phase/target_weight_kg", "SEVERAL_GOALS"),
    (
        "three goals",
        asked(cut(fat_loss_kg=3, target_fat_fraction=0.15, target_weight_kg=78)),
        "#/phase/target_fat_fraction",
        "SEVERAL_GOALS",
    ),
    ("two times", asked(mini(weeks=4, event_date="2026-05-01")), "#/phase/event_date", "SEVERAL_TIMES"),
    (
        "goal, weeks and deficit",
        asked(mini(fat_loss_kg=1.5, weeks=4, deficit_kcal=500)),
        "#/phase/deficit_kcal",
        "PHASE_OVERDETERMINED",
    ),
    ("a pace and a deficit", asked(mini(weeks=4, deficit_kcal=500, pace="brisk")), "#/phase/pace", "SIZE_AND_PACE"),
    ("a pace for what is settled", asked(cut(fat_loss_kg=3, weeks=9, pace="gentle")), "#/phase/pace", "SIZE_AND_PACE"),
    (
        "a pace and a surplus",
        asked({"kind": "gain", "surplus_kcal": 200, "pace": "brisk"}),
        "#/phase/pace",
        "SIZE_AND_PACE",
    ),
    ("nothing but easing in", asked(mini(weeks=2, easing_in_weeks=2)), "#/phase/easing_in_weeks", "EASING_FILLS_PHASE"),
    (
        "easing in for all that is left",
        asked(mini(weeks_done=5, easing_in_weeks=1)),
        "#/phase/easing_in_weeks",
        "EASING_FILLS_PHASE",
    ),
    ("a mini-cut of a week", asked(mini(weeks=1)), "#/phase/weeks", "TOO_SHORT_FOR_KIND"),
    ("a cut of four weeks", asked(cut(weeks=4)), "#/phase/weeks", "TOO_SHORT_FOR_KIND"),
    ("a cut of five weeks in all", asked(cut(weeks=2, weeks_done=3)), "#/phase/weeks", "TOO_SHORT_FOR_KIND"),
    ("a mini-cut of eight weeks in all", asked(mini(weeks=4, weeks_done=4)), "#/phase/weeks", "TOO_LONG_FOR_KIND"),
    ("breaks without interval", asked(cut(weeks=12, break_weeks=2)), "#/phase/break_weeks", "BREAKS_WITHOUT_INTERVAL"),
    (
        "an event on the first day",
        asked(mini(event_date="2026-03-02")),
        "#/phase/event_date",
        "EVENT_BEFORE_START",
    ),
    ("an event before the start", asked(cut(event_date="2025-12-24")), "#/phase/event_date", "EVENT_BEFORE_START"),
    (
        "an event in three weeks less a day",
        asked(mini(event_date="2026-03-22")),
        "#/phase/event_date",
        "EVENT_TOO_SOON",
    ),
    ("an event too soon for a cut", asked(cut(event_date="2026-04-20")), "#/phase/event_date", "EVENT_TOO_SOON"),
    (
        "an event too soon after a pause",
        asked(mini(event_date="2026-04-06"), pause={"weeks": 3}),
        "#/phase/event_date",
        "EVENT_TOO_SOON",
    ),
    ("a cut to a higher weight", asked(mini(target_weight_kg=83)), "#/phase/target_weight_kg", "TARGET_ON_WRONG_SIDE"),
    (
        "a cut to the present weight",
        asked(cut(target_weight_kg=82)),
        "#/phase/target_weight_kg",
        "TARGET_ON_WRONG_SIDE",
    ),
    (
        "a cut to more body fat",
        asked(cut(target_fat_fraction=0.19)),
        "#/phase/target_fat_fraction",
        "TARGET_ON_WRONG_SIDE",
    ),
    (
        "a gain to a lower weight",
        asked({"kind": "gain", "target_weight_kg": 81}),
        "#/phase/target_weight_kg",
        "TARGET_ON_WRONG_SIDE",
    ),
    ("more fat than there is", asked(cut(fat_loss_kg=20)), "#/phase/fat_loss_kg", "GOAL_BEYOND_BODY"),
    (
        "a pause of a hold",
        asked({"kind": "maintenance", "weeks": 4}, pause={"weeks": 1}),
        "#/pause",
        "PAUSE_OF_HOLD",
    ),
]


@pytest.mark.parametrize(
    ("body", "pointer", "code"), [row[1:] for row in CONTRADICTIONS], ids=[row[0] for row in CONTRADICTIONS]
)
async def test_a_request_that_contradicts_itself(service: Running, body: Json, pointer: str, code: str) -> None:
    answer = await post(service, body)
    problem = answer.json()
    assert answer.status_code == 422, problem
    assert answer.headers["content-type"] == "application/problem+json"
    assert problem["type"] == "/problems/contradiction"
    assert [(error["pointer"], error["code"]) for error in problem["errors"]] == [(pointer, code)]


OUT_OF_DOMAIN = [
    ("a start too early", asked(mini(), start_date="1999-12-31"), "#/start_date", "DATE_OUT_OF_RANGE"),
    ("a start too late", asked(mini(), start_date="2101-01-01"), "#/start_date", "DATE_OUT_OF_RANGE"),
    ("an event out of range", asked(mini(event_date="2101-01-01")), "#/phase/event_date", "DATE_OUT_OF_RANGE"),
    ("an event in four years", asked(mini(event_date="2030-03-02")), "#/phase/event_date", "EVENT_TOO_FAR"),
]


@pytest.mark.parametrize(
    ("body", "pointer", "code"), [row[1:] for row in OUT_OF_DOMAIN], ids=[row[0] for row in OUT_OF_DOMAIN]
)
async def test_dates_have_limits(service: Running, body: Json, pointer: str, code: str) -> None:
    answer = await post(service, body)
    problem = answer.json()
    assert answer.status_code == 422, problem
    assert problem["type"] == "/problems/out-of-domain"
    assert [(error["pointer"], error["code"]) for error in problem["errors"]] == [(pointer, code)]


SCHEMA = [
    ("no phase", asked(mini()) | {"phase": None}, "#/phase"),
    ("a kind of its own", asked({"kind": "recomposition"}), "#/phase/kind"),
    ("a mini-cut of seven weeks", asked(mini(weeks=7)), "#/phase/weeks"),
    ("a cut of 27 weeks", asked(cut(weeks=27)), "#/phase/weeks"),
    ("a hold of no length", asked({"kind": "maintenance"}), "#/phase/weeks"),
    ("a gain of 53 weeks", asked({"kind": "gain", "weeks": 53}), "#/phase/weeks"),
    ("breaks of a mini-cut", asked(mini(break_every_weeks=2)), "#/phase/break_every_weeks"),
    ("a date that is none", asked(mini(event_date="2026-02-30")), "#/phase/event_date"),
    ("a pause of 13 weeks", asked(mini(), pause={"weeks": 13}), "#/pause/weeks"),
    ("seven higher days", asked(mini(), day_split={"higher_days_per_week": 7}), "#/day_split/higher_days_per_week"),
    ("a shift of everything", asked(mini(), day_split={"higher_days_per_week": 3, "carbohydrate_shift": 1}),
     "#/day_split/carbohydrate_shift"),
    ("weeks done below none", asked(mini(weeks_done=-1)), "#/phase/weeks_done"),
]  # fmt: skip


@pytest.mark.parametrize(("body", "pointer"), [row[1:] for row in SCHEMA], ids=[row[0] for row in SCHEMA])
async def test_a_body_against_the_schema(service: Running, body: Json, pointer: str) -> None:
    answer = await post(service, body)
    problem = answer.json()
    assert answer.status_code == 400, problem
    assert problem["type"] == "/problems/schema-violation"
    assert problem["errors"][0]["pointer"] == pointer


# --- guard rails ----------------------------------------------------------------------------------------------------

PAST_DISORDER = CLEAR | {"eating_disorder": "past"}
CEILING: Json = {"kind": "gain", "weeks": 8, "fat_ceiling_fraction": 0.2}
HOLD: Json = {"kind": "maintenance", "weeks": 4}
SPLIT: Json = {"higher_days_per_week": 4, "carbohydrate_shift": 0.3}
# 17.9 kg/m2, whatever the profile says.
THIN_LOG = {"weights": [{"date": f"2026-02-{day:02}", "weight_kg": 58.0} for day in range(1, 29)]}
RAILS = [
    ("a body-fat target with an eating disorder", asked(cut(target_fat_fraction=0.12), screening=PAST_DISORDER),
     "eating_disorder", "#/screening/eating_disorder"),
    ("a body-fat target under 18", asked(mini(target_fat_fraction=0.15), {"age_years": 17}), "age",
     "#/profile/age_years"),
    ("a weight target under 18", asked(mini(target_weight_kg=80), {"age_years": 17}), "age", "#/profile/age_years"),
    ("a ceiling on body fat under 18", asked(CEILING, {"age_years": 16}), "age", "#/phase/fat_ceiling_fraction"),
    ("a ceiling on body fat with an eating disorder", asked(CEILING, screening=PAST_DISORDER), "eating_disorder",
     "#/phase/fat_ceiling_fraction"),
    ("a ceiling on the gain after a hold", asked(HOLD, {"age_years": 16}, return_to_gain={"fat_ceiling_fraction": 0.2}),
     "age", "#/return_to_gain/fat_ceiling_fraction"),
    ("a target under the least body fat", asked(cut(target_fat_fraction=0.05)), "body_fat",
     "#/phase/target_fat_fraction"),
    ("unanswered screening", asked(mini(), screening=None), "screening_unanswered", "#/screening"),
    ("a gain, unscreened", asked({"kind": "gain", "weeks": 8}, screening=None), "screening_unanswered", "#/screening"),
    ("pregnancy", asked(mini(), {"sex": "female"}, screening=CLEAR | {"is_pregnant": True}), "pregnancy_lactation",
     "#/screening/is_pregnant"),
    ("a listed medicine", asked(cut(), screening=CLEAR | {"medicines": ["lithium"]}), "medical",
     "#/screening/medicines"),
    ("65 without clearance", asked(cut(), {"age_years": 65}), "age", "#/profile/age_years"),
    ("lower days of a hold, unscreened", asked(HOLD, screening=None, day_split=SPLIT), "screening_unanswered",
     "#/screening"),
    ("lower days of a gain under 18", asked({"kind": "gain"}, {"age_years": 17}, day_split=SPLIT), "age",
     "#/profile/age_years"),
    ("underweight as told", asked(mini(), {"weight_kg": 58}), "bmi", "#/profile/weight_kg"),
    ("underweight by the log", asked(mini(), log=THIN_LOG), "bmi", "#/log"),
]  # fmt: skip


@pytest.mark.parametrize(("body", "rule", "pointer"), [row[1:] for row in RAILS], ids=[row[0] for row in RAILS])
async def test_a_rail_refuses_and_names_itself(service: Running, body: Json, rule: str, pointer: str) -> None:
    answer = await post(service, body)
    problem = answer.json()
    assert answer.status_code == 422, problem
    assert problem["type"] == f"/problems/guard-rail/{rule}"
    assert problem["errors"][0]["pointer"] == pointer


async def test_a_weight_of_the_state_that_refuses_is_pointed_at(service: Running) -> None:
    held = (await post(service, asked(HOLD, {"weight_kg": 61}))).json()
    lost_kg = 4.0
    state = held["state"]
    for part in ("weight_kg", "lean_kg"):
        state[part]["mean"] -= lost_kg
    refused = (await post(service, asked(mini(), {"weight_kg": 61}, state=state))).json()
    assert [error["pointer"] for error in refused["errors"]] == ["#/state/weight_kg"]


@pytest.mark.parametrize(
    "body",
    [
        pytest.param(asked({"kind": "gain", "weeks": 8}, {"age_years": 16}), id="gain-under-18"),
        pytest.param(asked({"kind": "gain", "weeks": 8}, screening=PAST_DISORDER), id="gain-with-a-disorder"),
        pytest.param(asked(HOLD, {"age_years": 16}), id="hold-under-18"),
    ],
)
async def test_without_a_body_fat_target_none_is_named(service: Running, body: Json) -> None:
    answer = await post(service, body)
    assert answer.status_code == 200, answer.json()
    codes = {note["code"] for phase in answer.json()["phases"] for note in phase["ends_early_when"]}
    assert not {"CEILING_REACHED", "CEILING_NOT_REACHED"} & codes


@pytest.mark.parametrize(
    ("phase", "is_target"),
    [
        ({"kind": "mini_cut", "weeks": 4}, False),
        ({"kind": "cut", "weeks": 10}, False),
        ({"kind": "mini_cut"}, False),
        ({"kind": "mini_cut", "fat_loss_kg": 1.5}, True),
        ({"kind": "mini_cut", "fat_loss_kg": 1.5, "weeks": 5}, True),
        ({"kind": "cut", "target_fat_fraction": 0.15}, True),
    ],
)
async def test_what_a_length_is_expected_to_lose_ends_nothing(service: Running, phase: Json, is_target: bool) -> None:
    # Planning 3: a length alone has no fat target; a forecast is never turned into one.
    lean = {"body_fat": {"fat_fraction": 0.2, "method": "dxa"}}
    answer = await post(service, asked(phase, lean))
    assert answer.status_code == 200, answer.json()
    codes = [note["code"] for note in answer.json()["phases"][0]["ends_early_when"]]
    assert ("END_AT_TARGET" in codes) is is_target
    assert "END_ON_SIGNS" in codes


async def test_a_hold_of_a_length_has_that_length(service: Running) -> None:
    """Before a gain that its ceiling left out, ten weeks at maintenance became twenty-two."""
    for fat, kinds in ((0.13, ["maintenance", "gain"]), (0.22, ["maintenance"])):
        body = asked({"kind": "maintenance", "weeks": 10}, {"body_fat": {"fat_fraction": fat, "method": "dxa"}})
        plan = (await post(service, body)).json()
        assert [phase["kind"] for phase in plan["phases"]] == kinds
        assert len(plan["phases"][0]["weeks"]) == len(plan["state"]["phase"]["weeks"]) == 10
        held = "HELD_AT_CEILING" in {reason["code"] for reason in plan["phases"][0]["reasons"]}
        assert held is (kinds == ["maintenance"])


async def test_a_hold_unscreened_stays_a_hold(service: Running) -> None:
    lean = {"body_fat": {"fat_fraction": 0.14, "method": "dxa"}}
    held = (await post(service, asked(HOLD, lean, screening=None))).json()
    assert [phase["kind"] for phase in held["phases"]] == ["maintenance"]
    rail = next(rail for rail in held["guard_rails"] if rail["id"] == "screening_unanswered")
    assert (rail["action"], rail["limit"], rail["observed"]) == ("capped", 0, 12)
    answered = (await post(service, asked(HOLD, lean))).json()
    assert [phase["kind"] for phase in answered["phases"]] == ["maintenance", "gain"]
    over = (await post(service, asked(HOLD))).json()
    assert [phase["kind"] for phase in over["phases"]] == ["maintenance"]
    assert "HELD_AT_CEILING" in {reason["code"] for reason in over["reasons"]}
    assert not [rail for rail in answered["guard_rails"] if rail["id"] == "screening_unanswered"]


@pytest.mark.parametrize(("fat_fraction", "kinds"), [(0.16, ["maintenance", "gain"]), (0.3, ["maintenance"])])
async def test_what_follows_a_mini_cut_gains_below_the_ceiling_alone_and_says_so(
    service: Running, fat_fraction: float, kinds: list[str]
) -> None:
    found = (
        await post(service, asked(mini(weeks=4), {"body_fat": {"fat_fraction": fat_fraction, "method": "dxa"}}))
    ).json()
    assert [phase["kind"] for phase in found["phases"]] == ["mini_cut", *kinds]
    said = {reason["code"] for reason in found["reasons"]}
    assert ("HELD_AFTER_CUT" in said) == ("gain" not in kinds)
    assert "HELD_AT_CEILING" not in said


@pytest.mark.parametrize(
    ("profile", "more", "why"),
    [
        ({}, {}, "HELD_AT_CEILING"),
        ({"age_years": 16}, {}, "GAIN_NOT_NOW"),
        ({}, {"screening": PAST_DISORDER}, "GAIN_NOT_NOW"),
    ],
    ids=["adult", "minor", "eating disorder"],
)
async def test_no_gain_is_planned_for_a_body_over_its_usual_ceiling(
    service: Running, profile: Json, more: Json, why: str
) -> None:
    """No other ceiling asked for; whoever may hear of no body fat does not, and is not fattened for it."""
    fat = {"body_fat": {"fat_fraction": 0.3, "method": "dxa"}}
    found = (await post(service, asked({"kind": "gain", "weeks": 12}, {**profile, **fat}, **more))).json()
    assert [phase["kind"] for phase in found["phases"]] == ["maintenance"]
    assert why in {reason["code"] for reason in found["reasons"]}
    assert not any("fat" in reason["text"] for reason in found["reasons"] if reason["code"] == "GAIN_NOT_NOW")
    lean = {"body_fat": {"fat_fraction": 0.13, "method": "dxa"}}
    found = (await post(service, asked({"kind": "gain", "weeks": 12}, {**profile, **lean}, **more))).json()
    assert [phase["kind"] for phase in found["phases"]] == ["gain"]


PREGNANT = CLEAR | {"is_pregnant": True}
NURSING = CLEAR | {"is_breastfeeding": True}


@pytest.mark.parametrize(
    ("body", "kinds"),
    [
        (asked(mini(weeks=4), pause={"weeks": 2}), {"maintenance", "mini_cut"}),
        (asked(HOLD), {"maintenance"}),
        (asked(HOLD, {"sex": "female", "weight_kg": 62.0, "height_cm": 168}, screening=PREGNANT), {"maintenance"}),
        (asked(HOLD, {"sex": "female", "weight_kg": 62.0, "height_cm": 168}, screening=NURSING), {"maintenance"}),
        (asked(HOLD, {"age_years": 16, "body_fat": None}), {"maintenance"}),
        (asked(HOLD, screening=PAST_DISORDER), {"maintenance"}),
        (asked({"kind": "gain", "weeks": 8}, {"body_fat": {"fat_fraction": 0.14, "method": "dxa"}}), {"gain"}),
        (asked(HOLD, screening=None), {"maintenance"}),
    ],
    ids=["cut after a pause", "hold", "pregnant", "nursing", "minor", "disorder", "gain", "unscreened"],
)
async def test_every_phase_has_its_reasons_a_training_reminder_and_what_ends_it(
    service: Running, body: Json, kinds: set[str]
) -> None:
    # Planning 3 asks each phase for them; a hold had no reminder and no end, and one that a floor raised no reason.
    answer = (await post(service, body)).json()
    assert kinds <= {phase["kind"] for phase in answer["phases"]}
    for phase in answer["phases"]:
        assert phase["reasons"], phase["kind"]
        assert any(note["code"].startswith("TRAIN_IN") for note in phase["guidance"]), phase["kind"]
        if phase["kind"] != "gain" or body["screening"] == CLEAR:
            assert phase["ends_early_when"], phase["kind"]


@pytest.mark.parametrize(
    ("phase", "is_offered"),
    [
        (cut(weeks=10), True),
        (cut(weeks=12, break_every_weeks=4), False),
        (mini(weeks=5), False),
    ],
)
async def test_breaks_are_offered_in_a_cut_without_them(service: Running, phase: Json, is_offered: bool) -> None:
    # Planning 3: more than six weeks is planned as a cut, with breaks offered.
    planned = (await post(service, asked(phase, {"body_fat": {"fat_fraction": 0.26, "method": "dxa"}}))).json()
    notes = planned["phases"][0]
    assert ("BREAKS_OFFERED" in {note["code"] for note in notes["guidance"]}) is is_offered
    assert ("BREAKS_WHY" in {note["code"] for note in notes["reasons"]}) is ("break_every_weeks" in phase)


async def test_in_pregnancy_no_rate_of_gain_is_told(service: Running) -> None:
    # Planning 7: gestational gain is not "faster"; the rate told is of fat and lean tissue alone.
    woman = {"sex": "female", "weight_kg": 62.0, "height_cm": 168, "body_fat": {"fat_fraction": 0.24, "method": "dxa"}}
    for screening, told in ((PREGNANT, False), (NURSING, True)):
        answer = (await post(service, asked(HOLD, woman, screening=screening))).json()
        (gained,) = [phase for phase in answer["phases"] if phase["kind"] == "gain"]
        codes = {note["code"] for note in [*gained["guidance"], *gained["reasons"]]}
        assert any(code.startswith(("RETURN_CHECKS", "GAIN_RATE_EXPECTED")) for code in codes) is told


@pytest.mark.parametrize(("weeks", "is_checked"), [(3, False), (4, True)])
async def test_a_return_is_checked_on_days_that_it_has(service: Running, weeks: int, is_checked: bool) -> None:
    lean = {"body_fat": {"fat_fraction": 0.15, "method": "dxa"}}
    answer = (await post(service, asked(mini(weeks=3), lean, return_to_gain={"gain_weeks": weeks}))).json()
    gained = answer["phases"][-1]
    assert (gained["kind"], len(gained["weeks"])) == ("gain", weeks)
    dates = [note["params"] for note in gained["guidance"] if note["code"] == "RETURN_CHECKS"]
    assert bool(dates) is is_checked
    assert all(note["second_date"] <= (date.fromisoformat(gained["end_date"]) + timedelta(days=1)).isoformat()
               for note in dates)  # fmt: skip


@pytest.mark.parametrize(("deficit", "is_warned"), [(750, False), (900, True)])
async def test_a_mini_cut_larger_than_usual_is_flagged(service: Running, deficit: float, is_warned: bool) -> None:
    # Planning 3: more aggressive up to about 750, and larger only inside the guard rails and flagged.
    heavy = {"weight_kg": 120.0, "height_cm": 190, "body_fat": {"fat_fraction": 0.3, "method": "dxa"}}
    active = {"activity": {"kind": "level", "level": "active"}}
    answer = (await post(service, asked(mini(weeks=4, deficit_kcal=deficit), heavy | active))).json()
    assert answer["deficit_kcal"] == deficit
    rails = [rail for rail in answer["guard_rails"] if rail["code"] == "WARNED_LARGE_DEFICIT"]
    assert [(rail["action"], rail["observed"], rail["limit"]) for rail in rails] == (
        [("warned", deficit, 750)] if is_warned else []
    )


async def test_a_deficit_is_said_to_shrink_only_where_it_does(service: Running) -> None:
    async def shrinking(phase: Json, **more: Any) -> tuple[list[Json], list[Json]]:
        answer = (await post(service, asked(phase, **more))).json()
        cut = answer["phases"][0]
        return [note for note in cut["reasons"] if note["code"] == "SHRINKING_DEFICIT"], cut["weeks"]

    (note,), weeks = await shrinking(mini(weeks=5, easing_in_weeks=2))
    assert note["params"]["first_kcal"] == pytest.approx(-weeks[2]["energy_balance_kcal"], abs=0.6)
    assert "first full week" in note["text"]
    assert not (await shrinking(mini(weeks=3, easing_in_weeks=2)))[0]
    assert not (await shrinking(mini(weeks=4, deficit_kcal=200), current_intake_kcal=1500))[0]


async def test_maintenance_after_a_cut_is_not_told_to_be_less_than_nothing_lower(service: Running) -> None:
    body = asked(mini(weeks=2), current_intake_kcal=5500, maintenance={
        "kcal_per_day": 2500, "standard_deviation_kcal": 120,
    })  # fmt: skip
    answer = (await post(service, body)).json()
    codes = {note["code"]: note["params"] for note in answer["phases"][1]["reasons"]}
    assert "MAINTENANCE_WHY" not in codes
    assert codes["MAINTENANCE_NOT_LOWER"]["maintenance_kcal"] > 2500


LOGGED: Json = {
    "weights": [{"date": f"2026-02-{day:02}", "weight_kg": 82.0} for day in range(1, 29)],
    "intakes": [{"date": f"2026-02-{day:02}", "intake_kcal": 2700} for day in range(1, 29)],
}


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ({}, True),
        ({"log": {"weights": LOGGED["weights"]}}, True),
        ({"log": LOGGED}, False),
        ({"maintenance": {"kcal_per_day": 2800, "standard_deviation_kcal": 120}}, False),
        ({"screening": CLEAR | {"is_pregnant": True}}, False),
    ],
    ids=["no log", "weights alone", "log", "told", "pregnant"],
)
async def test_without_a_log_a_plan_is_provisional_and_says_until_when(
    service: Running, more: Json, told: bool
) -> None:
    # Planning 1: without a log a plan is provisional and says on which day the log will take over.
    body = asked(HOLD, **more)
    answer = (await post(service, body)).json()
    found = [note for note in answer["cautions"] if note["code"] == "PLAN_PROVISIONAL"]
    assert [note["params"]["date"] for note in found] == (["2026-03-30"] if told else [])
    for media in ("text/markdown", "text/calendar"):
        text = (await post(service, body, media)).text.replace("\r\n ", "")
        assert ("provisional" in text) is told


async def test_who_is_not_to_weigh_daily_hears_of_the_log_without_it(service: Running) -> None:
    answer = (await post(service, asked(HOLD, screening=PAST_DISORDER))).json()
    (note,) = [note for note in answer["cautions"] if note["code"].startswith("PLAN_PROVISIONAL")]
    assert note["code"] == "PLAN_PROVISIONAL_SPARED"
    assert "Weigh" not in note["text"]
    assert "30 March 2026" in note["text"]


@pytest.mark.parametrize("tag", ["en", "de", "es"])
async def test_the_weeks_past_a_ceiling_are_a_hold_in_every_form(service: Running, tag: str) -> None:
    near = {"body_fat": {"fat_fraction": 0.15, "method": "dxa"}}
    body = asked({"kind": "gain", "weeks": 40, "fat_ceiling_fraction": 0.16}, near)
    found = (await post(service, body)).json()
    gained, held = found["phases"]
    assert (gained["kind"], held["kind"]) == ("gain", "maintenance")
    assert max(week["at_end"]["fat_fraction"]["mean"] for week in gained["weeks"][:-1]) < 0.16
    assert {week["element"] for week in held["weeks"]} == {"maintenance"}
    headers = {"accept-language": tag, "accept": "text/markdown"}
    told = (await service.client.post(f"{PATH}/document", json=body, headers=headers)).text
    names = {"en": ("Gain", "Maintenance"), "de": ("Aufbau", "Erhaltung"), "es": ("Volumen", "Mantenimiento")}[tag]
    assert re.findall(rf"^#+ ({'|'.join(names)})\b", told, re.MULTILINE) == list(names)


@pytest.mark.parametrize(
    ("profile", "more", "is_careful"),
    [
        ({"age_years": 16, "sex": "male"}, {}, True),
        ({"age_years": 16, "sex": "female", "height_cm": 164}, {}, True),
        ({"sex": "male", "age_years": 30}, {"screening": PAST_DISORDER}, False),
        ({"sex": "male", "age_years": 30}, {}, False),
    ],
    ids=["boy", "girl", "eating disorder", "adult"],
)
async def test_a_minor_gains_only_where_height_and_weight_put_them_under_the_ceiling(
    service: Running, profile: Json, more: Json, is_careful: bool
) -> None:
    """Body fat from height and weight errs by some eight points; no diet may take a minor's gain back again."""

    async def kinds(bmi: float) -> list[str]:
        who = {"height_cm": 176, "body_fat": None, **profile}
        who["weight_kg"] = round(bmi * (who["height_cm"] / 100.0) ** 2, 1)
        answer = await post(service, asked({"kind": "gain", "weeks": 4}, who, **more))
        assert answer.status_code == 200, answer.json()
        return [phase["kind"] for phase in answer.json()["phases"]]

    assert await kinds(20.0) == ["gain"]
    # At 16 overweight begins at a body mass index of about 24 (from memory); nearly all with 27 are over a ceiling.
    assert await kinds(27.0) == (["maintenance"] if is_careful else ["gain"])
    assert await kinds(36.0) == ["maintenance"]


async def test_a_size_left_open_is_explained_and_others_are_offered(service: Running) -> None:
    answer = (await post(service, asked(mini(weeks=4), include=["sizes"]))).json()
    (chosen,) = [note for note in answer["reasons"] if note["code"] == "DEFICIT_CHOSEN"]
    assert chosen["params"]["deficit_kcal"] == answer["deficit_kcal"]
    (planned,) = [size for size in answer["sizes"] if size["is_planned"]]
    assert planned["size"] == "steady"
    assert planned["change"] == answer["phases"][0]["change"]
    assert planned["at_end"] == answer["phases"][0]["weeks"][-1]["at_end"]
    brisk = (await post(service, asked(mini(weeks=4, pace="brisk")))).json()
    (offered,) = [size for size in answer["sizes"] if size["size"] == "brisk"]
    assert brisk["deficit_kcal"] == offered["deficit_kcal"] > answer["deficit_kcal"]
    assert brisk["phases"][0]["change"] == offered["change"]
    summary = await post(service, asked(mini(weeks=4)), "text/markdown")
    assert "## Other sizes, and their price" in summary.text


async def test_what_to_choose_from_is_worked_out_where_it_is_asked_for(service: Running) -> None:
    plain = (await post(service, asked(mini(weeks=4)))).json()
    assert plain["sizes"] == plain["levers"] == []
    for include in (["sizes"], ["levers"], ["levers", "sizes"]):
        answer = (await post(service, asked(mini(weeks=4), include=include))).json()
        assert [name for name in ("levers", "sizes") if answer[name]] == sorted(include)
        assert answer["phases"] == plain["phases"]
        assert set(answer["methods"]) >= set(plain["methods"])


async def test_what_cannot_be_included_is_refused_with_what_can(service: Running) -> None:
    refused = await post(service, asked(mini(weeks=4), include=["prices"]))
    assert refused.status_code == 400
    (error,) = refused.json()["errors"]
    assert error["pointer"] == "#/include/0"
    assert (error["code"], error["params"]["accepted"]) == ("NOT_A_CHOICE", "one of sizes, levers")


# --- what is consistent, and reached by no safe plan ----------------------------------------------------------------


@pytest.mark.parametrize(
    "body",
    [
        pytest.param(asked(mini(fat_loss_kg=6, weeks=3)), id="too-much-fat"),
        pytest.param(asked(mini(target_weight_kg=70)), id="too-light"),
        pytest.param(
            asked({"kind": "gain", "weeks": 2, "target_weight_kg": 95, "fat_ceiling_fraction": 0.3}), id="too-heavy"
        ),
        pytest.param(asked(mini(weeks_done=6)), id="used-up"),
    ],
)
@pytest.mark.parametrize("accept", FORMATS)
async def test_the_infeasible_is_answered(service: Running, body: Json, accept: str) -> None:
    answer = await post(service, body, accept)
    assert answer.status_code == 200, answer.text
    if accept == "application/json":
        assert answer.json()["feasible"] is False
        assert answer.json()["nearest"] is not None
        assert len(answer.json()["reasons"]) > 1
    else:
        unfolded = answer.text.replace("\r\n ", "")
        assert "not medical advice" in unfolded
        assert "No safe plan does what was asked" in unfolded


# --- media types ----------------------------------------------------------------------------------------------------

PLAN = asked(
    cut(weeks=10, break_every_weeks=5, easing_in_weeks=1),
    pause={"weeks": 2, "reason": "travel"},
    day_split=SPLIT,
    return_to_gain={"maintenance_weeks": 2, "gain_weeks": 6},
    include=["sizes", "levers"],
)


@pytest.mark.parametrize("accept", FORMATS)
async def test_every_format_carries_the_cautions(service: Running, accept: str) -> None:
    answer = await post(service, PLAN, accept)
    said = (await post(service, PLAN)).json()
    assert answer.status_code == 200
    assert answer.headers["content-type"].partition(";")[0] == accept
    varies = [name.strip().lower() for name in answer.headers.get("vary", "").split(",")]
    assert ("accept" in varies) is (accept != "application/json")
    assert answer.headers["steelyard-fingerprint"] == said["fingerprint"]
    unfolded = answer.text.replace("\r\n ", "").replace("\\,", ",").replace("\\;", ";")
    for note in [*said["cautions"], *(note for phase in said["phases"] for note in phase["cautions"])]:
        assert note["text"] in unfolded
    for rail in said["guard_rails"]:
        assert rail["text"].split("(")[0] in unfolded


async def test_the_same_request_gives_the_same_bytes(service: Running) -> None:
    for accept in FORMATS:
        assert (await post(service, PLAN, accept)).content == (await post(service, PLAN, accept)).content


@pytest.mark.parametrize(
    ("accept", "chosen"),
    [
        ("", "text/calendar"),
        ("*/*", "text/calendar"),
        ("text/*", "text/calendar"),
        ("text/csv;q=0.5, text/markdown", "text/markdown"),
        ("application/json, text/csv;q=0.2", "text/csv"),
        ("text/markdown;variant=CommonMark", "text/markdown"),
        ("*/*, text/calendar;q=0", "text/csv"),
        ("TEXT/CSV", "text/csv"),
        ("image/*", None),
        ("text/calendar;q=0", None),
    ],
)
async def test_accept_chooses(service: Running, accept: str, chosen: str | None) -> None:
    answer = await service.client.post(f"{PATH}/document", json=PLAN, headers={"accept": accept})
    if chosen is None:
        assert answer.status_code == 406
        assert all(f"`{name}`" in answer.json()["detail"] for name in DOCUMENTS)
        assert answer.headers["vary"].lower().startswith("accept")
    else:
        assert answer.headers["content-type"].partition(";")[0] == chosen


@pytest.mark.parametrize("accept", ["text/csv", "image/svg+xml", "text/*"])
async def test_a_plan_itself_is_json_alone(service: Running, accept: str) -> None:
    """So that a client generated from the contract knows the type of what it gets."""
    assert (await service.client.post(PATH, json=PLAN, headers={"accept": accept})).status_code == 406


async def test_a_refusal_is_a_problem_document_whatever_is_accepted(service: Running) -> None:
    answer = await post(service, asked(mini(), screening=None), "text/calendar")
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"


def typed(text: str) -> str:
    """``text`` with the minus signs and spaces of a keyboard."""
    return text.replace("−", "-").replace("\u00a0", " ")


def events_of(text: bytes) -> list[icalendar.Event]:
    parsed = icalendar.Calendar.from_ical(text)
    assert parsed["version"] == "2.0"
    assert not parsed.errors
    events = list(parsed.walk("VEVENT"))
    assert not [event.errors for event in events if event.errors]
    return events


async def test_the_calendar_has_an_event_for_each_phase_and_change_of_intake(service: Running) -> None:
    answer = await post(service, PLAN, "text/calendar")
    plan = (await post(service, PLAN)).json()
    # RFC 5545 3.1: lines end with CRLF and have 75 octets at most.
    lines = answer.content.split(b"\r\n")
    assert lines.pop() == b""
    assert not [line for line in lines if len(line) > 75 or b"\n" in line or b"\r" in line]
    events = events_of(answer.content)
    phases = [(phase["start_date"], phase["end_date"]) for phase in plan["phases"]]
    weeks = [week for phase in plan["phases"] for week in phase["weeks"]]
    changes = [
        week["start_date"]
        for before, week in zip([None, *weeks], weeks, strict=False)
        if before is None or eaten(before) != eaten(week)
    ]
    found = [(e["dtstart"].dt.isoformat(), (e["dtend"].dt - timedelta(days=1)).isoformat()) for e in events]
    assert found == phases + [(day, day) for day in changes]
    assert len(changes) > len(phases)
    for event in events:
        assert isinstance(event["dtstart"].dt, date)
        assert not isinstance(event["dtstart"].dt, datetime)  # all day
        assert event["dtstamp"].dt == datetime.combine(date(2026, 3, 2), time(), UTC)
        UUID(event["uid"])
    assert len({event["uid"] for event in events}) == len(events)


def eaten(week: Json) -> list[Any]:
    return [week[key] for key in ("intake_kcal", "protein_g", "carbohydrate_g", "fat_g", "fibre_g", "day_kinds")]


async def test_the_ids_of_events_belong_to_the_plan(service: Running) -> None:
    one, again = [events_of((await post(service, PLAN, "text/calendar")).content) for _ in range(2)]
    other = events_of((await post(service, asked(mini()), "text/calendar")).content)
    assert [event["uid"] for event in one] == [event["uid"] for event in again]
    assert not {event["uid"] for event in one} & {event["uid"] for event in other}


async def test_the_table_has_a_line_for_each_week(service: Running) -> None:
    answer = await post(service, PLAN, "text/csv")
    plan = (await post(service, PLAN)).json()
    assert answer.headers["content-type"] == "text/csv; charset=utf-8; header=present"
    # RFC 4180: CRLF after each record, as many fields in each.
    assert answer.content.endswith(b"\r\n")
    assert b"\n" not in answer.content.replace(b"\r\n", b"")
    header, *rows = csv.reader(io.StringIO(answer.text, newline=""), strict=True)
    assert tuple(header) == HEADER
    assert {len(row) for row in rows} == {len(header)}
    weeks = [(phase["kind"], week) for phase in plan["phases"] for week in phase["weeks"]]
    assert len(rows) == len(weeks)
    for row, (kind, week) in zip(rows, weeks, strict=True):
        cells = dict(zip(header, row, strict=True))
        assert cells["phase"] == kind
        assert cells["start_date"] == week["start_date"]
        assert cells["end_date"] == week["at_end"]["date"]
        assert int(cells["intake_kcal_per_day"]) == week["intake_kcal"]
        assert float(cells["weight_mean_kg"]) == week["at_end"]["weight_kg"]["mean"]
        assert float(cells["body_fat_upper_fraction"]) == week["at_end"]["fat_fraction"]["upper"]
        assert float(cells["energy_balance_kcal_per_day"]) == week["energy_balance_kcal"]


async def test_the_table_has_a_line_for_each_day_where_the_week_is_told(service: Running) -> None:
    party = {"weekday": "saturday", "kind": "party", "extra_kcal": 150, "alcohol_g": 20}
    body = asked(mini(deficit_kcal=400), week={"training": [{"weekday": "monday"}], "flexible_days": [party]})
    plan = (await post(service, body)).json()
    header, *rows = csv.reader(io.StringIO((await post(service, body, "text/csv")).text, newline=""), strict=True)
    assert tuple(header) == HEADER
    lines = [dict(zip(header, row, strict=True)) for row in rows]
    days = [line for line in lines if line["day"]]
    weeks = [week for phase in plan["phases"] for week in phase["weeks"]]
    told = [day for week in weeks for day in week["by_day"]]
    assert len(lines) - len(days) == len(weeks)
    assert len(days) == len(told) > 14
    for line, day in zip(days, told, strict=True):
        assert line["start_date"] == line["end_date"] == day["date"]
        for name in ("protein_g", "carbohydrate_g", "fat_g", "intake_kcal", "alcohol_g", "training_kcal"):
            assert float(line[f"{name}_per_day"]) == day[name]
        assert [int(each) for each in line["meals_protein_g"].split()] == day["meals_protein_g"]
        assert line["flexible"] == (day["flexible"] or "")
        assert line["weight_mean_kg"] == ""
        of_phase = next(each for each in lines if each["phase"] == line["phase"])
        assert line["cautions"] == of_phase["cautions"] != ""
    assert {line["flexible"] for line in days} == {"", "party"}


async def test_the_summary_has_the_phases_the_intakes_and_the_forecast(service: Running) -> None:
    text = typed((await post(service, PLAN, "text/markdown")).text)
    plan = (await post(service, PLAN)).json()
    for phase in plan["phases"]:
        assert f"| {phase['start_date']} | {phase['end_date']} | {len(phase['weeks'])} |" in text
        fat = phase["change"]["fat_kg"]
        mean, lower = (f"{tenth:+.1f}" if (tenth := round(fat[end], 1)) else "0.0" for end in ("mean", "lower"))
        assert f"{mean} kg ({lower} to " in text
        for week in phase["weeks"]:
            assert f"| {week['intake_kcal']:,} | {week['protein_g']} |" in text
        for note in phase["reasons"]:
            assert note["text"].split("`")[0] in text
    tables = [line for line in text.splitlines() if line.startswith("|")]
    assert {"## Phases", "## Intake", "## Forecast", "## Why", "## Cautions"} <= set(text.splitlines())
    assert len(tables) > len(plan["phases"]) + 10


@pytest.mark.parametrize(("language", "thousands"), [("de", "2."), ("es", "2."), ("en", "2,")])
@pytest.mark.parametrize("accept", DOCUMENTS)
async def test_a_document_is_in_the_language_of_the_caller(
    service: Running, accept: str, language: str, thousands: str
) -> None:
    """All of it; a table keeps its columns and codes, so that a program reads it whatever the language."""
    headers = {"accept": accept, "accept-language": f"{language}, fr;q=0.5"}
    answer = await service.client.post(f"{PATH}/document", json=PLAN, headers=headers)
    assert answer.headers["content-language"] == language
    assert "accept-language" in answer.headers["vary"].lower()
    text = answer.text.replace("\r\n ", "").replace("\\,", ",")
    if accept == "text/csv":
        assert text.startswith(",".join(HEADER))
        text = " ".join(cell for row in list(csv.reader(io.StringIO(answer.text, newline="")))[1:] for cell in row[-2:])
    else:
        assert thousands in text
        assert not re.search(r"\b[a-z]+_[a-z]+\b", text)  # no name in code
    english = re.search(r"\b(the|of|week|weeks|weight|day|lean|from|protein|until|you)\b", text)
    assert (english is not None) is (language == "en")


async def test_text_of_a_caller_forms_no_markup(service: Running) -> None:
    hostile = "<b>x</b> [a](http://b.test) | ![i](j)\n# title\r\nEND:VCALENDAR"
    clearance = {"given_by": "physician", "reason": hostile}
    screening = CLEAR | {"conditions": ["gout"], "clinical_clearance": clearance}
    body = asked(mini(), screening=screening)
    text = (await post(service, body, "text/markdown")).text
    assert "<b>" not in text.replace("\\<", "")
    assert "[a](" not in text.replace("\\[", "")
    assert "\n# title" not in text
    events = events_of((await post(service, body, "text/calendar")).content)
    assert len(events) >= 4
    rows = list(csv.reader(io.StringIO((await post(service, body, "text/csv")).text, newline=""), strict=True))
    assert {len(row) for row in rows} == {len(HEADER)}


# --- goals that are small for their kind ----------------------------------------------------------------------------


def told(notes: list[Json]) -> dict[str, Json]:
    return {note["code"]: note["params"] for note in notes}


@pytest.mark.parametrize("more", [{}, {"pace": "brisk"}, {"break_every_weeks": 3}])
async def test_a_small_goal_of_a_cut_is_met_and_not_passed(service: Running, more: Json) -> None:
    """The goal is what was asked for: a cut lasts seven weeks or more, so that it takes a small deficit, and a mini-cut
    would do."""
    plan = (await post(service, asked(cut(fat_loss_kg=1.2, **more)))).json()
    weeks, lost = plan["phases"][0]["weeks"], -plan["phases"][0]["change"]["fat_kg"]["mean"]
    assert len(weeks) == 7
    assert 1.2 <= lost + 0.05 <= 1.35
    said = told(plan["reasons"])
    assert said["GOAL_SMALL"] == {"weeks": 7}
    assert said["DEFICIT_SOLVED"]["deficit_kcal"] == plan["deficit_kcal"] < 350
    short = (await post(service, asked(mini(fat_loss_kg=1.2, pace=more.get("pace", "steady"))))).json()
    found = {"weeks": len(short["phases"][0]["weeks"]), "deficit_kcal": short["deficit_kcal"]}
    assert said["GOAL_FITS_MINI_CUT"] == found
    assert not {"GOAL_SMALL", "GOAL_FITS_MINI_CUT"} & set(told(short["reasons"]))


async def test_a_deficit_that_was_asked_for_stands_and_the_shorter_kind_is_named(service: Running) -> None:
    plan = (await post(service, asked(cut(fat_loss_kg=1.2, deficit_kcal=500)))).json()
    assert plan["deficit_kcal"] == 500
    said = told(plan["reasons"])
    assert "GOAL_SMALL" not in said
    assert said["GOAL_FITS_MINI_CUT"] == {"weeks": 5, "deficit_kcal": 500}


async def test_other_sizes_of_a_goal_do_not_go_past_it_for_a_week(service: Running) -> None:
    for phase in (mini(fat_loss_kg=0.3), cut(fat_loss_kg=1.2), cut(fat_loss_kg=2.4), mini(fat_loss_kg=1.2)):
        plan = (await post(service, asked(phase, include=["sizes"]))).json()
        for size in plan["sizes"]:
            lost = -size["change"]["fat_kg"]["mean"]
            a_week = lost / size["weeks"]
            assert lost - a_week < phase["fat_loss_kg"] + 0.05, (phase, size["size"])


# --- the nearest of what is infeasible ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("phase", "kind"),
    [
        (mini(fat_loss_kg=4, weeks=4), "cut"),
        (mini(fat_loss_kg=1.4, weeks=2), "mini_cut"),
        (mini(fat_loss_kg=1.8, weeks=2, weeks_done=4), "cut"),
        (cut(target_weight_kg=81.99), None),
    ],
)
async def test_the_nearest_weeks_are_named_with_their_kind(service: Running, phase: Json, kind: str | None) -> None:
    plan = (await post(service, asked(phase))).json()
    assert not plan["feasible"]
    assert plan["nearest"]["weeks_kind"] == kind
    if kind is None:
        assert not plan["nearest"]["weeks"]
        return
    weeks = plan["nearest"]["weeks"]
    assert (weeks + phase.get("weeks_done", 0) <= 6) is (kind == "mini_cut")
    again = phase | {"kind": kind, "weeks": weeks}
    assert (await post(service, asked(again))).json()["feasible"]


# --- beside the forecast --------------------------------------------------------------------------------------------


async def test_the_static_rule_counts_easing_in_as_half_and_breaks_as_nothing(service: Running) -> None:
    plan = (await post(service, asked(mini(weeks=4, deficit_kcal=500, easing_in_weeks=2)))).json()
    assert plan["rule_of_thumb"]["fat_loss_static_kg"] == pytest.approx(500 * 7 * 3 / 7700, abs=0.005)
    plan = (await post(service, asked(cut(weeks=9, deficit_kcal=500, break_every_weeks=4)))).json()
    elements = [week["element"] for week in plan["phases"][0]["weeks"]]
    weeks = elements.count("deficit")
    assert weeks < len(elements) == 9
    assert plan["rule_of_thumb"]["fat_loss_static_kg"] == pytest.approx(500 * 7 * weeks / 7700, abs=0.005)


async def test_what_makes_a_gain_uncertain_is_asked_at_its_end_and_not_at_that_of_a_pause(service: Running) -> None:
    lean = {"body_fat": {"fat_fraction": 0.12, "method": "dxa"}}
    sources = ["body_fat", "partition", "carried_mass"]
    at_once, later = [
        (await post(service, asked({"kind": "gain", "weeks": 16}, lean, uncertainty_sources=sources, **more))).json()
        for more in ({}, {"pause": {"weeks": 4}})
    ]
    assert [phase["kind"] for phase in later["phases"]] == ["maintenance", "gain"]
    assert later["dominant_uncertainty"] == at_once["dominant_uncertainty"] == "partition"


async def test_a_rail_that_holds_later_in_a_cut_says_that_it_is_later(service: Running) -> None:
    """At the start it is the whole deficit: beside "you eat 630 less" it said that "the deficit stays at 579"."""
    profile = {
        "sex": "female",
        "age_years": 46,
        "height_cm": 179,
        "weight_kg": 86.6,
        "body_fat": {"fat_fraction": 0.366, "method": "dxa"},
        "activity": {"kind": "level", "level": "light"},
        "training": {"status": "advanced", "resistance_sessions_per_week": 2},
    }
    phase = cut(target_weight_kg=79.6, pace="brisk", easing_in_weeks=1, protein_g_per_kg=1.8)
    plan = (await post(service, asked(phase, profile))).json()
    (held,) = [rail for rail in plan["guard_rails"] if rail["action"] == "capped"]
    assert held["code"] == "CAPPED_DEFICIT_LATER"
    assert held["limit"] < plan["deficit_kcal"] - 1.0
    first = plan["phases"][0]["weeks"][1]
    assert plan["maintenance_kcal"]["mean"] - first["intake_kcal"] >= plan["deficit_kcal"] - 10


async def test_what_comes_nearest_to_a_gain_to_a_weight_can_be_asked_for(service: Running) -> None:
    lean = {"body_fat": {"fat_fraction": 0.12, "method": "dxa"}}
    far: Json = {"kind": "gain", "target_weight_kg": 84.0, "weeks": 6}
    nearest = (await post(service, asked(far, lean))).json()["nearest"]
    assert 82.0 < nearest["target_weight_kg"] < 84.0
    assert nearest["weeks"] > 6
    assert nearest["weeks_kind"] == "gain"
    for moved in ({"target_weight_kg": nearest["target_weight_kg"]}, {"weeks": nearest["weeks"]}):
        assert (await post(service, asked(far | moved, lean))).json()["feasible"], moved
    assert not (await post(service, asked(far | {"weeks": nearest["weeks"] - 2}, lean))).json()["feasible"]
    past = far | {"target_weight_kg": 95.0, "weeks": 30, "fat_ceiling_fraction": 0.13}
    nearest = (await post(service, asked(past, lean))).json()["nearest"]
    assert (nearest["weeks"], nearest["weeks_kind"]) == (None, None)
    again = past | {"target_weight_kg": nearest["target_weight_kg"]}
    assert (await post(service, asked(again, lean))).json()["feasible"]


async def test_a_gain_without_training_is_cautioned_as_decisions_do(service: Running) -> None:
    for sessions in (0, 1):
        training = {"training": {"status": "advanced", "resistance_sessions_per_week": sessions}}
        lean = {"body_fat": {"fat_fraction": 0.12, "method": "dxa"}} | training
        for phase in ({"kind": "gain", "weeks": 8}, {"kind": "maintenance", "weeks": 2}):
            plan = (await post(service, asked(phase, lean))).json()
            (gain,) = [one for one in plan["phases"] if one["kind"] == "gain"]
            assert ("GAIN_NEEDS_TRAINING" in told(gain["cautions"])) is (sessions == 0)


@pytest.mark.parametrize(("kind", "weeks"), [("mini_cut", 6), ("cut", 12)])
async def test_a_length_that_the_event_sets_is_said_to_be_that(service: Running, kind: str, weeks: int) -> None:
    """It was "the middle of the usual two to six", or "as no time was given", beside the date that was."""
    plan = (await post(service, asked({"kind": kind, "event_date": "2026-06-01"}))).json()
    (phase,) = [one for one in plan["phases"] if one["kind"] == kind]
    assert len(phase["weeks"]) == weeks
    said = told(plan["reasons"])
    assert said["WEEKS_TO_EVENT"] == {"weeks": weeks}
    assert not {"WEEKS_DEFAULT", "CUT_WEEKS_DEFAULT"} & set(said)
