"""A phase held against its plan: the verdict, the correction and the advice, and what a coach should know of it."""

from .attention import (
    AttentionNeeded,
    MemberToRank,
    Placed,
    attention_of,
    ranked,
)
from .question import (
    Finding,
    OpenQuestion,
    Settled,
)
from .review import (
    Review,
    log_up_to,
    review_phase,
)
from .texts import (
    LEAST_DAYS,
)

__all__ = [
    "LEAST_DAYS",
    "AttentionNeeded",
    "Finding",
    "MemberToRank",
    "OpenQuestion",
    "Placed",
    "Review",
    "Settled",
    "attention_of",
    "log_up_to",
    "ranked",
    "review_phase",
]
