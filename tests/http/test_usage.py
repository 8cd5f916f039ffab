"""Counting use."""

import asyncio
from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import msgspec
import pytest
from in_process import PATIENCE_SECONDS, alive, running
from steelyard.http.app import create_app
from steelyard.http.endpoints.method_catalogue import list_methods
from steelyard.http.gate import usage as usage_module
from steelyard.http.gate.retention import Retention
from steelyard.http.gate.usage import UsageCounter
from steelyard.store.store import FlushId, StoreUnavailable, UsageCell, UsageCount


class Sink:
    """Remembers what it is given, unless it is gone."""

    def __init__(self) -> None:
        self.is_gone = False
        self.stored: dict[UsageCell, UsageCount] = {}
        self.asked: list[tuple[FlushId, dict[UsageCell, UsageCount]]] = []

    async def add_usage(self, counts: Mapping[UsageCell, UsageCount], flush: FlushId) -> None:
        self.asked.append((flush, dict(counts)))
        if self.is_gone:
            raise StoreUnavailable("gone")
        for cell, count in counts.items():
            known = self.stored.get(cell, UsageCount(0, 0))
            self.stored[cell] = UsageCount(known.requests + count.requests, known.units + count.units)


async def test_counts_are_kept_while_the_store_is_gone() -> None:
    sink = Sink()
    usage = UsageCounter(sink, flush_seconds=1.0)
    day = datetime.now(UTC).date()
    sink.is_gone = True
    usage.count(7, "plan_phases")
    await usage.flush()
    usage.count(7, "plan_phases")
    usage.count(8, "plan_phases")
    usage.count(8, "plan_phases", requests=0, units=39)
    sink.is_gone = False
    await usage.flush()
    await usage.flush()
    assert day == datetime.now(UTC).date(), "run across midnight; run again"
    assert sink.stored == {
        UsageCell(7, "plan_phases", day): UsageCount(2, 2),
        UsageCell(8, "plan_phases", day): UsageCount(1, 40),
    }


class Slow(Sink):
    """Takes its time while it is gone."""

    def __init__(self) -> None:
        super().__init__()
        self.may_go_on = asyncio.Event()

    async def add_usage(self, counts: Mapping[UsageCell, UsageCount], flush: FlushId) -> None:
        await self.may_go_on.wait()
        await super().add_usage(counts, flush)


async def test_a_flush_that_is_cancelled_leaves_its_write_alone() -> None:
    sink = Slow()
    usage = UsageCounter(sink, flush_seconds=1.0)
    usage.count(7, "plan_phases")
    flushing = asyncio.create_task(usage.flush())
    await asyncio.sleep(0)
    flushing.cancel()
    await asyncio.gather(flushing, return_exceptions=True)
    usage.count(7, "plan_phases")
    assert not await usage.flush(0.01), "the first write is still under way"
    assert usage.waiting_units == 2
    sink.may_go_on.set()
    assert await usage.flush()
    assert await usage.flush()
    assert list(sink.stored.values()) == [UsageCount(2, 2)]
    assert [flush.number for flush, _ in sink.asked] == [1, 2]
    assert (usage.waiting_units, usage.waiting_seconds) == (0, 0.0)


async def test_a_flush_that_failed_is_sent_again_as_it_was() -> None:
    """Under its id: the store may have carried it out all the same."""
    sink = Sink()
    usage = UsageCounter(sink, flush_seconds=1.0)
    sink.is_gone = True
    for _ in range(5):
        usage.count(7, "plan_phases")
        await usage.flush()
    assert len({(flush, str(counts)) for flush, counts in sink.asked}) == 1
    assert usage.waiting_units == 5
    assert usage.waiting_seconds > 0
    assert len(usage._counted) == 1, "what waits is one number for a key, an operation and a day"


async def test_full_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(usage_module, "MOST_CELLS", 3)
    usage = UsageCounter(Sink(), flush_seconds=1.0)
    for key_id in range(3):
        assert not usage.is_full
        usage.count(key_id, "plan_phases")
    assert usage.is_full
    await usage.flush()
    assert not usage.is_full


async def test_what_a_full_ledger_cannot_count_is_not_answered(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(usage_module, "MOST_CELLS", 1)
    async with running(tmp_path, (list_methods,), usage_flush_seconds=3600.0) as started:
        assert (await started.client.get("/v1/methods")).status_code == 200
        refused = await started.client.get("/v1/methods")
        assert (refused.status_code, refused.json()["type"]) == (503, "/problems/unavailable")
        assert int(refused.headers["retry-after"]) > 0
    assert [count.requests for count in (await started.store.usage()).values()] == [1]


async def test_a_write_under_way_at_the_end_is_waited_for() -> None:
    sink = Slow()
    usage = UsageCounter(sink, flush_seconds=0.001)
    task = asyncio.create_task(usage.run())
    usage.count(7, "plan_phases")
    await asyncio.sleep(0.05)
    usage.count(7, "plan_phases")
    task.cancel()
    await asyncio.sleep(0.05)
    sink.may_go_on.set()
    await asyncio.gather(task, return_exceptions=True)
    assert list(sink.stored.values()) == [UsageCount(2, 2)]


async def test_flushes_on_its_own_and_when_cancelled() -> None:
    sink = Sink()
    usage = UsageCounter(sink, flush_seconds=0.01)
    task = asyncio.create_task(usage.run())
    usage.count(7, "plan_phases")
    while not sink.stored:
        await asyncio.sleep(0.01)
    usage.count(7, "read_trend")
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)
    assert {cell.operation_id for cell in sink.stored} == {"plan_phases", "read_trend"}


async def test_a_flush_that_fails_is_not_the_last(caplog: pytest.LogCaptureFixture) -> None:
    class Faulty(Sink):
        async def add_usage(self, counts: Mapping[UsageCell, UsageCount], flush: FlushId) -> None:
            if self.is_gone:
                self.is_gone = False
                raise RuntimeError("a fault of the code")
            await super().add_usage(counts, flush)

    sink = Faulty()
    sink.is_gone = True
    usage = UsageCounter(sink, flush_seconds=0.01)
    task = asyncio.create_task(usage.run())
    usage.count(7, "plan_phases")
    while not sink.stored:
        await asyncio.sleep(0.01)
    assert "RuntimeError" in caplog.text
    assert list(sink.stored.values()) == [UsageCount(1, 1)]
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)


class Ledger:
    is_gone = False

    def __init__(self) -> None:
        self.first_kept: list[date] = []

    async def forget_usage(self, before: date) -> int:
        if self.is_gone:
            raise StoreUnavailable("gone")
        self.first_kept.append(before)
        return 1


async def test_what_is_older_than_the_operator_said_is_forgotten() -> None:
    ledger = Ledger()
    retention = Retention(ledger, days=30, today=lambda: date(2026, 3, 31))
    ledger.is_gone = True
    await retention.forget()
    ledger.is_gone = False
    await retention.forget()
    assert ledger.first_kept == [date(2026, 3, 1)]


@pytest.mark.parametrize(("days", "kept"), [(0, {3, 30, 0}), (7, {3, 0}), (3, {3, 0}), (2, {0})])
async def test_the_ledger_keeps_as_many_days_as_are_set(tmp_path: Path, days: int, kept: set[int]) -> None:
    async with running(tmp_path, ()) as before:
        (key,) = await before.store.list_keys()
        today = datetime.now(UTC).date()
        cells = {UsageCell(key.id, "plan_phases", today - timedelta(ago)): UsageCount(1, 1) for ago in (0, 3, 30)}
        await before.store.add_usage(cells, FlushId("a", 1))
        app = create_app(msgspec.structs.replace(before.settings, usage_days=days), ())
        async with alive(app), asyncio.timeout(PATIENCE_SECONDS):
            while {(today - cell.day).days for cell in await before.store.usage()} != kept:
                await asyncio.sleep(0.02)
