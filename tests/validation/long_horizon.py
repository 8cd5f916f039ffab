"""The long-horizon rule, simulated for the adult it was stated for and for a lean lifter.

Hall KD et al. Lancet 2011;378:826-37 (doi 10.1016/S0140-6736(11)60812-X): for the average overweight adult every
10 kcal/d of permanent change of intake leads to an eventual change of about 1 lb (0.45 kg), half of it in about a
year and 95 % in about three. In its other printed form, 100 kJ/d per kg, that is 10.8 kcal/d per lb: the rule is good
to about a tenth.
"""

from typing import NamedTuple

from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import Diet, calibrate

LB_KG = 0.45359237
KCAL_PER_LB = (9.0, 11.0)
FIRST_YEAR = (0.45, 0.60)
THREE_YEARS = 0.95 / 1.08  # the two printed forms of the rule lie 8 % apart
YEAR_DAYS = 365.25
_MONTH_DAYS = 28.0
_EVENTUAL_YEARS = 40.0


class Adult(NamedTuple):
    """Who cuts intake for good, and by how much [kg, kcal/d, g/kg/d, y]."""

    title: str
    weight_kg: float
    fat_kg: float
    resting_kcal: float
    maintenance_kcal: float
    change_kcal: float
    protein_g_per_kg: float = 0.8
    experience_years: float = 0.0
    training_dose: float = 0.0


# 40 years, 172 cm, the mean of both sexes by Mifflin 1990. The level of the average adult by labelled water is about
# 1.6 (from memory); a plainly sedentary one is shown beside it.
OVERWEIGHT = Adult("average overweight adult, activity level 1.6", 95.0, 33.0, 1747.0, 1747.0 * 1.6, -100.0)
SEDENTARY = OVERWEIGHT._replace(title="the same, sedentary (1.475)", maintenance_kcal=1747.0 * 1.475)
# 30 years, 180 cm, 15 % fat; lifts four times a week, or not at all.
LIFTER = Adult("lean lifter, activity level 1.775", 80.0, 12.0, 1780.0, 1780.0 * 1.775, -100.0, 2.0, 2.5, 1.0)
LEAN = LIFTER._replace(
    title="lean adult, not lifting, 1.775", protein_g_per_kg=0.8, experience_years=0.0, training_dose=0.0
)


class Course(NamedTuple):
    """How far tissue has moved [kg] after one, three and many years."""

    one_year_kg: float
    three_years_kg: float
    eventual_kg: float

    @property
    def first_year_share(self) -> float:
        """Share of the eventual change after a year."""
        return self.one_year_kg / self.eventual_kg

    @property
    def three_year_share(self) -> float:
        """Share of the eventual change after three years."""
        return self.three_years_kg / self.eventual_kg


def course(adult: Adult) -> Course:
    """Change of scale weight against the same adult who goes on eating at maintenance."""
    model, state = calibrate(
        weight_kg=adult.weight_kg,
        fat_kg=adult.fat_kg,
        maintenance_kcal=adult.maintenance_kcal,
        resting_kcal=adult.resting_kcal,
        experience_years=adult.experience_years,
        training_dose=adult.training_dose,
    )
    changed, same = state, state

    def diet(intake: float) -> Diet:
        return Diet(intake, 0.5 * intake, adult.protein_g_per_kg)

    moved = []
    for until in (YEAR_DAYS, 3 * YEAR_DAYS, _EVENTUAL_YEARS * YEAR_DAYS):
        while changed.day < until - 1e-6:
            days = min(_MONTH_DAYS, until - changed.day)
            changed = advance(model, changed, diet(adult.maintenance_kcal + adult.change_kcal), days)
            same = advance(model, same, diet(adult.maintenance_kcal), days)
        moved.append(changed.weight_kg - same.weight_kg)
    return Course(*moved)


def kcal_per_lb(adult: Adult, found: Course) -> float:
    """Permanent change of intake per pound of eventual change [kcal/d]."""
    return adult.change_kcal / (found.eventual_kg / LB_KG)
