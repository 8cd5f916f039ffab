"""How a change of weight splits into tissue and carried mass, and what happened on which day."""

from typing import NamedTuple

import msgspec

from ..numbers import Estimate
from . import kernel as k
from .witnesses import LogFit, change_under, mixed

_AROUND_DAYS = 3
_WRONG, _WATER, _LOGGING = 1, 2, 3  # what ``kernel.EVENT`` says happened


class Change(msgspec.Struct, frozen=True, gc=False):
    """Change over the ``days`` up to the as-of day, and its parts [kg]."""

    days: int
    weight: Estimate
    tissue: Estimate
    carried: Estimate


class WaterEvent(NamedTuple):
    """A change of water on a day that no intake explains: its size [kg] and probability."""

    day: int
    size_kg: float
    probability: float


def change_of(fit: LogFit, days: int) -> Change:
    """The change over the last ``days``, explanations mixed by their odds."""
    last = fit.days - 1
    then = last - days
    told = fit.told
    return Change(
        days,
        weight=mixed([change_under(one, k.LEVEL, last, then) for one in told]),
        tissue=mixed([change_under(one, k.TISSUE, last, then) for one in told]),
        carried=mixed([change_under(one, k.BORNE, last, then) for one in told]),
    )


def wrong_weighings(fit: LogFit, from_probability: float) -> frozenset[int]:
    """Days whose weighing is wrong, or out of the ordinary, at least so probably."""
    chances: dict[int, float] = {}
    for one in fit.told:
        for day, kind in one.events:
            if kind == _WRONG:
                chances[day] = chances.get(day, 0.0) + one.probability
    return frozenset(day for day, chance in chances.items() if chance >= from_probability)


def water_events(fit: LogFit, from_probability: float) -> list[WaterEvent]:
    """Sudden changes of water of the likeliest explanation that are as probable as that, over all explanations."""
    likeliest = fit.told[0]
    found = []
    for day, kind in likeliest.events:
        if kind != _WATER or day == 0:
            continue
        chance = sum(
            one.probability
            for one in fit.told
            if any(kind == _WATER and abs(other - day) <= _AROUND_DAYS for other, kind in one.events)
        )
        if chance >= from_probability:
            at = day * k.VIEW + k.BORNE
            expected = fit.columns[day * k.COLUMNS + k.CARRIED] - fit.columns[(day - 1) * k.COLUMNS + k.CARRIED]
            size = likeliest.view[at] - likeliest.view[at - k.VIEW] - likeliest.mean[4] * expected
            found.append(WaterEvent(day, size, chance))
    return found


def water_lately(fit: LogFit, days: int) -> float:
    """Probability of a sudden change of water within the last ``days``."""
    since = fit.days - 1 - days
    return sum(one.probability for one in fit.told if any(kind == _WATER and day > since for day, kind in one.events))


def logging_change(fit: LogFit) -> tuple[int, float] | None:
    """The likeliest day on which logging changed and the probability that it did at all; None where it did not."""
    chances: dict[int, float] = {}
    total = 0.0
    for one in fit.told:
        days = [day for day, kind in one.events if kind == _LOGGING]
        total += one.probability if days else 0.0
        for day in days:
            chances[day] = chances.get(day, 0.0) + one.probability
    if not chances:
        return None
    return max(chances, key=lambda day: chances[day]), total
