"""The thermic effect of food: what digesting and storing a day's nutrients costs."""

from ..numbers import Number
from ..register import WESTERTERP_2004, constant, equation


# The ranges were read where the paper is cited (three texts agree); its abstract gives their order, not the figures.
def _thermic(nutrient: str, share: float, sd: float, spread: str) -> float:
    return constant(
        f"thermic_effect_{nutrient}",
        share,
        unit="kcal/kcal",
        summary=f"Thermic effect of {nutrient}, share of its energy (middle of {spread})",
        sources=(WESTERTERP_2004,),
        standard_deviation=sd,
    )


THERMIC_PROTEIN = _thermic("protein", 0.25, 0.05, "20-30 %")
THERMIC_CARBOHYDRATE = _thermic("carbohydrate", 0.075, 0.025, "5-10 %")
THERMIC_FAT = _thermic("fat", 0.015, 0.015, "0-3 %")
THERMIC_ALCOHOL = _thermic("alcohol", 0.20, 0.10, "10-30 %")


@equation(
    "thermic_effect_by_nutrient",
    summary="Thermic effect of a day's food from the energy of its nutrients",
    formula=(
        f"{THERMIC_PROTEIN:g} P + {THERMIC_CARBOHYDRATE:g} C + {THERMIC_FAT:g} F + {THERMIC_ALCOHOL:g} Alc, "
        "each in kcal/d"
    ),
    sources=(WESTERTERP_2004,),
)
def thermic_effect_kcal(
    protein_kcal: Number, carbohydrate_kcal: Number, fat_kcal: Number, alcohol_kcal: Number = 0.0
) -> Number:
    """Thermic effect in kcal/d of nutrients given in kcal/d."""
    return (
        THERMIC_PROTEIN * protein_kcal
        + THERMIC_CARBOHYDRATE * carbohydrate_kcal
        + THERMIC_FAT * fat_kcal
        + THERMIC_ALCOHOL * alcohol_kcal
    )
