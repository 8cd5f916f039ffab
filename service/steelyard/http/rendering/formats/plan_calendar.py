"""A plan as a calendar (RFC 5545): an all-day event for each phase, and for each change of intake."""

from ...schemas.plans import PlanRequest, PlanResponse
from . import plan_words as words
from .calendar_document import CalendarDocument


def calendar(request: PlanRequest, plan: PlanResponse) -> bytes:
    """The plan's calendar. A plan that is not feasible has one event that says so, on the day it was to start."""
    first = request.start_date
    made = CalendarDocument(plan.fingerprint, first)
    general = words.cautions(plan)
    if not plan.feasible:
        lines = [words.infeasible_text(plan), "", *general]
        made.add("no plan", first, first, "No safe plan does what was asked", lines)
    for i, phase in enumerate(plan.phases, start=1):
        change = phase.change
        lines = [
            f"Expected: weight {words.change_text(change.weight_kg)}, fat {words.change_text(change.fat_kg)}, "
            f"lean {words.change_text(change.lean_kg)}, carried {words.change_text(change.carried_kg)} "
            f"({100 * change.weight_kg.coverage:.0f} % intervals).",
            *words.texts(phase.reasons),
            *words.texts(phase.ends_early_when),
            *words.texts(phase.guidance),
            "",
            *general,
        ]
        title = f"{words.phase_name(phase.kind)}, {words.weeks_text(len(phase.weeks))}"
        made.add(f"phase {i}", phase.start_date, phase.end_date, title, lines)
    for i, intake in enumerate(words.intake_changes(plan), start=1):
        week = intake.week
        lines = [f"{words.eaten_text(week)}, until {intake.last_day}."]
        lines += [
            f"{kind.days_per_week} days a week ({kind.kind.replace('_', ' ')}): {kind.intake_kcal:,} kcal, "
            f"protein {kind.protein_g} g, carbohydrate {kind.carbohydrate_g} g, fat {kind.fat_g} g."
            for kind in week.day_kinds
        ]
        lines += [words.day_text(day) for day in week.by_day]
        title = f"Intake from today: {week.intake_kcal:,} kcal"
        made.add(f"intake {i}", week.start_date, week.start_date, title, [*lines, "", *general])
    return made.encode()
