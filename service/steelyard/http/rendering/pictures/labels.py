"""Texts and samples that are placed by the pixel: headers, legends, labels."""

from collections.abc import Sequence
from typing import Any, NamedTuple

from .palette import SOLID, Look
from .text_width import width_px

TEXT_PX = 12
LABEL_PX = 11
HEADER_PX = 22  # the height of a panel's header above it
LINE_WIDTH = 2.2

Layer = dict[str, Any]
_LINE_SAMPLE_PX = 26
_SYMBOL_SAMPLE_PX = 12
_GAP_PX = 6  # between a sample and its text
_DENSE_OPACITY = 0.45
_NEXT_PX = 16  # between a text and the next sample


class Sample(NamedTuple):
    """An entry of a panel's legend: what one of its marks looks like, and what it stands for."""

    text: str
    colour: str
    dash: list[int] = SOLID
    shape: str | None = None  # a symbol instead of a line
    is_band: bool = False
    is_filled: bool = True
    is_dense: bool = False  # a band that is a thing, not a doubt


def text(said: str | Sequence[str], x: float, y: float, colour: str, **mark: Any) -> Layer:
    """One or more lines of text; the middle of the first is at ``x``, ``y`` within a panel."""
    lines: Any = said if isinstance(said, str) else list(said)
    usual = {"align": "left", "baseline": "middle", "fontSize": TEXT_PX}
    return _placed({"type": "text", "text": lines, "color": colour, **usual, **mark}, x=x, y=y)


def header(look: Look, title: str, samples: list[Sample], y: float) -> list[Layer]:
    """A panel's title and, from the right, its legend, in one line whose middle is at ``y``.

    Where they do not fit beside each other the legend comes below the title, in as many lines as it needs.
    """
    lines = _legend_lines(look, title, samples)
    layers = [text(title, 0, y - HEADER_PX * (len(lines) - 1), look.ink, fontWeight="bold")]
    for row, line in enumerate(lines):
        middle = y - HEADER_PX * (len(lines) - 1 - row)
        x = look.width if len(lines) == 1 else sum(_sample_px(sample) + _NEXT_PX for sample in line) - _NEXT_PX
        x = float(min(x, look.width))
        for sample in reversed(line):
            x -= width_px(sample.text, LABEL_PX)
            layers.append(text(sample.text, x, middle, look.muted, fontSize=LABEL_PX))
            x -= _GAP_PX
            left = x - (_LINE_SAMPLE_PX if sample.shape is None else _SYMBOL_SAMPLE_PX)
            layers.append(_drawn(look, sample, left, x, middle))
            x = left - _NEXT_PX
    return layers


def _legend_lines(look: Look, title: str, samples: list[Sample]) -> list[list[Sample]]:
    """The legend beside the title, or in lines below it, of which the first, the title's, is then empty."""
    whole = sum(_sample_px(sample) + _NEXT_PX for sample in samples)
    if width_px(title, TEXT_PX, is_bold=True) + whole <= look.width:
        return [samples]
    lines: list[list[Sample]] = [[], []]
    taken = 0.0
    for sample in samples:
        wide = _sample_px(sample) + _NEXT_PX
        if lines[-1] and taken + wide - _NEXT_PX > look.width:
            lines.append([])
            taken = 0.0
        lines[-1].append(sample)
        taken += wide
    return lines


def _sample_px(sample: Sample) -> float:
    drawn = _LINE_SAMPLE_PX if sample.shape is None else _SYMBOL_SAMPLE_PX
    return drawn + _GAP_PX + width_px(sample.text, LABEL_PX)


def opacity_of(look: Look, *, is_dense: bool) -> float:
    """How much of what is behind a band it hides."""
    return _DENSE_OPACITY if is_dense else look.band_opacity


def symbol(shape: str, colour: str, *, is_filled: bool = True, size: float = 60, **mark: Any) -> dict[str, Any]:
    """The mark of a point."""
    usual = {"size": size, "opacity": 1}
    return {"type": "point", "shape": shape, "color": colour, "filled": is_filled, **usual, **mark}


def _drawn(look: Look, sample: Sample, left: float, right: float, y: float) -> Layer:
    if sample.shape is not None:
        return _placed(symbol(sample.shape, sample.colour, is_filled=sample.is_filled), x=(left + right) / 2, y=y)
    mark: dict[str, Any] = {"type": "rule", "color": sample.colour, "strokeWidth": LINE_WIDTH}
    if sample.is_band:
        mark |= {"strokeWidth": 11, "opacity": opacity_of(look, is_dense=sample.is_dense)}
    if sample.dash:
        mark["strokeDash"] = sample.dash
    return _placed(mark, x=left, x2=right, y=y)


def _placed(mark: dict[str, Any], **pixels: float) -> Layer:
    encoding = {channel: {"value": round(value, 1)} for channel, value in pixels.items()}
    return {"data": {"values": [{}]}, "mark": mark, "encoding": encoding}
