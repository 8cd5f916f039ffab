"""An estimate against the normal distribution of a library."""

import pytest
from scipy import stats
from steelyard.science.numbers import Estimate


@pytest.mark.parametrize("limit", [-9.0, -1.2, 0.4, 0.9, 3.0, 12.0])
def test_probabilities_are_those_of_a_normal(limit: float) -> None:
    estimate, normal = Estimate(0.4, 1.7), stats.norm(0.4, 1.7)
    assert estimate.probability_under(limit) == pytest.approx(normal.cdf(limit), abs=1e-12)
    assert estimate.probability_over(limit) == pytest.approx(normal.sf(limit), abs=1e-12)


def test_the_interval_holds_eighty_percent() -> None:
    estimate = Estimate(2.0, 0.3)
    inside = estimate.probability_under(estimate.upper) - estimate.probability_under(estimate.lower)
    assert inside == pytest.approx(0.8, abs=1e-12)


@pytest.mark.parametrize(("limit", "under"), [(0.9, 0.0), (1.0, 0.0), (1.1, 1.0)])
def test_without_an_error_there_is_no_doubt(limit: float, under: float) -> None:
    assert Estimate(1.0, 0.0).probability_under(limit) == under
    assert Estimate(1.0, 0.0).probability_over(limit) == 1.0 - under
