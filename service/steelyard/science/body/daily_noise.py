"""How much scale weight moves from day to day around its trend, before any log says otherwise."""

from ..numbers import FLOATS, Elementwise, Number, inlined
from ..register import (
    ROBINSON_1965,
    TURICCHI_2020,
    Basis,
    constant,
)

NOISE_FRACTION = constant(
    "weight_noise", 0.0055, unit="1", standard_deviation=0.002, basis=Basis.FROM_MEMORY,
    sources=(ROBINSON_1965, TURICCHI_2020),
    summary="SD of scale weight around its trend from day to day, as a fraction of body mass (0.5-0.6 %)",
)  # fmt: skip
NOISE_FLOOR_KG = constant(
    "weight_noise_floor", 0.3, unit="kg", basis=Basis.JUDGEMENT, sources=(ROBINSON_1965,),
    summary="Least SD of scale weight from day to day",
)  # fmt: skip

HOME_NOISE_SCALE = constant(
    "log_noise_scale", 1.18, unit="1", basis=Basis.JUDGEMENT,
    summary="Daily noise of weighings at home, against the usual of studies, before the log says otherwise",
)  # fmt: skip


@inlined
def noise_variance(weight_kg: Number, ops: Elementwise = FLOATS) -> Number:
    """Variance of the noise of a single weighing of a person of ``weight_kg`` in a study [kg2]."""
    return ops.maximum(NOISE_FRACTION * weight_kg, NOISE_FLOOR_KG) ** 2


@inlined
def home_noise_variance(weight_kg: Number, ops: Elementwise = FLOATS) -> Number:
    """The same of people who weigh themselves at home, before any log [kg2]."""
    return HOME_NOISE_SCALE**2 * noise_variance(weight_kg, ops)
