"""The daily columns of a trend: as known on each day, or in hindsight."""

from collections.abc import Sequence

from ..numbers import FLOATS, Column, Elementwise, Number, compiled, facet
from . import kernel as k
from .logging_scale import LOGGING_RATIO
from .witness_errors import HABIT_UNTOLD
from .witnesses import LogFit, lasting_water

_LEVEL, _RATE, _SPENT, _TISSUE, _CARRIED = 0, 2, 4, 6, 8


class View:
    """Daily columns. ``weight_kg`` is weight without its day-to-day noise; rates are of tissue at the intake of the
    week before; maintenance is on the logging scale. Each with its SD, and each worked out when it is asked for.

    ``tissue_kg`` and ``carried_kg`` (against what was carried before the log began) are known in hindsight only.
    """

    def __init__(self, fit: LogFit, *, in_hindsight: bool) -> None:
        self._fit, self._rows, self._is_hindsight = fit, fit.now if in_hindsight else fit.then, in_hindsight
        # Where the habit is told nothing hangs on what it may have been. Made here, where the reading that names its
        # constants can be seen to reach it: columns are asked for when it is over.
        moves = 0.0 if fit.shift else HABIT_UNTOLD * 1000.0 * fit.per_kcal / LOGGING_RATIO
        self._habit_variance = moves * moves

    def _means(self, row: int) -> Column:
        return self._fit.row(self._rows, row)  # type: ignore[return-value]

    def _deviations(self, row: int) -> Column:
        return deviations(self._fit.row(self._rows, row + 1), 1.0)

    def _with_lasting(self, row: int) -> Column:
        habit = self._fit.columns[k.BY_ALPHA :: k.COLUMNS]
        return with_lasting_water(self._fit.row(self._rows, row + 1), habit, self._habit_variance)

    @facet
    def weight_kg(self) -> Column:
        """Weight without noise."""
        return self._means(_LEVEL)

    @facet
    def weight_sd_kg(self) -> Column:
        """Its SD."""
        return self._deviations(_LEVEL)

    @property
    def weekly_rate_kg(self) -> Column:
        """Rate of tissue at the last week's intake; on the last day, in hindsight too, by all explanations, as told."""
        found = self._means(_RATE)
        return [*found[:-1], self._fit.row(self._fit.then, _RATE)[-1]]

    @property
    def weekly_rate_sd_kg(self) -> Column:
        """Its SD."""
        found = self._deviations(_RATE)
        return [*found[:-1], *deviations(self._fit.row(self._fit.then, _RATE + 1)[-1:], 1.0)]

    @property
    def _kept(self) -> Column:
        return [self._fit.kept[-1]] * self._fit.days if self._is_hindsight else self._fit.kept

    @property
    def maintenance_kcal(self) -> Column:
        """Maintenance."""
        return drawn_to(self._means(_SPENT), 1000.0, self._kept, self._fit.prior.mean)

    @property
    def maintenance_sd_kcal(self) -> Column:
        """Its SD."""
        fit = self._fit
        growth = (LOGGING_RATIO * fit.growth_sd_kcal) ** 2
        return kept_deviations(self._fit.row(self._rows, _SPENT + 1), 1e6, self._kept, fit.prior.sd**2, growth)

    @facet
    def tissue_kg(self) -> Column:
        """Fat and lean tissue."""
        return self._means(_TISSUE)

    @property
    def tissue_sd_kg(self) -> Column:
        """Its SD."""
        return self._with_lasting(_TISSUE)

    @facet
    def carried_kg(self) -> Column:
        """Glycogen, water and gut content."""
        return self._means(_CARRIED)

    @property
    def carried_sd_kg(self) -> Column:
        """Its SD."""
        return self._with_lasting(_CARRIED)


@compiled
def deviations(variances: Sequence[Number], factor: Number, *, ops: Elementwise = FLOATS) -> Column:
    """``factor`` times the roots of variances."""
    found: Column = []
    for variance in variances:
        found.append(factor * ops.sqrt(ops.maximum(variance, 0.0)))
    return found


@compiled
def with_lasting_water(
    variances: Sequence[Number], habit: Sequence[Number], habit_variance: Number, *, ops: Elementwise = FLOATS
) -> Column:
    """SDs of a column, from its ``variances`` and two more: of water that may have stayed since the first day, and of
    the habit before the log, whose variance is ``habit_variance`` and which moves each day by ``habit`` [kg]."""
    found: Column = []
    day = 0.0
    for variance, moved in zip(variances, habit, strict=True):
        more = lasting_water(day, ops) + habit_variance * moved * moved
        found.append(ops.sqrt(ops.maximum(variance + more, 0.0)))
        day = day + 1.0
    return found


@compiled
def drawn_to(
    values: Sequence[Number], unit: Number, kept: Sequence[Number], to: Number, *, ops: Elementwise = FLOATS
) -> Column:
    """Values times ``unit``, of whose distance from ``to`` the share ``kept`` is left."""
    found: Column = []
    for value, share in zip(values, kept, strict=True):
        found.append(to + share * (unit * value - to))
    return found


@compiled
def kept_deviations(
    variances: Sequence[Number],
    factor: Number,
    kept: Sequence[Number],
    prior_variance: Number,
    more: Number,
    *,
    ops: Elementwise = FLOATS,
) -> Column:
    """SDs that go with ``drawn_to``: of ``factor`` times variances, the rest being the prior's; ``more`` is added."""
    found: Column = []
    for variance, share in zip(variances, kept, strict=True):
        own = ops.maximum(factor * share * share * variance, 0.0)
        found.append(ops.sqrt(own + (1.0 - share) * prior_variance + more))
    return found
