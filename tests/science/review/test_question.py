"""The one question of a review: it goes by the likeliest cause that is still open, and never asks what is answered."""

from datetime import date

import pytest
from steelyard.science.log import Cause, Explained, Explanation
from steelyard.science.numbers import Estimate
from steelyard.science.person import Sex
from steelyard.science.review.question import Finding, Settled, SettlingTest, question_of

DAY = date(2026, 3, 30).toordinal()


def explained(*likeliest_first: Cause) -> Explained:
    odds = (0.4, 0.3, 0.2, 0.1)
    causes = tuple(Explanation(cause, p) for cause, p in zip(likeliest_first, odds, strict=True))
    return Explained(28, Estimate(0.8, 0.3), Estimate(0.2, 0.3), causes, None)


LOGGED_FIRST = explained(Cause.AS_LOGGED, Cause.LOGGING, Cause.WATER, Cause.MAINTENANCE)
FOOD_FIRST = explained(Cause.LOGGING, Cause.AS_LOGGED, Cause.WATER, Cause.MAINTENANCE)
WATER_FIRST = explained(Cause.WATER, Cause.MAINTENANCE, Cause.LOGGING, Cause.AS_LOGGED)


@pytest.mark.parametrize(
    ("causes", "gap_kcal", "sex", "knows_cycle", "test", "days"),
    [
        (FOOD_FIRST, 350.0, Sex.MALE, False, SettlingTest.WEIGH_FOOD, 7),
        (FOOD_FIRST, -350.0, Sex.FEMALE, False, SettlingTest.WEIGH_FOOD, 7),
        (FOOD_FIRST, 150.0, Sex.MALE, False, SettlingTest.OIL_AND_ALCOHOL, 7),
        (FOOD_FIRST, -150.0, Sex.MALE, False, SettlingTest.WEIGH_FOOD, 7),  # who is lighter forgot no oil
        # That the log is right is no cause of a contradiction: the next in line is asked about.
        (LOGGED_FIRST, 350.0, Sex.MALE, False, SettlingTest.WEIGH_FOOD, 7),
        (WATER_FIRST, 350.0, Sex.MALE, False, SettlingTest.WATER, 14),
        (WATER_FIRST, 350.0, Sex.FEMALE, True, SettlingTest.WATER, 14),
        (WATER_FIRST, 350.0, Sex.FEMALE, False, SettlingTest.CYCLE, 14),
        (WATER_FIRST, 350.0, Sex.UNSPECIFIED, False, SettlingTest.CYCLE, 14),
    ],
)
def test_the_likeliest_cause_is_asked_about(
    causes: Explained, gap_kcal: float, sex: Sex, knows_cycle: bool, test: SettlingTest, days: int
) -> None:
    asked = question_of(causes, gap_kcal, DAY, sex, knows_cycle=knows_cycle, settled=None)
    assert asked is not None
    assert (asked.test, asked.until_day) == (test, DAY + days)
    assert asked.ask.params["date"] == date.fromordinal(DAY + days).isoformat()
    assert asked.causes == causes.causes


@pytest.mark.parametrize(
    ("found", "test"),
    [
        (Finding.NOT_WATER, SettlingTest.WEIGH_FOOD),  # the next cause in line
        (Finding.NOT_DONE, SettlingTest.WATER),
        (Finding.WATER, None),
        (Finding.AS_LOGGED, None),
        (Finding.MORE_THAN_LOGGED, None),
    ],
)
def test_what_was_found_is_not_asked_again(found: Finding, test: SettlingTest | None) -> None:
    settled = Settled(day=DAY - 1, found=found)
    asked = question_of(WATER_FIRST, 350.0, DAY, Sex.MALE, knows_cycle=False, settled=settled)
    assert (None if asked is None else asked.test) == test


def test_without_an_explanation_nothing_is_asked() -> None:
    assert question_of(None, 350.0, DAY, Sex.MALE, knows_cycle=False, settled=None) is None
