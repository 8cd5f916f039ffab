"""`POST /v1/plans`: a fat-loss phase with its return to a gain, a gain, or a hold."""

from datetime import timedelta

from steelyard.science.body import ALL_SOURCES, Forecast, Spread, UncertaintySource
from steelyard.science.measures import Assessment, assess, body_of, general_cautions
from steelyard.science.numbers import Estimate
from steelyard.science.person import Person
from steelyard.science.phase import (
    COMMON_FIRST_DROP_KG,
    COMMON_LOSS_KG_PER_WEEK,
    PLAN_METHOD_IDS,
    STATIC_KCAL_PER_KG,
    Element,
    Plan,
    PlannedPhase,
    subject_at,
)
from steelyard.science.rails import Macronutrients, Subject, least_day_kcal, split_week

from . import mapping
from .examples import PLAN_EXAMPLES
from .formats import PLAN_FORMATS
from .logs import maintenance_for
from .mapping import FRACTION, KCAL, KG, interval
from .operations import computation
from .pictures import PLAN_PICTURES
from .plan_requests import check, plan_of
from .points import forecast_point
from .schemas.plans import (
    Cut,
    DayKind,
    DaySplit,
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
    summary="Plan a mini-cut, a cut, a gain or a hold",
    request_examples=PLAN_EXAMPLES,
    formats={**PLAN_FORMATS, **PLAN_PICTURES},
)
def plan_phases(body: PlanRequest) -> PlanResponse:
    """Plan a phase and what follows it, inside every guard rail.

    A fat-loss phase (`mini_cut` or `cut`) takes a goal, a time, or both: the rest is solved. Each week has its intake
    and macronutrients, and a forecast of scale weight, fat, lean tissue and carried mass with 80 % intervals. Where no
    safe plan does what was asked, `feasible` is false and `nearest` says what would. A person for whom no deficit is
    safe gets a 422 whose type names the rule. Screening answers are required: without them no deficit is planned. To
    plan the rest of a phase under way send the body as it is now, `weeks_done` and what is eaten now as
    `current_intake_kcal`.

    `Accept` chooses among JSON, a calendar (`text/calendar`, RFC 5545: an all-day event for each phase and each change
    of intake), the weekly table (`text/csv`, RFC 4180, units in the header) and a summary to paste into a message
    (`text/markdown`), and a picture (`image/svg+xml`, `image/png`, or its Vega-Lite specification). Cautions are in
    each of them.
    """
    check(body)
    person = mapping.person(body.profile)
    assessed = assess(person)
    maintenance = maintenance_for(body.maintenance, body.log, person, assessed)
    subject = mapping.subject(person, assessed, maintenance, body.screening)
    plan = plan_of(body, assessed, subject, body_of(person, assessed, maintenance, body.current_intake_kcal))
    return _response(body, person, assessed, maintenance, subject, plan)


def _response(
    body: PlanRequest, person: Person, assessed: Assessment, maintenance: Estimate, subject: Subject, plan: Plan
) -> PlanResponse:
    path = plan.forecast
    noise = UncertaintySource.DAILY_NOISE in (
        ALL_SOURCES if body.uncertainty_sources is None else body.uncertainty_sources
    )
    spreads = [] if path is None else path.spreads()
    phases = [] if path is None else [_phase(body, subject, p, path, spreads, noise) for p in plan.phases]
    cut = plan.cut_phase
    dominant = None if path is None else path.dominant_source((cut or plan.phases[0]).weeks[-1].point)
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
        start_weight_kg=body.profile.weight_kg,
        deficit_kcal=_rounded(plan.deficit_kcal, KCAL),
        phases=phases,
        guard_rails=[mapping.guard_rail(action) for action in plan.actions],
        rule_of_thumb=None if path is None or cut is None else _rule_of_thumb(cut, plan.deficit_kcal or 0.0, path),
        dominant_uncertainty=dominant.value if dominant else None,
        reasons=mapping.notes([assessed.resting.reason, *plan.reasons]),
        cautions=mapping.notes(general_cautions(person, assessed)),
        methods=mapping.method_ids(assessed.resting.preferred, PLAN_METHOD_IDS),
    )


def _rounded(value: float | None, digits: int) -> float | None:
    return None if value is None else round(value, digits)


def _phase(
    body: PlanRequest,
    subject: Subject,
    phase: PlannedPhase,
    path: Forecast,
    spreads: list[Spread],
    with_noise: bool,
) -> Phase:
    split, asked, last = body.day_split, body.phase, phase.weeks[-1]
    weeks_in_deficit = len(phase.weeks) + asked.weeks_done if isinstance(asked, Cut) and phase.kind == "cut" else 0
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
                element=week.element.value,
                intake_kcal=week.intake.intake_kcal,
                protein_g=week.intake.protein_g,
                carbohydrate_g=week.intake.carbohydrate_g,
                fat_g=week.intake.fat_g,
                fibre_g=week.intake.fibre_g,
                day_kinds=[]
                if split is None
                else _day_kinds(split, _subject_before(subject, path, week.point), weeks_in_deficit, week.intake),
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


def _subject_before(subject: Subject, path: Forecast, point: int) -> Subject:
    """The body at the start of the week that ends at ``point``."""
    return subject if point == 1 else subject_at(subject, path.model, path.states[point - 1])


def _day_kinds(split: DaySplit, now: Subject, weeks_in_deficit: int, day: Macronutrients) -> list[DayKind]:
    least = least_day_kcal(now, weeks_in_deficit)
    week = split_week(day, split.higher_days_per_week, split.carbohydrate_shift, least)
    kinds = (
        ("higher_carbohydrate", week.higher, week.higher_days),
        ("lower_carbohydrate", week.lower, 7 - week.higher_days),
    )
    return [
        DayKind(
            kind=kind,
            days_per_week=days,
            intake_kcal=macros.intake_kcal,
            protein_g=macros.protein_g,
            carbohydrate_g=macros.carbohydrate_g,
            fat_g=macros.fat_g,
        )
        for kind, macros, days in kinds
    ]


def _rule_of_thumb(cut: PlannedPhase, deficit_kcal: float, path: Forecast) -> RuleOfThumb:
    """What simple rules say of the weeks in a deficit, beside the forecast."""
    weeks = sum(week.element in (Element.DEFICIT, Element.EASING_IN) for week in cut.weeks)
    lower, upper = COMMON_LOSS_KG_PER_WEEK
    first, second = path.states[cut.first], path.states[cut.first + 1]
    return RuleOfThumb(
        fat_loss_static_kg=round(deficit_kcal * 7 * weeks / STATIC_KCAL_PER_KG, 2),
        fat_loss_common_practice_kg=[round(lower * weeks, 2), round(upper * weeks, 2)],
        first_week_drop_common_practice_kg=list(COMMON_FIRST_DROP_KG),
        first_week_drop_forecast_kg=round(float(first.weight_kg - second.weight_kg), 2),
    )
