"""A database that falls silent in the middle of a use: wherever that is, the use is given up in time."""

import asyncio
import contextlib
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from datetime import date

import pytest
from in_process import PATIENCE_SECONDS
from sqlalchemy.engine import make_url
from steelyard.store import store as store_module
from steelyard.store.store import FlushId, Store, StoreUnavailable, UsageCell, UsageCount

TIMEOUT_SECONDS = 0.3
# How many times the server speaks in a use: the longest has a ping, a transaction, its statements and a commit.
MOST_ANSWERS = 12


class FallsSilent:
    """A way to a server, which lets so many of its answers through and then neither passes nor closes anything."""

    def __init__(self, port: int) -> None:
        self._port = port
        self.answers_left: int | None = None  # for ever
        self._writers: list[asyncio.StreamWriter] = []
        self._tasks: list[asyncio.Task[None]] = []

    @property
    def is_silent(self) -> bool:
        return self.answers_left is not None and self.answers_left <= 0

    async def accept(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        self._writers.append(writer)
        if self.is_silent:
            return
        up_reader, up_writer = await asyncio.open_connection("127.0.0.1", self._port)
        self._writers.append(up_writer)
        self._tasks += [
            asyncio.create_task(self._pass(reader, up_writer, is_answer=False)),
            asyncio.create_task(self._pass(up_reader, writer, is_answer=True)),
        ]

    async def _pass(self, source: asyncio.StreamReader, to: asyncio.StreamWriter, *, is_answer: bool) -> None:
        with contextlib.suppress(ConnectionError):
            while data := await source.read(65536):
                if self.is_silent:
                    continue
                if is_answer and self.answers_left is not None:
                    self.answers_left -= 1
                to.write(data)
                await to.drain()
            if not self.is_silent:
                to.close()

    def close(self) -> None:
        """Close all connections."""
        for task in self._tasks:
            task.cancel()
        for writer in self._writers:
            writer.close()


@asynccontextmanager
async def falling_silent(
    store_url: str, timeout_seconds: float = TIMEOUT_SECONDS
) -> AsyncIterator[tuple[FallsSilent, Store]]:
    """A way to the server of a store, and a store that goes it and has a connection open."""
    url = make_url(store_url)
    assert url.port is not None
    way = FallsSilent(url.port)
    listening = await asyncio.start_server(way.accept, "127.0.0.1", 0)
    port = listening.sockets[0].getsockname()[1]
    through = url.set(host="127.0.0.1", port=port).render_as_string(hide_password=False)
    store = Store(through, timeout_seconds=timeout_seconds)
    await ready(store)
    try:
        yield way, store
    finally:
        listening.close()
        way.close()


async def ready(store: Store) -> None:
    async with asyncio.timeout(PATIENCE_SECONDS):
        while True:
            with contextlib.suppress(StoreUnavailable):
                return await store.ping()
            await asyncio.sleep(0.05)


Use = Callable[[Store, int], Awaitable[object]]


def counted(store: Store, key_id: int) -> Awaitable[object]:
    """In rows of its own: what falls silent keeps its locks."""
    mine = f"{id(store)}"
    return store.add_usage({UsageCell(key_id, mine, date(2026, 3, 2)): UsageCount(1, 1)}, FlushId(mine, 1))


USES: dict[str, Use] = {
    "look": lambda store, _: store.ping(),
    "revision": lambda store, _: store.revision(),
    "write": counted,
}


@pytest.mark.parametrize("store_url", ["postgresql"], indirect=True)
@pytest.mark.parametrize("use", USES)
async def test_wherever_it_falls_silent_a_use_ends_in_time(
    store_url: str, use: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(store_module, "COMMIT_SECONDS", TIMEOUT_SECONDS)
    whole = Store(store_url, timeout_seconds=PATIENCE_SECONDS)
    await whole.migrate()
    key, _ = await whole.create_key("Quarry Lane Gym", ["compute"])
    await whole.close()

    async with falling_silent(store_url, PATIENCE_SECONDS) as (way, store):
        way.answers_left = MOST_ANSWERS
        await USES[use](store, key.id)
        assert way.answers_left > 0, "it never falls silent in a longer use"
        await store.close()

    async def ended(answers: int) -> None:
        """Raises ``TimeoutError`` for a use that nothing ends."""
        async with falling_silent(store_url) as (way, store):
            way.answers_left = answers
            async with asyncio.timeout(PATIENCE_SECONDS):
                with contextlib.suppress(StoreUnavailable):
                    await USES[use](store, key.id)
                    assert answers > 0, "it answers without having heard anything"
                await store.close()

    found = await asyncio.gather(*(ended(answers) for answers in range(MOST_ANSWERS)), return_exceptions=True)
    hung = [answers for answers, each in enumerate(found) if each is not None]
    assert not hung, f"after so many answers it waits for ever: {hung}: {found}"
