"""Numbers at the precision of an answer: of one value, and column by column."""

from collections.abc import Sequence

from .elementwise import FLOATS, Column, Elementwise, Number
from .estimate import Z80
from .twins import compiled, inlined

# Adding and taking away 1.5 x 2^52 rounds a float to the nearest integer, ties to even, as IEEE 754 adds do.
# ``round`` with digits goes by way of decimal text and takes six times as long; an answer has hundreds of numbers.
TO_INTEGER = 6755399441055744.0


@inlined
def rounded(value: Number, scale: Number) -> Number:
    """``value`` to the nearest of ``1 / scale``, a power of ten. Holds below 2^51 / scale."""
    return (value * scale + TO_INTEGER - TO_INTEGER) / scale


def told_percent(probability: float) -> float:
    """A probability as texts tell it [%]: of what is forecast nothing is certain, to the whole number that is told."""
    return min(99.0, max(1.0, 100.0 * probability))


@inlined
def bounds(
    mean: Number, sd: Number, scale: Number, least: Number, ops: Elementwise = FLOATS
) -> tuple[Number, Number, Number]:
    """Lower end of the 80 % interval, mean and upper end, rounded once, of what cannot be less than ``least``."""
    half = Z80 * sd
    return (
        ops.maximum(rounded(mean - half, scale), least),
        ops.maximum(rounded(mean, scale), least),
        ops.maximum(rounded(mean + half, scale), least),
    )


@compiled
def rounded_column(values: Sequence[Number], scale: Number, *, ops: Elementwise = FLOATS) -> Column:
    """``rounded`` of each value."""
    found: Column = []
    for value in values:
        found.append(rounded(value, scale))
    return found


@compiled
def bounds_columns(
    means: Sequence[Number], sds: Sequence[Number], scale: Number, least: Number, *, ops: Elementwise = FLOATS
) -> tuple[Column, Column, Column]:
    """``bounds`` of each pair, as three columns; no number stays none."""
    lowers: Column = []
    middles: Column = []
    uppers: Column = []
    for mean, sd in zip(means, sds, strict=True):
        lower, middle, upper = bounds(mean, sd, scale, least, ops)
        lowers.append(lower)
        middles.append(middle)
        uppers.append(upper)
    return lowers, middles, uppers


@compiled
def bounds_of_each(
    means: Sequence[Number],
    sds: Sequence[Number],
    offs: Sequence[Number],
    people_sds: Sequence[Number],
    scales: Sequence[Number],
    leasts: Sequence[Number],
    *,
    ops: Elementwise = FLOATS,
) -> tuple[Column, Column, Column]:
    """``bounds_columns`` of quantities of which each has a scale and a least of its own, and reaches, as ``Reaching``
    does, as far as people do: ``offs`` from the mean, with SDs of their own."""
    lowers: Column = []
    middles: Column = []
    uppers: Column = []
    for mean, sd, off, people_sd, scale, least in zip(means, sds, offs, people_sds, scales, leasts, strict=True):
        half, people = Z80 * sd, Z80 * people_sd
        lowers.append(ops.maximum(rounded(ops.minimum(mean - half, mean + off - people), scale), least))
        middles.append(ops.maximum(rounded(mean, scale), least))
        uppers.append(ops.maximum(rounded(ops.maximum(mean + half, mean + off + people), scale), least))
    return lowers, middles, uppers


@compiled
def rounded_where(
    values: Sequence[Number], is_there: Sequence[Number], scale: Number, *, ops: Elementwise = FLOATS
) -> list[Number | None]:
    """``rounded`` of each value that is there, None for the others."""
    found: list[Number | None] = []
    for value, there in zip(values, is_there, strict=True):
        found.append(rounded(value, scale) if there > 0.0 else None)
    return found
