"""Accuracy of log reading on simulated people: ``python tests/validation/trend_accuracy.py`` prints the tables.

The people come from the nonlinear energy-balance model (not from the filter's own linear model), each with an
own maintenance, logging ratio, partition and gut content that the reader is not told. Noise: daily SD and lag-1
autocorrelation as the cell says, 20 % of weighings missing, intake varying 10 % from day to day, logged at a
constant fraction of what was eaten.
"""

import sys
from math import erf
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "service"))

from steelyard.core.elementwise import arrays
from steelyard.core.energy_balance import (
    ADAPTATION_SHARE,
    FAT_UPKEEP,
    GUT_CONTENT_KG,
    LEAN_UPKEEP,
    THERMIC_SHARE,
    TRAINING_GAIN,
    BodyModel,
    BodyState,
    Diet,
    advance,
    calibrate,
)
from steelyard.core.estimate import Z80, Estimate
from steelyard.core.log import DailyLog
from steelyard.core.log_maintenance import fill_intake, prior_on_logging_scale
from steelyard.core.tissue_model import TissueModel, acting_intake, tissue_model
from steelyard.core.trend import PLATEAU_RATE_KG, Trend, read_trend
from steelyard.core.weight_filter import DailySeries, FilterSettings, Start, filter_weights
from steelyard.core.weight_smoother import causal_path

Array = NDArray[np.float64]
OPS = arrays()
STALL_CALLED = 0.8
STATIC_KCAL_PER_KG = 7700.0  # the rule of thumb both baselines use


class Cell(NamedTuple):
    """One cell of the study."""

    noise_sd_kg: float
    lag: float
    days: int
    baseline_days: int = 0  # days at (what the person takes for) maintenance before the deficit
    logging_ratio: float = 0.9
    jump_kg: float = 0.0  # step of water from day ``days // 2`` on
    missing: float = 0.2
    differs: bool = True  # people differ from the reader's body model by its own registered spreads
    weekly_tissue_loss_kg: float | None = None  # None: a deficit of 300-700 kcal/d as the person sees it


class People(NamedTuple):
    """A simulated cell: what is logged, what the reader is told, and the truth."""

    log: DailyLog
    prior: Estimate
    trend: Trend
    model: BodyModel  # of the body as the reader is told it
    start: BodyState
    body: TissueModel
    maintenance: Array  # on the logging scale, last day
    tissue: Array  # (days, people)
    carried: Array


def simulate(cell: Cell, people: int, seed: int) -> People:
    """Simulate and read one cell in one vectorised call."""
    rng = np.random.default_rng(seed)
    normal = rng.standard_normal
    weight = rng.uniform(60.0, 100.0, people)
    fat = weight * rng.uniform(0.12, 0.30, people)
    resting = 500.0 + 22.0 * (weight - fat)
    told = 1.6 * resting
    prior = Estimate(told, 0.10 * told)
    maintenance = told + prior.sd * np.clip(normal(people), -2.5, 2.5)
    years = rng.uniform(1.0, 6.0, people)
    ratio = cell.logging_ratio
    settings: dict[str, Any] = {"resting_kcal": resting, "experience_years": years, "training_dose": 1.0, "ops": OPS}
    model, state = calibrate(weight_kg=weight, fat_kg=fat, maintenance_kcal=maintenance, **settings)
    draws = normal((5, people)) * (1.0 if cell.differs else 0.0)
    model = model._replace(
        partition_scale=np.clip(1.0 + 0.3 * draws[0], 0.3, 2.0),
        gut_kg=np.clip(GUT_CONTENT_KG + 0.5 * draws[1], 0.2, 2.0),
        adaptation_share=np.clip(ADAPTATION_SHARE + 0.10 * draws[2], 0.0, 0.35),
        training_gain=TRAINING_GAIN * np.clip(1.0 + 0.5 * draws[3], 0.1, 2.0),
    )
    fat_as_told = fat + weight * np.clip(0.035 * draws[4], -0.06, 0.06)
    if cell.weekly_tissue_loss_kg is None:
        deficit = rng.uniform(300.0, 700.0, people)
        plan = told - deficit
        before = told
    else:
        # Eaten so that true tissue falls as wanted: 9,000-12,000 kcal/kg differ by person, so found by trial.
        plan = maintenance - _deficit_for(cell.weekly_tissue_loss_kg, model, state, cell.days)
        before = maintenance

    noise = normal(people) * cell.noise_sd_kg
    weights, seen, logged, tissue, carried = [], [], [], [], []
    for day in range(cell.days):
        jump = cell.jump_kg if cell.jump_kg and day >= cell.days // 2 else 0.0
        tissue.append(state.tissue_kg)
        carried.append(state.carried_kg + jump + np.zeros(people))
        is_weighed = (rng.random(people) >= cell.missing) if day else np.ones(people, bool)
        seen.append(is_weighed.astype(float))
        weights.append(np.where(is_weighed, state.weight_kg + jump + noise, 0.0))
        intake = (before if day < cell.baseline_days else plan) * (1.0 + 0.10 * normal(people))
        logged.append(ratio * intake)
        state = advance(model, state, Diet(intake, 0.5 * intake, 1.8), 1.0, ops=OPS)
        noise = cell.lag * noise + np.sqrt(1.0 - cell.lag**2) * cell.noise_sd_kg * normal(people)

    ones, zeros = [np.ones(people)] * cell.days, [np.zeros(people)] * cell.days
    log = DailyLog(0, weights, seen, ones, logged, ones, zeros, zeros)
    # The reader knows the stated body and the equations' estimate, not the person's own constants.
    assumed, start = calibrate(weight_kg=weight, fat_kg=fat_as_told, maintenance_kcal=told, **settings)
    usual = prior_on_logging_scale(prior).mean
    body = tissue_model(
        assumed, start, 1.8, intake_kcal=fill_intake(log, usual, OPS).intake_kcal, usual_intake_kcal=usual, ops=OPS
    )
    trend = read_trend(log, prior, body, ops=OPS)
    truth = ratio * settled_maintenance(model, state)
    return People(log, prior, trend, assumed, start, body, truth, np.array(tissue), np.array(carried))


def settled_maintenance(model: Any, state: Any) -> Array:
    """Intake at which tissue is steady at ``state`` once adaptation has followed intake there."""
    share = THERMIC_SHARE + model.adaptation_share
    fixed = (
        model.offset_kcal
        + FAT_UPKEEP * state.fat_kg
        + LEAN_UPKEEP * state.lean_kg
        + model.activity_kcal_per_kg * state.weight_kg
    )
    return np.asarray((fixed - share * model.maintenance_kcal) / (1.0 - share))


def _deficit_for(weekly_kg: float, model: Any, state: Any, days: int) -> Array:
    """Deficit [kcal/d] whose tissue change over ``days`` is ``-weekly_kg`` a week (secant, two steps)."""

    def change(deficit: Array) -> Array:
        intake = model.maintenance_kcal - deficit
        end = advance(model, state, Diet(intake, 0.5 * intake, 1.8), float(days), ops=OPS)
        return np.asarray((end.tissue_kg - state.tissue_kg) * 7.0 / days)

    low, high = np.zeros_like(model.maintenance_kcal), np.full_like(model.maintenance_kcal, 500.0)
    at_low, at_high = change(low), change(high)
    for _ in range(3):
        new = high + (-weekly_kg - at_high) * (high - low) / (at_high - at_low)
        low, at_low = high, at_high
        high, at_high = new, change(new)
        if np.allclose(at_low, at_high):
            break
    return high


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


def rms(values: Array) -> float:
    return float(np.sqrt(np.mean(values**2)))


class Score(NamedTuple):
    """Errors of one cell [kcal/d]; the baselines' windows are the best of a grid on the same people."""

    rms: float
    bias: float
    mean_sd: float
    coverage: float
    moving_average_rms: float
    smoothing_rms: float
    prior_rms: float


def score(cell: Cell, people: int, seed: int) -> Score:
    """Maintenance of one cell against the truth and the two baselines."""
    made = simulate(cell, people, seed)
    truth = made.maintenance
    estimate = made.trend.maintenance.maintenance
    error = np.asarray(estimate.mean - truth)
    windows = sorted({7, 14, 21, cell.days - 7} & set(range(5, cell.days - 6)))
    moving = min(rms(moving_average_maintenance(made.log, 7, w) - truth) for w in windows)
    smoothing = min(
        rms(smoothing_maintenance(made.log, a, w) - truth)
        for a in (0.05, 0.1, 0.15, 0.2, 0.3)
        for w in (7, 14, 21, cell.days - 1)
    )
    return Score(
        rms(error),
        float(error.mean()),
        float(np.mean(estimate.sd)),
        float(np.mean(np.abs(error) <= Z80 * estimate.sd)),
        moving,
        smoothing,
        rms(np.asarray(made.trend.maintenance.logging_ratio.mean * 0 + 0.9 * made.prior.mean - truth)),
    )


def stall_calls(cell: Cell, people: int, seed: int, threshold: float) -> float:
    """Share of people of whom the reader says, with probability over ``threshold``, that tissue stands still."""
    rate = simulate(cell, people, seed).trend.lasting_rate
    z = (PLATEAU_RATE_KG + np.asarray(rate.mean)) / np.asarray(rate.sd)
    above = 0.5 * (1.0 + np.array([erf(v / 2**0.5) for v in z]))
    return float(np.mean(above > threshold))


def floor_rms(cell: Cell, people: int, seed: int) -> float:
    """RMS error of a reader told the generator's own noise, logging ratio and spreads (linear-Gaussian bound).

    It runs the same filter at the true settings, so it is the Bayes-optimal reader of the linearised generator;
    a jump of water is told with its day and size.
    """
    made = simulate(cell, people, seed)
    log, days, ratio = made.log, cell.days, cell.logging_ratio
    rho = ratio * made.body.rho_kcal_per_kg
    usual = ratio * made.prior.mean
    exact = tissue_model(made.model, made.start, 1.8, intake_kcal=log.intake_kcal, usual_intake_kcal=usual, ops=OPS)
    weights = [
        weight - cell.jump_kg * seen if cell.jump_kg and day >= days // 2 else weight
        for day, (weight, seen) in enumerate(zip(log.weight_kg, log.is_weighed, strict=True))
    ]
    series = DailySeries(
        weights,
        log.is_weighed,
        log.noise_scale,
        acting_intake(log.intake_kcal, usual, exact.adaptation_gain),
        [np.zeros(people)] * days,
        exact.carried_kg,
        exact.carried_slope,
        usual,
    )
    settings = FilterSettings(
        rho,
        ratio * exact.expenditure_slope_kcal_per_kg_day,
        cell.noise_sd_kg**2,
        cell.lag,
        0.0,
        1.0,
        0.1**2,
        is_robust=False,
        growth_kg_per_day=exact.growth_kg_per_day,
    )
    start = Start(weights[0], 25.0, usual, (ratio * made.prior.sd) ** 2)
    path = causal_path(filter_weights(series, settings, start, ops=OPS), series, days - 1)
    return rms(np.asarray(path.maintenance[-1]) - made.maintenance)


def first_week_split_rms(cell: Cell, people: int, seed: int) -> tuple[float, float]:
    """RMS error [kg] of the carried part of the change over the last week, and of the week's carried change."""
    made = simulate(cell, people, seed)
    truth = made.carried[-1] - made.carried[-8]
    (week,) = [change for change in made.trend.changes if change.days == 7]
    return rms(np.asarray(week.carried.mean) - truth), rms(truth)


def main() -> None:
    people, seed = 2000, 20240
    print("Maintenance on the logging scale, kcal/d. lead: days before the deficit; cover: of 80 % intervals, %")
    print("noise lag days lead ratio jump |   rms  floor  bias   sd  cover |   MA7   EWMA  prior")
    cells = [
        Cell(sd, lag, days, lead) for lead in (0, 7) for sd in (0.5, 1.0) for lag in (0.0, 0.3) for days in (14, 28)
    ]
    cells += [Cell(0.5, 0.3, days, 0, 1.0) for days in (14, 28)]
    cells += [Cell(sd, 0.3, days, 0, 0.9, 1.5) for sd in (0.5, 1.0) for days in (14, 28)]
    cells += [Cell(0.5, 0.3, 84)]
    for cell in cells:
        s = score(cell, people, seed)
        print(
            f"{cell.noise_sd_kg:5.1f} {cell.lag:3.1f} {cell.days:4d} {cell.baseline_days:4d} "
            f"{cell.logging_ratio:5.2f} {cell.jump_kg:4.1f} | {s.rms:5.0f} {floor_rms(cell, people, seed):6.0f} "
            f"{s.bias:5.0f} {s.mean_sd:4.0f}  {100 * s.coverage:5.1f} | {s.moving_average_rms:5.0f} "
            f"{s.smoothing_rms:6.0f} {s.prior_rms:6.0f}"
        )
    print(f"\nStall (tissue steady) against 0.35 kg a week, called at probability over {STALL_CALLED:g}")
    print("noise lag days | power  false alarms, %")
    for sd in (0.5, 1.0):
        for lag in (0.0, 0.3):
            for days in (14, 28):
                calls = [
                    stall_calls(Cell(sd, lag, days, weekly_tissue_loss_kg=loss), people, seed, STALL_CALLED)
                    for loss in (0.0, 0.35)
                ]
                print(f"{sd:5.1f} {lag:3.1f} {days:4d} | {100 * calls[0]:5.1f} {100 * calls[1]:5.1f}")
    print("\nCarried part of the first week of a deficit, after 7 or 14 days at maintenance, kg")
    print("noise lag lead |  rms   (rms of the true change)")
    for lead in (7, 14):
        for sd in (0.5, 1.0):
            error, size = first_week_split_rms(Cell(sd, 0.3, lead + 8, lead), people, seed)
            print(f"{sd:5.1f} 0.3 {lead:4d} | {error:5.2f}  {size:5.2f}")


if __name__ == "__main__":
    main()
