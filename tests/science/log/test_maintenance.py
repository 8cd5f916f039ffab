"""What of a log's maintenance is believed, for a body that rests at 1,700 kcal/d and by the equations spends 2,600."""

import math
from itertools import pairwise

import pytest
from steelyard.science.log.entries import DailyLog
from steelyard.science.log.logging_scale import LOGGING_RATIO, LOGGING_RATIO_SD
from steelyard.science.log.maintenance import LogMaintenance, as_believed, maintenance_from_fit, odds_of_logging
from steelyard.science.log.tissue_model import RHO_SPREAD, TissueModel
from steelyard.science.log.witness_errors import DEFICIT, DEFICIT_SD
from steelyard.science.log.witnesses import fit_log
from steelyard.science.numbers import Estimate
from steelyard.science.register import OutOfDomain

PRIOR, RESTING = Estimate(2600.0, 260.0), 1700.0
TISSUE = TissueModel(9500.0, RHO_SPREAD * 9500.0, 22.0)


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


def test_belief_fades_without_a_step() -> None:
    """From 1.2 times resting energy, about that of a day in a chair, to 1.1 (judgement)."""
    at = [as_believed(found(1500.0, spent / 100.0 * RESTING), PRIOR, RESTING) for spent in range(105, 126)]
    physical = [one.physical.mean for one in at]
    assert physical[:6] == [PRIOR.mean] * 6
    assert physical[15:] == [spent / 100.0 * RESTING for spent in range(120, 126)]
    assert physical[10] == pytest.approx(0.5 * PRIOR.mean + 0.5 * 1.15 * RESTING)
    # A hundredth of resting energy moves what is told by a tenth of what lies between, and by what it is itself.
    most = 0.12 * (PRIOR.mean - 1.1 * RESTING) + 0.01 * RESTING
    assert max(abs(after - before) for before, after in pairwise(physical)) < most
    ratio = [one.logging_ratio for one in at]
    assert max(abs(after.mean - before.mean) for before, after in pairwise(ratio)) < 0.03
    # In between nobody knows which: the interval holds both.
    assert ratio[10].sd > 1.2 * max(ratio[0].sd, ratio[20].sd)


def test_less_than_resting_energy_is_doubted_with_odds_that_add_up() -> None:
    """Planning 1: the likely causes with their odds, whether the physical estimate is believed or stays."""
    odds = []
    for logged, spent in ((1690.0, 2100.0), (1500.0, 1800.0), (1100.0, 1500.0)):
        doubt = as_believed(found(logged, spent), PRIOR, RESTING).doubt
        assert doubt is not None
        assert doubt.code == "LOG_UNDER_RESTING"
        assert sum(float(percent) for percent in doubt.params.values()) == 100
        assert min(float(percent) for percent in doubt.params.values()) >= 5
        odds.append(float(doubt.params["unlogged_percent"]))
    # Where no body is behind what is logged, what is missing from the log has to explain the rest.
    assert odds[2] > max(odds[:2])
    assert as_believed(found(1700.0, 2100.0), PRIOR, RESTING).doubt is None


def test_a_log_of_next_to_nothing_is_no_log_of_meals() -> None:
    """Under three tenths of what the equations expect (judgement)."""
    believed = as_believed(found(500.0, 900.0), PRIOR, RESTING)
    assert believed.maintenance == Estimate(pytest.approx(0.3 * 2600.0), 100.0)
    assert believed.logging_ratio.mean == pytest.approx(0.3)
    assert as_believed(found(800.0, 900.0), PRIOR, RESTING).maintenance.mean == 800.0


def test_a_log_whose_mean_lies_under_nothing_is_weighed_all_the_same() -> None:
    """Some days of 200 kcal on a wide prior: the mean of the normal distribution may come to lie under 0."""
    read = LogMaintenance(Estimate(-10.0, 560.0), Estimate(-210.0, 1030.0), Estimate(0.68, 0.18), 0.3, 0.7)
    assert 0.5 < odds_of_logging(read, PRIOR, RESTING) < 1.0


def test_more_than_any_body_spends_is_refused_by_name() -> None:
    with pytest.raises(OutOfDomain) as raised:
        as_believed(found(7000.0, 5.1 * RESTING), PRIOR, RESTING)
    assert raised.value.field == "log"


def weighed_once(logged_kcal: float, phase_days: tuple[int, ...] = ()) -> LogMaintenance:
    """What a month of food says while the scale says nothing."""
    days = 30
    log = DailyLog(
        first_day=0,
        weight_kg=[80.0] + [0.0] * (days - 1),
        is_weighed=[1.0] + [0.0] * (days - 1),
        noise_scale=[1.0] * days,
        intake_kcal=[logged_kcal] * days,
        is_logged=[1.0] * days,
        carbohydrate_kcal=[0.0] * days,
        has_carbohydrate=[0.0] * days,
    )
    return maintenance_from_fit(fit_log(log, PRIOR, TISSUE, phase_days=phase_days, with_views=False))


@pytest.mark.parametrize("share", [0.75, 0.97, 1.2])
def test_a_young_log_tells_what_is_spent_before_any_weight_does(share: float) -> None:
    """The mean of two normal judgements by their variances: what the equations expect to be logged, and what was."""
    expected = LOGGING_RATIO * PRIOR.mean
    of_equations = (PRIOR.sd / PRIOR.mean) ** 2 + (LOGGING_RATIO_SD / LOGGING_RATIO) ** 2
    weight = of_equations / (of_equations + DEFICIT_SD**2)
    found = weighed_once(share * expected).maintenance
    assert found.mean == pytest.approx(expected + weight * (share / (1.0 - DEFICIT) - 1.0) * expected, rel=0.02)
    # Half a month's drift comes on top.
    assert found.sd == pytest.approx(expected * (weight * DEFICIT_SD**2) ** 0.5, rel=0.06)


def test_what_is_meant_tells_nothing_of_what_is_spent() -> None:
    """A deficit of a phase that is known to have begun with the log: only the tissue that it costs spends less."""
    found = weighed_once(0.75 * LOGGING_RATIO * PRIOR.mean, phase_days=(0,)).maintenance
    assert found.mean == pytest.approx(LOGGING_RATIO * PRIOR.mean, rel=0.03)
