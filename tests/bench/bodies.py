"""The requests whose speed is measured: an invented lifter."""

import json
import random
from datetime import date, timedelta
from typing import Any

PROFILE: dict[str, Any] = {
    "sex": "male",
    "age_years": 31,
    "height_cm": 178,
    "weight_kg": 84.6,
    "body_fat": {"fat_fraction": 0.18, "method": "skinfolds"},
    "activity": {"kind": "level", "level": "light"},
    "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
}
SCREENING: dict[str, Any] = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}
_START = date(2026, 3, 2)


def maintenance() -> bytes:
    """Maintenance from a profile alone."""
    return _json({"profile": PROFILE})


def trend(days: int = 90) -> bytes:
    """A log of ``days`` weights and intakes."""
    rng = random.Random(20260302)
    days_of = [(_START + timedelta(days=i)).isoformat() for i in range(days)]
    weights = [
        {"date": day, "weight_kg": round(84.6 - 0.04 * i + rng.gauss(0.0, 0.5), 1)} for i, day in enumerate(days_of)
    ]
    intakes = [{"date": day, "intake_kcal": round(rng.gauss(2450.0, 245.0))} for day in days_of]
    return _json({"profile": PROFILE, "log": {"weights": weights, "intakes": intakes}})


def plan(*include: str) -> bytes:
    """Twelve weeks: four of a mini-cut, two of maintenance, six of gain; and what is to be offered beside them."""
    return _json(
        {
            "profile": PROFILE,
            "screening": SCREENING,
            "start_date": _START.isoformat(),
            "phase": {"kind": "mini_cut", "weeks": 4},
            "return_to_gain": {"maintenance_weeks": 2, "gain_weeks": 6},
            "cut_history": {"cuts_last_12_months": 0},
            "include": include,
        }
    )


def forecast(weeks: int = 26) -> bytes:
    """Half a year on one intake."""
    question = {
        "kind": "path",
        "schedule": [{"weeks": weeks, "intake_kcal": 2700, "protein_g_per_kg": 2.0}],
    }
    return _json({"profile": PROFILE, "screening": SCREENING, "start_date": _START.isoformat(), "question": question})


def _json(body: dict[str, Any]) -> bytes:
    return json.dumps(body, separators=(",", ":")).encode()
