"""``steelyard doctor``: whether a service with these settings could serve, and if not, why."""

import asyncio
import os
import sys
import tempfile
import time
from collections.abc import AsyncIterator, Callable
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from pathlib import Path
from typing import NamedTuple

import rich_click as click
from rich.console import Console
from rich.table import Table
from rich.text import Text
from sqlalchemy.engine import make_url

from steelyard.http.gate.rate_limit import MemoryCounts, RateLimiter
from steelyard.science.numbers import is_compiled
from steelyard.settings import Settings, SettingsError
from steelyard.store.database import is_embedded
from steelyard.store.schema import HEAD, SchemaUnknown, is_behind
from steelyard.store.store import Store, StoreUnavailable

from .contract import stale_files
from .opened import current_settings, open_store

_EXPIRES_SOON = timedelta(days=14)


class State(StrEnum):
    """How a check ended; only a failure keeps the service from serving."""

    OK = "ok"
    NOTE = "note"
    FAILED = "failed"


_STYLES = {State.OK: "green", State.NOTE: "yellow", State.FAILED: "bold red"}


class Finding(NamedTuple):
    """One line of the report."""

    check: str
    state: State
    detail: str


@click.command()
@click.option(
    "--contracts",
    default="contracts",
    show_default=True,
    type=click.Path(file_okay=False, path_type=Path),
    help="Where the contract's files are; without them they are not compared.",
)
def doctor(contracts: Path) -> None:
    """Check settings, store, tables, keys, limits, contract and directories. Exits with 1 if a check failed."""
    findings = asyncio.run(_examine(contracts))
    table = Table()
    for name in ("check", "state", "detail"):
        table.add_column(name, overflow="fold", no_wrap=name != "detail")
    for finding in findings:
        table.add_row(finding.check, Text(finding.state, _STYLES[finding.state]), Text(finding.detail))
    Console().print(table)
    if any(finding.state is State.FAILED for finding in findings):
        sys.exit(1)


async def _examine(contracts: Path) -> list[Finding]:
    try:
        settings = current_settings()
    except SettingsError as error:
        return [Finding("settings", State.FAILED, str(error))]
    set_here = [name for name in os.environ if name.startswith("STEELYARD_")]
    findings = [Finding("settings", State.OK, f"{len(set_here)} set in the environment")]
    findings += [finding async for finding in _of_store(settings)]
    findings.append(await _of_limits(settings))
    findings.append(_of_core())
    findings.append(_of_contract(contracts))
    findings += _of_directories(settings)
    return findings


async def _of_store(settings: Settings) -> AsyncIterator[Finding]:
    try:
        store = open_store(settings)
    except StoreUnavailable as error:
        yield Finding("store", State.FAILED, str(error))
        return
    try:
        started = time.perf_counter()
        found = await store.revision()
        milliseconds = (time.perf_counter() - started) * 1000
        where = make_url(settings.database_url).render_as_string(hide_password=True)
        yield Finding("store", State.OK, f"{where} answers in {milliseconds:.0f} ms")
        if not is_behind(found):
            yield Finding("tables", State.OK, f"at revision {found}; needed is {HEAD}")
            await store.ping()
            yield await _of_keys(store)
        elif is_embedded(settings.database_url) or settings.migrate_at_start:
            yield Finding("tables", State.NOTE, f"at revision {found}; the next start brings them to {HEAD}")
        else:
            detail = f"at revision {found}; needed is {HEAD}: run `steelyard migrate`"
            yield Finding("tables", State.FAILED, detail)
    except (StoreUnavailable, SchemaUnknown) as error:
        yield Finding("store", State.FAILED, str(error))
    finally:
        await store.close()


async def _of_keys(store: Store) -> Finding:
    now = datetime.now(UTC)
    usable = [key for key in await store.list_keys() if key.is_usable(now)]
    soon = [key.prefix for key in usable if key.expiry_time and key.expiry_time < now + _EXPIRES_SOON]
    if not usable:
        return Finding("keys", State.NOTE, "none is usable: `steelyard keys create` makes one")
    if soon:
        return Finding("keys", State.NOTE, f"{len(usable)} usable; soon to expire: {', '.join(soon)}")
    return Finding("keys", State.OK, f"{len(usable)} usable")


async def _of_limits(settings: Settings) -> Finding:
    if not settings.rate_limit_requests:
        limit = "no rate limit; quotas"
    else:
        limit = f"{settings.rate_limit_requests} in {settings.rate_limit_window_seconds} s for each key,"
    try:
        counts = RateLimiter.of(settings).counts
    except SettingsError as error:
        return Finding("limits", State.FAILED, str(error))
    if isinstance(counts, MemoryCounts):
        return Finding("limits", State.OK, f"{limit} counted by each process alone")
    try:
        async with counts:
            await counts.add({"doctor": 0}, {"doctor": 1})
    except Exception as error:
        # It serves nevertheless, with every process counting alone.
        return Finding("limits", State.NOTE, f"{limit} but their store failed with {type(error).__name__}")
    return Finding("limits", State.OK, f"{limit} counted by all processes together")


def _of_core() -> Finding:
    if is_compiled():
        return Finding("core", State.OK, "compiled")
    return Finding("core", State.NOTE, "runs as it is written, more slowly: the install found no C compiler")


def _of_contract(directory: Path) -> Finding:
    if not directory.is_dir():
        return Finding("contract", State.NOTE, f"there is no directory {directory} to compare it with")
    stale = [path.name for path in stale_files(directory)]
    if stale:
        return Finding("contract", State.FAILED, f"out of date: {', '.join(stale)}; run `steelyard contract`")
    return Finding("contract", State.OK, f"{directory} is what the code says")


def _of_directories(settings: Settings) -> list[Finding]:
    directories: dict[str, Callable[[], str | None]] = {"temporary files": tempfile.gettempdir}
    if is_embedded(settings.database_url):
        database = make_url(settings.database_url).database
        directories["database"] = lambda: str(Path(database or ".").parent)
    findings = []
    for what, where in directories.items():
        try:
            directory = where()
            with tempfile.TemporaryFile(dir=directory):
                findings.append(Finding("directory", State.OK, f"{what}: {directory} can be written"))
        except OSError as error:
            findings.append(Finding("directory", State.FAILED, f"{what}: {error.strerror or error}"))
    return findings
