"""The filter and smoother against statsmodels, against a dense textbook filter, and in what they are for."""

import math
from typing import Any

import numpy as np
import pytest
from filter_likelihood import log_likelihood
from steelyard.science.log.filter import DailySeries, FilterSettings, Start, filter_weights
from steelyard.science.log.smoother import causal_path, smooth_weights
from steelyard.science.log.water import JUMP_CHANCE, JUMP_SD_KG, in_hindsight
from steelyard.science.numbers.elementwise import arrays

DAYS = 80
RHO = 9000.0
DRIFT = 20.0**2
START = Start(80.0, 25.0, 2600.0, 300.0**2)


def made_log(seed: int = 3, days: int = DAYS) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """Weights, which days are weighed (a run of gaps among them), intakes, expected carried mass."""
    rng = np.random.default_rng(seed)
    weight = 80.0 + np.cumsum(rng.normal(-0.04, 0.02, days)) + 0.5 * rng.standard_normal(days)
    seen = rng.random(days) > 0.25
    seen[20:26] = False
    carried = -0.9 * (1.0 - np.exp(-np.arange(days) / 3.0)) + 0.1 * rng.standard_normal(days)
    return weight, seen, rng.normal(2300.0, 250.0, days), carried


def series(weight: Any, seen: Any, intake: Any, carried: Any = None, slope: Any = None) -> DailySeries:
    days = len(weight)
    return DailySeries(
        [float(w) if s else 0.0 for w, s in zip(weight, seen, strict=True)],
        [float(s) for s in seen],
        [1.0] * days,
        [float(i) for i in intake],
        [120.0**2] * days,
        None if carried is None else [float(c) for c in carried],
        None if slope is None else [slope] * days,
        START.maintenance_kcal,
    )


def settings(*, lag: float = 0.0, epsilon: float = 0.0, is_robust: bool = False) -> FilterSettings:
    return FilterSettings(RHO, epsilon, 0.25, lag, DRIFT, 1.0, 0.4**2, is_robust)


@pytest.mark.parametrize("gaps", [False, True])
def test_special_case_equals_the_local_linear_trend_of_statsmodels(gaps: bool) -> None:
    """Oracle: statsmodels' UnobservedComponents, 'local linear trend', initial state known and matched."""
    sm = pytest.importorskip("statsmodels.api")
    weight, seen, _, _ = made_log()
    if not gaps:
        seen = np.ones(DAYS, bool)
    intake, g = 2300.0, 1.0 / RHO
    daily = series(weight, seen, [intake] * DAYS)
    filtered = filter_weights(daily, settings(), START)
    smooth = smooth_weights(filtered, daily)

    model = sm.tsa.UnobservedComponents(np.where(seen, weight, np.nan), "local linear trend", loglikelihood_burn=0)
    model.ssm.initialize_known(
        np.array([START.tissue_kg, g * (intake - START.maintenance_kcal)]),
        np.diag([START.tissue_variance, g * g * START.maintenance_variance]),
    )
    result = model.smooth([0.25, g * g * 120.0**2, g * g * DRIFT])
    assert log_likelihood(filtered, daily) == pytest.approx(result.llf, abs=1e-8)
    level, slope = result.smoothed_state
    assert np.abs(np.array(smooth.tissue) - level).max() < 1e-8
    assert np.abs(g * (intake - np.array(smooth.maintenance)) - slope).max() < 1e-8
    cov = result.smoothed_state_cov
    assert np.abs(np.array(smooth.level_variance) - cov[0, 0]).max() < 1e-8
    assert np.abs(g * g * np.array(smooth.maintenance_variance) - cov[1, 1]).max() < 1e-8


def dense(weight: Any, seen: Any, intake: Any, carried: Any, slope: float, lag: float, epsilon: float) -> Any:
    """Textbook Kalman filter and Rauch-Tung-Striebel smoother over (tissue, maintenance, amplitude, noise).

    Here the autocorrelated noise and the amplitude are states, and covariances are full matrices.
    """
    g = 1.0 / RHO
    k = epsilon * g
    step = np.array([[1, -g, 0, 0], [0, 1 - k, 0, 0], [0, 0, 1, 0], [0, 0, 0, lag]])
    noise = np.diag([g * g * 120.0**2, DRIFT, 0.0, 0.25 * (1 - lag**2)])
    state = np.array([START.tissue_kg, START.maintenance_kcal, 1.0, 0.0])
    cov = np.diag([START.tissue_variance, START.maintenance_variance, 0.4**2, 0.25])
    predicted, filtered, fit = [], [], 0.0
    for day in range(len(weight)):
        predicted.append((state, cov))
        if seen[day]:
            load = np.array([1.0, slope, carried[day], 1.0])
            total = load @ cov @ load
            gain = cov @ load / total
            error = weight[day] + slope * START.maintenance_kcal - load @ state
            fit -= 0.5 * (math.log(2 * math.pi * total) + error**2 / total)
            state, cov = state + gain * error, cov - np.outer(gain, gain) * total
        filtered.append((state, cov))
        state = step @ state + np.array([g * intake[day], k * intake[day], 0, 0])
        cov = step @ cov @ step.T + noise
    smooth = [filtered[-1]]
    cross = [filtered[-1][1]]
    for day in range(len(weight) - 2, -1, -1):
        state, cov = filtered[day]
        back = cov @ step.T @ np.linalg.pinv(predicted[day + 1][1], rcond=1e-13)
        after, after_cov = smooth[0]
        smooth.insert(
            0,
            (state + back @ (after - predicted[day + 1][0]), cov + back @ (after_cov - predicted[day + 1][1]) @ back.T),
        )
        cross.insert(0, back @ cross[0])
    return fit, filtered, smooth, cross


@pytest.mark.parametrize("slope", [0.0, 0.0012])
@pytest.mark.parametrize("lag", [0.0, 0.3])
def test_whole_model_equals_a_dense_filter(lag: float, slope: float) -> None:
    """Exact without autocorrelation. With it, the whitening neglects that tissue wanders between two weighings.

    Bound for that: the intake's error of 120 kcal makes 0.013 kg a day; the link of 0.3 passes on a third of it,
    the gain less than half of that: 2 g. Maintenance moves by up to 5 kcal/d over the gap of six days, which is
    0.3 x 0.0012 x 5 = another 2 g. In the likelihood that is under 0.001 a weighing, and in maintenance it must
    stay under a fiftieth of its SD.
    """
    weight, seen, intake, carried = made_log()
    epsilon = 25.0
    daily = series(weight, seen, intake, carried, slope)
    filtered = filter_weights(daily, settings(lag=lag, epsilon=epsilon), START)
    causal = causal_path(filtered, daily)
    smooth = smooth_weights(filtered, daily, change_days=range(DAYS))
    fit, expected, expected_smooth, cross = dense(weight, seen, intake, carried, slope, lag, epsilon)

    kg = 1e-9 if lag == 0.0 else 4e-3
    assert log_likelihood(filtered, daily) == pytest.approx(fit, abs=1e-8 if lag == 0.0 else 0.001 * seen.sum())
    for day in range(DAYS):
        for path, (state, cov) in ((causal, expected[day]), (smooth, expected_smooth[day])):
            kcal = 1e-6 if lag == 0.0 else 0.02 * cov[1, 1] ** 0.5
            load = np.array([1.0, slope, carried[day], 0.0])
            level = load @ state - slope * START.maintenance_kcal
            assert path.tissue[day] == pytest.approx(state[0], abs=kg)
            assert path.level[day] == pytest.approx(level, abs=kg)
            assert path.level_variance[day] == pytest.approx(load @ cov @ load, abs=kg)
            assert path.maintenance[day] == pytest.approx(state[1], abs=kcal)
            assert path.maintenance_variance[day] ** 0.5 == pytest.approx(cov[1, 1] ** 0.5, abs=kcal)
        variance, with_last, per_amplitude = smooth.changes[day]
        assert variance == pytest.approx(expected_smooth[day][1][0, 0], abs=kg)
        assert with_last == pytest.approx(cross[day][0, 0], abs=kg)
        # The fall of tissue by amplitude is its covariance with the amplitude over the amplitude's variance.
        cov = expected_smooth[day][1]
        assert per_amplitude == pytest.approx(-cov[0, 2] / cov[2, 2], abs=10 * kg)


@pytest.mark.parametrize("is_robust", [False, True])
def test_many_people_equal_one_at_a_time(is_robust: bool) -> None:
    people = 7
    logs = [made_log(seed) for seed in range(people)]
    for weight, *_ in logs[:3]:
        weight[40:] += 2.0  # steps of water, outliers
        weight[10] += 4.0
    chosen = settings(lag=0.3, epsilon=25.0, is_robust=is_robust)
    single = [series(*log, 0.001) for log in logs]

    def column(name: str) -> list[Any]:
        return [np.array(values) for values in zip(*(getattr(s, name) for s in single), strict=True)]

    names = ("weight_kg", "is_weighed", "noise_scale", "intake_kcal", "intake_variance", "carried_kg")
    many = DailySeries(*(column(name) for name in names), column("carried_slope"), START.maintenance_kcal)
    ops = arrays()
    filtered = filter_weights(many, chosen, START, ops=ops)
    fits = log_likelihood(filtered, many, ops)
    causal, smooth = causal_path(filtered, many, ops=ops), smooth_weights(filtered, many, ops=ops)
    for person, daily in enumerate(single):
        alone = filter_weights(daily, chosen, START)
        assert fits[person] == pytest.approx(log_likelihood(alone, daily), abs=1e-9)
        for all_paths, path in (
            (causal, causal_path(alone, daily)),
            (smooth, smooth_weights(alone, daily)),
        ):
            for name in ("level", "level_variance", "maintenance", "maintenance_variance"):
                ours = [values[person] for values in getattr(all_paths, name)]
                assert ours == pytest.approx(getattr(path, name), rel=1e-9), name
        granted = [(day, began) for day, began, who in filtered.jumps if who[person]]
        assert granted == [(day, began) for day, began, _ in alone.jumps]


def steady(days: int = 60, seed: int = 11) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Weights of a person at their maintenance of 2,600 kcal/d, all weighed."""
    rng = np.random.default_rng(seed)
    return 80.0 + 0.4 * rng.standard_normal(days), np.ones(days, bool), np.full(days, 2600.0)


def test_an_outlier_moves_the_level_little() -> None:
    weight, seen, intake = steady()
    spoilt = weight.copy()
    spoilt[30] += 6.0
    level = {}
    for is_robust in (False, True):
        chosen = settings(lag=0.2, epsilon=25.0, is_robust=is_robust)
        for name, values in (("clean", weight), ("spoilt", spoilt)):
            daily = series(values, seen, intake)
            level[is_robust, name] = causal_path(filter_weights(daily, chosen, START), daily).level[31]
    moved = {robust: abs(level[robust, "spoilt"] - level[robust, "clean"]) for robust in (False, True)}
    # Influence beyond the threshold falls with the square of the distance, and 6 kg is many SD away.
    assert moved[False] > 0.5
    assert moved[True] < 0.2 * moved[False]


def test_a_pass_told_its_outliers_equals_the_one_that_found_them() -> None:
    weight, seen, intake, carried = made_log()
    weight[[30, 55]] += 4.0, -3.0
    daily = series(weight, seen, intake, carried, 0.001)
    found = filter_weights(daily, settings(lag=0.3, epsilon=25.0, is_robust=True), START)
    assert {day for day, _, _ in found.outliers} >= {30, 55}
    assert not found.jumps
    times = {day: times for day, _, times in found.outliers}
    told = filter_weights(daily, settings(lag=0.3, epsilon=25.0), START, known_outliers=times)
    assert np.array(told.steps) == pytest.approx(np.array(found.steps), rel=1e-12)


def test_a_step_of_water_is_granted_and_leaves_maintenance_alone() -> None:
    weight, seen, intake = steady()
    weight[35:] += 2.0
    daily = series(weight, seen, intake)
    robust = filter_weights(daily, settings(lag=0.2, epsilon=25.0, is_robust=True), START)
    plain = filter_weights(daily, settings(lag=0.2, epsilon=25.0), START)
    (granted_on, began, _), *others = robust.jumps
    assert not others
    assert began == 35
    assert 35 < granted_on < 45
    error = [causal_path(f, daily).maintenance[-1] - 2600.0 for f in (plain, robust)]
    assert abs(error[1]) < 0.5 * abs(error[0])


@pytest.mark.parametrize("step_kg", [0.0, 2.0])
@pytest.mark.parametrize("lag", [0.0, 0.3])
def test_hindsight_weighs_every_first_day_of_a_step(step_kg: float, lag: float) -> None:
    """Against passes over weights less a step from each day on: the likelihood is a parabola of its size, the states
    are straight lines, and both follow from three sizes."""
    weight, seen, intake, carried = made_log(days=40)
    weight[12:] += step_kg
    daily = series(weight, seen, intake, carried, 0.001)
    chosen = settings(lag=lag, epsilon=25.0)

    def told(began: int, size: float) -> tuple[float, float, float]:
        less = [w - size * s * (day >= began) for day, (w, s) in enumerate(zip(weight, seen, strict=True))]
        filtered = filter_weights(
            daily._replace(weight_kg=[float(w * s) for w, s in zip(less, seen, strict=True)]), chosen, START
        )
        path = causal_path(filtered, daily, 39)
        return log_likelihood(filtered, daily), path.tissue[0] + size, path.maintenance[0]

    plain = filter_weights(daily, chosen, START)
    now = causal_path(plain, daily, 39)
    means, spreads, odds = [np.zeros(2)], [np.zeros((2, 2))], [1.0]
    for began in range(1, 40):
        (none, *at_none), (plus, *at_plus), (minus, *_) = (told(began, size) for size in (0.0, 1.0, -1.0))
        score, information = 0.5 * (plus - minus), 2.0 * none - plus - minus
        precision = information + 1.0 / JUMP_SD_KG**2
        size = score / precision
        slope = np.array(at_plus) - np.array(at_none)
        means.append(size * slope)
        spreads.append(np.outer(slope, slope) / precision)
        chance = JUMP_CHANCE / (1.0 - JUMP_CHANCE)
        odds.append(chance * math.exp(0.5 * score * size) / math.sqrt(precision * JUMP_SD_KG**2))
    share = np.array(odds) / sum(odds)
    mean = np.einsum("i,ij->j", share, means)
    second = np.einsum("i,ijk->jk", share, [s + np.outer(m, m) for s, m in zip(spreads, means, strict=True)])
    variance = second - np.outer(mean, mean)

    found = in_hindsight(smooth_weights(plain, daily, has_shocks=True).shocks, plain.steps[-1])
    assert found.probability == pytest.approx(1.0 - share[0], rel=1e-6)
    assert [found.tissue, found.maintenance] == pytest.approx(mean.tolist(), rel=1e-5)
    assert [found.tissue_variance, found.covariance, found.maintenance_variance] == pytest.approx(
        [variance[0, 0], variance[0, 1], variance[1, 1]], rel=1e-5
    )
    assert now.tissue[0] == pytest.approx(told(1, 0.0)[1])
    if step_kg:
        assert abs(found.day - 12) <= 2
        assert found.nearby > 0.9 * found.probability


def test_ordinary_noise_grants_no_step() -> None:
    """At most one in a hundred months of ordinary weighings may see one: here 400 people, 28 days."""
    rng = np.random.default_rng(5)
    people, days = 400, 28
    one = np.ones(people)
    noise = np.zeros(people)
    weights = []
    for _ in range(days):
        noise = 0.3 * noise + 0.5 * math.sqrt(1 - 0.09) * rng.standard_normal(people)
        weights.append(80.0 + noise)
    daily = DailySeries(weights, [one] * days, [one] * days, [2600.0 * one] * days, [1e4 * one] * days)
    filtered = filter_weights(daily, settings(lag=0.3, epsilon=25.0, is_robust=True), START, ops=arrays())
    assert sum(int(who.sum()) for _, _, who in filtered.jumps) <= 4


def test_a_pass_never_looks_ahead() -> None:
    weight, seen, intake, carried = made_log()
    chosen = settings(lag=0.3, epsilon=25.0, is_robust=True)
    daily = series(weight, seen, intake, carried, 0.001)
    whole, part = filter_weights(daily, chosen, START), filter_weights(daily, chosen, START, days=50)
    assert list(whole.steps)[:50] == list(part.steps)
