"""The constants and the words of a review."""

from .. import rails
from ..register import (
    HELMS_2014,
    Basis,
    Entry,
    Kind,
    constant,
    register,
    template,
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
OFF_PLAN = constant(
    "review_off_plan",
    0.5,
    unit="1",
    summary="A phase is off its plan from this probability that tissue lies outside the plan's interval",
    basis=Basis.JUDGEMENT,
)
OFF_PLAN_UNLOGGED = constant(
    "review_off_plan_unlogged",
    0.77,
    unit="1",
    summary="The same where tissue lags behind the plan and the log says that the plan was kept",
    basis=Basis.JUDGEMENT,
)
SHARE_OF_WAY = constant(
    "review_contradicted",
    0.5,
    unit="1",
    summary="The scale contradicts a plan where weight, noise left out, has gone less than this share of the way that "
    "the plan expects, water included",
    basis=Basis.JUDGEMENT,
)
LEAST_MOVE_KG = constant(
    "review_contradicted_least",
    0.8,
    unit="kg",
    summary="A plan that moves weight by less by now cannot be contradicted by the scale",
    basis=Basis.JUDGEMENT,
)
HARDLY_SLOWER = constant(
    "review_hardly_slower",
    0.05,
    unit="1",
    summary="With a smaller probability that tissue lags behind the plan the scale contradicts nothing",
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
UNEXPLAINED_SHARE = constant(
    "unexplained_loss_share",
    0.05,
    unit="of body mass",
    summary="Loss over a hold or a gain from which a clinician is to look for its cause, however slow",
    basis=Basis.JUDGEMENT,
)
LOGGED_LOSS = register(
    Entry(
        id="logged_loss",
        kind=Kind.RULE,
        summary="Rate of loss as logged, once water has settled",
        formula=(
            f"over {rails.LOGGED_LOSS_LIMIT:.1%} of body mass a week in the last two weeks the intake is raised; over "
            f"{rails.LOGGED_LOSS_WARN:.1%} warned"
        ),
        basis=Basis.JUDGEMENT,
        sources=(HELMS_2014,),
    )
)

TOO_EARLY = template(
    "REVIEW_TOO_EARLY",
    "Too early to tell: the scale still speaks of water. About {more_days} more days of weighing and logging are "
    "needed; until then keep to the plan.",
)
WITHIN = template(
    "REVIEW_WITHIN_INTERVAL",
    "Tissue has changed by {observed_kg:+.1f} kg; the plan expects {lower_kg:+.1f} to {upper_kg:+.1f} kg by now.",
)
CONTRADICTED = template(
    "REVIEW_CONTRADICTED",
    "Scale and log contradict each other: weight has changed by {weight_kg:+.1f} kg where the plan, eaten as logged, "
    "would have made it {planned_kg:+.1f} kg by now. Food that is not in the log explains that, or water.",
)
SETTLE_CONTRADICTION = template(
    "REVIEW_SETTLE_CONTRADICTION",
    "What settles it: weigh and log everything you eat and drink for seven days, weekend included, and weigh yourself "
    "on each. Until then nothing is changed.",
)
OUTSIDE = template(
    "REVIEW_OUTSIDE_INTERVAL",
    "Tissue has changed by {observed_kg:+.1f} kg, outside the {lower_kg:+.1f} to {upper_kg:+.1f} kg that the plan "
    "expects by now ({probability:.0%} sure).",
)
ATE_MORE = template(
    "REVIEW_ATE_MORE",
    "Logged intake is {difference_kcal:.0f} kcal/d above the plan: eating as planned is half the fix.",
)
ATE_LESS = template("REVIEW_ATE_LESS", "Logged intake is {difference_kcal:.0f} kcal/d below the plan.")
NO_INTAKE = template(
    "REVIEW_NO_INTAKE", "No full day of intake was logged in this phase, so eaten and planned are not compared."
)
NEEDS_LESS = template(
    "REVIEW_NEEDS_LESS",
    "Intake was logged as planned, yet less was lost or more gained: on the scale of this log maintenance is about "
    "{maintenance_kcal:.0f} kcal/d, not the {planned_kcal:.0f} that the plan started from. Food left out of the log "
    "and a body that needs less look the same from here; the correction fits both.",
)
NEEDS_MORE = template(
    "REVIEW_NEEDS_MORE",
    "Intake was logged as planned, yet more was lost or less gained: on the scale of this log maintenance is about "
    "{maintenance_kcal:.0f} kcal/d, not the {planned_kcal:.0f} that the plan started from.",
)
CORRECTED = template(
    "REVIEW_CORRECTED", "{correction_kcal:+d} kcal/d from now on is the smallest change that restores the target."
)
STEPPED = template(
    "REVIEW_STEPPED",
    "{correction_kcal:+d} kcal/d from now on is one step towards the target; the next review says whether another is "
    "due.",
)
CORRECTION_HELD = template(
    "REVIEW_CORRECTION_HELD",
    "Restoring the target would take a further {missing_kcal:.0f} kcal/d, which the rule `{rule}` ({why}) forbids.",
)
RAISED = template(
    "REVIEW_RAISED_BY_RAIL", "The intake goes up by {correction_kcal:d} kcal/d, by the rule `{rule}` ({why})."
)
TOO_LATE = template(
    "REVIEW_TOO_LATE", "Only {days} days are left: too few for a change of intake to matter, so it stays as it is."
)
PURPOSE_MET = template(
    "REVIEW_PURPOSE_MET", "About {fat_kg:.1f} kg of fat is lost, and {target_kg:.1f} kg was the purpose: end the phase."
)
CEILING_MET = template(
    "REVIEW_CEILING_MET", "Body fat is about {fat_percent:.1f} %, and {ceiling_percent:g} % ends this gain."
)
LIMIT_REACHED = template(
    "REVIEW_LIMIT_REACHED", "{days} days is the most for a mini-cut ({limit_days:d} days): end it, target or not."
)
OVER = template("REVIEW_PHASE_OVER", "The phase is over.")
NOT_SAFE = template("REVIEW_NOT_SAFE", "No deficit is safe any more by the rule `{rule}`: end the phase. {why}")
NO_ROOM = template(
    "REVIEW_NO_ROOM", "The rule `{rule}` ({why}) leaves no useful deficit under today's maintenance: end the phase."
)
SHORTEN = template(
    "REVIEW_SHORTEN", "At this rate the target is met around {date}, {days} days before the planned end."
)
EXTEND = template("REVIEW_EXTEND", "The target needs until about {date}, {days} days more than planned.")
OUT_OF_REACH = template(
    "REVIEW_OUT_OF_REACH",
    "No safe intake reaches the target within the limits of this phase: expect {fat_kg:.1f} of {target_kg:.1f} kg of "
    "fat.",
)
LOST_FAST = template(
    "REVIEW_LOST_FAST", "Over the last two weeks {percent:.1f} % of body mass a week was lost, more than {limit:g} %."
)
EATEN_UNDER_RAIL = template(
    "REVIEW_EATEN_UNDER_RAIL",
    "Logged intake of the last two weeks is {intake_kcal:.0f} kcal/d, under the {least_kcal:.0f} that the rule "
    "`{rule}` ({why}) allows: eat at least what is given here.",
)
REBOUND_AHEAD = template(
    "REVIEW_REBOUND",
    "Back at maintenance the scale is expected to rise by about {carried_kg:.1f} kg within two weeks as glycogen, "
    "water and food return. That is not fat.",
)
PAST_RAIL = template(
    "REVIEW_PAST_RAIL",
    "By what the log tells, this plan is past the rule `{rule}` ({why}) by more than one step can mend: end it, and "
    "plan anew from what is known now.",
)
STOPPED = template("REVIEW_STOPPED_BY_RAIL", "The days to come would break the rule `{rule}`: end the phase. {why}")
SHORTENED = template(
    "REVIEW_SHORTENED_BY_RAIL",
    "Later days of this plan are past the rule `{rule}` ({why}) by more than one step can mend: it ends around {date}.",
)
TOO_FAST_A_GAIN = template(
    "REVIEW_GAIN_PAST_CEILING",
    "As planned, this gain is faster than {limit_percent:g} % of body mass a week: end it, and plan a slower one.",
)
UNEXPLAINED_LOSS = template(
    "REVIEW_UNEXPLAINED_LOSS",
    "{percent:.1f} % of body mass is gone in {days} days without a plan to lose any. That is unexplained weight loss: "
    "see a clinician. The intake goes up in steps.",
)
AS_EATEN_SO_FAR = template(
    "REVIEW_AS_EATEN_SO_FAR",
    "The log holds {percent:.0f} % of what is planned: the days to come are forecast as they were eaten so far.",
)
AS_PLANNED = template(
    "REVIEW_AS_PLANNED",
    "By the log maintenance is lower than planned, but nothing more is gained than planned: the days to come are "
    "forecast by the plan's own maintenance of {maintenance_kcal:.0f} kcal/d.",
)
IN_PREGNANCY = template(
    "REVIEW_IN_PREGNANCY",
    "Tissue has changed by {observed_kg:+.1f} kg. Weight gained in pregnancy is not held against a plan: your midwife "
    "or obstetric team follows it.",
)
LATER_ENTRIES = template(
    "REVIEW_LATER_ENTRIES", "{count} entries after the phase's end were left out: they tell of what came next."
)
WINDOW_SHORTER = template(
    "REVIEW_WINDOW_SHORTER",
    "The first weighing is {days} days after the start; for those days the plan's own forecast stands in.",
)
