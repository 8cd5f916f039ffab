"""One call from request to answer, without input or output of its own: both clients drive it.

``exchange`` yields what to do next (send, or wait) and is told what came of it, so that retries, the time limit and
the reading of answers are written once.
"""

import json
import logging
import platform
from collections.abc import Callable, Generator
from dataclasses import dataclass, field
from typing import Any, NamedTuple, Protocol, TypeAlias, TypeVar
from uuid import uuid4

import httpx

from ._version import __version__
from .errors import ConnectionFailed, SteelyardError, TimedOut, UnreadableAnswer, problem_error
from .generated.contract import CONTRACT_VERSION, Operation
from .received import Answered, Exchange, Received, limits_of
from .retry import RetryPolicy, retry_after_seconds

_log = logging.getLogger("steelyard_client")
REQUEST_ID_HEADER = "X-Request-Id"
CONTRACT_HEADER = "Steelyard-Contract"
USER_AGENT = f"steelyard-client/{__version__} python/{platform.python_version()} httpx/{httpx.__version__}"


class _Model(Protocol):
    @classmethod
    def from_dict(cls, src_dict: dict[str, Any]) -> Any: ...


Answer = TypeVar("Answer")
Model = TypeVar("Model", bound=_Model)


@dataclass(frozen=True, kw_only=True)
class Options:
    """How a client calls: where, as whom, for how long, and how often."""

    url: str
    key: str = field(repr=False)
    timeout_seconds: float
    connect_timeout_seconds: float
    retry: RetryPolicy
    check_requests: bool
    on_exchange: Callable[[Exchange], None] | None = None

    def __post_init__(self) -> None:
        if not (self.timeout_seconds > 0 and self.connect_timeout_seconds > 0):
            raise ValueError("timeouts must be above 0 seconds")


class Send(NamedTuple):
    """Send this now, and be done after ``timeout_seconds``."""

    method: str
    url: str
    headers: dict[str, str]
    content: bytes | None
    timeout_seconds: float
    connect_timeout_seconds: float

    @property
    def timeout(self) -> httpx.Timeout:
        """The same for httpx, which knows limits of single steps only."""
        return httpx.Timeout(self.timeout_seconds, connect=min(self.connect_timeout_seconds, self.timeout_seconds))


class Wait(NamedTuple):
    """Do nothing for ``seconds``."""

    seconds: float


class Reply(NamedTuple):
    """An answer with its whole body."""

    status: int
    headers: httpx.Headers
    content: bytes


Steps: TypeAlias = Generator[Send | Wait, Reply | SteelyardError | None, Answer]


JSON = "application/json"
LINES = "application/x-ndjson"


def exchange(
    operation: Operation,
    read: Callable[[Reply, str], Answer],
    request: dict[str, Any],
    options: Options,
    clock: Callable[[], float],
    media_type: str = JSON,
    lines: bytes | None = None,
    query: str = "",
    language: str = "",
) -> Steps[Answer]:
    """Prepare ``request``, have it sent until it is answered or given up, and ``read`` the answer.

    Raises ``SteelyardError``. ``clock`` gives seconds that never run backwards. ``media_type`` is that of the answer.
    ``lines`` is a body that is already encoded, in place of ``request``; ``query`` is put after the address;
    ``language`` is the one that words are asked for in.
    """
    deadline = clock() + options.timeout_seconds
    content = _encode(operation, request, options) if lines is None else lines
    request_id = str(uuid4())  # ours, so that a call without an answer can be looked up too
    headers = {
        "Accept": f"{media_type}, application/problem+json",
        "Authorization": f"Bearer {options.key}",
        "User-Agent": USER_AGENT,
        REQUEST_ID_HEADER: request_id,
        **({"Accept-Language": language} if language else {}),
        **({} if content is None else {"Content-Type": JSON if lines is None else LINES}),
    }
    url = options.url + operation.path + query
    retries = 0
    while True:
        sent = clock()
        send = Send(operation.method, url, headers, content, deadline - sent, options.connect_timeout_seconds)
        # Preparing a request takes time as well, and what is left for a try may be none.
        outcome = (yield send) if send.timeout_seconds > 0 else timed_out(send)
        _tell(options, operation.method, url, request_id, retries + 1, clock() - sent, outcome)
        if isinstance(outcome, Reply) and 200 <= outcome.status < 300:
            return read(outcome, request_id)
        failure = _failure(outcome, request_id)
        wait = options.retry.wait_seconds(failure, retries) if operation.is_pure else None
        if wait is None or clock() + wait >= deadline:
            raise failure
        retries += 1
        yield Wait(wait)


def _tell(
    options: Options, method: str, url: str, request_id: str, attempt: int, seconds: float, outcome: object
) -> None:
    """Log one try, and tell it to whoever listens. No body and no key: they are about people."""
    is_reply = isinstance(outcome, Reply)
    status = outcome.status if isinstance(outcome, Reply) else None
    limits = limits_of(outcome.headers.get("RateLimit", "")) if isinstance(outcome, Reply) else ()
    failure = None if is_reply else str(outcome)
    one = Exchange(method, url, request_id, attempt, seconds, status, failure, limits)
    level = logging.DEBUG if status is not None and status < 400 else logging.INFO
    _log.log(level, "%s %s: %s in %.3f s, try %d [%s]", method, url, failure or status, seconds, attempt, request_id)
    if options.on_exchange is not None:
        options.on_exchange(one)


def transport_failure(error: httpx.HTTPError, send: Send) -> SteelyardError:
    """What an exception of the transport means for the caller."""
    if isinstance(error, httpx.ConnectTimeout):
        return ConnectionFailed(f"No connection to {send.url} in {send.timeout.connect:.3g} s.")
    if isinstance(error, httpx.TimeoutException):
        return timed_out(send)
    told = str(error) or type(error).__name__
    if isinstance(error, httpx.DecodingError):
        return UnreadableAnswer(f"The answer of {send.url} cannot be unpacked: {told}.")
    is_transient = isinstance(error, httpx.NetworkError | httpx.RemoteProtocolError)
    return ConnectionFailed(f"The connection to {send.url} failed: {told}.", is_transient=is_transient)


def timed_out(send: Send) -> TimedOut:
    """The failure of a try that used up its time."""
    return TimedOut(f"No full answer of {send.url} in time: {send.timeout_seconds:.3g} s were left for this try.")


def read_bytes(reply: Reply, _request_id: str) -> bytes:
    """The answer as it came."""
    return reply.content


def read_text(reply: Reply, request_id: str) -> str:
    """The answer as its text, its line ends as they came. Raises ``UnreadableAnswer``."""
    try:
        return reply.content.decode("utf-8")
    except UnicodeDecodeError as error:
        request_id = reply.headers.get(REQUEST_ID_HEADER, request_id)
        raise UnreadableAnswer(
            f"The answer is no UTF-8: {error}.", request_id=request_id, content=reply.content
        ) from error


def read_answer(answer_type: type[Model], reply: Reply, request_id: str) -> Model:
    """The answer as its model, unknown fields kept. Raises ``UnreadableAnswer``."""
    request_id = reply.headers.get(REQUEST_ID_HEADER, request_id)
    try:
        answer: Model = answer_type.from_dict(json.loads(reply.content, parse_constant=_refuse_constant))
    except (ValueError, TypeError, KeyError, AttributeError) as error:
        media_type = reply.headers.get("Content-Type", "no media type")
        spoken = reply.headers.get(CONTRACT_HEADER, "none")
        told = f"there is no {error}" if isinstance(error, KeyError) else str(error)
        raise UnreadableAnswer(
            f"The answer ({reply.status}, {media_type}) does not fit the contract: {told}. "
            f"This client speaks contract {CONTRACT_VERSION}, the answer {spoken}.",
            request_id=request_id,
            content=reply.content,
        ) from error
    if isinstance(answer, Answered):
        headers = {name.lower(): value for name, value in reply.headers.items()}
        answer.received = Received(request_id, reply.status, headers, reply.content)
    return answer


def _encode(operation: Operation, request: dict[str, Any], options: Options) -> bytes | None:
    if operation.request is None:
        return None
    from .request_check import check, plain

    body = plain(request)
    if options.check_requests:
        check(body, operation.request)
    return json.dumps(body, separators=(",", ":")).encode("ascii")


def _failure(outcome: Reply | SteelyardError | None, request_id: str) -> SteelyardError:
    if isinstance(outcome, Reply):
        headers = outcome.headers
        return problem_error(
            outcome.status,
            outcome.content,
            media_type=headers.get("Content-Type", ""),
            request_id=headers.get(REQUEST_ID_HEADER, request_id),
            retry_after_seconds=retry_after_seconds(headers.get("Retry-After")),
        )
    assert outcome is not None  # a Send is always answered
    outcome.request_id = request_id
    return outcome


def _refuse_constant(name: str) -> float:
    raise ValueError(f"{name} is not JSON")
