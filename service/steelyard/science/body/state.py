"""One person's calibrated model, the body on a day, what is eaten, and the intake that holds the body there."""

from collections.abc import Sequence
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Number, compiled, inlined, new_tuple
from .constants import (
    ADAPTATION_SHARE,
    BASELINE_CARBOHYDRATE_SHARE,
    BASELINE_GLYCOGEN_KG,
    DEFICIT_RATE_EFFECT,
    FAT_UPKEEP,
    GLYCOGEN_KG,
    GLYCOGEN_WATER,
    GUT_CONTENT_KG,
    LEAN_UPKEEP,
    LEVEL_PARTITION,
    PROTEIN_SPARING_TRAINED,
    SALT_RECOVERY,
    SALT_WATER_KG,
    SODIUM_BY_CARBOHYDRATE,
    SURPLUS_ACTIVITY_SHARE,
    SURPLUS_LEAN_FACTOR,
    SURPLUS_WITHOUT_PROTEIN,
    THERMIC_SHARE,
    TRAINING_GAIN,
    TRAINING_SPARING,
    TRAINING_WATER_KG,
)


@inlined
def scale_weight(fat_kg: Number, lean_kg: Number, glycogen_kg: Number, water_kg: Number, gut_kg: Number) -> Number:
    """What the scale shows of the parts of a body [kg]."""
    return fat_kg + lean_kg + glycogen_kg * (1.0 + GLYCOGEN_WATER) + water_kg + gut_kg


@inlined
def carried_mass(glycogen_kg: Number, water_kg: Number, gut_kg: Number) -> Number:
    """Glycogen with its water, extracellular water and gut content, as a deviation from baseline [kg]."""
    return (glycogen_kg - GLYCOGEN_KG) * (1.0 + GLYCOGEN_WATER) + water_kg + gut_kg


class BodyModel(NamedTuple):
    """One person's calibrated parameters (or many people's, as arrays). Energies in kcal/d."""

    maintenance_kcal: Number
    baseline_carbohydrate_kcal: Number
    offset_kcal: Number  # constant expenditure that makes intake = maintenance a balance
    activity_kcal_per_kg: Number
    fat_free_kg: Number  # at baseline; scales the training-driven gain
    experience_years: Number
    training_dose: Number  # 0 none .. 1 full
    training_water_kg: Number  # that new training adds
    training_sparing: Number = TRAINING_SPARING
    protein_sparing_trained: Number = PROTEIN_SPARING_TRAINED
    surplus_lean_factor: Number = SURPLUS_LEAN_FACTOR
    training_gain: Number = TRAINING_GAIN
    adaptation_share: Number = ADAPTATION_SHARE
    gut_kg: Number = GUT_CONTENT_KG
    partition_scale: Number = 1.0  # between-person factor on the lean share
    # Of the base share of a deficit, what training leaves more, or less, to come from lean tissue.
    unspared: Number = 0.0
    surplus_activity_share: Number = SURPLUS_ACTIVITY_SHARE
    deficit_rate_effect: Number = DEFICIT_RATE_EFFECT
    level_partition: Number = LEVEL_PARTITION
    surplus_without_protein: Number = SURPLUS_WITHOUT_PROTEIN
    salt_water_kg: Number = SALT_WATER_KG
    salt_recovery: Number = SALT_RECOVERY
    sodium_by_carbohydrate_mg: Number = SODIUM_BY_CARBOHYDRATE


# How the tissues of most people answer: the fields of a model after those that a person is calibrated by.
_responses = tuple(BodyModel._field_defaults.values())
_places = {field: place for place, field in enumerate(BodyModel._fields)}


def otherwise(model: BodyModel, field: str, value: Number) -> BodyModel:
    """``model._replace``, in half the time: each source of uncertainty asks for it."""
    place = _places[field]
    return new_tuple(BodyModel, (*model[:place], value, *model[place + 1 :]))


class BodyState(NamedTuple):
    """The body on a day. ``water_kg`` and ``gut_kg`` are deviations from the calibrated baseline.

    ``recovered_kg`` is what the body has taken back of an answer of its salt water: already in ``water_kg``.
    """

    fat_kg: Number
    lean_kg: Number
    glycogen_kg: Number
    water_kg: Number
    gut_kg: Number
    adaptation_kcal: Number
    day: Number = 0.0
    recovered_kg: Number = 0.0

    @property
    def tissue_kg(self) -> Number:
        """Fat mass and lean tissue [kg]."""
        return self.fat_kg + self.lean_kg

    @property
    def carried_kg(self) -> Number:
        """Glycogen with its water, extracellular water and gut content, as a deviation from baseline [kg]."""
        _, _, glycogen, water, gut, _, _, _ = self
        return carried_mass(glycogen, water, gut)

    @property
    def weight_kg(self) -> Number:
        """Scale weight [kg]."""
        fat, lean, glycogen, water, gut, _, _, _ = self
        return scale_weight(fat, lean, glycogen, water, gut)

    @property
    def fat_free_kg(self) -> Number:
        """Fat-free mass: lean tissue, glycogen and water, without gut content [kg]."""
        return self.lean_kg + self.glycogen_kg * (1.0 + GLYCOGEN_WATER) + self.water_kg


class Diet(NamedTuple):
    """What is eaten each day of a stretch. Sodium, activity and thermic shifts are against baseline."""

    intake_kcal: Number
    carbohydrate_kcal: Number
    protein_g_per_kg: Number
    sodium_change_mg: Number = 0.0
    activity_change_kcal_per_kg: Number = 0.0
    thermic_shift_kcal: Number = 0.0


@compiled
def calibrate(
    *,
    weight_kg: Number,
    fat_kg: Number,
    maintenance_kcal: Number,
    resting_kcal: Number,
    experience_years: Number = 0.0,
    training_dose: Number = 0.0,
    new_training: Number = 0.0,
    carbohydrate_share: Number = BASELINE_CARBOHYDRATE_SHARE,
    ops: Elementwise = FLOATS,
) -> tuple[BodyModel, BodyState]:
    """The model and baseline state of a person for whom eating ``maintenance_kcal`` keeps tissue energy steady.

    Args: masses [kg]; ``maintenance_kcal`` and ``resting_kcal`` [kcal/d]; ``training_dose`` and ``new_training``
        0-1; ``carbohydrate_share`` of the usual intake (0-1). Floats or arrays of one shape.
    Source: Hall 2011; activity coefficient delta = ((1 - thermic share) PAL - 1) RMR / weight.
    """
    lean, free = weight_kg - fat_kg - BASELINE_GLYCOGEN_KG, weight_kg - fat_kg
    activity = ops.maximum(((1.0 - THERMIC_SHARE) * maintenance_kcal - resting_kcal) / weight_kg, 0.0)
    offset = offset_kcal(maintenance_kcal, activity, fat_kg, lean, GLYCOGEN_KG, 0.0, 0.0)
    carbohydrate, water = maintenance_kcal * carbohydrate_share, TRAINING_WATER_KG * new_training
    model = new_tuple(
        BodyModel,
        (
            maintenance_kcal, carbohydrate, offset, activity, free, experience_years, training_dose, water,
            *_responses,
        ),
    )  # fmt: skip
    return model, new_tuple(BodyState, (fat_kg, lean, GLYCOGEN_KG, 0.0, 0.0, 0.0, 0.0, 0.0))


@inlined
def offset_kcal(
    maintenance_kcal: Number,
    activity_kcal_per_kg: Number,
    fat_kg: Number,
    lean_kg: Number,
    glycogen_kg: Number,
    water_kg: Number,
    gut_kg: Number,
) -> Number:
    """The constant term by which maintenance intake, ordinary training and a body's parts store no energy [kcal/d]."""
    # The training-driven term is left out: what it costs (a few kcal/d) belongs to growth, not to upkeep.
    return (
        maintenance_kcal
        - FAT_UPKEEP * fat_kg
        - LEAN_UPKEEP * lean_kg
        - activity_kcal_per_kg * scale_weight(fat_kg, lean_kg, glycogen_kg, water_kg, gut_kg)
    )


def current_maintenance_kcal(model: BodyModel, state: BodyState) -> Number:
    """The intake at which tissue energy is steady at ``state`` today, with the adaptation present now [kcal/d].

    Solves expenditure(intake) = intake with the thermic share of the change. A log teaches another quantity, settled
    maintenance: the intake at which tissue holds once adaptation has followed intake there.
    """
    fat, lean, glycogen, water, gut, adaptation, _, _ = state
    return maintenance_of(model, fat, lean, scale_weight(fat, lean, glycogen, water, gut), adaptation)


def still_saved_kcal(state: BodyState, ops: Elementwise = FLOATS) -> Number:
    """What maintenance rises by as a body forgets that it has eaten less, at the same weight [kcal/d]."""
    return ops.maximum(-state.adaptation_kcal, 0.0) / (1.0 - THERMIC_SHARE)


@compiled
def bodies_of(
    model: BodyModel, states: Sequence[BodyState], *, ops: Elementwise = FLOATS
) -> list[tuple[Number, Number, Number, Number]]:
    """Scale weight and fat mass [kg], maintenance [kcal/d] and carried mass [kg] of each of the states."""
    found = []
    for fat, lean, glycogen, water, gut, adaptation, _, _ in states:
        weight = scale_weight(fat, lean, glycogen, water, gut)
        maintenance = maintenance_of(model, fat, lean, weight, adaptation)
        found.append((weight, fat, maintenance, carried_mass(glycogen, water, gut)))
    return found


@inlined
def maintenance_of(
    model: BodyModel, fat_kg: Number, lean_kg: Number, weight_kg: Number, adaptation_kcal: Number
) -> Number:
    """``current_maintenance_kcal`` from the parts of a state."""
    fixed = (
        model.offset_kcal
        + FAT_UPKEEP * fat_kg
        + LEAN_UPKEEP * lean_kg
        + model.activity_kcal_per_kg * weight_kg
        + adaptation_kcal
    )
    return (fixed - THERMIC_SHARE * model.maintenance_kcal) / (1.0 - THERMIC_SHARE)
