"""A decision asked for without any web: what cannot be asked, and what is left out where leanness is not spoken of."""

from datetime import date, timedelta
from typing import Any

import msgspec
import pytest
from plan_people import CLEAR, MAN, START
from steelyard import answers
from steelyard.science.decision import Feeling, Goal, OngoingPhase, Situation
from steelyard.science.member import Told
from steelyard.science.person import EatingDisorder, Sex
from steelyard.science.phase import Band, FinishedPhase, PhaseKind
from steelyard.science.rails import Refused
from steelyard.science.register import FAT_FROM_BMI, Contradiction, OutOfDomain

UNWELL = msgspec.structs.replace(CLEAR, eating_disorder=EatingDisorder.PAST)


def ask(**others: Any) -> answers.DecisionAsked:
    given = {"told": Told(MAN, CLEAR), "as_of": START, "goal": Goal.MUSCLE, "feeling": Feeling.CONTENT, **others}
    return answers.DecisionAsked(**given)


def past(kind: PhaseKind, start_days_ago: int, weeks: int) -> FinishedPhase:
    return FinishedPhase(kind, START - timedelta(days=start_days_ago), weeks)


@pytest.mark.parametrize(
    ("asked", "code", "name"),
    [
        (ask(band=Band(0.15, 0.16)), "BAND_INVERTED", "band.upper_fat_fraction"),
        (ask(event=START), "EVENT_NOT_AHEAD", "event_date"),
        (ask(goal=Goal.EVENT), "EVENT_DATE_MISSING", "event_date"),
        (ask(event_fat_fraction=0.12), "EVENT_DATE_MISSING", "event_fat_fraction"),
        (ask(history=[past(PhaseKind.CUT, 7, 2)]), "HISTORY_IN_FUTURE", "phase_history[0].start_date"),
        (
            ask(history=[past(PhaseKind.CUT, 70, 2), past(PhaseKind.GAIN, 80, 1)]),
            "HISTORY_OUT_OF_ORDER", "phase_history[1].start_date",
        ),
        (
            ask(history=[past(PhaseKind.CUT, 70, 4), past(PhaseKind.GAIN, 60, 1)]),
            "HISTORY_OVERLAPS", "phase_history[1].start_date",
        ),
        (
            ask(history=[past(PhaseKind.CUT, 28, 4)], present=OngoingPhase(PhaseKind.GAIN, 1)),
            "HISTORY_OVERLAPS", "present_phase.weeks_done",
        ),
    ],
)  # fmt: skip
def test_what_cannot_stand_together_is_named(asked: answers.DecisionAsked, code: str, name: str) -> None:
    with pytest.raises(Contradiction) as raised:
        answers.decide_phase(asked)
    assert (raised.value.code, raised.value.field) == (code, name)


@pytest.mark.parametrize(
    "asked",
    [
        ask(band=Band(0.15, 0.17)),
        ask(event=START + timedelta(days=1)),
        ask(history=[past(PhaseKind.CUT, 28, 4)]),
        ask(history=[past(PhaseKind.CUT, 70, 4), past(PhaseKind.GAIN, 42, 2)]),
        ask(history=[past(PhaseKind.CUT, 35, 4)], present=OngoingPhase(PhaseKind.GAIN, 1)),
    ],
)
def test_what_just_stands_together_is_answered(asked: answers.DecisionAsked) -> None:
    assert answers.decide_phase(asked).value.ways


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        (ask(as_of=date(1999, 1, 1)), "as_of_date"),
        (ask(event=date(2101, 1, 1)), "event_date"),
        (ask(history=[FinishedPhase(PhaseKind.CUT, date(1999, 1, 1), 4)]), "phase_history[0].start_date"),
    ],
)
def test_a_date_too_far_away_is_named(asked: answers.DecisionAsked, name: str) -> None:
    with pytest.raises(OutOfDomain) as raised:
        answers.decide_phase(asked)
    assert (raised.value.code, raised.value.field) == ("DATE_OUT_OF_RANGE", name)


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        (ask(band=Band(0.04, 0.15)), "band.lower_fat_fraction"),
        (ask(event=START + timedelta(days=90), event_fat_fraction=0.04), "event_fat_fraction"),
    ],
)
def test_a_target_under_the_least_is_refused(asked: answers.DecisionAsked, name: str) -> None:
    with pytest.raises(Refused) as raised:
        answers.decide_phase(asked)
    assert raised.value.field == name


def test_where_leanness_is_not_spoken_of_its_figures_are_left_out() -> None:
    unread = msgspec.structs.replace(MAN, body_fat=None)
    plain = answers.decide_phase(ask(told=Told(unread, UNWELL)))
    # A band too low for anybody is not refused: it has no part in the answer, which says so.
    chosen = answers.decide_phase(ask(told=Told(unread, UNWELL), band=Band(0.04, 0.15)))
    for answer in (plain, chosen):
        assert answer.value.situation is Situation.NO_DEFICIT
        assert answer.value.leanness is None
        assert FAT_FROM_BMI not in answer.cautions
        for way in answer.value.ways:
            assert (way.fat_kg, way.end_fat_fraction, way.weeks_above_band) == (None, None, None)
            assert way.lean_kg is not None
    codes = [{message.code for message in answer.reasons} for answer in (plain, chosen)]
    assert ["DECISION_CHOICES_LEFT_OUT" in found for found in codes] == [False, True]
    assert FAT_FROM_BMI in answers.decide_phase(ask(told=Told(unread, CLEAR))).cautions


def test_the_band_says_what_it_rests_on() -> None:
    woman = msgspec.structs.replace(MAN, sex=Sex.FEMALE, body_fat=None)
    found = [
        answers.decide_phase(asked).value.leanness
        for asked in (ask(), ask(told=Told(woman, CLEAR)), ask(band=Band(0.11, 0.16)))
    ]
    assert [one.band_basis for one in found if one is not None] == ["common practice", "judgement", "chosen"]
    assert found[2] is not None
    assert found[2].band == Band(0.11, 0.16)


def test_a_cut_becomes_due_on_a_day_and_the_recommended_is_among_the_ways() -> None:
    answer = answers.decide_phase(ask(history=[]))
    found = answer.value
    assert any(way is found.recommended for way in found.ways)
    assert [way.score.total_kg for way in found.ways if way.score] == sorted(
        (way.score.total_kg for way in found.ways if way.score), reverse=True
    )
    assert found.leanness is not None
    if found.leanness.due_date is not None:
        assert (found.leanness.due_date - START).days % 7 == 0
    assert found.cut_history is not None
    assert found.cut_history.cuts_last_12_months == 0
    assert answers.decide_phase(ask()).value.cut_history is None


def test_a_planner_is_asked_with_no_more_cuts_than_count() -> None:
    many = [past(PhaseKind.MINI_CUT, 14 * n, 1) for n in range(20, 0, -1)]
    old = [FinishedPhase(PhaseKind.CUT, date(2001, 1, 1), 4)]
    assert answers.decide_phase(ask(history=many)).value.cut_history == (12, 1)
    assert answers.decide_phase(ask(history=old)).value.cut_history == (0, 520)
