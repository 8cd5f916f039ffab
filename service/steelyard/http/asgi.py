"""What an ASGI server loads: ``steelyard.http.asgi:create`` (a factory)."""

import os

from litestar import Litestar

from steelyard.settings import read_settings

from .app import create_app


def create() -> Litestar:
    """The application with its settings from the environment."""
    return create_app(read_settings(os.environ))
