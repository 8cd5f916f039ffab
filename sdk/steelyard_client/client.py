"""The two clients: one set of methods, blocking or to be awaited."""

from __future__ import annotations

import asyncio
import time
from collections.abc import AsyncIterator, Callable, Iterable, Iterator
from os import PathLike
from types import TracebackType
from typing import TYPE_CHECKING, Self

import httpx

from .batch import NOTHING_SENT, BatchRun, LineAnswer
from .batch_progress import Progress
from .calls import CONNECT_TIMEOUT_SECONDS, TIMEOUT_SECONDS, Calls
from .errors import SteelyardError
from .exchange import (
    Answer,
    Reply,
    Send,
    Steps,
    Wait,
    timed_out,
    transport_failure,
)
from .generated.awaited_calls import AwaitedCalls
from .retry import RetryPolicy

if TYPE_CHECKING:
    from .generated.request_types import (
        Line,
    )
    from .received import Exchange


class Steelyard(Calls):
    """A client of the service that blocks. Safe to share between threads; close it, or use it in a ``with``.

    Args:
        url: Base URL of the service; ``STEELYARD_URL`` of the environment by default.
        key: API key; ``STEELYARD_KEY`` of the environment by default.
        timeout_seconds: For a whole call, its retries and waits included.
        connect_timeout_seconds: For a connection to be made.
        retry: When to try again; see ``RetryPolicy``.
        check_requests: Whether to check requests against the contract before they are sent. Switch it off to send
            a newer service what this version does not know.
        on_exchange: Told of every try of every call: its status, seconds, request id and limits, never a body. The
            logger ``steelyard_client`` says the same, at DEBUG, and at INFO for what failed.
        transport: An httpx transport to use instead of the network, with proxies and certificates of its own.

    Every method raises ``SteelyardError``; see ``steelyard_client.errors``.
    """

    def __init__(
        self,
        url: str | None = None,
        key: str | None = None,
        *,
        timeout_seconds: float = TIMEOUT_SECONDS,
        connect_timeout_seconds: float = CONNECT_TIMEOUT_SECONDS,
        retry: RetryPolicy | None = None,
        check_requests: bool = True,
        on_exchange: Callable[[Exchange], None] | None = None,
        transport: httpx.BaseTransport | None = None,
    ) -> None:
        super().__init__(
            url,
            key,
            timeout_seconds=timeout_seconds,
            connect_timeout_seconds=connect_timeout_seconds,
            retry=retry,
            check_requests=check_requests,
            on_exchange=on_exchange,
        )
        self._http = httpx.Client(transport=transport)

    def run_batch(
        self,
        lines: Iterable[Line],
        *,
        keep_in: str | PathLike[str] | None = None,
        progress: bool | Progress = False,
    ) -> Iterator[LineAnswer]:
        """The answers to many calls, one a line and in their order; a line at fault does not touch the others.

        A line is a dictionary: ``reference``, a text of your own that comes back with the answer; ``operation``, the
        name of the method, such as ``read_trend``; and ``body``, its keywords. ``lines`` are read as answers are taken,
        and sent a few at a time, each few with the client's time limit and retries. Raises what
        stops the whole, such as ``TooManyRequests``; what is wrong with a line is its ``problem``.

        ``keep_in`` names a file in which answers are kept by their reference. Run the same lines with the same file
        again after anything broke, and only what is missing is asked for; a line that has changed since is asked
        anew. References are then unique. The file holds what the answers say about people: treat it as such, and
        delete it when done.

        ``progress`` is true for a bar on standard error (needs ``steelyard-client[progress]``), or a function that is
        told the lines done and, where ``lines`` has a length, the lines in all.
        """
        with BatchRun(lines, keep_in, progress) as run:
            for chunk in run.chunks():
                answered = self._drive(self._chunk_steps(chunk)) if chunk.content else NOTHING_SENT
                yield from run.merged(chunk, answered)
                if answered.failure is not None:
                    raise answered.failure

    def close(self) -> None:
        """Close the connections, also those of clients made by ``with_options``."""
        self._http.close()

    def __enter__(self) -> Self:
        self._http.__enter__()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._http.__exit__(kind, error, trace)

    def _drive(self, steps: Steps[Answer]) -> Answer:
        outcome: Reply | SteelyardError | None = None
        try:
            while True:
                match steps.send(outcome):
                    case Wait(seconds):
                        time.sleep(seconds)
                        outcome = None
                    case Send() as send:
                        outcome = self._send(send)
        except StopIteration as done:
            answer: Answer = done.value
            return answer

    def _send(self, send: Send) -> Reply | SteelyardError:
        deadline = time.monotonic() + send.timeout_seconds
        chunks = []
        try:
            with self._http.stream(
                send.method, send.url, headers=send.headers, content=send.content, timeout=send.timeout
            ) as response:
                for chunk in response.iter_bytes():
                    chunks.append(chunk)
                    if time.monotonic() > deadline:  # httpx limits the wait for each chunk, not for all
                        return timed_out(send)
        except httpx.HTTPError as error:
            return transport_failure(error, send)
        return Reply(response.status_code, response.headers, b"".join(chunks))


class AsyncSteelyard(AwaitedCalls):
    """``Steelyard`` to be awaited, with the same arguments and methods, under asyncio.

    Close it with ``await client.aclose()``, or use it in an ``async with``.
    """

    def __init__(
        self,
        url: str | None = None,
        key: str | None = None,
        *,
        timeout_seconds: float = TIMEOUT_SECONDS,
        connect_timeout_seconds: float = CONNECT_TIMEOUT_SECONDS,
        retry: RetryPolicy | None = None,
        check_requests: bool = True,
        on_exchange: Callable[[Exchange], None] | None = None,
        transport: httpx.AsyncBaseTransport | None = None,
    ) -> None:
        super().__init__(
            url,
            key,
            timeout_seconds=timeout_seconds,
            connect_timeout_seconds=connect_timeout_seconds,
            retry=retry,
            check_requests=check_requests,
            on_exchange=on_exchange,
        )
        self._http = httpx.AsyncClient(transport=transport)

    async def run_batch(
        self,
        lines: Iterable[Line],
        *,
        keep_in: str | PathLike[str] | None = None,
        progress: bool | Progress = False,
    ) -> AsyncIterator[LineAnswer]:
        """As ``Steelyard.run_batch``, with ``async for``."""
        with BatchRun(lines, keep_in, progress) as run:
            for chunk in run.chunks():
                answered = await self._drive(self._chunk_steps(chunk)) if chunk.content else NOTHING_SENT
                for answer in run.merged(chunk, answered):
                    yield answer
                if answered.failure is not None:
                    raise answered.failure

    async def aclose(self) -> None:
        """Close the connections, also those of clients made by ``with_options``."""
        await self._http.aclose()

    async def __aenter__(self) -> Self:
        await self._http.__aenter__()
        return self

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        await self._http.__aexit__(kind, error, trace)

    async def _drive(self, steps: Steps[Answer]) -> Answer:
        outcome: Reply | SteelyardError | None = None
        try:
            while True:
                match steps.send(outcome):
                    case Wait(seconds):
                        await asyncio.sleep(seconds)
                        outcome = None
                    case Send() as send:
                        outcome = await self._send(send)
        except StopIteration as done:
            answer: Answer = done.value
            return answer

    async def _send(self, send: Send) -> Reply | SteelyardError:
        try:
            async with asyncio.timeout(send.timeout_seconds):
                async with self._http.stream(
                    send.method, send.url, headers=send.headers, content=send.content, timeout=send.timeout
                ) as response:
                    content = await response.aread()
        except TimeoutError:
            return timed_out(send)
        except httpx.HTTPError as error:
            return transport_failure(error, send)
        return Reply(response.status_code, response.headers, content)
