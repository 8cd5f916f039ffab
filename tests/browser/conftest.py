"""A real browser, Debian's chromium, and a live service."""

import shutil
from collections.abc import AsyncIterator, Callable
from contextlib import AsyncExitStack
from typing import Any

import httpx
import pytest
import pytest_asyncio
from browser_desk import Desk, OpenDesk
from examples.local_service import LocalService
from playwright.async_api import Browser, async_playwright
from servers import missing

# The shell is the same engine without the windows around its pages, which took two thirds of the browser's time.
PROGRAMS = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")


@pytest_asyncio.fixture(scope="session", loop_scope="session")
async def browser() -> AsyncIterator[Browser]:
    """One browser for all tests of this process."""
    program = next(filter(None, map(shutil.which, PROGRAMS)), None)
    if program is None:
        missing("chromium")
    async with async_playwright() as playwright:
        started = await playwright.chromium.launch(executable_path=program)
        yield started
        await started.close()


@pytest_asyncio.fixture(loop_scope="session")
async def desk(browser: Browser) -> AsyncIterator[OpenDesk]:
    """Opens contexts; in the end none of them may have asked for anything foreign or complained."""
    opened: list[Desk] = []
    async with AsyncExitStack() as stack:

        async def open_desk(**options: Any) -> Desk:
            # Nothing moves by itself while a test looks for a place to click on.
            context = await browser.new_context(**{"reduced_motion": "reduce", **options})
            stack.push_async_callback(context.close)
            new = Desk(context)
            await new.guard()
            opened.append(new)
            return new

        yield open_desk
    assert not [address for each in opened for address in each.foreign]
    assert not [complaint for each in opened for complaint in each.complaints]


@pytest.fixture(scope="session")
def ask(live: LocalService) -> Callable[..., httpx.Response]:
    """Sends a body to the live service, without a browser."""

    def send(path: str, body: Any) -> httpx.Response:
        with httpx.Client(transport=httpx.HTTPTransport(), timeout=30) as http:
            return http.post(f"{live.url}{path}", json=body, headers={"authorization": f"Bearer {live.key}"})

    return send
