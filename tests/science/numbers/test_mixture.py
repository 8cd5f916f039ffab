"""The interval of a mixture of two normals."""

import random
from statistics import NormalDist

import numpy as np
import pytest
from steelyard.science.numbers.elementwise import arrays
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.numbers.mixture import mixed, normal_share


def test_share_of_a_normal() -> None:
    for z in np.linspace(-8.0, 8.0, 161):
        assert normal_share(float(z)) == pytest.approx(NormalDist().cdf(float(z)), abs=2e-4)


def _parts(rng: random.Random) -> tuple[Estimate, Estimate, Estimate, float]:
    first = Estimate(rng.uniform(1500.0, 3000.0), rng.uniform(30.0, 300.0))
    second = Estimate(first.mean + rng.uniform(-600.0, 600.0), rng.uniform(30.0, 300.0))
    share = rng.random()
    mean = (1.0 - share) * first.mean + share * second.mean
    square = (1.0 - share) * (first.sd**2 + first.mean**2) + share * (second.sd**2 + second.mean**2)
    return Estimate(mean, (square - mean * mean) ** 0.5), first, second, share


def test_a_tenth_lies_beyond_each_end() -> None:
    rng = random.Random(8)
    for _ in range(200):
        whole, first, second, share = _parts(rng)
        found = mixed(whole, first, second, share)
        assert (found.mean, found.sd) == (whole.mean, whole.sd)

        def under(end: float, one: Estimate = first, two: Estimate = second, chance: float = share) -> float:
            return (1.0 - chance) * NormalDist(one.mean, one.sd).cdf(end) + chance * NormalDist(two.mean, two.sd).cdf(
                end
            )

        # An end is drawn out to the mean where that lies beyond it.
        assert under(found.lower) == pytest.approx(0.1, abs=4e-4) or found.lower == whole.mean
        assert under(found.upper) == pytest.approx(0.9, abs=4e-4) or found.upper == whole.mean


@pytest.mark.parametrize(("share", "whole"), [(0.0, Estimate(2000.0, 100.0)), (1.0, Estimate(2400.0, 150.0))])
def test_one_normal_has_its_own_interval(share: float, whole: Estimate) -> None:
    found = mixed(whole, Estimate(2000.0, 100.0), Estimate(2400.0, 150.0), share)
    assert found.lower == pytest.approx(whole.lower, abs=0.3)
    assert found.upper == pytest.approx(whole.upper, abs=0.3)


def test_the_mean_is_never_outside() -> None:
    found = mixed(Estimate(2250.0, 1000.0), Estimate(2000.0, 50.0), Estimate(7000.0, 50.0), 0.05)
    assert found.upper == 2250.0


def test_arrays_say_what_floats_say() -> None:
    rng = random.Random(9)
    people = [_parts(rng) for _ in range(20)]
    columns = [
        Estimate(*(np.array([getattr(p[i], name) for p in people]) for name in ("mean", "sd"))) for i in range(3)
    ]
    together = mixed(*columns, np.array([p[3] for p in people]), arrays())
    for i, parts in enumerate(people):
        assert together.lower[i] == pytest.approx(mixed(*parts).lower, rel=1e-12)
        assert together.upper[i] == pytest.approx(mixed(*parts).upper, rel=1e-12)
