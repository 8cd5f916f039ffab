"""People of a world of their own who live by what the service answers, called as over the wire.

They share nothing with the service's body, nor with the worlds of the log reader's study: two tissues whose share
depends on body fat, one pool of water that answers intake, expenditure that drifts, a log that holds a share of what
is eaten. All that an app keeps of them is the `state` of the last answer. Their constants are invented.
"""

import random
from collections.abc import Mapping
from datetime import date, timedelta
from functools import cache
from typing import Any, NamedTuple

import msgspec
from request_people import CLEAR
from steelyard.http.app import OPERATIONS
from steelyard.http.wire.encoding import encode_finite

START = date(2026, 5, 4)
Answer = dict[str, Any]


@cache
def _operation(operation_id: str) -> Any:
    return next(one for one in OPERATIONS if one.operation_id == operation_id)


def call(operation_id: str, body: Mapping[str, Any]) -> Answer:
    """The answer to a request, read and written as JSON as on the wire."""
    operation = _operation(operation_id)
    asked = msgspec.json.decode(msgspec.json.encode(body), type=operation.body_type)
    answer: Answer = msgspec.json.decode(encode_finite(operation.compute(asked)))
    return answer


class Person:
    """Somebody who eats until their log shows what they were told. ``over_kcal`` a day is eaten besides from the start
    of the plan on and not logged; ``weekend_kcal`` is eaten besides on each day of a weekend in a deficit, and is in
    the log where ``logs_weekends``, which else lacks those days. Without ``logs_food`` they go by their plate, which
    holds what it would have in a log, and send weights alone."""

    def __init__(
        self,
        seed: int,
        sex: str,
        weight_kg: float,
        fat: float,
        *,
        over_kcal: float = 0.0,
        bias: float | None = None,
        weekend_kcal: float = 0.0,
        logs_weekends: bool = True,
        logs_food: bool = True,
    ) -> None:
        self.weekend_kcal, self.logs_weekends, self.logs_food = weekend_kcal, logs_weekends, logs_food
        self.rng = rng = random.Random(seed)
        self.fat_kg, self.lean_kg, self.start_kg = fat * weight_kg, (1.0 - fat) * weight_kg, weight_kg
        self.error = rng.gauss(0.0, 0.06) if bias is None else bias
        self.needs_kcal = (370.0 + 21.6 * self.lean_kg) * rng.uniform(1.5, 1.75) * (1.0 + self.error)
        self.ratio, self.noise_kg, self.over_kcal = rng.uniform(0.8, 1.0), rng.uniform(0.3, 0.6), over_kcal
        self.water_per_kcal, self.adapts = rng.uniform(0.001, 0.002), rng.uniform(0.05, 0.2)
        self.water_kg = self.adapted_kcal = self.drifted_kcal = 0.0
        self.today = START - timedelta(days=28)
        seen = min(0.5, max(0.07, fat + rng.gauss(0.0, 0.015)))
        self.told: dict[str, Any] = {
            "profile": {
                "sex": sex,
                "age_years": 31,
                "height_cm": 168 if sex == "female" else 181,
                "weight_kg": round(weight_kg, 1),
                "body_fat": {"fat_fraction": round(seen, 3), "method": "dxa"},
                "activity": {"kind": "level", "level": "light"},
                "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
            },
            "screening": CLEAR,
        }
        self.before = self.live(28, self.maintenance_kcal * self.ratio * (1.0 + rng.gauss(0.0, 0.03)), 0.0)
        self.first_fat_kg, self.first_lean_kg = self.fat_kg, self.lean_kg

    @property
    def maintenance_kcal(self) -> float:
        """What is spent a day, in energy really eaten."""
        grown = self.fat_kg + self.lean_kg - self.start_kg
        return self.needs_kcal + 20.0 * grown + self.adapted_kcal + self.drifted_kcal

    @property
    def fat_share(self) -> float:
        """Body fat as a fraction of tissue."""
        return self.fat_kg / (self.fat_kg + self.lean_kg)

    @property
    def on(self) -> str:
        """Today, as a request has it."""
        return self.today.isoformat()

    def live(self, days: int, told_kcal: float, over_kcal: float | None = None) -> dict[str, Any]:
        """So many days, and the log of them."""
        weights, intakes = [], []
        for _ in range(days):
            weight = self.fat_kg + self.lean_kg + self.water_kg + self.rng.gauss(0.0, self.noise_kg)
            logged = told_kcal * (1.0 + self.rng.gauss(0.0, 0.07))
            lets_go = self.today.weekday() >= 5 and told_kcal < 0.95 * self.ratio * self.maintenance_kcal
            if lets_go:
                logged += self.ratio * self.weekend_kcal
            self._next_day(logged / self.ratio + (self.over_kcal if over_kcal is None else over_kcal))
            if self.rng.random() < 0.85:
                weights.append({"date": self.on, "weight_kg": round(weight, 1)})
            if self.rng.random() < 0.93 and self.logs_food and (self.logs_weekends or not lets_go):
                intakes.append({"date": self.on, "intake_kcal": round(logged)})
            self.today += timedelta(days=1)
        return {"weights": weights, "intakes": intakes}

    def _next_day(self, eaten_kcal: float) -> None:
        balance = eaten_kcal - self.maintenance_kcal
        of_fat, fat_kcal, lean_kcal = 0.7, 10_500.0, 2_500.0
        if balance < 0.0:
            of_fat, fat_kcal, lean_kcal = min(0.95, max(0.6, 0.75 + 0.8 * (self.fat_share - 0.15))), 9_440.0, 1_800.0
        moved = balance / (of_fat * fat_kcal + (1.0 - of_fat) * lean_kcal)
        self.fat_kg += of_fat * moved
        self.lean_kg += (1.0 - of_fat) * moved + (0.0015 if balance < 0.0 else 0.0025)
        self.water_kg += 0.2 * (self.water_per_kcal * balance - self.water_kg)
        self.adapted_kcal += (self.adapts * balance - self.adapted_kcal) / 14.0
        self.drifted_kcal += self.rng.gauss(0.0, 3.0)


class Week(NamedTuple):
    """A week lived: what was told for it, the review at its end, and the change of fat since the phase began."""

    told_kcal: float
    review: Answer
    fat_kg: float

    @property
    def codes(self) -> list[str]:
        """The codes of the review's reasons."""
        return [reason["code"] for reason in self.review["reasons"]]


def planned(person: Person, phase: Mapping[str, Any], **more: Any) -> Answer:
    """A plan from four weeks of log."""
    body = {**person.told, "log": person.before, "start_date": person.on, "phase": phase, **more}
    return call("plan_phases", body)


def followed(person: Person, plan: Answer, weeks: int = 200) -> list[Week]:
    """The first phase of a plan, reviewed every week until it ends; only the state is kept."""
    state, told_kcal = plan["state"], float(plan["phases"][0]["weeks"][0]["intake_kcal"])
    found: list[Week] = []
    before_kg = person.fat_kg
    while len(found) < weeks:
        log = person.live(7, told_kcal)
        review = call("review_phase", {**person.told, "state": state, "log": log, "as_of_date": person.on})
        found.append(Week(told_kcal, review, person.fat_kg - before_kg))
        state = review["state"]
        if review["decision"] == "end" or not review["weeks"]:
            break
        told_kcal = review["weeks"][0]["intake_kcal"]
    return found


class Played(NamedTuple):
    """A phase of a year: the decision that led to it, its plan, and its weeks; body fat before and after it."""

    decision: Answer
    plan: Answer
    weeks: list[Week]
    fat_before: float
    fat_after: float

    @property
    def kind(self) -> str:
        """The kind of its first phase."""
        return str(self.plan["phases"][0]["kind"])


def year_of(person: Person, goal: str, feeling: str = "content", days: int = 364) -> list[Played]:
    """Decision, plan and reviews, again and again, each from the state of the one before."""
    start, state, found = person.today, None, []
    while (person.today - start).days < days:
        known = {"log": person.before, "phase_history": []} if state is None else {"state": state}
        asked = {**person.told, "as_of_date": person.on, "goal": goal, "feeling": feeling, **known}
        decision = call("decide_phase", asked)
        plan = call("plan_phases", {**person.told, "state": decision["state"], **decision["recommended"]["plan"]})
        before = person.fat_share
        weeks = followed(person, plan)
        found.append(Played(decision, plan, weeks, before, person.fat_share))
        state = weeks[-1].review["state"]
    return found
