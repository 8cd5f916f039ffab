"""Log reading on simulated people: errors, coverage, and the methods that one would write otherwise.

Two generators (``trend_people``): the project's own nonlinear body model, which shows that the reader recovers what it
is meant to, and another body altogether. 2,000 people a cell: the standard error of an RMS is 1.6 % of it, of a
coverage 0.9 points. The seed is not one that the reader's constants were settled with. Cells that miss their target are
strict expected failures with the figure; the whole table is in ``trend_accuracy.md``.
"""

from functools import cache
from typing import Any

import numpy as np
import pytest
from steelyard.science.numbers.estimate import Z80
from validation.trend_accuracy import (
    HONEST,
    JUMPED,
    JUMPED_UNLINKED,
    LED,
    LONG,
    MIXED,
    PEOPLE,
    PICTURE,
    PLAIN,
    SEED,
    blind_floor,
    first_week_split,
    other,
    score,
    stall_calls,
    told_floor,
)
from validation.trend_people import OTHER, RAISED, REFEED, Cell, simulate

scored = cache(score)
FALSE_ALARMS, POWER = 0.05, 0.80


def missing(cells: list[Cell], misses: dict[Cell, str]) -> list[Any]:
    """The cells, those that miss their target marked with the figure."""
    assert set(misses) <= set(cells)
    return [
        pytest.param(cell, marks=pytest.mark.xfail(strict=True, reason=misses[cell])) if cell in misses else cell
        for cell in cells
    ]


# The reader expects carried mass to come back in part within weeks, as in trials. The other generator's does not.
_STAYS = "carried mass of the other generator does not come back, which the reader takes for eating less"


@pytest.mark.parametrize(
    ("days", "most_kcal"),
    [
        (14, 270.0),
        pytest.param(28, 190.0, marks=pytest.mark.xfail(strict=True, reason=f"216 kcal/d: {_STAYS}")),
    ],
)
def test_error_at_ordinary_noise(days: int, most_kcal: float) -> None:
    """SD 0.5 kg, lag 0.3. For scale: individual RMS deviation in a 28-day window against doubly labelled water and
    DXA was 215 kcal/d (Sanghvi et al. 2015, doi 10.3945/ajcn.115.111070; recalled, with no equations as prior)."""
    for cell in (Cell(0.5, 0.3, days), *other([Cell(0.5, 0.3, days)])):
        assert scored(cell).rms <= most_kcal


@pytest.mark.parametrize(
    "cell",
    missing(
        [*PLAIN, *HONEST, *LONG],
        {
            HONEST[0]: "x 1.20: nothing left out is 1.3 SD from what is expected of loggers, and 14 days say little",
            HONEST[1]: "x 1.20: so is it here, and carried mass that comes back hides a part of what was eaten",
        },
    ),
    ids=str,
)
def test_error_is_near_the_floor_of_the_generator(cell: Cell) -> None:
    """The floor is told noise, lag and the logging ratio, which the reader has to learn."""
    assert scored(cell).rms <= 1.15 * told_floor(cell).rms


@pytest.mark.parametrize("cell", JUMPED, ids=str)
def test_a_step_of_water_costs_little_more_than_it_must(cell: Cell) -> None:
    """Against the Bayes reader that is told neither the step nor the logging ratio, only how they are spread."""
    assert scored(cell).rms <= 1.15 * blind_floor(cell).rms


@pytest.mark.parametrize(
    "cell",
    missing(
        [*PLAIN, *HONEST, *LED, *LONG, *JUMPED, *other([*PLAIN, *HONEST, *LONG, *JUMPED])],
        dict.fromkeys(
            other([Cell(0.5, lag, 28) for lag in (0.0, 0.3)] + LONG),
            "people whose tissue holds 13 % less energy than the reader expects: a systematic error that more "
            "days do not mend, and 7,700 kcal/kg happens to suit them",
        )
        | dict.fromkeys(other([HONEST[1]]), f"176 against 167 kcal/d: {_STAYS}"),
    ),
    ids=str,
)
def test_beats_a_moving_average_and_exponential_smoothing(cell: Cell) -> None:
    """Both with 7,700 kcal/kg and with the window (and weight) that is best in hindsight on the same people."""
    result = scored(cell)
    assert result.rms < result.moving_average_rms
    assert result.rms < result.smoothing_rms


@pytest.mark.parametrize("cell", MIXED, ids=str)
def test_coverage_of_80_percent_intervals(cell: Cell) -> None:
    """Logging ratio and steps of water spread as the reader expects: this is what an interval claims."""
    assert 0.75 <= scored(cell).coverage <= 0.85


_BENIGN = "one logging ratio near the expected one and no step of water: what is not known of either widens intervals"
_FLOORS = (86, 80, 87, 82, 89, 85, 88, 86)  # covered by the blind floor, which is told that there is no step
_COVERED = (90.6, 92.0, 87.9, 87.8, 88.5, 90.0, 86.4, 87.1)


@pytest.mark.parametrize(
    "cell",
    missing(
        [*PLAIN, *HONEST, *LONG, *JUMPED, *JUMPED_UNLINKED],
        {
            cell: f"{covered} % (the blind floor {floor} %): {_BENIGN}"
            for cell, covered, floor in zip(PLAIN, _COVERED, _FLOORS, strict=True)
        }
        | {JUMPED[2]: f"86 %: {_BENIGN}", JUMPED_UNLINKED[2]: f"87 %: {_BENIGN}"},
    ),
    ids=str,
)
def test_coverage_where_ratio_and_steps_are_fixed(cell: Cell) -> None:
    assert 0.75 <= scored(cell).coverage <= 0.85


def test_the_estimate_is_nearly_unbiased() -> None:
    assert abs(scored(MIXED[1]).bias) < 15.0


def test_uncertainty_of_the_rate_is_honest() -> None:
    """80 % intervals of the tissue change over the last fortnight, against the simulated tissue."""
    made = simulate(MIXED[1], PEOPLE, SEED)
    (change,) = [c for c in made.trend.changes if c.days == 14]
    error = np.asarray(change.tissue.mean) - (made.tissue[-1] - made.tissue[-15])
    assert 0.75 <= np.mean(np.abs(error) <= Z80 * np.asarray(change.tissue.sd)) <= 0.85


@pytest.mark.parametrize("generator", ["core", OTHER])
def test_a_stall_is_told_from_a_slow_loss_after_four_weeks(generator: str) -> None:
    """Steady tissue against a real loss of 0.35 kg a week."""
    for lag in (0.0, 0.3):
        steady = Cell(0.5, lag, 28, weekly_tissue_loss_kg=0.0, generator=generator)
        losing = steady._replace(weekly_tissue_loss_kg=0.35)
        assert stall_calls(steady) >= POWER
        assert stall_calls(losing) <= FALSE_ALARMS


@pytest.mark.parametrize("rebound", [REFEED, RAISED])
@pytest.mark.parametrize("generator", ["core", OTHER])
def test_a_rebound_of_water_is_no_stall(generator: str, rebound: str) -> None:
    """In the week after two days of plenty, or after eating more, the scale is up while tissue falls."""
    cell = Cell(0.5, 0.3, 28, weekly_tissue_loss_kg=0.35, rebound=rebound, generator=generator)
    assert stall_calls(cell) <= FALSE_ALARMS


def test_days_of_menstruation_help() -> None:
    """Read at the height of the rise, with the days given the error is smaller: by a tenth after four weeks, by less
    where noise that comes and goes has been seen for longer. A loss is no stall, and a stall is told."""
    for days, part in ((28, 0.95), (42, 1.0), (84, 1.0)):
        blind = Cell(0.5, 0.3, days, has_cycle=True, is_cycle_told=False)
        told = blind._replace(is_cycle_told=True)
        assert scored(told).rms < part * scored(blind).rms
    told = told._replace(days=42)
    assert stall_calls(told._replace(weekly_tissue_loss_kg=0.35)) <= FALSE_ALARMS
    assert stall_calls(told._replace(weekly_tissue_loss_kg=0.0)) >= POWER


@pytest.mark.parametrize(
    ("noise_sd_kg", "most_kg", "generator"),
    [
        (0.5, 0.40, "core"),
        (1.0, 0.50, "core"),
        (0.5, 0.40, OTHER),
        pytest.param(
            1.0, 0.50, OTHER, marks=pytest.mark.xfail(strict=True, reason=f"0.42 kg of 0.39 kg at stake: {_STAYS}")
        ),
    ],
)
def test_carried_part_of_a_first_week(noise_sd_kg: float, most_kg: float, generator: str) -> None:
    """Seven days at maintenance, then the first week of a deficit."""
    split = first_week_split(Cell(noise_sd_kg, 0.3, 15, 7, generator=generator))
    assert split.rms <= most_kg
    assert split.rms < split.size


def test_the_picture_exists() -> None:
    assert PICTURE.stat().st_size > 10_000


def test_the_floor_is_one() -> None:
    """Who is told more errs less, and nobody errs less than who is told most."""
    cell = JUMPED[1]
    assert told_floor(cell).rms < blind_floor(cell).rms < scored(cell).rms
