"""The operator's tables: organisations, their API keys, and how much each key used. Nothing about people.

Every change to a table is a migration in ``migrations/versions``; a test compares the two.
"""

from datetime import UTC, date, datetime

from sqlalchemy import Date, DateTime, ForeignKey, MetaData, String
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column
from sqlalchemy.types import TypeDecorator

_NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}


class UtcDateTime(TypeDecorator[datetime]):
    """An instant in UTC. SQLite forgets the zone, so it is put back on reading."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: object) -> datetime | None:
        return value if value is None else value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, dialect: object) -> datetime | None:
        return value if value is None else value.replace(tzinfo=value.tzinfo or UTC)


class Table(DeclarativeBase):
    """The base of the tables; constraints get predictable names, which migrations need."""

    metadata = MetaData(naming_convention=_NAMES)


class OrganisationRow(Table):
    """A gym-software firm that calls the service. ``daily_quota`` is what all its keys may use together."""

    __tablename__ = "organisations"

    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str] = mapped_column(String(200), unique=True)
    created_time: Mapped[datetime] = mapped_column(UtcDateTime)
    daily_quota: Mapped[int | None]  # units per day (UTC); none is no limit


class KeyRow(Table):
    """An API key: its public prefix, and the SHA-256 of its secret, which itself is never stored."""

    __tablename__ = "api_keys"

    id: Mapped[int] = mapped_column(primary_key=True)
    organisation_id: Mapped[int] = mapped_column(ForeignKey("organisations.id"), index=True)
    prefix: Mapped[str] = mapped_column(String(32), unique=True)
    secret_sha256: Mapped[bytes]
    label: Mapped[str] = mapped_column(String(200))
    scopes: Mapped[str] = mapped_column(String(200))  # separated by blanks, as OAuth writes them (RFC 6749 3.3)
    created_time: Mapped[datetime] = mapped_column(UtcDateTime)
    expiry_time: Mapped[datetime | None] = mapped_column(UtcDateTime)
    revoked_time: Mapped[datetime | None] = mapped_column(UtcDateTime)
    daily_quota: Mapped[int | None]  # units per day (UTC); none is no limit
    replaces_id: Mapped[int | None] = mapped_column(ForeignKey("api_keys.id"))  # the key it was rotated from


class UsageRow(Table):
    """How much a key used an operation on a day (UTC): admitted requests, and the units they cost.

    A unit is what a plan takes of a processor; a request costs those of its operation, a batch those of its lines.
    """

    __tablename__ = "usage"

    key_id: Mapped[int] = mapped_column(ForeignKey("api_keys.id"), primary_key=True)
    operation_id: Mapped[str] = mapped_column(String(100), primary_key=True)
    day: Mapped[date] = mapped_column(Date, primary_key=True)
    request_count: Mapped[int]
    unit_count: Mapped[int] = mapped_column(server_default="0")


class UsageWriterRow(Table):
    """A process that writes usage, and the number of its last flush that was applied: each is applied once."""

    __tablename__ = "usage_writers"

    writer: Mapped[str] = mapped_column(String(32), primary_key=True)
    flush_number: Mapped[int]
    written_time: Mapped[datetime] = mapped_column(UtcDateTime)
