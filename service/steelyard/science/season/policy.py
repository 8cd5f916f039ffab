"""A season's strategy as numbers, and the ready-made strategies."""

import math
from enum import StrEnum
from typing import NamedTuple

from .. import rails
from ..numbers import Number
from ..phase import LEAST_WEEKS, LONG_CUT_WEEKS, MOST_WEEKS, Band
from ..register import Basis, constant

NEVER = math.inf  # the body fat at which a strategy without cuts cuts

FAST_GAIN_OVERSHOOT = constant(
    "fast_gain_overshoot", 0.03, unit="1", basis=Basis.JUDGEMENT,
    summary="How far over the band the long gain of a fast gain with a long cut goes before it is cut",
)  # fmt: skip


class Policy(NamedTuple):
    """A strategy: one number each, or arrays over many strategies.

    ``surplus_kcal`` [kcal/d] of a gain; ``cut_at`` and ``cut_to`` body-fat fractions at which a cut starts and ends
    (a gain stops at ``cut_at`` even where no cut may start); ``deficit_kcal`` [kcal/d] at the start of a cut;
    weeks: the longest cut, maintenance after each, the least between two; the most cuts in any 52 weeks and in all.
    """

    surplus_kcal: Number
    cut_at: Number = NEVER
    cut_to: Number = 0.0
    deficit_kcal: Number = rails.DEFAULT_DEFICIT
    longest_cut_weeks: Number = MOST_WEEKS
    maintenance_weeks: Number = 1
    weeks_between_cuts: Number = rails.WEEKS_BETWEEN_CUTS
    cuts_a_year: Number = rails.CUTS_A_YEAR_WARN
    most_cuts: Number = 1000

    @property
    def has_cuts(self) -> bool:
        """Whether this one strategy may cut at all."""
        return bool(self.cut_at < NEVER and self.most_cuts > 0 and self.cuts_a_year > 0)

    @property
    def without_cuts(self) -> "Policy":
        """The same gain, never cut."""
        return self._replace(cut_at=NEVER, most_cuts=0)


class ReadyMade(StrEnum):
    """The ready-made strategies."""

    SLOW_GAIN_RARE_MINI_CUTS = "slow_gain_rare_mini_cuts"
    FAST_GAIN_LONG_CUT = "fast_gain_long_cut"
    FAST_GAIN_REPEATED_MINI_CUTS = "fast_gain_repeated_mini_cuts"
    SLOW_GAIN_NO_CUT = "slow_gain_no_cut"


def ready_made(
    name: ReadyMade, band: Band, surpluses_kcal: tuple[float, float], deficits_kcal: tuple[float, float]
) -> Policy:
    """A ready-made strategy for a person's band, surpluses and deficits [kcal/d].

    Args: ``surpluses_kcal`` of a slow and of the fastest gain, ``deficits_kcal`` of a steady and of a brisk cut.
    """
    width = band.upper - band.lower
    slow, fast = (round(kcal, -1) for kcal in surpluses_kcal)
    steady, brisk = deficits_kcal
    if name is ReadyMade.SLOW_GAIN_RARE_MINI_CUTS:
        return Policy(slow, band.upper, band.upper - width / 2, steady)
    if name is ReadyMade.FAST_GAIN_LONG_CUT:
        return Policy(
            fast, band.upper + FAST_GAIN_OVERSHOOT, band.lower + width / 5, steady, longest_cut_weeks=LONG_CUT_WEEKS
        )  # fmt: skip
    if name is ReadyMade.FAST_GAIN_REPEATED_MINI_CUTS:
        return Policy(
            fast, band.upper - width / 5, band.lower + width / 3, brisk,
            longest_cut_weeks=max(LEAST_WEEKS, MOST_WEEKS - 2),
        )  # fmt: skip
    return Policy(slow).without_cuts
