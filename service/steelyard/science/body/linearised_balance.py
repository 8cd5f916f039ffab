"""The body model as one line: what a kilogram of body mass is worth, and how expenditure falls with it."""

from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number
from ..register import HALL_CHOW_2011, SANGHVI_2015, Kind, equation
from .constants import (
    FAT_ENERGY,
    FAT_SYNTHESIS,
    FAT_UPKEEP,
    LEAN_ENERGY,
    LEAN_SYNTHESIS,
    LEAN_UPKEEP,
    PARTITION_KG,
    THERMIC_SHARE,
)
from .energy_balance import deficit_factor
from .state import BodyModel


class Linearised(NamedTuple):
    """``rho dW/dt = change of intake - epsilon (W - W0)`` around a state (tissue weight W)."""

    rho_kcal_per_kg: Number
    epsilon_kcal_per_kg_day: Number


@equation(
    "linearised_energy_balance",
    summary="Effective energy of a kilogram of body mass, and the fall of expenditure with mass",
    formula="rho dW/dt = change of intake - epsilon (W - W0), from the model's partition and costs",
    kind=Kind.MODEL,
    sources=(HALL_CHOW_2011, SANGHVI_2015),
)
def linearise(model: BodyModel, fat_kg: Number, protein_g_per_kg: Number, *, ops: Elementwise = FLOATS) -> Linearised:
    """The linear model in a deficit. Without training at ordinary protein it equals the published closed form."""
    share = PARTITION_KG / (PARTITION_KG + fat_kg) * deficit_factor(model, protein_g_per_kg, ops)
    synthesis = share * LEAN_SYNTHESIS / LEAN_ENERGY + (1.0 - share) * FAT_SYNTHESIS / FAT_ENERGY
    fat_part, lean_part = (1.0 - share) / FAT_ENERGY, share / LEAN_ENERGY
    mass_per_kcal = fat_part + lean_part
    upkeep = (FAT_UPKEEP * fat_part + LEAN_UPKEEP * lean_part) / mass_per_kcal
    responding = 1.0 - THERMIC_SHARE - model.adaptation_share
    return Linearised(
        (1.0 + synthesis) / mass_per_kcal / responding, (upkeep + model.activity_kcal_per_kg) / responding
    )
