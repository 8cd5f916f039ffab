"""GET /v1/messages: the texts of all codes, in English and every language of ``languages``.

A language is a file: ``languages/<tag>.json`` with its name, decimal mark, words, and a text for every code. A code
without a text in it, or a text with other parameters than the English one, is an error when the catalogue is made.
"""

from importlib.resources import files
from string import Formatter

import msgspec

from steelyard.science import catalogue

from ..operation.operation import Scope, constant_document
from ..schemas.messages import Language, MessageCatalogue, MessageTexts, Word
from ..wire.request_id import CONTRACT_VERSION

ENGLISH = Language(tag="en", name="English", decimal_mark=".")
ENGLISH_TEXTS = dict(catalogue.templates())


class Translation(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The content of a language's file."""

    name: str
    decimal_mark: str
    words: dict[str, str]
    texts: dict[str, str]


def translations() -> dict[str, Translation]:
    """Every language beside English, by its tag."""
    found = sorted(files(__package__).joinpath("languages").iterdir(), key=lambda file: file.name)
    return {
        file.name.removesuffix(".json"): msgspec.json.decode(file.read_bytes(), type=Translation)
        for file in found
        if file.name.endswith(".json")
    }


def parameters(text: str) -> dict[str, str]:
    """The parameters of a text, each with its form."""
    return {name: form or "" for _, name, form, _ in Formatter().parse(text) if name is not None}


def catalogue_of(english: dict[str, str], others: dict[str, Translation]) -> MessageCatalogue:
    """The catalogue of messages. Raises ``ValueError`` where a language lacks a code or differs in a parameter."""
    for tag, translation in others.items():
        if astray := translation.texts.keys() ^ english.keys():
            raise ValueError(f"{tag}: codes without a text, or texts without a code: {', '.join(sorted(astray))}")
        for code, text in english.items():
            if parameters(text) != parameters(translation.texts[code]):
                raise ValueError(f"{tag}: {code} has other parameters than in English")
    words = sorted({word for translation in others.values() for word in translation.words})
    return MessageCatalogue(
        contract_version=CONTRACT_VERSION,
        languages=(
            ENGLISH,
            *(Language(tag=tag, name=t.name, decimal_mark=t.decimal_mark) for tag, t in others.items()),
        ),
        messages=tuple(
            MessageTexts(
                code=code,
                params=tuple(sorted(parameters(english[code]))),
                texts={ENGLISH.tag: english[code], **{tag: t.texts[code] for tag, t in others.items()}},
            )
            for code in sorted(english)
        ),
        words=tuple(
            Word(text=word, texts={tag: t.words[word] for tag, t in others.items() if word in t.words})
            for word in words
        ),
    )


@constant_document(
    "/v1/messages",
    operation_id="list_messages",
    tag="messages",
    summary="List the texts of all message codes, in every language",
    scope=Scope.METHODS,
)
def list_messages() -> MessageCatalogue:
    """The texts of the codes that answers carry, so that a client can say them in its own language.

    Answers are in English, and are the same bytes whatever language is asked for. Their reasons, cautions, notes and
    guard rails carry a code and parameters; the text is the template of that code with the parameters put in. A form
    is one of Python's: `.1f` is one decimal, `+` shows the sign, `g` is as short as can be, `d` a whole number, `.0%`
    a fraction as a percentage. Dates are ISO 8601. A parameter whose value is one of `words`, or a list of them
    separated by a comma, is replaced by that; any other word stays as it is. Errors in a request are told to
    developers, in English.
    """
    return catalogue_of(ENGLISH_TEXTS, translations())
