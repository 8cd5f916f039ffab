"""What is odd about one day of a log is noted once, not at every review while the log is handed on."""

from datetime import date, timedelta

import pytest
from steelyard.science.register.message import Message, say
from steelyard.science.review.notes import still_to_note

TODAY = date(2026, 6, 15)


def odd(days_ago: int, code: str = "TREND_OUTLIER") -> Message:
    on = (TODAY - timedelta(days=days_ago)).isoformat()
    return say(code, date=on, **({"jump_kg": 1.5} if code == "TREND_WATER_JUMP" else {"deviation_kg": 2.4}))


@pytest.mark.parametrize(
    ("days_ago", "told_days_ago", "is_noted"),
    [
        (0, None, True),
        (14, None, True),
        (15, None, False),
        (5, 7, True),  # since the last review
        (10, 7, True),  # shortly before it, when nobody could tell yet
        (11, 7, False),
        (4, 1, True),
        (5, 1, False),  # daily calls
        (15, 40, False),
        (14, -1, True),  # a review of a later day tells nothing of this one
    ],
)
def test_one_weighing_is_noted_once(days_ago: int, told_days_ago: int | None, is_noted: bool) -> None:
    told = None if told_days_ago is None else TODAY.toordinal() - told_days_ago
    assert still_to_note([odd(days_ago)], TODAY.toordinal(), told) == ([odd(days_ago)] if is_noted else [])


def test_water_is_noted_as_long_as_anything_may_be_and_what_goes_on_always() -> None:
    water, old_water = odd(12, "TREND_WATER_JUMP"), odd(20, "TREND_WATER_JUMP")
    lasting = say("TREND_UNDER_LOGGED", percent=15.0)
    assert still_to_note([water, old_water, lasting], TODAY.toordinal(), TODAY.toordinal() - 7) == [water, lasting]


def test_whether_it_is_too_early_to_tell_is_left_to_the_verdict() -> None:
    """A verdict that is 98 % sure came with a note that it is too early to tell, of the week's rate."""
    notes = [say("TREND_TOO_EARLY", more_days=4), say("TREND_TOO_SPARSE", more_days=56), odd(1)]
    assert still_to_note(notes, TODAY.toordinal(), None) == [odd(1)]
