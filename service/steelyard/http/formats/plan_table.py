"""A plan's weeks as comma-separated values (RFC 4180), one line a week, units in the header."""

import csv
import io
from datetime import timedelta

from ..schemas.plans import PlanRequest, PlanResponse
from ..schemas.quantities import Interval
from . import plan_words as words

_FORECAST = {
    "weight": "weight_kg",
    "fat": "fat_kg",
    "lean": "lean_kg",
    "carried": "carried_kg",
    "body_fat": "fat_fraction",
    "maintenance": "maintenance_kcal",
}
_UNITS = {
    "weight": "kg",
    "fat": "kg",
    "lean": "kg",
    "carried": "kg",
    "body_fat": "fraction",
    "maintenance": "kcal_per_day",
}
HEADER = (
    "phase", "week", "start_date", "end_date", "element", "intake_kcal_per_day", "protein_g_per_day",
    "carbohydrate_g_per_day", "fat_g_per_day", "fibre_g_per_day", "energy_balance_kcal_per_day",
    *(f"{name}_{end}_{_UNITS[name]}" for name in _FORECAST for end in ("lower", "mean", "upper")),
    "interval_coverage_fraction", "cautions",
)  # fmt: skip


def table(_request: PlanRequest, plan: PlanResponse) -> bytes:
    """The weekly table, forecasts being those at the end of each week. An infeasible plan has one line that says so."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADER)
    said = " ".join(words.cautions(plan))
    if not plan.feasible:
        writer.writerow(["none", *[""] * (len(HEADER) - 2), f"{words.infeasible_text(plan)} {said}"])
    for phase in plan.phases:
        for week in phase.weeks:
            forecast: list[Interval] = [getattr(week.at_end, field) for field in _FORECAST.values()]
            ends = [end for value in forecast for end in (value.lower, value.mean, value.upper)]
            writer.writerow(
                (
                    phase.kind, week.week, week.start_date, week.start_date + timedelta(days=week.days - 1),
                    week.element, week.intake_kcal, week.protein_g, week.carbohydrate_g, week.fat_g, week.fibre_g,
                    week.energy_balance_kcal, *ends, forecast[0].coverage, said,
                )
            )  # fmt: skip
    return text.getvalue().encode()
