"""Cautions that every answer carries."""

from .message import say

NOT_MEDICAL_ADVICE = say("NOT_MEDICAL_ADVICE")
FAT_FROM_BMI = say("FAT_FROM_BMI")
ON_LOGGING_SCALE = say("ON_LOGGING_SCALE")
NO_AMOUNT_TO_EAT = say("ON_LOGGING_SCALE_URGENT")  # of who needs a doctor first
TWO_SEXES = say("TWO_SEXES")
FROM_EQUATIONS = say("FROM_EQUATIONS")
BY_WEIGHT = say("MAINTENANCE_BY_WEIGHT")
