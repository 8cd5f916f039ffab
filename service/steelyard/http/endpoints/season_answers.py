"""A planned season as the wire shows it."""

from typing import Any

from steelyard import answers
from steelyard.science.rails import Cleared
from steelyard.science.season import (
    NEVER,
    DrawnInterval,
    DrawnOutcome,
    Found,
    IntakeRun,
    Outcome,
    Policy,
    SeasonSums,
    UnkeptLimit,
)

from ..schemas import seasons as schema
from ..schemas.shared_fields import Interval
from . import mapping
from .mapping import FRACTION, KCAL, KG, amount, interval

# Counts over draws to a tenth.
_COUNT = 1


def season_start(start: answers.SeasonFrom) -> schema.SeasonStart:
    """What the season starts from."""
    return schema.SeasonStart(
        maintenance_kcal=amount(start.maintenance, KCAL),
        **mapping.log_scale(start.learnt),
        resting_kcal=amount(start.resting, KCAL),
        body_fat_fraction=amount(start.fat_fraction, FRACTION),
        band_lower_fat_fraction=round(start.band.lower, FRACTION),
        band_upper_fat_fraction=round(start.band.upper, FRACTION),
    )


def strategy_numbers(policy: Policy) -> schema.StrategyNumbers:
    """A policy as it was followed."""
    cuts = policy.has_cuts
    return schema.StrategyNumbers(
        surplus_kcal=round(policy.surplus_kcal, KCAL),
        cut_at_fat_fraction=round(policy.cut_at, FRACTION) if policy.cut_at < NEVER else None,
        cut_to_fat_fraction=round(policy.cut_to, FRACTION) if cuts else None,
        deficit_kcal=round(policy.deficit_kcal, KCAL) if cuts else None,
        longest_cut_weeks=int(policy.longest_cut_weeks) if cuts else None,
        maintenance_weeks=int(policy.maintenance_weeks) if cuts else None,
    )


def season_outcome(outcome: Outcome) -> schema.SeasonOutcome:
    """What a season comes to for the expected body."""
    return schema.SeasonOutcome(
        lean_gained_kg=round(float(outcome.lean_gained_kg), KG),
        fat_gained_kg=round(float(outcome.fat_gained_kg), KG),
        mean_fat_kg=round(float(outcome.mean_fat_kg), KG),
        peak_fat_fraction=round(float(outcome.peak_fat_fraction), FRACTION),
        final_fat_fraction=round(float(outcome.final_fat_fraction), FRACTION),
        weeks_above_band=int(outcome.weeks_above_band),
        days_dieting=7 * int(outcome.weeks_dieting),
        cuts=int(outcome.cuts),
    )


def drawn_outcome(drawn: DrawnOutcome) -> schema.OutcomeIntervals:
    """What a season comes to over the draws."""
    return schema.OutcomeIntervals(
        lean_gained_kg=_drawn(drawn.lean_gained_kg, KG),
        fat_gained_kg=_drawn(drawn.fat_gained_kg, KG),
        mean_fat_kg=_drawn(drawn.mean_fat_kg, KG),
        peak_fat_fraction=_drawn(drawn.peak_fat_fraction, FRACTION),
        final_fat_fraction=_drawn(drawn.final_fat_fraction, FRACTION),
        weeks_above_band=_drawn(drawn.weeks_above_band, _COUNT),
        days_dieting=_drawn(drawn.days_dieting, _COUNT),
        cuts=_drawn(drawn.cuts, _COUNT),
    )


def _drawn(drawn: DrawnInterval, digits: int) -> Interval:
    return Interval(*[round(value, digits) for value in drawn])


def other_season(told: Cleared[Found]) -> schema.OtherSeason:
    """Another strategy of a search."""
    found = told.value
    return schema.OtherSeason(strategy=strategy_numbers(found.policy), expected=season_outcome(found.outcome))


def unkept_limits(unkept: list[UnkeptLimit]) -> list[schema.BrokenLimit]:
    """Limits that are not kept."""
    return [schema.BrokenLimit(limit=u.limit, allowed=u.allowed, found=round(u.found, FRACTION)) for u in unkept]


def season_plan(laid_out: answers.SeasonLaidOut, answer: answers.Answered[Any]) -> schema.SeasonPlan:
    """A season laid out, with the reasons of its answer and what the rails did."""
    weeks = [(phase.phase.kind.value, planned) for phase in laid_out.phases for planned in phase.weeks]
    ends = mapping.forecast_points([(planned.week.last_day, planned.at_end) for _, planned in weeks])
    return schema.SeasonPlan(
        strategy=strategy_numbers(laid_out.policy),
        totals=_totals(laid_out.sums),
        phases=[_phase(planned) for planned in laid_out.phases],
        weeks=[
            schema.SeasonWeek(
                week=planned.week.point,
                start_date=planned.week.start,
                kind=kind,
                intake_kcal=planned.week.intake.intake_kcal,
                energy_balance_kcal=round(planned.energy_balance_kcal, KCAL),
                at_end=at_end,
            )
            for (kind, planned), at_end in zip(weeks, ends, strict=True)
        ],
        guard_rails=mapping.guard_rails(answer.actions),
        reasons=mapping.notes(answer.reasons),
    )


def _totals(sums: SeasonSums) -> schema.SeasonTotals:
    above = sums.weeks_above_band
    return schema.SeasonTotals(
        lean_gained_kg=interval(sums.lean_gained_kg, KG),
        fat_gained_kg=interval(sums.fat_gained_kg, KG),
        mean_fat_kg=round(sums.mean_fat_kg, KG),
        peak_fat_fraction=amount(sums.peak_fat_fraction, FRACTION),
        peak_date=sums.peak_day,
        final_fat_fraction=amount(sums.final_fat_fraction, FRACTION),
        weeks_above_band=Interval(lower=above.lower, mean=above.expected, upper=above.upper),
        days_dieting=7 * sums.dieting_weeks,
        cuts=sums.cuts,
    )


def _phase(planned: answers.SeasonPhasePlanned) -> schema.SeasonPhase:
    phase = planned.phase
    return schema.SeasonPhase(
        kind=phase.kind.value,
        start_date=phase.weeks[0].start,
        end_date=phase.weeks[-1].last_day,
        weeks=len(phase.weeks),
        intakes=[_intake(run) for run in planned.runs],
        change=mapping.phase_totals(planned.change),
        ends_early_when=mapping.notes(phase.ends_early_when),
        guidance=mapping.notes(phase.guidance),
        reasons=mapping.notes(phase.reasons),
        cautions=mapping.notes(phase.cautions),
    )


def _intake(run: IntakeRun) -> schema.IntakeStep:
    intake = run.intake
    return schema.IntakeStep(
        start_date=run.start,
        weeks=run.weeks,
        intake_kcal=intake.intake_kcal,
        protein_g=intake.protein_g,
        carbohydrate_g=intake.carbohydrate_g,
        fat_g=intake.fat_g,
        fibre_g=intake.fibre_g,
    )
