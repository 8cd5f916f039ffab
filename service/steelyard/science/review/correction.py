"""The rest of a phase from the present state: where an intake leads, what the rails allow, what restores the target.

Intakes and corrections are on the member's logging scale; the body lives on the physical one (logged over the
logging ratio), and the rails are compared with what is eaten.
"""

import copy
import math
from collections.abc import Callable
from functools import wraps
from typing import Any, NamedTuple, TypeVar

import msgspec

from .. import rails
from ..body import (
    BodyState,
    Diet,
    Forecast,
    Starts,
    Stretch,
    crossing,
    current_maintenance_kcal,
    forecast,
    walk,
)
from ..log import LogMaintenance
from ..numbers import Estimate
from ..phase import DAYS_PER_WEEK, FollowedPhase, FollowedWeek, PhaseKind, corrected_week, diet_of_week
from ..rails import (
    DeficitLimit,
    Logged,
    Purpose,
    RailAction,
    Refused,
    Scale,
    Subject,
    ToldWeek,
    first_broken,
)
from .reading import BodyNow

T = TypeVar("T")

STEP_KCAL = 10
# A difference from maintenance smaller than this is no deficit: it is within rounding.
NO_DEFICIT_KCAL = 25.0


class Stint(NamedTuple):
    """Days of one diet; ``end`` counts days from the review."""

    days: int
    end: int
    week: FollowedWeek


class IntakeLimits(NamedTuple):
    """What the rails allow for the days to come, as changes of the planned intake [kcal/d], and why.

    ``refusal`` is set where no deficit at all is allowed.
    """

    least: float
    most: float
    why: DeficitLimit
    refusal: Refused | None
    warnings: list[RailAction]


def _once(method: Callable[["RestOfPhase", float, int], list[T]]) -> Callable[["RestOfPhase", float, int], list[T]]:
    """Work out what follows from a change of intake over some days once, since a review asks for it again and again."""

    @wraps(method)
    def call(self: "RestOfPhase", change_kcal: float, days: int) -> list[T]:
        asked = method, change_kcal, days, self.share_followed
        found: list[T] | None = self._known.get(asked)
        if found is None:
            found = self._known[asked] = method(self, change_kcal, days)
        return found

    return call


class RestOfPhase:
    """The rest of a phase, for any change of its intake."""

    def __init__(self, phase: FollowedPhase, subject: Subject, now: BodyNow, ratio: float, day: int) -> None:
        """``subject``: the person as at the phase's start; ``day`` of the review; ``ratio``: logged over eaten."""
        self.phase, self.ratio, self.now = phase, ratio, now
        self._known: dict[tuple[Any, float, int, float], Any] = {}
        # Of what is told, the share that is logged: all of it, unless it is found otherwise.
        self.share_followed = 1.0
        self.apart: Estimate | None = None  # by how much more of the deficit is followed than by people in general
        self.days_gone = day - phase.start_day
        self.days_left = max(0, phase.end_day - day)
        # Of all that counts as one deficit.
        self.weeks_gone = phase.weeks_before + self.days_gone / DAYS_PER_WEEK
        self.start = Starts(now.body)
        self.model, self.state = self.start.expected
        # Settled maintenance: what adaptation takes off for the time being would hide part of a deficit.
        self.subject = subject._replace(
            weight_kg=float(now.body.weight_kg),
            fat_kg=float(now.body.fat_kg.mean),
            maintenance_kcal=ratio * float(now.body.maintenance_kcal.mean),
            water_kg=0.0,
            carried_kg=self._carried_kg(self.state),
            # What was gained and is taken for water may be tissue: its floors at rest stay.
            rested_lean_kg=subject.rested_lean_kg - max(0.0, now.water_off_kg),
        )
        # A deficit is against what is needed now where that is more, after days of eating more.
        now_kcal = ratio * float(current_maintenance_kcal(self.model, self.state))
        self.in_deficit = self.subject._replace(maintenance_kcal=max(self.subject.maintenance_kcal, now_kcal))
        self._as_told, self._learnt_kcal = subject, self.subject.maintenance_kcal
        # Grams are shared out for the mass that the plan was made for.
        self.fed = max(subject, self.subject, key=lambda body: body.weight_kg)
        self.protein_g, self.protein_actions = self._least_protein()

    def _least_protein(self) -> tuple[float, list[RailAction]]:
        """Protein under which no week of a deficit goes [g/d], and the report where the plan has less."""
        if not self.phase.kind.is_deficit:
            return 0.0, []
        ahead = self.phase.weeks[self.days_gone // DAYS_PER_WEEK :] or self.phase.weeks
        planned = min(week.protein_g for week in ahead)
        per_kg, actions = rails.protein_in_deficit(self.subject, planned / self.fed.protein_kg)
        return (math.ceil(per_kg * self.fed.protein_kg) if per_kg * self.fed.protein_kg > planned else 0.0), actions

    def followed_by(self, share: float) -> "RestOfPhase":
        """The same, were this share of what is told logged."""
        other = copy.copy(self)
        other.share_followed = share
        return other

    def suppose(self, maintenance: Estimate) -> None:
        """Forecast from this maintenance (logging scale) instead of the one that the log tells [kcal/d]."""
        self.share_followed, self._known = 1.0, {}
        physical = Estimate(maintenance.mean / self.ratio, maintenance.sd / self.ratio)
        self.now = self.now._replace(body=self.now.body._replace(maintenance_kcal=physical))
        self.start = Starts(self.now.body)
        self.model, self.state = self.start.expected
        self.subject = self.subject._replace(maintenance_kcal=maintenance.mean, carried_kg=self._carried_kg(self.state))

    def told_as(self, learnt: LogMaintenance, scale: Scale) -> "RestOfPhase":
        """The same body, its maintenance told as ``learnt`` on the logging scale: by so much less is logged of what is
        eaten, or more. The rails read what is eaten on that ``scale``, and need as the more of the two."""
        other = copy.copy(self)
        other.ratio = learnt.maintenance.mean / float(self.now.body.maintenance_kcal.mean)
        other.suppose(learnt.maintenance)
        need = max(other.subject.physical_kcal, learnt.physical.mean)
        other.subject = other.subject._replace(scale=scale, physical_kcal=need)
        return other

    @_once
    def told(self, change_kcal: float, days: int) -> list[ToldWeek]:
        """The days to come as the gate reads them."""
        found, before = [], self.in_deficit if self.phase.kind.is_deficit else self.subject
        for stint, (week, state) in zip(self.stints(change_kcal, days), self._walked(change_kcal, days), strict=True):
            after = self.subject_at(state)
            purpose = self._purpose(week, before)
            found.append(ToldWeek(week.intake_kcal, before, after, purpose, float(stint.days), week.protein_g))
            before = after
        return found

    def _purpose(self, week: FollowedWeek, before: Subject) -> Purpose:
        if self.phase.kind.is_deficit:
            return Purpose.BREAK if week.is_break else Purpose.DEFICIT
        if week.intake_kcal < before.maintenance_kcal - NO_DEFICIT_KCAL:
            return Purpose.RISING
        return Purpose.GAIN if self.phase.kind is PhaseKind.GAIN else Purpose.HOLD

    @property
    def held(self) -> Subject:
        """Who is held when the phase is over, whatever was supposed of their maintenance meanwhile."""
        return self.subject._replace(maintenance_kcal=max(self.subject.maintenance_kcal, self._learnt_kcal))

    @property
    def maintenance_kcal(self) -> float:
        """Settled maintenance of today's body, logging scale [kcal/d]."""
        return self.subject.maintenance_kcal

    def subject_at(self, state: BodyState) -> Subject:
        """What the rails read of a body on the way, with the maintenance it has then."""
        maintenance = self.ratio * float(current_maintenance_kcal(self.model, state))
        weight_kg, carried_kg = float(state.weight_kg), self._carried_kg(state)
        return self.subject.with_body(weight_kg, float(state.fat_kg), maintenance, carried_kg)

    def _carried_kg(self, state: BodyState) -> float:
        """What is carried beyond the usual: by what is eaten, and the water that the log found besides."""
        return float(state.carried_kg) + self.now.water_off_kg

    @_once
    def stints(self, change_kcal: float, days: int) -> list[Stint]:
        """The days to come as planned and changed, week by week; the last week's diet goes on beyond the end."""
        found: list[Stint] = []
        gone = 0
        while gone < days:
            day = self.days_gone + gone
            length = min(DAYS_PER_WEEK - day % DAYS_PER_WEEK, days - gone)
            gone += length
            found.append(Stint(length, gone, self._told(self.phase.week_of(day), change_kcal)))
        return found

    def _told(self, week: FollowedWeek, change_kcal: float) -> FollowedWeek:
        """A week as corrected. A break keeps to the floors of a hold; grams fit into the energy, protein first."""
        if week.is_break:
            told = msgspec.structs.replace(week, intake_kcal=rails.held_kcal(self.subject, week.intake_kcal))
        else:
            told = corrected_week(week, change_kcal)
        protein, carbohydrate = rails.fitted_grams(
            told.intake_kcal, self.fed.weight_kg, max(told.protein_g, self.protein_g), told.carbohydrate_g
        )
        return msgspec.structs.replace(told, protein_g=protein, carbohydrate_g=carbohydrate)

    def intakes(self, change_kcal: float, days: int) -> list[float]:
        """Intakes of the days to come by week, logging scale, breaks left out where there is anything else."""
        stints = self.stints(change_kcal, days)
        return [s.week.intake_kcal for s in stints if not s.week.is_break] or [s.week.intake_kcal for s in stints]

    @property
    def running_kcal(self) -> float:
        """What the phase tells from today on, as it runs, on its first day outside a break [kcal/d]; where more than
        the default deficit was planned, what that left of the maintenance there was then."""
        told = self.intakes(0.0, max(1, self.days_left))[0]
        return max(told, self.phase.maintenance.mean - rails.DEFAULT_DEFICIT)

    @property
    def own_step_kcal(self) -> float:
        """What the plan as it runs tells from today on, less what it told yesterday [kcal/d]; 0 around a break."""
        if not 0 < self.days_gone < self.phase.days:
            return 0.0
        before, now = (self.phase.week_of(day) for day in (self.days_gone - 1, self.days_gone))
        return 0.0 if before.is_break or now.is_break else now.intake_kcal - before.intake_kcal

    def end(self, change_kcal: float, days: int) -> BodyState:
        """The body after ``days``."""
        return self._walked(change_kcal, days)[-1][1]

    @_once
    def _walked(self, change_kcal: float, days: int) -> list[tuple[FollowedWeek, BodyState]]:
        """Each stint's week, and the body at its end."""
        found, state = [], self.state
        for stint in self.stints(change_kcal, days):
            state = walk(self.model, state, self._diet(stint), (float(stint.days),))[-1]
            found.append((stint.week, state))
        return found

    def _diet(self, stint: Stint) -> Diet:
        return diet_of_week(stint.week, self.fed.protein_kg, self.share_followed / self.ratio)

    def fat_change(self, change_kcal: float, days: int) -> float:
        """Change of fat from the phase's start to ``days`` from now [kg]."""
        return self.now.fat.mean + float(self.end(change_kcal, days).fat_kg - self.state.fat_kg)

    def tissue_ahead(self, change_kcal: float, days: int) -> float:
        """Change of tissue in the ``days`` to come [kg]."""
        return float(self.end(change_kcal, days).tissue_kg - self.state.tissue_kg)

    def gain_share(self, change_kcal: float) -> float:
        """Tissue that the days to come gain a week, of body mass, at its fastest (``_fastest_gain``)."""
        return DAYS_PER_WEEK * self._fastest_gain(change_kcal, self.days_left) / self.subject.weight_kg

    def _fastest_gain(self, change_kcal: float, days: int) -> float:
        """Tissue gained a day [kg], on the mean of the ``days`` to come or of those after the first, which settle."""
        walked, first = self._walked(change_kcal, days), self.stints(change_kcal, days)[0].days
        end, settled = walked[-1][1], walked[0][1]
        rate = float(end.tissue_kg - self.state.tissue_kg) / days
        if days - first < DAYS_PER_WEEK:
            return rate
        return max(rate, float(end.tissue_kg - settled.tissue_kg) / (days - first))

    def days_to_lose(self, fat_kg: float, change_kcal: float, most_days: int) -> int | None:
        """Days from now until this much fat is lost since the phase's start, if at most ``most_days``."""
        state = self.state
        wanted = state.fat_kg - (fat_kg + self.now.fat.mean)
        for stint in self.stints(change_kcal, most_days):
            path = walk(self.model, state, self._diet(stint), (1.0,) * stint.days)
            for i, then in enumerate(path):
                if then.fat_kg <= wanted:
                    return stint.end - stint.days + i + 1
            state = path[-1]
        return None

    def forecast(self, change_kcal: float, days: int) -> tuple[Forecast, list[Stint]]:
        """The path with its intervals, one point at the end of each stint."""
        stints = self.stints(change_kcal, days)
        return self.path_of([Stretch(self._diet(s), (float(s.days),)) for s in stints]), stints

    def path_of(self, plan: list[Stretch]) -> Forecast:
        """The path of these diets from today, carried mass as sure as the log is of how this person's answers."""
        body = self.now.body
        if self.phase.kind.is_deficit:
            body = body._replace(apart=self.apart, deficit_days=DAYS_PER_WEEK * self.weeks_gone)
        path = forecast(body, plan, start=self.start)
        return path._replace(carried_spread=self.now.carried.response.sd)

    def limits(self, days: int) -> IntakeLimits:
        """What the rails allow over the ``days`` to come."""
        return self._deficit_limits(days) if self.phase.kind.is_deficit else self._held_limits(days)

    def _held_limits(self, days: int) -> IntakeLimits:
        """Of a hold or a gain: floors and need, and the ceiling on the rate of gain."""
        intakes = self.intakes(0.0, days)
        lowest, highest = min(intakes), max(intakes)
        least = max(rails.held_kcal(now, 0.0) for now in (self.subject, self.subject_at(self.end(0.0, days))))
        why = DeficitLimit(rails.FLOOR, self.maintenance_kcal - least, rails.Why.LEAST_INTAKE)
        if self.subject.is_pregnant:
            return IntakeLimits(least - lowest, math.inf, why, None, [])
        limit = rails.GAIN_RATE_LIMIT[self.subject.training_status] * self.subject.weight_kg / DAYS_PER_WEEK
        at_maintenance = self.maintenance_kcal - highest
        top = max(at_maintenance, 0.0) + self.maintenance_kcal
        most = crossing(lambda kcal: self._fastest_gain(kcal, days) - limit, at_maintenance, top) - 2.0
        return IntakeLimits(least - lowest, most, why, None, [])

    def _deficit_limits(self, days: int) -> IntakeLimits:
        """Of a deficit: each day's limits for that day's body, whatever of them binds."""
        intakes = self.intakes(0.0, days)
        lowest, highest, first = min(intakes), max(intakes), intakes[0]
        most = self.maintenance_kcal - highest
        needed = self.in_deficit.maintenance_kcal
        try:
            # Loss as logged ends no deficit that runs: it raises its intake.
            warnings = rails.check_person(
                self.subject._replace(logged=Logged()), self._as_told._replace(logged=Logged())
            )
        except Refused as refused:
            why = DeficitLimit(refused.action.id, NO_DEFICIT_KCAL, rails.Why.THIS_PERSON)
            return IntakeLimits(self.maintenance_kcal - NO_DEFICIT_KCAL - lowest, most, why, refused, [])
        weeks = self.weeks_gone + days / DAYS_PER_WEEK
        found = rails.deficit_limits(self.in_deficit, weeks, fed=self.fed)
        if not self.subject.is_fat_measured:
            found.append(rails.MEASURE_LIMIT)

        def least(limit: DeficitLimit) -> float:
            """The change that a rule asks for: of the days at hand for today's body, and of every day for grams, which
            are a day's whatever the body. A rail on deficits asks for maintenance at most, whatever it leaves."""
            told = lowest if limit.rule == rails.PROTEIN else first
            asked = needed - max(0.0, limit.deficit_kcal) - told
            # The largest to begin with: one that runs keeps its size, whatever maintenance has turned out to be.
            return min(self.running_kcal - told, asked) if limit is rails.MEASURE_LIMIT else asked

        why = max(found, key=least)
        low = least(why)
        broken = self._breaks(low, days)
        if broken is not None:
            high = max(low, needed - lowest)
            while high - low > 1.0:
                middle = 0.5 * (low + high)
                now_broken = self._breaks(middle, days)
                if now_broken is not None:
                    low, broken = middle, now_broken
                else:
                    high = middle
            low, why = high, rails.path_limit(broken, needed - lowest - high)
        return IntakeLimits(low, most, why, None, warnings)

    def _breaks(self, change_kcal: float, days: int) -> str | None:
        """The rule that the days to come break with this change."""
        broken = first_broken(
            self.told(change_kcal, days), weeks_before=self.weeks_gone, running_kcal=self.running_kcal
        )
        return None if broken is None else broken.rule

    def restore_fat(self, fat_kg: float, days: int, low: float, high: float) -> float:
        """The change of intake, within limits, that has lost this much fat at the end [kcal/d]."""
        return crossing(lambda kcal: self.fat_change(kcal, days) + fat_kg, low, high)

    def restore_tissue(self, tissue_kg: float, days: int, low: float, high: float) -> float:
        """The change of intake, within limits, that changes tissue by this much in the days to come [kcal/d]."""
        return crossing(lambda kcal: self.tissue_ahead(kcal, days) - tissue_kg, low, high)


def down(change_kcal: float) -> int:
    """Rounded down to a step: a hair more fat is lost, or a hair less gained."""
    return int(change_kcal // STEP_KCAL) * STEP_KCAL


def up(change_kcal: float) -> int:
    """Rounded up to a step: no rail is undercut."""
    return -int(-change_kcal // STEP_KCAL) * STEP_KCAL
