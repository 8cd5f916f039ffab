"""People who are ordinary in their own way, and what they must get."""

import random
from typing import Any

import pytest

from .people import CLEAR, log, someone
from .service import ask
from .test_seen import HISTORY, checked, planned
from .words import ASKS, REFERRAL, leanness, rails, says

Json = dict[str, Any]


def intakes(answer: Json) -> list[float]:
    """What is told for each week."""
    return [week["intake_kcal"] for phase in answer["phases"] for week in phase["weeks"]]


def resting(profile: Json) -> float:
    """Resting energy of a profile."""
    return float(ask("estimate_maintenance", {"profile": profile}).body["resting_kcal"]["mean"])


def test_a_weeks_water_ends_no_diet() -> None:
    # BMI 18.7, of which 0.4 kg of tissue may go; the first days' water takes more than that from the scale.
    woman = someone("female", 30, 155.1, 45, 0.27)
    asked = planned(woman, {"kind": "mini_cut", "fat_loss_kg": 0.3, "weeks": 2}, cut_history=HISTORY)
    answer = checked("plan_phases", asked).body
    assert answer["feasible"]
    assert answer["phases"][0]["weeks"][0]["at_end"]["weight_kg"]["mean"] / 1.551**2 < 18.5
    assert "bmi" in rails(answer)


@pytest.mark.parametrize("level", ["sedentary", "light", "active"])
def test_a_heavy_man_of_55_gets_five_hundred_or_more(level: str) -> None:
    man = someone("male", 55, 178, 92, 0.28) | {"activity": {"kind": "level", "level": level}}
    phase = {"kind": "cut", "weeks": 12, "deficit_kcal": 600}
    answer = checked("plan_phases", planned(man, phase, cut_history=HISTORY)).body
    assert answer["feasible"]
    assert answer["maintenance_kcal"]["mean"] - intakes(answer)[0] >= 500


@pytest.mark.parametrize("sex", ["male", "female"])
def test_somebody_who_logs_seven_tenths_gets_a_useful_mini_cut(sex: str) -> None:
    person = someone("male", 30, 180, 84, 0.2) if sex == "male" else someone("female", 30, 166, 68, 0.31)
    need = 2800.0 if sex == "male" else 2250.0
    logged = log(random.Random(21), person, days=42, eaten=need, ratio=0.7, maintenance=need)
    answer = checked(
        "plan_phases", planned(person, {"kind": "mini_cut", "weeks": 6}, cut_history=HISTORY, log=logged)
    ).body
    assert answer["feasible"]
    assert answer["phases"][0]["change"]["fat_kg"]["mean"] <= -0.5
    # What is eaten, by the ratio that is true, is a deficit inside the share of maintenance.
    eaten = intakes(answer)[0] / 0.7
    assert 0.68 * need <= eaten <= need - 250


@pytest.mark.parametrize("kind", ["mini_cut", "cut", "maintenance"])
def test_an_honest_woman_with_a_low_maintenance_is_never_told_under_resting_energy(kind: str) -> None:
    woman = someone("female", 40, 160, 50, 0.27)
    logged = log(random.Random(22), woman, days=56, eaten=1450, maintenance=1450, noise_kg=0.3)
    phase = {"kind": kind, "weeks": 8 if kind == "cut" else 4}
    answer = checked("plan_phases", planned(woman, phase, cut_history=HISTORY, log=logged)).body
    told = intakes(answer) if answer["feasible"] else [answer["maintenance_kcal"]["mean"]]
    assert min(told) >= min(resting(woman), 1450) - 1


def test_a_small_old_womans_hold_is_no_gain() -> None:
    woman = someone("female", 78, 150, 40, 0.28) | {
        "activity": {"kind": "level", "level": "sedentary"},
        "training": {"status": "untrained", "resistance_sessions_per_week": 0},
    }
    logged = log(random.Random(23), woman, days=42, eaten=1120, maintenance=1120, noise_kg=0.3)
    asked = planned(woman, {"kind": "maintenance", "weeks": 8}, log=logged, return_to_gain={"gain_weeks": 0})
    answer = checked("plan_phases", asked).body
    assert answer["feasible"]
    # Maintenance as read, or the least intake of women where what is eaten of it lies above that.
    assert max(intakes(answer)) <= max(answer["maintenance_kcal"]["mean"] + 10, 1200)
    assert all(week["energy_balance_kcal"] <= 30 for week in answer["phases"][0]["weeks"])


def test_a_seventeen_year_old_is_refused_a_deficit_and_held_at_need() -> None:
    boy = someone("male", 17, 178, 70, 0.16)
    refused = checked("plan_phases", planned(boy, {"kind": "mini_cut", "weeks": 4}))
    assert refused.status == 422
    assert says(refused.body, REFERRAL)
    for phase in ({"kind": "maintenance", "weeks": 4}, {"kind": "gain", "weeks": 8}):
        answer = checked("plan_phases", planned(boy, phase)).body
        assert answer["feasible"]
        assert list(leanness(answer)) == []


def test_a_cyclist_at_5500_is_planned_for_and_asked_about() -> None:
    man = someone("male", 26, 182, 70, 0.10) | {"activity": {"kind": "level", "level": "very_active"}}
    known = {"kcal_per_day": 5500, "standard_deviation_kcal": 200}
    assert 2.5 < 5500 / resting(man) < 5
    answer = checked("plan_phases", planned(man, {"kind": "maintenance", "weeks": 4}, maintenance=known)).body
    assert answer["feasible"]
    assert answer["maintenance_kcal"]["mean"] == 5500
    assert min(intakes(answer)) >= 5400
    assert says(answer, ASKS)


def test_everyone_here_is_screened_clear() -> None:
    """What these people get or do not get is for their bodies and logs alone."""
    assert planned({}, {})["screening"] == CLEAR
