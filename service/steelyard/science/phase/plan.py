"""Plan phases: a fat-loss phase with the maintenance and gain that follow, a gain, or a hold, inside every rail.

A pause (travel, illness, injury) holds at maintenance first; the phase is then planned from the body as it is by
then. What no safe plan reaches is answered with the nearest on each axis.
"""

from collections.abc import Sequence
from datetime import date, timedelta
from enum import StrEnum
from functools import partial
from typing import NamedTuple

import msgspec

from .. import rails
from ..body import (
    Body,
    BodyState,
    Forecast,
    PathChange,
    PathPoint,
    Starts,
    Stretch,
    UncertaintySource,
    current_maintenance_kcal,
    forecast,
    path_kept,
    walk,
)
from ..member import Member
from ..rails import (
    CARBOHYDRATE_KCAL_PER_G,
    FAT_KCAL_PER_G,
    PROTEIN_DEFAULT_GAIN,
    CarbohydratePreference,
    RailAction,
    Subject,
    split_for,
    usual_protein,
)
from ..register import Message, say, traced
from .band import usual_ceiling
from .deficit import DeficitAim, DeficitKind, DeficitPhase, OnIntake, Week, stretches_of, subject_at
from .deficit_solver import NearestSafe, Solved, capped_later, said_of_too_small, solve
from .gain import GainAim, PlannedGain, plan_gain_phase, plan_surplus
from .history import History
from .phases import (
    Element,
    PlannedPhase,
    PlannedWeek,
    explain_cut,
    explain_gain,
    explain_hold,
    explain_maintenance,
    explain_pause,
    explain_return,
)
from .sizes import Pace, Size, usual_deficit, usual_surplus

# Of a usual diet: carried mass follows its ratio to what is eaten, and no one lives on nothing of it for good.
_LEAST_CARBOHYDRATE_SHARE = 0.05
# Two sizes nearer to each other than this are one [kcal/d].
_ALIKE_KCAL = 25.0


class HoldAim(msgspec.Struct, frozen=True, kw_only=True):
    """A hold at maintenance."""

    weeks: int
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED


class ReturnAim(msgspec.Struct, frozen=True, kw_only=True):
    """What follows a fat-loss phase or a hold."""

    maintenance_weeks: int = 1
    gain_weeks: int = 12
    surplus_kcal: float | None = None
    fat_ceiling: float | None = None


class SizeOffered(NamedTuple):
    """A phase at another size, or as planned: its energy [kcal/d], under maintenance in a deficit, and its price.

    ``phases`` and ``path`` begin with what comes before it. ``change`` is what it does from its first to its last day,
    ``at_end`` the body then, and ``tissue_share`` is of body mass a week.
    """

    size: Size
    is_planned: bool
    offset_kcal: float
    phases: list[PlannedPhase]
    path: Forecast
    change: PathChange
    at_end: PathPoint
    tissue_share: float
    warnings: Sequence[RailAction]

    @property
    def phase(self) -> PlannedPhase:
        """The phase itself."""
        return self.phases[-1]

    @property
    def intake_kcal(self) -> int:
        """What is eaten a day in its first week that neither eases in nor is a break."""
        return self._full_weeks[0].intake.intake_kcal

    @property
    def last_intake_kcal(self) -> int:
        """What is eaten a day in the last of them."""
        return self._full_weeks[-1].intake.intake_kcal

    @property
    def _full_weeks(self) -> list[PlannedWeek]:
        return [week for week in self.phase.weeks if week.element in (Element.DEFICIT, Element.SURPLUS)]

    def said(self) -> Message:
        """What this size does."""
        change, kcal = self.change, abs(self.offset_kcal)
        weeks, fat, lean = len(self.phase.weeks), change.fat_kg.mean, change.lean_kg.mean
        if self.offset_kcal > 0:
            return say("SIZE_OF_GAIN", surplus_kcal=kcal, weeks=weeks, lean_kg=max(0.0, lean), fat_kg=max(0.0, fat))
        at_risk = max(0.0, -change.lean_kg.lower)
        return say("SIZE_OF_DEFICIT", deficit_kcal=kcal, weeks=weeks, fat_kg=max(0.0, -fat), lean_kg=at_risk)


class PlanChoice(StrEnum):
    """What can be offered beside a plan, to somebody who may still choose."""

    SIZES = "sizes"
    LEVERS = "levers"


class Plan(NamedTuple):
    """The plan, or why there is none. ``cut`` is the index of the fat-loss phase in ``phases``.

    ``warnings`` are of its deficit; ``sizes`` are what the phase would be at other sizes, smallest first, where they
    were asked for. ``too_small`` says that safe limits leave a deficit that no scale tells from water, where they do.
    """

    nearest: NearestSafe | None
    deficit_kcal: float | None
    phases: list[PlannedPhase]
    forecast: Forecast | None
    actions: list[RailAction]
    reasons: list[Message]
    cut: int | None = None
    warnings: Sequence[RailAction] = ()
    sizes: Sequence[SizeOffered] = ()
    too_small: Message | None = None

    @property
    def is_feasible(self) -> bool:
        """Whether the plan does what was asked."""
        return self.nearest is None

    @property
    def cut_phase(self) -> PlannedPhase | None:
        """The fat-loss phase, where there is one."""
        return None if self.cut is None or not self.phases else self.phases[self.cut]


class _Draft:
    """Phases being laid end to end: weeks as they are added, and the body at their end."""

    def __init__(self, member: Member, preference: CarbohydratePreference, start: date) -> None:
        self.preference, self.start = preference, start
        self.body = with_usual_diet(member.body, member.subject, preference)
        self.calibrated = Starts(self.body)
        self.model, self.state = self.calibrated.expected
        self.subject = member.subject.rested_with(float(self.state.carried_kg))
        self.kinds: list[str] = []
        self.weeks: list[list[Week]] = []
        self.likely = [self.state]  # the path, as far as deficits are kept; ``state`` is where all is followed
        self.raised: list[RailAction] = []

    @property
    def actions(self) -> list[RailAction]:
        """What floors did to holds: the first of them."""
        return self.raised[:1]

    def add(self, kind: str, weeks: list[Week], states: list[BodyState]) -> None:
        """Add weeks and the body at the end of each."""
        if not weeks:
            return
        kept = self.body.kept
        if kept is not None:
            self.likely += path_kept(self.model, self.likely[-1], stretches_of(weeks), kept)[1:]
        else:
            self.likely += states
        self.state = states[-1]
        if self.kinds and self.kinds[-1] == kind:
            self.weeks[-1] += weeks
        else:
            self.kinds.append(kind)
            self.weeks.append(weeks[:])

    def branch(self) -> "_Draft":
        """A draft that goes on from here, and leaves this one as it is."""
        other = _Draft.__new__(_Draft)
        vars(other).update(vars(self))
        other.kinds, other.likely, other.raised = self.kinds[:], self.likely[:], self.raised[:]
        other.weeks = [rows[:] for rows in self.weeks]
        return other

    def holding(self, weeks: int) -> tuple[list[Week], list[BodyState]]:
        """Weeks at maintenance from here, the intake set anew each week for the body that there likely is."""
        rows: list[Week] = []
        states, likely, fed_kg = [self.state], self.likely[-1], self.subject.protein_kg
        now = subject_at(self.subject, self.model, likely)
        protein = usual_protein(self.subject, PROTEIN_DEFAULT_GAIN)

        def tell(kcal: float) -> Week:
            return Week(Element.MAINTENANCE, split_for(self.subject, kcal, protein, self.preference), fed_kg)

        for _ in range(weeks):
            lived = OnIntake(self.subject, self.model, tell, partial(walk, self.model, likely, lengths=(7.0,)))
            wanted = now.maintenance_kcal
            self.raised += rails.raised_to_floor(rails.held_kcal(now, wanted, lived), wanted)
            (likely,), now = lived.ends, lived.then
            rows.append(lived.week)
            states += lived.ends if self.body.kept is None else walk(self.model, states[-1], lived.diet, (7.0,))
        return rows, states[1:]

    def hold(self, weeks: int) -> None:
        """Add weeks at maintenance."""
        self.add("maintenance", *self.holding(weeks))

    def grow(self, weeks: int, asked_kcal: float | None, ceiling: float | None) -> PlannedGain:
        """Add weeks of a gain, at the surplus asked for or the usual one; of a hold for a body over its ``ceiling``.

        Where none is asked for it is the usual one. An underweight body may gain whatever its body fat.
        """
        if weeks and self.is_held(ceiling):
            self.hold(weeks)
            return PlannedGain([], [], 0.0, [])
        gain = plan_surplus(self.subject, self.model, self.state, weeks, asked_kcal, self.preference)
        self.add("gain", gain.weeks, gain.states)
        if weeks and not gain.weeks:
            self.hold(weeks)
        return gain

    def is_held(self, asked: float | None) -> bool:
        """Whether the body there is has reached the ceiling of a gain, as asked or usual.

        The usual one holds also those to whom no body fat is named.
        """
        if asked is not None:
            return is_at_ceiling(self.likely[-1], asked)
        if self.subject.bmi < rails.BMI_FLOOR:
            return False
        # Height and weight alone hold only a body that is over it all but surely. Minors may not lose again what a gain
        # was too much: for them what is likelier than not is enough, about where overweight begins at their age.
        is_sure = self.subject.is_fat_measured or self.subject.age_years < rails.ADULT_YEARS
        unsure = 0.0 if is_sure else self.subject.fat_below
        return is_at_ceiling(self.likely[-1], usual_ceiling(self.subject.sex) + unsure)

    @property
    def why_held(self) -> Message:
        """Why there is a hold in place of a gain. Of fat to lose first only those are told who may lose any."""
        return say("GAIN_NOT_NOW") if rails.may_not_diet(self.subject) else say("HELD_AT_CEILING")

    def finish(self, sources: frozenset[UncertaintySource]) -> tuple[list[PlannedPhase], Forecast]:
        """The phases with their forecast."""
        stretches: list[Stretch] = []
        phases, point, day = [], 0, self.start
        for kind, rows in zip(self.kinds, self.weeks, strict=True):
            # A stretch never spans two phases, so that the ends of phases are nodes of the forecast.
            stretches += stretches_of(rows)
            weeks = [
                PlannedWeek(day + timedelta(days=7 * i), row.intake, point + 1 + i, row.element)
                for i, row in enumerate(rows)
            ]
            phases.append(PlannedPhase(kind, point, weeks, [], [], [], []))
            point += len(rows)
            day += timedelta(days=7 * len(rows))
        return phases, forecast(self.body, stretches, sources=sources, path=self.likely, start=self.calibrated)


def is_at_ceiling(state: BodyState, ceiling: float) -> bool:
    """Whether a body is as fat as the ceiling of its gain: then no gain is planned."""
    return float(state.fat_kg / state.weight_kg) >= ceiling


def with_usual_diet(body: Body, subject: Subject, preference: CarbohydratePreference) -> Body:
    """The body whose usual diet has the carbohydrate that its planned maintenance will have.

    Otherwise carried mass would come back to another level than it left.
    """
    protein = usual_protein(subject, PROTEIN_DEFAULT_GAIN)
    usual = split_for(subject, subject.maintenance_kcal, protein, preference)
    share = CARBOHYDRATE_KCAL_PER_G * usual.carbohydrate_g / usual.intake_kcal
    return body._replace(carbohydrate_share=max(_LEAST_CARBOHYDRATE_SHARE, share))


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
    Raises: ``guard_rails.Refused`` where a rule forbids any deficit for this person.
    """
    subject = member.subject
    actions = rails.check_person(subject)
    actions += rails.warn_history(history.cuts_last_12_months, history.weeks_since_last_cut)
    protein, protein_actions = rails.protein_in_deficit(subject, aim.protein_g_per_kg)
    actions += protein_actions
    if weeks_until_event is not None:
        aim = msgspec.structs.replace(aim, at_most_weeks=weeks_until_event)
    if aim.target_fat_fraction is not None:
        rails.refuse_target(subject, aim.target_fat_fraction, "phase.target_fat_fraction")
    draft = _Draft(member, aim.preference, start)
    draft.hold(pause_weeks)
    phase = DeficitPhase(
        subject,
        draft.body,
        aim,
        protein,
        start=draft.calibrated.expected,
        weeks_before=0.0 if aim.weeks_done else history.weeks_that_count,
    )
    if pause_weeks:
        phase.starting(draft.state, subject_at(subject, draft.model, draft.state), pause_weeks)
    solved = solve(phase, history)
    if solved.nearest is None and weeks_until_event is not None and solved.weeks < weeks_until_event:
        solved, waited = _wait(draft, phase, solved, weeks_until_event, history, pause_weeks)
        pause_weeks += waited
    actions += solved.actions
    if solved.nearest is not None:
        return Plan(solved.nearest, None, [], None, actions, [say("INFEASIBLE"), *solved.reasons])
    before = draft.branch()
    plan = _lay_out(draft, phase, solved, then, sources, actions, pause_weeks)
    if not with_sizes:
        return plan
    return plan._replace(sizes=_deficits_offered(before, phase, solved, plan, history, sources))


@traced
def _wait(
    draft: _Draft, phase: DeficitPhase, solved: Solved, weeks_until_event: int, history: History, pause_weeks: int
) -> tuple[Solved, int]:
    """The phase as late before its event as will do, and the weeks at maintenance that come before it.

    A shorter wait for the next phase, and the goal is met on the day.
    """
    aim, subject, longest = phase.aim, phase.subject, weeks_until_event - solved.weeks
    rows, states = draft.holding(longest)

    def after(weeks: int) -> Solved | None:
        phase.aim = msgspec.structs.replace(aim, at_most_weeks=weeks_until_event - weeks)
        there = subject_at(subject, draft.model, states[weeks - 1])
        phase.starting(states[weeks - 1], there, pause_weeks + weeks)
        later = solve(phase, history)
        return later if later.nearest is None and later.weeks <= weeks_until_event - weeks else None

    # A body that has waited may need another number of weeks, have met the goal already, or have less room.
    least, beyond, trial = 0, longest + 1, longest
    while beyond - least > 1:
        if after(trial) is None:
            beyond = trial
        else:
            least = trial
        trial = beyond - 1 if beyond > longest - 2 else (least + beyond) // 2
    later = after(least) if least else None
    if later is None:
        phase.aim = aim
        phase.starting(draft.state, subject, pause_weeks)
        return solved, 0
    draft.add("maintenance", rows[:least], states[:least])
    return later, least


@traced
def _deficits_offered(
    draft: _Draft,
    phase: DeficitPhase,
    solved: Solved,
    plan: Plan,
    history: History,
    sources: frozenset[UncertaintySource],
) -> list[SizeOffered]:
    """The phase at each pace, as planned, and at the most that the rails allow; a goal is kept, else the weeks."""
    aim, planned = phase.aim, solved.deficit_kcal
    is_training = phase.model.training_dose >= 1.0
    paces = {
        pace: usual_deficit(phase.subject, history, pace, is_training=is_training, kept=phase.kept).deficit_kcal
        for pace in Pace
    }
    phase.aim = msgspec.structs.replace(aim, deficit_kcal=phase.subject.maintenance_kcal)
    limit = phase.cap(phase.subject.maintenance_kcal, solved.weeks, is_history_known=history.is_known)
    phase.aim = aim
    largest = None if limit is None else limit.deficit_kcal // 10.0 * 10.0
    offered: list[SizeOffered] = []
    is_open = aim.deficit_kcal is None and not aim.has_goal
    for kcal, size in _sizes(planned, aim.pace if is_open else None, paces, largest):
        if kcal == planned:
            laid_out = _as_planned(plan, plan.cut or 0)
            offered.append(_deficit_offered(phase, solved, size, laid_out, plan.warnings, is_planned=True))
            continue
        weeks = None if aim.has_goal else solved.weeks
        phase.aim = msgspec.structs.replace(aim, deficit_kcal=kcal, weeks=weeks)
        found = solve(phase, history)
        if found.nearest is None and found.deficit_kcal > kcal - 1.0:
            trial = draft.branch()
            trial.add(aim.kind.value, *phase.run(found.deficit_kcal, found.weeks))
            offered.append(_deficit_offered(phase, found, size, trial.finish(sources), _warnings(phase, found)))
        phase.aim = aim
    return offered


def _as_planned(plan: Plan, last: int) -> tuple[list[PlannedPhase], Forecast]:
    """The phases of a plan up to one of them, and the path that is theirs as far as it goes."""
    assert plan.forecast is not None
    return plan.phases[: last + 1], plan.forecast


def _sizes(
    planned_kcal: float, pace: Pace | None, paces: dict[Pace, float], largest_kcal: float | None
) -> list[tuple[float, Size]]:
    """What is offered beside what is planned at a ``pace``, smallest first, two that are alike once; each named."""
    of_pace = next((Size(other) for other, kcal in paces.items() if abs(kcal - planned_kcal) < 1.0), Size.OWN)
    sizes = [(planned_kcal, of_pace if pace is None else Size(pace))]
    others = [(kcal, Size(other)) for other, kcal in paces.items() if other is not pace]
    others += [] if largest_kcal is None else [(largest_kcal, Size.LARGEST)]
    for kcal, other in others:
        if all(abs(kcal - kept) >= _ALIKE_KCAL for kept, _ in sizes):
            sizes.append((kcal, other))
    return sorted(sizes)


def _deficit_offered(
    phase: DeficitPhase,
    solved: Solved,
    size: Size,
    laid_out: tuple[list[PlannedPhase], Forecast],
    warnings: Sequence[RailAction],
    *,
    is_planned: bool = False,
) -> SizeOffered:
    end = phase.run(solved.deficit_kcal, solved.weeks)[1][-1]
    share = -phase.loss_share(end, solved.weeks)
    return _offered(size, -solved.deficit_kcal, laid_out, share, warnings, is_planned=is_planned)


def _offered(
    size: Size,
    offset_kcal: float,
    laid_out: tuple[list[PlannedPhase], Forecast],
    tissue_share: float,
    warnings: Sequence[RailAction],
    *,
    is_planned: bool,
) -> SizeOffered:
    phases, path = laid_out
    first, last = phases[-1].first, phases[-1].last_point
    change, at_end = path.change(first, last), path.point_at(last)
    return SizeOffered(size, is_planned, offset_kcal, phases, path, change, at_end, tissue_share, warnings)


def _surpluses_offered(
    draft: _Draft, aim: GainAim, planned: PlannedGain, plan: Plan, sources: frozenset[UncertaintySource]
) -> list[SizeOffered]:
    """The gain at each pace, and as planned."""
    subject, weight = draft.subject, draft.subject.weight_kg
    paces = {pace: usual_surplus(subject, pace) for pace in Pace}
    offered: list[SizeOffered] = []
    for kcal, size in _sizes(planned.surplus_kcal, aim.pace if aim.surplus_kcal is None else None, paces, None):
        is_planned = kcal == planned.surplus_kcal
        asked = msgspec.structs.replace(aim, surplus_kcal=kcal)
        gain = planned if is_planned else plan_gain_phase(subject, draft.model, draft.state, asked)
        if gain is None or not gain.weeks or gain.surplus_kcal < kcal - 1.0:
            continue
        if is_planned:
            laid_out = _as_planned(plan, len(plan.phases) - 1)
        else:
            trial = draft.branch()
            trial.add("gain", gain.weeks, gain.states)
            laid_out = trial.finish(sources)
        gained = float(gain.states[-1].tissue_kg - draft.state.tissue_kg)
        share = gained / len(gain.weeks) / weight
        offered.append(_offered(size, kcal, laid_out, share, gain.actions, is_planned=is_planned))
    return offered


def _lay_out(
    draft: _Draft,
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
    draft.add(aim.kind.value, rows, states)
    cut = len(draft.kinds) - 1
    maintenance_after = float(current_maintenance_kcal(model, draft.likely[-1]))
    draft.hold(then.maintenance_weeks)
    is_held = then.gain_weeks > 0 and draft.is_held(then.fat_ceiling)
    gain = draft.grow(then.gain_weeks, then.surplus_kcal, then.fat_ceiling)
    phases, path = draft.finish(sources)

    warnings = _warnings(phase, solved)
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
        explain_pause(phases[0], pause_weeks)
    explain_cut(
        phases[cut],
        path,
        reasons=solved.reasons,
        protein_g_per_kg=min(given, phase.protein),
        easing_in_weeks=aim.easing_in_weeks,
        training_dose=model.training_dose,
        fat_loss_kg=aim.fat_loss_kg,
        is_mini=aim.kind is DeficitKind.MINI_CUT,
        has_breaks=any(row.element is Element.BREAK for row in rows),
    )
    explain_maintenance(phases[cut + 1], path, subject.maintenance_kcal - maintenance_after, maintenance_after)
    if len(phases) > cut + 2:
        explain_gain(phases[cut + 2], path, gain.surplus_kcal, ceiling_of(subject, then.fat_ceiling))
        explain_return(phases[cut + 2], path)
    too_small = said_of_too_small(phase, solved)
    reasons = [*solved.reasons, *([draft.why_held] if is_held else []), *([] if too_small is None else [too_small])]
    return Plan(None, solved.deficit_kcal, phases, path, actions, reasons, cut, warnings, too_small=too_small)


def _warnings(phase: DeficitPhase, solved: Solved) -> list[RailAction]:
    """Warnings on the deficit, each rule's once: at the first of the intakes that it warns of."""
    rows, states = phase.run(solved.deficit_kcal, solved.weeks)
    end = states[-1]
    loss, fraction = phase.loss_share(end, solved.weeks), float(end.fat_kg / end.weight_kg)
    bmi = subject_at(phase.subject, phase.model, end).bmi
    found: dict[str, RailAction] = {}
    for row, now in phase.resets(solved.deficit_kcal, solved.weeks):
        for action in rails.warn_deficit(now, row.intake.intake_kcal, loss, fraction, bmi):
            found.setdefault(action.message.code, action)
    for row in rows:
        day = row.intake
        for action in rails.warn_macronutrients(day.intake_kcal, FAT_KCAL_PER_G * day.fat_g, day.carbohydrate_g):
            found.setdefault(action.message.code, action)
    return list(found.values())


@traced
def plan_gain(
    member: Member,
    start: date,
    aim: GainAim,
    *,
    sources: frozenset[UncertaintySource],
    pause_weeks: int = 0,
    with_sizes: bool = False,
) -> Plan:
    """Plan a gain for some weeks, or until a settled weight is reached. ``pause_weeks`` at maintenance come first.

    ``with_sizes``: offer other sizes too.

    Raises: ``guard_rails.Refused`` where screening was not answered.
    """
    subject = member.subject
    rails.check_answered(subject)
    draft = _Draft(member, aim.preference, start)
    draft.hold(pause_weeks)
    if draft.is_held(aim.fat_ceiling):
        draft.hold(aim.longest_weeks)
        phases, path = draft.finish(sources)
        explain_hold(phases[0], path)
        return Plan(None, None, phases, path, draft.actions, [draft.why_held])
    gain = plan_gain_phase(subject, draft.model, draft.state, aim)
    if gain is None:
        message = say("GAIN_TARGET_TOO_FAR", weeks=aim.longest_weeks)
        return Plan(NearestSafe(None, None, None), None, [], None, [], [say("INFEASIBLE"), message])
    if not gain.weeks:
        draft.hold(aim.longest_weeks)
        phases, path = draft.finish(sources)
        explain_hold(phases[0], path)
        return Plan(None, None, phases, path, draft.actions, [])
    before = draft.branch()
    draft.add("gain", gain.weeks, gain.states)
    phases, path = draft.finish(sources)
    if pause_weeks:
        explain_pause(phases[0], pause_weeks)
    explain_gain(phases[-1], path, gain.surplus_kcal, ceiling_of(subject, aim.fat_ceiling))
    plan = Plan(None, None, phases, path, [*gain.actions, *draft.actions], [])
    return plan._replace(sizes=_surpluses_offered(before, aim, gain, plan, sources)) if with_sizes else plan


@traced
def plan_hold(
    member: Member, start: date, aim: HoldAim, then: ReturnAim, *, sources: frozenset[UncertaintySource]
) -> Plan:
    """Plan a hold at maintenance, and the gain that follows it, which needs screening answered."""
    draft = _Draft(member, aim.preference, start)
    draft.hold(aim.weeks)
    weeks, actions = rails.gain_weeks_allowed(member.subject, then.gain_weeks)
    reasons = [draft.why_held] if weeks and draft.is_held(then.fat_ceiling) else []
    gain = draft.grow(weeks, then.surplus_kcal, then.fat_ceiling)
    phases, path = draft.finish(sources)
    explain_hold(phases[0], path)
    if len(phases) > 1:
        explain_gain(phases[1], path, gain.surplus_kcal, ceiling_of(member.subject, then.fat_ceiling))
        explain_return(phases[1], path)
    return Plan(None, None, phases, path, [*actions, *gain.actions, *draft.actions], reasons)


def ceiling_of(subject: Subject, asked: float | None) -> float | None:
    """The body fat at which a gain is to stop: as asked, or the usual one; None where none may be named."""
    if asked is not None:
        return asked
    if rails.forbids_fat_target(subject) is not None:
        return None
    return usual_ceiling(subject.sex)
