"""Whatever is killed, full or damaged on the way: in the end the same table, each row once, and its use once."""

import asyncio
import os
import random
import shutil
import signal
import subprocess
import sys
from collections.abc import Awaitable, Callable, Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple, TypeVar

import msgspec
import psutil
import pyarrow as pa
import pyarrow.compute as pc
import pyarrow.dataset as ds
import pyarrow.parquet as pq
import pytest
from bulk.clusters import Cluster, cluster, descendants, environment, wait_for
from bulk.member_rows import invented_members, table
from in_process import PATIENCE_SECONDS
from steelyard.bulk import Answerer
from steelyard.bulk.ledger import OWN_ORGANISATION, CannotCharge, Charge, Ledger
from steelyard.bulk.manifest import AlreadyRunning, OtherRun, locked
from steelyard.bulk.partitions import Job, OtherVersion, Receipt, RowPartition, answer_partition, plan
from steelyard.bulk.places import NoPlace, place_of
from steelyard.bulk.runner import RunAsked, Summary, run
from steelyard.store.keys import Key
from steelyard.store.store import Store, StoreUnavailable

T = TypeVar("T")
COLUMNS = ("verdict", "change.fat_kg", "correction_kcal")
FILES, ROWS = 8, 30
BAD = 3  # rows of each second file


class Quiet:
    """Hears what a run says."""

    def __init__(self) -> None:
        self.said: list[str] = []
        self.done: list[Receipt] = []

    def begin(self, rows: int, rows_done: int) -> None:
        self.rows, self.rows_done = rows, rows_done

    def advance(self, receipt: Receipt) -> None:
        self.done.append(receipt)

    def say(self, text: str) -> None:
        self.said.append(text)


class Folders(NamedTuple):
    """A folder of members, one for answers, and the database of a test."""

    members: Path
    answers: Path
    url: str

    @property
    def job(self) -> Job:
        return Job(str(self.members), str(self.answers), "review_phase", COLUMNS, ("gym",))

    def started(self, *options: str, program: Sequence[str] = ("-m", "steelyard")) -> subprocess.Popen[str]:
        asked = ["--operation", "review_phase", "--columns", ",".join(COLUMNS), "--carry", "gym", "--workers", "2"]
        return subprocess.Popen(
            [sys.executable, *program, "bulk", "run", str(self.members), str(self.answers), *asked, *options],
            env=environment(STEELYARD_DATABASE_URL=self.url, STEELYARD_STORE_TIMEOUT_SECONDS=str(PATIENCE_SECONDS)),
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )

    def finished(self, *options: str, program: Sequence[str] = ("-m", "steelyard")) -> tuple[int, str]:
        process = self.started(*options, program=program)
        said, _ = process.communicate(timeout=10 * PATIENCE_SECONDS)
        return process.returncode, said

    def run(self, asked: RunAsked, watcher: Quiet | None = None, ledger: type[Ledger] = Ledger, **job: Any) -> Summary:
        with ledger(Store(self.url, timeout_seconds=PATIENCE_SECONDS)) as opened:
            opened.prepare(migrate=True)
            return run(msgspec.structs.replace(self.job, **job), asked, opened, watcher or Quiet())

    def receipts(self) -> list[Path]:
        return list((self.answers / "_manifest" / "done").glob("*.json"))

    @property
    def has_begun(self) -> bool:
        """Whether something is done, and not everything."""
        return 0 < len(self.receipts()) < FILES


@pytest.fixture(scope="module")
def original(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Invented members of three gyms in several files and folders, some of their rows with a fault."""
    folder = tmp_path_factory.mktemp("members")
    found, rng = invented_members(FILES * ROWS, seed=190), random.Random(4)
    for file in range(FILES):
        bodies = found[file * ROWS : (file + 1) * ROWS]
        for row in range(BAD if file % 2 else 0):
            bodies[rng.randrange(ROWS // BAD) + row * ROWS // BAD]["profile"]["weight_kg"] = 20.0
        gyms = [rng.choice(["Quarry Lane", "Mill Yard", "Harbour"]) for _ in bodies]
        made = table("review_phase", bodies, gym=gyms)
        references = pa.array([f"member-{file * ROWS + i:05}" for i in range(ROWS)])
        path = folder / f"night {file % 3}" / f"part-{file}.parquet"
        path.parent.mkdir(exist_ok=True)
        pq.write_table(made.set_column(0, "reference", references), path, row_group_size=9)
    return folder


@pytest.fixture(scope="module")
def expected(original: Path) -> pa.Table:
    """What an answerer says of all of them at once."""
    asked = ds.dataset(original).to_table()
    return Answerer("review_phase", columns=COLUMNS, carry=["gym"]).answer(asked).sort_by("reference")


@pytest.fixture
def folders(original: Path, tmp_path: Path) -> Folders:
    shutil.copytree(original, tmp_path / "members")
    return Folders(tmp_path / "members", tmp_path / "answers", f"sqlite+aiosqlite:///{tmp_path}/operator.sqlite3")


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Cluster]:
    """A scheduler and two workers."""
    with cluster(tmp_path_factory.mktemp("cluster"), 2) as started:
        yield started


def on(started: Cluster | None, **more: Any) -> RunAsked:
    return RunAsked(started.address if started else None, 1, 1, 50_000, None)._replace(**more)


def stored(folders: Folders, use: Callable[[Store], Awaitable[T]]) -> T:
    """What the store says, opened for this alone."""

    async def ask() -> T:
        store = Store(folders.url, timeout_seconds=PATIENCE_SECONDS)
        try:
            return await use(store)
        finally:
            await store.close()

    return asyncio.run(ask())


def check(folders: Folders, expected: pa.Table) -> None:
    """The same table, nothing twice and nothing missing, no file half written, and every row charged once."""
    good = expected.filter(pc.is_null(expected.column("problem"))).drop_columns(["problem"])
    found = ds.dataset(folders.answers, exclude_invalid_files=False).to_table().sort_by("reference")
    assert found.equals(good.combine_chunks())
    bad = ds.dataset(folders.answers / "_problems").to_table()
    faulty = expected.filter(pc.is_valid(expected.column("problem")))
    assert sorted(bad.column("reference").to_pylist()) == faulty.column("reference").to_pylist()
    names = [path.name for path in folders.answers.rglob("*") if path.is_file()]
    assert not [name for name in names if "unfinished" in name]
    counts = stored(folders, Store.usage)
    assert {cell.operation_id for cell in counts} == {"review_phase"}
    assert sum(count.units for count in counts.values()) == len(expected)
    assert len(folders.receipts()) == FILES


# Without a fault


def test_a_run_on_a_cluster_of_processes_answers_every_row_once(
    folders: Folders, shared: Cluster, expected: pa.Table
) -> None:
    watcher = Quiet()
    summary = folders.run(on(shared), watcher)
    assert summary.is_complete
    assert (summary.rows, summary.problems, summary.done_before) == (FILES * ROWS, FILES // 2 * BAD, 0)
    assert sum(receipt.rows for receipt in watcher.done) == watcher.rows == FILES * ROWS
    check(folders, expected)
    bad = ds.dataset(folders.answers / "_problems").to_table().to_pylist()
    for row in bad:
        (fault,) = row["errors"]
        assert (row["status"], row["code"], fault["pointer"]) == (400, "SCHEMA_VIOLATION", "#/profile/weight_kg")
        assert row["profile"]["weight_kg"] == 20.0
        path, _, number = row["instance"].partition("#row-")
        source = pq.read_table(folders.members / path.replace("%20", " "))
        assert source.column("reference")[int(number)].as_py() == row["reference"]

    again = folders.run(on(shared), watcher)
    assert again._replace(done_before=0) == summary
    assert again.done_before == FILES
    check(folders, expected)


def test_long_files_are_cut_between_and_within_row_groups(
    folders: Folders, shared: Cluster, expected: pa.Table
) -> None:
    summary = folders.run(on(shared, partition_rows=13))
    assert summary.is_complete
    assert summary.partitions == FILES * 3
    outputs = sorted(path.name for path in folders.answers.rglob("part-0*.parquet"))
    assert outputs == [f"part-0.rows-00000000{start:02}.parquet" for start in (0, 13, 26)]
    good = expected.filter(pc.is_null(expected.column("problem"))).drop_columns(["problem"])
    assert ds.dataset(folders.answers).to_table().sort_by("reference").equals(good.combine_chunks())


def test_the_command_runs_on_this_machine_and_says_how_far_it_is(folders: Folders, expected: pa.Table) -> None:
    code, said = folders.finished()
    assert code == 0, said
    assert said.startswith("240 rows."), "and nothing of the engine's"
    assert "/s, " in said
    assert "12 rows are in" in said
    check(folders, expected)


# Faults


def test_a_worker_is_killed(folders: Folders, expected: pa.Table) -> None:
    process = folders.started()
    wait_for(lambda: folders.has_begun or process.poll() is not None)
    workers = [child for child in descendants(process.pid) if "spawn_main" in " ".join(psutil.Process(child).cmdline())]
    assert len(workers) == 2
    os.kill(workers[0], signal.SIGKILL)
    said, _ = process.communicate(timeout=10 * PATIENCE_SECONDS)
    assert process.returncode == 0, said
    check(folders, expected)


def test_the_run_itself_is_killed(folders: Folders, shared: Cluster, expected: pa.Table) -> None:
    process = folders.started()
    wait_for(lambda: folders.has_begun or process.poll() is not None)
    children = descendants(process.pid)
    process.kill()
    process.wait()
    assert folders.has_begun
    wait_for(lambda: not any(map(psutil.pid_exists, children)))
    code, said = folders.finished("--cluster", shared.address)
    assert code == 0, said
    assert "partitions were done before" in said
    check(folders, expected)


def test_the_scheduler_is_killed(folders: Folders, shared: Cluster, expected: pa.Table, tmp_path: Path) -> None:
    with cluster(tmp_path / "first", 2) as lost:
        process = folders.started("--cluster", lost.address)
        wait_for(lambda: folders.has_begun or process.poll() is not None)
        lost.kill(0)
        said, _ = process.communicate(timeout=10 * PATIENCE_SECONDS)
    assert process.returncode == 1, said
    assert "the cluster is gone" in said
    assert "Traceback" not in said
    assert folders.has_begun
    code, said = folders.finished("--cluster", shared.address)
    assert code == 0, said
    check(folders, expected)


def test_the_disk_is_full(folders: Folders, shared: Cluster, expected: pa.Table, tmp_path: Path) -> None:
    with cluster(tmp_path / "full", 1, file_bytes=4096) as full:
        summary = folders.run(on(full))
    assert not summary.is_complete
    assert len(summary.failed) == FILES
    assert "File too large" in summary.failed[0].reason
    assert {path.name for path in folders.answers.rglob("*") if path.is_file()} == {"run.json", "lock"}
    assert folders.run(on(shared)).is_complete
    check(folders, expected)


@pytest.mark.parametrize("damage", ["cut short", "overwritten", "empty"])
def test_a_partition_is_corrupt(folders: Folders, shared: Cluster, expected: pa.Table, damage: str) -> None:
    path = next(folders.members.rglob("part-3.parquet"))
    whole = path.read_bytes()
    middle = len(whole) // 2
    damaged = {"cut short": whole[:middle], "overwritten": b"\0" * middle + whole[middle:], "empty": b""}[damage]
    path.write_bytes(damaged)
    watcher = Quiet()
    summary = folders.run(on(shared), watcher)
    assert [failed.path for failed in summary.failed] == ["night 0/part-3.parquet"]
    assert any("is tried again" in said for said in watcher.said)
    assert summary.rows == (FILES - 1) * ROWS
    path.write_bytes(whole)
    mended = folders.run(on(shared), watcher)
    assert mended.is_complete
    assert mended.done_before == FILES - 1
    check(folders, expected)


def test_a_table_of_another_kind_is_refused_at_once(folders: Folders, shared: Cluster) -> None:
    path = next(folders.members.rglob("part-3.parquet"))
    pq.write_table(pq.read_table(path).rename_columns({"log": "logs"}), path)
    watcher = Quiet()
    (failed,) = folders.run(on(shared), watcher).failed
    assert "TableRefused: logs is no column of review_phase: did you mean log?" in failed.reason
    assert not any("tried again" in said for said in watcher.said)


def test_the_store_is_away_for_a_while(folders: Folders, shared: Cluster, expected: pa.Table) -> None:
    """What was done is charged later; what was charged, though nobody heard of it, is not charged again."""

    class Away(Ledger):
        calls = 0

        def charge(self, key: Key, charge: Charge) -> None:
            Away.calls += 1
            if Away.calls == 2:
                super().charge(key, charge)
            if Away.calls > 1:
                raise StoreUnavailable("the database did not answer in time")
            super().charge(key, charge)

    summary = folders.run(on(shared), ledger=Away)
    assert summary.uncharged == FILES - 1
    assert not summary.failed
    assert folders.run(on(shared)).is_complete
    check(folders, expected)


def test_answers_that_are_gone_are_made_again(folders: Folders, shared: Cluster, expected: pa.Table) -> None:
    folders.run(on(shared))
    next(folders.answers.rglob("part-2.parquet")).unlink()
    cut = next(folders.answers.rglob("part-4.parquet"))
    cut.write_bytes(cut.read_bytes()[:-9])
    assert folders.run(on(shared)).done_before == FILES - 2
    check(folders, expected)


# What is refused before anything is done


def test_a_folder_belongs_to_one_run(folders: Folders, shared: Cluster) -> None:
    folders.run(on(shared))
    with pytest.raises(OtherRun, match="columns was"):
        folders.run(on(shared), columns=("verdict",))
    with pytest.raises(OtherRun, match="operation was 'review_phase', is 'read_trend'"):
        folders.run(on(shared), operation="read_trend", columns=())
    next(folders.members.rglob("part-1.parquet")).unlink()
    with pytest.raises(OtherRun, match=r"part-1.parquet answers what is no longer"):
        folders.run(on(shared))


def test_a_folder_of_something_else_is_left_alone(folders: Folders) -> None:
    folders.answers.mkdir()
    (folders.answers / "letters.txt").write_text("mine")
    with pytest.raises(OtherRun, match="files of something else"):
        folders.run(on(None))


def test_two_runs_into_one_folder_do_not_meet(folders: Folders) -> None:
    with locked(place_of(str(folders.answers))), pytest.raises(AlreadyRunning):
        folders.run(on(None))


def test_a_cluster_that_is_not_there_is_said(folders: Folders) -> None:
    impatient = "from steelyard.bulk import engine; engine._PATIENCE = '1s'; from steelyard.cli import main; main()"
    code, said = folders.finished("--cluster", "tcp://127.0.0.1:1", program=("-c", impatient))
    assert code == 1
    assert "cannot be reached" in said
    assert "Traceback" not in said


def test_a_worker_of_another_version_refuses(folders: Folders) -> None:
    (first, *_) = plan(place_of(str(folders.members)), rows_each=100)
    with pytest.raises(OtherVersion):
        answer_partition(msgspec.structs.replace(folders.job, model_version="0.0.0"), first)


def test_a_folder_of_members_that_is_not_there_is_said(folders: Folders) -> None:
    """A name mistyped in a nightly job is no night without members."""
    mistyped = folders._replace(members=folders.members.with_name("membres"))
    with pytest.raises(NoPlace, match=r"there is no folder .*membres"):
        mistyped.run(on(None))
    assert not folders.answers.exists()


def test_a_place_that_cannot_be_opened_is_said() -> None:
    with pytest.raises(NoPlace, match="nowhere://"):
        place_of("nowhere://members")


# Whose use it is


def test_use_goes_to_the_key_that_is_named_within_its_quota(folders: Folders, shared: Cluster) -> None:
    async def make(store: Store) -> tuple[str, str]:
        await store.migrate()
        key, _ = await store.create_key("Quarry Lane Gym", ["compute"])
        reader, _ = await store.create_key("Quarry Lane Gym", ["methods"])
        await store.set_key_quota(key.prefix, FILES * ROWS - 1)
        return key.prefix, reader.prefix

    prefix, reader = stored(folders, make)
    with pytest.raises(CannotCharge, match="the quota of the key has 239 left"):
        folders.run(on(shared, key_prefix=prefix))
    with pytest.raises(CannotCharge, match="lacks the scope"):
        folders.run(on(shared, key_prefix=reader))
    with pytest.raises(CannotCharge, match="no usable key"):
        folders.run(on(shared, key_prefix="unknown"))
    stored(folders, lambda store: store.set_key_quota(prefix, FILES * ROWS))
    assert folders.run(on(shared, key_prefix=prefix)).is_complete
    assert [tuple(count) for count in stored(folders, Store.usage).values()] == [(FILES, FILES * ROWS)]


def test_the_operators_own_key_opens_nothing(folders: Folders, shared: Cluster) -> None:
    folders.run(on(shared))
    (key,) = stored(folders, Store.list_keys)
    assert key.organisation == OWN_ORGANISATION
    assert not key.scopes


def test_a_partition_done_twice_leaves_the_same_bytes(folders: Folders) -> None:
    partition: RowPartition = plan(place_of(str(folders.members)), rows_each=100)[1]
    first = answer_partition(folders.job, partition)
    kept = (folders.answers / partition.output).read_bytes()
    second = answer_partition(folders.job, partition)
    assert (folders.answers / partition.output).read_bytes() == kept
    assert msgspec.structs.replace(second, seconds=first.seconds) == first


def test_a_file_without_rows_has_answers_without_rows(folders: Folders) -> None:
    path = next(folders.members.rglob("part-1.parquet"))
    pq.write_table(pq.read_schema(path).empty_table(), path)
    (empty,) = [p for p in plan(place_of(str(folders.members)), rows_each=100) if p.path.endswith("part-1.parquet")]
    receipt = answer_partition(folders.job, empty)
    assert receipt.rows == 0
    assert pq.read_metadata(folders.answers / empty.output).num_rows == 0
