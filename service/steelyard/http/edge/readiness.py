"""Whether this process can serve: looked at every second by a task, and read by whoever asks.

Ready means that keys can be checked and use be counted. While the store is unreachable, keys that were verified before
go on for their grace, so that the process stays ready for as long: all replicas lose the store at the same moment, and
a proxy that then took out each of them would make the grace void.
"""

import asyncio
import logging
import time
from collections.abc import Callable
from typing import Protocol

from steelyard.store.schema import SchemaUnknown, is_behind
from steelyard.store.store import StoreUnavailable

LOOK_SECONDS = 1.0
STALE_SECONDS = 30.0  # a look that takes longer than this is as good as none

_log = logging.getLogger(__name__)


class Looked(Protocol):
    """What is looked at of a store."""

    async def revision(self) -> str | None:
        """The revision of its tables."""
        ...

    async def ping(self) -> None:
        """Return if the tables can be read."""
        ...


class Readiness:
    """What was seen at the last look."""

    def __init__(
        self,
        store: Looked,
        *,
        grace_seconds: float,
        is_full: Callable[[], bool] = lambda: False,
        write_fault: Callable[[], str | None] = lambda: None,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self._store = store
        self._grace_seconds = grace_seconds
        self._is_full = is_full
        self._write_fault = write_fault
        self._monotonic = monotonic
        self._answered_at: float | None = None  # when the store last answered
        self._looked_at = monotonic()  # when a look last ended
        self._not_fit: str | None = None  # what is wrong with its tables
        self._read_fault: str | None = "the database was not asked yet"

    async def look(self) -> None:
        """Ask the store."""
        try:
            behind = is_behind(await self._store.revision())
            self._not_fit = "The operator's store is behind this version; run `steelyard migrate`." if behind else None
            if not behind:
                await self._store.ping()
        except StoreUnavailable as error:
            self._read_fault = str(error)
        except SchemaUnknown as error:
            self._not_fit = f"{error}."
        except Exception as error:  # whatever it was, nothing is known of the store
            fault = f"looking at it failed with {type(error).__name__}"
            if fault != self._read_fault:
                _log.exception("the store could not be looked at")
            self._read_fault = fault
        else:
            self._read_fault = None
            self._answered_at = self._monotonic()
        self._looked_at = self._monotonic()

    async def run(self) -> None:
        """Look for ever."""
        while True:
            await asyncio.sleep(LOOK_SECONDS)
            await self.look()

    @property
    def _fault(self) -> str | None:
        """Why the store cannot be read, as far as is known."""
        silent_seconds = self._monotonic() - self._looked_at
        if self._read_fault is None and silent_seconds > STALE_SECONDS:
            return f"no look at it ended for {silent_seconds:.0f} s"
        return self._read_fault

    @property
    def store_fault(self) -> str | None:
        """What is wrong with the store, whether that is one to mend at once or not: a full disk can still be read."""
        return self._fault or self._write_fault()

    @property
    def problem(self) -> str | None:
        """Why the process is not ready, if it is not."""
        if self._not_fit is not None:
            return self._not_fit
        if self._is_full():
            return "Use cannot be written to the operator's store, and no more of it can be kept."
        fault = self._fault
        if fault is not None:
            seen = self._answered_at
            if seen is None or self._monotonic() - seen > self._grace_seconds:
                return f"The operator's store cannot be used: {fault}."
        return None
