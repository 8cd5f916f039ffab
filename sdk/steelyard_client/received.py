"""What came with an answer beside its content: the request's id, what is left of the limits, the bytes themselves."""

import re
from collections.abc import Mapping
from typing import NamedTuple

_LIMIT = re.compile(r'"([^"]*)"((?:;[a-z]+=\d+)*)')


class Limit(NamedTuple):
    """What is left of one limit: units, and the seconds until there are more."""

    name: str
    units_left: int
    reset_seconds: int


class Received(NamedTuple):
    """What came with an answer. ``content`` is its body as it came, ``headers`` have their names in lower case."""

    request_id: str
    status: int
    headers: Mapping[str, str]
    content: bytes

    @property
    def limits(self) -> tuple[Limit, ...]:
        """What is left of each limit on the key; empty where nothing is limited."""
        return limits_of(self.headers.get("ratelimit", ""))


class Exchange(NamedTuple):
    """One try of one call, for ``on_exchange``: what was asked, and what became of it.

    ``status`` is None where no answer came, and ``failure`` then says why. Neither holds a body or the key.
    """

    method: str
    url: str
    request_id: str
    attempt: int
    seconds: float
    status: int | None
    failure: str | None
    limits: tuple[Limit, ...]


def limits_of(header: str) -> tuple[Limit, ...]:
    """The limits that a ``RateLimit`` header tells (draft-ietf-httpapi-ratelimit-headers); what it tells otherwise is
    passed over."""
    found = []
    for name, text in _LIMIT.findall(header):
        parameters = dict(part.split("=") for part in text.split(";") if part)
        if "r" in parameters:
            found.append(Limit(name, int(parameters["r"]), int(parameters.get("t", 0))))
    return tuple(found)


class Answered:
    """An answer of the service: ``received`` is what came with it, None for one that was not just received."""

    received: Received | None = None
