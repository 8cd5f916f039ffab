"""The words of a decision: one text for each situation, for what would change it, and for the pattern."""

from ..register import say, template

__all__ = ["say"]  # from here, so that whoever says the words has them

template(
    "DECISION_NO_DEFICIT",
    "No fat-loss phase is recommended here. Eat at maintenance, train, and speak to a physician, a registered "
    "dietitian or a local support service about food and weight where they worry you.",
)
template(
    "DECISION_UNDER_AGE",
    "Under {limit_years:g} years no fat-loss phase is recommended: eat enough to grow and train on, and bring any "
    "worry about weight to a physician.",
)
template("DECISION_CHOICES_LEFT_OUT", "The figures on leanness that were sent have no part in this answer.")
template(
    "DECISION_CUT_REFUSED",
    "A cut would be the next phase, but a guard rail refuses it for now. Until that is settled: {kind}.",
)
template(
    "DECISION_CUT_REFUSED_UNDER_WAY",
    "The cut under way does not go on, for the reason given: return to maintenance first.",
)
template(
    "DECISION_CUT_TOO_LONG",
    "{weeks} weeks in a deficit are as long as this phase should be: {bridge_weeks} week(s) at maintenance now, "
    "whatever is left to lose.",
)
template(
    "DECISION_CUT_DONE",
    "The cut has done its work: body fat is {fat_percent:.1f} %, it was to lead to {target_percent:.1f} %. Maintenance "
    "for {bridge_weeks} week(s), then what follows.",
)
template(
    "DECISION_CUT_UNDER_WAY",
    "The cut under way goes on: body fat is {fat_percent:.1f} % and it leads to {target_percent:.1f} %.",
)
template(
    "DECISION_CUT_JUST_ENDED",
    "The last cut ended {weeks} week(s) ago: hold at maintenance for {bridge_weeks} more, in which glycogen and water "
    "return, then gain.",
)
template(
    "DECISION_CUT_TOO_RECENT",
    "The last cut ended {weeks} week(s) ago; another is not considered before {limit_weeks:g}, on {date}.",
)
template(
    "DECISION_TOO_MANY_CUTS",
    "{cuts} cuts ended within twelve months, which is as many as are made: the next is considered on {date}.",
)
template(
    "DECISION_EVENT_READY",
    "For the event body fat may be {target_percent:.1f} %, and it is {fat_percent:.1f} %: no cut is needed for it.",
)
template(
    "DECISION_EVENT_TOO_NEAR",
    "The event is {weeks} week(s) away: too near for a cut and the week in which its water settles. Hold at "
    "maintenance; what the scale would still lose is water.",
)
template(
    "DECISION_EVENT_LATER",
    "The event is {weeks} weeks away and its cut takes {cut_weeks}, with one to settle: use the time before, and start "
    "the cut on {date}.",
)
template(
    "DECISION_EVENT_NOW",
    "The event is {weeks} weeks away and its cut takes about {cut_weeks}, with one to settle: it is time.",
)
template(
    "DECISION_EVENT_HOLD_FIRST",
    "The event is {weeks} weeks away and its cut takes about {cut_weeks}, with one to settle. That leaves no time for "
    "a gain that would not have to be cut again: hold until the cut starts, about {date}.",
)
template(
    "DECISION_EVENT_OUT_OF_REACH",
    "No safe cut reaches {target_percent:.1f} % by the event: this one comes as near as the time and the rails allow, "
    "to about {end_percent:.1f} %.",
)
template("DECISION_EVENT_FAR", "The event is more than {weeks} weeks away: it does not count yet.")
template("DECISION_EVENT_SETS_DATE", "The date of the event decides here, not the score.")
template(
    "DECISION_MEASURE_FIRST_BMI",
    "Body fat was only computed from height and weight, which never starts a cut. Measure it (skinfolds, girths, DXA), "
    "then ask again. Until then: {kind}.",
)
template(
    "DECISION_MEASURE_FIRST_ERROR",
    "The reading of {fat_percent:.1f} % has an error of {error_points:.1f} points: the chance that body fat is truly "
    "over {line_percent:.1f} % is {probability_percent:.0f} %, and a cut starts at {least_percent:.0f}. Repeat it with "
    "a better method. Until then: {kind}.",
)
template("DECISION_WANTS_HOLD", "You want to hold, and nothing speaks against it.")
template(
    "DECISION_NEAR_UNDERWEIGHT",
    "A body mass index of {bmi:.1f} kg/m2 is near the underweight range: holding comes first, and no fat-loss phase is "
    "started under {limit:g}.",
)
template(
    "DECISION_WANTS_HOLD_OVER",
    "You want to hold. For the leanness you chose a cut would be due at {due_percent:.1f} %; nothing but that speaks "
    "for one.",
)
template(
    "DECISION_LEAN_ENOUGH",
    "At {fat_percent:.1f} % body fat you are lean enough: a cut would cost training time and buy nothing. {advice}",
)
template(
    "DECISION_NOT_YET",
    "Not yet: at {fat_percent:.1f} % a mini-cut costs more lean tissue and more weeks of dieting than its leanness is "
    "worth over {weeks} weeks. {advice}",
)
template("DECISION_NO_DUE", "At no body fat near your band would a cut be the better trade.")
template(
    "DECISION_CUT_DUE",
    "A cut is the better trade: body fat is {fat_percent:.1f} %, and from {due_percent:.1f} % on carrying it costs "
    "more than losing it.",
)
template(
    "DECISION_CUT_FOR_LEANNESS",
    "You would like to be leaner, and that is reason enough: at {fat_percent:.1f} % a cut is the better trade for you "
    "(from {due_percent:.1f} % on), though it would not be for someone content.",
)
template(
    "DECISION_TRADE", "Over {weeks} weeks `{best}` scores {best_kg:.2f} kg of lean tissue, `{other}` {other_kg:.2f}."
)
template("DECISION_CLOSE", "The two are within {tie_kg:g} kg: what suits your weeks better may decide.")
template("DECISION_LONGER_CUT", "A mini-cut does not get there: this takes {weeks} weeks.")
template(
    "DECISION_LONG_WAY",
    "One cut does not get to {target_percent:.1f} %: end this one in time and ask again after a hold.",
)
template(
    "DECISION_WITHIN_HEALTHY",
    "{fat_percent:.1f} % is within the healthy range of {lower_percent:.0f}-{upper_percent:.0f} % for age and sex: a "
    "cut is a matter of looks, not of health.",
)
template(
    "DECISION_BELOW_HEALTHY",
    "{fat_percent:.1f} % is at or under the lower end of the healthy range ({lower_percent:.0f} %): there is nothing "
    "to lose. If you are unhappy with how you look all the same, talk to someone you trust or a clinician about it.",
)
template(
    "DECISION_ABOVE_HEALTHY",
    "{fat_percent:.1f} % is above the healthy range, which ends at {upper_percent:.0f} % for age and sex.",
)
template(
    "DECISION_HISTORY_UNKNOWN", "Past phases are unknown: with them the answer can tell a recent cut or a pattern."
)
template("DECISION_GAIN_SLOWLY", "Gain at {surplus_kcal:.0f} kcal/d, half the ceiling on the rate.")
template(
    "PATTERN_CYCLES",
    "{cycles} fast gains were each followed by a cut. Of these {weeks} weeks {dieting_weeks} went into dieting.",
)
template(
    "PATTERN_COST",
    "On your body a slow gain through the same {weeks} weeks gains about {lean_kg:.1f} kg more lean tissue "
    "({lower_kg:.1f} to {upper_kg:.1f}). Slow the gain down.",
)
template(
    "PATTERN_NO_LEAN",
    "By the model the cycling gained no less lean tissue than a slow gain would have ({lean_kg:+.1f} kg for the slow "
    "one, {lower_kg:+.1f} to {upper_kg:+.1f}); its price was the dieting. A slower gain needs fewer cuts.",
)
template("PATTERN_WEEKS", "The slow gain has the lean tissue that the cycling ended with {weeks} weeks sooner.")
template("PATTERN_ASSUMED", "{phases} phase(s) had no weights and were taken at their usual size.")
template(
    "PATTERN_FAT",
    "The cycling ended {fat_kg:.1f} kg of fat leaner; to come to that, the slow gain takes about {slow_weeks} weeks of "
    "dieting, where the cycling took {dieting_weeks}.",
)
template("PATTERN_NO_FAT", "The cycling ended with {fat_kg:.1f} kg more fat than the slow gain, for all its dieting.")

template(
    "CHANGE_DUE_DATE",
    "At the present rate body fat is expected to reach {due_percent:.1f} %, at which a cut becomes due, around {date}.",
)
template(
    "CHANGE_DUE_BEYOND",
    "A cut becomes due at {due_percent:.1f} % body fat, which is not expected within {weeks} weeks.",
)
template("CHANGE_DUE_BELOW", "Under {due_percent:.1f} % body fat the answer would be not to cut yet.")
template(
    "CHANGE_READING",
    "The reading is {margin_points:+.1f} points from that, with an error of {error_points:.1f}: the chance that body "
    "fat is truly on the other side is {probability_percent:.0f} %.",
)
template("CHANGE_READING_NEEDED", "A body-fat reading with a real method would let a cut be considered at all.")
template(
    "CHANGE_MOTIVE",
    "If you would like to be leaner, that is a reason of its own: a cut would then be due from {due_percent:.1f} %.",
)
template("CHANGE_CONTENT", "Content with your leanness, you would have until {due_percent:.1f} %.")
template("CHANGE_TIME", "A cut is considered again from {date}.")
template("CHANGE_EVENT_START", "The cut for the event starts on {date} at the latest.")
template("CHANGE_SCREENING", "Answered screening questions would let a cut be considered.")
template("CHANGE_CLEARANCE", "A clinician's clearance would let a cut be considered.")
template("CHANGE_TRAINING", "Two or more resistance sessions a week would make a gain worth its fat.")
