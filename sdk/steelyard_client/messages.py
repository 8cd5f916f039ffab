"""What answers say, in another language."""

from datetime import date
from decimal import Decimal
from functools import cached_property
from typing import TYPE_CHECKING, Any

from .generated.models import (
    Attention,
    FieldProblem,
    GuardRail,
    MessageCatalogue,
    Note,
    RefusedStrategy,
    RosterPlace,
    Said,
)
from .generated.types import Unset
from .received import Answered

if TYPE_CHECKING:
    from fluent.runtime import FluentBundle


class Messages(Answered, MessageCatalogue):
    """What ``list_messages`` answers: fetch it once, and keep it as long as the service's version."""

    def __repr__(self) -> str:
        return f"<Messages {len(self.messages)} codes in {', '.join(language.tag for language in self.languages)}>"

    def localise(self, said: Note | GuardRail | RefusedStrategy | FieldProblem, language: str) -> str:
        """The text of a reason, caution, note, guard rail or refusal in a language such as ``de``.

        A region is ignored (``de-AT`` is ``de``). The English text of the answer is returned for a code that this
        catalogue does not have, as an error in a request. Raises ``KeyError`` for a language that is not there,
        ``TypeError`` for a text of an ``attention`` (see ``localise_attention``), and ``ImportError`` where the extra
        ``languages`` is not installed.
        """
        if isinstance(said, Said):
            raise TypeError("a text of an attention has no params of its own: give the whole to localise_attention")
        english = said.detail if isinstance(said, FieldProblem) else said.text
        params = None if isinstance(said.params, Unset) else said.params.additional_properties
        return self._said(said.code, english, params, language)

    def localise_attention(self, attention: Attention | RosterPlace, language: str) -> tuple[str, str]:
        """Why to look at somebody, and what to do, in a language; of a review's ``attention`` or a place on a roster.

        The parameters of both texts are the other fields. Raises as ``localise`` does.
        """
        asked = attention.attention if isinstance(attention, RosterPlace) else attention
        change = 0.0 if isinstance(asked.change_kcal, Unset) else asked.change_kcal
        last = None if isinstance(asked.last_entry_date, Unset) else asked.last_entry_date
        silent = attention.days_silent if isinstance(attention, RosterPlace) else None
        days = 0 if last is None else (asked.as_of_date - last).days
        params = {
            "verdict": asked.verdict,
            "step_kcal": abs(change),
            "direction": "less" if change < 0 else "more",
            "days": days if silent is None else silent,
        }
        reason, action = (self._said(said.code, said.text, params, language) for said in (asked.reason, asked.action))
        return reason, action

    def _said(self, code: str, english: str, params: dict[str, Any] | None, language: str) -> str:
        tag = language.partition("-")[0].lower()
        tags = sorted(one.tag for one in self.languages)
        if tag not in tags:
            raise KeyError(f"there is no {language!r}, only {', '.join(tags)}")
        bundle = self._bundle(tag)
        if not bundle.has_message(code) or params is None:
            return english
        pattern = bundle.get_message(code).value
        if pattern is None:
            return english
        text, errors = bundle.format_pattern(pattern, _arguments(params))
        return english if errors else str(text)  # its parameters have changed since this catalogue was fetched

    def audience(self, code: str) -> str | None:
        """For whom a code's message is: ``member``, ``coach`` or ``developer``; None for one that is not here."""
        return self._audiences.get(code)

    @cached_property
    def _audiences(self) -> dict[str, str]:
        return {message.code: message.audience for message in self.messages}

    @cached_property
    def _bundles(self) -> "dict[str, FluentBundle]":
        return {}

    def _bundle(self, tag: str) -> "FluentBundle":
        if tag not in self._bundles:
            try:
                from fluent.runtime import FluentBundle, FluentResource
                from fluent.runtime.types import fluent_number
            except ImportError as error:
                raise ImportError("for other languages: pip install 'steelyard-client[languages]'") from error

            def number(value: Any, **options: Any) -> Any:
                """As the library has it, but what rounds to nothing has no sign: the service prints no "-0"."""
                digits = options.get("maximumFractionDigits")
                is_nothing = isinstance(value, float) and digits is not None and not _rounded(value, int(digits))
                return fluent_number(0 if is_nothing else value, **options)

            (language,) = (one for one in self.languages if one.tag == tag)
            bundle = FluentBundle([language.locale], functions={"NUMBER": number}, use_isolating=False)
            bundle.add_resource(FluentResource(language.fluent))
            self._bundles[tag] = bundle
        return self._bundles[tag]


def _rounded(value: float, digits: int) -> Decimal:
    """As the library rounds: the digits that are printed, of which a half goes to the even one."""
    return round(Decimal(str(value)), digits)


def _arguments(params: dict[str, Any]) -> dict[str, Any]:
    """Parameters as Fluent takes them: dates as dates."""
    return {
        name: date.fromisoformat(value) if name == "date" or name.endswith("_date") else value
        for name, value in params.items()
    }
