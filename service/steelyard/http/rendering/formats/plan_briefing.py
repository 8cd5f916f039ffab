"""A plan as a briefing: plain text to send or read aloud, for a member or a coach, in their language.

What a season's briefing shares with it is here as well.
"""

from collections.abc import Mapping, Sequence
from datetime import timedelta
from enum import StrEnum
from typing import Any, ClassVar

from steelyard.answers import (
    BriefingReader,
    DayToTell,
    PhaseToTell,
    Range,
    Section,
    WeekToTell,
    brief,
    no_plan_title,
    please_note,
)
from steelyard.science.phase import PhaseKind
from steelyard.science.register import Message

from ...schemas.explanation import GuardRail, Note
from ...schemas.plans import DayPlan, Phase, PlanResponse, PlanWeek
from ...schemas.seasons import IntakeStep, SeasonPhase, SeasonWeek
from ...schemas.shared_fields import Interval
from ...wire.negotiation import Format, Option
from ..wording import Words, tells_weight, told_once
from . import plan_words

BRIEFING = Option(
    name="briefing",
    default=BriefingReader.MEMBER,
    description="For whom a briefing (`text/plain`) is, and whether it goes through the weeks: `member` by default. "
    "Other answers do not depend on it.",
)


# What the scale should show, and what of it is water.
_OF_WEIGHT = frozenset(
    f"BRIEFING_{name}"
    for name in (
        "SCALE", "SCALE_WATER", "END_SCALE", "END_SCALE_WATER", "STEADY", "MOSTLY_WATER", "JUDGE_FROM", "CHECKS",
        "CHANGE", "SO_FAR",
    )
)  # fmt: skip


class BriefingFormat(Format, frozen=True, kw_only=True):
    """Plain text for a reader, in their language."""

    options: ClassVar[tuple[Option, ...]] = (BRIEFING,)
    has_words: ClassVar[bool] = True

    def _make(self, body: Any, answer: Any, chosen: Mapping[str, StrEnum], language: str, *, spares: bool) -> bytes:
        made: bytes = self.encode(answer, BriefingReader(chosen[BRIEFING.name]), Words(language, spares))
        return made


def briefing(plan: PlanResponse, reader: BriefingReader, words: Words) -> bytes:
    """What ``reader`` is told of a plan: headings, each with its lines, and an empty line between."""
    cautions = [*messages(plan.cautions), *messages(told_once(plan.guard_rails))]
    if plan.feasible:
        others = [message for size in plan.sizes if not size.is_planned for message in messages(size.reasons)]
        levers = [message for lever in plan.levers for message in messages(lever.reasons)]
        sections = brief([*map(_phase, plan.phases)], cautions, reader, others, levers)
        if not tells_weight(plan.cautions):
            sections = without_weight(sections)
        head = []
    else:
        sections = [please_note(cautions)]
        head = ["\n".join([*words.told([no_plan_title()]), *plan_words.infeasible_lines(words, plan)])]
    return ("\n\n".join([*head, *(section_text(section, words) for section in sections)]) + "\n").encode()


def without_weight(sections: list[Section]) -> list[Section]:
    """Sections without what the scale should show; one of which nothing is left goes."""
    said = ((section, [one for one in section.said if one.code not in _OF_WEIGHT]) for section in sections)
    return [section._replace(said=left) for section, left in said if left]


def section_text(section: Section, words: Words) -> str:
    """A heading and its lines."""
    return "\n".join(words.told((section.title, *section.said)))


def messages(notes: list[Note] | list[GuardRail]) -> list[Message]:
    """Notes or guard rails as messages."""
    return [Message(note.code, note.params) for note in notes]


def phase_to_tell(phase: Phase | SeasonPhase, weeks: Sequence[WeekToTell]) -> PhaseToTell:
    """A phase of an answer, as a briefing tells it."""
    change = phase.change
    return PhaseToTell(
        kind=PhaseKind(phase.kind),
        weeks=weeks,
        weight_kg=range_of(change.weight_kg),
        fat_kg=range_of(change.fat_kg),
        lean_kg=range_of(change.lean_kg),
        carried_kg=range_of(change.carried_kg),
        ends_early_when=messages(phase.ends_early_when),
        guidance=messages(phase.guidance),
        reasons=messages(phase.reasons),
        cautions=messages(phase.cautions),
    )


def _phase(phase: Phase) -> PhaseToTell:
    return phase_to_tell(phase, [_week(week) for week in phase.weeks])


def week_to_tell(week: PlanWeek | SeasonWeek, number: int, eaten: PlanWeek | IntakeStep) -> WeekToTell:
    """A week of an answer, in which so much is ``eaten`` a day, as a briefing tells it."""
    at_end = week.at_end
    return WeekToTell(
        number=number,
        start=week.start_date,
        last_day=week.start_date + timedelta(days=6),
        intake_kcal=eaten.intake_kcal,
        protein_g=eaten.protein_g,
        carbohydrate_g=eaten.carbohydrate_g,
        fat_g=eaten.fat_g,
        higher=None,
        energy_balance_kcal=week.energy_balance_kcal,
        weight_kg=range_of(at_end.weight_kg),
        fat_kg=at_end.fat_kg.mean,
        lean_kg=at_end.lean_kg.mean,
        carried_kg=at_end.carried_kg.mean,
    )


def _week(week: PlanWeek) -> WeekToTell:
    higher = None
    if week.day_kinds:
        more, less = week.day_kinds
        higher = (more.days_per_week, more.intake_kcal, less.intake_kcal)
    return week_to_tell(week, week.week, week)._replace(
        higher=higher,
        days=[_day(day) for day in week.by_day],
        meal_g=max((max(day.meals_protein_g) for day in week.by_day), default=0),
    )


def _day(day: DayPlan) -> DayToTell:
    return DayToTell(
        weekday=day.date.isoweekday(),
        intake_kcal=day.intake_kcal,
        alcohol_g=day.alcohol_g,
        has_training=day.training_minutes > 0,
        is_flexible=day.flexible is not None,
    )


def range_of(of: Interval) -> Range:
    """An interval as briefings have it."""
    return Range(of.mean, of.lower, of.upper)
