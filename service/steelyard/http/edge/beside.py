"""What runs beside the requests: counts that are written, looks at the store, old usage that is deleted."""

import asyncio
import logging
from collections.abc import Coroutine
from typing import Any, Protocol

AGAIN_SECONDS = 1.0

_log = logging.getLogger(__name__)


class Beside(Protocol):
    """What runs beside the requests until it is cancelled."""

    def run(self) -> Coroutine[Any, Any, None]: ...


async def kept_running(part: Beside) -> None:
    """Run a part until it is cancelled. Nobody waits for it: what fails in it is logged, and it begins again."""
    while True:
        try:
            await part.run()
        except Exception:
            _log.exception("%s failed, and begins again", type(part).__name__)
        await asyncio.sleep(AGAIN_SECONDS)
