"""The study as a page."""

import json
from pathlib import Path

import numpy as np
from logstudy.bayes import OF_THE_READER, OF_THE_WORLD, against
from logstudy.members import rebounds, review
from logstudy.scores import QUANTITIES
from logstudy.study import (
    DAYS,
    PEOPLE,
    SEED,
    Cell,
    Score,
    beaten,
    coverage,
    flagged,
    named,
    pooled,
    relative_score,
    run,
    stalls,
    tenths,
    under_70,
)
from logstudy.worlds import PLANS, WORLDS

PAGE = Path(__file__).with_name("log_study.md")
CASES = Path(__file__).with_name("cases")
_BAYES_PEOPLE = 12  # a cell of plan and length
_WORDS = {
    "level": "weight without noise", "rate": "weekly rate of tissue", "tissue": "tissue over the log",
    "tissue_28": "tissue over four weeks", "carried": "carried mass over the log",
    "maintenance": "maintenance, as logged", "physical": "maintenance, eaten", "ratio": "logging ratio",
}  # fmt: skip
# The reader before (steps of water free and lasting, one constant logging ratio), on people of the same worlds: share
# covered, and score against the best baseline, mean of cells and the worst. Measured once, with 60 people a cell.
BEFORE = {
    "level": (0.645, 0.73, 1.14), "rate": (0.562, 0.62, 0.98), "tissue": (0.634, 0.99, 2.06),
    "tissue_28": (0.711, 0.77, 1.31), "carried": (0.400, 0.74, 1.70), "maintenance": (0.729, 1.00, 1.52),
    "physical": (0.684, 0.80, 1.19), "ratio": (0.600, 1.02, 1.39),
}  # fmt: skip
MINI_CUT_DAYS, REBOUND_SEEDS = (14, 28, 42), tuple(range(31, 39))


def _pooled_table(found: dict[str, dict[Cell, Score]]) -> str:
    lines = [
        "| quantity | covered, before | now | tenths, least to most | RMS error | score x best baseline, before | now "
        "| worst cell, before | now | cells whose upper 99 % limit is under 70 % |",
        "|---|" + "---:|" * 9,
    ]
    for quantity in QUANTITIES:
        cells = found[quantity]
        error, _ = pooled(cells)
        mean, worst = relative_score(cells)
        least, most = tenths(cells)
        was = BEFORE[quantity]
        under = ", ".join(f"{' '.join(map(str, cell))} ({share:.0%})" for cell, share in under_70(cells)) or "none"
        rms = float(np.sqrt(np.mean(error**2)))
        lines.append(
            f"| {_WORDS[quantity]} | {was[0]:.0%} | {coverage(cells):.0%} | {least:.1%} to {most:.1%} "
            f"| {rms:.3g} | {was[1]:.2f} | {mean:.2f} | {was[2]:.2f} | {worst:.2f} | {under} |"
        )
    return "\n".join(lines)


def _beaten_table(found: dict[str, dict[Cell, Score]]) -> str:
    lines = ["| quantity | cell | score x best baseline | its standard error |", "|---|---|---:|---:|"]
    for quantity in QUANTITIES:
        for cell, score in beaten(found[quantity]):
            ratio = score.ours / score.best
            lines.append(f"| {_WORDS[quantity]} | {' '.join(map(str, cell))} | {ratio:.2f} | {score.ratio_error:.2f} |")
    return "\n".join(lines)


def _by_table(found: dict[str, dict[Cell, Score]]) -> str:
    """Coverage and relative score by world, plan and length."""
    lines = ["| | " + " | ".join(_WORDS[q] for q in QUANTITIES) + " |", "|---|" + "---:|" * len(QUANTITIES)]
    for place, values in enumerate((WORLDS, PLANS, DAYS)):
        for value in values:
            row = []
            for quantity in QUANTITIES:
                cells = {cell: score for cell, score in found[quantity].items() if cell[place] == value}
                row.append(f"{coverage(cells):.0%}, {relative_score(cells)[0]:.2f}")
            lines.append(f"| {value}{' days' if place == 2 else ''} | " + " | ".join(row) + " |")
    return "\n".join(lines)


def _bias_table(found: dict[str, dict[Cell, Score]]) -> str:
    lines = ["| plan | bias, kcal/d | SD of the error | bias / SD |", "|---|---:|---:|---:|"]
    for plan in PLANS:
        error, _ = pooled(found["maintenance"], plan=plan)
        bias, sd = float(np.mean(error)), float(np.std(error))
        lines.append(f"| {plan} | {bias:+.0f} | {sd:.0f} | {bias / sd:+.2f} |")
    return "\n".join(lines)


def _bayes_table() -> str:
    lines = [
        "| quantity | our SD over that of who knows as much | covered by ours | by theirs "
        "| our SD over that of who knows the world | covered by theirs |",
        "|---|---:|---:|---:|---:|---:|",
    ]
    as_much, the_world = against(OF_THE_READER, _BAYES_PEOPLE, SEED), against(OF_THE_WORLD, _BAYES_PEOPLE, SEED)
    for quantity, found in as_much.items():
        more = the_world[quantity]
        lines.append(
            f"| {_WORDS[quantity]} | {found.width:.2f} | {found.ours_covered:.0%} | {found.theirs_covered:.0%} "
            f"| {more.width:.2f} | {more.theirs_covered:.0%} |"
        )
    counts = f"{as_much['tissue'].logs} and {the_world['tissue'].logs}"
    return "\n".join([*lines, "", f"Over {counts} logs, with a standard error of a coverage of about four points."])


def _rebound_table() -> str:
    lines = ["| world | " + " | ".join(f"after {days} days" for days in MINI_CUT_DAYS) + " |", "|---|---:|---:|---:|"]
    for world in WORLDS:
        cells = []
        for days in MINI_CUT_DAYS:
            found = [rebounds(world, 40, seed, days) for seed in REBOUND_SEEDS]
            inside, off = (np.concatenate([each[i] for each in found]) for i in (0, 1))
            cells.append(f"{np.mean(inside):.0%}, {np.mean(off):+.2f}")
        lines.append(f"| {world} | {' | '.join(cells)} |")
    return "\n".join(lines)


def _cases() -> str:
    lines = [
        "| case | verdict | weight, kg | tissue, kg (80 %) | carried, kg | maintenance, logged | what is said |",
        "|---|---|---:|---:|---:|---:|---|",
    ]
    for path in sorted(CASES.glob("*.json")):
        found = review(json.loads(path.read_text(encoding="utf-8")))
        change, tissue = found.change, found.change.tissue_kg
        said = " ".join(note.text for note in found.reasons[1:3])
        lines.append(
            f"| {path.stem} | `{found.verdict}` | {change.weight_kg.mean:+.1f} "
            f"| {tissue.mean:+.1f} ({tissue.lower:+.1f} to {tissue.upper:+.1f}) | {change.carried_kg.mean:+.1f} "
            f"| {found.maintenance_kcal.mean:.0f} | {said} |"
        )
    return "\n".join(lines)


def page() -> str:
    """The tables, as markdown."""
    found = run()
    year, _ = pooled(found["tissue"], days=365)
    members, calls, (flags, right) = named(), stalls(), flagged()
    return f"""# Reading logs: three witnesses against simple readers

Written by `make backtest` (`python -m tests.logstudy` alone). {PEOPLE} people a cell, {len(WORLDS)} worlds,
{len(PLANS)} plans, logs of {", ".join(map(str, DAYS))} days: {PEOPLE * len(WORLDS) * len(PLANS) * len(DAYS):,} logs,
seed {SEED}. The constants of the reader were settled with other seeds of the same worlds, so that the page is in-sample
in its worlds and out of sample in its people. `worlds.py` says what the worlds are; three of four share none of the
reader's body model. Their constants are drawn anew for every person, so that a cell mixes people as the pool does.

Baselines: 7-day means, exponential smoothing (0.1), lines through 14 and 28 days or the whole log, intake less 7,700
times the slope, a local linear trend by maximum likelihood, the equations alone, and the usual ratio. Each gets a bias
and an SD once, over all cells. The score is the continuous ranked probability score against the best of them *in that
cell*; under 1 is better.

## Pooled

{_pooled_table(found)}

## Cells in which a simple reader is better by more than 3 %

{_beaten_table(found)}

Of {len(DAYS) * len(WORLDS) * len(PLANS)} cells of {PEOPLE} people the worst of each quantity lies two standard errors
over its own mean by chance alone. Over 24 other seeds (1,440 people a cell), before the last changes, the ones that
were real were: maintenance as logged in `plain` cuts of 56 and 90 days (1.16 and 1.04) and `lapses` turns of 28 and 56
(1.12 and 1.05), and tissue over a `plain` cut of 365 (1.05), each with a standard error of 0.03. With them, over six
seeds that nothing was set on (101 to 106, 360 people a cell, a standard error of 0.05): 1.02 and 0.99, 1.04 and 0.87,
and 0.78; the worst of any other cell was 1.10 (tissue over four weeks, `own` cut of 56). With the eight that they were
set on (840 people a cell, 0.03) the first is the only one over 1.03, at 1.07; that other one is at 1.01.
Decision 30 says why.

## By world, plan and length: covered, score against the best baseline

{_by_table(found)}

In `water` a quarter of the people take creatine and some carry other steps for good, none of it told: over a year that
is not to be told from tissue by any log, and the intervals allow for a part of it.

## In its own world, against readers by Bayes' rule

Logs of 28, 56 and 90 days. Both know the body model, draw thousands of people and weigh them by the log (`bayes.py`);
one knows what our reader knows (how much more than its own world bodies, water and logging may differ), the other how
this world is made. Left out are logs that too few of the drawn people could have kept.

{_bayes_table()}

## Bias of maintenance as logged

{_bias_table(found)}

## Tissue over a year

RMS error {np.sqrt(np.mean(year**2)):.2f} kg, mean size {np.mean(np.abs(year)):.2f} kg;
{np.mean(np.abs(year) < 1.0):.0%} of the logs err by less than 1 kg.

## Members of a mini-cut, day 24 of 42, four weeks of log before

Named (slower, or a contradiction with the question that settles it): {members.eaters:.0%} of those who eat at
maintenance or up to a third of the deficit above it and log the plan; {members.on_plan:.1%} of those whose tissue goes
as planned (within the plan's own interval). Verdicts: {dict(members.verdicts["eaters"])} and
{dict(members.verdicts["on plan"])}.

Of the changes in the phase lie inside the review's 80 % interval, in its own world and in the foreign ones: of tissue
{members.inside["tissue_kg", True]:.0%} and {members.inside["tissue_kg", False]:.0%}, of fat
{members.inside["fat_kg", True]:.0%} and {members.inside["fat_kg", False]:.0%}, of lean tissue
{members.inside["lean_kg", True]:.0%} and {members.inside["lean_kg", False]:.0%}, and of maintenance as logged
{members.inside["maintenance_kcal", True]:.0%} and {members.inside["maintenance_kcal", False]:.0%}. Half of these
members are picked for what they hide from the log. In the foreign worlds 60 to 100 % of a loss is fat, whoever
trains; trials of lifters on
ample protein, which the reader goes by, lose next to no lean tissue (`tests/validation/report.md`).

## What returns after a mini-cut

Of the carried mass that returns in the fortnight after mini-cuts of {MINI_CUT_DAYS[0]} to {MINI_CUT_DAYS[-1]} days, as
the review of their end tells it: inside the 80 % interval, and told less what returned [kg];
{40 * len(REBOUND_SEEDS)} people a cell.

{_rebound_table()}

Bodies of the foreign worlds take nothing back while a deficit lasts, so that more returns to them than is told. Trials
say otherwise of people: see carried mass in `tests/validation/report.md`.

## Stalls of four weeks

At {calls.false_alarms:.0%} false alarms among those who lose 0.35 kg a week or more {calls.told:.0%} of stalls are told
(threshold {calls.threshold:.2f}; food that is not logged makes tissue stand still).

## Weighings pointed out

{right} of {flags} weighings that the reader calls wrong lie more than twice the person's noise from the truth.

## Two cases

{_cases()}
"""


def main() -> None:
    """Print and write the page."""
    text = page()
    PAGE.write_text(text, encoding="utf-8")
    print(text)
