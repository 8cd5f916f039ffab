"""`POST /v1/batches`: many single calls in one request, streamed line by line in both directions.

A few lines at a time are read, answered in a thread, and sent before more is read. So the service holds a few lines
whatever the length of the batch, and a caller that reads slowly slows the reading of their own lines. A line costs the
units of its operation, and what is answered in one turn is bounded by units: a batch of what takes long gets no longer
turns than another, and no cheaper ones than single calls.
"""

import asyncio
import contextlib
from collections import Counter
from collections.abc import Awaitable, Callable, Iterable, Iterator, Mapping
from typing import Any, NamedTuple

import msgspec
from litestar import Request
from litestar.types import ASGIApp, Receive, Scope, Send

from steelyard.store.keys import Scope as KeyScope

from ..operation.operation import COUNT_UNITS, Operation
from ..operation.request_costs import units
from ..schemas.batches import BatchAnswer, BatchCounts, BatchSummary
from ..wire.decoding import BodyDecoder
from ..wire.encoding import encode_finite
from ..wire.headers import CONTENT_ENCODING, CONTENT_TYPE
from ..wire.line_reader import Disconnected, Ending, Line, LineReader
from ..wire.observability import BATCH_COUNTS
from ..wire.problems import (
    BATCH_IDLE,
    BATCH_TOO_LONG,
    LINE_TOO_LONG,
    SERVICE_ENDING,
    ProblemError,
    as_problem,
    problem_of,
)
from ..wire.refusals import REFUSALS, refusal
from ..wire.request_bounds import RequestBounds
from ..wire.request_id import request_id
from ..wire.unpacking import Unpacked, is_packed
from ..wire.wire_refusals import ENDING, problem_of_kind, refused_by_protocol
from .batch_kinds import BATCH_EXAMPLES, BATCHED, MOST_REFERENCE_LENGTH, BatchLine

MEDIA_TYPE = "application/x-ndjson"
PATH = "/v1/batches"
# What is read at a time, and computed and sent: enough that the change of threads does not show, and little to hold.
CHUNK_LINES = 32
CHUNK_BYTES = 262_144
CHUNK_UNITS = 32

NO_REQUEST = "00000000-0000-0000-0000-000000000000"  # the id outside any request (RFC 9562, the nil UUID)

DESCRIPTION = """\
Answer many single calls in one request, streamed. Each line of the body is a `BatchLine`: a reference, an operation
and its body. Each line of the answer is a `BatchAnswer`, in the same order, with that reference and either `result`
(the very bytes of the single call's answer) or `problem` (its problem document, `status` included). A line at fault
never touches the others. The last line is a `BatchSummary`; an answer without it was cut off.

The status is 200 whatever becomes of the lines, since it is sent before they are known. The limit on a body holds
for each line, and a batch has at most 200,000 lines unless the operator set another number. Lines are read only as
fast as answers are taken, and as the key's rate allows: read while you send. A batch ends with its key: once that is
revoked or expires, the next line's problem says so, and no more is answered. A caller who takes nothing for a minute
may be cut off. With `Accept-Encoding: gzip` the answer is compressed as it goes, so that each line can be read as soon
as it is sent; the body may be compressed too (`Content-Encoding: gzip`). A client that sends everything before it reads
an answer may find both sides waiting once a few megabytes are under way; such a client sends smaller batches.
"""

_encoder = msgspec.json.Encoder()


class _Reference(msgspec.Struct):
    """What can still be read of a line at fault."""

    reference: str | None = None


class Single(NamedTuple):
    """A single call: its decoder and what it computes."""

    decode: Callable[[bytes], Any]
    compute: Callable[[Any], Any]
    body_type: type
    units: int

    def answer(self, body: bytes) -> bytes:
        """The bytes that the operation called by itself answers with. Raises what it would raise."""
        try:
            return encode_finite(self.compute(self.decode(body)))
        except REFUSALS as error:
            raise refusal(error, self.body_type) from error


class AskedLine(NamedTuple):
    """What a line asks for, or why it asks for nothing."""

    number: int
    reference: str | None
    single: Single | None = None
    body: bytes = b""
    fault: Exception | None = None

    @property
    def units(self) -> int:
        """What it costs; a line at fault as much as the cheapest."""
        return 1 if self.single is None else self.single.units


class LineAnswerer:
    """Answers lines, each on its own: nothing that one line does can reach another."""

    def __init__(self, operations: Iterable[Operation]) -> None:
        self._singles: Mapping[str, Single] = {
            operation.operation_id: Single(
                BodyDecoder(operation.body_type).decode, operation.compute, operation.body_type, units(operation)
            )
            for operation in operations
            if operation.body_type is not None
        }
        self._decode_line = BodyDecoder(BatchLine).decode
        self._decode_reference = msgspec.json.Decoder(_Reference)

    def read(self, line: Line) -> AskedLine:
        """What the line asks for."""
        if line.content is None:
            fault = ProblemError(LINE_TOO_LONG, f"{LINE_TOO_LONG.meaning} {LINE_TOO_LONG.remedy}")
            return AskedLine(line.number, None, fault=fault)
        try:
            asked = self._decode_line(line.content)
        except ProblemError as error:
            return AskedLine(line.number, self._reference(line.content), fault=error)
        return AskedLine(line.number, asked.reference, self._singles[asked.operation.value], bytes(asked.body))

    def answer(self, asked: AskedLine, id_: str) -> tuple[bytes, int]:
        """The answer line, newline included, and the status of its problem, or 200."""
        if asked.single is None:
            return self.problem(asked.number, asked.reference, asked.fault or AssertionError(), id_)
        try:
            result = asked.single.answer(asked.body)
        except Exception as error:
            return self.problem(asked.number, asked.reference, error, id_)
        answer = BatchAnswer(line=asked.number, reference=asked.reference, result=msgspec.Raw(result))
        return _encoder.encode(answer) + b"\n", 200

    def problem(self, number: int, reference: str | None, error: Exception, id_: str) -> tuple[bytes, int]:
        """The answer line for a line at fault."""
        problem = as_problem(error)
        answer = BatchAnswer(line=number, reference=reference, problem=problem_of(problem, error, id_))
        return _encoder.encode(answer) + b"\n", problem.kind.status

    def _reference(self, content: bytes) -> str | None:
        """The reference of a line that is at fault elsewhere."""
        try:
            reference = self._decode_reference.decode(content).reference
        except (msgspec.DecodeError, UnicodeDecodeError, RecursionError):
            return None
        return reference if reference is None or len(reference) <= MOST_REFERENCE_LENGTH else None


class _Tally:
    """Counts lines by what became of them."""

    def __init__(self) -> None:
        self.lines = self.results = 0
        self.by_status: Counter[str] = Counter()
        self.is_complete = False

    def add(self, status: int) -> None:
        self.lines += 1
        if status == 200:
            self.results += 1
        else:
            self.by_status[str(status)] += 1

    def summary(self, *, is_complete: bool) -> bytes:
        self.is_complete = is_complete
        counts = BatchCounts(
            lines=self.lines,
            results=self.results,
            problems=self.by_status.total(),
            problems_by_status=dict(sorted(self.by_status.items())),
            is_complete=is_complete,
        )
        return _encoder.encode(BatchSummary(summary=counts)) + b"\n"


class BatchStream:
    """Reads, answers and sends, a few lines at a time: an ASGI application that is the response."""

    def __init__(self, answerer: LineAnswerer, limits: RequestBounds) -> None:
        self._answerer = answerer
        self._limits = limits

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer the batch. Ends without a summary only where the caller has gone."""
        limits = self._limits
        id_ = request_id(scope)
        encodings = (value for name, value in scope["headers"] if name == CONTENT_ENCODING)
        reader = LineReader(
            Unpacked(receive) if any(map(is_packed, encodings)) else receive,
            line_bytes=limits.line_bytes,
            idle_seconds=limits.batch_idle_seconds,
            most_blank=limits.batch_lines,
            ending=scope["state"].get(ENDING),
        )
        tally = _Tally()
        headers = [(CONTENT_TYPE, MEDIA_TYPE.encode())]
        await send({"type": "http.response.start", "status": 200, "headers": headers})
        try:
            end = await self._answer_all(reader, tally, scope, send, id_)
        except Disconnected:
            refused = refused_by_protocol(scope)
            if refused is None:
                return
            end = self._cut_off(tally, reader.number + 1, refused, id_)
        finally:
            reader.close()
            scope["state"][BATCH_COUNTS] = (tally.lines, tally.by_status.total(), tally.is_complete)
        await send({"type": "http.response.body", "body": end, "more_body": False})

    async def _answer_all(self, reader: LineReader, tally: _Tally, scope: Scope, send: Send, id_: str) -> bytes:
        """Answer line after line; returns what comes last."""
        count_units: Callable[[int], Awaitable[None]] = scope["state"][COUNT_UNITS]
        ending: asyncio.Event = scope["state"].get(ENDING) or asyncio.Event()
        most = self._limits.batch_lines
        while True:
            left = most - tally.lines
            try:
                lines = await reader.next_lines(min(CHUNK_LINES, left + 1), CHUNK_BYTES)
            except TimeoutError:
                return self._cut_off(tally, reader.number + 1, ProblemError(BATCH_IDLE, BATCH_IDLE.meaning), id_)
            except ProblemError as error:
                return self._cut_off(tally, reader.number + 1, error, id_)
            except Ending:
                return self._cut_off(tally, reader.number + 1, problem_of_kind(SERVICE_ENDING), id_)
            if not lines:
                return tally.summary(is_complete=True)
            excess = lines[left] if len(lines) > left else None
            lines = lines[:left]
            for turn in _turns(map(self._answerer.read, lines)):
                cost = sum(asked.units for asked in turn)
                # The request itself was counted as its first unit.
                refused = await self._admit(count_units, cost if tally.lines else cost - 1, ending)
                if refused is not None:
                    return self._cut_off(tally, turn[0].number, refused, id_)
                body = await self._answer(turn, tally, scope, id_)
                await send({"type": "http.response.body", "body": body, "more_body": True})
            if excess is not None:
                detail = f"A batch holds at most {most} lines here. {BATCH_TOO_LONG.remedy}"
                return self._cut_off(tally, excess.number, ProblemError(BATCH_TOO_LONG, detail), id_)

    async def _admit(
        self, count_units: Callable[[int], Awaitable[None]], units: int, ending: asyncio.Event
    ) -> ProblemError | None:
        """Count units; where the key's rate is reached, wait for its next window once, if that is near.

        A process that is told to end does not wait: the batch would be broken off without a word.
        """
        has_waited = False
        while units > 0:
            try:
                await count_units(units)
            except ProblemError as error:
                seconds = float(error.headers.get("Retry-After", "inf"))
                if has_waited or seconds > self._limits.batch_idle_seconds:
                    return error
                with contextlib.suppress(TimeoutError):
                    await asyncio.wait_for(ending.wait(), seconds)
                    return problem_of_kind(SERVICE_ENDING)
                has_waited = True
            else:
                break
        return None

    async def _answer(self, turn: list[AskedLine], tally: _Tally, scope: Scope, id_: str) -> bytes:
        """The answer lines of a few lines."""
        answer, problem = self._answerer.answer, self._answerer.problem
        try:
            answers = await self._limits.compute(scope, lambda: [answer(asked, id_) for asked in turn], is_patient=True)
        except ProblemError as error:  # too long a computation
            answers = [problem(asked.number, asked.reference, error, id_) for asked in turn]
        for _, status in answers:
            tally.add(status)
        return b"".join(body for body, _ in answers)

    def _cut_off(self, tally: _Tally, number: int, error: ProblemError, id_: str) -> bytes:
        body, _ = self._answerer.problem(number, None, error, id_)
        return body + tally.summary(is_complete=False)


def _turns(asked: Iterable[AskedLine]) -> Iterator[list[AskedLine]]:
    """What is admitted, computed and sent together: lines of so many units, or a single one that costs more."""
    turn: list[AskedLine] = []
    cost = 0
    for each in asked:
        if turn and cost + each.units > CHUNK_UNITS:
            yield turn
            turn, cost = [], 0
        turn.append(each)
        cost += each.units
    if turn:
        yield turn


_ANSWERER = LineAnswerer(BATCHED)


def _stream(limits: RequestBounds) -> Callable[..., Any]:
    async def handle(request: Request[Any, Any, Any]) -> ASGIApp:
        return BatchStream(_ANSWERER, limits)

    return handle


def answer_line(line: BatchLine) -> BatchAnswer:
    """The answer to one line by itself."""
    body, _ = _ANSWERER.answer(_ANSWERER.read(Line(1, _encoder.encode(line))), NO_REQUEST)
    return msgspec.json.decode(body, type=BatchAnswer)


run_batch = Operation(
    operation_id="run_batch",
    method="POST",
    path=PATH,
    tag="batches",
    summary="Answer many requests, one a line",
    description=DESCRIPTION,
    scope=KeyScope.COMPUTE,
    compute=answer_line,
    answer_type=BatchAnswer,
    body_type=BatchLine,
    request_examples=BATCH_EXAMPLES,
    media_type=MEDIA_TYPE,
    stream=_stream,
    further_types=(BatchSummary,),
)
