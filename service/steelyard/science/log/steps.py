"""Logged steps: what they say of expenditure from day to day, and lately.

Steps are counted, not estimated, so that a change of them is a *known* change of what is spent: a running mean of the
days counted moves the reader's maintenance by what such steps burn and the body does not take back. Their level says
nothing (a device counts on its own scale), a change against the same device does. Only days that are over act, each on
the days after it.
"""

from collections.abc import Sequence
from typing import NamedTuple

import msgspec

from ..measures import ACTIVITY_ERROR, kept_kcal, step_kcal
from ..numbers import Estimate, Row
from ..register import Basis, Kind, Message, constant, equation, say, traced
from . import kernel as k
from .entries import DailyLog, StepsDay

STEPS_FOLLOWED_DAYS = constant(
    "steps_followed_days", 7.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Time constant, in days counted, of the running mean of steps that maintenance follows: weekdays even out",
)  # fmt: skip
STEPS_SETTLED_DAYS = constant(
    "steps_settled_days", 28.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Time constant, in days counted, after which scale and log have told what a new level of steps is worth, "
    "so that its error is no longer open",
)  # fmt: skip
STEPS_LEAST_DAYS = int(
    constant(
        "steps_least_days", 7, unit="d", basis=Basis.JUDGEMENT,
        summary="With fewer days counted, steps move nothing",
    )
)  # fmt: skip
STEPS_CHANGED = constant(
    "steps_changed", 1500.0, unit="steps/d", basis=Basis.JUDGEMENT,
    summary="Steps have changed where a fortnight's mean lies this far from that of the fortnight before: about 15 "
    "minutes of walking, three times the error of a fortnight's mean",
)  # fmt: skip
LATELY_DAYS = 14
_LEAST_LATELY = 5

FEWER, MORE, STEADY = "TREND_STEPS_FEWER", "TREND_STEPS_MORE", "TREND_STEPS_STEADY"


class StepsRead(msgspec.Struct, frozen=True, kw_only=True, gc=False):
    """What was counted so far."""

    days: int
    first: float  # steps a day: ``mean`` when it was first known
    mean: float  # steps a day, running mean over a week
    settled: float  # steps a day, running mean over four weeks
    kcal_per_step: float  # above rest


@traced
def kcal_of_step(resting_kcal: float) -> float:
    """Energy of a step above rest [kcal]."""
    return float(step_kcal(1.0, resting_kcal))


def nothing_counted(kcal_per_step: float) -> StepsRead:
    """Before the first day."""
    return StepsRead(days=0, first=0.0, mean=0.0, settled=0.0, kcal_per_step=kcal_per_step)


@traced
def steps_until(entries: Sequence[StepsDay], before: StepsRead, day: int) -> StepsRead:
    """What was counted before a day, from what was ``before`` on; ``entries`` are in order of time."""
    for entry in entries:
        if entry.day >= day:
            break
        before = _after(before, entry.steps)
    return before


@traced
def changed_kcal(read: StepsRead) -> float:
    """By how much expenditure has changed since steps were first known [kcal/d]."""
    return _counts(read).mean * (read.mean - read.first)


def _after(read: StepsRead, steps: float) -> StepsRead:
    """With one more day."""
    days = read.days + 1
    mean = read.mean + (steps - read.mean) * max(1.0 / days, 1.0 / STEPS_FOLLOWED_DAYS)
    settled = read.settled + (steps - read.settled) * max(1.0 / days, 1.0 / STEPS_SETTLED_DAYS)
    first = mean if days <= STEPS_LEAST_DAYS else read.first
    return msgspec.structs.replace(read, days=days, first=first, mean=mean, settled=settled)


def _counts(read: StepsRead) -> Estimate:
    """What of a step's energy counts [kcal]."""
    return kept_kcal(Estimate(read.kcal_per_step, ACTIVITY_ERROR * read.kcal_per_step))


@traced
@equation(
    "steps_followed",
    summary="Maintenance follows a change of logged steps",
    formula=(
        "change = what counts of the energy of a step x change of the running mean of steps a day; its variance is "
        "that of what counts, times the growth of the squared distance to the mean of four weeks"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="adults who count their steps by one device; nothing moves before a week was counted",
)
def lay_steps(log: DailyLog, before: StepsRead, per_kcal: float, columns: Row) -> StepsRead | None:
    """Write what logged steps change of expenditure into the columns of ``kernel.py``.

    The last day is not over and does not act. Returns what was counted, where that is enough and goes on; ``per_kcal``:
    tissue of a kilocalorie [kg].
    """
    days = len(log.weight_kg)
    kept, now = _counts(before), before
    per_step, per_step_variance = per_kcal * kept.mean, (per_kcal * kept.sd) ** 2
    for entry in log.steps:
        day = entry.day - log.first_day
        if day >= days - 1:
            break
        was, now = now, _after(now, entry.steps)
        if was.days >= STEPS_LEAST_DAYS and day >= 0:
            at = day * k.COLUMNS
            further = (now.mean - now.settled) ** 2 - (was.mean - was.settled) ** 2
            columns[at + k.ACTIVITY] = per_step * (now.mean - was.mean)
            columns[at + k.ACTIVITY_VARIANCE] = per_step_variance * max(0.0, further)
    is_lately = any(days - 1 - LATELY_DAYS <= entry.day - log.first_day < days - 1 for entry in log.steps)
    return now if is_lately and now.days >= STEPS_LEAST_DAYS else None


class LatelyWalked(NamedTuple):
    """Steps a day over the last fortnight and the one before it, what the change is worth [kcal/d], and what that means
    for a member; None where too few days were counted."""

    mean: float
    before: float | None = None
    worth_kcal: Estimate | None = None
    says: Message | None = None


@traced
def steps_lately(log: DailyLog, kcal_per_step: float) -> LatelyWalked | None:
    """Steps of the last two fortnights before a log's last day; None where the last has too few days counted."""
    last = log.first_day + len(log.weight_kg) - 1
    now = [entry.steps for entry in log.steps if last - LATELY_DAYS <= entry.day < last]
    then = [entry.steps for entry in log.steps if last - 2 * LATELY_DAYS <= entry.day < last - LATELY_DAYS]
    if len(now) < _LEAST_LATELY:
        return None
    mean = sum(now) / len(now)
    if len(then) < _LEAST_LATELY:
        return LatelyWalked(mean)
    before = sum(then) / len(then)
    burnt = (mean - before) * kcal_per_step
    worth = kept_kcal(Estimate(burnt, ACTIVITY_ERROR * abs(burnt)))
    return LatelyWalked(mean, before, worth, _says(mean, mean - before, worth.mean))


def _says(mean: float, change: float, kcal: float) -> Message:
    if abs(change) < STEPS_CHANGED:
        return say(STEADY, steps=round(mean, -2))
    return say(FEWER if change < 0.0 else MORE, steps=round(abs(change), -2), kcal=round(abs(kcal), -1))
