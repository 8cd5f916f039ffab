"""What is asked of a plan, and what no plan could do, whoever the member is."""

from datetime import date
from typing import NamedTuple, NoReturn

from steelyard.science.body import ALL_SOURCES, UncertaintySource
from steelyard.science.member import Told
from steelyard.science.person import Person, WeekLived
from steelyard.science.phase import (
    DeficitAim,
    GainAim,
    History,
    HoldAim,
    Pace,
    PlanChoice,
    ReturnAim,
)
from steelyard.science.register import Contradiction, OutOfDomain

from .dates import check_dates, check_not_before_state

GOALS = ("fat_loss_kg", "target_fat_fraction", "target_weight_kg")
LEAST_FAT_LOSS_KG = 0.2  # less is not asked for: it is inside the error of every reading
_MOST_WEEKS_TO_EVENT = 156
_PACE_DETAIL = "The size is settled by what else is asked: leave `pace` out, or let it choose the size."


class SplitAsked(NamedTuple):
    """Days of a week with more carbohydrate, and how much more as a share of the mean."""

    higher_days: int
    carbohydrate_shift: float


class PlanAsked(NamedTuple):
    """Which phase, from which day, and what follows it.

    ``event`` is the day to be ready for; ``pause_weeks`` at maintenance come first; ``sources`` of uncertainty are
    carried by the intervals; ``lived`` is how the weeks are lived; ``include``: what to offer beside the plan.
    """

    told: Told
    start: date
    aim: DeficitAim | GainAim | HoldAim
    then: ReturnAim
    event: date | None = None
    pause_weeks: int = 0
    split: SplitAsked | None = None
    lived: WeekLived | None = None
    history: History = History()
    sources: frozenset[UncertaintySource] = ALL_SOURCES
    include: frozenset[PlanChoice] = frozenset()


def check_asked(asked: PlanAsked, person: Person) -> int | None:
    """Raises where no plan could do what is asked of the ``person`` as a state knows them, where there is one.

    Returns the weeks left before an event, where there is one.
    """
    check_dates({"start_date": asked.start})
    check_not_before_state(asked.told, asked.start, "start_date")
    _check_days(asked)
    aim = asked.aim
    if isinstance(aim, HoldAim):
        if asked.pause_weeks:
            detail = "A hold is at maintenance throughout: add the weeks of the pause to `phase.weeks`."
            raise Contradiction("PAUSE_OF_HOLD", "pause", detail)
        return None
    if isinstance(aim, GainAim):
        _check_target_weight(aim.target_weight_kg, person.weight_kg, is_gain=True)
        if aim.pace is not Pace.STEADY and aim.surplus_kcal is not None:
            contradict("pace", "SIZE_AND_PACE", _PACE_DETAIL)
        return None
    return _check_deficit(asked, aim, person)


def _check_days(asked: PlanAsked) -> None:
    if asked.lived is None:
        return
    if asked.split is not None:
        detail = "`week` says what is eaten on each day: leave `day_split` out, or `week`."
        raise Contradiction("WEEK_AND_SPLIT", "day_split", detail)
    for i, day in enumerate(asked.lived.flexible):
        field = f"week.flexible_days[{i}]"
        if (day.weekday is None) is (day.date is None):
            raise Contradiction("FLEXIBLE_DAY_WHEN", field, "Set `weekday` or `date`, and only one of them.")
        if day.extra_kcal <= 0.0 and day.alcohol_g <= 0.0:
            raise Contradiction("FLEXIBLE_DAY_EMPTY", field, "Set `extra_kcal`, `alcohol_g` or both.")
        if day.date is not None and day.date < asked.start:
            detail = f"The plan starts on {asked.start}; this day is before it, on {day.date}."
            raise Contradiction("FLEXIBLE_DAY_BEFORE_START", f"{field}.date", detail)


def _check_deficit(asked: PlanAsked, aim: DeficitAim, person: Person) -> int | None:
    goals = [goal for goal in GOALS if getattr(aim, goal) is not None]
    if len(goals) > 1:
        contradict(goals[1], "SEVERAL_GOALS", f"Set one goal: leave out {' and '.join(goals[1:])}.")
    if aim.weeks is not None and asked.event is not None:
        contradict("event_date", "SEVERAL_TIMES", "Set `weeks` or `event_date`, not both.")
    if goals and aim.weeks is not None and aim.deficit_kcal is not None:
        detail = "A goal and the weeks settle the deficit: leave one of the three out."
        contradict("deficit_kcal", "PHASE_OVERDETERMINED", detail)
    if aim.pace is not Pace.STEADY and (aim.deficit_kcal is not None or (goals and aim.weeks is not None)):
        contradict("pace", "SIZE_AND_PACE", _PACE_DETAIL)
    if aim.break_every_weeks is None and aim.break_weeks != 1:
        detail = "Breaks have a length but no interval: set `break_every_weeks`, or leave `break_weeks` out."
        contradict("break_weeks", "BREAKS_WITHOUT_INTERVAL", detail)
    check_weeks(aim)
    until_event = None if asked.event is None else _weeks_until(asked.event, asked, aim)
    _check_target_weight(aim.target_weight_kg, person.weight_kg, is_gain=False)
    present, target = person.body_fat, aim.target_fat_fraction
    if target is not None and present and target >= present.fat_fraction:
        detail = f"Set a target below the present body fat of {present.fat_fraction:g}; this is {target:g}."
        contradict("target_fat_fraction", "TARGET_ON_WRONG_SIDE", detail)
    return until_event


def check_weeks(aim: DeficitAim) -> None:
    kind = aim.kind.value
    if aim.weeks is None:
        if 0 < aim.most_weeks <= aim.easing_in_weeks:
            detail = f"{aim.most_weeks} week(s) of this {kind} are left: ease in for fewer."
            contradict("easing_in_weeks", "EASING_FILLS_PHASE", detail)
        return
    if aim.easing_in_weeks >= aim.weeks:
        detail = "The easing-in weeks are part of `weeks`: leave at least one week at the full deficit."
        contradict("easing_in_weeks", "EASING_FILLS_PHASE", detail)
    done = f" beside the {aim.weeks_done} done" if aim.weeks_done else ""
    if aim.weeks < aim.least_weeks:
        detail = f"A {kind} has {aim.least_weeks} weeks or more{done}; shorter ones have another kind."
        contradict("weeks", "TOO_SHORT_FOR_KIND", detail)
    if aim.weeks > aim.most_weeks:
        detail = f"A {kind} has at most {max(0, aim.most_weeks)} weeks{done}; longer ones have another kind."
        contradict("weeks", "TOO_LONG_FOR_KIND", detail)


def _check_target_weight(target_kg: float | None, weight_kg: float, *, is_gain: bool) -> None:
    if target_kg is not None and (target_kg <= weight_kg if is_gain else target_kg >= weight_kg):
        side = "above" if is_gain else "below"
        detail = f"Set a target {side} the present weight of {weight_kg:g} kg; this is {target_kg:g}."
        contradict("target_weight_kg", "TARGET_ON_WRONG_SIDE", detail)


def _weeks_until(event: date, asked: PlanAsked, aim: DeficitAim) -> int:
    """Whole weeks left for the phase before its event and the maintenance that precedes it."""
    check_dates({"phase.event_date": event})
    if event <= asked.start:
        detail = f"The event must come after the start on {asked.start}; it is on {event}."
        contradict("event_date", "EVENT_BEFORE_START", detail)
    maintenance = asked.then.maintenance_weeks
    weeks = (event - asked.start).days // 7 - maintenance - asked.pause_weeks
    if weeks < aim.least_weeks:
        detail = (
            f"The event leaves {max(0, weeks)} weeks for the phase, once {maintenance} week(s) of maintenance and "
            f"{asked.pause_weeks} of pause are taken off: it needs {aim.least_weeks} or more. Move the event or the "
            "start."
        )
        contradict("event_date", "EVENT_TOO_SOON", detail)
    if weeks > _MOST_WEEKS_TO_EVENT:
        detail = f"The event is {weeks} weeks after the phase could start, more than {_MOST_WEEKS_TO_EVENT}."
        raise OutOfDomain("EVENT_TOO_FAR", "phase.event_date", detail)
    return weeks


def contradict(name: str, code: str, detail: str) -> NoReturn:
    raise Contradiction(code, f"phase.{name}", detail)
