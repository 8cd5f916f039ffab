"""A week as it is lived: when a person trains, and the days on which they eat or drink more."""

import datetime
from enum import StrEnum
from typing import NamedTuple


class Weekday(StrEnum):
    """A day of the week."""

    MONDAY = "monday"
    TUESDAY = "tuesday"
    WEDNESDAY = "wednesday"
    THURSDAY = "thursday"
    FRIDAY = "friday"
    SATURDAY = "saturday"
    SUNDAY = "sunday"

    @classmethod
    def of(cls, day: datetime.date) -> "Weekday":
        """The weekday of a date."""
        return _WEEKDAYS[day.weekday()]


_WEEKDAYS = tuple(Weekday)


class TrainingKind(StrEnum):
    """What is trained."""

    RESISTANCE = "resistance"
    WALKING = "walking"
    RUNNING = "running"
    CYCLING = "cycling"
    OTHER = "other"


class FlexibleKind(StrEnum):
    """Why a day has more."""

    PARTY = "party"
    EATING_OUT = "eating_out"
    HIGHER_DAY = "higher_day"
    OTHER = "other"


class TrainingOnDay(NamedTuple):
    """A bout on a weekday; ``met`` None: usual for its kind."""

    weekday: Weekday
    kind: TrainingKind
    minutes: float
    met: float | None = None


class FlexibleDay(NamedTuple):
    """A weekday of every week, or one date, with food [kcal] and alcohol [g] beyond a usual day."""

    weekday: Weekday | None
    date: datetime.date | None
    kind: FlexibleKind
    extra_kcal: float
    alcohol_g: float

    def is_on(self, day: datetime.date) -> bool:
        """Whether it falls on a date."""
        return day == self.date if self.date is not None else Weekday.of(day) is self.weekday


class WeekLived(NamedTuple):
    """How a week is lived."""

    training: tuple[TrainingOnDay, ...] = ()
    flexible: tuple[FlexibleDay, ...] = ()
    meals_per_day: int = 4
    is_plant_based: bool = False

    @property
    def has_other_days(self) -> bool:
        """Whether its days differ, so that some have less than the mean."""
        return bool(self.training or self.flexible)
