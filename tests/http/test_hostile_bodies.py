"""A table of hostile requests, and the exact answer to each.

Fuzzing alone passed a service that coerced types and let bad encodings through, so every such case has a row here.
"""

import gzip
import json
import zlib
from collections.abc import AsyncIterator
from typing import Any

import httpx
import pytest
from in_process import Running, running
from lifting_form import EXAMPLE, sum_lifts, sum_lifts_in_thread
from msgspec import to_builtins
from steelyard.http.app import OPERATIONS
from steelyard.http.operation.operation import Operation

JSON = {"content-type": "application/json"}
PATH = sum_lifts.path
WITH_BODY = [operation for operation in OPERATIONS if operation.body_type is not None and operation.stream is None]


def form(**changes: Any) -> bytes:
    """The valid example with some fields changed; ``...`` leaves one out."""
    fields = to_builtins(EXAMPLE) | changes
    return json.dumps({name: value for name, value in fields.items() if value is not ...}).encode()


def raw(field: str, text: str) -> bytes:
    """The valid example with one field as raw JSON text, which the encoder would not write."""
    return form(**{field: ...})[:-1] + f', "{field}": {text}}}'.encode()


def one_set(**changes: Any) -> bytes:
    return form(sets=[{"load_kg": 100.0, "repetitions": 5} | changes])


@pytest.fixture(scope="module")
async def lifting(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    operations = (sum_lifts, sum_lifts_in_thread)
    async with running(tmp_path_factory.mktemp("lifting"), operations, body_limit_bytes=20_000) as started:
        yield started


# name, body, problem slug, pointer, code
SCHEMA_ROWS: list[tuple[str, bytes, str, str]] = [
    ("unknown field", form(heigth_cm=178), "#/heigth_cm", "UNKNOWN_FIELD"),
    ("unknown nested field", one_set(reps=5), "#/sets/0/reps", "UNKNOWN_FIELD"),
    ("unknown field in union", form(equipment={"kind": "barbell", "bar": 1}), "#/equipment/bar", "UNKNOWN_FIELD"),
    ("name to be escaped", form(**{"a/b~c d": 1}), "#/a~1b~0c%20d", "UNKNOWN_FIELD"),
    ("name that looks like a place", form(**{"x` - at `$.sets": 1}), "#/x", "UNKNOWN_FIELD"),
    ("very long name", form(**{"n" * 5000: 1}), "#/" + "n" * 64, "UNKNOWN_FIELD"),
    ("missing field", form(height_cm=...), "#/height_cm", "MISSING_FIELD"),
    ("missing nested field", form(sets=[{"load_kg": 1}]), "#/sets/0/repetitions", "MISSING_FIELD"),
    ("missing tag", form(equipment={"bar_kg": 20}), "#/equipment/kind", "MISSING_FIELD"),
    ("unknown tag", form(equipment={"kind": "rope"}), "#/equipment/kind", "NOT_A_CHOICE"),
    ("tag of another type", form(equipment={"kind": 1}), "#/equipment/kind", "WRONG_TYPE"),
    ("unknown enum value", form(lift="Squat"), "#/lift", "NOT_A_CHOICE"),
    ("enum of another type", form(lift=1), "#/lift", "WRONG_TYPE"),
    ("below the range", form(height_cm=119.9), "#/height_cm", "OUT_OF_RANGE"),
    ("above the range", form(height_cm=1e9), "#/height_cm", "OUT_OF_RANGE"),
    ("on an open end", form(equipment={"kind": "machine", "stack_kg": 0}), "#/equipment/stack_kg", "OUT_OF_RANGE"),
    ("negative optional", form(rest_minutes=-1e-9), "#/rest_minutes", "OUT_OF_RANGE"),
    ("integer out of range", one_set(repetitions=0), "#/sets/0/repetitions", "OUT_OF_RANGE"),
    ("huge integer for int", one_set(repetitions=10**400), "#/sets/0/repetitions", "OUT_OF_RANGE"),
    ("huge integer for float", form(height_cm=10**400), "#/height_cm", "OUT_OF_RANGE"),
    ("1e400", raw("height_cm", "1e400"), "#/height_cm", "OUT_OF_RANGE"),
    ("-1e400", raw("height_cm", "-1e400"), "#/height_cm", "OUT_OF_RANGE"),
    ("string for float", form(height_cm="178"), "#/height_cm", "WRONG_TYPE"),
    ("string for int", one_set(repetitions="5"), "#/sets/0/repetitions", "WRONG_TYPE"),
    ("string for bool", form(is_paused="true"), "#/is_paused", "WRONG_TYPE"),
    ("int for bool", form(is_paused=1), "#/is_paused", "WRONG_TYPE"),
    ("bool for int", one_set(repetitions=True), "#/sets/0/repetitions", "WRONG_TYPE"),
    ("bool for float", form(height_cm=True), "#/height_cm", "WRONG_TYPE"),
    ("broken float for int", one_set(repetitions=5.5), "#/sets/0/repetitions", "WRONG_TYPE"),
    ("huge float for int", one_set(repetitions=1e300), "#/sets/0/repetitions", "WRONG_TYPE"),
    ("null where not allowed", form(height_cm=None), "#/height_cm", "WRONG_TYPE"),
    ("object for number", form(height_cm={"value": 178}), "#/height_cm", "WRONG_TYPE"),
    ("array for object", form(equipment=[]), "#/equipment", "WRONG_TYPE"),
    ("object for array", form(sets={}), "#/sets", "WRONG_TYPE"),
    ("null entry", form(sets=[None]), "#/sets/0", "WRONG_TYPE"),
    ("second entry wrong", form(sets=[{"load_kg": 1, "repetitions": 1}, 7]), "#/sets/1", "WRONG_TYPE"),
    ("too few entries", form(sets=[]), "#/sets", "WRONG_LENGTH"),
    ("too many entries", form(sets=[{"load_kg": 1, "repetitions": 1}] * 4), "#/sets", "WRONG_LENGTH"),
    ("too long a string", form(note="a" * 11), "#/note", "WRONG_LENGTH"),
    ("string against its pattern", form(note="A"), "#/note", "WRONG_FORM"),
    ("newline after the pattern", form(note="a\n"), "#/note", "WRONG_FORM"),
    ("int as date", form(session_date=20260101), "#/session_date", "WRONG_TYPE"),
    ("impossible date", form(session_date="2026-02-30"), "#/session_date", "WRONG_FORM"),
    ("date with time", form(session_date="2026-02-03T00:00:00"), "#/session_date", "WRONG_FORM"),
    ("value in a mapping", form(tempo_by_phase={"a.b[0]": "slow"}), "#/tempo_by_phase", "WRONG_TYPE"),
    ("array as the body", b"[]", "#", "WRONG_TYPE"),
    ("string as the body", b'"squat"', "#", "WRONG_TYPE"),
    ("number as the body", b"1", "#", "WRONG_TYPE"),
    ("null as the body", b"null", "#", "WRONG_TYPE"),
    ("array in an array where a number belongs", raw("height_cm", "[[]]"), "#/height_cm", "WRONG_TYPE"),
    ("array in an array in an unknown field", b'{"x":[[]]}', "#/x", "UNKNOWN_FIELD"),
]

NOT_JSON_ROWS: list[tuple[str, bytes]] = [
    ("empty", b""),
    ("blank", b" \n"),
    ("truncated", form()[:-1]),
    ("trailing bytes", form() + b"x"),
    ("two values", form() + form()),
    ("byte order mark", b"\xef\xbb\xbf" + form()),
    ("UTF-16", form().decode().encode("utf-16")),
    ("UTF-32", form().decode().encode("utf-32-le")),
    ("invalid UTF-8 in a value", raw("note", '"').replace(b'"note": "', b'"note": "\xff\xfe"')),
    ("invalid UTF-8 in a name", b'{"\xff": 1}'),
    ("overlong UTF-8", raw("note", '"').replace(b'"note": "', b'"note": "\xc0\xaf"')),
    ("UTF-8 of a surrogate", raw("note", '"').replace(b'"note": "', b'"note": "\xed\xa0\x80"')),
    ("lone surrogate", raw("note", '"\\ud800"')),
    ("lone surrogate in a name", b'{"\\ud800": 1}'),
    ("NaN", raw("height_cm", "NaN")),
    ("Infinity", raw("height_cm", "Infinity")),
    ("-Infinity", raw("height_cm", "-Infinity")),
    ("leading zero", raw("height_cm", "0178")),
    ("plus sign", raw("height_cm", "+178")),
    ("bare point", raw("height_cm", "178.")),
    ("hexadecimal", raw("rest_minutes", "0xB2")),
    ("single quotes", b"{'lift': 'squat'}"),
    ("trailing comma", form()[:-1] + b",}"),
    ("comment", b"/* */" + form()),
    ("NUL", b"\x00"),
    ("raw newline in a string", raw("note", '"a\nb"')),
    ("deep array where a number belongs", raw("height_cm", "[" * 9000 + "]" * 9000)),
    ("deep array in an unknown field", b'{"x":' + b"[" * 9000),
    ("broken behind an unknown field", b'{"x": 1, nope'),
    ("broken behind a wrong type", b'{"lift": 1,'),
    ("two values, the first a misfit", b'{"x": 1}{}'),
    ("invalid UTF-8 behind an unknown field", b'{"x": 1, "y": "\xff"}'),
    ("lone surrogate behind an unknown field", b'{"x": 1, "y": "\\ud800"}'),
    ("form encoding", b"lift=squat&height_cm=178"),
    ("XML", b'<?xml version="1.0"?><!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]><x>&e;</x>'),
]

# name, headers
MEDIA_TYPE_ROWS: list[tuple[str, dict[str, str]]] = [
    ("text", {"content-type": "text/plain"}),
    ("XML", {"content-type": "application/xml"}),
    ("form", {"content-type": "application/x-www-form-urlencoded"}),
    ("multipart", {"content-type": "multipart/form-data; boundary=x"}),
    ("MessagePack", {"content-type": "application/msgpack"}),
    ("other JSON", {"content-type": "application/merge-patch+json"}),
    ("prefix of the right one", {"content-type": "application/jsonp"}),
    ("none", {}),
    ("garbage", {"content-type": "\x01;;;"}),
    ("gzip in gzip", JSON | {"content-encoding": "gzip, gzip"}),
    ("deflate", JSON | {"content-encoding": "deflate"}),
    ("unknown encoding", JSON | {"content-encoding": "zstd, br"}),
]

# name, body, headers
ACCEPTED_ROWS: list[tuple[str, bytes, dict[str, str]]] = [
    ("as it should be", form(), JSON),
    ("4.0 for an integer", one_set(repetitions=5.0), JSON),
    ("5e0 for an integer", form(sets=...)[:-1] + b', "sets": [{"load_kg": 100, "repetitions": 5e0}]}', JSON),
    ("integer for a float", one_set(load_kg=100), JSON),
    ("nulls where allowed", form(session_date=None, equipment=None, rest_minutes=None), JSON),
    ("capitals and a charset", form(), {"content-type": "Application/JSON; charset=utf-8"}),
    ("a charset that is not so", form(), {"content-type": "application/json; charset=utf-16"}),
    ("identity encoding", form(), JSON | {"content-encoding": "identity"}),
    ("gzip", gzip.compress(form()), JSON | {"content-encoding": "gzip"}),
    ("gzip by its old name", gzip.compress(form()), JSON | {"content-encoding": "X-Gzip"}),
    ("unknown query", form(), JSON),
    ("a name twice: the last counts", form(lift="bench_press")[:-1] + b', "lift": "squat"}', JSON),
    ("escaped names", form().replace(b'"lift"', b'"\\u006cift"'), JSON),
]


def assert_problem(answer: httpx.Response, status: int, slug: str) -> dict[str, Any]:
    assert answer.status_code == status, answer.text
    assert answer.headers["content-type"] == "application/problem+json"
    problem: dict[str, Any] = answer.json()
    assert set(problem) == {"type", "title", "status", "detail", "instance", "code", "errors"}
    assert problem["type"] == f"/problems/{slug}"
    assert problem["status"] == status
    assert problem["instance"] == f"urn:uuid:{answer.headers['x-request-id']}"
    assert "Traceback" not in answer.text
    return problem


@pytest.mark.parametrize(("body", "pointer", "code"), [pytest.param(*r[1:], id=r[0]) for r in SCHEMA_ROWS])
async def test_against_the_schema(lifting: Running, body: bytes, pointer: str, code: str) -> None:
    answer = await lifting.client.post(PATH, content=body, headers=JSON)
    (fault,) = assert_problem(answer, 400, "schema-violation")["errors"]
    assert (fault["pointer"], fault["code"]) == (pointer, code)
    assert fault["params"]["accepted"]


@pytest.mark.parametrize("body", [pytest.param(body, id=name) for name, body in NOT_JSON_ROWS])
async def test_not_json(lifting: Running, body: bytes) -> None:
    answer = await lifting.client.post(PATH, content=body, headers=JSON)
    assert assert_problem(answer, 400, "not-json")["errors"] == []


@pytest.mark.parametrize("headers", [pytest.param(headers, id=name) for name, headers in MEDIA_TYPE_ROWS])
@pytest.mark.parametrize("body", [form(), b""], ids=["right body", "no body"])
async def test_media_type(lifting: Running, headers: dict[str, str], body: bytes) -> None:
    assert_problem(await lifting.client.post(PATH, content=body, headers=headers), 415, "unsupported-media-type")


PACKED = gzip.compress(form())
NO_GZIP = {
    "plain": form(),
    "empty": b"",
    "cut short": PACKED[:-1],
    "cut in its head": PACKED[:4],
    "a damaged sum": PACKED[:-5] + bytes([PACKED[-5] ^ 1]) + PACKED[-4:],
    "a member behind it": PACKED + PACKED,
    "zlib": zlib.compress(form()),
}


@pytest.mark.parametrize("body", NO_GZIP.values(), ids=NO_GZIP.keys())
async def test_what_is_no_gzip(lifting: Running, body: bytes) -> None:
    answer = await lifting.client.post(PATH, content=body, headers=JSON | {"content-encoding": "gzip"})
    assert "gzip (RFC 1952)" in assert_problem(answer, 400, "bad-request")["detail"]


async def test_what_is_refused_within_gzip_is_refused_as_without(lifting: Running) -> None:
    answer = await lifting.client.post(PATH, content=gzip.compress(b"{"), headers=JSON | {"content-encoding": "gzip"})
    assert_problem(answer, 400, "not-json")
    answer = await lifting.client.post(PATH, content=form(), headers=JSON | {"content-encoding": "br"})
    assert answer.headers["accept-encoding"] == "gzip"


@pytest.mark.parametrize(("body", "headers"), [pytest.param(*row[1:], id=row[0]) for row in ACCEPTED_ROWS])
@pytest.mark.parametrize("path", [PATH, sum_lifts_in_thread.path])
async def test_accepted(lifting: Running, path: str, body: bytes, headers: dict[str, str]) -> None:
    answer = await lifting.client.post(f"{path}?page=2", content=body, headers=headers)
    assert answer.status_code == 200, answer.text
    assert answer.headers["content-type"] == "application/json"
    assert answer.json() == {"total_kg": 500.0, "comment": None}


@pytest.mark.parametrize("values", ['180, "height_cm": 1', '1, "height_cm": 180'])
async def test_of_a_repeated_name_every_value_must_fit(lifting: Running, values: str) -> None:
    body = raw("height_cm", values)
    (fault,) = assert_problem(await lifting.client.post(PATH, content=body, headers=JSON), 400, "schema-violation")[
        "errors"
    ]
    assert fault["pointer"] == "#/height_cm"


async def test_nesting_too_deep_for_the_second_pass(lifting: Running) -> None:
    """An integral float sends the body through the untyped pass, whose depth is limited too."""
    deep = b"[" * 5000 + b"]" * 5000
    body = b'{"sets": [{"load_kg": 1, "repetitions": 5.0}], "x": ' + deep + b"}"
    assert_problem(await lifting.client.post(PATH, content=body, headers=JSON), 400, "not-json")


@pytest.mark.parametrize("announced", [True, False])
async def test_too_large(lifting: Running, announced: bool) -> None:
    body = form() + b" " * lifting.settings.body_limit_bytes

    async def in_pieces() -> AsyncIterator[bytes]:
        for start in range(0, len(body), 1000):
            yield body[start : start + 1000]

    content = body if announced else in_pieces()
    assert_problem(await lifting.client.post(PATH, content=content, headers=JSON), 413, "body-too-large")


async def test_exactly_at_the_limit(lifting: Running) -> None:
    body = form().ljust(lifting.settings.body_limit_bytes)
    assert (await lifting.client.post(PATH, content=body, headers=JSON)).status_code == 200


async def test_a_length_with_a_blank_behind_it(lifting: Running) -> None:
    """RFC 9112 5.1: it belongs to the line, and not to the value."""
    headers = JSON | {"content-length": f"{len(form())} \t"}
    assert (await lifting.client.post(PATH, content=form(), headers=headers)).status_code == 200


@pytest.mark.parametrize("length", ["x", "1e3", "1 2", "²"])
async def test_malformed_content_length(lifting: Running, length: str) -> None:
    headers = JSON | {"content-length": length.encode("latin-1")}
    answer = await lifting.client.post(PATH, content=form(), headers=headers)  # type: ignore[arg-type]
    assert_problem(answer, 400, "bad-request")


async def test_misspelt_name_gets_a_hint(lifting: Running) -> None:
    answer = await lifting.client.post(PATH, content=form(heigth_cm=178), headers=JSON)
    (fault,) = answer.json()["errors"]
    assert fault["params"]["did_you_mean"] == "height_cm"
    assert "did you mean height_cm?" in fault["detail"]


@pytest.mark.parametrize(
    ("body", "accepted"),
    [
        (form(height_cm=1), "a number from 120 to 230"),
        (one_set(repetitions=0), "a whole number from 1 to 100"),
        (form(equipment={"kind": "machine", "stack_kg": 0}), "a number above 0 and below 200"),
        (form(lift="row"), "one of squat, bench_press"),
        (form(equipment={"kind": "rope"}), "one of barbell, machine"),
        (form(session_date="today"), "a date such as 2025-01-31 (RFC 3339 full-date) or null"),
        (form(sets=[]), "an array of 1 to 3 entries"),
        (form(rest_minutes=-1), "a number 0 or more or null"),
        (form(is_paused=0), "true or false"),
        (form(equipment="rope"), "an object whose kind is one of barbell, machine or null"),
    ],
)
async def test_problem_says_what_is_accepted(lifting: Running, body: bytes, accepted: str) -> None:
    (fault,) = (await lifting.client.post(PATH, content=body, headers=JSON)).json()["errors"]
    assert fault["params"]["accepted"] == accepted
    assert accepted in fault["detail"]


@pytest.mark.parametrize(
    ("body", "said"),
    [
        (
            form(height_cm="178,5"),
            "height_cm is text; accepted is a number from 120 to 230, without quotes and with a ",
        ),
        (form(height_cm=""), "height_cm is text; accepted is a number "),
        (form(height_cm=None), "height_cm is null; accepted is a number from 120 to 230."),
        (form(is_paused="true"), "is_paused is text; accepted is true or false."),
        (form(sets={}), "sets is an object; accepted is an array"),
        (one_set(repetitions=5.5), "sets[0].repetitions is a number; accepted is a whole number"),
        (form(session_date="2026-02-30"), "session_date is not a day of the calendar; accepted is a date such as "),
        (form(session_date="30.02.2026"), "session_date is not of the required form; accepted is a date such as "),
    ],
)
async def test_problem_says_what_was_received(lifting: Running, body: bytes, said: str) -> None:
    problem = (await lifting.client.post(PATH, content=body, headers=JSON)).json()
    assert said in problem["detail"]


async def test_a_body_without_a_media_type_is_told_so(lifting: Running) -> None:
    problem = (await lifting.client.post(PATH, content=form())).json()
    assert problem["detail"].startswith("The request has no `Content-Type`. Send ")


@pytest.mark.parametrize("operation", WITH_BODY, ids=lambda o: o.operation_id)
@pytest.mark.parametrize("body", [pytest.param(body, id=name) for name, body in NOT_JSON_ROWS])
async def test_every_operation_refuses_what_is_not_json(service: Running, operation: Operation, body: bytes) -> None:
    answer = await service.client.post(operation.path, content=body, headers=JSON)
    assert_problem(answer, 400, "not-json")


@pytest.mark.parametrize("operation", WITH_BODY, ids=lambda o: o.operation_id)
async def test_every_operation_refuses_unknown_fields(service: Running, operation: Operation) -> None:
    for example in operation.request_examples.values():
        body = to_builtins(example) | {"unheard_of": 1}
        answer = await service.client.post(operation.path, json=body)
        assert_problem(answer, 400, "schema-violation")
        assert answer.json()["errors"][0]["pointer"] == "#/unheard_of"


@pytest.mark.parametrize("operation", WITH_BODY, ids=lambda o: o.operation_id)
async def test_every_operation_answers_its_examples(service: Running, operation: Operation) -> None:
    assert operation.request_examples
    for name, example in operation.request_examples.items():
        answer = await service.client.post(operation.path, json=to_builtins(example))
        assert answer.status_code == 200, (name, answer.text)
