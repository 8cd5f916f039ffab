"""The catalogue of messages on the wire."""

from typing import Annotated

import msgspec
from msgspec import Meta


class Language(msgspec.Struct, frozen=True, kw_only=True):
    """A language in which every message is there."""

    tag: Annotated[str, Meta(description="Language tag (BCP 47).", examples=["de"])]
    name: Annotated[str, Meta(description="Its name for itself.", examples=["Deutsch"])]
    decimal_mark: Annotated[str, Meta(description="What stands before the decimals of a number.", examples=[","])]


class MessageTexts(msgspec.Struct, frozen=True, kw_only=True):
    """A code and its text in each language, with the same parameters."""

    code: Annotated[str, Meta(description="The code that answers carry.", examples=["NOT_MEDICAL_ADVICE"])]
    params: Annotated[tuple[str, ...], Meta(description="Names of its parameters.", examples=[["deficit_kcal"]])]
    texts: Annotated[
        dict[str, str],
        Meta(
            description="Text by language tag. A parameter stands as `{name}` or `{name:form}`.",
            examples=[{"en": "The deficit starts at {deficit_kcal:.0f} kcal/d, the usual size."}],
        ),
    ]


class Word(msgspec.Struct, frozen=True, kw_only=True):
    """A word or phrase that is the value of a parameter, in the other languages."""

    text: Annotated[
        str,
        Meta(
            description="As answers carry it; `{number}` stands for any number.",
            examples=["least intake of {number} kcal/d"],
        ),
    ]
    texts: Annotated[dict[str, str], Meta(description="The same by language tag.")]


class MessageCatalogue(msgspec.Struct, frozen=True, kw_only=True):
    """Every text that answers say to people, in every language there is."""

    contract_version: Annotated[str, Meta(description="Version of this contract.", examples=["1.0.0"])]
    languages: Annotated[tuple[Language, ...], Meta(description="English first: answers carry it.")]
    messages: Annotated[tuple[MessageTexts, ...], Meta(description="Sorted by code.")]
    words: Annotated[tuple[Word, ...], Meta(description="Sorted by text.")]
