"""The split of a change of tissue into fat and lean, with and without readings of body fat."""

import numpy as np
import pytest
from science.log.test_trend import MODEL, STATE
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import Diet
from steelyard.science.log.fat_and_lean import CompositionChange, FatReading, composition_change, partition_of
from steelyard.science.measures.body_composition import METHOD_ERRORS
from steelyard.science.measures.fat_combination import FatValue
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import BodyFatMethod

DAYS = 85
PATH = [84.0 - 0.05 * day for day in range(DAYS)]  # 4.2 kg of tissue in twelve weeks
PRIOR = Estimate(16.0, 3.0)
PARTITION = partition_of(MODEL, STATE, 1.6, is_gaining=False)


def split(*readings: tuple[int, float, BodyFatMethod]) -> CompositionChange:
    told = [FatReading(day, FatValue(value, method, METHOD_ERRORS[method])) for day, value, method in readings]
    return composition_change(PRIOR, PARTITION, told, PATH, PATH, 0.2)


def test_without_readings_the_body_model_speaks() -> None:
    """Against the model itself run through the same change."""
    state = STATE
    for _ in range(12):
        state = advance(MODEL, state, Diet(2200.0, 1100.0, 1.6), 7.0)
    tissue = np.linspace(STATE.tissue_kg, state.tissue_kg, DAYS)
    found = composition_change(PRIOR, PARTITION, [], list(tissue + 2.0), list(tissue), 0.2)
    assert found.fat_change_kg.mean == pytest.approx(state.fat_kg - STATE.fat_kg, abs=0.1)
    assert found.lean_change_kg.mean == pytest.approx(state.lean_kg - STATE.lean_kg, abs=0.1)
    assert found.reading_count == 0
    assert found.fat_kg == PRIOR


def test_a_share_of_nothing_is_no_certainty() -> None:
    """Where training and protein spare nearly all lean tissue, a spread in proportion to what is lost would promise it
    to a few hundred grams over 4.2 kg: people differ in how much is spared."""
    spared = partition_of(MODEL, STATE, 2.4, is_gaining=False)
    assert 1.0 - spared.fat_share < 0.1
    assert spared.sharing_sd_kg(-4.2, 84.0) > 0.4
    idle = MODEL._replace(training_dose=0.0)
    unspared = partition_of(idle, STATE, 1.0, is_gaining=False)
    assert unspared.share_sd == pytest.approx(0.7 * (1.0 - unspared.fat_share))


def test_the_parts_add_up() -> None:
    for found in (split(), split((0, 0.24, BodyFatMethod.DXA), (84, 0.22, BodyFatMethod.DXA))):
        assert found.fat_change_kg.mean + found.lean_change_kg.mean == pytest.approx(-4.2)


def test_two_readings_by_one_method_say_more_of_the_change_than_by_two() -> None:
    same = split((0, 0.24, BodyFatMethod.DXA), (84, 0.22, BodyFatMethod.DXA))
    mixed = split((0, 0.24, BodyFatMethod.DXA), (84, 0.22, BodyFatMethod.AIR_DISPLACEMENT))
    assert same.fat_change_kg.sd < mixed.fat_change_kg.sd < split().fat_change_kg.sd + 1e-12


def test_readings_move_the_split_towards_what_they_show() -> None:
    """0.24 of 84 kg and 0.21 of 79.8 kg are 20.2 and 16.8 kg of fat: 3.4 kg lost, where the model expects more."""
    expected = split()
    read = split((0, 0.24, BodyFatMethod.DXA), (84, 0.21, BodyFatMethod.DXA))
    assert expected.fat_change_kg.mean < read.fat_change_kg.mean < -3.4
    assert read.lean_change_kg.mean < expected.lean_change_kg.mean
    # The level is read too, with the bias of the method in between.
    assert PRIOR.mean < read.fat_kg.mean < 16.8
    assert read.fat_kg.sd < PRIOR.sd


def test_taking_in_readings_is_least_squares() -> None:
    """Against one dense Bayes solution of the same linear model."""
    readings = [(0, 0.25, BodyFatMethod.SKINFOLDS), (40, 0.22, BodyFatMethod.DXA), (84, 0.20, BodyFatMethod.SKINFOLDS)]
    found = split(*readings)
    by_training = PARTITION.fat_kg_per_day - PARTITION.fat_share * PARTITION.tissue_kg_per_day
    skinfolds, dxa = METHOD_ERRORS[BodyFatMethod.SKINFOLDS], METHOD_ERRORS[BodyFatMethod.DXA]
    mean = np.array([PRIOR.mean, PARTITION.fat_share, 1.0, 0.0, 0.0])
    spread = np.array([PRIOR.sd, PARTITION.share_sd, 0.5, skinfolds.bias_sd, dxa.bias_sd])
    precision, target = np.diag(1.0 / spread**2), mean / spread**2
    for day, value, method in readings:
        weight = PATH[day]
        is_skinfolds = method is BodyFatMethod.SKINFOLDS
        row = np.array(
            [
                1.0,
                PATH[day] - PATH[-1],
                -by_training * (DAYS - 1 - day),
                weight * is_skinfolds,
                weight * (not is_skinfolds),
            ]
        )
        error = ((skinfolds if is_skinfolds else dxa).day_to_day_sd * weight) ** 2
        precision, target = precision + np.outer(row, row) / error, target + row * value * weight / error
    solved, cov = np.linalg.solve(precision, target), np.linalg.inv(precision)
    assert found.fat_kg.mean == pytest.approx(solved[0])
    assert found.fat_kg.sd == pytest.approx(cov[0, 0] ** 0.5)
    change = PATH[-1] - PATH[0]
    assert found.fat_change_kg.mean == pytest.approx(solved[1] * change + solved[2] * by_training * (DAYS - 1))
