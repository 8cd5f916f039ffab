"""Which of several strategies for a season does what better, and how probably?"""

from typing import NamedTuple

from steelyard.science.member import Told
from steelyard.science.rails import RailAction, Refused
from steelyard.science.register import Contradiction
from steelyard.science.season import (
    DRAWS,
    Chance,
    DrawnOutcome,
    Outcome,
    ReadyMade,
    Season,
    chance_to_beat,
    drawn_lives,
    drawn_outcome,
    live_draws,
    live_season,
    stack,
)

from .answered import Answered, answering
from .member import beside_log, counted_on, provisional
from .season_terms import SeasonFrom, SeasonTerms, StrategyAsked, check_room, policy_of, season_from, understand
from .state import known_day, state_of


class ComparisonAsked(NamedTuple):
    """Whose season, on which terms, under which strategies."""

    told: Told
    terms: SeasonTerms
    strategies: list[StrategyAsked]


class StrategyFollowed(NamedTuple):
    """A strategy followed by the expected body, whose season has passed the gate, and over the draws."""

    label: str
    season: Season
    drawn: DrawnOutcome


class StrategyShut(NamedTuple):
    """A strategy that a rule refuses this member."""

    label: str
    action: RailAction


class PairChance(NamedTuple):
    """How probably strategy ``label`` beats ``over``."""

    label: str
    over: str
    chance: Chance


class SeasonsCompared(NamedTuple):
    """Strategies on the same body and the same draws, every ordered pair of them, and those that are refused."""

    start: SeasonFrom
    followed: list[StrategyFollowed]
    refused: list[StrategyShut]
    chances: list[PairChance]
    draws: int


@answering
def compare_strategies(asked: ComparisonAsked) -> Answered[SeasonsCompared]:
    """Follow each strategy. Raises ``Contradiction``, ``OutOfDomain``, and ``Refused`` where each is refused."""
    known = understand(asked.told, asked.terms)
    labels = _labels(asked.strategies)
    policies = [policy_of(strategy, known, f"strategies[{i}]") for i, strategy in enumerate(asked.strategies)]
    if any(policy.has_cuts for policy in policies):
        check_room(known, asked.terms)
    kept: list[tuple[str, Season]] = []
    shut: list[tuple[str, Refused]] = []
    for label, policy in zip(labels, policies, strict=True):
        try:
            kept.append((label, live_season(known, policy, asked.terms.start, sources=frozenset())))
        except Refused as refusal:
            shut.append((label, refusal))
    if not kept:
        raise shut[0][1]
    outcome = live_draws(
        drawn_lives(known.member.body),
        stack([season.policy for _, season in kept]),
        known.person(),
        known.calendar,
        known.limits.band.upper,
    )
    followed = [StrategyFollowed(label, season, drawn_outcome(outcome, k)) for k, (label, season) in enumerate(kept)]
    refused = [StrategyShut(label, refusal.action) for label, refusal in shut]
    return Answered(
        SeasonsCompared(season_from(known), followed, refused, _chances([label for label, _ in kept], outcome), DRAWS),
        reasons=counted_on(known.member),
        cautions=[
            *known.member.cautions,
            *beside_log(known.member, asked.terms.start),
            *provisional(known.member, asked.terms.start),
        ],
        state=state_of(known.member, known_day(known.member, asked.terms.start)),
    )


def _labels(strategies: list[StrategyAsked]) -> list[str]:
    """The names under which strategies are listed. Raises ``Contradiction`` for one that comes twice."""
    labels: list[str] = []
    for i, strategy in enumerate(strategies):
        name, label = ("name", strategy.value) if isinstance(strategy, ReadyMade) else ("label", strategy.label)
        if label in labels:
            detail = f"Two strategies are called {label}: give each its own label."
            raise Contradiction("STRATEGY_TWICE", f"strategies[{i}].{name}", detail)
        labels.append(label)
    return labels


def _chances(labels: list[str], outcome: Outcome) -> list[PairChance]:
    return [
        PairChance(label, other, chance_to_beat(outcome, i, j))
        for i, label in enumerate(labels)
        for j, other in enumerate(labels)
        if i != j
    ]
