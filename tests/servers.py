"""Real servers for the tests: PostgreSQL, and one that speaks Valkey's protocol. Loopback, fresh, gone afterwards.

Where a server's programs are missing, the tests that need it are skipped; with ``TEST_SERVICES_REQUIRED=1`` in the
environment they fail instead.
"""

import asyncio
import contextlib
import glob
import os
import shutil
import signal
import socket
import subprocess
import tempfile
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from itertools import count
from pathlib import Path
from typing import Any

import asyncpg
import pytest

START_SECONDS = 30.0
REQUIRED = os.environ.get("TEST_SERVICES_REQUIRED") == "1"

_numbers = count(1)


def free_port() -> int:
    """A loopback port that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class Server:
    """A server's process, which a test may stop, freeze and start again on the same port and data."""

    def __init__(self, command: list[str], port: int, is_ready: Callable[[int], bool], **options: Any) -> None:
        self.port = port
        self._command = command
        self._is_ready = is_ready
        self._options = options
        self._process: subprocess.Popen[bytes] | None = None

    def start(self) -> None:
        """Start it, and wait until it answers."""
        self._process = subprocess.Popen(
            self._command,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
            **self._options,
        )
        deadline = time.monotonic() + START_SECONDS
        while not self._is_ready(self.port):
            assert self._process.poll() is None, f"{self._command[0]} ended at once"
            assert time.monotonic() < deadline, f"{self._command[0]} did not start"
            time.sleep(0.02)

    def stop(self) -> None:
        """End it at once, as a crash would."""
        if self._process is not None:
            self._signal(signal.SIGKILL)
            self._process.wait()
            self._process = None

    def freeze(self) -> None:
        """Let it hang: connections stay open, and nothing is answered."""
        self._signal(signal.SIGSTOP)

    def thaw(self) -> None:
        """Let it go on."""
        self._signal(signal.SIGCONT)

    def _signal(self, number: int) -> None:
        assert self._process is not None
        pid = self._process.pid
        children = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
        for each in (pid, *map(int, children)):
            with contextlib.suppress(ProcessLookupError):
                os.kill(each, number)


def missing(what: str) -> None:
    """Skip the test, or fail where the servers are required."""
    if REQUIRED:
        pytest.fail(f"{what} is not installed, and TEST_SERVICES_REQUIRED=1", pytrace=False)
    pytest.skip(f"{what} is not installed")


def _postgresql_program(name: str) -> str | None:
    return shutil.which(name) or max(glob.glob(f"/usr/lib/postgresql/*/bin/{name}"), default=None)


@contextlib.contextmanager
def postgresql() -> Iterator[Server]:
    """A PostgreSQL server on a fresh cluster, without a password; skips the test where it is not installed."""
    initdb, postgres = _postgresql_program("initdb"), _postgresql_program("postgres")
    if not (initdb and postgres):
        missing("PostgreSQL")
    assert initdb is not None
    assert postgres is not None
    # It refuses to run as root; Debian's package makes a user for it.
    options: dict[str, Any] = {"user": "postgres", "group": "postgres", "extra_groups": []} if os.getuid() == 0 else {}
    # Not a directory of pytest's, which another user may not enter.
    with tempfile.TemporaryDirectory(prefix="steelyard-pg-", ignore_cleanup_errors=True) as directory:
        if options:
            shutil.chown(directory, "postgres", "postgres")
        data = str(Path(directory, "data"))
        subprocess.run(
            [initdb, "-D", data, "-U", "steelyard", "--auth=trust", "--no-sync", "--encoding=UTF8", "--locale=C"],
            check=True,
            cwd=directory,
            capture_output=True,
            **options,
        )
        port = free_port()
        fast = ["-c", "fsync=off", "-c", "max_connections=40", "-c", "shared_buffers=16MB"]
        listen = ["-c", "listen_addresses=127.0.0.1", "-p", str(port), "-k", directory]
        server = Server([postgres, "-D", data, *listen, *fast], port, _postgresql_is_ready, cwd=directory, **options)
        try:
            server.start()
            yield server
        finally:
            server.stop()


def new_database(server: Server) -> str:
    """The service's URL of a fresh database."""
    name = f"operator_{next(_numbers)}"
    _query(server.port, f"CREATE DATABASE {name} TEMPLATE template0")
    return f"postgresql+asyncpg://steelyard@127.0.0.1:{server.port}/{name}"


def run_sql(server: Server, *statements: str) -> None:
    """Run statements as the server's owner, each by itself."""
    for statement in statements:
        _query(server.port, statement)


def _postgresql_is_ready(port: int) -> bool:
    try:
        _query(port, "SELECT 1")
    except (OSError, asyncpg.PostgresError):
        return False
    return True


def _query(port: int, statement: str) -> None:
    async def run() -> None:
        connection = await asyncpg.connect(host="127.0.0.1", port=port, user="steelyard", database="postgres")
        try:
            await connection.execute(statement)
        finally:
            await connection.close()

    with ThreadPoolExecutor(1) as elsewhere:  # the caller's thread may have a running loop already
        elsewhere.submit(asyncio.run, run()).result()


@contextlib.contextmanager
def valkey() -> Iterator[Server]:
    """A Valkey or Redis server that keeps nothing on disk; skips the test where neither is installed."""
    program = shutil.which("valkey-server") or shutil.which("redis-server")
    if program is None:
        missing("Valkey or Redis")
    assert program is not None
    with tempfile.TemporaryDirectory(prefix="steelyard-valkey-") as directory:
        port = free_port()
        nothing_kept = ["--save", "", "--appendonly", "no"]
        command = [program, "--bind", "127.0.0.1", "--port", str(port), *nothing_kept]
        server = Server(command, port, _valkey_is_ready, cwd=directory)
        try:
            server.start()
            yield server
        finally:
            server.stop()


def _valkey_is_ready(port: int) -> bool:
    try:
        with socket.create_connection(("127.0.0.1", port), timeout=1.0) as connection:
            connection.sendall(b"PING\r\n")
            return connection.recv(16).startswith(b"+PONG")
    except OSError:
        return False
