"""The columns are the contract's fields, each of them, and the page of them is what the code says."""

from pathlib import Path
from typing import Any

import msgspec
import pyarrow as pa
import pytest
from steelyard.bulk import OPERATIONS, answer_schema, request_schema
from steelyard.bulk.columns_page import columns_page
from steelyard.bulk.shapes import Fields, NoShape, columns, shape_of
from steelyard.http.app import OPERATIONS as SERVED
from steelyard.http.pages.contract import contract_text

CONTRACTS = Path(__file__).resolve().parents[2] / "contracts"
CONTRACT: dict[str, Any] = msgspec.json.decode(contract_text(SERVED))


def test_the_page_is_what_the_code_says() -> None:
    page = (CONTRACTS / "bulk-columns.md").read_text()
    assert page == columns_page(), "run `make contract`"


def names(schema: dict[str, Any], prefix: str = "") -> set[str]:
    """Every field of a schema of the contract, items of arrays behind ``[]``."""
    if "$ref" in schema:
        schema = CONTRACT["components"]["schemas"][schema["$ref"].rpartition("/")[2]]
    found = set()
    for branch in (*schema.get("anyOf", ()), *schema.get("oneOf", ()), *schema.get("allOf", ())):
        found |= names(branch, prefix)
    if "items" in schema:
        found |= names(schema["items"], f"{prefix}[]")
    for name, inner in schema.get("properties", {}).items():
        path = f"{prefix}.{name}" if prefix else name
        found |= {path} | names(inner, path)
    return found


@pytest.mark.parametrize("operation", OPERATIONS)
def test_the_columns_are_the_fields_of_the_contract(operation: str) -> None:
    """Against the OpenAPI document, which is not made from shapes."""
    described = CONTRACT["paths"][OPERATIONS[operation].path]["post"]
    asked = described["requestBody"]["content"]["application/json"]["schema"]
    answered = described["responses"]["200"]["content"]["application/json"]["schema"]
    body_type = OPERATIONS[operation].body_type
    assert body_type is not None
    assert {path for path, _ in columns(shape_of(body_type))} == names(asked)
    assert {path for path, _ in columns(shape_of(OPERATIONS[operation].answer_type))} == names(answered)


def arrow_names(type_: pa.DataType, prefix: str = "") -> set[str]:
    if pa.types.is_list(type_):
        return arrow_names(type_.value_type, f"{prefix}[]")
    if not pa.types.is_struct(type_):
        return set()
    found = set()
    for field in type_:
        path = f"{prefix}.{field.name}" if prefix else field.name
        found |= {path} | arrow_names(field.type, path)
    return found


@pytest.mark.parametrize("operation", OPERATIONS)
def test_the_schema_of_arrow_has_all_of_them_with_what_the_contract_says(operation: str) -> None:
    schema = request_schema(operation)
    shape = shape_of(OPERATIONS[operation].body_type)  # type: ignore[arg-type]
    assert arrow_names(pa.struct(list(schema))) == {"reference"} | {path for path, _ in columns(shape)}
    for field in shape.fields:
        said = (schema.field(field.name).metadata or {}).get(b"description", b"").decode()
        assert said == field.description
    answered = shape_of(OPERATIONS[operation].answer_type)
    of_arrow = {name for name in arrow_names(pa.struct(list(answer_schema(operation)))) if name[:7] != "problem"}
    unfolded = {"number", "text"}  # of a message's parameters, which the contract has as a free object
    assert {name for name in of_arrow if name.rpartition(".")[2] not in unfolded} - {"reference"} == {
        path for path, _ in columns(answered) if path.rpartition(".")[2] not in unfolded
    }


def test_a_type_that_no_column_can_hold_is_found_at_once() -> None:
    class Null(msgspec.Struct):
        field: int | None = 3

    class Mixed(msgspec.Struct):
        field: int | list[int]

    class Free(msgspec.Struct):
        field: Any

    for type_ in (Null, Mixed, Free):
        with pytest.raises(NoShape, match="field"):
            shape_of(type_)


def test_fields_of_a_union_stand_once() -> None:
    plan = shape_of(OPERATIONS["plan_phases"].body_type)  # type: ignore[arg-type]
    phase = plan.field("phase")
    assert phase is not None
    assert isinstance(phase.shape, Fields)
    fields = [field.name for field in phase.shape.fields]
    assert len(fields) == len(set(fields))
    assert [field.name for field in phase.shape.fields if field.needed] == ["kind"]
