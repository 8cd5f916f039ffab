"""Request examples of the contract: invented people. The tests send each of them."""

from datetime import date, timedelta

from steelyard.science.body import TargetQuantity
from steelyard.science.log import TrendChoice
from steelyard.science.measures import SkinfoldMethod
from steelyard.science.person import ActivityLevel, BodyFatMethod, EatingDisorder, Sex, TrainingStatus
from steelyard.science.phase import PlanChoice

from ...schemas.body_composition import (
    BmiMeasurement,
    BodyCompositionRequest,
    GirthMeasurement,
    ReadingMeasurement,
    SkinfoldMeasurement,
)
from ...schemas.forecasts import DateQuestion, ForecastRequest, IntakeQuestion, IntakeStretch, PathQuestion, Target
from ...schemas.log import IntakeEntry, Log, WeightEntry
from ...schemas.maintenance import MaintenanceRequest
from ...schemas.plans import CutHistory, Hold, MiniCut, PlanRequest, ReturnToGain
from ...schemas.profile import ActivityByLevel, ActivityByWeek, BodyFat, Profile, Screening, Training, TrainingSession
from ...schemas.trends import TrendRequest

_LIFTER = Profile(
    sex=Sex.MALE,
    age_years=31,
    height_cm=178,
    weight_kg=84.6,
    body_fat=BodyFat(fat_fraction=0.18, method=BodyFatMethod.SKINFOLDS),
    activity=ActivityByLevel(level=ActivityLevel.LIGHT),
    training=Training(status=TrainingStatus.INTERMEDIATE, resistance_sessions_per_week=4),
)
_OFFICE_LIFTER = Profile(
    sex=Sex.FEMALE,
    age_years=27,
    height_cm=166,
    weight_kg=63.2,
    activity=ActivityByWeek(steps_per_day=7500, sessions=[TrainingSession(met=5.0, minutes=60, times_per_week=3)]),
    training=Training(status=TrainingStatus.NOVICE, resistance_sessions_per_week=3),
)
_CLEAR = Screening(
    is_pregnant=False, is_breastfeeding=False, eating_disorder=EatingDisorder.NONE, conditions=[], medicines=[]
)
# Three weeks of an invented log, with gaps: weights wander by some hundred grams around a slow fall.
_WANDER = (
    0.2,
    -0.3,
    0.1,
    0.4,
    -0.2,
    None,
    0.0,
    0.3,
    -0.4,
    0.1,
    None,
    -0.1,
    0.2,
    -0.3,
    0.5,
    0.0,
    -0.2,
    0.1,
    None,
    0.3,
    -0.1,
)
_FIRST = date(2026, 3, 2)
_LOG = Log(
    weights=[
        WeightEntry(date=_FIRST + timedelta(days=i), weight_kg=round(84.6 - 0.045 * i + w, 1))
        for i, w in enumerate(_WANDER)
        if w is not None
    ],
    intakes=[
        IntakeEntry(date=_FIRST + timedelta(days=i), intake_kcal=2850 + 40 * (i % 7))
        for i in range(len(_WANDER))
        if i % 6 != 5
    ],
)

MAINTENANCE_EXAMPLES = {
    "profile_only": MaintenanceRequest(profile=_OFFICE_LIFTER),
    "profile_and_log": MaintenanceRequest(profile=_LIFTER, log=_LOG),
}
PLAN_EXAMPLES = {
    "fat_to_lose": PlanRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=date(2026, 3, 30),
        phase=MiniCut(fat_loss_kg=1.6),
        return_to_gain=ReturnToGain(gain_weeks=8),
        cut_history=CutHistory(cuts_last_12_months=0),
        include=[PlanChoice.SIZES, PlanChoice.LEVERS],
    ),
    "weeks": PlanRequest(
        profile=_OFFICE_LIFTER, screening=_CLEAR, start_date=date(2026, 3, 30), phase=MiniCut(weeks=4)
    ),
    "two_weeks_held": PlanRequest(
        profile=_OFFICE_LIFTER,
        screening=_CLEAR,
        start_date=date(2026, 3, 30),
        phase=Hold(weeks=2),
        return_to_gain=ReturnToGain(gain_weeks=2),
    ),
}
FORECAST_EXAMPLES = {
    "schedule": ForecastRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=date(2026, 3, 30),
        question=PathQuestion(
            schedule=[
                IntakeStretch(weeks=4, intake_kcal=2800, protein_g_per_kg=2.0),
                IntakeStretch(weeks=2, intake_kcal=3200),
            ]
        ),
    ),
    "intake_for_target": ForecastRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=date(2026, 3, 30),
        cut_history=CutHistory(cuts_last_12_months=0),
        question=IntakeQuestion(
            target=Target(quantity=TargetQuantity.WEIGHT_KG, value=82.0),
            by_date=date(2026, 5, 11),
            protein_g_per_kg=2.0,
        ),
    ),
    "date_for_target": ForecastRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=date(2026, 3, 30),
        question=DateQuestion(
            target=Target(quantity=TargetQuantity.FAT_FRACTION, value=0.165), intake_kcal=2800, protein_g_per_kg=2.0
        ),
    ),
}
TREND_EXAMPLES = {
    "three_weeks": TrendRequest(profile=_LIFTER, log=_LOG, include=[TrendChoice.IMPLIED_INTAKE]),
}
BODY_COMPOSITION_EXAMPLES = {
    "skinfolds_girths_and_readings": BodyCompositionRequest(
        sex=Sex.MALE,
        age_years=31,
        height_cm=178,
        weight_kg=84.6,
        training_status=TrainingStatus.INTERMEDIATE,
        measurements=[
            SkinfoldMeasurement(equation=SkinfoldMethod.JACKSON_POLLOCK_3, chest_mm=13, abdomen_mm=26, thigh_mm=16.5),
            GirthMeasurement(neck_cm=39.5, abdomen_cm=90.5),
            ReadingMeasurement(fat_fraction=0.194, method=BodyFatMethod.BIOIMPEDANCE),
            ReadingMeasurement(fat_fraction=0.187, method=BodyFatMethod.BIOIMPEDANCE),
        ],
    ),
    "height_and_weight": BodyCompositionRequest(
        sex=Sex.FEMALE,
        age_years=27,
        height_cm=166,
        weight_kg=63.2,
        training_status=TrainingStatus.NOVICE,
        measurements=[BmiMeasurement()],
    ),
}
