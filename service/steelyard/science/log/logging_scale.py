"""The scale on which a person logs: what is taken of it before their log says otherwise, and days without a log."""

from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, compiled
from ..register import Basis, constant
from .entries import DailyLog

LOGGING_RATIO = constant(
    "logging_ratio", 0.87, unit="1", standard_deviation=0.075, basis=Basis.JUDGEMENT,
    summary="Logged over eaten energy of someone who keeps a log, before their log says otherwise: between athletes "
    "against doubly labelled water (0.81) and people who weigh their food (about 0.9)",
)  # fmt: skip
LOGGING_RATIO_SD = constant(
    "logging_ratio_sd",
    0.075,
    unit="1",
    basis=Basis.JUDGEMENT,
    summary="Spread of the logging ratio between people who keep a log",
)
LOGGING_RATIO_LEAST = constant(
    "logging_ratio_least",
    0.3,
    unit="1",
    basis=Basis.JUDGEMENT,
    summary="Logged over eaten energy under which what was sent is no log of meals",
)
LOGGING_RATIO_MOST = constant(
    "logging_ratio_most",
    1.3,
    unit="1",
    basis=Basis.JUDGEMENT,
    summary="Logged over eaten energy over which what was sent is no log of meals",
)
HABIT_DAYS = constant(
    "intake_habit_days", 14.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Memory of the running habit that stands in for days without a log",
)  # fmt: skip


def prior_on_logging_scale(physical: Estimate) -> Estimate:
    """The equations' estimate as this person would log it, before any log."""
    variance = (LOGGING_RATIO * physical.sd) ** 2 + (LOGGING_RATIO_SD * physical.mean) ** 2
    return Estimate(LOGGING_RATIO * physical.mean, variance**0.5)


@compiled
def fill_intake(log: DailyLog, prior_kcal: Number, *, ops: Elementwise = FLOATS) -> Column:
    """Intake on every day; where none was logged, the running habit (never from later days).

    Before the first logged day the habit is ``prior_kcal`` (maintenance on the logging scale).
    """
    habit, seen = prior_kcal, 0.0 * prior_kcal
    intakes: Column = []
    slowest = 1.0 / HABIT_DAYS
    for intake, logged in zip(log.intake_kcal, log.is_logged, strict=True):
        seen = seen + logged
        weight = logged * ops.maximum(1.0 / ops.maximum(seen, 1.0), slowest)
        habit = habit + weight * (intake - habit)
        intakes.append(ops.where(logged > 0.0, intake, habit))
    return intakes
