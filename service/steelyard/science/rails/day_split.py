"""Higher- and lower-carbohydrate days within a week, the weekly total unchanged."""

from math import gcd
from typing import NamedTuple

from ..register import traced
from .intake_floors import LeastDay, least_held_kcal
from .largest_deficits import deficit_limits
from .macronutrients import CARBOHYDRATE_KCAL_PER_G, FAT_FLOOR_SHARE, FAT_KCAL_PER_G, Macronutrients
from .subject import Subject
from .table import FLOOR, LONG_PHASE_WEEKS
from .why import Why


class SplitWeek(NamedTuple):
    """The day of each kind; ``higher`` comes ``higher_days`` times a week."""

    higher: Macronutrients
    lower: Macronutrients
    higher_days: int


@traced
def least_day(now: Subject, weeks_in_deficit: float = LONG_PHASE_WEEKS, *, is_held: bool = False) -> LeastDay:
    """The least intake on a lower day for the body ``now``; ``is_held`` in a phase that is no deficit.

    It is a day in a deficit, whatever the phase is, and no deeper than a rail allows for a whole phase.
    """
    limit = deficit_limits(now, weeks_in_deficit)[0]
    least = LeastDay(now.maintenance_kcal - limit.deficit_kcal, limit.rule, limit.why)
    held = least_held_kcal(now) if is_held else 0.0
    return LeastDay(held, FLOOR, Why.LEAST_INTAKE) if held > least.kcal else least


@traced
def split_week(day: Macronutrients, higher_days: int, shift: float, least_intake_kcal: float) -> SplitWeek:
    """Move carbohydrate from the lower days to the ``higher_days``, about ``shift`` of the mean more on those.

    Steps are of 5 g and exact over the week. The lower days keep ``least_intake_kcal``, and fat its least share of the
    energy of the higher ones, so that the shift may come out smaller, or nothing.
    """
    lower_days = 7 - higher_days
    common = gcd(higher_days, lower_days)
    up, down = 5 * lower_days // common, 5 * higher_days // common
    room_g = min(day.carbohydrate_g, (day.intake_kcal - least_intake_kcal) / CARBOHYDRATE_KCAL_PER_G)
    most_kcal = FAT_KCAL_PER_G * day.fat_g / FAT_FLOOR_SHARE
    above_g = (most_kcal - day.intake_kcal) / CARBOHYDRATE_KCAL_PER_G
    most_steps = min(int(max(0.0, room_g) // down), int(max(0.0, above_g + 1e-9) // up))
    steps = min(round(shift * day.carbohydrate_g / up), most_steps)
    return SplitWeek(_moved(day, steps * up), _moved(day, -steps * down), higher_days)


def _moved(day: Macronutrients, carbohydrate_g: int) -> Macronutrients:
    carbohydrate = day.carbohydrate_g + carbohydrate_g
    energy = day.intake_kcal + int(CARBOHYDRATE_KCAL_PER_G) * carbohydrate_g
    return Macronutrients(energy, day.protein_g, carbohydrate, day.fat_g, min(day.fibre_g, carbohydrate))
