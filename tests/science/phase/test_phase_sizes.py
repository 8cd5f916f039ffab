"""The usual size of a deficit and a surplus, and the other sizes on offer with their price."""

import msgspec
import pytest
from plan_people import MAN, ORDINARY, START, WOMAN, change, gain, member_of, person, plan
from steelyard.science.body.uncertainty import ALL_SOURCES
from steelyard.science.person.person import Person, Sex, Training, TrainingStatus
from steelyard.science.phase import (
    DeficitAim,
    DeficitKind,
    GainAim,
    History,
    Pace,
    Plan,
    ReturnAim,
    SizeOffered,
    bodies_along,
    offers,
    plan_deficit,
    plan_gain,
    told_weeks,
    usual_deficit,
    usual_surplus,
)
from steelyard.science.phase.sizes import Because, Size, UsualDeficit
from steelyard.science.rails.gate import first_broken

KNOWN = History(0)
HEAVY = person(Sex.MALE, 120.0, 180.0, 0.38)


def usual(who: Person, history: History = KNOWN, pace: Pace = Pace.STEADY) -> UsualDeficit:
    return usual_deficit(member_of(who).subject, history, pace)


def with_sizes(who: Person, history: History = KNOWN, **aim: object) -> Plan:
    asked = DeficitAim(**aim)  # type: ignore[arg-type]
    return plan_deficit(
        member_of(who), START, asked, ReturnAim(), history=history, sources=ALL_SOURCES, with_sizes=True
    )


@pytest.mark.parametrize(
    ("largest_kcal", "offered"),
    [
        (524.0, [(300.0, Size.GENTLE), (500.0, Size.STEADY)]),
        (525.0, [(300.0, Size.GENTLE), (500.0, Size.STEADY), (525.0, Size.LARGEST)]),
        (None, [(300.0, Size.GENTLE), (500.0, Size.STEADY)]),
    ],
)
def test_two_sizes_less_than_25_kcal_apart_are_one(
    largest_kcal: float | None, offered: list[tuple[float, Size]]
) -> None:
    """Each named as planned first, then by its pace, then as the largest."""
    paces = {Pace.GENTLE: 300.0, Pace.STEADY: 500.0, Pace.BRISK: 510.0}
    assert offers._sizes(500.0, None, paces, largest_kcal) == offered


def of(found: Plan) -> dict[Size, SizeOffered]:
    return {one.size: one for one in found.sizes}


# --- the usual size ----------------------------------------------------------------------------------------------


def test_a_deficit_fits_the_body() -> None:
    """Half a per cent of body mass a week in the lean, 0.7 % where a mini-cut is usual (Helms 2014, Garthe 2011)."""
    by_fat = [usual(person(Sex.MALE, 80.0, 180.0, fat)) for fat in (0.09, 0.11, 0.13, 0.15)]
    assert [one.deficit_kcal for one in by_fat] == sorted(one.deficit_kcal for one in by_fat)
    assert all(0.003 < one.body_share < 0.0071 for one in by_fat)
    assert usual(person(Sex.MALE, 95.0, 185.0, 0.18)).deficit_kcal > usual(MAN).deficit_kcal > usual(WOMAN).deficit_kcal


def test_a_deficit_is_a_like_share_of_what_different_bodies_use() -> None:
    small = person(Sex.FEMALE, 50.0, 160.0, 0.24)
    shares = [usual(who).maintenance_share for who in (MAN, WOMAN, small, HEAVY)]
    flat = [500 / member_of(who).subject.maintenance_kcal for who in (MAN, WOMAN, small, HEAVY)]
    assert max(shares) / min(shares) < max(flat) / min(flat)
    assert all(0.1 < share <= 0.2 for share in shares)


@pytest.mark.parametrize(
    ("history", "because"),
    [(History(1, 5), Because.RECENT_CUT), (History(3, 20), Because.MANY_CUTS), (History(1, 20), Because.BODY)],
)
def test_a_deficit_is_smaller_soon_after_a_cut_and_after_many(history: History, because: Because) -> None:
    found = usual(MAN, history)
    assert found.because is because
    assert (found.deficit_kcal < usual(MAN).deficit_kcal) is (because is not Because.BODY)


def test_a_deficit_is_smaller_without_resistance_training() -> None:
    subject = member_of(MAN).subject
    found = usual_deficit(subject, KNOWN, is_training=False)
    assert found.because is Because.NO_TRAINING
    assert found.deficit_kcal < usual(MAN).deficit_kcal


def test_what_is_unknown_keeps_to_the_default_deficit() -> None:
    assert usual(MAN, History(None)).because is Because.HISTORY_UNKNOWN
    unmeasured = member_of(msgspec.structs.replace(MAN, body_fat=None)).subject
    found = usual_deficit(unmeasured, KNOWN)
    assert (found.deficit_kcal, found.because) == (500, Because.FAT_UNMEASURED)
    assert usual(MAN, History(None)).deficit_kcal == 500


@pytest.mark.parametrize("who", [*ORDINARY, HEAVY])
def test_a_pace_orders_the_sizes(who: Person) -> None:
    gentle, steady, brisk = (usual(who, pace=pace).deficit_kcal for pace in Pace)
    assert 0 < gentle < steady <= brisk <= 750
    assert brisk <= 0.25 * member_of(who).subject.maintenance_kcal
    slow, even, fast = (usual_surplus(member_of(who).subject, pace) for pace in Pace)
    assert 0 < slow < even < fast


def test_a_surplus_goes_by_status_and_lean_mass() -> None:
    subject = member_of(MAN).subject
    beginner = msgspec.structs.replace(MAN, training=Training(status=TrainingStatus.NOVICE))
    assert usual_surplus(member_of(beginner).subject) > usual_surplus(subject) > usual_surplus(member_of(WOMAN).subject)
    fatter = person(Sex.MALE, 90.0, 180.0, 0.244)  # the same lean mass
    assert usual_surplus(member_of(fatter).subject) == usual_surplus(subject)


# --- what is planned and offered -----------------------------------------------------------------------------------


@pytest.mark.parametrize("who", ORDINARY)
@pytest.mark.parametrize("pace", Pace)
def test_a_phase_left_open_is_planned_at_its_pace_and_says_why(who: Person, pace: Pace) -> None:
    found = plan(who, weeks=4, pace=pace)
    assert found.deficit_kcal == usual(who, pace=pace).deficit_kcal
    assert "DEFICIT_CHOSEN" in {reason.code for reason in found.reasons}


@pytest.mark.parametrize("who", ORDINARY)
def test_other_sizes_cost_lean_tissue_for_the_fat_they_take(who: Person) -> None:
    found = with_sizes(who, weeks=4)
    offered = of(found)
    assert list(offered) == [Size.GENTLE, Size.STEADY, Size.BRISK, Size.LARGEST]
    assert [size for size, one in offered.items() if one.is_planned] == [Size.STEADY]
    fat = [-one.change.fat_kg.mean for one in found.sizes]
    lean = [one.change.lean_kg.mean for one in found.sizes]
    assert fat == sorted(fat)
    assert lean == sorted(lean, reverse=True)
    warned = [{action.id for action in one.warnings} for one in found.sizes]
    assert warned[0] < warned[-1]


def test_a_goal_is_kept_and_takes_fewer_weeks_at_a_larger_size() -> None:
    found = with_sizes(WOMAN, fat_loss_kg=1.2)
    weeks = [len(one.phase.weeks) for one in found.sizes]
    assert weeks == sorted(weeks, reverse=True)
    assert weeks[-1] < weeks[0]
    assert all(-one.change.fat_kg.mean >= 1.2 - 0.06 for one in found.sizes)


@pytest.mark.parametrize("who", [*ORDINARY, HEAVY])
@pytest.mark.parametrize("aim", [{"weeks": 3}, {"fat_loss_kg": 1.0}, {"kind": DeficitKind.CUT, "weeks": 14}])
@pytest.mark.parametrize("history", [KNOWN, History(None), History(1, 2)])
def test_every_size_is_inside_the_rails(who: Person, aim: dict[str, object], history: History) -> None:
    member, found = member_of(who), with_sizes(who, history, **aim)
    assert found.sizes
    for one in found.sizes:
        weeks = told_weeks(one.phases, bodies_along(member.subject, one.path).expected)
        before = history.deficit_before
        broken = first_broken(
            weeks, weeks_before=before.weeks, weeks_since=before.weeks_since, is_history_known=history.is_known
        )
        assert broken is None, one.size


def test_the_planned_size_is_the_plan() -> None:
    found = with_sizes(MAN, weeks=4, deficit_kcal=620.0)
    (own,) = [one for one in found.sizes if one.is_planned]
    assert (own.size, own.offset_kcal) == (Size.OWN, -620.0)
    assert own.change.fat_kg.mean == pytest.approx(change(found, 0)[1], abs=1e-9)
    assert own.intake_kcal == found.phases[0].weeks[0].intake.intake_kcal


def test_a_gain_is_offered_at_other_sizes() -> None:
    found = plan_gain(member_of(WOMAN), START, GainAim(weeks=12), sources=ALL_SOURCES, with_sizes=True)
    offered = of(found)
    assert offered[Size.STEADY].is_planned
    assert offered[Size.GENTLE].change.fat_kg.mean < offered[Size.STEADY].change.fat_kg.mean
    slow = gain(WOMAN, weeks=12, pace=Pace.GENTLE)
    assert slow.phases[0].weeks[0].intake.intake_kcal == offered[Size.GENTLE].intake_kcal


def test_no_sizes_where_none_are_asked_for() -> None:
    assert not plan(MAN).sizes
