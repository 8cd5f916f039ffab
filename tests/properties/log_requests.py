"""Random but plausible requests that read a log or a tape, as JSON-like dictionaries, from a seeded generator."""

import random
from datetime import date, timedelta
from typing import Any

from properties.plan_requests import profile
from request_people import CLEAR
from steelyard.science.body import UncertaintySource
from steelyard.science.log import EventKind
from steelyard.science.measures import DensityConversion, SkinfoldMethod
from steelyard.science.person import BodyFatMethod, CycleSaid, StrengthSaid

Json = dict[str, Any]
START = date(2026, 3, 2)
SITES = ("abdomen", "biceps", "chest", "midaxillary", "subscapular", "suprailiac", "thigh", "triceps")


def measurement(rng: random.Random) -> Json:
    """One measurement of body fat, all sites given so that it serves either sex."""
    kind = rng.choice(["girths", "skinfolds", "reading"])
    if kind == "girths":
        waist = rng.uniform(62, 120)
        return {
            "kind": kind,
            "neck_cm": round(rng.uniform(30, 44), 1),
            "abdomen_cm": round(waist + rng.uniform(0, 8), 1),
            "waist_cm": round(waist, 1),
            "hip_cm": round(waist + rng.uniform(5, 30), 1),
        }
    if kind == "skinfolds":
        folds = {f"{site}_mm": round(rng.lognormvariate(2.7, 0.5), 1) for site in SITES}
        equation, conversion = rng.choice(list(SkinfoldMethod)), rng.choice(list(DensityConversion))
        return {"kind": kind, "equation": str(equation), "conversion": str(conversion)} | folds
    return {
        "kind": kind,
        "fat_fraction": round(rng.uniform(0.06, 0.45), 3),
        "method": str(rng.choice([*BodyFatMethod])),
    }


def log(rng: random.Random, weight: float, days: int) -> Json:
    """A log of ``days`` with gaps, and anything else a log may hold in some of them."""
    kcal = weight * rng.uniform(28, 40)
    intake, slope, jump = kcal * rng.uniform(0.75, 1.15), rng.gauss(0.0, 0.06), rng.choice([0.0, 0.0, 1.5])
    day = lambda: str(START + timedelta(days=rng.randint(0, days)))  # noqa: E731
    weights: list[Json] = []
    for i in range(days + 1):
        if rng.random() < 0.75 or i == days:
            reading = weight + slope * (i - days) + (jump if i > days / 2 else 0.0) + rng.gauss(0, 0.5)
            reading += 8.0 if rng.random() < 0.01 else 0.0
            weights.append({"date": str(START + timedelta(days=i)), "weight_kg": round(max(31.0, reading), 2)})
    found: Json = {"weights": weights}
    if rng.random() < 0.75:
        found["intakes"] = [
            {"date": str(START + timedelta(days=i)), "intake_kcal": round(intake * rng.gauss(1, 0.15))}
            | ({"carbohydrate_g": round(intake * rng.uniform(0.06, 0.14))} if rng.random() < 0.5 else {})
            | ({"is_partial": True} if rng.random() < 0.05 else {})
            for i in range(days + 1)
            if rng.random() < 0.85
        ]
    if rng.random() < 0.4:
        steps = rng.uniform(3000, 12000)
        change = rng.uniform(0.4, 1.6)
        found["steps"] = [
            {
                "date": str(START + timedelta(days=i)),
                "steps": round(steps * rng.uniform(0.6, 1.4) * (change if i > days / 2 else 1)),
            }
            for i in range(-14, days + 1)
        ]
    if rng.random() < 0.3:
        first = rng.randint(-25, 3)
        found["cycle"] = [str(START + timedelta(days=i)) for i in range(first, days + 1, rng.randint(26, 31))]
    if rng.random() < 0.4:
        found["events"] = [{"kind": str(rng.choice([*EventKind])), "date": day()} for _ in range(rng.randint(1, 3))]
    if rng.random() < 0.3:
        found["measurements"] = [
            {"date": day(), "measurement": measurement(rng)} for _ in range(rng.randint(1, 3))
        ]  # fmt: skip
    if rng.random() < 0.3:
        found["check_ins"] = [
            {"date": day(), "hunger": rng.randint(1, 5), "sleep": rng.randint(1, 5), "mood": rng.randint(1, 5)}
            | {"cycle": str(rng.choice([*CycleSaid])), "strength": str(rng.choice([*StrengthSaid]))}
            for _ in range(rng.randint(1, 4))
        ]
    return found


def trend(rng: random.Random) -> Json:
    """A request for a trend."""
    person = profile(rng, eligible=rng.random() < 0.7)
    asked: Json = {"profile": person, "log": log(rng, person["weight_kg"], rng.choice([6, 20, 45, 90]))}
    if rng.random() < 0.4:
        asked["aim"] = rng.choice(["lose", "hold", "gain"])
    if rng.random() < 0.4:
        asked["include"] = ["implied_intake"]
    if rng.random() < 0.3:
        asked["usual_intake_kcal"] = round(min(8000.0, max(800.0, person["weight_kg"] * rng.uniform(24, 45))))
    return asked


def maintenance(rng: random.Random) -> Json:
    """A request for maintenance, mostly with a log."""
    person = profile(rng, eligible=rng.random() < 0.5)
    asked: Json = {"profile": person}
    if rng.random() < 0.7:
        asked["log"] = log(rng, person["weight_kg"], rng.choice([6, 20, 45, 90]))
    return asked


def composition(rng: random.Random) -> Json:
    """A request for body composition."""
    person = profile(rng, eligible=rng.random() < 0.5)
    asked: Json = {key: person[key] for key in ("sex", "age_years", "height_cm", "weight_kg")}
    measured = [measurement(rng) for _ in range(rng.randint(1, 4))] + [{"kind": "bmi"}] * (rng.random() < 0.3)
    return asked | {"training_status": person["training"]["status"], "measurements": measured}


def forecast(rng: random.Random) -> Json:
    """A request for a forecast: where a schedule leads, or an intake or a date for a target."""
    person = profile(rng, eligible=rng.random() < 0.8)
    weight = person["weight_kg"]
    kcal = lambda: round(min(8000.0, max(800.0, weight * rng.uniform(24, 42))))  # noqa: E731
    kind = rng.choice(["path", "path", "intake_for_target", "date_for_target"])
    question: Json = {"kind": kind}
    if kind == "path":
        question["schedule"] = [
            {"weeks": rng.randint(1, 10), "intake_kcal": kcal(), "protein_g_per_kg": round(rng.uniform(0.8, 2.8), 2)}
            | ({"sodium_change_mg": rng.randint(-2000, 4000)} if rng.random() < 0.2 else {})
            | ({"carbohydrate_g": rng.randint(50, 400)} if rng.random() < 0.4 else {})
            | ({"added_sessions": [{"met": 6.0, "minutes": 45, "times_per_week": 2}]} if rng.random() < 0.3 else {})
            for _ in range(rng.randint(1, 3))
        ]
    else:
        question["target"] = {"quantity": "weight_kg", "value": round(weight * rng.uniform(0.9, 1.04), 1)}
        if kind == "intake_for_target":
            question["by_date"] = str(START + timedelta(weeks=rng.randint(3, 26)))
        else:
            question["intake_kcal"] = kcal()
    asked: Json = {"profile": person, "start_date": str(START), "question": question, "screening": CLEAR}
    if rng.random() < 0.3:
        asked["current_intake_kcal"] = kcal()
    if rng.random() < 0.2:
        asked["uncertainty_sources"] = [str(source) for source in UncertaintySource if rng.random() < 0.5]
    return asked
