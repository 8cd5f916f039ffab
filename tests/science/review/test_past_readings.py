"""A log as a review reads it for a past day: nothing of a later day is in it."""

from steelyard.science.log import IntakeDay, Log, StepsDay, Weighing
from steelyard.science.log.entries import clean_log
from steelyard.science.review import log_up_to
from steelyard.science.review.due import log_until

FIRST = 738_000
LOG = Log(
    [Weighing(FIRST + day, 80.0) for day in range(20)],
    [IntakeDay(FIRST + day, 2400.0) for day in range(20)],
    steps=[StepsDay(FIRST + day, 8000.0) for day in range(20)],
)


def test_steps_of_later_days_are_left_out_of_a_past_morning() -> None:
    past = log_until(LOG, FIRST + 12)
    assert max(counted.day for counted in past.steps) == FIRST + 11
    assert clean_log(past, FIRST + 12).first_day == FIRST  # not refused as an entry in the future


def test_steps_after_a_phase_are_left_out_and_counted() -> None:
    kept, left_out = log_up_to(LOG, FIRST + 12, FIRST + 19)
    assert max(counted.day for counted in kept.steps) == FIRST + 12
    assert left_out == 3 * 7
    assert clean_log(kept, FIRST + 12).first_day == FIRST
