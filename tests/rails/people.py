"""Random people, screenings and logs that reach the edges of the schema, from a seeded generator.

Everyone is somebody the schema lets in. About two in three are ordinary adults, so that the rails are met from inside
as well; the others are as young, old, light, heavy, ill or busy as a request may say.
"""

import random
from datetime import date, timedelta
from typing import Any

Json = dict[str, Any]

START = date(2026, 3, 2)
CLEAR: Json = {
    "is_pregnant": False, "is_breastfeeding": False, "eating_disorder": "none", "conditions": [], "medicines": [],
}  # fmt: skip
CLEARANCE: Json = {"given_by": "physician", "reason": "Supervised weight loss with monthly checks."}
BLANKS: Json = {"given_by": "   ", "reason": "            "}
SEXES = ("male", "female", "unspecified")
STATUS = ("untrained", "novice", "intermediate", "advanced")
LEVELS = ("sedentary", "light", "moderate", "active", "very_active")
METHODS = (
    "four_compartment", "dxa", "air_displacement", "hydrostatic", "skinfolds", "girths", "bioimpedance", "visual",
    "bmi_equation",
)  # fmt: skip
CONDITIONS = (
    "diabetes_treated", "kidney_disease", "liver_disease", "heart_disease", "thyroid_uncontrolled", "gout",
    "gallstones", "bariatric_surgery", "cancer", "unexplained_weight_loss", "absent_periods",
    "low_testosterone_symptoms", "stress_fracture", "recent_surgery_or_injury", "phenylketonuria",
)  # fmt: skip
MEDICINES = ("insulin_or_secretagogue", "sglt2_inhibitor", "glp1_agonist", "diuretic", "lithium", "warfarin")


def someone(
    sex: str, age: float, height: float, weight: float, fat: float | None = None, **more: Any
) -> Json:  # fmt: skip
    """A profile by its figures: trained for some years and lightly active unless ``more`` says otherwise."""
    profile = {
        "sex": sex, "age_years": age, "height_cm": height, "weight_kg": weight,
        "activity": {"kind": "level", "level": "light"},
        "training": {"status": "intermediate", "resistance_sessions_per_week": 3},
    }  # fmt: skip
    if fat is not None:
        profile["body_fat"] = {"fat_fraction": fat, "method": "dxa"}
    return profile | more


def profile(rng: random.Random) -> Json:
    """A person: ordinary for two in three."""
    ordinary = rng.random() < 0.65
    sex = rng.choices(SEXES, [0.45, 0.47, 0.08])[0]
    height = rng.gauss({"male": 177, "female": 164, "unspecified": 170}[sex], 7)
    if ordinary:
        age, bmi = rng.randint(18, 64), min(38.0, max(18.0, rng.lognormvariate(3.2, 0.16)))
    else:
        age = rng.choice([rng.randint(13, 17), rng.randint(18, 19), rng.randint(65, 100), rng.randint(18, 64)])
        bmi = rng.choice([rng.uniform(12, 17), rng.uniform(17, 20), rng.uniform(35, 70), rng.uniform(18, 35)])
        height = rng.choice([height, height, rng.uniform(120, 230)])
    height = round(min(230.0, max(120.0, height)), 1)
    weight = round(min(300.0, max(30.0, bmi * (height / 100) ** 2)), 1)
    status = rng.choice(STATUS)
    made = {
        "sex": sex, "age_years": age, "height_cm": height, "weight_kg": weight,
        "activity": activity(rng, ordinary=ordinary),
        "training": {
            "status": status,
            "resistance_sessions_per_week": rng.randint(0, 6) if ordinary else rng.choice([0, 3, 14]),
            "is_new_programme": rng.random() < 0.2,
        },
    }  # fmt: skip
    if rng.random() < 0.75:
        fraction = (1.2 * bmi - (16.0 if sex == "male" else 5.4)) / 100 + 0.02
        fraction = rng.gauss(fraction, 0.05) if ordinary or rng.random() < 0.6 else rng.uniform(0.03, 0.6)
        method = rng.choice(METHODS)
        made["body_fat"] = {"fat_fraction": round(min(0.6, max(0.03, fraction)), 3), "method": method}
    return made


def activity(rng: random.Random, *, ordinary: bool) -> Json:
    """A level, or a week of sessions; at the edges to the schema's limit."""
    if rng.random() < 0.6:
        return {"kind": "level", "level": rng.choice(LEVELS)}
    if ordinary:
        bouts = [
            {"met": rng.choice([3.5, 5.0, 6.0, 8.0, 11.0]), "minutes": rng.randint(20, 120), "times_per_week": n}
            for n in (rng.randint(1, 6) for _ in range(rng.randint(0, 3)))
        ]
        return {"kind": "week", "steps_per_day": rng.randint(1500, 20_000), "sessions": bouts}
    bouts = [
        {"met": rng.uniform(1, 20), "minutes": rng.uniform(1, 600), "times_per_week": rng.uniform(0.1, 21)}
        for _ in range(rng.choice([0, 1, 3, 30]))
    ]
    return {"kind": "week", "steps_per_day": rng.choice([0, 60_000]), "sessions": bouts}


def screening(rng: random.Random) -> Json | None:
    """Safety answers: clear for two in three, else any mixture."""
    kind = rng.random()
    if kind < 0.65:
        return dict(CLEAR)
    if kind < 0.72:
        return None
    answers = {
        "is_pregnant": rng.random() < 0.2,
        "is_breastfeeding": rng.random() < 0.2,
        "eating_disorder": rng.choices(["none", "unsure", "past", "current"], [0.5, 0.2, 0.15, 0.15])[0],
        "conditions": rng.sample(CONDITIONS, rng.choice([0, 0, 1, 3])),
        "medicines": rng.sample(MEDICINES, rng.choice([0, 0, 0, 1])),
    }
    clearance = rng.choice([None, None, CLEARANCE, BLANKS])
    return answers | ({"clinical_clearance": clearance} if clearance else {})


def expenditure(person: Json) -> float:
    """About what this person eats to hold: near enough to make a plausible log of. No estimate of anyone's."""
    male = {"male": 1.0, "female": 0.0, "unspecified": 0.5}[person["sex"]]
    rest = 10 * person["weight_kg"] + 6.25 * person["height_cm"] - 5 * person["age_years"] - 161 + 166 * male
    level = person["activity"].get("level", "moderate")
    factor = {"sedentary": 1.4, "light": 1.55, "moderate": 1.7, "active": 1.85, "very_active": 2.1}[level]
    return max(900.0, factor * rest)


def log(
    rng: random.Random,
    person: Json,
    *,
    days: int = 28,
    ratio: float = 1.0,
    eaten: float | None = None,
    maintenance: float | None = None,
    change_a_week: float | None = None,
    ends: date = START,
    partial: float = 0.05,
    noise_kg: float = 0.5,
    profile_ago: int = 1,
) -> Json:
    """Dated weights and intakes that end the day before ``ends``.

    ``profile_ago`` days before it the weight is the profile's. ``eaten`` is what is truly eaten a day, of which
    ``ratio`` is logged. Weight follows at 7,700 kcal a kilogram, or as ``change_a_week`` says, a share of body mass.
    """
    need = expenditure(person) if maintenance is None else maintenance
    ate = need if eaten is None else eaten
    a_day = (ate - need) / 7700 if change_a_week is None else change_a_week * person["weight_kg"] / 7
    weights, intakes = [], []
    for ago in range(days, 0, -1):
        when = (ends - timedelta(days=ago)).isoformat()
        weight = person["weight_kg"] - a_day * (ago - profile_ago) + rng.gauss(0, noise_kg)
        if rng.random() < 0.9 or ago == 1:
            weights.append({"date": when, "weight_kg": round(min(300.0, max(30.0, weight)), 2)})
        if rng.random() < 0.9:
            kcal = min(15_000.0, max(0.0, ate * ratio * rng.gauss(1, 0.1)))
            intakes.append({"date": when, "intake_kcal": round(kcal), "is_partial": rng.random() < partial})
    return {"weights": weights, "intakes": intakes}


def any_log(rng: random.Random, person: Json, *, ends: date = START) -> Json:
    """A log of anyone: at 40 to 130 % of what is eaten, eating from little to much, two days to half a year."""
    need = expenditure(person) * rng.uniform(0.8, 1.2)
    kind = rng.random()
    days = rng.choice([2, 7, 14, 28, 28, 56, 120])
    if kind < 0.04:
        made = log(rng, person, days=days, ratio=0.0, ends=ends)
    elif kind < 0.12:
        made = log(rng, person, days=max(28, days), eaten=0.4 * need, change_a_week=-0.025, ends=ends)
    elif kind < 0.16:
        made = log(rng, person, days=days, eaten=900.0, maintenance=900.0, ends=ends)
    else:
        made = log(
            rng, person, days=days, ratio=rng.uniform(0.4, 1.3), eaten=need * rng.uniform(0.7, 1.15), maintenance=need,
            ends=ends,
        )  # fmt: skip
    if rng.random() < 0.1:
        made["intakes"] = []
    return made


def known_maintenance(rng: random.Random, person: Json) -> Json:
    """A maintenance that the caller knows: near the truth, or absurd."""
    about = expenditure(person) * rng.uniform(0.85, 1.15)
    kcal = about if rng.random() < 0.6 else rng.choice([800.0, 900.0, 8000.0, rng.uniform(800, 8000)])
    return {
        "kcal_per_day": round(min(8000.0, max(800.0, kcal))),
        "standard_deviation_kcal": rng.choice([20, 120, 600]),
    }
