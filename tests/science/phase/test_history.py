"""The phases of a member over time, and what of them counts for the next."""

from datetime import date, timedelta

import pytest
from steelyard.science.phase import BodyThen, DeficitBefore, FinishedPhase, History, PhaseKind, PhasesKnown, UnderWay

START = date(2026, 1, 5)
BODY = BodyThen(80.0, 16.0)


def after(weeks: float) -> date:
    return START + timedelta(days=round(7 * weeks))


def cutting(weeks: int = 4, over: tuple[FinishedPhase, ...] | None = (), before: float = 0.0) -> PhasesKnown:
    under_way = UnderWay(PhaseKind.MINI_CUT, START, after(weeks), before, BodyThen(83.0, 18.0))
    return PhasesKnown(under_way, over, BODY)


def test_a_phase_is_under_way_until_its_last_day_is_past() -> None:
    known = cutting(4)
    assert known.on_day(after(4) - timedelta(days=1)) is known
    over = known.on_day(after(4)).over
    assert over is not None
    assert [(one.kind, one.start, one.weeks, one.end) for one in over] == [(PhaseKind.MINI_CUT, START, 4, after(4))]
    assert (over[0].start_weight_kg, over[0].end_weight_kg, over[0].end_fat_fraction) == (83.0, 80.0, 0.2)


@pytest.mark.parametrize(("days", "weeks"), [(3, 0), (4, 1), (10, 1), (11, 2)])
def test_a_phase_given_up_keeps_its_end_and_has_whole_weeks(days: int, weeks: int) -> None:
    over = cutting(4).given_up(START + timedelta(days=days)).over
    assert over is not None
    assert sum(one.weeks for one in over) == weeks
    assert all(one.end == START + timedelta(days=days) for one in over)


@pytest.mark.parametrize(("gap", "rows"), [(0, 1), (3, 1), (4, 2)])
def test_a_deficit_that_goes_on_where_another_stopped_is_one_with_it(gap: int, rows: int) -> None:
    first = FinishedPhase(PhaseKind.CUT, START - timedelta(days=56 + gap), 8, start_weight_kg=88.0)
    over = cutting(4, (first,)).ended(after(4)).over
    assert over is not None
    assert len(over) == rows
    assert over[-1].end == after(4)
    assert over[0].start_weight_kg == 88.0
    assert sum(one.weeks for one in over) == 12


def test_a_start_gives_way_and_is_never_in_the_phase_before() -> None:
    hold = FinishedPhase(PhaseKind.MAINTENANCE, START - timedelta(days=14), 2)
    over = cutting(4, (hold,)).ended(START + timedelta(days=25)).over  # 25 days are four weeks, less three days
    assert over is not None
    assert (over[-1].weeks, over[-1].start) == (3, START + timedelta(days=4))


def test_a_hold_alone_makes_no_history_of_cuts_known() -> None:
    hold = PhasesKnown(UnderWay(PhaseKind.MAINTENANCE, START, after(4)), None, BODY)
    assert hold.cuts_before(after(6)) == History()
    assert cutting(4, None).on_day(after(4)).cuts_before(after(6)) == History(1, 2)


def test_a_cut_under_way_counts_where_another_takes_its_place_and_not_where_it_goes_on() -> None:
    assert cutting(6).cuts_before(after(2)) == History(1, 0)
    assert cutting(6).cuts_before(after(2), goes_on=True) == History(0, None)
    # What was before it nobody told: how many there were in a year stays open.
    assert cutting(6, None).cuts_before(after(2)) == History(None, 0)


@pytest.mark.parametrize(
    ("known", "weeks", "before"),
    [
        (cutting(6, before=5.0), 2.0, DeficitBefore(7.0)),
        (cutting(4), 6.0, DeficitBefore(6.0, 2.0)),  # of unknown length, so as long as a short one may be
        (cutting(4), 9.0, DeficitBefore()),
        (PhasesKnown(), 1.0, DeficitBefore()),
    ],
)
def test_the_weeks_of_a_deficit_before_count_until_four_weeks_lie_between(
    known: PhasesKnown, weeks: float, before: DeficitBefore
) -> None:
    assert known.deficit_before(after(weeks)) == before


def test_a_phase_that_another_is_planned_to_end_still_runs_until_then() -> None:
    """Planned on a Friday for the week after: until then the one before is under way, and counts where a third begins
    sooner."""
    planned = UnderWay(PhaseKind.MINI_CUT, after(3), after(7))
    known = cutting(6).given_up(after(3))._replace(under_way=planned)
    assert known.running(after(3)) is known
    before = known.running(after(2))
    assert before.over == ()
    assert before.under_way == UnderWay(PhaseKind.MINI_CUT, START, after(3), 0.0, BodyThen(83.0, 18.0))
    assert known.deficit_before(after(2)) == DeficitBefore(2.0)
    assert known.cuts_before(after(2)) == History(1, 0)
    sooner = known.given_up(after(2)).over
    assert sooner is not None
    assert [(one.start, one.end) for one in sooner] == [(START, after(2))]
    # Of neither anything is under way before both.
    assert known.running(START - timedelta(days=1)) == PhasesKnown(None, (), BODY)
    # One that runs in spite of a history from the days ahead is the one under way.
    odd = known._replace(under_way=UnderWay(PhaseKind.MAINTENANCE, START, after(9)))
    assert odd.running(after(1)).under_way == odd.under_way
