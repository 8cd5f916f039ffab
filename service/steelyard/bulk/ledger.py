"""Use in the operator's ledger: a partition at a time, each under an id, so that none is counted twice."""

import asyncio
from datetime import UTC, datetime
from typing import NamedTuple

from steelyard.http.operation.request_costs import units
from steelyard.store.keys import Key, Scope
from steelyard.store.store import FlushId, Store, UsageCell, UsageCount

from .answering import OPERATIONS

OWN_ORGANISATION = "Bulk"
OWN_LABEL = "bulk runs of the operator"


class CannotCharge(ValueError):  # noqa: N818 - named for what happened
    """The key cannot be charged for what is asked."""


class Ledger:
    """The store, for a command that is not itself asynchronous. Its methods raise ``StoreUnavailable``."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._runner = asyncio.Runner()

    def __enter__(self) -> "Ledger":
        return self

    def __exit__(self, *raised: object) -> None:
        self._runner.run(self._store.close())
        self._runner.close()

    def prepare(self, *, migrate: bool) -> None:
        """See that the tables are what this version needs."""
        self._runner.run(self._store.prepare(migrate=migrate))

    def key(self, prefix: str | None) -> Key:
        """The key that is charged: that of the prefix, or the operator's own, made where there is none.

        The operator's own has no scope, and nobody has its secret: it is a name in the ledger. Raises ``CannotCharge``.
        """
        if prefix is None:
            return self._runner.run(self._own_key())
        key = self._runner.run(self._store.find_key(prefix.partition(".")[0]))
        if key is None or not key.is_usable(datetime.now(UTC)):
            raise CannotCharge(f"there is no usable key {prefix.partition('.')[0]} to charge")
        if Scope.COMPUTE not in key.scopes:
            raise CannotCharge(f"the key {key.prefix} lacks the scope {Scope.COMPUTE.value}")
        return key

    async def _own_key(self) -> Key:
        for key in await self._store.list_keys():
            if (key.organisation, key.label) == (OWN_ORGANISATION, OWN_LABEL) and key.revoked_time is None:
                return await self._store.find_key(key.prefix) or key
        key, _ = await self._store.create_key(OWN_ORGANISATION, [], label=OWN_LABEL)
        return key

    def charge(self, key: Key, charge: "Charge") -> None:
        """Write use under its id; under an id that is known nothing is written."""
        cell = UsageCell(key.id, charge.operation, datetime.now(UTC).date())
        count = UsageCount(1, charge.rows * units(OPERATIONS[charge.operation]))
        self._runner.run(self._store.add_usage({cell: count}, charge.id))


class Charge(NamedTuple):
    """The use of a partition: a request, and the operation's units for every row, those at fault too."""

    id: FlushId
    operation: str
    rows: int


def check_quotas(key: Key, operation: str, rows: int) -> None:
    """Raises ``CannotCharge`` where a day's quota has not enough left for so many rows."""
    asked = rows * units(OPERATIONS[operation])
    for quota in key.quotas:
        left = quota.daily_units - quota.used_units
        if asked > left:
            kind = quota.subject.partition(":")[0]
            raise CannotCharge(
                f"{asked} units are asked for, and the quota of the {kind} has {max(0, left)} left today"
            )
