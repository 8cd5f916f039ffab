"""Request examples of the decision: invented people. The tests send each of them."""

from datetime import date

from steelyard.science.decision import Feeling, Goal
from steelyard.science.person import ActivityLevel, BodyFatMethod, EatingDisorder, Sex, TrainingStatus
from steelyard.science.phase import PhaseKind

from ...schemas.decisions import ChosenBand, DecisionRequest, PresentPhase
from ...schemas.phases import PastPhase
from ...schemas.profile import ActivityByLevel, BodyFat, Profile, Screening, Training

_CLEAR = Screening(
    is_pregnant=False, is_breastfeeding=False, eating_disorder=EatingDisorder.NONE, conditions=[], medicines=[]
)
_PRESSER = Profile(
    sex=Sex.MALE,
    age_years=29,
    height_cm=181,
    weight_kg=82.0,
    body_fat=BodyFat(fat_fraction=0.14, method=BodyFatMethod.SKINFOLDS),
    activity=ActivityByLevel(level=ActivityLevel.LIGHT),
    training=Training(status=TrainingStatus.INTERMEDIATE, resistance_sessions_per_week=4),
)
_SQUATTER = Profile(
    sex=Sex.FEMALE,
    age_years=33,
    height_cm=168,
    weight_kg=67.4,
    body_fat=BodyFat(fat_fraction=0.27, method=BodyFatMethod.DXA),
    activity=ActivityByLevel(level=ActivityLevel.MODERATE),
    training=Training(status=TrainingStatus.INTERMEDIATE, resistance_sessions_per_week=3),
)

DECISION_EXAMPLES = {
    "not_yet": DecisionRequest(
        profile=_PRESSER,
        screening=_CLEAR,
        as_of_date=date(2026, 3, 30),
        goal=Goal.MUSCLE,
        feeling=Feeling.CONTENT,
        present_phase=PresentPhase(kind=PhaseKind.GAIN, weeks_done=10),
        phase_history=[],
    ),
    "lean_for_an_event": DecisionRequest(
        profile=_SQUATTER,
        screening=_CLEAR,
        as_of_date=date(2026, 3, 30),
        goal=Goal.EVENT,
        feeling=Feeling.WOULD_LIKE_LEANER,
        band=ChosenBand(lower_fat_fraction=0.2, upper_fat_fraction=0.27),
        event_date=date(2026, 7, 11),
        event_fat_fraction=0.23,
        phase_history=[
            PastPhase(
                kind=PhaseKind.GAIN,
                start_date=date(2025, 9, 1),
                weeks=24,
                start_weight_kg=63.9,
                end_weight_kg=67.1,
            )
        ],
    ),
    "gained_fast_and_cut_again": DecisionRequest(
        profile=_PRESSER,
        screening=_CLEAR,
        as_of_date=date(2026, 3, 30),
        phase_history=[
            PastPhase(kind=kind, start_date=start, weeks=weeks, start_weight_kg=first, end_weight_kg=last)
            for kind, start, weeks, first, last in (
                (PhaseKind.GAIN, date(2024, 9, 2), 14, 80.5, 86.2),
                (PhaseKind.MINI_CUT, date(2024, 12, 9), 6, 86.2, 81.9),
                (PhaseKind.GAIN, date(2025, 1, 20), 16, 81.9, 87.4),
                (PhaseKind.CUT, date(2025, 5, 12), 9, 87.4, 81.2),
                (PhaseKind.GAIN, date(2025, 7, 14), 13, 81.2, 86.0),
                (PhaseKind.MINI_CUT, date(2025, 10, 13), 6, 86.0, 82.0),
            )
        ],
    ),
}
