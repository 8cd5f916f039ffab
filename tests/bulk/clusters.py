"""Clusters of several processes on loopback, and what the command line does with them."""

import json
import os
import resource
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from in_process import PATIENCE_SECONDS

SERVICE = str(Path(__file__).resolve().parents[2] / "service")
_QUIET = {"DASK_LOGGING__DISTRIBUTED": "error", "DASK_DISTRIBUTED__WORKER__DAEMON": "false"}


def environment(**more: str) -> dict[str, str]:
    """The environment of a process of ours."""
    return {**os.environ, "PYTHONPATH": SERVICE, "PYTHONUNBUFFERED": "1", **_QUIET, **more}


class Cluster:
    """A scheduler and workers, each a process."""

    def __init__(self, directory: Path) -> None:
        self._directory = directory
        self._file = directory / "scheduler.json"
        self.processes: list[subprocess.Popen[bytes]] = []

    @property
    def address(self) -> str:
        """The scheduler's address."""

        return str(json.loads(self._file.read_text())["address"])

    def start(self, workers: int, *, file_bytes: int | None = None) -> "Cluster":
        """Start a scheduler and workers; ``file_bytes`` is the longest file that a worker may write."""
        self._file.unlink(missing_ok=True)
        where = ["--scheduler-file", str(self._file)]
        self._begin(["scheduler", "--host", "127.0.0.1", "--port", "0", "--no-dashboard", *where])
        wait_for(self._file.exists)
        for _ in range(workers):
            options = ["--nthreads", "1", "--no-nanny", "--no-dashboard", "--host", "127.0.0.1", "--death-timeout"]
            scratch = ["--local-directory", str(self._directory)]
            self._begin(["worker", *where, *options, "20", *scratch], file_bytes)
        return self

    def _begin(self, words: list[str], file_bytes: int | None = None) -> None:
        def limit() -> None:
            if file_bytes is not None:
                resource.setrlimit(resource.RLIMIT_FSIZE, (file_bytes, file_bytes))

        self.processes.append(
            subprocess.Popen(
                [sys.executable, "-m", "dask", *words],
                env=environment(),
                cwd=self._directory,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                preexec_fn=limit,
            )
        )

    def kill(self, index: int | None = None) -> None:
        """Kill one process, the scheduler being the first, or all."""
        for process in self.processes if index is None else [self.processes[index]]:
            process.send_signal(signal.SIGKILL)
            process.wait()


@contextmanager
def cluster(directory: Path, workers: int, *, file_bytes: int | None = None) -> Iterator[Cluster]:
    """A cluster for as long as it is used."""
    directory.mkdir(parents=True, exist_ok=True)
    started = Cluster(directory)
    try:
        yield started.start(workers, file_bytes=file_bytes)
    finally:
        started.kill()


def wait_for(is_so: Callable[[], bool], seconds: float = 2 * PATIENCE_SECONDS) -> None:
    """Wait until something is so."""
    deadline = time.monotonic() + seconds
    while not is_so():
        assert time.monotonic() < deadline, "it never came about"
        time.sleep(0.01)


def descendants(process_id: int) -> list[int]:
    """The processes below a process."""
    import psutil

    with suppress(psutil.NoSuchProcess):
        return [child.pid for child in psutil.Process(process_id).children(recursive=True)]
    return []
