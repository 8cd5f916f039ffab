"""The 80 % interval of what is one of two normals: it does not lie evenly around its mean."""

from ..register import Kind, equation, source
from .elementwise import FLOATS, Elementwise, Number
from .estimate import Z80, Estimate
from .twins import compiled, inlined

HENDRYCKS_2016 = source(
    "hendrycks_2016",
    "Hendrycks D, Gimpel K. Gaussian error linear units (GELUs). arXiv 1606.08415, 2016: the normal distribution by a "
    "hyperbolic tangent",
)
_HALF = 0.4  # of an interval of 80 %


class Skewed(Estimate, frozen=True):
    """A mean and its standard deviation, and the ends of an 80 % interval that do not follow from them."""

    ends: tuple[float, float]

    @property
    def lower(self) -> float:
        """Lower end of the 80 % interval."""
        return self.ends[0]

    @property
    def upper(self) -> float:
        """Upper end of the 80 % interval."""
        return self.ends[1]


@inlined
def normal_share(z: Number, ops: Elementwise = FLOATS) -> Number:
    """Share of a standard normal under ``z`` (Hendrycks and Gimpel 2016; within 0.0002)."""
    return 0.5 + 0.5 * ops.tanh(0.7978845608 * z * (1.0 + 0.044715 * z * z))


@compiled
def _end(
    mean: Number, sd: Number, other_mean: Number, other_sd: Number, chance: Number, side: float, *,
    ops: Elementwise = FLOATS,
) -> Number:  # fmt: skip
    """The lower (``side`` -1) or upper (1) end of a mixture, which lies between those of its parts."""
    one, other = mean + side * Z80 * sd, other_mean + side * Z80 * other_sd
    low, high = ops.minimum(one, other), ops.maximum(one, other)
    wanted = 0.5 + side * _HALF
    end = 0.5 * (low + high)
    for _ in range(12):  # then told to 1/8000 of what lies between the ends of the parts
        under = (1.0 - chance) * normal_share((end - mean) / sd, ops)
        under = under + chance * normal_share((end - other_mean) / other_sd, ops)
        low = ops.where(under < wanted, end, low)
        high = ops.where(under < wanted, high, end)
        end = 0.5 * (low + high)
    return end


@equation(
    "mixture_interval",
    summary="80 % interval of what is one of two normals, as likely as given",
    formula="10 % of (1 - p) normal(m0, sd0) + p normal(m1, sd1) lie under its lower end, 10 % over its upper end",
    kind=Kind.EQUATION,
    sources=(HENDRYCKS_2016,),
    valid_range="any",
)
def mixed(whole: Estimate, first: Estimate, second: Estimate, share: Number, ops: Elementwise = FLOATS) -> Estimate:
    """``whole``, mean and SD of the mixture, with the ends of the mixture: ``second`` with the chance ``share``."""
    lower = _end(first.mean, first.sd, second.mean, second.sd, share, -1.0, ops=ops)
    upper = _end(first.mean, first.sd, second.mean, second.sd, share, 1.0, ops=ops)
    # A few that are far off can draw the mean beyond an end.
    return Skewed(whole.mean, whole.sd, (ops.minimum(lower, whole.mean), ops.maximum(upper, whole.mean)))
