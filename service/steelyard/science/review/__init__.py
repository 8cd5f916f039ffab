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
    LastAsked,
    OpenQuestion,
    Settled,
    SettlingTest,
)
from .reading import is_by_weight, told_beside_plan
from .review import (
    Before,
    Review,
    log_up_to,
    review_phase,
)
from .texts import (
    LEAST_DAYS,
)
