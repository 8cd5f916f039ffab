"""Compile the core's formulas on floats into the package: ``python service/compile_core/compile_floats.py``.

Needs Cython, setuptools and a C compiler: where one is missing the core runs as it is written. Whatever else goes wrong
is an error. Nothing is done where the result is already that of the present source.
"""

import ast
import importlib.util
import os
import shlex
import shutil
import sys
import sysconfig
from pathlib import Path
from types import CodeType
from typing import Any

SERVICE = Path(__file__).resolve().parents[1]
CORE = SERVICE / "steelyard" / "science"
_SCRATCH = SERVICE.parent / "build" / "compile_core"
# The same answer to the last bit: no fused operations, no function of the compiler's own for a library's. Cython's own
# code sets variables that it does not always use.
_FLAGS = ["-O2", "-ffp-contract=off", "-fno-builtin-pow", "-w"]


# Functions over rows of doubles, which the compiler takes as they are with the types in the .pxd beside them.
_KERNEL = CORE / "log" / "kernel.py"
# By the name of each compiled form: which of the text's own numbers is how many states it has.
_STATES_OF = {"kernel": "LEAST_STATES", "kernel_with_cycle": "MOST_STATES"}
_DIRECTIVES = {
    "annotation_typing": False,  # the .pxd says more
    "infer_types": True,
    "boundscheck": False,
    "wraparound": False,
    "cdivision": True,
    "initializedcheck": False,
}


class NoCompiler(Exception):  # noqa: N818 - named for what happened
    """A tool to compile with is not here."""


def check_tools() -> None:
    """Raises ``NoCompiler`` naming the first tool that is missing."""
    for library in ("Cython", "setuptools"):
        if importlib.util.find_spec(library) is None:
            raise NoCompiler(f"{library} is not installed")
    if sys.platform == "win32":
        return  # the tools look for the compiler themselves
    compiler = shlex.split(os.environ.get("CC") or sysconfig.get_config_var("CC") or "cc")[0]
    if shutil.which(compiler) is None:
        raise NoCompiler(f"there is no C compiler: {compiler} is not found")
    headers = Path(sysconfig.get_path("include"))
    if not (headers / "Python.h").exists():
        raise NoCompiler("the headers of Python are not installed")


def build() -> list[Path]:
    """Compile; return the extension modules' files.

    Raises ``NotRewritten`` with file and line for what cannot be rewritten, ``NoCompiler`` where a tool is missing, and
    what the tools raise where one fails.
    """
    sys.path[:0] = [str(SERVICE), str(Path(__file__).parent)]
    try:
        from specialise import specialise
        from steelyard.science.numbers.twins import checksum_of
    finally:
        del sys.path[:2]
    cython = specialise(CORE)
    text = f"{cython.text}\nCHECKSUM = {checksum_of(cython.marked)}\n"
    check_tools()
    from Cython.Build import cythonize
    from setuptools import Distribution, Extension  # type: ignore[import-untyped]

    _SCRATCH.mkdir(parents=True, exist_ok=True)
    source = _SCRATCH / "_floats.pyx"
    if not source.exists() or source.read_text(encoding="utf-8") != text:
        source.write_text(text, encoding="utf-8")
    extension = Extension("steelyard.science._floats", [str(source)], extra_compile_args=_FLAGS)
    modules = cythonize([extension], quiet=True)  # type: ignore[no-untyped-call]
    kernels = [_kernel_source(name, states, checksum_of) for name, states in _STATES_OF.items()]
    modules += cythonize(  # type: ignore[no-untyped-call]
        [
            # By its bare name, by which the compiler finds the types beside it.
            Extension(path.stem, [str(path)], extra_compile_args=[*_FLAGS, "-O3"])
            for path in kernels
        ],
        compiler_directives=_DIRECTIVES,
        quiet=True,
    )
    command = Distribution({"ext_modules": modules}).get_command_obj("build_ext")
    command.build_lib, command.build_temp = str(_SCRATCH), str(_SCRATCH / "objects")
    command.ensure_finalized()
    command.run()
    # Put in place at once: a running service may have the old ones open.
    suffix = sysconfig.get_config_var("EXT_SUFFIX")
    made = [_SCRATCH / "steelyard" / "science" / f"_floats{suffix}", *(_SCRATCH / f"{p.stem}{suffix}" for p in kernels)]
    return [_put_in_place(path) for path in made]


def _kernel_source(name: str, states: str, checksum_of: Any) -> Path:
    """Copy the kernel and its types to the scratch directory, under the name of a compiled form."""
    tree = ast.parse(_KERNEL.read_text(encoding="utf-8"))
    whole = compile(tree, str(_KERNEL), "exec", dont_inherit=True)
    codes = {code.co_name: code for code in whole.co_consts if isinstance(code, CodeType)}
    constants = _Constants(whole, states)
    tree.body = [constants.visit(node) for node in tree.body if not isinstance(node, ast.Assign)]
    text = ast.unparse(tree)
    # C's functions of that name are the same library's.
    text = text.replace("\nfrom math import ", "\nfrom cython.cimports.libc.math import ")
    text += f"\n\ndef checksum():\n    return {checksum_of(codes)}\n"
    found = _SCRATCH / f"_{name}.py"
    for path, new in ((found, text), (found.with_suffix(".pxd"), _KERNEL.with_suffix(".pxd").read_text("utf-8"))):
        if not path.exists() or path.read_text(encoding="utf-8") != new:
            path.write_text(new, encoding="utf-8")
    return found


class _Constants(ast.NodeTransformer):
    """Puts a kernel's constants in place of their names: a loop whose length the C compiler knows, it unrolls."""

    def __init__(self, whole: CodeType, states: str) -> None:
        names: dict[str, Any] = {"__name__": ""}
        exec(whole, names)  # noqa: S102 - the core's own text
        names["STATES"] = names[states]
        exec(whole, names)  # noqa: S102
        self._values = {name: value for name, value in names.items() if isinstance(value, int | float)}

    def visit_Name(self, node: ast.Name) -> ast.expr:
        """The number of a constant's name."""
        value = self._values.get(node.id)
        return node if value is None else ast.parse(repr(value), mode="eval").body


def _put_in_place(made: Path) -> Path:
    beside = CORE / f"{made.name}.new"
    shutil.copyfile(made, beside)
    return beside.replace(CORE / made.name)


if __name__ == "__main__":
    try:
        for made in build():
            print(f"Compiled {made.relative_to(SERVICE.parent)}")
    except NoCompiler as missing:
        print(f"Not compiled, the core runs as it is written, more slowly: {missing}")
