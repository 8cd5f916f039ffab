"""Which entries of the register the code of a function can reach, read from its compiled code once and kept.

Followed are the global names of a function, the functions and classes behind them, and attributes by their name, in
every class of the package. Constants are told by identity (``constant`` returns a float of its own), values made of
them by the names in the statement of their module that made them. A constant that is reached through the function of an
equation is told by that equation, which owns it; one that is reached otherwise is told itself. Entries chosen by data
(objects with an id of their own) are left to those who choose. Everything that might run is followed, so that more
than what ran may be told, never less.
"""

import dis
import re
import sys
from collections.abc import Callable, Iterable, Iterator
from functools import cache, cached_property, lru_cache, partial
from importlib.abc import InspectLoader
from types import CodeType, FunctionType, ModuleType
from typing import Any, NamedTuple, get_args, get_origin

import msgspec

from .evidence import ENTRIES, Entry, Source, constant_id

TRACED = "__traced__"  # set on functions that note their own runs
ENTRY = "__entry__"  # set on functions that compute an equation or model: its id
_PACKAGES = ("steelyard.science.", "steelyard.answers.")
_NOT_FOLLOWED = ("steelyard.science.register.", "steelyard.science.numbers.twins")


class _Statement(NamedTuple):
    """A statement of a module that gives values names: the names it reads, and the texts in it."""

    reads: frozenset[str]
    texts: frozenset[str]
    inner: tuple[CodeType, ...]


def reached(function: Callable[..., Any]) -> frozenset[str]:
    """Ids of the entries that a run of ``function`` may have used, but for those that traced functions note."""
    return _reached(function)


@cache
def _reached(function: Callable[..., Any]) -> frozenset[str]:
    walk = _Walk()
    walk.start(function)
    return frozenset(walk.found)


@cache
def owned_by(id: str) -> frozenset[str]:
    """Ids of all the constants that an equation or model stands for: those that its function reaches."""
    walk = _Walk(owns=False)
    for function in _functions_of(id):
        walk.start(function)
    return frozenset(walk.found)


def entries_in(value: Any) -> set[str]:
    """Ids of the constants, equations and rules that a value holds."""
    walk = _Walk(owns=False)
    walk.follow(value, _Way())
    return walk.found


def _functions_of(id: str) -> Iterator[FunctionType]:
    for module in _modules():
        for value in vars(module).values():
            if getattr(value, ENTRY, None) == id and callable(value):
                yield value


class _Way(NamedTuple):
    """How a walk got somewhere: through an equation that owns its constants, or through a cached function."""

    is_owned: bool = False
    is_cached: bool = False


class _Walk:
    """A walk through what code can reach. ``owns``: whether equations stand for their constants.

    Methods are those of the classes that come into sight: made or named by the code walked through, or the types of
    parameters, results and fields in sight.
    """

    def __init__(self, owns: bool = True) -> None:
        self.found: set[str] = set()
        self._owns = owns
        self._values: set[tuple[int, _Way]] = set()
        self._globals: set[tuple[str, str, _Way]] = set()
        self._attributes: dict[str, set[_Way]] = {}
        self._classes: set[type] = set()
        self._members: dict[str, list[Any]] = {}  # of the classes in sight
        self._kept: list[Any] = []  # identities hold while objects do

    def start(self, function: Any) -> None:
        """Walk from a function, whether or not it is traced itself."""
        self._function(function, _Way(), is_first=True)

    def follow(self, value: Any, way: _Way) -> None:
        """Walk from any value that code can get at."""
        kind = type(value)
        if kind is float or kind is str:
            entry = ENTRIES.get(constant_id(value) or "" if kind is float else value)
            if entry is not None and not way.is_owned:
                self.found.add(entry.id)
            return
        if value is None or kind in (int, bool, bytes, ModuleType, Entry, Source) or (id(value), way) in self._values:
            return
        self._values.add((id(value), way))
        self._kept.append(value)
        if isinstance(value, type):
            self._see(value)
            for base in value.__mro__:  # whoever names a class may make one
                self._defaults(base, way)
        elif isinstance(value, FunctionType) or hasattr(value, "__wrapped__"):
            self._function(value, way)
        elif isinstance(value, partial):
            for part in (value.func, *value.args, *value.keywords.values()):
                self.follow(part, way)
        elif hasattr(value, "__func__"):
            self.follow(value.__func__, way)
        elif not _is_chosen(value) or (way.is_cached and isinstance(value, dict)):  # nor is a choice noted in a cache
            self._see(kind)
            for part in _parts(value):
                self.follow(part, way)

    def _function(self, value: Any, way: _Way, *, is_first: bool = False) -> None:
        entry, is_traced = getattr(value, ENTRY, None), False
        while True:
            is_traced = is_traced or TRACED in vars(value)
            # Inside a cached function nothing runs, nor is noted, when the result is taken from the cache.
            way = _Way(way.is_owned, way.is_cached or hasattr(value, "cache_info"))
            if not hasattr(value, "__wrapped__"):
                break
            value = value.__wrapped__
        if not isinstance(value, FunctionType) or not _is_followed(value.__module__):
            return
        module = sys.modules[value.__module__]
        self._see_types(value.__annotations__, module)
        if is_traced and not is_first and not way.is_cached:
            return
        if entry is not None:
            self.found.add(entry)
            way = _Way(self._owns, way.is_cached)
        for cell in value.__closure__ or ():
            self.follow(_content(cell), way)
        for default in (*(value.__defaults__ or ()), *(value.__kwdefaults__ or {}).values()):
            if type(default) is not str:
                self.follow(default, way)
            # A number made of constants is told by the statement that made it.
            for name in [name for name, known in vars(module).items() if type(known) is float and known is default]:
                self._global(module, name, way)
        self._code(value.__code__, module, way)

    def _code(self, code: CodeType, module: ModuleType, way: _Way) -> None:
        globals_ = vars(module)
        others = [v for name in code.co_names if isinstance(v := globals_.get(name), ModuleType) and _is_ours(v)]
        for name in code.co_names:
            if name in globals_:
                self._global(module, name, way)
            for other in others:
                if name in vars(other):
                    self._global(other, name, way)
            self._attribute(name, way)
        for inner in code.co_consts:
            if isinstance(inner, CodeType):
                self._code(inner, module, way)

    def _attribute(self, name: str, way: _Way) -> None:
        ways = self._attributes.setdefault(name, set())
        if way not in ways:
            ways.add(way)
            for member in tuple(self._members.get(name, ())):
                self.follow(member, way)

    def _global(self, module: ModuleType, name: str, way: _Way) -> None:
        if (module.__name__, name, way) in self._globals:
            return
        self._globals.add((module.__name__, name, way))
        value = vars(module)[name]
        self.follow(value, way)
        if isinstance(value, type | ModuleType | Entry | Source) or callable(value) or _is_chosen(value):
            return
        if type(value) is str:
            return
        for maker, made in _makers(module, name, value):
            statement = _statements(maker)[made]
            if not way.is_owned and _holds_whole(value):
                self.found |= statement.texts & ENTRIES.keys()
            for read in statement.reads:
                if read in vars(maker):
                    self._global(maker, read, way)
            for code in statement.inner:
                self._code(code, maker, way)

    def _see(self, cls: type) -> None:
        """A class comes into sight, with its fields' types and those that derive from it."""
        for base in (*cls.__mro__, *_all_below(cls)):
            if base in self._classes or not _is_followed(base.__module__):
                continue
            self._classes.add(base)
            module = sys.modules[base.__module__]
            self._see_types(vars(base).get("__annotations__", {}), module)
            for name, member in vars(base).items():
                if isinstance(member, _MEMBERS) or hasattr(member, "__wrapped__"):
                    self._members.setdefault(name, []).append(member)
                    for way in tuple(self._attributes.get(name, ())):
                        self.follow(member, way)
                    if name.startswith("__"):
                        self.follow(member, _Way())

    def _defaults(self, cls: type, way: _Way) -> None:
        if _is_followed(cls.__module__):
            for default in (*getattr(cls, "_field_defaults", {}).values(), *getattr(cls, "__struct_defaults__", ())):
                self.follow(default, way)

    def _see_types(self, annotations: Any, module: ModuleType) -> None:
        for annotation in annotations.values():
            for cls in _classes_in(annotation, module):
                self._see(cls)


def _holds_whole(value: Any) -> bool:
    """Whether a value is or holds whole numbers, which are not told apart by identity as constants are."""
    return type(value) is int or (isinstance(value, dict | list | tuple) and any(map(_holds_whole, _parts(value))))


def _content(cell: Any) -> Any:
    try:
        return cell.cell_contents
    except ValueError:  # not set yet
        return None


def _is_chosen(value: Any) -> bool:
    """Whether a value is an entry, or a table of some, of which data chooses."""
    if isinstance(value, dict):
        return hasattr(type(value), "is_choice")
    return getattr(value, "id", None) in ENTRIES if isinstance(value, msgspec.Struct) else False


def _parts(value: Any) -> Iterable[Any]:
    if isinstance(value, dict):
        return (*(key for key in value if not isinstance(key, str)), *value.values())
    if isinstance(value, list | tuple | set | frozenset):
        return value
    if isinstance(value, msgspec.Struct):
        return (getattr(value, name) for name in value.__struct_fields__)
    if isinstance(value, property):
        return (value.fget,)
    if isinstance(value, cached_property):
        return (value.func,)
    return ()


_MEMBERS = (FunctionType, property, cached_property, staticmethod, classmethod)


def _is_ours(module: ModuleType) -> bool:
    return module.__name__.startswith(_PACKAGES)


def _is_followed(module: str) -> bool:
    return module.startswith(_PACKAGES) and not module.startswith(_NOT_FOLLOWED)


def _all_below(cls: type) -> Iterator[type]:
    """The classes that derive from a class of the package."""
    if _is_followed(cls.__module__):
        subclasses: list[type] = type.__subclasses__(cls)
        for below in subclasses:
            yield below
            yield from _all_below(below)


def _classes_in(annotation: Any, module: ModuleType) -> Iterator[type]:
    """The classes that an annotation names."""
    if isinstance(annotation, str):
        for name in re.findall(r"\w+", annotation):
            yield from _classes_in(vars(module).get(name), module)
    elif isinstance(annotation, type) and not get_args(annotation):
        yield annotation
    else:
        for part in (get_origin(annotation), *get_args(annotation)):
            if part is not None and part is not annotation and not isinstance(part, list | tuple):
                yield from _classes_in(part, module)


# Of modules, once they are loaded.


def _modules() -> tuple[ModuleType, ...]:
    return _modules_of(len(sys.modules))


@lru_cache(maxsize=1)
def _modules_of(_loaded: int) -> tuple[ModuleType, ...]:
    """Those of the package, looked for again when there are more modules."""
    return tuple(module for module in list(sys.modules.values()) if isinstance(module, ModuleType) and _is_ours(module))


def _makers(module: ModuleType, name: str, value: Any) -> Iterable[tuple[ModuleType, str]]:
    """The modules, and the names there, that made what ``module`` knows as ``name``."""
    if name in _statements(module):
        return ((module, name),)
    is_same = (lambda other: other == value) if type(value) is int else (lambda other: other is value)
    there = (m for m in _modules() if m is not module and name in vars(m) and is_same(vars(m)[name]))
    return tuple((maker, name) for maker in there if name in _statements(maker))


@cache
def _statements(module: ModuleType) -> dict[str, _Statement]:
    """The statements of a module that give values names, by name; imports are left out."""
    found: dict[str, _Statement] = {}
    loader = module.__spec__.loader if module.__spec__ else None
    code: CodeType | None = loader.get_code(module.__name__) if isinstance(loader, InspectLoader) else None
    reads: set[str] = set()
    texts: set[str] = set()
    inner: list[CodeType] = []
    targets: list[str] = []
    is_import = False
    for instruction in dis.get_instructions(code) if code else ():
        op, value = instruction.opname, instruction.argval
        if op in ("STORE_NAME", "STORE_GLOBAL"):
            targets.append(value)
            continue
        if targets or op in ("POP_TOP", "STORE_SUBSCR"):
            if not is_import:
                statement = _Statement(frozenset(reads), frozenset(texts), tuple(inner))
                found |= dict.fromkeys(targets, statement)
            reads, texts, inner, targets, is_import = set(), set(), [], [], False
        if op in ("IMPORT_NAME", "IMPORT_FROM"):
            is_import = True
        elif op in ("LOAD_NAME", "LOAD_GLOBAL"):
            reads.add(value)
        elif isinstance(value, CodeType):
            inner.append(value)
        elif isinstance(value, str) and op == "LOAD_CONST":
            texts.add(value)
    return found
