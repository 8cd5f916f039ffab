"""The weight filter against statsmodels on the case they share, and what the physiological model costs on top.

Shared case: the local linear trend over a year, fixed variances, the initial state known and equal; a test holds
likelihood and smoothed states together. Both go from a person's weights to smoothed states, statsmodels by its ordinary
calls: it binds data to a model, so that it makes one a person, gives the likelihood along the way, which ours leaves
to whoever asks, and wraps the result. What its compiled recursions alone
take, with the model made beforehand and no wrapper, is shown too. All in processor time.
"""

import time
from collections.abc import Callable
from typing import Any

import numpy as np
import statsmodels.api as sm  # type: ignore[import-untyped]
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import Diet, calibrate
from steelyard.science.log.entries import DailyLog, IntakeDay, Log, Weighing, clean_log
from steelyard.science.log.filter import DailySeries, FilterSettings, Start, filter_weights
from steelyard.science.log.maintenance import fill_intake, fit_log, prior_on_logging_scale
from steelyard.science.log.smoother import smooth_weights
from steelyard.science.log.tissue_model import TissueModel, tissue_model
from steelyard.science.log.trend_reading import read_trend
from steelyard.science.numbers.elementwise import FLOATS, arrays
from steelyard.science.numbers.estimate import Estimate

from .rows import Row, paired

DAYS, PEOPLE = 365, 1000
_ROUNDS = 15
_RHO, _INTAKE, _DRIFT = 9000.0, 2300.0, 400.0
_START = Start(80.0, 25.0, 2600.0, 300.0**2)
_SETTINGS = FilterSettings(_RHO, 0.0, 0.25, 0.0, _DRIFT, is_robust=False)
_PRIOR = Estimate(2750.0, 275.0)


def _seconds(call: Callable[[], object], repeats: int) -> Callable[[], float]:
    def measure() -> float:
        start = time.process_time()
        for _ in range(repeats):
            call()
        return (time.process_time() - start) / repeats

    return measure


def _weights() -> list[float]:
    rng = np.random.default_rng(3)
    return [float(w) for w in 80.0 + np.cumsum(rng.normal(-0.02, 0.02, DAYS)) + 0.5 * rng.standard_normal(DAYS)]


def _plain(weights: list[Any], like: Any) -> Callable[[], object]:
    """The shared case for one person or, where ``like`` is an array, for many."""
    one = like * 0.0 + 1.0
    series = DailySeries(weights, [one] * DAYS, [one] * DAYS, [_INTAKE * one] * DAYS, [120.0**2 * one] * DAYS)
    ops = FLOATS if isinstance(like, float) else arrays()
    return lambda: smooth_weights(filter_weights(series, _SETTINGS, _START, ops=ops), series, ops=ops)


def _statsmodels(weights: list[float]) -> Any:
    g = 1.0 / _RHO
    model = sm.tsa.UnobservedComponents(np.array(weights), "local linear trend", loglikelihood_burn=0)
    model.ssm.initialize_known(
        np.array([_START.tissue_kg, g * (_INTAKE - _START.maintenance_kcal)]),
        np.diag([_START.tissue_variance, g * g * _START.maintenance_variance]),
    )
    return model


def _oracle(model: Any, *, is_bare: bool = False) -> Any:
    g = 1.0 / _RHO
    return model.smooth([0.25, g * g * 120.0**2, g * g * _DRIFT], return_ssm=is_bare)


def _member(days: int) -> tuple[DailyLog, TissueModel]:
    """A log of the model's own person in a deficit, all days weighed and logged at 90 %."""
    rng = np.random.default_rng(7)
    model, start = calibrate(
        weight_kg=80.0, fat_kg=14.0, maintenance_kcal=2750.0, resting_kcal=1800.0, experience_years=3.0,
        training_dose=1.0,
    )  # fmt: skip
    state, weighings, intakes = start, [], []
    for day in range(days):
        weighings.append(Weighing(739_000 + day, round(state.weight_kg + 0.45 * float(rng.standard_normal()), 2)))
        eaten = 2450.0 * (1.0 + 0.1 * float(rng.standard_normal()))
        intakes.append(IntakeDay(739_000 + day, round(0.9 * eaten)))
        state = advance(model, state, Diet(eaten, 0.5 * eaten, 1.8), 1.0)
    log = clean_log(Log(weighings, intakes), 739_000 + days - 1)
    usual = prior_on_logging_scale(_PRIOR).mean
    filled = fill_intake(log, usual).intake_kcal
    return log, tissue_model(model, start, 1.8, intake_kcal=filled, usual_intake_kcal=usual)


def _physiological() -> Callable[[], object]:
    """One pass and its smoothing: maintenance, carried mass, correlated noise, outliers, steps of water."""
    log, tissue = _member(DAYS)
    fit = fit_log(log, _PRIOR, tissue)
    start = Start(log.weight_kg[0], 25.0, fit.prior.mean, fit.prior.sd**2)
    settings = fit.filtered.settings
    return lambda: smooth_weights(filter_weights(fit.series, settings, start), fit.series)


def rows() -> list[Row]:
    """The rows of the table."""
    weights = _weights()
    oracle = _seconds(lambda: _oracle(_statsmodels(weights)), 3)
    made = _statsmodels(weights)
    recursions = _seconds(lambda: _oracle(made, is_bare=True), 5)
    one = _seconds(_plain(weights, 1.0), 10)
    many = _seconds(_plain([np.full(PEOPLE, w) for w in weights], np.ones(PEOPLE)), 1)
    physiological = _seconds(_physiological(), 5)
    log, tissue = _member(90)
    reading = _seconds(lambda: read_trend(log, _PRIOR, tissue), 10)
    return [
        Row("Weight filter", "statsmodels over one person's year", paired(oracle, one, _ROUNDS), at_least=6.0),
        Row(
            "Weight filter",
            f"statsmodels over a year of {PEOPLE:,} people in one call, per person",
            paired(oracle, lambda: many() / PEOPLE, _ROUNDS),
            at_least=70.0,
            stretch=300.0,
        ),
        Row(
            "Weight filter",
            "statsmodels' recursions alone over one person's year",
            paired(recursions, one, _ROUNDS),
            note="compiled; the model made beforehand, no wrapper",
        ),
        Row("Weight filter", "physiological over the shared case", paired(physiological, one, _ROUNDS), at_most=4.0),
        Row(
            "Weight filter",
            "a whole trend of 90 days over the shared case of a year",
            paired(reading, one, _ROUNDS),
            note="all views of each day, as known then and in hindsight",
        ),
    ]
