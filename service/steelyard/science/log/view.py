"""The daily columns of a trend: as known on each day, or in hindsight."""

from collections.abc import Sequence
from functools import cached_property

from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, compiled
from .maintenance import RATE_DAYS, LogFit, Segment

_DAYS_PER_WEEK = 7.0


class View:
    """Daily columns. ``weight_kg`` is weight without its day-to-day noise; rates are of tissue; maintenance is
    on the logging scale. Each with its SD, and each worked out when it is asked for."""

    def __init__(self, fit: LogFit, segments: Sequence[Segment], ops: Elementwise) -> None:
        """``segments`` follow each other and make up the whole log."""
        self._fit, self._segments, self._ops = fit, segments, ops

    @cached_property
    def weight_kg(self) -> Column:
        """Weight without noise."""
        return self._chained([segment.path.level for segment in self._segments])

    @property
    def weight_sd_kg(self) -> Column:
        """Its SD."""
        variances = self._chained([segment.path.level_variance for segment in self._segments])
        return deviations(variances, 1.0, ops=self._ops)

    def _chained(self, columns: list[Column]) -> Column:
        """Segments' columns, one after the other."""
        return columns[0] if len(columns) == 1 else chained(columns, ops=self._ops)

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
        return self._chained([segment.path.maintenance for segment in self._segments])

    @cached_property
    def _gaps(self) -> Column:
        """Mean intake over the week before each morning (the first morning: that day's) less maintenance."""
        return week_gaps(self._fit.series.intake_kcal, self._maintenance, ops=self._ops)

    @property
    def weekly_rate_kg(self) -> Column:
        """Rate of tissue at the last week's intake."""
        weekly, growth = _DAYS_PER_WEEK / self._fit.rho_kcal_per_kg, _DAYS_PER_WEEK * self._fit.growth_kg_per_day
        return drawn_to(self._gaps, 0.0, weekly, growth, ops=self._ops)

    @property
    def weekly_rate_sd_kg(self) -> Column:
        """Its SD."""
        weekly = _DAYS_PER_WEEK / self._fit.rho_kcal_per_kg
        variances = self._chained([segment.path.maintenance_variance for segment in self._segments])
        return deviations(variances, weekly, ops=self._ops)

    @property
    def maintenance_kcal(self) -> Column:
        """Maintenance."""
        prior = self._fit.prior.mean
        parts = [drawn_to(s.path.maintenance, prior, s.unshrunk, prior, ops=self._ops) for s in self._segments]
        return self._chained(parts)

    @property
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
        return self._chained(found)


@compiled
def chained(columns: Sequence[Column], *, ops: Elementwise = FLOATS) -> Column:
    """Columns, one after the other."""
    found: Column = []
    for one in columns:
        column: Column = one
        for value in column:
            found.append(value)
    return found


@compiled
def deviations(variances: Sequence[Number], factor: Number, *, ops: Elementwise = FLOATS) -> Column:
    """``factor`` times the roots of variances."""
    found: Column = []
    for variance in variances:
        found.append(factor * ops.sqrt(variance))
    return found


@compiled
def drawn_to(
    values: Sequence[Number], centre: Number, factor: Number, to: Number, *, ops: Elementwise = FLOATS
) -> Column:
    """``factor`` times the distance of each value from ``centre``, beyond ``to``."""
    found: Column = []
    for value in values:
        found.append(to + factor * (value - centre))
    return found


@compiled
def week_gaps(intakes: Sequence[Number], maintenance: Sequence[Number], *, ops: Elementwise = FLOATS) -> Column:
    """Mean intake over the week before each morning (the first morning: that day's) less maintenance [kcal/d]."""
    span = int(RATE_DAYS)
    gaps: Column = []
    gaps.append(intakes[0] - maintenance[0])
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
    found: Column = []
    for variance, gap in zip(variances, gaps, strict=True):
        from_log = 1.0 - variance * per_widened
        found.append(ops.sqrt(kept2 * variance + unlogged + (gap * gap * relative2 + growth2) * (from_log * from_log)))
    return found
