"""A planned season as the wire shows it."""

from datetime import date, timedelta

from steelyard.science.body import Forecast, Spread
from steelyard.science.numbers import Estimate
from steelyard.science.phase import PlannedPhase
from steelyard.science.season import NEVER, BrokenLimit, Outcome, Policy, Season

from . import mapping
from .mapping import FRACTION, KCAL, KG, interval
from .points import forecast_point
from .schemas import seasons as schema
from .schemas.plans import PhaseTotals
from .schemas.quantities import Interval


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


def broken_limits(broken: list[BrokenLimit]) -> list[schema.BrokenLimit]:
    """Limits that are not kept."""
    return [schema.BrokenLimit(limit=b.limit, allowed=b.allowed, found=round(b.found, FRACTION)) for b in broken]


def season_plan(season: Season, start: date, band_upper: float) -> schema.SeasonPlan:
    """A season laid out."""
    path = season.forecast
    points = path.points()
    spreads = [at.spread for at in points]
    return schema.SeasonPlan(
        strategy=strategy_numbers(season.policy),
        totals=_totals(season, spreads, start, band_upper),
        phases=[_phase(phase, path) for phase in season.phases],
        weeks=[
            schema.SeasonWeek(
                week=week.point,
                start_date=week.start,
                kind=phase.kind,
                intake_kcal=week.intake.intake_kcal,
                energy_balance_kcal=round(float(path.energy_balance_kcal(week.point)), KCAL),
                at_end=forecast_point(week.last_day, points[week.point]),
            )
            for phase in season.phases
            for week in phase.weeks
        ],
        guard_rails=[mapping.guard_rail(action) for action in season.actions],
        reasons=mapping.notes(season.reasons),
    )


def _totals(season: Season, spreads: list[Spread], start: date, band_upper: float) -> schema.SeasonTotals:
    path = season.forecast
    last = len(path.states) - 1
    first, end = path.states[0], path.states[last]
    change = path.spread_of_change(0, last)
    fractions = [
        Estimate(float(state.fat_kg / state.weight_kg), float(spread.fat_fraction))
        for state, spread in zip(path.states, spreads, strict=True)
    ]
    peak = max(range(1, last + 1), key=lambda i: fractions[i].mean)
    after = fractions[1:]
    return schema.SeasonTotals(
        lean_gained_kg=interval(Estimate(float(end.lean_kg - first.lean_kg), float(change.lean_kg)), KG),
        fat_gained_kg=interval(Estimate(float(end.fat_kg - first.fat_kg), float(change.fat_kg)), KG),
        mean_fat_kg=round(sum(float(state.fat_kg) for state in path.states[1:]) / last, KG),
        peak_fat_fraction=interval(fractions[peak], FRACTION),
        peak_date=start + timedelta(days=7 * peak - 1),
        final_fat_fraction=interval(fractions[last], FRACTION),
        weeks_above_band=Interval(
            lower=sum(f.lower > band_upper for f in after),
            mean=sum(f.mean > band_upper for f in after),
            upper=sum(f.upper > band_upper for f in after),
        ),
        days_dieting=7 * season.dieting_weeks,
        cuts=season.cuts,
    )


def _phase(phase: PlannedPhase, path: Forecast) -> schema.SeasonPhase:
    last = phase.weeks[-1]
    first, end = path.states[phase.first], path.states[last.point]
    sd = path.spread_of_change(phase.first, last.point)
    return schema.SeasonPhase(
        kind=phase.kind,
        start_date=phase.weeks[0].start,
        end_date=last.start + timedelta(days=6),
        weeks=len(phase.weeks),
        intakes=_intakes(phase),
        change=PhaseTotals(
            weight_kg=interval(Estimate(float(end.weight_kg - first.weight_kg), float(sd.weight_kg)), KG),
            fat_kg=interval(Estimate(float(end.fat_kg - first.fat_kg), float(sd.fat_kg)), KG),
            lean_kg=interval(Estimate(float(end.lean_kg - first.lean_kg), float(sd.lean_kg)), KG),
            carried_kg=interval(Estimate(float(end.carried_kg - first.carried_kg), float(sd.carried_kg)), KG),
        ),
        ends_early_when=mapping.notes(phase.ends_early_when),
        guidance=mapping.notes(phase.guidance),
        reasons=mapping.notes(phase.reasons),
        cautions=mapping.notes(phase.cautions),
    )


def _intakes(phase: PlannedPhase) -> list[schema.IntakeStep]:
    runs: list[tuple[int, int]] = []
    for i, week in enumerate(phase.weeks):
        if runs and phase.weeks[runs[-1][0]].intake == week.intake:
            runs[-1] = (runs[-1][0], runs[-1][1] + 1)
        else:
            runs.append((i, 1))
    steps = []
    for i, weeks in runs:
        macros = phase.weeks[i].intake
        steps.append(
            schema.IntakeStep(
                start_date=phase.weeks[i].start,
                weeks=weeks,
                intake_kcal=macros.intake_kcal,
                protein_g=macros.protein_g,
                carbohydrate_g=macros.carbohydrate_g,
                fat_g=macros.fat_g,
                fibre_g=macros.fibre_g,
            )
        )
    return steps
