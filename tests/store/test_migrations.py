"""The tables through their revisions, on real databases."""

import asyncio
from collections.abc import AsyncIterator
from typing import Any

import pytest
import pytest_asyncio
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from in_process import PATIENCE_SECONDS
from sqlalchemy import Connection, inspect, text
from steelyard.store import schema
from steelyard.store.schema import HEAD, SchemaBehind, alembic_config
from steelyard.store.store import Store, StoreUnavailable, UsageCount
from steelyard.store.tables import Table

LATER = ["0002", "0003"]  # the revisions after the first


@pytest_asyncio.fixture(loop_scope="function")
async def store(store_url: str) -> AsyncIterator[Store]:
    opened = Store(store_url, timeout_seconds=PATIENCE_SECONDS)
    yield opened
    await opened.close()


def run_to(revision: str) -> Any:
    return lambda connection: command.upgrade(alembic_config(connection), revision)


async def begin_and(store: Store, use: Any) -> Any:
    async with store._engines.writes.begin() as connection:
        return await connection.run_sync(use)


def test_the_head_is_the_newest_migration() -> None:
    script = ScriptDirectory.from_config(alembic_config())
    assert script.get_heads() == [HEAD]
    revisions = [step.revision for step in script.walk_revisions()]
    assert revisions == sorted(revisions, reverse=True), "revisions are compared as texts"


async def test_migrated_tables_are_what_the_code_says(store: Store) -> None:
    assert await store.revision() is None
    assert await store.migrate() == ["0001", *LATER]
    assert await store.migrate() == []
    assert await store.revision() == HEAD

    def differences(connection: Connection) -> Any:
        return compare_metadata(MigrationContext.configure(connection), Table.metadata)

    assert await begin_and(store, differences) == []

    def lacking(connection: Connection) -> Any:
        connection.execute(text("ALTER TABLE usage DROP COLUMN unit_count"))
        return differences(connection)

    assert await begin_and(store, lacking) != [], "the comparison can fail"


async def test_a_migration_keeps_what_was_there(store: Store) -> None:
    await begin_and(store, run_to("0001"))

    def fill(connection: Connection) -> None:
        now = "2026-03-02 08:00:00+00:00" if connection.dialect.name == "postgresql" else "2026-03-02 08:00:00"
        digest = "'\\x00'" if connection.dialect.name == "postgresql" else "x'00'"
        connection.exec_driver_sql(f"INSERT INTO organisations VALUES (1, 'Quarry Lane Gym', '{now}')")
        connection.exec_driver_sql(
            f"INSERT INTO api_keys VALUES (1, 1, 'abc', {digest}, 'till', 'compute', '{now}', NULL, NULL)"
        )
        connection.exec_driver_sql("INSERT INTO usage VALUES (1, 'plan_phases', '2026-03-02', 7)")

    await begin_and(store, fill)
    assert await store.migrate() == LATER
    (key,) = await store.list_keys()
    assert (key.organisation, key.prefix, key.label, key.quotas, key.replaces_id) == (
        "Quarry Lane Gym",
        "abc",
        "till",
        (),
        None,
    )
    assert list((await store.usage()).values()) == [UsageCount(7, 7)]


async def test_tables_from_before_migrations_are_taken_over(store: Store) -> None:
    await begin_and(store, run_to("0001"))
    await begin_and(store, lambda connection: connection.execute(text("DROP TABLE alembic_version")))
    assert await store.revision() == "0001"
    assert await store.migrate() == LATER
    assert await store.revision() == HEAD


async def test_processes_that_migrate_at_once_do_it_once(store_url: str) -> None:
    stores = [Store(store_url, timeout_seconds=PATIENCE_SECONDS) for _ in range(4)]
    applied = await asyncio.gather(*(store.migrate() for store in stores))
    assert sorted(applied) == [[], [], [], ["0001", *LATER]]
    for store in stores:
        await store.close()


async def test_a_migration_that_fails_changes_nothing(store: Store) -> None:
    def obstruct(connection: Connection) -> None:
        connection.execute(text("CREATE TABLE usage (id INTEGER)"))

    await begin_and(store, obstruct)
    with pytest.raises(StoreUnavailable, match="changed nothing"):
        await store.migrate()
    assert await begin_and(store, lambda connection: inspect(connection).get_table_names()) == ["usage"]


async def test_sqlite_is_brought_up_to_date_and_a_server_only_when_told(store: Store, store_url: str) -> None:
    if store_url.startswith("sqlite"):
        await store.prepare()
    else:
        with pytest.raises(SchemaBehind, match="steelyard migrate"):
            await store.prepare()
        assert await store.revision() is None
        await begin_and(store, run_to("0001"))
        with pytest.raises(SchemaBehind, match="at revision 0001"):
            await store.prepare()
        await store.prepare(migrate=True)
    assert await store.revision() == HEAD
    await store.prepare()


async def test_newer_tables_are_accepted(store: Store) -> None:
    """So that replicas of the old version serve on while the new one is rolled out."""
    await store.migrate()
    newer = f"{int(HEAD) + 1:04}"
    await begin_and(store, lambda c: c.execute(text(f"UPDATE alembic_version SET version_num = '{newer}'")))
    await store.prepare()
    await store.prepare(migrate=True)
    assert await store.revision() == newer
    await store.create_key("Quarry Lane Gym", ["compute"])


async def test_without_tables_it_is_not_ready(store: Store) -> None:
    with pytest.raises(StoreUnavailable):
        await store.ping()
    await begin_and(store, run_to("0001"))
    with pytest.raises(StoreUnavailable):
        await store.ping()
    await store.migrate()
    await store.ping()


@pytest.mark.parametrize(("found", "behind"), [(None, True), ("0001", True), (HEAD, False), ("9999", False)])
def test_what_is_behind(found: str | None, behind: bool) -> None:
    assert schema.is_behind(found) is behind
