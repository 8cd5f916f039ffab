"""Two readers of the world ``own`` that know its body, against whose width the service's intervals there are held.

Both draw many people, let each live what the log says, and weigh them by how well the weighings fit (importance
sampling). What is random by day (drift of the ratio and of maintenance, errors of a logged day and of a day without a
log, water, noise that lingers) is normal and small, and is integrated out for each drawn person by a Kalman filter. One
reader knows how the world is made, the other only what the service's reader knows: how much carried mass differs
between bodies anywhere, and what else may move water, logging and maintenance. A self-test: our reader in our world.
"""

from typing import NamedTuple

import numpy as np
from logstudy.reading import answers
from logstudy.scores import truths
from logstudy.worlds import (
    LAG,
    LOGGED_ERROR,
    NOISE_KG,
    OWN,
    OWN_DRIFT,
    PLANS,
    Array,
    Logs,
    fat_read,
    life_of_own_body,
    maintenance_of,
    own_ratio,
    simulate,
)
from scipy.special import logsumexp
from steelyard.science.body.constants import CARRIED_SPREAD
from steelyard.science.log.events import WATER_DAYS
from steelyard.science.log.witness_errors import (
    CARRIED_RELATIVE_SD,
    DAY_ERROR,
    MAINTENANCE_DRIFT,
    RATIO_DRIFT,
    START_SD_KG,
    UNLOGGED_DAY_ERROR,
    WATER_SD_KG,
)
from steelyard.science.numbers.estimate import Z80

QUANTITIES = ("level", "tissue", "carried", "maintenance", "physical", "ratio")
DRAWS, LEAST_WORTH = 8_000, 60.0
# What is integrated out; weight and water on the first morning nobody is told.
TISSUE, WALK, NOISE, FIRST, WATER, SPENT, WATER_BEFORE = range(7)


class Knowledge(NamedTuple):
    """What a reader holds for likely: spread of carried mass between bodies, random error of a day that is logged and
    of one that is not, drift a day of the ratio and of maintenance [kcal/d], water that fades [kg]."""

    carried_spread: float
    day_error: float
    silent_error: float
    ratio_drift: float
    spent_drift_kcal: float
    water_kg: float


OF_THE_WORLD = Knowledge(CARRIED_SPREAD, LOGGED_ERROR, 0.12, OWN_DRIFT / 7**0.5, 0.0, 0.0)  # see ``Lives``
OF_THE_READER = Knowledge(
    CARRIED_RELATIVE_SD, DAY_ERROR, UNLOGGED_DAY_ERROR, RATIO_DRIFT * 0.86, MAINTENANCE_DRIFT, WATER_SD_KG
)


class Against(NamedTuple):
    """Of a quantity: our mean SD over that of the reader who knows the world, and the share of truths inside the 80 %
    interval of each; over how many logs."""

    width: float
    ours_covered: float
    theirs_covered: float
    logs: int


def posterior(
    logs: Logs, person: int, knows: Knowledge, rng: np.random.Generator
) -> tuple[dict[str, tuple[float, float]], float]:
    """Mean and SD of each quantity on the last day, and how many drawn people they are worth."""
    logged = logs.is_logged[:, person] > 0
    days = len(logged)
    body, told = float(logs.body_kg[person]), float(logs.prior_kcal[person])
    fat, maintenance = fat_read(logs.fat_kg[person], body, rng, DRAWS), maintenance_of(told, rng, DRAWS)
    ratio = own_ratio(rng, DRAWS)
    noise, lag = rng.uniform(*NOISE_KG, DRAWS), rng.uniform(*LAG, DRAWS)
    carries = np.clip(1.0 + knows.carried_spread * rng.standard_normal(DRAWS), 0.0, 2.5)
    shown = _filled(logs.intake_kcal[:, person], logged, 0.86 * told)
    error = np.where(logged, knows.day_error, knows.silent_error)
    given = (np.full(DRAWS, body), fat, maintenance, carries, int(rng.integers(2**32)))
    tissue, carried, settled = life_of_own_body(*given, shown / ratio[:, None])
    more, _, _ = life_of_own_body(*given, 1.02 * shown / ratio[:, None])
    per_kcal = (more[-1] - tissue[-1]) / (0.02 * shown[:-1].sum() / ratio)  # kg, from a log of 2 % more

    fades = np.exp(-1.0 / WATER_DAYS)
    mean, cov, fit = np.zeros((7, DRAWS)), np.zeros((7, 7, DRAWS)), np.zeros(DRAWS)
    cov[NOISE, NOISE], cov[FIRST, FIRST] = noise**2, START_SD_KG**2
    cov[np.ix_([WATER, WATER_BEFORE], [WATER, WATER_BEFORE])] = knows.water_kg**2
    for day in range(days):
        cov[WALK, WALK] += knows.ratio_drift**2
        cov[SPENT, SPENT] += knows.spent_drift_kcal**2
        for state, kept, spread in ((NOISE, lag, noise), (WATER, fades, knows.water_kg)):
            mean[state] *= kept
            cov[state] *= kept
            cov[:, state] *= kept
            cov[state, state] += (1.0 - kept**2) * spread**2
        if logs.is_weighed[day, person] > 0:
            expected = body + tissue[day] - tissue[0] + carried[day]
            off = logs.weight_kg[day, person] - expected - sum(mean[each] for each in (TISSUE, NOISE, FIRST, WATER))
            along = cov[:, TISSUE] + cov[:, NOISE] + cov[:, FIRST] + cov[:, WATER]
            total = along[TISSUE] + along[NOISE] + along[FIRST] + along[WATER]
            fit -= 0.5 * (np.log(total) + off**2 / total)
            mean += along / total * off
            cov -= along[:, None] * along[None, :] / total
        if day < days - 1:
            eaten = shown[day] / ratio * per_kcal
            for by, share in ((WALK, -eaten / ratio), (SPENT, -per_kcal)):
                mean[TISSUE] += share * mean[by]
                cov[TISSUE] += share * cov[by]
                cov[:, TISSUE] += share * cov[:, by]
            cov[TISSUE, TISSUE] += (eaten * error[day]) ** 2
    odds = np.exp(fit - logsumexp(fit))
    change, water, ratio = tissue[-1] - tissue[0] + mean[TISSUE], carried[-1] + mean[WATER], ratio + mean[WALK]
    parts = [TISSUE, FIRST, WATER]
    found = {
        "level": (body + change + water + mean[FIRST], cov[np.ix_(parts, parts)].sum(axis=(0, 1))),
        "tissue": (change, cov[TISSUE, TISSUE]),
        "carried": (
            water - mean[WATER_BEFORE],
            cov[WATER, WATER] + cov[WATER_BEFORE, WATER_BEFORE] - 2.0 * cov[WATER, WATER_BEFORE],
        ),
        "maintenance": ((settled + mean[SPENT]) * ratio, settled**2 * cov[WALK, WALK] + ratio**2 * cov[SPENT, SPENT]),
        "physical": (settled + mean[SPENT], cov[SPENT, SPENT]),
        "ratio": (ratio, cov[WALK, WALK]),
    }
    return {name: _mixed(odds, *each) for name, each in found.items()}, 1.0 / float(np.sum(odds**2))


def against(knows: Knowledge, people: int, seed: int, days: tuple[int, ...] = (28, 56, 90)) -> dict[str, Against]:
    """Both readers on the same logs; those for which too few drawn people count are left out."""
    rng = np.random.default_rng(seed)
    rows: dict[str, list[tuple[float, float, float, float, float]]] = {name: [] for name in QUANTITIES}
    for plan in PLANS:
        for length in days:
            logs = simulate(OWN, plan, length, people, seed)
            truth, ours = truths(logs), answers(logs)
            for person in range(people):
                theirs, worth = posterior(logs, person, knows, rng)
                if worth >= LEAST_WORTH:
                    for name in QUANTITIES:
                        mean, sd = (float(each[person]) for each in ours[name])
                        rows[name].append((float(truth[name][person]), mean, sd, *theirs[name]))
    return {name: _compared(np.array(row)) for name, row in rows.items()}


def _compared(row: Array) -> Against:
    truth, mean, sd, their_mean, their_sd = row.T
    return Against(
        float(sd.mean() / their_sd.mean()),
        float(np.mean(np.abs(truth - mean) <= Z80 * sd)),
        float(np.mean(np.abs(truth - their_mean) <= Z80 * their_sd)),
        len(row),
    )


def _mixed(odds: Array, mean: Array, variance: Array) -> tuple[float, float]:
    middle = float(np.sum(odds * mean))
    return middle, float(np.sum(odds * (variance + (mean - middle) ** 2))) ** 0.5


def _filled(intake: Array, logged: Array, usual: float) -> Array:
    """Intake with a day that is not logged at the mean of the logged days within four of it."""
    found = intake.copy()
    for day in np.flatnonzero(~logged):
        near = slice(max(0, day - 4), day + 5)
        found[day] = intake[near][logged[near]].mean() if logged[near].any() else usual
    return found
