"""``make load``: a hundred thousand requests, ten thousand connections at once, and a crowd through the proxy.

On loopback, and bounded.

Nothing here is a measure of speed, for which there is ``make bench``.
"""

import argparse
import asyncio
import resource
import sys
import time
from collections import Counter
from pathlib import Path

from .proxied import load_through_the_proxy
from .scenarios import Row, row_of
from .served import HANG_SECONDS, Served, served, sqlite_url
from .wire import exchange, message

REPORT = Path(__file__).with_name("load.md")
_SPARE_FILES = 500  # of what this process may have open, for all that is not a connection
_MOST_GROWTH = 0.10


async def many_requests(store_url: str, *, requests: int, warm_up: int, connections: int = 16) -> Row:
    """Whether the workers' memory is steady."""
    async with served(store_url, workers=2) as service:
        await _spread(service, warm_up, connections)
        before = _resident_mib(service)
        started = time.monotonic()
        statuses = await _spread(service, requests, connections)
        seconds = time.monotonic() - started
        after = _resident_mib(service)
    growth = max(late / early - 1 for early, late in zip(before, after, strict=True))
    return row_of(
        f"{requests:,} requests, after {warm_up:,} to warm up",
        f"Each is answered; the memory of a worker grows by less than {_MOST_GROWTH:.0%}.",
        f"{dict(statuses)} in {seconds:.0f} s; resident memory of the workers {before} MiB before, {after} MiB after: "
        f"{growth:+.1%} at most.",
        {"each is answered": set(statuses) == {200}, "memory is steady": growth < _MOST_GROWTH},
    )


async def many_connections(store_url: str, *, connections: int) -> Row:
    """Whether connections that are all open at once are all answered."""
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    resource.setrlimit(resource.RLIMIT_NOFILE, (hard, hard))  # the service inherits it
    possible = min(connections, hard - _SPARE_FILES)
    try:
        # The senders share this machine with the service, so that here a body may take its time to arrive.
        async with served(store_url, workers=2, body_seconds=6 * HANG_SECONDS) as service:
            streams = []
            for _ in range(possible // 100):
                opening = (asyncio.open_connection("127.0.0.1", service.port) for _ in range(100))
                streams += await asyncio.gather(*opening)
            sent = message(service.token)
            started = time.monotonic()
            answers = await asyncio.gather(*(exchange(reader, writer, sent) for reader, writer in streams))
            seconds = time.monotonic() - started
            after = (await service.ask()).status_code
            memory = _resident_mib(service)
            for _, writer in streams:
                writer.close()
    finally:
        resource.setrlimit(resource.RLIMIT_NOFILE, (soft, hard))
    statuses = Counter(answers)
    fewer = f" (of {connections:,}: this machine allows no more open files)" if possible < connections else ""
    return row_of(
        f"{len(streams):,} connections at once{fewer}",
        "All stay open, each is answered, and the service goes on.",
        f"{dict(statuses)} within {seconds:.1f} s of sending on all; then {after}; resident memory of the workers "
        f"{memory} MiB.",
        {"each is answered": set(statuses) == {200}, "it goes on": after == 200},
    )


async def _spread(service: Served, requests: int, connections: int) -> Counter[int]:
    """That many requests over a few connections."""
    statuses: Counter[int] = Counter()
    sent = message(service.token)

    async def one(share: int) -> None:
        reader, writer = await asyncio.open_connection("127.0.0.1", service.port)
        for _ in range(share):
            statuses[await exchange(reader, writer, sent)] += 1
        writer.close()

    shares = [requests // connections + (index < requests % connections) for index in range(connections)]
    await asyncio.gather(*(one(share) for share in shares))
    return statuses


def _resident_mib(service: Served) -> list[int]:
    """The workers' resident memory, in the order of their process ids."""
    pages = (int(Path(f"/proc/{pid}/statm").read_text().split()[1]) for pid in sorted(service.workers()))
    return [each * resource.getpagesize() // 2**20 for each in pages]


async def main() -> int:
    """Returns how many promises were not kept."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--requests", type=int, default=100_000)
    parser.add_argument("--connections", type=int, default=10_000)
    wanted = parser.parse_args()
    with sqlite_url() as url:
        rows = [await many_requests(url, requests=wanted.requests, warm_up=wanted.requests // 5)]
    with sqlite_url() as url:
        rows.append(await many_connections(url, connections=wanted.connections))
    with sqlite_url() as url:
        rows.append(await load_through_the_proxy(url))
    lines = ["# Load: what is promised, what was seen", "", "Written by `make load`, on loopback.", ""]
    lines += ["| load | promised | seen | kept |", "| --- | --- | --- | --- |", *(row.line() for row in rows)]
    REPORT.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines[4:]))
    return sum(bool(row.broken) for row in rows)


if __name__ == "__main__":
    sys.exit(1 if asyncio.run(main()) else 0)
