"""The picture of a plan."""

from itertools import groupby

from ...schemas.plans import Phase, PlanRequest, PlanResponse
from ..formats import plan_words as words
from . import interval_rows, wording
from .body_panels import Eaten, changes_group, intake_panel, start_of, weight_panel
from .palette import LOOKS, Theme
from .sheet import Drawing, Headline, sheet
from .time_panels import Shade, Span, after

_FAT_LOSS = ("mini_cut", "cut")


def draw(request: PlanRequest, plan: PlanResponse, theme: Theme) -> Drawing:
    """Weight against tissue, intake against maintenance, and what each phase changes."""
    look = LOOKS[theme]
    cautions = words.cautions(plan)
    if not plan.phases:
        title = "No safe plan does what was asked"
        said = words.infeasible_text(plan)
        return sheet(look, Headline(title, [said], f"{title}. {said}"), [], cautions)
    weeks = [week for phase in plan.phases for week in phase.weeks]
    points = [week.at_end for week in weeks]
    first = plan.phases[0]
    start = start_of(weeks[0].start_date, first.weeks[-1].at_end, first.change)
    shades = tuple(shade for phase in plan.phases for shade in _shades(phase))
    span = Span(start.date, after(points[-1].date), shades)
    eaten = [Eaten(week.start_date, after(week.at_end.date), week.intake_kcal) for week in weeks]
    groups = [
        changes_group(look, f"{words.phase_name(p.kind)}, {words.weeks_text(len(p.weeks))}", p.change)
        for p in plan.phases
    ]
    panels = [
        weight_panel(look, span, start, points),
        intake_panel(look, span, eaten, plan.maintenance_kcal, points),
        interval_rows.panel(look, groups, title="Change in each phase, kg, with 80 % intervals", samples=[]),
    ]
    return sheet(look, _message(plan, start.weight_kg), panels, [*cautions, *words.signs_to_stop(plan.phases)])


def _shades(phase: Phase) -> list[Shade]:
    """A phase, cut up by its breaks."""
    shades = []
    for is_break, group in groupby(phase.weeks, lambda week: week.element == "break"):
        weeks = list(group)
        start, end = weeks[0].start_date, after(weeks[-1].at_end.date)
        shades.append(
            Shade("maintenance", "Break", start, end)
            if is_break
            else Shade(phase.kind, words.phase_name(phase.kind), start, end)
        )
    return shades


def _message(plan: PlanResponse, start_kg: float) -> Headline:
    first, last = plan.phases[0], plan.phases[-1].weeks[-1].at_end
    title = (
        wording.listed([f"{words.phase_name(p.kind)} of {words.weeks_text(len(p.weeks))}" for p in plan.phases])
        .lower()
        .capitalize()
    )
    lines = [
        f"Scale weight from {wording.number(start_kg)} kg on {wording.day(first.start_date)} to "
        f"{wording.values(last.weight_kg, unit='kg')} at the end of {wording.day(last.date)}, body fat from "
        f"{wording.percent(plan.body_fat_fraction)} to {wording.percent(last.fat_fraction)}."
    ]
    losing = next((phase for phase in plan.phases if phase.kind in _FAT_LOSS), None)
    if losing is not None and losing is not plan.phases[-1]:
        end = losing.weeks[-1].at_end
        lines.append(
            f"At the end of the {words.phase_name(losing.kind).lower()}, on {wording.day(end.date)}: "
            f"{wording.values(end.weight_kg, unit='kg')}, fat {wording.changes(losing.change.fat_kg)}, lean tissue "
            f"{wording.changes(losing.change.lean_kg)}."
        )
    lines.append(f"In parentheses: {wording.coverage(last.weight_kg)} intervals.")
    return Headline(title, lines, " ".join([f"{title}.", *lines, *map(_phase_text, plan.phases)]))


def _phase_text(phase: Phase) -> str:
    intakes = [week.intake_kcal for week in phase.weeks]
    low, high = min(intakes), max(intakes)
    intake = f"{low:,} kcal" if low == high else f"{low:,} to {high:,} kcal"
    change = phase.change
    return (
        f"{words.phase_name(phase.kind)}, {wording.day(phase.start_date)} to {wording.day(phase.end_date)}: "
        f"{intake} a day, weight {wording.changes(change.weight_kg)}, fat {wording.changes(change.fat_kg)}, "
        f"lean tissue {wording.changes(change.lean_kg)}, carried mass {wording.changes(change.carried_kg)}."
    )
