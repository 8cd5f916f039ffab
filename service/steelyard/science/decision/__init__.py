"""Which phase comes next: facts, rules in their order, the trade of cutting against not cutting."""

from .alternatives import (
    Alternative,
    Fragment,
    refusal_of,
)
from .answer import (
    Decision,
    pattern_notes,
)
from .facts import (
    Leanness,
    LineReading,
)
from .pattern import (
    Pattern,
)
from .rules import (
    decide,
    speaks_of_leanness,
)
from .terms import (
    HORIZON_WEEKS,
    Feeling,
    Goal,
    OngoingPhase,
    Question,
    Situation,
)
from .trade import (
    Lines,
    Score,
)
