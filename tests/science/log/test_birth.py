"""A log is read from the birth on: what leaves then is neither tissue nor water."""

import random

import pytest
from steelyard.science.log import IntakeDay, Log, Weighing, since_birth

START = 738000


def weighed(*stretches: tuple[int, int, float], noise_kg: float = 0.4) -> Log:
    """Days from, up to, and the weight on them."""
    rng = random.Random(7)
    days = [(day, kg) for first, last, kg in stretches for day in range(first, last)]
    return Log(
        [Weighing(START + day, round(kg + rng.gauss(0.0, noise_kg), 1)) for day, kg in days],
        [IntakeDay(START + day, 2400.0) for day, _ in days],
    )


@pytest.mark.parametrize("gap", [0, 10, 45])
@pytest.mark.parametrize("fall_kg", [4.5, 7.0])
def test_what_lies_before_a_birth_is_left_out(gap: int, fall_kg: float) -> None:
    log = since_birth(weighed((0, 40, 75.0), (40 + gap, 60 + gap, 75.0 - fall_kg)))
    assert log.weighings[0].day == log.intakes[0].day == START + 40 + gap
    assert len(log.weighings) == len(log.intakes) == 20


@pytest.mark.parametrize(
    "stretches",
    [
        [(0, 60, 75.0)],
        [(0, 40, 75.0), (40, 60, 73.0)],  # a week's water
        [(0, 40, 75.0), (40, 41, 69.0), (41, 60, 75.0)],  # somebody else's morning
        [(0, 40, 75.0), (40, 42, 69.0)],  # too few to tell
        [(0, 40, 75.0), (130, 150, 69.0)],  # months apart
        [(0, 40, 69.0), (40, 60, 75.0)],
    ],
)
def test_nothing_else_is_taken_for_one(stretches: list[tuple[int, int, float]]) -> None:
    log = weighed(*stretches)
    assert since_birth(log) is log
