"""Pictures and documents: the answers of other operations in other forms, each with a path of its own.

A path that answers JSON answers nothing else, so that a client generated from the contract knows the type of what it
gets.
"""

from collections.abc import Mapping

import msgspec

from ..operation.operation import Operation
from ..rendering.formats import PLAN_FORMATS, SEASON_FORMATS
from ..rendering.pictures import (
    COMPARISON_PICTURES,
    FORECAST_PICTURES,
    PLAN_PICTURES,
    SEASON_PICTURES,
    TREND_PICTURES,
)
from ..wire.negotiation import Format
from .forecasts import forecast_intake
from .plans import plan_phases
from .seasons import compare_strategies, optimise_season, plan_season
from .trends import read_trend

_PICTURE = """\
What `{operation_id}` answers, as a picture with its text for those who do not see it.

The body is that of `{operation_id}`, and so are the refusals. `Accept` chooses among `image/svg+xml` (also where
anything is accepted), `image/png`, and the picture's Vega-Lite specification for those who draw it themselves.
`Accept-Language` chooses among the languages of `/v1/messages`. Cautions are in each of them."""
_DOCUMENT = """\
What `{operation_id}` answers, as a document for people.

The body is that of `{operation_id}`, and so are the refusals. `Accept` chooses among a calendar (`text/calendar`, RFC
5545: an all-day event for each phase and each change of intake; also where anything is accepted), a weekly table
(`text/csv`, RFC 4180, units in the header), a summary to paste into a message (`text/markdown`), and a briefing to send
or read aloud (`text/plain`; `briefing` says for whom): what to eat and expect at the start, week by week, at the end,
and after it. `Accept-Language` chooses among the languages of `/v1/messages`; a table's columns and codes are the same
in each. Every document carries the cautions. Of a plan, summary and briefing tell the other sizes and the activity of
`include` whether or not they are asked for."""


def _other_form(
    operation: Operation, operation_id: str, summary: str, *, path: str, description: str, formats: Mapping[str, Format]
) -> Operation:
    name, example = list(operation.request_examples.items())[-1]  # the one with the shortest answer
    return msgspec.structs.replace(
        operation,
        operation_id=operation_id,
        path=operation.path + path,
        summary=summary,
        description=description.format(operation_id=operation.operation_id),
        request_examples={name: example},
        formats=formats,
        renders=operation.operation_id,
    )


def _picture(operation: Operation, operation_id: str, summary: str, formats: Mapping[str, Format]) -> Operation:
    return _other_form(operation, operation_id, summary, path="/picture", description=_PICTURE, formats=formats)


def _document(operation: Operation, operation_id: str, summary: str, formats: Mapping[str, Format]) -> Operation:
    return _other_form(operation, operation_id, summary, path="/document", description=_DOCUMENT, formats=formats)


draw_plan = _picture(plan_phases, "draw_plan", "Draw a plan", PLAN_PICTURES)
draw_forecast = _picture(forecast_intake, "draw_forecast", "Draw a forecast", FORECAST_PICTURES)
draw_trend = _picture(read_trend, "draw_trend", "Draw what a log says", TREND_PICTURES)
draw_season = _picture(plan_season, "draw_season", "Draw a season", SEASON_PICTURES)
draw_comparison = _picture(compare_strategies, "draw_comparison", "Draw strategies side by side", COMPARISON_PICTURES)
draw_optimum = _picture(optimise_season, "draw_optimum", "Draw the best season inside the limits", SEASON_PICTURES)
document_plan = _document(
    plan_phases, "document_plan", "Write a plan as calendar, table, summary or briefing", PLAN_FORMATS
)
document_season = _document(
    plan_season, "document_season", "Write a season as calendar, table, summary or briefing", SEASON_FORMATS
)
document_optimum = _document(
    optimise_season, "document_optimum", "Write the best season as calendar, table, summary or briefing", SEASON_FORMATS
)

OTHER_FORMS: tuple[Operation, ...] = (
    draw_plan,
    draw_forecast,
    draw_trend,
    draw_season,
    draw_comparison,
    draw_optimum,
    document_plan,
    document_season,
    document_optimum,
)
