"""Contains all the data models used in inputs/outputs"""

from .activity_by_level import ActivityByLevel
from .activity_by_week import ActivityByWeek
from .activity_level import ActivityLevel
from .body_fat import BodyFat
from .body_fat_method import BodyFatMethod
from .carbohydrate_preference import CarbohydratePreference
from .change_split import ChangeSplit
from .clinical_clearance import ClinicalClearance
from .condition import Condition
from .contribution import Contribution
from .cut_history import CutHistory
from .eating_disorder import EatingDisorder
from .equation_row import EquationRow
from .field_problem import FieldProblem
from .field_problem_params import FieldProblemParams
from .forecast_point import ForecastPoint
from .guard_rail import GuardRail
from .intake_entry import IntakeEntry
from .interval import Interval
from .known_maintenance import KnownMaintenance
from .log import Log
from .maintenance_request import MaintenanceRequest
from .maintenance_response import MaintenanceResponse
from .medicine import Medicine
from .method_catalogue import MethodCatalogue
from .method_entry import MethodEntry
from .method_source import MethodSource
from .mini_cut import MiniCut
from .nearest import Nearest
from .note import Note
from .note_params import NoteParams
from .phase import Phase
from .phase_totals import PhaseTotals
from .plan_request import PlanRequest
from .plan_response import PlanResponse
from .plan_week import PlanWeek
from .problem import Problem
from .profile import Profile
from .return_to_gain import ReturnToGain
from .rule_of_thumb import RuleOfThumb
from .screening import Screening
from .sex import Sex
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
    "BodyFat",
    "BodyFatMethod",
    "CarbohydratePreference",
    "ChangeSplit",
    "ClinicalClearance",
    "Condition",
    "Contribution",
    "CutHistory",
    "EatingDisorder",
    "EquationRow",
    "FieldProblem",
    "FieldProblemParams",
    "ForecastPoint",
    "GuardRail",
    "IntakeEntry",
    "Interval",
    "KnownMaintenance",
    "Log",
    "MaintenanceRequest",
    "MaintenanceResponse",
    "Medicine",
    "MethodCatalogue",
    "MethodEntry",
    "MethodSource",
    "MiniCut",
    "Nearest",
    "Note",
    "NoteParams",
    "Phase",
    "PhaseTotals",
    "PlanRequest",
    "PlanResponse",
    "PlanWeek",
    "Problem",
    "Profile",
    "ReturnToGain",
    "RuleOfThumb",
    "Screening",
    "Sex",
    "Training",
    "TrainingSession",
    "TrainingStatus",
    "TrendDay",
    "TrendRequest",
    "TrendResponse",
    "UncertaintySource",
    "WeightEntry",
)
