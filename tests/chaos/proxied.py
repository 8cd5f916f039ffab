"""The service as it is shipped: two replicas behind the reverse proxy of ``docker/haproxy.cfg``, on loopback."""

import asyncio
import contextlib
import re
import shutil
import subprocess
import tempfile
import time
from collections import Counter
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from statistics import median

import httpx
from servers import Server, free_port, missing

from .scenarios import Row, row_of
from .served import HANG_SECONDS, ROOT, Served, client, headers, served
from .wire import exchange, message

CONFIGURATION = ROOT / "docker" / "haproxy.cfg"
_START_SECONDS = 10.0
_TURNS = 5
ONLY_SHED = "nothing but 200 and 503"


def local_configuration(port: int, replicas: list[int]) -> str:
    """The shipped configuration, with loopback in place of the containers' names. Nothing else is changed."""
    text = CONFIGURATION.read_text()
    text = re.sub(r"^resolvers containers\n(?:    .*\n)+", "", text, flags=re.MULTILINE)
    text = text.replace("bind :8080", f"bind 127.0.0.1:{port}").replace(" init-addr none resolvers containers", "")
    servers = "\n".join(f"    server replica{number} 127.0.0.1:{each}" for number, each in enumerate(replicas, 1))
    text, changed = re.subn(r"^    server-template replica .*$", servers, text, flags=re.MULTILINE)
    assert changed == 2
    return text


class Proxied:
    """The proxy and what is behind it."""

    def __init__(self, port: int, replicas: list[Served]) -> None:
        self.port = port
        self.url = f"http://127.0.0.1:{port}"
        self.replicas = replicas
        self.token = replicas[0].token


@asynccontextmanager
async def proxied(store_url: str, **settings: object) -> AsyncIterator[Proxied]:
    """Two replicas on one store, and the proxy before them."""
    program = shutil.which("haproxy")
    if program is None:
        missing("haproxy")
    async with served(store_url, **settings) as one, served(store_url, **settings) as other:
        port = free_port()
        with tempfile.TemporaryDirectory(prefix="steelyard-proxy-") as directory:
            path = Path(directory, "haproxy.cfg")
            path.write_text(local_configuration(port, [one.port, other.port]))
            process = subprocess.Popen(
                [program or "haproxy", "-db", "-f", str(path)],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
            )
            try:
                service = Proxied(port, [one, other])
                await _until_ready(service)
                yield service
            finally:
                process.kill()
                process.wait()


async def _until_ready(service: Proxied) -> None:
    deadline = time.monotonic() + _START_SECONDS
    while True:
        with contextlib.suppress(httpx.HTTPError):
            async with client() as http:
                if (await http.get(f"{service.url}/health/ready")).status_code == 200:
                    return
        assert time.monotonic() < deadline, "the proxy did not start"
        await asyncio.sleep(0.05)


async def load_through_the_proxy(store_url: str, *, requests: int = 10_000, connections: int = 256) -> Row:
    """A crowd of connections, against the rate that a few reach: by turns, since a machine's pace changes."""
    few: list[float] = []
    many: list[float] = []
    told: Counter[int] = Counter()
    took: list[float] = []
    async with proxied(store_url) as service:
        await _spread(service, requests // _TURNS, 16)  # to warm up
        for _ in range(_TURNS):
            seconds, *_ = await _spread(service, requests // _TURNS, 16)
            few.append(requests // _TURNS / seconds)
            seconds, answers, waited = await _spread(service, requests // _TURNS, connections)
            many.append(answers[200] / seconds)
            told += answers
            took += waited
    share = median(crowd / best for crowd, best in zip(many, few, strict=True))
    p99 = sorted(took)[int(0.99 * len(took))]
    return row_of(
        f"{requests:,} requests over {connections} connections through the shipped proxy, two replicas",
        "At least 90 % of the best rate (of 16 connections) is answered with 200, and only what is shed with 503.",
        f"{dict(told)}; {share:.0%} of the best rate (median of {_TURNS} turns); p99 {p99 * 1000:.0f} ms.",
        {"90 % of the best rate": share >= 0.9, ONLY_SHED: set(told) <= {200, 503}},
    )


async def _spread(service: Proxied, requests: int, connections: int) -> tuple[float, Counter[int], list[float]]:
    """Requests over connections that are open before the first is sent: seconds, statuses, how long each took."""
    sent = message(service.token)
    told: Counter[int] = Counter()
    took: list[float] = []

    async def one(reader: asyncio.StreamReader, writer: asyncio.StreamWriter, share: int) -> None:
        for _ in range(share):
            started = time.monotonic()
            told[await exchange(reader, writer, sent)] += 1
            took.append(time.monotonic() - started)

    streams = [await asyncio.open_connection("127.0.0.1", service.port) for _ in range(connections)]
    shares = [requests // connections + (index < requests % connections) for index in range(connections)]
    started = time.monotonic()
    await asyncio.gather(*(one(*stream, share) for stream, share in zip(streams, shares, strict=True)))
    seconds = time.monotonic() - started
    for _, writer in streams:
        writer.close()
    return seconds, told, took


async def guesses_through_the_proxy(store_url: str, *, guesses: int = 80) -> Row:
    """An address sends keys that are not accepted; another one sends a good key. And what the proxy adds to neither."""
    body = message("").partition(b"\r\n\r\n")[2]
    path = "/v1/maintenance"
    id_ = "6f1c1f3a-43f5-4d0c-9a52-0a3f1f0f6b1e"
    async with proxied(store_url) as service, client() as http, client("127.0.0.2") as elsewhere:
        good = headers(service.token)
        known = await http.post(service.url + path, content=body, headers=good | {"X-Request-Id": id_})
        hidden = await http.get(f"{service.url}/metrics")
        forged = await http.get(f"{service.url}/metrics", headers={"X-Request-Id": '","code":"FORGED'})
        told: Counter[int] = Counter()
        for number in range(guesses):
            refused = await http.post(service.url + path, content=body, headers=headers(f"guess{number}.x"))
            told[refused.status_code] += 1
        beside = await elsewhere.post(service.url + path, content=body, headers=good)
        held_at = time.monotonic()
        while (await http.post(service.url + path, content=body, headers=good)).status_code != 200:
            assert time.monotonic() - held_at < HANG_SECONDS, "the address is held back for good"
            await asyncio.sleep(0.2)
        seconds = time.monotonic() - held_at
    return row_of(
        f"{guesses} keys that are not accepted, from one address, through the shipped proxy",
        "From fifty in ten seconds on the address gets a 429 with `Retry-After`, as a problem document, for some "
        "seconds; another address is served. A request keeps the id that its caller gave it, and metrics are hidden.",
        f"{dict(told)}; another address: {beside.status_code}; the first is served again after {seconds:.0f} s; "
        f"metrics: {hidden.status_code}.",
        {
            "held back": set(told) == {401, 429} and 50 <= told[401] <= 52,
            "the refusal is a problem": refused.json()["type"] == "/problems/too-many-requests"
            and refused.headers["content-type"] == "application/problem+json"
            and int(refused.headers["retry-after"]) > 0,
            "others are served": beside.status_code == 200,
            "the caller's id is kept": known.status_code == 200 and known.headers["x-request-id"] == id_,
            "an odd id forges nothing": forged.json()["code"] == "NOT_FOUND"
            and forged.headers["x-request-id"] in forged.json()["instance"],
            "metrics are hidden": (hidden.status_code, hidden.json()["type"]) == (404, "/problems/not-found"),
        },
    )


async def grace_behind_the_proxy(server: Server, store_url: str, *, grace_seconds: float = 6.0) -> Row:
    """The database is gone: what callers with known keys see through the proxy."""
    body = message("").partition(b"\r\n\r\n")[2]
    async with (
        proxied(
            store_url, key_cache_seconds=0.5, key_grace_seconds=grace_seconds, store_timeout_seconds=0.5
        ) as service,
        client() as http,
    ):

        async def ask() -> httpx.Response:
            return await http.post(f"{service.url}/v1/maintenance", content=body, headers=headers(service.token))

        for _ in range(20):  # until both replicas have seen the key
            assert (await ask()).status_code == 200
        server.stop()
        gone_at = time.monotonic()
        try:
            within: Counter[int] = Counter()
            while time.monotonic() - gone_at < grace_seconds - 1.0:
                within[(await ask()).status_code] += 1
                await asyncio.sleep(0.02)
            while (after := await ask()).status_code == 200 and time.monotonic() - gone_at < HANG_SECONDS:
                await asyncio.sleep(0.05)
            await asyncio.sleep(8.0)  # for the checks to take both replicas out
            out = await ask()
        finally:
            server.start()
    return row_of(
        "The database is killed behind two replicas and the shipped proxy",
        f"A key verified before works through the proxy for its {grace_seconds:g} s (`KEY_GRACE_SECONDS`); then the "
        "answer is a problem document with `Retry-After`, the proxy's own too.",
        f"Within that time {dict(within)}; then {after.status_code}; with both replicas out {out.status_code} "
        f"`{out.json()['type']}`.",
        {
            "the grace holds": set(within) == {200},
            "then 503 with Retry-After": after.status_code == 503 and int(after.headers["retry-after"]) > 0,
            "the proxy's page is a problem": out.headers["content-type"] == "application/problem+json"
            and out.status_code == 503
            and int(out.headers["retry-after"]) > 0
            and bool(out.headers["x-request-id"]),
        },
    )
