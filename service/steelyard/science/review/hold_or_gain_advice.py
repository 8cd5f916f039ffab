"""What to do about a gain or a hold: the rate to come is restored in steps, and what was missed in weeks."""

from datetime import date
from typing import NamedTuple

from .. import rails
from ..numbers import Estimate
from ..phase import DAYS_PER_WEEK, FollowedPhase, PhaseKind, PromisedPath, Verdict
from ..rails import GAIN_RATE, GAIN_RATE_LIMIT, RailAction
from ..register import Message, say, yes_or_no
from . import texts
from .correction import STEP_KCAL, IntakeLimits, RestOfPhase, down, up
from .due import Due
from .next_step import Advice, NextStep
from .reading import Now
from .step import Held, has_stepped_down, held_step

_SUPPOSED_TIMES = 3  # each leaves a tenth of what was over


class Lost(NamedTuple):
    """What was lost that nobody planned to lose: a share of body mass in so many days, and the limit it is over."""

    share: float
    days: int
    limit: float
    unit: str


class HoldOrGainAdvice:
    """A gain or a hold in its course."""

    def __init__(
        self, phase: FollowedPhase, course: RestOfPhase, now: Now, promised: PromisedPath, verdict: Verdict, due: Due
    ) -> None:
        self.phase, self.course, self.now, self.promised, self.verdict = phase, course, now, promised, verdict
        self.due = due
        self.reasons: list[Message] = []
        self.lost: Lost | None = None

    def advise(self) -> Advice:
        course, subject = self.course, self.course.subject
        if self.phase.kind is PhaseKind.GAIN:
            rails.check_answered(subject)
        met = self._ceiling_met()
        if met is not None:
            return Advice(NextStep.END, 0, 0, [met], [])
        limits = self._limits()
        wanted = self._wanted(limits)
        held = held_step(limits, wanted, course.own_step_kcal)
        if self.phase.kind is PhaseKind.GAIN and held.change_kcal > limits.most:
            slowed = self._slowed(limits, held.change_kcal)
            if slowed is None:
                limit = 100.0 * GAIN_RATE_LIMIT[subject.training_status]
                return Advice(NextStep.END, 0, 0, [say(texts.TOO_FAST_A_GAIN, limit_percent=limit)], [])
            held = Held(slowed, is_raised=False)
        overrun = self._overrun(held.change_kcal)
        if overrun:
            return Advice(NextStep.END, 0, 0, overrun, [])
        actions = [*course.protein_actions, *self._say_lost(held.change_kcal), *self._explain(limits, held, wanted)]
        is_capped = any(action.id == GAIN_RATE for action in actions)
        if self.phase.kind is PhaseKind.GAIN and not is_capped and not subject.is_pregnant:
            actions += rails.warn_gain(subject.training_status, course.gain_share(float(held.change_kcal)))
        if held.is_raised:
            planned = min(course.intakes(0.0, course.days_left))
            actions += rails.raised_to_floor(planned + up(limits.least), planned)
        return Advice(NextStep.CONTINUE, held.change_kcal, course.days_left, self.reasons, actions)

    def _limits(self) -> IntakeLimits:
        """What the rails allow, by the plan's maintenance or what was eaten so far where the log's own would lower it.

        Nothing is lowered while the scale does not contradict the plan: what else explains the two together?
        """
        limits = self.course.limits(self.course.days_left)
        ways = (self._as_eaten_so_far, self._as_planned, self._as_planned_with_room, self._as_planned_until_judged)
        for supposing in ways:
            if limits.most < 0.0 and not self._may_lower and supposing():
                limits = self.course.limits(self.course.days_left)
        return limits

    @property
    def _may_lower(self) -> bool:
        """Whether less may be told than planned: the scale says so, it may be said, and the last change had time."""
        is_told_lower = self.verdict is Verdict.FASTER or self.due.change_kcal < 0
        return is_told_lower and not rails.may_not_diet(self.course.subject) and not self._is_just_changed()

    def _slowed(self, limits: IntakeLimits, change: int) -> int | None:
        """The change that slows a gain which is over its fastest; None where the scale has not said so and a slight
        one will not do: a plan that is too fast by itself ends."""
        lowered, most_step = self._lowered(limits, self._to_maintenance()), -texts.MOST_STEP_KCAL
        # A little over the ceiling, the rest is slowed whatever the scale says: that ends no gain.
        is_slight = change - limits.most <= texts.ROOM_KCAL
        if self._may_lower and not most_step <= lowered <= limits.most:
            # More than one step: the first now, and the rest if the next readings say so too.
            to_maintenance = self._to_maintenance()
            self._as_planned()
            limits = self.course.limits(self.course.days_left)
            lowered = max(up(limits.least), to_maintenance, most_step)
        is_in_step = most_step <= lowered <= min(change, 0, limits.most)
        may_slow = is_slight or self.verdict is Verdict.FASTER
        return lowered if is_in_step and may_slow and not rails.may_not_diet(self.course.subject) else None

    def _to_maintenance(self) -> int:
        """The change that brings the lowest week to maintenance [kcal/d]."""
        return up(self.course.maintenance_kcal - min(self.course.intakes(0.0, self.course.days_left)))

    @staticmethod
    def _lowered(limits: IntakeLimits, to_maintenance: int) -> int:
        """The change that brings a gain under its fastest, with room where that is not more than one step.

        Where the fastest is slow, room under it ends at maintenance: a gain is not lowered into a deficit.
        """
        lowered = max(down(limits.most - texts.ROOM_KCAL), up(limits.least), to_maintenance, -texts.MOST_STEP_KCAL)
        return lowered if lowered <= limits.most else max(down(limits.most), up(limits.least))

    def _explain(self, limits: IntakeLimits, held: Held, wanted: float) -> list[RailAction]:
        """Say why the intake changes as it does, and report the ceiling where that holds it."""
        why, change = limits.why, held.change_kcal
        if held.is_raised and change > 0:
            self.reasons.append(say(texts.RAISED, correction_kcal=change, rule=why.rule, why=why.why))
        elif held.is_raised:
            missing = change - wanted
            if change:
                self.reasons.append(texts.step(texts.STEPPED, change))
            self.reasons.append(say(texts.CORRECTION_HELD, missing_kcal=missing, rule=why.rule, why=why.why))
        elif change < min(wanted, 0.0):
            self.reasons.append(texts.step(texts.STEPPED, change))
            return [self._held_under_ceiling()]
        elif change:
            if change < 0 and self.verdict is Verdict.WITHIN_INTERVAL:
                self.reasons.append(say(texts.MADE_UP))
            self.reasons.append(texts.step(texts.STEPPED, change))
        return []

    def _ceiling_met(self) -> Message | None:
        """Why a gain ends at its ceiling of body fat; it is not spoken of to those who may hear of no such target."""
        full = self.due.full
        if full is None:
            return None
        if rails.forbids_fat_target(self.course.subject) is not None:
            return say(texts.GAIN_ENOUGH)
        percent = round(100.0 * full.ceiling, 1)
        return say(texts.CEILING_MET, fat_percent=100.0 * full.fat_fraction, ceiling_percent=percent)

    def _overrun(self, change: int) -> list[Message]:
        """Why a gain ends that is far too fast: by the log itself, or where no step is left to wait for."""
        over, eaten = self.due.overrun, self.now.eaten
        is_mended = change < 0 or self.due.waits or has_stepped_down(self.phase, self.now.day)
        if over is None or eaten.is_kept_lately or (is_mended and not eaten.is_over):
            return []
        why = say(texts.GAIN_OVERRUN, weeks=over.weeks, gained_kg=over.gained_kg, most_kg=over.most_kg)
        return [why, say(texts.GAIN_ANEW)]

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
        over, room = -self.course.limits(self.course.days_left).most, texts.ROOM_KCAL
        if self.verdict is not Verdict.TOO_EARLY or over > self.phase.maintenance.sd:
            return False
        # A body that needs more carries more and may gain more, or less: it is asked again.
        for _ in range(_SUPPOSED_TIMES):
            if over <= 0.0:
                break
            room += over + STEP_KCAL
            self._suppose(room)
            over = -self.course.limits(self.course.days_left).most
        return True

    def _suppose(self, room_kcal: float) -> None:
        plan, changed = self.phase.maintenance, sum(change.change_kcal for change in self.phase.changes)
        slope = self.course.ratio * float(self.now.reading.tissue.expenditure_slope_kcal_per_kg_day)
        grown = slope * max(0.0, self.now.window.tissue.mean)
        supposed = Estimate(plan.mean + changed + grown + room_kcal, plan.sd)
        self.course.suppose(supposed)
        said = (texts.AS_EATEN_SO_FAR, texts.AS_PLANNED)
        self.reasons = [reason for reason in self.reasons if reason.code not in said]
        # Where hardly any food is logged only the scale speaks, and no log says otherwise.
        is_by_log = not (self.now.is_unseen or self.now.eaten.is_hardly_logged)
        if self.verdict is not Verdict.FASTER and is_by_log and self._is_under_plan:
            self.reasons.append(say(texts.AS_PLANNED, maintenance_kcal=supposed.mean))

    @property
    def _is_under_plan(self) -> bool:
        """Whether the scale shows no more than the plan promised, and so speaks against a log that needs less."""
        return (
            self.now.window.tissue.mean
            <= self.promised.change(self.now.days - self.now.window_days, self.now.days).tissue.mean
        )

    def _is_just_changed(self) -> bool:
        """Whether the intake was changed so short a time ago that nobody can tell yet what it does."""
        last = max((change.day for change in self.phase.changes), default=None)
        return last is not None and self.now.day - last < texts.LEAST_DAYS

    def _wanted(self, limits: IntakeLimits) -> float:
        """The change that restores the rate to come [kcal/d]; a step up leaves room under the limits, or it is none."""
        wanted = self._asked_for()
        if wanted <= 0.0:
            return wanted
        roomy = float(down(min(wanted, limits.most - texts.ROOM_KCAL)))
        return roomy if roomy >= texts.NOTABLE_KCAL else 0.0

    def _asked_for(self) -> float:
        """What is due, and a step up where somebody loses what nobody planned to lose [kcal/d]."""
        course, left = self.course, self.course.days_left
        to_maintenance = course.maintenance_kcal - min(course.intakes(0.0, left))
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
        self.lost = self._lost()
        if self.lost is not None or self._comes_too_low():
            wanted = max(wanted, min(float(down(to_maintenance)), float(texts.MOST_STEP_KCAL)))
        return wanted

    def _lost(self) -> Lost | None:
        """The weight that goes though nobody planned to lose it: of late by tissue or by the scale, or so far."""
        weight, recent = self.course.subject.weight_kg, self.now.fortnight_tissue
        so_far = -self.now.window.tissue.mean / weight
        if so_far > texts.UNEXPLAINED_SHARE:
            return Lost(so_far, self.now.window_days, texts.UNEXPLAINED_SHARE, "of body mass")
        if recent is None or self.now.days < 14:
            return None
        weekly = max(-recent.mean / weight / 2.0, self.course.subject.logged.loss_share)
        if weekly <= rails.LOGGED_LOSS_WARN:
            return None
        return Lost(2.0 * weekly, 14, 2.0 * rails.LOGGED_LOSS_WARN, "of body mass in two weeks")

    def _say_lost(self, change_kcal: int) -> list[RailAction]:
        """What was lost, with whom to see; whoever is told no more than planned is to eat that."""
        if self.lost is None:
            return []
        share, days, limit, unit = self.lost
        if self.course.subject.is_breastfeeding:
            # After a birth kilograms go that nobody calls unexplained.
            said = say(texts.LOSS_BREASTFEEDING, percent=100.0 * share, days=days)
        else:
            raised = yes_or_no(change_kcal > 0)
            said = say(texts.UNEXPLAINED_LOSS, percent=100.0 * share, days=days, raised=raised)
        self.reasons.append(said)
        return [RailAction(texts.LOGGED_LOSS, "warned", limit, share, unit, said)]

    def _comes_too_low(self) -> bool:
        """Whether what is eaten under maintenance leads to a body that no deficit may lead to."""
        course, left = self.course, self.course.days_left
        then = course.subject_at(course.end(0.0, left))
        if then.fat_kg >= course.subject.fat_kg:
            return False
        return then.bmi < rails.BMI_FLOOR or then.fat_fraction < rails.stricter(rails.FAT_FRACTION_FLOOR, then.sex)

    def _held_under_ceiling(self) -> RailAction:
        # No surplus is told: that of the maintenance which the days are forecast by may be none at all.
        limit = GAIN_RATE_LIMIT[self.course.subject.training_status]
        held = say(texts.GAIN_SLOWED, percent=100.0 * limit)
        self.reasons.append(held)
        return RailAction(GAIN_RATE, "capped", limit, None, "of body mass a week", held)
