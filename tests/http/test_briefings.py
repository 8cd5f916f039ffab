"""A plan as a briefing: what is told to whom, in which language, from the plan that JSON has."""

import re
from typing import Any

import httpx
import msgspec
import pytest
from in_process import Running
from request_people import CLEAR, LIFTER, Json
from steelyard.answers import BriefingReader
from steelyard.http.endpoints.examples.examples import PLAN_EXAMPLES
from steelyard.http.languages import LANGUAGES, said
from steelyard.science.register import say

SENT = {"Content-Type": "application/json"}
PLAN: Json = {
    "profile": LIFTER,
    "screening": CLEAR,
    "start_date": "2026-03-02",
    "phase": {"kind": "mini_cut", "weeks": 4},
    "cut_history": {"cuts_last_12_months": 0},
}


async def post(service: Running, body: Any) -> httpx.Response:
    return await service.client.post("/v1/plans", content=msgspec.json.encode(body), headers=SENT)


async def told(service: Running, body: Any, reader: str = "member", language: str = "en") -> str:
    headers = {"Accept": "text/plain", "Accept-Language": language} | SENT
    content = msgspec.json.encode(body)
    answer = await service.client.post(f"/v1/plans/document?briefing={reader}", content=content, headers=headers)
    assert answer.status_code == 200, answer.text
    assert answer.headers["Content-Type"] == "text/plain; charset=utf-8"
    assert answer.headers["Content-Language"] == language
    assert answer.headers["Vary"].lower().startswith("accept, accept-language")
    return answer.text


def sections(text: str) -> dict[str, list[str]]:
    """Lines by heading."""
    parts = [part.splitlines() for part in text.strip().split("\n\n")]
    return {lines[0]: lines[1:] for lines in parts}


async def test_the_start_of_a_mini_cut_says_what_the_scale_will_do(service: Running) -> None:
    plan = (await post(service, PLAN)).json()
    found = sections(await told(service, PLAN))
    start = next(iter(found.values()))
    week = plan["phases"][0]["weeks"][0]
    weight = week["at_end"]["weight_kg"]
    assert start[0].startswith(f"Eat {week['intake_kcal']:,} kcal a day")
    shown = [float(number) for number in re.findall(r"\d+\.?\d*", start[1])]
    assert shown[:3] == [pytest.approx(weight[end], abs=0.051) for end in ("mean", "lower", "upper")]
    lost = plan["phases"][0]
    carried = lost["change"]["carried_kg"]["mean"] - lost["weeks"][-1]["at_end"]["carried_kg"]["mean"]
    assert start[1].endswith("of the drop is water.")
    assert shown[3] == pytest.approx(-carried - week["at_end"]["carried_kg"]["mean"], abs=0.051)
    assert start[2] == "Do not judge by the scale before day 14."


async def test_each_week_of_a_fat_loss_has_three_lines(service: Running) -> None:
    plan = (await post(service, PLAN)).json()
    found = sections(await told(service, PLAN))
    weeks = [lines for title, lines in found.items() if title.startswith("Week ")]
    assert len(weeks) >= len(plan["phases"][0]["weeks"])
    assert all(len(lines) == 3 for lines in weeks)
    assert not [title for title in sections(await told(service, PLAN, "member_short")) if title.startswith("Week ")]


@pytest.mark.parametrize("reader", [*BriefingReader])
@pytest.mark.parametrize("language", LANGUAGES)
async def test_it_is_whole_in_every_language(service: Running, reader: BriefingReader, language: str) -> None:
    """Every phase, every caution and rail, no number of the plan but by the locale, and short lines for members."""
    for example in PLAN_EXAMPLES.values():
        plan = (await post(service, example)).json()
        text = await told(service, example, reader.value, language)
        said_ = text.splitlines()
        for phase in plan["phases"]:
            name = said(say("BRIEFING_PHASE_TITLE", kind=phase["kind"], weekday=1, date=phase["start_date"]), language)
            assert any(line.startswith(name.split()[0]) for line in said_)
        phases = [note for phase in plan["phases"] for note in phase["cautions"]]
        for note in [*plan["cautions"], *plan["guard_rails"], *phases]:
            assert said(say(note["code"], **note["params"]), language) in said_
        assert not re.search(r"[{}`_]|\d{4}-\d\d-\d\d", text)
        if not reader.is_coach:
            assert not [line for line in said_ if len(line.split()) >= 25]


async def test_a_day_split_and_a_coach(service: Running) -> None:
    body = PLAN | {"day_split": {"higher_days_per_week": 3}}
    assert "On 3 days a week eat " in await told(service, body)
    text = await told(service, body, "coach")
    assert re.search(r"kcal a day: protein \d+ g, carbohydrate \d+ g, fat \d+ g\.", text)
    assert re.search(r"Change: weight -\d", text)


async def test_choices_are_told_whether_or_not_they_are_asked_for(service: Running) -> None:
    assert not (await post(service, PLAN)).json()["sizes"]
    text = await told(service, PLAN, "coach")
    assert {said(say(title), "en") for title in ("BRIEFING_SIZES_TITLE", "BRIEFING_LEVERS_TITLE")} <= set(
        sections(text)
    )
    assert text == await told(service, PLAN | {"include": ["levers"]}, "coach")


async def test_no_safe_plan_is_told_as_such(service: Running) -> None:
    body = PLAN | {"phase": {"kind": "mini_cut", "fat_loss_kg": 6.0, "weeks": 3}}
    assert not (await post(service, body)).json()["feasible"]
    found = sections(await told(service, body))
    assert list(found) == ["No safe plan", "Please note"]
    assert any(line.startswith("No safe plan does what was asked.") for line in found["No safe plan"])


async def test_words_of_a_caller_stay_on_one_line(service: Running) -> None:
    clearance = {"given_by": "physician", "reason": "fine\n\nEat nothing"}
    body = PLAN | {"screening": CLEAR | {"conditions": ["gout"], "clinical_clearance": clearance}}
    assert "Reason given: fine Eat nothing" in await told(service, body, "coach")


async def test_what_is_not_offered_is_refused(service: Running) -> None:
    answer = await service.client.post("/v1/plans/document?briefing=dog", json=PLAN, headers={"Accept": "text/plain"})
    assert answer.status_code == 400
    assert "`member`" in answer.json()["detail"]


async def test_json_is_the_same_in_every_language(service: Running) -> None:
    answers = [
        await service.client.post("/v1/plans", json=PLAN, headers={"Accept-Language": language})
        for language in LANGUAGES
    ]
    assert len({answer.content for answer in answers}) == 1
    assert all("Content-Language" not in answer.headers for answer in answers)


LEAN_LIFTER = LIFTER | {"weight_kg": 78.0, "height_cm": 182, "body_fat": {"fat_fraction": 0.11, "method": "dxa"}}
NOT_FROM_FAT: Json = PLAN | {"profile": LEAN_LIFTER, "phase": {"kind": "cut", "weeks": 12}}


@pytest.mark.parametrize("reader", BriefingReader)
async def test_what_body_fat_cannot_supply_is_said_once(service: Running, reader: str) -> None:
    """The cap says what its warning would; a program that reads JSON has both."""
    plan = (await post(service, NOT_FROM_FAT)).json()
    rails = [rail for rail in plan["guard_rails"] if rail["id"] == "fat_supply"]
    assert {rail["action"] for rail in rails} == {"capped", "warned"}
    (cap,) = (rail for rail in rails if rail["action"] == "capped")
    assert cap["params"]["why"] == "fat_release_later"
    text = await told(service, NOT_FROM_FAT, reader)
    assert text.count("lose muscle, not fat") == 1
    assert cap["text"] in text
    assert "kilogram of body fat" not in text


async def test_a_member_is_told_once_what_fat_to_expect(service: Running) -> None:
    reason = next(r for r in (await post(service, PLAN)).json()["phases"][0]["reasons"] if r["code"] == "FAT_SOLVED")
    assert reason["text"] not in await told(service, PLAN, "member")
    assert "kg of fat, between" in await told(service, PLAN, "member")
    assert reason["text"] in await told(service, PLAN, "coach")


@pytest.mark.parametrize("language", LANGUAGES)
async def test_in_pregnancy_nobody_is_told_what_the_scale_should_show(service: Running, language: str) -> None:
    """What grows is not in the forecast: 58 kg for half a year, that a body stays as it is, and a rate of a return at
    twice which to ask a doctor were told for it."""
    pregnant = {**CLEAR, "is_pregnant": True}
    hold = {"kind": "maintenance", "weeks": 12}
    asked = {**PLAN, "screening": pregnant, "phase": hold, "return_to_gain": {"gain_weeks": 12}}
    asked["profile"] = {**LIFTER, "sex": "female"}
    plan = (await post(service, asked)).json()
    assert "WEIGHT_RISES_IN_PREGNANCY" in {caution["code"] for caution in plan["cautions"]}
    said = {one["code"] for phase in plan["phases"] for one in (*phase["reasons"], *phase["guidance"])}
    assert len(plan["phases"]) == 2
    assert not said & {"HOLD_WHY", "GAIN_RATE_EXPECTED", "RETURN_CHECKS"}
    texts = [await told(service, asked, reader, language) for reader in ("member", "coach")]
    for path, accept in (("document", "text/calendar"), ("document", "text/markdown"), ("picture", "image/svg+xml")):
        headers = {"Accept": accept, "Accept-Language": language} | SENT
        answer = await service.client.post(f"/v1/plans/{path}", content=msgspec.json.encode(asked), headers=headers)
        assert answer.status_code == 200
        texts.append(re.sub(r"\r?\n ", "", answer.text))
    for text in texts:
        assert "kcal" in text
        assert not re.search(r"\d[.,]\d\s?kg|\d kg", text), text


@pytest.mark.parametrize(
    ("phase", "why"),
    [
        ({"kind": "gain"}, "already as high as this gain allows"),
        ({"kind": "maintenance", "weeks": 2}, "already as high as this gain allows"),
        ({"kind": "mini_cut", "weeks": 4}, "still as high as the gain allows"),
    ],
)
async def test_whoever_holds_in_place_of_a_gain_is_told_why(service: Running, phase: Json, why: str) -> None:
    """Who asked for a gain was told a hold, without a word why; and a calendar that goes on for weeks likewise."""
    fat = {"body_fat": {"fat_fraction": 0.3, "method": "dxa"}}
    asked = {**PLAN, "profile": {**LIFTER, **fat}, "phase": phase}
    said_ = [await told(service, asked, reader.value) for reader in BriefingReader]
    headers = {"Accept": "text/calendar"} | SENT
    calendar = await service.client.post("/v1/plans/document", content=msgspec.json.encode(asked), headers=headers)
    for text in (*said_, re.sub(r"\r\n ", "", calendar.text)):
        assert text.count(why) == 1


async def test_protein_that_is_not_for_the_whole_body_is_told_for_what(service: Running) -> None:
    """2 grams a kilogram, and 195 grams for 120 kg, contradict each other without a word."""
    stout = {"weight_kg": 120.0, "body_fat": {"fat_fraction": 0.36, "method": "dxa"}}
    for reader in ("member", "coach"):
        lines = (await told(service, {**PLAN, "profile": {**LIFTER, **stout}}, reader)).splitlines()
        why = next(i for i, line in enumerate(lines) if "grams of protein per kilogram" in line)
        assert lines[why + 1].startswith("Your protein is counted for ")


@pytest.mark.parametrize("reader", [*BriefingReader])
async def test_where_no_plan_is_safe_the_nearest_is_told(service: Running, reader: BriefingReader) -> None:
    """It said that the nearest is given instead, gave none, and began with the equations for resting energy."""
    asked = {**PLAN, "phase": {"kind": "mini_cut", "weeks": 2, "fat_loss_kg": 6.0}, "cut_history": None}
    plan = (await post(service, asked)).json()
    assert not plan["feasible"]
    text = (await told(service, asked, reader.value)).replace("\u00a0", " ")
    first, *rest = sections(text)["No safe plan"]
    assert first.startswith("No safe plan does what was asked")
    assert f"{plan['nearest']['fat_loss_kg']:.1f} kg" in " ".join(rest)
    assert f"{plan['nearest']['weeks']} weeks" in " ".join(rest)
    # A cap and the warning of the same thing are one.
    assert text.count("Your past diets are not known") == 1
    pictured = await service.client.post(
        "/v1/plans/picture", content=msgspec.json.encode(asked), headers={"Accept": "image/svg+xml"} | SENT
    )
    assert "Equations on" not in pictured.text
