"""Which language a caller likes best (RFC 9110 12.5.4, RFC 4647 3.4)."""

from .parsing import LANGUAGES

_MOST = 50  # entries that are read, of a field that may be as long as a head


def preferred(accept_language: str) -> str:
    """The tag of the language of ``LANGUAGES`` that an ``Accept-Language`` header likes best, English without any."""
    best, weight = "en", 0.0
    for part in accept_language.lower().split(",", _MOST)[:_MOST]:
        range_, _, quality = (text.strip() for text in part.partition(";"))
        try:
            wanted = float(quality.removeprefix("q=")) if quality else 1.0
        except ValueError:
            continue
        tag = range_.partition("-")[0]
        if tag in LANGUAGES and weight < wanted <= 1.0:
            best, weight = tag, wanted
    return best
