"""What minors, and those who are pregnant or have or had an eating disorder, are told: no leanness, in no language.

Random requests of such people to every operation that knows who they are, each message of the answer read in each
language; and the same answers without the one place that spares them, which have to be caught.
"""

import random
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from leanness_words import labelled, speaks
from steelyard.http.languages import ENGLISH, LANGUAGES, said
from steelyard.science.register import Message

from . import service
from .people import CLEAR
from .requests import REQUESTS
from .service import ask
from .words import notes

Json = dict[str, Any]
PREGNANT = CLEAR | {"is_pregnant": True}
GROUPS: dict[str, Callable[[Json], Any]] = {
    "minor": lambda asked: asked["profile"].update(age_years=16),
    "disorder": lambda asked: asked.update(screening=CLEAR | {"eating_disorder": "current"}),
    "history": lambda asked: asked.update(screening=CLEAR | {"eating_disorder": "past"}),
    "pregnant": lambda asked: (asked["profile"].update(sex="female"), asked.update(screening=PREGNANT)),
}
SIZES = {
    "plan_phases": 60, "forecast_intake": 30, "decide_phase": 20, "review_phase": 60, "plan_season": 20,
    "compare_strategies": 6, "optimise_season": 6, "read_trend": 60, "estimate_maintenance": 20,
}  # fmt: skip
ASKED = [(operation, group) for operation in SIZES for group in GROUPS]


def told(operation: str, group: str, size: int) -> Iterator[tuple[str, str]]:
    """Tag and text of every message that such people are told, refusals included."""
    rng = random.Random(f"{operation}{group}")
    for _ in range(size):
        request = REQUESTS[operation](rng)
        GROUPS[group](request)
        answered = ask(operation, request)
        if answered.status == 422:
            yield "en", answered.body.get("detail", "")
        for note in notes(answered.body):
            yield "en", note["text"]
            if note["code"] in ENGLISH.codes and "params" in note:
                message = Message(note["code"], note["params"])
                yield from ((tag, said(message, tag)) for tag in LANGUAGES if tag != "en")


def found_in(operation: str, group: str, size: int) -> list[tuple[str, str, str]]:
    """What of it speaks of leanness."""
    return [(tag, what, text) for tag, text in told(operation, group, size) if (what := speaks(tag, text)) is not None]


@pytest.mark.parametrize(("operation", "group"), ASKED)
def test_they_hear_of_no_leanness(operation: str, group: str) -> None:
    assert found_in(operation, group, SIZES[operation]) == []


@pytest.mark.long
@pytest.mark.parametrize(("operation", "group"), ASKED)
def test_they_hear_of_no_leanness_in_many_more(operation: str, group: str) -> None:
    assert found_in(operation, group, 20 * SIZES[operation]) == []


def test_without_the_gate_they_would_hear_of_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """This check can fail: what the gate takes away is there."""
    monkeypatch.setattr("steelyard.http.wire.sparing.is_spared", lambda body: False)
    assert {what for group in GROUPS for _, what, _ in found_in("plan_phases", group, SIZES["plan_phases"])}


FORMS = [
    ("document_plan", "text/plain"),
    ("document_plan", "text/markdown"),
    ("document_plan", "text/calendar"),
    ("draw_plan", "application/vnd.vegalite.v6+json"),
]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("group", GROUPS)
@pytest.mark.parametrize(("operation", "accept"), FORMS)
def test_no_form_tells_them_of_it(operation: str, accept: str, group: str, language: str) -> None:
    """What is made to read aloud, to paste or to look at, of random plans of a gain."""
    rng = random.Random(group)
    texts: list[str] = []
    while len(texts) < 5:
        request = REQUESTS["plan_phases"](rng)
        GROUPS[group](request)
        request["phase"] = {"kind": "gain", "weeks": 12}
        answered = service.ask(operation, request, accept=accept, language=language)
        assert answered.status < 500
        texts += [answered.text.replace("|", "\n")] if answered.is_answer else []
    assert [what for text in texts if (what := labelled(language, text)) is not None] == []
