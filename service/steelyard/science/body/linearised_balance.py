"""The body model as one line: what a kilogram of body mass is worth, and how expenditure falls with it."""

from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number
from ..register import HALL_CHOW_2011, SANGHVI_2015, Basis, Kind, constant, equation
from .constants import (
    FAT_ENERGY,
    FAT_SYNTHESIS,
    FAT_UPKEEP,
    LEAN_ENERGY,
    LEAN_SYNTHESIS,
    LEAN_UPKEEP,
    THERMIC_SHARE,
)
from .lean_partition import (
    ceiling_kcal,
    deficit_factor,
    deficit_share,
    saturated,
    supply_of,
    surplus_factor,
    surplus_share,
)
from .state import BodyModel

TYPICAL_DEFICIT_KCAL = constant(
    "typical_deficit", 400.0, unit="kcal/d", basis=Basis.JUDGEMENT,
    summary="Tissue energy lost a day for which a kilogram of body mass is priced where the deficit is not told",
)  # fmt: skip
_TYPICAL_GAP_KCAL = -TYPICAL_DEFICIT_KCAL


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
def linearise(
    model: BodyModel,
    fat_kg: Number,
    protein_g_per_kg: Number,
    *,
    gap_kcal: Number = _TYPICAL_GAP_KCAL,
    ops: Elementwise = FLOATS,
) -> Linearised:
    """The linear model around tissue storing ``gap_kcal`` a day, in a deficit unless told otherwise.

    Without training, at ordinary protein and with no effect of the deficit's size it equals the published closed form.
    """
    deficit = deficit_share(
        fat_kg,
        deficit_factor(model, protein_g_per_kg, ops),
        model.deficit_rate_effect,
        supply_of(ops.minimum(gap_kcal, 0.0), fat_kg, ops),
    )
    over = ops.maximum(gap_kcal, 0.0)
    small = surplus_share(fat_kg, surplus_factor(model, protein_g_per_kg, ops), model.level_partition)
    surplus = saturated(small, over, ceiling_kcal(model, ops), ops)
    share = ops.where(gap_kcal > 0.0, surplus, deficit)
    synthesis = share * LEAN_SYNTHESIS / LEAN_ENERGY + (1.0 - share) * FAT_SYNTHESIS / FAT_ENERGY
    fat_part, lean_part = (1.0 - share) / FAT_ENERGY, share / LEAN_ENERGY
    mass_per_kcal = fat_part + lean_part
    upkeep = (FAT_UPKEEP * fat_part + LEAN_UPKEEP * lean_part) / mass_per_kcal
    adapting = model.adaptation_share + ops.where(gap_kcal > 0.0, model.surplus_activity_share, 0.0)
    responding = 1.0 - THERMIC_SHARE - adapting
    return Linearised(
        (1.0 + synthesis) / mass_per_kcal / responding, (upkeep + model.activity_kcal_per_kg) / responding
    )
