"""Start the service of this checkout on a free loopback port, with a temporary database and a key; stop it after."""

import contextlib
import os
import queue
import re
import signal
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import httpx

ROOT = Path(__file__).resolve().parents[2]
START_SECONDS = 30.0
STOP_SECONDS = 10.0

_KEY = re.compile(r"Authorization: Bearer ([\w-]+\.[\w-]+)")
_URL = re.compile(r"http://127\.0\.0\.1:\d+")


class ServiceDown(Exception):  # noqa: N818 - says what happened
    """The service did not start; the text has what it printed."""


class LocalService(NamedTuple):
    """A running service: its base URL and a key of all scopes."""

    url: str
    key: str


@contextlib.contextmanager
def local_service(**settings: str) -> Iterator[LocalService]:
    """The service in a process of its own, stopped on the way out, whatever happens inside.

    ``settings`` are the service's, as ``body_seconds="1"`` for ``STEELYARD_BODY_SECONDS``.
    """
    with tempfile.TemporaryDirectory(prefix="steelyard-") as directory:
        ours = {name: value for name, value in os.environ.items() if not name.startswith("STEELYARD_")}
        search = [str(ROOT / "service"), *filter(None, [ours.get("PYTHONPATH")])]
        environment = {
            **ours,
            "PYTHONPATH": os.pathsep.join(search),
            "PYTHONUNBUFFERED": "1",
            "STEELYARD_DATABASE_URL": f"sqlite+aiosqlite:///{directory}/operator.sqlite3",
            **{f"STEELYARD_{name.upper()}": value for name, value in settings.items()},
        }
        process = subprocess.Popen(
            [sys.executable, "-m", "steelyard", "serve", "--development", "--port", "0"],
            cwd=directory,
            env=environment,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            start_new_session=True,  # so that its workers can be ended with it
        )
        try:
            service = _read_greeting(process)
            _wait_until_ready(service.url, process)
            yield service
        finally:
            _stop(process)


def _read_greeting(process: subprocess.Popen[str]) -> LocalService:
    """The URL and the key from what the service prints; its output is read on for as long as it lives."""
    lines: queue.Queue[str | None] = queue.Queue()

    def read() -> None:
        assert process.stdout is not None
        for line in process.stdout:
            lines.put(line)
        lines.put(None)

    threading.Thread(target=read, daemon=True).start()
    text, deadline = "", time.monotonic() + START_SECONDS
    while True:
        key, url = _KEY.search(text), _URL.search(text)
        if key and url:
            return LocalService(url[0], key[1])
        try:
            line = lines.get(timeout=max(0.0, deadline - time.monotonic()))
        except queue.Empty:
            raise ServiceDown(f"the service did not start within {START_SECONDS:g} s:\n{text}") from None
        if line is None:
            raise ServiceDown(f"the service ended at once:\n{text}")
        text += line


def _wait_until_ready(url: str, process: subprocess.Popen[str]) -> None:
    deadline = time.monotonic() + START_SECONDS
    with httpx.Client(transport=httpx.HTTPTransport(), timeout=2.0) as http:  # never through a proxy
        while time.monotonic() < deadline and process.poll() is None:
            with contextlib.suppress(httpx.HTTPError):
                if http.get(f"{url}/health/ready").is_success:
                    return
            time.sleep(0.05)
    raise ServiceDown("the service did not become ready")


def _stop(process: subprocess.Popen[str]) -> None:
    process.send_signal(signal.SIGINT)
    try:
        process.wait(STOP_SECONDS)
    except subprocess.TimeoutExpired:
        with contextlib.suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGKILL)
        process.wait()
    if process.stdout is not None:
        process.stdout.close()
