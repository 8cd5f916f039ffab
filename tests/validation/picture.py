"""The picture of forecast against measurement."""

from pathlib import Path

import matplotlib as mpl
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure

from .comparison import Row

# Okabe M, Ito K. Color universal design, 2008: told apart with any colour vision.
COLOURS = {"body mass": "#0072B2", "fat mass": "#E69F00", "fat-free mass": "#009E73"}
MARKERS = {"body mass": "o", "fat mass": "s", "fat-free mass": "^"}
_Z80 = 1.2815515655446004


def draw(rows: list[Row], path: Path) -> None:
    """One line a case and quantity: the forecast with its 80 % interval, the measurement with its standard error."""
    with mpl.rc_context({"svg.hashsalt": "validation", "svg.fonttype": "path", "font.size": 9}):
        _figure(rows).savefig(path, metadata={"Date": None, "Creator": None})


def _figure(rows: list[Row]) -> Figure:
    cases = list(dict.fromkeys(row.case.id for row in rows))
    figure = Figure(figsize=(8.0, 9.4), layout="constrained")
    FigureCanvasSVG(figure)
    axes = figure.add_subplot()
    axes.axvline(0.0, color="0.75", linewidth=0.8, zorder=0)
    quantities = list(COLOURS)
    for row in rows:
        y = cases.index(row.case.id) + 0.26 * (quantities.index(row.quantity) - 1)
        colour, marker = COLOURS[row.quantity], MARKERS[row.quantity]
        axes.errorbar(
            row.forecast_kg, y, xerr=_Z80 * row.sd_kg, fmt=marker, color=colour, markersize=5.5, linewidth=1.6,
            capsize=2.5,
        )  # fmt: skip
        axes.errorbar(
            row.measured.change_kg, y, xerr=row.measured.standard_error_kg or None, fmt=marker, color="black",
            markerfacecolor="white", markersize=5.5, linewidth=1.0, zorder=3,
        )  # fmt: skip
        if row.is_accepted is False:
            edge = row.forecast_kg - _Z80 * row.sd_kg if row.forecast_kg < 0 else row.forecast_kg + _Z80 * row.sd_kg
            axes.annotate(
                "bias outside", (edge, y), xytext=(-5 if row.forecast_kg < 0 else 5, 0), textcoords="offset points",
                ha="right" if row.forecast_kg < 0 else "left", va="center", color="#D55E00", fontsize=8,
            )  # fmt: skip
    titles = {
        row.case.id: f"{row.case.trial.title}\n{row.case.days:g} days, n = {row.case.trial.participants}"
        for row in rows
    }
    axes.set_yticks(range(len(cases)), [titles[case] for case in cases])
    axes.set_ylim(len(cases) - 0.45, -0.55)
    axes.set_xlabel("change of mass [kg]")
    axes.set_title("Measured (open, standard error) and forecast (filled, 80 % interval for one person)", fontsize=10)
    for edge in ("top", "right", "left"):
        axes.spines[edge].set_visible(False)
    axes.tick_params(axis="y", length=0)
    for quantity, colour in COLOURS.items():
        axes.plot([], [], MARKERS[quantity], color=colour, label=quantity)
    axes.legend(loc="upper right", frameon=False)
    return figure
