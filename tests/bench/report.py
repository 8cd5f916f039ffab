"""The run as a table in the terminal, a page and a picture."""

import contextlib
import importlib
import importlib.util
import os
import platform
import tempfile
from collections.abc import Callable
from pathlib import Path

from rich.console import Console
from rich.table import Table

from . import batch_bench, core_bench, http_bench, picture, start_bench
from .bench_service import EMPTY
from .http_bench import Client, Measured
from .load import request_bytes
from .rows import Ratio, Row, over_rounds, shown
from .servers import SERVED_BY, UNHINDERED, commands, own_core, serving

PAGE = Path(__file__).with_name("report.md")
PICTURE = Path(__file__).with_name("ratios.svg")
# Measured where they are written; each has `rows() -> list[Row]`.
_OTHERS = ("filter_bench", "season_bench")
_BATCH_LINES = (1_000, 10_000)


def main(arguments: list[str]) -> None:
    """Measure everything and write it down; of ``arguments``, the names of some parts, print only those."""
    console = Console()
    rows: list[Row] = []
    busy = os.getloadavg()[1]
    served: Measured | None = None
    failed: list[Exception] = []
    with tempfile.TemporaryDirectory() as name:
        directory = Path(name)
        parts: dict[str, Callable[[], list[Row]]] = {
            "servers": lambda: http_bench.compare_servers(_made(directory, "servers")),
            "start": lambda: start_bench.rows(_made(directory, "start")),
            "core": lambda: _core(_made(directory, "core")),
            **{part: importlib.import_module(f"{__package__}.{module}").rows for part, module in _others().items()},
            "batches": _batches,
        }
        if unknown := set(arguments) - {"http", *parts}:
            raise SystemExit(f"No such part: {', '.join(sorted(unknown))}. There are: http, {', '.join(parts)}.")
        if not arguments or "http" in arguments:
            console.print("http ...")
            served = http_bench.measure(_made(directory, "http"))
            rows += served.rows
        for part, measure in parts.items():
            if not arguments or part in arguments:
                console.print(f"{part} ...")
                try:
                    rows += measure()
                except Exception as error:  # the parts measured so far are not lost; the run fails at its end
                    failed.append(error)
    Console(width=max(console.width, 120)).print(_table(rows))
    if served is not None:
        console.print(f"Memory of a worker after the load: {served.memory_mib:.0f} MiB of its own.")
        console.print(f"Processor time of an empty keyed request: {served.empty_cpu_seconds * 1e6:.0f} µs.")
    if failed:
        raise ExceptionGroup("not everything was measured, so the page was left as it is", failed)
    if served is not None and not arguments:
        PAGE.write_text(page(rows, served, busy), encoding="utf-8")
        picture.draw(rows, PICTURE)


def _others() -> dict[str, str]:
    """The parts that are measured elsewhere, by name."""
    return {
        module.removesuffix("_bench"): module
        for module in _OTHERS
        if importlib.util.find_spec(f"{__package__}.{module}")
    }


def _made(parent: Path, name: str) -> Path:
    directory = parent / name
    directory.mkdir()
    return directory


def _core(directory: Path) -> list[Row]:
    with (
        serving(commands()[SERVED_BY], directory, **UNHINDERED) as server,
        own_core(),
        contextlib.closing(Client(server)) as client,
    ):
        request = request_bytes("GET", EMPTY, server.token)
        client.burst(request)
        return core_bench.rows(lambda: client.burst(request).cpu_seconds)


def _batches() -> list[Row]:
    """Memory of a worker at ten times the lines."""
    with own_core():
        few, many = batch_bench.by_length(_BATCH_LINES)
    label = f"peak memory at {many.lines:,} lines over that at {few.lines:,}"
    note = f"{many.per_second:,.0f} members a second; 100,000 lines: `python -m tests.bench.batch_bench`"
    ratio = many.peak_mib / few.peak_mib
    return [Row("Batches", label, over_rounds([ratio]), at_most=batch_bench.MEMORY_RATIO_AT_MOST, note=note)]


def _asked(row: Row) -> str:
    if row.at_least is not None:
        text = f"≥ {row.at_least:g}"
    elif row.at_most is not None:
        text = f"≤ {row.at_most:g}"
    else:
        return ""
    return text + (f" (stretch {row.stretch:g})" if row.stretch is not None else "")


def _verdict(row: Row) -> str:
    return {True: "yes", False: "**no**", None: ""}[row.is_met]


def _spread(ratio: Ratio, unit: str) -> str:
    return f"{shown(ratio.lower, unit)} to {shown(ratio.upper, unit)}"


def _table(rows: list[Row]) -> Table:
    table = Table(title="Ratios within this run: median of the rounds, and their middle half")
    table.add_column("")
    table.add_column("ratio", justify="right")
    table.add_column("middle half")
    table.add_column("asked")
    table.add_column("met")
    section = ""
    for row in rows:
        if row.section != section:
            section = row.section
            table.add_section()
            table.add_row(f"[bold]{section}")
        met = {True: "[green]yes", False: "[red]no", None: ""}[row.is_met]
        table.add_row(row.what, shown(row.ratio.median, row.unit), _spread(row.ratio, row.unit), _asked(row), met)
    return table


def page(rows: list[Row], served: Measured, busy: float) -> str:
    """The page: how it was measured, the table, the picture."""
    lines = [
        "# Speed",
        "",
        "Written by `make bench`. Every figure is a ratio within one run on one machine: times on another machine "
        "differ, ratios hardly do. Measured and reference alternate in short bursts; given is the median over the "
        "rounds and, as the spread, the range of their middle half.",
        "",
        f"This run: {platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}; one worker on a "
        f"core of its own, {http_bench.CONNECTIONS} connections on loopback, closed loop, load generator on the other "
        f"core. Other work kept {busy:.1f} processes busy in the five minutes before: above a few tenths expect the "
        "shares over HTTP to move by a fifth from run to run.",
        "",
        "The reference over HTTP is an empty keyed request: a plain Litestar handler that reads no body and returns an "
        "empty object, behind the same server, router and gate (`bench_service.py`). Handing over a request's body "
        "costs the server time of its own, so each operation is also shown against an empty one that decodes `{}`. "
        '"p99, in proportion" is the growth of the 99th percentile over the fall of throughput: 1 is in proportion, '
        f"up to {http_bench.PROPORTION:g} counts as such.",
        "",
        f"A worker's own memory after this load: {served.memory_mib:.0f} MiB. An empty keyed request took "
        f"{served.empty_cpu_seconds * 1e6:.0f} µs of the server's processor time.",
        "",
        f"![Each ratio against what is asked of it]({PICTURE.name})",
    ]
    for section in dict.fromkeys(row.section for row in rows):
        lines += ["", f"## {section}", "", "| what | ratio | middle half | asked | met |", "|---|---|---|---|---|"]
        for row in rows:
            if row.section == section:
                what = row.what + (f" ({row.note})" if row.note else "")
                figures = f"{shown(row.ratio.median, row.unit)} | {_spread(row.ratio, row.unit)}"
                lines.append(f"| {what} | {figures} | {_asked(row)} | {_verdict(row)} |")
    return "\n".join(lines) + "\n"
