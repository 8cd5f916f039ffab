"""Planning a phase: a fat-loss phase solved for what was asked, a gain sized, a hold, and questions about an intake."""

from .band import (
    Band,
    usual_band,
)
from .defaults import (
    COMMON_FIRST_DROP_KG,
    COMMON_LOSS_KG_PER_WEEK,
    CUT_WEEKS_MOST,
    DEFAULT_WEEKS,
    GAIN_RESET_WEEKS,
    LEAST_DEFICIT,
    LEAST_WEEKS,
    LONG_CUT_WEEKS,
    MOST_WEEKS,
    SETTLING_WEEKS,
    SLOW_GAIN_SHARE,
    STATIC_KCAL_PER_KG,
)
from .deficit import (
    DeficitAim,
    DeficitKind,
    DeficitPhase,
    subject_at,
)
from .deficit_solver import (
    NearestSafe,
)
from .followed import (
    DAYS_PER_WEEK,
    FollowedPhase,
    FollowedWeek,
    IntakeChange,
    PhaseKind,
    PromisedPath,
    Verdict,
    corrected_week,
    diet_of_week,
)
from .gain import (
    GainAim,
    gain_weeks,
    plan_surplus,
)
from .intake_question import (
    IntakeAnswer,
    ScheduledIntake,
    answer_date,
    answer_intake,
    answer_path,
)
from .phases import (
    Element,
    PlannedPhase,
    PlannedWeek,
    as_diet,
    signs_to_stop,
)
from .plan import (
    HoldAim,
    Plan,
    ReturnAim,
    SizeOffered,
    plan_deficit,
    plan_gain,
    plan_hold,
    with_usual_diet,
)
from .sizes import (
    History,
    Pace,
    usual_deficit,
    usual_surplus,
)
from .told import (
    bodies_along,
    told_week,
    told_weeks,
)

__all__ = [
    "COMMON_FIRST_DROP_KG",
    "COMMON_LOSS_KG_PER_WEEK",
    "CUT_WEEKS_MOST",
    "DAYS_PER_WEEK",
    "DEFAULT_WEEKS",
    "GAIN_RESET_WEEKS",
    "LEAST_DEFICIT",
    "LEAST_WEEKS",
    "LONG_CUT_WEEKS",
    "MOST_WEEKS",
    "SETTLING_WEEKS",
    "SLOW_GAIN_SHARE",
    "STATIC_KCAL_PER_KG",
    "Band",
    "DeficitAim",
    "DeficitKind",
    "DeficitPhase",
    "Element",
    "FollowedPhase",
    "FollowedWeek",
    "GainAim",
    "History",
    "HoldAim",
    "IntakeAnswer",
    "IntakeChange",
    "NearestSafe",
    "Pace",
    "PhaseKind",
    "Plan",
    "PlannedPhase",
    "PlannedWeek",
    "PromisedPath",
    "ReturnAim",
    "ScheduledIntake",
    "SizeOffered",
    "Verdict",
    "answer_date",
    "answer_intake",
    "answer_path",
    "as_diet",
    "bodies_along",
    "corrected_week",
    "diet_of_week",
    "gain_weeks",
    "plan_deficit",
    "plan_gain",
    "plan_hold",
    "plan_surplus",
    "signs_to_stop",
    "subject_at",
    "told_week",
    "told_weeks",
    "usual_band",
    "usual_deficit",
    "usual_surplus",
    "with_usual_diet",
]
