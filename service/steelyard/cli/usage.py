"""``steelyard usage``: what the ledger says."""

import csv
import json
import sys
from collections import Counter
from datetime import UTC, date, datetime, timedelta

import rich_click as click
from rich.console import Console
from rich.table import Table
from rich.text import Text

from steelyard.store.store import Store, UsageLine

from .opened import with_store

_COLUMNS = ("day", "organisation", "key", "operation")
_DAYS = 30
_DATE = click.DateTime(["%Y-%m-%d"])


@click.group()
def usage() -> None:
    """Report what was used."""


@usage.command("report")
@click.option("--from", "first", type=_DATE, help=f"First day (UTC); default {_DAYS} days back.")
@click.option("--to", "last", type=_DATE, help="Last day (UTC), included; default today.")
@click.option("--by", "columns", multiple=True, type=click.Choice(_COLUMNS), help="Repeat for several; default all.")
@click.option("--organisation", help="Only this organisation.")
@click.option("--format", "form", default="table", show_default=True, type=click.Choice(["table", "csv", "json"]))
def report(
    first: datetime | None, last: datetime | None, columns: tuple[str, ...], organisation: str | None, form: str
) -> None:
    """Report requests and units: a request costs what its operation weighs in the contract.

    What a running service has counted is here within `STEELYARD_USAGE_FLUSH_SECONDS`.
    """
    last_day = last.date() if last else datetime.now(UTC).date()
    first_day = first.date() if first else last_day - timedelta(days=_DAYS)
    if first_day > last_day:
        raise click.UsageError("--from is after --to")

    async def read(store: Store) -> list[UsageLine]:
        return await store.usage_lines(first_day, last_day)

    lines = [line for line in with_store(read) if organisation in (None, line.organisation)]
    chosen = [column for column in _COLUMNS if not columns or column in columns]
    rows = _sums(lines, chosen)
    if form == "json":
        click.echo(json.dumps(rows, indent=2))
    elif form == "csv":
        writer = csv.DictWriter(sys.stdout, [*chosen, "requests", "units"], lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)
    else:
        _print_table(rows, chosen, first_day, last_day)


@usage.command("forget")
@click.option("--before", required=True, type=_DATE, help="The first day (UTC) that is kept.")
@click.option("--yes", is_flag=True, help="Do not ask.")
def forget(before: datetime, yes: bool) -> None:
    """Delete the ledger of the days before a date: what is billed need not be kept for ever."""
    first_kept = before.date()
    if first_kept > datetime.now(UTC).date():
        raise click.UsageError("--before lies in the future, and today's quotas are counted from the ledger")
    if not yes:
        click.confirm(f"Delete all usage before {first_kept}?", abort=True)

    async def delete(store: Store) -> int:
        return await store.forget_usage(first_kept)

    click.echo(f"Deleted {with_store(delete)} counts.")


def _sums(lines: list[UsageLine], columns: list[str]) -> list[dict[str, str | int]]:
    requests: Counter[tuple[str, ...]] = Counter()
    units: Counter[tuple[str, ...]] = Counter()
    for line in lines:
        values = {
            "day": line.day.isoformat(),
            "organisation": line.organisation,
            "key": line.prefix,
            "operation": line.operation_id,
        }
        group = tuple(values[column] for column in columns)
        requests[group] += line.requests
        units[group] += line.units
    return [
        dict(zip(columns, group, strict=True)) | {"requests": requests[group], "units": units[group]}
        for group in sorted(requests)
    ]


def _print_table(rows: list[dict[str, str | int]], columns: list[str], first_day: date, last_day: date) -> None:
    table = Table(title=f"Usage from {first_day} to {last_day} (UTC)", show_footer=bool(rows))
    for index, column in enumerate(columns):
        table.add_column(column, footer="" if index else "total", no_wrap=column in ("day", "key"))
    for name in ("requests", "units"):
        table.add_column(name, footer=str(sum(int(row[name]) for row in rows)), justify="right")
    for row in rows:
        table.add_row(*(Text(str(value)) for value in row.values()))  # as it is: a name may look like markup
    Console().print(table)
