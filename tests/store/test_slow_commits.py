"""The ledger while PostgreSQL's commits do not return: a synchronous standby is lost."""

import asyncio
import contextlib
import time
from collections.abc import Iterator

import servers
from in_process import PATIENCE_SECONDS
from servers import Server, new_database
from steelyard.http.gate.usage import UsageCounter
from steelyard.store import store as store_module
from steelyard.store.store import Store


@contextlib.contextmanager
def commits_that_hang(server: Server) -> Iterator[None]:
    """A commit waits for a standby that there is not."""
    try:
        servers.run_sql(server, "ALTER SYSTEM SET synchronous_standby_names = 'nobody'", "SELECT pg_reload_conf()")
        time.sleep(0.3)
        yield
    finally:
        servers.run_sql(server, "ALTER SYSTEM RESET synchronous_standby_names", "SELECT pg_reload_conf()")


async def test_each_request_is_billed_once_though_commits_hang(postgresql_server: Server) -> None:
    url = new_database(postgresql_server)
    store = Store(url, timeout_seconds=PATIENCE_SECONDS)
    await store.migrate()
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    patient, store_module.COMMIT_SECONDS = store_module.COMMIT_SECONDS, 0.2  # so that commits are broken off as well
    hurried = Store(url, timeout_seconds=0.2)
    usage = UsageCounter(hurried, flush_seconds=0.05)
    running = asyncio.create_task(usage.run())
    try:
        with commits_that_hang(postgresql_server):
            for _ in range(11):
                usage.count(key.id, "plan_phases")
                await asyncio.sleep(0.15)
            assert usage.waiting_units > 0
        deadline = time.monotonic() + PATIENCE_SECONDS
        while usage.waiting_units:
            assert time.monotonic() < deadline
            await asyncio.sleep(0.05)
    finally:
        store_module.COMMIT_SECONDS = patient
        running.cancel()
        await asyncio.gather(running, return_exceptions=True)
    assert [count.requests for count in (await store.usage()).values()] == [11]
    await hurried.close()
    await store.close()
