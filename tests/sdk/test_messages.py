"""What answers say, in another language, from the live service's catalogue."""

import json
import re
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any

import pytest
from examples.local_service import ROOT, LocalService
from sdk_caller import PROFILE, SCREENING, START, Caller
from steelyard_client import GuardRailRefusal, Messages, Steelyard, models

CONTRACT = json.loads((ROOT / "contracts" / "openapi-v1.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def messages(live: LocalService) -> Messages:
    with Steelyard(*live, timeout_seconds=60) as client:
        return client.list_messages()


async def test_both_clients_fetch_it(caller: Caller) -> None:
    answer = await caller("list_messages")
    assert (
        repr(answer) == f"<Messages {len(answer.messages)} codes in {', '.join(one.tag for one in answer.languages)}>"
    )


def said(value: Any) -> Iterator[models.Note]:
    """Everything in an answer that has a code, parameters and a text."""
    if isinstance(value, dict):
        if {"code", "params", "text"} <= value.keys():
            yield models.Note.from_dict({name: value[name] for name in ("code", "params", "text")})
        for item in value.values():
            yield from said(item)
    elif isinstance(value, list):
        for item in value:
            yield from said(item)


def test_english_by_the_catalogue_is_the_text_of_the_answer(messages: Messages, live: LocalService) -> None:
    """For the examples of every operation: what a client makes of code and parameters is what the service says."""
    found = set()
    with Steelyard(*live, timeout_seconds=60) as client:
        for path, methods in CONTRACT["paths"].items():
            for operation in methods.values():
                name = operation["operationId"]
                content = operation.get("requestBody", {"content": {}})["content"].get("application/json", {})
                if name == "optimise_season" or "application/json" not in operation["responses"]["200"]["content"]:
                    continue  # the slowest, which says nothing that a season does not; pictures and documents
                for example in content.get("examples", {}).values():
                    answer = getattr(client, name)(**example["value"])
                    for note in said(answer.to_dict()):
                        assert messages.localise(note, "en") == note.text, path
                        assert messages.localise(note, "de") != note.text
                        found.add(note.code)
    assert len(found) > 50


def note(code: str, text: str, **params: Any) -> models.Note:
    return models.Note.from_dict({"code": code, "text": text, "params": params})


def test_german_numbers_codes_and_dates(messages: Messages) -> None:
    one = note("CAPPED_DEFICIT", "x", deficit_kcal=1412.6, rule="intake_floor", why="least_intake")
    expected = "Das Defizit bleibt bei 1.413\u00a0kcal am Tag: Weniger Essen läge unter der sicheren Untergrenze."
    assert messages.localise(one, "de-AT") == expected
    listed = note("REFUSED_MEDICAL", "x", condition="gout", others=1)
    assert messages.localise(listed, "de").startswith("Mit Gicht und einer weiteren Angabe ")
    assert "1,5\u00a0kg" in messages.localise(note("END_AT_TARGET", "x", fat_kg=1.49), "de")
    assert "3. Mai 2026" in messages.localise(note("CHANGE_TIME", "x", date="2026-05-03"), "de")


@pytest.mark.parametrize("tag", ["de", "en", "es"])
def test_what_rounds_to_nothing_has_no_sign(messages: Messages, tag: str) -> None:
    so_far = {"fat_kg": -0.05, "lean_kg": -0.04, "carried_kg": -0.0, "balance_kcal": -0.5}
    assert "-" not in messages.localise(note("BRIEFING_SO_FAR", "-", **so_far), tag)
    assert "-1" in messages.localise(note("BRIEFING_SO_FAR", "x", **so_far | {"balance_kcal": -0.6}), tag)


def test_for_whom_a_message_is(messages: Messages) -> None:
    assert messages.audience("REBOUND") == "member"
    assert messages.audience("MEASURE_NOT_USED") == "developer"
    assert messages.audience("OF_A_NEWER_SERVICE") is None


def test_what_is_unknown_stays_english(messages: Messages) -> None:
    assert messages.localise(note("OF_A_NEWER_SERVICE", "Something new."), "de") == "Something new."
    assert messages.localise(note("END_AT_TARGET", "Its parameter is gone."), "de") == "Its parameter is gone."
    with pytest.raises(KeyError, match="there is no 'tlh', only de, en"):
        messages.localise(note("END_AT_TARGET", "x", fat_kg=1.0), "tlh")


def test_a_refusal(messages: Messages, live: LocalService) -> None:
    phase: Any = {"kind": "mini_cut", "weeks": 4}
    with Steelyard(*live) as client, pytest.raises(GuardRailRefusal) as caught:
        client.plan_phases(profile=PROFILE, screening={**SCREENING, "is_pregnant": True}, start_date=START, phase=phase)
    (fault,) = caught.value.errors
    assert messages.localise(fault, "en") == fault.detail
    assert re.match("In der Schwangerschaft planen wir kein Energiedefizit", messages.localise(fault, "de"))


def test_whom_to_look_at(messages: Messages) -> None:
    """Every text of an attention can be said in another language, with its own number of days on a roster."""
    day = date(2026, 5, 11)
    action = models.Said(code="ATTENTION_DO_CHANGE", text="Agree on 90 kcal a day less.")
    reason = models.Said(code="ATTENTION_OFF_PLAN", text="The phase goes slower than planned.")
    asked = models.Attention(
        level=2, reason=reason, action=action, verdict="slower", change_kcal=-90.0, since_date=day, as_of_date=day
    )
    assert messages.localise_attention(asked, "en") == (reason.text, action.text)
    with pytest.raises(TypeError, match="localise_attention"):
        messages.localise(reason, "de")  # type: ignore[arg-type]
    assert messages.localise_attention(asked, "de")[1] == "Vereinbare 90\u00a0kcal am Tag weniger."
    silent = models.Attention(
        level=2,
        reason=models.Said(code="ATTENTION_SILENT", text="Nothing was logged for 17 days."),
        action=models.Said(code="ATTENTION_DO_ASK", text="Ask how they are, and for a weight."),
        verdict="too_early", since_date=day, as_of_date=day, last_entry_date=day - timedelta(days=3),
    )  # fmt: skip
    place = models.RosterPlace(rank=1, reference="a", attention=silent, days_silent=17, change="new", priority=1.0)
    assert messages.localise_attention(place, "en") == (silent.reason.text, silent.action.text)
