"""What every rail allows and the answer warns of."""

import math
from collections.abc import Iterable
from typing import NamedTuple

from ..person import Condition, Sex, TrainingStatus
from ..register import say, traced
from .intake_floors import STEP_KCAL, least_on_day_kcal
from .macronutrients import FAT_KCAL_PER_G, Macronutrients
from .person_rails import periods_of
from .subject import RailAction, Subject, each_once, stricter, warning
from .table import (
    AVAILABILITY,
    AVAILABILITY_WARN,
    BMI,
    BMI_WARN,
    BODY_FAT,
    BRISK_DEFICIT,
    CARBOHYDRATE,
    CARBOHYDRATE_WARN_G,
    CUT_HISTORY,
    CUTS_A_YEAR_WARN,
    DEFAULT_DEFICIT,
    DEFICIT,
    DEFICIT_SHARE_WARN,
    DIETARY_FAT,
    FAT_FRACTION_WARN,
    FAT_SHARE_WARN,
    FAT_SUPPLY,
    FAT_SUPPLY_WARN,
    FLOOR,
    GAIN_RATE,
    GAIN_RATE_WARN,
    LONG_PHASE_WEEKS,
    LOSS,
    LOSS_WARN,
    PROTEIN,
    WEEKS_BETWEEN_CUTS,
)


@traced
def warn_deficit(
    subject: Subject,
    intake_kcal: float,
    loss_share_per_week: float,
    end_fat_fraction: float,
    end_bmi: float = math.inf,
    *,
    weeks: float = LONG_PHASE_WEEKS,
) -> list[RailAction]:
    """Warnings on a deficit that every limit allows; ``weeks`` is how long it is, with all that counts as one."""
    warnings: list[RailAction] = []
    deficit = subject.maintenance_kcal - intake_kcal
    if end_bmi < BMI_WARN:
        warnings.append(warning(BMI, say("WARNED_BMI", bmi=end_bmi), BMI_WARN, end_bmi, "kg/m2"))
    if not subject.is_fat_measured:
        message = say("MEASURE_FIRST", deficit_kcal=DEFAULT_DEFICIT)
        warnings.append(warning(BODY_FAT, message, DEFAULT_DEFICIT, deficit, "kcal/d"))
    if subject.scale.is_learnt:
        least, rule = least_on_day_kcal(subject, weeks)
        if intake_kcal < least + 2 * STEP_KCAL:
            message = say("RATIO_DECIDES", percent=100 * subject.scale.ratio)
            warnings.append(warning(rule, message, least, intake_kcal, "kcal/d"))
    warnings += _of_size(subject, intake_kcal)
    if loss_share_per_week > LOSS_WARN:
        warnings.append(
            warning(
                LOSS,
                say("WARNED_LOSS", percent=100 * loss_share_per_week),
                LOSS_WARN,
                loss_share_per_week,
                "of body mass a week",
            )
        )
    warnings += _of_what_is_left(subject, intake_kcal)
    lean_warn = stricter(FAT_FRACTION_WARN, subject.sex)
    if end_fat_fraction < lean_warn:
        warnings.append(
            warning(
                BODY_FAT, say("WARNED_BODY_FAT", fat_percent=100 * end_fat_fraction), lean_warn, end_fat_fraction, "1"
            )
        )
    return warnings


def _of_size(subject: Subject, intake_kcal: float, *, on_day: bool = False) -> list[RailAction]:
    """Warnings on how far an intake is under maintenance; ``on_day`` where that is of some days and not of the mean."""
    warnings: list[RailAction] = []
    deficit = subject.maintenance_kcal - intake_kcal
    share = deficit / subject.maintenance_kcal
    if share > DEFICIT_SHARE_WARN:
        code = "WARNED_DAY_DEFICIT_SHARE" if on_day else "WARNED_DEFICIT_SHARE"
        warnings.append(
            warning(DEFICIT, say(code, share_percent=100 * share), DEFICIT_SHARE_WARN, share, "of maintenance")
        )
    per_fat = deficit / subject.scale.ratio / subject.fat_kg
    if per_fat > FAT_SUPPLY_WARN:
        code = "WARNED_DAY_FAT_SUPPLY" if on_day else "WARNED_FAT_SUPPLY"
        message = say(code, observed=per_fat, limit=FAT_SUPPLY_WARN)
        warnings.append(warning(FAT_SUPPLY, message, FAT_SUPPLY_WARN, per_fat, "kcal/kg/d"))
    return warnings


def _of_what_is_left(subject: Subject, intake_kcal: float, *, on_day: bool = False) -> list[RailAction]:
    """Warnings on what an intake leaves the body; ``on_day`` as in ``_of_size``."""
    warnings: list[RailAction] = []
    eaten, resting = intake_kcal / subject.scale.ratio, subject.resting_now_kcal
    available = subject.availability(eaten)
    if available < AVAILABILITY_WARN:
        code = "WARNED_DAY_AVAILABILITY" if on_day else "WARNED_AVAILABILITY"
        message = say(code, observed=available, limit=AVAILABILITY_WARN, periods=periods_of(subject))
        warnings.append(warning(AVAILABILITY, message, AVAILABILITY_WARN, available, "kcal/kg fat-free mass/d"))
    if eaten < resting:
        code = "WARNED_DAY_UNDER_RESTING" if on_day else "WARNED_UNDER_RESTING"
        message = say(code, intake_kcal=eaten, resting_kcal=resting)
        warnings.append(warning(FLOOR, message, resting, eaten, "kcal/d"))
    return warnings


class DayFed(NamedTuple):
    """A day of a week: its food on the scale of the log, and how much more than usual its training burns [kcal]."""

    food_kcal: float
    more_burnt_kcal: float = 0.0


@traced
def warn_lower_days(now: Subject, days: Iterable[DayFed]) -> list[RailAction]:
    """Warnings on the days of a week, where they differ, for the body ``now``: the strongest of each rule.

    A day of more training needs more and leaves less, and one of none needs less.
    """
    found: dict[str, RailAction] = {}
    for food_kcal, more_kcal in days:
        day = now._replace(
            maintenance_kcal=now.maintenance_kcal + now.scale.ratio * more_kcal,
            exercise_kcal=max(0.0, now.exercise_kcal + more_kcal),
        )
        if food_kcal >= day.maintenance_kcal:
            continue
        for action in (*_of_size(day, food_kcal, on_day=True), *_of_what_is_left(day, food_kcal, on_day=True)):
            found[action.id] = max(found.get(action.id, action), action, key=_beyond)
    return list(found.values())


def _beyond(action: RailAction) -> float:
    """How far a warning is past its limit."""
    assert action.limit is not None
    assert action.observed is not None
    return abs(action.observed - action.limit)


def strongest(actions: Iterable[RailAction]) -> list[RailAction]:
    """Of warnings on days of several weeks, those that are furthest past their limits."""
    found: dict[str, RailAction] = {}
    for action in actions:
        found[action.id] = max(found.get(action.id, action), action, key=_beyond)
    return list(found.values())


@traced
def warn_large(deficit_kcal: float) -> list[RailAction]:
    """A warning on a mini-cut of more than is usual at most."""
    if deficit_kcal <= BRISK_DEFICIT:
        return []
    message = say("WARNED_LARGE_DEFICIT", deficit_kcal=deficit_kcal, usual_kcal=BRISK_DEFICIT)
    return [warning(DEFICIT, message, BRISK_DEFICIT, deficit_kcal, "kcal/d")]


@traced
def warn_gain(status: TrainingStatus, share_per_week: float) -> list[RailAction]:
    """Warnings on a gain that the ceiling allows."""
    warn_at = GAIN_RATE_WARN[status]
    if share_per_week <= warn_at:
        return []
    message = say("WARNED_GAIN_RATE", percent=100 * share_per_week)
    return [warning(GAIN_RATE, message, warn_at, share_per_week, "of body mass a week")]


def warn_kidneys(subject: Subject, protein_g_per_kg: float) -> list[RailAction]:
    """The warning on so much protein in a deficit [g/kg/d], where the kidneys are ill."""
    screening = subject.screening
    if screening is None or Condition.KIDNEY_DISEASE not in screening.conditions:
        return []
    return [warning(PROTEIN, say("WARNED_KIDNEY_PROTEIN"), None, protein_g_per_kg, "g/kg/d")]


def warn_macronutrients(intake_kcal: float, fat_kcal: float, carbohydrate_g: float) -> list[RailAction]:
    """Warnings on a day's split."""
    warnings = []
    share = fat_kcal / intake_kcal
    if share < FAT_SHARE_WARN:
        warnings.append(
            warning(
                DIETARY_FAT, say("WARNED_DIETARY_FAT", share_percent=100 * share), FAT_SHARE_WARN, share, "of energy"
            )
        )
    if carbohydrate_g < CARBOHYDRATE_WARN_G:
        message = say("WARNED_CARBOHYDRATE", carbohydrate_g=carbohydrate_g, limit_g=CARBOHYDRATE_WARN_G)
        warnings.append(warning(CARBOHYDRATE, message, CARBOHYDRATE_WARN_G, carbohydrate_g, "g/d"))
    return warnings


@traced
def warn_target(sex: Sex, target_fat_fraction: float) -> list[RailAction]:
    """The warning of a body-fat target that every limit allows."""
    limit = stricter(FAT_FRACTION_WARN, sex)
    if target_fat_fraction >= limit:
        return []
    message = say("WARNED_TARGET", fat_percent=100 * target_fat_fraction)
    return [warning(BODY_FAT, message, limit, target_fat_fraction, "1")]


def warn_days(weeks: Iterable[tuple[Macronutrients, Iterable[Macronutrients]]]) -> list[RailAction]:
    """Warnings on the grams of each week's mean day and of its days, where they differ: the strongest of each.

    Fat is told of the mean where that is little, and else of the days that have little.
    """
    found: list[RailAction] = []
    for mean, days in weeks:
        each = list(days)
        carbohydrate_g = min((day.carbohydrate_g for day in each), default=mean.carbohydrate_g)
        found += warn_macronutrients(mean.intake_kcal, FAT_KCAL_PER_G * mean.fat_g, carbohydrate_g)
        share = min((FAT_KCAL_PER_G * day.fat_g / day.intake_kcal for day in each), default=1.0)
        if share < FAT_SHARE_WARN:
            message = say("WARNED_DAY_DIETARY_FAT", share_percent=100 * share)
            found.append(warning(DIETARY_FAT, message, FAT_SHARE_WARN, share, "of energy"))
    told = each_once(found, is_least=True)
    of_mean = {action.message.code for action in told}
    return [one for one in told if one.message.code != "WARNED_DAY_DIETARY_FAT" or "WARNED_DIETARY_FAT" not in of_mean]


@traced
def warn_history(
    cuts_last_12_months: int | None, weeks_since_last_cut: int | None, *, is_held_to_default: bool = True
) -> list[RailAction]:
    """Warnings on how often this person cuts, or that it is not known: then a deficit ``is_held_to_default``, or its
    size is another's choice and the default one is advised."""
    warnings = []
    if cuts_last_12_months is None:
        message = say("WARNED_HISTORY_UNKNOWN")
        if not is_held_to_default:
            message = say("WARNED_HISTORY_NOT_TOLD", limit_kcal=DEFAULT_DEFICIT)
        warnings.append(warning(CUT_HISTORY, message, DEFAULT_DEFICIT, None, "kcal/d"))
    if cuts_last_12_months is not None and cuts_last_12_months + 1 > CUTS_A_YEAR_WARN:
        message = say("WARNED_CUTS_A_YEAR", cuts=cuts_last_12_months + 1)
        warnings.append(warning(CUT_HISTORY, message, CUTS_A_YEAR_WARN, cuts_last_12_months + 1.0, "cuts"))
    if weeks_since_last_cut is not None and weeks_since_last_cut < WEEKS_BETWEEN_CUTS:
        message = say("WARNED_RECENT_CUT", weeks=weeks_since_last_cut, limit_weeks=WEEKS_BETWEEN_CUTS)
        warnings.append(warning(CUT_HISTORY, message, WEEKS_BETWEEN_CUTS, float(weeks_since_last_cut), "weeks"))
    return warnings
