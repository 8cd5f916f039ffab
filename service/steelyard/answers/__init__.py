"""The layer of answers: one module a question, from what was asked to what is answered.

Plain values in and out: no web framework, no JSON, no pointers into a request. An answer says its value, its messages,
what the guard rails did and what it was computed with. Endpoints, batches, examples and the checks against trials all
come this way, so that what is tested is what is served.
"""

from .answered import (
    Answered,
)
from .attention import (
    RosterAsked,
    rank_roster,
)
from .briefing import (
    NOTABLE_WATER_KG,
    BriefingReader,
    DayToTell,
    PhaseToTell,
    Range,
    Section,
    WeekToTell,
    brief,
    no_plan_title,
    please_note,
)
from .composition import (
    CompositionAsked,
    estimate_composition,
)
from .dates import check_dates
from .decision import (
    DecisionAsked,
    LeannessFound,
    PhaseDecided,
    WayOn,
    decide_phase,
)
from .forecast import (
    DateAsked,
    ForecastAsked,
    IntakeAsked,
    PathAsked,
    WeekForecast,
    forecast_intake,
)
from .maintenance import (
    Maintenance,
    MaintenanceAsked,
    estimate_maintenance,
)
from .plan import (
    LeverOffered,
    PhasePlanned,
    PhasesPlanned,
    SimpleRules,
    WeekPlanned,
    plan_phases,
)
from .plan_asked import PlanAsked, SplitAsked
from .plan_days import DayPlanned
from .review import (
    PhaseReviewed,
    ReviewAsked,
    WeekAhead,
    WeeksAfter,
    review_phase,
)
from .season import (
    SeasonAsked,
    SeasonLaidOut,
    SeasonPhasePlanned,
    plan_season,
)
from .season_comparison import (
    ComparisonAsked,
    PairChance,
    StrategyFollowed,
    StrategyShut,
    compare_strategies,
)
from .season_optimum import (
    OptimumAsked,
    optimise_season,
)
from .season_terms import (
    LimitsAsked,
    SeasonFrom,
    SeasonTerms,
    StrategyAsked,
    StrategyInNumbers,
)
from .state import (
    StateNow,
)
from .trend import (
    TrendAsked,
    TrendRead,
    read_trend,
)
