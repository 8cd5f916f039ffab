"""A log told in hindsight: with the steps of water that are facts, and with one more where that is likely."""

from collections.abc import Collection
from typing import Any, NamedTuple

from ..numbers import FLOATS, Elementwise, Number
from ..register import Basis, constant
from .filter import DailySeries, Filtered, FilterSettings, Start, filter_weights, is_any
from .smoother import Path, smooth_weights
from .water import JUMP_DAYS_AROUND, JUMP_GRANTED, JUMP_SD_KG, Correction, in_hindsight

TOLD_APART = constant(
    "water_jump_told_apart", 0.20, unit="1", basis=Basis.JUDGEMENT,
    summary="Probability of a further step of water around a day from which the log is told both with and without it: "
    "more than the 0.16 that the seven days around any day have before the weighings are looked at",
)  # fmt: skip
_MOST_FURTHER_FACTS = 2


class Telling(NamedTuple):
    """The final pass with steps of water known from their first day (and who: 1 or 0), and how likely that is."""

    filtered: Filtered
    jumps: list[tuple[int, Number]]
    probability: Number
    path: Path  # smoothed


def tell_in_hindsight(
    filtered: Filtered,
    series: DailySeries,
    settings: FilterSettings,
    start: Start,
    change_days: Collection[int],
    ops: Elementwise,
) -> tuple[list[Telling], Filtered, Correction]:
    """The log told in hindsight: with the steps of water that are facts, and with one more that may be.

    Also the pass in which every first day of one more was weighed, and what that makes of its last day.
    """
    days = len(series.weight_kg)
    known: dict[int, Number] = {}
    for _, began, who in filtered.jumps:
        _suppose(known, began, who, days, ops)
    spared: dict[int, Number] = {}  # weighings that stood out, and count in full all the same

    def told(jumps: dict[int, Number], spared: dict[int, Number]) -> Filtered:
        outliers = {
            day: ops.where(ops.maximum(jumps.get(day, 0.0), spared.get(day, 0.0)) > 0.0, 1.0, times)
            for day, _, times in filtered.outliers
        }
        given = filter_weights(
            series,
            settings._replace(is_robust=False),
            start,
            known_jumps={day: JUMP_SD_KG**2 * who for day, who in jumps.items()},
            known_outliers=outliers,
            ops=ops,
        )
        return given._replace(outliers=filtered.outliers)

    def weighed(base: Filtered) -> tuple[Path, Correction]:
        path = smooth_weights(base, series, change_days=change_days, has_shocks=True, ops=ops)
        return path, in_hindsight(path.shocks, base.steps[-1], ops=ops)

    base = told(known, {}) if known else filtered
    path, left = weighed(base)
    likely = left.nearby > TOLD_APART
    if is_any(likely):
        # The first weighings of a step stand out for its want, and must not be silenced where it is judged.
        for day, stands_out, _ in filtered.outliers:
            near = likely & stands_out & (abs(left.day - day) <= JUMP_DAYS_AROUND)
            if is_any(near):
                spared[day] = ops.where(near, 1.0, 0.0)
        if spared:
            base = told(known, spared)
            path, left = weighed(base)
    for _ in range(_MOST_FURTHER_FACTS):
        sure = left.probability > JUMP_GRANTED
        if not is_any(sure):
            break
        _suppose(known, left.day, sure, days, ops)
        base = told(known, spared)
        path, left = weighed(base)
    judged, further_step = base, left
    if spared:
        # Windows of some days hang on those very weighings: there they stay what they were when they came.
        base = told(known, {})
        path, left = weighed(base)
    tellings = [Telling(base, sorted(known.items()), 1.0, path)]
    likely = left.nearby > TOLD_APART
    if change_days and is_any(likely):
        supposed = dict(known)
        _suppose(supposed, left.day, likely, days, ops)
        further = told(supposed, {})
        # Steps on other days than those around it are told by neither: the two share what is left.
        chance = ops.where(likely, left.nearby / (1.0 - left.probability + left.nearby), 0.0)
        tellings = [
            tellings[0]._replace(probability=1.0 - chance),
            Telling(
                further,
                sorted(supposed.items()),
                chance,
                smooth_weights(further, series, change_days=change_days, ops=ops),
            ),
        ]
    return tellings, judged, further_step


def _suppose(jumps: dict[int, Number], day: Number, who: Any, days: int, ops: Elementwise) -> None:
    """Add a step on ``day`` for ``who``, both of one person or each an array over people."""
    if ops is FLOATS:
        jumps[int(day)] = 1.0
        return
    for at in range(days):
        here = who & (day == at)
        if here.any():
            jumps[at] = ops.maximum(jumps.get(at, 0.0), ops.where(here, 1.0, 0.0))
