"""Random valid requests for a plan: always an answer, always inside every rail, mostly a useful plan.

The rails are checked again from the answer's own numbers, by ``rails_recheck``.
"""

import copy
import itertools
import random
from typing import Any, NamedTuple

import msgspec
import pytest
from properties.plan_requests import CLEAR, request
from properties.rails_recheck import violations
from steelyard.core.guard_rails import Refused
from steelyard.http.plans import plan_phases
from steelyard.http.schemas.plans import PlanRequest

Json = dict[str, Any]
SIZES = [pytest.param(1000, id="1000"), pytest.param(20_000, id="20000", marks=pytest.mark.long)]


def plan(asked: Json) -> Json:
    """The answer to a request, as JSON-like data. The request is held to its schema."""
    answer = plan_phases.compute(msgspec.convert(asked, PlanRequest, strict=False))
    return msgspec.json.decode(msgspec.json.encode(answer))


class Answered(NamedTuple):
    asked: Json
    answer: Json


class Sweep(NamedTuple):
    answered: list[Answered]
    refusals: dict[str, int]


_sweeps: dict[tuple[int, bool], Sweep] = {}


def sweep(size: int, *, eligible: bool = False) -> Sweep:
    """Ask ``size`` seeded requests. An exception other than a refusal fails the test that asks."""
    key = (size, eligible)
    if key not in _sweeps:
        rng = random.Random(20260302 + eligible)
        answered: list[Answered] = []
        refusals: dict[str, int] = {}
        for _ in range(size):
            asked = request(rng, eligible=eligible)
            try:
                answered.append(Answered(asked, plan(asked)))
            except Refused as refused:
                refusals[refused.action.id] = refusals.get(refused.action.id, 0) + 1
        _sweeps[key] = Sweep(answered, refusals)
    return _sweeps[key]


# --- every answer is inside every rail -------------------------------------------------------------------------


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("eligible", [False, True])
def test_every_answer_is_inside_every_rail(size: int, eligible: bool) -> None:
    found = [
        (violation, answered.asked)
        for answered in sweep(size, eligible=eligible).answered
        for violation in violations(answered.asked, answered.answer)
    ]
    assert not found, f"{len(found)} of {size}; first: {found[0]}"


# Requests that once came out past a rail.
HEAVY: Json = {
    "profile": {
        "sex": "female",
        "age_years": 56,
        "height_cm": 161.6,
        "weight_kg": 135.5,
        "body_fat": {"fat_fraction": 0.55, "method": "hydrostatic"},
        "activity": {"kind": "level", "level": "sedentary"},
        "training": {"status": "intermediate", "resistance_sessions_per_week": 2},
    },
    "screening": CLEAR,
    "start_date": "2026-03-02",
    "phase": {"kind": "mini_cut", "weeks": 4, "protein_g_per_kg": 3.0},
    "return_to_gain": {"maintenance_weeks": 1, "gain_weeks": 4},
    "cut_history": {"cuts_last_12_months": 0},
}
LIGHT: Json = {
    "profile": {
        "sex": "female",
        "age_years": 61,
        "height_cm": 153.5,
        "weight_kg": 49.3,
        "activity": {"kind": "level", "level": "very_active"},
        "training": {"status": "untrained", "resistance_sessions_per_week": 0},
    },
    "screening": CLEAR,
    "start_date": "2026-03-02",
    "phase": {"kind": "mini_cut", "fat_loss_kg": 1.16, "deficit_kcal": 1065},
    "return_to_gain": {"maintenance_weeks": 1, "gain_weeks": 0},
    "cut_history": {"cuts_last_12_months": 2},
}


@pytest.mark.parametrize(
    "asked",
    [
        pytest.param(HEAVY, id="heavy"),
        pytest.param(LIGHT, id="light"),
    ],
)
def test_what_once_broke_a_rail_no_longer_does(asked: Json) -> None:
    assert violations(asked, plan(asked)) == []


# --- the ordinary case is possible -----------------------------------------------------------------------------


def test_most_eligible_people_get_a_useful_plan() -> None:
    # Adults of 18-64, screened clear, not underweight, above the minimum body fat, who ask for nothing special.
    rng = random.Random(7)
    feasible = useful = 0
    people = 400
    for _ in range(people):
        asked = request(rng, eligible=True)
        asked.pop("maintenance", None)
        asked["phase"] = {"kind": "mini_cut"}
        answer = plan(asked)
        if answer["feasible"]:
            feasible += 1
            useful += -answer["phases"][0]["change"]["fat_kg"]["mean"] >= 0.5
    print(
        f"\nof {people} eligible people {feasible / people:.1%} get a plan, {useful / people:.1%} lose >= 0.5 kg of fat"
    )
    assert feasible >= 0.6 * people
    assert useful >= 0.6 * people


# --- one side solves for the other -----------------------------------------------------------------------------


def body(weight_kg: float = 80.0, fraction: float = 0.15, sex: str = "male", **phase: Any) -> Json:
    return {
        "profile": {
            "sex": sex,
            "age_years": 30,
            "height_cm": 180 if sex == "male" else 166,
            "weight_kg": weight_kg,
            "body_fat": {"fat_fraction": fraction, "method": "dxa"},
            "activity": {"kind": "level", "level": "moderate"},
            "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
        },
        "screening": CLEAR,
        "start_date": "2026-03-02",
        "phase": {"kind": "mini_cut", **phase},
        "cut_history": {"cuts_last_12_months": 0},
    }


def fat_lost(answer: Json) -> float:
    return -answer["phases"][0]["change"]["fat_kg"]["mean"]


PEOPLE = [(80.0, 0.15, "male"), (62.0, 0.26, "female"), (100.0, 0.3, "male"), (75.0, 0.35, "female")]
ROUNDING_KG = 10 * 7 * 6 / 7700  # what 10 kcal/d of rounding is worth over six weeks


@pytest.mark.parametrize("person", PEOPLE)
def test_more_deficit_loses_more_fat(person: tuple[float, float, str]) -> None:
    lost = []
    for deficit in range(100, 1000, 50):
        answer = plan(body(*person, weeks=5, deficit_kcal=deficit))
        if not answer["feasible"]:
            break
        lost.append(fat_lost(answer))
    assert len(lost) > 5
    # Equal where a rail caps both; amounts in steps of 5 g move carbohydrate and protein a little.
    assert all(more >= less - 0.01 for less, more in itertools.pairwise(lost))
    assert lost[-1] > lost[0] + 0.5


@pytest.mark.parametrize("person", PEOPLE)
def test_more_weeks_lose_more_fat(person: tuple[float, float, str]) -> None:
    lost = [fat_lost(plan(body(*person, weeks=weeks, deficit_kcal=400))) for weeks in range(2, 7)]
    assert lost == sorted(lost)
    assert len(set(lost)) == 5


@pytest.mark.parametrize("person", PEOPLE)
@pytest.mark.parametrize("weeks", [2, 3, 4, 5, 6])
def test_weeks_give_the_fat_and_the_fat_gives_the_weeks(person: tuple[float, float, str], weeks: int) -> None:
    forward = plan(body(*person, weeks=weeks, deficit_kcal=500))
    back = plan(body(*person, fat_loss_kg=round(fat_lost(forward) - 0.02, 2), deficit_kcal=500))
    assert back["feasible"]
    assert len(back["phases"][0]["weeks"]) == weeks
    one_more = plan(body(*person, fat_loss_kg=round(fat_lost(forward) + 0.1, 2), deficit_kcal=500))
    assert not one_more["feasible"] or len(one_more["phases"][0]["weeks"]) == weeks + 1


@pytest.mark.parametrize("person", PEOPLE)
@pytest.mark.parametrize("deficit", [250, 400, 550])
def test_fat_and_weeks_give_the_deficit(person: tuple[float, float, str], deficit: int) -> None:
    forward = plan(body(*person, weeks=4, deficit_kcal=deficit))
    back = plan(body(*person, weeks=4, fat_loss_kg=round(fat_lost(forward), 2)))
    assert back["feasible"]
    assert fat_lost(back) == pytest.approx(fat_lost(forward), abs=ROUNDING_KG)
    intakes = [answer["phases"][0]["weeks"][0]["intake_kcal"] for answer in (forward, back)]
    assert abs(intakes[0] - intakes[1]) <= 20


# --- the nearest of an infeasible request is feasible ------------------------------------------------------------


def infeasible(size: int) -> list[Answered]:
    return [
        a
        for a in sweep(size, eligible=True).answered
        if not a.answer["feasible"] and a.answer["nearest"]["deficit_kcal"] is not None
    ]


def again(answered: Answered, axis: str) -> Json:
    """The request with one axis moved to its nearest value; what the moved axis settles is left open."""
    asked = copy.deepcopy(answered.asked)
    asked["phase"][axis] = answered.answer["nearest"][axis]
    if axis == "deficit_kcal":
        asked["phase"].pop("fat_loss_kg", None)
    if axis == "weeks":
        asked["phase"].pop("deficit_kcal", None)
    return asked


def _given(answered: Answered) -> set[str]:
    return {"fat_loss_kg", "weeks", "deficit_kcal"} & set(answered.asked["phase"])


def test_the_nearest_deficit_is_feasible() -> None:
    tried = 0
    for answered in infeasible(1000):
        if answered.answer["nearest"]["deficit_kcal"] <= 1500:  # the largest that a request may name
            tried += 1
            assert plan(again(answered, "deficit_kcal"))["feasible"], answered.asked
    assert tried > 50


def test_the_nearest_fat_in_given_weeks_is_feasible() -> None:
    tried = 0
    for answered in infeasible(1000):
        if _given(answered) == {"fat_loss_kg", "weeks"} and answered.answer["nearest"]["fat_loss_kg"] >= 0.2:
            tried += 1
            assert plan(again(answered, "fat_loss_kg"))["feasible"], answered.asked
    assert tried > 20


def test_the_nearest_fat_in_open_weeks_is_feasible() -> None:
    for answered in infeasible(1000):
        if "weeks" not in _given(answered) and answered.answer["nearest"]["fat_loss_kg"] >= 0.2:
            assert plan(again(answered, "fat_loss_kg"))["feasible"], answered.asked


def test_the_nearest_weeks_are_feasible() -> None:
    lean = body(63.2, 0.065, fat_loss_kg=0.62, weeks=2, protein_g_per_kg=2.96)
    answer = plan(lean)
    assert not answer["feasible"]
    cases = [*infeasible(1000), Answered(lean, answer)]
    for answered in cases:
        weeks = answered.answer["nearest"]["weeks"]
        if weeks is not None and weeks <= 6:
            assert plan(again(answered, "weeks"))["feasible"], answered.asked
