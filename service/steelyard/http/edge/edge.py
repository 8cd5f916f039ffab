"""The outermost layer, between the server and the framework: one thin wrapper in place of a stack of middleware.

It adds the headers that every response carries, compresses long and streamed answers, and tells the observers how each
request ended.
"""

import asyncio
import zlib
from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from functools import partial
from time import perf_counter
from typing import Any

from litestar.types import ASGIApp, Message, Receive, Scope, Send

from ..gate.rate_limit import LIMIT_HEADERS
from ..operation.operation import OPERATION, Operation
from ..wire.conditional import compress, compressor
from ..wire.deprecation import DEPRECATION_HEADER
from ..wire.headers import (
    ACCEPT_ENCODING,
    ALWAYS,
    CACHE_CONTROL,
    CONTENT_ENCODING,
    CONTENT_LENGTH,
    CONTENT_SECURITY_POLICY,
    CONTENT_TYPE,
    NO_CONTENT_LOADED,
    NO_STORE,
    VARY,
    Header,
    accepts_gzip,
)
from ..wire.observability import BATCH_COUNTS, KEY_PREFIX, KEY_REJECTION, PROBLEM_CODE, Observer, RequestRecord
from ..wire.problems import INTERNAL_ERROR, OVERLOADED, answer_problem, log_fault
from ..wire.request_id import CONTRACT_HEADER, CONTRACT_VERSION, REQUEST_ID_HEADER, request_id
from ..wire.trace_context import TRACEPARENT, TraceContext, read_traceparent
from ..wire.wire_refusals import problem_of_kind, wire_refusal
from .overload import Overload

_ALWAYS: tuple[Header, ...] = ((CONTRACT_HEADER.lower().encode(), CONTRACT_VERSION.encode()), *ALWAYS)
_REQUEST_ID = REQUEST_ID_HEADER.lower().encode()
_DEPRECATION = DEPRECATION_HEADER.lower().encode()
_METHODS = frozenset({"GET", "HEAD", "POST", "OPTIONS", "PUT", "PATCH", "DELETE", "TRACE", "CONNECT"})
_PROBES = "/health/"  # answered however much there is to do
_PACKED_TYPE = b"image/png"  # compressed as it is
_COMPRESSION_LEVEL = 1  # the higher levels win a few percent of length for a multiple of the time
_LONG_BODY_BYTES = 65_536  # from here on compressing takes so long that it leaves the event loop


class Edge:
    """Wraps the framework's ASGI handler."""

    def __init__(
        self,
        app: ASGIApp,
        *,
        compress_from_bytes: int,
        observers: Sequence[Observer] = (),
        overload: Overload | None = None,
    ) -> None:
        self._app = app
        self._overload = overload or Overload()
        self._compress_from_bytes = compress_from_bytes
        self._observers = tuple(observers)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Serve one request."""
        started = perf_counter()
        response = _Response(scope, send, self._compress_from_bytes)
        try:
            refused = wire_refusal(scope)
            if self._overload.is_on and refused is None and not scope["path"].startswith(_PROBES):
                self._overload.refused_count += 1
                refused = problem_of_kind(OVERLOADED)
            if refused is None:
                await self._app(scope, receive, response.send)
            else:
                await answer_problem(scope, response.send, refused)
        except Exception as error:
            # The framework has no answer of its own to a fault in answering. The server must not see the exception,
            # since it would log its text, which may quote a person.
            if response.status:
                scope["state"][PROBLEM_CODE] = INTERNAL_ERROR.code
                log_fault(error, request_id(scope))
                raise ConnectionAbortedError("the answer broke off") from None
            await answer_problem(scope, response.send, error)
        finally:
            if self._observers:
                record = _record(scope, response, perf_counter() - started)
                for observe in self._observers:
                    observe(record)


class _Response:
    """The way of a response to the server."""

    __slots__ = ("_compress_from_bytes", "_held", "_packing", "_scope", "_send", "is_deprecated", "length", "status")

    def __init__(self, scope: Scope, send: Send, compress_from_bytes: int) -> None:
        self._scope = scope
        self._send = send
        self._compress_from_bytes = compress_from_bytes
        self._held: Any = None
        self._packing: Any = None  # the compressor of a streamed answer
        self.status = 0
        self.length = 0
        self.is_deprecated = False

    async def send(self, message: Message) -> None:
        """Pass a message on, with headers added, and the body compressed where it is long or streamed."""
        if message["type"] == "http.response.start":
            self.status = message["status"]
            if self._complete(message):
                self._held = message  # until the body is there, since compressing changes the headers
                return
        elif message["type"] == "http.response.body":
            has_more = message.get("more_body", False)
            if self._held is not None:
                start, self._held = self._held, None
                if has_more:
                    self._packing = compressor(_COMPRESSION_LEVEL)
                    _say_packed(start)
                else:
                    message["body"] = await _off_loop(message["body"], _packed)
                    _say_packed(start, len(message["body"]))
                await self._send(start)
            if self._packing is not None:
                message["body"] = await _off_loop(message["body"], partial(_packed_part, self._packing, has_more))
            self.length += len(message["body"])
        await self._send(message)

    def _complete(self, message: Any) -> bool:
        """Add what every response carries. Returns whether the body is to be compressed."""
        headers = [*message["headers"], *_ALWAYS, (_REQUEST_ID, request_id(self._scope).encode("ascii"))]
        headers += self._scope["state"].get(LIMIT_HEADERS, ())
        length = b"0"
        is_stored = is_page = is_encoded = has_body = has_length = False
        for name, value in message["headers"]:
            if name == CONTENT_LENGTH:
                length, has_length = value, True
            elif name == CACHE_CONTROL:
                is_stored = True
            elif name == CONTENT_SECURITY_POLICY:
                is_page = True
            elif name == CONTENT_ENCODING:
                is_encoded = True
            elif name == CONTENT_TYPE:
                has_body, is_encoded = True, is_encoded or value == _PACKED_TYPE
            elif name == _DEPRECATION:
                self.is_deprecated = True
        if not is_stored:
            headers.append(NO_STORE)
        if not is_page:
            headers.append(NO_CONTENT_LOADED)
        message["headers"] = headers
        is_streamed = has_body and not has_length
        if is_stored or is_encoded or not (is_streamed or int(length) >= self._compress_from_bytes):
            return False
        headers.append((VARY, ACCEPT_ENCODING))
        if self._scope.get("method") == "HEAD":
            return False  # there is no body of which to tell a packed length
        return any(name == ACCEPT_ENCODING and accepts_gzip(value) for name, value in self._scope["headers"])


async def _off_loop(body: bytes, pack: Callable[[bytes], bytes]) -> bytes:
    """``pack(body)``, in a thread where that takes long."""
    return pack(body) if len(body) < _LONG_BODY_BYTES else await asyncio.to_thread(pack, body)


def _packed(body: bytes) -> bytes:
    return compress(body, _COMPRESSION_LEVEL)


def _packed_part(packing: Any, has_more: bool, body: bytes) -> bytes:
    """A part of a stream, flushed so that the caller can read all of it at once."""
    return bytes(packing.compress(body)) + bytes(packing.flush(zlib.Z_SYNC_FLUSH if has_more else zlib.Z_FINISH))


def _say_packed(start: Any, length: int | None = None) -> None:
    """Make the headers of ``start`` fit a compressed body: of this length, or a streamed one."""
    headers = [header for header in start["headers"] if header[0] != CONTENT_LENGTH]
    if length is not None:
        headers.append((CONTENT_LENGTH, b"%d" % length))
    start["headers"] = [*headers, (CONTENT_ENCODING, b"gzip")]


def _record(scope: Any, response: _Response, seconds: float) -> RequestRecord:
    state = scope["state"]
    handler = scope.get("route_handler")
    operation: Operation | None = handler.opt.get(OPERATION) if handler else None
    method: str = scope["method"]
    lines, line_problems, is_complete = state.get(BATCH_COUNTS, (None, None, None))
    trace: TraceContext | None = None
    for name, value in scope["headers"]:
        if name == TRACEPARENT:
            trace = read_traceparent(value)
    return RequestRecord(
        time=datetime.now(UTC),
        event="request",
        request_id=request_id(scope),
        method=method if method in _METHODS else "other",
        route=scope.get("path_template") or None,
        operation=operation.operation_id if operation else None,
        status=response.status,
        problem=state.get(PROBLEM_CODE),
        duration_ms=round(seconds * 1000, 3),
        answer_bytes=response.length,
        key=state.get(KEY_PREFIX),
        rejection=state.get(KEY_REJECTION),
        lines=lines,
        line_problems=line_problems,
        is_complete=is_complete,
        trace_id=trace.trace_id if trace else None,
        parent_id=trace.parent_id if trace else None,
        is_sampled=trace.is_sampled if trace else False,
        is_deprecated=response.is_deprecated,
    )
