"""Who is told of requests, as the operator chose."""

import sys
from collections.abc import Mapping

from litestar.handlers import HTTPRouteHandler

from steelyard.settings import Settings

from ..wire.observability import GaugeSource, Observer, RequestLog


def observers_and_routes(
    settings: Settings, gauges: Mapping[str, GaugeSource]
) -> tuple[list[Observer], list[HTTPRouteHandler]]:
    """The observers, and the routes that show what they saw. What is switched off is not even imported."""
    observers: list[Observer] = []
    routes: list[HTTPRouteHandler] = []
    if settings.log_requests:
        observers.append(RequestLog(sys.stderr))
    if settings.metrics:
        from .metrics import Metrics, metrics_route

        metrics = Metrics(gauges)
        observers.append(metrics)
        routes.append(metrics_route(metrics, settings.metrics_token))
    if settings.tracing:
        from .tracing import Spans, exporting_provider

        observers.append(Spans(exporting_provider()))
    return observers, routes
