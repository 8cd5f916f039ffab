"""The alternatives of a decision: each a plan over the common horizon, with its forecast and its score."""

import math
from typing import NamedTuple

import msgspec

from .. import rails
from ..body import ALL_SOURCES, BodyState, Forecast
from ..numbers import Estimate, Reaching
from ..phase import (
    DEFAULT_WEEKS,
    LONG_CUT_WEEKS,
    MOST_WEEKS,
    DeficitAim,
    DeficitBefore,
    DeficitKind,
    GainAim,
    HoldAim,
    PhaseKind,
    Plan,
    ReturnAim,
    bodies_along,
    plan_deficit,
    plan_gain,
    plan_hold,
    told_weeks,
)
from ..rails import Cleared, Refused, ToldWeek, clear
from ..register import Message, say
from .terms import BRIDGE_SHARE, BRIDGE_WEEKS_MOST, HORIZON_WEEKS, Question
from .trade import Lines, Score, score

_TOLD_KG = 0.01  # to which masses are told to somebody
_MOST_GAIN_WEEKS = 52  # longer a gain is not planned
LEAST_CEILING = 0.08  # nor to a ceiling under this


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
    """One way on. ``closed`` says why it is not open to this person, by which ``rule``; then there is no plan.
    ``is_too_small``: safe limits leave it, and too little of it to be worth its weeks.

    ``weeks`` is the length of its first phase, which ``waits`` so many for its event. The score is over the common
    horizon, whose ``weeks_told`` passed the gate with the fragment; the changes are over the weeks that the fragment
    asks for, along ``told_plan`` where that is not the first of the horizon.
    """

    kind: PhaseKind
    weeks: int
    told: Cleared[Fragment] | None = None
    weeks_told: tuple[ToldWeek, ...] = ()
    plan: Plan | None = None
    score: Score | None = None
    closed: Message | None = None
    rule: str | None = None
    is_too_small: bool = False
    reaches_target: bool = True
    waits: int = 0
    told_plan: Plan | None = None

    @property
    def fragment(self) -> Fragment | None:
        """What to ask a planner for, which has passed the gate; None where it is closed."""
        return None if self.told is None else self.told.value

    @property
    def total_kg(self) -> float:
        """The score; least where the alternative is closed."""
        return -math.inf if self.score is None else self.score.total_kg

    @property
    def weeks_dieting(self) -> int:
        """Weeks in a deficit within the horizon."""
        return self.weeks if self.kind.is_deficit and self.plan is not None else 0

    @property
    def path(self) -> Forecast:
        """Its forecast; ask open alternatives only."""
        assert self.plan is not None
        assert self.plan.forecast is not None
        return self.plan.forecast

    @property
    def weeks_asked(self) -> int:
        """Weeks that its fragment asks for; of a phase that starts when its event says, with those until then."""
        fragment = self.fragment
        if fragment is None:
            return 0
        after = fragment.gain_weeks if self.kind is PhaseKind.MAINTENANCE else 0
        if self.kind.is_deficit:
            after = fragment.maintenance_weeks + fragment.gain_weeks
        return self.waits + self.weeks + after

    @property
    def last(self) -> int:
        """The point of the forecast at the end of the weeks asked for."""
        plan = self.told_plan or self.plan
        assert plan is not None
        return min(self.weeks_asked, plan.phases[-1].weeks[-1].point)

    @property
    def told_path(self) -> Forecast:
        """The forecast of the weeks that its fragment asks for."""
        return self.path if self.told_plan is None or self.told_plan.forecast is None else self.told_plan.forecast

    def shortened(self, weeks: int) -> "Alternative":
        """The same way on, its first phase planned for ``weeks``."""
        if self.fragment is None:
            return self
        most = HORIZON_WEEKS
        if self.kind is PhaseKind.GAIN:
            # One that its ceiling ends is no longer than that.
            most = _MOST_GAIN_WEEKS if self.weeks == HORIZON_WEEKS else self.weeks
        weeks = max(1, min(weeks, most))
        shorter = self.fragment._replace(weeks=weeks)
        return self._replace(weeks=weeks, told=clear(shorter, self.weeks_told, "weight_kg"))

    def change(self, name: str) -> Estimate:
        """Change of a mass [kg] over the weeks asked for; between two nodes its variance grows evenly."""
        path, last = self.told_path, self.last
        after = next(node for node in path.nodes if node >= last)
        before = max(node for node in path.nodes if node <= last)
        low, high = (getattr(path.change(0, node), name) for node in (before, after))
        share = (last - before) / (after - before) if after > before else 0.0

        def between(sd: float, later: float) -> float:
            return math.sqrt(sd**2 + share * (later**2 - sd**2))

        mean = float(getattr(path.states[last], name) - getattr(path.states[0], name))
        sd = between(low.sd, high.sd)
        if not isinstance(high, Reaching):
            return Estimate(mean, sd)
        return Reaching(mean, sd, low.off + share * (high.off - low.off), between(low.people_sd, high.people_sd))

    def end_fat_fraction(self) -> Estimate:
        """Body fat at the end of the weeks asked for."""
        point = self.told_path.points()[self.last]
        mean, sd, people = float(point.fat_fraction), float(point.spread.fat_fraction), point.people
        if people is None:
            return Estimate(mean, sd)
        return Reaching(mean, sd, float(people.slip.fat_fraction), float(people.spread.fat_fraction))

    def weeks_above(self, fraction: float) -> int:
        """Weeks asked for that end with body fat above ``fraction``."""
        return sum(float(s.fat_kg / s.weight_kg) > fraction for s in self.told_path.states[1 : self.last + 1])


def _is_same(one: BodyState, other: BodyState) -> bool:
    """Whether two bodies differ by no more than is told of them."""
    return all(abs(float(getattr(one, name) - getattr(other, name))) < _TOLD_KG for name in ("fat_kg", "lean_kg"))


def bridge_weeks(cut_weeks: int) -> int:
    """Weeks at maintenance after a cut: one after a mini-cut, more after a long one."""
    if cut_weeks <= MOST_WEEKS:
        return 1
    return min(BRIDGE_WEEKS_MOST, math.ceil(cut_weeks / BRIDGE_SHARE))


class Alternatives:
    """Makes the alternatives of one question. Without ``lines`` body fat is left out of every score."""

    def __init__(self, question: Question, lines: Lines | None, refusal: Message | None) -> None:
        self.question, self.lines, self.refusal = question, lines, refusal
        self.counts_from = None if lines is None else lines.counts_from
        # A gain that follows goes on to the upper end of the band, of which nothing is said where leanness is left out.
        self.ceiling = None if lines is None else max(question.band.upper, LEAST_CEILING)

    def gain(self, weeks: int | None = None, *, ceiling: float | None = None) -> Alternative:
        """A gain; its fragment runs ``weeks`` (the horizon by default)."""
        q = self.question
        try:
            rails.check_answered(q.subject)
        except Refused as refused:
            return _shut(PhaseKind.GAIN, refused.action.message)
        aim = GainAim(weeks=HORIZON_WEEKS, surplus_kcal=self.question.surplus_kcal, fat_ceiling=ceiling)
        # What it is worth is weighed over the whole horizon; it is told as far as its ceiling.
        plan = plan_gain(q.member, q.as_of, aim, sources=ALL_SOURCES, past_ceiling=True)
        if not (plan.is_feasible and plan.has_gain):
            why = plan.reasons[-1] if plan.reasons else say("GAIN_NO_ROOM")
            return _shut(PhaseKind.GAIN, why)
        if weeks is not None and weeks < HORIZON_WEEKS:
            # So short a one may have no room where a long one has.
            shorter = plan_gain(q.member, q.as_of, msgspec.structs.replace(aim, weeks=weeks), sources=frozenset())
            if not shorter.has_gain:
                return _shut(PhaseKind.GAIN, say("GAIN_NO_ROOM"))
        weeks = min(weeks or HORIZON_WEEKS, plan.weeks_to_ceiling or HORIZON_WEEKS)
        fragment = Fragment(PhaseKind.GAIN, weeks, surplus_kcal=self.question.surplus_kcal, fat_ceiling=ceiling)
        try:
            return self._open(PhaseKind.GAIN, fragment, plan, weeks)
        except Refused as refused:
            return _shut(PhaseKind.GAIN, refused.action.message)

    def as_told(self, gain: Alternative) -> Alternative:
        """A gain as the planner makes it of what it is asked for.

        In other weeks than the horizon's its surplus is fitted anew, so that its ceiling may come a week sooner.
        """
        q, fragment = self.question, gain.fragment
        if fragment is None or fragment.weeks is None or gain.kind is not PhaseKind.GAIN:
            return gain
        aim = GainAim(weeks=fragment.weeks, surplus_kcal=fragment.surplus_kcal, fat_ceiling=fragment.fat_ceiling)
        plan = plan_gain(q.member, q.as_of, aim, sources=frozenset())
        grown = next((len(phase.weeks) for phase in plan.phases if phase.kind == PhaseKind.GAIN.value), 0)
        if not plan.is_feasible or not grown or plan.forecast is None:
            return gain
        weeks = min(grown, fragment.weeks)
        fragment, gain = fragment._replace(weeks=weeks), gain.shortened(weeks)
        if gain.last == gain.weeks and _is_same(plan.forecast.states[gain.weeks], gain.path.states[gain.weeks]):
            return gain
        plan = plan_gain(q.member, q.as_of, aim, sources=ALL_SOURCES)
        try:
            return self._open(gain.kind, fragment, plan, gain.weeks)._replace(
                told_plan=plan, plan=gain.plan, score=gain.score
            )
        except Refused as refused:
            return _shut(gain.kind, refused.action.message, refused.action.id)

    def hold(self, weeks: int = HORIZON_WEEKS, *, then_gain: bool = False) -> Alternative:
        """Maintenance for some weeks, then a gain where one is wanted, else more of the same."""
        q = self.question
        weeks = min(max(1, weeks), HORIZON_WEEKS)
        gain = HORIZON_WEEKS - weeks if then_gain and q.may_grow else 0
        plan = plan_hold(
            q.member,
            q.as_of,
            HoldAim(weeks=HORIZON_WEEKS - gain),
            ReturnAim(gain_weeks=gain, surplus_kcal=q.surplus_kcal, fat_ceiling=self.ceiling),
            sources=ALL_SOURCES,
        )
        if not plan.has_gain:
            gain = 0  # over its ceiling there is none: the hold is asked for alone
        fragment = Fragment(
            PhaseKind.MAINTENANCE, weeks, surplus_kcal=q.surplus_kcal, gain_weeks=gain, fat_ceiling=self.ceiling
        )
        return self._open(PhaseKind.MAINTENANCE, fragment, plan, weeks)

    def short_cut(self) -> Alternative:
        """A mini-cut of usual length, wherever it leads; ask where a mini-cut is open."""
        fragment = Fragment(
            PhaseKind.MINI_CUT, DEFAULT_WEEKS, surplus_kcal=self.question.surplus_kcal, fat_ceiling=self.ceiling
        )
        plan = self._plan(DeficitAim(weeks=DEFAULT_WEEKS), 1, 0)
        if not plan.is_feasible:
            return _without_plan(PhaseKind.MINI_CUT, plan)
        if plan.too_small is not None:
            return _too_small(PhaseKind.MINI_CUT, plan)
        try:
            return self._through(PhaseKind.MINI_CUT, fragment, plan, reaches=False)
        except Refused as refused:
            return _shut(PhaseKind.MINI_CUT, refused.action.message, refused.action.id)

    def cut(
        self, kind: DeficitKind, *, weeks_done: int = 0, until_event: int | None = None, target: float | None = None
    ) -> Alternative:
        """A cut to the target of the motive, or as far as its longest length goes; then maintenance and a gain."""
        named = kind.phase
        if self.refusal is not None:
            return _shut(named, self.refusal)
        if not self.question.is_fat_read:
            return _shut(named, say("CUT_NEEDS_READING"))
        assert self.lines is not None
        wanted = self.lines.target if target is None else target
        aim = DeficitAim(kind=kind, target_fat_fraction=wanted, at_most_weeks=until_event, weeks_done=weeks_done)
        longest = MOST_WEEKS if kind is DeficitKind.MINI_CUT else LONG_CUT_WEEKS
        most = min(longest - weeks_done, longest if until_event is None else until_event)
        if most < aim.least_weeks:
            return _shut(named, say("CUT_NO_ROOM"))
        # A cut under way goes on at once; another waits for the latest day that will do.
        is_for_event = until_event is not None and not weeks_done
        usual = Fragment(
            named, surplus_kcal=self.question.surplus_kcal, weeks_done=weeks_done, fat_ceiling=self.ceiling
        )
        fragment, reaches = usual._replace(target_fat_fraction=wanted, for_event=is_for_event), True
        try:
            plan = self._plan(aim, 1, 0)
            if not plan.is_feasible or plan.cut_phase is None or len(plan.cut_phase.weeks) > most:
                # Met already, or out of reach in that time: what its usual or longest length does.
                reaches = plan.nearest is not None and plan.nearest.weeks == 0
                weeks = max(aim.least_weeks, min(most, DEFAULT_WEEKS)) if reaches else most
                fragment = usual._replace(weeks=weeks)
                plan = self._plan(DeficitAim(kind=kind, weeks=weeks, weeks_done=weeks_done), 1, 0)
            if not plan.is_feasible or plan.cut_phase is None:
                return _without_plan(named, plan)
            if plan.too_small is not None and not weeks_done:
                return _too_small(named, plan)
            waits_for = until_event if fragment.for_event else None
            return self._through(named, fragment, plan, waits_for, reaches=reaches)
        except Refused as refused:
            return _shut(named, refused.action.message, refused.action.id)

    def _through(
        self, named: PhaseKind, fragment: Fragment, plan: Plan, until_event: int | None = None, *, reaches: bool
    ) -> Alternative:
        """A solved cut through the horizon: after its bridge a gain, or more maintenance where that scores better."""
        assert plan.cut_phase is not None
        weeks, done = len(plan.cut_phase.weeks), fragment.weeks_done
        # It waits for its event at maintenance, which leaves so much less of the horizon.
        waits = until_event - weeks if until_event is not None else 0
        rest = max(1, HORIZON_WEEKS - weeks - waits)
        bridge = min(rest, bridge_weeks(weeks + done))
        kind = DeficitKind(named.value)
        again = DeficitAim(kind=kind, weeks=weeks, deficit_kcal=plan.deficit_kcal, weeks_done=done, is_usual=True)
        ways = []
        for gain in sorted({0 if not reaches else rest - bridge, rest - bridge} if self.question.grows else {0}):
            full = self._plan(again, rest - gain, gain, waits)
            if not full.is_feasible:
                return _without_plan(named, full)
            # Before an event the maintenance that lets water settle is as long as its room says.
            after = 1 if fragment.for_event else bridge
            asked = fragment._replace(maintenance_weeks=after, gain_weeks=gain)
            ways.append(self._open(named, asked, full, weeks)._replace(reaches_target=reaches, waits=waits))
        return max(ways, key=lambda way: way.total_kg)

    def _plan(self, aim: DeficitAim, maintenance_weeks: int, gain_weeks: int, waits: int = 0) -> Plan:
        q = self.question
        return plan_deficit(
            q.member,
            q.as_of,
            aim,
            ReturnAim(
                maintenance_weeks=maintenance_weeks,
                gain_weeks=gain_weeks,
                surplus_kcal=q.surplus_kcal,
                fat_ceiling=self.ceiling,
            ),
            history=q.cut_history,
            pause_weeks=waits,
            sources=ALL_SOURCES if gain_weeks or maintenance_weeks > 1 else frozenset(),
        )

    def _open(self, kind: PhaseKind, fragment: Fragment, plan: Plan, weeks: int) -> Alternative:
        """A way that is open. Raises ``Refused`` where a week of its plan breaks a rule."""
        q = self.question
        assert plan.forecast is not None
        dieting = weeks if kind.is_deficit else 0
        each = [tuple(told_weeks(plan.phases, along)) for along in bodies_along(q.subject, plan.forecast).each]
        told, *also = each
        before = DeficitBefore(fragment.weeks_done) if fragment.weeks_done else q.cut_history.deficit_before
        cleared = clear(
            fragment,
            told,
            "weight_kg",
            weeks_before=before.weeks if kind.is_deficit else 0.0,
            weeks_since=before.weeks_since,
            is_history_known=q.cut_history.cuts_last_12_months is not None,
            also=also,
        )
        scored = score(plan.forecast.states, dieting, self.counts_from)
        return Alternative(kind, weeks, cleared, told, plan, scored)


def _shut(kind: PhaseKind, why: Message, rule: str | None = None) -> Alternative:
    """A way that is not open to this person."""
    return Alternative(kind, 0, closed=why, rule=rule)


def _without_plan(kind: PhaseKind, plan: Plan) -> Alternative:
    """A way for which there is no plan, and the rule that leaves none, where one does."""
    why = plan.reasons[-1]
    return _shut(kind, why, next((action.id for action in plan.actions if action.message == why), None))


def _too_small(kind: PhaseKind, plan: Plan) -> Alternative:
    """A cut that safe limits leave so small that it is not worth its weeks, and the rule that does."""
    assert plan.too_small is not None
    rule = next((action.id for action in plan.actions if action.action == "capped" and action.unit == "kcal/d"), None)
    return _shut(kind, plan.too_small, rule)._replace(is_too_small=True)


def refusal_of(subject: rails.Subject) -> tuple[list[rails.RailAction], Refused | None]:
    """Warnings where the rails let this person run a deficit, or every refusal at once, an open doubt among them."""
    doubt = None
    try:
        rails.check_doubt(subject)
    except Refused as refused:
        doubt = refused
    try:
        warnings = rails.check_person(subject)
    except Refused as refused:
        return [], refused if doubt is None else Refused(*refused.all[0], *refused.all[1:], *doubt.all)
    return ([], doubt) if doubt is not None else (warnings, None)
