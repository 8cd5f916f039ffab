"""Random but plausible plan requests, as JSON-like dictionaries, from a seeded generator."""

import random
from datetime import date, timedelta
from typing import Any

from request_people import CLEAR
from steelyard.science.person.person import ActivityLevel, BodyFatMethod, TrainingStatus

# Minimum body fat with a deficit: 6 % men, 14 % women, the higher where neither set fits.
LEAST_FAT = {"male": 0.06, "female": 0.14, "unspecified": 0.14}
KINDS = {"mini_cut": 0.45, "cut": 0.3, "gain": 0.15, "maintenance": 0.1}
START = date(2026, 3, 2)


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


def phase_of(rng: random.Random, kind: str, person: dict[str, Any]) -> dict[str, Any]:
    """What is asked of a phase of ``kind``, in every combination of given and left open."""
    phase: dict[str, Any] = {"kind": kind}
    if rng.random() < 0.5:
        phase["carbohydrate_preference"] = rng.choice(["lower", "balanced", "higher"])
    if kind == "maintenance":
        phase["weeks"] = rng.randint(1, 26)
    elif kind == "gain":
        phase |= _gain(rng, person)
    else:
        phase |= _deficit(rng, kind, person)
    return phase


def _gain(rng: random.Random, person: dict[str, Any]) -> dict[str, Any]:
    asked: dict[str, Any] = {}
    if rng.random() < 0.5:
        asked["weeks"] = rng.randint(1, 52)
    if rng.random() < 0.4:
        asked["target_weight_kg"] = min(300.0, round(person["weight_kg"] * rng.uniform(1.003, 1.08), 1))
        if asked["target_weight_kg"] <= person["weight_kg"]:
            del asked["target_weight_kg"]
    if rng.random() < 0.5:
        asked["surplus_kcal"] = rng.randint(50, 1000)
    if rng.random() < 0.3:
        asked["fat_ceiling_fraction"] = round(rng.uniform(0.08, 0.4), 3)
    return asked


def _deficit(rng: random.Random, kind: str, person: dict[str, Any]) -> dict[str, Any]:
    is_cut = kind == "cut"
    asked: dict[str, Any] = {}
    done = rng.randint(1, 12 if is_cut else 5) if rng.random() < 0.2 else 0
    if done:
        asked["weeks_done"] = done
    least, most = (max(1, 7 - done), 26) if is_cut else (max(1, 2 - done), 6 - done)
    goal = rng.choices([None, "fat_loss_kg", "target_fat_fraction", "target_weight_kg"], [0.4, 0.3, 0.15, 0.15])[0]
    time = rng.choices([None, "weeks", "event_date"], [0.45, 0.35, 0.2])[0]
    easing = rng.choices([0, 1, 2], [0.8, 0.1, 0.1])[0]
    easing = min(easing, most - 1)
    share = rng.uniform(0.01, 0.12) if is_cut else rng.uniform(0.003, 0.06)
    weight = person["weight_kg"]
    if goal == "fat_loss_kg":
        asked[goal] = round(min(15.0, max(0.2, weight * share)), 2)
    elif goal == "target_weight_kg":
        asked[goal] = round(max(30.0, weight * (1 - share)), 2)
    elif goal == "target_fat_fraction" and "body_fat" in person:
        fraction = person["body_fat"]["fat_fraction"]
        asked[goal] = max(0.03, round(fraction - share, 3))
        if asked[goal] >= fraction:
            del asked[goal]
    if time == "weeks":
        asked[time] = rng.randint(max(least, easing + 1), most)
    elif time == "event_date":
        asked[time] = rng.randint(max(least, easing + 1), 3 * most)  # weeks, made a date by ``request``
    has_goal = goal in asked
    if rng.random() < 0.4 and not (has_goal and time == "weeks"):
        asked["deficit_kcal"] = rng.randint(100, 1500)
    elif rng.random() < 0.5 and not (has_goal and time == "weeks"):
        asked["pace"] = rng.choice(["gentle", "steady", "brisk"])
    if rng.random() < 0.4:
        asked["protein_g_per_kg"] = round(rng.uniform(1.2, 3.5), 2)
    if easing:
        asked["easing_in_weeks"] = easing
    if is_cut and rng.random() < 0.5:
        asked["break_every_weeks"] = rng.randint(2, 12)
        asked["break_weeks"] = rng.randint(1, 2)
    return asked


def screening(rng: random.Random) -> dict[str, Any] | None:
    """Answers of anyone: mostly clear, else with one thing that matters."""
    if rng.random() < 0.85:
        return CLEAR
    clearance = {"given_by": "physician", "reason": "Supervised weight loss, monthly checks."}
    return rng.choice(
        [
            None,
            CLEAR | {"is_pregnant": True},
            CLEAR | {"is_breastfeeding": True},
            CLEAR | {"eating_disorder": rng.choice(["unsure", "past", "current"])},
            CLEAR | {"conditions": ["diabetes_treated"]},
            CLEAR | {"conditions": ["kidney_disease"], "clinical_clearance": clearance},
            CLEAR | {"medicines": ["lithium"]},
        ]
    )


def request(rng: random.Random, *, eligible: bool = False, kind: str | None = None) -> dict[str, Any]:
    """A valid request for a plan. An ``eligible`` person is screened clear and may run a deficit."""
    person = profile(rng, eligible=eligible)
    if not eligible and rng.random() < 0.05:
        person["age_years"] = rng.randint(13, 17)
    kind = kind or rng.choices(list(KINDS), list(KINDS.values()))[0]
    asked: dict[str, Any] = {
        "profile": person,
        "start_date": START.isoformat(),
        "screening": CLEAR if eligible else screening(rng),
        "phase": phase_of(rng, kind, person),
        "return_to_gain": {"maintenance_weeks": rng.randint(1, 4), "gain_weeks": rng.choice([0, 2, 4, 8, 12])},
    }
    if kind != "maintenance" and rng.random() < 0.15:
        asked["pause"] = {"weeks": rng.randint(1, 6), "reason": rng.choice(["travel", "illness", "injury"])}
    if "event_date" in asked["phase"]:
        weeks = asked["phase"]["event_date"] + asked["return_to_gain"]["maintenance_weeks"]
        weeks += asked.get("pause", {}).get("weeks", 0)
        asked["phase"]["event_date"] = (START + timedelta(days=7 * weeks + rng.randint(0, 6))).isoformat()
    if rng.random() < 0.3:
        asked["day_split"] = {
            "higher_days_per_week": rng.randint(1, 6),
            "carbohydrate_shift": round(rng.uniform(0.05, 0.6), 2),
        }
    if rng.random() < 0.4:
        asked["return_to_gain"]["surplus_kcal"] = rng.randint(50, 1000)
    if rng.random() < 0.1:
        asked["return_to_gain"]["fat_ceiling_fraction"] = round(rng.uniform(0.08, 0.4), 3)
    if rng.random() < 0.75:
        asked["cut_history"] = {"cuts_last_12_months": rng.randint(0, 5)}
    if rng.random() < 0.3:
        asked["current_intake_kcal"] = min(8000, max(800, round(person["weight_kg"] * rng.uniform(24, 45))))
    if rng.random() < 0.2:
        asked["maintenance"] = {
            "kcal_per_day": round(min(8000.0, max(800.0, person["weight_kg"] * rng.uniform(24, 45)))),
            "standard_deviation_kcal": 120,
        }
    asked["include"] = ["sizes", "levers"]
    return asked
