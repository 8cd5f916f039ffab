"""Plan phases: a fat-loss phase with the maintenance and gain that follow, a gain, or a hold, inside every rail.

A pause (travel, illness, injury) holds at maintenance first; the phase is then planned from the body as it is by
then. What no safe plan reaches is answered with the nearest on each axis.
"""

import math
from collections.abc import Sequence
from datetime import date
from enum import StrEnum
from typing import NamedTuple

import msgspec

from .. import rails
from ..body import Forecast, UncertaintySource, current_maintenance_kcal
from ..member import Member
from ..rails import RailAction, Subject
from ..register import Message, say, traced
from .aims import DeficitAim, DeficitKind, GainAim, HoldAim, ReturnAim
from .band import usual_ceiling
from .deficit import DeficitPhase
from .deficit_solver import NearestSafe, Solved, capped_later, said_of_too_small, solve, warnings_on
from .draft import Draft, LaidOut
from .followed import PhaseKind
from .gain import PlannedGain, plan_gain_phase, settled_kg
from .history import History
from .offers import SizeOffered, deficits_offered, surpluses_offered
from .phases import (
    PlannedPhase,
    explain_cut,
    explain_gain,
    explain_hold,
    explain_maintenance,
    explain_pause,
    explain_return,
)
from .weeks import Element, subject_at


class PlanChoice(StrEnum):
    """What can be offered beside a plan, to somebody who may still choose."""

    SIZES = "sizes"
    LEVERS = "levers"


class NearestGain(NamedTuple):
    """What comes nearest to a gain to a weight: the settled weight that is reached, and the weeks that the weight asked
    for takes; None where there is none."""

    weight_kg: float | None
    weeks: int | None


class Plan(NamedTuple):
    """The plan, or why there is none. ``cut`` is the index of the fat-loss phase in ``phases``.

    ``warnings`` are of its deficit; ``sizes`` are what the phase would be at other sizes, smallest first, where they
    were asked for. ``too_small`` says that safe limits leave a deficit that no scale tells from water, where they do.
    ``weeks_to_ceiling``: of a gain, where it gets there; ``nearest_gain``: of one that does not get to its weight.
    """

    phases: list[PlannedPhase]
    forecast: Forecast | None
    actions: list[RailAction]
    reasons: list[Message]
    nearest: NearestSafe | None = None
    deficit_kcal: float | None = None
    cut: int | None = None
    warnings: Sequence[RailAction] = ()
    sizes: Sequence[SizeOffered] = ()
    too_small: Message | None = None
    weeks_to_ceiling: int | None = None
    nearest_gain: NearestGain | None = None

    def laid_out(self, last: int | None) -> LaidOut:
        """The phases up to the ``last``, and the path that is theirs as far as it goes."""
        assert self.forecast is not None
        return self.phases[: (last or 0) + 1], self.forecast

    @property
    def is_feasible(self) -> bool:
        """Whether the plan does what was asked."""
        return self.nearest is None

    @property
    def has_gain(self) -> bool:
        """Whether one of its phases is a gain."""
        return any(phase.kind is PhaseKind.GAIN for phase in self.phases)

    @property
    def cut_phase(self) -> PlannedPhase | None:
        """The fat-loss phase, where there is one."""
        return None if self.cut is None or not self.phases else self.phases[self.cut]


def no_plan(nearest: NearestSafe, actions: list[RailAction], why: list[Message]) -> Plan:
    """What is answered where no safe plan does what was asked: the nearest that one would, and why."""
    return Plan([], None, actions, [say("INFEASIBLE"), *why], nearest)


@traced
def plan_deficit(
    member: Member,
    start: date,
    aim: DeficitAim,
    then: ReturnAim,
    *,
    history: History,
    sources: frozenset[UncertaintySource],
    pause_weeks: int = 0,
    weeks_until_event: int | None = None,
    with_sizes: bool = False,
) -> Plan:
    """Plan a mini-cut or a cut, the maintenance after it and the return to a gain.

    Args: ``pause_weeks`` at maintenance come first. ``weeks_until_event`` are left for the phase before an event and
        the maintenance that lets carried mass settle; what the phase does not need of them is held at maintenance.
        ``with_sizes``: offer other sizes too.
    Raises: ``rails.Refused`` where a rule forbids any deficit for this person; ``ValueError`` where no week at
        maintenance is to follow.
    """
    if then.maintenance_weeks < 1:
        raise ValueError("a week at maintenance follows a deficit at the least")
    subject = member.subject
    actions = rails.check_person(subject)
    actions += rails.warn_history(history.cuts_last_12_months, history.weeks_since_last_cut)
    protein, protein_actions = rails.protein_in_deficit(subject, aim.protein_g_per_kg)
    actions += protein_actions
    if weeks_until_event is not None:
        aim = msgspec.structs.replace(aim, at_most_weeks=weeks_until_event)
    if aim.target_fat_fraction is not None:
        rails.refuse_target(subject.sex, aim.target_fat_fraction, "phase.target_fat_fraction")
    draft = Draft(member, aim.preference, start)
    draft.hold(pause_weeks)
    phase = DeficitPhase(
        subject,
        draft.body,
        aim,
        protein,
        start=draft.calibrated.expected,
        before=history.deficit_before,
    )
    if pause_weeks:
        phase = phase.starting(draft.state, subject_at(subject, draft.model, draft.state), pause_weeks)
    solved = solve(phase, history)
    if solved.nearest is None and weeks_until_event is not None and solved.weeks < weeks_until_event:
        waited = _wait(draft, phase, solved, weeks_until_event, history, pause_weeks)
        phase, solved, pause_weeks = waited.phase, waited.solved, pause_weeks + waited.weeks
    actions += solved.actions
    if solved.nearest is not None:
        return no_plan(solved.nearest, actions, solved.reasons)
    draft.body = draft.body._replace(deficit_days=7.0 * phase.counted(0))
    before = draft.branch()
    plan = _lay_out(draft, phase, solved, then, sources, actions, pause_weeks)
    if not with_sizes:
        return plan
    offered = deficits_offered(before, phase, solved, plan.laid_out(plan.cut), plan.warnings, history, sources)
    return plan._replace(sizes=offered)


class _Waited(NamedTuple):
    """A phase that has waited for some weeks, and how it is solved from there."""

    phase: DeficitPhase
    solved: Solved
    weeks: int


@traced
def _wait(
    draft: Draft, phase: DeficitPhase, solved: Solved, weeks_until_event: int, history: History, pause_weeks: int
) -> _Waited:
    """The phase as late before its event as will do, and the weeks at maintenance that come before it.

    A shorter wait for the next phase, and the goal is met on the day.
    """
    longest = weeks_until_event - solved.weeks
    rows, states = draft.holding(longest)

    def after(weeks: int) -> _Waited | None:
        there = subject_at(phase.subject, draft.model, states[weeks - 1])
        later = phase.asked(msgspec.structs.replace(phase.aim, at_most_weeks=weeks_until_event - weeks))
        later = later.starting(states[weeks - 1], there, pause_weeks + weeks)
        found = solve(later, history)
        fits = found.nearest is None and found.weeks <= weeks_until_event - weeks
        return _Waited(later, found, weeks) if fits else None

    # A body that has waited may need another number of weeks, have met the goal already, or have less room.
    least, beyond, trial = 0, longest + 1, longest
    while beyond - least > 1:
        if after(trial) is None:
            beyond = trial
        else:
            least = trial
        trial = beyond - 1 if beyond > longest - 2 else (least + beyond) // 2
    waited = after(least) if least else None
    if waited is None:
        return _Waited(phase, solved, 0)
    draft.add(PhaseKind.MAINTENANCE, rows[:least], states[:least])
    return waited


def _lay_out(
    draft: Draft,
    phase: DeficitPhase,
    solved: Solved,
    then: ReturnAim,
    sources: frozenset[UncertaintySource],
    actions: list[RailAction],
    pause_weeks: int,
) -> Plan:
    """Weeks, intakes, forecast and words of a solved phase and what follows."""
    aim, model, subject = phase.aim, draft.model, phase.subject
    rows, states = phase.run(solved.deficit_kcal, solved.weeks)
    draft.add(aim.kind.phase, rows, states)
    cut = len(draft.kinds) - 1
    maintenance_after = float(current_maintenance_kcal(model, draft.likely[-1]))
    draft.hold(then.maintenance_weeks)
    is_held = then.gain_weeks > 0 and draft.is_held(then.fat_ceiling)
    gain = draft.grow(then.gain_weeks, then.surplus_kcal, then.fat_ceiling)
    phases, path = draft.finish(sources)

    warnings = warnings_on(phase, solved)
    full = min((row.intake for row in rows if row.element is Element.DEFICIT), key=lambda m: m.intake_kcal)
    actions = [
        *actions,
        *capped_later(phase, solved.deficit_kcal, solved.weeks),
        *gain.actions,
        *warnings,
        *draft.actions,
    ]
    given = full.protein_g / subject.protein_kg
    actions += rails.cap_protein_to_room(given, phase.protein)
    if pause_weeks:
        explain_pause(phases[0], pause_weeks, draft.ends_hold)
    explain_cut(
        phases[cut],
        path,
        subject=subject,
        reasons=solved.reasons,
        protein_g_per_kg=min(given, phase.protein),
        easing_in_weeks=aim.easing_in_weeks,
        training_dose=model.training_dose,
        has_goal=aim.has_goal,
        fat_loss_kg=aim.fat_loss_kg,
        is_mini=aim.kind is DeficitKind.MINI_CUT,
        has_breaks=any(row.element is Element.BREAK for row in rows),
    )
    lower = subject.maintenance_kcal - maintenance_after
    explain_maintenance(phases[cut + 1], path, draft.ends_hold, lower, maintenance_after)
    # Told with the phase as well: a calendar or a briefing goes phase by phase.
    held = [draft.why_held] if is_held else []
    phases[cut + 1].reasons.extend(held)
    _explain_growth(draft, phases, cut + 2, path, gain, then.fat_ceiling, is_return=True)
    too_small = said_of_too_small(phase, solved)
    small = [] if too_small is None else [too_small]
    phases[cut].reasons.extend(small)
    reasons = [*solved.reasons, *held, *small]
    return Plan(
        phases,
        path,
        actions,
        reasons,
        deficit_kcal=solved.deficit_kcal,
        cut=cut,
        warnings=warnings,
        too_small=too_small,
    )


@traced
def plan_gain(
    member: Member,
    start: date,
    aim: GainAim,
    *,
    sources: frozenset[UncertaintySource],
    pause_weeks: int = 0,
    with_sizes: bool = False,
    past_ceiling: bool = False,
) -> Plan:
    """Plan a gain for some weeks, or until a settled weight is reached. ``pause_weeks`` at maintenance come first.

    From its ceiling on a hold takes its place. ``with_sizes``: offer other sizes too. ``past_ceiling``: only to weigh
    what it would cost to go on, never to tell.

    Raises: ``rails.Refused`` where screening was not answered.
    """
    subject = member.subject
    rails.check_answered(subject)
    draft = Draft(member, aim.preference, start)
    draft.hold(pause_weeks)
    if draft.is_held(aim.fat_ceiling):
        draft.hold(aim.longest_weeks)
        phases, path = draft.finish(sources)
        explain_hold(phases[0], path, draft.ends_hold, is_growing=member.subject.is_pregnant)
        phases[0].reasons.append(draft.why_held)
        return Plan(phases, path, draft.actions, [draft.why_held])
    gain = plan_gain_phase(subject, draft.model, draft.state, aim) if past_ceiling else draft.gain_asked(subject, aim)
    if gain is None:
        weeks = aim.longest_weeks
        gain = draft.gain_asked(subject, msgspec.structs.replace(aim, weeks=weeks, target_weight_kg=None))
        ends = [draft.state] if gain is None else [draft.state, *gain.states]
        reached_kg = settled_kg(ends[-1])
        return _too_far(draft, aim, reached_kg, say("GAIN_TARGET_TOO_FAR", weeks=weeks, weight_kg=reached_kg))
    if not gain.weeks:
        draft.hold(aim.longest_weeks)
        phases, path = draft.finish(sources)
        explain_hold(phases[0], path, draft.ends_hold, is_growing=member.subject.is_pregnant)
        # In pregnancy weight is to rise, and nothing is too fast: then what is needed says why.
        why = [] if subject.is_pregnant else [say("GAIN_NO_ROOM")]
        return Plan(phases, path, draft.actions, why)
    if aim.target_weight_kg is not None and settled_kg(gain.states[-1]) < aim.target_weight_kg:
        reached_kg = settled_kg(gain.states[-1])
        return _too_far(draft, aim, reached_kg, say("GAIN_TARGET_PAST_CEILING", weight_kg=reached_kg))
    before, to_ceiling = draft.branch(), draft.weeks_to_ceiling(gain, aim.fat_ceiling)
    draft.add(PhaseKind.GAIN, gain.weeks, gain.states)
    at = len(draft.kinds) - 1
    if aim.target_weight_kg is None:
        draft.hold(aim.longest_weeks - len(gain.weeks))
    phases, path = draft.finish(sources)
    if pause_weeks:
        explain_pause(phases[0], pause_weeks, draft.ends_hold)
    _explain_growth(draft, phases, at, path, gain, aim.fat_ceiling, is_return=False)
    plan = Plan(phases, path, [*gain.actions, *draft.actions], [], weeks_to_ceiling=to_ceiling)
    if not with_sizes:
        return plan
    return plan._replace(sizes=surpluses_offered(before, aim, gain, plan.laid_out(at), sources))


def _too_far(draft: Draft, aim: GainAim, reached_kg: float, why: Message) -> Plan:
    """No plan for the weight that a gain was to reach, and what comes nearest to it."""
    # To a tenth, as it is asked for; the weight to be reached lies over the present one.
    weight_kg = math.floor(10.0 * reached_kg + 1e-9) / 10.0
    nearest = NearestGain(weight_kg if weight_kg > draft.subject.weight_kg else None, _weeks_to_weight(draft, aim))
    return no_plan(NearestSafe(), [], [why])._replace(nearest_gain=nearest)


def _weeks_to_weight(draft: Draft, aim: GainAim) -> int | None:
    """The weeks after which a gain reaches its weight, where those asked for were too few."""
    target_kg, weeks = aim.target_weight_kg, aim.weeks
    if weeks is None or target_kg is None:
        return None

    def gets_there(longer: int | None) -> int | None:
        gain = draft.gain_asked(draft.subject, msgspec.structs.replace(aim, weeks=longer))
        is_there = gain is not None and gain.weeks and settled_kg(gain.states[-1]) >= target_kg
        return len(gain.weeks) if gain is not None and is_there else None

    found = gets_there(None)
    # Over so many weeks alone the ceiling on its rate may leave another surplus than over a year.
    return None if found is None else next((n for n in range(found, found + 4) if gets_there(n)), None)


def _explain_growth(
    draft: Draft,
    phases: list[PlannedPhase],
    at: int,
    path: Forecast,
    gain: PlannedGain,
    asked_ceiling: float | None,
    *,
    is_return: bool,
) -> None:
    """Fill in a gain, where there is one at this place, and the hold that it ends with where its ceiling ends it."""
    if len(phases) <= at:
        return
    subject, is_ended = draft.subject, len(phases) > at + 1
    ceiling, is_growing = ceiling_of(subject, asked_ceiling), subject.is_pregnant
    explain_gain(phases[at], path, gain.surplus_kcal, ceiling, is_growing=is_growing, is_ended=is_ended)
    if is_return:
        explain_return(phases[at], path, is_growing=is_growing)
    if is_ended:
        explain_hold(phases[at + 1], path, draft.ends_hold, is_growing=is_growing)
        phases[at + 1].reasons.insert(0, draft.why_held_from(phases[at + 1].weeks[0].start))


@traced
def plan_hold(
    member: Member, start: date, aim: HoldAim, then: ReturnAim, *, sources: frozenset[UncertaintySource]
) -> Plan:
    """Plan a hold at maintenance, and the gain that follows it, which needs screening answered.

    Where none can be planned nothing follows: a hold was asked for by its length.
    """
    draft = Draft(member, aim.preference, start)
    draft.hold(aim.weeks)
    weeks, actions = rails.gain_weeks_allowed(member.subject, then.gain_weeks)
    reasons = [draft.why_held] if weeks and draft.is_held(then.fat_ceiling) else []
    with_gain = draft.branch()
    gain = with_gain.grow(weeks, then.surplus_kcal, then.fat_ceiling)
    if gain.weeks:
        draft = with_gain
    elif weeks and not reasons and not member.subject.is_pregnant:
        reasons = [say("GAIN_NO_ROOM")]
    phases, path = draft.finish(sources)
    explain_hold(phases[0], path, draft.ends_hold, is_growing=member.subject.is_pregnant)
    phases[0].reasons.extend(reasons)
    _explain_growth(draft, phases, 1, path, gain, then.fat_ceiling, is_return=True)
    return Plan(phases, path, [*actions, *gain.actions, *draft.actions], reasons)


def ceiling_of(subject: Subject, asked: float | None) -> float | None:
    """The body fat at which a gain is to stop: as asked, or the usual one; None where none may be named."""
    if asked is not None:
        return asked
    if rails.forbids_fat_target(subject) is not None:
        return None
    return usual_ceiling(subject.sex)
