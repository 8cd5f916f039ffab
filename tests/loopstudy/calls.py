"""What reviews say of members whose truth is known: on plan, and eating what is not in the log; week by week, daily."""

from collections import Counter
from collections.abc import Sequence
from datetime import date
from itertools import pairwise
from typing import Any, NamedTuple

import msgspec
import numpy as np
from logstudy.worlds import WORLDS, Array, Lives, Logs
from loopstudy.members import FIRST_DAY, LEAD_DAYS, lead_in, lives_of, log_of, person_of, profiles, told, usual_kcal
from steelyard import answers
from steelyard.science.numbers import Estimate
from steelyard.science.phase import FollowedPhase, FollowedWeek, IntakeChange, PhaseKind
from steelyard.science.review import Settled

OVER_KCAL = 300.0
WEEKS = 12


class Followed(NamedTuple):
    """A member of a cut of twelve weeks: as told, and the phase."""

    profile: dict[str, Any]
    phase: FollowedPhase
    logs: Logs
    person: int

    def review(
        self, day: int, phase: FollowedPhase | None = None, settled: Settled | None = None
    ) -> answers.Answered[answers.PhaseReviewed]:
        """The answer on the morning of a day of the phase."""
        log = log_of(self.logs, self.person, LEAD_DAYS + day)
        asked = told(person_of(self.profile), log)
        on = date.fromordinal(FIRST_DAY + LEAD_DAYS + day)
        return answers.review_phase(answers.ReviewAsked(asked, phase or self.phase, on, settled=settled))

    def tissue_kg(self, day: int) -> float:
        """The true change of tissue by the morning of a day of the phase."""
        tissue = self.logs.truth.tissue_kg
        return float(tissue[LEAD_DAYS + day, self.person] - tissue[LEAD_DAYS, self.person])


def followed(per_world: int, seed: int, over_kcal: float = 0.0, weeks: int = WEEKS) -> list[Followed]:
    """Members of every world who keep to a cut as they log it; ``over_kcal`` is eaten besides and not logged.

    The plan starts from what is their maintenance as they log it, with the error of a month of log, so that who keeps
    to it is on plan: nothing else moves their tissue than their own body and drift.
    """
    found = []
    for place, world in enumerate(WORLDS):
        people = profiles(per_world, seed + 100 * place)
        lives = lives_of(world, people, 7 * weeks, seed, over_kcal=np.full(per_world, over_kcal))
        lives.starts = np.full(per_world, float(LEAD_DAYS))
        lead_in(lives)
        told_kcal, maintenance = _told(lives, seed)
        usual = lives.logs()
        eaten = [usual_kcal(log_of(usual, person, LEAD_DAYS), LEAD_DAYS) for person in range(per_world)]
        for _ in range(7 * weeks + 1):
            lives.live(told_kcal, np.ones(per_world, bool), by_log=True)
        logs = lives.logs()
        for person, profile in enumerate(people):
            week = FollowedWeek(intake_kcal=float(told_kcal[person]), protein_g=150.0)
            phase = FollowedPhase(
                kind=PhaseKind.CUT,
                start_day=FIRST_DAY + LEAD_DAYS,
                weeks=(week,) * weeks,
                maintenance=Estimate(float(maintenance[person]), 0.04 * float(maintenance[person])),
                usual_intake_kcal=eaten[person],
            )
            found.append(Followed(profile, phase, logs, person))
    return found


def _told(lives: Lives, seed: int) -> tuple[Array, Array]:
    """Intake and maintenance of the plan, as logged: true, but for the error that a month of log leaves."""
    rng = np.random.default_rng([seed, 5])
    truth = lives.logs().truth
    ratio = truth.ratio[:LEAD_DAYS].mean(axis=0)
    maintenance = truth.maintenance_kcal[-1] * ratio * (1.0 + 0.03 * np.clip(rng.standard_normal(lives.people), -2, 2))
    deficit = rng.uniform(0.12, 0.18, lives.people)
    return np.round(maintenance * (1.0 - deficit), -1), np.round(maintenance)


class Told(NamedTuple):
    """Of members on plan: the share told to change intake even once in weekly reviews; the verdicts."""

    changed: float
    verdicts: Counter[str]
    people: int


def on_plan(per_world: int, seed: int) -> Told:
    """Twelve weekly reviews of members whose tissue keeps within a quarter of the way that the plan promised."""
    verdicts: Counter[str] = Counter()
    changed = people = 0
    for member in followed(per_world, seed):
        phase, is_told = member.phase, False
        planned = member.review(7 * (WEEKS - 1)).value.review.planned_tissue.mean
        if abs(member.tissue_kg(7 * (WEEKS - 1)) - planned) > 0.25 * abs(planned):
            continue
        people += 1
        for week in range(1, WEEKS):
            advice = member.review(7 * week, phase)
            verdicts[advice.value.review.verdict.value] += 1
            if advice.value.review.advice.decision.value == "end":
                break
            change = advice.value.review.advice.correction_kcal
            if change:
                is_told = True
                at = IntakeChange(day=phase.start_day + 7 * week, change_kcal=float(change))
                phase = msgspec.structs.replace(phase, changes=(*phase.changes, at))
        changed += is_told
    return Told(changed / max(1, people), verdicts, people)


def named(per_world: int, seed: int, days: Sequence[int] = (21, 28), over_kcal: float = OVER_KCAL) -> dict[int, float]:
    """Share of those who eat so much unlogged whom a review by a day has found slower, or asked."""
    members = followed(per_world, seed, over_kcal, 6)
    found = dict.fromkeys(days, 0)
    for member in members:
        is_named = False
        for day in days:
            is_named = is_named or member.review(day).value.review.verdict.value in ("slower", "contradicted")
            found[day] += is_named
    return {day: count / len(members) for day, count in found.items()}


class Daily(NamedTuple):
    """Of daily calls on days 14 to 28: shares of members whose sign of advice flips, and whose advice moves at all."""

    flips: float
    moves: float


def daily(per_world: int, seed: int, over_kcal: float = 0.0) -> Daily:
    """Daily calls over a fortnight; nobody acts on them, so that each is about the same plan."""
    flips = moves = 0
    members = followed(per_world, seed, over_kcal, 6)
    for member in members:
        told_kcal = []
        for day in range(14, 29):
            told_kcal.append(member.review(day).value.review.advice.correction_kcal)
        signs = [np.sign(kcal) for kcal in told_kcal if kcal]
        flips += any(a != b for a, b in pairwise(signs))
        moves += sum(a != b for a, b in pairwise(told_kcal)) > 1
    return Daily(flips / len(members), moves / len(members))
