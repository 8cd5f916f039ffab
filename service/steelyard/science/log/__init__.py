"""Reading a log of weights and intakes: noise, water, trend, maintenance, and what tissue did."""

from .change_split import (
    Change,
)
from .entries import (
    DailyLog,
    IntakeDay,
    Log,
    Weighing,
)
from .explanations import (
    Explained,
)
from .fat_and_lean import (
    CompositionChange,
)
from .implied_intake import (
    ImpliedIntake,
)
from .logging_scale import (
    LOGGING_RATIO,
    LOGGING_RATIO_LEAST,
    fill_intake,
    prior_on_logging_scale,
)
from .maintenance import (
    LogMaintenance,
)
from .reader import (
    Measured,
    composition_of_log,
    intake_from_weight,
    log_maintenance,
    trend_of_log,
)
from .trend_reading import (
    Trend,
)
from .witnesses import (
    DAY_ERROR,
    UNLOGGED_BIAS,
)

__all__ = [
    "DAY_ERROR",
    "LOGGING_RATIO",
    "LOGGING_RATIO_LEAST",
    "UNLOGGED_BIAS",
    "Change",
    "CompositionChange",
    "DailyLog",
    "Explained",
    "ImpliedIntake",
    "IntakeDay",
    "Log",
    "LogMaintenance",
    "Measured",
    "Trend",
    "Weighing",
    "composition_of_log",
    "fill_intake",
    "intake_from_weight",
    "log_maintenance",
    "prior_on_logging_scale",
    "trend_of_log",
]
