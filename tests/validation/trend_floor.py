"""What no reader could beat, and what a developer would write otherwise.

The floor is the Bayes reader of the linearised generator: the same filter, told the cell's noise and lag, with the
generator's spreads. The logging ratio is told, or known only by its registered spread. A step of water is told with its
day and size, or unknown: then the reader knows how likely a step is a day and how large, and averages over every
possible first day, and none, by their marginal likelihoods, each from a filter run of its own. That needs as many runs
as there are days: it is made for this study.
"""

from typing import NamedTuple

import numpy as np
from filter_likelihood import log_likelihood
from steelyard.science.body.constants import CARRIED_SPREAD
from steelyard.science.log.entries import DailyLog
from steelyard.science.log.filter import DailySeries, FilterSettings, Start, filter_weights
from steelyard.science.log.maintenance import prior_on_logging_scale
from steelyard.science.log.smoother import causal_path
from steelyard.science.log.tissue_model import acting_intake, tissue_model
from steelyard.science.log.water import JUMP_CHANCE, JUMP_SD_KG
from steelyard.science.numbers.estimate import Z80, Estimate
from validation.trend_people import OPS, OTHER, Array, Cell, People

STATIC_KCAL_PER_KG = 7700.0  # the rule of thumb both baselines use


class Floor(NamedTuple):
    """RMS error [kcal/d] and coverage of 80 % intervals (a fraction) of the Bayes reader."""

    rms: float
    coverage: float


def rms(values: Array) -> float:
    """Root mean square."""
    return float(np.sqrt(np.mean(values**2)))


def floor_of(cell: Cell, made: People, *, is_jump_told: bool = True, is_ratio_told: bool = True) -> Floor:
    """The floor of a simulated cell."""
    log, days, ratio = made.log, cell.days, cell.logging_ratio
    people = len(made.maintenance)
    prior = Estimate(ratio * made.prior.mean, ratio * made.prior.sd)
    if not is_ratio_told:
        prior = prior_on_logging_scale(made.prior)
    usual = prior.mean
    exact = tissue_model(made.model, made.start, 1.8, intake_kcal=log.intake_kcal, usual_intake_kcal=usual, ops=OPS)
    is_other = cell.generator == OTHER
    rho = np.full(people, 10000.0) if is_other else exact.rho_kcal_per_kg
    weights = list(log.weight_kg)
    if is_jump_told and cell.jump_kg:
        seen = enumerate(log.is_weighed)
        weights = [w - cell.jump_kg * s * (d >= days // 2) for w, (d, s) in zip(weights, seen, strict=True)]
    series = DailySeries(
        weights,
        log.is_weighed,
        log.noise_scale,
        acting_intake(log.intake_kcal, usual, exact.adaptation_gain, ops=OPS),
        [np.zeros(people)] * days,
        exact.carried_kg,
        exact.carried_slope,
        usual,
    )
    settings = FilterSettings(
        ratio * rho,
        ratio * (24.0 if is_other else exact.expenditure_slope_kcal_per_kg_day),
        cell.noise_sd_kg**2,
        cell.lag,
        (ratio * 8.0) ** 2 if is_other else 0.0,
        1.0,
        CARRIED_SPREAD**2,
        is_robust=False,
        growth_kg_per_day=0.0 if is_other else exact.growth_kg_per_day,
    )
    start = Start(weights[0], 25.0, usual, prior.sd**2)
    cases: list[int | None] = [None]
    if (cell.jump_kg or cell.is_mixed) and not is_jump_told:
        cases += range(1, days)
    fits, means, variances = [], [], []
    for began in cases:
        known = {} if began is None else {began: np.full(people, JUMP_SD_KG**2)}
        filtered = filter_weights(series, settings, start, known_jumps=known, ops=OPS)
        path = causal_path(filtered, series, days - 1, ops=OPS)
        odds = 1.0 if began is None else JUMP_CHANCE / (1.0 - JUMP_CHANCE)
        fits.append(log_likelihood(filtered, series, OPS) + np.log(odds))
        means.append(path.maintenance[-1])
        variances.append(path.maintenance_variance[-1])
    fit = np.array(fits)
    share = np.exp(fit - fit.max(axis=0))
    share /= share.sum(axis=0)
    mean = (share * np.array(means)).sum(axis=0)
    variance = (share * (np.array(variances) + np.array(means) ** 2)).sum(axis=0) - mean**2
    error = mean - made.maintenance
    return Floor(rms(error), float(np.mean(np.abs(error) <= Z80 * np.sqrt(variance))))


def moving_average_maintenance(log: DailyLog, span: int = 7, window: int | None = None) -> Array:
    """Maintenance by a moving average of ``span`` days and 7,700 kcal/kg over ``window`` days (default: all)."""
    weights, seen, intake = np.array(log.weight_kg), np.array(log.is_weighed), np.array(log.intake_kcal)
    days = len(weights)
    first = 0 if window is None else max(0, days - span - window)

    def mean(start: int) -> Array:
        return np.asarray(weights[start : start + span].sum(0) / np.maximum(seen[start : start + span].sum(0), 1))

    apart = days - span - first
    slope = (mean(days - span) - mean(first)) / apart
    half = span // 2
    return np.asarray(intake[first + half : first + half + apart].mean(0) - STATIC_KCAL_PER_KG * slope)


def smoothing_maintenance(log: DailyLog, alpha: float, window: int) -> Array:
    """Maintenance by exponential smoothing and 7,700 kcal/kg over the last ``window`` days."""
    weights, seen, intake = np.array(log.weight_kg), np.array(log.is_weighed), np.array(log.intake_kcal)
    level = weights[0]
    levels = [level]
    for day in range(1, len(weights)):
        level = level + alpha * seen[day] * (weights[day] - level)
        levels.append(level)
    window = min(window, len(weights) - 1)
    slope = (levels[-1] - levels[-1 - window]) / window
    return np.asarray(intake[-1 - window : -1].mean(0) - STATIC_KCAL_PER_KG * slope)


def baselines(cell: Cell, made: People) -> tuple[float, float]:
    """RMS errors of both methods, each with the window (and weight) that is best in hindsight on these people."""
    truth = made.maintenance
    windows = sorted({7, 14, 21, cell.days - 7} & set(range(5, cell.days - 6)))
    moving = min(rms(moving_average_maintenance(made.log, 7, w) - truth) for w in windows)
    smoothing = min(
        rms(smoothing_maintenance(made.log, alpha, w) - truth)
        for alpha in (0.05, 0.1, 0.15, 0.2, 0.3)
        for w in (7, 14, 21, cell.days - 1)
    )
    return moving, smoothing
