"""Reading a log of weights and intakes: noise, water, trend, maintenance, and what tissue did."""

from .birth import since_birth
from .carried_ahead import CarriedAhead, carried_from_here
from .change_split import (
    Change,
)
from .entries import DailyLog, IntakeDay, Log, Measured, StepsDay, Weighing, day_of, in_future, is_known_on
from .events import (
    EventKind,
    LoggedEvent,
    has_acted,
    moved_by,
    moved_by_all,
    paused_until,
)
from .explanations import (
    Cause,
    Explained,
    Explanation,
    water_off,
)
from .fat_and_lean import (
    CompositionChange,
    partition_of,
)
from .handing_on import (
    hand_on,
    joined,
    tail_of,
)
from .implied_intake import (
    ImpliedIntake,
    TrendChoice,
)
from .logging_scale import (
    LOGGING_RATIO,
    LOGGING_RATIO_LEAST,
    LOGGING_RATIO_SD,
    fill_intake,
    prior_on_logging_scale,
)
from .maintenance import (
    LogMaintenance,
    as_believed,
)
from .onset import (
    Account,
    BodyRead,
    Onset,
    check_onset,
)
from .reader import (
    MOST_LOG_DAYS,
    KnownFat,
    Reading,
    Tail,
    composition_of_log,
    entries_as_read,
    intake_from_weight,
    maintenance_of,
    read_log,
    trend_of_log,
)
from .slips import SLIPS, gathered
from .steps import (
    LatelyWalked,
    StepsRead,
)
from .trend_reading import (
    ABOUT_DIRECTION,
    ABOUT_LOGGING,
    ABOUT_ONE_DAY,
    STALE,
    UNDER_LOGGED,
    WATER_JUMP,
    Trend,
)
from .weight_slips import LEAST_WEIGHT_KG, MOST_WEIGHT_KG, weights_read
from .witness_errors import DAY_ERROR, RATIO_DRIFT, UNLOGGED_BIAS
