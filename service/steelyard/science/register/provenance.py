"""What an answer was computed with: noted by what computed it, so that no list of it is kept by hand.

Two things together. While an answer is computed, functions marked ``@traced`` note that they ran, and what is chosen by
data (an equation out of a table) is noted by ``record`` or by being taken from a ``Choice``. Each traced function then
stands for the entries of the register that its code can reach (``reach.py``), up to other traced functions, which note
themselves. Marking more functions tells branches apart more finely; marking fewer never loses an entry.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextvars import ContextVar
from functools import lru_cache, wraps
from typing import Any, ParamSpec, TypeVar

from .reach import TRACED, entries_in, reached

P = ParamSpec("P")
R = TypeVar("R")
K = TypeVar("K")
V = TypeVar("V")

# Functions, and tuples of ids of entries; None while nothing is recorded.
_noted: ContextVar[set[Any] | None] = ContextVar("noted", default=None)


class Ids(Sequence[str]):
    """Ids of entries, read like a list. Many answers share one, so that whoever writes it out may keep that in
    ``written``."""

    __slots__ = ("_ids", "written")

    def __init__(self, ids: Iterable[str]) -> None:
        self._ids = tuple(ids)
        self.written: object = None

    def __getitem__(self, place: Any) -> Any:
        return self._ids[place]

    def __len__(self) -> int:
        return len(self._ids)

    def __iter__(self) -> Iterator[str]:
        return iter(self._ids)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and [*self] == [*other]

    __hash__ = None  # type: ignore[assignment]  # as a list


@lru_cache(maxsize=4096)  # people differ, the ways through the code are few
def _entries_of(noted: frozenset[Any]) -> list[str]:
    """Ids of the entries that what ran can reach, in the order of the alphabet."""
    found: set[str] = set()
    for one in noted:
        found |= reached(one) if callable(one) else set(one)
    return Ids(sorted(found))  # type: ignore[return-value]


def traced(function: Callable[P, R]) -> Callable[P, R]:
    """Note each run of ``function``. For what runs a few times an answer, never for every day of a loop.

    Not for what is only called inside a cached function: it does not run again when the result is taken from there.
    """

    @wraps(function)
    def call(*args: P.args, **keywords: P.kwargs) -> R:
        noted = _noted.get()
        if noted is not None:
            noted.add(call)
        return function(*args, **keywords)

    setattr(call, TRACED, True)
    return call


def recorded(function: Callable[P, R], *ids: str) -> Callable[P, tuple[R, list[str]]]:
    """``function``, which returns what it returned with the entries it was computed with; ``ids`` for every run.

    What was noted is told to a recording around it as well.
    """
    always = (ids, function)

    def call(*args: P.args, **keywords: P.kwargs) -> tuple[R, list[str]]:
        mine: set[Any] = {*always}
        outer, token = _noted.get(), _noted.set(mine)
        try:
            value = function(*args, **keywords)
        finally:
            _noted.reset(token)
        if outer is not None:
            outer |= mine
        return value, _entries_of(frozenset(mine))

    return call


def record(*ids: str) -> None:
    """Note entries that data chose."""
    noted = _noted.get()
    if noted is not None:
        noted.add(ids)


class Choice(dict[K, V]):
    """A table from which data chooses: what is taken from it by key is noted, not the table as a whole.

    Only ``table[key]`` tells what is chosen, so that nothing else may be asked of the values.
    """

    is_choice = True

    def __init__(self, table: Mapping[K, V] | Iterable[tuple[K, V]]) -> None:
        super().__init__(table)
        self._entries = {key: tuple(sorted(entries_in(value))) for key, value in super().items()}

    def __getitem__(self, key: K) -> V:
        noted = _noted.get()
        if noted is not None:
            noted.add(self._entries[key])
        return super().__getitem__(key)

    def get(self, *_: Any) -> Any:
        """Not there."""
        raise TypeError("take what is chosen by table[key]")

    values = items = get
