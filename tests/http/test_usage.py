"""Counting use."""

import asyncio
from collections.abc import Mapping
from datetime import UTC, datetime

import pytest
from steelyard.http.gate.usage import UsageCounter
from steelyard.store.store import StoreUnavailable, UsageCell, UsageCount


class Sink:
    """Remembers what it is given, unless it is gone."""

    def __init__(self) -> None:
        self.is_gone = False
        self.stored: dict[UsageCell, UsageCount] = {}

    async def add_usage(self, counts: Mapping[UsageCell, UsageCount]) -> None:
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
    usage.count_further_units(8, "plan_phases", 39)
    sink.is_gone = False
    await usage.flush()
    await usage.flush()
    assert day == datetime.now(UTC).date(), "run across midnight; run again"
    assert sink.stored == {
        UsageCell(7, "plan_phases", day): UsageCount(2, 2),
        UsageCell(8, "plan_phases", day): UsageCount(1, 40),
    }


async def test_a_flush_that_is_cancelled_loses_nothing() -> None:
    class Slow(Sink):
        async def add_usage(self, counts: Mapping[UsageCell, UsageCount]) -> None:
            if self.is_gone:
                await asyncio.sleep(3600)
            await super().add_usage(counts)

    sink = Slow()
    sink.is_gone = True
    usage = UsageCounter(sink, flush_seconds=1.0)
    usage.count(7, "plan_phases")
    flushing = asyncio.create_task(usage.flush())
    await asyncio.sleep(0)
    flushing.cancel()
    await asyncio.gather(flushing, return_exceptions=True)
    sink.is_gone = False
    await usage.flush()
    assert list(sink.stored.values()) == [UsageCount(1, 1)]


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
        async def add_usage(self, counts: Mapping[UsageCell, UsageCount]) -> None:
            if self.is_gone:
                self.is_gone = False
                raise RuntimeError("a fault of the code")
            await super().add_usage(counts)

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
