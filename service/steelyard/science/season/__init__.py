"""A chain of phases to a horizon: lived week by week under one strategy, compared, and searched for the best."""

from .asked import (
    Asked,
    Cutting,
    SeasonBounds,
    UnkeptLimit,
    check_target,
    may_cut,
    season_band,
    unkept_limits,
    week_of_clearance,
)
from .calendar import (
    BlockedDays,
    Calendar,
    Event,
    make_calendar,
)
from .draws import (
    DRAWS,
    Chance,
    DrawnInterval,
    DrawnOutcome,
    chance_to_beat,
    drawn_lives,
    drawn_outcome,
    live_draws,
    stack,
)
from .optimum import (
    ABOVE_ALLOWANCE,
    MOST_POLICY_WEEKS,
    Allowance,
    Found,
    search,
)
from .plan import (
    Season,
    clear_found,
    live_season,
)
from .policy import (
    NEVER,
    Policy,
    ReadyMade,
)
from .run import (
    Outcome,
)
from .totals import (
    IntakeRun,
    SeasonSums,
    intake_runs,
    season_sums,
)
