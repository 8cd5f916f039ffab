"""The catalogue of messages on the wire."""

from typing import Annotated

import msgspec
from msgspec import Meta


class Language(msgspec.Struct, frozen=True, kw_only=True):
    """A language in which every message is there, with its texts."""

    tag: Annotated[str, Meta(description="Language tag (BCP 47).", examples=["de"])]
    name: Annotated[str, Meta(description="Its name for itself.", examples=["Deutsch"])]
    locale: Annotated[str, Meta(description="Locale of its numbers, dates and plurals (BCP 47).", examples=["de-DE"])]
    fluent: Annotated[
        str,
        Meta(
            description="Its texts as one Fluent resource (syntax 1.0): a message for each code.",
            examples=["REBOUND = Expect { NUMBER($carried_kg, maximumFractionDigits: 1) } kg more on the scale.\n"],
        ),
    ]


class MessageCode(msgspec.Struct, frozen=True, kw_only=True):
    """A code that answers carry: for whom it is, and its parameters."""

    code: Annotated[str, Meta(description="The code that answers carry.", examples=["NOT_MEDICAL_ADVICE"])]
    audience: Annotated[
        str,
        Meta(
            description="For whom it is: `member` may be read out to them as it is; `coach` and `developer` hold terms "
            "of the trade or names of fields. Extensible.",
            examples=["member"],
        ),
    ]
    params: Annotated[tuple[str, ...], Meta(description="Names of its text's parameters.", examples=[["deficit_kcal"]])]


class MessageCatalogue(msgspec.Struct, frozen=True, kw_only=True):
    """Every text that answers say to people, in every language there is."""

    contract_version: Annotated[str, Meta(description="Version of this contract.", examples=["1.0.0"])]
    languages: Annotated[tuple[Language, ...], Meta(description="English first: answers carry it.")]
    messages: Annotated[tuple[MessageCode, ...], Meta(description="Sorted by code.")]
