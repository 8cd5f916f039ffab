"""A phase that is being followed, or was: what it asked for, and the path that it promised."""

from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple, Self

import msgspec

from ..body import BASELINE_CARBOHYDRATE_SHARE, Adherence, Body, Diet, Forecast, Stretch, forecast
from ..numbers import Estimate
from ..rails import CARBOHYDRATE_KCAL_PER_G, PROTEIN_KCAL_PER_G

DAYS_PER_WEEK = 7
MOST_PAUSED_WEEKS = 52  # a plan whose body is a year away is none to go on with (judgement)


class PhaseKind(StrEnum):
    """What a phase is for."""

    MINI_CUT = "mini_cut"
    CUT = "cut"
    GAIN = "gain"
    MAINTENANCE = "maintenance"

    @property
    def is_deficit(self) -> bool:
        """Whether the phase is there to lose fat."""
        return self in (PhaseKind.MINI_CUT, PhaseKind.CUT)


class Verdict(StrEnum):
    """What a phase is against its plan. Faster: further towards its purpose; at maintenance, further up.

    Contradicted: the log says that the plan is followed, and the scale that it is not.
    """

    WITHIN_INTERVAL = "within_interval"
    FASTER = "faster"
    SLOWER = "slower"
    CONTRADICTED = "contradicted"
    TOO_EARLY = "too_early"


class FollowedWeek(msgspec.Struct, frozen=True, kw_only=True):
    """A week as planned, a day's amounts. Carbohydrate None: half of the energy. A break is at maintenance."""

    intake_kcal: float
    protein_g: float
    carbohydrate_g: float | None = None
    is_break: bool = False


class IntakeChange(msgspec.Struct, frozen=True, kw_only=True):
    """From the morning of ``day`` on, so much is eaten a day beyond what was planned until then [kcal/d]."""

    day: int
    change_kcal: float


class PausedDays(msgspec.Struct, frozen=True, kw_only=True):
    """At maintenance from the morning of ``day`` to the evening of ``last_day``; the rest moves back by whole weeks."""

    day: int
    last_day: int

    @property
    def weeks(self) -> int:
        """Whole weeks that it takes."""
        return -(-(self.last_day - self.day + 1) // DAYS_PER_WEEK)


class EndMoved(msgspec.Struct, frozen=True, kw_only=True):
    """The phase ends with ``last_day``, whatever was planned."""

    last_day: int


class FollowedPhase(msgspec.Struct, frozen=True, kw_only=True):
    """The plan as it was made, and what was changed of it since.

    ``maintenance`` is what it started from, on the scale of its intakes. ``fat_loss_kg`` is the fat it is to lose; None
    where its length is the target. ``usual_intake_kcal`` was eaten before it (None: maintenance). ``fat_ceiling``
    (fraction) ends a gain. ``changes`` of intake add up; ``moved_end_day`` is the morning after its last day, where
    that is no longer the planned one. ``ratio`` is logged over eaten energy, and ``adherence`` how well deficits were
    kept to, as the plan knew them, where it did. ``weeks_before``: of a deficit just before, which
    count as of this one.
    """

    kind: PhaseKind
    start_day: int
    weeks: tuple[FollowedWeek, ...]
    maintenance: Estimate
    usual_intake_kcal: float | None = None
    fat_loss_kg: float | None = None
    fat_ceiling: float | None = None
    changes: tuple[IntakeChange, ...] = ()
    moved_end_day: int | None = None
    ratio: Estimate | None = None
    adherence: Adherence | None = None
    weeks_before: float = 0.0

    @property
    def days(self) -> int:
        """Planned length."""
        return DAYS_PER_WEEK * len(self.weeks)

    @property
    def end_day(self) -> int:
        """The morning after its last day."""
        return self.start_day + self.days if self.moved_end_day is None else self.moved_end_day

    def changed(self, told: Sequence[IntakeChange | PausedDays | EndMoved]) -> Self:
        """The phase with what was changed of it, in the order in which it was told."""
        changes, weeks, end = [*self.changes], [*self.weeks], self.moved_end_day
        for one in told:
            if isinstance(one, IntakeChange):
                changes.append(one)
            elif isinstance(one, EndMoved):
                end = max(one.last_day, self.start_day) + 1
            else:
                at = min((one.day - self.start_day) // DAYS_PER_WEEK, len(weeks))
                protein_g = weeks[min(at, len(weeks) - 1)].protein_g
                held = FollowedWeek(intake_kcal=self.maintenance.mean, protein_g=protein_g, is_break=True)
                weeks[at:at] = [held] * one.weeks
                end = None if end is None else end + DAYS_PER_WEEK * one.weeks
        changes.sort(key=lambda change: change.day)
        return msgspec.structs.replace(self, changes=tuple(changes), weeks=tuple(weeks), moved_end_day=end)

    def planned_week_of(self, day: int) -> FollowedWeek:
        """The week that a day of the phase, counted from 0, falls in, as first planned; the last one beyond the end."""
        return self.weeks[min(day // DAYS_PER_WEEK, len(self.weeks) - 1)]

    def worked_days(self, days: int) -> int:
        """Of its first days, those that are neither of a pause nor of a break."""
        return sum(not self.planned_week_of(day).is_break for day in range(days))

    def days_to_work(self, days: int, worked: int) -> int:
        """How many days after its first ``days`` until it has ``worked`` so many outside pauses and breaks."""
        ahead, done = 0, self.worked_days(days)
        while done < worked and days + ahead < self.days + worked:
            done += not self.planned_week_of(days + ahead).is_break
            ahead += 1
        return ahead

    def told_kcal(self, days: int) -> list[float]:
        """What was told to be eaten on each of its first days [kcal]."""
        return [self.week_of(day).intake_kcal for day in range(days)]

    def week_of(self, day: int) -> FollowedWeek:
        """The week of a day as it was told in the end: a break stays, all else has the changes told since."""
        week = self.planned_week_of(day)
        if not self.changes:
            return week
        changed = sum(change.change_kcal for change in self.changes if change.day <= self.start_day + day)
        return week if week.is_break else corrected_week(week, changed)


def corrected_week(week: FollowedWeek, change_kcal: float) -> FollowedWeek:
    """A week with another energy. Less is taken from carbohydrate; more is shared as the plan shares it.

    So protein stays, and dietary fat never falls: its floors hold where they held in the plan.
    """
    if change_kcal == 0.0:
        return week
    if week.carbohydrate_g is None:
        return msgspec.structs.replace(week, intake_kcal=week.intake_kcal + change_kcal)
    change = change_kcal / CARBOHYDRATE_KCAL_PER_G
    if change_kcal > 0.0:
        energy = CARBOHYDRATE_KCAL_PER_G * week.carbohydrate_g
        change *= min(1.0, energy / max(1.0, week.intake_kcal - PROTEIN_KCAL_PER_G * week.protein_g))
    grams = max(0.0, 5.0 * round((week.carbohydrate_g + change) / 5.0))
    return msgspec.structs.replace(week, intake_kcal=week.intake_kcal + change_kcal, carbohydrate_g=grams)


def diet_of_week(week: FollowedWeek, protein_kg: float, scale: float = 1.0) -> Diet:
    """The model's diet of a planned week, its energy times ``scale`` (1 over the logging ratio: as really eaten).

    ``protein_kg`` is the body mass that protein is for.
    """
    carbohydrate = (
        BASELINE_CARBOHYDRATE_SHARE * week.intake_kcal
        if week.carbohydrate_g is None
        else CARBOHYDRATE_KCAL_PER_G * week.carbohydrate_g
    )
    return Diet(scale * week.intake_kcal, scale * carbohydrate, week.protein_g / protein_kg)


class PromisedChange(NamedTuple):
    """Change that the plan expects over a window [kg], with the SD of its forecast; of weight the mean alone."""

    tissue: Estimate
    fat: Estimate
    weight_kg: float


class PromisedPath:
    """What the plan promises to whoever eats it, days counted from its start: what a phase is judged by.

    That people follow less of a deficit is no part of it, or half of one would be as planned.

    Its intakes and the maintenance that it started from stand on the member's logging scale, and the body lives on
    the physical one: a deficit of 500 kcal as logged at 90 % is one of 556 kcal.
    """

    def __init__(
        self, phase: FollowedPhase, body: Body, protein_kg: float, ratio: float, marks: tuple[int, ...]
    ) -> None:
        """``body`` as before the phase, physical scale; ``protein_kg``: the body mass that its protein is for.

        ``ratio``: logged over eaten; ``marks``: the days of the phase between which changes will be asked for.
        """
        self._marks = sorted({0, phase.days, *(min(max(mark, 0), phase.days) for mark in marks)})
        stretches: list[Stretch] = []
        self._points = {0: 0}
        day = point = 0
        while day < phase.days:
            ends = [mark for mark in self._marks if mark > day]
            until = min(ends[0], day - day % DAYS_PER_WEEK + DAYS_PER_WEEK)
            diet = diet_of_week(phase.planned_week_of(day), protein_kg, 1.0 / ratio)
            # A stretch ends on every mark, so that the moved runs have a node there.
            if stretches and stretches[-1].diet == diet and day not in self._marks:
                stretches[-1] = Stretch(diet, (*stretches[-1].lengths, float(until - day)))
            else:
                stretches.append(Stretch(diet, (float(until - day),)))
            day, point = until, point + 1
            self._points[day] = point
        self.forecast: Forecast = forecast(body, stretches, is_eaten=True)

    def change(self, since: int, until: int) -> PromisedChange:
        """The change between two marks; a mark beyond the planned end is that end."""
        path = self.forecast
        first, last = (self._points[min(mark, self._marks[-1])] for mark in (since, until))
        node, from_node = path.nodes.index(last), path.nodes.index(first)
        before, after = path.states[first], path.states[last]
        tissue, fat = after.tissue_kg - before.tissue_kg, after.fat_kg - before.fat_kg
        tissue2 = fat2 = 0.0
        for run in path.moved:
            there, then = run.states[node], run.states[from_node]
            tissue2 += float(there.tissue_kg - then.tissue_kg - tissue) ** 2
            fat2 += float(there.fat_kg - then.fat_kg - fat) ** 2
        weight = float(after.weight_kg - before.weight_kg)
        return PromisedChange(Estimate(float(tissue), tissue2**0.5), Estimate(float(fat), fat2**0.5), weight)
