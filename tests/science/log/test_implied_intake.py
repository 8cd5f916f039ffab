"""Intake read from weight alone, against what simulated people ate."""

import numpy as np
import pytest
from science.log.test_trend import FIRST, MODEL, PRIOR, body, simulated
from steelyard.science.log.entries import Log, clean_log
from steelyard.science.log.implied_intake import implied_intakes
from steelyard.science.numbers.estimate import Z80
from validation.trend_people import CORE, OPS, OTHER, Cell, simulate


def test_a_person_at_the_expected_maintenance() -> None:
    """The model's own person, whose maintenance is the prior's: what is left is noise of weight."""
    for intake in (2200.0, 2750.0):
        log = simulated(57, intake_kcal=intake, noise_kg=0.2, missing=0.0)
        daily = clean_log(Log(log.weighings), FIRST + 56)
        (month,) = implied_intakes(daily, PRIOR, body(daily), [28])
        assert MODEL.maintenance_kcal == PRIOR.mean
        assert abs(month.intake_kcal.mean - intake) < 150.0
        assert month.intake_kcal.sd > PRIOR.sd  # never surer of intake than of maintenance


def test_no_intake_of_the_log_enters() -> None:
    log = simulated(40)
    with_intake, without = (clean_log(Log(log.weighings, i), FIRST + 39) for i in (log.intakes, ()))
    tissue = body(without)
    assert implied_intakes(with_intake, PRIOR, tissue, [14, 28]) == implied_intakes(without, PRIOR, tissue, [14, 28])


# Of our own model's people 88 % are covered: their carried mass comes back in part within the month, so that weight
# tells more of intake than the interval allows, which is made for people whose mass does not.
TOO_WIDE = pytest.mark.xfail(strict=True, reason="covers 88 % of our own model's people")


@pytest.mark.parametrize("generator", [pytest.param(CORE, marks=TOO_WIDE), OTHER])
def test_intervals_hold_over_a_month_and_longer(generator: str) -> None:
    """2,000 simulated people who log no food, over their last 28 days, after 14 days at maintenance first.

    Half a deficit is seen in one month by weight, and maintenance is known to a tenth, so intervals are wide (350
    kcal/d SD); the other generator's people hold 13 % less energy in their tissue, and coverage there is lower.
    """
    made = simulate(Cell(0.5, 0.3, 43, 14, generator=generator, is_logged=False), 2000, 8807)
    (month,) = implied_intakes(made.log, made.prior, made.body, [28], OPS)
    error = np.asarray(month.intake_kcal.mean) - made.intake[-29:-1].mean(axis=0)
    coverage = np.mean(np.abs(error) <= Z80 * np.asarray(month.intake_kcal.sd))
    assert 0.75 <= coverage <= 0.85


@pytest.mark.parametrize("generator", [CORE, OTHER])
def test_a_month_of_weight_tells_of_intake(generator: str) -> None:
    made = simulate(Cell(0.5, 0.3, 43, 14, generator=generator, is_logged=False), 2000, 8807)
    (month,) = implied_intakes(made.log, made.prior, made.body, [28], OPS)
    error = np.asarray(month.intake_kcal.mean) - made.intake[-29:-1].mean(axis=0)
    assert np.mean(np.abs(error) <= Z80 * np.asarray(month.intake_kcal.sd)) >= 0.75
    # Better than to take maintenance by the equations for what is eaten.
    assert np.sqrt(np.mean(error**2)) < np.sqrt(np.mean((made.prior.mean - made.intake[-29:-1].mean(axis=0)) ** 2))
