"""The loop closed: members who do what they are told each week, paired by who tells them."""

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

import numpy as np
from logstudy.worlds import WORLDS, Array, Logs
from loopstudy.advisers import TOLD_FLOOR_KCAL, WEEK, Adviser, CoachsRule, Steelyard, Unrevised
from loopstudy.members import (
    COURSES,
    LEAD_DAYS,
    Member,
    course_of,
    lead_in,
    lives_of,
    log_of,
    person_of,
    plan,
    profiles,
)

ARMS = ("steelyard", "unrevised", "coach")
MAKERS: dict[str, Callable[[Member, int], Adviser]] = {
    "steelyard": Steelyard,
    "unrevised": lambda member, days: Unrevised(member),
    "coach": lambda member, days: CoachsRule(member),
}


class Outcome(NamedTuple):
    """What became of a member: fat and lean beyond what was asked [kg], and what they were told."""

    world: str
    course: str
    fat_kg: float
    lean_kg: float
    changes: int
    moved_ends: int
    under_floor: int
    largest_step_kcal: float
    adviser: Adviser

    @property
    def distance_kg(self) -> float:
        """Distance to the asked fat and lean."""
        return float(np.hypot(self.fat_kg, self.lean_kg))


def members_of(people: list[dict[str, Any]], logs: Logs, weeks: int, seed: int) -> list[Member | None]:
    """The members with their plans, on the morning after the four weeks of log."""
    found: list[Member | None] = []
    rng = np.random.default_rng([seed, 77])
    for person, one in enumerate(people):
        who = person_of(one)
        course = course_of(COURSES[person % len(COURSES)], who.weight_kg, weeks, rng)
        log = log_of(logs, person, LEAD_DAYS)
        planned = plan(who, log, LEAD_DAYS, course.aim, course.then).value
        is_planned = planned.nearest is None and bool(planned.phases)
        found.append(Member(who, course, planned) if is_planned else None)
    return found


def run(per_world: int, weeks: int, seed: int, arms: Sequence[str] = ARMS) -> dict[str, list[Outcome]]:
    """Follow the same members under each adviser."""
    found: dict[str, list[Outcome]] = {arm: [] for arm in arms}
    for place, world in enumerate(WORLDS):
        people = profiles(per_world, seed + 100 * place)
        for arm in arms:
            found[arm] += follow(world, people, weeks, seed, arm)
    return found


def follow(world: str, people: list[dict[str, Any]], weeks: int, seed: int, arm: str) -> list[Outcome]:
    """The members of a world under one adviser."""
    days = WEEK * weeks
    lives = lives_of(world, people, days, seed)
    lead_in(lives)
    # That morning's weighing comes with the next day lived; plans are made of what is there.
    members = members_of(people, lives.logs(), weeks, seed)
    advisers = [None if member is None else MAKERS[arm](member, days) for member in members]
    told = lives.aim_kcal.copy()
    steps = np.zeros(len(people))
    under = np.zeros(len(people), int)
    for day in range(LEAD_DAYS, LEAD_DAYS + days):
        if (day - LEAD_DAYS) % WEEK == 0:
            logs = lives.logs()
            for person, adviser in enumerate(advisers):
                if adviser is None:
                    continue
                before = adviser.changes
                intake = adviser.advise(logs, person, day)
                if adviser.changes > before:
                    steps[person] = max(steps[person], abs(intake - told[person]))
                under[person] += intake < TOLD_FLOOR_KCAL[adviser.member.person.sex.value] - 0.5
                told[person] = intake
        dieting = np.array([adviser is not None and adviser.is_in_deficit for adviser in advisers])
        lives.live(told, dieting, by_log=True)
    truth = lives.logs().truth
    fat = truth.fat_kg[-1] - truth.fat_kg[LEAD_DAYS]
    tissue = truth.tissue_kg[-1] - truth.tissue_kg[LEAD_DAYS]
    outcomes = []
    for person, (member, adviser) in enumerate(zip(members, advisers, strict=True)):
        if member is None or adviser is None:
            continue
        fat_asked, lean_asked = member.asked(weeks)
        outcomes.append(
            Outcome(
                world, member.course.name, float(fat[person]) - fat_asked,
                float(tissue[person] - fat[person]) - lean_asked, adviser.changes, adviser.moved_ends,
                int(under[person]), float(steps[person]), adviser,
            )
        )  # fmt: skip
    return outcomes


def rms(values: Array | list[float]) -> float:
    """Root mean square."""
    return float(np.sqrt(np.mean(np.square(values))))


def worst_tenth(values: Array | list[float]) -> float:
    """Mean of the worst tenth."""
    ordered = np.sort(np.asarray(values))[::-1]
    return float(np.mean(ordered[: max(1, round(0.1 * len(ordered)))]))


def summary(found: dict[str, list[Outcome]]) -> str:
    """Figures by world, course and adviser."""
    lines = []
    groups: list[tuple[str, Callable[[Outcome], bool]]] = [("all", lambda o: True)]
    groups += [(world, lambda o, w=world: o.world == w) for world in WORLDS]  # type: ignore[misc]
    groups += [(course, lambda o, c=course: o.course == c) for course in COURSES]  # type: ignore[misc]
    for name, is_in in groups:
        for arm, outcomes in found.items():
            kept = [o for o in outcomes if is_in(o)]
            if not kept:
                continue
            apart = [o.distance_kg for o in kept]
            lines.append(
                f"{name:8} {arm:10} n {len(kept):3}  rms {rms(apart):.2f}  fat {rms([o.fat_kg for o in kept]):.2f} "
                f"(mean {np.mean([o.fat_kg for o in kept]):+.2f})  lean {rms([o.lean_kg for o in kept]):.2f} "
                f"({np.mean([o.lean_kg for o in kept]):+.2f})  worst tenth {worst_tenth(apart):.2f}  "
                f"changes {np.mean([o.changes for o in kept]):.1f}  ends moved "
                f"{np.mean([o.moved_ends for o in kept]):.1f}  floor {sum(o.under_floor for o in kept)}"
            )
    return "\n".join(lines)
