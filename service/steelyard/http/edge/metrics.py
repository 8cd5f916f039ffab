"""Prometheus metrics at ``/metrics``, where the operator switched them on.

They count by operation, method, status and kind of problem, all of which are few and known: never by key, path or
anything that a caller chooses.

Every process has its own numbers. Where several workers share one port, set ``PROMETHEUS_MULTIPROC_DIR`` to an empty
directory: the workers then keep their numbers there and each answers for all of them.
"""

import asyncio
import hmac
import os
from collections.abc import Callable, Mapping
from typing import Any

from litestar import Request
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp
from prometheus_client import REGISTRY, CollectorRegistry, Counter, Gauge, Histogram, exposition
from prometheus_client.multiprocess import MultiProcessCollector

from ..operation.keyless import public
from ..wire.encoding import EncodedAnswer
from ..wire.observability import MULTIPROCESS_VARIABLE, GaugeSource, RequestRecord
from ..wire.problems import KEY_REQUIRED, ProblemError

PATH = "/metrics"

# From an empty answer to the longest search; each about twice the one before.
_BUCKET_SECONDS = (0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0, 25.0)
_GAUGE_SECONDS = 1.0
_NO_OPERATION = "none"  # the probes, the documents, and what leads nowhere
_MEDIA_TYPE = exposition.CONTENT_TYPE_LATEST.encode()


class Metrics:
    """Observes requests, and writes what was observed. ``gauges`` are read every second and when they are asked for."""

    def __init__(self, gauges: Mapping[str, GaugeSource] | None = None) -> None:
        self._registry = CollectorRegistry()
        self._seconds = Histogram(
            "steelyard_request_seconds",
            "Time from a request's headers to the end of its answer.",
            ["operation", "method", "status"],
            buckets=_BUCKET_SECONDS,
            registry=self._registry,
        )
        self._problems = Counter(
            "steelyard_problems", "Answers that were problem documents.", ["operation", "code"], registry=self._registry
        )
        self._rejected = Counter(
            "steelyard_keys_rejected", "Requests with a key that is not accepted.", ["reason"], registry=self._registry
        )
        self._lines = Counter(
            "steelyard_batch_lines", "Lines of batches that were answered.", ["outcome"], registry=self._registry
        )
        self._batches = Counter(
            "steelyard_batches",
            "Batches, by whether they were answered to their end.",
            ["end"],
            registry=self._registry,
        )
        self._bytes = Counter(
            "steelyard_answer_bytes", "Bytes of answers' bodies.", ["operation"], registry=self._registry
        )
        self._gauges = [
            (
                Gauge(f"steelyard_{name}", each.meaning, registry=self._registry, multiprocess_mode=each.together),
                each.read,
            )
            for name, each in (gauges or {}).items()
        ]
        self._observe: dict[tuple[str | None, str, int], Callable[[float], Any]] = {}
        self._add: dict[str | None, Callable[[float], Any]] = {}

    def __call__(self, record: RequestRecord) -> None:
        """Count one request."""
        which = (record.operation, record.method, record.status)
        operation = record.operation or _NO_OPERATION
        observe = self._observe.get(which)
        if observe is None:  # the labels' look-up is dear, and there are few combinations
            observe = self._observe[which] = self._seconds.labels(operation, record.method, str(record.status)).observe
            self._add[record.operation] = self._bytes.labels(operation).inc
        observe(record.duration_ms / 1000)
        self._add[record.operation](record.answer_bytes)
        if record.problem is not None:
            self._problems.labels(operation, record.problem).inc()
        if record.rejection is not None:
            self._rejected.labels(record.rejection).inc()
        if record.lines is not None:
            problems = record.line_problems or 0
            self._lines.labels("result").inc(record.lines - problems)
            self._lines.labels("problem").inc(problems)
            self._batches.labels("complete" if record.is_complete else "cut_off").inc()

    def close(self) -> None:
        """Nothing is held."""

    async def run(self) -> None:
        """Have the gauges ready for other workers, which answer for this one."""
        while True:
            self._read_gauges()
            await asyncio.sleep(_GAUGE_SECONDS)

    def _read_gauges(self) -> None:
        for gauge, read in self._gauges:
            gauge.set(read())

    def text(self) -> bytes:
        """All metrics in Prometheus' text format, those of the process itself among them."""
        self._read_gauges()
        if os.environ.get(MULTIPROCESS_VARIABLE):
            shared = CollectorRegistry()
            MultiProcessCollector(shared)  # type: ignore[no-untyped-call]
            return exposition.generate_latest(shared)
        return exposition.generate_latest(self._registry) + exposition.generate_latest(REGISTRY)


def metrics_route(metrics: Metrics, token: str) -> HTTPRouteHandler:
    """``/metrics``: for anyone who reaches it, or with a ``token`` for a scraper that sends it as its bearer token."""
    expected = f"Bearer {token}".encode()

    @public(PATH)
    async def scrape(request: Request[Any, Any, Any]) -> ASGIApp:
        """The metrics."""
        if token:
            sent = next((value for name, value in request.scope["headers"] if name == b"authorization"), b"")
            if not hmac.compare_digest(sent, expected):
                headers = {"WWW-Authenticate": 'Bearer realm="steelyard metrics"'}
                raise ProblemError(KEY_REQUIRED, "Send the token that the operator set for metrics.", headers=headers)
        return EncodedAnswer(metrics.text(), _MEDIA_TYPE)

    return scrape
