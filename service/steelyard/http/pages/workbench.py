"""The workbench: a page on which an integrator tries the operations. Public as a page; what it sends needs a key.

Its files lie in ``workbench`` beside this and hold all that there is: no other origin is asked for anything.
"""

from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files
from typing import Any

import msgspec
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from ..operation.keyless import public
from ..operation.operation import Operation
from ..wire.conditional import Document
from ..wire.headers import CONTENT_SECURITY_POLICY
from ..wire.negotiation import JSON
from .answer_examples import without_nulls

PAGE_PATH = "/workbench"
OPERATIONS_PATH = f"{PAGE_PATH}/operations.json"
PICTURE = "image/svg+xml"
# Scripts and styles are files of this origin, pictures are what the page has fetched itself, and no script may turn
# text into markup at all (Trusted Types, a W3C working draft; browsers without them ignore the last two).
POLICY = (
    b"default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' blob: data:; "
    b"base-uri 'none'; form-action 'none'; frame-ancestors 'none'; "
    b"require-trusted-types-for 'script'; trusted-types 'none'"
)

_FOLDER = files(__package__) / "workbench"
_INDEX = "index.html"
_MEDIA_TYPES = {
    ".html": b"text/html; charset=utf-8",
    ".css": b"text/css; charset=utf-8",
    ".js": b"text/javascript; charset=utf-8",
}


class Example(msgspec.Struct, frozen=True, kw_only=True):
    """A request to begin with."""

    name: str
    body: dict[str, Any]


class Offer(msgspec.Struct, frozen=True, kw_only=True):
    """An operation as the page offers it."""

    operation_id: str
    path: str
    tag: str
    summary: str
    description: str
    picture_path: str  # empty where there is no picture
    examples: list[Example]


def offers(operations: Iterable[Operation]) -> list[Offer]:
    """What the page can send: the operations that answer one body of JSON."""
    operations = tuple(operations)
    pictures = {operation.renders: operation.path for operation in operations if PICTURE in operation.formats}
    return [
        Offer(
            operation_id=operation.operation_id,
            path=operation.path,
            tag=operation.tag,
            summary=operation.summary,
            description=operation.description,
            picture_path=pictures.get(operation.operation_id, ""),
            examples=[
                Example(name=name, body=without_nulls(msgspec.to_builtins(example)))
                for name, example in operation.request_examples.items()
            ],
        )
        for operation in operations
        if operation.body_type is not None and operation.stream is None and not operation.renders
    ]


def workbench_routes(operations: Iterable[Operation]) -> list[HTTPRouteHandler]:
    """The page, its files, and the operations that it offers."""
    operations = tuple(operations)

    @cache
    def listed() -> Document:
        return Document(msgspec.json.encode(offers(operations)), JSON.encode())

    @public(OPERATIONS_PATH)
    async def workbench_operations() -> ASGIApp:
        """The operations that the page offers, with examples."""
        return listed()

    return [workbench_operations, *_file_routes()]


def _file_routes() -> Iterator[HTTPRouteHandler]:
    for file in sorted(_FOLDER.iterdir(), key=lambda file: file.name):
        media_type = _MEDIA_TYPES.get(file.name[file.name.rfind(".") :])
        if media_type is not None:
            document = Document(file.read_bytes(), media_type, headers=[(CONTENT_SECURITY_POLICY, POLICY)])
            yield _file_route(PAGE_PATH if file.name == _INDEX else f"{PAGE_PATH}/{file.name}", document)


def _file_route(path: str, document: Document) -> HTTPRouteHandler:
    @public(path)
    async def workbench_file() -> ASGIApp:
        """One file of the page."""
        return document

    return workbench_file
