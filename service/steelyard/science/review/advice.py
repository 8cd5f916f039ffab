"""What to do about a phase: go on, correct the intake, or end, shorten or extend it."""

from bisect import bisect_left
from datetime import date
from enum import StrEnum
from typing import NamedTuple

from .. import rails
from ..body import BASELINE_CARBOHYDRATE_SHARE, Diet, Forecast, Stretch, forecast
from ..numbers import Estimate
from ..phase import DAYS_PER_WEEK, LEAST_DEFICIT, MOST_WEEKS, FollowedPhase, PhaseKind, PromisedPath, Verdict
from ..rails import (
    GAIN_RATE,
    GAIN_RATE_LIMIT,
    LOSS_LIMIT,
    PROTEIN_DEFAULT_GAIN,
    UNANSWERED,
    Cleared,
    Purpose,
    RailAction,
    Refused,
    ToldWeek,
    clear,
)
from ..register import Message, say, traced
from . import texts
from .correction import STEP_KCAL, IntakeLimits, RestOfPhase, Stint, down, up
from .due import Due
from .reading import Now

_AFTERMATH_LENGTHS = (3.0, 4.0, 7.0)
# What protects the body at once is not come to in steps.
_FLOORS = (rails.FLOOR, rails.AVAILABILITY)


class NextStep(StrEnum):
    """What becomes of the phase."""

    CONTINUE = "continue"
    END = "end"
    SHORTEN = "shorten"
    EXTEND = "extend"


class Advice(NamedTuple):
    """The decision, the change of the planned intake [kcal/d], and how many days are still to come."""

    decision: NextStep
    correction_kcal: int
    days_ahead: int
    reasons: list[Message]
    actions: list[RailAction]


class Aftermath(NamedTuple):
    """The first two weeks at maintenance: its intake (logging scale), the path, and the mass that returns."""

    intake_kcal: int
    path: Forecast
    rebound: Estimate


class Ahead(NamedTuple):
    """What a review tells to eat: the advice, the days to come with a point at the end of each of ``stints``, and the
    first weeks after the phase, where it ends."""

    advice: Advice
    path: Forecast | None
    stints: list[Stint]
    aftermath: Aftermath | None


@traced
def cleared(course: RestOfPhase, now: Now, advice: Advice) -> Cleared[Ahead]:
    """What the advice tells, through the gate. A phase that does not pass it ends, and what comes after does pass.

    Raises: ``Refused`` where not even that does.
    """
    try:
        return _clear(course, now, advice)
    except Refused as refusal:
        if advice.decision is NextStep.END:
            raise
        reasons = [*advice.reasons, say(texts.STOPPED, rule=refusal.action.id), *refusal.messages]
        ended = Advice(NextStep.END, 0, 0, reasons, [*advice.actions, *refusal.actions])
        return _clear(course, now, ended)


def _clear(course: RestOfPhase, now: Now, advice: Advice) -> Cleared[Ahead]:
    change, days = float(advice.correction_kcal), advice.days_ahead
    path, stints = (None, []) if days == 0 else course.forecast(change, days)
    after = aftermath(course, now) if advice.decision is NextStep.END else None
    weeks = [*course.told(change, days)]
    if after is not None:
        bodies = [course.held, *(course.subject_at(state) for state in after.path.states[1:])]
        ends = zip(bodies, bodies[1:], _AFTERMATH_LENGTHS, strict=False)
        weeks += [ToldWeek(after.intake_kcal, there, then, Purpose.HOLD, length) for there, then, length in ends]
    ahead = Ahead(advice, path, stints, after)
    return clear(ahead, weeks, "phase", weeks_before=course.weeks_gone)


@traced
def aftermath(course: RestOfPhase, now: Now) -> Aftermath:
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
    spread = path.spread_of_change(0, end)
    carried = float(path.states[end].carried_kg - path.states[0].carried_kg)
    return Aftermath(intake, path, Estimate(carried, float(spread.carried_kg)))


def _held_path(course: RestOfPhase, intake_kcal: float) -> Forecast:
    """The first two weeks at one intake (logging scale)."""
    eaten = intake_kcal / course.ratio
    diet = Diet(eaten, BASELINE_CARBOHYDRATE_SHARE * eaten, PROTEIN_DEFAULT_GAIN)
    return forecast(course.now.body, [Stretch(diet, (days,)) for days in _AFTERMATH_LENGTHS], start=course.start)


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

    Raises ``guard_rails.Refused`` where a deficit or a gain is running and screening was not answered.
    """
    if is_finished or course.days_left == 0:
        return Advice(NextStep.END, 0, 0, [say(texts.OVER)], [])
    if phase.kind.is_deficit:
        return _Deficit(phase, course, now, promised, verdict, due).advise()
    return _HoldOrGain(phase, course, now, promised, verdict, due).advise()


class _Held(NamedTuple):
    """A change of intake as the rails leave it [kcal/d]; ``is_raised``: whether one of them asked for more."""

    change_kcal: int
    is_raised: bool


def _held(limits: IntakeLimits, wanted: float, own_step_kcal: float) -> _Held:
    """A change rounded to 10 kcal, inside the limits, and with the step that the plan takes by itself today
    (``own_step_kcal``) one step at most; the least of them wins.

    The limit on what is most never lowers an intake: it only holds what is added.
    """
    lowest = up(min(0.0, -texts.MOST_STEP_KCAL - min(0.0, own_step_kcal)))
    highest = down(max(0.0, texts.MOST_STEP_KCAL - max(0.0, own_step_kcal)))
    change = min(max(down(wanted), lowest), highest)
    if change > 0:
        change = min(change, max(0, down(min(limits.most, change))))
    least = up(limits.least)
    if change < least <= 0.0 or change >= least:
        return _Held(max(change, least), least > change)
    # A rise leaves room, so that the next review does not add to it.
    roomy = max(least, min(least + int(texts.NOTABLE_KCAL), texts.MOST_STEP_KCAL))
    return _Held(roomy if roomy <= limits.most - texts.NOTABLE_KCAL else least, True)


def _with_room(held: _Held, limits: IntakeLimits) -> _Held:
    """A step down that leaves room over what the rails allow, as a rise does: up to their edge, the next review would
    take it back, and the one after give it again. Where that leaves nothing to speak of there is none."""
    least = up(limits.least + texts.NOTABLE_KCAL)
    if held.change_kcal >= min(0, least):
        return held
    return _Held(least if least <= -texts.NOTABLE_KCAL else 0, is_raised=True)


def _is_one_step(limits: IntakeLimits) -> bool:
    """Whether one step brings a deficit inside the rails, or what protects the body at once asks for more."""
    return up(limits.least) <= texts.MOST_STEP_KCAL or limits.why.rule in _FLOORS


def _rail_actions(limits: IntakeLimits, course: RestOfPhase, held: _Held, wanted: float, days: int) -> list[RailAction]:
    """What the rails did to the days to come."""
    actions = list(limits.warnings)
    change_kcal = held.change_kcal
    intake = min(course.intakes(float(change_kcal), days))
    if held.is_raised:
        asked = course.maintenance_kcal - (intake - change_kcal + wanted)
        actions.append(rails.capped(limits.why, asked))
    end = course.end(float(change_kcal), days)
    weeks = days / DAYS_PER_WEEK
    loss = float(course.state.tissue_kg - end.tissue_kg) / weeks / course.subject.weight_kg
    then = course.subject_at(end)
    actions += rails.warn_deficit(course.in_deficit, intake, loss, then.fat_fraction, then.bmi)
    return [*actions, *course.protein_actions]


class _Deficit:
    """A mini-cut or a cut in its course."""

    def __init__(
        self,
        phase: FollowedPhase,
        course: RestOfPhase,
        now: Now,
        promised: PromisedPath,
        verdict: Verdict,
        due: Due,
    ) -> None:
        self.phase, self.course, self.now, self.verdict, self.due = phase, course, now, verdict, due
        self.target = phase.fat_loss_kg
        self.promised = promised
        self.is_judged = verdict is not Verdict.TOO_EARLY
        self.is_losing_fast = False
        self.left = course.days_left
        self.reasons: list[Message] = []
        self.actions: list[RailAction] = []

    def advise(self) -> Advice:
        course = self.course
        limits = course.limits(self.left)
        if limits.refusal is not None:
            if limits.refusal.action.id == UNANSWERED:
                raise limits.refusal
            action = limits.refusal.action
            more = [other.message for other in limits.refusal.actions]
            ended = self._end(say(texts.NOT_SAFE, rule=action.id), limits.refusal.actions)
            return ended._replace(reasons=[*ended.reasons, *more])
        limits = self._with_logged_loss(self._shortened(limits))
        lost = -course.now.fat.mean
        if self.is_judged and self.target is not None and lost >= self.target and self.due.is_met:
            return self._end(say(texts.PURPOSE_MET, fat_kg=lost, target_kg=self.target))
        most_days = MOST_WEEKS * DAYS_PER_WEEK
        if self.phase.kind is PhaseKind.MINI_CUT and course.days_gone >= most_days:
            return self._end(say(texts.LIMIT_REACHED, days=course.days_gone, limit_days=most_days))
        room = limits.most - limits.least
        if room < (LEAST_DEFICIT if self.is_judged else 1.0):
            ended = self._end(say(texts.NO_ROOM, rule=limits.why.rule, why=limits.why.why))
            return ended._replace(reasons=[*ended.reasons, *rails.ratio_decides(course.subject, limits.why.rule)])
        if not _is_one_step(limits):
            return self._end(say(texts.PAST_RAIL, rule=limits.why.rule, why=limits.why.why))
        return self._go_on(limits)

    def _shortened(self, limits: IntakeLimits) -> IntakeLimits:
        """The limits of as many whole weeks less as bring the rest inside every rail with one step.

        As they are where all of it is inside, or less than a week would be.
        """
        most = (self.left - texts.LEAST_DAYS_LEFT) // DAYS_PER_WEEK
        if _is_one_step(limits):
            return limits

        def after(weeks_less: int) -> IntakeLimits:
            return self.course.limits(self.left - DAYS_PER_WEEK * weeks_less)

        weeks = bisect_left(range(max(1, most + 1)), True, lo=1, key=lambda less: _is_one_step(after(less)))
        if weeks > most:
            return limits
        inside = after(weeks)
        self.left -= DAYS_PER_WEEK * weeks
        why = limits.why
        self.reasons.append(say(texts.SHORTENED, date=self._date(self.left), rule=why.rule, why=why.why))
        return inside

    def _lowest(self) -> float:
        """The least intake of the days to come, as planned."""
        return min(self.course.intakes(0.0, self.left))

    def _end(self, reason: Message, actions: list[RailAction] | None = None) -> Advice:
        return Advice(NextStep.END, 0, 0, [reason], [*self.actions, *(actions or [])])

    def _with_logged_loss(self, limits: IntakeLimits) -> IntakeLimits:
        """The rail on what was really lost: too fast over two settled weeks raises the intake."""
        now, weight = self.now, self.course.subject.weight_kg
        if now.fortnight_tissue is None or now.days < 14 + texts.SETTLING_DAYS:
            return limits
        weekly = -now.fortnight_tissue.mean / 2.0
        share = weekly / weight
        if share <= rails.LOGGED_LOSS_WARN:
            return limits
        limit = rails.LOGGED_LOSS_WARN
        if share > rails.LOGGED_LOSS_LIMIT:
            limit = rails.LOGGED_LOSS_LIMIT
        message = say(texts.LOST_FAST, percent=100.0 * share, limit=100.0 * limit)
        action = "capped" if share > rails.LOGGED_LOSS_LIMIT else "warned"
        self.actions.append(RailAction(texts.LOGGED_LOSS, action, limit, share, "of body mass a week", message))
        self.is_losing_fast = share > rails.LOGGED_LOSS_LIMIT
        if share <= rails.LOGGED_LOSS_LIMIT or now.fortnight_intake_kcal is None:
            return limits
        # Against what was eaten: what was lost beyond the planned limit, spread over a week.
        excess = (weekly - LOSS_LIMIT * weight) * now.rho_kcal_per_kg / DAYS_PER_WEEK
        least = min(now.fortnight_intake_kcal + excess - self._lowest(), limits.most, float(texts.MOST_STEP_KCAL))
        if least <= limits.least:
            return limits
        why = rails.DeficitLimit(texts.LOGGED_LOSS, limits.most - least, rails.Why.LOGGED_LOSS)
        return limits._replace(least=least, why=why)

    def _go_on(self, limits: IntakeLimits) -> Advice:
        course, left, due = self.course, self.left, self.due
        decision = NextStep.CONTINUE if left == course.days_left else NextStep.SHORTEN
        is_late = left < texts.LEAST_DAYS_LEFT and due.change_kcal != 0
        if is_late:
            self.reasons.append(say(texts.TOO_LATE, days=left))
        wanted = 0.0 if is_late or self.is_losing_fast else float(due.change_kcal)
        held = _with_room(_held(limits, wanted, course.own_step_kcal), limits)
        change = held.change_kcal
        self._explain(limits, held, wanted)
        days = left
        if due.end_day is not None:
            moved = max(1, due.end_day - self.now.day)
            if moved < left:
                decision, days = NextStep.SHORTEN, moved
                self.reasons.append(say(texts.SHORTEN, date=self._date(moved), days=left - moved))
            elif moved > left == course.days_left and up(course.limits(moved).least) <= change:
                # More days may bring a stricter rail: a phase over six weeks is a long one.
                decision, days = NextStep.EXTEND, moved
                self.reasons.append(say(texts.EXTEND, date=self._date(moved), days=moved - left))
        if due.waits:
            self.reasons.append(say(texts.WAITS, date=self._date(DAYS_PER_WEEK - course.days_gone % DAYS_PER_WEEK)))
        elif self.target is not None and self._falls_short(float(change), days):
            fat = -course.fat_change(float(change), days)
            self.reasons.append(say(texts.OUT_OF_REACH, fat_kg=fat, target_kg=self.target))
        self._say_if_ahead()
        self._warn_of_eaten(limits)
        actions = _rail_actions(limits, course, held, wanted, days)  # of all that is told, days added included
        return Advice(decision, change, days, self.reasons, [*self.actions, *actions])

    def _say_if_ahead(self) -> None:
        """Whoever is ahead in a phase of which only the length was asked for may stop early."""
        if self.target is not None or self.verdict is not Verdict.FASTER:
            return
        hoped = -self.promised.change(0, self.phase.days).fat.mean
        reach = self.course.days_to_lose(hoped, 0.0, self.left)
        if reach is not None and self.left - reach >= DAYS_PER_WEEK:
            self.reasons.append(say(texts.MAY_STOP_EARLY, days=DAYS_PER_WEEK))

    def _explain(self, limits: IntakeLimits, held: _Held, wanted: float) -> None:
        why, change = limits.why, held.change_kcal
        if not held.is_raised:
            if change:
                self.reasons.append(texts.step(texts.STEPPED, change))
        elif change > 0:
            self.reasons.append(say(texts.RAISED, correction_kcal=change, rule=why.rule, why=why.why))
        else:
            missing = change - wanted
            self.reasons.append(say(texts.CORRECTION_HELD, missing_kcal=missing, rule=why.rule, why=why.why))

    def _falls_short(self, change: float, days: int) -> bool:
        """Whether fat is missing at the end by enough to matter: when slower, or near the end."""
        assert self.target is not None
        short = self.target + self.course.fat_change(change, days)
        is_told = self.verdict is Verdict.SLOWER or days <= DAYS_PER_WEEK
        return is_told and short > texts.SHORTFALL_SHARE * self.target

    def _date(self, days: int) -> str:
        return date.fromordinal(self.now.day + days).isoformat()

    def _warn_of_eaten(self, limits: IntakeLimits) -> None:
        """What is logged is held to the rails as well."""
        eaten = self.now.fortnight_intake_kcal
        least = self.course.intakes(0.0, self.left)[0] + limits.least
        if eaten is not None and eaten < least - texts.NOTABLE_KCAL:
            why = limits.why
            message = say(texts.EATEN_UNDER_RAIL, intake_kcal=eaten, least_kcal=least, rule=why.rule, why=why.why)
            self.reasons.append(message)
            self.actions.append(RailAction(why.rule, "warned", least, eaten, "kcal/d", message))


class _HoldOrGain:
    """A gain or a hold in its course: the rate to come is restored in steps, and never what was missed."""

    def __init__(
        self, phase: FollowedPhase, course: RestOfPhase, now: Now, promised: PromisedPath, verdict: Verdict, due: Due
    ) -> None:
        self.phase, self.course, self.now, self.promised, self.verdict = phase, course, now, promised, verdict
        self.due = due
        self.reasons: list[Message] = []

    def advise(self) -> Advice:
        course, subject = self.course, self.course.subject
        if self.phase.kind is PhaseKind.GAIN:
            rails.check_answered(subject)
        met = self._ceiling_met()
        if met is not None:
            return Advice(NextStep.END, 0, 0, [met], [])
        left = course.days_left
        limits = course.limits(left)
        is_protected = rails.may_not_diet(subject)
        is_told_lower = self.verdict is Verdict.FASTER or self.due.change_kcal < 0
        may_lower = is_told_lower and not is_protected and not self._is_just_changed()
        ways = (self._as_eaten_so_far, self._as_planned, self._as_planned_with_room, self._as_planned_until_judged)
        for supposing in ways:
            # Nothing is lowered while the scale does not contradict the plan: what else explains the two together?
            if limits.most < 0.0 and not may_lower and supposing():
                limits = course.limits(left)
        wanted = self._wanted()
        if wanted > 0.0:
            # A step up leaves room, or it is none.
            wanted = float(down(min(wanted, limits.most - texts.ROOM_KCAL)))
            wanted = wanted if wanted >= texts.NOTABLE_KCAL else 0.0
        held = _held(limits, wanted, course.own_step_kcal)
        change = held.change_kcal
        if self.phase.kind is PhaseKind.GAIN and change > limits.most:
            lowered = self._lowered(limits, up(course.maintenance_kcal - min(course.intakes(0.0, left))))
            # A little over the ceiling, the rest is slowed whatever the scale says: that ends no gain.
            is_slight = change - limits.most <= texts.ROOM_KCAL
            if may_lower and not -texts.MOST_STEP_KCAL <= lowered <= limits.most:
                # More than one step: the first now, and the rest if the next readings say so too.
                to_maintenance = up(course.maintenance_kcal - min(course.intakes(0.0, left)))
                self._as_planned()
                limits = course.limits(left)
                lowered = max(up(limits.least), to_maintenance, -texts.MOST_STEP_KCAL)
            is_in_step = -texts.MOST_STEP_KCAL <= lowered <= min(change, 0, limits.most)
            if is_protected or not is_in_step or not (is_slight or self.verdict is Verdict.FASTER):
                # No more is lowered before the scale says so: a plan that is too fast by itself ends.
                limit = 100.0 * GAIN_RATE_LIMIT[subject.training_status]
                return Advice(NextStep.END, 0, 0, [say(texts.TOO_FAST_A_GAIN, limit_percent=limit)], [])
            held, change = held._replace(change_kcal=lowered, is_raised=False), lowered
        actions = list(course.protein_actions)
        if held.is_raised:
            why, missing = limits.why, change - wanted
            if change > 0:
                self.reasons.append(say(texts.RAISED, correction_kcal=change, rule=why.rule, why=why.why))
            else:
                self.reasons.append(say(texts.CORRECTION_HELD, missing_kcal=missing, rule=why.rule, why=why.why))
            actions += rails.raised_to_floor(subject, min(course.intakes(0.0, left)))
        elif change < min(wanted, 0.0):
            actions.append(self._held_under_ceiling(change))
        elif change:
            if change < 0 and self.verdict is Verdict.WITHIN_INTERVAL:
                self.reasons.append(say(texts.MADE_UP))
            self.reasons.append(texts.step(texts.STEPPED, change))
        return Advice(NextStep.CONTINUE, change, left, self.reasons, actions)

    @staticmethod
    def _lowered(limits: IntakeLimits, to_maintenance: int) -> int:
        """The change that brings a gain under its fastest, with room where that is not more than one step.

        Where the fastest is slow, room under it ends at maintenance: a gain is not lowered into a deficit.
        """
        lowered = max(down(limits.most - texts.ROOM_KCAL), up(limits.least), to_maintenance, -texts.MOST_STEP_KCAL)
        return lowered if lowered <= limits.most else max(down(limits.most), up(limits.least))

    def _ceiling_met(self) -> Message | None:
        """Why a gain ends at its ceiling of body fat; it is not spoken of to those who may hear of no such target."""
        subject, ceiling = self.course.subject, self.phase.fat_ceiling
        if self.phase.kind is not PhaseKind.GAIN or ceiling is None or self.verdict is Verdict.TOO_EARLY:
            return None
        if subject.fat_fraction < ceiling or rails.forbids_fat_target(subject) is not None:
            return None
        percent = round(100.0 * ceiling, 1)
        return say(texts.CEILING_MET, fat_percent=100.0 * subject.fat_fraction, ceiling_percent=percent)

    def _as_eaten_so_far(self) -> bool:
        """Forecast the days to come as they were eaten so far, where the log holds less than is told."""
        eaten = self.now.eaten
        if eaten.logged_kcal is None or eaten.logged_kcal >= eaten.planned_kcal:
            return False
        self.course.share_followed = eaten.logged_kcal / eaten.planned_kcal
        self.reasons.append(say(texts.AS_EATEN_SO_FAR, percent=100.0 * self.course.share_followed))
        return True

    def _as_planned(self) -> bool:
        """Forecast the days to come by the maintenance that the plan started from, with what the body gained since and
        what reviews added to it."""
        self._suppose(0.0)
        return True

    def _as_planned_with_room(self) -> bool:
        """The same, where the rest of a plan is faster than all of it by less than anybody can tell."""
        self._suppose(texts.ROOM_KCAL)
        return True

    def _as_planned_until_judged(self) -> bool:
        """The same before any verdict: what is over the ceiling by less than the plan's own error waits for it."""
        over = -self.course.limits(self.course.days_left).most
        if self.verdict is not Verdict.TOO_EARLY or over > self.phase.maintenance.sd:
            return False
        self._suppose(texts.ROOM_KCAL + over + STEP_KCAL)
        return True

    def _suppose(self, room_kcal: float) -> None:
        plan, changed = self.phase.maintenance, sum(change.change_kcal for change in self.phase.changes)
        slope = self.course.ratio * float(self.now.reading.tissue.expenditure_slope_kcal_per_kg_day)
        grown = slope * max(0.0, self.now.window.tissue.mean)
        supposed = Estimate(plan.mean + changed + grown + room_kcal, plan.sd)
        self.course.suppose(supposed)
        said = (texts.AS_EATEN_SO_FAR, texts.AS_PLANNED)
        self.reasons = [reason for reason in self.reasons if reason.code not in said]
        self.reasons.append(say(texts.AS_PLANNED, maintenance_kcal=supposed.mean))

    def _is_just_changed(self) -> bool:
        """Whether the intake was changed so short a time ago that nobody can tell yet what it does."""
        last = max((change.day for change in self.phase.changes), default=None)
        return last is not None and self.now.day - last < texts.LEAST_DAYS

    def _wanted(self) -> float:
        """The change that restores the rate to come [kcal/d]; a loss that nobody planned asks for a step up."""
        course, left = self.course, self.course.days_left
        lowest = min(course.intakes(0.0, left))
        to_maintenance = course.maintenance_kcal - lowest
        wanted = float(self.due.change_kcal)
        if wanted and left < texts.LEAST_DAYS_LEFT:
            self.reasons.append(say(texts.TOO_LATE, days=left))
            wanted = 0.0
        if wanted < 0.0:
            # Never under maintenance, and never lowered for those whose intake may not be.
            wanted = min(0.0, max(wanted, float(up(to_maintenance))))
            wanted = 0.0 if rails.may_not_diet(course.subject) or wanted > -texts.NOTABLE_KCAL else wanted
        if self.due.waits:
            date_of_next = self.now.day + DAYS_PER_WEEK - course.days_gone % DAYS_PER_WEEK
            self.reasons.append(say(texts.WAITS, date=date.fromordinal(date_of_next).isoformat()))
        if self._is_losing() or self._comes_too_low():
            wanted = max(wanted, min(float(down(to_maintenance)), float(texts.MOST_STEP_KCAL)))
        return wanted

    def _is_losing(self) -> bool:
        """Whether weight goes that nobody planned to lose; it is said, with whom to see."""
        weight, days = self.course.subject.weight_kg, self.now.window_days
        recent = self.now.fortnight_tissue
        of_late = 0.0 if recent is None or self.now.days < 14 else -recent.mean / weight
        so_far = -self.now.window.tissue.mean / weight
        if so_far > texts.UNEXPLAINED_SHARE:
            self.reasons.append(say(texts.UNEXPLAINED_LOSS, percent=100.0 * so_far, days=days))
            return True
        if of_late > 2.0 * rails.LOGGED_LOSS_WARN:
            self.reasons.append(say(texts.UNEXPLAINED_LOSS, percent=100.0 * of_late, days=14))
            return True
        return False

    def _comes_too_low(self) -> bool:
        """Whether what is eaten under maintenance leads to a body that no deficit may lead to."""
        course, left = self.course, self.course.days_left
        then = course.subject_at(course.end(0.0, left))
        if then.fat_kg >= course.subject.fat_kg:
            return False
        return then.bmi < rails.BMI_FLOOR or then.fat_fraction < rails.stricter(rails.FAT_FRACTION_FLOOR, then.sex)

    def _held_under_ceiling(self, change: int) -> RailAction:
        course = self.course
        limit = GAIN_RATE_LIMIT[course.subject.training_status]
        surplus = max(course.intakes(float(change), course.days_left)) - course.maintenance_kcal
        held = say("CAPPED_GAIN_RATE", surplus_kcal=surplus, percent=100.0 * limit)
        self.reasons.append(held)
        return RailAction(GAIN_RATE, "capped", limit, None, "of body mass a week", held)
