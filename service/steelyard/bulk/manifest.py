"""The checkpoint of a run, beside its answers: what is asked, and a receipt for each partition that is done.

``_manifest/run.json`` says what the run is; ``_manifest/done/<partition>.json`` that a partition is done, and is
written after its answers. So a run may end at any moment: what has no receipt is done again, into the same files.
"""

import fcntl
import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import UTC, datetime
from hashlib import sha256
from uuid import uuid4

import msgspec
from pyarrow import fs

from steelyard.http.wire.request_id import CONTRACT_VERSION
from steelyard.science.register import MODEL_VERSION
from steelyard.store.store import FlushId

from .answering import LAYOUT_VERSION
from .partitions import SUFFIX, Job, Receipt, RowPartition
from .places import Place

FOLDER = "_manifest"
_RUN = f"{FOLDER}/run.json"
_DONE = f"{FOLDER}/done"


class Run(msgspec.Struct, frozen=True, kw_only=True):
    """What a folder of answers is: one question to one version of the service."""

    run_id: str
    begun_time: datetime
    operation: str
    columns: tuple[str, ...]
    carry: tuple[str, ...]
    partition_rows: int
    key_prefix: str
    layout_version: str = LAYOUT_VERSION
    contract_version: str = CONTRACT_VERSION
    model_version: str = MODEL_VERSION


class OtherRun(ValueError):  # noqa: N818 - named for what it is about
    """The folder holds the answers of another run."""


class Manifest:
    """The checkpoint in a folder of answers."""

    def __init__(self, answers: Place, run: Run) -> None:
        self._answers = answers
        self.run = run

    @classmethod
    def opened(cls, answers: Place, job: Job, *, partition_rows: int, key_prefix: str) -> "Manifest":
        """The checkpoint of a run that is gone on with, or a new one. Raises ``OtherRun``."""
        asked = Run(
            run_id=uuid4().hex,
            begun_time=datetime.now(UTC),
            operation=job.operation,
            columns=job.columns,
            carry=job.carry,
            partition_rows=partition_rows,
            key_prefix=key_prefix,
        )
        if answers.size(_RUN) is None:
            if next(answers.files(""), None) is not None:
                raise OtherRun(f"{answers.name} holds files of something else; name a folder that is empty or new")
            answers.write(_RUN, msgspec.json.format(msgspec.json.encode(asked)))
            return cls(answers, asked)
        known = msgspec.json.decode(answers.read(_RUN), type=Run)
        same = msgspec.structs.replace(asked, run_id=known.run_id, begun_time=known.begun_time)
        if known != same:
            names = [name for name in Run.__struct_fields__ if getattr(known, name) != getattr(same, name)]
            told = "; ".join(f"{name} was {getattr(known, name)!r}, is {getattr(same, name)!r}" for name in names)
            raise OtherRun(f"{answers.name} holds the answers of another run ({told}); name another folder")
        return cls(answers, known)

    def receipts(self, partitions: Sequence[RowPartition]) -> dict[str, Receipt]:
        """The receipts of those partitions that are done, and whose answers are there as they were written.

        Raises ``OtherRun`` where there are answers of partitions that are no longer asked about.
        """
        asked = {partition.id: partition for partition in partitions}
        outputs = {partition.output for partition in partitions}
        if len(outputs) < len(partitions):
            raise OtherRun("two files of requests would be answered into one: a name ends like that of a cut file")
        sizes = {self._answers.relative(info): info.size for info in self._answers.files(SUFFIX)}
        if strange := sorted(sizes.keys() - outputs):
            raise OtherRun(f"{strange[0]} answers what is no longer among the requests; name another folder of answers")
        found = {}
        selector = fs.FileSelector(self._answers.at(_DONE), allow_not_found=True)
        for info in self._answers.filesystem.get_file_info(selector):
            id_ = info.base_name.removesuffix(".json")
            if id_ in asked:
                receipt = msgspec.json.decode(self._answers.read(f"{_DONE}/{id_}.json"), type=Receipt)
                if sizes.get(receipt.output) == receipt.bytes:
                    found[id_] = receipt
        return found

    def flush_id(self, partition: str) -> FlushId:
        """The id under which the use of a partition is written: the ledger adds it once, whoever sends it again."""
        return FlushId(sha256(f"{self.run.run_id}/{partition}".encode()).hexdigest()[:32], 1)


def write_receipt(answers: Place, receipt: Receipt) -> None:
    """Say that a partition is done, or that it is charged."""
    answers.write(f"{_DONE}/{receipt.partition}.json", msgspec.json.encode(receipt))


class AlreadyRunning(RuntimeError):  # noqa: N818 - named for what it is about
    """Another process runs into the same folder."""


@contextmanager
def locked(answers: Place) -> Iterator[None]:
    """Hold a folder for this process alone, where it is on a disk; a lock ends with its process, however that ends."""
    if not answers.is_local:
        yield
        return
    os.makedirs(answers.at(FOLDER), exist_ok=True)
    with open(answers.at(f"{FOLDER}/lock"), "w") as file:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            raise AlreadyRunning(f"another run writes into {answers.name}; wait until it has ended") from None
        yield
