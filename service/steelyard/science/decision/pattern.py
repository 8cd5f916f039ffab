"""The pattern of repeated fast gain and cut, and what it cost against a slow gain through the same weeks."""

import math
from typing import NamedTuple

from .. import rails
from ..body import (
    BASELINE_CARBOHYDRATE_SHARE,
    BodyModel,
    BodyState,
    Diet,
    Forecast,
    Stretch,
    UncertaintySource,
    advance,
    crossing,
    current_maintenance_kcal,
    forecast,
    start_body,
)
from ..member import Member
from ..numbers import Estimate
from ..phase import DEFAULT_WEEKS, SLOW_GAIN_SHARE, FinishedPhase, PhaseKind, as_diet, gain_weeks, usual_surplus
from ..rails import PROTEIN_DEFAULT_DEFICIT, PROTEIN_DEFAULT_GAIN, CarbohydratePreference
from ..register import Basis, Kind, equation, traced
from .terms import PATTERN_CYCLES, PATTERN_YEARS, SHORT_GAIN_WEEKS, Question
from .trade import UsualCourse

# Energy enters both courses alike; these do not.
_SOURCES = frozenset({UncertaintySource.BODY_FAT, UncertaintySource.PARTITION, UncertaintySource.TRAINING_RESPONSE})
_MOST_OFFSET = 0.6  # of maintenance, up or down: no one eats further from it for weeks


class Pattern(NamedTuple):
    """Repeated fast gain and cut, against a slow gain on the same body through the same weeks.

    ``lean_cost_kg`` and ``fat_cost_kg``: lean tissue that the slow gain gains more, fat that it gains less.
    ``weeks_lost``: how much sooner the slow gain has the lean tissue that the cycling ended with; None where it never
    has. ``slow_weeks_dieting``: weeks of usual mini-cuts that bring the slow gain to the same fat. ``assumed`` phases
    had no figures and count at their usual size.
    """

    cycles: int
    weeks: int
    weeks_dieting: int
    lean_cost_kg: Estimate
    fat_cost_kg: Estimate
    weeks_lost: int | None
    slow_weeks_dieting: int
    assumed: int


def slow_surplus_kcal(member: Member) -> float:
    """The surplus of a slow gain: half the ceiling on the rate, at least 50 kcal/d."""
    subject = member.subject
    model, state = start_body(member.body)
    wanted = SLOW_GAIN_SHARE * rails.GAIN_RATE_LIMIT[subject.training_status]
    weeks = 12

    def excess(kcal: float) -> float:
        end = gain_weeks(subject, model, state, kcal, weeks, CarbohydratePreference.BALANCED)[1]
        return float((end.tissue_kg - state.tissue_kg) / weeks / state.weight_kg) - wanted

    return max(50.0, round(crossing(excess, 0.0, usual_surplus(subject)), -1))


def is_fast(gain: FinishedPhase, question: Question) -> bool:
    """Whether a gain went over the ceiling on its rate; where weights are missing, whether it was short."""
    if gain.start_weight_kg is None or gain.end_weight_kg is None:
        return gain.weeks < SHORT_GAIN_WEEKS
    rate = (gain.end_weight_kg - gain.start_weight_kg) / gain.weeks / gain.start_weight_kg
    return rate > rails.GAIN_RATE_LIMIT[question.subject.training_status]


def cycling(question: Question) -> list[FinishedPhase]:
    """The phases from the first fast gain that a cut followed to the last such cut; empty where there are too few."""
    history = [p for p in question.history or [] if (question.as_of - p.end).days <= PATTERN_YEARS * 365.25]
    first: int | None = None
    last, cycles = 0, 0
    open_gain: int | None = None
    for i, phase in enumerate(history):
        if phase.kind is PhaseKind.GAIN:
            open_gain = i if is_fast(phase, question) else None
        elif phase.kind.is_deficit and open_gain is not None:
            first = open_gain if first is None else first
            last, cycles, open_gain = i, cycles + 1, None
    return history[first : last + 1] if first is not None and cycles >= PATTERN_CYCLES else []


@traced
@equation(
    "decision_pattern_cost",
    summary="What repeated fast gain and cut cost against a slow gain",
    formula=(
        "forecast of a slow gain (half the ceiling on the rate of gain) through the same weeks minus that of the "
        "phases as they were, both from the present body; each past phase eats what changes its weight as recorded"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="an estimate: today's body stands for that of the time",
)
def pattern_of(question: Question) -> Pattern | None:
    """The pattern of a history and its cost; None where there is none."""
    phases = cycling(question)
    if not phases:
        return None
    member = question.member.eating_maintenance()
    subject, body = member.subject, member.body
    model, state = start_body(body)
    past: list[Stretch] = []
    assumed = 0
    for phase in phases:
        diet, is_assumed = eaten(phase, question, model, state)
        assumed += is_assumed
        past.append(Stretch(diet, (7.0,) * phase.weeks))
        state = advance(model, state, diet, 7.0 * phase.weeks)
    weeks = sum(p.weeks for p in phases)
    surplus = slow_surplus_kcal(member)
    rows, _ = gain_weeks(subject, *start_body(body), surplus, weeks, CarbohydratePreference.BALANCED)
    slow = forecast(body, [Stretch(as_diet(r.intake, r.protein_kg), (7.0,)) for r in rows], sources=_SOURCES)
    cycled = forecast(body, past, sources=_SOURCES)
    reached = float(cycled.states[-1].lean_kg)
    had = next((w for w, s in enumerate(slow.states) if float(s.lean_kg) >= reached), None)
    return Pattern(
        cycles=sum(p.kind.is_deficit for p in phases),
        weeks=weeks,
        weeks_dieting=sum(p.weeks for p in phases if p.kind.is_deficit),
        lean_cost_kg=difference(slow, cycled, "lean_kg"),
        fat_cost_kg=difference(cycled, slow, "fat_kg"),
        weeks_lost=None if had is None else weeks - had,
        slow_weeks_dieting=_dieting_weeks(question, float(slow.states[-1].fat_kg - cycled.states[-1].fat_kg)),
        assumed=assumed,
    )


def _dieting_weeks(question: Question, fat_kg: float) -> int:
    """Weeks in which usual mini-cuts lose this much fat."""
    course = UsualCourse.of(question)
    lost = float(course.start.fat_kg - course.cut(DEFAULT_WEEKS)[-1].fat_kg) / DEFAULT_WEEKS
    return math.ceil(max(0.0, fat_kg) / max(lost, 0.05))


def eaten(phase: FinishedPhase, question: Question, model: BodyModel, state: BodyState) -> tuple[Diet, bool]:
    """The diet that changes the body as the phase did, and whether its size had to be assumed."""
    maintenance = float(current_maintenance_kcal(model, state))
    protein = PROTEIN_DEFAULT_DEFICIT if phase.kind.is_deficit else PROTEIN_DEFAULT_GAIN

    def diet(offset_kcal: float) -> Diet:
        intake = maintenance + offset_kcal
        return Diet(intake, BASELINE_CARBOHYDRATE_SHARE * intake, protein)

    def after(offset_kcal: float) -> BodyState:
        return advance(model, state, diet(offset_kcal), 7.0 * phase.weeks)

    most = _MOST_OFFSET * maintenance
    if phase.start_weight_kg is not None and phase.end_weight_kg is not None:
        # A heavier or lighter body of the time changed by the same share.
        share = phase.end_weight_kg / phase.start_weight_kg
        return diet(crossing(lambda kcal: float(after(kcal).weight_kg / state.weight_kg) - share, -most, most)), False
    if phase.start_fat_fraction is not None and phase.end_fat_fraction is not None:
        moved = phase.end_fat_fraction - phase.start_fat_fraction
        at = float(state.fat_kg / state.weight_kg)
        found = crossing(lambda kcal: _fat_fraction(after(kcal)) - at - moved, -most, most)
        return diet(found), False
    if phase.kind is PhaseKind.GAIN:
        return diet(usual_surplus(question.subject)), True
    if phase.kind.is_deficit:
        return diet(-min(rails.DEFAULT_DEFICIT, rails.DEFICIT_SHARE_LIMIT * maintenance)), True
    return diet(0.0), True


def _fat_fraction(state: BodyState) -> float:
    return float(state.fat_kg / state.weight_kg)


def difference(more: Forecast, less: Forecast, name: str) -> Estimate:
    """How much more of a mass one course gains [kg], with what the sources make of the difference."""

    def gained(states: list[BodyState]) -> float:
        return float(getattr(states[-1], name) - getattr(states[0], name))

    mean = gained(more.states) - gained(less.states)
    variance = 0.0
    for one, other in zip(more.moved, less.moved, strict=True):
        variance += (gained(one.states) - gained(other.states) - mean) ** 2
    return Estimate(mean, variance**0.5)
