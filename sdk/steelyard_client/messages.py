"""What answers say, in another language."""

import re
from collections.abc import Mapping
from functools import cached_property
from typing import Any

from .generated.models import FieldProblem, GuardRail, MessageCatalogue, Note, RefusedStrategy
from .generated.types import Unset

_NUMBER = r"([+\-−]?\d+(?:[.,]\d+)?)"
_PLACE = re.compile(r"\{(\w+)(?::([^{}]*))?\}")


class Messages(MessageCatalogue):
    """What ``list_messages`` answers: fetch it once, and keep it as long as the service's version."""

    def __repr__(self) -> str:
        return f"<Messages {len(self.messages)} codes in {', '.join(language.tag for language in self.languages)}>"

    def localise(self, said: Note | GuardRail | RefusedStrategy | FieldProblem, language: str) -> str:
        """The text of a reason, caution, note, guard rail or refusal in a language such as ``de``.

        A region is ignored (``de-AT`` is ``de``). The English text of the answer is returned for a code that this
        catalogue does not have, as an error in a request; and words in it that have no translation stay English.
        Raises ``KeyError`` for a language that is not there.
        """
        tag = language.partition("-")[0].lower()
        marks = {one.tag: one.decimal_mark for one in self.languages}
        if tag not in marks:
            raise KeyError(f"there is no {language!r}, only {', '.join(sorted(marks))}")
        english = said.detail if isinstance(said, FieldProblem) else said.text
        template = self._templates.get(said.code, {}).get(tag)
        if template is None or isinstance(said.params, Unset):
            return english
        params: Mapping[str, Any] = said.params.additional_properties

        def fill(place: re.Match[str]) -> str:
            value = params[place[1]]
            if isinstance(value, str):
                return self._word(value, tag, marks[tag])
            return format(value, place[2] or "").replace(".", marks[tag])

        try:
            return _PLACE.sub(fill, template)
        except (KeyError, ValueError):  # a code whose parameters have changed since this catalogue was fetched
            return english

    @cached_property
    def _templates(self) -> dict[str, dict[str, str]]:
        return {message.code: message.texts.additional_properties for message in self.messages}

    def _word(self, text: str, tag: str, mark: str) -> str:
        """A phrase, or each of several with commas between; unknown ones stay as they are."""
        found = self._phrase(text, tag, mark)
        if found is None:
            parts = text.split(", ")
            return ", ".join(self._phrase(part, tag, mark) or part for part in parts)
        return found

    def _phrase(self, text: str, tag: str, mark: str) -> str | None:
        for word in self.words:
            known = word.texts.additional_properties.get(tag)
            if known is None:
                continue
            if word.text == text:
                return known
            if "{number}" in word.text:
                pattern = re.escape(word.text).replace(re.escape("{number}"), _NUMBER)
                if match := re.fullmatch(pattern, text):
                    return known.replace("{number}", match[1].replace(".", mark))
        return None
