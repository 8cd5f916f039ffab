"""Random valid requests with a state that knows how well deficits are kept to: plans and seasons stay inside the rails.

Each is asked first without a state, then with the state of that answer and a drawn adherence in it. The checkers know
nothing of adherence: they hold what is told against the bodies that the answer shows, which are the expected ones.
"""

import random
from typing import Any

import msgspec
from properties import plan_requests, season_recheck, season_requests
from properties.plan_shape import violations
from properties.test_plan_sweep import asked_for
from steelyard.http.endpoints.seasons import plan_season
from steelyard.http.schemas.seasons import SeasonRequest
from steelyard.http.wire.encoding import encode_finite
from steelyard.science.rails.subject import Refused
from steelyard.science.register.errors import Contradiction, OutOfDomain

Json = dict[str, Any]


def adherence(rng: random.Random) -> Json:
    """Somebody who keeps to less than the whole of deficits, by little or by much."""
    return {
        "mean": round(rng.uniform(0.2, 0.89), 3),
        "standard_deviation": round(rng.uniform(0.03, 0.2), 3),
        "weeks": 6,
    }


def test_plans_that_count_on_less_of_a_deficit_are_inside_every_rail() -> None:
    rng = random.Random(20261129)
    seen = smaller = 0
    for _ in range(300):
        asked = plan_requests.request(rng, eligible=rng.random() < 0.8, kind=rng.choice(["mini_cut", "cut"]))
        known = adherence(rng)
        plain = asked_for(asked)
        if isinstance(plain, str) or not plain["feasible"]:
            continue
        without = {**plain["state"], "phase": None}
        kept, bare = (asked_for({**asked, "state": one}) for one in ({**without, "adherence": known}, without))
        assert isinstance(kept, dict)
        assert isinstance(bare, dict)
        # With goal and weeks the deficit is what takes there in full; that less is expected is said.
        is_fixed = asked["phase"].get("weeks") is not None
        assert [each for each in violations(asked, kept) if not (is_fixed and " short of " in each)] == []
        if not kept["feasible"] or not bare["feasible"]:
            continue
        seen += 1
        (cut,) = (phase for phase in kept["phases"] if phase["kind"] == asked["phase"]["kind"])
        (full,) = (phase for phase in bare["phases"] if phase["kind"] == asked["phase"]["kind"])
        reasons = {reason["code"] for phase in kept["phases"] for reason in phase["reasons"]}
        assert "PLANNED_AS_KEPT" in reasons | {reason["code"] for reason in kept["reasons"]}
        settled = {"fat_loss_kg", "target_fat_fraction", "target_weight_kg", "deficit_kcal"}
        if settled.isdisjoint(asked["phase"]):
            # A goal may take more than that in the longest phase there is, and what is asked is held at the rails.
            assert kept["deficit_kcal"] <= bare["deficit_kcal"] + 10.0
        smaller += kept["deficit_kcal"] < bare["deficit_kcal"] - 10.0
        told = [[week["intake_kcal"] for week in one["weeks"]] for one in (cut, full)]
        if told[0] == told[1]:
            # The same to eat, and less expected of it.
            assert cut["change"]["fat_kg"]["mean"] > full["change"]["fat_kg"]["mean"]
    assert seen > 100
    assert smaller > 20


def _season(asked: Json) -> Json | None:
    try:
        answer = plan_season.compute(msgspec.convert(asked, SeasonRequest, strict=False))
    except (Refused, Contradiction, OutOfDomain):
        return None
    return msgspec.json.decode(encode_finite(answer))  # type: ignore[no-any-return]


def test_seasons_that_count_on_less_of_a_deficit_are_inside_every_rail() -> None:
    rng = random.Random(20261130)
    seen = longer = 0
    for _ in range(120):
        asked = season_requests.season(rng, eligible=True)
        plain = _season(asked)
        if plain is None:
            continue
        kept = _season({**asked, "state": {**plain["state"], "adherence": adherence(rng), "phase": None}})
        if kept is None:
            continue
        assert season_recheck.violations(asked, kept) == []
        seen += 1
        longer += kept["plan"]["totals"]["days_dieting"] > plain["plan"]["totals"]["days_dieting"]
    assert seen > 60
    assert longer > 10
