"""What carried mass does after a log: water without a cause fades, as much comes anew, and people answer diets in ways
of their own."""

import math

import numpy as np
import pytest
from steelyard.science.log import CarriedAhead
from steelyard.science.numbers import Estimate

FADES_DAYS, USUAL_SD_KG = 14.0, 0.30  # as in the catalogue (judgement)


def ahead(response: float = 1.0, water_kg: float = 0.0, water_sd_kg: float = 0.0) -> CarriedAhead:
    return CarriedAhead(Estimate(response, 0.3), Estimate(water_kg, water_sd_kg))


def test_on_the_day_itself_nothing_moves() -> None:
    assert ahead(1.4, -0.5, 0.4).beyond_model(0.0, 0.0) == Estimate(0.0, 0.0)


def test_what_a_person_answers_more_than_the_model_is_added() -> None:
    assert ahead(1.4).beyond_model(0.5, 14.0).mean == pytest.approx(0.4 * 0.5)
    assert ahead(0.6).beyond_model(-0.5, 14.0).mean == pytest.approx(0.4 * 0.5)


def test_water_goes_in_the_end_and_as_much_is_there_as_ever() -> None:
    moved = ahead(water_kg=0.8, water_sd_kg=0.2).beyond_model(0.0, 1000.0)
    assert moved.mean == pytest.approx(-0.8)
    assert moved.sd == pytest.approx(math.hypot(0.2, USUAL_SD_KG))


@pytest.mark.parametrize("days", [3, 7, 14])
def test_its_spread_is_that_of_water_walked_day_by_day(days: int) -> None:
    """An independent computation: 40,000 walks whose stationary SD is that of unexplained water, half per cent off."""
    rng = np.random.default_rng(5)
    kept = math.exp(-1.0 / FADES_DAYS)
    start = 0.4 + 0.25 * rng.standard_normal(40_000)
    water = start
    for _ in range(days):
        water = kept * water + USUAL_SD_KG * math.sqrt(1.0 - kept * kept) * rng.standard_normal(len(water))
    moved = ahead(water_kg=0.4, water_sd_kg=0.25).beyond_model(0.0, float(days))
    assert moved.mean == pytest.approx(float(np.mean(water - start)), abs=0.006)
    assert moved.sd == pytest.approx(float(np.std(water - start)), rel=0.02)
