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
from steelyard.settings import CLIENT_VARIABLES, PREFIX, Settings, SettingsError
from steelyard.store.database import is_embedded
from steelyard.store.schema import HEAD, SchemaUnknown, is_behind
from steelyard.store.store import Store, StoreUnavailable

from .contract import stale_files
from .opened import current_settings, open_store

_WRITTEN_BYTES = 65_536  # a full disk has room for an empty file
_EXPIRES_SOON = timedelta(days=14)


class CheckState(StrEnum):
    """How a check ended; only a failure keeps the service from serving."""

    OK = "ok"
    NOTE = "note"
    FAILED = "failed"


_STYLES = {CheckState.OK: "green", CheckState.NOTE: "yellow", CheckState.FAILED: "bold red"}


class CheckResult(NamedTuple):
    """One line of the report."""

    check: str
    state: CheckState
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
    if any(finding.state is CheckState.FAILED for finding in findings):
        sys.exit(1)


async def _examine(contracts: Path) -> list[CheckResult]:
    try:
        settings = current_settings()
    except SettingsError as error:
        return [CheckResult("settings", CheckState.FAILED, str(error))]
    set_here = [name for name in os.environ if name.startswith(PREFIX) and name not in CLIENT_VARIABLES]
    findings = [CheckResult("settings", CheckState.OK, f"{len(set_here)} set in the environment")]
    findings += [finding async for finding in _of_store(settings)]
    findings.append(await _of_limits(settings))
    findings.append(_of_core())
    findings.append(_of_contract(contracts))
    findings += _of_directories(settings)
    return findings


async def _of_store(settings: Settings) -> AsyncIterator[CheckResult]:
    try:
        store = open_store(settings)
    except StoreUnavailable as error:
        yield CheckResult("store", CheckState.FAILED, str(error))
        return
    try:
        started = time.perf_counter()
        found = await store.revision()
        milliseconds = (time.perf_counter() - started) * 1000
        where = make_url(settings.database_url).render_as_string(hide_password=True)
        yield CheckResult("store", CheckState.OK, f"{where} answers in {milliseconds:.0f} ms")
        if not is_behind(found):
            yield CheckResult("tables", CheckState.OK, f"at revision {found}; needed is {HEAD}")
            await store.ping()
            yield await _of_keys(store)
        elif is_embedded(settings.database_url) or settings.migrate_at_start:
            yield CheckResult("tables", CheckState.NOTE, f"at revision {found}; the next start brings them to {HEAD}")
        else:
            detail = f"at revision {found}; needed is {HEAD}: run `steelyard migrate`"
            yield CheckResult("tables", CheckState.FAILED, detail)
    except (StoreUnavailable, SchemaUnknown) as error:
        yield CheckResult("store", CheckState.FAILED, str(error))
    finally:
        await store.close()


async def _of_keys(store: Store) -> CheckResult:
    now = datetime.now(UTC)
    usable = [key for key in await store.list_keys() if key.is_usable(now)]
    replaced = {key.replaces_id for key in usable}  # those are meant to expire
    soon = [
        key.prefix
        for key in usable
        if key.expiry_time and key.expiry_time < now + _EXPIRES_SOON and key.id not in replaced
    ]
    if not usable:
        return CheckResult("keys", CheckState.NOTE, "none is usable: `steelyard keys create` makes one")
    if soon:
        return CheckResult("keys", CheckState.NOTE, f"{len(usable)} usable; soon to expire: {', '.join(soon)}")
    return CheckResult("keys", CheckState.OK, f"{len(usable)} usable")


async def _of_limits(settings: Settings) -> CheckResult:
    if not settings.rate_limit_requests:
        limit = "no rate limit; quotas"
    else:
        limit = f"{settings.rate_limit_requests} in {settings.rate_limit_window_seconds} s for each key,"
    try:
        counts = RateLimiter.of(settings).counts
    except SettingsError as error:
        return CheckResult("limits", CheckState.FAILED, str(error))
    if isinstance(counts, MemoryCounts):
        return CheckResult("limits", CheckState.OK, f"{limit} counted by each process alone")
    try:
        async with counts:
            await counts.add({"doctor": 0}, {"doctor": 1})
    except Exception as error:
        # It serves nevertheless, with every process counting alone.
        return CheckResult("limits", CheckState.NOTE, f"{limit} but their store failed with {type(error).__name__}")
    return CheckResult("limits", CheckState.OK, f"{limit} counted by all processes together")


def _of_core() -> CheckResult:
    if is_compiled():
        return CheckResult("core", CheckState.OK, "compiled")
    return CheckResult("core", CheckState.NOTE, "runs as it is written, more slowly: the install found no C compiler")


def _of_contract(directory: Path) -> CheckResult:
    if not directory.is_dir():
        return CheckResult("contract", CheckState.NOTE, f"there is no directory {directory} to compare it with")
    stale = [path.name for path in stale_files(directory)]
    if stale:
        return CheckResult("contract", CheckState.FAILED, f"out of date: {', '.join(stale)}; run `steelyard contract`")
    return CheckResult("contract", CheckState.OK, f"{directory} is what the code says")


def _of_directories(settings: Settings) -> list[CheckResult]:
    directories: dict[str, Callable[[], str | None]] = {"temporary files": tempfile.gettempdir}
    if is_embedded(settings.database_url):
        database = make_url(settings.database_url).database
        directories["database"] = lambda: str(Path(database or ".").parent)
    findings = []
    for what, where in directories.items():
        try:
            directory = where()
            with tempfile.TemporaryFile(dir=directory) as file:
                file.write(bytes(_WRITTEN_BYTES))
                file.flush()
                findings.append(CheckResult("directory", CheckState.OK, f"{what}: {directory} can be written"))
        except OSError as error:
            findings.append(CheckResult("directory", CheckState.FAILED, f"{what}: {error.strerror or error}"))
    return findings
