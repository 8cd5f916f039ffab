"""A body that is sent with ``Content-Encoding: gzip`` (RFC 1952), unpacked as it is read.

What is unpacked comes a piece at a time, and the bounds of a body hold for it as for one that is sent as it is: once
they are passed nothing more is read, so that a small body cannot become a large one anywhere. A batch as a whole has no
such bound; there the ratio is one.
"""

import zlib
from typing import Any

from litestar.types import Receive

from .problems import BAD_REQUEST, BODY_TOO_LARGE, ProblemError

PIECE_BYTES = 65_536
# Judgement: lines of members pack to a tenth, one line over and over to a hundredth, zeros to a thousandth.
MOST_TIMES = 50
FREE_BYTES = 1_048_576  # so much may come of any body, however it is packed
_GZIP = frozenset({b"gzip", b"x-gzip"})  # RFC 9110 8.4.1.3: the two mean the same
_GZIP_ALONE = 31  # zlib's number for a gzip header, and the largest window


def is_packed(encoding: bytes) -> bool:
    """Whether a ``Content-Encoding`` says that the body is to be unpacked."""
    return encoding.strip().lower() in _GZIP


class Unpacked:
    """What ``receive`` gives, unpacked. Raises the problem for what is no gzip, or too much of it."""

    def __init__(self, receive: Receive) -> None:
        self._receive = receive
        self._inflate: Any = zlib.decompressobj(_GZIP_ALONE)
        self._packed = b""  # arrived and not unpacked yet
        self._has_more = True
        self._is_over = False
        self._read_bytes = self._made_bytes = 0

    async def __call__(self) -> Any:
        """The next piece of the body, or the news that the caller has gone."""
        if self._is_over:
            return await self._receive()
        while not (piece := self._unpack()):
            if not self._has_more:
                if not self._inflate.eof:
                    raise _broken("ends before it is whole")
                self._is_over = True
                return {"type": "http.request", "body": b"", "more_body": False}
            message: Any = await self._receive()
            if message["type"] == "http.disconnect":
                return message
            self._packed += message.get("body", b"")
            self._read_bytes += len(message.get("body", b""))
            self._has_more = message.get("more_body", False)
        return {"type": "http.request", "body": piece, "more_body": True}

    def _unpack(self) -> bytes:
        try:
            piece: bytes = self._inflate.decompress(self._packed, PIECE_BYTES)
        except zlib.error:
            raise _broken("is damaged, or none") from None
        self._packed = self._inflate.unconsumed_tail
        if self._inflate.unused_data:
            raise _broken("is followed by something else")
        self._made_bytes += len(piece)
        if self._made_bytes > max(FREE_BYTES, MOST_TIMES * (self._read_bytes - len(self._packed))):
            detail = f"Unpacked it is more than {MOST_TIMES} times as long as it was sent. Send it as it is."
            raise ProblemError(BODY_TOO_LARGE, detail)
        return piece


def _broken(what: str) -> ProblemError:
    return ProblemError(BAD_REQUEST, f"The body is sent as gzip (RFC 1952), which {what}.")
