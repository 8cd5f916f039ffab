"""Where does one strategy lead through a season of phases?"""

from datetime import date
from typing import NamedTuple

from steelyard.science.body import PathChange, PathPoint
from steelyard.science.member import Told
from steelyard.science.phase import GAIN_RESET_WEEKS, PlannedPhase, PlannedWeek
from steelyard.science.register import Message, say
from steelyard.science.season import (
    Asked,
    IntakeRun,
    Policy,
    Season,
    SeasonSums,
    UnkeptLimit,
    intake_runs,
    live_season,
    season_sums,
)

from .answered import Answered, answering
from .member import beside_log, counted_on, provisional, what_grows
from .season_terms import SeasonFrom, SeasonTerms, StrategyAsked, check_room, policy_of, season_from, understand
from .state import known_day, state_of


class SeasonAsked(NamedTuple):
    """Whose season, on which terms, under which strategy."""

    told: Told
    terms: SeasonTerms
    strategy: StrategyAsked


class SeasonWeekPlanned(NamedTuple):
    """A week: its intake, the energy stored a day [kcal], the body at its end."""

    week: PlannedWeek
    energy_balance_kcal: float
    at_end: PathPoint


class SeasonPhasePlanned(NamedTuple):
    """A phase of a season: what is eaten in it, in order, and what it changes."""

    phase: PlannedPhase
    weeks: list[SeasonWeekPlanned]
    runs: list[IntakeRun]
    change: PathChange


class SeasonLaidOut(NamedTuple):
    """A season, whose phases have passed the gate: what it comes to, and the body at each week's end."""

    season: Season
    sums: SeasonSums
    points: list[PathPoint]

    @property
    def policy(self) -> Policy:
        """The strategy that was followed."""
        return self.season.policy

    @property
    def phases(self) -> list[SeasonPhasePlanned]:
        """Its phases, week by week."""
        path, points = self.season.forecast, self.points
        return [
            SeasonPhasePlanned(
                phase=phase,
                weeks=[
                    SeasonWeekPlanned(week, float(path.energy_balance_kcal(week.point)), points[week.point])
                    for week in phase.weeks
                ],
                runs=intake_runs(phase),
                change=path.change(phase.first, phase.weeks[-1].point),
            )
            for phase in self.season.phases
        ]


class SeasonPlanned(NamedTuple):
    """A season under one strategy; feasible where it keeps every limit."""

    start: SeasonFrom
    laid_out: SeasonLaidOut

    @property
    def unkept(self) -> list[UnkeptLimit]:
        """The limits that it does not keep."""
        return self.laid_out.season.unkept


@answering
def plan_season(asked: SeasonAsked) -> Answered[SeasonPlanned]:
    """Plan a season. Raises ``Contradiction``, ``OutOfDomain``, and ``Refused`` where a rule forbids its cuts."""
    known = understand(asked.told, asked.terms)
    policy = policy_of(asked.strategy, known, "strategy")
    if policy.has_cuts:
        check_room(known, asked.terms)
    season = live_season(known, policy, asked.terms.start)
    return Answered(
        SeasonPlanned(season_from(known), lay_out(season, known)),
        reasons=[*season.reasons, say("SEASON_BESIDE_DECISION"), *counted_on(known.member)],
        cautions=reviewed_cautions(known, asked.terms.start),
        actions=season.actions,
        state=state_of(known.member, known_day(known.member, asked.terms.start)),
    )


def lay_out(season: Season, known: Asked) -> SeasonLaidOut:
    """A season with what it comes to."""
    points = season.forecast.points()
    return SeasonLaidOut(season, season_sums(season, points, known.limits.band.upper), points)


def reviewed_cautions(known: Asked, start: date) -> list[Message]:
    """The cautions of a season from a day on, whose intervals rest on setting the intake anew."""
    reviewed = say("SEASON_REVIEWED", weeks=GAIN_RESET_WEEKS)
    return [
        *known.member.cautions,
        *beside_log(known.member, start),
        *what_grows(known.member),
        *provisional(known.member, start),
        reviewed,
    ]
