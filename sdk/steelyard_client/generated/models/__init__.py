"""Contains all the data models used in inputs/outputs"""

from .activity_by_level import ActivityByLevel
from .activity_by_week import ActivityByWeek
from .activity_level import ActivityLevel
from .bmi_measurement import BmiMeasurement
from .body_composition_request import BodyCompositionRequest
from .body_composition_response import BodyCompositionResponse
from .body_fat import BodyFat
from .body_fat_method import BodyFatMethod
from .carbohydrate_preference import CarbohydratePreference
from .change_split import ChangeSplit
from .clinical_clearance import ClinicalClearance
from .condition import Condition
from .contribution import Contribution
from .cut_history import CutHistory
from .date_question import DateQuestion
from .density_conversion import DensityConversion
from .eating_disorder import EatingDisorder
from .equation_row import EquationRow
from .field_problem import FieldProblem
from .field_problem_params import FieldProblemParams
from .forecast_point import ForecastPoint
from .forecast_request import ForecastRequest
from .forecast_response import ForecastResponse
from .forecast_week import ForecastWeek
from .girth_measurement import GirthMeasurement
from .guard_rail import GuardRail
from .healthy_range import HealthyRange
from .intake_entry import IntakeEntry
from .intake_question import IntakeQuestion
from .intake_stretch import IntakeStretch
from .interval import Interval
from .known_maintenance import KnownMaintenance
from .log import Log
from .maintenance_request import MaintenanceRequest
from .maintenance_response import MaintenanceResponse
from .measurement_row import MeasurementRow
from .medicine import Medicine
from .method_catalogue import MethodCatalogue
from .method_entry import MethodEntry
from .method_source import MethodSource
from .mini_cut import MiniCut
from .nearest import Nearest
from .nearest_target import NearestTarget
from .note import Note
from .note_params import NoteParams
from .path_question import PathQuestion
from .phase import Phase
from .phase_totals import PhaseTotals
from .plan_request import PlanRequest
from .plan_response import PlanResponse
from .plan_week import PlanWeek
from .problem import Problem
from .profile import Profile
from .reading_measurement import ReadingMeasurement
from .return_to_gain import ReturnToGain
from .rule_of_thumb import RuleOfThumb
from .screening import Screening
from .sex import Sex
from .skinfold_measurement import SkinfoldMeasurement
from .skinfold_method import SkinfoldMethod
from .source_effect import SourceEffect
from .target import Target
from .target_quantity import TargetQuantity
from .training import Training
from .training_session import TrainingSession
from .training_status import TrainingStatus
from .trend_day import TrendDay
from .trend_request import TrendRequest
from .trend_response import TrendResponse
from .uncertainty_source import UncertaintySource
from .weight_entry import WeightEntry

__all__ = (
    "ActivityByLevel",
    "ActivityByWeek",
    "ActivityLevel",
    "BmiMeasurement",
    "BodyCompositionRequest",
    "BodyCompositionResponse",
    "BodyFat",
    "BodyFatMethod",
    "CarbohydratePreference",
    "ChangeSplit",
    "ClinicalClearance",
    "Condition",
    "Contribution",
    "CutHistory",
    "DateQuestion",
    "DensityConversion",
    "EatingDisorder",
    "EquationRow",
    "FieldProblem",
    "FieldProblemParams",
    "ForecastPoint",
    "ForecastRequest",
    "ForecastResponse",
    "ForecastWeek",
    "GirthMeasurement",
    "GuardRail",
    "HealthyRange",
    "IntakeEntry",
    "IntakeQuestion",
    "IntakeStretch",
    "Interval",
    "KnownMaintenance",
    "Log",
    "MaintenanceRequest",
    "MaintenanceResponse",
    "MeasurementRow",
    "Medicine",
    "MethodCatalogue",
    "MethodEntry",
    "MethodSource",
    "MiniCut",
    "Nearest",
    "NearestTarget",
    "Note",
    "NoteParams",
    "PathQuestion",
    "Phase",
    "PhaseTotals",
    "PlanRequest",
    "PlanResponse",
    "PlanWeek",
    "Problem",
    "Profile",
    "ReadingMeasurement",
    "ReturnToGain",
    "RuleOfThumb",
    "Screening",
    "Sex",
    "SkinfoldMeasurement",
    "SkinfoldMethod",
    "SourceEffect",
    "Target",
    "TargetQuantity",
    "Training",
    "TrainingSession",
    "TrainingStatus",
    "TrendDay",
    "TrendRequest",
    "TrendResponse",
    "UncertaintySource",
    "WeightEntry",
)
