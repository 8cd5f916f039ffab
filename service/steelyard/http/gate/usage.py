"""Counting use: in memory per key, operation and day, written to the store every few seconds and at shutdown.

Each flush has an id, and the store applies it once: a write that timed out and was carried out after all is not counted
again when it is repeated. A write under way is left alone, however long it takes; what is counted meanwhile waits for
the next flush, and a flush that failed is sent again as it was. What waits is one number for each key, operation and
day, so that it hardly grows; should it be more than ``MOST_CELLS`` no further request is admitted until it is written.

What a process killed without warning loses, and no more: what it admitted since its last flush began, which while the
store is unreachable reaches back to the last write that succeeded.
"""

import asyncio
import contextlib
import logging
import time
from collections.abc import Mapping
from datetime import date
from typing import NamedTuple
from uuid import uuid4

from steelyard.store.store import FlushId, StoreUnavailable, UsageCell, UsageCount, UsageSink

MOST_CELLS = 100_000
LAST_SECONDS = 4.0  # how long the last writes may take at shutdown; less than the process is given to end

_SECONDS_PER_DAY = 86_400
_EPOCH_ORDINAL = date(1970, 1, 1).toordinal()

_log = logging.getLogger(__name__)

_Cell = tuple[int, str, int]  # key, operation, days since 1970


class _Flush(NamedTuple):
    """What is being written, and since when its oldest part has waited."""

    id: FlushId
    counts: Mapping[UsageCell, UsageCount]
    since: float


class UsageCounter:
    """Counts admitted requests."""

    def __init__(self, sink: UsageSink, *, flush_seconds: float) -> None:
        self._sink = sink
        self._flush_seconds = flush_seconds
        self._writer = uuid4().hex
        self._number = 0
        self._counted: dict[_Cell, list[int]] = {}  # requests and units
        self._since = 0.0  # on the monotonic clock, when the first of them was counted
        self._flush: _Flush | None = None
        self._write: asyncio.Task[None] | None = None
        self.fault: str | None = None  # why the last flush was not written

    def count(self, key_id: int, operation_id: str, *, requests: int = 1, units: int = 1) -> None:
        """Count a request and what it costs, on today's date in UTC."""
        cell = (key_id, operation_id, int(time.time()) // _SECONDS_PER_DAY)
        counted = self._counted.get(cell)
        if counted is None:
            if not self._counted:
                self._since = time.monotonic()
            self._counted[cell] = [requests, units]
        else:
            counted[0] += requests
            counted[1] += units

    @property
    def is_full(self) -> bool:
        """Whether so much waits to be written that nothing more may be admitted."""
        return len(self._counted) >= MOST_CELLS

    @property
    def waiting_units(self) -> int:
        """What is counted and not known to be written."""
        under_way = sum(count.units for count in self._flush.counts.values()) if self._flush else 0
        return under_way + sum(units for _, units in self._counted.values())

    @property
    def waiting_seconds(self) -> float:
        """How long the oldest of it has waited."""
        if self._flush is not None:
            return time.monotonic() - self._flush.since
        return time.monotonic() - self._since if self._counted else 0.0

    async def flush(self, wait_seconds: float | None = None) -> bool:
        """Write what was counted, or go on with the write under way. Returns whether that is written.

        After ``wait_seconds`` the write goes on by itself. What the store refuses is kept for the next time.
        """
        if self._flush is None:
            if not self._counted:
                return True
            self._number += 1
            self._flush = _Flush(FlushId(self._writer, self._number), _cells(self._counted), self._since)
            self._counted = {}
        if self._write is None:
            self._write = asyncio.create_task(self._sink.add_usage(self._flush.counts, self._flush.id))
        await asyncio.wait([self._write], timeout=wait_seconds)
        if not self._write.done():
            return False
        written, self._write = self._write, None
        try:
            written.result()
        except StoreUnavailable as error:
            requests = sum(count.requests for count in self._flush.counts.values())
            _log.warning("usage of %d requests is not written yet: %s", requests, error)
            self.fault = str(error)
            return False
        self._flush = self.fault = None
        return True

    async def run(self) -> None:
        """Flush for ever, and all that is left when cancelled."""
        try:
            while True:
                await asyncio.sleep(self._flush_seconds)
                try:
                    await self.flush(self._flush_seconds)
                except Exception as error:  # whatever it was, the next flush may succeed
                    _log.error("usage could not be written: %s", type(error).__name__)
        finally:
            with contextlib.suppress(asyncio.CancelledError):
                await self._flush_all()

    async def _flush_all(self) -> None:
        deadline = time.monotonic() + LAST_SECONDS
        while self._flush is not None or self._counted:
            left = deadline - time.monotonic()
            if left <= 0:
                _log.error("usage of %d units was not written in time, and is lost", self.waiting_units)
                break
            if not await self.flush(left):
                await asyncio.sleep(min(0.1, left))
        if self._write is not None:
            self._write.cancel()


def _cells(counted: Mapping[_Cell, list[int]]) -> dict[UsageCell, UsageCount]:
    return {
        UsageCell(key_id, operation_id, date.fromordinal(_EPOCH_ORDINAL + day)): UsageCount(requests, units)
        for (key_id, operation_id, day), (requests, units) in counted.items()
    }
