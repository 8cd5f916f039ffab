"""Formulas that run compiled on floats where the install could build them, and as they are written everywhere.

``@compiled`` marks a function whose float form is built by ``service/compile_core`` from its own source, ``@inlined``
one that such functions call. Both forms give the same answer to the last bit (tested), so that it shows in nothing but
speed. A build that does not belong to the very code at hand is left alone.
"""

import sys
from collections.abc import Callable, Mapping
from functools import wraps
from importlib import import_module
from types import CodeType, FunctionType, ModuleType
from typing import Any, ClassVar, ParamSpec, TypeVar, cast
from zlib import crc32

from .elementwise import FLOATS, Elementwise

P = ParamSpec("P")
R = TypeVar("R")
T = TypeVar("T")

# Makes a named tuple of all its fields, in order, in half the time of calling it: steps are what a forecast is made of.
new_tuple = tuple.__new__

_marked: dict[str, Callable[..., Any]] = {}


def checksum_of(codes: Mapping[str, CodeType]) -> int:
    """A number for what functions, by name, do, apart from where they stand."""
    return crc32("".join(f"{name}:{_told(codes[name])}" for name in sorted(codes)).encode())


def _told(code: CodeType) -> str:
    constants = [_told(c) if isinstance(c, CodeType) else repr(c) for c in code.co_consts]
    return repr((code.co_code.hex(), code.co_names, code.co_varnames, constants))


class _Twins:
    """The compiled forms by name: ``None`` until the first is asked for, since they need the modules they are from."""

    found: Mapping[str, Callable[..., Any]] | None = None
    takers: ClassVar[list[Callable[[Mapping[str, Callable[..., Any]]], None]]] = []  # each takes its own


def _use(twins: Mapping[str, Callable[..., Any]]) -> Mapping[str, Callable[..., Any]]:
    _Twins.found = twins
    for take in _Twins.takers:
        take(twins)
    return twins


def _load() -> Mapping[str, Callable[..., Any]]:
    """The compiled forms; none where there is no build, or one of other code."""
    try:
        from steelyard.science._floats import CHECKSUM, PLACES, TWINS
    except ImportError:
        return _use({})
    codes = {name: function.__code__ for name, function in _marked.items()}
    return _use(TWINS if checksum_of(codes) == CHECKSUM and _are_in_place(PLACES) else {})


def _are_in_place(places: Mapping[str, Mapping[str, Mapping[str, int]]]) -> bool:
    """Whether named tuples, by module and class, have their fields where compiled forms look for them; of those loaded,
    as all are that such forms were made from."""
    return all(
        _fields_of(sys.modules[module], name)[place : place + 1] == (field,)
        for module, classes in places.items()
        if module in sys.modules
        for name, fields in classes.items()
        for field, place in fields.items()
    )


def _fields_of(module: ModuleType, name: str) -> tuple[str, ...]:
    fields: tuple[str, ...] = getattr(getattr(module, name, None), "_fields", ())
    return fields


class _Kernels:
    """Compiled kernels by the module that they were made from, as far as asked for."""

    found: ClassVar[dict[str, ModuleType]] = {}


def kernel_in_use(written: ModuleType) -> ModuleType:
    """The compiled form of a kernel where there is one of this very code and compiled forms are in use, else itself.

    A kernel is a module of functions over rows of doubles that a compiler takes as it is.
    """
    if not is_compiled():
        return written
    name = written.__name__
    found = _Kernels.found.get(name)
    if found is None:
        found = written
        try:
            made = import_module(f"steelyard.science._{name.rpartition('.')[2]}")
        except ImportError:
            pass
        else:
            codes = {n: f.__code__ for n, f in vars(written).items() if isinstance(f, FunctionType)}
            if made.checksum() == checksum_of(codes):
                found = made
        _Kernels.found[name] = found
    return found


def use_compiled(wanted: bool) -> bool:
    """Use the compiled forms (or leave them alone, to compare the two); return whether they are in use."""
    if wanted:
        return bool(_load())
    _use({})
    return False


def is_compiled() -> bool:
    """Whether the compiled forms are in use."""
    return bool(_load() if _Twins.found is None else _Twins.found)


def _name(marked: Any) -> str:
    return f"{'_'.join(marked.__module__.split('.')[-2:])}__{marked.__name__}"


def inlined(marked: T) -> T:
    """Mark a function, or a class, that compiled ones use; it stays as it is."""
    if isinstance(marked, FunctionType):
        _marked[_name(marked)] = marked
    else:
        for member in vars(marked).values():
            function = member.fget if isinstance(member, property) else member
            if isinstance(function, FunctionType):
                _marked[f"{_name(marked)}.{function.__name__}"] = function
    return marked


def compiled(function: Callable[P, R]) -> Callable[P, R]:
    """Run ``function``, which takes ``ops`` by keyword, in its compiled form on floats where there is one."""
    name = _name(function)
    _marked[name] = function

    def first(*args: Any, **keywords: Any) -> Any:
        take(_load() if _Twins.found is None else _Twins.found)
        return call(*args, **keywords)

    twin: Callable[..., Any] | None = first

    def take(twins: Mapping[str, Callable[..., Any]]) -> None:
        nonlocal twin
        twin = twins.get(name)

    _Twins.takers.append(take)

    @wraps(function)
    def call(*args: Any, ops: Elementwise = FLOATS, **keywords: Any) -> Any:
        if ops is FLOATS and twin is not None:
            return twin(*args, **keywords)
        return function(*args, ops=ops, **keywords)  # type: ignore[arg-type]

    return cast(Callable[P, R], call)
