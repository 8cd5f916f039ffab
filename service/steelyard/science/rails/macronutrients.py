"""From a daily energy to grams of protein, fat, carbohydrate and fibre."""

from enum import StrEnum
from functools import lru_cache

import msgspec

from ..numbers import FLOATS, Elementwise, Number
from ..register import EU_1169_2011, HELMS_2014, IOM_2005, IRAKI_2019, WHITTAKER_2021, Basis, constant, equation
from .protein import PROTEIN_FLOOR_DEFICIT

PROTEIN_KCAL_PER_G = constant(
    "atwater_protein",
    4.0,
    unit="kcal/g",
    summary="Metabolisable energy of protein",
    sources=(EU_1169_2011,),
)
CARBOHYDRATE_KCAL_PER_G = constant(
    "atwater_carbohydrate",
    4.0,
    unit="kcal/g",
    summary="Metabolisable energy of carbohydrate",
    sources=(EU_1169_2011,),
)
FAT_KCAL_PER_G = constant(
    "atwater_fat",
    9.0,
    unit="kcal/g",
    summary="Metabolisable energy of fat",
    sources=(EU_1169_2011,),
)
# The report's 38 and 25 g a day for men and women are this share of their energy.
FIBRE_G_PER_KCAL = constant(
    "fibre_adequate_intake",
    0.014,
    unit="g/kcal",
    summary="Adequate intake of fibre, 14 g per 1000 kcal",
    sources=(IOM_2005,),
)
FAT_FLOOR_G_PER_KG = constant(
    "fat_floor_mass",
    0.5,
    unit="g/kg/d",
    summary="Least dietary fat per kilogram of body mass",
    sources=(IRAKI_2019, WHITTAKER_2021),
)
FAT_FLOOR_SHARE = constant(
    "fat_floor_share",
    0.15,
    unit="of energy",
    summary="Least dietary fat as a share of energy",
    sources=(HELMS_2014,),
)


class CarbohydratePreference(StrEnum):
    """How the energy left after protein is shared between carbohydrate and fat."""

    LOWER = "lower"
    BALANCED = "balanced"
    HIGHER = "higher"


_FAT_SHARE = {
    CarbohydratePreference.LOWER: constant(
        "fat_share_lower_carbohydrate",
        0.38,
        unit="of energy",
        summary="Dietary fat where lower carbohydrate is preferred",
        basis=Basis.JUDGEMENT,
    ),
    CarbohydratePreference.BALANCED: constant(
        "fat_share_balanced",
        0.27,
        unit="of energy",
        summary="Dietary fat by default: the middle of the acceptable range of 20-35 %",
        sources=(IOM_2005,),
    ),
    CarbohydratePreference.HIGHER: constant(
        "fat_share_higher_carbohydrate",
        0.20,
        unit="of energy",
        summary="Dietary fat where higher carbohydrate is preferred: the least of 20-35 %",
        sources=(IOM_2005,),
    ),
}


class Macronutrients(msgspec.Struct, frozen=True):
    """A day's intake: energy to 10 kcal, grams to 5 g, fibre (part of the carbohydrate) to 1 g."""

    intake_kcal: int
    protein_g: int
    carbohydrate_g: int
    fat_g: int
    fibre_g: int


def fat_share(preference: CarbohydratePreference) -> float:
    """Share of energy from dietary fat under a preference, where its floors do not ask for more."""
    return _FAT_SHARE[preference]


def _to(step: float, value: Number, ops: Elementwise) -> Number:
    """``value`` to the nearest multiple of ``step``; half way goes to the even one, as with ``round``."""
    steps = value / step
    nearest = (steps + 0.5) // 1.0
    is_tie = (nearest - steps == 0.5) & (nearest % 2.0 == 1.0)
    return step * ops.where(is_tie, nearest - 1.0, nearest)


def _up_to(step: float, value: Number) -> Number:
    return -(-value // step) * step


def least_intake_kcal(weight_kg: Number, ops: Elementwise = FLOATS, *, protein_for_kg: Number | None = None) -> Number:
    """The least daily energy that holds the floors of protein in a deficit and of fat, with their rounding [kcal].

    ``protein_for_kg`` is the body mass that protein is for, where that is less than ``weight_kg``.
    """
    protein_kg = weight_kg if protein_for_kg is None else protein_for_kg
    protein = PROTEIN_KCAL_PER_G * (PROTEIN_FLOOR_DEFICIT * protein_kg + 5.0)
    by_mass = protein + FAT_KCAL_PER_G * (FAT_FLOOR_G_PER_KG * weight_kg + 5.0)
    by_share = (protein + FAT_KCAL_PER_G * 5.0) / (1.0 - FAT_FLOOR_SHARE)
    return ops.maximum(by_mass, by_share)


def least_fat_kcal(intake_kcal: float, weight_kg: float) -> float:
    """The least energy from dietary fat beside an intake [kcal/d]."""
    return max(FAT_KCAL_PER_G * FAT_FLOOR_G_PER_KG * weight_kg, FAT_FLOOR_SHARE * intake_kcal)


def rest_kcal(intake_kcal: float, protein_g: float, carbohydrate_g: float) -> float:
    """What is left of an intake beside protein and carbohydrate, which is fat [kcal/d]."""
    return max(0.0, intake_kcal - PROTEIN_KCAL_PER_G * protein_g - CARBOHYDRATE_KCAL_PER_G * carbohydrate_g)


@equation(
    "macronutrient_split",
    summary="Grams of each macronutrient for a daily energy",
    formula=(
        f"protein by body mass; fat by preference, at least {FAT_FLOOR_G_PER_KG:g} g/kg and {FAT_FLOOR_SHARE:.0%} "
        f"of energy; carbohydrate is the rest; {PROTEIN_KCAL_PER_G:g} P + {CARBOHYDRATE_KCAL_PER_G:g} C + "
        f"{FAT_KCAL_PER_G:g} F within 10 kcal of the intake"
    ),
    basis=Basis.COMMON_PRACTICE,
    sources=(EU_1169_2011, IOM_2005),
)
def split_grams(
    intake_kcal: Number,
    weight_kg: Number,
    protein_g_per_kg: Number,
    fat_share: Number,
    ops: Elementwise = FLOATS,
    *,
    fat_for_kg: Number | None = None,
) -> tuple[Number, Number, Number]:
    """Grams of protein, carbohydrate and fat, to 5 g, for a daily energy [kcal, a multiple of 10] and body mass [kg].

    Floats or arrays. Protein is rounded up so that no floor is undercut, and is as much as asked for only where the
    energy has room for it beside the least fat: an intake of ``least_intake_kcal`` has room for both floors.
    ``fat_for_kg`` is the body mass that the least fat is for, where it is another: when water has returned.
    """
    fat_kg = weight_kg if fat_for_kg is None else fat_for_kg
    floor = ops.maximum(FAT_FLOOR_G_PER_KG * fat_kg, FAT_FLOOR_SHARE * intake_kcal / FAT_KCAL_PER_G)
    least_fat = _up_to(5.0, floor - 1e-9)
    room = (intake_kcal - FAT_KCAL_PER_G * least_fat) / PROTEIN_KCAL_PER_G // 5.0 * 5.0
    protein = ops.minimum(_up_to(5.0, protein_g_per_kg * weight_kg - 1e-9), ops.maximum(room, 0.0))
    left = intake_kcal - PROTEIN_KCAL_PER_G * protein
    most_fat = ops.maximum(least_fat, left / FAT_KCAL_PER_G // 5.0 * 5.0)
    wanted = ops.maximum(least_fat, _to(5.0, fat_share * intake_kcal / FAT_KCAL_PER_G, ops))
    wanted = ops.minimum(wanted, most_fat)

    def beside(fat: Number) -> tuple[Number, Number]:
        """The carbohydrate that goes with this much fat, and how far the total is then off."""
        spare = left - FAT_KCAL_PER_G * fat
        carbohydrate = ops.maximum(_to(5.0, spare / CARBOHYDRATE_KCAL_PER_G, ops), 0.0)
        miss = spare - CARBOHYDRATE_KCAL_PER_G * carbohydrate
        return carbohydrate, ops.maximum(miss, -miss)

    # A neighbouring 5 g of fat often makes the total exact.
    fat = wanted
    carbohydrate, least_miss = beside(fat)
    for other in (wanted + 5.0, wanted - 5.0):
        its_carbohydrate, miss = beside(other)
        is_better = (other >= least_fat) & (other <= most_fat) & (miss < least_miss)
        fat, least_miss = ops.where(is_better, other, fat), ops.where(is_better, miss, least_miss)
        carbohydrate = ops.where(is_better, its_carbohydrate, carbohydrate)
    return protein, carbohydrate, fat


def fitted_grams(
    intake_kcal: float, weight_kg: float, protein_g: float, carbohydrate_g: float | None
) -> tuple[float, float | None]:
    """Grams of protein and carbohydrate that fit into a daily energy beside the least fat for a body mass [kg].

    Carbohydrate gives way first, in steps of 5 g, then protein.
    """
    room = max(0.0, intake_kcal - least_fat_kcal(intake_kcal, weight_kg))
    protein = min(protein_g, room // PROTEIN_KCAL_PER_G)
    if carbohydrate_g is None:
        return protein, None
    left = (room - PROTEIN_KCAL_PER_G * protein) / CARBOHYDRATE_KCAL_PER_G
    return protein, min(carbohydrate_g, left // 5.0 * 5.0)


def split_intake(
    intake_kcal: float,
    weight_kg: float,
    protein_g_per_kg: float,
    preference: CarbohydratePreference = CarbohydratePreference.BALANCED,
    *,
    fat_for_kg: float | None = None,
) -> Macronutrients:
    """Split a daily energy [kcal] for a body mass [kg] into amounts a person can follow (``split_grams``)."""
    return _split(int(_to(10.0, intake_kcal, FLOATS)), weight_kg, protein_g_per_kg, preference, fat_for_kg)


@lru_cache(maxsize=256)  # a decision asks for the same few dozen some six hundred times
def _split(
    intake: int, weight_kg: float, protein_g_per_kg: float, preference: CarbohydratePreference, fat_for_kg: float | None
) -> Macronutrients:
    grams = split_grams(float(intake), weight_kg, protein_g_per_kg, _FAT_SHARE[preference], fat_for_kg=fat_for_kg)
    protein, carbohydrate, fat = (int(value) for value in grams)
    fibre = min(round(FIBRE_G_PER_KCAL * intake), carbohydrate)
    return Macronutrients(intake, protein, carbohydrate, fat, fibre)
