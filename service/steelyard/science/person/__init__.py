"""What a person has told: who they are, how they train, and the answers to the screening."""

from .person import (
    ActivityLevel,
    ActivityWeek,
    BodyFatMethod,
    BodyFatReading,
    Person,
    Session,
    Sex,
    Training,
    TrainingStatus,
)
from .screening import (
    Clearance,
    Condition,
    EatingDisorder,
    Medicine,
    Screening,
)

__all__ = [
    "ActivityLevel",
    "ActivityWeek",
    "BodyFatMethod",
    "BodyFatReading",
    "Clearance",
    "Condition",
    "EatingDisorder",
    "Medicine",
    "Person",
    "Screening",
    "Session",
    "Sex",
    "Training",
    "TrainingStatus",
]
