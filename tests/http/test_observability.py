"""What the operator sees: a line per request, spans, probes; and that nothing about a person is among it."""

import asyncio
import io
import json
import logging
import os
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import httpx
import msgspec
import pytest
from in_process import PATIENCE_SECONDS, running
from lifting_form import EXAMPLE, LiftingForm, sum_lifts
from msgspec import to_builtins
from opentelemetry.sdk.trace import TracerProvider
from opentelemetry.sdk.trace.export import SimpleSpanProcessor
from opentelemetry.sdk.trace.export.in_memory_span_exporter import InMemorySpanExporter
from steelyard.http.app import OPERATIONS
from steelyard.http.edge import readiness, tracing
from steelyard.http.endpoints.batches import run_batch
from steelyard.http.operation.operation import Operation, computation
from steelyard.http.wire.observability import JsonFormatter, RequestLog, RequestRecord, log_to
from steelyard.settings import SettingsError
from steelyard.store import schema
from steelyard.store.keys import new_prefix
from steelyard.store.tables import Table

ROOT = Path(__file__).resolve().parents[2]
ID = "6f1c1f3a-43f5-4d0c-9a52-0a3f1f0f6b1e"
TRACE, PARENT = "4bf92f3577b34da6a3ce929d0e0e4736", "00f067aa0ba902b7"
MAINTENANCE = next(o for o in OPERATIONS if o.operation_id == "estimate_maintenance")


def lines(text: str) -> list[dict[str, Any]]:
    """The request log's lines."""
    found = [json.loads(line) for line in text.splitlines() if line.startswith("{")]
    return [line for line in found if line["event"] == "request"]


@pytest.fixture
def spans(monkeypatch: pytest.MonkeyPatch) -> InMemorySpanExporter:
    """Where the spans of services go that are started in the test."""
    exporter = InMemorySpanExporter()
    provider = TracerProvider()
    provider.add_span_processor(SimpleSpanProcessor(exporter))
    monkeypatch.setattr(tracing, "exporting_provider", lambda: provider)
    return exporter


@pytest.fixture
def own_log() -> Iterator[io.StringIO]:
    """The service's own messages, as the server's start-up sends them to standard error."""
    logger, stream = logging.getLogger("steelyard"), io.StringIO()
    before = logger.handlers, logger.propagate, logger.level
    log_to(stream)
    logger.setLevel(logging.DEBUG)
    yield stream
    logger.handlers, logger.propagate = before[0], before[1]
    logger.setLevel(before[2])


_OTHERS = """
import asyncio, sys, warnings
from steelyard.http.wire.observability import log_all_to

log_all_to(sys.stderr)

async def faulty():
    raise ValueError("a weight of 83.651")

async def run():
    task = asyncio.create_task(faulty())
    await asyncio.sleep(0)
    del task
    warnings.warn("a library warns")

asyncio.run(run())
"""


def test_what_others_say_is_a_line_of_json_without_the_text_of_a_fault() -> None:
    """Of a process of the server's: asyncio itself tells all of an exception that nobody heard."""
    environment = os.environ | {"PYTHONPATH": str(ROOT / "service")}
    ran = subprocess.run([sys.executable, "-c", _OTHERS], env=environment, capture_output=True, text=True, check=True)
    said = {line["logger"]: line for line in map(json.loads, ran.stderr.splitlines())}
    assert said["py.warnings"]["event"].endswith("UserWarning: a library warns")
    fault = said["asyncio"]
    assert (fault["event"], fault["exception"]) == ("Task exception was never retrieved", "ValueError")
    assert "83.651" not in ran.stderr


# Lines


async def test_every_request_is_one_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    async with running(tmp_path, (sum_lifts,), log_requests=True) as started:
        body = to_builtins(EXAMPLE)
        traced = {"x-request-id": ID, "traceparent": f"00-{TRACE}-{PARENT}-01"}
        answer = await started.client.post(f"{sum_lifts.path}?weight_kg=1", json=body, headers=traced)
        await started.client.post(sum_lifts.path, json={})
        await started.client.get("/no/such/path?q=1", headers={"authorization": ""})
        await started.client.request("BREW", sum_lifts.path)
        await started.client.get("/problems/not-json")
        prefix = started.token.partition(".")[0]
    first, second, third, fourth, fifth = lines(capsys.readouterr().err)
    assert datetime.fromisoformat(first.pop("time")) <= datetime.now(UTC)
    assert first.pop("duration_ms") > 0
    assert first == {
        "level": "info",
        "event": "request",
        "request_id": ID,
        "method": "POST",
        "route": sum_lifts.path,
        "operation": "sum_lifts",
        "status": 200,
        "answer_bytes": len(answer.content),
        "key": prefix,
        "trace_id": TRACE,
        "parent_id": PARENT,
        "is_sampled": True,
    }
    assert (second["status"], second["problem"]) == (400, "SCHEMA_VIOLATION")
    assert (third["status"], third["problem"]) == (404, "NOT_FOUND")
    assert not {"route", "operation", "key"} & third.keys()
    assert (fourth["method"], fourth["status"]) == ("other", 405)
    assert fifth["route"] == "/problems/{slug}"


def record(status: int = 200) -> RequestRecord:
    return RequestRecord(
        time=datetime.now(UTC),
        event="request",
        request_id=ID,
        method="GET",
        status=status,
        duration_ms=1.0,
        answer_bytes=0,
    )


async def test_lines_are_written_soon(own_log: io.StringIO) -> None:
    """Without a further request to push them out."""
    stream = io.StringIO()
    log = RequestLog(stream)
    log(record())
    log(record(500))
    assert not stream.getvalue()
    async with asyncio.timeout(PATIENCE_SECONDS):
        while not stream.getvalue():
            await asyncio.sleep(0.01)
    assert [line["level"] for line in lines(stream.getvalue())] == ["info", "error"]


async def test_lines_that_wait_are_bounded() -> None:
    stream = io.StringIO()
    log = RequestLog(stream)
    for _ in range(2_500):
        log(record())
    assert len(lines(stream.getvalue())) == 2_000
    log.close()
    log.close()
    assert len(lines(stream.getvalue())) == 2_500


async def test_a_log_that_fails_fails_no_request() -> None:
    class Full(io.StringIO):
        def write(self, _text: str) -> int:
            raise OSError("no space left on device")

    closed = io.StringIO()
    closed.close()
    for stream in (Full(), closed):
        log = RequestLog(stream)
        log(record())
        log.close()


def test_other_messages_have_the_same_form(own_log: io.StringIO) -> None:
    try:
        raise ValueError("87.6543")
    except ValueError:
        logging.getLogger("steelyard.anything").exception("it %s", "failed")
    (line,) = map(json.loads, own_log.getvalue().splitlines())
    assert (line["level"], line["event"], line["exception"]) == ("error", "it failed", "ValueError")
    assert "87.6543" not in own_log.getvalue()
    assert isinstance(logging.getLogger("steelyard").handlers[0].formatter, JsonFormatter)


STARTED_BY_A_SERVER = """
import asyncio, httpx
from steelyard.http.asgi import create

async def main():
    app = create()
    transport = httpx.ASGITransport(app)
    async with app.lifespan(), httpx.AsyncClient(transport=transport, base_url="http://service.test") as client:
        await client.get("/health/live")

asyncio.run(main())
"""


def test_a_server_gets_lines_on_standard_error(tmp_path: Path) -> None:
    environment = {name: value for name, value in os.environ.items() if not name.startswith("STEELYARD_")}
    database = f"sqlite+aiosqlite:///{tmp_path}/operator.sqlite3"
    run = subprocess.run(
        [sys.executable, "-c", STARTED_BY_A_SERVER],
        env={**environment, "PYTHONPATH": str(ROOT / "service"), "STEELYARD_DATABASE_URL": database},
        capture_output=True,
        text=True,
        check=True,
    )
    (line,) = lines(run.stderr)
    assert (line["route"], line["status"]) == ("/health/live", 200)


# Spans


async def test_spans_join_the_callers_trace(tmp_path: Path, spans: InMemorySpanExporter) -> None:
    async with running(tmp_path, (sum_lifts,), tracing=True) as started:
        for flag in ("01", "00"):
            headers = {"traceparent": f"00-{TRACE}-{PARENT}-{flag}", "x-request-id": ID}
            await started.client.post(sum_lifts.path, json=to_builtins(EXAMPLE), headers=headers)
        await started.client.get("/nothing")
    joined, alone = spans.get_finished_spans()  # a caller who does not record is not recorded here either
    assert joined.name == f"POST {sum_lifts.path}"
    assert joined.context.trace_id == int(TRACE, 16)
    assert joined.parent is not None
    assert joined.parent.span_id == int(PARENT, 16)
    assert joined.start_time is not None
    assert joined.end_time is not None
    assert timedelta() < timedelta(microseconds=(joined.end_time - joined.start_time) / 1000) < timedelta(minutes=1)
    attributes = dict(joined.attributes or {})
    assert attributes["http.route"] == sum_lifts.path
    assert attributes["http.response.status_code"] == 200
    assert attributes["steelyard.request_id"] == ID
    assert alone.name == "GET"
    assert alone.parent is None


def test_tracing_says_what_it_needs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "opentelemetry.exporter.otlp.proto.http.trace_exporter", None)
    with pytest.raises(SettingsError, match=r"steelyard\[tracing\]"):
        tracing.exporting_provider()


# Nothing about a person

CANARY = 87.6543
MARKS = ("87.6543", "876543", "87_6543", "87,6543")


def failing(name: str, error: type[Exception], **more: Any) -> Operation:
    @computation(f"/v1/{name}", operation_id=name, tag="t", summary="s", request_examples={"a": EXAMPLE}, **more)
    def fail(body: LiftingForm) -> LiftingForm:
        """Fail with the person's number in the exception's text."""
        try:
            raise error(f"cannot lift {body.sets[0].load_kg}")
        except error as first:
            raise RuntimeError(f"could not lift {body.sets[0].load_kg}") from first

    return fail


def all_tables(database: Path) -> str:
    """Everything in the operator's store, as SQL."""
    with sqlite3.connect(database) as connection:
        return "\n".join(connection.iterdump())


async def test_a_persons_weight_is_found_nowhere(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], spans: InMemorySpanExporter, own_log: io.StringIO
) -> None:
    """A weight that no test or table has otherwise: sent wherever a caller can send it, in all that can go wrong."""
    crash, crash_apart = failing("crash", ZeroDivisionError), failing("crash_apart", KeyError, in_thread=True)
    operations = (MAINTENANCE, sum_lifts, crash, crash_apart)
    told: list[str] = []
    observed = {"log_requests": True, "metrics": True, "metrics_public": True, "tracing": True}
    async with running(tmp_path, operations, **observed) as started:
        client = started.client
        person = to_builtins(next(iter(MAINTENANCE.request_examples.values())))
        person["profile"]["weight_kg"] = CANARY
        lift = to_builtins(EXAMPLE) | {"sets": [{"load_kg": CANARY, "repetitions": 5}]}
        answer = await client.post(MAINTENANCE.path, json=person)
        assert answer.status_code == 200
        heavy = {**person, "profile": {**person["profile"], "weight_kg": 1000 * CANARY}}
        typed = {**person, "profile": {**person["profile"], "weight_kg": str(CANARY)}}
        marked = {**person, f"w{CANARY}": 1}
        bearer = {"authorization": f"Bearer {CANARY}.{CANARY}"}
        everywhere = {
            "x-request-id": str(CANARY),
            "traceparent": f"00-{CANARY}",
            "user-agent": str(CANARY),
            "referer": f"https://desk.example/{CANARY}",
            "accept-encoding": f"gzip;q={CANARY}",
            "origin": str(CANARY),
        }
        refused = [
            await client.post(MAINTENANCE.path, json=heavy),
            await client.post(MAINTENANCE.path, json=typed),
            await client.post(MAINTENANCE.path, json=person, headers={"accept": f"text/{CANARY}"}),
            await client.post(MAINTENANCE.path, json=person, headers={"content-type": "text/plain"}),
            await client.post(MAINTENANCE.path, json=person, headers=bearer),
            await client.get(f"/v1/people/{CANARY}?weight_kg={CANARY}"),
            await client.get(f"/problems/{CANARY}"),
            await client.post(sum_lifts.path, json=lift | {"note": "domain"}),
            await client.post(sum_lifts.path, json=lift | {"note": "nan"}),
            await client.post(sum_lifts.path, json=lift | {"note": "boom"}),
            await client.post(crash.path, json=lift),
            await client.post(crash_apart.path, json=lift),
        ]
        assert {answer.status_code for answer in refused} == {400, 401, 404, 406, 415, 422, 500}
        told += [answer.text for answer in refused]
        odd = [
            await client.post(MAINTENANCE.path, content=json.dumps(marked)[:-9]),
            await client.post(MAINTENANCE.path, json=marked),  # the caller's own name for a field comes back to them
            await client.post(f"{MAINTENANCE.path}?weight_kg={CANARY}", json=person, headers=everywhere),
            await client.request(f"W{CANARY}", MAINTENANCE.path),
        ]
        assert [answer.status_code for answer in odd] == [415, 400, 200, 405]
        measured = (await client.get("/metrics")).text
        assert 'operation="estimate_maintenance"' in measured
    logged = capsys.readouterr().err + own_log.getvalue()
    assert len(lines(logged)) > 15
    assert "RuntimeError" in own_log.getvalue()  # the faults were logged, without their texts
    traced = "\n".join(str(span.to_json()) for span in spans.get_finished_spans())
    assert "POST /v1/crash" in traced
    stored = all_tables(tmp_path / "operator.sqlite3")
    assert "estimate_maintenance" in stored
    places = {"answers": "\n".join(told), "log": logged, "metrics": measured, "spans": traced, "tables": stored}
    found = [f"{mark} in {place}" for place, text in places.items() for mark in MARKS if mark in text]
    assert not found


async def test_the_canary_would_be_heard(tmp_path: Path, own_log: io.StringIO) -> None:
    """The search above can find: a fault whose text is logged is caught by it."""
    logging.getLogger("steelyard.http").error("failed for %s kg", CANARY)
    assert any(mark in own_log.getvalue() for mark in MARKS)


async def test_a_fault_in_answering_is_not_handed_to_the_server(tmp_path: Path, own_log: io.StringIO) -> None:
    """The server would log the exception's text. So even a broken connection ends without it."""
    async with running(tmp_path, (sum_lifts,)) as started:
        body = msgspec.json.encode(EXAMPLE)

        async def receive() -> dict[str, Any]:
            return {"type": "http.request", "body": body, "more_body": False}

        async def send(message: Any) -> None:
            if message["type"] == "http.response.body":
                raise OSError(f"broken pipe while sending {CANARY}")

        headers = [(b"authorization", f"Bearer {started.token}".encode()), (b"content-type", b"application/json")]
        scope: Any = {
            "type": "http",
            "method": "POST",
            "path": sum_lifts.path,
            "raw_path": sum_lifts.path.encode(),
            "query_string": b"",
            "headers": headers,
        }
        with pytest.raises(ConnectionAbortedError) as raised:
            await started.app(scope, receive, send)  # type: ignore[arg-type]
    assert raised.value.__suppress_context__
    assert str(CANARY) not in str(raised.value) + own_log.getvalue()


# Keys that are not accepted, and batches


async def test_a_key_that_is_not_accepted_leaves_a_trace(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """For the operator: whose key, and why. Of what is no key, nothing that was sent."""
    settings = {"log_requests": True, "metrics": True, "metrics_public": True, "key_cache_seconds": 0.0}
    async with running(tmp_path, (sum_lifts,), **settings) as started:
        prefix = started.token.partition(".")[0]
        invented = new_prefix()
        for token in (f"{invented}.x", f"{prefix}.wrong", "Kim-87.x"):
            await started.client.post(sum_lifts.path, headers={"authorization": f"Bearer {token}"})
        await started.store.revoke_key(prefix)
        await started.client.post(sum_lifts.path)
        _, expired = await started.store.create_key("Gym", ["compute"], expiry_time=datetime(2020, 1, 1, tzinfo=UTC))
        await started.client.post(sum_lifts.path, headers={"authorization": f"Bearer {expired}"})
        measured = (await started.client.get("/metrics")).text
    told = capsys.readouterr().err
    seen = [(line.get("rejection"), line.get("key")) for line in lines(told) if line["status"] == 401]
    assert seen == [
        ("unknown", None),
        ("wrong_secret", prefix),
        ("unknown", None),
        ("revoked", prefix),
        ("expired", expired.partition(".")[0]),
    ]
    assert invented not in told
    assert "Kim" not in told
    assert 'steelyard_keys_rejected_total{reason="unknown"} 2.0' in measured


async def test_a_batch_tells_how_it_went(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    settings = {"log_requests": True, "metrics": True, "metrics_public": True, "batch_lines": 3}
    async with running(tmp_path, (run_batch,), **settings) as started:
        for count in (2, 5):
            sent = {"content-type": "application/x-ndjson"}
            await started.client.post(run_batch.path, content=b"{}\n" * count, headers=sent)
        measured = (await started.client.get("/metrics")).text
    told = [line for line in lines(capsys.readouterr().err) if line.get("operation") == "run_batch"]
    assert [(line["lines"], line["line_problems"], line["is_complete"]) for line in told] == [
        (2, 2, True),
        (3, 3, False),
    ]
    assert 'steelyard_batch_lines_total{outcome="problem"} 5.0' in measured
    assert 'steelyard_batches_total{end="cut_off"} 1.0' in measured


# Probes


async def test_ready_means_that_keys_can_be_checked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(readiness, "LOOK_SECONDS", 0.01)
    async with running(tmp_path, (), key_grace_seconds=0.0) as started:

        async def becomes(status: int) -> httpx.Response:
            async with asyncio.timeout(PATIENCE_SECONDS):
                while (answer := await started.client.get("/health/ready")).status_code != status:
                    await asyncio.sleep(0.01)
            return answer

        for path, said in (("/health/live", "live"), ("/health/ready", "ready")):
            answer = await started.client.get(path, headers={"authorization": ""})
            assert (answer.status_code, answer.json()) == (200, {"status": said})
            assert answer.headers["cache-control"] == "no-store"
        for revision, said in (("0000", "steelyard migrate"), ("garbage", "none of this service's")):
            with sqlite3.connect(tmp_path / "operator.sqlite3") as connection:
                connection.execute("UPDATE alembic_version SET version_num = ?", (revision,))
            behind = await becomes(503)
            assert said in behind.json()["detail"]
            assert int(behind.headers["retry-after"]) > 0
            with sqlite3.connect(tmp_path / "operator.sqlite3") as connection:
                connection.execute("UPDATE alembic_version SET version_num = ?", (schema.HEAD,))
            await becomes(200)
        with sqlite3.connect(tmp_path / "operator.sqlite3") as connection:
            for table in reversed(Table.metadata.sorted_tables):
                connection.execute(f"DROP TABLE {table.name}")
        assert "tables are missing" in (await becomes(503)).json()["detail"]
        assert (await started.client.get("/health/live")).status_code == 200
