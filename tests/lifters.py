"""Invented people who lift, as the science knows them, and screening answers that find nothing."""

from typing import Any

from steelyard.science.person import (
    ActivityLevel,
    BodyFatMethod,
    BodyFatReading,
    EatingDisorder,
    Person,
    Screening,
    Sex,
    Training,
    TrainingStatus,
)


def screened(**changed: Any) -> Screening:
    """Clear screening answers, but for some."""
    clear = {"is_pregnant": False, "is_breastfeeding": False, "eating_disorder": EatingDisorder.NONE}
    return Screening(**clear | changed)


CLEAR = screened()


def lifter(
    sex: Sex = Sex.MALE,
    *,
    age_years: float = 30.0,
    height_cm: float = 180.0,
    weight_kg: float = 80.0,
    fat: float | None = None,
    method: BodyFatMethod = BodyFatMethod.DXA,
    activity: ActivityLevel = ActivityLevel.LIGHT,
    status: TrainingStatus = TrainingStatus.INTERMEDIATE,
    sessions: float = 0.0,
) -> Person:
    """Somebody with a reading of body fat (``fat``, 0 to 1), or none; ``sessions`` of resistance training a week."""
    return Person(
        sex=sex,
        age_years=age_years,
        height_cm=height_cm,
        weight_kg=weight_kg,
        activity=activity,
        training=Training(status=status, resistance_sessions_per_week=sessions),
        body_fat=None if fat is None else BodyFatReading(fat_fraction=fat, method=method),
    )
