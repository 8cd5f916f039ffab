"""The constants and the words of a review."""

from .. import rails
from ..register import (
    HELMS_2014,
    Basis,
    Entry,
    Kind,
    Message,
    constant,
    register,
    say,
)

SETTLING_DAYS = int(
    constant(
        "review_settling",
        7,
        unit="d",
        summary="Days after a change of diet in which the scale tells of water, and no rate of loss is judged",
        basis=Basis.JUDGEMENT,
    )
)
LEAST_DAYS = int(
    constant(
        "review_days_least",
        14,
        unit="d",
        summary="Days of a phase before it is judged: one week of water, and one that tells of tissue",
        basis=Basis.JUDGEMENT,
    )
)
LEAST_WEIGHINGS = int(
    constant(
        "review_weighings_least",
        7,
        unit="weighings",
        summary="Weighings within a phase before it is judged",
        basis=Basis.JUDGEMENT,
    )
)
UNSEEN_DAYS = int(
    constant(
        "review_unseen",
        14,
        unit="d",
        summary="Days after the last weighing from which a log alone is no witness of how a phase goes",
        basis=Basis.JUDGEMENT,
    )
)
HARDLY_LOGGED = constant(
    "review_hardly_logged",
    0.15,
    unit="1",
    summary="With food logged on a smaller share of a phase's days, what was told stands in for the others",
    basis=Basis.JUDGEMENT,
)
OFF_PLAN = constant(
    "review_off_plan",
    0.65,
    unit="1",
    summary="A phase is off its plan from this probability that tissue lies outside the plan's interval",
    basis=Basis.JUDGEMENT,
)
DEFICIT_AHEAD = constant(
    "review_deficit_ahead",
    0.8,
    unit="1",
    summary="A deficit is faster than planned from this probability: it changes nothing that is eaten, so it can wait",
    basis=Basis.JUDGEMENT,
)
OFF_PLAN_AGAINST_LOG = constant(
    "review_off_plan_against_log",
    0.75,
    unit="1",
    summary="The same in a deficit that is logged as planned: set on simulated people, fewer of whom are then called "
    "slower though their tissue goes as planned",
    basis=Basis.JUDGEMENT,
)
SCALE_WEIGHT = constant(
    "review_scale_weight",
    0.167,
    unit="1",
    summary="Weight of the odds that the scale is behind the plan, water included, among those of three witnesses; set "
    "on simulated people, of whom it names most who eat more than they log for as few others",
    basis=Basis.JUDGEMENT,
)
TISSUE_WEIGHT = constant(
    "review_tissue_weight",
    0.333,
    unit="1",
    summary="Weight of the odds that tissue lags, which is drawn to what the log says; set on the same people",
    basis=Basis.JUDGEMENT,
)
WATER_WEIGHT = constant(
    "review_water_weight",
    0.5,
    unit="1",
    summary="Weight of the odds that carried mass has not gone, or come, as the log leads to expect; set on the same "
    "people",
    basis=Basis.JUDGEMENT,
)
NAMED_TISSUE = constant(
    "review_named_tissue",
    0.1,
    unit="1",
    summary="With a smaller probability that tissue lags a plan is not contradicted: water explains it",
    basis=Basis.JUDGEMENT,
)
NAMED_ODDS = constant(
    "review_named_odds",
    3.0,
    unit="1",
    summary="A plan is contradicted from these odds, the weighted geometric mean of the three; set on the same people, "
    "of whom one in twenty is called so though tissue goes as planned",
    basis=Basis.JUDGEMENT,
)
STAYS_ODDS = constant(
    "review_stays_odds",
    1.5,
    unit="1",
    summary="What the review before told stays told down to these odds of the three witnesses, half of those "
    "that call it so: few verdicts then change from one day to the next",
    basis=Basis.JUDGEMENT,
)
STAYS_OFF_PLAN = constant(
    "review_stays_off_plan",
    0.15,
    unit="1",
    summary="The same of tissue outside the plan's interval: so much less probability than calls it so",
    basis=Basis.JUDGEMENT,
)
STAYS_WATER = constant(
    "review_stays_water",
    2.0,
    unit="1",
    summary="The same of a change of water: down to the probability that calls it so divided by this, or up to so many "
    "times it where it was not in play",
    basis=Basis.JUDGEMENT,
)
LEAST_MOVE_KG = constant(
    "review_contradicted_least",
    0.8,
    unit="kg",
    summary="A plan that moves weight by less by now cannot be contradicted by the scale",
    basis=Basis.JUDGEMENT,
)
WATER_IN_PLAY = constant(
    "review_water_in_play",
    0.1,
    unit="1",
    summary="From this probability of a sudden change of water in the last four weeks tissue that lags behind a plan "
    "that is logged as kept is asked about before intake is changed",
    basis=Basis.JUDGEMENT,
)
LEAST_DAYS_LEFT = int(
    constant(
        "review_days_left_least",
        4,
        unit="d",
        summary="Days left of a phase below which its intake is no longer corrected",
        basis=Basis.JUDGEMENT,
    )
)
MOST_EXTENSION_DAYS = int(
    constant(
        "review_extension_most",
        42,
        unit="d",
        summary="Longest extension of a cut that a review proposes; beyond it a new plan is better",
        basis=Basis.JUDGEMENT,
    )
)
NOTABLE_KCAL = constant(
    "review_notable_difference",
    50.0,
    unit="kcal/d",
    summary="Mean difference of eaten and planned intake that is pointed out",
    basis=Basis.JUDGEMENT,
)
STEADY_DAYS = int(
    constant(
        "review_steady_days",
        28,
        unit="d",
        summary="Days of a phase after which more than planned is taken to be how somebody eats, and to be planned in",
        basis=Basis.JUDGEMENT,
    )
)
SHORTFALL_SHARE = constant(
    "review_shortfall",
    0.10,
    unit="1",
    summary="Share of the fat to lose that may be missing at the end without an extension",
    basis=Basis.JUDGEMENT,
)
MOST_STEP_KCAL = int(
    constant(
        "review_step_most",
        200,
        unit="kcal/d",
        summary="Largest change of intake by one review, but where a floor or those who may not diet ask for more",
        basis=Basis.JUDGEMENT,
    )
)
FUTILE_LEAST_DAYS = int(
    constant(
        "review_futile_least",
        35,
        unit="d",
        summary="Days of a deficit outside breaks before it may be found not worth going on with, or half of them",
        basis=Basis.JUDGEMENT,
    )
)
FUTILE_GAINING_DAYS = int(
    constant(
        "review_futile_gaining",
        28,
        unit="d",
        summary="The same where tissue was gained, by all of the 80 % interval; and of a gain so far over its ceiling",
        basis=Basis.JUDGEMENT,
    )
)
FUTILE_MOST_DAYS = int(
    constant(
        "review_futile_from",
        42,
        unit="d",
        summary="Days from which half of a longer deficit is not waited for",
        basis=Basis.JUDGEMENT,
    )
)
FUTILE_SHARE = constant(
    "review_futile_share",
    0.33,
    unit="1",
    summary="A deficit gets nowhere while less than this share of the planned tissue came off, by the end of the 80 % "
    "interval less than twice that, and in the last fortnight less than half of what was planned for one",
    basis=Basis.JUDGEMENT,
)
FUTILE_GOAL_SHARE = constant(
    "review_futile_goal",
    0.5,
    unit="1",
    summary="A goal that is behind is out of reach where another step, to the phase's longest end, takes off less than "
    "this share of it",
    basis=Basis.JUDGEMENT,
)
UNEXPLAINED_SHARE = constant(
    "unexplained_loss_share",
    0.05,
    unit="of body mass",
    summary="Loss over a hold or a gain from which a clinician is to look for its cause, however slow",
    basis=Basis.JUDGEMENT,
)
MADE_UP_DAYS = int(
    constant(
        "review_made_up",
        56,
        unit="d",
        summary="Days over which a gain or a hold makes up for tissue that is missing of its plan, or more if it has",
        basis=Basis.JUDGEMENT,
    )
)
PLAN_SHARE = constant(
    "review_plan_share",
    0.35,
    unit="1",
    summary="A phase is as planned while its change of tissue lies within this share of the planned one",
    basis=Basis.JUDGEMENT,
)
PLAN_LEAST_KG = constant(
    "review_plan_least",
    0.3,
    unit="kg",
    summary="A smaller difference from the planned change of tissue is as planned",
    basis=Basis.JUDGEMENT,
)
PLAN_FADES_DAYS = constant(
    "review_plan_fades",
    14.0,
    unit="d",
    summary="Days into a gain or a hold after which the maintenance that its plan started from counts for half",
    basis=Basis.JUDGEMENT,
)
PLAN_FADES_DEFICIT_DAYS = constant(
    "review_plan_fades_deficit",
    56.0,
    unit="d",
    summary="The same of a deficit, in which logging drifts and tissue of unknown energy goes: of 14, 28 and 56 days "
    "the longest left the least error in simulated cuts, but in one world of five; and where hardly any food is "
    "logged, with the least error of the three in simulated holds and gains",
    basis=Basis.JUDGEMENT,
)
PLAN_LEAST_SD = constant(
    "review_plan_least_sd",
    0.05,
    unit="1",
    summary="Least error of the maintenance that a plan started from, as a share of it",
    basis=Basis.JUDGEMENT,
)
TURN_BACK_DAYS = int(
    constant(
        "review_turn_back",
        28,
        unit="d",
        summary="Days for which a change of intake is followed before a review takes any of it back",
        basis=Basis.JUDGEMENT,
    )
)
ROOM_KCAL = constant(
    "review_room",
    50.0,
    unit="kcal/d",
    summary="Room that a step leaves under the ceiling of a gain, so that the next review does not take it back",
    basis=Basis.JUDGEMENT,
)
MOST_MADE_UP_SHARE = constant(
    "review_share_made_up",
    0.1,
    unit="1",
    summary="Share by which a member may lastingly log more or less than is told, and the plan makes up for it",
    basis=Basis.JUDGEMENT,
)
LOGGED_LOSS = register(
    Entry(
        id="logged_loss",
        kind=Kind.RULE,
        summary="Rate of loss as logged, once water has settled",
        formula=(
            f"over {rails.LOGGED_LOSS_LIMIT:.1%} of body mass a week in the last two weeks the intake is raised; over "
            f"{rails.LOGGED_LOSS_WARN:.1%} warned; in a hold or a gain over {rails.LOGGED_LOSS_WARN:.1%} a week, or "
            f"{UNEXPLAINED_SHARE:.0%} in all, it is raised to maintenance in steps, and a clinician is to look for why"
        ),
        basis=Basis.JUDGEMENT,
        sources=(HELMS_2014,),
    )
)

TOO_EARLY = "REVIEW_TOO_EARLY"
TOO_LITTLE = "REVIEW_TOO_LITTLE_TO_JUDGE"
EVENT_WATER = "REVIEW_EVENT_WATER"
FEW_WEIGHINGS = "REVIEW_FEW_WEIGHINGS"
NOT_WEIGHED = "REVIEW_NOT_WEIGHED"
WITHIN = "REVIEW_WITHIN_INTERVAL"
NEAR = "REVIEW_NEAR_INTERVAL"
CONTRADICTED = "REVIEW_CONTRADICTED"
OUTSIDE = "REVIEW_OUTSIDE_INTERVAL"
STILL_OUTSIDE = "REVIEW_STILL_OUTSIDE_INTERVAL"
ATE_MORE = "REVIEW_ATE_MORE"
ATE_LESS = "REVIEW_ATE_LESS"
PLAN_STANDS = "REVIEW_PLAN_STANDS"
KEPT_LATELY = "REVIEW_KEPT_LATELY"
EAT_THE_PLAN = "REVIEW_EAT_THE_PLAN"
NO_INTAKE = "REVIEW_NO_INTAKE"
AS_TOLD = "REVIEW_AS_TOLD"
NEEDS_LESS = "REVIEW_NEEDS_LESS"
NEEDS_MORE = "REVIEW_NEEDS_MORE"
STEPPED = "REVIEW_STEPPED"
CORRECTION_HELD = "REVIEW_CORRECTION_HELD"
RAISED = "REVIEW_RAISED_BY_RAIL"
TOO_LATE = "REVIEW_TOO_LATE"
MADE_UP = "REVIEW_MADE_UP"
PURPOSE_MET = "REVIEW_PURPOSE_MET"
CEILING_MET = "REVIEW_CEILING_MET"
GAIN_ENOUGH = "REVIEW_GAIN_ENOUGH"
GAIN_OVERRUN = "REVIEW_GAIN_OVERRUN"
GAIN_ANEW = "REVIEW_GAIN_ANEW"
LIMIT_REACHED = "REVIEW_LIMIT_REACHED"
GETS_NOWHERE = "REVIEW_GETS_NOWHERE"
GOAL_TOO_FAR = "REVIEW_GOAL_TOO_FAR"
START_AGAIN = "REVIEW_START_AGAIN"
START_AGAIN_SETTLED = "REVIEW_START_AGAIN_SETTLED"
OVER = "REVIEW_PHASE_OVER"
NOT_SAFE = "REVIEW_NOT_SAFE"
NO_ROOM = "REVIEW_NO_ROOM"
WAITS = "REVIEW_WAITS"
CANNOT_WAIT = "REVIEW_CANNOT_WAIT"
STEP_MEANWHILE = "REVIEW_STEP_MEANWHILE"
BY_RAIL = frozenset({RAISED, "CAPPED_GAIN_RATE"})  # reasons of a change that a rail asks for
MAY_STOP_EARLY = "REVIEW_MAY_STOP_EARLY"
SHORTEN = "REVIEW_SHORTEN"
EXTEND = "REVIEW_EXTEND"
OUT_OF_REACH = "REVIEW_OUT_OF_REACH"
LOST_FAST = "REVIEW_LOST_FAST"
EATEN_UNDER_RAIL = "REVIEW_EATEN_UNDER_RAIL"
REBOUND_AHEAD = "REVIEW_REBOUND"
GAIN_SLOWED = "REVIEW_GAIN_SLOWED"
DEFICIT_CAPPED = "REVIEW_DEFICIT_CAPPED"
PAST_RAIL = "REVIEW_PAST_RAIL"
STOPPED = "REVIEW_STOPPED_BY_RAIL"
SHORTENED = "REVIEW_SHORTENED_BY_RAIL"
TOO_FAST_A_GAIN = "REVIEW_GAIN_PAST_CEILING"
UNEXPLAINED_LOSS = "REVIEW_UNEXPLAINED_LOSS"
LOSS_BREASTFEEDING = "REVIEW_LOSS_BREASTFEEDING"
AS_EATEN_SO_FAR = "REVIEW_AS_EATEN_SO_FAR"
AS_PLANNED = "REVIEW_AS_PLANNED"
IN_PREGNANCY = "REVIEW_IN_PREGNANCY"
EXPECTED_IN_PREGNANCY = "REVIEW_EXPECTED_IN_PREGNANCY"
LATER_ENTRIES = "REVIEW_LATER_ENTRIES"
ENDS_BY_LOG = frozenset({NO_ROOM, PAST_RAIL, STOPPED, TOO_FAST_A_GAIN})
# What is said of a phase that ends on its day or on another, and of what is eaten until then.
OF_THE_END = frozenset({EXTEND, SHORTEN, SHORTENED, OUT_OF_REACH, MAY_STOP_EARLY, WAITS, TOO_LATE})
OF_A_STEP = frozenset({STEPPED, RAISED, CORRECTION_HELD, MADE_UP, AS_EATEN_SO_FAR, AS_PLANNED})
WINDOW_SHORTER = "REVIEW_WINDOW_SHORTER"


def step(code: str, change_kcal: int) -> Message:
    """A step of intake: how far, and which way."""
    return say(
        code,
        correction_kcal=change_kcal,
        step_kcal=abs(change_kcal),
        direction="less" if change_kcal < 0 else "more",
    )
