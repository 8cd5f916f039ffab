"""What an operation is, and the two decorators that make one out of a plain function.

An ``Operation`` is the one record from which the route, the key check, the usage count and the contract are made.
"""

import inspect
from collections.abc import Callable, Collection, Mapping
from enum import StrEnum
from functools import partial
from typing import Any, NamedTuple, get_type_hints

import msgspec
from litestar.datastructures import Headers
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp, Receive, Send
from litestar.types import Scope as ConnectionScope

from steelyard.store.keys import Scope

from ..languages import ENGLISH, preferred
from ..wire.conditional import KEYED_DOCUMENT, Document
from ..wire.decoding import BodyDecoder
from ..wire.deprecation import Deprecation, marked_fields, notice, used
from ..wire.encoding import EncodedAnswer, encode_finite
from ..wire.headers import CONTENT_LANGUAGE, FINGERPRINT, VARY, Header
from ..wire.negotiation import JSON, Format, Option, Workshop
from ..wire.refusals import REFUSALS, refusal
from ..wire.request_bounds import RequestBounds
from ..wire.sparing import sparing

OPERATION = "operation"  # the key of a route's options under which its operation stands
PUBLIC = "public"  # the same for a route that needs no key
ANSWER_TYPE = "steelyard_answer_type"  # in the scope's state: the media type that the caller gets
COUNT_UNITS = "steelyard_count_units"  # in the scope's state of a streamed operation: counts its further units


class Operation(msgspec.Struct, frozen=True, kw_only=True):
    """One operation of the contract. ``compute`` is pure, so that the same request may be sent again.

    ``request_examples`` maps a slug to an example body (a struct of ``body_type``).
    """

    operation_id: str
    method: str
    path: str
    tag: str
    summary: str
    description: str
    scope: Scope
    compute: Callable[..., Any]
    answer_type: type
    body_type: type | None = None
    request_examples: Mapping[str, Any] = {}
    in_thread: bool = False
    # Fields of the answer that ``compute`` leaves None where its keyword ``without`` names them: what nobody keeps is
    # not made. ``methods`` tell of all that is made, so that with them nothing is left out.
    parts: frozenset[str] = frozenset()
    deprecation: Deprecation | None = None
    # A streamed operation reads and answers lines: it handles its own body, of this media type both ways, while
    # ``body_type`` and ``answer_type`` are those of a line.
    media_type: str = JSON
    stream: Callable[[RequestBounds], Callable[..., Any]] | None = None
    further_types: tuple[type, ...] = ()  # of other lines of a streamed answer
    # What it answers in place of JSON, by media type: the answer of the operation ``renders``, in another form.
    formats: Mapping[str, Format] = {}
    renders: str = ""

    @property
    def offered(self) -> tuple[str, ...]:
        """The media types of its answers. A caller who has no wish gets the first."""
        return tuple(self.formats) or (self.media_type,)

    @property
    def options(self) -> list[Option]:
        """The query parameters that its formats read."""
        found = [option for format_ in self.formats.values() for option in format_.options]
        return list({option.name: option for option in found}.values())

    @property
    def has_words(self) -> bool:
        """Whether some format is made in the caller's language."""
        return any(format_.has_words for format_ in self.formats.values())

    @property
    def is_slow_to_format(self) -> bool:
        """Whether some format is finished in a workshop."""
        return any(format_.is_slow for format_ in self.formats.values())

    def route(self, limits: RequestBounds, workshop: Workshop) -> HTTPRouteHandler:
        """The framework's handler for this operation."""
        if self.stream is not None:
            handle = self.stream(limits)
        elif self.body_type is not None:
            handle = _body_handler(self, self.body_type, limits, workshop)
        else:
            handle = _constant_handler(self)
        return HTTPRouteHandler(
            self.path,
            http_method=["GET", "HEAD"] if self.method == "GET" else [self.method],  # type: ignore[list-item]
            status_code=200,
            name=self.operation_id,
            opt={OPERATION: self},
        )(handle)


def computation(
    path: str,
    *,
    operation_id: str,
    tag: str,
    summary: str,
    request_examples: Mapping[str, Any],
    scope: Scope = Scope.COMPUTE,
    in_thread: bool = False,
    parts: Collection[str] = (),
    deprecation: Deprecation | None = None,
) -> Callable[[Callable[..., Any]], Operation]:
    """POST ``path``: the decorated function takes the decoded body and returns the answer, both msgspec structs.

    Its type hints give the schemas, its docstring the description in the contract. ``in_thread`` keeps a
    computation of many milliseconds off the event loop. ``parts``: see ``Operation.parts``.
    """

    def make(compute: Callable[..., Any]) -> Operation:
        hints = get_type_hints(compute)
        answer_type, body_type = hints["return"], hints["body"]
        return Operation(
            operation_id=operation_id,
            method="POST",
            path=path,
            tag=tag,
            summary=summary,
            description=inspect.cleandoc(compute.__doc__ or ""),
            scope=scope,
            compute=sparing(compute),
            answer_type=answer_type,
            body_type=body_type,
            request_examples=request_examples,
            in_thread=in_thread,
            parts=frozenset(parts),
            deprecation=deprecation,
        )

    return make


def constant_document(
    path: str, *, operation_id: str, tag: str, summary: str, scope: Scope
) -> Callable[[Callable[[], Any]], Operation]:
    """GET ``path``: the decorated function returns what stays the same for the life of the process."""

    def make(compute: Callable[[], Any]) -> Operation:
        return Operation(
            operation_id=operation_id,
            method="GET",
            path=path,
            tag=tag,
            summary=summary,
            description=inspect.cleandoc(compute.__doc__ or ""),
            scope=scope,
            compute=compute,
            answer_type=get_type_hints(compute)["return"],
        )

    return make


def _constant_handler(operation: Operation) -> Callable[[], Any]:
    made: list[Document] = []

    async def handle() -> ASGIApp:
        if not made:
            headers = notice([operation.deprecation] if operation.deprecation else [])
            body = encode_finite(operation.compute())
            made.append(Document(body, cache_control=KEYED_DOCUMENT, headers=headers))
        return made[0]

    return handle


class _Encoded(NamedTuple):
    """An answer that is ready to be sent, or to be finished by its format and then sent."""

    made: Any
    content_type: str
    fingerprint: str | None
    headers: list[Header]


def _body_handler(
    operation: Operation, body_type: type, limits: RequestBounds, workshop: Workshop
) -> Callable[..., Any]:
    decode: Callable[[bytes], Any] = BodyDecoder(body_type).decode
    compute = operation.compute
    deprecated = [operation.deprecation] if operation.deprecation else []
    formats, options = operation.formats, operation.options

    def answer(content: bytes, format_: Format | None, chosen: Mapping[str, StrEnum], accept_language: str) -> _Encoded:
        try:
            body = decode(content)
            if format_ is not None:
                body = format_.asked(body)
            computed = compute(body)
            made: Any = encode_finite(computed)
            language = ENGLISH.tag if format_ is None or not format_.has_words else preferred(accept_language)
            if format_ is not None:
                made = format_.make(body, computed, chosen, language)
        except REFUSALS as error:
            raise refusal(error, body_type) from error
        marked = marked_fields(body_type)  # found at the first request: a start has no need of it
        headers = notice(deprecated + used(body, marked)) if deprecated or marked else []
        fingerprint = getattr(computed, "fingerprint", None)
        if fingerprint is not None:
            headers.append((FINGERPRINT, fingerprint.encode("ascii")))
        if format_ is not None and format_.has_words:
            headers += [(VARY, b"accept, accept-language"), (CONTENT_LANGUAGE, language.encode("ascii"))]
        elif formats:
            headers.append((VARY, b"accept"))
        return _Encoded(made, JSON if format_ is None else format_.content_type, fingerprint, headers)

    async def serve(scope: ConnectionScope, receive: Receive, send: Send) -> None:
        query: bytes = scope["query_string"]
        chosen = {option.name: option.read(query) for option in options}
        content = await limits.read_body(scope, receive)
        format_ = formats.get(scope["state"].get(ANSWER_TYPE, JSON))
        wanted = Headers.from_scope(scope).get("accept-language", "") if format_ is not None else ""
        if operation.in_thread or (format_ is not None and format_.is_slow):
            encoded = await limits.compute(scope, partial(answer, content, format_, chosen, wanted))
        else:
            encoded = answer(content, format_, chosen, wanted)
        body = encoded.made
        if format_ is not None:
            body = await format_.finish(body, encoded.fingerprint, partial(limits.draw, scope, workshop))
        await EncodedAnswer(body, encoded.content_type.encode("ascii"), headers=encoded.headers)(scope, receive, send)

    # A handler with parameters has the framework look for each of them, with every request.
    async def handle() -> ASGIApp:
        return serve

    return handle
