"""Servers under measurement: started on loopback in their own process, watched through /proc, and stopped."""

import contextlib
import importlib.util
import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from steelyard.cli.bounded_http import BoundedHttp

ROOT = Path(__file__).resolve().parents[2]
SERVED_BY = "uvicorn"  # what `steelyard serve` starts, with httptools and uvloop
FACTORY = "tests.bench.bench_service:create"
# Rates are counted but never reached. Without the line that is logged for each request, which would weigh as much in
# the empty request as in the others and so raise every share of it.
UNHINDERED = {"rate_limit_requests": "1000000000", "log_requests": "false"}
_START_SECONDS = 30.0
_TICK = os.sysconf("SC_CLK_TCK")
_PAGE = os.sysconf("SC_PAGE_SIZE")


class Running(NamedTuple):
    """A started server: where it listens, and the process that answers."""

    port: int
    worker: int  # process id
    token: str

    def cpu_seconds(self) -> float:
        """Processor time the worker has used."""
        fields = Path(f"/proc/{self.worker}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / _TICK

    def resident_mib(self) -> float:
        """Memory of the worker that is its own: resident pages less those shared with other processes."""
        fields = Path(f"/proc/{self.worker}/statm").read_text().split()
        return (int(fields[1]) - int(fields[2])) * _PAGE / 2**20


def commands() -> dict[str, list[str]]:
    """Command line of each ASGI server, by name; all with one worker, no access log and connections that stay open.

    The first is what `steelyard serve` starts. Of the others, those that are installed.
    """
    uvicorn = ["uvicorn", "--factory", "--no-access-log", "--log-level", "error", "--ws", "none", "--no-proxy-headers"]
    uvicorn += ["--timeout-keep-alive", "600"]
    bounded = f"{BoundedHttp.__module__}:{BoundedHttp.__name__}"
    found = {
        SERVED_BY: [*uvicorn, "--http", bounded, "--loop", "uvloop"],
        "uvicorn, h11 and asyncio": [*uvicorn, "--http", "h11", "--loop", "asyncio"],
    }
    if importlib.util.find_spec("granian"):
        granian = ["granian", "--interface", "asgi", "--factory", "--no-ws", "--workers", "1", "--log-level", "error"]
        found["granian, uvloop"] = [*granian, "--loop", "uvloop"]
        found["granian, asyncio"] = [*granian, "--loop", "asyncio"]
    return found


@contextlib.contextmanager
def serving(command: list[str], directory: Path, **settings: str) -> Iterator[Running]:
    """Start a server on a fresh store in ``directory``; on two cores or more it has one to itself.

    ``settings`` are the service's, such as ``rate_limit_requests="0"``.
    """
    url = f"sqlite+aiosqlite:///{directory}/bench.sqlite3"
    token = _key(url)
    port = _free_port()
    program = Path(sys.executable).parent / command[0]
    process = subprocess.Popen(
        [str(program), *command[1:], "--host", "127.0.0.1", "--port", str(port), FACTORY],
        cwd=ROOT,
        env=_environment(url) | {f"STEELYARD_{name.upper()}": value for name, value in settings.items()},
        stdin=subprocess.DEVNULL,
        start_new_session=True,  # its signals are its own
    )
    try:
        _wait(port, process)
        worker = _worker(process.pid)
        if (os.cpu_count() or 1) > 1:
            for thread in os.listdir(f"/proc/{worker}/task"):
                os.sched_setaffinity(int(thread), {0})
        yield Running(port, worker, token)
    finally:
        process.send_signal(signal.SIGTERM)
        try:
            process.wait(_START_SECONDS)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()


@contextlib.contextmanager
def own_core() -> Iterator[None]:
    """Keep the load generator off the server's core."""
    cores = os.sched_getaffinity(0)
    if len(cores) > 1:
        os.sched_setaffinity(0, cores - {0})
    try:
        yield
    finally:
        os.sched_setaffinity(0, cores)


def _environment(url: str) -> dict[str, str]:
    paths = [str(ROOT), str(ROOT / "service")]
    kept = {name: value for name, value in os.environ.items() if not name.startswith("STEELYARD_")}
    return {**kept, "PYTHONPATH": os.pathsep.join(paths), "STEELYARD_DATABASE_URL": url}


def _key(url: str) -> str:
    """A key of a fresh store, as an operator makes one."""
    command = [sys.executable, "-m", "steelyard", "keys", "create", "--organisation", "Bench"]
    made = subprocess.run(command, check=True, capture_output=True, text=True, env=_environment(url), cwd=ROOT)
    return made.stdout.split()[-1]


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def _wait(port: int, process: subprocess.Popen[bytes]) -> None:
    until = time.monotonic() + _START_SECONDS
    while time.monotonic() < until:
        if process.poll() is not None:
            raise RuntimeError(f"the server ended with {process.returncode} before it listened")
        try:
            socket.create_connection(("127.0.0.1", port), timeout=1).close()
        except OSError:
            time.sleep(0.05)
        else:
            time.sleep(1.0)  # granian's main process listens before its worker has loaded the application
            return
    raise RuntimeError("the server did not start")


def _worker(parent: int) -> int:
    """The process that answers: the last child that is a Python worker, or the server itself without one."""
    children = Path(f"/proc/{parent}/task/{parent}/children").read_text().split()
    workers = [int(child) for child in children if b"resource_tracker" not in _command(int(child))]
    return workers[-1] if workers else parent


def _command(process: int) -> bytes:
    return Path(f"/proc/{process}/cmdline").read_bytes()
