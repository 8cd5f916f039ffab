"""The workbench, clicked through as an integrator would, against a live service. As a coach would: `test_coach.py`."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from browser_desk import OpenDesk, serious_findings
from examples.local_service import LocalService
from playwright.async_api import Page, expect
from servers import missing
from steelyard.http.app import OPERATIONS
from steelyard.http.pages.workbench import PICTURE

pytestmark = pytest.mark.asyncio(loop_scope="session")

SDK = Path(__file__).resolve().parents[2] / "sdk"
OFFERED = {o.operation_id: o for o in OPERATIONS if o.body_type and not (o.stream or o.renders)}
DRAWN = {o.renders for o in OPERATIONS if PICTURE in o.formats}
SCHEMES = ("light", "dark")


async def opened(desk: OpenDesk, live: LocalService, **options: Any) -> Page:
    """The page, ready, with requests as JSON, in a context of its own."""
    page = await (await desk(**{"viewport": {"width": 1280, "height": 900}, **options})).page(f"{live.url}/workbench")
    await page.wait_for_selector("html[data-ready]")
    await page.click("#as-json")
    return page


async def sent(page: Page, key: str) -> dict[str, Any]:
    """Send what the page shows, wait for the answer, and give it as the page shows it."""
    await page.fill("#key", key)
    # By its key: a mouse may miss a button that moves, as it does while the page scrolls to the answer before.
    await page.press("#send", "Enter")
    # The best season takes a second of a processor that other tests may hold. Looked at by the clock, since a wait for
    # a selector looks only when the page is painted.
    await expect(page.locator("#status")).to_have_text(re.compile(r"^(?!Sending|Nothing sent)."), timeout=60_000)
    shown: dict[str, Any] = json.loads(await page.locator("#raw").text_content() or "")
    return shown


async def figures(page: Page) -> dict[str, str]:
    """The names and values under the summary, with plain spaces."""
    rows = await page.locator("#part-summary ~ .figures > div").all_text_contents()
    names = await page.locator("#part-summary ~ .figures dt").all_text_contents()
    values = await page.locator("#part-summary ~ .figures dd").all_text_contents()
    assert len(rows) == len(names) == len(values)
    return {name: value.replace("\u00a0", " ") for name, value in zip(names, values, strict=True)}


async def test_choose_send_and_read(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    assert await page.locator("#operation").input_value() == "plan_phases"
    await page.select_option("#example", "weeks")
    body = json.loads(await page.input_value("#body"))
    assert body["phase"]["weeks"] == 4
    answer = await sent(page, live.key)
    assert "Answered in" in await page.inner_text("#status")

    maintenance, shown = answer["maintenance_kcal"], await figures(page)
    mean, lower, upper = (f"{maintenance[name]:,.0f}" for name in ("mean", "lower", "upper"))
    assert shown["Maintenance"] == f"{mean} ({lower} to {upper}) kcal/d"
    rows = page.locator("table:has(caption:text-is('Phases')) tbody tr")
    assert await rows.count() == len(answer["phases"])
    assert await rows.first.locator("td").nth(1).inner_text() == f"{answer['phases'][0]['weeks'][0]['intake_kcal']:,}"

    everything = await page.locator("#results").text_content() or ""
    cautions = await page.locator(".cautions").inner_text()
    for said in [*answer["cautions"], *(each for phase in answer["phases"] for each in phase["cautions"])]:
        assert said["text"] in cautions
    for said in [*answer["reasons"], *answer["guard_rails"]]:
        assert said["text"] in everything
    assert answer["fingerprint"] in everything


async def test_what_would_be_possible_is_told_in_words(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.select_option("#example", "weeks")
    body = json.loads(await page.input_value("#body"))
    body["phase"] |= {"fat_loss_kg": 2.5, "weeks": 3}
    await page.fill("#body", json.dumps(body))
    near = (await sent(page, live.key))["nearest"]
    told = (await page.inner_text(".lead")).replace("\u00a0", " ")
    kind = {"mini_cut": "mini-cut"}.get(near["weeks_kind"], near["weeks_kind"])
    assert f"Nearest: {near['fat_loss_kg']:.1f} kg of fat in the time asked; a {kind} of {near['weeks']} weeks" in told


async def test_the_methods_are_joined_with_their_sources(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.select_option("#operation", "estimate_maintenance")
    answer = await sent(page, live.key)
    for group in await page.locator("#part-sources ~ details").all():
        await group.locator("summary").click()
    listed = await page.locator("#part-sources ~ details th code").all_inner_texts()
    assert sorted(listed) == sorted(answer["methods"])
    links = await page.locator("#part-sources ~ details a").evaluate_all("links => links.map(each => each.href)")
    assert links
    assert all(re.fullmatch(r"https://doi\.org/10\.\d{4,}/\S+", link) for link in links)


async def test_every_example_of_every_operation_is_readable(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    for operation in OFFERED.values():
        await page.select_option("#operation", operation.operation_id)
        assert await page.locator("#example option").count() == len(operation.request_examples)
        for name in list(operation.request_examples)[: None if operation.tag != "seasons" else 1]:
            await page.select_option("#example", name)
            answer = await sent(page, live.key)
            assert "fingerprint" in answer, (operation.operation_id, name, answer)
            told = await page.inner_text("#results")
            assert not re.search(r"\bundefined\b|\bNaN\b|\[object|\bnull\b", told), (operation.operation_id, name)
            assert len(await figures(page)) >= 3


async def test_the_picture_is_shown_where_there_is_one(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live, color_scheme="dark")
    for operation in (OFFERED["read_trend"], OFFERED["estimate_maintenance"]):
        await page.select_option("#operation", operation.operation_id)
        await sent(page, live.key)
        picture = page.locator("img.picture")
        if operation.operation_id in DRAWN:
            assert await picture.evaluate("image => image.decode().then(() => image.naturalWidth)") > 100
            assert len(await picture.get_attribute("alt") or "") > 20
        else:
            assert await page.locator("#part-picture").count() == 0


# Taking the call home


def run(command: list[str], live: LocalService, **environment: str) -> str:
    """What a command prints, with the key in the environment and nothing of a proxy."""
    ours = {name: value for name, value in os.environ.items() if "proxy" not in name.lower()}
    done = subprocess.run(
        command, env={**ours, "STEELYARD_KEY": live.key, **environment}, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


async def test_the_snippets_do_what_the_page_did(desk: OpenDesk, live: LocalService) -> None:
    if shutil.which("curl") is None:
        missing("curl")
    page = await opened(desk, live, permissions=["clipboard-read", "clipboard-write"])
    answer = await sent(page, live.key)
    copied = {}
    for name in ("curl", "python"):
        await page.click(f"#copy-{name}")
        await page.wait_for_selector("#status:has-text('copied')")
        copied[name] = str(await page.evaluate("navigator.clipboard.readText()"))
        assert copied[name] == await page.locator(f"#{name}").text_content()
        assert live.key not in copied[name]
        await page.fill("#body", await page.input_value("#body"))  # says something else, so that a copy is told again
    by_curl = json.loads(run(["sh", "-c", copied["curl"]], live))
    assert by_curl == answer
    by_python = run([sys.executable, "-c", copied["python"]], live, PYTHONPATH=str(SDK))
    assert by_python.splitlines()[-1] == answer["fingerprint"]


async def test_a_hostile_text_is_text_in_page_and_shell(desk: OpenDesk, live: LocalService) -> None:
    if shutil.which("curl") is None:
        missing("curl")
    page = await opened(desk, live)
    await page.fill("#body", json.dumps({"it's $HOME `id` <img src=x onerror=alert(1)>": "\\ </pre><b>x</b>"}))
    problem = await sent(page, live.key)
    assert "<img src=x" in await page.inner_text("#results")
    assert await page.locator("#answer img, #answer script, #answer b").count() == 0
    again = json.loads(run(["sh", "-c", await page.locator("#curl").text_content() or ""], live))
    assert [fault["pointer"] for fault in again["errors"]] == [fault["pointer"] for fault in problem["errors"]]
    assert "it's" in again["errors"][0]["pointer"]
    compile(await page.locator("#python").text_content() or "", "snippet", "exec")


# What goes wrong


async def test_a_fault_is_shown_at_its_place(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    text = await page.input_value("#body")
    await page.fill("#body", text.replace('"resistance_sessions_per_week": 4', '"resistance_sessions_per_week": 4000'))
    problem = await sent(page, live.key)
    (fault,) = problem["errors"]
    assert fault["pointer"] == "#/profile/training/resistance_sessions_per_week"
    told = await page.inner_text("#results")
    for said in (problem["title"], problem["detail"], fault["pointer"], fault["code"], problem["instance"]):
        assert said in told
    await page.click(".faults button")
    selected = "const b = document.getElementById('body'); b.value.slice(b.selectionStart, b.selectionEnd)"
    assert await page.evaluate(selected) == "4000"
    assert await page.evaluate("document.activeElement.id") == "body"
    assert fault["pointer"] in await page.inner_text("#status")


async def test_a_refusal_and_a_wrong_key_are_told(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    body = json.loads(await page.input_value("#body"))
    del body["screening"]
    await page.fill("#body", json.dumps(body))
    problem = await sent(page, live.key)
    assert problem["status"] == 422
    assert problem["detail"] in await page.inner_text(".notice")
    assert await page.locator(".figures a").get_attribute("href") == f"{live.url}{problem['type']}"
    problem = await sent(page, "wrong.key")
    assert problem["status"] == 401
    assert problem["title"] in await page.inner_text("#status")


async def test_what_is_no_json_is_not_sent(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await sent(page, live.key)
    body = await page.input_value("#body")
    await page.fill("#body", body.rstrip()[:-1])
    assert "before you changed it" in await page.inner_text("#status")
    assert "Not JSON" in await page.inner_text("#body-state")
    assert await page.get_attribute("#body", "aria-invalid") == "true"
    assert await page.is_disabled("#copy-curl")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    await page.click("#send")
    await page.wait_for_selector("#status:has-text('Not JSON')")
    await page.fill("#body", body)
    assert await page.is_enabled("#copy-curl")
    assert not asked


async def test_what_cannot_be_had_is_told(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.route("**/v1/methods", lambda route: route.fulfill(status=403))  # as for a key without that scope
    await page.route("**/v1/plans/picture?theme=*", lambda route: route.fulfill(status=503))
    await sent(page, live.key)
    told = await page.inner_text("#results")
    assert "could not be read with this key" in told
    assert "The picture could not be had." in told
    await page.route("**/v1/**", lambda route: route.abort())
    await page.fill("#key", live.key)
    await page.click("#send")
    await page.wait_for_selector("#status:has-text('cannot be reached')")


# Who uses it, and what stays


async def test_the_key_stays_nowhere(desk: OpenDesk, live: LocalService) -> None:
    opened_desk = await desk(viewport={"width": 1280, "height": 900})
    page = await opened_desk.page(f"{live.url}/workbench")
    await page.wait_for_selector("html[data-ready]")
    await sent(page, live.key)
    secret = live.key.partition(".")[2]
    kept = await page.evaluate(
        "async () => JSON.stringify([{...localStorage}, {...sessionStorage}, document.cookie, location.href,"
        " history.state, await indexedDB.databases(), await caches.keys(), document.documentElement.outerHTML])"
    )
    assert secret not in kept
    assert await opened_desk.context.cookies() == []
    assert kept.startswith('[{},{},""')
    for request in opened_desk.requests:
        assert secret not in request.url
        assert secret not in (request.post_data or "")
        headers = {name: value for name, value in (await request.all_headers()).items() if secret in value}
        assert set(headers) <= ({"authorization"} if "/v1/" in request.url else set())
    await page.reload()
    await page.wait_for_selector("html[data-ready]")
    assert await page.input_value("#key") == ""


async def test_the_keyboard_is_enough(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.focus(".skip")
    await page.keyboard.press("Shift+Tab")
    order, outlines = [], []
    look = """() => { const at = document.activeElement, style = getComputedStyle(at);
        return [at.id || at.textContent.trim(), parseFloat(style.outlineWidth), style.outlineStyle]; }"""
    while not order or order[-1] != "python":
        await page.keyboard.press("Tab")
        name, width, style = await page.evaluate(look)
        order.append(name)
        outlines.append(width >= 2 and style != "none")
        if name == "operation":
            await page.keyboard.type("Forecast")
        elif name == "key":
            await page.keyboard.type(live.key)
        assert len(order) < 30
    assert order == [
        "Skip to the answer", "Start", "Workbench", "Guides", "Reference", "Science", "to-member", "to-roster", "key",
        "operation", "example", "as-form", "as-json", "body", "tidy", "send", "copy-curl", "curl", "copy-python",
        "python",
    ]  # fmt: skip
    assert all(outlines), list(zip(order, outlines, strict=True))
    for _ in range(4):
        await page.keyboard.press("Shift+Tab")
    assert await page.evaluate("document.activeElement.id") == "send"
    await page.keyboard.press("Enter")
    await page.wait_for_selector("#status:has-text('Answered')")
    assert "Forecast" in await page.inner_text("#results")
    status = page.locator("#status")
    assert [await status.get_attribute(name) for name in ("role", "aria-live")] == ["status", "polite"]
    assert await page.evaluate("document.activeElement.id") == "answer"  # focus follows it
    await page.keyboard.press("Tab")  # the first thing of the answer that can be gone to
    assert await page.evaluate("document.activeElement.closest('#results') !== null")
    await page.focus("#body")
    await page.keyboard.press("Control+End")
    await page.keyboard.press("Enter")
    await page.wait_for_selector("#status:has-text('before you changed it')")
    await page.keyboard.press("Control+Enter")
    await page.wait_for_selector("#status:has-text('Answered')")


@pytest.mark.parametrize("scheme", SCHEMES)
async def test_axe_finds_nothing_serious(desk: OpenDesk, live: LocalService, scheme: str) -> None:
    page = await opened(desk, live, color_scheme=scheme)
    await sent(page, live.key)
    for group in ("#part-summary ~ details", "#part-sources ~ details:has(> summary:has-text('equations'))"):
        await page.locator(f"{group} summary").click()
    assert await serious_findings(page) == []
    await page.fill("#body", (await page.input_value("#body")).replace("178", "1.78"))
    await sent(page, live.key)
    await page.set_viewport_size({"width": 320, "height": 800})
    assert await serious_findings(page) == []
    assert await page.evaluate("document.documentElement.scrollWidth") <= 320  # WCAG 2.2, 1.4.10
