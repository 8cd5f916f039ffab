"""Random but plausible plan requests, as JSON-like dictionaries, from a seeded generator."""

import random
from typing import Any

from steelyard.core.person import ActivityLevel, BodyFatMethod, TrainingStatus

CLEAR = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}
# Minimum body fat with a deficit: 6 % men, 14 % women, the higher where neither set fits.
LEAST_FAT = {"male": 0.06, "female": 0.14, "unspecified": 0.14}


def profile(rng: random.Random, *, eligible: bool) -> dict[str, Any]:
    """A person; an ``eligible`` one is 18-64, not underweight, and above the minimum body fat by reading."""
    sex = rng.choices(["male", "female", "unspecified"], [0.46, 0.46, 0.08])[0]
    height = rng.gauss({"male": 177, "female": 164, "unspecified": 170}[sex], 7)
    bmi = rng.uniform(32.0, 60.0) if rng.random() < 0.12 else min(40.0, max(16.5, rng.lognormvariate(3.24, 0.17)))
    status = rng.choice(list(TrainingStatus))
    sessions = 0 if status is TrainingStatus.UNTRAINED and rng.random() < 0.7 else rng.randint(1, 6)
    least = LEAST_FAT[sex]
    person: dict[str, Any] = {
        "sex": sex,
        "age_years": rng.randint(18, 78),
        "height_cm": round(min(215.0, max(140.0, height)), 1),
        "training": {
            "status": str(status),
            "resistance_sessions_per_week": sessions,
            "is_new_programme": rng.random() < 0.2,
        },
    }
    if eligible:
        person["age_years"] = rng.randint(18, 64)
        bmi = max(18.6, bmi)
    person["weight_kg"] = round(bmi * (person["height_cm"] / 100) ** 2, 1)
    if eligible or rng.random() < 0.7:
        # Around what a body mass index suggests, leaner in those who lift.
        expected = (1.2 * bmi - (16.0 if sex == "male" else 5.4)) / 100 + 0.06
        expected -= 0.0 if status is TrainingStatus.UNTRAINED else 0.05
        fraction = min(0.55, max(0.04, rng.gauss(expected, 0.045)))
        if eligible:
            fraction = max(least + 0.005, fraction)
        person["body_fat"] = {"fat_fraction": round(fraction, 3), "method": str(rng.choice(list(BodyFatMethod)))}
    if rng.random() < 0.6:
        person["activity"] = {"kind": "level", "level": str(rng.choice(list(ActivityLevel)))}
    else:
        sessions_of_week = [
            {"met": rng.choice([3.5, 5.0, 6.0, 8.0, 11.0]), "minutes": rng.randint(20, 120), "times_per_week": n}
            for n in (rng.randint(1, 6) for _ in range(rng.randint(0, 3)))
        ]
        person["activity"] = {"kind": "week", "steps_per_day": rng.randint(1500, 20000), "sessions": sessions_of_week}
    return person


def aim(rng: random.Random, weight_kg: float) -> dict[str, Any]:
    """What is asked of the mini-cut, in every combination of given and left open."""
    phase: dict[str, Any] = {"kind": "mini_cut"}
    given = rng.choice(
        [(), ("fat",), ("weeks",), ("deficit",), ("fat", "weeks"), ("fat", "deficit"), ("weeks", "deficit")]
    )
    if "fat" in given:
        phase["fat_loss_kg"] = round(min(15.0, max(0.2, weight_kg * rng.uniform(0.003, 0.06))), 2)
    if "weeks" in given:
        phase["weeks"] = rng.randint(2, 6)
    if "deficit" in given:
        phase["deficit_kcal"] = rng.randint(100, 1500)
    if rng.random() < 0.4:
        phase["protein_g_per_kg"] = round(rng.uniform(1.2, 3.5), 2)
    if rng.random() < 0.5:
        phase["carbohydrate_preference"] = rng.choice(["lower", "balanced", "higher"])
    if rng.random() < 0.2:
        phase["easing_in_weeks"] = 1 if phase.get("weeks", 6) == 2 else rng.randint(1, 2)
    return phase


def request(rng: random.Random, *, eligible: bool = False) -> dict[str, Any]:
    """A request for a plan. Screening is clear; see the tests of the rails for the rest."""
    person = profile(rng, eligible=eligible)
    asked: dict[str, Any] = {
        "profile": person,
        "start_date": "2026-03-02",
        "screening": CLEAR,
        "phase": aim(rng, person["weight_kg"]),
        "return_to_gain": {"maintenance_weeks": rng.randint(1, 4), "gain_weeks": rng.choice([0, 2, 4, 8, 12])},
    }
    if rng.random() < 0.4:
        asked["return_to_gain"]["surplus_kcal"] = rng.randint(50, 1000)
    if rng.random() < 0.75:
        asked["cut_history"] = {"cuts_last_12_months": rng.randint(0, 5)}
    if rng.random() < 0.3:
        asked["current_intake_kcal"] = min(8000, round(person["weight_kg"] * rng.uniform(24, 45)))
    if rng.random() < 0.2:
        asked["maintenance"] = {
            "kcal_per_day": round(min(8000.0, max(800.0, person["weight_kg"] * rng.uniform(24, 45)))),
            "standard_deviation_kcal": 120,
        }
    return asked
