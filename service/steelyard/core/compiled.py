"""Formulas that run compiled on floats where the install could build them, and as they are written everywhere.

``@compiled`` marks a function whose float form is built by ``service/compile_core`` from its own source, ``@inlined``
one that such functions call. Both forms give the same answer to the last bit (tested), so that it shows in nothing but
speed. A build that does not belong to the very code at hand is left alone.
"""

from collections.abc import Callable, Mapping
from functools import wraps
from types import CodeType
from typing import Any, ParamSpec, TypeVar, cast
from zlib import crc32

from .elementwise import FLOATS, Elementwise

P = ParamSpec("P")
R = TypeVar("R")

_marked: dict[str, Callable[..., Any]] = {}


def digest_of(codes: Mapping[str, CodeType]) -> int:
    """A number for what functions, by name, do, apart from where they stand."""
    return crc32("".join(f"{name}:{_told(codes[name])}" for name in sorted(codes)).encode())


def _told(code: CodeType) -> str:
    constants = [_told(c) if isinstance(c, CodeType) else repr(c) for c in code.co_consts]
    return repr((code.co_code.hex(), code.co_names, code.co_varnames, constants))


class _Twins:
    """The compiled forms by name, loaded when the first is asked for: they need the modules that they are made from."""

    def __init__(self) -> None:
        self._found: Mapping[str, Callable[..., Any]] | None = None
        self.is_wanted = True

    def find(self) -> Mapping[str, Callable[..., Any]]:
        """The compiled forms; none where there is no build, or one of other code."""
        if self._found is None:
            self._found = self._load()
        return self._found if self.is_wanted else {}

    def _load(self) -> Mapping[str, Callable[..., Any]]:
        try:
            from ._floats import DIGEST, TWINS
        except ImportError:
            return {}
        codes = {name: function.__code__ for name, function in _marked.items()}
        return TWINS if digest_of(codes) == DIGEST else {}


_twins = _Twins()


def is_compiled() -> bool:
    """Whether the compiled forms are in use."""
    return bool(_twins.find())


def use_compiled(wanted: bool) -> None:
    """Use the compiled forms, where there are any, or leave them alone (to compare the two)."""
    _twins.is_wanted = wanted


def _name(function: Callable[..., Any]) -> str:
    return f"{function.__module__.rpartition('.')[2]}__{function.__name__}"


def inlined(function: Callable[P, R]) -> Callable[P, R]:
    """Mark a function that compiled ones call; it stays as it is."""
    _marked[_name(function)] = function
    return function


def compiled(function: Callable[P, R]) -> Callable[P, R]:
    """Run ``function``, which takes ``ops`` by keyword, in its compiled form on floats where there is one."""
    name = _name(function)
    _marked[name] = function

    @wraps(function)
    def call(*args: Any, ops: Elementwise = FLOATS, **keywords: Any) -> Any:
        if ops is FLOATS:
            twin = _twins.find().get(name)
            if twin is not None:
                return twin(*args, **keywords)
        return function(*args, ops=ops, **keywords)  # type: ignore[arg-type]

    return cast(Callable[P, R], call)
