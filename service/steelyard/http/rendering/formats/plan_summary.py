"""A plan as Markdown (CommonMark with tables) that a coach can paste into a message."""

from collections.abc import Iterator

from ...schemas.plans import Phase, PlanRequest, PlanResponse, PlanWeek
from . import markdown
from . import plan_words as words

_FAT_LOSS = ("mini_cut", "cut")
_FORECAST_EVERY_WEEKS = 4


def summary(request: PlanRequest, plan: PlanResponse) -> bytes:
    """Phases, intakes, forecast with intervals, reasons and cautions."""
    return ("\n".join(_lines(request, plan)) + "\n").encode()


def _lines(request: PlanRequest, plan: PlanResponse) -> Iterator[str]:
    yield f"# Plan from {request.start_date}"
    yield ""
    yield markdown.start(plan.maintenance_kcal, plan.body_fat_fraction)
    if not plan.feasible:
        yield from markdown.section("No safe plan does what was asked", [words.infeasible_text(plan)])
    else:
        yield from _phases(plan)
        yield from _intakes(plan)
        yield from _forecast(plan)
        yield from _sizes(plan)
        yield from _levers(plan)
        yield from _why(plan)
    yield from markdown.section("Cautions", words.cautions(plan))


def _phases(plan: PlanResponse) -> Iterator[str]:
    rows = (
        (
            words.phase_name(phase.kind), str(phase.start_date), str(phase.end_date), str(len(phase.weeks)),
            *(words.change_text(change) for change in (
                phase.change.weight_kg, phase.change.fat_kg, phase.change.lean_kg, phase.change.carried_kg,
            )),
        )
        for phase in plan.phases
    )  # fmt: skip
    yield from markdown.table("Phases", ("phase", "from", "to", "weeks", "weight", "fat", "lean", "carried"), rows)
    yield ""
    yield "Carried: glycogen, water and gut content, which leave and return with intake."


def _intakes(plan: PlanResponse) -> Iterator[str]:
    header = ("from", "phase", "kcal a day", "protein g", "carbohydrate g", "fat g", "fibre g")
    rows: list[tuple[str, ...]] = []
    for phase, week, _ in words.intake_changes(plan):
        eaten = (week.protein_g, week.carbohydrate_g, week.fat_g)
        name = words.phase_name(phase.kind)
        if week.element in words.ELEMENT_NAMES:
            name += f", {words.ELEMENT_NAMES[week.element]}"
        rows.append((str(week.start_date), name, f"{week.intake_kcal:,}", *map(str, eaten), str(week.fibre_g)))
        for kind in week.day_kinds:
            day = f"{kind.kind.split('_')[0]} carbohydrate, {kind.days_per_week} days a week"
            eaten = (kind.protein_g, kind.carbohydrate_g, kind.fat_g)
            rows.append(("", day, f"{kind.intake_kcal:,}", *map(str, eaten), ""))
    yield from markdown.table("Intake", header, rows)
    yield from _days(plan)


def _days(plan: PlanResponse) -> Iterator[str]:
    """Each day of a week, where it is told, and again where another day has another amount."""
    rows: list[tuple[str, ...]] = []
    told: dict[str, tuple[str, ...]] = {}
    for phase in plan.phases:
        for week in phase.weeks:
            new = {day.weekday: words.day_cells(day) for day in week.by_day}
            if new != told:
                rows += [(str(day.date), day.weekday, *new[day.weekday]) for day in week.by_day]
            told = new
    if rows:
        header = ("from", "day", "kcal", "protein g", "carbohydrate g", "fat g", "alcohol g", "training", "meals g")
        yield from markdown.table("Day by day", header, rows)


def _forecast(plan: PlanResponse) -> Iterator[str]:
    rows = (
        (
            str(week.at_end.date), words.phase_name(phase.kind), str(week.week), markdown.value(week.at_end.weight_kg),
            markdown.value(week.at_end.fat_kg), markdown.percent(week.at_end.fat_fraction),
            f"{week.energy_balance_kcal:+,.0f}",
        )
        for phase in plan.phases
        for week in phase.weeks
        if _is_shown(phase, week)
    )  # fmt: skip
    header = ("at the end of", "phase", "week", "scale weight kg", "fat kg", "body fat %", "energy balance kcal a day")
    yield from markdown.table("Forecast", header, rows)


def _sizes(plan: PlanResponse) -> Iterator[str]:
    if not plan.sizes:
        return
    rows = (
        (
            f"{words.SIZE_NAMES.get(size.size, size.size)}{', planned' if size.is_planned else ''}",
            f"{-size.deficit_kcal if size.deficit_kcal is not None else size.surplus_kcal or 0:+,.0f}",
            f"{size.intake_kcal:,}", str(size.weeks), words.change_text(size.change.fat_kg),
            words.change_text(size.change.lean_kg), f"{size.tissue_rate_percent:+.2f}",
            "; ".join(dict.fromkeys(rail.id for rail in size.guard_rails)),
        )
        for size in plan.sizes
    )  # fmt: skip
    header = ("size", "kcal a day", "intake", "weeks", "fat", "lean", "% of body mass a week", "rails that warn")
    yield from markdown.table("Other sizes, and their price", header, rows)


def _levers(plan: PlanResponse) -> Iterator[str]:
    rows = []
    for lever in plan.levers:
        dose = f"{lever.steps_per_day:,.0f} more steps a day" if lever.steps_per_day else ""
        dose = dose or f"{lever.minutes_per_week or 0:g} more minutes of {lever.kind} a week"
        counts = [f"{of.mean:,.0f} ({of.lower:,.0f} to {of.upper:,.0f})" for of in (lever.burnt_kcal, lever.kept_kcal)]
        uses = (("eat more", lever.instead), ("eat as planned", lever.together))
        for name, use in uses:
            found = ("not safe", "", "")
            if use is not None:
                found = (
                    f"{use.intake_kcal:,}", words.change_text(use.fat_change_kg),
                    f"{use.availability_kcal_per_kg:.1f} (planned {lever.planned_availability_kcal_per_kg:.1f})",
                )  # fmt: skip
            rows.append((dose, *counts, name, *found))
    if rows:
        header = ("activity", "burnt kcal a day", "counts", "use", "intake", "fat", "availability kcal/kg")
        yield from markdown.table("More activity, and what it gives", header, rows)


def _is_shown(phase: Phase, week: PlanWeek) -> bool:
    """Every week of a fat-loss phase and of a short one; of others every fourth and the last."""
    is_short = phase.kind in _FAT_LOSS or len(phase.weeks) <= _FORECAST_EVERY_WEEKS
    return is_short or week.week % _FORECAST_EVERY_WEEKS == 0 or week.week == len(phase.weeks)


def _why(plan: PlanResponse) -> Iterator[str]:
    yield from markdown.section("Why", words.texts(plan.reasons))
    for phase in plan.phases:
        # What explains the whole plan is not said again.
        said = [text for text in words.texts(phase.reasons) if text not in words.texts(plan.reasons)]
        said += words.texts(phase.ends_early_when) + words.texts(phase.guidance)
        yield from markdown.section(f"{words.phase_name(phase.kind)} from {phase.start_date}", said)
    rule = plan.rule_of_thumb
    if rule is not None:
        fat, drop = (
            "{:.1f} to {:.1f} kg".format(*ends)
            for ends in (rule.fat_loss_common_practice_kg, rule.first_week_drop_common_practice_kg)
        )
        yield from markdown.section(
            "Beside simple rules",
            [
                f"At 7,700 kcal a kilogram and a constant deficit: {rule.fat_loss_static_kg:.1f} kg of fat.",
                f"Commonly quoted: {fat} of fat in these weeks, and {drop} on the scale in the first days; forecast "
                f"here: {rule.first_week_drop_forecast_kg:.1f} kg in the first week.",
            ],
        )
