"""The first two weeks after a phase, at the maintenance of the body there is."""

from typing import NamedTuple

from .. import rails
from ..body import BASELINE_CARBOHYDRATE_SHARE, Diet, Forecast, Stretch
from ..numbers import Estimate
from ..rails import PROTEIN_DEFAULT_GAIN
from ..register import traced
from .correction import STEP_KCAL, RestOfPhase

AFTERMATH_LENGTHS = (3.0, 4.0, 7.0)


class Aftermath(NamedTuple):
    """The first two weeks at maintenance: its intake (logging scale), the path, and the mass that returns."""

    intake_kcal: int
    path: Forecast
    rebound: Estimate


@traced
def aftermath(course: RestOfPhase) -> Aftermath:
    """What the first weeks after the phase look like, at the maintenance of the body there is."""
    now_body = course.subject_at(course.state)
    intake = int(rails.held_kcal(course.held, STEP_KCAL * round(now_body.maintenance_kcal / STEP_KCAL)))
    path = _held_path(course, intake)
    # Whose maintenance rises over a floor with what is eaten is told that floor.
    least = max(rails.held_kcal(course.subject_at(state), intake) for state in path.states)
    then = course.subject_at(path.states[-1])
    if then.bmi < rails.BMI_FLOOR and then.settled_kg < now_body.settled_kg - rails.UNDERWEIGHT_LOSS_KG:
        # Nothing is to go of an underweight body while its expenditure recovers.
        least = max(least, rails.held_kcal(course.held, STEP_KCAL * round(course.held.maintenance_kcal / STEP_KCAL)))
    if least > intake:
        intake = int(least)
        path = _held_path(course, intake)
    end = len(path.states) - 1
    returning = path.change(0, end).carried_kg
    return Aftermath(intake, path, course.now.carried.between_mornings(returning, sum(AFTERMATH_LENGTHS)))


def _held_path(course: RestOfPhase, intake_kcal: float) -> Forecast:
    """The first two weeks at one intake (logging scale)."""
    eaten = intake_kcal / course.ratio
    diet = Diet(eaten, BASELINE_CARBOHYDRATE_SHARE * eaten, PROTEIN_DEFAULT_GAIN)
    return course.path_of([Stretch(diet, (days,)) for days in AFTERMATH_LENGTHS])
