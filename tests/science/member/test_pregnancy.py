"""What is believed of a log in pregnancy: limits and order, by reckoning."""

import pytest
from steelyard.science.log.maintenance import LogMaintenance
from steelyard.science.member.pregnancy import without_gestation
from steelyard.science.member.told import ToldBefore
from steelyard.science.numbers.estimate import Estimate

FOUND = LogMaintenance(Estimate(1850.0, 90.0), Estimate(2400.0, 150.0), Estimate(0.77, 0.05), 0.3, 0.7)


def test_what_was_known_before_stands() -> None:
    held = without_gestation(FOUND, 2300.0, 1400.0, ToldBefore(0.9, 2350.0))
    assert held.logging_ratio == Estimate(0.9, 0.05)
    assert held.physical == Estimate(2350.0, 150.0)
    assert held.maintenance.mean == pytest.approx(0.9 * 2350.0)
    assert (held.prior_share, held.log_share) == (0.3, 0.7)


def test_nothing_is_less_than_by_the_equations_for_the_body_there_is() -> None:
    held = without_gestation(FOUND, 2500.0, 1400.0, ToldBefore(0.9, 2350.0))
    assert held.physical.mean == 2500.0
    assert held.maintenance.mean == pytest.approx(0.9 * 2500.0)


def test_where_nothing_was_known_a_log_holds_at_least_the_usual_share() -> None:
    held = without_gestation(FOUND, 2300.0, 1400.0, None)
    assert held.logging_ratio.mean == pytest.approx(0.87)
    assert held.physical.mean == 2400.0


def test_no_state_is_believed_past_what_a_body_can_spend_or_log() -> None:
    held = without_gestation(FOUND, 2300.0, 1400.0, ToldBefore(1.5, 30_000.0))
    assert held.physical.mean == pytest.approx(5.0 * 1400.0)
    assert held.logging_ratio.mean == 1.0
