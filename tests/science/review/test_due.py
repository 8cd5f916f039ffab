"""When a step that is due is taken, and when it would only take back another."""

from types import SimpleNamespace
from typing import Any

import pytest
from steelyard.science.phase.followed import IntakeChange
from steelyard.science.review import due

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
