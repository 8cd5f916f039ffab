"""Random seasons, comparisons and optima: a plan inside every rail, or a refusal that names its rule."""

import json
import random
from collections import Counter
from typing import Any

import msgspec
import pytest
from properties import season_requests
from properties.season_recheck import violations
from steelyard.http.endpoints.seasons import compare_strategies, optimise_season, plan_season
from steelyard.http.operation.operation import Operation
from steelyard.http.wire.encoding import encode_finite
from steelyard.http.wire.problems import ProblemError
from steelyard.science.rails.subject import Refused
from steelyard.science.register.errors import OutOfDomain


def answer(operation: Operation, request: dict[str, Any]) -> dict[str, Any] | str:
    """The answer as decoded JSON, or what refused it."""
    assert operation.body_type is not None
    body = msgspec.convert(request, operation.body_type)
    try:
        return json.loads(encode_finite(operation.compute(body)))
    except Refused as refused:
        return refused.action.id
    except OutOfDomain as outside:
        return outside.code
    except ProblemError as problem:
        return problem.errors[0].code


def swept(seeds: range, *, eligible: bool) -> Counter[str]:
    counted: Counter[str] = Counter()
    for seed in seeds:
        request = season_requests.season(random.Random(seed), eligible=eligible)
        found = answer(plan_season, request)
        if isinstance(found, str):
            counted[found] += 1
            continue
        wrong = violations(request, found)
        assert not wrong, (seed, wrong[:5])
        counted["planned"] += 1
        cuts = found["plan"]["totals"]["cuts"]
        counted["with cuts"] += cuts > 0
        # A useful season: it keeps the limits and gains lean tissue, or loses a kilogram of fat.
        totals = found["plan"]["totals"]
        useful = totals["lean_gained_kg"]["mean"] > 0.2 or totals["fat_gained_kg"]["mean"] < -1.0
        counted["useful"] += useful
    return counted


REFUSALS = {
    "bmi", "body_fat", "age", "planned", "with cuts", "useful", "BLOCKED_DATES_COVER_ALL",
    "CURRENT_INTAKE_IMPLAUSIBLE",
}  # fmt: skip


def test_seasons_of_anyone_stay_inside_the_rails() -> None:
    counted = swept(range(400), eligible=False)
    assert set(counted) <= REFUSALS, counted
    assert counted["planned"] > 180
    assert counted["with cuts"] > 70
    assert counted["age"] > 5  # 65 and over without clearance


def test_eligible_people_get_useful_seasons() -> None:
    counted = swept(range(1000, 1200), eligible=True)
    assert counted["useful"] >= 0.6 * 200, counted


@pytest.mark.parametrize(
    ("seed", "eligible"), [(11558, False), (16039, False), (16599, False), (17420, False), (31223, True), (33598, True)]
)
def test_a_cut_ends_before_the_week_that_the_gate_would_not_pass(seed: int, *, eligible: bool) -> None:
    """A season that told one 2 to 5 kcal under what is to be left for the body was refused as a whole."""
    assert swept(range(seed, seed + 1), eligible=eligible)["planned"] == 1


@pytest.mark.long
def test_many_more_seasons_stay_inside_the_rails() -> None:
    counted = swept(range(10_000, 20_000), eligible=False)
    counted += swept(range(30_000, 34_000), eligible=True)
    assert set(counted) <= REFUSALS, counted
    print(counted)


def checked_optima(seeds: range, **about: Any) -> Counter[str]:
    """What came of random requests, what is said ``about`` the person put in place of theirs."""
    counted: Counter[str] = Counter()
    for seed in seeds:
        request = season_requests.optimum(random.Random(seed), eligible=seed % 2 == 0)
        request["profile"] |= about
        found = answer(optimise_season, request)
        if isinstance(found, str):
            counted[found] += 1
            continue
        refused = any(rail["action"] == "refused" for rail in found["plan"]["guard_rails"])
        assert not (refused and found["plan"]["totals"]["cuts"]), seed
        wrong = violations(request, found)
        assert not wrong, (seed, wrong[:5])
        counted["feasible" if found["feasible"] else "infeasible"] += 1
        allowed = found["allowed_weeks_above_band"]
        if found["feasible"]:
            assert found["plan"]["totals"]["weeks_above_band"]["mean"] <= allowed
        for point in found["trade_off"]:
            assert point["expected"]["lean_gained_kg"] <= found["trade_off"][-1]["expected"]["lean_gained_kg"]
    return counted


def test_optima_stay_inside_the_rails() -> None:
    counted = checked_optima(range(50))
    assert counted["feasible"] > 20, counted
    assert set(counted) <= {"feasible", "infeasible", *REFUSALS}, counted


def test_a_body_adapted_to_little_loses_no_faster_than_the_rail() -> None:
    """Its expenditure rises again while it eats more than before, if less than it needs."""
    assert checked_optima(range(5064, 5065), age_years=24)["feasible"] == 1


@pytest.mark.long
def test_many_more_optima_stay_inside_the_rails() -> None:
    print(checked_optima(range(5_000, 7_000)))


def test_comparisons_answer_everyone() -> None:
    counted: Counter[str] = Counter()
    for seed in range(40):
        request = season_requests.comparison(random.Random(seed), eligible=seed % 2 == 0)
        found = answer(compare_strategies, request)
        if isinstance(found, str):
            counted[found] += 1
            continue
        counted["compared"] += 1
        labels = [s["label"] for s in found["strategies"]]
        assert len(labels) + len(found["refused"]) == 5
        assert "mine" in labels  # it has no cuts, so that nobody is refused it
        assert len(found["chances"]) == len(labels) * (len(labels) - 1)
        for strategy in found["strategies"]:
            for name, value in strategy["intervals"].items():
                assert value["lower"] <= value["mean"] <= value["upper"], (seed, name)
    assert counted["compared"] > 25, counted
    assert set(counted) <= {"compared", "BLOCKED_DATES_COVER_ALL", "CURRENT_INTAKE_IMPLAUSIBLE"}, counted
