"""The scale on which a person logs: what is taken of it before their log says otherwise, and days without a log."""

from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, compiled
from ..register import Basis, constant, source
from .entries import DailyLog

_RATIO_SD = 0.075
LOGGING_RATIO = constant(
    "logging_ratio", 0.87, unit="1", standard_deviation=_RATIO_SD, basis=Basis.JUDGEMENT,
    summary="Logged over eaten energy of someone who keeps a log, before their log says otherwise: between athletes "
    "against doubly labelled water (0.81) and people who weigh their food (about 0.9)",
)  # fmt: skip
LOGGING_RATIO_SD = constant(
    "logging_ratio_sd",
    _RATIO_SD,
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
COOPER_TOKAR_2016 = source(
    "cooper_tokar_2016",
    "Cooper JA, Tokar T. A prospective study on vacation weight gain in adults. Physiol Behav 2016;156:43-7",
    "10.1016/j.physbeh.2015.12.028",
)
SILENT_EXCESS = constant(
    "unlogged_spell_excess", 0.1, unit="1", basis=Basis.JUDGEMENT,
    summary="What is eaten over the habit on days without a log from the second that follow on each other: a day is "
    "forgotten, several are a journey, a feast or a lapse. One to three weeks of holiday made 0.32 kg (150-400 kcal/d) "
    "though more was spent",
    sources=(COOPER_TOKAR_2016,),
)  # fmt: skip
SILENT_DAYS = constant(
    "unlogged_spell_days", 21.0, unit="d", basis=Basis.JUDGEMENT,
    summary="For so many of them, as long as a holiday was: then it is life without a log, in which the habit counts",
)  # fmt: skip
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
    """Intake on every day; where none was logged, the running habit (never from later days), and more than that from
    the second of several days without a log on.

    Before the first logged day the habit is ``prior_kcal`` (maintenance on the logging scale).
    """
    habit, seen, silent = prior_kcal, 0.0 * prior_kcal, 0.0 * prior_kcal
    intakes: Column = []
    slowest = 1.0 / HABIT_DAYS
    for intake, logged in zip(log.intake_kcal, log.is_logged, strict=True):
        seen = seen + logged
        weight = logged * ops.maximum(1.0 / ops.maximum(seen, 1.0), slowest)
        habit = habit + weight * (intake - habit)
        silent = (1.0 - logged) * (silent + ops.minimum(seen, 1.0))
        away = ops.where(silent > SILENT_DAYS, habit, (1.0 + SILENT_EXCESS) * habit)
        intakes.append(ops.where(logged > 0.0, intake, ops.where(silent > 1.0, away, habit)))
    return intakes
