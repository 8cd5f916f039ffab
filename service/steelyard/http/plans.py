"""`POST /v1/plans`: the mini-cut and the return to a gain."""

from datetime import timedelta

from steelyard.core import mini_cut, phase_defaults
from steelyard.core.assessment import Assessment, assess, body_of, general_cautions
from steelyard.core.estimate import Estimate
from steelyard.core.forecast import ALL_SOURCES, Forecast, Spread, UncertaintySource
from steelyard.core.mini_cut import MiniCutAim, Plan, ReturnAim
from steelyard.core.person import Person
from steelyard.core.phases import PlannedPhase

from . import mapping
from .examples import PLAN_EXAMPLES
from .logs import check_dates, maintenance_for
from .mapping import FRACTION, KCAL, KG, interval
from .operations import computation
from .points import forecast_point
from .problems import CONTRADICTION, Unprocessable, fault
from .schemas.plans import (
    MiniCut,
    Nearest,
    Phase,
    PhaseTotals,
    PlanRequest,
    PlanResponse,
    PlanWeek,
    RuleOfThumb,
)


@computation(
    "/v1/plans",
    operation_id="plan_phases",
    tag="plans",
    summary="Plan a mini-cut and the return to a gain",
    request_examples=PLAN_EXAMPLES,
)
def plan_phases(body: PlanRequest) -> PlanResponse:
    """Plan a mini-cut, the maintenance after it and the return to a measured surplus.

    Give the fat to lose, the weeks, or both: the rest is solved inside every guard rail. Each week has its intake
    and macronutrients, and a forecast of scale weight, fat, lean tissue and carried mass with 80 % intervals.
    Where no safe plan does what was asked, `feasible` is false and `nearest` says what would. A person for whom
    no deficit is safe gets a 422 whose type names the rule. Screening answers are required: without them no
    deficit is planned.
    """
    check_dates(start_date=body.start_date)
    _check_phase(body.phase)
    person = mapping.person(body.profile)
    assessed = assess(person)
    maintenance = maintenance_for(body.maintenance, body.log, person, assessed)
    subject = mapping.subject(person, assessed, maintenance, body.screening)
    history, phase, after = body.cut_history, body.phase, body.return_to_gain
    plan = mini_cut.plan_mini_cut(
        subject,
        body_of(person, assessed, maintenance, body.current_intake_kcal),
        body.start_date,
        MiniCutAim(
            fat_loss_kg=phase.fat_loss_kg,
            weeks=phase.weeks,
            deficit_kcal=phase.deficit_kcal,
            protein_g_per_kg=phase.protein_g_per_kg,
            preference=phase.carbohydrate_preference,
            easing_in_weeks=phase.easing_in_weeks,
        ),
        ReturnAim(
            maintenance_weeks=after.maintenance_weeks,
            gain_weeks=after.gain_weeks,
            surplus_kcal=after.surplus_kcal,
            fat_ceiling=after.fat_ceiling_fraction,
        ),
        cuts_last_12_months=history.cuts_last_12_months if history else None,
        weeks_since_last_cut=history.weeks_since_last_cut if history else None,
        sources=ALL_SOURCES if body.uncertainty_sources is None else frozenset(body.uncertainty_sources),
    )
    return _response(body, person, assessed, maintenance, plan)


def _check_phase(phase: MiniCut) -> None:
    if phase.fat_loss_kg is not None and phase.weeks is not None and phase.deficit_kcal is not None:
        detail = "Fat and weeks settle the deficit: leave one of the three out."
        raise Unprocessable(CONTRADICTION, detail, [fault("#/phase/deficit_kcal", "PHASE_OVERDETERMINED", detail)])
    if phase.weeks is not None and phase.easing_in_weeks >= phase.weeks:
        detail = "The easing-in weeks are part of `weeks`: leave at least one week at the full deficit."
        raise Unprocessable(CONTRADICTION, detail, [fault("#/phase/easing_in_weeks", "EASING_FILLS_PHASE", detail)])


def _response(
    body: PlanRequest, person: Person, assessed: Assessment, maintenance: Estimate, plan: Plan
) -> PlanResponse:
    path = plan.forecast
    cautions = general_cautions(person, assessed)
    noise = UncertaintySource.DAILY_NOISE in (body.uncertainty_sources or ALL_SOURCES)
    spreads = [] if path is None else path.spreads()
    phases = [] if path is None else [_phase(phase, path, spreads, noise) for phase in plan.phases]
    dominant = None if path is None else path.dominant_source(plan.cut_weeks)
    nearest = plan.nearest
    return PlanResponse(
        **mapping.provenance("plan_phases", body),
        feasible=plan.is_feasible,
        nearest=None
        if nearest is None
        else Nearest(
            fat_loss_kg=_rounded(nearest.fat_loss_kg, 2),
            weeks=nearest.weeks,
            deficit_kcal=_rounded(nearest.deficit_kcal, KCAL),
        ),
        maintenance_kcal=interval(maintenance, KCAL),
        resting_kcal=interval(assessed.resting, KCAL),
        body_fat_fraction=interval(assessed.fat, FRACTION),
        deficit_kcal=_rounded(plan.deficit_kcal, KCAL),
        phases=phases,
        guard_rails=[mapping.guard_rail(action) for action in plan.actions],
        rule_of_thumb=None if path is None else _rule_of_thumb(plan, path),
        dominant_uncertainty=dominant.value if dominant else None,
        reasons=mapping.notes([assessed.resting.reason, *plan.reasons]),
        cautions=mapping.notes(cautions),
        methods=sorted({*assessed.resting.preferred, *mini_cut.METHOD_IDS}),
    )


def _rounded(value: float | None, digits: int) -> float | None:
    return None if value is None else round(value, digits)


def _phase(phase: PlannedPhase, path: Forecast, spreads: list[Spread], with_noise: bool) -> Phase:
    last = phase.weeks[-1]
    first, end = path.states[phase.first], path.states[last.point]
    sd = path.spread_of_change(phase.first, last.point)
    weight = Estimate(float(end.weight_kg - first.weight_kg), sd.weight_kg)
    return Phase(
        kind=phase.kind,
        start_date=phase.weeks[0].start,
        end_date=last.start + timedelta(days=6),
        weeks=[
            PlanWeek(
                week=i + 1,
                start_date=week.start,
                days=7,
                intake_kcal=week.intake.intake_kcal,
                protein_g=week.intake.protein_g,
                carbohydrate_g=week.intake.carbohydrate_g,
                fat_g=week.intake.fat_g,
                fibre_g=week.intake.fibre_g,
                energy_balance_kcal=round(path.energy_balance_kcal(week.point), KCAL),
                at_end=forecast_point(
                    week.start + timedelta(days=6), path, week.point, spreads[week.point], with_noise
                ),
            )
            for i, week in enumerate(phase.weeks)
        ],
        change=PhaseTotals(
            weight_kg=interval(weight, KG),
            fat_kg=interval(Estimate(end.fat_kg - first.fat_kg, sd.fat_kg), KG),
            lean_kg=interval(Estimate(end.lean_kg - first.lean_kg, sd.lean_kg), KG),
            carried_kg=interval(Estimate(end.carried_kg - first.carried_kg, sd.carried_kg), KG),
        ),
        ends_early_when=mapping.notes(phase.ends_early_when),
        guidance=mapping.notes(phase.guidance),
        reasons=mapping.notes(phase.reasons),
        cautions=mapping.notes(phase.cautions),
    )


def _rule_of_thumb(plan: Plan, path: Forecast) -> RuleOfThumb:
    weeks, deficit = plan.cut_weeks, plan.deficit_kcal or 0.0
    lower, upper = phase_defaults.COMMON_LOSS_KG_PER_WEEK
    return RuleOfThumb(
        fat_loss_static_kg=round(deficit * 7 * weeks / phase_defaults.STATIC_KCAL_PER_KG, 2),
        fat_loss_common_practice_kg=[round(lower * weeks, 2), round(upper * weeks, 2)],
        first_week_drop_common_practice_kg=list(phase_defaults.COMMON_FIRST_DROP_KG),
        first_week_drop_forecast_kg=round(float(path.states[0].weight_kg - path.states[1].weight_kg), 2),
    )
