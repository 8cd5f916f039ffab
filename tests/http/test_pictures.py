"""Answers as pictures: what they say, how they look in figures, and how they are asked for."""

import asyncio
import io
import json
import re
from datetime import date, timedelta
from functools import cache
from importlib.resources import files
from itertools import pairwise
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import matplotlib
import msgspec
import pytest
from in_process import Running
from jsonschema import Draft7Validator
from PIL import Image
from steelyard.http.app import OPERATIONS
from steelyard.http.examples import FORECAST_EXAMPLES, PLAN_EXAMPLES, TREND_EXAMPLES
from steelyard.http.pictures import PNG, SVG, VEGA_LITE, PictureFormat, palette, text_width, wording
from steelyard.http.pictures.marks import WIDTH
from steelyard.http.pictures.palette import LOOKS, OKABE_ITO, Look, Theme
from steelyard.http.pictures.renderer import Renderer, RenderingError
from steelyard.http.pictures.sheet import Drawing
from steelyard.http.pictures.time_panels import Shade, Span, ends_of, labels_of, ticks_of
from steelyard.http.season_examples import COMPARISON_EXAMPLES, SEASON_EXAMPLES

Json = dict[str, Any]
NAME = "{http://www.w3.org/2000/svg}"
PLAN: Json = msgspec.to_builtins(PLAN_EXAMPLES["fat_to_lose"])
ASKED: dict[str, tuple[str, Json]] = {
    "plan": ("/v1/plans", PLAN),
    "infeasible": ("/v1/plans", PLAN | {"phase": {"kind": "mini_cut", "fat_loss_kg": 6, "weeks": 2}}),
    "cut with breaks": (
        "/v1/plans",
        PLAN | {"phase": {"kind": "cut", "fat_loss_kg": 5, "weeks": 20, "break_every_weeks": 6}, "pause": {"weeks": 1}},
    ),
    "gain": ("/v1/plans", PLAN | {"phase": {"kind": "gain", "weeks": 16}}),
    "forecast": ("/v1/forecasts", msgspec.to_builtins(FORECAST_EXAMPLES["intake_for_target"])),
    "one day": (
        "/v1/trends",
        msgspec.to_builtins(TREND_EXAMPLES["three_weeks"])
        | {"log": {"weights": [{"date": "2026-03-02", "weight_kg": 84}]}},
    ),
    "trend": ("/v1/trends", msgspec.to_builtins(TREND_EXAMPLES["three_weeks"])),
    "season": ("/v1/seasons", msgspec.to_builtins(SEASON_EXAMPLES["a_year_with_a_holiday"])),
    "comparison": (
        "/v1/seasons/comparison",
        msgspec.to_builtins(COMPARISON_EXAMPLES["all_ready_made"]) | {"horizon_weeks": 30},
    ),
}
OF_EACH_KIND = ("plan", "forecast", "trend", "season", "comparison")


async def ask(service: Running, name: str, accept: str, query: str = "") -> Any:
    path, body = ASKED[name]
    return await service.client.post(path + query, json=body, headers={"Accept": accept})


_drawn: dict[tuple[str, str], bytes] = {}


async def picture(service: Running, name: str, accept: str, query: str = "") -> bytes:
    """A picture's bytes, drawn once for all tests that look at it."""
    if (name + query, accept) not in _drawn:
        answer = await ask(service, name, accept, query)
        assert answer.status_code == 200, answer.text
        assert answer.headers["content-type"] == accept
        _drawn[name + query, accept] = answer.content
    return _drawn[name + query, accept]


def drawing(name: str, theme: Theme = Theme.LIGHT, **changes: Any) -> Drawing:
    """The picture of an answer, without the service."""
    path, body = ASKED[name]
    operation = next(operation for operation in OPERATIONS if operation.path == path)
    assert operation.body_type is not None
    request = msgspec.convert(body | changes, operation.body_type, strict=False)
    format_ = operation.formats[SVG]
    assert isinstance(format_, PictureFormat)
    return format_.draw(request, operation.compute(request), theme)


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
    mean, lower, upper = (f"{scale * value[end]:.{digits}f}".replace("-", "−") for end in ("mean", "lower", "upper"))
    return f"{mean}|{lower} to {upper}"


def said(description: str) -> str:
    """``81.9 kg (80.8 to 83.0)`` as ``81.9|80.8 to 83.0``, and no signs of growth."""
    return re.sub(r" (?:kg|%|kcal) \(([^)]*)\)", r"|\1", description).replace("+", "")


async def test_a_plan_is_described_in_figures(service: Running) -> None:
    plan = (await ask(service, "plan", "application/json")).json()
    described = said(json.loads(await picture(service, "plan", VEGA_LITE))["description"])
    weight = PLAN["profile"]["weight_kg"]
    last = plan["phases"][-1]["weeks"][-1]["at_end"]
    assert f"Scale weight from {weight:.1f} kg on 30 March 2026 to {interval(last['weight_kg'])}" in described
    assert f"{interval(last['fat_fraction'], scale=100)}." in described
    assert "80 % intervals" in described
    for phase in plan["phases"]:
        for field in ("weight_kg", "fat_kg", "lean_kg", "carried_kg"):
            assert interval(phase["change"][field]).replace("−0.0", "0.0") in described
    for caution in plan["cautions"]:
        assert caution["text"] in described


async def test_a_forecast_is_described_in_figures(service: Running) -> None:
    forecast = (await ask(service, "forecast", "application/json")).json()
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
    trend = (await ask(service, "trend", "application/json")).json()
    described = said(json.loads(await picture(service, "trend", VEGA_LITE))["description"])
    days, whole = trend["days"], trend["changes"][-1]
    start, end = (interval(days[i]["smoothed_weight_kg"]) for i in (0, -1))
    assert f"Smoothed weight from {start} to {end}" in described
    assert interval(trend["weekly_rate_kg"], 2) in described
    assert f"Over {whole['days']} days: weight {interval(whole['weight_kg'])}" in described
    assert f"carried mass {interval(whole['carried_kg'])}" in described


async def test_a_season_is_described_in_figures(service: Running) -> None:
    season = (await ask(service, "season", "application/json")).json()
    described = said(json.loads(await picture(service, "season", VEGA_LITE))["description"])
    totals = season["plan"]["totals"]
    assert f"Lean tissue {interval(totals['lean_gained_kg'])}, fat {interval(totals['fat_gained_kg'])}" in described
    assert f"{totals['days_dieting']} days in a deficit" in described
    assert f"at most {interval(totals['peak_fat_fraction'], scale=100)}" in described


async def test_a_comparison_is_described_in_figures(service: Running) -> None:
    comparison = (await ask(service, "comparison", "application/json")).json()
    described = said(json.loads(await picture(service, "comparison", VEGA_LITE))["description"])
    best = max(comparison["strategies"], key=lambda s: s["intervals"]["lean_gained_kg"]["mean"])
    name = wording.READY_MADE_NAMES[best["label"]]
    assert f"Most lean tissue gained: “{name}”, {interval(best['intervals']['lean_gained_kg'])}" in described
    for strategy in comparison["strategies"]:
        name, found = wording.READY_MADE_NAMES[strategy["label"]], strategy["intervals"]
        assert f"“{name}”: lean tissue {interval(found['lean_gained_kg'])}" in described


async def test_an_infeasible_plan_says_so(service: Running) -> None:
    root = ElementTree.fromstring(await picture(service, "infeasible", SVG))
    assert root[0].text == "No safe plan does what was asked"
    assert "14 weeks for the goal" in (root[1].text or "")


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


@cache
def published_schema() -> Draft7Validator:
    """The schema that the authors of Vega-Lite publish, of the version that pictures are written for."""
    schema = json.loads(files("altair").joinpath("vegalite/v6/schema/vega-lite-schema.json").read_text())
    return Draft7Validator(schema)


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
    plain = await ask(service, "gain", "application/json")
    assert first.headers["steelyard-fingerprint"] == plain.json()["fingerprint"]


# How it is asked for


@pytest.mark.parametrize(
    ("accept", "chosen"),
    [
        ("", "application/json"),
        ("*/*", "application/json"),
        ("image/*", SVG),
        ("image/svg+xml;q=0.5, image/png", PNG),
        ("image/png;q=0.2, application/vnd.vegalite.v6+json;q=0.3", VEGA_LITE),
        ("image/png;q=0, image/*", SVG),
        ("IMAGE/PNG", PNG),
        ("application/*", "application/json"),
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
    assert (light["background"], dark["background"]) == tuple(LOOKS[theme].background for theme in Theme)
    assert light == json.loads(await picture(service, "plan", VEGA_LITE))
    for name in ("title", "description"):
        assert light[name] == dark[name]
    svg = await picture(service, "infeasible", SVG, "?theme=dark")
    assert f'fill="{LOOKS[Theme.DARK].background}"'.encode() in svg


@pytest.mark.parametrize("query", ["?theme=sepia", "?theme=", "?theme=dark&theme=dark", "?theme=%FF"])
async def test_an_unknown_theme_is_a_problem(service: Running, query: str) -> None:
    for accept in (SVG, "application/json"):
        answer = await ask(service, "plan", accept, query)
        assert answer.status_code == 400
        assert answer.headers["content-type"] == "application/problem+json"
        assert answer.json()["code"] == "QUERY_VIOLATION"
        assert "`light` or `dark`" in answer.json()["detail"]


async def test_a_refusal_is_a_problem_document(service: Running) -> None:
    path, body = ASKED["plan"]
    answer = await service.client.post(path, json=body | {"screening": None}, headers={"Accept": PNG})
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"


async def test_png_is_not_packed_twice(service: Running) -> None:
    for accept, name, encoding in ((PNG, "infeasible", None), (SVG, "gain", "gzip")):
        path, body = ASKED[name]
        answer = await service.client.post(path, json=body, headers={"Accept": accept, "Accept-Encoding": "gzip"})
        assert answer.headers.get("content-encoding") == encoding


# The process that draws


def job(**changes: Any) -> Json:
    return {"form": "svg", "id": "a", "title": "t", "description": "d", "specification": {}} | changes


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


# How it looks, in figures


def linear(colour: str) -> list[float]:
    """Linear light of an sRGB colour (IEC 61966-2-1)."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    return [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]


def luminance(colour: str) -> float:
    """Relative luminance (WCAG 2.2)."""
    red, green, blue = linear(colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio (WCAG 2.2): 1 to 21."""
    darker, lighter = sorted([luminance(one), luminance(other)])
    return (lighter + 0.05) / (darker + 0.05)


def lightness(colour: str) -> float:
    """CIE 1976 L* (ISO/CIE 11664-4), 0 to 100: what a copier keeps of a colour."""
    y = luminance(colour)
    return 116 * y ** (1 / 3) - 16 if y > (6 / 29) ** 3 else y * (29 / 3) ** 3


def test_contrast_and_lightness_are_those_of_the_standards() -> None:
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)
    assert contrast("#777777", "#FFFFFF") == pytest.approx(4.48, abs=0.01)  # known as just under 4.5
    assert lightness("#FFFFFF") == pytest.approx(100)
    assert lightness("#777777") == pytest.approx(50.0, abs=0.1)


def grounds(look: Look) -> list[str]:
    """What may lie behind a mark: the page, the shades of phases, and bands over them."""
    plain = [look.background, look.fat_loss_shade, look.hold_shade, look.gain_shade]
    return plain + [mixed(look.ink, ground, look.band_opacity) for ground in plain]


def mixed(colour: str, ground: str, opacity: float) -> str:
    parts = [
        round(opacity * int(colour[i : i + 2], 16) + (1 - opacity) * int(ground[i : i + 2], 16)) for i in (1, 3, 5)
    ]
    return "#" + "".join(f"{part:02X}" for part in parts)


@pytest.mark.parametrize("theme", Theme)
def test_lines_and_texts_stand_out_from_the_page(theme: Theme) -> None:
    """WCAG 2.2, 1.4.11: 3:1 for graphical objects; 1.4.3: 4.5:1 for texts."""
    look = LOOKS[theme]
    for colour in (look.ink, look.tissue, look.fat, look.lean, look.carried, look.muted):
        assert contrast(colour, look.background) >= 3
    for colour in (look.ink, look.muted):
        assert contrast(colour, look.background) >= 4.5
    for ground in (look.fat_loss_shade, look.hold_shade, look.gain_shade):  # names of phases stand on them
        assert contrast(look.ink, ground) >= 4.5


@pytest.mark.parametrize("theme", Theme)
def test_lines_stand_out_from_shades_and_bands(theme: Theme) -> None:
    look = LOOKS[theme]
    for colour in (look.ink, look.tissue):  # the lines of the panel with the band of the scale's weight
        assert min(contrast(colour, ground) for ground in grounds(look)) >= 3
    for colour in (look.fat, look.carried):  # on a band of their own colour
        for ground in grounds(look)[:4]:
            assert contrast(colour, mixed(colour, ground, look.band_opacity)) >= 2


@pytest.mark.parametrize("theme", Theme)
def test_hues_are_those_of_the_palette(theme: Theme) -> None:
    look = LOOKS[theme]
    assert {look.tissue, look.fat, look.lean, look.carried} <= set(OKABE_ITO.values())


@pytest.mark.parametrize("theme", Theme)
def test_what_shares_a_panel_differs_without_colour(theme: Theme) -> None:
    """In lightness (20 of 100 and more) and in dash or shape."""
    look = LOOKS[theme]
    assert palette.SOLID != palette.DASHED != palette.DOTTED
    for line in (look.tissue, look.carried):  # dashed, each beside a solid line of ink
        assert abs(lightness(line) - lightness(look.ink)) >= 20
    assert len(set(palette.SHAPES.values())) == len(palette.SHAPES)
    shades = [look.fat_loss_shade, look.hold_shade, look.gain_shade]
    steps = [abs(lightness(a) - lightness(b)) for a, b in zip(shades, [*shades[1:], shades[0]], strict=True)]
    assert min(steps) >= 3  # and every phase is named, with a line where it begins


@pytest.mark.parametrize("name", ["plan", "season", "trend", "forecast"])
def test_lines_of_a_panel_are_never_told_apart_by_colour_alone(name: str) -> None:
    for panel in drawing(name).specification["vconcat"]:
        lines = [layer["mark"] for layer in panel["layer"] if layer["mark"]["type"] == "line"]
        assert len({tuple(mark.get("strokeDash", ())) for mark in lines}) == len(lines)


# Texts


def metrics(font: str) -> dict[str, int]:
    """Widths by character, of the file of metrics that Adobe publishes and matplotlib carries."""
    path = Path(matplotlib.get_data_path()) / "fonts" / "pdfcorefonts" / f"{font}.afm"
    rows = re.findall(r"^C (-?\d+) ; WX (\d+) ; N (\w+) ;", path.read_text("latin-1"), re.MULTILINE)
    apart = {"quotesingle": "'", "grave": "`"}  # codes of this encoding that ASCII has otherwise
    ascii_ = {chr(int(code)): int(width) for code, width, _ in rows if 0x20 <= int(code) < 0x7F}
    return ascii_ | {apart[name]: int(width) for _, width, name in rows if name in apart}


def test_widths_are_those_of_the_font() -> None:
    """Helvetica's, whose widths Arial and Liberation Sans share."""
    plain, bold = metrics("Helvetica"), metrics("Helvetica-Bold")
    assert len(plain) == 95
    for character, width in plain.items():
        assert text_width.width_px(character, 1000) == pytest.approx(width), character
    for sentence in ("Mini-cut of 6 weeks, maintenance of 1 week and gain of 8 weeks", "Scale weight, kg", "Fat, 12 %"):
        width = sum(bold[character] for character in sentence) / 1000
        assert width <= text_width.width_px(sentence, 1, is_bold=True) <= 1.15 * width


async def test_lines_keep_their_length_in_another_font(service: Running) -> None:
    root = ElementTree.fromstring(await picture(service, "plan", SVG))
    lines = [e for e in root.iter() if e.tag in (f"{NAME}text", f"{NAME}tspan") and (e.text or "").endswith("prevail.")]
    assert lines
    for line in lines:
        width = text_width.width_px(line.text or "", 11)
        assert float(line.get("textLength") or 0) == pytest.approx(width, abs=0.1)
        assert line.get("lengthAdjust") == "spacingAndGlyphs"


@pytest.mark.parametrize("text", ["", "a", "one two three four five", "W" * 200, "日本語 " * 30, "kg " * 100])
def test_wrapped_lines_fit_and_lose_nothing(text: str) -> None:
    lines = text_width.wrapped(text, 12, 120)
    assert all(text_width.width_px(line, 12) <= 120 for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert text_width.width_px(text_width.shortened(text, 12, 120), 12) <= 120


def test_numbers_are_not_broken_across_lines() -> None:
    sentence = " ".join(drawing("plan").specification["title"]["subtitle"])
    for line in text_width.wrapped(sentence, 12, 200):
        assert line.count("(") == line.count(")")


HOSTILE = ('<b>"x" role="y" &amp; ]]>', "W" * 40, "日本語のラベル", "a\u0000\u202e\nb", "'\\\"{datum.x}")


async def test_labels_of_callers_stay_text(service: Running) -> None:
    path, body = ASKED["comparison"]
    own = [{"kind": "own", "surplus_kcal": 100 + i, "label": label} for i, label in enumerate(HOSTILE)]
    answer = await service.client.post(path, json=body | {"strategies": own}, headers={"Accept": SVG})
    assert answer.status_code == 200, answer.text
    root = ElementTree.fromstring(answer.content)
    texts = {element.text for element in root.iter() if element.tag in (f"{NAME}text", f"{NAME}tspan")}
    assert HOSTILE[0] in texts
    assert f"“{HOSTILE[1]}”" in (root[1].text or "")


@pytest.mark.parametrize("name", ASKED)
def test_headers_and_legends_do_not_meet(name: str) -> None:
    """The legend begins right of the panel's title."""
    for panel in drawing(name).specification["vconcat"][:-1]:
        placed = [layer for layer in panel["layer"] if layer["mark"]["type"] == "text"]
        top = min(layer["encoding"]["y"]["value"] for layer in placed)
        row = [layer for layer in placed if layer["encoding"]["y"]["value"] == top]
        title, legend = row[0], row[1:]
        end = text_width.width_px(title["mark"]["text"], title["mark"]["fontSize"], is_bold=True)
        assert all(layer["encoding"]["x"]["value"] > end + 30 for layer in legend)
        for layer in legend:
            width = text_width.width_px(layer["mark"]["text"], layer["mark"]["fontSize"])
            assert layer["encoding"]["x"]["value"] + width <= WIDTH + 0.1


def test_names_of_phases_do_not_meet() -> None:
    start = date(2026, 3, 2)
    kinds = ("Gain", "Mini-cut", "Maintenance")
    bounds = [start + timedelta(weeks=w) for w in (0, 3, 7, 8, 27, 31, 32, 51, 52)]
    shades = [Shade("x", kinds[i % 3], a, b) for i, (a, b) in enumerate(pairwise(bounds))]
    for weeks in (52, 156, 600):
        labels = labels_of(Span(start, start + timedelta(weeks=weeks), tuple(shades)))
        assert labels
        for i, one in enumerate(labels):
            half = text_width.width_px(one.text, 11) / 2
            assert half <= one.x <= WIDTH - half
            for other in labels[:i]:
                room = half + text_width.width_px(other.text, 11) / 2
                assert one.row != other.row or abs(one.x - other.x) >= room


@pytest.mark.parametrize("days", [1, 2, 9, 20, 84, 105, 209, 210, 400, 1092, 4000])
def test_ticks_are_few_and_inside(days: int) -> None:
    span = Span(date(2026, 3, 2), date(2026, 3, 2) + timedelta(days=days))
    ticks, _ = ticks_of(span)
    assert 2 <= len(ticks) <= 12
    assert span.first <= ticks[0] <= ticks[-1] <= span.last
    assert len({b - a for a, b in pairwise(ticks)}) == 1 or days >= 210


@pytest.mark.parametrize("values", [(1.0,), (80.2, 84.6), (0.0, 0.02), (-3.0, 5.5), (2200.0, 3900.0), (5.0, 5.0)])
def test_axes_end_outside_their_values_and_not_far(values: tuple[float, ...]) -> None:
    low, high = ends_of(values)
    room = (max(values) - min(values)) or 1.0
    assert low < min(values)
    assert high > max(values)
    assert high - low <= 2.5 * room + 2


@pytest.mark.parametrize("days", [1, 2, 5])
def test_short_logs_are_drawn(days: int) -> None:
    log = {"weights": [{"date": f"2026-03-{2 + i:02}", "weight_kg": 84.0 + 0.1 * i} for i in range(days)]}
    drawn = drawing("trend", log=log)
    published_schema().validate(json.loads(msgspec.json.encode(drawn.specification)))
    assert "Too little data to tell a direction" in drawn.description
