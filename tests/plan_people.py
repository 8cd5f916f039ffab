"""Invented people whose phases the tests plan, and what the tests read of a plan."""

from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from lifters import CLEAR, lifter
from steelyard.science.body.constants import BASELINE_GLYCOGEN_KG
from steelyard.science.body.forecasting import Forecast
from steelyard.science.body.state import BodyState
from steelyard.science.body.uncertainty import ALL_SOURCES
from steelyard.science.member import Member, Told
from steelyard.science.person.person import ActivityLevel, Person, Sex
from steelyard.science.person.screening import Screening
from steelyard.science.phase import DeficitAim, DeficitKind, GainAim, History, Plan, ReturnAim, plan_deficit, plan_gain
from steelyard.science.rails import Subject

START = date(2026, 3, 2)


def person(sex: Sex, weight_kg: float, height_cm: float, fraction: float) -> Person:
    moderate = ActivityLevel.MODERATE
    return lifter(sex, height_cm=height_cm, weight_kg=weight_kg, fat=fraction, activity=moderate, sessions=4)


MAN = person(Sex.MALE, 80.0, 180.0, 0.15)
WOMAN = person(Sex.FEMALE, 62.0, 166.0, 0.26)
# Lean, much trained and otherwise seated: energy availability binds first in a long phase.
SEATED = lifter(Sex.FEMALE, weight_kg=62.0, height_cm=166.0, fat=0.20, activity=ActivityLevel.SEDENTARY, sessions=6)
ORDINARY = [pytest.param(MAN, id="man-80-kg-15-%"), pytest.param(WOMAN, id="woman-62-kg-26-%")]


def forget_the_floor_of_holds(monkeypatch: pytest.MonkeyPatch) -> None:
    """900 kcal are told on a hold, whatever the body needs."""

    def held_through(
        now: Subject, wanted_kcal: float, live: Callable[[float], object], *, start: Subject | None = None
    ) -> tuple[float, object]:
        return 900.0, live(900.0)

    monkeypatch.setattr("steelyard.science.rails.held_kcal", lambda now, wanted_kcal: 900.0)
    monkeypatch.setattr("steelyard.science.rails.held_through", held_through)


def member_of(who: Person, screening: Screening | None = CLEAR, usual: float | None = None) -> Member:
    """The person as a planner takes them, eating ``usual`` now."""
    return Member(Told(who, screening, current_intake_kcal=usual))


def plan(
    who: Person,
    then: ReturnAim | None = None,
    *,
    cuts: int | None = 0,
    since: int | None = None,
    usual: float | None = None,
    pause: int = 0,
    event: int | None = None,
    **aim: Any,
) -> Plan:
    return plan_deficit(
        member_of(who, usual=usual),
        START,
        DeficitAim(**aim),
        then or ReturnAim(),
        history=History(cuts, since),
        sources=ALL_SOURCES,
        pause_weeks=pause,
        weeks_until_event=event,
    )


def cut(who: Person, then: ReturnAim | None = None, **asked: Any) -> Plan:
    return plan(who, then, kind=DeficitKind.CUT, **asked)


def gain(who: Person, pause: int = 0, **aim: Any) -> Plan:
    return plan_gain(member_of(who), START, GainAim(**aim), sources=ALL_SOURCES, pause_weeks=pause)


def forecast_of(found: Plan) -> Forecast:
    assert found.forecast is not None
    return found.forecast


def settled_kg(state: BodyState) -> float:
    """Weight once carried mass is back at its usual state."""
    return state.tissue_kg + BASELINE_GLYCOGEN_KG


def lengths(found: Plan) -> list[tuple[str, int]]:
    return [(phase.kind, len(phase.weeks)) for phase in found.phases]


def change(found: Plan, phase: int) -> tuple[float, float, float, float]:
    """Change of weight, fat, lean and carried mass over a phase [kg]."""
    assert found.forecast is not None
    states = found.forecast.states
    planned = found.phases[phase]
    first, end = states[planned.first], states[planned.weeks[-1].point]
    return (
        end.weight_kg - first.weight_kg,
        end.fat_kg - first.fat_kg,
        end.lean_kg - first.lean_kg,
        end.carried_kg - first.carried_kg,
    )
