"""A span per request for OpenTelemetry, where the operator switched tracing on and installed the extra ``tracing``.

A span carries what a line of the request log carries, and joins the caller's trace. Names and attributes follow the
OpenTelemetry semantic conventions for HTTP server spans (1.23 and later).
"""

from importlib.util import find_spec
from typing import TYPE_CHECKING, Any

from steelyard.settings import Settings, SettingsError

from ..wire.observability import RequestRecord

if TYPE_CHECKING:
    from opentelemetry.sdk.trace import TracerProvider

_NEEDS_EXTRA = "STEELYARD_TRACING needs the packages of the extra: pip install 'steelyard[tracing]'"
_PACKAGES = ("opentelemetry", "opentelemetry.sdk", "opentelemetry.exporter")  # each found after its parent
_NANOSECONDS = 1_000_000_000


class Spans:
    """Makes a span of every request that is over."""

    def __init__(self, provider: "TracerProvider") -> None:
        from opentelemetry import trace

        self._trace = trace
        self._provider = provider
        self._tracer = provider.get_tracer("steelyard")

    def __call__(self, record: RequestRecord) -> None:
        """Record one request."""
        trace = self._trace
        context = None
        if record.trace_id and record.parent_id:
            flags = trace.TraceFlags(trace.TraceFlags.SAMPLED if record.is_sampled else trace.TraceFlags.DEFAULT)
            parent = trace.SpanContext(
                int(record.trace_id, 16), int(record.parent_id, 16), is_remote=True, trace_flags=flags
            )
            context = trace.set_span_in_context(trace.NonRecordingSpan(parent))
        end = int(record.time.timestamp() * _NANOSECONDS)
        attributes: dict[str, Any] = {
            "http.request.method": record.method if record.method != "other" else "_OTHER",
            "http.response.status_code": record.status,
            "http.response.body.size": record.answer_bytes,
            "steelyard.request_id": record.request_id,
        }
        named = {"http.route": record.route, "steelyard.operation": record.operation, "error.type": record.problem}
        attributes |= {name: value for name, value in named.items() if value is not None}
        span = self._tracer.start_span(
            f"{record.method} {record.route}" if record.route else record.method,
            context=context,
            kind=trace.SpanKind.SERVER,
            start_time=end - int(record.duration_ms * 1_000_000),
            attributes=attributes,
        )
        if record.status >= 500:
            span.set_status(trace.StatusCode.ERROR)
        span.end(end)

    async def run(self) -> None:
        """Nothing beside: the exporter has a thread of its own."""

    def close(self) -> None:
        """Export what waits."""
        self._provider.shutdown()


def check_tracing(settings: Settings) -> None:
    """Raise ``SettingsError`` where tracing is switched on without its packages."""
    if settings.tracing and not all(map(find_spec, _PACKAGES)):
        raise SettingsError(_NEEDS_EXTRA)


def exporting_provider() -> "TracerProvider":
    """A provider that sends spans where the standard ``OTEL_EXPORTER_OTLP_*`` variables say."""
    try:
        from opentelemetry.exporter.otlp.proto.http.trace_exporter import OTLPSpanExporter  # type: ignore[import-not-found,unused-ignore]
        from opentelemetry.sdk.resources import Resource
        from opentelemetry.sdk.trace import TracerProvider
        from opentelemetry.sdk.trace.export import BatchSpanProcessor
    except ImportError:
        raise SettingsError(_NEEDS_EXTRA) from None
    provider = TracerProvider(resource=Resource.create({"service.name": "steelyard"}))
    provider.add_span_processor(BatchSpanProcessor(OTLPSpanExporter()))
    return provider
