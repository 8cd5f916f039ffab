"""A table of answers says what single calls over HTTP say, row for row and field for field."""

from typing import Any

import msgspec
import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
import pytest
from bulk.member_rows import Json, as_json, bodies, invented_members, table
from in_process import Running
from steelyard.bulk import (
    OPERATIONS,
    Answerer,
    TableRefused,
    UnknownColumn,
    answer_schema,
    answer_table,
    request_schema,
)
from steelyard.bulk.shapes import shape_of
from steelyard.http.endpoints.reviews import review_phase
from steelyard.http.schemas.problems import Problem
from steelyard.http.schemas.states import State
from steelyard.http.wire.problems import KINDS

PROBLEM = shape_of(Problem)


def without_nulls(value: Any) -> Any:
    """A column has null for what JSON may leave out as well."""
    if isinstance(value, dict):
        return {name: without_nulls(each) for name, each in value.items() if each is not None}
    return [without_nulls(each) for each in value] if isinstance(value, list) else value


async def unequal(service: Running, operation: str, asked: list[Json]) -> list[str]:
    """Where the table differs from single calls; and how many of them were answered and how many refused."""
    found = answer_table(table(operation, asked), operation).to_pylist()
    answered = shape_of(OPERATIONS[operation].answer_type)
    wrong = []
    for number, (body, row) in enumerate(zip(asked, found, strict=True)):
        single = await service.client.post(OPERATIONS[operation].path, json=body)
        said: dict[str, Any] = without_nulls(single.json())
        if single.status_code == 200:
            ours: Any = without_nulls(as_json({field.name: row[field.name] for field in answered.fields}, answered))
            assert row["problem"] is None
        else:
            assert row["problem"] is not None, (number, said)
            ours = without_nulls(as_json(row["problem"], PROBLEM))
            assert ours.pop("instance") == f"#row-{number}"
            assert said.pop("instance")
            assert all(row[field.name] is None for field in answered.fields)
        for answer in (said, ours):
            if answer.get("state") is not None:  # a caller leaves out what is as usual, a column tells it
                answer["state"] = msgspec.convert(answer["state"], State)
        wrong += [f"{number} {name}" for name in said.keys() | ours.keys() if said.get(name) != ours.get(name)]
    return wrong


@pytest.mark.parametrize("operation", OPERATIONS)
async def test_rows_are_single_calls(service: Running, operation: str) -> None:
    asked = bodies(operation, 40, seed=19)
    assert not await unequal(service, operation, asked)
    problems = answer_table(table(operation, asked), operation).column("problem")
    assert 0 < problems.null_count < len(problems), "both kinds are there"


@pytest.mark.long
@pytest.mark.parametrize("operation", OPERATIONS)
async def test_ten_thousand_rows_are_single_calls(service: Running, operation: str) -> None:
    for seed in range(17):
        assert not await unequal(service, operation, bodies(operation, 100, seed=1900 + seed))


async def test_many_rows_are_each_their_own(service: Running) -> None:
    """The order of the rows, and who stands beside whom, change nothing."""
    asked = table("review_phase", invented_members(12, 5))
    whole = answer_table(asked, "review_phase")
    order = np.random.default_rng(3).permutation(12)
    shuffled = answer_table(asked.take(order), "review_phase")
    drop = ["problem"]
    assert shuffled.drop_columns(drop).equals(whole.take(order).drop_columns(drop))
    sliced = pa.concat_tables([answer_table(asked.slice(i, 5), "review_phase") for i in range(0, 12, 5)])
    assert sliced.drop_columns(drop).combine_chunks().equals(whole.drop_columns(drop).combine_chunks())


# Choosing


def test_chosen_columns_are_those_of_all_and_cautions_come_along() -> None:
    asked = table("review_phase", invented_members(3, 1), gym=["Quarry Lane", "Mill Yard", "Quarry Lane"])
    whole = answer_table(asked, "review_phase", carry=["gym"])
    few = answer_table(asked, "review_phase", columns=["change.fat_kg.mean", "verdict"], carry=["gym"])
    assert few.column_names == [
        "reference",
        "gym",
        "fingerprint",
        "verdict",
        "change",
        "guard_rails",
        "cautions",
        "problem",
    ]
    assert few.column("verdict").equals(whole.column("verdict"))
    assert few.column("cautions").equals(whole.column("cautions"))
    assert few.column("change").to_pylist() == [
        {"fat_kg": {"mean": row["fat_kg"]["mean"]}} for row in whole.column("change").to_pylist()
    ]
    assert few.column("gym").to_pylist() == ["Quarry Lane", "Mill Yard", "Quarry Lane"]


@pytest.mark.parametrize("operation", [name for name, each in OPERATIONS.items() if each.parts])
def test_what_is_not_kept_is_not_made_and_changes_nothing_else(operation: str) -> None:
    """All else is as in the whole answer; and with ``methods``, which tell of all that is made, all is made."""
    parts, asked = OPERATIONS[operation].parts, table(operation, bodies(operation, 40, seed=23))
    whole = answer_table(asked, operation)
    kept = [field.name for field in answer_schema(operation) if field.name not in {*parts, "methods", "reference"}]
    others = [name for name in kept if name != "problem"]
    assert answer_table(asked, operation, columns=others).select(kept).equals(whole.select(kept))
    assert answer_table(asked, operation, columns=["methods"]).column("methods").equals(whole.column("methods"))
    body = next(iter(OPERATIONS[operation].request_examples.values()))
    answer = OPERATIONS[operation].compute(body, without=parts)
    assert [getattr(answer, part) for part in parts] == [None] * len(parts)


def test_a_column_that_is_not_there_is_named() -> None:
    with pytest.raises(UnknownColumn, match="no column 'verdicts'"):
        Answerer("review_phase", columns=["verdicts"])
    with pytest.raises(UnknownColumn, match="weeks has no parts"):
        Answerer("review_phase", columns=["weeks.start_date"])
    with pytest.raises(TableRefused, match="verdict cannot be carried"):
        Answerer("review_phase", carry=["verdict"])


def test_answers_say_what_made_them() -> None:
    made = answer_table(table("read_trend", bodies("read_trend", 1, 1, faulty=0)), "read_trend")
    assert made.schema.metadata[b"steelyard_operation"] == b"read_trend"
    assert made.schema.remove_metadata().equals(answer_schema("read_trend").remove_metadata())


# Faults


def one(**changes: Any) -> Json:
    body = invented_members(1, 7)[0]
    for path, value in changes.items():
        *way, last = path.split("__")
        holder: Any = body
        for step in way:
            holder = holder[int(step)] if step.isdigit() else holder[step]
        if value is None:
            del holder[last]
        else:
            holder[int(last) if last.isdigit() else last] = value
    return body


def test_a_row_of_every_kind_of_problem_touches_no_other() -> None:
    asked = {
        "OUT_OF_RANGE": one(profile__weight_kg=3),
        "MISSING_FIELD": one(profile__sex=None),
        "NOT_A_CHOICE": one(profile__sex="both"),
        "WRONG_LENGTH": one(phase__weeks=[]),
        "UNKNOWN_FIELD": one(profile__activity={"kind": "level", "level": "light", "steps_per_day": 3000}),
        "OUT_OF_DOMAIN": one(log={"weights": []}),
        "GUARD_RAIL": one(screening=None),
        "INTERNAL_ERROR": one(profile__age_years=44),
        "": one(),
    }
    compute = review_phase.compute

    def failing(body: Any) -> Any:
        if body.profile.age_years == 44:
            raise ZeroDivisionError("of nobody's business")
        return compute(body)

    answerer = Answerer("review_phase")
    answerer.operation = _with_compute(failing)
    found = answerer.answer(table("review_phase", list(asked.values()))).to_pylist()
    said = [row["problem"] for row in found]
    codes = [problem and (problem["code"], *[fault["code"] for fault in problem["errors"]]) for problem in said]
    for name, code in zip(asked, codes, strict=True):
        assert name in (code or ("",)), (name, code)
    assert {problem["type"].split("/")[2] for problem in said if problem} <= set(KINDS)
    assert "nobody" not in str(said)
    assert found[-1]["fingerprint"]


def _with_compute(compute: Any) -> Any:
    return msgspec.structs.replace(review_phase, compute=compute)


def test_numbers_that_are_none_are_faults_of_their_rows() -> None:
    asked = table("read_trend", bodies("read_trend", 3, 2, faulty=0))
    log = asked.column("log").combine_chunks()
    weights = log.field("weights")
    kilograms = weights.flatten().field("weight_kg").to_numpy(zero_copy_only=False).copy()
    first, second = weights.offsets[1].as_py(), weights.offsets[2].as_py()
    kilograms[first], kilograms[second] = np.nan, np.inf
    entries = weights.flatten()
    renewed = pa.StructArray.from_arrays(
        [entries.field("date"), pa.array(kilograms), entries.field("order")], names=["date", "weight_kg", "order"]
    )
    logs = pa.StructArray.from_arrays(
        [pa.ListArray.from_arrays(weights.offsets, renewed), log.field("intakes"), log.field("cycle")],
        names=["weights", "intakes", "cycle"],
    )
    found = answer_table(asked.set_column(asked.column_names.index("log"), "log", logs), "read_trend").to_pylist()
    assert found[0]["problem"] is None
    for row in found[1:]:
        (fault,) = row["problem"]["errors"]
        assert fault["pointer"] == "#/log/weights/0/weight_kg"
        assert fault["code"] == "WRONG_TYPE"
        assert dict(fault["params"])["accepted"]["text"].startswith("a number ")


def test_an_answer_that_is_no_number_is_a_fault_of_its_row() -> None:
    compute, seen = review_phase.compute, []

    def failing(body: Any) -> Any:
        answer = compute(body)
        seen.append(answer)
        return msgspec.structs.replace(answer, protein_reference_kg=float("nan")) if len(seen) == 2 else answer

    answerer = Answerer("review_phase", columns=["protein_reference_kg", "verdict"])
    answerer.operation = _with_compute(failing)
    found = answerer.answer(table("review_phase", invented_members(3, 9))).to_pylist()
    assert [row["problem"] and row["problem"]["code"] for row in found] == [None, "INTERNAL_ERROR", None]
    assert found[1]["verdict"] is None


def test_a_row_without_a_reference_has_a_problem() -> None:
    asked = table("read_trend", bodies("read_trend", 2, 2, faulty=0))
    nameless = asked.set_column(0, "reference", pa.array([None, "x" * 201], pa.string()))
    pointers = [row["problem"]["errors"][0]["pointer"] for row in answer_table(nameless, "read_trend").to_pylist()]
    assert pointers == ["#/reference", "#/reference"]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda t: t.rename_columns({"profile": "profil"}), "did you mean profile"),
        (lambda t: t.drop_columns(["profile"]), "profile is needed and missing"),
        (lambda t: t.drop_columns(["reference"]), "reference is missing"),
        (lambda t: t.set_column(0, "reference", pa.array([1, 2])), "reference is of type int64"),
        (
            lambda t: t.set_column(t.column_names.index("as_of_date"), "as_of_date", pa.array(["2026-03-02"] * 2)),
            "as_of_date is of type string; needed is date32",
        ),
        (lambda t: t.append_column("gym", pa.array(["a", "b"])), "gym is no column"),
        (lambda t: t.set_column(1, "profile", pa.array([1.0, 2.0])), "profile is of type double; needed is a struct"),
    ],
)
def test_a_table_that_is_none_is_refused_once(change: Any, words: str) -> None:
    asked = table("read_trend", bodies("read_trend", 2, 2, faulty=0))
    assert asked.column_names[1] == "profile"
    with pytest.raises(TableRefused, match=words):
        answer_table(change(asked), "read_trend")


def test_other_tools_kinds_of_column_are_read_as_the_same() -> None:
    """Narrow numbers, large texts, dictionaries, chunks, slices, and columns of null that are left out."""
    asked = table("review_phase", invented_members(6, 4))
    whole = answer_table(asked, "review_phase").drop_columns(["problem"]).combine_chunks()
    profile = asked.column("profile").combine_chunks()
    narrowed = pa.StructArray.from_arrays(
        [
            pc.cast(profile.field("age_years"), pa.int16())
            if field.name == "age_years"
            else profile.field("sex").dictionary_encode()
            if field.name == "sex"
            else profile.field(field.name)
            for field in profile.type
        ],
        names=[field.name for field in profile.type],
    )
    log = asked.schema.field("log").type
    other = asked.set_column(1, "profile", narrowed).set_column(0, "reference", asked.column(0).cast(pa.large_string()))
    other = other.set_column(
        other.column_names.index("log"),
        pa.field("log", pa.struct([pa.field(f.name, pa.large_list(f.type.value_type)) for f in log])),
        asked.column("log").cast(pa.struct([pa.field(f.name, pa.large_list(f.type.value_type)) for f in log])),
    )
    other = other.drop_columns(["as_of_date"])
    padded = pa.concat_tables([other.slice(3), other.slice(0, 3), other.slice(3)]).slice(3, 6)
    order = [3, 4, 5, 0, 1, 2]
    found = answer_table(pa.concat_tables([padded.slice(0, 3), padded.slice(3)]), "review_phase")
    expected = whole.take([0, 1, 2, 3, 4, 5])
    assert found.drop_columns(["problem"]).combine_chunks().equals(expected), order


def test_no_row_is_a_table_too() -> None:
    for operation in OPERATIONS:
        empty = request_schema(operation).empty_table()
        assert (
            answer_table(empty, operation).schema.remove_metadata().equals(answer_schema(operation).remove_metadata())
        )


def test_a_contradiction_is_one_in_a_table_as_well() -> None:
    body = bodies("plan_phases", 1, 1, faulty=0)[0]
    body |= {"phase": {"kind": "maintenance", "weeks": 2}, "pause": {"weeks": 2}}
    (row,) = answer_table(table("plan_phases", [body]), "plan_phases").to_pylist()
    assert row["problem"]["code"] == "CONTRADICTION"
    assert row["problem"]["errors"][0]["pointer"] == "#/pause"
