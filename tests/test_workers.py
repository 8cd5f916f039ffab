"""The processes of ``steelyard serve``. What becomes of them under load: ``tests/chaos``."""

import os
import subprocess
import sys
import textwrap
from pathlib import Path

from raw_http import PATIENCE_SECONDS

ROOT = Path(__file__).resolve().parents[1]


def supervised(run: str, before: str = "") -> subprocess.CompletedProcess[str]:
    """Let two workers run ``run`` in a process of its own."""
    program = f"""
        import os, signal, socket, sys, threading, time
        from steelyard.cli.workers import Workers
        {before}
        def run():
            {run}
        sys.exit(Workers(2, socket.socket(), run, end_within_seconds=1.0).serve())
    """
    return subprocess.run(
        [sys.executable, "-c", textwrap.dedent(program)],
        env=os.environ | {"PYTHONPATH": str(ROOT / "service")},
        capture_output=True,
        text=True,
        timeout=PATIENCE_SECONDS,
    )


def test_a_worker_that_cannot_start_ends_the_whole() -> None:
    ended = supervised("raise RuntimeError('no such table')")
    assert ended.returncode == 1
    assert "no such table" in ended.stderr


def test_a_worker_that_does_not_end_is_killed() -> None:
    told = "threading.Timer(0.5, os.kill, (os.getpid(), signal.SIGTERM)).start()"
    ended = supervised("signal.signal(signal.SIGTERM, signal.SIG_IGN); time.sleep(600)", told)
    assert ended.returncode == 0
