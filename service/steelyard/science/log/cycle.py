"""The rise of weight around menstruation, so that water before it does not read as a stall.

Its shape in time is taken as known from the dates given; how many kilograms it is worth is learnt with the rest. On
each day only dates up to that day are used.
"""

from collections.abc import Sequence

from ..register import (
    KANELLAKIS_2023,
    Basis,
    constant,
    source,
)

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
