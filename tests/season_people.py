"""Invented lifters and their seasons, for the tests of seasons."""

from datetime import date
from typing import Any

from lifters import CLEAR, lifter
from steelyard.science.body.uncertainty import Body
from steelyard.science.member.member import Member, Told
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import Sex, TrainingStatus
from steelyard.science.person.screening import Screening
from steelyard.science.phase import History, usual_band
from steelyard.science.rails.subject import Subject
from steelyard.science.season.asked import Asked, SeasonBounds, may_cut
from steelyard.science.season.calendar import BlockedDays, Event, make_calendar

START = date(2026, 3, 30)


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
    blocked: list[BlockedDays] | None = None,
    events: list[Event] | None = None,
    history: History = History(0, None),  # noqa: B008 - a value
    **limits: Any,
) -> Asked:
    """An invented lifter and a season."""
    subject = Subject(
        sex, 30.0, height_cm, weight_kg, fat_fraction * weight_kg, maintenance_kcal, 0.63 * maintenance_kcal,
        fat_fraction * weight_kg, (1.0 - fat_fraction) * weight_kg, 150.0, status, CLEAR,
    )  # fmt: skip
    maintenance = Estimate(maintenance_kcal, 200.0)
    body = Body(
        weight_kg, Estimate(fat_fraction * weight_kg, 0.03 * weight_kg), maintenance, subject.resting_kcal, years, dose
    )  # fmt: skip
    person = lifter(sex, height_cm=height_cm, weight_kg=weight_kg, fat=fat_fraction, status=status, sessions=4.0 * dose)
    member = having(Member(Told(person, CLEAR, maintenance)), subject=subject, body=body)
    calendar = make_calendar(START, weeks, blocked or [], events or [])
    return Asked(
        member, may_cut(member), history, calendar, SeasonBounds(usual_band(sex), **limits)
    )  # fmt: skip


def having(member: Member, **facets: Any) -> Member:
    """The same member with some facets given, others as they are."""
    other = Member(member.told)
    vars(other).update({**vars(member), **facets})
    return other


def screened(season: Asked, screening: Screening | None) -> Asked:
    """The same season of somebody who answered the safety questions so."""
    told = season.member.told._replace(screening=screening)
    member = having(Member(told), subject=season.member.subject._replace(screening=screening), body=season.member.body)
    return season._replace(member=member, cutting=may_cut(member))
