"""Numbers as the science has them: estimates with intervals, formulas for floats and arrays alike, rounding."""

from .elementwise import (
    FLOATS,
    Column,
    Elementwise,
    Number,
    Row,
    arrayed,
    arrays,
    every,
    many,
    row_of,
)
from .estimate import (
    Z80,
    Estimate,
    Reaching,
)
from .facets import facet
from .rounding import (
    bounds_columns,
    bounds_of_each,
    rounded,
    rounded_column,
    rounded_where,
    told_percent,
)
from .twins import (
    compiled,
    inlined,
    is_compiled,
    kernel_in_use,
    new_tuple,
)
