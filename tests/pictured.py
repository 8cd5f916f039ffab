"""Requests for pictures, the pictures of their answers, and the schema that these have to fit."""

import json
from functools import cache
from importlib.resources import files
from typing import Any

import msgspec
from jsonschema import Draft7Validator
from steelyard.http.app import OPERATIONS
from steelyard.http.endpoints.examples.examples import FORECAST_EXAMPLES, PLAN_EXAMPLES, TREND_EXAMPLES
from steelyard.http.endpoints.examples.seasons import COMPARISON_EXAMPLES, SEASON_EXAMPLES
from steelyard.http.rendering.pictures import SVG, PictureFormat
from steelyard.http.rendering.pictures.palette import PictureWidth, Theme
from steelyard.http.rendering.pictures.sheet import Drawing

Json = dict[str, Any]
PICTURE = "/picture"  # where an operation's answers are drawn
PLAN: Json = msgspec.to_builtins(PLAN_EXAMPLES["fat_to_lose"])
ASKED: dict[str, tuple[str, Json]] = {
    "plan": ("/v1/plans", PLAN),
    "infeasible": ("/v1/plans", PLAN | {"phase": {"kind": "mini_cut", "fat_loss_kg": 6, "weeks": 2}}),
    "cut with breaks": (
        "/v1/plans",
        PLAN | {"phase": {"kind": "cut", "fat_loss_kg": 5, "weeks": 20, "break_every_weeks": 6}, "pause": {"weeks": 1}},
    ),
    "gain": ("/v1/plans", PLAN | {"phase": {"kind": "gain", "weeks": 16}}),
    "forecast": ("/v1/forecasts", msgspec.to_builtins(FORECAST_EXAMPLES["intake_for_target"])),
    "one day": (
        "/v1/trends",
        msgspec.to_builtins(TREND_EXAMPLES["three_weeks"])
        | {"log": {"weights": [{"date": "2026-03-02", "weight_kg": 84}]}},
    ),
    "trend": ("/v1/trends", msgspec.to_builtins(TREND_EXAMPLES["three_weeks"])),
    "season": ("/v1/seasons", msgspec.to_builtins(SEASON_EXAMPLES["a_year_with_a_holiday"])),
    "comparison": (
        "/v1/seasons/comparison",
        msgspec.to_builtins(COMPARISON_EXAMPLES["all_ready_made"]) | {"horizon_weeks": 30},
    ),
}


def drawing(
    name: str,
    theme: Theme = Theme.LIGHT,
    width: PictureWidth = PictureWidth.PAGE,
    language: str = "en",
    **changes: Any,
) -> Drawing:
    """The picture of an answer, without the service."""
    path, body = ASKED[name]
    operation = next(operation for operation in OPERATIONS if operation.path == path + PICTURE)
    assert operation.body_type is not None
    request = msgspec.convert(body | changes, operation.body_type, strict=False)
    format_ = operation.formats[SVG]
    assert isinstance(format_, PictureFormat)
    made: Drawing = format_.make(request, operation.compute(request), {"theme": theme, "width": width}, language)
    return made


@cache
def published_schema() -> Draft7Validator:
    """The schema that the authors of Vega-Lite publish, of the version that pictures are written for."""
    schema = json.loads(files("altair").joinpath("vegalite/v6/schema/vega-lite-schema.json").read_text())
    return Draft7Validator(schema)
