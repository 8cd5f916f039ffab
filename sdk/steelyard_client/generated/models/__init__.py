"""Contains all the data models used in inputs/outputs"""

from .activity_by_level import ActivityByLevel
from .activity_by_week import ActivityByWeek
from .activity_level import ActivityLevel
from .aim import Aim
from .batch_answer import BatchAnswer
from .batch_counts import BatchCounts
from .batch_counts_problems_by_status import BatchCountsProblemsByStatus
from .batch_line import BatchLine
from .batch_operation import BatchOperation
from .batch_summary import BatchSummary
from .beat_chance import BeatChance
from .blocked_dates import BlockedDates
from .bmi_measurement import BmiMeasurement
from .body_composition_request import BodyCompositionRequest
from .body_composition_response import BodyCompositionResponse
from .body_fat import BodyFat
from .body_fat_band import BodyFatBand
from .body_fat_method import BodyFatMethod
from .briefing_reader import BriefingReader
from .broken_limit import BrokenLimit
from .carbohydrate_preference import CarbohydratePreference
from .change_so_far import ChangeSoFar
from .change_split import ChangeSplit
from .chosen_band import ChosenBand
from .clinical_clearance import ClinicalClearance
from .compared_strategy import ComparedStrategy
from .comparison_request import ComparisonRequest
from .comparison_response import ComparisonResponse
from .composition_over_log import CompositionOverLog
from .condition import Condition
from .contribution import Contribution
from .cut import Cut
from .cut_history import CutHistory
from .cycling_pattern import CyclingPattern
from .date_question import DateQuestion
from .dated_measurement import DatedMeasurement
from .day_kind import DayKind
from .day_split import DaySplit
from .decision_request import DecisionRequest
from .decision_response import DecisionResponse
from .density_conversion import DensityConversion
from .eaten_against_plan import EatenAgainstPlan
from .eating_disorder import EatingDisorder
from .equation_row import EquationRow
from .explained_change import ExplainedChange
from .explanation_row import ExplanationRow
from .feeling import Feeling
from .field_problem import FieldProblem
from .field_problem_params import FieldProblemParams
from .first_weeks_after import FirstWeeksAfter
from .forecast_point import ForecastPoint
from .forecast_request import ForecastRequest
from .forecast_response import ForecastResponse
from .forecast_week import ForecastWeek
from .gain import Gain
from .girth_measurement import GirthMeasurement
from .goal import Goal
from .guard_rail import GuardRail
from .guard_rail_params import GuardRailParams
from .healthy_range import HealthyRange
from .hold import Hold
from .intake_entry import IntakeEntry
from .intake_question import IntakeQuestion
from .intake_step import IntakeStep
from .intake_stretch import IntakeStretch
from .interval import Interval
from .interval_columns import IntervalColumns
from .known_cuts import KnownCuts
from .known_maintenance import KnownMaintenance
from .language import Language
from .leanness_view import LeannessView
from .log import Log
from .maintenance_request import MaintenanceRequest
from .maintenance_response import MaintenanceResponse
from .measurement_row import MeasurementRow
from .medicine import Medicine
from .message_catalogue import MessageCatalogue
from .message_code import MessageCode
from .method_catalogue import MethodCatalogue
from .method_entry import MethodEntry
from .method_source import MethodSource
from .mini_cut import MiniCut
from .nearest import Nearest
from .nearest_target import NearestTarget
from .next_phase import NextPhase
from .note import Note
from .note_params import NoteParams
from .optimum_request import OptimumRequest
from .optimum_response import OptimumResponse
from .other_season import OtherSeason
from .outcome_intervals import OutcomeIntervals
from .own_strategy import OwnStrategy
from .past_phase import PastPhase
from .path_question import PathQuestion
from .pause import Pause
from .pause_reason import PauseReason
from .phase import Phase
from .phase_alternative import PhaseAlternative
from .phase_followed import PhaseFollowed
from .phase_kind import PhaseKind
from .phase_totals import PhaseTotals
from .picture_width import PictureWidth
from .plan_fragment import PlanFragment
from .plan_request import PlanRequest
from .plan_response import PlanResponse
from .plan_week import PlanWeek
from .present_phase import PresentPhase
from .problem import Problem
from .profile import Profile
from .reading_measurement import ReadingMeasurement
from .ready_made import ReadyMade
from .ready_made_strategy import ReadyMadeStrategy
from .refused_strategy import RefusedStrategy
from .refused_strategy_params import RefusedStrategyParams
from .return_to_gain import ReturnToGain
from .review_request import ReviewRequest
from .review_response import ReviewResponse
from .reviewed_week import ReviewedWeek
from .rule_of_thumb import RuleOfThumb
from .score_parts import ScoreParts
from .screening import Screening
from .search_size import SearchSize
from .season_event import SeasonEvent
from .season_limits import SeasonLimits
from .season_outcome import SeasonOutcome
from .season_phase import SeasonPhase
from .season_plan import SeasonPlan
from .season_request import SeasonRequest
from .season_response import SeasonResponse
from .season_start import SeasonStart
from .season_totals import SeasonTotals
from .season_week import SeasonWeek
from .sex import Sex
from .skinfold_measurement import SkinfoldMeasurement
from .skinfold_method import SkinfoldMethod
from .source_effect import SourceEffect
from .strategy_numbers import StrategyNumbers
from .suggested_cut import SuggestedCut
from .suggested_gain import SuggestedGain
from .suggested_hold import SuggestedHold
from .suggested_mini_cut import SuggestedMiniCut
from .suggested_return import SuggestedReturn
from .target import Target
from .target_quantity import TargetQuantity
from .theme import Theme
from .training import Training
from .training_session import TrainingSession
from .training_status import TrainingStatus
from .trend_days import TrendDays
from .trend_request import TrendRequest
from .trend_response import TrendResponse
from .uncertainty_source import UncertaintySource
from .vega_lite_picture import VegaLitePicture
from .verdict_probabilities import VerdictProbabilities
from .week_followed import WeekFollowed
from .weight_entry import WeightEntry

__all__ = (
    "ActivityByLevel",
    "ActivityByWeek",
    "ActivityLevel",
    "Aim",
    "BatchAnswer",
    "BatchCounts",
    "BatchCountsProblemsByStatus",
    "BatchLine",
    "BatchOperation",
    "BatchSummary",
    "BeatChance",
    "BlockedDates",
    "BmiMeasurement",
    "BodyCompositionRequest",
    "BodyCompositionResponse",
    "BodyFat",
    "BodyFatBand",
    "BodyFatMethod",
    "BriefingReader",
    "BrokenLimit",
    "CarbohydratePreference",
    "ChangeSoFar",
    "ChangeSplit",
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
    "CyclingPattern",
    "DatedMeasurement",
    "DateQuestion",
    "DayKind",
    "DaySplit",
    "DecisionRequest",
    "DecisionResponse",
    "DensityConversion",
    "EatenAgainstPlan",
    "EatingDisorder",
    "EquationRow",
    "ExplainedChange",
    "ExplanationRow",
    "Feeling",
    "FieldProblem",
    "FieldProblemParams",
    "FirstWeeksAfter",
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
    "KnownCuts",
    "KnownMaintenance",
    "Language",
    "LeannessView",
    "Log",
    "MaintenanceRequest",
    "MaintenanceResponse",
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
    "PastPhase",
    "PathQuestion",
    "Pause",
    "PauseReason",
    "Phase",
    "PhaseAlternative",
    "PhaseFollowed",
    "PhaseKind",
    "PhaseTotals",
    "PictureWidth",
    "PlanFragment",
    "PlanRequest",
    "PlanResponse",
    "PlanWeek",
    "PresentPhase",
    "Problem",
    "Profile",
    "ReadingMeasurement",
    "ReadyMade",
    "ReadyMadeStrategy",
    "RefusedStrategy",
    "RefusedStrategyParams",
    "ReturnToGain",
    "ReviewedWeek",
    "ReviewRequest",
    "ReviewResponse",
    "RuleOfThumb",
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
    "Sex",
    "SkinfoldMeasurement",
    "SkinfoldMethod",
    "SourceEffect",
    "StrategyNumbers",
    "SuggestedCut",
    "SuggestedGain",
    "SuggestedHold",
    "SuggestedMiniCut",
    "SuggestedReturn",
    "Target",
    "TargetQuantity",
    "Theme",
    "Training",
    "TrainingSession",
    "TrainingStatus",
    "TrendDays",
    "TrendRequest",
    "TrendResponse",
    "UncertaintySource",
    "VegaLitePicture",
    "VerdictProbabilities",
    "WeekFollowed",
    "WeightEntry",
)
