"""How surely one alternative of a decision is worth more than another, on the same body whatever that truly is."""

import math
from collections.abc import Sequence
from itertools import pairwise

from ..numbers import Estimate, Number
from .alternatives import Alternative
from .terms import LEANNESS_PRICE


def ahead_kg(one: Alternative, other: Alternative, counts_from: float | None) -> Estimate:
    """By how much ``one`` scores more than ``other`` [kg of lean tissue].

    The error is what each source of uncertainty, moved by one SD, does to both alike: one body lives both of them.
    """
    mean = one.total_kg - other.total_kg
    here, there = _moves(one, counts_from), _moves(other, counts_from)
    # In one order: a set's differs from process to process, and with it the last bit of a sum.
    squares = ((here.get(source, 0.0) - there.get(source, 0.0)) ** 2 for source in {**here, **there})
    return Estimate(mean, math.sqrt(sum(squares)))


def _moves(one: Alternative, counts_from: float | None) -> dict[str, float]:
    """What each source moves of a score [kg]."""
    path = one.path
    usual = _worth_kg(path.nodes, path.values, counts_from)
    return {run.source.value: _worth_kg(path.nodes, run.values, counts_from) - usual for run in path.moved}


def _worth_kg(nodes: Sequence[int], values: Sequence[tuple[Number, ...]], counts_from: float | None) -> float:
    """Lean tissue gained less the price of leanness, body fat taken as straight between the nodes of a path."""
    worth = float(values[-1][1] - values[0][1])
    if counts_from is None:
        return worth
    for (first, start), (last, end) in pairwise(zip(nodes, values, strict=True)):
        for week in range(first + 1, last + 1):
            share = (week - first) / (last - first)
            fat = float(start[4] + share * (end[4] - start[4]))
            worth -= LEANNESS_PRICE * max(0.0, 100.0 * (fat - counts_from)) ** 2
    return worth
