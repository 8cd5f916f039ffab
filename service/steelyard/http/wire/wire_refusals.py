"""Requests that are refused before the framework sees them: broken HTTP, a second spelling of a path, too much at once.

The server's protocol says what it refuses in the scope's state; the outermost layer answers. So each refusal is a
problem document with a request id, and is logged and counted like any other answer.
"""

from litestar.types import Scope

from .problems import BAD_REQUEST, KINDS, NOT_FOUND, OVERLOADED, ProblemError, ProblemKind

REFUSED = "steelyard_refused"  # in the scope's state: the slug of what the server's protocol refuses
ENDING = "steelyard_ending"  # in the scope's state: an event that is set when the process is told to end
BUSY_SECONDS = 1  # what `Retry-After` says of a process that has too much to do


def refuse(scope: Scope, kind: ProblemKind) -> None:
    """Have the request answered with ``kind`` and nothing else."""
    scope["state"][REFUSED] = kind.slug


def refused_by_protocol(scope: Scope) -> ProblemError | None:
    """What the server's protocol refuses of the request so far: its head, or its body from some byte on."""
    slug = scope["state"].get(REFUSED)
    return None if slug is None else problem_of_kind(KINDS[slug])


def wire_refusal(scope: Scope) -> ProblemError | None:
    """The problem that a request is to be answered with at once, if there is one."""
    refused = refused_by_protocol(scope)
    if refused is not None:
        return refused
    raw = scope["raw_path"]
    # Nothing served needs an escape. A second spelling would pass rules about paths of what stands in front.
    if b"%" in raw or b"//" in raw or (raw[-1:] == b"/" and len(raw) > 1):
        return problem_of_kind(NOT_FOUND)
    return None


def broken_body(scope: Scope) -> ProblemError:
    """The problem for a body that ended before it was complete: as the protocol says, or the caller has gone."""
    refused = refused_by_protocol(scope)
    if refused is not None:
        return refused
    # Nobody is left to read the answer; what matters is that it is no fault of the service.
    return ProblemError(BAD_REQUEST, "The connection was closed before the body was complete.")


def problem_of_kind(kind: ProblemKind) -> ProblemError:
    """The problem of a kind that says all there is to say."""
    headers = {"Retry-After": str(BUSY_SECONDS)} if kind is OVERLOADED else None
    return ProblemError(kind, f"{kind.meaning} {kind.remedy}", headers=headers)
