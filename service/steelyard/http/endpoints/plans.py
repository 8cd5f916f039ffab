"""`POST /v1/plans`: a fat-loss phase with its return to a gain, a gain, or a hold."""

from msgspec import UNSET

from steelyard import answers
from steelyard.science.body import ALL_SOURCES
from steelyard.science.person import FlexibleDay, TrainingOnDay, WeekLived
from steelyard.science.phase import (
    DeficitAim,
    DeficitKind,
    Element,
    GainAim,
    History,
    HoldAim,
    LeverUse,
    PhaseKind,
    ReturnAim,
    SizeOffered,
)
from steelyard.science.rails import SplitWeek

from ..operation.operation import computation
from ..schemas.phases import DayKind, ForecastPoint, KnownMaintenance, PhaseFollowed, WeekFollowed
from ..schemas.plans import (
    ActivityLever,
    ActivityUse,
    Cut,
    DayPlan,
    Gain,
    Hold,
    MiniCut,
    Nearest,
    Phase,
    PhaseSize,
    PlanRequest,
    PlanResponse,
    PlanWeek,
    RuleOfThumb,
    WeekAsked,
)
from ..schemas.states import State
from . import figures, mapping, phases, states
from .examples.examples import PLAN_EXAMPLES
from .mapping import FRACTION, KCAL, KG, amount, interval


@computation(
    "/v1/plans",
    operation_id="plan_phases",
    tag="plans",
    summary="Plan a mini-cut, a cut, a gain or a hold",
    request_examples=PLAN_EXAMPLES,
)
def plan_phases(body: PlanRequest) -> PlanResponse:
    """Plan a phase and what follows it, inside every guard rail.

    A fat-loss phase (`mini_cut` or `cut`) takes a goal, a time, or both: the rest is solved. Each week has its intake
    and macronutrients, and a forecast of scale weight, fat, lean tissue and carried mass with 80 % intervals. Where no
    safe plan does what was asked, `feasible` is false and `nearest` says what would. A person for whom no deficit is
    safe gets a 422 whose type names the rule. Screening answers are required: without them no deficit is planned. To
    plan the rest of a phase under way send the body as it is now, `weeks_done` and what is eaten now as
    `current_intake_kcal`. Other sizes of the phase, and more activity beside it, are worked out where `include` asks.
    """
    answer = answers.plan_phases(_asked(body))
    plan = answer.value
    return PlanResponse(
        **mapping.provenance("plan_phases", body),
        feasible=plan.nearest is None,
        nearest=_nearest(body.phase, plan),
        maintenance_kcal=amount(plan.maintenance, KCAL),
        **mapping.log_scale(plan.learnt),
        resting_kcal=amount(plan.resting, KCAL),
        body_fat_fraction=amount(plan.fat_fraction, FRACTION),
        start_weight_kg=round(plan.start_weight_kg, KG),
        protein_reference_kg=round(plan.protein_reference_kg, KG),
        deficit_kcal=mapping.rounded_if_any(plan.deficit_kcal, KCAL),
        phases=[_phase(planned) for planned in plan.phases],
        sizes=_sizes([offered.value for offered in plan.sizes]),
        levers=[_lever(offered) for offered in plan.levers],
        guard_rails=mapping.guard_rails(answer.actions),
        rule_of_thumb=None if plan.rules is None else _rule_of_thumb(plan.rules),
        dominant_uncertainty=None if plan.dominant_source is None else plan.dominant_source.value,
        state=_state(body, answer),
        reasons=mapping.notes(answer.reasons),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _nearest(phase: MiniCut | Cut | Gain | Hold, plan: answers.PhasesPlanned) -> Nearest | None:
    nearest, gain = plan.nearest, plan.nearest_gain
    if nearest is None:
        return None
    aim, weeks = _aim(phase), nearest.weeks if gain is None else gain.weeks
    kind = None
    if weeks:
        kind = aim.kind_of(weeks).value if isinstance(aim, DeficitAim) else PhaseKind.GAIN.value
    return Nearest(
        fat_loss_kg=mapping.rounded_if_any(nearest.fat_loss_kg, 2),
        weeks=weeks,
        weeks_kind=kind,
        deficit_kcal=mapping.rounded_if_any(nearest.deficit_kcal, KCAL),
        target_weight_kg=None if gain is None else gain.weight_kg,
    )


def _state(body: PlanRequest, answer: answers.Answered[answers.PhasesPlanned]) -> State:
    """What is known, with the phase that was asked for as the one under way."""
    plan, now = answer.value, answer.state
    assert now is not None
    to_follow = plan.to_follow
    if to_follow is None:
        return mapping.state_on(now, body.state)
    planned, fat_loss, ceiling = plan.phases[to_follow.place], to_follow.fat_loss_kg, to_follow.fat_ceiling
    before = states.phases_known(body.state).given_up(body.start_date)
    phase = PhaseFollowed(
        kind=planned.phase.kind,
        start_date=planned.phase.weeks[0].start,
        weeks=[
            WeekFollowed(
                intake_kcal=week.week.intake.intake_kcal,
                protein_g=week.week.intake.protein_g,
                carbohydrate_g=week.week.intake.carbohydrate_g,
                is_break=week.week.element is Element.BREAK,
            )
            for week in planned.weeks
        ],
        maintenance=KnownMaintenance(
            kcal_per_day=round(_within(plan.maintenance.mean, 800, 8000), 1),
            standard_deviation_kcal=round(_within(plan.maintenance.sd, 20, 600), 1),
        ),
        fat_loss_kg=None if fat_loss is None else round(_within(fat_loss, 0.2, 40), 3),
        fat_ceiling_fraction=None if ceiling is None else round(_within(ceiling, 0.08, 0.6), 4),
        usual_intake_kcal=body.current_intake_kcal,
        start_body=phases.start_body(now.body),
        logging_ratio=None if plan.learnt is None else figures.ratio_figure(plan.learnt.logging_ratio),
        adherence=figures.adherence_figure(now.adherence),
        weeks_before=to_follow.weeks_before or UNSET,
    )
    return states.state(now, phase, phases.phases_over(before))


def _within(value: float, low: float, high: float) -> float:
    return min(max(value, low), high)


def _asked(body: PlanRequest) -> answers.PlanAsked:
    phase, after, split = body.phase, body.return_to_gain, body.day_split
    return answers.PlanAsked(
        told=mapping.told_in(body),
        start=body.start_date,
        aim=_aim(phase),
        then=ReturnAim(
            maintenance_weeks=after.maintenance_weeks,
            gain_weeks=after.gain_weeks,
            surplus_kcal=after.surplus_kcal,
            fat_ceiling=after.fat_ceiling_fraction,
        ),
        event=phase.event_date if isinstance(phase, MiniCut | Cut) else None,
        pause_weeks=0 if body.pause is None else body.pause.weeks,
        split=None if split is None else answers.SplitAsked(split.higher_days_per_week, split.carbohydrate_shift),
        lived=None if body.week is None else _lived(body.week),
        history=_history(body),
        sources=ALL_SOURCES if body.uncertainty_sources is None else frozenset(body.uncertainty_sources),
        include=frozenset(body.include),
    )


def _history(body: PlanRequest) -> History:
    """The cuts already made: as told, else as the state knows them."""
    told = body.cut_history
    if told is None:
        goes_on = isinstance(body.phase, MiniCut | Cut) and body.phase.weeks_done > 0
        return states.phases_known(body.state).cuts_before(body.start_date, goes_on=goes_on)
    return History(told.cuts_last_12_months, told.weeks_since_last_cut)


def _lived(week: WeekAsked) -> WeekLived:
    return WeekLived(
        training=tuple(TrainingOnDay(one.weekday, one.kind, one.minutes, one.met) for one in week.training),
        flexible=tuple(
            FlexibleDay(one.weekday, one.date, one.kind, one.extra_kcal, one.alcohol_g) for one in week.flexible_days
        ),
        meals_per_day=week.meals_per_day,
        is_plant_based=week.is_plant_based,
    )


def _aim(phase: MiniCut | Cut | Gain | Hold) -> DeficitAim | GainAim | HoldAim:
    if isinstance(phase, Gain):
        return GainAim(
            weeks=phase.weeks,
            surplus_kcal=phase.surplus_kcal,
            pace=phase.pace,
            target_weight_kg=phase.target_weight_kg,
            fat_ceiling=phase.fat_ceiling_fraction,
            preference=phase.carbohydrate_preference,
        )
    if isinstance(phase, Hold):
        return HoldAim(weeks=phase.weeks, preference=phase.carbohydrate_preference)
    is_cut = isinstance(phase, Cut)
    return DeficitAim(
        kind=DeficitKind.CUT if is_cut else DeficitKind.MINI_CUT,
        fat_loss_kg=phase.fat_loss_kg,
        target_fat_fraction=phase.target_fat_fraction,
        target_weight_kg=phase.target_weight_kg,
        weeks=phase.weeks,
        deficit_kcal=phase.deficit_kcal,
        pace=phase.pace,
        protein_g_per_kg=phase.protein_g_per_kg,
        preference=phase.carbohydrate_preference,
        easing_in_weeks=phase.easing_in_weeks,
        break_every_weeks=phase.break_every_weeks if isinstance(phase, Cut) else None,
        break_weeks=phase.break_weeks if isinstance(phase, Cut) else 1,
        weeks_done=phase.weeks_done,
    )


def _phase(found: answers.PhasePlanned) -> Phase:
    phase, weeks = found.phase, found.weeks
    ends = mapping.forecast_points([(planned.week.last_day, planned.at_end) for planned in weeks])
    return Phase(
        kind=phase.kind.value,
        start_date=phase.weeks[0].start,
        end_date=phase.weeks[-1].last_day,
        weeks=[_week(i + 1, week, at_end) for i, (week, at_end) in enumerate(zip(weeks, ends, strict=True))],
        change=mapping.phase_totals(found.change),
        ends_early_when=mapping.notes(phase.ends_early_when),
        guidance=mapping.notes(phase.guidance),
        reasons=mapping.notes(phase.reasons),
        cautions=mapping.notes(phase.cautions),
    )


def _sizes(offered: list[SizeOffered]) -> list[PhaseSize]:
    ends = mapping.forecast_points([(size.phase.weeks[-1].last_day, size.at_end) for size in offered])
    return [_size(size, at_end) for size, at_end in zip(offered, ends, strict=True)]


def _size(offered: SizeOffered, at_end: ForecastPoint) -> PhaseSize:
    offset, weeks = round(offered.offset_kcal, KCAL), offered.phase.weeks
    return PhaseSize(
        size=offered.size.value,
        is_planned=offered.is_planned,
        deficit_kcal=-offset if offset < 0 else None,
        surplus_kcal=offset if offset >= 0 else None,
        intake_kcal=offered.intake_kcal,
        last_intake_kcal=offered.last_intake_kcal,
        weeks=len(weeks),
        end_date=at_end.date,
        change=mapping.phase_totals(offered.change),
        at_end=at_end,
        tissue_rate_percent=round(100 * offered.tissue_share, 2),
        guard_rails=mapping.guard_rails(offered.warnings),
        reasons=mapping.notes([offered.said()]),
    )


def _lever(offered: answers.LeverOffered) -> ActivityLever:
    dose, instead, together = offered.dose, offered.instead, offered.together
    return ActivityLever(
        kind=dose.kind.value,
        steps_per_day=dose.steps_per_day,
        minutes_per_week=dose.minutes_per_week,
        burnt_kcal=amount(dose.burnt_kcal, KCAL),
        kept_kcal=amount(dose.kept_kcal, KCAL),
        planned_availability_kcal_per_kg=round(dose.planned_availability, 1),
        instead=None if instead is None else _lever_use(instead.value),
        together=None if together is None else _lever_use(together.value),
        guard_rails=mapping.guard_rails(offered.refusals),
        reasons=mapping.notes(offered.reasons),
    )


def _lever_use(use: LeverUse) -> ActivityUse:
    return ActivityUse(
        intake_kcal=use.intake_kcal,
        last_intake_kcal=use.last_intake_kcal,
        fat_change_kg=interval(use.fat_kg, KG),
        end_weight_kg=round(use.end_weight_kg, KG),
        availability_kcal_per_kg=round(use.availability, 1),
        guard_rails=mapping.guard_rails(use.warnings()),
    )


def _week(number: int, planned: answers.WeekPlanned, at_end: ForecastPoint) -> PlanWeek:
    week, intake = planned.week, planned.week.intake
    return PlanWeek(
        week=number,
        start_date=week.start,
        days=7,
        element=week.element.value,
        intake_kcal=intake.intake_kcal,
        protein_g=intake.protein_g,
        carbohydrate_g=intake.carbohydrate_g,
        fat_g=intake.fat_g,
        fibre_g=intake.fibre_g,
        day_kinds=[] if planned.split is None else _day_kinds(planned.split),
        by_day=[] if planned.days is None else [_day(day) for day in planned.days.days],
        energy_balance_kcal=round(planned.energy_balance_kcal, KCAL),
        at_end=at_end,
    )


def _day(day: answers.DayPlanned) -> DayPlan:
    return DayPlan(
        date=day.on,
        weekday=day.weekday.value,
        intake_kcal=day.macros.intake_kcal,
        protein_g=day.macros.protein_g,
        carbohydrate_g=day.macros.carbohydrate_g,
        fat_g=day.macros.fat_g,
        alcohol_g=day.alcohol_g,
        training_minutes=day.training_minutes,
        training_kcal=round(day.training_kcal, KCAL),
        flexible=None if day.flexible is None else day.flexible.value,
        meals_protein_g=day.meals_protein_g,
    )


def _day_kinds(split: SplitWeek) -> list[DayKind]:
    kinds = (
        ("higher_carbohydrate", split.higher, split.higher_days),
        ("lower_carbohydrate", split.lower, 7 - split.higher_days),
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


def _rule_of_thumb(rules: answers.SimpleRules) -> RuleOfThumb:
    return RuleOfThumb(
        fat_loss_static_kg=round(rules.static_loss_kg, 2),
        fat_loss_common_practice_kg=[round(loss, 2) for loss in rules.common_loss_kg],
        first_week_drop_common_practice_kg=list(rules.common_first_drop_kg),
        first_week_drop_forecast_kg=round(rules.forecast_first_drop_kg, 2),
    )
