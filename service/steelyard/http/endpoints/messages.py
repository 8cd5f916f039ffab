"""GET /v1/messages: the texts of all codes in every language, as the files that the service itself reads."""

from steelyard.store.keys import Scope

from ..languages import ENGLISH, LANGUAGES, parameters
from ..operation.operation import constant_document
from ..schemas.messages import Language, MessageCatalogue, MessageCode
from ..wire.request_id import CONTRACT_VERSION


@constant_document(
    "/v1/messages",
    operation_id="list_messages",
    tag="messages",
    summary="List all message codes, for whom each is, and their texts in every language",
    scope=Scope.METHODS,
)
def list_messages() -> MessageCatalogue:
    """The texts of the codes that answers carry, so that a client can say them in its own language.

    Answers as JSON are in English, and are the same bytes whatever language is asked for. Their reasons, cautions,
    notes and guard rails carry a code and parameters. A language's texts are one Fluent resource (Project Fluent,
    syntax 1.0), for which there are libraries in many languages of programming: give it to one with the language's
    `locale`, ask it for the message of a code, and hand it the parameters. A parameter called `date`, or whose name
    ends in `_date`, is handed over as a date (ISO 8601 on the wire); the others are numbers, codes, which the texts
    put into words, or words of the caller's own. No function beside the syntax's own `NUMBER` and `DATETIME` is used.
    Errors in a request are told to developers, in English.
    """
    return MessageCatalogue(
        contract_version=CONTRACT_VERSION,
        languages=tuple(
            Language(tag=one.tag, name=one.name, locale=one.locale, fluent=one.source) for one in LANGUAGES.values()
        ),
        messages=tuple(
            MessageCode(code=code, audience=ENGLISH.audiences[code].value, params=tuple(sorted(parameters(code))))
            for code in ENGLISH.codes
        ),
    )
