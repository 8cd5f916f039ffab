"""The version of the tables: what the database has, what this code needs, and how to get there."""

import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, inspect, text

if TYPE_CHECKING:
    from alembic.config import Config

HEAD = "0003"  # the newest migration; written here so that a start need not load Alembic to compare
_FIRST = "0001"
_REVISION = re.compile(r"\d{4}")
_MIGRATION_LOCK = 7_311_953_021  # any number, as long as every version of this service takes the same


class SchemaBehind(Exception):  # noqa: N818 - a state of the database
    """The tables are older than this code needs, and nobody said that they may be changed."""

    def __init__(self, found: str | None) -> None:
        state = f"at revision {found}" if found else "missing"
        super().__init__(
            f"the database's tables are {state}, and this version needs revision {HEAD}: run `steelyard migrate`, "
            "or set STEELYARD_MIGRATE_AT_START=true"
        )
        self.found = found


class SchemaUnknown(Exception):  # noqa: N818 - a state of the database
    """The database has tables of something else, or its record of their version is damaged."""

    def __init__(self, found: str) -> None:
        super().__init__(
            f"the database says that its tables are at revision {found[:40]!r}, which is none of this service's: see "
            "that the URL names the right database, or restore the table `alembic_version` from a backup"
        )


def revision(connection: Connection) -> str | None:
    """The revision of the database's tables; None when there are none."""
    tables = inspect(connection)
    has_record, has_tables = tables.has_table("alembic_version"), tables.has_table("api_keys")
    if not has_record:
        return _FIRST if has_tables else None  # made before there were migrations
    found = [str(each) for each in connection.execute(text("SELECT version_num FROM alembic_version")).scalars()]
    if not found and not has_tables:
        return None
    if len(found) != 1 or not _REVISION.fullmatch(found[0]):
        raise SchemaUnknown(" and ".join(sorted(found)))
    return found[0]


def is_behind(found: str | None) -> bool:
    """Whether tables of that revision lack something that this code needs.

    Newer tables are fine: a migration only adds, and what is no longer used goes one release later. So the database is
    migrated first, and the replicas are replaced one by one.
    """
    return found is None or found < HEAD


def upgrade(connection: Connection) -> list[str]:
    """Bring the tables to ``HEAD`` within the transaction of ``connection``. Returns the revisions applied.

    Several processes may do so at once: all but the first find nothing left to do.
    """
    from alembic import command
    from alembic.script import ScriptDirectory

    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": _MIGRATION_LOCK})
    found = revision(connection)
    if not is_behind(found):
        return []
    config = alembic_config(connection)
    if found == _FIRST and not inspect(connection).has_table("alembic_version"):
        command.stamp(config, _FIRST)
    command.upgrade(config, HEAD)
    script = ScriptDirectory.from_config(config)
    return [step.revision for step in reversed(list(script.iterate_revisions(HEAD, found or "base")))]


def alembic_config(connection: Connection | None = None) -> "Config":
    """Alembic's configuration, made here so that the service needs no file of it."""
    from alembic.config import Config

    attributes: dict[str, Any] = {"connection": connection}
    config = Config(attributes=attributes)
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations").replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    return config
