"""Maintenance from two kinds of evidence: the equations as prior, the log as likelihood.

On the member's own logging scale it is the intake *as this person logs it* at which tissue is steady, which is what
they can act on. The physical estimate stands beside it; the two differ by the logging ratio.
"""

import math

import msgspec

from ..measures import (
    EXPENDITURE_BELIEVED,
    EXPENDITURE_REFUSED,
    EXPENDITURE_SURELY_BELIEVED,
    check_expenditure,
)
from ..numbers import Estimate, Number
from ..register import HALL_CHOW_2011, SANGHVI_2015, Basis, Kind, Message, constant, equation, say, traced
from . import kernel as k
from .logging_scale import LOGGING_RATIO, LOGGING_RATIO_LEAST, LOGGING_RATIO_SD
from .witnesses import LogFit, mixed

_LEAST_WORTH = 0.3  # five SDs below what the body model says, where a log says that no body is behind it
ILLNESS_SHARE = constant(
    "illness_under_resting", 0.05, unit="1", basis=Basis.JUDGEMENT,
    summary="Odds of an illness that lowers expenditure where a log holds less than resting energy: rare beside food "
    "that was not logged and an equation that errs, and named since a clinician can tell",
)  # fmt: skip


class LogMaintenance(msgspec.Struct, frozen=True):
    """Maintenance with the share of its evidence from the equations and from the log (they add up to 1).

    ``doubt``: what may be behind a log of less than resting energy, where it is one.
    """

    maintenance: Estimate  # on the logging scale
    physical: Estimate
    logging_ratio: Estimate
    prior_share: Number
    log_share: Number
    doubt: Message | None = None


def odds_of_logging(found: LogMaintenance, prior: Estimate, least_spent_kcal: float, moved: float = 1.0) -> float:
    """Odds, 0 to 1, that logging rather than expenditure is behind what a log says against the equations (``prior``).

    Each by how far it would have to be off, in its own SD; nobody spends under ``least_spent_kcal``. ``moved`` is what
    counted steps make of the odds of expenditure.
    """
    ratio, spent = found.logging_ratio.mean, found.physical.mean
    if spent < least_spent_kcal:
        ratio, spent = found.maintenance.mean / least_spent_kcal, least_spent_kcal
    # The normal distribution about a log of next to nothing may have its mean under it.
    ratio = max(ratio, LOGGING_RATIO_LEAST)
    drawn = abs(math.log(ratio / LOGGING_RATIO)) * LOGGING_RATIO / LOGGING_RATIO_SD
    shifted = moved * abs(math.log(spent / prior.mean)) * prior.mean / prior.sd
    return drawn / (drawn + shifted) if drawn + shifted > 0.0 else 0.5


@equation(
    "log_maintenance",
    summary="Maintenance from the equations (prior) and the log (likelihood), on both scales",
    formula=(
        f"prior on the logging scale = {LOGGING_RATIO:g} (SD {LOGGING_RATIO_SD:g}) x equations, or the equations where "
        "no food was logged; posterior of ratio, "
        "maintenance and energy of a kilogram together; share of the log = 1 - posterior / prior variance, relative"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(HALL_CHOW_2011, SANGHVI_2015),
    valid_range="adults with dated weighings; without intakes the equations stay in charge",
)
def maintenance_from_fit(fit: LogFit) -> LogMaintenance:
    """The combined estimate on the last day of a fitted log."""
    prior, physical_prior = fit.prior, fit.physical_prior
    ratio_prior = Estimate(LOGGING_RATIO, LOGGING_RATIO_SD)
    if not fit.is_logged:
        # What is told is taken for what is eaten, as without any log.
        return LogMaintenance(prior, physical_prior, Estimate(1.0, LOGGING_RATIO_SD), 1.0, 0.0)
    logged, physical, ratio = [], [], []
    g = fit.per_kcal
    for one in fit.told:
        alpha, beta, energy = one.mean[1], one.mean[2], one.mean[3]
        # Tissue of a kilocalorie against what the body model says; alpha and beta hold it as a factor.
        worth = max(1.0 + energy, _LEAST_WORTH)
        # Relative covariances of alpha, beta and the energy of a kilogram.
        spread, n = one.spread, k.STATES
        aa, bb, ee = spread[k.ALPHA_ALPHA] / alpha**2, spread[k.BETA_BETA] / beta**2, spread[3 * n + 3]
        ab, ae, be = spread[k.ALPHA_BETA] / (alpha * beta), spread[n + 3] / alpha, spread[2 * n + 3] / beta
        spent, fraction, eaten = 1000.0 * beta / alpha, 1000.0 * g * worth / alpha, beta / (g * worth)
        logged.append((one.probability, spent, spent**2 * (aa + bb - 2.0 * ab)))
        ratio.append((one.probability, fraction, fraction**2 * (aa + ee - 2.0 * ae)))
        physical.append((one.probability, eaten, eaten**2 * (bb + ee - 2.0 * be)))
    found = _kept(mixed(logged), prior, fit.kept[-1])
    found = Estimate(found.mean, math.hypot(found.sd, LOGGING_RATIO * fit.growth_sd_kcal))
    relative = (found.sd / found.mean) / (prior.sd / prior.mean)
    share = min(1.0, max(0.0, 1.0 - relative**2))
    return LogMaintenance(
        found,
        _kept(mixed(physical), physical_prior, fit.kept[-1]),
        _kept(mixed(ratio), ratio_prior, fit.kept[-1]),
        1.0 - share,
        share,
    )


def as_believed(found: LogMaintenance, prior: Estimate, resting_kcal: float) -> LogMaintenance:
    """``found`` of one person, its physical estimate that of the equations where the log's is one that no body has.

    What hardly any body has is believed in part: a log of one meal more turns nobody's expenditure into another.
    Where less than resting energy is logged something was left out, or the equations err for this body, or it is ill.
    Raises: ``OutOfDomain`` where the log says more than any body spends.
    """
    if found.physical.mean > EXPENDITURE_REFUSED * resting_kcal:
        check_expenditure(found.physical.mean, resting_kcal, "log")
    if found.maintenance.mean < resting_kcal and found.log_share > 0.0:
        found = msgspec.structs.replace(found, doubt=_doubt(found, prior, resting_kcal))
    fades = EXPENDITURE_SURELY_BELIEVED - EXPENDITURE_BELIEVED
    share = (found.physical.mean / resting_kcal - EXPENDITURE_BELIEVED) / fades
    if share >= 1.0:
        return found
    kept = _by_equations(found, prior)
    return kept if share <= 0.0 else _in_part(found, kept, share)


def _in_part(found: LogMaintenance, kept: LogMaintenance, share: float) -> LogMaintenance:
    """What is believed to a ``share``, and else what is ``kept`` in its place."""

    def both(of_log: Estimate, other: Estimate) -> Estimate:
        return mixed([(share, of_log.mean, of_log.sd**2), (1.0 - share, other.mean, other.sd**2)])

    return msgspec.structs.replace(
        found,
        maintenance=both(found.maintenance, kept.maintenance),
        physical=both(found.physical, kept.physical),
        logging_ratio=both(found.logging_ratio, kept.logging_ratio),
    )


def _by_equations(found: LogMaintenance, prior: Estimate) -> LogMaintenance:
    """A log of which only the food counts: the physical estimate is that of the equations."""
    least = LOGGING_RATIO_LEAST * prior.mean
    settled = found.maintenance
    if settled.mean < least:
        settled = Estimate(least, settled.sd)
    ratio = settled.mean / prior.mean
    spread = ratio * ((settled.sd / settled.mean) ** 2 + (prior.sd / prior.mean) ** 2) ** 0.5
    return LogMaintenance(
        settled,
        Estimate(prior.mean, prior.sd),
        Estimate(ratio, spread),
        found.prior_share,
        found.log_share,
        found.doubt,
    )


@traced
def _doubt(found: LogMaintenance, prior: Estimate, resting_kcal: float) -> Message:
    """The likely causes with their odds, which add up to 100; nobody is accused."""
    unlogged = odds_of_logging(found, prior, EXPENDITURE_BELIEVED * resting_kcal)
    ill = round(100.0 * ILLNESS_SHARE)
    left_out = round((100 - ill) * unlogged)
    return say(
        "LOG_UNDER_RESTING",
        unlogged_percent=left_out,
        equation_percent=100 - ill - left_out,
        illness_percent=ill,
    )


def _kept(found: Estimate, prior: Estimate, kept: float) -> Estimate:
    """Drawn back to the prior by what may be unlogged intake."""
    mean = prior.mean + kept * (found.mean - prior.mean)
    return Estimate(mean, math.sqrt(kept * kept * found.sd**2 + (1.0 - kept) * prior.sd**2))
