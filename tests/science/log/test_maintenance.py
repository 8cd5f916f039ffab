"""What of a log's maintenance is believed, for a body that rests at 1,700 kcal/d and by the equations spends 2,600."""

import math

import pytest
from steelyard.science.log.maintenance import LogMaintenance, as_believed
from steelyard.science.numbers import Estimate
from steelyard.science.register import OutOfDomain

PRIOR, RESTING = Estimate(2600.0, 260.0), 1700.0


def found(logged_kcal: float, physical_kcal: float) -> LogMaintenance:
    return LogMaintenance(
        Estimate(logged_kcal, 100.0),
        Estimate(physical_kcal, 120.0),
        Estimate(logged_kcal / physical_kcal, 0.05),
        0.3,
        0.7,
    )


def test_a_body_that_may_be_is_believed_as_it_was_read() -> None:
    read = found(1900.0, 2300.0)
    assert as_believed(read, PRIOR, RESTING) is read


def test_of_a_body_that_none_has_the_equations_are_believed_and_the_log_kept() -> None:
    """1.1 times resting energy is the least that anybody lives on; the errors of a ratio add up in squares."""
    believed = as_believed(found(1500.0, 1.09 * RESTING), PRIOR, RESTING)
    assert believed.physical == PRIOR
    assert believed.maintenance == Estimate(1500.0, 100.0)
    assert believed.logging_ratio.mean == pytest.approx(1500.0 / 2600.0)
    relative = math.hypot(100.0 / 1500.0, 260.0 / 2600.0)
    assert believed.logging_ratio.sd == pytest.approx(1500.0 / 2600.0 * relative)
    assert (believed.prior_share, believed.log_share) == (0.3, 0.7)


def test_a_log_of_next_to_nothing_is_no_log_of_meals() -> None:
    """Under three tenths of what the equations expect (judgement)."""
    believed = as_believed(found(500.0, 900.0), PRIOR, RESTING)
    assert believed.maintenance == Estimate(pytest.approx(0.3 * 2600.0), 100.0)
    assert believed.logging_ratio.mean == pytest.approx(0.3)
    assert as_believed(found(800.0, 900.0), PRIOR, RESTING).maintenance.mean == 800.0


def test_more_than_any_body_spends_is_refused_by_name() -> None:
    with pytest.raises(OutOfDomain) as raised:
        as_believed(found(7000.0, 5.1 * RESTING), PRIOR, RESTING)
    assert raised.value.field == "log"
