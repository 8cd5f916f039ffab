"""The start page, the guides and the science page: whole, linked, and readable without a script."""

import re
from html import unescape
from urllib.parse import urljoin

import pytest
from in_process import Running
from page_outline import Outline
from steelyard.http.pages.guide_pages import _render, guide_names, science_page
from steelyard.http.pages.site import Site
from steelyard.http.pages.start_page import start_page
from steelyard.http.wire.problems import KINDS
from steelyard.science import catalogue
from validation import validate

PATHS = ["/", "/guides", *(f"/guides/{name}" for name in guide_names()), "/science", "/science/validation"]


@pytest.mark.parametrize("path", PATHS)
async def test_a_page_is_open_to_anyone_and_its_links_lead_somewhere(path: str, service: Running) -> None:
    answer = await service.client.get(path, headers={"authorization": ""})
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "text/html; charset=utf-8"
    assert "script-src 'none'" in answer.headers["content-security-policy"]
    outline = Outline(answer.text)
    assert len(outline.all("h1")) == len(outline.all("title")) == 1
    assert not outline.all("script")
    assert not re.search(r"\son\w+=|javascript:|\sstyle=", answer.text)
    assert all(cell.get("scope") == "col" for cell in outline.all("th"))
    assert all(picture.get("alt") for picture in outline.all("img"))
    ids = {attributes["id"] for _, attributes in outline.tags if attributes.get("id")}
    addresses = {a[name] or "" for _, a in outline.tags for name in ("href", "src") if name in a} - {"data:,"}
    for address in addresses:
        if address.startswith("#"):
            assert address[1:] in ids
        elif not address.startswith("https://doi.org/"):  # a link that is followed, never loaded
            target = urljoin(path, address)
            if target != "/workbench":  # where the operator switched it on
                assert (await service.client.get(target)).status_code == 200, target


@pytest.mark.parametrize("has_workbench", [True, False])
def test_the_workbench_is_linked_where_there_is_one(has_workbench: bool) -> None:
    page = start_page(Site(has_workbench=has_workbench))
    assert page.count('href="workbench"') == (2 if has_workbench else 0)  # in the masthead and for the coach
    assert page.count('aria-current="page"') == 1


async def test_every_entry_and_source_is_on_the_science_page(service: Running) -> None:
    page = science_page(Site(has_workbench=False))
    for id_, entry in catalogue.entries().items():
        row = page[page.index(f'<tr id="{id_}">') :].split("</tr>")[0]
        assert entry.formula in unescape(row)
        assert entry.basis.value in row
        for source in entry.source_ids:
            assert f'href="#source-{source}"' in row
    for id_, source in catalogue.sources().items():
        assert source.citation in unescape(page[page.index(f'<li id="source-{id_}">') :].split("</li>")[0])
    picture = await service.client.get("/science/forecast_against_measured.svg")
    assert picture.headers["content-type"] == "image/svg+xml"
    assert picture.content == (validate.SERVED / validate.PICTURE.name).read_bytes()


def test_the_served_validation_is_that_of_the_tests() -> None:
    assert (validate.SERVED / "validation.md").read_bytes() == validate.REPORT.read_bytes(), "run `make validate`"
    assert (validate.SERVED / validate.PICTURE.name).read_bytes() == validate.PICTURE.read_bytes()


async def test_every_kind_of_problem_is_in_the_guide_for_qa(service: Running) -> None:
    page = (await service.client.get("/guides/qa")).text
    assert "{problems}" not in page
    for kind in KINDS.values():
        assert f"<code>{kind.type}</code>" in page


@pytest.mark.parametrize("name", ["no-such", "../science/science", "qa.md", "%2e%2e%2fscience%2fscience"])
async def test_what_is_no_guide_is_not_found(name: str, service: Running) -> None:
    answer = await service.client.get(f"/guides/{name}")
    assert answer.status_code == 404
    assert answer.headers["content-type"] == "application/problem+json"


def test_html_in_a_text_cannot_become_markup() -> None:
    html = _render("<script>alert(1)</script>\n\na <b>b</b> [c](javascript:alert(1)) `<i>`", "")
    assert "<script" not in html
    assert "<b>" not in html
    assert 'href="javascript' not in html
    assert "<code>&lt;i&gt;</code>" in html
