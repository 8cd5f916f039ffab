"""A run: every partition answered once, charged once, and said to be done; whatever is killed on the way."""

from collections import Counter
from collections.abc import Iterable
from contextlib import ExitStack
from functools import partial
from typing import NamedTuple, Protocol

import msgspec
import pyarrow as pa

from steelyard.store.keys import Key
from steelyard.store.store import StoreUnavailable

from .answering import TableRefused
from .engine import Engine, engine
from .ledger import Charge, Ledger, check_quotas
from .manifest import Manifest, locked, write_receipt
from .partitions import Job, OtherVersion, Receipt, RowPartition, answer_partition, plan
from .places import NoPlace, place_of

_FINAL = (TableRefused, OtherVersion)  # trying again would end the same
_SAID = (*_FINAL, OSError, pa.ArrowException)


class Failed(NamedTuple):
    """A partition that could not be done, and why."""

    path: str
    reason: str


class Summary(NamedTuple):
    """What came of a run; with earlier ones into the same folder, where it went on with them."""

    partitions: int
    rows: int
    problems: int
    problems_by_code: dict[str, int]
    bytes: int
    done_before: int
    failed: list[Failed]
    uncharged: int

    @property
    def is_complete(self) -> bool:
        """Whether every partition is done and charged."""
        return not self.failed and not self.uncharged


class Watcher(Protocol):
    """Who is told how far a run is."""

    def begin(self, rows: int, rows_done: int) -> None:
        """There are so many rows, and so many were done before."""
        ...

    def advance(self, receipt: Receipt) -> None:
        """A partition is done."""
        ...

    def say(self, text: str) -> None:
        """Something that a person should know."""
        ...


class RunAsked(NamedTuple):
    """How a run is made, beside what is asked."""

    cluster: str | None
    workers: int
    retries: int
    partition_rows: int
    key_prefix: str | None


def run(job: Job, asked: RunAsked, ledger: Ledger, watcher: Watcher) -> Summary:
    """Do all that is not done.

    Raises ``NoPlace``, ``OtherRun``, ``AlreadyRunning``, ``CannotCharge`` and ``EngineLost``.
    """
    members, answers = place_of(job.members), place_of(job.answers)
    if not members.is_there:
        raise NoPlace(f"there is no folder {members.name}")
    with locked(answers):
        key = ledger.key(asked.key_prefix)
        manifest = Manifest.opened(answers, job, partition_rows=asked.partition_rows, key_prefix=key.prefix)
        partitions = plan(members, rows_each=asked.partition_rows)
        done = manifest.receipts(partitions)
        left = [partition for partition in partitions if partition.id not in done]
        check_quotas(key, job.operation, sum(partition.rows for partition in left))
        answers.tidy()
        keeper = _Keeper(job, manifest, ledger, key, watcher)
        watcher.begin(sum(partition.rows for partition in partitions), sum(each.rows for each in done.values()))
        before = len(done)
        for receipt in done.values():
            keeper.keep(receipt)
        failed = []
        if left:
            # The longest first: what takes long is not begun last.
            left.sort(key=lambda partition: (-partition.rows, partition.path, partition.start))
            workers = min(asked.workers, len(left))
            with ExitStack() as stack:
                running = stack.enter_context(engine(partial(_work, job), cluster=asked.cluster, workers=workers))
                failed = _all(running, left, asked.retries, keeper, watcher)
        keeper.charge_late()
        return keeper.summary(len(partitions), before, failed)


class _Failure(msgspec.Struct, frozen=True):
    """A partition that failed. It comes as a value: an engine logs exceptions, whose text may be about a member."""

    reason: str
    is_final: bool = False


def _work(job: Job, partition: RowPartition) -> Receipt | _Failure:
    """What a worker does: the receipt is written by it, so that its work stays if nobody is left to hear of it."""
    try:
        receipt = answer_partition(job, partition)
        write_receipt(place_of(job.answers), receipt)
    except Exception as error:
        return _Failure(_reason(error), isinstance(error, _FINAL))
    return receipt


def _all(
    running: Engine[RowPartition, Receipt | _Failure],
    partitions: Iterable[RowPartition],
    retries: int,
    keeper: "_Keeper",
    watcher: Watcher,
) -> list[Failed]:
    tried: Counter[str] = Counter()
    failed = []

    def failure(outcome: Receipt | _Failure | Exception) -> _Failure | None:
        if isinstance(outcome, Exception):  # of the engine: its worker was lost again and again
            return _Failure(_reason(outcome))
        return outcome if isinstance(outcome, _Failure) else None

    def again(partition: RowPartition, outcome: Receipt | _Failure | Exception) -> bool:
        found = failure(outcome)
        if found is None or found.is_final:
            return False
        tried[partition.id] += 1
        if tried[partition.id] > retries:
            return False
        watcher.say(f"{partition.path} is tried again: {found.reason}")
        return True

    for partition, outcome in running.outcomes(partitions, again):
        if isinstance(outcome, Receipt):
            keeper.keep(outcome)
            watcher.advance(outcome)
        elif found := failure(outcome):
            failed.append(Failed(partition.path, found.reason))
    return failed


def _reason(error: Exception) -> str:
    """What went wrong with a file; of an error whose text may be about a member, its name alone."""
    name = type(error).__name__
    return f"{name}: {' '.join(str(error).split())[:300]}" if isinstance(error, _SAID) else name


class _Keeper:
    """Charges what is done, and adds it up."""

    def __init__(self, job: Job, manifest: Manifest, ledger: Ledger, key: Key, watcher: Watcher) -> None:
        self._job, self._manifest, self._ledger, self._key, self._watcher = job, manifest, ledger, key, watcher
        self._answers = place_of(job.answers)
        self._waiting: list[Receipt] = []
        self._rows = self._bytes = 0
        self._problems: Counter[str] = Counter()

    def keep(self, receipt: Receipt) -> None:
        """Count a partition that is done, and charge it unless it is charged."""
        self._rows += receipt.rows
        self._bytes += receipt.bytes
        self._problems.update(receipt.problems_by_code)
        if not receipt.is_charged:
            self._waiting.append(receipt)
            self._charge()

    def _charge(self) -> None:
        while self._waiting:
            receipt = self._waiting[0]
            charge = Charge(self._manifest.flush_id(receipt.partition), self._job.operation, receipt.rows)
            try:
                if receipt.rows:
                    self._ledger.charge(self._key, charge)
            except StoreUnavailable as error:
                self._watcher.say(f"use is written later: {error}")
                return
            write_receipt(self._answers, msgspec.structs.replace(receipt, is_charged=True))
            self._waiting.pop(0)

    def charge_late(self) -> None:
        """Charge what could not be charged when it was done."""
        self._charge()

    def summary(self, partitions: int, before: int, failed: list[Failed]) -> Summary:
        """What came of it all."""
        return Summary(
            partitions=partitions,
            rows=self._rows,
            problems=self._problems.total(),
            problems_by_code=dict(sorted(self._problems.items())),
            bytes=self._bytes,
            done_before=before,
            failed=failed,
            uncharged=len(self._waiting),
        )
