"""The service's own documents: the contract, its page for people, the problem types. Public, outside the contract."""

from collections.abc import Iterable
from functools import cache, lru_cache

import msgspec
from litestar.handlers import HTTPRouteHandler
from litestar.params import FromPath
from litestar.types import ASGIApp

from steelyard.science import catalogue
from steelyard.science.register import Kind

from ..operation.keyless import public
from ..operation.operation import Operation
from ..wire.conditional import Document
from ..wire.headers import CONTENT_SECURITY_POLICY
from ..wire.problems import GUARD_RAIL, KINDS, NOT_FOUND, ROOT, ProblemError
from .api_reference import PAGE_PATH, POLICY, STYLE, STYLE_PATH, reference_page
from .contract import contract_text, openapi_document
from .guide_pages import guide_routes


class ProblemPage(msgspec.Struct, frozen=True, kw_only=True):
    """What a problem type means and what to do about it."""

    type: str
    title: str
    status: int
    code: str
    meaning: str
    remedy: str


def problem_page(slug: str) -> ProblemPage | None:
    """The page for the part of a type after ``/problems/``."""
    name, _, rule_id = slug.partition("/")
    kind = KINDS.get(name)
    if kind is None:
        return None
    page = ProblemPage(
        type=kind.type,
        title=kind.title,
        status=kind.status,
        code=kind.code,
        meaning=kind.meaning,
        remedy=kind.remedy,
    )
    if not rule_id:
        return page
    rule = catalogue.entries().get(rule_id)
    if kind is not GUARD_RAIL or rule is None or rule.kind is not Kind.RULE:
        return None
    return msgspec.structs.replace(page, type=f"{kind.type}/{rule_id}", meaning=f"{kind.meaning} {rule.summary}")


def document_routes(operations: Iterable[Operation]) -> list[HTTPRouteHandler]:
    """The contract, for programs and for people, and the problem pages."""
    operations = tuple(operations)

    @cache
    def contract() -> Document:
        return Document(contract_text(operations).encode())

    @lru_cache(maxsize=256)  # bounded, since anyone may ask for any name
    def page_of(slug: str) -> Document | None:
        page = problem_page(slug)
        return None if page is None else Document(msgspec.json.encode(page))

    @public("/openapi.json")
    async def openapi() -> ASGIApp:
        """The contract, the same bytes as in the repository."""
        return contract()

    @cache
    def page() -> Document:
        html = reference_page(openapi_document(operations)).encode()
        return Document(html, b"text/html; charset=utf-8", headers=[(CONTENT_SECURITY_POLICY, POLICY)])

    style = Document(STYLE.encode(), b"text/css; charset=utf-8")

    @public(PAGE_PATH)
    async def reference() -> ASGIApp:
        """The contract for people."""
        return page()

    @public(STYLE_PATH)
    async def reference_style() -> ASGIApp:
        """How that page looks."""
        return style

    @public(ROOT + "{slug:path}")
    async def problem(slug: FromPath[str]) -> ASGIApp:
        """The documentation of one problem type."""
        page = page_of(slug.strip("/"))
        if page is None:
            raise ProblemError(NOT_FOUND, "There is no such problem type; `contracts/problems.md` lists them.")
        return page

    return [openapi, reference, reference_style, problem, *guide_routes()]
