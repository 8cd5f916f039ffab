"""``steelyard-qa``: is the service at this address the service that its contract describes?"""

import argparse
import re
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

import httpx

from ..environment import KEY_VARIABLE, URL_VARIABLE, service_key, service_url
from ..errors import NotConfigured
from . import fuzzing
from .deployment import Broken, Deployment, OutOfTime, read_operations
from .properties import CHECKS, Run

PASSED, FAILED, UNUSABLE = 0, 1, 2
_LEAST_FUZZING_SECONDS = 3.0
# Characters that XML 1.0 cannot hold.
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


class Outcome(NamedTuple):
    """What became of one check: ``failure`` or ``skipped`` says why, where it did not pass."""

    name: str
    seconds: float
    failure: str | None = None
    skipped: str | None = None


def main(arguments: Sequence[str] | None = None, transport: httpx.BaseTransport | None = None) -> int:
    """Run the checks; 0 if all passed, 1 if one failed, 2 if the service cannot be tested at all."""
    options = _parser().parse_args(arguments)
    try:
        url, key = service_url(options.url), service_key(options.key)
    except NotConfigured as error:
        return _unusable(str(error))
    if not options.no_fuzzing and not fuzzing.is_installed():
        return _unusable("schemathesis is missing: pip install 'steelyard-client[qa]', or give --no-fuzzing")
    deployment = Deployment(
        url, key, seconds=options.seconds, requests_per_second=options.requests_per_second, transport=transport
    )
    try:
        operations = read_operations(deployment.send("GET", "/openapi.json", key=None).json())
    except (Broken, OutOfTime, ValueError, KeyError, TypeError, AttributeError) as error:
        return _unusable(f"{url}/openapi.json cannot be read: {error}")
    print(f"{url}: {len(operations)} operations, {options.seconds:g} s, seed {options.seed}")
    outcomes: list[Outcome] = []
    run = Run(deployment, operations, options.examples, options.seed)
    for check in CHECKS:
        outcomes.append(_outcome(check, run))
        _tell(outcomes[-1])
    suites = [_suite("properties", outcomes)]
    if not options.no_fuzzing:
        outcome, report = _fuzzed(deployment, run)
        outcomes.append(outcome)
        _tell(outcome)
        suites.append(_suite("contract", [outcome]))
        suites += [] if report is None else list(report.iter("testsuite"))
    deployment.close()
    if options.junit is not None:
        _write(options.junit, suites)
    failed = sum(outcome.failure is not None for outcome in outcomes)
    skipped = sum(outcome.skipped is not None for outcome in outcomes)
    passed = len(outcomes) - failed - skipped
    print(f"{passed} passed, {failed} failed, {skipped} skipped; {deployment.sent} requests beside schemathesis's own")
    return FAILED if failed or not passed else PASSED


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="steelyard-qa",
        description="Check a deployed service by its contract and by what must hold for anyone. Every request is one "
        "that any caller could make: nothing is changed or stored, but requests count against the key's quota.",
    )
    parser.add_argument("url", nargs="?", help=f"base URL of the service; by default {URL_VARIABLE}")
    parser.add_argument("--key", help=f"API key; by default {KEY_VARIABLE}, where other users cannot read it")
    parser.add_argument("--junit", type=Path, metavar="FILE", help="write a JUnit XML report")
    parser.add_argument("--seconds", type=_positive, default=120.0, help="for the whole run (%(default)g)")
    parser.add_argument("--examples", type=_count, default=20, help="drawn for each check and operation (%(default)s)")
    parser.add_argument("--requests-per-second", type=_positive, default=20.0, help="sent at most (%(default)g)")
    parser.add_argument("--seed", type=int, default=1, help="of what is drawn (%(default)s)")
    parser.add_argument("--no-fuzzing", action="store_true", help="leave schemathesis out")
    return parser


def _outcome(check: Callable[[Run], None], run: Run) -> Outcome:
    name, started = check.__name__, time.monotonic()
    failure = skipped = None
    try:
        check(run)
    except Broken as error:
        failure = str(error)
    except OutOfTime:
        skipped = "the time was used up; give more --seconds or fewer --examples"
    except (KeyError, TypeError, ValueError, AttributeError, StopIteration) as error:
        # An answer without what the contract promises, in a place that the check relies on.
        failure = f"an answer does not have the form of the contract: {type(error).__name__}: {error}"
    return Outcome(name, time.monotonic() - started, failure, skipped)


def _fuzzed(deployment: Deployment, run: Run) -> tuple[Outcome, ElementTree.Element | None]:
    name, started, left = "schemathesis", time.monotonic(), deployment.seconds_left
    if left < _LEAST_FUZZING_SECONDS:
        # What was asked for and not done is no pass.
        return Outcome(name, 0.0, failure="not run: the time was used up before; give more --seconds"), None
    with tempfile.TemporaryDirectory(prefix="steelyard-qa-") as directory:
        failure, was_stopped, report = fuzzing.fuzz(
            deployment, seconds=left, examples=run.examples, seed=run.seed, directory=Path(directory)
        )
    skipped = "stopped when the time was used up; what was seen by then is right" if was_stopped else None
    return Outcome(name, time.monotonic() - started, failure, None if failure else skipped), report


def _tell(outcome: Outcome) -> None:
    state = "FAILED" if outcome.failure else "skipped" if outcome.skipped else "passed"
    print(f"  {state:7}  {outcome.name.replace('_', ' ')} ({outcome.seconds:.1f} s)")
    if reason := outcome.failure or outcome.skipped:
        print("    " + reason.replace("\n", "\n    "))


def _suite(name: str, outcomes: Sequence[Outcome]) -> ElementTree.Element:
    suite = ElementTree.Element(
        "testsuite",
        name=name,
        tests=str(len(outcomes)),
        failures=str(sum(outcome.failure is not None for outcome in outcomes)),
        errors="0",
        skipped=str(sum(outcome.skipped is not None for outcome in outcomes)),
        time=f"{sum(outcome.seconds for outcome in outcomes):.3f}",
    )
    for outcome in outcomes:
        case = ElementTree.SubElement(
            suite, "testcase", classname=f"steelyard.{name}", name=outcome.name, time=f"{outcome.seconds:.3f}"
        )
        for tag, reason in (("failure", outcome.failure), ("skipped", outcome.skipped)):
            if reason is not None:
                text = _NOT_XML.sub("\ufffd", reason)
                ElementTree.SubElement(case, tag, message=text.splitlines()[0][:200]).text = text
    return suite


def _write(path: Path, suites: Sequence[ElementTree.Element]) -> None:
    root = ElementTree.Element("testsuites", name="steelyard-qa")
    root.extend(suites)
    ElementTree.indent(root)
    path.parent.mkdir(parents=True, exist_ok=True)
    ElementTree.ElementTree(root).write(path, encoding="utf-8", xml_declaration=True)
    print(f"report: {path}")


def _unusable(reason: str) -> int:
    print(f"steelyard-qa: {reason}", file=sys.stderr)
    return UNUSABLE


def _positive(text: str) -> float:
    value = float(text)
    if not 0 < value < float("inf"):
        raise argparse.ArgumentTypeError("must be above 0")
    return value


def _count(text: str) -> int:
    value = int(text)
    if value < 1:
        raise argparse.ArgumentTypeError("must be 1 or more")
    return value
