"""What is told of a week as it is lived: what its days have, what fits and why not, and what no week could hold."""

from datetime import date, timedelta
from typing import Any

import pytest
from msgspec.structs import replace
from plan_people import CLEAR, MAN, START, person
from steelyard import answers
from steelyard.science.member import Told
from steelyard.science.person import (
    FlexibleDay,
    FlexibleKind,
    Person,
    Sex,
    TrainingKind,
    TrainingOnDay,
    Weekday,
    WeekLived,
)
from steelyard.science.phase import DeficitAim, GainAim, HoldAim, ReturnAim
from steelyard.science.rails import Refused
from steelyard.science.register import Contradiction

LIFTS = tuple(
    TrainingOnDay(day, TrainingKind.RESISTANCE, 60.0) for day in (Weekday.MONDAY, Weekday.WEDNESDAY, Weekday.FRIDAY)
)
MINI = DeficitAim(weeks=3, deficit_kcal=300.0)


def party(extra_kcal: float = 300.0, alcohol_g: float = 30.0, on: date | None = None) -> FlexibleDay:
    return FlexibleDay(None if on else Weekday.SATURDAY, on, FlexibleKind.PARTY, extra_kcal, alcohol_g)


def plan(lived: WeekLived, aim: Any = MINI, who: Person = MAN, **others: Any) -> answers.Answered[Any]:
    fields = {"told": Told(who, CLEAR), "start": START, "aim": aim, "then": ReturnAim(gain_weeks=2), "lived": lived}
    return answers.plan_phases(answers.PlanAsked(**{**fields, **others}))


def days_of(answer: answers.Answered[Any], phase: int = 0, week: int = 0) -> list[answers.DayPlanned]:
    days: list[answers.DayPlanned] = answer.value.phases[phase].weeks[week].days.days
    return days


def codes(answer: answers.Answered[Any], phase: int = 0) -> set[str]:
    said = answer.value.phases[phase].phase.guidance
    return {one.code for one in [*said, *answer.reasons, *answer.cautions]} | {a.message.code for a in answer.actions}


def test_each_phase_tells_each_day_and_keeps_its_weeks() -> None:
    answer = plan(WeekLived(training=LIFTS, flexible=(party(),)))
    for phase in answer.value.phases:
        for week in phase.weeks:
            told = week.days.days
            assert [day.on for day in told] == [week.week.start + timedelta(days=i) for i in range(7)]
            assert sum(day.macros.intake_kcal for day in told) == 7 * week.week.intake.intake_kcal
            assert {day.weekday: day.alcohol_g for day in told if day.alcohol_g} == {Weekday.SATURDAY: 30}
            assert {day.training_minutes for day in told if day.weekday is Weekday.MONDAY} == {60.0}
    assert {"TRAINING_DAYS_MORE", "FLEXIBLE_DAYS_PAID", "ALCOHOL_COUNTED", "HIGHER_DAYS_LOSE_NO_MORE"} <= codes(answer)


def test_the_forecast_credits_higher_days_with_nothing() -> None:
    plain = answers.plan_phases(
        answers.PlanAsked(told=Told(MAN, CLEAR), start=START, aim=MINI, then=ReturnAim(gain_weeks=2))
    )
    lived = plan(WeekLived(training=LIFTS, flexible=(party(),)))
    assert [phase.change for phase in plain.value.phases] == [phase.change for phase in lived.value.phases]


def test_that_higher_days_lose_no_more_is_said_where_days_differ() -> None:
    alike = tuple(TrainingOnDay(day, TrainingKind.RESISTANCE, 30.0) for day in Weekday)
    assert "HIGHER_DAYS_LOSE_NO_MORE" in codes(plan(WeekLived(training=LIFTS)))
    assert "HIGHER_DAYS_LOSE_NO_MORE" not in codes(plan(WeekLived(training=alike)))
    assert "HIGHER_DAYS_LOSE_NO_MORE" not in codes(plan(WeekLived(meals_per_day=4)))


def test_that_higher_days_lose_no_more_is_said_of_a_deficit_alone() -> None:
    answer = plan(WeekLived(training=LIFTS, flexible=(party(),)))
    kinds = [phase.phase.kind for phase in answer.value.phases]
    assert kinds == ["mini_cut", "maintenance", "gain"]
    own = [{note.code for note in phase.phase.guidance} for phase in answer.value.phases]
    assert ["HIGHER_DAYS_LOSE_NO_MORE" in codes for codes in own] == [True, False, False]
    assert all("FLEXIBLE_DAYS_PAID" in codes for codes in own)


def test_a_date_is_one_day_of_one_week() -> None:
    answer = plan(WeekLived(flexible=(party(on=START + timedelta(days=9)),)))
    assert [day.on for week in range(3) for day in days_of(answer, 0, week) if day.flexible] == [date(2026, 3, 11)]
    later = START + timedelta(days=400)
    assert "FLEXIBLE_DAY_AFTER_PLAN" in codes(plan(WeekLived(flexible=(party(on=later),))))


def test_what_does_not_fit_is_capped_with_its_rule_and_what_would_fit() -> None:
    answer = plan(WeekLived(flexible=(party(3000.0, 150.0),)), DeficitAim(weeks=3, deficit_kcal=550.0))
    (cap,) = [action for action in answer.actions if action.message.code == "CAPPED_FLEXIBLE_DAYS"]
    assert cap.observed == pytest.approx(3000.0 + 150 * 7.1)
    assert cap.limit is not None
    assert cap.limit < cap.observed
    least = cap.message.params["least_intake_kcal"]
    for phase_week in answer.value.phases[0].weeks:
        food = [day.macros.intake_kcal - 7.1 * day.alcohol_g for day in phase_week.days.days]
        assert min(food) >= float(least) - 30.0  # of that week's own body


def test_training_that_the_profile_does_not_count_is_asked_about() -> None:
    daily = tuple(TrainingOnDay(day, TrainingKind.RUNNING, 120.0) for day in Weekday)
    assert "WEEK_BEYOND_PROFILE" in codes(plan(WeekLived(training=daily)))
    assert "WEEK_BEYOND_PROFILE" not in codes(plan(WeekLived(training=LIFTS)))


def test_a_met_of_ones_own_decides_what_a_session_burns() -> None:
    hard, usual = (
        plan(WeekLived(training=(TrainingOnDay(Weekday.MONDAY, TrainingKind.OTHER, 60.0, met),))) for met in (11.0, 6.0)
    )
    # (MET - 1) of resting energy in an hour (Byrne NM, et al. J Appl Physiol 2005;99:1112-9).
    assert days_of(hard)[0].training_kcal == pytest.approx(2.0 * days_of(usual)[0].training_kcal)


def test_meals_and_plants() -> None:
    usual, plants = (plan(WeekLived(meals_per_day=3, is_plant_based=is_plant)) for is_plant in (False, True))
    assert len(days_of(usual)[0].meals_protein_g) == 3
    assert days_of(plants)[0].macros.protein_g == pytest.approx(1.1 * 160, abs=5)
    assert days_of(usual)[0].macros.protein_g == 160
    assert "PLANT_PROTEIN" in codes(plants)
    assert "MEALS_FEWER" not in codes(usual)
    assert "MEALS_FEWER" in codes(plan(WeekLived(meals_per_day=8)))
    asked = plan(WeekLived(is_plant_based=True), DeficitAim(weeks=3, protein_g_per_kg=1.8))
    assert days_of(asked)[0].macros.protein_g == 145
    assert "PLANT_PROTEIN" not in codes(asked)


def test_protein_of_the_obese_is_for_less_than_they_weigh() -> None:
    stout = person(Sex.MALE, 120.0, 180.0, 0.38)
    answer = plan(WeekLived(), who=stout)
    assert answer.value.protein_reference_kg == pytest.approx(93.0)
    assert days_of(answer)[0].macros.protein_g == 190
    assert "PROTEIN_REFERENCE" in codes(answer)
    assert "PROTEIN_REFERENCE" not in codes(plan(WeekLived()))


@pytest.mark.parametrize(
    ("lived", "others", "code", "field"),
    [
        (WeekLived(), {"split": answers.SplitAsked(3, 0.2)}, "WEEK_AND_SPLIT", "day_split"),
        (
            WeekLived(flexible=(FlexibleDay(None, None, FlexibleKind.OTHER, 100.0, 0.0),)), {},
            "FLEXIBLE_DAY_WHEN", "week.flexible_days[0]",
        ),
        (
            WeekLived(flexible=(party(), FlexibleDay(Weekday.MONDAY, START, FlexibleKind.OTHER, 100.0, 0.0))), {},
            "FLEXIBLE_DAY_WHEN", "week.flexible_days[1]",
        ),
        (WeekLived(flexible=(party(0.0, 0.0),)), {}, "FLEXIBLE_DAY_EMPTY", "week.flexible_days[0]"),
        (
            WeekLived(flexible=(party(on=START - timedelta(days=1)),)), {},
            "FLEXIBLE_DAY_BEFORE_START", "week.flexible_days[0].date",
        ),
    ],
)  # fmt: skip
def test_what_cannot_stand_together_is_named(lived: WeekLived, others: Any, code: str, field: str) -> None:
    with pytest.raises(Contradiction) as raised:
        plan(lived, **others)
    assert (raised.value.code, raised.value.field) == (code, field)


def test_who_may_not_diet_has_no_lower_days_but_may_have_meals() -> None:
    minor = replace(MAN, age_years=16)
    for aim in (GainAim(weeks=4), HoldAim(weeks=4)):
        with pytest.raises(Refused):
            plan(WeekLived(training=LIFTS), aim, minor, then=ReturnAim(gain_weeks=0))
        assert days_of(plan(WeekLived(meals_per_day=5), aim, minor, then=ReturnAim(gain_weeks=0)))
