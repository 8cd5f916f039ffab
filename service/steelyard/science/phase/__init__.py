"""Planning a phase: a fat-loss phase solved for what was asked, a gain sized, a hold, and questions about an intake."""

from .aims import (
    DeficitAim,
    DeficitKind,
    GainAim,
    HoldAim,
    ReturnAim,
)
from .band import (
    Band,
    usual_band,
)
from .defaults import (
    CLEAR_PROBABILITY,
    COMMON_FIRST_DROP_KG,
    COMMON_LOSS_KG_PER_WEEK,
    CUT_WEEKS_MOST,
    DEFAULT_WEEKS,
    EASING_SHARE,
    GAIN_RESET_WEEKS,
    LEAST_DEFICIT,
    LEAST_WEEKS,
    LONG_CUT_WEEKS,
    MOST_WEEKS,
    RETURN_CHECK_WEEKS,
    SETTLING_WEEKS,
    SLOW_GAIN_SHARE,
    STATIC_KCAL_PER_KG,
)
from .deficit import (
    DeficitPhase,
)
from .deficit_solver import (
    NearestSafe,
)
from .draft import (
    ceiling_that_holds,
    gain_ceiling,
    is_at_ceiling,
    with_usual_diet,
)
from .followed import (
    DAYS_PER_WEEK,
    MOST_PAUSED_WEEKS,
    EndMoved,
    FollowedPhase,
    FollowedWeek,
    IntakeChange,
    PausedDays,
    PhaseKind,
    PromisedChange,
    PromisedPath,
    Verdict,
    corrected_week,
    diet_of_week,
)
from .gain import (
    gain_weeks,
    plan_surplus,
)
from .history import (
    MOST_CUTS,
    YEAR_WEEKS,
    BodyThen,
    DeficitBefore,
    FinishedPhase,
    History,
    PhasesKnown,
    UnderWay,
    warn_of_cuts,
)
from .intake_question import (
    LEAST_TARGET_DAYS,
    CutsBefore,
    IntakeAnswer,
    ScheduledIntake,
    answer_date,
    answer_intake,
    answer_path,
)
from .levers import (
    Dose,
    Lever,
    LeverKind,
    LeverUse,
    levers_of,
)
from .offers import (
    SizeOffered,
)
from .phases import (
    PlannedPhase,
    PlannedWeek,
    protein_reasons,
    protein_reference,
    rebound,
    said_of_ceiling,
    signs_to_stop,
)
from .plan import (
    NearestGain,
    Plan,
    PlanChoice,
    no_plan,
    plan_deficit,
    plan_gain,
    plan_hold,
)
from .sizes import (
    Pace,
    usual_deficit,
    usual_surplus,
)
from .told import (
    BodiesAlong,
    bodies_along,
    told_week,
    told_weeks,
)
from .weeks import (
    Element,
    as_diet,
    subject_at,
)
