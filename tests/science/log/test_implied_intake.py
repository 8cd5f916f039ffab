"""Intake read from weight alone, against what simulated people ate."""

from science.log.test_trend import FIRST, MODEL, PRIOR, body, simulated
from steelyard.science.log.cleaning import clean_log
from steelyard.science.log.entries import Log
from steelyard.science.log.implied_intake import implied_intakes


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
