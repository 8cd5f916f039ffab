"""The operator's store: one object over the database, SQLite with nothing to set up by default."""

import asyncio
from collections.abc import AsyncIterator, Collection, Iterable, Mapping
from contextlib import asynccontextmanager, suppress
from datetime import UTC, date, datetime, timedelta
from importlib import import_module
from typing import Any, NamedTuple, Protocol

from msgspec.structs import replace
from sqlalchemy import delete, func, insert, select, update
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.ext.asyncio import AsyncConnection

from . import schema
from .database import FileWatch, StoreUnavailable, fault_of, is_embedded, open_engines
from .keys import Key, Quota, new_prefix, new_secret, sha256
from .tables import KeyRow, OrganisationRow, UsageRow, UsageWriterRow

__all__ = ["FlushId", "KeySource", "Store", "StoreUnavailable", "UsageCell", "UsageCount", "UsageLine", "UsageSink"]

COMMIT_SECONDS = 60.0


class UsageCell(NamedTuple):
    """What use is counted by."""

    key_id: int
    operation_id: str
    day: date


class UsageCount(NamedTuple):
    """How much was used: requests, and the units they cost (a batch costs one for every line)."""

    requests: int
    units: int


class FlushId(NamedTuple):
    """Which flush of which process: one is applied once, and those of a process one after the other."""

    writer: str
    number: int


class UsageLine(NamedTuple):
    """One line of the usage report."""

    day: date
    organisation: str
    prefix: str
    label: str
    operation_id: str
    requests: int
    units: int


class KeySource(Protocol):
    """Where the key check reads keys from."""

    async def find_keys(self, prefixes: Collection[str]) -> dict[str, Key]:
        """The keys of those prefixes that there are, usable or not. Raises ``StoreUnavailable``."""
        ...


class UsageSink(Protocol):
    """Where usage counts go."""

    async def add_usage(self, counts: Mapping[UsageCell, UsageCount], flush: FlushId) -> None:
        """Add the counts to what is stored, all or none, and not twice for one id. Raises ``StoreUnavailable``."""
        ...


class Store:
    """Organisations, keys and usage. Every method raises ``StoreUnavailable`` when the database is gone."""

    def __init__(self, url: str, *, timeout_seconds: float = 2.0) -> None:
        self._timeout_seconds = timeout_seconds
        self._engines = open_engines(url, timeout_seconds)
        self._is_embedded = is_embedded(url)
        self._file = FileWatch(url)

    async def prepare(self, *, migrate: bool = False) -> None:
        """See that the tables are what this code needs.

        A SQLite file is brought up to date without asking; another database only with ``migrate``. Otherwise raises
        ``SchemaBehind``.
        """
        found = await self.revision()
        if not schema.is_behind(found):
            return
        if not (migrate or self._is_embedded):
            raise schema.SchemaBehind(found)
        await self.migrate()

    async def revision(self) -> str | None:
        """The revision of the tables, None when there are none."""
        async with self._reading() as connection:
            return await connection.run_sync(schema.revision)

    async def migrate(self) -> list[str]:
        """Bring the tables up to date, however long it takes. Returns the revisions that were applied."""
        with _unavailable():
            async with self._engines.writes.connect() as connection:
                try:
                    async with connection.begin():
                        return await connection.run_sync(schema.upgrade)
                except SQLAlchemyError as error:
                    reason = str(getattr(error, "orig", None) or error).partition("\n")[0]
                    raise StoreUnavailable(f"the migration failed, and changed nothing: {reason}") from error

    async def close(self) -> None:
        """Close all connections, or leave them to a database that does not take leave in time."""
        with suppress(TimeoutError):
            async with asyncio.timeout(self._timeout_seconds):
                await self._engines.reads.dispose()

    async def ping(self) -> None:
        """Return if the tables can be read."""
        async with self._reading() as connection:
            await connection.execute(select(KeyRow.__table__).limit(1))

    async def create_key(
        self, organisation: str, scopes: Iterable[str], *, label: str = "", expiry_time: datetime | None = None
    ) -> tuple[Key, str]:
        """Make a key for ``organisation`` (created if new). Returns it with its token, which is not kept."""
        async with self._writing() as connection:
            organisation_id = await connection.scalar(
                select(OrganisationRow.id).where(OrganisationRow.name == organisation)
            )
            if organisation_id is None:
                added = insert(OrganisationRow).values(name=organisation, created_time=datetime.now(UTC))
                organisation_id = await connection.scalar(added.returning(OrganisationRow.id))
            return await _insert_key(
                connection,
                organisation_id=organisation_id,
                label=label,
                scopes=" ".join(sorted(scopes)),
                expiry_time=expiry_time,
            )

    async def rotate_key(
        self, prefix: str, *, overlap: timedelta, expiry_time: datetime | None = None
    ) -> tuple[Key, str] | None:
        """Make a key like the one of that prefix, which goes on for ``overlap`` and then expires.

        The new key has the old one's organisation, label, scopes and quota. It lasts until ``expiry_time``, or else
        as long as the old one was made to last. Returns None unless there is such a key and it is usable.
        """
        now = datetime.now(UTC)
        async with self._writing() as connection:
            old = (await connection.execute(select(KeyRow.__table__).where(KeyRow.prefix == prefix))).one_or_none()
            if old is None or old.revoked_time or (old.expiry_time and old.expiry_time <= now):
                return None
            if expiry_time is None and old.expiry_time:
                expiry_time = now + (old.expiry_time - old.created_time)
            end = min(now + overlap, old.expiry_time or datetime.max.replace(tzinfo=UTC))
            await connection.execute(update(KeyRow).where(KeyRow.id == old.id).values(expiry_time=end))
            return await _insert_key(
                connection,
                organisation_id=old.organisation_id,
                label=old.label,
                scopes=old.scopes,
                expiry_time=expiry_time,
                daily_quota=old.daily_quota,
                replaces_id=old.id,
            )

    async def find_key(self, prefix: str) -> Key | None:
        """The key of that prefix, usable or not, with what its quotas have left."""
        return (await self.find_keys([prefix])).get(prefix)

    async def find_keys(self, prefixes: Collection[str]) -> dict[str, Key]:
        """The keys of several prefixes in one query, as ``find_key`` gives them; those that there are."""
        async with self._reading() as connection:
            keys = await _select_keys(connection, KeyRow.prefix.in_(prefixes))
            return {key.prefix: await _count_quotas(connection, key) for key in keys}

    async def list_keys(self) -> list[Key]:
        """All keys, oldest first; what their quotas have left is not counted."""
        async with self._reading() as connection:
            return await _select_keys(connection)

    async def revoke_key(self, prefix: str) -> bool:
        """Revoke a key. Returns whether there was one to revoke."""
        revoke = (
            update(KeyRow)
            .where(KeyRow.prefix == prefix, KeyRow.revoked_time.is_(None))
            .values(revoked_time=datetime.now(UTC))
        )
        async with self._writing() as connection:
            return (await connection.execute(revoke)).rowcount > 0

    async def set_key_quota(self, prefix: str, daily_units: int | None) -> bool:
        """Limit a key to ``daily_units`` a day (UTC), or lift the limit. Returns whether there is such a key."""
        change = update(KeyRow).where(KeyRow.prefix == prefix).values(daily_quota=daily_units)
        async with self._writing() as connection:
            return (await connection.execute(change)).rowcount > 0

    async def set_organisation_quota(self, organisation: str, daily_units: int | None) -> bool:
        """Limit all keys of an organisation together, or lift the limit. Returns whether there is such a one."""
        change = update(OrganisationRow).where(OrganisationRow.name == organisation).values(daily_quota=daily_units)
        async with self._writing() as connection:
            return (await connection.execute(change)).rowcount > 0

    async def add_usage(self, counts: Mapping[UsageCell, UsageCount], flush: FlushId) -> None:
        """Add the counts to what is stored, all or none, and not twice for one id.

        A commit takes as long as it takes, up to ``COMMIT_SECONDS``: one that is broken off may be carried out or not,
        which the id would show, but the database would have to wait for the same thing once more.
        """
        if not counts:
            return
        # The engine has loaded its own dialect; loading the other's too would lengthen every start by a tenth.
        dialect = import_module(f"sqlalchemy.dialects.{self._engines.writes.dialect.name}")
        writer = dialect.insert(UsageWriterRow).values(
            writer=flush.writer, flush_number=flush.number, written_time=datetime.now(UTC)
        )
        is_next = writer.on_conflict_do_update(
            index_elements=[UsageWriterRow.writer],
            set_={"flush_number": writer.excluded.flush_number, "written_time": writer.excluded.written_time},
            where=UsageWriterRow.flush_number < writer.excluded.flush_number,
        ).returning(UsageWriterRow.writer)
        added = dialect.insert(UsageRow)
        upsert = added.on_conflict_do_update(
            index_elements=[UsageRow.key_id, UsageRow.operation_id, UsageRow.day],
            set_={
                "request_count": UsageRow.request_count + added.excluded.request_count,
                "unit_count": UsageRow.unit_count + added.excluded.unit_count,
            },
        )
        rows = [  # sorted, so that two processes take the rows' locks in one order
            cell._asdict() | {"request_count": count.requests, "unit_count": count.units}
            for cell, count in sorted(counts.items())
        ]
        async with self._writing(commit_seconds=COMMIT_SECONDS) as connection:
            if await connection.scalar(is_next) is not None:
                await connection.execute(upsert, rows)

    async def forget_usage(self, before: date) -> int:
        """Delete the usage of the days before a date, and what is known of processes gone since. Returns the rows."""
        start = datetime.combine(before, datetime.min.time(), UTC)
        async with self._writing() as connection:
            await connection.execute(delete(UsageWriterRow).where(UsageWriterRow.written_time < start))
            return (await connection.execute(delete(UsageRow).where(UsageRow.day < before))).rowcount

    async def usage(self) -> dict[UsageCell, UsageCount]:
        """All usage counts."""
        async with self._reading() as connection:
            rows = await connection.execute(select(UsageRow.__table__))
            return {
                UsageCell(row.key_id, row.operation_id, row.day): UsageCount(row.request_count, row.unit_count)
                for row in rows
            }

    async def usage_lines(self, first_day: date, last_day: date) -> list[UsageLine]:
        """The ledger from ``first_day`` to ``last_day``, both included, by day, organisation, key and operation."""
        query = (
            select(
                UsageRow.day,
                OrganisationRow.name,
                KeyRow.prefix,
                KeyRow.label,
                UsageRow.operation_id,
                UsageRow.request_count,
                UsageRow.unit_count,
            )
            .join(KeyRow, KeyRow.id == UsageRow.key_id)
            .join(OrganisationRow, OrganisationRow.id == KeyRow.organisation_id)
            .where(UsageRow.day.between(first_day, last_day))
            .order_by(UsageRow.day, OrganisationRow.name, KeyRow.id, UsageRow.operation_id)
        )
        async with self._reading() as connection:
            return [UsageLine(*row) for row in await connection.execute(query)]

    @asynccontextmanager
    async def _writing(self, *, commit_seconds: float | None = None) -> AsyncIterator[AsyncConnection]:
        """A transaction, bounded in time; its commit may be allowed another time than the rest."""
        self._file.require_same()
        with _unavailable():
            async with asyncio.timeout(self._timeout_seconds) as bound, self._engines.writes.begin() as connection:
                yield connection
                if commit_seconds is not None:
                    bound.reschedule(asyncio.get_running_loop().time() + commit_seconds)

    @asynccontextmanager
    async def _reading(self) -> AsyncIterator[AsyncConnection]:
        """A connection that only reads: no transaction to begin and end, and no lock. Bounded in time."""
        self._file.require_same()
        with _unavailable():
            async with asyncio.timeout(self._timeout_seconds), self._engines.reads.connect() as connection:
                yield connection


class _unavailable:  # noqa: N801 - used like a function
    """Says that the store is unavailable, whatever it was that failed."""

    def __enter__(self) -> None:
        return None

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, _trace: object) -> None:
        if isinstance(error, TimeoutError):
            raise StoreUnavailable("the database did not answer in time") from error
        if error is None:
            return
        driver = type(error).__module__.partition(".")[0]  # what asyncpg raises on connecting comes unwrapped
        if isinstance(error, SQLAlchemyError | OSError) or driver == "asyncpg":
            raise StoreUnavailable(fault_of(error)) from error


async def _insert_key(connection: AsyncConnection, **row: Any) -> tuple[Key, str]:
    secret = new_secret()
    row |= {"prefix": new_prefix(), "secret_sha256": sha256(secret), "created_time": datetime.now(UTC)}
    await connection.execute(insert(KeyRow).values(**row))
    (key,) = await _select_keys(connection, KeyRow.prefix == row["prefix"])
    return key, f"{key.prefix}.{secret}"


async def _select_keys(connection: AsyncConnection, *conditions: Any) -> list[Key]:
    query = (
        select(KeyRow.__table__, OrganisationRow.name, OrganisationRow.daily_quota.label("organisation_quota"))
        .join(OrganisationRow, OrganisationRow.id == KeyRow.organisation_id)
        .where(*conditions)
        .order_by(KeyRow.id)
    )
    today = datetime.now(UTC).date()
    keys = []
    for row in await connection.execute(query):
        limits = {f"key:{row.id}": row.daily_quota, f"organisation:{row.organisation_id}": row.organisation_quota}
        keys.append(
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
                replaces_id=row.replaces_id,
                quotas=tuple(
                    Quota(subject=subject, daily_units=units, used_units=0, day=today)
                    for subject, units in limits.items()
                    if units is not None
                ),
            )
        )
    return keys


async def _count_quotas(connection: AsyncConnection, key: Key) -> Key:
    """The key, with what the ledger says of each of its quotas."""
    counted = []
    for quota in key.quotas:
        kind, _, number = quota.subject.partition(":")
        used = select(func.sum(UsageRow.unit_count)).where(UsageRow.day == quota.day)
        if kind == "key":
            used = used.where(UsageRow.key_id == int(number))
        else:
            keys = select(KeyRow.id).where(KeyRow.organisation_id == int(number))
            used = used.where(UsageRow.key_id.in_(keys))
        counted.append(replace(quota, used_units=await connection.scalar(used) or 0))
    return replace(key, quotas=tuple(counted))
