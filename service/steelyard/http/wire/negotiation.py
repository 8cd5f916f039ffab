"""Which media type of an operation's answers a caller gets (RFC 9110 12.5.1)."""

from collections.abc import Awaitable, Callable, Mapping, Sequence
from enum import StrEnum
from typing import Any, ClassVar, TypeAlias
from urllib.parse import parse_qs

import msgspec

from .headers import quality, wishes
from .problems import QUERY_VIOLATION, ProblemError
from .sparing import is_spared

JSON = "application/json"

# Does a job in a process of its own, off the event loop.
Workshop: TypeAlias = Callable[[Mapping[str, Any]], Awaitable[bytes]]


class Option(msgspec.Struct, frozen=True, kw_only=True):
    """A query parameter that some formats of an operation read, with the values it takes."""

    name: str
    default: StrEnum
    description: str

    @property
    def values(self) -> type[StrEnum]:
        """What may be asked for."""
        return type(self.default)

    def read(self, query: bytes) -> StrEnum:
        """What a query asks for. Raises the problem for what is not offered."""
        asked = parse_qs(query.decode("latin-1"), keep_blank_values=True).get(self.name, []) if query else []
        try:
            (value,) = asked or [self.default]
            return self.values(value)
        except ValueError:
            accepted = " or ".join(f"`{value}`" for value in self.values)
            raise ProblemError(QUERY_VIOLATION, f"The query parameter `{self.name}` is {accepted}, once.") from None


class Format(msgspec.Struct, frozen=True, kw_only=True):
    """Another media type for an answer: ``encode`` makes it of the request's body and the computed answer.

    ``name`` and ``schema`` are what the contract calls it and says of it; ``asks`` are fields of the request that it
    sets, so that all it tells is computed. A format reads its ``options``; one that is
    not made at once ``is_slow`` and is finished in a workshop. One that ``has_words`` is made in the caller's language.
    """

    name: str
    content_type: str
    encode: Callable[..., Any]
    schema: Mapping[str, Any]
    asks: Mapping[str, Any] = {}

    options: ClassVar[tuple[Option, ...]] = ()
    is_slow: ClassVar[bool] = False
    has_words: ClassVar[bool] = False

    def asked(self, body: Any) -> Any:
        """The request whose answer this format tells."""
        return msgspec.structs.replace(body, **self.asks) if self.asks else body

    def make(self, body: Any, answer: Any, chosen: Mapping[str, StrEnum], language: str) -> Any:
        """The answer in this format, or what ``finish`` makes it of, in a language where it ``has_words``."""
        return self._make(body, answer, chosen, language, spares=is_spared(body))

    def _make(self, body: Any, answer: Any, chosen: Mapping[str, StrEnum], language: str, *, spares: bool) -> Any:
        """The answer in this format, for ``make``; each kind of format has its own.

        ``spares``: whom it is about may be told nothing of leanness, so that a form for people shows no body fat. What
        a program reads has all that the answer in JSON has.
        """
        raise NotImplementedError

    async def finish(self, made: Any, id: str | None, workshop: Workshop) -> bytes:
        """What is sent. ``id`` tells equal answers of equal requests."""
        return bytes(made)


def negotiate(accept: bytes, offered: Sequence[str]) -> str | None:
    """The media type of ``offered`` that an ``Accept`` header likes best; the first of several, None without any."""
    if accept in (b"", b"*/*") or accept == offered[0].encode("ascii"):  # the common cases first
        return offered[0]
    ranges: dict[str, float] = {}
    for range_, parameters in wishes(accept):
        ranges.setdefault(range_, quality(parameters))
    best, weight = None, 0.0
    for media_type in offered:
        main = media_type.partition("/")[0]
        # The most specific range wins.
        found = next((ranges[r] for r in (media_type, f"{main}/*", "*/*") if r in ranges), 0.0)
        if found > weight:
            best, weight = media_type, found
    return best
