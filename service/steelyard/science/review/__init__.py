"""A phase held against its plan: the verdict, the correction and the advice."""

from .review import (
    Review,
    review_phase,
)
from .texts import (
    LEAST_DAYS,
)

__all__ = [
    "LEAST_DAYS",
    "Review",
    "review_phase",
]
