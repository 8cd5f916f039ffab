"""Panels over time: phases as shades behind lines, bands and points."""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from functools import cache
from math import ceil, floor, log10
from typing import Any, NamedTuple

from ...languages import LANGUAGES
from .labels import HEADER_PX, LABEL_PX, LINE_WIDTH, Layer, Sample, header, opacity_of, text
from .palette import SOLID, Look, shade_of
from .text_width import width_px

_ROW_PX = 14  # of the labels of phases
_MOST_ROWS = 4
_SHORT_SPAN_DAYS = 7 * 30
_TICK_PX = 66  # the least room for a label of the axis of dates
_ONE_DAY = timedelta(days=1)
_DATE = {"field": "date", "type": "temporal", "title": None}
_VALUE = {"field": "value", "type": "quantitative", "title": None}


class Shade(NamedTuple):
    """A phase, or a break within one. ``end`` is the day after its last."""

    kind: str
    name: str
    start: date
    end: date


class Span(NamedTuple):
    """The days that the panels of a picture share, and the phases behind them."""

    first: date
    last: date
    shades: tuple[Shade, ...] = ()
    width: int = 700

    def x_px(self, day: date) -> float:
        """Where a day begins."""
        return self.width * (day - self.first).days / max(1, (self.last - self.first).days)


class Label(NamedTuple):
    """Where the name of a phase is written."""

    text: str
    x: float
    row: int


def after(day: date) -> date:
    """The end of a day, as the beginning of the next: values at the end of a week stand there."""
    return day + _ONE_DAY


def labels_of(span: Span) -> list[Label]:
    """The names of phases, each in the first row where it runs into no other; one without room is left out."""
    placed: list[Label] = []
    taken = [0.0] * _MOST_ROWS  # how far each row is written
    for shade in span.shades:
        half = width_px(shade.name, LABEL_PX) / 2 + 3
        start, end = span.x_px(shade.start), span.x_px(shade.end)
        middle = min(max((start + end) / 2, half), span.width - half)
        # What is wider than its phase goes below the first row, where it does not seem to name its neighbours.
        rows = range(0 if 2 * half <= end - start else 1, _MOST_ROWS)
        row = next((row for row in rows if taken[row] <= middle - half), None)
        if row is not None:
            taken[row] = middle + half
            placed.append(Label(shade.name, middle, row))
    return placed


def panel(
    look: Look,
    span: Span,
    *,
    title: str,
    samples: list[Sample],
    layers: list[Layer],
    ends: tuple[float, float],
    height: int,
    unit_format: str = ",.4~f",  # a d3-format
    is_labelled: bool = False,
) -> Layer:
    """One panel of the height given, its header and the names of phases above it. ``ends`` are those of its y axis."""
    labels = labels_of(span) if is_labelled else []
    strip = _ROW_PX * (max(label.row for label in labels) + 1) + 4 if labels else 0
    ticks, tick_format = ticks_of(span, look.words.language)
    x_axis = {"title": None, "format": tick_format, "values": [_date_time(tick) for tick in ticks], "grid": False}
    x_scale = {"type": "utc", "domain": [_date_time(span.first), _date_time(span.last)]}
    y_axis = {"title": None, "format": unit_format, "tickCount": 5}
    y_scale = {"domain": list(ends), "nice": False, "zero": False}
    # Scales and axes are said once, by the first layer; the others share them.
    first, *others = layers
    encoding = dict(first["encoding"])
    encoding["x"] = {**encoding["x"], "scale": x_scale, "axis": x_axis}
    encoding["y"] = {**encoding["y"], "scale": y_scale, "axis": y_axis}
    names = [
        text(label.text, label.x, (label.row + 0.5) * _ROW_PX + 2 - strip, look.ink, align="center", fontSize=LABEL_PX)
        for label in labels
    ]
    return {
        "width": span.width,
        "height": height,
        "layer": [
            *_shades(look, span, strip, height),
            {**first, "encoding": encoding},
            *others,
            *names,
            *header(look, title, samples, -strip - HEADER_PX / 2),
        ],
    }


def line(rows: Sequence[dict[str, Any]], colour: str, dash: list[int] = SOLID, **mark: Any) -> Layer:
    """A line through rows of ``date`` and ``value``."""
    dashed = {"strokeDash": dash} if dash else {}
    return {
        "data": {"values": list(rows)},
        "mark": {"type": "line", "color": colour, "strokeWidth": LINE_WIDTH, **dashed, **mark},
        "encoding": {"x": _DATE, "y": _VALUE},
    }


def band(look: Look, rows: Sequence[dict[str, Any]], colour: str, *, is_dense: bool = False) -> Layer:
    """An interval between ``lower`` and ``upper`` over ``date``; dense where it is a thing and not a doubt."""
    return {
        "data": {"values": list(rows)},
        "mark": {"type": "area", "color": colour, "opacity": opacity_of(look, is_dense=is_dense)},
        "encoding": {"x": _DATE, "y": {**_VALUE, "field": "lower"}, "y2": {"field": "upper"}},
    }


def end_label(
    span: Span, lines: Sequence[Sequence[dict[str, Any]]], name: str, colour: str, *, is_above: bool
) -> Layer:
    """The name of the first of ``lines`` where it ends, beyond all that any of them does beside the name."""
    side = {"baseline": "bottom", "dy": -5} if is_above else {"baseline": "top", "dy": 6}
    mark = {"type": "text", "text": name, "color": colour, "align": "right", "dx": -3, "fontSize": LABEL_PX,
            "fontWeight": "bold"}  # fmt: skip
    begins_px = span.width - width_px(name, LABEL_PX, is_bold=True)
    beside: list[float] = []
    for rows in lines:
        for row in reversed(rows):
            beside.append(row["value"])
            if span.x_px(date.fromisoformat(row["date"])) < begins_px:  # from here the line comes to the name
                break
    at = {"date": lines[0][-1]["date"], "value": max(beside) if is_above else min(beside)}
    return {"data": {"values": [at]}, "mark": {**mark, **side}, "encoding": {"x": _DATE, "y": _VALUE}}


def points(rows: Sequence[dict[str, Any]], mark: dict[str, Any]) -> Layer:
    """Points at rows of ``date`` and ``value``."""
    return {"data": {"values": list(rows)}, "mark": mark, "encoding": {"x": _DATE, "y": _VALUE}}


def level(value: float, colour: str, dash: list[int]) -> Layer:
    """A level line across the panel."""
    return {
        "data": {"values": [{"value": value}]},
        "mark": {"type": "rule", "color": colour, "strokeDash": dash, "strokeWidth": 1.3},
        "encoding": {"x": {"value": 0}, "x2": {"value": "width"}, "y": _VALUE},
    }


def ends_of(values: Iterable[float]) -> tuple[float, float]:
    """Round ends of an axis with a little room on both sides of ``values``."""
    found = list(values)
    low, high = min(found), max(found)
    room = (high - low) * 0.05 or 1.0
    step = 10.0 ** floor(log10((high - low + 2 * room) / 2)) / 2
    return floor((low - room) / step) * step, ceil((high + room) / step) * step


def ticks_of(span: Span, language: str = "en") -> tuple[list[date], str]:
    """Where the axis of dates has ticks, and the d3-time-format of their labels."""
    days = (span.last - span.first).days
    if days <= _SHORT_SPAN_DAYS:
        step = next(step for step in (1, 2, 7, 14, 28, 56, 112) if days / step <= span.width // _TICK_PX)
        return [span.first + timedelta(days=i) for i in range(0, days + 1, step)], _day_and_month(language)
    months = [date(year, month, 1) for year in range(span.first.year, span.last.year + 1) for month in range(1, 13)]
    inside = [month for month in months if span.first <= month <= span.last]
    step = next(step for step in (1, 2, 3, 6, 12, 24, 60, 600) if len(inside) / step <= span.width // _TICK_PX)
    return [month for month in inside if (12 * month.year + month.month - 1) % step == 0], "%b %Y"


@cache
def _day_and_month(language: str) -> str:
    """A d3-time-format, as the language writes it: German has a point after the day."""
    if language == "en":
        return "%-d %b"
    from babel import Locale  # with the first picture in it, not with the start

    form = Locale.parse(LANGUAGES[language].locale, sep="-").datetime_skeletons["MMMd"].pattern
    return str(form).replace("d", "%-d").replace("MMM", "%b")


def _shades(look: Look, span: Span, strip: int, height: int) -> list[Layer]:
    if not span.shades:
        return []
    rows = [
        {"phase": shade.name, "date": str(shade.start), "end": str(shade.end), "colour": shade_of(look, shade.kind)}
        for shade in span.shades
    ]
    tall = {"x": _DATE, "y": {"value": -strip}, "y2": {"value": height}}
    return [
        {
            "data": {"values": rows},
            "mark": {"type": "rect"},
            "encoding": {
                **tall,
                "x2": {"field": "end"},
                "color": {"field": "colour", "type": "nominal", "scale": None, "legend": None},
            },
        },
        {
            "data": {"values": rows[1:]},
            "mark": {"type": "rule", "color": look.grid, "strokeWidth": 1},
            "encoding": tall,
        },
    ]


def _date_time(day: date) -> dict[str, Any]:
    return {"year": day.year, "month": day.month, "date": day.day, "utc": True}
