"""Why weight did not do what the log leads to expect: explanations by their odds, and what settles it."""

import math
from enum import StrEnum
from typing import NamedTuple

from ..numbers import Estimate
from ..register import Basis, Message, constant, say, traced
from . import kernel as k
from .logging_scale import LOGGING_RATIO
from .maintenance import LogMaintenance, odds_of_logging
from .steps import StepsRead, changed_kcal
from .witnesses import (
    Conclusion,
    LogFit,
    change_under,
    mixed,
)

EXPLAINED_DAYS = 28
LEAST_EXPLAINED_DAYS = 10
TISSUE_OFF_KG = constant(
    "tissue_off_log", 0.175, unit="kg/week", basis=Basis.JUDGEMENT,
    summary="Tissue goes as logged while its weekly rate lies within this of what log and equations lead to expect",
)  # fmt: skip
WATER_OFF_KG = constant(
    "water_off_log", 0.4, unit="kg", basis=Basis.JUDGEMENT,
    summary="Carried mass goes as expected while its change lies within this of what intake leads to expect",
)  # fmt: skip
STEPS_SPREAD_SHARE = constant(
    "steps_share_of_spread", 0.25, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the variance of maintenance around the equations that is a change of movement which steps show",
)  # fmt: skip
_MOST_SAID = 3.0  # of log odds that steps may turn: they see no other movement (judgement)

WEIGH_FOOD = "SETTLE_WEIGH_FOOD"
WAIT_FOR_WATER = "SETTLE_WEIGH_ON"


class Cause(StrEnum):
    """What may explain a change of weight."""

    AS_LOGGED = "as_logged"
    LOGGING = "logging"
    MAINTENANCE = "maintenance"
    WATER = "water"


class Explanation(NamedTuple):
    """A cause and its probability; all of them add up to 1."""

    cause: Cause
    probability: float


class Explained(NamedTuple):
    """The explanations, the likeliest first, what they are of [kg], and what would settle between them."""

    days: int
    tissue_off: Estimate  # change of tissue beyond what the log at its word and the equations lead to expect
    water_off: Estimate  # of carried mass beyond what intake leads to expect
    causes: tuple[Explanation, ...]
    settles: Message | None


def _beyond(limit: float, mean: float, variance: float) -> float:
    """Probability that a normal quantity lies outside plus or minus ``limit``."""
    scale = math.sqrt(2.0 * max(variance, 1e-12))
    return 0.5 * (math.erfc((limit - mean) / scale) + math.erfc((limit + mean) / scale))


@traced
def _odds_by_steps(spent: float, prior: Estimate, steps: StepsRead) -> float:
    """What counted steps make of the odds that maintenance is the cause, against that it is not.

    Were it, with ``spent`` [kcal/d] away from the equations by ``off`` of their SD, movement would be away by its share
    of that; were it not, by nothing. The likelihoods of what steps say it is away by, both normal with what is left of
    movement's own spread, are set against each other.
    """
    per_sd, share = prior.mean / prior.sd, STEPS_SPREAD_SHARE
    off = math.log(spent / prior.mean) * per_sd
    seen = math.log(max(1.0 + changed_kcal(steps) / prior.mean, 0.1)) * per_sd
    return math.exp(max(-_MOST_SAID, min(_MOST_SAID, off * (seen - 0.5 * share * off) / (1.0 - share))))


def _water_off(fit: LogFit, one: Conclusion, then: int) -> tuple[float, float]:
    """Change of carried mass since a day beyond what intake leads one explanation to expect [kg], and its variance."""
    last, width = fit.days - 1, k.COLUMNS
    _, borne, variance = change_under(one, k.BORNE, last, then)
    expected = fit.columns[last * width + k.CARRIED] - fit.columns[then * width + k.CARRIED]
    return borne - one.mean[4] * expected, variance


def water_off(fit: LogFit, then: int) -> Estimate:
    """Change of carried mass since a day of the log beyond what intake leads to expect, explanations mixed [kg]."""
    return mixed([(one.probability, *_water_off(fit, one, then)) for one in fit.told])


def explain(fit: LogFit, maintenance: LogMaintenance, least_spent_kcal: float = 0.0) -> Explained | None:
    """Explain the last four weeks of a log; None where there are too few days or no intake.

    ``maintenance`` as the log says it, believed or not; nobody spends under ``least_spent_kcal``.
    """
    last = fit.days - 1
    days = min(EXPLAINED_DAYS, last)
    if days < LEAST_EXPLAINED_DAYS or not fit.is_logged:
        return None
    then = last - days
    alpha, beta = 1000.0 * fit.per_kcal / LOGGING_RATIO, fit.per_kcal * fit.physical_prior.mean
    intakes = fit.columns[k.INTAKE :: k.COLUMNS]
    expected = alpha * sum(intakes[then:last]) + days * (fit.growth_kg_per_day - beta)
    limit = TISSUE_OFF_KG * days / 7.0
    off, water = [], []
    p_tissue = p_water = 0.0
    for one in fit.told:
        _, moved, tissue_variance = change_under(one, k.TISSUE, last, then)
        borne, borne_variance = _water_off(fit, one, then)
        tissue = moved - expected
        of_tissue = _beyond(limit, tissue, tissue_variance)
        p_tissue += one.probability * of_tissue
        p_water += one.probability * (1.0 - of_tissue) * _beyond(WATER_OFF_KG, borne, borne_variance)
        off.append((one.probability, tissue, tissue_variance))
        water.append((one.probability, borne, borne_variance))
    prior = fit.physical_prior
    # A log of which little is left may put its normal distribution about nothing: no body spends so little.
    least = max(least_spent_kcal, 0.1 * prior.mean)
    moved = 1.0
    if fit.steps is not None:
        moved = _odds_by_steps(max(maintenance.physical.mean, least), prior, fit.steps)
    of_log = odds_of_logging(maintenance, prior, least, moved)
    causes = sorted(
        (
            Explanation(Cause.AS_LOGGED, max(0.0, 1.0 - p_tissue - p_water)),
            Explanation(Cause.LOGGING, p_tissue * of_log),
            Explanation(Cause.MAINTENANCE, p_tissue * (1.0 - of_log)),
            Explanation(Cause.WATER, p_water),
        ),
        key=lambda explanation: -explanation.probability,
    )
    settles = None
    if causes[0].cause in (Cause.LOGGING, Cause.MAINTENANCE):
        settles = say(WEIGH_FOOD)
    elif causes[0].cause is Cause.WATER:
        settles = say(WAIT_FOR_WATER)

    return Explained(days, mixed(off), mixed(water), tuple(causes), settles)
