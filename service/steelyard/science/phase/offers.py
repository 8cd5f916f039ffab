"""A planned phase at other sizes: what each would do, and what it would cost."""

from collections.abc import Sequence
from typing import NamedTuple

import msgspec

from ..body import Forecast, PathChange, PathPoint, UncertaintySource
from ..rails import RailAction
from ..register import Message, say, traced
from .aims import GainAim
from .deficit import DeficitPhase
from .deficit_solver import Solved, solve, warnings_on
from .draft import Draft, LaidOut
from .followed import PhaseKind
from .gain import PlannedGain, settled_kg
from .history import History
from .phases import PlannedPhase, PlannedWeek
from .sizes import Pace, Size, usual_deficit
from .weeks import Element

# Two sizes nearer to each other than this are one [kcal/d].
_ALIKE_KCAL = 25.0


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


@traced
def deficits_offered(
    draft: Draft,
    phase: DeficitPhase,
    solved: Solved,
    laid_out: LaidOut,
    warnings: Sequence[RailAction],
    history: History,
    sources: frozenset[UncertaintySource],
) -> list[SizeOffered]:
    """The phase at each pace, as planned, and at the most that the rails allow; a goal is kept, else the weeks.

    ``draft`` is what comes before the phase, ``laid_out`` the phase as planned, with its ``warnings``.
    """
    aim, planned = phase.aim, solved.deficit_kcal
    is_training = phase.model.training_dose >= 1.0
    paces = {
        pace: usual_deficit(phase.subject, history, pace, is_training=is_training, kept=phase.kept).deficit_kcal
        for pace in Pace
    }
    boundless = phase.asked(msgspec.structs.replace(aim, deficit_kcal=phase.subject.maintenance_kcal))
    limit = boundless.cap(phase.subject.maintenance_kcal, solved.weeks, is_history_known=history.is_known)
    largest = None if limit is None else limit.deficit_kcal // 10.0 * 10.0
    offered: list[SizeOffered] = []
    is_open = aim.deficit_kcal is None and not aim.has_goal
    for kcal, size in _sizes(planned, aim.pace if is_open else None, paces, largest):
        if kcal == planned:
            offered.append(_deficit_offered(phase, solved, size, laid_out, warnings, is_planned=True))
            continue
        weeks = None if aim.has_goal else solved.weeks
        other = phase.asked(msgspec.structs.replace(aim, deficit_kcal=kcal, weeks=weeks))
        found = solve(other, history)
        if found.nearest is None and found.deficit_kcal > kcal - 1.0 and not other.is_past_goal(kcal, found.weeks):
            trial = draft.branch()
            trial.add(aim.kind.phase, *other.run(found.deficit_kcal, found.weeks))
            offered.append(_deficit_offered(other, found, size, trial.finish(sources), warnings_on(other, found)))
    return offered


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
    laid_out: LaidOut,
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
    laid_out: LaidOut,
    tissue_share: float,
    warnings: Sequence[RailAction],
    *,
    is_planned: bool,
) -> SizeOffered:
    phases, path = laid_out
    first, last = phases[-1].first, phases[-1].last_point
    change, at_end = path.change(first, last), path.point_at(last)
    return SizeOffered(size, is_planned, offset_kcal, phases, path, change, at_end, tissue_share, warnings)


def surpluses_offered(
    draft: Draft, aim: GainAim, planned: PlannedGain, laid_out: LaidOut, sources: frozenset[UncertaintySource]
) -> list[SizeOffered]:
    """The gain at each pace, and as planned: ``laid_out``."""
    subject, weight = draft.subject, draft.subject.weight_kg
    own = aim.pace if aim.surplus_kcal is None else None
    gains: dict[float, PlannedGain] = {}
    paces: dict[Pace, float] = {}
    for pace in Pace:
        asked = msgspec.structs.replace(aim, surplus_kcal=None, pace=pace)
        gain = planned if pace is own else draft.gain_asked(subject, asked)
        if gain is not None and gain.weeks:
            paces[pace] = gain.surplus_kcal
            gains.setdefault(gain.surplus_kcal, gain)
    gains[planned.surplus_kcal] = planned
    offered: list[SizeOffered] = []
    for kcal, size in _sizes(planned.surplus_kcal, own, paces, None):
        gain, is_planned = gains[kcal], kcal == planned.surplus_kcal
        if aim.target_weight_kg is not None and settled_kg(gain.states[-1]) < aim.target_weight_kg:
            continue
        path = laid_out
        if not is_planned:
            trial = draft.branch()
            trial.add(PhaseKind.GAIN, gain.weeks, gain.states)
            path = trial.finish(sources)
        gained = float(gain.states[-1].tissue_kg - draft.state.tissue_kg)
        share = gained / len(gain.weeks) / weight
        offered.append(_offered(size, kcal, path, share, gain.actions, is_planned=is_planned))
    return offered
