"""What HTTP/1.1 forbids or leaves open, byte by byte, against the service in a process of its own, over loopback.

RFC 9110 and RFC 9112 are named where a test holds the service to them.
"""

import asyncio
import contextlib
import json
import logging
import re
import socket
import time
from collections.abc import AsyncIterator, Iterator
from typing import Any
from uuid import UUID

import httpx
import pytest
from chaos.served import served as spawned
from chaos.served import sqlite_url
from examples.local_service import LocalService, local_service
from msgspec import to_builtins
from raw_http import PATIENCE_SECONDS, Line, Raw, is_well, line, post, resident_bytes
from steelyard.cli import bounded_http, head_rules
from steelyard.http.app import OPERATIONS
from steelyard.http.wire.request_id import CONTRACT_HEADER
from uvicorn import Config
from uvicorn.protocols.http.flow_control import FlowControl
from uvicorn.server import ServerState

MAINTENANCE = next(o for o in OPERATIONS if o.operation_id == "estimate_maintenance")
PATH = MAINTENANCE.path
BODY = json.dumps(to_builtins(MAINTENANCE.request_examples["profile_only"])).encode()
LIVE = b"GET /health/live HTTP/1.1\r\nHost: service.test\r\n\r\n"
REJECTED = "none.such"


@pytest.fixture(scope="module")
def served() -> Iterator[LocalService]:
    with local_service(metrics="true", metrics_public="true", body_seconds="2") as service:
        yield service


async def answer_to(served: LocalService, sent: bytes) -> Raw:
    async with line(served.url) as one:
        one.writer.write(sent)
        return await one.answer()


def chunked(key: str, *chunks: bytes, end: bytes = b"0\r\n") -> bytes:
    """A request in chunks, up to where its trailers would begin."""
    body = b"".join(b"%x\r\n%b\r\n" % (len(chunk), chunk) for chunk in chunks)
    return post(PATH, key, transfer_encoding="chunked", content_length="") + body + end


# Trailers


FLOODS = {
    "many fields": b"".join(b"X%d: y\r\n" % number for number in range(4_000)),
    "one field without an end": b"X: " + b"a" * 65_536,
}


@pytest.mark.parametrize("flood", FLOODS.values(), ids=FLOODS.keys())
@pytest.mark.parametrize("is_known", [True, False], ids=["with a key", "without a key"])
async def test_trailers_are_bounded_and_the_connection_closes(
    served: LocalService, flood: bytes, is_known: bool
) -> None:
    """RFC 9110 6.5.1 lets a server discard trailers. Whoever sends on without an end is cut off."""
    before = await resident_bytes(served.url)
    sent = 0
    async with line(served.url) as one:
        await one.send(chunked(served.key if is_known else REJECTED, BODY))
        try:
            for _ in range(1_000):
                one.writer.write(flood)
                await asyncio.wait_for(one.writer.drain(), PATIENCE_SECONDS)
                sent += len(flood)
        except ConnectionError:
            pass
    assert sent < 20_000_000, "the connection stays open"
    assert await resident_bytes(served.url) - before < 10_000_000
    assert await is_well(served.url)


async def test_too_many_trailers_are_refused_in_words(served: LocalService) -> None:
    fields = b"".join(b"X%d: y\r\n" % number for number in range(head_rules.FIELDS + 2))
    answer = await answer_to(served, chunked(served.key, BODY) + fields)
    assert (answer.status, answer.type) == (431, "/problems/head-too-large")
    assert answer.headers["connection"] == "close"


async def test_a_few_trailers_are_read_and_passed_over(served: LocalService) -> None:
    async with line(served.url) as one:
        await one.send(chunked(served.key, BODY) + b"X-Checksum: 1\r\nContent-Type: text/html\r\n\r\n" + LIVE)
        assert (await one.answer()).status == 200
        assert b"live" in (await one.answer()).body


@pytest.mark.parametrize("is_known", [True, False], ids=["with a key", "without a key"])
@pytest.mark.parametrize("field", ["Connection: close", "connection: Upgrade", "Upgrade: h2c", "Content-Length: 5"])
async def test_a_trailer_frames_nothing(served: LocalService, field: str, is_known: bool) -> None:
    """RFC 9110 6.5.1. The parser would go by it: what is sent next on the connection would never be answered."""
    async with line(served.url) as one:
        await one.send(chunked(served.key if is_known else REJECTED, BODY) + field.encode() + b"\r\n\r\n" + LIVE)
        answer = await one.answer()
        assert (answer.status, answer.type) == (400, "/problems/bad-request")
        assert await one.rest() == b""


@pytest.mark.parametrize("coding", ["chunked ", " Chunked", "\tchunked"])
async def test_blanks_around_a_coding_are_none_of_it(served: LocalService, coding: str) -> None:
    """RFC 9112 5.1."""
    sent = chunked(served.key, BODY).replace(b"Encoding: chunked", b"Encoding:" + coding.encode(), 1) + b"\r\n"
    assert (await answer_to(served, sent)).status == 200


@pytest.mark.parametrize("host", ["", "[::1]:8000", "a.b-c_d", "127.0.0.1:", "SERVICE.test:65536", "a%20b,c"])
async def test_a_host_of_any_form_is_taken(served: LocalService, host: str) -> None:
    assert (await answer_to(served, head(f"Host: {host}"))).status == 200


@pytest.mark.parametrize("pause_seconds", [0.0, 0.3], ids=["in one piece", "later"])
async def test_a_key_in_a_trailer_counts_for_nothing(served: LocalService, pause_seconds: float) -> None:
    """Neither does a good one help, nor does a bad one hurt (RFC 9110 6.5.1: never merged)."""
    for in_head, in_trailer, status in (
        (REJECTED, served.key, 401),
        (served.key, REJECTED, 200),
        ("", served.key, 401),
    ):
        async with line(served.url) as one:
            head = chunked(in_head, BODY).replace(b"Authorization: Bearer \r\n", b"")
            if pause_seconds:
                await one.send(head)
                await asyncio.sleep(pause_seconds)
                await one.send(b"Authorization: Bearer %b\r\n\r\n" % in_trailer.encode())
            else:
                await one.send(head + b"Authorization: Bearer %b\r\n\r\n" % in_trailer.encode())
            assert (await one.answer()).status == status


async def test_trailers_that_never_end_are_given_up(served: LocalService) -> None:
    async with line(served.url) as one:
        await one.send(chunked(served.key, BODY) + b"X: y\r\n")
        answer = await one.answer()
    assert (answer.status, answer.type) == (408, "/problems/body-timeout")


async def test_the_rest_of_an_answered_body_has_its_time(served: LocalService) -> None:
    """The answer is there at once, since the key is wrong; the body then drips on."""
    async with line(served.url) as one:
        await one.send(chunked(REJECTED, BODY) + b"X: y\r\n")
        assert (await one.answer()).status == 401
        async with asyncio.timeout(2 * bounded_http.UNREAD_SECONDS):
            while not one.reader.at_eof() and one.reader.exception() is None:
                one.writer.write(b"X: y\r\n")
                await asyncio.sleep(0.5)


async def test_extensions_of_chunks_are_bounded(served: LocalService) -> None:
    head = post(PATH, served.key, transfer_encoding="chunked", content_length="")
    answer = await answer_to(served, head + b"5;x=" + b"a" * 4 * bounded_http.FRAMING_BYTES)
    assert (answer.status, answer.type) == (431, "/problems/head-too-large")


async def test_a_body_in_chunks_of_one_byte_is_read(served: LocalService) -> None:
    body = BODY + b" " * 60_000
    chunks = chunked(served.key, *(bytes([byte]) for byte in body)) + b"\r\n"
    assert len(chunks) - len(body) > 4 * bounded_http.FRAMING_BYTES
    assert (await answer_to(served, chunks)).status == 200


@pytest.mark.parametrize(
    ("broken", "slug"),
    [
        (b"zz\r\n", "bad-request"),
        (b"5;x=" + b"a" * 4 * bounded_http.FRAMING_BYTES, "head-too-large"),
        (b"0\r\n" + b"X: y\r\n" * (head_rules.FIELDS + 2) + b"\r\n", "head-too-large"),
        (b"0\r\nConnection: close\r\n\r\n", "bad-request"),
    ],
    ids=["no number", "extension", "trailers", "framing"],
)
async def test_a_batch_whose_body_breaks_later_ends_in_words(served: LocalService, broken: bytes, slug: str) -> None:
    """The status is sent by then; the line says where to go on, and the summary that the batch is not complete."""
    single = b'{"reference":"a","operation":"estimate_maintenance","body":%b}\n' % BODY
    head = post("/v1/batches", served.key, transfer_encoding="chunked", content_length="")
    head = head.replace(b"application/json", b"application/x-ndjson")
    async with line(served.url) as one:
        await one.send(head + b"%x\r\n%b\r\n" % (len(single), single))
        assert b" 200 " in await one.reader.readuntil(b"\r\n\r\n")
        await one.reader.readuntil(b"}\n")  # the first line is answered
        one.writer.write(broken)
        rest = await one.rest()
    *_, refused, summary = re.findall(rb"^\{.*\}$", rest, re.MULTILINE)
    problem = json.loads(refused)
    assert (problem["line"], problem["problem"]["type"]) == (2, f"/problems/{slug}")
    assert json.loads(summary)["summary"] | {"problems_by_status": {}} == {
        "lines": 1,
        "results": 1,
        "problems": 0,
        "problems_by_status": {},
        "is_complete": False,
    }
    assert rest.endswith(b"\r\n0\r\n\r\n"), "the answer is whole"


# Another protocol


UPGRADES = {
    "h2c, as Java's client asks": "Connection: Upgrade, HTTP2-Settings\r\nUpgrade: h2c\r\nHTTP2-Settings: AAEAAEAA",
    "websocket": "Connection: Upgrade\r\nUpgrade: websocket",
    "anything": "Connection: keep-alive, Upgrade\r\nUpgrade: x/1, y/2",
}


@pytest.mark.parametrize("fields", UPGRADES.values(), ids=UPGRADES.keys())
@pytest.mark.parametrize("form", ["length", "chunks", "byte by byte"])
async def test_an_upgrade_is_ignored_and_the_body_read(served: LocalService, fields: str, form: str) -> None:
    """RFC 9110 7.8: a server may ignore it; RFC 7540 3.2 has the request answered as HTTP/1.1 then."""
    sent = post(PATH, served.key, BODY) if form != "chunks" else chunked(served.key, BODY) + b"\r\n"
    sent = sent.replace(b"\r\nHost", b"\r\n" + fields.encode() + b"\r\nHost", 1)
    async with line(served.url) as one:
        for piece in [sent[i : i + 1] for i in range(len(sent))] if form == "byte by byte" else [sent]:
            await one.send(piece)
        assert (await one.answer()).status == 200
        await one.send(LIVE)
        assert b"live" in (await one.answer()).body


async def test_no_byte_of_a_body_is_a_request(served: LocalService) -> None:
    for fields in UPGRADES.values():
        sent = post(PATH, served.key, LIVE).replace(b"\r\nHost", b"\r\n" + fields.encode() + b"\r\nHost", 1)
        async with line(served.url) as one:
            await one.send(sent)
            answer = await one.answer()
            assert (answer.status, answer.type) == (400, "/problems/not-json")
            with pytest.raises(TimeoutError):
                await asyncio.wait_for(one.reader.readexactly(1), 0.3)


# Heads that the RFCs refuse


def head(*fields: str, method: str = "GET", path: str = "/health/live", version: str = "1.1") -> bytes:
    return "\r\n".join([f"{method} {path} HTTP/{version}", *fields, "", ""]).encode()


_HOST = "Host: service.test"
REFUSED = {
    "no host (RFC 9112 3.2)": (head(), 400, "bad-request"),
    "two hosts (RFC 9112 3.2)": (head(_HOST, "Host: other.test"), 400, "bad-request"),
    "the same host twice": (head(_HOST, _HOST), 400, "bad-request"),
    "two keys (RFC 9110 5.3)": (
        head(_HOST, "Authorization: Bearer a.b", "Authorization: Bearer c.d"),
        400,
        "bad-request",
    ),
    "two media types": (head(_HOST, "Content-Type: a/b", "Content-Type: application/json"), 400, "bad-request"),
    "gzip in chunks (RFC 9112 6.1)": (head(_HOST, "Transfer-Encoding: gzip, chunked"), 501, "transfer-coding"),
    "gzip in chunks, in two lines": (
        head(_HOST, "Transfer-Encoding: gzip", "Transfer-Encoding: chunked"),
        400,
        "bad-request",
    ),
    "a coding that only ends so": (head(_HOST, "Transfer-Encoding: xchunked"), 400, "bad-request"),
    "half an address as the host (RFC 9112 3.2)": (head("Host: [::1"), 400, "bad-request"),
    "a user and a host": (head("Host: someone@service.test"), 400, "bad-request"),
    "a path as the host": (head("Host: service.test/metrics"), 400, "bad-request"),
    "two words as the host": (head("Host: service test"), 400, "bad-request"),
    "chunks twice (RFC 9112 7.1)": (head(_HOST, "Transfer-Encoding: chunked, chunked"), 400, "bad-request"),
    "no chunks at the end (RFC 9112 6.3)": (head(_HOST, "Transfer-Encoding: gzip"), 400, "bad-request"),
    "chunks in HTTP/1.0 (RFC 9112 6.1)": (head(_HOST, "Transfer-Encoding: chunked", version="1.0"), 400, "bad-request"),
    "chunks in HTTP/1.0, and an upgrade": (
        head(_HOST, "Transfer-Encoding: chunked", "Connection: Upgrade", "Upgrade: h2c", version="1.0"),
        400,
        "bad-request",
    ),
    "HTTP/2.0, and an upgrade": (
        head(_HOST, "Connection: Upgrade", "Upgrade: h2c", version="2.0"),
        400,
        "bad-request",
    ),
    "an address that is none": (head(_HOST, path="http://secret.example:99999/"), 400, "bad-request"),
    "a fragment (RFC 9112 3.2)": (head(_HOST, path="/metrics#x"), 400, "bad-request"),
    "a tunnel": (head(_HOST, method="CONNECT", path="elsewhere.example:443"), 400, "bad-request"),
    "a path of 9 kB": (head(_HOST, path="/" + "a" * 9_000), 414, "path-too-long"),
    "a path without an end": (b"GET /" + b"a" * 100_000, 414, "path-too-long"),
    "a head without an end": (b"GET / HTTP/1.1\r\nX: " + b"a" * 100_000, 431, "head-too-large"),
    "many fields": (head(_HOST, *(f"X{i}: y" for i in range(101))), 431, "head-too-large"),
    "no HTTP at all": (b"\x16\x03\x01\x02\x00hello\r\n\r\n", 400, "bad-request"),
    "a chunk that is no number": (
        head(
            _HOST,
            "Transfer-Encoding: chunked",
            "Content-Type: application/json",
            "Authorization: Bearer KEY",
            method="POST",
            path=PATH,
        )
        + b"zz\r\n",
        400,
        "bad-request",
    ),
}


@pytest.mark.parametrize(("sent", "status", "slug"), REFUSED.values(), ids=REFUSED.keys())
async def test_a_refusal_is_a_problem_document_with_an_id(
    served: LocalService, sent: bytes, status: int, slug: str
) -> None:
    before = await problems_counted(served.url)
    answer = await answer_to(served, sent.replace(b"KEY", served.key.encode()))
    assert (answer.status, answer.type) == (status, f"/problems/{slug}")
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.headers["connection"] == "close"
    assert answer.headers[CONTRACT_HEADER.lower()]
    problem = json.loads(answer.body)
    assert UUID(answer.headers["x-request-id"]) == UUID(problem["instance"])
    assert len(answer.body) < 1_000, "what was sent is not sent back"
    counted = await problems_counted(served.url)
    code = slug.replace("-", "_").upper()
    assert counted.get(code, 0) == before.get(code, 0) + 1


async def problems_counted(url: str) -> dict[str, float]:
    async with httpx.AsyncClient(transport=httpx.AsyncHTTPTransport(), timeout=PATIENCE_SECONDS) as http:
        text = (await http.get(f"{url}/metrics")).text
    found = re.findall(r'^steelyard_problems_total\{code="(\w+)",operation="\w+"\} (\S+)$', text, re.MULTILINE)
    counted: dict[str, float] = {}
    for code, count in found:
        counted[code] = counted.get(code, 0) + float(count)
    return counted


async def test_the_id_of_a_caller_who_is_refused_is_kept(served: LocalService) -> None:
    id_ = "6f1c1f3a-43f5-4d0c-9a52-0a3f1f0f6b1e"
    answer = await answer_to(served, head(_HOST, f"X-Request-Id: {id_}", "Host: other.test"))
    assert answer.headers["x-request-id"] == id_


async def test_a_refusal_waits_for_the_answers_before_it(served: LocalService) -> None:
    async with line(served.url) as one:
        await one.send(post(PATH, served.key, BODY) + head(_HOST, "Host: other.test") + LIVE)
        assert [(await one.answer()).status, (await one.answer()).status] == [200, 400]
        assert await one.rest() == b""


async def test_an_address_that_is_none_is_no_fault_of_the_request_before_it() -> None:
    """Both are parsed before the first is answered; the log has a line, and neither the address nor a traceback."""
    wrong = head(_HOST, path="http://secret.example:99999/")
    with sqlite_url() as store_url:
        async with spawned(store_url, log_requests="true") as running:
            async with line(running.url) as one:
                await one.send(post(PATH, running.token, BODY) + wrong)
                assert [(await one.answer()).status, (await one.answer()).status] == [200, 400]
                assert await one.rest() == b""
            async with line(running.url) as one:
                await one.send(wrong)
                answer = await one.answer()
            async with asyncio.timeout(PATIENCE_SECONDS):
                while answer.headers["x-request-id"] not in running.log():
                    await asyncio.sleep(0.05)
            (told,) = (
                json.loads(each) for each in running.log().splitlines() if answer.headers["x-request-id"] in each
            )
            assert (told["status"], told["problem"]) == (400, "BAD_REQUEST")
            assert "route" not in told
            assert "secret" not in running.log()
            assert "Traceback" not in running.log()


# HTTP/1.0


async def test_a_caller_of_http_1_0_gets_neither_chunks_nor_a_wish_for_more(served: LocalService) -> None:
    """RFC 9112 6.1 and RFC 9110 10.1.1: proxies speak it still, and know neither."""
    sent = post("/v1/batches", served.key, b"{}\n" * 2, content_type="application/x-ndjson", expect="100-continue")
    async with line(served.url) as one:
        await one.send(sent.replace(b"HTTP/1.1", b"HTTP/1.0", 1))
        told, _, body = (await one.rest()).partition(b"\r\n\r\n")
    assert told.startswith(b"HTTP/1.1 200 ")
    assert b"transfer-encoding" not in told
    assert b"connection: close" in told
    assert [list(json.loads(each)) for each in body.splitlines()][-1] == ["summary"]
    assert len(body.splitlines()) == 3


async def test_an_upgrade_in_http_1_0_is_answered_as_without(served: LocalService) -> None:
    async with line(served.url) as one:
        await one.send(head("Connection: Upgrade", "Upgrade: h2c", version="1.0"))
        answer = await one.answer()
        assert (answer.status, answer.headers["connection"]) == (200, "close")
        assert await one.rest() == b""


async def test_http_1_0_needs_no_host(served: LocalService) -> None:
    """As checks of health in proxies send it (RFC 9112 3.2 asks it of HTTP/1.1)."""
    assert (await answer_to(served, head(version="1.0"))).status == 200


# One spelling of a path


@pytest.mark.parametrize(
    "path",
    ["/%6detrics", "//metrics", "/metrics%2f", "/metrics/", "/./metrics", "/v1/../metrics", "/metrics;a=b", "/Metrics"],
)
async def test_metrics_have_one_spelling(served: LocalService, path: str) -> None:
    assert (await answer_to(served, head(_HOST, path="/metrics"))).status == 200
    answer = await answer_to(served, head(_HOST, path=path))
    assert (answer.status, answer.type) == (404, "/problems/not-found")


@pytest.mark.parametrize("path", ["/v1%2fmaintenance", "/v1//maintenance", "/v1/maintenance/", "/v1/%6daintenance"])
async def test_an_operation_has_one_spelling(served: LocalService, path: str) -> None:
    assert (await answer_to(served, post(PATH, served.key, BODY))).status == 200
    answer = await answer_to(served, post(path, served.key, BODY))
    assert (answer.status, answer.type) == (404, "/problems/not-found")


# The way out


LONG = bytes(8_000_000)


@contextlib.asynccontextmanager
async def answering(body: bytes, after_seconds: float = 0.0) -> AsyncIterator[tuple[int, ServerState]]:
    """The protocol on a port, in this process, before an application that has one answer."""

    async def app(scope: Any, receive: Any, send: Any) -> None:
        await asyncio.sleep(after_seconds)
        await send({"type": "http.response.start", "status": 200, "headers": [(b"content-length", b"%d" % len(body))]})
        await send({"type": "http.response.body", "body": body})

    config, state = Config(app, http=bounded_http.BoundedHttp, lifespan="off", log_config=None), ServerState()
    config.load()
    loop = asyncio.get_running_loop()
    server = await loop.create_server(lambda: bounded_http.BoundedHttp(config, state, {}), "127.0.0.1", 0)
    try:
        yield server.sockets[0].getsockname()[1], state
    finally:
        server.close()
        for connection in list(state.connections):
            connection.transport.abort()
        await asyncio.sleep(0.05)


async def silent(port: int, count: int, kept_bytes: int = 2048) -> Line:
    """A connection that asks ``count`` times, and whose system keeps next to nothing of the answers."""
    plain = socket.socket()
    plain.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, kept_bytes)
    plain.setblocking(False)
    await asyncio.get_running_loop().sock_connect(plain, ("127.0.0.1", port))
    reader, writer = await asyncio.open_connection(sock=plain, limit=1024)
    writer.write(LIVE * count)
    return Line(reader, writer)


@pytest.mark.parametrize("is_answered", [False, True], ids=["at once", "after an answer"])
async def test_empty_lines_hold_no_connection(monkeypatch: pytest.MonkeyPatch, is_answered: bool) -> None:
    """They may stand before a head (RFC 9112 2.2), whose time they are part of."""
    monkeypatch.setattr(bounded_http, "HEAD_SECONDS", 0.3)
    async with answering(b"{}") as (port, _), line(f"http://127.0.0.1:{port}") as one:
        if is_answered:
            await one.send(LIVE)
            assert (await one.answer()).status == 200
        await one.send(b"\r\n")
        await one.send(LIVE)
        assert (await one.answer()).status == 200
        await one.send(b"\r\n")
        assert await one.rest() == b""


async def test_empty_lines_are_part_of_a_heads_length() -> None:
    async with answering(b"{}") as (port, _), line(f"http://127.0.0.1:{port}") as one:
        one.writer.write(b"\r\n" * bounded_http.HEAD_BYTES)
        with contextlib.suppress(ConnectionError):
            assert await one.rest()


async def test_an_empty_line_behind_a_body_ends_no_answer_under_way(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bounded_http, "HEAD_SECONDS", 0.1)
    async with answering(b"{}", after_seconds=0.4) as (port, _), line(f"http://127.0.0.1:{port}") as one:
        await one.send(LIVE)
        await asyncio.sleep(0.05)
        await one.send(b"\r\n")
        assert (await one.answer()).status == 200


@pytest.mark.parametrize("length", [len(LONG), 100_000], ids=["one long", "many short"])
async def test_answers_that_nobody_takes_are_not_kept(monkeypatch: pytest.MonkeyPatch, length: int) -> None:
    """The system keeps some of them; of the rest the process keeps little, and not for long."""
    monkeypatch.setattr(bounded_http, "LOOK_SECONDS", 0.3)
    async with answering(LONG[:length]) as (port, state):
        one = await silent(port, len(LONG) // length)
        async with asyncio.timeout(PATIENCE_SECONDS):
            while not state.connections:
                await asyncio.sleep(0.01)
            kept = []
            while state.connections:
                kept += [connection.transport.get_write_buffer_size() for connection in state.connections]
                await asyncio.sleep(0.01)
        assert 0 < max(kept) < 300_000
        one.close()


async def test_a_caller_who_takes_their_time_is_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bounded_http, "LOOK_SECONDS", 0.1)
    async with answering(LONG) as (port, _):
        one = await silent(port, 1, 65_536)
        async with asyncio.timeout(PATIENCE_SECONDS):
            await one.reader.readuntil(b"\r\n\r\n")
            left, started = len(LONG), time.monotonic()
            while left:
                piece = await one.reader.read(min(left, 65_536))
                assert piece, left
                left -= len(piece)
                await asyncio.sleep(0.005)
        assert time.monotonic() - started > 0.5, "slow enough to be looked at several times"
        one.close()


class _Connection(asyncio.Transport):
    """Notes what is done to it."""

    def __init__(self) -> None:
        self.done: list[bytes | str] = []

    def write(self, data: bytes | bytearray | memoryview) -> None:
        self.done.append(bytes(data))

    def close(self) -> None:
        self.done.append("closed")


@pytest.mark.parametrize("pieces", [[b"{}"], [b"a", b"b"], [b""]])
@pytest.mark.parametrize("keep_alive", [True, False])
def test_head_and_beginning_of_an_answer_leave_in_one_write(pieces: list[bytes], keep_alive: bool) -> None:
    async def app(scope: Any, receive: Any, send: Any) -> None:
        length = b"%d" % sum(map(len, pieces))
        await send({"type": "http.response.start", "status": 200, "headers": [(b"content-length", length)]})
        for piece in pieces[:-1]:
            await send({"type": "http.response.body", "body": piece, "more_body": True})
        await send({"type": "http.response.body", "body": pieces[-1]})

    async def answered() -> list[bytes | str]:
        connection = _Connection()
        cycle = bounded_http.Cycle(
            scope={"type": "http", "method": "GET", "http_version": "1.1"},  # type: ignore[arg-type]
            transport=connection,
            flow=FlowControl(connection),
            logger=logging.getLogger("test"),
            access_logger=logging.getLogger("test"),
            access_log=False,
            default_headers=[],
            message_event=asyncio.Event(),
            expect_100_continue=False,
            keep_alive=keep_alive,
            on_response=lambda: None,
        )
        await cycle.run_asgi(app)
        return connection.done

    first, *others = asyncio.run(answered())
    assert isinstance(first, bytes)
    assert first.startswith(b"HTTP/1.1 200 OK\r\n")
    assert first.endswith(b"\r\n\r\n" + pieces[0])
    assert others == [*pieces[1:], *([] if keep_alive else ["closed"])]
