"""A season as a briefing: what it comes to, and then what is told of each phase, as of those of a plan."""

from collections.abc import Iterator
from datetime import timedelta

from steelyard.answers import BriefingReader, PhaseToTell, WeekToTell, brief
from steelyard.science.phase import PhaseKind

from ...schemas.seasons import IntakeStep, SeasonPhase, SeasonWeek
from ..wording import Words, tells_weight, told_once
from . import season_words
from .plan_briefing import messages, range_of, section_text, without_weight


def briefing(season: season_words.Answer, reader: BriefingReader, words: Words) -> bytes:
    """What ``reader`` is told of a season: headings, each with its lines, and an empty line between."""
    changes = season_words.changes_texts(words, season)
    head = [season_words.title(words, season), *changes, *season_words.limit_texts(words, season)]
    if changes:
        head.append(words.ranges(season.plan.totals.lean_gained_kg))
    cautions = [*messages(season.cautions), *messages(told_once(season.plan.guard_rails))]
    sections = brief(list(_phases(season)), cautions, reader)
    if not tells_weight(season.cautions):
        sections = without_weight(sections)
    parts = ["\n".join(head), *(section_text(section, words) for section in sections)]
    return ("\n\n".join(parts) + "\n").encode()


def _phases(season: season_words.Answer) -> Iterator[PhaseToTell]:
    for phase in season.plan.phases:
        weeks = [week for week in season.plan.weeks if phase.start_date <= week.start_date <= phase.end_date]
        change = phase.change
        yield PhaseToTell(
            kind=PhaseKind(phase.kind),
            weeks=[_week(phase, number, week) for number, week in enumerate(weeks, start=1)],
            weight_kg=range_of(change.weight_kg),
            fat_kg=range_of(change.fat_kg),
            lean_kg=range_of(change.lean_kg),
            carried_kg=range_of(change.carried_kg),
            ends_early_when=messages(phase.ends_early_when),
            guidance=messages(phase.guidance),
            reasons=messages(phase.reasons),
            cautions=messages(phase.cautions),
        )


def _week(phase: SeasonPhase, number: int, week: SeasonWeek) -> WeekToTell:
    eaten, at_end = _eaten(phase, week), week.at_end
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


def _eaten(phase: SeasonPhase, week: SeasonWeek) -> IntakeStep:
    """What is eaten in a week: the last step of its phase that has begun."""
    return max((step for step in phase.intakes if step.start_date <= week.start_date), key=lambda step: step.start_date)
