"""The largest deficit of each rule."""

from typing import NamedTuple

from ..body import FAT_SUPPLY_LIMIT
from ..numbers import FLOATS, Elementwise, Number
from .intake_floors import deficit_floors
from .macronutrients import least_intake_kcal
from .subject import (
    Subject,
)
from .table import (
    APART_WEEKS,
    AVAILABILITY,
    BMI,
    BODY_FAT,
    CUT_HISTORY,
    DEFAULT_DEFICIT,
    DEFICIT,
    DEFICIT_SHARE_LIMIT,
    FAT_SUPPLY,
    FLOOR,
    LONG_PHASE_WEEKS,
    LOSS,
    PROTEIN,
)
from .why import Why


class DeficitLimit(NamedTuple):
    """The largest deficit one rule allows [kcal/d], and why."""

    rule: str
    deficit_kcal: float
    why: Why


# Of a person whose past cuts are not known.
HISTORY_LIMIT = DeficitLimit(CUT_HISTORY, DEFAULT_DEFICIT, Why.HISTORY_UNKNOWN)
# Of a person whose body fat was not measured.
MEASURE_LIMIT = DeficitLimit(BODY_FAT, DEFAULT_DEFICIT, Why.FAT_UNMEASURED)


def deficit_limits(
    subject: Subject, weeks: float = LONG_PHASE_WEEKS, *, fed: Subject | None = None
) -> list[DeficitLimit]:
    """The largest deficit that each rule allows at the start of a phase of ``weeks``, strictest first.

    ``fed`` is the body that protein and fat are shared out for, where that was another, at the start.
    """
    fed = subject if fed is None or fed.weight_kg < subject.weight_kg else fed
    maintenance, scale = subject.maintenance_kcal, subject.scale
    floors = deficit_floors(subject, weeks)
    least_food = least_intake_kcal(fed.weight_kg, protein_for_kg=fed.protein_kg)
    limits = [
        DeficitLimit(DEFICIT, DEFICIT_SHARE_LIMIT * maintenance, Why.SHARE_OF_MAINTENANCE),
        DeficitLimit(FAT_SUPPLY, scale.ratio * FAT_SUPPLY_LIMIT * subject.fat_kg, Why.FAT_RELEASE),
        DeficitLimit(AVAILABILITY, maintenance - floors.available_kcal(subject), Why.ENERGY_AVAILABILITY),
        DeficitLimit(PROTEIN, maintenance - least_food, Why.PROTEIN_AND_FAT),
        DeficitLimit(FLOOR, maintenance - floors.told_kcal(subject), Why.LEAST_INTAKE),
    ]
    return sorted(limits, key=lambda limit: limit.deficit_kcal)


def measured_limits(subject: Subject, weeks: float) -> list[DeficitLimit]:
    """``deficit_limits``, the default one being the largest where body fat was not measured."""
    limits = deficit_limits(subject, weeks)
    if not subject.is_fat_measured:
        limits.append(MEASURE_LIMIT)
    return sorted(limits, key=lambda limit: limit.deficit_kcal)


def resting_limit(subject: Subject) -> DeficitLimit:
    """The largest deficit over resting energy; near the underweight range nobody is planned more who asks for none."""
    least = subject.resting_now_kcal * subject.scale.most
    return DeficitLimit(FLOOR, subject.maintenance_kcal - least, Why.RESTING_ENERGY)


def path_limit(rule: str, deficit_kcal: float) -> DeficitLimit:
    """The largest deficit [kcal/d] with which a phase keeps a rule on each of its days."""
    why = {
        DEFICIT: Why.SHARE_OF_MAINTENANCE,
        PROTEIN: Why.PROTEIN_AND_FAT,
        BODY_FAT: Why.FAT_AT_END,
        BMI: Why.BODY_MASS_INDEX_AT_END,
        LOSS: Why.WEEKLY_LOSS,
        FAT_SUPPLY: Why.FAT_RELEASE_LATER,
        AVAILABILITY: Why.AVAILABILITY_AT_END,
        FLOOR: Why.LEAST_INTAKE_AT_END,
    }[rule]
    return DeficitLimit(rule, deficit_kcal, why)


def path_limit_of(limit: DeficitLimit) -> DeficitLimit:
    """A limit of a later body, as a limit of the phase: the reason says that it binds later."""
    return limit._replace(why=Why.FAT_RELEASE_LATER) if limit.why is Why.FAT_RELEASE else limit


def weeks_that_count(weeks: Number, weeks_since: Number, ops: Elementwise = FLOATS) -> Number:
    """Weeks of a deficit that count as of one ``weeks_since`` its end: with those between, if under four."""
    return ops.where((weeks > 0.0) & (weeks_since < APART_WEEKS), weeks + weeks_since, 0.0)
