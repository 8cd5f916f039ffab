"""The trade of a decision: what cutting costs against what not cutting costs, in kilograms of lean tissue.

An alternative is scored over one horizon as the lean tissue it gains, less a price for each week of dieting and a
price for body fat over the line at which the person's motive begins. The price grows with the square of the points
over the line, so that a little over it hardly counts and much over it always does. From it follows the body fat at
which a cut becomes due: where a usual mini-cut scores as high as the better of gaining and holding.
"""

from collections.abc import Sequence
from functools import cache
from typing import NamedTuple

from .. import rails
from ..body import BodyModel, BodyState, crossing, current_maintenance_kcal, start_body, walk
from ..member import Member
from ..phase import (
    DEFAULT_WEEKS,
    GAIN_RESET_WEEKS,
    LEAST_DEFICIT,
    DeficitAim,
    DeficitPhase,
    History,
    as_diet,
    plan_surplus,
    usual_deficit,
    with_usual_diet,
)
from ..rails import PROTEIN_DEFAULT_DEFICIT, PROTEIN_DEFAULT_GAIN, CarbohydratePreference, split_for
from ..register import Basis, Kind, equation
from .terms import CONSIDER_ZONE, DIETING_PRICE, HORIZON_WEEKS, LEANNESS_PRICE, Feeling, Goal, Question

_BALANCED = CarbohydratePreference.BALANCED
# A cut is looked for this far over the line, first near it; to a tenth of a point.
_SEARCH_WIDTHS, _SEARCH_STEP = (0.04, 0.20), 0.001


class Lines(NamedTuple):
    """Body-fat fractions that the motive sets: where fat begins to count, and where a cut leads."""

    counts_from: float
    target: float


def motive(question: Question) -> Feeling:
    """How much leanness is wanted: the feeling, and at least the wish to be leaner where that is the goal."""
    if question.goal is Goal.LEANNESS and question.feeling is Feeling.CONTENT:
        return Feeling.WOULD_LIKE_LEANER
    return question.feeling


@equation(
    "decision_lines",
    summary="Body fat from which fat counts, and to which a cut leads, by motive",
    formula=(
        f"content: from {100 * CONSIDER_ZONE:g} points under the band's upper end (its middle at least) to the middle; "
        "would like leaner: from the middle to a quarter up the band; unhappy: from a quarter up to the lower end"
    ),
    kind=Kind.RULE,
    basis=Basis.COMMON_PRACTICE,
)
def lines_of(wanted: Feeling, lower: float, upper: float) -> Lines:
    """The lines of a motive in a band of body-fat fractions."""
    middle, quarter = round(0.5 * (lower + upper), 6), round(0.75 * lower + 0.25 * upper, 6)
    if wanted is Feeling.UNHAPPY:
        return Lines(quarter, lower)
    if wanted is Feeling.WOULD_LIKE_LEANER:
        return Lines(middle, quarter)
    return Lines(max(round(upper - CONSIDER_ZONE, 6), middle), middle)


class Score(NamedTuple):
    """A score and its parts [kg of lean tissue]."""

    lean_kg: float
    dieting_price_kg: float
    leanness_price_kg: float

    @property
    def total_kg(self) -> float:
        """Lean tissue gained, less both prices."""
        return self.lean_kg - self.dieting_price_kg - self.leanness_price_kg


@equation(
    "decision_score",
    summary="Score of an alternative over the common horizon",
    formula=(
        f"lean tissue gained - {DIETING_PRICE:g} kg x weeks of dieting - {LEANNESS_PRICE:g} kg x sum over the "
        f"{HORIZON_WEEKS} weeks of (points of body fat over the line of the motive) squared"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
)
def score(states: Sequence[BodyState], weeks_dieting: int, counts_from: float | None) -> Score:
    """The score of weekly states (the first is the start). ``counts_from`` None leaves leanness out."""
    over = 0.0
    if counts_from is not None:
        for state in states[1:]:
            over += max(0.0, 100.0 * (float(state.fat_kg / state.weight_kg) - counts_from)) ** 2
    lean = float(states[-1].lean_kg - states[0].lean_kg)
    return Score(lean, DIETING_PRICE * weeks_dieting, LEANNESS_PRICE * over)


@equation(
    "decision_due",
    summary="Body fat at which a cut becomes due",
    formula=(
        f"least body fat over the line at which a mini-cut of {DEFAULT_WEEKS} weeks, maintenance and what follows "
        "score as high as gaining or holding, all else equal"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
)
def due_at(question: Question, counts_from: float) -> float | None:
    """The body-fat fraction from which a cut is the better trade; None where it is not within 20 points of the line.

    Found on bodies of the same weight and maintenance, so that it does not move with the body fat it is compared to.
    """

    if question.grows:
        # Fitted once, on the line: it hardly moves with body fat, and asking for it spares the search for it.
        line = _course_at(question, counts_from)
        fitted = plan_surplus(
            line.member.subject, line.model, line.start, HORIZON_WEEKS, question.surplus_kcal, _BALANCED
        )
        question = question._replace(surplus_kcal=fitted.surplus_kcal)

    @cache  # an end of one search is asked for again, by itself and as an end of the next
    def advantage(fraction: float) -> float:
        return _advantage_kg(question, fraction, counts_from)

    low = counts_from
    for width in _SEARCH_WIDTHS:
        high = min(counts_from + width, 0.60)
        found = crossing(advantage, low, high, _SEARCH_STEP)
        if found < high or advantage(high) >= 0.0:
            return found
        low = high
    return None


def _course_at(question: Question, fraction: float) -> "UsualCourse":
    """The course of the same person with another body fat."""
    return UsualCourse(question.member.with_body_fat(fraction), question.surplus_kcal, question.cut_history)


def _advantage_kg(question: Question, fraction: float, counts_from: float) -> float:
    """By how much a usual mini-cut beats the better of gaining and holding, for a body of this body fat."""
    course = _course_at(question, fraction)
    start = (course.start,)
    kept = score((*start, *course.hold(course.start, HORIZON_WEEKS)), 0, counts_from).total_kg
    if question.grows:
        kept = max(kept, score((*start, *course.gain(course.start, HORIZON_WEEKS)), 0, counts_from).total_kg)
    cut = course.cut(DEFAULT_WEEKS)
    held = [*cut, *course.hold(cut[-1], HORIZON_WEEKS - DEFAULT_WEEKS)]
    best = score((*start, *held), DEFAULT_WEEKS, counts_from).total_kg
    if question.grows:
        bridged = held[: DEFAULT_WEEKS + 1]
        grown = [*bridged, *course.gain(bridged[-1], HORIZON_WEEKS - len(bridged))]
        best = max(best, score((*start, *grown), DEFAULT_WEEKS, counts_from).total_kg)
    return best - kept


class UsualCourse:
    """Weekly states of a member through phases of usual size, without intervals."""

    def __init__(self, member: Member, surplus_kcal: float | None = None, history: History | None = None) -> None:
        self.member, self.surplus_kcal, self.history = member, surplus_kcal, history or History()
        self.body = with_usual_diet(member.body, member.subject, _BALANCED)
        self.model: BodyModel
        self.model, self.start = start_body(self.body)

    @classmethod
    def of(cls, question: Question) -> "UsualCourse":
        """The course of the member as they are."""
        return cls(question.member, question.surplus_kcal, question.cut_history)

    def hold(self, state: BodyState, weeks: int) -> list[BodyState]:
        """States at the ends of weeks at maintenance."""
        states = [state]
        while len(states) <= weeks:
            # Weekly at first, while what a deficit left behind fades.
            n = 1 if len(states) <= GAIN_RESET_WEEKS else min(GAIN_RESET_WEEKS, weeks + 1 - len(states))
            maintenance = float(current_maintenance_kcal(self.model, states[-1]))
            subject = self.member.subject
            macros = split_for(subject, maintenance, PROTEIN_DEFAULT_GAIN, _BALANCED)
            states += walk(self.model, states[-1], as_diet(macros, subject.protein_kg), (7.0,) * n)
        return states[1:]

    def gain(self, state: BodyState, weeks: int) -> list[BodyState]:
        """States at the ends of weeks of a gain of usual size; of a hold where no gain is inside the rails."""
        planned = plan_surplus(self.member.subject, self.model, state, weeks, self.surplus_kcal, _BALANCED)
        return planned.states or self.hold(state, weeks)

    def cut(self, weeks: int) -> list[BodyState]:
        """States at the ends of weeks of a mini-cut from the start."""
        subject = self.member.subject
        strictest = rails.deficit_limits(subject, weeks)[0].deficit_kcal
        usual = usual_deficit(subject, self.history, kept=self.body.kept)
        deficit = min(usual.deficit_kcal, max(LEAST_DEFICIT, strictest))
        phase = DeficitPhase(subject, self.body, DeficitAim(weeks=weeks), PROTEIN_DEFAULT_DEFICIT)
        return phase.likely(deficit, weeks)
