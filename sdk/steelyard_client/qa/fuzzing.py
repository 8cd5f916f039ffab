"""Schemathesis against a deployed service: does it keep its contract, whatever is sent?"""

import importlib.util
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

from .deployment import Deployment

_KEY_VARIABLE = "STEELYARD_KEY"
_GRACE_SECONDS = 30.0
# What is expected of the service, and which operations are searched how: for the command line of schemathesis too.
CONFIGURATION = Path(__file__).with_name("schemathesis.toml")


def is_installed() -> bool:
    """Whether schemathesis is there."""
    return importlib.util.find_spec("schemathesis") is not None


class Fuzzed(NamedTuple):
    """What schemathesis found: why it failed, if it did; whether it had to be stopped; its JUnit report."""

    failure: str | None
    was_stopped: bool
    report: ElementTree.Element | None


def fuzz(
    deployment: Deployment, *, seconds: float, examples: int, seed: int, directory: Path, method: str | None = None
) -> Fuzzed:
    """Run schemathesis in ``directory``, and stop it after ``seconds``; it then reports what it has seen.

    With ``method`` only operations of that HTTP method are sent. The key goes by the environment, never by the command
    line, which every process of the machine can read.
    """
    report, printed = directory / "schemathesis.xml", directory / "printed.txt"
    command = [
        *(sys.executable, "-m", "schemathesis.cli", "--config-file", str(CONFIGURATION), "run"),
        *(f"{deployment.url}/openapi.json", "--url", deployment.url),
        *("--max-examples", str(examples), "--seed", str(seed), "--workers", "1"),
        *("--rate-limit", f"{max(1, int(deployment.requests_per_second))}/s", "--request-timeout", "30"),
        *("--report", "junit", "--report-junit-path", str(report), "--no-color", "--generation-database", "none"),
    ]
    if method is not None:
        # Links lead to operations of other methods, so that no chain of answers is followed then.
        command += ["--include-method", method, "--phases", "examples,coverage,fuzzing"]
    with printed.open("wb") as output:
        process = subprocess.Popen(  # noqa: S603 - our own interpreter and arguments
            command,
            cwd=directory,
            env={**os.environ, _KEY_VARIABLE: deployment.key},
            stdin=subprocess.DEVNULL,
            stdout=output,
            stderr=subprocess.STDOUT,
        )
        try:
            process.wait(seconds)
            was_stopped = False
        except subprocess.TimeoutExpired:
            was_stopped = True
            _stop(process)
    found = _read(report)
    if was_stopped:
        has_failed = found is not None and next(found.iter("failure"), None) is not None
    else:
        has_failed = process.returncode != 0
    told = printed.read_text(encoding="utf-8", errors="replace").replace(deployment.key, "<key>")
    return Fuzzed(told if has_failed else None, was_stopped, found)


def _read(report: Path) -> ElementTree.Element | None:
    """The report; None where none was written, or whoever wrote it was ended meanwhile."""
    try:
        return ElementTree.parse(report).getroot()  # noqa: S314 - written just now
    except (FileNotFoundError, ElementTree.ParseError):
        return None


def _stop(process: subprocess.Popen[bytes]) -> None:
    """Interrupt it, as a keyboard does, so that it writes its report; end it where that does not help."""
    if os.name == "posix":
        process.send_signal(signal.SIGINT)
    else:
        process.terminate()
    try:
        process.wait(_GRACE_SECONDS)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()
