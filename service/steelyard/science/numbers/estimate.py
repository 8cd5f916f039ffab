"""A number with its uncertainty."""

import math

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


class Estimate(msgspec.Struct, frozen=True, gc=False):
    """A mean and its standard deviation, in the same unit."""

    mean: float
    sd: float

    @property
    def half_width(self) -> float:
        """Half of the 80 % interval."""
        return Z80 * self.sd

    @property
    def lower(self) -> float:
        """Lower end of the 80 % interval."""
        return self.mean - self.half_width

    @property
    def upper(self) -> float:
        """Upper end of the 80 % interval."""
        return self.mean + self.half_width

    def probability_under(self, limit: float) -> float:
        """Probability that the value lies under ``limit``, its error taken as normal; without an error 0 or 1."""
        if self.sd <= 0.0:
            return 1.0 if self.mean < limit else 0.0
        return 0.5 * (1.0 + math.erf((limit - self.mean) / (self.sd * math.sqrt(2.0))))

    def probability_over(self, limit: float) -> float:
        """Probability that the value lies over ``limit``."""
        return 1.0 - self.probability_under(limit)

    def moved_to(self, mean: float, own_sd: float) -> "Estimate":
        """The same at another mean, with an error of its own beside."""
        return Estimate(mean, (self.sd**2 + own_sd**2) ** 0.5)


class Reaching(Estimate, frozen=True, gc=False):
    """An estimate of what comes of a plan that is eaten, with an interval that holds what comes of people who are given
    it as well: ``off`` from the mean, with an SD of ``people_sd``."""

    off: float = 0.0
    people_sd: float = 0.0

    @property
    def lower(self) -> float:
        """Lower end of the interval."""
        return min(self.mean - Z80 * self.sd, self.mean + self.off - Z80 * self.people_sd)

    @property
    def upper(self) -> float:
        """Upper end of the interval."""
        return max(self.mean + Z80 * self.sd, self.mean + self.off + Z80 * self.people_sd)

    def moved_to(self, mean: float, own_sd: float) -> "Reaching":
        """The same at another mean, with an error of its own beside."""
        alone = (self.sd**2 + own_sd**2) ** 0.5
        return Reaching(mean, alone, self.off, (self.people_sd**2 + own_sd**2) ** 0.5)
