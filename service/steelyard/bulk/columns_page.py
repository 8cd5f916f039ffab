"""The page of columns, written from the contract's structs: what a table of requests has, and one of answers."""

from collections.abc import Iterator

from steelyard.http.operation.operation import Operation
from steelyard.http.schemas.problems import Problem
from steelyard.http.wire.request_id import CONTRACT_VERSION

from .answering import ALWAYS, LAYOUT_VERSION, OPERATIONS
from .shapes import Fields, columns, described, shape_of

_HEAD = f"""\
# Columns of tables

Written by `steelyard bulk columns` from the structs of the contract {CONTRACT_VERSION}, in layout {LAYOUT_VERSION}: an
object of the contract is a struct, an array a list, and an object with free names a map. The same rules hold for
columns as for fields ([README.md](README.md)); the layout gets another version only where a field would become
another kind of column.

- `reference` (string, needed) stands first in every table: whose row it is. Columns of your own go into the answers
  with `--carry`; any other column is refused, since it may be a misspelt one.
- Null stands for a field that is left out. A column that may be left out altogether is marked so; in the objects of a
  union, told apart by `kind`, the columns of the other kinds are null.
- Numbers may be narrower, dates of 64 bits, texts large or encoded as a dictionary, lists large. Text is never read as
  a number or a date. A number that is NaN or infinite is a fault of its row.
- Answers keep {", ".join(f"`{name}`" for name in ALWAYS)} whatever is chosen.

## Rows with problems

They are kept apart, under `_problems`: the members of their problem document (RFC 9457) as columns, then the columns
of the request, so that they can be mended and asked again.
"""


def columns_page() -> str:
    """The page as Markdown."""
    parts = [_HEAD, "\n", *_table(shape_of(Problem), is_asked=False)]
    for operation in OPERATIONS.values():
        parts += _operation(operation)
    return "".join(parts)


def _operation(operation: Operation) -> Iterator[str]:
    yield f"\n## {operation.operation_id}\n\n{operation.summary}.\n\n### Requests\n\n"
    if operation.body_type is not None:
        yield from _table(shape_of(operation.body_type), is_asked=True)
    yield "\n### Answers\n\n"
    yield from _table(shape_of(operation.answer_type), is_asked=False)


def _table(shape: Fields, *, is_asked: bool) -> Iterator[str]:
    yield "| column | type |" + (" needed |" if is_asked else "") + " what it is |\n"
    yield "|---|---|" + ("---|" if is_asked else "") + "---|\n"
    for path, field in columns(shape):
        said = field.description.replace("|", "\\|")
        needed = f" {'yes' if field.needed else ''} |" if is_asked else ""
        yield f"| `{path}` | `{described(field.shape)}` |{needed} {said} |\n"
