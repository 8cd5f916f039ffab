"""The checker can fail: an answer that is inside every rail is moved past one, and caught by the rule's name.

A self-test of the checker, with answers of the service as its material.
"""

import copy
import random
from collections.abc import Callable
from typing import Any

import pytest

from .checker import rule_of, violations
from .people import CLEAR, log, someone
from .requests import roster
from .service import ask
from .test_seen import DISORDER, HISTORY, MAN, PREGNANT, forecast, planned, reviewed, season
from .test_sweep import ONCE

Json = dict[str, Any]


def test_a_plan_moved_past_a_rail_is_caught() -> None:
    """The checker can fail: a plan's answer with one figure moved is caught by the rule that it breaks."""
    asked = planned(MAN, {"kind": "mini_cut", "weeks": 4, "deficit_kcal": 400}, cut_history=HISTORY)
    answer = ask("plan_phases", asked).body
    assert violations("plan_phases", asked, 200, answer) == []

    def week(body: Json) -> Json:
        found: Json = body["phases"][0]["weeks"][1]
        return found

    moves: dict[str, Callable[[Json], None]] = {
        "deficit_share": lambda body: week(body).update(intake_kcal=1700),
        "intake_floor": lambda body: week(body).update(intake_kcal=1400),
        "floor_told": lambda body: week(body).update(intake_kcal=1190),
        "energy_availability": lambda body: week(body).update(intake_kcal=1600),
        "macronutrients": lambda body: week(body).update(carbohydrate_g=900),
        "protein": lambda body: week(body).update(protein_g=100),
        "dietary_fat": lambda body: week(body).update(fat_g=30),
        "bmi": lambda body: week(body)["at_end"]["weight_kg"].update(mean=58.0),
        "body_fat": lambda body: week(body)["at_end"]["fat_fraction"].update(mean=0.05),
        "fat_supply": lambda body: week(body)["at_end"]["fat_kg"].update(mean=3.0),
        "tissue_loss": lambda body: body["phases"][0]["weeks"][-1]["at_end"]["weight_kg"].update(mean=72.0),
        "hold_resting": lambda body: body["phases"][1]["weeks"][0].update(intake_kcal=1500),
        "gain_rate": lambda body: body["phases"][2]["weeks"][-1]["at_end"]["weight_kg"].update(mean=90.0),
        "negative": lambda body: week(body)["at_end"]["fat_kg"].update(lower=-0.1),
        "not_finite": lambda body: week(body)["at_end"]["fat_kg"].update(mean=float("nan")),
        "stop_signs": lambda body: body["phases"][0].update(ends_early_when=[]),
        "caution": lambda body: body.update(cautions=[]),
        "twice": lambda body: body.update(
            guard_rails=[{"id": "bmi", "action": "warned", "code": "TWICE", "text": ""}] * 2
        ),
    }
    for rule, move in moves.items():
        changed = copy.deepcopy(answer)
        move(changed)
        found = {rule_of(what) for what in violations("plan_phases", asked, 200, changed)}
        assert rule in found, (rule, found)


def test_a_day_moved_is_caught() -> None:
    asked = planned(MAN, {"kind": "mini_cut", "weeks": 4, "deficit_kcal": 400}, cut_history=HISTORY)
    party = {"weekday": "saturday", "extra_kcal": 200, "alcohol_g": 30}
    asked["week"] = {"training": [{"weekday": "monday"}, {"weekday": "friday"}], "flexible_days": [party]}
    answer = ask("plan_phases", asked).body
    assert violations("plan_phases", asked, 200, answer) == []

    def day(body: Json, number: int) -> Json:
        found: Json = body["phases"][0]["weeks"][1]["by_day"][number]
        return found

    moves: dict[str, Callable[[Json], None]] = {
        "days": lambda body: body["phases"][1]["weeks"][0].update(by_day=[]),
        "week_total": lambda body: day(body, 0).update(intake_kcal=day(body, 0)["intake_kcal"] + 10),
        "day_nutrients": lambda body: day(body, 0).update(carbohydrate_g=900),
        "day_protein": lambda body: day(body, 1).update(protein_g=100),
        "day_fat": lambda body: day(body, 1).update(fat_g=20),
        "meals": lambda body: day(body, 1).update(meals_protein_g=[200]),
        "training": lambda body: day(body, 4).update(training_minutes=0),
        "alcohol": lambda body: day(body, 0).update(alcohol_g=20),
        "flexible_days": lambda body: day(body, 5).update(alcohol_g=10),
        "intake_floor": lambda body: day(body, 2).update(intake_kcal=1400),
        "protein": lambda body: body.update(protein_reference_kg=60.0),
    }
    for rule, move in moves.items():
        changed = copy.deepcopy(answer)
        move(changed)
        found = {rule_of(what) for what in violations("plan_phases", asked, 200, changed)}
        assert rule in found, (rule, found)


def test_another_size_moved_past_a_rail_is_caught() -> None:
    asked = planned(MAN, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY)
    answer = ask("plan_phases", asked).body
    assert violations("plan_phases", asked, 200, answer) == []
    assert {size["size"] for size in answer["sizes"]} >= {"gentle", "steady", "brisk"}
    moves: dict[str, Callable[[Json], None]] = {
        "size_intake_floor": lambda size: size.update(intake_kcal=1400),
        "size_deficit_share": lambda size: size.update(intake_kcal=1700),
        "size_tissue_loss": lambda size: size["at_end"]["weight_kg"].update(mean=72.0),
        "size_unwarned fat_supply": lambda size: size.update(guard_rails=[]),
    }
    for rule, move in moves.items():
        changed = copy.deepcopy(answer)
        move(changed["sizes"][-1])
        found = {rule_of(what) for what in violations("plan_phases", asked, 200, changed)}
        assert found & {rule, rule.split()[0]}, (rule, found)


def test_a_lever_moved_past_a_rail_is_caught() -> None:
    asked = planned(MAN, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY)
    answer = ask("plan_phases", asked).body
    assert violations("plan_phases", asked, 200, answer) == []
    assert [lever["kind"] for lever in answer["levers"]] == ["steps", "cycling"]
    moves: dict[str, Callable[[Json], None]] = {
        "lever_intake_floor": lambda lever: lever["together"].update(intake_kcal=1400),
        "lever_deficit_share": lambda lever: lever["together"].update(intake_kcal=2150),
        "lever_energy_availability": lambda lever: lever["together"].update(intake_kcal=1800),
        "lever_maintenance": lambda lever: lever["instead"].update(intake_kcal=3200),
        "lever_more": lambda lever: lever["instead"].update(intake_kcal=2700),
        "lever_burnt": lambda lever: lever["burnt_kcal"].update(mean=300.0),
        "lever_kept": lambda lever: lever["kept_kcal"].update(mean=400.0),
        "lever_body_fat": lambda lever: lever["together"]["fat_change_kg"].update(mean=-9.0),
        "lever_silent": lambda lever: lever.update(instead=None, reasons=lever["reasons"][:1]),
    }
    for rule, move in moves.items():
        changed = copy.deepcopy(answer)
        move(changed["levers"][-1])
        found = caught("plan_phases", asked, changed)
        assert rule in found, (rule, found)


def caught(operation: str, asked: Json, answer: Json) -> set[str]:
    """Names of the rules that an answer breaks."""
    return {rule_of(what) for what in violations(operation, asked, 200, answer)}


def test_a_forecast_moved_past_a_rail_is_caught() -> None:
    asked = forecast(MAN, {"kind": "path", "schedule": [{"weeks": 5, "intake_kcal": 2900, "protein_g_per_kg": 2.0}]})
    answer = ask("forecast_intake", asked).body
    assert caught("forecast_intake", asked, answer) == set()
    low = copy.deepcopy(answer)
    low["weeks"][2]["intake_kcal"] = 1100
    assert {"floor_told", "resting_told", "intake_floor", "deficit_share"} <= caught("forecast_intake", asked, low)
    light = copy.deepcopy(answer)
    light["weeks"][4]["at_end"]["weight_kg"]["mean"] = 59.0
    assert {"bmi", "tissue_loss"} <= caught("forecast_intake", asked, light)


def test_a_season_moved_past_a_rail_is_caught() -> None:
    man = someone("male", 30, 180, 84, 0.2)
    asked = season(man, cut_history=HISTORY)
    answer = ask("plan_season", asked).body
    assert caught("plan_season", asked, answer) == set()
    assert answer["plan"]["totals"]["cuts"]
    at = next(i for i, week in enumerate(answer["plan"]["weeks"]) if week["kind"] == "mini_cut")
    low = copy.deepcopy(answer)
    low["plan"]["weeks"][at]["intake_kcal"] = 1100
    assert {"floor_told", "intake_floor", "deficit_share"} <= caught("plan_season", asked, low)
    lean = copy.deepcopy(answer)
    lean["plan"]["weeks"][at]["at_end"]["fat_fraction"]["mean"] = 0.05
    assert "body_fat" in caught("plan_season", asked, lean)


def test_a_review_moved_past_a_rail_is_caught() -> None:
    logged = log(random.Random(4), MAN, days=28, eaten=2900, maintenance=3300, profile_ago=14)
    asked = reviewed(MAN, "mini_cut", 2900, logged, days=14, weeks=6, maintenance=3300)
    answer = ask("review_phase", asked).body
    before = caught("review_phase", asked, answer)
    low = copy.deepcopy(answer)
    low["weeks"][1]["intake_kcal"] = 1100
    assert {"floor_told", "intake_floor", "deficit_share"} <= caught("review_phase", asked, low) - before
    stepped = answer | {"correction_kcal": -250, "verdict": "within_interval"}
    assert "review" in caught("review_phase", asked, stepped) - before


def test_a_gain_lowered_on_plan_without_need_is_caught() -> None:
    """A gain as planned is lowered for its fastest rate alone, and for no more than that takes."""
    ready = (once["request"] for once in ONCE if once["operation"] == "review_phase" and once["broke"] == "review")
    asked = next(request for request in ready if request["phase"]["kind"] == "gain" and _correction(request) < 0)
    answer = ask("review_phase", asked).body
    assert answer["verdict"] == "within_interval"
    assert caught("review_phase", asked, answer) == set()
    unsaid = answer | {"guard_rails": []}
    slow = copy.deepcopy(answer)
    for week in slow["weeks"]:
        week["at_end"] = slow["weeks"][0]["at_end"]
    for lowered in (unsaid, slow):
        assert "review" in caught("review_phase", asked, lowered)


def _correction(request: Json) -> int:
    found: int = ask("review_phase", request).body["correction_kcal"]
    return found


@pytest.mark.parametrize(
    ("screening", "profile"),
    [(DISORDER, MAN), (PREGNANT, MAN), (None, MAN), (CLEAR, MAN | {"age_years": 17})],
    ids=["eating_disorder", "pregnancy", "unscreened", "minor"],
)
def test_a_deficit_for_whom_none_is_safe_is_caught(screening: Json | None, profile: Json) -> None:
    answer = ask("plan_phases", planned(MAN, {"kind": "mini_cut", "weeks": 4}, cut_history=HISTORY)).body
    asked = planned(profile, {"kind": "mini_cut", "weeks": 4}, screening=screening, cut_history=HISTORY)
    assert {"who", "need"} <= caught("plan_phases", asked, answer)


def test_an_intake_for_the_starved_is_caught() -> None:
    answer = ask("plan_phases", planned(MAN, {"kind": "maintenance", "weeks": 4}, cut_history=HISTORY)).body
    asked = planned(MAN | {"weight_kg": 50.0}, {"kind": "maintenance", "weeks": 4}, cut_history=HISTORY)
    assert "refeeding" in caught("plan_phases", asked, answer)


def test_a_fault_is_caught() -> None:
    assert violations("plan_phases", {}, 500, {}) == ["fault: status 500"]


def test_a_roster_in_another_order_is_caught() -> None:
    rng = random.Random(6)
    rosters = [made for made in (roster(rng) for _ in range(40)) if len(made["members"]) > 2]
    for asked in rosters:
        answer = ask("rank_roster", asked).body
        assert caught("rank_roster", asked, answer) == set()
        moves: list[Callable[[Json], None]] = [
            lambda body: body["members"].pop(),
            lambda body: body["members"].reverse(),
            lambda body: body["members"][0]["attention"].update(level=-1),
            lambda body: body["members"][0]["attention"].update(change_kcal=-777),
        ]
        for move in moves:
            changed = copy.deepcopy(answer)
            move(changed)
            assert caught("rank_roster", asked, changed) == {"roster"}
    assert len(rosters) > 5
