"""Random requests for every operation, as JSON-like dictionaries, from a seeded generator."""

import random
from collections.abc import Callable
from datetime import timedelta
from typing import Any

from .people import START, any_log, expenditure, known_maintenance, log, profile, screening
from .service import ask

Json = dict[str, Any]
WEEKDAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
READY = (
    "slow_gain_rare_mini_cuts", "fast_gain_long_cut", "fast_gain_repeated_mini_cuts", "slow_gain_no_cut",
)  # fmt: skip


def _asked(rng: random.Random, *, date_field: str = "start_date") -> Json:
    """What most requests share."""
    person = profile(rng)
    asked: Json = {"profile": person, date_field: START.isoformat()}
    answers = screening(rng)
    if answers is not None:
        asked["screening"] = answers
    known = rng.random()
    if known < 0.2:
        asked["maintenance"] = known_maintenance(rng, person)
    if 0.15 < known < 0.4:
        asked["log"] = any_log(rng, person)
    if rng.random() < 0.2:
        share = rng.choice([0.4, 0.7, 1.0, 1.2])
        asked["current_intake_kcal"] = round(min(8000.0, max(800.0, share * expenditure(person))))
    return asked


def _history(rng: random.Random) -> Json:
    history: Json = {"cuts_last_12_months": rng.randint(0, 6)}
    if rng.random() < 0.6:
        history["weeks_since_last_cut"] = rng.choice([0, 1, 3, 5, 20, 60])
    return history


def plan(rng: random.Random) -> Json:
    """A phase of any kind, with every field given or left open."""
    asked = _asked(rng)
    person = asked["profile"]
    kind = rng.choices(["mini_cut", "cut", "gain", "maintenance"], [0.4, 0.3, 0.15, 0.15])[0]
    phase: Json = {"kind": kind}
    if rng.random() < 0.4:
        phase["carbohydrate_preference"] = rng.choice(["lower", "balanced", "higher"])
    if kind == "maintenance":
        phase["weeks"] = rng.choice([1, 4, 26])
    elif kind == "gain":
        phase |= _gain(rng, person)
    else:
        phase |= _deficit(rng, kind, person)
    asked["phase"] = phase
    asked["return_to_gain"] = {"maintenance_weeks": rng.randint(1, 4), "gain_weeks": rng.choice([0, 4, 26])}
    if rng.random() < 0.3:
        asked["return_to_gain"]["surplus_kcal"] = rng.choice([50, 300, 1000])
    if rng.random() < 0.1:
        asked["return_to_gain"]["fat_ceiling_fraction"] = round(rng.uniform(0.08, 0.4), 3)
    if kind != "maintenance" and rng.random() < 0.1:
        asked["pause"] = {"weeks": rng.randint(1, 12), "reason": rng.choice(["travel", "illness", "injury"])}
    if rng.random() < 0.25:
        asked["day_split"] = {
            "higher_days_per_week": rng.randint(1, 6), "carbohydrate_shift": round(rng.uniform(0.05, 0.6), 2),
        }  # fmt: skip
    elif rng.random() < 0.3:
        asked["week"] = _week(rng)
    if rng.random() < 0.7:
        asked["cut_history"] = _history(rng)
    asked["include"] = ["sizes", "levers"]  # what is offered beside a plan holds the rails as well
    return asked


def _week(rng: random.Random) -> Json:
    """How a week is lived, sensibly or not."""
    trains = rng.sample(WEEKDAYS, rng.randint(0, 6))
    found: Json = {
        "training": [
            {"weekday": day, "kind": rng.choice(["resistance", "running", "cycling"]), "minutes": rng.choice([30, 120])}
            for day in trains
        ],
        "meals_per_day": rng.randint(1, 8),
        "is_plant_based": rng.random() < 0.3,
        "flexible_days": [],
    }
    for day in rng.sample(WEEKDAYS, rng.choice([0, 0, 1, 2, 7])):
        more = {"extra_kcal": rng.choice([0, 300, 3000]), "alcohol_g": rng.choice([20, 60, 150])}
        found["flexible_days"].append({"weekday": day} | more)
    if rng.random() < 0.3:
        party = (START + timedelta(days=rng.randint(0, 40))).isoformat()
        found["flexible_days"].append({"date": party, "extra_kcal": 800})
    return found


def _gain(rng: random.Random, person: Json) -> Json:
    asked: Json = {}
    if rng.random() < 0.6:
        asked["weeks"] = rng.choice([1, 8, 16, 52])
    if rng.random() < 0.2:
        asked["target_weight_kg"] = min(300.0, round(person["weight_kg"] * rng.uniform(1.01, 1.1), 1))
    if rng.random() < 0.5:
        asked["surplus_kcal"] = rng.choice([50, 200, 500, 1000])
    if rng.random() < 0.3:
        asked["fat_ceiling_fraction"] = round(rng.uniform(0.08, 0.4), 3)
    return asked


def _deficit(rng: random.Random, kind: str, person: Json) -> Json:
    asked: Json = {}
    most = 26 if kind == "cut" else 6
    done = rng.randint(1, most - 1) if rng.random() < 0.15 else 0
    if done:
        asked["weeks_done"] = done
    goal = rng.choices([None, "fat_loss_kg", "target_fat_fraction", "target_weight_kg"], [0.4, 0.3, 0.15, 0.15])[0]
    weight, share = person["weight_kg"], rng.uniform(0.005, 0.2)
    if goal == "fat_loss_kg":
        asked[goal] = round(min(30.0, max(0.2, weight * share)), 2)
    elif goal == "target_weight_kg":
        asked[goal] = round(max(30.0, weight * (1 - share)), 2)
    elif goal == "target_fat_fraction" and "body_fat" in person:
        asked[goal] = round(max(0.03, person["body_fat"]["fat_fraction"] - share), 3)
    if goal not in asked or rng.random() < 0.5:
        asked["weeks"] = rng.randint(max(1, (7 if kind == "cut" else 2) - done), most if kind == "cut" else most - done)
    if rng.random() < 0.4 and not (goal in asked and "weeks" in asked):
        asked["deficit_kcal"] = rng.choice([100, 300, 500, 750, 1500])
    elif rng.random() < 0.5 and not (goal in asked and "weeks" in asked):
        asked["pace"] = rng.choice(["gentle", "steady", "brisk"])
    if rng.random() < 0.3:
        asked["protein_g_per_kg"] = round(rng.uniform(1.2, 3.5), 2)
    if kind == "cut" and rng.random() < 0.4:
        asked["break_every_weeks"] = rng.randint(2, 12)
        asked["break_weeks"] = rng.randint(1, 2)
    return asked


def forecast(rng: random.Random) -> Json:
    """A schedule, or the intake or date for a target."""
    asked = _asked(rng)
    person = asked["profile"]
    need = expenditure(person)
    kind = rng.random()
    if kind < 0.45:
        schedule = []
        for _ in range(rng.randint(1, 4)):
            stretch: Json = {
                "weeks": rng.choice([1, 4, 6, 12, 30]),
                "intake_kcal": round(min(8000.0, max(800.0, need * rng.choice([0.6, 0.75, 0.85, 0.95, 1.0, 1.1])))),
            }
            if rng.random() < 0.4:
                stretch["protein_g_per_kg"] = round(rng.choice([0.3, 1.0, 1.8, 5.0]), 1)
            if rng.random() < 0.2:
                stretch["carbohydrate_g"] = rng.choice([0, 60, 150])
            if rng.random() < 0.15:
                stretch["added_sessions"] = [{"met": rng.choice([6, 12]), "minutes": 60, "times_per_week": 5}]
            schedule.append(stretch)
        asked["question"] = {"kind": "path", "schedule": schedule}
        return asked
    quantity = rng.choice(["weight_kg", "fat_kg", "fat_fraction"])
    fraction = person.get("body_fat", {}).get("fat_fraction", 0.25)
    now = {"weight_kg": person["weight_kg"], "fat_kg": fraction * person["weight_kg"], "fat_fraction": fraction}
    least, most = {"weight_kg": (30, 300), "fat_kg": (1, 150), "fat_fraction": (0.03, 0.6)}[quantity]
    value = round(min(most, max(least, now[quantity] * rng.choice([0.7, 0.85, 0.93, 0.98, 1.04]))), 3)
    question: Json = {"target": {"quantity": quantity, "value": value}}
    if rng.random() < 0.3:
        question["protein_g_per_kg"] = rng.choice([0.3, 1.2, 2.2])
    if kind < 0.75:
        question |= {
            "kind": "intake_for_target", "by_date": (START + timedelta(weeks=rng.choice([3, 8, 26, 104]))).isoformat(),
        }  # fmt: skip
    else:
        kcal = min(8000.0, max(800.0, need * rng.choice([0.7, 0.8, 0.9, 1.1])))
        question |= {"kind": "date_for_target", "intake_kcal": round(kcal)}
    asked["question"] = question
    return asked


def decision(rng: random.Random) -> Json:
    """What comes next for anyone."""
    asked = _asked(rng, date_field="as_of_date")
    asked["goal"] = rng.choice(["muscle", "muscle", "leanness", "hold"])
    asked["feeling"] = rng.choice(["content", "would_like_leaner", "unhappy"])
    began = 0
    if rng.random() < 0.5:
        kind = rng.choice(["mini_cut", "cut", "gain", "maintenance"])
        began = rng.choice([0, 2, 5, 8, 20])
        asked["present_phase"] = {"kind": kind, "weeks_done": began}
    if rng.random() < 0.6:
        asked["phase_history"], ago = [], began + rng.choice([0, 1, 3, 10])
        for _ in range(rng.randint(0, 5)):
            weeks = rng.choice([2, 6, 12])
            ago += weeks
            past = {"kind": rng.choice(["mini_cut", "cut", "gain", "maintenance"]), "weeks": weeks}
            past["start_date"] = (START - timedelta(weeks=ago)).isoformat()
            asked["phase_history"].insert(0, past)
            ago += rng.choice([0, 1, 5])
    return asked


def _season(rng: random.Random, weeks: int) -> Json:
    asked = _asked(rng) | {"horizon_weeks": weeks}
    if rng.random() < 0.6:
        asked["cut_history"] = _history(rng)
    limits: Json = {}
    if rng.random() < 0.4:
        limits["least_weeks_between_cuts"] = rng.choice([2, 3, 8])
    if rng.random() < 0.3:
        limits["most_cuts_a_year"] = rng.choice([0, 3, 6])
    return asked | {"limits": limits}


def _strategy(rng: random.Random, person: Json) -> Json:
    if rng.random() < 0.5:
        return {"kind": "ready_made", "name": rng.choice(READY)}
    fraction = person.get("body_fat", {}).get("fat_fraction", 0.25)
    own: Json = {"kind": "own", "label": f"own {rng.randint(1, 10**6)}", "surplus_kcal": rng.choice([0, 150, 1000])}
    if rng.random() < 0.8:
        target = round(min(0.57, max(0.03, fraction - rng.choice([0.01, 0.03, 0.1]))), 3)
        own |= {
            "cut_to_fat_fraction": target, "cut_at_fat_fraction": round(min(0.6, target + 0.02), 3),
            "deficit_kcal": rng.choice([100, 500, 1500]), "longest_cut_weeks": rng.choice([2, 6, 26]),
            "maintenance_weeks": rng.choice([1, 4]),
        }  # fmt: skip
    return own


def season(rng: random.Random) -> Json:
    """One season."""
    asked = _season(rng, rng.choice([12, 26, 52, 104]))
    return asked | {"strategy": _strategy(rng, asked["profile"])}


def comparison(rng: random.Random) -> Json:
    """All that is ready-made and one of one's own."""
    asked = _season(rng, rng.choice([12, 26]))
    own = {"kind": "own", "label": "mine", "surplus_kcal": rng.choice([0, 300])}
    return asked | {"strategies": [own, *({"kind": "ready_made", "name": name} for name in READY)]}


def optimum(rng: random.Random) -> Json:
    """A small search."""
    return _season(rng, rng.choice([12, 26])) | {"strategies_searched": 500}


def review(rng: random.Random) -> Json:
    """A phase followed well, badly or absurdly by anyone."""
    asked = _asked(rng)
    for key in ("start_date", "maintenance", "log", "current_intake_kcal"):
        asked.pop(key, None)
    person = asked["profile"]
    kind = rng.choice(["mini_cut", "cut", "gain", "maintenance"])
    weeks = rng.randint(2, 6) if kind == "mini_cut" else rng.choice([4, 12, 20])
    need = expenditure(person) * rng.uniform(0.85, 1.15)
    share = {"mini_cut": 0.78, "cut": 0.82, "gain": 1.1, "maintenance": 1.0}[kind] * rng.choice([0.75, 1.0, 1.0])
    intake = min(8000.0, max(800.0, 10 * round(need * share / 10)))
    protein = round(min(600.0, max(20.0, rng.choice([1.8, 1.8, 0.8, 3.5]) * person["weight_kg"])))
    week: Json = {"intake_kcal": intake, "protein_g": protein}
    if rng.random() < 0.5:
        week["carbohydrate_g"] = round(min(1500.0, rng.choice([0.3, 0.4, 0.9]) * intake / 4))
    days = rng.randint(3, 7 * weeks)
    before = rng.choice([0, 14])
    began = START - timedelta(days=days)
    asked["phase"] = {
        "kind": kind, "start_date": began.isoformat(), "weeks": [dict(week) for _ in range(weeks)],
        "maintenance": {
            "kcal_per_day": round(min(8000.0, max(800.0, need * rng.choice([0.6, 0.9, 1.0, 1.1])))),
            "standard_deviation_kcal": rng.choice([20, 120, 600]),
        },
    }  # fmt: skip
    from_any = rng.random() < 0.3
    logged = any_log(rng, person) if from_any else _followed(rng, person, need, intake, days, before)
    asked["log"] = logged
    asked["is_finished"] = rng.random() < 0.1
    if kind in ("mini_cut", "cut") and rng.random() < 0.4:
        asked["phase"]["fat_loss_kg"] = round(min(40.0, max(0.2, 0.004 * person["weight_kg"] * weeks)), 2)
    return asked


def _followed(rng: random.Random, person: Json, need: float, intake: float, days: int, before: int) -> Json:
    """A log of a phase by somebody who eats about what is told, but for what they do not log."""
    ratio = rng.uniform(0.4, 1.3)
    eaten = min(1.3 * need, max(0.6 * need, intake / ratio * rng.uniform(0.85, 1.15)))
    return log(rng, person, days=days + before, ratio=ratio, eaten=eaten, maintenance=need, profile_ago=days)


def trend(rng: random.Random) -> Json:
    """A log of anyone."""
    person = profile(rng)
    return {"profile": person, "log": any_log(rng, person)}


def maintenance(rng: random.Random) -> Json:
    """Anyone, with a log or without."""
    person = profile(rng)
    return {"profile": person} | ({"log": any_log(rng, person)} if rng.random() < 0.5 else {})


def body_composition(rng: random.Random) -> Json:
    """A reading of anyone."""
    person = profile(rng)
    reading = person.get("body_fat")
    measured = {"kind": "reading", **reading} if reading else {"kind": "bmi"}
    named = {key: person[key] for key in ("sex", "age_years", "height_cm", "weight_kg")}
    return named | {"training_status": person["training"]["status"], "measurements": [measured]}


def roster(rng: random.Random) -> Json:
    """Members as their reviews see them, asked about on that day or some weeks later."""
    seen = []
    for i in range(rng.randint(0, 6)):
        answered = ask("review_phase", review(rng))
        if answered.is_answer:
            seen.append({"reference": f"member-{i}", "attention": answered.body["attention"]})
    for member in seen:
        if rng.random() < 0.4:
            member["before"] = rng.choice(seen)["attention"]
    rng.shuffle(seen)
    return {"as_of_date": (START + timedelta(days=rng.choice([0, 0, 3, 30]))).isoformat(), "members": seen}


REQUESTS: dict[str, Callable[[random.Random], Json]] = {
    "plan_phases": plan,
    "forecast_intake": forecast,
    "decide_phase": decision,
    "review_phase": review,
    "plan_season": season,
    "compare_strategies": comparison,
    "optimise_season": optimum,
    "read_trend": trend,
    "estimate_maintenance": maintenance,
    "estimate_body_composition": body_composition,
    "rank_roster": roster,
}
