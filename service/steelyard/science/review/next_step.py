"""What a review may decide of a phase, and how it is told."""

from enum import StrEnum
from typing import NamedTuple

from ..rails import RailAction
from ..register import Message
from . import texts


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

    @property
    def may_be_settled(self) -> bool:
        """Whether a question about log and scale has anything left to settle: a phase that goes on, or one that ends
        only by the maintenance which the log tells."""
        return self.decision is not NextStep.END or any(reason.code in texts.ENDS_BY_LOG for reason in self.reasons)

    @property
    def is_as_planned(self) -> bool:
        """Whether the phase goes on, and nothing else is to be eaten than its plan tells."""
        return self.decision is not NextStep.END and self.correction_kcal == 0
