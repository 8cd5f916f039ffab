"""A person as requests describe one, with screening that finds nothing."""

from typing import Any

Json = dict[str, Any]

CLEAR: Json = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}
LIFTER: Json = {
    "sex": "male",
    "age_years": 31,
    "height_cm": 180,
    "weight_kg": 82.0,
    "body_fat": {"fat_fraction": 0.18, "method": "dxa"},
    "activity": {"kind": "level", "level": "moderate"},
    "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
}
