"""The alternatives of a decision: each a plan over the common horizon, with its forecast and its score."""

import math
from typing import NamedTuple

from . import guard_rails as rails
from . import phase_plan
from .decision_terms import BRIDGE_SHARE, BRIDGE_WEEKS_MOST, HORIZON_WEEKS, PhaseKind, Question
from .decision_trade import Lines, Score, score
from .deficit_phase import DeficitAim, DeficitKind
from .estimate import Estimate
from .forecast import ALL_SOURCES, Forecast
from .guard_rails import Refused
from .message import Message, say, template
from .phase_defaults import DEFAULT_WEEKS, MOST_WEEKS
from .phase_plan import GainAim, History, HoldAim, Plan, ReturnAim
from .season_policy import LONG_CUT_WEEKS

template(
    "CUT_NEEDS_READING",
    "Body fat computed from height and weight never starts a cut: measure it (skinfolds, girths, DXA) and ask again.",
)
template("CUT_USED_UP", "The {weeks} weeks done are as long as this phase may be.")
template("GAIN_NEEDS_TRAINING", "A surplus without resistance training is stored as fat: start training first.")


class Fragment(NamedTuple):
    """What to ask a planner for. Exactly what the alternative was planned with."""

    kind: PhaseKind
    weeks: int | None = None
    target_fat_fraction: float | None = None
    surplus_kcal: float | None = None
    fat_ceiling: float | None = None
    weeks_done: int = 0
    for_event: bool = False
    maintenance_weeks: int = 1
    gain_weeks: int = 0


class Alternative(NamedTuple):
    """One way on. ``closed`` says why it is not open to this person; then there is no plan.

    ``weeks`` is the length of its first phase; the changes are over the common horizon.
    """

    kind: PhaseKind
    fragment: Fragment | None
    plan: Plan | None
    weeks: int
    score: Score | None
    closed: Message | None = None
    reaches_target: bool = True

    @property
    def total_kg(self) -> float:
        """The score; least where the alternative is closed."""
        return -math.inf if self.score is None else self.score.total_kg

    @property
    def weeks_dieting(self) -> int:
        """Weeks in a deficit within the horizon."""
        return self.weeks if self.kind.is_cut and self.plan is not None else 0

    @property
    def path(self) -> Forecast:
        """Its forecast; ask open alternatives only."""
        assert self.plan is not None
        assert self.plan.forecast is not None
        return self.plan.forecast

    @property
    def last(self) -> int:
        """The point of the forecast at its end."""
        assert self.plan is not None
        return self.plan.phases[-1].weeks[-1].point

    def change(self, name: str) -> Estimate:
        """Change of a mass [kg] over the horizon."""
        path = self.path
        sd = path.spread_of_change(0, self.last)
        mean = float(getattr(path.states[self.last], name) - getattr(path.states[0], name))
        return Estimate(mean, float(getattr(sd, name)))

    def end_fat_fraction(self) -> Estimate:
        """Body fat at the end of the horizon."""
        state = self.path.states[self.last]
        return Estimate(float(state.fat_kg / state.weight_kg), float(self.path.spreads()[self.last].fat_fraction))

    def weeks_above(self, fraction: float) -> int:
        """Weeks that end with body fat above ``fraction``."""
        return sum(float(s.fat_kg / s.weight_kg) > fraction for s in self.path.states[1:])


def bridge_weeks(cut_weeks: int) -> int:
    """Weeks at maintenance after a cut: one after a mini-cut, more after a long one."""
    if cut_weeks <= MOST_WEEKS:
        return 1
    return min(BRIDGE_WEEKS_MOST, math.ceil(cut_weeks / BRIDGE_SHARE))


class Alternatives:
    """Makes the alternatives of one question. ``counts_from`` None leaves body fat out of every score."""

    def __init__(self, question: Question, lines: Lines | None, refusal: Message | None) -> None:
        self.question, self.lines, self.refusal = question, lines, refusal
        self.counts_from = None if lines is None else lines.counts_from

    def gain(
        self, weeks: int | None = None, *, surplus_kcal: float | None = None, ceiling: float | None = None
    ) -> Alternative:
        """A gain; its fragment runs ``weeks`` (the horizon by default)."""
        q = self.question
        aim = GainAim(weeks=HORIZON_WEEKS, surplus_kcal=surplus_kcal, fat_ceiling=ceiling)
        plan = phase_plan.plan_gain(q.subject, q.body, q.as_of, aim, sources=ALL_SOURCES)
        fragment = Fragment(PhaseKind.GAIN, weeks or HORIZON_WEEKS, surplus_kcal=surplus_kcal, fat_ceiling=ceiling)
        return self._open(PhaseKind.GAIN, fragment, plan, weeks or HORIZON_WEEKS)

    def hold(self, weeks: int = HORIZON_WEEKS, *, then_gain: bool = False) -> Alternative:
        """Maintenance for some weeks, then a gain where one is wanted, else more of the same."""
        q = self.question
        weeks = min(max(1, weeks), HORIZON_WEEKS)
        gain = HORIZON_WEEKS - weeks if then_gain and q.grows else 0
        plan = phase_plan.plan_hold(
            q.subject, q.body, q.as_of, HoldAim(weeks=HORIZON_WEEKS - gain), ReturnAim(gain_weeks=gain),
            sources=ALL_SOURCES,
        )  # fmt: skip
        return self._open(PhaseKind.MAINTENANCE, Fragment(PhaseKind.MAINTENANCE, weeks, gain_weeks=gain), plan, weeks)

    def cut(
        self, kind: DeficitKind, *, weeks_done: int = 0, until_event: int | None = None, target: float | None = None
    ) -> Alternative:
        """A cut to the target of the motive, or as far as its longest length goes; then maintenance and a gain."""
        named = PhaseKind(kind.value)
        if self.refusal is not None:
            return Alternative(named, None, None, 0, None, self.refusal)
        if not self.question.fat.is_measured:
            return Alternative(named, None, None, 0, None, say("CUT_NEEDS_READING"))
        assert self.lines is not None
        most = (MOST_WEEKS if kind is DeficitKind.MINI_CUT else LONG_CUT_WEEKS) - weeks_done
        if until_event is not None:
            most = min(most, until_event)
        least = 1 if weeks_done else (2 if kind is DeficitKind.MINI_CUT else MOST_WEEKS + 1)
        if most < least:
            return Alternative(named, None, None, 0, None, say("CUT_USED_UP", weeks=weeks_done))
        wanted = self.lines.target if target is None else target
        aim = DeficitAim(kind=kind, target_fat_fraction=wanted, at_most_weeks=until_event, weeks_done=weeks_done)
        usual = Fragment(named, weeks_done=weeks_done, maintenance_weeks=1)
        fragment, reaches = usual._replace(target_fat_fraction=wanted, for_event=until_event is not None), True
        try:
            plan = self._plan(aim, 1, 0)
            if not plan.is_feasible or plan.cut_phase is None or len(plan.cut_phase.weeks) > most:
                # Out of reach in that time, or met already: what its usual or longest length does.
                is_met = plan.nearest is not None and plan.nearest.weeks == 0
                weeks = min(most, DEFAULT_WEEKS if is_met and kind is DeficitKind.MINI_CUT else most)
                weeks = least if is_met and kind is DeficitKind.CUT else weeks
                fragment, reaches = usual._replace(weeks=weeks), is_met
                plan = self._plan(DeficitAim(kind=kind, weeks=weeks, weeks_done=weeks_done), 1, 0)
            if not plan.is_feasible or plan.cut_phase is None:
                return Alternative(named, None, None, 0, None, plan.reasons[-1])
            weeks = len(plan.cut_phase.weeks)
            rest = max(1, HORIZON_WEEKS - weeks)
            bridge = min(rest, bridge_weeks(weeks + weeks_done))
            gain = rest - bridge if self.question.grows and reaches else 0
            again = DeficitAim(kind=kind, weeks=weeks, deficit_kcal=plan.deficit_kcal, weeks_done=weeks_done)
            full = self._plan(again, rest - gain, gain)
        except Refused as refused:
            return Alternative(named, None, None, 0, None, refused.action.message)
        if not full.is_feasible:
            return Alternative(named, None, None, 0, None, full.reasons[-1])
        fragment = fragment._replace(maintenance_weeks=bridge, gain_weeks=gain)
        return self._open(named, fragment, full, weeks)._replace(reaches_target=reaches)

    def _plan(self, aim: DeficitAim, maintenance_weeks: int, gain_weeks: int) -> Plan:
        q = self.question
        return phase_plan.plan_deficit(
            q.subject,
            q.body,
            q.as_of,
            aim,
            ReturnAim(maintenance_weeks=maintenance_weeks, gain_weeks=gain_weeks),
            history=History(q.cuts_last_12_months, q.weeks_since_cut),
            sources=ALL_SOURCES if gain_weeks or maintenance_weeks > 1 else frozenset(),
        )

    def _open(self, kind: PhaseKind, fragment: Fragment, plan: Plan, weeks: int) -> Alternative:
        assert plan.forecast is not None
        dieting = weeks if kind.is_cut else 0
        return Alternative(kind, fragment, plan, weeks, score(plan.forecast.states, dieting, self.counts_from))


def refusal_of(question: Question) -> tuple[list[rails.RailAction], Refused | None]:
    """Warnings where a rail lets this person run a deficit, or its refusal."""
    try:
        return rails.check_person(question.subject), None
    except Refused as refused:
        return [], refused
