"""A plan as Markdown (CommonMark with tables) that a coach can paste into a message."""

import re
from collections.abc import Iterable, Iterator

from ..schemas.plans import Phase, PlanRequest, PlanResponse, PlanWeek
from ..schemas.quantities import Interval
from . import plan_words as words

_FAT_LOSS = ("mini_cut", "cut")
_FORECAST_EVERY_WEEKS = 4


def summary(request: PlanRequest, plan: PlanResponse) -> bytes:
    """Phases, intakes, forecast with intervals, reasons and cautions."""
    return ("\n".join(_lines(request, plan)) + "\n").encode()


def _lines(request: PlanRequest, plan: PlanResponse) -> Iterator[str]:
    yield f"# Plan from {request.start_date}"
    yield ""
    maintenance, fat = plan.maintenance_kcal, plan.body_fat_fraction
    coverage = f"{100 * maintenance.coverage:.0f} %"
    yield (
        f"Maintenance {maintenance.mean:,.0f} kcal a day ({maintenance.lower:,.0f} to {maintenance.upper:,.0f}), "
        f"body fat {100 * fat.mean:.1f} % ({100 * fat.lower:.1f} to {100 * fat.upper:.1f}). "
        f"Ranges in parentheses are {coverage} intervals."
    )
    if not plan.feasible:
        yield from _section("No safe plan does what was asked", [words.infeasible_text(plan)])
    else:
        yield from _phases(plan)
        yield from _intakes(plan)
        yield from _forecast(plan)
        yield from _why(plan)
    yield from _section("Cautions", words.cautions(plan))


def _phases(plan: PlanResponse) -> Iterator[str]:
    rows = (
        (
            words.phase_name(phase), str(phase.start_date), str(phase.end_date), str(len(phase.weeks)),
            *(words.change_text(change) for change in (
                phase.change.weight_kg, phase.change.fat_kg, phase.change.lean_kg, phase.change.carried_kg,
            )),
        )
        for phase in plan.phases
    )  # fmt: skip
    yield from _table("Phases", ("phase", "from", "to", "weeks", "weight", "fat", "lean", "carried"), rows)
    yield ""
    yield "Carried: glycogen, water and gut content, which leave and return with intake."


def _intakes(plan: PlanResponse) -> Iterator[str]:
    header = ("from", "phase", "kcal a day", "protein g", "carbohydrate g", "fat g", "fibre g")
    rows: list[tuple[str, ...]] = []
    for phase, week, _ in words.intake_changes(plan):
        eaten = (week.protein_g, week.carbohydrate_g, week.fat_g)
        name = words.phase_name(phase)
        if week.element in words.ELEMENT_NAMES:
            name += f", {words.ELEMENT_NAMES[week.element]}"
        rows.append((str(week.start_date), name, f"{week.intake_kcal:,}", *map(str, eaten), str(week.fibre_g)))
        for kind in week.day_kinds:
            day = f"{kind.kind.split('_')[0]} carbohydrate, {kind.days_per_week} days a week"
            eaten = (kind.protein_g, kind.carbohydrate_g, kind.fat_g)
            rows.append(("", day, f"{kind.intake_kcal:,}", *map(str, eaten), ""))
    yield from _table("Intake", header, rows)


def _forecast(plan: PlanResponse) -> Iterator[str]:
    rows = (
        (
            str(week.at_end.date), words.phase_name(phase), str(week.week), _value(week.at_end.weight_kg),
            _value(week.at_end.fat_kg), _percent(week.at_end.fat_fraction),
            f"{week.energy_balance_kcal:+,.0f}",
        )
        for phase in plan.phases
        for week in phase.weeks
        if _is_shown(phase, week)
    )  # fmt: skip
    header = ("at the end of", "phase", "week", "scale weight kg", "fat kg", "body fat %", "energy balance kcal a day")
    yield from _table("Forecast", header, rows)


def _is_shown(phase: Phase, week: PlanWeek) -> bool:
    """Every week of a fat-loss phase and of a short one; of others every fourth and the last."""
    is_short = phase.kind in _FAT_LOSS or len(phase.weeks) <= _FORECAST_EVERY_WEEKS
    return is_short or week.week % _FORECAST_EVERY_WEEKS == 0 or week.week == len(phase.weeks)


def _why(plan: PlanResponse) -> Iterator[str]:
    yield from _section("Why", words.texts(plan.reasons))
    for phase in plan.phases:
        # What explains the whole plan is not said again.
        said = [text for text in words.texts(phase.reasons) if text not in words.texts(plan.reasons)]
        said += words.texts(phase.ends_early_when) + words.texts(phase.guidance)
        yield from _section(f"{words.phase_name(phase)} from {phase.start_date}", said)
    rule = plan.rule_of_thumb
    if rule is not None:
        fat, drop = (
            "{:.1f} to {:.1f} kg".format(*ends)
            for ends in (rule.fat_loss_common_practice_kg, rule.first_week_drop_common_practice_kg)
        )
        yield from _section(
            "Beside simple rules",
            [
                f"At 7,700 kcal a kilogram and a constant deficit: {rule.fat_loss_static_kg:.1f} kg of fat.",
                f"Commonly quoted: {fat} of fat in these weeks, and {drop} on the scale in the first days; forecast "
                f"here: {rule.first_week_drop_forecast_kg:.1f} kg in the first week.",
            ],
        )


def _section(title: str, said: list[str]) -> Iterator[str]:
    if said:
        yield from ("", f"## {title}", "")
        yield from (f"- {_escaped(text)}" for text in said)


def _table(title: str, header: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> Iterator[str]:
    yield from ("", f"## {title}", "", f"| {' | '.join(header)} |", f"|{' --- |' * len(header)}")
    yield from (f"| {' | '.join(row)} |" for row in rows)


def _value(value: Interval) -> str:
    return f"{value.mean:.1f} ({value.lower:.1f} to {value.upper:.1f})"


def _percent(value: Interval) -> str:
    return f"{100 * value.mean:.1f} ({100 * value.lower:.1f} to {100 * value.upper:.1f})"


def _escaped(text: str) -> str:
    """Text that may quote a caller: no links, images, HTML, emphasis or cells come from it."""
    return re.sub(r"([\\<\[*|])", r"\\\1", text)
