"""What a phase that is being followed promised: windows of its forecast, on the member's logging scale."""

import pytest
from plan_people import MAN, WOMAN, member_of
from steelyard.science.numbers import Estimate
from steelyard.science.person import Person
from steelyard.science.phase import FollowedPhase, FollowedWeek, PhaseKind, PromisedPath

DAYS = 42
START_DAY = 738_000


def promised(who: Person, *marks: int, ratio: float = 1.0, deficit_kcal: float = 500.0) -> PromisedPath:
    member = member_of(who)
    week = FollowedWeek(intake_kcal=ratio * (member.maintenance.mean - deficit_kcal), protein_g=150.0)
    phase = FollowedPhase(
        kind=PhaseKind.MINI_CUT, start_day=START_DAY, weeks=(week,) * 6, maintenance=Estimate(2500.0, 100.0)
    )
    return PromisedPath(phase, member.body, member.subject.protein_kg, ratio, marks)


@pytest.mark.parametrize("who", [MAN, WOMAN])
@pytest.mark.parametrize(("since", "until"), [(0, DAYS), (0, 17), (17, 31), (31, DAYS)])
def test_a_window_is_the_change_that_its_forecast_expects(who: Person, since: int, until: int) -> None:
    """Against the forecast's own change, made point by point; tissue is fat and lean."""
    path = promised(who, 17, 31)
    found = path.change(since, until)
    # Points at the ends of weeks, and on the marks among them.
    points = [0, 7, 14, 17, 21, 28, 31, 35, 42]
    expected = path.forecast.change(points.index(since), points.index(until))
    assert found.fat.mean == pytest.approx(expected.fat_kg.mean)
    assert found.fat.sd == pytest.approx(expected.fat_kg.sd)
    assert found.weight_kg == pytest.approx(expected.weight_kg.mean)
    assert found.tissue.mean == pytest.approx(expected.fat_kg.mean + expected.lean_kg.mean)
    # Fat and lean of one body move together or apart, no further than their sum and difference.
    apart, together = abs(expected.fat_kg.sd - expected.lean_kg.sd), expected.fat_kg.sd + expected.lean_kg.sd
    assert apart - 1e-9 <= found.tissue.sd <= together + 1e-9


def test_windows_add_up_and_none_goes_beyond_the_planned_end() -> None:
    path = promised(MAN, 17)
    parts = [path.change(0, 17), path.change(17, DAYS)]
    whole = path.change(0, DAYS + 20)
    assert sum(part.tissue.mean for part in parts) == pytest.approx(whole.tissue.mean)
    assert sum(part.fat.mean for part in parts) == pytest.approx(whole.fat.mean)
    assert sum(part.weight_kg for part in parts) == pytest.approx(whole.weight_kg)


def test_a_plan_on_the_logging_scale_promises_what_is_eaten() -> None:
    """Who logs nine tenths of what they eat and plans nine tenths of it is promised the same."""
    whole, logged = promised(MAN, ratio=1.0).change(0, DAYS), promised(MAN, ratio=0.9).change(0, DAYS)
    assert logged.fat.mean == pytest.approx(whole.fat.mean)
    assert logged.weight_kg == pytest.approx(whole.weight_kg)
