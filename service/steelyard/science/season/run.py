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
    supply_of,
    unfollowed_share,
    walk,
)
from ..numbers import FLOATS, Elementwise, Estimate, Number
from ..phase import GAIN_RESET_WEEKS, LEAST_DEFICIT, LEAST_WEEKS
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
)
from ..register import Basis, Kind, constant, equation
from .calendar import Calendar
from .policy import Policy
from .rails_by_week import (
    TISSUE_FOR_FAT,
    PersonLimits,
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
_YEAR_WEEKS = 52
# A reading of body fat is never lower, whatever its error.
_LEAST_SEEN_SHARE = 0.02
_CUT_CARRIED_SHARE = 0.015  # of body mass that carried mass falls by in a cut, to time a cut for an event


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
    after it, were all of its cut followed; None where that is what is expected."""

    mode: Number
    intake_kcal: Number
    is_set: Number  # whether the intake was set anew
    deficit_kcal: Number
    deficit_limit_kcal: Number
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
    where, minimum, maximum = ops.where, ops.minimum, ops.maximum
    model, state = life.model, life.state
    zero = 0.0 * policy.surplus_kcal + 0.0 * state.fat_kg
    first_lean, first_fat = state.lean_kg, state.fat_kg
    fraction = (state.fat_kg - life.fat_error_kg) / state.weight_kg + zero
    # Whose least intake is over maintenance is held there: a surplus on top would gain faster than it may.
    can_gain = (policy.surplus_kcal > 0.0) & (limits.least_held_kcal <= model.maintenance_kcal + 10.0)
    mode = where((fraction < policy.cut_at) & can_gain, zero + GAIN, zero + HOLD)
    in_phase, owed, intake, deficit, cut_weeks, cut_to = zero, zero, zero, zero, zero, zero
    base_weight, fed_kg = state.weight_kg + zero, zero
    counted, weeks_before = zero + limits.weeks_of_last_cut, zero
    since, recent, cuts = zero + limits.weeks_since_cut, zero + limits.cuts_last_year, zero
    started: list[Number] = []
    peak, above, dieting, fat_sum, missed = zero, zero, zero, zero, zero
    least_start = least_start_weight_kg(limits)
    balanced_fat = fat_share(CarbohydratePreference.BALANCED)
    full = state  # the body, were all that is told in a cut followed: it must be safe as well

    for week in range(calendar.weeks):
        weight = state.weight_kg
        for at, wanted in calendar.targets:
            if at == week:
                missed = maximum(missed, state.fat_kg / weight - wanted)
        seen_fat = maximum(state.fat_kg - life.fat_error_kg, _LEAST_SEEN_SHARE * weight)
        fraction = seen_fat / weight
        share = 1.0 if week < GAIN_RESET_WEEKS else life.error_share
        balance = current_maintenance_kcal(model, state) - share * life.maintenance_error_kcal

        # A cut ends at its body fat or its length, and before another week could pass the floor or the fat's supply.
        there, fat_there, weight_there, balance_there = state, seen_fat, weight, balance
        if life.kept is not None:
            there, weight_there = full, full.weight_kg
            balance_there = current_maintenance_kcal(model, full) - share * life.maintenance_error_kcal
            fat_there = maximum(full.fat_kg - life.fat_error_kg, _LEAST_SEEN_SHARE * weight_there)
        next_fat = fat_there - 7.0 / FAT_ENERGY * deficit
        next_weight = weight_there - TISSUE_FOR_FAT * (fat_there - next_fat)
        after_week = next_fat / weight_there
        is_long = weeks_before + cut_weeks > LONG_PHASE_WEEKS
        ends = (
            ((fraction <= cut_to) & (in_phase >= LEAST_WEEKS))
            | (in_phase >= cut_weeks)
            | (after_week < limits.fat_floor)
            | (next_weight - there.carried_kg < limits.least_weight_kg)
            | (balance_there - intake > FAT_SUPPLY_LIMIT * limits.ratio * next_fat)
            | (intake < least_told_kcal(limits, next_weight, next_fat, there.lean_kg, is_long, ops))
        )
        done = (mode == CUT) & ends
        mode = where(done, BRIDGE, mode)
        owed = where(done, maximum(policy.maintenance_weeks, 1.0), owed)
        since = where(done, 0.0, since)
        counted = where(done, weeks_before + in_phase, counted)

        # May one start, and does the strategy or an event want it?
        starts = zero > 1.0
        limit = zero
        open_weeks = calendar.open_weeks[week] if limits.may_cut else 0
        if open_weeks >= LEAST_WEEKS:
            length = minimum(policy.longest_cut_weeks, open_weeks)
            # Two deficits with less than four weeks between them are one.
            close = where((since < APART_WEEKS) & (counted > 0.0), counted + since, 0.0)
            settled = 0.0 if week else model.maintenance_kcal - life.maintenance_error_kcal
            limit = most_deficit_kcal(
                limits, model, state, seen_fat, balance, length + close, ops, settled_kcal=settled
            )
            possible = minimum(policy.deficit_kcal, limit)
            wants = (fraction >= policy.cut_at) & (since >= policy.weeks_between_cuts)
            aim = where(wants, policy.cut_to, 1.0)
            lean, left = calendar.lean_fraction[week], calendar.weeks_left[week]
            if left:
                needed = _weeks_to_lean(model, seen_fat, weight, lean, possible, ops)
                for_event = (fraction > lean) & (left <= minimum(needed + 1.0, policy.longest_cut_weeks))
                wants = wants | for_event
                aim = minimum(aim, where(for_event, lean, 1.0))
            fits = (
                (length >= LEAST_WEEKS)
                & (possible >= LEAST_DEFICIT)
                & (weight >= least_start)
                & ((seen_fat - LEAST_WEEKS * 7.0 / FAT_ENERGY * possible) / weight >= limits.fat_floor)
                & (cuts < policy.most_cuts)
                & (recent < policy.cuts_a_year)
            )
            starts = (mode != CUT) & (owed <= 0.0) & fits & wants
            deficit = where(starts, possible, deficit)
            cut_weeks = where(starts, length, cut_weeks)
            weeks_before = where(starts, close, weeks_before)
            cut_to = where(starts, aim, cut_to)

        bridged = (mode == BRIDGE) & (owed <= 0.0)
        goes_on = can_gain & (
            (bridged & (fraction < policy.cut_at)) | ((mode == HOLD) & (fraction < policy.cut_at - HOLD_HYSTERESIS))
        )
        waits = bridged | ((mode == GAIN) & (fraction >= policy.cut_at))
        mode_before = mode
        mode = where(starts, CUT, where(goes_on, GAIN, where(waits, HOLD, mode)))
        changed = done | (mode != mode_before) | (week == 0)
        in_phase = where(changed, 0.0, in_phase)
        base_weight = where(changed, weight, base_weight)
        fed_kg = where(changed, protein_reference_kg(limits.sex, limits.height_cm, weight, seen_fat, ops), fed_kg)

        allowed = surplus_for_gain_rate(
            limits, model, state, seen_fat, balance, minimum(base_weight, weight), limits.gain_limit, ops
        )
        if week == 0:
            allowed = maximum(allowed - settling_kcal(model, state, 7 * GAIN_RESET_WEEKS, ops), 0.0)
        gain_intake = (balance + minimum(policy.surplus_kcal, allowed)) // 10.0 * 10.0
        cut_intake = -(-(balance - deficit) // 10.0) * 10.0
        gain_intake = maximum(gain_intake, limits.least_held_kcal)
        hold_intake = maximum((balance + 5.0) // 10.0 * 10.0, limits.least_held_kcal)
        is_reset = changed | (in_phase % GAIN_RESET_WEEKS == 0)
        is_hold = (mode == BRIDGE) | (mode == HOLD)
        sets_gain = (mode == GAIN) & is_reset
        sets_hold = is_hold & (is_reset | (in_phase < GAIN_RESET_WEEKS))
        intake = where(starts, cut_intake, where(sets_gain, gain_intake, where(sets_hold, hold_intake, intake)))

        is_cut = mode == CUT
        protein = where(is_cut, PROTEIN_DEFAULT_DEFICIT, PROTEIN_DEFAULT_GAIN)
        settled_weight = where(is_cut, base_weight, maximum(base_weight, state.weight_kg - state.carried_kg))
        protein_g, carbohydrate_g, _ = split_grams(
            intake, fed_kg, protein, balanced_fat, ops, fat_for_kg=settled_weight
        )
        eaten, ratio = intake, 1.0
        if life.kept is not None:
            gap = where(is_cut, balance - intake, 0.0)
            score = 0.0 if life.eaten_score is None else share * life.eaten_score
            ratio = 1.0 + unfollowed_share(intake, gap, life.kept, score, ops)
            eaten = intake * ratio
        elif life.eaten_score is not None:
            ratio = 1.0 + share * ADHERENCE_SPREAD * life.eaten_score
            eaten = intake * ratio
        moved = model
        if life.adaptation_score is not None:
            moved = adapting(model, eaten, life.adaptation_score, ops)
        carbohydrate_kcal = CARBOHYDRATE_KCAL_PER_G * carbohydrate_g
        before = state
        diet = Diet(eaten, carbohydrate_kcal * ratio, protein_g / fed_kg)
        state = walk(moved, before, diet, (7.0,), ops=ops)[0]
        in_full = None
        if life.kept is not None:
            # Of a cut; what comes after one is set for the body that is then seen.
            start_full = BodyState(*(where(in_phase > 0.0, was, now) for was, now in zip(full, before, strict=True)))
            told = Diet(intake, carbohydrate_kcal, protein_g / fed_kg)
            walked = walk(model, start_full, told, (7.0,), ops=ops)[0]
            in_full = start_full, walked
            full = BodyState(*(where(is_cut, was, now) for was, now in zip(walked, state, strict=True)))
        if record is not None:
            record.append(
                WeekRecord(
                    mode=mode,
                    intake_kcal=intake,
                    is_set=starts | sets_gain | sets_hold,
                    deficit_kcal=deficit,
                    deficit_limit_kcal=limit,
                    cut_weeks=cut_weeks,
                    weeks_before=weeks_before,
                    cut_to=cut_to,
                    maintenance_kcal=balance,
                    surplus_kcal=minimum(policy.surplus_kcal, allowed),
                    surplus_limit_kcal=allowed,
                    protein_kg=fed_kg,
                    fat_for_kg=settled_weight,
                    diet=diet,
                    before=before,
                    after=state,
                    in_full=in_full,
                )
            )

        fraction = state.fat_kg / state.weight_kg
        peak = maximum(peak, fraction)
        above = above + where(fraction > band_upper, 1.0, 0.0)
        dieting = dieting + where(is_cut, 1.0, 0.0)
        fat_sum = fat_sum + state.fat_kg
        new = where(starts, 1.0, 0.0)
        started.append(new)
        cuts, recent = cuts + new, recent + new
        if week >= _YEAR_WEEKS:
            recent = recent - started[week - _YEAR_WEEKS]
        if week == max(0, _YEAR_WEEKS - limits.weeks_since_cut) and limits.cuts_last_year:
            recent = recent - limits.cuts_last_year
        in_phase = in_phase + 1.0
        owed = maximum(owed - 1.0, 0.0)
        since = since + 1.0

    return Outcome(
        lean_gained_kg=state.lean_kg - first_lean + zero,
        fat_gained_kg=state.fat_kg - first_fat + zero,
        mean_fat_kg=fat_sum / calendar.weeks,
        peak_fat_fraction=peak,
        final_fat_fraction=state.fat_kg / state.weight_kg,
        weeks_above_band=above,
        weeks_dieting=dieting,
        cuts=cuts,
        missed_target=missed,
    )
