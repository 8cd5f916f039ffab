"""The energy-balance equations as continuous differential equations, written again from the papers.

An oracle for the service's integrator: it shares no code and no constant with it. States and equations after
Hall KD et al. Lancet 2011;378:826-37 (doi 10.1016/S0140-6736(11)60812-X) and its web appendix; energy densities
from Hall KD. Int J Obes 2008;32:573-6 (doi 10.1038/sj.ijo.0803720); partition after Forbes GB. Ann N Y Acad Sci
2000;904:359-65. What the service adds to them (gut content, salt water, spontaneous activity, factors on the lean
share, the training-driven lean term) is written here from its description in the catalogue of methods.
"""

import math
from typing import NamedTuple

import numpy as np
from scipy.integrate import solve_ivp

RHO_FAT, RHO_LEAN, RHO_GLYCOGEN = 9441.0, 1816.0, 4206.0  # kcal/kg: 39.5, 7.6 and 17.6 MJ/kg
KJ = 4.184


class Costs(NamedTuple):
    """Resting costs [kcal/kg/d] and synthesis costs [kcal/kg] of fat and lean tissue."""

    rest_fat: float = 13.0 / KJ
    rest_lean: float = 92.0 / KJ
    build_fat: float = 750.0 / KJ
    build_lean: float = 960.0 / KJ


EXACT_COSTS = Costs()
ROUNDED_COSTS = Costs(3.2, 22.0, 180.0, 230.0)  # as often printed, in kcal


class Subject(NamedTuple):
    """A body at energy balance. Masses kg, energies kcal/d."""

    weight: float
    fat: float
    maintenance: float
    resting: float
    carbohydrate_share: float = 0.5
    deficit_factor: float = 1.0  # on the Forbes share of energy in a deficit
    surplus_factor: float = 1.0
    ceiling: float = math.inf  # most surplus-driven lean of a beginner, kg/d
    beginner_gain: float = 0.0  # training-driven lean of a beginner on this protein, kg/d
    experience_years: float = 0.0
    is_training: bool = False
    gut: float = 0.5
    salt: float = 1.0  # bound of the answer of salt water, kg; 0 leaves it out
    water_by_carbohydrate: float = 1000.0  # mg/d of sodium; 4000 in the published model
    moving: float = 0.10  # of a surplus, in spontaneous activity
    rate_effect: float = 0.3  # of the size of a deficit on the lean share
    level: float = 0.5  # how far the lean share of a surplus is the same for all
    fade: float = 1.0  # of training-driven gain with the deficit
    costs: Costs = EXACT_COSTS


class Eating(NamedTuple):
    """A diet held for ``days``: intake and carbohydrate in kcal/d, sodium change in mg/d."""

    days: float
    intake: float
    carbohydrate: float
    sodium: float = 0.0


# State vector: fat, lean, glycogen, water deviation, gut deviation, adaptation, water taken back.
def start(subject: Subject) -> np.ndarray:
    return np.array([subject.fat, subject.weight - subject.fat - 0.5 * 3.7, 0.5, 0.0, 0.0, 0.0, 0.0])


def weight(state: np.ndarray) -> float:
    fat, lean, glycogen, water, gut, _, _ = state
    return float(fat + lean + glycogen * (1 + 2.7) + water + gut)


def rates(t: float, state: np.ndarray, subject: Subject, eating: Eating) -> np.ndarray:
    """Time derivatives of the state [1/d]."""
    fat, lean, glycogen, water, gut, adaptation, back = state
    c = subject.costs
    baseline_carbohydrate = subject.carbohydrate_share * subject.maintenance
    change = eating.intake - subject.maintenance
    activity = max(0.0, ((1 - 0.1) * subject.maintenance - subject.resting) / subject.weight)
    lean0 = subject.weight - subject.fat - 1.85
    constant = subject.maintenance - c.rest_fat * subject.fat - c.rest_lean * lean0 - activity * subject.weight

    glycogen_rate = (eating.carbohydrate - baseline_carbohydrate / 0.5**2 * glycogen**2) / RHO_GLYCOGEN
    excess = change / subject.maintenance
    salt = subject.salt * (0.4 * (1 - math.exp(-excess / 0.15)) if excess > 0 else math.exp(excess / 0.15) - 1)
    back_rest = 0.85 * min(salt, 0.0)
    back_rate = (back_rest - back) / (3220.0 / 3000.0 if back_rest > back else 9.0)
    by_carbohydrate = subject.water_by_carbohydrate * (1 - eating.carbohydrate / baseline_carbohydrate)
    # What has been taken back is part of the deviation already.
    water_rate = (eating.sodium - 3000.0 * (water + back - salt) - by_carbohydrate) / 3220.0 - back_rate
    gut_rate = (subject.gut * change / subject.maintenance - gut) / 1.5
    adaptation_rate = (0.14 * change + subject.moving * max(change, 0.0) - adaptation) / 14.0

    upkeep = constant + c.rest_fat * fat + c.rest_lean * lean + activity * weight(state) + 0.1 * change + adaptation
    gap = eating.intake - RHO_GLYCOGEN * glycogen_rate - upkeep  # before the cost of building tissue
    years = subject.experience_years + t / 365.25 * subject.is_training
    freshness = 1 / (1 + years)
    forbes = 10.4 * RHO_LEAN / RHO_FAT / (10.4 * RHO_LEAN / RHO_FAT + fat)
    supply = max(-gap, 0.0) / (290.0 / KJ * fat)
    if gap > 0:
        share = (forbes + subject.level * (0.12 - forbes)) * subject.surplus_factor
        if math.isfinite(subject.ceiling):
            share /= 1 + share * gap / (RHO_LEAN * subject.ceiling * max(freshness, 0.24))
    else:
        share = forbes * subject.deficit_factor * (1 + subject.rate_effect * (supply / (1 + supply) - 0.5))
    grown = subject.beginner_gain * freshness * math.exp(-subject.fade * supply)

    # Unknown: energy e stored in tissue. lean' = share e / rho_L + grown; fat' = (e - rho_L lean') / rho_F;
    # e = gap - build_fat fat' - build_lean lean'. Linear in e, solved as a system of equations.
    left = np.array([[1.0, c.build_fat, c.build_lean], [-share / RHO_LEAN, 0.0, 1.0], [-1.0, RHO_FAT, RHO_LEAN]])
    _, fat_rate, lean_rate = np.linalg.solve(left, np.array([gap, grown, 0.0]))
    return np.array([fat_rate, lean_rate, glycogen_rate, water_rate, gut_rate, adaptation_rate, back_rate])


def solve(subject: Subject, meals: list[Eating]) -> list[np.ndarray]:
    """The state at the end of each stretch, to a relative tolerance of 1e-10."""
    state, t, ends = start(subject), 0.0, []
    for eating in meals:
        found = solve_ivp(
            rates,
            (t, t + eating.days),
            state,
            method="DOP853",
            rtol=1e-10,
            atol=1e-10,
            args=(subject, eating),
        )
        state, t = found.y[:, -1], t + eating.days
        ends.append(state)
    return ends


def euler(subject: Subject, eating: Eating, step: float) -> np.ndarray:
    """The plainest integration of the same equations."""
    state = start(subject)
    for i in range(round(eating.days / step)):
        state = state + step * rates(i * step, state, subject, eating)
    return state
