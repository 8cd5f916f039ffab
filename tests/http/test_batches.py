"""The batch: every line by itself, in order, at bounded memory, whatever its neighbours do."""

import asyncio
import gzip
import json
import tracemalloc
import zlib
from collections.abc import AsyncIterator, Callable, Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import httpx
import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from in_process import BASE_URL, PATIENCE_SECONDS, Running, running
from steelyard.http.app import OPERATIONS
from steelyard.http.endpoints.batch_kinds import BatchOperation
from steelyard.http.endpoints.batches import CHUNK_LINES, PATH, AskedLine, Single, _turns, run_batch
from steelyard.http.operation.request_costs import units as units_of
from steelyard.http.wire.wire_refusals import ENDING

LINES = {"content-type": "application/x-ndjson"}
SINGLES = {operation.operation_id: operation for operation in OPERATIONS}
EXAMPLES = [
    (operation_id, msgspec.json.encode(example))
    for operation_id in BatchOperation
    for example in SINGLES[operation_id].request_examples.values()
]


def line(reference: str, operation: str, body: bytes) -> bytes:
    return b'{"reference":%b,"operation":"%b","body":%b}\n' % (json.dumps(reference).encode(), operation.encode(), body)


QUICK = (
    b'{"sex":"female","age_years":27,"height_cm":166,"weight_kg":63.2,"training_status":"novice",'
    b'"measurements":[{"kind":"bmi"}]}'
)


def quick(reference: str) -> bytes:
    """A line that is answered in well under a millisecond."""
    return line(reference, "estimate_body_composition", QUICK)


async def send(service: Running, lines: Iterable[bytes], **headers: str) -> list[Any]:
    answer = await service.client.post(PATH, content=b"".join(lines), headers=LINES | headers)
    assert answer.status_code == 200, answer.text
    assert answer.headers["content-type"] == "application/x-ndjson"
    assert answer.content.endswith(b"\n")
    return [json.loads(text) for text in answer.content.splitlines()]


@pytest.fixture(scope="module")
async def strict(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Running]:
    """A service with small limits."""
    directory = tmp_path_factory.mktemp("strict")
    async with running(directory, body_limit_bytes=4000, batch_lines=50, batch_idle_seconds=0.2) as started:
        yield started


async def test_results_are_the_bytes_of_single_calls(service: Running) -> None:
    batch = b"".join(line(f"member-{i}", name, body) for i, (name, body) in enumerate(EXAMPLES))
    answer = await service.client.post(PATH, content=batch, headers=LINES)
    lines = answer.content.splitlines()
    assert len(lines) == len(EXAMPLES) + 1
    for i, (name, body) in enumerate(EXAMPLES):
        json_headers = {"content-type": "application/json"}
        single = await service.client.post(SINGLES[name].path, content=body, headers=json_headers)
        assert single.status_code == 200
        assert lines[i] == b'{"line":%d,"reference":"member-%d","result":%b}' % (i + 1, i, single.content)
    summary = json.loads(lines[-1])["summary"]
    assert summary == {
        "lines": len(EXAMPLES),
        "results": len(EXAMPLES),
        "problems": 0,
        "problems_by_status": {},
        "is_complete": True,
    }


async def test_problems_are_the_documents_of_single_calls(service: Running) -> None:
    a_cut = next(body for name, body in EXAMPLES if name == "plan_phases" and b'"mini_cut"' in body)
    bodies = [
        ("estimate_maintenance", b"{}"),
        ("estimate_maintenance", b"[]"),
        ("plan_phases", b'{"profile": 1}'),
        ("read_trend", dict(EXAMPLES)["read_trend"].replace(b'"weights":[', b'"weights":[], "intakes":[], "x":[')),
        ("plan_phases", a_cut.replace(b'"is_pregnant":false', b'"is_pregnant":true')),
    ]
    answers = await send(service, [line("x", name, body) for name, body in bodies])
    for answer, (name, body) in zip(answers, bodies, strict=False):
        single = await service.client.post(
            SINGLES[name].path, content=body, headers={"content-type": "application/json"}
        )
        expected = single.json()
        assert answer["problem"].pop("instance").startswith("urn:uuid:")
        expected.pop("instance")
        assert answer["problem"] == expected
        assert "result" not in answer
    assert {answer["problem"]["status"] for answer in answers[:-1]} == {400, 422}


BROKEN = (
    b'{"profile": 1, nope}',
    b'{"unheard_of": 1, "y": "\\ud800"}',
    b'{"unheard_of": 1, "y": "\xff"}',
    b'{"unheard_of": ' + b"[" * 20_000 + b"]" * 20_000 + b"}",
    b'{"unheard_of": 1e400}',
    b"{}{}",
    b'{"profile": NaN}',
)


@pytest.mark.parametrize("broken", BROKEN)
@pytest.mark.parametrize("name", list(BatchOperation))
async def test_what_is_no_json_is_said_alike_in_a_line(service: Running, name: str, broken: bytes) -> None:
    """The line is none as well then; only the byte that is named may be counted from its beginning."""
    answer, _ = await send(service, [line("x", name, broken)])
    single = await service.client.post(SINGLES[name].path, content=broken, headers={"content-type": "application/json"})
    expected = single.json()
    problem = answer["problem"]
    assert (problem["type"], problem["status"]) == (expected["type"], expected["status"])
    assert [fault["code"] for fault in problem["errors"]] == [fault["code"] for fault in expected["errors"]]


@pytest.mark.parametrize("how", ["revoked", "expired"])
async def test_a_batch_ends_with_its_key(tmp_path: Path, how: str) -> None:
    """Its lines may take days to come: a key that leaked must not live on for as long."""
    cache_seconds = 0.2
    async with running(tmp_path, key_cache_seconds=cache_seconds) as started:
        end = datetime.now(UTC) + timedelta(seconds=2) if how == "expired" else None
        key, token = await started.store.create_key("Dockside Barbell", ["compute"], expiry_time=end)

        async def lines() -> AsyncIterator[bytes]:
            yield quick("a") * 2
            await asyncio.sleep(2 * cache_seconds)
            yield quick("b") * 2
            if end is not None:
                await asyncio.sleep((end - datetime.now(UTC)).total_seconds())
            else:
                await started.store.revoke_key(key.prefix)
            await asyncio.sleep(2 * cache_seconds)
            yield quick("c") * 2

        answer = await started.client.post(PATH, content=lines(), headers=LINES | {"Authorization": f"Bearer {token}"})
        *answered, refused, summary = (json.loads(each) for each in answer.content.splitlines())
        assert [each["reference"] for each in answered] == ["a", "a", "b", "b"]
        assert (refused["line"], refused["problem"]["type"]) == (5, "/problems/key-rejected")
        assert summary["summary"] == {
            "lines": 4,
            "results": 4,
            "problems": 0,
            "problems_by_status": {},
            "is_complete": False,
        }


BAD_LINES = [
    pytest.param(b"{", "not-json", None, id="not JSON"),
    pytest.param(b"\xff\xfe", "not-json", None, id="not UTF-8"),
    pytest.param(
        b'{"reference":"b","operation":"read_trend","body":{"profile":{"sex":"\xff"}}}',
        "not-json",
        "b",
        id="bad body text",
    ),
    pytest.param(b"[" * 20_000, "not-json", None, id="deep"),
    pytest.param(b"[]", "schema-violation", None, id="no object"),
    pytest.param(b'{"reference":"b"}', "schema-violation", "b", id="no operation"),
    pytest.param(b'{"operation":"read_trend","body":{}}', "schema-violation", None, id="no reference"),
    pytest.param(b'{"reference":7,"operation":"read_trend","body":{}}', "schema-violation", None, id="odd reference"),
    pytest.param(b'{"reference":"b","operation":"fly","body":{}}', "schema-violation", "b", id="unknown operation"),
    pytest.param(b'{"reference":"b","operation":"run_batch","body":{}}', "schema-violation", "b", id="a batch within"),
    pytest.param(b'{"reference":"b","operation":"read_trend","body":{},"z":1}', "schema-violation", "b", id="extra"),
    pytest.param(b'{"reference":"b","operation":"read_trend","body":null}', "schema-violation", "b", id="null body"),
]


@pytest.mark.parametrize(("bad", "slug", "reference"), BAD_LINES)
async def test_a_bad_line_does_not_touch_the_others(
    service: Running, bad: bytes, slug: str, reference: str | None
) -> None:
    before, answer, after, summary = await send(service, [quick("a"), bad + b"\n", quick("c")])
    assert (before["reference"], after["reference"], after["line"]) == ("a", "c", 3)
    assert before["result"] == after["result"]
    assert answer["problem"]["type"] == f"/problems/{slug}"
    assert (answer["line"], answer["reference"]) == (2, reference)
    assert (summary["summary"]["results"], summary["summary"]["problems"]) == (2, 1)


async def test_an_internal_fault_does_not_touch_the_others(
    service: Running, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    answer_well = Single.answer
    seen: list[int] = []

    def fail_once(single: Single, body: bytes) -> bytes:
        seen.append(1)
        if len(seen) == 2:
            raise RuntimeError("a secret of the person")
        return answer_well(single, body)

    monkeypatch.setattr(Single, "answer", fail_once)
    first, second, third, summary = await send(service, [quick("a"), quick("b"), quick("c")])
    assert first["result"] == third["result"]
    assert second["problem"]["status"] == 500
    assert second["reference"] == "b"
    assert summary["summary"]["problems_by_status"] == {"500": 1}
    assert "secret" not in caplog.text


LINE_PARTS = st.one_of(
    st.binary(max_size=40).map(lambda b: b.replace(b"\n", b" ")),
    st.sampled_from([b"", b" ", b"\r", b"null", b"{}", b"\xef\xbb\xbf", *(row.values[0] for row in BAD_LINES)]),
    st.sampled_from([quick("q").rstrip(b"\n"), line("t", "read_trend", b"{}").rstrip(b"\n")]),
    st.builds(
        lambda r, o, b: json.dumps({"reference": r, "operation": o, "body": b}).encode(),
        st.text(max_size=5),
        st.sampled_from([*BatchOperation, "x"]),
        st.recursive(st.none() | st.booleans() | st.floats() | st.text(max_size=4), st.lists, max_leaves=5),
    ),
)


@settings(max_examples=150, suppress_health_check=list(HealthCheck))
@given(lines=st.lists(LINE_PARTS, max_size=8))
async def test_arbitrary_lines_are_each_answered(service: Running, lines: list[bytes]) -> None:
    answers = await send(service, [part + b"\n" for part in lines])
    wanted = [i for i, part in enumerate(lines, 1) if part.strip(b" \t\r")]
    assert [answer["line"] for answer in answers[:-1]] == wanted
    for answer in answers[:-1]:
        assert ("result" in answer) != ("problem" in answer)
        assert answer.get("problem", {}).get("status") in (None, 400, 422)
    assert answers[-1]["summary"]["lines"] == len(wanted)


async def test_order_blank_lines_and_line_ends(service: Running) -> None:
    content = b"\n" + quick("a").replace(b"\n", b"\r\n") + b"  \r\n\n" + quick("b") + quick("c").rstrip(b"\n")
    answers = await send(service, [content])
    assert [(a["line"], a["reference"]) for a in answers[:-1]] == [(2, "a"), (5, "b"), (6, "c")]
    assert answers[-1]["summary"]["lines"] == 3


@pytest.mark.parametrize("content", [b"", b"\n", b" \r\n\n"])
async def test_an_empty_batch(service: Running, content: bytes) -> None:
    (summary,) = await send(service, [content])
    assert summary["summary"]["lines"] == 0
    assert summary["summary"]["is_complete"]


@pytest.mark.parametrize("blank", [b"\n", b" \t\r\n"])
@pytest.mark.parametrize("encoding", ["identity", "gzip"])
async def test_blank_lines_are_bounded(service: Running, blank: bytes, encoding: str) -> None:
    """They cost nothing, so that there must not be any number of them."""
    most = service.settings.batch_lines
    for count, is_complete in ((most, True), (most + 70_000, False)):
        body = blank * (count - 1) + quick("a") + blank
        content = gzip.compress(body) if encoding == "gzip" else body
        answers = await send(service, [content], **{"content-encoding": encoding})
        assert answers[-1]["summary"]["is_complete"] is is_complete
        if not is_complete:
            assert answers[-2]["problem"]["type"] == "/problems/batch-too-long"


async def test_a_line_over_the_limit(strict: Running) -> None:
    limit = strict.settings.body_limit_bytes
    exact = quick("b").rstrip(b"\n").ljust(limit) + b"\n"
    long = quick("c").rstrip(b"\n").ljust(limit + 1) + b"\n"
    huge = b"x" * (30 * limit) + b"\n"
    answers = await send(strict, [quick("a"), exact, long, huge, quick("e")])
    assert ["result" in a for a in answers[:-1]] == [True, True, False, False, True]
    assert {a["problem"]["type"] for a in answers[2:4]} == {"/problems/line-too-long"}
    assert answers[4]["line"] == 5


async def test_the_limit_on_lines(strict: Running) -> None:
    most = strict.settings.batch_lines
    answers = await send(strict, [quick(str(i)) for i in range(most)])
    assert answers[-1]["summary"] | {"lines": most, "is_complete": True} == answers[-1]["summary"]
    answers = await send(strict, [quick(str(i)) for i in range(most + 40)])
    assert [a["reference"] for a in answers[:most]] == [str(i) for i in range(most)]
    assert answers[most]["problem"]["type"] == "/problems/batch-too-long"
    assert answers[most]["line"] == most + 1
    assert (answers[-1]["summary"]["lines"], answers[-1]["summary"]["is_complete"]) == (most, False)


async def test_the_body_as_a_whole_may_be_longer_than_a_body(strict: Running) -> None:
    lines = [quick(str(i)) for i in range(40)]
    assert sum(map(len, lines)) > 1.5 * strict.settings.body_limit_bytes
    assert (await send(strict, lines))[-1]["summary"]["results"] == 40


async def test_key_goes_before_the_body(service: Running) -> None:
    async def unread() -> AsyncIterator[bytes]:
        raise AssertionError("the body was read")
        yield b""

    async with httpx.AsyncClient(transport=httpx.ASGITransport(service.app), base_url=BASE_URL) as stranger:
        assert (await stranger.post(PATH, content=unread(), headers=LINES)).status_code == 401


async def test_media_types(service: Running) -> None:
    wrong = await service.client.post(PATH, content=quick("a"), headers={"content-type": "application/json"})
    assert (wrong.status_code, wrong.json()["type"]) == (415, "/problems/unsupported-media-type")
    assert "application/x-ndjson" in wrong.json()["detail"]
    unwanted = await service.client.post(PATH, content=quick("a"), headers=LINES | {"accept": "application/json"})
    assert unwanted.status_code == 406
    wanted = await service.client.post(PATH, content=quick("a"), headers=LINES | {"accept": "application/x-ndjson"})
    assert wanted.status_code == 200


class Wire:
    """One request at the level of ASGI, its messages by hand."""

    def __init__(self, service: Running, **further: str) -> None:
        self.received: asyncio.Queue[dict[str, Any]] = asyncio.Queue()
        self.sent: list[dict[str, Any]] = []
        self.may_send = asyncio.Event()
        self.may_send.set()
        self.reads = 0
        headers = [
            (b"host", b"service.test"),
            (b"authorization", f"Bearer {service.token}".encode()),
            (b"content-type", b"application/x-ndjson"),
            *((name.replace("_", "-").encode(), value.encode()) for name, value in further.items()),
        ]
        self.scope: dict[str, Any] = {
            "type": "http",
            "asgi": {"version": "3.0"},
            "http_version": "1.1",
            "method": "POST",
            "scheme": "http",
            "path": PATH,
            "raw_path": PATH.encode(),
            "query_string": b"",
            "root_path": "",
            "headers": headers,
            "client": ("127.0.0.1", 1),
            "server": ("127.0.0.1", 2),
            "state": {},
        }
        self.task = asyncio.ensure_future(service.app(self.scope, self._receive, self._send))  # type: ignore[arg-type]

    async def _receive(self) -> dict[str, Any]:
        self.reads += 1
        return await self.received.get()

    async def _send(self, message: dict[str, Any]) -> None:
        await self.may_send.wait()
        self.sent.append(message)

    def give(self, body: bytes, *, more: bool = True) -> None:
        self.received.put_nowait({"type": "http.request", "body": body, "more_body": more})

    def hang_up(self) -> None:
        self.received.put_nowait({"type": "http.disconnect"})

    @property
    def body(self) -> bytes:
        """What was sent of the answer."""
        return b"".join(m["body"] for m in self.sent if m["type"] == "http.response.body")

    @property
    def answers(self) -> list[Any]:
        """The lines that can be read of what was sent."""
        packed = bool(self.sent) and (b"content-encoding", b"gzip") in self.sent[0]["headers"]
        text = zlib.decompressobj(wbits=31).decompress(self.body) if packed else self.body
        return [json.loads(part) for part in text.splitlines()]

    async def until(self, answers: int) -> None:
        async with asyncio.timeout(20):
            while len(self.answers) < answers:
                await asyncio.sleep(0.005)


async def test_answers_come_while_the_body_is_still_being_sent(service: Running) -> None:
    wire = Wire(service)
    first = quick("a")
    wire.give(first[:20])
    wire.give(first[20:] + quick("b")[:30])
    await wire.until(1)
    assert wire.answers[0]["reference"] == "a"
    wire.give(quick("b")[30:] + quick("c"), more=False)
    await wire.task
    assert [a.get("reference") for a in wire.answers] == ["a", "b", "c", None]
    assert wire.answers[-1]["summary"]["is_complete"]


@pytest.mark.parametrize("accepted", ["gzip", "br, gzip;q=0.5"])
async def test_a_batch_is_compressed_on_request_and_still_read_as_it_goes(service: Running, accepted: str) -> None:
    wire = Wire(service, accept_encoding=accepted)
    wire.give(quick("a"))
    await wire.until(1)
    assert wire.answers[0]["reference"] == "a"
    wire.give(b"".join(quick(str(i)) for i in range(2 * CHUNK_LINES)))
    await wire.until(1 + 2 * CHUNK_LINES)
    wire.give(b"", more=False)
    await wire.task
    headers = dict(wire.sent[0]["headers"])
    assert headers[b"vary"] == b"accept-encoding"
    assert b"content-length" not in headers
    plain = Wire(service)
    plain.give(quick("a"))
    plain.give(b"".join(quick(str(i)) for i in range(2 * CHUNK_LINES)), more=False)
    await plain.task
    assert gzip.decompress(wire.body) == plain.body
    assert len(wire.body) < len(plain.body) / 3


async def test_a_batch_may_be_sent_compressed_and_is_read_as_it_comes(service: Running) -> None:
    wire = Wire(service, content_encoding="gzip")
    packer = zlib.compressobj(wbits=31)
    wire.give(packer.compress(quick("a")) + packer.flush(zlib.Z_SYNC_FLUSH))
    await wire.until(1)
    assert wire.answers[0]["reference"] == "a"
    rest = packer.compress(b"".join(quick(str(i)) for i in range(3 * CHUNK_LINES))) + packer.flush()
    for start in range(0, len(rest), 100):
        wire.give(rest[start : start + 100])
    wire.give(b"", more=False)
    await wire.task
    assert [a["reference"] for a in wire.answers[1:-1]] == [str(i) for i in range(3 * CHUNK_LINES)]
    assert wire.answers[-1]["summary"]["is_complete"]


BROKEN = {
    "its sum is wrong": (
        lambda packed: packed[:-5] + bytes([packed[-5] ^ 1]) + packed[-4:],
        "bad-request",
        False,
    ),
    "cut short": (lambda packed: packed[:-9], "bad-request", True),
    "a line without an end": (lambda _: gzip.compress(quick("a") + b"a" * 100_000_000), "body-too-large", True),
}


@pytest.mark.parametrize(("broken", "slug", "is_answered"), BROKEN.values(), ids=BROKEN.keys())
async def test_a_compressed_batch_that_is_broken_is_cut_off_in_words(
    service: Running, broken: Callable[[bytes], bytes], slug: str, is_answered: bool
) -> None:
    sent = broken(gzip.compress(quick("a") + b" " * 100))
    *answers, last, summary = await send(service, [sent], **{"content-encoding": "gzip"})
    assert [answer["reference"] for answer in answers] == (["a"] if is_answered else [])
    assert (last["line"], last["problem"]["type"]) == (1 + is_answered, f"/problems/{slug}")
    assert (summary["summary"]["results"], summary["summary"]["is_complete"]) == (is_answered, False)


@pytest.mark.parametrize("accepted", ["identity", "gzip;q=0", "br"])
async def test_a_batch_is_not_compressed_unasked(service: Running, accepted: str) -> None:
    wire = Wire(service, accept_encoding=accepted)
    wire.give(quick("a"), more=False)
    await wire.task
    assert b"content-encoding" not in dict(wire.sent[0]["headers"])
    assert wire.body.startswith(b'{"line":1,')


async def test_a_slow_reader_slows_the_reading(service: Running) -> None:
    """Nothing is read of the body while an answer waits to be sent."""
    wire = Wire(service)
    for i in range(40):
        wire.give(b"".join(quick(f"{i}-{j}") for j in range(CHUNK_LINES)))
    wire.may_send.clear()
    await asyncio.sleep(0.3)
    reads = wire.reads
    assert reads <= 2
    await asyncio.sleep(0.3)
    assert wire.reads == reads
    wire.may_send.set()
    wire.give(b"", more=False)
    await wire.task
    assert wire.answers[-1]["summary"]["results"] == 40 * CHUNK_LINES


@pytest.mark.parametrize("is_body_complete", [False, True])
async def test_a_caller_who_goes_stops_the_work(
    service: Running, monkeypatch: pytest.MonkeyPatch, is_body_complete: bool
) -> None:
    computed: list[int] = []
    answer_well = Single.answer

    def counted(single: Single, body: bytes) -> bytes:
        computed.append(1)
        return answer_well(single, body)

    monkeypatch.setattr(Single, "answer", counted)
    wire = Wire(service)
    lines = b"".join(quick(str(i)) for i in range(100 * CHUNK_LINES))
    if is_body_complete:
        wire.give(lines, more=False)
        wire.hang_up()
    else:
        wire.give(quick("a"))
        wire.hang_up()
    async with asyncio.timeout(20):
        await asyncio.gather(wire.task, return_exceptions=True)
    assert len(computed) <= 10 * CHUNK_LINES
    assert not any("summary" in answer for answer in wire.answers)


async def test_a_body_that_stops_coming(strict: Running) -> None:
    wire = Wire(strict)
    wire.give(quick("a") + quick("b")[:40])
    async with asyncio.timeout(20):
        await wire.task
    first, problem, summary = wire.answers
    assert first["reference"] == "a"
    assert (problem["problem"]["type"], problem["line"]) == ("/problems/batch-idle", 2)
    assert summary["summary"]["is_complete"] is False


@pytest.mark.parametrize("drop", [b" ", b"\n"], ids=["a byte at a time", "blank lines"])
async def test_a_line_that_never_comes_is_not_waited_for(strict: Running, drop: bytes) -> None:
    wire = Wire(strict)
    wire.give(quick("a"))
    async with asyncio.timeout(20):
        while not wire.task.done():
            wire.give(drop)
            await asyncio.sleep(0.05)
    first, problem, summary = wire.answers
    assert first["reference"] == "a"
    assert problem["problem"]["type"] == "/problems/batch-idle"
    assert summary["summary"]["is_complete"] is False


async def test_every_line_is_counted(tmp_path: Path) -> None:
    async with running(tmp_path, usage_flush_seconds=0.05) as service:
        await send(service, [quick(str(i)) for i in range(100)])
        await asyncio.sleep(0.3)
        usage = await units(service)
    assert usage == (1, 100)


async def test_a_line_costs_what_its_operation_weighs(tmp_path: Path) -> None:
    """In the limit and the ledger; a line at fault what the cheapest costs. And no turn is longer than another."""
    decision = dict(EXAMPLES)["decide_phase"]
    costly = [line(f"d{i}", "decide_phase", decision) for i in range(4)]
    cost = 4 * units_of(SINGLES["decide_phase"]) + 2
    limits = {"rate_limit_requests": cost, "rate_limit_window_seconds": 86_400, "batch_idle_seconds": 0.2}
    async with running(tmp_path, **limits) as service:
        *answers, summary = await send(service, [*costly, quick("a"), b"{}\n"])
        refused = await service.client.post(PATH, content=quick("b"), headers=LINES)
    assert [a.get("reference") for a in answers] == ["d0", "d1", "d2", "d3", "a", None]
    assert summary["summary"]["results"] == 5
    assert refused.status_code == 429
    assert await units(service) == (1, cost)


@pytest.mark.parametrize(
    ("costs", "turns"),
    [
        ([1] * 32, [32]),
        ([10] * 7, [3, 3, 1]),
        ([1, 200, 1], [1, 1, 1]),
        ([30, 2, 1], [2, 1]),
        ([], []),
    ],
)
def test_turns_are_bounded_by_what_they_cost(costs: list[int], turns: list[int]) -> None:
    asked = [AskedLine(number, None, Single(bytes, bytes, bytes, cost)) for number, cost in enumerate(costs)]
    made = list(_turns(asked))
    assert [len(turn) for turn in made] == turns
    assert [each for turn in made for each in turn] == asked


async def test_the_rate_of_a_key_slows_a_batch(tmp_path: Path) -> None:
    async with running(tmp_path, rate_limit_requests=40, rate_limit_window_seconds=1) as service:
        answers = await send(service, [quick(str(i)) for i in range(100)])
    assert answers[-1]["summary"]["results"] == 100


async def test_a_batch_that_waits_for_its_rate_ends_with_the_process(tmp_path: Path) -> None:
    """The wait may be longer than a process that is told to end goes on."""
    limits = {"rate_limit_requests": 40, "rate_limit_window_seconds": 86_400, "batch_idle_seconds": 86_400.0}
    async with running(tmp_path, **limits) as started:
        ending = asyncio.Event()

        async def app(scope: Any, receive: Any, send: Any) -> None:
            async def sent(message: Any) -> None:
                await send(message)
                if message.get("body"):
                    asyncio.get_running_loop().call_later(0.1, ending.set)

            scope.setdefault("state", {})[ENDING] = ending
            await started.app(scope, receive, sent)

        batch = b"".join(quick(str(number)) for number in range(2 * CHUNK_LINES))
        headers = LINES | {"Authorization": f"Bearer {started.token}"}
        async with (
            asyncio.timeout(PATIENCE_SECONDS),
            httpx.AsyncClient(transport=httpx.ASGITransport(app), base_url=BASE_URL) as client,
        ):
            answer = await client.post(PATH, content=batch, headers=headers)
        *answered, refused, summary = (json.loads(each) for each in answer.content.splitlines())
        assert len(answered) == CHUNK_LINES
        assert (refused["line"], refused["problem"]["type"]) == (CHUNK_LINES + 1, "/problems/service-ending")
        assert summary["summary"]["is_complete"] is False


async def test_a_rate_that_is_used_up_for_long_ends_a_batch(tmp_path: Path) -> None:
    limits = {"rate_limit_requests": 40, "rate_limit_window_seconds": 86_400, "batch_idle_seconds": 0.2}
    async with running(tmp_path, **limits) as service:
        answers = await send(service, [quick(str(i)) for i in range(100)])
    *results, refusal, summary = answers
    assert [a["reference"] for a in results] == [str(i) for i in range(CHUNK_LINES)]
    assert (refusal["line"], refusal["problem"]["status"]) == (CHUNK_LINES + 1, 429)
    assert summary["summary"]["is_complete"] is False


async def units(service: Running) -> tuple[int, int]:
    """Requests and units of batches in the store."""
    cells = await service.store.usage()
    mine = [count for cell, count in cells.items() if cell.operation_id == run_batch.operation_id]
    return sum(c.requests for c in mine), sum(c.units for c in mine)


async def test_memory_does_not_grow_with_the_batch(service: Running) -> None:
    """Ten times the lines, the same peak: nothing of what has been answered is kept."""

    async def peak(lines: int) -> int:
        wire = Wire(service)
        tracemalloc.start()
        try:
            for start in range(0, lines, 100):
                wire.give(b"".join(quick(str(i)) for i in range(start, start + 100)))
                while wire.received.qsize() > 2:
                    wire.sent.clear()
                    await asyncio.sleep(0)
            wire.give(b"", more=False)
            await wire.task
            return tracemalloc.get_traced_memory()[1]
        finally:
            tracemalloc.stop()

    await peak(500)  # what is built once
    few, many = await peak(500), await peak(5000)
    assert many < 1.2 * few + 100_000, (few, many)
