"""What somebody says of how they are, in five short answers."""

from enum import StrEnum
from typing import NamedTuple


class CycleSaid(StrEnum):
    """How the menstrual cycle is."""

    REGULAR = "regular"
    LATE = "late"  # by more than a week
    MISSED = "missed"
    NONE = "none"  # none to speak of: contraception, menopause, or does not menstruate


class StrengthSaid(StrEnum):
    """How the main lifts go, against four weeks ago."""

    UP = "up"
    STEADY = "steady"
    DOWN = "down"  # about five per cent
    DOWN_MUCH = "down_much"  # ten per cent or more


class CheckIn(NamedTuple):
    """Answers of a day. ``hunger`` 1 (none) to 5 (all day), ``sleep`` and ``mood`` 1 (bad) to 5 (good)."""

    day: int
    hunger: int | None = None
    sleep: int | None = None
    mood: int | None = None
    cycle: CycleSaid | None = None
    strength: StrengthSaid | None = None
