"""Lines of a request body as they arrive: never more of the body in memory than a line and a message."""

import asyncio
import re
from typing import Any, NamedTuple

from litestar.types import Receive

from .problems import BATCH_TOO_LONG, ProblemError

_BLANK_LINES = re.compile(rb"(?:[ \t\r]*+\n)++")


class Line(NamedTuple):
    """A line and its number from 1. ``content`` is None where it was longer than is read."""

    number: int
    content: bytes | None


class Disconnected(Exception):  # noqa: N818 - named for what happened
    """The caller has gone."""


class Ending(Exception):  # noqa: N818 - named for what happens
    """The process is told to end."""


class LineReader:
    """Splits the body at newlines. Blank lines are numbered and passed over, up to ``most_blank``."""

    def __init__(
        self,
        receive: Receive,
        *,
        line_bytes: int,
        idle_seconds: float,
        most_blank: int,
        ending: asyncio.Event | None = None,
    ) -> None:
        self._receive = receive
        self._ending = ending or asyncio.Event()
        self._line_bytes = line_bytes
        self._idle_seconds = idle_seconds
        self._most_blank = most_blank
        self._buffer = bytearray()
        self._searched = 0
        self._number = self._given = 0  # lines read, and of those the ones that were not blank
        self._is_skipping = False
        self._has_more = True
        self._watch: asyncio.Task[Any] | None = None

    @property
    def number(self) -> int:
        """How many lines were read, blank ones included."""
        return self._number

    async def next_lines(self, most_lines: int, most_bytes: int) -> list[Line]:
        """The lines that are there, at least one, at most so many; none at the end of the body.

        Raises ``Disconnected``, ``TimeoutError`` where nothing arrives in time, ``Ending``, or the problem of a body
        that cannot be read on, with no line taken.
        """
        # Of the next line, and not of its next byte, nor of blank lines, which could come for ever.
        deadline = asyncio.get_running_loop().time() + self._idle_seconds
        while True:
            if self._ending.is_set():
                raise Ending
            if self._number - self._given > self._most_blank:
                detail = f"More than {self._most_blank} of its lines are blank. Leave them out."
                raise ProblemError(BATCH_TOO_LONG, detail)
            lines = self._take(most_lines, most_bytes)
            self._given += len(lines)
            if lines or not self._has_more:
                self._notice_disconnect()
                return lines
            await self._read(deadline)

    def close(self) -> None:
        """Stop listening."""
        if self._watch is not None:
            self._watch.cancel()

    async def _read(self, deadline: float) -> None:
        message: Any = await self._next_message(deadline - asyncio.get_running_loop().time())
        if message["type"] == "http.disconnect":
            raise Disconnected
        self._buffer += message.get("body", b"")
        self._has_more = message.get("more_body", False)

    async def _next_message(self, seconds: float) -> Any:
        arriving, ending = asyncio.ensure_future(self._receive()), asyncio.ensure_future(self._ending.wait())
        try:
            await asyncio.wait((arriving, ending), timeout=max(0.0, seconds), return_when=asyncio.FIRST_COMPLETED)
            if arriving.done():
                return arriving.result()
            raise Ending if ending.done() else TimeoutError
        finally:
            arriving.cancel()
            ending.cancel()

    def _notice_disconnect(self) -> None:
        """Once the body is read, the next message can only say that the caller has gone."""
        if self._has_more:
            return
        if self._watch is None:
            self._watch = asyncio.ensure_future(self._receive())
        elif self._watch.done():
            raise Disconnected

    def _take(self, most_lines: int, most_bytes: int) -> list[Line]:
        buffer, start, taken = self._buffer, 0, 0
        lines: list[Line] = []
        while len(lines) < most_lines and taken < most_bytes:
            if self._searched <= start and not self._is_skipping:
                # All at once, since a body may hold nothing else.
                after = _after_blank_lines(buffer, start)
                self._number += buffer.count(b"\n", start, after)
                start = after
            end = buffer.find(b"\n", max(start, self._searched))
            if end < 0:
                self._searched = len(buffer)
                if self._has_more:
                    if len(buffer) - start > self._line_bytes:
                        self._is_skipping = True
                        start = len(buffer)
                    break
                end = len(buffer)
                if end == start and not self._is_skipping:
                    break
            taken += end - start
            self._add(lines, bytes(buffer[start:end]))
            start = min(end + 1, len(buffer))
        del buffer[:start]
        self._searched = max(0, self._searched - start)
        return lines

    def _add(self, lines: list[Line], content: bytes) -> None:
        self._number += 1
        is_too_long = self._is_skipping or len(content) > self._line_bytes
        self._is_skipping = False
        if is_too_long:
            lines.append(Line(self._number, None))
        elif content.strip(b" \t\r"):
            lines.append(Line(self._number, content))


def _after_blank_lines(buffer: bytearray, start: int) -> int:
    """Where the first line begins that is not blank, or may not be."""
    found = _BLANK_LINES.match(buffer, start)
    return found.end() if found else start
