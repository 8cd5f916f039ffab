"""Questions about a season from the wire."""

from steelyard import answers
from steelyard.science.phase import Band, History
from steelyard.science.season import BlockedDays, Event

from ..schemas import seasons as schema
from . import states


def terms_asked(body: schema.SeasonQuestion) -> answers.SeasonTerms:
    """The horizon, the limits and the cuts already done."""
    limits, history = body.limits, body.cut_history
    band = limits.band
    return answers.SeasonTerms(
        start=body.start_date,
        weeks=body.horizon_weeks,
        limits=answers.LimitsAsked(
            band=None if band is None else Band(band.lower_fat_fraction, band.upper_fat_fraction),
            blocked=tuple(BlockedDays(blocked.first_date, blocked.last_date) for blocked in limits.blocked_dates),
            events=tuple(Event(event.date, event.most_fat_fraction) for event in limits.events),
            most_weeks_above_band=limits.most_weeks_above_band,
            most_weeks_dieting=limits.most_weeks_dieting,
            most_cuts=limits.most_cuts,
            cuts_a_year=limits.most_cuts_a_year,
            weeks_between_cuts=limits.least_weeks_between_cuts,
        ),
        history=states.phases_known(body.state).cuts_before(body.start_date)
        if history is None
        else History(history.cuts_last_12_months, history.weeks_since_last_cut),
    )


def strategy_asked(strategy: schema.Strategy) -> answers.StrategyAsked:
    """A ready-made strategy, or one in numbers."""
    if isinstance(strategy, schema.ReadyMadeStrategy):
        return strategy.name
    return answers.StrategyInNumbers(
        label=strategy.label,
        surplus_kcal=strategy.surplus_kcal,
        cut_at=strategy.cut_at_fat_fraction,
        cut_to=strategy.cut_to_fat_fraction,
        deficit_kcal=strategy.deficit_kcal,
        longest_cut_weeks=strategy.longest_cut_weeks,
        maintenance_weeks=strategy.maintenance_weeks,
    )
