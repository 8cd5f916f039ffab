"""A table of a warehouse answered by the HTTP service: for Spark's ``mapInArrow``, and all that gives out Arrow.

Where the service runs anyway and the rows are some hundred thousands. What it costs more than `steelyard bulk`, and
what limits it, is in the handbook's page on bulk runs. The address and the key are read from `STEELYARD_URL` and
`STEELYARD_KEY` where the rows are answered::

    members = spark.read.parquet("members/")
    members.mapInArrow(answer_reviews, ANSWERS).write.parquet("answers/")

A task that Spark runs again asks again, and what is asked again is counted again.
"""

import json
from collections.abc import Iterable, Iterator
from datetime import date
from typing import TYPE_CHECKING, Any

from steelyard_client import Steelyard

if TYPE_CHECKING:
    import pyarrow as pa

ANSWERS = "reference string, verdict string, correction_kcal bigint, answer string, problem string"


def answer_reviews(batches: "Iterable[pa.RecordBatch]") -> "Iterator[pa.RecordBatch]":
    """Answer rows whose columns are `reference` and those of a request of `review_phase`, a batch at a time."""
    with Steelyard() as client:
        for batch in batches:
            yield _answered(client, batch)


def _answered(client: Steelyard, batch: "pa.RecordBatch") -> "pa.RecordBatch":
    import pyarrow as pa

    rows = [_without_nulls(row) for row in batch.to_pylist()]
    lines = [{"reference": row.pop("reference"), "operation": "review_phase", "body": row} for row in rows]
    found: dict[str, list[Any]] = {name.split()[0]: [] for name in ANSWERS.split(", ")}
    for answer in client.run_batch(lines):  # type: ignore[arg-type]
        result: Any = answer.result
        found["reference"].append(answer.reference)
        found["verdict"].append(None if result is None else result.verdict)
        found["correction_kcal"].append(None if result is None else result.correction_kcal)
        found["answer"].append(None if result is None else json.dumps(result.to_dict()))
        found["problem"].append(None if answer.problem is None else json.dumps(answer.problem.problem.to_dict()))
    types = {"correction_kcal": pa.int64()}
    return pa.record_batch({name: pa.array(column, types.get(name, pa.string())) for name, column in found.items()})


def _without_nulls(value: Any) -> Any:
    """A value of a row as JSON has it: a null field is one that is left out."""
    if isinstance(value, dict):
        return {name: _without_nulls(item) for name, item in value.items() if item is not None}
    if isinstance(value, list):
        return [_without_nulls(item) for item in value]
    return value.isoformat() if isinstance(value, date) else value
