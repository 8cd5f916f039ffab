"""What of the parts of a process is seen from outside as it is now."""

from collections.abc import Mapping

from ..gate.rate_limit import RateLimiter
from ..gate.usage import UsageCounter
from ..wire.observability import GaugeSource
from ..wire.request_bounds import RequestBounds
from .overload import Overload
from .readiness import Readiness


def gauges_of(
    limiter: RateLimiter, limits: RequestBounds, readiness: Readiness, overload: Overload, usage: UsageCounter
) -> Mapping[str, GaugeSource]:
    """Each gauge by its name."""
    return {
        "limits_degraded": GaugeSource(
            "1 while the limits are counted without the shared store.", lambda: limiter.is_degraded, "livemax"
        ),
        "limits_refused": GaugeSource("Requests refused by a limit since the start.", lambda: limiter.refused_count),
        "store_failing": GaugeSource(
            "1 while the operator's store cannot be read or written.",
            lambda: readiness.store_fault is not None,
            "livemax",
        ),
        "not_ready": GaugeSource("1 while the process is not ready.", lambda: readiness.problem is not None, "livemax"),
        "late_seconds": GaugeSource("How late the event loop is.", lambda: overload.late_seconds, "livemax"),
        "overload_refused": GaugeSource(
            "Requests refused since the start, since the event loop was late.", lambda: overload.refused_count
        ),
        "turns_waiting": GaugeSource(
            "Long computations and pictures that wait for their turn.",
            lambda: limits.turns.waiting_count + limits.picture_turns.waiting_count,
        ),
        "turns_refused": GaugeSource(
            "Those refused since the start, since they would have waited too long.",
            lambda: limits.turns.refused_count + limits.picture_turns.refused_count,
        ),
        "usage_waiting_units": GaugeSource("Units counted and not yet written.", lambda: usage.waiting_units),
        "usage_waiting_seconds": GaugeSource(
            "How long the oldest of them has waited.", lambda: usage.waiting_seconds, "livemax"
        ),
    }
