"""How long the ledger keeps what was used: what is older is deleted, where the operator set a number of days."""

import asyncio
import logging
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from typing import Protocol

from steelyard.store.store import StoreUnavailable

LOOK_SECONDS = 3600.0

_log = logging.getLogger(__name__)


class UsageLedger(Protocol):
    """What holds the use of the days."""

    async def forget_usage(self, before: date) -> int:
        """Delete the use of the days before a date."""
        ...


class Retention:
    """Keeps the last ``days``, today beside them."""

    def __init__(
        self, ledger: UsageLedger, *, days: int, today: Callable[[], date] = lambda: datetime.now(UTC).date()
    ) -> None:
        self._ledger = ledger
        self._days = days
        self._today = today

    async def run(self) -> None:
        """Delete what is too old, every hour."""
        while True:
            await self.forget()
            await asyncio.sleep(LOOK_SECONDS)

    async def forget(self) -> None:
        """Delete what is too old; where the store is away, the next time."""
        first_kept = self._today() - timedelta(days=self._days)
        try:
            count = await self._ledger.forget_usage(first_kept)
        except StoreUnavailable as error:
            _log.warning("usage before %s is not deleted yet: %s", first_kept, error)
            return
        if count:
            _log.info("%d counts of usage before %s were deleted", count, first_kept)
