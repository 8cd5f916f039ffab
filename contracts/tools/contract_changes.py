"""What changed between two versions of the contract, and whether a version number allows it.

A change is breaking when a client written for the older document may fail with the newer one: judged by the documents
alone, by direction. Requests may only be given more freedom, answers may only be given more fields (Google AIP-180,
"Backwards compatibility"; the levels follow oasdiff's).
"""

from collections.abc import Iterable, Iterator, Mapping
from enum import StrEnum
from typing import Any, NamedTuple

Json = Mapping[str, Any]

_METHODS = ("get", "post", "put", "patch", "delete")
_LINES = "x-steelyard-lines"
_PURE = "x-steelyard-pure"
_DEFAULT = "x-steelyard-default"
_EXTENSIBLE = "Extensible"  # the word by which a description reserves further values
_LOW = ("minimum", "exclusiveMinimum", "minLength", "minItems")
_HIGH = ("maximum", "exclusiveMaximum", "maxLength", "maxItems")
_EXACT = ("format", "pattern")
_SAID = ("description", "title", "summary", "examples")
_INFINITE = float("inf")
_OTHER_NUMBER = {"integer": "number", "number": "integer"}


class Level(StrEnum):
    """How much a change matters to a client."""

    BREAKING = "breaking"
    ADDITIVE = "additive"
    TEXT = "text"


class Change(NamedTuple):
    """One change, and the place in the contract where it is."""

    level: Level
    place: str
    what: str

    @property
    def id(self) -> str:
        """By what the list of accepted breaks names it."""
        return f"{self.place}: {self.what}"


def changes(old: Json, new: Json) -> list[Change]:
    """Every change from one OpenAPI document to another, the gravest first."""
    found = set(_Comparison(old, new).run())
    return sorted(found, key=lambda change: (list(Level).index(change.level), change.place, change.what))


def objections(found: Iterable[Change], *, released: str, version: str, accepted: Iterable[str] = ()) -> list[str]:
    """Why ``version`` may not be published with these changes since ``released``; nothing if it may.

    ``accepted`` are ids of breaking changes that are wanted all the same.
    """
    found = list(found)
    accepted = set(accepted)
    before, now = _numbers(released), _numbers(version)
    breaks = {change.id for change in found if change.level is Level.BREAKING}
    told = [f"accepted, but no such break: {name}" for name in sorted(accepted - breaks)]
    if now < before:
        told.append(f"version {version} is older than the released {released}")
    if now[0] == before[0]:
        told += [f"breaking: {name}" for name in sorted(breaks - accepted)]
    if now[:2] == before[:2]:
        told += [f"additive, so the minor version must rise: {c.id}" for c in found if c.level is Level.ADDITIVE]
        told += [f"accepted, so the minor version must rise: {name}" for name in sorted(breaks & accepted)]
    return told


def _default(schema: Json) -> Any:
    """What a field is taken as where it is absent; the ellipsis where nothing says so."""
    return schema.get(_DEFAULT, schema.get("default", ...))


def _numbers(version: str) -> tuple[int, ...]:
    return tuple(int(part) for part in version.split("."))


class _Comparison:
    """Walks two documents side by side."""

    def __init__(self, old: Json, new: Json) -> None:
        self._old, self._new = old, new
        self._seen: set[tuple[str, str, bool]] = set()

    def run(self) -> Iterator[Change]:
        old, new = _operations(self._old), _operations(self._new)
        for name in old.keys() - new.keys():
            yield Change(Level.BREAKING, name, "the operation is gone")
        for name in new.keys() - old.keys():
            yield Change(Level.ADDITIVE, name, "the operation is new")
        for name in old.keys() & new.keys():
            yield from self._operation(name, old[name], new[name])
        if self._old["info"].get("description") != self._new["info"].get("description"):
            yield Change(Level.TEXT, "the document", "its description is other")

    def _operation(self, name: str, old: Json, new: Json) -> Iterator[Change]:
        if old.get("operationId") != new.get("operationId"):
            yield Change(Level.BREAKING, name, f"its operationId {old.get('operationId')} is other")
        if old.get("tags") != new.get("tags"):
            yield Change(Level.BREAKING, name, "its tag is other, by which clients are laid out")
        if old.get("security") != new.get("security"):
            yield Change(Level.BREAKING, name, "its security is other")
        if old.get(_PURE) and not new.get(_PURE):
            yield Change(Level.BREAKING, name, "it may no longer be sent again")
        if new.get("deprecated") and not old.get("deprecated"):
            yield Change(Level.ADDITIVE, name, "it is deprecated")
        yield from _texts(name, old, new)
        old_body, new_body = old.get("requestBody", {}), new.get("requestBody", {})
        if new_body.get("required") and not old_body.get("required"):
            yield Change(Level.BREAKING, name, "a body is required")
        yield from self._contents(f"{name} request", old_body, new_body, is_input=True)
        yield from self._responses(name, old["responses"], new["responses"])
        old_lines, new_lines = old.get(_LINES, {}), new.get(_LINES, {})
        if old_lines and new_lines:
            yield from self._schema(f"{name} line", old_lines["request"], new_lines["request"], True)
            old_answers, new_answers = {"oneOf": old_lines["answers"]}, {"oneOf": new_lines["answers"]}
            yield from self._schema(f"{name} answer line", old_answers, new_answers, False)

    def _responses(self, name: str, old: Json, new: Json) -> Iterator[Change]:
        for status in old.keys() - new.keys():
            yield Change(Level.BREAKING, name, f"the answer {status} is gone")
        for status in new.keys() - old.keys():
            yield Change(Level.ADDITIVE, name, f"the answer {status} is new")
        for status in old.keys() & new.keys():
            place = f"{name} {status}"
            old_headers, new_headers = old[status].get("headers", {}), new[status].get("headers", {})
            for header in old_headers.keys() - new_headers.keys():
                yield Change(Level.BREAKING, place, f"the header {header} is gone")
            for header in new_headers.keys() - old_headers.keys():
                yield Change(Level.ADDITIVE, place, f"the header {header} is new")
            for header in old_headers.keys() & new_headers.keys():
                before = self._header(self._old, old_headers[header])
                after = self._header(self._new, new_headers[header])
                if before.get("required") and not after.get("required"):
                    yield Change(Level.BREAKING, place, f"the header {header} may be absent")
                yield from self._schema(f"{place} header {header}", before["schema"], after["schema"], False)
            yield from _texts(place, old[status], new[status])
            yield from self._contents(place, old[status], new[status], is_input=False)

    def _contents(self, place: str, old: Json, new: Json, *, is_input: bool) -> Iterator[Change]:
        before, after = old.get("content", {}), new.get("content", {})
        for kind in before.keys() - after.keys():
            yield Change(Level.BREAKING, place, f"the media type {kind} is gone")
        for kind in after.keys() - before.keys():
            yield Change(Level.ADDITIVE, place, f"the media type {kind} is new")
        for kind in before.keys() & after.keys():
            yield from self._schema(place, before[kind]["schema"], after[kind]["schema"], is_input)

    def _schema(self, place: str, old: Json, new: Json, is_input: bool) -> Iterator[Change]:
        """Compare two schemas; a named one is compared once per direction, at the place that its name gives."""
        old_name, new_name = _name(old), _name(new)
        if old_name and new_name:
            if old_name != new_name:
                yield Change(Level.BREAKING, place, f"the type {old_name} is another, {new_name}")
            place = f"{new_name} ({'request' if is_input else 'answer'})"
            if (old_name, new_name, is_input) in self._seen:
                return
            self._seen.add((old_name, new_name, is_input))
        before, after = _branches(self._resolve(self._old, old)), _branches(self._resolve(self._new, new))
        for key in before.keys() - after.keys():
            other = _OTHER_NUMBER.get(key, "")
            if other in after.keys() - before.keys():
                level = Level.ADDITIVE if is_input == (key == "integer") else Level.BREAKING
                yield Change(level, place, f"{key} is {other} now")
                yield from self._branch(place, before[key], after[other], is_input)
            else:
                yield Change(Level.BREAKING, place, f"{key} is gone")
        for key in after.keys() - before.keys():
            if _OTHER_NUMBER.get(key, "") not in before.keys() - after.keys():
                yield Change(Level.ADDITIVE if is_input else Level.BREAKING, place, f"{key} is new")
        for key in before.keys() & after.keys():
            yield from self._branch(place, before[key], after[key], is_input)
        yield from self._annotations(place, old, new)

    def _branch(self, place: str, old: Json, new: Json, is_input: bool) -> Iterator[Change]:
        if _name(old) or _name(new):
            yield from self._schema(place, old, new, is_input)
            return
        yield from _texts(place, old, new)
        yield from _values(place, old, new, is_input)
        yield from _limits(place, old, new, is_input)
        yield from self._properties(place, old, new, is_input)
        if "items" in old or "items" in new:
            yield from self._schema(f"{place}[]", old.get("items", {}), new.get("items", {}), is_input)
        old_more, new_more = old.get("additionalProperties", True), new.get("additionalProperties", True)
        if isinstance(old_more, Mapping) and isinstance(new_more, Mapping):
            yield from self._schema(f"{place}{{}}", old_more, new_more, is_input)
        elif old_more != new_more:
            is_closing = new_more is False
            level = Level.BREAKING if is_closing == is_input else Level.ADDITIVE
            yield Change(
                level, place, "unknown fields are no longer taken" if is_closing else "unknown fields may come"
            )

    def _properties(self, place: str, old: Json, new: Json, is_input: bool) -> Iterator[Change]:
        before, after = old.get("properties", {}), new.get("properties", {})
        was_required, is_required = set(old.get("required", ())), set(new.get("required", ()))
        for field in before.keys() - after.keys():
            yield Change(Level.BREAKING, f"{place}.{field}", "the field is gone")
        for field in after.keys() - before.keys():
            level = Level.BREAKING if is_input and field in is_required else Level.ADDITIVE
            yield Change(level, f"{place}.{field}", "the field is new" + (" and required" * (level is Level.BREAKING)))
        for field in before.keys() & after.keys():
            if (field in was_required) != (field in is_required):
                became = field in is_required
                level = Level.BREAKING if became == is_input else Level.ADDITIVE
                yield Change(level, f"{place}.{field}", f"the field is {'now' if became else 'no longer'} required")
            yield from self._schema(f"{place}.{field}", before[field], after[field], is_input)

    def _annotations(self, place: str, old: Json, new: Json) -> Iterator[Change]:
        if _default(old) is not ... and _default(old) != _default(new):
            yield Change(Level.BREAKING, place, "the default is another")
        if new.get("deprecated") and not old.get("deprecated"):
            yield Change(Level.ADDITIVE, place, "it is deprecated")
        if not _name(old) and not _name(new) and any(union in old for union in ("anyOf", "oneOf")):
            yield from _texts(place, old, new)

    @staticmethod
    def _header(document: Json, header: Json) -> Json:
        name = _name(header)
        resolved: Json = document["components"]["headers"][name] if name else header
        return resolved

    @staticmethod
    def _resolve(document: Json, schema: Json) -> Json:
        name = _name(schema)
        resolved: Json = document["components"]["schemas"][name] if name else schema
        return resolved


def _operations(document: Json) -> dict[str, Json]:
    return {
        f"{method.upper()} {path}": item[method]
        for path, item in document["paths"].items()
        for method in _METHODS
        if method in item
    }


def _name(schema: Json) -> str:
    return str(schema.get("$ref", "")).rpartition("/")[2]


def _branches(schema: Json) -> dict[str, Json]:
    """The alternatives of a schema by what tells them apart; a schema without any is its own one alternative."""
    for union in ("oneOf", "anyOf"):
        if union in schema:
            return {_key(branch): branch for branch in schema[union]}
    if isinstance(schema.get("type"), list):
        return {type_: {"type": "null"} if type_ == "null" else {**schema, "type": type_} for type_ in schema["type"]}
    return {_key(schema): schema}


def _key(branch: Json) -> str:
    if "$ref" in branch:
        return _name(branch)
    return str(branch.get("type", "anything"))


def _values(place: str, old: Json, new: Json, is_input: bool) -> Iterator[Change]:
    """Enumerations, and the lists of examples by which an extensible string tells its values."""
    if _EXTENSIBLE in old.get("description", ""):
        for value in _listed(old, "examples") - _listed(new, "examples"):
            yield Change(Level.BREAKING, place, f"the value {value} is gone")
    before = _listed(old, "enum") | _listed(old, "const")
    after = _listed(new, "enum") | _listed(new, "const")
    if before and not after:
        yield Change(Level.ADDITIVE if is_input else Level.BREAKING, place, "the list of values is open")
        return
    if after and not before:
        yield Change(Level.BREAKING if is_input else Level.ADDITIVE, place, "the list of values is closed")
        return
    for value in before - after:
        yield Change(Level.BREAKING, place, f"the value {value} is gone")
    for value in after - before:
        yield Change(Level.ADDITIVE if is_input else Level.BREAKING, place, f"the value {value} is new")


def _listed(schema: Json, keyword: str) -> set[str]:
    values = schema.get(keyword, [])
    return {str(value) for value in (values if isinstance(values, list) else [values])}


def _limits(place: str, old: Json, new: Json, is_input: bool) -> Iterator[Change]:
    for keyword, sign in [*((name, 1) for name in _LOW), *((name, -1) for name in _HIGH)]:
        before = sign * old.get(keyword, -sign * _INFINITE)
        after = sign * new.get(keyword, -sign * _INFINITE)
        if before != after:
            is_narrower = after > before
            level = Level.BREAKING if is_narrower == is_input else Level.ADDITIVE
            yield Change(level, place, f"{keyword} is {'narrower' if is_narrower else 'wider'}")
    for keyword in _EXACT:
        if old.get(keyword) != new.get(keyword):
            yield Change(Level.BREAKING, place, f"{keyword} is another")


def _texts(place: str, old: Json, new: Json) -> Iterator[Change]:
    for keyword in _SAID:
        if old.get(keyword) != new.get(keyword):
            yield Change(Level.TEXT, place, f"its {keyword} is other")
