"""Random requests of anyone to every operation: nothing outside a rail, and never a fault."""

import json
import random
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .checker import outcome, rule_of, violations
from .requests import REQUESTS
from .service import ask

Json = dict[str, Any]
PARTS = 4  # of a sweep, so that several processes share it
# Requests a part: in every run, and in the long one.
SIZES = {
    "plan_phases": (1000, 50_000),
    "forecast_intake": (150, 2500),
    "decide_phase": (75, 1000),
    "review_phase": (100, 2000),
    "plan_season": (75, 1000),
    "compare_strategies": (25, 500),
    "optimise_season": (25, 500),
    "read_trend": (100, 2000),
    "estimate_maintenance": (150, 2500),
    "estimate_body_composition": (100, 1000),
    "rank_roster": (25, 1000),
}
KINDS = ("feasible", "infeasible", "refused", "fault")


class Swept:
    """What was counted, and the first request of each rule that was broken."""

    def __init__(self) -> None:
        self.kinds: Counter[str] = Counter()
        self.broken: Counter[str] = Counter()
        self.first: dict[str, tuple[list[str], Json]] = {}
        self.violations = 0

    def add(self, operation: str, request: Json) -> Json:
        """Ask, check, and count."""
        answered = ask(operation, request)
        seen = outcome(operation, request, answered.status, answered.body)
        self.kinds[seen.kind] += 1
        self._count([*seen.found, *_handed_back(request, answered.body)], request)
        return answered.body if answered.is_answer else {}

    def follow(self, asked: Json, answer: Json) -> None:
        """Each plan that a decision suggests, asked for: possible and inside every rail."""
        ways = [("recommended", answer["recommended"])]
        ways += [("alternative", way) for way in answer["alternatives"] if way["open"]]
        for name, way in ways:
            if way["plan"] is None:
                continue
            request = fragment(asked, way["plan"])
            answered = ask("plan_phases", request)
            found = violations("plan_phases", request, answered.status, answered.body)
            if name == "recommended" and not answered.body.get("feasible"):
                found = [*found, f"suggested: {answered.body.get('detail', 'infeasible')}"]
            self._count(found, request)

    def repeat(self, asked: Json, answer: Json) -> None:
        """Each strategy of a comparison as a season by itself: the same outcome, and inside every rail."""
        named = {strategy.get("name") or strategy["label"]: strategy for strategy in asked["strategies"]}
        question = {key: value for key, value in asked.items() if key != "strategies"}
        for compared in answer["strategies"]:
            request = question | {"strategy": named[compared["label"]]}
            answered = ask("plan_season", request)
            found = violations("plan_season", request, answered.status, answered.body)
            totals = answered.body.get("plan", {}).get("totals", {"cuts": -1})
            if totals["cuts"] != compared["expected"]["cuts"]:
                found = [*found, f"compared: {compared['expected']['cuts']} cuts, as a season {totals['cuts']}"]
            self._count(found, request)

    def _count(self, found: list[str], request: Json) -> None:
        self.violations += bool(found)
        for rule in {rule_of(what) for what in found}:
            self.broken[rule] += 1
            self.first.setdefault(rule, (found[:3], request))

    def row(self, operation: str) -> str:
        """The sweep's row: operation, requests, feasible, infeasible, refused, violations, 500s."""
        requests = sum(self.kinds.values())
        named = ", ".join(f"{rule} {count}" for rule, count in self.broken.most_common())
        return (
            f"rails: {operation:26} requests {requests:6} feasible {self.kinds['feasible']:6} infeasible "
            f"{self.kinds['infeasible']:5} refused {self.kinds['refused']:6} violations {self.violations:5} 500s "
            f"{self.kinds['fault']:3}" + (f" ({named})" if named else "")
        )


def _handed_back(asked: Json, answer: Json) -> list[str]:
    """The state that an answer gives is taken by the next request, whatever it was read from."""
    state = answer.get("state")
    if not isinstance(state, dict):
        return []
    answered = ask("estimate_maintenance", {"profile": asked["profile"], "state": state})
    codes = [error["code"] for error in answered.body.get("errors") or ()]
    if answered.status < 500 and answered.status != 400 and not any(code.startswith("STATE") for code in codes):
        return []
    return [f"state: {answered.status} {answered.body.get('detail')}"]


def fragment(asked: Json, plan: Json) -> Json:
    """A decision's fragment as a request for a plan, with what was sent for the decision."""
    request = {key: asked[key] for key in ("profile", "screening", "maintenance", "log") if key in asked}
    request |= {key: value for key, value in plan.items() if value is not None}
    for key in ("phase", "return_to_gain", "cut_history"):
        if request.get(key):
            request[key] = {name: value for name, value in request[key].items() if value is not None}
    return request


def swept(operation: str, size: int, seed: int) -> Swept:
    """``size`` requests to an operation."""
    rng = random.Random(seed)
    seen = Swept()
    for _ in range(size):
        request = REQUESTS[operation](rng)
        answer = seen.add(operation, request)
        if operation == "decide_phase" and answer:
            seen.follow(request, answer)
        if operation == "compare_strategies" and answer:
            seen.repeat(request, answer)
    return seen


def _sizes(which: int) -> list[Any]:
    return [
        pytest.param(operation, sizes[which], part, id=f"{operation}-{part}")
        for operation, sizes in SIZES.items()
        for part in range(PARTS)
    ]


def _judge(operation: str, size: int, seed: int, record_property: Callable[[str, object], None]) -> None:
    seen = swept(operation, size, seed)
    record_property("sweep", seen.row(operation))
    first = {rule: (found, json.dumps(request)[:3000]) for rule, (found, request) in seen.first.items()}
    assert not seen.violations, first
    assert seen.kinds["feasible"] > 0


@pytest.mark.parametrize(("operation", "size", "part"), _sizes(0))
def test_nothing_leaves_the_rails(
    operation: str, size: int, part: int, record_property: Callable[[str, object], None]
) -> None:
    _judge(operation, size, 1000 + part, record_property)


@pytest.mark.long
@pytest.mark.parametrize(("operation", "size", "part"), _sizes(1))
def test_nothing_leaves_the_rails_in_many_more(
    operation: str, size: int, part: int, record_property: Callable[[str, object], None]
) -> None:
    _judge(operation, size, 9000 + part, record_property)


ONCE = json.loads((Path(__file__).parent / "once_outside.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("once", ONCE, ids=lambda once: f"{once['operation']}-{once['broke']}")
def test_what_once_left_the_rails_no_longer_does(once: Json) -> None:
    """Requests that a sweep found, and the rule that each of them broke."""
    answered = ask(once["operation"], once["request"])
    found = violations(once["operation"], once["request"], answered.status, answered.body)
    assert [*found, *_handed_back(once["request"], answered.body)] == []


def test_every_operation_is_swept() -> None:
    assert SIZES.keys() == REQUESTS.keys()
