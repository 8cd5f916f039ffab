"""Which phase now: a table of rules over the state of a person, and a trade where the rules leave a choice.

The first rule that applies decides:

1. An eating disorder, or under 18: no fat-loss phase, and nothing about leanness (``NO_DEFICIT``).
2. In a cut: refused by a rail, it ends; as long as one may be, it ends (``CUT_TOO_LONG``); at its target, it ends
   (``CUT_DONE``); else it goes on (``CUT_UNDER_WAY``). After it comes a bridge at maintenance.
3. A cut ended so lately that its bridge is not done: finish that (``CUT_JUST_ENDED``).
4. An event within a year: its cut starts as late as will do (``EVENT_*``).
5. Body fat at or over the value at which a cut becomes due (``decision_due``): a cut (``CUT_DUE``, or
   ``CUT_FOR_LEANNESS``), unless the person wants to hold, a rail refuses, the reading cannot carry it
   (``MEASURE_FIRST``), the last cut is too recent (``CUT_TOO_RECENT``), or there were too many (``TOO_MANY_CUTS``).
6. Else no cut: the better scored of gain and hold (``LEAN_ENOUGH``, ``NOT_YET``).

Every condition on body fat is a threshold that does not move with it, so that more fat never turns a cut into "not
yet". Where no cut is to be, an underweight body gains, pregnancy holds, and who does not train holds.
"""

from collections.abc import Sequence
from datetime import date, timedelta

from .. import rails
from ..body import BASELINE_CARBOHYDRATE_SHARE, BodyState, Diet, walk
from ..measures import healthy_range
from ..phase import DEFAULT_WEEKS, LONG_CUT_WEEKS, MOST_WEEKS, PLAN_METHOD_IDS, DeficitKind, PhaseKind
from ..rails import PROTEIN_DEFAULT_GAIN, RailAction, Refused
from ..register import Message, say
from .alternatives import Alternative, Alternatives, bridge_weeks, refusal_of
from .answer import Decision, Leanness, Reading, changes, explain
from .event import Event, event_of, latest_start
from .pattern import PATTERN_IDS, Pattern, pattern_of, slow_surplus_kcal
from .terms import (
    EVENT_WEEKS_MOST,
    GAIN_WEEKS_LEAST,
    HORIZON_WEEKS,
    TERM_IDS,
    TRIGGER_PROBABILITY,
    Feeling,
    Goal,
    Question,
    Situation,
)
from .trade import TRADE_IDS, Course, due_at, lines_of, motive, probability_over

DECISION_METHOD_IDS = (
    *TERM_IDS,
    *TRADE_IDS,
    *PATTERN_IDS,
    *PLAN_METHOD_IDS,
    "healthy_body_fat",
    "long_cut_weeks",
    "slow_gain_share",
)
# A quarter of a point from its target a cut has arrived.
_ARRIVED = 0.0025


def decide(question: Question) -> Decision:
    """Decide which phase comes next. Deterministic; every deficit it recommends is inside the rails."""
    return _Deciding(question).decide()


def speaks_of_leanness(refused: Refused | None) -> bool:
    """Whether body fat may be spoken of: not with an eating disorder, and not under 18."""
    if refused is None:
        return True
    action = refused.action
    return action.id != rails.EATING_DISORDER and not (action.id == rails.AGE and action.limit == rails.ADULT_YEARS)


class _Deciding:
    """One question on its way through the table."""

    def __init__(self, question: Question) -> None:
        self.q = question
        self.warnings, self.refused = refusal_of(question.subject)
        self.pattern: Pattern | None = None
        self.by_trade = False
        self.reasons: list[Message] = []
        self.changes: list[Message] = []

    # --- the table --------------------------------------------------------------------------------------------

    def decide(self) -> Decision:
        q = self.q
        if not speaks_of_leanness(self.refused):
            return self._without_leanness()
        wanted = motive(q)
        self.pattern = pattern_of(q)
        if self.pattern is not None:
            q = self.q = q._replace(surplus_kcal=slow_surplus_kcal(q.subject, q.body))
        self.lines = lines_of(wanted, *q.band)
        self.due = due_at(q, self.lines.counts_from)
        other = Feeling.WOULD_LIKE_LEANER if wanted is Feeling.CONTENT else Feeling.CONTENT
        self.other_due = due_at(q, lines_of(other, *q.band).counts_from)
        refusal = None if self.refused is None else self.refused.action.message
        self.make = Alternatives(q, self.lines, refusal)
        ceiling = None if self.due is None or not 0.08 <= self.due <= 0.4 else round(self.due, 3)
        self.gain = self.make.gain(ceiling=ceiling)
        until_due = None if self.gain.closed else self._weeks_to_due(self.gain.path.states)
        weeks = DEFAULT_WEEKS if self._is_due else max(GAIN_WEEKS_LEAST, until_due or HORIZON_WEEKS)
        self.gain = self._gain_of(weeks)
        self.hold = self.make.hold()
        self.mini = self.make.cut(DeficitKind.MINI_CUT)
        self.long = None if self.mini.reaches_target and not self.mini.closed else self.make.cut(DeficitKind.CUT)
        self.event = event_of(q, self.lines)
        if q.event is not None and self.event is None:
            self.reasons.append(say("DECISION_EVENT_FAR", weeks=EVENT_WEEKS_MOST))
        situation, chosen = self._in_cut() or self._after_cut() or self._for_event() or self._by_leanness()
        return self._answer(situation, chosen)

    def _without_leanness(self) -> Decision:
        q = self.q
        assert self.refused is not None
        if self.refused.action.id == rails.AGE:
            self.reasons.append(say("DECISION_UNDER_AGE", limit_years=rails.ADULT_YEARS))
        else:
            self.reasons.append(say("DECISION_NO_DEFICIT"))
        self.make = Alternatives(q, None, self.reasons[0])
        self.gain, self.hold = self.make.gain(DEFAULT_WEEKS), self.make.hold()
        chosen = self.gain if q.may_grow and q.goal is Goal.MUSCLE else self.hold
        action = self.refused.action
        told = RailAction(action.id, "refused", action.limit, action.observed, action.unit, self.reasons[0])
        if not q.trains:
            self.reasons.append(say("GAIN_NEEDS_TRAINING"))
        others = [self.gain, self.hold]
        return Decision(
            Situation.NO_DEFICIT, chosen, others, False, None, None, self.reasons, [], [told]
        )  # fmt: skip

    def _in_cut(self) -> tuple[Situation, Alternative] | None:
        present = self.q.present
        if present is None or not present.kind.is_deficit:
            return None
        bridge = self.make.hold(bridge_weeks(present.weeks), then_gain=True)
        fat = 100.0 * self.q.fat_fraction
        if self.refused is not None:
            self.reasons.append(say("DECISION_CUT_REFUSED_UNDER_WAY"))
            return Situation.CUT_REFUSED, self._kept() if self._is_underweight else bridge
        is_mini = present.kind is PhaseKind.MINI_CUT
        if present.weeks >= (MOST_WEEKS if is_mini else LONG_CUT_WEEKS):
            self.reasons.append(say("DECISION_CUT_TOO_LONG", weeks=present.weeks, bridge_weeks=bridge.weeks))
            return Situation.CUT_TOO_LONG, bridge
        if not self.q.fat.is_measured:
            self.reasons.append(say("DECISION_MEASURE_FIRST_BMI", kind=bridge.kind.value))
            return Situation.MEASURE_FIRST, bridge
        room = None if self.event is None else self.event.room
        target = self.lines.target if self.event is None else self.event.target
        if self.q.fat_fraction <= target + _ARRIVED:
            self.reasons.append(
                say("DECISION_CUT_DONE", fat_percent=fat, target_percent=100 * target, bridge_weeks=bridge.weeks)
            )
            return Situation.CUT_DONE, bridge
        kind = DeficitKind.MINI_CUT if is_mini else DeficitKind.CUT
        going = self.make.cut(kind, weeks_done=present.weeks, until_event=room, target=target)
        if going.closed is not None:
            self.reasons += [say("DECISION_CUT_REFUSED_UNDER_WAY"), going.closed]
            return Situation.CUT_REFUSED, bridge
        self.reasons.append(say("DECISION_CUT_UNDER_WAY", fat_percent=fat, target_percent=100 * target))
        return Situation.CUT_UNDER_WAY, going

    def _after_cut(self) -> tuple[Situation, Alternative] | None:
        q = self.q
        last, since = q.last_cut, q.weeks_since_cut
        if last is None or since is None or (q.present is not None and q.present.kind is PhaseKind.GAIN):
            return None
        owed = bridge_weeks(last.weeks) - since
        if owed <= 0:
            return None
        self.reasons.append(say("DECISION_CUT_JUST_ENDED", weeks=since, bridge_weeks=owed))
        return Situation.CUT_JUST_ENDED, self.make.hold(owed, then_gain=True)

    def _for_event(self) -> tuple[Situation, Alternative] | None:
        event, fat = self.event, self.q.fat_fraction
        if event is None:
            return None
        start = latest_start(self.q, event)
        if fat <= event.target + _ARRIVED and (start is None or start.week < GAIN_WEEKS_LEAST or start.cut_weeks == 0):
            self.reasons.append(say("DECISION_EVENT_READY", fat_percent=100 * fat, target_percent=100 * event.target))
            ready = self._kept() if start is not None and start.cut_weeks == 0 else self.hold
            return Situation.EVENT_READY, self._shortened(ready, event.weeks)
        if self.refused is not None:
            return self._refused_cut(self._kept())
        if not self.q.fat.is_measured:
            return self._measure_first(None)
        if event.room < 2:
            self.reasons.append(say("DECISION_EVENT_TOO_NEAR", weeks=event.weeks))
            return Situation.EVENT_TOO_NEAR, self._shortened(self.hold, event.weeks)
        blocked = self._too_soon()
        if blocked is not None:
            return blocked
        if start is not None and start.week >= GAIN_WEEKS_LEAST:
            when = self.q.day(start.week).isoformat()
            self.reasons.append(say("DECISION_EVENT_LATER", weeks=event.weeks, cut_weeks=start.cut_weeks, date=when))
            self.changes.append(say("CHANGE_EVENT_START", date=when))
            until = self._gain_of(start.week) if self.q.may_grow else self._shortened(self.hold, start.week)
            return Situation.EVENT_LATER, until
        return self._event_now(event)

    def _event_now(self, event: Event) -> tuple[Situation, Alternative]:
        self.mini = self.make.cut(DeficitKind.MINI_CUT, until_event=event.room, target=event.target)
        self.long = None
        if self.mini.closed or not self.mini.reaches_target:
            self.long = self.make.cut(DeficitKind.CUT, until_event=event.room, target=event.target)
        open_cuts = [a for a in (self.mini, self.long) if a is not None and a.closed is None]
        if not open_cuts:
            return self._refused_cut(self._kept(), self.mini.closed)
        best = max(open_cuts, key=lambda a: (a.reaches_target, a.weeks))
        wait = event.room - best.weeks if best.fragment is not None and best.fragment.for_event else 0
        code = "DECISION_EVENT_HOLD_FIRST" if wait > 0 else "DECISION_EVENT_NOW"
        when = {"date": self.q.day(wait).isoformat()} if wait > 0 else {}
        self.reasons.append(say(code, weeks=event.weeks, cut_weeks=best.weeks, **when))
        if not best.reaches_target:
            state = best.path.states[best.weeks]
            end = 100.0 * float(state.fat_kg / state.weight_kg)
            self.reasons.append(say("DECISION_EVENT_OUT_OF_REACH", target_percent=100 * event.target, end_percent=end))
        self.reasons.append(say("DECISION_EVENT_SETS_DATE"))
        return Situation.EVENT_NOW, best

    def _by_leanness(self) -> tuple[Situation, Alternative]:
        q, fat = self.q, 100.0 * self.q.fat_fraction
        wants_hold = q.goal is Goal.HOLD and motive(q) is Feeling.CONTENT
        if self._is_due and wants_hold:
            assert self.due is not None
            self.reasons.append(say("DECISION_WANTS_HOLD_OVER", due_percent=100 * self.due))
            return Situation.WANTS_HOLD, self._kept()
        if self._is_due:
            return self._due_cut()
        kept = self._kept()
        self.by_trade = q.may_grow and not self._is_underweight and not self._is_pregnant
        advice = {PhaseKind.GAIN: "Gain.", PhaseKind.MAINTENANCE: "Hold."}[kept.kind]
        if wants_hold:
            self.reasons.append(say("DECISION_WANTS_HOLD"))
            return Situation.WANTS_HOLD, kept
        if q.fat_fraction <= self.lines.target:
            self.reasons.append(say("DECISION_LEAN_ENOUGH", fat_percent=fat, advice=advice))
            return Situation.LEAN_ENOUGH, kept
        self.reasons.append(say("DECISION_NOT_YET", fat_percent=fat, weeks=HORIZON_WEEKS, advice=advice))
        return Situation.NOT_YET, kept

    def _due_cut(self) -> tuple[Situation, Alternative]:
        q, fat = self.q, 100.0 * self.q.fat_fraction
        if self.refused is not None:
            return self._refused_cut(self._kept())
        probability = probability_over(q.fat, self.lines.counts_from)
        if not q.fat.is_measured or probability < TRIGGER_PROBABILITY:
            return self._measure_first(probability)
        blocked = self._too_soon()
        if blocked is not None:
            return blocked
        open_cuts = [a for a in (self.mini, self.long) if a is not None and a.closed is None]
        if not open_cuts:
            return self._refused_cut(self._kept(), self.mini.closed)
        best = max(open_cuts, key=lambda a: a.total_kg)
        if best.total_kg < max(self.gain.total_kg if q.grows else self.hold.total_kg, self.hold.total_kg):
            # To the target is too far to pay; the usual mini-cut, on which the due line rests, is not.
            best = max(best, self.make.short_cut(), key=lambda a: a.total_kg)
        assert self.due is not None
        self.by_trade = True
        if best.kind is PhaseKind.CUT:
            self.reasons.append(say("DECISION_LONGER_CUT", weeks=best.weeks))
        if not best.reaches_target:
            self.reasons.append(say("DECISION_LONG_WAY", target_percent=100 * self.lines.target))
        if motive(q) is not Feeling.CONTENT and (self.other_due is None or q.fat_fraction < self.other_due):
            message = say("DECISION_CUT_FOR_LEANNESS", fat_percent=fat, due_percent=100 * self.due)
            self.reasons.insert(0, message)
            return Situation.CUT_FOR_LEANNESS, best
        self.reasons.insert(0, say("DECISION_CUT_DUE", fat_percent=fat, due_percent=100 * self.due))
        return Situation.CUT_DUE, best

    # --- what several rules share -----------------------------------------------------------------------------

    @property
    def _is_due(self) -> bool:
        return self.due is not None and self.q.fat_fraction >= self.due

    @property
    def _is_underweight(self) -> bool:
        return self.refused is not None and self.refused.action.id in (rails.BMI, rails.BODY_FAT)

    @property
    def _is_pregnant(self) -> bool:
        return self.refused is not None and self.refused.action.id == rails.PREGNANCY

    def _kept(self) -> Alternative:
        """What is best without a cut."""
        if self._is_underweight:
            return self.gain
        if not self.q.trains:
            self.reasons.append(say("GAIN_NEEDS_TRAINING"))
            self.changes.append(say("CHANGE_TRAINING"))
        if self._is_pregnant or not self.q.may_grow:
            return self.hold
        return max(self.gain, self.hold, key=lambda a: a.total_kg)

    def _gain_of(self, weeks: int) -> Alternative:
        return self._shortened(self.gain, weeks)

    @staticmethod
    def _shortened(alternative: Alternative, weeks: int) -> Alternative:
        if alternative.fragment is None:
            return alternative
        weeks = max(1, min(weeks, 52 if alternative.kind is PhaseKind.GAIN else HORIZON_WEEKS))
        return alternative._replace(weeks=weeks, fragment=alternative.fragment._replace(weeks=weeks))

    def _refused_cut(self, kept: Alternative, why: Message | None = None) -> tuple[Situation, Alternative]:
        self.reasons.append(say("DECISION_CUT_REFUSED", kind=kept.kind.value))
        if why is not None:
            self.reasons.append(why)
        return Situation.CUT_REFUSED, kept

    def _measure_first(self, probability: float | None) -> tuple[Situation, Alternative]:
        kept, fat = self._kept(), self.q.fat
        if not fat.is_measured or probability is None:
            self.reasons.append(say("DECISION_MEASURE_FIRST_BMI", kind=kept.kind.value))
        else:
            self.reasons.append(
                say(
                    "DECISION_MEASURE_FIRST_ERROR",
                    fat_percent=100 * fat.mean,
                    error_points=100 * fat.sd,
                    line_percent=100 * self.lines.counts_from,
                    probability_percent=100 * probability,
                    least_percent=100 * TRIGGER_PROBABILITY,
                    kind=kept.kind.value,
                )
            )
        return Situation.MEASURE_FIRST, kept

    def _too_soon(self) -> tuple[Situation, Alternative] | None:
        """Whether the cuts already made forbid another for now."""
        q = self.q
        since, last = q.weeks_since_cut, q.last_cut
        if since is not None and last is not None and since < rails.WEEKS_BETWEEN_CUTS:
            when = (last.end + timedelta(days=7 * int(rails.WEEKS_BETWEEN_CUTS))).isoformat()
            self.reasons.append(
                say("DECISION_CUT_TOO_RECENT", weeks=since, limit_weeks=rails.WEEKS_BETWEEN_CUTS, date=when)
            )
            self.changes.append(say("CHANGE_TIME", date=when))
            return Situation.CUT_TOO_RECENT, self._kept()
        cuts = q.cuts_last_12_months
        if cuts is not None and cuts >= rails.CUTS_A_YEAR_WARN:
            ends = [p.end for p in q.history or [] if p.kind.is_deficit]
            first: date = ends[-int(rails.CUTS_A_YEAR_WARN)] + timedelta(days=365)
            self.reasons.append(say("DECISION_TOO_MANY_CUTS", cuts=cuts, date=first.isoformat()))
            self.changes.append(say("CHANGE_TIME", date=first.isoformat()))
            return Situation.TOO_MANY_CUTS, self._kept()
        return None

    def _weeks_to_due(self, states: Sequence[BodyState]) -> int | None:
        """Weeks until body fat reaches the due line on a weekly path."""
        if self.due is None or self._is_due:
            return None
        due = self.due
        return next((w for w, s in enumerate(states) if float(s.fat_kg / s.weight_kg) >= due), None)

    def _present_path(self) -> Sequence[BodyState]:
        """The weekly path at the present rate: the surplus eaten now in a gain under way, else the usual gain."""
        q = self.q
        intake = q.body.usual_intake_kcal
        if q.present is None or q.present.kind is not PhaseKind.GAIN or intake is None:
            return (self.hold if self.gain.closed else self.gain).path.states
        course = Course.of(q)
        diet = Diet(intake, BASELINE_CARBOHYDRATE_SHARE * intake, PROTEIN_DEFAULT_GAIN)
        return [course.start, *walk(course.model, course.start, diet, (7.0,) * HORIZON_WEEKS)]

    # --- the answer -------------------------------------------------------------------------------------------

    def _answer(self, situation: Situation, chosen: Alternative) -> Decision:
        q = self.q
        listed = [self.gain, self.hold, self.mini, *([] if self.long is None else [self.long])]
        # The recommended one stands for its kind.
        listed = [a for a in listed if a.kind is not chosen.kind]
        listed = sorted([chosen, *listed], key=lambda a: -a.total_kg)
        probability = probability_over(q.fat, self.lines.counts_from)
        margin = None if self.due is None else q.fat_fraction - self.due
        other_side = None
        if self.due is not None and margin is not None:
            over = probability_over(q.fat, self.due)
            other_side = 1.0 - over if margin >= 0 else over
        good = q.fat.is_measured and probability >= TRIGGER_PROBABILITY
        leanness = Leanness(
            self.lines,
            self.due,
            self.other_due,
            self._weeks_to_due(self._present_path()),
            healthy_range(q.subject.sex, q.subject.age_years),
            Reading(good, probability, margin, other_side),
        )
        self.reasons += explain(q, chosen, listed, by_trade=self.by_trade, refused=self.refused, pattern=self.pattern)
        self.changes += changes(q, leanness, self.refused)
        actions = list(self.warnings) if chosen.kind.is_deficit else []
        if self.refused is not None:
            actions.append(self.refused.action)
        if chosen.plan is not None:
            actions += [a for a in chosen.plan.actions if a not in actions]
        return Decision(
            situation, chosen, listed, self.by_trade, leanness, self.pattern, self.reasons, self.changes, actions
        )  # fmt: skip
