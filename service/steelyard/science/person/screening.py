"""Safety questions asked before any deficit. Unknown is never clear.

The list is after the IOC consensus on relative energy deficiency (Mountjoy 2023), the joint position stand on
nutrition and athletic performance (Thomas 2016), the AHA/ACC/TOS guideline (Jensen 2014) and the SCOFF screen
(Morgan 1999). It informs; it does not diagnose.
"""

import re
from enum import StrEnum

import msgspec

# A word: letters of any script.
_LETTERS = re.compile(r"[^\W\d_]{2,}")


class EatingDisorder(StrEnum):
    """Eating disorder, now or before."""

    NONE = "none"
    UNSURE = "unsure"
    PAST = "past"
    CURRENT = "current"


class Condition(StrEnum):
    """Conditions that need a clinician before a deficit."""

    DIABETES_TREATED = "diabetes_treated"
    KIDNEY_DISEASE = "kidney_disease"
    LIVER_DISEASE = "liver_disease"
    HEART_DISEASE = "heart_disease"
    THYROID_UNCONTROLLED = "thyroid_uncontrolled"
    GOUT = "gout"
    GALLSTONES = "gallstones"
    BARIATRIC_SURGERY = "bariatric_surgery"
    CANCER = "cancer"
    UNEXPLAINED_WEIGHT_LOSS = "unexplained_weight_loss"
    ABSENT_PERIODS = "absent_periods"
    LOW_TESTOSTERONE_SYMPTOMS = "low_testosterone_symptoms"
    STRESS_FRACTURE = "stress_fracture"
    RECENT_SURGERY_OR_INJURY = "recent_surgery_or_injury"
    PHENYLKETONURIA = "phenylketonuria"


class Medicine(StrEnum):
    """Medicines that need a clinician before a deficit."""

    INSULIN_OR_SECRETAGOGUE = "insulin_or_secretagogue"
    SGLT2_INHIBITOR = "sglt2_inhibitor"
    GLP1_AGONIST = "glp1_agonist"
    DIURETIC = "diuretic"
    LITHIUM = "lithium"
    WARFARIN = "warfarin"


class Clearance(msgspec.Struct, frozen=True, kw_only=True):
    """A supervising professional's clearance: their role and their reason."""

    given_by: str
    reason: str

    @property
    def is_in_words(self) -> bool:
        """Whether it names somebody and gives a reason; blanks and signs clear nothing."""
        return len(_LETTERS.findall(self.given_by)) > 0 and len(_LETTERS.findall(self.reason)) > 1


class Screening(msgspec.Struct, frozen=True, kw_only=True):
    """The answers."""

    is_pregnant: bool
    is_breastfeeding: bool
    eating_disorder: EatingDisorder
    conditions: tuple[Condition, ...] = ()
    medicines: tuple[Medicine, ...] = ()
    clearance: Clearance | None = None
