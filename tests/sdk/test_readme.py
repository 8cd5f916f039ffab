"""Every example of the SDK's page runs against a live server."""

import re

import pytest
from examples.local_service import ROOT, LocalService

PAGE = (ROOT / "sdk" / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^## ([^\n]+)\n(?:(?!^## ).)*?^```python\n(.*?)^```", PAGE, re.MULTILINE | re.DOTALL)
EXPECTED = {
    "Five lines to a plan": PAGE.partition("`<Plan ")[2].partition(" ... ")[0],
    "The client": "-0.",
    "Async": "18.5",
    "Data frames": "2026-03-28",
    "Batches": "second 400 ",
    "Another language": "Das ist Information, kein ärztlicher Rat.",
    "Errors": "screening_unanswered",
    "Units": "185.0 (5, 11.0)",
}


def test_all_examples_are_found() -> None:
    assert {title for title, _ in BLOCKS} == set(EXPECTED)
    assert PAGE.count("```python") == len(BLOCKS)


def test_five_lines_are_five_lines() -> None:
    lines = dict(BLOCKS)["Five lines to a plan"].splitlines()
    assert len([line for line in lines if line]) == 5


@pytest.mark.parametrize(("title", "code"), BLOCKS, ids=[title for title, _ in BLOCKS])
def test_examples_run(
    title: str, code: str, live: LocalService, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("STEELYARD_URL", live.url)
    monkeypatch.setenv("STEELYARD_KEY", live.key)
    monkeypatch.setenv("NO_PROXY", "127.0.0.1")
    names: dict[str, object] = {"__name__": "__main__"}
    exec(compile(code, title, "exec"), names)
    printed = capsys.readouterr().out
    assert EXPECTED[title] in (printed or repr(names["plan"]))
