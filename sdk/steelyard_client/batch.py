"""Many calls in one: lines are sent a few at a time, so that neither side ever waits for the other to read."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sized
from contextlib import ExitStack
from dataclasses import dataclass
from functools import cache
from os import PathLike
from types import TracebackType
from typing import TYPE_CHECKING, Any, NamedTuple, Self

from .batch_file import AnswerFile
from .batch_progress import Progress, progress_bar
from .errors import InvalidRequest, ProblemError, SteelyardError, UnreadableAnswer, problem_error
from .exchange import LINES, Reply
from .generated.contract import LINE_RESULTS

if TYPE_CHECKING:
    from .generated.contract import LineResult
    from .generated.request_types import Line

_OPERATIONS = f"one of {', '.join(LINE_RESULTS)}"
# A body that the buffers of a connection hold even while the service sends and nobody reads: httpx sends the whole
# body before it reads an answer, and the service reads on only as its answers are taken.
_CHUNK_BYTES = 65_536
_CHUNK_LINES = 200
# Problems that the same line has again whenever it is sent; others (a limit, a fault) may pass, and are not kept.
_LASTING_STATUSES = frozenset({400, 413, 422})


@dataclass(frozen=True)
class LineAnswer:
    """What became of a line: a ``result``, or the ``problem`` that the method would have raised."""

    reference: str
    result: LineResult | None
    problem: ProblemError | None

    def __repr__(self) -> str:
        return f"<LineAnswer {self.reference!r}: {self.result if self.problem is None else self.problem}>"


class Asked(NamedTuple):
    """A line of a chunk; ``kept`` is its answer where a file has it already."""

    reference: str
    operation: str
    digest: str
    kept: LineAnswer | None


class Chunk(NamedTuple):
    """Some lines that go together; ``content`` holds those that are to be sent."""

    asked: list[Asked]
    content: bytes


class ChunkAnswer(NamedTuple):
    """The answers to what was sent of a chunk; ``failure`` where the service stopped before its end."""

    answers: list[LineAnswer]
    failure: SteelyardError | None


NOTHING_SENT = ChunkAnswer([], None)


class BatchRun:
    """One run over the lines: what is to be sent, and the answers in the order of the lines.

    ``keep_in`` names a file of answers: those in it are not asked for again, and new ones are added.
    """

    def __init__(
        self,
        lines: Iterable[Mapping[str, Any] | Line],
        keep_in: str | PathLike[str] | None,
        progress: bool | Progress,
    ) -> None:
        self._lines = lines
        self._total = len(lines) if isinstance(lines, Sized) else None
        self._keep_in = keep_in
        self._progress = progress
        self._done = 0
        self._file: AnswerFile | None = None
        self._tell: Callable[[int, int | None], None] | None = None
        self._open = ExitStack()

    def __enter__(self) -> Self:
        if self._keep_in is not None:
            self._file = self._open.enter_context(AnswerFile(self._keep_in))
        if self._progress is True:
            self._tell = self._open.enter_context(progress_bar())
        elif self._progress is not False:
            self._tell = self._progress
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._open.close()

    def chunks(self) -> Iterator[Chunk]:
        """The lines in bodies of a safe size. Bodies are not checked here: the service answers each line by itself.

        Raises ``InvalidRequest`` for what JSON cannot hold and for a line without reference or operation,
        ``ValueError`` for a reference that comes twice where answers are kept by it.
        """
        from .request_check import plain

        asked: list[Asked] = []
        content: list[bytes] = []
        size = 0
        seen: dict[str, int] = {}
        for number, line in enumerate(self._lines, 1):
            _require(line, number)
            encoded = json.dumps(plain(line), separators=(",", ":")).encode("ascii") + b"\n"
            one = Asked(line["reference"], str(line["operation"]), hashlib.sha256(encoded).hexdigest()[:32], None)
            if self._file is not None:
                if one.reference in seen:
                    raise ValueError(
                        f"The reference {one.reference!r} of line {number} is that of line {seen[one.reference]} too, "
                        "and answers are kept by it. Give it another, and run the lines again with the same file."
                    )
                seen[one.reference] = number
                one = one._replace(kept=self._kept(one))
            sent = b"" if one.kept else encoded
            if asked and (size + len(sent) > _CHUNK_BYTES or len(asked) == _CHUNK_LINES):
                yield Chunk(asked, b"".join(content))
                asked, content, size = [], [], 0
            asked.append(one)
            content.append(sent)
            size += len(sent)
        if asked:
            yield Chunk(asked, b"".join(content))

    def merged(self, chunk: Chunk, answered: ChunkAnswer) -> Iterator[LineAnswer]:
        """The answers of a chunk in its order, each kept before it is handed on; up to where the service stopped."""
        new = iter(answered.answers)
        for one in chunk.asked:
            answer = one.kept
            if answer is None:
                answer = next(new, None)
                if answer is None:
                    return
                self._keep(one, answer)
            self._done += 1
            if self._tell is not None:
                self._tell(self._done, self._total)
            yield answer

    def _kept(self, asked: Asked) -> LineAnswer | None:
        assert self._file is not None
        stored = self._file.find(asked.reference, asked.digest)
        return None if stored is None else _answer(asked.reference, asked.operation, stored, "")

    def _keep(self, asked: Asked, answer: LineAnswer) -> None:
        if self._file is None:
            return
        if answer.result is not None:
            self._file.add(asked.reference, asked.digest, {"result": answer.result.to_dict()})
        elif answer.problem is not None and answer.problem.status in _LASTING_STATUSES:
            self._file.add(asked.reference, asked.digest, {"problem": answer.problem.problem.to_dict()})


def _require(line: Mapping[str, Any], number: int) -> None:
    """Raise ``InvalidRequest`` for a line that nothing could be answered to, since it has no name or no question."""
    from .generated.models import FieldProblem, FieldProblemParams

    faults = []
    for field, accepted in (("reference", "a string of 1 to 200 characters"), ("operation", _OPERATIONS)):
        if not isinstance(line.get(field), str):
            params = FieldProblemParams.from_dict({"accepted": accepted})
            detail = f"Line {number}: {field} is missing or no text; accepted is {accepted}."
            faults.append(FieldProblem(pointer=f"#/{field}", code="MISSING_FIELD", detail=detail, params=params))
    if faults:
        raise InvalidRequest(faults)


def read_lines(chunk: Chunk, reply: Reply, request_id: str) -> ChunkAnswer:
    """The answers of a chunk. Raises ``UnreadableAnswer`` for one that was cut off or does not fit."""
    sent = [one for one in chunk.asked if one.kept is None]
    try:
        *lines, last = [json.loads(text) for text in reply.content.splitlines()]
        is_complete: bool = last["summary"]["is_complete"]
        failure: SteelyardError | None = None
        if not is_complete:
            failure = _problem(lines.pop()["problem"], request_id)
        answers = [
            _answer(one.reference, one.operation, line, request_id)
            for one, line in zip(sent, lines, strict=is_complete)
        ]
    except (ValueError, TypeError, KeyError, AttributeError, IndexError) as error:
        raise UnreadableAnswer(
            f"The answer of {len(sent)} lines ({LINES}) was cut off or does not fit the contract: {error}.",
            request_id=request_id,
            content=reply.content,
        ) from error
    return ChunkAnswer(answers, failure)


def _answer(reference: str, operation: str, line: Mapping[str, Any], request_id: str) -> LineAnswer:
    if "problem" in line:
        return LineAnswer(reference, None, _problem(line["problem"], request_id))
    return LineAnswer(reference, _result_type(operation).from_dict(line["result"]), None)


@cache
def _result_type(operation: str) -> type[Any]:
    """The answer of an operation, loaded when the first one comes."""
    from .answers import shown
    from .generated import models

    return shown(getattr(models, LINE_RESULTS[operation]))


def _problem(document: dict[str, Any], request_id: str) -> ProblemError:
    content = json.dumps(document).encode()
    media_type = "application/problem+json"
    return problem_error(
        document["status"], content, media_type=media_type, request_id=request_id, retry_after_seconds=None
    )
