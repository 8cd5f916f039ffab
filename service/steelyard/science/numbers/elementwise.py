"""The few functions that differ between plain floats and numpy arrays.

Every formula of the core is written once and takes ``ops``: ``FLOATS`` on the request path (numpy costs
about thirty times more for one person) or ``arrays()`` across many people. Branches on a person's numbers
go through ``maximum``, ``minimum`` and ``where``, never through ``if``.
"""

import math
from array import array
from collections.abc import Callable, Sequence
from typing import Any, NamedTuple, TypeAlias

# A float, or a numpy array with people along the first axis: a formula uses operators and ``ops`` only, which mean the
# same for both. It is checked as a formula for one person. Whoever computes for many says so by ``many``, and takes the
# arrays that come back by ``arrayed``; what asks an array itself (``any``, ``all``) is behind ``ops is FLOATS``.
Number: TypeAlias = float
# Numbers of many days, one after the other. Compiled functions keep them as an array of doubles, which is read like a
# list; what an answer is written from stays ``list[Number]``.
Column: TypeAlias = list[Number]
# Doubles in a row, as kernels read and write them.
Row: TypeAlias = "array[float]"


def row_of(values: Sequence[Number]) -> Row:
    """``values`` as doubles in a row: those of a compiled function's column at once."""
    if isinstance(values, list | tuple | array):
        return array("d", values)
    row = array("d")
    row.frombytes(values)  # type: ignore[arg-type]  # which is bytes to those who ask
    return row


def rows(_kind: Any) -> list[Any]:
    """An empty list of rows, plain tuples with the fields of ``kind``: a named tuple, or a tuple's type by name.

    Compiled functions keep them as doubles, so many a row.
    """
    return []


class Elementwise(NamedTuple):
    """Elementwise functions with one meaning on floats and on arrays.

    ``where(condition, a, b)`` gets both branches evaluated: each must be finite for every input.
    """

    exp: Callable[[Number], Number]
    log: Callable[[Number], Number]
    sqrt: Callable[[Number], Number]
    tanh: Callable[[Number], Number]
    maximum: Callable[[Number, Number], Number]
    minimum: Callable[[Number, Number], Number]
    where: Callable[[Number, Number, Number], Number]


def _where(condition: Any, if_true: float, if_false: float) -> float:
    return if_true if condition else if_false


# The built-in max and min take any number of arguments, which makes them two to four times as slow for two.
def _maximum(a: float, b: float) -> float:
    return b if b > a else a


def _minimum(a: float, b: float) -> float:
    return b if b < a else a


FLOATS = Elementwise(math.exp, math.log, math.sqrt, math.tanh, _maximum, _minimum, _where)


def arrays() -> Elementwise:
    """The functions of ``Elementwise`` over numpy arrays."""
    import numpy as np

    where: Any = np.where
    return Elementwise(np.exp, np.log, np.sqrt, np.tanh, np.maximum, np.minimum, where)


def every(condition: Any) -> bool:
    """Whether a condition holds for the one person, or for all of an array."""
    return condition if isinstance(condition, bool) else bool(condition.all())


def many(array: Any) -> Number:
    """An array across people, where a formula takes a number."""
    return array  # type: ignore[no-any-return]


def arrayed(number: Number) -> Any:
    """The array across people that a formula made of arrays."""
    return number
