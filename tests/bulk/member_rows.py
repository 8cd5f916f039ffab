"""Requests of random people as rows of a table, and answers of a table as the JSON they stand for."""

import json
import random
from datetime import date, timedelta
from typing import Any

import msgspec
import pyarrow as pa
from rails.requests import REQUESTS
from request_people import CLEAR
from steelyard.bulk import OPERATIONS, request_schema
from steelyard.bulk.shapes import Entries, Fields, Items, Scalar, Shape, shape_of

Json = dict[str, Any]


def bodies(operation: str, count: int, seed: int, *, faulty: float = 0.25) -> list[Json]:
    """Bodies of random people, a share of them with a fault somewhere, the contract's examples in front."""
    rng = random.Random(seed)
    shape = shape_of(OPERATIONS[operation].body_type)  # type: ignore[arg-type]
    examples = [json.loads(encoded) for encoded in _examples(operation)]
    found = [*examples, *(REQUESTS[operation](rng) for _ in range(max(0, count - len(examples))))][:count]
    return [_broken(rng, body, shape) if rng.random() < faulty else body for body in found]


def _examples(operation: str) -> list[bytes]:
    return [msgspec.json.encode(body) for body in OPERATIONS[operation].request_examples.values()]


def _broken(rng: random.Random, body: Json, shape: Fields) -> Json:
    """The body with one value changed to what a table may hold as well: too small, too large, no choice, or gone."""
    body = json.loads(json.dumps(body))
    places: list[tuple[Any, Any, Scalar]] = []
    _places(body, shape, places)
    holder, key, scalar = rng.choice(places)
    value = holder[key]
    match scalar.kind:
        case "double" | "int64":
            holder[key] = rng.choice([-1, 10**7, value])
        case "string":
            holder[key] = rng.choice(["", "neither", value])
        case "date":
            holder[key] = rng.choice(["1900-01-01", "2100-12-31", (date.fromisoformat(value)).isoformat()])
    if rng.random() < 0.3 and isinstance(key, str):
        del holder[key]
    return body


def _places(value: Any, shape: Shape, found: list[tuple[Any, Any, Scalar]]) -> None:
    if isinstance(shape, Fields):
        for field in shape.fields:
            inner = value.get(field.name)
            if isinstance(field.shape, Scalar) and inner is not None:
                found.append((value, field.name, field.shape))
            elif inner is not None:
                _places(inner, field.shape, found)
    elif isinstance(shape, Items):
        for index, inner in enumerate(value):
            if isinstance(shape.item, Scalar):
                found.append((value, index, shape.item))
            else:
                _places(inner, shape.item, found)


def table(operation: str, found: list[Json], **more: list[Any]) -> pa.Table:
    """Bodies as a table of requests, with columns of its own."""
    shape = shape_of(OPERATIONS[operation].body_type)  # type: ignore[arg-type]
    rows = [{"reference": f"member-{i:05}"} | _plain(body, shape) for i, body in enumerate(found)]
    made = pa.Table.from_pylist(rows, schema=request_schema(operation))
    for name, values in more.items():
        made = made.append_column(name, pa.array(values))
    return made


def _plain(value: Any, shape: Shape) -> Any:
    """JSON as the values that a column of that shape is made of."""
    if value is None:
        return None
    match shape:
        case Scalar("date"):
            return date.fromisoformat(value)
        case Items(item):
            return [_plain(each, item) for each in value]
        case Fields(fields):
            assert not value.keys() - {field.name for field in fields}
            return {field.name: _plain(value[field.name], field.shape) for field in fields if field.name in value}
        case _:
            return value


def as_json(value: Any, shape: Shape) -> Any:
    """What a value of a table stands for."""
    if value is None:
        return None
    match shape:
        case Scalar("date"):
            return value.isoformat()
        case Scalar("number_or_text"):
            return value["number"] if value["text"] is None else value["text"]
        case Items(item):
            return [as_json(each, item) for each in value]
        case Entries(entry):
            return {name: as_json(each, entry) for name, each in value}
        case Fields(fields, is_union):
            tag = next((value[field.name] for field in fields if field.is_tag), None)
            assert all(value[field.name] is None for field in fields if is_union and tag not in field.tags)
            has = [field for field in fields if not is_union or tag in field.tags]
            return {field.name: as_json(value[field.name], field.shape) for field in has}
        case _:
            return value


def invented_members(count: int, seed: int, *, days: int = 42) -> list[Json]:
    """Bodies of ``review_phase``: people in the middle of a mini-cut or a gain, each with a log of their own."""
    rng = random.Random(seed)
    return [_followed(rng, days) for _ in range(count)]


def _followed(rng: random.Random, days: int) -> Json:
    start = date(2026, 3, 2)
    weight = round(rng.uniform(58, 105), 1)
    usual = round(rng.uniform(2100, 3100))
    is_cut = rng.random() < 0.5
    planned = usual - 500 if is_cut else usual + 200
    pace = -0.07 if is_cut else 0.02
    weights, intakes = [], []
    for day in range(days):
        when = (start + timedelta(days=day - 14)).isoformat()
        if rng.random() < 0.85:
            weights.append({"date": when, "weight_kg": round(weight + pace * max(0, day - 14) + rng.gauss(0, 0.5), 1)})
        if rng.random() < 0.85:
            eaten = (usual if day < 14 else planned) * rng.gauss(1, 0.08)
            intakes.append({"date": when, "intake_kcal": round(eaten), "carbohydrate_g": round(eaten * 0.11)})
    return {
        "profile": {
            "sex": rng.choice(["male", "female"]),
            "age_years": rng.randint(19, 60),
            "height_cm": round(rng.uniform(158, 192), 1),
            "weight_kg": weight,
            "activity": {"kind": "level", "level": rng.choice(["light", "moderate"])},
            "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
            "body_fat": {"fat_fraction": round(rng.uniform(0.16, 0.32), 3), "method": "skinfolds"},
        },
        "phase": {
            "kind": "mini_cut" if is_cut else "gain",
            "start_date": start.isoformat(),
            "weeks": [
                {"intake_kcal": planned, "protein_g": round(2 * weight), "carbohydrate_g": round(planned * 0.11)}
                for _ in range(6 if is_cut else 12)
            ],
            "maintenance": {"kcal_per_day": usual, "standard_deviation_kcal": 120},
        },
        "log": {"weights": weights, "intakes": intakes},
        "screening": CLEAR,
    }
