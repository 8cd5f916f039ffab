"""Requests are checked before they are sent as an independent validator would."""

import copy
import datetime
import json
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from typing import Any

import numpy as np
import pytest
from examples.local_service import ROOT
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from steelyard_client import InvalidRequest, models
from steelyard_client.request_check import check, plain

CONTRACT = json.loads((ROOT / "contracts" / "openapi-v1.json").read_text(encoding="utf-8"))
EXAMPLES = [
    (content["schema"]["$ref"].rpartition("/")[2], example["value"])
    for path in CONTRACT["paths"].values()
    for operation in path.values()
    for media_type, content in operation.get("requestBody", {}).get("content", {}).items()
    if media_type == "application/json"  # a body of lines is checked by no one but the service
    for example in content["examples"].values()
]


def validator(schema: str) -> Draft202012Validator:
    """An independent implementation of JSON Schema on the contract itself."""
    document = {"$ref": f"#/components/schemas/{schema}", "components": CONTRACT["components"]}
    return Draft202012Validator(document, format_checker=Draft202012Validator.FORMAT_CHECKER)


VALIDATORS = {name: validator(name) for name, _ in EXAMPLES}


def places(node: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    yield path
    children = node.items() if isinstance(node, dict) else enumerate(node[:2]) if isinstance(node, list) else ()
    for key, child in children:
        yield from places(child, (*path, key))


def pointers(body: Any, schema: str) -> tuple[str, ...]:
    try:
        check(body, schema)
    except InvalidRequest as error:
        return error.pointers
    return ()


@pytest.mark.parametrize(("schema", "example"), EXAMPLES)
def test_examples_of_the_contract_pass(schema: str, example: Any) -> None:
    check(plain(example), schema)


REPLACEMENTS = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-10, 400) | st.integers(),
    st.floats(allow_nan=False, allow_infinity=False),
    st.sampled_from([0.03, 0.6, 30, 300, 300.0001, 2.0, 2.5, 13, 12.999, 120, 230, 1e300, 0, 14, 15000]),
    st.text(max_size=5) | st.sampled_from(["level", "week", "mini_cut", "moderate", "2026-02-29", "2026-03-01"]),
    st.sampled_from([[], {}, [[]], [{}], {"kind": "level"}, {"kind": "week", "steps_per_day": 1}]),
)


@given(data=st.data())
def test_agrees_with_an_independent_validator(data: st.DataObject) -> None:
    schema, example = data.draw(st.sampled_from(EXAMPLES))
    body = copy.deepcopy(example)
    for _ in range(data.draw(st.integers(1, 3))):
        place = data.draw(st.sampled_from(list(places(body))))
        if not place:
            continue
        parent = body
        for step in place[:-1]:
            parent = parent[step]
        match data.draw(st.sampled_from(["replace", "drop", "add"])):
            case "replace":
                parent[place[-1]] = copy.deepcopy(data.draw(REPLACEMENTS))
            case "drop":
                del parent[place[-1]]
            case "add" if isinstance(parent, dict):
                parent[data.draw(st.text(min_size=1, max_size=8))] = 1
    assert (not pointers(body, schema)) == VALIDATORS[schema].is_valid(body)


NUMBERS = [
    (name, field, rules)
    for name, schema in CONTRACT["components"]["schemas"].items()
    if name in {"Profile", "MiniCut", "ReturnToGain", "TrainingSession", "KnownMaintenance", "BodyFat"}
    for field, value in schema["properties"].items()
    for rules in [value, *value.get("anyOf", ())]
    if "minimum" in rules and "maximum" in rules
]


@pytest.mark.parametrize(("schema", "field", "rules"), NUMBERS, ids=[f"{n}.{f}" for n, f, _ in NUMBERS])
def test_every_range_of_the_contract_is_checked(schema: str, field: str, rules: dict[str, Any]) -> None:
    """The limits themselves fit, the next number beyond does not, and the text names the range."""

    def complaint(number: float) -> str | None:
        try:
            check({field: number}, schema)
        except InvalidRequest as error:
            return next((fault.detail for fault in error.errors if fault.code == "OUT_OF_RANGE"), None)
        return None

    low, high = rules["minimum"], rules["maximum"]
    step = 1 if "integer" in rules["type"] else 1e-9
    assert complaint(low) is None
    assert complaint(high) is None
    for outside in (low - step, high + step):
        told = complaint(outside)
        assert told is not None
        assert f"from {low:g} to {high:g}" in told
        assert field in told


def test_every_fault_is_told_with_its_place_and_a_hint() -> None:
    body = copy.deepcopy(next(example for schema, example in EXAMPLES if schema == "PlanRequest"))
    body["profile"] |= {"weigth_kg": 80, "age_years": 7, "sex": "man"}
    with pytest.raises(InvalidRequest) as caught:
        check(body, "PlanRequest")
    found = {error.pointer: error for error in caught.value.errors}
    assert set(found) == {"#/profile/weigth_kg", "#/profile/age_years", "#/profile/sex"}
    assert "did you mean weight_kg?" in found["#/profile/weigth_kg"].detail
    assert "a number from 13 to 100" in found["#/profile/age_years"].detail
    assert "one of female, male, unspecified" in found["#/profile/sex"].detail


@pytest.mark.parametrize("phase", [{}, {"phase": "mini_cut"}])
def test_an_object_of_several_kinds_is_asked_for_by_kind(phase: dict[str, Any]) -> None:
    body = copy.deepcopy(next(example for schema, example in EXAMPLES if schema == "PlanRequest"))
    del body["phase"]
    with pytest.raises(InvalidRequest) as caught:
        check(body | phase, "PlanRequest")
    (fault,) = caught.value.errors
    assert "accepted is an object whose kind is one of " in fault.detail
    assert {"mini_cut", "maintenance"} <= set(fault.detail.replace(",", " ").rstrip(".").split())


def test_odd_names_give_sound_pointers() -> None:
    assert pointers({"a/b~c d": 1, "profile": 1}, "MaintenanceRequest") == ("#/a~1b~0c%20d", "#/profile")


# What may stand in a request


def test_plain_values() -> None:
    given_ = {
        "date": datetime.date(2026, 5, 4),
        "choice": models.Sex.FEMALE,
        "model": models.BodyFat(fat_fraction=0.2, method=models.BodyFatMethod.DXA),
        "of numpy": np.float64(80.5),
        "whole of numpy": np.int64(3),
        "fraction": Fraction(1, 2),
        "tuple": (1, True, None),
    }
    assert plain(given_) == {
        "date": "2026-05-04",
        "choice": "female",
        "model": {"fat_fraction": 0.2, "method": "dxa"},
        "of numpy": 80.5,
        "whole of numpy": 3,
        "fraction": 0.5,
        "tuple": [1, True, None],
    }
    json.dumps(plain(given_))


def test_models_may_hold_dictionaries_and_texts() -> None:
    """A model is not strict about its fields; what a caller plainly means is sent."""
    screening: Any = models.Screening(
        is_pregnant=False, is_breastfeeding=False, eating_disorder="none", conditions=["gout"], medicines=[]
    )
    assert plain(screening)["eating_disorder"] == "none"
    assert plain(screening)["conditions"] == ["gout"]
    assert "clinical_clearance" not in plain(screening)


@pytest.mark.parametrize("value", [object(), b"bytes", {1, 2}, Decimal("80.5"), 3j])
def test_values_that_json_cannot_hold(value: object) -> None:
    with pytest.raises(InvalidRequest, match=r"profile\.weight_kg .* cannot be sent"):
        plain({"profile": {"weight_kg": value}})


@pytest.mark.parametrize("digits", [400, 5000])
def test_a_number_beyond_any_float_is_out_of_range(digits: int) -> None:
    for field in ("weeks", "deficit_kcal"):
        with pytest.raises(InvalidRequest, match=r"a very long number\) is out of range"):
            check({"kind": "mini_cut", field: 10**digits}, "MiniCut")


def test_an_instant_is_no_date() -> None:
    with pytest.raises(InvalidRequest, match="a date such as"):
        check({"date": plain(datetime.datetime(2026, 5, 4, 8, 30)), "weight_kg": 80}, "WeightEntry")
