"""The share of planned deficits that is followed: how it is combined and fades, and what a forecast expects of it."""

import numpy as np
import pytest
from steelyard.science.body import (
    ADHERENCE_SPREAD,
    OF_PEOPLE,
    Adherence,
    Body,
    Diet,
    Stretch,
    UncertaintySource,
    apart_from_people,
    as_followed,
    forecast,
    learned,
    start_body,
    unfollowed_share,
    usual_days,
    usual_share,
)
from steelyard.science.numbers import Z80, Estimate, arrays, many

BODY = Body(weight_kg=80.0, fat_kg=Estimate(16.0, 1.5), maintenance_kcal=Estimate(2600.0, 120.0), resting_kcal=1800.0)
DEFICIT = [Stretch(Diet(2100.0, 1050.0, 2.0), (7.0,) * 6)]
KEPT = Estimate(0.6, 0.1)


def test_before_any_phase_a_deficit_is_expected_to_be_followed() -> None:
    assert OF_PEOPLE.share.mean == 1.0
    # adherence_spread of an intake four times its deficit is this share of the deficit.
    assert OF_PEOPLE.share.sd == pytest.approx(4.0 * ADHERENCE_SPREAD)
    assert OF_PEOPLE.kept is None


def test_what_is_known_and_what_is_seen_count_by_their_precision() -> None:
    found = learned(Adherence(Estimate(1.0, 0.1), 4.0), Estimate(0.4, 0.2), 6.0)
    assert found.share.mean == pytest.approx((100.0 * 1.0 + 25.0 * 0.4) / 125.0)
    assert found.share.sd == pytest.approx(125.0**-0.5)
    assert found.weeks == 10.0


def test_what_is_known_fades_towards_all_people_and_no_further() -> None:
    known = Adherence(KEPT, 6.0)
    assert known.faded(0.0) == known
    assert known.faded(-3.0) == known
    year, age = known.faded(365.0).share, known.faded(36500.0).share
    assert 0.6 < year.mean < 1.0
    assert 0.1 < year.sd < OF_PEOPLE.share.sd
    assert age.mean == pytest.approx(1.0)
    assert age.sd == pytest.approx(OF_PEOPLE.share.sd)


@pytest.mark.parametrize(("mean", "counts"), [(0.6, True), (0.89, True), (0.9, False), (1.0, False), (1.2, False)])
def test_near_the_whole_nothing_is_changed(mean: float, counts: bool) -> None:
    assert (Adherence(Estimate(mean, 0.1), 6.0).kept is not None) is counts


def test_what_is_eaten_of_a_deficit_lies_between_it_and_maintenance() -> None:
    model, state = start_body(BODY)
    eaten = as_followed(model, state, DEFICIT[0].diet, KEPT)
    assert eaten.intake_kcal == pytest.approx(2600.0 - 0.6 * 500.0)
    assert eaten.carbohydrate_kcal / eaten.intake_kcal == pytest.approx(0.5)
    for intake in (2590.0, 2600.0, 2900.0):
        diet = Diet(intake, 1300.0, 2.0)
        assert as_followed(model, state, diet, KEPT) == diet


def test_of_nothing_that_is_told_nothing_is_expected_to_be_eaten() -> None:
    """A log of nonsense may say of somebody that they need a hundred kcal: the deficit leaves nothing to eat."""
    model, state = start_body(BODY)
    nothing = Diet(0.0, 0.0, 2.0)
    assert as_followed(model, state, nothing, KEPT) == nothing


def test_an_error_of_all_people_stands_where_there_is_no_deficit() -> None:
    assert unfollowed_share(2000.0, 500.0, KEPT.mean, KEPT.sd, 1.0) == pytest.approx(0.5 * 500.0 / 2000.0)
    assert unfollowed_share(2000.0, 0.0, KEPT.mean, KEPT.sd, 1.0) == ADHERENCE_SPREAD


def test_a_forecast_expects_what_is_kept_and_shows_what_is_told() -> None:
    plain, kept = forecast(BODY, DEFICIT), forecast(BODY._replace(kept=KEPT), DEFICIT)
    assert plain.in_full is None
    assert kept.in_full == plain.states
    lost, expected = (path.states[0].tissue_kg - path.states[-1].tissue_kg for path in (plain, kept))
    assert expected == pytest.approx(0.6 * lost, rel=0.03)
    # Of its own error: 0.1 of the deficit, where that of all people is 0.3 of it, and of who eats it 4 % of the intake.
    of_eaten = forecast(BODY, DEFICIT, is_eaten=True)
    effects = [path.fat_effects(6)[UncertaintySource.ADHERENCE] for path in (plain, kept, of_eaten)]
    assert effects[1] / effects[0] == pytest.approx(0.1 / 0.3, rel=0.1)
    assert effects[1] / effects[2] == pytest.approx(0.1 * 500.0 / (ADHERENCE_SPREAD * 2100.0), rel=0.1)


@pytest.mark.parametrize(
    ("days", "share"),
    [
        (28.0, 0.85), (42.0, 0.85), (182.0, (42 * 0.85 + 140 * 0.65) / 182),
        # Over two years 11.9 of 25 % were followed (Dorling 2021), over 155 days of 800 kcal 63.6 %: within a tenth.
        (730.0, 0.48), (155.0, 0.636),
    ],
)  # fmt: skip
def test_people_follow_less_of_a_deficit_the_longer_it_lasts(days: float, share: float) -> None:
    assert usual_share(0.0, days) == pytest.approx(share, abs=0.08)
    assert usual_days(days * usual_share(0.0, days)) == pytest.approx(days)


def test_between_two_days_they_follow_what_lies_between() -> None:
    assert usual_share(35.0, 49.0) == pytest.approx((0.85 + 0.65) / 2)
    assert usual_share(200.0, 300.0) == pytest.approx(0.5)


def test_of_somebody_unknown_a_forecast_expects_what_people_do() -> None:
    """Plans believe them; what a state holds of somebody who was never seen in a deficit says nothing."""
    for known in (None, OF_PEOPLE, Adherence(OF_PEOPLE.share, 6.0), Adherence(Estimate(0.7, 0.1), 6.0).faded(1e5)):
        found = apart_from_people(known)
        assert (found.mean, found.sd) == pytest.approx((0.0, 0.3), abs=1e-6)


def test_what_a_phase_has_shown_counts_against_what_people_do_by_its_precision() -> None:
    """Somebody follows all of it, 1 +- 0.1, over six weeks in which people follow 85 +- 30 %."""
    found = apart_from_people(learned(OF_PEOPLE, Estimate(1.0, 0.1), 6.0))
    assert found.mean == pytest.approx((100.0 * 0.15) / (100.0 + 0.3**-2))
    assert found.sd == pytest.approx((100.0 + 0.3**-2) ** -0.5)
    less = apart_from_people(learned(OF_PEOPLE, Estimate(0.5, 0.1), 6.0))
    assert less.mean == pytest.approx((100.0 * -0.35) / (100.0 + 0.3**-2))


def fat_interval(body: Body, plan: list[Stretch] = DEFICIT) -> Estimate:
    path = forecast(body, plan)
    return path.change(0, len(path.states) - 1).fat_kg


def test_an_interval_reaches_as_far_as_people_do_and_the_path_stays_the_plan() -> None:
    told, found = forecast(BODY, DEFICIT, is_eaten=True), fat_interval(BODY)
    alone = told.change(0, 6).fat_kg
    assert (found.mean, found.sd) == (alone.mean, alone.sd)
    assert found.lower == alone.lower
    # Of all that is lost in six weeks people lose 15 % less on the mean, with an SD of 30 % for 4 % of the intake.
    lost = -alone.mean
    eaten = 0.04 * 2100.0 / 500.0
    sd = (alone.sd**2 + (0.3**2 - eaten**2) * lost**2) ** 0.5
    assert found.upper == pytest.approx(alone.mean + 0.15 * lost + Z80 * sd, abs=0.05)
    assert found.upper > alone.upper + 0.3
    # Of a hold and of a gain people eat what somebody does who eats the plan.
    for kcal in (2600.0, 2900.0):
        assert forecast(BODY, [Stretch(Diet(kcal, 1300.0, 2.0), (7.0,) * 6)]).people is None


def test_what_is_known_of_somebody_narrows_it() -> None:
    anybody = fat_interval(BODY)
    keeper = fat_interval(BODY._replace(apart=apart_from_people(learned(OF_PEOPLE, Estimate(1.0, 0.1), 6.0))))
    slips = fat_interval(BODY._replace(apart=apart_from_people(learned(OF_PEOPLE, Estimate(0.75, 0.1), 6.0))))
    assert keeper.upper < slips.upper < anybody.upper
    assert keeper.lower == slips.lower == anybody.lower
    # The same deficit in its twentieth week is followed less.
    assert fat_interval(BODY._replace(deficit_days=140.0)).upper > anybody.upper


def test_what_a_log_shows_to_be_eaten_already_is_not_to_be_kept_to() -> None:
    assert fat_interval(BODY._replace(eaten_kcal=2120.0)) == forecast(BODY, DEFICIT, is_eaten=True).change(0, 6).fat_kg
    assert fat_interval(BODY._replace(eaten_kcal=2400.0)) == fat_interval(BODY)


def test_intervals_of_points_hold_both_too_for_one_and_for_many() -> None:
    ops = arrays()
    lean = BODY._replace(fat_kg=Estimate(12.0, 1.0))
    both = Body(
        weight_kg=many(np.full(2, 80.0)), fat_kg=Estimate(many(np.array([16.0, 12.0])), many(np.array([1.5, 1.0]))),
        maintenance_kcal=Estimate(many(np.full(2, 2600.0)), many(np.full(2, 120.0))), resting_kcal=1800.0,
    )  # fmt: skip
    together = [point.people for point in forecast(both, DEFICIT, ops=ops).points()]
    for who, body in enumerate((BODY, lean)):
        alone = [point.people for point in forecast(body, DEFICIT).points()]
        for one, many_ in zip(alone, together, strict=True):
            assert one is not None
            assert many_ is not None
            a, b = ([*each.slip, *each.spread, each.weighing_sd_kg] for each in (one, many_))
            assert [float(x) for x in a] == pytest.approx([float(np.broadcast_to(x, 2)[who]) for x in b], abs=1e-9)


def test_whoever_keeps_the_whole_of_it_gets_the_forecast_of_the_plan() -> None:
    path = forecast(BODY._replace(kept=Estimate(1.0, 0.1)), DEFICIT)
    assert path.states == forecast(BODY, DEFICIT).states
