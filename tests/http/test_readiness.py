"""Whether a process is ready, on a clock that the test moves; and whether it has too much to do."""

from pathlib import Path

import pytest
from in_process import running
from lifting_form import sum_lifts
from steelyard.http.edge.edge import Edge
from steelyard.http.edge.overload import Overload
from steelyard.http.edge.readiness import Readiness
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


async def test_a_full_ledger_is_not_ready() -> None:
    full = False
    ready = Readiness(FakeStore(), grace_seconds=GRACE_SECONDS, is_full=lambda: full)
    await ready.look()
    assert ready.problem is None
    full = True
    assert "Use cannot be written" in (ready.problem or "")


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


def test_a_loop_that_is_a_little_late_is_not_overloaded() -> None:
    overload = Overload(LATE_SECONDS)
    for _ in range(3):
        overload.see(LATE_SECONDS)
    assert not overload.is_on
