"""Callers who are slow, many, or break HTTP, against the service in a process of its own, over loopback."""

import asyncio
import gzip
import json
import zlib
from collections.abc import Iterator

import pytest
from examples.local_service import LocalService, local_service
from msgspec import to_builtins
from raw_http import PATIENCE_SECONDS, is_well, line, lines, post, resident_bytes, send_many
from steelyard.cli import bounded_http
from steelyard.http.app import OPERATIONS

MAINTENANCE = next(o for o in OPERATIONS if o.operation_id == "estimate_maintenance")
PATH = MAINTENANCE.path
BODY = json.dumps(to_builtins(MAINTENANCE.request_examples["profile_only"])).encode()
BODY_SECONDS = 2.0
LIMIT = 1_048_576  # the default of `body_limit_bytes`
ONES = b'{"profile": ' + b"1" * (LIMIT - 13) + b"}"


@pytest.fixture(scope="module")
def served() -> Iterator[LocalService]:
    """The service, which waits less long for bodies than it would otherwise."""
    with local_service(body_seconds=str(BODY_SECONDS), metrics="true", metrics_public="true") as service:
        yield service


# Slow callers


async def test_slow_headers_keep_nobody_else_waiting(served: LocalService) -> None:
    """More connections than servers take by default, each with headers that never end (the Slowloris attack)."""
    async with lines(served.url, 1_200) as slow:
        for one in slow:
            one.writer.write(b"GET /health/live HTTP/1.1\r\nHost: service.test\r\nX-Slow: ")
        async with line(served.url) as other:
            await other.send(post(PATH, served.key, BODY))
            assert (await other.answer()).status == 200
        slow[0].writer.write(b"y\r\n\r\n")
        assert (await slow[0].answer()).status == 200  # slow, and right after all


async def test_slow_bodies_keep_nobody_else_waiting_and_are_given_up(served: LocalService) -> None:
    async with lines(served.url, 300) as slow:
        for one in slow:
            one.writer.write(post(PATH, served.key, b"{", content_length="1000"))
        async with line(served.url) as other:
            await other.send(post(PATH, served.key, BODY))
            assert (await other.answer()).status == 200
        answers = await asyncio.gather(*(one.answer() for one in slow))
    assert {(answer.status, answer.type) for answer in answers} == {(408, "/problems/body-timeout")}


async def test_callers_who_leave_are_forgotten(served: LocalService) -> None:
    for sent in (b"", b"POST /v1", post(PATH, served.key, b"{", content_length="1000"), post(PATH, served.key, BODY)):
        async with lines(served.url, 100) as gone:
            for one in gone:
                await one.send(sent)
    assert await is_well(served.url)


# Many callers


async def test_a_thousand_connections_at_once(served: LocalService) -> None:
    async with lines(served.url, 1_000) as crowd:
        for one in crowd:
            one.writer.write(post(PATH, served.key, BODY))
        answers = await asyncio.gather(*(one.answer() for one in crowd))
    assert {answer.status for answer in answers} == {200}
    assert len({answer.body for answer in answers}) == 1
    assert len({answer.headers["x-request-id"] for answer in answers}) == len(answers)


# Huge and deeply nested bodies

HUGE = {
    "a number of a million digits": (ONES, 400),
    "a string of a megabyte": (b'{"profile": "' + b"x" * (LIMIT - 15) + b'"}', 400),
    "an escape for every character": (b'{"profile": "' + b"\\u0041" * 174_000 + b'"}', 400),
    "arrays in arrays": (b'{"profile": ' + b"[" * (LIMIT - 12), 400),
    "objects in objects": (b'{"profile":' * 95_000, 400),
    "arrays in arrays, closed": (b'{"x": ' + b"[" * 500_000 + b"]" * 500_000 + b"}", 400),
    "deep where floats stand for integers": (
        b'{"profile": {"age_years": 31.0}, "log": ' + b"[" * 500_000 + b"]" * 500_000 + b"}",
        400,
    ),
    "a hundred thousand names": (
        b"{" + b",".join(b'"n%d":1' % i for i in range(80_000)) + b"}",
        400,
    ),
    "the same name again and again": (b"{" + b",".join([b'"profile":1'] * 80_000) + b"}", 400),
    "more entries than a log may have": (b'{"log": {"weights": [' + b"{}," * 340_000 + b"{}]}}", 400),
    "blanks": (b" " * LIMIT, 400),
    "a byte over the limit": (b" " * (LIMIT + 1), 413),
    "as long as a length can say": (b"", 413),
}


@pytest.mark.parametrize(("body", "status"), HUGE.values(), ids=HUGE.keys())
async def test_huge_bodies_are_refused_in_words(served: LocalService, body: bytes, status: int) -> None:
    announced = str(len(body)) if body else str(2**62)
    async with line(served.url) as one:
        one.writer.write(post(PATH, served.key, body, content_length=announced))
        answer = await one.answer()
    assert answer.status == status
    assert answer.headers["content-type"] == "application/problem+json"
    assert len(answer.body) < 5_000  # what was sent is not sent back
    assert await is_well(served.url)


async def test_a_body_without_an_end_is_cut_off(served: LocalService) -> None:
    """In chunks, so that no length announces it."""
    async with line(served.url) as one:
        one.writer.write(post(PATH, served.key, transfer_encoding="chunked", content_length=""))
        chunk = b"10000\r\n" + b" " * 0x10000 + b"\r\n"
        for _ in range(17):
            one.writer.write(chunk)
        answer = await one.answer()
    assert (answer.status, answer.type) == (413, "/problems/body-too-large")


def deflated(bomb: bytes) -> bytes:
    return zlib.compress(bomb, 9)


UNSUPPORTED = "unsupported-media-type"
BOMBS = {
    "gzip": ("gzip", gzip.compress(bytes(50_000_000), 9), 413, "body-too-large"),
    "gzip in gzip": ("gzip, gzip", gzip.compress(gzip.compress(bytes(50_000_000), 9), 9), 415, UNSUPPORTED),
    "deflate": ("deflate", deflated(bytes(50_000_000)), 415, UNSUPPORTED),
    "an encoding that nobody knows": ("br, zstd", b"\x00" * 100, 415, UNSUPPORTED),
}


@pytest.mark.parametrize(("encoding", "body", "status", "slug"), BOMBS.values(), ids=BOMBS.keys())
async def test_a_small_body_does_not_become_a_large_one(
    served: LocalService, encoding: str, body: bytes, status: int, slug: str
) -> None:
    before = await resident_bytes(served.url)
    async with line(served.url) as one:
        await one.send(post(PATH, served.key, body, content_encoding=encoding))
        answer = await one.answer()
    assert (answer.status, answer.type) == (status, f"/problems/{slug}")
    assert await resident_bytes(served.url) - before < 10_000_000  # a fifth of what is inside


# Broken HTTP

BROKEN = {
    "headers without an end": (b"GET /health/live HTTP/1.1\r\nHost: x\r\nX: " + b"a" * 600_000 + b"\r\n\r\n", {431}),
    "five hundred headers": (
        b"GET /health/live HTTP/1.1\r\nHost: x\r\n" + b"".join(b"X%d: y\r\n" % i for i in range(500)) + b"\r\n",
        {431},
    ),
    "a path of 100 kB": (b"GET /" + b"a" * 100_000 + b" HTTP/1.1\r\nHost: x\r\n\r\n", {414}),
    "not HTTP": (b"\x16\x03\x01\x02\x00hello\r\n\r\n", {400}),
    "no version": (b"GET /health/live\r\n\r\n", {400}),
    "two lengths": (b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 4\r\nContent-Length: 5\r\n\r\nabcd", {400}),
    "a negative length": (b"POST / HTTP/1.1\r\nHost: x\r\nContent-Length: -4\r\n\r\nabcd", {400}),
    "a header folded over lines": (b"GET / HTTP/1.1\r\nHost: x\r\nX: a\r\n b\r\n\r\n", {400, 404}),
    "a blank before the colon": (b"GET / HTTP/1.1\r\nHost: x\r\nX : a\r\n\r\n", {400}),
    "a chunk that is no number": (
        b"POST / HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n",
        {400, 404},
    ),
    "an odd transfer encoding": (b"POST / HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: gzip\r\n\r\n", {400, 404, 501}),
    "an asterisk": (b"OPTIONS * HTTP/1.1\r\nHost: x\r\n\r\n", {404}),
    "another's address": (b"GET http://elsewhere.example/v1/methods HTTP/1.1\r\nHost: x\r\n\r\n", {400, 401, 404}),
    "a tunnel": (b"CONNECT elsewhere.example:443 HTTP/1.1\r\nHost: x\r\n\r\n", {400, 404, 405}),
}


@pytest.mark.parametrize(("sent", "statuses"), BROKEN.values(), ids=BROKEN.keys())
async def test_broken_http_is_refused(served: LocalService, sent: bytes, statuses: set[int]) -> None:
    async with line(served.url) as one:
        one.writer.write(sent)
        head = await asyncio.wait_for(one.reader.readline(), PATIENCE_SECONDS)
    assert int(head.split()[1]) in statuses, head
    assert await is_well(served.url)


async def test_no_second_request_is_smuggled_behind_two_lengths(served: LocalService) -> None:
    """RFC 9112 6.3: a message with both a length and chunks must not leave a rest that is read as a request."""
    async with line(served.url) as one:
        await one.send(
            b"POST /v1/maintenance HTTP/1.1\r\nHost: x\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n"
            b"0\r\n\r\nGET /health/live HTTP/1.1\r\nHost: x\r\n\r\n"
        )
        told = await one.rest()
    assert told.count(b"HTTP/1.1 ") == 1
    assert b'"live"' not in told


async def test_requests_in_a_row_are_answered_in_a_row(served: LocalService) -> None:
    ids = [f"00000000-0000-4000-8000-{i:012d}" for i in range(20)]
    async with line(served.url) as one:
        await one.send(b"".join(post(PATH, served.key, BODY, x_request_id=id_) for id_ in ids))
        answers = [await one.answer() for _ in ids]
    assert [answer.headers["x-request-id"] for answer in answers] == ids


async def test_what_is_left_of_a_refused_body_is_not_read_for_ever(served: LocalService) -> None:
    """An answer is given to the head already; the caller sends on all the same."""
    async with line(served.url) as one:
        one.writer.write(post(PATH, "none.such", content_length=str(2**40)))
        assert (await one.answer()).status == 401
        try:
            for _ in range(4 * bounded_http.UNREAD_BYTES // 65_536):
                one.writer.write(bytes(65_536))
                await asyncio.wait_for(one.writer.drain(), PATIENCE_SECONDS)
                await asyncio.sleep(0)
            left = await asyncio.wait_for(one.reader.read(), PATIENCE_SECONDS)
        except ConnectionError:
            left = b""
    assert left == b""


async def test_a_second_head_is_bounded_as_the_first(served: LocalService) -> None:
    async with line(served.url) as one:
        await one.send(b"GET /health/live HTTP/1.1\r\nHost: x\r\n\r\n")
        assert (await one.answer()).status == 200
        one.writer.write(b"GET /health/live HTTP/1.1\r\nX: " + b"a" * 2 * bounded_http.HEAD_BYTES)
        answer = await one.answer()
    assert answer.status == 431
    assert answer.headers["content-type"] == "application/problem+json"


# Memory


@pytest.mark.long
async def test_memory_is_steady_over_twenty_thousand_requests(served: LocalService) -> None:
    """After 5,000 requests to warm up: what 15,000 more leave behind is less than 300 bytes each.

    A leak of the smallest answer (about 2 kB) or even of a request's log record would be more.
    """
    warm, further = 5_000, 15_000
    requests = [post(PATH, served.key, body) for body in (BODY, BODY, BODY, BODY[:-1])]  # refusals as well
    await send_many(served.url, requests, warm)
    before = await resident_bytes(served.url)
    assert await send_many(served.url, requests, further) == {200: further * 3 / 4, 400: further / 4}
    after = await resident_bytes(served.url)
    assert after - before < 300 * further, f"{before / 1e6:.1f} MB before, {after / 1e6:.1f} MB after"


@pytest.mark.long
async def test_headers_that_never_end_are_given_up(served: LocalService) -> None:
    async with line(served.url) as one:
        await one.send(b"GET /health/live HTTP/1.1\r\nX: ")
        told = await one.rest()
    assert b"200" not in told
