"""Which phase comes next: facts, rules in their order, the trade of cutting against not cutting."""

from .alternatives import (
    Alternative,
    Fragment,
    refusal_of,
)
from .answer import (
    Decision,
)
from .pattern import (
    Pattern,
)
from .rules import (
    DECISION_METHOD_IDS,
    decide,
    speaks_of_leanness,
)
from .terms import (
    HORIZON_WEEKS,
    Feeling,
    Goal,
    PastPhase,
    PresentPhase,
    Question,
)

__all__ = [
    "DECISION_METHOD_IDS",
    "HORIZON_WEEKS",
    "Alternative",
    "Decision",
    "Feeling",
    "Fragment",
    "Goal",
    "PastPhase",
    "Pattern",
    "PresentPhase",
    "Question",
    "decide",
    "refusal_of",
    "speaks_of_leanness",
]
