"""What is asked of a phase: a deficit, a gain, a hold, and what follows it."""

from enum import StrEnum

import msgspec

from ..rails import CarbohydratePreference
from .defaults import (
    CUT_DEFAULT_WEEKS,
    CUT_WEEKS_MOST,
    DEFAULT_WEEKS,
    LEAST_WEEKS,
    MOST_WEEKS,
    ROOM_UNDER_RAILS,
)
from .followed import PhaseKind
from .sizes import Pace

# A gain towards a weight is looked for this far ahead.
_MOST_WEEKS = 52
_USUAL_WEEKS = 12


class DeficitKind(StrEnum):
    """The two kinds of fat-loss phase: short and brisk with one fixed intake, or longer with intakes set anew."""

    MINI_CUT = "mini_cut"
    CUT = "cut"

    @property
    def phase(self) -> PhaseKind:
        """The same among all kinds of phase."""
        return PhaseKind(self.value)


class DeficitAim(msgspec.Struct, frozen=True, kw_only=True):
    """What is asked of a fat-loss phase. One goal at most; what is ``None`` is solved for or usual.

    ``weeks`` counts every week of the phase, easing in and breaks included; ``at_most_weeks`` bounds it where it is
    solved for. ``weeks_done`` were spent in a deficit before the start, in the same phase. ``is_usual``: nobody asked
    for ``deficit_kcal``, which is the usual size.
    """

    kind: DeficitKind = DeficitKind.MINI_CUT
    fat_loss_kg: float | None = None
    target_fat_fraction: float | None = None
    target_weight_kg: float | None = None
    weeks: int | None = None
    at_most_weeks: int | None = None
    deficit_kcal: float | None = None
    pace: Pace = Pace.STEADY
    protein_g_per_kg: float | None = None
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED
    easing_in_weeks: int = 0
    break_every_weeks: int | None = None
    break_weeks: int = 1
    weeks_done: int = 0
    is_usual: bool = False

    @property
    def room_kcal(self) -> float:
        """What the deficit leaves free under the rails [kcal/d]: where its size was not asked for, nor solved for."""
        is_ours = self.deficit_kcal is None and not (self.has_goal and self.weeks is not None)
        return ROOM_UNDER_RAILS if is_ours or self.is_usual else 0.0

    @property
    def has_goal(self) -> bool:
        """Whether something is to be reached, rather than a length to be spent."""
        return not (self.fat_loss_kg is None and self.target_fat_fraction is None and self.target_weight_kg is None)

    def kind_of(self, weeks: int) -> DeficitKind:
        """The kind of a phase of so many weeks beside those done."""
        return DeficitKind.MINI_CUT if weeks + self.weeks_done <= MOST_WEEKS else DeficitKind.CUT

    @property
    def most_weeks(self) -> int:
        """The longest phase of this kind that is still open."""
        most = MOST_WEEKS - self.weeks_done if self.kind is DeficitKind.MINI_CUT else CUT_WEEKS_MOST
        return most if self.at_most_weeks is None else min(most, self.at_most_weeks)

    @property
    def least_weeks(self) -> int:
        """The shortest phase of this kind, or what may be left of one under way."""
        usual = LEAST_WEEKS if self.kind is DeficitKind.MINI_CUT else MOST_WEEKS + 1
        return max(1, usual - self.weeks_done, self.easing_in_weeks + 1)

    @property
    def usual_weeks(self) -> int:
        """The length where neither a goal nor weeks are given: all the time before an event, else a usual one."""
        if self.at_most_weeks is not None:
            return self.most_weeks
        usual = DEFAULT_WEEKS if self.kind is DeficitKind.MINI_CUT else CUT_DEFAULT_WEEKS
        return min(max(usual - self.weeks_done, self.least_weeks), self.most_weeks)


class GainAim(msgspec.Struct, frozen=True, kw_only=True):
    """A gain: its weeks, or the settled weight at which it ends, after ``weeks`` at most."""

    weeks: int | None = None
    surplus_kcal: float | None = None
    pace: Pace = Pace.STEADY
    target_weight_kg: float | None = None
    fat_ceiling: float | None = None
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED

    @property
    def longest_weeks(self) -> int:
        """The length, or where a weight is to be reached how far ahead it is looked for."""
        if self.weeks is not None:
            return self.weeks
        return _USUAL_WEEKS if self.target_weight_kg is None else _MOST_WEEKS


class HoldAim(msgspec.Struct, frozen=True, kw_only=True):
    """A hold at maintenance."""

    weeks: int
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED


class ReturnAim(msgspec.Struct, frozen=True, kw_only=True):
    """What follows a fat-loss phase or a hold."""

    maintenance_weeks: int = 1
    gain_weeks: int = 12
    surplus_kcal: float | None = None
    fat_ceiling: float | None = None
