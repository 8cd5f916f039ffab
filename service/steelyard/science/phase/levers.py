"""Activity as a lever of a fat loss: what a dose of it burns, what of that counts, and what may be eaten for it.

The body takes back a part of what activity burns, and people differ widely in how much; only what is left counts.
"""

import math
from collections.abc import Sequence
from enum import StrEnum
from itertools import groupby
from typing import NamedTuple

from ..body import BodyState, bodies_of, walk
from ..measures import ACTIVITY_ERROR, bout_kcal, kept_kcal, step_kcal
from ..numbers import Estimate
from ..person import TrainingKind
from ..rails import RailAction, Subject, ToldWeek, warn_deficit
from ..register import Basis, Message, constant, say, traced
from .defaults import STATIC_KCAL_PER_KG
from .plan import Plan
from .told import BodiesAlong, told_between
from .weeks import Element, as_diet

LEVER_STEPS = constant(
    "lever_steps",
    3000.0,
    unit="steps/d",
    summary="Steps a day beyond those taken now that are offered as a lever: about half an hour of walking",
    basis=Basis.JUDGEMENT,
)
LEVER_CYCLING_MINUTES = constant(
    "lever_cycling_minutes",
    150.0,
    unit="min/week",
    summary="Cycling a week beyond what is done now that is offered as a lever: three times 50 minutes",
    basis=Basis.JUDGEMENT,
)
_STEP_KCAL = 10
_DAYS_PER_WEEK = 7.0


class LeverKind(StrEnum):
    """What is done more of."""

    STEPS = "steps"
    CYCLING = "cycling"


class LeverUse(NamedTuple):
    """A way to use a lever: what is eaten in the first and the last week of the deficit [kcal/d] and what it gives.

    ``fat_kg``: the change over the phase; ``availability``: energy left for the body on its first day [kcal per kg of
    fat-free mass]; ``end_weight_kg``: on the scale on its last day; ``told``: its weeks, for the gate.
    """

    intake_kcal: int
    last_intake_kcal: int
    fat_kg: Estimate
    availability: float
    end_weight_kg: float
    told: list[ToldWeek]
    told_kept: list[ToldWeek] | None = None  # the same for the body that is expected, where that is another

    @property
    def loss_share(self) -> float:
        """Tissue lost a week, of the body mass at the start."""
        first, last = self.told[0].before, self.told[-1].after
        return (first.settled_kg - last.settled_kg) / len(self.told) / first.weight_kg

    def warnings(self) -> list[RailAction]:
        """What rails that let it pass warn of."""
        first, last = self.told[0].before, self.told[-1].after
        return warn_deficit(first, self.intake_kcal, self.loss_share, last.fat_fraction, last.bmi)


class Dose(NamedTuple):
    """A dose of activity: what it burns above rest and what of it counts [kcal/d], and the energy left for the body as
    planned without it [kcal per kg of fat-free mass]."""

    kind: LeverKind
    burnt_kcal: Estimate
    kept_kcal: Estimate
    planned_availability: float

    @property
    def steps_per_day(self) -> float | None:
        """Steps beyond those taken now."""
        return LEVER_STEPS if self.kind is LeverKind.STEPS else None

    @property
    def minutes_per_week(self) -> float | None:
        """Minutes beyond those done now."""
        return LEVER_CYCLING_MINUTES if self.kind is LeverKind.CYCLING else None


class Lever(NamedTuple):
    """A dose of activity: what it burns above rest and what of it counts [kcal/d], and two ways to use it.

    ``instead``: more is eaten, for the same fat; None where there is no room. ``together``: as planned, for more fat.
    ``planned``: the phase without it.
    """

    kind: LeverKind
    burnt_kcal: Estimate
    kept_kcal: Estimate
    planned: LeverUse
    instead: LeverUse | None
    together: LeverUse

    @property
    def dose(self) -> "Dose":
        """What is done more of, without what is eaten."""
        return Dose(self.kind, self.burnt_kcal, self.kept_kcal, self.planned.availability)

    @property
    def _named(self) -> dict[str, float | str]:
        return {"lever": self.kind.value, "dose": float(self.dose.steps_per_day or self.dose.minutes_per_week or 0.0)}

    def burns(self) -> Message:
        """What it burns, and what of it counts."""
        kept = self.kept_kcal
        return say(
            "LEVER_BURNS",
            **self._named,
            burnt_kcal=self.burnt_kcal.mean,
            kept_kcal=kept.mean,
            lower_kcal=max(0.0, kept.lower),
            upper_kcal=kept.upper,
        )

    def too_much(self, *, is_eaten_for: bool) -> Message:
        """That it would leave the body too little: beside the plan, or even eaten for."""
        return say("LEVER_TOO_MUCH_EVEN_FED" if is_eaten_for else "LEVER_TOO_MUCH", **self._named)

    def eat_more(self, use: LeverUse) -> Message:
        """What may be eaten for it."""
        more = use.intake_kcal - self.planned.intake_kcal
        return say("LEVER_EAT_MORE", **self._named, more_kcal=more, intake_kcal=use.intake_kcal)

    def lose_more(self, use: LeverUse) -> Message:
        """What it gives beside what is planned."""
        more = max(0.0, self.planned.fat_kg.mean - use.fat_kg.mean)
        return say("LEVER_LOSE_MORE", **self._named, fat_kg=more)

    def leaves(self, use: LeverUse) -> Message:
        """What is left for the body."""
        planned = self.planned.availability
        return say("LEVER_AVAILABILITY", planned=planned, observed=use.availability, intake_kcal=use.intake_kcal)


@traced
def levers_of(subject: Subject, plan: Plan, bodies: BodiesAlong, least_kcal: Sequence[float]) -> list[Lever]:
    """The levers of a plan's fat-loss phase.

    ``bodies`` are those along the plan's path; ``least_kcal`` is the food of the leanest day of each
    week of the phase.
    None of them is cleared: the weeks of each use have to pass the gate.
    """
    rest = subject.resting_kcal
    doses = {
        LeverKind.STEPS: float(step_kcal(LEVER_STEPS, rest)),
        LeverKind.CYCLING: bout_kcal(TrainingKind.CYCLING, LEVER_CYCLING_MINUTES, rest) / _DAYS_PER_WEEK,
    }
    course = _Course(subject, plan, bodies, least_kcal)
    return [course.lever(kind, Estimate(kcal, ACTIVITY_ERROR * kcal)) for kind, kcal in doses.items()]


def _ends(weeks: Sequence[ToldWeek]) -> list[Subject]:
    return [weeks[0].before, *(week.after for week in weeks)]


def _moved(body: Subject, was: Subject, to: Subject) -> Subject:
    return body.with_body(
        body.weight_kg + to.weight_kg - was.weight_kg,
        body.fat_kg + to.fat_kg - was.fat_kg,
        body.maintenance_kcal + to.maintenance_kcal - was.maintenance_kcal,
        body.carried_kg + to.carried_kg - was.carried_kg,
    )


class _Course:
    """The fat-loss phase of a plan, to be walked with more activity."""

    def __init__(self, subject: Subject, plan: Plan, bodies: BodiesAlong, least_kcal: Sequence[float]) -> None:
        phase, path = plan.cut_phase, plan.forecast
        assert phase is not None
        assert path is not None
        self.subject, self.weeks, self.model, self.least_kcal = subject, phase.weeks, path.model, least_kcal
        # What is moved is what is told, followed in full; it moves by as much what is expected of less.
        told = path.states if path.in_full is None else path.in_full
        self.states = told[phase.first : phase.last_point + 1]
        self.apart_kg = float(path.states[phase.last_point].weight_kg - self.states[-1].weight_kg)
        self.fat_kg = path.change(phase.first, phase.last_point).fat_kg
        self.bodies = bodies.in_full[phase.first : phase.last_point + 1]
        self.expected = self.bodies
        if bodies.expected is not bodies.in_full:
            self.expected = bodies.expected[phase.first : phase.last_point + 1]
        self.planned = self._told(self.bodies, [0] * len(self.weeks), self.fat_kg, self.states[-1])

    def lever(self, kind: LeverKind, burnt: Estimate) -> Lever:
        kept = kept_kcal(burnt)
        return Lever(
            kind,
            burnt,
            kept,
            planned=self.planned,
            instead=self._use(more, burnt, kept) if (more := self._room(kept.mean)) else None,
            together=self._use(0, burnt, kept),
        )

    def _room(self, kept: float) -> int:
        """What may be eaten more [kcal/d]: what counts, and never past maintenance without the lever."""
        free = min(
            min(before.maintenance_kcal, self.subject.maintenance_kcal) - week.intake.intake_kcal
            for week, before in zip(self.weeks, self.bodies, strict=False)
            if week.element is not Element.BREAK
        )
        # Rounded up, so that rounding deepens no deficit past a rail.
        counts = math.ceil(self.subject.scale.ratio * kept / _STEP_KCAL)
        return max(0, min(counts, math.floor(free / _STEP_KCAL))) * _STEP_KCAL

    def _use(self, more_kcal: int, burnt: Estimate, kept: Estimate) -> LeverUse:
        """The phase with so much more eaten outside its breaks, and the lever pulled on each of its days."""
        more = [0 if week.element is Element.BREAK else more_kcal for week in self.weeks]
        # What is told stands on the scale of the log, activity as it is burnt.
        counts = self.subject.scale.ratio * kept.mean
        states = self._walk(more, counts)
        active = self.bodies[0]._replace(exercise_kcal=self.bodies[0].exercise_kcal + burnt.mean)
        bodies = [
            active._replace(maintenance_kcal=active.maintenance_kcal + counts),
            *active.with_bodies(
                (weight_kg, fat_kg, maintenance_kcal + counts, carried_kg)
                for weight_kg, fat_kg, maintenance_kcal, carried_kg in bodies_of(self.model, states[1:])
            ),
        ]
        return self._told(bodies, more, self._fat(states[-1], kept, counts), states[-1])

    def _told(self, bodies: Sequence[Subject], more: Sequence[int], fat_kg: Estimate, end: BodyState) -> LeverUse:
        """The phase with ``more`` eaten in each of its weeks, as it is told."""
        eaten = [week.intake.intake_kcal + plus for week, plus in zip(self.weeks, more, strict=True)]
        told = [
            told_between(before, week, least + plus, kcal, after)
            for before, week, least, plus, kcal, after in zip(
                bodies[:-1], self.weeks, self.least_kcal, more, eaten, bodies[1:], strict=True
            )
        ]
        full = [kcal for week, kcal in zip(self.weeks, eaten, strict=True) if week.element is Element.DEFICIT]
        first = bodies[0]
        available = first.availability(full[0] / first.scale.ratio)
        weight_kg = float(end.weight_kg) + self.apart_kg
        return LeverUse(full[0], full[-1], fat_kg, available, weight_kg, told, self._told_kept(told))

    def _told_kept(self, told: list[ToldWeek]) -> list[ToldWeek] | None:
        """The weeks for the body that is expected: as far from the other as it is in the plan."""
        if self.expected is self.bodies:
            return None
        moved = [_moved(body, was, to) for body, was, to in zip(_ends(told), self.bodies, self.expected, strict=True)]
        return [
            week._replace(before=before, after=after)
            for week, before, after in zip(told, moved[:-1], moved[1:], strict=True)
        ]

    def _walk(self, more: Sequence[int], counts_kcal: float) -> list[BodyState]:
        """The body at the start and after each week: weeks on one diet are walked at once."""
        states, per_kg = [self.states[0]], counts_kcal / self.subject.weight_kg
        eaten = [(week.intake, plus) for week, plus in zip(self.weeks, more, strict=True)]
        for (intake, plus), alike in groupby(eaten):
            diet = as_diet(intake, self.subject.protein_kg)
            share = 1.0 + plus / intake.intake_kcal
            diet = diet._replace(
                intake_kcal=share * diet.intake_kcal,
                carbohydrate_kcal=share * diet.carbohydrate_kcal,
                activity_change_kcal_per_kg=per_kg,
            )
            states += walk(self.model, states[-1], diet, (_DAYS_PER_WEEK,) * len(list(alike)))
        return states

    def _fat(self, end: BodyState, kept: Estimate, counts_kcal: float) -> Estimate:
        """The change of fat: as planned, with what the lever moves, and its own error beside that of the plan."""
        mean = self.fat_kg.mean + float(end.fat_kg - self.states[-1].fat_kg)
        days = _DAYS_PER_WEEK * len(self.weeks)
        # A plain energy account is near enough for the spread of what counts.
        own = days * counts_kcal * kept.sd / kept.mean / STATIC_KCAL_PER_KG
        return self.fat_kg.moved_to(mean, own)
