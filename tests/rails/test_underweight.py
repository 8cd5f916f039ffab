"""Underweight adults: told so and of the way from there, wherever they ask, and never told to eat under maintenance."""

import copy
import random
from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest

from .checker import rule_of, violations
from .people import CLEAR, START, log, someone
from .service import ask
from .test_seen import checked, decided, forecast, planned, reviewed, season
from .words import notes

Json = dict[str, Any]
WOMAN = someone("female", 30, 168, 48.0, 0.22)  # BMI 17.0
MAN = someone("male", 45, 180, 57.0, 0.11)  # BMI 17.6
GIRL = someone("female", 15, 168, 48.0, 0.22)
CODE = "UNDERWEIGHT"
NEEDS = 1900


def hold_reviewed(person: Json, *, eaten: float, told: float = NEEDS, weeks: int = 16) -> Json:
    """A hold of eight weeks so far, by somebody who needs what was planned for and eats otherwise."""
    logged = log(random.Random(8), person, days=70, eaten=eaten, maintenance=NEEDS, partial=0.0)
    return reviewed(person, "maintenance", told, logged, days=56, weeks=weeks, maintenance=NEEDS)


def asked_of(person: Json) -> Iterator[tuple[str, Json]]:
    """What somebody may ask of every operation that they need not be refused by."""
    yield "plan_phases", planned(person, {"kind": "maintenance", "weeks": 4})
    yield "plan_phases", planned(person, {"kind": "gain", "weeks": 8})
    # Told to who has eaten little of late, a hold at what holds them now would keep them where they are.
    needs = ask("estimate_maintenance", {"profile": person}).body["maintenance_kcal"]["mean"]
    little = round(0.7 * needs)
    yield "plan_phases", planned(person, {"kind": "maintenance", "weeks": 4}, current_intake_kcal=little)
    yield "plan_season", season(person) | {"strategy": {"kind": "ready_made", "name": "slow_gain_no_cut"}}
    yield "plan_season", season(person, current_intake_kcal=little) | {
        "strategy": {"kind": "own", "label": "hold", "surplus_kcal": 0}, "horizon_weeks": 70,
    }  # fmt: skip
    yield (
        "forecast_intake",
        forecast(person, {"kind": "path", "schedule": [{"weeks": 4, "intake_kcal": round(needs) + 50}]}),
    )
    yield "decide_phase", decided(person)
    yield "estimate_maintenance", {"profile": person}
    yield "read_trend", {"profile": person, "log": log(random.Random(8), person)}
    yield "review_phase", hold_reviewed(person, eaten=NEEDS)


def codes(answer: Json) -> set[str]:
    """The codes of all that is said."""
    return {note["code"] for note in notes(answer)}


@pytest.mark.parametrize("person", [WOMAN, MAN], ids=["woman", "man"])
def test_they_are_told_wherever_they_ask(person: Json) -> None:
    for operation, request in asked_of(person):
        answered = checked(operation, request)
        assert answered.is_answer, (operation, answered.body)
        assert CODE in codes(answered.body), operation


@pytest.mark.parametrize(("person", "is_told"), [(WOMAN, True), (MAN, True), (GIRL, False)])
def test_so_are_they_where_a_body_is_measured(person: Json, is_told: bool) -> None:
    asked = {name: person[name] for name in ("sex", "age_years", "height_cm", "weight_kg")} | {
        "training_status": "intermediate",
        "measurements": [{"kind": "reading", "fat_fraction": 0.2, "method": "dxa"}],
    }
    assert (CODE in codes(checked("estimate_body_composition", asked).body)) is is_told
    starved = checked("estimate_body_composition", asked | {"weight_kg": 42.0, "age_years": 30}).body
    assert {CODE, "REFUSED_REFEEDING"} <= codes(starved)


def test_minors_who_have_percentiles_are_not() -> None:
    """A body mass index of 17 is usual at fifteen."""
    for operation, request in asked_of(GIRL):
        answered = ask(operation, request)
        assert not answered.is_answer or CODE not in codes(answered.body), operation


def test_others_are_not() -> None:
    for operation, request in asked_of(someone("female", 30, 168, 56.0, 0.25)):
        answered = ask(operation, request)
        assert not answered.is_answer or CODE not in codes(answered.body), operation


def test_a_hold_is_at_maintenance_whatever_was_eaten_of_late() -> None:
    asked = planned(WOMAN, {"kind": "maintenance", "weeks": 4}, current_intake_kcal=1250)
    answer = checked("plan_phases", asked).body
    least = answer["maintenance_kcal"]["mean"] - 11
    assert [week["intake_kcal"] for phase in answer["phases"] for week in phase["weeks"]] >= [least] * 4


@pytest.mark.parametrize("told", [1500, 1700])
def test_a_hold_under_maintenance_is_raised_at_once(told: float) -> None:
    """Steps wait for two readings; this does not."""
    answer = checked("review_phase", hold_reviewed(WOMAN, eaten=told, told=told)).body
    least = answer["maintenance_kcal"]["mean"] - 11
    assert answer["correction_kcal"] > 0
    assert min(week["intake_kcal"] for week in answer["weeks"]) >= least


def test_who_comes_to_be_underweight_as_they_eat_is_told() -> None:
    """By what they log, which is less than was told, for the weeks to come."""
    light = someone("female", 30, 168, 52.6, 0.26)

    def told_on(eaten: float) -> set[str]:
        logged = log(random.Random(8), light, days=70, eaten=eaten, maintenance=NEEDS, partial=0.0)
        asked = reviewed(light, "maintenance", 2200, logged, days=56, weeks=34, maintenance=2200)
        return codes(checked("review_phase", asked).body)

    assert "UNDERWEIGHT_AHEAD" in told_on(0.93 * NEEDS)
    assert "UNDERWEIGHT_AHEAD" not in told_on(0.99 * NEEDS)


def test_a_hold_moved_under_maintenance_is_caught() -> None:
    asked = planned(WOMAN, {"kind": "maintenance", "weeks": 4})
    answer = checked("plan_phases", asked).body
    low, silent = copy.deepcopy(answer), copy.deepcopy(answer)
    for week in low["phases"][0]["weeks"]:
        week["intake_kcal"] -= 40
    silent["cautions"] = [note for note in answer["cautions"] if note["code"] != CODE]
    for rule, moved in {"hold_underweight": low, "underweight": silent}.items():
        assert rule in {rule_of(what) for what in violations("plan_phases", asked, 200, moved)}


def test_a_start_in_the_past_changes_nothing_of_it() -> None:
    asked = planned(WOMAN, {"kind": "maintenance", "weeks": 4}, screening=CLEAR)
    asked["start_date"] = (START - timedelta(days=300)).isoformat()
    assert CODE in codes(checked("plan_phases", asked).body)


def test_who_is_underweight_but_for_water_is_answered() -> None:
    """A new programme's water lifts the scale over a body mass index of 18.5; rails read tissue and what is usually
    carried, in the planner as at the gate: a hold rounded down to the ten was refused at the gate."""
    training = {"status": "advanced", "resistance_sessions_per_week": 4, "is_new_programme": True}
    sessions = [{"met": 11.0, "minutes": 34, "times_per_week": 6}, {"met": 8.0, "minutes": 30, "times_per_week": 1}]
    for steps in range(1800, 3000, 60):
        week = {"kind": "week", "steps_per_day": steps, "sessions": sessions}
        person = someone("female", 30, 159.8, 47.5, training=training, activity=week)
        person["body_fat"] = {"fat_fraction": 0.238, "method": "bmi_equation"}
        hold = {"kind": "maintenance", "weeks": 26}
        assert ask("decide_phase", decided(person, current_intake_kcal=1992)).status == 200
        assert ask("plan_phases", planned(person, hold, current_intake_kcal=1992)).status == 200
