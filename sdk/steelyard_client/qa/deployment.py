"""A service under test, called politely: paced, patient where it asks for patience, and never past the time given."""

import json
import time
from collections.abc import Mapping
from typing import Any, NamedTuple, NoReturn

import httpx

from ..exchange import LINES, USER_AGENT
from ..retry import retry_after_seconds

_BUSY = frozenset({429, 503})
_USUAL_WAIT_SECONDS = 1.0


class OutOfTime(Exception):  # noqa: N818 - says what happened
    """The seconds of the run are used up."""


class Broken(Exception):  # noqa: N818 - says what happened
    """The service does not do what it should; the text says what, and for which request."""


class Operation(NamedTuple):
    """An operation of the deployed contract."""

    id: str
    method: str
    path: str
    is_streamed: bool
    examples: Mapping[str, Any]


class Deployment:
    """The service at ``url``. ``seconds`` is for the whole run, ``requests_per_second`` at most what is sent.

    Where the service states its rate limit, three quarters of it are used.
    """

    def __init__(
        self,
        url: str,
        key: str,
        *,
        seconds: float,
        requests_per_second: float,
        transport: httpx.BaseTransport | None = None,
    ) -> None:
        self.url = url.rstrip("/")
        self.key = key
        self.requests_per_second = requests_per_second
        self.sent = 0
        self._deadline = time.monotonic() + seconds
        self._next = 0.0
        self._http = httpx.Client(transport=transport, timeout=30.0, headers={"User-Agent": f"{USER_AGENT} qa"})

    @property
    def seconds_left(self) -> float:
        """What is left of the time; 0 or less when it is used up."""
        return self._deadline - time.monotonic()

    def send(
        self,
        method: str,
        path: str,
        body: Any = None,
        *,
        key: str | None = "",
        headers: Mapping[str, str] | None = None,
    ) -> httpx.Response:
        """One request; ``body`` is JSON, or bytes as they are. ``key`` is another key, or ``None`` for none.

        A 429 or 503 is sent again after the wait that it asks for. Raises ``OutOfTime``, and ``Broken`` where nothing
        comes back.
        """
        content = body if isinstance(body, bytes) else None if body is None else json.dumps(body).encode("ascii")
        sent: dict[str, str] = {} if content is None else {"Content-Type": "application/json"}
        if key is not None:
            sent["Authorization"] = f"Bearer {key or self.key}"
        sent |= headers or {}
        while True:
            self._wait(max(0.0, self._next - time.monotonic()))
            self._next = time.monotonic() + 1.0 / self.requests_per_second
            self.sent += 1
            try:
                answer = self._http.request(method, self.url + path, content=content, headers=sent)
            except httpx.HTTPError as error:
                raise Broken(f"{method} {path}: nothing came back: {error or type(error).__name__}") from error
            self._heed_limit(answer)
            if answer.status_code not in _BUSY:
                return answer
            asked = retry_after_seconds(answer.headers.get("Retry-After"))
            self._wait(_USUAL_WAIT_SECONDS if asked is None else asked)

    def answer(self, operation: Operation, body: Any) -> httpx.Response:
        """A success of an operation. Raises ``Broken`` for anything else."""
        answer = self.send(operation.method, operation.path, body)
        if answer.status_code != 200:
            broken(answer, f"expected 200 for {json.dumps(body)[:2000]}")
        return answer

    def lines(self, operation: Operation, lines: list[Any]) -> list[Any]:
        """The answer lines of a streamed operation."""
        content = b"".join(json.dumps(line).encode("ascii") + b"\n" for line in lines)
        answer = self.send(operation.method, operation.path, content, headers={"Content-Type": LINES})
        if answer.status_code != 200:
            broken(answer, "expected 200 for a batch")
        return [json.loads(line) for line in answer.content.splitlines()]

    def close(self) -> None:
        """Close the connections."""
        self._http.close()

    def _wait(self, seconds: float) -> None:
        if seconds >= self.seconds_left:
            raise OutOfTime
        time.sleep(seconds)

    def _heed_limit(self, answer: httpx.Response) -> None:
        """Slow down to the rate that the service states (``"name";q=quota;w=seconds``)."""
        for policy in answer.headers.get("RateLimit-Policy", "").split(","):
            parameters = dict(part.strip().partition("=")[::2] for part in policy.split(";")[1:])
            try:
                rate = 0.75 * float(parameters["q"]) / float(parameters["w"])
            except (KeyError, ValueError, ZeroDivisionError):
                continue
            if rate > 0:
                self.requests_per_second = min(self.requests_per_second, rate)


def broken(answer: httpx.Response, why: str) -> NoReturn:
    """Raise ``Broken`` with the call and the beginning of its answer."""
    request = answer.request
    raise Broken(f"{request.method} {request.url.path}: {why}; got {answer.status_code} {answer.text[:1000]!r}")


def read_operations(document: Mapping[str, Any]) -> list[Operation]:
    """The operations of an OpenAPI document, with the examples of their requests where they answer JSON."""
    found = []
    for path, methods in document["paths"].items():
        for method, operation in methods.items():
            content = operation.get("requestBody", {}).get("content", {})
            is_streamed = LINES in content
            answered = operation.get("responses", {}).get("200", {}).get("content", {})
            # A picture or a document is of an answer that is checked by itself.
            is_other = is_streamed or bool(answered and "application/json" not in answered)
            examples = {
                name: example["value"]
                for kind in content.values()
                for name, example in ({} if is_other else kind.get("examples", {})).items()
            }
            found.append(Operation(operation["operationId"], method.upper(), path, is_streamed, examples))
    return found
