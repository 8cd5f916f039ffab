"""The engine under the store, and what to say when the database is gone."""

from pathlib import Path
from typing import Any

from sqlalchemy import Connection, event
from sqlalchemy.engine import make_url
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.ext.asyncio import AsyncEngine, create_async_engine


class StoreUnavailable(Exception):  # noqa: N818 - a state of the store, not a fault of the caller
    """The database could not be reached, or did not answer in time."""


def is_embedded(url: str) -> bool:
    """Whether the database is a SQLite file, which the service looks after by itself."""
    return url.startswith("sqlite")


def open_engine(url: str, timeout_seconds: float) -> AsyncEngine:
    """The engine for ``url``; connects to nothing yet. Raises ``StoreUnavailable`` for a URL that cannot be used."""
    try:
        parsed = make_url(url)
        if parsed.get_backend_name() == "sqlite":
            if parsed.database and parsed.database != ":memory:":
                Path(parsed.database).parent.mkdir(parents=True, exist_ok=True)
            return _prepared_sqlite(create_async_engine(parsed), timeout_seconds)
        return create_async_engine(
            parsed,
            pool_pre_ping=True,  # a connection that the server has dropped is replaced before it is used
            pool_timeout=timeout_seconds,
            connect_args={"timeout": timeout_seconds} if parsed.get_driver_name() == "asyncpg" else {},
        )
    except (ImportError, SQLAlchemyError, OSError) as error:
        # Not the URL itself, which may hold a password.
        raise StoreUnavailable(f"the database URL cannot be used: {type(error).__name__}") from error


def _prepared_sqlite(engine: AsyncEngine, timeout_seconds: float) -> AsyncEngine:
    @event.listens_for(engine.sync_engine, "connect")
    def connect(connection: Any, _record: object) -> None:
        """Write-ahead logging lets readers go on while another process writes."""
        connection.isolation_level = None  # the driver begins no transaction of its own; see below
        cursor = connection.cursor()
        cursor.execute("PRAGMA journal_mode = WAL")
        cursor.execute("PRAGMA synchronous = NORMAL")
        cursor.execute("PRAGMA foreign_keys = ON")
        cursor.execute(f"PRAGMA busy_timeout = {int(timeout_seconds * 1000)}")
        cursor.close()

    @event.listens_for(engine.sync_engine, "begin")
    def begin(connection: Connection) -> None:
        """Take the write lock at once: a transaction that reads first and writes later may find it taken.

        It also covers changes of tables, which the driver would leave outside of any transaction.
        """
        if connection.get_execution_options().get("isolation_level") != "AUTOCOMMIT":
            connection.exec_driver_sql("BEGIN IMMEDIATE")

    return engine
