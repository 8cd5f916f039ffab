"""Answers as pictures: one Vega-Lite specification each, as it is, or drawn as SVG or PNG."""

from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any, ClassVar

import msgspec

from ...wire.negotiation import Format, Option, Workshop
from ..wording import Words
from . import comparison_picture, forecast_picture, plan_picture, season_picture, trend_picture
from .palette import Look, PictureWidth, Theme, look_of
from .sheet import Drawing

SVG = "image/svg+xml"
PNG = "image/png"
VEGA_LITE = "application/vnd.vegalite.v6+json"  # the name that notebooks gave it; no registry has one
THEME = Option(
    name="theme",
    default=Theme.LIGHT,
    description="The page that a picture is for: `light` by default. Other answers do not depend on it.",
)


WIDTH = Option(
    name="width",
    default=PictureWidth.PAGE,
    description="How wide a picture is: for a `page` (about 780 pixels) by default, or a `phone` (at most 390). Other "
    "answers do not depend on it.",
)


class PictureFormat(Format, frozen=True, kw_only=True):
    """A picture of an answer, with its words in the caller's language.

    ``form`` is what ``render_process`` makes of it; empty for the specification itself.

    ``encode`` lays it out, without drawing it, from the request's body, the computed answer and the look.
    """

    form: str

    options: ClassVar[tuple[Option, ...]] = (THEME, WIDTH)
    is_slow: ClassVar[bool] = True
    has_words: ClassVar[bool] = True

    def _make(self, body: Any, answer: Any, chosen: Mapping[str, StrEnum], language: str, *, spares: bool) -> Drawing:
        words = Words(language, spares)
        look = look_of(Theme(chosen[THEME.name]), PictureWidth(chosen[WIDTH.name]), words)
        drawing: Drawing = self.encode(body, answer, look)
        return drawing

    async def finish(self, made: Any, id: str | None, workshop: Workshop) -> bytes:
        """The picture as bytes: drawn, or its specification."""
        drawing: Drawing = made
        if not self.form:
            return msgspec.json.encode(drawing.specification)
        return await workshop({"form": self.form, "id": id, **drawing._asdict()})


def _pictures(draw: Callable[[Any, Any, Look], Drawing]) -> Mapping[str, PictureFormat]:
    forms: list[tuple[str, str, str, dict[str, Any]]] = [
        (SVG, "svg", "SvgPicture", {"type": "string", "description": "A picture (SVG)."}),
        (PNG, "png", "PngPicture", {"type": "string", "format": "binary", "description": "A picture (PNG)."}),
        (VEGA_LITE, "", "VegaLitePicture", {"type": "object", "description": "A picture's Vega-Lite specification."}),
    ]
    return {
        media_type: PictureFormat(name=name, content_type=media_type, form=form, schema=schema, encode=draw)
        for media_type, form, name, schema in forms
    }


PLAN_PICTURES = _pictures(plan_picture.draw)
FORECAST_PICTURES = _pictures(forecast_picture.draw)
TREND_PICTURES = _pictures(trend_picture.draw)
SEASON_PICTURES = _pictures(season_picture.draw)
COMPARISON_PICTURES = _pictures(comparison_picture.draw)
