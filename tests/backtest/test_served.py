"""What the back-test judges is what is served: for one person both come to the same intervals."""

from datetime import date

import numpy as np
import pytest
from backtest.backtest import intervals
from backtest.generator import HORIZON_WEEKS, People, Quantity
from plan_people import CLEAR, MAN, WOMAN
from steelyard import answers
from steelyard.science.body import Diet
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Z80, Estimate
from steelyard.science.person import Person
from steelyard.science.phase import ScheduledIntake

PROTEIN_G_PER_KG = 1.8
CARBOHYDRATE_G = 240.0


def _alone(member: Member, intake_kcal: float) -> People:
    """A member as the back-test has many: arrays of one."""
    body = member.body
    diet = Diet(intake_kcal, 4.0 * CARBOHYDRATE_G, PROTEIN_G_PER_KG)
    nobody = np.zeros(1, dtype=np.int64)
    arrays = {
        name: Estimate(np.array([value.mean]), np.array([value.sd]))  # type: ignore[arg-type]
        if isinstance(value, Estimate)
        else np.array([value])
        for name, value in body._asdict().items()
        if value is not None
    }
    return People(body._replace(**arrays), diet, nobody, nobody, nobody)


@pytest.mark.parametrize("who", [MAN, WOMAN])
@pytest.mark.parametrize("of_maintenance", [0.94, 1.0, 1.03])
def test_intervals_are_those_of_an_answer(who: Person, of_maintenance: float) -> None:
    maintenance = Estimate(30.0 * who.weight_kg, 110.0)
    told, intake = Told(who, CLEAR, maintenance=maintenance), of_maintenance * maintenance.mean
    diet = {"intake_kcal": intake, "protein_g_per_kg": PROTEIN_G_PER_KG, "carbohydrate_g": CARBOHYDRATE_G}
    starts = (0, *HORIZON_WEEKS[:-1])
    schedule = [ScheduledIntake(weeks=end - start, **diet) for start, end in zip(starts, HORIZON_WEEKS, strict=True)]
    asked = answers.ForecastAsked(told, date(2026, 3, 30), answers.PathAsked(schedule))
    served = answers.forecast_intake(asked).value.weeks
    judged = intervals(_alone(Member(told), intake))
    for k, week in enumerate(HORIZON_WEEKS):
        at = served[week - 1].at_end
        for quantity, mean, sd in (
            (Quantity.WEIGHT, at.weight_kg, at.weighing_sd_kg),
            (Quantity.FAT_FRACTION, at.fat_fraction, at.spread.fat_fraction),
        ):
            assert judged[quantity].middle[k] == pytest.approx(mean, rel=1e-9)
            assert judged[quantity].half_width[k] == pytest.approx(Z80 * sd, rel=1e-9)
