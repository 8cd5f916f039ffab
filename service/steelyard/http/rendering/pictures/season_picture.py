"""The picture of a season, as planned under one strategy or found by a search."""

from ...schemas.seasons import OptimumResponse, SeasonPhase, SeasonPlan, SeasonQuestion, SeasonResponse
from ..formats import plan_words as words
from . import interval_rows, wording
from .body_panels import Eaten, fat_panel, intake_panel, start_of, weight_panel
from .interval_rows import Group, Row
from .palette import SHAPES, Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Shade, Span, after

_LIMIT_NAMES = {
    "weeks_above_band": "weeks above the band",
    "weeks_dieting": "weeks in a deficit",
    "event_fat_fraction": "body fat over the target of an event",
}


def draw(_request: SeasonQuestion, season: SeasonResponse | OptimumResponse, look: Look) -> Drawing:
    """Weight against tissue, body fat against its band, intake against maintenance, and what the season changes."""
    plan, begun = season.plan, season.start
    points = [week.at_end for week in plan.weeks]
    first = plan.phases[0]
    at_end = next(point for point in points if point.date >= first.end_date)
    start = start_of(first.start_date, at_end, first.change)
    shades = tuple(Shade(p.kind, words.phase_name(p.kind), p.start_date, after(p.end_date)) for p in plan.phases)
    span = Span(start.date, after(points[-1].date), shades, look.width)
    eaten = [Eaten(week.start_date, after(week.at_end.date), week.intake_kcal) for week in plan.weeks]
    totals = Group(
        "",
        [
            Row("Lean tissue", plan.totals.lean_gained_kg, look.lean, SHAPES["lean"]),
            Row("Fat", plan.totals.fat_gained_kg, look.fat, SHAPES["fat"]),
        ],
    )
    band = begun.band_lower_fat_fraction, begun.band_upper_fat_fraction
    panels = [
        weight_panel(look, span, start, points),
        fat_panel(look, span, begun.body_fat_fraction, points, band),
        intake_panel(look, span, eaten, begun.maintenance_kcal, points),
        interval_rows.panel(look, [totals], title="Change over the season, kg, with 80 % intervals", samples=[]),
    ]
    return sheet(
        look, _message(season, start.weight_kg), panels, [*_cautions(season), *_signs_to_stop(season.plan.phases)]
    )


def _cautions(season: SeasonResponse | OptimumResponse) -> list[str]:
    """Every kind of caution once: what every phase says of itself would fill the picture."""
    notes = {note.code: note for phase in reversed(season.plan.phases) for note in reversed(phase.cautions)}
    said = words.texts([*season.cautions, *reversed(notes.values())])
    said += [words.one_line(rail.text) for rail in season.plan.guard_rails]
    return list(dict.fromkeys(said))


def _signs_to_stop(phases: list[SeasonPhase]) -> list[str]:
    """What ends phases of each kind early, said once."""
    return words.signs_to_stop(list({phase.kind: phase for phase in reversed(phases)}.values())[::-1])


def _message(season: SeasonResponse | OptimumResponse, start_kg: float) -> Headline:
    plan, totals = season.plan, season.plan.totals
    first, last = plan.weeks[0], plan.weeks[-1].at_end
    cuts = "no cut" if not totals.cuts else f"{totals.cuts} cut{'' if totals.cuts == 1 else 's'}"
    title = f"Season of {words.weeks_text(len(plan.weeks))} with {cuts}"
    lines = [
        f"Lean tissue {wording.changes(totals.lean_gained_kg)}, fat {wording.changes(totals.fat_gained_kg)}; "
        f"{totals.days_dieting} days in a deficit.",
        f"Scale weight from {wording.number(start_kg)} kg on {wording.day(first.start_date)} to "
        f"{wording.values(last.weight_kg, unit='kg')} at the end of {wording.day(last.date)}, body fat from "
        f"{wording.percent(season.start.body_fat_fraction)} to {wording.percent(totals.final_fat_fraction)}, at most "
        f"{wording.percent(totals.peak_fat_fraction)}.",
    ]
    lines += [
        f"Not kept: {_LIMIT_NAMES.get(limit.limit, limit.limit)}, {limit.found:g} where {limit.allowed:g} is allowed."
        for limit in season.broken_limits
    ]
    lines.append(f"In parentheses: {wording.coverage(last.weight_kg)} intervals.")
    return Headline(title, lines, " ".join([f"{title}.", *lines, *_phase_texts(plan)]))


def _phase_texts(plan: SeasonPlan) -> list[str]:
    return [
        f"{words.phase_name(phase.kind)}, {wording.day(phase.start_date)} to {wording.day(phase.end_date)}: weight "
        f"{wording.changes(phase.change.weight_kg)}, fat {wording.changes(phase.change.fat_kg)}, lean tissue "
        f"{wording.changes(phase.change.lean_kg)}."
        for phase in plan.phases
    ]
