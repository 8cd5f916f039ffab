"""A season lived week by week under a strategy: one state machine for one person or for arrays of anything.

Every week the body is looked at, then the phase is kept or changed, the intake is set where it is due, inside the
rails, and the body moves on by seven days. Written with ``ops`` so that the same text runs a single season on floats
and thousands of strategies, bodies or draws of uncertainty at once on arrays.
"""

from typing import NamedTuple

from ..body import (
    ADHERENCE_SPREAD,
    FAT_ENERGY,
    FAT_SUPPLY_LIMIT,
    LEAN_ENERGY,
    BodyModel,
    BodyState,
    Diet,
    adapting,
    current_maintenance_kcal,
    deficit_factor,
    deficit_share,
    linearise,
    still_saved_kcal,
    supply_of,
    unfollowed_share,
    walk,
)
from ..numbers import FLOATS, Elementwise, Estimate, Number
from ..phase import GAIN_RESET_WEEKS, LEAST_DEFICIT, LEAST_WEEKS, YEAR_WEEKS
from ..rails import (
    APART_WEEKS,
    CARBOHYDRATE_KCAL_PER_G,
    LONG_PHASE_WEEKS,
    PROTEIN_DEFAULT_DEFICIT,
    PROTEIN_DEFAULT_GAIN,
    CarbohydratePreference,
    fat_share,
    protein_reference_kg,
    split_grams,
    weeks_that_count,
)
from ..register import Basis, Kind, constant, equation
from .calendar import Calendar
from .policy import Policy
from .rails_by_week import (
    TISSUE_FOR_FAT,
    WEEK_KG,
    PersonLimits,
    least_held_kcal,
    least_start_weight_kg,
    least_told_kcal,
    most_deficit_kcal,
    settling_kcal,
    surplus_for_gain_rate,
)

GAIN, CUT, BRIDGE, HOLD = 0, 1, 2, 3  # what a week is: BRIDGE follows a cut, HOLD waits at the ceiling

HOLD_HYSTERESIS = constant(
    "hold_hysteresis", 0.005, unit="1", basis=Basis.JUDGEMENT,
    summary="How far body fat must fall under the ceiling before a gain that waited there goes on",
)  # fmt: skip
_BALANCED_FAT = fat_share(CarbohydratePreference.BALANCED)
# A reading of body fat is never lower, whatever its error.
_LEAST_SEEN_SHARE = 0.02
_CUT_CARRIED_SHARE = 0.015  # of body mass that carried mass falls by in a cut, to time a cut for an event (judgement)


class Life(NamedTuple):
    """A body, and how it differs from what is believed of it (all zero: as believed).

    ``fat_error_kg`` and ``maintenance_error_kcal``: true minus believed. ``eaten_score`` and ``adaptation_score`` in
    standard deviations. ``error_share``: share of the errors in intake that the first review leaves. ``kept``: share of
    deficits that is followed, where not all of it is counted on.
    """

    model: BodyModel
    state: BodyState
    fat_error_kg: Number = 0.0
    maintenance_error_kcal: Number = 0.0
    eaten_score: Number | None = None
    adaptation_score: Number | None = None
    error_share: Number = 0.0
    kept: Estimate | None = None


class WeekRecord(NamedTuple):
    """What was done in a week. Energies in kcal/d; limits are those of the rails. ``in_full``: the body before and
    after it, were all of its cut followed; None where that is what is expected. Cuts are those before the week."""

    mode: Number
    intake_kcal: Number
    is_set: Number  # whether the intake was set anew
    deficit_kcal: Number
    cut_weeks: Number  # most that the cut may take
    weeks_before: Number  # of a cut just before, that count as of this one
    cut_to: Number
    maintenance_kcal: Number
    surplus_kcal: Number
    surplus_limit_kcal: Number
    protein_kg: Number  # body mass that protein is shared out for
    fat_for_kg: Number  # by which the least fat is, with the water that returns
    diet: Diet
    before: BodyState
    after: BodyState
    since_cut_weeks: Number
    cuts_in_year: Number
    cuts: Number
    in_full: tuple[BodyState, BodyState] | None = None


class Outcome(NamedTuple):
    """Totals of a season. Lean tissue and fat in kg, body fat as fractions, weeks and cuts counted."""

    lean_gained_kg: Number
    fat_gained_kg: Number
    mean_fat_kg: Number
    peak_fat_fraction: Number
    final_fat_fraction: Number
    weeks_above_band: Number
    weeks_dieting: Number
    cuts: Number
    missed_target: Number  # most that body fat was over an event's target, as a fraction


def _weeks_to_lean(
    model: BodyModel, fat_kg: Number, weight_kg: Number, lean: float, deficit_kcal: Number, ops: Elementwise
) -> Number:
    """Weeks of a fixed intake until body fat is ``lean``, by the linear model; many where it never is.

    Less water and glycogen make the body lighter and its fat fraction higher while the cut lasts.
    """
    energy_share = deficit_share(
        fat_kg,
        deficit_factor(model, PROTEIN_DEFAULT_DEFICIT, ops),
        model.deficit_rate_effect,
        supply_of(-deficit_kcal, fat_kg, ops),
    )
    fat_part = (1.0 - energy_share) / FAT_ENERGY
    fat_of_loss = fat_part / (fat_part + energy_share / LEAN_ENERGY)
    excess = fat_kg - lean * (1.0 - _CUT_CARRIED_SHARE) * weight_kg
    tissue = excess / ops.maximum(fat_of_loss - lean, 0.05)
    linear = linearise(model, fat_kg, PROTEIN_DEFAULT_DEFICIT, gap_kcal=-deficit_kcal, ops=ops)
    slope = linear.epsilon_kcal_per_kg_day
    left = 1.0 - tissue * slope / ops.maximum(deficit_kcal, 1.0)
    return -linear.rho_kcal_per_kg / slope * ops.log(ops.maximum(left, 0.01)) / 7.0


class _Seen(NamedTuple):
    """A body as it is seen as a week begins. ``fat_kg`` as it is read, ``balance_kcal`` as maintenance is believed."""

    body: BodyState
    weight_kg: Number
    fat_kg: Number
    fraction: Number
    balance_kcal: Number


class _Season:
    """A season as it is lived: the body, the phase that it is in and what is counted, each a float or an array."""

    def __init__(
        self, life: Life, policy: Policy, limits: PersonLimits, calendar: Calendar, band_upper: float, ops: Elementwise
    ) -> None:
        self.life, self.policy, self.limits, self.calendar, self.ops = life, policy, limits, calendar, ops
        self.where, self.minimum, self.maximum = ops.where, ops.minimum, ops.maximum
        self.band_upper = band_upper
        self.model, self.state = life.model, life.state
        self.full = life.state  # the body, were all that is told in a cut followed: it must be safe as well
        state = life.state
        self.zero = zero = 0.0 * policy.surplus_kcal + 0.0 * state.fat_kg
        fraction = (state.fat_kg - life.fat_error_kg) / state.weight_kg + zero
        # Whose least intake is over maintenance is held there: a surplus on top would gain faster than it may.
        kcal = self.model.maintenance_kcal
        least = least_held_kcal(limits, self.model, state.fat_kg - life.fat_error_kg, state.lean_kg, kcal, ops)
        self.can_gain = (policy.surplus_kcal > 0.0) & (least <= kcal + 10.0)
        # The phase: its weeks so far, and maintenance that is owed before the next.
        # A cut that has just ended has its maintenance to come, as one of the season's own has.
        self.owed = ops.maximum(policy.maintenance_weeks - limits.weeks_since_cut, 0.0) + zero
        mode = ops.where((self._held_by(fraction) < policy.cut_at) & self.can_gain, zero + GAIN, zero + HOLD)
        self.mode = ops.where(self.owed > 0.0, zero + BRIDGE, mode)
        self.in_phase, self.intake = zero, zero
        self.base_weight, self.fed_kg = state.weight_kg + zero, zero
        # The cut: its deficit, and the length and the body fat that end it.
        self.deficit, self.cut_weeks, self.cut_to = zero, zero, zero
        # Cuts before: weeks since the last, and how many of it and of one close before it count as of the next.
        self.since, self.counted = zero + limits.weeks_since_cut, zero + limits.weeks_of_last_cut
        self.weeks_before = zero
        self.recent, self.cuts = zero + limits.cuts_last_year, zero
        self.started: list[Number] = []
        self.least_start_kg = least_start_weight_kg(limits)
        self.surplus_limit: Number = zero
        # Totals.
        self.peak, self.above, self.dieting, self.fat_sum, self.missed = zero, zero, zero, zero, zero

    def live_week(self, week: int) -> WeekRecord:
        """Look, keep or change the phase, set the intake where it is due, and move the body on by seven days."""
        where, maximum = self.where, self.maximum
        for at, wanted in self.calendar.targets:
            if at == week:
                self.missed = maximum(self.missed, self.state.fat_kg / self.state.weight_kg - wanted)
        share = 1.0 if week < GAIN_RESET_WEEKS else self.life.error_share
        seen = self._see(self.state, share)
        ended = self._ended(seen, share)
        self.mode = where(ended, BRIDGE, self.mode)
        self.owed = where(ended, maximum(self.policy.maintenance_weeks, 1.0), self.owed)
        self.since = where(ended, 0.0, self.since)
        self.counted = where(ended, self.weeks_before + self.in_phase, self.counted)
        starts = self._starts(week, seen)
        changed = self._turn(week, seen, ended, starts)
        is_set = self._set_intake(week, seen, starts, changed)
        lived = self._eat(seen, share, is_set)
        self._count(week, starts)
        return lived

    def _see(self, body: BodyState, share: Number) -> _Seen:
        """``body`` with ``share`` of the error that maintenance is believed with."""
        weight = body.weight_kg
        fat = self.maximum(body.fat_kg - self.life.fat_error_kg, _LEAST_SEEN_SHARE * weight)
        balance = current_maintenance_kcal(self.model, body) - share * self.life.maintenance_error_kcal
        return _Seen(body, weight, fat, fat / weight, balance)

    def _held_by(self, fraction: Number) -> Number:
        """The body fat that a gain's ceiling is compared with: an underweight body may gain whatever it has."""
        is_underweight = self.state.weight_kg - self.state.carried_kg < self.limits.least_weight_kg
        return self.where(is_underweight, 0.0, fraction)

    def _ended(self, seen: _Seen, share: Number) -> bool:
        """Where a cut ends: at its body fat or its length, and before another week could pass the floor or the fat's
        supply."""
        limits = self.limits
        there = seen if self.life.kept is None else self._see(self.full, share)
        next_fat = there.fat_kg - 7.0 / FAT_ENERGY * self.deficit
        next_weight = there.weight_kg - TISSUE_FOR_FAT * (there.fat_kg - next_fat)
        is_long = self.weeks_before + self.cut_weeks > LONG_PHASE_WEEKS
        # What energy availability is for is what is left of it, were all that is lost fat, and what comes besides.
        left = there.weight_kg - there.fat_kg + next_fat + WEEK_KG
        ends = (
            ((seen.fraction <= self.cut_to) & (self.in_phase >= LEAST_WEEKS))
            | (self.in_phase >= self.cut_weeks)
            | (next_fat / there.weight_kg < limits.fat_floor)
            | (next_weight - there.body.carried_kg < limits.least_weight_kg)
            | (there.balance_kcal - self.intake > FAT_SUPPLY_LIMIT * limits.ratio * next_fat)
            | (self.intake < least_told_kcal(limits, left, next_fat, there.body.lean_kg, is_long, self.ops))
        )
        return (self.mode == CUT) & ends

    def _starts(self, week: int, seen: _Seen) -> bool:
        """Where a cut starts: one may, and the strategy or an event wants it."""
        zero, limits, policy = self.zero, self.limits, self.policy
        where, minimum = self.where, self.minimum
        open_weeks = self.calendar.open_weeks[week] if limits.may_cut else 0
        if open_weeks < LEAST_WEEKS:
            return zero > 1.0
        length = minimum(policy.longest_cut_weeks, open_weeks)
        # Two deficits with less than four weeks between them are one.
        close = weeks_that_count(self.counted, self.since, self.ops)
        settled = 0.0 if week else self.model.maintenance_kcal - self.life.maintenance_error_kcal
        about = (limits, self.model, self.state, seen.fat_kg, seen.balance_kcal, length + close, self.ops)
        possible = minimum(policy.deficit_kcal, most_deficit_kcal(*about, settled_kcal=settled))
        wants, aim = self._wants(week, seen, possible)
        fits = (
            (length >= LEAST_WEEKS)
            & (possible >= LEAST_DEFICIT)
            & (seen.weight_kg >= self.least_start_kg)
            & ((seen.fat_kg - LEAST_WEEKS * 7.0 / FAT_ENERGY * possible) / seen.weight_kg >= limits.fat_floor)
            & (self.cuts < policy.most_cuts)
            & (self.recent < policy.cuts_a_year)
        )
        starts = (self.mode != CUT) & (self.owed <= 0.0) & fits & wants
        self.deficit = where(starts, possible, self.deficit)
        self.cut_weeks = where(starts, length, self.cut_weeks)
        self.weeks_before = where(starts, close, self.weeks_before)
        self.cut_to = where(starts, aim, self.cut_to)
        return starts

    def _wants(self, week: int, seen: _Seen, possible: Number) -> tuple[bool, Number]:
        """Where the strategy or an event wants a cut, and the body fat that it aims at."""
        where, minimum, policy = self.where, self.minimum, self.policy
        is_apart = self.since >= policy.weeks_between_cuts
        wants = (seen.fraction >= policy.cut_at) & is_apart
        aim = where(wants, policy.cut_to, 1.0)
        if not self.calendar.weeks_left[week]:
            return wants, aim
        # A cut that blocked days break off goes on after them: under four weeks apart the two are one.
        for_event = self._is_due(week, seen, possible) & (is_apart | (self.since < APART_WEEKS))
        return wants | for_event, minimum(aim, where(for_event, self.calendar.lean_fraction[week], 1.0))

    def _is_due(self, week: int, seen: _Seen, deficit_kcal: Number) -> bool:
        """Where a cut of a deficit has to run by now, for the body fat that the next event wants."""
        calendar, policy = self.calendar, self.policy
        lean, left = calendar.lean_fraction[week], calendar.weeks_left[week]
        needed = _weeks_to_lean(self.model, seen.fat_kg, seen.weight_kg, lean, deficit_kcal, self.ops)
        # Each time that it is broken off about a week goes by until it is under way again.
        spare = 1.0 if left <= calendar.open_weeks[week] else 2.0
        longest = policy.longest_cut_weeks + (left - min(left, calendar.open_weeks[week]))
        return (seen.fraction > lean) & (left <= self.minimum(needed + spare, longest))

    def _turn(self, week: int, seen: _Seen, ended: bool, starts: bool) -> bool:
        """Keep or change the phase. Returns where it is a new one."""
        where, policy, was = self.where, self.policy, self.mode
        bridged, fraction = (was == BRIDGE) & (self.owed <= 0.0), self._held_by(seen.fraction)
        if self.calendar.weeks_left[week]:
            # What blocked days broke off waits for them to end.
            is_broken_off = self._is_due(week, seen, self.deficit) & (self.since < APART_WEEKS)
            bridged = bridged & (where(is_broken_off, 0.0, 1.0) > 0.0)
        goes_on = self.can_gain & (
            (bridged & (fraction < policy.cut_at)) | ((was == HOLD) & (fraction < policy.cut_at - HOLD_HYSTERESIS))
        )
        waits = bridged | ((was == GAIN) & (fraction >= policy.cut_at))
        self.mode = where(starts, CUT, where(goes_on, GAIN, where(waits, HOLD, was)))
        changed = ended | (self.mode != was) | (week == 0)
        self.in_phase = where(changed, 0.0, self.in_phase)
        self.base_weight = where(changed, seen.weight_kg, self.base_weight)
        fed_kg = protein_reference_kg(self.limits.sex, self.limits.height_cm, seen.weight_kg, seen.fat_kg, self.ops)
        self.fed_kg = where(changed, fed_kg, self.fed_kg)
        return changed

    def _set_intake(self, week: int, seen: _Seen, starts: bool, changed: bool) -> bool:
        """Set the intake where it is due, inside the rails. Returns where it was set."""
        where, minimum, maximum = self.where, self.minimum, self.maximum
        limits, balance = self.limits, seen.balance_kcal
        allowed = surplus_for_gain_rate(
            limits, self.model, self.state, seen.fat_kg, balance,
            minimum(self.base_weight, seen.weight_kg), limits.gain_limit, self.ops,
        )  # fmt: skip
        if week == 0:
            allowed = maximum(allowed - settling_kcal(self.model, self.state, 7 * GAIN_RESET_WEEKS, self.ops), 0.0)
        self.surplus_limit = allowed
        gain_intake = (balance + minimum(self.policy.surplus_kcal, allowed)) // 10.0 * 10.0
        cut_intake = -(-(balance - self.deficit) // 10.0) * 10.0
        hold_intake = (balance + 5.0) // 10.0 * 10.0
        is_reset = changed | (self.in_phase % GAIN_RESET_WEEKS == 0)
        is_hold = (self.mode == BRIDGE) | (self.mode == HOLD)
        sets_gain = (self.mode == GAIN) & is_reset
        sets_hold = is_hold & (is_reset | (self.in_phase < GAIN_RESET_WEEKS))
        self.intake = where(
            starts, cut_intake, where(sets_gain, gain_intake, where(sets_hold, hold_intake, self.intake))
        )
        # The floors of a hold or a gain move with the body, so that they are looked at each week. Whoever has eaten
        # little of late spends less for some weeks still, and is to be told no less for that.
        needed = balance + still_saved_kcal(self.state, self.ops)
        least = least_held_kcal(limits, self.model, seen.fat_kg, self.state.lean_kg, needed, self.ops)
        is_raised = (self.mode != CUT) & (self.intake < least)
        self.intake = where(is_raised, least, self.intake)
        return starts | sets_gain | sets_hold | is_raised

    def _eat(self, seen: _Seen, share: Number, is_set: bool) -> WeekRecord:
        """Move the body on by a week of what is eaten."""
        where, life, before, intake = self.where, self.life, self.state, self.intake
        is_cut = self.mode == CUT
        protein = where(is_cut, PROTEIN_DEFAULT_DEFICIT, PROTEIN_DEFAULT_GAIN)
        settled_weight = where(
            is_cut, self.base_weight, self.maximum(self.base_weight, before.weight_kg - before.carried_kg)
        )
        protein_g, carbohydrate_g, _ = split_grams(
            intake, self.fed_kg, protein, _BALANCED_FAT, self.ops, fat_for_kg=settled_weight
        )
        ratio = self._eaten_of_told(seen, share, is_cut)
        eaten = intake * ratio
        carbohydrate_kcal = CARBOHYDRATE_KCAL_PER_G * carbohydrate_g
        diet = Diet(eaten, carbohydrate_kcal * ratio, protein_g / self.fed_kg)
        moved = self.model
        if life.adaptation_score is not None:
            moved = adapting(moved, eaten, life.adaptation_score, self.ops)
        self.state = walk(moved, before, diet, (7.0,), ops=self.ops)[0]
        in_full = None
        if life.kept is not None:
            # Of a cut; what comes after one is set for the body that is then seen.
            start = _either(self.ops, self.in_phase > 0.0, self.full, before)
            told = Diet(intake, carbohydrate_kcal, protein_g / self.fed_kg)
            walked = walk(self.model, start, told, (7.0,), ops=self.ops)[0]
            in_full = start, walked
            self.full = _either(self.ops, is_cut, walked, self.state)
        return WeekRecord(
            mode=self.mode,
            intake_kcal=intake,
            is_set=is_set,
            deficit_kcal=self.deficit,
            cut_weeks=self.cut_weeks,
            weeks_before=self.weeks_before,
            cut_to=self.cut_to,
            maintenance_kcal=seen.balance_kcal,
            surplus_kcal=self.minimum(self.policy.surplus_kcal, self.surplus_limit),
            surplus_limit_kcal=self.surplus_limit,
            protein_kg=self.fed_kg,
            fat_for_kg=settled_weight,
            diet=diet,
            before=before,
            after=self.state,
            since_cut_weeks=self.since,
            cuts_in_year=self.recent,
            cuts=self.cuts,
            in_full=in_full,
        )

    def _eaten_of_told(self, seen: _Seen, share: Number, is_cut: bool) -> Number:
        """What is eaten over what is told."""
        life = self.life
        if life.kept is not None:
            gap = self.where(is_cut, seen.balance_kcal - self.intake, 0.0)
            score = 0.0 if life.eaten_score is None else share * life.eaten_score
            return 1.0 + unfollowed_share(self.intake, gap, life.kept.mean, life.kept.sd, score, self.ops)
        return 1.0 if life.eaten_score is None else 1.0 + share * ADHERENCE_SPREAD * life.eaten_score

    def _count(self, week: int, starts: bool) -> None:
        """Totals, and what the next week needs to know of this one and of a year ago."""
        where, maximum, limits = self.where, self.maximum, self.limits
        fraction = self.state.fat_kg / self.state.weight_kg
        self.peak = maximum(self.peak, fraction)
        self.above = self.above + where(fraction > self.band_upper, 1.0, 0.0)
        self.dieting = self.dieting + where(self.mode == CUT, 1.0, 0.0)
        self.fat_sum = self.fat_sum + self.state.fat_kg
        new = where(starts, 1.0, 0.0)
        self.started.append(new)
        self.cuts, self.recent = self.cuts + new, self.recent + new
        if week >= YEAR_WEEKS:
            self.recent = self.recent - self.started[week - YEAR_WEEKS]
        if week == max(0, YEAR_WEEKS - limits.weeks_since_cut) and limits.cuts_last_year:
            self.recent = self.recent - limits.cuts_last_year
        self.in_phase = self.in_phase + 1.0
        self.owed = maximum(self.owed - 1.0, 0.0)
        self.since = self.since + 1.0

    def outcome(self) -> Outcome:
        """Totals of the weeks lived."""
        first, state = self.life.state, self.state
        return Outcome(
            lean_gained_kg=state.lean_kg - first.lean_kg + self.zero,
            fat_gained_kg=state.fat_kg - first.fat_kg + self.zero,
            mean_fat_kg=self.fat_sum / self.calendar.weeks,
            peak_fat_fraction=self.peak,
            final_fat_fraction=state.fat_kg / state.weight_kg,
            weeks_above_band=self.above,
            weeks_dieting=self.dieting,
            cuts=self.cuts,
            missed_target=self.missed,
        )


def _either(ops: Elementwise, which: bool, one: BodyState, other: BodyState) -> BodyState:
    """``one`` of two bodies where ``which``, else the ``other``."""
    return BodyState(*(ops.where(which, a, b) for a, b in zip(one, other, strict=True)))


@equation(
    "season_model",
    summary="A season lived week by week under a strategy",
    formula=(
        "gain until body fat reaches the strategy's ceiling; cut where the calendar, the strategy and the rails allow "
        f"one of at least {LEAST_WEEKS} weeks, at a fixed intake until its body fat or longest length; maintenance "
        f"after it; gains and holds set anew every {GAIN_RESET_WEEKS} weeks at the energy balance of the changed body"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="12 to 156 weeks",
)
def live(
    life: Life,
    policy: Policy,
    limits: PersonLimits,
    calendar: Calendar,
    band_upper: float,
    *,
    ops: Elementwise = FLOATS,
    record: list[WeekRecord] | None = None,
) -> Outcome:
    """Live a season. Policy and life hold floats, or arrays that broadcast to one shape.

    Args: ``band_upper`` body-fat fraction over which weeks are counted. ``record`` collects each week.
    """
    season = _Season(life, policy, limits, calendar, band_upper, ops)
    for week in range(calendar.weeks):
        lived = season.live_week(week)
        if record is not None:
            record.append(lived)
    return season.outcome()
