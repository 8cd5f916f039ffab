"""Whether the process lives, and whether it can serve. Public, and outside the contract."""

from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from steelyard.store.schema import is_behind
from steelyard.store.store import Store, StoreUnavailable

from ..gate.gate import RETRY_AFTER_SECONDS
from ..operation.keyless import public
from ..wire.encoding import EncodedAnswer
from ..wire.problems import UNAVAILABLE, ProblemError


def _not_ready(detail: str) -> ProblemError:
    return ProblemError(UNAVAILABLE, detail, headers={"Retry-After": str(RETRY_AFTER_SECONDS)})


def health_routes(store: Store) -> list[HTTPRouteHandler]:
    """The two probes."""

    @public("/health/live")
    async def live() -> ASGIApp:
        """200 as long as the process can answer at all."""
        return EncodedAnswer(b'{"status":"live"}')

    @public("/health/ready")
    async def ready() -> ASGIApp:
        """200 when keys can be checked: the store answers, and its tables are what this code needs; else 503."""
        try:
            behind = is_behind(await store.revision())
            await store.ping()
        except StoreUnavailable:
            raise _not_ready(UNAVAILABLE.meaning) from None
        if behind:
            raise _not_ready("The operator's store is behind this version; run `steelyard migrate`.")
        return EncodedAnswer(b'{"status":"ready"}')

    return [live, ready]
