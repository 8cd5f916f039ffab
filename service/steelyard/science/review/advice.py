"""What to do about a phase: go on, correct the intake, or end, shorten or extend it."""

from datetime import date
from enum import StrEnum
from typing import NamedTuple

from .. import rails
from ..body import BASELINE_CARBOHYDRATE_SHARE, Diet, Forecast, Stretch, current_maintenance_kcal, forecast
from ..numbers import Estimate
from ..phase import DAYS_PER_WEEK, LEAST_DEFICIT, MOST_WEEKS, FollowedPhase, PhaseKind, PromisedPath, Verdict
from ..rails import GAIN_RATE, GAIN_RATE_LIMIT, LOSS_LIMIT, PROTEIN_DEFAULT_GAIN, UNANSWERED, RailAction
from ..register import Message, say, traced
from . import texts
from .correction import STEP_KCAL, IntakeLimits, RestOfPhase, down, up
from .reading import Now

_AFTERMATH_LENGTHS = (3.0, 4.0, 7.0)
# What 10 kcal/d of rounding is worth over six weeks, at about 8,000 kcal a kilogram.
_ROUNDING_KG = 0.05
_OFF_PLAN = (Verdict.FASTER, Verdict.SLOWER)
# Nobody is told to eat less than this, whatever a target would take.
_LEAST_SEARCHED_KCAL = 500.0


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


@traced
def aftermath(course: RestOfPhase, now: Now) -> Aftermath:
    """What the first weeks after the phase look like, at the maintenance of the body there is."""
    physical = float(current_maintenance_kcal(course.model, course.state))
    intake = STEP_KCAL * round(course.ratio * physical / STEP_KCAL)
    eaten = intake / course.ratio
    diet = Diet(eaten, BASELINE_CARBOHYDRATE_SHARE * eaten, PROTEIN_DEFAULT_GAIN)
    path = forecast(course.now.body, [Stretch(diet, (days,)) for days in _AFTERMATH_LENGTHS])
    end = len(path.states) - 1
    spread = path.spread_of_change(0, end)
    carried = float(path.states[end].carried_kg - path.states[0].carried_kg)
    return Aftermath(intake, path, Estimate(carried, float(spread.carried_kg)))


@traced
def advise(
    phase: FollowedPhase, course: RestOfPhase, now: Now, promised: PromisedPath, verdict: Verdict, is_finished: bool
) -> Advice:
    """Decide. Raises ``guard_rails.Refused`` where a deficit or a gain is running and screening was not answered."""
    if is_finished or course.days_left == 0:
        return Advice(NextStep.END, 0, 0, [say(texts.OVER)], [])
    if phase.kind.is_deficit:
        return _Deficit(phase, course, now, promised, verdict).advise()
    return _hold_or_gain(phase, course, now, promised, verdict)


def _held(limits: IntakeLimits, wanted: float) -> int:
    """A change of intake rounded to a step, inside the limits; the least wins where they leave nothing."""
    return max(min(down(wanted), down(limits.most)), up(limits.least))


def _rail_actions(
    limits: IntakeLimits, course: RestOfPhase, change_kcal: int, wanted: float, days: int
) -> list[RailAction]:
    """What the rails did to the days to come."""
    actions = list(limits.warnings)
    intake = min(course.intakes(float(change_kcal), days))
    if change_kcal > wanted:
        asked = course.maintenance_kcal - (intake - change_kcal + wanted)
        actions.append(rails.capped(limits.why, asked))
    end = course.end(float(change_kcal), days)
    weeks = days / DAYS_PER_WEEK
    loss = float(course.state.tissue_kg - end.tissue_kg) / weeks / course.physical.weight_kg
    if course.maintenance_kcal - intake > LEAST_DEFICIT / 2.0:
        actions += rails.warn_deficit(course.logged, intake, loss, float(end.fat_kg / end.weight_kg))
    return actions


class _Deficit:
    """A mini-cut or a cut in its course."""

    def __init__(
        self, phase: FollowedPhase, course: RestOfPhase, now: Now, promised: PromisedPath, verdict: Verdict
    ) -> None:
        self.phase, self.course, self.now, self.verdict = phase, course, now, verdict
        expected = -promised.change(0, phase.days).fat.mean
        self.target = expected if phase.fat_loss_kg is None else phase.fat_loss_kg
        self.is_judged = verdict is not Verdict.TOO_EARLY
        self.reasons: list[Message] = []
        self.actions: list[RailAction] = []

    def advise(self) -> Advice:
        course = self.course
        limits = course.limits(course.days_left)
        if limits.refusal is not None:
            if limits.refusal.action.id == UNANSWERED:
                raise limits.refusal
            action = limits.refusal.action
            return self._end(say(texts.NOT_SAFE, rule=action.id, why=action.message.text), [action])
        limits = self._with_logged_loss(limits)
        lost = -course.now.fat.mean
        if self.is_judged and self.target > 0.0 and lost >= self.target:
            return self._end(say(texts.PURPOSE_MET, fat_kg=lost, target_kg=self.target))
        most_days = MOST_WEEKS * DAYS_PER_WEEK
        if self.phase.kind is PhaseKind.MINI_CUT and course.days_gone >= most_days:
            return self._end(say(texts.LIMIT_REACHED, days=course.days_gone, limit_days=most_days))
        room = limits.most - limits.least
        if room < (LEAST_DEFICIT if self.is_judged else 1.0):
            return self._end(say(texts.NO_ROOM, rule=limits.why.rule, why=limits.why.why))
        return self._go_on(limits)

    def _lowest(self) -> float:
        """The least intake of the days to come, as planned."""
        return min(self.course.intakes(0.0, self.course.days_left))

    def _end(self, reason: Message, actions: list[RailAction] | None = None) -> Advice:
        return Advice(NextStep.END, 0, 0, [reason], [*self.actions, *(actions or [])])

    def _with_logged_loss(self, limits: IntakeLimits) -> IntakeLimits:
        """The rail on what was really lost: too fast over two settled weeks raises the intake."""
        now, weight = self.now, self.course.physical.weight_kg
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
        if share <= rails.LOGGED_LOSS_LIMIT or now.fortnight_intake_kcal is None:
            return limits
        # Against what was eaten: what was lost beyond the planned limit, spread over a week.
        excess = (weekly - LOSS_LIMIT * weight) * now.rho_kcal_per_kg / DAYS_PER_WEEK
        least = min(now.fortnight_intake_kcal + excess - self._lowest(), limits.most)
        if least <= limits.least:
            return limits
        why = rails.DeficitLimit(texts.LOGGED_LOSS, limits.most - least, "loss as logged")
        return limits._replace(least=least, why=why)

    def _go_on(self, limits: IntakeLimits) -> Advice:
        course, left = self.course, self.course.days_left
        wanted, days, decision = 0.0, left, NextStep.CONTINUE
        if left < texts.LEAST_DAYS_LEFT and self.verdict in _OFF_PLAN:
            self.reasons.append(say(texts.TOO_LATE, days=left))
        elif self.verdict is Verdict.SLOWER or (self.verdict is Verdict.FASTER and self.phase.fat_loss_kg is None):
            low = min(limits.least, _LEAST_SEARCHED_KCAL - self._lowest())
            wanted = float(down(course.restore_fat(self.target, left, low, max(limits.most, limits.least))))
            wanted = min(wanted, 0.0) if self.verdict is Verdict.SLOWER else max(wanted, 0.0)
        change = _held(limits, wanted)
        actions = _rail_actions(limits, course, change, wanted, left)
        self._explain(limits, change, wanted)
        reach = None
        if self.phase.fat_loss_kg is not None and self.is_judged:
            most = self._most_days()
            reach = course.days_to_lose(self.target, float(change), most)
            if reach is not None and reach <= left - texts.LEAST_DAYS_LEFT and self.verdict is Verdict.FASTER:
                decision, days = NextStep.SHORTEN, reach
                self.reasons.append(say(texts.SHORTEN, date=self._date(reach), days=left - reach))
            elif self._falls_short(float(change)):
                if reach is not None and reach > left:
                    decision, days = NextStep.EXTEND, reach
                    self.reasons.append(say(texts.EXTEND, date=self._date(reach), days=reach - left))
                elif reach is None:
                    fat = -course.fat_change(float(change), left)
                    self.reasons.append(say(texts.OUT_OF_REACH, fat_kg=fat, target_kg=self.target))
        if days > left:
            # More days may bring a stricter rail: a phase over six weeks is a long one.
            longer = course.limits(days)
            held = max(change, up(longer.least))
            if held != change:
                decision, days = NextStep.CONTINUE, left
                self.reasons = [r for r in self.reasons if r.code != texts.EXTEND]
                fat = -course.fat_change(float(change), left)
                self.reasons.append(say(texts.OUT_OF_REACH, fat_kg=fat, target_kg=self.target))
        self._warn_of_eaten(limits)
        return Advice(decision, change, days, self.reasons, [*self.actions, *actions])

    def _explain(self, limits: IntakeLimits, change: int, wanted: float) -> None:
        why = limits.why
        if change == wanted:
            if change:
                self.reasons.append(say(texts.CORRECTED, correction_kcal=change))
        elif change > 0:
            self.reasons.append(say(texts.RAISED, correction_kcal=change, rule=why.rule, why=why.why))
        else:
            missing = change - wanted
            self.reasons.append(say(texts.CORRECTION_HELD, missing_kcal=missing, rule=why.rule, why=why.why))

    def _most_days(self) -> int:
        if self.phase.kind is PhaseKind.MINI_CUT:
            return MOST_WEEKS * DAYS_PER_WEEK - self.course.days_gone
        return self.course.days_left + texts.MOST_EXTENSION_DAYS

    def _falls_short(self, change: float) -> bool:
        """Whether the target is missed by enough to matter: when slower, or near the end."""
        short = self.target + self.course.fat_change(change, self.course.days_left)
        if self.verdict is Verdict.SLOWER:
            return short > _ROUNDING_KG
        is_near = self.course.days_left <= DAYS_PER_WEEK
        return self.verdict is Verdict.WITHIN_INTERVAL and is_near and short > texts.SHORTFALL_SHARE * self.target

    def _date(self, days: int) -> str:
        return date.fromordinal(self.now.day + days).isoformat()

    def _warn_of_eaten(self, limits: IntakeLimits) -> None:
        """What is logged is held to the rails as well."""
        eaten = self.now.fortnight_intake_kcal
        least = self._lowest() + limits.least
        if eaten is not None and eaten < least - texts.NOTABLE_KCAL:
            why = limits.why
            message = say(texts.EATEN_UNDER_RAIL, intake_kcal=eaten, least_kcal=least, rule=why.rule, why=why.why)
            self.reasons.append(message)
            self.actions.append(RailAction(why.rule, "warned", least, eaten, "kcal/d", message))


def _hold_or_gain(
    phase: FollowedPhase, course: RestOfPhase, now: Now, promised: PromisedPath, verdict: Verdict
) -> Advice:
    """A gain or a hold: the rate to come is restored, and never what was missed."""
    left = course.days_left
    fraction = course.physical.fat_fraction
    is_judged = verdict is not Verdict.TOO_EARLY
    ceiling = phase.fat_ceiling if phase.kind is PhaseKind.GAIN else None
    if ceiling is not None and is_judged and fraction >= ceiling:
        percent = round(100.0 * ceiling, 1)
        met = say(texts.CEILING_MET, fat_percent=100.0 * fraction, ceiling_percent=percent)
        return Advice(NextStep.END, 0, 0, [met], [])
    limits = course.limits(left)
    if phase.kind is PhaseKind.GAIN:
        rails.check_answered(course.physical)
    reasons: list[Message] = []
    wanted = 0.0
    if verdict in _OFF_PLAN:
        if left < texts.LEAST_DAYS_LEFT:
            reasons.append(say(texts.TOO_LATE, days=left))
        else:
            ahead = promised.change(course.days_gone, phase.days).tissue.mean
            span = 0.5 * course.maintenance_kcal
            wanted = float(down(course.restore_tissue(ahead, left, -span, span)))
            wanted = min(wanted, 0.0) if verdict is Verdict.FASTER else max(wanted, 0.0)
    change = _held(limits, wanted)
    actions = _rail_actions(limits, course, change, wanted, left)
    if change > wanted:
        why = limits.why
        reasons.append(say(texts.RAISED, correction_kcal=change, rule=why.rule, why=why.why))
    elif change < wanted:
        limit = GAIN_RATE_LIMIT[course.physical.training_status]
        surplus = max(course.intakes(float(change), left)) - course.maintenance_kcal
        held = say("CAPPED_GAIN_RATE", surplus_kcal=surplus, percent=100.0 * limit)
        reasons.append(held)
        actions.append(RailAction(GAIN_RATE, "capped", limit, None, "of body mass a week", held))
    elif change:
        reasons.append(say(texts.CORRECTED, correction_kcal=change))
    return Advice(NextStep.CONTINUE, change, left, reasons, actions)
