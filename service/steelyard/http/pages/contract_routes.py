"""The service's own pages and documents. Public, outside the contract."""

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
from ..wire.problems import GUARD_RAIL, KINDS, NOT_FOUND, ROOT, ProblemError
from .api_reference import reference_page
from .contract import contract_text, openapi_document
from .guide_pages import guide_routes
from .site import REFERENCE, START, Site, page_document, style_routes
from .start_page import start_page


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


def document_routes(operations: Iterable[Operation], site: Site) -> list[HTTPRouteHandler]:
    """The start page, the contract for programs and for people, the problem pages, the guides and the science."""
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
        return page_document(reference_page(openapi_document(operations), site))

    @cache
    def first_page() -> Document:
        return page_document(start_page(site))

    @public(START.path)
    async def start() -> ASGIApp:
        """What the service is for, and where to go."""
        return first_page()

    @public(REFERENCE.path)
    async def reference() -> ASGIApp:
        """The contract for people."""
        return page()

    @public(ROOT + "{slug:path}")
    async def problem(slug: FromPath[str]) -> ASGIApp:
        """The documentation of one problem type."""
        page = page_of(slug.strip("/"))
        if page is None:
            raise ProblemError(NOT_FOUND, "There is no such problem type; `contracts/problems.md` lists them.")
        return page

    return [start, openapi, reference, problem, *style_routes(), *guide_routes(site)]
