"""The build step: it refuses what its compiled form might not answer alike, and forgives a missing compiler alone."""

import importlib
import json
import os
import subprocess
import sys
import textwrap
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType, SimpleNamespace
from typing import Any

import pytest
from steelyard.science.numbers import is_compiled

ROOT = Path(__file__).resolve().parents[1]
COMPILE_CORE = ROOT / "service" / "compile_core"


@pytest.fixture
def tools(monkeypatch: pytest.MonkeyPatch) -> Iterator[Any]:
    """The modules of the build step, by name."""
    before = set(sys.modules)
    monkeypatch.syspath_prepend(str(COMPILE_CORE))
    yield importlib.import_module
    for name in set(sys.modules) - before:
        if str(COMPILE_CORE) in str(getattr(sys.modules[name], "__file__", "")):
            del sys.modules[name]


def _core(tmp_path: Path, body: str) -> Path:
    """A core of one room with one marked function; its body begins on line 6."""
    head = "class Row(NamedTuple):\n    a: Number\n    b: Number\n@compiled\n"
    head += "def f(x: Number, n: int, xs: Column, *, ops: Elementwise = FLOATS) -> Number:\n"
    (tmp_path / "room").mkdir()
    (tmp_path / "room" / "__init__.py").write_text("")
    (tmp_path / "room" / "some.py").write_text(head + textwrap.indent(body, "    ") + "\n")
    return tmp_path


ODD_WHOLES = [
    ("return x * 7", 6),
    ("y = x\ny = y + 1\nreturn y", 7),
    ("return 7", 6),
    ("return ops.maximum(x, 0)", 6),
    ("y = 0\ny = y + x\nreturn y", 6),
    ("a, b = 0, x\nreturn b", 6),
    ("x -= 2\nreturn x", 6),
    ("return x if x > 0 else 1.0", 6),
    ("return 2 ** x", 6),
    ("found: Column = []\nfound.append(1)\nreturn x", 7),
    ("return n / 2", 6),
]


@pytest.mark.parametrize(("body", "line"), ODD_WHOLES)
def test_a_whole_number_that_would_become_a_double_is_refused(tools: Any, tmp_path: Path, body: str, line: int) -> None:
    with pytest.raises(tools("marks").NotRewritten, match=rf"^room/some\.py:{line}: write \d\.0"):
        tools("specialise").specialise(_core(tmp_path, body))


@pytest.mark.parametrize(
    "body",
    [
        "return x ** 2",
        "return xs[0] + xs[n - 1]",
        "y = 0.0\nfor i in range(1, n + 1):\n    y = y + xs[i]\nreturn y",
        "ys: Column = [x] * 11\nreturn ys[-1]",
        "at = -1\nfor y in xs:\n    at += 1\n    if at == 3:\n        break\nreturn x",
        "return 0.5 * (n + n - 1)",
    ],
)
def test_counting_in_whole_numbers_is_not(tools: Any, tmp_path: Path, body: str) -> None:
    assert "f(double x, Py_ssize_t n, xs)" in tools("specialise").specialise(_core(tmp_path, body)).text


def test_named_tuples_of_numbers_are_read_by_place(tools: Any, tmp_path: Path) -> None:
    core = _core(tmp_path, "drive = g(row)\n_, b = drive\nreturn row.b + b")
    some = core / "room" / "some.py"
    text = some.read_text().replace("f(x: Number, n: int, xs: Column, *", "f(row: Row, *")
    some.write_text(
        text + "class _Drive(NamedTuple):\n    a: Number\n    b: Number\n"
        "@inlined\ndef g(row: Row) -> _Drive:\n    return _Drive(row.a, 2.0)\n"
    )
    made = tools("specialise").specialise(core).text
    assert "return _field(row, 1) + b" in made
    assert "cdef (double, double) room_some__g(row):\n    return (_field(row, 0), 2.0)" in made
    assert "_unused_1, b = drive" in made


UNKNOWN = [
    ("with x:\n    pass\nreturn x", "With"),
    ("try:\n    x = 1.0 / x\nfinally:\n    x = 0.0\nreturn x", "Try"),
    ("y = lambda z: z\nreturn x", "Lambda"),
    ("return x // 2.0", "FloorDiv"),
    ("return x % 2.0", "Mod"),
    ("if (y := x) > 0.0:\n    return y\nreturn x", "NamedExpr"),
    ("def g() -> None:\n    pass\nreturn x", "FunctionDef"),
    ("assert x > 0.0\nreturn x", "Assert"),
    ("match x:\n    case _:\n        return x", "Match"),
    ("for y in xs:\n    pass\nelse:\n    x = 0.0\nreturn x", "a loop with an else"),
]


@pytest.mark.parametrize(("body", "what"), UNKNOWN)
def test_syntax_it_does_not_know_is_refused(tools: Any, tmp_path: Path, body: str, what: str) -> None:
    with pytest.raises(tools("marks").NotRewritten, match=rf"^room/some\.py:6: {what} is not known"):
        tools("specialise").specialise(_core(tmp_path, body))


def test_what_only_arrays_need_may_be_anything(tools: Any, tmp_path: Path) -> None:
    body = "if ops is not FLOATS:\n    with x:\n        return x // 7\nreturn x"
    text = tools("specialise").specialise(_core(tmp_path, body)).text
    assert "return x\n" in text
    assert "x // 7" not in text


def test_rows_are_as_wide_as_what_describes_them(tools: Any, tmp_path: Path) -> None:
    text = tools("specialise").specialise(_core(tmp_path, "kept: list = rows(Row)\nkept.append((x, x))\nreturn x")).text
    assert "kept = Rows(2)" in text


@pytest.mark.parametrize(
    ("body", "line"),
    [
        ("kept: list = rows(Row)\nkept.append((x, x, x))\nreturn x", 7),
        ("kept: list = rows(Row)\nkept.append(xs)\nreturn x", 7),
        ("kept: list = rows(Other)\nreturn x", 6),
    ],
)
def test_a_row_of_another_width_is_refused(tools: Any, tmp_path: Path, body: str, line: int) -> None:
    with pytest.raises(tools("marks").NotRewritten, match=rf"^room/some\.py:{line}: "):
        tools("specialise").specialise(_core(tmp_path, body))


def _install(hook_module: ModuleType) -> tuple[dict[str, Any], list[str]]:
    """Run the build hook; return the data of the build and its warnings."""
    hook_type = hook_module.CompiledCoreHook
    warnings: list[str] = []
    hook = hook_type.__new__(hook_type)
    for name, value in {
        "_BuildHookInterface__target_name": "wheel",
        "_BuildHookInterface__app": SimpleNamespace(display_warning=warnings.append),
    }.items():
        setattr(hook, name, value)
    build_data: dict[str, Any] = {"artifacts": []}
    hook.initialize("standard", build_data)
    return build_data, warnings


def test_an_install_without_a_compiler_goes_on_and_says_so(tools: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CC", "no-such-compiler -pthread")
    build_data, warnings = _install(tools("hook"))
    assert build_data == {"artifacts": []}
    assert "no-such-compiler" in warnings[0]


def test_an_install_without_cython_goes_on_and_says_so(tools: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    there = importlib.util.find_spec
    monkeypatch.setattr(importlib.util, "find_spec", lambda name: None if name == "Cython" else there(name))
    build_data, warnings = _install(tools("hook"))
    assert build_data == {"artifacts": []}
    assert "Cython" in warnings[0]


@pytest.mark.parametrize("error", ["NotRewritten", "CompileError", "SystemExit"])
def test_any_other_error_fails_the_build(tools: Any, monkeypatch: pytest.MonkeyPatch, error: str) -> None:
    from setuptools.errors import CompileError  # type: ignore[import-untyped]

    raised = {"NotRewritten": tools("marks").NotRewritten, "CompileError": CompileError, "SystemExit": SystemExit}

    def fails(core: Path) -> None:
        raise raised[error]("what went wrong")

    monkeypatch.setattr(tools("specialise"), "specialise", fails)
    with pytest.raises(raised[error], match="what went wrong"):
        _install(tools("hook"))


def test_an_image_without_the_compiled_core_does_not_build() -> None:
    lines = (ROOT / "docker" / "Dockerfile").read_text().splitlines()
    (check,) = (json.loads(line.removeprefix("RUN ")) for line in lines if "is_compiled" in line)
    assert check[:2] == ["/opt/steelyard/bin/python", "-c"]
    here = {**os.environ, "PYTHONPATH": str(ROOT / "service")}
    missing = f"import sys; sys.modules['steelyard.science._floats'] = None; {check[2]}"
    for code, is_built in ((check[2], is_compiled()), (missing, False)):
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, env=here)
        assert (done.returncode == 0) is is_built, done.stderr
        assert is_built or "not compiled" in done.stderr
