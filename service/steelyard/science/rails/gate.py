"""The gate that every answer with an intake passes: each week told, for the bodies that it begins and ends with.

What it lets through is ``Cleared``, which nothing else can make: an answer that tells an intake is typed to hold one,
so that it cannot be built around the gate.
"""

from collections.abc import Iterator, Sequence
from enum import StrEnum
from itertools import groupby
from typing import Generic, NamedTuple, TypeVar

from ..register import Message, say, traced
from .guard_rails import broken_on_day, least_held_kcal, least_on_day_kcal
from .macronutrients import PROTEIN_FLOOR_DEFICIT
from .subject import Refused, Subject, refusing, stricter
from .table import (
    APART_WEEKS,
    BMI,
    BMI_FLOOR,
    BODY_FAT,
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

Value = TypeVar("Value")
_TOKEN = object()
# Of an intake told in whole kilocalories, and of masses told in grams.
_WITHIN_KCAL, _WITHIN_SHARE, _WITHIN_G = 1.0, 2e-5, 0.01
# Nearer to maintenance than this an intake is for a hold.
_HOLD_KCAL, _HOLD_SHARE = 25.0, 0.025
# Tissue that an underweight body may lose to the scale's own noise [kg].
_UNDERWEIGHT_LOSS_KG = 0.25


class Purpose(StrEnum):
    """What a week is for."""

    DEFICIT = "deficit"
    BREAK = "break"  # at maintenance, within a deficit
    HOLD = "hold"
    GAIN = "gain"


class ToldWeek(NamedTuple):
    """A week's intake as told, the least of its days [kcal/d], the body before and after it, and protein [g/d]."""

    intake_kcal: float
    before: Subject
    after: Subject
    purpose: Purpose
    days: float = 7.0
    protein_g: float | None = None


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


def purpose_of(intake_kcal: float, maintenance_kcal: float) -> Purpose:
    """What an intake is for, by how far it lies from maintenance."""
    slack = max(_HOLD_KCAL, _HOLD_SHARE * maintenance_kcal)
    if intake_kcal < maintenance_kcal - slack:
        return Purpose.DEFICIT
    return Purpose.GAIN if intake_kcal > maintenance_kcal + slack else Purpose.HOLD


@traced
def clear(value: Value, weeks: Sequence[ToldWeek], field: str, *, weeks_before: float = 0.0) -> Cleared[Value]:
    """``value``, where each of the ``weeks`` that it tells is inside the rails. Raises ``Refused`` naming ``field``."""
    broken = first_broken(weeks, weeks_before=weeks_before)
    if broken is not None:
        raise refusal_of_week(broken, field)
    return Cleared(value, _TOKEN)


def nothing_told(value: Value) -> Cleared[Value]:
    """``value`` which tells no intake: an empty list, or None."""
    if value:
        raise TypeError("this tells something: have it cleared")
    return Cleared(value, _TOKEN)


def refusal_of_week(broken: Broken, field: str) -> Refused:
    """The refusal of a week that breaks a rule."""
    return Refused(*refusing(broken.rule, field, broken.message, broken.limit, broken.observed, broken.unit))


def first_broken(weeks: Sequence[ToldWeek], *, weeks_before: float = 0.0) -> Broken | None:
    """The first rule that a week breaks; ``weeks_before`` of a deficit count as of the first."""
    return next(_all_broken(weeks, weeks_before), None)


def _all_broken(weeks: Sequence[ToldWeek], weeks_before: float) -> Iterator[Broken]:
    at, since, counted = 0, 0.0, weeks_before
    for purpose, group in groupby(weeks, key=_run_purpose):
        run = list(group)
        length = sum(week.days for week in run) / 7.0
        if purpose is Purpose.DEFICIT:
            # Two with less than four weeks between them are one.
            counted = (counted + since if since < APART_WEEKS else 0.0) + length
            since = 0.0
            yield from _deficit_run(run, at, counted)
        else:
            since += length
            yield from _held_run(run, at, purpose, weeks[0].before)
        at += len(run)


def _run_purpose(week: ToldWeek) -> Purpose:
    return Purpose.DEFICIT if week.purpose is Purpose.BREAK else week.purpose


def _deficit_run(run: Sequence[ToldWeek], at: int, weeks: float) -> Iterator[Broken]:
    for i, week in enumerate(run, start=at):
        if week.purpose is Purpose.BREAK:
            yield from _held_run([week], i, Purpose.HOLD, run[0].before)
            continue
        least = (1.0 - DEFICIT_SHARE_LIMIT) * week.before.maintenance_kcal
        if week.intake_kcal < least - _WITHIN_KCAL:
            yield _too_little(i, DEFICIT, week, least, f"{DEFICIT_SHARE_LIMIT:.0%} of maintenance")
        for body in (week.before, week.after):
            rule = broken_on_day(body, week.intake_kcal, weeks)
            if rule == BMI:
                message = say("REFUSED_END_BMI", bmi=body.bmi, limit=BMI_FLOOR)
                yield Broken(i, BMI, message, BMI_FLOOR, body.bmi, "kg/m2")
            elif rule == BODY_FAT:
                floor = stricter(FAT_FRACTION_FLOOR, body.sex)
                percent = 100 * body.fat_fraction
                message = say("REFUSED_END_BODY_FAT", fat_percent=percent, limit_percent=100 * floor)
                yield Broken(i, BODY_FAT, message, floor, body.fat_fraction, "1")
            elif rule is not None:
                yield _too_little(i, rule, week, least_on_day_kcal(body, weeks)[0], "the body of that day")
        wanted = PROTEIN_FLOOR_DEFICIT * run[0].before.weight_kg
        if week.protein_g is not None and week.protein_g < wanted - _WITHIN_G:
            per_kg = week.protein_g / run[0].before.weight_kg
            message = say("REFUSED_PROTEIN", observed=per_kg, limit=PROTEIN_FLOOR_DEFICIT)
            yield Broken(i, PROTEIN, message, PROTEIN_FLOOR_DEFICIT, per_kg, "g/kg/d")
    share = _change_share(run)
    if share < -LOSS_LIMIT - _WITHIN_SHARE:
        message = say("REFUSED_LOSS", percent=-100 * share, limit_percent=100 * LOSS_LIMIT)
        yield Broken(at, LOSS, message, LOSS_LIMIT, -share, "of body mass a week")


def _held_run(run: Sequence[ToldWeek], at: int, purpose: Purpose, start: Subject) -> Iterator[Broken]:
    """What a hold or a gain breaks, in all that is told from the body ``start`` on."""
    for i, week in enumerate(run, start=at):
        for body in (week.before, week.after):
            least = least_held_kcal(body)
            if week.intake_kcal < least - _WITHIN_KCAL:
                message = say("REFUSED_HELD", intake_kcal=week.intake_kcal, least_intake_kcal=least)
                yield Broken(i, FLOOR, message, least, week.intake_kcal, "kcal/d")
        then = week.after
        if purpose is Purpose.GAIN and at == 0:
            continue  # more is eaten than was needed from the first day on
        if then.bmi < BMI_FLOOR and start.settled_kg - then.settled_kg > _UNDERWEIGHT_LOSS_KG:
            message = say("REFUSED_END_BMI", bmi=then.bmi, limit=BMI_FLOOR)
            yield Broken(i, BMI, message, BMI_FLOOR, then.bmi, "kg/m2")
    if purpose is Purpose.GAIN and not run[0].before.is_pregnant:
        share, limit = _change_share(run), GAIN_RATE_LIMIT[run[0].before.training_status]
        if share > limit + _WITHIN_SHARE:
            message = say("REFUSED_GAIN_RATE", percent=100 * share, limit_percent=100 * limit)
            yield Broken(at, GAIN_RATE, message, limit, share, "of body mass a week")


def _change_share(run: Sequence[ToldWeek]) -> float:
    """Change of tissue a week, of the body mass at the start."""
    first, last = run[0].before, run[-1].after
    spent = sum(week.days for week in run if week.purpose is not Purpose.BREAK) / 7.0
    return (last.settled_kg - first.settled_kg) / spent / first.weight_kg


def _too_little(i: int, rule: str, week: ToldWeek, least: float, why: str) -> Broken:
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
