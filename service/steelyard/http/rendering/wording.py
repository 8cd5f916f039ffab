"""Texts, numbers and dates of pictures and documents, in one language. Spaces of a number do not break."""

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal
from functools import cache
from typing import Any, NamedTuple, Protocol

from steelyard.science.register import Message

from ..languages import LANGUAGES, said, said_code, spared, spared_text
from ..schemas.explanation import GuardRail
from ..schemas.shared_fields import Interval

NO_BREAK = "\u00a0"
_SIGN = re.compile(r"(?<![\w-])-(?=\d)")  # a number's, which no hyphen of a word is
# Warnings that a cap by the same rule has already said in its own words.
_SAID_BY_THE_CAP = ("WARNED_FAT_SUPPLY", "WARNED_HISTORY_UNKNOWN")


# Where it is said, weights are told that leave out what grows: no text has them for what a scale should show.
_WITHOUT_GROWTH = "WEIGHT_RISES_IN_PREGNANCY"


class Coded(Protocol):
    """A note or a guard rail: a text as its code and parameters."""

    @property
    def code(self) -> str: ...

    @property
    def params(self) -> dict[str, float | str]: ...


class Words(NamedTuple):
    """What a picture or a document says, in its language, and to whom it is about.

    ``spares``: they may be told nothing of leanness.
    """

    language: str
    spares: bool

    def say(self, name: str, **params: Any) -> str:
        """The text of an entry of the language's file; to those who are spared leanness the one in its place.

        Its minus signs are true ones. Messages have the answer's own, so that what a form tells is found in it.

        Raises ``LookupError`` where there is none for them.
        """
        return _SIGN.sub("−", said_code(spared_text(name) if self.spares else name, params, self.language))

    def texts(self, notes: Iterable[Coded]) -> list[str]:
        """The texts of notes and of guard rails, each on one line, with true minus signs."""
        return [_SIGN.sub("−", text) for text in self.told(Message(note.code, note.params) for note in notes)]

    def told(self, messages: Iterable[Message]) -> list[str]:
        """The texts of messages, each on one line, without those that are not told to whom it is about."""
        kept = (spared(message) if self.spares else message for message in messages)
        return [one_line(said(message, self.language)) for message in kept if message is not None]

    def number(self, value: float, digits: int = 1, *, is_change: bool = False, unit: str = "") -> str:
        """A number with a true minus sign, and never a minus zero; with its sign where it is a change."""
        rounded = round_as_written(value, digits)
        text = f"{rounded:+,.{digits}f}" if is_change and rounded else f"{rounded:,.{digits}f}"
        if self.language != "en":
            text = text.translate(_marks(self.language))
        text = text.replace("-", "−")
        return self.say("picture-percent", value=text) if unit == "%" else f"{text}{NO_BREAK}{unit}".rstrip(NO_BREAK)

    def values(
        self, value: Interval, digits: int = 1, *, is_change: bool = False, scale: float = 1.0, unit: str = ""
    ) -> str:
        """``81.9 kg (80.8 to 83.0)``."""
        ends = (value.mean, value.lower, value.upper)
        mean, lower, upper = (self.number(scale * end, digits, is_change=is_change) for end in ends)
        mean = self.say("picture-percent", value=mean) if unit == "%" else f"{mean} {unit}".rstrip()
        return f"{mean} ({lower} {self.say('picture-to')} {upper})".replace(" ", NO_BREAK)

    def changes(self, value: Interval, unit: str = "kg") -> str:
        """``−2.1 kg (−2.6 to −1.6)``."""
        return self.values(value, is_change=True, unit=unit)

    def percent(self, value: Interval) -> str:
        """A fraction as ``15.2% (12.8 to 17.6)``."""
        return self.values(value, scale=100, unit="%")

    def span(self, lower: float, upper: float, *, unit: str = "kg") -> str:
        """``2.3 to 4.5 kg``."""
        return f"{self.number(lower)} {self.say('picture-to')} {self.number(upper, unit=unit)}"

    def phase(self, kind: str) -> str:
        """The name of a kind of phase."""
        return self.say("phase-name", kind=kind)

    def ranges(self, value: Interval) -> str:
        """What the ranges in parentheses are."""
        return self.say("picture-ranges", percent=100 * value.coverage)

    def strategy(self, label: str) -> str:
        """The name of a ready-made strategy, or the label that a caller gave to their own."""
        return one_line(self.say("strategy-name", strategy=label))


def round_as_written(value: float, digits: int) -> float:
    """A number as texts and tables round it: of -0.175 the float itself is a little nearer to -0.17."""
    return float(round(Decimal(str(float(value))), digits)) + 0.0


@cache
def _marks(language: str) -> dict[int, str]:
    """What stands in a language for the marks of an English number."""
    from babel.numbers import get_decimal_symbol, get_group_symbol  # with the first picture in it

    locale = LANGUAGES[language].locale.replace("-", "_")
    return {ord("."): get_decimal_symbol(locale), ord(","): get_group_symbol(locale)}


def told_once(rails: Sequence[GuardRail]) -> list[GuardRail]:
    """Guard rails as people are told them: what capped something is not followed by a warning of the same thing."""
    capped = {rail.id for rail in rails if rail.action == "capped"}
    return [rail for rail in rails if rail.id not in capped or rail.code not in _SAID_BY_THE_CAP]


def one_line(text: str) -> str:
    """``text`` without line breaks or other control characters; a space that does not break stays one."""
    shown = "".join(c if c.isprintable() or c == NO_BREAK else " " for c in text)
    return " ".join(part for part in shown.split(" ") if part)


def tells_weight(cautions: Iterable[Coded]) -> bool:
    """Whether a scale is to show what an answer with these cautions forecasts, so that texts and pictures tell it."""
    return all(caution.code != _WITHOUT_GROWTH for caution in cautions)
