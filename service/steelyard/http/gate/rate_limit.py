"""Rate limits and daily quotas: how much a key may still use, and how an answer says so.

Windows are fixed: a limit of ``w`` seconds starts anew whenever the Unix time is a multiple of ``w``, so that a day's
quota is that of a day in UTC, and all processes begin a window together. Around such a moment a caller may spend two
windows' limits in quick succession.

A request is admitted by counts in this process's memory, never by waiting for anybody. Behind them stands one of the
framework's stores, to which the counts are added every ``sync_seconds``, and which answers with what all processes
counted together. So a limit is kept exactly in one process; several processes that share a store may together admit
more by what the others take in between two exchanges. When the store is gone, each process goes on with its own
counts: every answer then carries ``Steelyard-Degraded: rate-limit``, and N processes admit up to N times the limit.

Source of the header fields and of their syntax: draft-ietf-httpapi-ratelimit-headers-11, "RateLimit header fields for
HTTP" (R. Polli, A. Martinez, D. Miller, 2026), which is not yet a standard.
"""

import asyncio
import contextlib
import logging
import math
import time
from collections.abc import Callable, Mapping
from datetime import date
from types import TracebackType
from typing import Protocol

from litestar.stores.memory import MemoryStore
from litestar.types import Scope

from steelyard.settings import Settings, SettingsError
from steelyard.store.keys import Key, Quota

from ..wire.problems import TOO_MANY_REQUESTS, ProblemError

RATE_LIMIT_HEADER = "RateLimit"
RATE_LIMIT_POLICY_HEADER = "RateLimit-Policy"
DEGRADED_HEADER = "Steelyard-Degraded"
BURST = "burst"
LIMIT_HEADERS = "steelyard_limit_headers"  # in the scope's state: what the limiter adds to the response

_SECONDS_PER_DAY = 86_400
_rate_limit = RATE_LIMIT_HEADER.lower().encode()
_rate_limit_policy = RATE_LIMIT_POLICY_HEADER.lower().encode()
_degraded = (DEGRADED_HEADER.lower().encode(), b"rate-limit")

_log = logging.getLogger(__name__)


class SharedCounts(Protocol):
    """Counts that several processes add to: one of the framework's stores, with one operation more."""

    async def add(self, amounts: Mapping[str, int], lifetimes: Mapping[str, int]) -> list[int]:
        """Add to each name's count, and let it go when its lifetime in seconds is over. Returns the new counts.

        Any exception means that the counts could not be reached.
        """
        ...

    async def __aenter__(self) -> None: ...

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None, /
    ) -> None:
        """Close what is open to the counts."""
        ...


class MemoryCounts(MemoryStore):
    """The counts of one process."""

    async def add(self, amounts: Mapping[str, int], lifetimes: Mapping[str, int]) -> list[int]:
        """Add to each name's count. Returns the new counts."""
        totals = []
        for name, amount in amounts.items():
            totals.append(int(await self.get(name) or 0) + amount)
            await self.set(name, str(totals[-1]), expires_in=lifetimes[name])
        return totals


class _Meter:
    """What was used of one limit in its present window."""

    __slots__ = ("_head", "floor", "limit", "name", "number", "pending", "policy", "subject", "used", "window")

    def __init__(self, name: str, subject: str, limit: int, window: int) -> None:
        self.name, self.subject, self.limit, self.window = name, subject, limit, window
        self.number = -1  # of the window, counted from 1970
        self.used = self.pending = self.floor = 0  # by all; of that not yet in the store; what the ledger knows of
        self.policy = b'"%b";q=%d;w=%d' % (name.encode(), limit, window)
        self._head = b'"%b";r=' % name.encode()

    def begin(self, number: int) -> None:
        self.number = number
        self.used = self.pending = self.floor = 0

    def left(self, now: float) -> bytes:
        return b"%b%d;t=%d" % (self._head, max(self.limit - self.used, 0), self.seconds_left(now))

    def seconds_left(self, now: float) -> int:
        return math.ceil((self.number + 1) * self.window - now)


class _Account:
    """The meters that a key's requests go through, kept for as long as the key's record is."""

    __slots__ = ("key", "meters", "policy")

    def __init__(self, key: Key, meters: list[_Meter]) -> None:
        self.key, self.meters = key, meters
        self.policy = (_rate_limit_policy, b", ".join(meter.policy for meter in meters))


class RateLimiter:
    """Admits requests, or refuses them with 429.

    ``requests`` per ``window_seconds`` is what each key may send, 0 for any number; quotas come with the keys.
    """

    def __init__(
        self,
        counts: SharedCounts,
        *,
        requests: int,
        window_seconds: int,
        sync_seconds: float,
        clock: Callable[[], float] = time.time,
    ) -> None:
        self._counts = counts
        self._requests = requests
        self._window_seconds = window_seconds
        self._sync_seconds = sync_seconds
        self._clock = clock
        self._accounts: dict[int, _Account] = {}
        self._meters: dict[str, _Meter] = {}  # as many as there are keys and organisations that called
        self._running: dict[str, _Meter] = {}  # those with something used in the present window
        self._news = asyncio.Event()
        self.is_degraded = False
        self.refused_count = 0

    def charge(self, key: Key, scope: Scope, units: int = 1) -> None:
        """Take ``units`` off every limit of the key, or off none and raise the problem that says when to come again.

        Either way the response to ``scope`` will tell what is left.
        """
        account = self._accounts.get(key.id)
        if account is None or account.key is not key:
            account = self._open(key)
        meters = account.meters
        if not meters:
            return
        now = self._clock()
        refusing = []
        for meter in meters:
            if meter.number != now // meter.window:
                self._begin(meter, now)
            if meter.used + units > meter.limit:
                refusing.append(meter)
        if not refusing:
            for meter in meters:
                meter.used += units
                meter.pending += units
        left = meters[0].left(now) if len(meters) == 1 else b", ".join([meter.left(now) for meter in meters])
        headers = (account.policy, (_rate_limit, left))
        scope["state"][LIMIT_HEADERS] = (*headers, _degraded) if self.is_degraded else headers
        if refusing:
            self.refused_count += 1
            raise _refusal(refusing, units, now)

    @classmethod
    def of(cls, settings: Settings) -> "RateLimiter":
        """The limiter that the settings ask for. Raises ``SettingsError`` for a store that cannot be used."""
        counts: SharedCounts = MemoryCounts()
        if settings.rate_limit_store_url:
            from .valkey_counts import ValkeyCounts

            try:
                counts = ValkeyCounts.at(settings.rate_limit_store_url, timeout_seconds=settings.store_timeout_seconds)
            except ValueError as error:
                raise SettingsError(str(error)) from None
        return cls(
            counts,
            requests=settings.rate_limit_requests,
            window_seconds=settings.rate_limit_window_seconds,
            sync_seconds=settings.rate_limit_sync_seconds,
        )

    @property
    def counts(self) -> SharedCounts:
        """The store behind the limits."""
        return self._counts

    async def run(self) -> None:
        """Exchange counts with the store for ever, and once more when cancelled."""
        self._news = asyncio.Event()  # one of this event loop
        if self._running:
            self._news.set()
        async with self._counts:  # the framework has closed it before the last exchange, which opens it again
            try:
                while True:
                    # Set at a window's first request, since the others may have used it up before.
                    await self._news.wait()
                    self._news.clear()
                    await self.exchange()
                    await asyncio.sleep(self._sync_seconds)
                    if self._running:
                        self._news.set()
            finally:
                with contextlib.suppress(asyncio.CancelledError):
                    await self.exchange()

    async def exchange(self) -> None:
        """Add what is new to the store's counts, and learn what all processes counted together."""
        now = self._clock()
        for subject, meter in list(self._running.items()):
            if meter.number != now // meter.window:
                del self._running[subject]
        sent = [(meter, meter.number, meter.pending) for meter in self._running.values()]
        if not sent:
            return
        names = [f"{meter.subject}:{meter.window}:{number}" for meter, number, _ in sent]
        try:
            totals = await self._counts.add(
                dict(zip(names, (pending for *_, pending in sent), strict=True)),
                # One window longer than needed, for processes whose clock is behind.
                dict(zip(names, (2 * meter.window for meter, *_ in sent), strict=True)),
            )
        except Exception as error:
            self._note(degraded=True, why=type(error).__name__)
            return
        for (meter, number, pending), total in zip(sent, totals, strict=True):
            if meter.number == number:
                meter.pending -= pending
                meter.used = max(total + meter.pending, meter.floor)
        self._note(degraded=False)

    def _note(self, *, degraded: bool, why: str = "") -> None:
        if degraded and not self.is_degraded:
            _log.warning("rate limits are kept by each process alone: their store failed with %s", why)
        elif self.is_degraded and not degraded:
            _log.warning("rate limits are shared again")
        self.is_degraded = degraded

    def _open(self, key: Key) -> _Account:
        meters = []
        if self._requests:
            meters.append(self._meter(BURST, f"burst:{key.id}", self._requests, self._window_seconds))
        for quota in key.quotas:
            name = "daily-" + quota.subject.partition(":")[0]
            meter = self._meter(name, quota.subject, quota.daily_units, _SECONDS_PER_DAY)
            self._heed_ledger(meter, quota)
            meters.append(meter)
        self._accounts[key.id] = account = _Account(key, meters)
        return account

    def _meter(self, name: str, subject: str, limit: int, window: int) -> _Meter:
        meter = self._meters.get(subject)
        if meter is None or meter.limit != limit:
            fresh = self._meters[subject] = _Meter(name, subject, limit, window)
            if meter is not None:  # the operator has changed the quota: what was used stays used
                fresh.number, fresh.used, fresh.pending, fresh.floor = (
                    meter.number,
                    meter.used,
                    meter.pending,
                    meter.floor,
                )
                if subject in self._running:
                    self._running[subject] = fresh
            meter = fresh
        return meter

    def _heed_ledger(self, meter: _Meter, quota: Quota) -> None:
        """A quota outlives a restart, and holds without a shared store, because the ledger is read with the key."""
        number = (quota.day - date(1970, 1, 1)).days
        if number > meter.number:
            self._begin(meter, number * _SECONDS_PER_DAY)
        if number == meter.number:
            meter.floor = max(meter.floor, quota.used_units)
            meter.used = max(meter.used, meter.floor)

    def _begin(self, meter: _Meter, now: float) -> None:
        meter.begin(int(now // meter.window))
        self._running[meter.subject] = meter
        self._news.set()


def _refusal(refusing: list[_Meter], units: int, now: float) -> ProblemError:
    wait_seconds = max(meter.seconds_left(now) for meter in refusing)
    limits = " and ".join(f"`{m.name}` ({m.limit} in {m.window} s)" for m in refusing)
    detail = f"The limit {limits} is reached." if units == 1 else f"The limit {limits} has no {units} units left."
    if any(units > meter.limit for meter in refusing):
        detail += " It never has so many: send fewer lines at a time."
    return ProblemError(TOO_MANY_REQUESTS, detail, headers={"Retry-After": str(wait_seconds)})
