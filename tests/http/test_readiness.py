"""Whether a process is ready, on a clock that the test moves; and whether it has too much to do."""

import asyncio
import sqlite3
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import httpx
import pytest
from in_process import BASE_URL, PATIENCE_SECONDS, alive, running
from lifting_form import sum_lifts
from sqlalchemy import Pool, event
from steelyard.http.app import create_app
from steelyard.http.edge import beside
from steelyard.http.edge.edge import Edge
from steelyard.http.edge.overload import Overload
from steelyard.http.edge.readiness import STALE_SECONDS, Readiness
from steelyard.store.schema import HEAD
from steelyard.store.store import StoreUnavailable

GRACE_SECONDS = 900.0
LATE_SECONDS = 5.0


class FakeStore:
    fault: str | None = None
    found: str | None = HEAD
    looks = 0

    async def revision(self) -> str | None:
        self.looks += 1
        if self.fault:
            raise StoreUnavailable(self.fault)
        return self.found

    async def ping(self) -> None:
        pass


class Clock:
    seconds = 0.0

    def __call__(self) -> float:
        return self.seconds


async def test_a_process_is_ready_for_as_long_as_its_keys_work_without_the_store() -> None:
    """Behind a proxy every replica loses the store at once: to be unready then would make the grace void."""
    store, clock = FakeStore(), Clock()
    ready = Readiness(store, grace_seconds=GRACE_SECONDS, monotonic=clock)
    store.fault = "gone"
    await ready.look()
    assert ready.problem is not None, "it has never seen a key"
    store.fault = None
    await ready.look()
    assert (ready.problem, ready.store_fault) == (None, None)
    store.fault = "gone"
    for clock.seconds in (1.0, GRACE_SECONDS):
        await ready.look()
        assert (ready.problem, ready.store_fault) == (None, "gone")
    clock.seconds = GRACE_SECONDS + 1
    assert "gone" in (ready.problem or "")
    store.fault = None
    await ready.look()
    assert ready.problem is None


async def test_tables_that_are_behind_have_no_grace() -> None:
    store = FakeStore()
    ready = Readiness(store, grace_seconds=GRACE_SECONDS)
    await ready.look()
    store.found = "0001"
    await ready.look()
    assert "steelyard migrate" in (ready.problem or "")


async def test_a_look_that_fails_unforeseen_is_no_answer(caplog: pytest.LogCaptureFixture) -> None:
    class Broken(FakeStore):
        async def ping(self) -> None:
            if self.fault is not None:
                raise ValueError

    store, clock = Broken(), Clock()
    ready = Readiness(store, grace_seconds=GRACE_SECONDS, monotonic=clock)
    await ready.look()
    assert ready.problem is None
    store.fault, store.revision = "gone", FakeStore().revision  # type: ignore[method-assign]
    await ready.look()
    assert (ready.problem, ready.store_fault) == (None, "looking at it failed with ValueError")
    assert [record.levelname for record in caplog.records] == ["ERROR"]
    clock.seconds = GRACE_SECONDS + 1
    assert "ValueError" in (ready.problem or "")


async def test_a_look_that_never_ends_is_no_answer() -> None:
    """What was seen before it is not believed for ever, but the grace of keys holds."""

    class Hanging(FakeStore):
        async def ping(self) -> None:
            if self.fault is not None:
                await asyncio.Event().wait()

    store, clock = Hanging(), Clock()
    ready = Readiness(store, grace_seconds=GRACE_SECONDS, monotonic=clock)
    await ready.look()
    store.fault, store.revision = "gone", FakeStore().revision  # type: ignore[method-assign]
    task = asyncio.create_task(ready.look())
    await asyncio.sleep(0)
    clock.seconds = STALE_SECONDS
    assert ready.store_fault is None
    clock.seconds = GRACE_SECONDS
    assert (ready.problem, ready.store_fault) == (None, "no look at it ended for 900 s")
    clock.seconds = GRACE_SECONDS + 1
    assert "no look" in (ready.problem or "")
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)


async def test_what_runs_beside_the_requests_begins_again(
    monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """Nobody waits for it: without that, use would be written no more, and nobody told."""

    class Part:
        runs = 0

        async def run(self) -> None:
            self.runs += 1
            if self.runs < 3:
                raise LookupError(f"run {self.runs}")
            await asyncio.Event().wait()

    monkeypatch.setattr(beside, "AGAIN_SECONDS", 0.0)
    part = Part()
    task = asyncio.create_task(beside.kept_running(part))
    async with asyncio.timeout(PATIENCE_SECONDS):
        while part.runs < 3:
            await asyncio.sleep(0)
    assert [record.getMessage() for record in caplog.records] == ["Part failed, and begins again"] * 2
    task.cancel()
    with pytest.raises(asyncio.CancelledError):
        await task


async def test_a_full_ledger_is_not_ready() -> None:
    full = False
    ready = Readiness(FakeStore(), grace_seconds=GRACE_SECONDS, is_full=lambda: full)
    await ready.look()
    assert ready.problem is None
    full = True
    assert "Use cannot be written" in (ready.problem or "")


@pytest.fixture
def read_only() -> Iterator[None]:
    """Every database is one that can be read and not written, as SQLite itself has it."""

    def forbid(connection: Any, *_: object) -> None:
        cursor = connection.cursor()
        cursor.execute("PRAGMA query_only = ON")
        cursor.close()

    event.listen(Pool, "checkout", forbid)
    yield
    event.remove(Pool, "checkout", forbid)


async def test_a_store_that_cannot_be_written_is_seen(tmp_path: Path, request: pytest.FixtureRequest) -> None:
    """Keys can be checked, so that the process stays ready; but it says what is wrong, and so does a metric."""
    observed = {"metrics": True, "metrics_public": True, "usage_flush_seconds": 0.02}
    async with running(tmp_path, (sum_lifts,), **observed) as started:
        request.getfixturevalue("read_only")
        await started.client.post(sum_lifts.path, content=b"{}")
        told: dict[str, str] = {}
        async with asyncio.timeout(PATIENCE_SECONDS):
            while "store" not in told:
                await asyncio.sleep(0.02)
                told = (await started.client.get("/health/ready")).json()
        measured = (await started.client.get("/metrics")).text
    assert told == {"status": "ready", "store": "the database failed: its file can only be read"}
    assert "steelyard_store_failing 1.0" in measured


async def test_a_damaged_file_is_named(tmp_path: Path) -> None:
    async with running(tmp_path, ()) as started:
        path = Path(started.settings.database_url.partition(":///")[2])
    path.write_bytes(b"x" * 8192)
    with pytest.raises(sqlite3.DatabaseError):
        sqlite3.connect(path).execute("SELECT 1 FROM api_keys")
    app = create_app(started.settings, ())
    async with alive(app), httpx.AsyncClient(transport=httpx.ASGITransport(app), base_url=BASE_URL) as client:
        answer = await client.get("/health/ready")
    assert answer.status_code == 503
    assert "its file is no database, or is damaged" in answer.json()["detail"]


async def test_whoever_asks_does_not_ask_the_store(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    async with running(tmp_path, ()) as started:
        await started.store.close()

        async def refuse(*_: object) -> None:
            raise AssertionError

        monkeypatch.setattr("steelyard.store.store.Store.revision", refuse)
        statuses = {(await started.client.get("/health/ready")).status_code for _ in range(50)}
    assert statuses == {200}


async def test_a_process_with_too_much_to_do_says_so_at_once(tmp_path: Path) -> None:
    async with running(tmp_path, (sum_lifts,), overload_seconds=LATE_SECONDS) as started:
        edge = started.app.asgi_handler
        assert isinstance(edge, Edge)
        edge._overload.see(LATE_SECONDS + 1)
        assert (await started.client.post(sum_lifts.path, content=b"{}")).status_code != 503, "once may be a pause"
        edge._overload.see(LATE_SECONDS + 1)
        refused = await started.client.post(sum_lifts.path, content=b"{}")
        assert (refused.status_code, refused.json()["type"]) == (503, "/problems/overloaded")
        assert int(refused.headers["retry-after"]) > 0
        assert (await started.client.get("/health/ready")).status_code == 200
        edge._overload.see(LATE_SECONDS / 2)
        assert (await started.client.post(sum_lifts.path, content=b"{}")).status_code == 503, "it is not over yet"
        edge._overload.see(0.0)
        assert (await started.client.post(sum_lifts.path, content=b"{}")).status_code != 503


def test_overload_goes_on_for_as_long_as_it_is_too_late() -> None:
    """Also where the operator calls a fifth of a second too late, which is less than what is calm elsewhere."""
    overload = Overload(0.2)
    for seconds, is_on in ((0.3, False), (0.3, True), (0.3, True), (0.25, True), (0.1, False), (0.3, False)):
        overload.see(seconds)
        assert overload.is_on is is_on


def test_a_loop_that_is_a_little_late_is_not_overloaded() -> None:
    overload = Overload(LATE_SECONDS)
    for _ in range(3):
        overload.see(LATE_SECONDS)
    assert not overload.is_on
