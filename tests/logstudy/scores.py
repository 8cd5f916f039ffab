"""What readers of a log are judged by: the truth of each quantity, simple baselines, and proper scores."""

from collections.abc import Mapping

import numpy as np
from logstudy.worlds import PRIOR_SD, Array, Logs
from scipy.special import ndtr

QUANTITIES = ("level", "rate", "tissue", "tissue_28", "carried", "maintenance", "physical", "ratio")
Answer = Mapping[str, tuple[Array, Array]]  # quantity: mean and SD by person


def truths(logs: Logs) -> dict[str, Array]:
    """Of the last day; changes are over the whole log, ``tissue_28`` over four weeks."""
    t = logs.truth
    days = len(t.tissue_kg)
    week, month = min(7, days - 1), min(28, days - 1)
    start = logs.body_kg - t.tissue_kg[0]
    return {
        "level": start + t.tissue_kg[-1] + t.carried_kg[-1],
        "rate": (t.tissue_kg[-1] - t.tissue_kg[-1 - week]) * 7.0 / week,
        "tissue": t.tissue_kg[-1] - t.tissue_kg[0],
        "tissue_28": t.tissue_kg[-1] - t.tissue_kg[-1 - month],
        "carried": t.carried_kg[-1] - t.carried_kg[0],
        "maintenance": t.maintenance_kcal[-1] * t.ratio[-1],
        "physical": t.maintenance_kcal[-1],
        "ratio": t.ratio[-1],
    }


def crps(mean: Array, sd: Array, truth: Array) -> Array:
    """Continuous ranked probability score of a normal (Gneiting & Raftery 2007)."""
    z = (truth - mean) / sd
    density = np.exp(-0.5 * z * z) / np.sqrt(2.0 * np.pi)
    return np.asarray(sd * (z * (2.0 * ndtr(z) - 1.0) + 2.0 * density - 1.0 / np.sqrt(np.pi)))


def _line(logs: Logs, window: int) -> tuple[Array, Array]:
    """Level on the last day and slope a day of a least-squares line through the last ``window`` days."""
    w, s = logs.weight_kg[-window:], logs.is_weighed[-window:]
    x = np.arange(len(w))[:, None] - (len(w) - 1.0)
    n = np.maximum(s.sum(0), 1.0)
    mx, my = (s * x).sum(0) / n, (s * w).sum(0) / n
    sxx = (s * (x - mx) ** 2).sum(0)
    slope = np.where(sxx > 0, (s * (x - mx) * (w - my)).sum(0) / np.maximum(sxx, 1e-9), 0.0)
    return my - slope * mx, slope


def _mean(logs: Logs, first: int, end: int) -> Array:
    w, s = logs.weight_kg[first:end], logs.is_weighed[first:end]
    whole = logs.weight_kg.sum(0) / logs.is_weighed.sum(0)
    return np.where(s.sum(0) > 0, w.sum(0) / np.maximum(s.sum(0), 1.0), whole)


def _smoothed(logs: Logs, share: float = 0.1) -> Array:
    level = logs.weight_kg[0].copy()
    path = []
    for w, s in zip(logs.weight_kg, logs.is_weighed, strict=True):
        level = level + share * s * (w - level)
        path.append(level)
    return np.array(path)


def _trend(logs: Logs) -> tuple[Array, Array, Array]:
    """Local linear trend by maximum likelihood over a grid: last level, slope, and smoothed first level (by line)."""
    best = np.full(logs.weight_kg.shape[1], -np.inf)
    level_best, slope_best = logs.weight_kg[0].copy(), np.zeros_like(best)
    for noise in (0.3, 0.45, 0.65, 0.95):
        for level_sd in (0.01, 0.05, 0.15):
            for slope_sd in (0.001, 0.005, 0.02):
                level, slope = logs.weight_kg[0].copy(), np.zeros_like(best)
                a, b, c = (np.full_like(best, v) for v in (noise**2, 0.0, 0.1**2))
                fit = np.zeros_like(best)
                for w, s in zip(logs.weight_kg[1:], logs.is_weighed[1:], strict=True):
                    level = level + slope
                    a, b = a + 2 * b + c + level_sd**2, b + c
                    c = c + slope_sd**2
                    f = a + noise**2
                    e = s * (w - level)
                    fit -= 0.5 * s * (np.log(f) + e * e / f)
                    k, g = s * a / f, s * b / f
                    level, slope = level + k * e, slope + g * e
                    c, b, a = c - g * b, b - k * b, a - k * a
                is_best = fit > best
                best = np.where(is_best, fit, best)
                level_best, slope_best = np.where(is_best, level, level_best), np.where(is_best, slope, slope_best)
    return level_best, slope_best, logs.weight_kg[0]


def baselines(logs: Logs) -> dict[str, dict[str, Array]]:
    """Means of simple readers, by quantity and name; their SD is set once on the pool."""
    days = len(logs.weight_kg)
    month = min(28, days - 1)
    span = days - 1
    last7, first7 = _mean(logs, -7, days), _mean(logs, 0, 7)
    before7 = _mean(logs, max(0, days - 14), max(7, days - 7))
    then7 = _mean(logs, max(0, days - 1 - month - 3), max(0, days - 1 - month - 3) + 7)
    ewma = _smoothed(logs)
    week = min(7, span)
    l14, s14 = _line(logs, min(14, days))
    l28, s28 = _line(logs, min(28, days))
    _, sall = _line(logs, days)
    llt, llt_slope, _ = _trend(logs)
    logged = logs.intake_kcal.sum(0) / np.maximum(logs.is_logged.sum(0), 1.0)
    i28 = logs.intake_kcal[-28:].sum(0) / np.maximum(logs.is_logged[-28:].sum(0), 1.0)
    zero = np.zeros_like(last7)
    return {
        "level": {"mean 7": last7, "smoothing": ewma[-1], "line 14": l14, "line 28": l28, "local trend": llt},
        "rate": {
            "mean 7": last7 - before7, "smoothing": (ewma[-1] - ewma[-1 - week]) * 7 / week,
            "line 14": 7 * s14, "line 28": 7 * s28, "local trend": 7 * llt_slope,
        },
        "tissue": {
            "mean 7": (last7 - first7) * span / max(span - 6, 1), "smoothing": ewma[-1] - ewma[0], "line": span * sall,
        },
        "tissue_28": {
            "mean 7": (last7 - then7), "smoothing": ewma[-1] - ewma[-1 - month], "line 28": month * s28,
            "local trend": month * llt_slope,
        },
        "carried": {"nothing": zero},
        "maintenance": {
            "7,700 x slope 28": i28 - 7700 * s28, "7,700 x slope": logged - 7700 * sall,
            "7,700 x smoothing": i28 - 7700 * (ewma[-1] - ewma[-1 - month]) / month,
            "equations": logs.prior_kcal * 0.87,
            "7,700 x local trend": i28 - 7700 * llt_slope,
        },
        "physical": {"equations": logs.prior_kcal, "7,700 x slope 28": (i28 - 7700 * s28) / 0.87},
        "ratio": {"usual": zero + 0.87},
    }  # fmt: skip


__all__ = ["PRIOR_SD", "QUANTITIES", "Answer", "baselines", "crps", "truths"]
