"""``steelyard bulk``: whole folders of members, answered on one machine or a cluster.

What it needs is loaded when it is called, and not with the command line: a service has none of it.
"""

import os
import time
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING

import rich_click as click
from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

from steelyard.http.endpoints.batch_kinds import BATCHED

from .opened import current_settings, open_store

if TYPE_CHECKING:
    from steelyard.bulk.partitions import Receipt
    from steelyard.bulk.runner import Summary

_OPERATIONS = [operation.operation_id for operation in BATCHED]
_SECONDS_A_LINE = 10.0  # between two lines of progress where nobody looks at a bar


@click.group()
def bulk() -> None:
    """Answer members by the million: Parquet in, Parquet out. Needs the extra `steelyard[bulk]`."""


@bulk.command("run")
@click.argument("members")
@click.argument("answers")
@click.option("--operation", required=True, type=click.Choice(_OPERATIONS), help="What is asked of every row.")
@click.option("--columns", default="", help="Columns of the answers to keep, with commas between; default all.")
@click.option("--carry", default="", help="Columns of the requests that the answers keep, such as the gym.")
@click.option("--cluster", help="Address of a cluster's scheduler, such as tcp://host:8786; default this machine.")
@click.option("--workers", type=click.IntRange(1), help="Processes on this machine; default one a processor.")
@click.option("--retries", default=3, show_default=True, type=click.IntRange(0), help="Of a partition that fails.")
@click.option(
    "--partition-rows", default=50_000, show_default=True, type=click.IntRange(1), help="Longer files are cut."
)
@click.option("--key", "prefix", help="Prefix of the key whose use it is; default one of the operator's own.")
def run_command(
    members: str,
    answers: str,
    operation: str,
    columns: str,
    carry: str,
    cluster: str | None,
    workers: int | None,
    retries: int,
    partition_rows: int,
    prefix: str | None,
) -> None:
    """Answer every row of the Parquet files in MEMBERS into files of the same names in ANSWERS.

    Both are folders, or URIs of an object store. Rows at fault go into ANSWERS/_problems with their problem. If it is
    cut off, run the same again: what is done is kept, and use is counted once.
    """
    _require_extra()
    from steelyard.bulk.engine import EngineLost
    from steelyard.bulk.ledger import CannotCharge, Ledger
    from steelyard.bulk.manifest import AlreadyRunning, OtherRun
    from steelyard.bulk.partitions import Job
    from steelyard.bulk.places import NoPlace, place_of
    from steelyard.bulk.runner import RunAsked, run

    settings = current_settings()
    watcher = _Bar() if Console(stderr=True).is_terminal else _Lines()
    try:
        job = Job(place_of(members).name, place_of(answers).name, operation, _listed(columns), _listed(carry))
        _check_columns(job.operation, job.columns, job.carry)
        asked = RunAsked(cluster, workers or len(os.sched_getaffinity(0)), retries, partition_rows, prefix)
        with Ledger(open_store(settings)) as ledger, watcher:
            ledger.prepare(migrate=settings.migrate_at_start)
            summary = run(job, asked, ledger, watcher)
    except (AlreadyRunning, CannotCharge, EngineLost, NoPlace, OtherRun) as error:
        raise click.ClickException(str(error)) from None
    _tell(summary, answers)
    if not summary.is_complete:
        raise SystemExit(1)


@bulk.command("roster")
@click.argument("answers")
@click.argument("roster", type=click.Path(dir_okay=False, path_type=Path))
@click.option("--by", required=True, help="Column that the members are grouped by, such as gym.")
@click.option(
    "--rank",
    required=True,
    help="Columns to rank by, the highest first, with commas between; `-` in front has the lowest first.",
)
@click.option("--keep", default="", help="Further columns of the answers to keep.")
def roster_command(answers: str, roster: Path, by: str, rank: str, keep: str) -> None:
    """Rank the members of a finished run within each group, into one table ROSTER (Parquet, or CSV by its ending)."""
    _require_extra()
    from steelyard.bulk.roster import NoRoster, write_roster

    try:
        rows = write_roster(answers, roster, by=by, rank=_listed(rank), keep=_listed(keep))
    except NoRoster as error:
        raise click.ClickException(str(error)) from None
    click.echo(f"Ranked {rows:,} members.")


@bulk.command("columns")
def columns_command() -> None:
    """Print the page of columns: what a table of requests has, and one of answers."""
    _require_extra()
    from steelyard.bulk.columns_page import columns_page

    click.echo(columns_page(), nl=False)


def _require_extra() -> None:
    try:
        import_module("steelyard.bulk")
    except ModuleNotFoundError as error:
        raise click.ClickException(f"{error.name} is not installed; the extra brings it: steelyard[bulk]") from None


def _listed(text: str) -> tuple[str, ...]:
    return tuple(name.strip() for name in text.split(",") if name.strip())


def _check_columns(operation: str, columns: tuple[str, ...], carry: tuple[str, ...]) -> None:
    """Say what is wrong with the choice before anything is begun."""
    from steelyard.bulk import Answerer, TableRefused, UnknownColumn

    try:
        Answerer(operation, columns=columns, carry=carry)
    except (UnknownColumn, TableRefused) as error:
        raise click.UsageError(str(error)) from None


def _tell(summary: "Summary", answers: str) -> None:
    click.echo(f"{summary.rows - summary.problems:,} rows are answered in {answers}, {summary.bytes / 2**20:,.1f} MiB.")
    if summary.done_before:
        click.echo(f"{summary.done_before} of {summary.partitions} partitions were done before.")
    if summary.problems:
        by_code = ", ".join(f"{code} {count:,}" for code, count in summary.problems_by_code.items())
        click.echo(f"{summary.problems:,} rows are in {answers.rstrip('/')}/_problems: {by_code}.")
    for failed in summary.failed:
        click.echo(f"Not done: {failed.path}: {failed.reason}", err=True)
    if summary.uncharged:
        click.echo(f"The use of {summary.uncharged} partitions is not written yet.", err=True)
    if not summary.is_complete:
        click.echo("When that is mended, run the same again: what is done is kept.", err=True)


class _Bar:
    """Progress on a terminal: rows, their rate, and the time left."""

    def __init__(self) -> None:
        self._progress = Progress(
            TextColumn("{task.description}"),
            BarColumn(),
            MofNCompleteColumn(),
            TextColumn("{task.fields[rate]}"),
            TimeRemainingColumn(),
            console=Console(stderr=True),
        )
        self._rate = _Rate()

    def __enter__(self) -> "_Bar":
        self._progress.start()
        return self

    def __exit__(self, *raised: object) -> None:
        self._progress.stop()

    def begin(self, rows: int, rows_done: int) -> None:
        self._task = self._progress.add_task("rows", total=rows, completed=rows_done, rate="")
        self._rate.begin()

    def advance(self, receipt: "Receipt") -> None:
        self._progress.update(self._task, advance=receipt.rows, rate=f"{self._rate.after(receipt.rows):,.0f}/s")

    def say(self, text: str) -> None:
        self._progress.console.print(text, markup=False)


class _Lines:
    """Progress in a log: a line every few seconds."""

    def __init__(self) -> None:
        self._rate = _Rate()
        self._rows = self._done = 0
        self._last = 0.0

    def __enter__(self) -> "_Lines":
        return self

    def __exit__(self, *raised: object) -> None:
        return None

    def begin(self, rows: int, rows_done: int) -> None:
        self._rows, self._done = rows, rows_done
        self._rate.begin()
        click.echo(f"{rows_done:,} of {rows:,} rows were done before." if rows_done else f"{rows:,} rows.", err=True)

    def advance(self, receipt: "Receipt") -> None:
        self._done += receipt.rows
        rate = self._rate.after(receipt.rows)
        if time.monotonic() - self._last >= _SECONDS_A_LINE:
            self._last = time.monotonic()
            left = max(0, self._rows - self._done) / rate
            click.echo(f"{self._done:,} of {self._rows:,} rows, {rate:,.0f}/s, {left:,.0f} s left.", err=True)

    def say(self, text: str) -> None:
        click.echo(text, err=True)


class _Rate:
    """Rows a second since the run began."""

    def begin(self) -> None:
        self._since, self._rows = time.monotonic(), 0

    def after(self, rows: int) -> float:
        self._rows += rows
        return self._rows / max(1e-3, time.monotonic() - self._since)
