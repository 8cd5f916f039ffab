"""How many small faults the tests notice: ``python -m tests.mutants --count 200``, written to ``var/mutants.md``.

Cosmic Ray makes the faults (an operator, a comparison, a number, ...), one at a time, in a copy of the package. A fault
is sampled from all that could be made in the science and the answers, the same ones for the same ``--seed``. It is
killed by the tests of its room, or else, where it moves any answer to the examples and to random requests, by the wider
tests; a fault that no test notices and that moves no answer changes nothing, and counts for nothing.
"""

import argparse
import json
import os
import random
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from cosmic_ray.ast import get_ast
from cosmic_ray.mutating import mutate_code
from cosmic_ray.plugins import get_operator, operator_names

ROOT = Path(__file__).resolve().parents[1]
PACKAGES = ("science", "answers")
# Faults that leave nothing to test: text operators on annotations, and exceptions that nobody raises.
_LEFT_OUT = ("BitOr", "BitAnd", "BitXor", "Shift", "ExceptionReplacer", "Variable", "RemoveDecorator")
_PATIENCE_SECONDS = 900
_DIGEST = """
import hashlib, json, random, sys
import msgspec
from steelyard.science.numbers.twins import use_compiled
use_compiled(False)
from mutants_answers import answers
print(hashlib.sha256(json.dumps(list(answers()), sort_keys=True).encode()).hexdigest())
"""


class Fault(NamedTuple):
    """One fault: the file below the package, the operator, and which of its occurrences."""

    file: str
    operator: str
    occurrence: int


def faults(package: Path) -> Iterator[Fault]:
    """All faults that could be made."""
    names = [name for name in operator_names() if not any(part in name for part in _LEFT_OUT)]
    operators = {name: get_operator(name)() for name in names}
    for path in sorted(p for room in PACKAGES for p in (package / room).rglob("*.py") if p.stem != "__init__"):
        nodes = list(_nodes(get_ast(path.read_text(encoding="utf-8"))))
        for name, operator in operators.items():
            found = sum(1 for node in nodes for _ in operator.mutation_positions(node))
            yield from (Fault(str(path.relative_to(package)), name, i) for i in range(found))


def _nodes(node: object) -> Iterator[object]:
    yield node
    for child in getattr(node, "children", ()):
        yield from _nodes(child)


class Copy:
    """A copy of the tree in which one fault at a time is made."""

    def __init__(self, where: Path) -> None:
        self.root = where
        ignored = shutil.ignore_patterns("__pycache__", "_floats.*.so", "*.egg-info", ".venv", "var", ".git", "build")
        for name in ("service", "sdk", "tests", "contracts"):
            shutil.copytree(ROOT / name, where / name, ignore=ignored)
        for name in ("pyproject.toml", "README.md", "CHANGELOG.md", "Makefile", "DEVELOPERS.md"):
            shutil.copy(ROOT / name, where / name)
        self.package = where / "service" / "steelyard"

    def run(self, *command: str) -> subprocess.CompletedProcess[str] | None:
        """A command in the copy; None where it takes too long, as a fault that loops for ever does."""
        path = os.pathsep.join(str(self.root / name) for name in ("service", "sdk", "tests", "contracts/tools"))
        environment = os.environ | {"PYTHONPATH": path, "PYTHONDONTWRITEBYTECODE": "1"}
        try:
            return subprocess.run(
                command, cwd=self.root, env=environment, capture_output=True, text=True, check=False,
                timeout=_PATIENCE_SECONDS,
            )  # fmt: skip
        except subprocess.TimeoutExpired:
            return None

    def passes(self, *targets: str) -> bool:
        """Whether tests pass."""
        there = [target for target in targets if (self.root / target).exists()]
        done = self.run(sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", "-m", "not long", *there)
        return done is not None and done.returncode in (0, 5)

    def digest(self) -> str:
        """A number for the answers to the examples and to random requests."""
        done = self.run(sys.executable, "-c", _DIGEST)
        return "" if done is None else done.stdout.strip()


def tried(copy: Copy, fault: Fault, sound: str) -> str:
    """What becomes of a fault: ``killed``, ``survived``, ``changes nothing`` or ``impossible``."""
    path = copy.package / fault.file
    before = path.read_text(encoding="utf-8")
    after = mutate_code(before, get_operator(fault.operator)(), fault.occurrence)
    if after is None or after == before:
        return "impossible"
    path.write_text(after, encoding="utf-8")
    try:
        room = "/".join(Path(fault.file).parts[:-1])
        if not copy.passes(f"tests/{room}"):
            return "killed"
        if copy.digest() == sound:
            return "changes nothing"
        wider = ("tests/science", "tests/answers", "tests/properties", "tests/validation", "tests/backtest")
        narrow = [f"tests/http/test_{name}.py" for name in ("plans", "forecasts", "decisions", "reviews", "trends")]
        return "survived" if copy.passes(*narrow, "tests/http/test_seasons.py") and copy.passes(*wider) else "killed"
    finally:
        path.write_text(before, encoding="utf-8")


def main() -> int:
    """Sample, try, report."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=600.0)
    asked = parser.parse_args()
    started = time.monotonic()
    with tempfile.TemporaryDirectory() as directory:
        copy = Copy(Path(directory))
        sound = copy.digest()
        if not sound:
            print("the answers to the examples cannot be computed")
            return 2
        possible = list(faults(copy.package))
        sample = random.Random(asked.seed).sample(possible, min(asked.count, len(possible)))
        seen: list[tuple[Fault, str]] = []
        for fault in sample:
            if time.monotonic() - started > 60.0 * asked.minutes:
                break
            seen.append((fault, tried(copy, fault, sound)))
            print(json.dumps([*fault, seen[-1][1]]), flush=True)
    counts = Counter(fate for _, fate in seen)
    telling = counts["killed"] + counts["survived"]
    share = counts["killed"] / telling if telling else 0.0
    lines = [
        f"{len(seen)} of {len(possible)} faults tried: {counts['killed']} killed, {counts['survived']} survived, "
        f"{counts['changes nothing']} change nothing; {share:.0%} of those that change anything are killed.",
        *(f"- survived: {f.file}, {f.operator}, occurrence {f.occurrence}" for f, fate in seen if fate == "survived"),
    ]
    report = ROOT / "var" / "mutants.md"
    report.parent.mkdir(exist_ok=True)
    report.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines))
    return 0 if share >= 0.9 else 1


if __name__ == "__main__":
    sys.exit(main())
