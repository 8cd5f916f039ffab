"""The person a computation is about: what they told us, nothing derived."""

from enum import StrEnum

import msgspec


class Sex(StrEnum):
    """Which set of equations applies. ``UNSPECIFIED`` uses both, widens the interval, takes the stricter rail."""

    FEMALE = "female"
    MALE = "male"
    UNSPECIFIED = "unspecified"


class TrainingStatus(StrEnum):
    """Resistance-training experience, which sets how fast muscle can still be gained."""

    UNTRAINED = "untrained"  # does no resistance training
    NOVICE = "novice"  # under about a year of consistent training
    INTERMEDIATE = "intermediate"  # about one to four years
    ADVANCED = "advanced"  # more than about four years


class BodyFatMethod(StrEnum):
    """How a body-fat reading was taken, which sets its error."""

    FOUR_COMPARTMENT = "four_compartment"
    DXA = "dxa"
    AIR_DISPLACEMENT = "air_displacement"
    HYDROSTATIC = "hydrostatic"
    SKINFOLDS = "skinfolds"
    GIRTHS = "girths"
    BIOIMPEDANCE = "bioimpedance"
    VISUAL = "visual"
    BMI_EQUATION = "bmi_equation"


class ActivityLevel(StrEnum):
    """Whole-day activity, training included (bands of the physical activity level)."""

    SEDENTARY = "sedentary"
    LIGHT = "light"
    MODERATE = "moderate"
    ACTIVE = "active"
    VERY_ACTIVE = "very_active"


class BodyFatReading(msgspec.Struct, frozen=True, kw_only=True):
    """A body-fat reading: ``fat_fraction`` 0-1 and how it was taken."""

    fat_fraction: float
    method: BodyFatMethod


class Session(msgspec.Struct, frozen=True, kw_only=True):
    """A weekly repeated bout: intensity in METs, minutes a bout, bouts a week."""

    met: float
    minutes: float
    times_per_week: float


class ActivityWeek(msgspec.Struct, frozen=True, kw_only=True):
    """A week composed of its parts: steps a day outside sessions, and the sessions."""

    steps_per_day: float
    sessions: tuple[Session, ...] = ()


class Training(msgspec.Struct, frozen=True, kw_only=True):
    """Resistance training. ``is_new_programme``: started or clearly increased within the last weeks."""

    status: TrainingStatus
    resistance_sessions_per_week: float = 0.0
    is_new_programme: bool = False


class Person(msgspec.Struct, frozen=True, kw_only=True):
    """One person. ``activity`` is a level that already includes training, or a composed week."""

    sex: Sex
    age_years: float
    height_cm: float
    weight_kg: float
    activity: ActivityLevel | ActivityWeek
    training: Training
    body_fat: BodyFatReading | None = None
