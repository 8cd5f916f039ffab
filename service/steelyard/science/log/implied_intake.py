"""Mean intake over a window read from weight alone, for people who do not log food.

``intake = maintenance + rho (change of tissue) / days``, the linearised energy balance solved for intake. The filter
runs without any intake: energy balance is then a slowly wandering state of its own.
"""

from collections.abc import Sequence
from typing import NamedTuple

from ..body import prior_noise
from ..numbers import FLOATS, Elementwise, Estimate, Number, compiled
from ..register import HALL_CHOW_2011, SANGHVI_2015, Basis, Kind, constant, equation
from .entries import DailyLog, first_weight
from .filter import DailySeries, FilterSettings, Start, filter_weights
from .noise import learn_noise
from .smoother import smooth_weights
from .tissue_model import TissueModel

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
START_SD_KG = 5.0  # of tissue around the first weighing: wide, so that the log alone sets the level


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
    log: DailyLog, maintenance: Estimate, tissue: TissueModel, windows: Sequence[int], ops: Elementwise = FLOATS
) -> list[ImpliedIntake]:
    """Mean intake over the last days of a log, for each of ``windows`` (in days, shorter than the log).

    Args: ``maintenance`` by the equations on the physical scale, at the last day's body. No intake of the log is used.
    """
    days = len(log.weight_kg)
    weights = log.weight_kg
    level = first_weight(log, ops)
    noise = prior_noise(level, ops)
    # Weight less nothing: what tissue does in four weeks is near enough a line, which the noise is read around.
    noise = learn_noise(weights, log.is_weighed, noise, [days], ops=ops)[0]
    rho = tissue.rho_kcal_per_kg
    nothing = 0.0 * level
    series = DailySeries(weights, log.is_weighed, log.noise_scale, [nothing] * days, [nothing] * days)
    settings = FilterSettings(
        rho, 0.0, noise.variance, noise.autocorrelation, BALANCE_DRIFT**2, growth_kg_per_day=tissue.growth_kg_per_day
    )
    start = Start(level, START_SD_KG**2, nothing, (BALANCE_SD * maintenance.mean) ** 2)
    filtered = filter_weights(series, settings, start, watches_jumps=False, ops=ops)
    last = days - 1
    path = smooth_weights(filtered, series, change_days=[last, *(last - window for window in windows)], ops=ops)
    found = []
    for window in windows:
        then = last - window
        change = path.tissue[last] - path.tissue[then]
        own, shared, _ = path.changes[then]
        variance = path.changes[last][0] + own - 2.0 * shared + CARRIED_UNKNOWN_KG**2
        rate = change / window - tissue.growth_kg_per_day
        # Expenditure followed tissue: on the way to the last day's body it differed from that day's.
        mean_tissue = _mean_from(path.tissue, then, ops=ops)
        then_spent = tissue.expenditure_slope_kcal_per_kg_day * (mean_tissue - path.tissue[last])
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
