"""A season's strategy as numbers, the ready-made strategies, and the usual band of body fat."""

import math
from enum import StrEnum
from typing import NamedTuple

from . import rail_table as table
from .elementwise import Number
from .evidence import Basis, constant
from .person import Sex
from .phase_defaults import FAT_CEILING, LEAST_WEEKS, MOST_WEEKS

NEVER = math.inf  # the body fat at which a strategy without cuts cuts

_BAND_LOWER = {
    Sex.MALE: constant(
        "band_lower_male", 0.10, unit="1", basis=Basis.COMMON_PRACTICE,
        summary="Lower end of the body-fat band of men aiming to look lean all year: 10-15 %, a cut from 15-17 %",
    ),
    Sex.FEMALE: constant(
        "band_lower_female", 0.18, unit="1", basis=Basis.JUDGEMENT,
        summary="Lower end of the body-fat band of women aiming to look lean all year, by analogy: 18-24 %",
    ),
}  # fmt: skip
FAST_GAIN_OVERSHOOT = constant(
    "fast_gain_overshoot", 0.03, unit="1", basis=Basis.JUDGEMENT,
    summary="How far over the band the long gain of a fast gain with a long cut goes before it is cut",
)  # fmt: skip
SLOW_GAIN_SHARE = constant(
    "slow_gain_share", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Rate of a slow gain as a share of the ceiling on the rate of gain: the recommended rate is taken as half",
)  # fmt: skip
LONG_CUT_WEEKS = int(
    constant("long_cut_weeks", 16, unit="weeks", summary="Longest cut after a fast gain", basis=Basis.JUDGEMENT)
)


class Policy(NamedTuple):
    """A strategy: one number each, or arrays over many strategies.

    ``surplus_kcal`` [kcal/d] of a gain; ``cut_at`` and ``cut_to`` body-fat fractions at which a cut starts and ends
    (a gain stops at ``cut_at`` even where no cut may start); ``deficit_kcal`` [kcal/d] at the start of a cut;
    weeks: the longest cut, maintenance after each, the least between two; the most cuts in any 52 weeks and in all.
    """

    surplus_kcal: Number
    cut_at: Number = NEVER
    cut_to: Number = 0.0
    deficit_kcal: Number = table.DEFAULT_DEFICIT
    longest_cut_weeks: Number = MOST_WEEKS
    maintenance_weeks: Number = 1
    weeks_between_cuts: Number = table.WEEKS_BETWEEN_CUTS
    cuts_a_year: Number = table.CUTS_A_YEAR_WARN
    most_cuts: Number = 1000

    @property
    def has_cuts(self) -> bool:
        """Whether this one strategy may cut at all."""
        return bool(self.cut_at < NEVER and self.most_cuts > 0 and self.cuts_a_year > 0)

    @property
    def without_cuts(self) -> "Policy":
        """The same gain, never cut."""
        return self._replace(cut_at=NEVER, most_cuts=0)


class Band(NamedTuple):
    """The body-fat fractions between which a person wants to stay."""

    lower: float
    upper: float


def usual_band(sex: Sex) -> Band:
    """The band where none was chosen; half way between both sets where neither fits."""
    if sex is Sex.UNSPECIFIED:
        return Band(sum(_BAND_LOWER.values()) / 2, sum(FAT_CEILING.values()) / 2)
    return Band(_BAND_LOWER[sex], FAT_CEILING[sex])


class ReadyMade(StrEnum):
    """The ready-made strategies."""

    SLOW_GAIN_RARE_MINI_CUTS = "slow_gain_rare_mini_cuts"
    FAST_GAIN_LONG_CUT = "fast_gain_long_cut"
    FAST_GAIN_REPEATED_MINI_CUTS = "fast_gain_repeated_mini_cuts"
    SLOW_GAIN_NO_CUT = "slow_gain_no_cut"


def ready_made(name: ReadyMade, band: Band, slow_surplus_kcal: float, fast_surplus_kcal: float) -> Policy:
    """A ready-made strategy for a person's band and for the surpluses of a slow and of the fastest gain [kcal/d]."""
    width = band.upper - band.lower
    slow, fast = round(slow_surplus_kcal, -1), round(fast_surplus_kcal, -1)
    if name is ReadyMade.SLOW_GAIN_RARE_MINI_CUTS:
        return Policy(slow, band.upper, band.upper - width / 2)
    if name is ReadyMade.FAST_GAIN_LONG_CUT:
        return Policy(fast, band.upper + FAST_GAIN_OVERSHOOT, band.lower + width / 5, longest_cut_weeks=LONG_CUT_WEEKS)
    if name is ReadyMade.FAST_GAIN_REPEATED_MINI_CUTS:
        return Policy(
            fast, band.upper - width / 5, band.lower + width / 3, table.BRISK_DEFICIT,
            longest_cut_weeks=max(LEAST_WEEKS, MOST_WEEKS - 2),
        )  # fmt: skip
    return Policy(slow).without_cuts


POLICY_IDS = (
    "band_lower_male", "band_lower_female", "fast_gain_overshoot", "slow_gain_share", "long_cut_weeks",
)  # fmt: skip
