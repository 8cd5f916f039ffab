"""Coverage and width of the forecast's 80 % intervals: ``make backtest`` prints the tables and writes the report.

Coverage is the share of simulated people whose truth lies inside the interval, with the binomial standard error
sqrt(p (1 - p) / n). A width is held against the best possible forecast of the same generator: what is told of a
person is held fixed and their life is drawn many times from that very generator; the interval between the 10 %
and 90 % quantiles of those draws covers 80 % by construction, with nothing unknown but what the person's
information leaves open. It is computed for some people of every cell; the ratio of a cell is the forecast's mean
width over the reference's mean width for the same people.
"""

from typing import NamedTuple

import numpy as np
from steelyard.science.body.forecasting import Forecast, PathPoint, forecast
from steelyard.science.body.uncertainty import ALL_SOURCES, UncertaintySource
from steelyard.science.numbers.estimate import Z80

from .generator import (
    HORIZON_WEEKS,
    OPS,
    PLANS,
    SEXES,
    STATUSES,
    Array,
    Generator,
    People,
    Quantity,
    draw_given,
    draw_outcomes,
    draw_people,
)

SEED = 20_261
PEOPLE_PER_CELL = 2_000
REFERENCE_PER_CELL = 40
REFERENCE_DRAWS = 1_000
PRIOR_COVERAGE = (0.75, 0.85)
MISSPECIFIED_COVERAGE = 0.65
WIDEST = 1.3


class Intervals(NamedTuple):
    """Middle and half-width of the 80 % interval of a quantity, (horizons, people)."""

    middle: Array
    half_width: Array


class Row(NamedTuple):
    """A cell of the table. Shares 0-1; ``width_ratio`` against the best possible forecast."""

    generator: Generator
    sex: str
    status: str
    weeks: int
    quantity: Quantity
    people: int
    coverage: float
    standard_error: float
    width: float
    width_ratio: float


def intervals(people: People, sources: frozenset[UncertaintySource] = ALL_SOURCES) -> dict[Quantity, Intervals]:
    """The forecast's 80 % intervals for everyone, in one vectorised call."""
    path = forecast(people.body, people.stretches(), sources=sources, is_eaten=True, ops=OPS)
    points = path.points()
    found: dict[Quantity, list[tuple[Array, Array]]] = {quantity: [] for quantity in Quantity}
    for point in HORIZON_WEEKS:
        for quantity, pair in _at(path, points[point], point).items():
            found[quantity].append(pair)
    return {
        quantity: Intervals(np.array([m for m, _ in pairs]), Z80 * np.array([s for _, s in pairs]))
        for quantity, pairs in found.items()
    }


def _at(path: Forecast, said: PathPoint, point: int) -> dict[Quantity, tuple[Array, Array]]:
    start, state = path.states[0], path.states[point]
    change = path.spread_of_change(0, point)
    return {
        Quantity.WEIGHT: (state.weight_kg, said.weighing_sd_kg),
        Quantity.FAT_CHANGE: (state.fat_kg - start.fat_kg, change.fat_kg),
        Quantity.LEAN_CHANGE: (state.lean_kg - start.lean_kg, change.lean_kg),
        Quantity.FAT_FRACTION: (state.fat_kg / state.weight_kg, said.spread.fat_fraction),
    }


def reference_widths(
    people: People, generator: Generator, rng: np.random.Generator, draws: int
) -> dict[Quantity, Array]:
    """10-90 % widths of each person's predictive distribution under ``generator``, (horizons, people)."""
    n = len(people.male)
    drawn = draw_outcomes(people.take(np.repeat(np.arange(n), draws)), generator, rng)
    widths = {}
    for quantity, values in drawn.items():
        low, high = np.quantile(values.reshape(len(HORIZON_WEEKS), n, draws), (0.1, 0.9), axis=2)
        widths[quantity] = high - low
    return widths


def run(
    generator: Generator,
    *,
    per_cell: int = PEOPLE_PER_CELL,
    reference_per_cell: int = REFERENCE_PER_CELL,
    draws: int = REFERENCE_DRAWS,
    seed: int = SEED,
) -> list[Row]:
    """Every cell of the table for one generator."""
    rng = np.random.default_rng(seed)
    people = draw_people(rng, per_cell)
    truth = draw_outcomes(people, generator, rng)
    said = intervals(people)
    few = np.concatenate([k * per_cell + np.arange(reference_per_cell) for k in range(len(SEXES) * len(STATUSES))])
    best = reference_widths(people.take(few), generator, rng, draws)
    rows = []
    for male, sex in enumerate(SEXES):
        for status, name in enumerate(STATUSES):
            cell = (people.male == male) & (people.status == status)
            among_few = cell[few]
            for k, weeks in enumerate(HORIZON_WEEKS):
                for quantity in Quantity:
                    middle, half = said[quantity].middle[k], said[quantity].half_width[k]
                    inside = np.abs(truth[quantity][k] - middle) <= half
                    coverage = float(inside[cell].mean())
                    rows.append(
                        Row(
                            generator,
                            sex,
                            name.value,
                            weeks,
                            quantity,
                            per_cell,
                            coverage,
                            (coverage * (1.0 - coverage) / per_cell) ** 0.5,
                            2.0 * float(half[cell].mean()),
                            2.0 * float(half[few][among_few].mean() / best[quantity][k][among_few].mean()),
                        )
                    )
    return rows


class Given(NamedTuple):
    """Of a quantity after some weeks of a deficit: shares inside what is shown, and, as ``told``, inside the interval
    of the plan being eaten, of who ``eats`` it and of ``people`` who are given it; of these how many lie over the upper
    end; mean widths.
    """

    weeks: int
    quantity: Quantity
    eats: float
    eats_told: float
    people: float
    people_told: float
    over: float
    over_told: float
    width: float
    width_told: float


def given(per_cell: int = PEOPLE_PER_CELL, seed: int = SEED) -> list[Given]:
    """Both intervals in those who are in a deficit."""
    rng = np.random.default_rng([seed, 1])
    drawn = draw_people(rng, per_cell)
    people = drawn.take(np.flatnonzero(drawn.plan == PLANS.index("deficit")))
    eats, does = draw_outcomes(people, Generator.PRIOR, rng), draw_given(people, rng)
    path = forecast(people.body, people.stretches(), ops=OPS)
    points = path.points()
    rows = []
    for k, weeks in enumerate(HORIZON_WEEKS):
        for quantity, (middle, sd) in _at(path, points[weeks], weeks).items():
            told = middle - Z80 * sd, middle + Z80 * sd
            off, people_sd = _of_people(path, points[weeks], weeks)[quantity]
            shown = (
                np.minimum(told[0], middle + off - Z80 * people_sd),
                np.maximum(told[1], middle + off + Z80 * people_sd),
            )
            shares = [
                float(((low <= truth[quantity][k]) & (truth[quantity][k] <= high)).mean())
                for truth in (eats, does)
                for low, high in (shown, told)
            ]
            shares += [float((does[quantity][k] > high).mean()) for _, high in (shown, told)]
            widths = [float((high - low).mean()) for low, high in (shown, told)]
            rows.append(Given(weeks, quantity, *shares, *widths))
    return rows


def _of_people(path: Forecast, said: PathPoint, point: int) -> dict[Quantity, tuple[Array, Array]]:
    assert said.people is not None
    change = path.change_of_people(0, point)
    assert change is not None
    slip, spread = change
    return {
        Quantity.WEIGHT: (said.people.slip.weight_kg, said.people.weighing_sd_kg),
        Quantity.FAT_CHANGE: (slip.fat_kg, spread.fat_kg),
        Quantity.LEAN_CHANGE: (slip.lean_kg, spread.lean_kg),
        Quantity.FAT_FRACTION: (said.people.slip.fat_fraction, said.people.spread.fat_fraction),
    }
