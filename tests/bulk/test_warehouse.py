"""The recipe for a warehouse, against a running service: the rows of a bulk run. Spark itself is not run here."""

import json

import msgspec
import pyarrow as pa
import pyarrow.compute as pc
import pytest
from bulk.member_rows import invented_members, table
from examples import warehouse_batches
from examples.local_service import local_service
from steelyard.bulk import answer_table


def test_rows_by_http_are_rows_of_a_table(monkeypatch: pytest.MonkeyPatch) -> None:
    bodies = invented_members(7, 31)
    bodies[3]["profile"]["weight_kg"] = 20.0
    asked = table("review_phase", bodies)
    with local_service() as service:
        monkeypatch.setenv("STEELYARD_URL", service.url)
        monkeypatch.setenv("STEELYARD_KEY", service.key)
        found = pa.Table.from_batches(warehouse_batches.answer_reviews(asked.to_batches(max_chunksize=3)))
    assert found.column_names == [name.split()[0] for name in warehouse_batches.ANSWERS.split(", ")]
    ours = answer_table(asked, "review_phase")
    for name in ("reference", "verdict", "correction_kcal"):
        assert found.column(name).to_pylist() == ours.column(name).to_pylist()
    fingerprints = [answer and json.loads(answer)["fingerprint"] for answer in found.column("answer").to_pylist()]
    assert fingerprints == ours.column("fingerprint").to_pylist()
    (problem,) = found.filter(pc.is_valid(found.column("problem"))).column("problem").to_pylist()
    assert msgspec.json.decode(problem)["code"] == "SCHEMA_VIOLATION"
