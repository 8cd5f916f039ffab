"""The reference page: complete, readable without a script or a network, and open to who cannot see it."""

import re
from collections import Counter
from itertools import pairwise
from typing import Any

import msgspec
import pytest
from in_process import Running
from lifting_form import sum_lifts
from page_outline import Outline
from steelyard.http.app import OPERATIONS
from steelyard.http.pages.api_reference import reference_page
from steelyard.http.pages.contract import openapi_document
from steelyard.http.pages.site import Site, style_text

SITE = Site(has_workbench=False)
DOCUMENT = openapi_document(OPERATIONS)
PAGE = reference_page(DOCUMENT, SITE)


OUTLINE = Outline(PAGE)


def test_every_operation_and_field_is_there() -> None:
    ids = {attributes["id"] for _, attributes in OUTLINE.tags if attributes.get("id")}
    for path, item in DOCUMENT["paths"].items():
        for operation in item.values():
            assert operation["operationId"] in ids
            assert path in OUTLINE.text
            section = PAGE[PAGE.index(f'id="{operation["operationId"]}"') :].split("</section>")[0]
            kinds = [kind for kind in operation["responses"]["200"]["content"] if kind != "application/json"]
            for name in [parameter["name"] for parameter in operation.get("parameters", [])] + kinds:
                assert f"<code>{name}</code>" in section, f"{path}: {name}"
    for name, schema in DOCUMENT["components"]["schemas"].items():
        assert name in ids
        section = PAGE[PAGE.index(f'id="{name}"') :].split("</section>")[0]
        for field in schema.get("properties", {}):
            assert f"<code>{field}</code>" in section, f"{name}.{field}"


def test_nothing_is_loaded_from_elsewhere() -> None:
    assert not OUTLINE.all("script")
    assert not re.search(r"\son\w+=|javascript:|<style|style=", PAGE)
    addresses = [a[name] for _, a in OUTLINE.tags for name in ("href", "src", "action", "srcset") if name in a]
    assert addresses
    assert not [
        address for address in addresses if address and re.match(r"[a-z]+:|//", address) and address != "data:,"
    ]
    styles = [a["href"] or "" for a in OUTLINE.all("link") if a["rel"] == "stylesheet"]
    assert styles
    for style in styles:
        assert not re.search(r"url\(|@import|https?:", style_text(style.removeprefix("site/")))


def test_links_within_lead_somewhere_and_ids_are_unique() -> None:
    ids = Counter(attributes["id"] for _, attributes in OUTLINE.tags if attributes.get("id"))
    assert not [name for name, count in ids.items() if count > 1]
    targets = {a["href"][1:] for a in OUTLINE.all("a") if a["href"] and a["href"].startswith("#")}
    assert targets <= set(ids)


def test_it_can_be_read_aloud() -> None:
    """Landmarks, a way past the contents, headings in order, table heads: WCAG 2.2, 1.3.1, 2.4.1, 2.4.2, 3.1.1."""
    assert OUTLINE.all("html") == [{"lang": "en"}]
    assert len(OUTLINE.all("title")) == len(OUTLINE.all("main")) == len(OUTLINE.all("h1")) == 1
    assert all("aria-label" in nav for nav in OUTLINE.all("nav"))
    first_link = OUTLINE.all("a")[0]
    assert first_link["href"] == f"#{OUTLINE.all('main')[0]['id']}"
    assert OUTLINE.all("th")
    assert all(cell.get("scope") == "col" for cell in OUTLINE.all("th"))
    levels = [int(tag[1]) for tag, _ in OUTLINE.tags if re.fullmatch(r"h[1-6]", tag)]
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_texts_of_the_contract_cannot_become_markup() -> None:
    hostile = msgspec.structs.replace(sum_lifts, summary="<script>alert(1)</script>", description="a `<b>` & <i>")
    page = reference_page(openapi_document([hostile]), SITE)
    assert "<script" not in page
    assert "<code>&lt;b&gt;</code> &amp; &lt;i&gt;" in page


def test_what_is_deprecated_is_listed() -> None:
    assert "No operation is deprecated." in OUTLINE.text
    marked: dict[str, Any] = msgspec.json.decode(msgspec.json.encode(openapi_document([sum_lifts])))
    operation = marked["paths"][sum_lifts.path]["post"]
    operation |= {"deprecated": True, "x-deprecation": {"since": "2027-01-01", "sunset": None, "instead": "Lift `x`."}}
    page = reference_page(marked, SITE)
    section = page[page.index('id="deprecated"') :].split("</section>")[0]
    assert "Deprecated since 2027-01-01." in section
    assert "Lift <code>x</code>." in section


@pytest.mark.parametrize(("path", "kind"), [("/reference", "text/html"), ("/site/site.css", "text/css")])
async def test_it_is_served_to_a_browser_without_a_key(service: Running, path: str, kind: str) -> None:
    headers = {"authorization": "", "accept": "text/html,application/xhtml+xml,*/*;q=0.8"}
    answer = await service.client.get(path, headers=headers)
    assert answer.status_code == 200
    assert answer.headers["content-type"] == f"{kind}; charset=utf-8"
    assert answer.text == (PAGE if kind == "text/html" else style_text("site.css"))


async def test_the_page_may_load_nothing_but_its_style(service: Running) -> None:
    policy = (await service.client.get("/reference")).headers["content-security-policy"]
    directives = dict(part.strip().split(" ", 1) for part in policy.split(";"))
    assert directives["default-src"] == "'self'"
    for name in ("script-src", "object-src", "base-uri", "form-action", "frame-ancestors"):
        assert directives[name] == "'none'"
    assert "unsafe" not in policy
