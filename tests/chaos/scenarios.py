"""What may break, what is promised then, and what was seen. Each scenario breaks one thing under load."""

import asyncio
import os
import signal
import time
from collections import Counter
from collections.abc import Awaitable, Callable
from typing import NamedTuple

from servers import Server
from steelyard.http.endpoints.maintenance import estimate_maintenance

from .served import BODY, HANG_SECONDS, Served, headers, load, served


class Row(NamedTuple):
    """One line of the table. ``broken`` names each promise that was not kept."""

    fault: str
    promised: str
    seen: str
    broken: list[str]

    def line(self) -> str:
        """The row of a Markdown table."""
        kept = "no: " + ", ".join(self.broken) if self.broken else "yes"
        return f"| {self.fault} | {self.promised} | {self.seen} | {kept} |"


def row_of(fault: str, promised: str, seen: str, promises: dict[str, bool]) -> Row:
    """A row; ``promises`` says of each whether it was kept."""
    return Row(fault, promised, seen, [name for name, is_kept in promises.items() if not is_kept])


async def _until(condition: Callable[[], Awaitable[bool]], seconds: float = 60.0) -> float:
    """Wait for ``condition``; returns for how long. Raises ``TimeoutError``."""
    started = time.monotonic()
    while not await condition():
        if time.monotonic() - started > seconds:
            raise TimeoutError
        await asyncio.sleep(0.05)
    return time.monotonic() - started


async def worker_killed(store_url: str, *, flush_seconds: float = 0.5, load_seconds: float = 1.0) -> Row:
    """``kill -9`` of one of two workers under load, some time after a first load of which all was counted."""
    async with served(store_url, workers=2, usage_flush_seconds=flush_seconds) as service:
        async with load(service) as first:
            await asyncio.sleep(load_seconds)
        safe = first.count()

        async def counted_all() -> bool:
            return await service.ledger() == safe

        counted_after = await _until(counted_all)
        async with load(service) as running:
            await asyncio.sleep(load_seconds)
            before = service.workers()
            killed_at = time.monotonic()
            os.kill(min(before), signal.SIGKILL)

            async def replaced() -> bool:
                return len(service.workers() - {min(before)}) == 2

            await _until(replaced)
            await asyncio.sleep(load_seconds)
        service.terminate()
        exit_code = await service.ended()
        answered, counted = safe + running.count(), await service.ledger()
        # The load is told of an answer a moment after the worker sent it.
        at_risk = running.count(since=killed_at - load_seconds, until=killed_at + 0.1)
        after = running.count(since=killed_at + 0.1)
    broken_off = running.statuses().get(0, 0)
    return row_of(
        "`kill -9` of one of two workers under load",
        f"No use is lost but what the worker admitted in its last {flush_seconds:g} s (`USAGE_FLUSH_SECONDS`) and the "
        "write after them; the other worker goes on, and the dead one is replaced.",
        f"{safe} answered at first, all counted {counted_after:.1f} s later; then {at_risk} before the kill and "
        f"{after} after it, of which {max(answered - counted, 0)} lost; {broken_off} requests broken off; exit code "
        f"{exit_code}.",
        {
            "nothing lost that was older": answered - counted <= at_risk,
            # A request may be counted whose answer did not get out.
            "nothing counted that was not asked": counted <= answered + broken_off,
            "the other worker goes on": after > 0,
            "no fault": set(first.statuses()) == {200} and set(running.statuses()) <= {0, 200},
            "clean end": exit_code == 0,
        },
    )


async def database_gone(
    server: Server, store_url: str, *, hangs: bool = False, cache_seconds: float = 0.5, grace_seconds: float = 6.0
) -> Row:
    """The database's server is killed, or stops answering, and comes back."""
    async with served(
        store_url,
        key_cache_seconds=cache_seconds,
        key_grace_seconds=grace_seconds,
        store_timeout_seconds=1.0,
        usage_flush_seconds=0.5,
    ) as service:
        async with load(service) as running:
            await asyncio.sleep(1.0)
            # Before it stops: the grace runs from the last look-up that worked, however long stopping takes.
            gone_at = time.monotonic()
            server.freeze() if hangs else server.stop()
            try:
                await asyncio.sleep(cache_seconds)
                unseen = await service.ask(service.unseen_token)
                ready, live = await service.ask(path="/health/ready"), await service.ask(path="/health/live")

                async def over() -> bool:
                    return 503 in running.statuses()

                await _until(over)
                refused = await service.ask()

                async def unready() -> bool:
                    return (await service.ask(path="/health/ready")).status_code == 503

                await _until(unready)
            finally:
                server.thaw() if hangs else server.start()

            async def back() -> bool:
                answers = [await service.ask(), await service.ask(service.unseen_token)]
                return all(answer.status_code == 200 for answer in answers)

            recovery = await _until(back)
            await asyncio.sleep(0.5)
        answered = running.count() + 2  # the pair with which it was back

        async def all_counted() -> bool:
            return await service.ledger() >= answered

        counted_after = await _until(all_counted)
    statuses = running.statuses()
    in_grace = running.statuses(since=gone_at, until=gone_at + grace_seconds)
    grace = min(each.at for each in running.answered if each.status == 503) - gone_at
    return row_of(
        f"The database {'hangs' if hangs else 'is killed'}, and comes back",
        f"A key verified before works for {grace_seconds:g} s (`KEY_GRACE_SECONDS`) and the {cache_seconds:g} s of the "
        "cache; a new key gets 503 with `Retry-After`; the service is live, and ready as long as verified keys work, "
        "so that no proxy takes it out; nothing hangs; use is counted once the database is back.",
        f"Verified key: {in_grace} in that time, 503 after {grace:.1f} s; new key: {unseen.status_code} "
        f"with `Retry-After: {unseen.headers.get('retry-after')}`; live "
        f"{live.status_code}, ready {ready.status_code}, and not ready after the grace; slowest answer "
        f"{running.longest():.1f} s; back {recovery:.1f} s after the database; all {answered} answered were counted "
        f"{counted_after:.1f} s later.",
        {
            "the verified key works": set(in_grace) == {200},
            "the grace ends": grace < grace_seconds + cache_seconds + HANG_SECONDS,
            "then 503 with Retry-After": refused.status_code == 503 and int(refused.headers["retry-after"]) > 0,
            "a new key gets 503 with Retry-After": unseen.status_code == 503
            and int(unseen.headers.get("retry-after", 0)) > 0,
            "live and ready": (live.status_code, ready.status_code) == (200, 200),
            "nothing hangs": running.longest() < HANG_SECONDS,
            "nothing but 200 and 503": set(statuses) <= {200, 503},
        },
    )


async def started_without_database(server: Server, store_url: str) -> Row:
    """The database's server is away when the service starts, and comes later."""
    server.stop()
    try:
        async with served(store_url, workers=2, store_timeout_seconds=1.0, waits_until="live") as service:
            live, ready = await service.ask(path="/health/live"), await service.ask(path="/health/ready")
            server.start()

            async def is_ready() -> bool:
                return (await service.ask(path="/health/ready")).status_code == 200

            seconds = await _until(is_ready)
    finally:
        server.stop()
        server.start()
    return row_of(
        "The service starts while the database is away",
        "It starts, is live and not ready, and is ready soon after the database is there.",
        f"Live {live.status_code}, ready {ready.status_code}; ready {seconds:.1f} s after the database.",
        {
            "it starts": live.status_code == 200,
            "it is not ready": ready.status_code == 503,
            "it becomes ready": seconds < HANG_SECONDS,
        },
    )


async def limits_store_gone(server: Server, store_url: str, *, hangs: bool = False) -> Row:
    """The store of the shared limits is killed, or stops answering, and comes back."""
    url = f"valkey://127.0.0.1:{server.port}/2"
    async with (
        served(
            store_url,
            workers=2,
            rate_limit_requests=1_000_000,
            rate_limit_store_url=url,
            rate_limit_sync_seconds=0.05,
            store_timeout_seconds=1.0,
        ) as service,
        load(service) as running,
    ):
        await asyncio.sleep(0.5)
        server.freeze() if hangs else server.stop()
        gone_at = time.monotonic()
        try:

            async def said() -> bool:
                return "steelyard-degraded" in (await service.ask()).headers

            notice = await _until(said)
            await asyncio.sleep(1.0)
        finally:
            server.thaw() if hangs else server.start()

        async def shared() -> bool:
            answers = [await service.ask() for _ in range(8)]
            return not any("steelyard-degraded" in answer.headers for answer in answers)

        recovery = await _until(shared)
    degraded = sum(each.is_degraded for each in running.answered)
    return row_of(
        f"The store of the limits {'hangs' if hangs else 'is killed'}, and comes back",
        "Each worker goes on with its own counts; answers say `Steelyard-Degraded: rate-limit`; no request fails, and "
        "none waits longer than a second, once; limits are shared again when it is back.",
        f"{running.statuses(since=gone_at)} since; {degraded} answers said so, the first after {notice:.1f} s; shared "
        f"again {recovery:.1f} s after it was back; slowest answer {running.longest():.1f} s.",
        {
            "no request fails": set(running.statuses()) == {200},
            "it is said": degraded > 0,
            "nothing hangs": running.longest() < HANG_SECONDS,
        },
    )


async def told_to_stop(store_url: str, *, under_way: int = 4) -> Row:
    """SIGTERM while requests are under way: their bodies are still arriving."""
    async with served(store_url, usage_flush_seconds=3600.0) as service:
        half = len(BODY) // 2
        streams = [await _begin(service, BODY[:half]) for _ in range(under_way)]
        quick = (await service.ask()).status_code
        await asyncio.sleep(0.3)  # for the service to have read what was sent
        service.terminate()
        await asyncio.sleep(0.5)
        try:
            late = str((await service.ask()).status_code)
        except Exception as error:
            late = type(error).__name__
        statuses = []
        for reader, writer in streams:
            writer.write(BODY[half:])
            await writer.drain()
            statuses.append(await _status(reader))
            writer.close()
        exit_code = await service.ended()
        counted = await service.ledger()
    return row_of(
        "SIGTERM with requests under way",
        "Requests under way are answered, no new ones are taken, all use is written, and the exit code is 0.",
        f"{under_way} under way: {dict(Counter(statuses))}; a new one: {late}; {counted} of "
        f"{under_way + 1} counted; exit code {exit_code}.",
        {
            "those under way are answered": statuses == [200] * under_way and quick == 200,
            "no new ones": late != "200",
            "all use is written": counted == under_way + 1,
            "clean end": exit_code == 0,
        },
    )


async def told_to_stop_with_one_that_never_ends(store_url: str, *, drain_seconds: int = 2) -> Row:
    """SIGTERM while the body of a request never arrives."""
    async with served(store_url, drain_seconds=drain_seconds, body_seconds=600.0) as service:
        _, writer = await _begin(service, BODY[:10])
        await asyncio.sleep(0.3)
        started = time.monotonic()
        service.terminate()
        exit_code = await service.ended()
        seconds = time.monotonic() - started
        writer.close()
    return row_of(
        "SIGTERM with a request whose body never arrives",
        f"The server ends after {drain_seconds} s (`DRAIN_SECONDS`) all the same.",
        f"Ended after {seconds:.1f} s, exit code {exit_code}.",
        {"it waits": seconds >= drain_seconds - 0.5, "not for ever": seconds < drain_seconds + HANG_SECONDS},
    )


async def told_to_stop_while_starting(store_url: str) -> Row:
    """SIGTERM to a server one of whose workers has just been killed and is starting anew."""
    async with served(store_url, workers=2, drain_seconds=30) as service:
        os.kill(min(service.workers()), signal.SIGKILL)
        before = service.workers()

        async def anew() -> bool:
            return bool(service.workers() - before)

        await _until(anew)
        started = time.monotonic()
        service.terminate()
        exit_code = await service.ended()
        seconds = time.monotonic() - started
    return row_of(
        "SIGTERM while a worker is starting",
        "The worker ends at once; nobody waits for it as for requests under way (30 s here).",
        f"Ended after {seconds:.1f} s, exit code {exit_code}.",
        {"nobody waits": seconds < 25.0, "clean end": exit_code == 0},
    )


async def _begin(service: Served, part: bytes) -> tuple[asyncio.StreamReader, asyncio.StreamWriter]:
    """Send a request's headers and the first part of its body."""
    reader, writer = await asyncio.open_connection("127.0.0.1", service.port)
    lines = {"Host": "127.0.0.1", **headers(service.token), "Content-Length": str(len(BODY))}
    head = "".join(f"{name}: {value}\r\n" for name, value in lines.items())
    writer.write(f"POST {estimate_maintenance.path} HTTP/1.1\r\n{head}\r\n".encode() + part)
    await writer.drain()
    return reader, writer


async def _status(reader: asyncio.StreamReader) -> int:
    """The status of the answer, 0 where there is none."""
    try:
        async with asyncio.timeout(HANG_SECONDS):
            line = await reader.readline()
    except (TimeoutError, OSError):
        return 0
    return int(line.split()[1]) if line else 0
