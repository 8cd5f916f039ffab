"""How noisy a person's scale weight is, learnt from the log itself.

Day-to-day noise is water, gut content and the scale, not tissue. Its size and its autocorrelation are read from
half the mean squared difference of weighings one and two days apart (the variogram), with a prior worth some
days of data, and with large differences capped so that a jump of water does not count as noise.
"""

from collections.abc import Sequence
from typing import NamedTuple

from . import bibliography  # noqa: F401 - registers the sources named below
from .compiled import compiled
from .elementwise import FLOATS, Elementwise, Number
from .evidence import Basis, Kind, constant, equation

NOISE_FRACTION = constant(
    "weight_noise", 0.0055, unit="1", standard_deviation=0.002, basis=Basis.FROM_MEMORY,
    sources=("robinson_1965", "turicchi_2020"),
    summary="SD of scale weight around its trend from day to day, as a fraction of body mass (0.5-0.6 %)",
)  # fmt: skip
NOISE_FLOOR_KG = constant(
    "weight_noise_floor", 0.3, unit="kg", basis=Basis.JUDGEMENT, sources=("robinson_1965",),
    summary="Least SD of scale weight from day to day",
)  # fmt: skip
NOISE_AUTOCORRELATION = constant(
    "weight_noise_autocorrelation", 0.20, unit="1", standard_deviation=0.2, basis=Basis.FROM_MEMORY,
    summary="Correlation of the noise of weighings a day apart, before the log says otherwise",
)  # fmt: skip
NOISE_AUTOCORRELATION_LIMIT = constant(
    "weight_noise_autocorrelation_limit", 0.6, unit="1", basis=Basis.JUDGEMENT,
    summary="Largest correlation that a log can argue for",
)  # fmt: skip
NOISE_PRIOR_PAIRS = constant(
    "weight_noise_prior_pairs", 3.0, unit="pairs", basis=Basis.JUDGEMENT,
    summary="How many pairs of weighings the prior variance is worth: 2 / (relative SD of a variance)^2 with an SD "
    "of the noise of 36 % between people gives four, rounded down for people unlike those studied",
)  # fmt: skip
NOISE_PRIOR_PAIRS_CORRELATION = constant(
    "weight_noise_prior_pairs_correlation", 20.0, unit="pairs", basis=Basis.JUDGEMENT,
    summary="How many pairs of weighings the prior correlation is worth: about 1 / SD^2 with an SD of 0.2",
)  # fmt: skip
NOISE_CAP = constant(
    "weight_noise_cap", 9.0, unit="1", basis=Basis.JUDGEMENT,
    summary="A squared difference counts at most this many times its mean (3 SD)",
)  # fmt: skip


class Noise(NamedTuple):
    """Variance of the noise of a single weighing [kg2] and its correlation over one day."""

    variance: Number
    autocorrelation: Number


def prior_noise(weight_kg: Number, ops: Elementwise = FLOATS) -> Noise:
    """Noise of a person of ``weight_kg`` before any log."""
    return Noise(ops.maximum(NOISE_FRACTION * weight_kg, NOISE_FLOOR_KG) ** 2, NOISE_AUTOCORRELATION)


@equation(
    "weight_noise_model",
    summary="Noise of scale weight from the differences of weighings one and two days apart",
    formula=(
        "half mean square of difference at lag 1 = variance x (1 - r), at lag 2 = variance x (1 - r2); prior worth "
        f"{NOISE_PRIOR_PAIRS:g} pairs ({NOISE_PRIOR_PAIRS_CORRELATION:g} for r); squares capped at {NOISE_CAP:g} times "
        f"their mean; 0 <= r <= {NOISE_AUTOCORRELATION_LIMIT:g}"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="daily weighings; the estimate of r from one member's month is rough (SD about 0.2)",
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
    first = prior.variance * (1.0 - prior.autocorrelation)
    second = prior.variance * (1.0 - prior.autocorrelation**2)
    # Capped normal squares average a little under 1: E[min(z2, 9)] = 0.995, left in.
    one, ones = NOISE_PRIOR_PAIRS * first, NOISE_PRIOR_PAIRS + 0.0 * first
    two, twos = NOISE_PRIOR_PAIRS * second, ones
    learnt: list[Noise] = []
    scalar = ops is FLOATS
    upto = 0
    w1 = w2 = 0.0
    y1 = y2 = detrended_kg[0] if detrended_kg else 0.0
    for wanted in days:
        for day in range(upto, wanted):
            y, w = detrended_kg[day], is_weighed[day]
            if scalar:
                if w:
                    if w1:
                        square = 0.5 * (y - y1) ** 2
                        cap = NOISE_CAP * one / ones
                        one += square if square < cap else cap
                        ones += 1.0
                    if w2:
                        square = 0.5 * (y - y2) ** 2
                        cap = NOISE_CAP * two / twos
                        two += square if square < cap else cap
                        twos += 1.0
            else:
                near, far = w * w1, w * w2
                one = one + near * ops.minimum(0.5 * (y - y1) ** 2, NOISE_CAP * one / ones)
                ones = ones + near
                two = two + far * ops.minimum(0.5 * (y - y2) ** 2, NOISE_CAP * two / twos)
                twos = twos + far
            y2, w2, y1, w1 = y1, w1, y, w
        upto = wanted
        gamma_one, gamma_two = one / ones, two / twos
        # gamma_two / gamma_one = 1 + r
        worth = NOISE_PRIOR_PAIRS_CORRELATION
        r = (ones * (gamma_two / gamma_one - 1.0) + worth * prior.autocorrelation) / (ones + worth)
        r = ops.minimum(ops.maximum(r, 0.0), NOISE_AUTOCORRELATION_LIMIT)
        # Both lags say something about the variance.
        learnt.append(Noise(0.5 * (gamma_one / (1.0 - r) + gamma_two / (1.0 - r * r)), r))
    return learnt
