"""HTTP/1.1 by hand over loopback: for what no well-behaved client would send."""

import asyncio
import json
import re
import resource
from collections import Counter
from collections.abc import AsyncIterator, Sequence
from contextlib import AsyncExitStack, asynccontextmanager
from typing import NamedTuple
from urllib.parse import urlsplit

import httpx

PATIENCE_SECONDS = 60.0  # for what must come, however loaded the machine is
_OPENED_AT_ONCE = 500


class Raw(NamedTuple):
    """An answer as it came: status, headers in lower case, body."""

    status: int
    headers: dict[str, str]
    body: bytes

    @property
    def type(self) -> str:
        """The problem's type."""
        return str(json.loads(self.body)["type"])


class Line:
    """One connection."""

    def __init__(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        self.reader, self.writer = reader, writer

    async def send(self, data: bytes) -> None:
        """Write, and wait until it is written."""
        self.writer.write(data)
        await self.writer.drain()

    async def answer(self) -> Raw:
        """Read one answer that tells its length; fails when the connection ends before."""
        async with asyncio.timeout(PATIENCE_SECONDS):
            head = (await self.reader.readuntil(b"\r\n\r\n")).decode("latin-1")
            first, *rest = head.rstrip().split("\r\n")
            headers = {name.lower(): value for name, value in (line.split(": ", 1) for line in rest)}
            return Raw(int(first.split()[1]), headers, await self.reader.readexactly(int(headers["content-length"])))

    async def rest(self) -> bytes:
        """Everything until the server ends the connection."""
        async with asyncio.timeout(PATIENCE_SECONDS):
            return await self.reader.read()

    def close(self) -> None:
        """Break the connection off."""
        self.writer.transport.abort()


def post(path: str, key: str, body: bytes = b"", **headers: str) -> bytes:
    """A request as bytes; with ``content_length`` among the headers the body may differ from it."""
    fields = {
        "Host": "service.test",
        "Authorization": f"Bearer {key}",
        "Content-Type": "application/json",
        "Content-Length": str(len(body)),
    }
    fields |= {name.replace("_", "-").title(): value for name, value in headers.items()}
    lines = [f"POST {path} HTTP/1.1", *(f"{name}: {value}" for name, value in fields.items() if value)]
    return "\r\n".join(lines).encode("latin-1") + b"\r\n\r\n" + body


@asynccontextmanager
async def lines(url: str, count: int) -> AsyncIterator[list[Line]]:
    """``count`` connections at once, broken off at the end."""
    raise_file_limit(count)
    host, port = urlsplit(url).hostname, urlsplit(url).port
    at_once = asyncio.Semaphore(_OPENED_AT_ONCE)

    async def connect() -> Line:
        async with at_once, asyncio.timeout(PATIENCE_SECONDS):
            return Line(*await asyncio.open_connection(host, port))

    async with AsyncExitStack() as stack:
        opened = await asyncio.gather(*(connect() for _ in range(count)))
        for line in opened:
            stack.callback(line.close)
        yield opened


@asynccontextmanager
async def line(url: str) -> AsyncIterator[Line]:
    """One connection."""
    async with lines(url, 1) as (opened,):
        yield opened


def raise_file_limit(count: int) -> None:
    """Let this process have ``count`` connections beside what it has open."""
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    if soft < count + 1000:
        resource.setrlimit(resource.RLIMIT_NOFILE, (min(count + 1000, hard), hard))


async def is_well(url: str) -> bool:
    """Whether the service answers another caller."""
    async with httpx.AsyncClient(transport=httpx.AsyncHTTPTransport(), timeout=PATIENCE_SECONDS) as http:
        return (await http.get(f"{url}/health/ready")).status_code == 200


async def resident_bytes(url: str) -> float:
    """Memory of the service's process, as its metrics tell it."""
    async with httpx.AsyncClient(transport=httpx.AsyncHTTPTransport(), timeout=PATIENCE_SECONDS) as http:
        text = (await http.get(f"{url}/metrics")).text
    found = re.search(r"^process_resident_memory_bytes (\S+)$", text, re.MULTILINE)
    assert found, text[:500]
    return float(found[1])


async def send_many(url: str, requests: Sequence[bytes], count: int, connections: int = 16) -> Counter[int]:
    """Send ``count`` requests, taken in turn from ``requests``, over a few connections. Returns the statuses."""
    statuses: Counter[int] = Counter()

    async def work(one: Line, numbers: range) -> None:
        for number in numbers:
            await one.send(requests[number % len(requests)])
            statuses[(await one.answer()).status] += 1

    async with lines(url, connections) as opened:
        await asyncio.gather(*(work(one, range(i, count, connections)) for i, one in enumerate(opened)))
    return statuses
