"""A phase held against its plan: the verdict, the correction and the advice."""

from .review import (
    Review,
    review_phase,
)
from .texts import (
    REVIEW_IDS,
)

__all__ = [
    "REVIEW_IDS",
    "Review",
    "review_phase",
]
