"""Many calls in one: lines are sent a few at a time, so that neither side ever waits for the other to read."""

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Literal, NamedTuple, TypedDict

from .answers import BodyComposition, Forecast, Maintenance, Plan, Review, Trend
from .errors import ProblemError, SteelyardError, UnreadableAnswer, problem_error
from .exchange import LINES, Reply
from .request_check import plain

LineOperation = Literal[
    "estimate_body_composition", "estimate_maintenance", "forecast_intake", "plan_phases", "read_trend", "review_phase"
]
LineResult = BodyComposition | Maintenance | Forecast | Plan | Trend | Review
_RESULTS: dict[str, type[LineResult]] = {
    "estimate_body_composition": BodyComposition,
    "estimate_maintenance": Maintenance,
    "forecast_intake": Forecast,
    "plan_phases": Plan,
    "read_trend": Trend,
    "review_phase": Review,
}
# A body that the buffers of a connection hold even while the service sends and nobody reads: httpx sends the whole
# body before it reads an answer, and the service reads on only as its answers are taken.
_CHUNK_BYTES = 65_536
_CHUNK_LINES = 200


class Line(TypedDict):
    """A call: ``body`` is what the method of that name takes as keywords, as a model or a dictionary."""

    reference: str
    operation: LineOperation
    body: Any


@dataclass(frozen=True)
class LineAnswer:
    """What became of a line: a ``result``, or the ``problem`` that the method would have raised."""

    reference: str
    result: LineResult | None
    problem: ProblemError | None


class Chunk(NamedTuple):
    """Some lines that are sent together."""

    asked: list[tuple[str, str]]  # reference and operation of each
    content: bytes


class ChunkAnswer(NamedTuple):
    """The answers to a chunk; ``failure`` where the service stopped before its end."""

    answers: list[LineAnswer]
    failure: SteelyardError | None


def chunks(lines: Iterable[Mapping[str, Any] | Line]) -> Iterator[Chunk]:
    """The lines in bodies of a safe size. Bodies are not checked here: the service answers each line by itself.

    Raises ``InvalidRequest`` for what JSON cannot hold, ``KeyError`` for a line without reference or operation.
    """
    asked: list[tuple[str, str]] = []
    content: list[bytes] = []
    size = 0
    for line in lines:
        encoded = json.dumps(plain(line), separators=(",", ":")).encode("ascii") + b"\n"
        if asked and (size + len(encoded) > _CHUNK_BYTES or len(asked) == _CHUNK_LINES):
            yield Chunk(asked, b"".join(content))
            asked, content, size = [], [], 0
        asked.append((line["reference"], str(line["operation"])))
        content.append(encoded)
        size += len(encoded)
    if asked:
        yield Chunk(asked, b"".join(content))


def read_lines(chunk: Chunk, reply: Reply, request_id: str) -> ChunkAnswer:
    """The answers of a chunk. Raises ``UnreadableAnswer`` for one that was cut off or does not fit."""
    try:
        *lines, last = [json.loads(text) for text in reply.content.splitlines()]
        is_complete: bool = last["summary"]["is_complete"]
        failure: SteelyardError | None = None
        if not is_complete:
            failure = _problem(lines.pop()["problem"], request_id)
        answers = [
            _answer(reference, operation, line, request_id)
            for (reference, operation), line in zip(chunk.asked, lines, strict=is_complete)
        ]
    except (ValueError, TypeError, KeyError, AttributeError, IndexError) as error:
        raise UnreadableAnswer(
            f"The answer of {len(chunk.asked)} lines ({LINES}) was cut off or does not fit the contract: {error}.",
            request_id=request_id,
            content=reply.content,
        ) from error
    return ChunkAnswer(answers, failure)


def _answer(reference: str, operation: str, line: dict[str, Any], request_id: str) -> LineAnswer:
    if "problem" in line:
        return LineAnswer(reference, None, _problem(line["problem"], request_id))
    return LineAnswer(reference, _RESULTS[operation].from_dict(line["result"]), None)


def _problem(document: dict[str, Any], request_id: str) -> ProblemError:
    content = json.dumps(document).encode()
    media_type = "application/problem+json"
    return problem_error(
        document["status"], content, media_type=media_type, request_id=request_id, retry_after_seconds=None
    )
