"""Requests beside the examples: the people, measures and branches that those leave out."""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any

import msgspec
from request_people import CLEAR, LIFTER, Json

_LEVELS = ("sedentary", "light", "moderate", "active", "very_active")
_STATUSES = ("untrained", "novice", "intermediate", "advanced")
_WOMAN: Json = LIFTER | {
    "sex": "female", "age_years": 29, "height_cm": 167, "weight_kg": 64.0,
    "body_fat": {"fat_fraction": 0.27, "method": "bioimpedance"},
}  # fmt: skip
_START = {"start_date": "2026-03-02", "screening": CLEAR}
_PLANNED: Json = _START | {"include": ["sizes", "levers"]}


def further(operation: Any) -> dict[str, Any]:
    """Bodies for an operation, by name."""
    bodies = _BODIES.get(operation.operation_id)
    if bodies is None:
        return {}
    made = dict(bodies())
    return {name: msgspec.convert(body, operation.body_type, strict=False) for name, body in made.items()}


def _trained(person: Json, status: str, sessions: float = 1.0, *, new: bool = False) -> Json:
    training = {"status": status, "resistance_sessions_per_week": sessions, "is_new_programme": new}
    return person | {"training": training}


def _maintenance() -> Iterator[tuple[str, Json]]:
    for level, status in zip(_LEVELS, (*_STATUSES, "advanced"), strict=True):
        person = _trained(LIFTER, status) | {"activity": {"kind": "level", "level": level}}
        yield f"a_man_{level}", {"profile": person}
        yield f"a_woman_{level}", {"profile": _trained(_WOMAN, status) | {"activity": person["activity"]}}
    for age in (17.0, 84.0):
        yield f"aged_{age:g}", {"profile": _WOMAN | {"age_years": age, "body_fat": None}}
    idle = {"kind": "week", "steps_per_day": 0, "sessions": []}
    yield "hardly_moving", {"profile": LIFTER | {"activity": idle}}
    hard = {"kind": "week", "steps_per_day": 30_000, "sessions": [{"met": 9, "minutes": 240, "times_per_week": 7}]}
    yield "hard_to_sustain", {"profile": LIFTER | {"activity": hard}}
    yield "unspecified", {"profile": LIFTER | {"sex": "unspecified", "body_fat": None}}


def _composition() -> Iterator[tuple[str, Json]]:
    man = {"sex": "male", "age_years": 31, "height_cm": 180, "weight_kg": 82.0, "training_status": "untrained"}
    woman = man | {"sex": "female", "height_cm": 167, "weight_kg": 64.0}
    folds = {f"{site}_mm": 14.0 for site in (
        "abdomen", "biceps", "chest", "midaxillary", "subscapular", "suprailiac", "thigh", "triceps",
    )}  # fmt: skip
    girths = {"kind": "girths", "neck_cm": 36.0, "abdomen_cm": 92.0, "waist_cm": 78.0, "hip_cm": 98.0}
    for who, person in (("man", man), ("woman", woman)):
        for equation in ("jackson_pollock_3", "jackson_pollock_7", "durnin_womersley_4"):
            for conversion in ("siri", "brozek"):
                one = {"kind": "skinfolds", "equation": equation, "conversion": conversion, **folds}
                yield f"{who}_{equation}_{conversion}", person | {"measurements": [one]}
        yield f"{who}_girths_and_size", person | {"measurements": [girths, {"kind": "bmi"}]}
        yield f"{who}_old", person | {"age_years": 80, "measurements": [girths]}
        for fraction in (0.04, 0.07, 0.11, 0.16):
            reading = {"kind": "reading", "fat_fraction": fraction, "method": "dxa"}
            heavy = person | {"weight_kg": person["weight_kg"] + 26.0, "measurements": [reading]}
            yield f"{who}_lean_{fraction:g}", heavy
    for method in ("four_compartment", "dxa", "air_displacement", "hydrostatic", "bioimpedance", "visual"):
        read = [{"kind": "reading", "fat_fraction": f, "method": method} for f in (0.17, 0.175, 0.185)]
        yield f"readings_{method}", man | {"measurements": [*read, girths]}
    far = [{"kind": "reading", "fat_fraction": f, "method": m} for f, m in ((0.11, "dxa"), (0.20, "hydrostatic"))]
    yield "readings_that_disagree", man | {"measurements": far}


def _plans() -> Iterator[tuple[str, Json]]:
    for status in _STATUSES:
        for sex, person in (("man", LIFTER), ("woman", _WOMAN)):
            who = _trained(person, status, new=status == "novice")
            yield f"{sex}_gains_{status}", _PLANNED | {"profile": who, "phase": {"kind": "gain", "weeks": 12}}
    for preference in ("higher", "lower"):
        phase = {"kind": "mini_cut", "weeks": 5, "carbohydrate_preference": preference}
        for sex, person in (("man", LIFTER), ("woman", _WOMAN)):
            yield f"{sex}_cuts_{preference}", _PLANNED | {"profile": person, "phase": phase}
    small = _WOMAN | {"weight_kg": 47.0, "height_cm": 155, "activity": {"kind": "level", "level": "sedentary"}}
    hard = {"kind": "mini_cut", "weeks": 6, "deficit_kcal": 1000}
    thin = LIFTER | {"weight_kg": 61.0, "height_cm": 180}
    lean = LIFTER | {"body_fat": {"fat_fraction": 0.085, "method": "dxa"}}
    for name, person in {
        "small": small, "thin": thin, "lean": lean, "heavy": LIFTER | {"weight_kg": 110.0}, "man": LIFTER,
        "light": LIFTER | {"weight_kg": 58.0, "height_cm": 166, "activity": small["activity"]},
        "young": LIFTER | {"age_years": 19.0}, "old": LIFTER | {"age_years": 66.0}, "minor": LIFTER | {"age_years": 17},
    }.items():  # fmt: skip
        yield f"hard_{name}", _PLANNED | {"profile": person, "phase": hard}
    kinds = ("resistance", "walking", "running", "cycling", "other")
    days = ("monday", "tuesday", "wednesday", "thursday", "friday")
    lived: Json = {
        "training": [{"weekday": d, "kind": k, "minutes": 20} for d, k in zip(days, kinds, strict=True)],
        "flexible_days": [{"weekday": "saturday", "extra_kcal": 150, "alcohol_g": 25}],
    }
    for name, week in {"mixed": lived, "plants": lived | {"is_plant_based": True, "meals_per_day": 7}}.items():
        for sex, person in (("man", LIFTER), ("woman", _WOMAN)):
            stout = person | {"weight_kg": 118.0, "body_fat": {"fat_fraction": 0.41, "method": "dxa"}}
            for phase in ({"kind": "mini_cut", "weeks": 4, "deficit_kcal": 250}, {"kind": "gain", "weeks": 4}):
                yield f"{sex}_{name}_{phase['kind']}", _PLANNED | {"profile": person, "phase": phase, "week": week}
            yield f"{sex}_{name}_stout", _PLANNED | {"profile": stout, "phase": {"kind": "mini_cut"}, "week": week}
        for weight, fat in ((100.0, 0.38), (84.0, 0.34)):
            stout = LIFTER | {"weight_kg": weight, "body_fat": {"fat_fraction": fat, "method": "dxa"}}
            yield f"stout_{name}_{weight:g}", _PLANNED | {"profile": stout, "phase": {"kind": "mini_cut", "weeks": 4}}
    history = {"cuts_last_12_months": 4, "weeks_since_last_cut": 3}
    for weeks in (9, 16):
        cut = {"kind": "cut", "weeks": weeks, "easing_in_weeks": 2}
        yield f"cut_{weeks}", _PLANNED | {"profile": LIFTER, "phase": cut, "cut_history": history}
    yield "cut", _PLANNED | {"profile": LIFTER, "phase": {"kind": "cut", "target_fat_fraction": 0.13}}
    for target in (0.05, 0.075):
        phase = {"kind": "cut", "target_fat_fraction": target}
        yield f"to_{target:g}", _PLANNED | {"profile": lean, "phase": phase}


def _log(days: int, *, jump: bool = False, gap: bool = False, cycle: bool = False) -> Json:
    first, weights, intakes = date(2026, 1, 5), [], []
    for i in range(days):
        day = (first + timedelta(days=i)).isoformat()
        kg = 82.0 - 0.05 * i + 0.6 * ((i * 7) % 5 - 2) / 2 + (2.2 if jump and i > days // 2 else 0.0)
        weights.append({"date": day, "weight_kg": round(kg + (3.5 if jump and i == 9 else 0.0), 1)})
        if i % 4 == 0:
            weights.append({"date": day, "weight_kg": round(kg + 0.5, 1), "order": 1})
        if not (gap and i % 3 == 0):
            intakes.append({"date": day, "intake_kcal": 2300 + 90 * (i % 4), "is_partial": i == 5})
    starts = [(first + timedelta(days=2 + 28 * n)).isoformat() for n in range(days // 28)] if cycle else []
    return {"weights": weights, "intakes": intakes, "cycle": starts}


def _steps(days: int, lately: int) -> list[Json]:
    """About 9,000 a day, in the last fortnight another number; a day that hardly counts, and one that does not."""
    odd = {days - 5: 330, days - 8: 65_000}
    return [
        {
            "date": (date(2026, 1, 5) + timedelta(days=i)).isoformat(),
            "steps": odd.get(i, (lately if i >= days - 15 else 9_000) + 300 * (i % 5 - 2)),
        }
        for i in range(days)
    ]


def _trends() -> Iterator[tuple[str, Json]]:
    for days in (25, 70):
        yield f"jump_{days}", {"profile": LIFTER, "log": _log(days, jump=True)}
        yield f"gaps_{days}", {"profile": LIFTER, "log": _log(days, gap=True)}
        yield f"cycle_{days}", {"profile": _WOMAN, "log": _log(days, cycle=True)}
        for lately in (7_950, 4_500):
            yield f"walks_{lately}_{days}", {"profile": LIFTER, "log": _log(days) | {"steps": _steps(days, lately)}}


def _decisions() -> Iterator[tuple[str, Json]]:
    asked = {"as_of_date": "2026-03-30", "screening": CLEAR}
    for status in _STATUSES:
        for fat in (0.13, 0.17, 0.21):
            who = _trained(LIFTER, status, 3.0) | {"body_fat": {"fat_fraction": fat, "method": "dxa"}}
            yield f"man_{status}_{fat:g}", asked | {"profile": who, "goal": "muscle", "feeling": "content"}
    for fat in (0.22, 0.27, 0.33):
        who = _WOMAN | {"body_fat": {"fat_fraction": fat, "method": "dxa"}}
        yield f"woman_{fat:g}", asked | {"profile": who, "goal": "muscle", "feeling": "would_like_leaner"}


_BODIES = {
    "estimate_maintenance": _maintenance,
    "estimate_body_composition": _composition,
    "plan_phases": _plans,
    "read_trend": _trends,
    "decide_phase": _decisions,
}
