"""A plan as comma-separated values (RFC 4180), one line a week, units in the header.

Its columns and codes are the same in every language; cautions and signs to stop are in the caller's. Where the request
says how the week is lived, each week is followed by a line for each of its days: ``day`` counts them, and is empty on
the line of a week, so that either are filtered out by it. It is data for programs: its columns are the same for
everybody, those of body fat among them, as the fields of JSON are.
"""

import csv
import io
from collections.abc import Iterator, Mapping
from datetime import timedelta
from typing import Any

from ...schemas.plans import DayPlan, Phase, PlanRequest, PlanResponse, PlanWeek
from ..wording import Words
from . import forecast_columns, plan_words

HEADER = (
    "phase", "week", "day", "start_date", "end_date", "element", "intake_kcal_per_day", "protein_g_per_day",
    "carbohydrate_g_per_day", "fat_g_per_day", "fibre_g_per_day", "alcohol_g_per_day", "meals_protein_g",
    "training_minutes_per_day", "training_kcal_per_day", "flexible", "energy_balance_kcal_per_day",
    *forecast_columns.HEADER, "cautions", "ends_early_when",
)  # fmt: skip


def table(_request: PlanRequest, plan: PlanResponse, words: Words) -> bytes:
    """The table, forecasts being those at the end of each week. An infeasible plan has one line that says so."""
    text = io.StringIO(newline="")
    writer = csv.DictWriter(text, HEADER, restval="", lineterminator="\r\n")
    writer.writeheader()
    if not plan.feasible:
        said = " ".join(plan_words.cautions(words, plan, ()))
        writer.writerow({"phase": "none", "cautions": f"{plan_words.infeasible_text(words, plan)} {said}"})
    for phase in plan.phases:
        said = " ".join(plan_words.cautions(words, plan, [phase]))
        told = {"cautions": said, "ends_early_when": " ".join(words.texts(phase.ends_early_when))}
        for week in phase.weeks:
            writer.writerows({**row, **told} for row in _rows(phase, week))
    return text.getvalue().encode()


def _rows(phase: Phase, week: PlanWeek) -> Iterator[Mapping[str, Any]]:
    of_week = {"phase": phase.kind, "week": week.week, "element": week.element}
    forecast = dict(zip(forecast_columns.HEADER, forecast_columns.cells(week.at_end), strict=True))
    yield {
        **of_week,
        **_eaten(week),
        **forecast,
        "start_date": week.start_date,
        "end_date": week.start_date + timedelta(days=week.days - 1),
        "fibre_g_per_day": week.fibre_g,
        "energy_balance_kcal_per_day": week.energy_balance_kcal,
    }
    for number, day in enumerate(week.by_day, 1):
        yield {
            **of_week,
            **_eaten(day),
            "day": number,
            "start_date": day.date,
            "end_date": day.date,
            "alcohol_g_per_day": day.alcohol_g,
            "meals_protein_g": " ".join(map(str, day.meals_protein_g)),
            "training_minutes_per_day": day.training_minutes,
            "training_kcal_per_day": day.training_kcal,
            "flexible": day.flexible or "",
        }


def _eaten(of: PlanWeek | DayPlan) -> dict[str, int]:
    return {
        "intake_kcal_per_day": of.intake_kcal,
        "protein_g_per_day": of.protein_g,
        "carbohydrate_g_per_day": of.carbohydrate_g,
        "fat_g_per_day": of.fat_g,
    }
