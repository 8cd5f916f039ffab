"""What the scale taught about the maintenance of somebody who hardly logs food, as the next answer counts it.

A review reads their phase as if they had eaten what they were told: the intake, as told, at which their weight holds.
The next plan tells them again what to eat, so that it starts from there. It is no log: how much is eaten of what is
told may differ from one phase to the next, and what is logged afterwards takes its place.
"""

import math

from ..body import ADHERENCE_SPREAD
from ..log import RATIO_DRIFT, Log, LogMaintenance
from ..measures import EXPENDITURE_BELIEVED, check_expenditure
from ..numbers import Estimate
from ..register import Basis, Kind, constant, equation, traced
from .told import Steered

FADES_DAYS = constant(
    "steered_fades", 14.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Days with food logged since the scale taught somebody's maintenance, after which that counts for half",
)  # fmt: skip


def days_logged_since(log: Log | None, day: int) -> int:
    """Days from a day on with food in the log."""
    return 0 if log is None else len({entry.day for entry in log.intakes if entry.day >= day and entry.is_whole})


@traced
def still_counts(log: Log | None, taught: Steered) -> bool:
    """Whether what the scale taught counts for more than what was logged since."""
    return days_logged_since(log, taught.day) < FADES_DAYS


def with_error(taught: Steered, day: int) -> Estimate:
    """What the scale taught, with the error that it has on a day, in another phase.

    How much of what is told is eaten differs between two phases (hence the root of two), and body and habit drift.
    """
    mean = taught.maintenance.mean
    drift = RATIO_DRIFT * math.sqrt(max(0, day - taught.day))
    return Estimate(
        mean, math.hypot(taught.maintenance.sd, mean * math.hypot(math.sqrt(2.0) * ADHERENCE_SPREAD, drift))
    )


@equation(
    "steered_maintenance",
    summary="Maintenance that the scale taught of somebody who hardly logs food, beside what their log says since",
    formula=(
        "precision-weighted mean of what was taught, precision x 1 / (1 + (n / steered_fades)^2), and of the log, "
        "precision x the rest; n days logged since; error of what was taught: that of its review, 2^0.5 x "
        "adherence_spread and the drift of a logging ratio; the ratio never falls by it"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="after a review of a phase in which hardly any food was logged; not in pregnancy",
)
def with_steering(
    found: LogMaintenance, taught: Steered, log: Log | None, day: int, resting_kcal: float
) -> LogMaintenance:
    """``found`` of the log, or of the equations where no food was ever logged, with what the scale ``taught``.

    The rails ask how much is eaten of what is told, of which the scale says nothing: so the logging ratio may rise by
    it and never falls, and no maintenance is believed that no body has on that ratio. Raises ``OutOfDomain`` for one
    that is more than any body spends.
    """
    ratio, of_log, scale = found.logging_ratio, found.maintenance, with_error(taught, day)
    check_expenditure(max(scale.mean / ratio.mean, EXPENDITURE_BELIEVED * resting_kcal), resting_kcal, "state.steered")
    fades = 1.0 / (1.0 + (days_logged_since(log, taught.day) / FADES_DAYS) ** 2)
    counts, counts_log = fades / max(1.0, scale.sd) ** 2, (1.0 - fades) / max(1.0, of_log.sd) ** 2
    mean = (counts * scale.mean + counts_log * of_log.mean) / (counts + counts_log)
    mean = max(mean, min(of_log.mean, EXPENDITURE_BELIEVED * resting_kcal * ratio.mean))
    maintenance = Estimate(mean, (counts + counts_log) ** -0.5)
    ratio = Estimate(ratio.mean * max(1.0, mean / of_log.mean), ratio.sd) if found.log_share else ratio
    physical = Estimate(mean / ratio.mean, maintenance.sd / ratio.mean)
    shrunk = (maintenance.sd / mean) / (of_log.sd / of_log.mean)
    prior_share = min(1.0, found.prior_share * shrunk**2)
    return LogMaintenance(maintenance, physical, ratio, prior_share, 1.0 - prior_share)
