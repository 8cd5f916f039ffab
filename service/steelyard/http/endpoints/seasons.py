"""`POST /v1/seasons`, its comparison and its optimum: chains of phases to a horizon of up to three years."""

from steelyard import answers

from ..languages import as_told, english
from ..operation.operation import computation
from ..schemas import seasons as schema
from . import mapping
from .examples.seasons import COMPARISON_EXAMPLES, OPTIMUM_EXAMPLES, SEASON_EXAMPLES
from .mapping import FRACTION, KG
from .season_answers import (
    drawn_outcome,
    other_season,
    season_outcome,
    season_plan,
    season_start,
    strategy_numbers,
    unkept_limits,
)
from .season_requests import strategy_asked, terms_asked


@computation(
    "/v1/seasons",
    operation_id="plan_season",
    tag="seasons",
    summary="Plan a season under one strategy",
    request_examples=SEASON_EXAMPLES,
    in_thread=True,
)
def plan_season(body: schema.SeasonRequest) -> schema.SeasonResponse:
    """Chain gains, cuts and maintenance from today to a horizon of 12 to 156 weeks, as one strategy says.

    Each week the body is looked at: a gain runs until body fat reaches the strategy's ceiling, a cut starts where the
    calendar and every guard rail allow one, and maintenance follows it. Weekly values carry 80 % intervals for
    keeping the phases and setting intakes anew from the log. Limits that the strategy does not keep are listed in
    `broken_limits`, with `feasible` false; the plan is then the nearest it gets. A strategy with cuts needs screening
    answers and a body-fat reading, and somebody for whom no deficit is safe gets a 422 whose type names the rule: a
    season without cuts remains possible, but not under 18 nor with an eating disorder, since it keeps to a band of body
    fat. A gain that is never cut ends at the upper end of the band, and body fat that was never measured is held only
    where it is over that end all but surely.
    """
    answer = answers.plan_season(
        answers.SeasonAsked(mapping.told_in(body), terms_asked(body), strategy_asked(body.strategy))
    )
    found = answer.value
    return schema.SeasonResponse(
        **mapping.provenance("plan_season", body),
        feasible=not found.unkept,
        broken_limits=unkept_limits(found.unkept),
        start=season_start(found.start),
        protein_reference_kg=round(found.start.protein_reference_kg, KG),
        plan=season_plan(found.laid_out, answer),
        state=mapping.state_on(answer.state, body.state),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


@computation(
    "/v1/seasons/comparison",
    operation_id="compare_strategies",
    tag="seasons",
    summary="Compare strategies for a season side by side",
    request_examples=COMPARISON_EXAMPLES,
    in_thread=True,
)
def compare_strategies(body: schema.ComparisonRequest) -> schema.ComparisonResponse:
    """Follow several strategies on the same body, and on the same draws of everything uncertain.

    For each: what it comes to for the expected body, the median and 80 % interval over the draws, and for each pair
    how probable it is that one beats the other on lean tissue gained, fat carried and days dieting. The draws follow
    the strategy, not a written plan: cuts start when the body fat that is seen says so, and intakes are set anew from
    the log. The draws are a fixed table: the same request gives the same bytes. Strategies that a rule refuses for
    this person are listed under `refused`; where every one is refused, the answer is that refusal as a 422.
    """
    answer = answers.compare_strategies(
        answers.ComparisonAsked(
            mapping.told_in(body), terms_asked(body), [strategy_asked(strategy) for strategy in body.strategies]
        )
    )
    found = answer.value
    return schema.ComparisonResponse(
        **mapping.provenance("compare_strategies", body),
        start=season_start(found.start),
        strategies=[_compared(strategy) for strategy in found.followed],
        refused=[_refused(strategy) for strategy in found.refused],
        chances=[_chance(pair) for pair in found.chances],
        draws=found.draws,
        state=mapping.state_on(answer.state, body.state),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _compared(one: answers.StrategyFollowed) -> schema.ComparedStrategy:
    season = one.season
    return schema.ComparedStrategy(
        label=one.label,
        strategy=strategy_numbers(season.policy),
        feasible=not season.unkept,
        broken_limits=unkept_limits(season.unkept),
        expected=season_outcome(season.outcome),
        intervals=drawn_outcome(one.drawn),
        guard_rails=mapping.guard_rails(season.actions),
        reasons=mapping.notes(season.why),
    )


def _refused(one: answers.StrategyShut) -> schema.RefusedStrategy:
    said = as_told(one.action.message)
    return schema.RefusedStrategy(
        label=one.label, rule=one.action.id, code=said.code, text=english(said), params=said.params
    )


def _chance(pair: answers.PairChance) -> schema.BeatChance:
    return schema.BeatChance(
        label=pair.label,
        over=pair.over,
        more_lean=round(pair.chance.more_lean, FRACTION),
        more_lean_is_clear=pair.chance.is_clear,
        less_fat=round(pair.chance.less_fat, FRACTION),
        fewer_days_dieting=round(pair.chance.fewer_days_dieting, FRACTION),
    )


@computation(
    "/v1/seasons/optimum",
    operation_id="optimise_season",
    tag="seasons",
    summary="Find the season that gains most lean tissue inside the limits",
    request_examples=OPTIMUM_EXAMPLES,
    in_thread=True,
)
def optimise_season(body: schema.OptimumRequest) -> schema.OptimumResponse:
    """Search thousands of strategies for the most lean tissue at the horizon, inside limits and guard rails.

    Surplus, the body fat at which to cut, how far, how hard and how long are crossed in a grid and refined; the
    ready-made strategies are searched as well, so that the optimum never falls short of one that keeps the limits.
    `trade_off` shows how much lean tissue each week above the band buys. Without a limit on weeks above the band, at
    most a quarter more than the fewest possible are allowed. Where that is the whole season, since it starts far above
    the band, body fat must fall by at least four fifths of what it could: `allowed_final_fat_fraction` tells to where.
    Where a rule forbids cuts for this person, only seasons without one are searched and the rule is listed under
    `guard_rails`. A search larger than `strategies_searched` x `horizon_weeks` = 1,000,000 is refused with a 422.
    """
    answer = answers.optimise_season(
        answers.OptimumAsked(mapping.told_in(body), terms_asked(body), body.strategies_searched, body.caution)
    )
    found = answer.value
    final = found.allowed.final_fat
    return schema.OptimumResponse(
        **mapping.provenance("optimise_season", body),
        feasible=found.is_feasible,
        broken_limits=unkept_limits(found.unkept),
        start=season_start(found.start),
        protein_reference_kg=round(found.start.protein_reference_kg, KG),
        plan=season_plan(found.laid_out, answer),
        lean_sd_kg=None if found.lean_sd_kg is None else round(found.lean_sd_kg, KG),
        allowed_weeks_above_band=found.allowed.weeks_above,
        allowed_final_fat_fraction=None if final is None else round(final, FRACTION),
        runner_up=None if found.runner_up is None else other_season(found.runner_up),
        trade_off=[other_season(one) for one in found.trade_off],
        searched=schema.SearchSize(
            strategies=found.searched,
            within_limits=found.within_limits,
            strategy_weeks=found.searched * body.horizon_weeks,
        ),
        state=mapping.state_on(answer.state, body.state),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )
