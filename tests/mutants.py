"""How many small faults the tests notice: ``python -m tests.mutants --count 200``, written to ``var/mutants.md``.

Cosmic Ray makes the faults (an operator, a comparison, a number, ...), one at a time, in a copy of the package. A fault
is sampled from all that could be made in the science and the answers, the same ones for the same ``--seed``. It is
killed by the tests of its room, or else, where it moves any answer to the examples and to random requests, by the wider
tests, those of the operations that it moves first. A fault that no test of its room notices and that moves no answer
changes nothing, and counts for nothing; one that the wider tests do not notice within minutes has survived. A test that
fails without a fault as well stops the run: what it kills would count for nothing.
"""

import argparse
import compileall
import contextlib
import difflib
import hashlib
import json
import os
import random
import resource
import shutil
import sys
import tempfile
import time
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, ClassVar, NamedTuple

from cosmic_ray.ast import get_ast
from cosmic_ray.mutating import mutate_code
from cosmic_ray.plugins import get_operator, operator_names

from .forks import in_fork, load_libraries

ROOT = Path(__file__).resolve().parents[1]
PACKAGES = ("science", "answers")
# Faults that leave nothing to test: text operators on annotations, and exceptions that nobody raises.
_LEFT_OUT = ("BitOr", "BitAnd", "BitXor", "Shift", "ExceptionReplacer", "Variable", "RemoveDecorator")
# Of a processor: for the answers, for the tests of a room before the wider ones are left for later, for the wider ones.
_ANSWERS_SECONDS, _NARROW_SECONDS, _WIDER_SECONDS = 120.0, 15.0, 60.0
# A fault that loops for ever is noticed by that: its room's tests take this many times what they take without it.
_FOR_EVER, _LEAST_SECONDS = 3.0, 30.0
_WIDER = ("tests/answers", "tests/http", "tests/properties", "tests/rails", "tests/science", "tests/validation")
# What the compiled core is made of. In a fault of any other room the tests use it, which takes a tenth of the time.
_COMPILED = ("body", "log", "measures", "numbers", "rails", "register", "person", "catalogue.py")
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
        ignored = shutil.ignore_patterns("__pycache__", "*.egg-info", ".venv", "var", ".git", "build")
        for name in ("service", "sdk", "tests", "contracts"):
            shutil.copytree(ROOT / name, where / name, ignore=ignored)
        for name in ("pyproject.toml", "README.md", "CHANGELOG.md", "Makefile", "DEVELOPERS.md"):
            shutil.copy(ROOT / name, where / name)
        self.package = where / "service" / "steelyard"
        self._core = {path: path.with_suffix(".unused") for path in (self.package / "science").glob("*.so")}
        self._passes: dict[str, bool] = {}
        self._seconds: dict[tuple[Path, ...], float] = {}
        # For all later runs, which write none: a file with a fault in it is newer, and compiled again.
        compileall.compile_dir(where / "service", quiet=2)

    def noticed_by(self, tests: Sequence[Path], processor_seconds: float | None = None) -> str | None:
        """The test that fails first, "" where none does; None where the time was too short to say so.

        Whatever else ends them early (somebody, or want of memory) is no failing test.
        """
        names, before = [str(path.relative_to(self.root)) for path in tests], _children_seconds()
        found = in_fork(lambda: self._first_failing(names), processor_seconds) if tests else ""
        is_timed_out = processor_seconds is not None and _children_seconds() - before > 0.9 * processor_seconds
        return "" if found is None and not is_timed_out else found

    def passes(self, test: str) -> bool:
        """Whether a test passes; for the package without a fault."""
        if test not in self._passes:
            self._passes[test] = in_fork(lambda: self._first_failing([test])) == ""
        return self._passes[test]

    def seconds_for_ever(self, tests: Sequence[Path]) -> float:
        """Of a processor, more than these tests take without a fault by far; for the package without one."""
        key = tuple(tests)
        if key not in self._seconds:
            before = _children_seconds()
            self.noticed_by(tests)
            self._seconds[key] = max(_LEAST_SECONDS, _FOR_EVER * (_children_seconds() - before))
        return self._seconds[key]

    def digests(self) -> dict[str, str]:
        """By operation, a number for its answers to the examples and to random requests."""
        return in_fork(self._digested, _ANSWERS_SECONDS) or {}

    def moved(self, sound: Mapping[str, str]) -> tuple[str, ...]:
        """The operations whose digests are not those of the ``sound`` package."""
        answered = self.digests()
        return tuple(operation for operation, digest in sound.items() if answered.get(operation) != digest)

    def use_core(self, file: str) -> None:
        """Have the compiled core used where a fault in this file leaves it as it is."""
        is_used = Path(file).parts[1] not in _COMPILED
        for path, unused in self._core.items():
            if is_used is not path.exists():
                (unused if is_used else path).rename(path if is_used else unused)

    def load_libraries(self) -> None:
        """Load what the tests load, but for the service and the tests themselves."""
        load_libraries(lambda: self._first_failing(["tests/http/test_plans.py"]))

    def _first_failing(self, tests: Sequence[str]) -> str:
        """The id of the first test that fails, or where they cannot even start, of the first; "" where none does."""
        import pytest

        class Failures:
            found: ClassVar[list[str]] = []

            def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
                self.found += [report.nodeid] if report.failed else []

            def pytest_collectreport(self, report: pytest.CollectReport) -> None:
                self.found += [report.nodeid] if report.failed else []

        self._enter()
        options = ["-q", "-x", "-p", "no:cacheprovider", "-p", "no:xdist", "-m", "not long"]
        with contextlib.redirect_stdout(sys.stderr):
            code = pytest.main([*options, *tests], plugins=[Failures()])
        return "" if code in (0, 5) else next(filter(None, [*Failures.found, tests[0]]))

    def _digested(self) -> dict[str, str]:
        self._enter()
        from mutants_answers import answers

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
        """The other tests: that of the answers to the examples, those of the operations that are moved, the quick ones,
        those that start servers.
        """
        words = {word for operation in moved for word in _NAMED_BY.get(operation, ())}
        seen = {path for one in own for path in (one.rglob("test_*.py") if one.is_dir() else [one])}
        found = [path for where in _WIDER for path in sorted((self.root / where).rglob("test_*.py"))]
        others = [path for path in found if path not in seen]
        return sorted(
            others,
            key=lambda path: (
                path.name != "test_contract.py",
                not any(word in path.name for word in words),
                path.parent.name == "http",
            ),
        )


def _children_seconds() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


class Tried(NamedTuple):
    """What became of a fault: ``killed``, ``survived``, ``changes nothing``, ``left to the wider tests`` or
    ``impossible``; which operations' answers it moves; what it changed; which test it was killed by, if not by time.
    """

    fate: str
    moved: Sequence[str] = ()
    change: str = ""
    killed_by: str = ""


def tried(copy: Copy, fault: Fault, sound: Mapping[str, str], is_narrow: bool) -> Tried:
    """Make a fault, and see what becomes of it: by the tests of its room alone where ``is_narrow``."""
    path = copy.package / fault.file
    before = path.read_text(encoding="utf-8")
    after = mutate_code(before, get_operator(fault.operator)(), fault.occurrence)
    if after is None or after == before:
        return Tried("impossible")
    lines = difflib.unified_diff(before.splitlines(), after.splitlines(), lineterm="", n=0)
    change = "\n".join(line for line in lines if not line.startswith(("---", "+++")))
    copy.use_core(fault.file)
    own = copy.own_tests(fault)
    seconds = _NARROW_SECONDS if is_narrow else copy.seconds_for_ever(own)
    path.write_text(after, encoding="utf-8")
    try:
        found = _tried(copy, own, seconds, sound, is_narrow)
    finally:
        path.write_text(before, encoding="utf-8")
    if found.killed_by and not copy.passes(found.killed_by):
        raise SystemExit(f"{found.killed_by} fails without a fault too")
    return found._replace(change=change)


def _tried(copy: Copy, own: Sequence[Path], seconds: float, sound: Mapping[str, str], is_narrow: bool) -> Tried:
    noticed_by = copy.noticed_by(own, seconds)
    if noticed_by or (noticed_by is None and not is_narrow):
        return Tried("killed", killed_by=noticed_by or "")
    moved = copy.moved(sound)
    if is_narrow and (moved or noticed_by is None):
        return Tried("left to the wider tests", moved)
    if not moved:
        return Tried("changes nothing")
    noticed_by = copy.noticed_by(copy.wider_tests(own, moved), _WIDER_SECONDS)
    return Tried("killed" if noticed_by else "survived", moved, killed_by=noticed_by or "")


def earlier(printed: Path) -> Iterator[tuple[Fault, Tried]]:
    """What an earlier run printed."""
    for line in printed.read_text(encoding="utf-8").splitlines():
        if line.startswith("["):
            file, operator, occurrence, *found = json.loads(line)
            yield Fault(file, operator, occurrence), Tried(*found)


def main() -> int:
    """Sample, try, report."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--minutes", type=float, default=600.0)
    parser.add_argument("--rooms", nargs="*", default=[], help="such as science/rails; all when left out")
    parser.add_argument("--without", nargs="*", default=[], help="rooms to leave out")
    parser.add_argument("--narrow", action="store_true", help="with the tests of the rooms alone")
    parser.add_argument("--again", type=Path, help="what an earlier run printed: try what was left or survived")
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
        known: dict[Fault, Tried] = {}
        if asked.again is not None:
            known = dict(earlier(asked.again))
            sample = list(known)
        seen: list[tuple[Fault, Tried]] = []
        for fault in sample:
            found = known.get(fault)
            is_in_time = time.monotonic() - started < 60.0 * asked.minutes
            if is_in_time and (found is None or found.fate in ("survived", "left to the wider tests")):
                found = tried(copy, fault, sound, asked.narrow)
            if found is None:
                break
            seen.append((fault, found))
            print(json.dumps([*fault, *found]), flush=True)
    counts = Counter(one.fate for _, one in seen)
    telling = counts["killed"] + counts["survived"]
    share = counts["killed"] / telling if telling else 0.0
    lines = [
        f"{len(seen)} of {len(possible)} faults tried: {counts['killed']} killed, {counts['survived']} survived, "
        f"{counts['changes nothing']} change nothing, {counts['left to the wider tests']} left; {share:.0%} of those "
        "that change anything are killed.",
        *(f"- survived: {fault.file}: {one.change}" for fault, one in seen if one.fate == "survived"),
    ]
    report = ROOT / "var" / "mutants.md"
    report.parent.mkdir(exist_ok=True)
    report.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines))
    return 0 if share >= 0.9 else 1


if __name__ == "__main__":
    sys.exit(main())
