"""When to try again, and how long to wait first."""

import random
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from email.utils import parsedate_to_datetime

from .errors import ConnectionFailed, ProblemError, SteelyardError

_RETRIED_STATUSES = frozenset({429, 502, 503, 504})


@dataclass(frozen=True, kw_only=True)
class RetryPolicy:
    """Failed connections, 429, 502, 503 and 504 are tried again, with exponential backoff and jitter.

    A ``Retry-After`` of the service is obeyed: the wait is never shorter. Beyond ``longest_retry_after_seconds`` the
    error is raised at once, and so it is where the wait would not end within the call's own timeout.
    ``RetryPolicy(max_retries=0)`` never retries.
    """

    max_retries: int = 2
    first_wait_seconds: float = 0.25
    longest_wait_seconds: float = 4.0
    longest_retry_after_seconds: float = 8.0

    def __post_init__(self) -> None:
        for name, value in vars(self).items():
            if not 0 <= value < float("inf"):
                raise ValueError(f"{name} must be 0 or more and finite")

    def wait_seconds(
        self, failure: SteelyardError, retries: int, draw: Callable[[], float] = random.random
    ) -> float | None:
        """Seconds to wait after ``failure`` when ``retries`` were made already; ``None`` to give up.

        ``draw`` gives the jitter, uniform between 0 and 1.
        """
        if retries >= self.max_retries:
            return None
        # Half of the wait is certain, half is drawn, so that clients that failed together return apart.
        backoff = min(self.longest_wait_seconds, self.first_wait_seconds * 2.0**retries) * (0.5 + 0.5 * draw())
        if isinstance(failure, ConnectionFailed):
            return backoff if failure.is_transient else None
        if not isinstance(failure, ProblemError) or failure.status not in _RETRIED_STATUSES:
            return None
        asked = failure.retry_after_seconds
        if asked is None:
            return backoff
        return (
            None if asked > self.longest_retry_after_seconds else max(asked + draw() * self.first_wait_seconds, backoff)
        )


def retry_after_seconds(header: str | None, now: datetime | None = None) -> float | None:
    """Seconds that a ``Retry-After`` header asks for (RFC 9110, section 10.2.3: seconds or a date), else ``None``.

    A date in the past asks for 0; a malformed header asks for nothing.
    """
    text = (header or "").strip()
    if text.isascii() and text.isdigit():
        return float(text)
    try:
        until = parsedate_to_datetime(text)
    except ValueError:
        return None
    if until.tzinfo is None:  # "-0000" gives a naive date, which is UTC
        until = until.replace(tzinfo=UTC)
    return max(0.0, (until - (now or datetime.now(UTC))).total_seconds())
