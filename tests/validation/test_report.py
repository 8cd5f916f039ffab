"""The committed page and picture are what ``make validate`` writes."""

from pathlib import Path

import pytest
from validation import picture, validate
from validation.cases import CASES
from validation.comparison import compare


@pytest.fixture(scope="module")
def rows() -> list[object]:
    return [row for case in CASES for row in compare(case)]


def test_the_page_is_current(rows: list) -> None:
    assert validate.REPORT.read_text(encoding="utf-8") == validate.report(rows), "run `make validate`"


def test_the_picture_is_the_same_every_time(rows: list, tmp_path: Path) -> None:
    # Not compared with the committed one, whose glyphs depend on the version of matplotlib.
    first, second = tmp_path / "1.svg", tmp_path / "2.svg"
    picture.draw(rows, first)
    picture.draw(rows, second)
    assert first.read_bytes() == second.read_bytes()
    assert validate.PICTURE.name in validate.REPORT.read_text(encoding="utf-8")
    assert validate.PICTURE.stat().st_size > 10_000
