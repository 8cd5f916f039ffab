"""What is done at a time: a Parquet file of requests, or some rows of a long one; and how it is answered."""

import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from functools import lru_cache
from hashlib import sha256
from typing import Any
from urllib.parse import quote

import msgspec
import pyarrow as pa
import pyarrow.compute as pc
import pyarrow.parquet as pq

from steelyard.garbage import collect_seldom
from steelyard.science.register import MODEL_VERSION

from .answering import PROBLEM, Answerer
from .places import Place, place_of

SUFFIX = ".parquet"
PROBLEMS = "_problems"
BATCH_ROWS = 512  # answered at a time: enough that what a batch costs by itself does not show
GROUP_ROWS = 50_000  # of a row group that is written, unless it reaches so many bytes before
GROUP_BYTES = 32 * 2**20
_PLANNERS = 8


class RowPartition(msgspec.Struct, frozen=True):
    """Rows of a file of requests. Its id changes with the file: what has the id is done once.

    ``stop`` is None where the file cannot be read, so that nobody knows how many rows it has.
    """

    id: str
    path: str
    start: int
    stop: int | None
    output: str

    @property
    def rows(self) -> int:
        """How many rows there are to answer; 0 where nobody knows."""
        return 0 if self.stop is None else self.stop - self.start


class Job(msgspec.Struct, frozen=True):
    """What is asked of every partition, as it is sent to a worker."""

    members: str
    answers: str
    operation: str
    columns: tuple[str, ...]
    carry: tuple[str, ...]
    model_version: str = MODEL_VERSION


class Receipt(msgspec.Struct, frozen=True, kw_only=True):
    """A partition that is done: what came of its rows, and the length of what was written of them."""

    partition: str
    output: str
    rows: int
    problems: int
    problems_by_code: dict[str, int]
    bytes: int
    seconds: float
    is_charged: bool = False


class OtherVersion(RuntimeError):  # noqa: N818 - named for what it is about
    """A worker has another version of the science than the run."""


def plan(members: Place, *, rows_each: int) -> list[RowPartition]:
    """The partitions of a folder, in the order of its files; long files are cut."""
    files = list(members.files(SUFFIX))
    with ThreadPoolExecutor(_PLANNERS) as threads:
        counts = list(threads.map(lambda info: _row_count(members, info.path), files))
    found = []
    for info, rows in zip(files, counts, strict=True):
        relative = members.relative(info)
        known = f"{relative}\n{info.size}\n{info.mtime_ns}"
        cuts = range(0, rows, rows_each) if rows and rows > rows_each else range(1)
        for start in cuts:
            stop = None if rows is None else min(rows, start + rows_each) if len(cuts) > 1 else rows
            output = relative if len(cuts) == 1 else f"{relative.removesuffix(SUFFIX)}.rows-{start:010}{SUFFIX}"
            id_ = sha256(f"{known}\n{start}\n{stop}".encode()).hexdigest()[:32]
            found.append(RowPartition(id_, relative, start, stop, output))
    return found


def _row_count(members: Place, path: str) -> int | None:
    """The rows of a file; None where it is damaged, which is for the worker to say."""
    try:
        rows: int = pq.read_metadata(path, filesystem=members.filesystem).num_rows
    except (pa.ArrowException, OSError):
        return None
    return rows


@lru_cache(maxsize=4)
def _answerer(operation: str, columns: tuple[str, ...], carry: tuple[str, ...]) -> Answerer:
    """Kept by a worker from one partition to the next."""
    return Answerer(operation, columns=columns, carry=carry)


def answer_partition(job: Job, partition: RowPartition) -> Receipt:
    """Answer the rows of a partition into files of the same name, those at fault into a file of their own.

    Whatever ends it early, nothing of it is seen; and done twice it leaves the same files. Raises ``TableRefused``, and
    what Arrow raises where a file cannot be read or written.
    """
    if job.model_version != MODEL_VERSION:
        raise OtherVersion(f"this worker has the science {MODEL_VERSION}, the run {job.model_version}")
    started = time.perf_counter()
    members, answers = place_of(job.members), place_of(job.answers)
    answerer = _answerer(job.operation, job.columns, job.carry)
    collect_seldom()
    rows, problems = 0, dict[str, int]()
    # Problems first: once the answers are there, so are they.
    with ExitStack() as files:
        good = files.enter_context(_Writer(answers, partition.output))
        bad = files.enter_context(_Writer(answers, f"{PROBLEMS}/{partition.output}", if_any=True))
        for batch in _batches(members, partition):
            answered = answerer.answer(batch, first_row=partition.start + rows)
            rows += batch.num_rows
            faults = answered.column(PROBLEM)
            if faults.null_count == len(faults):
                good.write(answered.drop_columns([PROBLEM]))
                continue
            is_good = pc.is_null(faults)
            good.write(answered.filter(is_good).drop_columns([PROBLEM]))
            kept = _with_problem(pa.Table.from_batches([batch]), answered.column(PROBLEM), partition.path)
            bad.write(kept.filter(pc.invert(is_good)))
            for code in faults.drop_null().combine_chunks().field("code").to_pylist():
                problems[code] = problems.get(code, 0) + 1
        if not rows:
            good.write(_empty(answerer, members, partition))
    return Receipt(
        partition=partition.id,
        output=partition.output,
        rows=rows,
        problems=sum(problems.values()),
        problems_by_code=dict(sorted(problems.items())),
        bytes=answers.size(partition.output) or 0,
        seconds=round(time.perf_counter() - started, 3),
    )


def _batches(members: Place, partition: RowPartition) -> Iterator[pa.RecordBatch]:
    """The rows of a partition, a few at a time; of the file no more is read than the row groups they lie in."""
    with pq.ParquetFile(members.at(partition.path), filesystem=members.filesystem, pre_buffer=False) as file:
        groups: list[int] = []
        first = at = 0  # the first row of the groups that are read, and the row that is come to
        stop = file.metadata.num_rows if partition.stop is None else partition.stop
        for group in range(file.metadata.num_row_groups):
            rows = file.metadata.row_group(group).num_rows
            if at + rows > partition.start and at < stop:
                first = first if groups else at
                groups.append(group)
            at += rows
        at = first
        for batch in file.iter_batches(batch_size=BATCH_ROWS, row_groups=groups, use_threads=False):
            low, high = max(partition.start - at, 0), min(stop - at, batch.num_rows)
            at += batch.num_rows
            if high > low:
                yield batch.slice(low, high - low)


def _empty(answerer: Answerer, members: Place, partition: RowPartition) -> pa.Table:
    schema = pq.read_schema(members.at(partition.path), filesystem=members.filesystem)
    return answerer.answer(schema.empty_table()).drop_columns([PROBLEM])


def _with_problem(requests: pa.Table, faults: pa.ChunkedArray, path: str) -> pa.Table:
    """The requests, and in front of them the members of their problem documents, by which they can be grouped."""
    whole = pa.concat_arrays(faults.chunks)
    columns = {field.name: whole.field(field.name) for field in whole.type}
    columns["instance"] = pc.binary_join_element_wise(quote(path), columns["instance"], "")
    names = [name for name in requests.column_names if name not in columns]
    table = pa.table({**columns, **{name: requests.column(name) for name in names}})
    return table.select(["reference", *(name for name in table.column_names if name != "reference")])


class _Writer:
    """Writes a table piece by piece, in row groups that are large and yet bounded; there once it is complete."""

    def __init__(self, place: Place, relative: str, *, if_any: bool = False) -> None:
        self._place, self._relative, self._if_any = place, relative, if_any
        self._held: list[pa.Table] = []
        self._files = ExitStack()
        self._writer: pq.ParquetWriter | None = None

    def __enter__(self) -> "_Writer":
        return self

    def write(self, table: pa.Table) -> None:
        """Add rows."""
        self._held.append(table)
        if sum(t.nbytes for t in self._held) >= GROUP_BYTES or sum(t.num_rows for t in self._held) >= GROUP_ROWS:
            self._write_group()

    def _write_group(self) -> None:
        table = pa.concat_tables(self._held)
        self._held = []
        if self._writer is None:
            stream = self._files.enter_context(self._place.replacing(self._relative))
            self._writer = self._files.enter_context(pq.ParquetWriter(stream, table.schema, compression="zstd"))
        self._writer.write_table(table)

    def __exit__(self, *raised: Any) -> None:
        if raised[0] is None and self._held:
            try:
                self._write_group()
            except BaseException as error:
                self._files.__exit__(type(error), error, error.__traceback__)
                raise
        if raised[0] is None and self._writer is None and self._if_any:
            self._place.remove(self._relative)  # of the same partition before its file was mended
        self._files.__exit__(*raised)
