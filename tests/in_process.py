"""The service inside the test's own process, reached without a socket."""

import asyncio
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any, NamedTuple

import httpx
from litestar import Litestar
from steelyard.http.app import OPERATIONS, create_app
from steelyard.http.operation.operation import Operation
from steelyard.settings import Settings
from steelyard.store.keys import Scope
from steelyard.store.store import Store

BASE_URL = "http://service.test"
PATIENCE_SECONDS = 60.0  # for what must succeed, however loaded the machine is


class Running(NamedTuple):
    """A started service, a client that carries its key, that key's token, and a second view of its store."""

    app: Litestar
    client: httpx.AsyncClient
    token: str
    store: Store
    settings: Settings


@asynccontextmanager
async def alive(app: Litestar) -> AsyncIterator[None]:
    """Start-up and shutdown in one task, as a server has it; a fixture's two halves are not one task."""
    started, stop = asyncio.Event(), asyncio.Event()

    async def live() -> None:
        async with app.lifespan():
            started.set()
            await stop.wait()

    life = asyncio.create_task(live())
    starting = asyncio.create_task(started.wait())
    await asyncio.wait([life, starting], return_when=asyncio.FIRST_COMPLETED)
    if life.done():
        starting.cancel()
        life.result()
    try:
        yield
    finally:
        stop.set()
        await life


@asynccontextmanager
async def running(
    directory: Path,
    operations: Sequence[Operation] = OPERATIONS,
    *,
    scopes: Sequence[str] = tuple(Scope),
    **settings: Any,
) -> AsyncIterator[Running]:
    """Start the service on a fresh database in ``directory``, without rate limits unless they are set."""
    url = f"sqlite+aiosqlite:///{directory}/operator.sqlite3"
    usual = {"database_url": url, "store_timeout_seconds": PATIENCE_SECONDS, "log_requests": False}
    # A starved machine takes longer over a first answer than a caller should wait, or be let in for.
    usual |= {"computation_seconds": PATIENCE_SECONDS, "queue_seconds": PATIENCE_SECONDS}
    # The event loop of the tests stands still between them.
    chosen = Settings(**usual | {"rate_limit_requests": 0, "overload_seconds": 0.0} | settings)
    store = Store(url, timeout_seconds=PATIENCE_SECONDS)
    await store.migrate()
    _, token = await store.create_key("Quarry Lane Gym", scopes)
    app = create_app(chosen, operations)
    async with (
        alive(app),
        httpx.AsyncClient(
            # Exceptions that escape the application fail the test instead of looking like a 500.
            transport=httpx.ASGITransport(app, raise_app_exceptions=True),
            base_url=BASE_URL,
            headers={"Authorization": f"Bearer {token}"},
        ) as client,
    ):
        yield Running(app, client, token, store, chosen)
    await store.close()
