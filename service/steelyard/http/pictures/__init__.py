"""Answers as pictures: one Vega-Lite specification each, as it is, or drawn as SVG or PNG."""

from collections.abc import Callable, Mapping
from typing import Any

import msgspec

from . import comparison_picture, forecast_picture, plan_picture, season_picture, trend_picture
from .palette import Theme
from .sheet import Drawing

SVG = "image/svg+xml"
PNG = "image/png"
VEGA_LITE = "application/vnd.vegalite.v6+json"  # the name that notebooks gave it; no registry has one


class PictureFormat(msgspec.Struct, frozen=True, kw_only=True):
    """A picture of an answer. ``form`` is what ``render_process`` makes of it; empty for the specification itself.

    ``draw`` makes it of the request's body, the computed answer and the theme; ``schema`` is what the contract says.
    """

    content_type: str
    form: str
    schema: Mapping[str, Any]
    draw: Callable[[Any, Any, Theme], Drawing]


def _pictures(draw: Callable[[Any, Any, Theme], Drawing]) -> Mapping[str, PictureFormat]:
    forms: list[tuple[str, str, dict[str, Any]]] = [
        (SVG, "svg", {"type": "string"}),
        (PNG, "png", {"type": "string", "format": "binary"}),
        (VEGA_LITE, "", {"type": "object"}),
    ]
    return {name: PictureFormat(content_type=name, form=form, schema=schema, draw=draw) for name, form, schema in forms}


PLAN_PICTURES = _pictures(plan_picture.draw)
FORECAST_PICTURES = _pictures(forecast_picture.draw)
TREND_PICTURES = _pictures(trend_picture.draw)
SEASON_PICTURES = _pictures(season_picture.draw)
COMPARISON_PICTURES = _pictures(comparison_picture.draw)
