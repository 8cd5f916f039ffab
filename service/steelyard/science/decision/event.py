"""An event in a decision: how long its cut takes, and how late it may start."""

from datetime import date
from typing import NamedTuple

from .. import rails
from ..body import BodyState
from ..phase import (
    LEAST_DEFICIT,
    LONG_CUT_WEEKS,
    MOST_WEEKS,
    SETTLING_WEEKS,
    DeficitAim,
    DeficitKind,
    DeficitPhase,
    subject_at,
    usual_deficit,
)
from ..rails import PROTEIN_DEFAULT_DEFICIT
from ..register import traced
from .terms import EVENT_WEEKS_MOST, Question
from .trade import Lines, UsualCourse


class EventAhead(NamedTuple):
    """An event that counts: whole weeks until it, the body fat wanted for it, and the weeks left for a cut."""

    day: date
    weeks: int
    target: float

    @property
    def room(self) -> int:
        """Weeks that a cut may run, once a week is left for its water to settle."""
        return self.weeks - SETTLING_WEEKS


class LatestStart(NamedTuple):
    """The latest week at which the cut for an event may start, and its weeks from there (0: none is needed)."""

    week: int
    cut_weeks: int


@traced
def event_of(question: Question, lines: Lines) -> EventAhead | None:
    """The event, where there is one near enough to count."""
    if question.event is None:
        return None
    weeks = (question.event - question.as_of).days // 7
    if weeks > EVENT_WEEKS_MOST:
        return None
    target = lines.target if question.event_fat_fraction is None else question.event_fat_fraction
    return EventAhead(question.event, weeks, target)


@traced
def latest_start(question: Question, event: EventAhead) -> LatestStart | None:
    """The latest start after a gain (a hold where none is wanted); None where even now is too late."""
    course = UsualCourse.of(question)
    move = course.gain if question.grows else course.hold
    states = [course.start, *move(course.start, max(1, event.weeks))]
    cut = _Cut(question, course, event)

    def found(week: int) -> LatestStart | None:
        needed = cut.weeks(states[week])
        return None if needed is None or week + needed > event.room else LatestStart(week, needed)

    # No cut at all where the body is still lean enough on the day.
    if float(states[event.weeks].fat_kg / states[event.weeks].weight_kg) <= event.target:
        return LatestStart(event.weeks, 0)
    low, best = 0, found(0)
    if best is None:
        return None
    high = max(1, event.room)
    while high - low > 1:
        middle = (low + high) // 2
        later = found(middle)
        if later is None:
            high = middle
        else:
            low, best = middle, later
    return best


class _Cut:
    """The weeks of a usual cut to the event's body fat, from any state."""

    def __init__(self, question: Question, course: UsualCourse, event: EventAhead) -> None:
        self.course, self.subject, self.history = course, question.member.subject, question.cut_history
        target = event.target
        self.mini = DeficitPhase(
            self.subject, course.body, DeficitAim(target_fat_fraction=target), PROTEIN_DEFAULT_DEFICIT
        )
        long = DeficitAim(kind=DeficitKind.CUT, target_fat_fraction=target)
        self.long = DeficitPhase(self.subject, course.body, long, PROTEIN_DEFAULT_DEFICIT)

    def weeks(self, state: BodyState) -> int | None:
        subject = subject_at(self.subject, self.course.model, state)
        for kind, most in ((self.mini, MOST_WEEKS), (self.long, LONG_CUT_WEEKS)):
            phase = kind.starting(state, subject)
            if phase.left(state) <= 0.0:
                return 0
            limit = rails.deficit_limits(subject, most)[0].deficit_kcal
            usual = usual_deficit(subject, self.history, kept=self.course.body.kept)
            deficit = min(usual.deficit_kcal, max(LEAST_DEFICIT, limit))
            weeks = phase.weeks_for_goal(deficit, most)
            if weeks is not None:
                return weeks
        return None
