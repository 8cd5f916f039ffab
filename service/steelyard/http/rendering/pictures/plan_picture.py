"""The picture of a plan: the answer is its headline."""

from itertools import groupby
from typing import Any

from steelyard.answers import NOTABLE_WATER_KG
from steelyard.science.phase import PhaseKind

from ...schemas.plans import Phase, PlanRequest, PlanResponse
from ...schemas.shared_fields import Interval
from ..formats import plan_words
from ..wording import Words, round_as_written, tells_weight
from . import interval_rows
from .forecast_picture import Eaten, changes_group, intake_panel, start_of, weight_panel
from .palette import Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Shade, Span, after


def draw(request: PlanRequest, plan: PlanResponse, look: Look) -> Drawing:
    """Weight against tissue with the water between, intake against maintenance, and what each phase changes."""
    words = look.words
    say = words.say
    cautions = plan_words.cautions(words, plan, plan.phases)
    if not plan.phases:
        title = say("BRIEFING_NO_PLAN_TITLE")
        lines = plan_words.infeasible_lines(words, plan)
        return sheet(look, Headline(title, lines, " ".join([f"{title}.", *lines])), [], cautions)
    weeks = [week for phase in plan.phases for week in phase.weeks]
    points = [week.at_end for week in weeks]
    first = plan.phases[0]
    start = start_of(weeks[0].start_date, first.weeks[-1].at_end, first.change)
    shades = tuple(shade for phase in plan.phases for shade in _shades(phase, words))
    span = Span(start.date, after(points[-1].date), shades, look.width)
    eaten = [Eaten(week.start_date, after(week.at_end.date), week.intake_kcal) for week in weeks]
    groups = [changes_group(look, say("picture-phase", kind=p.kind, weeks=len(p.weeks)), p.change) for p in plan.phases]
    intake = intake_panel(look, span, eaten, plan.maintenance_kcal, points)
    if not tells_weight(plan.cautions):
        title = say("picture-phase", kind=first.kind, weeks=len(first.weeks))
        return sheet(look, Headline(title, [], f"{title}."), [intake], cautions)
    panels = [
        weight_panel(look, span, start, points),
        intake,
        interval_rows.panel(look, groups, title=say("picture-changes"), samples=[]),
    ]
    signs = [text for phase in plan.phases for text in words.texts(phase.ends_early_when)]
    return sheet(look, _message(plan, start.weight_kg, words), panels, list(dict.fromkeys([*cautions, *signs])))


def _shades(phase: Phase, words: Words) -> list[Shade]:
    """A phase, cut up by its breaks."""
    shades = []
    for is_break, group in groupby(phase.weeks, lambda week: week.element == "break"):
        weeks = list(group)
        start, end = weeks[0].start_date, after(weeks[-1].at_end.date)
        name = words.say("picture-break" if is_break else "phase-name", kind=phase.kind)
        shades.append(Shade("maintenance" if is_break else phase.kind, name, start, end))
    return shades


def _message(plan: PlanResponse, start_kg: float, words: Words) -> Headline:
    asked = next((phase for phase in plan.phases if PhaseKind(phase.kind).is_deficit), plan.phases[0])
    title = _headline(asked, words)
    end = plan.phases[-1].weeks[-1].at_end
    lines = [
        words.say(
            "picture-path",
            start_kg=start_kg,
            start_date=str(plan.phases[0].start_date),
            end_date=str(end.date),
            **_ends("weight_kg", end.weight_kg),
            **_ends("fat_percent", end.fat_fraction, 100.0),
            **_ends("now_percent", plan.body_fat_fraction, 100.0),
        ),
        words.ranges(end.weight_kg),
    ]
    return Headline(title, lines, " ".join([f"{title}.", *lines, *(_phase_text(p, words) for p in plan.phases)]))


def _headline(phase: Phase, words: Words) -> str:
    """What the phase that was asked for comes to."""
    end = phase.weeks[-1].at_end
    water = -phase.change.carried_kg.mean
    params: dict[str, Any] = {
        "kind": phase.kind,
        "weeks": len(phase.weeks),
        "weight_kg": end.weight_kg.mean,
        "date": str(end.date),
        "fat_kg": abs(phase.change.fat_kg.mean),
        "lean_kg": phase.change.lean_kg.mean,
        "water_kg": water,
    }
    if words.spares:
        name = "picture-hold"  # which says of any phase how long it is, and what the scale says then
    elif PhaseKind(phase.kind).is_deficit:
        name = "picture-fat-loss-water" if water >= NOTABLE_WATER_KG else "picture-fat-loss"
    else:
        name = "picture-gain" if phase.kind == "gain" else "picture-hold"
    return words.say(name, **params)


def _phase_text(phase: Phase, words: Words) -> str:
    intakes = [week.intake_kcal for week in phase.weeks]
    change = phase.change
    return words.say(
        "picture-phase-in-figures",
        kind=phase.kind,
        start_date=str(phase.start_date),
        end_date=str(phase.end_date),
        least_kcal=min(intakes),
        most_kcal=max(intakes),
        **_ends("weight_kg", change.weight_kg),
        **_ends("fat_kg", change.fat_kg),
        **_ends("lean_kg", change.lean_kg),
        **_ends("carried_kg", change.carried_kg),
    )


def _ends(name: str, of: Interval, scale: float = 1.0) -> dict[str, float]:
    """An interval as parameters: ``fat_kg``, ``fat_lower_kg``, ``fat_upper_kg``."""
    what, _, unit = name.rpartition("_")
    return {
        f"{what}{end}_{unit}": round_as_written(scale * value, 1)
        for end, value in (("", of.mean), ("_lower", of.lower), ("_upper", of.upper))
    }
