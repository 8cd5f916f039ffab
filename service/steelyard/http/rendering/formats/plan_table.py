"""A plan's weeks as comma-separated values (RFC 4180), one line a week, units in the header."""

import csv
import io
from datetime import timedelta

from ...schemas.plans import PlanRequest, PlanResponse
from . import forecast_columns
from . import plan_words as words

HEADER = (
    "phase", "week", "start_date", "end_date", "element", "intake_kcal_per_day", "protein_g_per_day",
    "carbohydrate_g_per_day", "fat_g_per_day", "fibre_g_per_day", "energy_balance_kcal_per_day",
    *forecast_columns.HEADER, "cautions", "ends_early_when",
)  # fmt: skip


def table(_request: PlanRequest, plan: PlanResponse) -> bytes:
    """The weekly table, forecasts being those at the end of each week. An infeasible plan has one line that says so."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADER)
    said = " ".join(words.cautions(plan))
    if not plan.feasible:
        writer.writerow(["none", *[""] * (len(HEADER) - 3), f"{words.infeasible_text(plan)} {said}", ""])
    for phase in plan.phases:
        stops = " ".join(words.texts(phase.ends_early_when))
        for week in phase.weeks:
            writer.writerow(
                (
                    phase.kind, week.week, week.start_date, week.start_date + timedelta(days=week.days - 1),
                    week.element, week.intake_kcal, week.protein_g, week.carbohydrate_g, week.fat_g, week.fibre_g,
                    week.energy_balance_kcal, *forecast_columns.cells(week.at_end), said, stops,
                )
            )  # fmt: skip
    return text.getvalue().encode()
