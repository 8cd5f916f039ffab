"""The mini-cut: two ordinary bodies get a useful one, each side solves for the other, rails are reported."""

from datetime import timedelta
from itertools import pairwise

import pytest
from msgspec.structs import replace
from plan_people import MAN, ORDINARY, START, change, cut, member_of, person, plan
from steelyard.science import rails
from steelyard.science.body.uncertainty import ALL_SOURCES
from steelyard.science.measures.assessment import assess
from steelyard.science.person.person import Person, Sex, Training, TrainingStatus
from steelyard.science.phase import DeficitAim, DeficitKind, Element, History, ReturnAim, plan_deficit, subject_at
from steelyard.science.rails.subject import Refused

# --- the ordinary case -----------------------------------------------------------------------------------------


@pytest.mark.parametrize("who", ORDINARY)
def test_an_ordinary_body_gets_a_useful_mini_cut(who: Person) -> None:
    found = plan(who)
    assert found.is_feasible
    assert [phase.kind for phase in found.phases] == ["mini_cut", "maintenance", "gain"]
    assert [len(phase.weeks) for phase in found.phases] == [4, 1, 12]
    # Within what is usual: 0.5-1.0 % of body mass a week by the static rule, at most a fifth of maintenance.
    assert found.deficit_kcal is not None
    assert 0.005 <= found.deficit_kcal * 7 / 7700 / who.weight_kg <= 0.01
    assert found.deficit_kcal <= 0.2 * member_of(who).subject.maintenance_kcal
    weight, fat, lean, carried = change(found, 0)
    assert -2.5 < fat < -0.95
    # With lifting and 2 g/kg of protein little of the tissue lost is lean.
    assert lean > 0.25 * fat
    assert weight == pytest.approx(fat + lean + carried, abs=1e-9)
    assert carried < -0.1
    # The cut itself needs no cap; the surplus that follows may.
    assert {action.id for action in found.actions if action.action != "warned"} <= {"gain_rate"}


@pytest.mark.parametrize("who", ORDINARY)
@pytest.mark.parametrize("weeks", [2, 3, 4, 5, 6])
def test_every_length_is_open_to_an_ordinary_body(who: Person, weeks: int) -> None:
    found = plan(who, weeks=weeks)
    assert found.is_feasible
    assert len(found.phases[0].weeks) == weeks
    assert -change(found, 0)[1] > 0.24 * weeks


@pytest.mark.parametrize("who", ORDINARY)
@pytest.mark.parametrize("weeks", [8, 12, 16])
def test_an_ordinary_long_cut_that_is_set_anew_is_capped_by_nothing(who: Person, weeks: int) -> None:
    found = plan(who, kind=DeficitKind.CUT, weeks=weeks, deficit_kcal=400.0)
    assert [action for action in found.actions if action.action == "capped" and action.id != "gain_rate"] == []
    told = [week.intake.intake_kcal for week in found.phases[0].weeks if week.element is Element.DEFICIT]
    assert told == sorted(told, reverse=True)


def test_a_long_cut_that_fat_cannot_feed_to_its_end_is_told_more_then_and_why() -> None:
    found = plan(MAN, kind=DeficitKind.CUT, weeks=16, deficit_kcal=600.0)
    told = [week.intake.intake_kcal for week in found.phases[0].weeks]
    assert told[-1] > min(told)
    assert ("fat_supply", "capped") in {(action.id, action.action) for action in found.actions}


@pytest.mark.parametrize("who", ORDINARY)
def test_carried_mass_returns_at_maintenance_and_fat_does_not(who: Person) -> None:
    found = plan(who)
    assert change(found, 1)[3] > -0.5 * change(found, 0)[3]
    assert abs(change(found, 1)[1]) < 0.1


@pytest.mark.parametrize("who", ORDINARY)
def test_no_more_carried_mass_returns_than_left(who: Person) -> None:
    found = plan(who)
    assert change(found, 1)[3] < -change(found, 0)[3]


def test_who_leaves_a_surplus_drops_more_in_the_first_week() -> None:
    maintenance = assess(MAN).total.mean
    from_balance, from_surplus = plan(MAN), plan(MAN, usual=maintenance + 300)
    first = []
    for found in (from_balance, from_surplus):
        assert found.forecast is not None
        first.append(found.forecast.states[0].weight_kg - found.forecast.states[1].weight_kg)
    assert first[1] > first[0] + 0.2


def test_the_deficit_shrinks_at_a_fixed_intake() -> None:
    found = plan(MAN, weeks=6)
    assert found.forecast is not None
    balances = [found.forecast.energy_balance_kcal(i) for i in range(1, 7)]
    assert all(later > earlier for earlier, later in pairwise(balances))
    assert len({week.intake.intake_kcal for week in found.phases[0].weeks}) == 1


def test_the_dates_follow_on() -> None:
    found = plan(MAN, ReturnAim(maintenance_weeks=2, gain_weeks=8), weeks=5)
    starts = [week.start for phase in found.phases for week in phase.weeks]
    assert starts == [START + timedelta(days=7 * i) for i in range(5 + 2 + 8)]
    assert [phase.first for phase in found.phases] == [0, 5, 7]


def test_no_gain_is_planned_where_none_is_asked_for() -> None:
    found = plan(MAN, ReturnAim(gain_weeks=0))
    assert [phase.kind for phase in found.phases] == ["mini_cut", "maintenance"]


@pytest.mark.parametrize("gain_weeks", [0, 12])
def test_a_deficit_without_maintenance_after_it_is_not_planned(gain_weeks: int) -> None:
    with pytest.raises(ValueError, match="maintenance"):
        plan(MAN, ReturnAim(maintenance_weeks=0, gain_weeks=gain_weeks))


def test_easing_in_runs_at_half_the_deficit() -> None:
    found, brisk = plan(MAN, weeks=4, easing_in_weeks=1), plan(MAN, weeks=4)
    intakes = [week.intake.intake_kcal for week in found.phases[0].weeks]
    assert found.deficit_kcal is not None
    assert intakes[0] == pytest.approx(intakes[1] + found.deficit_kcal / 2, abs=10)
    assert len(set(intakes[1:])) == 1
    assert -change(found, 0)[1] < -change(brisk, 0)[1]


# --- solving ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("who", ORDINARY)
def test_fat_gives_the_fewest_weeks(who: Person) -> None:
    for fat in (0.6, 1.0, 1.5):
        found = plan(who, fat_loss_kg=fat)
        assert found.is_feasible
        weeks = len(found.phases[0].weeks)
        assert -change(found, 0)[1] >= fat - 0.06
        if weeks > 2:
            shorter = plan(who, weeks=weeks - 1)
            assert -change(shorter, 0)[1] < fat


@pytest.mark.parametrize("who", ORDINARY)
def test_fat_and_weeks_give_the_deficit(who: Person) -> None:
    for fat in (0.8, 1.2, 1.6):
        found = plan(who, fat_loss_kg=fat, weeks=5)
        assert found.is_feasible
        # 10 kcal/d of rounding over five weeks are about 0.045 kg.
        assert -change(found, 0)[1] == pytest.approx(fat, abs=0.05)


@pytest.mark.parametrize(
    ("who", "kilograms"),
    [
        (person(Sex.FEMALE, 52.0, 163.0, 0.22), 1.6),
        (person(Sex.FEMALE, 54.0, 168.0, 0.24), 1.6),
        (person(Sex.MALE, 62.0, 178.0, 0.14), 2.4),
    ],
)  # fmt: skip
def test_a_goal_within_weeks_is_not_held_to_the_limits_of_half_a_year(who: Person, kilograms: float) -> None:
    """By body mass index a cut of 26 weeks may have half the deficit of one of ten."""
    found = plan(who, kind=DeficitKind.CUT, fat_loss_kg=kilograms)
    weeks, lost = len(found.phases[0].weeks), -change(found, 0)[1]
    assert 7 < weeks < 13
    assert kilograms - 0.06 <= lost <= kilograms + lost / weeks


def test_more_than_the_usual_deficit_loses_in_six_weeks_is_planned_brisker_but_no_more() -> None:
    usual = plan(MAN, weeks=6)
    found = plan(MAN, fat_loss_kg=round(0.2 - change(usual, 0)[1], 2))
    assert found.is_feasible
    assert usual.deficit_kcal is not None
    assert usual.deficit_kcal < (found.deficit_kcal or 0) <= 750
    assert [reason.code for reason in found.reasons] == ["DEFICIT_SOLVED", "PLANNED_AS_EATEN"]


def test_what_cannot_be_is_answered_with_what_can() -> None:
    found = plan(MAN, fat_loss_kg=6.0, weeks=3)
    assert not found.is_feasible
    assert found.phases == []
    assert found.nearest is not None
    assert found.nearest.fat_loss_kg is not None
    assert 0.8 < found.nearest.fat_loss_kg < 2.5
    # The limit that binds for this man: 290 kJ/kg on 12 kg of fat, or 25 kcal/kg of energy availability.
    assert found.nearest.deficit_kcal is not None
    assert 600 < found.nearest.deficit_kcal < 290 / 4.184 * 12 + 1
    reachable = plan(MAN, fat_loss_kg=round(found.nearest.fat_loss_kg - 0.005, 2), weeks=3)
    assert reachable.is_feasible


# --- rails on the plan -----------------------------------------------------------------------------------------


def test_a_deficit_past_a_rail_is_capped_and_said() -> None:
    found = plan(MAN, weeks=4, deficit_kcal=1400)
    capped = [action for action in found.actions if action.action == "capped"]
    assert len(capped) == 1
    assert capped[0].observed == 1400
    assert capped[0].limit == pytest.approx(found.deficit_kcal)
    assert (found.deficit_kcal or 0) < 1000


@pytest.mark.parametrize("weeks", [8, 16])
def test_floors_that_rise_as_fat_goes_raise_the_later_weeks_of_a_cut(weeks: int) -> None:
    """Energy availability fades back in: a cut starts at the limit of its first body, and eats more by its last."""
    for weight_kg, fraction in ((65.5, 0.168), (72.0, 0.17), (68.0, 0.172)):
        who = person(Sex.MALE, weight_kg, 175.0, fraction)
        found = cut(who, weeks=weeks, deficit_kcal=1500.0)
        assert found.forecast is not None
        told, path = found.phases[0].weeks, found.forecast
        floors = rails.deficit_floors(member_of(who).subject, len(told))
        deficits = [week for week in told if week.element is Element.DEFICIT]
        for week in deficits:
            after = subject_at(member_of(who).subject, path.model, path.states[week.point])
            assert week.intake.intake_kcal >= floors.least_kcal(after)[0] - 1.0
        intakes = [week.intake.intake_kcal for week in deficits]
        assert intakes[-1] >= min(intakes) + 50


def test_unknown_history_keeps_to_the_usual_deficit() -> None:
    found = plan(MAN, cuts=None, weeks=4, deficit_kcal=700)
    assert found.deficit_kcal == 500
    assert [a.id for a in found.actions if a.action == "capped"] == ["cut_history"]
    assert plan(MAN, cuts=0, weeks=4, deficit_kcal=700).deficit_kcal == 700


def test_protein_is_raised_to_its_floor() -> None:
    found = plan(MAN, protein_g_per_kg=1.3)
    assert "protein" in {action.id for action in found.actions if action.action == "capped"}
    assert all(week.intake.protein_g >= 1.6 * 80 for week in found.phases[0].weeks)


def test_a_plan_does_not_end_under_the_least_body_fat() -> None:
    lean = person(Sex.MALE, 75.0, 180.0, 0.068)
    found = plan(lean, weeks=6, deficit_kcal=1000)
    assert found.forecast is not None
    end = found.forecast.states[6]
    # Searched in steps of weeks: a gram or two of fat.
    assert end.fat_kg >= 0.06 * end.weight_kg - 0.01
    assert [action.action for action in found.actions if action.id == "body_fat"].count("capped") >= 1


def test_nobody_without_room_gets_a_deficit() -> None:
    leanest = person(Sex.FEMALE, 55.0, 166.0, 0.142)
    found = plan(leanest, weeks=6)
    assert not found.is_feasible
    assert [action.action for action in found.actions if action.action == "refused"]


def test_screening_is_required() -> None:
    with pytest.raises(Refused) as refused:
        plan_deficit(
            member_of(MAN, screening=None),
            START,
            DeficitAim(),
            ReturnAim(),
            history=History(0),
            sources=ALL_SOURCES,
        )
    assert refused.value.action.id == "screening_unanswered"


@pytest.mark.parametrize(
    ("status", "limit"),
    [(TrainingStatus.NOVICE, 0.005), (TrainingStatus.INTERMEDIATE, 0.0025), (TrainingStatus.ADVANCED, 0.0015)],
)
def test_a_surplus_past_the_rate_of_gain_is_capped(status: TrainingStatus, limit: float) -> None:
    who = replace(MAN, training=Training(status=status, resistance_sessions_per_week=4))
    found = plan(who, ReturnAim(gain_weeks=12, surplus_kcal=1000))
    assert found.forecast is not None
    gain = found.phases[2]
    first, end = found.forecast.states[gain.first], found.forecast.states[gain.weeks[-1].point]
    rate = (end.tissue_kg - first.tissue_kg) / 12 / first.weight_kg
    assert "gain_rate" in {action.id for action in found.actions if action.action == "capped"}
    assert 0.7 * limit < rate <= limit + 1e-6


def test_a_long_cut_at_its_limit_changes_little_with_a_little_weight() -> None:
    """All the deficit that is allowed, of bodies 100 g apart: later weeks are raised to the rails, and once raised they
    are inside them. Were they not, a search for the deficit would come to rest wherever rounding lets it."""
    found = []
    for hectograms in range(645, 681):
        deficit = cut(person(Sex.MALE, hectograms / 10.0, 175.0, 0.168), weeks=16, deficit_kcal=1500.0).deficit_kcal
        assert deficit is not None
        found.append(deficit)
    assert all(0.0 <= after - before <= 10.0 for before, after in pairwise(found))
