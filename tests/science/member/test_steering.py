"""What the scale taught of who hardly logs food: what counts of it, for how long, and that no rail gives way to it."""

import math
from typing import Any

import pytest
from science.member.test_member import PERSON
from steelyard.science.body import ADHERENCE_SPREAD
from steelyard.science.log import RATIO_DRIFT, IntakeDay, Log, LogMaintenance, Weighing
from steelyard.science.measures import assess
from steelyard.science.member import Known, Member, StartingBody, Steered, Told
from steelyard.science.member.steering import with_steering
from steelyard.science.numbers import Estimate
from steelyard.science.person import (
    BodyFatMethod,
    EatingDisorder,
    Screening,
    Sex,
)
from steelyard.science.register import OutOfDomain

DAY = 738_000
BODY = StartingBody(Estimate(71.0, 0.3), Estimate(20.0, 2.0), BodyFatMethod.DXA, True)
RESTING = 1500.0
TAUGHT = Steered(DAY, Estimate(2000.0, 100.0))
# Logged at 0.8 of what is eaten, 2,400 kcal by the log.
OF_LOG = LogMaintenance(Estimate(2400.0, 60.0), Estimate(3000.0, 75.0), Estimate(0.8, 0.05), 0.2, 0.8)


def logged(days: int, since: int = DAY) -> Log:
    return Log([Weighing(DAY - 1, 71.0)], [IntakeDay(since + day, 2000.0) for day in range(days)])


def error(days: int = 0) -> float:
    return math.hypot(100.0, 2000.0 * math.sqrt(2.0 * ADHERENCE_SPREAD**2 + RATIO_DRIFT**2 * days))


@pytest.mark.parametrize("days", [0, 100])
def test_where_no_food_was_logged_since_the_scale_counts_alone_and_is_less_sure_with_time(days: int) -> None:
    found = with_steering(OF_LOG, TAUGHT, logged(28, DAY - 28), DAY + days, RESTING)
    assert found.maintenance.mean == pytest.approx(2000.0)
    assert found.maintenance.sd == pytest.approx(error(days))


@pytest.mark.parametrize(("days", "share"), [(7, 0.8), (14, 0.5), (28, 0.2), (56, 1.0 / 17.0)])
def test_a_log_since_takes_its_place(days: int, share: float) -> None:
    """Means by precision, that of the scale falling as 1 / (1 + (n / 14)^2) and that of the log rising as it falls."""
    of_scale, of_log = share / error(days) ** 2, (1.0 - share) / 60.0**2
    found = with_steering(OF_LOG, TAUGHT, logged(days), DAY + days, RESTING)
    assert found.maintenance.mean == pytest.approx((of_scale * 2000.0 + of_log * 2400.0) / (of_scale + of_log))
    assert found.maintenance.sd == pytest.approx((of_scale + of_log) ** -0.5)
    assert found.prior_share + found.log_share == pytest.approx(1.0)


@pytest.mark.parametrize(("kcal", "ratio", "physical"), [(2000.0, 0.8, 2500.0), (2640.0, 0.88, 3000.0)])
def test_the_logging_ratio_may_rise_by_it_and_never_falls(kcal: float, ratio: float, physical: float) -> None:
    """Who gains on what was told may eat more of it, and who loses less: only the latter makes a rail stricter."""
    found = with_steering(OF_LOG, Steered(DAY, Estimate(kcal, 100.0)), None, DAY, RESTING)
    assert found.logging_ratio.mean == pytest.approx(ratio)
    assert found.physical.mean == pytest.approx(physical)


def test_what_no_body_has_is_not_believed() -> None:
    low = with_steering(OF_LOG, Steered(DAY, Estimate(900.0, 100.0)), None, DAY, RESTING)
    assert low.physical.mean == pytest.approx(1.1 * RESTING)
    with pytest.raises(OutOfDomain) as raised:
        with_steering(OF_LOG, Steered(DAY, Estimate(9000.0, 100.0)), None, DAY, RESTING)
    assert raised.value.field == "state.steered"


def member(kcal: float, *, log: Log | None = None, is_pregnant: bool = False, **told: Any) -> Member:
    screening = Screening(is_pregnant=is_pregnant, is_breastfeeding=False, eating_disorder=EatingDisorder.NONE)
    known = Known(
        DAY, Sex.FEMALE, 168.0, BODY, log=log or logged(0), steered=Steered(DAY, Estimate(kcal, 80.0)),
    )  # fmt: skip
    return Member(Told(PERSON, screening, known=known, **told))


def test_who_never_logged_is_read_as_if_all_that_was_told_were_eaten() -> None:
    prior = assess(PERSON).total.mean
    for kcal in (0.8 * prior, 1.2 * prior):
        found = member(kcal)
        assert found.maintenance.mean == pytest.approx(kcal)
        assert found.learnt is None
        assert not found.subject.scale.is_learnt, "no rail is told that less is logged than eaten"
        assert found.subject.maintenance_kcal == pytest.approx(kcal)
        assert found.subject.physical_kcal == pytest.approx(max(found.prior.mean, kcal)), "the need never falls by it"
        assert "MAINTENANCE_BY_WEIGHT" in [caution.code for caution in found.cautions]


def test_who_logged_long_ago_keeps_the_scale_of_that_log() -> None:
    of_log = member(0.0, log=logged(28, DAY - 28), maintenance=None)
    of_log.steered = None
    found = member(0.9 * of_log.maintenance.mean, log=logged(28, DAY - 28))
    assert found.maintenance.mean == pytest.approx(0.9 * of_log.maintenance.mean)
    assert found.subject.scale == of_log.subject.scale
    assert found.subject.physical_kcal >= of_log.subject.physical_kcal


def test_it_does_not_count_in_pregnancy_nor_where_maintenance_is_told() -> None:
    expecting = member(1900.0, is_pregnant=True)
    assert expecting.maintenance == expecting.prior
    told = member(1900.0, maintenance=Estimate(2300.0, 50.0))
    assert told.maintenance.mean == 2300.0
    for each in (expecting, told):
        assert "MAINTENANCE_BY_WEIGHT" not in [caution.code for caution in each.cautions]
