"""Weighings as they are believed: one weight a day, slips set aside and named, other units read.

What cannot be meant is refused, naming the entry.
"""

import math
from collections.abc import Sequence

from ..numbers import FLOATS, Column, Elementwise, Number, compiled, inlined
from ..register import Basis, Message, constant, say
from .entries import Log, LogError, Weighing, in_future, in_order, iso_date, middle

POUNDS_PER_KG = constant(
    "pounds_per_kilogram", 1.0 / 0.45359237, unit="lb/kg",
    summary="International avoirdupois pound, 0.45359237 kg exactly (agreement of 1959)",
)  # fmt: skip
UNIT_TOLERANCE = constant(
    "unit_mix_up_tolerance", 0.06, unit="1", basis=Basis.JUDGEMENT,
    summary="A weight is read as pounds (or as kilograms divided twice) when the ratio to the weights before is "
    "within this fraction of the unit ratio",
)  # fmt: skip
FAR_WEIGHT = constant(
    "far_weight", 0.06, unit="1", basis=Basis.JUDGEMENT,
    summary="A weighing further than this fraction of body mass from those before is set aside (a typing slip, or "
    "another person's weight) unless it lasts",
)  # fmt: skip
ANOTHERS_MORNINGS = int(
    constant(
        "mornings_of_another", 5, unit="weighings", basis=Basis.JUDGEMENT,
        summary="So many weighings in a row that are this far off may be those of another (a guest's week), who stands "
        "on the same scale; nobody's own weight comes to lie there overnight. What goes on, or lasts a fortnight, is "
        "believed",
    )
)  # fmt: skip
LEAST_WEIGHT_KG = constant(
    "least_logged_weight", 20.0, unit="kg", basis=Basis.JUDGEMENT,
    summary="A weight under this is nobody's who may send a log",
)  # fmt: skip
MOST_WEIGHT_KG = constant(
    "most_logged_weight", 500.0, unit="kg", basis=Basis.JUDGEMENT,
    summary="A weight over this is nobody's whom a scale weighs",
)  # fmt: skip
ABSURD_JUMP_PER_DAY = constant(
    "absurd_weight_jump_growth", 0.003, unit="1/d", basis=Basis.JUDGEMENT,
    summary="What each further day between two weighings adds to the largest believable change (2 % a week)",
)  # fmt: skip
WITHIN_DAY_SHARE = constant(
    "within_day_noise_share", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the noise variance of a weighing that a second weighing of the day does not share",
)  # fmt: skip
GAP_DAYS = constant(
    "logging_gap", 7.0, unit="d", basis=Basis.JUDGEMENT, summary="Days without a weighing that are pointed out"
)

# So many tell whether the first weighing is of the same person: more than a few mornings of another (judgement).
_FOLLOWING_DAYS, _LEAST_FOLLOWING = 14, 3
_OTHER_UNIT = POUNDS_PER_KG**0.5  # a weight further from another by this factor is nearer to it in the other unit

SORTED = "LOG_SORTED"
UNIT_MIX_UP = "LOG_UNIT_MIX_UP"
SET_ASIDE = "LOG_WEIGHT_SET_ASIDE"
DECIMAL_SLIP = "LOG_WEIGHT_DECIMAL"
TWICE = "LOG_WEIGHT_TWICE"
GAP = "LOG_GAP"


@compiled
def weights_by_day(
    days: Sequence[int], kilograms: Sequence[Number], first: int, count: int, *, ops: Elementwise = FLOATS
) -> tuple[Column, Column, Column]:
    """The first three columns of a log: several weighings of a day become their mean, which is less noisy."""
    weight: Column = [0.0] * count
    number: Column = [0.0] * count
    for index in range(len(kilograms)):
        at = int(days[index] - first)
        weight[at] = weight[at] + kilograms[index]
        number[at] = number[at] + 1.0
    noise_scale: Column = []
    is_weighed: Column = []
    for at in range(count):
        several = number[at]
        if several > 1.0:
            weight[at] = weight[at] / several
            noise_scale.append(1.0 - WITHIN_DAY_SHARE + WITHIN_DAY_SHARE / several)
        else:
            noise_scale.append(1.0)
        is_weighed.append(1.0 if several > 0.0 else 0.0)
    return weight, noise_scale, is_weighed


def believed(
    weighings: Sequence[Weighing], end: int, reference_kg: float | None, notes: list[Message]
) -> tuple[list[int], list[float]]:
    """The days of the weighings that are read, in order of time, and what each is read as [kg].

    Slips are set aside and named. ``end``: the day after the last.
    """
    days = [entry.day for entry in weighings]
    order: Sequence[int] = range(len(weighings))
    is_in_order = in_order(weighings)
    if not is_in_order:
        if days != sorted(days):
            notes.append(say(SORTED))
        order = sorted(order, key=lambda i: (days[i], weighings[i].order or 0))
        weighings, days = [weighings[i] for i in order], sorted(days)
    if days[-1] >= end:
        raise in_future(f"log.weights[{order[-1]}].date")
    if not is_in_order and len(set(days)) < len(days):
        weighings, days, order = _told_once(weighings, order, notes)
    accepted: list[float] = []
    kept: list[int] = []
    aside: list[tuple[int, float]] = []
    at = 0
    while True:
        before = accepted[-1] if accepted else reference_kg or 0.0
        found = _usual(weighings, at, before, kept[-1] if kept else days[0])
        accepted += found
        kept += days[at : at + len(found)]
        at += len(found)
        if at == len(weighings):
            break
        # One that is not like the one before, comes long after it, or has none before it.
        day, given, index = days[at], float(weighings[at].weight_kg), order[at]
        if not 0.0 < given < math.inf:
            raise LogError(
                "LOG_WEIGHT_NOT_A_NUMBER", f"log.weights[{index}].weight_kg", "Send a positive weight in kilograms."
            )
        read: float | None = given
        if not (accepted and _is_like(given, accepted[-1])):
            following = [] if accepted else _following(weighings, at)
            read = _believable(given, day, accepted, kept, reference_kg, following, aside, notes)
        if read is None:
            aside.append((day, given))
        else:
            if kept and day - kept[-1] > GAP_DAYS:
                notes.append(say(GAP, date=iso_date(kept[-1]), days=day - kept[-1] - 1))
            accepted.append(read)
            kept.append(day)
        at += 1
    if not kept:
        detail = "None of the weights goes with the stated weight: correct them, or that."
        raise LogError("LOG_WITHOUT_WEIGHT", "log.weights", detail)
    if end - 1 - kept[-1] > GAP_DAYS:
        notes.append(say(GAP, date=iso_date(kept[-1]), days=end - 1 - kept[-1]))
    return kept, accepted


def _following(weighings: Sequence[Weighing], at: int) -> list[float]:
    """The weights of the fortnight after a weighing, or else the next three, whenever they were."""
    until = weighings[at].day + _FOLLOWING_DAYS
    found: list[float] = []
    for entry in weighings[at + 1 :]:
        if entry.day > until and len(found) >= _LEAST_FOLLOWING:
            break
        found.append(float(entry.weight_kg))
    return found


def weights_read(log: Log, reference_kg: float) -> list[float]:
    """What the weighings of a log are read as [kg], in order of time, by someone of this weight; slips left out.

    Raises: ``LogError`` where none goes with that weight.
    """
    return believed(log.weighings, log.last_day + 1, reference_kg, [])[1]


def _told_once(
    weighings: Sequence[Weighing], order: Sequence[int], notes: list[Message]
) -> tuple[list[Weighing], list[int], list[int]]:
    """Weighings without those that repeat one of the same day and order to the gram."""
    seen: set[tuple[int, float, int | None]] = set()
    found: list[tuple[Weighing, int]] = []
    for weighing, index in zip(weighings, order, strict=True):
        key = (weighing.day, weighing.weight_kg, weighing.order)
        if key not in seen:
            seen.add(key)
            found.append((weighing, index))
    if len(found) < len(weighings):
        notes.append(say(TWICE, count=len(weighings) - len(found)))
    return [w for w, _ in found], [w.day for w, _ in found], [i for _, i in found]


@inlined
def _is_like(weight_kg: Number, before_kg: Number) -> bool:
    """Whether a weight needs no second look after the one before."""
    # Within a twentieth of it (judgement).
    return bool(0.95 * before_kg < weight_kg < 1.05 * before_kg)


@compiled
def _usual(
    weighings: Sequence[Weighing], first: int, before_kg: Number, before_day: Number, *, ops: Elementwise = FLOATS
) -> Column:
    """The weights from the ``first``-th on, up to one that needs a second look; before them the one given."""
    found: Column = []
    for index in range(first, len(weighings)):
        weighing = weighings[index]
        weight, day = weighing.weight_kg, weighing.day
        if day - before_day > GAP_DAYS or not _is_like(weight, before_kg):
            break
        found.append(weight)
        before_kg, before_day = weight, day
    return found


def _believable(
    given: float,
    day: int,
    accepted: list[float],
    kept: list[int],
    reference_kg: float | None,
    following: list[float],
    aside: list[tuple[int, float]],
    notes: list[Message],
) -> float | None:
    """``given`` in kilograms, read in another unit where that explains it; None where it is set aside.

    Args: the weighings read so far and their days; the stated weight; those that follow, for a first one; what was set
        aside before.
    """
    if accepted:
        # The last weight may itself be a slip that the reader will discount, so ask the last few.
        expected, since = middle(accepted[-5:]), day - kept[-1]
    else:
        # Nothing before it: the stated weight settles its unit, or those after it.
        near = middle([given, *following[:_LEAST_FOLLOWING]])
        expected, since = near if reference_kg is None else reference_kg, 0
    if _is_like(given, expected):
        return given
    is_slip, read = _in_another_unit(given, expected, day, notes)
    if is_slip:
        return read
    if not LEAST_WEIGHT_KG <= given <= MOST_WEIGHT_KG:
        notes.append(say(SET_ASIDE, date=iso_date(day), given=given, expected_kg=expected))
        return None
    if not accepted:
        # The first weighing may be years older than the stated weight, so that only those after it can tell; where they
        # are in several units those that may be in that of the stated weight.
        same_unit = [
            kg for kg in following if reference_kg is None or 1.0 / _OTHER_UNIT < kg / reference_kg < _OTHER_UNIT
        ]
        following = same_unit or following
        if len(following) < _LEAST_FOLLOWING:
            return given
        expected = middle(following)
        is_slip, read = _in_another_unit(given, expected, day, notes)
        if is_slip:
            return read
    elif _lasts(given, day, kept[-1], aside):
        return given
    if abs(given - expected) <= expected * (FAR_WEIGHT + ABSURD_JUMP_PER_DAY * max(since - 1, 0)):
        return given
    notes.append(say(SET_ASIDE, date=iso_date(day), given=given, expected_kg=expected))
    return None


def _in_another_unit(given: float, expected: float, day: int, notes: list[Message]) -> tuple[bool, float | None]:
    """Whether a weight is the one expected in another unit, or with its decimal point moved, which is named; and what
    it is read as, None where it is set aside."""
    for factor in (1.0 / POUNDS_PER_KG, POUNDS_PER_KG):
        if abs(given * factor / expected - 1.0) < UNIT_TOLERANCE:
            read = given * factor
            notes.append(say(UNIT_MIX_UP, date=iso_date(day), given=given, read_kg=read, others=0))
            return True, read
    for factor in (0.1, 10.0):
        if abs(given * factor / expected - 1.0) < UNIT_TOLERANCE:
            notes.append(say(DECIMAL_SLIP, date=iso_date(day), given=given, expected_kg=expected))
            return True, None
    return False, None


def _lasts(given: float, day: int, believed_day: int, aside: list[tuple[int, float]]) -> bool:
    """Whether a weight goes on with those set aside since one was believed, longer than another's mornings do."""
    run = 0
    for before, weight in reversed(aside):
        if before <= believed_day or not _is_like(given, weight):
            break
        run += 1
        if day - before >= _FOLLOWING_DAYS:
            return True
    return run >= ANOTHERS_MORNINGS
