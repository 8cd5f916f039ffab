"""What an ASGI server loads: ``steelyard.http.asgi:create`` (a factory)."""

import os
import sys

from litestar import Litestar

from steelyard.garbage import collect_seldom
from steelyard.settings import read_settings

from .app import create_app
from .wire.observability import log_all_to


def create() -> Litestar:
    """The application with its settings from the environment, and its logs on standard error."""
    log_all_to(sys.stderr)
    app = create_app(read_settings(os.environ))
    collect_seldom()
    return app
