"""How many small faults the tests notice: ``python -m tests.mutants --count 200``, written to ``var/mutants.md``.

Cosmic Ray makes the faults (an operator, a comparison, a number, ...), one at a time, in a copy of the package. A fault
is sampled from all that could be made in the science and the answers, the same ones for the same ``--seed``. It is
killed by the tests of its room, or else, where it moves any answer to the examples and to random requests, by the wider
tests, those of the operations that it moves first. A fault that no test of its room notices and that moves no answer
changes nothing, and counts for nothing; one that the wider tests do not notice within minutes has survived.
"""

import argparse
import compileall
import contextlib
import difflib
import hashlib
import json
import os
import random
import shutil
import sys
import tempfile
import time
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from cosmic_ray.ast import get_ast
from cosmic_ray.mutating import mutate_code
from cosmic_ray.plugins import get_operator, operator_names

from .forks import in_fork, load_libraries

ROOT = Path(__file__).resolve().parents[1]
PACKAGES = ("science", "answers")
# Faults that leave nothing to test: text operators on annotations, and exceptions that nobody raises.
_LEFT_OUT = ("BitOr", "BitAnd", "BitXor", "Shift", "ExceptionReplacer", "Variable", "RemoveDecorator")
# Of a processor: for the tests of a room, for them before the wider ones are left for later, and for the wider ones.
_ROOM_SECONDS, _NARROW_SECONDS, _WIDER_SECONDS = 120.0, 15.0, 120.0
_WIDER = ("tests/answers", "tests/http", "tests/properties", "tests/rails", "tests/science", "tests/validation")
# What the tests of an operation's concern are named by.
_NAMED_BY = {
    "estimate_maintenance": ("maintenance", "total_energy", "resting_energy"),
    "estimate_body_composition": ("composition",),
    "read_trend": ("trend",),
    "forecast_intake": ("forecast",),
    "plan_phases": ("plan",),
    "review_phase": ("review",),
    "decide_phase": ("decision",),
    "plan_season": ("season",),
    "compare_strategies": ("season",),
    "optimise_season": ("season",),
}


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
        # For all later runs, which write none: a file with a fault in it is newer, and compiled again.
        compileall.compile_dir(where / "service", quiet=2)

    def is_noticed(self, by: Sequence[Path], processor_seconds: float) -> bool | None:
        """Whether some test fails; None where the time was too short to say so."""
        if not by:
            return False
        outcome = in_fork(lambda: self._tested(by), processor_seconds)
        return None if outcome is None else outcome not in (0, 5)

    def digests(self) -> dict[str, str]:
        """By operation, a number for its answers to the examples and to random requests."""
        return in_fork(self._digested, _ROOM_SECONDS) or {}

    def load_libraries(self) -> None:
        """Load what the tests load, but for the service and the tests themselves."""
        load_libraries(lambda: self._tested([self.root / "tests" / "http" / "test_plans.py"]))

    def _tested(self, targets: Sequence[Path]) -> int:
        import pytest

        self._enter()
        options = ["-q", "-x", "-p", "no:cacheprovider", "-p", "no:xdist", "-m", "not long"]
        with contextlib.redirect_stdout(sys.stderr):
            return int(pytest.main([*options, *map(str, targets)]))

    def _digested(self) -> dict[str, str]:
        self._enter()
        from mutants_answers import answers
        from steelyard.science.numbers.twins import use_compiled

        use_compiled(False)
        found: defaultdict[str, list[Any]] = defaultdict(list)
        for operation, answer in answers():
            found[operation].append(answer)
        return {
            operation: hashlib.sha256(json.dumps(each, sort_keys=True).encode()).hexdigest()
            for operation, each in found.items()
        }

    def _enter(self) -> None:
        """Be in the copy, and quiet; for a fork."""
        os.chdir(self.root)
        sys.dont_write_bytecode = True
        os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
        sys.path[:0] = [str(self.root / name) for name in ("service", "sdk", "tests", "contracts/tools")]
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        os.dup2(os.open(self.root / "last_run.txt", os.O_WRONLY | os.O_CREAT | os.O_TRUNC), 2)

    def own_tests(self, fault: Fault) -> list[Path]:
        """The tests of a fault's room."""
        *room, name = Path(fault.file).with_suffix("").parts
        if room == ["answers"]:
            return sorted((self.root / "tests" / "answers").glob(f"test_{name.split('_')[0]}*.py"))
        where = self.root.joinpath("tests", *room)
        return [where] if where.exists() else []

    def wider_tests(self, own: Sequence[Path], moved: Sequence[str]) -> list[Path]:
        """The other tests, those of the operations that are moved first."""
        words = {word for operation in moved for word in _NAMED_BY.get(operation, ())}
        seen = {path for one in own for path in (one.rglob("test_*.py") if one.is_dir() else [one])}
        found = [path for where in _WIDER for path in sorted((self.root / where).rglob("test_*.py"))]
        others = [path for path in found if path not in seen]
        return sorted(others, key=lambda path: not any(word in path.name for word in words))


class Tried(NamedTuple):
    """What became of a fault: ``killed``, ``survived``, ``changes nothing``, ``left to the wider tests`` or
    ``impossible``; which operations' answers it moves; what it changed.
    """

    fate: str
    moved: tuple[str, ...] = ()
    change: str = ""


def tried(copy: Copy, fault: Fault, sound: Mapping[str, str], is_narrow: bool) -> Tried:
    """Make a fault, and see what becomes of it: by the tests of its room alone where ``is_narrow``."""
    path = copy.package / fault.file
    before = path.read_text(encoding="utf-8")
    after = mutate_code(before, get_operator(fault.operator)(), fault.occurrence)
    if after is None or after == before:
        return Tried("impossible")
    lines = difflib.unified_diff(before.splitlines(), after.splitlines(), lineterm="", n=0)
    change = "\n".join(line for line in lines if not line.startswith(("---", "+++")))
    path.write_text(after, encoding="utf-8")
    try:
        own = copy.own_tests(fault)
        is_noticed = copy.is_noticed(own, _NARROW_SECONDS if is_narrow else _ROOM_SECONDS)
        if is_noticed or (is_noticed is None and not is_narrow):  # a fault that loops for ever is noticed by that
            return Tried("killed", change=change)
        answered = copy.digests()
        moved = tuple(operation for operation, digest in sound.items() if answered.get(operation) != digest)
        if is_narrow and (moved or is_noticed is None):
            return Tried("left to the wider tests", moved, change)
        if not moved:
            return Tried("changes nothing", change=change)
        is_noticed = copy.is_noticed(copy.wider_tests(own, moved), _WIDER_SECONDS)
        return Tried("killed" if is_noticed else "survived", moved, change)
    finally:
        path.write_text(before, encoding="utf-8")


def left_by(printed: Path) -> Iterator[Fault]:
    """The faults that an earlier run left, or that survived it."""
    for line in printed.read_text(encoding="utf-8").splitlines():
        if line.startswith("["):
            file, operator, occurrence, fate, *_ = json.loads(line)
            if fate in ("survived", "left to the wider tests"):
                yield Fault(file, operator, occurrence)


def main() -> int:
    """Sample, try, report."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=600.0)
    parser.add_argument("--rooms", nargs="*", default=[], help="such as science/rails; all when left out")
    parser.add_argument("--without", nargs="*", default=[], help="rooms to leave out")
    parser.add_argument("--narrow", action="store_true", help="with the tests of the rooms alone")
    parser.add_argument("--again", type=Path, help="what an earlier run printed: try what was left or survived there")
    asked = parser.parse_args()
    started = time.monotonic()
    with tempfile.TemporaryDirectory() as directory:
        copy = Copy(Path(directory))
        copy.load_libraries()
        sound = copy.digests()
        if not sound:
            print("the answers to the examples cannot be computed")
            return 2
        rooms, without = (tuple(f"{room}/" for room in some) for some in (asked.rooms, asked.without))
        possible = [
            f for f in faults(copy.package) if f.file.startswith(rooms or "") and not f.file.startswith(without)
        ]
        sample = random.Random(asked.seed).sample(possible, min(asked.count, len(possible)))
        if asked.again is not None:
            sample = list(left_by(asked.again))
        seen: list[tuple[Fault, Tried]] = []
        for fault in sample:
            if time.monotonic() - started > 60.0 * asked.minutes:
                break
            seen.append((fault, tried(copy, fault, sound, asked.narrow)))
            print(json.dumps([*fault, *seen[-1][1]]), flush=True)
    counts = Counter(one.fate for _, one in seen)
    telling = counts["killed"] + counts["survived"]
    share = counts["killed"] / telling if telling else 0.0
    lines = [
        f"{len(seen)} of {len(possible)} faults tried: {counts['killed']} killed, {counts['survived']} survived, "
        f"{counts['changes nothing']} change nothing; {share:.0%} of those that change anything are killed.",
        *(f"- survived: {fault.file}: {one.change}" for fault, one in seen if one.fate == "survived"),
    ]
    report = ROOT / "var" / "mutants.md"
    report.parent.mkdir(exist_ok=True)
    report.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines))
    return 0 if share >= 0.9 else 1


if __name__ == "__main__":
    sys.exit(main())
