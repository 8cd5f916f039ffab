"""Members who follow a mini-cut, or eat at maintenance and above while logging it, and what reviews say of them."""

from datetime import date, timedelta
from typing import Any

import msgspec
import numpy as np
from logstudy.worlds import CUT, PRIOR_SD, Array, Lives, Logs, simulate
from steelyard.http.app import OPERATIONS
from steelyard.http.endpoints import mapping
from steelyard.http.schemas.profile import Profile
from steelyard.science.measures import assess

LEAD_DAYS, START = 28, date(2026, 3, 2)
REBOUND_DAYS = 14
CLEAR = {"is_pregnant": False, "is_breastfeeding": False, "eating_disorder": "none", "conditions": [], "medicines": []}
REVIEW = next(operation for operation in OPERATIONS if operation.operation_id == "review_phase")


def profiles(people: int, seed: int) -> list[dict[str, Any]]:
    """Invented people for whom a mini-cut is allowed."""
    rng = np.random.default_rng(seed)
    found = []
    for _ in range(people):
        is_male = bool(rng.random() < 0.5)
        height = float(rng.normal(178, 6) if is_male else rng.normal(166, 6))
        fat = float(rng.uniform(0.17, 0.27) if is_male else rng.uniform(0.28, 0.36))
        weight = float(rng.uniform(24.0, 28.0)) * (height / 100) ** 2
        found.append(
            {
                "sex": "male" if is_male else "female",
                "age_years": int(rng.integers(24, 50)),
                "height_cm": round(height),
                "weight_kg": round(weight, 1),
                "activity": {"kind": "level", "level": str(rng.choice(["light", "moderate"]))},
                "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
                "body_fat": {"fat_fraction": round(fat, 3), "method": "skinfolds"},
            }
        )
    return found


def logs_of(world: str, members: list[dict[str, Any]], days: int, seed: int, over: bool) -> tuple[Logs, Array]:
    """Four weeks at maintenance, then ``days`` of a mini-cut; ``over``: the deficit and up to a third more is eaten
    besides, and not logged. Also the deficits, as fractions."""
    given, deficit = _given(members, days, seed, over)
    return simulate(world, CUT, LEAD_DAYS + days + 1, len(members), seed, **given), deficit


def _given(
    members: list[dict[str, Any]], days: int, seed: int, over: bool, after: int = 0
) -> tuple[dict[str, Any], Array]:
    """What is not drawn of those members; ``after``: days at maintenance behind the mini-cut."""
    people = len(members)
    rng = np.random.default_rng(seed)
    total = np.array([assess(mapping.person(msgspec.convert(m, Profile))).total.mean for m in members])
    deficit = rng.uniform(0.15, 0.22, people)
    balance = np.zeros((LEAD_DAYS + days + 1 + after, people))
    balance[LEAD_DAYS : LEAD_DAYS + days + (0 if after else 1)] = -deficit
    given: dict[str, Any] = {
        "body_kg": np.array([m["weight_kg"] for m in members]),
        "fat_share": np.array([m["body_fat"]["fat_fraction"] for m in members])
        * np.exp(0.1 * rng.standard_normal(people)),
        "prior_kcal": total,
        "balance": balance,
        "starts": np.full(people, float(LEAD_DAYS)),
    }
    if over:
        given["over_kcal"] = total * deficit * rng.uniform(1.0, 1.33, people)
    return given, deficit


def rebounds(world: str, people: int, seed: int, days: int = 28) -> tuple[Array, Array]:
    """Whether the carried mass that returns within a fortnight after a mini-cut of ``days`` lies in the interval that
    the review of its end tells, and by how much it was told wrong [kg]; members eat what that review tells."""
    members = profiles(people, seed)
    given, deficit = _given(members, days, seed, over=False, after=REBOUND_DAYS)
    end = LEAD_DAYS + days
    lives = Lives(world, CUT, end + REBOUND_DAYS + 1, people, seed, **given)
    for day in range(end):
        lives.live(lives.aim_kcal * (1.0 + lives.balance[day]), lives.balance[day] < 0.0)
    so_far = lives.logs()
    told = []
    for person, member in enumerate(members):
        body = {**request(member, so_far, person, float(deficit[person]), days - 1), "is_finished": True}
        told.append(review({**body, "as_of_date": (START + timedelta(days=days)).isoformat()}).after)
    held = np.array([after.intake_kcal for after in told], dtype=float)
    for _ in range(REBOUND_DAYS + 1):
        lives.live(held, np.zeros(people, dtype=bool))
    carried = lives.logs().truth.carried_kg
    returned = carried[end + REBOUND_DAYS] - carried[end]
    inside = np.array([a.rebound_kg.lower <= r <= a.rebound_kg.upper for a, r in zip(told, returned, strict=True)])
    return inside, np.array([after.rebound_kg.mean for after in told]) - returned


def request(member: dict[str, Any], logs: Logs, person: int, deficit: float, days: int) -> dict[str, Any]:
    """The request of a review on the given day of the mini-cut."""
    first = START - timedelta(days=LEAD_DAYS)
    last = LEAD_DAYS + days
    aim = float(logs.aim_kcal[person])
    weights = [
        {"date": (first + timedelta(days=d)).isoformat(), "weight_kg": round(float(logs.weight_kg[d, person]), 1)}
        for d in range(last + 1)
        if logs.is_weighed[d, person]
    ]
    intakes = [
        {"date": (first + timedelta(days=d)).isoformat(), "intake_kcal": float(logs.intake_kcal[d, person])}
        for d in range(last)
        if logs.is_logged[d, person]
    ]
    usual = [logs.intake_kcal[d, person] for d in range(LEAD_DAYS) if logs.is_logged[d, person]]
    week = {"intake_kcal": float(round(aim * (1.0 - deficit), -1)), "protein_g": 150}
    return {
        "profile": member,
        "phase": {
            "kind": "mini_cut",
            "start_date": START.isoformat(),
            "maintenance": {"kcal_per_day": float(round(aim)), "standard_deviation_kcal": float(round(0.07 * aim))},
            "weeks": [week] * 6,
            "usual_intake_kcal": float(round(float(np.mean(usual)))),
        },
        "log": {"weights": weights, "intakes": intakes},
        "screening": CLEAR,
        "as_of_date": (START + timedelta(days=days)).isoformat(),
    }


def review(body: dict[str, Any]) -> Any:
    """The answer to a review."""
    from steelyard.http.schemas.reviews import ReviewRequest

    return REVIEW.compute(msgspec.convert(body, ReviewRequest))


__all__ = ["PRIOR_SD", "logs_of", "profiles", "rebounds", "request", "review"]
