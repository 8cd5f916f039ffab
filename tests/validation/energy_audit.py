"""Where the energy of the model goes, recomputed term by term beside it."""

import math
from typing import NamedTuple

import numpy as np
from steelyard.science.body import constants as bc
from steelyard.science.body import energy_balance as eb
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.forecasting import stored_kcal
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate

# A man of 80 kg, 180 cm, 30 years with 12 kg fat: Mifflin 1990 gives 1780 kcal/d at rest; activity level 1.6.
RESTING, MAINTENANCE = 1780.0, 2848.0


def reference_man(**changed: float) -> tuple[BodyModel, BodyState]:
    """Calibrated to the published model: what the service adds to it is left out unless ``changed`` says otherwise."""
    model, state = calibrate(weight_kg=80.0, fat_kg=12.0, maintenance_kcal=MAINTENANCE, resting_kcal=RESTING)
    plain = {
        "gut_kg": 0.0, "salt_water_kg": 0.0, "sodium_by_carbohydrate_mg": 4000.0, "surplus_activity_share": 0.0,
        "surplus_lean_factor": 1.0, "level_partition": 0.0, "surplus_without_protein": 1.0, "deficit_rate_effect": 0.0,
        "fat_free_kg": 1e12,  # no ceiling on lean
    }  # fmt: skip
    return model._replace(**{**plain, **changed}), state


def lifter(*, years: float = 0.25, weight_kg: float = 80.0, fat_kg: float = 14.0) -> tuple[BodyModel, BodyState]:
    return calibrate(
        weight_kg=weight_kg,
        fat_kg=fat_kg,
        maintenance_kcal=MAINTENANCE,
        resting_kcal=RESTING,
        experience_years=years,
        training_dose=1.0,
    )


def eating(change_kcal: float, protein_g_per_kg: float = bc.PROTEIN_ORDINARY, maintenance: float = MAINTENANCE) -> Diet:
    """Intake changed from maintenance at the usual share of carbohydrate."""
    intake = maintenance + change_kcal
    return Diet(intake, 0.5 * intake, protein_g_per_kg)


class Path(NamedTuple):
    model: BodyModel
    state: BodyState
    diets: list[Diet]


PATHS = {
    "deficit": Path(*reference_man(), [eating(-500)]),
    "deep_deficit_low_carbohydrate": Path(
        *lifter(), [Diet(MAINTENANCE - 900, 350.0, 2.2, sodium_change_mg=-1500.0, thermic_shift_kcal=40.0)]
    ),
    "surplus": Path(
        *reference_man(surplus_lean_factor=0.8, fat_free_kg=68.0, surplus_activity_share=0.1, salt_water_kg=0.9),
        [eating(600)],
    ),
    "novice_in_a_small_deficit": Path(*lifter(years=0.0), [eating(-200, 2.0)]),
    "trained_in_a_surplus_with_more_activity": Path(
        *lifter(years=2.5), [eating(300, 1.8)._replace(activity_change_kcal_per_kg=1.5)]
    ),
    "cut_hold_gain": Path(*lifter(years=2.5), [eating(-700, 2.0), eating(-150, 1.8), eating(250, 1.8)]),
}


def expenditure(
    model: BodyModel, diet: Diet, fat: float, lean: float, carried: float, adaptation: float, rates: tuple[float, float]
) -> float:
    """Expenditure term by term as Hall 2011 writes it, synthesis of both tissues included [kcal/d]."""
    return (
        model.offset_kcal
        + bc.FAT_UPKEEP * fat
        + bc.LEAN_UPKEEP * lean
        + (model.activity_kcal_per_kg + diet.activity_change_kcal_per_kg) * (fat + lean + carried)
        + bc.THERMIC_SHARE * (diet.intake_kcal - model.maintenance_kcal)
        + diet.thermic_shift_kcal
        + adaptation
        + bc.FAT_SYNTHESIS * rates[0]
        + bc.LEAN_SYNTHESIS * rates[1]
    )


def mean_adaptation(before: BodyState, model: BodyModel, diet: Diet, days: float) -> float:
    """Mean over the step of the exponential approach to its resting value, by its integral."""
    change = diet.intake_kcal - model.maintenance_kcal
    rest = model.adaptation_share * change + model.surplus_activity_share * max(change, 0.0)
    tau = bc.ADAPTATION_DAYS
    return rest + (before.adaptation_kcal - rest) * tau / days * (1 - math.exp(-days / tau))


def tissue_at_midpoint(
    model: BodyModel, diet: Diet, before: BodyState, after: BodyState, days: float
) -> tuple[float, float]:
    """Fat and lean half a step on, at the rates of the step's start; the rates solved as linear equations."""
    glycogen_flow = bc.GLYCOGEN_ENERGY * (after.glycogen_kg - before.glycogen_kg) / days
    carried = 0.5 * sum(s.weight_kg - s.fat_kg - s.lean_kg for s in (before, after))
    fat, lean = before.fat_kg, before.lean_kg
    upkeep = expenditure(model, diet, fat, lean, carried, mean_adaptation(before, model, diet, days), (0.0, 0.0))
    gap = diet.intake_kcal - glycogen_flow - upkeep
    share = bc.PARTITION_KG / (bc.PARTITION_KG + fat)
    response = (diet.protein_g_per_kg - 0.8) / (1.62 - 0.8)
    years = model.experience_years + model.training_dose * (before.day + days / 2) / 365.25
    beginner = model.training_gain * model.fat_free_kg
    freshness = 1 / (1 + years)
    if gap > 0:
        share += model.level_partition * (bc.LEVEL_SHARE - share)
        without = model.surplus_without_protein
        share *= without + (1 - without) * min(max(response, -0.25), 1.0)
        share *= model.surplus_lean_factor * (1 + bc.SURPLUS_TRAINED_BOOST * model.training_dose)
        share *= model.partition_scale
        ceiling = bc.SURPLUS_LEAN_CEILING * model.fat_free_kg * max(freshness, bc.LEAN_CEILING_FLOOR)
        share /= 1 + max(share, 0.0) * gap / (bc.LEAN_ENERGY * ceiling)
        supply = 0.0
    else:
        supply = -gap / (bc.FAT_SUPPLY_LIMIT * fat)
        share *= eb.deficit_factor(model, diet.protein_g_per_kg)
        share *= 1 + model.deficit_rate_effect * (supply / (1 + supply) - 0.5)
    protein = (1 + bc.PROTEIN_GAIN_BOOST * min(max(response, 0.0), 1.0)) / (1 + bc.PROTEIN_GAIN_BOOST)
    kept = bc.GROWTH_KEPT_BY_PROTEIN * min(max((diet.protein_g_per_kg - 0.8) / (2.0 - 0.8), 0.0), 1.0)
    grown = beginner * model.training_dose * freshness * protein
    grown *= math.exp(-(1 - kept) * supply)
    _stored, fat_rate, lean_rate = np.linalg.solve(
        np.array(
            [
                [1.0, bc.FAT_SYNTHESIS, bc.LEAN_SYNTHESIS],
                [-share / bc.LEAN_ENERGY, 0.0, 1.0],
                [-1.0, bc.FAT_ENERGY, bc.LEAN_ENERGY],
            ]
        ),
        np.array([gap, grown, 0.0]),
    )
    return fat + 0.5 * days * float(fat_rate), lean + 0.5 * days * float(lean_rate)


def step_residuals(name: str, days: float, steps: int = 6) -> list[float]:
    """For each step of a path, (intake - expenditure - stored) / stored: zero where energy is conserved."""
    model, state, diets = PATHS[name]
    residuals = []
    for diet in diets:
        for _ in range(steps):
            after = advance(model, state, diet, days)
            fat, lean = tissue_at_midpoint(model, diet, state, after, days)
            carried = 0.5 * sum(s.weight_kg - s.fat_kg - s.lean_kg for s in (state, after))
            rates = ((after.fat_kg - state.fat_kg) / days, (after.lean_kg - state.lean_kg) / days)
            spent = expenditure(model, diet, fat, lean, carried, mean_adaptation(state, model, diet, days), rates)
            stored = stored_kcal(state, after)
            residuals.append(((diet.intake_kcal - spent) * days - stored) / stored)
            state = after
    return residuals


def path_residual(name: str, step: float = 0.05, steps: int = 200) -> float:
    """The same over a path of small steps, with momentary expenditure summed by Simpson's rule from states alone."""
    model, state, diets = PATHS[name]
    taken = stored = 0.0
    for diet in diets:
        for _ in range(steps):
            first, middle = state, advance(model, state, diet, step / 2)
            last = advance(model, middle, diet, step / 2)
            rates = ((last.fat_kg - first.fat_kg) / step, (last.lean_kg - first.lean_kg) / step)
            spent = sum(
                share
                * expenditure(
                    model, diet, s.fat_kg, s.lean_kg, s.weight_kg - s.fat_kg - s.lean_kg, s.adaptation_kcal, rates
                )
                for s, share in ((first, 1 / 6), (middle, 4 / 6), (last, 1 / 6))
            )
            taken += (diet.intake_kcal - spent) * step
            stored += stored_kcal(first, last)
            state = last
    return (taken - stored) / stored
