"""Panels of rows: a value with its interval each, drawn and written."""

from typing import Any, NamedTuple

from ...schemas.shared_fields import Interval
from .labels import HEADER_PX, LABEL_PX, LINE_WIDTH, Layer, Sample, header, text
from .palette import Look
from .text_width import shortened, width_px
from .time_panels import ends_of

_ROW_PX = 18
_ABOVE_PX = 6  # above a heading
_INDENT_PX = 10  # of rows under a heading
_BOLD_SHARE = 1.12  # headings are bold, and wider by this much
_NAME_SHARE = 0.3  # the most room for a row's name, on the left, of the panel
_GUTTER_PX = 24  # between the axis and the texts on both sides
_MEAN = {"field": "mean", "type": "quantitative", "title": None}
_ROW = {"field": "y", "type": "quantitative", "scale": None, "axis": None}


class Row(NamedTuple):
    """A value with its interval, and what it looks like."""

    name: str
    value: Interval
    colour: str
    shape: str
    is_filled: bool = True


class Group(NamedTuple):
    """Rows under a heading; without one where it is empty."""

    heading: str
    rows: list[Row]


def panel(
    look: Look,
    groups: list[Group],
    *,
    title: str,
    samples: list[Sample],
    digits: int = 1,
    is_change: bool = True,
    scale: float = 1.0,
) -> Layer:
    """The rows of ``groups`` on one axis, which has its zero marked where the values are changes."""
    words = look.words
    drawn: list[dict[str, Any]] = []
    texts: list[Layer] = []
    y = left = right = 0.0
    name_px = _NAME_SHARE * look.width
    groups = [part for group in groups for part in _with_room(group, name_px)]
    lines = {"fontSize": LABEL_PX, "lineHeight": _ROW_PX}
    for group in groups:
        indent = 0
        if group.heading:
            y += _ABOVE_PX if drawn else 0
            heading, indent = shortened(group.heading, LABEL_PX, look.width / _BOLD_SHARE), _INDENT_PX
            texts.append(_ground(look, width_px(heading, LABEL_PX, is_bold=True), y))
            texts.append(text(heading, 0, y + _ROW_PX / 2, look.ink, fontWeight="bold", fontSize=LABEL_PX))
            y += _ROW_PX
        names = [shortened(row.name, LABEL_PX, name_px - indent) for row in group.rows]
        figures = [words.values(row.value, digits, is_change=is_change, scale=scale) for row in group.rows]
        if any(names):
            texts.append(text(names, indent, y + _ROW_PX / 2, look.ink, **lines))
        texts.append(text(figures, look.width, y + _ROW_PX / 2, look.ink, align="right", **lines))
        left = max(left, *(indent + width_px(name, LABEL_PX) for name in names))
        right = max(right, *(width_px(figure, LABEL_PX) for figure in figures))
        for row in group.rows:
            drawn.append(_drawn_row(look, group, row, scale) | {"y": y + _ROW_PX / 2})
            y += _ROW_PX
    sides = (left + _GUTTER_PX, look.width - right - _GUTTER_PX)
    return {
        "width": look.width,
        "height": y,
        "layer": [
            *_drawn(look, drawn, sides, y, is_change),
            *texts,
            *header(look, title, samples, -HEADER_PX / 2),
        ],
    }


def _ground(look: Look, width: float, y: float) -> Layer:
    """What is behind a heading, so that no line of the axis goes through its letters."""
    ends = {"x": 0, "x2": round(width, 1), "y": y, "y2": y + _ROW_PX}
    encoding = {channel: {"value": value} for channel, value in ends.items()}
    return {"data": {"values": [{}]}, "mark": {"type": "rect", "color": look.background}, "encoding": encoding}


def _with_room(group: Group, name_px: float) -> list[Group]:
    """A group as it is, or, where a name has no room beside its row, each row with its name above it."""
    if group.heading or all(width_px(row.name, LABEL_PX) <= name_px for row in group.rows):
        return [group]
    return [Group(row.name, [row._replace(name="")]) for row in group.rows]


def _drawn_row(look: Look, group: Group, row: Row, scale: float) -> dict[str, Any]:
    ends = {end: round(scale * getattr(row.value, end), 4) for end in ("lower", "mean", "upper")}
    fill = row.colour if row.is_filled else look.background
    return {"group": group.heading, "name": row.name, **ends, "colour": row.colour, "fill": fill, "shape": row.shape}


def _drawn(
    look: Look, rows: list[dict[str, Any]], sides: tuple[float, float], height: float, is_change: bool
) -> list[Layer]:
    low, high = ends_of([*(row[end] for row in rows for end in ("lower", "upper")), *([0.0] if is_change else [])])
    if not is_change:
        low = max(low, 0.0)  # what is counted has no room below nothing
    scale = {"domain": [low, high], "range": list(sides), "nice": False, "zero": False}
    axis = {
        "title": None,
        "tickCount": 6 if look.width > 500 else 2,
        "format": ",.4~f",
        "domain": False,
        "labelFlush": False,
    }
    data = {"values": rows}
    colour = {"field": "colour", "type": "nominal", "scale": None, "legend": None}
    return [
        {
            "data": {"values": [{"mean": 0}] if is_change else []},
            "mark": {"type": "rule", "color": look.muted, "strokeWidth": 1},
            "encoding": {"x": {**_MEAN, "scale": scale, "axis": axis}, "y": {"value": 0}, "y2": {"value": height}},
        },
        {
            "data": data,
            "mark": {"type": "rule", "strokeWidth": LINE_WIDTH},
            "encoding": {"x": {**_MEAN, "field": "lower"}, "x2": {"field": "upper"}, "y": _ROW, "color": colour},
        },
        {
            "data": data,
            "mark": {"type": "point", "size": 65, "opacity": 1, "strokeWidth": 1.6},
            "encoding": {
                "x": _MEAN,
                "y": _ROW,
                "stroke": colour,
                "fill": {**colour, "field": "fill"},  # a hollow symbol hides the rule behind it
                "shape": {"field": "shape", "type": "nominal", "scale": None, "legend": None},
            },
        },
    ]
