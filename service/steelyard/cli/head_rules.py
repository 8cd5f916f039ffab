"""What the head of a request must hold and must not, beyond what the parser checks.

Sources: RFC 9110 (Fielding, Nottingham, Reschke: HTTP Semantics, 2022), RFC 9112 (the same: HTTP/1.1, 2022).
"""

import re
from collections.abc import Sequence

from steelyard.http.wire.problems import BAD_REQUEST, HEAD_TOO_LARGE, PATH_TOO_LONG, TRANSFER_CODING, ProblemKind

HEAD_BYTES = 65_536
FIELDS = 100
PATH_BYTES = 8_192

_HOST, _TRANSFER_ENCODING = b"host", b"transfer-encoding"
# Fields of one value that the service goes by: of two lines one would be believed here and the other by a proxy in
# front (RFC 9110 5.3 allows several lines for lists alone). The parser refuses two lengths by itself.
_SINGLE = frozenset({_HOST, b"authorization", b"content-type"})
_LOOKED_AT = _SINGLE | {_TRANSFER_ENCODING}
# RFC 9112 3.2: another value is a 400. A name is whatever RFC 3986 3.2.2 allows; who spoke of a user was misled.
_HOST_VALUE = re.compile(rb"(?:\[[0-9A-Fa-f:.]+\]|[A-Za-z0-9._~!$&'()*+,;=%-]*)(?::[0-9]*)?")
# They say where a message ends and what becomes of the connection, which is settled by then (RFC 9110 6.5.1).
FRAMING = frozenset(
    {b"connection", b"content-length", b"keep-alive", b"proxy-connection", _TRANSFER_ENCODING, b"upgrade"}
)


def fault(method: bytes, version: str, target: bytes, fields: Sequence[tuple[bytes, bytes]]) -> ProblemKind | None:
    """What is wrong with a head, if anything. Names of ``fields`` are in lower case."""
    # RFC 9112 3.2: a target has no fragment; for what stands in front it would be a second spelling of the path.
    if version not in ("1.1", "1.0") or method == b"CONNECT" or b"#" in target:
        return BAD_REQUEST
    if len(target) > PATH_BYTES:
        return PATH_TOO_LONG
    if len(fields) > FIELDS:
        return HEAD_TOO_LARGE
    seen: set[bytes] = set()
    for name, value in fields:
        if name in _LOOKED_AT:
            if name in seen and name in _SINGLE:
                return BAD_REQUEST
            seen.add(name)
            if name == _TRANSFER_ENCODING and (coding := value.strip(b" \t").lower()) != b"chunked":
                # RFC 9112 6.3: nobody knows where a body without chunks ends; 6.1: a coding that is not known is a 501.
                last = coding.rpartition(b",")[2].strip(b" \t")
                return TRANSFER_CODING if last == b"chunked" else BAD_REQUEST
            if name == _HOST and not _HOST_VALUE.fullmatch(value.strip(b" \t")):
                return BAD_REQUEST
    # RFC 9112 3.2: no host is a 400; RFC 9112 6.1: chunks in HTTP/1.0 are faulty framing.
    if version == "1.1":
        return None if _HOST in seen else BAD_REQUEST
    return BAD_REQUEST if _TRANSFER_ENCODING in seen else None


def is_long(fields: Sequence[tuple[bytes, bytes]]) -> bool:
    """Whether the fields are longer than a head may be."""
    return sum(len(name) + len(value) for name, value in fields) > HEAD_BYTES


def without_upgrade(method: bytes, target: bytes, version: str, fields: Sequence[tuple[bytes, bytes]]) -> bytes:
    """The head again, without the wish for another protocol (RFC 9110 7.8: a server may ignore it)."""
    lines = [
        b"%b %b HTTP/%b" % (method, target, version.encode("ascii")),
        *(b"%b: %b" % field for field in fields if field[0] != b"upgrade"),
    ]
    return b"\r\n".join(lines) + b"\r\n\r\n"
