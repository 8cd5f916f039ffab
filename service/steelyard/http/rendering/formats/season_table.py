"""A season's weeks as comma-separated values (RFC 4180), one line a week, units in the header.

It is data for programs: its columns are the same for everybody, those of body fat among them, as JSON's fields are.
"""

import csv
import io
from datetime import timedelta

from ...schemas.seasons import SeasonQuestion
from ..wording import Words
from . import forecast_columns, season_words

HEADER = (
    "phase", "week", "start_date", "end_date", "intake_kcal_per_day", "energy_balance_kcal_per_day",
    *forecast_columns.HEADER, "cautions", "ends_early_when",
)  # fmt: skip


def table(_request: SeasonQuestion, season: season_words.Answer, words: Words) -> bytes:
    """The weekly table, forecasts being those at the end of each week."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADER)
    for phase, week in season_words.weeks(season):
        said = " ".join(season_words.cautions(words, season, [phase]))
        writer.writerow(
            (
                week.kind, week.week, week.start_date, week.start_date + timedelta(days=6), week.intake_kcal,
                week.energy_balance_kcal, *forecast_columns.cells(week.at_end), said,
                " ".join(words.texts(phase.ends_early_when)),
            )
        )  # fmt: skip
    return text.getvalue().encode()
