"""Header fields that the service sends, as ASGI has them, and the reading of those that a caller sends."""

import math
from collections.abc import Iterator
from typing import TypeAlias

Header: TypeAlias = tuple[bytes, bytes]

ACCEPT_ENCODING = b"accept-encoding"
CACHE_CONTROL = b"cache-control"
CONTENT_ENCODING = b"content-encoding"
CONTENT_LANGUAGE = b"content-language"
CONTENT_LENGTH = b"content-length"
CONTENT_SECURITY_POLICY = b"content-security-policy"
CONTENT_TYPE = b"content-type"
ETAG = b"etag"
IF_NONE_MATCH = b"if-none-match"
VARY = b"vary"

MOST_WISHES = 50  # browsers have half a dozen
MOST_PARAMETERS = 8

FINGERPRINT_HEADER = "Steelyard-Fingerprint"
FINGERPRINT = FINGERPRINT_HEADER.lower().encode()

# What every response carries (OWASP REST Security Cheat Sheet, section "Security headers"). Transport security
# (RFC 6797) is for whatever ends TLS in front of the service.
ALWAYS: tuple[Header, ...] = (
    (b"x-content-type-options", b"nosniff"),
    (b"x-frame-options", b"DENY"),
    (b"referrer-policy", b"no-referrer"),
)
# What a response carries that says nothing else: it is not stored, and a browser that shows it loads nothing.
NO_STORE: Header = (CACHE_CONTROL, b"no-store")
NO_CONTENT_LOADED: Header = (CONTENT_SECURITY_POLICY, b"default-src 'none'; frame-ancestors 'none'")


def wishes(field: bytes) -> Iterator[tuple[str, list[str]]]:
    """The entries of a list of wishes (RFC 9110 12.5) in lower case, each with its parameters.

    Beyond as many as anybody has, nothing is read: a field may be as long as a head.
    """
    for part in field.decode("latin-1").lower().split(",", MOST_WISHES)[:MOST_WISHES]:
        name, *parameters = (text.strip() for text in part.split(";", MOST_PARAMETERS)[:MOST_PARAMETERS])
        yield name, parameters


def accepts_gzip(accept_encoding: bytes) -> bool:
    """Whether an ``Accept-Encoding`` header allows gzip (RFC 9110 12.5.3); without one, nothing is compressed."""
    qualities = {}
    for name, parameters in wishes(accept_encoding):
        qualities[name] = quality(parameters)
    return qualities.get("gzip", qualities.get("x-gzip", qualities.get("*", 0.0))) > 0


def quality(parameters: list[str]) -> float:
    """The weight among the parameters of a list entry (RFC 9110 12.4.2); 1 where there is none that is a number."""
    for parameter in parameters:
        name, _, value = parameter.partition("=")
        if name.strip() == "q":
            try:
                weight = float(value)
            except ValueError:
                return 1.0
            return weight if math.isfinite(weight) else 1.0
    return 1.0
