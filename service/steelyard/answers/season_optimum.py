"""Which season gains most lean tissue inside the limits?"""

from typing import NamedTuple

from steelyard.science.member import Told
from steelyard.science.rails import Cleared, may_hear_of_leanness
from steelyard.science.register import OutOfDomain, say
from steelyard.science.season import (
    ABOVE_ALLOWANCE,
    MOST_POLICY_WEEKS,
    Allowance,
    Found,
    ReadyMade,
    UnkeptLimit,
    clear_found,
    live_season,
    search,
    unkept_limits,
)

from .answered import Answered, answering
from .member import counted_on
from .season import SeasonLaidOut, lay_out, reviewed_cautions
from .season_terms import SeasonFrom, SeasonTerms, check_room, season_from, understand
from .state import known_day, state_of


class OptimumAsked(NamedTuple):
    """Whose season, on which terms; about how many strategies to search, and how surely.

    ``caution``: standard deviations of lean gained that are taken off its mean.
    """

    told: Told
    terms: SeasonTerms
    strategies_searched: int
    caution: float = 0.0


class SeasonOptimum(NamedTuple):
    """The best season and another unlike it, the trade-off, and how much was searched.

    ``unkept`` of the nearest where none is feasible. ``lean_sd_kg`` where ``caution`` asked for it.
    """

    start: SeasonFrom
    is_feasible: bool
    unkept: list[UnkeptLimit]
    laid_out: SeasonLaidOut
    lean_sd_kg: float | None
    allowed: Allowance
    runner_up: Cleared[Found] | None
    trade_off: list[Cleared[Found]]
    searched: int
    within_limits: int


@answering
def optimise_season(asked: OptimumAsked) -> Answered[SeasonOptimum]:
    """Search the best season. Raises ``OutOfDomain`` for a search that would not end in time, and ``Contradiction``."""
    terms = asked.terms
    if asked.strategies_searched * terms.weeks > MOST_POLICY_WEEKS:
        most, wanted = MOST_POLICY_WEEKS // terms.weeks, asked.strategies_searched
        detail = f"For {terms.weeks} weeks search at most {most} strategies; {wanted} would take too long."
        raise OutOfDomain("SEARCH_TOO_LARGE", "strategies_searched", detail)
    known = understand(asked.told, terms)
    refusal = known.cutting.refusal
    if refusal is None and terms.limits.most_cuts != 0:
        check_room(known, terms)
    ready = [known.ready_made(name) for name in ReadyMade]
    result = search(
        known,
        policies=asked.strategies_searched,
        starts=tuple(policy for policy in ready if refusal is None or not policy.has_cuts),
        caution=asked.caution,
    )
    season = live_season(known, result.best.policy, terms.start)
    allowed, told = result.allowed, known.member.told
    if not may_hear_of_leanness(told.person.age_years, told.screening):
        allowed = allowed._replace(final_fat=None)  # where body fat is to fall to
    limits = known.limits._replace(most_weeks_above_band=allowed.weeks_above, most_final_fat=allowed.final_fat)
    is_back_late = allowed.final_fat is not None and season.outcome.cuts > 0
    late = [say("OPTIMUM_LATE_IN_BAND", percent=100 / ABOVE_ALLOWANCE)] if is_back_late else []
    return Answered(
        SeasonOptimum(
            start=season_from(known),
            is_feasible=result.is_feasible,
            unkept=unkept_limits(result.best.outcome, limits),
            laid_out=lay_out(season, known),
            lean_sd_kg=result.best.lean_sd_kg,
            allowed=allowed,
            runner_up=None if result.runner_up is None else clear_found(known, result.runner_up),
            trade_off=[one for one in (clear_found(known, found) for found in result.curve) if one is not None],
            searched=result.policies,
            within_limits=result.kept,
        ),
        reasons=[*season.reasons, *late, say("OPTIMUM_BESIDE_DECISION"), *counted_on(known.member)],
        cautions=reviewed_cautions(known, terms.start),
        actions=season.actions if refusal is None else [*refusal.actions, *season.actions],
        state=state_of(known.member, known_day(known.member, terms.start)),
    )  # fmt: skip
