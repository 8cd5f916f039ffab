"""The rest of a phase from the present state: where an intake leads, what the rails allow, what restores the target.

Intakes and corrections are on the member's logging scale; the body lives on the physical one (logged over the
logging ratio). Rails are tested on both, and the stricter wins.
"""

from typing import NamedTuple

import msgspec

from .. import rails
from ..body import BodyState, Diet, Forecast, Stretch, crossing, forecast, start_body, walk
from ..phase import DAYS_PER_WEEK, FollowedPhase, FollowedWeek, diet_of_week
from ..rails import CARBOHYDRATE_KCAL_PER_G, PROTEIN_KCAL_PER_G, DeficitLimit, RailAction, Refused, Subject
from .reading import BodyNow

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


def corrected_week(week: FollowedWeek, change_kcal: float) -> FollowedWeek:
    """A week with another energy. Less is taken from carbohydrate; more is shared as the plan shares it.

    So protein stays, and dietary fat never falls: its floors hold where they held in the plan.
    """
    if change_kcal == 0.0 or week.carbohydrate_g is None:
        return msgspec.structs.replace(week, intake_kcal=week.intake_kcal + change_kcal)
    change = change_kcal / CARBOHYDRATE_KCAL_PER_G
    if change_kcal > 0.0:
        energy = CARBOHYDRATE_KCAL_PER_G * week.carbohydrate_g
        change *= min(1.0, energy / max(1.0, week.intake_kcal - PROTEIN_KCAL_PER_G * week.protein_g))
    grams = max(0.0, 5.0 * round((week.carbohydrate_g + change) / 5.0))
    return msgspec.structs.replace(week, intake_kcal=week.intake_kcal + change_kcal, carbohydrate_g=grams)


class RestOfPhase:
    """The rest of a phase, for any change of its intake."""

    def __init__(self, phase: FollowedPhase, subject: Subject, now: BodyNow, ratio: float, day: int) -> None:
        """``subject``: the person as at the phase's start; ``day`` of the review; ``ratio``: logged over eaten."""
        self.phase, self.ratio, self.now = phase, ratio, now
        self.days_gone = day - phase.start_day
        self.days_left = max(0, phase.end_day - day)
        self.model, self.state = start_body(now.body)
        # Settled maintenance: what adaptation takes off for the time being would hide part of a deficit.
        self.physical = subject._replace(
            weight_kg=float(now.body.weight_kg),
            fat_kg=float(now.body.fat_kg.mean),
            maintenance_kcal=float(now.body.maintenance_kcal.mean),
        )
        self.logged = self.physical._replace(maintenance_kcal=ratio * self.physical.maintenance_kcal)

    @property
    def maintenance_kcal(self) -> float:
        """Settled maintenance of today's body, logging scale [kcal/d]."""
        return self.logged.maintenance_kcal

    def stints(self, change_kcal: float, days: int) -> list[Stint]:
        """The days to come as planned and changed, week by week; the last week's diet goes on beyond the end."""
        found: list[Stint] = []
        gone = 0
        while gone < days:
            day = self.days_gone + gone
            length = min(DAYS_PER_WEEK - day % DAYS_PER_WEEK, days - gone)
            gone += length
            week = self.phase.week_of(day)
            found.append(Stint(length, gone, week if week.is_break else corrected_week(week, change_kcal)))
        return found

    def intakes(self, change_kcal: float, days: int) -> list[float]:
        """Intakes of the days to come by week, logging scale, breaks left out where there is anything else."""
        stints = self.stints(change_kcal, days)
        return [s.week.intake_kcal for s in stints if not s.week.is_break] or [s.week.intake_kcal for s in stints]

    def end(self, change_kcal: float, days: int) -> BodyState:
        """The body after ``days``."""
        state = self.state
        for stint in self.stints(change_kcal, days):
            state = walk(self.model, state, self._diet(stint), (float(stint.days),))[-1]
        return state

    def _diet(self, stint: Stint) -> Diet:
        return diet_of_week(stint.week, self.physical.weight_kg, 1.0 / self.ratio)

    def fat_change(self, change_kcal: float, days: int) -> float:
        """Change of fat from the phase's start to ``days`` from now [kg]."""
        return self.now.fat.mean + float(self.end(change_kcal, days).fat_kg - self.state.fat_kg)

    def tissue_ahead(self, change_kcal: float, days: int) -> float:
        """Change of tissue in the ``days`` to come [kg]."""
        return float(self.end(change_kcal, days).tissue_kg - self.state.tissue_kg)

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
        return forecast(self.now.body, [Stretch(self._diet(s), (float(s.days),)) for s in stints]), stints

    def limits(self, days: int) -> IntakeLimits:
        """What the rails allow over the ``days`` to come."""
        intakes = self.intakes(0.0, days)
        lowest, highest = min(intakes), max(intakes)
        warnings: list[RailAction] = []
        refusal: Refused | None = None
        try:
            warnings = rails.check_person(self.physical)
        except Refused as refused:
            refusal = refused
            why = DeficitLimit(refused.action.id, NO_DEFICIT_KCAL, "no deficit for this person")
            least = self.maintenance_kcal - NO_DEFICIT_KCAL
        else:
            weeks = (self.days_gone + days) / DAYS_PER_WEEK
            as_logged = rails.deficit_limits(self.logged, weeks)[0]
            as_eaten = rails.deficit_limits(self.physical, weeks)[0]
            # A rail on deficits asks for maintenance at most, whatever it leaves.
            least_logged = self.logged.maintenance_kcal - max(0.0, as_logged.deficit_kcal)
            least_eaten = self.ratio * (self.physical.maintenance_kcal - max(0.0, as_eaten.deficit_kcal))
            least, why = max((least_logged, as_logged), (least_eaten, as_eaten), key=lambda pair: pair[0])
        low = least - lowest
        most = self._most(days, self.maintenance_kcal - highest)
        broken = self._breaks(low, days)
        if broken in (rails.LOSS, rails.BODY_FAT):
            high = max(low, self.maintenance_kcal - lowest)
            while high - low > 1.0:
                middle = 0.5 * (low + high)
                now_broken = self._breaks(middle, days)
                if now_broken in (rails.LOSS, rails.BODY_FAT):
                    low, broken = middle, now_broken
                else:
                    high = middle
            words = "end body fat" if broken == rails.BODY_FAT else f"tissue loss of {rails.LOSS_LIMIT:.0%} a week"
            low, why = high, DeficitLimit(broken, self.maintenance_kcal - lowest - high, words)
        return IntakeLimits(low, most, why, refusal, warnings)

    def _breaks(self, change_kcal: float, days: int) -> str | None:
        end = self.end(change_kcal, days)
        share = float(end.tissue_kg - self.state.tissue_kg) / (days / DAYS_PER_WEEK) / self.physical.weight_kg
        is_deficit = min(self.intakes(change_kcal, days)) < self.maintenance_kcal - NO_DEFICIT_KCAL
        return rails.breaks_change(self.physical, share, float(end.fat_kg / end.weight_kg), is_deficit=is_deficit)

    def _most(self, days: int, at_maintenance: float) -> float:
        if self.phase.kind.is_deficit:
            return at_maintenance
        limit = rails.GAIN_RATE_LIMIT[self.physical.training_status] * self.physical.weight_kg * days / DAYS_PER_WEEK
        highest = max(at_maintenance, 0.0) + self.maintenance_kcal
        return crossing(lambda kcal: self.tissue_ahead(kcal, days) - limit, at_maintenance, highest) - 2.0

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
