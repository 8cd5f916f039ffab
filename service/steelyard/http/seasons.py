"""`POST /v1/seasons`, its comparison and its optimum: chains of phases to a horizon of up to three years."""

from typing import Any

from steelyard.science.measures import general_cautions
from steelyard.science.phase import GAIN_RESET_WEEKS
from steelyard.science.rails import Refused
from steelyard.science.register import say
from steelyard.science.season import (
    DRAWS,
    MOST_POLICY_WEEKS,
    SEASON_METHOD_IDS,
    Found,
    ReadyMade,
    broken_limits,
    chance_to_beat,
    drawn_lives,
    live_draws,
    plan_season,
    search,
    stack,
)

from . import mapping, season_answers
from .formats import SEASON_FORMATS
from .mapping import FRACTION, KG
from .operations import computation
from .pictures import COMPARISON_PICTURES, SEASON_PICTURES
from .schemas import seasons as schema
from .schemas.explanation import Note
from .schemas.quantities import Interval
from .season_examples import COMPARISON_EXAMPLES, OPTIMUM_EXAMPLES, SEASON_EXAMPLES
from .season_requests import (
    Situation,
    check_room,
    check_search,
    contradiction,
    label_of,
    policy_of,
    season_start,
    situation,
)


@computation(
    "/v1/seasons",
    operation_id="plan_season",
    tag="seasons",
    summary="Plan a season under one strategy",
    request_examples=SEASON_EXAMPLES,
    in_thread=True,
    formats={**SEASON_FORMATS, **SEASON_PICTURES},
)
def plan_one_season(body: schema.SeasonRequest) -> schema.SeasonResponse:
    """Chain gains, cuts and maintenance from today to a horizon of 12 to 156 weeks, as one strategy says.

    Each week the body is looked at: a gain runs until body fat reaches the strategy's ceiling, a cut starts where the
    calendar and every guard rail allow one, and maintenance follows it. Weekly values carry 80 % intervals for
    keeping the phases and setting intakes anew from the log. Limits that the strategy does not keep are listed in
    `broken_limits`, with `feasible` false; the plan is then the nearest it gets. A strategy with cuts needs screening
    answers and a body-fat reading, and somebody for whom no deficit is safe gets a 422 whose type names the rule: a
    season without cuts remains possible.

    `Accept` chooses among JSON, a calendar (`text/calendar`), a weekly table (`text/csv`), a summary to paste into a
    message (`text/markdown`), and a picture (`image/svg+xml`, `image/png`, or its Vega-Lite specification).
    """
    known = situation(body)
    policy = policy_of(body.strategy, known, "/strategy")
    if policy.has_cuts:
        check_room(known, body)
    season = plan_season(known.asked, policy, body.start_date)
    return schema.SeasonResponse(
        **mapping.provenance("plan_season", body),
        feasible=not season.broken,
        broken_limits=season_answers.broken_limits(season.broken),
        start=season_start(known),
        plan=season_answers.season_plan(season, body.start_date, known.asked.limits.band.upper),
        cautions=mapping.notes(
            [*general_cautions(known.person, known.assessed), say("SEASON_REVIEWED", weeks=GAIN_RESET_WEEKS)]
        ),
        methods=_methods(known),
    )


@computation(
    "/v1/seasons/comparison",
    operation_id="compare_strategies",
    tag="seasons",
    summary="Compare strategies for a season side by side",
    request_examples=COMPARISON_EXAMPLES,
    in_thread=True,
    formats=COMPARISON_PICTURES,
)
def compare_strategies(body: schema.ComparisonRequest) -> schema.ComparisonResponse:
    """Follow several strategies on the same body, and on the same draws of everything uncertain.

    For each: what it comes to for the expected body, the median and 80 % interval over the draws, and for each pair
    how probable it is that one beats the other on lean tissue gained, fat carried and days dieting. The draws follow
    the strategy, not a written plan: cuts start when the body fat that is seen says so, and intakes are set anew from
    the log. The draws are a fixed table: the same request gives the same bytes. Strategies that a rule refuses for
    this person are listed under `refused`; where every one is refused, the answer is that refusal as a 422.

    `Accept` chooses among JSON and a picture (`image/svg+xml`, `image/png`, or its Vega-Lite specification).
    """
    known = situation(body)
    labels = [label_of(s) for s in body.strategies]
    for i, label in enumerate(labels):
        if label in labels[:i]:
            field = "name" if isinstance(body.strategies[i], schema.ReadyMadeStrategy) else "label"
            detail = f"Two strategies are called {label}: give each its own label."
            raise contradiction(f"#/strategies/{i}/{field}", "STRATEGY_TWICE", detail)
    policies = [policy_of(s, known, f"/strategies/{i}") for i, s in enumerate(body.strategies)]
    if any(policy.has_cuts for policy in policies):
        check_room(known, body)
    asked = known.asked
    refused, kept = [], []
    for label, policy in zip(labels, policies, strict=True):
        refusal = asked.cutting.refusal
        if policy.has_cuts and refusal is not None:
            rule, said = refusal.action.id, refusal.action.message
            refused.append(
                schema.RefusedStrategy(label=label, rule=rule, code=said.code, text=said.text, params=said.params)
            )
        else:
            kept.append((label, policy))
    if not kept:
        assert isinstance(asked.cutting.refusal, Refused)
        raise asked.cutting.refusal
    outcome = live_draws(
        drawn_lives(asked.body),
        stack([policy for _, policy in kept]),
        asked.person(),
        asked.calendar,
        asked.limits.band.upper,
    )
    compared = []
    for k, (label, policy) in enumerate(kept):
        season = plan_season(asked, policy, body.start_date, sources=frozenset())
        compared.append(
            schema.ComparedStrategy(
                label=label,
                strategy=season_answers.strategy_numbers(policy),
                feasible=not season.broken,
                broken_limits=season_answers.broken_limits(season.broken),
                expected=season_answers.season_outcome(season.outcome),
                intervals=_intervals(outcome, k),
                guard_rails=[mapping.guard_rail(action) for action in season.actions],
            )
        )
    chances = []
    for i, (label, _) in enumerate(kept):
        for j, (other, _) in enumerate(kept):
            if i != j:
                chance = chance_to_beat(outcome, i, j)
                chances.append(
                    schema.BeatChance(
                        label=label,
                        over=other,
                        more_lean=round(chance.more_lean, FRACTION),
                        less_fat=round(chance.less_fat, FRACTION),
                        fewer_days_dieting=round(chance.fewer_days_dieting, FRACTION),
                    )
                )
    return schema.ComparisonResponse(
        **mapping.provenance("compare_strategies", body),
        start=season_start(known),
        strategies=compared,
        refused=refused,
        chances=chances,
        draws=DRAWS,
        cautions=mapping.notes(general_cautions(known.person, known.assessed)),
        methods=_methods(known, "season_draws"),
    )


def _intervals(outcome: Any, k: int) -> schema.OutcomeIntervals:
    import numpy as np

    def over(values: Any, digits: int, times: int = 1) -> Interval:
        low, middle, high = np.percentile(times * values[k], [10, 50, 90])
        return Interval(
            lower=round(float(low), digits), mean=round(float(middle), digits), upper=round(float(high), digits)
        )

    return schema.OutcomeIntervals(
        lean_gained_kg=over(outcome.lean_gained_kg, KG),
        fat_gained_kg=over(outcome.fat_gained_kg, KG),
        mean_fat_kg=over(outcome.mean_fat_kg, KG),
        peak_fat_fraction=over(outcome.peak_fat_fraction, FRACTION),
        final_fat_fraction=over(outcome.final_fat_fraction, FRACTION),
        weeks_above_band=over(outcome.weeks_above_band, 1),
        days_dieting=over(outcome.weeks_dieting, 1, 7),
        cuts=over(outcome.cuts, 1),
    )


@computation(
    "/v1/seasons/optimum",
    operation_id="optimise_season",
    tag="seasons",
    summary="Find the season that gains most lean tissue inside the limits",
    request_examples=OPTIMUM_EXAMPLES,
    in_thread=True,
    formats={**SEASON_FORMATS, **SEASON_PICTURES},
)
def optimise_season(body: schema.OptimumRequest) -> schema.OptimumResponse:
    """Search thousands of strategies for the most lean tissue at the horizon, inside limits and guard rails.

    Surplus, the body fat at which to cut, how far, how hard and how long are crossed in a grid and refined; the
    ready-made strategies are searched as well, so that the optimum never falls short of one that keeps the limits.
    `trade_off` shows how much lean tissue each week above the band buys. Without a limit on weeks above the band, at
    most a quarter more than the fewest possible are allowed. Where a rule forbids cuts for this person, only seasons
    without one are searched and the rule is listed under `guard_rails`. A search larger than
    `strategies_searched` x `horizon_weeks` = 1,000,000 is refused with a 422.

    `Accept` chooses among JSON, a calendar (`text/calendar`), a weekly table (`text/csv`), a summary to paste into a
    message (`text/markdown`), and a picture (`image/svg+xml`, `image/png`, or its Vega-Lite specification).
    """
    check_search(body.strategies_searched, body.horizon_weeks, MOST_POLICY_WEEKS)
    known = situation(body)
    asked = known.asked
    refusal = asked.cutting.refusal
    if refusal is None and body.limits.most_cuts != 0:
        check_room(known, body)
    ready = [asked.ready_made(name) for name in ReadyMade]
    result = search(
        asked.body,
        asked.life,
        asked.person(),
        asked.calendar,
        asked.limits,
        asked.surplus_kcal(1.0),
        policies=body.strategies_searched,
        starts=tuple(policy for policy in ready if refusal is None or not policy.has_cuts),
        caution=body.caution,
    )
    season = plan_season(asked, result.best.policy, body.start_date)
    if refusal is not None:
        season = season._replace(actions=[refusal.action, *season.actions])
    broken = broken_limits(result.best.outcome, asked.limits._replace(most_weeks_above_band=result.allowed_weeks_above))
    runner_up = result.runner_up
    return schema.OptimumResponse(
        **mapping.provenance("optimise_season", body),
        feasible=result.is_feasible,
        broken_limits=season_answers.broken_limits(broken),
        start=season_start(known),
        plan=season_answers.season_plan(season, body.start_date, asked.limits.band.upper),
        lean_sd_kg=None if result.best.lean_sd_kg is None else round(result.best.lean_sd_kg, KG),
        allowed_weeks_above_band=result.allowed_weeks_above,
        runner_up=None if runner_up is None else _other(runner_up),
        trade_off=[_other(found) for found in result.curve],
        searched=schema.SearchSize(
            strategies=result.policies,
            within_limits=result.kept,
            strategy_weeks=result.policies * body.horizon_weeks,
        ),
        cautions=mapping.notes(
            [*general_cautions(known.person, known.assessed), say("SEASON_REVIEWED", weeks=GAIN_RESET_WEEKS)]
        ),
        methods=_methods(known, "season_optimum", "weeks_above_allowance"),
    )


def _other(found: Found) -> schema.OtherSeason:
    return schema.OtherSeason(
        strategy=season_answers.strategy_numbers(found.policy),
        expected=season_answers.season_outcome(found.outcome),
    )


def _cautions(known: Situation) -> list[Note]:
    reviewed = say("SEASON_REVIEWED", weeks=GAIN_RESET_WEEKS)
    return mapping.notes([*general_cautions(known.person, known.assessed), reviewed])


def _methods(known: Situation, *more: str) -> list[str]:
    return sorted({*known.assessed.resting.preferred, *SEASON_METHOD_IDS, *more})
