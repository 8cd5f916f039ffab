"""Invented lifters and their seasons, for the tests of seasons."""

from datetime import date
from typing import Any

from steelyard.science.body.uncertainty import Body
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import Sex, TrainingStatus
from steelyard.science.person.screening import EatingDisorder, Screening
from steelyard.science.phase.band import usual_band
from steelyard.science.rails.guard_rails import Subject
from steelyard.science.season.calendar import BlockedDates, Event, make_calendar
from steelyard.science.season.optimum import SeasonLimits
from steelyard.science.season.plan import Asked, History, may_cut

START = date(2026, 3, 30)
CLEAR = Screening(is_pregnant=False, is_breastfeeding=False, eating_disorder=EatingDisorder.NONE)


def asked(
    *,
    weight_kg: float = 80.0,
    fat_fraction: float = 0.15,
    maintenance_kcal: float = 2800.0,
    sex: Sex = Sex.MALE,
    height_cm: float = 180.0,
    status: TrainingStatus = TrainingStatus.INTERMEDIATE,
    years: float = 2.5,
    dose: float = 1.0,
    weeks: int = 52,
    blocked: list[BlockedDates] | None = None,
    events: list[Event] | None = None,
    history: History = History(0, None),  # noqa: B008 - a value
    **limits: Any,
) -> Asked:
    """An invented lifter and a season."""
    subject = Subject(
        sex, 30.0, height_cm, weight_kg, fat_fraction * weight_kg, maintenance_kcal, 0.63 * maintenance_kcal, 150.0,
        status, CLEAR,
    )  # fmt: skip
    body = Body(
        weight_kg, Estimate(fat_fraction * weight_kg, 0.03 * weight_kg), Estimate(maintenance_kcal, 200.0),
        subject.resting_kcal, years, dose,
    )  # fmt: skip
    calendar = make_calendar(START, weeks, blocked or [], events or [])
    return Asked(
        subject, body, may_cut(subject, True), history, calendar, SeasonLimits(usual_band(sex), **limits)
    )  # fmt: skip
