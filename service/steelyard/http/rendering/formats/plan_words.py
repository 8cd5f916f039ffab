"""What the formats of a plan share: its words, and where its intake changes."""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from typing import NamedTuple

from ...schemas.phases import DayKind
from ...schemas.plans import DayPlan, Nearest, Phase, PhaseTotals, PlanResponse, PlanWeek
from ...schemas.seasons import IntakeStep
from ..wording import Words, told_once


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
    days = [eaten_on(day) for day in week.by_day]
    return week.intake_kcal, week.protein_g, week.carbohydrate_g, week.fat_g, week.fibre_g, week.day_kinds, days


def eaten_on(day: DayPlan) -> tuple[object, ...]:
    """What a day has, whatever its date."""
    grams = (day.protein_g, day.carbohydrate_g, day.fat_g, day.alcohol_g)
    return day.weekday, day.intake_kcal, *grams, day.training_minutes, day.training_kcal, day.meals_protein_g


def changes(words: Words, change: PhaseTotals) -> dict[str, str]:
    """Changes of a phase with their ranges, as parameters of a text."""
    of = {"weight": change.weight_kg, "fat": change.fat_kg, "lean": change.lean_kg}
    return {name: words.changes(value) for name, value in of.items()}


def eaten(words: Words, of: PlanWeek | IntakeStep | DayPlan | DayKind) -> dict[str, str]:
    """What is eaten a day, as parameters of a text."""
    grams = {"protein": of.protein_g, "carbohydrate": of.carbohydrate_g, "fat": of.fat_g}
    return {"intake": words.number(of.intake_kcal, 0)} | {name: words.number(value, 0) for name, value in grams.items()}


def day_kind(words: Words, of: DayKind) -> dict[str, str | int]:
    """A kind of day and what is eaten on it, as parameters of a text."""
    return {"kind": of.kind, "days": of.days_per_week, **eaten(words, of)}


def day_text(words: Words, day: DayPlan) -> str:
    """What a day has, in a line."""
    said = words.say("document-day", weekday=day.date.isoweekday(), meals=meals(day), **eaten(words, day))
    if day.training_minutes:
        said += words.say("document-day-training", minutes=words.number(day.training_minutes, 0))
    if day.alcohol_g:
        said += words.say("document-day-alcohol", alcohol=str(day.alcohol_g))
    return f"{said}."


def meals(day: DayPlan) -> str:
    """The protein of a day's meals."""
    return " + ".join(map(str, day.meals_protein_g))


def cautions(words: Words, plan: PlanResponse, phases: Iterable[Phase]) -> list[str]:
    """The cautions of a plan: the general ones, those of some of its phases, and what the guard rails say."""
    said = words.texts(plan.cautions)
    for phase in phases:
        said += words.texts(phase.cautions)
    return list(dict.fromkeys([*said, *words.texts(told_once(plan.guard_rails))]))


def nearest_texts(words: Words, nearest: Nearest | None) -> list[str]:
    """What would do, where no plan does what was asked."""
    if nearest is None:
        return []
    values = {"fat_kg": nearest.fat_loss_kg, "weeks": nearest.weeks, "deficit_kcal": nearest.deficit_kcal}
    names = {
        "fat_kg": "picture-nearest-fat",
        "weeks": "picture-nearest-weeks",
        "deficit_kcal": "picture-nearest-deficit",
    }
    told = {name: value for name, value in values.items() if value and not (words.spares and name == "fat_kg")}
    kind = {} if nearest.weeks_kind is None else {"kind": nearest.weeks_kind}
    return [
        words.say(names[name], **{name: value}, **(kind if name == "weeks" else {})) for name, value in told.items()
    ]


def infeasible_lines(words: Words, plan: PlanResponse) -> list[str]:
    """Why there is no plan, and the nearest that would do; not by which equations that is."""
    return [*words.texts(plan.reasons[1:]), *nearest_texts(words, plan.nearest)]


def infeasible_text(words: Words, plan: PlanResponse) -> str:
    """``infeasible_lines`` in one line."""
    return " ".join(infeasible_lines(words, plan))
