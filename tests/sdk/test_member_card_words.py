"""The member card's own words: in every language that the service says its messages in."""

import re

from examples.local_service import ROOT
from steelyard.http.languages import LANGUAGES

CARD = (ROOT / "sdk" / "member_card" / "steelyard-plan.js").read_text(encoding="utf-8")
WORDS = {
    tag: dict(re.findall(r"^      (\w+):\s*(.+?),$(?=\n      \w|\n\Z)", block, re.MULTILINE | re.DOTALL))
    for tag, block in re.findall(r"^    ([a-z]{2}): \{\n(.*?)^    \},$", CARD, re.MULTILINE | re.DOTALL)
}


def placeholders(text: str) -> set[str]:
    return set(re.findall(r"\$\{(\w+)\}", text))


def test_the_card_has_every_language_of_the_messages() -> None:
    assert WORDS.keys() == LANGUAGES.keys()


def test_every_language_has_the_same_words() -> None:
    assert len(WORDS["en"]) > 40
    for tag, words in WORDS.items():
        assert words.keys() == WORDS["en"].keys(), tag
        for name, text in words.items():
            assert placeholders(text) == placeholders(WORDS["en"][name]), (tag, name)
