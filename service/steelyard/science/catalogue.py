"""The whole catalogue: asking for it imports every module of the core, and each registers what it uses."""

import importlib
import pkgutil
from collections.abc import Mapping
from functools import cache

import steelyard.science

from .register import ENTRIES, SOURCES, Entry, Source


@cache
def _import_all() -> None:
    for module in pkgutil.walk_packages(steelyard.science.__path__, "steelyard.science."):
        importlib.import_module(module.name)


def entries() -> Mapping[str, Entry]:
    """Every constant, equation, model and rule by id."""
    _import_all()
    return ENTRIES


def sources() -> Mapping[str, Source]:
    """Every publication by id."""
    _import_all()
    return SOURCES
