"""A season as a calendar (RFC 5545): an all-day event for each phase, and for each change of intake."""

from ...schemas.seasons import SeasonQuestion
from . import plan_words, season_words
from .calendar_document import CalendarDocument


def calendar(request: SeasonQuestion, season: season_words.Answer) -> bytes:
    """The season's calendar."""
    made = CalendarDocument(season.fingerprint, request.start_date)
    general = season_words.cautions(season)
    for i, phase in enumerate(season.plan.phases, start=1):
        change = phase.change
        lines = [
            f"Expected: weight {plan_words.change_text(change.weight_kg)}, fat "
            f"{plan_words.change_text(change.fat_kg)}, lean {plan_words.change_text(change.lean_kg)} "
            f"({100 * change.weight_kg.coverage:.0f} % intervals).",
            *plan_words.texts(phase.reasons),
            *plan_words.texts(phase.ends_early_when),
            *plan_words.texts(phase.guidance),
            "",
            *general,
        ]
        title = f"{plan_words.phase_name(phase.kind)}, {plan_words.weeks_text(phase.weeks)}"
        made.add(f"phase {i}", phase.start_date, phase.end_date, title, lines)
    for i, (_, step) in enumerate(season_words.steps(season), start=1):
        lines = [f"{plan_words.eaten_text(step)}, for {plan_words.weeks_text(step.weeks)}.", "", *general]
        made.add(
            f"intake {i}", step.start_date, step.start_date, f"Intake from today: {step.intake_kcal:,} kcal", lines
        )
    return made.encode()
