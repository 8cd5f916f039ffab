"""When a step that is due is taken, and when it would only take back another."""

from types import SimpleNamespace
from typing import Any

import pytest
from msgspec.structs import replace
from review_people import AS_PLANNED, CLEAR, Member
from steelyard.science.log import Log, LogMaintenance
from steelyard.science.numbers import Estimate
from steelyard.science.phase import IntakeChange
from steelyard.science.rails import Scale
from steelyard.science.review import due
from steelyard.science.review.reading import read_phase

START = 738_000


def phase(*changes: tuple[int, float]) -> Any:
    return SimpleNamespace(changes=[IntakeChange(day=START + day, change_kcal=kcal) for day, kcal in changes])


@pytest.mark.parametrize(
    ("changes", "day", "change_kcal", "turns_back"),
    [
        (((14, -100.0),), 41, 150.0, True),  # 27 days after a step down, up
        (((14, -100.0),), 42, 150.0, False),  # four weeks: it has been followed
        (((14, -100.0),), 41, -150.0, False),  # further down takes nothing back
        (((14, 100.0),), 41, -150.0, True),
        (((14, -100.0), (21, 100.0)), 44, -150.0, True),  # the latest of several
        (((14, -100.0), (21, 100.0)), 44, 150.0, False),  # the older one was long ago
        ((), 41, 150.0, False),
        (((14, -100.0),), 41, 0.0, False),
    ],
)
def test_no_step_takes_back_one_of_the_last_four_weeks(
    changes: tuple[tuple[int, float], ...], day: int, change_kcal: float, turns_back: bool
) -> None:
    assert due._turns_back(phase(*changes), change_kcal, START + day) is turns_back


@pytest.fixture(scope="module")
def lived() -> Member:
    """Three weeks with food logged, and three of a cut."""
    member = Member(3)
    member.follow(member.plan(6, deficit_kcal=300.0), 21, AS_PLANNED)
    return member


@pytest.mark.parametrize(
    ("before", "of_plan", "most"), [(False, None, 1.0), (True, 0.9, 0.9), (True, 0.7, 0.8), (True, None, 0.8)]
)
def test_no_rail_gives_way_to_what_was_told_instead_of_logged(
    lived: Member, before: bool, of_plan: float | None, most: float
) -> None:
    """Told days that read as a ratio of 0.8: who never logged is taken to eat all of it, who did to log as much as
    the plan knew at least. Where food is logged the ratio is that of the log."""
    phase = lived.plan(6, deficit_kcal=300.0)
    phase = replace(phase, ratio=None if of_plan is None else Estimate(of_plan, 0.03))
    kept = [entry for entry in lived.log.intakes if before and entry.day < phase.start_day]
    log = Log(lived.log.weighings, kept)
    told = lived.told(CLEAR)
    learnt = LogMaintenance(Estimate(2000.0, 90.0), Estimate(2500.0, 90.0), Estimate(0.8, 0.03), 0.3, 0.7)
    now = read_phase(told, phase, log, lived.day)._replace(maintenance=learnt)
    assert now.eaten.is_hardly_logged
    scale = due._subject(told, phase, log, now).scale
    assert scale.ratio == pytest.approx(most)
    assert scale.most >= told.scale_by(learnt).most
    assert (scale == Scale()) is not before
    logged = read_phase(told, phase, lived.log, lived.day)._replace(maintenance=learnt)
    assert due._subject(told, phase, lived.log, logged).scale == told.scale_by(learnt)
