"""The shape of a table, read off the structs of the contract: what is a column, what is a list, what may be missing.

Nothing here knows Arrow. An object of the contract is a struct, an array a list, and an object with free names a map.
Of a union of objects a struct has the fields of all, beside the field that tells them apart. Null stands for a field
that is left out: no request has a field for which the two differ, which ``shape_of`` makes sure of.
"""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import NamedTuple

import msgspec.inspect as mi

from steelyard.http.wire.body_schema import branches


class NoShape(TypeError):  # noqa: N818 - named for what is missing
    """A type of the contract that no column can hold; found when the module that names it is loaded."""


class Scalar(NamedTuple):
    """One value: ``double``, ``int64``, ``bool``, ``string``, ``date``, or ``number_or_text`` of a message."""

    kind: str


class Items(NamedTuple):
    """A list."""

    item: "Shape"


class Entries(NamedTuple):
    """A map from names to values."""

    value: "Shape"


class Field(NamedTuple):
    """A field of an object. ``attribute`` is its name in the code, ``needed`` whether a caller must send it.

    ``is_tag``: it tells the objects of a union apart, and is of their class, not an attribute. ``tags`` are those of
    the union's objects that have it.
    """

    name: str
    attribute: str
    shape: "Shape"
    needed: bool
    description: str
    is_tag: bool = False
    tags: tuple[str, ...] = ()


class Fields(NamedTuple):
    """An object; of a union, what any of its objects has."""

    fields: tuple[Field, ...]
    is_union: bool = False

    def field(self, name: str) -> Field | None:
        """The field of that name."""
        return next((field for field in self.fields if field.name == name), None)


Shape = Scalar | Items | Entries | Fields

_SCALARS: dict[type, str] = {
    mi.FloatType: "double",
    mi.IntType: "int64",
    mi.BoolType: "bool",
    mi.StrType: "string",
    mi.EnumType: "string",
    mi.DateType: "date",
}


@cache
def shape_of(type_: type) -> Fields:
    """The shape of a struct of the contract. Raises ``NoShape``."""
    found = _shape(mi.type_info(type_), type_.__name__)
    if not isinstance(found, Fields):
        raise NoShape(f"{type_.__name__} is not an object")
    return found


def _shape(node: mi.Type, place: str) -> Shape:
    nodes = [each for each in branches(node) if not isinstance(each, mi.NoneType)]
    structs = [each for each in nodes if isinstance(each, mi.StructType)]
    if len(nodes) == 1:
        (only,) = nodes
        if type(only) in _SCALARS:
            return Scalar(_SCALARS[type(only)])
        if isinstance(only, mi.ListType | mi.VarTupleType):
            return Items(_shape(only.item_type, f"{place}[]"))
        if isinstance(only, mi.DictType):
            return Entries(_shape(only.value_type, f"{place}{{}}"))
        if structs:
            return Fields(tuple(_fields(structs[0], place)))
    elif structs == nodes:
        return _union(structs, place)
    elif {type(each) for each in nodes} <= {mi.FloatType, mi.IntType, mi.StrType}:
        return Scalar("number_or_text")
    raise NoShape(f"{place} cannot be a column: {nodes}")


def _fields(struct: mi.StructType, place: str) -> Iterator[Field]:
    if struct.tag_field:
        yield Field(struct.tag_field, struct.tag_field, Scalar("string"), True, f"`{struct.tag}`.", is_tag=True)
    for field in struct.fields:
        where = f"{place}.{field.encode_name}"
        is_nullable = any(isinstance(each, mi.NoneType) for each in branches(field.type))
        if is_nullable and not field.required and field.default is not None:
            raise NoShape(f"{where}: null and absent differ")
        yield Field(
            field.encode_name, field.name, _shape(field.type, where), field.required, " ".join(_described(field.type))
        )


def _described(node: mi.Type) -> Iterator[str]:
    """What the contract says of a type, the outermost first."""
    if isinstance(node, mi.Metadata):
        said = (node.extra_json_schema or {}).get("description")
        if said:
            yield said
            return
        yield from _described(node.type)
    elif isinstance(node, mi.UnionType):
        for each in node.types:
            yield from _described(each)


def _union(structs: Sequence[mi.StructType], place: str) -> Fields:
    """The fields of several objects, each once; where two have one of the same name, it must be of one shape."""
    found: dict[str, Field] = {}
    for struct in structs:
        for field in _fields(struct, place):
            known = found.get(field.name)
            if known is not None and known.shape != field.shape:
                raise NoShape(f"{place}.{field.name} has two shapes")
            kept = field if known is None else known
            if known is not None and field.is_tag:
                kept = known._replace(description=f"{known.description[:-1]}, {field.description}")
            found[field.name] = kept._replace(tags=(*kept.tags, str(struct.tag)))
    tags = {struct.tag_field for struct in structs}
    return Fields(tuple(field._replace(needed=field.name in tags) for field in found.values()), is_union=True)


class UnknownColumn(ValueError):  # noqa: N818 - named for what it is about
    """A column that an answer does not have."""


def chosen(shape: Fields, paths: Sequence[str]) -> Fields:
    """What of a shape lies at ``paths``, such as ``maintenance_kcal`` or ``change.fat_kg.mean``, in the shape's order.

    Lists and unions are taken whole. Raises ``UnknownColumn``.
    """
    names: dict[str, list[str]] = {}
    for path in paths:
        name, _, rest = path.partition(".")
        names.setdefault(name, []).append(rest)
    for name in names:
        if shape.field(name) is None:
            known = ", ".join(field.name for field in shape.fields)
            raise UnknownColumn(f"there is no column {name!r}; there are {known}")
    kept = []
    for field in shape.fields:
        if field.name not in names:
            continue
        rests = names[field.name]
        if "" not in rests:
            if not isinstance(field.shape, Fields):
                raise UnknownColumn(f"{field.name} has no parts to choose from")
            field = field._replace(shape=chosen(field.shape, rests))
        kept.append(field)
    return Fields(tuple(kept), shape.is_union)


def described(shape: Shape) -> str:
    """A shape in the words of Arrow: ``list<struct>``."""
    match shape:
        case Scalar("number_or_text"):
            return "struct<number: double, text: string>"
        case Scalar("date"):
            return "date32"
        case Scalar(kind):
            return kind
        case Items(item):
            return f"list<{described(item)}>"
        case Entries(value):
            return f"map<string, {described(value)}>"
        case _:
            return "struct"


def columns(shape: Shape, prefix: str = "") -> Iterator[tuple[str, Field]]:
    """Every column of a table with its path, depth first; a list's items stand behind ``[]``."""
    while isinstance(shape, Items):
        shape, prefix = shape.item, f"{prefix}[]"
    if not isinstance(shape, Fields):
        return
    for field in shape.fields:
        path = f"{prefix}.{field.name}" if prefix else field.name
        yield path, field
        yield from columns(field.shape, path)
