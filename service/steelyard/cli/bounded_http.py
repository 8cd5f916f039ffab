"""HTTP/1.1 with bounds and manners: how long a request's head, trailers and rest may be and take, and what is refused.

The server's own protocol has no bound on any of them, merges trailers into the head, and drops the body of a request
that asks for another protocol. What is refused here is answered by the application, as everything is: see
``wire_refusals``.
"""

import asyncio
import fcntl
import sys
import termios
import urllib.parse
from typing import Any
from weakref import WeakKeyDictionary

import httptools
from uvicorn.protocols.http.httptools_impl import HttpToolsProtocol, RequestResponseCycle
from uvicorn.server import ServerState

from steelyard.http.wire.problems import BAD_REQUEST, HEAD_TOO_LARGE, OVERLOADED, PATH_TOO_LONG, ProblemKind
from steelyard.http.wire.wire_refusals import ENDING, refuse

from .head_rules import FIELDS, FRAMING, HEAD_BYTES, PATH_BYTES, fault, is_long, without_upgrade

HEAD_SECONDS = 10.0  # from a head's first byte to its last
UNREAD_BYTES = 2_097_152  # of a body whose request is answered already; then the connection is closed
UNREAD_SECONDS = 10.0  # and how long it may go on
# What is no body within one (lengths of chunks, their extensions, trailers): as much as a head, and 16 bytes for each
# of the body, which is three times what chunks of one byte need.
FRAMING_BYTES = HEAD_BYTES
FRAMING_PER_BYTE = 16
_PIECE_BYTES = 16_384  # the parser is given no more at a time, so that a bound is noticed where it is passed
# Of an answer that waits to be sent a caller takes so much between two looks, or all of it; else the connection ends.
TAKEN_BYTES = 16_384
LOOK_SECONDS = 60.0
_SENT_BYTES = 65_536  # of a whole answer that are handed on at once: what is not taken waits as it is, not as a copy


_endings: WeakKeyDictionary[ServerState, asyncio.Event] = WeakKeyDictionary()
_looks: WeakKeyDictionary[ServerState, asyncio.TimerHandle] = WeakKeyDictionary()  # the next look at all connections


class _OnePiece:
    """Stands in for a connection while the head of an answer and what follows it are written, and passes both on."""

    __slots__ = ("_connection", "_is_last", "_parts")

    def __init__(self, connection: asyncio.Transport) -> None:
        self._connection = connection
        self._parts: list[bytes] = []
        self._is_last = False

    def write(self, data: bytes) -> None:
        self._parts.append(data)

    def close(self) -> None:
        self._is_last = True

    def pass_on(self) -> None:
        if self._parts:
            self._connection.write(b"".join(self._parts))
        if self._is_last:
            self._connection.close()


class Cycle(RequestResponseCycle):
    """One request and its answer. A body that breaks off says so, and can still be answered."""

    is_broken = False
    _head: Any = None  # of the answer, until its body begins
    _ends_with_connection = False  # an answer of unknown length to a caller who knows no chunks

    async def send(self, message: Any) -> None:
        """Pass the answer on; its head goes with the beginning of its body, since each write wakes the caller."""
        if not self.response_started and message["type"] == "http.response.start":
            self._head, self.response_started = message, True
            if self.scope["http_version"] == "1.0" and all(name != b"content-length" for name, _ in message["headers"]):
                self._ends_with_connection, self.chunked_encoding = True, False  # RFC 9112 6.1, 6.3
            return
        body = message.get("body", b"")
        if len(body) > _SENT_BYTES and self._head is not None and not message.get("more_body"):
            last = (len(body) - 1) // _SENT_BYTES * _SENT_BYTES
            for start in range(0, last, _SENT_BYTES):
                part = {"type": message["type"], "body": body[start : start + _SENT_BYTES], "more_body": True}
                await self._pass_on(part)
            message = message | {"body": body[last:]}
        await self._pass_on(message)

    async def _pass_on(self, message: Any) -> None:
        if self._ends_with_connection:
            self.expected_content_length = len(message.get("body", b""))
        head, self._head = self._head, None
        if head is None:
            await super().send(message)
            return
        connection, self.response_started = self.transport, False
        self.transport = joint = _OnePiece(connection)  # type: ignore[assignment]
        try:
            await super().send(head)
            await super().send(message)
        finally:
            self.transport = connection
            joint.pass_on()

    def break_off(self, kind: ProblemKind) -> None:
        """The body is at fault: whoever waits for it is told, and the connection ends with the answer."""
        refuse(self.scope, kind)  # type: ignore[arg-type]
        self.is_broken = True
        self.keep_alive = False
        self.message_event.set()

    async def receive(self) -> Any:
        """The next part of the body, or the news that there is none."""
        if not self.is_broken:
            message = await super().receive()
            if not self.is_broken:
                return message
        return {"type": "http.disconnect"}


class BoundedHttp(HttpToolsProtocol):
    """One connection."""

    url = b""
    _is_mute = False
    _is_head_open = False
    _is_body_open = False
    _is_done = False  # nothing more is read: what came was broken
    _refused_as: ProblemKind = BAD_REQUEST
    _head_bytes = 0
    _framing_bytes = 0
    _body_bytes = 0  # of the piece that is being parsed
    _trailers = 0
    _unread_bytes = 0
    _untaken_bytes = 0  # of answers, at the last look
    _has_taken = False  # much of them since then
    _under_way: RequestResponseCycle | None = None
    _timer: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Wait for the first byte as long as for a further request."""
        super().connection_made(transport)
        if self.server_state not in _looks:
            _looks[self.server_state] = self.loop.call_later(LOOK_SECONDS, _look, self.loop, self.server_state)
        self._timer = self.loop.call_later(self.timeout_keep_alive, self._give_up)
        self._is_mute = True

    def connection_lost(self, exc: Exception | None) -> None:
        """Forget the connection. The server itself tells it to the request that came last, which may be queued."""
        self._stop_waiting()
        if self._under_way is not None and not self._under_way.response_complete:
            self._under_way.disconnected = True
            self._under_way.message_event.set()
        super().connection_lost(exc)

    def resume_writing(self) -> None:
        """What waited to be sent is taken, most of it."""
        self._has_taken = True
        super().resume_writing()

    def see_what_is_taken(self) -> None:
        """End a connection whose caller does not take the answers, which would be kept for as long as it pleases."""
        untaken = self.transport.get_write_buffer_size()
        if untaken:  # else the system has all of it, and is asked nothing
            untaken += _unacknowledged(self.transport)
            if self._untaken_bytes and self._untaken_bytes - untaken < TAKEN_BYTES and not self._has_taken:
                self.transport.abort()
        self._untaken_bytes, self._has_taken = untaken, False

    def data_received(self, data: bytes) -> None:
        """Parse what came, a piece at a time; refuse what is past a bound so far."""
        self._unset_keepalive_if_required()
        if self._is_mute:
            self._is_mute = False
            self._stop_waiting()
        if len(data) <= _PIECE_BYTES:
            self._feed(data)
            return
        for start in range(0, len(data), _PIECE_BYTES):
            self._feed(data[start : start + _PIECE_BYTES])

    def _feed(self, data: bytes) -> None:
        if self._is_done:
            self._throw_away(len(data))
            return
        self._head_bytes += len(data)
        self._body_bytes = 0
        try:
            self.parser.feed_data(data)
        except httptools.HttpParserUpgrade as asked:
            self._go_on_without_upgrade(data[asked.args[0] :])
            return
        except httptools.HttpParserError:
            self._refuse(self._refused_as)
            return
        if self._is_body_open:
            passed = self._framing_bytes + len(data) - (1 + FRAMING_PER_BYTE) * self._body_bytes
            self._framing_bytes = max(0, passed)
            if self._framing_bytes > FRAMING_BYTES:
                self._refuse(HEAD_TOO_LARGE)
        elif self._head_bytes > HEAD_BYTES:
            self._refuse(PATH_TOO_LONG if len(self.url) > PATH_BYTES else HEAD_TOO_LARGE)
        elif self._head_bytes and self._timer is None and (self._is_head_open or self._is_idle):
            # Empty lines are allowed before a head (RFC 9112 2.2), and are part of its time and length.
            self._timer = self.loop.call_later(HEAD_SECONDS, self._give_up)

    def _go_on_without_upgrade(self, rest: bytes) -> None:
        """Another protocol is asked for: parse the head again without the wish, since the parser passed its body by."""
        parser = self.parser
        head = without_upgrade(parser.get_method(), self.url, parser.get_http_version(), self.headers)
        self.parser = httptools.HttpRequestParser(self)
        self.parser.set_dangerous_leniencies(lenient_data_after_close=True)  # as the server's own has it
        self._head_bytes = 0
        self._feed(head)
        if rest:
            self.data_received(rest)

    @property
    def _is_idle(self) -> bool:
        return self.cycle is None or self.cycle.response_complete

    def shutdown(self) -> None:
        """The process is told to end: what would go on for long is to come to an end."""
        self._ending().set()
        super().shutdown()

    def _ending(self) -> asyncio.Event:
        """One event for all connections of the process."""
        ending = _endings.get(self.server_state)
        if ending is None:
            ending = _endings[self.server_state] = asyncio.Event()
        return ending

    def on_message_begin(self) -> None:
        """A head begins."""
        self._is_head_open = True
        self._trailers = self._unread_bytes = self._framing_bytes = 0
        super().on_message_begin()

    def on_header(self, name: bytes, value: bytes) -> None:
        """A field: of the head, or behind the body, where it is counted and passed over (RFC 9110 6.5.1).

        One there that would frame the message is refused.
        """
        if self._is_head_open:
            super().on_header(name, value)
            return
        self._trailers += 1
        if name.lower() in FRAMING:  # the parser would go by it, and read nothing more
            raise httptools.HttpParserError
        if self._trailers > FIELDS:
            self._refused_as = HEAD_TOO_LARGE
            raise httptools.HttpParserError

    def on_headers_complete(self) -> None:
        """A head is there: start its request. Raises where it is refused, which the parser passes on."""
        parser = self.parser
        method, version = parser.get_method(), parser.get_http_version()
        if parser.should_upgrade() and method != b"CONNECT":
            return  # parsed again at once
        found = fault(method, version, self.url, self.headers)
        url: Any = None
        try:
            url = httptools.parse_url(self.url)
        except httptools.HttpParserInvalidURLError:
            found = found or BAD_REQUEST
        # What came with the head in one piece counts towards it, so its true length is asked for only then.
        if found is None and self._head_bytes > HEAD_BYTES and is_long(self.headers):
            found = HEAD_TOO_LARGE
        if found is not None:
            self._refused_as = found
            raise httptools.HttpParserError
        self._is_head_open, self._is_body_open = False, True
        self._stop_waiting()
        self._head_bytes = 0
        scope: Any = self.scope
        scope["method"] = method.decode("ascii")
        scope["http_version"] = version
        raw_path = url.path or b"/"  # RFC 9112 3.2.1
        path = raw_path.decode("ascii")
        scope["path"] = urllib.parse.unquote(path) if "%" in path else path
        scope["raw_path"] = raw_path
        scope["query_string"] = url.query or b""
        scope["state"][ENDING] = self._ending()
        limit = self.limit_concurrency
        if limit is not None and (len(self.connections) >= limit or len(self.tasks) >= limit):
            refuse(scope, OVERLOADED)
        self._begin(keep_alive=version == "1.1" and parser.should_keep_alive())

    def on_body(self, body: bytes) -> None:
        """A piece of a body: for the request, or nobody, where that is answered already."""
        self._body_bytes += len(body)
        if self.cycle.response_complete:
            self._throw_away(len(body))
            return
        super().on_body(body)

    def on_message_complete(self) -> None:
        """The next bytes belong to another request."""
        if self._is_head_open:  # one that asked for an upgrade, and is parsed again
            return
        self._is_body_open = False
        self._head_bytes = 0
        self._stop_waiting()
        super().on_message_complete()

    def on_response_complete(self) -> None:
        """An answer is sent. What is left of the request's body may take a while, and no longer."""
        super().on_response_complete()
        if self._is_body_open and self.cycle.response_complete and self._timer is None:
            self._timer = self.loop.call_later(UNREAD_SECONDS, self._give_up)

    def _start_asgi_task(self, cycle: RequestResponseCycle, app: Any) -> None:
        self._under_way = cycle
        super()._start_asgi_task(cycle, app)

    def _begin(self, *, keep_alive: bool) -> None:
        """Start the request in ``scope``, or queue it behind the one under way."""
        before = self.cycle
        self.cycle = Cycle(
            scope=self.scope,
            transport=self.transport,
            flow=self.flow,
            logger=self.logger,
            access_logger=self.access_logger,
            access_log=self.access_log,
            default_headers=self.server_state.default_headers,
            message_event=asyncio.Event(),
            expect_100_continue=self.expect_100_continue and self.scope["http_version"] == "1.1",  # RFC 9110 10.1.1
            keep_alive=keep_alive,
            on_response=self.on_response_complete,
        )
        if before is None or before.response_complete:
            self._start_asgi_task(self.cycle, self.app)
        else:
            self.flow.pause_reading()
            self.pipeline.appendleft((self.cycle, self.app))

    def _refuse(self, kind: ProblemKind) -> None:
        """What came is broken, or past a bound: have that answered after what came before it, and close."""
        self._is_done = True
        self._stop_waiting()
        if self.transport.is_closing():
            return
        if self._is_body_open:
            cycle: Any = self.cycle
            if cycle.response_complete:
                self.transport.close()
            else:
                cycle.break_off(kind)
            return
        if not self._is_head_open:  # not even its first byte was taken
            self.on_message_begin()
        self._is_head_open = False
        scope: Any = self.scope
        # Of the head nothing is believed, save the request's id: it may be broken anywhere.
        scope.update(method="", path="/", raw_path=b"/", query_string=b"", http_version="1.1")
        refuse(scope, kind)
        self._begin(keep_alive=False)
        self.cycle.more_body = False

    def _throw_away(self, length: int) -> None:
        self._unread_bytes += length
        if self._unread_bytes > UNREAD_BYTES:
            self.transport.close()

    def _stop_waiting(self) -> None:
        if self._timer is not None:
            self._timer.cancel()
            self._timer = None

    def _give_up(self) -> None:
        self._timer = None
        self.transport.close()


def _unacknowledged(transport: asyncio.Transport) -> int:
    """What the system holds for the caller: megabytes, of which it takes much before it asks for more."""
    try:
        answer = fcntl.ioctl(transport.get_extra_info("socket").fileno(), termios.TIOCOUTQ, bytes(4))
    except OSError:  # the connection is gone, or no socket
        return 0
    return int.from_bytes(answer, sys.byteorder)


def _look(loop: asyncio.AbstractEventLoop, state: ServerState) -> None:
    """See what the callers of all connections have taken, and look again later while there are some."""
    for connection in list(state.connections):
        if isinstance(connection, BoundedHttp):
            connection.see_what_is_taken()
    if state.connections:
        _looks[state] = loop.call_later(LOOK_SECONDS, _look, loop, state)
    else:
        del _looks[state]
