"""Members of the four worlds, what they ask for, and the requests that a service gets of them."""

from datetime import date
from typing import Any, NamedTuple

import msgspec
import numpy as np
from lifters import CLEAR
from logstudy.members import profiles
from logstudy.worlds import HOLD, Array, Lives, Logs
from steelyard import answers
from steelyard.http.endpoints import mapping
from steelyard.http.schemas.profile import Profile
from steelyard.science.body import PathPoint
from steelyard.science.log import IntakeDay, Log, Weighing
from steelyard.science.measures import assess
from steelyard.science.member import Told
from steelyard.science.person import Person
from steelyard.science.phase import DeficitAim, DeficitKind, GainAim, HoldAim, PhaseKind, ReturnAim

LEAD_DAYS = 28
START = date(2026, 3, 2)
FIRST_DAY = START.toordinal() - LEAD_DAYS
COURSES = ("fat", "length", "gain", "hold")
ANY_FAT = 0.6  # a gain is asked for whatever the body fat


class Course(NamedTuple):
    """What a member asks for over the horizon: a first phase, and what follows it."""

    name: str
    aim: Any
    then: ReturnAim
    fat_loss_kg: float | None


class Member(NamedTuple):
    """A member as told at the start, what they ask for, and the plan that they get."""

    person: Person
    course: Course
    plan: answers.PhasesPlanned

    @property
    def _points(self) -> list[PathPoint]:
        """The body promised at the end of each week."""
        return [week.at_end for phase in self.plan.phases for week in phase.weeks]

    @property
    def weights_kg(self) -> list[float]:
        """The weight promised at the start and at the end of each week."""
        first = self.plan.phases[0]
        start = float(first.weeks[-1].at_end.weight_kg) - first.change.weight_kg.mean
        return [start, *(float(point.weight_kg) for point in self._points)]

    def asked(self, weeks: int) -> tuple[float, float]:
        """The change of fat and of lean that the plan promised at the horizon [kg]."""
        first = self.plan.phases[0]
        end, last = first.weeks[-1].at_end, self._points[min(weeks, len(self._points)) - 1]
        fat = float(last.fat_kg - end.fat_kg) + first.change.fat_kg.mean
        return fat, float(last.lean_kg - end.lean_kg) + first.change.lean_kg.mean


def person_of(profile: dict[str, Any]) -> Person:
    """A profile as the service reads it."""
    return mapping.person(msgspec.convert(profile, Profile))


def course_of(name: str, weight_kg: float, weeks: int, rng: np.random.Generator) -> Course:
    """What is asked for: fat to lose and then a hold, a short cut of a length and then a gain, a gain, or a hold."""
    if name == "fat":
        fat_kg = round(float(rng.uniform(0.03, 0.05)) * weight_kg, 1)
        aim = DeficitAim(kind=DeficitKind.CUT, fat_loss_kg=fat_kg)
        return Course(name, aim, ReturnAim(maintenance_weeks=weeks, gain_weeks=0), fat_kg)
    if name == "length":
        aim = DeficitAim(kind=DeficitKind.MINI_CUT, weeks=5)
        return Course(name, aim, ReturnAim(maintenance_weeks=2, gain_weeks=weeks - 7, fat_ceiling=0.4), None)
    if name == "gain":
        return Course(name, GainAim(weeks=weeks, fat_ceiling=ANY_FAT), ReturnAim(), None)
    return Course(name, HoldAim(weeks=weeks), ReturnAim(maintenance_weeks=0, gain_weeks=0), None)


def log_of(logs: Logs, person: int, until: int) -> Log:
    """What a member has sent by the morning of a day, that morning's weighing included."""
    weights = [
        Weighing(FIRST_DAY + day, round(float(logs.weight_kg[day, person]), 1))
        for day in range(min(until + 1, len(logs.weight_kg)))
        if logs.is_weighed[day, person]
    ]
    intakes = [
        IntakeDay(FIRST_DAY + day, float(logs.intake_kcal[day, person]))
        for day in range(until)
        if logs.is_logged[day, person]
    ]
    cycle: tuple[int, ...] = ()
    if logs.cycle_day is not None and not np.isnan(logs.cycle_day[person]):
        first = int(logs.cycle_day[person])
        last = max(row.day for row in (*weights, *intakes)) - FIRST_DAY
        cycle = tuple(FIRST_DAY + first + 28 * n for n in range(until // 28 + 2) if first + 28 * n <= last)
    return Log(weights, intakes, cycle)


def lives_of(world: str, people: list[dict[str, Any]], days: int, seed: int, **given: Any) -> Lives:
    """The lives of these people, from four weeks before the plan on."""
    rng = np.random.default_rng(seed)
    told = [person_of(one) for one in people]
    shares = np.array([one["body_fat"]["fat_fraction"] for one in people])
    given = {
        "body_kg": np.array([one["weight_kg"] for one in people]),
        "fat_share": shares * np.exp(0.1 * rng.standard_normal(len(people))),
        "prior_kcal": np.array([assess(person).total.mean for person in told]),
        **given,
    }
    return Lives(world, HOLD, LEAD_DAYS + days + 1, len(people), seed, **given)


def lead_in(lives: Lives) -> None:
    """Four weeks at what they take for maintenance."""
    nobody = np.zeros(lives.people, bool)
    for _ in range(LEAD_DAYS):
        lives.live(lives.aim_kcal, nobody)


def person_now(person: Person, weight_kg: float, fat_fraction: float | None = None) -> Person:
    """The same person at another weight, and at the body fat that the last answer told."""
    if fat_fraction is None or person.body_fat is None:
        return msgspec.structs.replace(person, weight_kg=weight_kg)
    fat = msgspec.structs.replace(person.body_fat, fat_fraction=min(0.6, max(0.04, fat_fraction)))
    return msgspec.structs.replace(person, weight_kg=weight_kg, body_fat=fat)


def told(person: Person, log: Log | None) -> Told:
    """What the service is told."""
    return Told(person=person, screening=CLEAR, log=log)


def plan(person: Person, log: Log, day: int, aim: Any, then: ReturnAim) -> answers.Answered[answers.PhasesPlanned]:
    """A plan from a morning on."""
    start = date.fromordinal(FIRST_DAY + day)
    return answers.plan_phases(answers.PlanAsked(told(person, log), start, aim, then))


def usual_kcal(log: Log, day: int) -> float:
    """What was logged a day over the last two weeks."""
    eaten = [row.intake_kcal for row in log.intakes if row.day >= FIRST_DAY + day - 14]
    return float(np.mean(eaten)) if eaten else float(np.mean([row.intake_kcal for row in log.intakes]))


KINDS = {
    "mini_cut": PhaseKind.MINI_CUT,
    "cut": PhaseKind.CUT,
    "gain": PhaseKind.GAIN,
    "maintenance": PhaseKind.MAINTENANCE,
}

__all__ = ["Array", "profiles"]
