"""How long a body may be, and how much time a request may take: its body to arrive, its answer to be computed."""

import asyncio
from collections.abc import Awaitable, Callable, Coroutine, Generator
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from types import CoroutineType
from typing import Any, TypeVar

from litestar.types import Receive, Scope

from .fair_queue import FairQueue, Turn
from .headers import CONTENT_ENCODING, CONTENT_LENGTH
from .observability import KEY_PREFIX
from .problems import BAD_REQUEST, BODY_TIMEOUT, BODY_TOO_LARGE, COMPUTATION_TIMEOUT, ProblemError, ProblemKind
from .unpacking import Unpacked, is_packed
from .wire_refusals import broken_body

T = TypeVar("T")
J = TypeVar("J")

# They share one interpreter with the event loop: more threads would not compute more, only take turns.
_THREADS = 2
BUSY_SECONDS = 5  # what `Retry-After` says when a computation took too long


class RequestBounds:
    """Reads bodies and runs long computations, each within its time."""

    def __init__(
        self,
        *,
        body_bytes: int,
        body_seconds: float,
        computation_seconds: float,
        batch_lines: int = 200_000,
        batch_idle_seconds: float = 60.0,
        queue_seconds: float = 5.0,
    ) -> None:
        self.line_bytes = self._body_bytes = body_bytes  # a line of a batch is a body of its own
        self.batch_lines = batch_lines
        self.batch_idle_seconds = batch_idle_seconds
        self._body_seconds = body_seconds
        self._computation_seconds = computation_seconds
        self._threads: ThreadPoolExecutor | None = None
        self.turns = FairQueue(_THREADS, door_seconds=queue_seconds, most_seconds=computation_seconds)
        self.picture_turns = FairQueue(1, door_seconds=queue_seconds, most_seconds=computation_seconds)

    def close(self) -> None:
        """Forget the computations that wait for a thread."""
        if self._threads is not None:
            self._threads.shutdown(wait=False, cancel_futures=True)
            self._threads = None  # an application may be started again

    async def read_body(self, scope: Scope, receive: Receive) -> bytes:
        """The whole body. Raises the problem for one that is too long, too slow, or breaks off."""
        for name, value in scope["headers"]:
            if name == CONTENT_ENCODING and is_packed(value):
                receive = Unpacked(receive)
            elif name == CONTENT_LENGTH:
                value = value.strip(b" \t")  # which the parser leaves at its end (RFC 9112 5.1)
                if not value.isdigit():
                    raise _problem(BAD_REQUEST)
                if int(value) > self._body_bytes:
                    raise _problem(BODY_TOO_LARGE)
        parts: list[bytes] = []
        length, has_more = 0, True
        deadline: float | None = None
        while has_more:
            arriving: Any = receive()
            message = None
            # A body is usually there with its head, and a timer costs as much as decoding it, so that time counts from
            # when there is something to wait for.
            if isinstance(arriving, CoroutineType):
                try:
                    arriving = _Begun(arriving, arriving.send(None))
                except StopIteration as arrived:
                    message = arrived.value
            if message is None:
                if deadline is None:
                    deadline = asyncio.get_running_loop().time() + self._body_seconds
                message = await _arrived_by(deadline, arriving)
            if message["type"] == "http.disconnect":
                raise broken_body(scope)
            parts.append(message.get("body", b""))
            length += len(parts[-1])
            if length > self._body_bytes:
                raise _problem(BODY_TOO_LARGE)
            has_more = message.get("more_body", False)
        return parts[0] if len(parts) == 1 else b"".join(parts)

    async def compute(self, scope: Scope, compute: Callable[[], T], *, is_patient: bool = False) -> T:
        """``compute()`` in a thread, when it is the turn of the request's key. Past its time the answer is a problem.

        One that has begun cannot be stopped: it ends by itself, since what a body may hold bounds its work, and keeps
        its thread and its turn until then. A wait that would be too long is refused at once, but for the ``patient``,
        whose time begins with their turn.
        """
        loop = asyncio.get_running_loop()
        if self._threads is None:
            self._threads = ThreadPoolExecutor(_THREADS, "computation")
        threads, deadline = self._threads, loop.time() + self._computation_seconds
        turn = await self._turn(self.turns, scope, None if is_patient else deadline)
        working = loop.run_in_executor(threads, compute)
        working.add_done_callback(lambda _: turn.close())
        return await self._by(None if is_patient else deadline, asyncio.shield(working))

    async def draw(self, scope: Scope, workshop: Callable[[J], Awaitable[T]], job: J) -> T:
        """What the workshop makes of the job, when it is the turn of the request's key."""
        deadline = asyncio.get_running_loop().time() + self._computation_seconds
        turn = await self._turn(self.picture_turns, scope, deadline)
        try:
            return await self._by(deadline, workshop(job))
        finally:
            turn.close()

    async def _turn(self, queue: FairQueue, scope: Scope, deadline: float | None) -> Turn:
        who = scope["state"].get(KEY_PREFIX)
        if deadline is None:
            return await queue.enter(who, is_patient=True)
        return await self._by(deadline, queue.enter(who))

    async def _by(self, deadline: float | None, work: Awaitable[T]) -> T:
        """What ``work`` comes to. Past the time of a computation it is cancelled, and the answer is a problem."""
        loop = asyncio.get_running_loop()
        try:
            async with asyncio.timeout_at(loop.time() + self._computation_seconds if deadline is None else deadline):
                return await work
        except TimeoutError:
            raise _problem(COMPUTATION_TIMEOUT, {"Retry-After": str(BUSY_SECONDS)}) from None


async def _arrived_by(deadline: float, arriving: Awaitable[Any]) -> Any:
    """The next message. Raises the problem for one that is not there by the ``deadline``."""
    try:
        async with asyncio.timeout_at(deadline):
            return await arriving
    except TimeoutError:
        raise _problem(BODY_TIMEOUT, {"Connection": "close"}) from None


class _Begun:
    """A coroutine that was begun by hand and now waits for ``future``: awaiting this goes on with it."""

    __slots__ = ("_coroutine", "_future")

    def __init__(self, coroutine: Coroutine[Any, Any, Any], future: Any) -> None:
        self._coroutine, self._future = coroutine, future

    def __await__(self) -> Generator[Any, Any, Any]:
        awaited = self._future
        while True:
            try:
                value = yield awaited
            except BaseException as error:  # a cancellation, for instance, is the coroutine's to see
                go_on = partial(self._coroutine.throw, error)
            else:
                go_on = partial(self._coroutine.send, value)
            try:
                awaited = go_on()
            except StopIteration as end:
                return end.value


def _problem(kind: ProblemKind, headers: dict[str, str] | None = None) -> ProblemError:
    return ProblemError(kind, f"{kind.meaning} {kind.remedy}", headers=headers)
