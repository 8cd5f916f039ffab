"""The operator's store: one object over the database, SQLite with nothing to set up by default."""

import asyncio
from collections.abc import AsyncIterator, Iterable, Mapping
from contextlib import asynccontextmanager
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any, NamedTuple, Protocol

from sqlalchemy import event, func, insert, select, update
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import make_url
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine, create_async_engine

from .keys import Key, new_prefix, new_secret, sha256
from .tables import KeyRow, OrganisationRow, Table, UsageRow


class StoreUnavailable(Exception):  # noqa: N818 - a state of the store, not a fault of the caller
    """The database could not be reached, or did not answer in time."""


class UsageCell(NamedTuple):
    """What a usage count is counted by."""

    key_id: int
    operation_id: str
    day: date


class KeySource(Protocol):
    """Where the key check reads keys from."""

    async def find_key(self, prefix: str) -> Key | None:
        """The key of that prefix, usable or not. Raises ``StoreUnavailable``."""
        ...


class UsageSink(Protocol):
    """Where usage counts go."""

    async def add_usage(self, counts: Mapping[UsageCell, int]) -> None:
        """Add the counts to what is stored, all or none. Raises ``StoreUnavailable``."""
        ...


class Store:
    """Organisations, keys and usage. Every method raises ``StoreUnavailable`` when the database is gone."""

    def __init__(self, url: str, *, timeout_seconds: float = 2.0) -> None:
        self._timeout_seconds = timeout_seconds
        self._engine = _engine(url, timeout_seconds)

    async def create_tables(self) -> None:
        """Create what is missing; harmless when all is there."""
        async with self._begin() as connection:
            await connection.run_sync(Table.metadata.create_all)

    async def close(self) -> None:
        """Close all connections."""
        await self._engine.dispose()

    async def ping(self) -> None:
        """Return if the tables can be read."""
        async with self._begin() as connection:
            await connection.execute(select(KeyRow.id).limit(1))

    async def create_key(
        self, organisation: str, scopes: Iterable[str], *, label: str = "", expiry_time: datetime | None = None
    ) -> tuple[Key, str]:
        """Make a key for ``organisation`` (created if new). Returns it with its token, which is not kept."""
        now = datetime.now(UTC)
        secret = new_secret()
        row: dict[str, Any] = {
            "prefix": new_prefix(),
            "secret_sha256": sha256(secret),
            "label": label,
            "scopes": " ".join(sorted(scopes)),
            "created_time": now,
            "expiry_time": expiry_time,
        }
        async with self._begin() as connection:
            organisation_id = await connection.scalar(
                select(OrganisationRow.id).where(OrganisationRow.name == organisation)
            )
            if organisation_id is None:
                added = insert(OrganisationRow).values(name=organisation, created_time=now)
                organisation_id = await connection.scalar(added.returning(OrganisationRow.id))
            await connection.execute(insert(KeyRow).values(organisation_id=organisation_id, **row))
        key = await self.find_key(row["prefix"])
        if key is None:
            raise StoreUnavailable("a key that was just written is not there")
        return key, f"{key.prefix}.{secret}"

    async def find_key(self, prefix: str) -> Key | None:
        """The key of that prefix, usable or not."""
        keys = await self._keys(KeyRow.prefix == prefix)
        return keys[0] if keys else None

    async def list_keys(self) -> list[Key]:
        """All keys, oldest first."""
        return await self._keys()

    async def revoke_key(self, prefix: str) -> bool:
        """Revoke a key. Returns whether there was one to revoke."""
        revoke = (
            update(KeyRow)
            .where(KeyRow.prefix == prefix, KeyRow.revoked_time.is_(None))
            .values(revoked_time=datetime.now(UTC))
        )
        async with self._begin() as connection:
            return (await connection.execute(revoke)).rowcount > 0

    async def add_usage(self, counts: Mapping[UsageCell, int]) -> None:
        """Add the counts to what is stored, all or none."""
        if not counts:
            return
        dialect = postgresql if self._engine.dialect.name == "postgresql" else sqlite
        added = dialect.insert(UsageRow)
        upsert = added.on_conflict_do_update(
            index_elements=[UsageRow.key_id, UsageRow.operation_id, UsageRow.day],
            set_={"request_count": UsageRow.request_count + added.excluded.request_count},
        )
        rows = [cell._asdict() | {"request_count": count} for cell, count in sorted(counts.items())]
        async with self._begin() as connection:
            await connection.execute(upsert, rows)

    async def usage(self) -> dict[UsageCell, int]:
        """All usage counts."""
        rows = select(UsageRow.key_id, UsageRow.operation_id, UsageRow.day, UsageRow.request_count)
        async with self._begin() as connection:
            return {UsageCell(*row[:3]): row[3] for row in await connection.execute(rows)}

    async def count_organisations(self) -> int:
        """How many organisations there are."""
        async with self._begin() as connection:
            return await connection.scalar(select(func.count()).select_from(OrganisationRow)) or 0

    async def _keys(self, *conditions: Any) -> list[Key]:
        query = (
            select(KeyRow.__table__, OrganisationRow.name)
            .join(OrganisationRow, OrganisationRow.id == KeyRow.organisation_id)
            .where(*conditions)
            .order_by(KeyRow.id)
        )
        async with self._begin() as connection:
            rows = await connection.execute(query)
            return [
                Key(
                    id=row.id,
                    organisation=row.name,
                    prefix=row.prefix,
                    secret_sha256=row.secret_sha256,
                    label=row.label,
                    scopes=frozenset(row.scopes.split()),
                    created_time=row.created_time,
                    expiry_time=row.expiry_time,
                    revoked_time=row.revoked_time,
                )
                for row in rows
            ]

    @asynccontextmanager
    async def _begin(self) -> AsyncIterator[AsyncConnection]:
        """A transaction, bounded in time."""
        try:
            async with asyncio.timeout(self._timeout_seconds), self._engine.begin() as connection:
                yield connection
        except TimeoutError as error:
            raise StoreUnavailable("the database did not answer in time") from error
        except (SQLAlchemyError, OSError) as error:
            raise StoreUnavailable(f"the database failed: {type(error).__name__}") from error


def _engine(url: str, timeout_seconds: float) -> AsyncEngine:
    try:
        parsed = make_url(url)
        is_sqlite = parsed.get_backend_name() == "sqlite"
        engine = create_async_engine(parsed, pool_pre_ping=not is_sqlite)
        if is_sqlite and parsed.database and parsed.database != ":memory:":
            Path(parsed.database).parent.mkdir(parents=True, exist_ok=True)
    except (ImportError, SQLAlchemyError, OSError) as error:
        # Not the URL itself, which may hold a password.
        raise StoreUnavailable(f"the database URL cannot be used: {type(error).__name__}") from error
    if is_sqlite:

        @event.listens_for(engine.sync_engine, "connect")
        def prepare(connection: Any, _record: object) -> None:
            """Write-ahead logging lets readers go on while another process writes."""
            cursor = connection.cursor()
            cursor.execute("PRAGMA journal_mode = WAL")
            cursor.execute("PRAGMA synchronous = NORMAL")
            cursor.execute("PRAGMA foreign_keys = ON")
            cursor.execute(f"PRAGMA busy_timeout = {int(timeout_seconds * 1000)}")
            cursor.close()

    return engine
