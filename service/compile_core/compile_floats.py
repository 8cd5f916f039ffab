"""Compile the core's formulas on floats into the package: ``python service/compile_core/compile_floats.py``.

Needs Cython, setuptools and a C compiler. Nothing is done where the result is already that of the present source.
"""

import shutil
import sys
import sysconfig
from pathlib import Path

SERVICE = Path(__file__).resolve().parents[1]
CORE = SERVICE / "steelyard" / "science"
_SCRATCH = SERVICE.parent / "build" / "compile_core"
# The same answer to the last bit: no fused operations, no function of the compiler's own for a library's. Cython's own
# code sets variables that it does not always use.
_FLAGS = ["-O2", "-ffp-contract=off", "-fno-builtin-pow", "-w"]


def build() -> Path:
    """Compile; return the extension module's file. Raises whatever the tools raise where one is missing or fails."""
    from Cython.Build import cythonize
    from setuptools import Distribution, Extension  # type: ignore[import-untyped]

    sys.path[:0] = [str(SERVICE), str(Path(__file__).parent)]
    try:
        from specialise import specialise
        from steelyard.science.numbers.twins import checksum_of
    finally:
        del sys.path[:2]
    cython = specialise(CORE)
    text = f"{cython.text}\nCHECKSUM = {checksum_of(cython.marked)}\n"
    _SCRATCH.mkdir(parents=True, exist_ok=True)
    source = _SCRATCH / "_floats.pyx"
    if not source.exists() or source.read_text(encoding="utf-8") != text:
        source.write_text(text, encoding="utf-8")
    extension = Extension("steelyard.science._floats", [str(source)], extra_compile_args=_FLAGS)
    modules = cythonize([extension], quiet=True)  # type: ignore[no-untyped-call]
    command = Distribution({"ext_modules": modules}).get_command_obj("build_ext")
    command.build_lib, command.build_temp = str(_SCRATCH), str(_SCRATCH / "objects")
    command.ensure_finalized()
    command.run()
    name = f"_floats{sysconfig.get_config_var('EXT_SUFFIX')}"
    # Put in place at once: a running service may have the old one open.
    beside = CORE / f"{name}.new"
    shutil.copyfile(_SCRATCH / "steelyard" / "science" / name, beside)
    return beside.replace(CORE / name)


if __name__ == "__main__":
    print(f"Compiled {build().relative_to(SERVICE.parent)}")
