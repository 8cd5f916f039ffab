"""The one question of a review: it goes by the likeliest cause that is still open, and never asks what is answered."""

from datetime import date

import pytest
from steelyard.science.log import Cause, EventKind, Explained, Explanation, LoggedEvent
from steelyard.science.numbers import Estimate
from steelyard.science.person import Sex
from steelyard.science.review.question import Finding, LastAsked, OpenQuestion, Settled, SettlingTest, question_of

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


@pytest.mark.parametrize("causes", [FOOD_FIRST, WATER_FIRST])
def test_to_whom_no_leanness_is_spoken_of_no_weighing_is_asked_of(causes: Explained) -> None:
    told = question_of(causes, 350.0, DAY, Sex.FEMALE, knows_cycle=True, settled=None, speaks=False)
    usual = question_of(causes, 350.0, DAY, Sex.FEMALE, knows_cycle=True, settled=None)
    assert told is not None
    assert usual is not None
    assert (told.ask.code, told.conclusions) == ("QUESTION_WITH_CLINICIAN", [])
    assert told.test is SettlingTest.CLINICIAN
    assert told._replace(ask=usual.ask, conclusions=usual.conclusions, asked=usual.asked) == usual


@pytest.mark.parametrize("speaks", [True, False])
def test_what_was_asked_before_somebody_may_not_be_asked_it_is_asked_otherwise(speaks: bool) -> None:
    before = LastAsked(day=DAY - 2, test=SettlingTest.CLINICIAN if speaks else SettlingTest.WEIGH_FOOD)
    told = question_of(FOOD_FIRST, 350.0, DAY, Sex.MALE, knows_cycle=False, settled=None, asked=before, speaks=speaks)
    assert told is not None
    assert told.asked == LastAsked(day=DAY, test=SettlingTest.WEIGH_FOOD if speaks else SettlingTest.CLINICIAN)


def test_without_an_explanation_nothing_is_asked() -> None:
    assert question_of(None, 350.0, DAY, Sex.MALE, knows_cycle=False, settled=None) is None


def asked_on(day: int, asked: LastAsked | None, causes: Explained = FOOD_FIRST) -> OpenQuestion:
    found = question_of(causes, 350.0, day, Sex.MALE, knows_cycle=False, settled=None, asked=asked)
    assert found is not None
    return found


def test_an_open_question_keeps_the_day_until_which_to_wait() -> None:
    """Whatever becomes the likeliest in between: one thing is asked at a time."""
    first = asked_on(DAY, None)
    for day in range(DAY + 1, DAY + 28):
        again = asked_on(day, first.asked, WATER_FIRST)
        assert again.asked == first.asked
        assert again.ask == first.ask
        assert again.conclusions == first.conclusions


def test_a_question_that_nobody_answers_is_asked_again_after_four_weeks_by_what_is_then_the_likeliest() -> None:
    asked, days = None, []
    for day in range(DAY, DAY + 85, 7):
        found = asked_on(day, asked, FOOD_FIRST if day < DAY + 28 else WATER_FIRST)
        days += [day - DAY] if asked != found.asked else []
        asked = found.asked
    assert days == [0, 28, 56, 84]
    assert asked == LastAsked(day=DAY + 84, test=SettlingTest.WATER, times=4)


@pytest.mark.parametrize(
    ("asked", "settled", "knows_cycle", "test"),
    [
        (SettlingTest.WATER, Finding.NOT_WATER, False, SettlingTest.WEIGH_FOOD),
        (SettlingTest.CYCLE, None, True, SettlingTest.WATER),  # periods are in the log by now
        (SettlingTest.CYCLE, None, False, SettlingTest.CYCLE),
        (SettlingTest.WEIGH_FOOD, Finding.NOT_DONE, False, SettlingTest.WEIGH_FOOD),
    ],
)
def test_an_answer_that_leaves_more_to_ask_lets_the_next_question_follow_at_once(
    asked: SettlingTest, settled: Finding | None, knows_cycle: bool, test: SettlingTest
) -> None:
    last = LastAsked(day=DAY - 3, test=asked)
    answer = None if settled is None else Settled(day=DAY - 1, found=settled)
    found = question_of(WATER_FIRST, 350.0, DAY, Sex.FEMALE, knows_cycle=knows_cycle, settled=answer, asked=last)
    assert found is not None
    assert found.test is test
    assert (found.asked.day == DAY) is (test is not asked)
    assert found.asked.times == 1


ALL_WATER = [
    LoggedEvent(DAY - 20, kind)
    for kind in (
        EventKind.CREATINE_STOP,
        EventKind.FESTIVE_DAYS,
        EventKind.NEW_PROGRAMME,
        EventKind.ILLNESS,
        EventKind.TRAVEL,
    )
]


def test_of_water_nothing_is_asked_that_was_told() -> None:
    """Where all of it was told the next cause is asked about."""
    for i, (name, told) in enumerate(
        zip(("creatine", "salt", "training", "illness", "travel"), ALL_WATER, strict=True)
    ):
        found = question_of(WATER_FIRST, 350.0, DAY, Sex.MALE, knows_cycle=False, settled=None, events=[told])
        assert found is not None
        flags = [found.ask.params[flag] for flag in ("creatine", "salt", "training", "illness", "travel")]
        assert flags == ["no" if j == i else "yes" for j in range(5)], name
        old = [told._replace(day=DAY - 60)]
        found = question_of(WATER_FIRST, 350.0, DAY, Sex.MALE, knows_cycle=False, settled=None, events=old)
        assert found is not None
        assert found.ask.params[name] == "yes"
    found = question_of(WATER_FIRST, 350.0, DAY, Sex.MALE, knows_cycle=False, settled=None, events=ALL_WATER)
    assert found is not None
    assert found.test is SettlingTest.WEIGH_FOOD
