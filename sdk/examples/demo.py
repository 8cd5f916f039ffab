"""An invented member end to end: the service is started, asked for maintenance, a plan and a trend, and stopped.

Run it with `make demo`. All that is shown comes over HTTP through the client; only the log is made up here, with a
fixed seed, so that two runs of one version print the same numbers.
"""

import math
import random
import sys
from collections.abc import Callable, Iterable, Sequence
from datetime import date, timedelta

from local_service import ServiceDown, local_service
from rich import box
from rich.console import Console, Group
from rich.padding import Padding
from rich.panel import Panel
from rich.table import Table
from rich.text import Text
from steelyard_client import Maintenance, Methods, Plan, Steelyard, SteelyardError, Trend, feet_inches, models, pounds
from steelyard_client.request_types import IntakeEntryDict, LogDict, ProfileDict, ScreeningDict, WeightEntryDict

WIDTH = 100
SEED = 20260309
CUT_START = date(2026, 4, 6)
LOG_START = CUT_START - timedelta(weeks=4)
LOG_WEEKS = 8  # four before the mini-cut, four within it
HABIT_KCAL = 2380
OUTLIER_DAY = 38  # a weighing in a winter coat, say

MEMBER = "Runa Vestergaard"
STORY = "34, an amateur rower back under the barbell since autumn; wants to be leaner by June."
PROFILE: ProfileDict = {
    "sex": "female",
    "age_years": 34,
    "height_cm": feet_inches(5, 9),
    "weight_kg": round(pounds(167), 1),
    "body_fat": {"fat_fraction": 0.275, "method": "skinfolds"},
    "activity": {
        "kind": "week",
        "steps_per_day": 7200,
        "sessions": [
            {"met": 5.0, "minutes": 65, "times_per_week": 3},  # barbell
            {"met": 7.0, "minutes": 45, "times_per_week": 2},  # ergometer
        ],
    },
    "training": {"status": "intermediate", "resistance_sessions_per_week": 3},
}
SCREENING: ScreeningDict = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}


def main() -> int:
    """Run the demonstration; the exit status."""
    console = Console(width=min(WIDTH, Console().width) if sys.stdout.isatty() else WIDTH, highlight=False)
    try:
        with local_service() as service, Steelyard(service.url, service.key) as client:
            console.print(f"[dim]Service started at {service.url}[/dim]\n")
            console.print(Panel(f"[bold]{MEMBER}[/bold], {STORY}", box=box.ROUNDED, padding=(0, 1)))
            show(client, console)
    except (SteelyardError, ServiceDown) as error:
        console.print(f"[bold red]{type(error).__name__}[/bold red] {error}", soft_wrap=True)
        return 1
    console.print("[dim]Service stopped.[/dim]")
    return 0


def show(client: Steelyard, console: Console) -> None:
    """The three calls, each answer as a table."""
    before = log_before_the_cut()
    methods = client.list_methods()
    maintenance = client.estimate_maintenance(profile=PROFILE, log=before)
    console.print(maintenance_view(maintenance, methods))
    plan = client.plan_phases(
        profile=PROFILE,
        log=before,
        screening=SCREENING,
        start_date=CUT_START,
        phase={"kind": "mini_cut", "weeks": 5},
        return_to_gain={"maintenance_weeks": 1, "gain_weeks": 6},
        cut_history={"cuts_last_12_months": 0},
    )
    console.print(plan_view(plan))
    trend = client.read_trend(profile=PROFILE, log=log_with_the_cut(before, plan))
    console.print(trend_view(trend, plan))
    console.print()
    console.print(cautions_view([*maintenance.cautions, *plan.cautions, *trend.cautions]))


# The invented log


def log_before_the_cut() -> LogDict:
    """Four weeks around a steady weight, with gaps."""
    return _log(range(28), weight_at=lambda day: 75.6, intake_at=lambda day: HABIT_KCAL)


def log_with_the_cut(before: LogDict, plan: Plan) -> LogDict:
    """The same and four weeks of the mini-cut: water first, then about 0.4 kg a week, on slightly more than planned."""
    weeks = plan.phases[0].weeks

    def weight_at(day: int) -> float:
        since = day - 27
        return 75.6 - 0.7 * (1 - math.exp(-since / 3)) - 0.058 * since

    cut = _log(range(28, 28 + 28), weight_at, lambda day: weeks[(day - 28) // 7].intake_kcal + 40)
    return {
        "weights": [*before["weights"], *cut["weights"]],
        "intakes": [*before.get("intakes", ()), *cut.get("intakes", ())],
    }


def _log(days: range, weight_at: Callable[[int], float], intake_at: Callable[[int], float]) -> LogDict:
    """Daily entries with noise; about one weighing in six and one intake in eight are missing."""
    draw = random.Random(SEED + days.start)  # noqa: S311 - a made-up log, no secret
    weights: list[WeightEntryDict] = []
    intakes: list[IntakeEntryDict] = []
    for day in days:
        weight, intake = weight_at(day) + draw.gauss(0, 0.45), intake_at(day) + draw.gauss(0, 160)
        is_weighed, is_logged = draw.random() > 1 / 6, draw.random() > 1 / 8
        if day == OUTLIER_DAY:
            weight, is_weighed = weight + 4.2, True
        if is_weighed:
            weights.append({"date": LOG_START + timedelta(days=day), "weight_kg": round(weight, 1)})
        if is_logged:
            intakes.append({"date": LOG_START + timedelta(days=day), "intake_kcal": round(intake, -1)})
    return {"weights": weights, "intakes": intakes}


# The views


def maintenance_view(maintenance: Maintenance, methods: Methods) -> Group:
    """Maintenance with its interval, what it rests on, and one source as an example."""
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False)
    table.add_column("kcal a day")
    table.add_column("estimate", justify="right")
    table.add_column("80 % interval", justify="right")
    table.add_column("counts for", justify="right")
    contribution = maintenance.contribution
    rows = [
        ("equations and activity alone", contribution.prior_kcal, f"{contribution.prior_share:.0%}"),
        ("[bold]maintenance, with the log[/bold]", maintenance.maintenance_kcal, f"log {contribution.log_share:.0%}"),
        ("resting energy", maintenance.resting_kcal, ""),
    ]
    for name, interval, share in rows:
        table.add_row(name, f"{interval.mean:,.0f}", between(interval, ",.0f"), share)
    used = [row for row in maintenance.equations if row.is_used]
    told = f"{len(used)} of {len(maintenance.equations)} prediction equations used"
    if used:
        told += f", among them: {source_of(used[0].id, methods)}"
    return section("1  Maintenance", table, f"[dim]{told}[/dim]")


def plan_view(plan: Plan) -> Group:
    """The phases week by week, what each is expected to change, and the guard rails that spoke."""
    if not plan.feasible:
        return section("2  Plan", "No safe plan does what was asked.", notes(plan.reasons))
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, collapse_padding=True)
    table.add_column("week from", no_wrap=True)
    for name in ("kcal", "protein g", "carb g", "fat g", "weight kg (80 %)", "fat kg", "lean kg", "carried kg"):
        table.add_column(name, justify="right", no_wrap=True)
    for phase in plan.phases:
        change = phase.change
        table.add_section()
        table.add_row(
            f"[bold]{phase.kind.replace('_', '-')}[/bold]",
            *[""] * 4,
            f"[dim]in all {signed(change.weight_kg.mean)}[/dim]",
            *(f"[dim]{signed(part.mean)}[/dim]" for part in (change.fat_kg, change.lean_kg, change.carried_kg)),
        )
        for week in phase.weeks:
            end = week.at_end
            table.add_row(
                f"{week.start_date:%d %b}",
                f"{week.intake_kcal:,}",
                f"{week.protein_g}",
                f"{week.carbohydrate_g}",
                f"{week.fat_g}",
                f"{end.weight_kg.mean:.1f} ({between(end.weight_kg, '.1f')})",
                f"{end.fat_kg.mean:.1f}",
                f"{end.lean_kg.mean:.1f}",
                signed(end.carried_kg.mean),
            )
    fat = plan.phases[0].change.fat_kg
    told = (
        f"Fat in the mini-cut: {fat.mean:+.1f} kg, with 80 % probability {between(fat, '+.1f')} kg. Body masses are "
        "those expected on the last day of the week; carried is glycogen, water and gut content."
    )
    rails = [f"[yellow]guard rail {rail.id}[/yellow] ({rail.action}): {rail.text}" for rail in plan.guard_rails]
    return section("2  Plan", table, told, *rails, notes(plan.phases[0].reasons))


def trend_view(trend: Trend, plan: Plan) -> Group:
    """The log read, week by week and as change over its windows, beside what the plan forecast."""
    weeks = Table(box=box.SIMPLE_HEAD, pad_edge=False)
    weeks.add_column("week to")
    for name in ("weighed", "mean kg", "trend kg (80 %)", "carried kg", "forecast kg (80 %)"):
        weeks.add_column(name, justify="right")
    forecast = {week.at_end.date: week.at_end.weight_kg for phase in plan.phases for week in phase.weeks}
    days, smoothed = trend.days, trend.days.smoothed_weight_kg
    for last in range(6, len(days.date), 7):
        observed = [weight for weight in days.observed_weight_kg[last - 6 : last + 1] if weight is not None]
        expected = forecast.get(days.date[last])
        weeks.add_row(
            f"{days.date[last]:%d %b}",
            f"{len(observed)} of 7",
            f"{sum(observed) / len(observed):.1f}" if observed else "-",
            f"{smoothed.mean[last]:.1f} ({smoothed.lower[last]:.1f} to {smoothed.upper[last]:.1f})",
            signed(days.carried_kg.mean[last]),
            f"{expected.mean:.1f} ({between(expected, '.1f')})" if expected else "[dim]before the plan[/dim]",
        )
    split = Table(box=box.SIMPLE_HEAD, pad_edge=False)
    split.add_column("change over")
    for name in ("weight kg (80 %)", "of it tissue kg", "of it carried kg"):
        split.add_column(name, justify="right")
    for change in trend.changes:
        parts = (change.weight_kg, change.tissue_kg, change.carried_kg)
        split.add_row(f"{change.days} days", *(f"{signed(part.mean)} ({between(part, '+.1f')})" for part in parts))
    told = (
        f"Tissue now changes by [bold]{trend.weekly_rate_kg.mean:+.2f} kg a week[/bold] "
        f"({between(trend.weekly_rate_kg, '+.2f')}); maintenance now {trend.maintenance_kcal.mean:,.0f} kcal a day "
        f"({between(trend.maintenance_kcal, ',.0f')}), {trend.log_share:.0%} of it from the log."
    )
    if not trend.is_conclusive:
        told = f"Too early to tell a direction: about {trend.more_days_needed} more days are needed."
    return section("3  Trend", weeks, split, told, notes(trend.notes))


def cautions_view(cautions: Iterable[models.Note]) -> Panel:
    """Every caution once."""
    texts = dict.fromkeys(caution.text for caution in cautions)
    return Panel(bullets(texts), title="Cautions", title_align="left", border_style="yellow", box=box.ROUNDED)


def section(title: str, *parts: Table | str | None) -> Group:
    """A heading and what is below it, with air around."""
    shown = [Padding(part, (0, 0, 0, 2)) for part in parts if part]
    return Group("", Text(title, style="bold cyan"), *shown)


def notes(found: Sequence[models.Note]) -> Table | None:
    """Reasons or notes as a list."""
    return bullets(note.text for note in found) if found else None


def bullets(texts: Iterable[str]) -> Table:
    """Texts as a list whose lines hang."""
    grid = Table.grid(padding=(0, 1))
    for text in texts:
        grid.add_row("·", text)
    return grid


def between(interval: models.Interval, form: str) -> str:
    """The ends of an interval."""
    return f"{interval.lower:{form}} to {interval.upper:{form}}"


def signed(change: float) -> str:
    """A change to one decimal, without a minus sign before zero."""
    return f"{round(change, 1) + 0.0:+.1f}"


def source_of(method_id: str, methods: Methods) -> str:
    """The method's first source as the catalogue cites it."""
    entry = methods.entry(method_id)
    citations = {source.id: source.citation for source in methods.sources}
    return citations[entry.source_ids[0]] if entry.source_ids else entry.summary


if __name__ == "__main__":
    raise SystemExit(main())
