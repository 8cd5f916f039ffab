"""How much protein: the floor of a deficit, what is planned by default, and the body mass that it is shared out for."""

from ..numbers import FLOATS, Elementwise, Number
from ..person import Sex
from ..register import GALLAGHER_2000, IRAKI_2019, MORTON_2018, WHO_BMI_2000, Basis, constant, equation

PROTEIN_FLOOR_DEFICIT = constant(
    "protein_floor_deficit",
    1.6,
    unit="g/kg/d",
    summary="Least protein in a deficit",
    sources=(MORTON_2018,),
)
PROTEIN_DEFAULT_DEFICIT = constant(
    "protein_default_deficit",
    2.0,
    unit="g/kg/d",
    summary="Protein planned in a deficit: the middle of 1.8-2.2 g/kg",
    basis=Basis.COMMON_PRACTICE,
)
PROTEIN_DEFAULT_GAIN = constant(
    "protein_default_gain",
    1.8,
    unit="g/kg/d",
    summary="Protein planned at maintenance and in a gain: within 1.6-2.2 g/kg",
    sources=(IRAKI_2019, MORTON_2018),
)
# Of the equation for body fat by body mass index at 25 kg/m2 and 30 years; where neither sex fits, the one that asks
# for more protein.
_REFERENCE_FAT = {
    Sex.MALE: constant(
        "protein_reference_fat_male",
        0.20,
        unit="1",
        summary="Body fat up to which protein is shared out for the whole body mass, men: that of a body mass index of "
        "25 at 30 years",
        basis=Basis.JUDGEMENT,
        sources=(GALLAGHER_2000,),
    ),
    Sex.FEMALE: constant(
        "protein_reference_fat_female",
        0.33,
        unit="1",
        summary="The same, women",
        basis=Basis.JUDGEMENT,
        sources=(GALLAGHER_2000,),
    ),
}
REFERENCE_BMI = constant(
    "protein_reference_bmi",
    25.0,
    unit="kg/m2",
    summary="Body mass index whose weight is the least that protein is shared out for",
    basis=Basis.JUDGEMENT,
    sources=(WHO_BMI_2000,),
)


@equation(
    "protein_reference_mass",
    summary="Body mass that protein is shared out for: less than all of it where body fat is high, since trials fed "
    "mostly lean people by body mass, and fat needs little protein",
    formula=(
        f"fat-free mass / (1 - {_REFERENCE_FAT[Sex.MALE]:g} in men, {_REFERENCE_FAT[Sex.FEMALE]:g} in women), no less "
        f"than {REFERENCE_BMI:g} height^2, no more than body mass"
    ),
    basis=Basis.JUDGEMENT,
    sources=(GALLAGHER_2000, WHO_BMI_2000),
)
def protein_reference_kg(
    sex: Sex, height_cm: float, weight_kg: Number, fat_kg: Number, ops: Elementwise = FLOATS
) -> Number:
    """The body mass that protein is shared out for [kg], of a height [cm], body mass and fat mass [kg].

    Masses are floats or arrays.
    """
    usual_fat = _REFERENCE_FAT[Sex.MALE if sex is Sex.MALE else Sex.FEMALE]
    by_lean = (weight_kg - fat_kg) / (1.0 - usual_fat)
    return ops.minimum(weight_kg, ops.maximum(by_lean, REFERENCE_BMI * (height_cm / 100.0) ** 2))
