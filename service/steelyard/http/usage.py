"""Counting use: in memory per key, operation and day, written to the store every few seconds and at shutdown."""

import asyncio
import contextlib
import logging
import time
from collections import Counter
from datetime import date

from steelyard.store.store import StoreUnavailable, UsageCell, UsageSink

_SECONDS_PER_DAY = 86_400
_EPOCH_ORDINAL = date(1970, 1, 1).toordinal()

_log = logging.getLogger(__name__)


class UsageCounter:
    """Counts admitted requests. A killed process loses at most what came in since the last flush."""

    def __init__(self, sink: UsageSink, *, flush_seconds: float) -> None:
        self._sink = sink
        self._flush_seconds = flush_seconds
        self._counts: Counter[tuple[int, str, int]] = Counter()

    def count(self, key_id: int, operation_id: str) -> None:
        """Count one request, on today's date in UTC."""
        self._counts[key_id, operation_id, int(time.time()) // _SECONDS_PER_DAY] += 1

    async def flush(self) -> None:
        """Write what was counted. If the store is unreachable the counts are kept for the next time."""
        counts, self._counts = self._counts, Counter()
        cells = {
            UsageCell(key_id, operation_id, date.fromordinal(_EPOCH_ORDINAL + day)): count
            for (key_id, operation_id, day), count in counts.items()
        }
        try:
            await self._sink.add_usage(cells)
        except StoreUnavailable as error:
            self._counts.update(counts)
            _log.warning("usage of %d requests is not written yet: %s", counts.total(), error)

    async def run(self) -> None:
        """Flush for ever, and once more when cancelled."""
        try:
            while True:
                await asyncio.sleep(self._flush_seconds)
                await self.flush()
        finally:
            with contextlib.suppress(asyncio.CancelledError):
                await self.flush()
