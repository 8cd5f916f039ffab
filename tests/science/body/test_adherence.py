"""The share of planned deficits that is followed: how it is combined and fades, and what a forecast expects of it."""

import pytest
from steelyard.science.body import (
    ADHERENCE_SPREAD,
    OF_PEOPLE,
    Adherence,
    Body,
    Diet,
    Stretch,
    UncertaintySource,
    as_followed,
    forecast,
    learned,
    start_body,
    unfollowed_share,
)
from steelyard.science.numbers import Estimate

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
    # Of its own error: 0.1 of the deficit, where that of all people is 4 % of the intake.
    effects = [path.fat_effects(6)[UncertaintySource.ADHERENCE] for path in (plain, kept)]
    assert effects[1] / effects[0] == pytest.approx(0.1 * 500.0 / (ADHERENCE_SPREAD * 2100.0), rel=0.1)


def test_whoever_keeps_the_whole_of_it_gets_the_forecast_of_the_plan() -> None:
    path = forecast(BODY._replace(kept=Estimate(1.0, 0.1)), DEFICIT)
    assert path.states == forecast(BODY, DEFICIT).states
