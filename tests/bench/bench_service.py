"""The service with two empty operations beside its own, as an ASGI factory: ``tests.bench.bench_service:create``.

The measure of every HTTP ratio is an empty keyed request: the same server, router and gate (key, scope, usage count,
media types), and no work. There are two, since part of a request's cost is the server handing over its body:
``/empty`` is a plain Litestar handler that reads none, ``/empty-body`` decodes an empty JSON object.
"""

import os

import msgspec
from litestar import Litestar, get
from steelyard.garbage import collect_seldom
from steelyard.http.app import OPERATIONS, create_app
from steelyard.http.operation.operation import OPERATION, computation
from steelyard.settings import read_settings

EMPTY = "/empty"
EMPTY_BODY = "/empty-body"


class Nothing(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """An object without members."""


@computation(EMPTY_BODY, operation_id="empty_body", tag="bench", summary="Do nothing", request_examples={})
def empty_body(body: Nothing) -> Nothing:
    """Answer an empty object with itself."""
    return body


# The gate reads an operation's body type to ask for a media type; this one has no body.
_WITHOUT_BODY = msgspec.structs.replace(empty_body, operation_id="empty", method="GET", path=EMPTY, body_type=None)


@get(EMPTY, opt={OPERATION: _WITHOUT_BODY})
async def empty() -> dict[str, str]:
    """Nothing, as Litestar sends it."""
    return {}


def create() -> Litestar:
    """The application with its settings from the environment."""
    app = create_app(read_settings(os.environ), (*OPERATIONS, empty_body))
    app.register(empty)
    collect_seldom()
    return app
