"""What a place in a request body accepts, in words, read off the same type that decodes the body."""

from collections.abc import Iterator
from functools import cache
from typing import Any

import msgspec.inspect as mi

Step = str | int


@cache
def _root(body_type: type) -> mi.Type:
    return mi.type_info(body_type)


def branches(node: mi.Type) -> Iterator[mi.Type]:
    """The plain types of a node: annotations peeled off, unions opened."""
    if isinstance(node, mi.Metadata):
        yield from branches(node.type)
    elif isinstance(node, mi.UnionType):
        for branch in node.types:
            yield from branches(branch)
    else:
        yield node


def _structs(nodes: list[mi.Type]) -> list[mi.StructType]:
    return [node for node in nodes if isinstance(node, mi.StructType)]


def _at(body_type: type, path: list[Step], sent: Any) -> list[mi.Type]:
    """The plain types that may stand at ``path``; none where the path leads out of the schema.

    Of a union those that go with the tag that was ``sent``, the body as plain values, where it has one.
    """
    nodes = _tagged(list(branches(_root(body_type))), sent)
    for step in path:
        found: list[mi.Type] = []
        for node in nodes:
            if isinstance(node, mi.StructType):
                if node.tag_field == step:
                    found.append(mi.LiteralType((node.tag,)))
                found += [t for f in node.fields if f.encode_name == step for t in branches(f.type)]
            elif isinstance(node, mi.ListType | mi.VarTupleType | mi.SetType | mi.FrozenSetType):
                found += branches(node.item_type)
            elif isinstance(node, mi.DictType):
                found += branches(node.value_type)
        sent = _inside(sent, step)
        nodes = _tagged(found, sent)
    return nodes


def _inside(sent: Any, step: Step) -> Any:
    if isinstance(sent, dict):
        return sent.get(step)
    return sent[step] if isinstance(sent, list) and isinstance(step, int) and step < len(sent) else None


def value_at(path: list[Step], sent: Any) -> Any:
    """What the body ``sent``, as plain values, has at ``path``; None where there is nothing."""
    for step in path:
        sent = _inside(sent, step)
    return sent


def _tagged(nodes: list[mi.Type], sent: Any) -> list[mi.Type]:
    if not isinstance(sent, dict):
        return nodes
    fit = [struct for struct in _structs(nodes) if struct.tag_field and sent.get(struct.tag_field) == struct.tag]
    return list(fit) or nodes


def field_names(body_type: type, path: list[Step], sent: Any = None) -> list[str]:
    """The names that the object at ``path`` accepts, a union's tag field among them."""
    names: dict[str, None] = {}
    for struct in _structs(_at(body_type, path, sent)):
        if struct.tag_field:
            names[struct.tag_field] = None
        names.update(dict.fromkeys(f.encode_name for f in struct.fields))
    return list(names)


def find_pointer(body_type: type, name: str) -> str:
    """The pointer to the field ``name``, the least deep one outside arrays; ``#`` if the body has none."""
    level: list[tuple[str, mi.Type]] = [("#", node) for node in branches(_root(body_type))]
    for _ in range(8):
        deeper: list[tuple[str, mi.Type]] = []
        for pointer, node in level:
            if not isinstance(node, mi.StructType):
                continue
            for field in node.fields:
                if field.encode_name == name:
                    return f"{pointer}/{name}"
                deeper += [(f"{pointer}/{field.encode_name}", branch) for branch in branches(field.type)]
        level = deeper
    return "#"


def describe(body_type: type, path: list[Step], sent: Any = None) -> str:
    """What fits at ``path`` of the body ``sent``: ``a number from 30 to 300``; empty where the schema says nothing."""
    nodes = _at(body_type, path, sent)
    values = [str(v) for node in nodes for v in _closed_values(node)]
    texts = [f"one of {', '.join(dict.fromkeys(values))}"] if values else []
    kinds = [struct for struct in _structs(nodes) if struct.tag_field]
    if kinds:
        texts.append(f"an object whose {kinds[0].tag_field} is one of {', '.join(str(kind.tag) for kind in kinds)}")
    texts += dict.fromkeys(text for node in nodes if (text := _text(node)))
    return " or ".join(texts)


def _closed_values(node: mi.Type) -> list[Any]:
    if isinstance(node, mi.EnumType):
        return [member.value for member in node.cls]
    return list(node.values) if isinstance(node, mi.LiteralType) else []


def _text(node: mi.Type) -> str:
    match node:
        case mi.IntType():
            return "a whole number" + _range(node)
        case mi.FloatType():
            return "a number" + _range(node)
        case mi.BoolType():
            return "true or false"
        case mi.NoneType():
            return "null"
        case mi.DateType():
            return "a date such as 2025-01-31 (RFC 3339 full-date)"
        case mi.DateTimeType():
            return "an instant such as 2025-01-31T08:30:00Z (RFC 3339 date-time)"
        case mi.TimeType():
            return "a time such as 08:30:00 (RFC 3339 partial-time)"
        case mi.StrType():
            pattern = f" matching {node.pattern}" if node.pattern else ""
            return "a string" + _length(node.min_length, node.max_length, "characters") + pattern
        case mi.ListType() | mi.VarTupleType() | mi.SetType() | mi.FrozenSetType():
            return "an array" + _length(node.min_length, node.max_length, "entries")
        case mi.StructType() if node.tag_field:
            return ""
        case mi.StructType() | mi.DictType():
            return "an object"
        case _:
            return ""


def _range(node: mi.IntType | mi.FloatType) -> str:
    low = f"above {node.gt:g}" if node.gt is not None else "" if node.ge is None else f"{node.ge:g} or more"
    high = f"below {node.lt:g}" if node.lt is not None else "" if node.le is None else f"at most {node.le:g}"
    if node.ge is not None and node.le is not None:
        return f" from {node.ge:g} to {node.le:g}"
    return "".join(f" {part}" for part in (" and ".join(filter(None, (low, high))),) if part)


def _length(low: int | None, high: int | None, what: str) -> str:
    if low and high is not None:
        return f" of {low} to {high} {what}"
    if high is not None:
        return f" of at most {high} {what}"
    return f" of at least {low} {what}" if low else ""
