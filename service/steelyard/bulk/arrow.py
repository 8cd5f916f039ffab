"""Between Arrow and plain values: types from shapes, columns to values of rows, and values of rows to columns.

Whole columns are converted at a time, level by level: a value alone would cost several times as much.
"""

from collections.abc import Iterable, Sequence
from datetime import date
from itertools import islice
from math import isfinite
from typing import Any

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
from msgspec import UNSET

from .shapes import Entries, Field, Fields, Items, Scalar, Shape

_EPOCH = date(1970, 1, 1).toordinal()
_NUMBER_OR_TEXT = pa.struct([("number", pa.float64()), ("text", pa.string())])
_SCALARS: dict[str, pa.DataType] = {
    "double": pa.float64(),
    "int64": pa.int64(),
    "bool": pa.bool_(),
    "string": pa.string(),
    "date": pa.date32(),
    "number_or_text": _NUMBER_OR_TEXT,
}


def type_of(shape: Shape) -> pa.DataType:
    """The Arrow type of a shape."""
    match shape:
        case Scalar(kind):
            return _SCALARS[kind]
        case Items(item):
            return pa.list_(type_of(item))
        case Entries(value):
            return pa.map_(pa.string(), type_of(value))
        case Fields(fields):
            return pa.struct([field_of(field) for field in fields])


def field_of(field: Field) -> pa.Field:
    """The Arrow field of a field, with what the contract says of it."""
    described = {"description": field.description} if field.description else None
    return pa.field(field.name, type_of(field.shape), metadata=described)


# Columns in


class ColumnMismatch(ValueError):  # noqa: N818 - named for what it is about
    """A column is not of the type that the contract has there, or a needed one is missing."""


def fitted(array: pa.Array, shape: Shape, place: str) -> pa.Array:
    """``array`` as ``shape`` has it, where nothing is lost by it. Raises ``ColumnMismatch``.

    Numbers may be narrower, texts and lists of the large kind or encoded as a dictionary. A field that may be left out
    may be missing; one that is not known is refused. A text is no number, and a number no text.
    """
    found = array.type
    if pa.types.is_dictionary(found):
        return fitted(array.dictionary_decode(), shape, place)
    if pa.types.is_null(found):
        return pa.nulls(len(array), type_of(shape))
    if isinstance(shape, Fields):
        if not pa.types.is_struct(found):
            raise _mismatch(place, found, "a struct")
        return _fitted_struct(array, shape, place)
    if isinstance(shape, Items):
        if pa.types.is_large_list(found) or pa.types.is_fixed_size_list(found) or pa.types.is_list_view(found):
            array = array.cast(pa.list_(found.value_type))
        elif not pa.types.is_list(found):
            raise _mismatch(place, found, "a list")
        lengths = pc.list_value_length(array).fill_null(0).to_numpy(zero_copy_only=False)
        offsets = np.concatenate(([0], np.cumsum(lengths))).astype(np.int32)
        items = fitted(array.flatten(), shape.item, f"{place}[]")
        return pa.ListArray.from_arrays(pa.array(offsets), items, mask=array.is_null() if array.null_count else None)
    wanted = type_of(shape)
    if found == wanted:
        return array
    if not _widens(found, wanted):
        raise _mismatch(place, found, str(wanted))
    try:
        return array.cast(wanted)
    except pa.ArrowInvalid:
        raise _mismatch(place, found, str(wanted)) from None


def _widens(found: pa.DataType, wanted: pa.DataType) -> bool:
    """Whether every value of a type has one and the same in another. A decimal has the nearest double."""
    types = pa.types
    if types.is_floating(wanted):
        return bool(types.is_floating(found) or types.is_integer(found) or types.is_decimal(found))
    if types.is_integer(wanted):
        return bool(types.is_integer(found))
    if types.is_string(wanted):
        return bool(types.is_large_string(found) or types.is_string_view(found))
    return bool(types.is_date(wanted) and types.is_date(found))


def _fitted_struct(array: pa.StructArray, shape: Fields, place: str) -> pa.StructArray:
    names = {field.name for field in array.type}
    known = [field.name for field in shape.fields]
    for name in names - set(known):
        raise ColumnMismatch(f"{place}.{name} is no column of the operation; {place} has {', '.join(known)}")
    arrays = []
    for field in shape.fields:
        if field.name in names:
            arrays.append(fitted(array.field(field.name), field.shape, f"{place}.{field.name}"))
        elif field.needed and not shape.is_union:
            raise ColumnMismatch(f"{place}.{field.name} is needed and missing; its type is {type_of(field.shape)}")
        else:
            arrays.append(pa.nulls(len(array), type_of(field.shape)))
    fields = [pa.field(field.name, each.type) for field, each in zip(shape.fields, arrays, strict=True)]
    return pa.StructArray.from_arrays(arrays, fields=fields, mask=array.is_null() if array.null_count else None)


def _mismatch(place: str, found: pa.DataType, wanted: str) -> ColumnMismatch:
    return ColumnMismatch(f"{place} is of type {found}; needed is {wanted}")


def values(array: pa.Array, shape: Shape) -> list[Any]:
    """The values of a column that fits its shape, None for null; of an object its fields that are not null.

    What no plain value can be stays a fault of its row: a NaN, an infinity and a date outside the calendar come as
    text, which the decoder refuses where a number or a date belongs.
    """
    match shape:
        case Scalar(kind):
            found = _scalars(array, kind)
        case Items(item):
            items = iter(values(array.flatten(), item))
            lengths = pc.list_value_length(array).fill_null(0).to_numpy(zero_copy_only=False).tolist()
            found = [list(islice(items, length)) for length in lengths]
        case Fields(fields):
            found = _objects([(field.name, values(array.field(field.name), field.shape)) for field in fields])
            if not found:
                found = [{} for _ in range(len(array))]
        case _:
            raise NotImplementedError("no request has a map")
    if array.null_count and not isinstance(shape, Scalar):
        found = [value if is_there else None for value, is_there in zip(found, _is_there(array), strict=True)]
    return found


def _is_there(array: pa.Array) -> list[bool]:
    there: list[bool] = array.is_valid().to_numpy(zero_copy_only=False).tolist()
    return there


def _scalars(array: pa.Array, kind: str) -> list[Any]:
    if kind == "string":
        texts: list[Any] = array.to_numpy(zero_copy_only=False).tolist()
        return texts
    if array.null_count == len(array):
        return [None] * len(array)
    if kind == "date":
        array = array.view(pa.int32())
    filled = array.fill_null(False if kind == "bool" else 0) if array.null_count else array
    numbers = filled.to_numpy(zero_copy_only=False)
    found: list[Any] = numbers.tolist()
    if kind == "date":
        found = list(map(_DATES.__getitem__, found))
    elif kind == "double" and not np.isfinite(numbers).all():
        found = [value if isfinite(value) else str(value) for value in found]
    if array.null_count:
        found = [value if is_there else None for value, is_there in zip(found, _is_there(array), strict=True)]
    return found


class _Dates(dict[int, Any]):
    """Dates by days since 1970; those of a lifetime are kept."""

    def __missing__(self, day: int) -> Any:
        try:
            found: Any = date.fromordinal(_EPOCH + day)
        except (ValueError, OverflowError):
            return "outside the calendar"
        if abs(day) < 50_000:
            self[day] = found
        return found


_DATES = _Dates()


def _objects(columns: Sequence[tuple[str, list[Any]]]) -> list[Any]:
    """Rows as objects, without the fields that are null."""
    present = [(name, column) for name, column in columns if not all(value is None for value in column)]
    if not present:
        return []
    names = [name for name, _ in present]
    rows = zip(*(column for _, column in present), strict=True)
    if any(None in column for _, column in present):
        return [{name: value for name, value in zip(names, row, strict=True) if value is not None} for row in rows]
    return [dict(zip(names, row, strict=True)) for row in rows]


# Columns out


class Columns:
    """Makes columns of values of rows. ``is_finite`` turns False where a number was not."""

    def __init__(self) -> None:
        self.is_finite = True

    def array(self, found: list[Any], shape: Shape) -> pa.Array:
        """A column from one value a row, None for null; so is what was left out."""
        match shape:
            case Scalar("number_or_text"):
                return self._numbers_or_texts(found)
            case Scalar(kind):
                try:
                    made = pa.array(found, _SCALARS[kind])
                except pa.ArrowInvalid:  # few values are ever left out: none is looked for beforehand
                    made = pa.array([None if value is UNSET else value for value in found], _SCALARS[kind])
                if kind == "double":
                    self._look(made)
                return made
            case Items(item):
                offsets, mask, flat = _flattened(found)
                return pa.ListArray.from_arrays(offsets, self.array(flat, item), mask=mask)
            case Entries(value):
                offsets, _, pairs = _flattened([None if each is None else each.items() for each in found])
                names = pa.array([name for name, _ in pairs], pa.string())
                items = self.array([item for _, item in pairs], value)
                return pa.MapArray.from_arrays(offsets, names, items, type=type_of(shape))
            case Fields():
                return self._objects(found, shape)

    def _objects(self, found: list[Any], shape: Fields) -> pa.StructArray:
        found = [None if value is UNSET else value for value in found]
        gone = [value is None for value in found]
        mask = pa.array(gone) if any(gone) else None
        arrays = []
        for field in shape.fields:
            name = field.attribute
            if field.is_tag:
                column = [None if value is None else value.__struct_config__.tag for value in found]
            elif shape.is_union:  # null as well where an object of the union has no such field
                column = [getattr(value, name, None) for value in found]
            elif mask is None:
                column = [getattr(value, name) for value in found]
            else:
                column = [None if value is None else getattr(value, name) for value in found]
            arrays.append(self.array(column, field.shape))
        return pa.StructArray.from_arrays(arrays, fields=[field_of(field) for field in shape.fields], mask=mask)

    def _numbers_or_texts(self, found: list[Any]) -> pa.StructArray:
        texts = pa.array([value if isinstance(value, str) else None for value in found], pa.string())
        numbers = pa.array([None if isinstance(value, str) else value for value in found], pa.float64())
        self._look(numbers)
        return pa.StructArray.from_arrays([numbers, texts], fields=list(_NUMBER_OR_TEXT))

    def _look(self, numbers: pa.DoubleArray) -> None:
        if self.is_finite:
            looked = pc.all(pc.is_finite(numbers)).as_py()  # None where there is no number
            self.is_finite = looked is not False


def _flattened(found: Sequence[Iterable[Any] | None]) -> tuple[pa.Array, pa.Array | None, list[Any]]:
    """Lists as offsets, a mask of those that are null, and all items one after the other."""
    offsets, flat = [0], list[Any]()
    for items in found:
        if items is not None:
            flat.extend(items)  # a column of a compiled function as well, which is no list
        offsets.append(len(flat))
    gone = [items is None for items in found]
    return pa.array(offsets, pa.int32()), pa.array(gone) if any(gone) else None, flat
