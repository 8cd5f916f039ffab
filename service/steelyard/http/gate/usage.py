"""Counting use: in memory per key, operation and day, written to the store every few seconds and at shutdown.

What a killed process loses, and no more: what it admitted since its last flush began. That is a window of
``flush_seconds`` plus the time that one write takes; while the store is unreachable it reaches back to the last write
that succeeded. Should a write time out that the database had carried out after all, it is counted twice.
"""

import asyncio
import contextlib
import logging
import time
from collections import Counter
from datetime import date

from steelyard.store.store import StoreUnavailable, UsageCell, UsageCount, UsageSink

_SECONDS_PER_DAY = 86_400
_EPOCH_ORDINAL = date(1970, 1, 1).toordinal()

_log = logging.getLogger(__name__)

_Cell = tuple[int, str, int]  # key, operation, days since 1970


class UsageCounter:
    """Counts admitted requests."""

    def __init__(self, sink: UsageSink, *, flush_seconds: float) -> None:
        self._sink = sink
        self._flush_seconds = flush_seconds
        self._requests: Counter[_Cell] = Counter()
        self._further_units: Counter[_Cell] = Counter()

    def count(self, key_id: int, operation_id: str) -> None:
        """Count one request and its first unit, on today's date in UTC."""
        self._requests[key_id, operation_id, int(time.time()) // _SECONDS_PER_DAY] += 1

    def count_further_units(self, key_id: int, operation_id: str, units: int) -> None:
        """Count units of a request beyond its first."""
        self._further_units[key_id, operation_id, int(time.time()) // _SECONDS_PER_DAY] += units

    async def flush(self) -> None:
        """Write what was counted. If the store is unreachable the counts are kept for the next time."""
        requests, self._requests = self._requests, Counter()
        further, self._further_units = self._further_units, Counter()
        counts = {
            UsageCell(cell[0], cell[1], date.fromordinal(_EPOCH_ORDINAL + cell[2])): UsageCount(
                requests[cell], requests[cell] + further[cell]
            )
            for cell in requests.keys() | further.keys()
        }
        try:
            await self._sink.add_usage(counts)
        except BaseException as error:  # a flush that is cancelled is not yet written either
            self._requests.update(requests)
            self._further_units.update(further)
            if not isinstance(error, StoreUnavailable):
                raise
            _log.warning("usage of %d requests is not written yet: %s", requests.total(), error)

    async def run(self) -> None:
        """Flush for ever, and once more when cancelled."""
        try:
            while True:
                await asyncio.sleep(self._flush_seconds)
                try:
                    await self.flush()
                except Exception as error:  # whatever it was, the next flush may succeed
                    _log.error("usage could not be written: %s", type(error).__name__)
        finally:
            with contextlib.suppress(asyncio.CancelledError):
                await self.flush()
