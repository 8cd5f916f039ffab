"""A chain of phases to a horizon: lived week by week under one strategy, compared, and searched for the best."""

from .calendar import (
    BlockedDates,
    Calendar,
    Event,
    make_calendar,
)
from .draws import (
    DRAWS,
    chance_to_beat,
    drawn_lives,
    live_draws,
    stack,
)
from .optimum import (
    MOST_POLICY_WEEKS,
    Found,
    SeasonLimits,
    search,
)
from .plan import (
    SEASON_METHOD_IDS,
    Asked,
    BrokenLimit,
    Cutting,
    History,
    Season,
    broken_limits,
    may_cut,
    plan_season,
    season_band,
)
from .policy import (
    NEVER,
    Policy,
    ReadyMade,
)
from .run import (
    Outcome,
)

__all__ = [
    "DRAWS",
    "MOST_POLICY_WEEKS",
    "NEVER",
    "SEASON_METHOD_IDS",
    "Asked",
    "BlockedDates",
    "BrokenLimit",
    "Calendar",
    "Cutting",
    "Event",
    "Found",
    "History",
    "Outcome",
    "Policy",
    "ReadyMade",
    "Season",
    "SeasonLimits",
    "broken_limits",
    "chance_to_beat",
    "drawn_lives",
    "live_draws",
    "make_calendar",
    "may_cut",
    "plan_season",
    "search",
    "season_band",
    "stack",
]
