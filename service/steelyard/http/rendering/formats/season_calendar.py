"""A season as a calendar (RFC 5545): an all-day event for each phase, and for each change of intake."""

from ...schemas.seasons import SeasonQuestion
from ..wording import Words, tells_weight
from . import plan_words, season_words
from .calendar_document import CalendarDocument


def calendar(request: SeasonQuestion, season: season_words.Answer, words: Words) -> bytes:
    """The season's calendar."""
    made = CalendarDocument(season.fingerprint, request.start_date, words.language)
    for i, phase in enumerate(season.plan.phases, start=1):
        expected = [
            words.say("document-expected-tissue", **plan_words.changes(words, phase.change)),
            words.ranges(phase.change.weight_kg),
        ]
        lines = [
            *(expected if tells_weight(season.cautions) else []),
            *words.texts(phase.reasons),
            *words.texts(phase.ends_early_when),
            *words.texts(phase.guidance),
            "",
            *season_words.cautions(words, season, [phase]),
        ]
        title = words.say("picture-phase", kind=phase.kind, weeks=phase.weeks)
        made.add(f"phase {i}", phase.start_date, phase.end_date, title, lines)
    for i, (phase, step) in enumerate(season_words.steps(season), start=1):
        eaten = plan_words.eaten(words, step)
        cautions = season_words.cautions(words, season, [phase])
        lines = [words.say("document-eaten-for", **eaten, fibre=str(step.fibre_g), weeks=step.weeks), "", *cautions]
        title = words.say("document-intake-from-today", intake=eaten["intake"])
        made.add(f"intake {i}", step.start_date, step.start_date, title, lines)
    return made.encode()
