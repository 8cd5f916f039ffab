"""What a log says of maintenance in pregnancy, in which weight rises by what is no surplus eaten."""

from ..log import LOGGING_RATIO, LogMaintenance
from ..measures import EXPENDITURE_REFUSED
from ..numbers import Estimate
from ..register import traced
from .told import ToldBefore


@traced
def without_gestation(
    found: LogMaintenance, prior_kcal: float, resting_kcal: float, before: ToldBefore | None
) -> LogMaintenance:
    """``found`` of a log in pregnancy, which moves neither physical maintenance nor the share of it that is logged.

    To the reader, who knows of fat and lean tissue alone, what grows is eating beyond the log. On which day of a
    pregnancy a log stands nobody tells, so that it cannot be taken off: what was known ``before`` stands, or at least
    the usual ratio where nothing was, and no less maintenance than by the equations (``prior_kcal``) for today's body.
    What was known comes from outside: no more of it is believed than a body spends at rest (``resting_kcal``) allows.
    """
    ratio, physical, settled = found.logging_ratio, found.physical, found.maintenance
    logged = max(ratio.mean, LOGGING_RATIO) if before is None else min(1.0, before.ratio)
    known = physical.mean if before is None else min(before.physical_kcal, EXPENDITURE_REFUSED * resting_kcal)
    eaten = max(prior_kcal, known)
    return LogMaintenance(
        Estimate(max(settled.mean, logged * eaten), settled.sd),
        Estimate(eaten, physical.sd),
        Estimate(logged, ratio.sd),
        found.prior_share,
        found.log_share,
    )
