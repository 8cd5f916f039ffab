"""A log after a birth: what leaves with it is neither tissue nor water, and what grew before it was no eating."""

from msgspec.structs import replace

from ..register import Basis, constant, traced
from .entries import Log, day_of, middle

BIRTH_FALL_KG = constant(
    "birth_fall", 3.5, unit="kg", basis=Basis.JUDGEMENT,
    summary="Fall between weighings next to each other that is taken for a birth, of somebody who breastfeeds",
)  # fmt: skip
# A child at term and what comes with it are some 5 kg (from memory), a small one less; three mornings of either side
# tell that from the noise of a weighing, and no one else's morning on the scale is taken for it (judgement).
_MORNINGS, _WINDOW_DAYS, _MOST_GAP_DAYS = 3, 14, 60


@traced
def since_birth(log: Log) -> Log:
    """The log from the first weighing after a birth on, of somebody who breastfeeds; all of it where none is seen."""
    weighed: dict[int, list[float]] = {}
    for entry in log.weighings:
        weighed.setdefault(entry.day, []).append(entry.weight_kg)
    mornings = [(day, sum(weighed[day]) / len(weighed[day])) for day in sorted(weighed)]
    first, clearest = None, 0.5 * BIRTH_FALL_KG
    for i in range(_MORNINGS, len(mornings) - _MORNINGS + 1):
        before, after = mornings[i - _MORNINGS : i], mornings[i : i + _MORNINGS]
        if not _are_near(before, after) or _median_kg(before) - _median_kg(after) < BIRTH_FALL_KG:
            continue
        apart = min(kg for _, kg in before) - max(kg for _, kg in after)
        if apart >= clearest:
            first, clearest = after[0][0], apart
    return log if first is None else replace(log.only(lambda entry: day_of(entry) >= first), onset=None)


def _are_near(before: list[tuple[int, float]], after: list[tuple[int, float]]) -> bool:
    """Whether mornings lie near enough to each other for what lies between to be of one day."""
    return (
        after[0][0] - before[-1][0] <= _MOST_GAP_DAYS
        and before[-1][0] - before[0][0] <= _WINDOW_DAYS
        and after[-1][0] - after[0][0] <= _WINDOW_DAYS
    )


def _median_kg(mornings: list[tuple[int, float]]) -> float:
    return middle([kg for _, kg in mornings])
