"""The rise of weight around menstruation, so that water before it does not read as a stall.

Its shape in time is expected from the dates given. How many kilograms it is worth is learnt with the rest, and so is
whether it comes early or late in this woman; what differs from one cycle to the next is noise. On each day only dates
up to that day are used.
"""

import math
from collections.abc import Callable, Sequence
from functools import cache
from typing import NamedTuple

from ..numbers import Column, Estimate
from ..register import (
    KANELLAKIS_2023,
    Basis,
    Kind,
    constant,
    equation,
    source,
)

WHITE_2011 = source(
    "white_2011",
    "White CP, Hitchcock CL, Vigna YM, Prior JC. Fluid retention over the menstrual cycle: 1-year data from the "
    "prospective ovulation cohort. Obstet Gynecol Int 2011;2011:138451",
    "10.1155/2011/138451",
)
FEHRING_2006 = source(
    "fehring_2006",
    "Fehring RJ, Schneider M, Raviele K. Variability in the phases of the menstrual cycle. J Obstet Gynecol Neonatal "
    "Nurs 2006;35:376-84",
    "10.1111/j.1552-6909.2006.00051.x",
)
HENRY_2024 = source(
    "henry_2024",
    "Henry S, Shirin S, Goshtasebi A, Prior JC. Prospective 1-year assessment of within-woman variability of "
    "follicular and luteal phase lengths in healthy women prescreened to have normal menstrual cycle and luteal phase "
    "lengths. Hum Reprod 2024;39:2565-74",
    "10.1093/humrep/deae215",
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
CYCLE_LENGTH_SD = constant(
    "cycle_length_sd", 3.4, unit="d", sources=(FEHRING_2006,),
    summary="SD of the length of cycles, between women and within: of a next start that no two dates tell",
)  # fmt: skip
CYCLE_LENGTH_OWN_SD = constant(
    "cycle_length_own_sd", 1.8, unit="d", basis=Basis.FROM_MEMORY, sources=(HENRY_2024,),
    summary="SD of the length of one woman's cycles (half of women have a variance under 3.1 d2)",
)  # fmt: skip
CYCLE_TIMING_SD = constant(
    "cycle_timing_sd", 2.0, unit="d", basis=Basis.JUDGEMENT, sources=(FEHRING_2006,),
    summary="SD between women of the day on which water comes and goes, against the first day of menstruation: as the "
    "luteal phase, with which it comes, differs in length",
)  # fmt: skip
CYCLE_TIMING_OWN_SD = constant(
    "cycle_timing_own_sd", 1.7, unit="d", basis=Basis.JUDGEMENT, sources=(HENRY_2024,),
    summary="SD of that day between cycles of one woman: as her luteal phases differ (a variance of 3 d2)",
)  # fmt: skip
# Judgements:
_SHORTEST, _LONGEST = 20, 45  # gaps outside are missed or mistaken dates and say nothing about the length
_LATE_DAYS = 10  # so long after the expected day the rise is held; then the cycle is taken as missed
_WAITED = 26  # a start that is due in so many days is too far away for water to gather
_SHIFTS = (-2.0, -1.0, 0.0, 1.0, 2.0)  # SDs that a distribution is summed over


class CycleRise(NamedTuple):
    """The course of the rise on each day.

    Its share that is expected (0-1); what a day by which all of hers comes late adds to that; and the variance of the
    share, as timing differs from one cycle to the next.
    """

    share: Column
    late: Column
    unsure: Column


# What is known of it before any log: the rise [kg], and the rise times the days by which it comes late [kg d].
RISE_BEFORE = (
    Estimate(CYCLE_RISE_KG, CYCLE_RISE_SD_KG),
    Estimate(0.0, CYCLE_TIMING_SD * math.hypot(CYCLE_RISE_KG, CYCLE_RISE_SD_KG)),
)


@equation(
    "cycle_course",
    summary="Course of the rise of weight around menstruation",
    formula=(
        f"rises over {RISING_DAYS:g} days to the first day of menstruation, stays for {HELD_DAYS:g}, is gone "
        f"{FALLING_DAYS:g} days later; the mean over when the next one is due and how timing differs between cycles, "
        "with its variance and its slope"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(WHITE_2011, FEHRING_2006, HENRY_2024),
    valid_range="people who menstruate, by the dates that they tell",
)
def cycle_rise(starts: Sequence[int], first_day: int, count: int) -> CycleRise:
    """The rise on each of ``count`` days from ``first_day`` on.

    ``starts``: days on which a menstruation began, ascending, also from before the log. Nothing before the first.
    """
    found = CycleRise([], [], [])
    last: int | None = None
    gaps: list[int] = []
    upcoming = list(starts)
    for day in range(first_day, first_day + count):
        while upcoming and upcoming[0] <= day:
            start = upcoming.pop(0)
            if last is not None and _SHORTEST <= start - last <= _LONGEST:
                gaps.append(start - last)
            last = start
        share = late = unsure = 0.0
        if last is not None:
            length = sorted(gaps)[len(gaps) // 2] if gaps else CYCLE_DAYS
            share, late, unsure = _on_day(day - last, last + length - day, min(len(gaps), 4))
        found.share.append(share)
        found.late.append(late)
        found.unsure.append(unsure)
    return found


def _on_day(since: int, left: int, gaps: int) -> tuple[float, float, float]:
    """Share, slope and variance of it so many days after a start and before the next is expected, by how many gaps
    tell its day."""
    if since < HELD_DAYS + FALLING_DAYS + 3.0 * CYCLE_TIMING_OWN_SD:
        return _after_start(since)
    if -_LATE_DAYS <= left < _WAITED:
        return _before_next(left, gaps)
    return 0.0, 0.0, 0.0


# Both are asked for a few days around a start alone, whatever dates are told, so that what is kept stays small.
@cache
def _after_start(since: int) -> tuple[float, float, float]:
    return _summed([(1.0, float(since))], _falling)


@cache
def _before_next(left: int, gaps: int) -> tuple[float, float, float]:
    spread = CYCLE_LENGTH_OWN_SD * (1.0 + 1.0 / gaps) ** 0.5 if gaps else CYCLE_LENGTH_SD
    # It has not begun yet: of the days on which it was due those to come are left.
    off = [((wait - left) / spread) ** 2 for wait in range(_WAITED)]
    return _summed([(math.exp(-0.5 * (each - min(off))), float(wait)) for wait, each in enumerate(off)], _rising)


def _summed(ends: list[tuple[float, float]], course: Callable[[float, float], float]) -> tuple[float, float, float]:
    """Share, slope and variance over the days on which the rise may end, each with its odds, and over its timing."""
    total = mean = square = slope = 0.0
    for odds, end in ends:
        for shift in _SHIFTS:
            weight, late = odds * math.exp(-0.5 * shift * shift), CYCLE_TIMING_OWN_SD * shift
            share = course(end, late)
            total += weight
            mean += weight * share
            square += weight * share * share
            slope += weight * (course(end, late + 0.5) - course(end, late - 0.5))
    mean /= total
    return mean, slope / total, max(0.0, square / total - mean * mean)


def _falling(since: float, late: float) -> float:
    """Share of the rise so many days after menstruation began."""
    return min(1.0, max(0.0, 1.0 - (since - late - HELD_DAYS) / FALLING_DAYS))


def _rising(left: float, late: float) -> float:
    """Share of it so many days before one begins."""
    return min(1.0, max(0.0, 1.0 - (left + late) / RISING_DAYS))
