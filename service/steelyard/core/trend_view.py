"""The daily columns of a trend: as known on each day, or in hindsight."""

from collections.abc import Sequence
from functools import cached_property

from .elementwise import Elementwise, Number
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
    def weight_kg(self) -> list[Number]:
        """Weight without noise."""
        return [level for segment in self._segments for level in segment.path.level]

    @cached_property
    def weight_sd_kg(self) -> list[Number]:
        """Its SD."""
        sqrt = self._ops.sqrt
        return [sqrt(variance) for segment in self._segments for variance in segment.path.level_variance]

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
    def _gaps(self) -> list[Number]:
        """Mean intake over the week before each morning (the first morning: that day's) less maintenance."""
        intakes, span = self._fit.series.intake_kcal, int(RATE_DAYS)
        means, total = [intakes[0]], 0.0 * intakes[0]
        for day in range(1, len(intakes)):
            total = total + intakes[day - 1]
            if day > span:
                total = total - intakes[day - 1 - span]
            means.append(total * (1.0 / min(day, span)))
        maintenance = [mean for segment in self._segments for mean in segment.path.maintenance]
        return [eaten - mean for eaten, mean in zip(means, maintenance, strict=True)]

    @cached_property
    def weekly_rate_kg(self) -> list[Number]:
        """Rate of tissue at the last week's intake."""
        weekly, growth = _DAYS_PER_WEEK / self._fit.rho_kcal_per_kg, _DAYS_PER_WEEK * self._fit.growth_kg_per_day
        return [weekly * gap + growth for gap in self._gaps]

    @cached_property
    def weekly_rate_sd_kg(self) -> list[Number]:
        """Its SD."""
        weekly, sqrt = _DAYS_PER_WEEK / self._fit.rho_kcal_per_kg, self._ops.sqrt
        return [weekly * sqrt(v) for segment in self._segments for v in segment.path.maintenance_variance]

    # As ``posterior_maintenance``, column by column for speed; a test holds them together.

    @cached_property
    def maintenance_kcal(self) -> list[Number]:
        """Maintenance."""
        prior = self._fit.prior.mean
        return [
            prior + segment.unshrunk * (mean - prior) for segment in self._segments for mean in segment.path.maintenance
        ]

    @cached_property
    def maintenance_sd_kcal(self) -> list[Number]:
        """Its SD."""
        sqrt, prior_variance = self._ops.sqrt, self._fit.prior.sd**2
        relative2, growth2 = self._fit.relative_rho_sd**2, self._fit.growth_sd_kcal**2
        found: list[Number] = []
        gaps = iter(self._gaps)
        for segment in self._segments:
            kept = segment.unshrunk
            kept2, unlogged, per_widened = kept * kept, prior_variance * (1.0 - kept), kept / prior_variance
            found += [
                sqrt(kept2 * v + unlogged + (gap * gap * relative2 + growth2) * (1.0 - v * per_widened) ** 2)
                for v, gap in zip(segment.path.maintenance_variance, gaps, strict=False)
            ]
        return found
