"""What can go wrong, as one tree of exceptions under ``SteelyardError``.

::

    SteelyardError
    ├── NotConfigured          no URL or key
    ├── InvalidRequest         refused before sending: which field, and what would be accepted
    ├── ConnectionFailed       nothing came back
    ├── TimedOut               not within `timeout_seconds`
    ├── UnreadableAnswer       a success that does not fit the contract
    └── ProblemError           an error answer, with its problem document (RFC 9457)
        ├── BadRequest         400
        ├── Unauthorized       401
        ├── Forbidden          403
        ├── NotFound           404
        ├── MethodNotAllowed   405
        ├── NotAcceptable      406
        ├── BodyTooSlow        408
        ├── BodyTooLarge       413
        ├── HeadTooLarge       414, 431
        ├── UnsupportedMediaType 415
        ├── Refused            422: well-formed, and refused by a rule
        │   ├── GuardRailRefusal   for the person's safety: `rule_id`
        │   ├── Contradiction      fields contradict each other
        │   └── OutOfDomain        outside what can be computed
        ├── TooManyRequests    429: `retry_after_seconds`
        ├── ServiceUnavailable 502, 503, 504: `retry_after_seconds`
        └── ServiceFault       any other 5xx
"""

# ruff: noqa: N818 - the names say what happened, as in `except TimedOut`

from __future__ import annotations

import json
from collections.abc import Sequence
from http import HTTPStatus
from typing import TYPE_CHECKING, Any
from urllib.parse import urlsplit

if TYPE_CHECKING:
    from .generated.models import FieldProblem, Problem

_GUARD_RAIL = "/problems/guard-rail/"
_QUOTED_FAULTS = 5


class SteelyardError(Exception):
    """Root of all errors of this package. ``request_id`` is what the operator can look up, where one was sent."""

    def __init__(self, message: str, *, request_id: str | None = None) -> None:
        super().__init__(message)
        self.request_id = request_id

    def __reduce__(self) -> tuple[Any, ...]:
        # Exceptions are rebuilt from `args` alone; without this they would not survive a process pool.
        return _rebuild, (type(self), self.args, self.__dict__)


class NotConfigured(SteelyardError, ValueError):
    """The URL or the key is missing or malformed."""


class InvalidRequest(SteelyardError, ValueError):
    """The request cannot fit the contract and was not sent. ``errors`` has every fault, in the service's own form."""

    def __init__(self, errors: Sequence[FieldProblem]) -> None:
        super().__init__(_listing([error.detail for error in errors]))
        self.errors = tuple(errors)

    @property
    def pointers(self) -> tuple[str, ...]:
        """Where the faults are, as JSON Pointers such as ``#/profile/height_cm``."""
        return tuple(error.pointer for error in self.errors)


class ConnectionFailed(SteelyardError):
    """The service could not be reached, or the connection broke. ``is_transient``: another try may help."""

    def __init__(self, message: str, *, request_id: str | None = None, is_transient: bool = True) -> None:
        super().__init__(message, request_id=request_id)
        self.is_transient = is_transient


class TimedOut(SteelyardError):
    """No full answer within ``timeout_seconds``."""


class UnreadableAnswer(SteelyardError):
    """The answer says success, but is not what the contract promises: often a page of something in between."""

    def __init__(self, message: str, *, request_id: str | None = None, content: bytes = b"") -> None:
        super().__init__(message, request_id=request_id)
        self.content = content


class ProblemError(SteelyardError):
    """An error answer. Branch on the class, ``problem.type_`` or ``problem.code``; never parse ``problem.detail``.

    Where the answer holds no problem document (a gateway's own page), ``problem.type_`` is ``about:blank`` and
    ``content`` has what came instead.
    """

    def __init__(
        self,
        problem: Problem,
        *,
        status: int,
        request_id: str | None = None,
        retry_after_seconds: float | None = None,
        content: bytes = b"",
    ) -> None:
        faults = [error.detail for error in _errors(problem)]
        told = problem.detail if problem.detail in faults[:1] or not faults else f"{problem.detail} {_listing(faults)}"
        super().__init__(f"{status} {problem.title}: {told} [{problem.type_}]", request_id=request_id)
        self.problem = problem
        self.status = status
        self.retry_after_seconds = retry_after_seconds
        self.content = content

    @property
    def errors(self) -> tuple[FieldProblem, ...]:
        """The faults, each with its place; often empty."""
        return tuple(_errors(self.problem))

    @property
    def pointers(self) -> tuple[str, ...]:
        """Where the faults are, as JSON Pointers such as ``#/profile/height_cm``."""
        return tuple(error.pointer for error in self.errors)

    @property
    def code(self) -> str:
        """The kind of problem in capitals."""
        return self.problem.code


class BadRequest(ProblemError):
    """400: not JSON, or not the schema."""


class Unauthorized(ProblemError):
    """401: no key, or one that is not accepted."""


class Forbidden(ProblemError):
    """403: the key lacks the scope."""


class NotFound(ProblemError):
    """404: nothing at this path; often a wrong base URL."""


class MethodNotAllowed(ProblemError):
    """405: the path has no such method; often a proxy or a wrong base URL."""


class NotAcceptable(ProblemError):
    """406: the service has no such form of the answer; a newer one may."""


class BodyTooSlow(ProblemError):
    """408: the body took too long to arrive, or no further line of a batch came."""


class BodyTooLarge(ProblemError):
    """413: send fewer entries at a time."""


class HeadTooLarge(ProblemError):
    """414 or 431: the path or the header fields are too long; often a proxy adds some."""


class UnsupportedMediaType(ProblemError):
    """415: a body of a type or encoding that the service does not read; a proxy may have changed it."""


class Refused(ProblemError):
    """422: well-formed, and refused by a rule."""

    @property
    def rule_id(self) -> str | None:
        """The guard rail that refuses, as ``list_methods`` has it; ``None`` for other refusals."""
        return rule_id(self.problem)


class GuardRailRefusal(Refused):
    """A guard rail forbids this for the person's safety. Show ``problem.detail``: it has the referral."""


class Contradiction(Refused):
    """Each field fits, but together they cannot be."""


class OutOfDomain(Refused):
    """An equation has no meaning for these values."""


class TooManyRequests(ProblemError):
    """429, after the retries."""


class ServiceUnavailable(ProblemError):
    """502, 503 or 504, after the retries."""


class ServiceFault(ProblemError):
    """The service failed; repeating the request will rarely help."""


_BY_STATUS: dict[int, type[ProblemError]] = {
    400: BadRequest,
    401: Unauthorized,
    403: Forbidden,
    404: NotFound,
    405: MethodNotAllowed,
    406: NotAcceptable,
    408: BodyTooSlow,
    413: BodyTooLarge,
    414: HeadTooLarge,
    415: UnsupportedMediaType,
    422: Refused,
    429: TooManyRequests,
    431: HeadTooLarge,
    502: ServiceUnavailable,
    503: ServiceUnavailable,
    504: ServiceUnavailable,
}
_BY_TYPE: dict[str, type[Refused]] = {
    "/problems/contradiction": Contradiction,
    "/problems/out-of-domain": OutOfDomain,
}


def problem_error(
    status: int, content: bytes, *, media_type: str, request_id: str | None, retry_after_seconds: float | None
) -> ProblemError:
    """The exception for an error answer, whatever its body is."""
    problem = _read(content) or _stand_in(status, media_type, request_id)
    kind = _BY_STATUS.get(status, ServiceFault if status >= 500 else ProblemError)
    if kind is Refused:
        kind = GuardRailRefusal if rule_id(problem) else _BY_TYPE.get(urlsplit(problem.type_).path, Refused)
    return kind(problem, status=status, request_id=request_id, retry_after_seconds=retry_after_seconds, content=content)


def rule_id(problem: Problem) -> str | None:
    """The id of the guard rail that a problem's type names."""
    _, found, rule = urlsplit(problem.type_).path.rpartition(_GUARD_RAIL)
    return (rule or None) if found else None


def _read(content: bytes) -> Problem | None:
    """The problem document in ``content``; RFC 9457 lets every member be absent, so ours are looked for."""
    from .generated.models import Problem

    try:
        problem = Problem.from_dict(json.loads(content))
    except (ValueError, TypeError, KeyError, AttributeError):  # not JSON, not an object, not ours
        return None
    texts = (problem.type_, problem.title, problem.detail, problem.code)
    return problem if all(isinstance(text, str) for text in texts) else None


def _stand_in(status: int, media_type: str, request_id: str | None) -> Problem:
    from .generated.models import Problem

    title = HTTPStatus(status).phrase if status in set(HTTPStatus) else "Unknown status"
    return Problem(
        type_="about:blank",
        title=title,
        status=status,
        code=title.upper().replace(" ", "_").replace("-", "_"),
        detail=f"The answer is no problem document but {media_type or 'of no media type'}, so it may come from "
        "something between this client and the service.",
        instance=f"urn:uuid:{request_id}" if request_id else "",
    )


def _errors(problem: Problem) -> Sequence[FieldProblem]:
    from .generated.types import Unset

    return () if isinstance(problem.errors, Unset) else problem.errors


def _listing(details: Sequence[str]) -> str:
    rest = len(details) - _QUOTED_FAULTS
    return " ".join(details[:_QUOTED_FAULTS]) + (f" (and {rest} more)" if rest > 0 else "")


def _rebuild(kind: type[SteelyardError], args: tuple[Any, ...], state: dict[str, Any]) -> SteelyardError:
    error = kind.__new__(kind, *args)
    error.__dict__.update(state)
    return error
