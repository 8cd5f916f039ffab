"""What a review may decide of a phase, and how it is told."""

from enum import StrEnum
from typing import NamedTuple

from ..rails import RailAction
from ..register import Message


class NextStep(StrEnum):
    """What becomes of the phase."""

    CONTINUE = "continue"
    END = "end"
    SHORTEN = "shorten"
    EXTEND = "extend"


class Advice(NamedTuple):
    """The decision, the change of the planned intake [kcal/d], and how many days are still to come."""

    decision: NextStep
    correction_kcal: int
    days_ahead: int
    reasons: list[Message]
    actions: list[RailAction]
