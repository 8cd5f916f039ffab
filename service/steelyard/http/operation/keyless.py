"""Routes that need no key: the probes, and the documents about the service itself."""

from collections.abc import Callable
from typing import Any

from litestar.handlers import HTTPRouteHandler

from .operation import PUBLIC


def public(path: str) -> Callable[[Callable[..., Any]], HTTPRouteHandler]:
    """GET and HEAD of ``path`` for anyone; the decorated function returns an ASGI application."""
    return HTTPRouteHandler(path, http_method=["GET", "HEAD"], status_code=200, opt={PUBLIC: True})
