"""What the operator sees of requests: one JSON line for each, and the service's other messages in the same form.

Nothing of what a request says about a person gets here. A line names the route by its template, never the path as
it was called; there is no query, no body, no header but the request's id and the caller's trace; of a key, the
public prefix.
"""

import asyncio
import contextlib
import logging
from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any, Literal, NamedTuple, Protocol, TextIO

import msgspec

# Where the layers below the edge leave, in the scope's state, what a line should say.
KEY_PREFIX = "steelyard_key_prefix"
KEY_REJECTION = "steelyard_key_rejection"
BATCH_COUNTS = "steelyard_batch_counts"
PROBLEM_CODE = "steelyard_problem_code"

MULTIPROCESS_VARIABLE = "PROMETHEUS_MULTIPROC_DIR"  # prometheus-client's own

_SERVICE = "steelyard"
_SERVER = "uvicorn.error"  # it logs what ends a request, with all of an exception unless it is told otherwise
_LOG_SECONDS = 0.1  # the longest time that a line waits
_LOG_LINES = 1000  # the most lines that wait
_json = msgspec.json.Encoder()


class RequestRecord(msgspec.Struct, kw_only=True, omit_defaults=True):
    """A request that is over, as it is logged. ``status`` is 0 where the connection ended before an answer."""

    time: datetime
    level: str = msgspec.field(default="")  # set by the log, here for its place in the line
    event: str
    request_id: str
    method: str
    route: str | None = None
    operation: str | None = None
    status: int
    problem: str | None = None
    duration_ms: float
    answer_bytes: int
    key: str | None = None
    rejection: str | None = None  # why a key was not accepted
    lines: int | None = None  # of a batch, of those the ones at fault, and whether it was answered to its end
    line_problems: int | None = None
    is_complete: bool | None = None
    trace_id: str | None = None
    parent_id: str | None = None
    is_sampled: bool = False
    is_deprecated: bool = False


class Observer(Protocol):
    """Told of every request that is over."""

    def __call__(self, record: RequestRecord) -> None: ...

    async def run(self) -> None:
        """What is to be done beside, until it is cancelled."""
        ...

    def close(self) -> None:
        """Let go of what is still held, when the service stops."""
        ...


class GaugeSource(NamedTuple):
    """A number that is read when it is asked for, and how those of several workers are put together."""

    meaning: str
    read: Callable[[], float]
    together: Literal["livesum", "livemax"] = "livesum"


class RequestLog:
    """Writes a line per request; a stream that fails (a full disk, a closed pipe) never fails a request.

    Lines are written together, ten times a second: on a busy machine a write to a pipe for each would cost more than
    all else that is done about the answer. A killed process loses those of the last tenth of a second.
    """

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._lines: list[bytes] = []

    def __call__(self, record: RequestRecord) -> None:
        """Take the line."""
        record.level = "error" if record.status >= 500 else "info"
        if not self._lines:
            asyncio.get_running_loop().call_later(_LOG_SECONDS, self.close)
        self._lines.append(_json.encode(record))
        if len(self._lines) >= _LOG_LINES:
            self.close()

    async def run(self) -> None:
        """Nothing beside."""

    def close(self) -> None:
        """Write the lines that wait."""
        lines, self._lines = self._lines, []
        if lines:
            with contextlib.suppress(OSError, ValueError):
                self._stream.write(b"\n".join(lines).decode() + "\n")
                self._stream.flush()


class JsonFormatter(logging.Formatter):
    """A log record of any library as one JSON line. Of an exception its type alone: its text may quote a person."""

    def format(self, record: logging.LogRecord) -> str:
        """The line, without its end."""
        line: dict[str, Any] = {
            "time": datetime.fromtimestamp(record.created, UTC),
            "level": record.levelname.lower(),
            "event": record.getMessage(),
            "logger": record.name,
        }
        if record.exc_info and record.exc_info[0]:
            line["exception"] = record.exc_info[0].__qualname__
        return _json.encode(line).decode()


def log_to(stream: TextIO) -> None:
    """Send the service's own messages to ``stream`` as JSON lines, in place of where they went before."""
    handler = logging.StreamHandler(stream)
    handler.setFormatter(JsonFormatter())
    for name, level in ((_SERVICE, logging.INFO), (_SERVER, logging.ERROR)):
        logger = logging.getLogger(name)
        logger.handlers = [handler]
        logger.propagate = False
        logger.setLevel(level)


def log_all_to(stream: TextIO) -> None:
    """Send what libraries and the interpreter have to say there as well: of a process that has a log of its own."""
    log_to(stream)
    handler = logging.StreamHandler(stream)
    handler.setFormatter(_FirstLineFormatter())
    root = logging.getLogger()
    root.handlers = [handler]
    root.setLevel(logging.WARNING)
    logging.captureWarnings(True)


class _FirstLineFormatter(JsonFormatter):
    """What others say goes on with the text of exceptions, or with source code."""

    def format(self, record: logging.LogRecord) -> str:
        record.msg, record.args = record.getMessage().partition("\n")[0], None
        return super().format(record)
