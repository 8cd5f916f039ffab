"""The workbench as a coach uses it: forms, a year in which each answer leads to the next request, and a roster."""

import json
import re
from typing import Any

import msgspec
import pytest
from browser_desk import OpenDesk, serious_findings
from examples.local_service import LocalService
from playwright.async_api import FilePayload, Page, expect
from steelyard.http.app import OPERATIONS

pytestmark = pytest.mark.asyncio(loop_scope="session")

Json = dict[str, Any]
OFFERED = {o.operation_id: o for o in OPERATIONS if o.body_type and not (o.stream or o.renders)}
WIDTHS = (390, 1280)


async def opened(desk: OpenDesk, live: LocalService, width: int = 1280, **options: Any) -> Page:
    """The page with the key in it."""
    page = await (await desk(viewport={"width": width, "height": 900}, **options)).page(f"{live.url}/workbench")
    await page.wait_for_selector("html[data-ready]")
    await page.fill("#key", live.key)
    return page


async def sent(page: Page) -> Json:
    """Send, wait, and give what came."""
    await page.evaluate("document.getElementById('results').replaceChildren()")
    await page.click("#send")
    await page.wait_for_selector("#raw", state="attached")
    answer: Json = json.loads(await page.locator("#raw").text_content() or "")
    return answer


async def body(page: Page) -> Json:
    """The request as it would be sent."""
    value: Json = json.loads(await page.input_value("#body"))
    return value


async def go_on(page: Page, label: str) -> None:
    await page.locator("#part-go-on-from-here ~ p button", has_text=label).first.click()


# Forms


async def test_a_form_says_of_every_example_what_its_json_says(desk: OpenDesk, live: LocalService) -> None:
    """Touching a field and putting it back leaves the request as it was, whatever the form had to read."""
    page = await opened(desk, live)
    for operation in OFFERED.values():
        await page.select_option("#operation", operation.operation_id)
        for name in operation.request_examples:
            await page.select_option("#example", name)
            before = await body(page)
            for field in await page.locator("#fields input[type=text], #fields textarea").all():
                await field.evaluate("field => field.dispatchEvent(new Event('input'))")
            after = await body(page)
            assert after == before, (operation.operation_id, name)
            labels = await page.locator("#fields label").all_text_contents()
            assert not [label for label in labels if "_" in label or not label]


async def test_what_is_filled_in_is_what_is_sent(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.click("summary:has-text('Person')")
    await page.get_by_label("Body fat, %").fill("14,5")
    await page.get_by_label("Weight, kg", exact=True).fill("91.2")
    await page.get_by_label("Sex, for the equations").select_option(label="Both, the stricter")
    await page.locator("[data-pointer='#/phase'] select").first.select_option(label="Gain")
    asked = await body(page)
    assert asked["profile"]["body_fat"]["fat_fraction"] == 0.145
    assert (asked["profile"]["weight_kg"], asked["profile"]["sex"]) == (91.2, "unspecified")
    assert asked["phase"] == {"kind": "gain", "pace": "steady", "carbohydrate_preference": "balanced"}
    assert await page.evaluate("document.activeElement.closest('[data-pointer]').dataset.pointer") == "#/phase/kind"
    answer = await sent(page)
    assert answer["phases"][0]["kind"] == "gain"
    assert await page.evaluate("document.activeElement.id") == "answer"
    assert "Gain, 12 weeks" in await page.inner_text("#results .lead")


async def test_no_is_not_the_same_as_no_answer(desk: OpenDesk, live: LocalService) -> None:
    """Health questions that are left open stay open, so that the service asks for them."""
    page = await opened(desk, live)
    await page.click("summary:has-text('Health questions')")
    await page.click("text=Leave out: Health questions")
    assert "screening" not in await body(page)
    await page.click("summary:has-text('More to tell') >> nth=-1")
    await page.click("text=Tell: Health questions")
    assert (await body(page))["screening"] == {}
    problem = await sent(page)
    assert problem["errors"][0]["pointer"] == "#/screening/is_pregnant"
    focused = await page.evaluate("document.activeElement.closest('[data-pointer]').dataset.pointer")
    assert focused == "#/screening/is_pregnant"
    conditions = page.locator("[data-pointer='#/screening/conditions']")
    await conditions.get_by_label("None of these").check()
    assert (await body(page))["screening"]["conditions"] == []
    first = conditions.locator("input").nth(1)
    await first.check()
    assert not await conditions.get_by_label("None of these").is_checked()
    assert len((await body(page))["screening"]["conditions"]) == 1
    await first.uncheck()
    assert "conditions" not in (await body(page))["screening"]


async def test_a_fault_stands_beside_its_field(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.click("summary:has-text('Person')")
    await page.get_by_label("Age, years").fill("310")
    await page.click("summary:has-text('Person')")
    problem = await sent(page)
    assert problem["errors"][0]["pointer"] == "#/profile/age_years"
    field = page.locator("[data-pointer='#/profile/age_years']")
    said = await field.locator(".fault").inner_text()
    assert "13 to 100" in said
    assert "age_years" not in said
    control = field.locator("input")
    assert await control.get_attribute("aria-invalid") == "true"
    described = await control.get_attribute("aria-describedby") or ""
    assert await page.locator(f"#{described.split()[-1]}").inner_text() == said
    assert await page.evaluate("document.activeElement.value") == "310"
    await control.fill("31")
    assert await page.locator(".fault").count() == 0
    assert await control.get_attribute("aria-invalid") is None
    assert (await sent(page))["feasible"]


async def test_a_log_is_pasted_from_a_sheet(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.select_option("#operation", "read_trend")
    lines = page.get_by_label("Weights and intakes")
    await lines.fill(
        "04.05.2026\t84,6\t2450\t260\n2026-05-05\t84.1\t-\n2026-05-05\t84.3\n2026-05-06\t-\t2300\t-\tpartly\n"
    )
    log = (await body(page))["log"]
    assert log["weights"] == [
        {"date": "2026-05-04", "weight_kg": 84.6},
        {"date": "2026-05-05", "weight_kg": 84.1},
        {"date": "2026-05-05", "weight_kg": 84.3, "order": 1},
    ]
    assert log["intakes"] == [
        {"date": "2026-05-04", "intake_kcal": 2450, "carbohydrate_g": 260},
        {"date": "2026-05-06", "intake_kcal": 2300, "is_partial": True},
    ]
    await lines.fill("2026-05-04 84.6 2450\nyesterday 84.1 2450")
    problem = await sent(page)
    assert problem["errors"][0]["pointer"].startswith("#/log/")
    assert await page.evaluate("document.activeElement.tagName") == "TEXTAREA"
    assert await page.locator("[data-pointer='#/log/weights'] .fault").count() == 1


async def test_json_is_one_click_away_and_back(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    assert not await page.is_visible("#body")
    await page.click("#as-json")
    assert not await page.is_visible("#fields")
    asked = await body(page)
    asked["phase"] = {"kind": "maintenance", "weeks": 3}
    await page.fill("#body", json.dumps(asked))
    await page.click("#as-form")
    assert await page.get_by_label("Weeks", exact=True).input_value() == "3"
    await page.click("#as-json")
    await page.fill("#body", "{")
    await page.click("#as-form")
    assert await page.is_visible("#body")
    assert "no JSON" in await page.inner_text("#status")


# A year


async def test_a_year_is_played_with_the_state_handed_on(desk: OpenDesk, live: LocalService) -> None:
    """Plan, reviews, decision, plan, and so on past a year, by buttons alone: no field is moved by hand."""
    page = await opened(desk, live)
    answer = await sent(page)
    first_day = answer["state"]["as_of_date"]
    asked_of: list[str] = []
    while answer["state"]["as_of_date"][:4] == first_day[:4] or answer["state"]["as_of_date"][5:] < first_day[5:]:
        state = answer["state"]
        buttons = page.locator("#part-go-on-from-here ~ p button")
        await buttons.first.click()
        assert await page.evaluate("document.activeElement.id") == "request-title"
        asked_of.append(await page.input_value("#operation"))
        invent = page.get_by_role("button", name="as expected")
        if await invent.count():
            await invent.last.click()
        asked = await body(page)
        assert asked["state"] == state
        assert asked["profile"]["weight_kg"] == 84.6
        answer = await sent(page)
        assert "fingerprint" in answer, answer
        assert await page.evaluate("document.activeElement.id") == "answer"
        assert answer["state"]["as_of_date"] >= state["as_of_date"]
        assert len(asked_of) < 60
    assert {"plan_phases", "review_phase", "decide_phase"} == set(asked_of)
    assert asked_of.count("plan_phases") >= 2
    assert await page.locator("#steps li").count() == len(asked_of) + 1
    assert len(answer["state"]["phase_history"]) >= 2
    # An earlier step is gone back to, and is the same.
    await page.click("#trail > summary")
    await page.locator("#steps button").first.click()
    await page.wait_for_selector("#status:has-text('Answered')")
    again = json.loads(await page.locator("#raw").text_content() or "")
    assert again["state"]["as_of_date"] == first_day


async def test_another_way_on_is_planned(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.select_option("#operation", "decide_phase")
    answer = await sent(page)
    others = [each for each in answer["alternatives"] if each["open"] and each["kind"] != answer["recommended"]["kind"]]
    assert await page.get_by_role("button", name="Plan instead").count() == len(others) > 0
    await go_on(page, "Plan instead")
    asked = await body(page)
    assert asked["phase"]["kind"] == others[0]["kind"]
    assert asked["state"] == answer["state"]
    assert (await sent(page))["phases"][0]["kind"] == others[0]["kind"]


# All members


async def test_members_are_ranked_and_opened(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.click("#to-roster")
    await page.click("#invent")
    asked = [json.loads(line) for line in (await page.input_value("#members")).splitlines()]
    await page.click("#rank")
    await page.wait_for_selector("#status:has-text('ranked')")
    rows = page.locator("table:has(caption:has-text('who needs it most')) tbody tr")
    levels = [int((await row.locator("td").nth(1).inner_text())[0]) for row in await rows.all()]
    assert levels == sorted(levels, reverse=True)
    assert levels[0] == 3
    assert levels[-1] == 0
    failed = page.locator("table:has(caption:has-text('Not reviewed')) tbody tr")
    assert await rows.count() + await failed.count() == len(asked)
    told = await failed.inner_text()
    assert "phase, weeks, number 1, intake" in told
    assert "_" not in told  # the name of the field is one click away
    moved = [await row.locator("td").nth(7).inner_text() for row in await rows.all()]
    assert {"Worse", "Same"} <= set(moved)
    assert await page.evaluate("document.activeElement.id") == "answer"
    await failed.locator("summary").click()
    assert "#/phase/weeks/0/intake_kcal" in await failed.inner_text()
    name = await rows.first.locator("button").inner_text()
    await rows.first.locator("button").click()
    await page.wait_for_selector("#status:has-text('Answered')")
    assert await body(page) == next(each["body"] for each in asked if each["reference"] == name)
    assert json.loads(await page.locator("#raw").text_content() or "")["attention"]["level"] == 3
    assert await page.is_visible("#fields")


async def test_members_come_from_a_file_or_are_refused(desk: OpenDesk, live: LocalService) -> None:
    page = await opened(desk, live)
    await page.click("#to-roster")
    await page.click("#rank")
    await page.wait_for_selector("#status:has-text('No members yet')")
    await page.click("#members-as-json > summary")
    await page.fill("#members", "no members")
    await page.click("#rank")
    await page.wait_for_selector("#status:has-text('no members')")
    review = msgspec.to_builtins(OFFERED["review_phase"].request_examples["midway"])
    listed = msgspec.json.encode([review, {"reference": "two", "body": review}])
    file: FilePayload = {"name": "members.json", "mimeType": "application/json", "buffer": listed}
    await page.set_input_files("#members-file", file)
    # Not by a function: the page's policy lets no text be evaluated while it waits.
    await expect(page.locator("#members")).to_have_value(re.compile(r"^\["))
    await page.click("#rank")
    await page.wait_for_selector("#status:has-text('2 members ranked')")
    assert sorted(await page.locator("tbody tr button").all_inner_texts()) == ["member-1", "two"]


# For whom


@pytest.mark.parametrize(("width", "scheme"), [(390, "dark"), (1280, "light")])
async def test_nothing_is_cut_and_axe_is_content(desk: OpenDesk, live: LocalService, width: int, scheme: str) -> None:
    page = await opened(desk, live, width, color_scheme=scheme)
    wide = """() => [document.documentElement, ...document.querySelectorAll('#results *, #fields *')].filter(each =>
        each.clientWidth && each.scrollWidth > each.clientWidth + 1 && !each.matches('textarea, input, select, pre'))
        .map(each => each.outerHTML.slice(0, 120))"""
    for operation in ("plan_phases", "decide_phase", "review_phase", "compare_strategies", "estimate_maintenance"):
        await page.select_option("#operation", operation)
        await sent(page)
        for fold in await page.locator("#results details:not(.developer *), #fields details").all():
            await fold.evaluate("fold => { fold.open = true; }")
        assert await page.evaluate(wide) == [], operation
        told = await page.locator(
            "#results > section:not([aria-labelledby=part-sources], .developer)"
        ).all_inner_texts()
        assert not re.findall(r"\w+_\w+", " ".join(told)), operation  # codes are for those who ask for JSON
        if operation != "compare_strategies":
            assert await serious_findings(page) == []
    await page.click("#to-roster")
    await page.click("#invent")
    await page.click("#rank")
    await page.wait_for_selector("#status:has-text('ranked')")
    assert await page.evaluate(wide) == []
    assert await serious_findings(page) == []
