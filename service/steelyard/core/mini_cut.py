"""Plan a mini-cut, the maintenance after it and the return to a gain, inside every guard rail.

Given fat, the weeks are found; given weeks, the fat; given both, the deficit. What no safe plan reaches is
answered with the nearest on each axis.
"""

from datetime import date, timedelta
from typing import NamedTuple

import msgspec

from . import guard_rails as rails
from . import rail_table as table
from .energy_balance import (
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
    FAT_KCAL_PER_G,
    MACRONUTRIENT_IDS,
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    PROTEIN_FLOOR_DEFICIT,
    CarbohydratePreference,
    Macronutrients,
    split_intake,
)
from .message import Message, say
from .phase_defaults import (
    DEFAULT_WEEKS,
    EASING_SHARE,
    GAIN_RESET_WEEKS,
    LEAST_DEFICIT,
    LEAST_WEEKS,
    MOST_WEEKS,
    STATIC_KCAL_PER_KG,
    SURPLUS_DEFAULT,
)
from .phases import PlannedPhase, PlannedWeek, as_diet, explain_cut, explain_gain, explain_maintenance
from .screening import Condition
from .targets import crossing

# A longer search only tells how long an ordinary cut would take.
_SEARCH_WEEKS = 26

METHOD_IDS = (*MODEL_IDS, *CARRIED_IDS, *FORECAST_IDS, *MACRONUTRIENT_IDS, *table.RAIL_IDS)


class MiniCutAim(msgspec.Struct, frozen=True, kw_only=True):
    """What is asked of the mini-cut; ``None`` is solved for."""

    fat_loss_kg: float | None = None
    weeks: int | None = None
    deficit_kcal: float | None = None
    protein_g_per_kg: float | None = None
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED
    easing_in_weeks: int = 0


class ReturnAim(msgspec.Struct, frozen=True, kw_only=True):
    """What follows the mini-cut."""

    maintenance_weeks: int = 1
    gain_weeks: int = 12
    surplus_kcal: float | None = None
    fat_ceiling: float | None = None


class Nearest(NamedTuple):
    """The nearest safe value on each axis."""

    fat_loss_kg: float | None
    weeks: int | None
    deficit_kcal: float | None


class Plan(NamedTuple):
    """The plan, or why there is none."""

    nearest: Nearest | None
    deficit_kcal: float | None
    phases: list[PlannedPhase]
    forecast: Forecast | None
    actions: list[RailAction]
    reasons: list[Message]
    cut_weeks: int

    @property
    def is_feasible(self) -> bool:
        """Whether the plan does what was asked."""
        return self.nearest is None


class _Cut:
    """A mini-cut being solved: the body, the aim, and the path for any deficit and length."""

    def __init__(self, subject: Subject, body: Body, aim: MiniCutAim, protein_g_per_kg: float) -> None:
        self.subject = subject
        self.aim = aim
        self.protein = protein_g_per_kg
        self.model, self.state = start_body(body)

    def intake(self, deficit_kcal: float) -> Macronutrients:
        # Rounded up to 10 kcal, so that rounding never deepens a deficit past a rail.
        intake = -int(-(self.subject.maintenance_kcal - deficit_kcal) // 10) * 10
        return split_intake(intake, self.subject.weight_kg, self.protein, self.aim.preference)

    def stretches(self, deficit_kcal: float, weeks: int) -> list[tuple[Macronutrients, int]]:
        easing = min(self.aim.easing_in_weeks, weeks)
        parts = [(self.intake(EASING_SHARE * deficit_kcal), easing), (self.intake(deficit_kcal), weeks - easing)]
        return [part for part in parts if part[1]]

    def path(self, deficit_kcal: float, weeks: int) -> list[BodyState]:
        states, state = [], self.state
        for macros, n in self.stretches(deficit_kcal, weeks):
            diet = as_diet(macros, self.subject.weight_kg)
            part = walk(self.model, state, diet, (7.0,) * n)
            states += part
            state = part[-1]
        return states

    def end(self, deficit_kcal: float, weeks: int) -> BodyState:
        """The body at the end, in long steps (within a few grams of ``path``): for searching."""
        state = self.state
        for macros, n in self.stretches(deficit_kcal, weeks):
            state = advance(self.model, state, as_diet(macros, self.subject.weight_kg), 7.0 * n, step_days=21.0)
        return state

    def fat_loss(self, deficit_kcal: float, weeks: int) -> float:
        return float(self.state.fat_kg - self.end(deficit_kcal, weeks).fat_kg)

    def breaks(self, deficit_kcal: float, weeks: int) -> str | None:
        """The rule of the whole path that this deficit would break."""
        end = self.end(deficit_kcal, weeks)
        if end.fat_kg / end.weight_kg < rails.stricter(table.FAT_FRACTION_FLOOR, self.subject.sex):
            return table.BODY_FAT
        if self.loss_share(end, weeks) > table.LOSS_LIMIT:
            return table.LOSS
        return None

    def loss_share(self, end: BodyState, weeks: int) -> float:
        """Tissue lost a week as a share of the starting body mass."""
        return float((self.state.tissue_kg - end.tissue_kg) / weeks / self.subject.weight_kg)

    def largest_deficit(self, weeks: int, limits: list[rails.DeficitLimit]) -> rails.DeficitLimit:
        """The largest deficit for this length inside every rail, and the rule that binds."""
        strictest = limits[0]
        rule = self.breaks(strictest.deficit_kcal, weeks) if strictest.deficit_kcal > 0 else None
        if rule is None:
            return strictest
        low, high = 0.0, strictest.deficit_kcal
        while high - low > 5.0:
            middle = 0.5 * (low + high)
            broken = self.breaks(middle, weeks)
            if broken is None:
                low = middle
            else:
                rule, high = broken, middle
        why = "end body fat" if rule == table.BODY_FAT else f"tissue loss of {table.LOSS_LIMIT:.0%} a week"
        return rails.DeficitLimit(rule, low, why)

    def deficit_for(self, fat_loss_kg: float, weeks: int) -> float:
        """The deficit that loses this fat in these weeks, whatever the rails say [kcal/d]."""
        highest = 0.9 * self.subject.maintenance_kcal
        return crossing(lambda deficit: self.fat_loss(deficit, weeks) - fat_loss_kg, 0.0, highest)

    def weeks_for(self, fat_loss_kg: float, deficit_kcal: float, at_most: int) -> int | None:
        """The fewest weeks that lose this fat at this deficit, if at most ``at_most`` do."""
        path = self.path(deficit_kcal, at_most)
        for week in range(LEAST_WEEKS, at_most + 1):
            if self.state.fat_kg - path[week - 1].fat_kg >= fat_loss_kg:
                return week
        return None


def plan_mini_cut(
    subject: Subject,
    body: Body,
    start: date,
    aim: MiniCutAim,
    then: ReturnAim,
    *,
    cuts_last_12_months: int | None,
    weeks_since_last_cut: int | None,
    sources: frozenset[UncertaintySource],
) -> Plan:
    """Plan the mini-cut and what follows.

    Raises: ``guard_rails.Refused`` where a rule forbids any deficit for this person.
    """
    actions = rails.check_person(subject)
    actions += rails.warn_history(cuts_last_12_months, weeks_since_last_cut)
    protein = aim.protein_g_per_kg if aim.protein_g_per_kg is not None else PROTEIN_DEFAULT_DEFICIT
    if protein < PROTEIN_FLOOR_DEFICIT:
        message = say("CAPPED_PROTEIN", limit=PROTEIN_FLOOR_DEFICIT)
        actions.append(RailAction(table.PROTEIN, "capped", PROTEIN_FLOOR_DEFICIT, protein, "g/kg/d", message))
        protein = PROTEIN_FLOOR_DEFICIT
    screening = subject.screening
    if screening is not None and Condition.KIDNEY_DISEASE in screening.conditions:
        actions.append(RailAction(table.PROTEIN, "warned", None, protein, "g/kg/d", say("WARNED_KIDNEY_PROTEIN")))

    limits = rails.deficit_limits(subject)
    if cuts_last_12_months is None:
        history = rails.DeficitLimit(table.CUT_HISTORY, table.DEFAULT_DEFICIT, "cut history unknown")
        limits = sorted([*limits, history], key=lambda limit: limit.deficit_kcal)
    cut = _Cut(subject, body, aim, protein)
    solved = _solve(cut, aim, limits)
    actions += solved.actions
    if solved.nearest is not None:
        reasons = [say("INFEASIBLE"), *solved.reasons]
        return Plan(solved.nearest, None, [], None, actions, reasons, 0)
    return _lay_out(cut, body, start, solved, then, sources, actions)


class _Solved(NamedTuple):
    nearest: Nearest | None
    deficit_kcal: float
    weeks: int
    reasons: list[Message]
    actions: list[RailAction]


def _solve(cut: _Cut, aim: MiniCutAim, limits: list[rails.DeficitLimit]) -> _Solved:
    """Deficit and weeks for the aim, or the nearest that is safe."""
    fat, asked = aim.fat_loss_kg, aim.deficit_kcal
    length = aim.weeks if aim.weeks is not None else (MOST_WEEKS if fat is not None else DEFAULT_WEEKS)
    largest = cut.largest_deficit(length, limits)
    if largest.deficit_kcal < LEAST_DEFICIT:
        action = rails.capped(largest, asked if asked is not None else table.DEFAULT_DEFICIT)
        why = say("NO_SAFE_DEFICIT", rule=largest.rule, why=largest.why)
        refused = RailAction(action.id, "refused", action.limit, action.observed, action.unit, why)
        return _Solved(Nearest(None, None, None), 0.0, 0, [why], [refused])

    wanted = asked if asked is not None else table.DEFAULT_DEFICIT
    if fat is not None and aim.weeks is not None and asked is None:
        wanted = cut.deficit_for(fat, aim.weeks)
    elif fat is not None and asked is None and cut.weeks_for(fat, wanted, MOST_WEEKS) is None:
        # More fat than six weeks at the usual deficit lose: as brisk as is usual, but no brisker.
        wanted = min(table.BRISK_DEFICIT, cut.deficit_for(fat, MOST_WEEKS))
    actions = [_capped_action(largest, wanted)] if wanted > largest.deficit_kcal else []
    deficit = min(wanted, largest.deficit_kcal)

    if fat is None:
        weeks = length
        reasons = [say("WEEKS_DEFAULT", weeks=weeks)] if aim.weeks is None else []
        reasons.append(say("FAT_SOLVED", fat_kg=cut.fat_loss(deficit, weeks), weeks=weeks))
    else:
        # Half of what 10 kcal/d of rounding loses is not a miss.
        tolerance = 0.5 * 10 * 7 * length / STATIC_KCAL_PER_KG
        found = aim.weeks or cut.weeks_for(fat - tolerance, deficit, MOST_WEEKS)
        if found is None or cut.fat_loss(deficit, found) < fat - 2 * tolerance:
            nearest = Nearest(
                cut.fat_loss(largest.deficit_kcal, length),
                cut.weeks_for(fat, largest.deficit_kcal, _SEARCH_WEEKS),
                largest.deficit_kcal,
            )
            return _Solved(nearest, 0.0, 0, [], actions)
        weeks = found
        if aim.weeks is not None:
            reasons = [say("DEFICIT_SOLVED", deficit_kcal=deficit, fat_kg=fat, weeks=weeks)]
        else:
            reasons = [say("WEEKS_SOLVED", weeks=weeks, fat_kg=fat)]
    if asked is not None and not actions:
        reasons.append(say("DEFICIT_ASKED", deficit_kcal=deficit))
    elif wanted == table.DEFAULT_DEFICIT and not actions:
        reasons.append(say("DEFICIT_DEFAULT", deficit_kcal=deficit))
    return _Solved(None, deficit, weeks, reasons, actions)


def _capped_action(limit: rails.DeficitLimit, asked_kcal: float) -> RailAction:
    if limit.rule == table.CUT_HISTORY:
        message = say("CAPPED_HISTORY_UNKNOWN", deficit_kcal=limit.deficit_kcal)
        return RailAction(limit.rule, "capped", limit.deficit_kcal, asked_kcal, "kcal/d", message)
    return rails.capped(limit, asked_kcal)


def _lay_out(
    cut: _Cut,
    body: Body,
    start: date,
    solved: _Solved,
    then: ReturnAim,
    sources: frozenset[UncertaintySource],
    actions: list[RailAction],
) -> Plan:
    """Weeks, intakes and the forecast of cut, maintenance and gain."""
    subject, model = cut.subject, cut.model
    weight = subject.weight_kg
    rows: list[list[Macronutrients]] = [
        [m for m, n in cut.stretches(solved.deficit_kcal, solved.weeks) for _ in range(n)]
    ]
    state = cut.path(solved.deficit_kcal, solved.weeks)[-1]
    end_of_cut = state
    preference = cut.aim.preference

    maintenance_after = current_maintenance_kcal(model, end_of_cut)
    rows.append([])
    for _ in range(then.maintenance_weeks):
        macros = split_intake(current_maintenance_kcal(model, state), weight, PROTEIN_DEFAULT_GAIN, preference)
        rows[1].append(macros)
        state = walk(model, state, as_diet(macros, weight), (7.0,))[-1]

    surplus, rail = _surplus(subject, model, state, then, preference)
    actions = [*actions, *rail]
    gain_rows, _ = _gain(subject, model, state, surplus, then.gain_weeks, preference)
    rows.append(gain_rows)

    stretches: list[Stretch] = []
    for macros in (m for phase in rows for m in phase):
        diet = as_diet(macros, weight)
        if stretches and stretches[-1].diet == diet:
            stretches[-1] = Stretch(diet, (*stretches[-1].lengths, 7.0))
        else:
            stretches.append(Stretch(diet, (7.0,)))
    path = forecast(body, stretches, sources=sources)

    phases, point, day = [], 0, start
    kinds = ("mini_cut", "maintenance", "gain")
    for kind, macros_of_weeks in zip(kinds, rows, strict=True):
        if not macros_of_weeks:
            continue
        weeks = []
        for i, macros in enumerate(macros_of_weeks):
            weeks.append(PlannedWeek(day + timedelta(days=7 * i), macros, point + 1 + i))
        phases.append(PlannedPhase(kind, point, weeks, [], [], [], []))
        point += len(weeks)
        day += timedelta(days=7 * len(weeks))

    loss_share = cut.loss_share(end_of_cut, solved.weeks)
    end_fraction = float(end_of_cut.fat_kg / end_of_cut.weight_kg)
    full = rows[0][-1]
    cut_warnings = rails.warn_deficit(subject, full.intake_kcal, loss_share, end_fraction)
    cut_warnings += rails.warn_macronutrients(full.intake_kcal, FAT_KCAL_PER_G * full.fat_g, full.carbohydrate_g)
    actions += cut_warnings
    explain_cut(
        phases[0],
        path,
        reasons=solved.reasons,
        protein_g_per_kg=cut.protein,
        easing_in_weeks=cut.aim.easing_in_weeks,
        training_dose=cut.model.training_dose,
        fat_loss_kg=cut.aim.fat_loss_kg,
    )
    explain_maintenance(phases[1], path, subject.maintenance_kcal - maintenance_after, maintenance_after)
    if len(phases) == 3:
        explain_gain(phases[2], path, surplus, subject.sex, then.fat_ceiling)
    return Plan(None, solved.deficit_kcal, phases, path, actions, solved.reasons, solved.weeks)


def _surplus(
    subject: Subject, model: BodyModel, state: BodyState, then: ReturnAim, preference: CarbohydratePreference
) -> tuple[float, list[RailAction]]:
    """The surplus asked for or usual, held under the ceiling on the rate of gain [kcal/d]."""
    surplus = then.surplus_kcal if then.surplus_kcal is not None else SURPLUS_DEFAULT[subject.training_status]
    if not then.gain_weeks:
        return surplus, []
    limit = table.GAIN_RATE_LIMIT[subject.training_status]

    def rate(kcal: float) -> float:
        end = _gain(subject, model, state, kcal, then.gain_weeks, preference)[1]
        return float((end.tissue_kg - state.tissue_kg) / then.gain_weeks / state.weight_kg)

    found = rate(surplus)
    if found > limit:
        # A step under the crossing keeps the rounded intakes under the ceiling too.
        low = max(0.0, crossing(lambda kcal: rate(kcal) - limit, 0.0, surplus) - 10.0)
        message = say("CAPPED_GAIN_RATE", surplus_kcal=low, percent=100 * limit)
        return low, [RailAction(table.GAIN_RATE, "capped", limit, found, "of body mass a week", message)]
    warn_at = table.GAIN_RATE_WARN_SHARE * limit
    if found > warn_at:
        message = say("WARNED_GAIN_RATE", percent=100 * found)
        return surplus, [RailAction(table.GAIN_RATE, "warned", warn_at, found, "of body mass a week", message)]
    return surplus, []


def _gain(
    subject: Subject,
    model: BodyModel,
    state: BodyState,
    surplus_kcal: float,
    weeks: int,
    preference: CarbohydratePreference,
) -> tuple[list[Macronutrients], BodyState]:
    """Weekly intakes of a gain, set anew every few weeks, and the body at its end."""
    rows: list[Macronutrients] = []
    while len(rows) < weeks:
        n = min(GAIN_RESET_WEEKS, weeks - len(rows))
        # Rounded down to 10 kcal, so that rounding never lifts the gain past its ceiling.
        intake = int(current_maintenance_kcal(model, state) + surplus_kcal) // 10 * 10
        macros = split_intake(intake, subject.weight_kg, PROTEIN_DEFAULT_GAIN, preference)
        rows += [macros] * n
        state = advance(model, state, as_diet(macros, subject.weight_kg), 7.0 * n, step_days=28.0)
    return rows, state
