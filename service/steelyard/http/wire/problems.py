"""Every problem the service can answer with: the registry, the exceptions to raise, and their documents.

A handler refuses a well-formed request by raising ``Unprocessable`` or ``GuardRailRefusal``; everything else is
raised by the machinery. One registry (``KINDS``) feeds the answers, the contract, and ``contracts/problems.md``.
"""

import logging
import traceback
from collections.abc import Mapping, Sequence
from typing import Any

import msgspec
from litestar import Request, Response
from litestar.exceptions import HTTPException
from litestar.types import Scope, Send

from ..schemas.problems import FieldProblem, Problem
from .observability import PROBLEM_CODE
from .request_id import instance, request_id

MEDIA_TYPE = "application/problem+json"
ROOT = "/problems/"

_log = logging.getLogger(__name__)


class ProblemKind(msgspec.Struct, frozen=True):
    """A kind of problem. ``slug`` is the last part of its ``type`` and never changes its meaning."""

    slug: str
    status: int
    title: str
    meaning: str
    remedy: str

    @property
    def type(self) -> str:
        """The problem's type URI."""
        return ROOT + self.slug

    @property
    def code(self) -> str:
        """The slug in capitals."""
        return self.slug.replace("-", "_").upper()


KINDS: dict[str, ProblemKind] = {}


def _kind(slug: str, status: int, title: str, meaning: str, remedy: str) -> ProblemKind:
    KINDS[slug] = kind = ProblemKind(slug, status, title, meaning, remedy)
    return kind


BAD_REQUEST = _kind(
    "bad-request",
    400,
    "The HTTP request is malformed",
    "A header or the request line breaks HTTP's rules.",
    "Send the request with a standard HTTP client.",
)
NOT_JSON = _kind(
    "not-json",
    400,
    "The body is not JSON",
    "The body is empty, cut short, nested too deeply, not UTF-8, or otherwise not one JSON value (RFC 8259). "
    "NaN and Infinity are not JSON.",
    "Send one JSON object encoded as UTF-8, without a byte order mark.",
)
SCHEMA_VIOLATION = _kind(
    "schema-violation",
    400,
    "The body does not fit the schema",
    "A field is unknown, missing, of another type, or outside its range. `errors` names the first fault found.",
    "Mend the field that `errors[].pointer` names; `params.accepted` says what fits there.",
)
QUERY_VIOLATION = _kind(
    "query-violation",
    400,
    "A query parameter is not as the contract has it",
    "A parameter after the question mark of the address has a value that is not offered, or more than one.",
    "Leave the parameter out, or send one of the values that `detail` names.",
)
KEY_REQUIRED = _kind(
    "key-required",
    401,
    "An API key is required",
    "There is no `Authorization` header, or it is not of the form `Bearer <prefix>.<secret>`.",
    "Send the key as `Authorization: Bearer <prefix>.<secret>`.",
)
KEY_REJECTED = _kind(
    "key-rejected",
    401,
    "The API key is not accepted",
    "The key is unknown, expired or revoked; which of these is not told.",
    "Ask the operator for a new key.",
)
SCOPE_MISSING = _kind(
    "scope-missing",
    403,
    "The API key lacks the scope",
    "The key is valid, but was not made for this operation.",
    "Ask the operator for a key with the scope that `detail` names.",
)
NOT_FOUND = _kind(
    "not-found",
    404,
    "There is nothing at this path",
    "The path is not part of the contract.",
    "Compare the path with `/openapi.json`; the page at `/` says where to go.",
)
METHOD_NOT_ALLOWED = _kind(
    "method-not-allowed",
    405,
    "The method is not allowed here",
    "The path exists, but not with this method.",
    "Use a method that the `Allow` header names.",
)
NOT_ACCEPTABLE = _kind(
    "not-acceptable",
    406,
    "No media type of the answer is accepted",
    "The `Accept` header excludes every media type that the operation answers.",
    "Accept one of them, or leave the header out.",
)
BODY_TIMEOUT = _kind(
    "body-timeout",
    408,
    "The body took too long to arrive",
    "The connection is too slow, or the body is shorter than its `Content-Length` says.",
    "Send the same request again over a faster connection.",
)
BODY_TOO_LARGE = _kind(
    "body-too-large",
    413,
    "The body is too large",
    "The body is longer than the service reads (1 MiB unless the operator set another limit).",
    "Send fewer entries at a time.",
)
PATH_TOO_LONG = _kind(
    "path-too-long",
    414,
    "The path is too long",
    "The path of the request is longer than 8 KiB.",
    "Compare the path with `/openapi.json`; what an operation takes goes into its body.",
)
HEAD_TOO_LARGE = _kind(
    "head-too-large",
    431,
    "The header fields are too large",
    "The header fields, or the fields behind the body, are more than 100 or longer than 64 KiB together, or the body "
    "is sent in chunks of almost nothing.",
    "Send fewer and shorter header fields, and the body in larger chunks.",
)
TRANSFER_CODING = _kind(
    "transfer-coding",
    501,
    "The transfer coding is not known",
    "The `Transfer-Encoding` names more than `chunked`.",
    "Send the body with `Content-Length`, or in chunks and not compressed.",
)
LINE_TOO_LONG = _kind(
    "line-too-long",
    413,
    "A line of the batch is too long",
    "The line is longer than a body may be (1 MiB unless the operator set another limit). The lines around it are "
    "answered.",
    "Send fewer entries in this line.",
)
BATCH_TOO_LONG = _kind(
    "batch-too-long",
    413,
    "The batch has too many lines",
    "The batch has more lines than the service answers in one request (200,000 unless the operator set another limit).",
    "Send the lines from this one on in another batch.",
)
BATCH_IDLE = _kind(
    "batch-idle",
    408,
    "The next line did not come",
    "The next line was not there within a minute, unless the operator set another time. The lines before are answered.",
    "Send the lines that are not answered in another batch.",
)
UNSUPPORTED_MEDIA_TYPE = _kind(
    "unsupported-media-type",
    415,
    "The body must be JSON",
    "The `Content-Type` is not `application/json`, or the `Content-Encoding` is not gzip.",
    "Send `Content-Type: application/json`, and the body as it is or as gzip.",
)
CONTRADICTION = _kind(
    "contradiction",
    422,
    "The fields contradict each other",
    "Each field fits the schema, but together they cannot be: an end before its start, two goals for one phase.",
    "Mend the fields that `errors[].pointer` names.",
)
OUT_OF_DOMAIN = _kind(
    "out-of-domain",
    422,
    "The values lie outside what can be computed",
    "Each field fits the schema, but an equation has no meaning for the combination.",
    "`errors[].detail` says which value to mend, and how.",
)
GUARD_RAIL = _kind(
    "guard-rail",
    422,
    "For your safety, this is not planned",
    "The request is understood, and refused for the person's safety. The `type` ends in the id of the rule, "
    "which `/v1/methods` describes.",
    "Follow the referral in `detail`. Do not work around the rule.",
)
TOO_MANY_REQUESTS = _kind(
    "too-many-requests",
    429,
    "Too many requests",
    "The operator's limit for this key is reached. Gateways in front of the service may answer so too.",
    "Wait for the seconds in `Retry-After`, then repeat the same request.",
)
INTERNAL_ERROR = _kind(
    "internal-error",
    500,
    "The service failed",
    "A fault of the service, which is logged under the request id.",
    "Report `instance` to the operator. Repeating the same request will rarely help.",
)
COMPUTATION_TIMEOUT = _kind(
    "computation-timeout",
    503,
    "The computation took too long",
    "The service is busy, or the request asks for much at once. Nothing was computed in part.",
    "Wait for the seconds in `Retry-After`, then repeat the request; if it fails again, ask for less at once.",
)
SERVICE_ENDING = _kind(
    "service-ending",
    503,
    "The service is being stopped",
    "The process that answers this batch was told to end. The lines before this one are answered.",
    "Send the lines from this one on in another batch.",
)
OVERLOADED = _kind(
    "overloaded",
    503,
    "The service is overloaded",
    "More is asked of the service at once than it can answer in time. Nothing was computed.",
    "Wait for the seconds in `Retry-After`, then repeat the same request.",
)
UNAVAILABLE = _kind(
    "unavailable",
    503,
    "The service is not ready",
    "The operator's store cannot be reached, so that the key cannot be checked.",
    "Wait for the seconds in `Retry-After`, then repeat the same request.",
)

_BY_STATUS = {
    400: BAD_REQUEST,
    404: NOT_FOUND,
    405: METHOD_NOT_ALLOWED,
    413: BODY_TOO_LARGE,
    429: TOO_MANY_REQUESTS,
    503: UNAVAILABLE,
}


class ProblemError(Exception):
    """Answer with a problem document. ``rule_id`` is appended to the type."""

    def __init__(
        self,
        kind: ProblemKind,
        detail: str,
        errors: Sequence[FieldProblem] = (),
        *,
        headers: Mapping[str, str] | None = None,
        rule_id: str | None = None,
    ) -> None:
        super().__init__(detail)
        self.kind = kind
        self.detail = detail
        self.errors = tuple(errors)
        self.headers = dict(headers or {})
        self.rule_id = rule_id


class Unprocessable(ProblemError):  # noqa: N818 - the name of the status
    """422: well-formed, but ``kind`` (``CONTRADICTION`` or ``OUT_OF_DOMAIN``) says why it cannot be computed."""


class GuardRailRefusal(ProblemError):  # noqa: N818 - a refusal, and no error
    """422: the rule ``rule_id`` of the catalogue forbids it; ``referral`` is what the person should do."""

    def __init__(self, rule_id: str, referral: str, errors: Sequence[FieldProblem] = ()) -> None:
        super().__init__(GUARD_RAIL, referral, errors, rule_id=rule_id)


def fault(pointer: str, code: str, detail: str, **params: str | int | float) -> FieldProblem:
    """One entry of ``errors``; ``pointer`` is a JSON Pointer as a URI fragment (``#/profile/height_cm``)."""
    return FieldProblem(pointer=pointer, code=code, detail=detail, params=params)


def as_problem(error: Exception) -> ProblemError:
    """The problem for any exception: ours as it is, the framework's by status, all else as 500 without a word."""
    if isinstance(error, ProblemError):
        return error
    if isinstance(error, HTTPException) and error.status_code in _BY_STATUS:
        kind = _BY_STATUS[error.status_code]
        headers = dict(error.headers or {})
        if "allow" in headers:  # the framework lists a set, in another order in each process
            headers["allow"] = ", ".join(sorted(headers["allow"].split(", ")))
        return ProblemError(kind, f"{kind.meaning} {kind.remedy}", headers=headers)
    return ProblemError(INTERNAL_ERROR, INTERNAL_ERROR.meaning)


def handle_exception(request: Request[Any, Any, Any], error: Exception) -> Response[bytes]:
    """Answer any exception with its problem document (the application's one exception handler)."""
    problem = as_problem(error)
    body = _document(request.scope, problem, error)
    return Response(
        b"" if request.method == "HEAD" else body,
        status_code=problem.kind.status,
        media_type=MEDIA_TYPE,
        headers=problem.headers | {"content-length": str(len(body))},  # the same to HEAD (RFC 9110 9.3.2)
    )


async def answer_problem(scope: Scope, send: Send, error: Exception) -> None:
    """Answer outside the framework: what it is not asked, and a fault that even its exception handler did not get."""
    problem = as_problem(error)
    body = _document(scope, problem, error)
    headers = [(name.lower().encode(), value.encode()) for name, value in problem.headers.items()]
    headers += [(b"content-type", MEDIA_TYPE.encode()), (b"content-length", b"%d" % len(body))]
    await send({"type": "http.response.start", "status": problem.kind.status, "headers": headers})
    sent = b"" if scope.get("method") == "HEAD" else body
    await send({"type": "http.response.body", "body": sent, "more_body": False})


def _document(scope: Scope, problem: ProblemError, error: Exception) -> bytes:
    scope["state"][PROBLEM_CODE] = problem.kind.code
    return msgspec.json.encode(problem_of(problem, error, request_id(scope)))


def problem_of(problem: ProblemError, error: Exception, id_: str) -> Problem:
    """The document of a problem in the request ``id_``; a fault of the service behind it is logged."""
    if problem.kind is INTERNAL_ERROR:
        log_fault(error, id_)
    suffix = f"/{problem.rule_id}" if problem.rule_id else ""
    return Problem(
        type=problem.kind.type + suffix,
        title=problem.kind.title,
        status=problem.kind.status,
        detail=problem.detail,
        instance=instance(id_),
        code=problem.kind.code,
        errors=problem.errors,
    )


def log_fault(error: Exception, id_: str) -> None:
    """Log where a fault arose. Not its text: an exception's message may quote a person's data."""
    places = [f"{f.filename}:{f.lineno} in {f.name}" for f in traceback.extract_tb(error.__traceback__)]
    _log.error("request %s failed with %s at %s", id_, type(error).__qualname__, " < ".join(reversed(places)))
