"""The weeks of a season: where no cut may stand, and by when a person wants to be lean."""

from datetime import date
from typing import NamedTuple

from ..phase import LEAST_WEEKS, SETTLING_WEEKS

# Above every body fat: no target.
NO_TARGET = 1.0


class Event(NamedTuple):
    """A day to arrive at with the last cut ended and settled; ``fat_fraction`` where leanness is wanted for it."""

    day: date
    fat_fraction: float | None = None


class BlockedDays(NamedTuple):
    """Days from ``first`` to ``last`` on which no cut may run."""

    first: date
    last: date


class Calendar(NamedTuple):
    """Per week: how many weeks in a row a cut may run from it, the next target and the weeks left until it.

    ``open_weeks[w]`` is 0 in a blocked week. ``lean_fraction[w]`` is the body fat wanted at the next event that has
    a target, ``weeks_left[w]`` in how many of the weeks before it a cut may run, broken off by blocked days or not.
    ``targets``: (week, fraction) of each event. From ``closed_from_week`` on no cut may run at all.
    """

    weeks: int
    open_weeks: tuple[int, ...]
    lean_fraction: tuple[float, ...]
    weeks_left: tuple[int, ...]
    targets: tuple[tuple[int, float], ...]
    closed_from_week: int | None = None

    @property
    def has_room_for_a_cut(self) -> bool:
        """Whether the shortest cut fits anywhere."""
        return max(self.open_weeks) >= LEAST_WEEKS


def make_calendar(
    start: date, weeks: int, blocked: list[BlockedDays], events: list[Event], closed_from_week: int | None = None
) -> Calendar:
    """The calendar of ``weeks`` from ``start``."""
    closed = [False] * weeks
    for first, last in blocked:
        for w in range(max(0, (first - start).days // 7), min(weeks - 1, (last - start).days // 7) + 1):
            closed[w] = True
    targets = []
    for day, fraction in events:
        at = (day - start).days // 7
        for w in range(max(0, at - SETTLING_WEEKS), min(weeks - 1, at) + 1):
            closed[w] = True
        if fraction is not None:
            targets.append((at, fraction))
    for w in range(max(0, weeks - SETTLING_WEEKS), weeks):
        closed[w] = True
    if closed_from_week is not None:
        for w in range(max(0, closed_from_week), weeks):
            closed[w] = True
    open_weeks, run = [0] * weeks, 0
    for w in reversed(range(weeks)):
        run = 0 if closed[w] else run + 1
        open_weeks[w] = run
    targets.sort()
    lean, left = [NO_TARGET] * weeks, [0] * weeks
    for w in range(weeks):
        for at, fraction in targets:
            if w < at - SETTLING_WEEKS:
                lean[w], left[w] = fraction, _weeks_to_cut(open_weeks[w : at - SETTLING_WEEKS])
                break
    return Calendar(weeks, tuple(open_weeks), tuple(lean), tuple(left), tuple(targets), closed_from_week)


def _weeks_to_cut(open_weeks: list[int]) -> int:
    """In how many of some weeks a cut may run: those of each run that has room for the shortest, and of the first."""
    count, is_room = 0, True
    for w, run in enumerate(open_weeks):
        if w and not open_weeks[w - 1]:
            is_room = run >= LEAST_WEEKS
        count += run > 0 and is_room
    return count
