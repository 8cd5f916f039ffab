"""A fat-loss phase: its path for any deficit and length, and the deficit, length or goal solved inside the rails."""

import math
from collections.abc import Callable
from enum import StrEnum
from typing import NamedTuple

import msgspec

from . import guard_rails as rails
from . import rail_table as table
from .energy_balance import (
    BASELINE_GLYCOGEN_KG,
    FAT_SUPPLY_LIMIT,
    BodyModel,
    BodyState,
    advance,
    current_maintenance_kcal,
    walk,
)
from .forecast import Body, start_body
from .guard_rails import DeficitLimit, RailAction, Subject
from .macronutrients import CarbohydratePreference, Macronutrients, split_intake
from .message import Message, say
from .phase_defaults import (
    CUT_RESET_WEEKS,
    CUT_WEEKS_MOST,
    DEFAULT_WEEKS,
    EASING_SHARE,
    LEAST_DEFICIT,
    LEAST_WEEKS,
    MOST_WEEKS,
    STATIC_KCAL_PER_KG,
)
from .phases import Element, as_diet
from .targets import crossing

# Steps of some weeks end within a few grams of weekly ones, near enough to look for a goal.
_SEARCH_STEP_DAYS = 21.0


class DeficitKind(StrEnum):
    """The two kinds of fat-loss phase: short and brisk with one fixed intake, or longer with intakes set anew."""

    MINI_CUT = "mini_cut"
    CUT = "cut"


class DeficitAim(msgspec.Struct, frozen=True, kw_only=True):
    """What is asked of a fat-loss phase. One goal at most; what is ``None`` is solved for or usual.

    ``weeks`` counts every week of the phase, easing in and breaks included; ``at_most_weeks`` bounds it where it is
    solved for. ``weeks_done`` were spent in a deficit before the start, in the same phase.
    """

    kind: DeficitKind = DeficitKind.MINI_CUT
    fat_loss_kg: float | None = None
    target_fat_fraction: float | None = None
    target_weight_kg: float | None = None
    weeks: int | None = None
    at_most_weeks: int | None = None
    deficit_kcal: float | None = None
    protein_g_per_kg: float | None = None
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED
    easing_in_weeks: int = 0
    break_every_weeks: int | None = None
    break_weeks: int = 1
    weeks_done: int = 0

    @property
    def has_goal(self) -> bool:
        """Whether something is to be reached, rather than a length to be spent."""
        return not (self.fat_loss_kg is None and self.target_fat_fraction is None and self.target_weight_kg is None)

    @property
    def most_weeks(self) -> int:
        """The longest phase of this kind that is still open."""
        most = MOST_WEEKS - self.weeks_done if self.kind is DeficitKind.MINI_CUT else CUT_WEEKS_MOST
        return most if self.at_most_weeks is None else min(most, self.at_most_weeks)

    @property
    def least_weeks(self) -> int:
        """The shortest phase of this kind, or what may be left of one under way."""
        usual = LEAST_WEEKS if self.kind is DeficitKind.MINI_CUT else MOST_WEEKS + 1
        return max(1 if self.weeks_done else usual, self.easing_in_weeks + 1)


class Week(NamedTuple):
    """A planned week: what it is for, and what to eat each day."""

    element: Element
    intake: Macronutrients


class Nearest(NamedTuple):
    """The nearest safe value on each axis, the others kept as asked."""

    fat_loss_kg: float | None
    weeks: int | None
    deficit_kcal: float | None


class Solved(NamedTuple):
    """A phase that does what was asked, or the nearest that is safe."""

    nearest: Nearest | None
    deficit_kcal: float
    weeks: int
    reasons: list[Message]
    actions: list[RailAction]


class DeficitPhase:
    """A fat-loss phase being solved for one body."""

    def __init__(self, subject: Subject, body: Body, aim: DeficitAim, protein_g_per_kg: float) -> None:
        self.subject = subject
        self.aim = aim
        self.protein = protein_g_per_kg
        self.model, self.state = start_body(body)
        self._set_goal()

    def starting(self, state: BodyState, subject: Subject) -> None:
        """Start from a later state of the same body (after a pause)."""
        self.state, self.subject = state, subject
        self._set_goal()

    # --- the goal ---------------------------------------------------------------------------------------------

    def _set_goal(self) -> None:
        aim = self.aim
        if aim.fat_loss_kg is not None:
            self._goal = float(self.state.fat_kg) - aim.fat_loss_kg
        elif aim.target_fat_fraction is not None:
            self._goal = aim.target_fat_fraction
        elif aim.target_weight_kg is not None:
            self._goal = aim.target_weight_kg
        else:
            self._goal = -math.inf

    def left(self, state: BodyState) -> float:
        """How far ``state`` is above the goal, in the goal's own unit. Weight and fraction are of the settled body."""
        if self.aim.target_fat_fraction is not None:
            return float(state.fat_kg / (state.tissue_kg + BASELINE_GLYCOGEN_KG)) - self._goal
        if self.aim.target_weight_kg is not None:
            return float(state.tissue_kg) + BASELINE_GLYCOGEN_KG - self._goal
        return float(state.fat_kg) - self._goal

    def tolerance(self, weeks: int) -> float:
        """What 10 kcal/d of rounding is worth in the goal's unit."""
        kilograms = 10 * 7 * weeks / STATIC_KCAL_PER_KG
        return kilograms / self.subject.weight_kg if self.aim.target_fat_fraction is not None else kilograms

    # --- the path ---------------------------------------------------------------------------------------------

    def elements(self, weeks: int) -> list[Element]:
        """What each week is for."""
        elements = [Element.EASING_IN] * min(self.aim.easing_in_weeks, weeks)
        since_break = len(elements)
        while len(elements) < weeks:
            every = self.aim.break_every_weeks
            # A break at the very end would only be the maintenance that follows anyway.
            if every is not None and since_break >= every and weeks - len(elements) > self.aim.break_weeks:
                elements += [Element.BREAK] * self.aim.break_weeks
                since_break = 0
            else:
                elements.append(Element.DEFICIT)
                since_break += 1
        return elements

    def run(self, deficit_kcal: float, weeks: int, *, weekly: bool = True) -> tuple[list[Week], list[BodyState]]:
        """The weeks and the states at their ends, or (``weekly=False``) at the ends of longer steps, for searching."""
        rows: list[Week] = []
        states: list[BodyState] = []
        state = self.state
        elements = self.elements(weeks)
        at = 0
        while at < weeks:
            element = elements[at]
            n = 1
            most = weeks if self.aim.kind is DeficitKind.MINI_CUT else CUT_RESET_WEEKS
            while at + n < weeks and n < most and elements[at + n] is element:
                n += 1
            macros = self._intake(element, deficit_kcal, weeks, state)
            diet = as_diet(macros, self.subject.weight_kg)
            rows += [Week(element, macros)] * n
            if weekly:
                states += walk(self.model, state, diet, (7.0,) * n)
            else:
                states.append(advance(self.model, state, diet, 7.0 * n, step_days=_SEARCH_STEP_DAYS))
            state = states[-1]
            at += n
        return rows, states

    def _intake(self, element: Element, deficit_kcal: float, weeks: int, state: BodyState) -> Macronutrients:
        subject = self.subject
        if element is Element.BREAK:
            maintenance = float(current_maintenance_kcal(self.model, state))
            return split_intake(maintenance, subject.weight_kg, self.protein, self.aim.preference)
        share = EASING_SHARE if element is Element.EASING_IN else 1.0
        maintenance = subject.maintenance_kcal
        deficit = share * deficit_kcal
        if self.aim.kind is DeficitKind.CUT and state is not self.state:
            now = subject_at(subject, self.model, state)
            maintenance = now.maintenance_kcal
            deficit = min(deficit, max(0.0, rails.deficit_limits(now, weeks)[0].deficit_kcal))
        # Rounded up to 10 kcal, so that rounding never deepens a deficit past a rail.
        intake = math.ceil((maintenance - deficit) / 10.0 - 1e-9) * 10
        return split_intake(intake, subject.weight_kg, self.protein, self.aim.preference)

    def end(self, deficit_kcal: float, weeks: int) -> BodyState:
        """The body at the end, in long steps."""
        return self.run(deficit_kcal, weeks, weekly=False)[1][-1]

    def loss_share(self, end: BodyState, weeks: int) -> float:
        """Tissue lost a week of deficit, as a share of the starting body mass."""
        spent = sum(element is not Element.BREAK for element in self.elements(weeks))
        return float((self.state.tissue_kg - end.tissue_kg) / spent / self.subject.weight_kg)

    # --- the rails on the path --------------------------------------------------------------------------------

    def broken_rule(self, deficit_kcal: float, weeks: int) -> str | None:
        """The rule of the whole path that this deficit would break."""
        rows, states = self.run(deficit_kcal, weeks)
        end = states[-1]
        floor = rails.stricter(table.FAT_FRACTION_FLOOR, self.subject.sex)
        if end.fat_kg / end.weight_kg < floor:
            return table.BODY_FAT
        if self.loss_share(end, weeks) > table.LOSS_LIMIT:
            return table.LOSS
        drawn = float(current_maintenance_kcal(self.model, end)) - rows[-1].intake.intake_kcal
        return table.FAT_SUPPLY if drawn > FAT_SUPPLY_LIMIT * end.fat_kg else None

    def largest_deficit(self, weeks: int, limits: list[DeficitLimit]) -> DeficitLimit:
        """The largest deficit for this length inside every rail, and the rule that binds."""
        strictest = limits[0]
        rule = self.broken_rule(strictest.deficit_kcal, weeks) if strictest.deficit_kcal > 0 else None
        if rule is None:
            return strictest
        low, high = 0.0, strictest.deficit_kcal
        while high - low > 5.0:
            middle = 0.5 * (low + high)
            broken = self.broken_rule(middle, weeks)
            if broken is None:
                low = middle
            else:
                rule, high = broken, middle
        why = {
            table.BODY_FAT: "end body fat",
            table.LOSS: f"tissue loss of {table.LOSS_LIMIT:.0%} a week",
            table.FAT_SUPPLY: "what fat mass can release",
        }[rule]
        return DeficitLimit(rule, low, why)

    # --- solving ----------------------------------------------------------------------------------------------

    def deficit_for_goal(self, weeks: int) -> float:
        """The deficit that reaches the goal in these weeks, whatever the rails on the whole path say [kcal/d]."""
        highest = 0.9 * self.subject.maintenance_kcal
        return crossing(lambda deficit: -self.left(self.end(deficit, weeks)), 0.0, highest)

    def weeks_for_goal(self, deficit_kcal: float, at_most: int) -> int | None:
        """The fewest weeks that reach the goal at this deficit, if at most ``at_most`` do."""
        states = self.run(deficit_kcal, at_most)[1]
        within = 0.5 * self.tolerance(at_most)
        for week in range(self.aim.least_weeks, at_most + 1):
            if self.left(states[week - 1]) <= within:
                return week
        return None


def subject_at(subject: Subject, model: BodyModel, state: BodyState) -> Subject:
    """What the rails read of the same person at a later state."""
    return subject._replace(
        weight_kg=float(state.weight_kg),
        fat_kg=float(state.fat_kg),
        maintenance_kcal=float(current_maintenance_kcal(model, state)),
    )


def limits_for(subject: Subject, weeks: int, *, is_history_known: bool) -> list[DeficitLimit]:
    """Every limit on the deficit at the start of a phase of ``weeks``, strictest first."""
    limits = rails.deficit_limits(subject, weeks)
    if not is_history_known:
        limits.append(DeficitLimit(table.CUT_HISTORY, table.DEFAULT_DEFICIT, "cut history unknown"))
        limits.sort(key=lambda limit: limit.deficit_kcal)
    return limits


def solve(phase: DeficitPhase, *, is_history_known: bool) -> Solved:
    """Deficit and weeks for the aim, or the nearest that is safe."""
    aim = phase.aim
    asked = aim.deficit_kcal
    already = phase.tolerance(LEAST_WEEKS)
    if aim.has_goal and phase.left(phase.state) <= already:
        return Solved(Nearest(0.0, 0, 0.0), 0.0, 0, [say("GOAL_ALREADY_MET")], [])
    if aim.most_weeks < aim.least_weeks:
        return Solved(Nearest(None, None, None), 0.0, 0, [say("PHASE_USED_UP", weeks=aim.weeks_done)], [])

    def largest(weeks: int) -> DeficitLimit:
        limits = limits_for(phase.subject, weeks + aim.weeks_done, is_history_known=is_history_known)
        return phase.largest_deficit(weeks, limits)

    usual_weeks = DEFAULT_WEEKS if aim.kind is DeficitKind.MINI_CUT else aim.least_weeks + 1
    # Limits are first taken for the longest phase that is open, where weeks are solved for.
    weeks = (
        aim.weeks if aim.weeks is not None else (aim.most_weeks if aim.has_goal else min(usual_weeks, aim.most_weeks))
    )
    wanted = asked if asked is not None else table.DEFAULT_DEFICIT
    found: int | None = weeks
    limit = largest(weeks)
    if limit.deficit_kcal < LEAST_DEFICIT:
        return _no_room(limit, wanted)
    if aim.has_goal and aim.weeks is not None:
        if asked is None:
            wanted = phase.deficit_for_goal(weeks)
    elif aim.has_goal:
        found = phase.weeks_for_goal(min(wanted, limit.deficit_kcal), aim.most_weeks)
        if found is None and asked is None:
            # More than the longest phase at the usual deficit: as brisk as is usual, but no brisker.
            wanted = min(table.BRISK_DEFICIT, phase.deficit_for_goal(aim.most_weeks))
            found = phase.weeks_for_goal(min(wanted, limit.deficit_kcal), aim.most_weeks)
        for _ in range(4):
            # A shorter phase is allowed another deficit, which may take another number of weeks.
            if found is None or found == weeks:
                break
            weeks = found
            limit = largest(weeks)
            again = phase.weeks_for_goal(min(wanted, limit.deficit_kcal), aim.most_weeks)
            found = None if again is None else max(again, weeks)
    deficit = min(wanted, limit.deficit_kcal)
    actions = [_capped(limit, wanted)] if wanted > limit.deficit_kcal + 1.0 else []
    if found is None or (aim.has_goal and phase.left(phase.end(deficit, found)) > phase.tolerance(found)):
        return Solved(_nearest(phase, largest), 0.0, 0, [], actions)
    reasons = _reasons(phase, deficit, found)
    if not actions and asked is not None:
        reasons.append(say("DEFICIT_ASKED", deficit_kcal=deficit))
    elif not actions and wanted == table.DEFAULT_DEFICIT:
        reasons.append(say("DEFICIT_DEFAULT", deficit_kcal=deficit))
    return Solved(None, deficit, found, reasons, actions)


def _reasons(phase: DeficitPhase, deficit_kcal: float, weeks: int) -> list[Message]:
    aim = phase.aim
    lost = float(phase.state.fat_kg - phase.end(deficit_kcal, weeks).fat_kg)
    if not aim.has_goal:
        reasons = [say("WEEKS_DEFAULT", weeks=weeks)] if aim.weeks is None else []
        return [*reasons, say("FAT_SOLVED", fat_kg=lost, weeks=weeks)]
    if aim.weeks is not None:
        return [say("DEFICIT_SOLVED", deficit_kcal=deficit_kcal, fat_kg=lost, weeks=weeks)]
    return [say("WEEKS_SOLVED", weeks=weeks, fat_kg=lost)]


def _no_room(limit: DeficitLimit, wanted_kcal: float) -> Solved:
    why = say("NO_SAFE_DEFICIT", rule=limit.rule, why=limit.why)
    action = RailAction(limit.rule, "refused", max(0.0, limit.deficit_kcal), wanted_kcal, "kcal/d", why)
    return Solved(Nearest(None, None, None), 0.0, 0, [why], [action])


def _capped(limit: DeficitLimit, asked_kcal: float) -> RailAction:
    if limit.rule == table.CUT_HISTORY:
        message = say("CAPPED_HISTORY_UNKNOWN", deficit_kcal=limit.deficit_kcal)
        return RailAction(limit.rule, "capped", limit.deficit_kcal, asked_kcal, "kcal/d", message)
    return rails.capped(limit, asked_kcal)


def _nearest(phase: DeficitPhase, largest: Callable[[int], DeficitLimit]) -> Nearest:
    """The nearest on each axis, such that asking for it is feasible."""
    aim = phase.aim
    length = aim.weeks if aim.weeks is not None else aim.most_weeks
    limit = largest(length).deficit_kcal
    ceiling = math.inf if aim.deficit_kcal is None else aim.deficit_kcal
    # Asked without weeks, a goal is planned at the usual deficit or briskly; with weeks, at what the rails allow.
    usable = limit if aim.weeks is not None else min(limit, table.BRISK_DEFICIT)
    lost = float(phase.state.fat_kg - phase.end(min(usable, ceiling), length).fat_kg)
    within = 10 * 7 * length / STATIC_KCAL_PER_KG
    weeks = None
    for candidate in (*range(aim.least_weeks, MOST_WEEKS + 1), *range(MOST_WEEKS + 2, CUT_WEEKS_MOST + 1, 2)):
        if candidate < length or (candidate > aim.most_weeks and aim.kind is DeficitKind.CUT):
            continue
        allowed = min(largest(candidate).deficit_kcal, ceiling)
        if phase.left(phase.end(allowed, candidate)) <= phase.tolerance(candidate) * 0.5:
            weeks = candidate
            break
    return Nearest(max(0.0, math.floor(100 * (lost - within)) / 100), weeks, math.floor(limit))
