"""Turns at what only a few can do at a time: round robin over the keys, so that one key's crowd delays no other key.

A key has all slots but one at most, and the next free slot goes to the key that has waited for a turn the longest,
however many of its requests wait. Whoever would wait too long is told so at the door, in place of waiting in vain.
What comes all at once is let in before it is known how long its turns take: once that is known, those at the end of the
line who would wait in vain are told as well.
"""

import asyncio
import math
import time
from collections import Counter, deque
from collections.abc import Callable, Hashable

from .problems import OVERLOADED, TOO_MANY_REQUESTS, ProblemError

_FIRST_SECONDS = 0.1  # what a turn is expected to take before there was one
_NEW_SHARE = 0.2  # of the latest turn in what the next is expected to take


class FairQueue:
    """Slots, and the requests that wait for one."""

    def __init__(
        self,
        slots: int,
        *,
        door_seconds: float,
        most_seconds: float = math.inf,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        """``door_seconds``: the longest expected wait that is let in; ``most_seconds``: when a request gives up."""
        self._free = self._slots = slots
        self._most_of_key = max(1, slots - 1)
        self._door_seconds = door_seconds
        self._most_seconds = most_seconds
        self._clock = clock
        self._waiting: dict[Hashable, deque[asyncio.Future[None]]] = {}  # keys in the order of their turns
        self._running: Counter[Hashable] = Counter()
        self._seconds: dict[Hashable, float] = {}  # what a turn of a key takes, while it has one or waits
        self._latest: dict[Hashable, float] = {}  # what its latest turn took, for as long
        self._since: dict[asyncio.Future[None], float] = {}  # when those came who may be told to come again
        self.refused_count = 0

    @property
    def waiting_count(self) -> int:
        """How many requests wait."""
        return sum(map(len, self._waiting.values()))

    async def enter(self, key: Hashable, *, is_patient: bool = False) -> "Turn":
        """Wait for a turn of ``key``; ``close`` the turn when it is over.

        Raises the problem where the wait would be too long, unless the request ``is_patient``.
        """
        if self._free and self._running[key] < self._most_of_key:
            return self._begin(key)
        if not is_patient:
            self._refuse_in_vain(key)
        future = asyncio.get_running_loop().create_future()
        self._waiting.setdefault(key, deque()).append(future)
        if not is_patient:
            self._since[future] = self._clock()
        try:
            await future
        except asyncio.CancelledError:
            if future.cancelled():
                queue = self._waiting[key]
                queue.remove(future)
                if not queue:
                    del self._waiting[key]
                    self._forget(key)
            elif future.exception() is None:  # its turn came at the same moment
                Turn(self, key, self._clock()).close()
            raise
        finally:
            self._since.pop(future, None)
        return Turn(self, key, self._clock())

    def _begin(self, key: Hashable) -> "Turn":
        self._free -= 1
        self._running[key] += 1
        return Turn(self, key, self._clock())

    def _refuse_in_vain(self, key: Hashable) -> None:
        own = len(self._waiting.get(key, ())) + self._running[key]
        expected = self._expected(key, own, self._seconds.get(key, _FIRST_SECONDS))
        if expected > self._door_seconds:
            raise self._refusal(own, expected)

    def _expected(self, key: Hashable, ahead: int, turn_seconds: float) -> float:
        """How long it takes until so many requests of a key, and the one behind them, have had their turns."""
        keys = len(self._waiting.keys() | self._running.keys() | {key})
        lanes = min(self._most_of_key, self._slots / keys)
        return (ahead + 1) / lanes * turn_seconds

    def _refusal(self, own: int, expected: float) -> ProblemError:
        self.refused_count += 1
        headers = {"Retry-After": str(max(1, math.ceil(expected - self._door_seconds)))}
        if own:
            detail = f"{own} long computations of this key are under way or wait. {TOO_MANY_REQUESTS.remedy}"
            return ProblemError(TOO_MANY_REQUESTS, detail, headers=headers)
        return ProblemError(OVERLOADED, f"{OVERLOADED.meaning} {OVERLOADED.remedy}", headers=headers)

    def _send_away(self, key: Hashable, turn_seconds: float) -> None:
        """Tell those of a key's line who would give up before their turn is over."""
        queue = self._waiting.get(key, deque())
        own, now = len(queue) + self._running[key], self._clock()
        for ahead, future in reversed(tuple(enumerate(queue, self._running[key]))):
            expected = self._expected(key, ahead, turn_seconds)
            since = self._since.get(future)
            if since is not None and not future.done() and now - since + expected > self._most_seconds:
                queue.remove(future)
                future.set_exception(self._refusal(own, expected))
        if not queue:
            self._waiting.pop(key, None)

    def _leave(self, key: Hashable, seconds: float) -> None:
        known = self._seconds.get(key)
        self._seconds[key] = seconds if known is None else known + _NEW_SHARE * (seconds - known)
        self._free += 1
        self._running[key] -= 1
        # The shorter of two turns: the first of a process loads what it needs, which may take as long as many others.
        before, self._latest[key] = self._latest.get(key), seconds
        if before is not None:
            self._send_away(key, min(before, seconds))
        if key in self._waiting:
            self._waiting[key] = self._waiting.pop(key)  # behind the others
        for served in list(self._waiting):
            if self._free and self._running[served] < self._most_of_key:
                self._serve(served)
        self._forget(key)

    def _serve(self, key: Hashable) -> None:
        """Give a slot to the first of the key's requests that still waits; the key is then behind the others."""
        queue = self._waiting[key]
        future = next((each for each in queue if not each.done()), None)
        if future is None:
            return  # those who wait have been cancelled, and clear away after themselves
        queue.remove(future)
        del self._waiting[key]
        if queue:
            self._waiting[key] = queue
        self._free -= 1
        self._running[key] += 1
        future.set_result(None)

    def _forget(self, key: Hashable) -> None:
        if not self._running[key]:
            del self._running[key]
            if key not in self._waiting:
                self._seconds.pop(key, None)
                self._latest.pop(key, None)


class Turn:
    """A slot that is taken."""

    __slots__ = ("_began", "_key", "_queue")

    def __init__(self, queue: FairQueue, key: Hashable, began: float) -> None:
        self._queue, self._key, self._began = queue, key, began

    def close(self) -> None:
        """Give the slot to whoever is next."""
        self._queue._leave(self._key, self._queue._clock() - self._began)
