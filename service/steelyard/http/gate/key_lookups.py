"""Look-ups of keys in the store: one query at a time, for all who wait for one.

However many callers ask for keys at once, a lane takes one connection of the store's. So strangers with invented keys
can keep neither a known key from being read again nor a new one from being found: each waits for the query under way
and its own.
"""

import asyncio
from collections.abc import Callable

from steelyard.store.keys import Key
from steelyard.store.store import KeySource

MOST_AT_ONCE = 500  # of one query; the rest waits for the next


class LookedUp:
    """What a query said of a prefix, and when the query began."""

    __slots__ = ("key", "read_at")

    def __init__(self, key: Key | None, read_at: float) -> None:
        self.key, self.read_at = key, read_at


class Lane:
    """Look-ups that are answered together."""

    def __init__(self, source: KeySource, monotonic: Callable[[], float]) -> None:
        self._source = source
        self._monotonic = monotonic
        self._waiting: dict[str, asyncio.Future[LookedUp]] = {}
        self._running: asyncio.Task[None] | None = None

    async def find(self, prefix: str) -> LookedUp:
        """The key of that prefix. Raises what the store raises."""
        future = self._waiting.get(prefix)
        if future is None:
            future = self._waiting[prefix] = asyncio.get_running_loop().create_future()
            if self._running is None:
                self._running = asyncio.create_task(self._run())
        return await asyncio.shield(future)  # of the requests that wait, one may be cancelled

    async def _run(self) -> None:
        """Ask until nobody waits any more."""
        asked: dict[str, asyncio.Future[LookedUp]] = {}
        try:
            while self._waiting:
                asked = {prefix: self._waiting.pop(prefix) for prefix in list(self._waiting)[:MOST_AT_ONCE]}
                await self._ask(asked)
        except asyncio.CancelledError:  # must not leave the others waiting
            for future in (*asked.values(), *self._waiting.values()):
                future.cancel()
            self._waiting.clear()
            raise
        finally:
            self._running = None

    async def _ask(self, asked: dict[str, asyncio.Future[LookedUp]]) -> None:
        began = self._monotonic()
        try:
            keys = await self._source.find_keys(list(asked))
        except Exception as error:
            for future in asked.values():
                future.set_exception(error)
                future.exception()  # nobody may be left to hear it
            return
        for prefix, future in asked.items():
            future.set_result(LookedUp(keys.get(prefix), began))

    def close(self) -> None:
        """Ask no more."""
        if self._running is not None:
            self._running.cancel()
