"""The whole catalogue: importing this module imports every module of the core, and each registers what it uses."""

import importlib
import pkgutil
from collections.abc import Mapping

import steelyard.science

from .register import ENTRIES, SOURCES, Entry, Source

for _module in pkgutil.walk_packages(steelyard.science.__path__, "steelyard.science."):
    if _module.name != __name__:
        importlib.import_module(_module.name)


def entries() -> Mapping[str, Entry]:
    """Every constant, equation, model and rule by id."""
    return ENTRIES


def sources() -> Mapping[str, Source]:
    """Every publication by id."""
    return SOURCES
