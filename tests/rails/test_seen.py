"""What was seen to go wrong, each by name. Every answer is held to the whole table besides what is named here."""

import copy
import itertools
import json
import math
import random
import re
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from leanness_words import speaks

from .checker import violations
from .limits import AVAILABILITY_LONG, Person, person_of
from .people import BLANKS, CLEAR, START, log, someone
from .requests import review as random_review
from .service import Answered, ask
from .words import POUNDS, REFERRAL, SCALE, STOP_SIGNS, URGENT, has_code, leanness, notes, rails, says

Json = dict[str, Any]
CHOICES = ["sizes", "levers"]  # what is offered beside a plan holds the rails as well
CARD = Path(__file__).parents[2] / "sdk" / "member_card" / "steelyard-plan.js"


def checked(operation: str, request: Json) -> Answered:
    """The answer, which breaks no rail whatever it is."""
    answered = ask(operation, request)
    assert violations(operation, request, answered.status, answered.body) == []
    return answered


def planned(profile: Json, phase: Json, *, screening: Json | None = CLEAR, **more: Any) -> Json:
    """A request for a plan."""
    asked = {"profile": profile, "start_date": START.isoformat(), "phase": phase, "include": CHOICES, **more}
    return asked | ({} if screening is None else {"screening": screening})


def forecast(profile: Json, question: Json, *, screening: Json | None = CLEAR, **more: Any) -> Json:
    """A request for a forecast."""
    asked = {"profile": profile, "start_date": START.isoformat(), "question": question, **more}
    return asked | ({} if screening is None else {"screening": screening})


def decided(profile: Json, *, screening: Json | None = CLEAR, **more: Any) -> Json:
    """A request for a decision."""
    asked = {"profile": profile, "as_of_date": START.isoformat(), **more}
    return asked | ({} if screening is None else {"screening": screening})


def season(profile: Json, *, screening: Json | None = CLEAR, **more: Any) -> Json:
    """A request for a season with rare mini-cuts."""
    strategy = {"kind": "ready_made", "name": "slow_gain_rare_mini_cuts"}
    asked = {"profile": profile, "start_date": START.isoformat(), "horizon_weeks": 26, "strategy": strategy, **more}
    return asked | ({} if screening is None else {"screening": screening})


def reviewed(
    profile: Json, kind: str, intake: float, logged: Json, *, days: int = 28, weeks: int = 8, maintenance: float,
    screening: Json = CLEAR, protein: float | None = None, **phase: Any,
) -> Json:  # fmt: skip
    """A request for the review of a phase that began ``days`` ago."""
    week = {"intake_kcal": intake, "protein_g": round(1.8 * profile["weight_kg"]) if protein is None else protein}
    return {
        "profile": profile,
        "screening": screening,
        "phase": {
            "kind": kind, "start_date": (START - timedelta(days=days)).isoformat(), "weeks": [week] * weeks,
            "maintenance": {"kcal_per_day": maintenance, "standard_deviation_kcal": 120}, **phase,
        },
        "log": logged,
    }  # fmt: skip


def _answer_has_no_intake(answered: Answered) -> bool:
    return not re.search(r'"(intake_kcal|correction_kcal|surplus_kcal)":\s*-?[1-9]', answered.text)


LIGHT = someone("female", 30, 168, 52.5, 0.30)  # BMI 18.6
SLIM = someone("female", 30, 168, 53.1, 0.33)  # BMI 18.8
THIN = someone("female", 22, 168, 46.0, 0.20)  # BMI 16.3
WOMAN = someone("female", 30, 166, 62, 0.26)
MAN = someone("male", 30, 180, 80, 0.15)
GIRL = someone("female", 16, 165, 56, 0.25)
PREGNANT = CLEAR | {"is_pregnant": True}
DISORDER = CLEAR | {"eating_disorder": "current"}
HISTORY = {"cuts_last_12_months": 0}


@pytest.mark.parametrize(
    "days", [{"day_split": {"higher_days_per_week": 4}}, {"week": {"training": [{"weekday": "monday"}]}}]
)
def test_a_minor_is_told_why_no_day_may_be_lower_and_that_the_plan_stands_without(days: Json) -> None:
    young = {key: value for key, value in MAN.items() if key != "body_fat"} | {"age_years": 17}
    held = planned(young, {"kind": "maintenance", "weeks": 2})
    answered = ask("plan_phases", held | days)
    assert answered.status == 422
    assert [each["code"] for each in answered.body["errors"]] == ["REFUSED_UNDER_AGE", "REFUSED_LOWER_DAYS"]
    assert answered.body["errors"][1]["pointer"] == f"#/{next(iter(days))}"
    assert checked("plan_phases", held).status == 200


def starved_log(person: Json, kcal: float = 650.0, days: int = 28) -> Json:
    """Every day the same little, at a weight that holds."""
    return log(random.Random(3), person, days=days, eaten=kcal, change_a_week=0.0, partial=0.0)


# --- every day, on every endpoint ------------------------------------------------------------------------------


def test_a_long_cut_does_not_end_underweight() -> None:
    answered = checked("plan_phases", planned(LIGHT, {"kind": "cut", "weeks": 26}, cut_history=HISTORY))
    assert answered.is_answer
    assert not answered.body["feasible"] or "bmi" in rails(answered.body)
    assert answered.body["feasible"] or answered.body["nearest"] is not None


@pytest.mark.parametrize("kind", ["intake_for_target", "date_for_target"])
def test_no_forecast_leads_to_an_underweight_target(kind: str) -> None:
    question: Json = {"kind": kind, "target": {"quantity": "weight_kg", "value": 48.0}}
    question |= {"by_date": "2026-09-28"} if kind == "intake_for_target" else {"intake_kcal": 1600}
    answered = checked("forecast_intake", forecast(LIGHT, question))
    assert not answered.is_answer or not answered.body["feasible"]


def test_a_path_does_not_lead_underweight() -> None:
    question = {"kind": "path", "schedule": [{"weeks": 26, "intake_kcal": 1650}]}
    answered = checked("forecast_intake", forecast(LIGHT, question))
    assert not answered.is_answer


def test_a_decision_near_underweight_recommends_no_long_cut() -> None:
    asked = decided(SLIM, goal="leanness", feeling="unhappy", phase_history=[])
    answered = checked("decide_phase", asked)
    for way in [answered.body["recommended"], *answered.body["alternatives"]]:
        if way.get("plan"):
            follow(asked, way["plan"])


def follow(asked: Json, fragment: Json) -> None:
    """What a decision suggests is asked for, and is inside every rail and possible."""
    request = {key: asked[key] for key in ("profile", "screening", "maintenance", "log") if key in asked}
    request |= {key: value for key, value in fragment.items() if value is not None}
    request["phase"] = {key: value for key, value in fragment["phase"].items() if value is not None}
    request["return_to_gain"] = {k: v for k, v in fragment["return_to_gain"].items() if v is not None}
    answered = checked("plan_phases", request)
    assert answered.is_answer
    assert answered.body["feasible"]


# --- holds and gains have floors -------------------------------------------------------------------------------


def test_a_hold_on_a_log_of_little_is_not_told_to_the_underweight() -> None:
    asked = planned(THIN, {"kind": "maintenance", "weeks": 26}, screening=DISORDER, log=starved_log(THIN))
    answered = checked("plan_phases", asked)
    assert _answer_has_no_intake(answered)
    assert says(answered.body, URGENT)


def test_pregnancy_is_not_held_at_a_known_900() -> None:
    known = {"kcal_per_day": 900, "standard_deviation_kcal": 100}
    checked("plan_phases", planned(WOMAN, {"kind": "maintenance", "weeks": 4}, screening=PREGNANT, maintenance=known))


def test_a_hold_that_a_floor_raises_does_not_say_that_less_keeps_the_body() -> None:
    hold, known = {"kind": "maintenance", "weeks": 4}, {"kcal_per_day": 1700, "standard_deviation_kcal": 60}
    for screening, is_said in ((PREGNANT, False), (CLEAR, True)):
        answered = checked("plan_phases", planned(WOMAN, hold, screening=screening, maintenance=known))
        told = answered.body["phases"][0]
        assert (told["weeks"][0]["intake_kcal"] > 1720) != is_said
        assert ("HOLD_WHY" in {reason["code"] for reason in told["reasons"]}) == is_said


def test_a_girls_low_log_does_not_lower_her_hold() -> None:
    asked = planned(GIRL, {"kind": "maintenance", "weeks": 4}, log=starved_log(GIRL, 810))
    assert says(checked("plan_phases", asked).body, REFERRAL)


def test_a_log_of_zeros_is_not_what_to_eat() -> None:
    asked = planned(WOMAN, {"kind": "maintenance", "weeks": 4}, log=starved_log(WOMAN, 0.0))
    checked("plan_phases", asked)


# --- reviews ---------------------------------------------------------------------------------------------------


def test_a_review_does_not_lower_intake_in_pregnancy() -> None:
    rng = random.Random(5)
    logged = log(rng, WOMAN, days=42, eaten=2300, maintenance=2300, change_a_week=0.4 / 62, profile_ago=28)
    asked = reviewed(WOMAN, "maintenance", 2300, logged, maintenance=2300, screening=PREGNANT)
    answered = checked("review_phase", asked)
    assert not answered.is_answer or answered.body["verdict"] != "faster"


def test_a_review_does_not_lower_intake_with_an_eating_disorder() -> None:
    rng = random.Random(5)
    logged = log(rng, WOMAN, days=42, eaten=2400, maintenance=2300, change_a_week=0.008, profile_ago=28)
    checked("review_phase", reviewed(WOMAN, "gain", 2400, logged, maintenance=2200, screening=DISORDER))


def test_a_review_does_not_cut_a_hold_to_850() -> None:
    rng = random.Random(5)
    logged = log(rng, WOMAN, days=42, eaten=1930, maintenance=1000, change_a_week=0.012, profile_ago=28)
    checked("review_phase", reviewed(WOMAN, "maintenance", 1930, logged, maintenance=1930))


def test_a_gain_on_plan_that_is_logged_at_seventy_percent_is_not_lowered() -> None:
    rng = random.Random(6)
    eaten = 3000.0
    logged = log(rng, MAN, days=56, eaten=eaten, ratio=0.7, maintenance=2750, profile_ago=28)
    asked = reviewed(MAN, "gain", eaten, logged, maintenance=2750, protein=150)
    answered = checked("review_phase", asked)
    assert answered.body["correction_kcal"] >= 0


def test_what_comes_after_a_phase_passes_the_same_gate() -> None:
    rng = random.Random(17)
    found = []
    for _ in range(300):
        asked = random_review(rng) | {"is_finished": True}
        answered = ask("review_phase", asked)
        broken = violations("review_phase", asked, answered.status, answered.body)
        found += [(what, asked["profile"]) for what in broken if what.startswith("after_")]
    assert found == []


# --- never a fault ---------------------------------------------------------------------------------------------

HEAVY = someone("male", 30, 178, 80, 0.2)


def test_a_hold_at_a_known_maintenance_of_900_is_no_fault() -> None:
    known = {"kcal_per_day": 900, "standard_deviation_kcal": 100}
    checked("plan_phases", planned(HEAVY, {"kind": "maintenance", "weeks": 4}, maintenance=known))


@pytest.mark.parametrize("operation", ["plan_phases", "decide_phase"])
def test_fifty_six_days_of_900_are_no_fault(operation: str) -> None:
    logged = starved_log(HEAVY, 900, days=56)
    asked = planned(HEAVY, {"kind": "maintenance", "weeks": 4}) if operation == "plan_phases" else decided(HEAVY)
    checked(operation, asked | {"log": logged})


BUSY = {"kind": "week", "steps_per_day": 8000, "sessions": [{"met": 6.0, "minutes": 450, "times_per_week": 20}]}


@pytest.mark.parametrize("operation", ["plan_phases", "estimate_maintenance", "forecast_intake", "decide_phase"])
def test_a_week_of_150_hours_of_sessions_is_no_fault(operation: str) -> None:
    person = HEAVY | {"activity": BUSY}
    asked = {
        "plan_phases": planned(person, {"kind": "mini_cut", "weeks": 4}),
        "estimate_maintenance": {"profile": person},
        "forecast_intake": forecast(person, {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 2500}]}),
        "decide_phase": decided(person),
    }[operation]
    checked(operation, asked)


def test_a_week_has_168_hours() -> None:
    sessions = [{"met": 3.0, "minutes": 600, "times_per_week": 17}]
    person = HEAVY | {"activity": {"kind": "week", "steps_per_day": 0, "sessions": sessions}}
    assert checked("estimate_maintenance", {"profile": person}).status in (400, 422)


# --- every refusal is told, and nothing of leanness --------------------------------------------------------------


@pytest.mark.parametrize(
    ("person", "screening"), [(GIRL, CLEAR), (WOMAN, DISORDER), (WOMAN, CLEAR | {"eating_disorder": "past"})]
)
@pytest.mark.parametrize(("quantity", "value"), [("fat_fraction", 0.272), ("fat_kg", 17.0)])
def test_a_forecast_takes_no_fat_target_from_those_who_may_not_have_one(
    person: Json, screening: Json, quantity: str, value: float
) -> None:
    question = {
        "kind": "intake_for_target", "target": {"quantity": quantity, "value": value}, "by_date": "2027-02-01",
    }  # fmt: skip
    answered = checked("forecast_intake", forecast(person, question, screening=screening))
    assert not answered.is_answer


def test_a_review_ends_no_boys_gain_at_a_body_fat() -> None:
    boy = someone("male", 15, 172, 60, 0.164)
    logged = log(random.Random(8), boy, days=42, eaten=2750, maintenance=2600, profile_ago=28)
    answered = checked(
        "review_phase", reviewed(boy, "gain", 2700, logged, maintenance=2600, fat_ceiling_fraction=0.165)
    )
    assert list(leanness(answered.body)) == []


def test_breastfeeding_with_an_eating_disorder_is_told_both() -> None:
    both = CLEAR | {"is_breastfeeding": True, "eating_disorder": "current"}
    answered = checked("plan_phases", planned(WOMAN, {"kind": "mini_cut", "weeks": 4}, screening=both))
    told = {fault["code"] for fault in answered.body["errors"]}
    assert {"REFUSED_BREASTFEEDING", "REFUSED_EATING_DISORDER"} <= told


@pytest.mark.parametrize("operation", ["plan_phases", "decide_phase"])
def test_a_lean_boy_is_told_both_refusals_and_no_figure_of_his_leanness(operation: str) -> None:
    boy = someone("male", 16, 178, 62, 0.05)
    asked = {
        "plan_phases": planned(boy, {"kind": "mini_cut", "weeks": 4}),
        "decide_phase": decided(boy, goal="leanness", feeling="would_like_leaner"),
    }[operation]
    found = [note for note in notes(checked(operation, asked).body) if note["code"].startswith("REFUSED_")]
    assert {note["code"] for note in found} == {"REFUSED_UNDER_AGE", "REFUSED_BODY_FAT"}
    assert all(REFERRAL.search(note["text"]) for note in found)
    assert not any("%" in note["text"] or "body fat" in note["text"].lower() for note in found)


@pytest.mark.parametrize(("person", "screening"), [(16, CLEAR), (20, DISORDER)])
def test_an_end_too_lean_is_refused_without_a_figure_to_whom_none_is_told(person: int, screening: Json) -> None:
    """Eating over maintenance, and far less than until now: fat falls at first, and no deficit is refused."""
    lean = someone(
        "male", person, 190.5, 71.7, 0.04, activity={"kind": "level", "level": "very_active"},
        training={"status": "untrained", "resistance_sessions_per_week": 3},
    )  # fmt: skip
    question = {
        "kind": "date_for_target", "target": {"quantity": "weight_kg", "value": 70.266}, "intake_kcal": 2728,
    }  # fmt: skip
    known = {"kcal_per_day": 2338, "standard_deviation_kcal": 600}
    asked = forecast(lean, question, screening=screening, maintenance=known, current_intake_kcal=7794)
    (fault,) = checked("forecast_intake", asked).body["errors"]
    assert fault["code"] == "REFUSED_END_BODY_FAT"
    assert "%" not in fault["detail"]
    assert fault["params"] == {"speaks": "no"}
    (told,) = ask("forecast_intake", asked | {"profile": lean | {"age_years": 20}, "screening": CLEAR}).body["errors"]
    assert "%" in told["detail"]
    assert told["code"] == fault["code"]


@pytest.mark.parametrize("operation", ["estimate_maintenance", "read_trend", "plan_phases"])
def test_a_girl_whose_body_fat_was_not_measured_hears_of_no_cut(operation: str) -> None:
    girl = someone("female", 15, 165, 56)
    asked = {
        "estimate_maintenance": {"profile": girl},
        "read_trend": {"profile": girl, "log": log(random.Random(3), girl)},
        "plan_phases": planned(girl, {"kind": "maintenance", "weeks": 4}),
    }[operation]
    said = list(notes(checked(operation, asked).body))
    assert "FAT_FROM_BMI" not in {note["code"] for note in said}  # it asks to have body fat measured
    assert [note["text"] for note in said if re.search(r"\bcut\b", note["text"])] == []


@pytest.mark.parametrize(
    "phase",
    [
        {"kind": "mini_cut", "fat_loss_kg": 25},
        {"kind": "mini_cut", "target_fat_fraction": 0.5},
        {"kind": "mini_cut", "fat_loss_kg": 1, "target_weight_kg": 50},
        {"kind": "cut", "weeks": 3},
        {"kind": "mini_cut", "event_date": START.isoformat()},
    ],
    ids=["more_than_there_is", "above_present", "two_goals", "too_short", "event_today"],
)
@pytest.mark.parametrize("who", ["minor", "disorder", "pregnant", "ill"])
def test_who_may_not_diet_is_not_told_how_to_ask_for_it(who: str, phase: Json) -> None:
    person = GIRL if who == "minor" else someone("female", 30, 165, 60, 0.28)
    changed = {
        "minor": {}, "disorder": {"eating_disorder": "past"}, "pregnant": {"is_pregnant": True},
        "ill": {"conditions": ["gout"]},
    }[who]  # fmt: skip
    answered = ask("plan_phases", planned(person, phase, screening=CLEAR | changed))
    assert answered.status == 422
    assert {fault["code"] for fault in answered.body["errors"]} == {
        "minor": {"REFUSED_UNDER_AGE"}, "disorder": {"REFUSED_EATING_DISORDER"}, "pregnant": {"REFUSED_PREGNANCY"},
        "ill": {"REFUSED_MEDICAL"},
    }[who]  # fmt: skip


@pytest.mark.parametrize("operation", ["plan_season", "compare_strategies", "optimise_season"])
def test_a_season_of_who_answered_nothing_tells_every_refusal(operation: str) -> None:
    asked = season(someone("female", 16, 165, 48, 0.25), screening=None)
    strategy = asked.pop("strategy")
    asked |= {
        "plan_season": {"strategy": strategy},
        "compare_strategies": {"strategies": [strategy, {"kind": "own", "surplus_kcal": 100}]},
        "optimise_season": {"strategies_searched": 500},
    }[operation]
    answered = ask(operation, asked)
    told = {fault["code"] for fault in answered.body["errors"]}
    assert (answered.status, told) == (422, {"REFUSED_UNANSWERED", "REFUSED_UNDER_AGE", "REFUSED_BMI"})


def test_a_season_tells_a_girl_no_band() -> None:
    answered = checked("plan_season", season(GIRL, strategy={"kind": "ready_made", "name": "slow_gain_no_cut"}))
    assert list(leanness(answered.body)) == []


@pytest.mark.parametrize("is_over", [False, True])
def test_what_a_growing_minor_needs_is_that_of_the_body_by_now(is_over: bool) -> None:
    """Nine tenths of what the equations say of the weight of today, with four fifths of it logged at the least."""
    boy = someone("male", 15, 170, 60)
    days, weeks = (70, 9) if is_over else (56, 12)
    logged = log(random.Random(8), boy, days=days, eaten=3000, ratio=0.7, change_a_week=0.02, profile_ago=days)
    need = person_of({"profile": boy}).prior
    asked = reviewed(boy, "maintenance", round(0.73 * need, -1), logged, days=days, weeks=weeks, maintenance=0.8 * need)
    answered = checked("review_phase", asked).body
    weight_kg = answered["state"]["weight_kg"]["mean"]
    assert weight_kg > 66.0
    by_now = person_of({"profile": boy | {"weight_kg": weight_kg}}).prior
    told = [answered["after"]["intake_kcal"]] if is_over else [week["intake_kcal"] for week in answered["weeks"]]
    assert min(told) >= 0.9 * by_now * max(0.8, answered["logging_ratio"]["mean"]) - 10.0


@pytest.mark.parametrize("fat", [0.24, 0.31])
@pytest.mark.parametrize("operation", ["plan_season", "compare_strategies", "optimise_season"])
def test_no_season_in_pregnancy_is_held_at_a_body_fat(operation: str, fat: float) -> None:
    person = someone("female", 30, 168, 75, fat)
    asked = season(person, screening=CLEAR | {"is_pregnant": True})
    del asked["strategy"]
    asked |= {
        "plan_season": {"strategy": {"kind": "own", "surplus_kcal": 150}},
        "compare_strategies": {
            "strategies": [{"kind": "own", "surplus_kcal": 150}, {"kind": "own", "surplus_kcal": 0, "label": "b"}]
        },
        "optimise_season": {"strategies_searched": 500},
    }[operation]
    answered = checked(operation, asked)
    assert answered.is_answer
    told = json.dumps({key: value for key, value in answered.body.items() if key != "state"})
    assert set(re.findall(r'"cut_(?:at|to)_fat_fraction": ?([^,}]+)', told)) == {"null"}
    assert answered.body.get("allowed_final_fat_fraction") is None
    texts = [note["text"] for note in notes(answered.body)]
    assert [text for text in texts if speaks("en", text)] == []


# --- what is logged is judged ----------------------------------------------------------------------------------


def falling(person: Json, share: float = -0.025, days: int = 35, eaten: float = 1500) -> Json:
    """Weights that fall by a share of body mass a week, as logged."""
    return log(random.Random(9), person, days=days, eaten=eaten, change_a_week=share, noise_kg=0.3)


@pytest.mark.parametrize("operation", ["decide_phase", "plan_phases", "read_trend", "forecast_intake", "plan_season"])
def test_a_fast_logged_loss_is_judged(operation: str) -> None:
    logged = {"log": falling(WOMAN)}
    asked = {
        "decide_phase": decided(WOMAN, goal="leanness", present_phase={"kind": "cut", "weeks_done": 5}),
        "plan_phases": planned(WOMAN, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY),
        "read_trend": {"profile": WOMAN},
        "forecast_intake": forecast(WOMAN, {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 1600}]}),
        "plan_season": season(WOMAN, cut_history=HISTORY),
    }[operation] | logged
    answered = checked(operation, asked)
    assert has_code(answered.body, "LOSS")


@pytest.mark.parametrize("every", [2, 4, 7])
@pytest.mark.parametrize("operation", ["decide_phase", "plan_phases", "read_trend", "forecast_intake", "plan_season"])
def test_a_fast_loss_is_judged_of_who_weighs_seldom(operation: str, every: int) -> None:
    logged = falling(WOMAN)
    logged["weights"] = logged["weights"][::-1][::every]
    asked = {
        "decide_phase": decided(WOMAN, goal="leanness", present_phase={"kind": "cut", "weeks_done": 5}),
        "plan_phases": planned(WOMAN, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY),
        "read_trend": {"profile": WOMAN},
        "forecast_intake": forecast(WOMAN, {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 1600}]}),
        "plan_season": season(WOMAN, cut_history=HISTORY),
    }[operation] | {"log": logged}
    assert has_code(checked(operation, asked).body, "LOGGED_LOSS")


STALE = someone("female", 30, 168, 56, 0.24)  # a profile of 19.8 kg/m2
WEEKS_AHEAD = {"kind": "path", "schedule": [{"weeks": 6, "intake_kcal": 1250, "protein_g_per_kg": 2.0}]}


def weighed(kilograms: float) -> Json:
    """A steady log of somebody of ``STALE``'s height who weighs less by now."""
    return log(random.Random(3), STALE | {"weight_kg": kilograms}, days=42, eaten=1600, change_a_week=0.0, noise_kg=0.2)


@pytest.mark.parametrize("operation", ["plan_phases", "forecast_intake", "plan_season", "decide_phase"])
def test_no_deficit_rests_on_a_weight_that_the_log_no_longer_has(operation: str) -> None:
    """17.7 kg/m2 by six weeks of weights, whatever the profile says."""
    asked = {
        "plan_phases": planned(STALE, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY),
        "forecast_intake": forecast(STALE, WEEKS_AHEAD),
        "plan_season": season(STALE, cut_history=HISTORY),
        "decide_phase": decided(STALE, goal="leanness"),
    }[operation] | {"log": weighed(50.0)}
    answered = checked(operation, asked)
    assert has_code(answered.body, "REFUSED_BMI")
    if operation == "decide_phase":
        assert not any(way["open"] for way in answered.body["alternatives"] if "cut" in way["kind"])
        assert has_code(answered.body, "LOG_WEIGHT_COUNTS")
    else:
        assert answered.status == 422


def test_a_plan_starts_from_the_weight_that_the_log_has_and_says_so() -> None:
    heavier = someone("female", 30, 168, 66, 0.30)
    asked = planned(heavier, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY)
    lighter = checked("plan_phases", asked | {"log": weighed(62.0)}).body
    assert has_code(lighter, "LOG_WEIGHT_COUNTS")
    assert lighter["start_weight_kg"] == pytest.approx(62.0, abs=0.5)
    same = checked("plan_phases", asked | {"log": weighed(65.5)}).body
    assert not has_code(same, "LOG_WEIGHT_COUNTS")
    assert same["start_weight_kg"] == 66


@pytest.mark.parametrize("operation", ["plan_phases", "forecast_intake", "plan_season", "decide_phase", "review_phase"])
def test_no_intake_is_told_to_who_is_starved_by_their_log(operation: str) -> None:
    """15.6 kg/m2 by six weeks of weights."""
    logged = weighed(44.0)
    asked = {
        "plan_phases": planned(STALE, {"kind": "maintenance", "weeks": 4}),
        "forecast_intake": forecast(STALE, WEEKS_AHEAD),
        "plan_season": season(STALE),
        "decide_phase": decided(STALE),
        "review_phase": reviewed(STALE, "maintenance", 1900, logged, maintenance=1900),
    }[operation] | {"log": logged}
    answered = ask(operation, asked)
    assert (answered.status, has_code(answered.body, "REFUSED_REFEEDING")) == (422, True)


@pytest.mark.parametrize("operation", ["read_trend", "estimate_maintenance"])
def test_an_estimate_refers_who_is_starved_by_their_log(operation: str) -> None:
    answered = ask(operation, {"profile": STALE, "log": weighed(44.0), "screening": CLEAR})
    assert answered.is_answer
    assert says(answered.body, URGENT)


def test_next_to_nothing_logged_on_some_days_of_a_week_is_judged() -> None:
    thin = STALE | {"weight_kg": 50.0}
    logged = weighed(50.0)
    logged["intakes"] = [row | {"intake_kcal": 550} for row in logged["intakes"][::3]]
    answered = ask("plan_phases", planned(thin, {"kind": "maintenance", "weeks": 4}, log=logged))
    assert (answered.status, has_code(answered.body, "REFUSED_REFEEDING")) == (422, True)


def test_a_gain_that_loses_is_raised_in_steps_and_referred() -> None:
    logged = log(random.Random(9), MAN, days=35, eaten=2600, change_a_week=-0.022, noise_kg=0.3, profile_ago=28)
    answered = checked("review_phase", reviewed(MAN, "gain", 2900, logged, maintenance=2700))
    assert 0 <= answered.body["correction_kcal"] <= 200
    said = [note for note in notes(answered.body) if note["code"] != "NOT_MEDICAL_ADVICE"]
    assert any(re.search(r"unexplained", note["text"]) and REFERRAL.search(note["text"]) for note in said)


# --- macronutrients --------------------------------------------------------------------------------------------


def test_a_review_does_not_go_on_with_forty_grams_of_protein() -> None:
    logged = log(random.Random(10), MAN, days=28, eaten=2200, maintenance=2700, profile_ago=14)
    checked("review_phase", reviewed(MAN, "mini_cut", 2200, logged, days=14, weeks=6, maintenance=2700, protein=40))


def test_a_forecast_of_a_deficit_takes_no_third_of_a_gram_of_protein() -> None:
    stretch = {"weeks": 4, "intake_kcal": 2800, "protein_g_per_kg": 0.3}
    answered = checked("forecast_intake", forecast(MAN, {"kind": "path", "schedule": [stretch]}))
    assert not answered.is_answer


def test_macronutrients_fit_into_what_is_eaten() -> None:
    person = someone("male", 30, 185, 100, 0.18)
    stretch = {"weeks": 4, "intake_kcal": 2600, "protein_g_per_kg": 5, "carbohydrate_g": 640}
    known = {"kcal_per_day": 2900, "standard_deviation_kcal": 100}
    asked = forecast(person, {"kind": "path", "schedule": [stretch]}, maintenance=known)
    assert not checked("forecast_intake", asked).is_answer


# --- what must be said -----------------------------------------------------------------------------------------


def test_an_unknown_history_is_said_at_the_default_deficit_too() -> None:
    answered = checked("plan_phases", planned(MAN, {"kind": "mini_cut", "weeks": 4, "deficit_kcal": 500}))
    assert "cut_history" in rails(answered.body)


@pytest.mark.parametrize("operation", ["plan_phases", "decide_phase", "plan_season", "forecast_intake"])
def test_an_answer_that_rests_on_a_log_says_whose_scale_it_is(operation: str) -> None:
    logged = {"log": log(random.Random(11), MAN, days=28, eaten=2700, ratio=0.85, maintenance=2700)}
    asked = {
        "plan_phases": planned(MAN, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY),
        "decide_phase": decided(MAN),
        "plan_season": season(MAN, cut_history=HISTORY),
        "forecast_intake": forecast(MAN, {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 2100}]}),
    }[operation] | logged
    answered = checked(operation, asked)
    assert says(answered.body, SCALE)


# --- clearance, present intake, pounds -------------------------------------------------------------------------


def test_a_clearance_of_blanks_clears_nothing() -> None:
    old = someone("male", 80, 175, 82, 0.28)
    blank = CLEAR | {"conditions": ["cancer"], "clinical_clearance": BLANKS}
    answered = checked("plan_phases", planned(old, {"kind": "mini_cut", "weeks": 4}, screening=blank))
    assert answered.status in (400, 422)


def test_a_low_present_intake_hides_no_deficit() -> None:
    person = someone("male", 40, 176, 85, 0.30) | {
        "activity": {"kind": "level", "level": "moderate"},
        "training": {"status": "untrained", "resistance_sessions_per_week": 0},
    }
    known = {"kcal_per_day": 2700, "standard_deviation_kcal": 120}
    question = {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 1810}]}
    asked = forecast(person, question, maintenance=known, current_intake_kcal=1850)
    assert not checked("forecast_intake", asked).is_answer


@pytest.mark.parametrize("operation", ["estimate_maintenance", "plan_phases", "decide_phase", "forecast_intake"])
def test_185_at_180_centimetres_asks_for_pounds(operation: str) -> None:
    person = someone("male", 30, 180, 185, activity={"kind": "level", "level": "very_active"})
    asked = {
        "estimate_maintenance": {"profile": person},
        "plan_phases": planned(person, {"kind": "maintenance", "weeks": 4}),
        "decide_phase": decided(person),
        "forecast_intake": forecast(person, {"kind": "path", "schedule": [{"weeks": 2, "intake_kcal": 4000}]}),
    }[operation]
    answered = checked(operation, asked)
    assert says(answered.body, POUNDS)


def test_a_fat_free_mass_that_no_body_has_is_refused() -> None:
    person = someone("male", 30, 180, 185, 0.15)
    assert checked("estimate_maintenance", {"profile": person}).status == 422


# --- doubt -----------------------------------------------------------------------------------------------------


def test_a_doubt_about_an_eating_disorder_is_answered_before_any_deficit() -> None:
    unsure = CLEAR | {"eating_disorder": "unsure"}
    person = someone("female", 30, 166, 74, 0.35)
    asked = decided(person, screening=unsure, feeling="unhappy", goal="leanness", phase_history=[])
    assert checked("decide_phase", asked).body["recommended"]["kind"] not in ("cut", "mini_cut")


@pytest.mark.parametrize("other", ["REFUSED_BMI", "REFUSED_BODY_FAT", "REFUSED_MEDICAL", "REFUSED_LOGGED_LOSS"])
def test_a_doubt_is_told_beside_what_else_refuses(other: str) -> None:
    unsure = CLEAR | {"eating_disorder": "unsure"}
    asked = {
        "REFUSED_BMI": decided(someone("female", 30, 168, 51, 0.24), screening=unsure),
        "REFUSED_BODY_FAT": decided(someone("female", 30, 168, 57, 0.13), screening=unsure),
        "REFUSED_MEDICAL": decided(WOMAN, screening=unsure | {"conditions": ["gout"]}),
        "REFUSED_LOGGED_LOSS": decided(WOMAN, screening=unsure, log=falling(WOMAN)),
    }[other]
    answered = checked("decide_phase", asked)
    refused = {rail["code"] for rail in answered.body["guard_rails"] if rail["action"] == "refused"}
    assert refused == {"REFUSED_DOUBT", other}
    assert answered.body["leanness"] is None


def test_unhappiness_alone_starts_no_deficit_near_underweight() -> None:
    person = someone("female", 30, 168, 55.9, 0.29)  # BMI 19.8
    answered = checked("decide_phase", decided(person, feeling="unhappy", phase_history=[]))
    assert answered.body["recommended"]["kind"] not in ("cut", "mini_cut")


def state_with_water(person: Json, water_kg: float) -> Json:
    """What was handed on of somebody, so much of whose weight is water that goes again."""
    logged = log(random.Random(5), person, days=28, change_a_week=0.0, noise_kg=0.2)
    asked = {"profile": person, "log": logged, "screening": CLEAR}
    state: Json = ask("estimate_maintenance", asked).body["state"]
    state["carried_kg"]["mean"] = water_kg
    state["lean_kg"]["mean"] = round(state["weight_kg"]["mean"] - state["fat_kg"]["mean"] - water_kg, 2)
    return state


@pytest.mark.parametrize("water_kg", [0.0, 1.0, 2.5])
@pytest.mark.parametrize("operation", ["plan_phases", "forecast_intake", "plan_season"])
def test_handed_on_water_holds_nobody_over_an_underweight_body(operation: str, water_kg: float) -> None:
    """As its tissue and what is usually carried have it, no body gets under 18.5 in a deficit."""
    person = someone("female", 30, 168, 57.0, 0.30)  # BMI 20.2
    state = state_with_water(person, water_kg)
    own = {
        "kind": "own", "surplus_kcal": 0, "cut_at_fat_fraction": 0.28, "cut_to_fat_fraction": 0.18,
        "deficit_kcal": 500, "longest_cut_weeks": 26,
    }  # fmt: skip
    target = {"quantity": "weight_kg", "value": 52.8 if water_kg < 2.0 else 54.0}
    by_date = (START + timedelta(days=120)).isoformat()
    asked = {
        "plan_phases": planned(person, {"kind": "cut", "weeks": 20}, cut_history=HISTORY),
        "forecast_intake": forecast(person, {"kind": "intake_for_target", "target": target, "by_date": by_date}),
        "plan_season": season(person, strategy=own, cut_history=HISTORY, horizon_weeks=52),
    }[operation]
    answered = ask(operation, asked | {"state": state})
    if not answered.is_answer:
        assert "BMI" in answered.text
        return
    body = answered.body
    weeks = {
        "plan_phases": lambda: [week for phase in body["phases"] for week in phase["weeks"]],
        "forecast_intake": lambda: body["weeks"],
        "plan_season": lambda: body["plan"]["weeks"],
    }[operation]()
    assert weeks or not body["feasible"]
    settled = [week["at_end"]["weight_kg"]["mean"] - week["at_end"]["carried_kg"]["mean"] - water_kg for week in weeks]
    # What was eaten lately explains up to 0.25 kg of it, which the weeks' own carried mass holds already.
    assert all(each + 0.25 >= 18.5 * 1.68**2 for each in settled)


def test_handed_on_water_refuses_a_deficit_to_who_is_underweight_without_it() -> None:
    person = someone("female", 30, 168, 53.0, 0.26)  # BMI 18.8, and 18.2 without the water
    asked = planned(person, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY)
    assert not has_code(ask("plan_phases", asked | {"state": state_with_water(person, 0.0)}).body, "REFUSED_BMI")
    assert has_code(ask("plan_phases", asked | {"state": state_with_water(person, 1.6)}).body, "REFUSED_BMI")


def test_water_that_a_state_has_no_room_for_is_not_believed() -> None:
    """The masses of a state are parts of its weight: what is claimed beyond them ends no diet."""
    person = someone("female", 30, 168, 62, 0.30)
    state = state_with_water(person, 0.0)
    state["carried_kg"]["mean"] = 12.0
    asked = planned(person, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY, state=state)
    assert ask("plan_phases", asked).body["phases"]


@pytest.mark.parametrize("later", [1, 6])
def test_a_measured_body_fat_outlives_the_log_that_begins_after_it(later: int) -> None:
    """Who planned from a measured body and logs from some day after is as lean as who logged from the day itself."""
    lean = someone("male", 30, 180, 92, 0.09)
    state = checked("plan_phases", planned(lean, {"kind": "maintenance", "weeks": 4})).body["state"]
    until = START + timedelta(days=21)
    logged = log(random.Random(4), lean, days=21, ends=until, change_a_week=0.0, noise_kg=0.2)
    asked = planned(lean, {"kind": "mini_cut", "weeks": 6}, cut_history=HISTORY, state=state)
    asked["start_date"] = until.isoformat()
    since = {name: rows[later:] for name, rows in logged.items()}
    from_the_day, from_later = (ask("plan_phases", asked | {"log": each}).body for each in (logged, since))
    fat, same = (body["body_fat_fraction"] for body in (from_later, from_the_day))
    assert abs(fat["mean"] - same["mean"]) < 0.003
    assert abs(fat["upper"] - same["upper"]) < 0.003


# --- refeeding -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["maintenance", "gain", "mini_cut"])
def test_no_plan_tells_an_intake_to_a_starved_body(kind: str) -> None:
    asked = planned(THIN, {"kind": kind, "weeks": 4}, log=starved_log(THIN))
    answered = checked("plan_phases", asked)
    assert _answer_has_no_intake(answered)
    assert says(answered.body, URGENT)


@pytest.mark.parametrize("operation", ["forecast_intake", "decide_phase", "plan_season", "review_phase"])
def test_no_endpoint_tells_an_intake_to_a_starved_body(operation: str) -> None:
    logged = {"log": starved_log(THIN)}
    asked = {
        "forecast_intake": forecast(THIN, {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": 2400}]}) | logged,
        "decide_phase": decided(THIN) | logged,
        "plan_season": season(THIN, strategy={"kind": "ready_made", "name": "slow_gain_no_cut"}) | logged,
        "review_phase": reviewed(THIN, "gain", 2000, logged["log"], maintenance=1700, days=14),
    }[operation]
    answered = checked(operation, asked)
    assert _answer_has_no_intake(answered)
    assert says(answered.body, URGENT)


@pytest.mark.parametrize("operation", ["estimate_maintenance", "read_trend"])
def test_an_estimate_refers_a_starved_body_at_once(operation: str) -> None:
    assert says(checked(operation, {"profile": THIN, "log": starved_log(THIN)}).body, URGENT)


# --- exercise, measurement, what is eaten ----------------------------------------------------------------------


def test_a_level_implies_its_exercise() -> None:
    runner = someone("female", 28, 168, 58, 0.20) | {
        "activity": {"kind": "level", "level": "very_active"},
        "training": {"status": "untrained", "resistance_sessions_per_week": 0},
    }
    known = {"kcal_per_day": 2450, "standard_deviation_kcal": 120}
    asked = planned(runner, {"kind": "cut", "weeks": 8, "deficit_kcal": 500}, cut_history=HISTORY, maintenance=known)
    answered = checked("plan_phases", asked)
    assert answered.is_answer
    assert "energy_availability" in rails(answered.body)


def test_without_a_reading_there_is_the_default_deficit_and_a_word() -> None:
    person = someone("male", 30, 180, 95)
    asked = planned(person, {"kind": "mini_cut", "weeks": 4, "deficit_kcal": 750}, cut_history=HISTORY)
    answered = checked("plan_phases", asked)
    assert not answered.body["feasible"] or answered.body["deficit_kcal"] <= 500


@pytest.mark.parametrize("operation", ["review_phase", "plan_phases", "read_trend"])
def test_what_is_really_eaten_is_railed(operation: str) -> None:
    rng = random.Random(12)
    person = someone("female", 30, 166, 60, 0.24)
    logged = log(rng, person, days=35, eaten=960, maintenance=2000, change_a_week=-0.018, noise_kg=0.3, profile_ago=35)
    asked = {
        "review_phase": reviewed(person, "mini_cut", 1500, logged, days=35, weeks=6, maintenance=2000),
        "plan_phases": planned(person, {"kind": "maintenance", "weeks": 2}, log=logged),
        "read_trend": {"profile": person, "log": logged},
    }[operation]
    answered = checked(operation, asked)
    said = " ".join(note["text"] for note in notes(answered.body) if note["code"] != "NOT_MEDICAL_ADVICE")
    assert "energy_availability" in rails(answered.body) or has_code(answered.body, "AVAILABILITY")
    assert "intake_floor" in rails(answered.body) or has_code(answered.body, "FLOOR")
    for sign in ("low mood", "binge eating", "a missed period"):
        assert STOP_SIGNS[sign].search(said), sign
    assert REFERRAL.search(said)


# --- deficits close together -----------------------------------------------------------------------------------


RUNS = {"kind": "week", "steps_per_day": 5000, "sessions": [{"met": 9, "minutes": 60, "times_per_week": 5}]}


@pytest.mark.parametrize(
    ("activity", "known"), [({"kind": "level", "level": "light"}, 2450), (RUNS, 2350)], ids=["light", "runs"]
)
def test_mini_cuts_a_week_apart_count_as_one(activity: Json, known: int) -> None:
    person = copy.deepcopy(WOMAN) | {"activity": activity}
    history: Json = {"cuts_last_12_months": 0}
    for cuts in range(4):
        phase = {"kind": "mini_cut", "weeks": 6, "deficit_kcal": 1000}
        asked = planned(person, phase, cut_history=history, return_to_gain={"gain_weeks": 0})
        asked["maintenance"] = {"kcal_per_day": known, "standard_deviation_kcal": 120}
        answered = checked("plan_phases", asked)
        if not answered.is_answer or not answered.body["feasible"]:
            break
        end = answered.body["phases"][-1]["weeks"][-1]["at_end"]
        weight = end["weight_kg"]["mean"]
        person["weight_kg"] = round(weight, 1)
        person["body_fat"] = {"fat_fraction": round(end["fat_kg"]["mean"] / weight, 3), "method": "dxa"}
        history = {"cuts_last_12_months": cuts + 1, "weeks_since_last_cut": 1}
    assert person["weight_kg"] / 1.66**2 >= 18.5


def test_a_seasons_cuts_close_together_count_as_one() -> None:
    strategy = {
        "kind": "own", "surplus_kcal": 0, "cut_at_fat_fraction": 0.2, "cut_to_fat_fraction": 0.15,
        "deficit_kcal": 700, "longest_cut_weeks": 6, "maintenance_weeks": 1,
    }  # fmt: skip
    asked = season(WOMAN, strategy=strategy, cut_history=HISTORY)
    asked["limits"] = {"least_weeks_between_cuts": 2, "most_cuts_a_year": 6}
    checked("plan_season", asked)


# --- rules for lean athletes -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "person", [someone("female", 35, 166, 78, 0.33), someone("male", 55, 178, 92, 0.28)], ids=["woman", "man"]
)
def test_those_who_are_not_lean_are_not_throttled(person: Json) -> None:
    sessions = [{"met": 8, "minutes": 60, "times_per_week": 3}]
    person = person | {
        "activity": {"kind": "week", "steps_per_day": 2000, "sessions": sessions},
        "training": {"status": "untrained", "resistance_sessions_per_week": 0},
    }
    answered = checked(
        "plan_phases", planned(person, {"kind": "cut", "weeks": 20, "deficit_kcal": 500}, cut_history=HISTORY)
    )
    assert answered.body["feasible"]
    weeks = answered.body["phases"][0]["weeks"]
    read = person_of({"profile": person})
    assert read is not None
    # The deficit of 500 is set anew every few weeks, between which a smaller body needs up to 60 less. Who has become
    # lean meanwhile, by the lower end of the reading, keeps an energy availability of 30 instead: to the next 10 kcal,
    # for a block of weeks in which it takes some kilocalories less.
    for before, week in itertools.pairwise(weeks):
        maintenance = before["at_end"]["maintenance_kcal"]["mean"]
        room = min(maintenance - _available(read, each["at_end"]) for each in (before, week))
        assert maintenance - week["intake_kcal"] >= min(440, room - 25)


def _available(read: Person, at_end: Json) -> float:
    """What an energy availability of 30 takes of a body, as far as it holds at its fat [kcal/d]."""
    fat, weight = (at_end[key]["mean"] for key in ("fat_kg", "weight_kg"))
    return float(read.fading(fat / weight) * AVAILABILITY_LONG * (weight - fat) + read.exercise)


# --- stop signs in every form ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("operation", "form"),
    [
        ("document_plan", "text/csv"),
        ("document_plan", "text/markdown"),
        ("document_plan", "text/calendar"),
        ("draw_plan", "application/vnd.vegalite.v6+json"),
        ("plan_phases", "application/json"),
    ],
)
def test_stop_signs_are_in_every_form(operation: str, form: str) -> None:
    asked = planned(WOMAN, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY)
    answered = ask(operation, asked, accept=form)
    assert answered.status == 200
    # A calendar folds its lines (RFC 5545, 3.1).
    text = answered.text.replace("\r\n ", "")
    assert [sign for sign, pattern in STOP_SIGNS.items() if not pattern.search(text)] == []


def test_the_member_card_shows_what_ends_a_phase_early() -> None:
    assert "ends_early_when" in CARD.read_text(encoding="utf-8")


def test_a_refusal_has_a_heading_in_words_for_a_member() -> None:
    # The card shows a problem's title as its heading.
    answered = ask("plan_phases", planned(GIRL, {"kind": "mini_cut", "weeks": 4}))
    assert answered.status == 422
    assert "guard rail" not in answered.body["title"].lower()


# --- every raise is reported ----------------------------------------------------------------------------------------


def test_a_cut_that_is_raised_for_the_body_that_its_weeks_lead_to_names_the_rail() -> None:
    lean = someone("male", 29, 180.8, 72.8, 0.1419)
    week = {"kind": "week", "steps_per_day": 8000, "sessions": [{"met": 5, "minutes": 20, "times_per_week": 5}]}
    lean |= {"activity": week, "training": {"status": "intermediate", "resistance_sessions_per_week": 4}}
    asked = planned(
        lean, {"kind": "cut", "weeks": 12, "deficit_kcal": 500}, cut_history={"cuts_last_12_months": 3}
    )  # fmt: skip
    told = checked("plan_phases", asked).body
    eaten = [week["intake_kcal"] for week in told["phases"][0]["weeks"]]
    assert eaten[-1] > eaten[-3]
    assert ("fat_supply", "capped") in {(rail["id"], rail["action"]) for rail in told["guard_rails"]}


# --- no weighing, and nothing of fat, to minors and with an eating disorder ------------------------------------------

STRAINED = {"minor": (15, CLEAR), "eating_disorder": (25, CLEAR | {"eating_disorder": "past"})}


@pytest.mark.parametrize("who", STRAINED)
def test_a_review_sends_to_a_clinician_instead_of_asking_to_weigh_everything(who: str) -> None:
    age, screening = STRAINED[who]
    girl = someone("female", age, 165, 60, 0.26)
    logged = log(random.Random(2), girl, days=42, eaten=2500, maintenance=2000, ratio=0.8, noise_kg=0.2)
    asked = reviewed(girl, "maintenance", 2000, logged, maintenance=2000, screening=screening)
    told = checked("review_phase", asked).body
    assert told["question"]["ask"]["code"] == "QUESTION_WITH_CLINICIAN"
    assert list(leanness(told)) == []
    grown = ask("review_phase", reviewed(girl | {"age_years": 25}, "maintenance", 2000, logged, maintenance=2000)).body
    assert grown["question"]["ask"]["code"] == "QUESTION_WEIGH_FOOD"


@pytest.mark.parametrize("who", STRAINED)
def test_a_gain_that_is_too_fast_is_told_without_a_word_of_fat(who: str) -> None:
    age, screening = STRAINED[who]
    boy = someone("male", age, 178, 62, 0.14)
    for phase in ({"surplus_kcal": 1000, "weeks": 12}, {"surplus_kcal": 150, "weeks": 12}):
        answered = checked("plan_phases", planned(boy, {"kind": "gain"} | phase, screening=screening))
        assert has_code(answered.body, "GAIN_RATE")
        assert list(leanness(answered.body)) == []


# --- rest of a body that gains --------------------------------------------------------------------------------------

# Logs less than half of what is eaten. Told no less than 0.8 of rest, and so eating far more, this body gains.
HEAVIER = someone("male", 30, 184.0, 90.0, 0.2, training={"status": "novice", "resistance_sessions_per_week": 3})
LITTLE = log(random.Random(3), HEAVIER, days=84, ratio=0.45)


def test_a_hold_keeps_up_with_the_rest_of_a_body_that_it_makes_heavier() -> None:
    then = {"maintenance_weeks": 4, "gain_weeks": 12}
    held = planned(HEAVIER, {"kind": "maintenance", "weeks": 26}, log=LITTLE, return_to_gain=then)
    weeks = checked("plan_phases", held).body["phases"][0]["weeks"]
    assert weeks[-1]["intake_kcal"] > weeks[0]["intake_kcal"]


def test_a_season_keeps_up_with_the_rest_of_a_body_that_it_makes_heavier() -> None:
    asked = season(HEAVIER, log=LITTLE) | {"horizon_weeks": 52}
    told = checked("plan_season", asked).body
    weeks = told["plan"]["weeks"]
    assert weeks[-1]["intake_kcal"] > weeks[0]["intake_kcal"]
    assert has_code(told["plan"], "RAISED_TO_FLOOR")


def test_a_forecast_of_a_floor_at_rest_that_the_body_grows_out_of_is_refused() -> None:
    def held(weeks: int) -> Json:
        question = {"kind": "path", "schedule": [{"weeks": weeks, "intake_kcal": math.ceil(0.8 * resting) + 10}]}
        return ask("forecast_intake", forecast(HEAVIER, question, log=LITTLE)).body

    resting = ask("estimate_maintenance", {"profile": HEAVIER}).body["resting_kcal"]["mean"]
    assert not has_code(held(1), "REFUSED")
    assert has_code(held(52), "REFUSED_HELD")
