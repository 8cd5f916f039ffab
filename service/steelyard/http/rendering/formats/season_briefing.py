"""A season as a briefing: what it comes to, and then what is told of each phase, as of those of a plan."""

from collections.abc import Iterator

from steelyard.answers import BriefingReader, PhaseToTell, brief

from ...schemas.seasons import IntakeStep, SeasonPhase, SeasonWeek
from ..wording import Words, tells_weight, told_once
from . import season_words
from .plan_briefing import messages, phase_to_tell, section_text, week_to_tell, without_weight


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
        yield phase_to_tell(
            phase, [week_to_tell(week, number, _eaten(phase, week)) for number, week in enumerate(weeks, start=1)]
        )


def _eaten(phase: SeasonPhase, week: SeasonWeek) -> IntakeStep:
    """What is eaten in a week: the last step of its phase that has begun."""
    return max((step for step in phase.intakes if step.start_date <= week.start_date), key=lambda step: step.start_date)
