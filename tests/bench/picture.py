"""The picture: how far each ratio is from what is asked of it."""

import textwrap
from pathlib import Path

import matplotlib as mpl
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from matplotlib.ticker import FuncFormatter, NullFormatter

from .rows import Row

# Okabe M, Ito K. Color universal design, 2008: told apart with any colour vision.
_COLOURS = ("#0072B2", "#E69F00", "#009E73", "#CC79A7", "#56B4E9", "#D55E00")
_MARKERS = "os^Dv*"


def draw(rows: list[Row], path: Path) -> None:
    """One line for each row with a target: how many times better than asked, with the spread of the rounds."""
    with mpl.rc_context({"svg.hashsalt": "bench", "svg.fonttype": "path", "font.size": 9}):
        figure(rows).savefig(path, metadata={"Date": None, "Creator": None})


def figure(rows: list[Row]) -> Figure:
    """The figure by itself."""
    judged = [row for row in rows if row.is_met is not None]
    sections = list(dict.fromkeys(row.section for row in judged))
    made = Figure(figsize=(10.0, 1.6 + 0.42 * len(judged)), layout="constrained")
    FigureCanvasSVG(made)
    axes = made.add_subplot()
    axes.axvspan(1e-9, 1.0, color="0.94", zorder=0)
    axes.axvline(1.0, color="0.3", linewidth=1.0, zorder=1)
    for y, row in enumerate(judged):
        low, median, high = sorted(_attained(row, value) for value in row.ratio)
        index = sections.index(row.section) % len(_COLOURS)
        axes.plot([low, high], [y, y], color=_COLOURS[index], linewidth=2.2, solid_capstyle="butt", zorder=2)
        axes.plot(median, y, _MARKERS[index], color=_COLOURS[index], markersize=6.5, zorder=3)
        if row.stretch is not None:
            axes.plot(_attained(row, row.stretch), y, "|", color="0.35", markersize=13, zorder=2)
    axes.set_xscale("log")
    least = min(_attained(row, value) for row in judged for value in row.ratio)
    most = max(_attained(row, value) for row in judged for value in row.ratio)
    axes.set_xlim(min(0.45, least * 0.85), max(2.2, most * 1.2))
    axes.set_ylim(len(judged) - 0.4, -0.6)
    axes.set_yticks(range(len(judged)), [textwrap.fill(row.what, 46) for row in judged])
    axes.xaxis.set_major_formatter(FuncFormatter(lambda value, _: f"{value:g}x"))
    axes.xaxis.set_minor_formatter(NullFormatter())
    ticks = [t for t in (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50) if axes.get_xlim()[0] <= t <= axes.get_xlim()[1]]
    axes.set_xticks(ticks)
    axes.set_xlabel("times better than asked (grey: short of it; |: the stretch)")
    for edge in ("top", "right", "left"):
        axes.spines[edge].set_visible(False)
    axes.tick_params(axis="y", length=0)
    for i, section in enumerate(sections):
        axes.plot([], [], _MARKERS[i % len(_MARKERS)], color=_COLOURS[i % len(_COLOURS)], label=section)
    made.legend(loc="outside upper right", frameon=False, ncols=len(sections))
    return made


def _attained(row: Row, value: float) -> float:
    """How many times better than asked a ratio is."""
    if row.at_least is not None:
        return value / row.at_least
    return (row.at_most or 1.0) / value
