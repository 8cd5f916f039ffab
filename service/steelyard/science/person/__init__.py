"""What a person has told: who they are, how they train, and the answers to the screening."""

from .check_in import (
    CheckIn,
    CycleSaid,
    StrengthSaid,
)
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
from .week import (
    FlexibleDay,
    FlexibleKind,
    TrainingKind,
    TrainingOnDay,
    Weekday,
    WeekLived,
)
