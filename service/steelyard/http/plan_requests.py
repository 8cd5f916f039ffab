"""What a request for a plan asks: checked for contradictions, and handed to the planner."""

from datetime import date
from typing import NoReturn

from steelyard.science import rails
from steelyard.science.body import ALL_SOURCES, Body
from steelyard.science.measures import Assessment
from steelyard.science.phase import (
    DeficitAim,
    DeficitKind,
    GainAim,
    History,
    HoldAim,
    Plan,
    ReturnAim,
    plan_deficit,
    plan_gain,
    plan_hold,
)
from steelyard.science.rails import Subject
from steelyard.science.register import OutOfDomain

from .logs import check_dates
from .problems import CONTRADICTION, Unprocessable, fault
from .schemas.plans import Cut, Gain, Hold, MiniCut, PlanRequest

_GOALS = ("fat_loss_kg", "target_fat_fraction", "target_weight_kg")
_MOST_WEEKS_TO_EVENT = 156


def check(body: PlanRequest) -> None:
    """Refuse what no plan could do, whoever the person is. Raises ``Unprocessable`` or ``OutOfDomain``."""
    check_dates(start_date=body.start_date)
    phase = body.phase
    if isinstance(phase, Hold):
        if body.pause is not None:
            detail = "A hold is at maintenance throughout: add the weeks of the pause to `phase.weeks`."
            _contradiction("/pause", "PAUSE_OF_HOLD", detail)
    elif isinstance(phase, Gain):
        _check_target_weight(phase.target_weight_kg, body.profile.weight_kg, is_gain=True)
    else:
        _check_deficit(body, phase)


def _check_deficit(body: PlanRequest, phase: MiniCut | Cut) -> None:
    goals = [goal for goal in _GOALS if getattr(phase, goal) is not None]
    if len(goals) > 1:
        _contradiction(f"/phase/{goals[1]}", "SEVERAL_GOALS", f"Set one goal: leave out {' and '.join(goals[1:])}.")
    if phase.weeks is not None and phase.event_date is not None:
        _contradiction("/phase/event_date", "SEVERAL_TIMES", "Set `weeks` or `event_date`, not both.")
    if goals and phase.weeks is not None and phase.deficit_kcal is not None:
        detail = "A goal and the weeks settle the deficit: leave one of the three out."
        _contradiction("/phase/deficit_kcal", "PHASE_OVERDETERMINED", detail)
    if isinstance(phase, Cut) and phase.break_every_weeks is None and phase.break_weeks != 1:
        detail = "Breaks have a length but no interval: set `break_every_weeks`, or leave `break_weeks` out."
        _contradiction("/phase/break_weeks", "BREAKS_WITHOUT_INTERVAL", detail)
    _check_weeks(phase)
    _weeks_until_event(body, phase)
    _check_target_weight(phase.target_weight_kg, body.profile.weight_kg, is_gain=False)
    reading = body.profile.body_fat
    if phase.target_fat_fraction is not None and reading and phase.target_fat_fraction >= reading.fat_fraction:
        present, target = reading.fat_fraction, phase.target_fat_fraction
        detail = f"Set a target below the present body fat of {present:g}; this is {target:g}."
        _contradiction("/phase/target_fat_fraction", "TARGET_ON_WRONG_SIDE", detail)


def _check_weeks(phase: MiniCut | Cut) -> None:
    kind = phase.__struct_config__.tag
    aim = _deficit_aim(phase)
    if phase.weeks is None:
        if 0 < aim.most_weeks <= phase.easing_in_weeks:
            detail = f"{aim.most_weeks} week(s) of this {kind} are left: ease in for fewer."
            _contradiction("/phase/easing_in_weeks", "EASING_FILLS_PHASE", detail)
        return
    if phase.easing_in_weeks >= phase.weeks:
        detail = "The easing-in weeks are part of `weeks`: leave at least one week at the full deficit."
        _contradiction("/phase/easing_in_weeks", "EASING_FILLS_PHASE", detail)
    done = f" beside the {phase.weeks_done} done" if phase.weeks_done else ""
    if phase.weeks < aim.least_weeks:
        detail = f"A {kind} has {aim.least_weeks} weeks or more{done}; shorter ones have another kind."
        _contradiction("/phase/weeks", "TOO_SHORT_FOR_KIND", detail)
    if phase.weeks > aim.most_weeks:
        detail = f"A {kind} has at most {max(0, aim.most_weeks)} weeks{done}; longer ones have another kind."
        _contradiction("/phase/weeks", "TOO_LONG_FOR_KIND", detail)


def _check_target_weight(target_kg: float | None, weight_kg: float, *, is_gain: bool) -> None:
    if target_kg is not None and (target_kg <= weight_kg if is_gain else target_kg >= weight_kg):
        side = "above" if is_gain else "below"
        detail = f"Set a target {side} the present weight of {weight_kg:g} kg; this is {target_kg:g}."
        _contradiction("/phase/target_weight_kg", "TARGET_ON_WRONG_SIDE", detail)


def _weeks_until_event(body: PlanRequest, phase: MiniCut | Cut) -> int | None:
    """Whole weeks left for the phase before its event and the maintenance that precedes it."""
    event: date | None = phase.event_date
    if event is None:
        return None
    check_dates(**{"phase/event_date": event})
    if event <= body.start_date:
        detail = f"The event must come after the start on {body.start_date}; it is on {event}."
        _contradiction("/phase/event_date", "EVENT_BEFORE_START", detail)
    pause, maintenance = (body.pause.weeks if body.pause else 0), body.return_to_gain.maintenance_weeks
    weeks = (event - body.start_date).days // 7 - maintenance - pause
    least = _deficit_aim(phase).least_weeks
    if weeks < least:
        detail = (
            f"The event leaves {max(0, weeks)} weeks for the phase, once {maintenance} week(s) of maintenance and "
            f"{pause} of pause are taken off: it needs {least} or more. Move the event or the start."
        )
        _contradiction("/phase/event_date", "EVENT_TOO_SOON", detail)
    if weeks > _MOST_WEEKS_TO_EVENT:
        detail = f"The event is {weeks} weeks after the phase could start, more than {_MOST_WEEKS_TO_EVENT}."
        raise OutOfDomain("EVENT_TOO_FAR", "/phase/event_date", detail)
    return weeks


def _contradiction(pointer: str, code: str, detail: str) -> NoReturn:
    raise Unprocessable(CONTRADICTION, detail, [fault(f"#{pointer}", code, detail)])


def plan_of(body: PlanRequest, assessed: Assessment, subject: Subject, of: Body) -> Plan:
    """The plan for a checked request. Raises ``guard_rails.Refused`` where a rule forbids it for this person."""
    sources = ALL_SOURCES if body.uncertainty_sources is None else frozenset(body.uncertainty_sources)
    phase, after, start = body.phase, body.return_to_gain, body.start_date
    then = ReturnAim(
        maintenance_weeks=after.maintenance_weeks,
        gain_weeks=after.gain_weeks,
        surplus_kcal=after.surplus_kcal,
        fat_ceiling=after.fat_ceiling_fraction,
    )
    pause_weeks = body.pause.weeks if body.pause else 0
    if isinstance(phase, Gain | Hold):
        if body.day_split is not None:
            # A lower day is a day in a deficit.
            rails.check_person(subject)
        field = "/phase" if isinstance(phase, Gain) else "/return_to_gain"
        if (phase if isinstance(phase, Gain) else after).fat_ceiling_fraction is not None:
            rails.refuse_fat_target(subject, f"{field}/fat_ceiling_fraction")
    if isinstance(phase, Gain):
        aim = GainAim(
            weeks=phase.weeks,
            surplus_kcal=phase.surplus_kcal,
            target_weight_kg=phase.target_weight_kg,
            fat_ceiling=phase.fat_ceiling_fraction,
            preference=phase.carbohydrate_preference,
        )
        return plan_gain(subject, of, start, aim, sources=sources, pause_weeks=pause_weeks)
    if isinstance(phase, Hold):
        hold = HoldAim(weeks=phase.weeks, preference=phase.carbohydrate_preference)
        return plan_hold(subject, of, start, hold, then, sources=sources)
    fat_kg = float(assessed.fat.mean) * body.profile.weight_kg
    if phase.fat_loss_kg is not None and phase.fat_loss_kg >= fat_kg:
        detail = f"There are {fat_kg:.1f} kg of fat in all: ask for less than {phase.fat_loss_kg:g}."
        _contradiction("/phase/fat_loss_kg", "GOAL_BEYOND_BODY", detail)
    until_event = _weeks_until_event(body, phase)
    history = body.cut_history
    return plan_deficit(
        subject,
        of,
        start,
        _deficit_aim(phase),
        then,
        history=History(history.cuts_last_12_months, history.weeks_since_last_cut) if history else History(),
        sources=sources,
        pause_weeks=pause_weeks,
        weeks_until_event=until_event,
    )


def _deficit_aim(phase: MiniCut | Cut) -> DeficitAim:
    is_cut = isinstance(phase, Cut)
    return DeficitAim(
        kind=DeficitKind.CUT if is_cut else DeficitKind.MINI_CUT,
        fat_loss_kg=phase.fat_loss_kg,
        target_fat_fraction=phase.target_fat_fraction,
        target_weight_kg=phase.target_weight_kg,
        weeks=phase.weeks,
        deficit_kcal=phase.deficit_kcal,
        protein_g_per_kg=phase.protein_g_per_kg,
        preference=phase.carbohydrate_preference,
        easing_in_weeks=phase.easing_in_weeks,
        break_every_weeks=phase.break_every_weeks if isinstance(phase, Cut) else None,
        break_weeks=phase.break_weeks if isinstance(phase, Cut) else 1,
        weeks_done=phase.weeks_done,
    )
