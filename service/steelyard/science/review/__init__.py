"""A phase held against its plan: the verdict, the correction and the advice."""

from .review import (
    Review,
    review_phase,
)

__all__ = [
    "Review",
    "review_phase",
]
