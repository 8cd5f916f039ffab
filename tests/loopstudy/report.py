"""The study as a page."""

import json
import sys
from pathlib import Path

import numpy as np
from logstudy.worlds import WORLDS
from loopstudy.calls import OVER_KCAL, WEEKS, daily, named, on_plan
from loopstudy.study import ARMS, COURSES, Outcome, rms, run, worst_tenth

PAGE = Path(__file__).with_name("loop_study.md")
PEOPLE, SEED = 100, 20_260  # a world; what a review goes by was settled with other seeds, and fewer people
HORIZONS = (26, 52)
_ARM_WORDS = {"steelyard": "reviewed", "unrevised": "plan alone", "coach": "coach's rule"}


def _row(name: str, found: dict[str, list[Outcome]], weeks: int, **only: str) -> list[str]:
    lines = []
    for arm in ARMS:
        kept = [o for o in found[arm] if all(getattr(o, key) == value for key, value in only.items())]
        apart = [o.distance_kg for o in kept]
        lines.append(
            f"| {weeks} | {name} | {_ARM_WORDS[arm]} | {len(kept)} | {rms(apart):.2f} | {worst_tenth(apart):.2f} "
            f"| {rms([o.fat_kg for o in kept]):.2f} ({np.mean([o.fat_kg for o in kept]):+.2f}) "
            f"| {rms([o.lean_kg for o in kept]):.2f} ({np.mean([o.lean_kg for o in kept]):+.2f}) "
            f"| {np.mean([o.changes for o in kept]):.1f} | {np.mean([o.moved_ends for o in kept]):.1f} "
            f"| {max(o.largest_step_kcal for o in kept):.0f} | {sum(o.under_floor for o in kept)} |"
        )
    return lines


def _paired(found: dict[str, list[Outcome]], arm: str) -> tuple[float, float]:
    """Mean difference of squared distance, reviewed less the other, member by member, with its standard error."""
    apart = [
        ours.distance_kg**2 - theirs.distance_kg**2 for ours, theirs in zip(found["steelyard"], found[arm], strict=True)
    ]
    return float(np.mean(apart)), float(np.std(apart) / len(apart) ** 0.5)


def page(people: int = PEOPLE, seed: int = SEED) -> str:
    """The tables, as markdown."""
    head = (
        "| weeks | | adviser | members | distance, kg | worst tenth, kg | fat, kg (mean) | lean, kg (mean) "
        "| changes of intake | ends moved | largest step, kcal/d | weeks under a floor |"
    )
    lines = [head, "|---:|---|---|" + "---:|" * 9]
    pairs = []
    for weeks in HORIZONS:
        found = run(people, weeks, seed)
        lines += _row("all", found, weeks)
        for world in WORLDS:
            lines += _row(world, found, weeks, world=world)
        for course in COURSES:
            lines += _row(course, found, weeks, course=course)
        for arm in ("unrevised", "coach"):
            mean, error = _paired(found, arm)
            pairs.append(
                f"- {weeks} weeks, reviewed against the {_ARM_WORDS[arm]}: {mean:+.2f} kg² (standard error {error:.2f})"
            )
    table, paired = "\n".join(lines), "\n".join(pairs)
    calls = max(10, people // 4)
    told, found_by, false = on_plan(calls, seed), named(calls, seed), named(calls, seed, over_kcal=0.0)
    quiet, loud = daily(calls, seed), daily(calls, seed, OVER_KCAL)
    return f"""# The loop closed: reviews against the plan alone and a coach's rule

Written by `make loopstudy`. {people * len(WORLDS)} simulated members from the four worlds of the log reader's study
(`tests/logstudy/worlds.py`; three of four share none of the service's body model), seed {seed}. What a review goes by
was settled on other seeds with fewer people, so that the page is in-sample in its worlds and out of sample in its
people.

Everybody keeps four weeks of log and then gets a plan from the service. By turns they ask for fat to lose and a hold
after it (`fat`), a cut of five weeks with a gain after it (`length`), a gain (`gain`) or a hold (`hold`). What is asked
is the change of fat and of lean tissue that this plan promises at the horizon. The same members then live it three
times, in the same weather: reviewed every week by the service, each phase planned from what the last review told; with
the plan alone; and by a coach's rule (weekly means of weight; 100 or 200 kcal/d when two weeks running miss the planned
change by half, not in the first weeks of a phase, and not again within a fortnight; common practice, no published
source). They eat until their log shows what they were told, so that what a drifting log leaves out, or leaves out while
dieting,
is eaten all the same. Distance is the root of the mean of fat² + lean², truth less asked; a worst tenth is its mean.

{table}

Squared distance, paired by member:

{paired}

Where most of it comes from in the foreign worlds is how a change of tissue splits into fat and lean, which is drawn
for every member and which no adviser sees.

## What reviews say

- On plan: {told.changed:.0%} of {told.people} members whose tissue keeps within a quarter of the way of a cut of
  {WEEKS} weeks are told to change their intake even once in weekly reviews, guard rails included. Verdicts:
  {dict(told.verdicts)}.
- Eating {OVER_KCAL:.0f} kcal/d that is not in the log: named (slower, or a contradiction with its question) by day 21
  {found_by[21]:.0%}, by day 28 {found_by[28]:.0%}; of members who eat as they log, whose plan may err all the same,
  {false[21]:.0%} and {false[28]:.0%}.
- Daily calls on days 14 to 28 that nobody acts on: the sign of the advice flips in {quiet.flips:.0%} of members who
  keep to the plan and {loud.flips:.0%} of those who eat more; its size moves more than once in {quiet.moves:.0%} and
  {loud.moves:.0%}.
"""


def main() -> None:
    """Print and write the page; a number of people a world may be named."""
    text = page(int(json.loads(sys.argv[1])) if len(sys.argv) > 1 else PEOPLE)
    PAGE.write_text(text, encoding="utf-8")
    print(text)
