"""A plan as a calendar (RFC 5545): an all-day event for each phase, and for each change of intake."""

from ...schemas.plans import PlanRequest, PlanResponse
from ..wording import Words, tells_weight
from . import plan_words
from .calendar_document import CalendarDocument


def calendar(request: PlanRequest, plan: PlanResponse, words: Words) -> bytes:
    """The plan's calendar. A plan that is not feasible has one event that says so, on the day it was to start."""
    first = request.start_date
    made = CalendarDocument(plan.fingerprint, first, words.language)
    if not plan.feasible:
        lines = [plan_words.infeasible_text(words, plan), "", *plan_words.cautions(words, plan, ())]
        made.add("no plan", first, first, words.say("BRIEFING_NO_PLAN_TITLE"), lines)
    for i, phase in enumerate(plan.phases, start=1):
        change = phase.change
        expected = [
            words.say(
                "document-expected", **plan_words.changes(words, change), carried=words.changes(change.carried_kg)
            ),
            words.ranges(change.weight_kg),
        ]
        lines = [
            *(expected if tells_weight(plan.cautions) else []),
            *words.texts(phase.reasons),
            *words.texts(phase.ends_early_when),
            *words.texts(phase.guidance),
            "",
            *plan_words.cautions(words, plan, [phase]),
        ]
        title = words.say("picture-phase", kind=phase.kind, weeks=len(phase.weeks))
        made.add(f"phase {i}", phase.start_date, phase.end_date, title, lines)
    for i, intake in enumerate(plan_words.intake_changes(plan), start=1):
        week = intake.week
        eaten = plan_words.eaten(words, week)
        lines = [
            words.say("document-eaten-until", **eaten, fibre=str(week.fibre_g), date=str(intake.last_day)),
            *(words.say("document-day-kind-eaten", **plan_words.day_kind(words, kind)) for kind in week.day_kinds),
            *(plan_words.day_text(words, day) for day in week.by_day),
        ]
        title = words.say("document-intake-from-today", intake=eaten["intake"])
        cautions = plan_words.cautions(words, plan, [intake.phase])
        made.add(f"intake {i}", week.start_date, week.start_date, title, [*lines, "", *cautions])
    return made.encode()
