"""Each trial predicted by constants refitted without it: how well the model does on what it has not seen.

The constants that the shared trials can tell something of are fitted by least squares to the arms of all other studies,
held near what other evidence says of them (``REFITTED``), and the study left out is then predicted.
"""

from functools import cache
from typing import NamedTuple

import numpy as np
from scipy.optimize import least_squares
from steelyard.science.body.energy_balance import walk
from steelyard.science.body.uncertainty import start_body
from steelyard.science.numbers.estimate import Estimate

from .comparison import QUANTITIES, closes, plan_of
from .trials import Case

# Of a mean of some ten people, and of what a paper leaves open of their intake [kg].
_ERROR_KG = 0.5


class Refitted(NamedTuple):
    """A constant, the field of the model that holds it, and what is known of it without these trials."""

    id: str
    field: str
    prior: Estimate


# Priors: exercise halved the lean share of the loss (Weinheimer 2010); protein spares something between nothing and all
# in people who lift; Forbes (1); 20 +- 15 % of a surplus beyond the cost of digesting it, less the 14 % of Hall 2011;
# the size of first-week water and what of it returns in studies that are no trials here (Hall 2015, Heymsfield 2011).
REFITTED = (
    Refitted("training_sparing", "training_sparing", Estimate(0.5, 0.15)),
    Refitted("protein_sparing_trained", "protein_sparing_trained", Estimate(0.5, 0.3)),
    Refitted("surplus_lean_factor", "surplus_lean_factor", Estimate(1.0, 0.3)),
    Refitted("spontaneous_activity_share", "surplus_activity_share", Estimate(0.06, 0.15)),
    Refitted("adaptive_thermogenesis_share", "adaptation_share", Estimate(0.14, 0.05)),
    Refitted("deficit_rate_effect", "deficit_rate_effect", Estimate(0.3, 0.2)),
    Refitted("salt_water", "salt_water_kg", Estimate(0.9, 0.3)),
    Refitted("salt_water_recovery", "salt_recovery", Estimate(0.5, 0.25)),
)

_SALT_FIELDS = ("salt_water_kg", "salt_recovery")


class LeftOut(NamedTuple):
    """A study left out: the constants refitted without it, and its arms' bias [kg] by quantity."""

    study: str
    constants: tuple[float, ...]
    biases: list[tuple[Case, dict[str, float]]]


def biases_of(case: Case, constants: np.ndarray) -> dict[str, float]:
    """Forecast less measured of one arm under other constants [kg]."""
    model, state = start_body(case.body(Estimate(case.fat_kg, 0.0), Estimate(case.maintenance_kcal, 0.0)))
    model = model._replace(**{of.field: float(value) for of, value in zip(REFITTED, constants, strict=True)})
    first = state
    for diet, lengths in plan_of(case):
        state = walk(model, state, diet, lengths)[-1]
    mass, fat = state.weight_kg - first.weight_kg, state.fat_kg - first.fat_kg
    measured = case.trial.measured
    changes = (measured.body_mass, measured.fat_mass, measured.fat_free_mass)
    found = zip(QUANTITIES, (mass, fat, mass - fat), changes, strict=True)
    return {quantity: float(said - of.change_kg) for quantity, said, of in found if of is not None}


def fit(cases: list[Case]) -> np.ndarray:
    """The constants that these arms call for, beside what else is known of them."""
    return _fitted(cases)[0]


def _fitted(cases: list[Case]) -> tuple[np.ndarray, np.ndarray]:
    """Those constants, and their covariance where the fit is near linear."""
    means = np.array([of.prior.mean for of in REFITTED])
    sds = np.array([of.prior.sd for of in REFITTED])

    def residuals(scores: np.ndarray) -> np.ndarray:
        constants = means + sds * scores
        off = [bias / _ERROR_KG for case in cases for bias in biases_of(case, constants).values()]
        return np.array([*off, *scores])

    found = least_squares(residuals, np.zeros(len(means)), bounds=(-2.5, 2.5))
    return np.asarray(means + sds * found.x), np.linalg.inv(found.jac.T @ found.jac) * np.outer(sds, sds)


class SaltLeft(NamedTuple):
    """Salt water that goes at most [kg], the share taken back, and what so stays off [kg], refitted to all studies."""

    water_kg: Estimate
    recovery: Estimate
    stays_kg: Estimate


@cache
def salt_left(cases: tuple[Case, ...]) -> SaltLeft:
    """What all the trials together say of salt water, beside what is known of it without them."""
    constants, covariance = _fitted([case for case in cases if closes(case) is not False])
    water, recovery = (next(i for i, of in enumerate(REFITTED) if of.field == field) for field in _SALT_FIELDS)
    slope = np.zeros(len(REFITTED))
    slope[water], slope[recovery] = 1.0 - constants[recovery], -constants[water]
    return SaltLeft(
        *(Estimate(float(constants[i]), float(covariance[i, i] ** 0.5)) for i in (water, recovery)),
        Estimate(float(constants[water] * (1.0 - constants[recovery])), float((slope @ covariance @ slope) ** 0.5)),
    )


@cache
def leave_one_out(cases: tuple[Case, ...]) -> tuple[LeftOut, ...]:
    """Every study predicted without it, of those whose numbers close."""
    sound = [case for case in cases if closes(case) is not False]
    studies = list(dict.fromkeys(case.study for case in sound))
    found = []
    for study in studies:
        constants = fit([case for case in sound if case.study != study])
        arms = [(case, biases_of(case, constants)) for case in sound if case.study == study]
        found.append(LeftOut(study, tuple(constants.tolist()), arms))
    return tuple(found)


class Held(NamedTuple):
    """Root mean square and mean bias of one quantity over all arms, each predicted without its study [kg]."""

    quantity: str
    arms: int
    rmse_kg: float
    bias_kg: float
    bias_error_kg: float


def held(found: tuple[LeftOut, ...]) -> list[Held]:
    """The figures of the whole table."""
    rows = []
    for quantity in QUANTITIES:
        biases = np.array([of[quantity] for out in found for _, of in out.biases if quantity in of])
        error = float(biases.std(ddof=1) / len(biases) ** 0.5)
        rows.append(Held(quantity, len(biases), float((biases**2).mean() ** 0.5), float(biases.mean()), error))
    return rows
