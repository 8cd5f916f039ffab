"""The workbench: a page on which a coach plays through a person's year and a roster, and an integrator the operations.

Public as a page; what it sends needs a key.

Its files lie in ``workbench`` beside this, and no other origin is asked for anything. ``{masthead}`` and ``{caution}``
in the page become what all pages share.
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
from ..schemas.states import State
from ..wire.conditional import Document
from ..wire.headers import CONTENT_SECURITY_POLICY
from ..wire.negotiation import JSON
from .answer_examples import without_nulls
from .contract import openapi_document
from .contract_schemas import reached
from .site import CAUTION, WORKBENCH, Site

OPERATIONS_PATH = f"{WORKBENCH.path}/operations.json"
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
    schema: str  # the name of its body's schema
    examples: list[Example]


class Offered(msgspec.Struct, frozen=True, kw_only=True):
    """What the page can send, and the schemas that its forms are made from: those of the contract."""

    operations: list[Offer]
    schemas: dict[str, Any]


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
            schema=operation.body_type.__name__,
            examples=[
                Example(name=name, body=without_nulls(msgspec.to_builtins(example)))
                for name, example in operation.request_examples.items()
            ],
        )
        for operation in operations
        if operation.body_type is not None and operation.stream is None and not operation.renders
    ]


def form_schemas(operations: Iterable[Operation]) -> dict[str, Any]:
    """The contract's schemas that the bodies are made of. A state is handed on as it is, so it is none of them."""
    operations = tuple(operations)
    schemas = openapi_document(operations)["components"]["schemas"]
    names = reached(schemas, (offer.schema for offer in offers(operations)), but=frozenset({State.__name__}))
    return {name: schemas[name] for name in sorted(names)}


def workbench_routes(operations: Iterable[Operation], site: Site) -> list[HTTPRouteHandler]:
    """The page, its files, and the operations that it offers."""
    operations = tuple(operations)

    @cache
    def listed() -> Document:
        offered = Offered(operations=offers(operations), schemas=form_schemas(operations))
        return Document(msgspec.json.encode(offered), JSON.encode())

    @public(OPERATIONS_PATH)
    async def workbench_operations() -> ASGIApp:
        """The operations that the page offers, with examples."""
        return listed()

    return [workbench_operations, *_file_routes(site)]


def _file_routes(site: Site) -> Iterator[HTTPRouteHandler]:
    for file in sorted(_FOLDER.iterdir(), key=lambda file: file.name):
        media_type = _MEDIA_TYPES.get(file.name[file.name.rfind(".") :])
        if media_type is not None:
            content = file.read_text("utf-8")
            if file.name == _INDEX:
                content = content.replace("{masthead}", site.masthead(WORKBENCH, "")).replace("{caution}", CAUTION)
            document = Document(content.encode(), media_type, headers=[(CONTENT_SECURITY_POLICY, POLICY)])
            yield _file_route(WORKBENCH.path if file.name == _INDEX else f"{WORKBENCH.path}/{file.name}", document)


def _file_route(path: str, document: Document) -> HTTPRouteHandler:
    @public(path)
    async def workbench_file() -> ASGIApp:
        """One file of the page."""
        return document

    return workbench_file
