"""A habit that is told makes nothing less sure: what is carried counts from it, however it was logged."""

import math

import pytest
from steelyard.science.body import expected_carried_kg
from steelyard.science.log.entries import DailyLog
from steelyard.science.log.tissue_model import RHO_SPREAD, TissueModel
from steelyard.science.log.view import View
from steelyard.science.log.witnesses import LogFit, fit_log
from steelyard.science.numbers import Estimate

DAYS, HABIT_KCAL = 28, 2400.0
PER_KCAL = 0.0015  # kg that a lasting kilocalorie moves


def read(logged_kcal: float, *, is_habit_told: bool) -> LogFit:
    """Four weeks of what the equations expect, weighed daily at 80 kg, 2,400 kcal eaten a day as ever; where the habit
    is not told, what is carried answers it from the second day on."""
    ones, zeros = [1.0] * DAYS, [0.0] * DAYS
    intakes = [logged_kcal] * DAYS
    log = DailyLog(0, [80.0 + 0.2 * (-1) ** day for day in range(DAYS)], ones, ones, intakes, ones, zeros, zeros)
    path = expected_carried_kg(intakes, logged_kcal)
    slope = None if is_habit_told else [0.0, *[-PER_KCAL] * (DAYS - 1)]
    tissue = TissueModel(
        9500.0, RHO_SPREAD * 9500.0, 22.0, path, carried_slope=slope, usual_kcal=logged_kcal, carried_per_kcal=PER_KCAL
    )
    return fit_log(log, Estimate(HABIT_KCAL, 240.0), tissue)


@pytest.mark.parametrize("logged_kcal", [1700.0, 2100.0, 2400.0])
def test_before_the_first_day_is_eaten_nothing_has_moved(logged_kcal: float) -> None:
    """A ratio of logging that lies off the usual was the same before the log: it carries nothing."""
    hindsight = View(read(logged_kcal, is_habit_told=True), in_hindsight=True)
    assert abs(hindsight.carried_kg[0]) < 0.1
    assert hindsight.carried_sd_kg[0] < 0.35  # water without a cause, of 0.30 kg, and none of the ratio


def test_who_tells_the_habit_is_read_as_surely_as_who_does_not_and_later_more_so() -> None:
    """A habit that was not told may have lain 8 % (SD, judgement) off what was spent: 0.3 kg of what is carried."""
    told, untold = (View(read(2100.0, is_habit_told=known), in_hindsight=True) for known in (True, False))
    for day in (0, DAYS // 2, DAYS - 1):
        assert told.tissue_kg[day] == pytest.approx(untold.tissue_kg[day], abs=0.15)
    assert told.tissue_sd_kg[0] <= untold.tissue_sd_kg[0]
    assert untold.tissue_sd_kg[-1] > math.hypot(told.tissue_sd_kg[-1], 0.2)
    assert untold.carried_sd_kg[-1] > math.hypot(told.carried_sd_kg[-1], 0.2)
