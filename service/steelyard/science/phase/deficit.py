"""A fat-loss phase: its weeks and body for any deficit and length, and what the rails on the whole path allow."""

import math
from collections.abc import Iterator
from copy import copy
from functools import partial
from typing import NamedTuple

import msgspec

from ..body import (
    BASELINE_GLYCOGEN_KG,
    OF_ANYBODY,
    Body,
    BodyModel,
    BodyState,
    Diet,
    Stretch,
    advance,
    crossing,
    path_kept,
    start_body,
    usual_days,
    usual_share,
    walk,
)
from ..rails import (
    BMI,
    BMI_FLOOR,
    BMI_LEEWAY,
    BMI_LEEWAY_CLOSE,
    BMI_WARN,
    HISTORY_LIMIT,
    LOSS,
    LOSS_LIMIT,
    MEASURE_LIMIT,
    PROTEIN_DEFAULT_GAIN,
    DeficitLimit,
    Macronutrients,
    Subject,
    broken_on_days,
    deficit_floors,
    deficit_limits,
    held_kcal,
    held_through,
    path_limit,
    resting_limit,
    split_for,
    usual_protein,
)
from .aims import DeficitAim, DeficitKind
from .defaults import (
    CUT_FIRST_RESET_WEEKS,
    CUT_RESET_WEEKS,
    EASING_SHARE,
    LEAST_DEFICIT,
    LEAST_WEEKS,
    STATIC_KCAL_PER_KG,
)
from .history import NO_DEFICIT_BEFORE, DeficitBefore
from .sizes import smaller_by
from .weeks import Element, Lived, Week, as_diet, live, subject_at, subjects_at

# An intake that is so much over what was wanted was raised: more than rounding up makes of it.
_RAISED_KCAL = 15.0
# Steps of some weeks end within a few grams of weekly ones, near enough to look for a goal.
_SEARCH_STEP_DAYS = 21.0
# Weeks at maintenance take no more than this of the body mass index, and after so many they take nothing more.
_BMI_NEAR, _WEEKS_AFTER = 0.2, 3


class _Path(NamedTuple):
    """The weeks of one deficit, and the body at the end of each: followed in full, and as far as deficits are kept."""

    elements: list[Element]
    rows: list[Week]
    states: list[BodyState]
    likely: list[BodyState]


class DeficitPhase:
    """A fat-loss phase being solved for one body."""

    def __init__(
        self,
        subject: Subject,
        body: Body,
        aim: DeficitAim,
        protein_g_per_kg: float,
        start: tuple[BodyModel, BodyState] | None = None,
        before: DeficitBefore = NO_DEFICIT_BEFORE,
    ) -> None:
        """``start`` is the calibrated ``body``, where a caller has it; ``before``: the deficit before this phase."""
        self.aim = aim
        self._least_protein_g_per_kg = protein_g_per_kg
        self._protein_g = protein_g_per_kg * subject.protein_kg
        self._before = DeficitBefore(aim.weeks_done) if aim.weeks_done else before
        self._is_close = not aim.weeks_done and before.weeks > 0.0
        self._elements: dict[int, list[Element]] = {}  # by the length of the phase
        self.kept, self.eaten_kcal = body.kept, body.eaten_kcal
        self.apart = OF_ANYBODY if body.apart is None else body.apart
        self.model, state = start_body(body) if start is None else start
        self._start(state, subject)

    def asked(self, aim: DeficitAim) -> "DeficitPhase":
        """The same phase with another size or length asked of it: what was walked for one is known to both."""
        other = copy(self)
        other.aim = aim
        return other

    def as_mini_cut(self) -> "DeficitPhase":
        """The same as a mini-cut of as many weeks as it takes: without breaks, at one intake throughout."""
        other = self.asked(
            msgspec.structs.replace(self.aim, kind=DeficitKind.MINI_CUT, break_every_weeks=None, break_weeks=1)
        )
        other._elements, other._paths = {}, {}
        return other

    def starting(self, state: BodyState, subject: Subject, weeks_held: int = 0) -> "DeficitPhase":
        """The same phase from a later state of its body, after some weeks at maintenance."""
        other = copy(self)
        other._start(state, subject, weeks_held)
        return other

    def _start(self, state: BodyState, subject: Subject, weeks_held: int = 0) -> None:
        self.state, self.subject = state, subject
        # No less in all than for the body whose reference mass is told.
        self.protein = max(self._least_protein_g_per_kg, self._protein_g / subject.protein_kg)
        self._weeks_counted = self._before.counted(weeks_held)
        self._paths: dict[float, _Path] = {}
        self._limits: dict[float, list[DeficitLimit]] = {}
        self._set_goal()

    def usually_followed(self, weeks: int) -> tuple[float, int]:
        """The share that people, or this person, really follow of a phase of ``weeks``, and the weeks in which they get
        as far as it does."""
        breaks = sum(element is Element.BREAK for element in self.elements(weeks))
        since, days = 7.0 * self.counted(0), 7.0 * (weeks - breaks)
        share = float(usual_share(since, since + days)) + self.apart.mean
        return share, breaks + math.ceil(usual_days(days, since, self.apart.mean) / 7.0 - 1e-9)

    def counted(self, weeks: int) -> float:
        """Weeks of a phase of ``weeks`` with those of a deficit before it that count as of the same."""
        return weeks + self._weeks_counted

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

    @property
    def is_met(self) -> bool:
        """Whether the body there is has reached the goal; of body fat also by what it is of the weight as read."""
        if not self.aim.has_goal:
            return False
        wanted = self.aim.target_fat_fraction
        is_met_as_read = wanted is not None and self.subject.fat_fraction <= wanted
        return is_met_as_read or self.left(self.state) <= self.tolerance(LEAST_WEEKS)

    def tolerance(self, weeks: int) -> float:
        """What 10 kcal/d of rounding is worth in the goal's unit."""
        kilograms = kg_of_rounding(weeks)
        return kilograms / self.subject.weight_kg if self.aim.target_fat_fraction is not None else kilograms

    # --- the path ---------------------------------------------------------------------------------------------

    def elements(self, weeks: int) -> list[Element]:
        """What each week is for."""
        found = self._elements.get(weeks)
        if found is None:
            found = self._elements[weeks] = self._laid_out(weeks)
        return found

    def _laid_out(self, weeks: int) -> list[Element]:
        elements = [Element.EASING_IN] * min(self.aim.easing_in_weeks, weeks)
        since_break, every = len(elements), self.aim.break_every_weeks
        if every is None:
            return elements + [Element.DEFICIT] * (weeks - since_break)
        while len(elements) < weeks:
            # A break at the very end would only be the maintenance that follows anyway.
            if since_break >= every and weeks - len(elements) > self.aim.break_weeks:
                elements += [Element.BREAK] * self.aim.break_weeks
                since_break = 0
            else:
                elements.append(Element.DEFICIT)
                since_break += 1
        return elements

    def run(self, deficit_kcal: float, weeks: int) -> tuple[list[Week], list[BodyState]]:
        """The weeks and the states at their ends."""
        elements = self.elements(weeks)
        known = self._paths.get(deficit_kcal)
        # The first weeks of a longer phase are those of a shorter one, breaks near its end apart.
        if known is None or known.elements[:weeks] != elements:
            rows: list[Week] = []
            states: list[BodyState] = []
            # What is set anew is set for the body that there likely is: it needs no less than the other.
            likely = states if self.kept is None else []
            for row, diet, n in self._blocks(elements, deficit_kcal, likely):
                rows += [row] * n
                if self.kept is not None:
                    there = likely[-1] if likely else self.state
                    likely += path_kept(self.model, there, [Stretch(diet, (7.0,) * n)], self.kept)[1:]
                states += walk(self.model, states[-1] if states else self.state, diet, (7.0,) * n)
            known = self._paths[deficit_kcal] = _Path(elements, rows, states, likely)
        return known.rows[:weeks], known.states[:weeks]

    def _blocks(
        self, elements: list[Element], deficit_kcal: float, states: list[BodyState]
    ) -> Iterator[tuple[Week, Diet, int]]:
        """Each run of weeks on one intake, with its length; ``states`` must have grown before the next is asked for."""
        fed_kg = self.subject.protein_kg
        at, weeks = 0, len(elements)
        is_cut = self.aim.kind is DeficitKind.CUT
        while at < weeks:
            # Maintenance of a break is set anew each week, as adaptation fades.
            n, most = 1, weeks
            if elements[at] is Element.BREAK:
                most = 1
            elif is_cut:
                most = CUT_RESET_WEEKS if at else CUT_FIRST_RESET_WEEKS
            while at + n < weeks and n < most and elements[at + n] is elements[at]:
                n += 1
            macros = self._intake(elements[at], deficit_kcal, weeks, states[-1] if states else None)
            yield Week(elements[at], macros, fed_kg), as_diet(macros, fed_kg), n
            at += n

    def _intake(self, element: Element, deficit_kcal: float, weeks: int, state: BodyState | None) -> Macronutrients:
        """What to eat in a block of weeks that begins at ``state`` (``None``: the start of the phase)."""
        subject = self.subject
        if element is Element.BREAK:
            before = state or self.state
            now = subject_at(subject, self.model, before)
            return held_through(now, now.maintenance_kcal, partial(self._break, before))[1].week.intake
        maintenance = subject.maintenance_kcal
        deficit = (EASING_SHARE if element is Element.EASING_IN else 1.0) * deficit_kcal
        if self.aim.kind is DeficitKind.CUT and state is not None:
            now = subject_at(subject, self.model, state)
            maintenance = now.maintenance_kcal
            deficit = min(deficit, max(0.0, self.limits(now, weeks)[0].deficit_kcal))
        # Rounded up to 10 kcal, so that rounding never deepens a deficit past a rail.
        intake = math.ceil((maintenance - deficit) / 10.0 - 1e-9) * 10
        macros = split_for(subject, intake, self.protein, self.aim.preference)
        if self.aim.kind is DeficitKind.MINI_CUT or deficit <= 0.0:
            return macros
        # The limits move with the body, up and down: they hold at the end of each of these weeks as well. Whoever is
        # told more adapts less and needs more, so that what is raised is looked at again.
        state = self.state if state is None else state
        lengths, floors = (7.0,) * min(weeks, CUT_RESET_WEEKS), deficit_floors(subject, self.counted(weeks))
        most = math.ceil(maintenance / 10.0) * 10
        while intake < most:
            ahead = walk(self.model, state, as_diet(macros, subject.protein_kg), lengths)
            least = max(floors.least_kcal(then)[0] for then in subjects_at(subject, self.model, ahead))
            if least <= intake:
                break
            intake = min(math.ceil(least / 10.0) * 10, most)
            macros = split_for(subject, intake, self.protein, self.aim.preference)
        return macros

    def _break(self, before: BodyState, kcal: float) -> Lived:
        macros = split_for(self.subject, kcal, self.protein, self.aim.preference)
        week = Week(Element.BREAK, macros, self.subject.protein_kg)
        return live(week, self.subject, self.model, partial(walk, self.model, before, lengths=(7.0,)))

    def end(self, deficit_kcal: float, weeks: int) -> BodyState:
        """The body at the end, in long steps where its weeks are not known already."""
        known = self._paths.get(deficit_kcal)
        elements = self.elements(weeks)
        if self.kept is not None or (known is not None and known.elements[:weeks] == elements):
            return self.run(deficit_kcal, weeks)[1][-1]
        states: list[BodyState] = []
        for _, diet, n in self._blocks(elements, deficit_kcal, states):
            before = states[-1] if states else self.state
            states.append(advance(self.model, before, diet, 7.0 * n, step_days=_SEARCH_STEP_DAYS))
        return states[-1]

    def likely(self, deficit_kcal: float, weeks: int) -> list[BodyState]:
        """The states at the ends of the weeks, as far as deficits are kept: those of ``run`` where all is followed."""
        self.run(deficit_kcal, weeks)
        return self._paths[deficit_kcal].likely[:weeks]

    def likely_end(self, deficit_kcal: float, weeks: int) -> BodyState:
        """The body at the end, as far as deficits are kept."""
        return self.end(deficit_kcal, weeks) if self.kept is None else self.likely(deficit_kcal, weeks)[-1]

    def goal_end(self, deficit_kcal: float, weeks: int) -> BodyState:
        """The end by which a goal is met: the likely one where weeks are sought for it, else all that is told."""
        return self.likely_end(deficit_kcal, weeks) if self.aim.weeks is None else self.end(deficit_kcal, weeks)

    @property
    def usual_weeks(self) -> int:
        """The length where neither a goal nor the weeks are asked for: longer for whom a smaller deficit is planned."""
        usual = self.aim.usual_weeks
        if self.kept is None or self.aim.deficit_kcal is not None:
            return usual
        return max(usual, min(self.aim.most_weeks, math.ceil(usual / smaller_by(self.kept))))

    def resets(self, deficit_kcal: float, weeks: int) -> list[tuple[Week, Subject]]:
        """The first week at each full deficit of a phase, and the body that it is set for."""
        rows, states = self.run(deficit_kcal, weeks)[0], self.likely(deficit_kcal, weeks)
        found = []
        for i, row in enumerate(rows):
            if row.element is Element.DEFICIT and (i == 0 or row is not rows[i - 1]):
                is_set_anew = i > 0 and self.aim.kind is DeficitKind.CUT
                now = subject_at(self.subject, self.model, states[i - 1]) if is_set_anew else self.subject
                found.append((row, now))
        return found

    def later_limits(self, deficit_kcal: float, weeks: int) -> list[DeficitLimit]:
        """What limits each intake of a cut that is set anew: for the body it is set for, or one that it leads to."""
        rows, states = self.run(deficit_kcal, weeks)
        floors, found = deficit_floors(self.subject, self.counted(weeks)), []
        for row, now in self.resets(deficit_kcal, weeks)[1:]:
            limit, told = self.limits(now, weeks)[0], now.maintenance_kcal - row.intake.intake_kcal
            if told < min(deficit_kcal, limit.deficit_kcal) - _RAISED_KCAL:
                end = states[max(i for i, other in enumerate(rows) if other is row)]
                limit = path_limit(floors.least_kcal(subject_at(self.subject, self.model, end))[1], told)
            found.append(limit)
        return found

    def loss_share(self, end: BodyState, weeks: int) -> float:
        """Tissue lost a week of deficit, as a share of the starting body mass."""
        spent = weeks - self.elements(weeks).count(Element.BREAK)
        return float((self.state.tissue_kg - end.tissue_kg) / spent / self.subject.weight_kg)

    # --- the rails on the path --------------------------------------------------------------------------------

    def broken_rule(self, deficit_kcal: float, weeks: int) -> str | None:
        """The rule of the whole path that this deficit would break."""
        rows, states = self.run(deficit_kcal, weeks)
        broken = self._broken_by(rows, states, weeks)
        if broken is None and self.kept is not None:
            # What is told is inside for the body that gets there, and for the one that likely does.
            broken = self._broken_by(rows, self.likely(deficit_kcal, weeks), weeks)
        return broken

    def _broken_by(self, rows: list[Week], states: list[BodyState], weeks: int) -> str | None:
        length = self.counted(weeks)
        # The worst comes last, and with what came before out of balance, first.
        floors = deficit_floors(self.subject, length)
        after = subjects_at(self.subject, self.model, states)
        fed = [math.inf if row.element is Element.BREAK else float(row.intake.intake_kcal) for row in rows]
        # A body is fed by the week that ends with it, and by the one that begins with it.
        eaten = [min(by) for by in zip(fed, [*fed[1:], math.inf], strict=True)]
        broken = broken_on_days(after[::-1], eaten[::-1], floors)
        if broken is not None:
            return broken
        leeway = BMI_LEEWAY_CLOSE if self._is_close else BMI_LEEWAY
        if self._least_bmi(states[-1], after[-1].bmi) < BMI_FLOOR + leeway:
            return BMI
        return LOSS if self.loss_share(states[-1], weeks) > LOSS_LIMIT else None

    def _least_bmi(self, end: BodyState, bmi: float) -> float:
        """``bmi``, that of the end, or that in the weeks at maintenance that follow, where it is less."""
        if bmi > BMI_FLOOR + _BMI_NEAR:
            return bmi
        now = subject_at(self.subject, self.model, end)
        protein = usual_protein(self.subject, PROTEIN_DEFAULT_GAIN)
        held = split_for(self.subject, held_kcal(now, now.maintenance_kcal), protein, self.aim.preference)
        after = walk(self.model, end, as_diet(held, self.subject.protein_kg), (7.0,) * _WEEKS_AFTER)
        return min(bmi, *(then.bmi for then in subjects_at(self.subject, self.model, after)))

    def limits(self, now: Subject, weeks: int) -> list[DeficitLimit]:
        """The largest deficit of each rule for the body ``now`` in a phase of ``weeks``, strictest first [kcal/d]."""
        room, limits = self.aim.room_kcal, self._without_room(now, weeks)
        limits = [_with_room(limit, room) for limit in limits] if room else limits[:]
        is_near_underweight = self.subject.bmi < BMI_WARN
        if is_near_underweight and self.aim.deficit_kcal is None and not self.aim.has_goal:
            limits = sorted([*limits, resting_limit(now)], key=lambda limit: limit.deficit_kcal)
        return limits

    def _without_room(self, now: Subject, weeks: int) -> list[DeficitLimit]:
        length = self.counted(weeks)
        if now is not self.subject:
            return deficit_limits(now, length, fed=self.subject)
        found = self._limits.get(length)  # sizes of one phase ask for them again
        if found is None:
            found = self._limits[length] = deficit_limits(now, length, fed=now)
        return found

    def cap(self, wanted_kcal: float, weeks: int, *, is_history_known: bool) -> DeficitLimit | None:
        """The largest deficit inside every rail, where that is less than ``wanted_kcal``, and the rule that binds."""
        limits = self.limits(self.subject, weeks)
        if not is_history_known:
            limits.append(HISTORY_LIMIT)
        if not self.subject.is_fat_measured:
            limits.append(MEASURE_LIMIT)
        limits.sort(key=lambda limit: limit.deficit_kcal)
        strictest = limits[0]
        high = min(wanted_kcal, strictest.deficit_kcal)
        rule = self.broken_rule(high, weeks) if high > 0 else None
        if rule is None:
            return None if wanted_kcal <= strictest.deficit_kcal else strictest
        low = 0.0
        while high - low > 5.0:
            middle = 0.5 * (low + high)
            broken = self.broken_rule(middle, weeks)
            if broken is None:
                low = middle
            else:
                rule, high = broken, middle
        return path_limit(rule, low)

    # --- solving ----------------------------------------------------------------------------------------------

    def is_past_goal(self, deficit_kcal: float, weeks: int) -> bool:
        """Whether the goal is likely met a whole week and more before so many end."""
        if not self.aim.has_goal or weeks < 2:
            return False
        return self.left(self.likely(deficit_kcal, weeks)[-2]) <= 0.5 * self.tolerance(weeks - 1)

    def deficit_for_goal(self, weeks: int) -> float:
        """The deficit that reaches the goal in these weeks, whatever the rails on the whole path say [kcal/d]."""
        highest = 0.9 * self.subject.maintenance_kcal
        return crossing(lambda deficit: -self.left(self.goal_end(deficit, weeks)), 0.0, highest)

    def weeks_for_goal(self, deficit_kcal: float, at_most: int) -> int | None:
        """The fewest weeks that likely reach the goal at this deficit, if at most ``at_most`` do."""
        states = self.likely(deficit_kcal, at_most)
        for week in range(self.aim.least_weeks, at_most + 1):
            if self.left(states[week - 1]) <= 0.5 * self.tolerance(week):
                return week
        return None


def kg_of_rounding(weeks: int) -> float:
    """What 10 kcal/d of rounding is worth over some weeks, by the static rule [kg]."""
    return 10 * 7 * weeks / STATIC_KCAL_PER_KG


def _with_room(limit: DeficitLimit, room_kcal: float) -> DeficitLimit:
    """A limit less the room that is left under it; not of what would be too little to plan."""
    room = min(room_kcal, max(0.0, limit.deficit_kcal - LEAST_DEFICIT))
    return DeficitLimit(limit.rule, limit.deficit_kcal - room, limit.why) if room else limit
