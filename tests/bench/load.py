"""A closed-loop load generator for loopback: some connections, each with one request under way at a time.

Plain sockets and epoll, and an answer is parsed no further than its status line and length, so that one core drives
more requests than a server on the other can answer.
"""

import select
import socket
import statistics
import time
from typing import NamedTuple

_HOST = "127.0.0.1"
_PATIENCE_SECONDS = 30.0


class BadAnswerError(RuntimeError):
    """The server answered something else than a 200 with a length."""


class Load(NamedTuple):
    """What one burst of load saw: answers a second, and the 99th percentile of their times [s]."""

    per_second: float
    p99_seconds: float
    answers: int


def request_bytes(method: str, path: str, token: str, body: bytes = b"") -> bytes:
    """A whole HTTP/1.1 request."""
    head = f"{method} {path} HTTP/1.1\r\nHost: {_HOST}\r\nAuthorization: Bearer {token}\r\nAccept: application/json\r\n"
    if body:
        head += f"Content-Type: application/json\r\nContent-Length: {len(body)}\r\n"
    return head.encode() + b"\r\n" + body


def connect(port: int, connections: int) -> list[socket.socket]:
    """Connections to a server on loopback, kept from burst to burst."""
    made = []
    for _ in range(connections):
        one = socket.create_connection((_HOST, port), timeout=_PATIENCE_SECONDS)
        one.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        one.setblocking(False)
        made.append(one)
    return made


def burst(connections: list[socket.socket], request: bytes, seconds: float) -> Load:
    """Keep every connection busy with ``request`` for ``seconds``, then let the last answers come in."""
    poll = select.epoll()
    by_number = {one.fileno(): one for one in connections}
    began: dict[int, float] = {}
    missing: dict[int, int] = {}  # bytes of the answer still to come, once its length is known
    partial: dict[int, bytes] = {}
    times: list[float] = []
    clock = time.perf_counter
    start = clock()
    until = start + seconds
    for number, one in by_number.items():
        poll.register(number, select.EPOLLIN)
        began[number] = clock()
        one.send(request)
    while began:
        events = poll.poll(_PATIENCE_SECONDS)
        if not events:
            raise BadAnswerError(f"no answer within {_PATIENCE_SECONDS:g} s")
        for number, _ in events:
            one = by_number[number]
            data = one.recv(1 << 18)
            if not data:
                raise BadAnswerError("the server closed a connection")
            left = missing.pop(number, None)
            if left is None:
                data = partial.pop(number, b"") + data
                end = data.find(b"\r\n\r\n")
                if end < 0:
                    partial[number] = data
                    continue
                left = _body_length(data, end) + end + 4
            left -= len(data)
            if left:
                missing[number] = left
                continue
            now = clock()
            times.append(now - began[number])
            if now < until:
                began[number] = now
                one.send(request)
            else:
                del began[number]
                poll.unregister(number)
    elapsed = clock() - start
    poll.close()
    return Load(len(times) / elapsed, statistics.quantiles(times, n=100)[98], len(times))


def _body_length(data: bytes, end: int) -> int:
    if not data.startswith(b"HTTP/1.1 200"):
        raise BadAnswerError(data[:400].decode("latin-1"))
    head = data[:end].lower()
    at = head.find(b"content-length:")
    if at < 0:
        raise BadAnswerError("an answer without a length: " + head.decode("latin-1"))
    return int(head[at + 15 :].split(b"\r\n", 1)[0])


def answer(port: int, request: bytes) -> bytes:
    """One request's body, for a look at what is measured."""
    one = socket.create_connection((_HOST, port), timeout=_PATIENCE_SECONDS)
    with one:
        one.sendall(request)
        data = b""
        while (end := data.find(b"\r\n\r\n")) < 0:
            data += one.recv(1 << 16)
        length = _body_length(data, end)
        while len(data) < end + 4 + length:
            data += one.recv(1 << 16)
    return data[end + 4 :]
