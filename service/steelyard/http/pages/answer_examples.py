"""Examples of answers for the contract: what the service really answers to the examples of requests.

They are computed when the contract is written and kept in a file beside this, from which the contract is served.
"""

import asyncio
import json
from collections.abc import Iterable, Mapping
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

import msgspec

from ..languages import ENGLISH
from ..operation.operation import Operation
from ..rendering.pictures.renderer import Renderer
from ..schemas.batches import BatchCounts, BatchSummary
from ..wire.encoding import encode_finite
from ..wire.negotiation import Format

# Of several answers to an operation those up to this size are shown, and the shortest that leaves nothing out anyhow.
MOST_BYTES = 8_000
_FILE_LINES = 12
# Of a catalogue the first entries of each list are shown.
MOST_ENTRIES = 3
# Of a body of lines the first are shown.
MOST_LINES = 2
_DRAWING_SECONDS = 60.0
_FILE = "answer_examples.json"

# By operation, media type and name; a text for what is no JSON.
Examples = Mapping[str, Mapping[str, Mapping[str, Any]]]


@cache
def kept_examples() -> Examples:
    """The examples as they were when the contract was last written."""
    found: Examples = json.loads((files(__package__) / _FILE).read_text(encoding="utf-8"))
    return found


def examples_path() -> Path:
    """The file in which they are kept."""
    return Path(__file__).with_name(_FILE)


def examples_text(operations: Iterable[Operation]) -> str:
    """The file's text: an example a line."""
    collected = asyncio.run(_collected(sorted(operations, key=lambda operation: operation.operation_id)))
    rows = [
        f'"{id_}":{{\n' + ",\n".join(f'"{media_type}":{_lines(named)}' for media_type, named in by_type.items()) + "}"
        for id_, by_type in collected.items()
    ]
    return "{\n" + ",\n".join(rows) + "\n}\n"


def _lines(named: Mapping[str, Any]) -> str:
    rows = (f'"{name}":{json.dumps(v, ensure_ascii=False, separators=(",", ":"))}' for name, v in named.items())
    return "{\n" + ",\n".join(rows) + "}"


def without_nulls(value: Any) -> Any:
    """A request ``value`` without its nulls, which say no more than an absent field."""
    if isinstance(value, dict):
        return {name: without_nulls(inner) for name, inner in value.items() if inner is not None}
    return [without_nulls(inner) for inner in value] if isinstance(value, list) else value


def shown_lines(operation: Operation) -> list[Any]:
    """The lines that stand in the contract for a body of lines."""
    return list(operation.request_examples.values())[:MOST_LINES]


async def _collected(operations: Iterable[Operation]) -> Examples:
    renderer = Renderer(seconds=_DRAWING_SECONDS)
    try:
        return {operation.operation_id: await _of_operation(operation, renderer) for operation in operations}
    finally:
        renderer.close()


async def _of_operation(operation: Operation, renderer: Renderer) -> dict[str, dict[str, Any]]:
    if operation.stream is not None:
        return {operation.media_type: {"lines": _answer_lines(operation)}}
    if operation.body_type is None:
        catalogue = json.loads(encode_finite(operation.compute()))
        return {operation.media_type: {"extract": _extract(catalogue)}}
    if operation.formats:
        return await _other_forms(operation, renderer)
    answers = {name: encode_finite(operation.compute(body)) for name, body in operation.request_examples.items()}
    shown = {name for name, answer in answers.items() if len(answer) <= MOST_BYTES}
    # What is worked out only where a request asks for it is seen in no other answer.
    whole = {name for name, body in operation.request_examples.items() if getattr(body, "include", ())}
    shown.add(min(whole or answers, key=lambda name: len(answers[name])))
    return {operation.media_type: {name: json.loads(answer) for name, answer in answers.items() if name in shown}}


def _answer_lines(operation: Operation) -> str:
    answers = [operation.compute(line) for line in shown_lines(operation)]
    numbered = [msgspec.structs.replace(answer, line=number) for number, answer in enumerate(answers, 1)]
    counts = BatchCounts(lines=len(answers), results=len(answers), problems=0, problems_by_status={}, is_complete=True)
    return b"".join(msgspec.json.encode(line) + b"\n" for line in [*numbered, BatchSummary(summary=counts)]).decode()


def _extract(catalogue: dict[str, Any]) -> dict[str, Any]:
    return {
        name: [_shortened(entry) for entry in value[:MOST_ENTRIES]] if isinstance(value, list) else value
        for name, value in catalogue.items()
    }


def _shortened(entry: Any) -> Any:
    """An entry of a catalogue, a file in it by its first lines."""
    if not isinstance(entry, dict):
        return entry
    return {
        name: "".join(value.splitlines(keepends=True)[:_FILE_LINES]) if isinstance(value, str) else value
        for name, value in entry.items()
    }


async def _other_forms(operation: Operation, renderer: Renderer) -> dict[str, dict[str, Any]]:
    """Documents in each of their media types, and of pictures the one that is text to look at."""
    ((name, body),) = operation.request_examples.items()
    shown = {media_type: form for media_type, form in operation.formats.items() if media_type.startswith("text/")}
    shown = shown or {operation.offered[0]: operation.formats[operation.offered[0]]}
    return {media_type: {name: await _in_form(form, operation, body, renderer)} for media_type, form in shown.items()}


async def _in_form(form: Format, operation: Operation, body: Any, renderer: Renderer) -> str:
    body = form.asked(body)
    answer = operation.compute(body)
    made = form.make(body, answer, {option.name: option.default for option in form.options}, ENGLISH.tag)
    return (await form.finish(made, answer.fingerprint, renderer.render)).decode("utf-8")
