"""Forecasts with intervals: what each source of uncertainty does, and how the spreads are read."""

import numpy as np
import pytest
from steelyard.science.body import forecasting
from steelyard.science.body.constants import BASELINE_GLYCOGEN_KG
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.forecasting import Stretch, forecast, stored_kcal
from steelyard.science.body.state import Diet, calibrate
from steelyard.science.body.uncertainty import Body, UncertaintySource, experience_years, start_body, training_dose
from steelyard.science.numbers.elementwise import arrays
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import Training, TrainingStatus

BODY = Body(
    weight_kg=80.0,
    fat_kg=Estimate(14.0, 2.0),
    maintenance_kcal=Estimate(2850.0, 150.0),
    resting_kcal=1780.0,
    experience_years=2.5,
    training_dose=1.0,
)
CUT = Diet(2350.0, 1100.0, 2.0)
GAIN = Diet(3050.0, 1500.0, 1.8)
PLAN = [Stretch(CUT, (7.0,) * 5), Stretch(GAIN, (7.0,) * 8)]


def test_the_path_is_that_of_the_model() -> None:
    path = forecast(BODY, PLAN)
    model, state = calibrate(
        weight_kg=80.0,
        fat_kg=14.0,
        maintenance_kcal=2850.0,
        resting_kcal=1780.0,
        experience_years=2.5,
        training_dose=1.0,
    )
    assert path.states[0] == state
    assert len(path.states) == 14
    after_cut = advance(model, state, CUT, 35.0)
    assert path.states[5] == after_cut
    assert path.states[13] == advance(model, after_cut, GAIN, 56.0)


def test_energy_balance_is_what_is_stored() -> None:
    path = forecast(BODY, PLAN)
    assert path.energy_balance_kcal(1) == pytest.approx(stored_kcal(path.states[0], path.states[1]) / 7)
    assert path.energy_balance_kcal(1) < 0 < path.energy_balance_kcal(13)


def test_maintenance_falls_in_a_deficit_and_returns_with_intake() -> None:
    path = forecast(BODY, PLAN)
    levels = [path.maintenance_kcal(i) for i in range(14)]
    assert levels[0] == pytest.approx(2850.0)
    assert levels[5] < levels[1] < levels[0]
    assert levels[13] > levels[5]


# --- spreads ---------------------------------------------------------------------------------------------------


def test_spreads_come_one_a_point_and_start_at_what_is_known() -> None:
    path = forecast(BODY, PLAN)
    spreads = path.spreads()
    assert len(spreads) == len(path.states)
    start = spreads[0]
    # Scale weight is read; body fat and maintenance are as uncertain as they came.
    assert start.weight_kg == pytest.approx(0.0, abs=1e-9)
    assert start.fat_kg == pytest.approx(2.0)
    assert start.lean_kg == pytest.approx(2.0)
    assert start.fat_fraction == pytest.approx(2.0 / 80.0)
    assert start.maintenance_kcal == pytest.approx(150.0, rel=0.01)


def test_weight_grows_more_uncertain_with_time() -> None:
    weights = [spread.weight_kg for spread in forecast(BODY, [Stretch(CUT, (7.0,) * 12)]).spreads()]
    assert weights == sorted(weights)


def test_sources_add_as_squares() -> None:
    together = forecast(BODY, PLAN).spreads()[5]
    alone = [forecast(BODY, PLAN, sources=frozenset({source})).spreads()[5] for source in UncertaintySource]
    for field in ("weight_kg", "fat_kg", "lean_kg", "maintenance_kcal", "fat_fraction"):
        squares = sum(getattr(spread, field) ** 2 for spread in alone)
        assert getattr(together, field) == pytest.approx(squares**0.5, rel=1e-9)


def test_no_source_no_spread() -> None:
    assert all(value == 0.0 for spread in forecast(BODY, PLAN, sources=frozenset()).spreads() for value in spread)


def test_each_source_is_one_standard_deviation() -> None:
    # Maintenance alone: the same body run again with one SD more of it, which is what the spread should say.
    only = frozenset({UncertaintySource.MAINTENANCE})
    path = forecast(BODY, [Stretch(CUT, (7.0,) * 4)], sources=only)
    more = forecast(BODY._replace(maintenance_kcal=Estimate(3000.0, 0.0)), [Stretch(CUT, (7.0,) * 4)], sources=only)
    moved = more.states[4].fat_kg - path.states[4].fat_kg
    # The moved run takes longer steps: grams.
    assert path.spreads()[4].fat_kg == pytest.approx(abs(moved), abs=0.005)


def test_adherence_is_a_share_of_what_is_eaten() -> None:
    only = frozenset({UncertaintySource.ADHERENCE})
    path = forecast(BODY, [Stretch(CUT, (7.0,) * 4)], sources=only)
    more = CUT._replace(intake_kcal=1.04 * CUT.intake_kcal, carbohydrate_kcal=1.04 * CUT.carbohydrate_kcal)
    eaten = forecast(BODY, [Stretch(more, (7.0,) * 4)], sources=only)
    assert path.spreads()[4].fat_kg == pytest.approx(eaten.states[4].fat_kg - path.states[4].fat_kg, abs=0.005)


@pytest.mark.parametrize("usual_kcal", [None, 3200.0])
def test_what_moved_runs_share_with_the_expected_one_is_the_same(
    usual_kcal: float | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The start and the carried mass that are taken over are those that each run finds by itself."""
    body = BODY._replace(usual_intake_kcal=usual_kcal)
    shared = forecast(body, PLAN)
    monkeypatch.setattr(forecasting, "_CARRIED_SOURCES", frozenset(UncertaintySource))
    monkeypatch.setattr(forecasting, "_START_SOURCES", frozenset(UncertaintySource))
    alone = forecast(body, PLAN)
    for ours, own in zip(shared.moved, alone.moved, strict=True):
        for a, b in zip(ours.states, own.states, strict=True):
            assert a == pytest.approx(b, rel=1e-12, abs=1e-12)


def test_a_change_is_less_uncertain_than_a_level() -> None:
    path = forecast(BODY, PLAN)
    change = path.spread_of_change(0, 5)
    level = path.spreads()[5]
    assert change.fat_kg < level.fat_kg
    assert change.weight_kg == pytest.approx(level.weight_kg)


def test_the_dominant_source_moves_fat_most() -> None:
    path = forecast(BODY, PLAN)
    effects = path.fat_effects(5)
    assert path.dominant_source(5) == max(effects, key=lambda source: abs(effects[source]))
    sure = BODY._replace(maintenance_kcal=Estimate(2850.0, 0.0), fat_kg=Estimate(14.0, 0.0))
    assert forecast(sure, PLAN).dominant_source(5) != UncertaintySource.MAINTENANCE
    assert forecast(BODY, PLAN, sources=frozenset()).dominant_source(5) is None


def test_how_well_training_spares_lean_tissue_is_not_known_of_a_person() -> None:
    """Against a sum by hand: three tenths of the Forbes share of the deficit's energy, C / (C + F) with C = 10.4 x
    1816 / 9441 (Hall 2007), come from lean tissue, or from fat in its stead. Who does not train has no such spread."""
    only = frozenset({UncertaintySource.TRAINING_RESPONSE})
    veteran = BODY._replace(experience_years=12.0)
    path = forecast(veteran, [Stretch(CUT, (7.0,) * 6)], sources=only)
    deficit_kcal = -stored_kcal(path.states[0], path.states[-1])
    forbes_kg = 10.4 * 1816.0 / 9441.0
    by_hand = 0.3 * forbes_kg / (forbes_kg + 13.0) * deficit_kcal / 1816.0
    assert path.spreads()[-1].lean_kg == pytest.approx(by_hand, rel=0.2)
    idle = forecast(BODY._replace(training_dose=0.0), [Stretch(CUT, (7.0,) * 6)], sources=only)
    assert idle.spreads()[-1].lean_kg < 1e-4


def test_overfeeding_spreads_people_more_than_the_same_underfeeding_of_their_activity() -> None:
    # Spontaneous activity differs widely under overfeeding (Levine JA et al. Science 1999;283:212-4).
    only = frozenset({UncertaintySource.ADAPTATION})
    over = Diet(2850.0 + 1000.0, 1900.0, 1.6)
    spread = forecast(BODY, [Stretch(over, (7.0,) * 8)], sources=only).spreads()[8]
    gained = forecast(BODY, [Stretch(over, (7.0,) * 8)]).states[8].fat_kg - 14.0
    # Fat gained there ran from 0.36 to 4.23 kg around a mean of 2.4: an SD of about two fifths or more of the mean
    # with all sources; the adaptive share alone gives a part of that.
    assert 0.05 * gained < spread.fat_kg < 0.5 * gained


# --- the start -------------------------------------------------------------------------------------------------


def test_who_ate_a_surplus_starts_fuller_at_the_same_weight() -> None:
    model, state = start_body(BODY._replace(usual_intake_kcal=3150.0))
    assert state.weight_kg == pytest.approx(80.0)
    assert state.fat_kg == 14.0
    assert state.carried_kg > 0.1
    plain = start_body(BODY)[1]
    assert plain.carried_kg == pytest.approx(0.0)
    assert plain.lean_kg - state.lean_kg == pytest.approx(state.carried_kg)
    assert model.maintenance_kcal == 2850.0


def test_masses_add_up() -> None:
    for state in forecast(BODY, PLAN).states:
        assert state.fat_kg + state.lean_kg + state.carried_kg + BASELINE_GLYCOGEN_KG == pytest.approx(state.weight_kg)


def test_training_is_read_as_years_and_dose() -> None:
    years = [experience_years(Training(status=status, resistance_sessions_per_week=3)) for status in TrainingStatus]
    assert years == sorted(years)
    new = Training(status=TrainingStatus.INTERMEDIATE, resistance_sessions_per_week=3, is_new_programme=True)
    assert experience_years(new) < experience_years(Training(status=TrainingStatus.INTERMEDIATE))
    doses = [
        training_dose(Training(status=TrainingStatus.NOVICE, resistance_sessions_per_week=sessions))
        for sessions in (0, 0.5, 1, 2, 5)
    ]
    assert doses[0] == 0.0
    assert doses == sorted(doses)
    assert doses[3] == doses[4] == 1.0


def test_many_people_at_once() -> None:
    ops = arrays()
    people = [BODY, BODY._replace(weight_kg=62.0, fat_kg=Estimate(16.0, 1.5), maintenance_kcal=Estimate(2100.0, 120.0))]
    together = Body(
        weight_kg=np.array([80.0, 62.0]),
        fat_kg=Estimate(np.array([14.0, 16.0]), np.array([2.0, 1.5])),
        maintenance_kcal=Estimate(np.array([2850.0, 2100.0]), np.array([150.0, 120.0])),
        resting_kcal=1780.0,
        experience_years=2.5,
        training_dose=1.0,
    )
    many = forecast(together, PLAN, ops=ops)
    spreads = many.spreads()
    for i, one in enumerate(people):
        alone = forecast(one, PLAN)
        assert many.states[-1].weight_kg[i] == pytest.approx(alone.states[-1].weight_kg, rel=1e-12)
        for a, b in zip(spreads[-1], alone.spreads()[-1], strict=True):
            assert np.broadcast_to(a, 2)[i] == pytest.approx(b, rel=1e-9)


def _of_water(usual_kcal: float, intake_kcal: float, carries: float = 1.0) -> forecasting.Forecast:
    """Six weeks of a man who needs 2,700 kcal, of whom all but how far carried mass answers is known."""
    body = Body(80.0, Estimate(12.0, 0.0), Estimate(2700.0, 0.0), 1800.0, usual_intake_kcal=usual_kcal, carries=carries)
    plan = [Stretch(Diet(intake_kcal, 0.5 * intake_kcal, 1.8), (7.0,) * 6)]
    return forecast(body, plan, sources=frozenset({UncertaintySource.CARRIED_MASS}))


def test_how_much_comes_back_in_a_deficit_is_not_known_of_a_person() -> None:
    """The spread outgrows that of what is still off, as what has come back by then differs between people."""
    points = _of_water(2700.0, 2100.0).points()
    assert points[1].carried_kg < points[6].carried_kg < -0.3
    assert points[6].spread.weight_kg > 0.7 * abs(points[6].carried_kg)


def test_what_is_carried_at_the_start_of_a_diet_that_goes_on_is_not_known() -> None:
    """It was not weighed apart, though the weight was: its change alone moves the scale."""
    start, *_, end = _of_water(2100.0, 2100.0).points()
    assert start.spread.weight_kg == 0.0
    assert end.spread.weight_kg < 0.05
    assert start.spread.carried_kg > 0.4 * abs(start.carried_kg) > 0.1


def test_carried_mass_goes_as_far_as_a_log_tells_it() -> None:
    as_people, more = (_of_water(2700.0, 2100.0, carries).points()[1].carried_kg for carries in (1.0, 1.5))
    assert 1.3 < more / as_people < 1.5
