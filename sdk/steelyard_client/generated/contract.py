"""Generated from the contract by regenerate.py: do not edit."""

from typing import TYPE_CHECKING, Literal, NamedTuple, TypeAlias

if TYPE_CHECKING:
    from . import models

CONTRACT_VERSION = "1.0.0"


class Operation(NamedTuple):
    """One operation: where it is, the schema of its body, and whether it may be sent again."""

    method: str
    path: str
    request: str | None
    is_pure: bool


COMPARE_STRATEGIES = Operation(
    method="POST",
    path="/v1/seasons/comparison",
    request="ComparisonRequest",
    is_pure=True,
)
DECIDE_PHASE = Operation(
    method="POST", path="/v1/decisions", request="DecisionRequest", is_pure=True
)
DOCUMENT_OPTIMUM = Operation(
    method="POST",
    path="/v1/seasons/optimum/document",
    request="OptimumRequest",
    is_pure=True,
)
DOCUMENT_PLAN = Operation(
    method="POST", path="/v1/plans/document", request="PlanRequest", is_pure=True
)
DOCUMENT_SEASON = Operation(
    method="POST", path="/v1/seasons/document", request="SeasonRequest", is_pure=True
)
DRAW_COMPARISON = Operation(
    method="POST",
    path="/v1/seasons/comparison/picture",
    request="ComparisonRequest",
    is_pure=True,
)
DRAW_FORECAST = Operation(
    method="POST", path="/v1/forecasts/picture", request="ForecastRequest", is_pure=True
)
DRAW_OPTIMUM = Operation(
    method="POST",
    path="/v1/seasons/optimum/picture",
    request="OptimumRequest",
    is_pure=True,
)
DRAW_PLAN = Operation(
    method="POST", path="/v1/plans/picture", request="PlanRequest", is_pure=True
)
DRAW_SEASON = Operation(
    method="POST", path="/v1/seasons/picture", request="SeasonRequest", is_pure=True
)
DRAW_TREND = Operation(
    method="POST", path="/v1/trends/picture", request="TrendRequest", is_pure=True
)
ESTIMATE_BODY_COMPOSITION = Operation(
    method="POST",
    path="/v1/body-composition",
    request="BodyCompositionRequest",
    is_pure=True,
)
ESTIMATE_MAINTENANCE = Operation(
    method="POST", path="/v1/maintenance", request="MaintenanceRequest", is_pure=True
)
FORECAST_INTAKE = Operation(
    method="POST", path="/v1/forecasts", request="ForecastRequest", is_pure=True
)
LIST_MESSAGES = Operation(method="GET", path="/v1/messages", request=None, is_pure=True)
LIST_METHODS = Operation(method="GET", path="/v1/methods", request=None, is_pure=True)
OPTIMISE_SEASON = Operation(
    method="POST", path="/v1/seasons/optimum", request="OptimumRequest", is_pure=True
)
PLAN_PHASES = Operation(
    method="POST", path="/v1/plans", request="PlanRequest", is_pure=True
)
PLAN_SEASON = Operation(
    method="POST", path="/v1/seasons", request="SeasonRequest", is_pure=True
)
RANK_ROSTER = Operation(
    method="POST", path="/v1/rosters", request="RosterRequest", is_pure=True
)
READ_TREND = Operation(
    method="POST", path="/v1/trends", request="TrendRequest", is_pure=True
)
REVIEW_PHASE = Operation(
    method="POST", path="/v1/reviews", request="ReviewRequest", is_pure=True
)
RUN_BATCH = Operation(method="POST", path="/v1/batches", request=None, is_pure=True)

# What a line of a batch may ask for, and what it is answered with.
LineOperation = Literal[
    "estimate_body_composition",
    "decide_phase",
    "forecast_intake",
    "estimate_maintenance",
    "plan_phases",
    "review_phase",
    "read_trend",
]
LineResult: TypeAlias = "models.BodyCompositionResponse | models.DecisionResponse | models.ForecastResponse | models.MaintenanceResponse | models.PlanResponse | models.ReviewResponse | models.TrendResponse"
LINE_RESULTS = {
    "estimate_body_composition": "BodyCompositionResponse",
    "decide_phase": "DecisionResponse",
    "forecast_intake": "ForecastResponse",
    "estimate_maintenance": "MaintenanceResponse",
    "plan_phases": "PlanResponse",
    "review_phase": "ReviewResponse",
    "read_trend": "TrendResponse",
}  # names of models

# The fields of requests with their types; those that may be absent come last, with a mark.
REQUEST_FIELDS: dict[str, dict[str, str]] = {
    "BodyCompositionRequest": {
        "sex": "models.Sex | Literal['female', 'male', 'unspecified']",
        "age_years": "float",
        "height_cm": "float",
        "weight_kg": "float",
        "training_status": "models.TrainingStatus | Literal['advanced', 'intermediate', "
        "'novice', 'untrained']",
        "measurements": "Sequence[models.GirthMeasurement | GirthMeasurementDict | "
        "models.SkinfoldMeasurement | SkinfoldMeasurementDict | "
        "models.ReadingMeasurement | ReadingMeasurementDict | "
        "models.BmiMeasurement | BmiMeasurementDict]",
    },
    "ComparisonRequest": {
        "profile": "models.Profile | ProfileDict",
        "start_date": "datetime.date | str",
        "horizon_weeks": "int",
        "strategies": "Sequence[models.ReadyMadeStrategy | ReadyMadeStrategyDict | models.OwnStrategy "
        "| OwnStrategyDict]",
        "current_intake_kcal": "float | None?",
        "cut_history": "models.CutHistory | CutHistoryDict | None?",
        "limits": "models.SeasonLimits | SeasonLimitsDict?",
        "log": "models.Log | LogDict | None?",
        "maintenance": "models.KnownMaintenance | KnownMaintenanceDict | None?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
    },
    "DecisionRequest": {
        "profile": "models.Profile | ProfileDict",
        "as_of_date": "datetime.date | str",
        "band": "models.ChosenBand | ChosenBandDict | None?",
        "current_intake_kcal": "float | None?",
        "event_date": "datetime.date | str | None?",
        "event_fat_fraction": "float | None?",
        "feeling": "models.Feeling | Literal['content', 'unhappy', 'would_like_leaner']?",
        "goal": "models.Goal | Literal['event', 'hold', 'leanness', 'muscle']?",
        "log": "models.Log | LogDict | None?",
        "maintenance": "models.KnownMaintenance | KnownMaintenanceDict | None?",
        "phase_history": "Sequence[models.PastPhase | PastPhaseDict] | None?",
        "present_phase": "models.PresentPhase | PresentPhaseDict | None?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
    },
    "ForecastRequest": {
        "profile": "models.Profile | ProfileDict",
        "start_date": "datetime.date | str",
        "question": "models.PathQuestion | PathQuestionDict | models.IntakeQuestion | "
        "IntakeQuestionDict | models.DateQuestion | DateQuestionDict",
        "current_intake_kcal": "float | None?",
        "cut_history": "models.CutHistory | CutHistoryDict | None?",
        "log": "models.Log | LogDict | None?",
        "maintenance": "models.KnownMaintenance | KnownMaintenanceDict | None?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
        "uncertainty_sources": "Sequence[models.UncertaintySource | Literal['adaptation', 'adherence', "
        "'body_fat', 'carried_mass', 'daily_noise', 'maintenance', 'partition', "
        "'training_response']] | None?",
    },
    "MaintenanceRequest": {
        "profile": "models.Profile | ProfileDict",
        "as_of_date": "datetime.date | str | None?",
        "log": "models.Log | LogDict | None?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
    },
    "OptimumRequest": {
        "profile": "models.Profile | ProfileDict",
        "start_date": "datetime.date | str",
        "horizon_weeks": "int",
        "caution": "float?",
        "current_intake_kcal": "float | None?",
        "cut_history": "models.CutHistory | CutHistoryDict | None?",
        "limits": "models.SeasonLimits | SeasonLimitsDict?",
        "log": "models.Log | LogDict | None?",
        "maintenance": "models.KnownMaintenance | KnownMaintenanceDict | None?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
        "strategies_searched": "int?",
    },
    "PlanRequest": {
        "profile": "models.Profile | ProfileDict",
        "start_date": "datetime.date | str",
        "phase": "models.MiniCut | MiniCutDict | models.Cut | CutDict | models.Gain | GainDict | "
        "models.Hold | HoldDict",
        "current_intake_kcal": "float | None?",
        "cut_history": "models.CutHistory | CutHistoryDict | None?",
        "day_split": "models.DaySplit | DaySplitDict | None?",
        "include": "Sequence[models.PlanChoice | Literal['levers', 'sizes']]?",
        "log": "models.Log | LogDict | None?",
        "maintenance": "models.KnownMaintenance | KnownMaintenanceDict | None?",
        "pause": "models.Pause | PauseDict | None?",
        "return_to_gain": "models.ReturnToGain | ReturnToGainDict?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
        "uncertainty_sources": "Sequence[models.UncertaintySource | Literal['adaptation', 'adherence', "
        "'body_fat', 'carried_mass', 'daily_noise', 'maintenance', 'partition', "
        "'training_response']] | None?",
        "week": "models.WeekAsked | WeekAskedDict | None?",
    },
    "ReviewRequest": {
        "profile": "models.Profile | ProfileDict",
        "as_of_date": "datetime.date | str | None?",
        "is_finished": "bool?",
        "log": "models.Log | LogDict | None?",
        "phase": "models.PhaseFollowed | PhaseFollowedDict | None?",
        "screening": "models.Screening | ScreeningDict | None?",
        "settled": "models.SettledQuestion | SettledQuestionDict | None?",
        "state": "models.State | StateDict | None?",
    },
    "RosterRequest": {
        "as_of_date": "datetime.date | str",
        "members": "Sequence[models.RosterMember | RosterMemberDict]",
    },
    "SeasonRequest": {
        "profile": "models.Profile | ProfileDict",
        "start_date": "datetime.date | str",
        "horizon_weeks": "int",
        "strategy": "models.ReadyMadeStrategy | ReadyMadeStrategyDict | models.OwnStrategy | "
        "OwnStrategyDict",
        "current_intake_kcal": "float | None?",
        "cut_history": "models.CutHistory | CutHistoryDict | None?",
        "limits": "models.SeasonLimits | SeasonLimitsDict?",
        "log": "models.Log | LogDict | None?",
        "maintenance": "models.KnownMaintenance | KnownMaintenanceDict | None?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
    },
    "TrendRequest": {
        "profile": "models.Profile | ProfileDict",
        "aim": "models.Aim | Literal['gain', 'hold', 'lose'] | None?",
        "as_of_date": "datetime.date | str | None?",
        "include": "Sequence[Literal['implied_intake']]?",
        "log": "models.Log | LogDict | None?",
        "measurements": "Sequence[models.DatedMeasurement | DatedMeasurementDict]?",
        "screening": "models.Screening | ScreeningDict | None?",
        "state": "models.State | StateDict | None?",
        "usual_intake_kcal": "float | None?",
    },
}
