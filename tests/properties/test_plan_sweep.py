"""Random valid requests for a plan: always an answer, always inside every rail, mostly a useful plan.

Rails and shape are checked again from the answer's own numbers, by ``plan_shape`` and the checker of the rails.
"""

import copy
import itertools
import random
from collections import Counter
from collections.abc import Callable
from datetime import date, timedelta
from typing import Any, NamedTuple

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from properties.plan_requests import KINDS, request
from properties.plan_shape import violations
from request_people import CLEAR
from steelyard.http.endpoints.plans import plan_phases
from steelyard.http.schemas.plans import PlanRequest
from steelyard.http.wire.encoding import encode_finite
from steelyard.science.rails.subject import Refused
from steelyard.science.register.errors import Contradiction, OutOfDomain

Json = dict[str, Any]
# Anyone and eligible people: a thousand requests of each in every run, beside the four thousand of the rails; many more
# in the long one.
SIZES = [pytest.param(1000, id="1000"), pytest.param(20_000, id="20000", marks=pytest.mark.long)]


def plan(asked: Json) -> Json:
    """The answer to a request, as JSON-like data. The request is held to its schema."""
    answer = plan_phases.compute(msgspec.convert(asked, PlanRequest, strict=False))
    return msgspec.json.decode(encode_finite(answer))


class Answered(NamedTuple):
    asked: Json
    answer: Json


class Sweep(NamedTuple):
    answered: list[Answered]
    counted: Counter[str]


_sweeps: dict[tuple[int, bool], Sweep] = {}
# What may refuse a valid request of this generator: the rails, and the lack of the fat that is to be lost.
REFUSALS = {
    "refused age", "refused bmi", "refused body_fat", "refused eating_disorder", "refused medical",
    "refused pregnancy_lactation", "refused screening_unanswered", "contradiction GOAL_BEYOND_BODY",
    "out of domain MAINTENANCE_IMPLAUSIBLE", "out of domain FAT_FREE_MASS_IMPLAUSIBLE", "refused refeeding",
}  # fmt: skip


def asked_for(asked: Json) -> Json | str:
    """The answer to a request, or what refused it. Any other exception fails the test that asks."""
    try:
        return plan(asked)
    except Refused as refused:
        return f"refused {refused.action.id}"
    except Contradiction as contradiction:
        return f"contradiction {contradiction.code}"
    except OutOfDomain as outside:
        return f"out of domain {outside.code}"


def sweep(size: int, *, eligible: bool = False) -> Sweep:
    """Ask ``size`` seeded requests of every kind."""
    key = (size, eligible)
    if key not in _sweeps:
        rng = random.Random(20260302 + eligible)
        answered: list[Answered] = []
        counted: Counter[str] = Counter()
        for _ in range(size):
            asked = request(rng, eligible=eligible)
            answer = asked_for(asked)
            if isinstance(answer, str):
                counted[answer] += 1
            else:
                answered.append(Answered(asked, answer))
                counted[f"{asked['phase']['kind']} {'feasible' if answer['feasible'] else 'infeasible'}"] += 1
        _sweeps[key] = Sweep(answered, counted)
    return _sweeps[key]


# --- every answer is inside every rail -------------------------------------------------------------------------


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("eligible", [False, True])
def test_every_answer_is_inside_every_rail(
    size: int, eligible: bool, record_property: Callable[[str, object], None]
) -> None:
    swept = sweep(size, eligible=eligible)
    found = [
        (violation, answered.asked)
        for answered in swept.answered
        for violation in violations(answered.asked, answered.answer)
    ]
    counted = ", ".join(f"{what} {count}" for what, count in sorted(swept.counted.items()))
    record_property("sweep", f"{size} plans of {'eligible people' if eligible else 'anyone'}: {counted}")
    assert not found, f"{len(found)} of {size}; first: {found[0]}"
    assert {what for what in swept.counted if what.startswith(("refused", "contradiction"))} <= REFUSALS
    assert all(swept.counted[f"{kind} feasible"] > 0.03 * size for kind in KINDS)


@settings(max_examples=200)
@given(st.randoms(use_true_random=False), st.booleans())
def test_no_request_found_by_searching_breaks_a_rail(rng: random.Random, eligible: bool) -> None:
    asked = request(rng, eligible=eligible)
    answer = asked_for(asked)
    if isinstance(answer, str):
        assert answer in REFUSALS
    else:
        assert violations(asked, answer) == []


def test_a_phase_before_an_event_is_as_late_as_will_do() -> None:
    waited = []
    for asked, answer in sweep(1000, eligible=True).answered:
        if answer["feasible"] and "event_date" in asked["phase"]:
            # The cut and its weeks at maintenance, whatever follows them.
            cut = next(phase for phase in answer["phases"] if phase["kind"] == asked["phase"]["kind"])
            held = timedelta(weeks=asked.get("return_to_gain", {}).get("maintenance_weeks", 1))
            left = date.fromisoformat(asked["phase"]["event_date"]) - date.fromisoformat(cut["end_date"]) - held
            waited.append(left.days - 1)
    assert len(waited) > 50
    # Within the week; earlier only where a body that waits meets its goal without the phase, or loses its room.
    assert sum(0 <= days < 7 for days in waited) >= 0.9 * len(waited)


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


@pytest.mark.parametrize(("kind", "least_fat_kg"), [("mini_cut", 0.5), ("cut", 1.0)])
def test_most_eligible_people_get_a_useful_plan(
    kind: str, least_fat_kg: float, record_property: Callable[[str, object], None]
) -> None:
    # Adults of 18-64, screened clear, not underweight, above the minimum body fat, who ask for nothing special.
    rng = random.Random(7)
    useful, people = 0, 300
    for _ in range(people):
        asked = request(rng, eligible=True, kind=kind)
        for key in ("maintenance", "pause", "day_split"):
            asked.pop(key, None)
        asked["phase"] = {"kind": kind}
        answer = asked_for(asked)
        if isinstance(answer, dict) and answer["feasible"]:
            useful += -answer["phases"][0]["change"]["fat_kg"]["mean"] >= least_fat_kg
    record_property(
        "sweep", f"a useful {kind} ({least_fat_kg} kg of fat or more): {useful} of {people} eligible people"
    )
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


GOALS = ("fat_loss_kg", "target_fat_fraction", "target_weight_kg")
# What a request may name of each axis.
NAMED = {"fat_loss_kg": (0.2, 30.0), "weeks": (1, 26), "deficit_kcal": (100.0, 1500.0)}


def infeasible(size: int) -> list[Answered]:
    """Fat losses that no safe plan does."""
    swept = sweep(size, eligible=True).answered
    return [a for a in swept if a.asked["phase"]["kind"] in ("mini_cut", "cut") and not a.answer["feasible"]]


def again(answered: Answered, axis: str) -> Json:
    """The request with one axis moved to its nearest value; what the moved axis settles is left open."""
    asked = copy.deepcopy(answered.asked)
    phase, value = asked["phase"], answered.answer["nearest"][axis]
    if axis != "weeks":
        for goal in GOALS:
            phase.pop(goal, None)
    else:
        phase.pop("event_date", None)
        phase["kind"] = answered.answer["nearest"]["weeks_kind"]
        for key in ("break_every_weeks", "break_weeks") if phase["kind"] == "mini_cut" else ():
            phase.pop(key, None)
    if axis == "deficit_kcal" or (axis == "weeks" and set(GOALS) & set(phase)):
        phase.pop("pace", None)
        phase.pop("deficit_kcal", None)
    phase[axis] = value
    return asked


@pytest.mark.parametrize("axis", NAMED)
def test_the_nearest_is_feasible_when_it_is_asked_for(axis: str) -> None:
    least, most = NAMED[axis]
    tried = 0
    for answered in infeasible(1000):
        value = answered.answer["nearest"][axis]
        # No weeks where the goal is met; else what nobody may ask for is no nearest.
        assert value is None or value >= least or (axis, value) == ("weeks", 0), answered.asked
        if value is not None and least <= value <= most:
            tried += 1
            assert plan(again(answered, axis))["feasible"], answered.asked
    assert tried > 100


@pytest.mark.parametrize("axis", NAMED)
def test_nearly_every_fat_loss_that_is_infeasible_has_a_nearest(axis: str) -> None:
    told = [a.answer["nearest"][axis] is not None for a in infeasible(1000)]
    assert sum(told) > (0.5 if axis == "weeks" else 0.85) * len(told)


def test_only_where_there_is_a_nearest_is_it_said_to_be_given() -> None:
    said: Counter[str] = Counter()
    for answered in infeasible(1000):
        nearest = answered.answer["nearest"]
        is_near = any(nearest[axis] is not None for axis in (*NAMED, "target_weight_kg"))
        codes = {note["code"] for note in answered.answer["reasons"]}
        assert ("INFEASIBLE" in codes, "INFEASIBLE_NOTHING" in codes) == (is_near, not is_near), answered.asked
        said[str(is_near)] += 1
    assert min(said["True"], said["False"]) > 5
