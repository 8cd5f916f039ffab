"""The terms of a decision: what is asked, the situations it can find, and every threshold it uses."""

from collections.abc import Sequence
from datetime import date, timedelta
from enum import StrEnum
from typing import NamedTuple

from ..body import Body
from ..measures import FatEstimate
from ..member import Member
from ..phase import Band, FinishedPhase, History, PhaseKind
from ..rails import APART_WEEKS, CUTS_A_YEAR_WARN, WEEKS_BETWEEN_CUTS, Subject
from ..register import Basis, constant


class Goal(StrEnum):
    """What the person wants from the next months."""

    MUSCLE = "muscle"
    LEANNESS = "leanness"
    EVENT = "event"
    HOLD = "hold"


class Feeling(StrEnum):
    """How the person feels about their leanness."""

    CONTENT = "content"
    WOULD_LIKE_LEANER = "would_like_leaner"
    UNHAPPY = "unhappy"


class Situation(StrEnum):
    """What the decision found; the rule table of ``decision`` says what follows from each."""

    NO_DEFICIT = "no_deficit"
    CUT_REFUSED = "cut_refused"
    CUT_TOO_LONG = "cut_too_long"
    CUT_DONE = "cut_done"
    CUT_UNDER_WAY = "cut_under_way"
    CUT_JUST_ENDED = "cut_just_ended"
    CUT_TOO_RECENT = "cut_too_recent"
    TOO_MANY_CUTS = "too_many_cuts"
    EVENT_READY = "event_ready"
    EVENT_TOO_NEAR = "event_too_near"
    EVENT_LATER = "event_later"
    EVENT_NOW = "event_now"
    MEASURE_FIRST = "measure_first"
    WANTS_HOLD = "wants_hold"
    LEAN_ENOUGH = "lean_enough"
    NOT_YET = "not_yet"
    CUT_DUE = "cut_due"
    CUT_FOR_LEANNESS = "cut_for_leanness"


class OngoingPhase(NamedTuple):
    """The phase under way and the weeks done of it."""

    kind: PhaseKind
    weeks: int


class Question(NamedTuple):
    """A member and what they want. ``history`` is oldest first; ``None`` is unknown. The body eats as it does now."""

    member: Member
    as_of: date
    band: Band
    goal: Goal
    feeling: Feeling
    event: date | None = None
    event_fat_fraction: float | None = None
    present: OngoingPhase | None = None
    history: Sequence[FinishedPhase] | None = None
    surplus_kcal: float | None = None  # of a gain; as training experience has it where None

    @property
    def subject(self) -> Subject:
        """What the guard rails read of the member."""
        return self.member.subject

    @property
    def body(self) -> Body:
        """The member's body."""
        return self.member.body

    @property
    def fat(self) -> FatEstimate:
        """Body fat as a fraction, and where it comes from."""
        return self.member.assessed.fat

    @property
    def is_fat_read(self) -> bool:
        """Whether a cut may rest on what is known of body fat: it is measured, or surely over the band whatever the
        error of height and weight, and a month for a measurement has passed (or a cut is under way)."""
        if self.fat.is_measured:
            return True
        last = self.history[-1] if self.history else None
        is_asked = (
            last is not None
            and last.kind is PhaseKind.MAINTENANCE
            and last.weeks >= MEASURE_WEEKS
            and (self.as_of - last.end).days <= 7 * MEASURE_WEEKS
        )
        is_cut = self.present is not None and self.present.kind.is_deficit
        return (is_asked or is_cut) and self.fat.probability_over(self.band.upper) >= UNMEASURED_PROBABILITY

    @property
    def fat_fraction(self) -> float:
        """The expected body fat, 0-1."""
        return self.fat.mean

    @property
    def trains(self) -> bool:
        """Whether there is resistance training for a surplus to feed."""
        return float(self.body.training_dose) > 0.0

    @property
    def wants_to_grow(self) -> bool:
        """Whether muscle is wanted between cuts."""
        return self.goal not in (Goal.HOLD, Goal.LEANNESS)

    @property
    def grows(self) -> bool:
        """Whether a gain is what this person does when not cutting."""
        return self.trains and self.wants_to_grow

    @property
    def may_grow(self) -> bool:
        """Whether a gain may be planned as well: never before screening is answered."""
        return self.grows and self.subject.screening is not None

    @property
    def last_cut(self) -> FinishedPhase | None:
        """The last cut that is over."""
        return next((p for p in reversed(self.history or []) if p.kind.is_deficit), None)

    @property
    def weeks_since_cut(self) -> int | None:
        """Whole weeks since the last cut ended."""
        last = self.last_cut
        return None if last is None else (self.as_of - last.end).days // 7

    @property
    def weeks_of_cut(self) -> int:
        """Weeks in a deficit so far of the cut under way, with those that ended so shortly before that all are one."""
        if self.present is None or not self.present.kind.is_deficit:
            return 0
        weeks, began = self.present.weeks, self.as_of - timedelta(days=7 * self.present.weeks)
        for past in reversed([p for p in self.history or [] if p.kind.is_deficit]):
            if (began - past.end).days >= 7 * APART_WEEKS:
                break
            weeks, began = weeks + past.weeks, past.start
        return weeks

    @property
    def cuts_last_12_months(self) -> int | None:
        """Cuts that ended in the last 365 days, the one under way not counted; ``None`` where unknown."""
        if self.history is None:
            return None
        return sum(p.kind.is_deficit and (self.as_of - p.end).days < 365 for p in self.history)

    @property
    def cut_history(self) -> History:
        """The cuts already made, as a planner asks for them."""
        return History(self.cuts_last_12_months, self.weeks_since_cut)

    def free_from(self, also_ended: Sequence[date] = ()) -> date | None:
        """The day from which neither the last cut nor their number forbids another; ``None`` without any cut.

        ``also_ended`` are the ends of cuts that are not in the history yet.
        """
        ends = [p.end for p in self.history or [] if p.kind.is_deficit] + list(also_ended)
        if not ends:
            return None
        # One that got nowhere is started again, smaller, after the weeks that its review told.
        is_again = not also_ended and self.last_cut is not None and self.last_cut.got_nowhere
        apart = APART_WEEKS if is_again else WEEKS_BETWEEN_CUTS
        free, most = ends[-1] + timedelta(days=7 * int(apart)), int(CUTS_A_YEAR_WARN)
        return free if len(ends) < most else max(free, ends[-most] + timedelta(days=365))

    def day(self, weeks: int) -> date:
        """The date this many weeks on."""
        return self.as_of + timedelta(days=7 * weeks)


HORIZON_WEEKS = int(
    constant(
        "decision_horizon", 26, unit="weeks", basis=Basis.JUDGEMENT,
        summary="Horizon over which the alternatives of a decision are compared",
    )
)  # fmt: skip
CONSIDER_ZONE = constant(
    "decision_consider_zone", 0.02, unit="1", basis=Basis.COMMON_PRACTICE,
    summary="Width of the zone under the upper end of the band in which a cut is considered: 15-17 % in men, 25-27 % "
    "in women by analogy",
)  # fmt: skip
LEANNESS_PRICE = constant(
    "decision_leanness_price", 0.0036, unit="kg lean/point2/week", basis=Basis.JUDGEMENT,
    summary="What a week costs for each squared point of body fat over the line of the person's motive, in lean "
    "tissue: set so that a cut of a trained man of 80 kg who is content becomes due at 16-17 %, as is common practice",
)  # fmt: skip
DIETING_PRICE = constant(
    "decision_dieting_price", 0.05, unit="kg lean/week", basis=Basis.JUDGEMENT,
    summary="What a week in a deficit costs in hunger and training quality, in lean tissue, beyond the lean tissue "
    "that the model says it costs",
)  # fmt: skip
TRIGGER_PROBABILITY = constant(
    "decision_trigger_probability", 2.0 / 3.0, unit="1", basis=Basis.JUDGEMENT,
    summary="Least probability, given the error of the reading, that body fat is over the line of the motive for a "
    "cut to start on it: two to one",
)  # fmt: skip
UNMEASURED_PROBABILITY = constant(
    "decision_unmeasured_probability", 0.8, unit="1", basis=Basis.JUDGEMENT,
    summary="Least probability, given the error of body fat from height and weight, that it is over the band for a cut "
    "to start on it where a month was left to measure it: four to one",
)  # fmt: skip
MEASURE_WEEKS = int(
    constant(
        "decision_measure_weeks", 4, unit="weeks", basis=Basis.JUDGEMENT,
        summary="Longest phase planned while a measurement of body fat is outstanding, on which the decision waits",
    )
)  # fmt: skip
BRIDGE_SHARE = constant(
    "decision_bridge_share", 8.0, unit="weeks", basis=Basis.JUDGEMENT,
    summary="Weeks of a cut for each week at maintenance after it; 1 week after a mini-cut",
)  # fmt: skip
BRIDGE_WEEKS_MOST = int(
    constant(
        "decision_bridge_most", 4, unit="weeks", basis=Basis.JUDGEMENT, summary="Longest bridge at maintenance"
    )
)  # fmt: skip
GAIN_WEEKS_LEAST = int(
    constant(
        "decision_gain_weeks_least", 4, unit="weeks", basis=Basis.JUDGEMENT,
        summary="Shortest gain worth starting, twice as long before the cut for an event: it is set anew after as many",
    )
)  # fmt: skip
EVENT_WEEKS_MOST = int(
    constant(
        "decision_event_weeks_most", 52, unit="weeks", basis=Basis.JUDGEMENT,
        summary="An event further away than this does not count yet",
    )
)  # fmt: skip
PATTERN_CYCLES = int(
    constant(
        "decision_pattern_cycles", 2, unit="cycles", basis=Basis.JUDGEMENT,
        summary="Fast gains, each followed by a cut, from which the pattern is warned of",
    )
)  # fmt: skip
PATTERN_YEARS = constant(
    "decision_pattern_years", 2.0, unit="y", basis=Basis.JUDGEMENT, summary="How far back the pattern is looked for"
)
SHORT_GAIN_WEEKS = constant(
    "decision_short_gain", 16.0, unit="weeks", basis=Basis.JUDGEMENT,
    summary="A gain of unknown rate that a cut ends within these weeks counts as fast",
)  # fmt: skip
