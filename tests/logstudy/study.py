"""How well logs are read, over worlds that differ; ``python -m tests.logstudy`` writes the page."""

import math
from collections import Counter
from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np
from logstudy.members import LEAD_DAYS, logs_of, profiles, request, review
from logstudy.reading import answers, read
from logstudy.scores import QUANTITIES, baselines, crps, truths
from logstudy.worlds import CUT, OWN, PLANS, WORLDS, Array, simulate
from scipy.special import ndtr
from steelyard.science.numbers.estimate import Z80

DAYS = (14, 28, 56, 90, 180, 365)
PEOPLE, SEED = 60, 4711  # constants of the reader were settled with other seeds
Cell = tuple[str, str, int]


class Score(NamedTuple):
    """A quantity in a cell: by person whether covered, the probability integral transform and errors; mean scores, and
    the standard error of their ratio."""

    covered: Array
    transform: Array
    error: Array
    sd: Array
    ours: float
    best: float  # of the best simple baseline
    ratio_error: float


def run(people: int = PEOPLE, seed: int = SEED, days: Sequence[int] = DAYS) -> dict[str, dict[Cell, Score]]:
    """Every quantity in every cell. Baselines get a bias and an SD once, over all cells."""
    cells: dict[Cell, tuple[Any, Any, Any]] = {}
    for world in WORLDS:
        for plan in PLANS:
            for length in days:
                logs = simulate(world, plan, length, people, seed)
                cells[world, plan, length] = truths(logs), baselines(logs), answers(logs)
    found: dict[str, dict[Cell, Score]] = {}
    for quantity in QUANTITIES:
        best = dict.fromkeys(cells, np.full(people, math.inf))
        for name in next(iter(cells.values()))[1][quantity]:
            errors = np.concatenate([truth[quantity] - simple[quantity][name] for truth, simple, _ in cells.values()])
            bias = float(np.median(errors))
            most = 4.0 * float(np.median(np.abs(errors - bias)))
            spread = float(np.std(np.clip(errors - bias, -most, most)))
            for cell, (truth, simple, _) in cells.items():
                score = crps(simple[quantity][name] + bias, np.full(people, spread), truth[quantity])
                best[cell] = min(best[cell], score, key=np.mean)
        found[quantity] = {}
        for cell, (truth, _, ours) in cells.items():
            mean, sd = ours[quantity]
            z = (truth[quantity] - mean) / sd
            score, simplest = crps(mean, sd, truth[quantity]), best[cell]
            ours, theirs = float(score.mean()), float(simplest.mean())
            apart = float(np.std(score - ours / theirs * simplest)) / (theirs * math.sqrt(people))
            found[quantity][cell] = Score(
                np.abs(z) <= Z80, np.asarray(ndtr(z)), mean - truth[quantity], sd, ours, theirs, apart
            )
    return found


def coverage(cells: dict[Cell, Score]) -> float:
    """Share of truths inside their 80 % intervals, pooled."""
    return float(np.mean(np.concatenate([score.covered for score in cells.values()])))


def tenths(cells: dict[Cell, Score]) -> tuple[float, float]:
    """The rarest and the commonest tenth of the probability integral transform, as shares."""
    counts, _ = np.histogram(np.concatenate([score.transform for score in cells.values()]), 10, (0.0, 1.0))
    return float(counts.min() / counts.sum()), float(counts.max() / counts.sum())


def relative_score(cells: dict[Cell, Score]) -> tuple[float, float]:
    """Continuous ranked probability score against the best baseline of each cell: mean, and the worst cell."""
    ratios = [score.ours / score.best for score in cells.values()]
    return float(np.mean(ratios)), max(ratios)


def beaten(cells: dict[Cell, Score], by: float = 1.03) -> list[tuple[Cell, Score]]:
    """Cells in which a simple reader is better by more than that, the worst first."""
    found = [(cell, score) for cell, score in cells.items() if score.ours > by * score.best]
    return sorted(found, key=lambda each: -each[1].ours / each[1].best)


def upper_99(covered: Array) -> float:
    """Upper 99 % limit of a coverage (Wilson 1927, from memory)."""
    n, p, z = len(covered), float(np.mean(covered)), 2.576
    return (p + z * z / (2 * n) + z * math.sqrt(p * (1 - p) / n + z * z / (4 * n * n))) / (1 + z * z / n)


def under_70(cells: dict[Cell, Score]) -> list[tuple[Cell, float]]:
    """Cells whose upper 99 % limit lies under 70 %, with their coverage."""
    return [(cell, float(np.mean(s.covered))) for cell, s in cells.items() if upper_99(s.covered) < 0.70]


def pooled(cells: dict[Cell, Score], **only: Any) -> tuple[Array, Array]:
    """Errors and SDs over the cells of a ``world``, ``plan`` or number of ``days``."""
    kept = [
        score
        for (world, plan, days), score in cells.items()
        if only.get("world", world) == world and only.get("plan", plan) == plan and only.get("days", days) == days
    ]
    return np.concatenate([score.error for score in kept]), np.concatenate([score.sd for score in kept])


class Named(NamedTuple):
    """Shares of members for whom a review names a contradiction, finds them slower or asks.

    ``inside``: of the changes of tissue, fat and lean tissue in the phase, and of maintenance as logged, by whether the
    world is ``OWN``, the share that lies inside the review's interval, over all members.
    """

    on_plan: float
    eaters: float
    verdicts: dict[str, Counter[str]]
    inside: dict[tuple[str, bool], float]


def named(people: int = 600, days: int = 24, seed: int = SEED) -> Named:
    """Members of a mini-cut on the given day: those whose tissue goes as planned, and those who eat at maintenance or
    above and log the plan."""
    verdicts: dict[str, Counter[str]] = {"on plan": Counter(), "eaters": Counter()}
    inside: dict[tuple[str, bool], list[bool]] = {}
    for place, world in enumerate(WORLDS):
        members = profiles(people, seed + place)
        for group, over in (("on plan", False), ("eaters", True)):
            logs, deficit = logs_of(world, members, days, seed, over)
            for person in range(people):
                found = review(request(members[person], logs, person, float(deficit[person]), days))
                tissue, fat = (
                    float(column[-1, person] - column[LEAD_DAYS, person])
                    for column in (logs.truth.tissue_kg, logs.truth.fat_kg)
                )
                needed = float(logs.truth.maintenance_kcal[-1, person] * logs.truth.ratio[-1, person])
                of_change = [(name, getattr(found.change, name)) for name in ("tissue_kg", "fat_kg", "lean_kg")]
                told_of = [*of_change, ("maintenance_kcal", found.maintenance_kcal)]
                for (name, told), truth in zip(told_of, (tissue, fat, tissue - fat, needed), strict=True):
                    inside.setdefault((name, world == OWN), []).append(told.lower <= truth <= told.upper)
                planned = found.change.planned_tissue_kg
                if group == "on plan" and not planned.lower <= tissue <= planned.upper:
                    continue
                verdicts[group][found.verdict] += 1

    def share(group: str) -> float:
        counts = verdicts[group]
        return (counts["slower"] + counts["contradicted"]) / sum(counts.values())

    shares = {key: float(np.mean(each)) for key, each in inside.items()}
    return Named(share("on plan"), share("eaters"), verdicts, shares)


class Stalls(NamedTuple):
    """Share of stalls told, at the threshold that calls so many of those who lose."""

    told: float
    false_alarms: float
    threshold: float


def stalls(people: int = 80, seed: int = SEED) -> Stalls:
    """Four weeks of a cut that works, then four in which tissue stands still though the log says nothing of it,
    against eight weeks of a cut that works (0.35 kg a week or more)."""
    days = 57
    calls: dict[str, list[float]] = {"stalled": [], "losing": []}
    for world in WORLDS:
        for group in calls:
            rng = np.random.default_rng([seed, WORLDS.index(world)])
            size = rng.uniform(0.16, 0.24, people)
            balance = np.tile(-size, (days, 1))
            given: dict[str, Any] = {"balance": balance, "starts": np.zeros(people)}
            if group == "stalled":
                over = np.zeros((days, people))
                over[28:] = size
                given["over_share"] = over
            logs = simulate(world, CUT, days, people, seed, **given)
            tissue = logs.truth.tissue_kg
            weekly = (tissue[-1] - tissue[-29]) / 4.0
            for person in range(people):
                is_meant = weekly[person] > -0.1 if group == "stalled" else weekly[person] < -0.35
                if is_meant:
                    calls[group].append(float(read(logs, person, is_loss_meant=True).stall_probability or 0.0))
    threshold = float(np.quantile(calls["losing"], 0.95))
    told = float(np.mean(np.array(calls["stalled"]) > threshold))
    return Stalls(told, float(np.mean(np.array(calls["losing"]) > threshold)), threshold)


def flagged(people: int = 40, seed: int = SEED) -> tuple[int, int]:
    """Weighings pointed out as wrong, and how many of them lie more than twice the noise from the truth."""
    right = total = 0
    for world in WORLDS:
        for days in (28, 90):
            logs = simulate(world, CUT, days, people, seed)
            level = logs.body_kg - logs.truth.tissue_kg[0] + logs.truth.tissue_kg + logs.truth.carried_kg
            for person in range(people):
                for day in read(logs, person).outliers:
                    total += 1
                    off = abs(logs.weight_kg[day, person] - level[day, person])
                    right += bool(off > 2.0 * logs.noise_sd_kg[person])
    return total, right
