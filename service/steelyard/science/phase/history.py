"""The phases of a member over time: the one under way, those that are over, and what of them counts for the next."""

import math
from collections.abc import Sequence
from datetime import date, timedelta
from typing import NamedTuple, Self

from .. import rails
from .defaults import LEAST_DEFICIT, STATIC_KCAL_PER_KG
from .followed import DAYS_PER_WEEK, PhaseKind

MOST_WEEKS_OVER = 104  # that a phase which is over is told with
MOST_CUTS = 12  # that are told of a year: more change no plan
_YEAR_DAYS = 365
YEAR_WEEKS = 52
# A deficit that begins so soon after another goes on with it.
_GOES_ON_DAYS = 3


class DeficitBefore(NamedTuple):
    """Weeks of the deficit before a question, and the weeks since: with less than four between, two count as one."""

    weeks: float = 0.0
    weeks_since: float = 0.0

    def counted(self, weeks_held: float) -> float:
        """Weeks that count as of a deficit that begins some weeks later: with those between, if under four."""
        return rails.weeks_that_count(self.weeks, self.weeks_since + weeks_held)


NO_DEFICIT_BEFORE = DeficitBefore()


class History(NamedTuple):
    """Cuts already done; ``None`` where not told."""

    cuts_last_12_months: int | None = None
    weeks_since_last_cut: int | None = None

    @property
    def is_known(self) -> bool:
        """Whether it was told."""
        return self.cuts_last_12_months is not None

    @property
    def deficit_before(self) -> DeficitBefore:
        """The last deficit, where it counts as of the next: as many weeks as a short one has, as they are not told."""
        since = self.weeks_since_last_cut
        if since is None or not rails.weeks_that_count(rails.LONG_PHASE_WEEKS, since):
            return NO_DEFICIT_BEFORE
        return DeficitBefore(float(rails.LONG_PHASE_WEEKS), float(since))


def warn_of_cuts(
    history: History, cuts: Sequence[tuple[float, float]], *, is_held_to_default: bool = True
) -> list[rails.RailAction]:
    """Warnings on how often cuts to come would follow those already done, and each other.

    ``cuts``: first week and the one after the last, counted from the day that ``history`` is of.
    ``is_held_to_default``: whether the deficit is kept to the default one where history is not known; else that is
    advised.
    """
    actions: list[rails.RailAction] = []
    since, before = history.weeks_since_last_cut, history.cuts_last_12_months
    for k, (first, _) in enumerate(cuts):
        own = sum(1 for other, _ in cuts[:k] if first - other < YEAR_WEEKS)
        # Those before count for as long as the last of them does: of the others no week is told.
        earlier = (before or 0) if first + (since or 0) < YEAR_WEEKS else 0
        in_year = None if before is None and not k else own + earlier
        gap = first - cuts[k - 1][1] if k else None if since is None else since + first
        actions += rails.warn_history(
            in_year, None if gap is None else math.floor(gap), is_held_to_default=is_held_to_default
        )
    return actions


class BodyThen(NamedTuple):
    """A body on a day [kg]."""

    weight_kg: float
    fat_kg: float


class UnderWay(NamedTuple):
    """The phase under way: its first day, the day after its last (None: not known), the weeks of a deficit just before
    that count as of it, and the body it began with, where known."""

    kind: PhaseKind
    start: date
    end: date | None
    weeks_before: float = 0.0
    body: BodyThen | None = None

    def is_on(self, day: date) -> bool:
        """Whether a day lies in it."""
        return self.start <= day and (self.end is None or day < self.end)


class FinishedPhase(NamedTuple):
    """A phase that is over; weights [kg] and body-fat fractions where known."""

    kind: PhaseKind
    start: date
    weeks: int
    start_weight_kg: float | None = None
    end_weight_kg: float | None = None
    start_fat_fraction: float | None = None
    end_fat_fraction: float | None = None

    @property
    def end(self) -> date:
        """The day after its last."""
        return self.start + timedelta(days=DAYS_PER_WEEK * self.weeks)

    @property
    def got_nowhere(self) -> bool:
        """Whether a cut of four weeks and more took off less than the least deficit worth its name would have."""
        start, end = self.start_weight_kg, self.end_weight_kg
        if not self.kind.is_deficit or self.weeks < rails.APART_WEEKS or start is None or end is None:
            return False
        return (start - end) * STATIC_KCAL_PER_KG < LEAST_DEFICIT * DAYS_PER_WEEK * self.weeks

    @property
    def as_under_way(self) -> UnderWay:
        """The phase while it ran."""
        weight, fat = self.start_weight_kg, self.start_fat_fraction
        body = None if weight is None or fat is None else BodyThen(weight, fat * weight)
        return UnderWay(self.kind, self.start, self.end, body=body)


class PhasesKnown(NamedTuple):
    """What is known of a member's phases: the one under way, those that are over (oldest first; None: not known), and
    the body as it was last read."""

    under_way: UnderWay | None = None
    over: tuple[FinishedPhase, ...] | None = None
    body: BodyThen | None = None

    def on_day(self, day: date) -> Self:
        """What is known on the morning of a day: a phase whose last day is past has joined those that are over.

        Nobody has to review a phase on the day after it: what comes next knows of it all the same.
        """
        now = self.under_way
        if now is None or now.end is None or day < now.end:
            return self
        return self.ended(now.end)

    def running(self, day: date) -> Self:
        """What is known while a phase still runs that another is planned to end: it is not over before that day."""
        if self.over is None or all(phase.end <= day for phase in self.over):
            return self
        runs = self.under_way
        if runs is None or day < runs.start:
            runs = next((phase.as_under_way for phase in self.over if phase.start <= day < phase.end), None)
        return self._replace(under_way=runs, over=tuple(phase for phase in self.over if phase.end <= day))

    def given_up(self, day: date) -> Self:
        """What is known where another phase begins on a day: the one under way is over by then, if not sooner."""
        now = self.on_day(day).running(day)
        if now.under_way is None or day <= now.under_way.start:
            return now
        return now.ended(day)

    def ended(self, end: date) -> Self:
        """The phase under way is over, and ``end`` the day after its last; one of less than half a week is none.

        Where those before it are not known they stay so until a deficit is over: a hold alone would read as "no cuts".
        """
        now = self.under_way
        assert now is not None
        before = () if self.over is None else self.over
        weeks, start = _whole_weeks(now.start, end, before)
        if weeks < 1 or (self.over is None and not now.kind.is_deficit):
            return self._replace(under_way=None)
        first, last = now.body, self.body
        over = FinishedPhase(
            now.kind,
            start,
            weeks,
            start_weight_kg=None if first is None else first.weight_kg,
            end_weight_kg=None if last is None else last.weight_kg,
            start_fat_fraction=None if first is None else first.fat_kg / first.weight_kg,
            end_fat_fraction=None if last is None else last.fat_kg / last.weight_kg,
        )
        return self._replace(under_way=None, over=(*before[:-1], *_in_a_row(before[-1:], over)))

    def in_deficit(self, day: date) -> UnderWay | None:
        """The deficit that a day goes on with, where one is under way."""
        now = self.on_day(day).running(day).under_way
        return now if now is not None and now.kind.is_deficit and now.start < day else None

    def deficit_before(self, day: date) -> DeficitBefore:
        """Weeks of the deficit before a day, and the weeks since: more may count as one with it."""
        now = self.in_deficit(day)
        if now is not None:
            return DeficitBefore(now.weeks_before + (day - now.start).days / DAYS_PER_WEEK)
        return self.cuts_before(day).deficit_before

    def cuts_before(self, day: date, *, goes_on: bool = False) -> History:
        """The cuts before a day, as a planner is asked with them.

        A cut under way is over where another takes its place, unless what is asked about is how it ``goes_on``.
        """
        as_it_runs = self.on_day(day).running(day)
        now = as_it_runs if goes_on else as_it_runs.given_up(day)
        if now.over is None:
            return History()
        ends = [phase.end for phase in now.over if phase.kind.is_deficit]
        year = sum(1 for end in ends if 0 <= (day - end).days <= _YEAR_DAYS)
        since = min(((day - end).days // DAYS_PER_WEEK for end in ends if end <= day), default=None)
        # Of a cut that is given up nothing is known that was before it, where nobody told.
        return History(None if as_it_runs.over is None else min(year, MOST_CUTS), since)


def _whole_weeks(start: date, end: date, before: Sequence[FinishedPhase]) -> tuple[int, date]:
    """Length in whole weeks, and the first day that goes with it.

    The end is kept, which tells when the next may begin; the start gives way, though never into the phase before, so
    that no request that takes the history finds it in the future or overlapping.
    """
    weeks = min(MOST_WEEKS_OVER, round((end - start).days / DAYS_PER_WEEK))
    start = end - timedelta(days=DAYS_PER_WEEK * weeks)
    if before and start < before[-1].end:
        weeks, start = weeks - 1, start + timedelta(days=DAYS_PER_WEEK)
    return weeks, start


def _in_a_row(last: Sequence[FinishedPhase], over: FinishedPhase) -> list[FinishedPhase]:
    """The last phase and the one after it: one, where a deficit went on where another stopped."""
    if not last:
        return [over]
    one = last[0]
    is_deficit = one.kind.is_deficit and over.kind.is_deficit
    is_soon = (over.start - one.end).days <= _GOES_ON_DAYS
    if not (is_deficit and is_soon and one.weeks + over.weeks <= MOST_WEEKS_OVER):
        return [one, over]
    both = over._replace(
        kind=one.kind if one.kind is over.kind else PhaseKind.CUT,
        start=over.start - timedelta(days=DAYS_PER_WEEK * one.weeks),
        weeks=one.weeks + over.weeks,
        start_weight_kg=one.start_weight_kg,
        start_fat_fraction=one.start_fat_fraction,
    )
    return [both]
