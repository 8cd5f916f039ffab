"""Whether the process lives, and whether it can serve. Public, and outside the contract."""

import msgspec
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from ..gate.gate import RETRY_AFTER_SECONDS
from ..operation.keyless import public
from ..wire.encoding import EncodedAnswer
from ..wire.problems import UNAVAILABLE, ProblemError
from .readiness import Readiness


class Ready(msgspec.Struct, omit_defaults=True):
    """The answer of the second probe; ``store`` is what is wrong with it, while requests are answered all the same."""

    status: str
    store: str | None = None


def health_routes(readiness: Readiness) -> list[HTTPRouteHandler]:
    """The two probes."""

    @public("/health/live")
    async def live() -> ASGIApp:
        """200 as long as the process can answer at all."""
        return EncodedAnswer(b'{"status":"live"}')

    @public("/health/ready")
    async def ready() -> ASGIApp:
        """200 when keys can be checked and use be counted, as of the last look; else 503."""
        problem = readiness.problem
        if problem is not None:
            raise ProblemError(UNAVAILABLE, problem, headers={"Retry-After": str(RETRY_AFTER_SECONDS)})
        return EncodedAnswer(msgspec.json.encode(Ready("ready", readiness.store_fault)))

    return [live, ready]
