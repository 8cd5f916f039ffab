"""The roster of a whole chain: the members of a finished run ranked within each gym, in one table."""

from collections.abc import Sequence
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
import pyarrow.csv
import pyarrow.dataset as ds
import pyarrow.parquet as pq

from .answering import REFERENCE
from .partitions import PROBLEMS, SUFFIX
from .places import Place, place_of

RANK = "rank"
_PROBLEM_CODE = "problem_code"


class NoRoster(ValueError):  # noqa: N818 - named for what is missing
    """A roster that cannot be made of these answers; the text says why."""


def write_roster(answers: str, roster: Path, *, by: str, rank: Sequence[str], keep: Sequence[str] = ()) -> int:
    """Rank the answers in a folder into one file: Parquet, or CSV where its name ends so. Returns the rows.

    A name in ``rank`` and ``keep`` is a column, or a part of one such as ``change.fat_kg.mean``; ``-`` in front of one
    to rank by has the lowest first. Members at fault have no rank and stand behind the others of their gym, with the
    code of their problem: nobody goes missing. Holds the chosen columns of all members in memory. Raises ``NoRoster``.
    """
    found = ranked(_chosen(answers, by, rank, keep), by=by, rank=rank)
    try:
        if roster.suffix == ".csv":
            _check_cells(found.schema)
            pyarrow.csv.write_csv(found, roster)
        else:
            pq.write_table(found, roster, compression="zstd")
    except OSError as error:
        raise NoRoster(f"{roster} cannot be written: {error}") from None
    return int(found.num_rows)


def _check_cells(schema: pa.Schema) -> None:
    """Raises ``NoRoster`` for a column that no cell of CSV holds."""
    for field in schema:
        if pa.types.is_nested(field.type):
            raise NoRoster(
                f"{field.name} is of type {field.type}, which CSV cannot hold: name a part, or write Parquet"
            )


def ranked(table: pa.Table, *, by: str, rank: Sequence[str]) -> pa.Table:
    """The table in the order of its groups, best rank first, with the rank as a column; equals share a rank."""
    keys = [(by, "ascending")]
    keys += [(name.lstrip("-"), "ascending" if name.startswith("-") else "descending") for name in rank]
    # A member at fault has no figures, and where figures are missing Arrow puts the row behind.
    table = table.sort_by([*keys, (REFERENCE, "ascending")])
    return table.add_column(0, RANK, _ranks(table, by, [name.lstrip("-") for name in rank]))


def _ranks(table: pa.Table, by: str, names: Sequence[str]) -> pa.Array:
    """Ranks of sorted rows: a row's is one more than the number of better ones in its group."""
    count = table.num_rows
    if not count:
        return pa.array([], pa.int64())
    begins = _changes(table.column(by))
    differs = begins.copy()
    for name in names:
        differs |= _changes(table.column(name))
    rows = np.arange(count)
    first = np.maximum.accumulate(np.where(begins, rows, 0))
    same = np.maximum.accumulate(np.where(differs, rows, 0))
    unranked = pc.is_valid(table.column(_PROBLEM_CODE)).to_numpy(zero_copy_only=False)
    return pa.array(same - first + 1, mask=unranked)


def _changes(column: pa.ChunkedArray) -> np.ndarray:
    """Whether a row's value is another than that of the row before."""
    codes = column.combine_chunks().dictionary_encode(null_encoding="encode")
    codes = codes.combine_chunks() if isinstance(codes, pa.ChunkedArray) else codes
    numbers = codes.indices.to_numpy(zero_copy_only=False)
    return np.concatenate(([True], numbers[1:] != numbers[:-1]))


def _chosen(answers: str, by: str, rank: Sequence[str], keep: Sequence[str]) -> pa.Table:
    place = place_of(answers)
    ordered = [name.lstrip("-") for name in rank]
    if not ordered:
        raise NoRoster("name at least one column to rank by")
    names = list(dict.fromkeys([by, REFERENCE, *ordered, *keep]))
    if next(place.files(SUFFIX), None) is None:
        raise NoRoster(f"there are no answers in {answers}")
    good = _dataset(place.path, place)
    for name in names:
        _check(good.schema, name, is_ranked=name in ordered)
    columns = {name: ds.field(*name.split(".")) for name in names}
    table = good.to_table(columns=columns)
    table = table.append_column(_PROBLEM_CODE, pa.nulls(table.num_rows, pa.string()))
    if not next(place._replace(path=place.at(PROBLEMS)).files(SUFFIX), None):
        return table
    bad = _dataset(place.at(PROBLEMS), place)
    if by not in bad.schema.names:
        raise NoRoster(f"the rows with problems have no column {by}")
    faulty = bad.to_table(columns={by: ds.field(by), REFERENCE: ds.field(REFERENCE), _PROBLEM_CODE: ds.field("code")})
    for name in names:
        if name not in faulty.column_names:
            faulty = faulty.append_column(name, pa.nulls(faulty.num_rows, table.schema.field(name).type))
    return pa.concat_tables([table, faulty.select(table.column_names).cast(table.schema)])


def _dataset(path: str, place: Place) -> ds.Dataset:
    return ds.dataset(
        path,
        filesystem=place.filesystem,
        format="parquet",
        partitioning=ds.HivePartitioning.discover(),
        ignore_prefixes=["_", "."],
    )


def _check(schema: pa.Schema, name: str, *, is_ranked: bool) -> None:
    type_: pa.DataType = pa.struct(list(schema))
    for part in name.split("."):
        if not pa.types.is_struct(type_) or type_.get_field_index(part) < 0:
            raise NoRoster(f"the answers have no column {name}; carry or keep it when they are made")
        type_ = type_.field(part).type
    if is_ranked and not (pa.types.is_floating(type_) or pa.types.is_integer(type_) or pa.types.is_date(type_)):
        raise NoRoster(f"{name} is of type {type_}, and members are ranked by a number or a date")
