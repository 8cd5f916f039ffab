"""The gate that every answer with an intake passes: each week told, for the bodies that it begins and ends with.

What it lets through is ``Cleared``, which nothing else can make: an answer that tells an intake is typed to hold one,
so that it cannot be built around the gate.
"""

from collections.abc import Iterator, Sequence
from enum import StrEnum
from itertools import groupby
from typing import Generic, NamedTuple, TypeVar

from ..register import Message, say, traced
from .guard_rails import least_held_kcal, least_on_day_kcal
from .macronutrients import PROTEIN_FLOOR_DEFICIT
from .subject import Refused, Subject, refusing, stricter
from .table import (
    APART_WEEKS,
    BMI,
    BMI_FLOOR,
    BODY_FAT,
    CUT_HISTORY,
    DEFAULT_DEFICIT,
    DEFICIT,
    DEFICIT_SHARE_LIMIT,
    FAT_FRACTION_FLOOR,
    FLOOR,
    GAIN_RATE,
    GAIN_RATE_LIMIT,
    LOSS,
    LOSS_LIMIT,
    PROTEIN,
)
from .why import Why

Value = TypeVar("Value")
_TOKEN = object()
# Of an intake told in whole kilocalories, and of masses told in grams.
_WITHIN_KCAL, _WITHIN_SHARE, _WITHIN_G = 1.0, 2e-5, 0.01
# Nearer to maintenance than this an intake is for a hold.
_HOLD_KCAL, _HOLD_SHARE = 25.0, 0.025
# Tissue that an underweight body may lose to the scale's own noise [kg].
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
    """A rule that a week breaks, what it says, its limit and what was found."""

    week: int
    rule: str
    message: Message
    limit: float
    observed: float
    unit: str


class Cleared(Generic[Value]):
    """What has passed the gate. Made by ``clear`` alone."""

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
    if intake_kcal < maintenance_kcal - slack:
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
) -> Cleared[Value]:
    """``value``, where each of the ``weeks`` that it tells is inside the rails (``first_broken``).

    Raises: ``Refused`` naming ``field``, which may be one a week.
    """
    broken = first_broken(weeks, weeks_before=weeks_before, weeks_since=weeks_since, is_history_known=is_history_known)
    if broken is not None:
        raise refusal_of_week(broken, field if isinstance(field, str) else field[broken.week])
    return Cleared(value, _TOKEN)


def nothing_told(value: Value) -> Cleared[Value]:
    """``value`` which tells no intake: an empty list, or None."""
    if value:
        raise TypeError("this tells something: have it cleared")
    return Cleared(value, _TOKEN)


def refusal_of_week(broken: Broken, field: str) -> Refused:
    """The refusal of a week that breaks a rule."""
    return Refused(*refusing(broken.rule, field, broken.message, broken.limit, broken.observed, broken.unit))


def first_broken(
    weeks: Sequence[ToldWeek],
    *,
    weeks_before: float = 0.0,
    weeks_since: float = 0.0,
    is_history_known: bool = True,
) -> Broken | None:
    """The first rule that a week breaks; ``weeks_before`` of a deficit that ended ``weeks_since`` ago count as well.

    ``is_history_known``: whether past cuts are known; else, as for body fat that was not measured, the default deficit
    is the largest.
    """
    return next(_all_broken(weeks, weeks_before, weeks_since, is_history_known=is_history_known), None)


def _all_broken(
    weeks: Sequence[ToldWeek], weeks_before: float, weeks_since: float, *, is_history_known: bool
) -> Iterator[Broken]:
    at, since, counted = 0, weeks_since, weeks_before
    for purpose, group in groupby(weeks, key=_run_purpose):
        run = list(group)
        length = sum(week.days for week in run) / 7.0
        if purpose is Purpose.DEFICIT:
            # Two with less than four weeks between them are one.
            counted = (counted + since if since < APART_WEEKS else 0.0) + length
            since = 0.0
            yield from _over_default(run[0], at, is_history_known=is_history_known)
            yield from _deficit_run(run, at, counted)
        else:
            since += length
            yield from _held_run(run, at, purpose, weeks[0].before)
        at += len(run)


def _run_purpose(week: ToldWeek) -> Purpose:
    return Purpose.DEFICIT if week.purpose is Purpose.BREAK else week.purpose


def _over_default(first: ToldWeek, at: int, *, is_history_known: bool) -> Iterator[Broken]:
    """A deficit over the default one, where only that is safe to start: for all that is known."""
    least = first.before.maintenance_kcal - DEFAULT_DEFICIT
    if (first.intake_kcal if first.mean_kcal is None else first.mean_kcal) >= least - _WITHIN_KCAL:
        return
    if not is_history_known:
        yield _too_little(at, CUT_HISTORY, first, least, Why.HISTORY_UNKNOWN)
    if not first.before.is_fat_measured:
        yield _too_little(at, BODY_FAT, first, least, Why.FAT_UNMEASURED)


def _deficit_run(run: Sequence[ToldWeek], at: int, weeks: float) -> Iterator[Broken]:
    wanted = PROTEIN_FLOOR_DEFICIT * run[0].before.weight_kg
    # A week mostly begins with the body that the one before ended with, of which all has been asked.
    seen, there = None, (0.0, FLOOR)
    for i, week in enumerate(run, start=at):
        if week.before is not seen:
            yield from _too_lean(i, week.before)
        yield from _too_lean(i, week.after)
        if week.purpose is Purpose.BREAK:
            yield from _held_run([week], i, Purpose.HOLD, run[0].before)
            continue
        least = (1.0 - DEFICIT_SHARE_LIMIT) * week.before.maintenance_kcal
        if week.intake_kcal < least - _WITHIN_KCAL:
            yield _too_little(i, DEFICIT, week, least, Why.SHARE_OF_MAINTENANCE)
        if week.before is not seen:
            there = least_on_day_kcal(week.before, weeks)
        then = least_on_day_kcal(week.after, weeks)
        for least, rule in (there, then):
            if week.intake_kcal < least - _WITHIN_KCAL:
                yield _too_little(i, rule, week, least, Why.BODY_OF_THAT_DAY)
        seen, there = week.after, then
        if week.protein_g is not None and week.protein_g < wanted - _WITHIN_G:
            per_kg = week.protein_g / run[0].before.weight_kg
            message = say("REFUSED_PROTEIN", observed=per_kg, limit=PROTEIN_FLOOR_DEFICIT)
            yield Broken(i, PROTEIN, message, PROTEIN_FLOOR_DEFICIT, per_kg, "g/kg/d")
    share = _change_share(run)
    if share < -LOSS_LIMIT - _WITHIN_SHARE:
        message = say("REFUSED_LOSS", percent=-100 * share, limit_percent=100 * LOSS_LIMIT)
        yield Broken(at, LOSS, message, LOSS_LIMIT, -share, "of body mass a week")


def _too_lean(i: int, body: Subject) -> Iterator[Broken]:
    """A body that is underweight, or too lean, within a deficit."""
    if body.bmi < BMI_FLOOR:
        message = say("REFUSED_END_BMI", bmi=body.bmi, limit=BMI_FLOOR)
        yield Broken(i, BMI, message, BMI_FLOOR, body.bmi, "kg/m2")
    floor = stricter(FAT_FRACTION_FLOOR, body.sex)
    if body.fat_fraction < floor:
        message = say("REFUSED_END_BODY_FAT", fat_percent=100 * body.fat_fraction, limit_percent=100 * floor)
        yield Broken(i, BODY_FAT, message, floor, body.fat_fraction, "1")


def _held_run(run: Sequence[ToldWeek], at: int, purpose: Purpose, start: Subject) -> Iterator[Broken]:
    """What a hold or a gain breaks, in all that is told from the body ``start`` on."""
    seen, held = None, 0.0
    for i, week in enumerate(run, start=at):
        there = held if week.before is seen else least_held_kcal(week.before)
        seen, held = week.after, least_held_kcal(week.after)
        for least in (there, held):
            if week.intake_kcal < least - _WITHIN_KCAL:
                message = say("REFUSED_HELD", intake_kcal=week.intake_kcal, least_intake_kcal=least)
                yield Broken(i, FLOOR, message, least, week.intake_kcal, "kcal/d")
        then = week.after
        gives_more = at == 0 and week.intake_kcal > week.before.maintenance_kcal + _HOLD_KCAL
        if gives_more or purpose is Purpose.RISING:
            continue  # the step up, or more than is needed from the first day on, is the answer
        if then.bmi < BMI_FLOOR and start.settled_kg - then.settled_kg > UNDERWEIGHT_LOSS_KG:
            message = say("REFUSED_END_BMI", bmi=then.bmi, limit=BMI_FLOOR)
            yield Broken(i, BMI, message, BMI_FLOOR, then.bmi, "kg/m2")
    if purpose is Purpose.GAIN and not run[0].before.is_pregnant:
        share, limit = _change_share(run), GAIN_RATE_LIMIT[run[0].before.training_status]
        if share > limit + _WITHIN_SHARE:
            message = say("REFUSED_GAIN_RATE", percent=100 * share, limit_percent=100 * limit)
            yield Broken(at, GAIN_RATE, message, limit, share, "of body mass a week")


def _change_share(run: Sequence[ToldWeek]) -> float:
    """Change of tissue a week, of the body mass at the start; 0 of breaks alone."""
    first, last = run[0].before, run[-1].after
    spent = sum(week.days for week in run if week.purpose is not Purpose.BREAK) / 7.0
    if not spent:
        return 0.0
    return (last.settled_kg - first.settled_kg) / spent / first.weight_kg


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
    return Broken(i, rule, message, least, week.intake_kcal, "kcal/d")
