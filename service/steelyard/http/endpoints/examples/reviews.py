"""Request examples of reviews: an invented member's mini-cut, midway and after."""

from datetime import date, timedelta

from steelyard.science.person import ActivityLevel, BodyFatMethod, EatingDisorder, Sex, TrainingStatus
from steelyard.science.phase import PhaseKind

from ...schemas.log import IntakeEntry, Log, WeightEntry
from ...schemas.phases import KnownMaintenance, PhaseFollowed, WeekFollowed
from ...schemas.profile import ActivityByLevel, BodyFat, Profile, Screening, Training
from ...schemas.reviews import ReviewRequest

_START = date(2026, 4, 6)
_PROFILE = Profile(
    sex=Sex.MALE,
    age_years=34,
    height_cm=181,
    weight_kg=88.2,
    body_fat=BodyFat(fat_fraction=0.19, method=BodyFatMethod.SKINFOLDS),
    activity=ActivityByLevel(level=ActivityLevel.LIGHT),
    training=Training(status=TrainingStatus.INTERMEDIATE, resistance_sessions_per_week=4),
)
_CLEAR = Screening(
    is_pregnant=False, is_breastfeeding=False, eating_disorder=EatingDisorder.NONE, conditions=[], medicines=[]
)
_PHASE = PhaseFollowed(
    kind=PhaseKind.MINI_CUT,
    start_date=_START,
    weeks=[WeekFollowed(intake_kcal=2240, protein_g=180, carbohydrate_g=230)] * 4,
    maintenance=KnownMaintenance(kcal_per_day=2790, standard_deviation_kcal=110),
    fat_loss_kg=1.6,
)


def _log(days: int) -> Log:
    """Two weeks before the phase and ``days`` of it: water leaves in the first days, tissue slowly."""
    wander = (0.2, -0.4, 0.1, 0.3, -0.2, -0.1, 0.4, -0.3, 0.0, 0.2, -0.2)
    weights, intakes = [], []
    for day in range(-14, days + 1):
        fall = 0.0 if day <= 0 else 0.9 * (1.0 - 0.6**day) + 0.05 * day
        if day % 6 != 4:
            weight = round(88.2 - fall + wander[day % len(wander)], 1)
            weights.append(WeightEntry(date=_START + timedelta(days=day), weight_kg=weight))
        if day % 9 != 5 and day < days:
            eaten = (2785 if day < 0 else 2250) + 70 * (day % 5 - 2)
            intakes.append(IntakeEntry(date=_START + timedelta(days=day), intake_kcal=eaten))
    return Log(weights=weights, intakes=intakes)


REVIEW_EXAMPLES = {
    "midway": ReviewRequest(profile=_PROFILE, phase=_PHASE, log=_log(20), screening=_CLEAR),
    "too_early": ReviewRequest(profile=_PROFILE, phase=_PHASE, log=_log(6), screening=_CLEAR),
    "afterwards": ReviewRequest(profile=_PROFILE, phase=_PHASE, log=_log(28), as_of_date=_START + timedelta(days=28)),
}
