"""Which phase now, and why?"""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import NamedTuple

from steelyard.science import rails
from steelyard.science.decision import (
    HORIZON_WEEKS,
    Alternative,
    Decision,
    Feeling,
    Fragment,
    Goal,
    Leanness,
    LineReading,
    Lines,
    OngoingPhase,
    Pattern,
    Question,
    Score,
    Situation,
    decide,
    pattern_notes,
    refusal_of,
    speaks_of_leanness,
)
from steelyard.science.log import LogMaintenance, tail_of
from steelyard.science.measures import FatRange
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Estimate
from steelyard.science.person import Sex
from steelyard.science.phase import MOST_CUTS, Band, FinishedPhase, History, PhaseKind, usual_band
from steelyard.science.rails import ADULT_YEARS, Cleared, with_ratio, without_echoes
from steelyard.science.register import FAT_FROM_BMI, Contradiction, Message, say

from .answered import Answered, answering
from .bands import check_band
from .dates import check_dates, check_not_before_state
from .member import beside_log, counted_on, known_long_ago, member_of
from .state import known_day, state_of

# Cuts longer ago change no plan; no planner is asked with more.
_MOST_WEEKS_SINCE = 520


class DecisionAsked(NamedTuple):
    """Whose decision, on which day, and what they want. ``history`` is oldest first, None where it is not known.

    ``band`` is the body fat to stay in, the usual one when None; ``event_fat_fraction`` is wanted by ``event``.
    """

    told: Told
    as_of: date
    goal: Goal
    feeling: Feeling
    band: Band | None = None
    event: date | None = None
    event_fat_fraction: float | None = None
    present: OngoingPhase | None = None
    history: Sequence[FinishedPhase] | None = None


class WayOn(NamedTuple):
    """One way on: what to ask a planner for, and what it comes to over those weeks; or why it is ``closed``.

    What is said of body fat (``fat_kg``, ``end_fat_fraction``, ``weeks_above_band``) is None where none may be.
    """

    kind: PhaseKind
    weeks: int
    closed: Message | None = None
    told: Cleared[Fragment] | None = None
    weeks_asked: int = 0
    lean_kg: Estimate | None = None
    fat_kg: Estimate | None = None
    end_fat_fraction: Estimate | None = None
    weeks_dieting: int = 0
    weeks_above_band: int | None = None
    score: Score | None = None

    @property
    def fragment(self) -> Fragment | None:
        """What to ask a planner for, which has passed the gate."""
        return None if self.told is None else self.told.value


class LeannessFound(NamedTuple):
    """Body fat now, its band and what that rests on, the lines of the motive, and when a cut becomes due.

    ``healthy`` is None for those to whom the ranges of adults do not apply.
    """

    fat: Estimate
    band: Band
    band_basis: str
    lines: Lines
    due: float | None
    due_date: date | None
    healthy: FatRange | None
    reading: LineReading


class PhaseDecided(NamedTuple):
    """The next phase and the other ways on, best score first, over ``horizon_weeks``.

    ``by_trade``: the score decided, not a rule. ``leanness`` is None where nothing may be said of it; ``cut_history``
    where the history is not known.
    """

    situation: Situation
    by_trade: bool
    recommended: WayOn
    ways: list[WayOn]
    horizon_weeks: int
    leanness: LeannessFound | None
    pattern: Pattern | None
    pattern_notes: list[Message]
    what_would_change: list[Message]
    maintenance: Estimate
    learnt: LogMaintenance | None
    cut_history: History | None


@answering
def decide_phase(asked: DecisionAsked) -> Answered[PhaseDecided]:
    """Decide which phase comes next. Raises ``OutOfDomain``, ``Contradiction``, ``Refused`` for a target too low."""
    member = member_of(asked.told, tail_of)
    _check(asked)
    may_speak = speaks_of_leanness(refusal_of(member.subject)[1])
    if may_speak:
        _check_targets(asked, member)
    band = asked.band if may_speak and asked.band is not None else usual_band(member.person.sex)
    question = Question(
        member=member,
        as_of=asked.as_of,
        band=band,
        goal=asked.goal,
        feeling=asked.feeling,
        event=asked.event,
        event_fat_fraction=asked.event_fat_fraction,
        present=asked.present,
        history=asked.history,
    )
    found = decide(question)
    reasons = [*found.reasons, *(counted_on(member) if may_speak else [])]
    cautions = [*member.cautions, *beside_log(member, asked.as_of), *known_long_ago(member, asked.as_of)]
    if not may_speak:
        cautions = [caution for caution in cautions if caution != FAT_FROM_BMI]
        if asked.band is not None or asked.event_fat_fraction is not None:
            reasons.append(say("DECISION_CHOICES_LEFT_OUT"))
    return Answered(
        _decided(question, found, is_band_chosen=asked.band is not None),
        reasons=reasons,
        cautions=cautions,
        actions=with_ratio(member.subject, without_echoes(found.actions)),
        state=state_of(member, known_day(member, asked.as_of)),
    )


# --- what cannot be asked -------------------------------------------------------------------------------------


def _check(asked: DecisionAsked) -> None:
    check_dates({"as_of_date": asked.as_of, "event_date": asked.event})
    check_not_before_state(asked.told, asked.as_of, "as_of_date")
    check_band(asked.band, "band")
    if asked.event is not None and asked.event <= asked.as_of:
        detail = f"The event is not after the day of the decision, {asked.as_of}."
        raise Contradiction("EVENT_NOT_AHEAD", "event_date", detail)
    if asked.event is None:
        if asked.goal is Goal.EVENT:
            raise Contradiction("EVENT_DATE_MISSING", "event_date", "The goal is an event: say when it is.")
        if asked.event_fat_fraction is not None:
            raise Contradiction("EVENT_DATE_MISSING", "event_fat_fraction", "Set `event_date` as well.")
    _check_history(asked)


def _check_history(asked: DecisionAsked) -> None:
    before: FinishedPhase | None = None
    for i, phase in enumerate(asked.history or []):
        name = f"phase_history[{i}].start_date"
        check_dates({name: phase.start})
        if phase.end > asked.as_of:
            detail = f"The phase ends on {phase.end}, after the day of the decision: send it as `present_phase`."
            raise Contradiction("HISTORY_IN_FUTURE", name, detail)
        if before is not None and phase.start < before.start:
            raise Contradiction("HISTORY_OUT_OF_ORDER", name, "List the phases oldest first.")
        if before is not None and phase.start < before.end:
            raise Contradiction("HISTORY_OVERLAPS", name, f"The phase before it runs until {before.end}.")
        before = phase
    if asked.present is not None and before is not None:
        began = asked.as_of - timedelta(days=7 * asked.present.weeks)
        if began < before.end:
            detail = f"With these weeks it began on {began}, before the last past phase ended on {before.end}."
            raise Contradiction("HISTORY_OVERLAPS", "present_phase.weeks_done", detail)


def _check_targets(asked: DecisionAsked, member: Member) -> None:
    """Refuse body-fat targets under the least that is planned."""
    if asked.band is not None:
        rails.refuse_target(member.subject.sex, asked.band.lower, "band.lower_fat_fraction")
    if asked.event_fat_fraction is not None:
        rails.refuse_target(member.subject.sex, asked.event_fat_fraction, "event_fat_fraction")


# --- what is answered -----------------------------------------------------------------------------------------


def _decided(question: Question, found: Decision, *, is_band_chosen: bool) -> PhaseDecided:
    ways = [_way(one, question.band.upper, speaks=found.leanness is not None) for one in found.alternatives]
    chosen = next(way for one, way in zip(found.alternatives, ways, strict=True) if one is found.recommended)
    return PhaseDecided(
        situation=found.situation,
        by_trade=found.by_trade,
        recommended=chosen,
        ways=ways,
        horizon_weeks=HORIZON_WEEKS,
        leanness=None if found.leanness is None else _leanness(question, found.leanness, is_band_chosen),
        pattern=found.pattern,
        pattern_notes=[] if found.pattern is None else pattern_notes(found.pattern),
        what_would_change=found.changes,
        maintenance=question.member.maintenance,
        learnt=question.member.learnt,
        cut_history=None if question.history is None else _known_cuts(question.cut_history),
    )


def _way(one: Alternative, band_upper: float, *, speaks: bool) -> WayOn:
    if one.closed is not None or one.score is None:
        return WayOn(one.kind, one.weeks, closed=one.closed)
    return WayOn(
        kind=one.kind,
        weeks=one.weeks,
        told=one.told,
        weeks_asked=one.weeks_asked,
        lean_kg=one.change("lean_kg"),
        fat_kg=one.change("fat_kg") if speaks else None,
        end_fat_fraction=one.end_fat_fraction() if speaks else None,
        weeks_dieting=one.weeks_dieting,
        weeks_above_band=one.weeks_above(band_upper) if speaks else None,
        score=one.score,
    )


def _leanness(question: Question, found: Leanness, is_band_chosen: bool) -> LeannessFound:
    person = question.member.person
    usual = "common practice" if person.sex is Sex.MALE else "judgement"
    return LeannessFound(
        fat=question.fat,
        band=question.band,
        band_basis="chosen" if is_band_chosen else usual,
        lines=found.lines,
        due=found.due,
        due_date=None if found.due_weeks is None else question.day(found.due_weeks),
        healthy=found.healthy if person.age_years >= ADULT_YEARS else None,
        reading=found.reading,
    )


def _known_cuts(history: History) -> History:
    """The history of cuts as a planner is asked with it."""
    cuts, since = history.cuts_last_12_months, history.weeks_since_last_cut
    return History(
        None if cuts is None else min(MOST_CUTS, cuts), None if since is None else min(_MOST_WEEKS_SINCE, since)
    )
