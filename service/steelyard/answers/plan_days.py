"""What is eaten on each day of a plan's weeks, as the member lives them."""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from steelyard.science.measures import bout_kcal
from steelyard.science.person import FlexibleKind, Weekday, WeekLived
from steelyard.science.phase import PlannedWeek
from steelyard.science.rails import (
    CarbohydratePreference,
    DayAsked,
    LeastDay,
    Macronutrients,
    RailAction,
    Subject,
    WeekOfDays,
    days_of_week,
    fed_least,
    flexible_capped,
    meals_of,
    useful_meals,
)
from steelyard.science.register import Message, say, traced

_NOTABLE_KCAL = 10.0  # as intakes are told
_WITHIN_SHARE = 0.995  # of what training days ask for: what is missing of it shows in no told intake
# A week that burns so much more than the maintenance counts is another than the profile's; judgement.
_BEYOND_PROFILE = 1.25


class DayPlanned(NamedTuple):
    """A day: what to eat, its alcohol [g], what its training burns [kcal] and takes [min], protein by meal [g]."""

    on: date
    weekday: Weekday
    macros: Macronutrients
    alcohol_g: int
    training_kcal: float
    training_minutes: float
    flexible: FlexibleKind | None
    meals_protein_g: list[int]


class DaysPlanned(NamedTuple):
    """The days of a week, how they were spread, and the least that a day of it may have."""

    days: list[DayPlanned]
    spread: WeekOfDays
    least: LeastDay


@traced
def plan_days(
    lived: WeekLived, week: PlannedWeek, least: LeastDay, subject: Subject, preference: CarbohydratePreference
) -> DaysPlanned:
    """The days of a planned week."""
    least = fed_least(week.intake, least, subject.weight_kg)
    dates = [week.start + timedelta(days=i) for i in range(7)]
    # Training is energy as it is burnt; what is told stands on the scale of the log.
    asked = [
        DayAsked(
            subject.scale.ratio * _burnt(lived, day, subject),
            sum(one.extra_kcal for one in lived.flexible if one.is_on(day)),
            sum(one.alcohol_g for one in lived.flexible if one.is_on(day)),
        )
        for day in dates
    ]
    spread = days_of_week(week.intake, asked, least.kcal, subject.weight_kg, preference)
    days = [
        DayPlanned(
            day,
            Weekday.of(day),
            told.macros,
            told.alcohol_g,
            _burnt(lived, day, subject),
            sum(bout.minutes for bout in lived.training if bout.weekday is Weekday.of(day)),
            next((one.kind for one in lived.flexible if one.is_on(day)), None),
            meals_of(told.macros.protein_g, lived.meals_per_day),
        )
        for day, told in zip(dates, spread.days, strict=True)
    ]
    return DaysPlanned(days, spread, least)


def _burnt(lived: WeekLived, day: date, subject: Subject) -> float:
    on = Weekday.of(day)
    return sum(
        bout_kcal(bout.kind, bout.minutes, subject.resting_kcal, bout.met)
        for bout in lived.training
        if bout.weekday is on
    )


@traced
def notes_on_days(
    lived: WeekLived, weeks: Sequence[DaysPlanned], subject: Subject, *, is_protein_open: bool, is_deficit: bool
) -> list[Message]:
    """What is said of the days of a phase's weeks; ``is_protein_open`` where nobody asked for an amount of it."""
    said = [*_of_training(weeks), *_of_flexible_days(weeks, is_deficit), *_of_meals(lived, weeks, subject)]
    if lived.is_plant_based and is_protein_open:
        said.append(say("PLANT_PROTEIN"))
    return said


def _of_training(weeks: Sequence[DaysPlanned]) -> Iterable[Message]:
    burnt = [day.training_kcal for day in weeks[0].days]
    if max(burnt) - min(burnt) < _NOTABLE_KCAL:
        return
    moved = min(weeks, key=lambda week: week.spread.moved_share)
    if moved.spread.moved_share >= _WITHIN_SHARE:
        yield say("TRAINING_DAYS_MORE", training_kcal=max(burnt))
    else:
        yield say(
            "TRAINING_DAYS_LIMITED",
            percent=100 * moved.spread.moved_share,
            least_intake_kcal=moved.least.kcal,
            rule=moved.least.rule,
            why=moved.least.why,
        )


def _of_flexible_days(weeks: Sequence[DaysPlanned], is_deficit: bool) -> Iterable[Message]:
    paid = max(weeks, key=lambda week: week.spread.paid_kcal).spread
    if paid.paid_kcal >= 1.0:
        yield say("FLEXIBLE_DAYS_PAID", paid_kcal=paid.paid_kcal)
    if any(day.alcohol_g for week in weeks for day in week.days):
        yield say("ALCOHOL_COUNTED")
    moves = paid.asked_kcal > 0.0 or any(week.spread.moved_share > 0.0 and _moves(week) for week in weeks)
    if moves and is_deficit:
        yield say("HIGHER_DAYS_LOSE_NO_MORE")


def _moves(week: DaysPlanned) -> bool:
    return len({day.macros.intake_kcal for day in week.days}) > 1


def _of_meals(lived: WeekLived, weeks: Sequence[DaysPlanned], subject: Subject) -> Iterable[Message]:
    day = weeks[0].days[0]
    most = useful_meals(subject, day.macros.protein_g)
    yield say("MEALS_PROTEIN", meals=lived.meals_per_day, protein_g=max(day.meals_protein_g))
    if lived.meals_per_day > most:
        yield say("MEALS_FEWER", meals=most, protein_g=day.macros.protein_g / most)


def caps_on_days(weeks: Iterable[DaysPlanned]) -> list[RailAction]:
    """What rails took off flexible days: the most of it."""
    found = [week for week in weeks if week.spread.fits_kcal < week.spread.asked_kcal - 1.0]
    if not found:
        return []
    worst = min(found, key=lambda week: week.spread.fits_kcal)
    return [flexible_capped(worst.least, worst.spread.asked_kcal, worst.spread.fits_kcal)]


def doubts_about_week(lived: WeekLived, subject: Subject, last_day: date) -> list[Message]:
    """Training that the maintenance does not count, and days after the plan's last."""
    burnt = sum(bout_kcal(bout.kind, bout.minutes, subject.resting_kcal, bout.met) for bout in lived.training) / 7.0
    doubts = [
        say("FLEXIBLE_DAY_AFTER_PLAN", date=day.date.isoformat(), last_date=last_day.isoformat())
        for day in lived.flexible
        if day.date is not None and day.date > last_day
    ]
    if burnt > _BEYOND_PROFILE * subject.exercise_kcal + _NOTABLE_KCAL:
        doubts.append(say("WEEK_BEYOND_PROFILE", week_kcal=burnt, profile_kcal=subject.exercise_kcal))
    return doubts
