"""What check-ins change of the advice: a deficit only ever becomes smaller or shorter."""

from types import SimpleNamespace
from typing import Any

import pytest
from steelyard.science.person import CheckIn, CycleSaid, StrengthSaid
from steelyard.science.phase import IntakeChange, PhaseKind
from steelyard.science.register import Message
from steelyard.science.review import texts
from steelyard.science.review.check_in_signs import heed
from steelyard.science.review.next_step import Advice, NextStep
from steelyard.science.review.texts import step

DAY = 738_100
ON = Advice(NextStep.CONTINUE, 0, 21, [], [])


def said(*days_ago: int, **answers: Any) -> list[CheckIn]:
    usual = {"hunger": 3, "sleep": 4, "mood": 3, "cycle": None, "strength": None}
    return [CheckIn(DAY - ago, **{**usual, **answers}) for ago in days_ago]


def course(
    *intakes: float,
    maintenance: float = 2500.0,
    kind: PhaseKind = PhaseKind.CUT,
    changes: tuple[IntakeChange, ...] = (),
) -> Any:
    """What is left of a phase: days of these intakes, before any change."""
    return SimpleNamespace(
        phase=SimpleNamespace(kind=kind, changes=changes),
        maintenance_kcal=maintenance,
        intakes=lambda change, days: [kcal + change for kcal in intakes],
    )


WORN = {"hunger": 5, "sleep": 2}


@pytest.mark.parametrize(
    ("intakes", "change_kcal", "raised_kcal", "told_kcal"),
    [
        ((2000.0,), 0, 150, 150),  # the whole of it
        ((2000.0, 2420.0), 0, 80, 80),  # never past maintenance on any day: 2,500 less 2,420
        ((2000.0, 2600.0), 0, 0, 0),  # a break is over it already
        ((1900.0,), -100, 150, 150),  # who is to eat more is not told to eat less
        ((2000.0,), 150, 50, 200),  # with what the review raises one step of 200 at most
    ],
)
def test_worn_people_eat_more_and_never_past_maintenance(
    intakes: tuple[float, ...], change_kcal: int, raised_kcal: int, told_kcal: int
) -> None:
    advice = ON._replace(correction_kcal=change_kcal, reasons=[step("REVIEW_STEPPED", change_kcal)])
    found = heed(said(8, 1, **WORN), course(*intakes), DAY, advice)
    assert found.correction_kcal == told_kcal
    assert (found.decision, found.days_ahead) == (NextStep.CONTINUE, 21)
    # The text has the figure of the field, and none where nothing is added.
    assert found.reasons[0].params == {"raised": "yes" if raised_kcal else "no", "raise_kcal": raised_kcal}
    assert len(found.reasons) == (1 if change_kcal < 0 else 2)


def test_a_check_in_raises_once_and_the_next_one_again() -> None:
    raised = (IntakeChange(day=DAY - 1, change_kcal=150.0),)
    again = heed(said(8, 1, **WORN), course(2150.0, changes=raised), DAY, ON)
    assert (again.correction_kcal, again.reasons[0].params) == (0, {"raised": "no", "raise_kcal": 0.0})
    newer = heed(said(8, 1, 0, **WORN), course(2150.0, changes=raised), DAY, ON)
    assert newer.correction_kcal == 150
    # What was lowered, or raised before that check-in, is no answer to it.
    for other in (IntakeChange(day=DAY - 1, change_kcal=-100.0), IntakeChange(day=DAY - 2, change_kcal=150.0)):
        assert heed(said(8, 1, **WORN), course(2150.0, changes=(other,)), DAY, ON).correction_kcal == 150


def test_nothing_is_lowered_on_the_day_on_which_somebody_is_worn() -> None:
    lower = ON._replace(correction_kcal=-100, reasons=[texts.step(texts.STEPPED, -100)])
    found = heed(said(8, 1, **WORN), course(2000.0), DAY, lower)
    assert found.correction_kcal == 150
    assert [reason.code for reason in found.reasons] == ["CHECK_IN_WORN"]


def test_two_check_ins_a_week_apart_must_agree_and_old_ones_say_nothing() -> None:
    for check_ins in (said(1, **WORN), said(4, 1, **WORN), said(40, 1, **WORN), said(8, **WORN) + said(1)):
        assert heed(check_ins, course(2000.0), DAY, ON) == ON


def test_lifts_that_fall_leave_a_week_and_by_a_tenth_none() -> None:
    weaker = heed(said(8, 1, strength=StrengthSaid.DOWN), course(2000.0), DAY, ON)
    assert (weaker.decision, weaker.days_ahead) == (NextStep.SHORTEN, 7)
    soon = heed(said(8, 1, strength=StrengthSaid.DOWN), course(2000.0), DAY, ON._replace(days_ahead=5))
    assert (soon.decision, soon.days_ahead) == (NextStep.CONTINUE, 5)
    much = heed(said(8, 1, strength=StrengthSaid.DOWN_MUCH), course(2000.0), DAY, ON)
    assert (much.decision, much.days_ahead, much.correction_kcal) == (NextStep.END, 0, 0)


def test_a_phase_that_ends_within_the_week_takes_no_step_down_and_no_other_end() -> None:
    """Lifts that fall are no reason to eat less or go on for longer."""
    told = [step("REVIEW_STEPPED", -200), Message("REVIEW_EXTEND", {}), Message("REVIEW_OUT_OF_REACH", {})]
    advice = Advice(NextStep.EXTEND, -200, 60, told, [])
    found = heed(said(8, 1, strength=StrengthSaid.DOWN), course(2000.0), DAY, advice)
    assert (found.decision, found.days_ahead, found.correction_kcal) == (NextStep.SHORTEN, 7, 0)
    assert [reason.code for reason in found.reasons] == ["CHECK_IN_WEAKER"]


def test_one_missed_period_ends_a_deficit() -> None:
    assert heed(said(1, cycle=CycleSaid.MISSED), course(2000.0), DAY, ON).decision is NextStep.END


@pytest.mark.parametrize("kind", [PhaseKind.GAIN, PhaseKind.MAINTENANCE])
@pytest.mark.parametrize(
    ("check_ins", "param"),
    [
        (said(1, cycle=CycleSaid.MISSED), "eats_less"),
        (said(1, cycle=CycleSaid.LATE), "raised"),
        (said(8, 1, strength=StrengthSaid.DOWN), "eats_less"),
        (said(8, 1, strength=StrengthSaid.DOWN_MUCH), "eats_less"),
        (said(8, 1, **WORN), "raised"),
    ],
)
def test_who_is_in_no_deficit_is_only_told(check_ins: list[CheckIn], param: str, kind: PhaseKind) -> None:
    """And not that the phase ends or that more is to be eaten, as neither does."""
    found = heed(check_ins, course(2700.0, kind=kind), DAY, ON)
    assert found._replace(reasons=[]) == ON
    assert [reason.params[param] for reason in found.reasons] == ["no"]
