"""Whether the process lives, and whether it can serve. Public, and outside the contract."""

from litestar import get
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from steelyard.store.store import Store, StoreUnavailable

from .answers import Answer
from .gate import RETRY_AFTER_SECONDS
from .operations import PUBLIC
from .problems import UNAVAILABLE, ProblemError


def health_routes(store: Store) -> list[HTTPRouteHandler]:
    """The two probes."""

    @get("/health/live", opt={PUBLIC: True})
    async def live() -> ASGIApp:
        """200 as long as the process can answer at all."""
        return Answer(b'{"status":"live"}')

    @get("/health/ready", opt={PUBLIC: True})
    async def ready() -> ASGIApp:
        """200 when keys can be checked, else 503."""
        try:
            await store.ping()
        except StoreUnavailable:
            headers = {"Retry-After": str(RETRY_AFTER_SECONDS)}
            raise ProblemError(UNAVAILABLE, UNAVAILABLE.meaning, headers=headers) from None
        return Answer(b'{"status":"ready"}')

    return [live, ready]
