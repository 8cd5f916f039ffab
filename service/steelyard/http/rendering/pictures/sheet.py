"""A whole picture: its title and message, panels below each other, cautions at the foot."""

from functools import cache
from typing import Any, NamedTuple

from ...languages import LANGUAGES
from .labels import LABEL_PX, TEXT_PX, Layer, text
from .palette import Look
from .text_width import FONT, wrapped

SCHEMA = "https://vega.github.io/schema/vega-lite/v6.json"
_TITLE_PX = 17
_LINE_PX = 15
_PADDING_PX = 18


class Headline(NamedTuple):
    """What a picture says in words: its title, the lines under it, and the text for those who cannot see it."""

    title: str
    lines: list[str]
    description: str


class Drawing(NamedTuple):
    """A picture as its Vega-Lite specification, with the message that every form of it carries."""

    title: str
    description: str
    specification: dict[str, Any]
    language: str


def sheet(look: Look, message: Headline, panels: list[Layer], cautions: list[str]) -> Drawing:
    """The picture of ``panels``, in their order."""
    title = {
        "text": wrapped(message.title, _TITLE_PX, look.width, is_bold=True),
        "subtitle": [part for line in message.lines for part in wrapped(line, TEXT_PX, look.width)],
        "anchor": "start",
        "frame": "group",
        "offset": 14,
        "subtitlePadding": 6,
    }
    said = [part for caution in cautions for part in wrapped(caution, LABEL_PX, look.width)]
    foot: Layer = {
        "width": look.width,
        "height": _LINE_PX * len(said),
        "layer": [text(said, 0, _LINE_PX / 2, look.muted, fontSize=LABEL_PX, lineHeight=_LINE_PX)],
    }
    description = " ".join([message.description, *cautions]).replace("\u00a0", " ")
    return Drawing(
        message.title,
        description,
        {
            "$schema": SCHEMA,
            "title": title,
            "description": description,
            "background": look.background,
            "padding": _PADDING_PX,
            "spacing": 16,
            "vconcat": [*panels, foot],
            "config": _config(look),
        },
        look.words.language,
    )


@cache
def _locale(language: str) -> dict[str, Any]:
    """Numbers and dates of axes, as d3 has them; English is what it has by itself."""
    if language == "en":
        return {}
    from babel import Locale, numbers  # with the first picture in it, not with the start

    locale = Locale.parse(LANGUAGES[language].locale, sep="-")
    days, months = locale.days["format"], locale.months["format"]
    sunday_first = (6, 0, 1, 2, 3, 4, 5)
    return {
        "locale": {
            "number": {
                "decimal": numbers.get_decimal_symbol(locale),
                "thousands": numbers.get_group_symbol(locale),
                "grouping": [3],
                "currency": ["", ""],
            },
            "time": {
                "dateTime": "%x, %X",
                "date": "%-d.%-m.%Y",
                "time": "%H:%M",
                "periods": ["AM", "PM"],
                "days": [days["wide"][day] for day in sunday_first],
                "shortDays": [days["abbreviated"][day] for day in sunday_first],
                "months": [months["wide"][month] for month in range(1, 13)],
                "shortMonths": [months["abbreviated"][month] for month in range(1, 13)],
            },
        }
    }


def _config(look: Look) -> dict[str, Any]:
    return {
        **_locale(look.words.language),
        "font": FONT,
        "aria": False,  # the picture has one description, instead of one for each of its marks
        "view": {"stroke": None},
        "title": {
            "color": look.ink,
            "fontSize": _TITLE_PX,
            "lineHeight": _TITLE_PX + 4,
            "subtitleColor": look.ink,
            "subtitleFontSize": TEXT_PX,
            "subtitleLineHeight": _LINE_PX + 1,
        },
        "axis": {
            "labelColor": look.muted,
            "labelFontSize": LABEL_PX,
            "gridColor": look.grid,
            "gridOpacity": 0.6,
            "domainColor": look.grid,
            "tickColor": look.grid,
        },
    }
