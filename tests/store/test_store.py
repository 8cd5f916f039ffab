"""The operator's store on a real SQLite file."""

import asyncio
import sqlite3
from collections.abc import AsyncIterator
from datetime import UTC, date, datetime, timedelta

import pytest
from in_process import PATIENCE_SECONDS
from steelyard.store.keys import new_secret, sha256
from steelyard.store.store import Store, StoreUnavailable, UsageCell
from steelyard.store.tables import Table


@pytest.fixture
async def store(database_url: str) -> AsyncIterator[Store]:
    opened = Store(database_url, timeout_seconds=PATIENCE_SECONDS)
    await opened.create_tables()
    yield opened
    await opened.close()


def database_path(url: str) -> str:
    return url.partition(":///")[2]


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
    assert await store.count_organisations() == 2
    assert [(k.organisation, k.label) for k in await store.list_keys()] == [
        ("Quarry Lane Gym", "a"),
        ("Quarry Lane Gym", "b"),
        ("Dockside Barbell", ""),
    ]


async def test_the_secret_is_not_stored(store: Store, database_url: str) -> None:
    _, token = await store.create_key("Quarry Lane Gym", ["compute"])
    await store.close()
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
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    monday, tuesday = date(2026, 3, 2), date(2026, 3, 3)
    first = {UsageCell(key.id, "plan_phases", monday): 2, UsageCell(key.id, "read_trend", monday): 1}
    second = {UsageCell(key.id, "plan_phases", monday): 3, UsageCell(key.id, "plan_phases", tuesday): 1}
    for counts in (first, {}, second):
        await store.add_usage(counts)
    assert await store.usage() == {
        UsageCell(key.id, "plan_phases", monday): 5,
        UsageCell(key.id, "read_trend", monday): 1,
        UsageCell(key.id, "plan_phases", tuesday): 1,
    }


async def test_usage_is_added_whole_or_not_at_all(store: Store) -> None:
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    day = date(2026, 3, 2)
    with pytest.raises(StoreUnavailable):
        await store.add_usage({UsageCell(key.id, "plan_phases", day): 1, UsageCell(999, "plan_phases", day): 1})
    assert await store.usage() == {}


async def test_two_processes_add_to_one_count(store: Store, database_url: str) -> None:
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    cell = UsageCell(key.id, "plan_phases", date(2026, 3, 2))
    other = Store(database_url, timeout_seconds=PATIENCE_SECONDS)
    await asyncio.gather(*(s.add_usage({cell: 1}) for s in [store, other] * 10))
    await other.close()
    assert await store.usage() == {cell: 20}


async def test_creating_tables_again_is_harmless(store: Store) -> None:
    key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
    await store.create_tables()
    assert await store.list_keys() == [key]


async def test_write_ahead_logging(store: Store, database_url: str) -> None:
    with sqlite3.connect(database_path(database_url)) as connection:
        assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)


async def test_a_database_that_is_locked_is_unavailable_in_time(database_url: str) -> None:
    patient = Store(database_url, timeout_seconds=PATIENCE_SECONDS)
    await patient.create_tables()
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


async def test_without_tables_it_is_not_ready(database_url: str) -> None:
    store = Store(database_url, timeout_seconds=PATIENCE_SECONDS)
    with pytest.raises(StoreUnavailable):
        await store.ping()
    await store.create_tables()
    await store.ping()
    await store.close()


def test_tables_hold_the_operators_side_alone() -> None:
    columns = {f"{t.name}.{c.name}" for t in Table.metadata.tables.values() for c in t.columns}
    assert columns == {
        "organisations.id",
        "organisations.name",
        "organisations.created_time",
        "api_keys.id",
        "api_keys.organisation_id",
        "api_keys.prefix",
        "api_keys.secret_sha256",
        "api_keys.label",
        "api_keys.scopes",
        "api_keys.created_time",
        "api_keys.expiry_time",
        "api_keys.revoked_time",
        "usage.key_id",
        "usage.operation_id",
        "usage.day",
        "usage.request_count",
    }
