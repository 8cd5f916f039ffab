"""Every Python example of the README and the guides runs against a live server, and prints what the page says."""

import contextlib
import io
import re
from pathlib import Path

import pytest
from examples.local_service import ROOT, LocalService
from steelyard.http.endpoints.batch_kinds import BatchOperation

GUIDES = sorted((ROOT / "service" / "steelyard" / "http" / "pages" / "guides").glob("*.md"))
# A block of Python, and the block of text after it, if one follows: what it prints, with `...` for anything.
BLOCK = re.compile(r"^```python\n(.*?)^```\n(?:\n```text\n(.*?)^```)?", re.MULTILINE | re.DOTALL)


def fits(printed: str, expected: str) -> bool:
    """Whether each expected line is there, in order and number, `...` standing for anything within a line."""
    lines, patterns = printed.rstrip("\n").split("\n"), expected.rstrip("\n").split("\n")
    if patterns[-1].startswith("0 ") and len(patterns) < len(lines):
        lines = lines[: len(patterns)]  # the first rows of a table
    return len(lines) == len(patterns) and all(
        re.fullmatch(".*".join(map(re.escape, pattern.split("..."))), line)
        for line, pattern in zip(lines, patterns, strict=True)
    )


def test_the_comparison_can_fail() -> None:
    assert fits("a 12 b\n", "a ... b\n")
    assert not fits("a 12 c\n", "a ... b\n")
    assert not fits("a\nb\n", "a\n")


@pytest.mark.parametrize("guide", GUIDES, ids=[guide.stem for guide in GUIDES])
def test_the_examples_of_a_guide_print_what_it_says(
    guide: Path, live: LocalService, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("STEELYARD_URL", live.url)
    monkeypatch.setenv("STEELYARD_KEY", live.key)
    monkeypatch.setenv("NO_PROXY", "127.0.0.1")
    monkeypatch.chdir(tmp_path)
    blocks = BLOCK.findall(guide.read_text(encoding="utf-8"))
    assert blocks
    names: dict[str, object] = {"__name__": "__main__"}
    for code, expected in blocks:
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            exec(compile(code, guide.name, "exec"), names)
        assert fits(printed.getvalue(), expected), f"printed:\n{printed.getvalue()}\nbut the guide says:\n{expected}"
    assert not list(tmp_path.iterdir())


def test_the_lines_of_the_readme_print_what_it_says(live: LocalService, capsys: pytest.CaptureFixture[str]) -> None:
    """Five lines, and the ten of the weekly loop that go on from there."""
    page = (ROOT / "README.md").read_text("utf-8")
    blocks = BLOCK.findall(
        page.replace("http://127.0.0.1:8000", live.url).replace("<the key that make run printed>", live.key)
    )
    assert [len([line for line in code.splitlines() if line]) for code, _ in blocks] == [5, 10]
    names: dict[str, object] = {"__name__": "__main__"}
    for code, expected in blocks:
        exec(compile(code, "README.md", "exec"), names)
        assert capsys.readouterr().out == expected


def test_the_integrators_page_says_what_a_batch_may_hold_and_what_a_request_costs() -> None:
    (guide,) = (each for each in GUIDES if each.stem == "gym-integrator")
    page = " ".join(guide.read_text("utf-8").split())
    said = {
        "decide_phase": "decisions",
        "estimate_body_composition": "body composition",
        "estimate_maintenance": "maintenance",
        "forecast_intake": "forecasts",
        "plan_phases": "plans",
        "read_trend": "trends",
        "review_phase": "reviews",
    }
    assert said.keys() == set(BatchOperation)
    sentence = page.partition("A batch may hold ")[2].partition(".")[0]
    assert set(said.values()) == set(re.split(r", | and ", sentence))
    assert "`x-steelyard-units`" in page
