"""The member card in a page of its own and in the example portal: what it shows, and what it never does."""

import copy
import json
import re
from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

import httpx
import pytest
from browser_desk import PORTAL, SDK, Desk, OpenDesk, serious_findings
from examples.portal.build import REQUEST
from playwright.async_api import Locator, Page

pytestmark = pytest.mark.asyncio(loop_scope="session")

Json = dict[str, Any]
DAY = "2026-05-13"  # in the second week
BLANK = f"{PORTAL}/blank"
# A page that lets nothing inline run, and that would do all it can to hide the cautions.
BLANK_PAGE = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Card</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy"
content="default-src 'self'; img-src data:; require-trusted-types-for 'script'">
<link rel="icon" href="data:,"><script src="/member_card/steelyard-plan.js" defer></script>
<main><h1>Card</h1>%s</main></html>"""


@pytest.fixture(scope="session")
def plan(ask: Callable[..., httpx.Response]) -> Json:
    """The service's answer that the portal shows."""
    answer: Json = ask("/v1/plans", REQUEST).json()
    assert answer["feasible"]
    assert answer["guard_rails"]
    return answer


async def blank(desk: OpenDesk, inside: str, **options: Any) -> tuple[Desk, Page]:
    new = await desk(**{"viewport": {"width": 320, "height": 700}, **options})
    new.given[BLANK] = BLANK_PAGE % inside
    return new, await new.page(BLANK)


async def card(desk: OpenDesk, answer: Any, attributes: str = f'date="{DAY}"', **options: Any) -> Locator:
    """The card given ``answer`` as its property."""
    _, page = await blank(desk, f"<steelyard-plan {attributes}></steelyard-plan>", **options)
    await page.evaluate("answer => { document.querySelector('steelyard-plan').plan = answer; }", answer)
    await page.wait_for_selector("steelyard-plan .card")
    return page.locator("steelyard-plan")


async def cautions_are_seen(shown: Locator, answer: Json) -> None:
    """Each caution is drawn, inside the width of the window, with nothing above it."""
    said = [each["text"] for each in answer["cautions"]]
    said += [each["text"] for phase in answer["phases"] for each in phase["cautions"]]
    assert said
    for text in said:
        line = shown.locator(".cautions li").filter(has_text=text)
        await line.scroll_into_view_if_needed()
        assert await line.is_visible()
        box = await line.bounding_box()
        assert box
        assert box["height"] >= 20
        assert 0 <= box["x"] < box["x"] + box["width"] <= 320
        is_on_top = await line.evaluate(
            """(line, at) => { let found = document.elementFromPoint(at.x + 4, at.y + 8);
            while (found?.shadowRoot) { const inner = found.shadowRoot.elementFromPoint(at.x + 4, at.y + 8);
                if (inner === found || !inner) break; found = inner; }
            return found === line || line.contains(found); }""",
            box,
        )
        assert is_on_top, text


# What it shows


async def test_figures_are_those_of_the_answer(desk: OpenDesk, plan: Json) -> None:
    plan = copy.deepcopy(plan)
    week = plan["phases"][0]["weeks"][1]
    week["day_kinds"][0]["carbohydrate_g"] += 40  # kinds of day that have the same are told once
    shown = await card(desk, plan)
    assert week["start_date"] == "2026-05-11"
    assert await shown.locator(".week h3").inner_text() == "This week"
    eaten = [week, *week["day_kinds"]]
    assert len(eaten) == 3
    for at, each in enumerate(eaten):
        assert (await shown.locator(".intake").nth(at).inner_text()).startswith(f"{each['intake_kcal']:,} ")
        listed = await shown.locator(".macros").nth(at).locator("dd").all_inner_texts()
        named = ("protein_g", "carbohydrate_g", "fibre_g", "fat_g")
        assert listed == [f"{each[name]} g" for name in named if name in each]
    phases = shown.locator(".phases > li")
    assert await phases.count() == len(plan["phases"])
    for at, phase in enumerate(plan["phases"]):
        rows = await phases.nth(at).locator("dd").all_inner_texts()
        changes = [phase["change"][name] for name in ("weight_kg", "fat_kg", "lean_kg", "carried_kg")]
        assert [" ".join(row.split()) for row in rows] == [
            f"{signed(c['mean'])} kg ({signed(c['lower'])} to {signed(c['upper'])})" for c in changes
        ]
    assert await phases.nth(0).get_attribute("aria-current") == "step"
    told = await shown.locator(".card").inner_text()
    for rail in plan["guard_rails"]:
        assert rail["text"] in told
    await shown.locator("summary").click()
    told = await shown.locator(".card").inner_text()
    for reason in [*plan["reasons"], *plan["phases"][0]["reasons"]]:
        assert reason["text"] in told
    assert plan["fingerprint"] not in told  # which is for those who ask about an answer


async def test_a_week_is_answered_on_one_small_screen(desk: OpenDesk, ask: Callable[..., httpx.Response]) -> None:
    """What to eat today, what the scale will do, what to do this week: above the fold of 390 by 844 pixels."""
    party = {"weekday": "saturday", "kind": "party", "extra_kcal": 150, "alcohol_g": 20}
    lived = {"training": [{"weekday": "wednesday"}, {"weekday": "friday"}], "flexible_days": [party]}
    asked = {name: value for name, value in REQUEST.items() if name != "day_split"}
    asked |= {"week": lived, "phase": {"kind": "mini_cut", "weeks": 5, "deficit_kcal": 400}}
    answer: Json = ask("/v1/plans", asked).json()
    week = answer["phases"][0]["weeks"][1]
    today = next(day for day in week["by_day"] if day["date"] == DAY)
    for language in ("en", "de", "es"):
        shown = await card(desk, answer, f'date="{DAY}" lang="{language}"', viewport={"width": 390, "height": 844})
        assert digits(await shown.locator(".intake").first.inner_text()) == str(today["intake_kcal"])
        rows = await shown.locator(".days li").all_inner_texts()
        assert [digits(row.split("kcal")[0]) for row in rows] == [str(day["intake_kcal"]) for day in week["by_day"]]
        assert await shown.locator(".days li[aria-current=date]").count() == 1
        assert "60 min" in rows[2]
        assert str(today["meals_protein_g"][0]) in await shown.locator(".week").inner_text()
        scale = await shown.locator(".scale").inner_text()
        assert f"{week['at_end']['weight_kg']['mean']:.1f}".replace(".", "." if language == "en" else ",") in scale
        last = shown.locator(".week .list li").last
        box = await last.bounding_box()
        assert box
        assert box["y"] + box["height"] <= 844
        assert box["x"] + box["width"] <= 390


def digits(text: str) -> str:
    return re.sub(r"\D", "", text)


def signed(value: float) -> str:
    # A tie goes away from zero, as in the card.
    text = f"{Decimal(str(value)).quantize(Decimal('0.1'), ROUND_HALF_UP):+}".replace("-", "−")
    return "0.0" if text[1:] == "0.0" else text


async def test_the_picture_is_drawn_from_the_forecast(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan, viewport={"width": 900, "height": 700})
    picture = shown.locator(".picture svg")
    ends = [week["at_end"] for phase in plan["phases"] for week in phase["weeks"]]
    label = await picture.get_attribute("aria-label") or ""
    start = plan["start_weight_kg"]
    assert f"{start:.1f} kg" in label
    assert f"{ends[-1]['weight_kg']['lower']:.1f} and {ends[-1]['weight_kg']['upper']:.1f} kg" in label
    axis = [
        (float(y) - 4, float(value))
        for y, value in await picture.locator("text[text-anchor=end]").evaluate_all(
            "texts => texts.map(each => [each.getAttribute('y'), each.textContent])"
        )
        if re.fullmatch(r"[\d.]+", value)  # neither the unit nor the last date
    ]
    (y0, v0), (y1, v1) = axis[0], axis[-1]

    async def values(kind: str) -> list[float]:
        path = await picture.locator(f"path.{kind}").get_attribute("d") or ""
        heights = [float(pair.split()[1]) for pair in path.strip("MZ").split("L")]
        return [v0 + (y - y0) * (v1 - v0) / (y1 - y0) for y in heights]

    drawn_to = 0.06 * (v1 - v0) / (y1 - y0)  # coordinates have one decimal
    weights = [start] + [end["weight_kg"]["mean"] for end in ends]
    tissue = [start] + [end["weight_kg"]["mean"] - end["carried_kg"]["mean"] for end in ends]
    upper, lower = [[start] + [end["weight_kg"][name] for end in ends] for name in ("upper", "lower")]
    band = upper + lower[::-1]
    assert await values("weight") == pytest.approx(weights, abs=abs(drawn_to))
    assert await values("tissue") == pytest.approx(tissue, abs=abs(drawn_to))
    assert await values("band") == pytest.approx(band, abs=abs(drawn_to))


async def test_the_picture_follows_the_width(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan)
    for width in (320, 800, 500):
        await shown.page.set_viewport_size({"width": width, "height": 700})
        # An observer draws anew once the layout is done.
        gap = "p => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() =>"
        gap += " done(Math.abs(p.firstChild.clientWidth - p.clientWidth)))))"
        assert await shown.locator(".picture").evaluate(gap) <= 1
        assert await shown.page.evaluate("document.documentElement.scrollWidth") <= width


async def test_the_week_is_that_of_the_day(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan, f'date="{DAY}" lang="en-GB"', timezone_id="Pacific/Auckland")
    for day, heading, phase, week in (
        ("2026-04-01", "First week, from 4 May", 0, 0),
        ("2026-05-04", "This week", 0, 0),
        ("2026-06-10", "This week", 1, 0),
        ("2027-01-01", "Last week", 2, 7),
    ):
        await shown.evaluate("(card, day) => card.setAttribute('date', day)", day)
        assert (await shown.locator(".week h3").inner_text()).startswith(heading)
        intake = plan["phases"][phase]["weeks"][week]["intake_kcal"]
        assert (await shown.locator(".week .intake").first.inner_text()).startswith(f"{intake:,}")


async def test_its_own_words_follow_the_language(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan, f'date="{DAY}" lang="de"')
    told = await shown.locator(".card").inner_text()
    assert "Diese Woche" in told
    intake = f"{plan['phases'][0]['weeks'][1]['intake_kcal']:,}".replace(",", ".")
    assert f"{intake} kcal am Tag" in " ".join(told.split())
    assert await shown.locator(".card").get_attribute("lang") == "de"
    assert await shown.locator(".cautions ul").get_attribute("lang") == "en"  # whose words they are
    await shown.evaluate("card => card.setAttribute('messages', 'de')")
    assert await shown.locator(".cautions ul").get_attribute("lang") == "de"
    await shown.evaluate("card => { card.lang = 'es-MX'; }")
    assert await shown.locator(".week h3").inner_text() == "Esta semana"
    for tag in ("fr", "x'\"><b>", "en-ZZ-!"):
        await shown.evaluate("(card, tag) => { card.lang = tag; }", tag)
        assert await shown.locator(".week h3").inner_text() == "This week"


async def test_data_may_come_as_a_child(desk: OpenDesk, plan: Json) -> None:
    _, page = await blank(
        desk,
        f'<steelyard-plan date="{DAY}"><script type="application/json">{_in_html(plan)}</script></steelyard-plan>'
        '<steelyard-plan><script type="application/json">{"half": </script></steelyard-plan>'
        "<steelyard-plan></steelyard-plan>",
    )
    cards = page.locator("steelyard-plan")
    assert "This week" in await cards.nth(0).locator(".card").inner_text()
    assert "cannot be shown" in await cards.nth(1).locator(".card").inner_text()
    assert await cards.nth(2).locator(".card").count() == 0


def _in_html(answer: Json) -> str:
    return json.dumps(answer).replace("<", "\\u003c")


# What it never does


async def test_cautions_are_seen_whatever_the_page_does(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan)
    await cautions_are_seen(shown, plan)
    await shown.evaluate(
        """card => {
            for (const name of ["collapsed", "compact", "hide-cautions", "no-cautions"]) card.setAttribute(name, "");
            card.setAttribute("cautions", "false");
            const sheet = new CSSStyleSheet();
            sheet.replaceSync(`* { color: transparent !important; font-size: 0 !important; line-height: 0 !important;
                visibility: hidden; } steelyard-plan { max-height: 8rem !important; height: 8rem !important;
                overflow: hidden !important; opacity: 0 !important; clip-path: inset(90%) !important; }
                .cautions, steelyard-plan .cautions, steelyard-plan::part(cautions) { display: none !important; }`);
            document.adoptedStyleSheets = [sheet];
        }"""
    )
    await cautions_are_seen(shown, plan)
    assert await shown.locator("details .cautions, .cautions details").count() == 0
    style = await shown.locator(".cautions li").first.evaluate(
        "li => [getComputedStyle(li).fontSize, getComputedStyle(li).color]"
    )
    assert style == ["16px", "rgb(28, 35, 38)"]


async def test_without_cautions_there_are_no_numbers(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan)
    bare = {name: value for name, value in plan.items() if name != "cautions"}
    blank_one = {**plan["cautions"][0], "text": " "}
    not_the_general_one = {"code": "REBOUND", "text": "The scale will rise.", "params": {}}
    for cautions in ("absent", [], [blank_one], [not_the_general_one], [None], "see a physician", None):
        given = bare if cautions == "absent" else {**bare, "cautions": cautions}
        assert "its cautions are missing" in await told_of(shown, given), cautions
        assert not re.search(r"\d", await shown.locator(".card").inner_text())
        assert await shown.locator("svg").count() == 0


async def told_of(shown: Locator, answer: Any) -> str:
    """What the card says once it is given ``answer``."""
    await shown.evaluate("(card, answer) => { card.plan = answer; }", answer)
    return await shown.locator(".card").inner_text()


async def test_texts_do_not_become_markup(desk: OpenDesk, plan: Json) -> None:
    hostile = "</script><img src=x onerror=\"document.title='taken'\"><svg/onload=alert(1)>{{7*7}}"
    spoiled = _with_texts(plan, hostile)
    spoiled["cautions"][0]["code"] = "NOT_MEDICAL_ADVICE"
    for attribute in ("kind", "element"):
        assert spoiled["phases"][0].get(attribute, hostile) == hostile
    shown = await card(desk, spoiled)
    await shown.locator("summary").click()
    told = await shown.locator(".card").inner_text()
    assert told.count(hostile) >= 5
    assert await shown.locator("img, script, iframe, [onload], [onerror]").count() == 0
    assert await shown.page.title() == "Card"
    spoiled["phases"][0]["weeks"][1]["intake_kcal"] = hostile
    assert "cannot be shown" in await told_of(shown, spoiled)


def _with_texts(value: Any, text: str) -> Any:
    """``value`` with every text replaced that is neither a date nor a name of a field."""
    if isinstance(value, dict):
        return {name: _with_texts(each, text) for name, each in value.items()}
    if isinstance(value, list):
        return [_with_texts(each, text) for each in value]
    return text if isinstance(value, str) and not re.fullmatch(r"\d{4}-\d\d-\d\d", value) else value


async def test_it_asks_for_nothing_and_keeps_a_copy(desk: OpenDesk, plan: Json) -> None:
    new, page = await blank(desk, f'<steelyard-plan date="{DAY}"></steelyard-plan>')
    await page.wait_for_function("() => !!customElements.get('steelyard-plan')")
    before = len(new.requests)
    changed = await page.evaluate(
        """answer => { const card = document.querySelector("steelyard-plan");
            card.plan = answer; answer.cautions.length = 0; card.plan.cautions.length = 0; card.theme = "dark";
            card.setAttribute("theme", "dark"); card.lang = "de"; return card.plan.cautions.length; }""",
        plan,
    )
    assert changed == len(plan["cautions"])
    assert len(new.requests) == before
    source = (SDK / "member_card" / "steelyard-plan.js").read_text(encoding="utf-8")
    code = re.sub(r"/\*.*?\*/|//[^\n]*", "", source, flags=re.DOTALL)
    assert not re.search(r"innerHTML|outerHTML|insertAdjacent|document\.write|\beval\b|Function\(|import\b", code)
    assert not re.search(r"\bfetch\b|XMLHttpRequest|WebSocket|sendBeacon|EventSource|Storage\b|cookie", code)


# What is no plan


async def test_an_infeasible_plan_says_what_would_be_possible(
    desk: OpenDesk, ask: Callable[..., httpx.Response]
) -> None:
    wish = {"kind": "mini_cut", "fat_loss_kg": 9.0, "weeks": 3}
    answer = ask("/v1/plans", {**REQUEST, "phase": wish, "day_split": None}).json()
    assert answer["feasible"] is False
    assert answer["nearest"]
    shown = await card(desk, answer)
    told = await shown.locator(".card").inner_text()
    assert "No safe plan does what was asked" in told
    unused = ("INFEASIBLE", "RESTING_PREFERS_")  # said by the heading, and of no use where there is no plan
    others = [reason["text"] for reason in answer["reasons"] if not reason["code"].startswith(unused)]
    assert "Equations" not in told
    assert all(text in told for text in others)
    if answer["nearest"]["fat_loss_kg"]:
        assert f"{answer['nearest']['fat_loss_kg']:.1f} kg of fat" in told
    await cautions_are_seen(shown, answer)
    answer["cautions"] = []
    assert "its cautions are missing" in await told_of(shown, answer)


@pytest.mark.parametrize("who", ["minor", "pregnant", "eating disorder before"])
async def test_who_may_hear_nothing_of_leanness_is_shown_none(
    desk: OpenDesk, ask: Callable[..., httpx.Response], plan: Json, who: str
) -> None:
    """As the answer's own cautions say who they are. For everybody else fat and lean tissue have a line each."""
    asked: Json = {name: copy.deepcopy(REQUEST[name]) for name in ("profile", "screening", "start_date")}
    asked["phase"] = {"kind": "maintenance", "weeks": 4}
    if who == "minor":
        asked["profile"]["age_years"] = 16
        del asked["screening"]
    elif who == "pregnant":
        asked["profile"]["sex"] = "female"
        asked["screening"]["is_pregnant"] = True
    else:
        asked["screening"]["eating_disorder"] = "past"
    answer = ask("/v1/plans", asked).json()
    lines = (await card(desk, answer)).locator(".change dt")
    assert await lines.all_inner_texts() == ["Weight", "Water and food"] * len(answer["phases"])
    others = (await card(desk, plan)).locator(".change dt")
    assert len(await others.all_inner_texts()) == 4 * len(plan["phases"])


async def test_a_refusal_is_told_with_its_referral(desk: OpenDesk, ask: Callable[..., httpx.Response]) -> None:
    refused = ask("/v1/plans", {**REQUEST, "screening": {**REQUEST["screening"], "is_pregnant": True}})
    assert refused.status_code == 422
    problem = refused.json()
    shown = await card(desk, problem)
    told = await shown.locator(".card").inner_text()
    assert problem["detail"] in told
    assert "not medical advice" in told


async def test_other_problems_are_not_the_members(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan)
    for status in (400, 401, 429, 503):
        problem = {
            "type": "/problems/x",
            "title": "Secret inner matter",
            "status": status,
            "detail": "Look at the key.",
        }
        told = await told_of(shown, problem)
        assert "not available at the moment" in told
        assert "Secret" not in told


async def test_what_is_no_answer_is_not_shown(desk: OpenDesk, plan: Json) -> None:
    shown = await card(desk, plan)
    half = copy.deepcopy(plan)
    del half["phases"][1]["weeks"][0]["at_end"]
    for answer in ({}, [], "text", 7, {"feasible": True}, {"phases": None}, {**plan, "phases": []}, half):
        told = await told_of(shown, answer)
        assert "cannot be shown" in told
        assert not re.search(r"\d", told)


# The portal


@pytest.mark.parametrize(("scheme", "width"), [("light", 1200), ("dark", 320)])
async def test_axe_finds_nothing_serious_in_the_portal(desk: OpenDesk, scheme: str, width: int) -> None:
    new = await desk(color_scheme=scheme, viewport={"width": width, "height": 900})
    page = await new.page(f"{PORTAL}/examples/portal/index.html")
    await page.wait_for_selector("steelyard-plan .card")
    await page.locator("steelyard-plan summary").focus()
    await page.keyboard.press("Enter")
    assert await page.locator("steelyard-plan details[open]").count() == 1
    assert await serious_findings(page) == []
    assert await page.evaluate("document.documentElement.scrollWidth") <= width
    assert {request.url.rpartition("/")[2] for request in new.requests} == {
        "index.html", "portal.css", "steelyard-plan.js",
    }  # fmt: skip


async def test_axe_would_find_something(desk: OpenDesk) -> None:
    """The checks can fail: a field without a label is a critical finding."""
    _, page = await blank(desk, "<input>")
    assert [finding for finding in await serious_findings(page) if finding.startswith("label:")]
