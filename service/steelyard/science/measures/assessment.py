"""What the equations say of a person: body fat, resting and total energy, and the general cautions."""

from typing import NamedTuple

from ..body import Body, experience_years, training_dose
from ..numbers import Estimate
from ..person import Person, Sex
from ..register import FAT_FROM_BMI, NOT_MEDICAL_ADVICE, TWO_SEXES, Message
from . import body_composition, resting_energy, total_energy
from .body_composition import FatEstimate
from .plausible import check_body, check_expenditure, doubts_about_body, doubts_about_expenditure
from .resting_energy import RestingEnergy
from .total_energy import TotalEnergy


class Assessment(NamedTuple):
    """Body fat (fraction), resting and total energy (kcal/d) of a person, from equations alone."""

    fat: FatEstimate
    resting: RestingEnergy
    total: TotalEnergy


def assess(person: Person) -> Assessment:
    """Assess a person. Raises ``OutOfDomain`` where a reading is impossible, or where no body is like that."""
    check_body(person)
    fat = body_composition.fat_estimate(person)
    resting = resting_energy.estimate(person, fat)
    total = total_energy.estimate(person, resting)
    check_expenditure(total.mean, resting.mean, "activity")
    return Assessment(fat, resting, total)


def body_of(
    person: Person, assessed: Assessment, maintenance: Estimate, usual_intake_kcal: float | None = None
) -> Body:
    """The forecast's view of a person whose maintenance is known as ``maintenance``."""
    fat = assessed.fat
    return Body(
        weight_kg=person.weight_kg,
        fat_kg=Estimate(fat.mean * person.weight_kg, fat.sd * person.weight_kg),
        maintenance_kcal=maintenance,
        resting_kcal=assessed.resting.mean,
        experience_years=experience_years(person.training),
        training_dose=training_dose(person.training),
        new_training=training_dose(person.training) if person.training.is_new_programme else 0.0,
        usual_intake_kcal=usual_intake_kcal,
    )


def general_cautions(person: Person, assessed: Assessment) -> list[Message]:
    """The cautions that every answer about this person carries."""
    cautions = [NOT_MEDICAL_ADVICE]
    if not assessed.fat.is_measured:
        cautions.append(FAT_FROM_BMI)
    if person.sex is Sex.UNSPECIFIED:
        cautions.append(TWO_SEXES)
    return [
        *cautions,
        *doubts_about_body(person),
        *doubts_about_expenditure(assessed.total.mean, assessed.resting.mean),
    ]
