"""The expected path of carried mass is that of the full model, which also moves the tissues."""

import pytest
from steelyard.science.body.carried_mass import expected_carried_kg
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import Diet, calibrate


def test_equals_the_fast_states_of_the_energy_balance_model() -> None:
    maintenance = 2800.0
    model, state = calibrate(
        weight_kg=80.0, fat_kg=14.0, maintenance_kcal=maintenance, resting_kcal=1800.0, training_dose=1.0
    )
    intakes = [2800.0] * 3 + [2100.0] * 6 + [3200.0] * 5
    carbohydrate = [0.5 * i - 40.0 * (day % 4) for day, i in enumerate(intakes)]
    expected = []
    for intake, carbs in zip(intakes, carbohydrate, strict=True):
        expected.append(state.carried_kg)
        state = advance(model, state, Diet(intake, carbs, 1.8), 1.0)
    assert expected_carried_kg(intakes, maintenance, carbohydrate_kcal=carbohydrate) == pytest.approx(
        expected, abs=1e-12
    )


def test_the_scale_of_logging_hardly_counts() -> None:
    """Resting values follow the ratio of intakes alone; only the speed of glycogen knows grams of carbohydrate."""
    intakes = [2500.0, 2000.0, 2100.0, 2600.0]
    logged = [0.8 * intake for intake in intakes]
    assert expected_carried_kg(logged, 0.8 * 2500.0) == pytest.approx(expected_carried_kg(intakes, 2500.0), abs=0.02)
