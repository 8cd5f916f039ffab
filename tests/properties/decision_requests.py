"""Random but plausible requests for a decision, as JSON-like dictionaries, from a seeded generator."""

import random
from datetime import date, timedelta
from typing import Any

from properties.plan_requests import profile
from request_people import CLEAR

AS_OF = date(2026, 3, 30)
KINDS = ("mini_cut", "cut", "gain", "maintenance")
WEEKS = {"mini_cut": (2, 6), "cut": (7, 20), "gain": (4, 30), "maintenance": (1, 8)}


def screening(rng: random.Random) -> dict[str, Any] | None:
    """Screening answers: clear for most, else one of everything that refuses or warns."""
    kind = rng.random()
    if kind < 0.6:
        return dict(CLEAR)
    if kind < 0.7:
        return None
    change: dict[str, Any] = rng.choice(
        [
            {"is_pregnant": True},
            {"is_breastfeeding": True},
            {"eating_disorder": "past"},
            {"eating_disorder": "current"},
            {"eating_disorder": "unsure"},
            {"conditions": ["gout"]},
            {"medicines": ["lithium"]},
            {"conditions": ["gout"], "clinical_clearance": {"given_by": "physician", "reason": "stable for two years"}},
        ]
    )
    return {**CLEAR, **change}


def history(rng: random.Random, weight_kg: float, until: date) -> list[dict[str, Any]]:
    """Up to eight phases, oldest first, that end by ``until``; some with figures."""
    phases: list[dict[str, Any]] = []
    end = until - timedelta(days=rng.choice([0, 3, 7, 20, 60, 200]))
    weight = weight_kg
    for _ in range(rng.randint(0, 8)):
        kind = rng.choice(KINDS)
        weeks = rng.randint(*WEEKS[kind])
        phase: dict[str, Any] = {
            "kind": kind, "weeks": weeks, "start_date": (end - timedelta(days=7 * weeks)).isoformat(),
        }  # fmt: skip
        if rng.random() < 0.6:
            moved = {"gain": 0.004, "maintenance": 0.0}.get(kind, -0.007) * weeks * weight * rng.uniform(0.2, 2.0)
            start = min(290.0, max(35.0, weight - moved))
            phase |= {"start_weight_kg": round(start, 1), "end_weight_kg": round(weight, 1)}
            weight = start
        elif rng.random() < 0.3:
            phase |= {"start_fat_fraction": 0.16, "end_fat_fraction": round(0.16 + rng.uniform(-0.04, 0.04), 3)}
        phases.insert(0, phase)
        end -= timedelta(days=7 * weeks + rng.choice([0, 0, 7, 40]))
    return phases


def request(rng: random.Random) -> dict[str, Any]:
    """A valid request for a decision."""
    person = profile(rng, eligible=rng.random() < 0.7)
    if rng.random() < 0.05:
        person["age_years"] = rng.randint(13, 17)
    asked: dict[str, Any] = {
        "profile": person,
        "as_of_date": AS_OF.isoformat(),
        "goal": rng.choice(["muscle", "muscle", "leanness", "hold"]),
        "feeling": rng.choice(["content", "would_like_leaner", "unhappy"]),
    }
    answers = screening(rng)
    if answers is not None:
        asked["screening"] = answers
    if rng.random() < 0.3:
        lower = rng.uniform(*{"male": (0.07, 0.2)}.get(person["sex"], (0.15, 0.28)))
        asked["band"] = {
            "lower_fat_fraction": round(lower, 3), "upper_fat_fraction": round(lower + rng.uniform(0.021, 0.1), 3),
        }  # fmt: skip
    if rng.random() < 0.3:
        asked["event_date"] = (AS_OF + timedelta(days=rng.randint(1, 420))).isoformat()
        if rng.random() < 0.5:
            asked["goal"] = "event"
        if rng.random() < 0.4 and "body_fat" in person:
            least = 0.07 if person["sex"] == "male" else 0.15
            asked["event_fat_fraction"] = round(
                max(least, person["body_fat"]["fat_fraction"] - rng.uniform(0, 0.06)), 3
            )
    began = AS_OF
    if rng.random() < 0.6:
        kind = rng.choice(KINDS)
        weeks = rng.randint(0, WEEKS[kind][1] + 3)
        asked["present_phase"] = {"kind": kind, "weeks_done": weeks}
        began -= timedelta(days=7 * weeks)
    if rng.random() < 0.7:
        asked["phase_history"] = history(rng, person["weight_kg"], began)
    if rng.random() < 0.3:
        asked["current_intake_kcal"] = round(min(8000.0, max(800.0, person["weight_kg"] * rng.uniform(24, 45))))
    if rng.random() < 0.2:
        asked["maintenance"] = {
            "kcal_per_day": round(min(8000.0, max(800.0, person["weight_kg"] * rng.uniform(24, 45)))),
            "standard_deviation_kcal": 120,
        }
    return asked
