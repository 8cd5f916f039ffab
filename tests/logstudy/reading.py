"""What the service's reader says of simulated logs, in the quantities that it is judged by."""

import numpy as np
from logstudy.scores import Answer
from logstudy.worlds import PRIOR_SD, Array, Logs, resting_kcal
from steelyard.science.body import calibrate
from steelyard.science.log import Trend, fill_intake, prior_on_logging_scale
from steelyard.science.log.cycle import cycle_rise
from steelyard.science.log.entries import DailyLog
from steelyard.science.log.tissue_model import tissue_model
from steelyard.science.log.trend_reading import trend_from_fit
from steelyard.science.log.witnesses import fit_log
from steelyard.science.numbers import Estimate

_PROTEIN = 1.8


def read(logs: Logs, person: int, *, is_loss_meant: bool | None = None) -> Trend:
    """The trend of one person's log; whether a loss is meant is read from it where it is not told."""
    days = len(logs.weight_kg)
    ones, zeros = [1.0] * days, [0.0] * days
    rise = None
    if logs.cycle_day is not None and not np.isnan(logs.cycle_day[person]):
        first = int(logs.cycle_day[person])
        rise = cycle_rise([first + 28 * n for n in range(days // 28 + 2) if first + 28 * n < days], 0, days)
    columns = (
        [float(v) for v in column[:, person]]
        for column in (logs.weight_kg, logs.is_weighed, logs.intake_kcal, logs.is_logged)
    )
    weight, weighed, intake, logged = columns
    log = DailyLog(0, weight, weighed, ones, intake, logged, zeros, zeros, cycle_rise=rise)
    told = float(logs.prior_kcal[person])
    prior = Estimate(told, PRIOR_SD * told)
    body, fat = float(logs.body_kg[person]), float(logs.fat_kg[person])
    model, state = calibrate(
        weight_kg=body, fat_kg=fat, maintenance_kcal=told, resting_kcal=resting_kcal(body, fat),
        experience_years=3.0, training_dose=1.0,
    )  # fmt: skip
    usual = prior_on_logging_scale(prior).mean
    tissue = tissue_model(model, state, _PROTEIN, intake_kcal=fill_intake(log, usual), usual_intake_kcal=usual)
    return trend_from_fit(log, fit_log(log, prior, tissue), is_loss_meant)


def answers(logs: Logs) -> Answer:
    """Means and SDs of everything that is judged, by person."""
    rows: dict[str, list[tuple[float, float]]] = {}
    for person in range(logs.weight_kg.shape[1]):
        trend = read(logs, person)
        whole = trend.changes[-1]
        month = next((change for change in trend.changes if change.days == 28), whole)
        found = trend.maintenance
        level = Estimate(trend.causal.weight_kg[-1], trend.causal.weight_sd_kg[-1])
        for name, estimate in (
            ("level", level),
            ("rate", trend.weekly_rate),
            ("tissue", whole.tissue),
            ("tissue_28", month.tissue),
            ("carried", whole.carried),
            ("maintenance", found.maintenance),
            ("physical", found.physical),
            ("ratio", found.logging_ratio),
        ):
            rows.setdefault(name, []).append((estimate.mean, estimate.sd))
    return {name: _columns(row) for name, row in rows.items()}


def _columns(row: list[tuple[float, float]]) -> tuple[Array, Array]:
    mean, sd = np.array(row).T
    return mean, sd
