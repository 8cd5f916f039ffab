"""The log reader's kernel against statsmodels on the case they share, and what the whole reading costs on top.

Shared case: the local linear trend over a year, fixed variances, the initial state known and equal; a test holds
the kernel to the dense model. Both go from a person's weights to smoothed states, statsmodels by its ordinary
calls: it binds data to a model, so that it makes one a person, gives the likelihood along the way, which ours leaves
to whoever asks, and wraps the result. What its compiled recursions alone
take, with the model made beforehand and no wrapper, is shown too. All in processor time.
"""

import time
from array import array
from collections.abc import Callable
from typing import Any

import numpy as np
import statsmodels.api as sm  # type: ignore[import-untyped]
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import Diet, calibrate
from steelyard.science.log import kernel as k
from steelyard.science.log.cleaning import clean_log
from steelyard.science.log.entries import DailyLog, IntakeDay, Log, Weighing
from steelyard.science.log.logging_scale import fill_intake, prior_on_logging_scale
from steelyard.science.log.tissue_model import TissueModel, tissue_model
from steelyard.science.log.trend_reading import trend_from_fit
from steelyard.science.log.witnesses import fit_log, run_bank
from steelyard.science.numbers.estimate import Estimate

from .rows import Row, paired

DAYS, PEOPLE = 365, 1000
_ROUNDS = 15
_RHO, _INTAKE, _DRIFT = 9000.0, 2300.0, 400.0
_TISSUE, _MAINTENANCE = (80.0, 25.0), (2600.0, 300.0**2)  # mean and variance on the first morning
_NOISE, _INTAKE_ERROR = 0.25, 120.0**2
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


def _plain(people: list[list[float]]) -> Callable[[], object]:
    """The shared case for each of ``people``, one after the other: tissue and its pace are all that is not known."""
    g = 1.0 / _RHO
    settings = array("d", bytes(8 * k.SETTINGS))
    settings[k.BETA_DRIFT], settings[k.NOISE_VARIANCE] = g * g * _DRIFT, _NOISE
    settings[k.SPLITS_FROM], settings[k.NOISE_PRIOR], settings[k.DROPPED] = 1e12, 1e12, 1.0
    start = array("d", bytes(8 * (k.STATES + k.STATES**2)))
    start[0], start[1], start[2] = _TISSUE[0], 1.0, g * (_MAINTENANCE[0] - _INTAKE)
    start[k.STATES], start[k.STATES + 2 * (k.STATES + 1)] = _TISSUE[1], g * g * _MAINTENANCE[1]
    made = []
    for weights in people:
        columns = array("d", bytes(8 * k.COLUMNS * DAYS))
        columns[k.WEIGHED :: k.COLUMNS] = array("d", weights)
        columns[k.SEEN :: k.COLUMNS] = columns[k.SCALE :: k.COLUMNS] = array("d", [1.0] * DAYS)
        columns[k.INTAKE_VARIANCE :: k.COLUMNS] = array("d", [g * g * _INTAKE_ERROR] * DAYS)
        made.append(columns)

    def call() -> object:
        return [run_bank(columns, settings, start, DAYS) for columns in made]

    return call


def _statsmodels(weights: list[float]) -> Any:
    g = 1.0 / _RHO
    model = sm.tsa.UnobservedComponents(np.array(weights), "local linear trend", loglikelihood_burn=0)
    model.ssm.initialize_known(
        np.array([_TISSUE[0], g * (_INTAKE - _MAINTENANCE[0])]),
        np.diag([_TISSUE[1], g * g * _MAINTENANCE[1]]),
    )
    return model


def _oracle(model: Any, *, is_bare: bool = False) -> Any:
    g = 1.0 / _RHO
    return model.smooth([_NOISE, g * g * _INTAKE_ERROR, g * g * _DRIFT], return_ssm=is_bare)


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
    filled = fill_intake(log, usual)
    return log, tissue_model(model, start, 1.8, intake_kcal=filled, usual_intake_kcal=usual)


def _physiological() -> Callable[[], object]:
    """The bank over a year, forward and back: maintenance, logging, carried mass, noise, explanations."""
    log, tissue = _member(DAYS)
    return lambda: fit_log(log, _PRIOR, tissue)


def rows() -> list[Row]:
    """The rows of the table."""
    weights = _weights()
    oracle = _seconds(lambda: _oracle(_statsmodels(weights)), 3)
    made = _statsmodels(weights)
    recursions = _seconds(lambda: _oracle(made, is_bare=True), 5)
    one = _seconds(_plain([weights]), 10)
    many = _seconds(_plain([weights] * PEOPLE), 1)
    physiological = _seconds(_physiological(), 5)
    log, tissue = _member(90)
    reading = _seconds(lambda: trend_from_fit(log, fit_log(log, _PRIOR, tissue)), 10)
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
