"""A table of requests to a table of answers, row for row as the operation over HTTP: the same decoder, the same
computation, the same problems. Only the encoding is another: columns in, columns out, and no JSON between.
"""

import difflib
from collections.abc import Mapping, Sequence
from typing import Any

import pyarrow as pa

from steelyard.http.endpoints.batch_kinds import BATCHED, MOST_REFERENCE_LENGTH
from steelyard.http.operation.operation import Operation
from steelyard.http.schemas.problems import Problem
from steelyard.http.wire.decoding import BodyDecoder
from steelyard.http.wire.encoding import NonFiniteAnswer, encode_finite
from steelyard.http.wire.problems import SCHEMA_VIOLATION, ProblemError, as_problem, fault, problem_of
from steelyard.http.wire.refusals import REFUSALS, refusal
from steelyard.http.wire.request_id import CONTRACT_VERSION
from steelyard.science.register import MODEL_VERSION

from .arrow import ColumnMismatch, Columns, field_of, fitted, type_of, values
from .shapes import Fields, Scalar, chosen, shape_of

OPERATIONS: Mapping[str, Operation] = {operation.operation_id: operation for operation in BATCHED}
LAYOUT_VERSION = "1"  # of how the contract's structs become columns; the columns themselves are the contract's
REFERENCE = "reference"
PROBLEM = "problem"
ALWAYS = ("fingerprint", "guard_rails", "cautions")  # where an answer has them: no number goes without its cautions
_PROBLEM_SHAPE = shape_of(Problem)


class TableRefused(ValueError):  # noqa: N818 - named for what happened
    """The table as a whole cannot be read as requests: a column is missing, unknown or of another type."""


class Answerer:
    """Answers tables of requests to one operation.

    ``columns`` are those of the answer to keep, such as ``maintenance_kcal`` or ``change.fat_kg.mean``; all by default.
    The fingerprint, the cautions and what guard rails did are kept in any case. ``carry`` names columns of the requests
    that stand in the answers as they are, such as the gym. Raises ``UnknownColumn`` and ``KeyError``.
    """

    def __init__(self, operation_id: str, *, columns: Sequence[str] = (), carry: Sequence[str] = ()) -> None:
        self.operation = OPERATIONS[operation_id]
        self._body_type = _type(self.operation.body_type)
        self._decoder: BodyDecoder[Any] = BodyDecoder(self._body_type)
        self._asked = shape_of(self._body_type)
        answered = shape_of(self.operation.answer_type)
        always = [name for name in ALWAYS if answered.field(name)]
        self._kept = chosen(answered, [*columns, *always]) if columns else answered
        kept = {field.name for field in self._kept.fields}
        without = frozenset() if "methods" in kept else self.operation.parts - kept
        self._left_out = {"without": without} if without else {}
        self.carry = tuple(carry)
        taken = {REFERENCE, PROBLEM, *(field.name for field in (*self._asked.fields, *self._kept.fields))}
        for name in self.carry:
            if name in taken:
                raise TableRefused(f"{name} cannot be carried: the answers have a column of that name")

    @property
    def metadata(self) -> dict[str, str]:
        """What made the answers, as their schema says it."""
        return {
            "steelyard_operation": self.operation.operation_id,
            "steelyard_layout_version": LAYOUT_VERSION,
            "steelyard_contract_version": CONTRACT_VERSION,
            "steelyard_model_version": MODEL_VERSION,
        }

    def answer(self, requests: pa.Table | pa.RecordBatch, *, first_row: int = 0) -> pa.Table:
        """The answers, one a row in the order of the requests.

        Beside ``reference`` and what is carried, a row has either its answer or ``problem``, the problem document that
        the operation would answer with; its ``instance`` is the number of the row, from ``first_row``. Raises
        ``TableRefused`` where no row can be read.
        """
        table = pa.Table.from_batches([requests]) if isinstance(requests, pa.RecordBatch) else requests
        references, bodies = self._read(table)
        # Of an answer no more is held than the columns that are kept: what many rows hold at a time is looked through
        # again and again by the garbage collector.
        answers: list[list[Any] | None] = []
        problems: list[Problem | None] = []
        for row, (reference, body) in enumerate(zip(references, bodies, strict=True), first_row):
            answer, problem = self._answer(reference, body, row)
            answers.append(answer)
            problems.append(problem)
        columns = self._columns(answers, problems, first_row)
        carried = [table.column(name) for name in self.carry]
        fields = [pa.field(REFERENCE, pa.string()), *(table.schema.field(name) for name in self.carry)]
        fields += [*map(field_of, self._kept.fields), pa.field(PROBLEM, type_of(_PROBLEM_SHAPE))]
        schema = pa.schema(fields, metadata=self.metadata)
        return pa.Table.from_arrays([pa.array(references, pa.string()), *carried, *columns], schema=schema)

    def _read(self, table: pa.Table) -> tuple[list[str | None], list[Any]]:
        """References, and bodies as plain values."""
        known = {REFERENCE, *(field.name for field in self._asked.fields)}
        for name in table.column_names:
            if name not in known and name not in self.carry:
                close = difflib.get_close_matches(name, known, 1)
                hint = f"did you mean {close[0]}?" if close else "leave it out, or carry it into the answers"
                raise TableRefused(f"{name} is no column of {self.operation.operation_id}: {hint}")
        for name in (REFERENCE, *self.carry):
            if name not in table.column_names:
                raise TableRefused(f"the column {name} is missing")
        asked = [column for column in table.column_names if column in known and column != REFERENCE]
        whole = table.select(asked).combine_chunks()
        try:
            references = fitted(_one(table.column(REFERENCE)), Scalar("string"), REFERENCE)
            struct = pa.StructArray.from_arrays([_one(column) for column in whole.columns], names=asked)
            body = fitted(struct, self._asked, self.operation.operation_id)
        except ColumnMismatch as error:
            raise TableRefused(str(error)) from None
        return references.to_pylist(), values(body, self._asked)

    def _answer(self, reference: str | None, body: Any, row: int) -> tuple[list[Any] | None, Problem | None]:
        """What is kept of a row's answer, or its problem."""
        try:
            if not reference or len(reference) > MOST_REFERENCE_LENGTH:
                raise _bad_reference(reference)
            try:
                answer = self.operation.compute(self._decoder.convert(body), **self._left_out)
                return [getattr(answer, field.attribute) for field in self._kept.fields], None
            except REFUSALS as error:
                raise refusal(error, self._body_type) from error
        except Exception as error:
            return None, _problem(error, row)

    def _columns(
        self, answers: list[list[Any] | None], problems: list[Problem | None], first_row: int
    ) -> list[pa.Array]:
        made = Columns()
        columns = self._made(made, answers)
        if not made.is_finite:  # a fault of the service in some row, which has to be found
            for index, answer in enumerate(answers):
                try:
                    for value in answer or ():
                        encode_finite(value)
                except NonFiniteAnswer as error:
                    answers[index], problems[index] = None, _problem(error, first_row + index)
            columns = self._made(Columns(), answers)
        return [*columns, Columns().array(list(problems), _PROBLEM_SHAPE)]

    def _made(self, made: Columns, answers: list[list[Any] | None]) -> list[pa.Array]:
        return [
            made.array([None if answer is None else answer[k] for answer in answers], field.shape)
            for k, field in enumerate(self._kept.fields)
        ]


def answer_table(
    requests: pa.Table, operation: str, *, columns: Sequence[str] = (), carry: Sequence[str] = ()
) -> pa.Table:
    """The answers to a table of requests: see ``Answerer``, which to keep for many tables."""
    return Answerer(operation, columns=columns, carry=carry).answer(requests)


def request_schema(operation: str) -> pa.Schema:
    """The columns that a table of requests has, those that may be left out among them."""
    return _schema(shape_of(_type(OPERATIONS[operation].body_type)))


def answer_schema(operation: str) -> pa.Schema:
    """All columns of a table of answers, but those that are carried."""
    schema = _schema(shape_of(OPERATIONS[operation].answer_type))
    return schema.append(pa.field(PROBLEM, type_of(_PROBLEM_SHAPE)))


def _schema(shape: Fields) -> pa.Schema:
    return pa.schema([pa.field(REFERENCE, pa.string()), *map(field_of, shape.fields)])


def _type(type_: type | None) -> type:
    if type_ is None:
        raise TypeError("the operation takes no body")
    return type_


def _one(column: pa.ChunkedArray) -> pa.Array:
    """A column in one piece."""
    combined = column.combine_chunks()
    if isinstance(combined, pa.ChunkedArray):
        return combined.chunk(0) if combined.num_chunks else pa.array([], combined.type)
    return combined


def _bad_reference(reference: str | None) -> ProblemError:
    code = "WRONG_LENGTH" if reference else "MISSING_FIELD"
    detail = f"reference is a text of 1 to {MOST_REFERENCE_LENGTH} characters."
    return ProblemError(SCHEMA_VIOLATION, detail, [fault("#/reference", code, detail)])


def _problem(error: Exception, row: int) -> Problem:
    return problem_of(as_problem(error), error, f"row-{row}")
