"""One body fat from several values of one person, each with the error of its method.

Repeats of a method share its bias, so they shrink only the day-to-day part. Methods that go by shape and size share a
part of their biases, so one of them adds little to another. The weights are the inverse of the whole covariance,
never negative: for methods that share nothing they are the inverse variances.
"""

import math
from collections.abc import Sequence
from itertools import combinations
from typing import NamedTuple

import msgspec

from ..numbers import Estimate
from ..person import BodyFatMethod
from ..register import Basis, Kind, Message, constant, equation, say, traced
from .body_composition import MethodError

_DOUBT_FROM = constant(
    "body_fat_disagreement_from",
    2.5,
    unit="SD",
    summary="Difference of two body-fat values from which their errors are doubted and widened",
    basis=Basis.JUDGEMENT,
)
_DOUBT_FULL = constant(
    "body_fat_disagreement_full",
    3.5,
    unit="SD",
    summary="Difference of two body-fat values from which their observed spread counts in full",
    basis=Basis.JUDGEMENT,
)
_DISAGREE = "MEASUREMENTS_DISAGREE"
_SCATTER = "REPEATS_SCATTER"


class FatValue(NamedTuple):
    """A value of body fat (fraction 0-1), how it was found, and the error that one such value has."""

    fat_fraction: float
    method: BodyFatMethod
    error: MethodError


class Combined(msgspec.Struct, frozen=True, kw_only=True):
    """The body fat combined, the weight of each value (they sum to 1), and what did not agree."""

    fat: Estimate
    weights: tuple[float, ...]
    notes: tuple[Message, ...]


class _Group(NamedTuple):
    """The values of one method that count: those of the least bias, since all share it."""

    method: BodyFatMethod
    rows: tuple[int, ...]
    mean: float
    error: MethodError
    repeat_variance: float

    @property
    def shared(self) -> float:
        """SD of the error that this method has in common with the others."""
        return self.error.bias_sd * self.error.shape_loading

    @property
    def own_variance(self) -> float:
        """Variance of all else in the group's mean."""
        return self.error.bias_sd**2 - self.shared**2 + self.repeat_variance / len(self.rows)


@traced
@equation(
    "body_fat_combination",
    kind=Kind.MODEL,
    summary="One body fat from several measurements, repeats and shared errors included",
    formula=(
        "within a method: mean of its n values, variance = bias² + day-to-day² / n. Across methods: covariance = "
        "product of the biases and shape loadings; weights proportional to the row sums of the inverse "
        "covariance and never negative, which without shared errors are 1 / variance. Where two values differ by "
        f"more than {_DOUBT_FROM:g} SD, the observed variance between methods is added, growing to its full size "
        f"at {_DOUBT_FULL:g} SD; repeats that scatter as much take their observed scatter"
    ),
    basis=Basis.JUDGEMENT,
)
def combine(values: Sequence[FatValue]) -> Combined:
    """Combine at least one value. The mean lies between the values, and values that agree never widen the answer."""
    notes: list[Message] = []
    groups = [_group(values, method, notes) for method in dict.fromkeys(value.method for value in values)]
    between = _variance_between(groups, notes)
    own = [group.own_variance + between for group in groups]
    shares, variance = _least_variance(own, [group.shared for group in groups])
    weights = [0.0] * len(values)
    for group, share in zip(groups, shares, strict=True):
        for row in group.rows:
            weights[row] = share / len(group.rows)
    mean = sum(share * group.mean for share, group in zip(shares, groups, strict=True))
    return Combined(fat=Estimate(mean, math.sqrt(variance)), weights=tuple(weights), notes=tuple(notes))


def _doubt(z: float) -> float:
    """How far a difference of ``z`` SD is held against the stated errors, 0 to 1."""
    return min(max((z - _DOUBT_FROM) / (_DOUBT_FULL - _DOUBT_FROM), 0.0), 1.0)


def _group(values: Sequence[FatValue], method: BodyFatMethod, notes: list[Message]) -> _Group:
    of_method = [i for i, value in enumerate(values) if value.method is method]
    error = min((values[i].error for i in of_method), key=lambda e: e.sd)
    rows = tuple(i for i in of_method if values[i].error.sd == error.sd)
    fractions = [values[i].fat_fraction for i in rows]
    mean = sum(fractions) / len(fractions)
    variance = error.day_to_day_sd**2
    if len(rows) > 1:
        observed = sum((fraction - mean) ** 2 for fraction in fractions) / (len(rows) - 1)
        doubt = _doubt(math.sqrt(observed / variance))
        if doubt > 0.0:
            notes.append(_scatter_note(method, math.sqrt(observed), error.day_to_day_sd))
            variance += doubt * (observed - variance)
    return _Group(method, rows, mean, error, variance)


def _variance_between(groups: Sequence[_Group], notes: list[Message]) -> float:
    """Variance between methods beyond their errors: none while no two of them disagree.

    The moment estimator of a random-effects mean, of all pairs. It takes the errors of single values, so that a
    repeat that changes nothing leaves it as it is. BMI casts no doubt on a measurement: where it is far off is known.
    """
    excess = []
    worst_z, worst = 0.0, None
    measured = [group for group in groups if group.method is not BodyFatMethod.BMI_EQUATION]
    for first, second in combinations(measured, 2):
        expected = first.error.sd**2 + second.error.sd**2 - 2.0 * first.shared * second.shared
        difference = first.mean - second.mean
        excess.append((difference * difference - expected) / 2.0)
        z = abs(difference) / math.sqrt(expected)
        if z > worst_z:
            worst_z, worst = z, (first, second, abs(difference), math.sqrt(expected))
    doubt = _doubt(worst_z)
    if doubt == 0.0 or worst is None:
        return 0.0
    first, second, difference, expected_sd = worst
    notes.append(
        say(
            _DISAGREE,
            first=_name(first.method),
            second=_name(second.method),
            difference_points=round(100.0 * difference, 2),
            expected_points=round(100.0 * expected_sd, 2),
        )
    )
    return doubt * max(sum(excess) / len(excess), 0.0)


def _least_variance(own: Sequence[float], shared: Sequence[float]) -> tuple[list[float], float]:
    """Weights of least variance, none negative, and that variance.

    ``own`` are the variances of independent errors, ``shared`` the SDs of one error common to all. The inverse of
    diag(own) + shared shared' has a closed form (Sherman and Morrison); the weights that would be negative are those
    with the largest ``shared``, so dropping them one by one leaves the best of the rest (Elton, Gruber and Padberg,
    J Finance 1976;31:1341-57, doi 10.1111/j.1540-6261.1976.tb03217.x, for the same algebra).
    """
    kept = sorted(range(len(own)), key=lambda i: shared[i])
    while True:
        common = sum(shared[i] / own[i] for i in kept) / (1.0 + sum(shared[i] ** 2 / own[i] for i in kept))
        if len(kept) == 1 or common * shared[kept[-1]] < 1.0:
            break
        kept.pop()
    raw = {i: (1.0 - common * shared[i]) / own[i] for i in kept}
    total = sum(raw.values())
    return [raw.get(i, 0.0) / total for i in range(len(own))], 1.0 / total


def _name(method: BodyFatMethod) -> str:
    return method.value


def _scatter_note(method: BodyFatMethod, observed_sd: float, expected_sd: float) -> Message:
    return say(
        _SCATTER,
        method=_name(method),
        observed_points=round(100.0 * observed_sd, 2),
        expected_points=round(100.0 * expected_sd, 2),
    )
