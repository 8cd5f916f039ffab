"""The files of languages, taken apart into entries without being parsed: a start must not wait for texts.

Of a file's entries those in UPPER_SNAKE are messages; the others (lower case, with hyphens) are what messages share.
``language-name`` and ``language-locale`` say which language it is. A group comment (``## member``) says for whom the
messages after it are; that of the English file counts. Whether they are ``of leanness`` the English file alone says.
"""

import re
from collections.abc import Iterator, Mapping
from enum import StrEnum
from functools import cache, cached_property
from importlib.resources import files

_ENTRY = re.compile(r"(-?[A-Za-z][A-Za-z0-9_-]*) *=")
_PARAMETER = re.compile(r"\$([A-Za-z][A-Za-z0-9_]*)")
_SHARED = re.compile(r"\{ *(-?[a-z][a-z0-9-]*) *\}")


class MessageReader(StrEnum):
    """For whom a message is."""

    MEMBER = "member"
    COACH = "coach"
    DEVELOPER = "developer"


class LanguageFile:
    """A language: its tag (BCP 47), and the texts of its file, which are taken apart when the first is asked for."""

    def __init__(self, tag: str, source: str) -> None:
        self.tag, self.source = tag, source

    @property
    def name(self) -> str:
        """Its name for itself."""
        return _value(self.entries, "language-name")

    @property
    def locale(self) -> str:
        """The locale of its numbers and dates."""
        return _value(self.entries, "language-locale")

    @property
    def entries(self) -> Mapping[str, str]:
        """Each entry's text by its name. Raises ``ValueError`` where one is there twice."""
        return self._parts[0]

    @property
    def audiences(self) -> Mapping[str, MessageReader]:
        """For whom each message is."""
        return self._parts[1]

    @property
    def of_leanness(self) -> frozenset[str]:
        """The messages and texts of forms that are not told to those to whom no leanness is spoken of."""
        return self._parts[2]

    @property
    def codes(self) -> list[str]:
        """The codes of its messages, in the order of the alphabet."""
        return sorted(name for name in self.entries if name.isupper())

    @cached_property
    def _parts(self) -> tuple[dict[str, str], dict[str, MessageReader], frozenset[str]]:
        entries: dict[str, str] = {}
        audiences: dict[str, MessageReader] = {}
        of_leanness: set[str] = set()
        group, name, is_of_leanness = "", "", False
        for line in self.source.splitlines(keepends=True):
            if line.startswith("## "):
                group, _, of_what = line[3:].strip().partition(", ")
                is_of_leanness = of_what == "of leanness"
            elif found := _ENTRY.match(line):
                name = found[1]
                if name in entries:
                    raise ValueError(f"{self.tag}: {name} is there twice")
                entries[name] = line
                if name.isupper():
                    audiences[name] = MessageReader(group)
                of_leanness |= {name} if is_of_leanness else set()
            elif name and line[0] in " }\n":
                entries[name] += line
        return entries, audiences, frozenset(of_leanness)


def _value(entries: Mapping[str, str], name: str) -> str:
    return entries[name].partition("=")[2].strip()


def _found() -> Iterator[LanguageFile]:
    for file in sorted(files(__package__).iterdir(), key=lambda file: (file.name != "en.ftl", file.name)):
        tag, _, suffix = file.name.partition(".")
        if suffix == "ftl":
            yield LanguageFile(tag, file.read_text(encoding="utf-8"))


LANGUAGES: Mapping[str, LanguageFile] = {language.tag: language for language in _found()}
ENGLISH = LANGUAGES["en"]


def is_of_attention(code: str) -> bool:
    """Whether a review says this of the attention that somebody needs: what a caller tells back may be anything."""
    return code.startswith("ATTENTION_") and code in ENGLISH.audiences


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
