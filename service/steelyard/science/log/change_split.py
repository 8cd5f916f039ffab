"""How a change of weight splits into tissue and carried mass, over every telling of a log."""

from typing import NamedTuple

import msgspec

from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, compiled
from .hindsight import Telling
from .maintenance import LogFit
from .smoother import Path


class Change(msgspec.Struct, frozen=True, gc=False):
    """Change over the ``days`` up to the as-of day, and its parts [kg]."""

    days: int
    weight: Estimate
    tissue: Estimate
    carried: Estimate


class Jump(NamedTuple):
    """A step of water: its day, size [kg] and the variance of that."""

    day: int
    size_kg: Number
    variance: Number


def jumps_of(fit: LogFit, telling: Telling, smooth: Path) -> list[Jump]:
    """The steps of water of a telling: steps of tissue that energy cannot explain."""
    g = 1.0 / fit.rho_kcal_per_kg
    found = []
    for day, who in telling.jumps:
        if day == 0:
            continue
        flow = g * (fit.series.intake_kcal[day - 1] - smooth.maintenance[day - 1]) + fit.growth_kg_per_day
        size = smooth.tissue[day] - smooth.tissue[day - 1] - flow
        # The levels of both sides are read from different weighings.
        variance = smooth.level_variance[day] + smooth.level_variance[day - 1]
        found.append(Jump(day, size * who, variance * who))
    return found


class DailySplit(NamedTuple):
    """Smoothed weight on each day, split: ``carried_kg`` is the deviation of glycogen, water and gut content from what
    they were before the log began, steps of water included; ``tissue_kg`` the rest."""

    tissue_kg: Column
    carried_kg: Column


@compiled
def daily_split(fit: LogFit, paths: list[Path], jumps: list[list[Jump]], *, ops: Elementwise = FLOATS) -> DailySplit:
    """The split of each day, tellings mixed by their probabilities."""
    days = len(paths[0].level)
    tissue: Column = [0.0] * days
    carried: Column = [0.0] * days
    for telling, path, steps in zip(fit.tellings, paths, jumps, strict=True):
        sizes = {jump.day: jump.size_kg for jump in steps}
        share = telling.probability
        tissues: Column = path.tissue
        levels: Column = path.level
        stepped: Number = 0.0
        for day in range(days):
            if day in sizes:
                stepped = stepped + sizes[day]
            held = tissues[day] - stepped
            tissue[day] = tissue[day] + share * held
            carried[day] = carried[day] + share * (levels[day] - held)
    return DailySplit(tissue, carried)


def mixed_path(paths: list[Path], tellings: list[Telling]) -> Path:
    """Means and variances over two tellings, by their probabilities."""
    without, with_step = paths
    no, yes = (telling.probability for telling in tellings)

    def means(a: Column, b: Column) -> Column:
        return [no * x + yes * y for x, y in zip(a, b, strict=True)]

    def variances(a: Column, b: Column, at: Column, bt: Column) -> Column:
        apart = no * yes
        return [no * x + yes * y + apart * (p - q) * (p - q) for x, y, p, q in zip(a, b, at, bt, strict=True)]

    return Path(
        means(without.level, with_step.level),
        variances(without.level_variance, with_step.level_variance, without.level, with_step.level),
        means(without.tissue, with_step.tissue),
        means(without.maintenance, with_step.maintenance),
        variances(
            without.maintenance_variance,
            with_step.maintenance_variance,
            without.maintenance,
            with_step.maintenance,
        ),
        {},
    )


def mixed_change(changes: list[Change], tellings: list[Telling]) -> Change:
    if len(changes) == 1:
        return changes[0]
    no, yes = (telling.probability for telling in tellings)

    def mixed(a: Estimate, b: Estimate) -> Estimate:
        apart = a.mean - b.mean
        variance = no * a.sd * a.sd + yes * b.sd * b.sd + no * yes * apart * apart
        return Estimate(no * a.mean + yes * b.mean, variance**0.5)

    a, b = changes
    return Change(a.days, mixed(a.weight, b.weight), mixed(a.tissue, b.tissue), mixed(a.carried, b.carried))


def change_of(fit: LogFit, information: Number, smooth: Path, jumps: list[Jump], days: int) -> Change:
    """The change over the last ``days``. ``information``: how well the amplitude of carried mass is known."""
    last = len(smooth.level) - 1
    then = last - days
    carried = fit.series.carried_kg
    jumped: Number = 0.0
    jump_variance: Number = 0.0
    for jump in jumps:
        if jump.day > then:
            jumped = jumped + jump.size_kg
            jump_variance = jump_variance + jump.variance
    tissue = smooth.tissue[last] - smooth.tissue[then]
    last_variance, _, last_amplitude = smooth.changes[last]
    then_variance, with_last, then_amplitude = smooth.changes[then]
    variance = last_variance + then_variance - 2.0 * with_last
    carried_change: Number = 0.0
    carried_variance: Number = 0.0
    shared: Number = 0.0
    if carried is not None:
        expected = carried[last] - carried[then]
        # What is left of weight: the amplitude times what was expected, and what learnt maintenance makes of that.
        carried_change = (smooth.level[last] - smooth.level[then]) - tissue
        carried_variance = expected * expected / information
        shared = -expected * (last_amplitude - then_amplitude) / information
    return Change(
        days,
        Estimate(tissue + carried_change, (variance + carried_variance + 2.0 * shared) ** 0.5),
        Estimate(tissue - jumped, (variance + jump_variance) ** 0.5),
        Estimate(carried_change + jumped, (carried_variance + jump_variance) ** 0.5),
    )
