"""What the formats of a plan share: its words, and where its intake changes."""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import NamedTuple

from ...schemas.explanation import Note
from ...schemas.plans import DayPlan, Phase, PlanResponse, PlanWeek
from ...schemas.quantities import Interval
from ...schemas.seasons import IntakeStep
from ..wording import one_line

PHASE_NAMES = {"mini_cut": "Mini-cut", "cut": "Cut", "gain": "Gain", "maintenance": "Maintenance"}
SIZE_NAMES = {"own": "as asked or solved", "largest": "the most that is safe"}
ELEMENT_NAMES = {"easing_in": "easing in", "break": "break"}


class PlannedChange(NamedTuple):
    """From the first day of ``week`` of ``phase`` something else is eaten, until ``last_day``."""

    phase: Phase
    week: PlanWeek
    last_day: date


def intake_changes(plan: PlanResponse) -> Iterator[PlannedChange]:
    """Every change of intake, in order; the first week is one."""
    weeks = [(phase, week) for phase in plan.phases for week in phase.weeks]
    firsts = [i for i, (_, week) in enumerate(weeks) if not i or _eaten(week) != _eaten(weeks[i - 1][1])]
    for i, until in zip(firsts, [*firsts, len(weeks)][1:], strict=True):
        last = weeks[until - 1][1]
        yield PlannedChange(*weeks[i], last.start_date + timedelta(days=last.days - 1))


def _eaten(week: PlanWeek) -> tuple[object, ...]:
    days = [day_cells(day) for day in week.by_day]
    return week.intake_kcal, week.protein_g, week.carbohydrate_g, week.fat_g, week.fibre_g, week.day_kinds, days


def phase_name(kind: str) -> str:
    """The name of a kind of phase, for people."""
    return PHASE_NAMES.get(kind, kind.replace("_", " ").capitalize())


def weeks_text(count: int) -> str:
    """``1 week``, ``4 weeks``."""
    return f"{count} week" if count == 1 else f"{count} weeks"


def change_text(change: Interval, unit: str = "kg") -> str:
    """A change with its interval."""
    mean, lower, upper = (round(value, 1) + 0.0 for value in (change.mean, change.lower, change.upper))  # no minus zero
    return f"{mean:+.1f} {unit} ({lower:+.1f} to {upper:+.1f})"


def eaten_text(eaten: PlanWeek | IntakeStep) -> str:
    """What is eaten a day."""
    return (
        f"{eaten.intake_kcal:,} kcal a day: protein {eaten.protein_g} g, carbohydrate {eaten.carbohydrate_g} g, "
        f"fat {eaten.fat_g} g, fibre {eaten.fibre_g} g"
    )


def day_cells(day: DayPlan) -> tuple[str, ...]:
    """What a day of a week has, for a table."""
    training = f"{day.training_minutes:g} min, {day.training_kcal:,.0f} kcal" if day.training_minutes else ""
    meals = " + ".join(map(str, day.meals_protein_g))
    grams = (day.protein_g, day.carbohydrate_g, day.fat_g)
    return (f"{day.intake_kcal:,}", *map(str, grams), str(day.alcohol_g or ""), training, meals)


def day_text(day: DayPlan) -> str:
    """What a day has, in a line."""
    extra = f", {day.training_minutes:g} min of training" if day.training_minutes else ""
    extra += f", {day.alcohol_g} g of alcohol in it" if day.alcohol_g else ""
    return (
        f"{day.weekday.capitalize()}: {day.intake_kcal:,} kcal, protein {day.protein_g} g "
        f"({' + '.join(map(str, day.meals_protein_g))}), carbohydrate {day.carbohydrate_g} g, fat {day.fat_g} g{extra}."
    )


def texts(notes: list[Note]) -> list[str]:
    """The texts of notes, each on one line."""
    return [one_line(note.text) for note in notes]


def cautions(plan: PlanResponse) -> list[str]:
    """Every caution of a plan: the general ones, each phase's, and what the guard rails say."""
    said = texts(plan.cautions)
    for phase in plan.phases:
        said += texts(phase.cautions)
    said += [one_line(rail.text) for rail in plan.guard_rails]
    return list(dict.fromkeys(said))


def infeasible_text(plan: PlanResponse) -> str:
    """What an infeasible plan says, with the nearest that would do."""
    said = texts(plan.reasons[1:])
    nearest = plan.nearest
    if nearest is not None:
        near = [
            f"{value:g} {what}"
            for value, what in (
                (nearest.fat_loss_kg, "kg of fat in the time asked"),
                (nearest.weeks, "weeks for the goal"),
                (nearest.deficit_kcal, "kcal/d of deficit at most"),
            )
            if value
        ]
        said += [f"Nearest: {'; '.join(near)}."] if near else []
    return " ".join(said)
