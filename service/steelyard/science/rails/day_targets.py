"""The days of a week as they are lived: what each burns in training, flexible days, and what the others pay for them.

The week's energy stays what the phase plans, exactly; no day has less food than a day of the phase may have.
"""

from collections.abc import Sequence
from typing import NamedTuple

from ..register import LINSTROM_2001, Basis, constant, equation, traced
from .intake_floors import LeastDay
from .macronutrients import (
    CARBOHYDRATE_KCAL_PER_G,
    FAT_FLOOR_G_PER_KG,
    FAT_FLOOR_SHARE,
    FAT_KCAL_PER_G,
    FIBRE_G_PER_KCAL,
    PROTEIN_KCAL_PER_G,
    CarbohydratePreference,
    Macronutrients,
    fat_share,
    split_grams,
)
from .table import PROTEIN
from .why import Why

ALCOHOL_KCAL_PER_G = constant(
    "alcohol_energy",
    7.1,
    unit="kcal/g",
    summary="Energy of ethanol: 1366.8 kJ/mol over 46.07 g/mol is 29.7 kJ/g; labels round it to 7",
    sources=(LINSTROM_2001,),
)
_STEP_KCAL, _STEP_G = 10, 5


class DayAsked(NamedTuple):
    """A day of a week: net energy of its training [kcal], and food [kcal] and alcohol [g] beyond a usual day."""

    training_kcal: float = 0.0
    extra_kcal: float = 0.0
    alcohol_g: float = 0.0

    @property
    def beyond_kcal(self) -> float:
        """What the day has beyond a usual one, food and alcohol."""
        return self.extra_kcal + ALCOHOL_KCAL_PER_G * self.alcohol_g


class DayTarget(NamedTuple):
    """What to eat and drink on a day. ``macros`` has the energy of both, and the grams of food alone."""

    macros: Macronutrients
    alcohol_g: int

    @property
    def food_kcal(self) -> float:
        """Its energy without alcohol, which feeds nothing."""
        return self.macros.intake_kcal - ALCOHOL_KCAL_PER_G * self.alcohol_g


class WeekOfDays(NamedTuple):
    """The days of a week.

    ``moved_share`` of the difference that training makes was moved to its days (1: all of it). ``asked_kcal`` is what
    flexible days asked for beyond usual ones, ``fits_kcal`` what of it the other days can pay for. ``paid_kcal`` is
    what each of those pays.
    """

    days: list[DayTarget]
    moved_share: float
    asked_kcal: float
    fits_kcal: float
    paid_kcal: float

    @property
    def least_food_kcal(self) -> float:
        """Food of the leanest day."""
        return min(day.food_kcal for day in self.days)


def fed_least(mean: Macronutrients, least: LeastDay, weight_kg: float) -> LeastDay:
    """The least food of a day that has room for the protein of every day and the least fat, where that is more."""
    fat_g = max(FAT_FLOOR_G_PER_KG * weight_kg, FAT_FLOOR_SHARE * mean.intake_kcal / FAT_KCAL_PER_G)
    kcal = PROTEIN_KCAL_PER_G * mean.protein_g + FAT_KCAL_PER_G * (fat_g + _STEP_G)
    return LeastDay(kcal, PROTEIN, Why.PROTEIN_AND_FAT) if kcal > least.kcal else least


@traced
@equation(
    "days_of_a_week",
    summary="Energy of each day of a week, the week's total unchanged",
    formula=(
        "intake of the week's mean day + s (training energy of the day - its mean over the week) + what a flexible day "
        "has beyond a usual one - an equal share of that on each other day; s = 1, or as much as leaves every day the "
        "least food of the rails; steps of 10 kcal"
    ),
    basis=Basis.COMMON_PRACTICE,
)
def days_of_week(
    mean: Macronutrients,
    asked: Sequence[DayAsked],
    least_kcal: float,
    weight_kg: float,
    preference: CarbohydratePreference,
) -> WeekOfDays:
    """Spread a week's food over its days [kcal].

    Args: ``mean``: the mean day as planned; ``asked``: the days; ``least_kcal``: the least food of any of them;
        ``weight_kg``: the body mass that the least fat is for.
    """
    intake = float(mean.intake_kcal)
    least = min(intake, -(-least_kcal // _STEP_KCAL) * _STEP_KCAL)
    payers = [i for i, day in enumerate(asked) if day.beyond_kcal <= 0.0]
    wanted = sum(day.beyond_kcal for day in asked)
    fits = min(wanted, len(payers) * (intake - least))
    part = fits / wanted if wanted > 0.0 else 0.0
    grams = [int(part * day.alcohol_g + 1e-9) for day in asked]
    beyond = [
        part * day.extra_kcal + ALCOHOL_KCAL_PER_G * alcohol_g for day, alcohol_g in zip(asked, grams, strict=True)
    ]
    paid = sum(beyond) / len(payers) if payers else 0.0
    burnt = [day.training_kcal for day in asked]
    mean_burnt = sum(burnt) / len(burnt)
    base = [intake + (-paid if i in payers else beyond[i]) for i in range(len(asked))]
    food = [kcal - ALCOHOL_KCAL_PER_G * alcohol_g for kcal, alcohol_g in zip(base, grams, strict=True)]
    share = min(
        [1.0]
        + [
            max(0.0, kcal - least) / (mean_burnt - own)
            for kcal, own in zip(food, burnt, strict=True)
            if own < mean_burnt - 1e-9
        ]
    )
    wanted_kcal = [kcal + share * (own - mean_burnt) for kcal, own in zip(base, burnt, strict=True)]
    floors = [least + ALCOHOL_KCAL_PER_G * alcohol_g for alcohol_g in grams]
    energies = _in_steps(wanted_kcal, floors, 7 * mean.intake_kcal)
    days = [
        DayTarget(_split(mean, kcal, alcohol_g, weight_kg, preference, is_flexible=i not in payers), alcohol_g)
        for i, (kcal, alcohol_g) in enumerate(zip(energies, grams, strict=True))
    ]
    return WeekOfDays(days, share, wanted, fits, paid)


def _in_steps(wanted: Sequence[float], floors: Sequence[float], total: int) -> list[int]:
    """Energies to 10 kcal that add up to ``total``, none under its floor."""
    steps = [
        max(int(kcal // _STEP_KCAL), -int(-floor // _STEP_KCAL)) for kcal, floor in zip(wanted, floors, strict=True)
    ]
    missing = total // _STEP_KCAL - sum(steps)
    # The largest remainders are rounded up; what floors took too much of, the highest days give back.
    by_remainder = sorted(range(len(wanted)), key=lambda i: steps[i] - wanted[i] / _STEP_KCAL)
    for i in by_remainder[: max(0, missing)]:
        steps[i] += 1
    for _ in range(max(0, -missing)):
        i = max(range(len(steps)), key=lambda j: _STEP_KCAL * steps[j] - floors[j])
        steps[i] -= 1
    return [_STEP_KCAL * step for step in steps]


def _split(
    mean: Macronutrients,
    intake_kcal: int,
    alcohol_g: int,
    weight_kg: float,
    preference: CarbohydratePreference,
    *,
    is_flexible: bool,
) -> Macronutrients:
    """Grams of a day: the protein of every day; what training burns is carbohydrate, what is flexible is shared."""
    food = round((intake_kcal - ALCOHOL_KCAL_PER_G * alcohol_g) / _STEP_KCAL) * _STEP_KCAL
    fat = fat_share(preference) if is_flexible else FAT_KCAL_PER_G * mean.fat_g / food
    fibre_g = round(FIBRE_G_PER_KCAL * food)
    left = food - PROTEIN_KCAL_PER_G * mean.protein_g - FAT_KCAL_PER_G * mean.fat_g
    if not is_flexible and fat >= FAT_FLOOR_SHARE and left >= 0.0:
        carbohydrate = 5 * round(left / CARBOHYDRATE_KCAL_PER_G / 5.0)
        return Macronutrients(intake_kcal, mean.protein_g, carbohydrate, mean.fat_g, min(fibre_g, carbohydrate))
    # The least share of energy is of the whole day, alcohol included.
    fat_for_kg = max(weight_kg, FAT_FLOOR_SHARE * intake_kcal / FAT_KCAL_PER_G / FAT_FLOOR_G_PER_KG)
    grams = split_grams(float(food), 1.0, float(mean.protein_g), fat, fat_for_kg=fat_for_kg)
    protein, carbohydrate, fat_g = (int(value) for value in grams)
    return Macronutrients(intake_kcal, protein, carbohydrate, fat_g, min(fibre_g, carbohydrate))
