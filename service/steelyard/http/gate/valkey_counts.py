"""Counts that several processes share, in Valkey or a server that speaks its protocol (Redis)."""

from collections.abc import Mapping
from urllib.parse import urlsplit

from litestar.stores.valkey import ValkeyStore
from valkey.asyncio import BlockingConnectionPool, Valkey
from valkey.exceptions import ValkeyError

_NAMESPACE = "STEELYARD_LIMITS"


class ValkeyCounts(ValkeyStore):
    """The framework's store, and an addition that is atomic: no process overwrites what another has counted."""

    @classmethod
    def at(cls, url: str, *, timeout_seconds: float) -> "ValkeyCounts":
        """The counts at ``url`` (``valkey://``, ``redis://``, with an ``s`` for TLS); connects to nothing yet.

        Raises ``ValueError`` for a URL that cannot be used.
        """
        try:
            pool = BlockingConnectionPool.from_url(
                url,
                max_connections=2,  # one exchange at a time
                timeout=timeout_seconds,
                socket_timeout=timeout_seconds,
                socket_connect_timeout=timeout_seconds,
            )
            pool.make_connection()  # type: ignore[no-untyped-call]  # not connected yet; refuses what it does not know
            path = urlsplit(url)
            if path.scheme != "unix" and not path.path.strip("/").isdigit() and path.path.strip("/"):
                raise ValueError("the number of the database is none")
        except (ValueError, TypeError, ValkeyError) as error:
            raise ValueError(f"the URL of the rate limits' store cannot be used: {type(error).__name__}") from None
        return cls(Valkey(connection_pool=pool), namespace=_NAMESPACE, handle_client_shutdown=True)

    async def add(self, amounts: Mapping[str, int], lifetimes: Mapping[str, int]) -> list[int]:
        """Add to each name's count, in one round trip. Returns the new counts."""
        async with self._valkey.pipeline(transaction=False) as pipeline:
            for name, amount in amounts.items():
                pipeline.incrby(self._make_key(name), amount)
                pipeline.expire(self._make_key(name), lifetimes[name])
            return [int(total) for total in (await pipeline.execute())[::2]]
