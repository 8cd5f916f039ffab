"""What an answer says is what it tells: no sentence against its own fields, nor against another of its sentences."""

import random
from datetime import timedelta
from typing import Any

import pytest

from .people import CLEAR, START, log
from .test_seen import MAN, WOMAN, checked, reviewed
from .words import notes

Json = dict[str, Any]


def lost(person: Json, change_a_week: float, *, days: int = 28, kcal: float = 1950.0, food: bool = True) -> Json:
    """A log of somebody whose scale falls so fast, whatever is logged."""
    made = log(
        random.Random(4), person, days=days, eaten=kcal, change_a_week=change_a_week, noise_kg=0.3, partial=0.0,
        profile_ago=days,
    )  # fmt: skip
    return made if food else made | {"intakes": []}


def texts(answer: Json) -> str:
    """All reasons of a review."""
    return " ".join(reason["text"] for reason in answer["reasons"])


def test_nobody_is_told_to_keep_to_a_plan_that_is_over_or_not_safe() -> None:
    """Both on days that are too early for a verdict, and with more logged than planned."""
    logged = log(random.Random(5), WOMAN, days=12, eaten=2150.0, change_a_week=-0.004, noise_kg=0.2, partial=0.0)
    asked = reviewed(WOMAN, "cut", 1900, logged, days=12, maintenance=2300)
    on = checked("review_phase", asked).body
    assert on["verdict"] == "too_early"
    assert "Keep to the plan" in texts(on)
    assert "try to keep to the plan" in texts(on)
    for ended in (asked | {"is_finished": True}, asked | {"screening": CLEAR | {"is_pregnant": True}}):
        answer = checked("review_phase", ended).body
        assert answer["decision"] == "end"
        assert "to the plan" not in texts(answer)


@pytest.mark.parametrize("food", [True, False])
def test_a_fast_loss_is_raised_whoever_logs_the_food(food: bool) -> None:
    """3 % a week is too fast by the scale: what the log says of food, and a reading drawn to it, hides nothing."""
    logged = lost(WOMAN, -0.03, food=food)
    answer = checked("review_phase", reviewed(WOMAN, "cut", 1950, logged, maintenance=2300, weeks=12)).body
    assert answer["correction_kcal"] > 0
    rail = next(rail for rail in answer["guard_rails"] if rail["code"] == "REVIEW_LOST_FAST")
    caution = next(note for note in answer["cautions"] if note["code"] == "WARNED_LOGGED_LOSS")
    assert (rail["id"], rail["action"]) == ("logged_loss", "capped")
    assert caution["params"]["percent"] == pytest.approx(100 * rail["observed"], abs=0.05)


@pytest.mark.parametrize(("change_a_week", "kcal"), [(-0.02, 1950.0), (-0.012, 1400.0), (-0.03, 1950.0)])
def test_nobody_who_should_eat_more_hears_that_there_is_no_need_to(change_a_week: float, kcal: float) -> None:
    """Losing over 1 % a week, logging less than a rail allows, or raised."""
    logged = lost(WOMAN, change_a_week, kcal=kcal)
    answer = checked("review_phase", reviewed(WOMAN, "cut", 1950, logged, maintenance=2300, weeks=12)).body
    assert answer["verdict"] == "faster"
    assert "no need to eat more" not in texts(answer)


def test_who_is_ahead_and_logs_enough_need_not_eat_more() -> None:
    logged = lost(MAN, -0.0095, kcal=2850.0)
    answer = checked("review_phase", reviewed(MAN, "cut", 2850, logged, maintenance=3050, weeks=12)).body
    assert answer["verdict"] == "faster"
    assert "no need to eat more" in texts(answer)


@pytest.mark.parametrize("kind", ["maintenance", "gain"])
def test_an_unplanned_loss_is_reported_as_a_rail(kind: str) -> None:
    """By the scale as well, and with no step announced that is not taken."""
    intake = 2300 if kind == "maintenance" else 2420
    logged = lost(WOMAN, -0.014, kcal=2000.0)
    answer = checked("review_phase", reviewed(WOMAN, kind, intake, logged, maintenance=2300, weeks=12)).body
    rail = next(rail for rail in answer["guard_rails"] if rail["id"] == "logged_loss")
    assert rail["code"] == "REVIEW_UNEXPLAINED_LOSS"
    assert ("Eat more, in steps" in rail["text"]) is (answer["correction_kcal"] > 0)


def test_a_gain_over_maintenance_is_not_told_of_steps_that_it_does_not_take() -> None:
    logged = lost(WOMAN, -0.0025, days=182, kcal=2000.0)
    asked = reviewed(WOMAN, "gain", 2420, logged, days=182, weeks=40, maintenance=2300)
    answer = checked("review_phase", asked).body
    assert answer["correction_kcal"] == 0
    assert "REVIEW_UNEXPLAINED_LOSS" in {reason["code"] for reason in answer["reasons"]}
    assert "in steps" not in texts(answer)


def test_nothing_is_asked_to_settle_a_phase_whose_purpose_is_met() -> None:
    logged = lost(WOMAN, -0.012, kcal=1700.0)
    asked = reviewed(WOMAN, "cut", 1950, logged, maintenance=2300, weeks=12, fat_loss_kg=1.0)
    answer = checked("review_phase", asked).body
    assert "REVIEW_PURPOSE_MET" in {reason["code"] for reason in answer["reasons"]}
    assert answer["verdict"] == "faster"
    assert answer["question"] is None


@pytest.mark.parametrize("intake", [2180, 1900])
def test_a_check_in_says_what_is_added(intake: int) -> None:
    logged = lost(WOMAN, -0.003, kcal=float(intake))
    logged["check_ins"] = [
        {"date": (START - timedelta(days=ago)).isoformat(), "hunger": 5, "sleep": 1} for ago in (9, 2)
    ]
    answer = checked("review_phase", reviewed(WOMAN, "cut", intake, logged, maintenance=2300, weeks=12)).body
    said = next(note for note in notes(answer) if note["code"] == "CHECK_IN_WORN")
    assert f"eat {answer['correction_kcal']:.0f} kcal a day more" in said["text"]
