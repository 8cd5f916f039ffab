"""The service as an operator runs it: processes of its own, on loopback, with load on it while something breaks."""

import asyncio
import contextlib
import os
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any, NamedTuple

import httpx
import msgspec
from servers import free_port
from steelyard.http.endpoints.maintenance import estimate_maintenance
from steelyard.store.keys import Scope
from steelyard.store.store import Store

ROOT = Path(__file__).resolve().parents[2]
START_SECONDS = 60.0
HANG_SECONDS = 20.0  # an answer that takes longer counts as none
CONNECTIONS = 6

BODY = msgspec.json.encode(next(iter(estimate_maintenance.request_examples.values())))


class Served:
    """A running service. ``token`` is a key that the service has seen, ``unseen_token`` one that it has not."""

    def __init__(
        self, process: subprocess.Popen[bytes], port: int, store_url: str, tokens: list[str], log: Path
    ) -> None:
        self.process = process
        self._log = log
        self.port = port
        self.url = f"http://127.0.0.1:{port}"
        self.store_url = store_url
        self.token, self.unseen_token = tokens

    def workers(self) -> set[int]:
        """The process ids of the workers."""
        pid = self.process.pid
        return set(map(int, Path(f"/proc/{pid}/task/{pid}/children").read_text().split()))

    def log(self) -> str:
        """What it wrote so far."""
        return self._log.read_text()

    def terminate(self) -> None:
        """Ask it to stop."""
        self.process.send_signal(signal.SIGTERM)

    async def ended(self) -> int:
        """Wait for its end; returns the exit code."""
        return await asyncio.to_thread(self.process.wait, START_SECONDS)

    async def ledger(self) -> int:
        """How many requests the store has counted."""
        store = Store(self.store_url, timeout_seconds=HANG_SECONDS)
        try:
            return sum(count.requests for count in (await store.usage()).values())
        finally:
            await store.close()

    async def ask(self, token: str | None = None, path: str = estimate_maintenance.path) -> httpx.Response:
        """One request on a connection of its own."""
        async with client() as http:
            if path.startswith("/health"):
                return await http.get(self.url + path)
            return await http.post(self.url + path, content=BODY, headers=headers(token or self.token))


def headers(token: str) -> dict[str, str]:
    """What a request carries."""
    return {"Authorization": f"Bearer {token}", "Content-Type": "application/json"}


def client(address: str | None = None) -> httpx.AsyncClient:
    """A client that goes through no proxy, and loads no certificates, which takes longer than a request."""
    transport = httpx.AsyncHTTPTransport(verify=False, local_address=address)
    return httpx.AsyncClient(transport=transport, timeout=HANG_SECONDS)


@asynccontextmanager
async def served(
    store_url: str, *, workers: int = 1, waits_until: str = "ready", **settings: Any
) -> AsyncIterator[Served]:
    """Start the service, and end it whatever happens. One that is to be ``live`` alone gets no keys."""
    tokens = ["", ""]
    if waits_until == "ready":
        store = Store(store_url, timeout_seconds=HANG_SECONDS)
        await store.migrate()
        tokens = [(await store.create_key("Quarry Lane Gym", list(Scope)))[1] for _ in range(2)]
        await store.close()
    port = free_port()
    environment = {name: value for name, value in os.environ.items() if not name.startswith("STEELYARD_")}
    chosen = {"database_url": store_url, "log_requests": "false", "rate_limit_requests": 0} | settings
    environment |= {f"STEELYARD_{name.upper()}": str(value) for name, value in chosen.items()}
    environment["PYTHONPATH"] = str(ROOT / "service")
    with tempfile.TemporaryDirectory(prefix="steelyard-chaos-") as directory:
        log = Path(directory, "log")
        with log.open("wb") as output:
            process = subprocess.Popen(
                [sys.executable, "-m", "steelyard", "serve", "--port", str(port), "--workers", str(workers)],
                cwd=directory,
                env=environment,
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=output,
                start_new_session=True,
            )
        service = Served(process, port, store_url, tokens, log)
        try:
            await _until_ready(service, workers, log, f"/health/{waits_until}")
            yield service
        finally:
            with contextlib.suppress(ProcessLookupError):
                os.killpg(process.pid, signal.SIGKILL)
            process.wait()


async def _until_ready(service: Served, workers: int, log: Path, path: str) -> None:
    deadline = time.monotonic() + START_SECONDS
    while time.monotonic() < deadline:
        assert service.process.poll() is None, log.read_text()
        if len(service.workers()) == workers:
            with contextlib.suppress(httpx.HTTPError):
                if (await service.ask(path=path)).is_success:
                    return
        await asyncio.sleep(0.05)
    raise AssertionError(f"the service did not become ready:\n{log.read_text()}")


class Answered(NamedTuple):
    """One request of a load: when its answer was there, how long it took, its status (0 for none)."""

    at: float
    seconds: float
    status: int
    is_degraded: bool


class Load:
    """Requests over a few connections for as long as the load lasts."""

    def __init__(self) -> None:
        self.answered: list[Answered] = []

    def statuses(self, since: float = 0.0, until: float = float("inf")) -> dict[int, int]:
        """How often each status was seen in a span; 0 is a connection that broke."""
        return dict(sorted(Counter(each.status for each in self.answered if since <= each.at <= until).items()))

    def count(self, since: float = 0.0, until: float = float("inf")) -> int:
        """How many requests were answered with 200 in a span."""
        return sum(each.status == 200 and since <= each.at <= until for each in self.answered)

    def longest(self) -> float:
        """How long the slowest answer took, in seconds."""
        return max(each.seconds for each in self.answered)


@asynccontextmanager
async def load(service: Served, connections: int = CONNECTIONS) -> AsyncIterator[Load]:
    """Load on the service within the block."""
    running = Load()
    stop = asyncio.Event()

    async def one() -> None:
        async with client() as http:
            while not stop.is_set():
                started = time.monotonic()
                status, is_degraded = 0, False
                try:
                    answer = await http.post(
                        service.url + estimate_maintenance.path, content=BODY, headers=headers(service.token)
                    )
                    status, is_degraded = answer.status_code, "steelyard-degraded" in answer.headers
                except httpx.HTTPError:
                    await asyncio.sleep(0.02)
                ended = time.monotonic()
                running.answered.append(Answered(ended, ended - started, status, is_degraded))

    tasks = [asyncio.create_task(one()) for _ in range(connections)]
    try:
        yield running
    finally:
        stop.set()
        await asyncio.gather(*tasks)


async def migrated(store_url: str) -> None:
    """See that the tables are there."""
    store = Store(store_url, timeout_seconds=HANG_SECONDS)
    await store.migrate()
    await store.close()


@contextlib.contextmanager
def sqlite_url() -> Iterator[str]:
    """A fresh SQLite database."""
    with tempfile.TemporaryDirectory(prefix="steelyard-store-") as directory:
        yield f"sqlite+aiosqlite:///{directory}/operator.sqlite3"
