"""The register of everything a number can rest on: sources, constants, equations and rules.

A constant is *defined* by registering it (``constant(...)`` returns its float), an equation by the decorator
or object that computes it. So the catalogue served at ``/v1/methods`` and the answers read the same literals:
change one, and both move.
"""

from collections.abc import Callable, Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import Any, TypeVar

import msgspec


class Basis(StrEnum):
    """How well a value is supported."""

    PUBLISHED = "published"
    FROM_MEMORY = "from memory"
    COMMON_PRACTICE = "common practice, no published source"
    JUDGEMENT = "our judgement, no published source"


class Kind(StrEnum):
    """What a catalogue entry is."""

    CONSTANT = "constant"
    EQUATION = "equation"
    MODEL = "model"
    RULE = "rule"


class Source(msgspec.Struct, frozen=True, kw_only=True):
    """A publication, standard or table."""

    id: str
    citation: str
    doi: str | None = None


class Entry(msgspec.Struct, frozen=True, kw_only=True):
    """One catalogue entry. ``value`` and ``unit`` are set for constants and for the limits of rules."""

    id: str
    kind: Kind
    summary: str
    formula: str
    basis: Basis
    sources: tuple[Source, ...] = ()
    valid_range: str | None = None
    value: float | None = None
    unit: str | None = None
    standard_deviation: float | None = None

    @property
    def source_ids(self) -> tuple[str, ...]:
        """The ids of its sources."""
        return tuple(source.id for source in self.sources)


_identity = id  # the name is taken by that of entries below
_sources: dict[str, Source] = {}
_constants: dict[int, tuple[float, str]] = {}  # by identity: each is an object of its own
_entries: dict[str, Entry] = {}

SOURCES: Mapping[str, Source] = MappingProxyType(_sources)
ENTRIES: Mapping[str, Entry] = MappingProxyType(_entries)


def source(id: str, citation: str, doi: str | None = None) -> Source:
    """Register a publication: what constants, equations and rules cite by its name."""
    if id in _sources:
        raise ValueError(f"source {id!r} is registered twice")
    _sources[id] = Source(id=id, citation=citation, doi=doi)
    return _sources[id]


def register(entry: Entry) -> str:
    """Add an entry to the catalogue and return its id. Ids are unique."""
    if entry.id in _entries:
        raise ValueError(f"catalogue entry {entry.id!r} is registered twice")
    _entries[entry.id] = entry
    return entry.id


def constant(
    id: str,
    value: float,
    *,
    unit: str,
    summary: str,
    basis: Basis = Basis.PUBLISHED,
    sources: tuple[Source, ...] = (),
    standard_deviation: float | None = None,
) -> float:
    """Define a constant: register it under ``id`` and return its value in ``unit``, by which it is known again."""
    id_of = register(
        Entry(
            id=id,
            kind=Kind.CONSTANT,
            summary=summary,
            formula=f"{value:g} {unit}".strip(),
            basis=basis,
            sources=sources,
            value=float(value),
            unit=unit,
            standard_deviation=standard_deviation,
        )
    )
    own = value * 1.0  # a new object, by which it is known again
    _constants[_identity(own)] = own, id_of
    return own


def constant_id(value: float) -> str | None:
    """The id of a constant, known again by identity; None for any other number."""
    found = _constants.get(_identity(value))
    return None if found is None else found[1]


_F = TypeVar("_F", bound=Callable[..., Any])


def equation(
    id: str,
    *,
    summary: str,
    formula: str,
    basis: Basis = Basis.PUBLISHED,
    sources: tuple[Source, ...] = (),
    valid_range: str | None = None,
    kind: Kind = Kind.EQUATION,
) -> Callable[[_F], _F]:
    """Decorate the function that computes an equation or model. Build ``formula`` from the constants it uses."""
    register(
        Entry(
            id=id,
            kind=kind,
            summary=summary,
            formula=formula,
            basis=basis,
            sources=sources,
            valid_range=valid_range,
        )
    )

    def marked(function: _F) -> _F:
        function.__entry__ = id  # type: ignore[attr-defined]
        return function

    return marked
