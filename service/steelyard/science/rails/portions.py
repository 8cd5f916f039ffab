"""A day's food for a person: protein by the body mass that it is for, by meal, and of plants alone."""

from ..register import (
    HEVIA_LARRAIN_2021,
    SCHOENFELD_2018,
    Basis,
    constant,
)
from .macronutrients import CarbohydratePreference, Macronutrients, split_intake
from .subject import Subject

PLANT_PROTEIN_FACTOR = constant(
    "protein_plant_based",
    1.10,
    unit="1",
    summary="Protein planned of plants alone over that of a mixed diet, as some of it is digested less well and has "
    "less leucine; at 1.6 g/kg with soy a trial found no difference",
    basis=Basis.JUDGEMENT,
    sources=(HEVIA_LARRAIN_2021,),
)
MEAL_PROTEIN_G_PER_KG = constant(
    "protein_meal",
    0.4,
    unit="g/kg a meal",
    summary="Protein of a meal from which more builds little more muscle, over four meals or more (up to 0.55); the "
    "day's total counts most",
    sources=(SCHOENFELD_2018,),
)
_STEP_G = 5


def split_for(
    subject: Subject,
    intake_kcal: float,
    protein_g_per_kg: float,
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED,
) -> Macronutrients:
    """Split a daily energy [kcal] for a person: protein by the mass that it is for, the least fat by body mass."""
    return split_intake(intake_kcal, subject.protein_kg, protein_g_per_kg, preference, fat_for_kg=subject.weight_kg)


def usual_protein(subject: Subject, g_per_kg: float) -> float:
    """Protein planned where none was asked for [g/kg/d]: more of plants alone."""
    return PLANT_PROTEIN_FACTOR * g_per_kg if subject.is_plant_based else g_per_kg


def meals_of(protein_g: int, meals: int) -> list[int]:
    """A day's protein shared among meals, in steps of 5 g, the larger ones first [g]."""
    steps, more = divmod(protein_g // _STEP_G, meals)
    shared = [_STEP_G * (steps + (i < more)) for i in range(meals)]
    shared[0] += protein_g % _STEP_G
    return shared


def useful_meals(subject: Subject, protein_g: float) -> int:
    """The most meals that each have protein enough to build muscle; one at least."""
    return max(1, int(protein_g / (MEAL_PROTEIN_G_PER_KG * subject.protein_kg) + 1e-9))
