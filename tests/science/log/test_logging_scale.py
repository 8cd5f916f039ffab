"""Days without a log: one is forgotten and like any other, several are a spell in which people eat otherwise."""

import math

import pytest
from steelyard.science.log import kernel as k
from steelyard.science.log.entries import DailyLog
from steelyard.science.log.logging_scale import SILENT_DAYS, SILENT_EXCESS, fill_intake
from steelyard.science.log.tissue_model import TissueModel
from steelyard.science.log.witness_errors import SILENT_ERROR, UNLOGGED_DAY_ERROR
from steelyard.science.log.witnesses import fit_log
from steelyard.science.numbers import Estimate

PRIOR, EATEN = 2300.0, 2000.0
TISSUE = TissueModel(11_000.0, 1400.0, 22.0, carried_kg=None, usual_kcal=EATEN)


def log(logged: list[int]) -> DailyLog:
    """Weighed daily, with 2,000 kcal on days of which the flag is 1."""
    days = len(logged)
    ones, zeros = [1.0] * days, [0.0] * days
    flags = [float(each) for each in logged]
    return DailyLog(0, [80.0] * days, ones, ones, [EATEN * each for each in flags], flags, zeros, zeros)


def test_a_forgotten_day_is_like_any_other_and_a_spell_is_not() -> None:
    filled = fill_intake(log([1] * 14 + [0] + [1] * 3 + [0] * 30 + [1]), PRIOR)
    assert filled[14] == EATEN
    first, spell = 18, int(SILENT_DAYS)
    assert filled[first] == EATEN
    assert filled[first + 1 : first + spell] == [(1.0 + SILENT_EXCESS) * EATEN] * (spell - 1)
    # Three weeks without a log are no holiday any more.
    assert filled[first + spell :] == [EATEN] * (30 - spell + 1)


def test_who_has_never_logged_is_in_no_spell() -> None:
    assert fill_intake(log([0] * 10), PRIOR) == [PRIOR] * 10
    assert fill_intake(log([0] * 10 + [1, 0, 0]), PRIOR)[10:] == [EATEN, EATEN, (1.0 + SILENT_EXCESS) * EATEN]


@pytest.mark.parametrize("silent", [1, 3, 7, 21])
def test_days_of_a_silent_week_err_together(silent: int) -> None:
    """The SD of what was eaten in a week is a week's shared error with those of its days, whatever the week."""
    given = log([1] * 20 + [0] * silent + [1] * 5)
    columns = fit_log(given, Estimate(PRIOR, 250.0), TISSUE, with_views=False).columns
    variances = columns[k.INTAKE_VARIANCE :: k.COLUMNS][20 : 20 + silent]
    filled = fill_intake(given, PRIOR)[20 : 20 + silent]
    share = [1e6 * variance / eaten**2 for variance, eaten in zip(variances, filled, strict=True)]
    own = UNLOGGED_DAY_ERROR**2 - SILENT_ERROR**2
    weeks = [share[at : at + 7] for at in range(0, silent, 7)]
    for week in weeks:
        assert math.isclose(sum(week), len(week) * own + (len(week) * SILENT_ERROR) ** 2)
    assert math.isclose(share[0], UNLOGGED_DAY_ERROR**2)


def _tells(eaten: list[float], **given: list[int]) -> list[int]:
    """Days of a fully logged log whose intake of the day before tells what is spent."""
    daily = log([1] * len(eaten))._replace(intake_kcal=eaten)
    fit = fit_log(daily, Estimate(PRIOR, 250.0), TISSUE, with_views=False, **given)
    return [day for day, variance in enumerate(fit.columns[k.BALANCE_VARIANCE :: k.COLUMNS]) if variance]


def test_a_phase_of_ones_own_choice_tells_anew_what_is_spent() -> None:
    """Seen on its fourth day; the five that show it count among the fourteen."""
    steady, turned = [2400.0] * 40, [2400.0] * 20 + [1900.0] * 20
    assert _tells(steady) == list(range(1, 15))
    assert _tells(turned) == [*range(1, 15), *range(24, 33)]
    # One that is known to have begun is meant, and tells nothing.
    assert _tells(turned, phase_days=[20]) == list(range(1, 15))
    # Nor does one that comes when weight has long told.
    assert _tells([2400.0] * 80 + [1900.0] * 20) == list(range(1, 15))
