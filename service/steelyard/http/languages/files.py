"""The files of languages, taken apart into entries without being parsed: a start must not wait for texts.

Of a file's entries those in UPPER_SNAKE are messages; the others (lower case, with hyphens) are what messages share.
``language-name`` and ``language-locale`` say which language it is. A group comment (``## member``) says for whom the
messages after it are; that of the English file counts.
"""

import re
from collections.abc import Iterator, Mapping
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import NamedTuple

_ENTRY = re.compile(r"(-?[A-Za-z][A-Za-z0-9_-]*) *=")
_PARAMETER = re.compile(r"\$([A-Za-z][A-Za-z0-9_]*)")
_SHARED = re.compile(r"\{ *(-?[a-z][a-z0-9-]*) *\}")


class MessageReader(StrEnum):
    """For whom a message is."""

    MEMBER = "member"
    COACH = "coach"
    DEVELOPER = "developer"


class LanguageFile(NamedTuple):
    """A language: its tag (BCP 47), its name for itself, the locale of its numbers and dates, and its texts."""

    tag: str
    name: str
    locale: str
    source: str
    entries: Mapping[str, str]
    audiences: Mapping[str, MessageReader]

    @property
    def codes(self) -> list[str]:
        """The codes of its messages, in the order of the alphabet."""
        return sorted(name for name in self.entries if name.isupper())


def read(tag: str, source: str) -> LanguageFile:
    """A file taken apart. Raises ``ValueError`` where an entry is there twice."""
    entries: dict[str, str] = {}
    audiences: dict[str, MessageReader] = {}
    group, name = "", ""
    for line in source.splitlines(keepends=True):
        if line.startswith("## "):
            group = line[3:].strip()
        elif found := _ENTRY.match(line):
            name = found[1]
            if name in entries:
                raise ValueError(f"{tag}: {name} is there twice")
            entries[name] = line
            if name.isupper():
                audiences[name] = MessageReader(group)
        elif name and line[0] in " }\n":
            entries[name] += line
    return LanguageFile(tag, _value(entries, "language-name"), _value(entries, "language-locale"), source, entries,
                        audiences)  # fmt: skip


def _value(entries: Mapping[str, str], name: str) -> str:
    return entries[name].partition("=")[2].strip()


def _found() -> Iterator[LanguageFile]:
    for file in sorted(files(__package__).iterdir(), key=lambda file: (file.name != "en.ftl", file.name)):
        tag, _, suffix = file.name.partition(".")
        if suffix == "ftl":
            yield read(tag, file.read_text(encoding="utf-8"))


LANGUAGES: Mapping[str, LanguageFile] = {language.tag: language for language in _found()}
ENGLISH = LANGUAGES["en"]


@cache
def parameters(name: str) -> frozenset[str]:
    """The parameters of a message, those of what it shares with others among them."""
    return parameters_in(ENGLISH, name)


def parameters_in(language: LanguageFile, name: str) -> frozenset[str]:
    """``parameters`` in another language."""
    text = language.entries[name]
    found = set(_PARAMETER.findall(text))
    for shared in _SHARED.findall(text.partition("=")[2]):
        found |= parameters_in(language, shared)
    return frozenset(found)
