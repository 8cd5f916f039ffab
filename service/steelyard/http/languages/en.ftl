### What the service says, in English. Syntax: Project Fluent 1.0.
### A message in capitals is a code of an answer; the parts in small letters are shared by several. A line beginning with
### two number signs says for whom the messages after it are; those of leanness, or that ask for daily weighing, are not told to
### minors, in pregnancy or with an eating disorder, now or before, and what ends in _SPARED is told in the place of one.
### Members get fewer than 25 words, without names of fields.

language-name = English
language-locale = en-GB

## shared

weeks = { $weeks ->
    [one] 1 week
   *[other] { $weeks } weeks
}
bridge-weeks = { $bridge_weeks ->
    [one] 1 week
   *[other] { $bridge_weeks } weeks
}
cut-weeks = { $cut_weeks ->
    [one] 1 week
   *[other] { $cut_weeks } weeks
}
days = { $days ->
    [one] 1 day
   *[other] { $days } days
}
more-days = { $more_days ->
    [one] 1 more day
   *[other] { $more_days } more days
}
every-weeks = { $weeks ->
    [one] every week
   *[other] every { $weeks } weeks
}
weekday = { $weekday ->
    [1] Monday
    [2] Tuesday
    [3] Wednesday
    [4] Thursday
    [5] Friday
    [6] Saturday
   *[7] Sunday
}
weekday-name = { $weekday ->
    [1] Monday
    [2] Tuesday
    [3] Wednesday
    [4] Thursday
    [5] Friday
    [6] Saturday
   *[7] Sunday
}
meals = { $meals ->
    [one] 1 meal
   *[other] { $meals } meals
}
phase = { $kind ->
    [mini_cut] a mini-cut
    [cut] a cut
    [gain] a gain
   *[maintenance] maintenance
}
phase-name = { $kind ->
    [mini_cut] Mini-cut
    [cut] Cut
    [gain] Gain
   *[maintenance] Maintenance
}
best-phase = { $best ->
    [mini_cut] a mini-cut
    [cut] a cut
    [gain] a gain
   *[maintenance] maintenance
}
other-phase = { $other ->
    [mini_cut] a mini-cut
    [cut] a cut
    [gain] a gain
   *[maintenance] maintenance
}
advice = { $advice ->
    [gain] Gain.
   *[maintenance] Hold.
}
shut = { $shut ->
    [age] from 65 on without a clinician's clearance
    [most] beyond the number allowed
    [year] after so many within a year
    [end] so near the season's end
    [dates] so near to blocked dates or an event
    [recent] so soon after the last
   *[safe] safely for now
}
why = { $why ->
    [share_of_maintenance] less food would be too far under your maintenance
    [fat_release] with less food you would lose muscle, not fat
    [fat_release_later] with less food you would later lose muscle, not fat
    [energy_availability] less food would leave too little energy beside training
    [protein_and_fat] less food could not hold your protein and fat
    [least_intake] less food would be under a safe minimum
    [resting_energy] less food would be under what you use at rest
    [history_unknown] your past diets are not known
    [fat_unmeasured] your body fat was not measured
    [fat_at_end] you would end with too little body fat
    [body_mass_index_at_end] you would end underweight
    [weekly_loss] you would lose weight too fast
    [availability_at_end] its last days would leave too little energy
    [least_intake_at_end] its last days would be under a safe minimum
    [logged_loss] your log shows a fast loss already
    [body_of_that_day] your body will need more by then
    [whole_phase] the phase as a whole would not be safe
   *[this_person] a deficit is not safe for you now
}
size-reason = { $because ->
    [body] the usual size for your body fat
    [maintenance] { NUMBER($share_percent, maximumFractionDigits: 0) }% of that, the most that is usual at this pace
    [fat] what your body fat readily supplies
    [upper_end] the upper end of what is usual
    [recent_cut] less than usual, as your last cut was not long ago
    [many_cuts] less than usual, as you have cut often
    [no_training] less than usual, as you do no resistance training
    [not_kept] smaller and for longer, as a bigger one was not kept
    [history_unknown] no more while your past cuts are not known
   *[fat_unmeasured] no more until your body fat is measured
}
lever = { $lever ->
    [steps] walk { NUMBER($dose, maximumFractionDigits: 0) } more steps a day
   *[cycling] cycle { NUMBER($dose, maximumFractionDigits: 0) } more minutes a week
}
lever-name = { $lever ->
    [steps] { NUMBER($dose, maximumFractionDigits: 0) } more steps a day
   *[cycling] { NUMBER($dose, maximumFractionDigits: 0) } more minutes of cycling a week
}
condition = { $condition ->
    [diabetes_treated] treated diabetes
    [kidney_disease] kidney disease
    [liver_disease] liver disease
    [heart_disease] heart disease
    [thyroid_uncontrolled] an uncontrolled thyroid
    [gout] gout
    [gallstones] gallstones
    [bariatric_surgery] bariatric surgery
    [cancer] cancer
    [unexplained_weight_loss] unexplained weight loss
    [absent_periods] absent periods
    [low_testosterone_symptoms] signs of low testosterone
    [stress_fracture] a stress fracture
    [recent_surgery_or_injury] recent surgery or injury
    [phenylketonuria] phenylketonuria
    [insulin_or_secretagogue] insulin or a secretagogue
    [sglt2_inhibitor] an SGLT2 inhibitor
    [glp1_agonist] a GLP-1 agonist
    [diuretic] a diuretic
    [lithium] lithium
    [warfarin] warfarin
   *[other] this condition or medicine
}
first-method = { $first ->
    [four_compartment] the four-compartment model
    [dxa] DXA
    [air_displacement] air displacement
    [hydrostatic] underwater weighing
    [skinfolds] skinfolds
    [girths] girths
    [bioimpedance] bioimpedance
    [visual] judgement by eye
   *[bmi_equation] the BMI equation
}
second-method = { $second ->
    [four_compartment] the four-compartment model
    [dxa] DXA
    [air_displacement] air displacement
    [hydrostatic] underwater weighing
    [skinfolds] skinfolds
    [girths] girths
    [bioimpedance] bioimpedance
    [visual] judgement by eye
   *[bmi_equation] the BMI equation
}
repeated-method = { $method ->
    [four_compartment] the four-compartment model
    [dxa] DXA
    [air_displacement] air displacement
    [hydrostatic] underwater weighing
    [skinfolds] skinfolds
    [girths] girths
    [bioimpedance] bioimpedance
    [visual] judgement by eye
   *[bmi_equation] the BMI equation
}
event = { $event ->
    [creatine_start] starting creatine
    [creatine_stop] stopping creatine
    [illness] illness
    [travel] travel
    [injury] an injury
    [new_programme] new training
    [salty_days] salty days
    [festive_days] festive days
    [medicine] a medicine
   *[alcohol] alcohol
}
pace = { $verdict ->
    [faster] faster
   *[slower] slower
}

# Words of pictures.
picture-weight = Weight, kg
picture-scale = scale
picture-tissue = without water
picture-water = water between them
picture-interval = 80% range
picture-energy = Energy, kcal a day
picture-intake = intake
picture-maintenance = maintenance
picture-changes = Change in each phase, kg
picture-lean = Lean tissue
picture-carried = Water
picture-to = to
picture-break = Break
picture-phase = { phase-name }, { weeks }
picture-hold = { phase-name } for { weeks }; the scale says { NUMBER($weight_kg, maximumFractionDigits: 1) } kg on { DATETIME($date, dateStyle: "long") }
picture-path-spared = From { NUMBER($start_kg, maximumFractionDigits: 1) } kg on { DATETIME($start_date, dateStyle: "long") } to { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } to { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }) on { DATETIME($end_date, dateStyle: "long") }.
picture-ranges = In parentheses: { NUMBER($percent, maximumFractionDigits: 0) }% ranges.
picture-nearest-weeks = { $kind ->
    [mini_cut] Nearest: a mini-cut of { weeks }.
    [cut] Nearest: a cut of { weeks }.
   *[gain] Nearest: a gain of { weeks }.
}
picture-nearest-deficit = Nearest: a deficit of { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day at most.
picture-phase-in-figures-spared = { phase-name }, { DATETIME($start_date, dateStyle: "long") } to { DATETIME($end_date, dateStyle: "long") }: { NUMBER($least_kcal, maximumFractionDigits: 0) } to { NUMBER($most_kcal, maximumFractionDigits: 0) } kcal a day, weight { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } to { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), carried mass { NUMBER($carried_kg, maximumFractionDigits: 1) } kg ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } to { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
picture-change = Change, kg, with 80% ranges
picture-row-weight = Weight
picture-row-tissue = Tissue
picture-percent = { $value }%
picture-weighings = weighings
picture-outlier = outlier
picture-smoothed = smoothed
picture-logged = logged intake
picture-maintenance-logged = maintenance on the log's scale
picture-window = Last { days }
picture-window-whole = Over the log, { days }
picture-more-of-kind = { $text } ({ $count } more of this kind.)
picture-forecast = In { weeks }, on { DATETIME($date, dateStyle: "long") }, the scale says about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg
picture-forecast-intake = Intake and maintenance over { weeks }
picture-target-reached = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day reach the target on { DATETIME($date, dateStyle: "long") }
picture-target-met = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day reach the target
picture-target-missed = No safe intake reaches the target in time
picture-nearest-intake = Nearest: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day.
picture-nearest-date = Nearest: the target on { DATETIME($date, dateStyle: "long") }.
picture-nearest-intake-date = Nearest: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day; the target on { DATETIME($date, dateStyle: "long") }.
picture-forecast-path-spared = Scale weight from { $start_weight } on { DATETIME($start_date, dateStyle: "long") } to { $weight } at the end of { DATETIME($end_date, dateStyle: "long") }.
picture-forecast-maintenance = Maintenance at the start: { $maintenance } a day.
picture-trend-spared = { $way ->
    [down] Without water about { NUMBER($rate_kg, maximumFractionDigits: 2) } kg less a week
    [up] Without water about { NUMBER($rate_kg, maximumFractionDigits: 2) } kg more a week
   *[level] Without water no clear gain or loss
}; about { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day hold the weight
picture-trend-urgent = { $way ->
    [down] Without water about { NUMBER($rate_kg, maximumFractionDigits: 2) } kg less a week
    [up] Without water about { NUMBER($rate_kg, maximumFractionDigits: 2) } kg more a week
   *[level] Without water no clear gain or loss
}
picture-trend-early = Too little data to tell a direction
picture-trend-early-days = Too little data to tell a direction: about { more-days } needed
picture-trend-log = Weight log from { DATETIME($start_date, dateStyle: "long") } to { DATETIME($end_date, dateStyle: "long") }.
picture-trend-day = Weight log of { DATETIME($date, dateStyle: "long") }.
picture-trend-smoothed = Smoothed weight from { $start_weight } to { $weight }. Tissue now changes by { $rate } a week.
picture-trend-maintenance = Maintenance on the log's own scale: { $maintenance } a day.
picture-trend-change = Over { days }: weight { $weight }, tissue { $tissue }, carried mass { $carried }.
picture-cuts = { $cuts ->
    [0] without a cut
    [one] with 1 cut
   *[other] with { $cuts } cuts
}
picture-season-path-spared = { picture-forecast-path-spared }
picture-season-total = Change over the season, kg
picture-limit-dieting = Not kept: weeks in a deficit, { $found } where { $allowed } are allowed.
picture-season-phase-spared = { phase-name }, { DATETIME($start_date, dateStyle: "long") } to { DATETIME($end_date, dateStyle: "long") }: weight { $weight }.
picture-sign = { phase-name }: { $text }
strategy-name = { $strategy ->
    [slow_gain_rare_mini_cuts] Slow gain, rare mini-cuts
    [fast_gain_long_cut] Fast gain, one long cut
    [fast_gain_repeated_mini_cuts] Fast gain, repeated mini-cuts
    [slow_gain_no_cut] Slow gain, no cut
   *[own] { $strategy }
}
picture-past = { $past ->
    [yes] , past a limit
   *[no] {""}
}
picture-comparison = Most lean tissue in { weeks }: { strategy-name }
picture-comparison-one-spared = In { weeks }: lean tissue { $lean }
picture-most-lean = Most lean tissue gained: “{ strategy-name }”, { $value }{ picture-past }.
picture-odds = “{ strategy-name }” gains more lean tissue than “{ $rival }” with a probability of { $percent }.
picture-odds-unclear = No clear difference: “{ strategy-name }” gains more lean tissue than “{ $rival }” with a probability of { $percent }.
picture-draws = Medians over { $draws } draws of what is uncertain.
picture-strategy-in-figures-spared = “{ strategy-name }”: lean tissue { $lean }, { $dieting } days in a deficit.
picture-lean-gained = Lean tissue gained, kg
picture-days-dieting = Days in a deficit
picture-median = median and 80% range
picture-limit-broken = a limit is not kept
picture-limit-not-kept = A limit is not kept.

# Words of documents: calendars, summaries, and what they share.
document-plan = Plan from { DATETIME($date, dateStyle: "long") }
document-season = Season from { DATETIME($date, dateStyle: "long") }, { weeks }
document-start-spared = Maintenance { $maintenance } a day.
document-cautions = Cautions
document-why = Why
document-phases = Phases
document-intake = Intake
document-intake-from-today = Intake from today: { $intake } kcal
document-days = Day by day
document-forecast = Forecast
document-sizes = Other sizes, and their price
document-levers = More activity, and what it gives
document-rules = Beside simple rules
document-limits = Limits
document-in-all = In all
document-phase-from = { phase-name } from { DATETIME($date, dateStyle: "long") }
document-carried-means = Water: glycogen, water and gut content, which leave and return with intake.
document-column = { $column ->
    [phase] phase
    [from] from
    [to] to
    [weeks] weeks
    [week] week
    [weight] weight
    [carried] water
    [kcal_a_day] kcal a day
    [kcal] kcal
    [protein_g] protein g
    [carbohydrate_g] carbohydrate g
    [fat_g] fat g
    [fibre_g] fibre g
    [alcohol_g] alcohol g
    [day] day
    [training] training
    [meals_g] protein by meal, g
    [at_the_end_of] at the end of
    [weight_kg] scale weight kg
    [balance] energy balance kcal a day
    [size] size
    [intake] intake kcal
    [rate] % of body mass a week
    [rails] warned of
    [activity] activity
    [burnt] burnt kcal a day
    [counts] counts kcal a day
    [use] use
    [availability] left for the body, kcal/kg
    [expected] expected
    [days_dieting] days in a deficit
    [strategy] strategy
   *[what] what
}
document-element = { $element ->
    [easing_in] easing in
   *[break] break
}
document-day-kind = { $kind ->
    [higher_carbohydrate] more carbohydrate
   *[lower_carbohydrate] less carbohydrate
}, { $days ->
    [one] one day a week
   *[other] { $days } days a week
}
document-size = { $size ->
    [gentle] gentle
    [steady] steady
    [brisk] brisk
    [own] as asked or solved
   *[largest] the most that is safe
}
document-size-planned = { $size }, planned
document-rail = { $rail ->
    [age] age
    [pregnancy_lactation] pregnancy or breastfeeding
    [eating_disorder] eating disorder
    [medical] a condition or medicine
    [screening_unanswered] health questions open
    [bmi] near underweight
    [body_fat] low body fat
    [deficit_share] a big share of maintenance
    [fat_supply] much asked of body fat
    [tissue_loss] fast loss
    [logged_loss] fast loss in the log
    [energy_availability] little energy beside training
    [intake_floor] low intake
    [protein] protein
    [dietary_fat] little dietary fat
    [carbohydrate] little carbohydrate
    [gain_rate] fast gain
    [cut_history] cuts already done
   *[other] another guard rail
}
document-expected-spared = Expected: weight { $weight }, water { $carried }.
document-expected-tissue-spared = Expected: weight { $weight }.
document-eaten = { $intake } kcal a day: protein { $protein } g, carbohydrate { $carbohydrate } g, fat { $fat } g, fibre { $fibre } g
document-eaten-until = { document-eaten }, until { DATETIME($date, dateStyle: "long") }.
document-eaten-for = { document-eaten }, for { weeks }.
document-day-kind-eaten = { document-day-kind }: { $intake } kcal, protein { $protein } g, carbohydrate { $carbohydrate } g, fat { $fat } g.
document-day = { weekday-name }: { $intake } kcal, protein { $protein } g ({ $meals }), carbohydrate { $carbohydrate } g, fat { $fat } g
document-day-training = , { $minutes } min of training
document-day-alcohol = , { $alcohol } g of alcohol in it
document-training = { $minutes } min, { $kcal } kcal
document-lever = { lever-name }
document-use = { $use ->
    [instead] eat more for it
   *[together] eat as planned
}
document-not-safe = not safe
document-availability = { $observed } (as planned { $planned })
document-strategy-gain = Gains at a surplus of { $surplus } kcal a day.
document-strategy-no-cut = No cut.
document-strategy-deficit = Its deficit is { $deficit } kcal a day.
document-strategy-longest = It lasts { weeks } at most.
document-strategy-maintenance = Maintenance follows, for at least { weeks }.
document-total = { $total ->
    [dieting] days in a deficit
   *[cuts] cuts
}

## shared, of leanness

# Words of pictures and documents; what ends in -spared is told in the place of one.
picture-fat = Fat
picture-fat-loss = About { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in { weeks }; the scale says { NUMBER($weight_kg, maximumFractionDigits: 1) } kg on { DATETIME($date, dateStyle: "long") }
picture-fat-loss-water = About { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in { weeks }; the scale says { NUMBER($weight_kg, maximumFractionDigits: 1) } kg on { DATETIME($date, dateStyle: "long") }, { NUMBER($water_kg, maximumFractionDigits: 1) } kg of the drop water
picture-gain = About { NUMBER($lean_kg, maximumFractionDigits: 1) } kg of lean tissue and { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in { weeks }; the scale says { NUMBER($weight_kg, maximumFractionDigits: 1) } kg on { DATETIME($date, dateStyle: "long") }
picture-path = From { NUMBER($start_kg, maximumFractionDigits: 1) } kg on { DATETIME($start_date, dateStyle: "long") } to { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } to { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }) on { DATETIME($end_date, dateStyle: "long") }; body fat from { NUMBER($now_percent, maximumFractionDigits: 1) }% ({ NUMBER($now_lower_percent, maximumFractionDigits: 1) } to { NUMBER($now_upper_percent, maximumFractionDigits: 1) }) to { NUMBER($fat_percent, maximumFractionDigits: 1) }% ({ NUMBER($fat_lower_percent, maximumFractionDigits: 1) } to { NUMBER($fat_upper_percent, maximumFractionDigits: 1) }).
picture-nearest-fat = Nearest: { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in the time asked.
picture-phase-in-figures = { phase-name }, { DATETIME($start_date, dateStyle: "long") } to { DATETIME($end_date, dateStyle: "long") }: { NUMBER($least_kcal, maximumFractionDigits: 0) } to { NUMBER($most_kcal, maximumFractionDigits: 0) } kcal a day, weight { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } to { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), fat { NUMBER($fat_kg, maximumFractionDigits: 1) } kg ({ NUMBER($fat_lower_kg, maximumFractionDigits: 1) } to { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }), lean tissue { NUMBER($lean_kg, maximumFractionDigits: 1) } kg ({ NUMBER($lean_lower_kg, maximumFractionDigits: 1) } to { NUMBER($lean_upper_kg, maximumFractionDigits: 1) }), carried mass { NUMBER($carried_kg, maximumFractionDigits: 1) } kg ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } to { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
picture-body-fat-title = Body fat, % of scale weight
picture-body-fat = body fat
picture-band = ends of the chosen band
picture-forecast-path = Scale weight from { $start_weight } on { DATETIME($start_date, dateStyle: "long") } to { $weight } at the end of { DATETIME($end_date, dateStyle: "long") }, with { $fat } of fat and body fat of { $percent }.
picture-trend = { $way ->
    [down] About { NUMBER($rate_kg, maximumFractionDigits: 2) } kg of fat and lean tissue less a week
    [up] About { NUMBER($rate_kg, maximumFractionDigits: 2) } kg of fat and lean tissue more a week
   *[level] No clear gain or loss of fat and lean tissue
}; about { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day hold the weight
picture-trend-composition = Of the tissue: fat { $fat }, lean { $lean }.
picture-season = Lean tissue { $lean } and fat { $fat } in { weeks } { picture-cuts }
picture-season-changes = Lean tissue { $lean }, fat { $fat }; { days } in a deficit.
picture-season-path = Scale weight from { $start_weight } on { DATETIME($start_date, dateStyle: "long") } to { $weight } at the end of { DATETIME($end_date, dateStyle: "long") }, body fat from { $now_percent } to { $percent }, { $peak_percent } at the end of its highest week.
picture-limit = { $limit ->
    [weeks_above_band] Not kept: weeks above the band, { $found } where { $allowed } are allowed.
    [final_fat_fraction] Not kept: body fat at the end, { $found } where { $allowed } is allowed.
   *[event_fat_fraction] Not kept: body fat at an event, over what is wanted by { $found }.
}
picture-season-phase = { phase-name }, { DATETIME($start_date, dateStyle: "long") } to { DATETIME($end_date, dateStyle: "long") }: weight { $weight }, fat { $fat }, lean tissue { $lean }.
picture-comparison-one = In { weeks }: lean tissue { $lean }, fat { $fat }
picture-least-fat = Least fat gained: “{ strategy-name }”, { $value }{ picture-past }.
picture-strategy-in-figures = “{ strategy-name }”: lean tissue { $lean }, fat { $fat }, highest body fat { $percent }, { $above } weeks above the band, { $dieting } days in a deficit.
picture-fat-gained = Fat gained, kg
picture-peak = Highest body fat, %
picture-weeks-above = Weeks above the band
document-start = Maintenance { $maintenance } a day, body fat { $fat }.
document-trade-off = What weeks above the band buy
document-trade-off-end = What more body fat at the end buys
document-column-of-tissue = { $column ->
    [fat] fat
    [lean] lean tissue
    [fat_kg] fat kg
    [lean_kg] lean tissue kg
    [weeks_above] weeks above the band
   *[fat_percent] body fat %
}
document-expected = Expected: weight { $weight }, fat { $fat }, lean tissue { $lean }, water { $carried }.
document-expected-tissue = Expected: weight { $weight }, fat { $fat }, lean tissue { $lean }.
document-rule-static = At 7,700 kcal a kilogram and a constant deficit: { $fat } of fat.
document-rule-quoted = Commonly quoted: { $fat } of fat in these weeks, and { $drop } on the scale in the first days. Forecast here: { $forecast } in the first week.
document-strategy-uncut = The gain ends at { $starts } body fat, without a cut.
document-strategy-cut = A cut starts at { $starts } body fat and ends at { $ends }.
document-total-of-tissue = { $total ->
    [lean] lean tissue gained
    [fat] fat gained
   *[end] body fat at the end
}
document-peak = highest body fat, on { DATETIME($date, dateStyle: "long") }
document-above-band = weeks above the band ({ $band })

## member

NOT_MEDICAL_ADVICE = This is information, not medical advice. Before changing your diet, speak to a physician or registered dietitian; local rules come first.
ON_LOGGING_SCALE = Maintenance is on the scale of your own log: if you log less than you eat, this is the amount to log.
ON_LOGGING_SCALE_URGENT = Maintenance is on the scale of your own log. It is an estimate and no amount to eat: a doctor decides that.
TWO_SEXES = Equations for both sexes were used: the range covers both, and the stricter limits apply.
FROM_EQUATIONS = This rests on equations alone, as no food log tells more yet. Four weeks of logged weights and food make it most exact.
MAINTENANCE_BY_WEIGHT = You hardly log food, so this comes from how your weight answered what you were told to eat. Logging food makes it more exact.

# Refusals, each with whom to see.
REFUSED_LOWER_DAYS = A day with less food than others is a day in a deficit. The same plan can be made with all days alike.
REFUSED_UNDER_AGE = Under { NUMBER($limit_years, maximumFractionDigits: 0) } no deficit is planned. Please speak to a physician or registered dietitian first; maintenance and trends stay available.
REFUSED_OLDER_WITHOUT_CLEARANCE = From the age of { NUMBER($limit_years, maximumFractionDigits: 0) }, dieting costs muscle and bone more easily. Please get a clinician's clearance first; maintenance and trends stay available.
REFUSED_PREGNANCY = No deficit is planned in pregnancy. Please speak to your midwife or obstetric team about food and weight; maintenance and trends stay available.
REFUSED_BREASTFEEDING = No deficit is planned while breastfeeding. Please speak to your midwife, health visitor or physician first; maintenance and trends stay available.
REFUSED_EATING_DISORDER = With an eating disorder, now or before, no deficit and no body target is planned. An eating-disorder service or your clinician can help.
REFUSED_DOUBT = You were unsure about an eating disorder. Please let a clinician or an eating-disorder service settle that first; until then no deficit is recommended.
REFUSED_MEDICAL = With { condition }{ $others ->
    [0] {""}
    [one] {" "}and one more condition
   *[other] {" "}and { $others } more conditions
} no deficit is planned without clearance. Please speak to a physician or dietitian first.
REFUSED_BMI = At a body mass index of { NUMBER($bmi, maximumFractionDigits: 2) } (underweight is under { NUMBER($limit, maximumFractionDigits: 1) }) no deficit is planned. Please speak to a physician or registered dietitian.
REFUSED_REFEEDING = At your weight eating more without supervision can be dangerous, so no intake is given here. Please see a doctor today; it is urgent.
REFUSED_FAT_TARGET = No body-fat target is planned for you, not even in a gain. Please speak to a physician or registered dietitian first.
REFUSED_BAND = No body-fat target is planned for you here. Please leave out the body-fat range and the targets for events.
REFUSED_UNANSWERED = Please answer the health questions first. Until then no deficit and no gain is planned: what is unknown is not taken as safe.
REFUSED_LOGGED_LOSS = By your log you lose { NUMBER($percent, maximumFractionDigits: 2) }% a week; { NUMBER($limit_percent, maximumFractionDigits: 1) }% is the limit. No deficit now: eat more. If unintended, see a clinician.
UNDERWEIGHT = For your height you weigh too little. The way from here is a slow gain: please see a physician or dietitian about it.
UNDERWEIGHT_AHEAD = The way you eat now leads to a weight too low for your height. Eat at least what is planned, or see a physician.
REFUSED_BODY_FAT = { $speaks ->
    [yes] At { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat no deficit is planned: the safe limit is { NUMBER($limit_percent, maximumFractionDigits: 1) }%.
   *[no] Your body has no reserves to spare for a deficit.
} Please speak to a physician or registered dietitian.
REFUSED_LOSS = This would lose { NUMBER($percent, maximumFractionDigits: 2) }% of body mass a week, more than { NUMBER($limit_percent, maximumFractionDigits: 2) }%: eat more.
REFUSED_END_BODY_FAT = { $speaks ->
    [yes] This phase would end at { NUMBER($fat_percent, maximumFractionDigits: 2) }% body fat, below the safe limit of { NUMBER($limit_percent, maximumFractionDigits: 1) }%: make it shorter or eat more.
   *[no] This would leave your body without reserves: make it shorter or eat more.
}
REFUSED_END_BMI = This phase would end at a body mass index of { NUMBER($bmi, maximumFractionDigits: 2) }; under { NUMBER($limit, maximumFractionDigits: 1) } is underweight. Make it shorter or eat more.
REFUSED_GAIN_RATE = You would gain { NUMBER($percent, maximumFractionDigits: 3) }% of body mass a week. At your training experience, more than { NUMBER($limit_percent, maximumFractionDigits: 2) }% builds no more muscle.
REFUSED_DEFICIT = A deficit of { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day is too large: { why }. Eat at least { NUMBER($least_intake_kcal, maximumFractionDigits: 0) }.
REFUSED_HELD = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day is too little outside a deficit. Eat at least { NUMBER($least_intake_kcal, maximumFractionDigits: 0) }; if you cannot, speak to a physician or dietitian.
REFUSED_PROTEIN = { NUMBER($observed, maximumFractionDigits: 2) } grams of protein per kilogram is under the { NUMBER($limit, maximumFractionDigits: 2) } that a deficit needs: plan more.
SEE_MIDWIFE = In pregnancy your intake is not lowered here. Speak to your midwife or obstetric team about food and weight.
WEIGHT_RISES_IN_PREGNANCY = In pregnancy your weight is to rise. What grows is not in weights told here: your midwife or obstetric team follows it.
SEE_AFTER_BIRTH = While you breastfeed your intake is not lowered here: speak to your midwife or physician.
SEE_EATING_DISORDER_SERVICE = Your intake is not lowered here. An eating-disorder service or your clinician can help with food and weight.
SEE_FOR_MINORS = Under 18 your intake is not lowered here: speak to a physician or paediatrician about weight.

# What is capped or raised.
CAPPED_UNANSWERED = The gain after maintenance is left out until the health questions are answered.
CAPPED_PROTEIN_ROOM = Protein is { NUMBER($given, maximumFractionDigits: 1) } grams per kilogram instead of { NUMBER($asked, maximumFractionDigits: 1) }: your intake has no room for more beside the fat you need.
CAPPED_DEFICIT = The deficit stays at { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day: { why }.
CAPPED_DEFICIT_LATER = Later in the cut the deficit is only { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day: { why }.
CAPPED_DEFICIT_FOR_BMI = The deficit stays at { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day, or you would end underweight. { NUMBER($asked_kcal, maximumFractionDigits: 0) } kcal are possible for { weeks } at most.
CAPPED_PROTEIN = Protein is raised to { NUMBER($limit, maximumFractionDigits: 2) } grams per kilogram, the least you need in a deficit.
CAPPED_GAIN_RATE = Your surplus stays at { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal a day: gaining more than { NUMBER($percent, maximumFractionDigits: 2) }% of body mass a week builds no more muscle.
CAPPED_GAIN_RATE_AT_FIRST = Your surplus is { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal a day at first: gaining more than { NUMBER($percent, maximumFractionDigits: 2) }% of body mass a week builds no more muscle.
CAPPED_HISTORY_UNKNOWN = Your past diets are not known, so the deficit stays at the usual { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day.
NO_SAFE_DEFICIT = No useful deficit is safe for you now: { why }.
RAISED_TO_FLOOR = Your intake is raised to { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day, the least for your body outside a deficit.

# What to watch.
WARNED_YOUNG_ADULT = At 18 or 19 your body may still be maturing: keep the deficit small and short.
WARNED_EATING_DISORDER_DOUBT = You were unsure about an eating disorder. If food or weight worries you, talk to a clinician first; stop if it gets worse.
WARNED_LOGGED_LOSS = By your log you lose { NUMBER($percent, maximumFractionDigits: 1) }% of body mass a week. If no diet explains it, eat more and see a clinician.
WARNED_EATEN_FLOOR = { $periods ->
    [no] Your log shows about { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal a day; eat at least { NUMBER($limit_kcal, maximumFractionDigits: 0) }. With low mood or binge eating, see a clinician.
   *[yes] Your log shows about { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal a day; eat at least { NUMBER($limit_kcal, maximumFractionDigits: 0) }. With low mood, binge eating or a missed period, see a clinician.
}
WARNED_EATEN_AVAILABILITY = { $periods ->
    [no] Eat more: by your log too little energy is left beside training. With low mood or binge eating, see a clinician.
   *[yes] Eat more: by your log too little energy is left beside training. With low mood, binge eating or a missed period, see a clinician.
}
WARNED_LOGGED_LOSS_URGENT = By your log you lose { NUMBER($percent, maximumFractionDigits: 1) }% of body mass a week. Tell the doctor so.
WARNED_EATEN_FLOOR_URGENT = Your log shows about { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal a day, which is far too little. Tell the doctor so.
WARNED_EATEN_AVAILABILITY_URGENT = By your log too little energy is left beside training. Tell the doctor so, and how you train.
WARNED_HISTORY_UNKNOWN = Your past diets are not known, so the deficit is the usual size at most.
WARNED_HISTORY_NOT_TOLD = Your past diets are not known. Until they are, keep to a deficit of { NUMBER($limit_kcal, maximumFractionDigits: 0) } kcal a day at most.
WARNED_BMI = A body mass index of { NUMBER($bmi, maximumFractionDigits: 1) } is near underweight: keep the phase short.
WARNED_DEFICIT_SHARE = The deficit is { NUMBER($share_percent, maximumFractionDigits: 0) }% of your maintenance: expect hunger and fatigue.
WARNED_DAY_DEFICIT_SHARE = On your lowest days you eat { NUMBER($share_percent, maximumFractionDigits: 0) }% less than you use: expect hunger and fatigue on them.
WARNED_LARGE_DEFICIT = { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day is more than the { NUMBER($usual_kcal, maximumFractionDigits: 0) } that mini-cuts usually go to: watch hunger, sleep and strength.
WARNED_FAT_SUPPLY = Each kilogram of body fat would have to supply { NUMBER($observed, maximumFractionDigits: 1) } kcal a day. Over { NUMBER($limit, maximumFractionDigits: 1) }, you may lose more muscle.
WARNED_DAY_FAT_SUPPLY = On your lowest days each kilogram of body fat would have to supply { NUMBER($observed, maximumFractionDigits: 1) } kcal. Over { NUMBER($limit, maximumFractionDigits: 1) }, you may lose more muscle.
WARNED_DAY_AVAILABILITY = { $periods ->
    [no] On your lowest days training leaves your body little energy. Watch sleep, mood and libido; eat more if they change.
   *[yes] On your lowest days training leaves your body little energy. Watch sleep, mood, libido and any menstrual cycle; eat more if they change.
}
WARNED_LOSS = With this plan you lose { NUMBER($percent, maximumFractionDigits: 2) }% of body mass a week. That is fast: watch your strength.
WARNED_AVAILABILITY = { $periods ->
    [no] Training leaves your body little energy: fine for a few weeks only. Watch sleep, mood and libido; stop if they change.
   *[yes] Training leaves your body little energy: fine for a few weeks only. Watch sleep, mood, libido and any menstrual cycle; stop if they change.
}
WARNED_UNDER_RESTING = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day is less than your body uses at rest ({ NUMBER($resting_kcal, maximumFractionDigits: 0) }): acceptable in a mini-cut only.
WARNED_DAY_UNDER_RESTING = On your lowest days { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal is less than your body uses at rest ({ NUMBER($resting_kcal, maximumFractionDigits: 0) }): keep such days few.
WARNED_KIDNEY_PROTEIN = High protein with kidney disease needs your clinician's agreement.
WARNED_DIETARY_FAT = Fat is only { NUMBER($share_percent, maximumFractionDigits: 0) }% of what you eat. In the long run that is too little.
WARNED_DAY_DIETARY_FAT = On some days fat is only { NUMBER($share_percent, maximumFractionDigits: 0) }% of what you eat. Let it not be less.
WARNED_CARBOHYDRATE = Carbohydrate is { NUMBER($carbohydrate_g, maximumFractionDigits: 0) } grams a day, under the recommended { NUMBER($limit_g, maximumFractionDigits: 0) }: training may feel harder.
WARNED_GAIN_RATE = A gain of { NUMBER($percent, maximumFractionDigits: 2) }% of body mass a week is fast at your training experience: slower builds about as much muscle.
WARNED_CUTS_A_YEAR = This would be cut number { NUMBER($cuts, maximumFractionDigits: 0) } in twelve months. Cuts cost training time; gaining more slowly would need fewer.
WARNED_RECENT_CUT = { $weeks ->
    [0] Your last cut has only just ended.
    [one] Your last cut ended only 1 week ago.
   *[other] Your last cut ended only { NUMBER($weeks, maximumFractionDigits: 0) } weeks ago.
} It is usually better to wait until { NUMBER($limit_weeks, maximumFractionDigits: 0) } weeks have passed.
UNDER_AGE_NO_TARGET = Under { NUMBER($limit_years, maximumFractionDigits: 0) } this is only an estimate, and it sets no target. Speak to a physician about growth and weight.
FAT_FREE_MASS_INDEX_UNUSUAL = Few people carry this much muscle for their height. Check the weight (kilograms, or pounds?), the height and the reading.
WEIGHT_IN_POUNDS = Your weight and height give a body mass index of { NUMBER($bmi, maximumFractionDigits: 1) }. If that looks wrong, check the units: kilograms, not pounds, and centimetres.
MAINTENANCE_UNUSUAL = Maintenance of { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day is { NUMBER($times, maximumFractionDigits: 1) } times what you use at rest, which few keep up. Are activity and figures right?
PAL_ABOVE_SUSTAINABLE = Your activity comes to { NUMBER($pal, maximumFractionDigits: 2) } times what you use at rest; over { NUMBER($limit, maximumFractionDigits: 2) } is hard to keep up. Check what was entered.

# A plan: why each number is what it is.
SIZE_OF_GAIN_SPARED = { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal a day more: { weeks }.
DEFICIT_ASKED = You eat { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day less than you use now, as you asked.
GOAL_SMALL = Your goal is small: over { weeks }, as short as this phase can be, a small deficit is enough.
GOAL_FITS_MINI_CUT = A mini-cut gets you there in { weeks }, with { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day less than you use now.
WEEKS_DEFAULT = The phase takes { weeks }, the middle of the usual two to six, less what is done already.
CUT_WEEKS_DEFAULT = The phase takes { weeks }, as neither a goal nor a time was given.
WEEKS_TO_EVENT = The phase takes { weeks }, as long as it can before your event.
FORECAST_AS_KEPT = So far you have kept to about { NUMBER($percent, maximumFractionDigits: 0) }% of planned deficits, and this forecast counts on no more.
FORECAST_AS_EATEN = The middle is what comes of eating exactly this. The range also allows for managing less of the deficit, as people usually do.
PLANNED_AS_EATEN = This counts on the full plan. People manage about { NUMBER($percent, maximumFractionDigits: 0) }% of such a deficit: the same loss would take { NUMBER($usual_weeks, maximumFractionDigits: 0) } weeks, not { weeks }.
SHRINKING_DEFICIT = Your body soon uses less, so the deficit shrinks: from { NUMBER($first_kcal, maximumFractionDigits: 0) } kcal a day in the first full week to { NUMBER($last_kcal, maximumFractionDigits: 0) } in the last.
PROTEIN_WHY = { NUMBER($protein_g_per_kg, maximumFractionDigits: 1) } grams of protein per kilogram, with resistance training, protect your muscle in a deficit.
NO_TRAINING = With fewer than two sessions of resistance training a week, more of what you lose is muscle. They are the cheapest protection there is.
EASING_IN = { $weeks ->
    [one] The first week runs
   *[other] The first { $weeks } weeks run
} at half the deficit. You are less hungry, and it takes about that much longer.
MAINTENANCE_WHY = After the cut you hold at { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day, { NUMBER($lower_kcal, maximumFractionDigits: 0) } less than before: your body is smaller and has adapted.
MAINTENANCE_NOT_LOWER = After the cut you hold at { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day. So soon after eating much more, your body uses no less than before.
REBOUND = The scale will rise by about { NUMBER($carried_kg, maximumFractionDigits: 1) } kg as glycogen, water and food return. That is not fat.
SURPLUS_WHY = A surplus of { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal a day suits your training experience and lean mass. Your intake is set anew { every-weeks }.
GAIN_RATE_EXPECTED_SPARED = Expect to gain about { NUMBER($percent_per_month, maximumFractionDigits: 1) }% of body mass a month.
RETURN_CHECKS_SPARED = Without water you should gain { NUMBER($rate_kg, maximumFractionDigits: 2) } kg a week. Check on { DATETIME($first_date, dateStyle: "long") } and { DATETIME($second_date, dateStyle: "long") }: at twice that, ask your doctor.
END_AT_LIMIT = Stop after { weeks } at the latest: a mini-cut is meant to be short.
END_CUT_AT_LIMIT = Stop after { weeks } at the latest, and hold at maintenance before anything else.
END_ON_SIGNS = { $periods ->
    [no] Stop early if strength falls in two sessions running, or with poor sleep, low mood or binge eating.
   *[yes] Stop early if strength falls in two sessions running, or with poor sleep, low mood, binge eating or a missed period.
}
END_ON_FAST_LOSS = Eat more if your weight falls faster than { NUMBER($percent, maximumFractionDigits: 1) }% a week over two weeks, once the first week's water has settled.
TRAIN_IN_DEFICIT = Keep the loads up. When recovery suffers, do fewer sets first.
BREAKS_OFFERED = Breaks are yours to ask for: a week at maintenance every few weeks makes a long cut easier and costs only its time.
TRAIN_IN_GAIN = Add load or repetitions before sets: the surplus is there to be trained with.
TRAIN_IN_HOLD = Train on as you feel able: with enough food strength comes back. When ill or injured, recover first.
END_HOLD_ON_TREND = Plan anew before the end if your weight still falls, or still rises after two weeks: your maintenance then differs from this plan's.
END_HOLD_ON_SIGNS = Ask again before the end if you feel unwell or are hungry all day.
WEIGH_DAILY_SPARED = Agree with whoever looks after your health how often you weigh yourself.
PLAN_PROVISIONAL_SPARED = This plan is provisional: it rests on equations alone. With four weeks of a log it is more exact from { DATETIME($date, dateStyle: "long") } on.
INFEASIBLE = No safe plan does what was asked. What comes nearest to it is given instead.
INFEASIBLE_NOTHING = No safe plan does what was asked, and none comes near it for now.
PAUSED = First comes maintenance for { weeks }; the phase is planned for your body as it will be then.
GAIN_NOT_NOW = No gain is planned for you now: eat at maintenance and train. Take any worry about food or weight to a physician or dietitian.
GAIN_OVER = From { DATETIME($date, dateStyle: "long") } you hold at maintenance and train: this gain is then enough. Take any worry about weight to a physician.
HELD_FROM_CEILING_SPARED = From { DATETIME($date, dateStyle: "long") } you hold at maintenance and train. Take any worry about food or weight to a physician or dietitian.
GAIN_TARGET_PAST_CEILING_SPARED = This gain goes to about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg and no further.
HOLD_WHY = { $moves ->
    [yes] Your body stays as it is at { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day now and { NUMBER($last_kcal, maximumFractionDigits: 0) } in the last week.
   *[no] At { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day your body stays as it is.
}
HOLD_NEED = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day is the least that your body needs in these weeks.
TRAINING_DAYS_MORE = On training days you eat more because you burn more: up to { NUMBER($training_kcal, maximumFractionDigits: 0) } kcal. Rest days have less, so the week stays the same.
TRAINING_DAYS_LIMITED = The tightest week gives training days { NUMBER($percent, maximumFractionDigits: 0) }% of what training burns: on rest days { why }.
FLEXIBLE_DAYS_PAID = Your other days have up to { NUMBER($paid_kcal, maximumFractionDigits: 0) } kcal less to pay for your flexible days. The week stays the same.
CAPPED_FLEXIBLE_DAYS = In the tightest week { NUMBER($fits_kcal, maximumFractionDigits: 0) } of { NUMBER($asked_kcal, maximumFractionDigits: 0) } kcal fit flexible days: on other days { why }.
ALCOHOL_COUNTED = Alcohol counts like food, at 7.1 kcal a gram, and feeds no muscle. Less of it is always fine.
MEALS_PROTEIN = In { meals } you eat up to { NUMBER($protein_g, maximumFractionDigits: 0) } grams of protein at a time. The day's total matters most.
MEALS_FEWER = Fewer, larger meals build muscle better: about { NUMBER($protein_g, maximumFractionDigits: 0) } grams of protein in each of { meals }.
PLANT_PROTEIN = You get a tenth more protein, because plants give a little less of what muscle needs. Soy, beans and grains together do well.
PROTEIN_REFERENCE = Your protein is counted for { NUMBER($reference_kg, maximumFractionDigits: 0) } kg, the part of your weight that needs it.
WEEK_BEYOND_PROFILE = This training burns about { NUMBER($week_kcal, maximumFractionDigits: 0) } kcal a day, but your profile counts { NUMBER($profile_kcal, maximumFractionDigits: 0) }. Update your activity, or you will get too little.
FLEXIBLE_DAY_AFTER_PLAN = Your flexible day on { DATETIME($date, dateStyle: "long") } comes after the plan, which ends on { DATETIME($last_date, dateStyle: "long") }.
LEVER_BURNS = { lever-name }: about { NUMBER($burnt_kcal, maximumFractionDigits: 0) } kcal a day. Your body saves some elsewhere, so { NUMBER($kept_kcal, maximumFractionDigits: 0) } count, between { NUMBER($lower_kcal, maximumFractionDigits: 0) } and { NUMBER($upper_kcal, maximumFractionDigits: 0) }.
LEVER_AVAILABILITY = With it, { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal leave your body { NUMBER($observed, maximumFractionDigits: 1) } kcal for each kilogram that is not fat; your plan alone leaves { NUMBER($planned, maximumFractionDigits: 1) }.
LEVER_TOO_MUCH = Do not { lever } on the planned food: your body would have too little left. Eat more for it.
LEVER_TOO_MUCH_EVEN_FED = Do not { lever } in this phase: even with more food your body would have too little left.
LEVER_ASK_FIRST = More activity could help. With your health answers, ask your doctor first how much is safe.
CUT_RESET = Your intake is set anew after { $first_weeks } weeks and then { every-weeks }, so that the deficit holds as your body changes.
GAIN_TARGET_TOO_FAR = No gain within its limits reaches this weight in { weeks }: it goes to about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg.
GOAL_ALREADY_MET = You have met the goal already: there is nothing to lose.
PHASE_USED_UP = This mini-cut has run { weeks }, the longest that one may last: go to maintenance, or plan a longer cut.
CUT_NO_ROOM = No cut of this kind fits into the weeks left for it.
GAIN_NO_ROOM = Even the least you should eat would make you gain faster than you may, so you hold.
GAIN_NEEDS_TRAINING = A surplus builds muscle only with resistance training: start training first.
TARGET_WRONG_SIDE = With this intake you move away from your target, or stop short of it.
TARGET_NEEDS_INTAKE = To reach your target by this date you would eat { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day.
TARGET_BEYOND_RAIL = Less than { NUMBER($least_intake_kcal, maximumFractionDigits: 0) } kcal a day is not safe: { why }.
TARGET_TOO_FAST_GAIN = Reaching your target in time would mean gaining more than { NUMBER($percent, maximumFractionDigits: 2) }% of body mass a week.
TARGET_UNREACHABLE = No steady intake reaches your target by this date.

# What comes next.
DECISION_NO_DEFICIT = No diet is recommended here. Eat at maintenance and train; if food or weight worries you, speak to a physician or dietitian.
DECISION_UNDER_AGE = Under { NUMBER($limit_years, maximumFractionDigits: 0) } no diet is recommended: eat enough to grow and train, and take any worry about weight to a physician.
DECISION_CHOICES_LEFT_OUT = What you wish for your body plays no part in this answer.
DECISION_CUT_REFUSED = A cut would come next, but a safety rule forbids it for now. Until that is settled: { phase }.
DECISION_CUT_TOO_SMALL = A cut would come next, but what is safe for you now is too small to be worth it. Until that changes: { phase }.
DECISION_CUT_REFUSED_UNDER_WAY = The cut under way does not go on, for the reason given. Instead: { phase }.
DECISION_CUT_TOO_LONG = You have been in a deficit for { weeks }, which is enough: now hold for { bridge-weeks }, whatever is left to lose.
DECISION_CUT_JUST_ENDED = { $weeks ->
    [0] Your cut has just ended.
   *[other] Your last cut ended { weeks } ago.
} Hold for { bridge-weeks } while glycogen and water return.
DECISION_CUT_AGAIN = Your last cut took nothing off. Hold for { bridge-weeks } and log every meal: then we look again.
DECISION_CUT_TOO_RECENT = { $weeks ->
    [0] Your last cut has just ended.
   *[other] Your last cut ended { weeks } ago.
} After { NUMBER($limit_weeks, maximumFractionDigits: 0) } weeks, on { DATETIME($date, dateStyle: "long") }, another may be considered.
DECISION_TOO_MANY_CUTS = { $cuts ->
    [one] You have ended one cut
   *[other] You have ended { $cuts } cuts
} in twelve months. That is enough for now; the next may start on { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_TOO_NEAR = { $weeks ->
    [0] Your event is within a week,
   *[other] Your event is { weeks } away,
} too near for a cut and a week to settle after it. Hold: you would only lose water.
DECISION_EVENT_LATER = Your event is { weeks } away. The cut for it takes { cut-weeks }, plus one to settle: start on { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_NOW = Your event is { weeks } away. The cut for it takes about { cut-weeks }, plus one to settle: it is time to start.
DECISION_EVENT_HOLD_FIRST = Whatever you gained before your event would have to come off again: hold until the cut for it, about { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_FAR = Your event is more than { weeks } away: it does not count yet.
DECISION_EVENT_SETS_DATE = The date of your event decides here.
DECISION_EVENT_LEAVES_TIME = Your event is { weeks } away: there is time for this cut now, and to ask again before it.
DECISION_WANTS_HOLD = You want to hold, and that is fine.
DECISION_NEAR_UNDERWEIGHT = A body mass index of { NUMBER($bmi, maximumFractionDigits: 1) } is near underweight. Holding comes first; under { NUMBER($limit, maximumFractionDigits: 1) } no fat loss is started.
DECISION_NO_DUE = No cut pays off at any body fat in or near your range.
DECISION_CLOSE = Over { weeks } nothing is clearly better: { best-phase } comes out ahead of { other-phase } in { NUMBER($probability_percent, maximumFractionDigits: 0) }% of cases. Choose what suits you.
DECISION_CUTS_CLOSE = Over { weeks } { best-phase } and { other-phase } come to about the same: take the length that suits you.
DECISION_TRADE_CLEAR = Over { weeks } { best-phase } is worth more to you than { other-phase }, with a probability of { NUMBER($probability_percent, maximumFractionDigits: 0) }%.
DECISION_LONGER_CUT = A mini-cut is too short to get there: you need { weeks }.
DECISION_HISTORY_UNKNOWN = Your past phases are not known. Give them, and the answer counts a recent cut or a pattern.
DECISION_GAIN_SLOWLY = Gain slowly, at { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal a day over maintenance.
PATTERN_CYCLES = In { weeks } fast gains were followed by a cut { $cycles ->
    [one] once
    [2] twice
   *[other] { $cycles } times
}. You spent { $dieting_weeks } of those weeks dieting.
PATTERN_NO_LEAN = Going up and down built at least as much lean tissue; the price was the dieting. A slower gain needs fewer cuts.
PATTERN_SAME_LEAN = A slow gain would have built about as much lean tissue ({ NUMBER($lower_kg, maximumFractionDigits: 1) } to { NUMBER($upper_kg, maximumFractionDigits: 1) } kg more), with fewer cuts. Slow down.
PATTERN_WEEKS = With a slow gain you would have had the same lean tissue { weeks } sooner.
PATTERN_ASSUMED = { $phases ->
    [one] One phase has no weights
   *[other] { $phases } phases have no weights
}, so the usual size was assumed.
CHANGE_READING = Your reading may be { NUMBER($error_points, maximumFractionDigits: 1) } points off: with a chance of { NUMBER($probability_percent, maximumFractionDigits: 0) }% the truth is on the other side of the limit.
CHANGE_SURER_READING = A better method that says the same would be sure enough for a cut.
CHANGE_TIME = A cut is considered again from { DATETIME($date, dateStyle: "long") }.
CHANGE_EVENT_START = The cut for your event starts on { DATETIME($date, dateStyle: "long") } at the latest.
CHANGE_NO_EVENT = Without the event the answer would be: { phase }.
CHANGE_SCREENING = Only with the health questions answered could a cut be considered.
CHANGE_SCREENING_GAIN = Only with the health questions answered could a gain or a cut be considered.
CHANGE_CLEARANCE = Only with a clinician's clearance could a cut be considered.
CHANGE_MOVE_MORE = If you walk or cycle more you burn more, and a cut that is worth it may fit in.

# Your log.
LOG_UNIT_MIX_UP = Your weight of { NUMBER($given, maximumFractionDigits: 1) } on { DATETIME($date, dateStyle: "long") } { $others ->
    [0] only fits in another unit, and was
    [one] and one more only fit in another unit; the first was
   *[other] and { $others } more only fit in another unit; the first was
} read as { NUMBER($read_kg, maximumFractionDigits: 1) } kg.
LOG_WEIGHT_SET_ASIDE = The { NUMBER($given, maximumFractionDigits: 1) } kg of { DATETIME($date, dateStyle: "long") } does not fit the { NUMBER($expected_kg, maximumFractionDigits: 1) } kg around it and is left out. Somebody else's? Please check.
LOG_WEIGHT_DECIMAL = The { NUMBER($given, maximumFractionDigits: 1) } kg of { DATETIME($date, dateStyle: "long") } is left out, with { NUMBER($expected_kg, maximumFractionDigits: 1) } kg on the days around it: is the decimal point right?
LOG_WEIGHT_TWICE = { $count ->
    [one] One weighing was
   *[other] { $count } weighings were
} sent twice and counted once.
LOG_INTAKE_TWICE = { $others ->
    [0] Two different intakes were sent for { DATETIME($date, dateStyle: "long") }, so neither counts
    [one] Several intakes were sent for { DATETIME($date, dateStyle: "long") } and one more day, so none of theirs count
   *[other] Several intakes were sent for { DATETIME($date, dateStyle: "long") } and { $others } more days, so none of theirs count
}: send one for the whole day.
LOG_INTAKE_KILOJOULES = { $count ->
    [one] One intake
   *[other] { $count } intakes
} from { DATETIME($date, dateStyle: "long") } on only { $count ->
    [one] fits
   *[other] fit
} you as kilojoules and { $count ->
    [one] is
   *[other] are
} left out: send kilocalories.
LOG_INTAKE_SET_ASIDE = The intake of { NUMBER($given_kcal, maximumFractionDigits: 0) } kcal on { DATETIME($date, dateStyle: "long") } is left out: is the decimal point right?
LOG_STEPS_TWICE = { $count ->
    [one] For one day ({ DATETIME($date, dateStyle: "long") }) two different numbers of steps were sent, so it is not read
   *[other] For { $count } days from { DATETIME($date, dateStyle: "long") } on two different numbers of steps were sent, so they are not read
}: send one a day.
LOG_STEPS_SET_ASIDE = { $count ->
    [one] The steps of { DATETIME($date, dateStyle: "long") } are
   *[other] The steps of { $count } days from { DATETIME($date, dateStyle: "long") } on are
} left out: too many for a day, or the counter was not carried.
LOG_GAP = There is no weight for { days } after { DATETIME($date, dateStyle: "long") }.
LOG_PARTIAL_INTAKE = { $count ->
    [one] One partly logged day counts
   *[other] { $count } partly logged days count
} as not logged.
LOG_INTAKE_NOTHING = { $count ->
    [one] One day with 0 kcal counts
   *[other] { $count } days with 0 kcal count
} as not logged.
LOG_INTAKE_MISSING = Of { days }, { $count ->
    [one] one has
   *[other] { $count } have
} no full food log; your usual intake stands in for it, less exactly.
LOG_NO_INTAKE = There is no food log to go by: the trend of your weight can be read, but how much you need is less sure.
LOG_UNDER_RESTING = Logged food is under what you use at rest: part not logged ({ NUMBER($unlogged_percent, maximumFractionDigits: 0) }%), equations that miss you ({ NUMBER($equation_percent, maximumFractionDigits: 0) }%), or illness ({ NUMBER($illness_percent, maximumFractionDigits: 0) }%; see a clinician).
TREND_TOO_EARLY = It is too early to tell: weigh and log for about { more-days }.
TREND_TOO_SPARSE = It is too early to tell, and { more-days } would not be enough: log what you eat as well.
TREND_OUTLIER = The weight of { DATETIME($date, dateStyle: "long") } is { NUMBER($off_kg, maximumFractionDigits: 1) } kg { $side ->
    [under] under
   *[over] over
} the days before it, so it counts less.
TREND_WATER_JUMP = On { DATETIME($date, dateStyle: "long") } your weight changed by { NUMBER($jump_kg, maximumFractionDigits: 1) } kg at once: water, which fades, unless the scale or time of day changed.
TREND_LOGGING_CHANGED = Since about { DATETIME($date, dateStyle: "long") } you seem to log a larger or smaller part of what you eat than before ({ NUMBER($percent, maximumFractionDigits: 0) }% sure).
SETTLE_WEIGH_FOOD_SPARED = Your weight and your log disagree. Please talk it through with a physician or dietitian.
SETTLE_WEIGH_ON_SPARED = Ten more days will tell: water without a cause fades, and tissue does not. Weigh yourself no more often for it.
TREND_STALE = Your last weighing was { days } ago.
LOG_GOES_PAST = Your log goes on to { DATETIME($date, dateStyle: "long") }, long after the { DATETIME($from_date, dateStyle: "long") } asked about: is one of the dates wrong?
KNOWN_LONG_AGO = We last heard of you on { DATETIME($date, dateStyle: "long") }: weigh yourself and log for two weeks, then ask again.
LOG_WEIGHT_COUNTS = Your profile says { NUMBER($profile_kg, maximumFractionDigits: 1) } kg, but your log last has { NUMBER($logged_kg, maximumFractionDigits: 1) } kg, which counts here. Please bring your profile up to date.
STATE_WEIGHT_APART = Your profile says { NUMBER($profile_kg, maximumFractionDigits: 1) } kg, but you were last known at { NUMBER($known_kg, maximumFractionDigits: 1) } kg, which counts here. Were those weights yours?
TREND_UNDER_LOGGED = Your log holds about { NUMBER($percent, maximumFractionDigits: 0) }% less than expected for your body: go by the amounts that your own log shows.
TREND_STEPS_FEWER = You walked about { NUMBER($steps, maximumFractionDigits: 0) } steps a day less than in the weeks before. Your body spends about { NUMBER($kcal, maximumFractionDigits: 0) } kcal a day less.
TREND_STEPS_MORE = You walked about { NUMBER($steps, maximumFractionDigits: 0) } steps a day more than in the weeks before. Your body spends about { NUMBER($kcal, maximumFractionDigits: 0) } kcal a day more.
TREND_STEPS_STEADY = Your steps held steady, at about { NUMBER($steps, maximumFractionDigits: 0) } a day: walking explains no change of your weight.

# A phase against its plan.
REVIEW_TOO_EARLY = It is too early to tell: the scale still shows water. { $goes_on ->
    [yes] Keep to the plan; weigh
   *[no] Weigh
} and log for about { more-days }.
REVIEW_FEW_WEIGHINGS = This phase has { $weighings ->
    [one] one weighing
   *[other] { $weighings } weighings
} so far, too few to judge by. { $goes_on ->
    [yes] Keep to the plan; weigh
   *[no] Weigh
} and log for about { more-days }.
REVIEW_NOT_WEIGHED = Your last weighing was { days } ago, too long to judge by. { $goes_on ->
    [yes] Keep to the plan; weigh
   *[no] Weigh
} and log for about { more-days }.
REVIEW_WITHIN_INTERVAL = Without water your weight has changed by { NUMBER($observed_kg, maximumFractionDigits: 1) } kg; the plan expects { NUMBER($lower_kg, maximumFractionDigits: 1) } to { NUMBER($upper_kg, maximumFractionDigits: 1) } kg by now.
REVIEW_NEAR_INTERVAL = Without water your weight has changed by { NUMBER($observed_kg, maximumFractionDigits: 1) } kg. The plan expects { NUMBER($lower_kg, maximumFractionDigits: 1) } to { NUMBER($upper_kg, maximumFractionDigits: 1) } kg by now: near enough to be chance.
REVIEW_OUTSIDE_INTERVAL = Without water your weight has changed by { NUMBER($observed_kg, maximumFractionDigits: 1) } kg. The plan expected { NUMBER($lower_kg, maximumFractionDigits: 1) } to { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: off the plan ({ NUMBER($probability_percent, maximumFractionDigits: 0) }% sure).
REVIEW_STILL_OUTSIDE_INTERVAL = Without water your weight has changed by { NUMBER($observed_kg, maximumFractionDigits: 1) } kg. The plan expected { NUMBER($lower_kg, maximumFractionDigits: 1) } to { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: still off, though less clearly.
REVIEW_CONTRADICTED = Scale and plan disagree: your weight changed by { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, the plan expects { NUMBER($planned_kg, maximumFractionDigits: 1) } kg. Log and plate differ, or it is water.
REVIEW_EVENT_WATER = Because of { event } about { NUMBER($water_kg, maximumFractionDigits: 1) } kg of the change in your weight is water{ $explains ->
    [yes] . That explains it.
   *[no] , but not all of it.
}
REVIEW_ATE_MORE = You logged { NUMBER($difference_kcal, maximumFractionDigits: 0) } kcal a day more than planned{ $goes_on ->
    [yes] : try to keep to the plan.
    [steadily] , week after week. If it is on certain days, plan those in: the other days make room.
   *[no] .
}
REVIEW_ATE_LESS = You logged { NUMBER($difference_kcal, maximumFractionDigits: 0) } kcal a day less than planned.
REVIEW_PLAN_STANDS = The plan stays as it is: a lower target is no help while more is eaten. Too hard? Ask for a gentler one.
REVIEW_EAT_THE_PLAN = The plan stays as it is: first eat what it tells. Is it too much? Say so, and plan anew.
REVIEW_KEPT_LATELY = In the last week you kept to the plan: go on like that, and it will show.
REVIEW_NO_INTAKE = No full day of food was logged in this phase. Log one whole week: only then can your intake be set right.
REVIEW_AS_TOLD = Hardly any food is logged, so only your weight speaks: as you eat now, a plan of about { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal would hold it.
REVIEW_NEEDS_LESS = By your log you ate as planned, yet maintenance looks like { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal, not { NUMBER($planned_kcal, maximumFractionDigits: 0) }. Some food is unlogged, or you need less.
REVIEW_NEEDS_MORE = By your log you ate as planned, yet maintenance looks like { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day, not the { NUMBER($planned_kcal, maximumFractionDigits: 0) } of the plan.
REVIEW_STEPPED = { $direction ->
    [less] Eat { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal a day less than planned
   *[more] Eat { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal a day more than planned
} from now on. It is one step; the next review says whether another is due.
REVIEW_CORRECTION_HELD = The target asks for another { NUMBER($missing_kcal, maximumFractionDigits: 0) } kcal less a day, which is not safe: { why }.
REVIEW_RAISED_BY_RAIL = Eat { NUMBER($correction_kcal, maximumFractionDigits: 0) } kcal a day more, to be safe: { why }.
REVIEW_MADE_UP = What was missing is back, so what was added to your food for it comes off again.
REVIEW_TOO_LATE = { $days ->
    [one] Only one day is left
   *[other] Only { $days } days are left
}, too little for a change to matter: eat as before.
REVIEW_LIMIT_REACHED = This mini-cut has run { days }, and { $limit_days } is the most: end it, target or not.
REVIEW_GETS_NOWHERE = In { weeks } this phase has taken off hardly any fat. More of the same will not change that: better end it now.
REVIEW_START_AGAIN = Eat at maintenance for four weeks. Start again when the weeks ahead leave room for it: a smaller deficit, every meal logged.
REVIEW_START_AGAIN_SETTLED = Eat at maintenance now. Before another fat loss, let a clinician or an eating-disorder service settle what you were unsure about.
REVIEW_PHASE_OVER = The phase is over.
REVIEW_TOO_LITTLE_TO_JUDGE = There was too little time, or too few weighings, to judge this phase.
REVIEW_NOT_SAFE = A deficit is no longer safe for you: end the phase.
REVIEW_NO_ROOM = No useful deficit is left under today's maintenance: { why }. End the phase.
REVIEW_STOPPED_BY_RAIL = The days to come would not be safe: end the phase.
REVIEW_SHORTEN = At this rate you reach the target around { DATETIME($date, dateStyle: "long") }, { days } before the planned end.
REVIEW_EXTEND = You need until about { DATETIME($date, dateStyle: "long") }, { days } more than planned.
REVIEW_LOST_FAST = Over the last two weeks you lost { NUMBER($percent, maximumFractionDigits: 1) }% of body mass a week, more than { NUMBER($limit, maximumFractionDigits: 1) }%.
REVIEW_EATEN_UNDER_RAIL = For two weeks you logged { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day. Eat at least { NUMBER($least_kcal, maximumFractionDigits: 0) }: { why }.
REVIEW_REBOUND = Back at maintenance the scale will rise by about { NUMBER($carried_kg, maximumFractionDigits: 1) } kg in two weeks as glycogen, water and food return. That is not fat.
REVIEW_PAST_RAIL = One step cannot make this plan safe: { why }. End it, and plan anew.
REVIEW_SHORTENED_BY_RAIL = The plan ends around { DATETIME($date, dateStyle: "long") }; later days would be unsafe: { why }.
REVIEW_GAIN_PAST_CEILING = As planned, this gain is faster than { NUMBER($limit_percent, maximumFractionDigits: 2) }% of body mass a week: end it, and plan a slower one.
REVIEW_GAIN_ENOUGH = This gain is enough for now: end it, hold at maintenance, and go on training.
REVIEW_GAIN_OVERRUN = In { weeks } you gained about { NUMBER($gained_kg, maximumFractionDigits: 1) } kg. More than { NUMBER($most_kg, maximumFractionDigits: 1) } kg in that time builds no more muscle: better end this gain now.
REVIEW_GAIN_ANEW = If you still want to gain, plan it anew from here, with an intake that you can keep to.
REVIEW_GAIN_SLOWED = A gain of more than { NUMBER($percent, maximumFractionDigits: 2) }% of body mass a week builds no more muscle: yours is slowed to stay under that.
REVIEW_DEFICIT_CAPPED = This phase has no room for less food: { why }.
REVIEW_UNEXPLAINED_LOSS = You lost { NUMBER($percent, maximumFractionDigits: 1) }% of body mass in { days }, unplanned. Unless you meant to, this is unexplained: see a clinician. { $raised ->
    [yes] Eat more, in steps.
   *[no] Eat as planned.
}
REVIEW_LOSS_BREASTFEEDING = You lost { NUMBER($percent, maximumFractionDigits: 1) }% of body mass in { days }. After a birth that is usual; otherwise see your midwife. Eat at least as planned.
REVIEW_AS_EATEN_SO_FAR = You logged { NUMBER($percent, maximumFractionDigits: 0) }% of what is planned: the coming days are forecast as you ate so far.
REVIEW_AS_PLANNED = By your log maintenance is lower, but the scale does not bear it out: the forecast keeps { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal a day.
REVIEW_IN_PREGNANCY = Weight gained in pregnancy is not judged by a plan: your midwife or obstetric team follows it.
REVIEW_EXPECTED_IN_PREGNANCY = Up to { NUMBER($expected_kg, maximumFractionDigits: 1) } kg of what you gained is expected in pregnancy and is no eating over plan. Your intake is not lowered.
REVIEW_LATER_ENTRIES = { $count ->
    [one] One entry is later than the phase: it counts
   *[other] { $count } entries are later than the phase: they count
} from now on, and not in this review.
REVIEW_WINDOW_SHORTER = Your first weighing is { days } after the start; until then the plan's own forecast counts.
REVIEW_WAITS = One reading of your log asks for a change, and the next has to agree. Keep to the plan until { DATETIME($date, dateStyle: "long") }.
REVIEW_CANNOT_WAIT = This change is no verdict on your plan: it keeps your food within safe limits, and that does not wait.
REVIEW_STEP_MEANWHILE = Two readings agree, so this step does not wait for your answer. Give it all the same: the next step depends on it.
REVIEW_MAY_STOP_EARLY = You are ahead of the plan: go on, and stop { days } early if you like.{ $enough ->
    [yes] {" "}There is no need to eat more.
   *[no] {""}
}
REVIEW_WAITS_FOR_EVENT = Because of { event } your weight says little until { DATETIME($date, dateStyle: "long") }. Keep weighing and logging; nothing changes before then.

# The one question that settles what scale and log say against each other, and what its answer means.
QUESTION_WITH_CLINICIAN = Your weight and your log disagree. Please talk it through with a physician or dietitian by { DATETIME($date, dateStyle: "long") }.
BODY_FAT_AT_MINIMUM_SPARED = Your body has no reserves to spare: lose no more, and please speak to a physician or dietitian.
TALK_TO_WHO_CARES = Please talk about your food and your weight with whoever looks after your health.
QUESTION_WATER_SPARED = Was any of these new within four weeks: { $creatine ->
    [yes] creatine,{" "}
   *[no] {""}
}{ $salt ->
    [yes] salty food,{" "}
   *[no] {""}
}{ $training ->
    [yes] training,{" "}
   *[no] {""}
}{ $illness ->
    [yes] illness,{" "}
   *[no] {""}
}{ $travel ->
    [yes] travel,{" "}
   *[no] {""}
}another weighing hour? Weigh as usual until { DATETIME($date, dateStyle: "long") }.
REVIEW_GOAL_TOO_FAR_SPARED = This phase does not do what it was meant to do: better end it now.
QUESTION_CYCLE_SPARED = When did your last two periods begin? If none, what is new: { $creatine ->
    [yes] creatine,{" "}
   *[no] {""}
}{ $salt ->
    [yes] salty food,{" "}
   *[no] {""}
}{ $training ->
    [yes] training,{" "}
   *[no] {""}
}weighing hour? Weigh as usual until { DATETIME($date, dateStyle: "long") }.
QUESTION_AGAIN = We asked this before and do not know yet. If you could not do it, tell us: we then look at your log together.
QUESTION_IF_MORE = If your log comes out higher than before, food was missing: the plan stays, and you keep logging that way.
QUESTION_IF_AS_LOGGED = If your log comes out as before and your weight keeps its course, you need a different amount: your intake moves by one step.
QUESTION_IF_WATER = If any of these began, it is water: nothing more changes, and we look again on { DATETIME($date, dateStyle: "long") }.
QUESTION_IF_NOT_WATER = If none of these began, water cannot explain your weight for long: then we look at what you eat.
QUESTION_FOUND_MORE = You found food that was missing in your log. The plan stays, and is judged by the days since { DATETIME($date, dateStyle: "long") }.
QUESTION_FOUND_AS_LOGGED = Your log is complete, so your body needs more or less than we thought.
QUESTION_FOUND_WATER = What changed on { DATETIME($date, dateStyle: "long") } explains your weight as water: nothing is changed until it has settled.

# Signs of a check-in.
CHECK_IN_MISSED_PERIOD = { $eats_less ->
    [yes] A missed period while eating less is a sign of too little energy: end this phase, eat at maintenance and see a physician.
   *[no] A missed period can be a sign of too little energy: eat at least what is planned, and see a physician.
}
CHECK_IN_LATE_PERIOD = Your period is late: eat { $raised ->
    [yes] { NUMBER($raise_kcal, maximumFractionDigits: 0) } kcal a day more
   *[no] at least what is planned
}, and tell a physician if it stays away.
CHECK_IN_WEAKER = Your strength in the main lifts has fallen twice in a row: { $eats_less ->
    [yes] finish this phase within the week.
   *[no] eat at least as planned; see a physician if it goes on.
}
CHECK_IN_MUCH_WEAKER = Your strength in the main lifts has fallen by a tenth, twice in a row: { $eats_less ->
    [yes] end this phase.
   *[no] eat at least as planned, and see a physician.
}
CHECK_IN_WORN = Hunger and sleep have been bad twice in a row: eat { $raised ->
    [yes] { NUMBER($raise_kcal, maximumFractionDigits: 0) } kcal a day more. It gets easier, and takes a little longer.
   *[no] at least what is planned, and see a physician if it goes on.
}
CHECK_IN_LOW_MOOD = Your mood has been at its lowest twice in a row: talk to someone you trust, and to a physician if it stays.

# A season.
SEASON_GAIN = You gain on a surplus of { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal a day; your intake is set anew { every-weeks }.
SEASON_BRIDGE = After a cut you hold, so that the water it took comes back before anything else begins.
SEASON_AFTER_CUT = Your last cut has only just ended, so maintenance comes first.
SEASON_HELD_AT_NEED = The least you should eat is already about your maintenance, so you hold without a surplus.
SEASON_LEVEL = This plan has no surplus: you eat at maintenance, and training does the building.
SEASON_NO_CUT = These weeks have no cut: you need none, or none is allowed in them.
SEASON_CUTS = { $cuts ->
    [one] One cut of { weeks } takes
   *[other] { $cuts } cuts of { weeks } in all take
} { NUMBER($share_percent, maximumFractionDigits: 0) }% of the season.
SEASON_REVIEWED = The ranges hold if you keep these phases and let your log set your intake anew. Without that they are far wider.
SEASON_BESIDE_DECISION = A season keeps to its strategy. A decision may start otherwise: it weighs only the next 26 weeks, by what you want.

# A briefing on a plan: headings end in _TITLE.
BRIEFING_PHASE_TITLE = { phase-name } from { weekday }, { DATETIME($date, dateStyle: "long") }
BRIEFING_WEEK_TITLE = Week { $week }, from { DATETIME($date, dateStyle: "long") }
BRIEFING_END_TITLE = { phase-name }: the end, { DATETIME($date, dateStyle: "long") }
BRIEFING_SIZES_TITLE = Faster or slower
BRIEFING_CAUTIONS_TITLE = Please note
BRIEFING_LEVERS_TITLE = If you move more
BRIEFING_NO_PLAN_TITLE = No safe plan
BRIEFING_EAT = Eat { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day, with { NUMBER($protein_g, maximumFractionDigits: 0) } grams of protein.
BRIEFING_DAYS = { $days ->
    [one] On one day a week
   *[other] On { $days } days a week
} eat { NUMBER($higher_kcal, maximumFractionDigits: 0) } kcal, on the others { NUMBER($lower_kcal, maximumFractionDigits: 0) }.
BRIEFING_EAT_WEEK = This week has { NUMBER($week_kcal, maximumFractionDigits: 0) } kcal, about { NUMBER($intake_kcal, maximumFractionDigits: 0) } a day.
BRIEFING_DAY = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal.
BRIEFING_DAY_TRAINING = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, with training.
BRIEFING_DAY_FLEXIBLE = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, your flexible day.
BRIEFING_DAY_ALCOHOL = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, your flexible day, with up to { NUMBER($alcohol_g, maximumFractionDigits: 0) } grams of alcohol in it.
BRIEFING_MEALS = Each day has { NUMBER($protein_g, maximumFractionDigits: 0) } grams of protein: about { NUMBER($meal_g, maximumFractionDigits: 0) } grams a meal.
BRIEFING_SCALE = By { weekday } the scale should show about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, between { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } and { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_SCALE_WATER = By { weekday } the scale should show about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, between { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } and { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }; { NUMBER($water_kg, maximumFractionDigits: 1) } kg of the drop is water.
BRIEFING_JUDGE_FROM = Do not judge by the scale before day { $day }.
BRIEFING_MOSTLY_WATER = By then nearly all that is gone is water, which will come back.
BRIEFING_STEADY = Your body stays much as it is; ups and downs are water.
BRIEFING_CHECKS = Look at the trend of your weight on { DATETIME($first_date, dateStyle: "long") } and on { DATETIME($second_date, dateStyle: "long") }.
BRIEFING_END_SCALE = The scale should show about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, between { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } and { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_END_SCALE_WATER = The scale should show about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, between { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } and { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }; { NUMBER($water_kg, maximumFractionDigits: 1) } kg of what is gone will come back as water.

## member, of leanness

DEFICIT_CHOSEN = You eat { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day less than you use now: { size-reason }.
FAT_FROM_BMI = Your body fat was estimated from height and weight, which overstates it in muscular people: measure it before you rely on it.
REFUSED_TARGET = A target of { NUMBER($fat_percent, maximumFractionDigits: 2) }% body fat is below the safe limit of { NUMBER($limit_percent, maximumFractionDigits: 1) }%: aim higher.
REFUSED_CUT_WITHOUT_READING = Your body fat decides when a season's cuts start, and it has to be measured: measure body fat first.
MEASURE_FIRST = Your body fat was not measured, so the deficit is at most { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day. To ask for more, measure body fat first.
RATIO_DECIDES = Here your own log decides: it holds about { NUMBER($percent, maximumFractionDigits: 0) }% of what you eat. Weigh all food for one week to know better.
WARNED_BODY_FAT = The phase ends at { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat, leaner than most people can hold well.
WARNED_TARGET = A target of { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat is leaner than most people can hold well.
BODY_FAT_AT_MINIMUM = { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat is as lean as is safe: the limit is about { NUMBER($limit_percent, maximumFractionDigits: 1) }%. Lose no more; speak to a physician or dietitian.
BODY_FAT_LOW = { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat is under { NUMBER($limit_percent, maximumFractionDigits: 1) }%, leaner than most people can hold well.
BMI_OVERSTATES_WITH_MUSCLE = Height and weight cannot tell muscle from fat: for athletes they give about { NUMBER($points, maximumFractionDigits: 1) } points too much body fat.
SIZE_OF_DEFICIT = { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day less: { weeks }, about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat, and at worst { NUMBER($lean_kg, maximumFractionDigits: 1) } kg of lean tissue.
SIZE_OF_GAIN = { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal a day more: { weeks }, about { NUMBER($lean_kg, maximumFractionDigits: 1) } kg of lean tissue and { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat.
DEFICIT_SOLVED = If you eat { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day less than you use now, you lose { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in { weeks }.
WEEKS_SOLVED = At this deficit it takes { weeks } to lose { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat.
FAT_SOLVED = Expect to lose about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in { weeks } at this deficit.
PLANNED_AS_KEPT = So far you kept to about { NUMBER($percent, maximumFractionDigits: 0) }% of planned deficits: expect { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in { weeks }, instead of { NUMBER($planned_kg, maximumFractionDigits: 1) } kg.
GAIN_RATE_EXPECTED = Expect to gain about { NUMBER($percent_per_month, maximumFractionDigits: 1) }% of body mass a month, { NUMBER($lean_share, maximumFractionDigits: 0) }% of it lean tissue.
RETURN_CHECKS = Without water you should gain { NUMBER($rate_kg, maximumFractionDigits: 2) } kg a week. Check on { DATETIME($first_date, dateStyle: "long") } and { DATETIME($second_date, dateStyle: "long") }: at twice that, halve the surplus.
CEILING_REACHED = The gain ends at { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat, which you are expected to reach around { DATETIME($date, dateStyle: "long") }.
CEILING_NOT_REACHED = The gain would end at { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat, which you are not expected to reach in these weeks.
END_AT_TARGET = Stop once the trend shows { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat lost, even before the last week.
HELD_AT_CEILING = Your body fat is already as high as this gain allows, so you hold. A fat-loss phase comes before a gain.
HELD_AFTER_CUT = After this fat loss your body fat is still as high as the gain allows, so you hold. Another fat loss comes first.
HELD_FROM_CEILING = From { DATETIME($date, dateStyle: "long") } you hold: your body fat is then as high as this gain allows. A fat-loss phase comes before the next.
GAIN_TARGET_PAST_CEILING = At about { NUMBER($weight_kg, maximumFractionDigits: 1) } kg your body fat is as high as this gain allows: aim for that weight, or lose fat first.
HIGHER_DAYS_LOSE_NO_MORE = Days with more food make a week easier to follow. You lose no extra fat by them.
LEVER_EAT_MORE = If you { lever }, you can eat { NUMBER($more_kcal, maximumFractionDigits: 0) } kcal more, { NUMBER($intake_kcal, maximumFractionDigits: 0) } a day, for about the same fat loss.
LEVER_LOSE_MORE = If you { lever } and eat as planned, you lose about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg more fat.
BREAKS_WHY = Breaks at maintenance make a long cut easier. You lose no extra fat by them, and the scale rises while they last.
CUT_NEEDS_READING = Body fat computed from height and weight never starts a cut. Measure it (skinfolds, girths, DXA), then ask again.
CUT_TOO_SMALL = Safe limits leave a cut of only { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day: { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat in { weeks }. No scale tells that from water.
DECISION_CUT_DONE = Your cut is done: you are at { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat, and { NUMBER($target_percent, maximumFractionDigits: 1) }% is enough. Now hold for { bridge-weeks }.
DECISION_CUT_UNDER_WAY = Your cut goes on: body fat is { NUMBER($fat_percent, maximumFractionDigits: 1) }%, and { NUMBER($target_percent, maximumFractionDigits: 1) }% is the aim.
DECISION_EVENT_READY = For your event { NUMBER($target_percent, maximumFractionDigits: 1) }% body fat is enough, and you are at { NUMBER($fat_percent, maximumFractionDigits: 1) }%: no cut is needed.
DECISION_EVENT_OUT_OF_REACH = No safe cut reaches { NUMBER($target_percent, maximumFractionDigits: 1) }% by the event. This one comes as near as is safe, about { NUMBER($end_percent, maximumFractionDigits: 1) }%.
DECISION_UNMEASURED = It is only computed from height and weight, but at your size hardly lower. Measure it (tape, skinfolds, DXA) to know where this ends.
DECISION_MEASURE_FIRST_BMI = Your body fat was only computed from height and weight. Measure it (skinfolds, girths, DXA), then ask again. Until then: { phase }.
DECISION_MEASURE_FIRST_ERROR = Your reading of { NUMBER($fat_percent, maximumFractionDigits: 1) }% may be { NUMBER($error_points, maximumFractionDigits: 1) } points off: too unsure for a cut. Repeat it with a better method. Until then: { phase }.
DECISION_WANTS_HOLD_OVER = You want to hold, so hold. To get as lean as you once chose, you would cut from { NUMBER($due_percent, maximumFractionDigits: 1) }% body fat on.
DECISION_LEAN_ENOUGH = At { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat you are lean enough: a cut would cost training time and bring nothing. { advice }
DECISION_NOT_YET = Not yet: at { NUMBER($fat_percent, maximumFractionDigits: 1) }% a mini-cut costs more muscle and dieting than it is worth over { weeks }. { advice }
DECISION_NONE_DUE = At { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat no cut is due yet. { advice }
DECISION_CUT_DUE = A cut is the better choice now: body fat is { NUMBER($fat_percent, maximumFractionDigits: 1) }%, and from { NUMBER($due_percent, maximumFractionDigits: 1) }% on a cut pays off.
DECISION_CUT_FOR_LEANNESS = You would like to be leaner, and that is reason enough: at { NUMBER($fat_percent, maximumFractionDigits: 1) }% a cut is the better choice for you.
DECISION_TRADE = Over { weeks } { best-phase } is worth about { NUMBER($ahead_kg, maximumFractionDigits: 1) } kg of lean tissue more to you than { other-phase }, with a probability of { NUMBER($probability_percent, maximumFractionDigits: 0) }%.
DECISION_NEAR_DUE = You are near { NUMBER($due_percent, maximumFractionDigits: 1) }% body fat, where a cut becomes due: a few weeks sooner or later make little difference.
DECISION_LONG_WAY = This cut does not go all the way: it ends after { weeks }, at about { NUMBER($end_percent, maximumFractionDigits: 1) }%. Then ask again.
DECISION_SHORTER_PAYS = To { NUMBER($target_percent, maximumFractionDigits: 1) }% in one cut is not worth it: end this one after { weeks }, at about { NUMBER($end_percent, maximumFractionDigits: 1) }%, and ask again.
DECISION_WITHIN_HEALTHY = { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat is healthy for your age and sex ({ NUMBER($lower_percent, maximumFractionDigits: 0) } to { NUMBER($upper_percent, maximumFractionDigits: 0) }%): a cut is about looks, not health.
DECISION_BELOW_HEALTHY = At { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat you have nothing to lose. If you are unhappy with your looks, talk to someone you trust or a clinician.
DECISION_ABOVE_HEALTHY = { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat is above the healthy range for your age and sex, which ends at { NUMBER($upper_percent, maximumFractionDigits: 0) }%.
PATTERN_COST = A slow gain over the same { weeks } would have built about { NUMBER($lean_kg, maximumFractionDigits: 1) } kg more lean tissue ({ NUMBER($lower_kg, maximumFractionDigits: 1) } to { NUMBER($upper_kg, maximumFractionDigits: 1) }). Slow down.
PATTERN_FAT = Going up and down left you with { NUMBER($fat_kg, maximumFractionDigits: 1) } kg less fat. A slow gain needs { $slow_weeks ->
    [one] one week
   *[other] about { $slow_weeks } weeks
} of dieting for that, not { $dieting_weeks }.
PATTERN_NO_FAT = Going up and down left you with { NUMBER($fat_kg, maximumFractionDigits: 1) } kg more fat than a slow gain, for all the dieting.
CHANGE_DUE_DATE = At this rate you reach { NUMBER($due_percent, maximumFractionDigits: 1) }% body fat, where a cut is due, around { DATETIME($date, dateStyle: "long") }.
CHANGE_DUE_BEYOND = A cut is due at { NUMBER($due_percent, maximumFractionDigits: 1) }% body fat, which is not expected within { weeks }.
CHANGE_DUE_BELOW = Under { NUMBER($due_percent, maximumFractionDigits: 1) }% body fat the answer would be: no cut yet.
CHANGE_READING_NEEDED = Only with a real body-fat measurement could a cut be considered.
CHANGE_MOTIVE = If you would like to be leaner, that is reason enough: a cut would be due from { NUMBER($due_percent, maximumFractionDigits: 1) }%.
CHANGE_MOTIVE_ON = If you would like to be leaner, that is reason enough: the cut could go on to { NUMBER($target_percent, maximumFractionDigits: 1) }%.
CHANGE_UNDERWEIGHT = Under a body mass index of { NUMBER($limit, maximumFractionDigits: 1) } no cut is considered, whatever your body fat.
CHANGE_CONTENT = If you are happy as lean as you are, a cut can wait until { NUMBER($due_percent, maximumFractionDigits: 1) }% body fat.
CHANGE_CONTENT_ENDS = If you are happy as lean as you are, the cut may end now.
CHANGE_CUT_ENDS = Your cut ends at { NUMBER($target_percent, maximumFractionDigits: 1) }% body fat, or on { DATETIME($date, dateStyle: "long") } at the latest.
CHANGE_TRAINING = With two or more resistance sessions a week a gain would be worth the fat that comes with it.
SETTLE_WEIGH_FOOD = This settles it: weigh and log all you eat and drink for seven days, weekend included.
WEIGH_DAILY = Weigh yourself daily under the same conditions, and judge by weekly averages.
PLAN_PROVISIONAL = This plan is provisional: it rests on equations. Weigh yourself and log your food daily, and from { DATETIME($date, dateStyle: "long") } your log takes over.
SETTLE_WEIGH_ON = This settles it: weigh yourself daily for ten more days. Water without a cause fades; fat and muscle do not.
QUESTION_WATER = Did any of these begin within four weeks: { $creatine ->
    [yes] creatine,{" "}
   *[no] {""}
}{ $salt ->
    [yes] salty food,{" "}
   *[no] {""}
}{ $training ->
    [yes] new training,{" "}
   *[no] {""}
}{ $illness ->
    [yes] illness,{" "}
   *[no] {""}
}{ $travel ->
    [yes] travel,{" "}
   *[no] {""}
}another weighing hour? Weigh daily until { DATETIME($date, dateStyle: "long") }.
QUESTION_CYCLE = When did your last two periods begin? If none, what is new: { $creatine ->
    [yes] creatine,{" "}
   *[no] {""}
}{ $salt ->
    [yes] salty food,{" "}
   *[no] {""}
}{ $training ->
    [yes] training,{" "}
   *[no] {""}
}weighing hour? Weigh daily until { DATETIME($date, dateStyle: "long") }.
REVIEW_PURPOSE_MET = You have lost about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat, and { NUMBER($target_kg, maximumFractionDigits: 1) } kg was the goal: end the phase.
REVIEW_CEILING_MET = Your body fat is about { NUMBER($fat_percent, maximumFractionDigits: 1) }%, and this gain ends at { NUMBER($ceiling_percent, maximumFractionDigits: 1) }%.
REVIEW_OUT_OF_REACH = As it goes now, expect { NUMBER($fat_kg, maximumFractionDigits: 1) } of { NUMBER($target_kg, maximumFractionDigits: 1) } kg of fat by the end of this phase.
REVIEW_GOAL_TOO_FAR = Even by { DATETIME($date, dateStyle: "long") }, its longest end, this phase takes off about { NUMBER($fat_kg, maximumFractionDigits: 1) } of { NUMBER($target_kg, maximumFractionDigits: 1) } kg of fat: better end it now.
QUESTION_WEIGH_FOOD = Weigh and log everything you eat and drink until { DATETIME($date, dateStyle: "long") }, weekend included, and weigh yourself every day.
QUESTION_OIL_AND_ALCOHOL = Until { DATETIME($date, dateStyle: "long") } weigh and log cooking oil, spreads, drinks, alcohol and small tastes too: they are what logs miss first.
SEASON_CUT = At { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat you eat { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day less, to { NUMBER($end_percent, maximumFractionDigits: 1) }% or for { weeks }, whichever comes first.
SEASON_CUT_FOR_WEEKS = At { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat you eat { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal a day less for { weeks }, to about { NUMBER($end_percent, maximumFractionDigits: 1) }%.
SEASON_HOLD = You hold: from { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat on this plan stops gaining, and no cut may start { shut }.
SEASON_HOLD_UNCUT = You hold: from { NUMBER($fat_percent, maximumFractionDigits: 1) }% body fat on this season stops gaining, and it has no cut. To gain on sooner, lose fat first.
OPTIMUM_BESIDE_DECISION = The best season counts lean tissue alone. A decision may start otherwise: it counts weeks of dieting and how lean you want to be.
OPTIMUM_LATE_IN_BAND = Being as lean as your band takes about this season or longer. You go at least { NUMBER($percent, maximumFractionDigits: 0) }% as far as the hardest cuts.
BRIEFING_FAT = In { weeks } expect to lose about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat, between { NUMBER($fat_lower_kg, maximumFractionDigits: 1) } and { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_FAT_UP_TO = In { weeks } expect to lose about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat. It may be as much as { NUMBER($fat_upper_kg, maximumFractionDigits: 1) } kg, or none.
BRIEFING_FAT_AND_WATER = By then about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat is gone; another { NUMBER($water_kg, maximumFractionDigits: 1) } kg is water that will come back.
BRIEFING_FAT_GONE = By then about { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat is gone.
BRIEFING_GAINED = By then you have gained about { NUMBER($lean_kg, maximumFractionDigits: 1) } kg of lean tissue and { NUMBER($fat_kg, maximumFractionDigits: 1) } kg of fat.

## coach

REFUSED_CLEARANCE_WITHOUT_WORDS = The clearance needs words: the name of who gave it, and why a deficit is acceptable.
WARNED_CLEARED = A deficit is planned on clearance given by { $given_by }. Reason given: { $reason }
MEASUREMENTS_DISAGREE = Body fat by { first-method } and by { second-method } differs by { NUMBER($difference_points, maximumFractionDigits: 1) } points, where their errors explain about { NUMBER($expected_points, maximumFractionDigits: 1) }. The interval was widened; repeating both shows which to trust.
REPEATS_SCATTER = Repeats by { repeated-method } scatter by { NUMBER($observed_points, maximumFractionDigits: 1) } points of body fat, where about { NUMBER($expected_points, maximumFractionDigits: 1) } is usual. The interval was widened.
METHOD_OUTSIDE_AGE_RANGE = The equation { $method } was published for { NUMBER($from_years, maximumFractionDigits: 0) } to { NUMBER($to_years, maximumFractionDigits: 0) } years of age; at { NUMBER($age_years, maximumFractionDigits: 0) } its error was taken { NUMBER($factor, maximumFractionDigits: 2) } times as large.
METHOD_UNDER_AGE_RANGE = The equation { $method } was published for { NUMBER($from_years, maximumFractionDigits: 0) } years of age and over; at { NUMBER($age_years, maximumFractionDigits: 0) } its error was taken { NUMBER($factor, maximumFractionDigits: 2) } times as large.
METHOD_OUTSIDE_BMI_RANGE = Body fat from BMI was published for a BMI of up to { NUMBER($to_kg_m2, maximumFractionDigits: 1) }; at { NUMBER($bmi_kg_m2, maximumFractionDigits: 1) } its error was taken { NUMBER($factor, maximumFractionDigits: 2) } times as large.
MEASUREMENT_ADDS_NOTHING = This adds nothing to the other measurements: it shares its error with a more exact one.
HEALTHY_RANGE_CONTINUED = The healthy range was published for { NUMBER($from_years, maximumFractionDigits: 0) } to { NUMBER($to_years, maximumFractionDigits: 0) } years of age; the nearest band is used.
EQUATION_NEEDS_BODY_FAT = Needs a measured body fat; shown here with an estimated one.
EQUATION_OTHER_AGE = Made for { NUMBER($from_years, maximumFractionDigits: 0) } to { NUMBER($to_years, maximumFractionDigits: 0) } years of age.
EQUATION_FOR_TRAINED = Made for people who train.
EQUATION_FOR_EXPERIENCED = Made for muscular athletes, beyond the first year of training.
EQUATION_FOR_UNTRAINED = Made for people who do not train.
EQUATION_SAME_AS = The same numbers as { $equation }, counted once.
RESTING_PREFERS_FAT_FREE_MASS_TRAINED = Equations on fat-free mass made for trained people were preferred, because body fat was measured.
RESTING_PREFERS_ATHLETE_WEIGHT = An equation on body mass made for athletes was preferred: body fat was not measured, and general equations run low for trained people.
RESTING_PREFERS_FAT_FREE_MASS = Equations on fat-free mass made for adults in general were preferred, because body fat was measured.
RESTING_PREFERS_GENERAL = Equations on body mass, height and age made for adults in general were preferred: body fat was not measured.
RESTING_AGE_EXTRAPOLATED = No preferred equation was made for this age (the nearest studied is { NUMBER($nearest_years, maximumFractionDigits: 0) } years); the interval is wider for it.
RESTING_BOTH_SEXES = The equations for both sexes were averaged, and their difference widens the interval.
RESTING_FALLS_WITH_AGE = From { NUMBER($from_years, maximumFractionDigits: 0) } years resting energy falls: { NUMBER($fall_percent, maximumFractionDigits: 1) }% was taken off what equations say that do not count age.
EER_FOR_ADULTS = These requirements hold from { NUMBER($from_years, maximumFractionDigits: 0) } years of age.
EER_BEYOND_CLASS = The activity lies beyond this class: its value counts { NUMBER($factor, maximumFractionDigits: 3) } times.
LOG_SORTED = The entries were out of order and have been sorted by day.
SEASON_PHYSIOLOGY = Lean gained counts lean tissue, without glycogen and water. Part comes from training in any phase, part from the surplus, whose lean share falls as it grows.
BRIEFING_MACROS = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal a day: protein { NUMBER($protein_g, maximumFractionDigits: 0) } g, carbohydrate { NUMBER($carbohydrate_g, maximumFractionDigits: 0) } g, fat { NUMBER($fat_g, maximumFractionDigits: 0) } g.
BRIEFING_BALANCE = Energy balance { NUMBER($first_kcal, maximumFractionDigits: 0) } kcal a day in the first week, { NUMBER($last_kcal, maximumFractionDigits: 0) } in the last.
LOG_COUNTED_BEFORE = { $count ->
    [one] One entry before { DATETIME($date, dateStyle: "long") } is
   *[other] { $count } entries before { DATETIME($date, dateStyle: "long") } are
} counted in the state already, and not again.

# Whom to look at first, and what to do.
ATTENTION_SAFETY = A sign or a guard rail ends this phase or asks for a professional.
ATTENTION_CONTRADICTED = Scale and log do not agree.
ATTENTION_OFF_PLAN = The phase goes { pace } than planned.
ATTENTION_RAISED = A guard rail or a check-in raised the intake.
ATTENTION_LOWERED = The review lowers the intake, though the phase is not off its plan.
ATTENTION_ENDING = The phase ends or its end moves.
ATTENTION_WAITING = Something is under way that moves weight; the verdict waits.
ATTENTION_NOT_WEIGHED = No weight for { days }: nobody can tell how the phase goes.
ATTENTION_UNDER_RAIL = Less is logged than a guard rail allows.
ATTENTION_SILENT = Nothing was logged for { days }.
ATTENTION_NONE = All goes as planned, or it is too early to tell.
ATTENTION_DO_SAFETY = Read the review with them today, and see that they see whom it names.
ATTENTION_DO_SETTLE = Ask what the review asks: it says what settles it, and until when.
ATTENTION_DO_SETTLE_AND_CHANGE = Agree on { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal a day { $direction ->
    [less] less
   *[more] more
}; then ask what the review asks, or what came of its last question.
ATTENTION_DO_CHASE = Ask what came of the last question: it has no answer yet.
ATTENTION_DO_CHANGE = Agree on { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal a day { $direction ->
    [less] less
   *[more] more
}.
ATTENTION_DO_LOOK = Look at the log with them; change nothing yet.
ATTENTION_DO_NEXT = Decide with them what comes next.
ATTENTION_DO_TELL_END = Tell them the new last day.
ATTENTION_DO_ASK = Ask how they are, and for a weight.
ATTENTION_DO_NOTHING = There is nothing to do.

## coach, of leanness

BRIEFING_SO_FAR = Since the start: fat { NUMBER($fat_kg, maximumFractionDigits: 1) } kg, lean tissue { NUMBER($lean_kg, maximumFractionDigits: 1) } kg, carried mass { NUMBER($carried_kg, maximumFractionDigits: 1) } kg. Energy balance { NUMBER($balance_kcal, maximumFractionDigits: 0) } kcal a day.
BRIEFING_CHANGE = Change: weight { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } to { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), fat { NUMBER($fat_kg, maximumFractionDigits: 1) } ({ NUMBER($fat_lower_kg, maximumFractionDigits: 1) } to { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }), lean tissue { NUMBER($lean_kg, maximumFractionDigits: 1) } ({ NUMBER($lean_lower_kg, maximumFractionDigits: 1) } to { NUMBER($lean_upper_kg, maximumFractionDigits: 1) }), carried mass { NUMBER($carried_kg, maximumFractionDigits: 1) } ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } to { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
BODY_FAT_METHODS_DISAGREE = Two readings of body fat do not agree: { NUMBER($first_percent, maximumFractionDigits: 0) }% by { first-method } on { DATETIME($first_date, dateStyle: "long") }, { NUMBER($second_percent, maximumFractionDigits: 0) }% by { second-method } on { DATETIME($second_date, dateStyle: "long") }. Both count by their errors; repeat the more exact one before it decides anything.

## developer

MEASURE_NOT_USED = The equation does not use { $fields }.
