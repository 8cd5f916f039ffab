"""What an ASGI server loads: ``steelyard.http.asgi:create`` (a factory)."""

import gc
import os
import sys

from litestar import Litestar

from steelyard.settings import read_settings

from .app import create_app
from .wire.observability import log_to

# Objects made before the youngest are looked through, and rounds of that before the older ones are.
_COLLECT_AFTER = (20_000, 50, 100)


def create() -> Litestar:
    """The application with its settings from the environment, and its logs on standard error."""
    log_to(sys.stderr)
    app = create_app(read_settings(os.environ))
    collect_seldom()
    return app


def collect_seldom() -> None:
    """Leave what was made for the start out of the rounds of the garbage collector, and let it look seldom.

    What a request makes goes by counting references; a round of the collector looks through the whole application and
    finds next to nothing, at about a tenth of what an answer costs.
    """
    gc.collect()
    gc.freeze()
    gc.set_threshold(*_COLLECT_AFTER)
