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


@inlined
def bounds(mean: Number, sd: Number, scale: Number) -> tuple[Number, Number, Number]:
    """Lower end of the 80 % interval, mean and upper end, rounded once."""
    half = Z80 * sd
    return rounded(mean - half, scale), rounded(mean, scale), rounded(mean + half, scale)


@inlined
def amount_bounds(mean: Number, sd: Number, scale: Number, ops: Elementwise = FLOATS) -> tuple[Number, Number, Number]:
    """``bounds`` of what cannot be less than nothing: a mass, an energy eaten or spent, a share."""
    lower, middle, upper = bounds(mean, sd, scale)
    return ops.maximum(lower, 0.0), ops.maximum(middle, 0.0), ops.maximum(upper, 0.0)


@compiled
def rounded_column(values: Sequence[Number], scale: Number, *, ops: Elementwise = FLOATS) -> Column:
    """``rounded`` of each value."""
    found: Column = []
    for value in values:
        found.append(rounded(value, scale))
    return found


@compiled
def bounds_columns(
    means: Sequence[Number], sds: Sequence[Number], scale: Number, *, ops: Elementwise = FLOATS
) -> tuple[Column, Column, Column]:
    """``bounds`` of each pair, as three columns."""
    lowers: Column = []
    middles: Column = []
    uppers: Column = []
    for mean, sd in zip(means, sds, strict=True):
        lower, middle, upper = bounds(mean, sd, scale)
        lowers.append(lower)
        middles.append(middle)
        uppers.append(upper)
    return lowers, middles, uppers


@compiled
def amount_columns(
    means: Sequence[Number], sds: Sequence[Number], scale: Number, *, ops: Elementwise = FLOATS
) -> tuple[Column, Column, Column]:
    """``amount_bounds`` of each pair, as three columns."""
    lowers: Column = []
    middles: Column = []
    uppers: Column = []
    for mean, sd in zip(means, sds, strict=True):
        lower, middle, upper = amount_bounds(mean, sd, scale, ops)
        lowers.append(lower)
        middles.append(middle)
        uppers.append(upper)
    return lowers, middles, uppers


@compiled
def bounds_in_turn(
    means: Sequence[Number],
    sds: Sequence[Number],
    scales: Sequence[Number],
    leasts: Sequence[Number],
    *,
    ops: Elementwise = FLOATS,
) -> Column:
    """``bounds`` of each pair at a scale of its own and no less than its least, one after the other."""
    found: Column = []
    for mean, sd, scale, least in zip(means, sds, scales, leasts, strict=True):
        lower, middle, upper = bounds(mean, sd, scale)
        found.append(ops.maximum(lower, least))
        found.append(ops.maximum(middle, least))
        found.append(ops.maximum(upper, least))
    return found


@compiled
def rounded_where(
    values: Sequence[Number], is_there: Sequence[Number], scale: Number, *, ops: Elementwise = FLOATS
) -> list[Number | None]:
    """``rounded`` of each value that is there, None for the others."""
    found: list[Number | None] = []
    for value, there in zip(values, is_there, strict=True):
        found.append(rounded(value, scale) if there > 0.0 else None)
    return found
