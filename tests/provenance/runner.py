"""Answers of all examples with one number moved, in a fresh process for each: ``python -m provenance.runner``.

Reads moves as JSON lines, writes for each a JSON line: by example, a digest of its answer, and what its ``methods``
name. The libraries are loaded once; each move is made in a fork that has not seen the service yet, as it is written
(compiled forms are not used). Formulas of the catalogue follow the numbers, as do all values made of them.
"""

import ast
import hashlib
import importlib
import importlib.machinery
import json
import sys
import tempfile
import types
from collections.abc import Sequence
from functools import partial
from importlib.abc import Loader
from pathlib import Path
from typing import Any

from forks import in_fork, load_libraries
from provenance.moves import Move, moved

# Beside what an answer was computed with, the print of the model's version and of the request.
_LEFT_OUT = {"methods", "fingerprint", "request_fingerprint"}


class _Rewriting(Loader):
    """Loads one module with one literal moved."""

    def __init__(self, path: str, move: Move) -> None:
        self._path, self._move = path, move

    def create_module(self, spec: importlib.machinery.ModuleSpec) -> None:
        return None

    def exec_module(self, module: types.ModuleType) -> None:
        tree = ast.parse(Path(self._path).read_text(encoding="utf-8"))
        (literal,) = (
            node
            for node in ast.walk(tree)
            if isinstance(node, ast.Constant) and (node.lineno, node.col_offset) == (self._move.line, self._move.column)
        )
        assert isinstance(literal.value, int | float)
        literal.value = moved(literal.value, self._move.factor, self._move.is_whole)
        exec(compile(tree, self._path, "exec"), vars(module))

    def get_code(self, name: str) -> types.CodeType:
        return compile(Path(self._path).read_text(encoding="utf-8"), self._path, "exec")


class _Finder:
    def __init__(self, move: Move) -> None:
        self._move = move

    def find_spec(self, name: str, path: Any = None, target: Any = None) -> Any:
        if name != self._move.module:
            return None
        spec = importlib.machinery.PathFinder.find_spec(name, path)
        assert spec is not None
        assert spec.origin is not None
        spec.loader = _Rewriting(spec.origin, self._move)
        return spec


def make(move: Move) -> None:
    """Make a move, before the service is loaded."""
    assert "steelyard" not in sys.modules
    if move.module:
        sys.meta_path.insert(0, _Finder(move))  # type: ignore[arg-type]
    if move.constant:
        register = importlib.import_module("steelyard.science.register")
        evidence = importlib.import_module("steelyard.science.register.evidence")
        original = evidence.constant

        def constant(id: str, value: float, **told: Any) -> Any:
            changed = moved(value, move.factor, move.is_whole) if id == move.constant else value
            return original(id, changed, **told)

        register.constant = evidence.constant = constant  # type: ignore[attr-defined]


def answers(names: bool) -> dict[str, tuple[str, list[str] | None]]:
    """By example: a digest of the answer, and where asked for the entries that it names.

    None for an example that is refused: a problem names the rule that it is refused by.
    """
    from provenance.asked import further
    from steelyard.http.app import OPERATIONS
    from steelyard.http.wire.encoding import encode_finite
    from steelyard.science.numbers import twins
    from steelyard.science.register import provenance

    twins.use_compiled(False)
    if not names:
        provenance._entries_of = lambda noted: ()  # type: ignore[assignment]
    found: dict[str, tuple[str, list[str] | None]] = {}
    for operation in OPERATIONS:
        if operation.renders:  # rests on what the operation does that it renders
            continue
        bodies = {**(operation.request_examples or {}), **further(operation)}
        for name, body in bodies.items():
            methods = None
            try:
                answer = json.loads(encode_finite(operation.compute(body)))
                methods = sorted(_methods(answer))
            except Exception as refusal:  # who is refused is answered as well
                answer = {"refused": f"{refusal!r} {refusal}"}
            text = json.dumps(_stripped(answer))
            found[f"{operation.operation_id}/{name}"] = hashlib.sha256(text.encode()).hexdigest()[:16], methods
    return found


def _methods(answer: Any) -> set[str]:
    if isinstance(answer, dict):
        return {id for key, value in answer.items() for id in (value if key == "methods" else _methods(value))}
    return {id for value in answer for id in _methods(value)} if isinstance(answer, list) else set()


def _stripped(answer: Any) -> Any:
    if isinstance(answer, dict):
        return {key: _stripped(value) for key, value in answer.items() if key not in _LEFT_OUT}
    return [_stripped(value) for value in answer] if isinstance(answer, list) else answer


def _answered(move: Move) -> Any:
    make(move)
    return answers(names=move.factor == 1.0)


def main(lines: Sequence[str]) -> None:
    """Answer the moves as they come."""
    sys.pycache_prefix = tempfile.mkdtemp()  # the first fork compiles the service for the others
    load_libraries(lambda: answers(names=False))
    moves = [Move(*json.loads(line)) for line in lines]
    for move in moves:
        print(json.dumps(in_fork(partial(_answered, move))), flush=True)


if __name__ == "__main__":
    main(sys.stdin.read().splitlines())
