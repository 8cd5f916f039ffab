"""The noise of scale weight, learnt from simulated weighings and against its likelihood written out in full."""

import random
from itertools import pairwise
from math import exp, log

import numpy as np
import pytest
from steelyard.science.body.daily_noise import Noise, prior_noise
from steelyard.science.log.noise import (
    NOISE_AUTOCORRELATION_LIMIT,
    NOISE_AUTOCORRELATION_SD,
    NOISE_PRIOR_PAIRS,
    learn_noise,
)
from steelyard.science.numbers.elementwise import arrays

PRIOR = Noise(0.45**2, 0.2)


def _log(rng: random.Random, days: int, sd: float, lag: float, missing: float = 0.2) -> tuple[list[float], list[float]]:
    now = sd * rng.gauss(0.0, 1.0)
    weights, seen = [], []
    for _ in range(days):
        weights.append(now)
        seen.append(0.0 if rng.random() < missing else 1.0)
        now = lag * now + (1.0 - lag * lag) ** 0.5 * sd * rng.gauss(0.0, 1.0)
    return weights, seen


@pytest.mark.parametrize("lag", [0.0, 0.3, 0.5])
@pytest.mark.parametrize("sd", [0.3, 0.5, 1.0])
def test_a_long_log_tells_variance_and_correlation(sd: float, lag: float) -> None:
    weights, seen = _log(random.Random(5), 1792, sd, lag)
    (learnt,) = learn_noise(weights, seen, PRIOR, [1792])
    assert learnt.variance**0.5 == pytest.approx(sd, rel=0.06)
    assert learnt.autocorrelation == pytest.approx(lag, abs=0.06)


def test_a_month_is_weighed_as_its_likelihood_written_out_says() -> None:
    """Generalised least squares of level and slope, restricted likelihood, every pair of weighings linked."""
    grid = np.arange(0.0, NOISE_AUTOCORRELATION_LIMIT + 0.05, 0.1)
    months = 0
    for seed in range(60):
        weights, seen = _log(random.Random(seed), 28, 0.5, 0.3)
        weighed = [w for w, s in zip(weights, seen, strict=True) if s]
        if max(abs(b - a) for a, b in pairwise(weighed)) > 1.2:
            continue  # a move that may be cut
        months += 1
        (learnt,) = learn_noise(weights, seen, PRIOR, [28])
        at = np.flatnonzero(seen)
        y, line = np.array(weights)[at], np.stack([np.ones(len(at)), at - 13.5], axis=1)
        fits, variances = [], []
        worth = NOISE_PRIOR_PAIRS + len(at) - 2
        for r in grid:
            inverse = np.linalg.inv(r ** np.abs(at[:, None] - at[None, :]))
            squares = line.T @ inverse @ line
            left = y - line @ np.linalg.solve(squares, line.T @ inverse @ y)
            variance = (NOISE_PRIOR_PAIRS * PRIOR.variance + left @ inverse @ left) / worth
            spread = np.linalg.slogdet(np.linalg.inv(inverse))[1] + np.linalg.slogdet(squares)[1]
            apart = (r - PRIOR.autocorrelation) / NOISE_AUTOCORRELATION_SD
            fits.append(-0.5 * (worth * log(variance) + spread + apart * apart))
            variances.append(variance)
        share = np.array([exp(fit - max(fits)) for fit in fits])
        share /= share.sum()
        assert learnt.variance == pytest.approx(share @ variances, rel=0.06)
        assert learnt.autocorrelation == pytest.approx(share @ grid, abs=0.04)
    assert months >= 15


def test_slow_errors_of_the_expected_path_do_not_matter() -> None:
    weights, seen = _log(random.Random(2), 112, 0.5, 0.2)
    (plain,) = learn_noise(weights, seen, PRIOR, [112])
    (bent,) = learn_noise([w - 0.05 * i + 0.0002 * i * i for i, w in enumerate(weights)], seen, PRIOR, [112])
    assert bent.variance == pytest.approx(plain.variance, rel=0.05)
    assert bent.autocorrelation == pytest.approx(plain.autocorrelation, abs=0.03)


@pytest.mark.parametrize("lasts", [True, False])
def test_a_jump_hardly_counts_as_noise(lasts: bool) -> None:
    weights, seen = _log(random.Random(3), 112, 0.5, 0.2, 0.0)
    (plain,) = learn_noise(weights, seen, PRIOR, [112])
    jumped = [w + (10.0 if (i >= 40 if lasts else i == 40) else 0.0) for i, w in enumerate(weights)]
    (learnt,) = learn_noise(jumped, seen, PRIOR, [112])
    assert learnt.variance < 1.3 * plain.variance  # 10 kg left in would make it hundreds of times as large


def test_hardly_any_weighings_leave_the_prior() -> None:
    for seen in ([0.0] * 28, [1.0] + [0.0] * 27, [1.0, *[0.0] * 26, 1.0]):
        (learnt,) = learn_noise([70.0 + i for i in range(28)], seen, PRIOR, [28])
        assert learnt.variance == pytest.approx(PRIOR.variance)
        assert 0.0 <= learnt.autocorrelation <= NOISE_AUTOCORRELATION_LIMIT


def test_each_count_of_days_is_read_from_the_days_before_it_only() -> None:
    weights, seen = _log(random.Random(4), 112, 0.5, 0.3)
    early, month, late = learn_noise(weights, seen, PRIOR, [14, 28, 112])
    assert (early,) == tuple(learn_noise(weights[:14], seen[:14], PRIOR, [14]))
    assert [early, month] == learn_noise(weights[:28], seen[:28], PRIOR, [14, 28])
    assert (late,) == tuple(learn_noise(weights, seen, PRIOR, [112]))


def test_arrays_say_what_floats_say() -> None:
    logs = [
        _log(random.Random(seed), 112, sd, 0.3, gaps)
        for seed, sd, gaps in ((1, 0.4, 0.0), (2, 0.9, 0.5), (3, 0.5, 0.97))
    ]
    ops = arrays()
    prior = prior_noise(np.array([60.0, 80.0, 100.0]), ops)
    weights = list(np.array([w for w, _ in logs]).T)
    seen = list(np.array([s for _, s in logs]).T)
    together = learn_noise(weights, seen, prior, [14, 28, 112], ops=ops)
    for person, (own, own_seen) in enumerate(logs):
        alone = learn_noise(own, own_seen, Noise(float(prior.variance[person]), prior.autocorrelation), [14, 28, 112])
        for both, one in zip(together, alone, strict=True):
            assert both.variance[person] == pytest.approx(one.variance, rel=1e-12)
            assert both.autocorrelation[person] == pytest.approx(one.autocorrelation, rel=1e-12)
