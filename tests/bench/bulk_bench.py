"""Folders of members through `steelyard bulk run`: rows a second, processors used, memory over time, and sizes.

``python -m tests.bench.bulk_bench [members] [workers ...] [--operation read_trend]`` (by default 100,000 members, one
worker and two, and `review_phase`) invents members in the middle of a phase, each with a log of their own, asks the
operation of all, and compares with one process, by table and by JSON. The rate of the engine against that of one
process is taken in turns, with the engine held open and on rows that neither has seen: a shared machine's pace swings
by a fifth within minutes, and rows seen again are answered faster.
"""

import argparse
import os
import resource
import statistics
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple

import msgspec
import numpy as np
import psutil
import pyarrow as pa
import pyarrow.parquet as pq
from steelyard.bulk import request_schema
from steelyard.bulk.answering import OPERATIONS
from steelyard.bulk.arrow import fitted, values
from steelyard.bulk.engine import engine
from steelyard.bulk.partitions import Job, RowPartition, answer_partition
from steelyard.bulk.shapes import shape_of
from steelyard.garbage import collect_seldom
from steelyard.http.endpoints.batches import Single
from steelyard.http.wire.decoding import BodyDecoder

ROOT = Path(__file__).resolve().parents[2]
COLUMNS = {
    "review_phase": "verdict,probabilities,change,maintenance_kcal,body_fat_fraction,correction_kcal,decision,end_date",
    "read_trend": "as_of_date,is_conclusive,weekly_rate_kg,stall_probability,maintenance_kcal,log_share,composition",
}
FILE_ROWS = 5_000
DAYS = 42
_START = 20_514  # days since 1970 of 2026-03-02, when every phase begins
_SAMPLE = 1_000
_TURNS = 41  # many and short, since a shared machine's pace changes within seconds
_TURN_ROWS = 1_000
_FILES_A_WORKER = 2  # of a turn of the engine; one process does one by table and one by JSON


def members(first: int, count: int, operation: str) -> pa.Table:
    """Invented members as a table of requests: a mini-cut or a gain, four weeks along, after two weeks of log."""
    rng = np.random.default_rng(first)
    schema = request_schema("review_phase")
    asked = {"reference", "gym", *request_schema(operation).names}
    is_cut = rng.random(count) < 0.5
    height = rng.uniform(158, 192, count).round(1)
    weight = (rng.uniform(21.5, 31, count) * (height / 100) ** 2).round(1)
    usual = rng.integers(2100, 3100, count).astype(float)
    planned = np.where(is_cut, usual - 500, usual + 200)
    weeks = np.where(is_cut, 6, 12)
    columns: dict[str, pa.Array] = {
        "reference": pa.array([f"member-{first + i:09}" for i in range(count)]),
        "gym": pa.array([f"gym {i:03}" for i in rng.integers(0, 200, count)]),
        "profile": _struct(
            schema.field("profile").type,
            sex=pa.array(np.where(rng.random(count) < 0.5, "male", "female")),
            age_years=pa.array(rng.integers(19, 60, count).astype(float)),
            height_cm=pa.array(height),
            weight_kg=pa.array(weight),
            activity=_struct(
                schema.field("profile").type.field("activity").type,
                kind=pa.array(["level"] * count),
                level=pa.array(np.where(rng.random(count) < 0.5, "light", "moderate")),
            ),
            training=_struct(
                schema.field("profile").type.field("training").type,
                status=pa.array(["intermediate"] * count),
                resistance_sessions_per_week=pa.array([4.0] * count),
            ),
            body_fat=_struct(
                schema.field("profile").type.field("body_fat").type,
                fat_fraction=pa.array(rng.uniform(0.16, 0.32, count).round(3)),
                method=pa.array(["skinfolds"] * count),
            ),
        ),
        "phase": _struct(
            schema.field("phase").type,
            kind=pa.array(np.where(is_cut, "mini_cut", "gain")),
            start_date=pa.array([_START] * count, pa.int32()).cast(pa.date32()),
            weeks=_list(
                schema.field("phase").type.field("weeks").type,
                weeks,
                intake_kcal=np.repeat(planned, weeks),
                protein_g=np.repeat((2 * weight).round(), weeks),
                carbohydrate_g=np.repeat((0.11 * planned).round(), weeks),
            ),
            maintenance=_struct(
                schema.field("phase").type.field("maintenance").type,
                kcal_per_day=pa.array(usual),
                standard_deviation_kcal=pa.array([120.0] * count),
            ),
        ),
        "log": _log(rng, schema.field("log").type, weight, usual, planned, is_cut),
        "screening": _struct(
            schema.field("screening").type,
            is_pregnant=pa.array([False] * count),
            is_breastfeeding=pa.array([False] * count),
            eating_disorder=pa.array(["none"] * count),
            conditions=pa.array([[]] * count, pa.list_(pa.string())),
            medicines=pa.array([[]] * count, pa.list_(pa.string())),
        ),
    }
    return pa.table({name: column for name, column in columns.items() if name in asked})


def _struct(type_: pa.StructType, **arrays: pa.Array) -> pa.StructArray:
    count = len(next(iter(arrays.values())))
    return pa.StructArray.from_arrays(
        [arrays[f.name].cast(f.type) if f.name in arrays else pa.nulls(count, f.type) for f in type_],
        fields=list(type_),
    )


def _list(type_: pa.ListType, lengths: Any, **columns: Any) -> pa.ListArray:
    items = _struct(type_.value_type, **{name: pa.array(column) for name, column in columns.items()})
    return pa.ListArray.from_arrays(pa.array(np.concatenate(([0], np.cumsum(lengths))), pa.int32()), items)


def _log(rng: Any, type_: pa.StructType, weight: Any, usual: Any, planned: Any, is_cut: Any) -> pa.StructArray:
    count = len(weight)
    day = np.arange(DAYS)[None, :]
    since = np.maximum(0, day - 14)
    kilograms = (
        weight[:, None] + np.where(is_cut, -0.07, 0.02)[:, None] * since + rng.normal(0, 0.5, (count, DAYS))
    ).round(1)
    eaten = (np.where(day < 14, usual[:, None], planned[:, None]) * rng.normal(1, 0.08, (count, DAYS))).round()
    dates = np.broadcast_to(_START - 14 + day, (count, DAYS)).astype(np.int32)
    weighed, logged = rng.random((count, DAYS)) < 0.85, rng.random((count, DAYS)) < 0.85
    return _struct(
        type_,
        weights=_list(type_.field("weights").type, weighed.sum(1), date=dates[weighed], weight_kg=kilograms[weighed]),
        intakes=_list(
            type_.field("intakes").type,
            logged.sum(1),
            date=dates[logged],
            intake_kcal=eaten[logged],
            carbohydrate_g=(0.11 * eaten[logged]).round(),
        ),
    )


class Measured(NamedTuple):
    """One run."""

    rows: int
    workers: int
    seconds: float
    worker_seconds: float  # of processor, of all workers
    driver_seconds: float
    memory_mib: list[float]  # of the largest worker, in ten parts of the run
    answers_mib: float


def run(folder: Path, answers: Path, rows: int, workers: int, operation: str) -> Measured:
    """One run by the command, watched."""
    words = ["bulk", "run", str(folder), str(answers), "--operation", operation, "--columns", COLUMNS[operation]]
    words += ["--carry", "gym", "--workers", str(workers), "--partition-rows", str(FILE_ROWS)]
    started = time.perf_counter()
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    process = psutil.Popen(
        [sys.executable, "-m", "steelyard", *words],
        env=os.environ
        | {
            "PYTHONPATH": str(ROOT / "service"),
            "STEELYARD_DATABASE_URL": f"sqlite+aiosqlite:///{answers}.sqlite3",
            "STEELYARD_STORE_TIMEOUT_SECONDS": "60",
        },
    )
    seconds: dict[int, float] = {}
    memory: list[tuple[float, float]] = []
    while process.poll() is None:
        largest = 0.0
        for child in _workers(process):
            with suppress(psutil.Error):
                times = child.cpu_times()
                seconds[child.pid] = times.user + times.system
                largest = max(largest, child.memory_info().rss / 2**20)
        memory.append((time.perf_counter() - started, largest))
        time.sleep(0.25)
    if process.returncode:
        raise RuntimeError(f"the run ended with {process.returncode}")
    took = time.perf_counter() - started
    usage = resource.getrusage(resource.RUSAGE_CHILDREN)
    parts = [
        max((mib for at, mib in memory if part * took <= 10 * at < (part + 1) * took), default=0.0)
        for part in range(10)
    ]
    size = sum(path.stat().st_size for path in answers.rglob("*.parquet")) / 2**20
    total = sum(seconds.values())
    return Measured(rows, workers, took, total, _seconds(usage) - _seconds(before) - total, parts, size)


def _seconds(usage: resource.struct_rusage) -> float:
    return usage.ru_utime + usage.ru_stime


def _workers(process: psutil.Popen) -> Iterator[psutil.Process]:
    with suppress(psutil.Error):
        for child in process.children(recursive=True):
            with suppress(psutil.Error):
                if "spawn_main" in " ".join(child.cmdline()):
                    yield child


def _bodies(table: pa.Table, name: str) -> list[bytes]:
    """The requests of a table as JSON."""
    body_type = OPERATIONS[name].body_type
    assert body_type is not None
    shape = shape_of(body_type)
    asked = pa.StructArray.from_arrays(
        [table.column(field.name).combine_chunks() for field in shape.fields if field.name in table.column_names],
        names=[field.name for field in shape.fields if field.name in table.column_names],
    )
    return [msgspec.json.encode(body) for body in values(fitted(asked, shape, name), shape)]


def _by_json(name: str) -> Single:
    operation = OPERATIONS[name]
    assert operation.body_type is not None
    return Single(BodyDecoder(operation.body_type).decode, operation.compute, operation.body_type, 1)


def by_json_bytes(table: pa.Table, name: str) -> tuple[float, float]:
    """The bytes of a request and of an answer by JSON."""
    bodies, single = _bodies(table.slice(0, _SAMPLE), name), _by_json(name)
    answers = [single.answer(body) for body in bodies]
    return sum(map(len, bodies)) / len(bodies), sum(map(len, answers)) / len(answers)


def in_turns(directory: Path, name: str, workers: int) -> None:
    """The engine's rate against that of one process by table and by JSON, by the clock, in turns on fresh rows."""
    folder = directory / "turns"
    folder.mkdir()
    a_turn = _FILES_A_WORKER * workers
    files = [
        RowPartition(f"{i:032}", f"{i}.parquet", 0, _TURN_ROWS, f"{i}.parquet")
        for i in range(_TURNS * (a_turn + 2) + a_turn)
    ]
    for i, each in enumerate(files):
        pq.write_table(members(10**8 + i * _TURN_ROWS, _TURN_ROWS, name), folder / each.path, compression="zstd")
    job = Job(str(folder), str(directory / "turned"), name, tuple(COLUMNS[name].split(",")), ("gym",))
    Path(job.answers).mkdir()
    work, single = partial(answer_partition, job), _by_json(name)
    left = iter(files)

    def clocked(count: int, do: Any) -> float:
        began = time.perf_counter()
        do()
        return (time.perf_counter() - began) / (count * _TURN_ROWS) * 1000

    by_table, by_json, seconds = list[float](), list[float](), list[tuple[float, float, float]]()
    with engine(work, cluster=None, workers=workers) as running:
        for turn in range(_TURNS + 1):
            some = [next(left) for _ in range(a_turn)]
            both = clocked(len(some), lambda some=some: list(running.outcomes(some, lambda _, __: False)))
            if not turn:
                continue  # the workers have imported all by now
            one = next(left)
            table = clocked(1, lambda one=one: work(one))
            bodies = _bodies(pq.read_table(folder / next(left).path), name)
            text = clocked(1, lambda bodies=bodies: [single.answer(body) for body in bodies])
            by_table.append(table / workers / both)
            by_json.append(text / workers / both)
            seconds.append((both, table, text))
    both, table, text = (statistics.median(each) for each in zip(*seconds, strict=True))
    print(
        f"ms a row by the clock: {both:.3f} by {workers} workers; one process: {table:.3f} by table, {text:.3f} by JSON"
    )
    for what, found in (("table", by_table), ("JSON", by_json)):
        low, middle, high = statistics.quantiles(found, n=4)
        print(
            f"  rate of {workers} workers over {workers} times that of one process by {what}: "
            f"{middle:.3f} (middle half {low:.3f} to {high:.3f})",
            flush=True,
        )


def main(count: int, workers: list[int], operation: str) -> None:
    """Measure and print."""
    collect_seldom()  # as a worker does, and a server
    with tempfile.TemporaryDirectory() as directory:
        in_turns(Path(directory), operation, max(workers))
        folder = Path(directory) / "members"
        folder.mkdir()
        began = time.process_time()
        for first in range(0, count, FILE_ROWS):
            path = folder / f"part-{first // FILE_ROWS:05}.parquet"
            table = members(first, min(FILE_ROWS, count - first), operation)
            pq.write_table(table, path, compression="zstd")
        size = sum(path.stat().st_size for path in folder.iterdir())
        print(
            f"{count:,} members in {size / 2**20:.1f} MiB, invented in {time.process_time() - began:.0f} s", flush=True
        )
        asked, answered = by_json_bytes(pq.read_table(folder / "part-00000.parquet"), operation)
        print(
            f"bytes a row: asked {asked:.0f} by JSON, {size / count:.0f} by Parquet; answered {answered:.0f} by JSON",
            flush=True,
        )
        for number in workers:
            m = run(folder, Path(directory) / f"answers-{number}", count, number, operation)
            print(f"{m.workers} workers: {m.seconds:.0f} s, {m.rows / m.seconds:.0f} rows/s by the clock")
            print(
                f"  workers {1000 * m.worker_seconds / m.rows:.3f} ms of processor a row, "
                f"driver {1000 * m.driver_seconds / m.rows:.3f}"
            )
            print(
                f"  answers {m.answers_mib * 2**20 / m.rows:.0f} bytes a row by Parquet, memory of a worker [MiB] "
                f"{[round(mib) for mib in m.memory_mib]}",
                flush=True,
            )


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("members", type=int, nargs="?", default=100_000)
    parser.add_argument("workers", type=int, nargs="*", default=[1, 2])
    parser.add_argument("--operation", choices=list(COLUMNS), default="review_phase")
    words = parser.parse_args()
    main(words.members, words.workers, words.operation)
