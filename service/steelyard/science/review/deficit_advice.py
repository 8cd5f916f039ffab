"""What to do about a mini-cut or a cut: the end moves before the intake does, and never past maintenance."""

from bisect import bisect_left
from datetime import date

from .. import rails
from ..phase import DAYS_PER_WEEK, LEAST_DEFICIT, MOST_WEEKS, FollowedPhase, PhaseKind, PromisedPath, Verdict
from ..rails import LOSS_LIMIT, UNANSWERED, RailAction
from ..register import Message, say, yes_or_no
from . import texts
from .correction import IntakeLimits, RestOfPhase, up
from .due import Due
from .next_step import Advice, NextStep
from .reading import Now
from .step import Held, has_stepped_down, held_step, is_one_step, rail_actions, with_room

_FORTNIGHT = 14


class DeficitAdvice:
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
        worked = self.phase.worked_days(course.days_gone)
        if self.phase.kind is PhaseKind.MINI_CUT and worked >= most_days:
            return self._end(say(texts.LIMIT_REACHED, days=worked, limit_days=most_days))
        room = limits.most - limits.least
        if room < (LEAST_DEFICIT if self.is_judged else 1.0):
            ended = self._end(say(texts.NO_ROOM, rule=limits.why.rule, why=limits.why.why))
            return ended._replace(reasons=[*ended.reasons, *rails.ratio_decides(course.subject, limits.why.rule)])
        if not is_one_step(limits):
            return self._end(say(texts.PAST_RAIL, rule=limits.why.rule, why=limits.why.why))
        return self._go_on(limits)

    def _shortened(self, limits: IntakeLimits) -> IntakeLimits:
        """The limits of as many whole weeks less as bring the rest inside every rail with one step.

        As they are where all of it is inside, or less than a week would be.
        """
        most = (self.left - texts.LEAST_DAYS_LEFT) // DAYS_PER_WEEK
        if is_one_step(limits):
            return limits

        def after(weeks_less: int) -> IntakeLimits:
            return self.course.limits(self.left - DAYS_PER_WEEK * weeks_less)

        weeks = bisect_left(range(max(1, most + 1)), True, lo=1, key=lambda less: is_one_step(after(less)))
        if weeks > most:
            return limits
        inside = after(weeks)
        self.left -= DAYS_PER_WEEK * weeks
        why = limits.why
        self.reasons.append(say(texts.SHORTENED, date=self._date(self.left - 1), rule=why.rule, why=why.why))
        return inside

    def _lowest(self) -> float:
        """The least intake of the days to come, as planned."""
        return min(self.course.intakes(0.0, self.left))

    def _end(self, reason: Message, actions: list[RailAction] | None = None) -> Advice:
        return Advice(NextStep.END, 0, 0, [reason], [*self.actions, *(actions or [])])

    def _with_logged_loss(self, limits: IntakeLimits) -> IntakeLimits:
        """The rail on what was really lost: too fast over two settled weeks raises the intake.

        By tissue, or by the scale as every answer to a log judges it: the reading of tissue is drawn to what the log
        says was eaten.
        """
        now, weight = self.now, self.course.subject.weight_kg
        if now.fortnight_tissue is None or now.days < 14 + texts.SETTLING_DAYS:
            return limits
        share = max(-now.fortnight_tissue.mean / 2.0 / weight, self.course.subject.logged.loss_share)
        weekly = share * weight
        if share <= rails.LOGGED_LOSS_WARN:
            return limits
        self.is_losing_fast = share > rails.LOGGED_LOSS_LIMIT
        action, limit = "warned", rails.LOGGED_LOSS_WARN
        if self.is_losing_fast:
            action, limit = "capped", rails.LOGGED_LOSS_LIMIT
        message = say(texts.LOST_FAST, percent=100.0 * share, limit=100.0 * limit)
        self.actions.append(RailAction(texts.LOGGED_LOSS, action, limit, share, "of body mass a week", message))
        if not self.is_losing_fast or self._is_just_raised():
            return limits
        # Against what was eaten, or told where nobody logged it: what was lost beyond the planned limit, over a week.
        excess = (weekly - LOSS_LIMIT * weight) * now.rho_kcal_per_kg / DAYS_PER_WEEK
        eaten = now.fortnight_intake_kcal
        if eaten is None:
            eaten = sum(self.phase.told_kcal(now.days)[-_FORTNIGHT:]) / _FORTNIGHT
        least = min(eaten + excess - self._lowest(), limits.most, float(texts.MOST_STEP_KCAL))
        if least <= limits.least:
            return limits
        why = rails.DeficitLimit(texts.LOGGED_LOSS, limits.most - least, rails.Why.LOGGED_LOSS)
        return limits._replace(least=least, why=why)

    def _is_just_raised(self) -> bool:
        """Whether more was told so few days ago that what was lost is of before it: one step a week."""
        since = self.now.day - DAYS_PER_WEEK
        return any(change.change_kcal > 0.0 and since < change.day for change in self.phase.changes)

    def _go_on(self, limits: IntakeLimits) -> Advice:
        course, left, due = self.course, self.left, self.due
        decision = NextStep.CONTINUE if left == course.days_left else NextStep.SHORTEN
        is_late = left < texts.LEAST_DAYS_LEFT and due.change_kcal != 0
        if is_late:
            self.reasons.append(say(texts.TOO_LATE, days=left))
        wanted = 0.0 if is_late or self.is_losing_fast else float(due.change_kcal)
        held = with_room(held_step(limits, wanted, course.own_step_kcal), limits)
        change = held.change_kcal
        futile = self._futile(change)
        if futile is not None:
            return futile
        self._explain(limits, held, wanted)
        days = left
        if due.end_day is not None:
            moved = max(1, due.end_day - self.now.day)
            if moved < left:
                decision, days = NextStep.SHORTEN, moved
                self.reasons.append(say(texts.SHORTEN, date=self._date(moved - 1), days=left - moved))
            elif moved > left == course.days_left and due.futile is None and up(course.limits(moved).least) <= change:
                # More days may bring a stricter rail: a phase over six weeks is a long one.
                decision, days = NextStep.EXTEND, moved
                self.reasons.append(say(texts.EXTEND, date=self._date(moved - 1), days=moved - left))
        if due.waits:
            self.reasons.append(say(texts.WAITS, date=self._date(DAYS_PER_WEEK - course.days_gone % DAYS_PER_WEEK)))
        elif self.target is not None and decision is not NextStep.EXTEND and self._falls_short(float(change), days):
            fat = -course.fat_change(float(change), days)
            self.reasons.append(say(texts.OUT_OF_REACH, fat_kg=fat, target_kg=self.target))
        self._say_if_ahead(is_eaten_enough=not self._warn_of_eaten(limits))
        actions = rail_actions(limits, course, held, wanted, days)  # of all that is told, days added included
        return Advice(decision, change, days, self.reasons, [*self.actions, *actions])

    def _futile(self, change: int) -> Advice | None:
        """The end of a deficit that does not do what it is for. A step that has its time to work goes before it, but
        where weight is gained in it."""
        futile, due = self.due.futile, self.due
        if futile is None or not self.is_judged:
            return None
        has_time = futile.days_left >= texts.TURN_BACK_DAYS
        is_mended = change < 0 or due.waits or has_stepped_down(self.phase, self.now.day)
        if futile.fat_kg is None and has_time and is_mended and not futile.is_gaining:
            return None
        why = say(texts.GETS_NOWHERE, weeks=futile.weeks)
        if futile.fat_kg is not None:
            on = date.fromordinal(futile.last_day).isoformat()
            why = say(texts.GOAL_TOO_FAR, date=on, fat_kg=max(0.0, futile.fat_kg), target_kg=self.target or 0.0)
        ended = self._end(why)
        # Who was unsure about an eating disorder is recommended no other deficit before that is settled.
        again = texts.START_AGAIN_SETTLED if rails.is_in_doubt(self.course.subject) else texts.START_AGAIN
        return ended._replace(reasons=[*ended.reasons, say(again)])

    def _say_if_ahead(self, *, is_eaten_enough: bool) -> None:
        """Whoever is ahead in a phase of which only the length was asked for may stop early; that there is no need to
        eat more is said where no rail on what is logged says that there is."""
        if self.target is not None or self.verdict is not Verdict.FASTER:
            return
        hoped = -self.promised.change(0, self.phase.days).fat.mean
        reach = self.course.days_to_lose(hoped, 0.0, self.left)
        if reach is not None and self.left - reach >= DAYS_PER_WEEK:
            is_losing_fast = any(action.id == texts.LOGGED_LOSS for action in self.actions)
            is_enough = is_eaten_enough and not is_losing_fast and not rails.judge_logged(self.course.subject)
            self.reasons.append(say(texts.MAY_STOP_EARLY, days=DAYS_PER_WEEK, enough=yes_or_no(is_enough)))

    def _explain(self, limits: IntakeLimits, held: Held, wanted: float) -> None:
        why, change = limits.why, held.change_kcal
        if held.is_raised and change > 0:
            self.reasons.append(say(texts.RAISED, correction_kcal=change, rule=why.rule, why=why.why))
            return
        if change:
            self.reasons.append(texts.step(texts.STEPPED, change))
        if held.is_raised:
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

    def _warn_of_eaten(self, limits: IntakeLimits) -> bool:
        """What is logged is held to the rails as well. Returns whether it is under one."""
        eaten = self.now.fortnight_intake_kcal
        least = self.course.intakes(0.0, self.left)[0] + limits.least
        if eaten is None or eaten >= least - texts.NOTABLE_KCAL:
            return False
        why = limits.why
        message = say(texts.EATEN_UNDER_RAIL, intake_kcal=eaten, least_kcal=least, rule=why.rule, why=why.why)
        self.reasons.append(message)
        self.actions.append(RailAction(why.rule, "warned", least, eaten, "kcal/d", message))
        return True
