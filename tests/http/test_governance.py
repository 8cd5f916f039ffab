"""The contract against what was released, against the standard, and against this project's own rules for contracts."""

import copy
import hashlib
import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import httpx
import pytest
from contract_changes import Change, Level, changes, objections
from contract_release import CHANGELOG, UNRELEASED, headings, release, released_path
from in_process import Running
from jsonschema import Draft202012Validator
from openapi_spec_validator import OpenAPIV31SpecValidator
from steelyard.http.app import OPERATIONS
from steelyard.http.pages.contract import openapi_document
from steelyard.http.wire.request_id import CONTRACT_VERSION

ROOT = Path(__file__).resolve().parents[2]
CONTRACTS = ROOT / "contracts"
FROZEN = ROOT / "tests" / "sdk_frozen"
Json = dict[str, Any]

DOCUMENT: Json = json.loads(json.dumps(openapi_document(OPERATIONS)))
SCHEMAS: Json = DOCUMENT["components"]["schemas"]
CALLS = [(path, method, call) for path, item in DOCUMENT["paths"].items() for method, call in item.items()]


# Against what was released


def accepted_breaks() -> dict[str, str]:
    """Ids of the breaking changes that are wanted all the same, and why."""
    text = (CONTRACTS / "accepted-breaks.txt").read_text(encoding="utf-8")
    rows = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    return {name.strip(): reason.strip() for name, _, reason in (row.partition(" | ") for row in rows)}


def last_release() -> str:
    """The newest version whose document is kept."""
    kept = [path.stem.removeprefix("openapi-v") for path in (CONTRACTS / "released").glob("*.json")]
    return max(kept, key=lambda version: [int(part) for part in version.split(".")])


def test_the_contract_keeps_what_was_released() -> None:
    """Until its heading in the changelog has a date, the kept document is a draft, and any change is still allowed."""
    version = last_release()
    old = json.loads((CONTRACTS / released_path(version)).read_text(encoding="utf-8"))
    assert old["info"]["version"] == version
    state = headings((CONTRACTS / CHANGELOG).read_text(encoding="utf-8"))[version]
    found = changes(old, DOCUMENT)
    told = objections(found, released=version, version=CONTRACT_VERSION, accepted=accepted_breaks())
    if state != UNRELEASED:
        assert not told, "\n".join(told)


def test_the_changelog_knows_this_version() -> None:
    text = (CONTRACTS / CHANGELOG).read_text(encoding="utf-8")
    versions = list(headings(text))
    assert versions[0] == CONTRACT_VERSION
    assert versions == sorted(versions, key=lambda v: [int(part) for part in v.split(".")], reverse=True)
    section = re.split(r"^## ", text, flags=re.MULTILINE)[1]
    assert "\n- " in section
    assert all(state != UNRELEASED for version, state in headings(text).items() if version != CONTRACT_VERSION)


def test_every_accepted_break_has_its_reason() -> None:
    assert all(len(reason) > 20 for reason in accepted_breaks().values())


def test_a_release_is_frozen_once(tmp_path: Path) -> None:
    (tmp_path / CHANGELOG).write_text(f"# Log\n\n## {CONTRACT_VERSION} ({UNRELEASED})\n\n- First.\n", encoding="utf-8")
    release(tmp_path, "2026-12-01")
    assert json.loads((tmp_path / released_path(CONTRACT_VERSION)).read_text(encoding="utf-8")) == DOCUMENT
    assert headings((tmp_path / CHANGELOG).read_text(encoding="utf-8")) == {CONTRACT_VERSION: "2026-12-01"}
    with pytest.raises(ValueError, match="was released on 2026-12-01"):
        release(tmp_path, "2026-12-02")


# The comparison itself


def made(**changed: Any) -> Json:
    """A small contract; ``changed`` replaces schemas by name."""
    schemas: Json = {
        "Ask": {
            "type": "object",
            "required": ["load_kg"],
            "additionalProperties": False,
            "properties": {
                "load_kg": {"type": "number", "minimum": 0, "maximum": 500},
                "count": {"type": "integer", "minimum": 1, "default": 5},
                "lift": {"enum": ["squat", "press"], "type": "string"},
                "note": {"anyOf": [{"type": "string", "maxLength": 9}, {"type": "null"}], "default": None},
                "weeks": {"type": ["integer", "null"], "maximum": 9, "x-steelyard-default": 3},
                "sets": {"type": "array", "maxItems": 9, "items": {"$ref": "#/components/schemas/Set"}},
                "bar": {"oneOf": [{"$ref": "#/components/schemas/Set"}, {"$ref": "#/components/schemas/Bar"}]},
            },
        },
        "Set": {"type": "object", "properties": {"mass_kg": {"type": "number"}, "day": {"type": "string"}}},
        "Bar": {"type": "object", "properties": {"kind": {"const": "bar", "type": "string"}}},
        "Told": {
            "type": "object",
            "required": ["total_kg"],
            "properties": {
                "total_kg": {"type": "number", "minimum": 0, "description": "The total."},
                "verdict": {"enum": ["up", "down"], "type": "string"},
                "code": {"type": "string", "description": "Extensible.", "examples": ["A", "B"]},
                "sets": {"type": "array", "items": {"$ref": "#/components/schemas/Set"}},
                "by_day": {"type": "object", "additionalProperties": {"type": "integer"}},
            },
        },
    }
    call = {
        "operationId": "sum_lifts",
        "tags": ["lifts"],
        "x-steelyard-pure": True,
        "description": "Sum.",
        "requestBody": {
            "required": True,
            "content": {"application/json": {"schema": {"$ref": "#/components/schemas/Ask"}}},
        },
        "responses": {
            "200": {
                "description": "It.",
                "headers": {"ETag": {"required": True, "schema": {"type": "string"}}},
                "content": {"application/json": {"schema": {"$ref": "#/components/schemas/Told"}}},
            },
            "400": {"description": "No."},
        },
    }
    return {"info": {}, "paths": {"/v1/sums": {"post": call}}, "components": {"schemas": schemas | changed}}


def edited(path: str, value: Any) -> Json:
    """The small contract with one place replaced; ``...`` removes it."""
    document = made()
    node: Any = document["components"]["schemas"] if not path.startswith("post") else document["paths"]["/v1/sums"]
    *steps, last = path.split("/")
    for step in steps:
        node = node[int(step)] if isinstance(node, list) else node[step]
    if value is ...:
        del node[last]
    else:
        node[last] = value
    return document


BREAKING = [
    ("Ask/properties/load_kg", ...),
    ("Ask/properties/load_kg/minimum", 1),
    ("Ask/properties/load_kg/maximum", 499),
    ("Ask/properties/load_kg/type", "integer"),
    ("Ask/properties/count/maximum", 100),
    ("Ask/properties/count/default", 6),
    ("Ask/properties/count/default", ...),
    ("Ask/properties/weeks/x-steelyard-default", 2),
    ("Ask/properties/weeks/type", "integer"),
    ("Ask/properties/weeks/maximum", 8),
    ("Ask/properties/weeks/x-steelyard-default", ...),
    ("Ask/properties/lift/enum", ["squat"]),
    ("Ask/properties/note/anyOf", [{"type": "string", "maxLength": 9}]),
    ("Ask/properties/note/anyOf/0/maxLength", 8),
    ("Ask/properties/note/anyOf/0/pattern", "^a"),
    ("Ask/properties/sets/maxItems", 8),
    ("Ask/properties/bar/oneOf", [{"$ref": "#/components/schemas/Bar"}]),
    ("Ask/required", ["load_kg", "count"]),
    ("Set/properties/mass_kg", ...),
    ("Set/properties/mass_kg/type", "string"),
    ("Set/properties/day/format", "date"),
    ("Told/properties/total_kg", ...),
    ("Told/properties/total_kg/minimum", ...),
    ("Told/properties/total_kg/type", ["number", "null"]),
    ("Told/properties/verdict/enum", ["up", "down", "level"]),
    ("Told/properties/verdict/enum", ["up"]),
    ("Told/properties/verdict", {"type": "string"}),
    ("Told/properties/code/examples", ["A"]),
    ("Told/properties/sets/items", {"$ref": "#/components/schemas/Bar"}),
    ("Told/properties/by_day/additionalProperties/type", "number"),
    ("Told/required", []),
    ("post/operationId", "add_lifts"),
    ("post/tags", ["sums"]),
    ("post/x-steelyard-pure", False),
    ("post/responses/200", ...),
    ("post/responses/400", ...),
    ("post/responses/200/headers/ETag", ...),
    ("post/responses/200/headers/ETag/required", False),
    ("post/responses/200/content", {"text/csv": {"schema": {"type": "string"}}}),
    ("post", ...),
]
ADDITIVE = [
    ("Ask/properties/extra", {"type": "string"}),
    ("Ask/properties/load_kg/minimum", ...),
    ("Ask/properties/load_kg/maximum", 501),
    ("Ask/properties/count/type", "number"),
    ("Ask/properties/count/type", ["integer", "null"]),
    ("Ask/properties/weeks/type", ["number", "null"]),
    ("Ask/properties/weeks/maximum", 10),
    ("Ask/properties/lift/enum", ["squat", "press", "row"]),
    ("Ask/required", []),
    ("Told/properties/extra_kg", {"type": "number"}),
    ("Told/properties/total_kg/type", "integer"),
    ("Told/properties/total_kg/minimum", 1),
    ("Told/required", ["total_kg", "verdict"]),
    ("post/responses/429", {"description": "Later."}),
    ("post/deprecated", True),
    ("post/responses/200/headers/Sunset", {"schema": {"type": "string"}}),
]
TEXT = [
    ("Told/properties/total_kg/description", "The whole."),
    ("Told/properties/code/examples", ["A", "B", "C"]),
    ("post/description", "Add."),
    ("post/responses/400/description", "Never."),
]


def worst(path: str, value: Any) -> Level | None:
    found = changes(made(), edited(path, value))
    return found[0].level if found else None


@pytest.mark.parametrize(("path", "value"), BREAKING)
def test_breaking(path: str, value: Any) -> None:
    assert worst(path, value) is Level.BREAKING


@pytest.mark.parametrize(("path", "value"), ADDITIVE)
def test_additive(path: str, value: Any) -> None:
    assert worst(path, value) is Level.ADDITIVE


@pytest.mark.parametrize(("path", "value"), TEXT)
def test_text(path: str, value: Any) -> None:
    assert worst(path, value) is Level.TEXT


def test_nothing_changed() -> None:
    assert changes(made(), made()) == []
    assert changes(DOCUMENT, copy.deepcopy(DOCUMENT)) == []


def test_what_each_kind_asks_of_the_version() -> None:
    broken = Change(Level.BREAKING, "a", "x is gone")
    added = Change(Level.ADDITIVE, "b", "y is new")
    said = Change(Level.TEXT, "c", "its description is other")

    def told(*found: Change, version: str, accepted: tuple[str, ...] = ()) -> list[str]:
        return objections(found, released="1.2.3", version=version, accepted=accepted)

    assert told(broken, added, said, version="2.0.0") == []
    assert told(broken, version="1.3.0") == ["breaking: a: x is gone"]
    assert told(broken, version="1.3.0", accepted=("a: x is gone",)) == []
    assert told(broken, version="1.2.4", accepted=("a: x is gone",)) != []
    assert told(added, version="1.3.0") == []
    assert told(added, version="1.2.4") != []
    assert told(said, version="1.2.3") == []
    assert told(version="1.2.3") == []
    assert told(version="1.1.9") != []
    assert told(version="1.3.0", accepted=("a: x is gone",)) == ["accepted, but no such break: a: x is gone"]


def test_removing_any_field_at_all_turns_the_gate_red() -> None:
    """Of the real contract: plain fields all at once, then those that lead on to other objects, object by object."""

    def without(names: set[str], is_removed: Callable[[Json], bool]) -> Json:
        schemas = dict(SCHEMAS)
        for name in names:
            kept = {n: s for n, s in SCHEMAS[name].get("properties", {}).items() if not is_removed(s)}
            schemas[name] = {**SCHEMAS[name], "properties": kept, "required": []}
        return {**DOCUMENT, "components": {**DOCUMENT["components"], "schemas": schemas}}

    def leads_on(schema: Json) -> bool:
        return "$ref" in json.dumps(schema)

    reached = {name for _, _, call in CALLS for name in reach(call)}
    leading = {name for name in reached if any(leads_on(s) for s in SCHEMAS[name].get("properties", {}).values())}
    documents = [without(reached, lambda schema: not leads_on(schema)), *(without({n}, leads_on) for n in leading)]
    told: set[str] = set()
    for document in documents:
        told |= set(objections(changes(DOCUMENT, document), released="1.0.0", version="1.9.0"))
    gone = {line.partition(": ")[2] for line in told if line.endswith("the field is gone")}
    named = {re.sub(r" \((?:request|answer)\)", "", line).partition(":")[0] for line in gone}
    expected = {f"{name}.{field}" for name in reached for field in SCHEMAS[name].get("properties", {})}
    assert len(expected) > 300
    assert not expected - named


# Against the standard


def test_it_is_openapi() -> None:
    errors = [error.message for error in OpenAPIV31SpecValidator(DOCUMENT).iter_errors()]
    assert not errors


def test_the_validator_can_object() -> None:
    broken = copy.deepcopy(DOCUMENT)
    del broken["info"]["version"]
    assert list(OpenAPIV31SpecValidator(broken).iter_errors())


@pytest.mark.parametrize("name", sorted(SCHEMAS))
def test_every_schema_is_json_schema(name: str) -> None:
    Draft202012Validator.check_schema(SCHEMAS[name])


# Against our own rules


def reach(node: Any) -> set[str]:
    """Names of all schemas below ``node``."""
    found: set[str] = set()
    waiting = set(re.findall(r"#/components/schemas/(\w+)", json.dumps(node)))
    while waiting:
        name = waiting.pop()
        found.add(name)
        waiting |= set(re.findall(r"#/components/schemas/(\w+)", json.dumps(SCHEMAS[name]))) - found
    return found


ASKED = {
    name
    for _, _, call in CALLS
    for name in reach([call.get("requestBody", {}), call.get("x-steelyard-lines", {}).get("request", {})])
}


def leaves(schema: Json) -> Iterator[Json]:
    """A schema and all that it is made of, without what is named."""
    yield schema
    for part in [*schema.get("anyOf", []), *schema.get("oneOf", [])]:
        yield from leaves(part)
    for keyword in ("items", "additionalProperties"):
        if isinstance(schema.get(keyword), dict):
            yield from leaves(schema[keyword])


def fields(names: set[str] | None = None) -> Iterator[tuple[str, str, Json]]:
    for name in sorted(SCHEMAS if names is None else names):
        for field, schema in SCHEMAS[name].get("properties", {}).items():
            yield f"{name}.{field}", field, schema


UNIT = re.compile(
    r"_(?:kg|cm|mm|g|mg|kcal|met|fraction|share|probability|ratio|level|sd|count|years|months|weeks|days|hours|minutes|"
    r"seconds|bytes)(?:_|\b)|_per_"
)
UNIT_IN_WORDS = re.compile(
    r"\b(?:kg|cm|mm|mg|kcal|METs?|fraction|share|probability|percent|how many|number|count|order|status|version|"
    r"years?|months?|weeks?|days?|hours?|minutes?|seconds?|draws|lines|units?|strategies|cuts|standard deviations?)\b",
    re.IGNORECASE,
)
# Numbers whose unit stands elsewhere, and where.
UNIT_ELSEWHERE = {
    "Interval.lower": "in the name of the field that holds the interval",
    "Interval.mean": "in the name of the field that holds the interval",
    "Interval.upper": "in the name of the field that holds the interval",
    "IntervalColumns.lower": "in the name of the field that holds the columns",
    "IntervalColumns.mean": "in the name of the field that holds the columns",
    "IntervalColumns.upper": "in the name of the field that holds the columns",
    "IntervalPassed.lower": "in the name of the field that holds the interval",
    "IntervalPassed.mean": "in the name of the field that holds the interval",
    "IntervalPassed.upper": "in the name of the field that holds the interval",
    "AccountAsRead.log_odds": "none: a logarithm",
    "AccountAsRead.water_side": "none: a sign",
    "CheckIn.sleep": "none: a scale of 1 to 5",
    "CheckIn.mood": "none: a scale of 1 to 5",
    "GuardRail.limit": "in `unit` beside it",
    "GuardRail.observed": "in `unit` beside it",
    "BrokenLimit.allowed": "in the name of the limit beside it",
    "BrokenLimit.found": "in the name of the limit beside it",
    "CyclingPattern.phases_assumed": "none: how many",
    "LeannessView.margin_over_due": "in the name of the field that it is compared with",
    "VerdictProbabilities.faster": "none: a probability, as its object says",
    "VerdictProbabilities.slower": "none: a probability, as its object says",
    "VerdictProbabilities.within_interval": "none: a probability, as its object says",
    "NearestTarget.value": "in the name of the quantity that was asked for",
}


@pytest.mark.parametrize(("path", "method", "call"), CALLS, ids=[call["operationId"] for _, _, call in CALLS])
def test_operations_are_documented(path: str, method: str, call: Json) -> None:
    assert re.fullmatch(r"/v1(/[a-z]+(-[a-z]+)*)+", path)
    assert re.fullmatch(r"[a-z]+(_[a-z]+)+", call["operationId"])
    assert call["tags"]
    assert call["summary"]
    assert not call["summary"].endswith(".")
    assert len(call["description"]) > 60
    assert call["security"] == [{"ApiKey": []}]
    if method == "post":
        assert call["requestBody"]["required"] is True
    for media in call.get("requestBody", {}).get("content", {}).values():
        assert media["examples"]
    for status, answer in call["responses"].items():
        assert {"X-Request-Id", "Steelyard-Contract"} <= set(answer["headers"])
        if int(status) >= 400:
            (media,) = answer["content"].values()
            assert media["schema"] == {"$ref": "#/components/schemas/Problem"}
            assert media["examples"]
            for example in media["examples"].values():
                assert str(example["value"]["status"]) == status
                Draft202012Validator(SCHEMAS["Problem"] | {"components": DOCUMENT["components"]}).validate(
                    example["value"]
                )


def test_every_number_has_its_unit() -> None:
    bare = [
        place
        for place, field, schema in fields()
        if any({"number", "integer"} & set(types(leaf)) for leaf in leaves(schema))
        and not UNIT.search(f"_{field}")
        and not any(UNIT_IN_WORDS.search(leaf.get("description", "")) for leaf in leaves(schema))
        and place not in UNIT_ELSEWHERE
    ]
    assert not bare
    assert not set(UNIT_ELSEWHERE) - {place for place, _, _ in fields()}


def types(schema: Json) -> list[str]:
    kinds = schema.get("type", [])
    return kinds if isinstance(kinds, list) else [kinds]


def test_whatever_is_asked_for_has_its_limits() -> None:
    """OWASP API4:2023: no number, text or list of a request is without bounds."""
    unbounded = []
    for place, _, schema in fields(ASKED):
        for leaf in leaves(schema):
            kinds = types(leaf)
            if {"number", "integer"} & set(kinds):
                is_bounded = {"minimum", "exclusiveMinimum"} & leaf.keys() and {
                    "maximum",
                    "exclusiveMaximum",
                } & leaf.keys()
            elif "string" in kinds:
                is_bounded = {"maxLength", "enum", "const", "format"} & leaf.keys()
            elif "array" in kinds:
                is_bounded = "maxItems" in leaf
            else:
                continue
            if not is_bounded:
                unbounded.append(place)
    assert not unbounded


def test_whatever_is_asked_for_is_described() -> None:
    bare = [
        place
        for place, _, schema in fields(ASKED)
        if not any(leaf.get("description") or "$ref" in leaf or "const" in leaf for leaf in leaves(schema))
    ]
    assert not bare


def test_names_have_one_style() -> None:
    assert not [place for place, field, _ in fields() if not re.fullmatch(r"[a-z][a-z0-9]*(_[a-z0-9]+)*", field)]
    assert not [name for name in SCHEMAS if not re.fullmatch(r"(?:[A-Z][a-z0-9]*)+", name)]


def test_a_default_fits_its_own_schema() -> None:
    for place, _, schema in fields():
        for name in ("default", "x-steelyard-default"):
            if name in schema:
                fits(schema, schema[name], place)


def fits(schema: Json, value: Any, place: str) -> None:
    """Fail where ``value`` is not valid against ``schema`` of the contract."""
    whole = {"$schema": "https://json-schema.org/draft/2020-12/schema", "components": DOCUMENT["components"], **schema}
    errors = [error.message for error in Draft202012Validator(whole).iter_errors(value)]
    assert not errors, f"{place}: {errors[:3]}"


def required_headers(response: Json) -> set[str]:
    """Names in lower case, as a client compares them."""
    kept = DOCUMENT["components"]["headers"]
    found = {name: kept[name] if "$ref" in header else header for name, header in response["headers"].items()}
    return {name.lower() for name, header in found.items() if header.get("required")}


# Examples as tests

EXAMPLES = [
    pytest.param(path, media_type, media["schema"], example["value"], call, id=f"{call['operationId']}-{name}")
    for path, _, call in CALLS
    for media_type, media in call.get("requestBody", {}).get("content", {}).items()
    for name, example in media["examples"].items()
]


@pytest.mark.parametrize(("path", "media_type", "schema", "example", "call"), EXAMPLES)
async def test_examples_do_what_the_document_says(
    service: Running, path: str, media_type: str, schema: Json, example: Any, call: Json
) -> None:
    """Each example fits its schema, and the service's answer to it fits the answer's."""
    fits(schema, example, f"{path}: the example")
    content = example if isinstance(example, str) else json.dumps(example)
    told = call["responses"]["200"]
    answered = "image/svg+xml" if "image/svg+xml" in told["content"] else next(iter(told["content"]))
    headers = {"content-type": media_type, "accept": answered}
    answer = await service.client.post(path, content=content, headers=headers)
    assert answer.status_code == 200, answer.text
    assert not required_headers(told) - set(answer.headers)
    if answered == "application/json":
        fits(told["content"][answered]["schema"], answer.json(), f"{path}: the answer")
    elif media_type == "application/json":  # a picture or a document
        assert answer.headers["content-type"].partition(";")[0] == answered
    else:
        answers = call["x-steelyard-lines"]["answers"]
        for line in answer.text.splitlines():
            fits({"anyOf": answers}, json.loads(line), f"{path}: a line of the answer")


async def test_documents_that_are_got_fit_as_well(service: Running) -> None:
    for path, method, call in CALLS:
        if method == "get":
            answer: httpx.Response = await service.client.get(path)
            told = call["responses"]["200"]
            fits(told["content"]["application/json"]["schema"], answer.json(), path)
            assert not required_headers(told) - set(answer.headers)


def test_the_check_of_examples_can_fail() -> None:
    with pytest.raises(AssertionError, match="is not of type"):
        fits({"$ref": "#/components/schemas/Problem"}, 7, "a number")


# The frozen tests of the SDK


def test_the_frozen_tests_are_frozen() -> None:
    """They speak for clients of the first release. Where they fail, the service is wrong, not they."""
    kept = dict(line.split("  ")[::-1] for line in (FROZEN / "SHA256SUMS").read_text(encoding="utf-8").splitlines())
    present = {
        path.name: hashlib.sha256(path.read_bytes()).hexdigest()
        for path in FROZEN.iterdir()
        if path.suffix == ".py" or path.suffix == ".json"
    }
    assert present == kept
