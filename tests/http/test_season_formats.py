"""A season as calendar, table and summary: each says what the JSON says."""

import copy
import csv
import io
import re
from datetime import date, timedelta
from typing import Any

import icalendar
import msgspec
import pytest
from in_process import Running
from steelyard.http.endpoints.examples.seasons import OPTIMUM_EXAMPLES, SEASON_EXAMPLES
from steelyard.http.rendering.formats.season_table import HEADER

Json = dict[str, Any]
ASKED = {
    "/v1/seasons": msgspec.to_builtins(SEASON_EXAMPLES["a_year_with_a_holiday"]),
    "/v1/seasons/optimum": msgspec.to_builtins(OPTIMUM_EXAMPLES["inside_a_band"]) | {"strategies_searched": 500},
}


async def both(service: Running, path: str, accept: str, body: Json | None = None) -> tuple[Json, bytes]:
    asked = body or ASKED[path]
    as_json = await service.client.post(path, json=asked)
    answer = await service.client.post(f"{path}/document", json=asked, headers={"accept": accept})
    assert (as_json.status_code, answer.status_code) == (200, 200)
    assert answer.headers["content-type"].partition(";")[0] == accept
    assert answer.headers["steelyard-fingerprint"] == as_json.json()["fingerprint"]
    return as_json.json(), answer.content


def typed(text: str) -> str:
    """``text`` with the minus signs and spaces of a keyboard."""
    return text.replace("−", "-").replace("\u00a0", " ")


@pytest.mark.parametrize("path", ASKED)
async def test_the_calendar_has_an_event_for_each_phase_and_intake(service: Running, path: str) -> None:
    season, content = await both(service, path, "text/calendar")
    parsed = icalendar.Calendar.from_ical(content)
    assert not parsed.errors
    events = list(parsed.walk("VEVENT"))
    found = [(e["dtstart"].dt.isoformat(), (e["dtend"].dt - timedelta(days=1)).isoformat()) for e in events]
    phases = [(phase["start_date"], phase["end_date"]) for phase in season["plan"]["phases"]]
    steps = [step for phase in season["plan"]["phases"] for step in phase["intakes"]]
    assert found == phases + [(step["start_date"],) * 2 for step in steps]
    assert len({event["uid"] for event in events}) == len(events)
    for event, step in zip(events[len(phases) :], steps, strict=True):
        assert f"{step['intake_kcal']:,}\u00a0kcal" in event["summary"]
        assert "not medical advice" in event["description"]


@pytest.mark.parametrize("path", ASKED)
async def test_the_table_has_a_line_for_each_week(service: Running, path: str) -> None:
    season, content = await both(service, path, "text/csv")
    header, *rows = csv.reader(io.StringIO(content.decode(), newline=""), strict=True)
    assert tuple(header) == HEADER
    assert len(rows) == len(season["plan"]["weeks"])
    for row, week in zip(rows, season["plan"]["weeks"], strict=True):
        cells = dict(zip(header, row, strict=True))
        assert (cells["phase"], cells["start_date"]) == (week["kind"], week["start_date"])
        assert cells["end_date"] == week["at_end"]["date"]
        assert int(cells["intake_kcal_per_day"]) == week["intake_kcal"]
        assert float(cells["fat_lower_kg"]) == week["at_end"]["fat_kg"]["lower"]
        assert "not medical advice" in cells["cautions"]


@pytest.mark.parametrize("path", ASKED)
async def test_the_summary_has_totals_phases_and_cautions(service: Running, path: str) -> None:
    season, content = await both(service, path, "text/markdown")
    text, plan = content.decode(), season["plan"]
    started = date.fromisoformat(ASKED[path]["start_date"])
    assert text.startswith(f"# Season from {started:%-d %B %Y}, {len(plan['weeks'])} weeks\n")
    gained = plan["totals"]["lean_gained_kg"]
    shown = f"{gained['mean']:+.1f} kg ({gained['lower']:+.1f} to {gained['upper']:+.1f})"
    assert f"| lean tissue gained | {shown} |" in typed(text)
    assert f"| days in a deficit | {plan['totals']['days_dieting']} |" in text
    tables = [block for block in re.split(r"\n\n", text) if block.startswith("|")]
    for block in tables:
        assert len({line.count("|") for line in block.splitlines()}) == 1
    assert len(tables[1].splitlines()) == 2 + len(plan["phases"])
    assert all(phase["start_date"] in tables[1] for phase in plan["phases"])
    if path.endswith("optimum"):
        assert len(tables[3].splitlines()) == 2 + len(season["trade_off"])
    cautions = text.partition("## Cautions")[2]
    assert all(note["text"] in cautions for note in season["cautions"])
    assert all(rail["text"] in cautions for rail in plan["guard_rails"])


async def test_a_limit_that_is_not_kept_stands_in_every_format(service: Running) -> None:
    body = copy.deepcopy(ASKED["/v1/seasons"])
    start = date.fromisoformat(body["start_date"])
    event = {"date": (start + timedelta(weeks=6)).isoformat(), "most_fat_fraction": 0.09}
    body["limits"] = (body.get("limits") or {}) | {"events": [event], "blocked_dates": []}
    for accept in ("text/calendar", "text/csv", "text/markdown"):
        season, content = await both(service, "/v1/seasons", accept, body)
        assert not season["feasible"]
        unfolded = content.decode().replace("\r\n ", "")
        assert "Not kept: body fat at an event" in unfolded
    _, content = await both(service, "/v1/seasons", "text/plain", body)
    over = next(limit for limit in season["broken_limits"] if limit["limit"] == "event_fat_fraction")
    assert f"Not kept: body fat at an event, over what is wanted by {100 * over['found']:.1f}%." in typed(
        content.decode()
    )


@pytest.mark.parametrize("path", ASKED)
async def test_the_briefing_tells_each_phase_and_every_caution(service: Running, path: str) -> None:
    season, content = await both(service, path, "text/plain")
    plan, parts = season["plan"], [part.splitlines() for part in content.decode().strip().split("\n\n")]
    gained = plan["totals"]["lean_gained_kg"]["mean"]
    assert parts[0][0].startswith(f"Lean tissue {gained:+.1f}\u00a0kg and fat ".replace("-", "−"))
    titles = [lines[0] for lines in parts]
    for phase in plan["phases"]:
        start = date.fromisoformat(phase["start_date"])
        name = {"mini_cut": "Mini-cut"}.get(phase["kind"], phase["kind"].capitalize())
        told = parts[titles.index(f"{name} from {start:%A}, {start:%-d %B %Y}")]
        step = phase["intakes"][0]
        assert told[1].startswith(f"Eat {step['intake_kcal']:,} kcal a day, with {step['protein_g']} grams of protein")
    text = content.decode()
    cautions = [*season["cautions"], *plan["guard_rails"], *(c for phase in plan["phases"] for c in phase["cautions"])]
    assert all(caution["text"] in text for caution in cautions)


@pytest.mark.parametrize(
    ("language", "words"), [("de", "Aufbau ab|Iss .* kcal am Tag"), ("es", "Volumen|Come .* kcal")]
)
async def test_the_briefing_is_in_the_language_of_the_caller(service: Running, language: str, words: str) -> None:
    headers = {"accept": "text/plain", "accept-language": language}
    path = "/v1/seasons"
    answer = await service.client.post(f"{path}/document?briefing=member", json=ASKED[path], headers=headers)
    assert answer.headers["content-language"] == language
    assert re.search(words, answer.text)
    assert not re.search(r"\b(the|of|and|week|weight|day|lean|from)\b", answer.text)


async def test_a_picture_claims_no_early_end_of_what_goes_on(service: Running) -> None:
    """A gain that is not expected to reach its ceiling was said to end early for it."""
    asked = copy.deepcopy(ASKED["/v1/seasons"])
    asked["profile"]["body_fat"] = {"fat_fraction": 0.11 if asked["profile"]["sex"] == "male" else 0.2, "method": "dxa"}
    asked |= {"horizon_weeks": 12, "strategy": {"kind": "ready_made", "name": "slow_gain_rare_mini_cuts"}}
    answer = await service.client.post("/v1/seasons", json=asked)
    ends = [note["code"] for phase in answer.json()["plan"]["phases"] for note in phase["ends_early_when"]]
    assert "CEILING_NOT_REACHED" in ends
    drawn = await service.client.post("/v1/seasons/picture", json=asked, headers={"accept": "image/svg+xml"})
    text = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", drawn.text))
    assert "not expected to reach" in text
    assert "early" not in text


async def test_what_holds_in_one_phase_is_told_in_no_other(service: Running) -> None:
    """That the scale rises after a cut is not said of the cut, nor of the rise after another."""
    path = "/v1/seasons"
    season, calendar = await both(service, path, "text/calendar")
    _, table = await both(service, path, "text/csv")
    _, summary = await both(service, path, "text/markdown")
    phases = season["plan"]["phases"]
    own = [[note["text"] for note in phase["cautions"]] for phase in phases]
    assert sum(map(bool, own)) > 1
    everywhere = {note["text"] for note in [*season["cautions"], *season["plan"]["guard_rails"]]}
    events = icalendar.Calendar.from_ical(calendar).walk("VEVENT")[: len(phases)]
    rows = list(csv.DictReader(io.StringIO(table.decode(), newline="")))
    sections = re.split(r"^## ", summary.decode(), flags=re.MULTILINE)
    for i, phase in enumerate(phases):
        of_others = {text for k, texts in enumerate(own) if k != i for text in texts} - everywhere - {*own[i]}
        (row, *_) = (row for row in rows if row["start_date"] == phase["start_date"])
        (section,) = (
            (part for part in sections[-len(phases) - 1 :] if own[i] and own[i][0] in part) if own[i] else ("",)
        )
        for told in (str(events[i]["description"]), row["cautions"], section):
            assert not any(text in told for text in of_others)
        assert all(text in str(events[i]["description"]) and text in row["cautions"] for text in own[i])


async def test_the_trade_off_from_far_above_the_band_is_told_by_where_it_ends(service: Running) -> None:
    """Every row of it had the same weeks above the band, and a hold at 36 % read as if a cut might start at 12 %."""
    asked = copy.deepcopy(ASKED["/v1/seasons/optimum"]) | {"horizon_weeks": 26, "limits": {}, "log": None}
    asked["profile"] |= {"sex": "male", "height_cm": 178.0, "weight_kg": 115.0}
    asked["profile"]["body_fat"] = {"fat_fraction": 0.36, "method": "dxa"}
    asked |= {"maintenance": None, "current_intake_kcal": None}
    season, content = await both(service, "/v1/seasons/optimum", "text/markdown", asked)
    text = content.decode()
    assert "| body fat % |" in text
    assert "weeks above the band |" not in text
    for other in season["trade_off"]:
        assert f"| {100 * other['expected']['final_fat_fraction']:.1f} |" in text
    assert "The gain ends at 17.0% body fat, without a cut." in typed(text)


async def test_an_event_that_is_missed_is_told_by_how_much(service: Running) -> None:
    """ "1.2 % where 0.0 % is allowed" is no body fat that anybody wants."""
    asked = copy.deepcopy(ASKED["/v1/seasons"])
    day = date.fromisoformat(asked["start_date"]) + timedelta(days=28)
    asked["limits"] = {"events": [{"date": str(day), "most_fat_fraction": 0.08}]}
    season, content = await both(service, "/v1/seasons", "text/markdown", asked)
    (broken,) = season["broken_limits"]
    assert broken["limit"] == "event_fat_fraction"
    assert f"over what is wanted by {100 * broken['found']:.1f}%" in typed(content.decode())
