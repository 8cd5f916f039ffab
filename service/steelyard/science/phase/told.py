"""A plan as the gate reads it: each week's intake, and the bodies that it begins and ends with."""

from collections.abc import Iterable

from ..body import Forecast
from ..rails import Purpose, Subject, ToldWeek
from .deficit import subject_at
from .phases import Element, PlannedPhase, PlannedWeek

_PURPOSES = {
    Element.BREAK: Purpose.BREAK,
    Element.MAINTENANCE: Purpose.HOLD,
    Element.SURPLUS: Purpose.GAIN,
}


def told_weeks(phases: Iterable[PlannedPhase], subject: Subject, path: Forecast) -> list[ToldWeek]:
    """The weeks of phases, every day of each the same."""
    return [told_week(week, week.intake.intake_kcal, subject, path) for phase in phases for week in phase.weeks]


def told_week(week: PlannedWeek, least_kcal: float, subject: Subject, path: Forecast) -> ToldWeek:
    """A week whose least day has ``least_kcal``."""
    before, after = bodies_around(subject, path, week.point)
    return ToldWeek(
        float(least_kcal),
        before,
        after,
        _PURPOSES.get(week.element, Purpose.DEFICIT),
        protein_g=float(week.intake.protein_g),
        mean_kcal=float(week.intake.intake_kcal),
    )


def bodies_around(subject: Subject, path: Forecast, point: int) -> tuple[Subject, Subject]:
    """What the rails read at the start and at the end of the week that ends at ``point``."""
    started = path.states[point - 1]
    before = subject_at(subject, path.model, started)
    if point == 1:
        # A deficit is against settled maintenance, whatever is eaten now; what is carried then is no tissue.
        before = subject._replace(carried_kg=float(started.carried_kg))
    return before, subject_at(subject, path.model, path.states[point])
