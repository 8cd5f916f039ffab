"""The log-likelihood of a log under the weight filter, from what its forward pass leaves of each day."""

import math
from typing import Any

from steelyard.science.log.filter import DailySeries, Filtered
from steelyard.science.numbers.elementwise import FLOATS, Elementwise


def log_likelihood(filtered: Filtered, series: DailySeries, ops: Elementwise = FLOATS) -> Any:
    """Of the weighings, the amplitude of carried mass integrated out (de Jong 1991)."""
    fit: Any = 0.0
    for step in filtered.steps:
        innovation, precision = step[7], step[8]
        is_seen = precision > 0.0
        spread = ops.where(is_seen, math.log(2.0 * math.pi) - ops.log(ops.where(is_seen, precision, 1.0)), 0.0)
        fit = fit - 0.5 * (innovation * innovation * precision + spread)
    if series.carried_kg is None:
        return fit
    *_, score, information = filtered.steps[-1]
    return fit + 0.5 * (score * score / information - ops.log(information * filtered.settings.amplitude_variance))
