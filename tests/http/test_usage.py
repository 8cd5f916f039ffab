"""Counting use."""

import asyncio
from collections import Counter
from collections.abc import Mapping
from datetime import UTC, datetime

from steelyard.http.usage import UsageCounter
from steelyard.store.store import StoreUnavailable, UsageCell


class Sink:
    """Remembers what it is given, unless it is gone."""

    def __init__(self) -> None:
        self.is_gone = False
        self.stored: Counter[UsageCell] = Counter()

    async def add_usage(self, counts: Mapping[UsageCell, int]) -> None:
        if self.is_gone:
            raise StoreUnavailable("gone")
        self.stored.update(counts)


async def test_counts_are_kept_while_the_store_is_gone() -> None:
    sink = Sink()
    usage = UsageCounter(sink, flush_seconds=1.0)
    day = datetime.now(UTC).date()
    sink.is_gone = True
    usage.count(7, "plan_phases")
    await usage.flush()
    usage.count(7, "plan_phases")
    usage.count(8, "plan_phases")
    sink.is_gone = False
    await usage.flush()
    await usage.flush()
    assert day == datetime.now(UTC).date(), "run across midnight; run again"
    assert sink.stored == {UsageCell(7, "plan_phases", day): 2, UsageCell(8, "plan_phases", day): 1}


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
