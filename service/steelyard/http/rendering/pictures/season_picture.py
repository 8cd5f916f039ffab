"""The picture of a season, as planned under one strategy or found by a search: the answer is its headline."""

from ...schemas.seasons import OptimumResponse, SeasonPhase, SeasonPlan, SeasonQuestion, SeasonResponse
from ..formats import season_words
from ..wording import Words, tells_weight, told_once
from . import interval_rows
from .forecast_picture import Eaten, fat_panel, intake_panel, start_of, weight_panel
from .interval_rows import Group, Row
from .labels import Layer
from .palette import SHAPES, Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Shade, Span, after


def draw(_request: SeasonQuestion, season: SeasonResponse | OptimumResponse, look: Look) -> Drawing:
    """Weight against tissue, body fat against its band, intake against maintenance, and what the season changes."""
    words = look.words
    plan, begun = season.plan, season.start
    points = [week.at_end for week in plan.weeks]
    first = plan.phases[0]
    at_end = next(point for point in points if point.date >= first.end_date)
    start = start_of(first.start_date, at_end, first.change)
    shades = tuple(
        Shade(p.kind, words.say("phase-name", kind=p.kind), p.start_date, after(p.end_date)) for p in plan.phases
    )
    span = Span(start.date, after(points[-1].date), shades, look.width)
    eaten = [Eaten(week.start_date, after(week.at_end.date), week.intake_kcal) for week in plan.weeks]
    intake = intake_panel(look, span, eaten, begun.maintenance_kcal, points)
    said = [*_cautions(words, season), *_signs_to_stop(words, plan.phases)]
    if not tells_weight(season.cautions):
        title, lines = season_words.title(words, season), season_words.limit_texts(words, season)
        return sheet(look, Headline(title, lines, " ".join([f"{title}.", *lines])), [intake], said)
    weight = weight_panel(look, span, start, points)
    if words.spares:
        panels = [weight, intake]
    else:
        band = begun.band_lower_fat_fraction, begun.band_upper_fat_fraction
        fat = fat_panel(look, span, begun.body_fat_fraction, points, band)
        panels = [weight, fat, intake, _totals_panel(look, plan)]
    return sheet(look, _message(words, season, start.weight_kg), panels, said)


def _totals_panel(look: Look, plan: SeasonPlan) -> Layer:
    words, totals = look.words, plan.totals
    rows = [
        Row(words.say("picture-lean"), totals.lean_gained_kg, look.lean, SHAPES["lean"]),
        Row(words.say("picture-fat"), totals.fat_gained_kg, look.fat, SHAPES["fat"]),
    ]
    return interval_rows.panel(look, [Group("", rows)], title=words.say("picture-season-total"), samples=[])


def _cautions(words: Words, season: SeasonResponse | OptimumResponse) -> list[str]:
    """Every kind of caution once: what every phase says of itself would fill the picture."""
    notes = {note.code: note for phase in reversed(season.plan.phases) for note in reversed(phase.cautions)}
    said = words.texts([*season.cautions, *reversed(notes.values())])
    return list(dict.fromkeys([*said, *words.texts(told_once(season.plan.guard_rails))]))


def _signs_to_stop(words: Words, phases: list[SeasonPhase]) -> list[str]:
    """What ends phases of each kind early, said once."""
    first = {phase.kind: phase for phase in reversed(phases)}
    said = [
        words.say("picture-sign", kind=phase.kind, text=text)
        for phase in reversed(first.values())
        for text in words.texts(phase.ends_early_when)
    ]
    return list(dict.fromkeys(said))


def _message(words: Words, season: SeasonResponse | OptimumResponse, start_kg: float) -> Headline:
    plan, totals = season.plan, season.plan.totals
    first, last = plan.weeks[0], plan.weeks[-1].at_end
    title = season_words.title(words, season)
    lines = [
        *season_words.changes_texts(words, season),
        words.say(
            "picture-season-path",
            start_weight=words.number(start_kg, unit="kg"),
            start_date=str(first.start_date),
            weight=words.values(last.weight_kg, unit="kg"),
            end_date=str(last.date),
            now_percent=words.percent(season.start.body_fat_fraction),
            percent=words.percent(totals.final_fat_fraction),
            peak_percent=words.percent(totals.peak_fat_fraction),
        ),
        *season_words.limit_texts(words, season),
        words.ranges(last.weight_kg),
    ]
    return Headline(title, lines, " ".join([f"{title}.", *lines, *_phase_texts(words, plan)]))


def _phase_texts(words: Words, plan: SeasonPlan) -> list[str]:
    return [
        words.say(
            "picture-season-phase",
            kind=phase.kind,
            start_date=str(phase.start_date),
            end_date=str(phase.end_date),
            weight=words.changes(phase.change.weight_kg),
            fat=words.changes(phase.change.fat_kg),
            lean=words.changes(phase.change.lean_kg),
        )
        for phase in plan.phases
    ]
