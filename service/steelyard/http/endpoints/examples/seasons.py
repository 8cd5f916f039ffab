"""Request examples of the season endpoints: invented people. The tests send each of them."""

from datetime import date

from steelyard.science.person import ActivityLevel, BodyFatMethod, EatingDisorder, Sex, TrainingStatus
from steelyard.science.season import ReadyMade

from ...schemas.plans import CutHistory
from ...schemas.profile import ActivityByLevel, BodyFat, Profile, Screening, Training
from ...schemas.seasons import (
    BlockedDates,
    BodyFatBand,
    ComparisonRequest,
    OptimumRequest,
    OwnStrategy,
    ReadyMadeStrategy,
    SeasonEvent,
    SeasonLimits,
    SeasonRequest,
)

_LIFTER = Profile(
    sex=Sex.MALE,
    age_years=29,
    height_cm=181,
    weight_kg=82.0,
    body_fat=BodyFat(fat_fraction=0.155, method=BodyFatMethod.SKINFOLDS),
    activity=ActivityByLevel(level=ActivityLevel.LIGHT),
    training=Training(status=TrainingStatus.INTERMEDIATE, resistance_sessions_per_week=4),
)
_ROWER = Profile(
    sex=Sex.FEMALE,
    age_years=34,
    height_cm=169,
    weight_kg=66.5,
    body_fat=BodyFat(fat_fraction=0.255, method=BodyFatMethod.DXA),
    activity=ActivityByLevel(level=ActivityLevel.MODERATE),
    training=Training(status=TrainingStatus.NOVICE, resistance_sessions_per_week=3),
)
_CLEAR = Screening(
    is_pregnant=False, is_breastfeeding=False, eating_disorder=EatingDisorder.NONE, conditions=[], medicines=[]
)
_START = date(2026, 3, 30)
_NO_CUTS_YET = CutHistory(cuts_last_12_months=0)

SEASON_EXAMPLES = {
    "a_year_with_a_holiday": SeasonRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=_START,
        horizon_weeks=52,
        strategy=ReadyMadeStrategy(name=ReadyMade.FAST_GAIN_REPEATED_MINI_CUTS),
        limits=SeasonLimits(
            blocked_dates=[BlockedDates(first_date=date(2026, 7, 20), last_date=date(2026, 8, 9))], most_cuts=3
        ),
        cut_history=_NO_CUTS_YET,
    ),
    "lean_for_an_event": SeasonRequest(
        profile=_ROWER,
        screening=_CLEAR,
        start_date=_START,
        horizon_weeks=40,
        strategy=OwnStrategy(
            label="steady", surplus_kcal=120, cut_at_fat_fraction=0.28, cut_to_fat_fraction=0.25, longest_cut_weeks=10
        ),
        limits=SeasonLimits(events=[SeasonEvent(date=date(2026, 9, 12), most_fat_fraction=0.24)]),
        cut_history=_NO_CUTS_YET,
    ),
    "twelve_weeks": SeasonRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=_START,
        horizon_weeks=12,
        strategy=ReadyMadeStrategy(name=ReadyMade.FAST_GAIN_REPEATED_MINI_CUTS),
        cut_history=_NO_CUTS_YET,
    ),
}
COMPARISON_EXAMPLES = {
    "all_ready_made": ComparisonRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=_START,
        horizon_weeks=78,
        strategies=[ReadyMadeStrategy(name=name) for name in ReadyMade],
        cut_history=_NO_CUTS_YET,
    ),
    "two_for_twelve_weeks": ComparisonRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=_START,
        horizon_weeks=12,
        strategies=[ReadyMadeStrategy(name=name) for name in list(ReadyMade)[:2]],
        cut_history=_NO_CUTS_YET,
    ),
}
OPTIMUM_EXAMPLES = {
    "inside_a_band": OptimumRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=_START,
        horizon_weeks=52,
        limits=SeasonLimits(band=BodyFatBand(lower_fat_fraction=0.11, upper_fat_fraction=0.17), most_weeks_dieting=12),
        cut_history=_NO_CUTS_YET,
        strategies_searched=2000,
    ),
    "twelve_weeks": OptimumRequest(
        profile=_LIFTER,
        screening=_CLEAR,
        start_date=_START,
        horizon_weeks=12,
        cut_history=_NO_CUTS_YET,
        strategies_searched=1000,
    ),
}
