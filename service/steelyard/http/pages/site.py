"""What the service's pages share: their frame, the masthead that leads from each to the others, and how they look.

``site`` beside this holds the styles: ``site.css`` is of every page, ``reading.css`` of those that are only read.
"""

from collections.abc import Iterable
from html import escape
from importlib.resources import files
from typing import NamedTuple

from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from ..operation.keyless import public
from ..wire.conditional import Document
from ..wire.headers import CONTENT_SECURITY_POLICY

# Scripts, frames and forms are shut out altogether, since pages that are only read have none.
POLICY = (
    b"default-src 'self'; script-src 'none'; object-src 'none'; img-src 'self' data:; base-uri 'none'; "
    b"form-action 'none'; frame-ancestors 'none'"
)
CAUTION = (
    "Estimates for healthy adults, and not medical advice: see a physician or a registered dietitian before changing a "
    "diet. Local rules prevail."
)

_FOLDER = files(__package__) / "site"
_STYLES = ("site.css", "reading.css")


class SitePlace(NamedTuple):
    """A page, or several of a kind, that the masthead leads to."""

    path: str
    name: str


START = SitePlace("/", "Start")
WORKBENCH = SitePlace("/workbench", "Workbench")
GUIDES = SitePlace("/guides", "Guides")
REFERENCE = SitePlace("/reference", "Reference")
SCIENCE = SitePlace("/science", "Science")


class Site(NamedTuple):
    """The pages there are. Links are relative, so that a service behind a prefix leads to its own pages."""

    has_workbench: bool

    def places(self) -> list[SitePlace]:
        """Where the masthead leads."""
        return [START, *([WORKBENCH] if self.has_workbench else []), GUIDES, REFERENCE, SCIENCE]

    def masthead(self, at: SitePlace, root: str) -> str:
        """Name and links; ``root`` leads from the page, which is ``at`` one of the places or below it, to the root."""
        links = "".join(
            f'<li><a href="{(root + place.path[1:]) or "./"}"{current}>{place.name}</a></li>'
            for place in self.places()
            for current in (' aria-current="page"' if place is at else "",)
        )
        nav = f'<nav aria-label="Site"><ul>{links}</ul></nav>'
        return f'<header class="masthead"><p class="name">Steelyard</p>{nav}</header>'

    def page(self, title: str, main: str, *, at: SitePlace, root: str = "", contents: str = "") -> str:
        """A page to read: ``main`` with the title in it, and beside it a list of what there is."""
        styles = "\n".join(f'<link rel="stylesheet" href="{root}site/{name}">' for name in _STYLES)
        # The text comes first, and on a narrow page the list after it, with a way there.
        to_contents = '<p class="to-contents"><a href="#contents">Contents</a></p>\n' if contents else ""
        body = f'<main id="content" tabindex="-1">\n{to_contents}{main}\n</main>'
        if contents:
            listed = f'<nav class="contents" id="contents" aria-label="Contents">{contents}</nav>'
            body = f'<div class="with-contents">\n{body}\n{listed}\n</div>'
        return "\n".join(
            [
                '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">',
                '<meta name="viewport" content="width=device-width, initial-scale=1">',
                '<meta name="color-scheme" content="light dark">',
                f'<title>{escape(title)}</title>\n<link rel="icon" href="data:,">\n{styles}\n</head>\n<body>',
                '<a class="skip" href="#content">Skip to the content</a>',
                self.masthead(at, root),
                body,
                f"<footer>{CAUTION}</footer>\n</body>\n</html>\n",
            ]
        )


def table_head(columns: Iterable[str]) -> str:
    """The row of a table's head."""
    cells = "".join(f'<th scope="col">{name}</th>' for name in columns)
    return f"<tr>{cells}</tr>"


def table_row(columns: Iterable[str], cells: Iterable[str], id_: str = "") -> str:
    """A row whose cells know their columns, which stand before them where there is no room for columns."""
    row = "".join(
        f'<td data-column="{name}">{cell}</td>' if cell else "<td></td>"
        for name, cell in zip(columns, cells, strict=True)
    )
    return f'<tr id="{id_}">{row}</tr>' if id_ else f"<tr>{row}</tr>"


def page_document(html: str) -> Document:
    """A page to read, as it is served."""
    return Document(html.encode(), b"text/html; charset=utf-8", headers=[(CONTENT_SECURITY_POLICY, POLICY)])


def style_text(name: str) -> str:
    """The text of a style of ``site``."""
    return (_FOLDER / name).read_text("utf-8")


def style_routes() -> list[HTTPRouteHandler]:
    """The styles."""
    return [_style_route(name) for name in _STYLES]


def _style_route(name: str) -> HTTPRouteHandler:
    style = Document(style_text(name).encode(), b"text/css; charset=utf-8")

    @public(f"/site/{name}")
    async def site_style() -> ASGIApp:
        """How pages look."""
        return style

    return site_style
