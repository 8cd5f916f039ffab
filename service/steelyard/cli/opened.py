"""What the commands share: the settings, and the store opened for as long as it is used."""

import asyncio
import os
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from typing import TypeVar

from steelyard.settings import Settings, read_settings
from steelyard.store.database import wait_for_drivers
from steelyard.store.store import Store, StoreUnavailable

_LAST_WORDS_SECONDS = 0.5

T = TypeVar("T")


def current_settings() -> Settings:
    """The settings of this environment."""
    return read_settings(os.environ)


def open_store(settings: Settings) -> Store:
    """The store that the settings name."""
    return Store(settings.database_url, timeout_seconds=settings.store_timeout_seconds)


@asynccontextmanager
async def opened_store(settings: Settings) -> AsyncIterator[Store]:
    """The store that the settings name, closed afterwards."""
    store = open_store(settings)
    try:
        yield store
    except StoreUnavailable:
        await asyncio.to_thread(wait_for_drivers, _LAST_WORDS_SECONDS)
        raise
    finally:
        await store.close()


def with_store(use: Callable[[Store], Awaitable[T]], settings: Settings | None = None, *, migrate: bool = False) -> T:
    """Open the store, see that its tables are what this version needs, use it, close it."""
    settings = settings or current_settings()

    async def run() -> T:
        async with opened_store(settings) as store:
            await store.prepare(migrate=migrate or settings.migrate_at_start)
            return await use(store)

    return asyncio.run(run())
