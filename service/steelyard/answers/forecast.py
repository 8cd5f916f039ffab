"""Where does an intake lead, and which intake or date reaches a target?"""

from datetime import date, timedelta
from typing import NamedTuple

from steelyard.science.body import ALL_SOURCES, DEFICIT_FROM, BodyTarget, PathPoint, TargetQuantity, UncertaintySource
from steelyard.science.log import LogMaintenance, tail_of
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Estimate
from steelyard.science.phase import (
    LEAST_TARGET_DAYS,
    CutsBefore,
    IntakeAnswer,
    ScheduledIntake,
    answer_date,
    answer_intake,
    answer_path,
)
from steelyard.science.rails import (
    CARBOHYDRATE_KCAL_PER_G,
    PROTEIN_KCAL_PER_G,
    Cleared,
    ToldWeek,
    cleared_with,
    least_fat_kcal,
)
from steelyard.science.register import Message, OutOfDomain

from .answered import Answered, answering
from .dates import check_dates, check_not_before_state
from .member import allowed_for, beside_log, counted_on, member_of, what_grows
from .state import known_day, state_of

_MOST_WEEKS = 156  # three years, as of a season; judgement
# Within which a target makes sense, whoever it is for; judgement.
_TARGETS: dict[TargetQuantity, tuple[float, float]] = {
    TargetQuantity.WEIGHT_KG: (30, 300),
    TargetQuantity.FAT_KG: (1, 150),
    TargetQuantity.FAT_FRACTION: (0.03, 0.6),
}


class PathAsked(NamedTuple):
    """Where do these intakes lead, one after the other?"""

    schedule: list[ScheduledIntake]


class IntakeAsked(NamedTuple):
    """Which constant intake reaches a target by a date?"""

    target: BodyTarget
    by: date
    protein_g_per_kg: float


class DateAsked(NamedTuple):
    """When does a constant intake reach a target?"""

    target: BodyTarget
    intake_kcal: float
    protein_g_per_kg: float


class ForecastAsked(NamedTuple):
    """A question about an intake from the day ``start``; ``sources`` of uncertainty are carried by the intervals.

    ``before``: the deficit before that day, of which one to come may be a part, and the cuts already done.
    """

    told: Told
    start: date
    question: PathAsked | IntakeAsked | DateAsked
    sources: frozenset[UncertaintySource] = ALL_SOURCES
    before: CutsBefore = CutsBefore()


class NearestReached(NamedTuple):
    """How near a safe intake comes: the value by the date asked, the date of the target, and that intake."""

    value: float | None
    by: date | None
    intake_kcal: float | None


class WeekForecast(NamedTuple):
    """A week (a shorter one ends a path of days): what is eaten, the energy stored a day, the body at its end."""

    start: date
    last_day: date
    intake_kcal: float
    energy_balance_kcal: float
    at_end: PathPoint


class IntakeTold(NamedTuple):
    """What is told to eat: week by week, the intake that was found, and how near it comes where it falls short."""

    weeks: list[WeekForecast]
    intake_kcal: float | None
    nearest: NearestReached | None


class IntakeForecast(NamedTuple):
    """Where an intake leads. ``nearest`` is set where no safe intake reaches the target.

    ``protein_reference_kg`` is the body mass that the floor of protein is for.
    ``effects`` are what each source moves the change of fat mass at the end by [kg], the largest first.
    """

    maintenance: Estimate
    learnt: LogMaintenance | None
    protein_reference_kg: float
    reached_on: date | None
    told: Cleared[IntakeTold]
    effects: list[tuple[UncertaintySource, float]]

    @property
    def weeks(self) -> list[WeekForecast]:
        """The weeks, which have passed the gate."""
        return self.told.value.weeks

    @property
    def intake_kcal(self) -> float | None:
        """The intake that was found."""
        return self.told.value.intake_kcal

    @property
    def nearest(self) -> NearestReached | None:
        """How near a safe intake comes, where it falls short."""
        return self.told.value.nearest


@answering
def forecast_intake(asked: ForecastAsked) -> Answered[IntakeForecast]:
    """Forecast an intake, or find one. Raises ``OutOfDomain``, and ``Refused`` for an intake that a rule forbids."""
    member = member_of(asked.told, tail_of)
    check_dates({"start_date": asked.start})
    check_not_before_state(asked.told, asked.start, "start_date")
    maintenance = member.maintenance
    found = _answer(asked, member)
    path = found.path
    effects = path.fat_effects(len(path.states) - 1)
    resting = member.assessed.resting
    return Answered(
        IntakeForecast(
            maintenance=maintenance,
            learnt=member.learnt,
            protein_reference_kg=member.subject.protein_kg,
            reached_on=_day(asked, found.reached_day),
            told=cleared_with(_told(asked, found, found.told.value), found.told),
            effects=sorted(effects.items(), key=lambda effect: -abs(effect[1])),
        ),
        reasons=[resting.reason, *found.reasons, *_counted_on(member, found), *allowed_for(path)],
        cautions=[*member.cautions, *beside_log(member, asked.start), *what_grows(member)],
        actions=found.actions,
        state=state_of(member, known_day(member, asked.start)),
    )


def _counted_on(member: Member, found: IntakeAnswer) -> list[Message]:
    """What is expected of a deficit, where one is told: of a hold or a gain nothing is kept or not."""
    kept = member.body.kept
    if kept is None or min(found.path.energy_balances_kcal(), default=0.0) > -kept.mean * DEFICIT_FROM:
        return []
    return counted_on(member)


def _answer(asked: ForecastAsked, member: Member) -> IntakeAnswer:
    question = asked.question
    if isinstance(question, IntakeAsked):
        check_dates({"question.by_date": question.by})
        days = (question.by - asked.start).days
        if not LEAST_TARGET_DAYS <= days <= 7 * _MOST_WEEKS:
            span = f"{LEAST_TARGET_DAYS} days to {_MOST_WEEKS} weeks"
            detail = f"Set a date {span} after the start; this is {days} days after it."
            raise OutOfDomain("DATE_OUT_OF_REACH", "question.by_date", detail)
        _check_target(question.target)
        found = answer_intake(member, question.target, days, question.protein_g_per_kg, asked.sources, asked.before)
        _check_room(
            found.told.value[0].intake_kcal, question.protein_g_per_kg, 0.0, member, "question.protein_g_per_kg"
        )
        return found
    if isinstance(question, DateAsked):
        _check_target(question.target)
        _check_room(question.intake_kcal, question.protein_g_per_kg, 0.0, member, "question.intake_kcal")
        return answer_date(
            member, question.target, question.intake_kcal, question.protein_g_per_kg, asked.sources, asked.before
        )
    _check_schedule(question.schedule, member)
    return answer_path(member, question.schedule, asked.sources, asked.before)


def _check_target(target: BodyTarget) -> None:
    least, most = _TARGETS[target.quantity]
    if not least <= target.value <= most:
        detail = f"Set a target of {least} to {most} for {target.quantity.value}; this is {target.value:g}."
        raise OutOfDomain("TARGET_OUT_OF_RANGE", "question.target.value", detail)


def _check_schedule(schedule: list[ScheduledIntake], member: Member) -> None:
    if sum(stretch.weeks for stretch in schedule) > _MOST_WEEKS:
        detail = f"The schedule is longer than {_MOST_WEEKS} weeks in all: shorten it."
        raise OutOfDomain("SCHEDULE_TOO_LONG", "question.schedule", detail)
    for i, stretch in enumerate(schedule):
        field = f"question.schedule[{i}].intake_kcal"
        _check_room(stretch.intake_kcal, stretch.protein_g_per_kg, stretch.carbohydrate_g or 0.0, member, field)


def _check_room(intake_kcal: float, protein_g_per_kg: float, carbohydrate_g: float, member: Member, field: str) -> None:
    """Raises ``OutOfDomain`` naming ``field`` where macronutrients are more than what is eaten."""
    weight_kg = member.person.weight_kg
    protein = PROTEIN_KCAL_PER_G * protein_g_per_kg * weight_kg
    carbohydrate = CARBOHYDRATE_KCAL_PER_G * carbohydrate_g
    fat = least_fat_kcal(intake_kcal, weight_kg)
    if protein + carbohydrate + fat > intake_kcal:
        detail = (
            f"{protein:.0f} kcal of protein, {carbohydrate:.0f} of carbohydrate and the least {fat:.0f} of fat are "
            f"more than the {intake_kcal:g} kcal eaten."
        )
        raise OutOfDomain("NUTRIENTS_EXCEED_INTAKE", field, detail)


def _told(asked: ForecastAsked, found: IntakeAnswer, weeks: list[ToldWeek]) -> IntakeTold:
    """What is told, every intake of it one of the weeks that passed the gate."""
    constant, nearest = weeks[0].intake_kcal, None
    if not found.is_feasible:
        kcal = constant if found.is_nearest_intake else None
        nearest = NearestReached(found.nearest_value, _day(asked, found.nearest_day), kcal)
    return IntakeTold(_weeks(asked, found, weeks), constant if found.is_found_intake else None, nearest)


def _weeks(asked: ForecastAsked, found: IntakeAnswer, weeks: list[ToldWeek]) -> list[WeekForecast]:
    path = found.path
    points, balances = path.points(), path.energy_balances_kcal()
    days = [int(state.day) for state in path.states]
    return [
        WeekForecast(
            asked.start + timedelta(days=days[i]),
            asked.start + timedelta(days=days[i + 1] - 1),
            week.intake_kcal,
            balances[i],
            points[i + 1],
        )
        for i, week in enumerate(weeks)
    ]


def _day(asked: ForecastAsked, days: int | None) -> date | None:
    return None if days is None else asked.start + timedelta(days=days)
