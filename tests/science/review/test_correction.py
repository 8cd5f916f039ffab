"""The rest of a phase: what the rails leave of it, and the deficit that they name."""

from types import SimpleNamespace
from typing import Any

import pytest
from review_people import AS_PLANNED, Member
from science.rails.test_guard_rails import subject
from steelyard.science.numbers import Estimate
from steelyard.science.rails import first_broken
from steelyard.science.review import advice
from steelyard.science.review.correction import RestOfPhase
from steelyard.science.review.due import read_on


def rest(seed: int, weeks: int, deficit_kcal: float, day: int) -> RestOfPhase:
    """What is left of a phase of even weeks after some days of it."""
    member = Member(seed)
    phase = member.plan(weeks, deficit_kcal=deficit_kcal, fat_loss_kg=9.0)
    member.follow(phase, day, AS_PLANNED)
    return read_on(member.told(), phase, member.log, member.day).course


# The last four are bound by the bodies to come, not by today's.
CASES = [
    (1, 8, 400.0, 21),
    (4, 6, 500.0, 14),
    (8, 14, 500.0, 21),
    (14, 14, 500.0, 7),
    (15, 10, 300.0, 21),
    (17, 6, 500.0, 21),
]


@pytest.mark.parametrize(("seed", "weeks", "deficit_kcal", "day"), CASES)
def test_the_least_change_leaves_the_deficit_that_its_rule_allows(
    seed: int, weeks: int, deficit_kcal: float, day: int
) -> None:
    """What is needed less what is told: to a kilocalorie, as whoever bisects stops there."""
    course = rest(seed, weeks, deficit_kcal, day)
    limits = course.limits(course.days_left)
    (planned,) = set(course.intakes(0.0, course.days_left))
    left = course.in_deficit.maintenance_kcal - (planned + limits.least)
    assert limits.why.deficit_kcal == pytest.approx(left, abs=1e-6)


@pytest.mark.parametrize(("seed", "weeks", "deficit_kcal", "day"), CASES[2:])
def test_the_least_change_breaks_no_rule_on_the_way_and_less_would(
    seed: int, weeks: int, deficit_kcal: float, day: int
) -> None:
    course = rest(seed, weeks, deficit_kcal, day)
    least = course.limits(course.days_left).least

    def broken(change_kcal: float) -> object:
        return first_broken(course.told(change_kcal, course.days_left), weeks_before=course.days_gone / 7)

    assert broken(least) is None
    # What is served moves by steps, so that a rule may leave a gap of a kilocalorie.
    assert broken(least - 1.0) is not None or broken(least - 2.0) is not None


def test_what_was_worked_out_once_follows_what_is_known_since() -> None:
    course = rest(*CASES[0])
    as_told = course.end(0.0, 28)
    course.share_followed = 0.9
    assert course.end(0.0, 28).fat_kg < as_told.fat_kg
    assert course.followed_by(1.1).end(0.0, 28).fat_kg > as_told.fat_kg
    course.suppose(Estimate(course.maintenance_kcal + 300.0, 100.0))
    assert course.share_followed == 1.0
    assert course.end(0.0, 28).fat_kg < as_told.fat_kg


# --- a hold that is eaten under ---------------------------------------------------------------------------------------


def course_to(fat_kg: float, weight_kg: float, *, now_fat_kg: float = 6.0, now_kg: float = 80.0) -> Any:
    """A man of 1.80 m who comes to a body; the least body fat of a deficit is 6 % in men, the least index 18.5."""
    today = subject(fat_kg=now_fat_kg, weight_kg=now_kg)
    then = today.with_body(weight_kg, fat_kg, today.maintenance_kcal, 0.0)
    return SimpleNamespace(subject=today, days_left=70, end=lambda change, days: then, subject_at=lambda state: state)


@pytest.mark.parametrize(
    ("course", "is_too_low"),
    [
        (course_to(4.5, 78.0), True),  # 5.8 %
        (course_to(4.9, 78.0), False),  # 6.3 %
        (course_to(5.8, 59.5, now_fat_kg=6.5, now_kg=61.0), True),  # an index of 18.4
        (course_to(5.8, 60.5, now_fat_kg=6.5, now_kg=61.0), False),
        (course_to(4.4, 80.0, now_fat_kg=4.2), False),  # fat is gained
    ],
)
def test_what_is_eaten_under_maintenance_may_not_lead_where_no_deficit_may(course: Any, *, is_too_low: bool) -> None:
    hold: Any = SimpleNamespace(course=course)
    assert advice._HoldOrGain._comes_too_low(hold) is is_too_low
