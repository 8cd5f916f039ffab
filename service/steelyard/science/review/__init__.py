"""A phase held against its plan: the verdict, the correction and the advice."""

from .review import (
    BodyAhead,
    Review,
    review_phase,
)
from .texts import (
    REVIEW_IDS,
)

__all__ = ["REVIEW_IDS", "BodyAhead", "Review", "review_phase"]
