"""A trial asked of the service as a member would: what it says for the same person and diet, or the rule it refuses by.

The mean participant is one person, asked for once as a man and once as a woman where both took part; the weights are
their shares. Body fat, maintenance and training are told, the screening is clear, and stretches are whole weeks.
"""

from datetime import date
from typing import NamedTuple

from steelyard.answers.forecast import ForecastAsked, PathAsked, forecast_intake
from steelyard.science.body.forecasting import PathPoint
from steelyard.science.member import Told
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import ActivityLevel, BodyFatReading, Person, Sex
from steelyard.science.person.screening import EatingDisorder, Screening
from steelyard.science.phase import ScheduledIntake
from steelyard.science.rails import Refused
from steelyard.science.register import OutOfDomain

from .comparison import MAINTENANCE_SD_KCAL
from .trials import CARBOHYDRATE_KCAL_PER_G, Case

_START = date(2026, 1, 5)
_CLEAR = Screening(is_pregnant=False, is_breastfeeding=False, eating_disorder=EatingDisorder.NONE)


class Served(NamedTuple):
    """Change of body and fat mass [kg] by the service, or the code that it refuses with."""

    body_kg: float
    fat_kg: float
    refused: str | None = None


def _refused(code: str) -> Served:
    return Served(float("nan"), float("nan"), code)


def served(case: Case) -> Served:
    """What the service says of the mean participant, eating what the trial's did."""
    body, fat = 0.0, 0.0
    for sex, share in ((Sex.MALE, case.trial.person.male_share), (Sex.FEMALE, 1.0 - case.trial.person.male_share)):
        if share == 0.0:
            continue
        try:
            end = _asked(case, sex)
        except Refused as refusal:
            return _refused(refusal.action.message.code)
        except OutOfDomain as error:
            return _refused(error.code)
        body += share * (end.weight_kg - case.trial.person.weight_kg)
        fat += share * (end.fat_kg - case.fat_kg)
    return Served(body, fat)


def _asked(case: Case, sex: Sex) -> PathPoint:
    told = case.trial.person
    assert told.age_years is not None
    assert told.height_cm is not None
    person = Person(
        sex=sex,
        age_years=told.age_years,
        height_cm=told.height_cm,
        weight_kg=told.weight_kg,
        activity=ActivityLevel.LIGHT,  # maintenance is told
        body_fat=BodyFatReading(fat_fraction=case.fat_kg / told.weight_kg, method=told.body_fat_method),
        training=case.training,
    )
    schedule = [
        ScheduledIntake(
            weeks=max(1, round(part.days / 7.0)),
            intake_kcal=part.intake_kcal,
            protein_g_per_kg=part.protein_g_per_kg,
            carbohydrate_g=part.carbohydrate_kcal / CARBOHYDRATE_KCAL_PER_G,
        )
        for part in case.periods
    ]
    maintenance = Estimate(case.maintenance_kcal, MAINTENANCE_SD_KCAL)
    asked = ForecastAsked(Told(person, _CLEAR, maintenance=maintenance), _START, PathAsked(schedule))
    return forecast_intake(asked).value.weeks[-1].at_end


def is_whole_weeks(case: Case) -> bool:
    """Whether the service is asked of the same days."""
    return all(part.days % 7.0 == 0.0 for part in case.periods)
