"""Mean intake over a window read from weight alone, for people who do not log food.

``intake = maintenance + rho (change of tissue) / days``, the linearised energy balance solved for intake. The bank runs
without any intake: energy balance is then a slowly wandering state of its own.
"""

from array import array
from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple

from ..body import home_noise_variance
from ..numbers import FLOATS, Elementwise, Estimate, Number, compiled, row_of
from ..register import HALL_CHOW_2011, SANGHVI_2015, Basis, Kind, constant, equation
from . import kernel as k
from .entries import DailyLog, first_weight
from .tissue_model import TissueModel
from .witness_errors import (
    LINGERS,
    START_SD_KG,
    WATER_SD_KG,
    settings_of,
)
from .witnesses import change_under, mixed, run_bank

BALANCE_SD = constant(
    "unlogged_balance_sd", 0.20, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of a lasting energy balance, as a fraction of maintenance, of someone of whom no intake is known",
)  # fmt: skip
BALANCE_DRIFT = constant(
    "unlogged_balance_drift", 40.0, unit="kcal/d per root day", basis=Basis.JUDGEMENT,
    summary="How an unlogged energy balance wanders (210 kcal/d over four weeks)",
)  # fmt: skip
CARRIED_UNKNOWN_KG = constant(
    "unlogged_carried_sd", 0.3, unit="kg", basis=Basis.JUDGEMENT,
    summary="SD of the change of carried mass over a window when nothing is known of intake",
)  # fmt: skip


# Without a log of food little tells explanations apart: few are worth their time.
_SPLITS_FROM_SD = 3.0


class TrendChoice(StrEnum):
    """What can be read out of a log beside its trend, where somebody asks."""

    IMPLIED_INTAKE = "implied_intake"


class ImpliedIntake(NamedTuple):
    """Mean intake over the last ``days`` [kcal/d, physical scale], read from weight alone."""

    days: int
    intake_kcal: Estimate


@equation(
    "implied_intake",
    summary="Mean intake over a window from the path of weight alone",
    formula="maintenance + epsilon (mean tissue - tissue now) + rho (change of tissue / days - growth)",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(HALL_CHOW_2011, SANGHVI_2015),
    valid_range="adults at steady habits; on the physical scale, maintenance by the equations",
)
def implied_intakes(
    log: DailyLog, maintenance: Estimate, tissue: TissueModel, windows: Sequence[int]
) -> list[ImpliedIntake]:
    """Mean intake over the last days of a log, for each of ``windows`` (in days, shorter than the log).

    Args: ``maintenance`` by the equations on the physical scale, at the last day's body. No intake of the log is used.
    """
    days = len(log.weight_kg)
    level = first_weight(log, FLOATS)
    noise = home_noise_variance(level)
    rho = tissue.rho_kcal_per_kg
    columns = array("d", bytes(8 * k.COLUMNS * days))
    columns[k.WEIGHED :: k.COLUMNS] = row_of(log.weight_kg)
    columns[k.SEEN :: k.COLUMNS] = row_of(log.is_weighed)
    columns[k.SCALE :: k.COLUMNS] = row_of(log.noise_scale)
    settings = settings_of(tissue, noise)
    # Energy balance as such wanders; alpha, which no intake moves, is 1 and known.
    settings[k.PULL] = settings[k.ALPHA_DRIFT] = settings[k.STAYS] = 0.0
    settings[k.BETA_DRIFT] = (BALANCE_DRIFT / rho) ** 2
    start = array("d", bytes(8 * (k.STATES + k.STATES**2)))
    start[0], start[1] = level, 1.0
    for at, variance in (
        (0, START_SD_KG**2),
        (2, (BALANCE_SD * maintenance.mean / rho) ** 2),
        (5, WATER_SD_KG**2),
        (6, noise * LINGERS),
    ):
        start[k.STATES + at * (k.STATES + 1)] = variance
    settings[k.SPLITS_FROM] = _SPLITS_FROM_SD**2
    passed = run_bank(columns, settings, start, days, with_then=False, least_told=0.2)
    tissues = passed.now[6 * days : 7 * days]
    last = days - 1
    found = []
    for window in windows:
        then = last - window
        change = mixed([change_under(one, k.TISSUE, last, then) for one in passed.told])
        variance = change.sd**2 + CARRIED_UNKNOWN_KG**2
        rate = change.mean / window - tissue.growth_kg_per_day
        # Expenditure followed tissue: on the way to the last day's body it differed from that day's.
        mean_tissue = _mean_from(tissues, then)
        then_spent = tissue.expenditure_slope_kcal_per_kg_day * (mean_tissue - tissues[last])
        found.append(
            ImpliedIntake(
                window,
                Estimate(
                    maintenance.mean + then_spent + rho * rate,
                    (
                        maintenance.sd**2
                        + rho * rho * variance / (window * window)
                        + (tissue.rho_sd * rate) ** 2
                        + (rho * tissue.growth_sd) ** 2
                    )
                    ** 0.5,
                ),
            )
        )
    return found


@compiled
def _mean_from(values: Sequence[Number], first: int, *, ops: Elementwise = FLOATS) -> Number:
    """Mean of the values from the ``first``-th on."""
    total: Number = 0.0
    for index in range(first, len(values)):
        total = total + values[index]
    return total / (len(values) - first)
