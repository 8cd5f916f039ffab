"""`POST /v1/plans`: a fat-loss phase with its return to a gain, a gain, or a hold."""

from datetime import timedelta

from steelyard.core import phase_defaults, phase_plan
from steelyard.core import rail_table as table
from steelyard.core.assessment import Assessment, assess, body_of, general_cautions
from steelyard.core.day_split import split_week
from steelyard.core.deficit_phase import DeficitAim, DeficitKind
from steelyard.core.errors import OutOfDomain
from steelyard.core.estimate import Estimate
from steelyard.core.forecast import ALL_SOURCES, Body, Forecast, Spread, UncertaintySource
from steelyard.core.guard_rails import Subject, deficit_limits, stricter
from steelyard.core.macronutrients import Macronutrients
from steelyard.core.person import Person
from steelyard.core.phase_plan import GainAim, History, HoldAim, Plan, ReturnAim
from steelyard.core.phases import Element, PlannedPhase

from . import mapping
from .examples import PLAN_EXAMPLES
from .logs import check_dates, maintenance_for
from .mapping import FRACTION, KCAL, KG, interval
from .operations import computation
from .points import forecast_point
from .problems import CONTRADICTION, Unprocessable, fault
from .schemas.plans import (
    Cut,
    DayKind,
    Gain,
    Hold,
    MiniCut,
    Nearest,
    Phase,
    PhaseTotals,
    PlanRequest,
    PlanResponse,
    PlanWeek,
    RuleOfThumb,
)

_GOALS = ("fat_loss_kg", "target_fat_fraction", "target_weight_kg")


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
    `current_intake_kcal`.
    """
    check_dates(start_date=body.start_date)
    _check_phase(body)
    person = mapping.person(body.profile)
    assessed = assess(person)
    maintenance = maintenance_for(body.maintenance, body.log, person, assessed)
    subject = mapping.subject(person, assessed, maintenance, body.screening)
    plan = _plan(body, subject, body_of(person, assessed, maintenance, body.current_intake_kcal))
    return _response(body, person, assessed, maintenance, subject, plan)


def _plan(body: PlanRequest, subject: Subject, of: Body) -> Plan:
    sources = ALL_SOURCES if body.uncertainty_sources is None else frozenset(body.uncertainty_sources)
    phase, after, start = body.phase, body.return_to_gain, body.start_date
    then = ReturnAim(
        maintenance_weeks=after.maintenance_weeks,
        gain_weeks=after.gain_weeks,
        surplus_kcal=after.surplus_kcal,
        fat_ceiling=after.fat_ceiling_fraction,
    )
    if isinstance(phase, Gain):
        aim = GainAim(
            weeks=phase.weeks,
            surplus_kcal=phase.surplus_kcal,
            target_weight_kg=phase.target_weight_kg,
            fat_ceiling=phase.fat_ceiling_fraction,
            preference=phase.carbohydrate_preference,
        )
        return phase_plan.plan_gain(subject, of, start, aim, sources=sources)
    if isinstance(phase, Hold):
        hold = HoldAim(weeks=phase.weeks, preference=phase.carbohydrate_preference)
        return phase_plan.plan_hold(subject, of, start, hold, then, sources=sources)
    until_event = _weeks_until_event(body, phase)
    history = body.cut_history
    return phase_plan.plan_deficit(
        subject,
        of,
        start,
        _deficit_aim(phase, until_event),
        then,
        history=History(history.cuts_last_12_months, history.weeks_since_last_cut) if history else History(),
        sources=sources,
        pause_weeks=body.pause.weeks if body.pause else 0,
        weeks_until_event=until_event,
    )


def _deficit_aim(phase: MiniCut | Cut, weeks_until_event: int | None) -> DeficitAim:
    is_cut = isinstance(phase, Cut)
    has_goal = any(getattr(phase, goal) is not None for goal in _GOALS)
    weeks = phase.weeks
    if weeks is None and weeks_until_event is not None and not has_goal:
        weeks = min(weeks_until_event, phase_defaults.CUT_WEEKS_MOST if is_cut else phase_defaults.MOST_WEEKS)
    return DeficitAim(
        kind=DeficitKind.CUT if is_cut else DeficitKind.MINI_CUT,
        fat_loss_kg=phase.fat_loss_kg,
        target_fat_fraction=phase.target_fat_fraction,
        target_weight_kg=phase.target_weight_kg,
        weeks=weeks,
        at_most_weeks=weeks_until_event,
        deficit_kcal=phase.deficit_kcal,
        protein_g_per_kg=phase.protein_g_per_kg,
        preference=phase.carbohydrate_preference,
        easing_in_weeks=phase.easing_in_weeks,
        break_every_weeks=phase.break_every_weeks if isinstance(phase, Cut) else None,
        break_weeks=phase.break_weeks if isinstance(phase, Cut) else 1,
        weeks_done=phase.weeks_done,
    )


def _weeks_until_event(body: PlanRequest, phase: MiniCut | Cut) -> int | None:
    """Whole weeks left for the phase before its event and the maintenance that precedes it."""
    if phase.event_date is None:
        return None
    check_dates(**{"phase/event_date": phase.event_date})
    pause = body.pause.weeks if body.pause else 0
    weeks = (phase.event_date - body.start_date).days // 7 - body.return_to_gain.maintenance_weeks - pause
    least = 1 if phase.weeks_done else (7 if isinstance(phase, Cut) else 2)
    if not least <= weeks <= 156:
        detail = (
            f"The event leaves {weeks} weeks for the phase, once {body.return_to_gain.maintenance_weeks} week(s) of "
            f"maintenance and {pause} of pause are taken off: it needs {least} to 156. Move the event or the start."
        )
        raise OutOfDomain("EVENT_OUT_OF_REACH", "/phase/event_date", detail)
    return weeks


def _check_phase(body: PlanRequest) -> None:
    phase = body.phase
    if isinstance(phase, Gain | Hold):
        if isinstance(phase, Gain) and phase.target_weight_kg is not None:
            _check_target_weight(body, above=True)
        return
    goals = [goal for goal in _GOALS if getattr(phase, goal) is not None]
    if len(goals) > 1:
        _contradiction(f"/phase/{goals[1]}", "SEVERAL_GOALS", f"Set one goal: leave out {' and '.join(goals[1:])}.")
    if phase.weeks is not None and phase.event_date is not None:
        _contradiction("/phase/event_date", "SEVERAL_TIMES", "Set `weeks` or `event_date`, not both.")
    if goals and phase.weeks is not None and phase.deficit_kcal is not None:
        detail = "A goal and the weeks settle the deficit: leave one of the three out."
        _contradiction("/phase/deficit_kcal", "PHASE_OVERDETERMINED", detail)
    if phase.weeks is not None and phase.easing_in_weeks >= phase.weeks:
        detail = "The easing-in weeks are part of `weeks`: leave at least one week at the full deficit."
        _contradiction("/phase/easing_in_weeks", "EASING_FILLS_PHASE", detail)
    if phase.weeks is not None:
        least = 1 if phase.weeks_done else (7 if isinstance(phase, Cut) else 2)
        if phase.weeks < least:
            detail = f"A {phase.__struct_config__.tag} has {least} weeks or more; shorter ones have another kind."
            _contradiction("/phase/weeks", "TOO_SHORT_FOR_KIND", detail)
        if isinstance(phase, MiniCut) and phase.weeks + phase.weeks_done > phase_defaults.MOST_WEEKS:
            detail = (
                f"With {phase.weeks_done} weeks done at most {phase_defaults.MOST_WEEKS - phase.weeks_done} are left."
            )
            _contradiction("/phase/weeks", "TOO_LONG_FOR_KIND", detail)
    if phase.target_weight_kg is not None:
        _check_target_weight(body, above=False)
    if phase.fat_loss_kg is not None and phase.fat_loss_kg > 0.5 * body.profile.weight_kg * 0.6:
        raise OutOfDomain("GOAL_BEYOND_BODY", "/phase/fat_loss_kg", "There is not that much fat to lose: ask for less.")


def _check_target_weight(body: PlanRequest, *, above: bool) -> None:
    target, weight = body.phase.target_weight_kg, body.profile.weight_kg  # type: ignore[union-attr]
    if target is not None and (target <= weight if above else target >= weight):
        side = "above" if above else "below"
        detail = f"Set a target {side} the present weight of {weight:g} kg; this is {target:g}."
        _contradiction("/phase/target_weight_kg", "TARGET_ON_WRONG_SIDE", detail)


def _contradiction(pointer: str, code: str, detail: str) -> None:
    raise Unprocessable(CONTRADICTION, detail, [fault(f"#{pointer}", code, detail)])


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
        deficit_kcal=_rounded(plan.deficit_kcal, KCAL),
        phases=phases,
        guard_rails=[mapping.guard_rail(action) for action in plan.actions],
        rule_of_thumb=None if path is None or cut is None else _rule_of_thumb(cut, plan.deficit_kcal or 0.0, path),
        dominant_uncertainty=dominant.value if dominant else None,
        reasons=mapping.notes([assessed.resting.reason, *plan.reasons]),
        cautions=mapping.notes(general_cautions(person, assessed)),
        methods=sorted({*assessed.resting.preferred, *phase_plan.METHOD_IDS}),
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
                element=week.element.value,
                intake_kcal=week.intake.intake_kcal,
                protein_g=week.intake.protein_g,
                carbohydrate_g=week.intake.carbohydrate_g,
                fat_g=week.intake.fat_g,
                fibre_g=week.intake.fibre_g,
                day_kinds=_day_kinds(body, subject, week.element, week.intake),
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


def _day_kinds(body: PlanRequest, subject: Subject, element: Element, day: Macronutrients) -> list[DayKind]:
    split = body.day_split
    if split is None:
        return []
    least = stricter(table.INTAKE_FLOOR, subject.sex)
    if element in (Element.DEFICIT, Element.EASING_IN):
        # A lower day is no deeper a deficit than a rail allows for a whole phase.
        least = max(least, subject.maintenance_kcal - deficit_limits(subject)[0].deficit_kcal)
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
    lower, upper = phase_defaults.COMMON_LOSS_KG_PER_WEEK
    first, second = path.states[cut.first], path.states[cut.first + 1]
    return RuleOfThumb(
        fat_loss_static_kg=round(deficit_kcal * 7 * weeks / phase_defaults.STATIC_KCAL_PER_KG, 2),
        fat_loss_common_practice_kg=[round(lower * weeks, 2), round(upper * weeks, 2)],
        first_week_drop_common_practice_kg=list(phase_defaults.COMMON_FIRST_DROP_KG),
        first_week_drop_forecast_kg=round(float(first.weight_kg - second.weight_kg), 2),
    )
