"""Any language, by the library (babel's numbers, dates and plurals): for documents, which are made one at a time."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from functools import cache
from typing import TYPE_CHECKING, Any

from steelyard.science.register import Message

from .english import compiled
from .parsing import LANGUAGES

if TYPE_CHECKING:
    from fluent.runtime import FluentBundle


def said(message: Message, tag: str) -> str:
    """The text of a message in a language of ``LANGUAGES``."""
    return said_code(message.code, message.params, tag)


def said_code(name: str, params: Mapping[str, Any], tag: str) -> str:
    """The text of an entry. Raises ``ValueError`` where its parameters are not those of the text."""
    if tag == "en":
        return compiled(name)(params)
    bundle = bundle_of(tag)
    value = bundle.get_message(name).value
    if value is None:
        raise ValueError(f"{tag}: {name} has no text")
    text, errors = bundle.format_pattern(value, arguments(params))
    if errors:
        raise ValueError(f"{tag}: {name}: {errors[0]}")
    return str(text)


def arguments(params: Mapping[str, Any]) -> dict[str, Any]:
    """Parameters as the library takes them: dates as dates."""
    return {
        name: date.fromisoformat(value) if name == "date" or name.endswith("_date") else value
        for name, value in params.items()
    }


@cache
def bundle_of(tag: str) -> "FluentBundle":
    """The texts of a language, ready to be filled in."""
    from fluent.runtime import FluentBundle, FluentResource  # with the first document in it, not with the start
    from fluent.runtime.types import fluent_number

    def number(value: Any, **options: Any) -> Any:
        """As the library has it, and as English does: what rounds to nothing has no sign."""
        digits = options.get("maximumFractionDigits")
        # As the library rounds: the digits that are printed, of which a half goes to the even one.
        is_nothing = isinstance(value, float) and digits is not None and not round(Decimal(str(value)), int(digits))
        return fluent_number(0 if is_nothing else value, **options)

    language = LANGUAGES[tag]
    # Without marks of direction, which are for mixed scripts.
    bundle = FluentBundle([language.locale], functions={"NUMBER": number}, use_isolating=False)
    bundle.add_resource(FluentResource(language.source))
    return bundle
