"""The key check: a small cache of verified keys in front of the store."""

import asyncio
import math
import time
from collections.abc import Callable
from datetime import UTC, datetime
from typing import NamedTuple

from steelyard.store.keys import Key
from steelyard.store.store import KeySource, StoreUnavailable

RETRY_SECONDS = 1.0
_MOST_KEYS = 10_000  # far more than an operator hands out; a bound on memory all the same


class _Entry(NamedTuple):
    key: Key
    read_at: float  # on the monotonic clock


class Keyring:
    """Keys by prefix, each believed for ``cache_seconds`` after it was read from the store.

    So a revocation takes effect within that time, in every process. While the store is unreachable, a key that was
    read before stays good for ``grace_seconds`` more; a key not yet seen raises ``StoreUnavailable``. After a failure
    the store is left alone for ``RETRY_SECONDS``, and then tried by one request at a time: nobody else waits for a
    database that does not answer.
    Only keys whose secret was right are remembered: guesses cost a look-up each and leave nothing behind.
    """

    def __init__(
        self,
        source: KeySource,
        *,
        cache_seconds: float,
        grace_seconds: float,
        monotonic: Callable[[], float] = time.monotonic,
        now: Callable[[], datetime] = lambda: datetime.now(UTC),
    ) -> None:
        self._source = source
        self._cache_seconds = cache_seconds
        self._grace_seconds = grace_seconds
        self._monotonic = monotonic
        self._now = now
        self._entries: dict[str, _Entry] = {}
        self._finding: dict[str, asyncio.Task[Key | None]] = {}
        self._is_down = False
        self._next_try = 0.0  # on the monotonic clock

    async def verify(self, prefix: str, secret: str) -> Key | None:
        """The usable key that prefix and secret belong to, or None. Raises ``StoreUnavailable``."""
        entry = self._entries.get(prefix)
        if entry is None or self._monotonic() - entry.read_at > self._cache_seconds:
            entry = await self._read(prefix, entry)
        if entry is None or not entry.key.fits(secret):
            return None
        if not entry.key.is_usable(self._now()):
            self._entries.pop(prefix, None)
            return None
        if prefix not in self._entries and len(self._entries) >= _MOST_KEYS:
            self._entries.clear()
        self._entries[prefix] = entry
        return entry.key

    async def _read(self, prefix: str, known: _Entry | None) -> _Entry | None:
        try:
            key = await self._find_once(prefix)
        except StoreUnavailable:
            limit = self._cache_seconds + self._grace_seconds
            if known is not None and self._monotonic() - known.read_at <= limit:
                return known
            raise
        if key is None:
            self._entries.pop(prefix, None)
            return None
        return _Entry(key, self._monotonic())

    async def _find_once(self, prefix: str) -> Key | None:
        """One look-up for all the requests that wait for the same key: a thousand at once ask the store once."""
        finding = self._finding.get(prefix)
        if finding is None:
            finding = self._finding[prefix] = asyncio.create_task(self._find(prefix))
            finding.add_done_callback(lambda _: self._finding.pop(prefix, None))
        return await asyncio.shield(finding)  # of the requests that wait, one may be cancelled

    async def _find(self, prefix: str) -> Key | None:
        if self._is_down:
            if self._monotonic() < self._next_try:
                raise StoreUnavailable("the database failed a moment ago")
            self._next_try = math.inf  # until this try has ended
        try:
            key = await self._source.find_key(prefix)
        except BaseException as error:  # one that is cancelled must not leave the others waiting
            self._is_down = self._is_down or isinstance(error, StoreUnavailable)
            self._next_try = self._monotonic() + RETRY_SECONDS
            raise
        self._is_down = False
        return key
