"""The cache of verified keys in front of the store, which settles how long a revoked key still works."""

import math
import time
from collections.abc import Callable
from datetime import UTC, datetime
from enum import StrEnum
from typing import NamedTuple

from steelyard.store.keys import Key, is_prefix
from steelyard.store.store import KeySource, StoreUnavailable

from .key_lookups import Lane, LookedUp

RETRY_SECONDS = 1.0
_MOST_KEYS = 10_000  # far more than an operator hands out; a bound on memory all the same
_MOST_UNKNOWN = 10_000


class Rejection(StrEnum):
    """Why a key is not accepted: for the operator, and never told to the caller."""

    UNKNOWN = "unknown"
    MISMATCH = "wrong_secret"
    REVOKED = "revoked"
    EXPIRED = "expired"


class _Entry(NamedTuple):
    key: Key
    read_at: float  # on the monotonic clock, when its reading began


class KeyCache:
    """Keys by prefix, each believed for ``cache_seconds`` after it was read from the store.

    So a revocation takes effect within that time, in every process. While the store is unreachable, a key that was
    read before stays good for ``grace_seconds`` more; a key not yet seen raises ``StoreUnavailable``. Both times are
    the operator's to set (``key_cache_seconds``, ``key_grace_seconds``). After a failure the store is left alone for
    ``RETRY_SECONDS``, and then tried by one request at a time: nobody else waits for a database that does not answer.

    Keys that were verified before are read in a lane of their own, so that nobody's invented keys delay them. Of keys
    only those whose secret was right are remembered; a prefix that the store does not have is not asked for again
    within ``cache_seconds``.
    """

    def __init__(
        self,
        source: KeySource,
        *,
        cache_seconds: float,
        grace_seconds: float,
        monotonic: Callable[[], float] = time.monotonic,
        now: Callable[[], datetime] = lambda: datetime.now(UTC),
        is_prefix: Callable[[str], bool] = is_prefix,
    ) -> None:
        self._is_prefix = is_prefix  # what cannot be one is not worth a look-up
        self._cache_seconds = cache_seconds
        self._grace_seconds = grace_seconds
        self._monotonic = monotonic
        self._now = now
        self._entries: dict[str, _Entry] = {}
        self._unknown: dict[str, float] = {}  # prefixes that the store does not have, and when it said so
        self._known_lane, self._strangers_lane = Lane(source, monotonic), Lane(source, monotonic)
        self._is_down = False
        self._next_try = 0.0  # on the monotonic clock

    async def verify(self, prefix: str, secret: str) -> Key | Rejection:
        """The usable key that prefix and secret belong to, or why there is none. Raises ``StoreUnavailable``."""
        entry = self._entries.get(prefix)
        if entry is None:
            if self._is_unknown(prefix) or not self._is_prefix(prefix):
                return Rejection.UNKNOWN
            entry = await self._read(prefix, None)
        elif self._monotonic() - entry.read_at > self._cache_seconds:
            entry = await self._read(prefix, entry)
            if entry is not None:
                self._entries[prefix] = entry
        if entry is None:
            return Rejection.UNKNOWN
        if not entry.key.fits(secret):
            return Rejection.MISMATCH
        if not entry.key.is_usable(self._now()):
            self._entries.pop(prefix, None)
            return Rejection.REVOKED if entry.key.revoked_time else Rejection.EXPIRED
        if prefix not in self._entries:
            if len(self._entries) >= _MOST_KEYS:
                self._entries.clear()
            self._entries[prefix] = entry
        return entry.key

    def close(self) -> None:
        """Ask the store no more."""
        self._known_lane.close()
        self._strangers_lane.close()

    def _is_unknown(self, prefix: str) -> bool:
        said_at = self._unknown.get(prefix)
        return said_at is not None and self._monotonic() - said_at <= self._cache_seconds

    async def _read(self, prefix: str, known: _Entry | None) -> _Entry | None:
        try:
            found = await self._find(prefix, self._strangers_lane if known is None else self._known_lane)
        except StoreUnavailable:
            limit = self._cache_seconds + self._grace_seconds
            if known is not None and self._monotonic() - known.read_at <= limit:
                return known
            raise
        if found.key is None:
            self._entries.pop(prefix, None)
            if len(self._unknown) >= _MOST_UNKNOWN:
                self._unknown.clear()
            self._unknown[prefix] = found.read_at
            return None
        return _Entry(found.key, found.read_at)

    async def _find(self, prefix: str, lane: Lane) -> LookedUp:
        if self._is_down:
            if self._monotonic() < self._next_try:
                raise StoreUnavailable("the database failed a moment ago")
            self._next_try = math.inf  # until this try has ended
        try:
            found = await lane.find(prefix)
        except BaseException as error:  # one that is cancelled must not leave the others waiting
            self._is_down = self._is_down or isinstance(error, StoreUnavailable)
            self._next_try = self._monotonic() + RETRY_SECONDS
            raise
        self._is_down = False
        return found
