"""The rise of weight around menstruation, so that water before it does not read as a stall.

Its shape in time is taken as known from the dates given; how many kilograms it is worth is learnt with the rest, as a
regressor beside the filter (augmented filter, de Jong 1991). On each day only dates up to that day are used.
"""

from collections.abc import Sequence
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number
from ..register import (
    KANELLAKIS_2023,
    Basis,
    constant,
    source,
)
from .filter import DailySeries, Filtered
from .smoother import Path, causal_path, smooth_weights

WHITE_2011 = source(
    "white_2011",
    "White CP, Hitchcock CL, Vigna YM, Prior JC. Fluid retention over the menstrual cycle: 1-year data from the "
    "prospective ovulation cohort. Obstet Gynecol Int 2011;2011:138451",
    "10.1155/2011/138451",
)
CYCLE_RISE_KG = constant(
    "cycle_rise", 0.45, unit="kg", standard_deviation=0.5, sources=(KANELLAKIS_2023,),
    summary="Weight at menstruation against the first week after it, nearly all extracellular water",
)  # fmt: skip
CYCLE_RISE_SD_KG = constant(
    "cycle_rise_sd",
    0.5,
    unit="kg",
    basis=Basis.JUDGEMENT,
    summary="SD between women of the rise at menstruation (swings of one to two kilograms occur)",
)
CYCLE_DAYS = int(
    constant(
        "cycle_length", 28, unit="d", basis=Basis.COMMON_PRACTICE,
        summary="Length of a cycle until two dates say otherwise",
    )
)  # fmt: skip
RISING_DAYS = constant(
    "cycle_rising_days", 7.0, unit="d", basis=Basis.FROM_MEMORY, sources=(WHITE_2011,),
    summary="Days over which water gathers before menstruation; retention peaks on its first day",
)  # fmt: skip
HELD_DAYS = constant(
    "cycle_held_days", 2.0, unit="d", basis=Basis.FROM_MEMORY, sources=(WHITE_2011,),
    summary="Days from its first on which the rise is whole",
)  # fmt: skip
FALLING_DAYS = constant(
    "cycle_falling_days", 4.0, unit="d", basis=Basis.FROM_MEMORY, sources=(WHITE_2011,),
    summary="Days over which it goes after that",
)  # fmt: skip
_SHORTEST, _LONGEST = 20, 45  # gaps outside are missed or mistaken dates and say nothing about the length
_LATE_DAYS = 10  # so long after the expected day the rise is held; then the cycle is taken as missed


def cycle_rise(starts: Sequence[int], first_day: int, count: int) -> list[float]:
    """Share (0-1) of the rise on each of ``count`` days from ``first_day`` on.

    ``starts``: days on which a menstruation began, ascending, also from before the log. 0 before the first of them.
    """
    rise = []
    last: int | None = None
    gaps: list[int] = []
    upcoming = list(starts)
    for day in range(first_day, first_day + count):
        while upcoming and upcoming[0] <= day:
            start = upcoming.pop(0)
            if last is not None and _SHORTEST <= start - last <= _LONGEST:
                gaps.append(start - last)
            last = start
        if last is None:
            rise.append(0.0)
            continue
        length = sorted(gaps)[len(gaps) // 2] if gaps else CYCLE_DAYS
        since = day - last
        left = length - since
        falling = 1.0 - (since - HELD_DAYS) / FALLING_DAYS
        rising = 1.0 - left / RISING_DAYS if left >= -_LATE_DAYS else 0.0
        rise.append(min(1.0, max(falling, rising, 0.0)))
    return rise


class CycleFit(NamedTuple):
    """The pass of the filter for a unit of the rise, and by day how many kilograms beyond the expected were read.

    ``response`` holds the answer of the states to a unit rise that the filter does not know of.
    """

    response: Filtered
    series: DailySeries
    excess_kg: list[Number]
    variance: list[Number]


def fit_cycle(filtered: Filtered, series: DailySeries, rise: Sequence[Number]) -> CycleFit:
    """Learn the size of the rise beside a filtered log, whose weights are less the expected ``CYCLE_RISE_KG``.

    Exact with the filter's own weights, but for steps of water granted in mid-log, whose size is held.
    """
    settings = filtered.settings
    g = 1.0 / settings.rho_kcal_per_kg
    keep = 1.0 - settings.expenditure_slope_kcal_per_kg_day * g
    tissue: Number = 0.0
    maintenance: Number = 0.0
    score: Number = 0.0
    cross: Number = 0.0
    information: Number = 1.0 / CYCLE_RISE_SD_KG**2
    before: Number = 0.0
    steps: list[tuple[Number, ...]] = []
    excess: list[Number] = []
    variance: list[Number] = []
    for step, x, seen in zip(filtered.steps, rise, series.is_weighed, strict=False):
        _, _, tt, tm, mm, t_gain, m_gain, innovation, precision, t_load, m_load, t_amp, m_amp, e_amp, own, held = step
        load = x - (1.0 - t_load) * before - t_load * tissue - m_load * maintenance
        tissue = tissue + t_gain * load
        maintenance = maintenance + m_gain * load
        weight = load * precision
        score = score + weight * innovation
        information = information + weight * load
        cross = cross + weight * e_amp
        before = seen * x + (1.0 - seen) * before
        share = cross / held
        left = information - cross * share
        excess.append((score - own * share) / left)
        variance.append(1.0 / left)
        steps.append(
            (tissue, maintenance, tt, tm, mm, t_gain, m_gain, load, precision, t_load, m_load, t_amp, m_amp, e_amp,
             cross, held)
        )  # fmt: skip
        tissue = tissue - g * maintenance
        maintenance = keep * maintenance
    response = filtered._replace(
        steps=steps, settings=settings._replace(amplitude_mean=0.0), unsettled={}, jumps=[], outliers=[]
    )
    return CycleFit(response, series._replace(reference_kcal=0.0), excess, variance)


def causal_less_cycle(path: Path, cycle: CycleFit, first: int, ops: Elementwise = FLOATS) -> Path:
    """A causal path from day ``first`` on with the rise as known on each day taken out."""
    answer = causal_path(cycle.response, cycle.series, first, ops=ops)
    return _less(path, answer, cycle.excess_kg[first:], cycle.variance[first:])


def smoothed_less_cycle(path: Path, cycle: CycleFit, ops: Elementwise = FLOATS) -> Path:
    """A smoothed path with the rise as read from the whole log taken out."""
    answer = smooth_weights(cycle.response, cycle.series, ops=ops)
    days = len(path.level)
    excess, variance = cycle.excess_kg[-1], cycle.variance[-1]
    less = _less(path, answer, [excess] * days, [variance] * days)
    last = answer.tissue[-1]
    return less._replace(
        changes={
            day: (own + answer.tissue[day] ** 2 * variance, shared + answer.tissue[day] * last * variance, by_amplitude)
            for day, (own, shared, by_amplitude) in path.changes.items()
        }
    )


def _less(path: Path, answer: Path, excess: Sequence[Number], variance: Sequence[Number]) -> Path:
    def means(values: list[Number], answers: list[Number]) -> list[Number]:
        return [v - e * a for v, a, e in zip(values, answers, excess, strict=True)]

    def variances(values: list[Number], answers: list[Number]) -> list[Number]:
        return [v + a * a * s for v, a, s in zip(values, answers, variance, strict=True)]

    return Path(
        means(path.level, answer.level),
        variances(path.level_variance, answer.level),
        means(path.tissue, answer.tissue),
        means(path.maintenance, answer.maintenance),
        variances(path.maintenance_variance, answer.maintenance),
        path.changes,
    )
