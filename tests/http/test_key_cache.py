"""The cache of verified keys, on a clock that the test moves."""

import asyncio
from collections.abc import Collection
from datetime import UTC, datetime, timedelta

import pytest
from msgspec.structs import replace
from steelyard.http.gate.key_cache import _MOST_UNKNOWN, RETRY_SECONDS, KeyCache, Rejection
from steelyard.http.gate.key_lookups import MOST_AT_ONCE
from steelyard.store.keys import Key, sha256
from steelyard.store.store import StoreUnavailable

START = datetime(2026, 3, 2, tzinfo=UTC)
CACHE_SECONDS, GRACE_SECONDS = 30.0, 300.0


class FakeStore:
    """One key, a count of look-ups, and a switch to be gone."""

    def __init__(self) -> None:
        self.look_ups = 0
        self.is_gone = False
        self.key: Key | None = Key(
            id=1,
            organisation="Quarry Lane Gym",
            prefix="abc",
            secret_sha256=sha256("right"),
            label="",
            scopes=frozenset({"compute"}),
            created_time=START,
        )

    async def find_keys(self, prefixes: Collection[str]) -> dict[str, Key]:
        self.look_ups += 1
        if self.is_gone:
            raise StoreUnavailable
        return {self.key.prefix: self.key} if self.key and self.key.prefix in prefixes else {}


class Clock:
    seconds = 0.0

    def monotonic(self) -> float:
        return self.seconds

    def now(self) -> datetime:
        return START + timedelta(seconds=self.seconds)


@pytest.fixture
def parts() -> "Parts":
    store, clock = FakeStore(), Clock()
    return (
        KeyCache(
            store,
            is_prefix=bool,
            cache_seconds=CACHE_SECONDS,
            grace_seconds=GRACE_SECONDS,
            monotonic=clock.monotonic,
            now=clock.now,
        ),
        store,
        clock,
    )


Parts = tuple[KeyCache, FakeStore, Clock]


async def test_store_is_asked_once_per_cache_time(parts: Parts) -> None:
    key_cache, store, clock = parts
    for clock.seconds in (0.0, 10.0, CACHE_SECONDS):
        assert isinstance(await key_cache.verify("abc", "right"), Key)
    assert store.look_ups == 1
    clock.seconds = CACHE_SECONDS + 0.1
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    assert store.look_ups == 2


async def test_wrong_secret_is_refused_with_and_without_cache(parts: Parts) -> None:
    key_cache, store, _ = parts
    assert isinstance(await key_cache.verify("abc", "wrong"), Rejection)
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    look_ups = store.look_ups
    assert isinstance(await key_cache.verify("abc", "wrong"), Rejection)
    assert isinstance(await key_cache.verify("abc", ""), Rejection)
    assert store.look_ups == look_ups


async def test_revocation_takes_effect_within_the_cache_time(parts: Parts) -> None:
    key_cache, store, clock = parts
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    assert store.key is not None
    store.key = replace(store.key, revoked_time=START)
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    clock.seconds = CACHE_SECONDS + 0.1
    assert isinstance(await key_cache.verify("abc", "right"), Rejection)
    assert isinstance(await key_cache.verify("abc", "right"), Rejection)


async def test_deleted_key_is_forgotten(parts: Parts) -> None:
    key_cache, store, clock = parts
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    store.key = None
    clock.seconds = CACHE_SECONDS + 0.1
    assert isinstance(await key_cache.verify("abc", "right"), Rejection)
    store.is_gone = True
    clock.seconds += CACHE_SECONDS + 0.1
    with pytest.raises(StoreUnavailable):
        await key_cache.verify("abc", "right")


async def test_expiry_takes_effect_at_once(parts: Parts) -> None:
    key_cache, store, clock = parts
    assert store.key is not None
    expiry = START + timedelta(seconds=10)
    store.key = replace(store.key, expiry_time=expiry)
    clock.seconds = 9.9
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    clock.seconds = 10.0
    assert isinstance(await key_cache.verify("abc", "right"), Rejection)


async def test_store_gone(parts: Parts) -> None:
    key_cache, store, clock = parts
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    store.is_gone = True
    clock.seconds = CACHE_SECONDS + GRACE_SECONDS
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    assert isinstance(await key_cache.verify("abc", "wrong"), Rejection)
    with pytest.raises(StoreUnavailable):
        await key_cache.verify("other", "right")
    clock.seconds += 0.1
    with pytest.raises(StoreUnavailable):
        await key_cache.verify("abc", "right")
    store.is_gone = False
    clock.seconds += RETRY_SECONDS
    assert isinstance(await key_cache.verify("abc", "right"), Key)


async def test_a_store_that_failed_is_left_alone_for_a_while(parts: Parts) -> None:
    """So that neither good keys nor guesses wait for a database that does not answer."""
    key_cache, store, clock = parts
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    store.is_gone = True
    clock.seconds = CACHE_SECONDS + 1
    look_ups = store.look_ups
    for _ in range(10):
        assert isinstance(await key_cache.verify("abc", "right"), Key)
        with pytest.raises(StoreUnavailable):
            await key_cache.verify("other", "right")
    assert store.look_ups == look_ups + 1
    clock.seconds += RETRY_SECONDS
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    assert store.look_ups == look_ups + 2


class HangingStore(FakeStore):
    """Once gone, it answers nobody."""

    async def find_keys(self, prefixes: Collection[str]) -> dict[str, Key]:
        if self.is_gone:
            self.look_ups += 1
            await asyncio.sleep(3600)
        return await super().find_keys(prefixes)


async def settle() -> None:
    """Let every task run until it waits."""
    for _ in range(5):
        await asyncio.sleep(0)


async def test_one_request_at_a_time_tries_a_store_that_failed() -> None:
    store, clock = HangingStore(), Clock()
    key_cache = KeyCache(
        store, is_prefix=bool, cache_seconds=0.0, grace_seconds=1e9, monotonic=clock.monotonic, now=clock.now
    )
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    clock.seconds = 1.0
    key_cache._is_down, store.is_gone = True, True
    look_ups = store.look_ups
    trying = asyncio.create_task(key_cache.verify("other", "right"))
    await settle()
    for clock.seconds in (2.0, 1000.0):
        assert isinstance(await key_cache.verify("abc", "right"), Key), "the others are not kept"
    assert store.look_ups == look_ups + 1
    key_cache.close()
    trying.cancel()
    await asyncio.gather(trying, return_exceptions=True)
    clock.seconds += RETRY_SECONDS
    store.is_gone = False
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    assert store.look_ups == look_ups + 2, "a try that was cancelled does not keep the next from trying"
    assert not key_cache._is_down


class SlowStore(FakeStore):
    """Answers when it is let go on."""

    def __init__(self) -> None:
        super().__init__()
        self.may_go_on = asyncio.Event()
        self.asked: list[list[str]] = []

    async def find_keys(self, prefixes: Collection[str]) -> dict[str, Key]:
        self.asked.append(list(prefixes))
        await self.may_go_on.wait()
        return await super().find_keys(prefixes)


async def test_many_requests_at_once_ask_for_a_key_once() -> None:
    store = SlowStore()
    key_cache = KeyCache(store, is_prefix=bool, cache_seconds=CACHE_SECONDS, grace_seconds=GRACE_SECONDS)
    asking = [asyncio.create_task(key_cache.verify("abc", secret)) for secret in ["right"] * 500 + ["wrong"] * 500]
    await settle()
    asking[0].cancel()
    await settle()
    store.may_go_on.set()
    answers = await asyncio.gather(*asking, return_exceptions=True)
    assert store.look_ups == 1
    assert isinstance(answers[0], asyncio.CancelledError), "its end is not that of the others"
    assert [answer is store.key for answer in answers[1:]] == [True] * 499 + [False] * 500


async def test_guesses_leave_nothing_behind(parts: Parts) -> None:
    key_cache, _, _ = parts
    for number in range(100):
        assert isinstance(await key_cache.verify(f"guess{number}", "x"), Rejection)
        assert isinstance(await key_cache.verify("abc", f"guess{number}"), Rejection)
    assert key_cache._entries == {}


async def test_a_known_key_is_read_again_beside_any_number_of_strangers() -> None:
    """Eight hundred strangers wait for a store that takes its time; the known key's look-up does not wait for them."""
    store = SlowStore()
    store.may_go_on.set()
    key_cache = KeyCache(store, is_prefix=bool, cache_seconds=0.0, grace_seconds=GRACE_SECONDS)
    assert isinstance(await key_cache.verify("abc", "right"), Key)
    store.may_go_on.clear()
    store.asked.clear()
    strangers = [asyncio.create_task(key_cache.verify(f"stranger{n}", "x")) for n in range(800)]
    await settle()
    known = asyncio.create_task(key_cache.verify("abc", "right"))
    await settle()
    assert ["abc"] in store.asked
    assert len(store.asked) == 2, "of the strangers, one query is under way"
    store.may_go_on.set()
    assert isinstance(await known, Key)
    assert set(await asyncio.gather(*strangers)) == {Rejection.UNKNOWN}
    assert len(store.asked) == 1 + -(-800 // MOST_AT_ONCE)
    assert max(map(len, store.asked)) == MOST_AT_ONCE


async def test_a_key_that_is_not_known_is_not_asked_for_again_and_again(parts: Parts) -> None:
    key_cache, store, clock = parts
    for _ in range(10):
        assert isinstance(await key_cache.verify("other", "x"), Rejection)
    assert store.look_ups == 1
    clock.seconds = CACHE_SECONDS + 0.1
    assert isinstance(await key_cache.verify("other", "x"), Rejection)
    assert store.look_ups == 2


async def test_what_is_remembered_of_strangers_is_bounded(parts: Parts) -> None:
    key_cache, _, _ = parts
    for number in range(_MOST_UNKNOWN + 10):
        await key_cache.verify(f"guess{number}", "x")
    assert len(key_cache._unknown) <= _MOST_UNKNOWN
