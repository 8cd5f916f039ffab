"""Cautions that every answer carries."""

from .message import say, template

template("NOT_MEDICAL_ADVICE", "This is information, not medical advice. Speak to a physician or registered dietitian "
         "before changing your diet; local rules prevail.")  # fmt: skip
template("FAT_FROM_BMI", "Body fat was estimated from height and weight, which overstates it in muscular people: "
         "measure it before deciding to cut.")  # fmt: skip
template("ON_LOGGING_SCALE", "Maintenance is on the scale of your own log: if you log less than you eat, it is what to "
         "eat as you log it.")  # fmt: skip
template("TWO_SEXES", "Both sets of equations were used: the interval covers both, and the stricter limits apply.")
template("FROM_EQUATIONS", "Without a log the estimate rests on equations alone; four weeks of weights and intakes "
         "narrow it most.")  # fmt: skip

NOT_MEDICAL_ADVICE = say("NOT_MEDICAL_ADVICE")
FAT_FROM_BMI = say("FAT_FROM_BMI")
ON_LOGGING_SCALE = say("ON_LOGGING_SCALE")
TWO_SEXES = say("TWO_SEXES")
FROM_EQUATIONS = say("FROM_EQUATIONS")
