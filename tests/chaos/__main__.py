"""``make chaos``: break everything in turn, write the table, and fail if a promise was not kept."""

import asyncio
import platform
import sys
from collections.abc import AsyncIterator
from pathlib import Path

from servers import new_database, postgresql, valkey

from . import endings, fairness, proxied, scenarios, strangers
from .scenarios import Row
from .served import migrated, sqlite_url

REPORT = Path(__file__).with_name("report.md")


async def rows() -> AsyncIterator[Row]:
    """One scenario after the other, each on a fresh store."""
    with postgresql() as database:
        with sqlite_url() as url:
            yield await scenarios.worker_killed(url, flush_seconds=1.0, load_seconds=4.0)
        yield await scenarios.worker_killed(new_database(database), flush_seconds=5.0, load_seconds=4.0)
        yield await scenarios.database_gone(database, new_database(database), grace_seconds=8.0)
        yield await scenarios.database_gone(database, new_database(database), grace_seconds=8.0, hangs=True)
        url = new_database(database)
        await migrated(url)
        yield await scenarios.started_without_database(database, url)
        yield await proxied.grace_behind_the_proxy(database, new_database(database))
        yield await strangers.invented_keys(new_database(database))
    with sqlite_url() as url:
        yield await strangers.invented_keys(url)
    with sqlite_url() as url:
        yield await proxied.guesses_through_the_proxy(url)
    with sqlite_url() as url:
        yield await fairness.batch_beside_optima(url)
    with valkey() as counts, sqlite_url() as url:
        yield await scenarios.limits_store_gone(counts, url)
        yield await scenarios.limits_store_gone(counts, url, hangs=True)
    for how in endings.Gone:
        with sqlite_url() as url:
            yield await endings.parent_gone(url, how)
    with sqlite_url() as url:
        yield await endings.told_to_stop_with_a_batch(url)
    with sqlite_url() as url:
        yield await scenarios.told_to_stop(url, under_way=50)
    with sqlite_url() as url:
        yield await scenarios.told_to_stop_with_one_that_never_ends(url)
    with sqlite_url() as url:
        yield await scenarios.told_to_stop_while_starting(url)


async def main() -> int:
    """Returns how many rows broke a promise."""
    seen = []
    async for row in rows():
        seen.append(row)
        print(f"{'BROKEN: ' + ', '.join(row.broken) if row.broken else 'kept'}: {row.fault}\n  {row.seen}", flush=True)
    lines = [
        "# What breaks, what is promised, what was seen",
        "",
        "Written by `make chaos`, on loopback, with the service, PostgreSQL and the store of the limits in processes",
        "of their own. Names in capitals are settings, without their prefix `STEELYARD_`; times are set short here.",
        f"Python {platform.python_version()}, {platform.system()}.",
        "",
        "| fault | promised | seen | kept |",
        "| --- | --- | --- | --- |",
        *(row.line() for row in seen),
    ]
    REPORT.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return sum(bool(row.broken) for row in seen)


if __name__ == "__main__":
    sys.exit(1 if asyncio.run(main()) else 0)
