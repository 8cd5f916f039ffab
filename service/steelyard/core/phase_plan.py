"""Plan phases: a fat-loss phase with the maintenance and gain that follow, a gain, or a hold, inside every rail.

A pause (travel, illness, injury) holds at maintenance first; the phase is then planned from the body as it is by
then. What no safe plan reaches is answered with the nearest on each axis.
"""

from collections.abc import Callable
from datetime import date, timedelta
from typing import NamedTuple

import msgspec

from . import guard_rails as rails
from . import rail_table as table
from .deficit_phase import DeficitAim, DeficitKind, DeficitPhase, Nearest, Solved, Week, solve, subject_at
from .energy_balance import (
    BASELINE_GLYCOGEN_KG,
    CARRIED_IDS,
    MODEL_IDS,
    BodyModel,
    BodyState,
    advance,
    current_maintenance_kcal,
    walk,
)
from .forecast import FORECAST_IDS, Body, Forecast, Stretch, UncertaintySource, forecast, start_body
from .guard_rails import RailAction, Subject
from .macronutrients import (
    CARBOHYDRATE_KCAL_PER_G,
    FAT_KCAL_PER_G,
    MACRONUTRIENT_IDS,
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    PROTEIN_FLOOR_DEFICIT,
    CarbohydratePreference,
    split_intake,
)
from .message import Message, say
from .phase_defaults import GAIN_RESET_WEEKS, SURPLUS_DEFAULT
from .phases import (
    Element,
    PlannedPhase,
    PlannedWeek,
    as_diet,
    explain_cut,
    explain_gain,
    explain_hold,
    explain_maintenance,
    explain_pause,
)
from .screening import Condition
from .targets import crossing

METHOD_IDS = (*MODEL_IDS, *CARRIED_IDS, *FORECAST_IDS, *MACRONUTRIENT_IDS, *table.RAIL_IDS)
# A gain towards a weight is looked for this far ahead.
_GAIN_WEEKS_MOST = 52


class GainAim(msgspec.Struct, frozen=True, kw_only=True):
    """A gain: its weeks, or the settled weight at which it ends."""

    weeks: int | None = None
    surplus_kcal: float | None = None
    target_weight_kg: float | None = None
    fat_ceiling: float | None = None
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED


class HoldAim(msgspec.Struct, frozen=True, kw_only=True):
    """A hold at maintenance."""

    weeks: int
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED


class ReturnAim(msgspec.Struct, frozen=True, kw_only=True):
    """What follows a fat-loss phase or a hold."""

    maintenance_weeks: int = 1
    gain_weeks: int = 12
    surplus_kcal: float | None = None
    fat_ceiling: float | None = None


class History(NamedTuple):
    """Cuts already done; ``None`` where not told."""

    cuts_last_12_months: int | None = None
    weeks_since_last_cut: int | None = None


class Plan(NamedTuple):
    """The plan, or why there is none. ``cut`` is the index of the fat-loss phase in ``phases``."""

    nearest: Nearest | None
    deficit_kcal: float | None
    phases: list[PlannedPhase]
    forecast: Forecast | None
    actions: list[RailAction]
    reasons: list[Message]
    cut: int | None = None

    @property
    def is_feasible(self) -> bool:
        """Whether the plan does what was asked."""
        return self.nearest is None

    @property
    def cut_phase(self) -> PlannedPhase | None:
        """The fat-loss phase, where there is one."""
        return None if self.cut is None or not self.phases else self.phases[self.cut]


class _Draft:
    """Phases being laid end to end: weeks as they are added, and the body at their end."""

    def __init__(self, subject: Subject, body: Body, start: date) -> None:
        self.subject, self.body, self.start = subject, body, start
        self.model, self.state = start_body(body)
        self.kinds: list[str] = []
        self.weeks: list[list[Week]] = []

    def add(self, kind: str, weeks: list[Week], state: BodyState) -> None:
        if not weeks:
            return
        self.state = state
        if self.kinds and self.kinds[-1] == kind:
            self.weeks[-1] += weeks
        else:
            self.kinds.append(kind)
            self.weeks.append(weeks)

    def hold(self, weeks: int, preference: CarbohydratePreference) -> None:
        """Weeks at maintenance, the intake set anew each week."""
        rows, state = [], self.state
        for _ in range(weeks):
            maintenance = float(current_maintenance_kcal(self.model, state))
            macros = split_intake(maintenance, self.subject.weight_kg, PROTEIN_DEFAULT_GAIN, preference)
            rows.append(Week(Element.MAINTENANCE, macros))
            state = walk(self.model, state, as_diet(macros, self.subject.weight_kg), (7.0,))[-1]
        self.add("maintenance", rows, state)

    def finish(self, sources: frozenset[UncertaintySource]) -> tuple[list[PlannedPhase], Forecast]:
        """The phases with their forecast."""
        stretches: list[Stretch] = []
        for rows in self.weeks:
            for i, row in enumerate(rows):
                diet = as_diet(row.intake, self.subject.weight_kg)
                # A stretch never spans two phases, so that the ends of phases are nodes of the forecast.
                if i and stretches[-1].diet == diet:
                    stretches[-1] = Stretch(diet, (*stretches[-1].lengths, 7.0))
                else:
                    stretches.append(Stretch(diet, (7.0,)))
        phases, point, day = [], 0, self.start
        for kind, rows in zip(self.kinds, self.weeks, strict=True):
            weeks = [
                PlannedWeek(day + timedelta(days=7 * i), row.intake, point + 1 + i, row.element)
                for i, row in enumerate(rows)
            ]
            phases.append(PlannedPhase(kind, point, weeks, [], [], [], []))
            point += len(rows)
            day += timedelta(days=7 * len(rows))
        return phases, forecast(self.body, stretches, sources=sources)


def with_usual_diet(body: Body, subject: Subject, preference: CarbohydratePreference) -> Body:
    """The body whose usual diet has the carbohydrate that its planned maintenance will have.

    Otherwise carried mass would come back to another level than it left.
    """
    usual = split_intake(subject.maintenance_kcal, subject.weight_kg, PROTEIN_DEFAULT_GAIN, preference)
    return body._replace(carbohydrate_share=CARBOHYDRATE_KCAL_PER_G * usual.carbohydrate_g / usual.intake_kcal)


def plan_deficit(
    subject: Subject,
    body: Body,
    start: date,
    aim: DeficitAim,
    then: ReturnAim,
    *,
    history: History,
    sources: frozenset[UncertaintySource],
    pause_weeks: int = 0,
    weeks_until_event: int | None = None,
) -> Plan:
    """Plan a mini-cut or a cut, the maintenance after it and the return to a gain.

    Args: ``pause_weeks`` at maintenance come first. ``weeks_until_event`` are left for the phase before an event and
        the maintenance that lets carried mass settle; what the phase does not need of them is held at maintenance.
    Raises: ``guard_rails.Refused`` where a rule forbids any deficit for this person.
    """
    actions = rails.check_person(subject)
    actions += rails.warn_history(history.cuts_last_12_months, history.weeks_since_last_cut)
    protein, protein_actions = _protein(subject, aim)
    actions += protein_actions
    if aim.target_fat_fraction is not None:
        rails.refuse_target(subject, aim.target_fat_fraction, "/phase/target_fat_fraction")
    body = with_usual_diet(body, subject, aim.preference)
    draft = _Draft(subject, body, start)
    draft.hold(pause_weeks, aim.preference)
    phase = DeficitPhase(subject, body, aim, protein)
    if pause_weeks:
        phase.starting(draft.state, subject_at(subject, draft.model, draft.state))
    is_known = history.cuts_last_12_months is not None
    solved = solve(phase, is_history_known=is_known)
    wait = 0 if weeks_until_event is None else weeks_until_event - solved.weeks
    if solved.nearest is None and wait > 0:
        # As late as will do: a shorter wait for the next phase, and the goal is met on the day.
        draft.hold(wait, aim.preference)
        pause_weeks += wait
        phase.starting(draft.state, subject_at(subject, draft.model, draft.state))
        solved = solve(phase, is_history_known=is_known)
    actions += solved.actions
    if solved.nearest is not None:
        return Plan(solved.nearest, None, [], None, actions, [say("INFEASIBLE"), *solved.reasons])
    return _lay_out(draft, phase, solved, then, sources, actions, pause_weeks)


def _protein(subject: Subject, aim: DeficitAim) -> tuple[float, list[RailAction]]:
    actions = []
    protein = aim.protein_g_per_kg if aim.protein_g_per_kg is not None else PROTEIN_DEFAULT_DEFICIT
    if protein < PROTEIN_FLOOR_DEFICIT:
        message = say("CAPPED_PROTEIN", limit=PROTEIN_FLOOR_DEFICIT)
        actions.append(RailAction(table.PROTEIN, "capped", PROTEIN_FLOOR_DEFICIT, protein, "g/kg/d", message))
        protein = PROTEIN_FLOOR_DEFICIT
    screening = subject.screening
    if screening is not None and Condition.KIDNEY_DISEASE in screening.conditions:
        actions.append(RailAction(table.PROTEIN, "warned", None, protein, "g/kg/d", say("WARNED_KIDNEY_PROTEIN")))
    return protein, actions


def _lay_out(
    draft: _Draft,
    phase: DeficitPhase,
    solved: Solved,
    then: ReturnAim,
    sources: frozenset[UncertaintySource],
    actions: list[RailAction],
    pause_weeks: int,
) -> Plan:
    """Weeks, intakes, forecast and words of a solved phase and what follows."""
    aim, model, subject = phase.aim, draft.model, phase.subject
    rows, states = phase.run(solved.deficit_kcal, solved.weeks)
    end = states[-1]
    draft.add(aim.kind.value, rows, end)
    cut = len(draft.kinds) - 1
    maintenance_after = float(current_maintenance_kcal(model, end))
    draft.hold(then.maintenance_weeks, aim.preference)
    surplus, rail = fit_surplus(draft.subject, model, draft.state, then.gain_weeks, then.surplus_kcal, aim.preference)
    draft.add("gain", *gain_weeks(draft.subject, model, draft.state, surplus, then.gain_weeks, aim.preference))
    phases, path = draft.finish(sources)

    full = min((row.intake for row in rows if row.element is Element.DEFICIT), key=lambda m: m.intake_kcal)
    actions = [
        *actions,
        *rail,
        *rails.warn_deficit(
            subject, rows[-1].intake.intake_kcal, phase.loss_share(end, solved.weeks), float(end.fat_kg / end.weight_kg)
        ),
        *rails.warn_macronutrients(full.intake_kcal, FAT_KCAL_PER_G * full.fat_g, full.carbohydrate_g),
    ]
    given = full.protein_g / subject.weight_kg
    if given < phase.protein - 0.05:
        message = say("CAPPED_PROTEIN_ROOM", given=given, asked=phase.protein)
        actions.append(RailAction(table.DIETARY_FAT, "capped", given, phase.protein, "g/kg/d", message))
    if pause_weeks:
        explain_pause(phases[0], pause_weeks)
    explain_cut(
        phases[cut],
        path,
        reasons=solved.reasons,
        protein_g_per_kg=min(given, phase.protein),
        easing_in_weeks=aim.easing_in_weeks,
        training_dose=model.training_dose,
        fat_loss_kg=aim.fat_loss_kg,
        is_mini=aim.kind is DeficitKind.MINI_CUT,
        has_breaks=any(row.element is Element.BREAK for row in rows),
    )
    explain_maintenance(phases[cut + 1], path, subject.maintenance_kcal - maintenance_after, maintenance_after)
    if len(phases) > cut + 2:
        explain_gain(phases[cut + 2], path, surplus, subject.sex, then.fat_ceiling)
    return Plan(None, solved.deficit_kcal, phases, path, actions, solved.reasons, cut)


def plan_gain(
    subject: Subject, body: Body, start: date, aim: GainAim, *, sources: frozenset[UncertaintySource]
) -> Plan:
    """Plan a gain for some weeks, or until a settled weight is reached."""
    body = with_usual_diet(body, subject, aim.preference)
    draft = _Draft(subject, body, start)
    weeks = aim.weeks if aim.weeks is not None else 12
    if aim.target_weight_kg is not None:
        most = aim.weeks if aim.weeks is not None else _GAIN_WEEKS_MOST
        surplus, actions = fit_surplus(subject, draft.model, draft.state, most, aim.surplus_kcal, aim.preference)
        found = _weeks_to_weight(draft, surplus, aim, most)
        if found is None:
            return Plan(Nearest(None, None, None), None, [], None, actions, [say("GAIN_TARGET_TOO_FAR", weeks=most)])
        weeks = found
    else:
        surplus, actions = fit_surplus(subject, draft.model, draft.state, weeks, aim.surplus_kcal, aim.preference)
    draft.add("gain", *gain_weeks(subject, draft.model, draft.state, surplus, weeks, aim.preference))
    phases, path = draft.finish(sources)
    explain_gain(phases[0], path, surplus, subject.sex, aim.fat_ceiling)
    return Plan(None, None, phases, path, actions, [])


def _weeks_to_weight(draft: _Draft, surplus_kcal: float, aim: GainAim, at_most: int) -> int | None:
    """The fewest weeks of the gain after which the settled weight is reached."""
    state, rows = (
        draft.state,
        gain_weeks(draft.subject, draft.model, draft.state, surplus_kcal, at_most, aim.preference)[0],
    )
    for week, row in enumerate(rows, start=1):
        state = walk(draft.model, state, as_diet(row.intake, draft.subject.weight_kg), (7.0,))[-1]
        if state.tissue_kg + BASELINE_GLYCOGEN_KG >= (aim.target_weight_kg or 0.0):
            return week
    return None


def plan_hold(
    subject: Subject, body: Body, start: date, aim: HoldAim, then: ReturnAim, *, sources: frozenset[UncertaintySource]
) -> Plan:
    """Plan a hold at maintenance, and the gain that follows it."""
    body = with_usual_diet(body, subject, aim.preference)
    draft = _Draft(subject, body, start)
    draft.hold(aim.weeks, aim.preference)
    surplus, actions = fit_surplus(
        subject, draft.model, draft.state, then.gain_weeks, then.surplus_kcal, aim.preference
    )
    draft.add("gain", *gain_weeks(subject, draft.model, draft.state, surplus, then.gain_weeks, aim.preference))
    phases, path = draft.finish(sources)
    explain_hold(phases[0], path)
    if len(phases) > 1:
        explain_gain(phases[1], path, surplus, subject.sex, then.fat_ceiling)
    return Plan(None, None, phases, path, actions, [])


def fit_surplus(
    subject: Subject,
    model: BodyModel,
    state: BodyState,
    weeks: int,
    asked_kcal: float | None,
    preference: CarbohydratePreference,
) -> tuple[float, list[RailAction]]:
    """The surplus asked for, or the usual one, held under the ceiling on the rate of gain [kcal/d]."""
    surplus = asked_kcal if asked_kcal is not None else SURPLUS_DEFAULT[subject.training_status]
    if not weeks:
        return surplus, []
    limit = table.GAIN_RATE_LIMIT[subject.training_status]

    def rate(kcal: float) -> float:
        end = gain_weeks(subject, model, state, kcal, weeks, preference)[1]
        return float((end.tissue_kg - state.tissue_kg) / weeks / state.weight_kg)

    found = rate(surplus)
    if found > limit:
        fitted = _fit(rate, limit, surplus)
        if asked_kcal is None:
            # No one asked for more than fits: the usual size is only a start.
            return fitted, []
        message = say("CAPPED_GAIN_RATE", surplus_kcal=fitted, percent=100 * limit)
        return fitted, [RailAction(table.GAIN_RATE, "capped", limit, found, "of body mass a week", message)]
    warn_at = table.GAIN_RATE_WARN_SHARE * limit
    if found > warn_at and asked_kcal is not None:
        message = say("WARNED_GAIN_RATE", percent=100 * found)
        return surplus, [RailAction(table.GAIN_RATE, "warned", warn_at, found, "of body mass a week", message)]
    return surplus, []


def _fit(rate: Callable[[float], float], limit: float, highest: float) -> float:
    # A step under the crossing keeps the rounded intakes under the ceiling too.
    return max(0.0, crossing(lambda kcal: rate(kcal) - limit, 0.0, highest) - 10.0)


def gain_weeks(
    subject: Subject,
    model: BodyModel,
    state: BodyState,
    surplus_kcal: float,
    weeks: int,
    preference: CarbohydratePreference,
) -> tuple[list[Week], BodyState]:
    """Weeks of a gain, the intake set anew every few, and the body at their end."""
    rows: list[Week] = []
    while len(rows) < weeks:
        n = min(GAIN_RESET_WEEKS, weeks - len(rows))
        # Rounded down to 10 kcal, so that rounding never lifts the gain past its ceiling.
        intake = int(current_maintenance_kcal(model, state) + surplus_kcal) // 10 * 10
        macros = split_intake(intake, subject.weight_kg, PROTEIN_DEFAULT_GAIN, preference)
        rows += [Week(Element.SURPLUS, macros)] * n
        state = advance(model, state, as_diet(macros, subject.weight_kg), 7.0 * n, step_days=28.0)
    return rows, state
