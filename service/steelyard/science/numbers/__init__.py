"""Numbers as the science has them: estimates with intervals, formulas for floats and arrays alike, rounding."""

from .elementwise import (
    FLOATS,
    Column,
    Elementwise,
    Number,
    arrayed,
    arrays,
    many,
    rows,
)
from .estimate import (
    Z80,
    Estimate,
)
from .mixture import (
    mixed,
)
from .rounding import (
    amount_bounds,
    bounds,
    bounds_columns,
    rounded,
    rounded_column,
    rounded_where,
)
from .twins import (
    compiled,
    inlined,
    is_compiled,
)

__all__ = [
    "FLOATS",
    "Z80",
    "Column",
    "Elementwise",
    "Estimate",
    "Number",
    "amount_bounds",
    "arrayed",
    "arrays",
    "bounds",
    "bounds_columns",
    "compiled",
    "inlined",
    "is_compiled",
    "many",
    "mixed",
    "rounded",
    "rounded_column",
    "rounded_where",
    "rows",
]
