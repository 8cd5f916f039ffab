"""The back-test as a page: every cell, and what the propagation costs beside an ensemble."""

import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
from steelyard.science.body.forecasting import Stretch, forecast

from .backtest import (
    MISSPECIFIED_COVERAGE,
    PEOPLE_PER_CELL,
    PRIOR_COVERAGE,
    REFERENCE_DRAWS,
    REFERENCE_PER_CELL,
    SEED,
    WIDEST,
    Row,
    given,
    run,
)
from .generator import HORIZON_WEEKS, OPS, SEXES, STATUSES, Generator, People, Quantity, draw_outcomes, draw_people

_CELLS = len(SEXES) * len(STATUSES)


def write(path: Path) -> str:
    """Run the back-test, write the page to ``path`` and return it."""
    rows = {generator: run(generator) for generator in Generator}
    lines = [
        "# Back-test of the forecast's intervals",
        "",
        "Written by `make backtest`; `test_backtest.py` asserts the same figures.",
        "",
        f"{_CELLS * PEOPLE_PER_CELL:,} simulated people, {PEOPLE_PER_CELL:,} for each sex and training status, each on "
        f"one fixed diet (deficit, maintenance or surplus) for half a year; seed {SEED}. A cell gives the share of "
        "people whose truth lay inside the 80 % interval, and in brackets the mean width of the interval over that of "
        "the best possible forecast of the same generator (the 10-90 % width of "
        f"{REFERENCE_DRAWS:,} lives drawn from that generator for each of {REFERENCE_PER_CELL} people of the cell, "
        "given what the forecast was given). The binomial standard error of a coverage of 80 % is "
        f"{100 * (0.16 / PEOPLE_PER_CELL) ** 0.5:.1f} points.",
        "",
        "`generator.py` says what the three generators are. Weight is a single reading of the scale.",
        "",
        "## Extremes",
        "",
        "| generator | coverage, lowest | highest | pooled | width ratio, lowest | highest | asked |",
        "|---|---|---|---|---|---|---|",
    ]
    for generator, found in rows.items():
        coverages, ratios = [r.coverage for r in found], [r.width_ratio for r in found]
        band = (
            f"{100 * PRIOR_COVERAGE[0]:.0f}-{100 * PRIOR_COVERAGE[1]:.0f} %"
            if generator is Generator.PRIOR
            else f"at least {100 * MISSPECIFIED_COVERAGE:.0f} %"
        )
        lines.append(
            f"| {generator} | {100 * min(coverages):.1f} % | {100 * max(coverages):.1f} % "
            f"| {100 * float(np.mean(coverages)):.1f} % | {min(ratios):.2f} | {max(ratios):.2f} "
            f"| {band}, ratio at most {WIDEST:g} |"
        )
    for generator, found in rows.items():
        lines += ["", f"## {generator.capitalize()}"]
        for quantity in Quantity:
            lines += ["", *_table(quantity, [r for r in found if r.quantity is quantity])]
    lines += ["", "## People who are given a deficit", "", *_given()]
    lines += ["", "## Cost", "", *_cost(), ""]
    page = "\n".join(lines)
    path.write_text(page, encoding="utf-8")
    return page


def _table(quantity: Quantity, rows: list[Row]) -> list[str]:
    unit, scale = ("points", 100.0) if quantity is Quantity.FAT_FRACTION else ("kg", 1.0)
    lines = [
        f"| {quantity} | " + " | ".join(f"{weeks} weeks" for weeks in HORIZON_WEEKS) + f" | mean width, {unit} |",
        "|---|" + "---|" * (len(HORIZON_WEEKS) + 1),
    ]
    for sex in SEXES:
        for status in STATUSES:
            cell = [r for r in rows if r.sex == sex and r.status == status]
            shares = " | ".join(f"{100 * r.coverage:.1f} ({r.width_ratio:.2f})" for r in cell)
            widths = ", ".join(f"{scale * r.width:.1f}" for r in cell)
            lines.append(f"| {sex}, {status} | {shares} | {widths} |")
    return lines


def _given() -> list[str]:
    found = given()
    lines = [
        "The intervals above are those of a body that eats the plan, which a review judges by. What is shown of a "
        "deficit holds as well what comes of people who are given it. Two draws of those in a deficit: who eats the "
        "plan (as `prior`), and people who follow 85 % of the deficit in the first six weeks and 65 % from there, with "
        "an SD of 30 points. Shares inside what is shown, and in brackets inside the interval of the plan being eaten.",
        "",
        "| quantity | weeks | who eat the plan | people who are given it | of these over its upper end | mean width |",
        "|---|---|---|---|---|---|",
    ]
    for row in sorted(found, key=lambda row: list(Quantity).index(row.quantity)):
        unit, scale = ("points", 100.0) if row.quantity is Quantity.FAT_FRACTION else ("kg", 1.0)
        lines.append(
            f"| {row.quantity} | {row.weeks} | {100 * row.eats:.1f} ({100 * row.eats_told:.1f}) "
            f"| {100 * row.people:.1f} ({100 * row.people_told:.1f}) "
            f"| {100 * row.over:.1f} ({100 * row.over_told:.1f}) "
            f"| {scale * row.width:.1f} ({scale * row.width_told:.1f}) {unit} |"
        )
    return lines


def _seconds(work: Callable[[], object], repeats: int) -> float:
    """Processor time of the fastest of ``repeats`` runs."""
    times = []
    for _ in range(repeats):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return min(times)


def _cost() -> list[str]:
    people = draw_people(np.random.default_rng(SEED), 10_000 // _CELLS)
    count, members = len(people.male), 200
    year = (52,)

    def single(who: People, plan: list[Stretch]) -> Callable[[], object]:
        return lambda: forecast(who.body, plan).spreads()

    some = [people.person(i) for i in range(0, count, count // 50)]
    half_year = float(np.median([_seconds(single(p, p.stretches((26,))), 20) for p in some]))
    one_year = float(np.median([_seconds(single(p, p.stretches(year)), 20) for p in some]))
    batch = _seconds(lambda: forecast(people.body, people.stretches(year), ops=OPS).spreads(), 3)
    first = np.zeros(members, dtype=np.int64)
    rng = np.random.default_rng(SEED)
    ensemble = _seconds(lambda: draw_outcomes(people.take(first), Generator.PRIOR, rng), 20)
    return [
        "Processor time on the machine that wrote this page, intervals at every week included:",
        "",
        "| what | value |",
        "|---|---|",
        f"| one person, 26 weeks, plain floats | {1e3 * half_year:.2f} ms |",
        f"| one person, 52 weeks, plain floats | {1e3 * one_year:.2f} ms |",
        f"| {count:,} people, 52 weeks, one vectorised call | {1e3 * batch:.0f} ms |",
        f"| people a second, vectorised over single | {count * one_year / batch:.0f} |",
        f"| an ensemble of {members} for one person, 26 weeks, over the forecast | {ensemble / half_year:.0f} |",
    ]


def main() -> None:
    """Print the page and write it beside this module."""
    print(write(Path(__file__).with_name("report.md")))


if __name__ == "__main__":
    main()
