"""A plan as a calendar (RFC 5545): an all-day event for each phase, and for each change of intake.

Nothing depends on a clock: the stamp of every event is the plan's start, and its UID comes from the fingerprint
(a UUID, as RFC 7986 5.3 recommends), so that the same plan imported twice is one plan.
"""

from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING
from uuid import UUID, uuid5

from ..schemas.plans import PlanRequest, PlanResponse
from . import plan_words as words

if TYPE_CHECKING:
    from icalendar import Calendar

_PRODUCT = "-//Steelyard//Plan//EN"


def calendar(request: PlanRequest, plan: PlanResponse) -> bytes:
    """The plan's calendar. A plan that is not feasible has one event that says so, on the day it was to start."""
    from icalendar import Calendar  # a tenth of a second that only this answer needs

    made = Calendar()
    made.add("prodid", _PRODUCT)
    made.add("version", "2.0")
    made.add("calscale", "GREGORIAN")
    general = "\n".join(words.cautions(plan))
    first = request.start_date
    if not plan.feasible:
        said = f"{words.infeasible_text(plan)}\n\n{general}"
        _add(made, plan, first, "no plan", first, first, "No safe plan does what was asked", said)
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
            general,
        ]
        title = f"{words.phase_name(phase)}, {words.weeks_text(len(phase.weeks))}"
        _add(made, plan, first, f"phase {i}", phase.start_date, phase.end_date, title, "\n".join(lines))
    for i, intake in enumerate(words.intake_changes(plan), start=1):
        week = intake.week
        day = week.start_date
        lines = [f"{words.macros_text(week)}, until {intake.last_day}."]
        lines += [
            f"{kind.days_per_week} days a week ({kind.kind.replace('_', ' ')}): {kind.intake_kcal:,} kcal, "
            f"protein {kind.protein_g} g, carbohydrate {kind.carbohydrate_g} g, fat {kind.fat_g} g."
            for kind in week.day_kinds
        ]
        title = f"Intake from today: {week.intake_kcal:,} kcal"
        _add(made, plan, first, f"intake {i}", day, day, title, "\n".join([*lines, "", general]))
    document: bytes = made.to_ical()
    return document


def _add(
    made: "Calendar", plan: PlanResponse, stamp: date, name: str, first: date, last: date, title: str, text: str
) -> None:
    from icalendar import Event

    event = Event()
    event.add("uid", str(uuid5(UUID(plan.fingerprint), name)))
    event.add("dtstamp", datetime.combine(stamp, time(), UTC))
    event.add("dtstart", first)
    event.add("dtend", last + timedelta(days=1))
    event.add("summary", title)
    event.add("description", text)
    event.add("transp", "TRANSPARENT")
    made.add_component(event)
