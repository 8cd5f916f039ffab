"""Guides and the science page: Markdown of the package as pages of plain HTML, without a script, for anyone to read.

``guides`` and ``science`` beside this hold the texts. HTML inside them is not let through. ``{problems}`` in a text
becomes the table of problem kinds, and below the science text stands every entry of the catalogue.
"""

from functools import cache
from html import escape, unescape
from importlib.resources import files
from itertools import groupby, pairwise
from typing import TYPE_CHECKING, Any

from litestar.handlers import HTTPRouteHandler
from litestar.params import FromPath
from litestar.types import ASGIApp

from steelyard.science import catalogue
from steelyard.science.register import Entry, Kind

from ..operation.keyless import public
from ..wire.conditional import Document
from ..wire.problems import KINDS, NOT_FOUND, ProblemError
from .site import GUIDES, SCIENCE, Site, SitePlace, page_document, table_head, table_row

if TYPE_CHECKING:
    from markdown_it.token import Token

_ENTRY_COLUMNS = ("What", "Formula", "Support and sources")
_PAGES = files(__package__)
# Paths that the texts name in code, which become links on the pages.
_LINKED = {"/reference", "/science", "/guides", "/openapi.json", "/workbench"}
_ORDER = (Kind.MODEL, Kind.EQUATION, Kind.RULE, Kind.CONSTANT)
_DOI = "https://doi.org/"


def guide_names() -> list[str]:
    """The guides there are, by the last part of their path."""
    names = [file.name.removesuffix(".md") for file in (_PAGES / "guides").iterdir() if file.name.endswith(".md")]
    return sorted(names)


def guide_text(name: str) -> str:
    """The Markdown of a guide, with what is generated put in."""
    return (_PAGES / "guides" / f"{name}.md").read_text("utf-8").replace("{problems}", _problem_table())


def guide_page(name: str, site: Site) -> str:
    """A guide as a page."""
    return _page(_render(guide_text(name), "../"), site, GUIDES, "../")


def guides_page(site: Site) -> str:
    """The list of guides."""
    lines = ["# Guides", ""]
    for name in guide_names():
        lines.append(f"- [{_title(name)}]({GUIDES.path[1:]}/{name}.md)")
    lines += ["", "The operations and their fields are in `/reference`, the formulas and their sources in `/science`."]
    return _page(_render("\n".join(lines), ""), site, GUIDES, "")


def science_page(site: Site) -> str:
    """The science in words, the picture of its validation, and every entry of the catalogue with its sources."""
    text = (_PAGES / "science" / "science.md").read_text("utf-8")
    for name in ("validation.md", "forecast_against_measured.svg"):
        text = text.replace(f"]({name})", f"](science/{name})")
    return _page(_render(text, "") + _entries() + _sources(), site, SCIENCE, "")


def validation_page(site: Site) -> str:
    """The report of the validation."""
    return _page(_render((_PAGES / "science" / "validation.md").read_text("utf-8"), "../"), site, SCIENCE, "../")


def guide_routes(site: Site) -> list[HTTPRouteHandler]:
    """The guides, the science page, the report and its picture."""

    @cache  # bounded: unknown names never get here
    def made(name: str) -> Document:
        page = {GUIDES.path: guides_page, SCIENCE.path: science_page, "validation": validation_page}.get(name)
        return page_document(guide_page(name, site) if page is None else page(site))

    @cache
    def picture() -> Document:
        content = (_PAGES / "science" / "forecast_against_measured.svg").read_bytes()
        return Document(content, b"image/svg+xml")

    @public(GUIDES.path)
    async def guides() -> ASGIApp:
        """The list of guides."""
        return made(GUIDES.path)

    @public(GUIDES.path + "/{name:str}")
    async def guide(name: FromPath[str]) -> ASGIApp:
        """One guide."""
        if name not in guide_names():
            raise ProblemError(NOT_FOUND, f"There is no such guide; `{GUIDES.path}` lists them.")
        return made(name)

    @public(SCIENCE.path)
    async def science() -> ASGIApp:
        """Every formula, with its sources."""
        return made(SCIENCE.path)

    @public(f"{SCIENCE.path}/validation")
    async def validation() -> ASGIApp:
        """Forecasts against published trials."""
        return made("validation")

    @public(f"{SCIENCE.path}/forecast_against_measured.svg")
    async def validation_picture() -> ASGIApp:
        """The picture of that."""
        return picture()

    return [guides, guide, science, validation, validation_picture]


def _render(text: str, root: str) -> str:
    """Markdown as HTML: CommonMark with tables, no HTML of its own. ``root`` leads from the page to the root."""
    from markdown_it import MarkdownIt  # not needed until someone reads
    from markdown_it.renderer import RendererHTML

    markdown = MarkdownIt("commonmark", {"html": False, "xhtmlOut": False}, renderer_cls=RendererHTML).enable("table")

    def code(renderer: RendererHTML, tokens: "list[Token]", index: int, options: Any, env: Any) -> str:
        content = tokens[index].content
        shown = f"<code>{escape(content)}</code>"
        return f'<a href="{root}{content[1:]}">{shown}</a>' if content in _LINKED else shown

    def link(renderer: RendererHTML, tokens: "list[Token]", index: int, options: Any, env: Any) -> str:
        tokens[index].attrSet("href", str(tokens[index].attrGet("href")).removesuffix(".md"))
        return renderer.renderToken(tokens, index, options, env)

    def cell(renderer: RendererHTML, tokens: "list[Token]", index: int, options: Any, env: Any) -> str:
        tokens[index].attrs.pop("style", None)  # which the page's policy shuts out
        if tokens[index].tag == "th":
            tokens[index].attrSet("scope", "col")
        return renderer.renderToken(tokens, index, options, env)

    def table(renderer: RendererHTML, tokens: "list[Token]", index: int, options: Any, env: Any) -> str:
        return '<div class="wide"><table>' if tokens[index].nesting == 1 else "</table></div>"

    rules = {"code_inline": code, "link_open": link, "th_open": cell, "td_open": cell}
    for name, rule in {**rules, "table_open": table, "table_close": table}.items():
        markdown.add_render_rule(name, rule)
    tokens = markdown.parse(text)
    _name_columns(tokens)
    return str(markdown.renderer.render(tokens, markdown.options, {}))


def _name_columns(tokens: "list[Token]") -> None:
    """Let each cell know its column, which stands before it where there is no room for columns."""
    names: list[str] = []
    column = 0
    for part, content in pairwise(tokens):
        if part.type == "thead_open":
            names = []
        elif part.type == "tr_open":
            column = 0
        elif part.type == "th_open":
            names.append(content.content)
        elif part.type == "td_open":
            if content.content:
                part.attrSet("data-column", names[column].replace("`", ""))
            column += 1


def _page(body: str, site: Site, at: SitePlace, root: str) -> str:
    title = unescape(body.partition("<h1>")[2].partition("</h1>")[0])
    contents = "".join(f'<li><a href="{root}guides/{name}">{escape(_title(name))}</a></li>' for name in guide_names())
    if at is SCIENCE:
        contents = (
            f'<li><a href="{root}science">The science</a></li>'
            f'<li><a href="{root}science/validation">Validation of the forecast</a></li>'
        )
    return site.page(title, body, at=at, root=root, contents=f"<ul>{contents}</ul>")


def _title(name: str) -> str:
    return guide_text(name).partition("\n")[0].removeprefix("# ")


def _problem_table() -> str:
    rows = [f"| {kind.status} | `{kind.type}` | {kind.title} | {kind.remedy} |" for kind in KINDS.values()]
    return "\n".join(["| status | type | what it says | what to do |", "|---|---|---|---|", *sorted(rows)])


def _entries() -> str:
    entries = sorted(catalogue.entries().values(), key=lambda entry: (_ORDER.index(entry.kind), entry.id))
    parts = []
    for kind, group in groupby(entries, key=lambda entry: entry.kind):
        rows = "".join(_entry(entry) for entry in group)
        parts.append(f'<h2 id="{kind.value}s">{kind.value.capitalize()}s</h2><div class="wide"><table>')
        parts.append(f"<thead>{table_head(_ENTRY_COLUMNS)}</thead><tbody>{rows}</tbody></table></div>")
    return "\n".join(parts)


def _entry(entry: Entry) -> str:
    holds = f"<br><small>For {escape(entry.valid_range)}</small>" if entry.valid_range else ""
    spread = f"<br><small>SD {entry.standard_deviation:g}</small>" if entry.standard_deviation else ""
    cited = ", ".join(f'<a href="#source-{id_}">{id_}</a>' for id_ in entry.source_ids)
    support = f"{escape(entry.basis.value)}: {cited}" if cited else escape(entry.basis.value)
    what = f"<code>{entry.id}</code><br>{escape(entry.summary)}{holds}"
    return table_row(_ENTRY_COLUMNS, [what, f"{escape(entry.formula)}{spread}", support], entry.id)


def _sources() -> str:
    items = []
    for id_, source in sorted(catalogue.sources().items()):
        doi = f' <a href="{_DOI}{escape(source.doi)}">doi:{escape(source.doi)}</a>' if source.doi else ""
        items.append(f'<li id="source-{id_}"><code>{id_}</code>: {escape(source.citation)}{doi}</li>')
    return f'<h2 id="sources">Sources</h2><ul>{"".join(items)}</ul>'
