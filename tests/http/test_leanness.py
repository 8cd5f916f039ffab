"""What speaks of leanness is declared so, in every language: that keeps it from those who are spared it."""

import random

import pytest
from leanness_words import WORDS, is_told, template_speaks
from steelyard.http.languages import ENGLISH, INSTEAD, LANGUAGES, parameters, said, spared, spared_text
from steelyard.http.rendering.wording import Words
from steelyard.science.register import Message, say

from .test_languages import filled

SPARED = "_SPARED"


@pytest.mark.parametrize("tag", LANGUAGES)
def test_no_template_speaks_of_leanness_undeclared(tag: str) -> None:
    entries = LANGUAGES[tag].entries
    found = {
        code: what
        for code in filter(is_told, entries)
        if code not in ENGLISH.of_leanness and (what := template_speaks(tag, entries, code)) is not None
    }
    assert found == {}


def test_what_is_declared_speaks_of_leanness() -> None:
    """In some language at least: nothing is kept from anybody without need."""
    spoken = {code for tag, language in LANGUAGES.items() for code in filter(is_told, language.entries)
              if template_speaks(tag, language.entries, code) is not None}  # fmt: skip
    assert ENGLISH.of_leanness - spoken == set()


@pytest.mark.parametrize("code", ENGLISH.codes)
def test_what_is_left_of_a_message_speaks_of_no_leanness(code: str) -> None:
    """In the text that is sent, in each language, with no figure beside it that the text does not show."""
    for seed in range(4):
        told = spared(Message(code, filled(code, random.Random(f"{code}{seed}"))))
        if told is None:
            assert code in ENGLISH.of_leanness
            continue
        assert told.params.keys() <= parameters(told.code)
        for tag in LANGUAGES:
            text = said(told, tag)
            # The checks of templates know an amount of dietary fat from one of body fat; here there is but the text.
            assert not WORDS[tag].search(text), (tag, text)


def test_what_is_told_instead_stands_beside_what_it_replaces() -> None:
    replaced = {code.removesuffix(SPARED) for code in ENGLISH.codes if code.endswith(SPARED)}
    assert replaced <= ENGLISH.of_leanness
    assert replaced


def test_no_form_has_words_of_leanness_for_them() -> None:
    """Where nothing is told in its place, asking for such a text is a fault, and not a line without it."""
    texts = {name for name in ENGLISH.of_leanness if not name.isupper()}
    instead = {name for name in ENGLISH.entries if name.endswith("-spared")}
    assert {name.removesuffix("-spared") for name in instead} < texts
    assert all(language.entries.keys() >= texts | instead for language in LANGUAGES.values())
    for name in texts:
        if f"{name}-spared" in instead:
            assert parameters(spared_text(name)) <= parameters(name)
            continue
        with pytest.raises(LookupError, match=name):
            Words("en", spares=True).say(name)


def test_a_message_that_may_speak_does_not() -> None:
    asked = say("REFUSED_BODY_FAT", speaks="yes", fat_percent=12.5, limit_percent=14)
    assert spared(asked) == say("REFUSED_BODY_FAT", speaks="no")
    assert spared(say("SIZE_OF_GAIN", surplus_kcal=300, weeks=9, lean_kg=1.5, fat_kg=1.1)) == say(
        "SIZE_OF_GAIN_SPARED", surplus_kcal=300, weeks=9
    )
    assert spared(INSTEAD) == INSTEAD
