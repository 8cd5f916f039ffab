"""What to do about a phase: go on, correct the intake, or end, shorten or extend it; told through the gate."""

from collections.abc import Callable
from typing import NamedTuple

from ..body import Forecast
from ..phase import FollowedPhase, PromisedPath, Verdict
from ..rails import Cleared, Purpose, Refused, ToldWeek, clear
from ..register import say, traced
from . import texts
from .aftermath import AFTERMATH_LENGTHS, Aftermath, aftermath
from .correction import RestOfPhase, Stint
from .deficit_advice import DeficitAdvice
from .due import Due
from .hold_or_gain_advice import HoldOrGainAdvice
from .next_step import Advice, NextStep
from .reading import Now


class Ahead(NamedTuple):
    """What a review tells to eat: the advice, the days to come with a point at the end of each of ``stints``, and the
    first weeks after the phase, where it ends."""

    advice: Advice
    path: Forecast | None
    stints: list[Stint]
    aftermath: Aftermath | None


@traced
def advise(
    phase: FollowedPhase,
    course: RestOfPhase,
    now: Now,
    promised: PromisedPath,
    verdict: Verdict,
    is_finished: bool,
    due: Due,
) -> Advice:
    """Decide, by what is ``due``.

    Raises ``rails.Refused`` where a deficit or a gain is running and screening was not answered.
    """
    if is_finished or course.days_left == 0:
        return Advice(NextStep.END, 0, 0, [say(texts.OVER)], [])
    if phase.kind.is_deficit:
        return DeficitAdvice(phase, course, now, promised, verdict, due).advise()
    return HoldOrGainAdvice(phase, course, now, promised, verdict, due).advise()


@traced
def cleared(
    course: RestOfPhase, advice: Advice, ended: Callable[[RestOfPhase], RestOfPhase] = lambda course: course
) -> Cleared[Ahead]:
    """What the advice tells, through the gate. A phase that does not pass it ends, and what comes after does pass.

    Args: ``ended``: the course as it is told from the end on.

    Raises: ``Refused`` where not even that does.
    """
    try:
        return _clear(course, advice, ended)
    except Refused as refusal:
        if advice.decision is NextStep.END:
            raise
        told = [it for it in advice.reasons if it.code not in texts.OF_THE_END | texts.OF_A_STEP]
        reasons = [*told, say(texts.STOPPED, rule=refusal.action.id), *refusal.messages]
        no_more = Advice(NextStep.END, 0, 0, reasons, [*advice.actions, *refusal.actions])
        return _clear(course, no_more, ended)


def _clear(course: RestOfPhase, advice: Advice, ended: Callable[[RestOfPhase], RestOfPhase]) -> Cleared[Ahead]:
    course = ended(course) if advice.decision is NextStep.END else course
    change, days = float(advice.correction_kcal), advice.days_ahead
    path, stints = (None, []) if days == 0 else course.forecast(change, days)
    after = aftermath(course) if advice.decision is NextStep.END else None
    weeks = [*course.told(change, days)]
    if after is not None:
        bodies = [course.held, *(course.subject_at(state) for state in after.path.states[1:])]
        ends = zip(bodies, bodies[1:], AFTERMATH_LENGTHS, strict=False)
        weeks += [ToldWeek(after.intake_kcal, there, then, Purpose.HOLD, length) for there, then, length in ends]
    ahead = Ahead(advice, path, stints, after)
    return clear(ahead, weeks, "phase", weeks_before=course.weeks_gone, running_kcal=course.running_kcal)
