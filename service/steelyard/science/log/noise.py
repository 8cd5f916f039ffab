"""How noisy a person's scale weight is, learnt from the log itself.

Day-to-day noise is water, gut content and the scale, not tissue. It is what is left of weight around a straight line
through each four weeks, autoregressive of order 1; size and correlation are weighed by their likelihood against what is
usual, with large moves from one weighing to the next cut so that a jump of water does not count as noise.
"""

import math
from collections.abc import Sequence

from ..body import Noise
from ..numbers import FLOATS, Column, Elementwise, Number, compiled, inlined
from ..register import (
    Basis,
    Kind,
    constant,
    equation,
    source,
)

JONES_1980 = source(
    "jones_1980",
    "Jones RH. Maximum likelihood fitting of ARMA models to time series with missing observations. Technometrics "
    "1980;22:389-95",
    "10.1080/00401706.1980.10486171",
)
PATTERSON_THOMPSON_1971 = source(
    "patterson_thompson_1971",
    "Patterson HD, Thompson R. Recovery of inter-block information when block sizes are unequal. Biometrika "
    "1971;58:545-54",
    "10.1093/biomet/58.3.545",
)

NOISE_AUTOCORRELATION_LIMIT = constant(
    "weight_noise_autocorrelation_limit", 0.6, unit="1", basis=Basis.JUDGEMENT,
    summary="Largest correlation that a log can argue for",
)  # fmt: skip
NOISE_PRIOR_PAIRS = constant(
    "weight_noise_prior_pairs", 3.0, unit="pairs", basis=Basis.JUDGEMENT,
    summary="How many pairs of weighings the prior variance is worth: 2 / (relative SD of a variance)^2 with an SD "
    "of the noise of 36 % between people gives four, rounded down for people unlike those studied",
)  # fmt: skip
NOISE_AUTOCORRELATION_SD = constant(
    "weight_noise_autocorrelation_sd", 0.2, unit="1", basis=Basis.FROM_MEMORY,
    summary="Spread between people of the correlation of the noise of weighings a day apart",
)  # fmt: skip
NOISE_CAP = constant(
    "weight_noise_cap", 9.0, unit="1", basis=Basis.JUDGEMENT,
    summary="A squared difference counts at most this many times its mean (3 SD)",
)  # fmt: skip
# A straight line through more days than these would take slow errors of the expected path for noise.
_SPAN_DAYS = 28
_LEAST_WEIGHINGS = 3.0  # two make the line
_LEAST_FIT = -1e9  # less than any
_CORRELATION_STEP = 0.1  # half of what a month can tell apart


@equation(
    "weight_noise_model",
    summary="Noise of scale weight: autoregressive around a straight line through each four weeks",
    formula=(
        "noise[t] = r noise[t-1] + fresh noise; variance and r by their restricted likelihood (weighings within "
        f"two days of each other linked), prior of the variance worth {NOISE_PRIOR_PAIRS:g} weighings, of r normal "
        f"with SD {NOISE_AUTOCORRELATION_SD:g} on 0 <= r <= {NOISE_AUTOCORRELATION_LIMIT:g}; moves between weighings "
        f"cut where their square exceeds {NOISE_CAP:g} times its mean"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(JONES_1980, PATTERSON_THOMPSON_1971),
    valid_range="daily weighings; one member's month hardly tells r from what is usual",
)
@compiled
def learn_noise(
    detrended_kg: Sequence[Number],
    is_weighed: Sequence[Number],
    prior: Noise,
    days: Sequence[int],
    *,
    ops: Elementwise = FLOATS,
) -> list[Noise]:
    """The noise as known after each count of days in ``days`` (ascending), each from the days before it only.

    ``detrended_kg`` is weight less the expected path of tissue and carried mass: slow errors of it do not matter.
    """
    calm = _without_jumps(detrended_kg, is_weighed, prior.variance * (1.0 - prior.autocorrelation), days[-1], ops=ops)
    learnt: list[Noise] = []
    whole: Column = [0.0 * prior.variance] * 11
    upto = 0
    for wanted in days:
        while upto + _SPAN_DAYS <= wanted:
            span = _around_a_line(calm, is_weighed, upto, upto + _SPAN_DAYS, ops=ops)
            whole = _added(whole, span)
            upto += _SPAN_DAYS
        rest = _around_a_line(calm, is_weighed, upto, wanted, ops=ops)
        learnt.append(_weigh(_added(whole, rest), prior.variance, prior.autocorrelation, ops=ops))
    return learnt


@inlined
def _added(sums: Sequence[Number], further: Sequence[Number]) -> Column:
    both: Column = []
    for one, other in zip(sums, further, strict=True):
        both.append(one + other)
    return both


@inlined
def _without_jumps(
    detrended_kg: Sequence[Number],
    is_weighed: Sequence[Number],
    fresh_variance: Number,
    days: int,
    *,
    ops: Elementwise = FLOATS,
) -> Column:
    """Weight on each day since the first weighing, large moves from one weighing to the next cut.

    ``fresh_variance``: half the mean squared difference of weighings a day apart, as expected.
    """
    scalar = ops is FLOATS
    square, pairs = NOISE_PRIOR_PAIRS * fresh_variance, NOISE_PRIOR_PAIRS + 0.0 * fresh_variance
    level = before = started = day_before = 0.0 * fresh_variance
    calm: Column = []
    for day in range(days):
        seen = is_weighed[day]
        if not (scalar and not seen):
            now = detrended_kg[day]
            most = ops.sqrt(2.0 * NOISE_CAP * square / pairs)
            move = started * seen * ops.minimum(ops.maximum(now - before, -most), most)
            level = level + move
            both = seen * day_before
            square = square + 0.5 * both * move * move
            pairs = pairs + both
            before = ops.where(seen > 0.0, now, before)
            started = ops.maximum(started, seen)
        day_before = seen
        calm.append(level)
    return calm


@inlined
def _around_a_line(
    calm_kg: Sequence[Number], is_weighed: Sequence[Number], first: int, end: int, *, ops: Elementwise = FLOATS
) -> tuple[Number, ...]:
    """What is left of weight around a straight line through the days from ``first`` up to ``end``: sums of squares.

    Whether there are weighings enough (1 or 0) and how many; squares of those that follow none within two days; then of
    those one day after another, and of those two days: how many, their squares, products with the one before, squares
    of that.
    """
    scalar = ops is FLOATS
    middle = 0.5 * (first + end - 1)
    count = days = squares = total = cross = 0.0
    for day in range(first, end):
        seen = is_weighed[day]
        at = seen * (day - middle)
        kg = calm_kg[day]
        count = count + seen
        days = days + at
        squares = squares + at * at
        total = total + seen * kg
        cross = cross + at * kg
    enough = ops.where(count >= _LEAST_WEIGHINGS, 1.0, 0.0)
    # Of weighings on two days or more the determinant is at least 1.
    slope = (count * cross - days * total) / ops.maximum(count * squares - days * days, 1.0)
    start = (total - slope * days) / ops.maximum(count, 1.0)
    alone = one = one_squares = one_products = one_before = 0.0
    two = two_squares = two_products = two_before = 0.0
    before, gap = 0.0, 3.0
    for day in range(first, end):
        seen = enough * is_weighed[day]
        if scalar and not seen:
            gap = gap + 1.0
        else:
            left = calm_kg[day] - start - slope * (day - middle)
            near = ops.where(gap < 1.5, seen, 0.0)
            far = ops.where(gap < 2.5, seen, 0.0) - near
            square, product, earlier = left * left, left * before, before * before
            alone = alone + (seen - near - far) * square
            one = one + near
            one_squares = one_squares + near * square
            one_products = one_products + near * product
            one_before = one_before + near * earlier
            two = two + far
            two_squares = two_squares + far * square
            two_products = two_products + far * product
            two_before = two_before + far * earlier
            before = ops.where(seen > 0.0, left, before)
            gap = ops.where(seen > 0.0, 1.0, gap + 1.0)
    return (
        enough, enough * count, alone, one, one_squares, one_products, one_before, two, two_squares, two_products,
        two_before,
    )  # fmt: skip


@inlined
def _weigh(
    sums: Sequence[Number], prior_variance: Number, prior_correlation: float, *, ops: Elementwise = FLOATS
) -> Noise:
    """Mean over the correlations, each with the variance that suits it, weighed by likelihood and prior.

    Each line has cost two degrees of freedom, and with them what weighings, the less of it the more they are alike, say
    of its two ends: ``(1 - r) / (1 + r)`` of what they would if they were independent.
    """
    lines, count, alone, one, one_squares, one_products, one_before, two, two_squares, two_products, two_before = sums
    log, exp = ops.log, ops.exp
    worth = NOISE_PRIOR_PAIRS + count - 2.0 * lines
    known = NOISE_PRIOR_PAIRS * prior_variance + alone
    total = mean_variance = mean_r = 0.0
    best = _LEAST_FIT
    r = 0.0
    while r < NOISE_AUTOCORRELATION_LIMIT + 0.5 * _CORRELATION_STEP:
        r2 = r * r
        own, own2 = 1.0 - r2, 1.0 - r2 * r2
        around = (one_squares - 2.0 * r * one_products + r2 * one_before) / own
        around2 = (two_squares - 2.0 * r2 * two_products + r2 * r2 * two_before) / own2
        variance = (known + around + around2) / worth
        apart = (r - prior_correlation) / NOISE_AUTOCORRELATION_SD
        lost = worth * log(variance) + one * math.log(own) + two * math.log(own2) + apart * apart
        told = count - one - two + one * (1.0 - r) / (1.0 + r) + two * (1.0 - r2) / (1.0 + r2)
        fit = -lines * log(ops.maximum(told, 1.0) / ops.maximum(count, 1.0)) - 0.5 * lost
        before, best = best, ops.maximum(best, fit)
        kept, share = exp(before - best), exp(fit - best)
        total = total * kept + share
        mean_variance = mean_variance * kept + share * variance
        mean_r = mean_r * kept + share * r
        r = r + _CORRELATION_STEP
    return Noise(mean_variance / total, mean_r / total)
