"""Answers as pictures: what they say, how they look in figures, and how they are asked for."""

import asyncio
import io
import json
import re
from collections import Counter
from datetime import date
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import httpx
import msgspec
import pytest
from in_process import Running, running
from pictured import ASKED, PICTURE, PLAN, Json, drawing, published_schema
from PIL import Image
from steelyard.http.rendering.pictures import PNG, SVG, VEGA_LITE, text_width
from steelyard.http.rendering.pictures.palette import PictureWidth, Theme, look_of
from steelyard.http.rendering.pictures.renderer import Renderer, RenderingError
from steelyard.http.rendering.wording import Words

NAME = "{http://www.w3.org/2000/svg}"
WORDS = Words("en", spares=False)
OF_EACH_KIND = ("plan", "forecast", "trend", "season", "comparison")


async def ask(service: Running, name: str, accept: str, query: str = "") -> Any:
    path, body = ASKED[name]
    return await service.client.post(path + PICTURE + query, json=body, headers={"Accept": accept})


async def figures(service: Running, name: str) -> Json:
    """The answer that the picture shows."""
    path, body = ASKED[name]
    found: Json = (await service.client.post(path, json=body)).json()
    return found


_drawn: dict[tuple[str, str], bytes] = {}


async def picture(service: Running, name: str, accept: str, query: str = "") -> bytes:
    """A picture's bytes, drawn once for all tests that look at it."""
    if (name + query, accept) not in _drawn:
        answer = await ask(service, name, accept, query)
        assert answer.status_code == 200, answer.text
        assert answer.headers["content-type"] == accept
        _drawn[name + query, accept] = answer.content
    return _drawn[name + query, accept]


# What a picture says


@pytest.mark.parametrize("name", OF_EACH_KIND)
async def test_svg_is_one_image_with_a_title_and_a_description(service: Running, name: str) -> None:
    answer = await ask(service, name, SVG)
    root = ElementTree.fromstring(answer.content)
    title, description = root[0], root[1]
    assert (root.tag, title.tag, description.tag) == (f"{NAME}svg", f"{NAME}title", f"{NAME}desc")
    assert root.get("role") == "img"
    assert (root.get("aria-labelledby") or "").split() == [title.get("id"), description.get("id")]
    assert answer.headers["steelyard-fingerprint"] in (title.get("id") or "")
    # No mark has a role or a name of its own, and nothing is loaded from elsewhere.
    assert not [e for e in root.iter() if e is not root and (e.get("role") or e.get("aria-label"))]
    assert not re.search(rb"href|<script|<style|url\(", answer.content)
    specification = json.loads(await picture(service, name, VEGA_LITE))
    assert specification["description"] == description.text
    assert " ".join(specification["title"]["text"]) == title.text


def interval(value: Json, digits: int = 1, scale: float = 1.0) -> str:
    """An interval as the description has it, written here from the answer anew."""
    ends = (round(scale * value[end], digits) + 0.0 for end in ("mean", "lower", "upper"))  # no zero has a sign
    mean, lower, upper = (f"{end:.{digits}f}".replace("-", "−") for end in ends)
    return f"{mean}|{lower} to {upper}"


def said(description: str) -> str:
    """``81.9 kg (80.8 to 83.0)`` as ``81.9|80.8 to 83.0``, and no signs of growth."""
    return re.sub(r"(?: kg|%| kcal) \(([^)]*)\)", r"|\1", description).replace("+", "")


def spoken(value: Json, scale: float = 1.0) -> str:
    """An interval as a sentence has it, to a tenth, written here from the answer anew."""
    ends = (f"{round(scale * value[end], 1) + 0.0:.1f}".removesuffix(".0") for end in ("mean", "lower", "upper"))
    mean, lower, upper = (end.replace("-", "−") for end in ends)
    return f"{mean}|{lower} to {upper}"


async def test_a_plan_is_described_in_figures(service: Running) -> None:
    plan = await figures(service, "plan")
    specification = json.loads(await picture(service, "plan", VEGA_LITE))
    said_ = specification["description"].replace("\u00a0", " ")
    described = re.sub(r"(?: kg|%)? \(([^)]*)\)", r"|\1", said_)
    weight = PLAN["profile"]["weight_kg"]
    first, last = plan["phases"][0], plan["phases"][-1]["weeks"][-1]["at_end"]
    assert f"From {weight:g} kg on 30 March 2026 to {spoken(last['weight_kg'])}" in described
    assert f"to {spoken(last['fat_fraction'], scale=100)}." in described
    assert "80% ranges" in described
    for phase in plan["phases"]:
        for field in ("weight_kg", "fat_kg", "lean_kg", "carried_kg"):
            assert spoken(phase["change"][field]) in described
    for caution in plan["cautions"]:
        assert caution["text"] in described
    # The headline is the answer: how much fat, what the scale will say, and how much of that is water.
    fat, water = (-first["change"][field]["mean"] for field in ("fat_kg", "carried_kg"))
    end = first["weeks"][-1]["at_end"]["weight_kg"]["mean"]
    last_day = f"{date.fromisoformat(first['end_date']):%-d %B %Y}"
    title = " ".join(specification["title"]["text"]).replace("\u00a0", " ")
    assert title == (
        f"About {fat:.1f} kg of fat in {len(first['weeks'])} weeks; the scale says {end:.1f} kg on {last_day}, "
        f"{water:.1f} kg of the drop water"
    ).replace(".0 kg", " kg")


ENGLISH_WORDS = re.compile(
    r"\b(scale|weeks?|days?|gain|lean|fat|water|range|to|the|of|and|interval|weight|tissue|outlier|smoothed|body"
    r"|maintenance|intake|energy|cuts?|season|highest|change|with|about)\b",
    re.IGNORECASE,
)


@pytest.mark.parametrize("language", ["de", "es"])
@pytest.mark.parametrize("name", [*ASKED])
def test_a_picture_is_drawn_in_another_language(name: str, language: str) -> None:
    """Not one word of it, its cautions or its description is English; numbers and dates are those of the language."""
    drawn = drawing(name, width=PictureWidth.PHONE, language=language)
    specification = json.loads(msgspec.json.encode(drawn.specification))
    months = {"de": "März|April|Mai|Juni", "es": "de (marzo|abril|mayo|junio) de"}[language]
    if name != "infeasible":
        assert re.search(months, drawn.description) or name == "comparison"
        assert re.search(r"\d,\d", drawn.description)
    assert specification["config"]["locale"]["number"]["decimal"] == ","
    marks = [layer["mark"] for panel in specification["vconcat"] for layer in panel.get("layer", [])]
    shown = " ".join(str(mark["text"]) for mark in marks if mark["type"] == "text")
    told = re.sub(r"[Mm]ini-[Cc]uts?|[Aa]lert", "", f"{shown} {drawn.title} {drawn.description}")
    assert not ENGLISH_WORDS.findall(told)
    published_schema().validate(specification)


async def test_the_language_of_a_picture_is_the_callers(service: Running) -> None:
    path, body = ASKED["season"]
    headers = {"Accept": VEGA_LITE, "Accept-Language": "de-CH, en;q=0.5"}
    answer = await service.client.post(f"{path}/picture?width=phone", json=body, headers=headers)
    assert answer.headers["content-language"] == "de"
    assert "Magergewebe" in answer.json()["description"]
    answer = await service.client.post(f"{path}/picture", json=body, headers=headers | {"Accept": SVG})
    assert ElementTree.fromstring(answer.content).get("lang") == "de"  # so that a reader pronounces it


@pytest.mark.parametrize("name", OF_EACH_KIND)
async def test_a_picture_fits_a_phone(service: Running, name: str) -> None:
    """No wider than 390 pixels, and no text is smaller than 11 pixels or leaves it."""
    root = ElementTree.fromstring(await picture(service, name, SVG, "?width=phone"))
    assert float((root.get("width") or "0").removesuffix("px")) <= 390
    sizes = [float((e.get("font-size") or "11px").removesuffix("px")) for e in root.iter(f"{NAME}text")]
    assert min(sizes) >= 10


async def test_a_forecast_is_described_in_figures(service: Running) -> None:
    forecast = await figures(service, "forecast")
    described = said(json.loads(await picture(service, "forecast", VEGA_LITE))["description"])
    last = forecast["weeks"][-1]["at_end"]
    assert f"to {interval(last['weight_kg'])} at the end of" in described
    assert f"body fat of {interval(last['fat_fraction'], scale=100)}" in described
    assert f"{forecast['intake_kcal']:,.0f} kcal a day reach the target on" in described


def test_a_forecast_without_a_safe_intake_says_so() -> None:
    target = {"quantity": "weight_kg", "value": 75}
    question = ASKED["forecast"][1]["question"] | {"by_date": "2026-04-20", "target": target}
    drawn = drawing("forecast", question=question)
    assert "No safe intake reaches the target in time. Nearest: " in drawn.description


async def test_a_trend_is_described_in_figures(service: Running) -> None:
    trend = await figures(service, "trend")
    described = said(json.loads(await picture(service, "trend", VEGA_LITE))["description"])
    smoothed, whole = trend["days"]["smoothed_weight_kg"], trend["changes"][-1]
    start, end = (interval({name: smoothed[name][i] for name in ("lower", "mean", "upper")}) for i in (0, -1))
    assert f"Smoothed weight from {start} to {end}" in described
    assert interval(trend["weekly_rate_kg"], 2) in described
    assert f"Over {whole['days']} days: weight {interval(whole['weight_kg'])}" in described
    assert f"carried mass {interval(whole['carried_kg'])}" in described


async def test_a_season_is_described_in_figures(service: Running) -> None:
    season = await figures(service, "season")
    described = said(json.loads(await picture(service, "season", VEGA_LITE))["description"])
    totals = season["plan"]["totals"]
    assert f"Lean tissue {interval(totals['lean_gained_kg'])}, fat {interval(totals['fat_gained_kg'])}" in described
    assert f"{totals['days_dieting']} days in a deficit" in described
    assert f"{interval(totals['peak_fat_fraction'], scale=100)} at the end of its highest week" in described


async def test_a_comparison_is_described_in_figures(service: Running) -> None:
    comparison = await figures(service, "comparison")
    described = said(json.loads(await picture(service, "comparison", VEGA_LITE))["description"])
    best = max(comparison["strategies"], key=lambda s: s["intervals"]["lean_gained_kg"]["mean"])
    name = WORDS.strategy(best["label"])
    assert f"Most lean tissue gained: “{name}”, {interval(best['intervals']['lean_gained_kg'])}" in described
    for strategy in comparison["strategies"]:
        name, found = WORDS.strategy(strategy["label"]), strategy["intervals"]
        assert f"“{name}”: lean tissue {interval(found['lean_gained_kg'])}" in described


async def test_an_infeasible_plan_says_so(service: Running) -> None:
    root = ElementTree.fromstring(await picture(service, "infeasible", SVG))
    assert root[0].text == "No safe plan"
    assert "Nearest: a cut of 14 weeks" in (root[1].text or "")


# The three forms


@pytest.mark.parametrize("name", ["plan", "trend"])
async def test_png_decodes_at_twice_the_size_and_carries_the_texts(service: Running, name: str) -> None:
    root = ElementTree.fromstring(await picture(service, name, SVG))
    image = Image.open(io.BytesIO(await picture(service, name, PNG)))
    image.load()  # reads every checksum
    assert image.size == (2 * int(root.get("width") or 0), 2 * int(root.get("height") or 0))
    assert image.info["Title"] == root[0].text
    assert image.info["Description"] == root[1].text
    assert len(image.resize((200, 200)).convert("RGB").getcolors(40_000) or []) > 50  # something is drawn


@pytest.mark.parametrize(("name", "theme"), [*((name, Theme.LIGHT) for name in ASKED), ("trend", Theme.DARK)])
def test_specifications_fit_the_published_schema(name: str, theme: Theme) -> None:
    specification = drawing(name, theme).specification
    assert specification["$schema"].endswith("/v6.json")
    published_schema().validate(json.loads(msgspec.json.encode(specification)))


def test_the_published_schema_refuses_what_is_no_specification() -> None:
    specification = drawing("plan").specification
    specification["vconcat"][0]["layer"][0]["mark"] = {"type": "blob"}
    assert not published_schema().is_valid(specification)


@pytest.mark.parametrize("form", [SVG, PNG, VEGA_LITE])
async def test_the_same_request_gives_the_same_bytes(service: Running, form: str) -> None:
    first, second = await asyncio.gather(*(ask(service, "gain", form) for _ in range(2)))
    assert first.content == second.content
    assert first.headers["steelyard-fingerprint"] == (await figures(service, "gain"))["fingerprint"]


# How it is asked for


@pytest.mark.parametrize(
    ("accept", "chosen"),
    [
        ("", SVG),
        ("*/*", SVG),
        ("image/*", SVG),
        ("image/svg+xml;q=0.5, image/png", PNG),
        ("image/png;q=0.2, application/vnd.vegalite.v6+json;q=0.3", VEGA_LITE),
        ("image/png;q=0, image/*", SVG),
        ("IMAGE/PNG", PNG),
        ("application/*", VEGA_LITE),
        ("application/json", None),
        ("image/webp", None),
        ("application/vnd.vegalite.v5+json", None),
    ],
)
async def test_accept_chooses(service: Running, accept: str, chosen: str | None) -> None:
    answer = await ask(service, "one day", accept)
    assert answer.headers["vary"].lower().startswith("accept")
    if chosen is None:
        assert answer.status_code == 406
        assert answer.headers["content-type"] == "application/problem+json"
        assert all(f"`{form}`" in answer.json()["detail"] for form in (SVG, PNG, VEGA_LITE))
    else:
        assert answer.headers["content-type"] == chosen


async def test_the_theme_changes_the_colours_and_nothing_else(service: Running) -> None:
    light, dark = [json.loads(await picture(service, "plan", VEGA_LITE, f"?theme={theme}")) for theme in Theme]
    grounds = [look_of(theme, PictureWidth.PAGE, WORDS).background for theme in Theme]
    assert [light["background"], dark["background"]] == grounds
    assert light == json.loads(await picture(service, "plan", VEGA_LITE))
    for name in ("title", "description"):
        assert light[name] == dark[name]
    svg = await picture(service, "infeasible", SVG, "?theme=dark")
    assert f'fill="{grounds[1]}"'.encode() in svg


@pytest.mark.parametrize("query", ["?theme=sepia", "?theme=", "?theme=dark&theme=dark", "?theme=%FF"])
async def test_an_unknown_theme_is_a_problem(service: Running, query: str) -> None:
    answer = await ask(service, "plan", SVG, query)
    assert answer.status_code == 400
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.json()["code"] == "QUERY_VIOLATION"
    assert "`light` or `dark`" in answer.json()["detail"]


async def test_a_refusal_is_a_problem_document(service: Running) -> None:
    path, body = ASKED["plan"]
    answer = await service.client.post(path + PICTURE, json=body | {"screening": None}, headers={"Accept": PNG})
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"


async def test_png_is_not_packed_twice(service: Running) -> None:
    for accept, name, encoding in ((PNG, "infeasible", None), (SVG, "gain", "gzip")):
        path, body = ASKED[name]
        headers = {"Accept": accept, "Accept-Encoding": "gzip"}
        answer = await service.client.post(path + PICTURE, json=body, headers=headers)
        assert answer.headers.get("content-encoding") == encoding


HOSTILE = ('<b>"x" role="y" &amp; ]]>', "W" * 40, "日本語のラベル", "a\u0000\u202e\nb", "'\\\"{datum.x}")


async def test_labels_of_callers_stay_text(service: Running) -> None:
    path, body = ASKED["comparison"]
    own = [{"kind": "own", "surplus_kcal": 100 + i, "label": label} for i, label in enumerate(HOSTILE)]
    answer = await service.client.post(path + PICTURE, json=body | {"strategies": own}, headers={"Accept": SVG})
    assert answer.status_code == 200, answer.text
    root = ElementTree.fromstring(answer.content)
    texts = {element.text for element in root.iter() if element.tag in (f"{NAME}text", f"{NAME}tspan")}
    assert HOSTILE[0] in texts
    assert f"“{HOSTILE[1]}”" in (root[1].text or "")


async def test_lines_keep_their_length_in_another_font(service: Running) -> None:
    root = ElementTree.fromstring(await picture(service, "plan", SVG))
    texts = [e for e in root.iter() if e.tag in (f"{NAME}text", f"{NAME}tspan")]
    lines = [e for e in texts if (e.text or "").endswith("come first.")]
    assert lines
    for line in lines:
        width = text_width.width_px(line.text or "", 11)
        assert float(line.get("textLength") or 0) == pytest.approx(width, abs=0.1)
        assert line.get("lengthAdjust") == "spacingAndGlyphs"


async def test_a_picture_past_its_time_is_a_problem(tmp_path: Path) -> None:
    path, body = ASKED["plan"]
    async with running(tmp_path, computation_seconds=0.2) as service:  # a process that draws takes longer to start
        answer = await service.client.post(path + PICTURE, json=body, headers={"Accept": SVG})
    assert answer.status_code == 503
    assert answer.json()["code"] == "COMPUTATION_TIMEOUT"
    assert int(answer.headers["retry-after"]) > 0


CROWD = 20


@pytest.mark.parametrize("queue_seconds", [60.0, 0.2], ids=["who waits", "who would wait in vain"])
async def test_a_crowd_of_pictures_is_drawn_or_told_at_the_door(tmp_path: Path, queue_seconds: float) -> None:
    """None is left to run into its time: who cannot be served soon gets a 429 at once, with `Retry-After`."""
    path, body = ASKED["plan"]
    async with running(tmp_path, queue_seconds=queue_seconds) as service:

        async def draw() -> httpx.Response:
            return await service.client.post(path + PICTURE, json=body, headers={"Accept": SVG})

        assert (await draw()).status_code == 200  # which starts what draws
        answers = await asyncio.gather(*(draw() for _ in range(CROWD)))
    told = Counter(answer.status_code for answer in answers)
    if queue_seconds < 1:
        assert set(told) == {200, 429}
        assert all(int(a.headers["retry-after"]) > 0 for a in answers if a.status_code == 429)
    else:
        assert told == {200: CROWD}


# The process that draws


def job(**changes: Any) -> Json:
    return {"form": "svg", "id": "a", "title": "t", "description": "d", "specification": {}, "language": "en"} | changes


async def test_a_process_that_died_is_replaced() -> None:
    renderer = Renderer(seconds=60)
    drawn = drawing("infeasible")._asdict()
    try:
        first = await renderer.render(job(**drawn))
        assert renderer._process is not None
        renderer._process.kill()
        renderer._process.wait()
        assert await renderer.render(job(**drawn)) == first
    finally:
        renderer.close()


async def test_what_cannot_be_drawn_is_an_error_and_the_next_picture_is_drawn() -> None:
    renderer = Renderer(seconds=60)
    try:
        with pytest.raises(RenderingError):
            await renderer.render(job(specification={"mark": 7}))
        assert (await renderer.render(job(**drawing("infeasible")._asdict()))).startswith(b"<svg")
    finally:
        renderer.close()


async def test_a_picture_past_its_time_ends_the_process() -> None:
    renderer = Renderer(seconds=0.001)  # no process starts as fast
    try:
        with pytest.raises(RenderingError):
            await renderer.render(job(**drawing("plan")._asdict()))
        assert renderer._process is None
    finally:
        renderer.close()


def test_the_drawing_library_is_not_loaded_by_the_service() -> None:
    """It takes memory and time of the process that draws, not of the service's."""
    import sys

    assert "vl_convert" not in sys.modules
