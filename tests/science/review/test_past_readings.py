"""A log as a review reads it for a past day: nothing of a later day is in it."""

from steelyard.science.log import EventKind, IntakeDay, Log, LoggedEvent, Measured, StepsDay, Weighing
from steelyard.science.log.cleaning import clean_log
from steelyard.science.measures import HeightAndWeight
from steelyard.science.person import CheckIn
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
    assert log_up_to(LOG, FIRST + 19, FIRST + 19) == (LOG, 0)
    assert clean_log(kept, FIRST + 12).first_day == FIRST


def test_nothing_of_any_kind_is_known_before_its_day() -> None:
    """Every kind of entry that a log has: one that is added to it is cut, or this fails."""
    whole = Log(
        [Weighing(FIRST + day, 80.0) for day in (0, 9)],
        [IntakeDay(FIRST + 9, 2400.0)],
        [FIRST + 9],
        [LoggedEvent(FIRST + 9, EventKind.TRAVEL)],
        [Measured(FIRST + 9, HeightAndWeight(), "log.measurements[0]")],
        [CheckIn(FIRST + 9, 3, 3, 3, None, None)],
        [StepsDay(FIRST + 9, 8000.0)],
    )
    kinds = [name for name in Log.__struct_fields__ if name != "onset"]
    assert all(getattr(whole, name) for name in kinds)
    assert {name for name in kinds if getattr(log_until(whole, FIRST + 8), name)} == {"weighings"}
    # A day's food and steps are known when it is over.
    on_it = {name for name in kinds if len(getattr(log_until(whole, FIRST + 9), name)) == len(getattr(whole, name))}
    assert on_it == {*kinds} - {"intakes", "steps"}
    assert log_until(whole, FIRST + 10) == whole
    assert log_up_to(whole, FIRST + 8, FIRST + 9)[1] == len(kinds)
