"""How lean tissue and fat share an imbalance of energy, and what training builds in any.

After Forbes 1987 and Hall 2007, with the factors of training and protein registered in ``constants``. Elementwise:
floats, or numpy arrays with people along the first axis.
"""

from ..numbers import FLOATS, Elementwise, Number, inlined
from ..register import (
    ALPERT_2005,
    BENITO_2020,
    BOUCHARD_1990,
    FORBES_1987,
    HALL_2007,
    METTLER_2010,
    MORTON_2018,
    MURPHY_2022,
    WEINHEIMER_2010,
    WYCHERLEY_2012,
    Basis,
    Kind,
    equation,
)
from .constants import (
    DEFICIT_RATE_EFFECT,
    EXPERIENCE_HALVING_YEARS,
    FAT_SUPPLY_LIMIT,
    GROWTH_KEPT_BY_PROTEIN,
    LEAN_CEILING_FLOOR,
    LEAN_ENERGY,
    LEVEL_PARTITION,
    LEVEL_SHARE,
    PARTITION_KG,
    PROTEIN_ENOUGH_DEFICIT,
    PROTEIN_ENOUGH_GAIN,
    PROTEIN_GAIN_BOOST,
    PROTEIN_ORDINARY,
    PROTEIN_SPARING,
    SURPLUS_LEAN_CEILING,
    SURPLUS_LEAN_FACTOR,
    SURPLUS_TRAINED_BOOST,
    TRAINING_GAIN,
    TRAINING_NEEDS_PROTEIN,
    TRAINING_SPARING,
)
from .state import BodyModel

_LEAST_RESPONSE = -0.25  # less protein than the allowance takes lean tissue, within bounds


@inlined
def protein_responses(protein_g_per_kg: Number, ops: Elementwise) -> tuple[Number, Number]:
    """How much of what protein can do in a deficit, and in a gain, it does: 0 at the allowance .. 1."""
    # (protein - ordinary) / (enough - ordinary), within 0 .. 1
    above = protein_g_per_kg - PROTEIN_ORDINARY
    return (
        ops.minimum(ops.maximum(above / (PROTEIN_ENOUGH_DEFICIT - PROTEIN_ORDINARY), 0.0), 1.0),
        ops.minimum(ops.maximum(above / (PROTEIN_ENOUGH_GAIN - PROTEIN_ORDINARY), _LEAST_RESPONSE), 1.0),
    )


@equation(
    "lean_partition",
    summary="Share of the energy imbalance that goes to or comes from lean tissue",
    formula=(
        f"base = C / (C + fat mass) with C = {PARTITION_KG:.4f} kg. In a deficit base x (1 - {TRAINING_SPARING:g} x "
        f"training dose x (1 - {TRAINING_NEEDS_PROTEIN:g} x (1 - protein response))) x (1 - protein sparing x "
        f"protein response) x (1 + {DEFICIT_RATE_EFFECT:g} x (s / (1 + s) - 1/2)), s = deficit over what fat can "
        f"supply. In a surplus (base + {LEVEL_PARTITION:g} x ({LEVEL_SHARE:g} - base)) x {SURPLUS_LEAN_FACTOR:g} x "
        f"protein response x (1 + {SURPLUS_TRAINED_BOOST:g} x training dose), saturating at a ceiling set by "
        f"training experience"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(
        FORBES_1987,
        HALL_2007,
        WEINHEIMER_2010,
        WYCHERLEY_2012,
        METTLER_2010,
        BOUCHARD_1990,
    ),
    valid_range="adults; factors for training and protein are ours, calibrated on pooled trials",
)
@inlined
def deficit_factor(model: BodyModel, protein_g_per_kg: Number, ops: Elementwise = FLOATS) -> Number:
    """Factor on the Forbes lean share in a deficit: 1 without training at ordinary protein, about 0.1 best, before
    its size counts."""
    response = protein_responses(protein_g_per_kg, ops)[0]
    dose = model.training_dose
    protein_sparing = PROTEIN_SPARING + (model.protein_sparing_trained - PROTEIN_SPARING) * dose
    training = model.training_sparing * dose * (1.0 - TRAINING_NEEDS_PROTEIN * (1.0 - response))
    spared = (1.0 - training) * (1.0 - protein_sparing * response) * model.partition_scale
    # Nobody is spared more than all: what a deficit adds of lean tissue, training does (``training_growth``).
    return ops.maximum(spared + dose * model.unspared, 0.0)


@inlined
def surplus_factor(model: BodyModel, protein_g_per_kg: Number, ops: Elementwise = FLOATS) -> Number:
    """Factor on the lean share of a surplus."""
    response = protein_responses(protein_g_per_kg, ops)[1]
    without = model.surplus_without_protein
    return (
        model.surplus_lean_factor
        * (without + (1.0 - without) * response)
        * (1.0 + SURPLUS_TRAINED_BOOST * model.training_dose)
        * model.partition_scale
    )


@equation(
    "training_lean_term",
    summary="Lean tissue gained through training in any energy state, its energy taken from fat",
    formula=(
        f"{TRAINING_GAIN:.3g} kg per kg fat-free mass a day x training dose / (1 + years of experience) x "
        f"(1 + {PROTEIN_GAIN_BOOST:g} x protein response) / {1 + PROTEIN_GAIN_BOOST:g} x "
        f"exp(-(1 - {GROWTH_KEPT_BY_PROTEIN:g} x protein response) x deficit / ({FAT_SUPPLY_LIMIT:.1f} kcal/kg x fat "
        f"mass))"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(BENITO_2020, MORTON_2018, MURPHY_2022, ALPERT_2005),
    valid_range="adults; the fade with the deficit is ours: pooled trials put the balance point near 500 kcal/d",
)
@inlined
def training_growth(model: BodyModel, protein_g_per_kg: Number, ops: Elementwise) -> tuple[Number, Number]:
    """Training-driven lean gain and ceiling of surplus-driven lean of a beginner, without any deficit [kg/d]."""
    response = protein_responses(protein_g_per_kg, ops)[1]
    protein = (1.0 + PROTEIN_GAIN_BOOST * ops.maximum(response, 0.0)) / (1.0 + PROTEIN_GAIN_BOOST)
    return (
        model.training_gain * model.fat_free_kg * model.training_dose * protein,
        SURPLUS_LEAN_CEILING * model.fat_free_kg,
    )


@inlined
def supply_of(gap_kcal: Number, fat_kg: Number, ops: Elementwise) -> Number:
    """A deficit [kcal/d] as a share of the most that fat can supply; 0 in a surplus."""
    return (ops.maximum(gap_kcal, 0.0) - gap_kcal) / (FAT_SUPPLY_LIMIT * fat_kg)


@inlined
def deficit_share(fat_kg: Number, factor: Number, rate_effect: Number, supply: Number) -> Number:
    """Share of the energy of a deficit that comes from lean tissue: the more, the larger it is for the fat there is."""
    return PARTITION_KG / (PARTITION_KG + fat_kg) * factor * (1.0 + rate_effect * (supply / (1.0 + supply) - 0.5))


@inlined
def surplus_share(fat_kg: Number, factor: Number, level: Number) -> Number:
    """Share of the energy of a small surplus that goes to lean tissue."""
    base = PARTITION_KG / (PARTITION_KG + fat_kg)
    return (base + level * (LEVEL_SHARE - base)) * factor


@inlined
def saturated(share: Number, surplus_kcal: Number, ceiling_kcal: Number, ops: Elementwise) -> Number:
    """What is left of that share in a larger surplus, under the ceiling of what lean tissue can take [kcal/d]."""
    return share / (1.0 + ops.maximum(share, 0.0) * surplus_kcal / ceiling_kcal)


def ceiling_kcal(model: BodyModel, ops: Elementwise = FLOATS, day: Number = 0.0) -> Number:
    """Ceiling of surplus energy into lean tissue at the experience of a day [kcal/d]."""
    years = model.experience_years + model.training_dose * day / 365.25
    freshness = EXPERIENCE_HALVING_YEARS / (EXPERIENCE_HALVING_YEARS + years)
    return LEAN_ENERGY * SURPLUS_LEAN_CEILING * model.fat_free_kg * ops.maximum(freshness, LEAN_CEILING_FLOOR)
