"""Rate limits and daily quotas: how much a key may still use, and how an answer says so.

Windows are fixed: a limit of ``w`` seconds starts anew whenever the Unix time is a multiple of ``w``, so that a day's
quota is that of a day in UTC, and all processes begin a window together. Around such a moment a caller may spend two
windows' limits in quick succession.

One process keeps its counts in its own memory. Several that share a store take what they admit out of it beforehand:
a process has a lease of units, for what it used lately (at most a twentieth of the limit), and a request beyond the
lease waits for one exchange with the store, with all others that wait. So together they never admit more than the
limit, in whatever burst; what is leased and not used goes back with the next exchange, every ``sync_seconds``. A store
that does not answer within ``WAIT_SECONDS`` delays no further request: each process then goes on with its own counts,
every answer carries ``Steelyard-Degraded: rate-limit``, and N processes admit up to N times the limit.

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
from typing import NamedTuple, Protocol

from litestar.stores.memory import MemoryStore
from litestar.types import Scope

from steelyard.settings import Settings, SettingsError
from steelyard.store.keys import Key, Quota

from ..wire.problems import TOO_MANY_REQUESTS, ProblemError

RATE_LIMIT_HEADER = "RateLimit"
RATE_LIMIT_POLICY_HEADER = "RateLimit-Policy"
DEGRADED_HEADER = "Steelyard-Degraded"
BURST = "burst"
WAIT_SECONDS = 1.0  # the longest time that a request waits for the shared store, once until it answers again
LIMIT_HEADERS = "steelyard_limit_headers"  # in the scope's state: what the limiter adds to the response

_SECONDS_PER_DAY = 86_400
_LEASE_SHARE = 20  # a lease ahead of use is at most this part of the limit
_LEASE_UNTIL = 0.8  # of the limit; near its end nothing is leased that others may need
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


class _LeaseAsked(NamedTuple):
    """What a process asks of the store for a meter's window."""

    meter: "_Meter"
    number: int
    units: int  # to take out; below zero, to give back
    surplus: int  # to give back as well


class _Meter:
    """What was used of one limit in its present window."""

    __slots__ = (
        *("_head", "floor", "leased", "limit", "name", "number", "policy", "recent", "subject", "surplus", "used"),
        *("wanted", "window"),
    )

    def __init__(self, name: str, subject: str, limit: int, window: int) -> None:
        self.name, self.subject, self.limit, self.window = name, subject, limit, window
        self.number = -1  # of the window, counted from 1970
        self.used = self.floor = 0  # by all, as far as is known; what the ledger knows of
        self.leased = 0  # taken out of the store and not yet used; below zero what was used without the store
        self.surplus = 0  # taken out beyond the limit: goes back
        self.recent = self.wanted = 0  # used since the last exchange; asked for by requests that wait
        self.policy = b'"%b";q=%d;w=%d' % (name.encode(), limit, window)
        self._head = b'"%b";r=' % name.encode()

    def begin(self, number: int) -> None:
        self.number = number
        self.used = self.floor = self.leased = self.surplus = self.recent = 0

    def take(self, units: int) -> None:
        self.used += units
        self.leased -= units
        self.recent += units

    def ask(self, *, looks_ahead: bool) -> _LeaseAsked:
        """What to take out of the store; what is to go back can no longer be used from now on."""
        ahead = 0
        if looks_ahead and self.used < _LEASE_UNTIL * self.limit:
            ahead = min(self.recent, self.limit // _LEASE_SHARE)
        asked = _LeaseAsked(self, self.number, self.wanted + ahead - self.leased, self.surplus)
        self.recent = self.surplus = 0
        self.leased += min(0, asked.units)
        return asked

    def forget(self, asked: _LeaseAsked) -> None:
        """The store could not be reached: all is as before."""
        if self.number == asked.number:
            self.leased -= min(0, asked.units)
            self.surplus += asked.surplus

    def learn(self, asked: _LeaseAsked, total: int) -> None:
        """What the store counts now, of all processes together."""
        if self.number == asked.number:
            self.leased += max(0, asked.units)
            self.surplus = max(0, min(total - self.limit, self.leased))
            self.leased -= self.surplus
            self.used = max(total - self.surplus - self.leased, self.floor)

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

    ``requests`` per ``window_seconds`` is what each key may send, 0 for any number; quotas come with the keys. Without
    ``is_shared`` the counts are this process's own, and nobody ever waits for them.
    """

    def __init__(
        self,
        counts: SharedCounts,
        *,
        requests: int,
        window_seconds: int,
        sync_seconds: float,
        is_shared: bool = False,
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
        self._exchanging = asyncio.Lock()
        self._next_exchange: asyncio.Task[None] | None = None
        self._is_shared = is_shared
        self.is_degraded = False
        self.refused_count = 0

    async def charge(self, key: Key, scope: Scope, units: int = 1) -> None:
        """Take ``units`` off every limit of the key, or off none and raise the problem that says when to come again.

        Either way the response to ``scope`` will tell what is left.
        """
        account = self._accounts.get(key.id)
        if account is None or account.key is not key:
            account = self._open(key)
        if not account.meters:
            return
        if self._is_shared:
            await self._lease(account.meters, units)
        self._take(account, scope, units)

    async def _lease(self, meters: list[_Meter], units: int) -> None:
        """Have that many units leased of each meter, unless a limit is reached or the store does not answer."""
        while not self.is_degraded:
            now = self._clock()
            for meter in meters:
                if meter.number != now // meter.window:
                    self._begin(meter, now)
            short = [meter for meter in meters if meter.leased < units]
            if not short or any(meter.used + units > meter.limit for meter in meters):
                return
            for meter in short:
                meter.wanted += units
            try:
                async with asyncio.timeout(WAIT_SECONDS):
                    await self._exchange_soon()
            except TimeoutError:
                self._note(degraded=True, why="a slow answer")
            finally:
                for meter in short:
                    meter.wanted -= units

    async def _exchange_soon(self) -> None:
        """Wait for an exchange that begins from now on; all who wait share it."""
        if self._next_exchange is None:
            self._next_exchange = asyncio.create_task(self._exchange_next())
        await asyncio.shield(self._next_exchange)

    async def _exchange_next(self) -> None:
        async with self._exchanging:
            self._next_exchange = None
            await self._exchange(looks_ahead=True)

    def _take(self, account: _Account, scope: Scope, units: int) -> None:
        meters = account.meters
        now = self._clock()
        refusing = []
        for meter in meters:
            if meter.number != now // meter.window:
                self._begin(meter, now)
            if meter.used + units > meter.limit:
                refusing.append(meter)
        if not refusing:
            for meter in meters:
                meter.take(units)
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
            except ValueError:  # not the URL itself, which may hold a password
                raise SettingsError(
                    "STEELYARD_RATE_LIMIT_STORE_URL cannot be used: it must be valkey://HOST:6379/0, redis:// or the "
                    "same with an s (rediss://) for TLS, with :PASSWORD@ before the host where one is needed"
                ) from None
        return cls(
            counts,
            requests=settings.rate_limit_requests,
            window_seconds=settings.rate_limit_window_seconds,
            sync_seconds=settings.rate_limit_sync_seconds,
            is_shared=bool(settings.rate_limit_store_url),
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
                    await self._exchange(looks_ahead=False)  # what is leased goes back

    async def exchange(self) -> None:
        """Take out of the store what is needed, give back what is not, and learn what all processes have."""
        async with self._exchanging:
            await self._exchange(looks_ahead=self._is_shared)

    async def _exchange(self, *, looks_ahead: bool) -> None:
        now = self._clock()
        for subject, meter in list(self._running.items()):
            if meter.number != now // meter.window:
                del self._running[subject]
        sent = [meter.ask(looks_ahead=looks_ahead) for meter in self._running.values()]
        if not sent:
            return
        names = [f"{asked.meter.subject}:{asked.meter.window}:{asked.number}" for asked in sent]
        try:
            totals = await self._counts.add(
                dict(zip(names, (asked.units - asked.surplus for asked in sent), strict=True)),
                # One window longer than needed, for processes whose clock is behind.
                dict(zip(names, (2 * asked.meter.window for asked in sent), strict=True)),
            )
        except BaseException as error:
            for asked in sent:
                asked.meter.forget(asked)
            if not isinstance(error, Exception):
                raise
            self._note(degraded=True, why=type(error).__name__)
            return
        for asked, total in zip(sent, totals, strict=True):
            asked.meter.learn(asked, total)
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
                for name_ in ("number", "used", "leased", "surplus", "recent", "floor"):
                    setattr(fresh, name_, getattr(meter, name_))
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
        detail += " It never has so many: ask the operator for a larger one, or send fewer lines of a batch at a time."
    return ProblemError(TOO_MANY_REQUESTS, detail, headers={"Retry-After": str(wait_seconds)})
