"""A plan as the gate reads it: each week's intake, and the bodies that it begins and ends with."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from ..body import BodyState, Forecast
from ..rails import Purpose, Subject, ToldWeek
from .phases import PlannedPhase, PlannedWeek
from .weeks import Element, subjects_at

_PURPOSES = {Element.BREAK: Purpose.BREAK, Element.MAINTENANCE: Purpose.HOLD, Element.SURPLUS: Purpose.GAIN}


def told_weeks(phases: Iterable[PlannedPhase], bodies: Sequence[Subject]) -> list[ToldWeek]:
    """The weeks of phases, every day of each the same; ``bodies`` are those along their path."""
    return [told_week(week, week.intake.intake_kcal, bodies) for phase in phases for week in phase.weeks]


def told_week(week: PlannedWeek, least_kcal: float, bodies: Sequence[Subject]) -> ToldWeek:
    """A week whose least day has ``least_kcal``; ``bodies`` are those along its path."""
    return told_between(bodies[week.point - 1], week, least_kcal, week.intake.intake_kcal, bodies[week.point])


def told_between(before: Subject, week: PlannedWeek, least_kcal: float, mean_kcal: float, after: Subject) -> ToldWeek:
    """A week with so much eaten on its least day and on the mean of its days, by the body before and after it."""
    purpose = _PURPOSES.get(week.element, Purpose.DEFICIT)
    return ToldWeek(float(least_kcal), before, after, purpose, 7.0, float(week.intake.protein_g), float(mean_kcal))


class BodiesAlong(NamedTuple):
    """What the rails read at each point of a path: as expected, and were all that is told followed.

    What is told keeps to the rails for both. The two are one where all of it is expected to be followed.
    """

    expected: list[Subject]
    in_full: list[Subject]

    @property
    def each(self) -> list[list[Subject]]:
        """Both, the expected ones first; one where they are the same."""
        return [self.expected] if self.in_full is self.expected else [self.expected, self.in_full]


def bodies_along(subject: Subject, path: Forecast) -> BodiesAlong:
    """What the rails read at each point of a path."""
    expected = _bodies(subject, path, path.states)
    return BodiesAlong(expected, expected if path.in_full is None else _bodies(subject, path, path.in_full))


def _bodies(subject: Subject, path: Forecast, states: list[BodyState]) -> list[Subject]:
    # A deficit is against settled maintenance, whatever is eaten now; what is carried then is no tissue.
    carried_kg = float(states[0].carried_kg)
    start = subject.rested_with(carried_kg).with_body(*subject[3:6], carried_kg)
    return [start, *subjects_at(start, path.model, states[1:])]
