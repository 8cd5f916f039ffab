"""Schemathesis against a deployed service: does it keep its contract, whatever is sent?"""

import importlib.util
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

from .deployment import Deployment, Operation

_KEY_VARIABLE = "STEELYARD_QA_KEY"
# Operations that search take up to a second each: no coverage phase, whose hundreds of cases would each search.
_SEARCHING = ("compare_strategies", "optimise_season")
_GRACE_SECONDS = 30.0

# A body that fits the schema may be refused with 422, since what the rules ask of several fields together cannot be
# written in a schema; and a service that is asked much may say so (429, 503).
_CONFIGURATION = """\
headers = {{ Authorization = "Bearer ${{{variable}}}" }}

[checks.positive_data_acceptance]
expected-statuses = ["2xx", "422", "429", "503"]

[checks.negative_data_rejection]
expected-statuses = ["4xx", "503"]
"""
_WITHOUT_COVERAGE = """
[[operations]]
include-operation-id = "{operation}"
phases.coverage.enabled = false
"""


def is_installed() -> bool:
    """Whether schemathesis is there."""
    return importlib.util.find_spec("schemathesis") is not None


class Fuzzed(NamedTuple):
    """What schemathesis found: why it failed, if it did; whether it had to be stopped; its JUnit report."""

    failure: str | None
    was_stopped: bool
    report: ElementTree.Element | None


def fuzz(
    deployment: Deployment, operations: list[Operation], *, seconds: float, examples: int, seed: int, directory: Path
) -> Fuzzed:
    """Run schemathesis in ``directory``, and stop it after ``seconds``; it then reports what it has seen.

    Streamed operations are left out: OpenAPI cannot describe a body of lines. The key goes by the environment, never
    by the command line, which every process of the machine can read.
    """
    configuration = directory / "schemathesis.toml"
    text = _CONFIGURATION.format(variable=_KEY_VARIABLE)
    text += "".join(_WITHOUT_COVERAGE.format(operation=name) for name in _SEARCHING)
    configuration.write_text(text, encoding="utf-8")
    report, printed = directory / "schemathesis.xml", directory / "printed.txt"
    command = [
        *(sys.executable, "-m", "schemathesis.cli", "--config-file", str(configuration), "run"),
        *(f"{deployment.url}/openapi.json", "--url", deployment.url),
        *("--max-examples", str(examples), "--seed", str(seed), "--workers", "1"),
        *("--rate-limit", f"{max(1, int(deployment.requests_per_second))}/s", "--request-timeout", "30"),
        *("--report", "junit", "--report-junit-path", str(report), "--no-color", "--generation-database", "none"),
    ]
    for operation in operations:
        if operation.is_streamed:
            command += ["--exclude-operation-id", operation.id]
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
    found = ElementTree.parse(report).getroot() if report.is_file() else None  # noqa: S314 - written just now
    if was_stopped:
        has_failed = found is not None and next(found.iter("failure"), None) is not None
    else:
        has_failed = process.returncode != 0
    told = printed.read_text(encoding="utf-8", errors="replace").replace(deployment.key, "<key>")
    return Fuzzed(told if has_failed else None, was_stopped, found)


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
