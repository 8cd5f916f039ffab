"""The committed contract is what the code serves, and holds what clients rely on."""

import json
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import msgspec
import pytest
from in_process import Running
from jsonschema import Draft202012Validator
from lifting_form import LiftedTotal, sum_lifts
from steelyard.cli.contract import contract_files
from steelyard.http.app import OPERATIONS
from steelyard.http.operation.operation import OPERATION, Operation
from steelyard.http.pages.answer_examples import MOST_BYTES, examples_path, examples_text, kept_examples
from steelyard.http.pages.contract import contract_text, openapi_document
from steelyard.http.wire.problems import KINDS

CONTRACTS = Path(__file__).resolve().parents[2] / "contracts"
DOCUMENT = openapi_document(OPERATIONS)


def test_the_examples_of_answers_are_what_the_service_answers() -> None:
    assert examples_path().read_text(encoding="utf-8") == examples_text(OPERATIONS), "run `make contract`"


@pytest.mark.parametrize("name", contract_files())
def test_committed_file_is_up_to_date(name: str) -> None:
    assert (CONTRACTS / name).read_text(encoding="utf-8") == contract_files()[name], "run `make contract`"


def test_text_is_deterministic() -> None:
    assert contract_text(OPERATIONS) == contract_text(tuple(reversed(OPERATIONS)))
    other_run = "\n".join(
        [
            "from steelyard.cli.contract import contract_files",
            "import sys",
            "sys.stdout.write(''.join(contract_files().values()))",
        ]
    )
    texts = subprocess.run(
        [sys.executable, "-c", other_run],
        capture_output=True,
        check=True,
        env={"PYTHONHASHSEED": "7", "PYTHONPATH": "service", "PYTHONIOENCODING": "utf-8"},
        cwd=CONTRACTS.parent,
    )
    assert texts.stdout.decode() == "".join(contract_files().values())


def test_a_changed_field_changes_the_contract() -> None:
    """The check above can fail: a renamed field gives another text."""

    renamed = msgspec.defstruct(LiftedTotal.__name__, [("total_lb", float)])
    before = contract_text([sum_lifts])
    after = contract_text([msgspec.structs.replace(sum_lifts, answer_type=renamed)])
    assert before != after


async def test_it_is_served_to_anyone(service: Running) -> None:
    answer = await service.client.get("/openapi.json", headers={"authorization": ""})
    assert answer.text == (CONTRACTS / "openapi-v1.json").read_text(encoding="utf-8")


def test_router_and_contract_hold_the_same_operations(service: Running) -> None:
    routed = {
        (route.path, method)
        for route in service.app.routes
        for handler in route.route_handlers  # type: ignore[union-attr]
        if OPERATION in handler.opt
        for method in handler.http_methods - {"HEAD"}
    }
    documented = {(path, method.upper()) for path, item in DOCUMENT["paths"].items() for method in item}
    assert routed == documented


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda o: o.operation_id)
def test_operation_is_fit_for_the_sdk(operation: Operation) -> None:
    assert re.fullmatch(r"[a-z]+(_[a-z]+)+", operation.operation_id)
    assert operation.summary
    assert operation.description
    document = DOCUMENT["paths"][operation.path][operation.method.lower()]
    assert document["x-steelyard-pure"] is True
    statuses = {"200", "401", "403", "406", "429", "500", "503"}
    if operation.stream:  # what is wrong with a line is told on its line
        statuses |= {"400", "415"}
    else:
        statuses |= {"400", "408", "413", "415", "422"} if operation.body_type else {"304"}
    if operation.body_type:
        assert document["requestBody"]["content"][operation.media_type]["examples"]
    assert set(document["responses"]) == statuses
    for status, response in document["responses"].items():
        if status == "304":
            assert "content" not in response
            continue
        answered = list(operation.offered)
        assert list(response["content"]) == (answered if status == "200" else ["application/problem+json"])


def test_every_problem_is_documented_on_an_operation_or_outside_all() -> None:
    text = str(list(DOCUMENT["paths"].values()))
    missing = {kind.slug for kind in KINDS.values() if f"`{kind.type}`" not in text}
    of_http = {"path-too-long", "head-too-large", "transfer-coding"}  # refused before there is an operation
    assert missing == {"not-found", "method-not-allowed"} | of_http


def schemas(node: Any) -> list[dict[str, Any]]:
    if isinstance(node, dict):
        return [node, *(s for child in node.values() for s in schemas(child))]
    return [s for child in node for s in schemas(child)] if isinstance(node, list) else []


def test_requests_are_closed_and_described() -> None:
    components = DOCUMENT["components"]["schemas"]
    for operation in OPERATIONS:
        if operation.body_type is None:
            continue
        for name in reachable(operation.body_type.__name__):
            schema = components[name]
            if schema.get("type") == "object":
                assert schema["additionalProperties"] is False, name
                assert schema.get("description"), name


def test_answers_are_open() -> None:
    """But for what is handed back as it is, which is closed as every request is, and has a version of its own."""
    components = DOCUMENT["components"]["schemas"]
    handed_back = reachable("State") | reachable("Attention")
    for operation in OPERATIONS:
        for name in reachable(operation.answer_type.__name__) - handed_back:
            assert components[name].get("additionalProperties") is not False, name


def reachable(name: str) -> set[str]:
    found, waiting = set(), [name]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += re.findall(r"#/components/schemas/(\w+)", str(DOCUMENT["components"]["schemas"][name]))
    return found


def test_no_enum_lacks_a_type_and_no_union_a_discriminator() -> None:
    for schema in schemas(DOCUMENT["components"]):
        if "enum" in schema and isinstance(schema["enum"], list):
            assert "type" in schema
            assert len(schema["enum"]) > 1
        if "discriminator" in schema:
            assert "oneOf" in schema


# For clients in any language


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda o: o.operation_id)
def test_every_operation_shows_an_answer_that_fits_its_schema(operation: Operation) -> None:
    shown = DOCUMENT["paths"][operation.path][operation.method.lower()]["responses"]["200"]["content"]
    assert kept_examples()[operation.operation_id]
    of_text = {name for name in operation.offered if name.startswith("text/")} or {operation.offered[0]}
    assert {name for name, content in shown.items() if content.get("examples")} == of_text
    requests = set(operation.request_examples) | {"extract", "lines"}
    for media_type in of_text:
        examples = {name: example["value"] for name, example in shown[media_type]["examples"].items()}
        assert set(examples) <= requests
        assert sum(len(json.dumps(value)) > MOST_BYTES * 1.2 for value in examples.values()) <= 1
        for value in examples.values():
            validator(shown[media_type]["schema"]).validate(value)


def validator(schema: dict[str, Any]) -> Draft202012Validator:
    return Draft202012Validator({**schema, "components": DOCUMENT["components"]})


def test_an_answer_that_does_not_fit_is_noticed() -> None:
    (answer, *_) = kept_examples()["estimate_maintenance"]["application/json"].values()
    schema = {"$ref": "#/components/schemas/MaintenanceResponse"}
    assert validator(schema).is_valid(answer)
    assert not validator(schema).is_valid({**answer, "maintenance_kcal": None})


def test_what_may_be_null_says_so_beside_its_limits() -> None:
    found = 0
    for schema in schemas(DOCUMENT):
        assert schema.get("default", "") is not None
        if isinstance(branches := schema.get("anyOf"), list) and {"type": "null"} in branches:
            assert not [b for b in branches if b.get("type") in {"number", "integer"}], schema
        if isinstance(schema.get("type"), list) and "number" in schema["type"]:
            assert schema["type"] == ["number", "null"]
            found += "minimum" in schema or "exclusiveMinimum" in schema
    assert found > 10


def test_a_path_that_answers_json_answers_nothing_else() -> None:
    for operation in OPERATIONS:
        answered = DOCUMENT["paths"][operation.path][operation.method.lower()]["responses"]["200"]["content"]
        assert len(answered) == 1 or "application/json" not in answered


def test_servers_and_tags_are_described() -> None:
    assert DOCUMENT["servers"][0]["url"] == "/"
    assert all(len(tag["description"]) > len(tag["name"]) for tag in DOCUMENT["tags"])


def test_client_generator_has_no_complaint(tmp_path: Path) -> None:
    generator = Path(sys.executable).parent / "openapi-python-client"
    run = subprocess.run(
        [
            generator,
            "generate",
            "--path",
            CONTRACTS / "openapi-v1.json",
            "--output-path",
            tmp_path / "client",
            "--meta",
            "none",
            "--config",
            CONTRACTS.parent / "sdk" / "generator.yaml",
            "--fail-on-warning",
        ],
        capture_output=True,
        text=True,
        env={"PATH": str(generator.parent), "RUFF_NO_CACHE": "true"},
    )
    assert run.returncode == 0, run.stdout + run.stderr


def test_the_figures_of_a_message_are_as_fine_as_its_text() -> None:
    """A parameter was told with fifteen digits; no text has more than three decimals."""
    told = re.findall(r'\\?"params\\?":(\{[^{}]*\})', examples_path().read_text("utf-8"))
    figures = [figure for params in told for figure in re.findall(r"\d+\.(\d+)", params)]
    assert len(figures) > 50
    assert max(map(len, figures)) <= 3
