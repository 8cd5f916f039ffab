"""Many callers with invented keys, while keys are made, used and revoked."""

import asyncio
import secrets
import time
from collections import Counter

from steelyard.store.keys import Scope, new_prefix
from steelyard.store.store import Store

from .scenarios import Row, row_of
from .served import HANG_SECONDS, Served, served
from .wire import exchange, message


async def invented_keys(store_url: str, *, connections: int = 800, cache_seconds: float = 3.0) -> Row:
    """A key is revoked, and another made, beside hundreds of connections with invented keys."""
    async with served(store_url, key_cache_seconds=cache_seconds) as service:
        store = Store(store_url, timeout_seconds=HANG_SECONDS)
        told: Counter[int] = Counter()
        stop = asyncio.Event()
        strangers = [asyncio.create_task(_stranger(service, stop, told)) for _ in range(connections)]
        try:
            while told.total() < connections:
                await asyncio.sleep(0.05)
            known = [(await service.ask()).status_code for _ in range(10)]
            _, token = await store.create_key("Dockside Barbell", list(Scope))
            new = (await service.ask(token)).status_code
            await store.revoke_key(service.token.partition(".")[0])
            revoked_at = time.monotonic()
            while (await service.ask()).status_code == 200:
                await asyncio.sleep(0.02)
            seconds = time.monotonic() - revoked_at
            refused = (await service.ask()).status_code
        finally:
            stop.set()
            await asyncio.gather(*strangers)
            await store.close()
    return row_of(
        f"{connections} connections with invented keys",
        f"A known key works, a new one too, a revoked one is refused within {cache_seconds:g} s (`KEY_CACHE_SECONDS`) "
        "and the answer under way.",
        f"Strangers: {dict(told)}; known key: {dict(Counter(known))}; new key: {new}; the revoked one: {refused} after "
        f"{seconds:.1f} s.",
        {
            "the known key works": set(known) == {200},
            "the new key works": new == 200,
            "the revoked key dies": refused == 401 and seconds < cache_seconds + 2.0,
            "strangers are refused": set(told) == {401},
        },
    )


async def _stranger(service: Served, stop: asyncio.Event, told: Counter[int]) -> None:
    reader, writer = await asyncio.open_connection("127.0.0.1", service.port)
    while not stop.is_set():
        sent = message(f"{new_prefix()}.{secrets.token_urlsafe(8)}")
        told[await exchange(reader, writer, sent)] += 1
    writer.close()
