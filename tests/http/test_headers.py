"""What every response says beside its body; compression, methods, time limits, deprecation, other origins, traces."""

import asyncio
import gzip
import threading
import time
from collections.abc import AsyncIterator, Awaitable, Callable
from datetime import date
from pathlib import Path
from typing import Annotated, Any

import httpx
import msgspec
import pytest
from in_process import BASE_URL, Running, running
from lifting_form import EXAMPLE, sum_lifts
from msgspec import Meta, to_builtins
from steelyard.http.app import OPERATIONS
from steelyard.http.operation.operation import Operation, computation
from steelyard.http.pages.contract import openapi_document
from steelyard.http.wire.deprecation import Deprecation, deprecated_field, marked_fields, notice, used
from steelyard.http.wire.trace_context import TraceContext, read_traceparent

EVERYWHERE = {
    "steelyard-contract": "1.0.0",
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "no-referrer",
}
REQUESTS = [
    ("GET", "/v1/methods"),
    ("HEAD", "/v1/methods"),
    ("OPTIONS", "/v1/methods"),
    ("DELETE", "/v1/methods"),
    ("POST", "/v1/maintenance"),
    ("GET", "/nothing"),
    ("GET", "/health/live"),
    ("GET", "/health/ready"),
    ("GET", "/openapi.json"),
    ("GET", "/"),
    ("HEAD", "/"),
    ("GET", "/reference"),
    ("GET", "/problems/not-json"),
]


@pytest.mark.parametrize(("method", "path"), REQUESTS)
async def test_every_response_guards_itself(service: Running, method: str, path: str) -> None:
    answer = await service.client.request(method, path)
    for name, value in EVERYWHERE.items():
        assert answer.headers.get_list(name) == [value], name
    (policy,) = answer.headers.get_list("content-security-policy")
    assert policy.startswith("default-src 'self'" if path in {"/", "/reference"} else "default-src 'none'")
    assert "frame-ancestors 'none'" in policy
    assert len(answer.headers.get_list("cache-control")) == 1
    assert not {"server", "x-powered-by", "set-cookie"} & set(answer.headers)


async def test_what_was_computed_is_stored_nowhere(service: Running) -> None:
    operation = next(o for o in OPERATIONS if o.operation_id == "estimate_maintenance")
    body = to_builtins(next(iter(operation.request_examples.values())))
    for answer in (
        await service.client.post(operation.path, json=body),
        await service.client.post(operation.path, json={}),
        await service.client.post(operation.path, json=body, headers={"authorization": ""}),
    ):
        assert answer.headers["cache-control"] == "no-store"


# Methods


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda o: o.operation_id)
async def test_options_and_wrong_methods_tell_the_same(service: Running, operation: Operation) -> None:
    options = await service.client.options(operation.path)
    assert (options.status_code, options.content) == (204, b"")
    wrong = await service.client.request("PATCH", operation.path)
    assert wrong.status_code == 405
    expected = {"GET, HEAD, OPTIONS"} if operation.method == "GET" else {"OPTIONS, POST"}
    assert {options.headers["allow"], wrong.headers["allow"]} == expected


# Compression


@pytest.fixture(scope="module")
async def lifting(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    async with running(tmp_path_factory.mktemp("lifting"), (sum_lifts,), compress_from_bytes=20) as started:
        yield started


async def raw_body(running: Running, **headers: str) -> httpx.Response:
    """An answer whose body is not unpacked."""
    given = {name.replace("_", "-"): value for name, value in headers.items()}
    request = running.client.build_request("POST", sum_lifts.path, json=to_builtins(EXAMPLE), headers=given)
    answer = await running.client.send(request, stream=True)
    body = b"".join([part async for part in answer.aiter_raw()])
    return httpx.Response(answer.status_code, headers=answer.headers, extensions={"raw": body})


async def test_an_answer_without_a_body_is_not_compressed(tmp_path: Path) -> None:
    """Of the body that GET would get HEAD tells the length, and not that of nothing packed."""
    async with running(tmp_path, (sum_lifts,), metrics=True, metrics_public=True, compress_from_bytes=20) as started:
        head = await started.client.head("/metrics", headers={"accept-encoding": "gzip"})
    assert "content-encoding" not in head.headers
    assert int(head.headers["content-length"]) > 1000


async def test_long_answers_are_compressed_for_who_wants_it(lifting: Running) -> None:
    plain = await raw_body(lifting, accept_encoding="identity")
    short = await raw_body(lifting, accept_encoding="br;q=1, gzip")
    assert "content-encoding" not in plain.headers
    assert short.headers.get_list("content-encoding") == ["gzip"]
    assert gzip.decompress(short.extensions["raw"]) == plain.extensions["raw"]
    for answer in (plain, short):
        assert answer.headers.get_list("content-length") == [str(len(answer.extensions["raw"]))]
        assert answer.headers["vary"] == "accept-encoding"
    again = await raw_body(lifting, accept_encoding="gzip")
    assert again.extensions["raw"] == short.extensions["raw"]


async def test_short_answers_are_not(service: Running) -> None:
    answer = await service.client.get("/health/live", headers={"accept-encoding": "gzip"})
    assert "content-encoding" not in answer.headers
    assert "vary" not in answer.headers


async def test_a_long_problem_is_compressed_as_well(lifting: Running) -> None:
    answer = await lifting.client.post(sum_lifts.path, json={}, headers={"accept-encoding": "gzip"})
    assert answer.headers["content-encoding"] == "gzip"
    assert answer.json()["type"] == "/problems/schema-violation"


# Time limits


async def answer_to(
    running: Running, path: str, receive: Callable[[], Awaitable[dict[str, Any]]]
) -> tuple[int, dict[str, str], bytes]:
    """Status, headers and body for a request whose body comes from ``receive``."""
    sent: list[Any] = []

    async def send(message: Any) -> None:
        sent.append(message)

    headers = [(b"authorization", f"Bearer {running.token}".encode()), (b"content-type", b"application/json")]
    scope: Any = {
        "type": "http",
        "http_version": "1.1",
        "method": "POST",
        "path": path,
        "raw_path": path.encode(),
        "query_string": b"",
        "root_path": "",
        "scheme": "http",
        "headers": headers,
        "client": ("127.0.0.1", 1),
        "server": ("127.0.0.1", 2),
    }
    await running.app(scope, receive, send)  # type: ignore[arg-type]
    start, *parts = sent
    told = {name.decode(): value.decode() for name, value in start["headers"]}
    return start["status"], told, b"".join(part["body"] for part in parts)


async def test_a_body_that_does_not_come_is_given_up(tmp_path: Path) -> None:
    first = asyncio.Event()

    async def drip() -> dict[str, Any]:
        if first.is_set():
            await asyncio.Event().wait()
        first.set()
        return {"type": "http.request", "body": b"{", "more_body": True}

    async with running(tmp_path, (sum_lifts,), body_seconds=0.05) as started:
        status, headers, body = await answer_to(started, sum_lifts.path, drip)
    assert (status, msgspec.json.decode(body)["type"]) == (408, "/problems/body-timeout")
    assert headers["connection"] == "close"


async def test_a_caller_who_leaves_is_no_fault(lifting: Running, caplog: pytest.LogCaptureFixture) -> None:
    async def gone() -> dict[str, Any]:
        return {"type": "http.disconnect"}

    status, _, _ = await answer_to(lifting, sum_lifts.path, gone)
    assert status == 400
    assert not caplog.records


async def test_a_computation_that_takes_too_long_is_given_up(tmp_path: Path) -> None:
    """The caller gets a 503 in time, and what waited behind it for a thread is never begun."""
    release, begun = threading.Event(), []

    @computation("/v1/slow", operation_id="be_slow", tag="t", summary="s", request_examples={}, in_thread=True)
    def be_slow(body: type(EXAMPLE)) -> type(EXAMPLE):  # type: ignore[valid-type]
        """Wait."""
        begun.append(time.monotonic())
        release.wait(30)
        return body

    async with running(tmp_path, (be_slow, sum_lifts), computation_seconds=0.2) as started:
        body = to_builtins(EXAMPLE)
        crowd = 12
        try:
            answers = await asyncio.gather(*(started.client.post("/v1/slow", json=body) for _ in range(crowd)))
            assert {answer.status_code for answer in answers} == {503}
            assert {answer.json()["type"] for answer in answers} == {"/problems/computation-timeout"}
            assert all(int(answer.headers["retry-after"]) > 0 for answer in answers)
            assert len(begun) < crowd
            # The event loop was free all the while, and is now.
            assert (await started.client.post(sum_lifts.path, json=body)).status_code == 200
        finally:
            release.set()
        assert (await started.client.post("/v1/slow", json=body)).status_code == 200
        assert len(begun) < crowd


# Deprecation

GOING = Deprecation(since=date(2027, 1, 1), sunset=date(2028, 1, 1), instead="Use `sum_lifts`.")


class Plate(msgspec.Struct, frozen=True, kw_only=True):
    mass_kg: Annotated[float, Meta(ge=0, le=50)] = 20.0
    colour: Annotated[
        str, Meta(max_length=9, extra_json_schema=deprecated_field(since=date(2026, 7, 1), instead="Leave it out."))
    ] = ""


class Bar(msgspec.Struct, frozen=True, kw_only=True):
    plates: list[Plate] = []
    by_side: dict[str, Plate] = {}
    spare: Plate | None = None
    tags: Annotated[
        list[str],
        Meta(
            extra_json_schema=deprecated_field(
                since=date(2026, 1, 1), sunset=date(2026, 12, 31), instead="Leave them out."
            )
        ),
    ] = []


class Loaded(msgspec.Struct, frozen=True, kw_only=True):
    mass_kg: float


@computation("/v1/bars", operation_id="load_bar", tag="t", summary="s", request_examples={"empty": Bar()})
def load_bar(body: Bar) -> Loaded:
    """The mass of the plates."""
    return Loaded(mass_kg=sum(plate.mass_kg for plate in body.plates))


OLD_SUM = msgspec.structs.replace(sum_lifts, path="/v1/old-sums", operation_id="sum_lifts_before", deprecation=GOING)


@pytest.fixture(scope="module")
async def going(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    async with running(tmp_path_factory.mktemp("going"), (sum_lifts, OLD_SUM, load_bar)) as started:
        yield started


async def test_a_deprecated_operation_says_so(going: Running) -> None:
    """Instants checked against GNU date: `date -u -d 2027-01-01 +%s` and `date -u -R -d 2028-01-01`."""
    old = await going.client.post(OLD_SUM.path, json=to_builtins(EXAMPLE))
    assert old.status_code == 200
    assert old.headers["deprecation"] == "@1798761600"
    assert old.headers["sunset"] == "Sat, 01 Jan 2028 00:00:00 GMT"
    assert 'rel="deprecation"' in old.headers["link"]
    new = await going.client.post(sum_lifts.path, json=to_builtins(EXAMPLE))
    assert not {"deprecation", "sunset", "link"} & set(new.headers)


@pytest.mark.parametrize(
    ("body", "since", "sunset"),
    [
        ({}, None, None),
        ({"plates": [{"mass_kg": 5}]}, None, None),
        ({"plates": [{"colour": ""}]}, None, None),  # its default says nothing
        ({"plates": [{}, {"colour": "red"}]}, "@1782864000", None),
        ({"by_side": {"left": {"colour": "red"}}}, "@1782864000", None),
        ({"spare": {"colour": "red"}}, "@1782864000", None),
        ({"tags": ["x"]}, "@1767225600", "Thu, 31 Dec 2026 00:00:00 GMT"),
        ({"tags": ["x"], "spare": {"colour": "red"}}, "@1767225600", "Thu, 31 Dec 2026 00:00:00 GMT"),
    ],
)
async def test_a_deprecated_field_says_so_where_it_is_used(
    going: Running, body: dict[str, Any], since: str | None, sunset: str | None
) -> None:
    answer = await going.client.post(load_bar.path, json=body)
    assert answer.status_code == 200, answer.text
    assert (answer.headers.get("deprecation"), answer.headers.get("sunset")) == (since, sunset)


def test_the_contract_marks_what_is_deprecated() -> None:
    document = openapi_document([sum_lifts, OLD_SUM, load_bar])
    old = document["paths"][OLD_SUM.path]["post"]
    assert old["deprecated"] is True
    assert old["x-deprecation"] == {"since": "2027-01-01", "sunset": "2028-01-01", "instead": GOING.instead}
    assert {"Deprecation", "Sunset"} <= set(old["responses"]["200"]["headers"])
    assert "deprecated" not in document["paths"][sum_lifts.path]["post"]
    field = document["components"]["schemas"]["Plate"]["properties"]["colour"]
    assert field["deprecated"] is True
    assert field["x-deprecation"]["instead"] == "Leave it out."


def test_marks_are_found_wherever_the_struct_stands() -> None:
    marked = marked_fields(Bar)
    assert {struct: [field.name for field in fields] for struct, fields in marked.items()} == {
        Plate: ["colour"],
        Bar: ["tags"],
    }
    assert used(Bar(), marked) == []
    assert notice([]) == []


def test_nothing_stops_working_before_it_is_deprecated() -> None:
    with pytest.raises(ValueError, match="sunset"):
        Deprecation(since=date(2027, 1, 2), sunset=date(2027, 1, 1), instead="x")


# Other origins

PAGE = "https://desk.example"


@pytest.fixture(scope="module")
async def shared(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    directory = tmp_path_factory.mktemp("shared")
    async with running(directory, (sum_lifts,), cors_origins=f"{PAGE}, http://localhost:5173") as started:
        yield started


def allowing(answer: httpx.Response) -> set[str]:
    return {name for name in answer.headers if name.startswith("access-control-")}


async def test_no_other_origin_may_call_by_default(service: Running) -> None:
    ask = {"origin": PAGE, "access-control-request-method": "POST"}
    assert not allowing(await service.client.options("/v1/maintenance", headers=ask))
    assert not allowing(await service.client.get("/v1/methods", headers={"origin": PAGE}))


async def test_an_allowed_origin_may(shared: Running) -> None:
    ask = {"origin": PAGE, "access-control-request-method": "POST", "access-control-request-headers": "authorization"}
    async with httpx.AsyncClient(transport=httpx.ASGITransport(shared.app), base_url=BASE_URL) as page:
        preflight = await page.options(sum_lifts.path, headers=ask)
    assert preflight.status_code == 204
    assert preflight.headers["access-control-allow-origin"] == PAGE
    assert "authorization" in preflight.headers["access-control-allow-headers"]
    assert "access-control-allow-credentials" not in preflight.headers
    answer = await shared.client.post(sum_lifts.path, json=to_builtins(EXAMPLE), headers={"origin": PAGE})
    assert answer.status_code == 200
    assert answer.headers["access-control-allow-origin"] == PAGE
    assert "X-Request-Id" in answer.headers["access-control-expose-headers"]
    assert "origin" in answer.headers["vary"]
    refused = await shared.client.post(sum_lifts.path, json={}, headers={"origin": PAGE})
    assert refused.headers["access-control-allow-origin"] == PAGE  # so that the page may read the problem


@pytest.mark.parametrize("origin", ["https://desk.example.evil.example", "http://desk.example", "null", "", "*"])
async def test_no_one_else(shared: Running, origin: str) -> None:
    ask = {"origin": origin, "access-control-request-method": "POST"}
    preflight = await shared.client.options(sum_lifts.path, headers=ask)
    answer = await shared.client.post(sum_lifts.path, json=to_builtins(EXAMPLE), headers={"origin": origin})
    for got in (preflight, answer):
        assert not allowing(got)
        assert "origin" in got.headers["vary"]  # a cache must not hand one origin's answer to another


# Traces

TRACE, PARENT = "4bf92f3577b34da6a3ce929d0e0e4736", "00f067aa0ba902b7"  # the example of W3C Trace Context, 3.2.4


@pytest.mark.parametrize(
    ("header", "expected"),
    [
        (f"00-{TRACE}-{PARENT}-01", TraceContext(TRACE, PARENT, True)),
        (f"00-{TRACE}-{PARENT}-00", TraceContext(TRACE, PARENT, False)),
        (f" 00-{TRACE}-{PARENT}-03 ", TraceContext(TRACE, PARENT, True)),
        (f"cc-{TRACE}-{PARENT}-01-what-the-future-will-be-like", TraceContext(TRACE, PARENT, True)),
        (f"00-{TRACE}-{PARENT}-01-more", None),
        (f"ff-{TRACE}-{PARENT}-01", None),
        (f"00-{'0' * 32}-{PARENT}-01", None),
        (f"00-{TRACE}-{'0' * 16}-01", None),
        (f"00-{TRACE.upper()}-{PARENT}-01", None),
        (f"00-{TRACE[:-1]}-{PARENT}-01", None),
        (f"00-{TRACE}-{PARENT}", None),
        (f"00-{TRACE}-{PARENT}-1", None),
        (f"{TRACE}-{PARENT}-01", None),
        ("", None),
        ("x" * 10_000, None),
    ],
)
def test_traceparent(header: str, expected: TraceContext | None) -> None:
    assert read_traceparent(header.encode()) == expected
