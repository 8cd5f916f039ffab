"""The pages that are read: one site, whole on a phone, for keyboard and reader, in light and dark."""

import pytest
from browser_desk import OpenDesk, serious_findings
from examples.local_service import LocalService

pytestmark = pytest.mark.asyncio(loop_scope="session")

PATHS = ("/", "/guides", "/guides/coach", "/reference", "/science", "/science/validation")
PLACES = ["Start", "Workbench", "Guides", "Reference", "Science"]
# A line that was cut would reach beyond the page, or beyond a box that does not say so.
BEYOND = """() => [...document.querySelectorAll('main *, header *')].filter(each =>
    each.getBoundingClientRect().right > innerWidth + 1 || each.scrollWidth > each.clientWidth + 1
    && getComputedStyle(each).overflowX !== 'visible').map(each => each.outerHTML.slice(0, 80))"""


@pytest.mark.parametrize(("width", "scheme"), [(390, "dark"), (1280, "light")])
async def test_every_page_is_whole_and_open_to_all(desk: OpenDesk, live: LocalService, width: int, scheme: str) -> None:
    """In one window, since each costs more than its page."""
    page = await (await desk(viewport={"width": width, "height": 800}, color_scheme=scheme)).page("about:blank")
    for path in PATHS:
        await page.goto(f"{live.url}{path}")
        assert await page.evaluate("document.documentElement.scrollWidth") <= width, path
        assert await page.evaluate(BEYOND) == [], path
        assert await page.locator("header nav a").all_inner_texts() == PLACES, path
        assert await page.locator("header [aria-current]").count() == 1, path
        sheets = await page.evaluate(
            "[...document.styleSheets].filter(each => each.href).map(each => each.cssRules.length)"
        )
        assert len(sheets) == 2, path
        assert all(sheets), path
        if path != "/reference":  # which is of thousands of rows; its kinds of parts are on the others
            assert await serious_findings(page) == [], path


async def test_the_masthead_leads_everywhere_and_back(desk: OpenDesk, live: LocalService) -> None:
    page = await (await desk(viewport={"width": 390, "height": 800})).page(f"{live.url}/guides/coach")
    for name in [*PLACES, "Start"]:
        await page.click(f"header nav a:text-is('{name}')")
        assert await page.inner_text("header [aria-current]") == name
        assert await page.locator("h1").count() == 1


async def test_the_keyboard_shows_where_it_is(desk: OpenDesk, live: LocalService) -> None:
    page = await (await desk(viewport={"width": 1280, "height": 800})).page(f"{live.url}/")
    links = await page.locator("a").all_inner_texts()
    look = """() => { const style = getComputedStyle(document.activeElement);
        return [document.activeElement.innerText,
            parseFloat(style.outlineWidth) >= 2 && style.outlineStyle !== 'none']; }"""
    seen = []
    for _ in links:
        await page.keyboard.press("Tab")
        seen.append(await page.evaluate(look))
    assert seen == [[link, True] for link in links]
    await page.focus(".skip")
    await page.keyboard.press("Enter")
    assert await page.evaluate("document.activeElement.id") == "content"
