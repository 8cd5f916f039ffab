"""The rest of a phase: what the rails leave of it, and the deficit that they name."""

from types import SimpleNamespace
from typing import Any

import msgspec
import pytest
from review_people import AS_PLANNED, CLEAR, Habits, Member
from science.rails.test_guard_rails import subject
from steelyard.science.numbers import Estimate
from steelyard.science.phase import PhaseKind
from steelyard.science.rails import DeficitLimit, Why, first_broken
from steelyard.science.review import review_phase
from steelyard.science.review.correction import IntakeLimits, RestOfPhase
from steelyard.science.review.deficit_advice import DeficitAdvice
from steelyard.science.review.due import read_on
from steelyard.science.review.hold_or_gain_advice import HoldOrGainAdvice
from steelyard.science.review.step import Held, held_step, with_room


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


@pytest.mark.parametrize(("seed", "day"), [(4, 14), (17, 21)])
def test_a_deficit_soon_after_another_is_corrected_within_the_rails_of_a_long_one(seed: int, day: int) -> None:
    alone = rest(seed, 6, 500.0, day)
    member = Member(seed)
    phase = member.plan(6, deficit_kcal=500.0, fat_loss_kg=9.0)
    member.follow(phase, day, AS_PLANNED)
    after = msgspec.structs.replace(phase, weeks_before=8.0)
    course = read_on(member.told(), after, member.log, member.day).course
    least = course.limits(course.days_left).least
    told = course.told(least, course.days_left)
    resting_kcal = course.subject.resting_kcal * course.subject.scale.most
    assert min(week.intake_kcal for week in told) >= resting_kcal - 1.0
    assert least >= alone.limits(alone.days_left).least
    assert alone.weeks_gone == day / 7
    assert course.weeks_gone == 8.0 + day / 7


@pytest.mark.parametrize(
    ("fat_kg", "lean_kg", "more_kcal"),
    [(6.0, 2.0, (13.0 * 6.0 + 92.0 * 2.0) / 4.184), (0.0, 0.0, 0.0), (-6.0, -2.0, 0.0)],  # kJ/kg/d: Hall KD, 2011
)
def test_floors_at_rest_are_those_of_a_body_that_gained_and_no_lower_of_one_that_lost(
    fat_kg: float, lean_kg: float, more_kcal: float
) -> None:
    course = rest(1, 8, 400.0, 21)
    settled_kg = course.subject.weight_kg - float(course.state.carried_kg)
    began = course.subject._replace(weight_kg=settled_kg, carried_kg=0.0)
    began = began._replace(rested_fat_kg=began.fat_kg).rested_with(0.0)
    now = course.now.body
    fat = Estimate(now.fat_kg.mean + fat_kg, now.fat_kg.sd)
    body = course.now._replace(
        body=now._replace(weight_kg=now.weight_kg + fat_kg + lean_kg, fat_kg=fat), water_off_kg=0.0
    )
    then = RestOfPhase(course.phase, began, body, course.ratio, course.phase.start_day + 21)
    # What is carried of the usual belongs to a body, to some grams.
    assert then.subject.resting_now_kcal - began.resting_now_kcal == pytest.approx(more_kcal, abs=3.0)
    assert then.held.resting_now_kcal == then.in_deficit.resting_now_kcal == then.subject.resting_now_kcal
    assert then.subject_at(then.state).resting_now_kcal == pytest.approx(then.subject.resting_now_kcal, abs=1.0)


@pytest.mark.parametrize("jump_kg", [0.0, 1.5, -1.5])
def test_a_weeks_water_is_no_body_mass(jump_kg: float) -> None:
    """A jump of water a week ago makes nobody heavier or lighter to the rail on body mass index, near enough."""
    off = []
    for seed in range(30):
        member = Member(seed)
        phase = member.plan(8)
        member.follow(phase, 28, Habits(jump_kg=jump_kg, jump_day=21))
        course = read_on(member.told(), phase, member.log, member.day).course
        off.append(course.subject.settled_kg - float(member.state.weight_kg - member.state.carried_kg))
        later = course.subject_at(course.end(0.0, 14))
        assert later.settled_kg == pytest.approx(
            course.subject.settled_kg + course.tissue_ahead(0.0, 14), abs=1e-6
        )  # the water that is there now is none of the later body either
    # As a whole 1.2 kg of such a jump was counted as body. The log splits a single one to some 0.4 kg.
    assert abs(sum(off) / len(off)) < 0.5


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
    assert HoldOrGainAdvice._comes_too_low(hold) is is_too_low


WHY = DeficitLimit("intake_floor", 400.0, Why.LEAST_INTAKE)


@pytest.mark.parametrize(
    ("least", "step", "told"),
    [
        (-300.0, -120.0, -120),  # far from the edge nothing is held back
        (-120.0, -120.0, -70),  # up to the edge there is room to be left
        (-120.0, -60.0, -60),
        (-90.0, -90.0, 0),  # what is left of it is not worth telling
        (-20.0, -200.0, 0),
        (40.0, -100.0, 90),  # a rise has its room already
    ],
)
def test_a_step_down_leaves_room_over_its_rail_so_that_the_next_review_takes_nothing_back(
    least: float, step: float, told: int
) -> None:
    limits = IntakeLimits(least, 500.0, WHY, None, [])
    held = with_room(held_step(limits, step, 0.0), limits)
    assert held.change_kcal == told
    assert held.is_raised == (told > step)
    # A week later the same step is asked for, and the rails have moved by less than the room.
    moved = IntakeLimits(least - told + 40.0, 500.0, WHY, None, [])
    assert told >= 0 or held_step(moved, 0.0, 0.0).change_kcal == 0


@pytest.mark.parametrize("floor_kcal", [-30.0, 0.0])
def test_a_hold_that_a_floor_keeps_is_not_told_to_eat_less_than_nothing_more(
    monkeypatch: pytest.MonkeyPatch, floor_kcal: float
) -> None:
    """'Eat -30 kcal a day more, to be safe' is no sentence."""
    member = Member(8)
    cut = member.plan(8)
    week = msgspec.structs.replace(cut.weeks[0], intake_kcal=10.0 * round(cut.maintenance.mean / 10.0))
    phase = msgspec.structs.replace(cut, kind=PhaseKind.MAINTENANCE, weeks=(week,) * 10)
    member.follow(phase, 42, Habits(unlogged_kcal=500.0))
    assert review_phase(member.told(CLEAR), phase, member.log, member.day).advice.correction_kcal < -50
    limits = RestOfPhase._held_limits

    def near(self: RestOfPhase, days: int) -> IntakeLimits:
        return limits(self, days)._replace(least=floor_kcal)

    monkeypatch.setattr(RestOfPhase, "_held_limits", near)
    found = review_phase(member.told(CLEAR), phase, member.log, member.day)
    assert found.advice.correction_kcal == floor_kcal
    said = {reason.code: dict(reason.params) for reason in found.reasons}
    assert "REVIEW_RAISED_BY_RAIL" not in said
    assert float(said["REVIEW_CORRECTION_HELD"]["missing_kcal"]) > 0.0
    # What is lowered all the same is told before what is missing.
    assert float(said.get("REVIEW_STEPPED", {"correction_kcal": 0.0})["correction_kcal"]) == floor_kcal


def test_a_deficit_is_told_its_step_where_a_rail_holds_the_rest_of_it() -> None:
    advice = DeficitAdvice.__new__(DeficitAdvice)
    advice.reasons = []
    advice._explain(IntakeLimits(-130.0, 500.0, WHY, None, []), Held(-130, is_raised=True), -200.0)
    assert [reason.code for reason in advice.reasons] == ["REVIEW_STEPPED", "REVIEW_CORRECTION_HELD"]
    assert [dict(reason.params).get("step_kcal") for reason in advice.reasons] == [130, None]


@pytest.mark.parametrize(
    ("most", "to_maintenance", "told"),
    [
        (-30.0, -200, -80),  # room, of a gain well over maintenance
        (-30.0, -60, -60),  # of one that may hardly be over it, as much as there is
        (-30.0, -30, -30),
        (-190.0, -260, -200),  # and never more than a step
    ],
)
def test_room_under_the_fastest_gain_ends_at_maintenance(most: float, to_maintenance: int, told: int) -> None:
    limits = IntakeLimits(-500.0, most, WHY, None, [])
    assert HoldOrGainAdvice._lowered(limits, to_maintenance) == told


def unmeasured(planned_kcal: float, maintenance_kcal: float) -> RestOfPhase:
    """Four weeks left of a mini-cut of somebody whose body fat was not measured, once maintenance is known better."""
    member = Member(3)
    phase = member.plan(6, deficit_kcal=300.0)
    week = msgspec.structs.replace(phase.weeks[0], intake_kcal=planned_kcal, carbohydrate_g=None)
    phase = msgspec.structs.replace(phase, weeks=(week,) * 6, maintenance=Estimate(2400.0, 120.0), fat_loss_kg=None)
    member.follow(phase, 14, AS_PLANNED)
    read = read_on(member.told(), phase, member.log, member.day).course
    body = read.now.body._replace(maintenance_kcal=Estimate(maintenance_kcal, 100.0))
    subject = read.subject._replace(is_fat_measured=False)
    return RestOfPhase(phase, subject, read.now._replace(body=body), 1.0, member.day)


@pytest.mark.parametrize(
    ("planned_kcal", "maintenance_kcal"),
    [
        (1900.0, 2410.0),
        (1900.0, 2460.0),  # the default deficit by the maintenance that it was planned with
        (1900.0, 2350.0),  # less may be told, as far as the default deficit goes
        (1840.0, 2410.0),  # never was
    ],
)
def test_a_better_known_maintenance_makes_no_planned_deficit_too_large_to_begin_with(
    planned_kcal: float, maintenance_kcal: float
) -> None:
    course = unmeasured(planned_kcal, maintenance_kcal)
    limits = course.limits(course.days_left)
    assert limits.why.why is Why.FAT_UNMEASURED
    # The default deficit is 500 kcal, and the phase was planned with a maintenance of 2,400.
    needed = min(2400.0, course.in_deficit.maintenance_kcal)
    assert limits.least == pytest.approx(needed - 500.0 - planned_kcal, abs=1.5)
    assert first_broken(course.told(limits.least, 28), weeks_before=2.0, running_kcal=course.running_kcal) is None
