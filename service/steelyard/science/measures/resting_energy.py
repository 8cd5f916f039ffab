"""Resting energy expenditure of one person: every equation, the preferred ones, and the spread.

No single equation is right for a muscular person, so the answer is the median of the equations made for
people like this one, and its uncertainty holds three parts: how far equations disagree, how far individuals
lie from any equation, and the error of the body-fat reading.
"""

import math
from bisect import bisect_right
from functools import cache
from typing import NamedTuple, Protocol

import msgspec

from ..numbers import Estimate
from ..person import Person, Sex, TrainingStatus
from ..register import BLACK_2000, PONTZER_2021, Basis, Kind, Message, constant, equation, record, say, traced
from .linear_equations import Audience, Coefficients, LinearEquation, weighted_sums
from .resting_equations import (
    CUNNINGHAM_1980_EQUATION,
    CUNNINGHAM_1991_EQUATION,
    HENRY_WEIGHT_HEIGHT,
    KATCH_MCARDLE,
    MIFFLIN,
    MULLER_FFM,
    MULLER_WEIGHT,
    RESTING_EQUATIONS,
    TEN_HAAF_FFM,
    TEN_HAAF_WEIGHT,
    TINSLEY_FFM,
)

INDIVIDUAL_ERROR = constant(
    "resting_energy_individual_error",
    0.08,
    unit="1",
    summary="One standard deviation of a person's measured resting energy about any equation (8 % in the earlier "
    "criteria for judging reported intakes, 8.5 % in their revision)",
    sources=(BLACK_2000,),
)
YOUNGER_ERROR = constant(
    "resting_energy_extrapolation_younger",
    0.02,
    unit="1/y",
    summary="Relative error added for each year below the ages an equation was made for (growth)",
    basis=Basis.JUDGEMENT,
)
OLDER_ERROR = constant(
    "resting_energy_extrapolation_older",
    0.004,
    unit="1/y",
    summary="Relative error added for each year above the ages an equation was made for",
    basis=Basis.JUDGEMENT,
)
FALL_FROM = constant(
    "resting_energy_fall_from",
    60.0,
    unit="y",
    summary="Age from which energy spent for the fat-free mass there is falls, which was stable from 20 years",
    sources=(PONTZER_2021,),
)
FALL = constant(
    "resting_energy_fall",
    0.007,
    unit="1/y",
    summary="How much a year, as a share. Taken off what equations say that have no age in them",
    basis=Basis.FROM_MEMORY,
    sources=(PONTZER_2021,),
)
# An age in their sum, or bands of age, hold the fall already.
_AGELESS = frozenset(
    e.id for e in RESTING_EQUATIONS if not any(cell.from_years or cell.terms.age_years for cell in e.cells)
)

_NEEDS_FAT = "EQUATION_NEEDS_BODY_FAT"
_AGE = "EQUATION_OTHER_AGE"
_TRAINED = "EQUATION_FOR_TRAINED"
_EXPERIENCED = "EQUATION_FOR_EXPERIENCED"
_UNTRAINED = "EQUATION_FOR_UNTRAINED"
_SAME_AS = "EQUATION_SAME_AS"

_REASON_TRAINED_FFM = "RESTING_PREFERS_FAT_FREE_MASS_TRAINED"
_REASON_TRAINED = "RESTING_PREFERS_ATHLETE_WEIGHT"
_REASON_FFM = "RESTING_PREFERS_FAT_FREE_MASS"
_REASON_GENERAL = "RESTING_PREFERS_GENERAL"
_EXTRAPOLATED = "RESTING_AGE_EXTRAPOLATED"
_FALLS = "RESTING_FALLS_WITH_AGE"
_BOTH_SEXES = "RESTING_BOTH_SEXES"


class EquationResult(msgspec.Struct, frozen=True, gc=False):
    """One equation's answer. ``weight`` is its share among the preferred; 0 for the others."""

    id: str
    kcal_per_day: float
    is_applicable: bool
    weight: float
    why_not: Message | None = None


class RestingEnergy(Estimate, frozen=True, kw_only=True):
    """Resting energy in kcal/d with its parts. ``rows`` leave out equations made for the other sex only, and are what
    each equation says as it was published.

    ``lines`` and ``values`` are the rows in two parts: what is fixed for people like this one, and the answers.

    ``between_equations_sd``, ``individual_sd`` and ``body_fat_sd`` add in squares (with the extrapolation in
    age, if any) to ``sd``; for an unspecified sex half the difference of the sexes is then added.
    """

    lines: tuple["EquationLine", ...]
    values: list[float]
    preferred: tuple[str, ...]
    listed: tuple[str, ...]  # ids of the lines
    reason: Message
    notes: tuple[Message, ...]
    between_equations_sd: float
    individual_sd: float
    body_fat_sd: float

    @property
    def rows(self) -> tuple[EquationResult, ...]:
        """Every equation with its answer."""
        return tuple(
            [
                EquationResult(line.id, value, line.is_applicable, line.weight, line.why_not)
                for line, value in zip(self.lines, self.values, strict=True)
            ]
        )


class FatKnown(Protocol):
    """What is needed of a body-fat estimate: a fraction 0-1, its SD, and whether a reading is behind it."""

    @property
    def mean(self) -> float: ...
    @property
    def sd(self) -> float: ...
    @property
    def is_measured(self) -> bool: ...


class EquationLine(NamedTuple):
    """What an equation is for people like this one: the same but for the answer."""

    id: str
    coefficients: Coefficients
    is_applicable: bool
    weight: float
    why_not: Message | None


class _Plan(NamedTuple):
    """All that does not depend on the person's measures."""

    lines: tuple[EquationLine, ...]
    table: tuple[Coefficients, ...]
    preferred: tuple[int, ...]
    spread: tuple[int, ...]
    fat_slope: float  # kcal/d per kg of fat-free mass turned into fat
    studied_from: float
    studied_until: float
    ids: tuple[str, ...]
    listed: tuple[str, ...]
    counted: tuple[str, ...]  # ids of the preferred and of those that tell the spread
    reason: Message


_AUDIENCES: dict[TrainingStatus, tuple[Audience, ...]] = {
    TrainingStatus.UNTRAINED: (Audience.GENERAL, Audience.UNTRAINED),
    TrainingStatus.NOVICE: (Audience.GENERAL, Audience.TRAINED),
    TrainingStatus.INTERMEDIATE: (Audience.GENERAL, Audience.TRAINED, Audience.EXPERIENCED),
    TrainingStatus.ADVANCED: (Audience.GENERAL, Audience.TRAINED, Audience.EXPERIENCED),
}
_NOT_FOR = {
    Audience.TRAINED: say(_TRAINED),
    Audience.EXPERIENCED: say(_EXPERIENCED),
    Audience.UNTRAINED: say(_UNTRAINED),
}
_EDGES = sorted(
    {e.age_from_years for e in RESTING_EQUATIONS}
    | {e.age_to_years + 1.0 for e in RESTING_EQUATIONS}
    | {c.from_years for e in RESTING_EQUATIONS for c in e.cells}
)


def _preferences(is_trained: bool, is_fat_measured: bool) -> tuple[Message, tuple[LinearEquation, ...]]:
    if is_trained and is_fat_measured:
        return say(_REASON_TRAINED_FFM), (CUNNINGHAM_1980_EQUATION, TEN_HAAF_FFM, TINSLEY_FFM)
    if is_trained:
        return say(_REASON_TRAINED), (TEN_HAAF_WEIGHT,)
    if is_fat_measured:
        return say(_REASON_FFM), (CUNNINGHAM_1991_EQUATION, MULLER_FFM)
    return say(_REASON_GENERAL), (MIFFLIN, HENRY_WEIGHT_HEIGHT, MULLER_WEIGHT)


def _why_not(
    equation: LinearEquation, age_years: float, audiences: tuple[Audience, ...], is_fat_measured: bool
) -> Message | None:
    if equation is KATCH_MCARDLE:
        return say(_SAME_AS, equation=CUNNINGHAM_1991_EQUATION.id)
    if equation.audience not in audiences:
        return _NOT_FOR[equation.audience]
    if equation.needs_body_fat and not is_fat_measured:
        return say(_NEEDS_FAT)
    if not equation.holds_at(age_years):
        return say(_AGE, from_years=equation.age_from_years, to_years=equation.age_to_years)
    return None


@cache  # 2 sexes x 4 statuses x measured or not x about 10 age intervals
def _plan(is_male: bool, status: TrainingStatus, is_fat_measured: bool, interval: int) -> _Plan:
    # Any age inside the interval decides alike; below the first edge half of it will do.
    age = _EDGES[interval - 1] if interval else _EDGES[0] / 2.0
    audiences = _AUDIENCES[status]
    reason, group = _preferences(status is not TrainingStatus.UNTRAINED, is_fat_measured)
    group = tuple(e for e in group if e.audience in audiences)
    holding = tuple(e for e in group if e.holds_at(age))
    preferred = holding or group

    lines: list[EquationLine] = []
    for one in RESTING_EQUATIONS:
        coefficients = one.coefficients(is_male, age)
        if coefficients is None:
            continue
        why_not = _why_not(one, age, audiences, is_fat_measured)
        weight = 1.0 / len(preferred) if one in preferred else 0.0
        lines.append(EquationLine(one.id, coefficients, why_not is None, weight, why_not))

    picked = tuple(i for i, line in enumerate(lines) if line.weight > 0.0)
    # Outside every studied age nothing is applicable: all that need no body fat then tell the spread.
    applicable = tuple(i for i, line in enumerate(lines) if line.is_applicable)
    chosen = [lines[i].coefficients for i in picked]
    spread = picked if len(picked) >= 3 else (applicable or _general(lines))
    return _Plan(
        lines=tuple(lines),
        table=tuple(line.coefficients for line in lines),
        preferred=picked,
        spread=spread,
        fat_slope=sum(c[5] - c[4] for c in chosen) / len(chosen),
        studied_from=min(e.age_from_years for e in preferred),
        studied_until=max(e.age_to_years for e in preferred) + 1.0,
        ids=tuple(lines[i].id for i in picked),
        listed=tuple(line.id for line in lines),
        counted=tuple(lines[i].id for i in sorted({*picked, *spread})),
        reason=reason,
    )


def _general(lines: list[EquationLine]) -> tuple[int, ...]:
    """Equations that need no body fat, for people outside every studied age."""
    return tuple(i for i, line in enumerate(lines) if line.coefficients[4] == 0.0)


@traced
@equation(
    "resting_energy",
    kind=Kind.MODEL,
    summary="Resting energy: median of the equations made for people like this one",
    formula=(
        f"mean = median(preferred equations), those without age in them x (1 − {FALL:g} (A − {FALL_FROM:g})) from "
        f"{FALL_FROM:g} years; "
        f"sd² = between² + ({INDIVIDUAL_ERROR:g} mean)² + (W |dREE/dFFM − dREE/dFM| sd of fat fraction)² "
        f"+ (extrapolation mean)², extrapolation = {YOUNGER_ERROR:g} a year below or {OLDER_ERROR:g} a year "
        "above the studied ages; between = SD of the preferred equations, or of all applicable ones where "
        "fewer than three are preferred; sex unspecified: mean of both, half the difference added to sd"
    ),
    basis=Basis.JUDGEMENT,
)
def estimate(person: Person, fat: FatKnown) -> RestingEnergy:
    """Resting energy expenditure in kcal/d of one person, given their body fat (fraction 0-1).

    Any age is answered; outside the ages studied the interval widens and a note says so.
    """
    interval = bisect_right(_EDGES, person.age_years)
    status, measured = person.training.status, fat.is_measured
    if person.sex is not Sex.UNSPECIFIED:
        return _estimate(person, fat, _plan(person.sex is Sex.MALE, status, measured, interval))
    woman = _estimate(person, fat, _plan(False, status, measured, interval))
    man = _estimate(person, fat, _plan(True, status, measured, interval))
    return _both(woman, man)


def _estimate(person: Person, fat: FatKnown, plan: _Plan) -> RestingEnergy:
    weight, height, age = person.weight_kg, person.height_cm, person.age_years
    fat_mass = weight * fat.mean
    ffm = weight - fat_mass
    values = weighted_sums(plan.table, weight, height, age, ffm, fat_mass)
    record(*plan.counted)
    aged = values if age <= FALL_FROM else _aged(values, plan, age)
    mean = _median([aged[i] for i in plan.preferred])
    between = _standard_deviation([aged[i] for i in plan.spread])
    individual = INDIVIDUAL_ERROR * mean
    from_fat = weight * abs(plan.fat_slope) * fat.sd
    variance = between * between + individual * individual + from_fat * from_fat
    notes: tuple[Message, ...] = ()
    if age > FALL_FROM and not _AGELESS.isdisjoint(plan.ids):
        notes = (say(_FALLS, from_years=FALL_FROM, fall_percent=100.0 * FALL * (age - FALL_FROM)),)
    if not plan.studied_from <= age < plan.studied_until:
        if age < plan.studied_from:
            nearest, error = plan.studied_from, YOUNGER_ERROR * (plan.studied_from - age) * mean
        else:
            nearest, error = plan.studied_until - 1.0, OLDER_ERROR * (age - plan.studied_until) * mean
        variance += error * error
        notes = (*notes, say(_EXTRAPOLATED, nearest_years=nearest))
    return RestingEnergy(
        mean,
        math.sqrt(variance),
        lines=plan.lines,
        values=values,
        preferred=plan.ids,
        listed=plan.listed,
        reason=plan.reason,
        notes=notes,
        between_equations_sd=between,
        individual_sd=individual,
        body_fat_sd=from_fat,
    )


def _aged(values: list[float], plan: _Plan, age_years: float) -> list[float]:
    """What the equations say over ``FALL_FROM`` years, with the fall taken off those that have no age in them."""
    left = 1.0 - FALL * (age_years - FALL_FROM)
    return [left * value if id in _AGELESS else value for id, value in zip(plan.listed, values, strict=True)]


def _both(woman: RestingEnergy, man: RestingEnergy) -> RestingEnergy:
    """Both sets of equations, averaged; half their difference is added to the SD."""
    men = {line.id: value for line, value in zip(man.lines, man.values, strict=True)}
    both = [(line, value) for line, value in zip(woman.lines, woman.values, strict=True) if line.id in men]
    return RestingEnergy(
        (woman.mean + man.mean) / 2.0,
        (woman.sd + man.sd) / 2.0 + abs(man.mean - woman.mean) / 2.0,
        lines=tuple([line for line, _ in both]),
        values=[(value + men[line.id]) / 2.0 for line, value in both],
        preferred=woman.preferred,
        listed=tuple([line.id for line, _ in both]),
        reason=woman.reason,
        notes=(*woman.notes, say(_BOTH_SEXES)),
        between_equations_sd=(woman.between_equations_sd + man.between_equations_sd) / 2.0,
        individual_sd=(woman.individual_sd + man.individual_sd) / 2.0,
        body_fat_sd=(woman.body_fat_sd + man.body_fat_sd) / 2.0,
    )


def _median(values: list[float]) -> float:
    values.sort()
    middle = len(values) // 2
    return values[middle] if len(values) % 2 else (values[middle - 1] + values[middle]) / 2.0


def _standard_deviation(values: list[float]) -> float:
    """Sample SD; 0 for a single value."""
    n = len(values)
    if n < 2:
        return 0.0
    mean = sum(values) / n
    return math.sqrt(sum([(v - mean) * (v - mean) for v in values]) / (n - 1))
