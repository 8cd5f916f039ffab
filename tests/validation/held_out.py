"""Published trials held out of the model: no constant was set on them, and none may be. ``held_out.toml`` holds them.

They are simulated like the others. Beside each the page shows where the measured mean lies in the forecast's interval
for one person, and over groups of arms it shows the mean bias: what the model misses on people of one kind, it misses
for a reason.
"""

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import numpy as np
from steelyard.science.numbers.estimate import Z80

from .comparison import QUANTITIES, Row, closes, compare
from .trials import Case, read

HELD_OUT = Path(__file__).with_name("held_out.toml")

_TRIED_DAYS = 21.0  # up to which water may be most of a change
_LONG_DAYS = 112.0
_VERY_LOW = 0.55  # of maintenance
_OBESITY = 30.0
_OLDER_YEARS = 50.0


def cases() -> tuple[Case, ...]:
    """The held-out arms, filled."""
    return read(HELD_OUT)


def rows(of: tuple[Case, ...]) -> list[Row]:
    """Each arm and quantity against its forecast."""
    return [row for case in of for row in compare(case)]


def score(row: Row) -> float:
    """Measured mean less forecast, in SDs of the forecast for one person."""
    return (row.measured.change_kg - row.forecast_kg) / row.sd_kg


def is_inside(row: Row) -> bool:
    """Whether the measured mean lies in the 80 % interval for one person."""
    return abs(score(row)) <= Z80


def _is_deficit(case: Case) -> bool:
    return sum(part.days * (part.intake_kcal - case.maintenance_kcal) for part in case.periods) < 0.0


def _lifts(case: Case) -> bool:
    return case.training.resistance_sessions_per_week > 0.0


def _is_used_to_lifting(case: Case) -> bool:
    return _lifts(case) and case.trial.training.status != "untrained"


def _least_share(case: Case) -> float:
    return min(part.intake_kcal for part in case.periods) / case.maintenance_kcal


def _bmi(case: Case) -> float:
    height_m = (case.trial.person.height_cm or float("nan")) / 100.0
    return case.trial.person.weight_kg / height_m**2


# Title, and which arms are of the group.
GROUPS: tuple[tuple[str, Callable[[Case], bool]], ...] = (
    ("deficit, not lifting", lambda case: _is_deficit(case) and not _lifts(case)),
    ("deficit, new to lifting", lambda case: _is_deficit(case) and _lifts(case) and not _is_used_to_lifting(case)),
    ("deficit, used to lifting", lambda case: _is_deficit(case) and _is_used_to_lifting(case)),
    ("deficit, women alone", lambda case: _is_deficit(case) and case.trial.person.male_share == 0.0),
    ("deficit, body mass index over 30", lambda case: _is_deficit(case) and _bmi(case) > _OBESITY),
    ("deficit, under 55 % of maintenance", lambda case: _is_deficit(case) and _least_share(case) < _VERY_LOW),
    ("deficit, up to three weeks", lambda case: _is_deficit(case) and case.days <= _TRIED_DAYS),
    ("deficit, sixteen weeks and more", lambda case: _is_deficit(case) and case.days >= _LONG_DAYS),
    (
        "deficit, over 50 years",
        lambda case: _is_deficit(case) and (case.trial.person.age_years or 0.0) > _OLDER_YEARS,
    ),
    ("surplus, up to three weeks", lambda case: not _is_deficit(case) and case.days <= _TRIED_DAYS),
    (
        "surplus, longer, not lifting",
        lambda case: not _is_deficit(case) and case.days > _TRIED_DAYS and not _lifts(case),
    ),
)


class Bias(NamedTuple):
    """Mean of forecast less measured over the arms of a group [kg], and its standard error; nan where it is one arm."""

    arms: int
    mean_kg: float
    error_kg: float

    @property
    def is_systematic(self) -> bool:
        """Whether the mean is off by more than twice its standard error."""
        return self.arms > 1 and abs(self.mean_kg) > 2.0 * self.error_kg


def bias_of(of: list[Row], belongs: Callable[[Case], bool], quantity: str) -> Bias | None:
    """Of the arms of a group that do not fail to close; None where none measured the quantity."""
    found = np.array(
        [row.bias_kg for row in of if row.quantity == quantity and belongs(row.case) and closes(row.case) is not False]
    )
    if not len(found):
        return None
    error = float(found.std(ddof=1) / len(found) ** 0.5) if len(found) > 1 else float("nan")
    return Bias(len(found), float(found.mean()), error)


class Held(NamedTuple):
    """How many measured means of a quantity lie in the interval for one person, of arms that do not fail to close."""

    quantity: str
    inside: int
    means: int


def inside_by_quantity(of: list[Row]) -> list[Held]:
    """Over all arms."""
    found = []
    for quantity in QUANTITIES:
        told = [row for row in of if row.quantity == quantity and closes(row.case) is not False]
        found.append(Held(quantity, sum(map(is_inside, told)), len(told)))
    return found
