"""How pictures look, in figures: contrast, what is left without colour, and texts that do not meet."""

import json
import re
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

import matplotlib
import msgspec
import pytest
from pictured import ASKED, drawing, published_schema
from steelyard.http.app import OPERATIONS
from steelyard.http.rendering.formats.plan_summary import summary
from steelyard.http.rendering.pictures import palette, text_width
from steelyard.http.rendering.pictures.labels import LABEL_PX
from steelyard.http.rendering.pictures.palette import OKABE_ITO, Look, PictureWidth, Theme, look_of
from steelyard.http.rendering.pictures.plan_picture import draw
from steelyard.http.rendering.pictures.time_panels import Shade, Span, ends_of, labels_of, ticks_of
from steelyard.http.rendering.wording import Words
from steelyard.http.schemas.plans import PlanRequest
from steelyard.http.schemas.shared_fields import Interval
from steelyard.science.register import Message

LOOKS = {theme: look_of(theme, PictureWidth.PAGE, Words("en", spares=False)) for theme in Theme}

# Colours


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


@pytest.mark.parametrize("text", ["", "a", "one two three four five", "W" * 200, "日本語 " * 30, "kg " * 100])
def test_wrapped_lines_fit_and_lose_nothing(text: str) -> None:
    lines = text_width.wrapped(text, 12, 120)
    assert all(text_width.width_px(line, 12) <= 120 for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert text_width.width_px(text_width.shortened(text, 12, 120), 12) <= 120


@pytest.mark.parametrize("language", ["en", "de", "es"])
@pytest.mark.parametrize("value", [-0.175, 0.175, -0.165, 2.675, -1.235])
def test_a_number_is_rounded_as_within_a_text(language: str, value: float) -> None:
    """A headline had 0.18 kg a week, and the line under it -0.17."""
    words = Words(language, spares=False)
    title = words.say("picture-trend-urgent", way="down", rate_kg=abs(value))
    assert words.number(abs(value), 2) in title
    assert words.number(value, 2) == words.number(value, 2).replace("-", "−")
    assert words.number(value, 2).lstrip("−") == words.number(abs(value), 2)


def test_a_plan_is_rounded_alike_in_its_picture_and_its_summary() -> None:
    """Of 2.55 kg a picture had 2.5, and the summary of the same plan 2.6."""
    request = msgspec.convert(ASKED["gain"][1], PlanRequest, strict=False)
    (operation,) = (one for one in OPERATIONS if one.path == "/v1/plans")
    plan = operation.compute(request)
    phase = plan.phases[0]
    change = msgspec.structs.replace(phase.change, weight_kg=Interval(lower=0.65, mean=1.6, upper=2.55))
    plan = msgspec.structs.replace(plan, phases=[msgspec.structs.replace(phase, change=change), *plan.phases[1:]])
    assert "weight 1.6 kg (0.6 to 2.6)" in draw(request, plan, LOOKS[Theme.LIGHT]).description.replace("\u00a0", " ")
    assert "+1.6 kg (+0.6 to +2.6)" in summary(request, plan, Words("en", spares=False)).decode().replace("\u00a0", " ")


@pytest.mark.parametrize("language", ["en", "de", "es"])
def test_the_signs_of_a_note_are_minus_signs(language: str) -> None:
    note = Message("WARNED_EATEN_AVAILABILITY", {"observed": -2.8, "limit": 25.0, "periods": "no"})
    jump = Message("TREND_WATER_JUMP", {"date": "2026-04-05", "jump_kg": -1.5})
    assert not [text for text in Words(language, spares=False).texts([note, jump]) if re.search(r"(?<!\w)-\d", text)]


def test_numbers_are_not_broken_across_lines() -> None:
    sentence = " ".join(drawing("plan").specification["title"]["subtitle"])
    for line in text_width.wrapped(sentence, 12, 200):
        assert line.count("(") == line.count(")")


@pytest.mark.parametrize("name", ASKED)
def test_headers_and_legends_do_not_meet(name: str) -> None:
    """The legend begins right of the panel's title."""
    for panel in drawing(name).specification["vconcat"][:-1]:
        texts = [layer for layer in panel["layer"] if layer["mark"]["type"] == "text"]
        placed = [layer for layer in texts if "value" in layer["encoding"]["y"]]  # others stand where a line ends
        top = min(layer["encoding"]["y"]["value"] for layer in placed)
        row = [layer for layer in placed if layer["encoding"]["y"]["value"] == top]
        title, legend = row[0], row[1:]
        end = text_width.width_px(title["mark"]["text"], title["mark"]["fontSize"], is_bold=True)
        assert all(layer["encoding"]["x"]["value"] > end + 30 for layer in legend)
        for layer in legend:
            width = text_width.width_px(layer["mark"]["text"], layer["mark"]["fontSize"])
            assert layer["encoding"]["x"]["value"] + width <= LOOKS[Theme.LIGHT].width + 0.1


@pytest.mark.parametrize("name", ["comparison", "trend"])
def test_no_line_goes_through_a_heading_of_rows(name: str) -> None:
    made = drawing(name, width=PictureWidth.PHONE, language="de").specification["vconcat"]
    found = 0
    for layers in (panel["layer"] for panel in made if "layer" in panel):
        for before, layer in pairwise(layers):
            mark = layer["mark"]
            if mark.get("fontWeight") != "bold" or mark["fontSize"] != LABEL_PX or layer["encoding"]["x"]["value"]:
                continue
            middle, ground = layer["encoding"]["y"]["value"], before["encoding"]
            assert before["mark"] == {"type": "rect", "color": LOOKS[Theme.LIGHT].background}
            assert ground["x2"]["value"] > text_width.width_px(mark["text"], LABEL_PX)
            assert ground["y"]["value"] < middle < ground["y2"]["value"]
            found += 1
    assert found


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
            assert half <= one.x <= LOOKS[Theme.LIGHT].width - half
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


@pytest.mark.parametrize(("language", "form"), [("en", "%-d %b"), ("de", "%-d. %b"), ("es", "%-d %b")])
def test_days_are_written_as_the_language_does(language: str, form: str) -> None:
    assert ticks_of(Span(date(2026, 5, 4), date(2026, 6, 1)), language)[1] == form
