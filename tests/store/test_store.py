"""The operator's store on real databases: a SQLite file and a PostgreSQL server."""

import asyncio
import shutil
import sqlite3
import time
from collections.abc import AsyncIterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
import pytest_asyncio
from in_process import PATIENCE_SECONDS
from servers import free_port
from sqlalchemy import Pool, event, text
from steelyard.store.keys import new_secret, sha256
from steelyard.store.store import FlushId, Store, StoreUnavailable, UsageCell, UsageCount, UsageLine
from steelyard.store.tables import Table

MONDAY, TUESDAY = date(2026, 3, 2), date(2026, 3, 3)


@pytest_asyncio.fixture(loop_scope="function")
async def store(store_url: str) -> AsyncIterator[Store]:
    opened = Store(store_url, timeout_seconds=PATIENCE_SECONDS)
    await opened.migrate()
    yield opened
    await opened.close()


@pytest_asyncio.fixture(loop_scope="function")
async def sqlite_store(database_url: str) -> AsyncIterator[Store]:
    opened = Store(database_url, timeout_seconds=PATIENCE_SECONDS)
    await opened.migrate()
    yield opened
    await opened.close()


def database_path(url: str) -> str:
    return url.partition(":///")[2]


@pytest.mark.parametrize("is_replaced", [False, True], ids=["deleted", "replaced"])
async def test_nothing_is_written_to_a_file_that_is_no_longer_there(
    sqlite_store: Store, database_url: str, is_replaced: bool
) -> None:
    """Who has it open could write on without an error, into nothing; and would be told that use is written."""
    key, _ = await sqlite_store.create_key("Quarry Lane Gym", ["compute"])
    path = Path(database_path(database_url))
    counts = {UsageCell(key.id, "plan_phases", MONDAY): UsageCount(1, 1)}
    await sqlite_store.add_usage(counts, FlushId("w", 1))
    if is_replaced:
        shutil.copy(path, path.with_suffix(".copy"))
        path.with_suffix(".copy").rename(path)
    else:
        path.unlink()
    said = "deleted or replaced while it was used; start the service again"
    with pytest.raises(StoreUnavailable, match=said):
        await sqlite_store.add_usage(counts, FlushId("w", 2))
    with pytest.raises(StoreUnavailable, match=said):
        await sqlite_store.ping()
    with pytest.raises(StoreUnavailable, match=said):
        await sqlite_store.find_key(key.prefix)


async def test_life_of_a_key(store: Store) -> None:
    expiry = datetime.now(UTC) + timedelta(days=30)
    key, token = await store.create_key("Quarry Lane Gym", ["methods", "compute"], label="till", expiry_time=expiry)
    prefix, _, secret = token.partition(".")
    assert prefix == key.prefix
    found = await store.find_key(prefix)
    assert found == key
    assert (key.organisation, key.label, key.expiry_time) == ("Quarry Lane Gym", "till", expiry)
    assert key.scopes == {"compute", "methods"}
    assert key.fits(secret)
    assert not key.fits(secret + "x")
    now = datetime.now(UTC)
    assert key.is_usable(now)
    assert not key.is_usable(expiry)
    assert await store.revoke_key(prefix)
    revoked = await store.find_key(prefix)
    assert revoked is not None
    assert revoked.revoked_time is not None
    assert not revoked.is_usable(now)
    assert not await store.revoke_key(prefix), "it was revoked before"
    assert not await store.revoke_key("nobody")


async def test_keys_of_one_organisation_share_its_row(store: Store) -> None:
    for label in ("a", "b"):
        await store.create_key("Quarry Lane Gym", ["compute"], label=label)
    await store.create_key("Dockside Barbell", ["compute"])
    assert [(k.organisation, k.label) for k in await store.list_keys()] == [
        ("Quarry Lane Gym", "a"),
        ("Quarry Lane Gym", "b"),
        ("Dockside Barbell", ""),
    ]


async def test_a_rotated_key_and_its_successor_overlap(store: Store) -> None:
    expiry = datetime.now(UTC) + timedelta(days=30)
    old, _ = await store.create_key("Quarry Lane Gym", ["compute"], label="till", expiry_time=expiry)
    assert await store.set_key_quota(old.prefix, 500)
    before = datetime.now(UTC)
    rotated = await store.rotate_key(old.prefix, overlap=timedelta(hours=2))
    after = datetime.now(UTC)
    assert rotated is not None
    new, token = rotated
    assert new.fits(token.partition(".")[2])
    assert new.prefix != old.prefix
    assert (new.organisation, new.label, new.scopes, new.replaces_id) == (old.organisation, "till", old.scopes, old.id)
    assert [quota.daily_units for quota in new.quotas] == [500]
    assert new.expiry_time is not None
    assert before + timedelta(days=29) < new.expiry_time <= after + timedelta(days=30), "it lasts as long anew"
    overlapping = await store.find_key(old.prefix)
    assert overlapping is not None
    assert overlapping.expiry_time is not None
    assert before + timedelta(hours=2) <= overlapping.expiry_time <= after + timedelta(hours=2)
    assert overlapping.is_usable(after)
    assert new.is_usable(after)
    assert not overlapping.is_usable(after + timedelta(hours=2))


async def test_rotation_never_lengthens_a_keys_life(store: Store) -> None:
    expiry = datetime.now(UTC) + timedelta(hours=1)
    old, _ = await store.create_key("Quarry Lane Gym", ["compute"], expiry_time=expiry)
    until = datetime.now(UTC) + timedelta(days=90)
    rotated = await store.rotate_key(old.prefix, overlap=timedelta(days=7), expiry_time=until)
    assert rotated is not None
    assert rotated[0].expiry_time == until
    overlapping = await store.find_key(old.prefix)
    assert overlapping is not None
    assert overlapping.expiry_time == expiry


async def test_a_key_that_is_not_usable_is_not_rotated(store: Store) -> None:
    revoked, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    await store.revoke_key(revoked.prefix)
    past = datetime.now(UTC) - timedelta(seconds=1)
    expired, _ = await store.create_key("Quarry Lane Gym", ["compute"], expiry_time=past)
    for prefix in (revoked.prefix, expired.prefix, "nobody"):
        assert await store.rotate_key(prefix, overlap=timedelta(days=1)) is None
    assert len(await store.list_keys()) == 2


async def test_quotas_come_with_what_the_ledger_counted_today(store: Store) -> None:
    till, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    desk, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    other, _ = await store.create_key("Dockside Barbell", ["compute"])
    assert await store.set_key_quota(till.prefix, 100)
    assert await store.set_organisation_quota("Quarry Lane Gym", 1000)
    assert not await store.set_key_quota("nobody", 1)
    assert not await store.set_organisation_quota("Nobody's Gym", 1)
    today = datetime.now(UTC).date()
    yesterday = today - timedelta(days=1)
    await store.add_usage(
        {
            UsageCell(till.id, "plan_phases", today): UsageCount(3, 30),
            UsageCell(till.id, "read_trend", today): UsageCount(2, 2),
            UsageCell(till.id, "plan_phases", yesterday): UsageCount(7, 7),
            UsageCell(desk.id, "plan_phases", today): UsageCount(5, 5),
            UsageCell(other.id, "plan_phases", today): UsageCount(9, 9),
        },
        FlushId("a", 1),
    )
    quotas = {}
    for key in (till, desk, other):
        found = await store.find_key(key.prefix)
        assert found is not None
        quotas[key.id] = [(q.subject.partition(":")[0], q.daily_units, q.used_units) for q in found.quotas]
    assert today == datetime.now(UTC).date(), "run across midnight; run again"
    assert quotas == {
        till.id: [("key", 100, 32), ("organisation", 1000, 37)],
        desk.id: [("organisation", 1000, 37)],
        other.id: [],
    }
    assert await store.set_key_quota(till.prefix, None)
    assert await store.set_organisation_quota("Quarry Lane Gym", None)
    free = await store.find_key(till.prefix)
    assert free is not None
    assert free.quotas == ()


async def test_the_secret_is_not_stored(sqlite_store: Store, database_url: str) -> None:
    _, token = await sqlite_store.create_key("Quarry Lane Gym", ["compute"])
    await sqlite_store.close()
    secret = token.partition(".")[2]
    with sqlite3.connect(database_path(database_url)) as connection:
        dump = "\n".join(connection.iterdump())
    assert secret not in dump
    assert sha256(secret).hex() in dump.lower()


def test_secrets_hold_256_bits() -> None:
    secrets = {new_secret() for _ in range(1000)}
    assert len(secrets) == 1000
    assert all(len(secret) == 43 for secret in secrets)  # 32 bytes in base64 without padding


async def test_usage_adds_up(store: Store) -> None:
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"], label="till")
    first = {
        UsageCell(key.id, "plan_phases", MONDAY): UsageCount(2, 2),
        UsageCell(key.id, "read_trend", MONDAY): UsageCount(1, 40),
    }
    second = {
        UsageCell(key.id, "plan_phases", MONDAY): UsageCount(3, 3),
        UsageCell(key.id, "plan_phases", TUESDAY): UsageCount(1, 1),
    }
    for number, counts in enumerate((first, {}, second)):
        await store.add_usage(counts, FlushId("a", number))
    assert await store.usage() == {
        UsageCell(key.id, "plan_phases", MONDAY): UsageCount(5, 5),
        UsageCell(key.id, "read_trend", MONDAY): UsageCount(1, 40),
        UsageCell(key.id, "plan_phases", TUESDAY): UsageCount(1, 1),
    }
    assert await store.usage_lines(MONDAY, MONDAY) == [
        UsageLine(MONDAY, "Quarry Lane Gym", key.prefix, "till", "plan_phases", 5, 5),
        UsageLine(MONDAY, "Quarry Lane Gym", key.prefix, "till", "read_trend", 1, 40),
    ]
    assert len(await store.usage_lines(MONDAY, TUESDAY)) == 3


async def test_usage_is_added_whole_or_not_at_all(store: Store) -> None:
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    one = UsageCount(1, 1)
    with pytest.raises(StoreUnavailable):
        await store.add_usage(
            {UsageCell(key.id, "plan_phases", MONDAY): one, UsageCell(999, "plan_phases", MONDAY): one},
            FlushId("a", 1),
        )
    assert await store.usage() == {}
    await store.add_usage({UsageCell(key.id, "plan_phases", MONDAY): one}, FlushId("a", 1))
    assert await store.usage() != {}, "its id was not taken by the flush that failed"


async def test_a_flush_is_applied_once(store: Store) -> None:
    """Sent again, because its answer was lost, and by two connections at once."""
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    cell = UsageCell(key.id, "plan_phases", MONDAY)
    for _ in range(3):
        await store.add_usage({cell: UsageCount(2, 5)}, FlushId("a", 1))
    await asyncio.gather(*(store.add_usage({cell: UsageCount(1, 1)}, FlushId("a", 2)) for _ in range(5)))
    await store.add_usage({cell: UsageCount(1, 1)}, FlushId("b", 1))
    await store.add_usage({cell: UsageCount(9, 9)}, FlushId("a", 1))
    assert await store.usage() == {cell: UsageCount(4, 7)}


async def test_old_usage_is_forgotten(store: Store) -> None:
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    days = {UsageCell(key.id, "plan_phases", day): UsageCount(1, 1) for day in (MONDAY, TUESDAY)}
    await store.add_usage(days, FlushId("a", 1))
    assert await store.forget_usage(TUESDAY) == 1
    assert [cell.day for cell in await store.usage()] == [TUESDAY]


async def test_two_processes_add_to_one_count(store: Store, store_url: str) -> None:
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    cell = UsageCell(key.id, "plan_phases", MONDAY)
    other = Store(store_url, timeout_seconds=PATIENCE_SECONDS)
    await asyncio.gather(
        *(s.add_usage({cell: UsageCount(1, 2)}, FlushId(f"{n}", 1)) for n, s in enumerate([store, other] * 10))
    )
    await other.close()
    assert await store.usage() == {cell: UsageCount(20, 40)}


async def test_two_processes_make_keys_for_one_new_organisation(store: Store, store_url: str) -> None:
    """One may lose the race for the organisation's row, and says so; none makes a second row."""
    other = Store(store_url, timeout_seconds=PATIENCE_SECONDS)
    made = await asyncio.gather(
        *(s.create_key("Quarry Lane Gym", ["compute"]) for s in [store, other] * 4), return_exceptions=True
    )
    await other.close()
    assert all(isinstance(each, tuple | StoreUnavailable) for each in made)
    assert len(await store.list_keys()) == sum(isinstance(each, tuple) for each in made) > 0


async def test_write_ahead_logging(sqlite_store: Store, database_url: str) -> None:
    with sqlite3.connect(database_path(database_url)) as connection:
        assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)


async def test_a_database_that_is_locked_is_unavailable_in_time(database_url: str) -> None:
    patient = Store(database_url, timeout_seconds=PATIENCE_SECONDS)
    await patient.migrate()
    await patient.close()
    store = Store(database_url, timeout_seconds=0.2)
    with sqlite3.connect(database_path(database_url)) as holder:
        holder.execute("BEGIN EXCLUSIVE")
        with pytest.raises(StoreUnavailable):
            await store.create_key("Quarry Lane Gym", ["compute"])
        holder.rollback()
    await store.close()
    freed = Store(database_url, timeout_seconds=PATIENCE_SECONDS)
    await freed.create_key("Quarry Lane Gym", ["compute"])
    await freed.close()


async def test_readers_go_on_while_another_process_writes(sqlite_store: Store, database_url: str) -> None:
    key, _ = await sqlite_store.create_key("Quarry Lane Gym", ["compute"])
    with sqlite3.connect(database_path(database_url)) as writer:
        writer.execute("BEGIN IMMEDIATE")
        assert await sqlite_store.find_key(key.prefix) == key
        await sqlite_store.ping()
        writer.rollback()


@pytest.mark.parametrize(
    ("pragma", "said"),
    [("max_page_count = 1", "its disk is full"), ("query_only = ON", "its file can only be read")],
)
async def test_what_a_file_refuses_is_named(sqlite_store: Store, pragma: str, said: str) -> None:
    """As SQLite itself says it: of a file that may not grow, and of one that may not change."""
    key, _ = await sqlite_store.create_key("Quarry Lane Gym", ["compute"])
    many = {UsageCell(key.id, f"{'x' * 90}{number}", MONDAY): UsageCount(1, 1) for number in range(200)}

    def refuse(connection: Any, *_: object) -> None:
        cursor = connection.cursor()
        cursor.execute(f"PRAGMA {pragma}")
        cursor.close()

    event.listen(Pool, "checkout", refuse)
    try:
        with pytest.raises(StoreUnavailable, match=said):
            await sqlite_store.add_usage(many, FlushId("a", 1))
    finally:
        event.remove(Pool, "checkout", refuse)
    assert await sqlite_store.usage() == {}, "nothing of it was written"


@pytest.mark.parametrize(
    "url",
    [
        "postgresql+asyncpg://steelyard@127.0.0.1:{free_port}/operator",
        "postgresql+asyncpg://steelyard@127.0.0.1:{port}/no_such_database",
    ],
)
async def test_a_server_that_cannot_be_used_is_unavailable(url: str, request: pytest.FixtureRequest) -> None:
    server = request.getfixturevalue("postgresql_server")
    store = Store(url.format(port=server.port, free_port=free_port()), timeout_seconds=PATIENCE_SECONDS)
    for use in (store.ping, store.list_keys, store.revision, store.migrate):
        with pytest.raises(StoreUnavailable):
            await use()
    await store.close()


@pytest.mark.parametrize("store_url", ["postgresql"], indirect=True)
async def test_a_server_that_hangs_is_unavailable_in_time(store_url: str, request: pytest.FixtureRequest) -> None:
    """With a connection open before, and without. The limit is generous: what matters is that there is one."""
    server = request.getfixturevalue("postgresql_server")
    store = Store(store_url, timeout_seconds=PATIENCE_SECONDS)
    await store.migrate()
    await store.close()
    connected, fresh = Store(store_url, timeout_seconds=0.5), Store(store_url, timeout_seconds=0.5)
    await connected.ping()
    server.freeze()
    try:
        for each in (connected, fresh):
            async with asyncio.timeout(PATIENCE_SECONDS):
                with pytest.raises(StoreUnavailable):
                    await each.ping()
    finally:
        server.thaw()
    for each in (connected, fresh):
        await eventually_reachable(each)
        await each.close()


async def eventually_reachable(store: Store) -> None:
    deadline = time.monotonic() + PATIENCE_SECONDS
    while True:
        try:
            return await store.ping()
        except StoreUnavailable:
            assert time.monotonic() < deadline
            await asyncio.sleep(0.05)


@pytest.mark.parametrize("store_url", ["postgresql"], indirect=True)
async def test_a_connection_that_the_server_dropped_is_replaced(store: Store) -> None:
    await store.ping()
    async with store._engines.reads.connect() as connection:
        drop = "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid()"
        await connection.execute(text(drop + " AND datname = current_database()"))
    await store.ping()


def test_tables_hold_the_operators_side_alone() -> None:
    columns = {f"{t.name}.{c.name}" for t in Table.metadata.tables.values() for c in t.columns}
    assert columns == {
        "organisations.id",
        "organisations.name",
        "organisations.created_time",
        "organisations.daily_quota",
        "api_keys.id",
        "api_keys.organisation_id",
        "api_keys.prefix",
        "api_keys.secret_sha256",
        "api_keys.label",
        "api_keys.scopes",
        "api_keys.created_time",
        "api_keys.expiry_time",
        "api_keys.revoked_time",
        "api_keys.daily_quota",
        "api_keys.replaces_id",
        "usage.key_id",
        "usage.operation_id",
        "usage.day",
        "usage.request_count",
        "usage.unit_count",
        "usage_writers.writer",
        "usage_writers.flush_number",
        "usage_writers.written_time",
    }
