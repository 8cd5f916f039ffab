"""The picture of one simulated member: weighings, smoothed weight, and its split."""

from pathlib import Path

import matplotlib as mpl
import numpy as np
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from steelyard.science.numbers.estimate import Z80
from validation.trend_people import CORE, Cell, simulate

_MEMBER = Cell(0.5, 0.3, 70, baseline_days=14, jump_kg=1.5, generator=CORE)
_SEED = 41


def draw(path: Path) -> None:
    """Ten weeks: two at maintenance, then a deficit, and a step of 1.5 kg of water in mid-log."""
    with mpl.rc_context({"svg.hashsalt": "trend", "svg.fonttype": "path", "font.size": 9}):
        _figure().savefig(path, metadata={"Date": None, "Creator": None})


def _figure() -> Figure:
    made = simulate(_MEMBER, 1, _SEED)
    trend = made.trend
    days = np.arange(_MEMBER.days)

    def column(values: list[float]) -> np.ndarray:
        return np.array([float(np.asarray(v).reshape(-1)[0]) for v in values])

    seen = column(list(made.log.is_weighed)) > 0
    weight = column(list(made.log.weight_kg))
    smooth, sd = column(trend.smoothed.weight_kg), column(trend.smoothed.weight_sd_kg)
    tissue, carried = column(trend.split.tissue_kg), column(trend.split.carried_kg)
    true_tissue, true_carried = made.tissue[:, 0], made.carried[:, 0]

    figure = Figure(figsize=(8.0, 7.2), layout="constrained")
    FigureCanvasSVG(figure)
    above, middle, below = figure.subplots(3, 1, sharex=True, height_ratios=(3, 2, 2))
    above.plot(days[seen], weight[seen], "o", color="0.6", markersize=3.5, label="weighings")
    above.fill_between(days, smooth - Z80 * sd, smooth + Z80 * sd, color="#0072B2", alpha=0.2, linewidth=0)
    above.plot(days, smooth, color="#0072B2", label="smoothed weight, 80 % interval")
    above.set_ylabel("weight [kg]")
    middle.plot(days, true_tissue - true_tissue[0], "--", color="#D55E00", label="tissue, true")
    middle.plot(days, tissue - tissue[0], color="#D55E00", label="tissue, read")
    middle.plot(days, true_carried - true_carried[0], "--", color="#009E73", label="carried mass, true")
    middle.plot(days, carried - carried[0], color="#009E73", label="carried mass, read")
    middle.set_ylabel("change [kg]")
    mean, spread = column(trend.causal.maintenance_kcal), column(trend.causal.maintenance_sd_kcal)
    below.fill_between(days, mean - Z80 * spread, mean + Z80 * spread, color="#CC79A7", alpha=0.2, linewidth=0)
    below.plot(days, mean, color="#CC79A7", label="maintenance as known each day, 80 % interval")
    below.axhline(float(made.maintenance[0]), linestyle="--", color="0.4", label="true on the last day")
    below.set_ylabel("logged kcal/d")
    below.set_xlabel("day")
    for axes in (above, middle, below):
        axes.legend(frameon=False, fontsize=8)
        for edge in ("top", "right"):
            axes.spines[edge].set_visible(False)
    return figure
