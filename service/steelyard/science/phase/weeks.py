"""Planned weeks, what is eaten in them, and the body that lives through them."""

from collections.abc import Callable, Sequence
from enum import StrEnum
from typing import NamedTuple

from ..body import BodyModel, BodyState, Diet, Stretch, bodies_of, still_saved_kcal
from ..rails import CARBOHYDRATE_KCAL_PER_G, Macronutrients, Subject


class Element(StrEnum):
    """What a week of a phase is for."""

    EASING_IN = "easing_in"
    DEFICIT = "deficit"
    BREAK = "break"
    MAINTENANCE = "maintenance"
    SURPLUS = "surplus"


class Week(NamedTuple):
    """A planned week: what it is for, what to eat each day, and the body mass that its protein is meant for [kg]."""

    element: Element
    intake: Macronutrients
    protein_kg: float


def as_diet(macros: Macronutrients, protein_kg: float) -> Diet:
    """The model's diet for a day's macronutrients, of a body whose protein is for ``protein_kg``."""
    return Diet(
        float(macros.intake_kcal), CARBOHYDRATE_KCAL_PER_G * macros.carbohydrate_g, macros.protein_g / protein_kg
    )


def stretches_of(rows: Sequence[Week]) -> list[Stretch]:
    """What weeks are eaten, those alike in one stretch, a point at the end of each week."""
    stretches: list[Stretch] = []
    for i, row in enumerate(rows):
        if i and row.intake == rows[i - 1].intake:
            stretches[-1] = Stretch(stretches[-1].diet, (*stretches[-1].lengths, 7.0))
        else:
            stretches.append(Stretch(as_diet(row.intake, row.protein_kg), (7.0,)))
    return stretches


class Lived(NamedTuple):
    """Weeks lived on one intake: what is told, the body at the end of each, and what the rails read at the last."""

    week: Week
    diet: Diet
    ends: list[BodyState]
    then: Subject


def live(week: Week, subject: Subject, model: BodyModel, ends: Callable[[Diet], list[BodyState]]) -> Lived:
    """Weeks like ``week``; ``ends`` gives the body at the end of each on a diet."""
    diet = as_diet(week.intake, week.protein_kg)
    lived = ends(diet)
    return Lived(week, diet, lived, subject_at(subject, model, lived[-1]))


def subject_at(subject: Subject, model: BodyModel, state: BodyState) -> Subject:
    """What the rails read of the same person at a later state."""
    return subject.with_body(*bodies_of(model, [state])[0])


def held_by(now: Subject, state: BodyState) -> Subject:
    """``now``, at a state, as the floors of a hold or a gain read it: by settled maintenance.

    Whoever has eaten less of late spends less for some weeks still, and is to be told no less for that.
    """
    return now._replace(maintenance_kcal=now.maintenance_kcal + float(still_saved_kcal(state)))


def subjects_at(subject: Subject, model: BodyModel, states: Sequence[BodyState]) -> list[Subject]:
    """``subject_at`` for each of the states."""
    return list(subject.with_bodies(bodies_of(model, states)))
