from enum import StrEnum


class BatchOperation(StrEnum):
    DECIDE_PHASE = "decide_phase"
    ESTIMATE_BODY_COMPOSITION = "estimate_body_composition"
    ESTIMATE_MAINTENANCE = "estimate_maintenance"
    FORECAST_INTAKE = "forecast_intake"
    PLAN_PHASES = "plan_phases"
    READ_TREND = "read_trend"
    REVIEW_PHASE = "review_phase"

    def __str__(self) -> str:
        return str(self.value)
