"""Usual sizes of phases, and the rules of thumb shown beside a forecast."""

from ..person import Sex, TrainingStatus
from ..register import (
    HALL_2008,
    Basis,
    constant,
)

LEAST_WEEKS = int(
    constant("mini_cut_weeks_least", 2, unit="weeks", summary="Shortest mini-cut", basis=Basis.COMMON_PRACTICE)
)
MOST_WEEKS = int(
    constant("mini_cut_weeks_most", 6, unit="weeks", summary="Longest mini-cut", basis=Basis.COMMON_PRACTICE)
)
DEFAULT_WEEKS = int(
    constant(
        "mini_cut_weeks_default",
        4,
        unit="weeks",
        summary="Length of a mini-cut when neither fat nor weeks are given: the middle of 2-6",
        basis=Basis.COMMON_PRACTICE,
    )
)
CUT_WEEKS_MOST = int(
    constant(
        "cut_weeks_most",
        26,
        unit="weeks",
        summary="Longest cut planned at once",
        basis=Basis.JUDGEMENT,
    )
)
CUT_DEFAULT_WEEKS = int(
    constant(
        "cut_weeks_default",
        8,
        unit="weeks",
        summary="Length of a cut when neither a goal nor a time is given",
        basis=Basis.JUDGEMENT,
    )
)
CUT_RESET_WEEKS = int(
    constant(
        "cut_reset_weeks",
        4,
        unit="weeks",
        summary="Weeks after which the intake of a cut is set anew for the changed body",
        basis=Basis.JUDGEMENT,
    )
)
CUT_FIRST_RESET_WEEKS = int(
    constant(
        "cut_first_reset_weeks",
        2,
        unit="weeks",
        summary="The same for the first time: expenditure falls fastest in the first weeks on less",
        basis=Basis.JUDGEMENT,
    )
)
EASING_SHARE = constant(
    "easing_in_share", 0.5, unit="1", summary="Share of the deficit in the easing-in weeks", basis=Basis.JUDGEMENT
)
CLEAR_PROBABILITY = constant(
    "clear_probability",
    0.7,
    unit="1",
    summary="Probability from which one way is called better than another; under it there is no clear difference",
    basis=Basis.JUDGEMENT,
)
ROOM_UNDER_RAILS = constant(
    "deficit_room",
    60.0,
    unit="kcal/d",
    summary="Room that a deficit leaves under the guard rails where nobody asked for its size, so that the first weeks "
    "of a log need not raise the intake",
    basis=Basis.JUDGEMENT,
)
SURPLUS_DEFAULT = {
    TrainingStatus.UNTRAINED: constant(
        "surplus_untrained", 300, unit="kcal/d", summary="Surplus by default", basis=Basis.COMMON_PRACTICE
    ),
    TrainingStatus.NOVICE: constant(
        "surplus_novice",
        400,
        unit="kcal/d",
        summary="Surplus by default, within 200-500 kcal/d",
        basis=Basis.COMMON_PRACTICE,
    ),
    TrainingStatus.INTERMEDIATE: constant(
        "surplus_intermediate",
        250,
        unit="kcal/d",
        summary="Surplus by default, within 200-300 kcal/d",
        basis=Basis.COMMON_PRACTICE,
    ),
    TrainingStatus.ADVANCED: constant(
        "surplus_advanced",
        200,
        unit="kcal/d",
        summary="Surplus by default, within 200-300 kcal/d",
        basis=Basis.COMMON_PRACTICE,
    ),
}
GAIN_RESET_WEEKS = int(
    constant(
        "gain_reset_weeks",
        4,
        unit="weeks",
        summary="Weeks after which the intake of a gain is set anew for the changed body",
        basis=Basis.JUDGEMENT,
    )
)
RETURN_CHECK_WEEKS = (
    int(constant("return_check_first", 2, unit="weeks", summary="First check of a gain after fat loss",
                 basis=Basis.COMMON_PRACTICE)),
    int(constant("return_check_second", 4, unit="weeks", summary="Second check of a gain after fat loss",
                 basis=Basis.COMMON_PRACTICE)),
)  # fmt: skip
FAT_CEILING = {
    Sex.MALE: constant(
        "fat_ceiling_male",
        0.17,
        unit="1",
        summary="Body fat at which men aiming to look lean consider a mini-cut: the upper end of 15-17 %",
        basis=Basis.COMMON_PRACTICE,
    ),
    Sex.FEMALE: constant(
        "fat_ceiling_female",
        0.27,
        unit="1",
        summary="Body fat at which women aiming to look lean consider a mini-cut, by analogy: 25-27 %",
        basis=Basis.JUDGEMENT,
    ),
}
STATIC_KCAL_PER_KG = constant(
    "static_rule", 7700.0, unit="kcal/kg", sources=(HALL_2008,),
    summary="Energy of adipose tissue, used by the static rule for comparison (3500 kcal/lb, 32.2 MJ/kg)",
)  # fmt: skip
COMMON_LOSS_KG_PER_WEEK = (
    constant("common_loss_lower", 0.45, unit="kg/week", summary="Fat loss commonly quoted for a mini-cut, lower",
             basis=Basis.COMMON_PRACTICE),
    constant("common_loss_upper", 0.9, unit="kg/week", summary="Fat loss commonly quoted for a mini-cut, upper",
             basis=Basis.COMMON_PRACTICE),
)  # fmt: skip
COMMON_FIRST_DROP_KG = (
    constant("common_first_drop_lower", 1.4, unit="kg", summary="Scale drop of the first days commonly quoted, lower",
             basis=Basis.COMMON_PRACTICE),
    constant("common_first_drop_upper", 1.8, unit="kg", summary="Scale drop of the first days commonly quoted, upper",
             basis=Basis.COMMON_PRACTICE),
)  # fmt: skip
LEAST_DEFICIT = constant(
    "deficit_least", 100.0, unit="kcal/d", summary="Deficit below which a fat-loss phase is not worth its cost",
    basis=Basis.JUDGEMENT,
)  # fmt: skip
SEEN_KG = constant(
    "deficit_seen", 0.8, unit="kg", basis=Basis.JUDGEMENT,
    summary="Tissue that a deficit takes off within the longest mini-cut, or no scale tells it from water and noise: "
    "their 80 % over six weeks, with 0.5 kg of carried mass and 0.4 kg of noise (1 SD)",
)  # fmt: skip
SLOW_GAIN_SHARE = constant(
    "slow_gain_share", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Rate of a slow gain as a share of the ceiling on the rate of gain",
)  # fmt: skip
LONG_CUT_WEEKS = int(
    constant("long_cut_weeks", 16, unit="weeks", summary="Longest cut after a fast gain", basis=Basis.JUDGEMENT)
)
SETTLING_WEEKS = int(
    constant(
        "event_settling_weeks", 1, unit="weeks", basis=Basis.JUDGEMENT,
        summary="Least maintenance between the end of a cut and an event or the horizon, in which carried mass returns",
    )
)  # fmt: skip
