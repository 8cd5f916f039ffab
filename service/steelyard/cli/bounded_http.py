"""HTTP/1.1 with bounds: how long a request's head may be, how long it may take, how much of a body is thrown away.

The server's own protocol has none of the three: a caller could keep a connection open with headers that never end, or
fill the memory with them.
"""

import asyncio
import json
from http import HTTPStatus

import httptools
from uvicorn.protocols.http.httptools_impl import STATUS_LINE, HttpToolsProtocol

HEAD_BYTES = 65_536
HEADERS = 100
PATH_BYTES = 8_192
HEAD_SECONDS = 10.0  # from a head's first byte to its last
UNREAD_BYTES = 2_097_152  # of a body whose request is answered already; then the connection is closed


class BoundedHttp(HttpToolsProtocol):
    """One connection."""

    _refused_with = HTTPStatus.BAD_REQUEST
    _is_mute = False
    _is_head_open = False
    _head_bytes = 0
    _unread_bytes = 0
    _head_timer: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Wait for the first byte as long as for a further request."""
        super().connection_made(transport)
        self._head_timer = self.loop.call_later(self.timeout_keep_alive, self._give_up)
        self._is_mute = True

    def connection_lost(self, exc: Exception | None) -> None:
        """Forget the connection."""
        self._stop_waiting()
        super().connection_lost(exc)

    def data_received(self, data: bytes) -> None:
        """Parse what came; refuse a head that is too long so far."""
        self._head_bytes += len(data)
        if self._is_mute:
            self._is_mute = False
            self._stop_waiting()
        super().data_received(data)
        if self._is_head_open:
            if self._head_bytes > HEAD_BYTES:
                is_path = len(self.url) > PATH_BYTES
                self._refuse(HTTPStatus.REQUEST_URI_TOO_LONG if is_path else HTTPStatus.REQUEST_HEADER_FIELDS_TOO_LARGE)
            elif self._head_timer is None:
                self._head_timer = self.loop.call_later(HEAD_SECONDS, self._give_up)

    def on_message_begin(self) -> None:
        """A head begins."""
        self._is_head_open = True
        self._unread_bytes = 0
        super().on_message_begin()

    def on_headers_complete(self) -> None:
        """A head is there. Raises where it is past a bound, which the parser passes on as broken HTTP."""
        self._is_head_open = False
        self._stop_waiting()
        if self.parser.get_http_version() not in ("1.0", "1.1"):
            raise httptools.HttpParserError
        if len(self.url) > PATH_BYTES:
            self._refused_with = HTTPStatus.REQUEST_URI_TOO_LONG
            raise httptools.HttpParserError
        # What came with the head in one piece counts towards it, so its true length is asked for only then.
        if len(self.headers) > HEADERS or (
            self._head_bytes > HEAD_BYTES and sum(len(name) + len(value) for name, value in self.headers) > HEAD_BYTES
        ):
            self._refused_with = HTTPStatus.REQUEST_HEADER_FIELDS_TOO_LARGE
            raise httptools.HttpParserError
        self._head_bytes = 0
        super().on_headers_complete()

    def on_body(self, body: bytes) -> None:
        """A piece of a body: for the request, or nobody, where that is answered already."""
        if self.cycle.response_complete:
            self._unread_bytes += len(body)
            if self._unread_bytes > UNREAD_BYTES:
                self.transport.close()
            return
        super().on_body(body)

    def on_message_complete(self) -> None:
        """The next bytes belong to another request."""
        self._head_bytes = 0
        super().on_message_complete()

    def send_400_response(self, msg: str) -> None:
        """Refuse what is not HTTP, or past a bound, and close. Nothing of what was sent is sent back."""
        if self.cycle is None or self.cycle.response_complete or not self.cycle.response_started:
            self._refuse(self._refused_with)
        else:
            self.transport.close()

    def _refuse(self, status: HTTPStatus) -> None:
        self._stop_waiting()
        self._is_head_open = False
        if self.transport.is_closing():
            return
        problem = {"type": "about:blank", "title": status.phrase, "status": status.value}
        body = json.dumps(problem, separators=(",", ":")).encode()
        head = b"content-type: application/problem+json\r\ncontent-length: %d\r\nconnection: close\r\n\r\n" % len(body)
        self.transport.write(STATUS_LINE[status.value] + head + body)
        self.transport.close()

    def _stop_waiting(self) -> None:
        if self._head_timer is not None:
            self._head_timer.cancel()
            self._head_timer = None

    def _give_up(self) -> None:
        self._head_timer = None
        self.transport.close()
