"""What will go: how an operation or a field is marked, and what callers who still use it are told.

Source: RFC 9745 (``Deprecation``, a structured date) and RFC 8594 (``Sunset``, an HTTP date).
"""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time
from email.utils import format_datetime
from functools import cache
from typing import Any, NamedTuple

import msgspec
import msgspec.inspect as mi

from .headers import Header

DEPRECATION_HEADER = "Deprecation"
SUNSET_HEADER = "Sunset"
MARK = "x-deprecation"  # beside `deprecated: true` in the contract


class Deprecation(msgspec.Struct, frozen=True, kw_only=True):
    """Since when something is deprecated, when it may stop working, and ``instead``: what to use in its place."""

    since: date
    instead: str
    sunset: date | None = None

    def __post_init__(self) -> None:
        if self.sunset is not None and self.sunset < self.since:
            raise ValueError("a sunset is never before the deprecation (RFC 9745, section 4)")

    def marks(self) -> dict[str, Any]:
        """The members of an OpenAPI operation or schema that say so."""
        return {"deprecated": True, MARK: msgspec.to_builtins(self)}


def deprecated_field(*, since: date, instead: str, sunset: date | None = None) -> dict[str, Any]:
    """For a field: ``Annotated[..., Meta(extra_json_schema=deprecated_field(...))]``."""
    return Deprecation(since=since, instead=instead, sunset=sunset).marks()


def notice(deprecations: list[Deprecation]) -> list[Header]:
    """The headers that announce the earliest of these dates; none for none."""
    if not deprecations:
        return []
    since = min(deprecation.since for deprecation in deprecations)
    headers = [(DEPRECATION_HEADER.lower().encode(), b"@%d" % _midnight(since).timestamp())]
    sunsets = [deprecation.sunset for deprecation in deprecations if deprecation.sunset]
    if sunsets:
        headers.append((SUNSET_HEADER.lower().encode(), format_datetime(_midnight(min(sunsets)), usegmt=True).encode()))
    headers.append((b"link", b'</reference#deprecated>; rel="deprecation"; type="text/html"'))
    return headers


class MarkedField(NamedTuple):
    """A deprecated field of a struct."""

    name: str
    default: Any
    deprecation: Deprecation


@cache
def marked_fields(body_type: type) -> dict[type, list[MarkedField]]:
    """The deprecated fields of every struct that a body of this type can hold."""
    found: dict[type, list[MarkedField]] = {}
    for struct in _structs(mi.type_info(body_type), set()):
        for field in struct.fields:
            mark = (getattr(field.type, "extra_json_schema", None) or {}).get(MARK)
            if mark:
                default = field.default if field.default_factory is msgspec.NODEFAULT else field.default_factory()
                marked = MarkedField(field.name, default, msgspec.convert(mark, Deprecation))
                found.setdefault(struct.cls, []).append(marked)
    return found


def used(body: Any, marked: dict[type, list[MarkedField]]) -> list[Deprecation]:
    """The deprecations of the marked fields that ``body`` sets to anything but their default."""
    if isinstance(body, list | tuple):
        return [deprecation for item in body for deprecation in used(item, marked)]
    if isinstance(body, dict):
        return used(list(body.values()), marked)
    if not isinstance(body, msgspec.Struct):
        return []
    own = [field.deprecation for field in marked.get(type(body), ()) if getattr(body, field.name) != field.default]
    return own + used([getattr(body, name) for name in body.__struct_fields__], marked)


def _structs(node: Any, seen: set[type]) -> Iterator[mi.StructType]:
    """Every struct below ``node``, each once."""
    if isinstance(node, mi.StructType):
        if node.cls in seen:
            return
        seen.add(node.cls)
        yield node
        children: list[Any] = [field.type for field in node.fields]
    elif isinstance(node, mi.UnionType):
        children = list(node.types)
    else:
        names = ("type", "item_type", "item_types", "value_type")
        children = [getattr(node, name) for name in names if hasattr(node, name)]
    for child in children:
        for part in child if isinstance(child, tuple) else (child,):
            yield from _structs(part, seen)


def _midnight(day: date) -> datetime:
    return datetime.combine(day, time(), UTC)
