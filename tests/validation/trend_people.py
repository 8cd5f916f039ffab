"""Simulated people who keep a log, from two generators, and what the reader makes of them.

``CORE``: the nonlinear energy-balance model (not the filter's own linear one), people spread as the registered
spreads say. ``OTHER``: a different body altogether (see ``_OtherBodies``), so that nothing is judged only on the model
it was built with. Both: daily noise with the SD and lag-1 correlation of the cell, 20 % of weighings missing, intake
varying by 10 % from day to day and logged at a constant fraction of what was eaten.
"""

from typing import Any, NamedTuple, Protocol

import numpy as np
from numpy.typing import NDArray
from steelyard.science.body.constants import (
    ADAPTATION_SHARE,
    CARRIED_SPREAD,
    FAT_UPKEEP,
    LEAN_UPKEEP,
    THERMIC_SHARE,
    TRAINING_GAIN,
)
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate
from steelyard.science.body.uncertainty import ADAPTATION_SPREAD, PARTITION_SPREAD, TRAINING_GAIN_SPREAD
from steelyard.science.log.cycle import CYCLE_RISE_KG, CYCLE_RISE_SD_KG, cycle_rise
from steelyard.science.log.entries import DailyLog
from steelyard.science.log.maintenance import LOGGING_RATIO, LOGGING_RATIO_SD, fill_intake, prior_on_logging_scale
from steelyard.science.log.tissue_model import TissueModel, tissue_model
from steelyard.science.log.trend_reading import Trend, read_trend
from steelyard.science.log.water import JUMP_CHANCE, JUMP_SD_KG
from steelyard.science.numbers.elementwise import arrays
from steelyard.science.numbers.estimate import Estimate

Array = NDArray[np.float64]
OPS = arrays()
CORE, OTHER = "core", "other"
REFEED, RAISED = "refeed", "raised"


class Cell(NamedTuple):
    """One cell of the study."""

    noise_sd_kg: float
    lag: float
    days: int
    baseline_days: int = 0  # days at (what the person takes for) maintenance before the deficit
    logging_ratio: float = 0.9
    jump_kg: float = 0.0  # step of water from day ``days // 2`` on
    missing: float = 0.2
    weekly_tissue_loss_kg: float | None = None  # None: a deficit of 300-700 kcal/d as the person sees it
    # REFEED: two days above maintenance, ending two days before the reading. RAISED: twice the loss until a week
    # before the reading, then eating more. Both with the given loss of tissue (over all days; over that week).
    rebound: str | None = None
    generator: str = CORE
    is_logged: bool = True  # False: weights alone
    # True: logging ratio and steps of water differ as the reader's registered spreads say, in place of the above.
    is_mixed: bool = False
    # A rise of weight around menstruation that differs between women as registered, at its height at the reading.
    has_cycle: bool = False
    is_cycle_told: bool = True

    def __str__(self) -> str:
        """Short enough for the name of a test."""
        parts = [self.generator, f"sd{self.noise_sd_kg:g}", f"lag{self.lag:g}", f"{self.days}d"]
        parts += [f"lead{self.baseline_days}"] * bool(self.baseline_days) + [f"step{self.jump_kg:g}"] * bool(
            self.jump_kg
        )
        return "-".join([*parts, "mixed" if self.is_mixed else f"logged{self.logging_ratio:.0%}"])


class People(NamedTuple):
    """A simulated cell: what is logged, what the reader is told, and the truth."""

    log: DailyLog
    prior: Estimate
    trend: Trend
    model: BodyModel  # of the body as the reader is told it
    start: BodyState
    body: TissueModel
    maintenance: Array  # on the logging scale, last day, adaptation settled
    tissue: Array  # (days, people)
    carried: Array
    intake: Array  # eaten (days, people)


class _Bodies(Protocol):
    """People of a generator."""

    maintenance: Array

    def start(self) -> Any: ...
    def after(self, state: Any, intake: Array) -> Any: ...
    def tissue(self, state: Any) -> Array: ...
    def carried(self, state: Any) -> Array: ...
    def settled(self, state: Any) -> Array:
        """Intake at which tissue is steady at ``state`` once adaptation has followed intake there."""


class _CoreBodies:
    """The project's model; partition, adaptation, training gain and carried mass differ by the registered spreads."""

    def __init__(self, weight: Array, fat: Array, maintenance: Array, settings: dict[str, Any], draws: Array) -> None:
        self.maintenance = maintenance
        model, self._start = calibrate(weight_kg=weight, fat_kg=fat, maintenance_kcal=maintenance, **settings)
        self._model = model._replace(
            partition_scale=np.exp(PARTITION_SPREAD * draws[0]),
            adaptation_share=np.clip(ADAPTATION_SHARE + ADAPTATION_SPREAD * draws[1], 0.0, 0.4),
            training_gain=TRAINING_GAIN * np.clip(1.0 + TRAINING_GAIN_SPREAD * draws[2], 0.0, 2.5),
        )
        self._carried = np.clip(1.0 + CARRIED_SPREAD * draws[3], 0.0, 2.5)

    def start(self) -> BodyState:
        return self._start

    def after(self, state: BodyState, intake: Array) -> BodyState:
        return advance(self._model, state, Diet(intake, 0.5 * intake, 1.8), 1.0, ops=OPS)

    def tissue(self, state: BodyState) -> Array:
        return np.asarray(state.tissue_kg)

    def carried(self, state: BodyState) -> Array:
        return np.asarray(self._carried * state.carried_kg)

    def settled(self, state: BodyState) -> Array:
        model = self._model
        share = THERMIC_SHARE + model.adaptation_share
        fixed = (
            model.offset_kcal
            + FAT_UPKEEP * state.fat_kg
            + LEAN_UPKEEP * state.lean_kg
            + model.activity_kcal_per_kg * state.weight_kg
        )
        return np.asarray((fixed - share * model.maintenance_kcal) / (1.0 - share))


class _OtherState(NamedTuple):
    tissue: Array
    carried: Array
    adaptation: Array
    shift: Array


class _OtherBodies:
    """One tissue whose energy has nothing to do with body fat, maintenance that drifts, carried mass of one time
    constant. Its constants are invented, near the usual ones: 10,000 kcal/kg (SD 12 %) once adaptation has settled,
    expenditure 18-30 kcal/d per kilogram, adaptation 0.10 (SD 0.06) within 20 days, drift 8 kcal/d per root day."""

    def __init__(self, weight: Array, maintenance: Array, rng: np.random.Generator) -> None:
        people = len(weight)
        self.maintenance, self._weight = maintenance, weight
        self._adapts = np.clip(0.10 + 0.06 * rng.standard_normal(people), 0.0, 0.3)
        self._left = 1.0 - THERMIC_SHARE - self._adapts
        self._energy = 10000.0 * np.exp(0.12 * rng.standard_normal(people)) * self._left
        self._slope = rng.uniform(18.0, 30.0, people) * self._left
        self._carries = 2.4 * np.clip(1.0 + 0.4 * rng.standard_normal(people), 0.0, 2.5)
        self._keep = np.exp(-1.0 / (4.0 * np.exp(0.3 * rng.standard_normal(people))))
        self._rng = np.random.default_rng(rng.integers(2**32))
        self.drifts = True

    def start(self) -> _OtherState:
        zero = np.zeros(len(self._weight))
        return _OtherState(self._weight, zero, zero, zero)

    def after(self, state: _OtherState, intake: Array) -> _OtherState:
        excess = intake - self.maintenance
        spent = (
            self.maintenance
            + THERMIC_SHARE * excess
            + state.adaptation
            + self._slope * (state.tissue - self._weight)
            + state.shift
        )
        rest = self._carries * excess / self.maintenance
        drift = 8.0 * self._rng.standard_normal(len(intake)) if self.drifts else 0.0
        return _OtherState(
            state.tissue + (intake - spent) / self._energy,
            rest + (state.carried - rest) * self._keep,
            state.adaptation + (self._adapts * excess - state.adaptation) / 20.0,
            state.shift + self._left * drift,
        )

    def tissue(self, state: _OtherState) -> Array:
        return state.tissue

    def carried(self, state: _OtherState) -> Array:
        return state.carried

    def settled(self, state: _OtherState) -> Array:
        moved = self._slope * (state.tissue - self._weight) + state.shift
        return np.asarray(self.maintenance + moved / self._left)


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
    settings: dict[str, Any] = {"resting_kcal": resting, "experience_years": years, "training_dose": 1.0, "ops": OPS}
    draws = normal((5, people))
    bodies: _Bodies = (
        _CoreBodies(weight, fat, maintenance, settings, draws)
        if cell.generator == CORE
        else _OtherBodies(weight, maintenance, rng)
    )
    fat_as_told = fat + weight * np.clip(0.035 * draws[4], -0.06, 0.06)
    plan = _plan(cell, bodies, told, rng.uniform(300.0, 700.0, people))
    ratio: Any = cell.logging_ratio
    if cell.is_mixed:
        ratio = LOGGING_RATIO + LOGGING_RATIO_SD * normal(people)

    noise = _Noise(cell, people, rng)
    state = bodies.start()
    weights, seen, logged, tissue, carried, eaten = [], [], [], [], [], []
    jump = np.zeros(people)
    # The next would begin on the day after the reading.
    rise = cycle_rise([cell.days - 28 * k for k in range(cell.days // 28 + 2, 0, -1)], 0, cell.days)
    size = CYCLE_RISE_KG + CYCLE_RISE_SD_KG * normal(people) if cell.has_cycle else np.zeros(people)
    cycle = [size * share for share in rise]
    for day in range(cell.days):
        if cell.is_mixed and day:
            jump = jump + (rng.random(people) < JUMP_CHANCE) * JUMP_SD_KG * normal(people)
        elif cell.jump_kg and day == cell.days // 2:
            jump = jump + cell.jump_kg
        tissue.append(bodies.tissue(state))
        carried.append(bodies.carried(state) + jump)
        is_weighed = (rng.random(people) >= cell.missing) if day else np.ones(people, bool)
        seen.append(is_weighed.astype(float))
        on_scale = weight - tissue[0] + tissue[-1] + carried[-1] + cycle[day] + noise.today()
        weights.append(np.where(is_weighed, on_scale, 0.0))
        intake = plan[day] * (1.0 + 0.10 * normal(people))
        eaten.append(intake)
        logged.append(ratio * intake if cell.is_logged else np.zeros(people))
        state = bodies.after(state, intake)

    ones, zeros = [np.ones(people)] * cell.days, [np.zeros(people)] * cell.days
    log = DailyLog(0, weights, seen, ones, logged, ones if cell.is_logged else zeros, zeros, zeros)
    if cell.has_cycle and cell.is_cycle_told:
        log = log._replace(cycle_rise=rise)
    # The reader knows the stated body and the equations' estimate, not the person's own constants.
    assumed, start = calibrate(weight_kg=weight, fat_kg=fat_as_told, maintenance_kcal=told, **settings)
    usual = prior_on_logging_scale(prior).mean
    body = tissue_model(
        assumed, start, 1.8, intake_kcal=fill_intake(log, usual, ops=OPS).intake_kcal, usual_intake_kcal=usual, ops=OPS
    )
    trend = read_trend(log, prior, body, ops=OPS)
    truth = ratio * bodies.settled(state)
    return People(log, prior, trend, assumed, start, body, truth, np.array(tissue), np.array(carried), np.array(eaten))


class _Noise:
    """Autoregressive noise; normal, or Student's t with 4 degrees of freedom in the other generator."""

    def __init__(self, cell: Cell, people: int, rng: np.random.Generator) -> None:
        self._cell, self._people, self._rng = cell, people, rng
        self._now = cell.noise_sd_kg * self._draw()

    def _draw(self) -> Array:
        if self._cell.generator == CORE:
            return self._rng.standard_normal(self._people)
        return self._rng.standard_t(4.0, self._people) / 2.0**0.5  # variance of t with 4 df: 2

    def today(self) -> Array:
        now = self._now
        lag = self._cell.lag
        self._now = lag * now + (1.0 - lag**2) ** 0.5 * self._cell.noise_sd_kg * self._draw()
        return now


def _plan(cell: Cell, bodies: _Bodies, told: Array, deficit: Array) -> list[Array]:
    """What each person means to eat on each day."""
    if cell.weekly_tissue_loss_kg is None:
        return [told if day < cell.baseline_days else told - deficit for day in range(cell.days)]
    maintenance = bodies.maintenance
    if cell.rebound is None:
        return _to_lose(bodies, [], cell.days, cell.weekly_tissue_loss_kg)
    if cell.rebound == REFEED:
        fed = {cell.days - 4: 1.2 * maintenance, cell.days - 3: 1.2 * maintenance}
        return _to_lose(bodies, [], cell.days, cell.weekly_tissue_loss_kg, fed)
    before = _to_lose(bodies, [], cell.days - 7, 2.0 * cell.weekly_tissue_loss_kg)
    return before + _to_lose(bodies, before, 7, cell.weekly_tissue_loss_kg)


def _to_lose(
    bodies: _Bodies, before: list[Array], days: int, weekly_kg: float, fixed: dict[int, Array] | None = None
) -> list[Array]:
    """A constant intake (but for ``fixed`` days) whose tissue change over ``days`` is ``-weekly_kg`` a week."""
    if isinstance(bodies, _OtherBodies):
        bodies.drifts = False
    start = bodies.start()
    for intake in before:
        start = bodies.after(start, intake)

    def plan(deficit: Array) -> list[Array]:
        given = fixed or {}
        return [given.get(day, bodies.maintenance - deficit) for day in range(days)]

    def change(deficit: Array) -> Array:
        state = start
        for intake in plan(deficit):
            state = bodies.after(state, intake)
        return np.asarray((bodies.tissue(state) - bodies.tissue(start)) * 7.0 / days)

    # A kilogram costs 8,000-12,000 kcal depending on the person, so the deficit is found by trial (secant).
    low, high = np.zeros_like(bodies.maintenance), np.full_like(bodies.maintenance, 500.0)
    at_low, at_high = change(low), change(high)
    for _ in range(3):
        new = high + (-weekly_kg - at_high) * (high - low) / (at_high - at_low)
        low, at_low = high, at_high
        high, at_high = new, change(new)
        if np.abs(at_low - at_high).min() < 1e-9:
            break
    if isinstance(bodies, _OtherBodies):
        bodies.drifts = True
    return plan(high)
