"""A browser's context that reaches nothing beyond loopback and the files of this tree, and what axe-core says of it."""

import re
from collections.abc import Awaitable, Callable
from pathlib import Path
from urllib.parse import urlsplit

from axe_playwright_python.async_playwright import Axe
from playwright.async_api import BrowserContext, Page, Request, Route

SDK = Path(__file__).resolve().parents[1] / "sdk"
PORTAL = "http://portal.test"  # answered from `sdk`, and from what a test gives
ELSEWHERE = re.compile(r"^(?!http://127\.0\.0\.1:|blob:|data:)")
PATIENCE_MILLISECONDS = 30_000


class Desk:
    """A browser's context, with everything that its pages asked for and complained of."""

    def __init__(self, context: BrowserContext) -> None:
        self.context = context
        self.requests: list[Request] = []
        self.foreign: list[str] = []
        self.complaints: list[str] = []
        self.given: dict[str, str] = {}  # pages of the portal that are no file

    async def page(self, address: str) -> Page:
        """A new page at ``address``."""
        page = await self.context.new_page()
        page.on("request", lambda request: self.requests.append(request))
        page.set_default_timeout(PATIENCE_MILLISECONDS)
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        # Browsers report an answer that is an error as a failed load, which it is not.
        page.on(
            "console",
            lambda said: (
                self.complaints.append(said.text)
                if said.type == "error" and not said.text.startswith("Failed to load resource")
                else None
            ),
        )
        await page.goto(address)
        return page

    async def guard(self) -> None:
        """Let requests go to loopback alone."""
        await self.context.route(ELSEWHERE, self._answer)

    async def _answer(self, route: Route) -> None:
        address = route.request.url
        if address in self.given:
            await route.fulfill(body=self.given[address], content_type="text/html; charset=utf-8")
        elif address.startswith(f"{PORTAL}/"):
            await route.fulfill(path=SDK / urlsplit(address).path.lstrip("/"))
        else:
            self.foreign.append(address)
            await route.abort()


OpenDesk = Callable[..., Awaitable[Desk]]


async def serious_findings(page: Page) -> list[str]:
    """What axe-core finds that is serious or critical: rule, help and places."""
    found = await Axe().run(page)
    return [
        f"{finding['id']}: {finding['help']}: {[node['target'] for node in finding['nodes']]}"
        for finding in found.response["violations"]
        if finding["impact"] in {"serious", "critical"}
    ]
