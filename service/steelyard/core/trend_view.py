"""The daily columns of a trend: as known on each day, or in hindsight."""

from collections.abc import Sequence
from functools import cached_property

from .compiled import compiled
from .elementwise import FLOATS, Column, Elementwise, Number
from .estimate import Estimate
from .log_maintenance import RATE_DAYS, LogFit, Segment

_DAYS_PER_WEEK = 7.0


class View:
    """Daily columns. ``weight_kg`` is weight without its day-to-day noise; rates are of tissue; maintenance is
    on the logging scale. Each with its SD, and each worked out when it is first asked for."""

    def __init__(self, fit: LogFit, segments: Sequence[Segment], ops: Elementwise) -> None:
        """``segments`` follow each other and make up the whole log."""
        self._fit, self._segments, self._ops = fit, segments, ops

    @cached_property
    def weight_kg(self) -> Column:
        """Weight without noise."""
        return [level for segment in self._segments for level in segment.path.level]

    @cached_property
    def weight_sd_kg(self) -> Column:
        """Its SD."""
        return self._deviations(1.0, [segment.path.level_variance for segment in self._segments])

    def _deviations(self, factor: Number, variances: list[Column]) -> Column:
        return _chained([deviations(column, factor, ops=self._ops) for column in variances])

    @property
    def last_rate(self) -> Estimate:
        """The weekly rate on the last day."""
        path, intakes = self._segments[-1].path, self._fit.series.intake_kcal
        recent = intakes[max(0, len(intakes) - 1 - int(RATE_DAYS)) : -1] or intakes
        weekly = _DAYS_PER_WEEK / self._fit.rho_kcal_per_kg
        mean = weekly * (sum(recent) / len(recent) - path.maintenance[-1])
        return Estimate(
            mean + _DAYS_PER_WEEK * self._fit.growth_kg_per_day, weekly * path.maintenance_variance[-1] ** 0.5
        )

    @cached_property
    def _maintenance(self) -> Column:
        """Maintenance as the filter has it, intake that was not logged included."""
        return _chained([segment.path.maintenance for segment in self._segments])

    @cached_property
    def _gaps(self) -> Column:
        """Mean intake over the week before each morning (the first morning: that day's) less maintenance."""
        return week_gaps(self._fit.series.intake_kcal, self._maintenance, ops=self._ops)

    @cached_property
    def weekly_rate_kg(self) -> Column:
        """Rate of tissue at the last week's intake."""
        weekly, growth = _DAYS_PER_WEEK / self._fit.rho_kcal_per_kg, _DAYS_PER_WEEK * self._fit.growth_kg_per_day
        return drawn_to(self._gaps, 0.0, weekly, growth, ops=self._ops)

    @cached_property
    def weekly_rate_sd_kg(self) -> Column:
        """Its SD."""
        weekly = _DAYS_PER_WEEK / self._fit.rho_kcal_per_kg
        return self._deviations(weekly, [segment.path.maintenance_variance for segment in self._segments])

    @cached_property
    def maintenance_kcal(self) -> Column:
        """Maintenance."""
        prior = self._fit.prior.mean
        return _chained([drawn_to(s.path.maintenance, prior, s.unshrunk, prior, ops=self._ops) for s in self._segments])

    @cached_property
    def maintenance_sd_kcal(self) -> Column:
        """Its SD."""
        fit, gaps = self._fit, self._gaps
        relative2, growth2 = fit.relative_rho_sd**2, fit.growth_sd_kcal**2
        found, first = [], 0
        for segment in self._segments:
            variances = segment.path.maintenance_variance
            end = first + len(variances)
            found.append(
                posterior_deviations(
                    variances, gaps[first:end], segment.unshrunk, fit.prior.sd**2, relative2, growth2, ops=self._ops
                )
            )
            first = end
        return _chained(found)


def _chained(columns: list[Column]) -> Column:
    """Segments' columns, one after the other."""
    return columns[0] if len(columns) == 1 else [value for column in columns for value in column]


@compiled
def deviations(variances: Sequence[Number], factor: Number, *, ops: Elementwise = FLOATS) -> Column:
    """``factor`` times the roots of variances."""
    found = []
    for variance in variances:
        found.append(factor * ops.sqrt(variance))
    return found


@compiled
def drawn_to(
    values: Sequence[Number], centre: Number, factor: Number, to: Number, *, ops: Elementwise = FLOATS
) -> Column:
    """``factor`` times the distance of each value from ``centre``, beyond ``to``."""
    found = []
    for value in values:
        found.append(to + factor * (value - centre))
    return found


@compiled
def week_gaps(intakes: Sequence[Number], maintenance: Sequence[Number], *, ops: Elementwise = FLOATS) -> Column:
    """Mean intake over the week before each morning (the first morning: that day's) less maintenance [kcal/d]."""
    span = int(RATE_DAYS)
    gaps = [intakes[0] - maintenance[0]]
    total = 0.0 * intakes[0]
    for day in range(1, len(intakes)):
        total = total + intakes[day - 1]
        if day > span:
            total = total - intakes[day - 1 - span]
        gaps.append(total * (1.0 / min(day, span)) - maintenance[day])
    return gaps


@compiled
def posterior_deviations(
    variances: Sequence[Number],
    gaps: Sequence[Number],
    kept: Number,
    prior_variance: Number,
    relative2: Number,
    growth2: Number,
    *,
    ops: Elementwise = FLOATS,
) -> Column:
    """As ``posterior_maintenance``, column by column for speed; a test holds them together."""
    kept2, unlogged, per_widened = kept * kept, prior_variance * (1.0 - kept), kept / prior_variance
    found = []
    for variance, gap in zip(variances, gaps, strict=True):
        from_log = 1.0 - variance * per_widened
        found.append(ops.sqrt(kept2 * variance + unlogged + (gap * gap * relative2 + growth2) * (from_log * from_log)))
    return found
