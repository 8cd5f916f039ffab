from enum import StrEnum


class Condition(StrEnum):
    ABSENT_PERIODS = "absent_periods"
    BARIATRIC_SURGERY = "bariatric_surgery"
    CANCER = "cancer"
    DIABETES_TREATED = "diabetes_treated"
    GALLSTONES = "gallstones"
    GOUT = "gout"
    HEART_DISEASE = "heart_disease"
    KIDNEY_DISEASE = "kidney_disease"
    LIVER_DISEASE = "liver_disease"
    LOW_TESTOSTERONE_SYMPTOMS = "low_testosterone_symptoms"
    PHENYLKETONURIA = "phenylketonuria"
    RECENT_SURGERY_OR_INJURY = "recent_surgery_or_injury"
    STRESS_FRACTURE = "stress_fracture"
    THYROID_UNCONTROLLED = "thyroid_uncontrolled"
    UNEXPLAINED_WEIGHT_LOSS = "unexplained_weight_loss"

    def __str__(self) -> str:
        return str(self.value)
