"""A step of the planned intake, as the rails and one review's most leave it."""

from typing import NamedTuple

from .. import rails
from ..phase import DAYS_PER_WEEK, FollowedPhase
from ..rails import RailAction
from . import texts
from .correction import IntakeLimits, RestOfPhase, down, up

# What protects the body at once is not come to in steps.
_FLOORS = (rails.FLOOR, rails.AVAILABILITY)


class Held(NamedTuple):
    """A change of intake as the rails leave it [kcal/d]; ``is_raised``: whether one of them asked for more."""

    change_kcal: int
    is_raised: bool


def held_step(limits: IntakeLimits, wanted: float, own_step_kcal: float) -> Held:
    """A change rounded to 10 kcal, inside the limits, and with the step that the plan takes by itself today
    (``own_step_kcal``) one step at most; the least of them wins.

    The limit on what is most never lowers an intake: it only holds what is added.
    """
    lowest = up(min(0.0, -texts.MOST_STEP_KCAL - min(0.0, own_step_kcal)))
    highest = down(max(0.0, texts.MOST_STEP_KCAL - max(0.0, own_step_kcal)))
    change = min(max(down(wanted), lowest), highest)
    if change > 0:
        change = min(change, max(0, down(min(limits.most, change))))
    least = up(limits.least)
    if change < least <= 0.0 or change >= least:
        return Held(max(change, least), least > change)
    # A rise leaves room, so that the next review does not add to it.
    roomy = max(least, min(least + int(texts.NOTABLE_KCAL), texts.MOST_STEP_KCAL))
    return Held(roomy if roomy <= limits.most - texts.NOTABLE_KCAL else least, True)


def with_room(held: Held, limits: IntakeLimits) -> Held:
    """A step down that leaves room over what the rails allow, as a rise does: up to their edge, the next review would
    take it back, and the one after give it again. Where that leaves nothing to speak of there is none."""
    least = up(limits.least + texts.NOTABLE_KCAL)
    if held.change_kcal >= min(0, least):
        return held
    return Held(least if least <= -texts.NOTABLE_KCAL else 0, is_raised=True)


def is_one_step(limits: IntakeLimits) -> bool:
    """Whether one step brings a deficit inside the rails, or what protects the body at once asks for more."""
    return up(limits.least) <= texts.MOST_STEP_KCAL or limits.why.rule in _FLOORS


def has_stepped_down(phase: FollowedPhase, day: int) -> bool:
    """Whether less was told so short a time ago that it is still to show what it does."""
    since = day - texts.TURN_BACK_DAYS
    return any(change.change_kcal < 0.0 and since < change.day for change in phase.changes)


def rail_actions(limits: IntakeLimits, course: RestOfPhase, held: Held, wanted: float, days: int) -> list[RailAction]:
    """What the rails did to the days to come."""
    actions = list(limits.warnings)
    change_kcal = held.change_kcal
    intake = min(course.intakes(float(change_kcal), days))
    if held.is_raised:
        asked = course.maintenance_kcal - (intake - change_kcal + wanted)
        # That of the strictest day to come, over today's maintenance, is no deficit that anybody was told.
        actions.append(rails.capped(limits.why, asked, texts.DEFICIT_CAPPED))
    end = course.end(float(change_kcal), days)
    weeks = days / DAYS_PER_WEEK
    loss = float(course.state.tissue_kg - end.tissue_kg) / weeks / course.subject.weight_kg
    then = course.subject_at(end)
    # By what the log finds of water, and by what intake leads to expect of it: whichever is near underweight is told.
    bmi = min(then.bmi, then._replace(carried_kg=float(end.carried_kg)).bmi)
    actions += rails.warn_deficit(
        course.in_deficit, intake, loss, then.fat_fraction, bmi, weeks=course.weeks_gone + weeks
    )
    return [*actions, *course.protein_actions]
