"""Build hook: an install compiles the core's formulas on floats, where Cython and a C compiler are at hand.

Without them the install goes on: the service then answers the same, more slowly, and ``steelyard doctor`` says so.
Any other error fails the build: one of the rewriter means that the compiled form might answer otherwise.
"""

import importlib
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class CompiledCoreHook(BuildHookInterface[Any]):
    """Adds the extension module to the wheel, which is then for one platform."""

    PLUGIN_NAME = "custom"

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Called by the build before it collects files."""
        if self.target_name != "wheel":
            return
        sys.path.insert(0, str(Path(__file__).parent))
        try:
            compile_floats = importlib.import_module("compile_floats")
        finally:
            sys.path.pop(0)
        try:
            made = compile_floats.build()
        except compile_floats.NoCompiler as missing:
            self.app.display_warning(f"The core was not compiled and runs as it is written, more slowly: {missing}")
            return
        build_data["artifacts"] += [str(path.relative_to(Path(self.root).resolve())) for path in made]
        build_data["infer_tag"] = True
        build_data["pure_python"] = False
