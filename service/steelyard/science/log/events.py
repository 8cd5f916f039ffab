"""Dated events that move weight without moving tissue, and for how long they make a verdict worthless.

Each has a mass that it is expected to add or take, with an SD, days over which it comes, and a time with which it goes
again. The reader expects that mass where the event is told, and is less sure of water on those days.
"""

import math
from collections.abc import Iterable, Sequence
from enum import StrEnum
from typing import NamedTuple

from ..numbers import Column, Estimate
from ..register import Basis, Kind, constant, equation, source

WATER_DAYS = constant(
    "unexplained_water_days", 14.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Time constant with which water fades that nothing explains any more",
)  # fmt: skip


class EventKind(StrEnum):
    """What happened."""

    CREATINE_START = "creatine_start"
    CREATINE_STOP = "creatine_stop"
    ILLNESS = "illness"
    TRAVEL = "travel"
    INJURY = "injury"
    NEW_PROGRAMME = "new_programme"
    SALTY_DAYS = "salty_days"
    FESTIVE_DAYS = "festive_days"
    MEDICINE = "medicine"
    ALCOHOL = "alcohol"


class LoggedEvent(NamedTuple):
    """An event from ``day`` to ``until`` (its last day; None: of that day, or still going on where it lasts)."""

    day: int
    kind: EventKind
    until: int | None = None


class Effect(NamedTuple):
    """Mass expected of an event [kg] with its SD, the days over which it comes and the time constant with which it
    goes once the event is over; ``lasts``: it stays until another says otherwise. Verdicts wait ``pause_days`` after
    its last day."""

    mass_kg: float
    sd_kg: float
    rises_days: float
    fades_days: float
    lasts: bool = False
    pause_days: int = 0


POWERS_2003 = source(
    "powers_2003",
    "Powers ME, Arnold BL, Weltman AL et al. Creatine supplementation increases total body water without altering "
    "fluid distribution. J Athl Train 2003;38:44-50",
)
DAMAS_2016 = source(
    "damas_2016",
    "Damas F, Phillips SM, Lixandrao ME et al. Early resistance training-induced increases in muscle cross-sectional "
    "area are concomitant with edema-induced muscle swelling. Eur J Appl Physiol 2016;116:49-56",
    "10.1007/s00421-015-3243-4",
)
# Creatine: 0.8 to 1.5 kg within a week of loading, gone four to six weeks after the last day. Training: swelling up to
# the third week. The others are common practice, no published source; where a direction is not known the mean is 0.
EFFECTS: dict[EventKind, Effect] = {
    EventKind.CREATINE_START: Effect(1.0, 0.4, 6.0, 14.0, lasts=True, pause_days=7),
    EventKind.CREATINE_STOP: Effect(-1.0, 0.4, 28.0, 14.0, lasts=True, pause_days=0),
    EventKind.ILLNESS: Effect(-0.6, 1.0, 2.0, 3.0, pause_days=7),
    EventKind.TRAVEL: Effect(0.4, 0.4, 1.0, 1.5, pause_days=3),
    EventKind.INJURY: Effect(0.0, 0.5, 2.0, 5.0, pause_days=7),
    EventKind.NEW_PROGRAMME: Effect(0.6, 0.4, 7.0, 10.0, pause_days=14),
    EventKind.SALTY_DAYS: Effect(0.6, 0.5, 1.0, 2.0, pause_days=3),
    EventKind.FESTIVE_DAYS: Effect(1.0, 0.6, 1.0, 2.5, pause_days=4),
    EventKind.MEDICINE: Effect(0.0, 1.0, 5.0, 14.0, pause_days=7),
    EventKind.ALCOHOL: Effect(0.0, 0.5, 1.0, 1.5, pause_days=2),
}
_PROGRAMME_DAYS = 14  # of a new programme whose last day was not told


def last_day(event: LoggedEvent) -> int:
    """The last day on which an event acts by itself."""
    if event.until is not None:
        return max(event.day, event.until)
    return event.day + _PROGRAMME_DAYS - 1 if event.kind is EventKind.NEW_PROGRAMME else event.day


def as_told_last(events: Iterable[LoggedEvent]) -> list[LoggedEvent]:
    """Each event once: who tells it again, as on the day on which it is over, means the same one."""
    return list({(event.day, event.kind): event for event in events}.values())


@equation(
    "event_water",
    summary="Mass that dated events move: creatine, illness, travel, injury, a new programme, salt, medicine, alcohol",
    formula="each rises to its mass over some days, stays while the event lasts, and fades after it; its variance is "
    "added to that of water on the days on which it comes and goes",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(POWERS_2003, DAMAS_2016),
    valid_range="events with a date; the sizes are means of adults",
)
def expected_water(
    events: Sequence[LoggedEvent], first_day: int, count: int, began: int
) -> tuple[Column | None, Column | None]:
    """What to add to water that fades [kg], and to its variance [kg2], on each of ``count`` days; None without events.

    A day's entry acts from its morning to the next. ``began``: the day on which the reading began, ``first_day`` or the
    first of what was read before it. What an event had moved by then is in the first weight, from which water counts.
    """
    if not events:
        return None, None
    kept = math.exp(-1.0 / WATER_DAYS)
    water, variance = [0.0] * count, [0.0] * count
    for event in as_told_last(events):
        effect = EFFECTS[event.kind]
        before = mass_on(event, began)
        for at in range(count):
            day = first_day + at
            since = day - event.day
            if since < 0:
                continue
            water[at] += (mass_on(event, day + 1) - before) - kept * (mass_on(event, day) - before)
            if since < effect.rises_days:
                variance[at] += effect.sd_kg**2 / effect.rises_days
            elif not effect.lasts and 0 <= day - last_day(event) < effect.fades_days:
                variance[at] += 0.5 * effect.sd_kg**2 / effect.fades_days
    return water, variance


def mass_on(event: LoggedEvent, day: int) -> float:
    """Mass that an event is expected to have added by the morning of a day [kg]."""
    return EFFECTS[event.kind].mass_kg * _share_on(event, day)


def _share_on(event: LoggedEvent, day: int) -> float:
    """How much of its whole effect an event has by the morning of a day, 0 to 1."""
    effect = EFFECTS[event.kind]
    since = day - event.day
    if since <= 0:
        return 0.0
    if effect.lasts:
        return min(1.0, since / effect.rises_days)
    end = last_day(event) + 1
    risen = min(1.0, min(since, end - event.day) / effect.rises_days)
    return risen if day <= end else risen * math.exp(-(day - end) / effect.fades_days)


def moved_by(event: LoggedEvent, since_day: int, day: int) -> Estimate:
    """Mass that an event is expected to have added from one morning to another [kg]."""
    effect, share = EFFECTS[event.kind], _share_on(event, day) - _share_on(event, since_day)
    return Estimate(effect.mass_kg * share, effect.sd_kg * abs(share))


def moved_by_all(events: Iterable[LoggedEvent], since_day: int, day: int) -> Estimate:
    """Mass that all events together are expected to have added from one morning to another [kg]; each counts once."""
    moved = [moved_by(event, since_day, day) for event in as_told_last(events)]
    return Estimate(sum(one.mean for one in moved), math.sqrt(sum(one.sd**2 for one in moved)))


def has_acted(event: LoggedEvent, since_day: int, day: int) -> bool:
    """Whether an event began, or went on, in the days from one to another; one that lasts does so as it begins."""
    return event.day <= day and last_day(event) >= since_day


def paused_until(events: Sequence[LoggedEvent], day: int) -> tuple[int, EventKind] | None:
    """The day until which a verdict waits for an event that lies before ``day``, and for which; None where none."""
    waits = [
        (last_day(event) + EFFECTS[event.kind].pause_days, event.kind)
        for event in events
        if event.day <= day and EFFECTS[event.kind].pause_days
    ]
    longest = max(waits, default=None)
    return longest if longest is not None and longest[0] >= day else None
