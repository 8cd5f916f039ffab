"""A number with its uncertainty."""

from statistics import NormalDist

import msgspec

from ..register import Basis, constant

# The 0.90 quantile of the standard normal: mean +- this many SD holds 80 %.
Z80 = constant(
    "normal_quantile_90",
    1.2815515655446004,
    unit="SD",
    summary="Half-width of an 80 % interval of a normal distribution, in standard deviations",
    basis=Basis.PUBLISHED,
)


# Without an error there would be no distribution to ask.
_LEAST_SD = 1e-6


class Estimate(msgspec.Struct, frozen=True, gc=False):
    """A mean and its standard deviation, in the same unit."""

    mean: float
    sd: float

    @property
    def lower(self) -> float:
        """Lower end of the 80 % interval."""
        return self.mean - Z80 * self.sd

    @property
    def upper(self) -> float:
        """Upper end of the 80 % interval."""
        return self.mean + Z80 * self.sd

    def probability_over(self, limit: float) -> float:
        """Probability that the value is over ``limit``, its error taken as normal."""
        return 1.0 - NormalDist(self.mean, max(self.sd, _LEAST_SD)).cdf(limit)
