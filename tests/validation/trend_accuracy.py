"""How well logs are read, on simulated people; ``python -m tests.validation.trend_accuracy`` writes the page."""

import sys
from math import erfc
from pathlib import Path
from typing import NamedTuple

import numpy as np

if __package__ == "tests.validation":
    sys.path[:0] = [str(Path(__file__).resolve().parents[2] / part) for part in ("service", "tests")]

from steelyard.science.log.implied_intake import implied_intakes
from steelyard.science.log.trend_reading import PLATEAU_RATE_KG, STALL_CALLED
from steelyard.science.log.water import JUMP_CHANCE
from steelyard.science.numbers.estimate import Z80
from validation.trend_floor import Floor, baselines, floor_of, rms
from validation.trend_people import CORE, OPS, OTHER, RAISED, REFEED, Cell, simulate

PAGE = Path(__file__).with_suffix(".md")
PICTURE = PAGE.with_name("trend_member.svg")
PEOPLE, SEED = 2000, 526_011  # constants of the reader were settled with other seeds

PLAIN = [Cell(sd, lag, days) for sd in (0.5, 1.0) for lag in (0.0, 0.3) for days in (14, 28)]
HONEST = [Cell(0.5, 0.3, days, 0, 1.0) for days in (14, 28)]
LED = [Cell(sd, 0.3, days, 7) for sd in (0.5, 1.0) for days in (14, 28)]
LONG = [Cell(0.5, 0.3, 84)]
JUMPED = [Cell(sd, 0.3, days, 0, 0.9, 1.5) for sd in (0.5, 1.0) for days in (14, 28)]
JUMPED_UNLINKED = [cell._replace(lag=0.0) for cell in JUMPED]
MIXED = [Cell(sd, lag, 28, is_mixed=True) for sd in (0.5, 1.0) for lag in (0.0, 0.3)]


def other(cells: list[Cell]) -> list[Cell]:
    """The same cells with the other generator's people."""
    return [cell._replace(generator=OTHER) for cell in cells]


class Score(NamedTuple):
    """Errors of one cell [kcal/d]; coverage is of 80 % intervals. The baselines' windows are the best in hindsight."""

    rms: float
    bias: float
    mean_sd: float
    coverage: float
    moving_average_rms: float
    smoothing_rms: float


def score(cell: Cell, people: int = PEOPLE, seed: int = SEED) -> Score:
    """Maintenance of one cell against the truth, and the two baselines."""
    made = simulate(cell, people, seed)
    estimate = made.trend.maintenance.maintenance
    error = np.asarray(estimate.mean - made.maintenance)
    return Score(
        rms(error),
        float(error.mean()),
        float(np.mean(estimate.sd)),
        float(np.mean((made.maintenance >= estimate.lower) & (made.maintenance <= estimate.upper))),
        *baselines(cell, made),
    )


def told_floor(cell: Cell, people: int = PEOPLE, seed: int = SEED) -> Floor:
    """The floor of a reader told noise, lag, logging ratio, and of a step of water its day and size."""
    return floor_of(cell, simulate(cell, people, seed))


def blind_floor(cell: Cell, people: int = PEOPLE, seed: int = SEED) -> Floor:
    """The floor of a reader told neither the logging ratio nor the step of water, only how they are spread."""
    return floor_of(cell, simulate(cell, people, seed), is_jump_told=False, is_ratio_told=False)


def stall_calls(cell: Cell, people: int = PEOPLE, seed: int = SEED) -> float:
    """Share of people of whom the reader says that tissue no longer falls."""
    rate = simulate(cell, people, seed).trend.lasting_rate
    z = (-PLATEAU_RATE_KG - np.asarray(rate.mean)) / np.asarray(rate.sd)
    return float(np.mean([0.5 * erfc(v / 2**0.5) >= STALL_CALLED for v in z]))


class Split(NamedTuple):
    """RMS error [kg] of the carried part of a last week's change, what it really was, and coverage."""

    rms: float
    size: float
    coverage: float


def first_week_split(cell: Cell, people: int = PEOPLE, seed: int = SEED) -> Split:
    """The carried part of the change over the last week."""
    made = simulate(cell, people, seed)
    truth = made.carried[-1] - made.carried[-8]
    (week,) = [change for change in made.trend.changes if change.days == 7]
    error = np.asarray(week.carried.mean) - truth
    return Split(rms(error), rms(truth), float(np.mean(np.abs(error) <= Z80 * np.asarray(week.carried.sd))))


def _maintenance_table(cells: list[Cell]) -> str:
    lines = [
        "| people | noise SD | lag | days | at maintenance first | logged | step | RMS | floor | x | blind floor | x "
        "| bias | SD | covered | by blind floor | moving average | exp. smoothing |",
        "|---|" + "---:|" * 17,
    ]
    for cell in cells:
        s, blind = score(cell), blind_floor(cell)
        logged = "mixed" if cell.is_mixed else f"{cell.logging_ratio:.0%}"
        step = "mixed" if cell.is_mixed else f"{cell.jump_kg:g}"
        told = "| | " if cell.is_mixed else f"| {told_floor(cell).rms:.0f} | {s.rms / told_floor(cell).rms:.2f} "
        lines.append(
            f"| {cell.generator} | {cell.noise_sd_kg:g} | {cell.lag:g} | {cell.days} | {cell.baseline_days} | {logged} "
            f"| {step} | {s.rms:.0f} {told}| {blind.rms:.0f} | {s.rms / blind.rms:.2f} | {s.bias:+.0f} "
            f"| {s.mean_sd:.0f} | {s.coverage:.1%} | {blind.coverage:.1%} | {s.moving_average_rms:.0f} "
            f"| {s.smoothing_rms:.0f} |"
        )
    return "\n".join(lines)


def _stall_table() -> str:
    lines = [
        "| people | noise SD | lag | days | steady, called | losing 0.35 kg a week, called |",
        "|---|---:|---:|---:|---:|---:|",
    ]
    cells = [(CORE, sd, lag, days) for sd in (0.5, 1.0) for lag in (0.0, 0.3) for days in (14, 28)]
    for generator, sd, lag, days in [*cells, (OTHER, 0.5, 0.3, 28), (OTHER, 1.0, 0.3, 28)]:
        steady, losing = (
            stall_calls(Cell(sd, lag, days, weekly_tissue_loss_kg=loss, generator=generator)) for loss in (0.0, 0.35)
        )
        lines.append(f"| {generator} | {sd:g} | {lag:g} | {days} | {steady:.1%} | {losing:.1%} |")
    return "\n".join(lines)


def _rebound_table() -> str:
    what = {REFEED: "after two days of 20 % over maintenance", RAISED: "a week after eating more, loss halved"}
    lines = ["| people | rebound | noise SD | losing 0.35 kg a week, called |", "|---|---|---:|---:|"]
    for generator in (CORE, OTHER):
        for kind, words in what.items():
            for sd in (0.5, 1.0):
                cell = Cell(sd, 0.3, 28, weekly_tissue_loss_kg=0.35, rebound=kind, generator=generator)
                lines.append(f"| {generator} | {words} | {sd:g} | {stall_calls(cell):.1%} |")
    return "\n".join(lines)


def _split_table() -> str:
    lines = [
        "| people | noise SD | days at maintenance first | RMS error | RMS of the true change | covered |",
        "|---|---:|---:|---:|---:|---:|",
    ]
    for generator in (CORE, OTHER):
        for lead in (7, 14):
            for sd in (0.5, 1.0):
                split = first_week_split(Cell(sd, 0.3, lead + 8, lead, generator=generator))
                lines.append(
                    f"| {generator} | {sd:g} | {lead} | {split.rms:.2f} | {split.size:.2f} | {split.coverage:.0%} |"
                )
    return "\n".join(lines)


def _cycle_table() -> str:
    lines = [
        "| days of menstruation | days | RMS of maintenance | steady, called | losing 0.35 kg a week, called |",
        "|---|---:|---:|---:|---:|",
    ]
    for words, told in (("not given", False), ("given", True)):
        for days in (28, 42, 84):
            cell = Cell(0.5, 0.3, days, has_cycle=True, is_cycle_told=told)
            steady, losing = (stall_calls(cell._replace(weekly_tissue_loss_kg=loss)) for loss in (0.0, 0.35))
            lines.append(f"| {words} | {days} | {score(cell).rms:.0f} | {steady:.1%} | {losing:.1%} |")
    return "\n".join(lines)


class Implied(NamedTuple):
    """Error of intake read from weight alone [kcal/d], coverage, and the error of taking maintenance for it."""

    rms: float
    coverage: float
    maintenance_rms: float


def implied_intake(cell: Cell, window: int, people: int = PEOPLE, seed: int = SEED) -> Implied:
    """Mean intake over the last ``window`` days of people who log none."""
    made = simulate(cell._replace(is_logged=False), people, seed)
    (found,) = implied_intakes(made.log, made.prior, made.body, [window], OPS)
    eaten = made.intake[-1 - window : -1].mean(axis=0)
    error = np.asarray(found.intake_kcal.mean) - eaten
    covered = np.abs(error) <= Z80 * np.asarray(found.intake_kcal.sd)
    return Implied(rms(error), float(np.mean(covered)), rms(np.asarray(made.prior.mean) - eaten))


def _implied_table() -> str:
    lines = [
        "| people | noise SD | days | first at maintenance | window | RMS | covered | maintenance taken for it, RMS |",
        "|---|---:|---:|---:|---:|---:|---:|---:|",
    ]
    for generator in (CORE, OTHER):
        for sd in (0.5, 1.0):
            for days, lead in ((29, 0), (43, 14), (85, 0)):
                for window in (14, 28):
                    found = implied_intake(Cell(sd, 0.3, days, lead, generator=generator), window)
                    lines.append(
                        f"| {generator} | {sd:g} | {days} | {lead} | {window} | {found.rms:.0f} "
                        f"| {found.coverage:.0%} | {found.maintenance_rms:.0f} |"
                    )
    return "\n".join(lines)


def page() -> str:
    """The tables, as markdown."""
    return f"""# Reading logs: accuracy on simulated people

Written by `python -m tests.validation.trend_accuracy`. {PEOPLE:,} people a cell: the standard error of an RMS is 1.6 %
of it, of a coverage 0.9 points. The constants of the reader were settled with other seeds.

`core` people follow the service's own nonlinear body model, spread as its registered spreads say. `other` people have a
body that knows nothing of it: tissue of 10,000 kcal/kg (SD 12 %) where the reader expects about 11,500 of these
lifters, no growth through training where it expects some, maintenance that drifts, carried mass of one time constant,
noise with the tails of Student's t of 4 degrees of freedom. The reader is told none of this.

## Maintenance on the logging scale, kcal/d

Weighings missing 20 %, intake varying 10 % from day to day, a deficit of 300-700 kcal/d. *Floor*: the Bayes reader
that is told noise, lag, logging ratio and generator, and of a step of water its day and size. *Blind floor*: told
neither the logging ratio nor whether there was a step, only how they are spread (a mixture over every first day, by
marginal likelihood). Baselines: a 7-day moving average and exponential smoothing, 7,700 kcal/kg, each with the window
and weight that is best in hindsight on these very people.

{_maintenance_table(PLAIN + HONEST + LED + LONG)}

With a step of 1.5 kg of water in mid-log. No reader can see one for certain: the blind floor is the fair one here.

{_maintenance_table(JUMPED + JUMPED_UNLINKED)}

People whose logging ratio and steps of water are spread as the reader expects. Cells above fix both, and a fixed value
is covered more often near the middle of what was expected and less often at its edge; here 80 % should hold. These
people change with what the reader expects. Were their steps to come at 0.01 a day, still read as coming at 0.025, 79 to
84 % would be covered, and 85 to 87 % at SD 0.5 and lag 0, with errors no larger than those of a reader that expects
0.01; that one would cover 75 to 80 % of people whose steps come at 0.025 (2,000 people a cell, three seeds).

{_maintenance_table(MIXED)}

### Why a single cell need not be covered by 80 %

An interval is a promise over people who are spread as expected, as in the last table. A cell that fixes logging
ratio and step is covered more where nobody has a step, and less where everybody has one. The chance of a step is set
so that a month with one and a month without are expected alike ({JUMP_CHANCE:g} a day), and with it the cells of people
with a step lie within 75-85 %, one of them at the very edge (SD 1, lag 0, 28 days: 74.9 % over four other seeds). Were
a step expected at 0.01 a day, they would be covered by 66-81 % with errors of up to 14 % more, those without a step by
82-92 in place of 84-93 % (2,000 people a cell, another seed). Promising too much is the worse error.

Where nobody has a step, 86-92 % are covered. The blind floor of these cells is told noise, lag, generator and that
there is no step, everything but the logging ratio: after 14 days it covers 86-89 %, as it has to allow for ratios of
0.80 to 1.04 where all these people log 0.90, after 28 days 80-86 %. A reader that has to allow for steps too covers
three or four points more, and the rest is what it has to learn or allow for besides: the energy of a kilogram (9 %), a
drift of maintenance, an error of 5 % of a logged day, without which the blind floor covers 48 % after 84 days, and what
noise of SD 0.5 kg of lag 0 makes of a mean over many days, read as that of 0.62 kg because two dozen weighings hardly
tell the lag. Noise of SD 1 is read too low within two weeks, being twice the usual; told it, the reader would cover
88 % there too.

What of a step cannot be seen: 1.5 kg in mid-month looks like a loss that slowed down. After 28 days of SD 0.5 and lag
0.3 the probability of a step stays under 0.59 in a quarter of those who have one, so that even the floor that knows
everything else errs by 240 kcal/d, where 120 would do with the step told.

The other generator:

{_maintenance_table(other(PLAIN + HONEST + LONG + JUMPED))}

Both baselines do better on these people after 28 and 84 days of SD 0.5. Of the reader's bias of +120 kcal/d about 70
come from the energy of a kilogram, taken for 15 % more than it is, out of a deficit of 450 as logged, 30 from growth
through training that is not there, 10 from the logging ratio. None of this shows in a log of one steady deficit,
where a higher maintenance and a richer kilogram tell the same path of weight; 7,700 kcal/kg happens to suit them.

## Stalls

Called when the probability that tissue falls by less than {PLATEAU_RATE_KG:g} kg a week reaches {STALL_CALLED:g}.

{_stall_table()}

False alarms when the scale is up for reasons of water, lag 0.3, 28 days:

{_rebound_table()}

## Carried part of the first week of a deficit, kg

{_split_table()}

## Menstrual cycle

People with a rise of weight around menstruation, on average 0.45 kg and different between them, read at its height.
Noise SD 0.5 kg, lag 0.3.

{_cycle_table()}

## Intake from weight alone, kcal/d

No food logged. Maintenance is known to a tenth only, so that weeks of weighing cannot make the interval narrow; the
other generator's tissue holds 13 % less energy than assumed.

{_implied_table()}

## One member

![Weighings, smoothed weight, and its split]({PICTURE.name})
"""


def main() -> None:
    """Print and write the page, and draw the picture."""
    from validation.trend_picture import draw

    draw(PICTURE)
    text = page()
    PAGE.write_text(text, encoding="utf-8")
    print(text)


if __name__ == "__main__":
    main()
