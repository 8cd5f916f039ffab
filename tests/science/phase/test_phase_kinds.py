"""Cuts with breaks, goals, events, pauses, the rest of a phase, gains, holds, and days of a week that differ."""

import math
from datetime import date
from itertools import groupby

import pytest
from plan_people import (
    MAN,
    ORDINARY,
    SEATED,
    START,
    change,
    cut,
    forecast_of,
    gain,
    lengths,
    member_of,
    person,
    plan,
    settled_kg,
)
from steelyard.science.body.uncertainty import ALL_SOURCES, start_body
from steelyard.science.measures.assessment import assess
from steelyard.science.person.person import Person, Sex
from steelyard.science.phase import DeficitKind, Element, HoldAim, ReturnAim, plan_hold, plan_surplus
from steelyard.science.rails.day_split import least_day, split_week
from steelyard.science.rails.macronutrients import CarbohydratePreference, split_intake
from steelyard.science.rails.subject import Refused

# --- cuts ------------------------------------------------------------------------------------------------------

HEAVY = person(Sex.MALE, 100.0, 180.0, 0.30)


def test_a_cut_sets_its_intake_anew_so_that_the_deficit_holds() -> None:
    found = cut(HEAVY, weeks=12)
    path = forecast_of(found)
    intakes = [week.intake.intake_kcal for week in found.phases[0].weeks]
    assert [len(list(weeks)) for _, weeks in groupby(intakes)] == [2, 4, 4, 2]
    assert intakes[0] > intakes[2] > intakes[6] > intakes[10]
    # The weeks after each change are as far below maintenance as the first ones, to the rounding of the intake.
    for first in (2, 6, 10):
        assert path.maintenance_kcal(first) - intakes[first] == pytest.approx(found.deficit_kcal, abs=10)


def test_a_cut_keeps_to_the_rails_of_long_phases() -> None:
    assessed = assess(SEATED)
    path = forecast_of(found := cut(SEATED, weeks=12, deficit_kcal=900))
    for i, week in enumerate(found.phases[0].weeks):
        before = path.states[i - (i - 2) % 4 if i >= 2 else 0]
        fat_free = before.weight_kg - before.fat_kg
        assert week.intake.intake_kcal >= assessed.resting.mean - 1e-9
        assert (week.intake.intake_kcal - assessed.total.exercise_kcal) / fat_free >= 30 - 1e-9
    assert any(action.action == "capped" for action in found.actions)


def test_breaks_come_where_asked_and_lose_nothing() -> None:
    found, straight = cut(HEAVY, weeks=14, break_every_weeks=4, break_weeks=2), cut(HEAVY, weeks=10)
    path = forecast_of(found)
    elements = [week.element for week in found.phases[0].weeks]
    runs = [(element, len(list(weeks))) for element, weeks in groupby(elements)]
    deficit, rest = Element.DEFICIT, Element.BREAK
    assert runs == [(deficit, 4), (rest, 2), (deficit, 4), (rest, 2), (deficit, 2)]
    for point in (i for i, element in enumerate(elements) if element is rest):
        assert abs(path.states[point + 1].fat_kg - path.states[point].fat_kg) < 0.1
    # Ten weeks of deficit lose what ten weeks of deficit lose, within what breaks let adaptation recover.
    assert change(found, 0)[1] == pytest.approx(change(straight, 0)[1], abs=0.3)


def test_a_cut_never_ends_in_a_break() -> None:
    for weeks in range(7, 27):
        found = cut(HEAVY, weeks=weeks, break_every_weeks=3, break_weeks=2)
        assert found.phases[0].weeks[-1].element is Element.DEFICIT


def test_the_rate_of_loss_is_held_over_the_weeks_in_a_deficit() -> None:
    # Every other week at maintenance must not let the others lose twice as fast.
    for found in (cut(HEAVY, weeks=9, break_every_weeks=2, break_weeks=2, deficit_kcal=1500),):
        path = forecast_of(found)
        spent = sum(week.element is not Element.BREAK for week in found.phases[0].weeks)
        lost = path.states[0].tissue_kg - path.states[9].tissue_kg
        assert spent < 9
        assert 0.004 < lost / spent / HEAVY.weight_kg <= 0.010 + 1e-6


def test_without_goal_or_time_a_cut_has_its_usual_length() -> None:
    assert lengths(cut(HEAVY))[0] == ("cut", 8)
    assert lengths(cut(HEAVY, weeks_done=5))[0] == ("cut", 3)
    assert lengths(cut(HEAVY, weeks_done=10))[0] == ("cut", 1)


# --- goals -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("weeks", [None, 5])
def test_a_target_weight_is_that_of_the_settled_body(weeks: int | None) -> None:
    found = plan(MAN, target_weight_kg=78.6, weeks=weeks)
    end = forecast_of(found).states[found.phases[0].weeks[-1].point]
    rounding = 10 * 7 * 6 / 7700
    assert settled_kg(end) <= 78.6 + rounding
    assert end.weight_kg < settled_kg(end)
    if weeks:
        assert settled_kg(end) == pytest.approx(78.6, abs=2 * rounding)


@pytest.mark.parametrize("kind", [DeficitKind.MINI_CUT, DeficitKind.CUT])
def test_a_target_body_fat_is_reached(kind: DeficitKind) -> None:
    target = 0.285 if kind is DeficitKind.MINI_CUT else 0.26
    found = plan(HEAVY, kind=kind, target_fat_fraction=target)
    path = forecast_of(found)
    last = found.phases[0].weeks[-1].point
    fractions = [state.fat_kg / settled_kg(state) for state in path.states]
    rounding = 10 * 7 * last / 7700 / HEAVY.weight_kg
    assert fractions[last] <= target + rounding
    # Fewer weeks would not do.
    assert fractions[last - 1] > target


@pytest.mark.parametrize(("target", "usual"), [(0.16, None), (0.1505, 4200.0)])
def test_a_goal_met_already_is_said(target: float, usual: float | None) -> None:
    # Of the weight of somebody who ate much until now some is water: what is read of it is met, whatever it will be.
    found = plan(MAN, target_fat_fraction=target, usual=usual)
    assert not found.is_feasible
    assert [reason.code for reason in found.reasons] == ["INFEASIBLE", "GOAL_ALREADY_MET"]
    # Nothing is left to do, which says nothing of how much would be safe.
    assert found.nearest == (None, 0, None)


def test_a_target_under_the_least_body_fat_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        plan(MAN, target_fat_fraction=0.05)
    assert refused.value.action.id == "body_fat"


# --- events, pauses, the rest of a phase -----------------------------------------------------------------------


@pytest.mark.parametrize("goal", [{}, {"fat_loss_kg": 1.2}, {"target_weight_kg": 79.0}])
def test_a_phase_before_an_event_is_as_late_as_will_do(goal: dict[str, float]) -> None:
    found = plan(MAN, event=15, **goal)
    waited, phase, after, _ = found.phases
    assert [p.kind for p in (waited, phase, after)] == ["maintenance", "mini_cut", "maintenance"]
    assert len(waited.weeks) + len(phase.weeks) == 15
    assert phase.weeks[-1].start < after.weeks[0].start
    if not goal:
        assert len(phase.weeks) == 6


def test_a_phase_that_needs_all_the_time_before_an_event_starts_at_once() -> None:
    assert lengths(plan(MAN, event=4))[:2] == [("mini_cut", 4), ("maintenance", 1)]


def test_no_plan_is_late_for_its_event() -> None:
    late = []
    for event in range(7, 31, 3):
        for fat in (1.0, 2.5, 4.0):
            found = cut(HEAVY, event=event, fat_loss_kg=fat)
            if found.is_feasible:
                before = found.phases[: (found.cut or 0) + 1]
                late.append(sum(len(phase.weeks) for phase in before) > event)
    assert len(late) > 15
    assert not any(late)


def test_a_pause_comes_first_and_the_phase_is_planned_from_the_body_by_then() -> None:
    maintenance = assess(MAN).total.mean
    found = plan(MAN, pause=3, weeks=4, usual=maintenance + 600)
    path = forecast_of(found)
    assert lengths(found)[:3] == [("maintenance", 3), ("mini_cut", 4), ("maintenance", 1)]
    assert found.phases[1].first == 3
    assert "PAUSED" in {reason.code for reason in found.phases[0].reasons}
    # What a surplus had filled is gone by the start of the cut, so that its first week drops less.
    at_once = forecast_of(plan(MAN, weeks=4, usual=maintenance + 600)).states
    assert path.states[3].weight_kg - path.states[4].weight_kg < at_once[0].weight_kg - at_once[1].weight_kg - 0.2
    intake = found.phases[1].weeks[0].intake.intake_kcal
    assert path.maintenance_kcal(3) - intake == pytest.approx(found.deficit_kcal, abs=10)


def test_a_gain_may_be_paused_too() -> None:
    assert lengths(gain(MAN, pause=2, weeks=8)) == [("maintenance", 2), ("gain", 8)]


def test_the_rest_of_a_mini_cut_counts_the_weeks_done() -> None:
    assert lengths(plan(MAN, weeks_done=3))[0] == ("mini_cut", 1)
    assert lengths(plan(MAN, fat_loss_kg=0.7, weeks_done=4))[0] == ("mini_cut", 2)
    too_much = plan(MAN, fat_loss_kg=1.5, weeks_done=4)
    assert not too_much.is_feasible
    used_up = plan(MAN, weeks_done=6)
    assert "PHASE_USED_UP" in {reason.code for reason in used_up.reasons}


def test_the_rest_of_a_long_cut_keeps_the_rails_of_long_phases() -> None:
    fresh, late = plan(SEATED, weeks=3, deficit_kcal=900), cut(SEATED, weeks=3, weeks_done=9, deficit_kcal=900)
    assert late.phases[0].weeks[0].intake.intake_kcal > fresh.phases[0].weeks[0].intake.intake_kcal
    assert late.phases[0].weeks[0].intake.intake_kcal >= assess(SEATED).resting.mean


# --- gains and holds -------------------------------------------------------------------------------------------


def test_a_gain_ends_with_the_first_week_at_its_target() -> None:
    found = gain(MAN, target_weight_kg=82.0)
    path = forecast_of(found)
    settled = [settled_kg(state) for state in path.states]
    assert settled[-1] >= 82.0 > settled[-2]
    assert (path.states[-1].tissue_kg - path.states[0].tissue_kg) / len(found.phases[0].weeks) <= 0.0025 * 80


def test_a_gain_too_far_is_infeasible() -> None:
    found = gain(MAN, target_weight_kg=90.0, weeks=6)
    assert not found.is_feasible
    assert [reason.code for reason in found.reasons] == ["INFEASIBLE", "GAIN_TARGET_TOO_FAR"]
    # What is feasible is told, and is.
    nearest = math.floor(10 * float(found.reasons[1].params["weight_kg"])) / 10
    assert nearest > 80.0
    assert gain(MAN, target_weight_kg=nearest, weeks=6).is_feasible
    assert not gain(MAN, target_weight_kg=nearest + 0.5, weeks=6).is_feasible


def test_the_ceiling_of_a_gain_is_dated() -> None:
    found = gain(MAN, weeks=26, fat_ceiling=0.16)
    path = forecast_of(found)
    (note,) = [note for note in found.phases[0].ends_early_when if note.code == "CEILING_REACHED"]
    week = (date.fromisoformat(str(note.params["date"])) - START).days // 7 + 1
    fractions = [state.fat_kg / state.weight_kg for state in path.states]
    assert fractions[week] >= 0.16 > fractions[week - 1]


@pytest.mark.parametrize("who", ORDINARY)
@pytest.mark.parametrize("asked", [None, 350.0])
def test_no_week_of_a_gain_is_planned_for_a_body_at_its_ceiling(who: Person, asked: float | None) -> None:
    # Planning 3: never planned for a body at or above the ceiling of its gain, and not only on its first day.
    reading = member_of(who).assessed.fat.mean
    found = gain(who, weeks=52, fat_ceiling=reading + 0.01, surplus_kcal=asked)
    assert [phase.kind for phase in found.phases] == ["gain", "maintenance"]
    assert sum(len(phase.weeks) for phase in found.phases) == 52
    states = forecast_of(found).states
    before = [states[week.point - 1] for week in found.phases[0].weeks]
    assert max(state.fat_kg / state.weight_kg for state in before) < reading + 0.01
    held = found.phases[1]
    assert {"HELD_FROM_CEILING", "HOLD_WHY"} <= {reason.code for reason in held.reasons}
    assert held.reasons[0].params["date"] == held.weeks[0].start.isoformat()
    (note,) = [note for note in found.phases[0].ends_early_when if note.code == "CEILING_REACHED"]
    assert note.params["date"] == found.phases[0].weeks[-1].last_day.isoformat()


def test_a_weight_past_the_ceiling_is_infeasible_and_the_nearest_is_told() -> None:
    found = gain(MAN, target_weight_kg=85.0, fat_ceiling=0.16)
    assert [reason.code for reason in found.reasons] == ["INFEASIBLE", "GAIN_TARGET_PAST_CEILING"]
    nearest = math.floor(10 * float(found.reasons[1].params["weight_kg"])) / 10
    again = gain(MAN, target_weight_kg=nearest, fat_ceiling=0.16)
    assert again.is_feasible
    assert not gain(MAN, target_weight_kg=nearest + 1.0, fat_ceiling=0.16).is_feasible


@pytest.mark.parametrize("who", ORDINARY)
def test_a_hold_keeps_tissue(who: Person) -> None:
    found = plan_hold(member_of(who), START, HoldAim(weeks=12), ReturnAim(gain_weeks=4), sources=ALL_SOURCES)
    assert lengths(found) == [("maintenance", 12), ("gain", 4)]
    states = forecast_of(found).states
    # Training goes on: some fat becomes lean tissue, at the same energy.
    assert abs(states[12].tissue_kg - states[0].tissue_kg) < 0.6
    assert abs(states[12].fat_kg - states[0].fat_kg) < 0.6


# --- higher- and lower-carbohydrate days -----------------------------------------------------------------------


@pytest.mark.parametrize("higher_days", [1, 2, 3, 4, 5, 6])
@pytest.mark.parametrize("shift", [0.05, 0.2, 0.6])
def test_a_split_keeps_the_week_and_the_floor_of_its_lower_days(higher_days: int, shift: float) -> None:
    man = member_of(MAN).subject
    least = least_day(man).kcal
    for intake in (int(least // 10 * 10 + 10), 2400, 2900):
        day = split_intake(intake, 80.0, 2.0)
        week = split_week(day, higher_days, shift, least)
        for name in ("intake_kcal", "protein_g", "carbohydrate_g", "fat_g"):
            total = higher_days * getattr(week.higher, name) + (7 - higher_days) * getattr(week.lower, name)
            assert total == 7 * getattr(day, name)
        assert week.lower.intake_kcal >= min(least, day.intake_kcal)
        assert week.lower.carbohydrate_g >= 0
        assert week.higher.carbohydrate_g <= day.carbohydrate_g * (1 + shift) + 2.5 * (7 - higher_days)


def test_a_split_shifts_what_was_asked_for_where_there_is_room() -> None:
    day = split_intake(2900, 80.0, 2.0)
    week = split_week(day, 3, 0.2, 1500)
    assert week.higher.carbohydrate_g == pytest.approx(1.2 * day.carbohydrate_g, abs=10)


def test_a_lower_day_of_a_long_cut_has_a_higher_floor() -> None:
    seated = member_of(SEATED).subject
    assert least_day(seated, 12).kcal > least_day(seated, 4).kcal
    assert least_day(seated, 12).kcal >= seated.resting_kcal


def test_a_gain_that_a_floor_raises_says_so() -> None:
    """Told to eat 10 over need, which rest is 45 over: what is told is rest."""
    member = member_of(MAN)
    model, state = start_body(member.body)
    needs = member.subject.maintenance_kcal
    low = member.subject._replace(resting_kcal=needs + 45.0)
    raised = plan_surplus(low, model, state, 8, 10.0, CarbohydratePreference.BALANCED)
    assert min(week.intake.intake_kcal for week in raised.weeks) >= needs + 40.0
    assert [action.message.code for action in raised.actions] == ["RAISED_TO_FLOOR"]
    plain = plan_surplus(member.subject, model, state, 8, 10.0, CarbohydratePreference.BALANCED)
    assert plain.actions == []


@pytest.mark.parametrize(("pause", "counts"), [(3, True), (4, False)])
def test_weeks_of_a_deficit_count_on_with_less_than_four_between(pause: int, counts: bool) -> None:
    def full_week(**aim: int) -> int:
        found = plan(SEATED, pause=pause, kind=DeficitKind.CUT, weeks=4, deficit_kcal=750.0, **aim)
        return next(row for row in found.phases[1].weeks if row.element is Element.DEFICIT).intake.intake_kcal

    member = member_of(SEATED)
    resting = member.assessed.resting.mean
    assert (full_week(weeks_done=8) >= resting) is counts


@pytest.mark.parametrize(("since", "pause", "counts"), [(3, 0, True), (2, 1, True), (2, 2, False), (4, 0, False)])
def test_weeks_since_a_cut_and_those_of_a_pause_part_two_deficits_together(
    since: int, pause: int, counts: bool
) -> None:
    found = plan(SEATED, cuts=1, since=since, pause=pause, weeks=4, deficit_kcal=750.0)
    week = found.phases[1 if pause else 0].weeks[0]
    # A deficit that goes on with another is a long one, in which nobody eats less than they spend at rest.
    assert (week.intake.intake_kcal >= member_of(SEATED).assessed.resting.mean) is counts


@pytest.mark.parametrize(("eaten_kcal", "moves"), [(None, "no"), (4200.0, "yes")])
def test_a_hold_says_where_its_intake_moves(eaten_kcal: float | None, moves: str) -> None:
    """Who ate far over maintenance needs more at first than later, and is not told one amount for all of it."""
    member = member_of(MAN, usual=eaten_kcal)
    hold = plan_hold(member, START, HoldAim(weeks=6), ReturnAim(gain_weeks=0), sources=ALL_SOURCES).phases[0]
    (why,) = (reason for reason in hold.reasons if reason.code == "HOLD_WHY")
    told = [week.intake.intake_kcal for week in hold.weeks]
    assert why.params["moves"] == moves
    assert (why.params["last_kcal"], abs(told[-1] - told[0]) >= 50) == (told[-1], moves == "yes")
