"""The facts of a decision, built once: what the rails say, the lines, the alternatives, the event."""

from collections.abc import Sequence
from typing import NamedTuple

from .. import rails
from ..body import BASELINE_CARBOHYDRATE_SHARE, BodyState, Diet, walk
from ..measures import FatRange, healthy_range
from ..phase import DEFAULT_WEEKS, DeficitKind, PhaseKind
from ..rails import PROTEIN_DEFAULT_GAIN, RailAction, Refused
from .alternatives import LEAST_CEILING, Alternative, Alternatives
from .event import EventAhead, event_of
from .pattern import Pattern, pattern_of, slow_surplus_kcal
from .terms import GAIN_WEEKS_LEAST, HORIZON_WEEKS, TRIGGER_PROBABILITY, Feeling, Goal, Question
from .trade import Lines, UsualCourse, due_at, lines_of, motive


class LineReading(NamedTuple):
    """What the body-fat reading can carry. ``margin`` is how far it is over the due line, where there is one."""

    is_good_enough: bool
    probability_over_line: float
    margin: float | None
    probability_other_side: float | None


class Leanness(NamedTuple):
    """Everything about body fat; absent where none may be spoken of."""

    lines: Lines
    due: float | None
    other_due: float | None  # for someone content; for those who are, for someone who would like to be leaner
    due_weeks: int | None
    healthy: FatRange
    reading: LineReading


class Facts(NamedTuple):
    """What the rules ask about. The question's surplus is that of a slow gain where the pattern calls for one.

    ``warnings`` and ``refused``: what the rails say of a deficit. ``gain`` runs until a cut becomes due; ``cuts``: a
    mini-cut and, where that does not reach its target, a longer one. ``event`` is None where there is none near enough.
    """

    question: Question
    warnings: list[RailAction]
    refused: Refused | None
    pattern: Pattern | None
    leanness: Leanness
    make: Alternatives
    gain: Alternative
    hold: Alternative
    cuts: tuple[Alternative, ...]
    event: EventAhead | None

    @property
    def is_event_far(self) -> bool:
        """Whether there is an event, but too far away to count yet."""
        return self.question.event is not None and self.event is None

    @property
    def is_due(self) -> bool:
        """Whether body fat is at or over the due line."""
        due = self.leanness.due
        return due is not None and self.question.fat_fraction >= due

    @property
    def is_underweight(self) -> bool:
        """Whether a rail refuses a deficit for want of mass, and a gain is open."""
        return self.is_refused_by(rails.BMI, rails.BODY_FAT) and self.gain.closed is None

    @property
    def is_near_underweight(self) -> bool:
        """Whether a deficit would be this near to underweight without a goal that calls for one: feelings do not."""
        q = self.question
        return q.subject.bmi < rails.BMI_WARN and q.goal in (Goal.MUSCLE, Goal.HOLD)

    def is_refused_by(self, *rules: str) -> bool:
        """Whether one of these rules refuses a deficit."""
        return self.refused is not None and not self.refused.ids.isdisjoint(rules)


def facts_of(question: Question, warnings: list[RailAction], refused: Refused | None) -> Facts:
    """Everything that the rules ask about a member of whose body fat may be spoken."""
    pattern = pattern_of(question)
    q = question if pattern is None else question._replace(surplus_kcal=slow_surplus_kcal(question.member))
    wanted = motive(q)
    other = Feeling.WOULD_LIKE_LEANER if wanted is Feeling.CONTENT else Feeling.CONTENT
    lines = lines_of(wanted, *q.band)
    due = _told_due(q, lines)
    make = Alternatives(q, lines, None if refused is None else refused.action.message)
    is_ceiling = due is not None and due >= LEAST_CEILING  # no line lies over the most that a plan takes
    if due is not None and q.fat_fraction >= due and refused is not None and rails.BMI in refused.ids:
        is_ceiling = False  # who is underweight gains, whatever the share of fat
    gain = make.gain(ceiling=due if is_ceiling else None)
    gain = make.as_told(gain.shortened(_gain_weeks(q, gain, due)))
    hold = make.hold()
    mini = make.cut(DeficitKind.MINI_CUT)
    is_enough = mini.reaches_target and not mini.closed
    leanness = Leanness(
        lines=lines,
        due=due,
        other_due=_told_due(q, lines_of(other, *q.band)),
        due_weeks=_weeks_to_due(q, due, present_path(q, hold if gain.closed else gain)),
        healthy=healthy_range(q.subject.sex, q.subject.age_years),
        reading=_reading(q, lines, due),
    )
    return Facts(
        question=q,
        warnings=warnings,
        refused=refused,
        pattern=pattern,
        leanness=leanness,
        make=make,
        gain=gain,
        hold=hold,
        cuts=(mini,) if is_enough else (mini, make.cut(DeficitKind.CUT)),
        event=event_of(q, lines),
    )


def _told_due(q: Question, lines: Lines) -> float | None:
    """Where a cut becomes due, to the tenth of a point that is told: there a gain ends, and between the two there is no
    body that may do neither."""
    due = due_at(q, lines.counts_from)
    return None if due is None else round(due, 3)


def _gain_weeks(q: Question, gain: Alternative, due: float | None) -> int:
    """Weeks that a gain is planned for: until a cut becomes due."""
    if due is not None and q.fat_fraction >= due:
        return DEFAULT_WEEKS
    until_due = None if gain.closed else _weeks_to_due(q, due, gain.path.states)
    return max(GAIN_WEEKS_LEAST, until_due or HORIZON_WEEKS)


def _weeks_to_due(q: Question, due: float | None, states: Sequence[BodyState]) -> int | None:
    """Weeks until body fat reaches the due line on a weekly path; None where it is there already, or never is."""
    if due is None or q.fat_fraction >= due:
        return None
    return next((w for w, s in enumerate(states) if float(s.fat_kg / s.weight_kg) >= due), None)


def present_path(q: Question, usual: Alternative) -> Sequence[BodyState]:
    """The weekly path at the present rate: the intake eaten now in a gain under way, else that of ``usual``."""
    intake = q.body.usual_intake_kcal
    if q.present is None or q.present.kind is not PhaseKind.GAIN or intake is None:
        return usual.path.states
    course = UsualCourse.of(q)
    diet = Diet(intake, BASELINE_CARBOHYDRATE_SHARE * intake, PROTEIN_DEFAULT_GAIN)
    return [course.start, *walk(course.model, course.start, diet, (7.0,) * HORIZON_WEEKS)]


def _reading(q: Question, lines: Lines, due: float | None) -> LineReading:
    """What the reading of body fat can carry."""
    probability = q.fat.probability_over(lines.counts_from)
    is_good = q.is_fat_read and probability >= TRIGGER_PROBABILITY
    if due is None:
        return LineReading(is_good, probability, None, None)
    margin, over = q.fat_fraction - due, q.fat.probability_over(due)
    return LineReading(is_good, probability, margin, 1.0 - over if margin >= 0 else over)
