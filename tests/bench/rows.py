"""One line of the table of ratios, and how repeated measurements become one."""

import math
import statistics
from collections.abc import Callable, Sequence
from typing import NamedTuple


class Ratio(NamedTuple):
    """The median of a ratio over the rounds of a run, and the range of its middle half."""

    median: float
    lower: float
    upper: float


class Row(NamedTuple):
    """A measured ratio beside what is asked of it. ``at_least`` or ``at_most`` is the target; None asks nothing."""

    section: str
    what: str
    ratio: Ratio
    unit: str = "x"
    at_least: float | None = None
    at_most: float | None = None
    stretch: float | None = None
    note: str = ""

    @property
    def is_met(self) -> bool | None:
        """Whether the median meets the target; None where there is none."""
        if self.at_least is not None:
            return self.ratio.median >= self.at_least
        if self.at_most is not None:
            return self.ratio.median <= self.at_most
        return None


def over_rounds(values: Sequence[float]) -> Ratio:
    """The median of the rounds' ratios and the quartiles about it."""
    if len(values) < 2:
        return Ratio(values[0], values[0], values[0])
    quartiles = statistics.quantiles(values, n=4, method="inclusive")
    return Ratio(statistics.median(values), quartiles[0], quartiles[2])


def paired(
    measured: Callable[[], float], reference: Callable[[], float], rounds: int, *, reciprocal: bool = False
) -> Ratio:
    """``measured / reference`` (or its reciprocal) over alternating rounds.

    The two follow each other closely and swap their order from round to round, so that what slows the machine for a
    while slows both.
    """
    values = []
    for i in range(rounds):
        if i % 2:
            a, b = measured(), reference()
        else:
            b, a = reference(), measured()
        values.append(b / a if reciprocal else a / b)
    return over_rounds(values)


def shown(value: float, unit: str) -> str:
    """A figure with three digits that count, and its unit."""
    digits = max(0, 2 - math.floor(math.log10(abs(value)))) if value else 0
    space = "" if unit == "x" else " "
    return f"{value:,.{min(digits, 3)}f}{space}{unit}"
