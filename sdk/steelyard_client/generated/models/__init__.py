"""Generated from the contract by regenerate.py: do not edit."""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .account_as_read import AccountAsRead as AccountAsRead
    from .activity_by_level import ActivityByLevel as ActivityByLevel
    from .activity_by_week import ActivityByWeek as ActivityByWeek
    from .activity_level import ActivityLevel as ActivityLevel
    from .activity_lever import ActivityLever as ActivityLever
    from .activity_use import ActivityUse as ActivityUse
    from .adherence_figure import AdherenceFigure as AdherenceFigure
    from .aim import Aim as Aim
    from .attention import Attention as Attention
    from .batch_answer import BatchAnswer as BatchAnswer
    from .batch_counts import BatchCounts as BatchCounts
    from .batch_counts_problems_by_status import (
        BatchCountsProblemsByStatus as BatchCountsProblemsByStatus,
    )
    from .batch_line import BatchLine as BatchLine
    from .batch_operation import BatchOperation as BatchOperation
    from .batch_summary import BatchSummary as BatchSummary
    from .beat_chance import BeatChance as BeatChance
    from .blocked_dates import BlockedDates as BlockedDates
    from .bmi_measurement import BmiMeasurement as BmiMeasurement
    from .body_as_read import BodyAsRead as BodyAsRead
    from .body_composition_request import (
        BodyCompositionRequest as BodyCompositionRequest,
    )
    from .body_composition_response import (
        BodyCompositionResponse as BodyCompositionResponse,
    )
    from .body_fat import BodyFat as BodyFat
    from .body_fat_band import BodyFatBand as BodyFatBand
    from .body_fat_method import BodyFatMethod as BodyFatMethod
    from .briefing_reader import BriefingReader as BriefingReader
    from .broken_limit import BrokenLimit as BrokenLimit
    from .carbohydrate_preference import (
        CarbohydratePreference as CarbohydratePreference,
    )
    from .change_kind import ChangeKind as ChangeKind
    from .change_so_far import ChangeSoFar as ChangeSoFar
    from .change_split import ChangeSplit as ChangeSplit
    from .check_in import CheckIn as CheckIn
    from .chosen_band import ChosenBand as ChosenBand
    from .clinical_clearance import ClinicalClearance as ClinicalClearance
    from .compared_strategy import ComparedStrategy as ComparedStrategy
    from .comparison_request import ComparisonRequest as ComparisonRequest
    from .comparison_response import ComparisonResponse as ComparisonResponse
    from .composition_over_log import CompositionOverLog as CompositionOverLog
    from .condition import Condition as Condition
    from .contribution import Contribution as Contribution
    from .cut import Cut as Cut
    from .cut_history import CutHistory as CutHistory
    from .cycle_said import CycleSaid as CycleSaid
    from .cycling_pattern import CyclingPattern as CyclingPattern
    from .date_question import DateQuestion as DateQuestion
    from .dated_event import DatedEvent as DatedEvent
    from .dated_measurement import DatedMeasurement as DatedMeasurement
    from .day_kind import DayKind as DayKind
    from .day_kind_passed import DayKindPassed as DayKindPassed
    from .day_passed import DayPassed as DayPassed
    from .day_plan import DayPlan as DayPlan
    from .day_split import DaySplit as DaySplit
    from .decision_request import DecisionRequest as DecisionRequest
    from .decision_response import DecisionResponse as DecisionResponse
    from .density_conversion import DensityConversion as DensityConversion
    from .eaten_against_plan import EatenAgainstPlan as EatenAgainstPlan
    from .eating_disorder import EatingDisorder as EatingDisorder
    from .energy_figure import EnergyFigure as EnergyFigure
    from .equation_row import EquationRow as EquationRow
    from .event_kind import EventKind as EventKind
    from .explained_change import ExplainedChange as ExplainedChange
    from .explanation_row import ExplanationRow as ExplanationRow
    from .feeling import Feeling as Feeling
    from .field_problem import FieldProblem as FieldProblem
    from .field_problem_params import FieldProblemParams as FieldProblemParams
    from .finding import Finding as Finding
    from .first_weeks_after import FirstWeeksAfter as FirstWeeksAfter
    from .flexible_day_asked import FlexibleDayAsked as FlexibleDayAsked
    from .flexible_kind import FlexibleKind as FlexibleKind
    from .forecast_point import ForecastPoint as ForecastPoint
    from .forecast_request import ForecastRequest as ForecastRequest
    from .forecast_response import ForecastResponse as ForecastResponse
    from .forecast_week import ForecastWeek as ForecastWeek
    from .gain import Gain as Gain
    from .girth_measurement import GirthMeasurement as GirthMeasurement
    from .goal import Goal as Goal
    from .guard_rail import GuardRail as GuardRail
    from .guard_rail_params import GuardRailParams as GuardRailParams
    from .healthy_range import HealthyRange as HealthyRange
    from .hold import Hold as Hold
    from .intake_entry import IntakeEntry as IntakeEntry
    from .intake_question import IntakeQuestion as IntakeQuestion
    from .intake_step import IntakeStep as IntakeStep
    from .intake_stretch import IntakeStretch as IntakeStretch
    from .interval import Interval as Interval
    from .interval_columns import IntervalColumns as IntervalColumns
    from .interval_passed import IntervalPassed as IntervalPassed
    from .known_cuts import KnownCuts as KnownCuts
    from .known_maintenance import KnownMaintenance as KnownMaintenance
    from .known_reading import KnownReading as KnownReading
    from .language import Language as Language
    from .leanness_view import LeannessView as LeannessView
    from .log import Log as Log
    from .maintenance_basis import MaintenanceBasis as MaintenanceBasis
    from .maintenance_request import MaintenanceRequest as MaintenanceRequest
    from .maintenance_response import MaintenanceResponse as MaintenanceResponse
    from .mass_figure import MassFigure as MassFigure
    from .measurement_row import MeasurementRow as MeasurementRow
    from .medicine import Medicine as Medicine
    from .message_catalogue import MessageCatalogue as MessageCatalogue
    from .message_code import MessageCode as MessageCode
    from .method_catalogue import MethodCatalogue as MethodCatalogue
    from .method_entry import MethodEntry as MethodEntry
    from .method_source import MethodSource as MethodSource
    from .mini_cut import MiniCut as MiniCut
    from .nearest import Nearest as Nearest
    from .nearest_target import NearestTarget as NearestTarget
    from .next_phase import NextPhase as NextPhase
    from .note import Note as Note
    from .note_params import NoteParams as NoteParams
    from .optimum_request import OptimumRequest as OptimumRequest
    from .optimum_response import OptimumResponse as OptimumResponse
    from .other_season import OtherSeason as OtherSeason
    from .outcome_intervals import OutcomeIntervals as OutcomeIntervals
    from .own_strategy import OwnStrategy as OwnStrategy
    from .pace import Pace as Pace
    from .past_phase import PastPhase as PastPhase
    from .path_question import PathQuestion as PathQuestion
    from .pause import Pause as Pause
    from .pause_reason import PauseReason as PauseReason
    from .phase import Phase as Phase
    from .phase_alternative import PhaseAlternative as PhaseAlternative
    from .phase_change import PhaseChange as PhaseChange
    from .phase_followed import PhaseFollowed as PhaseFollowed
    from .phase_kind import PhaseKind as PhaseKind
    from .phase_size import PhaseSize as PhaseSize
    from .phase_totals import PhaseTotals as PhaseTotals
    from .picture_width import PictureWidth as PictureWidth
    from .plan_choice import PlanChoice as PlanChoice
    from .plan_fragment import PlanFragment as PlanFragment
    from .plan_request import PlanRequest as PlanRequest
    from .plan_response import PlanResponse as PlanResponse
    from .plan_week import PlanWeek as PlanWeek
    from .point_passed import PointPassed as PointPassed
    from .present_phase import PresentPhase as PresentPhase
    from .problem import Problem as Problem
    from .profile import Profile as Profile
    from .question_asked import QuestionAsked as QuestionAsked
    from .ratio_figure import RatioFigure as RatioFigure
    from .read_so_far import ReadSoFar as ReadSoFar
    from .reading_measurement import ReadingMeasurement as ReadingMeasurement
    from .ready_made import ReadyMade as ReadyMade
    from .ready_made_strategy import ReadyMadeStrategy as ReadyMadeStrategy
    from .refused_strategy import RefusedStrategy as RefusedStrategy
    from .refused_strategy_params import RefusedStrategyParams as RefusedStrategyParams
    from .return_to_gain import ReturnToGain as ReturnToGain
    from .review_request import ReviewRequest as ReviewRequest
    from .review_response import ReviewResponse as ReviewResponse
    from .reviewed_week import ReviewedWeek as ReviewedWeek
    from .roster_member import RosterMember as RosterMember
    from .roster_place import RosterPlace as RosterPlace
    from .roster_request import RosterRequest as RosterRequest
    from .roster_response import RosterResponse as RosterResponse
    from .rule_of_thumb import RuleOfThumb as RuleOfThumb
    from .said import Said as Said
    from .score_parts import ScoreParts as ScoreParts
    from .screening import Screening as Screening
    from .search_size import SearchSize as SearchSize
    from .season_event import SeasonEvent as SeasonEvent
    from .season_limits import SeasonLimits as SeasonLimits
    from .season_outcome import SeasonOutcome as SeasonOutcome
    from .season_phase import SeasonPhase as SeasonPhase
    from .season_plan import SeasonPlan as SeasonPlan
    from .season_request import SeasonRequest as SeasonRequest
    from .season_response import SeasonResponse as SeasonResponse
    from .season_start import SeasonStart as SeasonStart
    from .season_totals import SeasonTotals as SeasonTotals
    from .season_week import SeasonWeek as SeasonWeek
    from .settled_question import SettledQuestion as SettledQuestion
    from .settling_question import SettlingQuestion as SettlingQuestion
    from .settling_test import SettlingTest as SettlingTest
    from .sex import Sex as Sex
    from .skinfold_measurement import SkinfoldMeasurement as SkinfoldMeasurement
    from .skinfold_method import SkinfoldMethod as SkinfoldMethod
    from .source_effect import SourceEffect as SourceEffect
    from .start_body import StartBody as StartBody
    from .state import State as State
    from .steered_figure import SteeredFigure as SteeredFigure
    from .steps_as_read import StepsAsRead as StepsAsRead
    from .steps_entry import StepsEntry as StepsEntry
    from .steps_lately import StepsLately as StepsLately
    from .strategy_numbers import StrategyNumbers as StrategyNumbers
    from .strength_said import StrengthSaid as StrengthSaid
    from .suggested_cut import SuggestedCut as SuggestedCut
    from .suggested_gain import SuggestedGain as SuggestedGain
    from .suggested_hold import SuggestedHold as SuggestedHold
    from .suggested_mini_cut import SuggestedMiniCut as SuggestedMiniCut
    from .suggested_return import SuggestedReturn as SuggestedReturn
    from .target import Target as Target
    from .target_quantity import TargetQuantity as TargetQuantity
    from .theme import Theme as Theme
    from .training import Training as Training
    from .training_day import TrainingDay as TrainingDay
    from .training_kind import TrainingKind as TrainingKind
    from .training_session import TrainingSession as TrainingSession
    from .training_status import TrainingStatus as TrainingStatus
    from .trend_days import TrendDays as TrendDays
    from .trend_request import TrendRequest as TrendRequest
    from .trend_response import TrendResponse as TrendResponse
    from .uncertainty_source import UncertaintySource as UncertaintySource
    from .vega_lite_picture import VegaLitePicture as VegaLitePicture
    from .verdict_probabilities import VerdictProbabilities as VerdictProbabilities
    from .week_asked import WeekAsked as WeekAsked
    from .week_followed import WeekFollowed as WeekFollowed
    from .weekday import Weekday as Weekday
    from .weight_entry import WeightEntry as WeightEntry

_MODULES = {
    "AccountAsRead": "account_as_read",
    "ActivityByLevel": "activity_by_level",
    "ActivityByWeek": "activity_by_week",
    "ActivityLevel": "activity_level",
    "ActivityLever": "activity_lever",
    "ActivityUse": "activity_use",
    "AdherenceFigure": "adherence_figure",
    "Aim": "aim",
    "Attention": "attention",
    "BatchAnswer": "batch_answer",
    "BatchCounts": "batch_counts",
    "BatchCountsProblemsByStatus": "batch_counts_problems_by_status",
    "BatchLine": "batch_line",
    "BatchOperation": "batch_operation",
    "BatchSummary": "batch_summary",
    "BeatChance": "beat_chance",
    "BlockedDates": "blocked_dates",
    "BmiMeasurement": "bmi_measurement",
    "BodyAsRead": "body_as_read",
    "BodyCompositionRequest": "body_composition_request",
    "BodyCompositionResponse": "body_composition_response",
    "BodyFat": "body_fat",
    "BodyFatBand": "body_fat_band",
    "BodyFatMethod": "body_fat_method",
    "BriefingReader": "briefing_reader",
    "BrokenLimit": "broken_limit",
    "CarbohydratePreference": "carbohydrate_preference",
    "ChangeKind": "change_kind",
    "ChangeSoFar": "change_so_far",
    "ChangeSplit": "change_split",
    "CheckIn": "check_in",
    "ChosenBand": "chosen_band",
    "ClinicalClearance": "clinical_clearance",
    "ComparedStrategy": "compared_strategy",
    "ComparisonRequest": "comparison_request",
    "ComparisonResponse": "comparison_response",
    "CompositionOverLog": "composition_over_log",
    "Condition": "condition",
    "Contribution": "contribution",
    "Cut": "cut",
    "CutHistory": "cut_history",
    "CycleSaid": "cycle_said",
    "CyclingPattern": "cycling_pattern",
    "DateQuestion": "date_question",
    "DatedEvent": "dated_event",
    "DatedMeasurement": "dated_measurement",
    "DayKind": "day_kind",
    "DayKindPassed": "day_kind_passed",
    "DayPassed": "day_passed",
    "DayPlan": "day_plan",
    "DaySplit": "day_split",
    "DecisionRequest": "decision_request",
    "DecisionResponse": "decision_response",
    "DensityConversion": "density_conversion",
    "EatenAgainstPlan": "eaten_against_plan",
    "EatingDisorder": "eating_disorder",
    "EnergyFigure": "energy_figure",
    "EquationRow": "equation_row",
    "EventKind": "event_kind",
    "ExplainedChange": "explained_change",
    "ExplanationRow": "explanation_row",
    "Feeling": "feeling",
    "FieldProblem": "field_problem",
    "FieldProblemParams": "field_problem_params",
    "Finding": "finding",
    "FirstWeeksAfter": "first_weeks_after",
    "FlexibleDayAsked": "flexible_day_asked",
    "FlexibleKind": "flexible_kind",
    "ForecastPoint": "forecast_point",
    "ForecastRequest": "forecast_request",
    "ForecastResponse": "forecast_response",
    "ForecastWeek": "forecast_week",
    "Gain": "gain",
    "GirthMeasurement": "girth_measurement",
    "Goal": "goal",
    "GuardRail": "guard_rail",
    "GuardRailParams": "guard_rail_params",
    "HealthyRange": "healthy_range",
    "Hold": "hold",
    "IntakeEntry": "intake_entry",
    "IntakeQuestion": "intake_question",
    "IntakeStep": "intake_step",
    "IntakeStretch": "intake_stretch",
    "Interval": "interval",
    "IntervalColumns": "interval_columns",
    "IntervalPassed": "interval_passed",
    "KnownCuts": "known_cuts",
    "KnownMaintenance": "known_maintenance",
    "KnownReading": "known_reading",
    "Language": "language",
    "LeannessView": "leanness_view",
    "Log": "log",
    "MaintenanceBasis": "maintenance_basis",
    "MaintenanceRequest": "maintenance_request",
    "MaintenanceResponse": "maintenance_response",
    "MassFigure": "mass_figure",
    "MeasurementRow": "measurement_row",
    "Medicine": "medicine",
    "MessageCatalogue": "message_catalogue",
    "MessageCode": "message_code",
    "MethodCatalogue": "method_catalogue",
    "MethodEntry": "method_entry",
    "MethodSource": "method_source",
    "MiniCut": "mini_cut",
    "Nearest": "nearest",
    "NearestTarget": "nearest_target",
    "NextPhase": "next_phase",
    "Note": "note",
    "NoteParams": "note_params",
    "OptimumRequest": "optimum_request",
    "OptimumResponse": "optimum_response",
    "OtherSeason": "other_season",
    "OutcomeIntervals": "outcome_intervals",
    "OwnStrategy": "own_strategy",
    "Pace": "pace",
    "PastPhase": "past_phase",
    "PathQuestion": "path_question",
    "Pause": "pause",
    "PauseReason": "pause_reason",
    "Phase": "phase",
    "PhaseAlternative": "phase_alternative",
    "PhaseChange": "phase_change",
    "PhaseFollowed": "phase_followed",
    "PhaseKind": "phase_kind",
    "PhaseSize": "phase_size",
    "PhaseTotals": "phase_totals",
    "PictureWidth": "picture_width",
    "PlanChoice": "plan_choice",
    "PlanFragment": "plan_fragment",
    "PlanRequest": "plan_request",
    "PlanResponse": "plan_response",
    "PlanWeek": "plan_week",
    "PointPassed": "point_passed",
    "PresentPhase": "present_phase",
    "Problem": "problem",
    "Profile": "profile",
    "QuestionAsked": "question_asked",
    "RatioFigure": "ratio_figure",
    "ReadSoFar": "read_so_far",
    "ReadingMeasurement": "reading_measurement",
    "ReadyMade": "ready_made",
    "ReadyMadeStrategy": "ready_made_strategy",
    "RefusedStrategy": "refused_strategy",
    "RefusedStrategyParams": "refused_strategy_params",
    "ReturnToGain": "return_to_gain",
    "ReviewRequest": "review_request",
    "ReviewResponse": "review_response",
    "ReviewedWeek": "reviewed_week",
    "RosterMember": "roster_member",
    "RosterPlace": "roster_place",
    "RosterRequest": "roster_request",
    "RosterResponse": "roster_response",
    "RuleOfThumb": "rule_of_thumb",
    "Said": "said",
    "ScoreParts": "score_parts",
    "Screening": "screening",
    "SearchSize": "search_size",
    "SeasonEvent": "season_event",
    "SeasonLimits": "season_limits",
    "SeasonOutcome": "season_outcome",
    "SeasonPhase": "season_phase",
    "SeasonPlan": "season_plan",
    "SeasonRequest": "season_request",
    "SeasonResponse": "season_response",
    "SeasonStart": "season_start",
    "SeasonTotals": "season_totals",
    "SeasonWeek": "season_week",
    "SettledQuestion": "settled_question",
    "SettlingQuestion": "settling_question",
    "SettlingTest": "settling_test",
    "Sex": "sex",
    "SkinfoldMeasurement": "skinfold_measurement",
    "SkinfoldMethod": "skinfold_method",
    "SourceEffect": "source_effect",
    "StartBody": "start_body",
    "State": "state",
    "SteeredFigure": "steered_figure",
    "StepsAsRead": "steps_as_read",
    "StepsEntry": "steps_entry",
    "StepsLately": "steps_lately",
    "StrategyNumbers": "strategy_numbers",
    "StrengthSaid": "strength_said",
    "SuggestedCut": "suggested_cut",
    "SuggestedGain": "suggested_gain",
    "SuggestedHold": "suggested_hold",
    "SuggestedMiniCut": "suggested_mini_cut",
    "SuggestedReturn": "suggested_return",
    "Target": "target",
    "TargetQuantity": "target_quantity",
    "Theme": "theme",
    "Training": "training",
    "TrainingDay": "training_day",
    "TrainingKind": "training_kind",
    "TrainingSession": "training_session",
    "TrainingStatus": "training_status",
    "TrendDays": "trend_days",
    "TrendRequest": "trend_request",
    "TrendResponse": "trend_response",
    "UncertaintySource": "uncertainty_source",
    "VegaLitePicture": "vega_lite_picture",
    "VerdictProbabilities": "verdict_probabilities",
    "WeekAsked": "week_asked",
    "WeekFollowed": "week_followed",
    "Weekday": "weekday",
    "WeightEntry": "weight_entry",
}
__all__ = [
    "AccountAsRead",
    "ActivityByLevel",
    "ActivityByWeek",
    "ActivityLevel",
    "ActivityLever",
    "ActivityUse",
    "AdherenceFigure",
    "Aim",
    "Attention",
    "BatchAnswer",
    "BatchCounts",
    "BatchCountsProblemsByStatus",
    "BatchLine",
    "BatchOperation",
    "BatchSummary",
    "BeatChance",
    "BlockedDates",
    "BmiMeasurement",
    "BodyAsRead",
    "BodyCompositionRequest",
    "BodyCompositionResponse",
    "BodyFat",
    "BodyFatBand",
    "BodyFatMethod",
    "BriefingReader",
    "BrokenLimit",
    "CarbohydratePreference",
    "ChangeKind",
    "ChangeSoFar",
    "ChangeSplit",
    "CheckIn",
    "ChosenBand",
    "ClinicalClearance",
    "ComparedStrategy",
    "ComparisonRequest",
    "ComparisonResponse",
    "CompositionOverLog",
    "Condition",
    "Contribution",
    "Cut",
    "CutHistory",
    "CycleSaid",
    "CyclingPattern",
    "DateQuestion",
    "DatedEvent",
    "DatedMeasurement",
    "DayKind",
    "DayKindPassed",
    "DayPassed",
    "DayPlan",
    "DaySplit",
    "DecisionRequest",
    "DecisionResponse",
    "DensityConversion",
    "EatenAgainstPlan",
    "EatingDisorder",
    "EnergyFigure",
    "EquationRow",
    "EventKind",
    "ExplainedChange",
    "ExplanationRow",
    "Feeling",
    "FieldProblem",
    "FieldProblemParams",
    "Finding",
    "FirstWeeksAfter",
    "FlexibleDayAsked",
    "FlexibleKind",
    "ForecastPoint",
    "ForecastRequest",
    "ForecastResponse",
    "ForecastWeek",
    "Gain",
    "GirthMeasurement",
    "Goal",
    "GuardRail",
    "GuardRailParams",
    "HealthyRange",
    "Hold",
    "IntakeEntry",
    "IntakeQuestion",
    "IntakeStep",
    "IntakeStretch",
    "Interval",
    "IntervalColumns",
    "IntervalPassed",
    "KnownCuts",
    "KnownMaintenance",
    "KnownReading",
    "Language",
    "LeannessView",
    "Log",
    "MaintenanceBasis",
    "MaintenanceRequest",
    "MaintenanceResponse",
    "MassFigure",
    "MeasurementRow",
    "Medicine",
    "MessageCatalogue",
    "MessageCode",
    "MethodCatalogue",
    "MethodEntry",
    "MethodSource",
    "MiniCut",
    "Nearest",
    "NearestTarget",
    "NextPhase",
    "Note",
    "NoteParams",
    "OptimumRequest",
    "OptimumResponse",
    "OtherSeason",
    "OutcomeIntervals",
    "OwnStrategy",
    "Pace",
    "PastPhase",
    "PathQuestion",
    "Pause",
    "PauseReason",
    "Phase",
    "PhaseAlternative",
    "PhaseChange",
    "PhaseFollowed",
    "PhaseKind",
    "PhaseSize",
    "PhaseTotals",
    "PictureWidth",
    "PlanChoice",
    "PlanFragment",
    "PlanRequest",
    "PlanResponse",
    "PlanWeek",
    "PointPassed",
    "PresentPhase",
    "Problem",
    "Profile",
    "QuestionAsked",
    "RatioFigure",
    "ReadSoFar",
    "ReadingMeasurement",
    "ReadyMade",
    "ReadyMadeStrategy",
    "RefusedStrategy",
    "RefusedStrategyParams",
    "ReturnToGain",
    "ReviewRequest",
    "ReviewResponse",
    "ReviewedWeek",
    "RosterMember",
    "RosterPlace",
    "RosterRequest",
    "RosterResponse",
    "RuleOfThumb",
    "Said",
    "ScoreParts",
    "Screening",
    "SearchSize",
    "SeasonEvent",
    "SeasonLimits",
    "SeasonOutcome",
    "SeasonPhase",
    "SeasonPlan",
    "SeasonRequest",
    "SeasonResponse",
    "SeasonStart",
    "SeasonTotals",
    "SeasonWeek",
    "SettledQuestion",
    "SettlingQuestion",
    "SettlingTest",
    "Sex",
    "SkinfoldMeasurement",
    "SkinfoldMethod",
    "SourceEffect",
    "StartBody",
    "State",
    "SteeredFigure",
    "StepsAsRead",
    "StepsEntry",
    "StepsLately",
    "StrategyNumbers",
    "StrengthSaid",
    "SuggestedCut",
    "SuggestedGain",
    "SuggestedHold",
    "SuggestedMiniCut",
    "SuggestedReturn",
    "Target",
    "TargetQuantity",
    "Theme",
    "Training",
    "TrainingDay",
    "TrainingKind",
    "TrainingSession",
    "TrainingStatus",
    "TrendDays",
    "TrendRequest",
    "TrendResponse",
    "UncertaintySource",
    "VegaLitePicture",
    "VerdictProbabilities",
    "WeekAsked",
    "WeekFollowed",
    "Weekday",
    "WeightEntry",
]


def __getattr__(name: str) -> Any:
    if name not in _MODULES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = globals()[name] = getattr(
        import_module(f".{_MODULES[name]}", __name__), name
    )
    return found


def __dir__() -> list[str]:
    return __all__
