"""The gate before every route: the key, its scope, and the media types, all checked before a body is read.

It is the application's ``before_request`` hook and not a guard: the framework copies the route handler for every
guard it calls, which measured half as much again as the rest of an empty request.
"""

from functools import partial
from typing import Any

from litestar import Request
from litestar.types import Scope

from steelyard.store.keys import Key
from steelyard.store.store import StoreUnavailable

from ..operation.operation import ANSWER_TYPE, COUNT_UNITS, OPERATION, PUBLIC, Operation
from ..operation.request_costs import units
from ..wire.negotiation import negotiate
from ..wire.observability import KEY_PREFIX, KEY_REJECTION
from ..wire.problems import (
    INTERNAL_ERROR,
    KEY_REJECTED,
    KEY_REQUIRED,
    NOT_ACCEPTABLE,
    SCOPE_MISSING,
    UNAVAILABLE,
    UNSUPPORTED_MEDIA_TYPE,
    ProblemError,
)
from ..wire.unpacking import is_packed
from .key_cache import KeyCache, Rejection
from .rate_limit import RateLimiter
from .usage import UsageCounter

RETRY_AFTER_SECONDS = 5
_REALM = 'Bearer realm="steelyard"'


class Gate:
    """Admits a request to an operation, or raises the problem that says why not."""

    def __init__(self, key_cache: KeyCache, limiter: RateLimiter, usage: UsageCounter) -> None:
        self._key_cache = key_cache
        self._limiter = limiter
        self._usage = usage

    async def __call__(self, request: Request[Any, Any, Any]) -> None:
        """Check the key, its scope and its limits, then what is accepted, then what is sent."""
        options = request.route_handler.opt
        operation: Operation | None = options.get(OPERATION)
        if operation is None:
            if options.get(PUBLIC) or request.method == "OPTIONS":
                return
            raise ProblemError(INTERNAL_ERROR, "This route says neither that it is public nor what it needs.")
        authorization = accept = media_type = encoding = b""
        for name, value in request.scope["headers"]:
            if name == b"authorization":
                authorization = value
            elif name == b"accept":
                accept = b"%b,%b" % (accept, value) if accept else value
            elif name == b"content-type":
                media_type = value
            elif name == b"content-encoding":
                encoding = b"%b,%b" % (encoding, value) if encoding else value
        key = await self._authenticate(authorization, request.scope)
        request.scope["state"][KEY_PREFIX] = key.prefix
        if operation.scope not in key.scopes:
            raise ProblemError(SCOPE_MISSING, f"This operation needs a key with the scope `{operation.scope}`.")
        if self._usage.is_full:
            raise _full()
        expected = operation.media_type
        offered = operation.offered
        answer_type = negotiate(accept, offered)
        cost = units(operation, answer_type)
        await self._limiter.charge(key, request.scope, cost)
        self._usage.count(key.id, operation.operation_id, units=cost)
        if operation.stream is not None:
            count = partial(self._count_further_units, authorization, request.scope, operation.operation_id)
            request.scope["state"][COUNT_UNITS] = count
        if answer_type is None:
            detail = f"This operation answers {', '.join(f'`{name}`' for name in offered)}. {NOT_ACCEPTABLE.remedy}"
            raise ProblemError(NOT_ACCEPTABLE, detail, headers={"Vary": "accept"} if operation.formats else None)
        request.scope["state"][ANSWER_TYPE] = answer_type
        if operation.body_type is not None:
            _require_readable(media_type, encoding, expected)

    async def _count_further_units(self, authorization: bytes, scope: Scope, operation_id: str, units: int) -> None:
        """Take what a request costs beyond its first unit. Raises the problem where a limit is reached.

        A stream may go on for days, and only for as long as its key is good and use can be written down.
        """
        key = await self._authenticate(authorization, scope)
        if self._usage.is_full:
            raise _full()
        await self._limiter.charge(key, scope, units)
        self._usage.count(key.id, operation_id, requests=0, units=units)

    async def _authenticate(self, authorization: bytes, scope: Scope) -> Key:
        scheme, _, token = authorization.decode("latin-1").partition(" ")
        prefix, dot, secret = token.strip(" \t").partition(".")
        if scheme.lower() != "bearer" or not (prefix and dot and secret):
            raise ProblemError(
                KEY_REQUIRED, f"{KEY_REQUIRED.meaning} {KEY_REQUIRED.remedy}", headers={"WWW-Authenticate": _REALM}
            )
        try:
            key = await self._key_cache.verify(prefix, secret)
        except StoreUnavailable:
            raise _unavailable(UNAVAILABLE.meaning) from None
        if isinstance(key, Rejection):
            state = scope["state"]
            state[KEY_REJECTION] = key.value
            if key is not Rejection.UNKNOWN:  # of what is no key nothing is written down
                state[KEY_PREFIX] = prefix
            challenge = f'{_REALM}, error="invalid_token"'
            raise ProblemError(
                KEY_REJECTED,
                f"{KEY_REJECTED.meaning} {KEY_REJECTED.remedy}",
                headers={"WWW-Authenticate": challenge},
            )
        return key


def _full() -> ProblemError:
    return _unavailable("Use cannot be written down at the moment, and none is given away.")


def _unavailable(meaning: str) -> ProblemError:
    headers = {"Retry-After": str(RETRY_AFTER_SECONDS)}
    return ProblemError(UNAVAILABLE, f"{meaning} {UNAVAILABLE.remedy}", headers=headers)


def _require_readable(media_type: bytes, encoding: bytes, expected: str) -> None:
    wanted = expected.encode()
    if media_type != wanted and media_type.split(b";")[0].strip().lower() != wanted:
        sent = media_type.decode("latin-1")[:100]
        told = f"The body's media type is {sent!r}." if sent else "The request has no `Content-Type`."
        remedy = f"Send `Content-Type: {expected}`, and the body as it is or as gzip."
        raise ProblemError(UNSUPPORTED_MEDIA_TYPE, f"{told} {remedy}")
    if encoding and encoding.lower() != b"identity" and not is_packed(encoding):
        raise ProblemError(
            UNSUPPORTED_MEDIA_TYPE,
            f"The body's content encoding is {encoding.decode('latin-1')[:100]!r}. {UNSUPPORTED_MEDIA_TYPE.remedy}",
            headers={"Accept-Encoding": "gzip"},  # RFC 9110 12.5.3
        )
