"""The gate that every answer with an intake passes: each week told, for the bodies that it begins and ends with.

What it lets through is ``Cleared``, which nothing else can make: an answer that tells an intake is typed to hold one,
so that it cannot be built around the gate.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from enum import StrEnum
from itertools import chain, groupby
from typing import Generic, NamedTuple, TypeVar

from ..register import say, traced
from .broken_rules import refusal, too_fast_a_gain, too_fast_a_loss, too_lean, too_little_protein, underweight
from .intake_floors import HeldFloors, deficit_floors, held_floors
from .largest_deficits import weeks_that_count
from .person_rails import forbids_fat_target
from .protein import PROTEIN_FLOOR_DEFICIT
from .subject import RailAction, Refused, Subject, stricter
from .table import (
    BMI_FLOOR,
    BODY_FAT,
    CUT_HISTORY,
    DEFAULT_DEFICIT,
    DEFICIT,
    DEFICIT_SHARE_LIMIT,
    FAT_FRACTION_FLOOR,
    FLOOR,
    GAIN_RATE_LIMIT,
    LOSS_LIMIT,
)
from .why import Why

Value = TypeVar("Value")
_TOKEN = object()
# Of an intake told in whole kilocalories, and of masses told in grams.
_WITHIN_KCAL, _WITHIN_KG, _WITHIN_G = 1.0, 0.003, 0.01
# Nearer to maintenance than this an intake is for a hold (judgement).
_HOLD_KCAL, _HOLD_SHARE = 25.0, 0.025
# Tissue that an underweight body may lose to the scale's own noise [kg] (judgement).
UNDERWEIGHT_LOSS_KG = 0.25


class Purpose(StrEnum):
    """What a week is for."""

    DEFICIT = "deficit"
    BREAK = "break"  # at maintenance, within a deficit
    HOLD = "hold"
    RISING = "rising"  # under maintenance in a hold or a gain under way, which is raised to it in steps
    GAIN = "gain"


class ToldWeek(NamedTuple):
    """A week's intake as told, the least of its days [kcal/d], the body before and after it, and protein [g/d].

    ``mean_kcal`` is the mean of its days, where they differ.
    """

    intake_kcal: float
    before: Subject
    after: Subject
    purpose: Purpose
    days: float = 7.0
    protein_g: float | None = None
    mean_kcal: float | None = None


class Broken(NamedTuple):
    """A rule that a week breaks, and its refusal."""

    week: int
    refusal: RailAction

    @property
    def rule(self) -> str:
        """The rule's id."""
        return self.refusal.id


class Cleared(Generic[Value]):
    """What has passed the gate, which alone makes it."""

    __slots__ = ("value",)

    def __init__(self, value: Value, token: object) -> None:
        if token is not _TOKEN:
            raise TypeError("only the gate clears what tells an intake")
        self.value = value

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Cleared) and bool(self.value == other.value)

    def __hash__(self) -> int:
        return hash(self.value)


def purpose_of(intake_kcal: float, maintenance_kcal: float) -> Purpose:
    """What an intake is for, by how far it lies from maintenance."""
    slack = max(_HOLD_KCAL, _HOLD_SHARE * maintenance_kcal)
    # A deficit by what is told of the two, in whole kilocalories, is one.
    if intake_kcal < maintenance_kcal - slack + _WITHIN_KCAL:
        return Purpose.DEFICIT
    return Purpose.GAIN if intake_kcal > maintenance_kcal + slack else Purpose.HOLD


@traced
def clear(
    value: Value,
    weeks: Sequence[ToldWeek],
    field: str | Sequence[str],
    *,
    weeks_before: float = 0.0,
    weeks_since: float = 0.0,
    is_history_known: bool = True,
    running_kcal: float = math.inf,
    also: Iterable[Sequence[ToldWeek]] = (),
) -> Cleared[Value]:
    """``value``, where each of the ``weeks`` that it tells is inside the rails (``first_broken``).

    ``also``: the same weeks for other bodies that may live them, judged likewise.
    Raises: ``Refused`` naming ``field``, which may be one for each week.
    """
    for told in chain((weeks,), also):
        broken = first_broken(
            told,
            weeks_before=weeks_before,
            weeks_since=weeks_since,
            is_history_known=is_history_known,
            running_kcal=running_kcal,
        )
        if broken is not None:
            raise Refused(broken.refusal, field if isinstance(field, str) else field[broken.week])
    return Cleared(value, _TOKEN)


def cleared_with(value: Value, _: Cleared[list[ToldWeek]]) -> Cleared[Value]:
    """``value``, which shows weeks that have passed the gate."""
    return Cleared(value, _TOKEN)


def nothing_told(value: Value) -> Cleared[Value]:
    """``value`` which tells no intake: an empty list, or None."""
    if value:
        raise TypeError("this tells something: have it cleared")
    return Cleared(value, _TOKEN)


def first_broken(
    weeks: Sequence[ToldWeek],
    *,
    weeks_before: float = 0.0,
    weeks_since: float = 0.0,
    is_history_known: bool = True,
    running_kcal: float = math.inf,
) -> Broken | None:
    """The first rule that a week breaks; ``weeks_before`` of a deficit that ended ``weeks_since`` ago count as well.

    ``is_history_known``: whether past cuts are known; else, as for body fat that was not measured, the default deficit
    is the largest to begin with. ``running_kcal`` is what was told of one that goes on.
    """
    found = _all_broken(weeks, weeks_before, weeks_since, is_history_known=is_history_known, running_kcal=running_kcal)
    return next(found, None)


def _all_broken(
    weeks: Sequence[ToldWeek],
    weeks_before: float,
    weeks_since: float,
    *,
    is_history_known: bool,
    running_kcal: float,
) -> Iterator[Broken]:
    at, since, counted = 0, weeks_since, weeks_before
    rising: list[ToldWeek] = []
    for purpose, group in groupby(weeks, key=_run_purpose):
        run = list(group)
        length = sum([week.days for week in run]) / 7.0
        if purpose is Purpose.DEFICIT:
            # Two with less than four weeks between them are one.
            counted = weeks_that_count(counted, since) + length
            since = 0.0
            told_kcal = math.inf if at else running_kcal
            yield from _over_default(run[0], at, told_kcal, is_history_known=is_history_known)
            yield from _deficit_run(run, at, counted)
        else:
            since += length
            yield from _held_run(run, at, purpose, weeks[0].before, rising)
        rising = run if purpose is Purpose.RISING else []
        at += len(run)


def _run_purpose(week: ToldWeek) -> Purpose:
    return Purpose.DEFICIT if week.purpose is Purpose.BREAK else week.purpose


def _over_default(first: ToldWeek, at: int, told_kcal: float, *, is_history_known: bool) -> Iterator[Broken]:
    """A deficit over the default one, where only that is safe to start: for all that is known.

    One that was told before keeps its size, whatever maintenance has turned out to be.
    """
    least = min(first.before.maintenance_kcal - DEFAULT_DEFICIT, told_kcal)
    if (first.intake_kcal if first.mean_kcal is None else first.mean_kcal) >= least - _WITHIN_KCAL:
        return
    if not is_history_known:
        yield _too_little(at, CUT_HISTORY, first, least, Why.HISTORY_UNKNOWN)
    if not first.before.is_fat_measured:
        yield _too_little(at, BODY_FAT, first, least, Why.FAT_UNMEASURED)


def _deficit_run(run: Sequence[ToldWeek], at: int, weeks: float) -> Iterator[Broken]:
    seen, eating = None, math.inf
    first = run[0].before
    floors, protein_kg = deficit_floors(first, weeks), first.protein_kg
    # A break has floors of its own.
    eaten = [math.inf if week.purpose is Purpose.BREAK else week.intake_kcal for week in run]
    are_kept = floors.are_kept(_bodies(run), eaten + eaten, _WITHIN_KCAL)
    for i, week in enumerate(run, start=at):
        # What is broken, and by which of them, is asked only where something is.
        bodies = () if are_kept else (week.before, week.after)
        for body in bodies:
            if body is not seen and (body.bmi < BMI_FLOOR or body.fat_fraction < floors.leanest):
                yield from _too_lean(i, body)
        if week.purpose is Purpose.BREAK:
            yield from _held_run([week], i, Purpose.HOLD, first)
            continue
        # Whoever ate more before the first day needs more for some days still: that makes no deficit larger.
        least = (1.0 - DEFICIT_SHARE_LIMIT) * min(week.before.maintenance_kcal, first.maintenance_kcal)
        if week.intake_kcal < least - 0.5 * _WITHIN_KCAL:
            yield _too_little(i, DEFICIT, week, least, Why.SHARE_OF_MAINTENANCE)
        for body in bodies:
            if body is seen and week.intake_kcal >= eating:
                continue  # a week ends with the body that the next begins with
            seen, eating = body, week.intake_kcal
            least, rule = floors.least_kcal(body)
            if week.intake_kcal < least - _WITHIN_KCAL:
                yield _too_little(i, rule, week, least, Why.BODY_OF_THAT_DAY)
        if week.protein_g is not None and week.protein_g < PROTEIN_FLOOR_DEFICIT * protein_kg - _WITHIN_G:
            yield Broken(i, too_little_protein(week.protein_g / protein_kg))
    share, within = _change_share(run)
    if share < -LOSS_LIMIT - within:
        yield Broken(at, too_fast_a_loss(share))


def _too_lean(i: int, body: Subject) -> Iterator[Broken]:
    """A body that is underweight, or too lean, within a deficit."""
    if body.bmi < BMI_FLOOR:
        yield Broken(i, underweight(body.bmi))
    if body.fat_fraction < stricter(FAT_FRACTION_FLOOR, body.sex):
        yield Broken(i, too_lean(body.sex, body.fat_fraction, speaks=forbids_fat_target(body) is None))


def _held_run(
    run: Sequence[ToldWeek], at: int, purpose: Purpose, start: Subject, rising: Sequence[ToldWeek] = ()
) -> Iterator[Broken]:
    """What a hold or a gain breaks, in all that is told from the body ``start`` on.

    Weeks ``rising`` to it are a part of the gain: its rate is that of all of it.
    """
    floors, told = held_floors(start), [week.intake_kcal for week in run]
    # What is broken, and by which of them, is asked only where something is.
    if not floors.are_kept(_bodies(run), told + told, _WITHIN_KCAL):
        for i, week in enumerate(run, start=at):
            yield from _held_week(week, i, purpose, start, floors, is_first=at == 0)
    if purpose is Purpose.GAIN and not run[0].before.is_pregnant:
        (share, within), status = _change_share([*rising, *run]), run[0].before.training_status
        if share > GAIN_RATE_LIMIT[status] + within:
            yield Broken(at, too_fast_a_gain(status, share))


def _bodies(run: Sequence[ToldWeek]) -> list[Subject]:
    """The bodies that weeks begin with, and then those that they end with."""
    return [week.before for week in run] + [week.after for week in run]


def _held_week(
    week: ToldWeek, i: int, purpose: Purpose, start: Subject, floors: HeldFloors, *, is_first: bool
) -> Iterator[Broken]:
    for body in (week.before, week.after):
        least = floors.least_kcal(body.resting_now_kcal, body.maintenance_kcal)
        if week.intake_kcal < least - _WITHIN_KCAL:
            message = say("REFUSED_HELD", intake_kcal=week.intake_kcal, least_intake_kcal=least)
            yield Broken(i, refusal(FLOOR, message, least, week.intake_kcal, "kcal/d"))
    then = week.after
    gives_more = is_first and week.intake_kcal > week.before.maintenance_kcal + _HOLD_KCAL
    if gives_more or purpose is Purpose.RISING:
        return  # the step up, or more than is needed from the first day on, is the answer
    if then.bmi < BMI_FLOOR and start.settled_kg - then.settled_kg > UNDERWEIGHT_LOSS_KG:
        yield Broken(i, underweight(then.bmi))


def _change_share(run: Sequence[ToldWeek]) -> tuple[float, float]:
    """Change of tissue a week, of the body mass at the start, and what grams of it cannot tell; 0 of breaks alone."""
    first, last = run[0].before, run[-1].after
    spent = sum(week.days for week in run if week.purpose is not Purpose.BREAK) / 7.0
    if not spent:
        return 0.0, 0.0
    whole = spent * first.weight_kg
    return (last.settled_kg - first.settled_kg) / whole, _WITHIN_KG / whole


def _too_little(i: int, rule: str, week: ToldWeek, least: float, why: Why) -> Broken:
    maintenance = week.before.maintenance_kcal
    message = say(
        "REFUSED_DEFICIT",
        deficit_kcal=maintenance - week.intake_kcal,
        limit_kcal=maintenance - least,
        rule=rule,
        why=why,
        least_intake_kcal=least,
    )
    return Broken(i, refusal(rule, message, least, week.intake_kcal, "kcal/d"))
