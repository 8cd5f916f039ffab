"""What a planned season comes to, and what is eaten in it: totals with intervals, and intakes that stay the same."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import NamedTuple

from ..body import PathPoint
from ..numbers import Estimate
from ..phase import PlannedPhase
from ..rails import Macronutrients
from .plan import Season


class CountSpread(NamedTuple):
    """A count along the lower ends of the intervals, as expected, and along their upper ends."""

    lower: int
    expected: int
    upper: int


class SeasonSums(NamedTuple):
    """Masses gained over a season and fat carried [kg], body fat at its peak and end, and what was counted."""

    lean_gained_kg: Estimate
    fat_gained_kg: Estimate
    mean_fat_kg: float
    peak_fat_fraction: Estimate
    peak_day: date
    final_fat_fraction: Estimate
    weeks_above_band: CountSpread
    dieting_weeks: int
    cuts: int


class IntakeRun(NamedTuple):
    """A day's intake that stays the same for some weeks."""

    start: date
    weeks: int
    intake: Macronutrients


def season_sums(season: Season, points: Sequence[PathPoint], band_upper: float) -> SeasonSums:
    """What a season comes to: from its forecast, whose ``points`` are given, and weeks above ``band_upper``."""
    path = season.forecast
    last = len(path.states) - 1
    change = path.change(0, last)
    fractions = [Estimate(float(point.fat_fraction), float(point.spread.fat_fraction)) for point in points]
    peak = max(range(1, last + 1), key=lambda i: fractions[i].mean)
    after = fractions[1:]
    return SeasonSums(
        lean_gained_kg=change.lean_kg,
        fat_gained_kg=change.fat_kg,
        mean_fat_kg=sum(float(state.fat_kg) for state in path.states[1:]) / last,
        peak_fat_fraction=fractions[peak],
        peak_day=season.phases[0].weeks[0].start + timedelta(days=7 * peak - 1),
        final_fat_fraction=fractions[last],
        weeks_above_band=CountSpread(
            lower=sum(f.lower > band_upper for f in after),
            expected=sum(f.mean > band_upper for f in after),
            upper=sum(f.upper > band_upper for f in after),
        ),
        dieting_weeks=int(season.outcome.weeks_dieting),
        cuts=int(season.outcome.cuts),
    )


def intake_runs(phase: PlannedPhase) -> list[IntakeRun]:
    """The intakes of a phase in order, each with the weeks that it stays the same."""
    runs: list[IntakeRun] = []
    for week in phase.weeks:
        if runs and runs[-1].intake == week.intake:
            runs[-1] = runs[-1]._replace(weeks=runs[-1].weeks + 1)
        else:
            runs.append(IntakeRun(week.start, 1, week.intake))
    return runs
